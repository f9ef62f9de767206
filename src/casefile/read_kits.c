/* SPDX-License-Identifier: MIT */
/* Kits: what each puts into which joint, on top of another kit or of the joints as written. */
#include "base/buf.h"
#include "casefile/nearest.h"
#include "casefile/section.h"

#include <string.h>

static const char *const KIT_KEYS[] = { "name", "label", "based_on", "fits", NULL };

/* "front.upper_rear": the axle and what follows the first dot; false where it names no joint. */
static bool find_fit(const gw_case_reader *cr, const gw_node *at, gw_axle *axle, int *joint)
{
    const char *dot = strchr(at->key, '.');
    for (int a = 0; dot && a < GW_AXLES; a++) {
        size_t n = (size_t)(dot - at->key);
        if (strlen(GW_AXLE_NAMES[a]) != n || strncmp(GW_AXLE_NAMES[a], at->key, n) != 0) continue;
        if (!cr->c->has_corner[a]) {
            gw_fault(&cr->rd, at, "there is no %s corner in \"corners\"", GW_AXLE_NAMES[a]);
            return false;
        }
        *axle = (gw_axle)a;
        *joint = gw_joint_named(&cr->rd, at, &cr->c->corners[a], dot + 1);
        return *joint >= 0;
    }
    gw_fault(&cr->rd, at, "expected a key like \"front.upper_rear\": the corner, a dot, the joint");
    return false;
}

static void fit_one(gw_case_reader *cr, gw_kit *kit, const gw_node *at)
{
    gw_buf name = { 0 };
    gw_axle axle;
    int joint;
    if (!find_fit(cr, at, &axle, &joint)) return;
    gw_buf_fmt(&name, "%s.%s", kit->name ? kit->name : "?", at->key);
    if (name.failed) cr->rd.faults->out_of_memory = true;
    bool housing = cr->c->corners[axle].joints[joint].housing >= 0;
    int bush = gw_read_bush_ref(cr, at, gw_buf_str(&name), housing);
    if (bush >= 0 && kit->fits[axle]) kit->fits[axle][joint] = bush;
    gw_buf_free(&name);
}

/* -1: nothing said; filled up from the kit below or from the joint once all kits are read. */
static bool make_fits(gw_case_reader *cr, gw_kit *kit)
{
    for (int a = 0; a < GW_AXLES; a++) {
        int n = cr->c->corners[a].n_joints;
        if (!cr->c->has_corner[a]) continue;
        if (!(kit->fits[a] = gw_reader_make(&cr->rd, n, sizeof(int)))) return false;
        for (int j = 0; j < n; j++) kit->fits[a][j] = -1;
    }
    return true;
}

static void read_kit(gw_case_reader *cr, const gw_node *node, gw_kit *kit)
{
    const gw_reader *rd = &cr->rd;
    gw_node fits, name = gw_node_key(node, "name");
    if (!make_fits(cr, kit) || !gw_is_object(rd, node, "an object { }")) return;
    gw_check_keys(rd, node, NULL, 0, KIT_KEYS);
    if (gw_get_text(rd, node, "name", GW_REQUIRED, GW_MAX_TEXT_BYTES, &kit->name))
        gw_is_name(rd, &name, kit->name);
    kit->label = kit->name;
    gw_get_text(rd, node, "label", GW_OPTIONAL, GW_MAX_TEXT_BYTES, &kit->label);
    if (!gw_get_object(rd, node, "fits", GW_OPTIONAL, &fits)) return;
    if (!gw_is_within(rd, &fits, GW_AXLES * GW_MAX_JOINTS, "joints")) return;
    for (const cJSON *e = gw_first(&fits); e; e = gw_node_next(e)) {
        gw_node at = gw_node_entry(&fits, e, 0);
        fit_one(cr, kit, &at);
    }
}

/* The kit below, by name; -1 where there is none. */
static int find_base(gw_case_reader *cr, const gw_node *node)
{
    char found[80], hint[GW_HINT_MAX];
    const char *word;
    gw_node at = gw_node_key(node, "based_on");
    if (!gw_get_word(&cr->rd, node, "based_on", GW_OPTIONAL, &word)) return -1;
    int base = gw_case_find_kit(cr->c, word);
    if (base >= 0) return base;
    gw_nearest near = { .want = word };
    for (int k = 0; k < cr->c->n_kits; k++)
        if (cr->c->kits[k].name) gw_nearest_offer(&near, cr->c->kits[k].name);
    gw_fault(&cr->rd, &at, "expected the name of a kit, found %s%s", gw_found(&at, found),
             gw_nearest_hint(&near, hint));
    return -1;
}

/* Name the whole circle, so that the user sees which link to cut. */
static void report_circle(gw_case_reader *cr, const gw_node *kits, int start, const int *base)
{
    gw_buf chain = { 0 };
    gw_node kit = { NULL, kits, NULL, start };
    gw_node at = gw_node_key(&kit, "based_on");
    gw_buf_quote(&chain, cr->c->kits[start].name);
    for (int k = base[start];; k = base[k]) {
        gw_buf_add(&chain, " on ");
        gw_buf_quote(&chain, cr->c->kits[k].name);
        if (k == start) break;
    }
    gw_fault(&cr->rd, &at, "kits go round in a circle, %s: one of them must stand on its own",
             gw_buf_str(&chain));
    gw_buf_free(&chain);
}

/* True where following `base` from `start` leads back to it; of a circle only the first kit counts. */
static bool is_first_of_circle(int start, const int *base, int n)
{
    bool smaller = false;
    int k = base[start];
    for (int steps = 0; k >= 0 && steps < n; steps++, k = base[k]) {
        if (k == start) return !smaller;
        if (k < start) smaller = true;
    }
    return false;
}

/* Fill the gaps of a kit from those below it, then from the joints. Circles have been refused. */
static void fill_kit(gw_case *c, int kit, const int *base)
{
    for (int a = 0; a < GW_AXLES; a++) {
        int *fits = c->kits[kit].fits[a];
        for (int j = 0; fits && j < c->corners[a].n_joints; j++) {
            for (int k = base[kit]; fits[j] < 0 && k >= 0; k = base[k])
                if (c->kits[k].fits[a]) fits[j] = c->kits[k].fits[a][j];
            if (fits[j] < 0) fits[j] = c->corners[a].joints[j].bush;
        }
    }
}

static void join_kits(gw_case_reader *cr, const gw_node *kits)
{
    int base[GW_MAX_KITS] = { 0 }, index = 0;
    bool circle = false;
    for (const cJSON *e = gw_first(kits); e; e = gw_node_next(e), index++) {
        gw_node node = gw_node_entry(kits, e, index);
        base[index] = find_base(cr, &node);
    }
    for (int k = 0; k < cr->c->n_kits; k++) {
        if (!is_first_of_circle(k, base, cr->c->n_kits)) continue;
        report_circle(cr, kits, k, base);
        circle = true;
    }
    for (int k = 0; !circle && k < cr->c->n_kits; k++) fill_kit(cr->c, k, base);
}

/* Without kits the joints as written are the one kit. */
static void one_kit(gw_case_reader *cr)
{
    const int base = -1;
    if (!cr->c->has_corner[GW_FRONT] && !cr->c->has_corner[GW_REAR]) return;
    if (!(cr->c->kits = gw_reader_make(&cr->rd, 1, sizeof *cr->c->kits))) return;
    cr->c->n_kits = 1;
    cr->c->kits[0].name = cr->c->kits[0].label = gw_keep(&cr->rd, "as written");
    if (make_fits(cr, &cr->c->kits[0])) fill_kit(cr->c, 0, &base);
}

void gw_read_kits(gw_case_reader *cr)
{
    const char *names[GW_MAX_KITS];
    gw_node kits = { 0 };
    bool given = gw_get_list(&cr->rd, &cr->top, "kits", GW_OPTIONAL, &kits);
    int n = given ? gw_node_count(&kits) : 0, index = 0;
    if (n == 0) {
        one_kit(cr);
        return;
    }
    if (!gw_is_within(&cr->rd, &kits, GW_MAX_KITS, "kits")) return;
    if (!(cr->c->kits = gw_reader_make(&cr->rd, n, sizeof *cr->c->kits))) return;
    cr->c->n_kits = n;
    for (const cJSON *e = gw_first(&kits); e; e = gw_node_next(e), index++) {
        gw_node node = gw_node_entry(&kits, e, index);
        read_kit(cr, &node, &cr->c->kits[index]);
        names[index] = cr->c->kits[index].name;
    }
    gw_check_unique(&cr->rd, &kits, names, n, "kit");
    join_kits(cr, &kits);
}

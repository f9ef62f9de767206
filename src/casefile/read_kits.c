/* SPDX-License-Identifier: MIT */
/* Kits: what each puts into which joint, on top of another kit or of the joints as written. */
#include "base/buf.h"
#include "casefile/nearest.h"
#include "casefile/section.h"

#include <string.h>

static const char *const KIT_KEYS[] = { "name", "label", "based_on", "fits", NULL };

/* What a key of `fits` names: an axle, a joint as written, and a side or both (-1). */
typedef struct gw_fit_key {
    gw_axle axle;
    int joint, side;
} gw_fit_key;

/* "left.upper_rear": the side, and the name behind it; a joint may have such a name itself. */
static int take_side(const gw_corner *pair, const char **name)
{
    static const char *const SIDES[] = { "left.", "right." };
    for (int s = 0; s < 2; s++) {
        size_t n = strlen(SIDES[s]);
        if (strncmp(*name, SIDES[s], n) != 0) continue;
        for (int j = 0; j < pair->n_joints; j++)
            if (pair->joints[j].plain && strcmp(pair->joints[j].plain, *name) == 0) return -1;
        *name += n;
        return s;
    }
    return -1;
}

/* A joint on the centre line, or one that is written as one, has no sides. */
static bool has_sides(const gw_case_reader *cr, const gw_node *at, const gw_corner *pair,
                      const gw_fit_key *key)
{
    if (key->side < 0 || pair->joints[key->joint].twin != key->joint) return true;
    gw_fault(&cr->rd, at, "\"%s\" is one joint, not one of each side: name it \"%s.%s\"",
             pair->joints[key->joint].plain, pair->name, pair->joints[key->joint].plain);
    return false;
}

/* "front.upper_rear": the axle and what follows the first dot; false where it names no joint. */
static bool find_fit(const gw_case_reader *cr, const gw_node *at, gw_fit_key *key)
{
    const char *name = gw_behind_axle(at->key, &key->axle);
    if (!name) {
        gw_fault(&cr->rd, at, "expected a key like \"front.upper_rear\": the corner, a dot, the joint");
        return false;
    }
    const gw_corner *pair = &cr->c->pairs[key->axle];
    if (!cr->c->has_corner[key->axle]) {
        gw_fault(&cr->rd, at, "there is no %s corner in \"corners\"", gw_axle_name(key->axle));
        return false;
    }
    if (!pair->n_joints) return false; /* what is wrong with the corner has been said */
    key->side = take_side(pair, &name);
    key->joint = gw_joint_named(&cr->rd, at, &cr->c->corners[key->axle], name);
    return key->joint >= 0 && has_sides(cr, at, pair, key);
}

/* The narrower name wins, in whatever order they stand. */
static void put_fit(gw_case_reader *cr, gw_kit *kit, const gw_fit_key *key, int bush, bool *narrow[GW_AXLES])
{
    const gw_corner *pair = &cr->c->pairs[key->axle];
    int twin = pair->joints[key->joint].twin, of[2] = { key->joint, twin };
    for (int s = 0; s < 2 && kit->fits[key->axle]; s++) {
        if (key->side >= 0 && key->side != s) continue;
        if (key->side < 0 && narrow[key->axle][of[s]]) continue;
        kit->fits[key->axle][of[s]] = bush;
        if (key->side >= 0) narrow[key->axle][of[s]] = true;
    }
}

static void fit_one(gw_case_reader *cr, gw_kit *kit, const gw_node *at, bool *narrow[GW_AXLES])
{
    gw_buf name = { 0 };
    gw_fit_key key;
    if (!find_fit(cr, at, &key)) return;
    gw_buf_fmt(&name, "%s.%s", kit->name ? kit->name : "?", at->key);
    if (name.failed) cr->rd.faults->out_of_memory = true;
    bool housing = cr->c->pairs[key.axle].joints[key.joint].housing >= 0;
    int bush = gw_read_bush_ref(cr, at, gw_buf_str(&name), housing);
    if (bush >= 0) put_fit(cr, kit, &key, bush, narrow);
    gw_buf_free(&name);
}

/* -1: nothing said; filled up from the kit below or from the joint once all kits are read. */
static bool make_fits(gw_case_reader *cr, gw_kit *kit)
{
    for (int a = 0; a < GW_AXLES; a++) {
        int n = cr->c->pairs[a].n_joints;
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
    bool *narrow[GW_AXLES];
    for (int a = 0; a < GW_AXLES; a++)
        if (!(narrow[a] = gw_reader_make(rd, cr->c->pairs[a].n_joints + 1, sizeof *narrow[a]))) return;
    for (const cJSON *e = gw_first(&fits); e; e = gw_node_next(e)) {
        gw_node at = gw_node_entry(&fits, e, 0);
        fit_one(cr, kit, &at, narrow);
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
        for (int j = 0; fits && j < c->pairs[a].n_joints; j++) {
            for (int k = base[kit]; fits[j] < 0 && k >= 0; k = base[k])
                if (c->kits[k].fits[a]) fits[j] = c->kits[k].fits[a][j];
            if (fits[j] < 0) fits[j] = c->pairs[a].joints[j].bush;
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

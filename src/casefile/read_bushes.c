/* SPDX-License-Identifier: MIT */
/* The list of bushes: those with names of their own, then those written in place in joints and kits. */
#include "casefile/again.h"
#include "casefile/nearest.h"
#include "casefile/section.h"
#include "casefile/shelf.h"

#include <string.h>

/* Objects among the values of an object, or under `key` of the entries of a list. */
static int count_objects(const gw_node *node, const char *key)
{
    int n = 0;
    for (const cJSON *e = gw_first(node); e; e = gw_node_next(e)) {
        gw_node entry = gw_node_entry(node, e, 0);
        gw_node value = key ? gw_node_key(&entry, key) : entry;
        if (cJSON_IsObject(value.json)) n++;
    }
    return n;
}

/* How many bushes the file holds in all, so that their list never moves. */
static int count_in_place(const gw_node *top)
{
    int n = 0;
    static const char *const WITH_JOINTS[] = { "corners", "axles" };
    gw_node kits = gw_node_key(top, "kits");
    for (int i = 0; i < 2; i++) {
        gw_node group = gw_node_key(top, WITH_JOINTS[i]);
        for (const cJSON *e = gw_first(&group); e; e = gw_node_next(e)) {
            gw_node corner = gw_node_entry(&group, e, 0);
            gw_node joints = gw_node_key(&corner, "joints");
            n += count_objects(&joints, "bush");
        }
    }
    for (const cJSON *e = gw_first(&kits); e; e = gw_node_next(e)) {
        gw_node kit = gw_node_entry(&kits, e, 0);
        gw_node fits = gw_node_key(&kit, "fits");
        n += count_objects(&fits, NULL);
    }
    return n;
}

static bool is_touched(const cJSON *const *touched, int n, const cJSON *json)
{
    for (int i = 0; i < n; i++)
        if (touched[i] == json) return true;
    for (const cJSON *e = json->child; e; e = e->next)
        if (is_touched(touched, n, e)) return true;
    return false;
}

/* In a draw a bush whose numbers stay is the one that is known, whatever its stiffness factor. */
static bool is_known(const gw_case_reader *cr, const cJSON *json)
{
    return cr->again && !is_touched(cr->again->touched, cr->again->n_touched, json);
}

static void read_or_take(gw_case_reader *cr, const gw_node *node, gw_bush *bush)
{
    const int i = cr->c->n_bushes;
    bool known = is_known(cr, node->json);
    const char *name = bush->name;
    cr->bush_json[i] = node->json;
    if (cr->again) cr->again->anew[i] = !known;
    if (!known) {
        const char *shelf = gw_shelf_of(&cr->shelf, node->json), *own = cr->rd.file;
        if (shelf) cr->rd.file = shelf;
        gw_read_bush(cr, node, bush);
        cr->rd.file = own;
        bush->idle = shelf != NULL;
        return;
    }
    *bush = cr->again->known->bushes[i];
    bush->name = name;
    gw_read_stiffness(&cr->rd, node, bush);
}

static void read_named(gw_case_reader *cr, const gw_node *bushes)
{
    for (const cJSON *e = gw_first(bushes); e; e = gw_node_next(e)) {
        gw_node node = gw_node_entry(bushes, e, 0);
        gw_bush *bush = &cr->c->bushes[cr->c->n_bushes];
        gw_is_name(&cr->rd, &node, e->string);
        if (!(bush->name = gw_keep(&cr->rd, e->string))) return;
        read_or_take(cr, &node, bush);
        cr->c->n_bushes++;
    }
}

/* Where a draw touches none. */
static void take_bushes(gw_case_reader *cr)
{
    const gw_case *known = cr->again->known;
    cr->c->bushes = known->bushes;
    cr->capacity = cr->n_named = cr->c->n_bushes = known->n_bushes;
    memset(cr->again->anew, 0, (size_t)known->n_bushes * sizeof *cr->again->anew);
}

void gw_read_bushes(gw_case_reader *cr)
{
    gw_node bushes = { 0 };
    bool given = gw_get_object(&cr->rd, &cr->top, "bushes", GW_OPTIONAL, &bushes);
    int in_place = count_in_place(&cr->top), n = (given ? gw_node_count(&bushes) : 0) + in_place;
    if (cr->again && !in_place && !cr->again->section[GW_SECTION_BUSHES]) {
        take_bushes(cr);
        return;
    }
    if (n > GW_MAX_BUSHES) {
        gw_node at = gw_node_key(&cr->top, "bushes");
        gw_fault(&cr->rd, &at,
                 "%d bushes, with those written in place, are more than the %d that are allowed", n,
                 GW_MAX_BUSHES);
        return;
    }
    if (n == 0 || !(cr->c->bushes = gw_reader_make(&cr->rd, n, sizeof *cr->c->bushes))) return;
    if (!(cr->bush_json = gw_reader_make(&cr->rd, n, sizeof *cr->bush_json))) return;
    cr->capacity = n;
    if (given) read_named(cr, &bushes);
    cr->n_named = cr->c->n_bushes;
}

static int find_named(gw_case_reader *cr, const gw_node *node, const char *name)
{
    char hint[GW_HINT_MAX];
    gw_nearest near = { .want = name };
    for (int i = 0; i < cr->n_named; i++)
        if (strcmp(cr->c->bushes[i].name, name) == 0) return i;
    for (int i = 0; i < cr->n_named; i++) gw_nearest_offer(&near, cr->c->bushes[i].name);
    char found[80];
    gw_fault(&cr->rd, node, "expected the name of a bush under \"bushes\", found %s%s", gw_found(node, found),
             gw_nearest_hint(&near, hint));
    return -1;
}

static int add_in_place(gw_case_reader *cr, const gw_node *node, const char *name)
{
    if (cr->c->n_bushes >= cr->capacity) return -1; /* the limit was exceeded and has been reported */
    gw_bush *bush = &cr->c->bushes[cr->c->n_bushes];
    for (int i = 0; i < cr->c->n_bushes; i++)
        if (strcmp(cr->c->bushes[i].name, name) == 0)
            gw_fault(&cr->rd, node,
                     "a bush written here is called \"%s\", but there is one of that name: rename that one",
                     name);
    if (!(bush->name = gw_keep(&cr->rd, name))) return -1;
    read_or_take(cr, node, bush);
    return cr->c->n_bushes++;
}

int gw_read_bush_ref(gw_case_reader *cr, const gw_node *node, const char *name, bool housing_known)
{
    int i;
    if (cJSON_IsString(node->json))
        i = find_named(cr, node, node->json->valuestring);
    else if (gw_is_object(&cr->rd, node, "the name of a bush, or an object { } that describes one"))
        i = add_in_place(cr, node, name);
    else
        i = -1;
    if (i >= 0 && cr->c->bushes[i].offset > 0 && !housing_known)
        gw_fault(&cr->rd, node,
                 "this bush is off-centre: its joint must name in \"housing\" the body that the bush is "
                 "pressed into (the wrong body reverses the sign)");
    return i;
}

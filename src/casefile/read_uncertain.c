/* SPDX-License-Identifier: MIT */
/* `uncertain`: entry by entry, then figure by figure; or, where the case has no list, common practice. */
#include "casefile/reach.h"

#include <math.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

static const gw_range SIZE = GW_FROM(0, 1000);
enum { MAX_ENTRIES = 1000 };

/* Bands that are taken where the case has no list. Common practice. */
static const double BUSH_PERCENT = 25, MEASURED_PERCENT = 10, POINT_MM = 2, BRACKET_PERCENT = 100;

static bool read_axes(const gw_reader *rd, const gw_node *node, gw_band_entry *entry)
{
    int i = 0;
    if (gw_node_count(node) != 3) {
        gw_fault(rd, node, "expected one number, or three for x, y and z");
        return false;
    }
    for (const cJSON *e = gw_first(node); e; e = gw_node_next(e), i++) {
        gw_node at = gw_node_entry(node, e, i);
        if (!gw_take_number(rd, &at, SIZE, &entry->size[i])) return false;
    }
    entry->by_axis = true;
    return true;
}

static bool read_size(const gw_reader *rd, const gw_node *node, gw_band_entry *entry)
{
    if (entry->unit == GW_BAND_MM && cJSON_IsArray(node->json)) return read_axes(rd, node, entry);
    return gw_take_number(rd, node, SIZE, &entry->size[0]);
}

/* Exactly one unit. */
static bool read_band(const gw_reader *rd, gw_band_entry *entry)
{
    int given = 0;
    gw_node at = { 0 };
    for (int u = 0; u < GW_BAND_UNITS; u++) {
        gw_node node = gw_node_key(&entry->node, GW_BAND_KEYS[u]);
        if (!node.json) continue;
        entry->unit = (gw_band_unit)u;
        at = node;
        given++;
    }
    if (given == 1) return read_size(rd, &at, entry);
    gw_fault(rd, &entry->node,
             given ? "the band is given in %d units: keep one of percent, mm, deg and hardness_points"
                   : "expected a band: percent, mm, deg or hardness_points",
             given);
    return false;
}

static bool read_entry(const gw_reader *rd, const gw_node *node, gw_band_entry *entry)
{
    static const char *const KEYS[] = { "of", "percent", "mm", "deg", "hardness_points", "together", NULL };
    *entry = (gw_band_entry){ .node = *node };
    if (!gw_is_object(rd, node, "an object { } with \"of\" and a band")) return false;
    gw_check_keys(rd, node, NULL, 0, KEYS);
    bool of = gw_get_text(rd, node, "of", GW_REQUIRED, GW_MAX_TEXT_BYTES, &entry->of);
    gw_get_flag(rd, node, "together", &entry->together);
    return read_band(rd, entry) && of;
}

/* Every node of the file with its number, counted from the top, by address. */
typedef struct numbered {
    const cJSON *json;
    int number;
} numbered;

static int by_address(const void *a, const void *b)
{
    uintptr_t l = (uintptr_t)((const numbered *)a)->json, r = (uintptr_t)((const numbered *)b)->json;
    return l < r ? -1 : l > r;
}

static int count_nodes(const cJSON *json)
{
    int n = 1;
    for (const cJSON *e = json->child; e; e = e->next) n += count_nodes(e);
    return n;
}

static void list_nodes(const cJSON *json, numbered *list, int *n)
{
    list[*n] = (numbered){ json, *n };
    ++*n;
    for (const cJSON *e = json->child; e; e = e->next) list_nodes(e, list, n);
}

static bool number_places(gw_case_reader *cr, gw_reaches *all)
{
    int n = 0;
    size_t room = (size_t)count_nodes(cr->top.json);
    numbered *list = malloc(room * sizeof *list);
    if (!list) {
        cr->rd.faults->out_of_memory = true;
        return false;
    }
    list_nodes(cr->top.json, list, &n);
    qsort(list, room, sizeof *list, by_address);
    for (int i = 0; i < all->n; i++) {
        const numbered want = { all->reach[i].json, 0 };
        const numbered *found = bsearch(&want, list, room, sizeof *list, by_address);
        all->reach[i].number = found ? found->number : 0;
        all->reach[i].order = i;
    }
    free(list);
    return true;
}

static int by_place(const void *a, const void *b)
{
    const gw_reach *l = a, *r = b;
    if (l->number != r->number) return l->number - r->number;
    int by_key = strcmp(l->key ? l->key : "", r->key ? r->key : "");
    if (by_key) return by_key;
    if (l->steps != r->steps) return r->steps - l->steps;
    return l->entry - r->entry;
}

/* Of those on one number the one with most steps stays, first in the order above; two that say as much are a
 * fault of the later. */
static int keep_the_nearest(const gw_reader *rd, const gw_node *list, gw_reaches *all)
{
    int kept = 0;
    bool told = false;
    if (all->n) qsort(all->reach, (size_t)all->n, sizeof *all->reach, by_place);
    for (int i = 0; i < all->n; i++) {
        gw_reach *r = &all->reach[i], *last = kept ? &all->reach[kept - 1] : NULL;
        bool same = last && last->number == r->number &&
                    strcmp(last->key ? last->key : "", r->key ? r->key : "") == 0;
        if (!same) {
            all->reach[kept++] = *r;
            continue;
        }
        if (told || last->steps != r->steps || last->entry == r->entry) continue;
        gw_node entry = { NULL, list, NULL, r->entry }, at = gw_node_key(&entry, "of");
        gw_fault(rd, &at, "uncertain[%d] is about the same figure and says as much: keep one of them",
                 last->entry);
        told = true;
    }
    return kept;
}

static int by_group(const void *a, const void *b)
{
    const gw_reach *l = a, *r = b;
    if (l->group != r->group) return l->group - r->group;
    return l->order - r->order;
}

static void add_figure(gw_uncertain *u, const gw_reach *r, const gw_group *group, gw_band_unit unit)
{
    bool factor = unit == GW_BAND_PERCENT || unit == GW_BAND_HARDNESS;
    u->figure[u->n++] = (gw_unsure){
        .of = group->of,
        .unit = factor               ? GW_UNSURE_FACTOR
                : unit == GW_BAND_MM ? GW_UNSURE_MM
                                     : GW_UNSURE_DEG,
        .scale = r->scale,
        .value = group->many ? (factor ? 1.0 : 0.0) : r->value,
        .stiffness = r->stiffness,
    };
}

/* Groups become figures, in their order; what is known (a band of 0) is none. Different scales in one group
 * (points of hardness of several compounds) are kept with the numbers, relative to the first. */
static void settle(gw_case_reader *cr, const gw_band_entry *entries, gw_reaches *all, int kept)
{
    gw_uncertain *u = &cr->c->uncertain;
    int last = -1;
    u->figure = gw_reader_make(&cr->rd, all->n_groups + 1, sizeof *u->figure);
    u->target = gw_reader_make(&cr->rd, kept + 1, sizeof *u->target);
    if (!u->figure || !u->target) return;
    if (kept) qsort(all->reach, (size_t)kept, sizeof *all->reach, by_group);
    for (int i = 0; i < kept; i++) {
        const gw_reach *r = &all->reach[i];
        if (!(r->scale > 0.0)) continue;
        if (r->group != last) add_figure(u, r, &all->group[r->group], entries[r->entry].unit);
        last = r->group;
        u->target[u->n_targets++] = (gw_drawn_number){ .node = r->number,
                                                       .key = r->key,
                                                       .figure = u->n - 1,
                                                       .value = r->value,
                                                       .relative = r->scale / u->figure[u->n - 1].scale };
    }
}

static void finish(gw_case_reader *cr, const gw_node *list, const gw_band_entry *entries, gw_reaches *all)
{
    if (number_places(cr, all)) {
        int kept = keep_the_nearest(&cr->rd, list, all);
        if (!cr->rd.faults->out_of_memory) settle(cr, entries, all, kept);
    }
    free(all->reach);
    free(all->group);
}

/* The same path twice is the later one's fault, whatever it says. */
static bool is_twice(const gw_reader *rd, const gw_band_entry *entries, int i)
{
    for (int j = 0; j < i; j++)
        if (entries[j].of && strcmp(entries[j].of, entries[i].of) == 0) {
            gw_node at = gw_node_key(&entries[i].node, "of");
            gw_fault(rd, &at, "the same path stands in uncertain[%d]: keep one of them", j);
            return true;
        }
    return false;
}

static void read_list(gw_case_reader *cr, const gw_node *list)
{
    gw_reaches all = { 0 };
    int n = gw_node_count(list), i = 0;
    gw_band_entry *entries = gw_reader_make(&cr->rd, n + 1, sizeof *entries);
    if (!entries) return;
    for (const cJSON *e = gw_first(list); e; e = gw_node_next(e), i++) {
        gw_node node = gw_node_entry(list, e, i);
        if (read_entry(&cr->rd, &node, &entries[i]) && !is_twice(&cr->rd, entries, i))
            gw_reach_add(cr, &entries[i], i, &all);
    }
    finish(cr, list, entries, &all);
}

/* The bands of common practice are entries like others, without a place in the file. */
typedef struct usual {
    int n, capacity;
    gw_band_entry *entry;
} usual;

static void take(gw_case_reader *cr, usual *list, const gw_node *node, double percent, double mm)
{
    gw_buf of = { 0 };
    gw_path_write(&of, node);
    gw_band_entry *e = &list->entry[list->n];
    *e = (gw_band_entry){ .of = gw_keep(&cr->rd, gw_buf_str(&of)) };
    e->unit = mm > 0.0 ? GW_BAND_MM : GW_BAND_PERCENT;
    e->size[0] = mm > 0.0 ? mm : percent;
    if (of.failed) cr->rd.faults->out_of_memory = true;
    gw_buf_free(&of);
    if (e->of && list->n < list->capacity) list->n++;
}

static double usual_percent(const gw_node *bush)
{
    static const char *const WORDS[] = { "rates", "bonded", "unbonded", "measured" };
    gw_node type = gw_node_key(bush, "type");
    for (size_t i = 0; i < GW_COUNT(WORDS); i++)
        if (cJSON_IsString(type.json) && strcmp(type.json->valuestring, WORDS[i]) == 0)
            return i < 3 ? BUSH_PERCENT : MEASURED_PERCENT;
    return 0.0;
}

/* Bushes under "bushes" and in place, and everything under a "points_mm", wherever in the file they are. */
static void look_through(gw_case_reader *cr, const gw_node *node, bool is_bushes, usual *list)
{
    int index = 0;
    for (const cJSON *e = gw_first(node); e; e = gw_node_next(e)) {
        gw_node entry = gw_node_entry(node, e, index++);
        bool bush = is_bushes || (entry.key && strcmp(entry.key, "bush") == 0);
        bool fits = node->key && strcmp(node->key, "fits") == 0;
        if (!e->child) continue;
        if (entry.key && strcmp(entry.key, "points_mm") == 0)
            take(cr, list, &entry, 0, POINT_MM);
        else if ((bush || fits) && cJSON_IsObject(e)) {
            if (usual_percent(&entry) > 0.0) take(cr, list, &entry, usual_percent(&entry), 0);
        } else
            look_through(cr, &entry, false, list);
    }
}

static void add_bracket(gw_case_reader *cr, gw_band_entry *entry, int index, gw_reaches *all)
{
    gw_node ride = gw_node_key(&cr->top, "ride"), key = gw_node_key(&ride, GW_KEY_BRACKET);
    if (!cJSON_IsObject(ride.json) || cJSON_IsNull(key.json) || (key.json && !cJSON_IsNumber(key.json)))
        return;
    *entry = (gw_band_entry){ .of = "ride." GW_KEY_BRACKET, .unit = GW_BAND_PERCENT };
    void *more = realloc(all->reach, (size_t)(all->n + 1) * sizeof *all->reach);
    if (more) all->reach = more;
    void *groups = realloc(all->group, (size_t)(all->n_groups + 1) * sizeof *all->group);
    if (groups) all->group = groups;
    if (!more || !groups) {
        cr->rd.faults->out_of_memory = true;
        return;
    }
    all->reach[all->n++] = (gw_reach){ .json = ride.json,
                                       .key = GW_KEY_BRACKET,
                                       .entry = index,
                                       .steps = 2,
                                       .group = all->n_groups,
                                       .value = key.json ? key.json->valuedouble : GW_USUAL_BRACKET_N_PER_MM,
                                       .scale = gw_scale_of_percent(BRACKET_PERCENT) };
    all->group[all->n_groups++] = (gw_group){ entry->of, false };
    cr->c->uncertain.n_ride = 1;
}

static void take_usual(gw_case_reader *cr)
{
    gw_node bushes = gw_node_key(&cr->top, "bushes"), corners = gw_node_key(&cr->top, "corners");
    gw_node axles = gw_node_key(&cr->top, "axles"), kits = gw_node_key(&cr->top, "kits");
    gw_reaches all = { 0 };
    usual list = { .capacity = cr->c->n_bushes + 16 };
    if (!(list.entry = gw_reader_make(&cr->rd, list.capacity + 2, sizeof *list.entry))) return;
    look_through(cr, &bushes, true, &list);
    look_through(cr, &corners, false, &list);
    look_through(cr, &axles, false, &list);
    look_through(cr, &kits, false, &list);
    for (int i = 0; i < list.n; i++) gw_reach_add(cr, &list.entry[i], i, &all);
    add_bracket(cr, &list.entry[list.n], list.n, &all);
    finish(cr, NULL, list.entry, &all);
}

void gw_read_uncertain(gw_case_reader *cr)
{
    gw_node list = gw_node_key(&cr->top, "uncertain");
    if (list.json) {
        cr->c->uncertain.given = true;
        if (gw_get_list(&cr->rd, &cr->top, "uncertain", GW_REQUIRED, &list) &&
            gw_is_within(&cr->rd, &list, MAX_ENTRIES, "entries"))
            read_list(cr, &list);
    } else if (gw_faults_count(cr->rd.faults) == 0)
        take_usual(cr);
}

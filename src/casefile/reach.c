/* SPDX-License-Identifier: MIT */
/*
 * The kinds of places that a band can stand on: bushes, points, numbers, and objects or pairs of numbers.
 */
#include "casefile/reach.h"

#include "casefile/nearest.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

double gw_scale_of_percent(double percent)
{
    return 0.5 * log1p(0.01 * percent);
}

/* Slope of ln E over hardness. A. N. Gent, Rubber Chemistry and Technology 31 (1958) 896:
 * E = 0.0981 (56 + 7.62336 h) / (0.137505 (254 - 2.54 h)) MPa. */
double gw_scale_of_hardness(double points, double h)
{
    return 0.5 * points * (7.62336 / (56.0 + 7.62336 * h) + 1.0 / (100.0 - h));
}

/* What the adding functions share. */
typedef struct adder {
    gw_case_reader *cr;
    const gw_band_entry *entry;
    int index, steps;
    int shared[3]; /* groups of an entry whose figures go together, by coordinate; -1: not yet */
    bool told;     /* a fault has been told */
    gw_reaches *out;
} adder;

static gw_node at_key(const adder *a, const char *key)
{
    return gw_node_key(&a->entry->node, key);
}

const char *const GW_BAND_KEYS[GW_BAND_UNITS] = { "percent", "mm", "deg", "hardness_points" };

#define TELL(a, ...)                                                                                         \
    do {                                                                                                     \
        gw_node tell_at = at_key(a, GW_BAND_KEYS[(a)->entry->unit]);                                         \
        if (!(a)->told) gw_fault(&(a)->cr->rd, &tell_at, __VA_ARGS__);                                       \
        (a)->told = true;                                                                                    \
    } while (0)

static bool grow(adder *a, void **list, int *capacity, int n, size_t size)
{
    if (n < *capacity) return true;
    int more = *capacity ? 2 * *capacity : 64;
    void *larger = realloc(*list, (size_t)more * size);
    if (!larger) {
        a->cr->rd.faults->out_of_memory = true;
        return false;
    }
    *list = larger;
    *capacity = more;
    return true;
}

static int new_group(adder *a, const char *of, bool many)
{
    gw_reaches *out = a->out;
    void *list = out->group;
    if (!grow(a, &list, &out->group_capacity, out->n_groups, sizeof *out->group)) return -1;
    out->group = list;
    out->group[out->n_groups] = (gw_group){ of, many };
    return out->n_groups++;
}

static const char *kept_path(adder *a, const gw_node *node, const char *tail)
{
    gw_buf text = { 0 };
    gw_path_write(&text, node);
    gw_buf_add(&text, tail);
    if (text.failed) a->cr->rd.faults->out_of_memory = true;
    const char *kept = gw_keep(&a->cr->rd, gw_buf_str(&text));
    gw_buf_free(&text);
    return kept;
}

/* A group of a place's own, or the one of the whole entry: for points one a coordinate. */
static int group_for(adder *a, const gw_node *node, int axis, bool many)
{
    static const char *const AXES[] = { "", "[0]", "[1]", "[2]" };
    if (!a->entry->together) return new_group(a, kept_path(a, node, ""), many);
    int *shared = &a->shared[axis < 0 ? 0 : axis];
    if (*shared < 0) {
        gw_buf text = { 0 };
        gw_buf_add(&text, a->entry->of);
        gw_buf_add(&text, AXES[axis + 1]);
        *shared = new_group(a, gw_keep(&a->cr->rd, gw_buf_str(&text)), true);
        gw_buf_free(&text);
    }
    return *shared;
}

static void add(adder *a, gw_reach reach)
{
    gw_reaches *out = a->out;
    void *list = out->reach;
    if (reach.group < 0 || !grow(a, &list, &out->capacity, out->n, sizeof *out->reach)) return;
    out->reach = list;
    reach.entry = a->index;
    reach.steps = a->steps;
    out->reach[out->n++] = reach;
}

static bool ends_with(const char *text, const char *tail)
{
    size_t n = strlen(text), m = strlen(tail);
    return n >= m && strcmp(text + n - m, tail) == 0;
}

/* The unit is in the key, or in that of the list or object that the number stands in. */
static bool key_says(const gw_node *node, const char *unit)
{
    char tail[12], per[12];
    snprintf(tail, sizeof tail, "_%s", unit);
    snprintf(per, sizeof per, "per_%s", unit);
    for (int up = 0; node && up < 4; node = node->up, up++)
        if (node->key && ends_with(node->key, tail)) return !ends_with(node->key, per);
    return false;
}

static bool is_rate(const gw_node *node)
{
    return node->key && strstr(node->key, "_per_") != NULL;
}

/* What a band on this number may be given in. */
static const char *units_for(const gw_node *node)
{
    const double value = node->json->valuedouble;
    const bool mm = key_says(node, "mm"), deg = key_says(node, "deg");
    if (value > 0.0 && isfinite(value))
        return mm ? "\"mm\" or \"percent\"" : deg ? "\"deg\" or \"percent\"" : "\"percent\"";
    return mm ? "\"mm\"" : deg ? "\"deg\"" : NULL;
}

static void refuse_unit(adder *a, const gw_node *node)
{
    char found[80];
    const char *units = units_for(node);
    if (a->entry->unit == GW_BAND_PERCENT)
        TELL(a, "expected a figure above 0, found %s: a band in percent of it has no size; %s%s",
             gw_found(node, found), units ? "give " : "leave it out", units ? units : "");
    else
        TELL(a, "%s%s%sthis is no figure in %s%s", units ? "expected " : "", units ? units : "",
             units ? ": " : "", GW_BAND_KEYS[a->entry->unit],
             units ? "" : ", and one in percent would have to be above 0: leave it out");
}

static bool fits_number(adder *a, const gw_node *node)
{
    const double value = node->json->valuedouble;
    switch (a->entry->unit) {
    case GW_BAND_MM:
    case GW_BAND_DEG:
        if (a->entry->by_axis) {
            TELL(a, "three numbers are for points; give one");
            return false;
        }
        if (key_says(node, GW_BAND_KEYS[a->entry->unit])) return true;
        refuse_unit(a, node);
        return false;
    case GW_BAND_PERCENT:
        if (value > 0.0 && isfinite(value)) return true;
        refuse_unit(a, node);
        return false;
    case GW_BAND_HARDNESS:
        TELL(a, "expected a bush or its material: only a compound has a hardness");
        return false;
    }
    return false;
}

static double scale_of(const adder *a, int axis)
{
    const gw_band_entry *e = a->entry;
    double size = e->size[e->by_axis ? axis : 0];
    return e->unit == GW_BAND_PERCENT ? gw_scale_of_percent(size) : 0.5 * size;
}

static void add_number(adder *a, const gw_node *node, int group)
{
    if (!fits_number(a, node)) return;
    if (group < 0) group = group_for(a, node, -1, false);
    add(a,
        (gw_reach){
            .json = node->json, .group = group, .value = node->json->valuedouble, .scale = scale_of(a, 0) });
}

static bool within_axles(const gw_node *node)
{
    for (; node; node = node->up)
        if (node->key && strcmp(node->key, "axles") == 0) return true;
    return false;
}

static void add_point(adder *a, const gw_node *node)
{
    int axis = 0;
    if (a->entry->unit != GW_BAND_MM) {
        TELL(a, "expected \"mm\": this is a point");
        return;
    }
    for (const cJSON *e = gw_first(node); e; e = gw_node_next(e), axis++) {
        gw_node entry = gw_node_entry(node, e, axis);
        if (axis == 1 && e->valuedouble == 0.0 && within_axles(node))
            continue; /* on the centre line it stays */
        add(a, (gw_reach){ .json = e,
                           .group = group_for(a, &entry, axis, false),
                           .value = e->valuedouble,
                           .scale = scale_of(a, axis) });
    }
}

static bool all_numbers(const gw_node *node)
{
    for (const cJSON *e = gw_first(node); e; e = gw_node_next(e))
        if (!cJSON_IsNumber(e)) return false;
    return gw_node_count(node) > 0;
}

static bool is_point(const gw_node *node)
{
    if (!cJSON_IsArray(node->json) || gw_node_count(node) != 3 || !all_numbers(node)) return false;
    const char *in = node->up ? node->up->key : NULL;
    if (in && strcmp(in, "points_mm") == 0) return true;
    return node->key && (strcmp(node->key, "centre_mm") == 0 || strcmp(node->key, "at") == 0 ||
                         strcmp(node->key, "to") == 0);
}

static void add_points(adder *a, const gw_node *points)
{
    for (const cJSON *e = gw_first(points); e; e = gw_node_next(e)) {
        gw_node point = gw_node_entry(points, e, 0);
        if (is_point(&point)) add_point(a, &point);
    }
}

static const gw_bush *bush_of(const gw_case_reader *cr, const cJSON *json)
{
    for (int i = 0; i < cr->c->n_bushes; i++)
        if (cr->bush_json[i] == json) return &cr->c->bushes[i];
    return NULL;
}

static bool is_rigid(const gw_node *node)
{
    gw_node type = gw_node_key(node, "type");
    return cJSON_IsString(type.json) && strcmp(type.json->valuestring, "rigid") == 0;
}

static const gw_value *hardness_of(const gw_bush *bush)
{
    const gw_value *h = &bush->annulus.material.hardness_irhd;
    return gw_bush_is_rubber(bush) && h->known ? h : NULL;
}

/* The factor on a bush's stiffness: percent of it, or points of its compound's hardness. */
static void add_bush(adder *a, const gw_node *node, bool one_of_all)
{
    const gw_bush *bush = bush_of(a->cr, node->json);
    const bool hard = a->entry->unit == GW_BAND_HARDNESS;
    if (!bush || (one_of_all && is_rigid(node))) return;
    const gw_value *h = hardness_of(bush);
    if (hard && !h && one_of_all) return;
    if (is_rigid(node))
        TELL(a, "nothing gives way in a rigid joint: leave this out");
    else if (hard && !h)
        TELL(a, "the compound of this bush states no hardness: give percent");
    else if (hard && (h->v < 20.0 || h->v > 95.0))
        TELL(a,
             "a hardness of %.6g is outside the 20 to 95 of the relation between hardness and stiffness: "
             "give percent",
             h->v);
    else if (!hard && a->entry->unit != GW_BAND_PERCENT)
        TELL(a, "expected \"percent\" or \"hardness_points\": this is a bush");
    else {
        gw_node factor = gw_node_key(node, GW_KEY_STIFFNESS);
        double value = cJSON_IsNumber(factor.json) ? factor.json->valuedouble : 1.0;
        double scale = hard ? gw_scale_of_hardness(a->entry->size[0], h->v) : scale_of(a, 0);
        add(a, (gw_reach){ .json = node->json,
                           .key = GW_KEY_STIFFNESS,
                           .stiffness = true,
                           .group = group_for(a, node, -1, false),
                           .value = value,
                           .scale = scale });
    }
}

static void add_bushes(adder *a, const gw_node *bushes)
{
    for (const cJSON *e = gw_first(bushes); e; e = gw_node_next(e)) {
        gw_node node = gw_node_entry(bushes, e, 0);
        add_bush(a, &node, true);
    }
}

/* Each number on its own, but for a pair of rates, which is one factor. */
static void add_numbers(adder *a, const gw_node *node)
{
    int index = 0;
    int group = cJSON_IsArray(node->json) && is_rate(node) ? group_for(a, node, -1, true) : -1;
    for (const cJSON *e = gw_first(node); e; e = gw_node_next(e)) {
        gw_node entry = gw_node_entry(node, e, index++);
        add_number(a, &entry, group);
    }
}

static void nothing_to_vary(adder *a, const gw_node *node)
{
    char found[80];
    gw_node at = at_key(a, "of");
    gw_fault(&a->cr->rd, &at,
             "expected a path to a bush, \"bushes\", a point, \"points_mm\" or a number; this leads to %s",
             gw_found(node, found));
}

static bool is_key(const gw_node *node, const char *key)
{
    return node->key && strcmp(node->key, key) == 0;
}

static void add_place(adder *a, const gw_place_path *path)
{
    const gw_node *node = &path->node[path->n];
    bool by_axis = a->entry->by_axis;
    if (path->n == 1 && is_key(node, "bushes"))
        add_bushes(a, node);
    else if (bush_of(a->cr, node->json))
        add_bush(a, node, false);
    else if (is_key(node, "material") && path->n > 0 && bush_of(a->cr, node->up->json)) {
        if (a->entry->unit == GW_BAND_HARDNESS)
            add_bush(a, node->up, false);
        else
            TELL(a,
                 "expected \"hardness_points\": this is a compound; give percent of its bush, or of one of "
                 "its figures");
    } else if (is_key(node, GW_KEY_STIFFNESS) && bush_of(a->cr, node->up->json))
        add_bush(a, node->up, false);
    else if (is_point(node))
        add_point(a, node);
    else if (is_key(node, "points_mm"))
        add_points(a, node);
    else if (by_axis)
        TELL(a, "three numbers are for points; give one");
    else if (cJSON_IsNumber(node->json))
        add_number(a, node, -1);
    else if ((cJSON_IsObject(node->json) || gw_node_count(node) == 2) && all_numbers(node))
        add_numbers(a, node);
    else
        nothing_to_vary(a, node);
}

static bool may_be_left_out(const gw_node *holder, const char *key)
{
    return strcmp(key, GW_KEY_STIFFNESS) == 0 && gw_node_key(holder, "type").json != NULL;
}

/* Bands on bands, and on what is no part of the car, are slips. */
static bool is_of_the_car(adder *a, const gw_place_path *path)
{
    static const char *const NOT[] = { "uncertain", "choose", "shop", "jobs", "shelf" };
    for (size_t i = 0; i < GW_COUNT(NOT); i++)
        if (path->n > 0 && is_key(&path->node[1], NOT[i])) {
            gw_node at = at_key(a, "of");
            gw_fault(&a->cr->rd, &at, "expected a path to what the car is made of, not to \"%s\"", NOT[i]);
            return false;
        }
    return path->n > 0;
}

void gw_reach_add(gw_case_reader *cr, const gw_band_entry *entry, int index, gw_reaches *out)
{
    adder a = { .cr = cr, .entry = entry, .index = index, .shared = { -1, -1, -1 }, .out = out };
    gw_place_path *path = malloc(sizeof *path);
    if (!path) {
        cr->rd.faults->out_of_memory = true;
        return;
    }
    gw_node at = at_key(&a, "of");
    if (gw_follow_path(&cr->rd, &at, &cr->top, entry->of, may_be_left_out, path) && is_of_the_car(&a, path)) {
        a.steps = path->n;
        add_place(&a, path);
    }
    free(path);
}

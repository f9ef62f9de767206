/* SPDX-License-Identifier: MIT */
/* Changes to a case that keep it JSON; libFuzzer's own would spend their time on broken brackets. */
#include "fuzz/target.h"

#include <cjson/cJSON.h>
#include <math.h>
#include <stdbool.h>
#include <stdlib.h>
#include <string.h>

enum { MOST_NODES = 4096, COMMENT = 1 };

typedef struct gw_tree {
    cJSON *root;
    cJSON *node[MOST_NODES], *parent[MOST_NODES];
    int n;
    unsigned state; /* of the random numbers */
} gw_tree;

/* xorshift: the same seed gives the same change everywhere. Source: G. Marsaglia, "Xorshift RNGs", Journal
 * of Statistical Software 8 (14), 2003. */
static unsigned draw(gw_tree *t, unsigned below)
{
    t->state ^= t->state << 13;
    t->state ^= t->state >> 17;
    t->state ^= t->state << 5;
    return t->state % below;
}

static double uniform(gw_tree *t, double lo, double hi)
{
    return lo + (hi - lo) * draw(t, 1u << 20) / (double)(1u << 20);
}

static void collect(gw_tree *t, cJSON *parent)
{
    for (cJSON *c = parent->child; c && t->n < MOST_NODES; c = c->next) {
        if (c->string && strncmp(c->string, "//", 2) == 0 && strcmp(c->string, "// run") != 0) continue;
        t->node[t->n] = c;
        t->parent[t->n++] = parent;
        collect(t, c);
    }
}

static bool is_point(const cJSON *node)
{
    return cJSON_IsArray(node) && cJSON_GetArraySize(node) == 3 && cJSON_IsNumber(node->child);
}

/* Any node that `like` takes, looking from a random place on; NULL: there is none. */
static int find(gw_tree *t, bool (*like)(const cJSON *, const cJSON *), const cJSON *to)
{
    int from = (int)draw(t, (unsigned)t->n);
    for (int i = 0; i < t->n; i++) {
        int at = (from + i) % t->n;
        if (like(t->node[at], to)) return at;
    }
    return -1;
}

static bool like_number(const cJSON *a, const cJSON *b)
{
    (void)b;
    return cJSON_IsNumber(a);
}

static bool like_point(const cJSON *a, const cJSON *b)
{
    return is_point(a) && a != b;
}

static bool like_string(const cJSON *a, const cJSON *b)
{
    (void)b;
    return cJSON_IsString(a);
}

static bool like_name(const cJSON *a, const cJSON *b)
{
    return a != b && a->string && b->string && strcmp(a->string, b->string) == 0 && a->type == b->type;
}

static bool like_rate(const cJSON *a, const cJSON *b)
{
    (void)b;
    return cJSON_IsNumber(a) && a->string && (strstr(a->string, "_per_mm") || strstr(a->string, "_per_deg"));
}

static void set(cJSON *node, double value)
{
    if (isfinite(value)) cJSON_SetNumberValue(node, value);
}

static double new_number(gw_tree *t, double old)
{
    static const double EDGES[] = { 0, 1, -1, 90, 180, 360, 1e-9, 1e-3, 1e3, 1e6, 1e12, 1e300, 5e-324, 0.5 };
    int other = find(t, like_number, NULL);
    switch (draw(t, 7)) {
    case 0:
        return old * pow(10.0, uniform(t, -6, 6));
    case 1:
        return old * uniform(t, 0.5, 2);
    case 2:
        return -old;
    case 3:
        return EDGES[draw(t, sizeof EDGES / sizeof *EDGES)];
    case 4:
        return t->node[other]->valuedouble;
    case 5:
        return old + uniform(t, -1, 1);
    default:
        return old * (1 + uniform(t, -1e-6, 1e-6));
    }
}

static void change_number(gw_tree *t)
{
    int at = find(t, like_number, NULL);
    if (at >= 0) set(t->node[at], new_number(t, t->node[at]->valuedouble));
}

/* From a thousandth of a newton a millimetre to a million million: what the readers allow. */
static void change_rates(gw_tree *t)
{
    for (unsigned n = 1 + draw(t, 6); n > 0; n--) {
        int at = find(t, like_rate, NULL);
        if (at >= 0) set(t->node[at], pow(10.0, uniform(t, -3, 12)));
    }
}

/* One point moves onto another, towards it, or onto the line through two others. */
static void change_point(gw_tree *t)
{
    int at = find(t, like_point, NULL);
    int a = at < 0 ? -1 : find(t, like_point, t->node[at]), b = a < 0 ? -1 : find(t, like_point, t->node[a]);
    if (b < 0) return;
    static const double NEARER[] = { 0, 1e-9, 1e-6, 1e-3, 0.5, 1, 2 };
    double s = NEARER[draw(t, 7)];
    bool in_line = draw(t, 2);
    for (int i = 0; i < 3; i++) {
        cJSON *x = cJSON_GetArrayItem(t->node[at], i);
        double pa = cJSON_GetArrayItem(t->node[a], i)->valuedouble;
        double from = in_line ? cJSON_GetArrayItem(t->node[b], i)->valuedouble : x->valuedouble;
        set(x, pa + s * (from - pa));
    }
}

static void leave_out(gw_tree *t)
{
    int at = (int)draw(t, (unsigned)t->n);
    cJSON_Delete(cJSON_DetachItemViaPointer(t->parent[at], t->node[at]));
}

static void double_entry(gw_tree *t)
{
    int at = (int)draw(t, (unsigned)t->n);
    if (cJSON_IsArray(t->parent[at])) cJSON_AddItemToArray(t->parent[at], cJSON_Duplicate(t->node[at], 1));
}

/* In place of a value another one of the same name and kind. */
static void borrow(gw_tree *t)
{
    int at = (int)draw(t, (unsigned)t->n), from = find(t, like_name, t->node[at]);
    if (from < 0) return;
    cJSON *copy = cJSON_Duplicate(t->node[from], 1);
    if (copy) cJSON_ReplaceItemViaPointer(t->parent[at], t->node[at], copy);
    if (copy && !copy->string) cJSON_Delete(cJSON_DetachItemViaPointer(t->parent[at], copy));
}

static void change_string(gw_tree *t)
{
    int at = find(t, like_string, NULL), from = find(t, like_string, NULL);
    if (at >= 0 && at != from) cJSON_SetValuestring(t->node[at], t->node[from]->valuestring);
}

/* One of the command lines that there are. */
static void change_command(gw_tree *t)
{
    static const char *const LINES[] = {
        "compare",
        "compare --format json",
        "compare --format csv",
        "deflect --format json",
        "deflect --detail",
        "deflect --format csv",
        "travel --format json",
        "travel --detail",
        "ride --format json",
        "ride",
        "rates --format json",
        "rates --explain",
        "align --format json",
        "spread --draws 100 --format json",
        "spread --draws 100 --ride",
        "spread --draws 100 --format csv",
        "compare --no-bands",
        "align",
        "choose --draws 100 --format json",
        "choose --draws 100 --detail",
        "check",

        "travel --from-mm -80 --to-mm 80 --step-mm 10 --format json",
        "travel --wheels opposite --format json",
        "travel --wheels one",
    };
    const char *line = LINES[draw(t, sizeof LINES / sizeof *LINES)];
    cJSON_DeleteItemFromObjectCaseSensitive(t->root, "// run");
    cJSON_AddStringToObject(t->root, "// run", line);
}

static void change(gw_tree *t)
{
    static void (*const WAYS[])(gw_tree *) = { change_number, change_number, change_number, change_rates,
                                               change_rates,  change_point,  change_point,  change_command,
                                               leave_out,     double_entry,  borrow,        change_string };
    WAYS[draw(t, sizeof WAYS / sizeof *WAYS)](t);
}

static size_t print(const cJSON *root, uint8_t *data, size_t room)
{
    char *text = cJSON_PrintUnformatted(root);
    size_t n = text ? strlen(text) : 0;
    if (n > room) n = 0;
    /* Bytes for the fuzzer, with no end mark. */
    if (n) memcpy(data, text, n); /* NOLINT(bugprone-not-null-terminated-result) */
    cJSON_free(text);
    return n;
}

size_t gw_fuzz_mutate(uint8_t *data, size_t size, size_t room, unsigned seed)
{
    gw_tree *t = calloc(1, sizeof *t);
    size_t n = 0;
    if (t && (t->root = cJSON_ParseWithLength((const char *)data, size)) && cJSON_IsObject(t->root)) {
        t->state = seed * 2654435761u + 1u;
        if (!t->state) t->state = 1;
        for (unsigned left = 1 + draw(t, 3); left > 0; left--) {
            t->n = 0;
            collect(t, t->root);
            if (t->n) change(t);
        }
        n = print(t->root, data, room);
    }
    if (t) cJSON_Delete(t->root);
    free(t);
    return n;
}

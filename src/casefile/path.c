/* SPDX-License-Identifier: MIT */
#include "casefile/path.h"

#include "casefile/nearest.h"

#include <ctype.h>
#include <stdlib.h>
#include <string.h>

/** One step of a path: a key, or an index where `key` is empty. */
typedef struct step {
    char key[128];
    int index;
} step;

static bool is_word(char c)
{
    return isalnum((unsigned char)c) || c == '_' || c == '-';
}

static const char *take_word(const char *s, step *out)
{
    size_t n = 0;
    while (is_word(s[n])) n++;
    if (n == 0 || n >= sizeof out->key) return NULL;
    memcpy(out->key, s, n);
    out->key[n] = '\0';
    return s + n;
}

/* What follows a bracket: an index, or a key in quotes. */
static const char *take_bracket(const char *s, step *out)
{
    if (*s == '"') {
        const char *end = strstr(++s, "\"]");
        size_t n = end ? (size_t)(end - s) : 0;
        if (n == 0 || n >= sizeof out->key) return NULL;
        memcpy(out->key, s, n);
        out->key[n] = '\0';
        return end + 2;
    }
    char *end;
    if (!isdigit((unsigned char)*s)) return NULL;
    long index = strtol(s, &end, 10);
    if (*end != ']' || index > 1000000) return NULL;
    out->key[0] = '\0';
    out->index = (int)index;
    return end + 1;
}

/* The next step from `s`, or NULL where no path goes on like this. */
static const char *take_step(const char *s, bool first, step *out)
{
    if (*s == '[') return take_bracket(s + 1, out);
    if (!first && *s++ != '.') return NULL;
    return take_word(s, out);
}

static const cJSON *entry_at(const gw_node *list, int index)
{
    if (!cJSON_IsArray(list->json)) return NULL;
    const cJSON *e = gw_first(list);
    while (e && index-- > 0) e = gw_node_next(e);
    return e;
}

static bool leads_nowhere(const gw_reader *rd, const gw_node *at, const gw_node *holder, const step *next)
{
    char hint[GW_HINT_MAX];
    gw_buf where = { 0 };
    gw_nearest near = { .want = next->key };
    gw_path_write(&where, holder);
    const char *in = where.n ? gw_buf_str(&where) : "the case";
    if (!next->key[0])
        gw_fault(rd, at, "leads to nothing: %s has no entry [%d]", in, next->index);
    else {
        if (cJSON_IsObject(holder->json))
            for (const cJSON *e = gw_first(holder); e; e = gw_node_next(e))
                gw_nearest_offer(&near, e->string);
        gw_fault(rd, at, "leads to nothing: %s has no \"%s\"%s", in, next->key, gw_nearest_hint(&near, hint));
    }
    gw_buf_free(&where);
    return false;
}

bool gw_follow_path(const gw_reader *rd, const gw_node *at, const gw_node *top, const char *path,
                    bool (*optional)(const gw_node *holder, const char *key), gw_place_path *out)
{
    const char *s = path;
    out->n = 0;
    out->node[0] = *top;
    while (*s) {
        step next = { 0 };
        const gw_node *holder = &out->node[out->n];
        if (!(s = take_step(s, out->n == 0, &next)) || out->n + 1 >= GW_MAX_STEPS) {
            gw_fault(rd, at,
                     "expected a path as messages write it, like corners.front.points_mm.tie_inner[2]");
            return false;
        }
        gw_node *node = &out->node[++out->n];
        memcpy(out->key[out->n], next.key, sizeof next.key);
        *node =
            next.key[0] && !gw_is_comment(next.key)
                ? gw_node_key(holder, out->key[out->n])
                : (gw_node){ next.key[0] ? NULL : entry_at(holder, next.index), holder, NULL, next.index };
        bool may_lack = !node->json && !*s && next.key[0] && optional && optional(holder, next.key);
        if (!node->json && !may_lack) return leads_nowhere(rd, at, holder, &next);
    }
    return true;
}

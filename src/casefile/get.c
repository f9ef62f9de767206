/* SPDX-License-Identifier: MIT */
#include "casefile/get.h"

#include "base/buf.h"
#include "casefile/nearest.h"
#include "giveway/casefile.h"

#include <stdio.h>
#include <string.h>

const char *gw_found(const gw_node *node, char text[80])
{
    const cJSON *json = node->json;
    if (!json)
        snprintf(text, 80, "nothing");
    else if (cJSON_IsNumber(json))
        snprintf(text, 80, isfinite(json->valuedouble) ? "%.10g" : "a number too large to hold",
                 json->valuedouble);
    else if (cJSON_IsString(json)) {
        gw_buf quoted = { 0 };
        gw_buf_quote(&quoted, json->valuestring);
        snprintf(text, 80, "the text %s", gw_buf_str(&quoted));
        gw_buf_free(&quoted);
    } else
        snprintf(text, 80, "%s",
                 cJSON_IsNull(json)     ? "null"
                 : cJSON_IsBool(json)   ? "true or false"
                 : cJSON_IsObject(json) ? "an object"
                                        : "a list");
    return text;
}

const char *gw_range_text(gw_range r, char text[80])
{
    snprintf(text, 80, "%s %g and %s %g", r.open_lo ? "above" : "at least", r.lo,
             r.open_hi ? "below" : "at most", r.hi);
    return text;
}

bool gw_in_range(double x, gw_range r)
{
    return isfinite(x) && (r.open_lo ? x > r.lo : x >= r.lo) && (r.open_hi ? x < r.hi : x <= r.hi);
}

static bool missing(const gw_reader *rd, const gw_node *node, gw_need need, const char *expected)
{
    if (node->json) return false;
    if (need == GW_REQUIRED) gw_fault(rd, node, "this key is missing: give %s", expected);
    return true;
}

static bool wrong(const gw_reader *rd, const gw_node *node, const char *expected)
{
    char found[80];
    gw_fault(rd, node, "expected %s, found %s", expected, gw_found(node, found));
    return false;
}

/* Only for faults: to write it for every number takes longer than to read them. */
static const char *describe_number(gw_range range, char text[100])
{
    char bounds[80];
    snprintf(text, 100, "a number %s", gw_range_text(range, bounds));
    return text;
}

bool gw_take_number(const gw_reader *rd, const gw_node *node, gw_range range, double *out)
{
    char expected[100];
    if (cJSON_IsNumber(node->json) && gw_in_range(node->json->valuedouble, range)) {
        *out = node->json->valuedouble;
        return true;
    }
    return wrong(rd, node, describe_number(range, expected));
}

bool gw_get_number(const gw_reader *rd, const gw_node *up, const char *key, gw_need need, gw_range range,
                   double *out)
{
    gw_node node = gw_node_key(up, key);
    char expected[100];
    if (node.json) return gw_take_number(rd, &node, range, out);
    if (need == GW_REQUIRED) missing(rd, &node, need, describe_number(range, expected));
    return false;
}

bool gw_get_numbers(const gw_reader *rd, const gw_node *up, const gw_number_key *keys, size_t n, void *base)
{
    bool ok = true;
    for (size_t i = 0; i < n; i++) {
        const gw_number_key *k = &keys[i];
        double x;
        if (gw_get_number(rd, up, k->key, k->need, k->range, &x)) {
            x = x * k->unit + k->shift;
            memcpy((char *)base + k->offset, &x, sizeof x);
        } else if (k->need == GW_REQUIRED || gw_node_key(up, k->key).json) {
            ok = false;
        }
    }
    return ok;
}

/* `n` numbers of a list that has exactly as many. */
static bool take_list(const gw_reader *rd, const gw_node *node, int n, gw_range range, const char *expected,
                      double *out)
{
    bool ok = true;
    int i = 0;
    double x[3];
    if (!cJSON_IsArray(node->json) || cJSON_GetArraySize(node->json) != n) return wrong(rd, node, expected);
    for (const cJSON *e = node->json->child; e; e = e->next, i++) {
        gw_node entry = gw_node_entry(node, e, i);
        if (!gw_take_number(rd, &entry, range, &x[i])) ok = false;
    }
    if (ok) memcpy(out, x, (size_t)n * sizeof *x);
    return ok;
}

bool gw_get_pair(const gw_reader *rd, const gw_node *up, const char *key, gw_range range, double out[2])
{
    gw_node node = gw_node_key(up, key);
    if (missing(rd, &node, GW_REQUIRED, "a number for both directions, or a list of two")) return false;
    if (cJSON_IsArray(node.json))
        return take_list(rd, &node, 2, range, "a number for both directions, or a list of two", out);
    if (!gw_take_number(rd, &node, range, &out[0])) return false;
    out[1] = out[0];
    return true;
}

bool gw_get_axles(const gw_reader *rd, const gw_node *up, const char *key, gw_need need, gw_range range,
                  double unit, double out[2])
{
    gw_node node;
    double x[2];
    if (!gw_get_object(rd, up, key, need, &node)) return false;
    gw_check_keys(rd, &node, NULL, 0, GW_AXLE_NAMES);
    bool front = gw_get_number(rd, &node, "front", GW_REQUIRED, range, &x[0]);
    bool rear = gw_get_number(rd, &node, "rear", GW_REQUIRED, range, &x[1]);
    if (!front || !rear) return false;
    out[0] = x[0] * unit;
    out[1] = x[1] * unit;
    return true;
}

bool gw_take_vector(const gw_reader *rd, const gw_node *node, double limit, double unit, gw_vec3 *out)
{
    const gw_range range = GW_FROM(-limit, limit);
    double x[3];
    if (!take_list(rd, node, 3, range, "a list of three numbers [x, y, z]", x)) return false;
    *out = gw_v3(x[0] * unit, x[1] * unit, x[2] * unit);
    return true;
}

bool gw_get_vector(const gw_reader *rd, const gw_node *up, const char *key, gw_need need, double limit,
                   double unit, gw_vec3 *out)
{
    gw_node node = gw_node_key(up, key);
    if (missing(rd, &node, need, "a list of three numbers [x, y, z]")) return false;
    return gw_take_vector(rd, &node, limit, unit, out);
}

bool gw_get_direction(const gw_reader *rd, const gw_node *up, const char *key, gw_need need, gw_vec3 *out)
{
    gw_node node = gw_node_key(up, key);
    gw_vec3 v;
    if (!gw_get_vector(rd, up, key, need, 1e6, 1.0, &v)) return false;
    double length = gw_norm(v);
    if (!(length >= 1e-6)) {
        gw_fault(rd, &node,
                 "expected a direction, found a vector of length zero: give [x, y, z] of any length");
        return false;
    }
    *out = gw_scale(1.0 / length, v);
    return true;
}

bool gw_get_word(const gw_reader *rd, const gw_node *up, const char *key, gw_need need, const char **out)
{
    gw_node node = gw_node_key(up, key);
    if (missing(rd, &node, need, "a text")) return false;
    if (!cJSON_IsString(node.json) || node.json->valuestring[0] == '\0')
        return wrong(rd, &node, "a text that is not empty");
    *out = node.json->valuestring;
    return true;
}

bool gw_get_text(const gw_reader *rd, const gw_node *up, const char *key, gw_need need, size_t max,
                 const char **out)
{
    gw_node node = gw_node_key(up, key);
    const char *word, *copy;
    if (!gw_get_word(rd, up, key, need, &word)) return false;
    if (strlen(word) > max) {
        gw_fault(rd, &node, "expected a text of at most %zu bytes, found %zu", max, strlen(word));
        return false;
    }
    if (!(copy = gw_keep(rd, word))) return false;
    *out = copy;
    return true;
}

static void list_words(const char *const *words, int n, char *text, size_t size)
{
    size_t used = 0;
    text[0] = '\0';
    for (int i = 0; i < n && used < size; i++)
        used += (size_t)snprintf(text + used, size - used, "%s\"%s\"",
                                 i == 0       ? ""
                                 : i == n - 1 ? " or "
                                              : ", ",
                                 words[i]);
}

bool gw_get_choice(const gw_reader *rd, const gw_node *up, const char *key, gw_need need,
                   const char *const *words, int n, int *out)
{
    char expected[200], found[80], hint[GW_HINT_MAX];
    gw_node node = gw_node_key(up, key);
    if (!node.json && need == GW_OPTIONAL) return false;
    gw_nearest near = { .want = cJSON_IsString(node.json) ? node.json->valuestring : NULL };
    for (int i = 0; near.want && i < n; i++)
        if (strcmp(words[i], near.want) == 0) {
            *out = i;
            return true;
        }
    list_words(words, n, expected, sizeof expected);
    if (missing(rd, &node, need, expected)) return false;
    if (!near.want) return wrong(rd, &node, expected);
    for (int i = 0; i < n; i++) gw_nearest_offer(&near, words[i]);
    gw_fault(rd, &node, "expected %s, found %s%s", expected, gw_found(&node, found),
             gw_nearest_hint(&near, hint));
    return false;
}

bool gw_get_flag(const gw_reader *rd, const gw_node *up, const char *key, bool *out)
{
    gw_node node = gw_node_key(up, key);
    if (!node.json) return false;
    if (!cJSON_IsBool(node.json)) return wrong(rd, &node, "true or false");
    *out = cJSON_IsTrue(node.json);
    return true;
}

bool gw_is_object(const gw_reader *rd, const gw_node *node, const char *what)
{
    return cJSON_IsObject(node->json) || wrong(rd, node, what);
}

bool gw_is_list(const gw_reader *rd, const gw_node *node, const char *what)
{
    return cJSON_IsArray(node->json) || wrong(rd, node, what);
}

bool gw_get_object(const gw_reader *rd, const gw_node *up, const char *key, gw_need need, gw_node *out)
{
    gw_node node = gw_node_key(up, key);
    if (missing(rd, &node, need, "an object { }")) return false;
    if (!gw_is_object(rd, &node, "an object { }")) return false;
    *out = node;
    return true;
}

bool gw_get_list(const gw_reader *rd, const gw_node *up, const char *key, gw_need need, gw_node *out)
{
    gw_node node = gw_node_key(up, key);
    if (missing(rd, &node, need, "a list [ ]")) return false;
    if (!gw_is_list(rd, &node, "a list [ ]")) return false;
    *out = node;
    return true;
}

bool gw_is_within(const gw_reader *rd, const gw_node *node, int max, const char *what)
{
    int n = gw_node_count(node);
    if (n <= max) return true;
    gw_fault(rd, node, "%d %s are more than the %d that are allowed", n, what, max);
    return false;
}

bool gw_is_name(const gw_reader *rd, const gw_node *at, const char *name)
{
    if (rd->again) return true;
    size_t n = strlen(name);
    bool plain = true;
    for (const char *c = name; *c; c++)
        if ((unsigned char)*c < 0x20 || *c == 0x7F) plain = false;
    if (n >= 1 && n <= GW_MAX_NAME_BYTES && plain) return true;
    gw_fault(rd, at, "expected a name of 1 to %d bytes without control characters", GW_MAX_NAME_BYTES);
    return false;
}

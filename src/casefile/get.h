/* SPDX-License-Identifier: MIT */
/**
 * Typed reading of one key. Each function checks presence, kind and range, adds a fault with the path
 * where something is wrong, and writes its output only when it returns true. A missing optional key
 * returns false without a fault and leaves the output, which so keeps its default.
 */
#ifndef GW_CASEFILE_GET_H
#define GW_CASEFILE_GET_H

#include "casefile/node.h"
#include "giveway/vec.h"

typedef enum gw_need { GW_OPTIONAL, GW_REQUIRED } gw_need;

/** Allowed numbers, in the unit of the key. An open end is not allowed itself. */
typedef struct gw_range {
    double lo, hi;
    bool open_lo, open_hi;
} gw_range;

#define GW_FROM(lo, hi)                                                                                      \
    {                                                                                                        \
        (lo), (hi), false, false                                                                             \
    } /**< lo <= x <= hi */
#define GW_ABOVE(lo, hi)                                                                                     \
    {                                                                                                        \
        (lo), (hi), true, false                                                                              \
    } /**< lo <  x <= hi */
#define GW_BETWEEN(lo, hi)                                                                                   \
    {                                                                                                        \
        (lo), (hi), true, true                                                                               \
    } /**< lo <  x <  hi */

/** A number and where it goes: stored value = number x unit + shift, at `offset` in a struct. */
typedef struct gw_number_key {
    const char *key;
    gw_need need;
    gw_range range;
    double unit, shift;
    size_t offset;
} gw_number_key;

/** What stands at a node, for "found ...": a number, a cut text, "null", "a list", "nothing". */
const char *gw_found(const gw_node *node, char text[80]);

/** True where x is finite and in the range. */
bool gw_in_range(double x, gw_range range);

/** "above 0 and at most 5000", in `text`, which is returned. */
const char *gw_range_text(gw_range range, char text[80]);

/** Number in range at a node that exists. */
bool gw_take_number(const gw_reader *rd, const gw_node *node, gw_range range, double *out);
bool gw_get_number(const gw_reader *rd, const gw_node *up, const char *key, gw_need need, gw_range range,
                   double *out);

/** Every number of a table into the struct at `base`; true where none had a fault. */
bool gw_get_numbers(const gw_reader *rd, const gw_node *up, const gw_number_key *keys, size_t n, void *base);

/** A number for both, or a list of two. */
bool gw_get_pair(const gw_reader *rd, const gw_node *up, const char *key, gw_range range, double out[2]);

/** {"front": number, "rear": number}, both needed, times `unit`. */
bool gw_get_axles(const gw_reader *rd, const gw_node *up, const char *key, gw_need need, gw_range range,
                  double unit, double out[2]);

/** Three numbers, each within +-limit, times `unit`. */
bool gw_take_vector(const gw_reader *rd, const gw_node *node, double limit, double unit, gw_vec3 *out);
bool gw_get_vector(const gw_reader *rd, const gw_node *up, const char *key, gw_need need, double limit,
                   double unit, gw_vec3 *out);

/** A direction of any length but zero, made a unit vector. */
bool gw_get_direction(const gw_reader *rd, const gw_node *up, const char *key, gw_need need, gw_vec3 *out);

/** A text of 1 to `max` bytes, kept in the reader's arena. */
bool gw_get_text(const gw_reader *rd, const gw_node *up, const char *key, gw_need need, size_t max,
                 const char **out);

/** A text that stays where it is in the tree: for names that are looked up. */
bool gw_get_word(const gw_reader *rd, const gw_node *up, const char *key, gw_need need, const char **out);

/** One of `n` words; the index of it. */
bool gw_get_choice(const gw_reader *rd, const gw_node *up, const char *key, gw_need need,
                   const char *const *words, int n, int *out);

/** true or false; may be left out. */
bool gw_get_flag(const gw_reader *rd, const gw_node *up, const char *key, bool *out);

bool gw_get_object(const gw_reader *rd, const gw_node *up, const char *key, gw_need need, gw_node *out);
bool gw_get_list(const gw_reader *rd, const gw_node *up, const char *key, gw_need need, gw_node *out);

/** False, with a fault, where the node is no object (no list). `what` is said to be expected. */
bool gw_is_object(const gw_reader *rd, const gw_node *node, const char *what);
bool gw_is_list(const gw_reader *rd, const gw_node *node, const char *what);

/** False, with a fault, where an object or list holds more than `max`. */
bool gw_is_within(const gw_reader *rd, const gw_node *node, int max, const char *what);

/** A name: 1 to GW_MAX_NAME_BYTES bytes without control characters. `at` is where to report. */
bool gw_is_name(const gw_reader *rd, const gw_node *at, const char *name);

/** Every key that is in neither list is a fault. `words` ends with NULL. */
void gw_check_keys(const gw_reader *rd, const gw_node *node, const gw_number_key *numbers, size_t n,
                   const char *const *words);

#define GW_COUNT(a) (sizeof(a) / sizeof *(a))

#endif

/* SPDX-License-Identifier: MIT */
/** Which numbers of a case an entry of `uncertain` reaches, and which entry has the last word on each. */
#ifndef GW_CASEFILE_REACH_H
#define GW_CASEFILE_REACH_H

#include "casefile/path.h"
#include "casefile/section.h"
#include "giveway/uncertain.h"

/** How an entry tells its band. */
typedef enum gw_band_unit { GW_BAND_PERCENT, GW_BAND_MM, GW_BAND_DEG, GW_BAND_HARDNESS } gw_band_unit;
enum { GW_BAND_UNITS = GW_BAND_HARDNESS + 1 };
/** Their keys. */
extern const char *const GW_BAND_KEYS[GW_BAND_UNITS];

/** One entry of the list, or one line of common practice. */
typedef struct gw_band_entry {
    gw_node node; /**< of the entry, where faults are told; no json: common practice     */
    const char *of;
    gw_band_unit unit;
    double size[3]; /**< of a point by coordinate; else size[0]                            */
    bool by_axis;   /**< three were given                                                  */
    bool together;
} gw_band_entry;

/** One number that an entry reaches. */
typedef struct gw_reach {
    const cJSON *json;   /**< the number, or its holder where `key` is given                    */
    const char *key;     /**< of a number that may be left out                                  */
    int entry, steps;    /**< of the path                                                       */
    int group;           /**< numbers with one z share a group                                  */
    int number, order;   /**< of the node in the file; of the reach among all                   */
    double value, scale; /**< as written; per z                                                 */
    bool stiffness;
} gw_reach;

/** A set of numbers with one z. */
typedef struct gw_group {
    const char *of;
    bool many;
} gw_group;

typedef struct gw_reaches {
    int n, capacity, n_groups, group_capacity;
    gw_reach *reach;
    gw_group *group;
} gw_reaches;

/** Adds what entry number `index` reaches; faults where its path or unit does not suit. */
void gw_reach_add(gw_case_reader *cr, const gw_band_entry *entry, int index, gw_reaches *out);

/** Standard deviation of the logarithm of a stiffness for a band in percent or in points at a hardness. */
double gw_scale_of_percent(double percent);
double gw_scale_of_hardness(double points, double hardness);

/** Keys that a path may name though the file leaves them out, with what is then taken. */
#define GW_KEY_STIFFNESS "stiffness_factor"
#define GW_KEY_BRACKET   "default_bracket_N_per_mm"

#endif

/* SPDX-License-Identifier: MIT */
/**
 * The only list of units in which figures are shown. Rows name a unit; the end of its key, the word behind
 * the figure and the factor follow, so that they cannot differ.
 */
#ifndef RECORD_UNIT_H
#define RECORD_UNIT_H

#include "giveway/units.h"

#include <stddef.h>

/* id, end of a key, word in a text, what a figure in SI is multiplied with, what it is divided by */
#define GW_UNIT_LIST(X)                                                                                      \
    X(PLAIN, "", "", 1.0, 1.0) /* a ratio, or a unit that the key itself tells */                            \
    X(PERCENT, "_percent", "%", 100.0, 1.0)                                                                  \
    X(MM, "_mm", "mm", 1.0, GW_MM)                                                                           \
    X(UM, "_um", "um", 1e6, 1.0)                                                                             \
    X(M, "_m", "m", 1.0, 1.0)                                                                                \
    X(DEG, "_deg", "deg", 1.0, GW_DEG)                                                                       \
    X(DEG_PER_M, "_deg_per_m", "deg/m", 1.0, GW_DEG)                                                         \
    X(DEG_PER_G, "_deg_per_g", "deg/g", 1.0, GW_DEG)                                                         \
    X(DEG_PER_S, "_deg_per_s", "deg/s", 1.0, GW_DEG)                                                         \
    X(MM_PER_G, "_mm_per_g", "mm/g", 1.0, GW_MM)                                                             \
    X(MM_PER_KN, "_mm_per_kN", "mm/kN", GW_KN, GW_MM)                                                        \
    X(DEG_PER_MM, "_deg_per_mm", "deg/mm", GW_MM, GW_DEG)                                                    \
    X(N, "_N", "N", 1.0, 1.0)                                                                                \
    X(KN, "_kN", "kN", 1.0, GW_KN)                                                                           \
    X(NM, "_Nm", "N m", 1.0, 1.0)                                                                            \
    X(N_PER_MM, "_N_per_mm", "N/mm", 1.0, GW_N_PER_MM)                                                       \
    X(NM_PER_DEG, "_Nm_per_deg", "N m/deg", 1.0, GW_NM_PER_DEG)                                              \
    X(NS_PER_MM, "_Ns_per_mm", "N s/mm", 1.0, GW_NS_PER_MM)                                                  \
    X(NMS_PER_RAD, "_Nms_per_rad", "N m s/rad", 1.0, 1.0)                                                    \
    X(N_PER_M, "_N_per_m", "N/m", 1.0, 1.0)                                                                  \
    X(PER_MM2, "_per_mm2", "1/mm2", GW_MM *GW_MM, 1.0)                                                       \
    X(M3, "_m3", "m3", 1.0, 1.0)                                                                             \
    X(MPA, "_MPa", "MPa", 1.0, GW_MPA)                                                                       \
    X(HZ, "_Hz", "Hz", 1.0, 1.0)                                                                             \
    X(HZ_OF_RAD_PER_S, "_Hz", "Hz", 1.0, 2.0 * GW_PI)                                                        \
    X(S, "_s", "s", 1.0, 1.0)                                                                                \
    X(MINUTES, "_min", "min", 1.0, 60.0)                                                                     \
    X(MS2, "_ms2", "m/s2", 1.0, 1.0)                                                                         \
    X(DB, "_dB", "dB", 1.0, 1.0)                                                                             \
    X(KG, "_kg", "kg", 1.0, 1.0)                                                                             \
    X(G, "_g", "g", 1.0, 1.0)                                                                                \
    X(KM_H, "_km_h", "km/h", 1.0, GW_KM_H)                                                                   \
    X(C, "_C", "C", 1.0, 1.0)

typedef enum gw_unit {
#define GW_AS_ENUM(id, key, word, times, over) GW_UNIT_##id,
    GW_UNIT_LIST(GW_AS_ENUM)
#undef GW_AS_ENUM
        GW_UNITS
} gw_unit;

const char *gw_unit_key(gw_unit unit);          /**< "_mm": the end of a key                      */
const char *gw_unit_word(gw_unit unit);         /**< "mm": behind a figure, or under a head       */
double gw_unit_out(gw_unit unit, double value); /**< from SI                                 */

/** A double of a struct, `at` bytes into it, in a unit: for tables of figures that differ in nothing else. */
double gw_unit_of_member(gw_unit unit, const void *of, size_t at);

#endif

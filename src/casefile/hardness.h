/* SPDX-License-Identifier: MIT */
/** A compound known by its hardness alone, between those of its family in the set of materials. */
#ifndef GW_CASEFILE_HARDNESS_H
#define GW_CASEFILE_HARDNESS_H

#include "casefile/get.h"
#include "giveway/materials.h"

typedef enum gw_gauge { GW_GAUGE_A, GW_GAUGE_D } gw_gauge;

/** Names of the families and gauges as a case writes them, in the order of their types. */
extern const char *const GW_FAMILY_WORDS[2], *const GW_GAUGE_WORDS[2];

/**
 * Both gauges on one scale: points of gauge A, those of D plus 50. That is the form log10 E = 0.0235 S -
 * 0.6403, S the reading of A (20 to 80) or of D (30 to 85) plus 50; H. J. Qi, K. Joyce, M. C. Boyce, Rubber
 * Chemistry and Technology 76 (2003) 419-435, from memory.
 */
double gw_hardness_on_scale(double points, gw_gauge gauge);

/** The least and the greatest hardness that the set has compounds of a family for, read by `gauge`. */
bool gw_hardness_range(const gw_material_set *set, gw_family family, gw_gauge gauge, double range[2]);

/**
 * The compound of that hardness: every figure in proportion between the neighbours, moduli in proportion in
 * their logarithm. What only one of the neighbours has is left out. @return false outside gw_hardness_range.
 */
bool gw_hardness_compound(const gw_material_set *set, gw_family family, gw_gauge gauge, double points,
                          gw_material *out);

/** {"family", "hardness_points", "gauge", "label"} in place of a material; true where it has no fault. */
bool gw_read_hardness(const gw_reader *rd, const gw_node *node, const gw_material_set *set, gw_material *out);

#endif

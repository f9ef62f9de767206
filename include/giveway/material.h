/* SPDX-License-Identifier: MIT */
/** A compound, its values, and how far each can be trusted. SI throughout. */
#ifndef GIVEWAY_MATERIAL_H
#define GIVEWAY_MATERIAL_H

#include "giveway/api.h"

#include <stdbool.h>

GW_API_BEGIN

enum { GW_NAME_MAX = 64, GW_SOURCE_MAX = 200 };

/** Where a value comes from. */
typedef enum gw_trust {
    GW_TRUST_GIVEN,          /**< given by the user in the case                 */
    GW_TRUST_PUBLISHED,      /**< printed in the source named                   */
    GW_TRUST_FROM_MEMORY,    /**< recalled from the source named                */
    GW_TRUST_COMMON_PRACTICE /**< a rule of the trade without a single author   */
} gw_trust;

/** One value of a material. `known` false: the compound has no such value. */
typedef struct gw_value {
    bool known;
    double v;         /**< SI value                                            */
    double tolerance; /**< relative half band, 0.2 = +-20 %, >= 0              */
    gw_trust trust;
    char source[GW_SOURCE_MAX];
} gw_value;

/** Compounds that differ in little but hardness: one may be read off between two others. */
typedef enum gw_family { GW_FAMILY_NONE, GW_FAMILY_NATURAL_RUBBER, GW_FAMILY_POLYURETHANE } gw_family;

typedef struct gw_material {
    char name[GW_NAME_MAX];
    char label[GW_NAME_MAX];
    gw_family family;                          /**< whose rung it is; none: it stands alone */
    gw_value shear_modulus;                    /**< G, small strain, slow           [Pa]  */
    gw_value bulk_modulus;                     /**< K                               [Pa]  */
    gw_value young_modulus;                    /**< E0, small strain                [Pa]  */
    gw_value shape_k;                          /**< k of Ec = E0 (1 + 2 k S^2)      [-]   */
    gw_value poisson_ratio;                    /**< for stiff materials             [-]   */
    gw_value hardness_irhd;                    /**< IRHD                            [-]   */
    gw_value hardness_shore_d;                 /**< Shore D, of what is too hard for A [-] */
    gw_value zener_gain;                       /**< d in 1 + d x/(1+x), x = (i w tau)^alpha [-] */
    gw_value zener_tau;                        /**< tau                             [s]   */
    gw_value zener_alpha;                      /**< alpha, 0 to 1                   [-]   */
    gw_value payne_gain;                       /**< Kraus: (k0 - kinf)/kinf         [-]   */
    gw_value payne_strain;                     /**< Kraus: critical shear strain    [-]   */
    gw_value payne_exponent;                   /**< Kraus: m                        [-]   */
    gw_value shear_strain_limit;               /**< lasting, peak         [-]   */
    gw_value compressive_strain_limit;         /**< lasting, peak         [-]   */
    gw_value pressure_limit;                   /**< liners: specific load [Pa]  */
    gw_value temperature_min, temperature_max; /**< [K]                 */
} gw_material;

GW_API_END

#endif

/* SPDX-License-Identifier: MIT */
/** What the tolerance of rubber's hardness makes of the answers: all of it softer, and all of it harder. */
#ifndef GIVEWAY_TOLERANCE_H
#define GIVEWAY_TOLERANCE_H

#include "giveway/api.h"
#include "giveway/study.h"

GW_API_BEGIN

/** Hardness of what is delivered, to either side of what is ordered [points]. Common practice. */
#define GW_HARDNESS_TOLERANCE 5.0

/** Of rubber whose compound states none, or that is given by its rates [points]. Common practice. */
#define GW_HARDNESS_USUAL 55.0

/** [0] all rubber softer, [1] all of it harder. */
typedef struct gw_tolerance_item {
    int kit, load;
    gw_axle axle;
    int bushes;  /**< joints of this corner whose bush is of a compound with a hardness: those that vary; 0:
                    none does */
    bool failed; /**< the load is not carried at one of the ends: the angles are not there */
    double toe[2], camber[2]; /**< changes from standing still [rad] */
} gw_tolerance_item;

typedef struct gw_tolerance_study {
    gw_arena arena;
    int n;
    gw_tolerance_item *item; /**< by kit, corner, load */
} gw_tolerance_study;

/**
 * The stop and the corner of a study (gw_pick_load) again with every elastomer bush GW_HARDNESS_TOLERANCE
 * points softer, and as many harder: types bonded and unbonded, and type rates where it resists being turned.
 * Its rates, stop included, go by exp(points x slope of Gent's relation, 7.62336/(56 + 7.62336 h) + 1/(100 -
 * h)). Wheels are set anew at each end.
 *
 * @param[in]  study  of the same case and selection.
 * @param[out] out    freed with gw_tolerance_study_free; empty on failure, and where the car does not stand
 * at an end.
 * @retval GW_OK, GW_E_RANGE, GW_E_MECHANISM, GW_E_NOMEM
 * Source: A. N. Gent, Rubber Chemistry and Technology 31 (1958) 896.
 */
gw_status gw_study_tolerance(const gw_case *c, const gw_selection *wanted, const gw_deflect_study *study,
                             gw_tolerance_study *out, gw_error *err);
void gw_tolerance_study_free(gw_tolerance_study *study);

/** NULL where the load is none of those looked at. */
const gw_tolerance_item *gw_tolerance_find(const gw_tolerance_study *study, int kit, gw_axle axle, int load);

GW_API_END

#endif

/* SPDX-License-Identifier: MIT */
/** Where a kit turns a wheel the other way than the kit that it is compared with. */
#ifndef GIVEWAY_REVERSAL_H
#define GIVEWAY_REVERSAL_H

#include "giveway/api.h"
#include "giveway/study.h"

GW_API_BEGIN

typedef struct gw_reversal {
    int kit, load;
    gw_axle axle;
    bool camber;     /**< of camber; else of toe                                               */
    double from, to; /**< changes since standing still with the baseline and with the kit [rad] */
    bool warns;      /**< the rear wheel gains toe-out under braking or cornering              */
} gw_reversal;

/** Changes smaller than this have no direction worth telling [rad]: a hundredth of a degree is printed. */
#define GW_REVERSAL_LEAST (0.01 * 0.017453292519943295)

/**
 * Whether toe or camber of one result changes to the other side, or the rear gains toe-out.
 *
 * @param of        a result of the study with another kit than the baseline; of the baseline: false.
 * @param camber    look at camber; else at toe.
 * @param[out] out  what changes; written where both kits have a result.
 */
bool gw_reversal_at(const gw_case *c, const gw_deflect_study *study, int baseline, const gw_deflection *of,
                    bool camber, gw_reversal *out);

/**
 * Under which loads toe or camber change to the other side with a kit. Toe-out at the rear that the baseline
 * does not have counts as well where the baseline's toe hardly moves, by as much as has a direction: it is what
 * makes a car nervous.
 *
 * @param[out] out  the first `most`, by load, corner, toe before camber; may be NULL where most is 0.
 * @return how many there are.
 */
int gw_reversals_find(const gw_case *c, const gw_deflect_study *study, int baseline, int kit,
                      gw_reversal *out, int most);

GW_API_END

#endif

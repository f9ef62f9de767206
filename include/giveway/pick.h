/* SPDX-License-Identifier: MIT */
/** Which load of a case stands for "the stop" and which for "the corner", wherever one has to. */
#ifndef GIVEWAY_PICK_H
#define GIVEWAY_PICK_H

#include "giveway/api.h"
#include "giveway/study.h"

GW_API_BEGIN

typedef enum gw_pick { GW_PICK_STOP, GW_PICK_CORNER } gw_pick;

/**
 * The first manoeuvre of the case that brakes (corners) and does nothing else; where there is none, the first
 * that brakes (corners) at all. Only loads count that the first kit of the study carries, in every corner
 * that it was worked out for.
 *
 * @return index into the loads of the case; -1: none.
 */
int gw_pick_load(const gw_case *c, const gw_deflect_study *study, gw_pick what);

GW_API_END

#endif

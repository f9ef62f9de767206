/* SPDX-License-Identifier: MIT */
/** From one state of a corner to another near it: one screw for each body. */
#ifndef GIVEWAY_CORNER_LEAD_H
#define GIVEWAY_CORNER_LEAD_H

#include "giveway/corner.h"

/** Numbers of a lead: six a body, the chassis counted. */
int gw_lead_length(const gw_corner *corner);

/** Adds `by` times the screws that lead from `from` to `to`, to first order in them. */
void gw_lead_add(const gw_corner *corner, const gw_state *from, const gw_state *to, double by, double *lead);

/** The state to which the screws lead from `from`; loads and springs stay. */
void gw_lead_follow(const gw_corner *corner, const gw_state *from, const double *lead, gw_state *to);

#endif

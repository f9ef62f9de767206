/* SPDX-License-Identifier: MIT */
/** One draw of a case, ready to be worked out: the case and its bushes. */
#ifndef STUDY_DRAWN_H
#define STUDY_DRAWN_H

#include "giveway/casefile.h"
#include "giveway/uncertain.h"
#include "study/run.h"

/** What every draw of a case shares. */
typedef struct gw_draws {
    const gw_case *c;
    gw_laws laws; /**< of the case as written; owned              */
    bool owns_laws;
    gw_method method;
} gw_draws;

gw_status gw_draws_open(const gw_case *c, const gw_selection *wanted, gw_draws *out, gw_error *err);
void gw_draws_close(gw_draws *draws);

typedef struct gw_drawn {
    gw_case c;
    gw_selection wanted; /**< everything, with the laws below      */
    gw_laws laws;
} gw_drawn;

/**
 * The car of one z a figure. Rates from shape are taken over with the factor of the bush; only bushes whose
 * own dimensions or compounds are drawn are solved anew.
 *
 * @retval GW_OK, GW_E_RANGE, GW_E_NUMERIC (no such car can be made), GW_E_NOMEM
 */
gw_status gw_drawn_make(const gw_draws *draws, gw_drawer *drawer, const double *z, gw_drawn *out,
                        gw_error *err);
/**
 * The same from a draw that differs by one figure alone (-1: by none), and outlives it: what the figure does
 * not reach is that draw's.
 */
gw_status gw_drawn_make_near(const gw_draws *draws, gw_drawer *drawer, const gw_drawn *near, const double *z,
                             int figure, gw_drawn *out, gw_error *err);
void gw_drawn_free(gw_drawn *drawn);

#endif

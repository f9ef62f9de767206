/* SPDX-License-Identifier: MIT */
/**
 * Fronts: the stiffness of a piece of rubber as its surroundings feel it, with what lies inside eliminated.
 * Two pieces are joined, what has become inner is eliminated, and so on until one is left (multifrontal
 * method: I. S. Duff and J. K. Reid, ACM Trans. Math. Software 9 (1983) 302-325).
 *
 * Loads are unknowns that are never eliminated: the amount of a prescribed motion. Their entry on the
 * diagonal of the last front is the energy form u K u of that motion, which is all that a rate needs.
 */
#ifndef BUSH_FRONT_H
#define BUSH_FRONT_H

#include "giveway/status.h"

/** Symmetric; k[column * n + row] for row >= column, what is above the diagonal has no meaning. */
typedef struct gw_front {
    int n;
    int *id; /**< names of the unknowns, ascending */
    double *k;
} gw_front;

/** What becomes of an unknown in a joined front. */
typedef enum gw_front_role { GW_FRONT_KEEP, GW_FRONT_ELIMINATE, GW_FRONT_DROP } gw_front_role;

/** Memory for n unknowns, all zero; `front` is zeroed first, so gw_front_free is always safe after. */
gw_status gw_front_alloc(gw_front *front, int n, gw_error *err);

void gw_front_free(gw_front *front);

/**
 * Joins two fronts: entries of the same name are added, what `role` says to drop is held at zero, what it
 * says to eliminate is left to come to rest.
 *
 * @param[out] out the rest; written only on success; the caller frees it
 * @retval GW_OK, GW_E_NOMEM, or GW_E_NUMERIC where what is to be eliminated has no stiffness
 */
gw_status gw_front_join(const gw_front *a, const gw_front *b,
                        gw_front_role (*role)(const void *context, int id), const void *context,
                        gw_front *out, gw_error *err);

#endif

/* SPDX-License-Identifier: MIT */
/**
 * Where every part of an axle is, at rest and under load, for drawings: both wheels with what they share.
 * Vehicle axes with the left wheel on y > 0. SI units.
 */
#ifndef GIVEWAY_PICTURE_H
#define GIVEWAY_PICTURE_H

#include "giveway/api.h"
#include "giveway/grid.h"

GW_API_BEGIN

/** How a part has moved since S0: its mark, and its attitude about that. */
typedef struct gw_part_move {
    gw_vec3 move; /**< [m]                    */
    gw_vec3 turn; /**< rotation vector [rad]  */
} gw_part_move;

/** One kit, one axle, one load. The outer wheel of a manoeuvre is the left one. */
typedef struct gw_picture {
    bool solved;             /**< false: the load cannot be carried, nothing below holds                    */
    gw_part_move *by_travel; /**< [body]: with the wheels at the same heights and nothing but their weight  */
    gw_part_move *moved; /**< [body]: under the load                                                     */
    double toe[GW_WHEELS], camber[GW_WHEELS]; /**< as the wheels stand, camber to the body [rad]          */
    double *toe_share; /**< [joint]: of the toe change of the wheel on its side; of what is shared, of
                          the left one [rad]                                                          */
    double *given;     /**< [joint]: how far the bush is deflected, from stress-free [m]               */
    double roll;       /**< of the body over the road, outwards [rad]; 0 but in a manoeuvre            */
    double rise;       /**< of the body at this axle since S0: wheels and tyres together [m]           */
} gw_picture;

typedef struct gw_axle_pictures {
    int kit;
    gw_axle axle;
    double roll_centre; /**< height above the ground at S0, mean of what both wheels' paths give [m] */
    double static_camber[GW_WHEELS]; /**< with this kit [rad] */
    gw_picture *load;                /**< [load of the case]                                    */
    gw_picture *state; /**< [brake * n_lateral + lateral] of the thinned grid; NULL without one */
} gw_axle_pictures;

typedef struct gw_picture_study {
    gw_arena arena;
    int n;
    gw_axle_pictures *item;  /**< by kit, then axle                                       */
    int n_brake, n_lateral;  /**< every GW_PICTURE_STEP-th row and column of the grid     */
    gw_vec3 *mark[GW_AXLES]; /**< [body of the pair]: its middle in the design position [m] */
} gw_picture_study;

enum { GW_PICTURE_STEP = 2 };

/**
 * Both wheels of each axle as the two studies have found them: on the road where they kept the parts there
 * (every manoeuvre; the grid planned with keep_every GW_PICTURE_STEP); else solved anew under their loads.
 *
 * @param laws  of every bush of the case.
 * @param grid  may be empty (n 0).
 * @retval GW_OK, GW_E_MECHANISM, GW_E_NUMERIC (not even at rest), GW_E_NOMEM
 */
gw_status gw_study_pictures(const gw_case *c, const gw_laws *laws, const gw_deflect_study *deflect,
                            const gw_grid_study *grid, gw_picture_study *out, gw_error *err);
void gw_picture_study_free(gw_picture_study *study);

const gw_axle_pictures *gw_pictures_find(const gw_picture_study *study, int kit, gw_axle axle);

GW_API_END

#endif

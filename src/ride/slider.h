/* SPDX-License-Identifier: MIT */
/**
 * Coulomb friction in the ride model, linearised: a slider of strength M that slips at speeds of rms sigma is
 * a dashpot sqrt(2/pi) M / sigma (R. C. Booton, IRE Trans. Circuit Theory 1 (1954) 9-18; J. B. Roberts and P.
 * D. Spanos, Random Vibration and Statistical Linearization, 1990). SI units.
 */
#ifndef RIDE_SLIDER_H
#define RIDE_SLIDER_H

#include "ride/model.h"

/** A slider that is slower sticks [rad/s, m/s]. */
#define GW_SLIDER_SLOWEST 1e-3
#define GW_DAMPER_SLOWEST 5e-4

/** What is weaker is none [N m, N]. */
#define GW_SLIDER_WEAKEST 1e-9

typedef struct gw_ride_slider {
    int joint;       /**< index; -1: a damper                                                  */
    int wheel;       /**< of a damper: 1 the right one of an axle with shared parts            */
    double strength; /**< at rest: M [N m], F_d [N]                                            */
    double turn[3];  /**< of its axes per metre of wheel-centre travel [rad/m]; damper: [0], its lengthening
                        [-] */
    double way;      /**< size of that                                                         */
    double winds_up; /**< what gives before it slips [N m/rad, N/m]; 0: nothing                */
    int n_rows;      /**< about how many axes                                                  */
    gw_ride_element row[3]; /**< rotation about them; of the damper its shortening                    */
    int element;            /**< which holds its dashpot; -1: it stands beside the joint's rates      */
    double speed;           /**< sigma on this road [rad/s, m/s]                                      */
    double c;               /**< [N m s/rad, N s/m]                                                   */
    bool sticks;
} gw_ride_slider;

/** Strengths and ways, by gw_corner_friction. */
gw_status gw_sliders_find(gw_ride_model *model, const gw_corner_ws *ws, gw_arena *arena, gw_error *err);

/** Their rows, once bodies and elements stand. */
void gw_sliders_place(gw_ride_model *model);

/** The slider of a joint; NULL: it has none. */
static inline const gw_ride_slider *gw_slider_of(const gw_ride_model *model, int joint)
{
    for (int i = 0; i < model->n_sliders; i++)
        if (model->sliders[i].joint == joint) return &model->sliders[i];
    return NULL;
}

/** Does the joint have one? */
static inline bool gw_ride_slides(const gw_ride_model *model, int joint)
{
    return gw_slider_of(model, joint) != NULL;
}

/** What winds up before it slips [N m/rad]; 0: nothing. */
static inline double gw_ride_winds_up(const gw_ride_model *model, int joint)
{
    const gw_ride_slider *slider = gw_slider_of(model, joint);
    return slider ? slider->winds_up : 0.0;
}

/** The dashpot of a slider that slips at rms `speed`; it sticks where that is too slow. */
void gw_slider_set(gw_ride_slider *slider, double speed);

/** All dashpots into the model; gw_ride_model_set follows. */
void gw_sliders_apply(gw_ride_model *model);

#endif

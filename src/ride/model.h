/* SPDX-License-Identifier: MIT */
/**
 * The corner in the frequency domain: rigid bodies joined by springs of one degree each.
 *
 * Every bush gives six of them (three along, three about its axes); spring, damper and the two ways of
 * the tyre give one each. An element with row b and complex stiffness k adds k b b^T to the dynamic
 * stiffness D(p) = sum k(p) b b^T + p^2 M, p = i w. Members are numbered first, chassis and upright
 * last, and D is kept by rows from the first entry on (a skyline), so that one factorisation condenses
 * member by member without further ado.
 */
#ifndef RIDE_MODEL_H
#define RIDE_MODEL_H

#include "giveway/ride_unknowns.h"
#include "ride/belt.h"
#include "ride/lanes.h"

#include <stddef.h>

typedef enum gw_element_kind {
    GW_ELEMENT_BUSH,
    GW_ELEMENT_SPRING,
    GW_ELEMENT_DAMPER,
    GW_ELEMENT_TYRE_VERTICAL,
    GW_ELEMENT_TYRE_FORE_AFT,
    GW_ELEMENT_WOUND /**< a bonded bush that turns on a slider in series with it */
} gw_element_kind;

enum { GW_ELEMENT_DOFS = 12 };

/** What holds a motion that nothing ever pushes: any stiffness will do [N/m]. */
#define GW_RIDE_GROUND 1e6

typedef struct gw_ride_element {
    gw_element_kind kind;
    int n;                       /**< degrees of freedom it touches                                 */
    int dof[GW_ELEMENT_DOFS];    /**< all different                                                 */
    double row[GW_ELEMENT_DOFS]; /**< deflection = sum row x                                        */
    double rate;                 /**< static rate [N/m or N m/rad]; damper: c [N s/m]               */
    double series;               /**< bracket or top mount in series [N/m]; 0: rigid                */
    double slip;                 /**< of damper and wound: dashpot of its slider [N s/m, N m s/rad] */
    int joint;                   /**< of a bush: index of its joint; -1                             */
    bool shifts;                 /**< a translation of a joint, which links and lugs let give       */
    int zener;                   /**< of a bush: index into the model's laws of frequency; -1: none */
    int path;                    /**< attachment to the chassis whose force it carries; -1: none    */
    bool constant;               /**< stiffness does not depend on frequency                        */
    bool pure;                   /**< its law times its rate and nothing else: added with its like  */
    double complex steady;       /**< of a bush: stiffness without its law of frequency             */
    double complex soft;         /**< give of what stands in series with a bush [m/N]               */
    double complex k;            /**< constant: stiffness as the model now stands                   */
    gw_lanes *now;               /**< not constant: stiffness at the frequencies last assembled     */
} gw_ride_element;

/** Where a body's coordinates are: velocity at `datum` and rotation, both along the columns of `basis`. */
typedef struct gw_ride_body {
    gw_vec3 datum;
    gw_mat3 basis;
    int dof[6];  /**< -1: does not move that way */
    double hand; /**< 1; -1: the mirror image of a body, on whose coordinates it moves */
} gw_ride_body;

/** Which part of the stiffness is wanted: 0 is Re(K) with brackets and tyre spring alone, 1 all of it. */
typedef double gw_damping_share;

typedef struct gw_ride_model {
    const gw_corner *corner;
    const gw_fit *fit;
    const gw_ride *settings;
    gw_ride_draw draw;
    const bool *changed; /**< [n_joints] its bush is not the first kit's; NULL: none       */
    double chassis_mass;
    int n; /**< degrees of freedom */
    gw_ride_body *bodies;
    int chassis_x, chassis_z, wheel; /**< first of the upright's six: at the wheel centre, vehicle axes */
    int n_wheels;                    /**< of an axle with shared parts: 2                              */
    int right_wheel;                 /**< its right upright's first; the left one's where both move alike */
    bool alike; /**< an axle that is its own mirror image: both sides on one set of coordinates */
    gw_bush_tangent *at_rest; /**< [n_joints] the bush alone, for small motions about S0        */
    double *amplitude;        /**< [n_joints] at which its bush is taken [m]                          */
    int n_zeners;
    const gw_dynamic_law **zener; /**< [n_zeners] laws of frequency, all different                  */
    gw_lanes *zener_now;          /**< [n_zeners] at the frequencies last assembled                 */
    double *zener_sum; /**< [n_zeners] skylines: sum of rate row row^T over the pure elements of a law */
    double friction;   /**< of all sliders at the wheel, before it moves [N] */
    int n_sliders;
    struct gw_ride_slider *sliders; /**< joints in their order, the damper last (ride/slider.h)     */
    double *dash;                   /**< skyline: sum of c row row^T over sliders beside a joint's rates */
    int n_elements;
    gw_ride_element *elements;
    int n_paths;
    gw_ride_path *paths;
    int *start; /**< [n] first column of a row of the skyline                             */
    int *base;  /**< [n] entry (r, c) lies at base[r] + c                                 */
    int n_entries;
    gw_stretch_of_row *run;     /**< of entries that are not zero throughout: columns that both rows have */
    int *first_run;             /**< [n_entries + 1] those of an entry; of one that stays zero: none       */
    gw_stretch_of_row *row_run; /**< columns of a row, left of its diagonal, that are not zero throughout  */
    int *first_row_run;         /**< [n + 1] those of a row                                               */
    double *mass;               /**< skyline                                                              */
    double complex *fixed;      /**< skyline: sum of the constant elements                                */
    bool *held;                 /**< [n] a motion that nothing resists and that has no mass               */
    bool *dashed;               /**< [n] the same but for sliders                                         */
    gw_lanes *factor;           /**< skyline: L below the diagonal                                        */
    gw_lanes *pivot;            /**< [n] 1 / D                                                            */
    gw_belt belt;               /**< of the tyre; off while modes are looked for                          */
    int evaluations;
} gw_ride_model;

/**
 * Build the model; everything is taken from `arena`. `corner`, `fit`, `settings` must outlive it.
 * @retval GW_OK, GW_E_RANGE (names the value), GW_E_NOMEM
 */
gw_status gw_ride_model_open(gw_ride_model *model, const gw_corner *corner, const gw_fit *fit,
                             const gw_ride *settings, gw_arena *arena, gw_error *err);
/** The same, quicker where the corner was opened before, with whatever fitted; NULL: it was not. */
gw_status gw_ride_model_open_like(gw_ride_model *model, const gw_corner *corner, const gw_fit *fit,
                                  const gw_ride *settings, const gw_corner_ws *like, gw_arena *arena,
                                  gw_error *err);

/** With the tyre's belt, where it has one, or without it. */
void gw_ride_model_belt(gw_ride_model *model, bool on);

/** Stiffness between road (or belt) and wheel, up and fore and aft, at one p. */
double complex gw_tyre_upright(const gw_ride_model *model, double complex p);
double complex gw_tyre_along(const gw_ride_model *model, double complex p);

/** The model with a draw; to be called again where amplitudes of bushes or sliders have changed. */
void gw_ride_model_set(gw_ride_model *model, const gw_ride_draw *draw);

/* axle.c: coordinates of one wheel's bodies, and of both wheels and what they share */

void gw_ride_place_bodies(gw_ride_model *model);

/** First coordinates of a wheel: 0 the left one. */
static inline int gw_ride_wheel(const gw_ride_model *model, int wheel)
{
    return wheel == 0 ? model->wheel : model->right_wheel;
}

/** What a squared force of an axle counts for one wheel. */
static inline double gw_ride_one_wheel(const gw_ride_model *model)
{
    return 1.0 / model->n_wheels;
}

/* inputs.c */

/** GW_E_RANGE where a value that ride needs is missing; else the mass of the chassis at this corner [kg]. */
gw_status gw_ride_check(const gw_corner *corner, const gw_ride *settings, double *mass, gw_error *err);

/** Stiffness of the bracket of a joint [N/m]: on the chassis the joint's own, else the default; 0: rigid. */
double gw_ride_bracket(const gw_ride *settings, const gw_joint *joint);

/* hold.c */

/** Is this member free to spin about the line through its joints? Then `axis` is that line. */
bool gw_ride_free_spin(const gw_ride_model *model, int body, gw_vec3 *axis);

/** Marks in model->held what neither stiffness nor mass resists. */
gw_status gw_ride_hold(gw_ride_model *model, gw_arena *arena, gw_error *err);

/* element.c */

/** Point on a body: coefficients of its movement along `direction`, added to the element with a sign. */
void gw_element_add_point(gw_ride_element *element, const gw_ride_body *body, gw_vec3 at, gw_vec3 direction,
                          double sign);

/** Row of a joint: `twist` is (v, phi) about the body's datum in vehicle axes. */
void gw_element_add_twist(gw_ride_element *element, const gw_ride_body *body, const double twist[6],
                          double sign);

/** Rows of a joint's three deflections and three rotations along the axes of its tangent; `row` starts
 * zeroed. */
void gw_ride_joint_rows(const gw_ride_model *model, int joint, gw_ride_element row[6]);

/** Complex stiffness of a bush alone at the frequencies last assembled, without what stands in series. */
gw_lanes gw_element_own(const gw_ride_model *model, const gw_ride_element *element);

/** Stiffness of an element that is neither constant nor pure at eight p into element->now. */
void gw_element_update(gw_ride_model *model, gw_ride_element *element, const gw_lanes *p,
                       gw_damping_share share);

/** Derivative of an element's stiffness with p; the slow drift of a bush law with frequency is left out. */
void gw_element_slope(const gw_ride_model *model, const gw_ride_element *element, const gw_lanes *p,
                      gw_damping_share share, gw_lanes *out);

/** Deflection of an element: row times x. */
gw_lanes gw_element_deflection(const gw_ride_element *element, const gw_lanes *x);

/** Stiffness of an element as last assembled with all of the damping. */
gw_lanes gw_element_stiffness(const gw_ride_model *model, const gw_ride_element *element);

/** Force in an element: that stiffness times deflection. */
gw_lanes gw_element_force(const gw_ride_model *model, const gw_ride_element *element, const gw_lanes *x);

/* fill.c */

/** Which entries of the factor are not zero throughout, and which products make them. */
gw_status gw_ride_find_fill(gw_ride_model *model, gw_arena *arena, gw_error *err);

/* skyline.c */

/** D at eight p into model->factor, with a share of the damping; bushes' laws and elements follow. */
void gw_ride_assemble(gw_ride_model *model, const gw_lanes *p, gw_damping_share share);

/** Factorise D at eight p; `share` of the damping. */
void gw_ride_factorise(gw_ride_model *model, const gw_lanes *p, gw_damping_share share);

/** Solve D x = b in place after gw_ride_factorise; entries of b before `first` must be zero. */
void gw_ride_backsolve(const gw_ride_model *model, int first, gw_lanes *x);

/** y = dD/dp x. */
void gw_ride_slope_times(const gw_ride_model *model, const gw_lanes *p, gw_damping_share share,
                         const gw_lanes *x, gw_lanes *y);

/* response.c */

/** Movement of every degree of freedom per metre of road at eight p; x holds n entries. */
void gw_ride_respond(gw_ride_model *model, const gw_lanes *p, gw_lanes *x);

/** The same at eight frequencies [Hz]. */
void gw_ride_respond_hz(gw_ride_model *model, const double hz[GW_LANES], gw_lanes *x);

/**
 * Squared force of each attachment for a movement x, after gw_ride_factorise: out[path * GW_LANES + lane].
 * `damper` is a force in each damper besides; NULL: none.
 */
void gw_ride_path_squares(const gw_ride_model *model, const gw_lanes *x, const gw_lanes *damper, double *out);

/** Mean power [W] per squared metre of road amplitude that the road puts in, and that is lost. */
gw_status gw_ride_power(gw_ride_model *model, double hz, double *put_in, double *lost, gw_error *err);

#endif

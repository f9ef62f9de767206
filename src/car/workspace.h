/* SPDX-License-Identifier: MIT */
/** What the files of the car on the road share. Everything here is private to src/car. */
#ifndef GIVEWAY_CAR_WORKSPACE_H
#define GIVEWAY_CAR_WORKSPACE_H

#include "corner/workspace.h"
#include "giveway/road_car.h"

/** Directions in which a wheel's contact changes: its upright's twist, the chassis' height, roll and pitch.
 */
enum { GW_TWIST = 6, GW_HEIGHT = GW_TWIST, GW_ROLL, GW_PITCH, GW_WAYS };

/** Unknowns besides the uprights: height, roll, pitch, then lateral forces of the axles, or four preloads. */
enum { GW_MOST_UNKNOWNS = 3 + GW_AXLES * GW_WHEELS };

/** Where the chassis stands; the road's axes seen from it. */
typedef struct gw_stance_on_road {
    double height, roll, pitch; /**< [m], [rad]: R_y(pitch) R_x(roll)          */
    gw_vec3 along, left, up;    /**< the road's x, y and z in chassis axes     */
} gw_stance_on_road;

/** What a manoeuvre asks of the car, SI. */
typedef struct gw_road_load {
    double ax, ay; /**< acceleration [m/s^2]; ay < 0: the left wheels are the outer ones */
    double brake[GW_AXLES], drive[GW_AXLES]; /**< force on one wheel along x [N]; braking < 0              */
} gw_road_load;

/** One wheel on the road; places about the axle's datum, chassis axes. */
typedef struct gw_contact {
    gw_vec3 hub, axis;
    double lean;     /**< up . axis                                      */
    double level;    /**< sqrt(1 - lean^2)                               */
    double above;    /**< of the wheel centre over the road [m]          */
    double length;   /**< wheel centre to contact point [m]              */
    gw_vec3 down;    /**< unit vector along it                           */
    gw_vec3 patch;   /**< contact point                                  */
    double vertical; /**< load [N]                                       */
    double lateral;  /**< force along the road's y [N]                   */
} gw_contact;

typedef struct gw_road_wheel {
    gw_vec3 axis_set;  /**< as it is set at S0, chassis axes, pointing outboard */
    gw_vec3 axis_body; /**< the same in the upright's design frame             */
    gw_mat3 upright0;  /**< attitude of the upright at S0, the wheel's own axes */
    gw_contact contact;
} gw_road_wheel;

/** What a link carries: on body b, and its moment in the bush frame. */
typedef struct gw_felt {
    gw_wrench wrench;
    double m[3];
} gw_felt;
/** Joints have a place each, then bodies: kits differ in which of them is held. */
static inline size_t gw_felt_places(const gw_corner *corner)
{
    return (size_t)(corner->n_joints + corner->n_bodies);
}
static inline int gw_felt_place(const gw_corner_ws *ws, int link)
{
    return link < ws->corner->n_joints ? link : ws->corner->n_joints + ws->link[link].b;
}

typedef struct gw_road_axle {
    gw_corner_ws *ws;
    const gw_felt *felt;           /**< [place] where the car starts from, by a guess; NULL: not known */
    gw_state state, start, resume; /**< now, S0 on the road, kept                */
    gw_link_state *strain0;        /**< joints at S0 on the road                 */
    gw_vec3 place;                 /**< the datum in the car's axes              */
    double made_up;                /**< of a bar, for a wheel's travel [N/m]     */
    double static_load;            /**< of a wheel [N]                           */
    double free_length, tyre, mass;
    double lateral, lateral0; /**< force of the axle along the road's y [N] */
    gw_road_wheel wheel[GW_WHEELS];
} gw_road_axle;

/** Factors of a dense matrix, rows scaled and swapped. */
enum { GW_MOST_ROWS = 6 * GW_WHEELS };
typedef struct gw_factors {
    double a[GW_MOST_ROWS * GW_MOST_ROWS], scale[GW_MOST_ROWS];
    int pivot[GW_MOST_ROWS];
} gw_factors;

/** What is kept of a step: the factors of each axle's uprights and of the car's few unknowns. */
typedef struct gw_step_factors {
    gw_factors upright[GW_AXLES], car;
    double by_unknown[GW_AXLES][6 * GW_WHEELS][1 + GW_MOST_UNKNOWNS]; /**< [row][1 + unknown]; 0: scratch */
} gw_step_factors;

struct gw_road {
    gw_arena arena;
    const gw_vehicle *vehicle;
    double mass;    /**< of the chassis [kg]                          */
    gw_vec3 centre; /**< of the chassis' mass, in its axes            */
    gw_road_axle axle[GW_AXLES];
    gw_stance_on_road stance, stance0, kept;
    gw_road_load load;
    gw_manoeuvre manoeuvre;
    bool setting;   /**< S0 is being looked for: preloads unknown, axes fixed in the chassis */
    bool once;      /**< one step of Newton's iteration is all: to first order in what differs */
    int iterations; /**< steps with a tangent of their own */
    double residual;
    double reached; /**< share of a manoeuvre that was not reached at which the car stands, 0: not known */
    gw_step_factors factors; /**< of the last such step */
};

typedef struct gw_balance_of_car {
    double sum[6];                              /**< force and moment about the car's origin, chassis axes */
    double by_stance[6][3];                     /**< minus the derivative with height, roll, pitch         */
    double by_lateral[GW_AXLES][6];             /**< and with the axles' lateral forces                    */
    double by_twist[GW_AXLES][GW_WHEELS][6][6]; /**< and with the twists of the uprights                */
    double upright_by_stance[GW_AXLES][GW_WHEELS][6][3];
    double upright_by_lateral[GW_AXLES][GW_WHEELS][6];
} gw_balance_of_car;

/** A tangent at a balance, kept for cars that differ little. */
typedef struct gw_road_tangent {
    gw_balance_of_car balance; /**< its derivatives */
    gw_step_factors factors;
    gw_kept_system axle[GW_AXLES];
} gw_road_tangent;

/* contact.c */
void gw_look_from(gw_stance_on_road *stance);
/** The road's wrenches onto the uprights, added to what their joints do; their sum into `balance`. */
void gw_put_on_road(gw_road *road, gw_axle which, gw_balance_of_car *balance);
/** Their derivatives into the axle's matrix and into the equations of the whole car, where they were put
 * last. */
void gw_put_road_tangents(gw_road *road, gw_axle which, gw_balance_of_car *balance);
/** Contacts alone, where the car stands now. */
void gw_find_contacts(gw_road *road);
void gw_put_chassis(const gw_road *road, gw_balance_of_car *balance);
void gw_put_chassis_tangents(const gw_road *road, gw_balance_of_car *balance);

/* step.c */
/** One step of Newton's iteration from the assembled matrices; false where they are singular. */
bool gw_road_step(gw_road *road, const gw_balance_of_car *balance);
/** The same matrices for another imbalance. */
bool gw_road_step_again(gw_road *road, const gw_balance_of_car *balance);

/* lent.c */
/** Of the same bodies and joints. */
bool gw_road_can_borrow(const gw_road *road, const gw_road_tangent *tangent);
/** As gw_road_step_again, with the matrices of another car. */
bool gw_road_step_lent(gw_road *road, const gw_road_tangent *tangent, const gw_balance_of_car *balance);

/* newton.c */
bool gw_road_has_play(const gw_road *road);
/** Lengths of the springs where the bodies are, and, once the car is set, their forces by the law from S0. */
void gw_road_springs_follow(gw_road *road);
/** Newton's iteration from where the car stands. */
gw_status gw_road_newton(gw_road *road, gw_error *err);
/** One step of it, whatever is left over; GW_E_NUMERIC where the matrix is singular. With the tangent that is
 * lent, where there is one. */
gw_status gw_road_newton_once(gw_road *road, const gw_road_tangent *lent);
/** Matrices and their factors where the car stands; false where they are singular. */
bool gw_road_tangent_here(gw_road *road, gw_balance_of_car *balance);

/* march.c */
gw_road_load gw_road_load_of(const gw_vehicle *v, const gw_manoeuvre *m, double part);
/** From where the car stood at S0, with that share of a manoeuvre. */
gw_status gw_road_reach(gw_road *road, const gw_manoeuvre *m, double whole, gw_error *err);
/** S0 from the ramp; then its wheels are fixed in their uprights. */
gw_status gw_road_find_reference(gw_road *road, gw_error *err);

/* solve.c */
double gw_road_least_load(const gw_road *road); /**< on any wheel [N] */

/* open.c */
/** Where an axle's workspace comes from: anew (NULL), or from a car that differs little. */
typedef struct gw_axle_origin {
    const gw_road *near;
    gw_nearness how;
} gw_axle_origin;
typedef gw_status gw_axle_opener(const gw_road_part *part, const gw_axle_origin *from, gw_axle which,
                                 gw_corner_ws **ws, gw_error *err);
/** A car with its axles opened and its masses placed, which does not stand yet; *out is NULL after an error.
 */
gw_status gw_road_begin(const gw_vehicle *vehicle, const gw_road_part part[GW_AXLES], gw_axle_opener *open,
                        const gw_axle_origin *from, gw_road **out, gw_error *err);
/** It stands: handed out with its strains noted; after an error of standing up it is closed. */
gw_status gw_road_finish(gw_road *road, gw_status status, gw_road **out);
/** Memory and geometry of an axle whose workspace is there; its wheels' setting, which the kit decides. */
gw_status gw_road_make_axle(gw_road *road, gw_axle which, double made_up, gw_error *err);
void gw_road_note_setting(gw_road_axle *axle);
gw_status gw_road_place_chassis(gw_road *road, gw_error *err);
void gw_road_set_wheels(gw_road *road);
void gw_road_note_strains(gw_road *road);

#endif

/* SPDX-License-Identifier: MIT */
/**
 * One suspension corner: rigid bodies joined by bushes. Left wheel, axes of ISO 8855:2011
 * (x forward, y left, z up), SI units. The right wheel is the mirror image.
 *
 * Where parts are shared by both wheels, a corner is the whole axle: the left wheel's bodies and joints
 * first, as they would be alone, then what is shared and the right wheel's. What is told of the right wheel
 * and what is put on it is in mirrored axes (y counted to the right), in which it is a left wheel.
 */
#ifndef GIVEWAY_CORNER_H
#define GIVEWAY_CORNER_H

#include "giveway/api.h"
#include "giveway/bush_law.h"
#include "giveway/names.h"
#include "giveway/vec.h"

#include <stdbool.h>

GW_API_BEGIN

enum { GW_CHASSIS = 0, GW_UPRIGHT = 1 };

/** Of one corner as it is written, and of all that is worked on at once: both corners of an axle. */
enum { GW_CORNER_BODIES = 32, GW_CORNER_JOINTS = 96, GW_MAX_BODIES = 96, GW_MAX_JOINTS = 288 };

/** The wheels of an axle. In a bend the left one is the outer. */
typedef enum gw_wheel_side { GW_LEFT_WHEEL, GW_RIGHT_WHEEL, GW_WHEELS } gw_wheel_side;

/** The other wheel of the axle. */
static inline gw_wheel_side gw_wheel_beside(gw_wheel_side wheel)
{
    return wheel == GW_LEFT_WHEEL ? GW_RIGHT_WHEEL : GW_LEFT_WHEEL;
}

/** The wheel that a manoeuvre names, and what a manoeuvre calls a wheel. */
static inline gw_wheel_side gw_wheel_of_side(gw_side side)
{
    return side == GW_OUTER ? GW_LEFT_WHEEL : GW_RIGHT_WHEEL;
}
static inline gw_side gw_side_of_wheel(gw_wheel_side wheel)
{
    return wheel == GW_LEFT_WHEEL ? GW_OUTER : GW_INNER;
}

typedef struct gw_body {
    const char *name;  /**< "chassis", "upright" or the member's; in an axle with its side: "left.upright" */
    double mass;       /**< members only [kg], >= 0              */
    const char *plain; /**< axle: the name as written            */
} gw_body;

/** A joint: one bush between two bodies that coincide at `at` in the design position. */
typedef struct gw_joint {
    const char *name;
    const char *label;   /**< for the customer; NULL: the name serves                    */
    int body_a, body_b;  /**< bodies; the bush frame rides on body_a                     */
    gw_vec3 at;          /**< design position                              [m]           */
    gw_mat3 frame;       /**< columns e1, e2, e3 = axis in the design position           */
    int bush;            /**< index of the bush in the case that fits it as standard     */
    int housing;         /**< body that the bush is pressed into; -1: not given          */
    double bracket;      /**< body-side stiffness in series [N/m]; 0: not given          */
    double tilt_limit;   /**< of the joint itself [rad]; 0: not given (see the bush)     */
    bool clamped;        /**< its bolt was tightened at `clamp_travel`, not ride height  */
    double clamp_travel; /**< [m]; only the study of travel looks at it                 */
    const char *plain;   /**< axle: the name as written, the same for both of a pair     */
    int twin;            /**< axle: the joint's mirror image; itself where it is one     */
    bool mirrored;       /**< made by mirroring: its frame is left-handed, as its bush is */
} gw_joint;

typedef struct gw_wheel {
    gw_vec3 centre;             /**< design position                        [m]         */
    double loaded_radius;       /**<                                        [m], > 0    */
    double rim_diameter;        /**<                                        [m]; 0: not given */
    double static_load;         /**< vertical, at the patch                 [N], > 0    */
    double static_camber;       /**< top outboard positive                  [rad]       */
    double static_toe;          /**< toe-in positive                        [rad]       */
    double mass;                /**< wheel, hub, brake, upright             [kg]; 0: not given */
    double tilt_inertia;        /**< about x and z through the centre       [kg m^2]; 0: not given */
    double pitch_inertia;       /**< about y, what does not roll            [kg m^2]; 0: not given */
    double tyre_vertical;       /**<                                        [N/m]; 0: not given */
    double tyre_damping;        /**<                                        [N s/m], >= 0 */
    double tyre_slip_stiffness; /**< per unit slip                       [N]; 0: not given */
    double tyre_relaxation;     /**< relaxation length                      [m]         */
    double spin_inertia;        /**< of what rolls                          [kg m^2]    */
    double tyre_mass;           /**< part of `mass`                         [kg]; 0: not given, no belt */
    double belt_hz;             /**< belt on its sidewalls, wheel held      [Hz]        */
    double belt_loss;           /**< loss factor of the sidewalls           [-]         */
} gw_wheel;

typedef struct gw_spring {
    int body;       /**< body it stands on      */
    gw_vec3 at, to; /**< design ends: on `body`, on the chassis [m] */
    double rate;    /**< [N/m], > 0             */
} gw_spring;

typedef struct gw_damper {
    bool present;
    int body;
    gw_vec3 at, to;   /**< design ends: on `body`, on the chassis [m]      */
    double rate;      /**< c [N s/m], >= 0                                  */
    double top_mount; /**< k_t in series with c [N/m]; 0: rigid             */
    double friction;  /**< Coulomb force along its line [N], >= 0           */
} gw_damper;

typedef struct gw_corner {
    const char *name; /**< "front" or "rear" */
    gw_wheel wheel;
    int n_bodies; /**< chassis and upright counted */
    gw_body *bodies;
    int n_joints;
    gw_joint *joints;
    gw_spring spring;
    gw_damper damper;
    /* An axle: both wheels in one. */
    int n_wheels;           /**< 2: an axle with both its wheels; else one wheel, the left          */
    int right_upright;      /**< body                                                              */
    gw_spring right_spring; /**< as it stands, so with y < 0                                       */
    gw_damper right_damper;
    bool shared;      /**< it has members or joints of its own                                 */
    bool lopsided;    /**< a joint off the centre line is one: no mirror image of itself       */
    bool has_bar;     /**< a joint leads from one side to the other                            */
    int n_left;       /**< joints of the left corner; they come first                          */
    int first_shared; /**< body: members that both wheels share begin here                     */
    int n_shared;
    int final_drive; /**< body that carries the final drive; GW_CHASSIS where none is named   */
} gw_corner;

/** True where a corner holds both wheels of its axle. */
static inline bool gw_is_pair(const gw_corner *corner)
{
    return corner->n_wheels == 2;
}

/** The end of an axle's parts that a body belongs to: the left wheel's, the right wheel's, or both
 * (GW_WHEELS). */
static inline gw_wheel_side gw_body_side(const gw_corner *pair, int body)
{
    if (body == GW_CHASSIS) return GW_WHEELS;
    if (body < pair->first_shared) return GW_LEFT_WHEEL;
    return body < pair->right_upright ? GW_WHEELS : GW_RIGHT_WHEEL;
}

/** Names as the case has them: of an axle those of both sides, without left. or right. */
static inline const char *gw_joint_as_written(const gw_corner *corner, int joint)
{
    const gw_joint *j = &corner->joints[joint];
    return j->plain ? j->plain : j->name;
}
static inline const char *gw_body_as_written(const gw_corner *corner, int body)
{
    const gw_body *b = &corner->bodies[body];
    return b->plain ? b->plain : b->name;
}

/**
 * What a kit puts into one joint: the law of the bush and where the two material points lie in the
 * design position [m]. They coincide unless a bush is off-centre, an arm longer or a shim put in.
 */
typedef struct gw_fit {
    gw_bush_law law;          /**< without the bracket                     */
    gw_vec3 point_a, point_b; /**< on body_a and body_b                    */
} gw_fit;

/** What the other wheel of an axle does under a load on the left one. */
typedef enum gw_other_wheel {
    GW_OTHER_SAME,     /**< the mirror image of the load, same travel                                       */
    GW_OTHER_OPPOSITE, /**< in mirrored axes all of it reversed but the static vertical load                */
    GW_OTHER_STILL     /**< static load, travel 0                                                           */
} gw_other_wheel;

/** A dead load in vehicle axes and what drives the corner. */
typedef struct gw_corner_load {
    gw_vec3 patch_force;  /**< of the road on the tyre at the contact patch [N]   */
    gw_vec3 patch_moment; /**<                                              [N m] */
    gw_vec3 hub_force;    /**< at the wheel centre                          [N]   */
    double travel;        /**< wheel centre above design, bump positive     [m]   */
} gw_corner_load;

/** What is unknown besides the poses. */
typedef enum gw_drive {
    GW_AT_TRAVEL, /**< travel given, the spring's force is the unknown                              */
    GW_ON_SPRING, /**< the spring follows force at S0 + rate x shortening, travel is the outcome    */
    GW_LIFTED     /**< travel given, the spring follows its law, the vertical patch load is unknown */
} gw_drive;

/** Place and attitude of a body: a point at X in the design position is at R (X - datum) + p + datum. */
typedef struct gw_pose {
    gw_mat3 r;
    gw_vec3 p; /**< [m] */
} gw_pose;

typedef struct gw_state {
    gw_pose *pose;             /**< n_bodies of them; [0] is the chassis                  */
    gw_corner_load load;       /**< as solved: travel and vertical load are the outcome where unknown */
    double spring_force;       /**< compression positive [N]                              */
    double spring_length;      /**< [m]                                                   */
    gw_corner_load right_load; /**< of an axle's right wheel, in mirrored axes            */
    double right_spring_force, right_spring_length;
    double residual; /**< largest force imbalance [N]                           */
    int iterations;
} gw_state;

/** One bush in a solved state; vectors in the bush frame (e1, e2, e3), totals from stress-free. */
typedef struct gw_joint_result {
    double u[3], theta[3];          /**< [m], [rad]: rotation vector of body_b relative to body_a */
    double f[3], m[3];              /**< conjugate to them [N], [N m]                             */
    double toe_share, camber_share; /**< [rad] of the change from S0                        */
} gw_joint_result;

typedef struct gw_corner_result {
    double camber_change, toe_change, caster_change; /**< from S0 [rad]           */
    double camber, toe;                              /**< [rad]                   */
    gw_vec3 wheel_centre, contact_patch;             /**< displacement from S0 [m] */
    double spring_force;                             /**< [N]                     */
    double travel_toe, travel_camber;                /**< share of travel [rad]   */
    double geometry_toe, geometry_camber;            /**< what linear theory leaves over [rad] */
    gw_joint_result *joints;                         /**< n_joints; owned by the caller */
} gw_corner_result;

typedef struct gw_corner_ws gw_corner_ws;

/**
 * Prepare a corner with a kit fitted: check that it is no mechanism, hold harmless free spins,
 * solve the reference state S0 (static load at the patch, travel 0) and set the wheel.
 *
 * @param[in]  corner  must outlive the workspace; not modified.
 * @param[in]  fit     one entry a joint; copied.
 * @param[out] out     owned by the caller, freed with gw_corner_close; NULL on failure.
 * @retval GW_OK, GW_E_MECHANISM (names bodies and direction), GW_E_NUMERIC, GW_E_NOMEM
 */
gw_status gw_corner_open(const gw_corner *corner, const gw_fit *fit, gw_corner_ws **out, gw_error *err);
void gw_corner_close(gw_corner_ws *ws); /**< NULL is allowed */

/**
 * The same, quicker where much is known: bushes that are free in the same ways let go in the same ways, and
 * where all of them are the same, S0 and the shares are taken over too. No bit of what is told differs.
 *
 * @param[in] like  of the same corner, with whatever fitted; only read; NULL: nothing is known.
 */
gw_status gw_corner_open_like(const gw_corner *corner, const gw_fit *fit, const gw_corner_ws *like,
                              gw_corner_ws **out, gw_error *err);

/** How far what is looked for from a known balance is followed. */
typedef enum gw_nearness {
    GW_NEAR_WHOLE, /**< to the balance                                                                */
    GW_NEAR_ONCE   /**< one step: right to first order in what differs, enough for a slope            */
} gw_nearness;

/**
 * As gw_corner_open, of a corner that differs from an opened one by its figures alone (a draw of it), for the
 * wheel's movement: it is not looked at anew whether it is a mechanism, and reports tell nothing of joints
 * (their shares and forces are left as they are). S0 is looked for from that of `near`; where that is far,
 * the corner is opened like any other.
 *
 * @param[in] near  of the same bodies, joints and kit; only read.
 */
gw_status gw_corner_open_near(const gw_corner *corner, const gw_fit *fit, const gw_corner_ws *near,
                              gw_nearness how, gw_corner_ws **out, gw_error *err);

/**
 * Works out what corners near this one take their one step with (GW_NEAR_ONCE), which then take a fraction of
 * the time. The corner is then only read by them.
 * @retval GW_OK, GW_E_NOMEM
 */
gw_status gw_corner_learn(gw_corner_ws *ws, gw_error *err);

/** Number of warnings that opening gave, and the text of each (owned by the workspace). */
int gw_corner_warnings(const gw_corner_ws *ws);
const char *gw_corner_warning(const gw_corner_ws *ws, int index);

/** What the parts fitted (off-centre bushes, arm lengths, shims) do to the setting before toe is reset [rad].
 */
typedef struct gw_corner_setting {
    double camber, toe,
        caster_change; /**< camber and toe as they stand; caster change from without the parts */
} gw_corner_setting;

/** Static camber of this kit [rad]: the setting of the wheel plus what the parts fitted add. Left wheel. */
double gw_corner_static_camber(const gw_corner_ws *ws);
double gw_corner_static_camber_of(const gw_corner_ws *ws, gw_wheel_side side);

/** As the car comes off the bench, before the ramp: what the parts give, toe not yet reset. Left wheel. */
gw_corner_setting gw_corner_as_fitted(const gw_corner_ws *ws);

/** What the bush of a joint does at S0: deflection, rotation, force and moment (shares are left at 0). */
gw_joint_result gw_corner_at_rest(const gw_corner_ws *ws, int joint);

/** State S0; owned by the workspace. */
const gw_state *gw_corner_reference(const gw_corner_ws *ws);

gw_status gw_state_alloc(const gw_corner *corner, gw_state *out, gw_error *err);
void gw_state_free(gw_state *state);
/** A copy of a state of the corner, into one that was allocated for it. */
void gw_corner_keep(const gw_corner *corner, const gw_state *from, gw_state *to);

/**
 * Equilibrium under a load. Starts from S0, allocates nothing.
 *
 * @param[in]     load   see gw_drive for what is an input and what an outcome.
 * @param[in,out] state  allocated; written only when GW_OK is returned.
 * @retval GW_OK         residual below 1e-9 of the largest load or at the level of rounding.
 * @retval GW_E_NUMERIC  no equilibrium: the load tears the corner apart or the travel is out of reach.
 */
gw_status gw_corner_solve(gw_corner_ws *ws, const gw_corner_load *load, gw_drive drive, gw_state *state,
                          gw_error *err);

/** What both wheels of an axle carry under a load on the left one; the right wheel's in mirrored axes. */
void gw_axle_loads(const gw_corner *corner, const gw_corner_load *load, gw_other_wheel other,
                   gw_corner_load out[GW_WHEELS]);

/** The same as gw_corner_solve for an axle, each wheel with its own load and travel. */
gw_status gw_axle_solve(gw_corner_ws *ws, const gw_corner_load load[GW_WHEELS], gw_drive drive,
                        gw_state *state, gw_error *err);

/**
 * As gw_axle_solve, from a balance under much the same load of a corner that differs little: the same
 * balance, to rounding, in fewer steps. Where that is far, or a joint has play, it goes from S0 like any
 * other.
 *
 * A corner opened with GW_NEAR_ONCE takes one step and asks no more.
 *
 * @param[in] near  of as many bodies, under the same drive; NULL: from S0.
 */
gw_status gw_axle_solve_near(gw_corner_ws *ws, const gw_corner_load load[GW_WHEELS], gw_drive drive,
                             const gw_state *near, gw_state *state, gw_error *err);

/** How a state moves on with travel: per metre of the left wheel's, the other alike. */
typedef struct gw_path {
    gw_vec3 hub, patch; /**< wheel centre, contact patch [m/m]                                      */
    gw_vec3 turn;       /**< rotation of the upright [rad/m]                                        */
    double drive;       /**< forward, of what drive pushes: see gw_travel_rates [m/m]               */
    double
        force_rate; /**< GW_AT_TRAVEL: spring force [N/m]; GW_LIFTED: vertical load, the wheel rate [N/m] */
} gw_path;

/**
 * Derivative of an equilibrium with travel, other loads constant.
 *
 * @param[in] state  solved with the same drive, GW_AT_TRAVEL or GW_LIFTED.
 * @retval GW_OK, GW_E_NUMERIC
 */
gw_status gw_corner_path_at(gw_corner_ws *ws, const gw_state *state, gw_drive drive, gw_path *out,
                            gw_error *err);

/** Travel of a wheel for a metre of the left one's. */
double gw_wheel_goes(gw_other_wheel other, gw_wheel_side wheel);

/** The corner that a workspace was opened with. */
const gw_corner *gw_corner_of(const gw_corner_ws *ws);

/** The path of both wheels of an axle, each in its own axes, both per metre of the left wheel's travel. */
gw_status gw_axle_path_at(gw_corner_ws *ws, const gw_state *state, gw_drive drive, gw_other_wheel other,
                          gw_path out[GW_WHEELS], gw_error *err);

/** Everything reported of a state, against S0. `out->joints` must hold n_joints entries, or is NULL: nothing
 * of them is told. Left wheel. */
void gw_corner_report(const gw_corner_ws *ws, const gw_state *state, gw_corner_result *out);
/** The same of either wheel of an axle. */
void gw_corner_report_of(const gw_corner_ws *ws, const gw_state *state, gw_wheel_side side,
                         gw_corner_result *out);

/** Camber [rad] and toe-in [rad] of a wheel axis (unit, pointing outboard on the left wheel). */
double gw_camber_of_axis(gw_vec3 axis);
double gw_toe_of_axis(gw_vec3 axis);
gw_vec3 gw_axis_from_camber_toe(double camber, double toe);

/**
 * Linear kinematics of a joint about the design position: rows u1 u2 u3 theta1 theta2 theta3 in the
 * bush frame, columns the twist (v, phi) of body_b about `datum`; body_a has the negative.
 */
void gw_joint_jacobian(const gw_joint *joint, gw_vec3 datum, double b[6][6]);

GW_API_END

#endif

/* SPDX-License-Identifier: MIT */
/**
 * The law of one bush: what the solvers need to know of it, whatever it is made of.
 * The static law derives from an energy W(u) + 1/2 sum c_i theta_i^2 (no friction in it).
 */
#ifndef GIVEWAY_BUSH_LAW_H
#define GIVEWAY_BUSH_LAW_H

#include "giveway/api.h"
#include "giveway/bush.h"

#include "giveway/status.h"
#include <stdbool.h>

GW_API_BEGIN

/** How the rates of rubber are worked out. */
typedef enum gw_method {
    GW_METHOD_SOLVED,  /**< finite-length finite-element solution */
    GW_METHOD_HANDBOOK /**< closed forms                          */
} gw_method;

/** Frequency and amplitude law of the complex stiffness, relative to the static rate. */
typedef struct gw_dynamic_law {
    double ratio;       /**< constant factor, > 0                                   [-] */
    double loss;        /**< constant loss factor, >= 0                             [-] */
    double zener_gain;  /**< fractional Zener: factor 1 + d x/(1+x), x = (i w tau)^alpha; 0: none */
    double zener_tau;   /**< [s]                                                        */
    double zener_alpha; /**< [-]                                                        */
    double payne_gain;  /**< Kraus: factor (1 + g/(1 + (x/xc)^2m)) / its value when x -> infinity; 0: none */
    double payne_amplitude; /**< xc as a deflection of this bush                        [m] */
    double payne_exponent;  /**< m                                                      [-] */
} gw_dynamic_law;

/** Coulomb friction of a joint against turning; not in the energy. */
typedef struct gw_slider {
    double torque;    /**< without load [N m], >= 0                              */
    double per_force; /**< more of it per newton that the joint carries [m], >= 0 */
    bool radial_only; /**< only the radial part of that force counts              */
    bool all_axes;    /**< about e1, e2 and e3 alike; false: about e3             */
    double winds_up;  /**< rate about e3 before it slips [N m/rad]; 0: at once    */
} gw_slider;

typedef struct gw_bush_law {
    double k[3];       /**< rates at zero along e1, e2, e3 [N/m], >= 0                     */
    double c[3];       /**< rates at zero about e1, e2, e3 [N m/rad], >= 0                 */
    gw_stop stop;      /**< isotropic in r = |(u1, u2)|; rate 0: none                      */
    gw_stop void_stop; /**< along +-e1 only (a void that closes); rate 0: none             */
    double blend;      /**< width over which void_stop and clearance set in [m], >= 0      */
    double clearance;  /**< radial lost motion each side of centre [m]; 0: none            */
    double stiffening; /**< progressive rubber: radial energy 1/2 (k1 u1^2 + k2 u2^2) (1 + s r^2/2), so that a
                            force k r becomes k r (1 + s r^2) [1/m^2], >= 0; 0: linear; not with clearance */
    double breakaway;  /**< friction torque about any axis, not in the energy [N m], >= 0  */
    gw_slider slider;  /**< the same with what it depends on; all zero: none               */
    bool elastic;      /**< rubber, or given or measured as such: stiffness and loss vary      */
    double rubber_radius, rubber_length; /**< mean radius and length of a bush with a material [m]; 0: none */
    const gw_curve
        *curve[GW_CURVE_WAYS]; /**< measured ways, whose k or c is the slope at zero; NULL: linear */
    double curve_factor;       /**< on the forces of curves [-], > 0                               */
    double curve_bracket;      /**< bracket in series with the curves of translation [N/m]; 0: none      */
    gw_dynamic_law dynamic;
    bool loosened; /**< its rotational rates were taken away to see what they add; see gw_fit_loosen */
} gw_bush_law;

/**
 * A bush for small motions about a state: six rates along and about axes of which the first two are turned
 * from e1 and e2 by an angle about e3.
 */
typedef struct gw_bush_tangent {
    double rate[6]; /**< [N/m] three times, [N m/rad] three times                       */
    double turn[2]; /**< of the axes of translation, of those of rotation [rad]         */
} gw_bush_tangent;

/**
 * The law of a bush, from its description. Rubber is solved here (milliseconds), so callers
 * work each distinct bush out once a run.
 *
 * @param[in]  bush    description; not modified.
 * @param[in]  method  finite elements or closed forms, for rubber.
 * @param[out] law     written only when GW_OK is returned.
 * @param[out] err     one line naming the bush and the bad value; may be NULL.
 * @retval GW_OK, GW_E_RANGE, GW_E_NUMERIC, GW_E_NOMEM
 */
gw_status gw_bush_law_make(const gw_bush *bush, gw_method method, gw_bush_law *law, gw_error *err);

/** The factor on all rates that the description gives; 1 where it gives none. */
double gw_bush_stiffness_factor(const gw_bush *bush);

/** Law with every rate zero and a dynamic factor of one. */
gw_bush_law gw_bush_law_zero(void);

/**
 * The same bush of harder or softer stuff: every force and moment of the law times `factor` [-, > 0];
 * friction, plays and gaps stay.
 */
gw_bush_law gw_bush_law_times(const gw_bush_law *law, double factor);

/**
 * The same bush on a bracket of stiffness `bracket` [N/m, > 0]: 1/k = 1/k_bush + 1/k_bracket in
 * each direction of translation. A zero rate stays zero; stops act on the whole deflection.
 */
gw_bush_law gw_bush_law_on_bracket(const gw_bush_law *law, double bracket);

/** Energy W(u) of a translation u [m] in the bush frame [J]. Rotations are not in it. */
double gw_bush_energy(const gw_bush_law *law, const double u[3]);

/** Force f = dW/du [N] and tangent k = d2W/du2 [N/m], symmetric, row-major. */
void gw_bush_force(const gw_bush_law *law, const double u[3], double f[3], double k[3][3]);

/** True where any way of the law was measured, and where any rotation was. */
bool gw_bush_has_curves(const gw_bush_law *law);
bool gw_bush_turns_by_curves(const gw_bush_law *law);

/** Moment m [N m] of a rotation vector theta [rad] in the bush frame and its tangent c [N m/rad], and the
 * energy. */
void gw_bush_moment(const gw_bush_law *law, const double theta[3], double m[3], double c[3][3]);
double gw_bush_turning_energy(const gw_bush_law *law, const double theta[3]);

/**
 * The bush for small motions about a deflection and a rotation: of measured ways the tangent of the energy
 * there (along that deflection the slope, across it force over deflection), of others the rates at zero.
 */
gw_bush_tangent gw_bush_tangent_at(const gw_bush_law *law, const double u[3], const double theta[3]);

/** Rows of a joint's Jacobian (in the bush frame) turned into the axes of the tangent, and a wrench turned
 * back. */
void gw_bush_turn_rows(const gw_bush_tangent *tangent, double row[6][6]);
void gw_bush_turn_back(const gw_bush_tangent *tangent, double f[6]);

/** The deflection that carries a force [N] by measured ways and by rates at zero; 0 along ways that carry
 * none. */
void gw_bush_deflection_under(const gw_bush_law *law, const double f[3], double u[3]);

/** How far a state lies beyond the last points of its curves: [0] deflection [m], [1] rotation [rad]; >= 0.
 */
void gw_bush_beyond(const gw_bush_law *law, const double u[3], const double theta[3], double by[2]);

/** Rate at zero that a test across the bush compares with [N/m]: mean of e1 and e2, where that is 0 the
 * axial. */
double gw_bush_rate_across(const gw_bush_law *law);

/** True where W is a plain quadratic form, so that the force is k_i u_i. */
bool gw_bush_law_is_linear(const gw_bush_law *law);

/** Complex stiffness over static rate [-]: what is given back (> 0), and what is lost (>= 0). */
typedef struct gw_stiffness_ratio {
    double storage, loss;
} gw_stiffness_ratio;

/**
 * Stiffness over static rate at frequency `hz` [Hz, > 0] and amplitude [m, >= 0].
 * Source: physics notes in materials/.
 */
gw_stiffness_ratio gw_dynamic_ratio(const gw_dynamic_law *law, double hz, double amplitude);

GW_API_END

#endif

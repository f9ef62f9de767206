/* SPDX-License-Identifier: MIT */
/** A bush as it is described in a case, and what it is made of. SI units throughout. */
#ifndef GIVEWAY_BUSH_H
#define GIVEWAY_BUSH_H

#include "giveway/api.h"
#include "giveway/curve.h"
#include "giveway/material.h"

#include <stdbool.h>

GW_API_BEGIN

/** As near to a weld as a joint can be [N/m], [N m/rad]. */
#define GW_RIGID_RATE 1e9
#define GW_RIGID_TURN (1e7 * 180.0 / 3.14159265358979323846)

typedef enum gw_bush_type {
    GW_BUSH_RATES,      /**< rates given one by one                            */
    GW_BUSH_BONDED,     /**< rubber annulus bonded to both sleeves             */
    GW_BUSH_UNBONDED,   /**< polyurethane on a sleeve that turns and slides    */
    GW_BUSH_BEARING,    /**< spherical plain bearing                           */
    GW_BUSH_BALL_JOINT, /**< ball joint                                        */
    GW_BUSH_MEASURED,   /**< curves of a press, a dynamic test beside them      */
    GW_BUSH_RIGID       /**< welded: GW_RIGID_RATE each way, GW_RIGID_TURN about each axis */
} gw_bush_type;
enum { GW_BUSH_TYPES = GW_BUSH_RIGID + 1 };

/** Words of a case for them, in their order, ended by NULL. */
extern const char *const GW_BUSH_TYPE_WORDS[];

/** Radial stop: past `gap` [m, >= 0] the radial rate rises by `rate` [N/m]; rate 0: no stop. */
typedef struct gw_stop {
    double gap, rate;
} gw_stop;

/** Rates given directly. */
typedef struct gw_given_rates {
    double radial[2];  /**< along e1, along e2                 [N/m]     >= 0 */
    double axial;      /**< along e3                           [N/m]     >= 0 */
    double conical[2]; /**< about e1, about e2                 [N m/rad] >= 0 */
    double torsional;  /**< about e3                           [N m/rad] >= 0 */
} gw_given_rates;

/** Two opposite openings centred on e1, right through along the axis. */
typedef struct gw_voids {
    double half_angle; /**< half the opening of each, 0 < . < pi/2    [rad] */
    double gap;        /**< free travel until it closes, > 0          [m]   */
    double depth;      /**< from the outer sleeve inwards; 0: full wall [m] */
} gw_voids;

/** Rubber or polyurethane between two sleeves. */
typedef struct gw_annulus {
    gw_material material;
    double inner_radius; /**< a, rubber on the inner sleeve    [m], > 0 */
    double outer_radius; /**< b, rubber on the outer sleeve    [m], > a */
    double length;       /**< L at the sleeves                 [m], > 0 */
    double end_dish;     /**< depth of the parabolic hollow of each free end at mid-wall [m], 0: flat */
    bool has_voids;
    gw_voids voids;
    bool has_interleaf;
    double interleaf_radius;    /**< mean radius of the rigid sleeve in the rubber [m] */
    double interleaf_thickness; /**< its thickness                                 [m] */
    double friction;            /**< unbonded only: coefficient of friction        [-] */
    bool progressive;           /**< radial rate grows with travel; false: linear */
} gw_annulus;

typedef enum gw_liner { GW_LINER_STEEL, GW_LINER_PTFE } gw_liner;

typedef struct gw_bearing {
    double ball_diameter; /**< dk                                [m], > 0 */
    double width;         /**< width of the outer ring, C        [m], > 0 */
    gw_liner liner;
    double liner_young, liner_poisson; /**< PTFE: of the material ptfe-fabric [Pa], [-]; 0: not told */
    double static_rating;              /**< C0                                [N], > 0; 0: not given */
    double clearance;                  /**< total radial internal clearance   [m], >= 0 */
    double breakaway;                  /**< breakaway torque                  [N m], >= 0 */
    double friction;                   /**< coefficient between ball and liner [-], >= 0 */
    double radial, axial;              /**< given rates [N/m]; 0: worked out from the contact */
    bool floats; /**< the axial rate was given as 0: free along its axis, as on a strut */
} gw_bearing;

/** How the outer sleeve sits in its housing; `given` false: not told. */
typedef struct gw_seat {
    bool given;
    double diameter, length;            /**< of the joint                         [m], > 0 */
    double bore;                        /**< of the bush itself                   [m]; 0: not told */
    double sleeve_wall, housing_wall;   /**<                                      [m], > 0 */
    double least, most;                 /**< interference on the diameter; below 0 it is loose [m] */
    bool housing_aluminium;             /**< else steel; the sleeve is of steel            */
    double friction;                    /**<                                      [-], >= 0 */
    double housing_yield, sleeve_yield; /**<                                      [Pa], > 0 */
} gw_seat;

/** The ways in which a bush can be measured; four of translation, four of rotation. */
typedef enum gw_curve_way {
    GW_CURVE_RADIAL,    /**< along any direction across the axis, all alike */
    GW_CURVE_RADIAL_E1, /**< along e1 alone; then e2 has its own, too       */
    GW_CURVE_RADIAL_E2,
    GW_CURVE_AXIAL,
    GW_CURVE_CONICAL, /**< about any direction across the axis, all alike */
    GW_CURVE_CONICAL_E1,
    GW_CURVE_CONICAL_E2,
    GW_CURVE_TORSIONAL,
    GW_CURVE_WAYS
} gw_curve_way;

/**
 * Complex stiffness across a bush on a dynamic test rig:
 * rate [1 + d X/(1 + X)] [1 + g/(1 + (x/xc)^2m)], X = (i 2 pi f tau)^alpha, x the amplitude.
 */
typedef struct gw_rig_law {
    bool given;
    double rate;            /**< [N/m], > 0                                        */
    double zener_gain;      /**< d [-], > 0                                        */
    double zener_tau;       /**< tau [s], > 0                                      */
    double zener_alpha;     /**< alpha [-], 0 to 1                                 */
    double payne_gain;      /**< g [-], >= 0; 0: amplitude does not matter         */
    double payne_amplitude; /**< xc [m], > 0 where g is                            */
    double payne_exponent;  /**< m [-], > 0 where g is                             */
} gw_rig_law;

/** A bush on offer. The frame is (e1, e2, e3 = axis) of the joint that it is fitted to. */
typedef struct gw_bush {
    const char *name;  /**< key in the case; never NULL   */
    const char *label; /**< for people; NULL: not given   */
    gw_bush_type type;
    gw_given_rates rates;                 /**< type RATES; for BALL_JOINT its radial and axial            */
    gw_annulus annulus;                   /**< types BONDED and UNBONDED                                  */
    gw_bearing bearing;                   /**< type BEARING                                               */
    const gw_curve *curve[GW_CURVE_WAYS]; /**< MEASURED: NULL where `rates` tells; borrowed */
    gw_rig_law rig;                       /**< MEASURED: dynamic test, if given                           */
    gw_stop stop;                         /**< any type; rate 0: none                                     */
    double loss_factor;                   /**< RATES, BALL_JOINT: eta                    [-], >= 0        */
    double dynamic_ratio;                 /**< RATES, BALL_JOINT: dynamic over static    [-], > 0; 1      */
    bool has_breakaway;                   /**< RATES, BALL_JOINT, UNBONDED: the torque below is given     */
    double breakaway;                     /**< [N m], >= 0; of UNBONDED in place of all its friction      */
    double stiffness_factor;     /**< on all its rates, its stop's too [-], > 0; 0: not told, 1      */
    double offset, offset_clock; /**< off-centre bore: [m], >= 0, and angle from e1 to e2 [rad]  */
    double tilt_limit;           /**< [rad]; 0: none given                                       */
    gw_seat seat;                /**< press fit                                                  */
    bool idle;                   /**< on a shelf and fitted by no kit: it need not be worked out */
    double price;                /**< in whatever currency the case uses; negative: not given    */
    double fit_minutes;          /**< [min]; negative: not given                                 */
} gw_bush;

/** True where the bush is an annulus: of rubber or polyurethane, given by its shape and compound. */
static inline bool gw_bush_is_rubber(const gw_bush *bush)
{
    return bush->type == GW_BUSH_BONDED || bush->type == GW_BUSH_UNBONDED;
}

GW_API_END

#endif

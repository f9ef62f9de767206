/* SPDX-License-Identifier: MIT */
/**
 * What a kit does to the car: camber and toe budgets, balance, stability under braking, traction and
 * consistency, all from solved corners. SI units; angles of the left wheel.
 */
#ifndef GIVEWAY_HANDLING_H
#define GIVEWAY_HANDLING_H

#include "giveway/api.h"
#include "giveway/balance.h"
#include "giveway/bicycle.h"
#include "giveway/sweep.h"

GW_API_BEGIN

#define GW_BALANCE_G   0.2  /**< where the budget is quoted [g]                                   */
#define GW_LINEAR_TYRE 0.4  /**< up to here coefficients stand for a tyre [g]; SAE 760713, common practice */
#define GW_LINEAR_BEND 0.1  /**< a cornering compliance that has moved by this part is not linear */
#define GW_PULL_LEAST  0.1  /**< side drift with brakes alike that is told [m]; our own choice */
#define GW_FIRM_STOP   0.5  /**< braking at which stability is looked at [g]; common practice     */
#define GW_BUMP_HEIGHT 0.02 /**< one-sided bump where the case gives no obstacle [m]              */
#define GW_BAND_FROM   0.2  /**< consistency: from [g]                                            */
#define GW_BAND_TO     1.0  /**< to [g]                                                           */
enum { GW_BALANCE_POINTS = 10 }; /**< at 0.1, 0.2 ... 1.0 g                                        */

/** An angle and where it went; the parts add up to the total [rad]. */
typedef struct gw_angle_parts {
    double setting;    /**< static                                                      */
    double roll;       /**< of the body, outer wheel positive; camber to the road only. Where the whole car
                          is solved: of the body over the line of its wheel centres        */
    double tyre;       /**< what the tyres make the body lean; where the whole car is solved, else 0 */
    double travel;     /**< at this travel with the spring on its law and no other load; where the whole car
                          is solved: as far as the two wheels of the axle move apart        */
    double jacking;    /**< the same of their mean travel: jacking, dive and squat; else 0  */
    double compliance; /**< what the load adds                                          */
    double total;      /**< to the road                                                 */
} gw_angle_parts;

/** One kit, one cornering load, one wheel. */
typedef struct gw_corner_budget {
    int kit, load;
    gw_axle axle;
    gw_side side;
    bool on_road;                     /**< an equilibrium of the whole car                         */
    double travel, vertical, lateral; /**< [m], [N]; lateral towards the middle of the corner       */
    gw_angle_parts camber, toe;
} gw_corner_budget;

/** Why the linear sense ends where it does. */
typedef enum gw_linear_end {
    GW_END_RANGE, /**< it does not, up to 1 g                                              */
    GW_END_TYRE,  /**< coefficients stand for a tyre no further                            */
    GW_END_BEND,  /**< a cornering compliance has moved by more than GW_LINEAR_BEND        */
    GW_END_LIFT,  /**< a wheel lifts, the tyres cannot carry more, or a corner gives up    */
} gw_linear_end;

typedef struct gw_balance_item {
    int kit;
    int n; /**< points: fewer than GW_BALANCE_POINTS where a wheel lifts or the tyres carry no more */
    double g[GW_BALANCE_POINTS];
    gw_budget budget[GW_BALANCE_POINTS]; /**< [rad/g], secants from standing straight             */
    double linear_to;                    /**< [g]                                                  */
    gw_linear_end end;
    bool outside_table; /**< below linear_to a tyre was beyond its table's loads or cambers       */
    gw_budget quoted;   /**< at GW_BALANCE_G                                                       */
    bool has_car;
    gw_bicycle bicycle;
    gw_bicycle_figures car;
    const char *no_car; /**< why there is no car */
} gw_balance_item;

/** One wheel in a firm stop and over a bump. */
typedef struct gw_braking_corner {
    bool there;
    double toe_per_g;      /**< change of toe over g [rad/g]                            */
    double fore_aft_per_g; /**< movement of the wheel centre, forward positive [m/g]    */
    double fore_aft_per_N; /**< the same over the braking force of the wheel [m/N]; NaN without one */
    double even_toe[GW_WHEELS], even_camber[GW_WHEELS]; /**< change of both wheels, brakes alike [rad] */
    double strong_toe, strong_camber; /**< change with the stronger brake [rad]                    */
    double weak_toe, weak_camber;     /**< with the weaker one                                     */
    double bump_toe, bump_camber;     /**< change as the wheel goes up by the bump                 */
    double beside_toe, beside_camber; /**< and of the wheel on the other side, through what they share */
} gw_braking_corner;

typedef struct gw_braking_item {
    int kit;
    gw_braking_corner corner[GW_AXLES];
    bool has_drift;           /**< the fields below are there                                   */
    gw_disturbance pull;      /**< what is unlike on left and right steers, brakes alike; left positive */
    gw_drift pulled;          /**< from the case's speed to standstill                          */
    gw_disturbance imbalance; /**< towards the stronger brake positive                          */
    gw_drift stop;            /**< from the case's speed to standstill                          */
    gw_disturbance bump;      /**< towards the bump positive                                    */
    gw_drift after_bump;      /**< in the first second, speed held                              */
} gw_braking_item;

/** A driven wheel. */
typedef struct gw_traction_item {
    int kit, load;
    gw_axle axle;
    gw_side side;
    bool straight;                    /**< the drive of the load without its cornering                     */
    double vertical;                  /**< load on the wheel [N] */
    double toe, camber_to_road;       /**< [rad] */
    double toe_change, camber_change; /**< [rad] */
    bool has_force;
    double toe_force;    /**< cornering stiffness at that load x toe change [N]; sign of the toe change */
    double camber_force; /**< camber stiffness at that load x camber change [N]               */
} gw_traction_item;

/** How far the outer wheel's setting moves over the range in which the car is used. */
typedef struct gw_band_item {
    int kit;
    gw_axle axle;
    double to; /**< [g]; below GW_BAND_TO where a wheel lifts */
    double toe_low, toe_high, camber_low, camber_high, road_low, road_high; /**< [rad] */
} gw_band_item;

/** What could not be calculated for a kit, and why: "rear wheel: stability in a 0.5 g stop is left out: ...".
 */
typedef struct gw_handling_gap {
    int kit;
    const char *text;
} gw_handling_gap;

/** A part that the case does not allow is empty, and the text says what to add. */
typedef struct gw_handling_study {
    gw_arena arena;
    double speed, brake_imbalance, bump; /**< as used [m/s], [-], [m]                     */
    double yaw_inertia;                  /**< as used [kg m^2]                             */
    bool yaw_inertia_given;
    int n_budgets, n_balance, n_braking, n_traction, n_bands;
    gw_corner_budget *budget; /**< by kit, corner, load, side */
    gw_balance_item *balance;
    gw_braking_item *braking;
    gw_traction_item *traction;
    gw_band_item *band;
    gw_sweep_study sweep; /**< from which the bands are taken; n 0: none */
    const char *no_budgets, *no_balance, *no_braking, *no_traction, *no_bands;
    int n_gaps;
    gw_handling_gap *gap; /**< by kit */
} gw_handling_study;

/**
 * With `wanted->brief` traction and bands are left out and the balance ends at GW_BALANCE_G, so that its
 * limit of the linear sense is not looked for: what the summary of `compare` needs, in a third of the time.
 *
 * The loads of the case are the business of gw_study_deflect; here corners and cars are taken further than
 * they ask. Where a wheel lifts, a tyre cannot carry the force or a corner gives up on the way, that part of
 * that kit is left out and told among the gaps.
 *
 * @param[out] out  owned by the caller; empty on failure. Parts for which data are missing are left out.
 * @retval GW_OK, GW_E_RANGE, GW_E_MECHANISM, GW_E_NOMEM
 * @retval GW_E_NUMERIC  the corner does not come to rest under its static load.
 */
gw_status gw_study_handling(const gw_case *c, const gw_selection *wanted, gw_handling_study *out,
                            gw_error *err);
void gw_handling_study_free(gw_handling_study *study);

/* Of a kit (corner, load, side); NULL where there is none. */
const gw_balance_item *gw_balance_find(const gw_handling_study *study, int kit);
const gw_braking_item *gw_braking_find(const gw_handling_study *study, int kit);
/* Side drift of a kit in an even stop, to the left positive [m]; 0 where it is too little to be told. */
double gw_braking_pull(const gw_handling_study *study, int kit);
const gw_corner_budget *gw_corner_budget_find(const gw_handling_study *study, int kit, gw_axle axle, int load,
                                              gw_side side);

GW_API_END

#endif

/* SPDX-License-Identifier: MIT */
/**
 * Setting a corner: what each adjuster does, the settings that reach a target, and what else they move.
 * SI units, left wheel. Results are owned by the study and point into the case, which must outlive them.
 */
#ifndef GIVEWAY_ALIGN_H
#define GIVEWAY_ALIGN_H

#include "giveway/api.h"
#include "giveway/pressfit.h"
#include "giveway/study.h"
#include "giveway/verdict.h"

GW_API_BEGIN

/** Movements of one adjuster [m]: an offset along e1 and e2, any other in `along[0]`. */
typedef struct gw_move {
    double along[2];
} gw_move;

/**
 * Move the points of a fit as an adjuster does, on top of what is there (an off-centre bush of the kit).
 *
 * Offset: the housing's point of its joint by along[0] e1 + along[1] e2. Length: the two joint points of the
 * member apart, half each, longer positive. Of an axle both sides move alike. Shim: the chassis point of its
 * joint along its direction.
 *
 * @param[in,out] fit  one entry a joint.
 */
void gw_adjuster_apply(const gw_corner *corner, const gw_adjuster *adjuster, const gw_move *move,
                       gw_fit *fit);

/** How far the kit's own bush at an offset is off centre, along e1 and e2; false where it is not, or the
 * adjuster is another. */
bool gw_kit_offset(const gw_case *c, int kit, gw_axle axle, const gw_adjuster *adjuster, gw_move *out);

/** Unknowns of an adjuster: 2 for an offset, else 1. */
int gw_adjuster_axes(const gw_adjuster *adjuster);

/** How a corner stands at S0 with some parts fitted. */
typedef struct gw_stance {
    gw_corner_setting setting; /**< before any resetting of toe                               */
    gw_vec3 patch;             /**< contact patch, vehicle axes of the corner [m]             */
    gw_vec3 centre;            /**< wheel centre [m]                                          */
    double bump_steer;         /**< toe per travel at S0, toe-in in bump positive [rad/m]     */
    double bump_camber;        /**< camber per travel at S0 [rad/m]                           */
} gw_stance;

/** Per metre of one movement: of an offset along e1 (axis 0) or e2 (axis 1), or of the adjuster. */
typedef struct gw_sensitivity {
    int adjuster, axis;
    double camber, toe, caster; /**< [rad/m]                                          */
    double track;               /**< patch sideways, outward positive, one wheel [-]  */
    double bump_steer;          /**< [rad/m per m]                                    */
} gw_sensitivity;

/**
 * Clock angle of an off-centre bore for the person with the press: where the bolt sits in the bush, clockwise
 * from the top, 0 to 2 pi [rad].
 */
typedef enum gw_view { GW_VIEW_FRONT, GW_VIEW_OUTBOARD, GW_VIEW_ABOVE } gw_view;

typedef struct gw_mark {
    gw_view view;       /**< from where: by the vehicle axis nearest to the bush's axis; "top" is up, and
                             straight ahead seen from above */
    double left, right; /**< on each side of the car */
} gw_mark;

/** An off-centre bore: how far from the middle [m], its angle from e1 towards e2, 0 to 2 pi [rad], its mark.
 */
typedef struct gw_bore {
    double size, clock;
    gw_mark mark;
} gw_bore;

/** What an adjuster is set to, and what of that a fitter reads: figures of another kind are no numbers. */
typedef struct gw_adjustment {
    gw_move move;
    gw_bore bore;    /**< of an offset: `move`                                                 */
    gw_bore fit;     /**< of an offset where the kit's own bush is off centre: `bush`          */
    double turns;    /**< of a length: of its adjuster, longer positive                        */
    double steps;    /**< of a shim: whole ones that are put in                                */
    gw_move bush;    /**< of an offset, the bush to fit: `move` on top of the kit's own offset */
    bool off_centre; /**< the kit's own bush there is off centre, so that both differ       */
    bool at_limit;   /**< of an offset: `bush` is as far off centre as it may be              */
    bool holds;      /**< its limit keeps the target from being reached */
} gw_adjustment;

/** The same targets with a bush of the full eccentricity, turned to another clock angle. */
typedef struct gw_turned {
    int adjuster; /**< the offset                                              */
    gw_adjustment *set;
    gw_corner_setting reached;
} gw_turned;

/** Camber and toe that one load takes from S0, before and after the adjusting. */
typedef struct gw_align_load {
    int load;
    double camber_before, toe_before, camber_after, toe_after; /**< changes from S0 [rad]; NaN: not carried */
} gw_align_load;

/** Largest tilt of a joint with a limit, over GW_ALIGN_TRAVEL of bump and rebound. */
typedef struct gw_align_tilt {
    int joint;
    double limit, before, after; /**< [rad]; NAN: the corner does not come so far */
} gw_align_tilt;

#define GW_ALIGN_TRAVEL 0.06 /**< bump and rebound looked at for tilt [m]; as `travel` does if not told */
#define GW_SHOCK_FACTOR 2.0  /**< on peak loads of bearings where the case gives none. Common practice */

/** A sleeve pressed into its housing, with the least and the greatest interference. */
typedef struct gw_align_seat {
    int joint;
    double least, most;          /**< interference on the diameter [m]   */
    gw_press_result held, worst; /**< at the least, at the greatest      */
} gw_align_seat;

/** A verdict on the part in one joint. */
typedef struct gw_align_check {
    int joint;
    gw_verdict verdict;
} gw_align_check;

/** What is aimed at, in the order of priority. */
typedef enum gw_target { GW_TARGET_TOE, GW_TARGET_CAMBER, GW_TARGET_CASTER, GW_TARGETS } gw_target;

/** Which side of the car a result is for. */
typedef enum gw_ramp_side { GW_RAMP_BOTH, GW_RAMP_LEFT, GW_RAMP_RIGHT } gw_ramp_side;

/** One kit in one corner; where the sides were measured, on one side of the car. */
typedef struct gw_align_item {
    int kit;
    gw_axle axle;
    gw_ramp_side side;
    bool has_caster;  /**< its caster was measured                              */
    double caster;    /**< the measured one [rad]                               */
    gw_stance before; /**< kit alone; measured figures as the ramp reads them */
    gw_stance fitted; /**< offsets and shims in, arms not yet turned            */
    gw_stance after;  /**< everything set                                       */
    gw_adjustment *set;
    int n_sensitivities;
    gw_sensitivity *sensitivity; /**< from the kit alone, in the order of the adjusters    */
    double miss[GW_TARGETS];     /**< reached less target [rad]; 0 where there is none    */
    bool reached[GW_TARGETS];    /**< within GW_ALIGN_EXACT; true where there is none    */
    bool tolerated[GW_TARGETS];  /**< within the tolerance of the case                     */
    int n_turned;
    gw_turned turned[2];
    int n_loads;
    gw_align_load *load;
    int n_tilts;
    gw_align_tilt *tilt;
    int n_seats;
    gw_align_seat *seat;
    int n_checks;
    gw_align_check *check;
    double shock_factor; /**< used on bearings                                      */
} gw_align_item;

/** The result for the left side and for the right one of a kit and corner, from either; where the sides were
 * not measured both are it. Results of one kit and corner stand side by side in their study. */
static inline const gw_align_item *gw_align_left(const gw_align_item *item)
{
    return item->side == GW_RAMP_RIGHT ? item - 1 : item;
}
static inline const gw_align_item *gw_align_right(const gw_align_item *item)
{
    return item->side == GW_RAMP_LEFT ? item + 1 : item;
}

#define GW_ALIGN_EXACT 1e-8 /**< a miss smaller than this is none [rad] */

/** What both sides of an axle give together. */
typedef struct gw_axle_line {
    double total_toe;         /**< sum of both [rad]                                                */
    double camber_difference; /**< left less right [rad]                                            */
    double caster_difference; /**< left less right [rad]; NAN: not measured                         */
    double thrust;            /**< toe right less toe left, halved: positive, steered to the left [rad] */
    double steering_wheel; /**< front: off straight, to the left positive, when the car runs straight [rad];
                                NAN behind, or without a steering ratio                           */
} gw_axle_line;

typedef struct gw_align_axle {
    int kit;
    gw_axle axle;
    gw_axle_line before, after;
} gw_align_axle;

typedef struct gw_align_study {
    gw_arena arena;
    int n_axles;
    gw_align_axle *axle_lines; /**< of the axles whose sides were measured, by kit */
    int n;
    gw_align_item *item; /**< by kit, then corner, in the order of the case */
    int n_warnings;
    const char **warning;
} gw_align_study;

/** Angle aimed at and angle of a setting, by target. */
double gw_target_of(const gw_align *align, gw_target which);
bool gw_target_given(const gw_align *align, gw_target which);
double gw_target_tolerance(const gw_align *align, gw_target which);
double gw_setting_of(const gw_corner_setting *setting, gw_target which);

/**
 * Every kit and corner wanted that the case has an `align` section for. Loads as wanted.
 *
 * The settings: toe exactly, then camber as near as the limits let it, then caster; of all settings that do
 * so the smallest offsets, and then the smallest movement of arms and shims (root of the sum of squares).
 * Shims come in whole steps. Every figure is of the corner solved with its points really moved.
 *
 * @param[out] out  owned by the caller; empty on failure.
 * @retval GW_OK, GW_E_SCHEMA (nothing to align), GW_E_RANGE, GW_E_MECHANISM,
 *         GW_E_NUMERIC (names kit and corner), GW_E_NOMEM
 */
gw_status gw_study_align(const gw_case *c, const gw_selection *wanted, gw_align_study *out, gw_error *err);
void gw_align_study_free(gw_align_study *study);

/** @param offset  in vehicle axes, left wheel. */
gw_mark gw_mark_of(const gw_joint *joint, gw_vec3 offset);

/** The movement of an offset in vehicle axes [m], its size [m] and its angle from e1 towards e2, 0 to 2 pi.
 */
gw_vec3 gw_offset_vector(const gw_joint *joint, const gw_move *move);
double gw_offset_size(const gw_move *move);
double gw_offset_clock(const gw_move *move);
gw_bore gw_bore_of(const gw_joint *joint, const gw_move *move);

GW_API_END

#endif

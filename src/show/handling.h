/* SPDX-License-Identifier: MIT */
/** What `compare` shows of what the kits do to the car. */
#ifndef SHOW_HANDLING_H
#define SHOW_HANDLING_H

#include "format/table.h"
#include "giveway/cost.h"
#include "giveway/reversal.h"
#include "giveway/stand.h"
#include "record/paper.h"
#include "show/compare.h"

/** One row of the summary: a kit. Not a number where it was not worked out. */
typedef struct gw_summary {
    int kit;
    double camber;              /**< to the road, outer wheel, in the load below [rad]   */
    double understeer;          /**< [rad/g]                                             */
    double brake_toe;           /**< front, else rear [rad/g]                            */
    double stop_offset;         /**< off line in the stop [m]                            */
    double harshness[GW_AXLES]; /**< against the first kit of the case [dB]              */
    double critical_speed;      /**< [m/s]; infinite: none                               */
} gw_summary;

/** The load that the camber of the summary belongs to: the first pure corner, else any; -1: none. */
int gw_summary_load(const gw_comparison *cmp);
gw_axle gw_summary_axle(const gw_comparison *cmp);
gw_summary gw_summary_of(const gw_comparison *cmp, int kit);

/* id of a gw_budget_entry, its words, its key, what it is; in the order of the enumeration */
#define GW_BUDGET_LIST(X)                                                                                    \
    X(TYRE, "tyre and load", "tyre_and_load", "bare tyres upright and straight, with the load transferred")  \
    X(ALIGNING, "aligning torque on the body", "aligning_torque", "of all tyres: turns the body out")        \
    X(SETTING, "static toe and camber", "static_setting", "which the loaded wheel makes more of")            \
    X(ROLL_STEER, "roll steer", "roll_steer", "toe with suspension travel")                                  \
    X(LOAD_STEER, "vertical-load steer", "vertical_load_steer", "toe by the bushes under vertical load")     \
    X(LATERAL_STEER, "lateral-force steer", "lateral_force_steer", "toe by the bushes under lateral force")  \
    X(ALIGNING_STEER, "aligning-torque steer", "aligning_torque_steer",                                      \
      "toe by the bushes under the torque")                                                                  \
    X(ROLL_CAMBER, "roll camber", "roll_camber", "body roll and camber with suspension travel")              \
    X(COMPLIANCE_CAMBER, "compliance camber", "compliance_camber", "camber by the bushes")                   \
    X(CURVE, "curved tyre", "curved_tyre", "what a curved tyre adds when all of these act together")

/** Rows over a gw_traction_item, a gw_band_item and a gw_disturbance of a gw_braking_item; over a
 * gw_corner_budget, a gw_bicycle_figures and a gw_braking_corner. */
extern const gw_record GW_TRACTION_RECORD, GW_BAND_RECORD, GW_PUSH_RECORD;
extern const gw_record GW_CORNER_BUDGET_RECORD, GW_SINGLE_TRACK_RECORD, GW_FORE_AFT_RECORD;

/** Head of an entry of the budget, for people. */
const char *gw_budget_words(gw_budget_entry entry);

/** What is compared, and the paper that it goes on. */
typedef struct gw_handling_page {
    const gw_comparison *cmp;
    gw_paper *paper;
} gw_handling_page;

/** The one table at the top, with what its columns mean. */
void gw_summary_text(const gw_handling_page *p);
/** A line for each part that is left out, and what to add. */
void gw_handling_lacks_text(const gw_handling_page *p);

/* The rest, part by part. */
void gw_budget_text(const gw_handling_page *p);
void gw_balance_text(const gw_handling_page *p);
void gw_braking_text(const gw_handling_page *p);
void gw_traction_text(const gw_handling_page *p);
void gw_consistency_text(const gw_handling_page *p);

/** What one wheel does next to the other of its axle: travel, load, side force, toe, camber to the road. */
enum { GW_WHEEL_FIGURES = 5 };
gw_number gw_wheel_figure(const gw_corner_budget *wheel, int figure);

/** Both wheels of an axle under a load, by gw_side; false where one of them is not known. */
typedef const gw_corner_budget *gw_both_wheels[GW_INNER + 1];
bool gw_both_wheels_find(const gw_handling_study *h, int kit, gw_axle axle, int load, gw_both_wheels out);

/** A sentence a kit, the loads with a column a kit, ride and prices with a row a kit. */
void gw_compare_brief(const gw_handling_page *p);

/**
 * Toe, camber and fore-aft of every load and wheel: a row each where the page is wide enough, with toe at the
 * rim if it still fits; two rows each, the rim among them, where it is not.
 */
void gw_compare_loads(const gw_handling_page *p);

/** One paragraph on a kit. */
void gw_verdict_text(const gw_handling_page *p, int kit);

/** In one line which angles change to the other side, with the kits; nothing where none does. */
void gw_changes_text(const gw_handling_page *p);

/** Of all kits together: how near to a limit, how many joints could not be judged, and what it takes. */
void gw_limits_text(const gw_handling_page *p);

/** "front.arm_rear" */
void gw_shared_joint_name(const gw_case *c, const gw_shop_joint *at, gw_buf *out);

/** A paragraph a kit that shares work, its joints by name. */
void gw_shared_work_text(const gw_handling_page *p);

/** The same in one paragraph for all kits, joints counted. */
void gw_shared_work_brief(const gw_handling_page *p);

/** "632", "632+" where some parts carry no figure, a dash where nothing has one. */
void gw_sum_cell(gw_table *t, gw_cost_sum sum);

#endif

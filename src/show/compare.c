/* SPDX-License-Identifier: MIT */
/* The comparison as rows: what every kit does to the wheels, the car, the road and the bill. */
#include "show/compare.h"

#include "giveway/cost.h"
#include "giveway/reversal.h"
#include "giveway/stand.h"
#include "show/bands.h"
#include "show/deflect.h"
#include "show/handling.h"
#include "show/results.h"
#include "show/ride.h"

#include <math.h>

/* ---- gathered before it is shown ---- */

enum { MOST_REVERSALS = 64 };

typedef struct gw_compare_job {
    const gw_shop_job *job;
    double saved; /* [min] */
    int n_joints;
    const char **joint; /* that get another bush */
} gw_compare_job;

typedef struct gw_compare_kit {
    int kit;
    gw_summary summary;
    gw_car_cost cost, renewed;
    gw_stand stand;
    int n_reversals, n_jobs;
    gw_reversal reversal[MOST_REVERSALS];
    gw_compare_job *job;
} gw_compare_kit;

static bool name_joints(const gw_case *c, const gw_kit *kit, gw_compare_job *out, gw_arena *arena)
{
    out->joint = gw_arena_alloc(arena, (size_t)out->job->n_joints + 1, sizeof *out->joint);
    for (int j = 0; out->joint && j < out->job->n_joints; j++) {
        gw_buf name = { 0 };
        if (!gw_job_joint_changes(c, kit, &out->job->joints[j])) continue;
        gw_shared_joint_name(c, &out->job->joints[j], &name);
        const char *kept = gw_buf_keep(&name, arena);
        if (!kept) return false;
        out->joint[out->n_joints++] = kept;
    }
    return out->joint != NULL;
}

/* Work that is done once for several joints of the kit. */
static bool find_jobs(const gw_case *c, gw_compare_kit *of, gw_arena *arena)
{
    const gw_kit *kit = &c->kits[of->kit];
    of->job = gw_arena_alloc(arena, (size_t)c->n_jobs + 1, sizeof *of->job);
    for (int i = 0; of->job && i < c->n_jobs; i++) {
        const gw_shared_job shared = gw_shared_job_of(c, &c->jobs[i], kit);
        if (!shared.joints) continue;
        gw_compare_job *job = &of->job[of->n_jobs++];
        *job = (gw_compare_job){ .job = &c->jobs[i], .saved = shared.saved };
        if (!name_joints(c, kit, job, arena)) return false;
    }
    return of->job != NULL;
}

static bool gather_kit(const gw_comparison *cmp, int kit, gw_compare_kit *of, gw_arena *arena)
{
    of->kit = kit;
    of->summary = gw_summary_of(cmp, kit);
    of->cost = gw_car_cost_of(cmp->c, kit);
    of->renewed = gw_car_cost_renewed(cmp->c, kit);
    of->stand = gw_stand_of(cmp->c, cmp->deflect, cmp->peaks, kit);
    int n = gw_reversals_find(cmp->c, cmp->deflect, cmp->baseline, kit, of->reversal, MOST_REVERSALS);
    of->n_reversals = n < MOST_REVERSALS ? n : MOST_REVERSALS;
    return find_jobs(cmp->c, of, arena);
}

gw_status gw_compare_gather(gw_compare_made *made, gw_error *err)
{
    const gw_comparison *cmp = &made->cmp;
    made->kit = gw_arena_alloc(&made->arena, (size_t)cmp->c->n_kits + 1, sizeof *made->kit);
    bool room = made->kit != NULL;
    for (int k = 0; room && k < cmp->c->n_kits; k++)
        if (gw_compare_shows(cmp, k)) room = gather_kit(cmp, k, &made->kit[made->n_kits++], &made->arena);
    return room ? GW_OK : gw_fail(err, GW_E_NOMEM, "out of memory");
}

/* ---- what rows find ---- */

GW_READS(const gw_comparison *, comparison, gw_compare_made, &it->cmp)
GW_READS(const gw_handling_study *, handling, gw_compare_made, it->cmp.handling)
GW_READS(int, budgets, gw_compare_made, it->cmp.handling->n_budgets)
GW_READS(const void *, budget_at, gw_compare_kit,
         handling(p)->budget[p->index].kit == it->kit ? &handling(p)->budget[p->index] : NULL)

/* ---- balance ---- */

typedef struct gw_axle_entries {
    double entry[GW_BUDGET_ENTRIES]; /* of a gw_budget, one axle */
} gw_axle_entries;

static double sum_of_entries(const gw_place *p)
{
    double sum = 0.0;
    for (int i = 0; i < GW_BUDGET_ENTRIES; i++) sum += GW_IT(p, gw_axle_entries)->entry[i];
    return sum;
}

#define ENTRY(id, words, key, what)                                                                          \
    GW_MEMBER(key, DEG, gw_axle_entries, entry[GW_BUDGET_##id], GW_NO_UNIT, what),
static GW_RECORD(ENTRIES_RECORD, gw_axle_entries,
    GW_BUDGET_LIST(ENTRY)
    GW_WORKED_OUT("sum", DEG, sum_of_entries, GW_NO_UNIT, "of all entries"));

GW_READS(const void *, balance, gw_compare_kit, gw_balance_find(handling(p), it->kit))

/* In the order of gw_linear_end. */
static const char *const ENDS[] = { "range", "tyre", "bend", "grip", NULL };

static GW_RECORD(POINT_RECORD, gw_budget,
    GW_ENTRY("lateral", G, gw_balance_item, g, gw_budget, 0, "acceleration"),
    GW_MEMBER("front", DEG_PER_G, gw_budget, axle[GW_FRONT], 0, "slip that the axle needs, a secant from standing straight"),
    GW_MEMBER("rear", DEG_PER_G, gw_budget, axle[GW_REAR], 0, "the same of the rear axle"),
    GW_MEMBER("understeer", DEG_PER_G, gw_budget, understeer, 0, "front less rear"));

static GW_RECORD(BALANCE_RECORD, gw_balance_item,
    GW_CONSTANT("lateral", G, GW_BALANCE_G, 0, "where the budget is quoted"),
    GW_MEMBER("understeer", DEG_PER_G, gw_balance_item, quoted.understeer, 0, "front less rear"),
    GW_WITHIN("front_deg_per_g", gw_balance_item, quoted.entry[GW_FRONT], &ENTRIES_RECORD, GW_ON_LINE, "positive: more slip"),
    GW_WITHIN("rear_deg_per_g", gw_balance_item, quoted.entry[GW_REAR], &ENTRIES_RECORD, GW_ON_LINE, "positive: more slip"),
    GW_ARRAY("against_g", gw_balance_item, n, budget, &POINT_RECORD, GW_ON_LINE, "up to where a wheel lifts or the tyres carry no more"),
    GW_MEMBER("linear_to", G, gw_balance_item, linear_to, 0, "how far the quoted budget stands for the car"),
    GW_WORD("linear_ends_by", gw_balance_item, end, ENDS, 0, "why it ends there"),
    GW_MEMBER("beyond_tyre_table", PLAIN, gw_balance_item, outside_table, 0, "below linear_to a tyre was beyond its table"),
    GW_WITHIN_IF("car", gw_balance_item, has_car, car, &GW_SINGLE_TRACK_RECORD, 0, "with a single track"),
    GW_MEMBER("no_car", PLAIN, gw_balance_item, no_car, GW_MAY_LACK, "why there is no car"));

/* ---- braking ---- */

GW_READS(const void *, braking, gw_compare_kit, gw_braking_find(handling(p), it->kit))
GW_READS(const void *, braking_corner, gw_braking_item,
         it->corner[p->index].there ? &it->corner[p->index] : NULL)
GW_READS(const char *, braking_axle, gw_braking_corner, gw_axle_name((gw_axle)GW_INDEX(p, gw_braking_corner)))

static double fore_aft_hz(const gw_place *p)
{
    const gw_ride_item *item = gw_ride_find(comparison(p)->ride, GW_IT(p, gw_braking_item)->kit,
                                            (gw_axle)GW_INDEX(p, gw_braking_corner));
    return item ? item->result.modes[item->result.wheel_fore_aft].hz : (double)NAN;
}

static GW_RECORD(BRAKING_CORNER_RECORD, gw_braking_corner,
    GW_CHOSEN("corner", braking_axle, GW_AXLE_NAMES, 0, "the axle"),
    GW_MEMBER("toe_change", DEG_PER_G, gw_braking_corner, toe_per_g, 0, "in a firm stop; toe-in positive"),
    GW_PART_SAME(&GW_FORE_AFT_RECORD),
    GW_WORKED_OUT("fore_aft", HZ, fore_aft_hz, GW_SOMETIMES, "natural frequency, where ride was calculated"));

static GW_RECORD(BRAKING_RECORD, gw_braking_item,
    GW_EVERY("corners", GW_AXLES, braking_corner, &BRAKING_CORNER_RECORD, GW_ON_LINE, "one wheel of each axle"),
    GW_WITHIN_IF("brakes_alike", gw_braking_item, has_drift, pull, &GW_PUSH_RECORD, GW_ON_LINE, "to the left, to standstill: none where left and right are alike"),
    GW_WITHIN_IF("brake_imbalance", gw_braking_item, has_drift, imbalance, &GW_PUSH_RECORD, GW_ON_LINE, "towards the stronger brake, to standstill"),
    GW_WITHIN_IF("one_sided_bump", gw_braking_item, has_drift, bump, &GW_PUSH_RECORD, GW_ON_LINE, "towards the bump, in the first second"));

/* ---- traction and consistency ---- */

GW_READS(int, traction, gw_compare_made, it->cmp.handling->n_traction)
GW_READS(const void *, traction_at, gw_compare_kit,
         handling(p)->traction[p->index].kit == it->kit ? &handling(p)->traction[p->index] : NULL)
GW_READS(int, bands, gw_compare_made, it->cmp.handling->n_bands)
GW_READS(const void *, band_at, gw_compare_kit,
         handling(p)->band[p->index].kit == it->kit ? &handling(p)->band[p->index] : NULL)

static GW_RECORD(HANDLING_RECORD, gw_compare_kit,
    GW_KIT("kit", gw_compare_kit, kit, 0, "name of the kit"),
    GW_EACH("budgets", budgets, budget_at, &GW_CORNER_BUDGET_RECORD, 0, "a cornering load and wheel each"),
    GW_INSIDE("balance", balance, &BALANCE_RECORD, GW_MAY_LACK, "understeer and what it is made of"),
    GW_INSIDE("braking", braking, &BRAKING_RECORD, GW_MAY_LACK, "stability under brakes"),
    GW_EACH("traction", traction, traction_at, &GW_TRACTION_RECORD, GW_ON_LINE, "driven wheels"),
    GW_EACH("consistency", bands, band_at, &GW_BAND_RECORD, GW_ON_LINE, "how far the outer wheel's setting moves"));

/* ---- summary ---- */

GW_READS(const char *, summary_axle, gw_compare_made, gw_axle_name(gw_summary_axle(&it->cmp)))
GW_READS(const char *, summary_load, gw_compare_made,
         gw_summary_load(&it->cmp) < 0 ? NULL : p->c->loads[gw_summary_load(&it->cmp)].name)

static const char *const ANGLES[] = { "toe", "camber", NULL };

GW_READS(const char *, angle, gw_reversal, ANGLES[it->camber])

static const char *const STATES[] = { "not judged", "within", "close", "beyond", NULL };

GW_READS(const char *, state, gw_stand, gw_stand_word(it->state))
GW_READS(const char *, joint_label, gw_overload, p->c->corners[it->axle].joints[it->joint].label)
GW_READS(double, part_of_limit, gw_overload, gw_overload_ratio(it))

static GW_RECORD(BY_AXLE_RECORD, gw_summary,
    GW_MEMBER("front", DB, gw_summary, harshness[GW_FRONT], GW_NO_UNIT | GW_MAY_LACK, "over the first kit"),
    GW_MEMBER("rear", DB, gw_summary, harshness[GW_REAR], GW_NO_UNIT | GW_MAY_LACK, "over the first kit"));

static GW_RECORD(SUMS_RECORD, gw_car_cost,
    GW_MEMBER("price", PLAIN, gw_car_cost, price, 0, "of the parts, both sides of the car"),
    GW_MEMBER("fit_minutes", PLAIN, gw_car_cost, minutes, 0, "of those with a time"),
    GW_MEMBER("labour", PLAIN, gw_car_cost, labour, GW_MAY_LACK, "for those minutes"),
    GW_MEMBER_IF("tax", PLAIN, gw_case, shop.has_tax, gw_car_cost, tax, GW_MAY_LACK, "on price and labour"),
    GW_MEMBER("total", PLAIN, gw_car_cost, total, 0, "price, labour where known, tax"));

static GW_RECORD(LABEL_RECORD, gw_shop_job, GW_MEMBER("label", PLAIN, gw_shop_job, label, 0, "of the work"));
static GW_RECORD(WORK_RECORD, gw_shop_job,
    GW_MEMBER("fit_minutes", PLAIN, gw_shop_job, minutes, 0, "of the work, once"),
    GW_MEMBER("price", PLAIN, gw_shop_job, price, 0, "of the work, once"));

static GW_RECORD(JOB_RECORD, gw_compare_job,
    GW_PART_BEHIND(gw_compare_job, job, &LABEL_RECORD, GW_ALWAYS),
    GW_TEXTS("joints", gw_compare_job, n_joints, joint, 0, "that get another bush in it; one of a pair stands for both"),
    GW_PART_BEHIND(gw_compare_job, job, &WORK_RECORD, GW_ALWAYS),
    GW_MEMBER("saved_minutes", PLAIN, gw_compare_job, saved, 0, "against doing the job again for each of these joints"));

static GW_RECORD(REVERSAL_RECORD, gw_reversal,
    GW_WORD("corner", gw_reversal, axle, GW_AXLE_NAMES, 0, "the axle"),
    GW_LOADED("load", gw_reversal, load, 0, "name of the load"),
    GW_CHOSEN("angle", angle, ANGLES, 0, "which changes side"),
    GW_MEMBER("from", DEG, gw_reversal, from, 0, "change since standing still with the first kit shown"),
    GW_MEMBER("to", DEG, gw_reversal, to, 0, "the same with this one"),
    GW_MEMBER("toe_out_gained_at_the_rear", PLAIN, gw_reversal, warns, 0, "under braking or cornering: what makes a car nervous"));

static GW_RECORD(NEAREST_RECORD, gw_overload,
    GW_WORD("corner", gw_overload, axle, GW_AXLE_NAMES, 0, "the axle"),
    GW_JOINT("joint", gw_overload, joint, gw_overload, 0, "name of the joint"),
    GW_SAID("label", joint_label, GW_MAY_LACK, "its words for the customer"),
    GW_LOADED("load", gw_overload, load, 0, "name of the load"),
    GW_WORD("what", gw_overload, verdict.what, GW_JUDGED_WORDS, 0, "the figure"),
    GW_WORKED_OUT("part_of_limit", PLAIN, part_of_limit, 0, "1 at the limit"));

static GW_RECORD(STAND_RECORD, gw_stand,
    GW_CHOSEN("state", state, STATES, 0, "close: from 80 % of a limit"),
    GW_BEHIND("nearest", gw_stand, nearest, &NEAREST_RECORD, GW_MAY_LACK | GW_ON_LINE, "to its limit, of all that is judged"),
    GW_MEMBER("joints", PLAIN, gw_stand, joints, 0, "in the corners that were looked at"),
    GW_MEMBER("judged", PLAIN, gw_stand, judged, 0, "of them"),
    GW_MEMBER("not_judged_by_rates", PLAIN, gw_stand, by_rates, 0, "bushes given by rates, or as measured"),
    GW_MEMBER("not_judged_ball_joints", PLAIN, gw_stand, ball_joints, 0, "nothing is known of their strength"));

static GW_RECORD(SUMMARY_RECORD, gw_compare_kit,
    GW_KIT("kit", gw_compare_kit, kit, 0, "name of the kit"),
    GW_CHOSEN("corner", summary_axle, GW_AXLE_NAMES, 0, "of camber and toe"),
    GW_SAID("load", summary_load, GW_MAY_LACK, "of the camber: the first pure corner, else any"),
    GW_MEMBER("outer_camber_to_road", DEG, gw_compare_kit, summary.camber, GW_MAY_LACK, "of the outer wheel in that load"),
    GW_MEMBER("understeer", DEG_PER_G, gw_compare_kit, summary.understeer, GW_MAY_LACK, "front less rear"),
    GW_MEMBER("brake_toe", DEG_PER_G, gw_compare_kit, summary.brake_toe, GW_MAY_LACK, "in a firm stop"),
    GW_MEMBER("stop_sideways", M, gw_compare_kit, summary.stop_offset, GW_MAY_LACK, "with one brake stronger"),
    GW_MEMBER("critical_speed", KM_H, gw_compare_kit, summary.critical_speed, GW_MAY_LACK, "none unless it oversteers"),
    GW_WITHIN("harshness_dB", gw_compare_kit, summary, &BY_AXLE_RECORD, GW_ON_LINE, "over the first kit"),
    GW_MEMBER("parts", PLAIN, gw_compare_kit, cost.parts, 0, "that differ from the first kit"),
    GW_PART_OF(gw_compare_kit, cost, &SUMS_RECORD),
    GW_MEMBER("parts_without_price", PLAIN, gw_compare_kit, cost.unpriced, 0, "not in the sum"),
    GW_MEMBER("parts_without_time", PLAIN, gw_compare_kit, cost.untimed, 0, "not in the sum"),
    GW_WITHIN("same_joints_renewed", gw_compare_kit, renewed, &SUMS_RECORD, GW_ON_LINE, "the same joints with the first kit's bushes again"),
    GW_ROWS("jobs", gw_compare_kit, n_jobs, job, &JOB_RECORD, GW_ON_LINE, "work done once, however many of its joints get another bush"),
    GW_ARRAY("changes_of_direction", gw_compare_kit, n_reversals, reversal, &REVERSAL_RECORD, GW_ON_LINE, "where toe or camber change to the other side"),
    GW_WITHIN("limits", gw_compare_kit, stand, &STAND_RECORD, 0, "how near to its limits"));

static GW_RECORD(INPUTS_RECORD, gw_handling_study,
    GW_MEMBER("speed", KM_H, gw_handling_study, speed, 0, "of the car"),
    GW_MEMBER("yaw_inertia_kgm2", PLAIN, gw_handling_study, yaw_inertia, GW_MAY_LACK, "of the car"),
    GW_MEMBER("yaw_inertia_given", PLAIN, gw_handling_study, yaw_inertia_given, 0, "in the case; else estimated"),
    GW_CONSTANT("brake", G, GW_FIRM_STOP, 0, "of a firm stop"),
    GW_MEMBER("brake_imbalance", PLAIN, gw_handling_study, brake_imbalance, 0, "of one side to the other"),
    GW_MEMBER("bump", MM, gw_handling_study, bump, 0, "under one wheel"));

static GW_RECORD(GAP_RECORD, gw_handling_gap,
    GW_KIT("kit", gw_handling_gap, kit, 0, "name of the kit"),
    GW_MEMBER("why", PLAIN, gw_handling_gap, text, 0, "it could not be calculated"));

static GW_RECORD(LEFT_OUT_RECORD, gw_handling_study,
    GW_MEMBER("budgets", PLAIN, gw_handling_study, no_budgets, GW_MAY_LACK, "what to add to the case"),
    GW_MEMBER("balance", PLAIN, gw_handling_study, no_balance, GW_MAY_LACK, "what to add to the case"),
    GW_MEMBER("braking", PLAIN, gw_handling_study, no_braking, GW_MAY_LACK, "what to add to the case"),
    GW_MEMBER("traction", PLAIN, gw_handling_study, no_traction, GW_MAY_LACK, "what to add to the case"),
    GW_MEMBER("consistency", PLAIN, gw_handling_study, no_bands, GW_MAY_LACK, "what to add to the case"),
    GW_ROWS("gaps", gw_handling_study, n_gaps, gap, &GAP_RECORD, GW_ON_LINE, "of single kits"));

/* ---- ride ---- */

static GW_RECORD(RIDE_RECORD, gw_ride_item,
    GW_PART_SAME(&GW_RIDE_FIGURES_RECORD),
    GW_PART_SAME(&GW_RIDE_COMPARED_RECORD));

/* ---- all of it ---- */

GW_READS(double, is_baseline, gw_compare_made, GW_INDEX(p, gw_kit) == it->cmp.baseline)
GW_READS(int, tolerances, gw_compare_made, it->cmp.tolerance ? it->cmp.tolerance->n : 0)
GW_READS(const void *, tolerance_at, gw_compare_made,
         it->cmp.tolerance->item[p->index].failed ? NULL : &it->cmp.tolerance->item[p->index])
GW_READS(const char *, ride_caution, gw_compare_made, it->cmp.no_ride ? NULL : gw_ride_caution())
GW_READS(int, warnings, gw_compare_made, it->cmp.deflect->n_warnings + it->cmp.ride->n_warnings)

static const char *warning(const gw_place *p)
{
    const gw_comparison *cmp = comparison(p);
    int own = cmp->deflect->n_warnings;
    return p->index < own ? cmp->deflect->warning[p->index] : cmp->ride->warning[p->index - own];
}

static GW_RECORD(KIT_RECORD, gw_kit,
    GW_MEMBER("name", PLAIN, gw_kit, name, 0, "of the kit"),
    GW_MEMBER("label", PLAIN, gw_kit, label, GW_MAY_LACK, "its words for the customer"),
    GW_ASKED("baseline", is_baseline, 0, "the others are set beside it"));

static GW_RECORD(TOLERANCE_RECORD, gw_tolerance_item,
    GW_KIT("kit", gw_tolerance_item, kit, 0, "name of the kit"),
    GW_WORD("corner", gw_tolerance_item, axle, GW_AXLE_NAMES, 0, "the axle"),
    GW_LOADED("load", gw_tolerance_item, load, 0, "name of the load"),
    GW_CONSTANT("points", PLAIN, GW_HARDNESS_TOLERANCE, 0, "of hardness, to either side"),
    GW_MEMBER("bushes", PLAIN, gw_tolerance_item, bushes, 0, "whose hardness varies"),
    GW_MEMBER("toe_change", DEG, gw_tolerance_item, toe, 0, "all rubber softer, and harder"),
    GW_MEMBER("camber_change", DEG, gw_tolerance_item, camber, 0, "the same of camber"));

static GW_RECORD(RESULTS_RECORD, gw_deflect_study,
    GW_ROWS("results", gw_deflect_study, n, item, &GW_DEFLECTION_RECORD, 0, "as of deflect"));
static GW_RECORD(RIDES_RECORD, gw_ride_study,
    GW_ROWS("ride", gw_ride_study, n, item, &RIDE_RECORD, GW_ON_LINE, "what of ride tells the kits apart; the rest: giveway ride"),
    GW_ROWS("ride_too_close_to_call", gw_ride_study, n_close, close, &GW_RIDE_CLOSE_RECORD, GW_ON_LINE, "kits within the range of each other"));

static GW_RECORD(RESULT_RECORD, gw_compare_made,
    GW_ROWS("kits", gw_case, n_kits, kits, &KIT_RECORD, GW_ON_LINE, "of the case"),
    GW_PART_BEHIND(gw_compare_made, cmp.deflect, &RESULTS_RECORD, GW_ALWAYS),
    GW_EACH("hardness_tolerance", tolerances, tolerance_at, &TOLERANCE_RECORD, GW_ON_LINE, "what 5 points of hardness make of the answers"),
    GW_BEHIND("bands", gw_compare_made, cmp.bands, &GW_BANDS_RECORD, 0, "how sure the answers are"),
    GW_MEMBER("currency", PLAIN, gw_case, shop.currency, GW_MAY_LACK, "of every price"),
    GW_ROWS("summary", gw_compare_made, n_kits, kit, &SUMMARY_RECORD, 0, "a kit each"),
    GW_BEHIND("handling_inputs", gw_compare_made, cmp.handling, &INPUTS_RECORD, GW_ON_LINE | GW_ALWAYS, "what handling was calculated with"),
    GW_ROWS("handling", gw_compare_made, n_kits, kit, &HANDLING_RECORD, 0, "what a kit does to the car"),
    GW_BEHIND("handling_left_out", gw_compare_made, cmp.handling, &LEFT_OUT_RECORD, GW_ALWAYS, "and what to add"),
    GW_PART_BEHIND(gw_compare_made, cmp.ride, &RIDES_RECORD, GW_ALWAYS),
    GW_MEMBER("ride_left_out", PLAIN, gw_compare_made, cmp.no_ride, GW_MAY_LACK, "what the case lacks for it"),
    GW_SAID("ride_caution", ride_caution, GW_SOMETIMES, "what its figures are not"),
    GW_SAYINGS("warnings", warnings, warning, 0, "as on standard error"));

const gw_result GW_COMPARE_RESULT = {
    .command = "compare", .record = &RESULT_RECORD, .rows = "results", .csv = gw_compare_csv
};

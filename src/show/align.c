/* SPDX-License-Identifier: MIT */
/* The rows of `align`: every figure that it gives to programs. */
#include "show/align.h"

#include "record/csv.h"

#include <math.h>
#include <stdio.h>

GW_READS(const gw_align *, align_of, gw_align_item, &p->c->align[it->axle])
GW_READS(const gw_corner *, corner_of, gw_align_item, &p->c->corners[it->axle])

/* -- settings and targets -- */

/* The angle itself where it was measured: the measured one, and what the parts add. */
GW_READS(double, caster, gw_align_item,
         it->has_caster ? it->caster + GW_IT(p, gw_corner_setting)->caster_change : (double)NAN)

static GW_RECORD(SETTING_RECORD, gw_corner_setting,
    GW_MEMBER("camber", DEG, gw_corner_setting, camber, 0, "top outboard positive"),
    GW_MEMBER("toe", DEG, gw_corner_setting, toe, 0, "toe-in positive"),
    GW_MEMBER("caster_change", DEG, gw_corner_setting, caster_change, 0, "from without the parts; from the measured one"),
    GW_WORKED_OUT("caster", DEG, caster, GW_SOMETIMES, "where it was measured"));

GW_READS(double, target, gw_align_item,
         gw_target_given(align_of(p), (gw_target)GW_WHICH(p))
             ? gw_target_of(align_of(p), (gw_target)GW_WHICH(p))
             : (double)NAN)
GW_READS(double, caster_angle_target, gw_align_item,
         align_of(p)->has_caster_angle ? align_of(p)->caster_angle : (double)NAN)

static double tolerance(const gw_place *p)
{
    double t = gw_target_tolerance(align_of(p), (gw_target)GW_WHICH(p));
    return t > 0.0 ? t : (double)NAN;
}

static double miss(const gw_place *p)
{
    gw_target which = (gw_target)GW_WHICH(p);
    bool given =
        gw_target_given(align_of(p), which) || (which == GW_TARGET_CASTER && align_of(p)->has_caster_angle);
    return given ? GW_IT(p, gw_align_item)->miss[which] : (double)NAN;
}

/* All targets: met, or met as well as the case asks. */
static double met(const gw_place *p)
{
    const gw_align_item *i = GW_IT(p, gw_align_item);
    const bool *flags = GW_WHICH(p) ? i->tolerated : i->reached;
    return flags[GW_TARGET_TOE] && flags[GW_TARGET_CAMBER] && flags[GW_TARGET_CASTER];
}

static GW_RECORD(TOLERANCE_RECORD, gw_align_item,
    GW_WORKED_OUT_OF("toe", DEG, tolerance, GW_TARGET_TOE, GW_SOMETIMES | GW_NO_UNIT, "of the case"),
    GW_WORKED_OUT_OF("camber", DEG, tolerance, GW_TARGET_CAMBER, GW_SOMETIMES | GW_NO_UNIT, "of the case"),
    GW_WORKED_OUT_OF("caster", DEG, tolerance, GW_TARGET_CASTER, GW_SOMETIMES | GW_NO_UNIT, "of the case"));

static GW_RECORD(TARGET_RECORD, gw_align_item,
    GW_WORKED_OUT_OF("toe", DEG, target, GW_TARGET_TOE, GW_SOMETIMES, "aimed at"),
    GW_WORKED_OUT_OF("camber", DEG, target, GW_TARGET_CAMBER, GW_SOMETIMES, "aimed at"),
    GW_WORKED_OUT_OF("caster_change", DEG, target, GW_TARGET_CASTER, GW_SOMETIMES, "aimed at"),
    GW_WORKED_OUT("caster", DEG, caster_angle_target, GW_SOMETIMES, "aimed at, from the measured one"),
    GW_HERE("tolerance_deg", &TOLERANCE_RECORD, GW_ON_LINE, "that the case allows"));

static GW_RECORD(MISS_RECORD, gw_align_item,
    GW_WORKED_OUT_OF("toe", DEG, miss, GW_TARGET_TOE, GW_SOMETIMES, "reached less target"),
    GW_WORKED_OUT_OF("camber", DEG, miss, GW_TARGET_CAMBER, GW_SOMETIMES, "reached less target"),
    GW_WORKED_OUT_OF("caster_change", DEG, miss, GW_TARGET_CASTER, GW_SOMETIMES, "reached less target"));

/* -- adjusters -- */

static const char *const KINDS[] = { "offset", "length", "shim", NULL };

GW_READS(const gw_adjuster *, adjuster, gw_align_item, &align_of(p)->adjusters[GW_INDEX(p, gw_adjustment)])

static bool is(const gw_place *p, gw_adjuster_kind kind)
{
    return adjuster(p)->kind == kind;
}

static const char *joint_named(const gw_place *p, const gw_adjuster *a)
{
    return a->kind == GW_ADJUST_LENGTH ? NULL : gw_joint_as_written(corner_of(p), a->joint);
}

static const char *member_named(const gw_place *p, const gw_adjuster *a)
{
    return a->kind == GW_ADJUST_LENGTH ? gw_body_as_written(corner_of(p), a->body) : NULL;
}

GW_READS(const char *, kind_of, gw_adjustment, KINDS[adjuster(p)->kind])
GW_READS(const char *, joint_of, gw_adjustment, joint_named(p, adjuster(p)))
GW_READS(const char *, member_of, gw_adjustment, member_named(p, adjuster(p)))
GW_READS(const char *, mark_is, gw_adjustment,
         is(p, GW_ADJUST_OFFSET) ? GW_VIEW_WORDS[it->bore.mark.view] : NULL)

/* Of an adjuster of the kind that the row is for. */
GW_READS(double, along, gw_adjustment, is(p, (gw_adjuster_kind)GW_WHICH(p)) ? it->move.along[0] : (double)NAN)
GW_READS(double, steps, gw_adjustment, it->steps)

static GW_RECORD(ADJUSTER_RECORD, gw_adjustment,
    GW_CHOSEN("kind", kind_of, KINDS, 0, "what it adjusts"),
    GW_SAID("joint", joint_of, GW_SOMETIMES, "of an offset or a shim"),
    GW_MEMBER("offset", MM, gw_adjustment, bore.size, GW_SOMETIMES, "of the bore from the middle"),
    GW_MEMBER("clock", DEG, gw_adjustment, bore.clock, GW_SOMETIMES, "from e1 towards e2, 0 to 360"),
    GW_MEMBER("mark_left", DEG, gw_adjustment, bore.mark.left, GW_SOMETIMES, "where the bolt sits on the left of the car"),
    GW_MEMBER("mark_right", DEG, gw_adjustment, bore.mark.right, GW_SOMETIMES, "where it sits on the right"),
    GW_SAID("mark_is", mark_is, GW_SOMETIMES, "from where the mark is seen"),
    GW_MEMBER("bush_offset", MM, gw_adjustment, fit.size, GW_SOMETIMES, "of the bush to fit, where the kit's own is off centre and this comes on top of it"),
    GW_MEMBER("bush_clock", DEG, gw_adjustment, fit.clock, GW_SOMETIMES, "of that bush, from e1 towards e2, 0 to 360"),
    GW_MEMBER("bush_mark_left", DEG, gw_adjustment, fit.mark.left, GW_SOMETIMES, "where its bolt sits on the left of the car"),
    GW_MEMBER("bush_mark_right", DEG, gw_adjustment, fit.mark.right, GW_SOMETIMES, "where it sits on the right"),
    GW_SAID("member", member_of, GW_SOMETIMES, "whose length it is"),
    GW_WORKED_OUT_OF("length_change", MM, along, GW_ADJUST_LENGTH, GW_SOMETIMES, "longer positive"),
    GW_MEMBER("turns", PLAIN, gw_adjustment, turns, GW_SOMETIMES, "of the adjuster"),
    GW_WORKED_OUT_OF("shim", MM, along, GW_ADJUST_SHIM, GW_SOMETIMES, "thickness put in"),
    GW_COUNTED("steps", steps, GW_SOMETIMES, "whole shims"),
    GW_MEMBER("at_limit", PLAIN, gw_adjustment, at_limit, 0, "it goes no further"),
    GW_MEMBER("holds_target", PLAIN, gw_adjustment, holds, 0, "its limit keeps the target from being reached"));

GW_READS(int, adjusters, gw_align_item, align_of(p)->n_adjusters)
GW_READS(const void *, set_of_item, gw_align_item, &it->set[p->index])
GW_READS(const void *, set_of_turned, gw_turned, &it->set[p->index])

static GW_RECORD(TURNED_RECORD, gw_turned,
    GW_WITHIN("reached", gw_turned, reached, &SETTING_RECORD, GW_ON_LINE, "with it"),
    GW_EACH("adjusters", adjusters, set_of_turned, &ADJUSTER_RECORD, GW_ON_LINE, "as set then"));

GW_READS(const gw_adjuster *, of_sensitivity, gw_sensitivity, &align_of(p)->adjusters[it->adjuster])
GW_READS(const char *, sensitive_kind, gw_sensitivity, KINDS[of_sensitivity(p)->kind])
GW_READS(const char *, sensitive_joint, gw_sensitivity, joint_named(p, of_sensitivity(p)))
GW_READS(const char *, sensitive_member, gw_sensitivity, member_named(p, of_sensitivity(p)))

static const char *sensitive_axis(const gw_place *p)
{
    if (of_sensitivity(p)->kind != GW_ADJUST_OFFSET) return NULL;
    return GW_IT(p, gw_sensitivity)->axis ? "e2" : "e1";
}

static const char *const AXES[] = { "e1", "e2", NULL };

static GW_RECORD(SENSITIVITY_RECORD, gw_sensitivity,
    GW_CHOSEN("kind", sensitive_kind, KINDS, 0, "of the adjuster"),
    GW_SAID("member", sensitive_member, GW_SOMETIMES, "of a length"),
    GW_SAID("joint", sensitive_joint, GW_SOMETIMES, "of an offset or a shim"),
    GW_CHOSEN("along", sensitive_axis, AXES, GW_SOMETIMES, "axis of the bush, of an offset"),
    GW_MEMBER("camber", DEG_PER_MM, gw_sensitivity, camber, 0, "per movement"),
    GW_MEMBER("toe", DEG_PER_MM, gw_sensitivity, toe, 0, "per movement"),
    GW_MEMBER("caster", DEG_PER_MM, gw_sensitivity, caster, 0, "per movement"),
    GW_MEMBER("half_track_mm_per_mm", PLAIN, gw_sensitivity, track, 0, "patch sideways, outward positive, one wheel"),
    GW_MEMBER("bump_steer_deg_per_m_per_mm", DEG_PER_MM, gw_sensitivity, bump_steer, GW_NO_UNIT, "per movement"));

/* -- what else moves -- */

GW_READS(double, caster_moved, gw_align_item,
         it->after.setting.caster_change - it->before.setting.caster_change)
GW_READS(double, track_moved, gw_align_item, 2.0 * (it->after.patch.y - it->before.patch.y))
GW_READS(double, wheel_moved, gw_align_item, it->after.centre.x - it->before.centre.x)

static GW_RECORD(MOVED_RECORD, gw_align_item,
    GW_WORKED_OUT("caster_change", DEG, caster_moved, 0, "after less before"),
    GW_WORKED_OUT("track", MM, track_moved, 0, "both wheels alike; wider positive"),
    GW_WORKED_OUT("wheel_forward", MM, wheel_moved, 0, "of the wheel centre"),
    GW_MEMBER("bump_steer_before", DEG_PER_M, gw_align_item, before.bump_steer, 0, "toe-in in bump positive"),
    GW_MEMBER("bump_steer_after", DEG_PER_M, gw_align_item, after.bump_steer, 0, "toe-in in bump positive"),
    GW_MEMBER("bump_camber_before", DEG_PER_M, gw_align_item, before.bump_camber, 0, "top outboard in bump positive"),
    GW_MEMBER("bump_camber_after", DEG_PER_M, gw_align_item, after.bump_camber, 0, "top outboard in bump positive"));

static GW_RECORD(LOAD_RECORD, gw_align_load,
    GW_LOADED("load", gw_align_load, load, 0, "name of the load"),
    GW_MEMBER("camber_change_before", DEG, gw_align_load, camber_before, GW_MAY_LACK, "null: not carried"),
    GW_MEMBER("camber_change_after", DEG, gw_align_load, camber_after, GW_MAY_LACK, "null: not carried"),
    GW_MEMBER("toe_change_before", DEG, gw_align_load, toe_before, GW_MAY_LACK, "null: not carried"),
    GW_MEMBER("toe_change_after", DEG, gw_align_load, toe_after, GW_MAY_LACK, "null: not carried"));

/* -- will it move freely, fit and hold -- */

GW_READS(double, tilt_margin, gw_align_tilt, it->limit - it->after)

static GW_RECORD(TILT_RECORD, gw_align_tilt,
    GW_JOINT("joint", gw_align_tilt, joint, gw_align_item, 0, "the joint"),
    GW_MEMBER("limit", DEG, gw_align_tilt, limit, 0, "of its tilt"),
    GW_MEMBER("before", DEG, gw_align_tilt, before, GW_MAY_LACK, "largest over the travel"),
    GW_MEMBER("after", DEG, gw_align_tilt, after, GW_MAY_LACK, "largest over the travel"),
    GW_WORKED_OUT("margin", DEG, tilt_margin, GW_MAY_LACK, "limit less tilt after"));

enum { INTERFERENCE, PRESSURE, PRESS_FORCE };

static void least_and_most(const gw_place *p, double *x)
{
    const gw_align_seat *s = GW_IT(p, gw_align_seat);
    const double ends[][2] = { { s->least, s->most },
                               { s->held.pressure, s->worst.pressure },
                               { s->held.force, s->worst.force } };
    for (int i = 0; i < 2; i++) x[i] = ends[GW_WHICH(p)][i];
}

static GW_RECORD(SEAT_RECORD, gw_align_seat,
    GW_JOINT("joint", gw_align_seat, joint, gw_align_item, 0, "the joint"),
    GW_FILLED_OF("interference", UM, GW_PAIR, least_and_most, INTERFERENCE, 0, "least and greatest, on the diameter"),
    GW_FILLED_OF("pressure", MPA, GW_PAIR, least_and_most, PRESSURE, 0, "at the least and at the greatest"),
    GW_MEMBER("housing_hoop", MPA, gw_align_seat, worst.housing_hoop, 0, "at the greatest"),
    GW_MEMBER("sleeve_hoop", MPA, gw_align_seat, worst.sleeve_hoop, 0, "at the greatest"),
    GW_FILLED_OF("press_in_force", N, GW_PAIR, least_and_most, PRESS_FORCE, 0, "at the least and at the greatest"));

static double in_trade_unit(const gw_place *p)
{
    const gw_verdict *v = &GW_IT(p, gw_align_check)->verdict;
    return (GW_WHICH(p) ? v->limit : v->value) / gw_trade_figure_of(v).scale;
}

GW_READS(const char *, check_unit, gw_align_check, gw_trade_figure_of(&it->verdict).unit)

static const char *const BOUNDS[] = { "at most", "at least", NULL };

static GW_RECORD(CHECK_RECORD, gw_align_check,
    GW_JOINT("joint", gw_align_check, joint, gw_align_item, 0, "the joint"),
    GW_WORD("what", gw_align_check, verdict.what, GW_JUDGED_WORDS, 0, "the figure"),
    GW_WORKED_OUT_OF("value", PLAIN, in_trade_unit, false, 0, "in the unit named beside it"),
    GW_WORKED_OUT_OF("limit", PLAIN, in_trade_unit, true, 0, "in the same unit"),
    GW_SAID("unit", check_unit, 0, "N, MPa, mm, deg, or - for a ratio"),
    GW_WORD("bound", gw_align_check, verdict.bound, BOUNDS, 0, "which side of the limit is allowed"),
    GW_MEMBER("holds", PLAIN, gw_align_check, verdict.holds, 0, "the value is within the limit"),
    GW_MEMBER("source", PLAIN, gw_align_check, verdict.source, 0, "where the limit comes from"));

/* -- the sheet -- */

static double toe_at_rim(const gw_place *p)
{
    double rim = corner_of(p)->wheel.rim_diameter;
    return rim > 0.0 ? gw_toe_at_rim(GW_IT(p, gw_corner_setting)->toe, rim) : (double)NAN;
}

static GW_RECORD(NOTED_RECORD, gw_corner_setting,
    GW_MEMBER("camber", DEG, gw_corner_setting, camber, 0, "top outboard positive"),
    GW_MEMBER("camber", DEG, gw_corner_setting, camber, GW_AS_MINUTES, "in degrees and minutes"),
    GW_MEMBER("toe", DEG, gw_corner_setting, toe, 0, "toe-in positive"),
    GW_MEMBER("toe", DEG, gw_corner_setting, toe, GW_AS_MINUTES, "in degrees and minutes"),
    GW_WORKED_OUT("toe_at_rim", MM, toe_at_rim, GW_SOMETIMES, "front edge of the rim nearer to the car"),
    GW_MEMBER("caster_change", DEG, gw_corner_setting, caster_change, 0, "from without the parts"),
    GW_MEMBER("caster_change", DEG, gw_corner_setting, caster_change, GW_AS_MINUTES, "in degrees and minutes"));

/* Where the sides were not measured the car is the same on both; the sheet says so twice, as it is filled in.
 */
GW_READS(const void *, left, gw_align_item, gw_align_left(it))
GW_READS(const void *, right, gw_align_item, gw_align_right(it))

static GW_RECORD(SIDE_RECORD, gw_align_item,
    GW_WITHIN("before", gw_align_item, before.setting, &NOTED_RECORD, GW_ON_LINE, "with the kit alone"),
    GW_WITHIN("after", gw_align_item, after.setting, &NOTED_RECORD, GW_ON_LINE, "with everything set"));

static double toe_of(const gw_align_item *i, bool after)
{
    return after ? i->after.setting.toe : i->before.setting.toe;
}

GW_READS(double, total, gw_align_item,
         toe_of(gw_align_left(it), GW_WHICH(p)) + toe_of(gw_align_right(it), GW_WHICH(p)))

static int steps_of_work(const gw_place *p)
{
    int n = 0;
    (void)p;
    while (gw_order_of_work(n)) n++;
    return n;
}

GW_READS(const char *, step_of_work, gw_align_item, gw_order_of_work(p->index))

static GW_RECORD(SHEET_RECORD, gw_align_item,
    GW_PRESENT("left", left, &SIDE_RECORD, 0, "wheel"),
    GW_PRESENT("right", right, &SIDE_RECORD, 0, "wheel"),
    GW_WORKED_OUT_OF("total_toe_before", DEG, total, false, 0, "of both wheels"),
    GW_WORKED_OUT_OF("total_toe_after", DEG, total, true, 0, "of both wheels"),
    GW_SAYINGS("order_of_work", steps_of_work, step_of_work, 0, "common practice"));

static const char *const SIDES[] = { "left", "right", NULL };

GW_READS(const char *, side, gw_align_item, it->side == GW_RAMP_BOTH ? NULL : SIDES[it->side - GW_RAMP_LEFT])

static GW_RECORD(ITEM_RECORD, gw_align_item,
    GW_KIT("kit", gw_align_item, kit, 0, "name of the kit"),
    GW_WORD("corner", gw_align_item, axle, GW_AXLE_NAMES, 0, "the axle"),
    GW_CHOSEN("side", side, SIDES, GW_SOMETIMES, "of the car, where the sides were measured"),
    GW_HERE("target", &TARGET_RECORD, 0, "what the case aims at"),
    GW_WITHIN("before", gw_align_item, before.setting, &SETTING_RECORD, GW_ON_LINE, "with the kit alone"),
    GW_WITHIN("before_resetting", gw_align_item, fitted.setting, &SETTING_RECORD, GW_ON_LINE, "offsets and shims in, arms not yet turned"),
    GW_WITHIN("reached", gw_align_item, after.setting, &SETTING_RECORD, GW_ON_LINE, "with everything set"),
    GW_HERE("miss", &MISS_RECORD, GW_ON_LINE, "by how much each target is missed"),
    GW_ASKED_OF("target_reached", met, false, 0, "all targets are met"),
    GW_ASKED_OF("within_tolerance", met, true, 0, "all are met as well as the case asks"),
    GW_EACH("adjusters", adjusters, set_of_item, &ADJUSTER_RECORD, GW_ON_LINE, "what each is set to"),
    GW_ROWS("sensitivity", gw_align_item, n_sensitivities, sensitivity, &SENSITIVITY_RECORD, GW_ON_LINE, "what each does, from the kit alone"),
    GW_ARRAY("alternative", gw_align_item, n_turned, turned, &TURNED_RECORD, 0, "with a bush of the full eccentricity, turned"),
    GW_HERE("moved", &MOVED_RECORD, GW_ON_LINE, "what else moves"),
    GW_ROWS("loads", gw_align_item, n_loads, load, &LOAD_RECORD, GW_ON_LINE, "what loads take, before and after"),
    GW_ROWS("tilt", gw_align_item, n_tilts, tilt, &TILT_RECORD, GW_ON_LINE, "joints with a limit of tilt"),
    GW_ROWS("press_fits", gw_align_item, n_seats, seat, &SEAT_RECORD, GW_ON_LINE, "sleeves in their housings"),
    GW_ROWS("checks", gw_align_item, n_checks, check, &CHECK_RECORD, GW_ON_LINE, "figures beside their limits"),
    GW_MEMBER("shock_factor", PLAIN, gw_align_item, shock_factor, 0, "used on bearings"),
    GW_HERE("sheet", &SHEET_RECORD, 0, "the alignment sheet"));

GW_READS(const char *, caution, gw_align_study, gw_words_text(p->index ? GW_WORDS_DEFER : GW_WORDS_SAFETY))

static GW_RECORD(LINE_RECORD, gw_axle_line,
    GW_MEMBER("total_toe", DEG, gw_axle_line, total_toe, 0, "sum of both wheels"),
    GW_MEMBER("camber_difference", DEG, gw_axle_line, camber_difference, 0, "left less right"),
    GW_MEMBER("caster_difference", DEG, gw_axle_line, caster_difference, GW_MAY_LACK, "left less right; null: not measured"),
    GW_MEMBER("thrust_angle", DEG, gw_axle_line, thrust, 0, "toe right less toe left, halved: positive steers to the left"),
    GW_MEMBER("steering_wheel", DEG, gw_axle_line, steering_wheel, GW_MAY_LACK, "off straight when the car runs straight, to the left positive; null: behind, or without steering_ratio"));

static GW_RECORD(AXLE_RECORD, gw_align_axle,
    GW_KIT("kit", gw_align_axle, kit, 0, "name of the kit"),
    GW_WORD("axle", gw_align_axle, axle, GW_AXLE_NAMES, 0, "which"),
    GW_WITHIN("before", gw_align_axle, before, &LINE_RECORD, GW_ON_LINE, "as measured"),
    GW_WITHIN("after", gw_align_axle, after, &LINE_RECORD, GW_ON_LINE, "with everything set"));

static GW_RECORD(RESULT_RECORD, gw_align_study,
    GW_ROWS("results", gw_align_study, n, item, &ITEM_RECORD, 0, "by kit, then corner"),
    GW_ROWS("axles", gw_align_study, n_axles, axle_lines, &AXLE_RECORD, 0, "both sides of an axle together, where they were measured"),
    GW_ALL_SAYINGS("cautions", 2, caution, 0, "before anyone works on the car"),
    GW_TEXTS("warnings", gw_align_study, n_warnings, warning, 0, "as on standard error"));

/* -- in CSV: a row a kit and corner, the adjusters in columns; the side where sides were measured -- */

static GW_RECORD(NAMED_RECORD, gw_align_item,
    GW_KIT("kit", gw_align_item, kit, 0, "name of the kit"),
    GW_WORD("corner", gw_align_item, axle, GW_AXLE_NAMES, 0, "the axle"));

static GW_RECORD(OF_SIDE_RECORD, gw_align_item,
    GW_CHOSEN("side", side, SIDES, 0, "of the car"));

static GW_RECORD(COLUMNS_RECORD, gw_align_item,
    GW_WORKED_OUT_OF("target_camber", DEG, target, GW_TARGET_CAMBER, 0, "aimed at"),
    GW_WORKED_OUT_OF("target_toe", DEG, target, GW_TARGET_TOE, 0, "aimed at"),
    GW_WORKED_OUT_OF("target_caster_change", DEG, target, GW_TARGET_CASTER, 0, "aimed at"),
    GW_MEMBER("before_camber", DEG, gw_align_item, before.setting.camber, 0, "with the kit alone"),
    GW_MEMBER("before_toe", DEG, gw_align_item, before.setting.toe, 0, "with the kit alone"),
    GW_MEMBER("before_caster_change", DEG, gw_align_item, before.setting.caster_change, 0, "with the kit alone"),
    GW_MEMBER("reached_camber", DEG, gw_align_item, after.setting.camber, 0, "with everything set"),
    GW_MEMBER("reached_toe", DEG, gw_align_item, after.setting.toe, 0, "with everything set"),
    GW_MEMBER("reached_caster_change", DEG, gw_align_item, after.setting.caster_change, 0, "with everything set"),
    GW_WORKED_OUT("track_change", MM, track_moved, 0, "both wheels alike; wider positive"),
    GW_MEMBER("bump_steer_before", DEG_PER_M, gw_align_item, before.bump_steer, 0, "toe-in in bump positive"),
    GW_MEMBER("bump_steer_after", DEG_PER_M, gw_align_item, after.bump_steer, 0, "toe-in in bump positive"));

GW_READS(double, moved, gw_adjustment, is(p, GW_ADJUST_OFFSET) ? it->bore.size : it->move.along[0])

/* Behind "adjuster_1", which is the head of its name. */
static GW_RECORD(ADJUSTED_RECORD, gw_adjustment,
    GW_WORKED_OUT("", MM, moved, 0, "offset, change of length or thickness"),
    GW_MEMBER("_clock", DEG, gw_adjustment, bore.clock, 0, "of an offset"),
    GW_MEMBER("_turns", PLAIN, gw_adjustment, turns, 0, "of a length"),
    GW_MEMBER("_bush", MM, gw_adjustment, fit.size, 0, "where the kit's own is off centre"),
    GW_MEMBER("_bush_clock", DEG, gw_adjustment, fit.clock, 0, "of that bush"));

static int most_adjusters(const gw_case *c, const gw_align_study *study)
{
    int most = 0;
    for (int i = 0; i < study->n; i++) {
        int n = c->align[study->item[i].axle].n_adjusters;
        if (n > most) most = n;
    }
    return most;
}

static void put_heads(gw_csv *csv, int n, bool sides)
{
    gw_record_heads(csv, &NAMED_RECORD, "");
    if (sides) gw_record_heads(csv, &OF_SIDE_RECORD, "");
    gw_record_heads(csv, &COLUMNS_RECORD, "");
    for (int a = 1; a <= n; a++) {
        char prefix[24];
        snprintf(prefix, sizeof prefix, "adjuster_%d", a);
        gw_csv_string(csv, prefix);
        gw_record_heads(csv, &ADJUSTED_RECORD, prefix);
    }
    gw_csv_end_row(csv);
}

static void put_adjuster(gw_csv *csv, const gw_place *item, int a)
{
    gw_buf name = { 0 };
    gw_place set;
    bool there = a < adjusters(item) && gw_place_element(gw_row_of(item, "adjusters"), item, a, &set);
    if (there) gw_adjuster_words(corner_of(item), &align_of(item)->adjusters[a], &name);
    gw_csv_text(csv, &name);
    gw_record_fields(csv, &ADJUSTED_RECORD, there ? &set : NULL);
}

static void put_csv(const gw_case *c, const void *made, gw_buf *out)
{
    const gw_align_study *study = made;
    const int n = most_adjusters(c, study);
    gw_csv csv = { .out = out };
    put_heads(&csv, n, study->n_axles > 0);
    for (int i = 0; i < study->n; i++) {
        const gw_place item = { .c = c, .record = &ITEM_RECORD, .it = &study->item[i], .index = i };
        gw_record_fields(&csv, &NAMED_RECORD, &item);
        if (study->n_axles > 0) gw_record_fields(&csv, &OF_SIDE_RECORD, &item);
        gw_record_fields(&csv, &COLUMNS_RECORD, &item);
        for (int a = 0; a < n; a++) put_adjuster(&csv, &item, a);
        gw_csv_end_row(&csv);
    }
}

const gw_result GW_ALIGN_RESULT = {
    .command = "align", .record = &RESULT_RECORD, .rows = "results", .csv = put_csv
};

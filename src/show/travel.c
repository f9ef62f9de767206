/* SPDX-License-Identifier: MIT */
/* The rows of `travel`: every figure that it shows. */
#include "show/travel.h"

#include <math.h>

static const char *joint_of(const gw_place *p, int joint)
{
    return p->c->corners[GW_IT(p, gw_travel_item)->axle].joints[joint].name;
}

/* -- a place of travel -- */

static GW_RECORD(TILT_RECORD, gw_travel_bearing,
    GW_JOINT("joint", gw_travel_bearing, joint, gw_travel_item, 0, "the joint"),
    GW_ENTRY("tilt", DEG, gw_travel_point, tilt, gw_travel_bearing, 0, "here"),
    GW_MEMBER("limit", DEG, gw_travel_bearing, limit, 0, "of the joint or of its bush, the smaller"));

static GW_RECORD(CLAMPED_RECORD, gw_travel_clamp,
    GW_ENTRY("vertical_load", N, gw_travel_clamp, vertical_load, gw_travel_point, 0, "patch load, carried here"),
    GW_ENTRY("wheel_rate", N_PER_MM, gw_travel_clamp, wheel_rate, gw_travel_point, 0, "its slope"),
    GW_ENTRY("parasitic_rate", N_PER_MM, gw_travel_clamp, parasitic, gw_travel_point, GW_NO_CSV | GW_MAY_LACK, "part of it that bushes add by being turned"));

static GW_RECORD(WHEEL_RECORD, gw_travel_point,
    GW_MEMBER("camber_change", DEG, gw_travel_point, camber_change, 0, "since standing still; top outboard positive"),
    GW_MEMBER("toe_change", DEG, gw_travel_point, toe_change, 0, "since standing still; toe-in positive"),
    GW_MEMBER("caster_change", DEG, gw_travel_point, caster_change, 0, "since standing still; top rearward positive"),
    GW_MEMBER("camber", DEG, gw_travel_point, camber, 0, "to the body"),
    GW_MEMBER("toe", DEG, gw_travel_point, toe, 0, "of the wheel"),
    GW_MEMBER("wheel_centre", MM, gw_travel_point, wheel_centre, 0, "movement since standing still: forward, outward, up"),
    GW_MEMBER("contact_patch", MM, gw_travel_point, contact_patch, 0, "movement since standing still"),
    GW_MEMBER("track_change", MM, gw_travel_point, track_change, GW_SOMETIMES, "both wheels alike; wider positive"),
    GW_MEMBER("wheelbase_change", MM, gw_travel_point, wheelbase_change, 0, "longer positive"),
    GW_MEMBER("vertical_load", N, gw_travel_point, rates.vertical_load, 0, "at the contact patch"),
    GW_MEMBER("wheel_rate", N_PER_MM, gw_travel_point, rates.wheel_rate, GW_SOMETIMES, "both wheels alike: slope of the vertical load over travel"),
    GW_MEMBER("parasitic_rate", N_PER_MM, gw_travel_point, parasitic, GW_MAY_LACK, "part of the wheel rate that bushes add by being turned"),
    GW_MEMBER("toe_rate", DEG_PER_M, gw_travel_point, rates.toe, GW_SOMETIMES, "bump steer; toe-in in bump positive"),
    GW_MEMBER("camber_rate", DEG_PER_M, gw_travel_point, rates.camber, GW_SOMETIMES, "top outboard in bump positive"),
    GW_MEMBER("roll_centre", MM, gw_travel_point, roll_centre, GW_SOMETIMES, "height above the ground, both wheels alike"),
    GW_MEMBER("front_view_swing_arm", MM, gw_travel_point, front_view.across, GW_NO_CSV | GW_MAY_LACK, "from the wheel centre to its instant centre; inboard positive"),
    GW_MEMBER("front_view_centre_above_wheel_centre", MM, gw_travel_point, front_view.above, GW_NO_CSV | GW_MAY_LACK, "height of that centre over the wheel centre; its line from the patch meets the middle at the roll centre"),
    GW_MEMBER("side_view_swing_arm", MM, gw_travel_point, side_view.across, GW_MAY_LACK, "from the wheel centre to its instant centre; ahead positive"),
    GW_MEMBER("side_view_centre_above_wheel_centre", MM, gw_travel_point, side_view.above, GW_NO_CSV | GW_MAY_LACK, "height of that centre over the wheel centre"),
    GW_MEMBER("brake_angle", DEG, gw_travel_point, brake_angle, GW_SOMETIMES, "slope of the patch's path; forward in bump positive"),
    GW_MEMBER("scrub_mm_per_mm", PLAIN, gw_travel_point, rates.patch_outward, GW_SOMETIMES, "sideways movement of the patch in bump; outward positive"),
    GW_MEMBER("drive_angle", DEG, gw_travel_point, drive_angle, GW_SOMETIMES, "slope of the wheel centre's path; forward in bump positive"));

static GW_RECORD(POINT_RECORD, gw_travel_point,
    GW_MEMBER("travel", MM, gw_travel_point, travel, GW_AS_ASKED, "of the wheel; bump positive"),
    GW_PART_SAME(&WHEEL_RECORD),
    GW_WITHIN_IF("clamped", gw_travel_item, clamp.present, clamp, &CLAMPED_RECORD, GW_ON_LINE, "with bushes tightened at another height"),
    GW_ROWS("bearings", gw_travel_item, n_bearings, bearing, &TILT_RECORD, GW_ON_LINE, "joints with a limit of tilt"),
    GW_MEMBER("largest_tilt_percent_of_limit", PERCENT, gw_travel_point, tilt_share, GW_NO_JSON | GW_NO_UNIT | GW_MAY_LACK, "of the joint nearest to its limit"),
    GW_MEMBER_IF("other_travel", MM, gw_travel_item, sided, gw_travel_point, other_travel, GW_AS_ASKED | GW_SOMETIMES, "of the other wheel of the axle, where both are shown"));

/* -- at ride height -- */

GW_READS(double, held, gw_travel_item, it->load < 0 ? it->roll_centre_held : (double)NAN)

static double rate_rolling(const gw_place *p)
{
    return GW_IT(p, gw_travel_item)->rate_rolling;
}

enum { ANTI_DIVE, ANTI_LIFT_DRIVING, ANTI_LIFT_BRAKING, ANTI_SQUAT };

static double anti(const gw_place *p)
{
    const gw_travel_item *item = GW_IT(p, gw_travel_item);
    bool front = GW_WHICH(p) <= ANTI_LIFT_DRIVING;
    if (!item->has_anti || item->axle != (front ? GW_FRONT : GW_REAR)) return NAN;
    return GW_WHICH(p) == ANTI_DIVE || GW_WHICH(p) == ANTI_LIFT_BRAKING ? item->anti_brake : item->anti_drive;
}

static GW_RECORD(REST_RECORD, gw_travel_point,
    GW_PART_SAME(&WHEEL_RECORD),
    GW_WORKED_OUT("roll_centre_load_held", MM, held, GW_SOMETIMES, "without the give of bushes to more load"),
    GW_WORKED_OUT_OF("anti_dive", PERCENT, anti, ANTI_DIVE, GW_SOMETIMES, "of the load transfer; outboard brakes"),
    GW_WORKED_OUT_OF("anti_lift_braking", PERCENT, anti, ANTI_LIFT_BRAKING, GW_SOMETIMES, "of the load transfer; outboard brakes"),
    GW_WORKED_OUT_OF("anti_lift_driving", PERCENT, anti, ANTI_LIFT_DRIVING, GW_SOMETIMES, "of the load transfer; half-shafts, or with the torque on what carries the final drive; left out where no load drives this axle"),
    GW_WORKED_OUT_OF("anti_squat", PERCENT, anti, ANTI_SQUAT, GW_SOMETIMES, "of the load transfer; half-shafts, or with the torque on what carries the final drive; left out where no load drives this axle"),
    GW_WORKED_OUT("wheel_rate_rolling", N_PER_MM, rate_rolling, GW_SOMETIMES, "with the contact below the wheel centre however the upright pitches, as a tyre has it"),
    GW_MEMBER("no_parasitic_rate", PLAIN, gw_travel_item, no_parasitic, GW_SOMETIMES, "why that rate is not known"));

/* -- over the travel -- */

static GW_RECORD(BEARING_RECORD, gw_travel_bearing,
    GW_JOINT("joint", gw_travel_bearing, joint, gw_travel_item, 0, "the joint"),
    GW_MEMBER("tilt", DEG, gw_travel_bearing, tilt, 0, "the largest over the travel"),
    GW_MEMBER("limit", DEG, gw_travel_bearing, limit, 0, "of the joint or of its bush, the smaller"),
    GW_MEMBER("margin", DEG, gw_travel_bearing, margin, 0, "limit less tilt"),
    GW_MEMBER("at_travel", MM, gw_travel_bearing, at, GW_AS_ASKED, "where the tilt is largest"),
    GW_MEMBER("holds", PLAIN, gw_travel_bearing, holds, 0, "the limit is nowhere passed"),
    GW_MEMBER("binds_in_bump", MM, gw_travel_bearing, binds_up, GW_AS_ASKED | GW_MAY_LACK, "where the limit is reached"),
    GW_MEMBER("binds_in_rebound", MM, gw_travel_bearing, binds_dn, GW_AS_ASKED | GW_MAY_LACK, "where the limit is reached"));

GW_READS(const char *, clamped_joint, gw_travel_clamp, joint_of(p, it->joint[GW_INDEX(p, gw_travel_clamp)]))

static GW_RECORD(CLAMPED_BUSH_RECORD, gw_travel_clamp,
    GW_SAID("joint", clamped_joint, 0, "the joint"),
    GW_ENTRY("clamp_travel", MM, gw_travel_clamp, clamped_at, gw_travel_clamp, GW_AS_ASKED, "where its bolt was tightened"),
    GW_ENTRY("twist", DEG, gw_travel_clamp, twist, gw_travel_clamp, 0, "of the bush at ride height, about its axis"),
    GW_ENTRY("torque", NM, gw_travel_clamp, torque, gw_travel_clamp, 0, "that it carries there"));

static GW_RECORD(CLAMP_RECORD, gw_travel_clamp,
    GW_MEMBER("body_rises", MM, gw_travel_clamp, ride_height, 0, "how much higher the body stands on its own"),
    GW_MEMBER("carried_by_bushes", N, gw_travel_clamp, lift, 0, "of the body at ride height"),
    GW_MEMBER("wheel_rate", N_PER_MM, gw_travel_clamp, rest_rate, 0, "at ride height"),
    GW_MEMBER("parasitic_rate", N_PER_MM, gw_travel_clamp, rest_parasitic, GW_MAY_LACK, "part of it that bushes add by being turned"),
    GW_ALONG("bushes", gw_travel_clamp, n, &CLAMPED_BUSH_RECORD, GW_ON_LINE, "tightened at another height"));

/* -- what has to be overcome -- */

GW_READS(double, friction_wheel, gw_travel_item, it->friction ? it->friction->wheel : (double)NAN)
GW_READS(int, friction_parts, gw_travel_item, it->friction ? it->friction->n : 0)
GW_READS(const void *, friction_part, gw_travel_item, &it->friction->part[p->index])

static const char *rubs_at(const gw_place *p)
{
    int joint = GW_IT(p, gw_friction_part)->joint;
    return joint < 0 ? "damper" : joint_of(p, joint);
}

GW_READS(double, rubs_by, gw_friction_part, (it->joint < 0) == GW_WHICH(p) ? it->strength : (double)NAN)

static GW_RECORD(FRICTION_RECORD, gw_friction_part,
    GW_SAID("joint", rubs_at, 0, "the joint, or damper"),
    GW_WORKED_OUT_OF("torque", NM, rubs_by, false, GW_SOMETIMES, "of a joint, under the load that it carries at rest"),
    GW_WORKED_OUT_OF("force", N, rubs_by, true, GW_SOMETIMES, "of the damper, along its line"),
    GW_MEMBER("wheel", N, gw_friction_part, wheel, 0, "what that is at the wheel"));

/* -- both wheels of an axle -- */

static GW_RECORD(SIDED_RECORD, gw_travel_item,
    GW_WORD("side", gw_travel_item, wheel, GW_WHEEL_NAMES, 0, "which wheel of the axle, where both are shown"));

enum { ROLL_CENTRE, ROLL_STEER, ROLL_CAMBER };

static double rolling(const gw_place *p)
{
    const gw_travel_item *item = GW_IT(p, gw_travel_item);
    const double *const each[] = { item->roll.centre, item->roll.steer, item->roll.camber };
    return item->rolls ? each[GW_WHICH(p)][item->wheel] : (double)NAN;
}

static GW_RECORD(ROLLING_RECORD, gw_travel_item,
    GW_WORKED_OUT_OF("roll_centre", MM, rolling, ROLL_CENTRE, GW_SOMETIMES | GW_NO_CSV, "height above the ground at ride height, the wheels going opposite ways"),
    GW_WORKED_OUT_OF("roll_steer_deg_per_deg", PLAIN, rolling, ROLL_STEER, GW_SOMETIMES, "toe per degree of roll, left wheel in bump"),
    GW_WORKED_OUT_OF("roll_camber_deg_per_deg", PLAIN, rolling, ROLL_CAMBER, GW_SOMETIMES, "camber to the body per degree of roll, left wheel in bump"),
    GW_MEMBER_IF("roll_stiffness", NM_PER_DEG, gw_travel_item, rolls, gw_travel_item, roll.stiffness, GW_SOMETIMES, "of the axle; without a bar that the joints do not hold"));

static GW_RECORD(ITEM_RECORD, gw_travel_item,
    GW_KIT("kit", gw_travel_item, kit, 0, "name of the kit"),
    GW_WORD("corner", gw_travel_item, axle, GW_AXLE_NAMES, 0, "the axle"),
    GW_LOADED("load", gw_travel_item, load, GW_MAY_LACK, "whose other forces act too; null: none"),
    GW_WITHIN("ride_height", gw_travel_item, rest, &REST_RECORD, GW_NO_CSV, "travel 0"),
    GW_WORKED_OUT("friction", N, friction_wheel, GW_SOMETIMES | GW_NO_CSV, "at the wheel, before it moves: half the gap between bump and rebound; vertical load alone"),
    GW_EACH("friction", friction_parts, friction_part, &FRICTION_RECORD, GW_ON_LINE, "what rubs: joints in their order, then the damper"),
    GW_ROWS("points", gw_travel_item, n, point, &POINT_RECORD, 0, "places of travel, from rebound to bump"),
    GW_PART_IF(gw_travel_item, sided, &SIDED_RECORD),
    GW_PART_SAME(&ROLLING_RECORD),
    GW_ROWS("bearings", gw_travel_item, n_bearings, bearing, &BEARING_RECORD, GW_ON_LINE, "joints with a limit of tilt"),
    GW_WITHIN_IF("clamped", gw_travel_item, clamp.present, clamp, &CLAMP_RECORD, GW_NO_CSV, "what bushes do that were tightened elsewhere"));

static GW_RECORD(RESULT_RECORD, gw_travel_study,
    GW_ROWS("results", gw_travel_study, n, item, &ITEM_RECORD, 0, "by kit, corner, then without and with each load"),
    GW_TEXTS("warnings", gw_travel_study, n_warnings, warning, 0, "as on standard error"));

const gw_result GW_TRAVEL_RESULT = { .command = "travel",
                                     .record = &RESULT_RECORD,
                                     .rows = "results.points" };

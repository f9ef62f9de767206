/* SPDX-License-Identifier: MIT */
/* The rows of `travel`: every figure that it shows. */
#include "show/travel.h"

#include <math.h>

static const char *joint_of(const gw_place *p, int joint)
{
    return p->c->corners[GW_IT(p, gw_travel_item)->axle].joints[joint].name;
}

/* -- a place of travel -- */

static const char *tilt_joint(const gw_place *p)
{
    return joint_of(p, GW_IT(p, gw_travel_bearing)->joint);
}

static double tilt_here(const gw_place *p)
{
    return GW_IT(p, gw_travel_point)->tilt[GW_INDEX(p, gw_travel_bearing)];
}

static const gw_field TILT[] = {
    GW_SAID("joint", tilt_joint, 0, "the joint"),
    GW_WORKED_OUT("tilt", DEG, tilt_here, 0, "here"),
    GW_MEMBER("limit", DEG, gw_travel_bearing, limit, 0, "of the joint or of its bush, the smaller"),
};
static const gw_record TILT_RECORD = GW_RECORD(gw_travel_bearing, TILT);

static int bearings(const gw_place *p)
{
    return GW_IT(p, gw_travel_item)->n_bearings;
}

static const void *bearing_at(const gw_place *p)
{
    return &GW_IT(p, gw_travel_item)->bearing[p->index];
}

static double clamped_load(const gw_place *p)
{
    return GW_IT(p, gw_travel_clamp)->vertical_load[GW_INDEX(p, gw_travel_point)];
}

static double clamped_rate(const gw_place *p)
{
    return GW_IT(p, gw_travel_clamp)->wheel_rate[GW_INDEX(p, gw_travel_point)];
}

static double clamped_parasitic(const gw_place *p)
{
    return GW_IT(p, gw_travel_clamp)->parasitic[GW_INDEX(p, gw_travel_point)];
}

static const gw_field CLAMPED[] = {
    GW_WORKED_OUT("vertical_load", N, clamped_load, 0, "patch load, carried here"),
    GW_WORKED_OUT("wheel_rate", N_PER_MM, clamped_rate, 0, "its slope"),
    GW_WORKED_OUT("parasitic_rate", N_PER_MM, clamped_parasitic, GW_NO_CSV | GW_MAY_LACK,
                  "part of it that bushes add by being turned"),
};
static const gw_record CLAMPED_RECORD = GW_RECORD(gw_travel_clamp, CLAMPED);

static const void *clamp_of(const gw_place *p)
{
    const gw_travel_clamp *clamp = &GW_IT(p, gw_travel_item)->clamp;
    return clamp->present ? clamp : NULL;
}

static double other_travel(const gw_place *p)
{
    return GW_IT(p, gw_travel_item)->sided ? GW_IT(p, gw_travel_point)->other_travel : (double)NAN;
}

/* clang-format off */
static const gw_field WHEEL[] = {
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
    GW_MEMBER("parasitic_rate", N_PER_MM, gw_travel_point, parasitic, GW_MAY_LACK,
              "part of the wheel rate that bushes add by being turned"),
    GW_MEMBER("toe_rate", DEG_PER_M, gw_travel_point, rates.toe, GW_SOMETIMES, "bump steer; toe-in in bump positive"),
    GW_MEMBER("camber_rate", DEG_PER_M, gw_travel_point, rates.camber, GW_SOMETIMES, "top outboard in bump positive"),
    GW_MEMBER("roll_centre", MM, gw_travel_point, roll_centre, GW_SOMETIMES, "height above the ground, both wheels alike"),
    GW_MEMBER("front_view_swing_arm", MM, gw_travel_point, front_view.across, GW_NO_CSV | GW_MAY_LACK,
              "from the wheel centre to its instant centre; inboard positive"),
    GW_MEMBER("front_view_centre_above_wheel_centre", MM, gw_travel_point, front_view.above, GW_NO_CSV | GW_MAY_LACK,
              "height of that centre over the wheel centre; its line from the patch meets the middle at the roll centre"),
    GW_MEMBER("side_view_swing_arm", MM, gw_travel_point, side_view.across, GW_MAY_LACK,
              "from the wheel centre to its instant centre; ahead positive"),
    GW_MEMBER("side_view_centre_above_wheel_centre", MM, gw_travel_point, side_view.above, GW_NO_CSV | GW_MAY_LACK,
              "height of that centre over the wheel centre"),
    GW_MEMBER("brake_angle", DEG, gw_travel_point, brake_angle, GW_SOMETIMES, "slope of the patch's path; forward in bump positive"),
    GW_MEMBER("scrub_mm_per_mm", PLAIN, gw_travel_point, rates.patch_outward, GW_SOMETIMES, "sideways movement of the patch in bump; outward positive"),
    GW_MEMBER("drive_angle", DEG, gw_travel_point, drive_angle, GW_SOMETIMES, "slope of the wheel centre's path; forward in bump positive"),
};
static const gw_record WHEEL_RECORD = GW_RECORD(gw_travel_point, WHEEL);

static const gw_field POINT[] = {
    GW_MEMBER("travel", MM, gw_travel_point, travel, GW_AS_ASKED, "of the wheel; bump positive"),
    GW_PART_SAME(&WHEEL_RECORD),
    GW_INSIDE("clamped", clamp_of, &CLAMPED_RECORD, GW_ON_LINE, "with bushes tightened at another height"),
    GW_EACH("bearings", bearings, bearing_at, &TILT_RECORD, GW_ON_LINE, "joints with a limit of tilt"),
    GW_MEMBER("largest_tilt_percent_of_limit", PERCENT, gw_travel_point, tilt_share,
              GW_NO_JSON | GW_NO_UNIT | GW_MAY_LACK, "of the joint nearest to its limit"),
    GW_WORKED_OUT("other_travel", MM, other_travel, GW_AS_ASKED | GW_SOMETIMES, "of the other wheel of the axle, where both are shown"),
};
static const gw_record POINT_RECORD = GW_RECORD(gw_travel_point, POINT);
/* clang-format on */

/* -- at ride height -- */

static double held(const gw_place *p)
{
    const gw_travel_item *item = GW_IT(p, gw_travel_item);
    return item->load < 0 ? item->roll_centre_held : (double)NAN;
}

static double anti(const gw_place *p, gw_axle axle, bool braking)
{
    const gw_travel_item *item = GW_IT(p, gw_travel_item);
    if (!item->has_anti || item->axle != axle) return NAN;
    return braking ? item->anti_brake : item->anti_drive;
}

static double anti_dive(const gw_place *p)
{
    return anti(p, GW_FRONT, true);
}

static double anti_lift_braking(const gw_place *p)
{
    return anti(p, GW_REAR, true);
}

static double anti_lift_driving(const gw_place *p)
{
    return anti(p, GW_FRONT, false);
}

static double anti_squat(const gw_place *p)
{
    return anti(p, GW_REAR, false);
}

static const char *no_parasitic(const gw_place *p)
{
    return GW_IT(p, gw_travel_item)->no_parasitic;
}

/* clang-format off */
static const gw_field REST[] = {
    GW_PART_SAME(&WHEEL_RECORD),
    GW_WORKED_OUT("roll_centre_load_held", MM, held, GW_SOMETIMES, "without the give of bushes to more load"),
    GW_WORKED_OUT("anti_dive", PERCENT, anti_dive, GW_SOMETIMES, "of the load transfer; outboard brakes"),
    GW_WORKED_OUT("anti_lift_braking", PERCENT, anti_lift_braking, GW_SOMETIMES, "of the load transfer; outboard brakes"),
    GW_WORKED_OUT("anti_lift_driving", PERCENT, anti_lift_driving, GW_SOMETIMES, "of the load transfer; left out where no load drives this axle"),
    GW_WORKED_OUT("anti_squat", PERCENT, anti_squat, GW_SOMETIMES, "of the load transfer; left out where no load drives this axle"),
    GW_SAID("no_parasitic_rate", no_parasitic, GW_SOMETIMES, "why that rate is not known"),
};
static const gw_record REST_RECORD = GW_RECORD(gw_travel_point, REST);

/* -- over the travel -- */

static const gw_field BEARING[] = {
    GW_SAID("joint", tilt_joint, 0, "the joint"),
    GW_MEMBER("tilt", DEG, gw_travel_bearing, tilt, 0, "the largest over the travel"),
    GW_MEMBER("limit", DEG, gw_travel_bearing, limit, 0, "of the joint or of its bush, the smaller"),
    GW_MEMBER("margin", DEG, gw_travel_bearing, margin, 0, "limit less tilt"),
    GW_MEMBER("at_travel", MM, gw_travel_bearing, at, GW_AS_ASKED, "where the tilt is largest"),
    GW_MEMBER("holds", PLAIN, gw_travel_bearing, holds, 0, "the limit is nowhere passed"),
    GW_MEMBER("binds_in_bump", MM, gw_travel_bearing, binds_up, GW_AS_ASKED | GW_MAY_LACK, "where the limit is reached"),
    GW_MEMBER("binds_in_rebound", MM, gw_travel_bearing, binds_dn, GW_AS_ASKED | GW_MAY_LACK, "where the limit is reached"),
};
static const gw_record BEARING_RECORD = GW_RECORD(gw_travel_bearing, BEARING);
/* clang-format on */

static const char *clamped_joint(const gw_place *p)
{
    return joint_of(p, GW_IT(p, gw_travel_clamp)->joint[GW_INDEX(p, gw_travel_clamp)]);
}

static double clamped_at(const gw_place *p)
{
    return GW_IT(p, gw_travel_clamp)->clamped_at[GW_INDEX(p, gw_travel_clamp)];
}

static double clamp_twist(const gw_place *p)
{
    return GW_IT(p, gw_travel_clamp)->twist[GW_INDEX(p, gw_travel_clamp)];
}

static double clamp_torque(const gw_place *p)
{
    return GW_IT(p, gw_travel_clamp)->torque[GW_INDEX(p, gw_travel_clamp)];
}

static const gw_field CLAMPED_BUSH[] = {
    GW_SAID("joint", clamped_joint, 0, "the joint"),
    GW_WORKED_OUT("clamp_travel", MM, clamped_at, GW_AS_ASKED, "where its bolt was tightened"),
    GW_WORKED_OUT("twist", DEG, clamp_twist, 0, "of the bush at ride height, about its axis"),
    GW_WORKED_OUT("torque", NM, clamp_torque, 0, "that it carries there"),
};
static const gw_record CLAMPED_BUSH_RECORD = GW_RECORD(gw_travel_clamp, CLAMPED_BUSH);

static int clamped_bushes(const gw_place *p)
{
    return GW_IT(p, gw_travel_clamp)->n;
}

static const gw_field CLAMP[] = {
    GW_MEMBER("body_rises", MM, gw_travel_clamp, ride_height, 0,
              "how much higher the body stands on its own"),
    GW_MEMBER("carried_by_bushes", N, gw_travel_clamp, lift, 0, "of the body at ride height"),
    GW_MEMBER("wheel_rate", N_PER_MM, gw_travel_clamp, rest_rate, 0, "at ride height"),
    GW_MEMBER("parasitic_rate", N_PER_MM, gw_travel_clamp, rest_parasitic, GW_MAY_LACK,
              "part of it that bushes add by being turned"),
    GW_EACH("bushes", clamped_bushes, clamp_of, &CLAMPED_BUSH_RECORD, GW_ON_LINE,
            "tightened at another height"),
};
static const gw_record CLAMP_RECORD = GW_RECORD(gw_travel_clamp, CLAMP);

/* -- what has to be overcome -- */

static double friction_wheel(const gw_place *p)
{
    const gw_friction *f = GW_IT(p, gw_travel_item)->friction;
    return f ? f->wheel : (double)NAN;
}

static int friction_parts(const gw_place *p)
{
    const gw_friction *f = GW_IT(p, gw_travel_item)->friction;
    return f ? f->n : 0;
}

static const void *friction_part(const gw_place *p)
{
    return &GW_IT(p, gw_travel_item)->friction->part[p->index];
}

static const char *rubs_at(const gw_place *p)
{
    int joint = GW_IT(p, gw_friction_part)->joint;
    return joint < 0 ? "damper" : joint_of(p, joint);
}

static double rubs_by(const gw_place *p, bool damper)
{
    const gw_friction_part *part = GW_IT(p, gw_friction_part);
    return (part->joint < 0) == damper ? part->strength : (double)NAN;
}

static double rubs_by_torque(const gw_place *p)
{
    return rubs_by(p, false);
}

static double rubs_by_force(const gw_place *p)
{
    return rubs_by(p, true);
}

/* clang-format off */
static const gw_field FRICTION[] = {
    GW_SAID("joint", rubs_at, 0, "the joint, or damper"),
    GW_WORKED_OUT("torque", NM, rubs_by_torque, GW_SOMETIMES, "of a joint, under the load that it carries at rest"),
    GW_WORKED_OUT("force", N, rubs_by_force, GW_SOMETIMES, "of the damper, along its line"),
    GW_MEMBER("wheel", N, gw_friction_part, wheel, 0, "what that is at the wheel"),
};
static const gw_record FRICTION_RECORD = GW_RECORD(gw_friction_part, FRICTION);
/* clang-format on */

/* -- both wheels of an axle -- */

static const gw_field SIDED[] = {
    GW_WORD("side", gw_travel_item, wheel, GW_WHEEL_NAMES, 0,
            "which wheel of the axle, where both are shown"),
};
static const gw_record SIDED_RECORD = GW_RECORD(gw_travel_item, SIDED);

static const void *sided(const gw_place *p)
{
    return GW_IT(p, gw_travel_item)->sided ? GW_IT(p, gw_travel_item) : NULL;
}

static double rolling(const gw_place *p, const double each[GW_WHEELS])
{
    const gw_travel_item *item = GW_IT(p, gw_travel_item);
    return item->rolls ? each[item->wheel] : (double)NAN;
}

static double rolls_about(const gw_place *p)
{
    return rolling(p, GW_IT(p, gw_travel_item)->roll.centre);
}

static double rolls_and_steers(const gw_place *p)
{
    return rolling(p, GW_IT(p, gw_travel_item)->roll.steer);
}

static double rolls_and_leans(const gw_place *p)
{
    return rolling(p, GW_IT(p, gw_travel_item)->roll.camber);
}

static double rolls_against(const gw_place *p)
{
    const gw_travel_item *item = GW_IT(p, gw_travel_item);
    return item->rolls ? item->roll.stiffness : (double)NAN;
}

/* clang-format off */
static const gw_field ROLLING[] = {
    GW_WORKED_OUT("roll_centre", MM, rolls_about, GW_SOMETIMES | GW_NO_CSV, "height above the ground at ride height, the wheels going opposite ways"),
    GW_WORKED_OUT("roll_steer_deg_per_deg", PLAIN, rolls_and_steers, GW_SOMETIMES, "toe per degree of roll, left wheel in bump"),
    GW_WORKED_OUT("roll_camber_deg_per_deg", PLAIN, rolls_and_leans, GW_SOMETIMES, "camber to the body per degree of roll, left wheel in bump"),
    GW_WORKED_OUT("roll_stiffness", NM_PER_DEG, rolls_against, GW_SOMETIMES, "of the axle; without a bar that the joints do not hold"),
};
/* clang-format on */
static const gw_record ROLLING_RECORD = GW_RECORD(gw_travel_item, ROLLING);

static const gw_field ITEM[] = {
    GW_KIT("kit", gw_travel_item, kit, 0, "name of the kit"),
    GW_WORD("corner", gw_travel_item, axle, GW_AXLE_NAMES, 0, "the axle"),
    GW_LOADED("load", gw_travel_item, load, GW_MAY_LACK, "whose other forces act too; null: none"),
    GW_WITHIN("ride_height", gw_travel_item, rest, &REST_RECORD, GW_NO_CSV, "travel 0"),
    GW_WORKED_OUT(
        "friction", N, friction_wheel, GW_SOMETIMES | GW_NO_CSV,
        "at the wheel, before it moves: half the gap between bump and rebound; vertical load alone"),
    GW_EACH("friction", friction_parts, friction_part, &FRICTION_RECORD, GW_ON_LINE,
            "what rubs: joints in their order, then the damper"),
    GW_ROWS("points", gw_travel_item, n, point, &POINT_RECORD, 0, "places of travel, from rebound to bump"),
    GW_PART_FOUND(sided, &SIDED_RECORD, 0),
    GW_PART_SAME(&ROLLING_RECORD),
    GW_ROWS("bearings", gw_travel_item, n_bearings, bearing, &BEARING_RECORD, GW_ON_LINE,
            "joints with a limit of tilt"),
    GW_INSIDE("clamped", clamp_of, &CLAMP_RECORD, GW_NO_CSV, "what bushes do that were tightened elsewhere"),
};
static const gw_record ITEM_RECORD = GW_RECORD(gw_travel_item, ITEM);

static const gw_field RESULT[] = {
    GW_ROWS("results", gw_travel_study, n, item, &ITEM_RECORD, 0,
            "by kit, corner, then without and with each load"),
    GW_TEXTS("warnings", gw_travel_study, n_warnings, warning, 0, "as on standard error"),
};
static const gw_record RESULT_RECORD = GW_RECORD(gw_travel_study, RESULT);

const gw_result GW_TRAVEL_RESULT = { .command = "travel",
                                     .record = &RESULT_RECORD,
                                     .rows = "results.points" };

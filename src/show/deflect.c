/* SPDX-License-Identifier: MIT */
/* The rows of `deflect`: every figure that it shows. */
#include "show/deflect.h"

/* -- a joint -- */

GW_READS(gw_unit, unit_of_verdict, gw_verdict,
         GW_JUDGED_DIMENSIONS[it->what] == GW_STRESS ? GW_UNIT_MPA : GW_UNIT_PLAIN)

static const char *verdict_unit(const gw_place *p)
{
    static const char *const UNITS[] = {
        [GW_RATIO] = "-", [GW_FORCE] = "N", [GW_STRESS] = "MPa", [GW_LENGTH] = "m", [GW_ANGLE] = "rad"
    };
    return UNITS[GW_JUDGED_DIMENSIONS[GW_IT(p, gw_verdict)->what]];
}

static GW_RECORD(CHECK_RECORD, gw_verdict,
    GW_WORD("what", gw_verdict, what, GW_JUDGED_WORDS, 0, "the figure"),
    GW_MEMBER_IN("value", unit_of_verdict, gw_verdict, value, 0, "in the unit named beside it"),
    GW_MEMBER_IN("limit", unit_of_verdict, gw_verdict, limit, 0, "in the same unit"),
    GW_SAID("unit", verdict_unit, 0, "N, MPa, or - for a ratio"),
    GW_MEMBER("holds", PLAIN, gw_verdict, holds, 0, "the value is within the limit"),
    GW_MEMBER("source", PLAIN, gw_verdict, source, 0, "where the limit comes from"));

static GW_RECORD(VERDICTS_RECORD, gw_strength,
    GW_MEMBER("holds", PLAIN, gw_strength, holds, 0, "all of the checks hold"),
    GW_ARRAY("checks", gw_strength, n_checks, check, &CHECK_RECORD, GW_ON_LINE, "figures beside their limits"));

static GW_RECORD(STRAIN_RECORD, gw_strength,
    GW_MEMBER("shear", PLAIN, gw_strength, strain.travel_shear, 0, "of the wall, by sliding and turning"),
    GW_MEMBER("compression", PLAIN, gw_strength, strain.compression, 0, "of the wall"),
    GW_MEMBER("flow_shear", PLAIN, gw_strength, strain.flow_shear, 0, "at the bond, where squeezed rubber flows out"),
    GW_MEMBER("total", PLAIN, gw_strength, strain.total, 0, "both shears together"),
    GW_PART_SAME(&VERDICTS_RECORD));

static GW_RECORD(BEARING_RECORD, gw_strength,
    GW_MEMBER("load", N, gw_strength, load, 0, "size of the force in it"),
    GW_MEMBER("specific_load", MPA, gw_strength, specific_load, 0, "per ball diameter times width"),
    GW_PART_SAME(&VERDICTS_RECORD));

GW_READS(const char *, joint_name, gw_deflection,
         p->c->corners[it->axle].joints[GW_INDEX(p, gw_joint_result)].name)

static const void *strength(const gw_place *p)
{
    const gw_strength *s = &GW_IT(p, gw_deflection)->strength[GW_INDEX(p, gw_joint_result)];
    return s->kind == (gw_strength_kind)GW_WHICH(p) ? s : NULL;
}

static GW_RECORD(JOINT_RECORD, gw_joint_result,
    GW_SAID("joint", joint_name, 0, "the joint"),
    GW_MEMBER("deflection", MM, gw_joint_result, u, GW_BUSH_AXES, "of the second body relative to the first, in the frame of the bush"),
    GW_MEMBER("rotation", DEG, gw_joint_result, theta, GW_BUSH_AXES, "rotation vector, in the frame of the bush"),
    GW_MEMBER("force", N, gw_joint_result, f, GW_BUSH_AXES, "in the frame of the bush"),
    GW_MEMBER("moment", NM, gw_joint_result, m, GW_BUSH_AXES, "in the frame of the bush"),
    GW_MEMBER("toe_share", DEG, gw_joint_result, toe_share, 0, "part of the toe change that this joint makes"),
    GW_MEMBER("camber_share", DEG, gw_joint_result, camber_share, 0, "part of the camber change"),
    GW_INSIDE_OF("strain", strength, GW_STRENGTH_RUBBER, &STRAIN_RECORD, 0, "of the rubber, with its checks"),
    GW_INSIDE_OF("bearing", strength, GW_STRENGTH_BEARING, &BEARING_RECORD, 0, "of a spherical bearing, with its checks"));

/* -- a wheel -- */

static GW_RECORD(ON_ROAD_RECORD, gw_deflection,
    GW_MEMBER("pitch", DEG, gw_deflection, pitch, 0, "of the body; nose down positive"),
    GW_MEMBER("heave", MM, gw_deflection, heave, 0, "rise of the chassis' centre of mass"));

static GW_RECORD(MANOEUVRE_RECORD, gw_deflection,
    GW_WORD("wheel", gw_deflection, side, GW_SIDE_NAMES, 0, "which of the two wheels of the axle"),
    GW_MEMBER("roll", DEG, gw_deflection, roll, 0, "of the body"),
    GW_PART_IF(gw_deflection, on_road, &ON_ROAD_RECORD),
    GW_MEMBER("dive", MM, gw_deflection, dive, 0, "part of the travel from braking or driving; mean of both wheels where the whole car is solved"),
    GW_MEMBER("hub_force", N, gw_deflection, applied.hub_force, GW_NO_CSV, "at the wheel centre"),
    GW_MEMBER("patch_moment", NM, gw_deflection, applied.patch_moment, GW_NO_CSV, "at the contact patch"),
    GW_MEMBER("camber_to_road", DEG, gw_deflection, camber_to_road, 0, "camber and body roll together"));

static GW_RECORD(SHARES_RECORD, gw_corner_result,
    GW_MEMBER("travel_toe", DEG, gw_corner_result, travel_toe, 0, "of the toe change, by travel of the wheel"),
    GW_MEMBER("geometry_toe", DEG, gw_corner_result, geometry_toe, 0, "what linear theory leaves over"),
    GW_MEMBER("travel_camber", DEG, gw_corner_result, travel_camber, 0, "of the camber change, by travel of the wheel"),
    GW_MEMBER("geometry_camber", DEG, gw_corner_result, geometry_camber, 0, "what linear theory leaves over"));

GW_READS(int, joints, gw_deflection, p->c->corners[it->axle].n_joints)
GW_READS(const void *, joint_at, gw_deflection, &it->result.joints[p->index])

static GW_RECORD(SOLVED_RECORD, gw_deflection,
    GW_PART_IF(gw_deflection, manoeuvre, &MANOEUVRE_RECORD),
    GW_MEMBER("travel", MM, gw_deflection, applied.travel, 0, "of the wheel centre; bump positive"),
    GW_MEMBER("patch_force", N, gw_deflection, applied.patch_force, 0, "of the road on the tyre"),
    GW_MEMBER("camber_change", DEG, gw_deflection, result.camber_change, 0, "since standing still; top outboard positive"),
    GW_MEMBER("toe_change", DEG, gw_deflection, result.toe_change, 0, "since standing still; toe-in positive"),
    GW_MEMBER("caster_change", DEG, gw_deflection, result.caster_change, 0, "since standing still; top rearward positive"),
    GW_MEMBER("camber", DEG, gw_deflection, result.camber, 0, "to the body"),
    GW_MEMBER("toe", DEG, gw_deflection, result.toe, 0, "of the wheel"),
    GW_MEMBER("static_camber", DEG, gw_deflection, static_camber, 0, "of this kit, standing still"),
    GW_MEMBER("wheel_centre", MM, gw_deflection, result.wheel_centre, 0, "movement since standing still: forward, outward, up"),
    GW_MEMBER("contact_patch", MM, gw_deflection, result.contact_patch, 0, "movement since standing still"),
    GW_MEMBER("spring_force", N, gw_deflection, result.spring_force, 0, "compression positive"),
    GW_WITHIN("shares", gw_deflection, result, &SHARES_RECORD, GW_ON_LINE | GW_NO_PREFIX, "of the changes that no bush makes"),
    GW_EACH("bushes", joints, joint_at, &JOINT_RECORD, GW_ON_LINE, "every joint of the corner"));

GW_READS(const void *, solved, gw_deflection, it->failed ? NULL : it)

static GW_RECORD(SIDED_RECORD, gw_deflection,
    GW_WORD("side", gw_deflection, wheel, GW_WHEEL_NAMES, 0, "which wheel of the axle, where both are shown"));

GW_RECORD(GW_DEFLECTION_RECORD, gw_deflection,
    GW_KIT("kit", gw_deflection, kit, 0, "name of the kit"),
    GW_WORD("corner", gw_deflection, axle, GW_AXLE_NAMES, 0, "the axle"),
    GW_LOADED("load", gw_deflection, load, 0, "name of the load"),
    GW_PART_IF(gw_deflection, sided, &SIDED_RECORD),
    GW_PART_FOUND(solved, &SOLVED_RECORD, 0),
    GW_MEMBER("failed", PLAIN, gw_deflection, failed, GW_SOMETIMES, "why the load cannot be carried; nothing else is there then"));

static GW_RECORD(RESULT_RECORD, gw_deflect_made,
    GW_ROWS("results", gw_deflect_made, deflect.n, deflect.item, &GW_DEFLECTION_RECORD, 0, "by kit, corner and load"),
    GW_TEXTS("warnings", gw_deflect_made, deflect.n_warnings, deflect.warning, 0, "as on standard error"));

const gw_result GW_DEFLECT_RESULT = { .command = "deflect", .record = &RESULT_RECORD, .rows = "results" };

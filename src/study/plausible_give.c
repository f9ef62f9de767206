/* SPDX-License-Identifier: MIT */
/*
 * What a whole suspension gives under loads of a rig, held against what rigs have read from road cars. A bush
 * ten times too soft or a point on the wrong side shows here, though each figure of it alone could be.
 */
#include "giveway/units.h"
#include "study/plausible_parts.h"
#include "study/run.h"

#include <math.h>
#include <stdio.h>

/* Kawata, J. Inst. Industrial Applications Engineers 12(3), 2024, Table 3, four cars on a rig, steering gear
 * behind the axle; further out and behind: example figures of a sports utility car and of a twist beam. */
static const char TOE_SIDE_FRONT[] = "-0.004 to -0.032 on a rig, Kawata 2024, gear behind the axle; -0.107 "
                                     "elsewhere; ahead of it the sign turns; common practice beyond";
static const char TOE_SIDE_REAR[] =
    "+0.03 to +0.07, a twist beam -0.42, example figures; common practice beyond";
/* Kawata, Kouno, Sakuma, Trans. JSME 89 (919), 2023, Table 2; Heissing & Ersoy, Chassis Handbook, 2011, Table
 * 1-6. */
static const char CAMBER_SIDE_FRONT[] =
    "0.137 to 0.250 on a rig, Kawata, Kouno, Sakuma 2023; below 0.3, Heissing & Ersoy 2011; common practice "
    "beyond";
static const char CAMBER_SIDE_REAR[] = "below 1.0, Heissing & Ersoy 2011";
static const char TOE_TORQUE[] = "road cars 0.5 to 1.6, rack held, example figures; common practice beyond";
static const char ALONG_FRONT[] = "4 to 8, Heissing & Ersoy 2011; common practice beyond";
static const char ALONG_REAR[] = "1.3, example figures; common practice beyond";
static const char HUB_FRONT[] = "3.6, example figures; common practice beyond";
static const char TOE_BRAKE_FRONT[] = "-0.06 to -0.20, example figures; common practice beyond";
static const char TOE_BRAKE_REAR[] = "about +0.05, example figures; common practice beyond";

typedef enum gw_pull { PULL_SIDE, PULL_TURN, PULL_BRAKE, PULL_HUB, PULLS } gw_pull;

/** What one wheel does per kN or kN m. */
typedef struct gw_give {
    double toe, camber, along; /* [rad], [rad], [m] */
} gw_give;

/* Of the road, towards the middle of the car, on the aligning side, rearward; rearward at the wheel's centre.
 */
static gw_corner_load pull(const gw_corner *corner, gw_pull which)
{
    gw_corner_load load = { .patch_force = { 0.0, 0.0, corner->wheel.static_load } };
    switch (which) {
    case PULL_SIDE:
        load.patch_force.y = -1000.0;
        break;
    case PULL_TURN:
        load.patch_moment.z = 1000.0;
        break;
    case PULL_BRAKE:
        load.patch_force.x = -1000.0;
        break;
    default:
        load.hub_force.x = -1000.0;
    }
    return load;
}

/* Not a number where the suspension does not carry it: other warnings say more of such a car. */
static void measure(gw_run *run, gw_axle axle, gw_give give[PULLS])
{
    gw_joint_result joints[GW_MAX_JOINTS];
    for (int i = 0; i < PULLS; i++) give[i] = (gw_give){ NAN, NAN, NAN };
    if (gw_run_open_corner(run, 0, axle, NULL) == GW_OK)
        for (int i = 0; i < PULLS; i++) {
            gw_deflection item = { .axle = axle, .result = { .joints = joints } };
            const gw_corner_load load = pull(&run->c->corners[axle], (gw_pull)i);
            if (gw_run_direct(run, &load, GW_OTHER_SAME, &item, NULL) != GW_OK) continue;
            give[i] =
                (gw_give){ item.result.toe_change, item.result.camber_change, item.result.wheel_centre.x };
        }
    gw_run_close_corner(run);
}

static void look(const gw_plausible_look *d, const gw_give give[PULLS])
{
    const bool front = d->axle == GW_FRONT;
    char path[64];
    snprintf(path, sizeof path, "corners.%s", d->c->corners[d->axle].name);
    const gw_usual usual[] = {
        { path, "toe under a side force", " deg/kN", give[PULL_SIDE].toe / GW_DEG, front ? -0.25 : -0.5,
          front ? 0.25 : 0.2, front ? TOE_SIDE_FRONT : TOE_SIDE_REAR },
        { path, "camber under a side force, the top leaning with it,", " deg/kN",
          give[PULL_SIDE].camber / GW_DEG, -0.05, front ? 0.4 : 1.0,
          front ? CAMBER_SIDE_FRONT : CAMBER_SIDE_REAR },
        { path, "toe under an aligning torque", " deg/kN m", fabs(give[PULL_TURN].toe) / GW_DEG,
          front ? 0.2 : 0.0, 3.0, TOE_TORQUE },
        { path, "the wheel going back under braking", " mm/kN", -give[PULL_BRAKE].along / GW_MM,
          front ? 1.0 : 0.3, front ? 15.0 : 10.0, front ? ALONG_FRONT : ALONG_REAR },
        { path, "the wheel going back under a force at its centre", " mm/kN", -give[PULL_HUB].along / GW_MM,
          0.2, 10.0, front ? HUB_FRONT : ALONG_REAR },
        { path, "toe under braking", " deg/kN", give[PULL_BRAKE].toe / GW_DEG, front ? -0.4 : -0.3,
          front ? 0.2 : 0.3, front ? TOE_BRAKE_FRONT : TOE_BRAKE_REAR },
    };
    for (size_t i = 0; i < sizeof usual / sizeof *usual; i++) gw_doubt_figure(d, &usual[i]);
}

void gw_doubt_give(const gw_plausible_look *d)
{
    const gw_selection with = { .laws = d->laws };
    gw_give give[PULLS];
    gw_run run;
    if (gw_run_open(&run, d->c, &with, NULL) != GW_OK) return; /* check says elsewhere why */
    measure(&run, d->axle, give);
    look(d, give);
    gw_run_close(&run);
}

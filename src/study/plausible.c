/* SPDX-License-Identifier: MIT */
/*
 * Figures that can be and yet are no car's: a slip of a decimal, half a track for a track, a sign. A warning
 * says the figure and what is usual; the case is run all the same.
 */
#include "giveway/plausible.h"

#include "giveway/corner_travel.h"
#include "giveway/cost.h"
#include "giveway/pair.h"
#include "giveway/units.h"
#include "study/old_way.h"
#include "study/plausible_parts.h"

#include <math.h>
#include <stdio.h>

enum { PATH = 400 };

static const char PRACTICE[] = "common practice";

static void judge_all(const gw_plausible_look *d, const gw_usual *u, size_t n)
{
    for (size_t i = 0; i < n; i++) gw_doubt_figure(d, &u[i]);
}

#define COUNT(a) (sizeof(a) / sizeof *(a))

/* ---- vehicle ---- */

static void look_at_vehicle(const gw_plausible_look *d)
{
    const gw_vehicle *v = &d->c->vehicle;
    double weight = v->mass * GW_G0, stiffness = v->roll_stiffness[GW_FRONT] + v->roll_stiffness[GW_REAR];
    bool given = v->roll_stiffness[GW_FRONT] > 0.0 && v->roll_stiffness[GW_REAR] > 0.0;
    double tips = weight * v->cg_height;
    double roll = given ? tips / fmax(stiffness - tips, 1e-9) / GW_DEG : (double)NAN; /* not said: no doubt */
    const gw_usual usual[] = {
        { "vehicle.mass_kg", "a car", " kg", v->mass, 500, 4000, PRACTICE },
        { "vehicle.front_mass_fraction", "a share", "", v->front_mass_fraction, 0.35, 0.68, PRACTICE },
        { "vehicle.wheelbase_mm", "a wheelbase", " mm", v->wheelbase / GW_MM, 1800, 4000, PRACTICE },
        { "vehicle.cg_height_mm", "a centre of mass at a share of the wheelbase", "",
          v->cg_height / v->wheelbase, 0.15, 0.30, PRACTICE },
        { "vehicle.brake_front_fraction", "a brake share in front", "", v->brake_front_fraction, 0.5, 0.85,
          PRACTICE },
        { "vehicle.pneumatic_trail_mm", "a trail", " mm", v->pneumatic_trail / GW_MM, 5, 60, PRACTICE },
        { "vehicle.roll_stiffness_Nm_per_deg", "roll about the ground", " deg per g", roll, 1, 12, PRACTICE },
    };
    judge_all(d, usual, COUNT(usual));
}

static void look_at_axle(const gw_plausible_look *d)
{
    const gw_vehicle *v = &d->c->vehicle;
    const gw_corner *corner = &d->c->corners[d->axle];
    double load = gw_vehicle_static_load(v, d->axle), stiffness = v->cornering_stiffness[d->axle];
    char track[PATH], tyre[PATH], camber[PATH];
    snprintf(track, sizeof track, "vehicle.track_mm.%s", corner->name);
    snprintf(tyre, sizeof tyre, "vehicle.cornering_stiffness_N_per_deg.%s", corner->name);
    snprintf(camber, sizeof camber, "vehicle.camber_stiffness_N_per_deg.%s", corner->name);
    double wide = v->track[d->axle], apart = 2.0 * corner->wheel.centre.y;
    if (fabs(wide / apart - 1.0) > 0.05)
        gw_doubt_say(d, track,
                     "%.0f mm, but the wheel centres stand %.0f mm apart; usual is within 5 %% (%s)%s",
                     wide / GW_MM, apart / GW_MM, PRACTICE,
                     fabs(wide / apart - 0.5) < 0.05 ? ": is this half the track?" : "");
    if (!(stiffness > 0.0)) return;
    const gw_usual usual[] = {
        { tyre, "a tyre's cornering stiffness over its load", " per deg", stiffness * GW_DEG / load, 0.1,
          0.45, PRACTICE },
        { camber, "a camber stiffness over the cornering stiffness", "",
          v->camber_stiffness[d->axle] / stiffness, 0.01, 0.15, PRACTICE },
    };
    judge_all(d, usual, COUNT(usual));
}

/* ---- wheel and places ---- */

static void look_at_wheel(const gw_plausible_look *d)
{
    static const char TYRES[] = "205/60 R15 to 255/55 R18 have 200 to 348; common practice beyond";
    const gw_corner *corner = &d->c->corners[d->axle];
    const gw_wheel *w = &corner->wheel;
    static const char *const KEYS[] = { "loaded_radius_mm",       "static_load_N",  "static_camber_deg",
                                        "static_toe_deg",         "centre_mm[2]",   "mass_kg",
                                        "tyre_vertical_N_per_mm", "rim_diameter_mm" };
    char path[COUNT(KEYS)][PATH];
    for (size_t i = 0; i < COUNT(KEYS); i++)
        snprintf(path[i], PATH, "corners.%s.wheel.%s", corner->name, KEYS[i]);
    const gw_usual usual[] = {
        { path[0], "a loaded radius", " mm", w->loaded_radius / GW_MM, 220, 480, PRACTICE },
        { path[1], "a wheel's load", " N", w->static_load, 1200, 10000, PRACTICE },
        { path[2], "a static camber", " deg", w->static_camber / GW_DEG, -5, 2, PRACTICE },
        { path[3], "a static toe", " deg", w->static_toe / GW_DEG, -0.6, 0.6, PRACTICE },
        { path[4], "a wheel centre above its patch less the loaded radius", " mm",
          (w->centre.z - w->loaded_radius) / GW_MM, -60, 60, PRACTICE },
        { path[5], "a wheel with hub and brake", " kg", w->mass, 12, 90, PRACTICE },
        { path[6], "a tyre's vertical rate", " N/mm", w->tyre_vertical / GW_N_PER_MM, 100, 400, TYRES },
        { path[7], "a rim", " mm", w->rim_diameter / GW_MM, 250, 620, "10 to 24 inches, common practice" },
    };
    judge_all(d, usual, 5);
    if (w->mass > 0.0) gw_doubt_figure(d, &usual[5]);
    if (w->tyre_vertical > 0.0) gw_doubt_figure(d, &usual[6]);
    if (w->rim_diameter > 0.0) gw_doubt_figure(d, &usual[7]);
}

/* Where a joint stands in the file: those of the left side first, as written, then of the axle those that are
 * no mirror image. */
static void path_of_joint(const gw_corner *corner, int joint, char path[PATH])
{
    int n = 0;
    if (joint < corner->n_left || !gw_is_pair(corner)) {
        snprintf(path, PATH, "corners.%s.joints[%d].at", corner->name, joint);
        return;
    }
    for (int j = corner->n_left; j < joint; j++) n += !corner->joints[j].mirrored;
    snprintf(path, PATH, "axles.%s.joints[%d].at", corner->name, n);
}

/* Of the left wheel: a sign of y is soon forgotten. A long arm may reach a little beyond the middle, and what
 * has its image beside it, as a rack's mountings have, is meant. */
static void look_at_side(const gw_plausible_look *d, const char *path, int j)
{
    const gw_corner *corner = &d->c->corners[d->axle];
    const gw_joint *joint = &corner->joints[j];
    if (!gw_is_pair(corner) && gw_joint_count_on_car(corner, j) == 1) return;
    double y = joint->at.y, wheel = corner->wheel.centre.y;
    if (y < -0.2 * wheel && -y <= wheel + 60 * GW_MM)
        gw_doubt_say(
            d, path,
            "joint %s stands on the right side, at y = %.0f mm; a corner is the left wheel's, y to the "
            "left: is its sign wrong?",
            joint->name, y / GW_MM);
}

/* Where a joint can be: not beyond the wheel, not further off than the next axle, not above the bonnet. What
 * is wrong with the right side has been said of the left. */
static void look_at_places(const gw_plausible_look *d)
{
    const gw_corner *corner = &d->c->corners[d->axle];
    gw_vec3 wheel = corner->wheel.centre;
    double reach = d->c->has_vehicle ? d->c->vehicle.wheelbase : 2.0;
    double ground = wheel.z - corner->wheel.loaded_radius;
    for (int j = 0; j < corner->n_joints; j++) {
        const gw_joint *joint = &corner->joints[j];
        char path[PATH];
        if (joint->mirrored) continue;
        path_of_joint(corner, j, path);
        if (j < corner->n_left || !gw_is_pair(corner)) look_at_side(d, path, j);
        double out = joint->at.y - wheel.y;
        if (out > 60 * GW_MM)
            gw_doubt_say(d, path,
                         "joint %s stands %.0f mm outside the wheel's middle; usual is inside it (%s)",
                         joint->name, out / GW_MM, PRACTICE);
        if (fabs(joint->at.y) > wheel.y + 60 * GW_MM && out <= 60 * GW_MM)
            gw_doubt_say(
                d, path,
                "joint %s stands beyond the other wheel, at y = %.0f mm; usual is inside the track (%s)",
                joint->name, joint->at.y / GW_MM, PRACTICE);
        const gw_usual usual[] = {
            { path, joint->name, " mm from the wheel centre along the car", (joint->at.x - wheel.x) / GW_MM,
              -reach / GW_MM, reach / GW_MM, "inside the wheelbase, common practice" },
            { path, joint->name, " mm above the ground", (joint->at.z - ground) / GW_MM, 20, 1100, PRACTICE },
        };
        judge_all(d, usual, COUNT(usual));
    }
}

/* Distance of a place from the straight line between two others. */
static double off_line(gw_vec3 p, gw_vec3 q, gw_vec3 at)
{
    gw_vec3 along = gw_sub(q, p), to = gw_sub(at, p);
    double square = gw_dot(along, along);
    double t = square > 0.0 ? fmin(1.0, fmax(0.0, gw_dot(to, along) / square)) : 0.0;
    return gw_norm(gw_axpy(to, -t, along));
}

static bool holds(const gw_joint *joint, int body)
{
    return joint->body_a == body || joint->body_b == body;
}

/* Distance from the nearest line between two joints of a member, or a joint of the upright and the wheel's
 * centre; infinite without one. */
static double off_member(const gw_corner *corner, int body, gw_vec3 at)
{
    double nearest = INFINITY;
    for (int i = 0; i < corner->n_joints; i++) {
        if (!holds(&corner->joints[i], body)) continue;
        if (body == GW_UPRIGHT)
            nearest = fmin(nearest, off_line(corner->joints[i].at, corner->wheel.centre, at));
        for (int j = i + 1; j < corner->n_joints; j++)
            if (holds(&corner->joints[j], body))
                nearest = fmin(nearest, off_line(corner->joints[i].at, corner->joints[j].at, at));
    }
    return nearest;
}

static void look_at_eye(const gw_plausible_look *d, const char *what, int body, gw_vec3 at)
{
    const gw_corner *corner = &d->c->corners[d->axle];
    double off = off_member(corner, body, at);
    char path[PATH];
    snprintf(path, sizeof path, "corners.%s.%s.at", corner->name, what);
    if (off > 150 * GW_MM && isfinite(off))
        gw_doubt_say(
            d, path,
            "%.0f mm beside \"%s\", which it stands on; usual is within 150 mm of a line between two of its "
            "joints (%s)",
            off / GW_MM, corner->bodies[body].name, PRACTICE);
}

static void look_at_eyes(const gw_plausible_look *d)
{
    const gw_corner *corner = &d->c->corners[d->axle];
    look_at_eye(d, "spring", corner->spring.body, corner->spring.at);
    if (corner->damper.present) look_at_eye(d, "damper", corner->damper.body, corner->damper.at);
}

/* ---- steering axis ---- */

/* A bar's link holds no wheel. */
static bool leads_to_bar(const gw_corner *corner, int body)
{
    for (int j = 0; j < corner->n_joints && body > GW_UPRIGHT; j++) {
        const gw_joint *joint = &corner->joints[j];
        if (joint->body_a == body && gw_body_leads_across(corner, joint->body_b)) return true;
        if (joint->body_b == body && gw_body_leads_across(corner, joint->body_a)) return true;
    }
    return false;
}

/* Three joints on a front upright beside a bar's link: the highest and the lowest are its pivots, the third
 * is the tie rod's. */
static bool pivots_of(const gw_corner *corner, gw_vec3 *low, gw_vec3 *high)
{
    int n = 0;
    for (int j = 0; j < corner->n_joints; j++) {
        const gw_joint *joint = &corner->joints[j];
        if (joint->body_a != GW_UPRIGHT && joint->body_b != GW_UPRIGHT) continue;
        if (leads_to_bar(corner, joint->body_a == GW_UPRIGHT ? joint->body_b : joint->body_a)) continue;
        if (n == 0 || joint->at.z < low->z) *low = joint->at;
        if (n == 0 || joint->at.z > high->z) *high = joint->at;
        n++;
    }
    return n == 3 && high->z - low->z > 50 * GW_MM;
}

static void look_at_axis(const gw_plausible_look *d)
{
    const gw_corner *corner = &d->c->corners[d->axle];
    gw_vec3 low, high, wheel = corner->wheel.centre;
    if (d->axle != GW_FRONT || !pivots_of(corner, &low, &high)) return;
    gw_vec3 up = gw_sub(high, low);
    gw_vec3 ground = gw_axpy(low, (wheel.z - corner->wheel.loaded_radius - low.z) / up.z, up);
    const char *path = "corners.front.joints";
    const gw_usual usual[] = {
        { path, "a kingpin inclination", " deg", atan2(-up.y, up.z) / GW_DEG, 3, 20, PRACTICE },
        { path, "a caster angle", " deg", atan2(-up.x, up.z) / GW_DEG, -2, 14, PRACTICE },
        { path, "a scrub radius", " mm", (wheel.y - ground.y) / GW_MM, -60, 60, PRACTICE },
        { path, "a caster trail", " mm", (ground.x - wheel.x) / GW_MM, -60, 60, PRACTICE },
    };
    judge_all(d, usual, COUNT(usual));
}

/* ---- rates ---- */

static void look_at_bushes(const gw_plausible_look *d)
{
    for (int b = 0; b < d->c->n_bushes; b++) {
        const gw_bush *bush = &d->c->bushes[b];
        const double *k = d->laws->law[b].k, *c = d->laws->law[b].c;
        char path[PATH];
        bool turns_freely = !(c[0] > 0.0) && !(c[1] > 0.0) && !(c[2] > 0.0); /* a ball joint or a bearing */
        if (!gw_bush_is_rubber(bush) && (bush->type != GW_BUSH_RATES || turns_freely)) continue;
        snprintf(path, sizeof path, "bushes.%s", bush->name);
        double least = fmin(k[0], k[1]), most = fmax(k[0], k[1]);
        if (!(most > 0.0)) continue; /* free across: a guide, not a bush */
        const gw_usual usual = { path,    "a radial rate",
                                 " N/mm", (least < 1e5 ? least : most) / GW_N_PER_MM,
                                 100,     bush->type == GW_BUSH_RATES ? 200000 : 50000,
                                 PRACTICE };
        gw_doubt_figure(d, &usual);
    }
}

static double hertz(double rate, double mass)
{
    return sqrt(rate / mass) / (2.0 * GW_PI);
}

static void look_at_springs(const gw_plausible_look *d, const gw_travel_rates *rates)
{
    const gw_corner *corner = &d->c->corners[d->axle];
    const gw_wheel *w = &corner->wheel;
    double body = w->static_load / GW_G0 - w->mass, k = rates->wheel_rate, tyre = w->tyre_vertical;
    char spring[PATH], wheel[PATH], joints[PATH];
    snprintf(spring, sizeof spring, "corners.%s.spring.rate_N_per_mm", corner->name);
    snprintf(wheel, sizeof wheel, "corners.%s.wheel.mass_kg", corner->name);
    snprintf(joints, sizeof joints, "corners.%s.joints", corner->name);
    const gw_usual usual[] = {
        { spring, "a body frequency on the springs", " Hz", hertz(k, body), 0.8, 3.0,
          "road cars 1.2 to 1.6, common practice" },
        { spring, "a wheel rate over the spring's", "", k / corner->spring.rate, 0.1, 1.4, PRACTICE },
        { joints, "bump steer", " deg/m", rates->toe / GW_DEG, -25, 25,
          "road cars -10 to +4, common practice" },
        { joints, "camber in bump", " deg/m", rates->camber / GW_DEG, -80, 15,
          "road cars -15 to -25, common practice" },
        { wheel, "wheel hop", " Hz", hertz(k + tyre, w->mass), 8, 20, "10 to 15, TRL report SR12UC" },
    };
    judge_all(d, usual, body > 0.0 ? 4 : 0);
    if (w->mass > 0.0 && tyre > 0.0) gw_doubt_figure(d, &usual[4]);
}

/* What takes a solved corner, with the first kit. */
static void look_at_path(const gw_plausible_look *d)
{
    gw_fit fit[GW_MAX_JOINTS];
    gw_joint_result joints[GW_MAX_JOINTS];
    gw_corner_result result = { .joints = joints };
    const gw_corner *corner = &d->c->corners[d->axle];
    const gw_corner_load none = { 0 };
    gw_corner_ws *ws = NULL;
    gw_state state = { 0 };
    gw_travel_rates rates;
    gw_fit_kit(d->c, d->laws, 0, d->axle, fit);
    if (gw_corner_open(corner, fit, &ws, NULL) == GW_OK && gw_state_alloc(corner, &state, NULL) == GW_OK &&
        gw_corner_travel_at(ws, &none, 0.0, &state, &result, &rates, NULL) == GW_OK)
        look_at_springs(d, &rates);
    gw_state_free(&state);
    gw_corner_close(ws);
}

/* ---- loads ---- */

static void look_at_loads(const gw_plausible_look *d)
{
    for (int l = 0; l < d->c->n_loads; l++) {
        const gw_load *load = &d->c->loads[l];
        const gw_manoeuvre *m = &load->manoeuvre;
        char path[PATH];
        snprintf(path, sizeof path, "loads[%d]", l);
        const gw_usual usual[] = {
            { path, "braking", " g", m->brake_g, 0, 1.4, "road tyres, common practice" },
            { path, "cornering", " g", m->lateral_g, 0, 1.4, "road tyres, common practice" },
            { path, "driving", " g", m->drive_g, 0, 1.1, "road tyres, common practice" },
        };
        if (load->kind != GW_LOAD_MANOEUVRE) continue;
        judge_all(d, usual, COUNT(usual));
        if (m->brake_g == 0.0 && m->lateral_g == 0.0 && m->drive_g == 0.0)
            gw_doubt_say(d, path,
                         "0 g of braking, cornering and driving: nothing changes from standing still");
    }
}

static void look_at_shop(const gw_plausible_look *d)
{
    double percent = 100.0 * d->c->shop.tax;
    if (d->c->shop.has_tax && percent > 0.0 && percent < 1.0)
        gw_doubt_say(
            d, "shop.tax_percent",
            "a tax of %.4g %%; usual is 1 to 30 %% (common practice): is this a share, not per cent?",
            percent);
}

/* One page shows kits at the one and what is recommended at the other. */
static void look_at_hourly_rate(const gw_plausible_look *d)
{
    const gw_choose *choose = &d->c->choose;
    const gw_shop *shop = &d->c->shop;
    if (!choose->has_rate || !shop->has_labour || choose->hourly_rate == shop->labour) return;
    gw_doubt_say(
        d, "choose.hourly_rate",
        "an hour costs %.6g here and %.6g by shop.labour_per_hour, so choose and compare tell two sums "
        "for one kit: leave this out",
        choose->hourly_rate, shop->labour);
}

gw_status gw_study_plausible(const gw_case *c, gw_faults *faults, gw_error *err)
{
    gw_laws laws = { 0 };
    gw_plausible_look d = { .c = c, .laws = &laws, .faults = faults };
    gw_status status = gw_laws_make(c, GW_METHOD_SOLVED, &laws, err);
    if (status != GW_OK) return status;
    if (c->has_vehicle) look_at_vehicle(&d);
    look_at_bushes(&d);
    for (d.axle = GW_FRONT; d.axle < GW_AXLES; d.axle++) {
        if (!c->has_corner[d.axle]) continue;
        if (c->has_vehicle) look_at_axle(&d);
        look_at_wheel(&d);
        look_at_places(&d);
        look_at_eyes(&d);
        look_at_axis(&d);
        look_at_path(&d);
        if (status == GW_OK) status = gw_warn_old_way(c, d.axle, faults, err);
        gw_doubt_give(&d);
    }
    look_at_loads(&d);
    look_at_shop(&d);
    look_at_hourly_rate(&d);
    gw_laws_free(&laws);
    return status;
}

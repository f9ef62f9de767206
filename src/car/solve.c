/* SPDX-License-Identifier: MIT */
/* The manoeuvre that is asked for; where the car does not carry it, what lifts or gives way, and when. */
#include "car/workspace.h"

#include <gsl/gsl_errno.h>
#include <gsl/gsl_roots.h>

enum { MAX_TRIES = 40 };
static const double NEAR = 1e-7;                 /* of the share at which a wheel lifts */
static const double REACHED_WITHIN = 1.0 / 1024; /* of a manoeuvre that is not reached  */

double gw_road_least_load(const gw_road *road)
{
    double least = HUGE_VAL;
    for (int a = 0; a < GW_AXLES; a++)
        for (int w = 0; w < GW_WHEELS; w++) least = fmin(least, road->axle[a].wheel[w].contact.vertical);
    return least;
}

typedef struct lift {
    gw_road *road;
    const gw_manoeuvre *m;
} lift;

/* The least load of a wheel at a share of the manoeuvre [N]; one that is not reached is beyond the lift. */
static double least_at(double share, void *of)
{
    const lift *l = of;
    const bool reached = gw_road_reach(l->road, l->m, share, NULL) == GW_OK;
    return reached ? gw_road_least_load(l->road) : -l->road->axle[GW_FRONT].static_load;
}

/* The share of the manoeuvre at which the first wheel lifts; `hi` is one at which one has lifted. NaN: out of
 * memory. */
static double find_share(gw_road *road, const gw_manoeuvre *m, double hi)
{
    lift l = { road, m };
    gsl_function load = { least_at, &l };
    gsl_root_fsolver *solver = gsl_root_fsolver_alloc(gsl_root_fsolver_brent);
    double share = hi, before = 0.0;
    if (!solver) return (double)NAN;
    int failed = gsl_root_fsolver_set(solver, &load, 0.0, hi);
    for (int i = 0; i < MAX_TRIES && !failed && fabs(share - before) > NEAR; i++) {
        before = share;
        failed = gsl_root_fsolver_iterate(solver);
        share = gsl_root_fsolver_root(solver);
    }
    gsl_root_fsolver_free(solver);
    return share;
}

/* Which wheels lift, and at which share. */
static double find_lift(gw_road *road, const gw_manoeuvre *m, double hi, gw_axle *axle, bool lifts[GW_WHEELS])
{
    const double share = find_share(road, m, hi);
    if (isnan(share) || gw_road_reach(road, m, share, NULL) != GW_OK) return share;
    double least = gw_road_least_load(road);
    for (int a = 0; a < GW_AXLES; a++)
        for (int w = 0; w < GW_WHEELS; w++)
            if (road->axle[a].wheel[w].contact.vertical == least) *axle = (gw_axle)a;
    double near = 1e-4 * road->axle[*axle].static_load;
    for (int w = 0; w < GW_WHEELS; w++) lifts[w] = road->axle[*axle].wheel[w].contact.vertical < least + near;
    return share;
}

static gw_status report_lift(gw_road *road, const gw_manoeuvre *m, double hi, gw_error *err)
{
    gw_axle axle = GW_FRONT;
    bool lifts[GW_WHEELS] = { false };
    double part = find_lift(road, m, hi, &axle, lifts);
    if (isnan(part)) return gw_fail(err, GW_E_NOMEM, "out of memory for the car");
    const char *name = axle == GW_FRONT ? "front" : "rear";
    bool lateral = m->lateral_g > 0.0, braking = m->brake_g > 0.0;
    double g = lateral ? m->lateral_g : braking ? m->brake_g : m->drive_g;
    const char *of = lateral ? "lateral" : braking ? "braking" : "driving";
    if (lifts[0] && lifts[1])
        return gw_fail(err, GW_E_NUMERIC, "the %s wheels lift at %.2f g %s (of %.2f g): lower the g", name,
                       part * g, of, g);
    return gw_fail(err, GW_E_NUMERIC, "the %s %s wheel lifts at %.2f g %s (of %.2f g): lower the g",
                   lifts[0] ? "outer" : "inner", name, part * g, of, g);
}

/* Where the whole of it is not reached, a wheel may have lifted before: looked for where the car came to
 * stand, and then between that and what it is not brought to. */
static gw_status look_for_lift(gw_road *road, const gw_manoeuvre *m, const gw_error *why, gw_error *err)
{
    double stands = road->reached, falls = stands > 0.0 ? stands + REACHED_WITHIN : 1.0;
    gw_find_contacts(road);
    if (stands > 0.0 && gw_road_least_load(road) < 0.0) return report_lift(road, m, stands, err);
    while (falls - stands > REACHED_WITHIN) {
        const double middle = 0.5 * (stands + falls);
        const bool reached = gw_road_reach(road, m, middle, NULL) == GW_OK;
        if (reached && gw_road_least_load(road) < 0.0) return report_lift(road, m, middle, err);
        *(reached ? &stands : &falls) = middle;
    }
    return gw_fail(err, GW_E_NUMERIC, "%s", why->msg);
}

/* Of the axle that got softer since it was set, where the car stood last. */
static void name_the_softest(gw_road *road, gw_error *err)
{
    double motion[GW_AXLES][6 * GW_MAX_BODIES], by[GW_AXLES];
    for (int a = 0; a < GW_AXLES; a++) {
        gw_road_axle *axle = &road->axle[a];
        by[a] = gw_softened(axle->ws, &axle->start, &axle->resume, motion[a]);
    }
    int softer = by[GW_REAR] > by[GW_FRONT] ? GW_REAR : GW_FRONT;
    if (by[softer] > GW_SOFTENED)
        gw_add_what_gives(road->axle[softer].ws, motion[softer], softer == GW_REAR ? "rear " : "front ", err);
}

gw_status gw_road_solve(gw_road *road, const gw_manoeuvre *m, gw_error *err)
{
    gw_error why = { 0 };
    road->manoeuvre = *m;
    if (gw_road_reach(road, m, 1.0, &why) != GW_OK) {
        if (!err) return GW_E_NUMERIC;
        name_the_softest(road, &why);
        return look_for_lift(road, m, &why, err);
    }
    if (gw_road_least_load(road) >= 0.0) return GW_OK;
    return err ? report_lift(road, m, 1.0, err) : GW_E_NUMERIC;
}

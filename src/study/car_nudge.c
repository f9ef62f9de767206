/* SPDX-License-Identifier: MIT */
/*
 * A car that differs from a known one by a small step of one figure: only what the figure touches is worked
 * out, by one step of Newton's iteration from the known balance. That is the derivative of the balance (the
 * implicit function theorem), with an error of the order of the step.
 */
#include "study/car_work.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

static const double LIFT = 1e-4; /* of a roll centre, for its slope [m] */

static bool same_spring(const gw_spring *a, const gw_spring *b)
{
    return a->rate == b->rate && memcmp(&a->at, &b->at, sizeof a->at) == 0 &&
           memcmp(&a->to, &b->to, sizeof a->to) == 0;
}

bool gw_same_corner(const gw_corner *a, const gw_corner *b)
{
    if (memcmp(&a->wheel, &b->wheel, sizeof a->wheel) != 0) return false;
    if (!same_spring(&a->spring, &b->spring) || !same_spring(&a->right_spring, &b->right_spring))
        return false;
    for (int j = 0; j < a->n_joints; j++) {
        const gw_joint *l = &a->joints[j], *r = &b->joints[j];
        if (memcmp(&l->at, &r->at, sizeof l->at) != 0 || memcmp(&l->frame, &r->frame, sizeof l->frame) != 0 ||
            l->bracket != r->bracket)
            return false;
    }
    return true;
}

/* What a kit puts into the joints of one side; padding that differs makes work, no mistake. */
static bool same_fits(const gw_case *c, const gw_laws *laws, const gw_car_guide *from, int kit, gw_axle axle)
{
    gw_fit now[GW_MAX_JOINTS], then[GW_MAX_JOINTS];
    const size_t size = (size_t)c->corners[axle].n_joints * sizeof *now;
    gw_fit_kit(c, laws, kit, axle, now);
    gw_fit_kit(from->c, &from->laws, kit, axle, then);
    if (memcmp(now, then, size) != 0) return false;
    gw_fit_right(c, laws, kit, axle, now);
    gw_fit_right(from->c, &from->laws, kit, axle, then);
    return memcmp(now, then, size) == 0;
}

static bool same_car(const gw_case *a, const gw_case *b)
{
    return memcmp(&a->vehicle, &b->vehicle, sizeof a->vehicle) == 0;
}

static bool same_loads(const gw_case *a, const gw_case *b)
{
    for (int l = 0; l < a->n_loads; l++)
        if (memcmp(&a->loads[l].direct, &b->loads[l].direct, sizeof a->loads[l].direct) != 0 ||
            memcmp(&a->loads[l].manoeuvre, &b->loads[l].manoeuvre, sizeof a->loads[l].manoeuvre) != 0)
            return false;
    return true;
}

static bool same_parts(const gw_car_work *w, int kit, gw_axle axle)
{
    return gw_same_corner(&w->run.c->corners[axle], &w->from->c->corners[axle]) &&
           same_fits(w->run.c, &w->run.laws, w->from, kit, axle);
}

static void work_touched(gw_car_work *w, bool all)
{
    const gw_car_plan *plan = w->plan;
    bool touched[GW_AXLES];
    for (int s = 0, end; s < plan->n_slots; s = end) {
        const gw_car_slot *at = &plan->slot[s];
        end = gw_car_slots_end(plan, s);
        if (all || !same_parts(w, at->kit, at->axle)) gw_car_work_corner(w, s, end);
    }
    for (int k = 0; k < plan->c->n_kits && w->run.on_road; k++) {
        for (int a = 0; a < GW_AXLES; a++) touched[a] = all || !same_parts(w, k, (gw_axle)a);
        if (touched[GW_FRONT] || touched[GW_REAR]) gw_car_work_road(w, k);
    }
}

gw_status gw_car_nudge(const gw_car_plan *plan, const gw_case *c, const gw_selection *wanted,
                       const gw_car_guide *from, gw_car_guide *there, double *row, double moved[GW_AXLES],
                       gw_error *err)
{
    gw_run_guide once = from->run;
    gw_car_work w = { .plan = plan, .from = from, .states = there, .row = row, .err = err };
    gw_error why = { 0 };
    once.how = GW_NEAR_ONCE;
    for (int i = 0; i < plan->n_columns; i++) row[i] = from->row[i];
    gw_status opened = gw_run_open_near(&w.run, c, wanted, &once, &why);
    gw_car_note(&w, opened, &why);
    for (int a = 0; a < GW_AXLES; a++) {
        moved[a] = w.run.vehicle.roll_centre[a] - from->roll_centre[a];
        if (!c->vehicle.has_roll_centre) w.run.vehicle.roll_centre[a] = from->roll_centre[a];
    }
    if (opened == GW_OK) work_touched(&w, !same_car(c, from->c) || !same_loads(c, from->c));
    gw_run_close(&w.run);
    return w.first;
}

/* All corners of the guide's own car, with one roll centre higher by so much. */
static gw_status lift(const gw_car_plan *plan, const gw_selection *wanted, const gw_car_guide *from, int axle,
                      double by, double *row, gw_error *err)
{
    gw_run_guide once = from->run;
    gw_car_work w = { .plan = plan, .from = from, .row = row, .err = err };
    gw_error why = { 0 };
    once.how = GW_NEAR_ONCE;
    for (int i = 0; i < plan->n_columns; i++) row[i] = from->row[i];
    gw_status opened = gw_run_open_near(&w.run, from->c, wanted, &once, &why);
    gw_car_note(&w, opened, &why);
    memcpy(w.run.vehicle.roll_centre, from->roll_centre, sizeof from->roll_centre);
    w.run.vehicle.roll_centre[axle] += by;
    for (int s = 0, end; s < plan->n_slots && opened == GW_OK; s = end) {
        end = gw_car_slots_end(plan, s);
        gw_car_work_corner(&w, s, end);
    }
    gw_run_close(&w.run);
    return w.first;
}

/* Both cars come the same way, so that what a roll centre does nothing to is nothing to the last bit. */
static gw_status lift_one(const gw_car_plan *plan, const gw_selection *wanted, const gw_car_guide *from,
                          int axle, double *still, double *slope, gw_error *err)
{
    gw_status status = lift(plan, wanted, from, axle, 0.0, still, err);
    if (status != GW_E_NOMEM) status = lift(plan, wanted, from, axle, LIFT, slope, err);
    for (int i = 0; i < plan->n_columns; i++) {
        double by = (slope[i] - still[i]) / LIFT;
        slope[i] = isnan(by) ? 0.0 : by;
    }
    return status;
}

gw_status gw_car_by_roll_centre(const gw_car_plan *plan, const gw_selection *wanted, const gw_car_guide *from,
                                double *slope[GW_AXLES], gw_error *err)
{
    double *still = malloc(((size_t)plan->n_columns + 1) * sizeof *still);
    gw_status status = still ? GW_OK : gw_fail(err, GW_E_NOMEM, "out of memory for drawing cars");
    for (int a = 0; a < GW_AXLES && status != GW_E_NOMEM; a++) {
        memset(slope[a], 0, (size_t)plan->n_columns * sizeof *slope[a]);
        if (!from->c->has_vehicle || from->c->vehicle.has_roll_centre) continue;
        if (gw_case_on_road(from->c)) continue; /* the car finds its own roll */
        status = lift_one(plan, wanted, from, a, still, slope[a], err);
    }
    free(still);
    return status == GW_E_NOMEM ? status : GW_OK;
}

/* SPDX-License-Identifier: MIT */
/* A corner as a function of its adjusters: laid out, fitted, differentiated. */
#include "study/setup.h"

#include "giveway/corner_travel.h"
#include "study/opened.h"

#include <string.h>

/* Square of how much less the movement of an arm or shim counts than an offset: small enough that an offset
 * is a few nanometres at most above the smallest, large enough for double precision. */
static const double MINOR_COST = 1e-7;

double gw_target_of(const gw_align *align, gw_target which)
{
    return which == GW_TARGET_TOE ? align->toe : which == GW_TARGET_CAMBER ? align->camber : align->caster;
}

bool gw_target_given(const gw_align *align, gw_target which)
{
    return which == GW_TARGET_TOE      ? align->has_toe
           : which == GW_TARGET_CAMBER ? align->has_camber
                                       : align->has_caster;
}

double gw_target_tolerance(const gw_align *align, gw_target which)
{
    return which == GW_TARGET_TOE      ? align->toe_tolerance
           : which == GW_TARGET_CAMBER ? align->camber_tolerance
                                       : align->caster_tolerance;
}

double gw_setting_of(const gw_corner_setting *setting, gw_target which)
{
    return which == GW_TARGET_TOE      ? setting->toe
           : which == GW_TARGET_CAMBER ? setting->camber
                                       : setting->caster_change;
}

int gw_targets_given(const gw_align *align, gw_target which[GW_TARGETS])
{
    int n = 0;
    for (gw_target t = GW_TARGET_TOE; t < GW_TARGETS; t++)
        if (gw_target_given(align, t)) which[n++] = t;
    return n;
}

static double nearest_to_zero(double lo, double hi)
{
    return lo > 0.0 ? lo : hi < 0.0 ? hi : 0.0;
}

/* One bush is fitted, and its limit is what can be had: the kit's own offset counts with what is set on top.
 */
static gw_disc disc_of(const gw_setup *s, const gw_adjuster *adjuster)
{
    gw_disc disc = { .at = s->n, .radius = adjuster->max };
    gw_move own;
    if (gw_kit_offset(s->run->c, s->run->kit, s->run->axle, adjuster, &own)) {
        disc.centre[0] = -own.along[0];
        disc.centre[1] = -own.along[1];
    }
    return disc;
}

/* Nothing on top of the kit's own bush, or where that is beyond the limit the largest that is not. */
static void begin_at(const gw_disc *disc, double *x)
{
    double own = hypot(disc->centre[0], disc->centre[1]),
           part = own > disc->radius ? 1.0 - disc->radius / own : 0.0;
    for (int axis = 0; axis < 2; axis++) x[disc->at + axis] = part * disc->centre[axis];
}

/* Limits of shims are drawn in to whole steps, so that a limit is a setting. */
static void lay_out(gw_setup *s)
{
    for (int a = 0; a < s->align->n_adjusters; a++) {
        const gw_adjuster *adjuster = &s->align->adjusters[a];
        bool offset = adjuster->kind == GW_ADJUST_OFFSET, shim = adjuster->kind == GW_ADJUST_SHIM;
        const gw_disc disc = offset ? disc_of(s, adjuster) : (gw_disc){ 0 };
        if (offset) s->disc[s->n_discs++] = disc;
        for (int axis = 0; axis < gw_adjuster_axes(adjuster); axis++) {
            int i = s->n++;
            s->of[i] = (gw_axis_of){ a, axis };
            s->lo[i] = offset ? disc.centre[axis] - adjuster->max : adjuster->min;
            s->hi[i] = offset ? disc.centre[axis] + adjuster->max : adjuster->max;
            if (shim) {
                s->lo[i] = adjuster->step * ceil(adjuster->min / adjuster->step - 1e-9);
                s->hi[i] = adjuster->step * floor(adjuster->max / adjuster->step + 1e-9);
            }
            s->cost[i] = offset ? 1.0 : MINOR_COST;
            s->x[i] = nearest_to_zero(s->lo[i], s->hi[i]);
        }
        if (offset) begin_at(&disc, s->x);
    }
}

static bool make_room(gw_setup *s, gw_arena *arena)
{
    size_t most = 2 * (size_t)s->align->n_adjusters + 1;
    s->of = gw_arena_alloc(arena, most, sizeof *s->of);
    s->lo = gw_arena_alloc(arena, most, sizeof *s->lo);
    s->hi = gw_arena_alloc(arena, most, sizeof *s->hi);
    s->cost = gw_arena_alloc(arena, most, sizeof *s->cost);
    s->disc = gw_arena_alloc(arena, most, sizeof *s->disc);
    s->x = gw_arena_alloc(arena, most, sizeof *s->x);
    s->next = gw_arena_alloc(arena, most, sizeof *s->next);
    s->holds = gw_arena_alloc(arena, most, sizeof *s->holds);
    s->slope = gw_arena_alloc(arena, most, sizeof *s->slope);
    bool ok = s->of && s->lo && s->hi && s->cost && s->disc && s->x && s->next && s->holds && s->slope;
    for (int r = 0; r < GW_LEAST_ROWS; r++)
        ok = (s->row[r] = gw_arena_alloc(arena, most, sizeof **s->row)) && ok;
    return ok;
}

/* Where it does not stand, what is fitted then tells why. */
static gw_status find_near(gw_setup *s, gw_error *err)
{
    const gw_run *run = s->run;
    gw_error why;
    s->near = gw_opened_corner(run->wanted->opened, run->c, run->kit, run->axle, false);
    if (s->near) return GW_OK;
    gw_status status = gw_corner_open(s->corner, s->base, &s->own, &why);
    if (status == GW_OK) s->near = s->own;
    return status == GW_E_NOMEM ? gw_fail(err, status, "%s", why.msg) : GW_OK;
}

gw_status gw_setup_open(gw_run *run, int kit, gw_axle axle, gw_arena *arena, gw_setup *out, gw_error *err)
{
    *out = (gw_setup){ .run = run, .corner = &run->c->corners[axle], .align = &run->c->align[axle] };
    run->kit = kit;
    run->axle = axle;
    gw_fit_kit(run->c, &run->laws, kit, axle, out->base);
    if (!make_room(out, arena)) return gw_fail(err, GW_E_NOMEM, "out of memory for adjusters");
    lay_out(out);
    if (!(out->least = gw_least_open(out->n, out->n_discs)))
        return gw_fail(err, GW_E_NOMEM, "out of memory for adjusters");
    return find_near(out, err);
}

void gw_setup_close(gw_setup *setup)
{
    if (setup->run) gw_run_close_corner(setup->run);
    if (setup->run) setup->run->set = NULL;
    gw_least_close(setup->least);
    gw_corner_close(setup->own);
    setup->least = NULL;
    setup->own = NULL;
    setup->near = NULL;
}

static void apply(const gw_setup *s, const double *x, const gw_corner *corner, gw_fit *fit)
{
    for (int i = 0; i < s->n; i++) {
        const gw_adjuster *adjuster = &s->align->adjusters[s->of[i].adjuster];
        gw_move move = { { 0, 0 } };
        move.along[s->of[i].axis] = x[i];
        if (x[i] != 0.0) gw_adjuster_apply(corner, adjuster, &move, fit);
    }
}

static void put_in(gw_setup *s, const double *x)
{
    gw_run *run = s->run;
    gw_run_close_corner(run);
    memcpy(run->fit, s->base, (size_t)s->corner->n_joints * sizeof *run->fit);
    apply(s, x, s->corner, run->fit);
}

gw_status gw_setup_look(gw_setup *s, const double *x, gw_error *err)
{
    gw_run *run = s->run;
    gw_corner_ws *last = run->ws;
    if (!s->near) return gw_setup_fit(s, x, err);
    run->ws = NULL;
    put_in(s, x);
    const gw_corner_ws *near = s->centre ? s->centre : last ? last : s->near;
    const gw_nearness how = s->centre ? GW_NEAR_ONCE : GW_NEAR_WHOLE;
    gw_status status = gw_corner_open_near(s->corner, run->fit, near, how, &run->ws, err);
    gw_corner_close(last);
    return status == GW_OK ? gw_state_alloc(s->corner, &run->state, err) : status;
}

gw_status gw_setup_fit(gw_setup *s, const double *x, gw_error *err)
{
    gw_run *run = s->run;
    put_in(s, x);
    if (run->on_road) {
        gw_fit_pair(run->c, &run->laws, run->kit, run->axle, s->pair);
        apply(s, x, &run->c->pairs[run->axle], s->pair);
        run->set = s->pair;
    }
    gw_status status = gw_corner_open(s->corner, run->fit, &run->ws, err);
    if (status == GW_OK) status = gw_state_alloc(s->corner, &run->state, err);
    return status;
}

static gw_vec3 carried(const gw_pose *pose, gw_vec3 datum, gw_vec3 point)
{
    return gw_add(gw_add(gw_mul(&pose->r, gw_sub(point, datum)), pose->p), datum);
}

gw_status gw_setup_stance(gw_setup *s, gw_stance *out, gw_error *err)
{
    gw_run *run = s->run;
    const gw_wheel *wheel = &s->corner->wheel;
    const gw_pose *upright = &gw_corner_reference(run->ws)->pose[GW_UPRIGHT];
    gw_joint_result joints[GW_MAX_JOINTS];
    gw_corner_result result = { .joints = joints };
    gw_travel_rates rates;
    const gw_corner_load none = { 0 };
    gw_vec3 patch = gw_sub(wheel->centre, gw_v3(0, 0, wheel->loaded_radius));
    gw_status status = gw_corner_travel_at(run->ws, &none, 0.0, &run->state, &result, &rates, err);
    if (status != GW_OK) return status;
    out->setting = gw_corner_as_fitted(run->ws);
    out->centre = carried(upright, wheel->centre, wheel->centre);
    out->patch = carried(upright, wheel->centre, patch);
    out->bump_steer = rates.toe;
    out->bump_camber = rates.camber;
    return GW_OK;
}

/* camber, toe, caster, track, bump steer, to be differenced alike */
enum { FIGURES = 5 };

static gw_status figures_at(gw_setup *s, const double *x, int i, double by, bool all, double out[FIGURES],
                            gw_error *err)
{
    gw_stance stance = { 0 };
    memcpy(s->next, x, (size_t)s->n * sizeof *x);
    s->next[i] += by;
    gw_status status = gw_setup_look(s, s->next, err);
    if (status == GW_OK && all) status = gw_setup_stance(s, &stance, err);
    if (status != GW_OK) return status;
    if (!all) stance.setting = gw_corner_as_fitted(s->run->ws);
    out[0] = stance.setting.camber;
    out[1] = stance.setting.toe;
    out[2] = stance.setting.caster_change;
    out[3] = stance.patch.y;
    out[4] = stance.bump_steer;
    return GW_OK;
}

static gw_status difference(gw_setup *s, const double *x, int i, double step, bool all, double out[FIGURES],
                            gw_error *err)
{
    double up[FIGURES], down[FIGURES];
    gw_status status = figures_at(s, x, i, step, all, up, err);
    if (status == GW_OK) status = figures_at(s, x, i, -step, all, down, err);
    for (int f = 0; f < FIGURES && status == GW_OK; f++) out[f] = (up[f] - down[f]) / (2.0 * step);
    return status;
}

/* Central differences; Richardson's step takes the error of second order away. */
static gw_status slopes(gw_setup *s, const double *x, double step, bool fourth, bool all, gw_error *err)
{
    for (int i = 0; i < s->n; i++) {
        double d[FIGURES] = { 0 }, wide[FIGURES];
        s->slope[i] = (gw_slope){ .adjuster = s->of[i].adjuster, .axis = s->of[i].axis };
        if (s->lo[i] == s->hi[i] && !all) continue; /* held: nobody asks */
        gw_status status = difference(s, x, i, step, all, d, err);
        if (status == GW_OK && fourth) status = difference(s, x, i, 2.0 * step, all, wide, err);
        if (status != GW_OK) return status;
        for (int f = 0; f < FIGURES && fourth; f++) d[f] = (4.0 * d[f] - wide[f]) / 3.0;
        s->slope[i] = (gw_slope){ s->of[i].adjuster, s->of[i].axis, d[0], d[1], d[2], d[3], d[4] };
    }
    return GW_OK;
}

gw_status gw_setup_slopes(gw_setup *s, const double *x, double step, bool fourth, bool all, gw_error *err)
{
    double at[GW_MAX_MOVES];
    memcpy(at, x, (size_t)s->n * sizeof *at); /* `x` may be what is moved */
    gw_status status = gw_setup_look(s, at, err);
    if (status != GW_OK) return status;
    s->centre = s->run->ws;
    s->run->ws = NULL;
    status = gw_corner_learn(s->centre, err); /* each slope borrows its matrix */
    if (status == GW_OK) status = slopes(s, at, step, fourth, all, err);
    gw_run_close_corner(s->run);
    s->run->ws = s->centre;
    s->centre = NULL;
    return status == GW_OK ? gw_state_alloc(s->corner, &s->run->state, err) : status;
}

/* SPDX-License-Identifier: MIT */
/*
 * The unknowns are logarithms: of the rms slip speed of every slider, then of the amplitude of every bush
 * that has its own. A sweep over frequency gives them anew. Panels are chosen, then kept while the iteration
 * (ride/anderson.h) runs: a few large ones at first, which come within a thousandth, then those that are fine
 * enough. It has settled when panels that were chosen near the end change nothing more: the last step is told
 * by how those before it shrank, and taken without another sweep. Speed and acceleration of the wheel, on
 * which no other unknown depends, are the last two unknowns, so that they come along with that step.
 */
#include "ride/settle.h"

#include "giveway/units.h"
#include "ride/anderson.h"

#include <math.h>
#include <string.h>

enum { MOST_PANELS = 512, MOST_ROUNDS = 6 };
enum { THIRDS = 29, FEW = 5 };                /* stretches that panels are made of, at the least */
enum { SPEED, RUSH, N_TOLD };                 /* of wheel less chassis, behind the other unknowns */
static const double LOW = 0.5, HIGH = 315.0;  /* [Hz] */
static const double SMOOTH = 0.05;            /* of a panel */
static const double ROUGH = 0.5, NEAR = 3e-3; /* the same at first, and the change in which that may end */
static const double SERVE = 0.02;             /* panels that were chosen this near are fine enough       */
static const double LEAST = 1e-15;            /* so that a logarithm can be taken [m] */
static const double SHRINKS = 0.03; /* by more than this no step is trusted to shrink the next change */

/* A bush with a material: how its movement is made up. */
typedef struct rubber {
    int joint;
    gw_ride_element row[6];
    const gw_ride_element *way[3]; /* of its translations; NULL: no rate */
    const gw_ride_element *wound;  /* of an unbonded one that slips      */
} rubber;

typedef struct panel {
    double hz[GW_LANES], weight[GW_LANES];
} panel;

typedef struct settling {
    gw_ride_sweep *sweep;
    int n, n_rubber;
    rubber *rubber;
    double *now, *next; /* [n + N_TOLD] logarithms                                */
    double *square;     /* [n + N_TOLD] mean squares of the sweep: slip speed, amplitude, the wheel's */
    double *lane;       /* [n * lanes] of the panel                               */
    double smooth;      /* what is asked of a panel */
    int n_panels;
    panel *panel;
    double change, found; /* largest: in the last sweep, and in that which chose the panels */
    int wavers;           /* what changed most */
} settling;

/* ---- one panel ---- */

static void add_row(const gw_ride_element *row, const gw_lanes *factor, const gw_lanes *x, double weight,
                    double *out)
{
    gw_lanes moved = gw_element_deflection(row, x);
    for (int l = 0; l < GW_LANES; l++) {
        double size = factor ? factor->re[l] * factor->re[l] + factor->im[l] * factor->im[l] : 1.0;
        out[l] += weight * size * (moved.re[l] * moved.re[l] + moved.im[l] * moved.im[l]);
    }
}

/* Share of a deflection that is the bush's own where its bracket gives, too: 1 / (1 + k soft). */
static gw_lanes own_share(const gw_ride_model *model, const gw_ride_element *e)
{
    gw_lanes k = gw_element_own(model, e), soft;
    gw_lanes_fill(&soft, e->soft);
    gw_lanes below = gw_lanes_product(&k, &soft);
    for (int l = 0; l < GW_LANES; l++) below.re[l] += 1.0;
    return gw_lanes_inverse(&below);
}

/* Share of a rotation that winds a bush up before its sleeve slips: p c / (k + p c); else the share that
 * slips. */
static gw_lanes wound_share(const gw_ride_model *model, const gw_ride_element *e, const double *hz,
                            bool slips)
{
    gw_lanes k = gw_element_own(model, e), dash = { { 0 }, { 0 } }, sum = k;
    for (int l = 0; l < GW_LANES; l++) dash.im[l] = 2.0 * GW_PI * hz[l] * e->slip;
    gw_lanes_axpy(&sum, 1.0, &dash);
    sum = gw_lanes_inverse(&sum);
    return gw_lanes_product(slips ? &k : &dash, &sum);
}

/* Share of the damper's shortening that is the dashpot's: k_t / (k_t + p c). */
static gw_lanes damper_share(const gw_ride_element *e, const double *hz)
{
    gw_lanes sum = { { 0 }, { 0 } };
    for (int l = 0; l < GW_LANES; l++) {
        sum.re[l] = 1.0;
        if (e->series > 0.0) sum.im[l] = 2.0 * GW_PI * hz[l] * (e->rate + e->slip) / e->series;
    }
    return gw_lanes_inverse(&sum);
}

static void slip_squares(const settling *s, const gw_ride_slider *slider, const double *hz, double *out)
{
    const gw_ride_model *model = s->sweep->model;
    gw_lanes share, *factor = NULL;
    if (slider->element >= 0) {
        const gw_ride_element *e = &model->elements[slider->element];
        share = slider->joint < 0 ? damper_share(e, hz) : wound_share(model, e, hz, true);
        factor = &share;
    }
    for (int i = 0; i < slider->n_rows; i++) add_row(&slider->row[i], factor, s->sweep->x, 1.0, out);
    for (int l = 0; l < GW_LANES; l++) out[l] *= 4.0 * GW_PI * GW_PI * hz[l] * hz[l];
}

/* The sine of equal power: x^2 = 2 [sum u_i^2 + r^2 theta_3^2 + L^2/12 (theta_1^2 + theta_2^2)]. */
static void amplitude_squares(const settling *s, const rubber *r, const double *hz, double *out)
{
    const gw_ride_model *model = s->sweep->model;
    const gw_bush_law *law = &model->fit[r->joint].law;
    double turn = 2.0 * law->rubber_radius * law->rubber_radius;
    double tilt = law->rubber_length * law->rubber_length / 6.0;
    gw_lanes share;
    for (int i = 0; i < 3; i++) {
        if (r->way[i]) share = own_share(model, r->way[i]);
        add_row(&r->row[i], r->way[i] ? &share : NULL, s->sweep->x, 2.0, out);
    }
    add_row(&r->row[3], NULL, s->sweep->x, tilt, out);
    add_row(&r->row[4], NULL, s->sweep->x, tilt, out);
    if (r->wound) share = wound_share(model, r->wound, hz, false);
    add_row(&r->row[5], r->wound ? &share : NULL, s->sweep->x, turn, out);
}

/* Wheel centre less chassis, up; the mean of both wheels of an axle. */
static double wheel_square(const settling *s, int lane)
{
    const gw_ride_model *model = s->sweep->model;
    const gw_lanes *body = &s->sweep->x[model->chassis_z];
    double sum = 0.0;
    for (int w = 0; w < model->n_wheels; w++) {
        const gw_lanes *z = &s->sweep->x[gw_ride_wheel(model, w) + 2];
        double re = z->re[lane] - body->re[lane], im = z->im[lane] - body->im[lane];
        sum += (re * re + im * im) / model->n_wheels;
    }
    return sum;
}

/* Fills s->lane with weighted squares; `wheel` gets those of speed and acceleration of wheel less chassis. */
static void work_panel(settling *s, const double *hz, const double *weight, double wheel[N_TOLD][GW_LANES])
{
    gw_ride_model *model = s->sweep->model;
    gw_ride_respond_hz(model, hz, s->sweep->x);
    memset(s->lane, 0, (size_t)s->n * GW_LANES * sizeof *s->lane);
    for (int i = 0; i < s->n; i++) {
        double *out = &s->lane[i * GW_LANES];
        if (i < model->n_sliders)
            slip_squares(s, &model->sliders[i], hz, out);
        else
            amplitude_squares(s, &s->rubber[i - model->n_sliders], hz, out);
    }
    for (int l = 0; l < GW_LANES; l++) {
        double density = weight[l] * gw_ride_road_density(model->settings, hz[l]);
        for (int i = 0; i < s->n; i++) s->lane[i * GW_LANES + l] *= density;
        wheel[SPEED][l] = density * wheel_square(s, l) * pow(2.0 * GW_PI * hz[l], 2);
        wheel[RUSH][l] = wheel[SPEED][l] * pow(2.0 * GW_PI * hz[l], 2);
    }
}

static void add_panel(settling *s, double wheel[N_TOLD][GW_LANES])
{
    for (int l = 0; l < GW_LANES; l++) {
        for (int i = 0; i < s->n; i++) s->square[i] += s->lane[i * GW_LANES + l];
        for (int i = 0; i < N_TOLD; i++) s->square[s->n + i] += wheel[i][l];
    }
}

/* All of one kind together, each by its size so far, tell whether eight points are enough. */
static bool smooth(const settling *s, int from, int to)
{
    double sum[GW_LANES] = { 0 };
    for (int i = from; i < to; i++)
        for (int l = 0; l < GW_LANES; l++) sum[l] += s->lane[i * GW_LANES + l] * exp(-2.0 * s->now[i]);
    return from == to || gw_panel_is_smooth_to(sum, s->smooth);
}

static bool choose(void *context, const double hz[GW_LANES], const double weight[GW_LANES])
{
    settling *s = context;
    double wheel[N_TOLD][GW_LANES];
    int sliders = s->sweep->model->n_sliders;
    work_panel(s, hz, weight, wheel);
    bool fine = gw_panel_is_smooth_to(wheel[SPEED], s->smooth) &&
                gw_panel_is_smooth_to(wheel[RUSH], s->smooth) && smooth(s, 0, sliders) &&
                smooth(s, sliders, s->n);
    if (!fine && s->n_panels < MOST_PANELS) return false;
    add_panel(s, wheel);
    if (s->n_panels == MOST_PANELS) return true;
    memcpy(s->panel[s->n_panels].hz, hz, sizeof s->panel->hz);
    memcpy(s->panel[s->n_panels++].weight, weight, sizeof s->panel->weight);
    return true;
}

/* ---- a sweep ---- */

static void begin(settling *s)
{
    memset(s->square, 0, (size_t)(s->n + N_TOLD) * sizeof *s->square);
}

static void finish(settling *s)
{
    for (int i = 0; i < s->n + N_TOLD; i++) s->next[i] = log(fmax(sqrt(s->square[i]), LEAST));
}

static gw_status choose_panels(settling *s, bool rough, gw_error *err)
{
    const int n = rough ? FEW : THIRDS;
    double cuts[THIRDS + 1];
    gw_ride_sweep *sweep = s->sweep;
    for (int i = 0; i <= n; i++) cuts[i] = LOW * pow(HIGH / LOW, (double)i / n);
    cuts[n] = HIGH;
    s->smooth = rough ? ROUGH : SMOOTH;
    begin(s);
    s->n_panels = 0;
    gw_status st = gw_panels_integrate(sweep->poles, sweep->n_poles, cuts, n + 1, choose, s, err);
    finish(s);
    return st;
}

static void sweep_again(settling *s)
{
    double wheel[N_TOLD][GW_LANES];
    begin(s);
    for (int i = 0; i < s->n_panels; i++) {
        work_panel(s, s->panel[i].hz, s->panel[i].weight, wheel);
        add_panel(s, wheel);
    }
    finish(s);
}

/* The model at the state in s->now. */
static void take_state(settling *s)
{
    gw_ride_model *model = s->sweep->model;
    const gw_ride_draw draw = model->draw;
    for (int i = 0; i < model->n_sliders; i++) gw_slider_set(&model->sliders[i], exp(s->now[i]));
    for (int r = 0; r < s->n_rubber; r++)
        model->amplitude[s->rubber[r].joint] = exp(s->now[model->n_sliders + r]);
    gw_sliders_apply(model);
    gw_ride_model_set(model, &draw);
}

/* What sticks may go slower still: its dashpot stays. */
static double change_of(const settling *s, int i)
{
    const gw_ride_model *model = s->sweep->model;
    double least = LEAST;
    if (i < model->n_sliders) least = model->sliders[i].joint < 0 ? GW_DAMPER_SLOWEST : GW_SLIDER_SLOWEST;
    return fabs(fmax(s->next[i], log(least)) - fmax(s->now[i], log(least)));
}

static void note_change(settling *s)
{
    s->change = 0.0;
    s->wavers = 0;
    for (int i = 0; i < s->n; i++) {
        double d = change_of(s, i);
        if (d > s->change) s->change = d, s->wavers = i;
    }
}

static void step(settling *s, gw_anderson *steps)
{
    gw_anderson_step(steps, s->now, s->next);
    take_state(s);
}

/* From where it is, with the panels that are chosen there; s->change is what is left at the end. */
static gw_status run_round(settling *s, gw_anderson *steps, bool rough, int *passes, gw_error *err)
{
    take_state(s);
    gw_status st = choose_panels(s, rough, err);
    if (st != GW_OK) return st;
    *passes -= 1;
    note_change(s);
    s->found = s->change;
    gw_anderson_restart(steps);
    for (double left = s->change; *passes > 0 && left >= (rough ? NEAR : 0.3 * GW_SETTLED); *passes -= 1) {
        const double last = s->change;
        step(s, steps);
        sweep_again(s);
        note_change(s);
        left = s->change * (rough ? 1.0 : fmin(fmax(s->change / last, SHRINKS), 1.0));
        if (left < 0.3 * GW_SETTLED) s->change = left;
    }
    return GW_OK;
}

static gw_status iterate(settling *s, int passes, gw_settled *out, gw_arena *arena, gw_error *err)
{
    gw_anderson *steps = gw_anderson_open(s->n + N_TOLD, arena);
    if (!steps) return gw_fail(err, GW_E_NOMEM, "out of memory while ride settles");
    for (int round = 0; round < MOST_ROUNDS && passes > 0; round++) {
        const bool rough = round == 0;
        if (!rough) memcpy(s->now, s->next, (size_t)(s->n + N_TOLD) * sizeof *s->now);
        gw_status st = run_round(s, steps, rough, &passes, err);
        if (st != GW_OK) return st;
        out->wavers = s->wavers;
        if ((out->settled = !rough && s->found < SERVE && s->change < GW_SETTLED)) break;
    }
    if (out->settled) step(s, steps);
    return GW_OK;
}

/* ---- what there is to settle ---- */

static void place_rubber(const gw_ride_model *model, int joint, rubber *r)
{
    *r = (rubber){ .joint = joint };
    gw_ride_joint_rows(model, joint, r->row);
    int way = 0;
    for (int i = 0; i < 3; i++) {
        if (model->at_rest[joint].rate[i] == 0.0) continue;
        while (model->elements[way].kind != GW_ELEMENT_BUSH || model->elements[way].joint != joint) way++;
        r->way[i] = &model->elements[way++];
    }
    for (int k = 0; k < model->n_elements; k++)
        if (model->elements[k].kind == GW_ELEMENT_WOUND && model->elements[k].joint == joint)
            r->wound = &model->elements[k];
}

static gw_status open_settling(settling *s, gw_ride_sweep *sweep, gw_arena *arena, gw_error *err)
{
    const gw_ride_model *model = sweep->model;
    size_t most = (size_t)(model->n_sliders + model->corner->n_joints) + N_TOLD;
    int *joint = gw_arena_alloc(arena, most, sizeof *joint);
    *s = (settling){ .sweep = sweep };
    s->rubber = gw_arena_alloc(arena, most, sizeof *s->rubber);
    s->now = gw_arena_alloc(arena, most, sizeof *s->now);
    s->next = gw_arena_alloc(arena, most, sizeof *s->next);
    s->square = gw_arena_alloc(arena, most, sizeof *s->square);
    s->lane = gw_arena_alloc(arena, most * GW_LANES, sizeof *s->lane);
    s->panel = gw_arena_alloc(arena, MOST_PANELS, sizeof *s->panel);
    if (!joint || !s->rubber || !s->now || !s->next || !s->square || !s->lane || !s->panel)
        return gw_fail(err, GW_E_NOMEM, "out of memory while ride settles");
    if (model->settings->left_out[GW_RIDE_AMPLITUDE]) s->n_rubber = gw_rubber_joints(model, joint);
    for (int r = 0; r < s->n_rubber; r++) place_rubber(model, joint[r], &s->rubber[r]);
    s->n = model->n_sliders + s->n_rubber;
    return GW_OK;
}

static void start(settling *s)
{
    const double slip = 0.05, damper = 0.1; /* a first guess [rad/s, m/s] */
    const gw_ride_model *model = s->sweep->model;
    for (int i = 0; i < model->n_sliders; i++) {
        double speed = model->sliders[i].speed;
        s->now[i] = log(speed > 0.0 ? speed : model->sliders[i].joint < 0 ? damper : slip);
    }
    for (int r = 0; r < s->n_rubber; r++)
        s->now[model->n_sliders + r] = log(fmax(model->amplitude[s->rubber[r].joint], 1e-6));
    s->now[s->n + SPEED] = log(damper);
    s->now[s->n + RUSH] = log(damper * 2.0 * GW_PI * 10.0);
}

gw_status gw_settle(gw_ride_sweep *sweep, int passes, gw_arena *arena, gw_settled *out, gw_error *err)
{
    settling s;
    gw_settled result = { .settled = true };
    gw_status st = open_settling(&s, sweep, arena, err);
    if (st != GW_OK) return st;
    if (s.n > 0) {
        start(&s);
        st = iterate(&s, passes, &result, arena, err);
        result.wheel_speed = exp(s.now[s.n + SPEED]);
        result.wheel_acceleration = exp(s.now[s.n + RUSH]);
        if (!result.settled) {
            result.from = exp(s.now[result.wavers]);
            result.to = exp(s.next[result.wavers]);
        }
    }
    if (st == GW_OK) *out = result;
    return st;
}

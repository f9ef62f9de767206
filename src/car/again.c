/* SPDX-License-Identifier: MIT */
#include "car/again.h"

#include "car/workspace.h"
#include "corner/twin.h"

#include <string.h>

enum { USUAL_STEPS = 12 };

static gw_status open_twin(const gw_road_part *part, const gw_axle_origin *from, gw_axle which,
                           gw_corner_ws **ws, gw_error *err)
{
    (void)from, (void)which;
    return gw_corner_twin_open(part->pair, ws, err);
}

gw_status gw_road_frame(const gw_vehicle *vehicle, const gw_road_part part[GW_AXLES], gw_road **out,
                        gw_error *err)
{
    return gw_road_begin(vehicle, part, open_twin, NULL, out, err);
}

void gw_road_refit(gw_road *road, gw_axle axle, const gw_corner_ws *fitted)
{
    gw_corner_twin_take(road->axle[axle].ws, fitted);
    gw_road_note_setting(&road->axle[axle]);
}

static size_t felt_of(const gw_road *road, int axle)
{
    return gw_felt_places(road->axle[axle].ws->corner);
}

gw_status gw_road_mark_make(const gw_road *road, gw_arena *arena, gw_road_mark *out, gw_error *err)
{
    for (int a = 0; a < GW_AXLES; a++) {
        size_t n = (size_t)road->axle[a].ws->corner->n_bodies;
        out->state[a].pose = gw_arena_alloc(arena, n, sizeof *out->state[a].pose);
        out->felt[a] = gw_arena_alloc(arena, felt_of(road, a), sizeof *out->felt[a]);
        if (!out->state[a].pose || !out->felt[a])
            return gw_fail(err, GW_E_NOMEM, "out of memory for the car");
    }
    return GW_OK;
}

void gw_road_mark_copy(const gw_road *road, gw_road_mark *to, const gw_road_mark *from)
{
    gw_road_mark kept = *to;
    *to = *from;
    for (int a = 0; a < GW_AXLES; a++) {
        to->state[a].pose = kept.state[a].pose;
        to->felt[a] = kept.felt[a];
        memcpy(to->felt[a], from->felt[a], felt_of(road, a) * sizeof *to->felt[a]);
        gw_state_copy(&to->state[a], &from->state[a], road->axle[a].ws->corner->n_bodies);
    }
}

/* Where forces were asked for last, which is where the car stands. */
static void take_felt(const gw_corner_ws *ws, gw_felt *felt)
{
    memset(felt, 0, gw_felt_places(ws->corner) * sizeof *felt);
    for (int j = 0; j < ws->n_links; j++) {
        const gw_link_state *s = &ws->strain[j];
        gw_felt *at = &felt[gw_felt_place(ws, j)];
        at->wrench = s->wrench;
        memcpy(at->m, s->m, sizeof s->m);
    }
}

void gw_road_mark_take(const gw_road *road, bool still, gw_road_mark *out)
{
    const gw_stance_on_road *stance = still ? &road->stance0 : &road->stance;
    out->height = stance->height;
    out->roll = stance->roll;
    out->pitch = stance->pitch;
    out->knows_felt = !still || (road->load.ax == 0.0 && road->load.ay == 0.0);
    for (int a = 0; a < GW_AXLES; a++) {
        const gw_road_axle *axle = &road->axle[a];
        if (out->knows_felt) take_felt(axle->ws, out->felt[a]);
        out->lateral[a] = still ? 0.0 : axle->lateral;
        gw_state_copy(&out->state[a], still ? &axle->start : &axle->state, axle->ws->corner->n_bodies);
    }
}

/* A body of b, moved as it moved from `from` to `to`. */
static void follow(gw_state *b, const gw_state *from, const gw_state *to, int n)
{
    for (int i = 1; i < n; i++) {
        gw_mat3 turn = gw_matmul_nt(&to->pose[i].r, &from->pose[i].r);
        b->pose[i].r = gw_matmul(&turn, &b->pose[i].r);
        b->pose[i].p = gw_add(b->pose[i].p, gw_sub(to->pose[i].p, from->pose[i].p));
    }
    b->spring_force += to->spring_force - from->spring_force;
    b->spring_length += to->spring_length - from->spring_length;
    b->right_spring_force += to->right_spring_force - from->right_spring_force;
    b->right_spring_length += to->right_spring_length - from->right_spring_length;
}

static void follow_felt(gw_felt *felt, const gw_felt *from, const gw_felt *to, size_t n)
{
    for (size_t j = 0; j < n; j++) {
        gw_wrench *w = &felt[j].wrench;
        w->f = gw_add(w->f, gw_sub(to[j].wrench.f, from[j].wrench.f));
        w->m = gw_add(w->m, gw_sub(to[j].wrench.m, from[j].wrench.m));
        for (int i = 0; i < 3; i++) felt[j].m[i] += to[j].m[i] - from[j].m[i];
    }
}

void gw_road_mark_lead(const gw_road *road, const gw_road_mark *own, const gw_road_mark *there,
                       const gw_road_mark *origin, gw_road_mark *out)
{
    gw_road_mark_copy(road, out, own);
    out->height += there->height - origin->height;
    out->roll += there->roll - origin->roll;
    out->pitch += there->pitch - origin->pitch;
    out->knows_felt = own->knows_felt && there->knows_felt && origin->knows_felt;
    for (int a = 0; a < GW_AXLES; a++) {
        if (out->knows_felt) follow_felt(out->felt[a], origin->felt[a], there->felt[a], felt_of(road, a));
        out->lateral[a] += there->lateral[a] - origin->lateral[a];
        follow(&out->state[a], &origin->state[a], &there->state[a], road->axle[a].ws->corner->n_bodies);
    }
}

/* The car is moved there; what its joints carry there is known until the next iteration has begun. */
static void put(gw_road *road, const gw_road_mark *mark)
{
    road->stance.height = mark->height;
    road->stance.roll = mark->roll;
    road->stance.pitch = mark->pitch;
    gw_look_from(&road->stance);
    for (int a = 0; a < GW_AXLES; a++) {
        gw_road_axle *axle = &road->axle[a];
        gw_state_copy(&axle->state, &mark->state[a], axle->ws->system.n);
        axle->lateral = mark->lateral[a];
        axle->felt = mark->knows_felt ? mark->felt[a] : NULL;
    }
}

/* No wheel turned further from where it came than in a car that works. */
static bool is_usual(const gw_road *road, bool setting)
{
    for (int a = 0; a < GW_AXLES; a++) {
        const gw_road_axle *axle = &road->axle[a];
        const gw_state *from = setting ? gw_corner_reference(axle->ws) : &axle->start;
        if (!gw_turn_is_usual(axle->ws, from, &axle->state)) return false;
    }
    return road->iterations <= USUAL_STEPS;
}

/* From `guess` to a balance near it. */
static bool follow_guess(gw_road *road, const gw_road_mark *guess, bool setting)
{
    if (!guess || (!road->once && gw_road_has_play(road))) return false;
    put(road, guess);
    if (!setting) gw_road_springs_follow(road);
    bool found = road->once ? gw_road_newton_once(road, guess->tangent) == GW_OK
                            : gw_road_newton(road, NULL) == GW_OK && is_usual(road, setting);
    for (int a = 0; a < GW_AXLES; a++)
        road->axle[a].felt = NULL; /* where no tangent was asked for, it is there still */
    return found;
}

/* From the ramp's S0 of its axles other cars look for theirs. */
static gw_status learn_corners(gw_road *road, gw_error *err)
{
    gw_status status = GW_OK;
    for (int a = 0; a < GW_AXLES && status == GW_OK; a++) status = gw_corner_learn(road->axle[a].ws, err);
    return status;
}

gw_status gw_road_mark_learn(gw_road *road, const gw_manoeuvre *m, gw_arena *arena, gw_road_mark *mark,
                             gw_error *err)
{
    const gw_manoeuvre still = { 0 };
    gw_road_tangent *t = gw_arena_alloc(arena, 1, sizeof *t);
    if (!t) return gw_fail(err, GW_E_NOMEM, "out of memory for the car");
    road->setting = !m;
    road->load = gw_road_load_of(road->vehicle, m ? m : &still, 1.0);
    put(road, mark);
    if (m) gw_road_springs_follow(road);
    bool found = gw_road_tangent_here(road, &t->balance);
    road->setting = false;
    t->factors = road->factors;
    for (int a = 0; a < GW_AXLES && found; a++)
        if (!gw_system_keep(&road->axle[a].ws->system, arena, &t->axle[a]))
            return gw_fail(err, GW_E_NOMEM, "out of memory for the car");
    mark->tangent = found ? t : NULL;
    return m ? GW_OK : learn_corners(road, err);
}

gw_status gw_road_stand_near(gw_road *road, const gw_road_mark *guess, gw_error *err)
{
    const gw_manoeuvre still = { 0 };
    gw_status status = GW_OK;
    road->setting = true;
    road->load = gw_road_load_of(road->vehicle, &still, 1.0);
    bool near = follow_guess(road, guess, true);
    road->setting = false;
    if (!near) {
        road->stance = (gw_stance_on_road){ 0 };
        for (int a = 0; a < GW_AXLES; a++) road->axle[a].lateral = 0.0;
        status = gw_road_find_reference(road, err);
    }
    if (status == GW_OK) gw_road_set_wheels(road);
    return status;
}

gw_status gw_road_solve_near(gw_road *road, const gw_manoeuvre *m, const gw_road_mark *guess, gw_error *err)
{
    road->manoeuvre = *m;
    road->load = gw_road_load_of(road->vehicle, m, 1.0);
    const bool near = follow_guess(road, guess, false);
    if (near && (road->once || gw_road_least_load(road) >= 0.0)) return GW_OK;
    if (near && !err) return GW_E_NUMERIC; /* a wheel lifts, and nobody asks at how many g */
    if (road->once) return gw_fail(err, GW_E_NUMERIC, "the car as written does not carry this either");
    return gw_road_solve(road, m, err);
}

static gw_status open_axle_near(const gw_road_part *part, const gw_axle_origin *from, gw_axle which,
                                gw_corner_ws **ws, gw_error *err)
{
    return gw_corner_open_near(part->pair, part->fit, from->near->axle[which].ws, from->how, ws, err);
}

gw_status gw_road_open_near(const gw_vehicle *vehicle, const gw_road_part part[GW_AXLES], const gw_road *near,
                            const gw_road_mark *guess, gw_nearness how, gw_road **out, gw_error *err)
{
    const gw_axle_origin from = { near, how };
    gw_status status = gw_road_begin(vehicle, part, open_axle_near, &from, out, err);
    gw_road *road = *out;
    if (status != GW_OK) return status;
    road->once = how == GW_NEAR_ONCE;
    for (int a = 0; a < GW_AXLES; a++) gw_road_note_setting(&road->axle[a]);
    return gw_road_finish(road, gw_road_stand_near(road, guess, err), out);
}

int gw_road_steps(const gw_road *road)
{
    return road->iterations;
}

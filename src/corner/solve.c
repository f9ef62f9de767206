/* SPDX-License-Identifier: MIT */
/*
 * One load case: Newton from S0 in one step. Where that fails, or where it took more steps or turned the
 * upright further than a corner that works as one, the load and the travel are brought on little by little:
 * one large step may land on a balance that the corner cannot reach, with an arm turned over. Joints with
 * play are shut first and opened under the whole load.
 */
#include "corner/workspace.h"

static const double SMALLEST_PART = 1.0 / 512.0;
static const double FIRST_PART = 0.25;
enum { MAX_PARTS = 200 };

static gw_corner_load between(const gw_corner_load *a, const gw_corner_load *b, double t)
{
    gw_corner_load c;
    c.patch_force = gw_axpy(gw_scale(1.0 - t, a->patch_force), t, b->patch_force);
    c.patch_moment = gw_axpy(gw_scale(1.0 - t, a->patch_moment), t, b->patch_moment);
    c.hub_force = gw_axpy(gw_scale(1.0 - t, a->hub_force), t, b->hub_force);
    c.travel = (1.0 - t) * a->travel + t * b->travel;
    return c;
}

void gw_axle_loads(const gw_corner *corner, const gw_corner_load *load, gw_other_wheel other,
                   gw_corner_load out[GW_WHEELS])
{
    const double weight = corner->wheel.static_load;
    gw_corner_load *right = &out[GW_RIGHT_WHEEL];
    out[GW_LEFT_WHEEL] = *right = *load;
    if (other == GW_OTHER_STILL) *right = (gw_corner_load){ .patch_force = { 0, 0, weight } };
    if (other != GW_OTHER_OPPOSITE) return;
    right->patch_force = gw_scale(-1.0, load->patch_force);
    right->patch_force.z += 2.0 * weight;
    right->patch_moment = gw_scale(-1.0, load->patch_moment);
    right->hub_force = gw_scale(-1.0, load->hub_force);
    right->travel = -load->travel;
}

/* The load on both wheels; where the vertical one is unknown, that of `from` is where it starts. */
static void put_loads(gw_corner_ws *ws, const gw_corner_load load[GW_WHEELS], gw_drive drive,
                      const gw_state *from)
{
    double left = from->load.patch_force.z, right = from->right_load.patch_force.z;
    ws->work.load = load[GW_LEFT_WHEEL];
    ws->work.right_load = load[GW_RIGHT_WHEEL];
    if (drive != GW_LIFTED) return;
    ws->work.load.patch_force.z = left;
    ws->work.right_load.patch_force.z = right;
}

/* ws->work holds the last equilibrium on entry and the wanted one when GW_OK is returned. */
static gw_status bring_on(gw_corner_ws *ws, const gw_corner_load target[GW_WHEELS], gw_drive drive,
                          gw_error *err)
{
    const gw_corner_load start[GW_WHEELS] = { ws->work.load, ws->work.right_load };
    double done = 0.0, part = FIRST_PART;
    for (int i = 0; i < MAX_PARTS && done < 1.0; i++) {
        double next = fmin(1.0, done + part);
        gw_state_copy(&ws->resume, &ws->work, ws->system.n);
        const gw_corner_load now[GW_WHEELS] = { between(&start[0], &target[0], next),
                                                between(&start[1], &target[1], next) };
        put_loads(ws, now, drive, &ws->resume);
        gw_status status = gw_newton(ws, &ws->work, drive, false, err);
        if (status == GW_OK && !gw_step_is_usual(ws, &ws->resume, &ws->work))
            status = gw_fail(err, GW_E_NUMERIC, "the %s %s would snap over before all of this load is on",
                             ws->corner->name, gw_corner_or_axle(ws));
        if (status == GW_OK) {
            done = next;
            part *= 1.5;
            continue;
        }
        gw_state_copy(&ws->work, &ws->resume, ws->system.n);
        part *= 0.5;
        if (part < SMALLEST_PART) return status;
    }
    if (done < 1.0)
        return gw_fail(err, GW_E_NUMERIC, "the %s %s is not brought to this load in %d parts: lower it",
                       ws->corner->name, gw_corner_or_axle(ws), (int)MAX_PARTS);
    return GW_OK;
}

/* From S0 to ws->work under the load: in one go, else little by little. */
static gw_status from_reference(gw_corner_ws *ws, const gw_corner_load load[GW_WHEELS], gw_drive drive,
                                bool in_parts, gw_error *err)
{
    gw_error first = { 0 };
    gw_state_copy(&ws->work, &ws->reference, ws->system.n);
    put_loads(ws, load, drive, &ws->reference);
    gw_status status = gw_newton(ws, &ws->work, drive, false, &first);
    if (status == GW_OK && gw_step_is_usual(ws, &ws->reference, &ws->work)) return GW_OK;
    if (!in_parts) return gw_fail(err, GW_E_NUMERIC, "not in one go");
    gw_state_copy(&ws->work, &ws->reference, ws->system.n);
    return bring_on(ws, load, drive, err);
}

static gw_status with_play(gw_corner_ws *ws, const gw_corner_load load[GW_WHEELS], gw_drive drive,
                           gw_error *err)
{
    if (from_reference(ws, load, drive, false, NULL) == GW_OK) return GW_OK;
    gw_shut_play(ws, 1.0);
    gw_status status = from_reference(ws, load, drive, true, err);
    if (status == GW_OK) return gw_open_play(ws, drive, err);
    gw_shut_play(ws, 0.0);
    return status;
}

gw_status gw_axle_solve(gw_corner_ws *ws, const gw_corner_load load[GW_WHEELS], gw_drive drive,
                        gw_state *state, gw_error *err)
{
    gw_status status =
        gw_has_play(ws) ? with_play(ws, load, drive, err) : from_reference(ws, load, drive, true, err);
    if (status == GW_OK) gw_state_copy(state, &ws->work, ws->system.n);
    if (status == GW_E_NUMERIC) gw_name_the_softest(ws, &ws->reference, err);
    return status;
}

gw_status gw_axle_solve_near(gw_corner_ws *ws, const gw_corner_load load[GW_WHEELS], gw_drive drive,
                             const gw_state *near, gw_state *state, gw_error *err)
{
    if (!near || (!ws->once && gw_has_play(ws))) return gw_axle_solve(ws, load, drive, state, err);
    gw_state_copy(&ws->work, near, ws->system.n);
    put_loads(ws, load, drive, near);
    gw_springs_follow(ws, &ws->work, &ws->reference, drive);
    if (ws->once) {
        gw_status status = gw_newton_once(ws, &ws->work, drive, NULL);
        if (status != GW_OK)
            return gw_fail(err, status, "the %s %s has no stiffness left", ws->corner->name,
                           gw_corner_or_axle(ws));
    } else if (gw_newton(ws, &ws->work, drive, false, NULL) != GW_OK ||
               !gw_step_is_usual(ws, near, &ws->work))
        return gw_axle_solve(ws, load, drive, state, err);
    gw_state_copy(state, &ws->work, ws->system.n);
    return GW_OK;
}

gw_status gw_corner_solve(gw_corner_ws *ws, const gw_corner_load *load, gw_drive drive, gw_state *state,
                          gw_error *err)
{
    const gw_corner_load both[GW_WHEELS] = { *load, *load };
    return gw_axle_solve(ws, both, drive, state, err);
}

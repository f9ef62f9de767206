/* SPDX-License-Identifier: MIT */
/* What is on offer, as far as it follows from kits and bushes. */
#include "giveway/casefile.h"
#include "giveway/units.h"

bool gw_load_tells(const gw_case *c, const gw_load *load, gw_wheel_side wheel)
{
    if (load->kind == GW_LOAD_MANOEUVRE) return load->both || gw_wheel_of_side(load->manoeuvre.side) == wheel;
    return wheel == GW_LEFT_WHEEL || load->other != GW_OTHER_SAME || c->pairs[load->axle].lopsided;
}

double gw_goal_unit(gw_goal_figure figure)
{
    return figure == GW_GOAL_FORE_AFT ? GW_MM : GW_DEG;
}

/* The pair's first joints are those of the corner, so that one index serves both; -1: the corner has faults.
 */
static int fitted(const gw_case *c, int kit, gw_axle axle, int joint)
{
    return joint < c->pairs[axle].n_joints ? c->kits[kit].fits[axle][joint] : -1;
}

static bool is_one_sided(const gw_case *c, int kit, gw_axle axle, int joint)
{
    if (joint >= c->pairs[axle].n_joints) return false;
    return fitted(c, kit, axle, joint) != fitted(c, kit, axle, c->pairs[axle].joints[joint].twin);
}

bool gw_choose_is_one_sided(const gw_case *c, gw_axle *axle, int *joint)
{
    for (int a = 0; a < GW_AXLES && c->n_kits > 0; a++)
        for (int j = 0; c->has_corner[a] && j < c->corners[a].n_joints; j++)
            if (is_one_sided(c, 0, (gw_axle)a, j)) {
                *axle = (gw_axle)a;
                *joint = j;
                return true;
            }
    return false;
}

bool gw_case_has_prices(const gw_case *c)
{
    if (c->n_jobs > 0) return true;
    for (int b = 0; b < c->n_bushes; b++)
        if (c->bushes[b].price >= 0.0 || c->bushes[b].fit_minutes >= 0.0) return true;
    return false;
}

const char *gw_choose_lacks(const gw_case *c, const gw_among *among, int bush)
{
    const gw_bush *b = &c->bushes[bush];
    bool new = false;
    for (int j = 0; j < among->n_joints && c->n_kits > 0; j++)
        new = new || fitted(c, 0, among->axle, among->joint[j]) != bush;
    if (!new || !gw_case_has_prices(c) || (b->price >= 0.0 && b->fit_minutes >= 0.0)) return NULL;
    if (b->price < 0.0) return b->fit_minutes < 0.0 ? "price and fit_minutes" : "price";
    return "fit_minutes";
}

/* A kit that fits one side only says nothing of the joint. */
static bool speaks(const gw_case *c, int kit, gw_axle axle, int joint)
{
    return !is_one_sided(c, kit, axle, joint);
}

static bool differs(const gw_case *c, gw_axle axle, int joint)
{
    for (int k = 1; k < c->n_kits; k++)
        if (speaks(c, k, axle, joint) && fitted(c, k, axle, joint) != fitted(c, 0, axle, joint)) return true;
    return false;
}

static bool treated_alike(const gw_case *c, gw_axle axle, int a, int b)
{
    for (int k = 0; k < c->n_kits; k++)
        if (fitted(c, k, axle, a) != fitted(c, k, axle, b) ||
            is_one_sided(c, k, axle, a) != is_one_sided(c, k, axle, b))
            return false;
    return true;
}

/* Of a pair of mirrored joints the one as written stands for both. */
static bool is_as_written(const gw_corner *pair, int joint)
{
    return joint < pair->n_joints && pair->joints[joint].twin >= joint;
}

static void add_bushes(const gw_case *c, gw_among *among)
{
    for (int k = 0; k < c->n_kits; k++) {
        int bush = fitted(c, k, among->axle, among->joint[0]), i = 0;
        if (!speaks(c, k, among->axle, among->joint[0])) continue;
        while (i < among->n_bushes && among->bush[i] != bush) i++;
        if (i == among->n_bushes) among->bush[among->n_bushes++] = bush;
    }
}

static bool add_joint(const gw_case *c, gw_arena *arena, gw_choose *out, gw_axle axle, int joint)
{
    for (int i = 0; i < out->n_among; i++) {
        gw_among *there = &out->among[i];
        if (there->axle != axle || !treated_alike(c, axle, there->joint[0], joint)) continue;
        there->joint[there->n_joints++] = joint;
        return true;
    }
    gw_among *among = &out->among[out->n_among++];
    *among = (gw_among){ .axle = axle, .n_joints = 1 };
    among->joint = gw_arena_alloc(arena, (size_t)c->corners[axle].n_joints, sizeof *among->joint);
    among->bush = gw_arena_alloc(arena, (size_t)c->n_kits, sizeof *among->bush);
    if (!among->joint || !among->bush) return false;
    among->joint[0] = joint;
    add_bushes(c, among);
    return true;
}

gw_status gw_choose_by_kits(const gw_case *c, gw_arena *arena, gw_choose *out, gw_error *err)
{
    bool ok =
        (out->among = gw_arena_alloc(arena, (size_t)GW_AXLES * GW_MAX_JOINTS, sizeof *out->among)) != NULL;
    out->n_among = 0;
    for (int a = 0; a < GW_AXLES && ok; a++)
        for (int j = 0; c->has_corner[a] && ok && j < c->corners[a].n_joints; j++)
            if (is_as_written(&c->pairs[a], j) && differs(c, (gw_axle)a, j))
                ok = add_joint(c, arena, out, (gw_axle)a, j);
    return ok ? GW_OK : gw_fail(err, GW_E_NOMEM, "out of memory for what is on offer");
}

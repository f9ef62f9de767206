/* SPDX-License-Identifier: MIT */
/* Builds the frequency-domain model of a corner: bodies, elements, masses and the shape of D. */
#include "ride/model.h"
#include "bush/dynamic.h"

#include <math.h>
#include <stdint.h>
#include <string.h>

static bool same_zener(const gw_dynamic_law *a, const gw_dynamic_law *b)
{
    return a->zener_gain == b->zener_gain && a->zener_tau == b->zener_tau && a->zener_alpha == b->zener_alpha;
}

static bool same_law(const gw_dynamic_law *a, const gw_dynamic_law *b)
{
    return a->ratio == b->ratio && a->loss == b->loss && same_zener(a, b) && a->payne_gain == b->payne_gain &&
           a->payne_amplitude == b->payne_amplitude && a->payne_exponent == b->payne_exponent;
}

/* Bushes of one compound differ in their walls, and so in amplitude, but not in frequency. */
static int like_law(const gw_ride_model *model, const gw_dynamic_law *law)
{
    int i = 0;
    while (i < model->n_laws && !same_zener(model->laws[i], law)) i++;
    return i;
}

static int law_index(gw_ride_model *model, const gw_dynamic_law *law)
{
    gw_dynamic_law steady = *law;
    for (int i = 0; i < model->n_laws; i++)
        if (same_law(model->laws[i], law)) return i;
    steady.zener_gain = 0.0;
    model->laws[model->n_laws] = law;
    model->law_steady[model->n_laws] = gw_dynamic_factor(&steady, 0.0, model->settings->amplitude);
    model->law_like[model->n_laws] = like_law(model, law);
    return model->n_laws++;
}

static gw_ride_element *new_element(gw_ride_model *model, gw_element_kind kind, double rate, int path)
{
    gw_ride_element *e = &model->elements[model->n_elements++];
    e->kind = kind;
    e->rate = rate;
    e->path = path;
    e->constant = kind == GW_ELEMENT_SPRING;
    return e;
}

static int new_path(gw_ride_model *model, gw_path_kind kind, int joint, const char *name)
{
    model->paths[model->n_paths] = (gw_ride_path){ .kind = kind, .joint = joint, .name = name };
    return model->n_paths++;
}

double gw_ride_bracket(const gw_ride *settings, const gw_joint *joint)
{
    if (joint->body_a != GW_CHASSIS && joint->body_b != GW_CHASSIS) return 0.0;
    if (joint->bracket > 0.0) return joint->bracket;
    return settings->brackets_rigid ? 0.0 : settings->default_bracket;
}

static void add_joint(gw_ride_model *model, int j)
{
    const gw_joint *joint = &model->corner->joints[j];
    const gw_bush_law *law = &model->fit[j].law;
    const gw_ride_body *a = &model->bodies[joint->body_a], *b = &model->bodies[joint->body_b];
    bool on_chassis = joint->body_a == GW_CHASSIS || joint->body_b == GW_CHASSIS;
    int path = on_chassis ? new_path(model, GW_PATH_JOINT, j, joint->name) : -1;
    double of_a[6][6], of_b[6][6];
    gw_joint_jacobian(joint, a->datum, of_a);
    gw_joint_jacobian(joint, b->datum, of_b);
    gw_bush_turn_rows(&model->at_rest[j], of_a);
    gw_bush_turn_rows(&model->at_rest[j], of_b);
    for (int i = 0; i < 6; i++) {
        double rate = model->at_rest[j].rate[i];
        if (rate == 0.0) continue;
        gw_ride_element *e = new_element(model, GW_ELEMENT_BUSH, rate, i < 3 ? path : -1);
        e->law = law_index(model, &law->dynamic);
        e->constant = law->dynamic.zener_gain == 0.0;
        e->series = i < 3 ? gw_ride_bracket(model->settings, joint) : 0.0;
        e->series_loss = model->settings->bracket_loss;
        e->pure = !e->constant && !(e->series > 0.0);
        gw_element_add_twist(e, a, of_a[i], -1.0);
        gw_element_add_twist(e, b, of_b[i], 1.0);
    }
}

/* Spring and damper: movement of the seat less that of the chassis, along the design line. */
static void add_line(gw_ride_model *model, gw_ride_element *e, int body, gw_vec3 at, gw_vec3 to)
{
    gw_vec3 line = gw_sub(to, at);
    gw_vec3 direction = gw_scale(1.0 / gw_norm(line), line);
    gw_element_add_point(e, &model->bodies[body], at, direction, 1.0);
    gw_element_add_point(e, &model->bodies[GW_CHASSIS], to, direction, -1.0);
}

static void add_spring_and_damper(gw_ride_model *model, const gw_spring *spring, const gw_damper *damper,
                                  const char *const name[2])
{
    int path = new_path(model, GW_PATH_SPRING, -1, name[0]);
    gw_ride_element *e = new_element(model, GW_ELEMENT_SPRING, spring->rate, path);
    add_line(model, e, spring->body, spring->at, spring->to);
    if (!damper->present) return;
    path = new_path(model, GW_PATH_DAMPER, -1, name[1]);
    e = new_element(model, GW_ELEMENT_DAMPER, damper->rate + model->settings->damper_friction, path);
    e->series = damper->top_mount;
    add_line(model, e, damper->body, damper->at, damper->to);
}

static void add_springs(gw_ride_model *model)
{
    static const char *const ONE[2] = { "spring", "damper" },
                             *const LEFT[2] = { "left.spring", "left.damper" },
                             *const RIGHT[2] = { "right.spring", "right.damper" };
    const gw_corner *c = model->corner;
    add_spring_and_damper(model, &c->spring, &c->damper, gw_is_pair(c) ? LEFT : ONE);
    if (gw_is_pair(c)) add_spring_and_damper(model, &c->right_spring, &c->right_damper, RIGHT);
}

/* Both ways of the tyre act at the wheel centre in small motion: the patch lies straight below it. */
static void add_tyre(gw_ride_model *model, int body)
{
    const gw_wheel *wheel = &model->corner->wheel;
    const gw_ride_body *upright = &model->bodies[body];
    gw_ride_element *e = new_element(model, GW_ELEMENT_TYRE_VERTICAL, wheel->tyre_vertical, -1);
    gw_element_add_point(e, upright, upright->datum, gw_v3(0, 0, 1), 1.0);
    bool slips =
        wheel->tyre_slip_stiffness > 0.0 && wheel->tyre_relaxation > 0.0 && wheel->spin_inertia > 0.0;
    if (!slips && !(wheel->tyre_mass > 0.0)) return;
    e = new_element(model, GW_ELEMENT_TYRE_FORE_AFT, wheel->tyre_slip_stiffness, -1);
    gw_element_add_point(e, upright, upright->datum, gw_v3(1, 0, 0), 1.0);
}

/* A row begins at the first column that any element or mass joins it with. */
static void find_skyline(gw_ride_model *model)
{
    for (int r = 0; r < model->n; r++) model->start[r] = r;
    for (int b = 0; b < model->corner->n_bodies; b++) {
        int first = model->n;
        for (int i = 5; i >= 0; i--)
            if (model->bodies[b].dof[i] >= 0) first = model->bodies[b].dof[i];
        for (int i = 0; i < 6; i++)
            if (model->bodies[b].dof[i] >= 0) model->start[model->bodies[b].dof[i]] = first;
    }
    for (int k = 0; k < model->n_elements; k++) {
        const gw_ride_element *e = &model->elements[k];
        int first = model->n;
        for (int i = 0; i < e->n; i++)
            if (e->dof[i] < first) first = e->dof[i];
        for (int i = 0; i < e->n; i++)
            if (first < model->start[e->dof[i]]) model->start[e->dof[i]] = first;
    }
    model->n_entries = 0;
    for (int r = 0; r < model->n; r++) {
        model->base[r] = model->n_entries - model->start[r];
        model->n_entries += r - model->start[r] + 1;
    }
}

static void add_mass(gw_ride_model *model, const gw_ride_element *motion, double mass)
{
    for (int i = 0; i < motion->n; i++) {
        for (int j = 0; j < motion->n; j++) {
            int r = motion->dof[i], c = motion->dof[j];
            if (r >= c) model->mass[model->base[r] + c] += mass * motion->row[i] * motion->row[j];
        }
    }
}

static void add_point_mass(gw_ride_model *model, int body, gw_vec3 at, double mass)
{
    const gw_vec3 along[3] = { { 1, 0, 0 }, { 0, 1, 0 }, { 0, 0, 1 } };
    for (int i = 0; i < 3; i++) {
        gw_ride_element motion = { 0 };
        gw_element_add_point(&motion, &model->bodies[body], at, along[i], 1.0);
        add_mass(model, &motion, mass);
    }
}

/* A member's mass is shared equally among its joints. */
static void add_member_mass(gw_ride_model *model, int body)
{
    const gw_corner *corner = model->corner;
    int count = 0;
    for (int j = 0; j < corner->n_joints; j++)
        count += corner->joints[j].body_a == body || corner->joints[j].body_b == body;
    for (int j = 0; j < corner->n_joints; j++)
        if (corner->joints[j].body_a == body || corner->joints[j].body_b == body)
            add_point_mass(model, body, corner->joints[j].at, corner->bodies[body].mass / count);
}

/* What is the same at every frequency but for its law is summed up once. */
static void sum_pure(gw_ride_model *model)
{
    for (int k = 0; k < model->n_elements; k++) {
        const gw_ride_element *e = &model->elements[k];
        if (!e->pure) continue;
        double *sum = model->law_sum + (size_t)e->law * (size_t)model->n_entries;
        for (int i = 0; i < e->n; i++)
            for (int j = 0; j < e->n; j++)
                if (e->dof[i] >= e->dof[j])
                    sum[model->base[e->dof[i]] + e->dof[j]] += e->rate * (e->row[i] * e->row[j]);
    }
}

static void add_wheel_mass(gw_ride_model *model, int body)
{
    const gw_wheel *wheel = &model->corner->wheel;
    const double inertia[3] = { wheel->tilt_inertia, wheel->pitch_inertia, wheel->tilt_inertia };
    add_point_mass(model, body, model->bodies[body].datum, wheel->mass);
    for (int i = 0; i < 3; i++) {
        int r = model->bodies[body].dof[3 + i];
        model->mass[model->base[r] + r] += inertia[i];
    }
}

static void add_masses(gw_ride_model *model)
{
    const gw_corner *c = model->corner;
    add_point_mass(model, GW_CHASSIS, c->wheel.centre, model->chassis_mass);
    add_wheel_mass(model, GW_UPRIGHT);
    if (gw_is_pair(c)) add_wheel_mass(model, c->right_upright);
    for (int b = GW_UPRIGHT + 1; b < c->n_bodies; b++)
        if (!gw_is_pair(c) || b != c->right_upright) add_member_mass(model, b);
}

void gw_ride_model_brackets(gw_ride_model *model, double factor)
{
    const double ground = 1e6; /* any stiffness will do: nothing ever pushes a held motion */
    model->bracket_factor = factor;
    memset(model->fixed, 0, (size_t)model->n_entries * sizeof *model->fixed);
    for (int k = 0; k < model->n_elements; k++) {
        gw_ride_element *e = &model->elements[k];
        if (!e->constant) continue;
        e->k = gw_element_constant(model, e);
        for (int i = 0; i < e->n; i++)
            for (int j = 0; j < e->n; j++)
                if (e->dof[i] >= e->dof[j])
                    model->fixed[model->base[e->dof[i]] + e->dof[j]] += e->k * (e->row[i] * e->row[j]);
    }
    for (int r = 0; r < model->n; r++)
        if (model->held[r]) model->fixed[model->base[r] + r] += ground;
}

/* On whole cache lines: split loads would cost a tenth of a sweep, at the whim of the allocator. */
static gw_lanes *allocate_lanes(gw_arena *arena, size_t n)
{
    const uintptr_t line = 64;
    char *memory = gw_arena_alloc(arena, n + 1, sizeof(gw_lanes));
    return memory ? (gw_lanes *)(void *)(memory + (line - (uintptr_t)memory % line) % line) : NULL;
}

static gw_status allocate_parts(gw_ride_model *model, gw_arena *arena, gw_error *err)
{
    const gw_corner *corner = model->corner;
    size_t joints = (size_t)corner->n_joints, dofs = 14 + 6 * (size_t)corner->n_bodies;
    model->bodies = gw_arena_alloc(arena, (size_t)corner->n_bodies, sizeof *model->bodies);
    model->elements = gw_arena_alloc(arena, 6 * joints + 8, sizeof *model->elements);
    model->laws = gw_arena_alloc(arena, joints + 1, sizeof *model->laws);
    model->law_steady = gw_arena_alloc(arena, joints + 1, sizeof *model->law_steady);
    model->law_zener = gw_arena_alloc(arena, joints + 1, sizeof *model->law_zener);
    model->law_like = gw_arena_alloc(arena, joints + 1, sizeof *model->law_like);
    model->law_now = gw_arena_alloc(arena, joints + 1, sizeof *model->law_now);
    model->paths = gw_arena_alloc(arena, joints + 4, sizeof *model->paths);
    model->start = gw_arena_alloc(arena, dofs, sizeof *model->start);
    model->base = gw_arena_alloc(arena, dofs, sizeof *model->base);
    model->held = gw_arena_alloc(arena, dofs, sizeof *model->held);
    model->pivot = allocate_lanes(arena, dofs);
    bool ok = model->bodies && model->elements && model->laws && model->law_steady && model->law_zener &&
              model->law_like && model->law_now && model->paths && model->start && model->base &&
              model->held && model->pivot;
    return ok ? GW_OK : gw_fail(err, GW_E_NOMEM, "out of memory while building the ride model");
}

static gw_status allocate_matrices(gw_ride_model *model, gw_arena *arena, gw_error *err)
{
    size_t entries = (size_t)model->n_entries;
    model->mass = gw_arena_alloc(arena, entries, sizeof *model->mass);
    model->fixed = gw_arena_alloc(arena, entries, sizeof *model->fixed);
    model->factor = allocate_lanes(arena, entries);
    model->law_sum = gw_arena_alloc(arena, (size_t)model->n_laws * entries + 1, sizeof *model->law_sum);
    bool ok = model->mass && model->fixed && model->factor && model->law_sum;
    for (int k = 0; ok && k < model->n_elements; k++) {
        gw_ride_element *e = &model->elements[k];
        if (!e->constant && !e->pure) ok = (e->now = gw_arena_alloc(arena, 1, sizeof *e->now)) != NULL;
    }
    return ok ? GW_OK : gw_fail(err, GW_E_NOMEM, "out of memory while building the ride model");
}

/* A measured bush trembles about the force that it carries at S0, without the bracket, which stands in
 * series. */
static gw_status stand_measured(gw_ride_model *model, gw_error *err)
{
    gw_corner_ws *ws;
    gw_status st = gw_corner_open(model->corner, model->fit, &ws, err);
    if (st != GW_OK) return st;
    for (int j = 0; j < model->corner->n_joints; j++) {
        gw_joint_result rest = gw_corner_at_rest(ws, j);
        double u[3];
        if (!gw_bush_has_curves(&model->fit[j].law)) continue;
        gw_bush_deflection_under(&model->fit[j].law, rest.f, u);
        model->at_rest[j] = gw_bush_tangent_at(&model->fit[j].law, u, rest.theta);
    }
    gw_corner_close(ws);
    return GW_OK;
}

static gw_status find_tangents(gw_ride_model *model, gw_arena *arena, gw_error *err)
{
    static const double NOTHING[3] = { 0 };
    size_t joints = (size_t)model->corner->n_joints;
    bool measured = false;
    model->at_rest = gw_arena_alloc(arena, joints + 1, sizeof *model->at_rest);
    if (!model->at_rest) return gw_fail(err, GW_E_NOMEM, "out of memory while building the ride model");
    for (size_t j = 0; j < joints; j++) {
        model->at_rest[j] = gw_bush_tangent_at(&model->fit[j].law, NOTHING, NOTHING);
        measured = measured || gw_bush_has_curves(&model->fit[j].law);
    }
    return measured ? stand_measured(model, err) : GW_OK;
}

gw_status gw_ride_model_open(gw_ride_model *model, const gw_corner *corner, const gw_fit *fit,
                             const gw_ride *settings, gw_arena *arena, gw_error *err)
{
    gw_status st;
    *model = (gw_ride_model){ .corner = corner, .fit = fit, .settings = settings };
    model->n_wheels = gw_is_pair(corner) ? GW_WHEELS : 1;
    model->belt = gw_belt_of(&corner->wheel);
    model->belt.on = false;
    if ((st = gw_ride_check(corner, settings, &model->chassis_mass, err)) != GW_OK ||
        (st = allocate_parts(model, arena, err)) != GW_OK)
        return st;
    if ((st = find_tangents(model, arena, err)) != GW_OK) return st;
    gw_ride_place_bodies(model);
    for (int j = 0; j < corner->n_joints; j++) add_joint(model, j);
    add_springs(model);
    add_tyre(model, GW_UPRIGHT);
    if (gw_is_pair(corner)) add_tyre(model, corner->right_upright);
    find_skyline(model);
    if ((st = allocate_matrices(model, arena, err)) != GW_OK) return st;
    add_masses(model);
    sum_pure(model);
    if ((st = gw_ride_hold(model, arena, err)) != GW_OK) return st;
    gw_ride_model_brackets(model, 1.0);
    return GW_OK;
}

/* SPDX-License-Identifier: MIT */
/* Builds the frequency-domain model of a corner: bodies, elements, masses and the shape of D. */
#include "ride/model.h"
#include "bush/dynamic.h"
#include "ride/slider.h"

#include <math.h>
#include <stdint.h>
#include <string.h>

static bool same_zener(const gw_dynamic_law *a, const gw_dynamic_law *b)
{
    return a->zener_gain == b->zener_gain && a->zener_tau == b->zener_tau && a->zener_alpha == b->zener_alpha;
}

/* Bushes of one compound differ in their walls, and so in amplitude, but not in frequency. */
static int zener_index(gw_ride_model *model, const gw_dynamic_law *law)
{
    if (law->zener_gain == 0.0) return -1;
    for (int i = 0; i < model->n_zeners; i++)
        if (same_zener(model->zener[i], law)) return i;
    model->zener[model->n_zeners] = law;
    return model->n_zeners++;
}

static gw_ride_element *new_element(gw_ride_model *model, gw_element_kind kind, double rate, int path)
{
    gw_ride_element *e = &model->elements[model->n_elements++];
    e->kind = kind;
    e->rate = rate;
    e->path = path;
    e->joint = e->zener = -1;
    e->constant = kind == GW_ELEMENT_SPRING;
    return e;
}

static int new_path(gw_ride_model *model, gw_path_kind kind, int joint, const char *name)
{
    model->paths[model->n_paths] = (gw_ride_path){ .kind = kind, .joint = joint, .name = name };
    return model->n_paths++;
}

static gw_ride_element *new_bush(gw_ride_model *model, gw_element_kind kind, int j, double rate, int path)
{
    gw_ride_element *e = new_element(model, kind, rate, path);
    e->joint = j;
    e->zener = zener_index(model, &model->fit[j].law.dynamic);
    e->constant = kind == GW_ELEMENT_BUSH && e->zener < 0;
    return e;
}

static void take_row(gw_ride_element *e, const gw_ride_element *row)
{
    e->n = row->n;
    memcpy(e->dof, row->dof, sizeof e->dof);
    memcpy(e->row, row->row, sizeof e->row);
}

static void add_joint(gw_ride_model *model, int j)
{
    const gw_joint *joint = &model->corner->joints[j];
    bool on_chassis = joint->body_a == GW_CHASSIS || joint->body_b == GW_CHASSIS;
    int path = on_chassis ? new_path(model, GW_PATH_JOINT, j, joint->name) : -1;
    double winds_up = gw_ride_winds_up(model, j);
    gw_ride_element row[6] = { 0 };
    gw_ride_joint_rows(model, j, row);
    for (int i = 0; i < 6; i++) {
        double rate = model->at_rest[j].rate[i];
        if (rate == 0.0) continue;
        gw_ride_element *e = new_bush(model, GW_ELEMENT_BUSH, j, rate, i < 3 ? path : -1);
        e->series = i < 3 ? gw_ride_bracket(model->settings, joint) : 0.0;
        e->shifts = i < 3;
        take_row(e, &row[i]);
    }
    if (winds_up > 0.0) take_row(new_bush(model, GW_ELEMENT_WOUND, j, winds_up, -1), &row[5]);
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

static void reach_row(gw_ride_model *model, const gw_ride_element *e)
{
    int first = model->n;
    for (int i = 0; i < e->n; i++)
        if (e->dof[i] < first) first = e->dof[i];
    for (int i = 0; i < e->n; i++)
        if (first < model->start[e->dof[i]]) model->start[e->dof[i]] = first;
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
    for (int k = 0; k < model->n_elements; k++) reach_row(model, &model->elements[k]);
    for (int s = 0; s < model->n_sliders; s++)
        for (int i = 0; i < model->sliders[s].n_rows; i++) reach_row(model, &model->sliders[s].row[i]);
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
    model->elements = gw_arena_alloc(arena, 7 * joints + 8, sizeof *model->elements);
    model->amplitude = gw_arena_alloc(arena, joints + 1, sizeof *model->amplitude);
    model->zener = gw_arena_alloc(arena, joints + 1, sizeof *model->zener);
    model->zener_now = allocate_lanes(arena, joints + 1);
    model->paths = gw_arena_alloc(arena, joints + 4, sizeof *model->paths);
    model->start = gw_arena_alloc(arena, dofs, sizeof *model->start);
    model->base = gw_arena_alloc(arena, dofs, sizeof *model->base);
    model->held = gw_arena_alloc(arena, dofs, sizeof *model->held);
    model->dashed = gw_arena_alloc(arena, dofs, sizeof *model->dashed);
    model->pivot = allocate_lanes(arena, dofs);
    bool ok = model->bodies && model->elements && model->amplitude && model->zener && model->zener_now &&
              model->paths && model->start && model->base && model->held && model->dashed && model->pivot;
    return ok ? GW_OK : gw_fail(err, GW_E_NOMEM, "out of memory while building the ride model");
}

static gw_status allocate_matrices(gw_ride_model *model, gw_arena *arena, gw_error *err)
{
    size_t entries = (size_t)model->n_entries;
    model->mass = gw_arena_alloc(arena, entries, sizeof *model->mass);
    model->fixed = gw_arena_alloc(arena, entries, sizeof *model->fixed);
    model->factor = allocate_lanes(arena, entries);
    model->dash = gw_arena_alloc(arena, entries, sizeof *model->dash);
    model->zener_sum = gw_arena_alloc(arena, (size_t)model->n_zeners * entries + 1, sizeof *model->zener_sum);
    bool ok = model->mass && model->fixed && model->factor && model->dash && model->zener_sum;
    for (int k = 0; ok && k < model->n_elements; k++) {
        gw_ride_element *e = &model->elements[k];
        if (!e->constant) ok = (e->now = gw_arena_alloc(arena, 1, sizeof *e->now)) != NULL;
    }
    return ok ? GW_OK : gw_fail(err, GW_E_NOMEM, "out of memory while building the ride model");
}

/* A measured bush trembles about the force that it carries at S0, without the bracket, which stands in
 * series. */
static void stand_measured(gw_ride_model *model, const gw_corner_ws *ws)
{
    for (int j = 0; j < model->corner->n_joints; j++) {
        gw_joint_result rest = gw_corner_at_rest(ws, j);
        double u[3];
        if (!gw_bush_has_curves(&model->fit[j].law)) continue;
        gw_bush_deflection_under(&model->fit[j].law, rest.f, u);
        model->at_rest[j] = gw_bush_tangent_at(&model->fit[j].law, u, rest.theta);
    }
}

/* Measured bushes and sliders have to know what each joint carries at S0. */
static gw_status stand(gw_ride_model *model, const gw_corner_ws *like, gw_arena *arena, gw_error *err)
{
    gw_corner_ws *ws;
    gw_status st = gw_corner_open_like(model->corner, model->fit, like, &ws, err);
    if (st != GW_OK) return st;
    stand_measured(model, ws);
    st = gw_sliders_find(model, ws, arena, err);
    gw_corner_close(ws);
    return st;
}

static gw_status find_tangents(gw_ride_model *model, const gw_corner_ws *like, gw_arena *arena, gw_error *err)
{
    static const double NOTHING[3] = { 0 };
    size_t joints = (size_t)model->corner->n_joints;
    bool loaded = model->corner->damper.present && model->corner->damper.friction > 0.0;
    model->at_rest = gw_arena_alloc(arena, joints + 1, sizeof *model->at_rest);
    if (!model->at_rest) return gw_fail(err, GW_E_NOMEM, "out of memory while building the ride model");
    for (size_t j = 0; j < joints; j++) {
        const gw_bush_law *law = &model->fit[j].law;
        model->at_rest[j] = gw_bush_tangent_at(law, NOTHING, NOTHING);
        model->amplitude[j] = model->settings->amplitude;
        loaded = loaded || gw_bush_has_curves(law) || law->slider.torque > 0.0 || law->slider.per_force > 0.0;
    }
    return loaded ? stand(model, like, arena, err) : GW_OK;
}

gw_status gw_ride_model_open(gw_ride_model *model, const gw_corner *corner, const gw_fit *fit,
                             const gw_ride *settings, gw_arena *arena, gw_error *err)
{
    return gw_ride_model_open_like(model, corner, fit, settings, NULL, arena, err);
}

gw_status gw_ride_model_open_like(gw_ride_model *model, const gw_corner *corner, const gw_fit *fit,
                                  const gw_ride *settings, const gw_corner_ws *like, gw_arena *arena,
                                  gw_error *err)
{
    gw_status st;
    gw_ride_draw nominal;
    *model = (gw_ride_model){ .corner = corner, .fit = fit, .settings = settings };
    model->n_wheels = gw_is_pair(corner) ? GW_WHEELS : 1;
    model->belt = gw_belt_of(&corner->wheel, 1.0);
    model->belt.on = false;
    if ((st = gw_ride_check(corner, settings, &model->chassis_mass, err)) != GW_OK ||
        (st = allocate_parts(model, arena, err)) != GW_OK)
        return st;
    if ((st = find_tangents(model, like, arena, err)) != GW_OK) return st;
    gw_ride_place_bodies(model);
    for (int j = 0; j < corner->n_joints; j++) add_joint(model, j);
    add_springs(model);
    add_tyre(model, GW_UPRIGHT);
    if (gw_is_pair(corner)) add_tyre(model, corner->right_upright);
    gw_sliders_place(model);
    find_skyline(model);
    if ((st = gw_ride_find_fill(model, arena, err)) != GW_OK) return st;
    if ((st = allocate_matrices(model, arena, err)) != GW_OK) return st;
    add_masses(model);
    if ((st = gw_ride_hold(model, arena, err)) != GW_OK) return st;
    nominal = gw_draw_nominal(settings);
    gw_ride_model_set(model, &nominal);
    return GW_OK;
}

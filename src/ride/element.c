/* SPDX-License-Identifier: MIT */
/* The one-degree springs that the ride model is made of, and their stiffness at a complex frequency. */
#include "ride/model.h"

#include "giveway/units.h"

#include <math.h>

static void add_coefficient(gw_ride_element *e, int dof, double value)
{
    if (dof < 0 || value == 0.0) return;
    for (int i = 0; i < e->n; i++) {
        if (e->dof[i] != dof) continue;
        e->row[i] += value;
        return;
    }
    e->dof[e->n] = dof;
    e->row[e->n++] = value;
}

void gw_element_add_twist(gw_ride_element *e, const gw_ride_body *body, const double twist[6], double sign)
{
    gw_vec3 v = gw_mul_t(&body->basis, gw_v3(twist[0], twist[1], twist[2]));
    gw_vec3 w = gw_mul_t(&body->basis, gw_v3(twist[3], twist[4], twist[5]));
    const double value[6] = { v.x, v.y, v.z, w.x, w.y, w.z };
    for (int i = 0; i < 6; i++)
        add_coefficient(e, body->dof[i], sign * (i < 3 ? 1.0 : body->hand) * value[i]);
}

void gw_element_add_point(gw_ride_element *e, const gw_ride_body *body, gw_vec3 at, gw_vec3 direction,
                          double sign)
{
    /* direction . (v + phi x r) = direction . v + (r x direction) . phi */
    gw_vec3 arm = gw_cross(gw_sub(at, body->datum), direction);
    const double twist[6] = { direction.x, direction.y, direction.z, arm.x, arm.y, arm.z };
    gw_element_add_twist(e, body, twist, sign);
}

/* k / (1 + k soft), k the bush's own. */
static void update_bush(const gw_ride_model *model, gw_ride_element *e)
{
    gw_lanes own = gw_element_own(model, e), soft, below;
    gw_lanes_fill(&soft, e->soft);
    below = gw_lanes_product(&own, &soft);
    for (int i = 0; i < GW_LANES; i++) below.re[i] += 1.0;
    below = gw_lanes_inverse(&below);
    *e->now = gw_lanes_product(&own, &below);
}

void gw_ride_joint_rows(const gw_ride_model *model, int j, gw_ride_element row[6])
{
    const gw_joint *joint = &model->corner->joints[j];
    const gw_ride_body *a = &model->bodies[joint->body_a], *b = &model->bodies[joint->body_b];
    double of_a[6][6], of_b[6][6];
    gw_joint_jacobian(joint, a->datum, of_a);
    gw_joint_jacobian(joint, b->datum, of_b);
    gw_bush_turn_rows(&model->at_rest[j], of_a);
    gw_bush_turn_rows(&model->at_rest[j], of_b);
    for (int i = 0; i < 6; i++) {
        row[i].n = 0;
        gw_element_add_twist(&row[i], a, of_a[i], -1.0);
        gw_element_add_twist(&row[i], b, of_b[i], 1.0);
    }
}

gw_lanes gw_element_own(const gw_ride_model *model, const gw_ride_element *e)
{
    gw_lanes own;
    gw_lanes_fill(&own, e->steady);
    return e->zener >= 0 ? gw_lanes_product(&own, &model->zener_now[e->zener]) : own;
}

/* A bonded bush that turns until its sleeve slips: k p c / (k + p c). */
static void update_wound(const gw_ride_model *model, gw_ride_element *e, const gw_lanes *p,
                         gw_damping_share share)
{
    gw_lanes own = gw_element_own(model, e);
    for (int i = 0; i < GW_LANES; i++) {
        double complex k = gw_lanes_get(&own, i), dash = gw_lanes_get(p, i) * e->slip;
        gw_lanes_put(e->now, i, share * gw_quotient(k * dash, k + dash));
    }
}

/* Dashpot and top mount in series: p c k / (k + p c). */
static double complex damper_stiffness(const gw_ride_element *e, double complex p)
{
    double complex dashpot = p * (e->rate + e->slip);
    return e->series > 0.0 ? gw_quotient(dashpot * e->series, e->series + dashpot) : dashpot;
}

/* Slip with relaxation in series with the inertia of the rolling wheel, multiplied through by p^2. */
static double complex fore_aft_stiffness(const gw_wheel *w, double speed, double complex p)
{
    double c = w->tyre_slip_stiffness, r2 = w->loaded_radius * w->loaded_radius;
    return gw_quotient(p * p, p * p * (w->tyre_relaxation / c) + p * (speed / c) + r2 / w->spin_inertia);
}

double complex gw_tyre_upright(const gw_ride_model *model, double complex p)
{
    const gw_wheel *wheel = &model->corner->wheel;
    return (model->belt.on ? model->belt.below : wheel->tyre_vertical) + p * wheel->tyre_damping;
}

double complex gw_tyre_along(const gw_ride_model *model, double complex p)
{
    const gw_wheel *w = &model->corner->wheel;
    bool slips = w->tyre_slip_stiffness > 0.0 && w->tyre_relaxation > 0.0 && w->spin_inertia > 0.0;
    return slips ? fore_aft_stiffness(w, model->settings->speed, p) : 0.0;
}

void gw_ride_model_belt(gw_ride_model *model, bool on)
{
    model->belt.on = on && model->belt.mass > 0.0;
}

static double complex fore_aft_slope(const gw_wheel *w, double speed, double complex p)
{
    double c = w->tyre_slip_stiffness, r2 = w->loaded_radius * w->loaded_radius;
    double complex below = p * p * (w->tyre_relaxation / c) + p * (speed / c) + r2 / w->spin_inertia;
    return gw_quotient(2.0 * p * below - p * p * (2.0 * p * (w->tyre_relaxation / c) + speed / c),
                       below * below);
}

/* Everything that is not in Re(K) with brackets and tyre spring comes in with its share. */
static double complex point_stiffness(const gw_ride_model *model, const gw_ride_element *e, double complex p,
                                      gw_damping_share share)
{
    const gw_wheel *wheel = &model->corner->wheel;
    switch (e->kind) {
    case GW_ELEMENT_DAMPER:
        return share * damper_stiffness(e, p);
    case GW_ELEMENT_TYRE_VERTICAL:
        if (model->belt.on) return gw_belt_stiffness(&model->belt, gw_tyre_upright(model, p), p);
        return e->rate + share * p * wheel->tyre_damping;
    case GW_ELEMENT_TYRE_FORE_AFT:
        if (model->belt.on) return gw_belt_stiffness(&model->belt, gw_tyre_along(model, p), p);
        return share * gw_tyre_along(model, p);
    case GW_ELEMENT_BUSH:
    case GW_ELEMENT_WOUND:
    case GW_ELEMENT_SPRING:
        break;
    }
    return e->k;
}

void gw_element_update(gw_ride_model *model, gw_ride_element *e, const gw_lanes *p, gw_damping_share share)
{
    if (e->kind == GW_ELEMENT_BUSH) {
        update_bush(model, e);
        for (int i = 0; i < GW_LANES; i++) e->now->im[i] *= share;
        return;
    }
    if (e->kind == GW_ELEMENT_WOUND) {
        update_wound(model, e, p, share);
        return;
    }
    for (int i = 0; i < GW_LANES; i++)
        gw_lanes_put(e->now, i, point_stiffness(model, e, gw_lanes_get(p, i), share));
}

static double complex point_slope(const gw_ride_model *model, const gw_ride_element *e, double complex p,
                                  double complex own)
{
    const gw_wheel *wheel = &model->corner->wheel;
    double complex part = 1.0;
    switch (e->kind) {
    case GW_ELEMENT_DAMPER:
        if (e->series > 0.0) part = gw_quotient(e->series, e->series + p * (e->rate + e->slip));
        return (e->rate + e->slip) * part * part;
    case GW_ELEMENT_WOUND:
        part = gw_quotient(own, own + p * e->slip);
        return e->slip * part * part;
    case GW_ELEMENT_TYRE_VERTICAL:
        return wheel->tyre_damping;
    case GW_ELEMENT_TYRE_FORE_AFT:
        if (wheel->tyre_slip_stiffness > 0.0 && wheel->tyre_relaxation > 0.0 && wheel->spin_inertia > 0.0)
            return fore_aft_slope(wheel, model->settings->speed, p);
        break;
    case GW_ELEMENT_BUSH:
    case GW_ELEMENT_SPRING:
        break;
    }
    return 0.0;
}

void gw_element_slope(const gw_ride_model *model, const gw_ride_element *e, const gw_lanes *p,
                      gw_damping_share share, gw_lanes *out)
{
    gw_lanes own = *p;
    if (e->kind == GW_ELEMENT_WOUND) own = gw_element_own(model, e);
    for (int i = 0; i < GW_LANES; i++)
        gw_lanes_put(out, i, share * point_slope(model, e, gw_lanes_get(p, i), gw_lanes_get(&own, i)));
}

gw_lanes gw_element_deflection(const gw_ride_element *e, const gw_lanes *x)
{
    gw_lanes sum;
    gw_lanes_fill(&sum, 0.0);
    for (int i = 0; i < e->n; i++) gw_lanes_axpy(&sum, e->row[i], &x[e->dof[i]]);
    return sum;
}

gw_lanes gw_element_stiffness(const gw_ride_model *model, const gw_ride_element *e)
{
    gw_lanes k;
    if (!e->constant && !e->pure) return *e->now;
    if (e->pure) return gw_element_own(model, e);
    gw_lanes_fill(&k, e->k);
    return k;
}

gw_lanes gw_element_force(const gw_ride_model *model, const gw_ride_element *e, const gw_lanes *x)
{
    gw_lanes deflection = gw_element_deflection(e, x), k = gw_element_stiffness(model, e);
    return gw_lanes_product(&k, &deflection);
}

/* SPDX-License-Identifier: MIT */
/*
 * Motions that nothing resists: a link with ball joints at both ends spins about itself without any
 * effect. Its mass lies on the line, so D would be singular there; such a motion is held.
 */
#include "ride/model.h"
#include "ride/slider.h"

#include <math.h>
#include <string.h>

static bool on_body(const gw_joint *joint, int body)
{
    return joint->body_a == body || joint->body_b == body;
}

/* Line through the joints of a member; false where they are not on one line. */
static bool joint_line(const gw_corner *corner, int body, gw_vec3 *origin, gw_vec3 *axis)
{
    const double tolerance = 1e-6; /* [m] */
    const gw_joint *first = NULL;
    double longest = 0.0;
    for (int j = 0; j < corner->n_joints; j++) {
        if (!on_body(&corner->joints[j], body)) continue;
        if (!first) first = &corner->joints[j];
        gw_vec3 arm = gw_sub(corner->joints[j].at, first->at);
        if (gw_norm(arm) <= longest) continue;
        longest = gw_norm(arm);
        *axis = gw_scale(1.0 / longest, arm);
    }
    if (!first || longest < tolerance) return false;
    *origin = first->at;
    for (int j = 0; j < corner->n_joints; j++) {
        if (!on_body(&corner->joints[j], body)) continue;
        if (gw_norm(gw_cross(*axis, gw_sub(corner->joints[j].at, *origin))) > tolerance) return false;
    }
    return true;
}

/* Does the joint resist a turn about `axis`, by its rates or by a slider? */
static bool resists(const gw_ride_model *model, int j, gw_vec3 axis)
{
    const gw_slider *slider = &model->fit[j].law.slider;
    bool slides = gw_ride_slides(model, j);
    for (int i = 0; i < 3; i++) {
        bool stiff = model->fit[j].law.c[i] > 0.0, dashed = slides && (i == 2 || slider->all_axes);
        if ((stiff || dashed) && fabs(gw_dot(gw_col(&model->corner->joints[j].frame, i), axis)) > 1e-6)
            return true;
    }
    return false;
}

bool gw_ride_free_spin(const gw_ride_model *model, int body, gw_vec3 *axis)
{
    gw_vec3 origin;
    if (!joint_line(model->corner, body, &origin, axis)) return false;
    for (int j = 0; j < model->corner->n_joints; j++)
        if (on_body(&model->corner->joints[j], body) && resists(model, j, *axis)) return false;
    return true;
}

static void add_unit(const gw_ride_element *e, int n, double *a)
{
    for (int i = 0; i < e->n; i++)
        for (int j = 0; j < e->n; j++)
            if (e->dof[i] < n && e->dof[j] <= e->dof[i])
                a[e->dof[i] * n + e->dof[j]] += e->row[i] * e->row[j];
}

/* Sum of b b^T over all elements and masses, each with a row of unit size: only directions count. */
static void unit_matrix(const gw_ride_model *model, int n, double *a)
{
    double heaviest = 0.0;
    for (int r = 0; r < n; r++) heaviest = fmax(heaviest, model->mass[model->base[r] + r]);
    for (int r = 0; r < n; r++)
        for (int c = model->start[r]; c <= r; c++)
            if (heaviest > 0.0) a[r * n + c] = model->mass[model->base[r] + c] / heaviest;
    for (int k = 0; k < model->n_elements; k++)
        if (model->elements[k].kind != GW_ELEMENT_WOUND) add_unit(&model->elements[k], n, a);
}

/* The sliders besides. */
static void add_sliders(const gw_ride_model *model, int n, double *a)
{
    for (int s = 0; s < model->n_sliders; s++)
        for (int i = 0; i < model->sliders[s].n_rows; i++) add_unit(&model->sliders[s].row[i], n, a);
}

static double *entry(double *a, int n, int r, int c)
{
    return r >= c ? &a[r * n + c] : &a[c * n + r];
}

/* Of those left, the largest on the diagonal; `late` ones only when all others are through. */
static int largest_left(const double *a, int n, const bool *late, const bool *held)
{
    int pivot = -1;
    for (int r = 0; r < n; r++) {
        if (!held[r]) continue;
        bool later = late && pivot >= 0 && late[r] && !late[pivot];
        bool sooner = late && pivot >= 0 && !late[r] && late[pivot];
        if (pivot < 0 || sooner || (!later && a[r * n + r] > a[pivot * n + pivot])) pivot = r;
    }
    return pivot;
}

/*
 * Cholesky with complete pivoting. Where it stops for want of a pivot, the coordinates left over are
 * as many as there are free motions, and holding just those takes every free motion away.
 */
static void mark_left_over(double *a, int n, const bool *late, bool *held)
{
    double largest = 0.0;
    for (int r = 0; r < n; r++) {
        held[r] = true;
        largest = fmax(largest, a[r * n + r]);
    }
    for (int step = 0; step < n; step++) {
        int pivot = largest_left(a, n, late, held);
        double d = a[pivot * n + pivot];
        if (!(d > 1e-11 * largest)) return;
        held[pivot] = false;
        for (int r = 0; r < n; r++) {
            if (!held[r]) continue;
            double factor = *entry(a, n, r, pivot) / d;
            for (int c = 0; c <= r; c++)
                if (held[c]) a[r * n + c] -= factor * *entry(a, n, c, pivot);
        }
    }
}

/* First without sliders, then with them; what they free is then among what was held without them. */
gw_status gw_ride_hold(gw_ride_model *model, gw_arena *arena, gw_error *err)
{
    int n = model->chassis_x; /* members only: chassis and upright have mass every way */
    if (n == 0) return GW_OK;
    double *a = gw_arena_alloc(arena, (size_t)n * (size_t)n, sizeof *a);
    if (!a) return gw_fail(err, GW_E_NOMEM, "out of memory while building the ride model");
    unit_matrix(model, n, a);
    mark_left_over(a, n, NULL, model->held);
    if (model->n_sliders == 0) return GW_OK;
    memcpy(model->dashed, model->held, (size_t)n * sizeof *model->dashed);
    memset(a, 0, (size_t)n * (size_t)n * sizeof *a);
    unit_matrix(model, n, a);
    add_sliders(model, n, a);
    mark_left_over(a, n, model->dashed, model->held);
    for (int r = 0; r < n; r++) model->dashed[r] = model->dashed[r] && !model->held[r];
    return GW_OK;
}

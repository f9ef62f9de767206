/* SPDX-License-Identifier: MIT */
/*
 * Where the bodies have their coordinates in the ride model, of one wheel and of both wheels of an axle.
 *
 * The wheels of an axle meet the same road, so an axle that is its own mirror image moves as one: the right
 * side's bodies move on the coordinates of the left side's, mirrored, and what both share moves fore and aft,
 * up and down, and pitches. That is the whole model on fewer coordinates, not half of it: both sides' springs
 * and masses are in it. An axle with a Panhard rod, or with another bush on one side, has all of its
 * coordinates.
 */
#include "ride/model.h"

#include <math.h>
#include <string.h>

static gw_mat3 basis_along(gw_vec3 axis)
{
    gw_vec3 least = fabs(axis.x) < 0.6 ? gw_v3(1, 0, 0) : gw_v3(0, 1, 0);
    gw_vec3 second = gw_axpy(least, -gw_dot(least, axis), axis);
    second = gw_scale(1.0 / gw_norm(second), second);
    return gw_mat3_from_columns(axis, second, gw_cross(axis, second));
}

static void place_member(gw_ride_model *model, int body, int *next)
{
    const gw_corner *corner = model->corner;
    gw_ride_body *out = &model->bodies[body];
    gw_vec3 axis;
    bool spins = gw_ride_free_spin(model, body, &axis);
    out->hand = 1.0;
    out->basis = spins ? basis_along(axis) : gw_mat3_identity();
    for (int j = corner->n_joints - 1; j >= 0; j--)
        if (corner->joints[j].body_a == body || corner->joints[j].body_b == body)
            out->datum = corner->joints[j].at;
    for (int i = 0; i < 6; i++) out->dof[i] = spins && i == 3 ? -1 : (*next)++;
}

static void place_upright(gw_ride_model *model, int body, gw_vec3 centre, int *next)
{
    gw_ride_body *upright = &model->bodies[body];
    *upright = (gw_ride_body){ .basis = gw_mat3_identity(), .datum = centre, .hand = 1.0 };
    for (int i = 0; i < 6; i++) upright->dof[i] = (*next)++;
}

/* A law is copied whole from the bush's, so the same bush on both sides is the same bytes. */
static bool sides_alike(const gw_corner *corner, const gw_fit *fit)
{
    for (int j = 0; j < corner->n_joints; j++)
        if (memcmp(&fit[j].law, &fit[corner->joints[j].twin].law, sizeof fit[j].law) != 0) return false;
    return !corner->lopsided;
}

static gw_vec3 in_mirror(gw_vec3 v)
{
    return gw_v3(v.x, -v.y, v.z);
}

static void place_image(gw_ride_model *model, int left, int right)
{
    const gw_ride_body *of = &model->bodies[left];
    gw_ride_body *out = &model->bodies[right];
    *out = *of;
    out->hand = -1.0;
    out->datum = in_mirror(of->datum);
    for (int j = 0; j < 3; j++) out->basis.m[1][j] = -of->basis.m[1][j];
}

static void place_right_members(gw_ride_model *model, int *next)
{
    const gw_corner *c = model->corner;
    for (int b = GW_UPRIGHT + 1; b < c->first_shared; b++) {
        int right = c->right_upright + b - GW_UPRIGHT;
        if (model->alike)
            place_image(model, b, right);
        else
            place_member(model, right, next);
    }
}

/* On its own coordinates all six, along vehicle axes, so that those that the mirror forbids can be left out.
 */
static void place_symmetric(gw_ride_model *model, int body, int *next)
{
    gw_ride_body *out = &model->bodies[body];
    gw_vec3 axis;
    bool spins = gw_ride_free_spin(model, body, &axis) && fabs(axis.y) > 0.5;
    place_member(model, body, &(int){ 0 });
    out->basis = gw_mat3_identity();
    out->datum.y = 0.0;
    for (int i = 0; i < 6; i++) {
        bool moves = i == 0 || i == 2 || (i == 4 && !spins);
        out->dof[i] = moves ? (*next)++ : -1;
    }
}

static void place_shared(gw_ride_model *model, int *next)
{
    const gw_corner *c = model->corner;
    for (int b = c->first_shared; b < c->right_upright; b++)
        if (model->alike)
            place_symmetric(model, b, next);
        else
            place_member(model, b, next);
}

static void place_right_upright(gw_ride_model *model, int *next)
{
    const gw_corner *c = model->corner;
    model->right_wheel = model->alike ? model->wheel : *next;
    if (model->alike)
        place_image(model, GW_UPRIGHT, c->right_upright);
    else
        place_upright(model, c->right_upright, in_mirror(c->wheel.centre), next);
}

/* Members first, then chassis and upright: the order in which D is condensed. */
void gw_ride_place_bodies(gw_ride_model *model)
{
    const gw_corner *corner = model->corner;
    model->alike = gw_is_pair(corner) && sides_alike(corner, model->fit);
    int next = 0, own = gw_is_pair(corner) ? corner->first_shared : corner->n_bodies;
    for (int b = GW_UPRIGHT + 1; b < own; b++) place_member(model, b, &next);
    if (gw_is_pair(corner)) place_right_members(model, &next);
    if (gw_is_pair(corner)) place_shared(model, &next);
    gw_ride_body *chassis = &model->bodies[GW_CHASSIS];
    *chassis = (gw_ride_body){ .basis = gw_mat3_identity(), .datum = corner->wheel.centre, .hand = 1.0 };
    for (int i = 0; i < 6; i++) chassis->dof[i] = -1;
    model->chassis_x = chassis->dof[0] = next++;
    model->chassis_z = chassis->dof[2] = next++;
    model->wheel = next;
    place_upright(model, GW_UPRIGHT, corner->wheel.centre, &next);
    if (gw_is_pair(corner)) place_right_upright(model, &next);
    model->n = next;
}

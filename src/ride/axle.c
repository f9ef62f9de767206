/* SPDX-License-Identifier: MIT */
/*
 * Both wheels of an axle in the ride model.
 *
 * They meet the same road, so an axle that is its own mirror image moves as one: the right side's bodies move
 * on the coordinates of the left side's, mirrored, and what both share moves fore and aft, up and down, and
 * pitches. That is the whole model on fewer coordinates, not half of it: both sides' springs and masses are
 * in it. An axle with a Panhard rod, or with another bush on one side, has all of its coordinates.
 */
#include "ride/model.h"

#include <string.h>

/* A law is copied whole from the bush's, so the same bush on both sides is the same bytes. */
bool gw_ride_sides_alike(const gw_corner *corner, const gw_fit *fit)
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

void gw_ride_place_right_members(gw_ride_model *model, int *next)
{
    const gw_corner *c = model->corner;
    for (int b = GW_UPRIGHT + 1; b < c->first_shared; b++) {
        int right = c->right_upright + b - GW_UPRIGHT;
        if (model->alike)
            place_image(model, b, right);
        else
            gw_ride_place_member(model, right, next);
    }
}

/* On its own coordinates all six, along vehicle axes, so that those that the mirror forbids can be left out.
 */
static void place_symmetric(gw_ride_model *model, int body, int *next)
{
    gw_ride_body *out = &model->bodies[body];
    gw_vec3 axis;
    bool spins = gw_ride_free_spin(model->corner, model->fit, body, &axis) && fabs(axis.y) > 0.5;
    gw_ride_place_member(model, body, &(int){ 0 });
    out->basis = gw_mat3_identity();
    out->datum.y = 0.0;
    for (int i = 0; i < 6; i++) {
        bool moves = i == 0 || i == 2 || (i == 4 && !spins);
        out->dof[i] = moves ? (*next)++ : -1;
    }
}

void gw_ride_place_shared(gw_ride_model *model, int *next)
{
    const gw_corner *c = model->corner;
    for (int b = c->first_shared; b < c->right_upright; b++)
        if (model->alike)
            place_symmetric(model, b, next);
        else
            gw_ride_place_member(model, b, next);
}

void gw_ride_place_right_upright(gw_ride_model *model, int *next)
{
    const gw_corner *c = model->corner;
    model->right_wheel = model->alike ? model->wheel : *next;
    if (model->alike)
        place_image(model, GW_UPRIGHT, c->right_upright);
    else
        gw_ride_place_upright(model, c->right_upright, in_mirror(c->wheel.centre), next);
}

/* SPDX-License-Identifier: MIT */
/* What adjusters do to the points of a corner, and the marks that a fitter needs. */
#include "giveway/align.h"
#include "giveway/units.h"

int gw_adjuster_axes(const gw_adjuster *adjuster)
{
    return adjuster->kind == GW_ADJUST_OFFSET ? 2 : 1;
}

gw_vec3 gw_offset_vector(const gw_joint *joint, const gw_move *move)
{
    return gw_add(gw_scale(move->along[0], gw_col(&joint->frame, 0)),
                  gw_scale(move->along[1], gw_col(&joint->frame, 1)));
}

double gw_offset_size(const gw_move *move)
{
    return hypot(move->along[0], move->along[1]);
}

static double full_turn(double angle)
{
    double a = fmod(angle, 2.0 * GW_PI);
    return a < 0.0 ? a + 2.0 * GW_PI : a;
}

double gw_offset_clock(const gw_move *move)
{
    return full_turn(atan2(move->along[1], move->along[0]));
}

bool gw_kit_offset(const gw_case *c, int kit, gw_axle axle, const gw_adjuster *adjuster, gw_move *out)
{
    if (adjuster->kind != GW_ADJUST_OFFSET) return false;
    const gw_bush *bush = &c->bushes[c->kits[kit].fits[axle][adjuster->joint]];
    if (!(bush->offset > 0.0)) return false;
    *out = (gw_move){ { bush->offset * cos(bush->offset_clock), bush->offset * sin(bush->offset_clock) } };
    return true;
}

static void move_point(const gw_joint *joint, int body, gw_vec3 by, gw_fit *fit)
{
    gw_vec3 *point = joint->body_a == body ? &fit->point_a : &fit->point_b;
    *point = gw_add(*point, by);
}

/* Each end by half, away from the other, along the line between the design points. */
static void stretch(const gw_corner *corner, int member, double by, gw_fit *fit)
{
    int end[2] = { -1, -1 }, n = 0;
    for (int j = 0; j < corner->n_joints && n < 2; j++)
        if (corner->joints[j].body_a == member || corner->joints[j].body_b == member) end[n++] = j;
    if (n < 2) return;
    gw_vec3 line = gw_sub(corner->joints[end[1]].at, corner->joints[end[0]].at);
    gw_vec3 half = gw_scale(0.5 * by / gw_norm(line), line);
    move_point(&corner->joints[end[0]], member, gw_scale(-1.0, half), &fit[end[0]]);
    move_point(&corner->joints[end[1]], member, half, &fit[end[1]]);
}

static void apply_at(const gw_corner *corner, const gw_adjuster *adjuster, int j, gw_vec3 along,
                     const gw_move *move, gw_fit *fit)
{
    const gw_joint *joint = &corner->joints[j];
    if (adjuster->kind == GW_ADJUST_OFFSET)
        move_point(joint, joint->housing, gw_offset_vector(joint, move), &fit[j]);
    else
        move_point(joint, GW_CHASSIS, gw_scale(move->along[0], along), &fit[j]);
}

/* Both sides of an axle move alike: the frame of a mirrored joint is the mirror image, and so is its offset.
 */
void gw_adjuster_apply(const gw_corner *corner, const gw_adjuster *adjuster, const gw_move *move, gw_fit *fit)
{
    if (adjuster->kind == GW_ADJUST_LENGTH) {
        int right = corner->right_upright + adjuster->body - GW_UPRIGHT;
        stretch(corner, adjuster->body, move->along[0], fit);
        if (gw_is_pair(corner) && adjuster->body < corner->first_shared)
            stretch(corner, right, move->along[0], fit);
        return;
    }
    /* Offset bolts and shims sit at a joint. */
    int j = adjuster->joint, twin = gw_is_pair(corner) ? corner->joints[j].twin : j;
    gw_vec3 along = adjuster->along;
    apply_at(corner, adjuster, j, along, move, fit);
    along.y = -along.y;
    if (twin != j) apply_at(corner, adjuster, twin, along, move, fit);
}

/*
 * The eye looks along the bush's axis: rearward from the front of the car, inboard from beside the wheel, or
 * down from above, whichever is nearest to it. `up` is made square to the axis.
 */
gw_mark gw_mark_of(const gw_joint *joint, gw_vec3 offset)
{
    static const gw_vec3 LOOK[] = { { -1, 0, 0 }, { 0, -1, 0 }, { 0, 0, -1 } }; /* in the order of gw_view */
    static const gw_vec3 UP[] = { { 0, 0, 1 }, { 0, 0, 1 }, { 1, 0, 0 } };
    gw_vec3 axis = gw_col(&joint->frame, 2);
    gw_mark mark = { GW_VIEW_FRONT, 0, 0 };
    for (gw_view v = GW_VIEW_OUTBOARD; v <= GW_VIEW_ABOVE; v++)
        if (fabs(gw_dot(axis, LOOK[v])) > fabs(gw_dot(axis, LOOK[mark.view])) + 1e-9) mark.view = v;
    if (gw_dot(axis, LOOK[mark.view]) < 0.0) axis = gw_scale(-1.0, axis);
    gw_vec3 up = gw_axpy(UP[mark.view], -gw_dot(UP[mark.view], axis), axis);
    gw_vec3 clockwise = gw_cross(axis, up); /* a quarter turn on, to the right of the eye */
    mark.left = full_turn(atan2(gw_dot(offset, clockwise), gw_dot(offset, up)));
    mark.right = full_turn(-mark.left);
    return mark;
}

gw_bore gw_bore_of(const gw_joint *joint, const gw_move *move)
{
    return (gw_bore){ gw_offset_size(move), gw_offset_clock(move),
                      gw_mark_of(joint, gw_offset_vector(joint, move)) };
}

/* SPDX-License-Identifier: MIT */
/*
 * Both corners of an axle as one: the left one as it is written, its mirror image, and what they share.
 *
 * A mirrored bush has a mirrored, so left-handed, frame: what is told in it is what the left bush would tell
 * in mirrored axes.
 */
#include "giveway/pair.h"

#include <string.h>

/* The body that takes the place of `body` in the mirror. */
static int other_body(const gw_corner *pair, int body)
{
    int own = pair->first_shared, right = pair->right_upright;
    if (body <= GW_CHASSIS) return body;
    if (body < own) return right + body - GW_UPRIGHT;
    return body < right ? body : body - right + GW_UPRIGHT;
}

int gw_body_in_mirror(const gw_corner *left, int body)
{
    const gw_corner pair = { .first_shared = left->first_shared, .right_upright = left->n_bodies };
    return other_body(&pair, body);
}

bool gw_body_leads_across(const gw_corner *corner, int body)
{
    if (!gw_is_pair(corner) || gw_body_side(corner, body) != GW_LEFT_WHEEL) return false;
    const int right = other_body(corner, body);
    for (int j = 0; j < corner->n_joints; j++) {
        const gw_joint *joint = &corner->joints[j];
        if (joint->body_a == body && joint->body_b == right) return true;
        if (joint->body_b == body && joint->body_a == right) return true;
    }
    return false;
}

static gw_vec3 in_mirror(gw_vec3 p)
{
    return gw_v3(p.x, -p.y, p.z);
}

static gw_joint mirrored_joint(const gw_corner *pair, const gw_joint *joint)
{
    gw_joint m = *joint;
    m.body_a = other_body(pair, joint->body_a);
    m.body_b = other_body(pair, joint->body_b);
    m.housing = other_body(pair, joint->housing);
    m.at = in_mirror(joint->at);
    for (int j = 0; j < 3; j++) m.frame.m[1][j] = -m.frame.m[1][j];
    m.mirrored = true;
    return m;
}

static const char *sided(gw_arena *arena, const char *side, const char *name)
{
    size_t n = strlen(side) + strlen(name) + 1;
    char *text = gw_arena_alloc(arena, n, 1);
    if (!text) return NULL;
    memcpy(text, side, strlen(side));
    memcpy(text + strlen(side), name, strlen(name) + 1);
    return text;
}

static bool copy_bodies(const gw_corner *left, gw_arena *arena, gw_corner *out)
{
    int own = left->first_shared;
    out->bodies = gw_arena_alloc(arena, (size_t)out->n_bodies, sizeof *out->bodies);
    if (!out->bodies) return false;
    for (int b = 0; b < left->n_bodies; b++) {
        bool sides = b >= GW_UPRIGHT && b < own;
        out->bodies[b] = left->bodies[b];
        out->bodies[b].plain = left->bodies[b].name;
        if (!sides) continue;
        gw_body *right = &out->bodies[other_body(out, b)];
        *right = out->bodies[b];
        out->bodies[b].name = sided(arena, "left.", left->bodies[b].name);
        right->name = sided(arena, "right.", left->bodies[b].name);
        if (!out->bodies[b].name || !right->name) return false;
    }
    return true;
}

static bool put_pair(gw_corner *out, gw_arena *arena, const gw_joint *joint, int left, int right)
{
    gw_joint *l = &out->joints[left], *r = &out->joints[right];
    const char *plain = joint->name ? joint->name : "";
    *l = *joint;
    l->plain = joint->name;
    l->twin = right;
    *r = mirrored_joint(out, l);
    r->twin = left;
    l->name = sided(arena, "left.", plain);
    r->name = sided(arena, "right.", plain);
    return l->name && r->name;
}

static bool put_joints(const gw_corner *left, const gw_axle_joint *more, int n_more, gw_arena *arena,
                       gw_corner *out)
{
    int n = left->n_joints, at = 2 * n;
    out->joints = gw_arena_alloc(arena, (size_t)out->n_joints + 1, sizeof *out->joints);
    if (!out->joints) return false;
    for (int j = 0; j < n; j++)
        if (!put_pair(out, arena, &left->joints[j], j, n + j)) return false;
    for (int i = 0; i < n_more; i++) {
        const gw_joint *joint = &more[i].joint;
        const gw_wheel_side a = gw_body_side(out, joint->body_a), b = gw_body_side(out, joint->body_b);
        if (a != b && a != GW_WHEELS && b != GW_WHEELS) out->has_bar = true;
        if (more[i].doubled) {
            if (!put_pair(out, arena, joint, at, at + 1)) return false;
            at += 2;
            continue;
        }
        out->joints[at] = *joint;
        out->joints[at].plain = joint->name;
        out->joints[at].twin = at;
        out->lopsided = out->lopsided || more[i].alone;
        at++;
    }
    return true;
}

gw_status gw_corner_pair(const gw_corner *left, const gw_axle_joint *more, int n_more, gw_arena *arena,
                         gw_corner *out, gw_error *err)
{
    gw_corner pair = *left;
    int own = left->first_shared - GW_UPRIGHT;
    pair.n_wheels = 2;
    pair.right_upright = left->n_bodies;
    pair.n_bodies = left->n_bodies + own;
    pair.n_left = left->n_joints;
    pair.n_joints = 2 * left->n_joints;
    for (int i = 0; i < n_more; i++) pair.n_joints += more[i].doubled ? 2 : 1;
    if (pair.n_bodies > GW_MAX_BODIES || pair.n_joints > GW_MAX_JOINTS)
        return gw_fail(err, GW_E_RANGE, "the %s axle has more than %d bodies or %d joints", left->name,
                       GW_MAX_BODIES, GW_MAX_JOINTS);
    if (!copy_bodies(left, arena, &pair) || !put_joints(left, more, n_more, arena, &pair))
        return gw_fail(err, GW_E_NOMEM, "out of memory for the %s axle", left->name);
    pair.right_spring = left->spring;
    pair.right_spring.body = other_body(&pair, left->spring.body);
    pair.right_spring.at = in_mirror(left->spring.at);
    pair.right_spring.to = in_mirror(left->spring.to);
    pair.right_damper = left->damper;
    pair.right_damper.body = other_body(&pair, left->damper.body);
    pair.right_damper.at = in_mirror(left->damper.at);
    pair.right_damper.to = in_mirror(left->damper.to);
    *out = pair;
    return GW_OK;
}

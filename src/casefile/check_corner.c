/* SPDX-License-Identifier: MIT */
/* Faults that no single key shows: what hangs on nothing, and links without length. */
#include "casefile/corner_reader.h"

static void check_members_used(const gw_corner_reader *r, const int *joints_of)
{
    for (int b = GW_UPRIGHT + 1; b < r->corner->n_bodies; b++) {
        gw_node at = { NULL, &r->members_node, r->corner->bodies[b].name, 0 };
        if (joints_of[b] == 0)
            gw_fault(&r->cr->rd, &at, "no joint names this member: join it, or take it out");
    }
    if (joints_of[GW_UPRIGHT] == 0)
        gw_fault(&r->cr->rd, &r->joints_node,
                 "expected a joint that names the upright: nothing holds the wheel");
}

/* Which bodies a chain of joints ties to the chassis: spread from it until nothing changes. */
static void spread(const gw_corner *corner, bool *held)
{
    held[GW_CHASSIS] = true;
    for (bool again = true; again;) {
        again = false;
        for (int j = 0; j < corner->n_joints; j++) {
            int a = corner->joints[j].body_a, b = corner->joints[j].body_b;
            if (a < 0 || b < 0 || held[a] == held[b]) continue;
            held[a] = held[b] = again = true;
        }
    }
}

static void check_held(const gw_corner_reader *r, const int *joints_of)
{
    bool held[GW_MAX_BODIES] = { false };
    spread(r->corner, held);
    for (int b = GW_UPRIGHT; b < r->corner->n_bodies; b++) {
        gw_node member = { NULL, &r->members_node, r->corner->bodies[b].name, 0 };
        const gw_node *at = b == GW_UPRIGHT ? &r->joints_node : &member;
        if (joints_of[b] > 0 && !held[b])
            gw_fault(&r->cr->rd, at, "no chain of joints leads from \"%s\" to the chassis: it would fall off",
                     r->corner->bodies[b].name);
    }
}

/* A member whose joints are all at one place carries nothing from one to the other. */
static void check_length(const gw_corner_reader *r, int body)
{
    const gw_corner *corner = r->corner;
    int first = -1, n = 0;
    for (int j = 0; j < corner->n_joints; j++) {
        const gw_joint *joint = &corner->joints[j];
        if (joint->body_a != body && joint->body_b != body) continue;
        if (!r->placed[j]) return;
        if (first < 0) first = j;
        if (gw_norm(gw_sub(joint->at, corner->joints[first].at)) >= GW_COINCIDENT) return;
        n++;
    }
    gw_node at = { NULL, &r->members_node, corner->bodies[body].name, 0 };
    if (n >= 2)
        gw_fault(&r->cr->rd, &at,
                 "its %d joints are all at the same place: a link needs length, so move one of them", n);
}

void gw_check_corner(gw_corner_reader *r)
{
    const gw_corner *corner = r->corner;
    int joints_of[GW_MAX_BODIES] = { 0 };
    if (!r->placed) return; /* without joints there is nothing to add */
    for (int j = 0; j < corner->n_joints; j++) {
        if (corner->joints[j].body_a >= 0) joints_of[corner->joints[j].body_a]++;
        if (corner->joints[j].body_b >= 0) joints_of[corner->joints[j].body_b]++;
    }
    check_members_used(r, joints_of);
    check_held(r, joints_of);
    for (int b = GW_UPRIGHT + 1; b < corner->n_bodies; b++) check_length(r, b);
}

/* SPDX-License-Identifier: MIT */
/* Faults that no single key shows: what hangs on nothing, and links without length. */
#include "casefile/corner_reader.h"

/* A corner alone, or with all that it shares: `places` says of each joint whether its place is known. */
typedef struct gw_whole {
    const gw_corner_reader *r, *axle;
    const gw_corner *corner;
    const bool *places;
} gw_whole;

/* Where to report: under the corner's members or the axle's. */
static gw_node member_node(const gw_whole *w, int body)
{
    bool shared = body >= w->corner->first_shared && body < w->corner->first_shared + w->corner->n_shared;
    return (gw_node){ NULL, shared ? &w->axle->members_node : &w->r->members_node,
                      gw_body_as_written(w->corner, body), 0 };
}

/* The right side is the left one's image: what is wrong with it has been said. */
static int last_told(const gw_corner *corner)
{
    return gw_is_pair(corner) ? corner->right_upright : corner->n_bodies;
}

static void check_members_used(const gw_whole *w, const int *joints_of)
{
    for (int b = GW_UPRIGHT + 1; b < last_told(w->corner); b++) {
        gw_node at = member_node(w, b);
        if (joints_of[b] == 0)
            gw_fault(&w->r->cr->rd, &at, "no joint names this member: join it, or take it out");
    }
    if (joints_of[GW_UPRIGHT] == 0)
        gw_fault(&w->r->cr->rd, &w->r->joints_node,
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

static void check_held(const gw_whole *w, const int *joints_of)
{
    bool held[GW_MAX_BODIES] = { false };
    spread(w->corner, held);
    for (int b = GW_UPRIGHT; b < last_told(w->corner); b++) {
        gw_node member = member_node(w, b);
        const gw_node *at = b == GW_UPRIGHT ? &w->r->joints_node : &member;
        if (joints_of[b] > 0 && !held[b])
            gw_fault(&w->r->cr->rd, at,
                     "no chain of joints leads from \"%s\" to the chassis: it would fall off",
                     gw_body_as_written(w->corner, b));
    }
}

/* A member whose joints are all at one place carries nothing from one to the other. */
static void check_length(const gw_whole *w, int body)
{
    const gw_corner *corner = w->corner;
    int first = -1, n = 0;
    for (int j = 0; j < corner->n_joints; j++) {
        const gw_joint *joint = &corner->joints[j];
        if (joint->body_a != body && joint->body_b != body) continue;
        if (!w->places[j]) return;
        if (first < 0) first = j;
        if (gw_norm(gw_sub(joint->at, corner->joints[first].at)) >= GW_COINCIDENT) return;
        n++;
    }
    gw_node at = member_node(w, body);
    if (n >= 2)
        gw_fault(&w->r->cr->rd, &at,
                 "its %d joints are all at the same place: a link needs length, so move one of them", n);
}

/* Left joints, right ones alike, then those of the axle, where a doubled one counts twice. */
static void gather_places(const gw_corner_reader *r, const gw_corner_reader *axle, bool *places)
{
    int n = gw_is_pair(r->corner) ? r->corner->n_left : r->corner->n_joints, at = 2 * n;
    for (int j = 0; j < n; j++) places[j] = places[n + j] = r->placed[j];
    for (int i = 0; i < axle->n_more; i++) {
        places[at++] = axle->placed[i];
        if (axle->more[i].doubled) places[at++] = axle->placed[i];
    }
}

void gw_check_corner(gw_corner_reader *r, const gw_corner_reader *axle)
{
    const gw_corner *corner = r->corner;
    bool places[GW_MAX_JOINTS + 2 * GW_CORNER_JOINTS] = { false };
    const gw_whole whole = { r, axle, corner, places };
    int joints_of[GW_MAX_BODIES] = { 0 };
    if (!r->placed) return; /* without joints there is nothing to add */
    gather_places(r, axle, places);
    for (int j = 0; j < corner->n_joints; j++) {
        if (corner->joints[j].body_a >= 0) joints_of[corner->joints[j].body_a]++;
        if (corner->joints[j].body_b >= 0) joints_of[corner->joints[j].body_b]++;
    }
    check_members_used(&whole, joints_of);
    check_held(&whole, joints_of);
    for (int b = GW_UPRIGHT + 1; b < last_told(corner); b++) check_length(&whole, b);
}

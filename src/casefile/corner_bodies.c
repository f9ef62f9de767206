/* SPDX-License-Identifier: MIT */
/* The body that a joint, spring or damper names: of a corner, or of an axle with its side. */
#include "casefile/corner_reader.h"
#include "casefile/nearest.h"

#include <stdio.h>
#include <string.h>

enum { SIDED_MAX = 80 }; /* a longer name is not offered */

int gw_body_named(const gw_reader *rd, const gw_node *at, const gw_corner *corner, const char *name)
{
    char found[80], hint[GW_HINT_MAX];
    gw_nearest near = { .want = name };
    int body = gw_corner_find_body(corner, name);
    if (body >= 0) return body;
    for (int i = 0; i < corner->n_bodies; i++) gw_nearest_offer(&near, gw_body_as_written(corner, i));
    gw_fault(rd, at, "expected \"chassis\", \"upright\" or one of \"members\", found %s%s",
             gw_found(at, found), gw_nearest_hint(&near, hint));
    return -1;
}

static const char *const SIDES[] = { "left.", "right." };

int gw_body_shared(const gw_corner *corner, const char *name)
{
    for (int b = corner->first_shared; b < corner->first_shared + corner->n_shared; b++)
        if (strcmp(corner->bodies[b].name, name) == 0) return b;
    return -1;
}

static int find_own(const gw_corner *corner, const char *name)
{
    for (int b = GW_UPRIGHT; b < corner->first_shared; b++)
        if (strcmp(corner->bodies[b].name, name) == 0) return b;
    return -1;
}

/* The chassis, or a member that both wheels share; -1: none of them. */
static int find_common(const gw_corner *corner, const char *name)
{
    return strcmp(name, "chassis") == 0 ? GW_CHASSIS : gw_body_shared(corner, name);
}

/* With a side that was written before it. */
static int own_body(gw_corner_reader *r, const gw_node *at, int side, const char *name)
{
    char found[80], hint[GW_HINT_MAX];
    const gw_corner *corner = r->corner;
    gw_nearest near = { .want = name };
    int body = find_own(corner, name);
    if (body >= 0) return side == GW_LEFT_WHEEL ? body : gw_body_in_mirror(corner, body);
    if (find_common(corner, name) >= 0) {
        gw_fault(&r->cr->rd, at, "both wheels share %s, so it has no side: write \"%s\"", name, name);
        return -1;
    }
    for (int b = GW_UPRIGHT; b < corner->first_shared; b++) gw_nearest_offer(&near, corner->bodies[b].name);
    gw_fault(&r->cr->rd, at, "expected \"upright\" or a member of the %s corner after \"%s\", found %s%s",
             corner->name, SIDES[side], gw_found(at, found), gw_nearest_hint(&near, hint));
    return -1;
}

/* Every name that a joint of an axle may write; those with a side are written into `sided`. */
static void offer_all(const gw_corner *corner, gw_nearest *near, char sided[2 * GW_CORNER_BODIES][SIDED_MAX])
{
    int n = 0;
    gw_nearest_offer(near, "chassis");
    for (int i = 0; i < corner->n_shared; i++)
        gw_nearest_offer(near, corner->bodies[corner->first_shared + i].name);
    for (int b = GW_UPRIGHT; b < corner->first_shared; b++)
        for (int s = 0; s < 2; s++, n++) {
            snprintf(sided[n], SIDED_MAX, "%s%s", SIDES[s], corner->bodies[b].name);
            gw_nearest_offer(near, sided[n]);
        }
}

static int axle_body(gw_corner_reader *r, const gw_node *at, const char *name)
{
    char found[80], hint[GW_HINT_MAX], sided[2 * GW_CORNER_BODIES][SIDED_MAX];
    const gw_corner *corner = r->corner;
    gw_nearest near = { .want = name };
    for (int s = 0; s < 2; s++)
        if (strncmp(name, SIDES[s], strlen(SIDES[s])) == 0)
            return own_body(r, at, s, name + strlen(SIDES[s]));
    int body = find_common(corner, name);
    if (body >= 0) return body;
    if (find_own(corner, name) >= 0) {
        gw_fault(&r->cr->rd, at, "say of which side: \"left.%s\" or \"right.%s\"", name, name);
        return -1;
    }
    offer_all(corner, &near, sided);
    gw_fault(
        &r->cr->rd, at,
        "expected \"chassis\", a member of the axle, or a body of a corner with its side (\"left.NAME\", "
        "\"right.NAME\"), found %s%s",
        gw_found(at, found), gw_nearest_hint(&near, hint));
    return -1;
}

int gw_body_of(gw_corner_reader *r, const gw_node *at, const char *name)
{
    return r->is_axle ? axle_body(r, at, name) : gw_body_named(&r->cr->rd, at, r->corner, name);
}

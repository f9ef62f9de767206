/* SPDX-License-Identifier: MIT */
/* What the wheels of an axle share: members and joints, and bodies named with their side. */
#include "casefile/corner_reader.h"
#include "casefile/nearest.h"

#include <string.h>

enum { MOST_SHARED = 24, MOST_JOINTS = 48 };

static const char *const AXLE_KEYS[] = { "points_mm", "members", "joints", "final_drive_on", NULL };
static const char *const SIDES[] = { "left.", "right." };

static bool read_shared(gw_corner_reader *r)
{
    const gw_reader *rd = &r->cr->rd;
    if (!gw_get_object(rd, &r->node, "members", GW_OPTIONAL, &r->members_node)) return true;
    int n = gw_node_count(&r->members_node);
    if (n == 0 || !gw_is_within(rd, &r->members_node, MOST_SHARED, "members")) return n == 0;
    if (!(r->shared = gw_reader_make(rd, n, sizeof *r->shared))) return false;
    for (const cJSON *e = gw_first(&r->members_node); e; e = gw_node_next(e)) {
        gw_node node = gw_node_entry(&r->members_node, e, 0);
        if (!gw_read_member(rd, &node, &r->shared[r->n_shared++])) return false;
    }
    return true;
}

bool gw_read_axle_members(gw_corner_reader *r)
{
    const gw_reader *rd = &r->cr->rd;
    if (!r->node.json || !gw_is_object(rd, &r->node, "an object { }")) return false;
    gw_check_keys(rd, &r->node, NULL, 0, AXLE_KEYS);
    gw_read_points(r);
    return read_shared(r);
}

static int find_shared(const gw_corner *corner, const char *name)
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

static int own_body(gw_corner_reader *r, const gw_node *at, int side, const char *name)
{
    char found[80], hint[GW_HINT_MAX];
    const gw_corner *corner = r->corner;
    gw_nearest near = { .want = name };
    int body = find_own(corner, name);
    if (body >= 0) return side == GW_LEFT_WHEEL ? body : gw_body_in_mirror(corner, body);
    for (int b = GW_UPRIGHT; b < corner->first_shared; b++) gw_nearest_offer(&near, corner->bodies[b].name);
    gw_fault(&r->cr->rd, at, "expected \"upright\" or a member of the %s corner after \"%s\", found %s%s",
             corner->name, SIDES[side], gw_found(at, found), gw_nearest_hint(&near, hint));
    return -1;
}

static int axle_body(gw_corner_reader *r, const gw_node *at, const char *name)
{
    char found[80], hint[GW_HINT_MAX];
    const gw_corner *corner = r->corner;
    gw_nearest near = { .want = name };
    for (int s = 0; s < 2; s++)
        if (strncmp(name, SIDES[s], strlen(SIDES[s])) == 0)
            return own_body(r, at, s, name + strlen(SIDES[s]));
    int body = strcmp(name, "chassis") == 0 ? GW_CHASSIS : find_shared(corner, name);
    if (body >= 0) return body;
    if (find_own(corner, name) >= 0) {
        gw_fault(&r->cr->rd, at, "say of which side: \"left.%s\" or \"right.%s\"", name, name);
        return -1;
    }
    for (int i = 0; i < corner->n_shared; i++)
        gw_nearest_offer(&near, corner->bodies[corner->first_shared + i].name);
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

/* A joint off the centre line stands for two, unless the case says that it is one. */
static void settle_sides(gw_corner_reader *r, const gw_node *node, int index)
{
    const gw_reader *rd = &r->cr->rd;
    gw_axle_joint *joint = &r->more[index];
    bool mirrored = true;
    gw_node at = gw_node_key(node, "at");
    gw_get_flag(rd, node, "mirrored", &mirrored);
    double y = joint->joint.at.y;
    if (!r->placed[index] || y == 0.0) return;
    joint->doubled = mirrored;
    joint->alone = !mirrored;
    if (mirrored && y < 0.0)
        gw_fault(rd, &at,
                 "y is below 0: write the joint of the left side, y above 0, which stands for the right one "
                 "too, or \"mirrored\": false for one alone");
}

static void read_final_drive(gw_corner_reader *r)
{
    const gw_reader *rd = &r->cr->rd;
    const char *word;
    char found[80];
    gw_node at = gw_node_key(&r->node, "final_drive_on");
    if (!gw_get_word(rd, &r->node, "final_drive_on", GW_OPTIONAL, &word)) return;
    int body = strcmp(word, "chassis") == 0 ? GW_CHASSIS : find_shared(r->corner, word);
    if (body < 0)
        gw_fault(rd, &at, "expected \"chassis\" or a member of this axle, found %s", gw_found(&at, found));
    else
        r->corner->final_drive = body;
}

/* Names are looked up in a corner and its axle together. */
static void check_names(gw_corner_reader *r)
{
    for (int i = 0; i < r->n_more; i++) {
        gw_node entry = { NULL, &r->joints_node, NULL, i }, at = gw_node_key(&entry, "name");
        const char *name = r->more[i].joint.name;
        for (int j = 0; name && j < r->corner->n_joints; j++)
            if (r->corner->joints[j].name && strcmp(r->corner->joints[j].name, name) == 0)
                gw_fault(
                    &r->cr->rd, &at,
                    "the %s corner has a joint of this name too: names are unique within a corner and its "
                    "axle",
                    r->corner->name);
    }
}

void gw_read_axle_joints(gw_corner_reader *r)
{
    const gw_reader *rd = &r->cr->rd;
    const char *names[MOST_JOINTS];
    int index = 0;
    if (!cJSON_IsObject(r->node.json)) return;
    read_final_drive(r);
    if (!gw_get_list(rd, &r->node, "joints", GW_OPTIONAL, &r->joints_node)) return;
    int n = gw_node_count(&r->joints_node);
    if (n == 0 || !gw_is_within(rd, &r->joints_node, MOST_JOINTS, "joints")) return;
    if (!(r->more = gw_reader_make(rd, n, sizeof *r->more))) return;
    if (!(r->placed = gw_reader_make(rd, n, sizeof *r->placed))) return;
    r->n_more = n;
    for (const cJSON *e = gw_first(&r->joints_node); e; e = gw_node_next(e), index++) {
        gw_node node = gw_node_entry(&r->joints_node, e, index);
        gw_read_joint(r, &node, index, &r->more[index].joint);
        settle_sides(r, &node, index);
        names[index] = r->more[index].joint.name;
    }
    gw_check_unique(rd, &r->joints_node, names, n, "joint");
    check_names(r);
}

/* SPDX-License-Identifier: MIT */
/* What the wheels of an axle share: members and joints, and bodies named with their side. */
#include "casefile/corner_reader.h"

#include <string.h>

enum { MOST_SHARED = 24, MOST_JOINTS = 48 };

static const char *const AXLE_KEYS[] = { "points_mm", "members", "joints", "final_drive_on", NULL };

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
    int body = strcmp(word, "chassis") == 0 ? GW_CHASSIS : gw_body_shared(r->corner, word);
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

/* SPDX-License-Identifier: MIT */
/*
 * What an axle of a first case is put together from: its layout, and the rack, subframe and bar that it is
 * told to have. Places and masses as usual: common practice, of no car.
 */
#include "start/car.h"

#include <string.h>

/* Where subframe and rack stand [mm from the wheel centre]. */
static const gw_start_point SUBFRAME_POINTS[GW_AXLES][2] = {
    { { "subframe_front", { 300, 330, -80 }, "middle of the bush", GW_START_BOTH },
      { "subframe_rear", { -320, 380, -80 }, "middle of the bush", GW_START_BOTH } },
    { { "subframe_front", { 330, 330, -20 }, "middle of the bush", GW_START_BOTH },
      { "subframe_rear", { -300, 330, 10 }, "middle of the bush", GW_START_BOTH } },
};
static const double RACK_MOUNT = 90, RACK_GUIDE = 45; /* inboard of the tie rod's inner joint [mm] */

/* clang-format off */
static const gw_start_joint SUBFRAME_JOINTS[] = {
    { "subframe_front", "subframe, front bush", "chassis", "subframe", { 0, 0, 1 }, GW_START_SUBFRAME_RUBBER, GW_START_BOTH, GW_START_ON_BODY },
    { "subframe_rear", "subframe, rear bush", "chassis", "subframe", { 0, 0, 1 }, GW_START_SUBFRAME_RUBBER, GW_START_BOTH, GW_START_ON_BODY },
};
static const gw_start_joint RACK_JOINTS[] = {
    { "rack_mount", "steering rack, mounting", "chassis", "rack_housing", { 0, 0, 1 }, GW_START_RACK_RUBBER, GW_START_BOTH, GW_START_ON_SUBFRAME },
    { "rack_guide", "steering rack in its housing", "rack_housing", "rack", { 0, 1, 0 }, GW_START_RACK_GUIDE, GW_START_BOTH, GW_START_ON_BODY },
};
/* clang-format on */

static void add_point(gw_start_parts *p, const gw_start_point *point)
{
    p->point[p->n_points++] = *point;
}

static void add_joint(gw_start_parts *p, const gw_start_joint *joint)
{
    p->joint[p->n_joints++] = *joint;
}

static void add_member(gw_start_parts *p, const char *name, double mass, bool shared)
{
    p->member[p->n_members++] = (gw_start_member){ name, mass, shared };
}

/* Points and joints that differ stand in place of those of their names. */
static void replace_points(gw_start_parts *p, const gw_start_point *other, int n)
{
    for (int i = 0; i < n; i++) p->point[gw_start_point_named(p, other[i].name)] = other[i];
}

static void replace_joints(gw_start_parts *p, const gw_start_joint *other, int n)
{
    for (int i = 0; i < n; i++)
        for (int j = 0; j < p->n_joints; j++)
            if (strcmp(p->joint[j].name, other[i].name) == 0) p->joint[j] = other[i];
}

static void take_layout(gw_start_parts *p, const gw_start_layout *l)
{
    for (int i = 0; i < l->n_points; i++) add_point(p, &l->point[i]);
    for (int i = 0; i < l->n_joints; i++) add_joint(p, &l->joint[i]);
    for (int i = 0; i < l->n_members; i++) p->member[p->n_members++] = l->member[i];
    replace_points(p, l->other_point, l->n_other_points);
    replace_joints(p, l->other_joint, l->n_other_joints);
}

/* Turning bodies and the bar's own bush are filled in. */
/* clang-format off */
static const gw_start_joint BAR_JOINTS[] = {
    { "bar_bush", "anti-roll bar, bush", NULL, "bar", { 0, 1, 0 }, GW_START_BAR_RUBBER, GW_START_OF_CORNER, GW_START_ON_SUBFRAME },
    { "bar_end", "drop link, joint at the bar", "bar", "drop_link", { 0, 0, 1 }, GW_START_BALL, GW_START_OF_CORNER, GW_START_ON_BODY },
    { "bar_link", "drop link, far joint", "drop_link", NULL, { 0, 0, 1 }, GW_START_BALL, GW_START_OF_CORNER, GW_START_ON_BODY },
    { "bar_middle", "anti-roll bar, torsion", "left.bar", "right.bar", { 0, 1, 0 }, GW_START_FRONT_BAR, GW_START_MIDDLE, GW_START_ON_BODY },
};
/* clang-format on */

static void add_bar(gw_start_parts *p, const gw_start_layout *l)
{
    const gw_start_bar *b = l->bar;
    gw_start_joint joint[GW_START_COUNT(BAR_JOINTS)];
    gw_start_point middle = b->bush;
    middle.name = "bar_middle";
    middle.how = "middle of the bar, level with its bushes";
    middle.side = GW_START_MIDDLE;
    middle.from_wheel[1] = 0;
    memcpy(joint, BAR_JOINTS, sizeof joint);
    joint[0].body_a = b->turns_on;
    joint[2].body_b = b->link_on;
    if (l->axle == GW_REAR) joint[3].bush = GW_START_REAR_BAR;
    add_point(p, &b->bush);
    add_point(p, &b->end);
    add_point(p, &b->link);
    add_point(p, &middle);
    for (int i = 0; i < GW_START_COUNT(joint); i++) add_joint(p, &joint[i]);
    add_member(p, "bar", 1.8, false);
    add_member(p, "drop_link", 0.4, false);
}

static void add_rack(gw_start_parts *p)
{
    gw_start_point mount = p->point[gw_start_point_named(p, "tie_inner")], guide;
    mount.side = GW_START_BOTH;
    guide = mount;
    mount.name = "rack_mount";
    mount.how = "middle of the rack's mounting";
    mount.from_wheel[1] += RACK_MOUNT;
    guide.name = "rack_guide";
    guide.how = "on the rack's middle line, where it slides in its housing";
    guide.from_wheel[1] += RACK_GUIDE;
    add_point(p, &mount);
    add_point(p, &guide);
    for (int i = 0; i < GW_START_COUNT(RACK_JOINTS); i++) add_joint(p, &RACK_JOINTS[i]);
    add_member(p, "rack_housing", 5, true);
    add_member(p, "rack", 2, true);
}

static void add_subframe(gw_start_parts *p, gw_axle axle)
{
    for (int i = 0; i < 2; i++) add_point(p, &SUBFRAME_POINTS[axle][i]);
    for (int i = 0; i < GW_START_COUNT(SUBFRAME_JOINTS); i++) add_joint(p, &SUBFRAME_JOINTS[i]);
    add_member(p, "subframe", axle == GW_FRONT ? 17 : 24, true);
}

/* What hangs on a subframe or on the rack, where there is one. */
static void hang(gw_start_corner *c)
{
    for (int j = 0; j < c->parts.n_joints; j++) {
        gw_start_joint *joint = &c->parts.joint[j];
        bool behind = joint->on == GW_START_ON_SUBFRAME_BEHIND && c->layout->axle == GW_REAR;
        if (joint->on == GW_START_ON_RACK && c->rack != GW_START_NONE)
            joint->body_a = "rack";
        else if (c->subframe &&
                 (behind || joint->on == GW_START_ON_SUBFRAME || joint->on == GW_START_ON_RACK))
            joint->body_a = "subframe";
    }
}

void gw_start_fit(gw_start_corner *c)
{
    const gw_start_layout *l = c->layout;
    c->parts = (gw_start_parts){ .n_points = 0 };
    take_layout(&c->parts, l);
    if (c->rack == GW_START_BEHIND) replace_points(&c->parts, l->behind, l->n_behinds);
    if (c->bar > 0) add_bar(&c->parts, l);
    if (c->rack != GW_START_NONE) add_rack(&c->parts);
    if (c->subframe) add_subframe(&c->parts, l->axle);
    hang(c);
}

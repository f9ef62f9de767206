/* SPDX-License-Identifier: MIT */
/* Which part or point of the car a path of an uncertain figure leads to. */
#include "giveway/uncertain.h"

#include <string.h>

/* What stands behind `head` in a path; NULL: it begins otherwise. */
static const char *behind(const char *path, const char *head)
{
    size_t n = strlen(head);
    return strncmp(path, head, n) ? NULL : path + n;
}

static bool is_named(const char *name, const char *path, size_t n)
{
    return strlen(name) == n && strncmp(name, path, n) == 0;
}

/* The joint that holds a bush with some kit, the first kit's before others'; NULL: none has a label. */
static const gw_joint *holder(const gw_case *c, int bush)
{
    for (int k = 0; k < c->n_kits; k++)
        for (int a = 0; a < GW_AXLES; a++)
            for (int j = 0; c->has_corner[a] && j < c->corners[a].n_joints; j++) {
                const gw_joint *joint = &c->corners[a].joints[j];
                if (joint->label && c->kits[k].fits[a] && c->kits[k].fits[a][j] == bush) return joint;
            }
    return NULL;
}

static void find_bush(const gw_case *c, const char *path, gw_unsure_place *out)
{
    size_t n = strcspn(path, ".");
    for (int b = 0; b < c->n_bushes; b++) {
        if (!is_named(c->bushes[b].name, path, n)) continue;
        out->kind = GW_UNSURE_BUSH;
        out->name = path;
        out->joint = holder(c, b);
    }
}

/* 0 to 2 for "...[0]" to "...[2]"; -1: no coordinate. */
static int coordinate(const char *path)
{
    const char *at = strrchr(path, '[');
    return at && at[1] >= '0' && at[1] <= '2' && strcmp(at + 2, "]") == 0 ? at[1] - '0' : -1;
}

static void find_point(const gw_case *c, gw_axle axle, const char *path, gw_unsure_place *out)
{
    const gw_corner *corner = &c->corners[axle];
    const char *point = behind(path, "points_mm.");
    out->axle = axle;
    out->coordinate = coordinate(path);
    if (out->coordinate < 0) return;
    if (behind(path, "wheel.centre_mm")) out->kind = GW_UNSURE_WHEEL;
    if (!point) return;
    out->kind = GW_UNSURE_POINT;
    out->name = point;
    out->name_length = (int)strcspn(point, "[");
    for (int j = 0; j < corner->n_joints && !out->joint; j++)
        if (corner->joints[j].label && is_named(corner->joints[j].name, point, (size_t)out->name_length))
            out->joint = &corner->joints[j];
}

gw_unsure_place gw_unsure_place_of(const gw_case *c, const char *path)
{
    gw_unsure_place out = { .kind = GW_UNSURE_ELSEWHERE };
    const char *bush = behind(path, "bushes."), *front = behind(path, "corners.front."),
               *rear = behind(path, "corners.rear.");
    if (bush) find_bush(c, bush, &out);
    if (front) find_point(c, GW_FRONT, front, &out);
    if (rear) find_point(c, GW_REAR, rear, &out);
    return out;
}

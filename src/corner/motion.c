/* SPDX-License-Identifier: MIT */
/* A movement of all bodies at once, in words: which of them it is about, and which way that one goes. */
#include "corner/workspace.h"

#include <string.h>

/* How many joints a body has, and their middle about the datum; a wheel's carrier is looked at where the
 * wheel is. */
static int joints_of(const gw_corner_ws *ws, int body, gw_vec3 *middle)
{
    int n = 0;
    *middle = gw_v3(0, 0, 0);
    for (int j = 0; j < ws->corner->n_joints; j++) {
        if (!gw_link_is_on(&ws->link[j], body)) continue;
        *middle = gw_add(*middle, ws->link[j].at);
        n++;
    }
    if (n > 0) *middle = gw_scale(1.0 / n, *middle);
    for (int w = 0; w < ws->n_wheels; w++)
        if (ws->wheel[w].upright == body) *middle = ws->wheel[w].hub;
    return n;
}

/* How a body moves at its middle, its turns times the length. */
static void at_middle(const gw_corner_ws *ws, const double *motion, int body, double m[6])
{
    const double *about = &motion[6 * (body - 1)];
    gw_vec3 middle, turn = gw_v3(about[3], about[4], about[5]);
    joints_of(ws, body, &middle);
    gw_vec3 move =
        gw_axpy(gw_v3(about[0], about[1], about[2]), 1.0 / GW_MOTION_LENGTH, gw_cross(turn, middle));
    const double all[6] = { move.x, move.y, move.z, turn.x, turn.y, turn.z };
    memcpy(m, all, sizeof all);
}

double gw_motion_share(const gw_corner_ws *ws, const double *motion, int body)
{
    double m[6], sum = 0.0;
    at_middle(ws, motion, body, m);
    for (int i = 0; i < 6; i++) sum += m[i] * m[i];
    return sqrt(sum);
}

/* What both wheels share and is no mere link, like a rod across the car, which follows others. */
static bool is_carrier(const gw_corner_ws *ws, int body)
{
    gw_vec3 middle;
    return joints_of(ws, body, &middle) > 2;
}

int gw_motion_mover(const gw_corner_ws *ws, const double *motion)
{
    const gw_corner *corner = ws->corner;
    int best = GW_UPRIGHT;
    for (int w = 0; w < ws->n_wheels; w++)
        if (gw_motion_share(ws, motion, ws->wheel[w].upright) > gw_motion_share(ws, motion, best))
            best = ws->wheel[w].upright;
    int wheel = best;
    double least = 0.1 * gw_motion_share(ws, motion, wheel);
    for (int b = corner->first_shared; b < corner->first_shared + corner->n_shared; b++)
        if (is_carrier(ws, b) && gw_motion_share(ws, motion, b) > least &&
            (best == wheel || gw_motion_share(ws, motion, b) > gw_motion_share(ws, motion, best)))
            best = b;
    return best;
}

const char *gw_motion_way(const gw_corner_ws *ws, const double *motion, int body)
{
    static const char *const WAYS[6] = { "moves fore and aft (x)",  "moves sideways (y)",
                                         "moves up and down (z)",   "turns about x (camber)",
                                         "turns about y (wind-up)", "turns about z (toe)" };
    static const char *const TURNS[3] = { "turns about x", "turns about y", "turns about z" };
    double m[6];
    int way = 0;
    at_middle(ws, motion, body, m);
    for (int i = 1; i < 6; i++)
        if (fabs(m[i]) > fabs(m[way])) way = i;
    return way < 3 || gw_is_upright(ws, body) ? WAYS[way] : TURNS[way - 3];
}

const char *gw_motion_article(const gw_corner_ws *ws, int body)
{
    return gw_is_upright(ws, body) && ws->n_wheels == 1 ? "the " : "";
}

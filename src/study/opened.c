/* SPDX-License-Identifier: MIT */
#include "study/opened.h"

#include <stdlib.h>

gw_opened *gw_opened_make(const gw_case *c)
{
    const size_t n = (size_t)c->n_kits * GW_AXLES + 1, loads = (size_t)c->n_kits * (size_t)c->n_loads + 1;
    gw_opened *made = calloc(1, sizeof *made);
    if (!made) return NULL;
    *made = (gw_opened){ .c = c,
                         .n = c->n_kits,
                         .ws = calloc(n, sizeof *made->ws),
                         .right = calloc(n, sizeof *made->right),
                         .road = calloc(n, sizeof *made->road),
                         .mark = calloc(loads, sizeof *made->mark),
                         .marked = calloc(loads, sizeof *made->marked) };
    if (made->ws && made->right && made->road && made->mark && made->marked) return made;
    gw_opened_free(made);
    return NULL;
}

void gw_opened_free(gw_opened *opened)
{
    if (!opened) return;
    bool whole = opened->ws && opened->right && opened->road;
    for (int i = 0; whole && i < opened->n * GW_AXLES; i++) {
        gw_corner_close(opened->ws[i]);
        gw_corner_close(opened->right[i]);
    }
    for (int k = 0; whole && k < opened->n; k++) gw_road_close(opened->road[k]);
    free(opened->ws);
    free(opened->right);
    free(opened->road);
    free(opened->mark);
    free(opened->marked);
    free(opened);
}

const gw_corner_ws *gw_opened_corner(const gw_opened *opened, const gw_case *c, int kit, gw_axle axle,
                                     bool right)
{
    if (!opened || opened->c != c) return NULL;
    return (right ? opened->right : opened->ws)[kit * GW_AXLES + (int)axle];
}

/* Where parts are shared, the corner holds both wheels already. */
const gw_corner_ws *gw_opened_pair(const gw_opened *opened, const gw_case *c, int kit, gw_axle axle)
{
    const gw_corner_ws *ws = gw_opened_corner(opened, c, kit, axle, false);
    if (ws && gw_is_pair(gw_corner_of(ws))) return ws;
    return opened && opened->c == c && opened->road[kit] ? gw_road_axle_ws(opened->road[kit], axle) : NULL;
}

gw_status gw_opened_note(gw_opened *opened, const gw_road *road, int kit, int load, gw_arena *arena,
                         gw_error *err)
{
    const int at = kit * opened->c->n_loads + load;
    gw_status status = gw_road_mark_make(road, arena, &opened->mark[at], err);
    if (status != GW_OK) return status;
    gw_road_mark_take(road, false, &opened->mark[at]);
    opened->marked[at] = true;
    return GW_OK;
}

bool gw_same_manoeuvre(const gw_manoeuvre *a, const gw_manoeuvre *b)
{
    return a->brake_g == b->brake_g && a->lateral_g == b->lateral_g && a->drive_g == b->drive_g &&
           a->driven == b->driven;
}

const gw_road_mark *gw_opened_mark(const gw_opened *opened, const gw_case *c, int kit, const gw_manoeuvre *m)
{
    if (!opened || opened->c != c) return NULL;
    for (int l = 0; l < c->n_loads; l++) {
        const int at = kit * c->n_loads + l;
        if (opened->marked[at] && gw_same_manoeuvre(&c->loads[l].manoeuvre, m)) return &opened->mark[at];
    }
    return NULL;
}

/* SPDX-License-Identifier: MIT */
#include "study/opened.h"

#include <stdlib.h>

gw_opened *gw_opened_make(const gw_case *c)
{
    const size_t n = (size_t)c->n_kits * GW_AXLES + 1;
    gw_opened *made = calloc(1, sizeof *made);
    if (!made) return NULL;
    *made = (gw_opened){ .c = c,
                         .n = c->n_kits,
                         .ws = calloc(n, sizeof *made->ws),
                         .right = calloc(n, sizeof *made->right),
                         .road = calloc(n, sizeof *made->road) };
    if (made->ws && made->right && made->road) return made;
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

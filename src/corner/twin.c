/* SPDX-License-Identifier: MIT */
#include "corner/twin.h"

#include "corner/workspace.h"

#include <stdlib.h>
#include <string.h>

static bool make_room(gw_corner_ws *ws)
{
    size_t links = (size_t)ws->corner->n_joints + 3 * (size_t)ws->corner->n_bodies;
    ws->link = gw_arena_alloc(&ws->arena, links, sizeof *ws->link);
    ws->strain0 = gw_arena_alloc(&ws->arena, (size_t)ws->corner->n_joints, sizeof *ws->strain0);
    ws->strain = gw_arena_alloc(&ws->arena, links, sizeof *ws->strain);
    const int n = ws->corner->n_bodies; /* no kit couples more of them than all with all */
    return ws->link && ws->strain0 && ws->strain && gw_system_make_structure(&ws->system, n, &ws->arena) &&
           gw_system_make_room(&ws->system, n * n, &ws->arena) &&
           gw_state_in_arena(ws, &ws->reference) == GW_OK && gw_state_in_arena(ws, &ws->work) == GW_OK &&
           gw_state_in_arena(ws, &ws->resume) == GW_OK;
}

gw_status gw_corner_twin_open(const gw_corner *corner, gw_corner_ws **out, gw_error *err)
{
    gw_corner_ws *ws = calloc(1, sizeof *ws);
    if (ws) ws->corner = corner;
    if (!ws || !make_room(ws)) {
        gw_corner_close(ws);
        return gw_fail(err, GW_E_NOMEM, "out of memory for the %s corner", corner->name);
    }
    *out = ws;
    return GW_OK;
}

void gw_corner_twin_take(gw_corner_ws *twin, const gw_corner_ws *from)
{
    if (!gw_joins_alike(twin, from)) gw_system_structure(&twin->system, &from->system);
    twin->datum = from->datum;
    twin->n_links = from->n_links;
    memcpy(twin->link, from->link, (size_t)from->n_links * sizeof *twin->link);
    twin->n_wheels = from->n_wheels;
    memcpy(twin->wheel, from->wheel, sizeof twin->wheel);
    for (int w = 0; w < GW_WHEELS; w++) twin->wheel[w].unit_toe = twin->wheel[w].unit_camber = NULL;
    gw_state_copy(&twin->reference, &from->reference, from->system.n);
}

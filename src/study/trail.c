/* SPDX-License-Identifier: MIT */
#include "study/trail.h"

static bool knows(const gw_trail *trail, int place)
{
    return place >= 0 && place < trail->n && trail->known[place];
}

bool gw_trail_lead(gw_trail *trail, gw_run *run, int own, int there, int origin)
{
    run->near_road = NULL;
    if (!run->road || !knows(trail, own) || !knows(trail, there) || !knows(trail, origin)) return false;
    gw_road_mark_lead(run->road, &trail->at[own], &trail->at[there], &trail->at[origin], &trail->guess);
    run->near_road = &trail->guess;
    return true;
}

static gw_status make_room(gw_trail *trail, const gw_road *road, int n, gw_error *err)
{
    gw_status status = gw_road_mark_make(road, &trail->arena, &trail->guess, err);
    trail->at = gw_arena_alloc(&trail->arena, (size_t)n, sizeof *trail->at);
    trail->known = gw_arena_alloc(&trail->arena, (size_t)n, sizeof *trail->known);
    if (!trail->at || !trail->known) return gw_fail(err, GW_E_NOMEM, "out of memory for the car");
    for (int i = 0; i < n && status == GW_OK; i++)
        status = gw_road_mark_make(road, &trail->arena, &trail->at[i], err);
    if (status == GW_OK) trail->n = n;
    return status;
}

gw_status gw_trail_note(gw_trail *trail, const gw_run *run, int n, int place, gw_error *err)
{
    gw_status status = GW_OK;
    if (run->road && !trail->n) status = make_room(trail, run->road, n, err);
    if (!run->road || status != GW_OK) return status;
    trail->known[place] = run->drives;
    if (run->drives) gw_road_mark_take(run->road, false, &trail->at[place]);
    return GW_OK;
}

void gw_trail_free(gw_trail *trail)
{
    gw_arena_free(&trail->arena);
    *trail = (gw_trail){ 0 };
}

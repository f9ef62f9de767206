/* SPDX-License-Identifier: MIT */
/* The play in the joints of a corner or an axle, opened under its load. */
#include "corner/workspace.h"

typedef struct gw_corner_play {
    gw_corner_ws *ws;
    gw_drive drive;
} gw_corner_play;

static gw_status try_share(void *of, double share, gw_error *err)
{
    const gw_corner_play *play = of;
    gw_corner_ws *ws = play->ws;
    gw_state_copy(&ws->resume, &ws->work, ws->system.n);
    gw_shut_play(ws, share);
    gw_status status = gw_newton(ws, &ws->work, play->drive, false, err);
    if (status == GW_OK && !gw_turn_is_usual(ws, &ws->resume, &ws->work))
        status = gw_fail(err, GW_E_NUMERIC, "the %s %s would snap over within the play of its joints",
                         ws->corner->name, gw_corner_or_axle(ws));
    if (status != GW_OK) gw_state_copy(&ws->work, &ws->resume, ws->system.n);
    return status;
}

gw_status gw_open_play(gw_corner_ws *ws, gw_drive drive, gw_error *err)
{
    gw_corner_play play = { ws, drive };
    gw_status status = gw_open_by_shares(try_share, &play, err);
    gw_shut_play(ws, 0.0);
    return status;
}

/* SPDX-License-Identifier: MIT */
#include "corner/workspace.h"

gw_error *gw_next_warning(gw_corner_ws *ws)
{
    return ws->n_warnings < GW_MAX_WARNINGS ? &ws->warning[ws->n_warnings++] : NULL;
}

int gw_corner_warnings(const gw_corner_ws *ws)
{
    return ws->n_warnings;
}

const char *gw_corner_warning(const gw_corner_ws *ws, int index)
{
    return ws->warning[index].msg;
}

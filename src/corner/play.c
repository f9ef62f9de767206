/* SPDX-License-Identifier: MIT */
/*
 * Play in joints, opened little by little.
 *
 * Inside a play a joint is a thousand times softer than beyond it, so a Newton step from there throws the
 * bodies millimetres too far, and with several joints in play at once it may land on another balance. So the
 * corner is first solved with every play shut, where it is as smooth as any, and the play is then opened by
 * taking the shut joint's share s of the energy from 1 to 0:
 *     W_s = (1 - s) W + s W_shut.
 * The slopes inside and beyond the play then differ by no more than three from one share to the next, and a
 * step goes wrong by no more than that. At s = 0 nothing of it is left in the answer. Numerical continuation
 * by an embedded parameter: E. L. Allgower and K. Georg, Numerical Continuation Methods (1990), chapter 1.
 */
#include "corner/workspace.h"

static const double FIRST_RATIO = 0.3; /* of one share to the one before                          */
static const double LAST_RATIO = 0.9;  /* when even this step fails there is no way               */
static const double LAST_SHARE = 1e-3; /* as soft as a play itself: from here to none in one step */

bool gw_has_play(const gw_corner_ws *ws)
{
    for (int j = 0; j < ws->n_links; j++)
        if (ws->link[j].law.clearance > 0.0) return true;
    return false;
}

void gw_shut_play(gw_corner_ws *ws, double share)
{
    for (int j = 0; j < ws->n_links; j++) ws->link[j].shut = ws->link[j].law.clearance > 0.0 ? share : 0.0;
}

gw_status gw_open_by_shares(gw_share_step *step, void *of, gw_error *err)
{
    gw_status status = GW_OK;
    double share = 1.0, ratio = FIRST_RATIO;
    while (share > 0.0 && ratio < LAST_RATIO) {
        double next = share > LAST_SHARE ? share * ratio : 0.0;
        status = step(of, next, err);
        if (status == GW_OK)
            share = next;
        else if (next > 0.0)
            ratio = sqrt(ratio);
        else
            break;
    }
    return status;
}

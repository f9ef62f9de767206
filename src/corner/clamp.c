/* SPDX-License-Identifier: MIT */
/* Bushes whose bolt was tightened, or left loose, at another height than the ride height. */
#include "corner/workspace.h"
#include "giveway/bush.h"
#include "giveway/corner_travel.h"

#include <string.h>

void gw_corner_clamp(gw_corner_ws *ws, const double *rest)
{
    for (int j = 0; j < ws->corner->n_joints; j++) ws->link[j].rest = rest[j];
}

void gw_fit_loosen(const gw_corner *corner, const gw_fit *fit, const bool *loosened, gw_fit *loose)
{
    memcpy(loose, fit, (size_t)corner->n_joints * sizeof *loose);
    for (int j = 0; j < corner->n_joints; j++) {
        double *c = loose[j].law.c;
        const gw_curve **curve = loose[j].law.curve;
        if (!loosened) {
            for (int i = 0; i < 3; i++)
                if (c[i] < GW_RIGID_TURN) c[i] = 0.0; /* a weld is no bush */
            loose[j].law.loosened = true;
            curve[GW_CURVE_CONICAL] = curve[GW_CURVE_CONICAL_E1] = curve[GW_CURVE_CONICAL_E2] = NULL;
        }
        if (loosened && loosened[j]) c[2] = 0.0;
        if (!loosened || loosened[j]) {
            curve[GW_CURVE_TORSIONAL] = NULL;
        }
    }
}

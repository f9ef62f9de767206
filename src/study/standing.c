/* SPDX-License-Identifier: MIT */
/* Does the car of a case stand? What reading alone cannot tell: bushes that cannot be worked out, mechanisms.
 */
#include "giveway/choose.h"
#include "giveway/plausible.h"

#include <stdio.h>

enum { LINE = 1200 };

static void add_line(gw_faults *faults, bool warning, const gw_case *c, gw_axle axle, int kit,
                     const char *text)
{
    char line[LINE];
    snprintf(line, sizeof line, "%s: corners.%s: kit %s: %s", c->path, c->corners[axle].name,
             c->kits[kit].name, text);
    gw_faults_add(faults, warning, line);
}

/* Opening a corner settles what is free in it and loads it at ride height. */
static gw_status stand(const gw_case *c, const gw_laws *laws, int kit, gw_axle axle, gw_faults *faults)
{
    gw_fit fit[GW_MAX_JOINTS];
    gw_corner_ws *ws = NULL;
    gw_error err = { 0 };
    gw_fit_kit(c, laws, kit, axle, fit);
    gw_status status = gw_corner_open(&c->corners[axle], fit, &ws, &err);
    if (status != GW_OK)
        add_line(faults, false, c, axle, kit, err.msg);
    else
        for (int i = 0; i < gw_corner_warnings(ws); i++)
            add_line(faults, true, c, axle, kit, gw_corner_warning(ws, i));
    gw_corner_close(ws);
    return status;
}

/* What `choose` would refuse of an offer that reads well. */
static gw_status check_offer(const gw_case *c, gw_faults *faults)
{
    double n = 1.0;
    char line[LINE];
    for (int i = 0; i < c->choose.n_among; i++) n *= c->choose.among[i].n_bushes;
    if (n <= GW_MOST_COMBINATIONS) return GW_OK;
    snprintf(line, sizeof line,
             "%s: choose.among: %.0f combinations are more than the %d that are calculated: join joints that "
             "get the "
             "same bush, or shorten lists (one axle alone: choose --corner)",
             c->path, n, (int)GW_MOST_COMBINATIONS);
    gw_faults_add(faults, false, line);
    return GW_E_RANGE;
}

gw_status gw_study_standing(const gw_case *c, gw_faults *faults)
{
    gw_laws laws = { 0 };
    gw_error err = { 0 };
    gw_status first = gw_laws_make(c, GW_METHOD_SOLVED, &laws, &err);
    if (first != GW_OK) {
        gw_faults_add(faults, false, err.msg); /* names the case and the bush */
        return first;
    }
    for (gw_axle a = GW_FRONT; a < GW_AXLES; a++)
        for (int k = 0; c->has_corner[a] && k < c->n_kits; k++) {
            gw_status status = stand(c, &laws, k, a, faults);
            if (first == GW_OK) first = status;
        }
    gw_laws_free(&laws);
    if (first == GW_OK) first = check_offer(c, faults);
    if (first == GW_OK) first = gw_study_plausible(c, faults, &err);
    return first;
}

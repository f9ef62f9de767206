/* SPDX-License-Identifier: MIT */
/* What cannot be worked out for a kit is left out with a line that says why; the rest is an answer. */
#include "study/handling_run.h"

#include <stdio.h>

gw_status gw_handling_leave_out(gw_handling_run *h, int kit, gw_axle axle, int load, const char *what,
                                const gw_error *why, gw_error *err)
{
    const gw_case *c = h->run.c;
    char line[3 * sizeof why->msg], where[32] = "", under[sizeof why->msg] = "";
    if (why->code != GW_E_NUMERIC) return gw_fail(err, why->code, "%s", why->msg);
    if (axle != GW_AXLES) snprintf(where, sizeof where, "%s wheel: ", c->corners[axle].name);
    if (load >= 0) snprintf(under, sizeof under, "load \"%s\": ", c->loads[load].name);
    snprintf(line, sizeof line, "%s%s%s left out: %s", under, where, what, why->msg);
    const char *kept = gw_arena_strdup(&h->out->arena, line);
    if (!kept) return gw_fail(err, GW_E_NOMEM, "out of memory for handling");
    h->out->gap[h->out->n_gaps++] = (gw_handling_gap){ kit, kept };
    return GW_OK;
}

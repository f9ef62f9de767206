/* SPDX-License-Identifier: MIT */
/* What else the settings move: the wheel under the case's loads, and the tilt of joints in bump and rebound.
 */
#include "study/align_parts.h"

#include "giveway/corner_travel.h"

enum { TILT_POINTS = 13 };

bool gw_align_tells(const gw_setup *s, const gw_align_item *item, int joint)
{
    const gw_joint *j = &s->corner->joints[joint];
    if (item->side == GW_RAMP_BOTH || !gw_is_pair(s->corner) || j->twin == joint) return true;
    return j->mirrored == (item->side == GW_RAMP_RIGHT);
}

/* A place of the path that the corner does not reach leaves the figure unknown. */
void gw_align_tilts(gw_setup *s, gw_align_item *item, bool after)
{
    gw_run *run = s->run;
    double limit[GW_MAX_JOINTS], tilt[GW_MAX_JOINTS], most[GW_MAX_JOINTS] = { 0 };
    int n = s->corner->n_joints;
    for (int j = 0; j < n; j++)
        limit[j] = gw_tilt_limit(run->c, item->kit, &s->corner->joints[j], item->axle, j);
    for (int i = 0; i < TILT_POINTS; i++) {
        double travel = GW_ALIGN_TRAVEL * (2.0 * i / (TILT_POINTS - 1) - 1.0);
        const gw_corner_load at[GW_WHEELS] = { { .travel = travel }, { .travel = travel } };
        const gw_state *before = i ? &run->state : NULL; /* the next place is near it */
        bool there = gw_axle_solve_near(run->ws, at, GW_LIFTED, before, &run->state, NULL) == GW_OK;
        if (there) gw_corner_tilt(run->ws, &run->state, limit, tilt);
        for (int j = 0; j < n; j++) most[j] = there ? fmax(most[j], tilt[j]) : (double)NAN;
        if (!there) break;
    }
    item->n_tilts = 0;
    for (int j = 0; j < n; j++) {
        if (!(limit[j] > 0.0) || !gw_align_tells(s, item, j)) continue;
        gw_align_tilt *t = &item->tilt[item->n_tilts++];
        t->joint = j;
        t->limit = limit[j];
        *(after ? &t->after : &t->before) = most[j];
    }
}

static void keep_peaks(const gw_corner *corner, const gw_corner_result *r, gw_peaks *peaks)
{
    peaks->known = true;
    for (int j = 0; j < corner->n_joints; j++) {
        const double *f = r->joints[j].f;
        peaks->force[j] = fmax(peaks->force[j], gw_norm(gw_v3(f[0], f[1], f[2])));
        peaks->axial[j] = fmax(peaks->axial[j], fabs(f[2]));
    }
}

gw_status gw_align_loads(gw_setup *s, gw_align_item *item, bool after, gw_peaks *peaks, gw_error *err)
{
    gw_run *run = s->run;
    gw_joint_result joints[GW_MAX_JOINTS];
    gw_error inner = { 0 };
    item->n_loads = 0;
    for (int l = 0; l < run->c->n_loads; l++) {
        const gw_load *load = &run->c->loads[l];
        gw_deflection found = { .load = l, .result.joints = joints };
        if (!gw_run_wants_load(run, l, item->axle)) continue;
        gw_status status = load->kind == GW_LOAD_MANOEUVRE
                               ? gw_run_manoeuvre(run, &load->manoeuvre, &found, &inner)
                               : gw_run_direct(run, &load->direct, load->other, &found, &inner);
        gw_align_load *out = &item->load[item->n_loads++];
        out->load = l;
        if (status == GW_E_NUMERIC) { /* not known; deflect says why */
            *(after ? &out->camber_after : &out->camber_before) = (double)NAN;
            *(after ? &out->toe_after : &out->toe_before) = (double)NAN;
            continue;
        }
        if (status != GW_OK) return gw_fail(err, status, "load \"%s\": %s", load->name, inner.msg);
        *(after ? &out->camber_after : &out->camber_before) = found.result.camber_change;
        *(after ? &out->toe_after : &out->toe_before) = found.result.toe_change;
        keep_peaks(s->corner, &found.result, peaks);
    }
    return GW_OK;
}

/* SPDX-License-Identifier: MIT */
#include "giveway/reversal.h"

#include <math.h>

static int side_of(double angle)
{
    return fabs(angle) < GW_REVERSAL_LEAST ? 0 : angle > 0.0 ? 1 : -1;
}

static bool brakes_or_corners(const gw_load *load)
{
    if (load->kind == GW_LOAD_MANOEUVRE)
        return load->manoeuvre.brake_g > 0.0 || load->manoeuvre.lateral_g > 0.0;
    return load->direct.patch_force.x < 0.0 || load->direct.patch_force.y != 0.0;
}

static bool gains_toe_out(const gw_case *c, const gw_reversal *t)
{
    return !t->camber && t->axle == GW_REAR && side_of(t->to) < 0 && side_of(t->from) >= 0 &&
           side_of(t->to - t->from) < 0 && brakes_or_corners(&c->loads[t->load]);
}

bool gw_reversal_at(const gw_case *c, const gw_deflect_study *study, int baseline, const gw_deflection *of,
                    bool camber, gw_reversal *out)
{
    const gw_deflection *from = gw_deflect_find(study, baseline, of->axle, of->load);
    if (!from || of->kit == baseline) return false;
    gw_reversal t = { .kit = of->kit, .load = of->load, .axle = of->axle, .camber = camber };
    t.from = camber ? from->result.camber_change : from->result.toe_change;
    t.to = camber ? of->result.camber_change : of->result.toe_change;
    t.warns = gains_toe_out(c, &t);
    *out = t;
    return t.warns || side_of(t.from) * side_of(t.to) < 0;
}

int gw_reversals_find(const gw_case *c, const gw_deflect_study *study, int baseline, int kit,
                      gw_reversal *out, int most)
{
    int n = 0;
    for (int l = 0; l < c->n_loads && kit != baseline; l++)
        for (gw_axle a = GW_FRONT; a < GW_AXLES; a++) {
            const gw_deflection *of = gw_deflect_find(study, kit, a, l);
            for (int camber = 0; of && camber < 2; camber++) {
                gw_reversal one;
                if (!gw_reversal_at(c, study, baseline, of, camber, &one)) continue;
                if (n < most) out[n] = one;
                n++;
            }
        }
    return n;
}

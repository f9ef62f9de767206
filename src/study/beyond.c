/* SPDX-License-Identifier: MIT */
/* Joints whose measured bush goes further than it was measured. */
#include "giveway/units.h"
#include "study/run.h"

/** How far one joint goes beyond its curves at most: [0] deflection [m], [1] rotation [rad], and under which
 * load. */
typedef struct farthest {
    double by[2];
    int load[2];
} farthest;

static void look(const gw_run *run, const gw_deflection *item, int joint, farthest *worst)
{
    const gw_joint *at = &run->c->corners[item->axle].joints[joint];
    const int fitted_at = gw_joint_of_wheel(run->c, item->axle, item->wheel, joint);
    const gw_bush_law *law = &run->laws.law[run->c->kits[item->kit].fits[item->axle][fitted_at]];
    const gw_joint_result *r = &item->result.joints[joint];
    gw_bush_law fitted = at->bracket > 0.0 ? gw_bush_law_on_bracket(law, at->bracket) : *law;
    double by[2];
    if (!gw_bush_has_curves(law)) return;
    gw_bush_beyond(&fitted, r->u, r->theta, by);
    for (int i = 0; i < 2; i++)
        if (by[i] > worst->by[i]) {
            worst->by[i] = by[i];
            worst->load[i] = item->load;
        }
}

static gw_status tell(const gw_run *run, int joint, const farthest *worst, gw_deflect_study *out,
                      gw_error *err)
{
    const gw_corner *corner = &run->c->corners[run->axle];
    gw_status status = GW_OK;
    for (int i = 0; i < 2 && status == GW_OK; i++) {
        gw_error how = { 0 }, line = { 0 };
        if (!(worst->by[i] > 0.0)) continue;
        double by = worst->by[i] / (i ? GW_DEG : GW_MM);
        if (i)
            gw_fail(&how, GW_OK, "turned %.3g deg", by);
        else
            gw_fail(&how, GW_OK, "pushed %.3g mm", by);
        gw_fail(
            &line, GW_OK,
            "the %s corner: %s is %s beyond its measured curve by load \"%s\": what it does there is a guess",
            corner->name, corner->joints[joint].name, how.msg, run->c->loads[worst->load[i]].name);
        status = gw_run_warn(run, "", line.msg, &out->arena, &out->warning, &out->n_warnings, err);
    }
    return status;
}

static bool same_place(const gw_deflection *a, const gw_deflection *b)
{
    return a->kit == b->kit && a->axle == b->axle;
}

gw_status gw_run_beyond(const gw_run *run, gw_deflect_study *out, gw_error *err)
{
    gw_run at = *run;
    gw_status status = GW_OK;
    for (int i = 0, end; i < out->n && status == GW_OK; i = end) {
        at.kit = out->item[i].kit;
        at.axle = out->item[i].axle;
        for (end = i; end < out->n && same_place(&out->item[i], &out->item[end]);) end++;
        for (int j = 0; j < run->c->corners[at.axle].n_joints && status == GW_OK; j++) {
            farthest worst = { { 0 }, { 0 } };
            for (int k = i; k < end; k++)
                if (!out->item[k].failed) look(run, &out->item[k], j, &worst);
            status = tell(&at, j, &worst, out, err);
        }
    }
    return status;
}

/* SPDX-License-Identifier: MIT */
/* Will it fit and hold: walls of off-centre bushes, press fits, bearings. */
#include "study/align_parts.h"

#include "giveway/bearing.h"
#include "giveway/pressfit.h"

static void add(gw_align_item *item, int joint, gw_verdict verdict)
{
    item->check[item->n_checks++] = (gw_align_check){ joint, verdict };
}

/* The joint, or its mirror image: both sides are set alike. */
static bool sits_at(const gw_setup *s, const gw_adjuster *adjuster, int joint)
{
    bool pair = gw_is_pair(s->corner);
    return adjuster->joint == joint || (pair && s->corner->joints[adjuster->joint].twin == joint);
}

/* How far the bore lies off the middle of its housing, kit and adjusters together. */
static double offset_in_joint(const gw_setup *s, int joint)
{
    const gw_joint *at = &s->corner->joints[joint];
    const gw_fit *base = &s->base[joint];
    gw_vec3 point = at->housing == at->body_a ? base->point_a : base->point_b;
    gw_vec3 offset = gw_sub(point, at->at);
    for (int i = 0; i < s->n; i++) {
        const gw_adjuster *adjuster = &s->align->adjusters[s->of[i].adjuster];
        if (adjuster->kind == GW_ADJUST_OFFSET && sits_at(s, adjuster, joint))
            offset = gw_axpy(offset, s->x[i], gw_col(&at->frame, s->of[i].axis));
    }
    return gw_norm(offset);
}

/* Outside and bore of a bush, where the case tells; from its seat first, else from the rubber's sleeves. */
static bool bush_sizes(const gw_bush *bush, double *outside, double *bore)
{
    bool rubber = gw_bush_is_rubber(bush);
    *outside = bush->seat.given ? bush->seat.diameter : rubber ? 2.0 * bush->annulus.outer_radius : 0.0;
    *bore = bush->seat.bore > 0.0 ? bush->seat.bore : rubber ? 2.0 * bush->annulus.inner_radius : 0.0;
    return *outside > *bore && *bore > 0.0;
}

static void check_wall(const gw_setup *s, const gw_bush *bush, int joint, gw_align_item *item)
{
    gw_offset_wall wall;
    double outside, bore, offset = s->corner->joints[joint].housing < 0 ? 0.0 : offset_in_joint(s, joint);
    if (offset < 1e-9 || !bush_sizes(bush, &outside, &bore)) return;
    if (gw_offset_wall_of(outside, bore, offset, &wall, NULL) == GW_OK)
        add(item, joint, gw_offset_check(&wall));
}

static gw_status check_seat(const gw_bush *bush, int joint, double push_out, gw_align_item *item,
                            gw_error *err)
{
    const gw_seat *seat = &bush->seat;
    gw_press_fit fit = { .diameter = seat->diameter,
                         .housing_outside = seat->diameter + 2.0 * seat->housing_wall,
                         .sleeve_inside = seat->diameter - 2.0 * seat->sleeve_wall,
                         .length = seat->length,
                         .friction = seat->friction,
                         .housing = seat->housing_aluminium ? GW_RING_ALUMINIUM : GW_RING_STEEL,
                         .sleeve = GW_RING_STEEL };
    const gw_press_limits limits = { seat->housing_yield, seat->sleeve_yield, push_out };
    gw_press_result worst, held;
    gw_verdict verdict[GW_PRESS_CHECKS];
    fit.interference = seat->most;
    gw_status status = gw_press_fit_solve(&fit, &worst, err);
    fit.interference = seat->least > 0.0 ? seat->least : 0.0;
    if (status == GW_OK) status = gw_press_fit_solve(&fit, &held, err);
    if (status != GW_OK) return status;
    int n = gw_press_check(&worst, &held, &limits, verdict);
    for (int i = 0; i < n; i++) add(item, joint, verdict[i]);
    item->seat[item->n_seats++] = (gw_align_seat){ joint, fit.interference, seat->most, held, worst };
    return GW_OK;
}

static double tilt_of(const gw_align_item *item, int joint, double *limit)
{
    for (int i = 0; i < item->n_tilts; i++)
        if (item->tilt[i].joint == joint && isfinite(item->tilt[i].after)) {
            *limit = item->tilt[i].limit;
            return item->tilt[i].after;
        }
    *limit = 0.0;
    return 0.0;
}

static gw_status check_bearing(const gw_bush *bush, int joint, double peak, gw_align_item *item,
                               gw_error *err)
{
    gw_bearing_duty duty = { .peak_load = peak, .shock_factor = item->shock_factor };
    gw_verdict verdict[GW_BEARING_CHECKS];
    int n = 0;
    duty.tilt = tilt_of(item, joint, &duty.tilt_limit);
    gw_status status = gw_bearing_check(&bush->bearing, &duty, verdict, &n, err);
    for (int i = 0; i < n && status == GW_OK; i++) add(item, joint, verdict[i]);
    return status;
}

gw_status gw_align_checks(gw_setup *s, gw_align_item *item, const gw_peaks *peaks, gw_error *err)
{
    const gw_case *c = s->run->c;
    for (int j = 0; j < s->corner->n_joints; j++) {
        const gw_bush *bush = &c->bushes[c->kits[item->kit].fits[item->axle][j]];
        gw_status status = GW_OK;
        if (!gw_align_tells(s, item, j)) continue;
        check_wall(s, bush, j, item);
        if (bush->seat.given) status = check_seat(bush, j, peaks->axial[j], item, err);
        if (status == GW_OK && bush->type == GW_BUSH_BEARING && peaks->known)
            status = check_bearing(bush, j, peaks->force[j], item, err);
        if (status != GW_OK) return status;
    }
    return GW_OK;
}

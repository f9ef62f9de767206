/* SPDX-License-Identifier: MIT */
#include "giveway/rates.h"

#include <math.h>
#include <stddef.h>

const gw_material *gw_rates_material(const gw_bush *bush)
{
    return gw_bush_is_rubber(bush) ? &bush->annulus.material : NULL;
}

static gw_given_rates of_law(const gw_bush_law *law)
{
    return (gw_given_rates){ { law->k[0], law->k[1] }, law->k[2], { law->c[0], law->c[1] }, law->c[2] };
}

static gw_given_rates scaled(const gw_given_rates *r, double by)
{
    return (gw_given_rates){ { by * r->radial[0], by * r->radial[1] },
                             by * r->axial,
                             { by * r->conical[0], by * r->conical[1] },
                             by * r->torsional };
}

/* The closed forms beside the solution: bonded rubber brings them along, unbonded has a law of them. */
static gw_status set_beside(gw_rates_row *row, gw_error *err)
{
    gw_bush_law law;
    if (row->report.method == GW_METHOD_HANDBOOK) return GW_OK;
    row->has_beside = row->report.has_handbook;
    row->beside = row->report.handbook;
    if (row->bush->type != GW_BUSH_UNBONDED) return GW_OK;
    gw_status status = gw_bush_law_make(row->bush, GW_METHOD_HANDBOOK, &law, err);
    if (status != GW_OK) return status;
    row->has_beside = true;
    row->beside = of_law(&law);
    return GW_OK;
}

static double over(double closed, double solved)
{
    return solved > 0.0 ? closed / solved - 1.0 : (double)NAN;
}

static void set_difference(gw_rates_row *row)
{
    const gw_given_rates *a = &row->beside, *b = &row->own;
    gw_given_rates *d = &row->difference;
    for (int i = 0; i < 2; i++) {
        d->radial[i] = over(a->radial[i], b->radial[i]);
        d->conical[i] = over(a->conical[i], b->conical[i]);
    }
    d->axial = over(a->axial, b->axial);
    d->torsional = over(a->torsional, b->torsional);
}

static void set_dynamic(gw_rates_row *row, const gw_rates_plan *plan)
{
    gw_rates_dynamic *d = &row->dynamic;
    if (!(plan->hz > 0.0)) return;
    d->hz = plan->hz;
    d->amplitude = plan->amplitude;
    d->band = gw_dynamic_band_of(&row->report.law.dynamic, gw_rates_material(row->bush), d->hz, d->amplitude);
    d->complex_ratio[0] = d->band.ratio / hypot(1.0, d->band.loss);
    d->complex_ratio[1] = d->complex_ratio[0] * d->band.loss;
    d->loss_angle = atan(d->band.loss);
    d->rates = scaled(&row->own, d->band.ratio);
    d->ratio_range[0] = d->band.ratio_low;
    d->ratio_range[1] = d->band.ratio_high;
    d->loss_range[0] = d->band.loss_low;
    d->loss_range[1] = d->band.loss_high;
}

static void set_contact(gw_rates_row *row)
{
    row->has_contact = row->bush->type == GW_BUSH_BEARING &&
                       gw_bearing_stiffness_at(&row->bush->bearing, 0.0, &row->contact, NULL) == GW_OK;
}

gw_status gw_study_rates(const gw_bush *bush, const gw_rates_plan *plan, gw_rates_row *row, gw_error *err)
{
    gw_rates_row made = { .bush = bush };
    gw_status status = gw_bush_report_make(bush, plan->method, &made.report, err);
    if (status == GW_OK) status = set_beside(&made, err);
    if (status != GW_OK) return status;
    made.own = of_law(&made.report.law);
    made.has_band = made.report.low < 1.0 || made.report.high > 1.0;
    made.lowest = scaled(&made.own, made.report.low);
    made.highest = scaled(&made.own, made.report.high);
    if (made.has_beside) set_difference(&made);
    set_dynamic(&made, plan);
    set_contact(&made);
    *row = made;
    return GW_OK;
}

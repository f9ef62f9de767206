/* SPDX-License-Identifier: MIT */
/* Dynamic stiffness: size of the complex stiffness in each direction, loss factor and loss angle. */
#include "show/rates.h"

#include "format/number.h"

static const char LAW[] =
    "k* = k [1 + d X/(1 + X)] [1 + g/(1 + (x/xc)^(2m))], X = (i 2 pi f tau)^alpha, xc the critical shear "
    "strain times the wall. R. L. Bagley and P. J. Torvik, Journal of Rheology 30 (1986) 133-155; G. Kraus, "
    "Journal of Applied Polymer Science: Applied Polymer Symposium 39 (1984) 75-92 (both from memory). The "
    "values stand under the material; given by a case: ratio (1 + i loss).";

static void add_row(gw_table *table, const gw_rates_row *row)
{
    const gw_rates_dynamic *d = &row->dynamic;
    gw_table_cells(table, row->bush->name, gw_fixed(d->band.ratio, 2).s, gw_fixed(d->band.loss, 3).s,
                   gw_fixed(gw_unit_out(GW_UNIT_DEG, d->loss_angle), 1).s);
    gw_rates_cells(table, &d->rates);
}

static void dynamic_table(const gw_rates_made *made, gw_paper *paper)
{
    gw_table table = { 0 };
    gw_table_heads(&table, "lrrr", "bush", "over\nstatic", "loss\nfactor", "angle\ndeg");
    gw_rates_columns(&table);
    for (int i = 0; i < made->n; i++) add_row(&table, &made->row[i]);
    gw_paper_table(paper, &table, 0);
}

static void put_limits(const gw_rates_row *row, gw_paper *paper)
{
    const gw_dynamic_band *band = &row->dynamic.band;
    if (band->ratio_high > band->ratio_low)
        gw_paper_say(
            paper, 2,
            "%s: ratio %s to %s, loss factor %s to %s by the tolerances of the compound's dynamic values",
            row->bush->name, gw_fixed(band->ratio_low, 2).s, gw_fixed(band->ratio_high, 2).s,
            gw_fixed(band->loss_low, 3).s, gw_fixed(band->loss_high, 3).s);
}

static bool any_rubber(const gw_rates_made *made)
{
    bool any = false;
    for (int i = 0; i < made->n; i++) any = any || gw_rates_material(made->row[i].bush);
    return any;
}

static void put_law(bool rubber, bool explain, gw_paper *paper)
{
    if (rubber)
        gw_paper_say(paper, 2,
                     "Rubber: fractional Zener law in frequency, Kraus' form in amplitude, fitted at 15 Hz; "
                     "towards 500 Hz the ratio can be wrong by a fifth and the loss by a half.");
    if (rubber && explain) gw_paper_say(paper, 2, "%s", LAW);
    gw_paper_say(paper, 2, "Other kinds of bush: as given in the case, or the static rate without loss.");
}

void gw_dynamic_text(const gw_rates_made *made, gw_paper *paper)
{
    gw_paper_heading(
        paper,
        "At %s Hz and %s mm of amplitude: size of the complex stiffness; the loss is the same each way",
        gw_exact(made->plan.hz).s, gw_significant(gw_unit_out(GW_UNIT_MM, made->plan.amplitude), 3).s);
    dynamic_table(made, paper);
    for (int i = 0; i < made->n; i++) put_limits(&made->row[i], paper);
    put_law(any_rubber(made), made->plan.explain, paper);
}

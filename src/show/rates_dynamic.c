/* SPDX-License-Identifier: MIT */
/* Dynamic stiffness: size of the complex stiffness in each direction, loss factor and loss angle. */
#include "show/rates.h"

#include "format/number.h"
#include "giveway/units.h"

#include <math.h>

static const char LAW[] =
    "k* = k [1 + d X/(1 + X)] [1 + g/(1 + (x/xc)^(2m))], X = (i 2 pi f tau)^alpha, xc the critical shear "
    "strain times the wall. R. L. Bagley and P. J. Torvik, Journal of Rheology 30 (1986) 133-155; G. Kraus, "
    "Journal of Applied Polymer Science: Applied Polymer Symposium 39 (1984) 75-92 (both from memory). The "
    "values stand under the material; given by a case: ratio (1 + i loss).";

/* Every rate of a bush is multiplied by the same factor. */
static void dynamic_rates(const gw_rates_row *row, double ratio, double v[GW_RATES])
{
    gw_rates_of_law(&row->report.law, v);
    for (int i = 0; i < GW_RATES; i++) v[i] *= ratio;
}

static void add_row(gw_table *table, const gw_rates_row *row, const gw_rates_view *view)
{
    gw_dynamic_band band = gw_rates_dynamic(row, view->hz, view->amplitude);
    double v[GW_RATES];
    dynamic_rates(row, band.ratio, v);
    gw_table_cell(table, row->bush->name);
    gw_table_cell(table, gw_fixed(band.ratio, 2).s);
    gw_table_cell(table, gw_fixed(band.loss, 3).s);
    gw_table_cell(table, gw_fixed(atan(band.loss) / GW_DEG, 1).s);
    gw_rates_cells(table, v);
}

static gw_status dynamic_table(const gw_rates_row *rows, int n, const gw_rates_view *view, int width,
                               bool bold, gw_buf *out, gw_error *err)
{
    gw_table table = { 0 };
    gw_table_column(&table, GW_LEFT, "bush");
    gw_table_column(&table, GW_RIGHT, "over\nstatic");
    gw_table_column(&table, GW_RIGHT, "loss\nfactor");
    gw_table_column(&table, GW_RIGHT, "angle\ndeg");
    gw_rates_columns(&table);
    for (int i = 0; i < n; i++) add_row(&table, &rows[i], view);
    gw_status st = gw_table_print(&table, width, 0, bold, out, err);
    gw_table_free(&table);
    return st;
}

static void put_limits(const gw_rates_row *row, const gw_rates_view *view, int width, gw_buf *out)
{
    gw_dynamic_band band = gw_rates_dynamic(row, view->hz, view->amplitude);
    gw_buf text = { 0 };
    if (!(band.ratio_high > band.ratio_low)) return;
    gw_buf_clean(&text, row->bush->name);
    gw_buf_fmt(&text, ": ratio %s to %s", gw_fixed(band.ratio_low, 2).s, gw_fixed(band.ratio_high, 2).s);
    gw_buf_fmt(&text, ", loss factor %s to %s by the tolerances of the compound's dynamic values",
               gw_fixed(band.loss_low, 3).s, gw_fixed(band.loss_high, 3).s);
    gw_buf_paragraph(out, gw_buf_str(&text), width, 2);
    if (text.failed) out->failed = true;
    gw_buf_free(&text);
}

static bool any_rubber(const gw_rates_row *rows, int n)
{
    bool any = false;
    for (int i = 0; i < n; i++) any = any || gw_rates_is_rubber(rows[i].bush);
    return any;
}

static void put_law(bool rubber, bool explain, int width, gw_buf *out)
{
    if (rubber)
        gw_buf_paragraph(
            out,
            "Rubber: fractional Zener law in frequency, Kraus' form in amplitude, fitted at 15 Hz; "
            "towards 500 Hz the ratio can be wrong by a fifth and the loss by a half.",
            width, 2);
    if (rubber && explain) gw_buf_paragraph(out, LAW, width, 2);
    gw_buf_paragraph(out, "Other kinds of bush: as given in the case, or the static rate without loss.",
                     width, 2);
}

gw_status gw_dynamic_text(const gw_rates_row *rows, int n, const gw_rates_view *view, int width, bool bold,
                          gw_buf *out, gw_error *err)
{
    gw_buf_fmt(out, "\n%sAt %s Hz and ", bold ? "\033[1m" : "", gw_exact(view->hz).s);
    gw_buf_fmt(out, "%s mm of amplitude%s: size of the complex stiffness; the loss is the same each way\n",
               gw_significant(view->amplitude / GW_MM, 3).s, bold ? "\033[0m" : "");
    gw_status st = dynamic_table(rows, n, view, width, bold, out, err);
    for (int i = 0; i < n; i++) put_limits(&rows[i], view, width, out);
    put_law(any_rubber(rows, n), view->explain, width, out);
    return st;
}

void gw_dynamic_json(const gw_rates_row *row, const gw_rates_view *view, gw_json *json)
{
    gw_dynamic_band band = gw_rates_dynamic(row, view->hz, view->amplitude);
    double v[GW_RATES], real = band.ratio / hypot(1.0, band.loss);
    const double parts[] = { real, real * band.loss };
    dynamic_rates(row, band.ratio, v);
    gw_json_object(json, "dynamic");
    gw_json_number(json, "frequency_Hz", view->hz);
    gw_json_number(json, "amplitude_mm", view->amplitude / GW_MM);
    gw_json_number(json, "ratio", band.ratio);
    gw_json_numbers(json, "complex_ratio", parts, 2);
    gw_json_number(json, "loss_factor", band.loss);
    gw_json_number(json, "loss_angle_deg", atan(band.loss) / GW_DEG);
    gw_json_numbers(json, "radial_N_per_mm", v, 2);
    gw_json_number(json, "axial_N_per_mm", v[2]);
    gw_json_numbers(json, "conical_Nm_per_deg", v + 3, 2);
    gw_json_number(json, "torsional_Nm_per_deg", v[5]);
    const double ratio[] = { band.ratio_low, band.ratio_high }, loss[] = { band.loss_low, band.loss_high };
    gw_json_numbers(json, "ratio_range", ratio, 2);
    gw_json_numbers(json, "loss_factor_range", loss, 2);
    gw_json_close(json);
}

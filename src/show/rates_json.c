/* SPDX-License-Identifier: MIT */
/* Rates for other programs. */
#include "show/rates.h"

#include "format/csv.h"
#include "giveway/units.h"

static void json_stop(gw_json *json, const char *key, const gw_stop *stop)
{
    if (stop->rate <= 0) return;
    gw_json_object_on_line(json, key);
    gw_json_number(json, "gap_mm", stop->gap / GW_MM);
    gw_json_number(json, "rate_N_per_mm", stop->rate / GW_N_PER_MM);
    gw_json_close(json);
}

static void json_rates(gw_json *json, const double v[GW_RATES])
{
    gw_json_numbers(json, "radial_N_per_mm", v, 2);
    gw_json_number(json, "axial_N_per_mm", v[2]);
    gw_json_numbers(json, "conical_Nm_per_deg", v + 3, 2);
    gw_json_number(json, "torsional_Nm_per_deg", v[5]);
}

/* `radial_N_per_mm` is one number by the result format; across voids it is the one along e1. */
static void json_handbook(gw_json *json, const gw_rates_row *row)
{
    double v[GW_RATES], percent[GW_RATES];
    gw_rates_of_given(&row->beside, v);
    gw_rates_difference(row, percent);
    gw_json_object(json, "handbook");
    gw_json_number(json, "radial_N_per_mm", v[0]);
    gw_json_number(json, "axial_N_per_mm", v[2]);
    gw_json_number(json, "torsional_Nm_per_deg", v[5]);
    gw_json_numbers(json, "conical_Nm_per_deg", v + 3, 2);
    gw_json_object_on_line(json, "difference_percent");
    gw_json_number(json, "radial", percent[0]);
    gw_json_number(json, "axial", percent[2]);
    gw_json_number(json, "torsional", percent[5]);
    gw_json_numbers(json, "conical", percent + 3, 2);
    gw_json_close(json);
    gw_json_string(json, "source", gw_rates_handbook(row->bush->type));
    gw_json_close(json);
}

static void json_scaled(gw_json *json, const char *key, const double v[GW_RATES], double factor)
{
    double scaled[GW_RATES];
    for (int i = 0; i < GW_RATES; i++) scaled[i] = factor * v[i];
    gw_json_object(json, key);
    json_rates(json, scaled);
    gw_json_close(json);
}

static void json_band(gw_json *json, const gw_rates_row *row, const double v[GW_RATES])
{
    if (!gw_rates_has_band(row)) return;
    gw_json_object(json, "band");
    gw_json_number(json, "low", row->report.low);
    gw_json_number(json, "high", row->report.high);
    gw_json_string(json, "source", row->report.band_source);
    json_scaled(json, "lowest", v, row->report.low);
    json_scaled(json, "highest", v, row->report.high);
    gw_json_close(json);
}

static void json_limits(gw_json *json, const gw_bush_law *law)
{
    json_stop(json, "stop", &law->stop);
    json_stop(json, "void_stop", &law->void_stop);
    if (law->clearance > 0) gw_json_number(json, "play_each_side_mm", law->clearance / GW_MM);
    if (law->breakaway > 0) gw_json_number(json, "breakaway_Nm", law->breakaway);
    if (law->stiffening > 0) gw_json_number(json, "stiffening_per_mm2", law->stiffening * GW_MM * GW_MM);
}

static void json_row(gw_json *json, const gw_rates_row *row, const gw_rates_view *view)
{
    const gw_material *material = gw_rates_material(row->bush);
    double v[GW_RATES];
    gw_rates_of_law(&row->report.law, v);
    gw_json_object(json, NULL);
    gw_json_string(json, "name", row->bush->name);
    if (row->bush->label) gw_json_string(json, "label", row->bush->label);
    gw_json_string(json, "type", gw_bush_type_word(row->bush->type));
    gw_json_string(json, "method", gw_rates_method_word(row));
    json_rates(json, v);
    json_limits(json, &row->report.law);
    json_band(json, row, v);
    if (row->has_beside) json_handbook(json, row);
    if (view->dynamic) gw_dynamic_json(row, view, json);
    if (view->explain) gw_explain_json(row, json);
    if (view->explain && material) gw_material_json(material, json);
    gw_json_close(json);
}

void gw_rates_json(const gw_rates_row *rows, int n, const gw_rates_view *view, gw_buf *out)
{
    gw_json json = { .out = out };
    gw_json_object(&json, NULL);
    gw_json_string(&json, "format", "giveway-result-1");
    gw_json_string(&json, "command", "rates");
    gw_json_array(&json, "bushes");
    for (int i = 0; i < n; i++) json_row(&json, &rows[i], view);
    gw_json_close(&json);
    gw_json_close(&json);
}

static void csv_head(gw_csv *csv, bool dynamic)
{
    static const char *const HEAD[] = { "name",
                                        "type",
                                        "method",
                                        "radial_e1_N_per_mm",
                                        "radial_e2_N_per_mm",
                                        "axial_N_per_mm",
                                        "conical_e1_Nm_per_deg",
                                        "conical_e2_Nm_per_deg",
                                        "torsional_Nm_per_deg",
                                        "handbook_radial_N_per_mm",
                                        "handbook_axial_N_per_mm",
                                        "handbook_torsional_Nm_per_deg",
                                        "low",
                                        "high" };
    static const char *const DYNAMIC[] = { "frequency_Hz", "amplitude_mm", "dynamic_ratio", "loss_factor" };
    for (size_t i = 0; i < sizeof HEAD / sizeof *HEAD; i++) gw_csv_string(csv, HEAD[i]);
    for (size_t i = 0; dynamic && i < sizeof DYNAMIC / sizeof *DYNAMIC; i++) gw_csv_string(csv, DYNAMIC[i]);
    gw_csv_end_row(csv);
}

static void csv_row(gw_csv *csv, const gw_rates_row *row, const gw_rates_view *view)
{
    double v[GW_RATES], h[GW_RATES];
    gw_rates_of_law(&row->report.law, v);
    gw_csv_string(csv, row->bush->name);
    gw_csv_string(csv, gw_bush_type_word(row->bush->type));
    gw_csv_string(csv, gw_rates_method_word(row));
    gw_csv_numbers(csv, v, GW_RATES);
    gw_rates_of_given(&row->beside, h);
    const double beside[] = { h[0], h[2], h[5] };
    for (int i = 0; i < 3; i++) {
        if (row->has_beside)
            gw_csv_number(csv, beside[i]);
        else
            gw_csv_string(csv, NULL);
    }
    gw_csv_number(csv, row->report.low);
    gw_csv_number(csv, row->report.high);
    if (view->dynamic) {
        gw_dynamic_band band = gw_rates_dynamic(row, view->hz, view->amplitude);
        const double dynamic[] = { view->hz, view->amplitude / GW_MM, band.ratio, band.loss };
        gw_csv_numbers(csv, dynamic, 4);
    }
    gw_csv_end_row(csv);
}

void gw_rates_csv(const gw_rates_row *rows, int n, const gw_rates_view *view, gw_buf *out)
{
    gw_csv csv = { .out = out };
    csv_head(&csv, view->dynamic);
    for (int r = 0; r < n; r++) csv_row(&csv, &rows[r], view);
}

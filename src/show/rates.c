/* SPDX-License-Identifier: MIT */
#include "show/rates.h"

#include "giveway/units.h"
#include "show/csv.h"
#include "show/json.h"
#include "show/number.h"
#include "show/table.h"
#include "show/words.h"

static const char HANDBOOK_SOURCE[] =
    "Adkins & Gent, British Journal of Applied Physics 5 (1954), 354-358; between its long and short limits "
    "an interpolation good to a few per cent";

const char *gw_bush_type_word(gw_bush_type type)
{
    switch (type) {
    case GW_BUSH_RATES:
        return "rates";
    case GW_BUSH_BONDED:
        return "bonded";
    case GW_BUSH_UNBONDED:
        return "unbonded";
    case GW_BUSH_BEARING:
        return "bearing";
    case GW_BUSH_BALL_JOINT:
        return "ball_joint";
    case GW_BUSH_MEASURED:
        return "measured";
    }
    return "";
}

static bool is_rubber(const gw_bush *bush)
{
    return bush->type == GW_BUSH_BONDED || bush->type == GW_BUSH_UNBONDED;
}

static const char *method_word(const gw_rates_row *row)
{
    if (!is_rubber(row->bush)) return "given";
    return row->report.method == GW_METHOD_HANDBOOK ? "handbook" : "solved";
}

void gw_rates_of_law(const gw_bush_law *law, double v[6])
{
    for (int i = 0; i < 3; i++) {
        v[i] = law->k[i] / GW_N_PER_MM;
        v[3 + i] = law->c[i] / GW_NM_PER_DEG;
    }
}

/* As gw_rates_of_law, of the closed forms. */
static void handbook_rates(const gw_given_rates *rates, double v[6])
{
    v[0] = rates->radial[0] / GW_N_PER_MM;
    v[1] = rates->radial[1] / GW_N_PER_MM;
    v[2] = rates->axial / GW_N_PER_MM;
    v[3] = rates->conical[0] / GW_NM_PER_DEG;
    v[4] = rates->conical[1] / GW_NM_PER_DEG;
    v[5] = rates->torsional / GW_NM_PER_DEG;
}

static void text_row(gw_table *table, const char *name, const char *how, const double v[6])
{
    gw_table_cell(table, name);
    gw_table_cell(table, how);
    for (int i = 0; i < 6; i++) gw_table_cell(table, gw_significant(v[i], 3).s);
}

static void text_rows(gw_table *table, const gw_rates_row *row)
{
    double v[6];
    gw_rates_of_law(&row->report.law, v);
    text_row(table, row->bush->name, gw_bush_type_word(row->bush->type), v);
    if (!row->report.has_handbook || row->report.method == GW_METHOD_HANDBOOK) return;
    handbook_rates(&row->report.handbook, v);
    text_row(table, "", "by handbook", v);
}

static void text_columns(gw_table *table)
{
    gw_table_column(table, GW_LEFT, "bush");
    gw_table_column(table, GW_LEFT, "type");
    gw_table_column(table, GW_RIGHT, "radial e1\nN/mm");
    gw_table_column(table, GW_RIGHT, "radial e2\nN/mm");
    gw_table_column(table, GW_RIGHT, "axial\nN/mm");
    gw_table_column(table, GW_RIGHT, "conical e1\nN m/deg");
    gw_table_column(table, GW_RIGHT, "conical e2\nN m/deg");
    gw_table_column(table, GW_RIGHT, "torsional\nN m/deg");
}

static void put_stop(gw_buf *out, const char *name, const char *what, const gw_stop *stop)
{
    if (stop->rate <= 0) return;
    gw_buf_add(out, "  ");
    gw_buf_clean(out, name);
    gw_buf_fmt(out, ": %s after %s mm, %s N/mm more\n", what, gw_significant(stop->gap / GW_MM, 3).s,
               gw_significant(stop->rate / GW_N_PER_MM, 3).s);
}

static void put_stops(const gw_rates_row *row, gw_buf *out)
{
    put_stop(out, row->bush->name, "stop", &row->report.law.stop);
    put_stop(out, row->bush->name, "void closes along e1", &row->report.law.void_stop);
    if (row->report.law.clearance > 0) {
        gw_buf_add(out, "  ");
        gw_buf_clean(out, row->bush->name);
        gw_buf_fmt(out, ": play of %s mm each side of centre\n",
                   gw_significant(row->report.law.clearance / GW_MM, 3).s);
    }
}

/* How far the rates of rubber can be off by the tolerance of its modulus alone. */
static void put_band(const gw_rates_row *row, int width, gw_buf *out)
{
    if (row->report.low >= 1.0 && row->report.high <= 1.0) return;
    gw_buf text = { 0 };
    gw_buf_clean(&text, row->bush->name);
    gw_buf_fmt(&text, ": %s to %s of these rates", gw_fixed(row->report.low, 2).s,
               gw_fixed(row->report.high, 2).s);
    gw_buf_fmt(&text, " by the tolerance of the modulus (%s)", row->report.band_source);
    gw_buf_paragraph(out, gw_buf_str(&text), width, 2);
    gw_buf_free(&text);
}

gw_status gw_rates_text(const gw_rates_row *rows, int n, bool explain, int width, bool bold, gw_buf *out,
                        gw_error *err)
{
    gw_table table = { 0 };
    bool any_handbook = false;
    text_columns(&table);
    for (int i = 0; i < n; i++) {
        text_rows(&table, &rows[i]);
        any_handbook = any_handbook || rows[i].report.has_handbook;
    }
    gw_status st = gw_table_print(&table, width, 0, bold, out, err);
    gw_table_free(&table);
    for (int i = 0; i < n; i++) put_stops(&rows[i], out);
    for (int i = 0; (explain || n == 1) && i < n; i++) put_band(&rows[i], width, out);
    for (int i = 0; explain && i < n; i++) gw_explain_text(&rows[i], width, out);
    if (any_handbook) {
        gw_buf source = { 0 };
        gw_buf_fmt(&source, "Handbook: %s.", HANDBOOK_SOURCE);
        gw_buf_add(out, "\n");
        gw_buf_paragraph(out, gw_buf_str(&source), width, 0);
        gw_buf_paragraph(out, gw_words_text(GW_WORDS_RATE_ESTIMATE), width, 0);
        gw_buf_free(&source);
    }
    return st == GW_OK ? gw_buf_status(out, err) : st;
}

static void json_stop(gw_json *json, const char *key, const gw_stop *stop)
{
    if (stop->rate <= 0) return;
    gw_json_object_on_line(json, key);
    gw_json_number(json, "gap_mm", stop->gap / GW_MM);
    gw_json_number(json, "rate_N_per_mm", stop->rate / GW_N_PER_MM);
    gw_json_close(json);
}

static void json_handbook(gw_json *json, const gw_given_rates *rates)
{
    double v[6];
    handbook_rates(rates, v);
    gw_json_object(json, "handbook");
    gw_json_number(json, "radial_N_per_mm", v[0]);
    gw_json_number(json, "axial_N_per_mm", v[2]);
    gw_json_number(json, "torsional_Nm_per_deg", v[5]);
    gw_json_string(json, "source", HANDBOOK_SOURCE);
    gw_json_close(json);
}

static void json_row(gw_json *json, const gw_rates_row *row, bool explain)
{
    double v[6];
    gw_rates_of_law(&row->report.law, v);
    gw_json_object(json, NULL);
    gw_json_string(json, "name", row->bush->name);
    if (row->bush->label) gw_json_string(json, "label", row->bush->label);
    gw_json_string(json, "type", gw_bush_type_word(row->bush->type));
    gw_json_string(json, "method", method_word(row));
    gw_json_numbers(json, "radial_N_per_mm", v, 2);
    gw_json_number(json, "axial_N_per_mm", v[2]);
    gw_json_numbers(json, "conical_Nm_per_deg", v + 3, 2);
    gw_json_number(json, "torsional_Nm_per_deg", v[5]);
    json_stop(json, "stop", &row->report.law.stop);
    json_stop(json, "void_stop", &row->report.law.void_stop);
    if (row->report.law.clearance > 0)
        gw_json_number(json, "play_each_side_mm", row->report.law.clearance / GW_MM);
    if (row->report.law.breakaway > 0) gw_json_number(json, "breakaway_Nm", row->report.law.breakaway);
    if (row->report.low < 1.0 || row->report.high > 1.0) {
        gw_json_object_on_line(json, "band");
        gw_json_number(json, "low", row->report.low);
        gw_json_number(json, "high", row->report.high);
        gw_json_string(json, "source", row->report.band_source);
        gw_json_close(json);
    }
    if (row->report.has_handbook) json_handbook(json, &row->report.handbook);
    if (explain) gw_explain_json(row, json);
    gw_json_close(json);
}

void gw_rates_json(const gw_rates_row *rows, int n, bool explain, gw_buf *out)
{
    gw_json json = { .out = out };
    gw_json_object(&json, NULL);
    gw_json_string(&json, "format", "giveway-result-1");
    gw_json_string(&json, "command", "rates");
    gw_json_array(&json, "bushes");
    for (int i = 0; i < n; i++) json_row(&json, &rows[i], explain);
    gw_json_close(&json);
    gw_json_close(&json);
}

static void csv_row(gw_csv *csv, const gw_rates_row *row)
{
    double v[6], h[6];
    gw_rates_of_law(&row->report.law, v);
    gw_csv_string(csv, row->bush->name);
    gw_csv_string(csv, gw_bush_type_word(row->bush->type));
    gw_csv_string(csv, method_word(row));
    gw_csv_numbers(csv, v, 6);
    handbook_rates(&row->report.handbook, h);
    const double beside[] = { h[0], h[2], h[5] };
    for (int i = 0; i < 3; i++) {
        if (row->report.has_handbook)
            gw_csv_number(csv, beside[i]);
        else
            gw_csv_string(csv, NULL);
    }
    gw_csv_end_row(csv);
}

void gw_rates_csv(const gw_rates_row *rows, int n, gw_buf *out)
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
                                        "handbook_torsional_Nm_per_deg" };
    gw_csv csv = { .out = out };
    for (size_t i = 0; i < sizeof HEAD / sizeof *HEAD; i++) gw_csv_string(&csv, HEAD[i]);
    gw_csv_end_row(&csv);
    for (int r = 0; r < n; r++) csv_row(&csv, &rows[r]);
}

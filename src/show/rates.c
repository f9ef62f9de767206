/* SPDX-License-Identifier: MIT */
/* Rates for people: a table, what kind of bush each is, and on demand how every figure came about. */
#include "show/rates.h"

#include "format/number.h"
#include "show/words.h"

static void named_cells(gw_table *table, const char *name, const char *what)
{
    gw_table_cell(table, name);
    gw_table_cell(table, what);
}

static void difference_row(gw_table *table, const gw_rates_row *row)
{
    double percent[GW_RATES];
    gw_rates_difference(row, percent);
    named_cells(table, "", "difference %");
    for (int i = 0; i < GW_RATES; i++) gw_table_cell(table, gw_signed(percent[i], 1).s);
}

static void scaled_row(gw_table *table, const char *what, const double v[GW_RATES], double factor)
{
    double scaled[GW_RATES];
    for (int i = 0; i < GW_RATES; i++) scaled[i] = factor * v[i];
    named_cells(table, "", what);
    gw_rates_cells(table, scaled);
}

/* Solved, by handbook and their difference; then how low and high the compound's tolerance lets them be. */
static void add_rows(gw_table *table, const gw_rates_row *row)
{
    double v[GW_RATES], closed[GW_RATES];
    gw_rates_of_law(&row->report.law, v);
    named_cells(table, row->bush->name, gw_bush_type_word(row->bush->type));
    gw_rates_cells(table, v);
    if (row->has_beside) {
        gw_rates_of_given(&row->beside, closed);
        named_cells(table, "", "by handbook");
        gw_rates_cells(table, closed);
        difference_row(table, row);
    }
    if (gw_rates_has_band(row)) {
        scaled_row(table, "lowest", v, row->report.low);
        scaled_row(table, "highest", v, row->report.high);
    }
}

static gw_status rates_table(const gw_rates_row *rows, int n, int width, bool bold, gw_buf *out,
                             gw_error *err)
{
    gw_table table = { 0 };
    gw_table_column(&table, GW_LEFT, "bush");
    gw_table_column(&table, GW_LEFT, "type");
    gw_rates_columns(&table);
    for (int i = 0; i < n; i++) add_rows(&table, &rows[i]);
    gw_status st = gw_table_print(&table, width, 0, bold, out, err);
    gw_table_free(&table);
    return st;
}

static void put_band(const gw_rates_row *row, int width, gw_buf *out)
{
    if (!gw_rates_has_band(row)) return;
    gw_buf text = { 0 };
    gw_buf_clean(&text, row->bush->name);
    gw_buf_fmt(&text, ": %s to %s of these rates", gw_fixed(row->report.low, 2).s,
               gw_fixed(row->report.high, 2).s);
    gw_buf_fmt(&text, " by the tolerance of the modulus (%s)", row->report.band_source);
    gw_buf_paragraph(out, gw_buf_str(&text), width, 2);
    if (text.failed) out->failed = true;
    gw_buf_free(&text);
}

/* The closed forms of the types that have any in this list. */
static void handbook_words(const gw_rates_row *rows, int n, gw_bush_type type, gw_buf *out)
{
    for (int i = 0; i < n; i++)
        if (rows[i].has_beside && rows[i].bush->type == type) {
            gw_buf_fmt(out, " By handbook, %s: %s.", gw_bush_type_word(type), gw_rates_handbook(type));
            return;
        }
}

/* What the extra rows of rubber mean, and what the other kinds leave out. */
static void put_legend(const gw_rates_row *rows, int n, int width, gw_buf *out)
{
    bool band = false;
    gw_buf text = { 0 };
    for (int i = 0; i < n; i++) band = band || gw_rates_has_band(&rows[i]);
    handbook_words(rows, n, GW_BUSH_BONDED, &text);
    handbook_words(rows, n, GW_BUSH_UNBONDED, &text);
    if (band)
        gw_buf_fmt(&text, " Lowest and highest: by the tolerance of the compound's modulus. %s",
                   gw_words_text(GW_WORDS_RATE_ESTIMATE));
    if (n > 1) gw_rates_kinds(rows, n, &text);
    if (text.n) {
        gw_buf_add(out, "\n");
        gw_buf_paragraph(out, gw_buf_str(&text) + 1, width, 0);
    }
    if (text.failed) out->failed = true;
    gw_buf_free(&text);
}

static void put_explained(const gw_rates_row *row, int width, gw_buf *out)
{
    const gw_material *material = gw_rates_material(row->bush);
    gw_explain_text(row, width, out);
    if (material) gw_material_text(material, width, out);
}

gw_status gw_rates_text(const gw_rates_row *rows, int n, const gw_rates_view *view, int width, bool bold,
                        gw_buf *out, gw_error *err)
{
    gw_status st = rates_table(rows, n, width, bold, out, err);
    for (int i = 0; i < n; i++) gw_rates_notes(&rows[i], view->explain || n == 1, width, out);
    for (int i = 0; (view->explain || n == 1) && i < n; i++) put_band(&rows[i], width, out);
    if (st == GW_OK && view->dynamic) st = gw_dynamic_text(rows, n, view, width, bold, out, err);
    for (int i = 0; view->explain && i < n; i++) put_explained(&rows[i], width, out);
    put_legend(rows, n, width, out);
    return st == GW_OK ? gw_buf_status(out, err) : st;
}

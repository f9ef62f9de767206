/* SPDX-License-Identifier: MIT */
/* Rates for people: a table, what kind of bush each is, and on demand how every figure came about. */
#include "show/rates.h"

#include "show/words.h"

static void rates_row(gw_table *table, const char *name, const char *what, const gw_given_rates *rates)
{
    gw_table_cells(table, name, what);
    gw_rates_cells(table, rates);
}

/* Solved, by handbook and their difference; then how low and high the compound's tolerance lets them be. */
static void add_rows(gw_table *table, const gw_rates_row *row)
{
    rates_row(table, row->bush->name, GW_BUSH_TYPE_WORDS[row->bush->type], &row->own);
    if (row->has_beside) {
        rates_row(table, "", "by handbook", &row->beside);
        gw_table_cells(table, "", "difference %");
        gw_rates_differences(table, &row->difference);
    }
    if (row->has_band) {
        rates_row(table, "", "lowest", &row->lowest);
        rates_row(table, "", "highest", &row->highest);
    }
}

static void rates_table(const gw_rates_made *made, gw_paper *paper)
{
    gw_table table = { 0 };
    gw_table_heads(&table, "ll", "bush", "type");
    gw_rates_columns(&table);
    for (int i = 0; i < made->n; i++) add_rows(&table, &made->row[i]);
    gw_paper_table(paper, &table, 0);
}

static void put_band(const gw_rates_row *row, gw_paper *paper)
{
    if (row->has_band)
        gw_paper_say(paper, 2, "%s: %s to %s of these rates by the tolerance of the modulus (%s)",
                     row->bush->name, gw_fixed(row->report.low, 2).s, gw_fixed(row->report.high, 2).s,
                     row->report.band_source);
}

/* The closed forms of the types that have any in this list. */
static void handbook_words(const gw_rates_row *rows, int n, gw_bush_type type, gw_buf *out)
{
    for (int i = 0; i < n; i++)
        if (rows[i].has_beside && rows[i].bush->type == type) {
            gw_buf_fmt(out, " By handbook, %s: %s.", GW_BUSH_TYPE_WORDS[type], gw_rates_handbook(type));
            return;
        }
}

/* What the extra rows of rubber mean, and what the other kinds leave out. */
static void put_legend(const gw_rates_row *rows, int n, gw_paper *paper)
{
    bool band = false;
    gw_buf text = { 0 };
    for (int i = 0; i < n; i++) band = band || rows[i].has_band;
    handbook_words(rows, n, GW_BUSH_BONDED, &text);
    handbook_words(rows, n, GW_BUSH_UNBONDED, &text);
    if (band)
        gw_buf_fmt(&text, " Lowest and highest: by the tolerance of the compound's modulus. %s",
                   gw_words_text(GW_WORDS_RATE_ESTIMATE));
    if (n > 1) gw_rates_kinds(rows, n, &text);
    if (text.n) {
        gw_paper_gap(paper);
        gw_paper_say(paper, 0, "%s", gw_buf_str(&text) + 1);
    }
    gw_buf_drop(&text, paper->out);
}

static void put_explained(const gw_rates_row *row, gw_paper *paper)
{
    const gw_material *material = gw_rates_material(row->bush);
    gw_explain_text(row, paper);
    if (material) gw_material_text(material, paper);
}

void gw_rates_text(const gw_case *c, const void *it, gw_paper *paper)
{
    const gw_rates_made *made = it;
    const bool alone = made->n == 1, explain = made->plan.explain;
    (void)c;
    rates_table(made, paper);
    for (int i = 0; i < made->n; i++) gw_rates_notes(&made->row[i], explain || alone, paper);
    for (int i = 0; (explain || alone) && i < made->n; i++) put_band(&made->row[i], paper);
    if (made->plan.hz > 0.0) gw_dynamic_text(made, paper);
    for (int i = 0; explain && i < made->n; i++) put_explained(&made->row[i], paper);
    put_legend(made->row, made->n, paper);
}

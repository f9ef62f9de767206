/* SPDX-License-Identifier: MIT */
#include "format/number.h"
#include "format/table.h"
#include "giveway/units.h"
#include "show/bench.h"

#include <math.h>

static void pair_row(gw_table *table, const char *figure, const double v[2], double unit, const char *word)
{
    gw_number minus = gw_significant(v[0] / unit, 3), plus = gw_significant(v[1] / unit, 3);
    gw_table_cell(table, figure);
    gw_table_cellf(table, "%s, %s", minus.s, plus.s);
    gw_table_cell(table, word);
}

static void press_rows(gw_table *table, const gw_press *p, bool turns)
{
    const double unit = turns ? GW_DEG : GW_MM, rate = turns ? GW_NM_PER_DEG : GW_N_PER_MM;
    const char *rate_word = turns ? "N m/deg" : "N/mm", *length = turns ? "deg" : "mm";
    gw_table_cells(table, "rate at zero", gw_significant(p->rate_zero / rate, 3).s, rate_word);
    pair_row(table, "rate at a tenth of the stroke, minus and plus", p->rate_tenth, rate, rate_word);
    pair_row(table, "rate at full stroke", p->rate_full, rate, rate_word);
    pair_row(table, "stroke", p->stroke, unit, length);
    gw_table_cells(table, "loss factor", gw_fixed(p->loss, 3).s, "");
    gw_table_cells(table, "loss angle", gw_fixed(atan(p->loss) / GW_DEG, 1).s, "deg");
    gw_table_cells(table, "off a straight line by", gw_fixed(100.0 * p->nonlinearity, 1).s, "%");
    gw_table_cells(table, "asymmetry", gw_fixed(100.0 * p->asymmetry, 1).s, "%");
    gw_table_cells(table, turns ? "reading at no moment" : "reading at no force",
                   gw_fixed(p->zero / unit, 3).s, length);
    gw_table_cells(table, turns ? "moment at reading 0" : "force at reading 0",
                   gw_significant(p->zero_force, 3).s, turns ? "N m" : "N");
}

static void fitted_row(gw_table *table, const char *figure, double value, double within, double unit,
                       const char *word)
{
    gw_table_cell(table, figure);
    if (isfinite(within)) {
        gw_number v = gw_significant(value / unit, 4), w = gw_significant(within / unit, 2);
        gw_table_cellf(table, "%s +- %s", v.s, w.s);
    } else {
        gw_table_cell(table, gw_significant(value / unit, 4).s);
    }
    gw_table_cell(table, word);
}

static void rig_rows(gw_table *table, const gw_bench_file *file)
{
    const gw_rig *r = &file->rig;
    fitted_row(table, "rate, slow and far", r->law.rate, r->within[GW_RIG_RATE], GW_N_PER_MM, "N/mm");
    fitted_row(table, "Zener gain d", r->law.zener_gain, r->within[GW_RIG_ZENER_GAIN], 1.0, "");
    fitted_row(table, "Zener exponent alpha", r->law.zener_alpha, r->within[GW_RIG_ZENER_ALPHA], 1.0, "");
    fitted_row(table, "Zener time tau", r->law.zener_tau, (double)NAN, 1e-6, "microseconds");
    fitted_row(table, "Payne gain g", r->law.payne_gain, r->within[GW_RIG_PAYNE_GAIN], 1.0, "");
    if (r->law.payne_gain > 0.0) {
        fitted_row(table, "Payne amplitude xc", r->law.payne_amplitude, r->within[GW_RIG_PAYNE_AMPLITUDE],
                   GW_MM, "mm");
        fitted_row(table, "Payne exponent m", r->law.payne_exponent, r->within[GW_RIG_PAYNE_EXPONENT], 1.0,
                   "");
    }
    gw_table_cells(table, "scatter", gw_fixed(100.0 * r->scatter, 2).s, "%");
    gw_table_cell(table, "worst row");
    gw_number stiffness = gw_signed(100.0 * r->worst_stiffness, 1),
              angle = gw_signed(r->worst_loss / GW_DEG, 2);
    gw_table_cellf(table, "line %d: %s %%, %s deg", file->line[r->worst], stiffness.s, angle.s);
    gw_table_cell(table, "");
}

/* What has to be known before the figures are used. */
static void put_words(const gw_bench_file *file, int width, gw_buf *out)
{
    gw_buf text = { 0 };
    const gw_press *p = &file->press;
    if (file->kind == GW_BENCH_DYNAMIC) {
        if (file->rig.n_amplitudes < 3)
            gw_buf_fmt(
                &text,
                "Fewer than three amplitudes (%d): how stiffness falls with amplitude is not known, g = 0. ",
                file->rig.n_amplitudes);
        else if (file->rig.n_amplitudes == 3)
            gw_buf_add(&text, "Three amplitudes: the exponent m is held at 0.55. ");
        gw_buf_add(
            &text,
            "k* = rate [1 + d X/(1 + X)] [1 + g/(1 + (x/xc)^(2m))], X = (i 2 pi f tau)^alpha; +- is two "
            "standard errors.");
    } else {
        gw_buf_add(&text, p->sides == 2 ? "Both sides were tested. "
                                        : "One side was tested; the other is taken alike. ");
        if (p->one_way) gw_buf_add(&text, "One way only, no loop: no loss. ");
        if (p->turned) gw_buf_add(&text, "It was pulled: both columns are turned over. ");
        if (p->wrong_way) gw_buf_add(&text, "The loop runs the wrong way round: no loss can be read. ");
        gw_buf_add(&text, "A slow test does not know the dynamic stiffness.");
    }
    gw_paragraph_of(out, &text, width, 2);
}

static void put_points(const gw_bench_file *file, gw_paper *paper)
{
    gw_table table = { 0 };
    const gw_press *p = &file->press;
    bool turns = file->kind == GW_BENCH_MOMENT;
    gw_table_column(&table, GW_RIGHT, turns ? "angle\ndeg" : "deflection\nmm");
    gw_table_column(&table, GW_RIGHT, turns ? "moment\nN m" : "force\nN");
    for (int i = 0; i < p->n; i++) {
        gw_table_cells(&table, gw_fixed(p->x[i] / (turns ? GW_DEG : GW_MM), 3).s,
                       gw_significant(p->f[i], 4).s);
    }
    gw_paper_table(paper, &table, 2);
}

static void put_result(const gw_bench_result *r, gw_paper *paper)
{
    gw_table table = { 0 };
    gw_buf head = { 0 };
    bool dynamic = r->data.kind == GW_BENCH_DYNAMIC;
    gw_buf_say(&head, "%s: %s, %d readings", r->file, GW_BENCH_AS[r->as], r->data.n_rows);
    gw_table_column_of(&table, GW_LEFT, &head);
    gw_table_heads(&table, "rl", "", "");
    if (dynamic)
        rig_rows(&table, &r->data);
    else
        press_rows(&table, &r->data.press, r->data.kind == GW_BENCH_MOMENT);
    gw_paper_table(paper, &table, 0);
    put_words(&r->data, paper->width, paper->out);
    if (paper->detail && !dynamic) put_points(&r->data, paper);
}

void gw_bench_text(const gw_case *c, const void *it, gw_paper *paper)
{
    const gw_bench_made *made = it;
    (void)c;
    for (int i = 0; i < made->n; i++) {
        if (i) gw_paper_gap(paper);
        put_result(&made->result[i], paper);
    }
}

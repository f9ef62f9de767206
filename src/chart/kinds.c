/* SPDX-License-Identifier: MIT */
/* The usual kinds of charts, made of marks. */
#include "chart/chart.h"

#include "chart/style.h"
#include "format/number.h"

#include <math.h>

enum { MOST_BARS = 2 }; /* of third octaves, side by side */
enum { WHOLE_STYLE = GW_PARTS, DOWN_STYLE = GW_PARTS + 1, UP_STYLE = GW_PARTS + 3 };

/* Marks of one chart while they are made. */
typedef struct gw_marks {
    gw_charts *charts;
    gw_arena arena;
    gw_chart_mark *mark;
    int n;
} gw_marks;

static gw_marks begin(gw_charts *charts, int most)
{
    gw_marks m = { .charts = charts };
    m.mark = gw_arena_alloc(&m.arena, (size_t)most + 1, sizeof *m.mark);
    if (!m.mark) charts->failed = true;
    return m;
}

static gw_chart_mark *add(gw_marks *m, gw_chart_mark mark)
{
    m->mark[m->n] = mark;
    return &m->mark[m->n++];
}

static const char *keep(gw_marks *m, gw_number number)
{
    const char *s = gw_arena_strdup(&m->arena, number.s);
    if (!s) m->charts->failed = true;
    return s;
}

static void finish(gw_marks *m, const char *stem, gw_figure figure)
{
    figure.mark = m->mark;
    figure.n = m->n;
    if (m->mark && !m->charts->failed) gw_charts_figure(m->charts, stem, &figure);
    gw_arena_free(&m->arena);
}

static int style_of(const int *styles, int i)
{
    return styles ? styles[i] : i;
}

void gw_charts_lines(gw_charts *charts, const char *stem, const gw_line_chart *chart)
{
    gw_marks m = begin(charts, chart->n_series + chart->n_bands + 1);
    for (int i = 0; m.mark && i < chart->n_bands; i++) {
        const gw_chart_band *b = &chart->bands[i];
        add(&m, (gw_chart_mark){ .kind = GW_MARK_STRETCH, .from = b->from, .to = b->to, .name = b->label });
    }
    for (int i = 0; m.mark && i < chart->n_series; i++) {
        const gw_chart_series *s = &chart->series[i];
        add(&m,
            (gw_chart_mark){
                .kind = GW_MARK_LINE, .name = s->name, .x = s->x, .y = s->y, .n = s->n, .style = s->style });
    }
    if (m.mark && chart->has_mark)
        add(&m, (gw_chart_mark){ .kind = GW_MARK_LEVEL, .from = chart->mark, .name = chart->mark_label });
    finish(&m, stem,
           (gw_figure){ .words = chart->words,
                        .x = { .kind = chart->log_x ? GW_SCALE_LOG : GW_SCALE_LINEAR,
                               .fixed = chart->has_x_range,
                               .from = chart->x_from,
                               .to = chart->x_to },
                        .y = { .kind = chart->log_y ? GW_SCALE_LOG : GW_SCALE_LINEAR,
                               .with_zero = chart->with_zero } });
}

/* A title of rows is not used; values lie across. */
static gw_figure rows(gw_chart_words words, const char *const *names, int n)
{
    words.y_title = NULL;
    return (gw_figure){ .words = words,
                        .x = { .with_zero = true },
                        .y = { .kind = GW_SCALE_ROWS, .rows = names, .n_rows = n } };
}

/* ---- bars ---- */

static void add_group(gw_marks *m, const gw_bar_chart *chart, int group)
{
    for (int p = 0; p < chart->n_parts; p++) {
        const int at = group * chart->n_parts + p;
        double v = chart->values[at];
        if (!isfinite(v)) continue;
        bool whisker = chart->low && chart->high && isfinite(chart->low[at]) && isfinite(chart->high[at]);
        add(m, (gw_chart_mark){ .kind = GW_MARK_BAR,
                                .row = group,
                                .lane = p,
                                .low = whisker ? &chart->low[at] : NULL,
                                .high = whisker ? &chart->high[at] : NULL,
                                .lanes = chart->n_parts,
                                .to = v,
                                .style = style_of(chart->styles, p),
                                .figure = keep(m, gw_fixed(v, chart->decimals)),
                                .hatched = true });
    }
}

/* "sum" where parts of both signs lie beside each other. */
static const char *sum_text(gw_marks *m, double lo, double hi, double half, int decimals)
{
    gw_buf text = { 0 };
    gw_buf_fmt(&text, "%s%s", lo < 0 && hi > 0 ? "sum " : "", gw_fixed(lo + hi, decimals).s);
    if (isfinite(half)) gw_buf_fmt(&text, " \xC2\xB1 %s", gw_fixed(half, decimals).s);
    return gw_buf_kept(&text, &m->arena, &m->charts->failed);
}

/* What is below zero goes left, what is above goes right; the sum stands beyond the last part. */
static void add_stack(gw_marks *m, const gw_bar_chart *chart, int group)
{
    double lo = 0.0, hi = 0.0;
    bool any = false;
    gw_chart_mark *last[2] = { NULL, NULL };
    for (int p = 0; p < chart->n_parts; p++) {
        double v = chart->values[group * chart->n_parts + p];
        any = any || isfinite(v);
        if (!isfinite(v) || v == 0.0) continue;
        double *end = v < 0 ? &lo : &hi, from = *end;
        *end += v;
        last[v > 0] = add(m, (gw_chart_mark){ .kind = GW_MARK_BAR,
                                              .row = group,
                                              .from = from,
                                              .to = *end,
                                              .style = GW_PARTS + p,
                                              .letter = (char)('A' + p % 26) });
    }
    gw_chart_mark *bearer = last[1] ? last[1] : last[0];
    if (!bearer) bearer = add(m, (gw_chart_mark){ .kind = GW_MARK_BAR, .row = group });
    double half = chart->half ? chart->half[group] : (double)NAN;
    bearer->figure = any ? sum_text(m, lo, hi, half, chart->decimals) : "no result";
}

void gw_charts_bars(gw_charts *charts, const char *stem, const gw_bar_chart *chart)
{
    gw_marks m = begin(charts, chart->n_groups * (chart->n_parts + 1));
    for (int g = 0; m.mark && g < chart->n_groups; g++) {
        if (chart->stacked)
            add_stack(&m, chart, g);
        else
            add_group(&m, chart, g);
    }
    gw_figure figure = rows(chart->words, chart->groups, chart->n_groups);
    int *styles = gw_arena_alloc(&m.arena, (size_t)chart->n_parts + 1, sizeof *styles);
    if (!styles) charts->failed = true;
    for (int p = 0; styles && p < chart->n_parts; p++)
        styles[p] = chart->stacked ? GW_PARTS + p : style_of(chart->styles, p);
    figure.keys = chart->parts;
    figure.key_styles = styles;
    figure.n_keys = chart->parts ? chart->n_parts : 0;
    figure.letters = chart->stacked;
    finish(&m, stem, figure);
}

void gw_charts_waterfall(gw_charts *charts, const char *stem, const gw_waterfall_chart *chart)
{
    gw_marks m = begin(charts, chart->n + 2);
    const char **names = gw_arena_alloc(&m.arena, (size_t)chart->n + 2, sizeof *names);
    double level = isfinite(chart->start) ? chart->start : 0.0;
    if (!names) charts->failed = true;
    for (int row = 0; m.mark && names && row < chart->n + 2; row++) {
        bool total = row == 0 || row > chart->n;
        double step = total || !isfinite(chart->values[row - 1]) ? 0.0 : chart->values[row - 1];
        double from = total ? 0.0 : level, to = level += step;
        names[row] = row == 0 ? chart->start_name : total ? chart->end_name : chart->names[row - 1];
        gw_number figure = total ? gw_fixed(to, chart->decimals) : gw_signed(step, chart->decimals);
        add(&m, (gw_chart_mark){ .kind = GW_MARK_BAR,
                                 .row = row,
                                 .from = from,
                                 .to = to,
                                 .style = total      ? WHOLE_STYLE
                                          : step < 0 ? DOWN_STYLE
                                                     : UP_STYLE,
                                 .figure = keep(&m, figure),
                                 .tied = row <= chart->n });
    }
    finish(&m, stem, rows(chart->words, names, names ? chart->n + 2 : 0));
}

void gw_charts_spans(gw_charts *charts, const char *stem, const gw_span_chart *chart)
{
    gw_marks m = begin(charts, chart->n);
    for (int i = 0; m.mark && i < chart->n; i++) {
        if (!isfinite(chart->low[i]) || !isfinite(chart->high[i])) continue;
        add(&m, (gw_chart_mark){ .kind = GW_MARK_BAR,
                                 .row = i,
                                 .from = chart->low[i],
                                 .to = chart->high[i],
                                 .style = style_of(chart->styles, i),
                                 .figure = keep(&m, gw_signed(chart->high[i], chart->decimals)),
                                 .figure_at_from = keep(&m, gw_signed(chart->low[i], chart->decimals)) });
    }
    finish(&m, stem, rows(chart->words, chart->names, chart->n));
}

/* ---- third octaves ---- */

/* More names would be bars of a hair: lines, with their names at their ends, instead. */
static void add_lines(gw_marks *m, const gw_band_chart *chart)
{
    double *x = gw_arena_alloc(&m->arena, (size_t)chart->n_bands + 1, sizeof *x);
    if (!x) m->charts->failed = true;
    for (int b = 0; x && b < chart->n_bands; b++) x[b] = b;
    for (int i = 0; x && i < chart->n_names; i++)
        add(m, (gw_chart_mark){ .kind = GW_MARK_LINE,
                                .x = x,
                                .y = chart->values + (size_t)i * (size_t)chart->n_bands,
                                .n = chart->n_bands,
                                .name = chart->names[i],
                                .style = style_of(chart->styles, i) });
}

static void add_bands(gw_marks *m, const gw_band_chart *chart)
{
    for (int i = 0; i < chart->n_names; i++)
        for (int b = 0; b < chart->n_bands; b++) {
            double v = chart->values[i * chart->n_bands + b];
            if (!isfinite(v)) continue;
            add(m, (gw_chart_mark){ .kind = GW_MARK_BAR,
                                    .row = b,
                                    .lane = i,
                                    .lanes = chart->n_names,
                                    .to = v,
                                    .style = style_of(chart->styles, i),
                                    .hatched = true });
        }
}

void gw_charts_bands(gw_charts *charts, const char *stem, const gw_band_chart *chart)
{
    bool as_lines = chart->n_names > MOST_BARS;
    gw_marks m = begin(charts, chart->n_names * chart->n_bands);
    const char **names = gw_arena_alloc(&m.arena, (size_t)chart->n_bands + 1, sizeof *names);
    if (!names) charts->failed = true;
    for (int b = 0; names && b < chart->n_bands; b++) names[b] = keep(&m, gw_exact(chart->centre_hz[b]));
    if (m.mark && as_lines)
        add_lines(&m, chart);
    else if (m.mark)
        add_bands(&m, chart);
    finish(&m, stem,
           (gw_figure){ .words = chart->words,
                        .x = { .kind = GW_SCALE_ROWS, .rows = names, .n_rows = names ? chart->n_bands : 0 },
                        .y = { .with_zero = true },
                        .keys = chart->names,
                        .key_styles = chart->styles,
                        .n_keys = as_lines ? 0 : chart->n_names });
}

void gw_charts_points(gw_charts *charts, const char *stem, const gw_point_chart *chart)
{
    gw_marks m = begin(charts, chart->n);
    for (int i = 0; m.mark && i < chart->n; i++)
        add(&m, (gw_chart_mark){ .kind = GW_MARK_POINT,
                                 .x = &chart->x[i],
                                 .y = &chart->y[i],
                                 .low = chart->low ? &chart->low[i] : NULL,
                                 .high = chart->high ? &chart->high[i] : NULL,
                                 .n = 1,
                                 .name = chart->names[i],
                                 .style = style_of(chart->styles, i) });
    finish(&m, stem, (gw_figure){ .words = chart->words, .x = { .around = true }, .y = { .around = true } });
}

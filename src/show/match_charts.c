/* SPDX-License-Identifier: MIT */
/* Readings with their bands against the model before and after: a row a value. */
#include "show/match.h"

#include "base/utf8.h"
#include "chart/style.h"
#include "format/number.h"
#include "record/unit.h"

#include <math.h>
#include <stdio.h>

enum { MOST_ROWS = 60, NAME = 120, BARS = 3 };

/** What one chart shows: one axle, one figure. */
typedef struct gw_match_rows {
    int n;
    char name[MOST_ROWS][NAME];
    const char *row[MOST_ROWS];
    double read[MOST_ROWS], low[MOST_ROWS], high[MOST_ROWS], before[MOST_ROWS], after[MOST_ROWS];
} gw_match_rows;

/* By gw_read_figure: in names of files, as a title says it, its unit, at the axis. */
static const struct {
    const char *stem, *said, *unit, *axis;
} WORDS[GW_READ_FIGURES] = {
    { "toe", "toe change", "deg", "toe change (deg, toe-in positive)" },
    { "camber", "camber change", "deg", "camber change (deg, top outboard positive)" },
    { "caster", "caster change", "deg", "caster change (deg)" },
    { "fore-aft", "way fore and aft", "mm", "wheel centre moves (mm, forward positive)" },
    { "lateral", "way to the side", "mm", "wheel centre moves (mm, to the left positive)" },
    { "wheel-rate", "wheel rate", "N/mm", "wheel rate (N/mm)" },
};

/* "bump, -40 mm (poly)" */
static void name_row(const gw_case *c, const gw_reading *r, const gw_read_state *s, char name[NAME])
{
    int n = snprintf(name, NAME, "%.*s", gw_utf8_fit(r->name, 60), r->name);
    if (s->has_travel)
        n += snprintf(name + n, (size_t)(NAME - n), ", %s mm",
                      gw_signed(gw_unit_out(GW_UNIT_MM, s->travel), 0).s);
    if (!r->kit) return;
    const char *kit = c->kits[r->kit].name;
    snprintf(name + n, (size_t)(NAME - n), " (%.*s)", gw_utf8_fit(kit, 30), kit);
}

static void add_row(const gw_case *c, const gw_reading *r, const gw_match_value *v, gw_match_rows *rows)
{
    const gw_read_value *read = &r->value[v->value];
    const double unit = gw_read_unit(read->figure);
    const int n = rows->n;
    if (n == MOST_ROWS) return;
    name_row(c, r, &r->state[read->state], rows->name[n]);
    rows->row[n] = rows->name[n];
    rows->read[n] = read->reading / unit;
    rows->low[n] = (read->reading - 2.0 * read->sigma) / unit;
    rows->high[n] = (read->reading + 2.0 * read->sigma) / unit;
    rows->before[n] = v->before / unit;
    rows->after[n] = v->after / unit;
    rows->n++;
}

static void gather(const gw_case *c, const gw_readings *readings, const gw_match_study *s, gw_axle axle,
                   gw_read_figure figure, gw_match_rows *rows)
{
    rows->n = 0;
    for (int i = 0; i < s->n_values; i++) {
        const gw_reading *r = &readings->reading[s->value[i].reading];
        if (r->axle == axle && r->value[s->value[i].value].figure == figure)
            add_row(c, r, &s->value[i], rows);
    }
}

/* Three bars a row: what was read with its band, and the model before and after. */
static const int STYLES[BARS] = { GW_PARTS, GW_PARTS + 1, GW_PARTS + 2 };

static int put_bars(const gw_match_rows *rows, gw_chart_mark *mark)
{
    int n = 0;
    for (int i = 0; i < rows->n; i++) {
        const double to[BARS] = { rows->read[i], rows->before[i], rows->after[i] };
        for (int k = 0; k < BARS; k++)
            mark[n++] = (gw_chart_mark){ .kind = GW_MARK_BAR,
                                         .row = i,
                                         .lane = k,
                                         .lanes = BARS,
                                         .to = to[k],
                                         .low = k ? NULL : &rows->low[i],
                                         .high = k ? NULL : &rows->high[i],
                                         .style = STYLES[k],
                                         .hatched = k == 2 };
    }
    return n;
}

/* How far the case lies from what was read, root mean square, before and after. */
static void say(gw_read_figure figure, gw_axle axle, const gw_match_rows *rows, gw_buf *out)
{
    const char *unit = WORDS[figure].unit;
    double before = 0.0, after = 0.0;
    for (int i = 0; i < rows->n; i++) {
        before += pow(rows->before[i] - rows->read[i], 2) / rows->n;
        after += pow(rows->after[i] - rows->read[i], 2) / rows->n;
    }
    gw_buf_fmt(out, "%s %s of the case: %s %s from the readings, %s before",
               axle == GW_FRONT ? "Front" : "Rear", WORDS[figure].said, gw_significant(sqrt(after), 2).s,
               unit, gw_significant(sqrt(before), 2).s);
}

static void draw(const gw_case *c, gw_axle axle, gw_read_figure figure, const gw_match_rows *rows,
                 gw_charts *charts)
{
    static const char *const KEYS[BARS] = { "read, with its band", "case before", "case after" };
    gw_chart_mark mark[BARS * MOST_ROWS];
    gw_buf title = { 0 };
    say(figure, axle, rows, &title);
    gw_charts_figure(
        charts, gw_charts_fmt(charts, "match-%s-%s", gw_axle_name(axle), WORDS[figure].stem),
        &(gw_figure){ .words = { gw_charts_kept(charts, &title), c->title, WORDS[figure].axis, NULL, NULL,
                                 "Readings with their bands against the case before and after" },
                      .x = { .with_zero = true, .around = true },
                      .y = { .kind = GW_SCALE_ROWS, .rows = rows->row, .n_rows = rows->n },
                      .mark = mark,
                      .n = put_bars(rows, mark),
                      .keys = KEYS,
                      .key_styles = STYLES,
                      .n_keys = BARS });
}

void gw_match_charts(const gw_case *c, const void *it, gw_charts *charts)
{
    const gw_match_made *made = it;
    gw_match_rows *rows = gw_charts_room(charts, 1, sizeof *rows);
    for (int a = 0; rows && a < GW_AXLES; a++)
        for (int f = 0; f < GW_READ_FIGURES; f++) {
            gather(c, made->readings, made->study, (gw_axle)a, (gw_read_figure)f, rows);
            if (rows->n) draw(c, (gw_axle)a, (gw_read_figure)f, rows, charts);
        }
}

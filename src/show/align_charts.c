/* SPDX-License-Identifier: MIT */
/* Charts of an alignment: what each adjuster does, and what the loads take before and after. */
#include "show/align.h"

#include "chart/style.h"
#include "format/number.h"
#include "giveway/units.h"
#include "show/phrase.h"

#include <math.h>
#include <stdio.h>

enum { TEXT = 200 };

/* Names and numbers of a chart while it is made. */
typedef struct gw_drawing {
    gw_charts *charts;
    const char **group;
    double *value;
    int n, parts;
} gw_drawing;

static bool begin(gw_drawing *d, int groups, int parts, gw_charts *charts)
{
    *d = (gw_drawing){ .charts = charts, .parts = parts };
    d->group = gw_charts_room(charts, groups, sizeof *d->group);
    d->value = gw_charts_room(charts, groups * parts, sizeof *d->value);
    return d->group && d->value;
}

static const char *wheel_of(const gw_align_item *item)
{
    static const char *const WORDS[] = { "axle", "left", "right" };
    return WORDS[item->side];
}

static void finish(gw_drawing *d, const gw_case *c, const gw_align_item *item, const gw_bar_chart *bare,
                   const char *what, gw_buf *title)
{
    static const char *const SIDES[] = { "", "-left", "-right" };
    static const int STYLES[] = { GW_PARTS, GW_PARTS + 1, GW_PARTS + 2 };
    gw_bar_chart chart = *bare; /* its words and figures live no longer than this function */
    const char *stem = gw_charts_fmt(d->charts, "%s-%s%s-%s", what, gw_axle_name(item->axle), SIDES[item->side],
                                     c->kits[item->kit].name);
    chart.words.title = gw_charts_kept(d->charts, title);
    chart.words.subtitle = gw_kit_said(c, item->kit);
    chart.groups = d->group;
    chart.n_groups = d->n;
    chart.n_parts = d->parts;
    chart.styles = STYLES;
    chart.values = d->value;
    chart.decimals = 3;
    if (d->n) gw_charts_bars(d->charts, stem, &chart);
}

/* The adjuster and the angle that move most by a millimetre; the load that changes most by the setting. */
static void say(const gw_drawing *d, const gw_align_item *item, const char *const *parts, bool before,
                const char *angle, gw_buf *out)
{
    int most = 0, step = before ? 2 : 1, n = d->n * d->parts;
    double best = -1.0;
    for (int i = 0; i < n; i += step) {
        double size = fabs(before ? d->value[i + 1] - d->value[i] : d->value[i]);
        if (size > best) best = size, most = i;
    }
    if (!n) return;
    const char *row = d->group[most / d->parts], *axle = gw_axle_name(item->axle);
    if (!before)
        gw_buf_fmt(out, "%s %s: %s moves %s most, %s deg a mm", item->axle == GW_FRONT ? "Front" : "Rear",
                   wheel_of(item), row, parts[most % d->parts], gw_signed(d->value[most], 3).s);
    else if (best < 0.0005)
        gw_buf_fmt(out, "The setting changes no %s under load at the %s %s", angle, axle, wheel_of(item));
    else
        gw_buf_fmt(out, "As set, the %s change at the %s %s goes from %s to %s deg in %s", angle, axle,
                   wheel_of(item), gw_signed(d->value[most], 3).s, gw_signed(d->value[most + 1], 3).s, row);
}

static void chart_adjusters(const gw_case *c, const gw_align_item *item, gw_charts *charts)
{
    static const char *const PARTS[] = { "camber", "toe", "caster" };
    gw_bar_chart chart = { .words.x_title = "change (deg per mm)",
                           .words.note =
                               "positive: toe-in, camber with the top outboard, caster with the top rearward",
                           .parts = PARTS };
    gw_buf title = { 0 };
    gw_drawing d;
    chart.words.what = "What a millimetre of each adjuster does (deg a mm)";
    if (begin(&d, item->n_sensitivities, 3, charts))
        for (int i = 0; i < item->n_sensitivities; i++) {
            const gw_sensitivity *s = &item->sensitivity[i];
            const gw_adjuster *a = &c->align[item->axle].adjusters[s->adjuster];
            double *v = d.value + 3 * d.n;
            gw_buf name = { 0 };
            gw_adjuster_words(&c->corners[item->axle], a, &name);
            if (a->kind == GW_ADJUST_OFFSET) gw_buf_add(&name, s->axis ? ", along e2" : ", along e1");
            v[0] = s->camber / GW_DEG * GW_MM;
            v[1] = s->toe / GW_DEG * GW_MM;
            v[2] = s->caster / GW_DEG * GW_MM;
            d.group[d.n++] = gw_charts_kept(charts, &name);
        }
    say(&d, item, PARTS, false, NULL, &title);
    finish(&d, c, item, &chart, "adjusters", &title);
}

static void chart_loads(const gw_case *c, const gw_align_item *item, bool toe, gw_charts *charts)
{
    static const char *const PARTS[] = { "before", "as set" };
    gw_bar_chart chart = { .parts = PARTS };
    gw_buf title = { 0 };
    gw_drawing d;
    chart.words.what = toe ? "Toe change by load, before and as set (deg)"
                           : "Camber change by load, before and as set (deg)";
    chart.words.x_title =
        toe ? "toe change (deg, toe-in positive)" : "camber change (deg, top outboard positive)";
    if (begin(&d, item->n_loads, 2, charts))
        for (int i = 0; i < item->n_loads; i++) {
            const gw_align_load *l = &item->load[i];
            if (isnan(l->toe_before) || isnan(l->toe_after)) continue;
            d.value[2 * d.n] = (toe ? l->toe_before : l->camber_before) / GW_DEG;
            d.value[2 * d.n + 1] = (toe ? l->toe_after : l->camber_after) / GW_DEG;
            d.group[d.n++] = c->loads[l->load].name;
        }
    say(&d, item, PARTS, true, toe ? "toe" : "camber", &title);
    finish(&d, c, item, &chart, toe ? "align-toe" : "align-camber", &title);
}

void gw_align_charts(const gw_case *c, const void *made, gw_charts *charts)
{
    const gw_align_study *study = made;
    for (int i = 0; i < study->n; i++) {
        const gw_align_item *item = &study->item[i];
        chart_adjusters(c, item, charts);
        chart_loads(c, item, true, charts);
        chart_loads(c, item, false, charts);
    }
}

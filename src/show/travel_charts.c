/* SPDX-License-Identifier: MIT */
/* Charts of travel: one style a kit in all of them, in the order of the case. */
#include "giveway/units.h"
#include "show/deflect.h"
#include "show/travel.h"

#include <math.h>
#include <stdio.h>

enum { TEXT = 200 };

typedef double (*gw_travel_value)(const gw_travel_item *item, const gw_travel_point *point);

static double toe(const gw_travel_item *item, const gw_travel_point *p)
{
    (void)item;
    return p->toe_change / GW_DEG;
}

static double camber(const gw_travel_item *item, const gw_travel_point *p)
{
    (void)item;
    return p->camber_change / GW_DEG;
}

static double wheel_rate(const gw_travel_item *item, const gw_travel_point *p)
{
    (void)item;
    return p->rates.wheel_rate / GW_N_PER_MM;
}

static double roll_centre(const gw_travel_item *item, const gw_travel_point *p)
{
    (void)item;
    return p->roll_centre / GW_MM;
}

static double tilt(const gw_travel_item *item, const gw_travel_point *p)
{
    (void)item;
    return 100.0 * p->tilt_share;
}

typedef struct gw_travel_words {
    const char *stem, *title, *y_title;
    gw_travel_value value;
    bool with_zero, is_tilt;
} gw_travel_words;

static const gw_travel_words CHARTS[] = {
    { "toe-travel", "Toe through bump and rebound", "toe change (deg, toe-in positive)", toe, true, false },
    { "camber-travel", "Camber through bump and rebound", "camber change (deg, top outboard positive)",
      camber, true, false },
    { "wheel-rate-travel", "Wheel rate through bump and rebound", "wheel rate (N/mm)", wheel_rate, false,
      false },
    { "roll-centre-travel", "Roll centre through bump and rebound", "height above the ground (mm)",
      roll_centre, false, false },
    { "tilt-travel", "The joint nearest to its limit of tilt", "tilt (% of the limit)", tilt, true, true },
};

/* What one chart is made of; memory is the arena's. */
typedef struct gw_travel_lines {
    gw_arena arena;
    gw_chart_series *series;
    int n;
} gw_travel_lines;

static bool add_line(const gw_case *c, const gw_travel_item *item, gw_travel_value value,
                     gw_travel_lines *lines)
{
    size_t n = (size_t)item->n;
    double *x = gw_arena_alloc(&lines->arena, n, sizeof *x), *y = gw_arena_alloc(&lines->arena, n, sizeof *y);
    if (!x || !y) return false;
    for (size_t i = 0; i < n; i++) {
        x[i] = item->point[i].travel / GW_MM;
        y[i] = value(item, &item->point[i]);
    }
    const gw_kit *kit = &c->kits[item->kit];
    lines->series[lines->n++] = (gw_chart_series){
        .name = kit->label ? kit->label : kit->name, .x = x, .y = y, .n = item->n, .style = item->kit
    };
    return true;
}

static bool gather(const gw_case *c, const gw_travel_study *study, const gw_travel_words *words, gw_axle axle,
                   int load, gw_travel_lines *lines)
{
    lines->series = gw_arena_alloc(&lines->arena, (size_t)c->n_kits, sizeof *lines->series);
    if (!lines->series) return false;
    for (int k = 0; k < c->n_kits; k++) {
        const gw_travel_item *item = gw_travel_find(study, k, axle, load);
        if (!item || (words->is_tilt && !item->n_bearings)) continue;
        if (!add_line(c, item, words->value, lines)) return false;
    }
    return true;
}

static gw_status draw(const gw_case *c, const gw_travel_study *study, const gw_travel_words *words,
                      gw_axle axle, int load, gw_charts *charts, gw_error *err)
{
    gw_travel_lines lines = { 0 };
    char stem[TEXT], title[TEXT];
    const char *name = load < 0 ? "" : c->loads[load].name;
    snprintf(stem, sizeof stem, "%s-%s%s%.80s", words->stem, gw_axle_name(axle), load < 0 ? "" : "-", name);
    snprintf(title, sizeof title, "%s, %s corner%s%.60s", words->title, gw_axle_name(axle),
             load < 0 ? "" : ": ", name);
    bool ok = gather(c, study, words, axle, load, &lines);
    const gw_line_chart chart = { .words = { title, c->title, "travel of the wheel (mm, bump positive)",
                                             words->y_title, NULL },
                                  .series = lines.series,
                                  .n_series = lines.n,
                                  .with_zero = words->with_zero,
                                  .has_mark = words->is_tilt,
                                  .mark = 100.0,
                                  .mark_label = "limit" };
    if (ok && lines.n) gw_charts_lines(charts, stem, &chart);
    gw_arena_free(&lines.arena);
    return ok ? GW_OK : gw_fail(err, GW_E_NOMEM, "out of memory for a chart");
}

gw_status gw_travel_charts(const gw_case *c, const void *made, gw_charts *charts, gw_error *err)
{
    const gw_travel_study *study = made;
    for (gw_axle a = GW_FRONT; a < GW_AXLES; a++)
        for (int l = -1; l < c->n_loads; l++)
            for (size_t i = 0; i < sizeof CHARTS / sizeof *CHARTS; i++) {
                gw_status status = draw(c, study, &CHARTS[i], a, l, charts, err);
                if (status != GW_OK) return status;
            }
    return GW_OK;
}

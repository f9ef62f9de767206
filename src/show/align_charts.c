/* SPDX-License-Identifier: MIT */
/* Charts of an alignment: what each adjuster does, and what the loads take before and after. */
#include "show/align.h"

#include "giveway/units.h"
#include "show/deflect.h"

#include <math.h>
#include <stdio.h>

enum { TEXT = 200 };

/* Names and numbers of a chart while it is made. */
typedef struct gw_drawing {
    gw_arena arena;
    const char **group;
    double *value;
    int n, parts;
    bool failed;
} gw_drawing;

static bool begin(gw_drawing *d, int groups, int parts)
{
    *d = (gw_drawing){ .parts = parts };
    d->group = gw_arena_alloc(&d->arena, (size_t)groups + 1, sizeof *d->group);
    d->value = gw_arena_alloc(&d->arena, (size_t)(groups * parts) + 1, sizeof *d->value);
    d->failed = !d->group || !d->value;
    return !d->failed;
}

static void add_group(gw_drawing *d, const char *name)
{
    if (!(d->group[d->n++] = gw_arena_strdup(&d->arena, name))) d->failed = true;
}

static gw_status finish(gw_drawing *d, const gw_case *c, const gw_align_item *item, const gw_bar_chart *bare,
                        const char *what, const char *title, gw_charts *charts, gw_error *err)
{
    char stem[TEXT], long_title[TEXT], subtitle[TEXT];
    bool failed = d->failed;
    gw_bar_chart chart = *bare; /* its words and figures live no longer than this function */
    static const char *const SIDES[] = { "", "-left", "-right" }, *const WORDS[] = { "axle", "left",
                                                                                     "right" };
    snprintf(stem, sizeof stem, "%s-%s%s-%s", what, gw_axle_name(item->axle), SIDES[item->side],
             c->kits[item->kit].name);
    snprintf(long_title, sizeof long_title, "%s, %s %s", title, gw_axle_name(item->axle), WORDS[item->side]);
    snprintf(subtitle, sizeof subtitle, "%s", c->kits[item->kit].label);
    chart.words.title = long_title;
    chart.words.subtitle = subtitle;
    chart.groups = d->group;
    chart.n_groups = d->n;
    chart.n_parts = d->parts;
    chart.values = d->value;
    chart.decimals = 3;
    if (!failed && d->n) gw_charts_bars(charts, stem, &chart);
    gw_arena_free(&d->arena);
    return failed ? gw_fail(err, GW_E_NOMEM, "out of memory for a chart") : GW_OK;
}

static gw_status chart_adjusters(const gw_case *c, const gw_align_item *item, gw_charts *charts,
                                 gw_error *err)
{
    static const char *const PARTS[] = { "camber", "toe", "caster" };
    gw_bar_chart chart = { .words.x_title = "change (deg per mm)",
                           .words.note =
                               "positive: toe-in, camber with the top outboard, caster with the top rearward",
                           .parts = PARTS };
    gw_drawing d;
    if (begin(&d, item->n_sensitivities, 3))
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
            add_group(&d, gw_buf_str(&name));
            d.failed = d.failed || name.failed;
            gw_buf_free(&name);
        }
    return finish(&d, c, item, &chart, "adjusters", "What each adjuster does", charts, err);
}

static gw_status chart_loads(const gw_case *c, const gw_align_item *item, bool toe, gw_charts *charts,
                             gw_error *err)
{
    static const char *const PARTS[] = { "before", "as set" };
    gw_bar_chart chart = { .parts = PARTS };
    gw_drawing d;
    chart.words.x_title =
        toe ? "toe change (deg, toe-in positive)" : "camber change (deg, top outboard positive)";
    if (begin(&d, item->n_loads, 2))
        for (int i = 0; i < item->n_loads; i++) {
            const gw_align_load *l = &item->load[i];
            if (isnan(l->toe_before) || isnan(l->toe_after)) continue;
            d.value[2 * d.n] = (toe ? l->toe_before : l->camber_before) / GW_DEG;
            d.value[2 * d.n + 1] = (toe ? l->toe_after : l->camber_after) / GW_DEG;
            add_group(&d, c->loads[l->load].name);
        }
    return finish(&d, c, item, &chart, toe ? "align-toe" : "align-camber",
                  toe ? "Toe under load before and after" : "Camber under load before and after", charts,
                  err);
}

gw_status gw_align_charts(const gw_case *c, const void *made, gw_charts *charts, gw_error *err)
{
    const gw_align_study *study = made;
    for (int i = 0; i < study->n; i++) {
        const gw_align_item *item = &study->item[i];
        gw_status status = chart_adjusters(c, item, charts, err);
        if (status == GW_OK) status = chart_loads(c, item, true, charts, err);
        if (status == GW_OK) status = chart_loads(c, item, false, charts, err);
        if (status != GW_OK) return status;
    }
    return GW_OK;
}

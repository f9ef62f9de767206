/* SPDX-License-Identifier: MIT */
/* Charts of travel: one style a kit in all of them, in the order of the case. */
#include "giveway/casefile.h"
#include "giveway/units.h"
#include "show/message.h"
#include "show/phrase.h"
#include "show/travel.h"

#include <math.h>
#include <stddef.h>
#include <stdio.h>
#include <string.h>

enum { TEXT = 200 };

typedef struct gw_travel_words {
    const char *stem, *of, *y_title, *unit, *what;
    size_t at; /* of a gw_travel_point */
    gw_unit in;
    int decimals;
    bool with_zero, is_tilt, at_rest; /* at rest: told is the value at no travel, else how far it goes */
} gw_travel_words;

/* clang-format off */
#define AT(member) offsetof(gw_travel_point, member)
static const gw_travel_words CHARTS[] = {
    { "toe-travel", "Toe swing of the %s wheel over its travel", "toe change (deg, toe-in positive)", "deg",
      "Toe change (deg) over travel, kit by kit", AT(toe_change), GW_UNIT_DEG, 2, true, false, false },
    { "camber-travel", "Camber swing of the %s wheel over its travel", "camber change (deg, top outboard positive)", "deg",
      "Camber change (deg) over travel, kit by kit", AT(camber_change), GW_UNIT_DEG, 2, true, false, false },
    { "wheel-rate-travel", "Wheel rate at the %s", "wheel rate (N/mm)", "N/mm",
      "Wheel rate (N/mm) over travel, kit by kit; told is that at ride height", AT(rates.wheel_rate), GW_UNIT_N_PER_MM, 1, false, false, true },
    { "roll-centre-travel", "The way of the roll centre at the %s over the wheel's travel", "height above the ground (mm)", "mm",
      "Height of the roll centre (mm) over travel, kit by kit", AT(roll_centre), GW_UNIT_MM, 0, false, false, false },
    { "tilt-travel", "Largest tilt of a joint at the %s, of its limit,", "tilt (% of the limit)", "%",
      "Tilt of the joint nearest to its limit (%) over travel, kit by kit", AT(tilt_share), GW_UNIT_PERCENT, 0, true, true, false },
};
/* clang-format on */

static gw_chart_series line_of(const gw_case *c, const gw_travel_item *item, const gw_travel_words *words,
                               gw_charts *charts)
{
    double *x = gw_charts_room(charts, item->n, sizeof *x), *y = gw_charts_room(charts, item->n, sizeof *y);
    for (int i = 0; x && y && i < item->n; i++) {
        x[i] = item->point[i].travel / GW_MM;
        y[i] = gw_unit_of_member(words->in, &item->point[i], words->at);
    }
    return (gw_chart_series){
        .name = gw_kit_said(c, item->kit), .x = x, .y = y, .n = item->n, .style = item->kit
    };
}

static int gather(const gw_case *c, const gw_travel_study *study, const gw_travel_words *words, gw_axle axle,
                  int load, gw_chart_series *series, gw_charts *charts)
{
    int n = 0;
    for (int k = 0; k < c->n_kits; k++) {
        const gw_travel_item *item = gw_travel_find(study, k, axle, load);
        if (item && (!words->is_tilt || item->n_bearings)) series[n++] = line_of(c, item, words, charts);
    }
    return n;
}

/* How far a line goes from its least to its most; of tilt its most; at rest where the travel is least. */
static double told_of(const gw_travel_words *words, const gw_chart_series *s)
{
    double low = (double)NAN, high = (double)NAN, rest = (double)NAN, least = (double)INFINITY;
    for (int i = 0; i < s->n; i++) {
        low = fmin(low, s->y[i]);
        high = fmax(high, s->y[i]);
        if (fabs(s->x[i]) < least) least = fabs(s->x[i]), rest = s->y[i];
    }
    return words->at_rest ? rest : words->is_tilt ? high : high - low;
}

static void say(const gw_travel_words *words, gw_axle axle, const char *load, const gw_chart_series *series,
                int n, gw_buf *out)
{
    gw_told told[GW_MAX_KITS];
    gw_buf of = { 0 };
    for (int i = 0; i < n; i++)
        told[i] = (gw_told){ .kit = series[i].name, .value = told_of(words, &series[i]) };
    const char *at = strstr(words->of, "%s");
    gw_buf_bytes(&of, words->of, (size_t)(at - words->of));
    gw_buf_fmt(&of, "%s%s", gw_axle_name(axle), at + 2);
    if (load) gw_buf_fmt(&of, ", %s,", load);
    const gw_message message = { .of = gw_buf_str(&of), .unit = words->unit, .decimals = words->decimals };
    gw_message_kits(&message, told, n, out);
    gw_buf_drop(&of, out);
}

static void draw(const gw_case *c, const gw_travel_study *study, const gw_travel_words *words, gw_axle axle,
                 int load, gw_charts *charts)
{
    gw_chart_series series[GW_MAX_KITS];
    gw_buf title = { 0 };
    const char *name = load < 0 ? "" : c->loads[load].name;
    int n = gather(c, study, words, axle, load, series, charts);
    if (!n || charts->failed) return;
    say(words, axle, load < 0 ? NULL : name, series, n, &title);
    const gw_line_chart chart = { .words = { gw_charts_kept(charts, &title), c->title,
                                             "travel of the wheel (mm, bump positive)", words->y_title, NULL,
                                             words->what },
                                  .series = series,
                                  .n_series = n,
                                  .with_zero = words->with_zero,
                                  .has_mark = words->is_tilt,
                                  .mark = 100.0,
                                  .mark_label = "limit" };
    gw_charts_lines(
        charts,
        gw_charts_fmt(charts, "%s-%s%s%.80s", words->stem, gw_axle_name(axle), load < 0 ? "" : "-", name),
        &chart);
}

void gw_travel_charts(const gw_case *c, const void *made, gw_charts *charts)
{
    const gw_travel_study *study = made;
    for (gw_axle a = GW_FRONT; a < GW_AXLES; a++)
        for (int l = -1; l < c->n_loads; l++)
            for (size_t i = 0; i < sizeof CHARTS / sizeof *CHARTS; i++)
                draw(c, study, &CHARTS[i], a, l, charts);
}

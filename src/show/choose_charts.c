/* SPDX-License-Identifier: MIT */
/* Steadiness against harshness with cost as size, and the ladder of what more money buys. */
#include "giveway/casefile.h"
#include "show/choose.h"

#include "chart/style.h"
#include "format/number.h"

#include <math.h>
#include <stdio.h>

enum { TEXT = 200, MOST_MARKS = 2000 };
static const double SMALLEST = 8.0, LARGEST = 44.0; /* bubbles [pixel across] */
static const char *const REST[] = { "no other beats it, not recommended" };
static const int STYLE_OF_REST = GW_PARTS + 2;

typedef struct gw_choose_marks {
    gw_chart_mark *mark;
    double (*at)[2]; /* [mark]: x and y */
    char (*name)[TEXT];
    int n;
    bool rest; /**< the front has members that are not recommended */
} gw_choose_marks;

/* The area of a bubble grows with what it costs. */
static double size_of(const gw_choose_study *s, const gw_combination *of)
{
    double most = 0.0;
    for (int i = 0; i < s->n_front; i++) most = fmax(most, s->front[i].cost);
    double share = most > 0.0 ? fmin(of->cost / most, 1.0) : 0.0;
    return sqrt(SMALLEST * SMALLEST + share * (LARGEST * LARGEST - SMALLEST * SMALLEST));
}

static void add_point(const gw_choose_study *s, const gw_combination *of, int style, const char *name,
                      gw_choose_marks *m)
{
    double *at = m->at[m->n];
    at[0] = of->harshness;
    at[1] = gw_unit_out(gw_choose_unit(s), of->unsteadiness);
    snprintf(m->name[m->n], TEXT, "%s", name ? name : "");
    m->mark[m->n] = (gw_chart_mark){ .kind = GW_MARK_POINT,
                                     .x = &at[0],
                                     .y = &at[1],
                                     .n = 1,
                                     .style = style,
                                     .size = size_of(s, of),
                                     .name = name ? m->name[m->n] : NULL };
    m->n++;
}

static bool is_recommended(const gw_choose_study *s, int member)
{
    for (int r = 0; r < GW_RECOMMENDED && s->has_recommended; r++)
        if (s->recommended[r].member == member) return true;
    return false;
}

static void name_of(const gw_choose_study *s, int member, char name[TEXT])
{
    size_t n = 0;
    name[0] = '\0';
    for (int r = 0; r < GW_RECOMMENDED; r++)
        if (s->recommended[r].member == member)
            n += (size_t)snprintf(name + n, TEXT - n, "%s%s", n ? ", " : "", s->recommended[r].name);
}

/* None hides one that is smaller. */
static void large_ones_behind(gw_choose_marks *m)
{
    for (int i = 1; i < m->n; i++) {
        gw_chart_mark mark = m->mark[i];
        int at = i;
        for (; at > 0 && m->mark[at - 1].size < mark.size; at--) m->mark[at] = m->mark[at - 1];
        m->mark[at] = mark;
    }
}

/* The rest of the front without names, the recommendations and what is fitted now with theirs. */
static void put_points(const gw_choose_study *s, gw_choose_marks *m)
{
    for (int i = 0; i < s->n_front && m->n < MOST_MARKS; i++)
        if (!is_recommended(s, i)) add_point(s, &s->front[i], STYLE_OF_REST, NULL, m);
    m->rest = m->n > 0;
    add_point(s, &s->now, GW_PARTS, "now", m);
    for (int r = 0; r < GW_RECOMMENDED && s->has_recommended; r++) {
        char name[TEXT];
        int member = s->recommended[r].member;
        name_of(s, member, name);
        if (gw_choose_is_first(s, r)) add_point(s, &s->front[member], GW_PARTS + 1 + 2 * r, name, m);
    }
    large_ones_behind(m);
}

/* The steadiest of all, against what is fitted now. */
static void say_front(const gw_choose_study *s, gw_buf *out)
{
    const gw_combination *best = &s->now;
    for (int i = 0; i < s->n_front; i++)
        if (s->front[i].unsteadiness < best->unsteadiness) best = &s->front[i];
    if (best == &s->now)
        gw_buf_add(out, "Nothing on offer is steadier than what is fitted now");
    else
        gw_buf_fmt(out, "The steadiest on offer takes unsteadiness from %s to %s %s, for %s dB of harshness",
                   gw_fixed(gw_unit_out(gw_choose_unit(s), s->now.unsteadiness), 3).s,
                   gw_fixed(gw_unit_out(gw_choose_unit(s), best->unsteadiness), 3).s,
                   gw_unit_word(gw_choose_unit(s)), gw_signed(best->harshness, 1).s);
}

/* The first step that costs anything: what it buys. */
static void say_ladder(const gw_case *c, const gw_choose_study *s, const double *x, const double *y, int n,
                       gw_buf *out)
{
    int best = 0;
    for (int i = 1; i < n; i++)
        if (!best ||
            (y[i - 1] - y[i]) / (x[i] - x[i - 1]) > (y[best - 1] - y[best]) / (x[best] - x[best - 1]))
            best = i;
    if (!best) {
        gw_buf_add(out, "More money buys nothing steadier");
        return;
    }
    gw_buf_fmt(out, "Money buys most on the step to %s%s", gw_fixed(x[best], 0).s,
               c->shop.currency ? " " : "");
    gw_buf_clean(out, c->shop.currency ? c->shop.currency : "");
    gw_buf_fmt(out, ": unsteadiness from %s to %s %s", gw_fixed(y[best - 1], 3).s, gw_fixed(y[best], 3).s,
               gw_unit_word(gw_choose_unit(s)));
}

static void draw_front(const gw_case *c, const gw_choose_study *s, gw_choose_marks *m, gw_charts *charts)
{
    char y[TEXT];
    gw_buf title = { 0 };
    snprintf(y, sizeof y, "unsteadiness (%s)", gw_unit_word(gw_choose_unit(s)));
    say_front(s, &title);
    put_points(s, m);
    gw_charts_figure(
        charts, "choose-front",
        &(gw_figure){
            .words = { gw_charts_kept(charts, &title), c->title, "harshness over what is fitted now (dB)", y,
                       gw_case_has_prices(c)
                           ? "The larger the bubble, the dearer. Steadier is lower, quieter is left."
                           : "Without prices all are the same size. Steadier is lower, quieter is left.",
                       gw_case_has_prices(c) ? "What no other combination beats: steady, quiet or cheap"
                                             : "What no other combination beats: steady or quiet" },
            .x = { .around = true },
            .y = { .with_zero = true, .around = true },
            .mark = m->mark,
            .n = m->n,
            .keys = REST,
            .key_styles = &STYLE_OF_REST,
            .n_keys = m->rest ? 1 : 0 });
}

/* Level from step to step: money that stops short of the next buys nothing more. */
static void draw_ladder(const gw_case *c, const gw_choose_study *s, double *x, double *y, gw_charts *charts)
{
    char x_title[TEXT], y_title[TEXT];
    int n = 0;
    for (int i = 0; i < s->n_front; i++)
        if (s->front[i].step) {
            x[n] = s->front[i].cost;
            y[n++] = gw_unit_out(gw_choose_unit(s), s->front[i].unsteadiness);
        }
    snprintf(x_title, sizeof x_title, "cost%s%s%s", c->shop.currency ? " (" : "",
             c->shop.currency ? c->shop.currency : "", c->shop.currency ? ")" : "");
    snprintf(y_title, sizeof y_title, "unsteadiness (%s)", gw_unit_word(gw_choose_unit(s)));
    gw_buf title = { 0 };
    say_ladder(c, s, x, y, n, &title);
    double dearest = n && x[n - 1] > 0.0 ? x[n - 1] : 1.0;
    const gw_chart_mark mark = {
        .kind = GW_MARK_LINE, .style = GW_PARTS, .x = x, .y = y, .n = n, .stepped = true
    };
    gw_charts_figure(charts, "choose-ladder",
                     &(gw_figure){ .words = { gw_charts_kept(charts, &title), c->title, x_title, y_title,
                                              NULL, "The steadiest for the money" },
                                   .x = { .fixed = true, .from = 0.0, .to = 1.05 * dearest },
                                   .y = { .with_zero = true },
                                   .mark = &mark,
                                   .n = 1 });
}

void gw_choose_charts(const gw_case *c, const void *study, gw_charts *charts)
{
    const gw_choose_study *s = study;
    const int most = MOST_MARKS + 1 + GW_RECOMMENDED, steps = s->n_front + 1;
    gw_choose_marks m = { .mark = gw_charts_room(charts, most, sizeof *m.mark),
                          .at = gw_charts_room(charts, most, sizeof *m.at),
                          .name = gw_charts_room(charts, most, sizeof *m.name) };
    double *ladder = gw_charts_room(charts, 2 * steps, sizeof *ladder);
    if (!m.mark || !m.at || !m.name || !ladder) return;
    draw_front(c, s, &m, charts);
    if (gw_case_has_prices(c)) draw_ladder(c, s, ladder, ladder + steps, charts);
}

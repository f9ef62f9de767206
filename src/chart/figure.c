/* SPDX-License-Identifier: MIT */
/* Lays a figure out: measures words, reserves their room, scales values into what is left, draws. */
#include "chart/sheet.h"

#include <math.h>

/* Of the width, at least this part is left to the plot; names break, then are cut. */
static const double LEAST_PLOT = 0.3;

typedef struct gw_extent {
    double x0, x1, y0, y1;
    bool any;
} gw_extent;

static void take_in(gw_sheet *s, gw_extent *e, double x, double y)
{
    const gw_chart_scale *scale = &s->figure->x;
    if (!gw_sheet_shows(s, x, y) || (scale->fixed && (x < scale->from || x > scale->to))) return;
    if (!e->any) *e = (gw_extent){ x, x, y, y, true };
    e->x0 = fmin(e->x0, x);
    e->x1 = fmax(e->x1, x);
    e->y0 = fmin(e->y0, y);
    e->y1 = fmax(e->y1, y);
}

static void take_in_bar(gw_sheet *s, gw_extent *e, const gw_chart_mark *m)
{
    bool upright = s->figure->x.kind == GW_SCALE_ROWS;
    const double ends[] = { m->from, m->to, m->low ? m->low[0] : m->to, m->high ? m->high[0] : m->to };
    for (int i = 0; i < 4; i++) take_in(s, e, upright ? m->row : ends[i], upright ? ends[i] : m->row);
}

static gw_extent extent_of(gw_sheet *s)
{
    gw_extent e = { 0 };
    for (int k = 0; k < s->figure->n; k++) {
        const gw_chart_mark *m = &s->figure->mark[k];
        if (m->kind == GW_MARK_BAR) take_in_bar(s, &e, m);
        for (int i = 0; i < m->n; i++) {
            if (m->y) take_in(s, &e, m->x[i], m->y[i]);
            if (m->low) take_in(s, &e, m->x[i], m->low[i]);
            if (m->high) take_in(s, &e, m->x[i], m->high[i]);
        }
    }
    return e;
}

/* What is not a value of a mark, but must be seen: zero, levels, room for names of stretches. */
static void widen(gw_sheet *s, gw_extent *e)
{
    const gw_figure *f = s->figure;
    bool stretches = false, log_y = f->y.kind == GW_SCALE_LOG;
    if (f->x.fixed) e->x0 = f->x.from, e->x1 = f->x.to;
    if (f->x.with_zero) take_in(s, e, 0.0, e->y0);
    if (f->y.with_zero) take_in(s, e, e->x0, 0.0);
    for (int i = 0; i < f->n; i++) {
        if (f->mark[i].kind == GW_MARK_LEVEL) take_in(s, e, e->x0, f->mark[i].from);
        stretches = stretches || f->mark[i].kind == GW_MARK_STRETCH;
    }
    if (stretches) e->y1 = log_y ? e->y1 * pow(e->y1 / e->y0, 0.1) : e->y1 + 0.1 * (e->y1 - e->y0);
    double dx = f->x.around ? 0.08 * (e->x1 - e->x0) : 0.0, dy = f->y.around ? 0.15 * (e->y1 - e->y0) : 0.0;
    e->x0 -= dx, e->x1 += dx;
    e->y1 += dy;
    if (f->y.around)
        e->y0 = e->y0 >= 0.0 ? 0.0 : e->y0 - dy; /* sizes are compared by their distance from nothing */
}

/* Of a drawing that takes the width of the page, and is no higher than wide. */
static double drawing_height(gw_sheet *s)
{
    gw_extent e = extent_of(s);
    if (!e.any) return 120.0;
    widen(s, &e);
    double part = (e.y1 - e.y0) / fmax(e.x1 - e.x0, 1e-300);
    return fmax(120.0, fmin(1.0, part) * (s->out->width - 4 * GW_EDGE));
}

static double page_height(gw_sheet *s)
{
    double words = gw_caption_above(s) + gw_caption_below(s), names = gw_ends_height(s) - 10;
    if (s->figure->y.kind == GW_SCALE_ROWS) return words + gw_row_height(s) * s->figure->y.n_rows;
    double height = s->inlined ? GW_INLINED_HEIGHT : GW_PAGE_HEIGHT;
    if (s->figure->true_shape) return words + drawing_height(s);
    double points = (s->inlined ? 2.6 : 3.0) * gw_points_area(s) / (0.8 * s->out->width);
    return fmax(height, words + fmax(points, fmax(names, 120.0)));
}

static void set_places(gw_sheet *s)
{
    s->x.start = s->left;
    s->x.end = s->right;
    s->y.start = s->bottom;
    s->y.end = s->top;
}

/* Bars across: names of rows to the left; figures are reckoned with when values are scaled. */
static void scale_rows(gw_sheet *s, const gw_extent *e)
{
    s->left = GW_EDGE + (s->inlined ? 0.0 : gw_rows_room(s) + 12);
    s->right = s->out->width - GW_EDGE;
    gw_bars_fit(s, fmin(e->x0, 0.0), fmax(e->x1, 0.0));
    s->y = (gw_axis){ 0 };
}

static void scale_plane(gw_sheet *s, const gw_extent *e)
{
    const gw_figure *f = s->figure;
    double high = s->bottom - s->top, names = gw_ends_room(s), width = s->out->width;
    int most = (int)fmin(6, high / 34);
    s->y = f->y.kind == GW_SCALE_LOG ? gw_axis_log(e->y0, e->y1, true)
                                     : gw_axis_linear(e->y0, e->y1, most < 2 ? 2 : most, true);
    s->left = fmin(GW_EDGE + gw_axis_figures_room(&s->y) + 12, (1.0 - LEAST_PLOT) * width);
    s->right = width - (names > 0 ? names + GW_LEADER + 12 : f->x.around ? 40 : GW_EDGE + 10);
    if (f->x.kind == GW_SCALE_LOG)
        s->x = gw_axis_log(e->x0, e->x1, false);
    else if (f->x.kind == GW_SCALE_ROWS)
        s->x = (gw_axis){ .from = -0.5, .to = f->x.n_rows - 0.5 };
    else
        s->x = gw_frame_ticks(e->x0, e->x1, s->right - s->left, 9, f->x.around);
}

/* Up as across: where there is not room enough up, across is drawn smaller; what is over is shared. */
static void keep_shape(gw_sheet *s, const gw_extent *e)
{
    double across = s->right - s->left, up = s->bottom - s->top;
    double each = fmax((e->x1 - e->x0) / across, (e->y1 - e->y0) / up);
    double wide = 0.5 * (each * across - (e->x1 - e->x0)), high = 0.5 * (each * up - (e->y1 - e->y0));
    s->x = gw_frame_ticks(e->x0 - wide, e->x1 + wide, across, 9, false);
    s->y = gw_axis_linear(e->y0 - high, e->y1 + high, (int)fmax(2, fmin(6, up / 34)), false);
}

static bool scale(gw_sheet *s)
{
    gw_extent e = extent_of(s);
    if (!e.any) return false;
    widen(s, &e);
    if (s->figure->y.kind == GW_SCALE_ROWS)
        scale_rows(s, &e);
    else
        scale_plane(s, &e);
    if (s->figure->true_shape) keep_shape(s, &e);
    set_places(s);
    return true;
}

/* Where bars will end is known before how high the page is; names at the parts of a stack take height. */
static void find_labels(gw_sheet *s)
{
    gw_extent e = extent_of(s);
    if (!e.any || !s->figure->letters || s->figure->y.kind != GW_SCALE_ROWS) return;
    widen(s, &e);
    scale_rows(s, &e);
    set_places(s);
    gw_labels_find(s);
}

static bool beyond(int style)
{
    return style >= GW_STYLES && style < GW_PARTS;
}

static bool is_numbered(const gw_figure *f)
{
    for (int i = 0; i < f->n; i++)
        if (beyond(f->mark[i].style)) return true;
    for (int i = 0; f->key_styles && i < f->n_keys; i++)
        if (beyond(f->key_styles[i])) return true;
    return !f->letters && f->n_keys > GW_STYLES;
}

static void draw(gw_sheet *s)
{
    bool shows = scale(s);
    if (!shows) {
        s->left = GW_EDGE;
        s->right = s->out->width - GW_EDGE;
    }
    gw_caption_put(s);
    if (!shows) {
        gw_layout_text_at(s->out, 0.5 * s->out->width, 0.5 * (s->top + s->bottom), "no finite values to show",
                          GW_TYPE_TEXT, GW_SOFT_INK, GW_TEXT_CENTRE);
        return;
    }
    gw_stretches_put(s);
    gw_frame_put(s);
    gw_bars_put(s);
    gw_lines_put(s);
    gw_ends_put(s);
    gw_points_put(s);
    gw_levels_put(s);
}

gw_status gw_figure_lay_out(const gw_figure *figure, bool inlined, gw_arena *arena, gw_layout *out,
                            gw_error *err)
{
    gw_layout layout = { .arena = arena };
    gw_sheet s = { .out = &layout, .figure = figure, .inlined = inlined, .numbered = is_numbered(figure) };
    layout.width = inlined ? GW_INLINED_WIDTH : GW_PAGE_WIDTH;
    gw_caption_measure(&s);
    find_labels(&s);
    layout.height = (int)ceil(page_height(&s));
    s.top = gw_caption_above(&s);
    s.bottom = layout.height - gw_caption_below(&s);
    draw(&s);
    layout.title = gw_layout_words(&layout, figure->words.title);
    layout.what = gw_layout_words(&layout, figure->words.what);
    const char *said = gw_figure_describe(figure, arena);
    layout.description = said ? gw_layout_words(&layout, said) : NULL;
    if (layout.failed || !layout.title || !layout.what || !layout.description)
        return gw_fail(err, GW_E_NOMEM, "out of memory while charts were made");
    *out = layout;
    return GW_OK;
}

/* SPDX-License-Identifier: MIT */
#include "chart/gnuplot.h"

#include "chart/style.h"

#include <math.h>
#include <string.h>

/* Text in quotes that gnuplot takes literally, whatever is in it. */
static void quote(gw_buf *out, const char *s)
{
    gw_buf clean = { 0 };
    gw_buf_clean(&clean, s);
    gw_buf_add(out, "'"); /* between single quotes nothing but the quote itself means anything */
    for (const char *p = gw_buf_str(&clean); *p; p++)
        gw_buf_bytes(out, *p == '\'' ? "''" : p, *p == '\'' ? 2 : 1);
    gw_buf_add(out, "'");
    gw_buf_drop(&clean, out);
}

static void put_text(const gw_layout_text *t, int number, gw_buf *out)
{
    static const char *const SIDES[] = { "left", "centre", "right" };
    gw_buf_fmt(out, "set label %d ", number);
    quote(out, t->s);
    gw_buf_fmt(out, " at %.2f,%.2f %s front tc rgb '%s' font 'sans-serif%s,%d'\n", t->x, t->y, SIDES[t->side],
               t->colour, t->bold ? ":Bold" : "", t->size);
}

/* ---- shapes ---- */

/* gnuplot's own circles have 120 corners; of these the eye sees none either, and a page is much shorter. */
static void put_disc(gw_point middle, double radius, gw_buf *out)
{
    enum { CORNERS = 32 };
    for (int i = 0; i <= CORNERS; i++) {
        const double angle = 2.0 * acos(-1.0) * i / CORNERS;
        gw_buf_fmt(out, "%.2f %.2f\n", middle.x + radius * cos(angle), middle.y + radius * sin(angle));
    }
    gw_buf_add(out, "\n");
}

static void put_points(const gw_shape *s, gw_buf *out)
{
    const gw_point *p = s->at;
    switch (s->kind) {
    case GW_SHAPE_BOX: /* middle, then both edges of each axis */
        gw_buf_fmt(out, "%.2f %.2f %.2f %.2f ", 0.5 * (p[0].x + p[1].x), 0.5 * (p[0].y + p[1].y), p[0].x,
                   p[1].x);
        gw_buf_fmt(out, "%.2f %.2f\n", p[0].y, p[1].y);
        break;
    case GW_SHAPE_DISC:
        put_disc(*p, 0.5 * s->width, out);
        break;
    case GW_SHAPE_LINE:
    case GW_SHAPE_AREA:
    case GW_SHAPE_MARKER:
        for (int i = 0; i < s->n; i++) gw_buf_fmt(out, "%.2f %.2f\n", p[i].x, p[i].y);
        break;
    }
    if (s->kind == GW_SHAPE_LINE) gw_buf_add(out, "\n"); /* a gap: the next is a line of its own */
}

static void put_style(const gw_shape *s, gw_buf *out)
{
    switch (s->kind) {
    case GW_SHAPE_LINE:
        gw_buf_fmt(out, "1:2 with lines lw %.2f dt %s lc rgb '%s'", s->width, s->dash, s->colour);
        break;
    case GW_SHAPE_MARKER:
        gw_buf_fmt(out, "1:2 with points pt %d ps %.2f*k lw 1.5 lc rgb '%s'", s->pattern, s->width,
                   s->colour);
        break;
    case GW_SHAPE_AREA:
        gw_buf_fmt(out, "1:2 with filledcurves closed fs transparent solid 0.22 noborder fc rgb '%s'",
                   s->colour);
        break;
    case GW_SHAPE_DISC:
        gw_buf_fmt(out, "1:2 with filledcurves closed fs solid 1.0 border lc rgb '#ffffff' fc rgb '%s'",
                   s->colour);
        break;
    case GW_SHAPE_BOX:
        gw_buf_add(out, "1:2:3:4:5:6 with boxxyerror fs ");
        if (s->pattern >= 0)
            gw_buf_fmt(out, "pattern %d border lc rgb '%s' fc rgb '%s'", s->pattern, s->colour, s->colour);
        else
            gw_buf_fmt(out, "solid 1.0 noborder fc rgb '%s'", s->colour);
        break;
    }
}

/* Shapes that look alike and follow each other are drawn as one. */
static bool alike(const gw_shape *a, const gw_shape *b)
{
    bool dashes = !a->dash == !b->dash && (!a->dash || strcmp(a->dash, b->dash) == 0);
    return a->kind == b->kind && a->kind != GW_SHAPE_AREA && a->width == b->width &&
           a->pattern == b->pattern && dashes && strcmp(a->colour, b->colour) == 0;
}

/* One block of data for each group of shapes; returns the command that plots them all. */
static gw_buf put_shapes(const gw_layout *l, gw_buf *out)
{
    gw_buf plot = { 0 };
    for (int i = 0, block = 0; i < l->n_shapes; block++) {
        const gw_shape *first = &l->shape[i];
        gw_buf_fmt(out, "$d%d << EOD\n", block);
        do put_points(&l->shape[i++], out);
        while (i < l->n_shapes && alike(first, &l->shape[i]));
        gw_buf_add(out, "EOD\n");
        gw_buf_fmt(&plot, "%s$d%d using ", block ? ", \\\n  " : "plot ", block);
        put_style(first, &plot);
    }
    if (!plot.n) gw_buf_add(&plot, "plot 2 lc rgb '#ffffff'");
    return plot;
}

static void put_output(const gw_layout *l, gw_gnuplot_output output, gw_buf *out)
{
    if (output.svg)
        gw_buf_fmt(
            out, "set terminal svg size %d,%d dynamic noenhanced font 'sans-serif,%d' background '#ffffff'\n",
            l->width, l->height, GW_TYPE_TEXT);
    else /* it takes sizes as points of 96 to the inch: 3/4 makes them the pixels of the SVG, twice over */
        gw_buf_fmt(out,
                   "set terminal pngcairo size %d,%d noenhanced font 'sans-serif,%d' fontscale 1.5 "
                   "linewidth 2 pointscale 2 background '#ffffff'\n",
                   2 * l->width, 2 * l->height, GW_TYPE_TEXT);
    /* k makes markers of one size in both, which draw them by measures of their own */
    gw_buf_fmt(out, "k = %s\nset output f%d\n", output.svg ? "0.75" : "1.2", output.file);
}

/* gnuplot reads its standard input a byte at a time, which took as long as all SVGs; what comes through
 * another program it reads in blocks. Where there is no such program, it goes on as before. */
void gw_gnuplot_begin(gw_buf *script)
{
    gw_buf_add(script, "load '< cat'\n");
}

void gw_gnuplot_name(int number, const char *name, gw_buf *script)
{
    gw_buf_fmt(script, "f%d = ", number);
    quote(script, name);
    gw_buf_add(script, "\n");
}

void gw_gnuplot_page(const gw_layout *l, const gw_gnuplot_output *output, int n, gw_buf *out)
{
    gw_buf_add(out, "reset\nset encoding utf8\nunset key\nunset border\nunset tics\n"
                    "set datafile separator whitespace\nset lmargin at screen 0\nset rmargin at screen 1\n"
                    "set bmargin at screen 0\nset tmargin at screen 1\n");
    gw_buf_fmt(out, "set xrange [0:%d]\nset yrange [%d:0]\n", l->width, l->height);
    for (int i = 0; i < l->n_texts; i++) put_text(&l->text[i], i + 1, out);
    gw_buf plot = put_shapes(l, out);
    for (int i = 0; i < n; i++) {
        put_output(l, output[i], out);
        gw_buf_fmt(out, "%s\nunset output\n", i ? "replot" : gw_buf_str(&plot));
    }
    gw_buf_drop(&plot, out);
}

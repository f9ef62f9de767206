/* SPDX-License-Identifier: MIT */
/* Words around the plot: title, subtitle, keys, titles of the axes, small print. */
#include "chart/sheet.h"

#include <stdio.h>

enum { TITLE_LEADING = 24, TEXT_LEADING = 19, NOTE_LEADING = 16, KEY_LEADING = 21, BELOW_TICKS = 30 };

static double page_room(const gw_sheet *s)
{
    return s->out->width - 2.0 * GW_EDGE;
}

void gw_caption_measure(gw_sheet *s)
{
    const gw_chart_words *w = &s->figure->words;
    double room = page_room(s);
    bool bare = s->inlined; /* the page names it itself */
    char under[512];
    snprintf(under, sizeof under, "%s%s%s", w->what ? w->what : "", w->what && w->subtitle ? ". " : "",
             w->subtitle ? w->subtitle : "");
    s->title = gw_text_break(bare ? NULL : w->title, room, 3, GW_TYPE_TITLE, true);
    s->subtitle = gw_text_break(bare ? NULL : under, room, 3, GW_TYPE_TEXT, false);
    s->note = gw_text_break(w->note, room, 3, GW_TYPE_NOTE, false);
    s->x_title = gw_text_break(w->x_title, room, 2, GW_TYPE_TEXT, false);
    s->y_title = gw_text_break(w->y_title, room, 2, GW_TYPE_TEXT, false);
}

/* ---- keys ---- */

void gw_sample_put(gw_sheet *s, double x, double y, int i)
{
    const gw_figure *f = s->figure;
    const int style = f->key_styles ? f->key_styles[i] : i;
    char sign[8] = "";
    if (f->letters)
        snprintf(sign, sizeof sign, "%c", 'A' + i % 26);
    else if (s->numbered)
        snprintf(sign, sizeof sign, "%d", (style + 1) % 1000);
    if (f->lines) {
        gw_pen pen = { gw_style_colour(style), 2.2, gw_style_dash(style) };
        gw_layout_line(s->out, (gw_point){ x - 2, y }, (gw_point){ x + 17, y }, pen);
        return;
    }
    gw_layout_box(s->out, (gw_box){ x, y - 7.5, x + 15, y + 7.5 }, gw_style_fill(style),
                  f->letters || s->numbered || f->true_shape ? -1 : gw_style_hatching(style));
    if (*sign)
        gw_layout_text_at(s->out, x + 7.5, y, sign, f->letters ? GW_TYPE_NOTE : GW_TYPE_BADGE,
                          gw_style_text_on(style), GW_TEXT_CENTRE);
}

/* Rows of keys from y on down; returns the height they take. `put`: draws them as well. */
static double keys(gw_sheet *s, double y, bool put)
{
    const gw_figure *f = s->figure;
    double x = GW_EDGE, begin = y;
    bool any = false;
    for (int i = 0; i < f->n_keys; i++) {
        if (gw_label_of(s, i)) continue;
        any = true;
        gw_text_lines name = gw_text_break(f->keys[i], page_room(s) - 24, 1, GW_TYPE_TEXT, false);
        double width = 21 + gw_text_room(name.line[0], GW_TYPE_TEXT, false);
        if (x + width > s->out->width - GW_EDGE && x > GW_EDGE) {
            x = GW_EDGE;
            y += KEY_LEADING;
        }
        if (put) {
            gw_sample_put(s, x, y + 0.5 * KEY_LEADING, i);
            gw_layout_text_at(s->out, x + 21, y + 0.5 * KEY_LEADING, name.line[0], GW_TYPE_TEXT, GW_INK,
                              GW_TEXT_LEFT);
        }
        x += width + 16;
    }
    return any ? y + KEY_LEADING + 8 - begin : 0.0;
}

/* ---- above and below ---- */

static double put_lines(gw_sheet *s, double y, const gw_text_lines *lines, int leading, int size,
                        const char *colour)
{
    for (int i = 0; i < lines->n; i++, y += leading)
        gw_layout_text_at(s->out, GW_EDGE, y + 0.5 * leading, lines->line[i], size, colour, GW_TEXT_LEFT);
    return y;
}

static double top_edge(const gw_sheet *s)
{
    return s->inlined ? 2.0 : 12.0;
}

double gw_caption_above(const gw_sheet *s)
{
    gw_sheet dry = *s;
    double y = top_edge(s) + TITLE_LEADING * s->title.n + TEXT_LEADING * s->subtitle.n;
    if (s->title.n || s->subtitle.n) y += 9;
    y += keys(&dry, y, false) + gw_labels_height(s);
    return y + (s->y_title.n ? GW_LEADING * s->y_title.n + 11 : 8);
}

double gw_caption_below(const gw_sheet *s)
{
    return BELOW_TICKS + GW_LEADING * s->x_title.n + (s->note.n ? 6 + NOTE_LEADING * s->note.n : 0) +
           (s->inlined ? 2.0 : 10.0);
}

/* In the middle under the plot, as far as the page allows. */
static double put_x_title(gw_sheet *s, double y)
{
    for (int i = 0; i < s->x_title.n; i++, y += GW_LEADING) {
        double half = 0.5 * gw_text_room(s->x_title.line[i], GW_TYPE_TEXT, false);
        double x = 0.5 * (s->left + s->right), most = s->out->width - GW_EDGE - half;
        if (x > most) x = most;
        if (x < GW_EDGE + half) x = GW_EDGE + half;
        gw_layout_text_at(s->out, x, y + 0.5 * GW_LEADING, s->x_title.line[i], GW_TYPE_TEXT, GW_INK,
                          GW_TEXT_CENTRE);
    }
    return y;
}

void gw_caption_put(gw_sheet *s)
{
    double y = put_lines(s, top_edge(s), &s->title, TITLE_LEADING, GW_TYPE_TITLE, GW_INK);
    y = put_lines(s, y, &s->subtitle, TEXT_LEADING, GW_TYPE_TEXT, GW_SOFT_INK);
    if (s->title.n || s->subtitle.n) y += 9;
    y += keys(s, y, true);
    put_lines(s, y, &s->y_title, GW_LEADING, GW_TYPE_TEXT, GW_INK);
    y = put_x_title(s, s->bottom + BELOW_TICKS);
    put_lines(s, y + 6, &s->note, NOTE_LEADING, GW_TYPE_NOTE, GW_SOFT_INK);
}

/* ---- names ---- */

gw_text_lines gw_sheet_name(const gw_sheet *s, const gw_chart_mark *mark, double room)
{
    char name[400];
    int most = s->inlined ? 4 : 3;
    if (!s->numbered) return gw_text_break(mark->name, room, most, GW_TYPE_TEXT, false);
    snprintf(name, sizeof name, "%d  %.380s", mark->style + 1, mark->name);
    return gw_text_break(name, room, most, GW_TYPE_TEXT, false);
}

double gw_names_height(const gw_sheet *s)
{
    const gw_chart_scale *y = &s->figure->y;
    int most = 0;
    if (!s->inlined) return 0.0;
    for (int i = 0; i < y->n_rows; i++) {
        int n = gw_text_break(y->rows[i], s->out->width - 2.0 * GW_EDGE, 3, GW_TYPE_TEXT, false).n;
        if (n > most) most = n;
    }
    return most * (double)GW_LEADING;
}

void gw_sheet_block(gw_sheet *s, double x, double y, const gw_text_lines *lines, gw_text_side side)
{
    for (int i = 0; i < lines->n; i++)
        gw_layout_text_at(s->out, x, y + (i - 0.5 * (lines->n - 1)) * GW_LEADING, lines->line[i],
                          GW_TYPE_TEXT, GW_INK, side);
}

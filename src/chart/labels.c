/* SPDX-License-Identifier: MIT */
/*
 * Names at the bars of a stack: each above its part of the first row, tied to it by a line, or inside the
 * part where that is wide enough. Lines of names are counted from the bar upwards. A name may hide no tie of
 * another; one that finds no place stays among the keys.
 */
#include "chart/sheet.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

enum { APART = 8, NARROWEST = 4, LEAST_NAME = 70, TWO = 2 };

static const gw_chart_mark *part_of(const gw_sheet *s, int key)
{
    for (int i = 0; i < s->figure->n; i++) {
        const gw_chart_mark *m = &s->figure->mark[i];
        if (m->kind == GW_MARK_BAR && m->row == 0 && m->letter == 'A' + key) return m;
    }
    return NULL;
}

void gw_label_inside(const gw_chart_mark *mark, const char *name, char text[GW_LABEL_TEXT])
{
    snprintf(text, GW_LABEL_TEXT, "%c  %.240s", mark->letter, name);
}

static double width_of(const gw_sheet *s, const gw_chart_mark *m)
{
    return fabs(gw_axis_at(&s->x, m->to) - gw_axis_at(&s->x, m->from));
}

/* In one line of the part itself. */
static bool fits_inside(const gw_sheet *s, const gw_chart_mark *m, int key)
{
    char text[GW_LABEL_TEXT];
    gw_label_inside(m, s->figure->keys[key], text);
    return gw_text_room(text, GW_TYPE_TICK, false) + 4 <= width_of(s, m);
}

/* ---- places ---- */

/* All of it in so many lines on this side of the tie? */
static bool breaks_whole(const gw_sheet *s, gw_bar_label *l, int lines)
{
    static const char CUT[] = "\xE2\x80\xA6";
    double room =
        (l->leftward ? l->x - GW_EDGE : s->out->width - GW_EDGE - l->x) - GW_LABEL_SAMPLE - GW_LABEL_CLEAR;
    if (room < LEAST_NAME) return false;
    gw_text_lines name = gw_text_break(s->figure->keys[l->key], room, lines, GW_TYPE_TEXT, false);
    if (strstr(name.line[name.n - 1], CUT) && !strstr(s->figure->keys[l->key], CUT)) return false;
    l->lines = name.n;
    l->within = room;
    l->room = gw_text_lines_room(&name, GW_TYPE_TEXT);
    return true;
}

double gw_label_from(const gw_bar_label *l)
{
    return l->leftward ? l->x - GW_LABEL_SAMPLE - l->room : l->x;
}

double gw_label_to(const gw_bar_label *l)
{
    return l->leftward ? l->x : l->x + GW_LABEL_SAMPLE + l->room;
}

/* The tie of `a` goes down through the lines of `b`. */
static bool hides(const gw_bar_label *b, const gw_bar_label *a)
{
    return a->line > b->line && a->x > gw_label_from(b) - GW_LABEL_CLEAR &&
           a->x < gw_label_to(b) + GW_LABEL_CLEAR;
}

static bool clash(const gw_bar_label *a, const gw_bar_label *b)
{
    bool level = a->line < b->line + b->lines && b->line < a->line + a->lines;
    bool beside = gw_label_from(a) < gw_label_to(b) + APART && gw_label_from(b) < gw_label_to(a) + APART;
    return (level && beside) || hides(a, b) || hides(b, a);
}

static bool is_free(const gw_bar_labels *all, const gw_bar_label *l)
{
    for (int i = 0; i < all->n; i++)
        if (clash(&all->label[i], l)) return false;
    return true;
}

static bool place(const gw_sheet *s, gw_bar_labels *all, gw_bar_label l)
{
    for (int lines = 1; lines <= TWO; lines++) {
        if (!breaks_whole(s, &l, lines)) continue;
        for (l.line = 0; l.line + l.lines <= GW_MOST_LABELS; l.line++) {
            if (!is_free(all, &l)) continue;
            all->label[all->n++] = l;
            all->lines = all->lines > l.line + l.lines ? all->lines : l.line + l.lines;
            return true;
        }
    }
    return false;
}

/* Towards the side to which names lead, the foremost part first: those behind it then stand higher, and
 * their ties pass it by. What found no room goes to the other side, above all of them. */
static gw_bar_labels place_all(const gw_sheet *s, const gw_bar_label *part, int n, bool leftward)
{
    gw_bar_labels all = { .n = 0 };
    bool placed[GW_MOST_LABELS] = { false };
    for (int pass = 0; pass < 2; pass++)
        for (int i = 0; i < n; i++) {
            int at = leftward == (pass == 0) ? i : n - 1 - i;
            gw_bar_label l = part[at];
            l.leftward = leftward == (pass == 0);
            if (!placed[at]) placed[at] = place(s, &all, l);
        }
    return all;
}

static bool is_better(const gw_bar_labels *a, const gw_bar_labels *b)
{
    return a->n > b->n || (a->n == b->n && a->lines < b->lines);
}

/* From the left to the right. */
static void insert(gw_bar_label *part, int n, gw_bar_label l)
{
    for (; n > 0 && part[n - 1].x > l.x; n--) part[n] = part[n - 1];
    part[n] = l;
}

void gw_labels_find(gw_sheet *s)
{
    gw_bar_label part[GW_MOST_LABELS];
    int n = 0, inside = 0;
    gw_bar_label within[GW_MOST_LABELS];
    for (int k = 0; k < s->figure->n_keys && n + inside < GW_MOST_LABELS; k++) {
        const gw_chart_mark *m = part_of(s, k);
        if (!m || width_of(s, m) < NARROWEST) continue;
        gw_bar_label l = { .key = k, .x = gw_axis_at(&s->x, 0.5 * (m->from + m->to)) };
        if (fits_inside(s, m, k))
            within[inside++] = l;
        else
            insert(part, n++, l);
    }
    gw_bar_labels right = place_all(s, part, n, false), left = place_all(s, part, n, true);
    s->labels = is_better(&left, &right) ? left : right;
    for (int i = 0; i < inside; i++) {
        within[i].inside = true;
        s->labels.label[s->labels.n++] = within[i];
    }
}

const gw_bar_label *gw_label_of(const gw_sheet *s, int key)
{
    for (int i = 0; i < s->labels.n; i++)
        if (s->labels.label[i].key == key) return &s->labels.label[i];
    return NULL;
}

double gw_labels_height(const gw_sheet *s)
{
    return s->labels.lines ? GW_LEADING * s->labels.lines + GW_LABEL_FOOT : 0.0;
}

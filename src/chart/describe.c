/* SPDX-License-Identifier: MIT */
/* What a picture shows, in words: for a screen reader in place of the picture. */
#include "chart/layout.h"

#include "base/buf.h"
#include "format/number.h"

#include <math.h>
#include <string.h>

static void add_number(gw_buf *out, double value)
{
    gw_buf_add(out, gw_significant(value, 3).s);
}

static bool shows(const gw_figure *f, const gw_chart_mark *m, int i)
{
    return isfinite(m->x[i]) && isfinite(m->y[i]) &&
           (!f->x.fixed || (m->x[i] >= f->x.from && m->x[i] <= f->x.to));
}

/* A line: where it begins and ends, and its lowest and highest point. */
static void add_line(gw_buf *out, const gw_figure *f, const gw_chart_mark *m)
{
    int first = -1, last = -1, low = -1, high = -1;
    for (int i = 0; i < m->n; i++) {
        if (!shows(f, m, i)) continue;
        if (first < 0) first = low = high = i;
        last = i;
        if (m->y[i] < m->y[low]) low = i;
        if (m->y[i] > m->y[high]) high = i;
    }
    if (first < 0) return;
    const struct {
        const char *word;
        int at;
    } parts[] = { { " from ", first }, { " to ", last }, { "; lowest ", low }, { ", highest ", high } };
    gw_buf_add(out, m->name ? m->name : "a line");
    gw_buf_add(out, ":");
    for (int i = 0; i < 4; i++) {
        gw_buf_add(out, parts[i].word);
        add_number(out, m->y[parts[i].at]);
        gw_buf_add(out, " at ");
        add_number(out, m->x[parts[i].at]);
    }
    gw_buf_add(out, ". ");
}

static const char *key_of(const gw_figure *f, const gw_chart_mark *m)
{
    int i = m->letter ? m->letter - 'A' : -1;
    for (int k = 0; i < 0 && k < f->n_keys; k++)
        if ((f->key_styles ? f->key_styles[k] : k) == m->style) i = k;
    return i >= 0 && i < f->n_keys ? f->keys[i] : NULL;
}

/* A bar: row, part of it, and its figures or its length; of a stack each part, and the sum where it stands.
 */
static void add_bar(gw_buf *out, const gw_figure *f, const gw_chart_mark *m)
{
    const gw_chart_scale *rows = f->x.kind == GW_SCALE_ROWS ? &f->x : &f->y;
    const char *row = rows->rows[m->row], *key = key_of(f, m);
    gw_buf_fmt(out, "%s%s%s: ", row, key ? ", " : "", key ? key : "");
    if (m->figure_at_from) gw_buf_fmt(out, "%s to ", m->figure_at_from);
    if (m->figure && !m->letter)
        gw_buf_add(out, m->figure);
    else
        add_number(out, m->to - m->from);
    if (m->figure && m->letter) gw_buf_fmt(out, ". %s, all: %s", row, m->figure);
    if (m->low && m->high) {
        gw_buf_add(out, ", between ");
        add_number(out, m->low[0]);
        gw_buf_add(out, " and ");
        add_number(out, m->high[0]);
    }
    gw_buf_add(out, ". ");
}

static void add_mark(gw_buf *out, const gw_figure *f, const gw_chart_mark *m)
{
    switch (m->kind) {
    case GW_MARK_LINE:
        if (!m->drawn) add_line(out, f, m);
        break;
    case GW_MARK_BAR:
        add_bar(out, f, m);
        break;
    case GW_MARK_POINT:
        for (int i = 0; i < m->n; i++) {
            gw_buf_fmt(out, "%s%s", m->name ? m->name : "point", ": ");
            add_number(out, m->x[i]);
            gw_buf_add(out, ", ");
            add_number(out, m->y[i]);
            gw_buf_add(out, ". ");
        }
        break;
    case GW_MARK_LEVEL:
        gw_buf_fmt(out, "%s: ", m->name ? m->name : "level");
        add_number(out, m->from);
        gw_buf_add(out, ". ");
        break;
    case GW_MARK_AREA:
    case GW_MARK_STRETCH:
        break; /* what lies in them is told by the lines */
    }
}

static void add_words(gw_buf *out, const char *before, const char *words)
{
    size_t n = words ? strlen(words) : 0;
    if (n) gw_buf_fmt(out, "%s%s%s ", before, words, words[n - 1] == '.' ? "" : ".");
}

const char *gw_figure_describe(const gw_figure *f, gw_arena *arena)
{
    gw_buf text = { 0 };
    add_words(&text, "", f->words.what);
    add_words(&text, "", f->words.subtitle);
    add_words(&text, "Across: ", f->words.x_title);
    add_words(&text, "Up: ", f->words.y_title);
    for (int i = 0; i < f->n; i++) add_mark(&text, f, &f->mark[i]);
    add_words(&text, "", f->words.note);
    while (text.n && text.s[text.n - 1] == ' ') text.s[--text.n] = '\0';
    return gw_buf_keep(&text, arena);
}

/* SPDX-License-Identifier: MIT */
/* Names at the bars of a stack, drawn where they were placed. */
#include "chart/sheet.h"

static const gw_pen TIE = { GW_SOFT_INK, 0.9, NULL };

static void put_name(gw_sheet *s, const gw_bar_label *l, double foot)
{
    double bottom = foot - GW_LABEL_FOOT - GW_LEADING * l->line, top = bottom - GW_LEADING * l->lines;
    double sample = l->leftward ? l->x - GW_LABEL_CLEAR - 15 : l->x + GW_LABEL_CLEAR;
    double words = l->leftward ? sample - 6 : sample + 21;
    gw_text_lines name = gw_text_break(s->figure->keys[l->key], l->within, l->lines, GW_TYPE_TEXT, false);
    gw_layout_box(s->out, (gw_box){ gw_label_from(l), top, gw_label_to(l), bottom }, GW_WHITE, -1);
    gw_sample_put(s, sample, bottom - 0.5 * GW_LEADING, l->key);
    gw_sheet_block(s, words, 0.5 * (top + bottom), &name, l->leftward ? GW_TEXT_RIGHT : GW_TEXT_LEFT);
}

void gw_labels_put(gw_sheet *s, double foot, double bar)
{
    for (int i = 0; i < s->labels.n; i++)
        if (!s->labels.label[i].inside) put_name(s, &s->labels.label[i], foot);
    for (int i = 0; i < s->labels.n; i++) {
        const gw_bar_label *l = &s->labels.label[i];
        double top = foot - GW_LABEL_FOOT - GW_LEADING * (l->line + 0.5);
        if (l->inside) continue;
        gw_layout_line(s->out, (gw_point){ l->x, bar }, (gw_point){ l->x, top }, TIE);
        gw_layout_line(s->out, (gw_point){ l->x, top },
                       (gw_point){ l->x + (l->leftward ? -GW_LABEL_CLEAR : GW_LABEL_CLEAR), top }, TIE);
    }
}

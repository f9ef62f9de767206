/* SPDX-License-Identifier: MIT */
#include "format/number.h"
#include "format/table.h"
#include "giveway/units.h"
#include "show/deflect.h"
#include "show/travel.h"
#include "show/travel_figures.h"
#include "show/words.h"

#include <math.h>

enum { USUAL_ROWS = 13 }; /* places of travel shown unless all are asked for */

static void heading(const gw_travel_page *p, const gw_travel_item *item)
{
    const gw_kit *kit = &p->c->kits[item->kit];
    gw_buf_fmt(p->out, "\n%s%s corner, kit ", p->bold ? "\033[1m" : "", gw_axle_name(item->axle));
    gw_buf_clean(p->out, kit->name);
    if (kit->label != kit->name) {
        gw_buf_add(p->out, ": ");
        gw_buf_clean(p->out, kit->label);
    }
    if (item->load >= 0) {
        gw_buf_add(p->out, "; under the forces of ");
        gw_buf_clean(p->out, p->c->loads[item->load].name);
    }
    gw_buf_add(p->out, p->bold ? "\033[0m\n" : "\n");
}

static void path_columns(gw_table *t)
{
    gw_table_column(t, GW_RIGHT, "travel\nmm");
    gw_table_column(t, GW_RIGHT, "toe\ndeg");
    gw_table_column(t, GW_RIGHT, "\n° '");
    gw_table_column(t, GW_RIGHT, "camber\ndeg");
    gw_table_column(t, GW_RIGHT, "caster\ndeg");
    gw_table_column(t, GW_RIGHT, "track\nmm");
    gw_table_column(t, GW_RIGHT, "wheelbase\nmm");
    gw_table_column(t, GW_RIGHT, "load\nN");
    gw_table_column(t, GW_RIGHT, "wheel rate\nN/mm");
    gw_table_column(t, GW_RIGHT, "roll centre\nmm");
}

static void path_row(gw_table *t, const gw_travel_point *p)
{
    gw_table_cell(t, gw_signed(p->travel / GW_MM, 0).s);
    gw_table_cell(t, gw_signed(p->toe_change / GW_DEG, 3).s);
    gw_table_cell(t, gw_degrees_minutes(p->toe_change, 1).s);
    gw_table_cell(t, gw_signed(p->camber_change / GW_DEG, 3).s);
    gw_table_cell(t, gw_signed(p->caster_change / GW_DEG, 3).s);
    gw_table_cell(t, gw_signed(p->track_change / GW_MM, 1).s);
    gw_table_cell(t, gw_signed(p->wheelbase_change / GW_MM, 1).s);
    gw_table_cell(t, gw_fixed(p->rates.vertical_load, 0).s);
    gw_table_cell(t, gw_fixed(p->rates.wheel_rate / GW_N_PER_MM, 2).s);
    gw_table_cell(t, gw_fixed(p->roll_centre / GW_MM, 1).s);
    gw_table_end_row(t);
}

/* Every k-th place counted from the one nearest to travel 0, and both ends. */
static bool is_shown(const gw_travel_item *item, int index, bool all)
{
    int zero = 0, every = (item->n - 1 + USUAL_ROWS - 2) / (USUAL_ROWS - 1);
    if (all || index == 0 || index == item->n - 1 || every < 2) return true;
    for (int i = 1; i < item->n; i++)
        if (fabs(item->point[i].travel) < fabs(item->point[zero].travel)) zero = i;
    return (index - zero) % every == 0;
}

static gw_status path_table(const gw_travel_page *p, const gw_travel_item *item, gw_error *err)
{
    gw_table table = { 0 };
    path_columns(&table);
    for (int i = 0; i < item->n; i++)
        if (is_shown(item, i, p->all)) path_row(&table, &item->point[i]);
    gw_status status = gw_table_print(&table, p->width, 2, p->bold, p->out, err);
    gw_table_free(&table);
    return status;
}

static gw_status item_text(const gw_travel_page *p, const gw_travel_item *item, gw_error *err)
{
    heading(p, item);
    gw_status status = path_table(p, item, err);
    if (status == GW_OK) status = gw_travel_rest_table(p, item, err);
    if (status == GW_OK && item->n_bearings) status = gw_travel_tilt_table(p, item, err);
    if (status == GW_OK && item->clamp.present) status = gw_travel_clamp_table(p, item, err);
    return status;
}

gw_status gw_travel_text(const gw_case *c, const gw_travel_study *study, bool all, int width, bool bold,
                         gw_buf *out, gw_error *err)
{
    const gw_travel_page page = { c, all, width, bold, out };
    gw_status status = GW_OK;
    gw_buf_clean(out, c->title);
    gw_buf_add(out, "\n");
    gw_buf_paragraph(
        out,
        "Through bump and rebound under vertical load, the spring on its rate; changes are from the "
        "car standing still. Positive are: bump, toe-in, camber with the top outboard, caster with the top "
        "rearward, a wider track, a longer wheelbase; track and roll centre with both wheels alike.",
        width, 0);
    for (int i = 0; i < study->n && status == GW_OK; i++) status = item_text(&page, &study->item[i], err);
    gw_buf_add(out, "\n");
    gw_buf_paragraph(out, gw_words_text(GW_WORDS_STATIC_ONLY), width, 0);
    gw_buf_paragraph(out, gw_words_text(GW_WORDS_SAFETY), width, 0);
    gw_buf_paragraph(out, gw_words_text(GW_WORDS_DEFER), width, 0);
    return status == GW_OK ? gw_buf_status(out, err) : status;
}

/* SPDX-License-Identifier: MIT */
/* For the workshop: what each adjuster is set to, whether the parts fit and hold, and the order of work. */
#include "page/page.h"

#include "giveway/units.h"
#include "show/align.h"

#include <math.h>

static void item_name(const gw_page *p, const gw_align_item *item)
{
    gw_buf_fmt(p->out, "<caption><span class=\"swatch k%d\"></span>", item->kit % GW_STYLES);
    gw_html_put(p->out, "<bdi>{}</bdi>, {}</caption>\n", gw_page_kit(p, item->kit), gw_page_axle(item->axle));
}

static void say_mark(const gw_page *p, const gw_joint *joint, const gw_adjustment *set)
{
    const gw_move *move = &set->move;
    double size = gw_offset_size(move);
    if (size < 0.005 * GW_MM) {
        if (set->off_centre)
            GW_TELL(p->out, PAGE_SHOP_OWN_BUSH);
        else
            GW_TELL(p->out, PAGE_SHOP_CENTRED);
        return;
    }
    gw_mark mark = gw_mark_of(joint, gw_offset_vector(joint, move));
    GW_SAY(p->out, PAGE_SHOP_MARK, { "size", gw_fixed(size / GW_MM, 2).s },
           { "left", gw_fixed(mark.left / GW_DEG, 0).s }, { "right", gw_fixed(mark.right / GW_DEG, 0).s },
           { "view", gw_view_words(mark.view) });
}

static void say_shims(const gw_page *p, double count, double step)
{
    gw_number size = gw_significant(step / GW_MM, 3);
    if (count == 0.0)
        GW_TELL(p->out, PAGE_SHOP_NO_SHIMS);
    else if (count > 0.0)
        GW_SAY(p->out, PAGE_SHOP_SHIMS, { "count", gw_fixed(count, 0).s }, { "step", size.s });
    else
        GW_SAY(p->out, PAGE_SHOP_SHIMS_OUT, { "count", gw_fixed(-count, 0).s }, { "step", size.s });
}

static void say_setting(const gw_page *p, const gw_corner *corner, const gw_adjuster *a,
                        const gw_adjustment *set)
{
    double along = set->move.along[0];
    if (a->kind == GW_ADJUST_OFFSET) {
        say_mark(p, &corner->joints[a->joint], set);
    } else if (a->kind == GW_ADJUST_LENGTH) {
        gw_html_figure(p->out, gw_signed(along / GW_MM, 2), "\xC2\xA0mm: ");
        if (fabs(along) < 0.005 * GW_MM)
            GW_TELL(p->out, PAGE_SHOP_AS_IT_IS);
        else if (along > 0.0)
            GW_SAY(p->out, PAGE_SHOP_LONGER, { "turns", gw_fixed(gw_turns_of(a, along), 2).s });
        else
            GW_SAY(p->out, PAGE_SHOP_SHORTER, { "turns", gw_fixed(-gw_turns_of(a, along), 2).s });
    } else {
        say_shims(p, round(along / a->step), a->step);
    }
    if (set->at_limit) gw_html_put(p->out, " {}", GW_TOLD(PAGE_SHOP_LIMIT));
}

static void settings_table(const gw_page *p, const gw_align_item *item)
{
    const gw_align *align = &p->c->align[item->axle];
    const gw_corner *corner = &p->c->corners[item->axle];
    gw_buf_add(p->out, "<table class=\"left\">");
    item_name(p, item);
    gw_buf_add(p->out, "<tbody>\n");
    for (int i = 0; i < align->n_adjusters; i++) {
        gw_buf name = { 0 };
        gw_adjuster_words(corner, &align->adjusters[i], &name);
        gw_html_put(p->out, "<tr><th scope=\"row\"><bdi>{}</bdi></th><td class=\"text\">",
                    gw_page_kept(p, &name));
        say_setting(p, corner, &align->adjusters[i], &item->set[i]);
        gw_buf_add(p->out, "</td></tr>\n");
    }
    gw_buf_add(p->out, "</tbody></table>\n");
    for (int i = 0; i < align->n_adjusters; i++) {
        gw_buf sum = { 0 };
        if (gw_adjuster_sum(p->c, item, item->set, i, &sum))
            gw_html_put(p->out, "<p class=\"note\">{}</p>\n", gw_page_kept(p, &sum));
    }
}

/* ---- does it fit and hold ---- */

static void verdict_row(const gw_page *p, const gw_joint *joint, const gw_verdict *v)
{
    gw_trade_figure f = gw_trade_figure_of(v);
    gw_html_put(p->out,
                "<tr><th scope=\"row\"><bdi>{}</bdi></th><td class=\"text\">{}</td><td class=\"text\">",
                joint->name, GW_JUDGED_WORDS[v->what]);
    GW_SAY_ID(p->out, v->bound == GW_AT_MOST ? GW_WORDS_PAGE_SHOP_AT_MOST : GW_WORDS_PAGE_SHOP_AT_LEAST,
              { "value", gw_fixed(v->value / f.scale, f.decimals).s },
              { "limit", gw_fixed(v->limit / f.scale, f.decimals).s }, { "unit", f.unit });
    gw_html_put(p->out,
                v->holds ? "</td><td class=\"text\">{}</td></tr>\n"
                         : "</td><td class=\"text\"><strong class=\"fails\">{}</strong></td></tr>\n",
                v->holds ? GW_TOLD(PAGE_SHOP_HOLDS) : GW_TOLD(PAGE_SHOP_FAILS));
}

static void verdict_table(const gw_page *p, const gw_align_item *item)
{
    const gw_joint *joints = p->c->corners[item->axle].joints;
    if (!item->n_tilts && !item->n_checks) return;
    gw_buf_add(p->out, "<table class=\"left\">");
    item_name(p, item);
    gw_buf_add(p->out, "<tbody>\n");
    for (int i = 0; i < item->n_tilts; i++) {
        const gw_align_tilt *t = &item->tilt[i];
        gw_verdict v = gw_verdict_of(GW_JUDGED_TILT_IN_TRAVEL, t->after, GW_AT_MOST, t->limit, "");
        verdict_row(p, &joints[t->joint], &v);
    }
    for (int i = 0; i < item->n_checks; i++)
        verdict_row(p, &joints[item->check[i].joint], &item->check[i].verdict);
    gw_buf_add(p->out, "</tbody></table>\n");
}

static void heading(const gw_page *p, gw_words name)
{
    gw_html_put(p->out, "<h3>{}</h3>\n", gw_words_text(name));
}

static void order_of_work(const gw_page *p)
{
    heading(p, GW_WORDS_PAGE_SHOP_ORDER);
    gw_buf_add(p->out, "<ol>\n");
    for (int i = 0; gw_order_of_work(i); i++) gw_html_put(p->out, "<li>{}</li>\n", gw_order_of_work(i));
    gw_buf_add(p->out, "</ol>\n");
}

void gw_page_settings(const gw_page *p)
{
    const gw_align_study *study = &p->r->align;
    gw_page_section_begin(p, "settings", "shop", GW_WORDS_PAGE_SHOP_SETTINGS);
    order_of_work(p);
    if (study->n) {
        heading(p, GW_WORDS_PAGE_SHOP_SET_TO);
        gw_buf_add(p->out, "<div class=\"pair\">\n");
        for (int i = 0; i < study->n; i++) settings_table(p, &study->item[i]);
        gw_buf_add(p->out, "</div>\n");
        heading(p, GW_WORDS_PAGE_SHOP_VERDICTS);
        gw_buf_add(p->out, "<div class=\"pair\">\n");
        for (int i = 0; i < study->n; i++) verdict_table(p, &study->item[i]);
        gw_buf_add(p->out, "</div>\n");
    }
    gw_buf_add(p->out, "</section>\n");
}

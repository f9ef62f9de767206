/* SPDX-License-Identifier: MIT */
/* For the workshop: what each adjuster is set to, whether the parts fit and hold, and the order of work. */
#include "page/page.h"

#include "chart/style.h"
#include "giveway/units.h"
#include "show/align.h"

#include <math.h>

static void item_name(const gw_page *p, const gw_align_item *item)
{
    gw_buf_fmt(p->out, "<caption><span class=\"swatch k%d\"></span>", item->kit % GW_STYLES);
    gw_html_name(p->out, gw_page_kit(p, item->kit));
    gw_buf_add(p->out, ", ");
    gw_html_text(p->out, gw_page_axle(item->axle));
    gw_buf_add(p->out, "</caption>\n");
}

static void say_mark(const gw_page *p, const gw_joint *joint, const gw_move *move)
{
    double size = gw_offset_size(move);
    if (size < 0.005 * GW_MM) {
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
        say_mark(p, &corner->joints[a->joint], &set->move);
    } else if (a->kind == GW_ADJUST_LENGTH) {
        const gw_html_part nothing[] = { { NULL, NULL } };
        gw_html_figure(p->out, gw_signed(along / GW_MM, 2), "\xC2\xA0mm: ");
        if (fabs(along) < 0.005 * GW_MM)
            gw_html_say(p->out, gw_words_text(GW_WORDS_PAGE_SHOP_AS_IT_IS), nothing);
        else if (along > 0.0)
            GW_SAY(p->out, PAGE_SHOP_LONGER, { "turns", gw_fixed(gw_turns_of(a, along), 2).s });
        else
            GW_SAY(p->out, PAGE_SHOP_SHORTER, { "turns", gw_fixed(-gw_turns_of(a, along), 2).s });
    } else {
        say_shims(p, round(along / a->step), a->step);
    }
    if (set->at_limit) {
        gw_buf_add(p->out, " ");
        GW_TELL(p->out, PAGE_SHOP_LIMIT);
    }
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
        gw_buf_add(p->out, "<tr><th scope=\"row\">");
        gw_html_name(p->out, gw_buf_str(&name));
        gw_buf_add(p->out, "</th><td class=\"text\">");
        say_setting(p, corner, &align->adjusters[i], &item->set[i]);
        gw_buf_add(p->out, "</td></tr>\n");
        gw_buf_drop(&name, p->out);
    }
    gw_buf_add(p->out, "</tbody></table>\n");
}

/* ---- does it fit and hold ---- */

static void verdict_row(const gw_page *p, const char *joint, const char *what, gw_buf *values, bool holds)
{
    gw_buf_add(p->out, "<tr><th scope=\"row\">");
    gw_html_name(p->out, joint);
    gw_buf_add(p->out, "</th><td class=\"text\">");
    gw_html_text(p->out, what);
    gw_buf_add(p->out, "</td><td class=\"text\">");
    gw_buf_add(p->out, gw_buf_str(values));
    gw_buf_fmt(p->out, "</td><td class=\"text\">%s", holds ? "" : "<strong class=\"fails\">");
    gw_html_text(p->out, gw_words_text(holds ? GW_WORDS_PAGE_SHOP_HOLDS : GW_WORDS_PAGE_SHOP_FAILS));
    gw_buf_fmt(p->out, "%s</td></tr>\n", holds ? "" : "</strong>");
    gw_buf_drop(values, p->out);
}

static void tilt_rows(const gw_page *p, const gw_align_item *item)
{
    for (int i = 0; i < item->n_tilts; i++) {
        const gw_align_tilt *t = &item->tilt[i];
        gw_buf values = { 0 };
        GW_SAY(&values, PAGE_SHOP_AT_MOST, { "value", gw_fixed(t->after / GW_DEG, 1).s },
               { "limit", gw_fixed(t->limit / GW_DEG, 1).s }, { "unit", "deg" });
        verdict_row(p, p->c->corners[item->axle].joints[t->joint].name,
                    GW_JUDGED_WORDS[GW_JUDGED_TILT_IN_TRAVEL], &values, t->after <= t->limit);
    }
}

static void check_rows(const gw_page *p, const gw_align_item *item)
{
    for (int i = 0; i < item->n_checks; i++) {
        const gw_verdict *v = &item->check[i].verdict;
        gw_trade_figure f = gw_trade_figure_of(v);
        gw_number value = gw_fixed(v->value / f.scale, f.decimals),
                  limit = gw_fixed(v->limit / f.scale, f.decimals);
        gw_buf values = { 0 };
        const gw_html_part parts[] = {
            { "value", value.s }, { "limit", limit.s }, { "unit", f.unit }, { NULL, NULL }
        };
        gw_html_say(
            &values,
            gw_words_text(v->bound == GW_AT_MOST ? GW_WORDS_PAGE_SHOP_AT_MOST : GW_WORDS_PAGE_SHOP_AT_LEAST),
            parts);
        verdict_row(p, p->c->corners[item->axle].joints[item->check[i].joint].name, GW_JUDGED_WORDS[v->what],
                    &values, v->holds);
    }
}

static void verdict_table(const gw_page *p, const gw_align_item *item)
{
    if (!item->n_tilts && !item->n_checks) return;
    gw_buf_add(p->out, "<table class=\"left\">");
    item_name(p, item);
    gw_buf_add(p->out, "<tbody>\n");
    tilt_rows(p, item);
    check_rows(p, item);
    gw_buf_add(p->out, "</tbody></table>\n");
}

static void heading(const gw_page *p, gw_words name)
{
    gw_buf_add(p->out, "<h3>");
    gw_html_text(p->out, gw_words_text(name));
    gw_buf_add(p->out, "</h3>\n");
}

static void order_of_work(const gw_page *p)
{
    heading(p, GW_WORDS_PAGE_SHOP_ORDER);
    gw_buf_add(p->out, "<ol>\n");
    for (int i = 0; gw_order_of_work(i); i++) {
        gw_buf_add(p->out, "<li>");
        gw_html_text(p->out, gw_order_of_work(i));
        gw_buf_add(p->out, "</li>\n");
    }
    gw_buf_add(p->out, "</ol>\n");
}

void gw_page_settings(const gw_page *p)
{
    const gw_align_study *study = &p->r->align;
    gw_buf_add(p->out, "<section aria-labelledby=\"settings\" class=\"shop\">\n<h2 id=\"settings\">");
    GW_TELL(p->out, PAGE_SHOP_SETTINGS);
    gw_buf_add(p->out, "</h2>\n");
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

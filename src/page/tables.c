/* SPDX-License-Identifier: MIT */
/* Tables of the workshop's copy: a row a joint, a column a kit. */
#include "page/page.h"

void gw_page_heading(const gw_page *p, gw_words name, gw_words note)
{
    gw_html_put(p->out, "<h3>{}</h3>\n", gw_words_text(name));
    gw_page_note(p, note);
}

void gw_page_frame_begin(const gw_page *p, gw_words name)
{
    gw_html_put(p->out, "<div class=\"scroll\" tabindex=\"0\" role=\"group\" aria-label=\"{}\">\n",
                gw_words_text(name));
}

static void heads(const gw_page *p, bool with_count)
{
    const gw_words words[] = { GW_WORDS_PAGE_SHOP_JOINT, GW_WORDS_PAGE_SHOP_COUNT };
    gw_buf_add(p->out, "<thead><tr>");
    gw_page_heads(p, words, with_count ? 2 : 1);
    for (int k = 0; k < p->c->n_kits; k++)
        if (gw_page_has_kit(p, k))
            gw_html_put(p->out, "<th scope=\"col\"><bdi>{}</bdi></th>", gw_page_kit(p, k));
    gw_buf_add(p->out, "</tr></thead>\n");
}

static void table(const gw_page *p, const gw_page_joint_table *t, gw_axle axle)
{
    const gw_corner *corner = &p->c->corners[axle];
    gw_buf_add(p->out, "<table");
    if (t->kind) gw_buf_fmt(p->out, " class=\"%s\"", t->kind);
    gw_html_put(p->out, "><caption>{}</caption>", gw_page_wheel_of(axle));
    heads(p, t->with_count);
    gw_buf_add(p->out, "<tbody>\n");
    for (int j = 0; j < corner->n_joints; j++) {
        gw_html_put(p->out, "<tr><th scope=\"row\"><bdi>{}</bdi></th>", corner->joints[j].name);
        if (t->with_count) gw_buf_fmt(p->out, "<td>%d</td>", gw_joint_count_on_car(corner, j));
        for (int k = 0; k < p->c->n_kits; k++)
            if (gw_page_has_kit(p, k)) t->cell(p, k, axle, j);
        gw_buf_add(p->out, "</tr>\n");
    }
    gw_buf_add(p->out, "</tbody></table>\n");
}

void gw_page_joint_tables(const gw_page *p, gw_words name, const gw_page_joint_table *t)
{
    gw_page_frame_begin(p, name);
    for (gw_axle a = GW_FRONT; a < GW_AXLES; a++)
        if (gw_page_has_axle(p, a)) table(p, t, a);
    gw_buf_add(p->out, "</div>\n");
}

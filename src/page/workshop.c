/* SPDX-License-Identifier: MIT */
/* What the workshop's copy adds of the bushes: which goes where, how stiff it is, what it carries. */
#include "page/page.h"

#include "giveway/units.h"

#include <math.h>

/* ---- which bush goes where ---- */

static void fitted_cell(const gw_page *p, int kit, gw_axle axle, int joint)
{
    gw_html_put(p->out, "<td class=\"text\"><bdi>{}</bdi></td>",
                gw_page_bush(&p->c->bushes[p->c->kits[kit].fits[axle][joint]]));
}

/* ---- how stiff ---- */

static bool is_fitted(const gw_page *p, int bush)
{
    for (int k = 0; k < p->c->n_kits; k++)
        for (gw_axle a = GW_FRONT; a < GW_AXLES; a++)
            for (int j = 0; gw_page_has_kit(p, k) && gw_page_has_axle(p, a) && j < p->c->corners[a].n_joints;
                 j++)
                if (p->c->kits[k].fits[a][j] == bush) return true;
    return false;
}

static void rate_row(const gw_page *p, int bush)
{
    const gw_bush *b = &p->c->bushes[bush];
    const gw_bush_law *law = &p->r->laws.law[bush];
    gw_html_put(p->out, "<tr><th scope=\"row\"><bdi>{}</bdi></th>", gw_page_bush(b));
    for (int i = 0; i < 3; i++)
        gw_buf_fmt(p->out, "<td>%s</td>", gw_significant(law->k[i] / GW_N_PER_MM, 3).s);
    for (int i = 0; i < 3; i++)
        gw_buf_fmt(p->out, "<td>%s</td>", gw_significant(law->c[i] / GW_NM_PER_DEG, 3).s);
    gw_buf_fmt(p->out, "<td>%s</td><td>%s</td><td>%s</td></tr>\n",
               b->offset > 0.0 ? gw_fixed(b->offset / GW_MM, 1).s : "",
               b->price >= 0.0 ? gw_page_price(b->price).s : "",
               b->fit_minutes >= 0.0 ? gw_fixed(b->fit_minutes, 0).s : "");
}

static void rate_table(const gw_page *p)
{
    static const gw_words HEADS[] = { GW_WORDS_PAGE_SHOP_BUSH,  GW_WORDS_PAGE_SHOP_E1,
                                      GW_WORDS_PAGE_SHOP_E2,    GW_WORDS_PAGE_SHOP_AXIAL,
                                      GW_WORDS_PAGE_SHOP_TILT1, GW_WORDS_PAGE_SHOP_TILT2,
                                      GW_WORDS_PAGE_SHOP_TWIST, GW_WORDS_PAGE_SHOP_OFFSET,
                                      GW_WORDS_PAGE_SHOP_PRICE, GW_WORDS_PAGE_SHOP_MINUTES };
    gw_buf_add(p->out, "<table><thead><tr>");
    gw_page_heads(p, HEADS, sizeof HEADS / sizeof *HEADS);
    gw_buf_add(p->out, "</tr></thead>\n<tbody>\n");
    for (int b = 0; b < p->c->n_bushes; b++)
        if (is_fitted(p, b)) rate_row(p, b);
    gw_buf_add(p->out, "</tbody></table>\n");
}

/* ---- what it carries: the largest over the loads of the case ---- */

typedef struct peak {
    double force, moved, turned; /* [N], [m], [rad] */
} peak;

static double length_of(const double x[3])
{
    return sqrt(x[0] * x[0] + x[1] * x[1] + x[2] * x[2]);
}

static peak peak_of(const gw_page *p, int kit, gw_axle axle, int joint)
{
    peak most = { 0 };
    for (int l = 0; l < p->c->n_loads; l++) {
        const gw_deflection *item = gw_page_find(p, kit, axle, l);
        if (!item) continue;
        const gw_joint_result *j = &item->result.joints[joint];
        most.force = fmax(most.force, length_of(j->f));
        most.moved = fmax(most.moved, length_of(j->u));
        most.turned = fmax(most.turned, length_of(j->theta));
    }
    return most;
}

static void peak_cell(const gw_page *p, int kit, gw_axle axle, int joint)
{
    peak most = peak_of(p, kit, axle, joint);
    gw_buf_fmt(p->out, "<td>%s\xC2\xB7%s\xC2\xB7%s</td>", gw_fixed(most.force / GW_KN, 1).s,
               gw_fixed(most.moved / GW_MM, 2).s, gw_fixed(most.turned / GW_DEG, 1).s);
}

void gw_page_bushes(const gw_page *p)
{
    const gw_page_joint_table fitted = { "left", true, fitted_cell }, peaks = { NULL, false, peak_cell };
    gw_page_section_begin(p, "bushes", "shop", GW_WORDS_PAGE_SHOP_BUSHES);
    gw_page_heading(p, GW_WORDS_PAGE_SHOP_FITTED, GW_WORDS_PAGE_SHOP_FITTED_NOTE);
    gw_page_joint_tables(p, GW_WORDS_PAGE_SHOP_FITTED, &fitted);
    gw_page_heading(p, GW_WORDS_PAGE_SHOP_RATES, GW_WORDS_PAGE_SHOP_RATES_NOTE);
    gw_page_frame_begin(p, GW_WORDS_PAGE_SHOP_RATES);
    rate_table(p);
    gw_buf_add(p->out, "</div>\n");
    gw_page_heading(p, GW_WORDS_PAGE_SHOP_PEAKS, GW_WORDS_PAGE_SHOP_PEAKS_NOTE);
    gw_page_joint_tables(p, GW_WORDS_PAGE_SHOP_PEAKS, &peaks);
    gw_page_limits(p);
    gw_buf_add(p->out, "</section>\n");
}

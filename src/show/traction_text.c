/* SPDX-License-Identifier: MIT */
/* The driven wheels under power, and how far the outer wheel's setting moves over the range of use. */
#include "show/handling.h"

#include "format/number.h"
#include "giveway/units.h"
#include "record/paper.h"
#include "show/phrase.h"

static void put_wheel(const gw_handling_page *p, const gw_traction_item *w, gw_table *t)
{
    gw_table_cells(t, p->cmp->c->kits[w->kit].name, w->straight ? "straight" : gw_side_name(w->side),
                   gw_signed(w->toe / GW_DEG, 3).s, gw_signed(w->toe_change / GW_DEG, 3).s,
                   gw_signed(w->camber_to_road / GW_DEG, 2).s);
    if (w->has_force) {
        gw_table_cells(t, gw_signed(w->toe_force, 0).s, gw_signed(w->camber_force, 0).s);
    }
    gw_table_end_row(t);
}

static void traction_table(const gw_handling_page *p, gw_axle axle, int load)
{
    const gw_handling_study *h = p->cmp->handling;
    gw_table t = { 0 };
    gw_buf head = { 0 };
    gw_buf_fmt(&head, "Traction: the driven %s wheels ", gw_axle_name(axle));
    gw_phrase_load(&p->cmp->c->loads[load], &head);
    gw_buf_add(&head, ", and straight on");
    gw_paper_heading(p->paper, "%s", gw_buf_str(&head));
    gw_table_heads(&t, "llrrrrr", "kit", "wheel", "toe\ndeg", "toe change\ndeg", "camber to road\ndeg",
                   "force by toe\nN", "by camber\nN");
    for (int i = 0; i < h->n_traction; i++)
        if (h->traction[i].axle == axle && h->traction[i].load == load) put_wheel(p, &h->traction[i], &t);
    gw_buf_drop(&head, p->paper->out);
    gw_paper_table(p->paper, &t, 2);
}

static bool has_traction(const gw_handling_study *h, gw_axle axle, int load)
{
    for (int i = 0; i < h->n_traction; i++)
        if (h->traction[i].axle == axle && h->traction[i].load == load) return true;
    return false;
}

void gw_traction_text(const gw_handling_page *p)
{
    for (int l = 0; l < p->cmp->c->n_loads; l++)
        for (gw_axle a = GW_FRONT; a < GW_AXLES; a++) {
            if (!has_traction(p->cmp->handling, a, l)) continue;
            traction_table(p, a, l);
        }
    if (p->cmp->handling->n_traction)
        gw_paper_say(
            p->paper, 2,
            "Force by toe: cornering stiffness at the load on the wheel times the change of toe, the lateral "
            "force that this "
            "wheel gives away or spends against its partner; toe-in and a push inboard are positive. "
            "By camber: camber stiffness at that load times the change of camber, a push outboard positive.");
}

/* "-0.31 to +0.08 (0.39)" */
static void put_band(gw_table *t, double low, double high, int decimals)
{
    gw_table_cellf(t, "%s to %s (%s)", gw_signed(low / GW_DEG, decimals).s,
                   gw_signed(high / GW_DEG, decimals).s, gw_fixed((high - low) / GW_DEG, decimals).s);
}

static void band_table(const gw_handling_page *p, gw_axle axle)
{
    const gw_handling_study *h = p->cmp->handling;
    gw_table t = { 0 };
    gw_paper_heading(
        p->paper, "Consistency: the outer %s wheel from %s to %s g of cornering, deg (and how far it moves)",
        gw_axle_name(axle), gw_fixed(GW_BAND_FROM, 1).s, gw_fixed(GW_BAND_TO, 1).s);
    gw_table_heads(&t, "lrrrr", "kit", "toe", "camber to the body", "camber to the road", "up to");
    for (int i = 0; i < h->n_bands; i++) {
        const gw_band_item *b = &h->band[i];
        if (b->axle != axle) continue;
        gw_table_cell(&t, p->cmp->c->kits[b->kit].name);
        put_band(&t, b->toe_low, b->toe_high, 2);
        put_band(&t, b->camber_low, b->camber_high, 2);
        put_band(&t, b->road_low, b->road_high, 2);
        gw_table_cellf(&t, "%s g", gw_fixed(b->to, 2).s);
        gw_table_end_row(&t);
    }
    gw_paper_table(p->paper, &t, 2);
}

void gw_consistency_text(const gw_handling_page *p)
{
    const gw_handling_study *h = p->cmp->handling;
    for (gw_axle a = GW_FRONT; a < GW_AXLES; a++) {
        bool there = false;
        for (int i = 0; i < h->n_bands; i++) there = there || h->band[i].axle == a;
        if (there) band_table(p, a);
    }
}

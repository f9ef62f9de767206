/* SPDX-License-Identifier: MIT */
/* Camber and toe of both wheels in a corner: where they come from, kit by kit. */
#include "show/handling.h"

#include "format/number.h"
#include "giveway/units.h"
#include "show/deflect.h"
#include "show/phrase.h"

static void columns(gw_table *t)
{
    static const char *const HEADS[] = { "camber:\nstatic", "\nroll",   "\ntravel", "\nbushes", "\nto road",
                                         "toe:\nstatic",    "\ntravel", "\nbushes", "\nis" };
    gw_table_column(t, GW_LEFT, "kit");
    gw_table_column(t, GW_LEFT, "wheel");
    for (size_t i = 0; i < sizeof HEADS / sizeof *HEADS; i++) gw_table_column(t, GW_RIGHT, HEADS[i]);
}

static void put_angles(gw_table *t, const gw_angle_parts *a, bool with_roll)
{
    gw_table_cell(t, gw_signed(a->setting / GW_DEG, 2).s);
    if (with_roll) gw_table_cell(t, gw_signed(a->roll / GW_DEG, 2).s);
    gw_table_cell(t, gw_signed(a->travel / GW_DEG, 2).s);
    gw_table_cell(t, gw_signed(a->compliance / GW_DEG, 2).s);
    gw_table_cell(t, gw_signed(a->total / GW_DEG, 2).s);
}

static void put_rows(const gw_handling_page *p, gw_axle axle, int load, gw_table *t)
{
    for (int k = 0; k < p->cmp->c->n_kits; k++)
        for (gw_side s = GW_OUTER; s <= GW_INNER; s++) {
            const gw_corner_budget *b = gw_corner_budget_find(p->cmp->handling, k, axle, load, s);
            if (!b) continue;
            if (s == GW_OUTER)
                gw_handling_kit(p, k, t);
            else
                gw_table_cell(t, NULL);
            gw_table_cell(t, gw_side_name(s));
            put_angles(t, &b->camber, true);
            put_angles(t, &b->toe, false);
            gw_table_end_row(t);
        }
}

static gw_status one_table(const gw_handling_page *p, gw_axle axle, int load, gw_error *err)
{
    gw_table t = { 0 };
    gw_buf head = { 0 };
    gw_buf_fmt(&head, "Camber and toe of the %s wheels, deg, ", gw_axle_name(axle));
    gw_phrase_load(&p->cmp->c->loads[load], &head);
    gw_buf_add(&head, ": ");
    gw_buf_clean(&head, p->cmp->c->loads[load].name);
    gw_handling_heading(p, gw_buf_str(&head));
    if (head.failed) p->out->failed = true;
    gw_buf_free(&head);
    columns(&t);
    put_rows(p, axle, load, &t);
    return gw_handling_print(p, &t, err);
}

static bool has_budget(const gw_handling_page *p, gw_axle axle, int load)
{
    const gw_handling_study *h = p->cmp->handling;
    for (int i = 0; i < h->n_budgets; i++)
        if (h->budget[i].axle == axle && h->budget[i].load == load) return true;
    return false;
}

gw_status gw_budget_text(const gw_handling_page *p, gw_error *err)
{
    for (int l = 0; l < p->cmp->c->n_loads; l++)
        for (gw_axle a = GW_FRONT; a < GW_AXLES; a++) {
            if (!has_budget(p, a, l)) continue;
            gw_status status = one_table(p, a, l, err);
            if (status != GW_OK) return status;
        }
    if (p->cmp->handling->n_budgets)
        gw_buf_paragraph(
            p->out,
            "Roll: of the body, and with it the wheel. Travel: what the path of the wheel gives, the "
            "spring on its law and no other load. Bushes: what the load adds.",
            p->width, 2);
    return GW_OK;
}

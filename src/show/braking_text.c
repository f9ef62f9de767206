/* SPDX-License-Identifier: MIT */
/* Braking, traction and consistency, kit by kit. */
#include "show/handling.h"

#include "format/number.h"
#include "giveway/units.h"
#include "record/paper.h"

static bool any_corner(const gw_handling_study *h, gw_axle axle)
{
    for (int i = 0; i < h->n_braking; i++)
        if (h->braking[i].corner[axle].there) return true;
    return false;
}

static void wheel_table(const gw_handling_page *p, gw_axle axle)
{
    const gw_handling_study *h = p->cmp->handling;
    gw_table t = { 0 };
    gw_paper_heading(p->paper, "Braking: one %s wheel, per g of a %s g stop", gw_axle_name(axle),
                     gw_fixed(GW_FIRM_STOP, 1).s);
    gw_table_heads(&t, "lrrrr", "kit", "toe change\ndeg/g", "wheel fore-aft\nmm/g", "\nmm/kN",
                   "fore-aft mode\nHz");
    for (int i = 0; i < h->n_braking; i++) {
        const gw_braking_corner *c = &h->braking[i].corner[axle];
        const gw_ride_item *ride = gw_ride_find(p->cmp->ride, h->braking[i].kit, axle);
        gw_table_cell(&t, p->cmp->c->kits[h->braking[i].kit].name);
        if (c->there) {
            gw_table_cells(
                &t, gw_signed(c->toe_per_g / GW_DEG, 3).s, gw_signed(c->fore_aft_per_g / GW_MM, 2).s,
                gw_signed(c->fore_aft_per_N * GW_KN / GW_MM, 2).s,
                ride ? gw_fixed(ride->result.modes[ride->result.wheel_fore_aft].hz, 1).s : GW_NO_NUMBER);
        }
        gw_table_end_row(&t);
    }
    gw_paper_table(p->paper, &t, 2);
}

static void put_push(gw_table *t, const gw_disturbance *d, const gw_drift *drift)
{
    gw_table_cells(t, gw_signed(d->steer[GW_FRONT] / GW_DEG, 3).s, gw_signed(d->steer[GW_REAR] / GW_DEG, 3).s,
                   gw_signed(drift->yaw_rate / GW_DEG, 2).s, gw_signed(drift->offset, 2).s);
}

typedef enum gw_push { PULL, IMBALANCE, BUMP } gw_push;

static void put_cause(const gw_braking_item *b, gw_push push, gw_table *t)
{
    if (push == PULL) put_push(t, &b->pull, &b->pulled);
    if (push == IMBALANCE) put_push(t, &b->imbalance, &b->stop);
    if (push == BUMP) put_push(t, &b->bump, &b->after_bump);
}

static void drift_table(const gw_handling_page *p, gw_push push)
{
    static const char *const CAUSE[] = { "brakes alike, the sides of the car unlike (to the left positive)",
                                         "one side braking harder", "a bump under one side" };
    const gw_handling_study *h = p->cmp->handling;
    gw_table t = { 0 };
    gw_paper_heading(p->paper, "Side drift: %s", CAUSE[push]);
    gw_table_heads(&t, "lrrrr", "kit", "front steer\ndeg", "rear steer\ndeg", "yaw rate\ndeg/s",
                   "side drift\nm");
    for (int i = 0; i < h->n_braking; i++) {
        const gw_braking_item *b = &h->braking[i];
        gw_table_cell(&t, p->cmp->c->kits[b->kit].name);
        if (b->has_drift) put_cause(b, push, &t);
        gw_table_end_row(&t);
    }
    gw_paper_table(p->paper, &t, 2);
}

static void drift_notes(const gw_handling_page *p)
{
    const gw_handling_study *h = p->cmp->handling;
    gw_buf text = { 0 };
    gw_buf_fmt(
        &text,
        "Towards the side that brakes harder, or that has the bump, is positive; front and rear are the "
        "steer of each axle by the toe and camber of its wheels, steering wheel held; yaw is the greatest "
        "rate. Brakes: a stop of %s g from %s km/h to standstill with %s %% difference (common practice). "
        "Bump: %s mm under one side, in the first second. Left out: what braking takes from the tyres' "
        "lateral force, load transfer between the axles, and any scrub that turns the steering.",
        gw_fixed(GW_FIRM_STOP, 1).s, gw_fixed(h->speed / GW_KM_H, 0).s,
        gw_fixed(100.0 * h->brake_imbalance, 0).s, gw_fixed(h->bump / GW_MM, 0).s);
    gw_paper_say_of(p->paper, 2, &text);
}

void gw_braking_text(const gw_handling_page *p)
{
    const gw_handling_study *h = p->cmp->handling;
    bool drifts = false, pulls = false;
    for (gw_axle a = GW_FRONT; a < GW_AXLES; a++)
        if (any_corner(h, a)) wheel_table(p, a);
    if (any_corner(h, GW_FRONT) || any_corner(h, GW_REAR))
        gw_paper_say(
            p->paper, 2,
            "Fore-aft give and the frequency of the mode that goes with it are a measure of judder: "
            "the softer the wheel is held and the nearer the mode to the turning of the wheel, the more "
            "of it (common practice).");
    for (int i = 0; i < h->n_braking; i++) {
        drifts = drifts || h->braking[i].has_drift;
        pulls = pulls || gw_braking_pull(h, h->braking[i].kit) != 0.0;
    }
    if (!drifts) return;
    if (pulls) drift_table(p, PULL);
    drift_table(p, IMBALANCE);
    drift_table(p, BUMP);
    drift_notes(p);
}

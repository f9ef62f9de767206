/* SPDX-License-Identifier: MIT */
/* The wheel that moves: buttons, sliders, two drawings, and the figures of the state shown. */
#include "page/drawing.h"
#include "page/sections.h"

#include "record/unit.h"
#include "show/joint.h"

#include <math.h>
#include <stddef.h>

static bool load_shown(const gw_page *p, int load)
{
    for (gw_axle a = GW_FRONT; a < GW_AXLES; a++)
        if (gw_page_find(p, p->r->baseline, a, load)) return true;
    return false;
}

static gw_slots *put_button(gw_slots *slots, const char *list, int index, bool pressed, const char *name)
{
    gw_slots *button = gw_slots_element(slots, list);
    gw_slots_fmt(button, "index", "%d", index);
    gw_slots_text(button, "pressed", pressed ? "true" : "false");
    gw_slots_text(button, "name", name);
    return button;
}

static void put_buttons(const gw_page *p, gw_slots *slots)
{
    for (int k = 0; k < p->c->n_kits; k++)
        if (gw_page_has_kit(p, k))
            gw_page_put_kit(p, put_button(slots, "kit_buttons", k, k == p->kit, gw_kit_said(p->c, k)), k);
    for (int l = 0; l < p->c->n_loads; l++)
        if (load_shown(p, l)) put_button(slots, "load_buttons", l, l == p->load, p->c->loads[l].name);
    for (gw_axle a = GW_FRONT; a < GW_AXLES; a++)
        if (gw_page_has_axle(p, a))
            put_button(slots, "axle_buttons", (int)a, a == p->axle, gw_page_wheel_of(a));
}

static void put_sliders(const gw_page *p, gw_slots *slots)
{
    const gw_grid_plan *plan = &p->r->grid.plan;
    if (!p->r->grid.n) return;
    GW_SLOTS(gw_slots_element(slots, "sliders"), { "brake_to", gw_fixed(plan->brake_to_g, 2).s },
             { "lateral_to", gw_fixed(plan->lateral_to_g, 2).s },
             { "brake", gw_fixed(gw_grid_brake(plan, 1), 1).s },
             { "lateral", gw_fixed(gw_grid_lateral(plan, 1), 1).s },
             { "drawn", gw_fixed(gw_grid_lateral(plan, GW_PICTURE_STEP), 1).s });
}

#define AT(member) offsetof(gw_deflection, member)

/* Figures of the state, of a gw_deflection; the script fills them anew. `key` is the member of the results in
 * the data. */
static const struct {
    const char *key, *sign;
    gw_words name;
    int decimals;
    gw_unit unit;
    size_t at;
} FIGURES[] = {
    /* clang-format off */
    { "toe_change_deg", "\xC2\xB0", GW_WORDS_PAGE_FIG_TOE_CHANGE, 2, GW_UNIT_DEG, AT(result.toe_change) },
    { "rim_mm", "\xC2\xA0mm", GW_WORDS_PAGE_FIG_RIM, 1, GW_UNIT_MM, AT(result.toe_change) },
    { "toe_deg", "\xC2\xB0", GW_WORDS_PAGE_FIG_TOE, 2, GW_UNIT_DEG, AT(result.toe) },
    { "camber_change_deg", "\xC2\xB0", GW_WORDS_PAGE_FIG_CAMBER_CHANGE, 2, GW_UNIT_DEG, AT(result.camber_change) },
    { "camber_deg", "\xC2\xB0", GW_WORDS_PAGE_FIG_CAMBER, 2, GW_UNIT_DEG, AT(result.camber) },
    { "camber_to_road_deg", "\xC2\xB0", GW_WORDS_PAGE_FIG_ROAD, 2, GW_UNIT_DEG, AT(camber_to_road) },
    { "x_mm", "\xC2\xA0mm", GW_WORDS_PAGE_FIG_X, 1, GW_UNIT_MM, AT(result.wheel_centre.x) },
    { "y_mm", "\xC2\xA0mm", GW_WORDS_PAGE_FIG_Y, 1, GW_UNIT_MM, AT(result.wheel_centre.y) },
    /* clang-format on */
};

static double figure_of(const gw_page *p, size_t figure, const gw_deflection *d)
{
    double rim = p->c->corners[d->axle].wheel.rim_diameter;
    if (FIGURES[figure].name == GW_WORDS_PAGE_FIG_RIM)
        return rim > 0.0 ? gw_unit_out(GW_UNIT_MM, rim * sin(d->result.toe_change)) : (double)NAN;
    if (FIGURES[figure].name == GW_WORDS_PAGE_FIG_ROAD && !d->manoeuvre) return NAN;
    return gw_unit_of_member(FIGURES[figure].unit, d, FIGURES[figure].at);
}

/* What the page shows before, or without, its script. */
static void put_figure(const gw_page *p, gw_slots *row, const char *slot, size_t figure, int kit)
{
    const gw_deflection *d = gw_page_find(p, kit, p->axle, p->load);
    double value = d ? figure_of(p, figure, d) : (double)NAN;
    if (isfinite(value))
        gw_slots_figure(row, slot, gw_signed(value, FIGURES[figure].decimals), FIGURES[figure].sign);
}

static void put_state(const gw_page *p, gw_slots *slots)
{
    gw_buf said = { 0 };
    GW_SAY(&said, PAGE_STATE_LOAD, { "kit", gw_kit_said(p->c, p->kit) }, { "axle", gw_page_axle(p->axle) },
           { "load", gw_page_load_said(p, p->load) });
    gw_slots_take(slots, "state_said", &said);
    for (size_t i = 0; i < sizeof FIGURES / sizeof *FIGURES; i++) {
        gw_slots *row = gw_slots_element(slots, "state");
        GW_SLOTS(row, { "key", FIGURES[i].key }, { "unit", FIGURES[i].sign },
                 { "decimals", gw_fixed(FIGURES[i].decimals, 0).s },
                 { "name", gw_words_text(FIGURES[i].name) });
        put_figure(p, row, "shown", i, p->kit);
        put_figure(p, row, "first", i, p->r->baseline);
    }
}

enum { SHARES = 5 }; /* bushes that are named; the rest is one bar */

static void put_share(const gw_page *p, gw_slots *slots, const char *name, double angle, double widest)
{
    gw_slots *share = gw_slots_element(slots, "shares");
    double half = 50.0 * fabs(angle) / widest;
    gw_slots_text(share, "name", name);
    gw_slots_text(share, "way", angle < 0.0 ? "out" : "in");
    gw_slots_fmt(share, "left", "%.2f", angle < 0.0 ? 50.0 - half : 50.0);
    gw_slots_fmt(share, "width", "%.2f", half);
    gw_slots_text(share, "angle", gw_page_angle_said(p, angle, true));
}

/* The list as it is before, or without, the script. */
static void put_shares(const gw_page *p, gw_slots *slots)
{
    const gw_deflection *d = gw_page_find(p, p->kit, p->axle, p->load);
    const gw_corner *corner = &p->c->corners[p->axle];
    gw_contributor top[SHARES];
    int n = d ? gw_contributors(corner, &d->result, GW_TOE, SHARES, top) : 0;
    if (!d) return;
    double rest = d->result.toe_change - d->result.travel_toe, widest = fabs(d->result.travel_toe);
    for (int i = 0; i < n; i++) {
        rest -= top[i].angle;
        widest = fmax(widest, fabs(top[i].angle));
    }
    widest = fmax(fmax(widest, fabs(rest)), 1e-12);
    for (int i = 0; i < n; i++) {
        gw_buf name = { 0 };
        gw_joint_said(corner, top[i].joint, &name);
        put_share(p, slots, gw_page_kept(p, &name), top[i].angle, widest);
    }
    put_share(p, slots, gw_words_text(GW_WORDS_PAGE_SHARE_REST), rest, widest);
    put_share(p, slots, gw_words_text(GW_WORDS_PAGE_SHARE_TRAVEL), d->result.travel_toe, widest);
}

void gw_page_wheel(const gw_page *p, gw_slots *slots)
{
    gw_buf pictures = { 0 };
    gw_page_first_pictures(p, &pictures);
    gw_slots_take(slots, "pictures", &pictures);
    gw_slots_fmt(slots, "stage", "%d", p->kit % GW_STYLES);
    gw_slots_text(slots, "shown_kit", gw_kit_said(p->c, p->kit));
    put_buttons(p, slots);
    put_state(p, slots);
    put_sliders(p, slots);
    put_shares(p, slots);
}

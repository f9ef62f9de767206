/* SPDX-License-Identifier: MIT */
/* What is estimated, and what went in; what the page says of it stands in the template. */
#include "page/sections.h"

#include "giveway/units.h"

#include <math.h>
#include <string.h>

/* "Polyurethane +3.1 to +4.0 dB; ..." over all kits but the baseline, widest of the axles. */
static const char *ranges(const gw_page *p)
{
    gw_buf text = { 0 };
    for (int k = 0; k < p->c->n_kits; k++) {
        double low = HUGE_VAL, high = -HUGE_VAL;
        for (gw_axle a = GW_FRONT; a < GW_AXLES && k != p->r->baseline; a++) {
            const gw_ride_item *r = gw_ride_find(&p->r->ride, k, a);
            if (r) low = fmin(low, r->difference.harshness_low);
            if (r) high = fmax(high, r->difference.harshness_high);
        }
        if (low > high) continue;
        gw_buf l = { 0 }, h = { 0 };
        gw_html_figure(&l, gw_signed(low, 1), "");
        gw_html_figure(&h, gw_signed(high, 1), "");
        if (text.n) gw_buf_add(&text, "; ");
        GW_SAY_PLAIN(&text, PAGE_TRUST_RANGE, { "kit", gw_kit_said(p->c, k) }, { "low", gw_page_kept(p, &l) },
                     { "high", gw_page_kept(p, &h) });
    }
    return gw_page_kept(p, &text);
}

static void warn(gw_slots *slots, const char *const *text, int n)
{
    for (int i = 0; i < n; i++) gw_slots_signed_text(gw_slots_element(slots, "warnings"), "warning", text[i]);
}

/* For the workshop: what the studies themselves are unsure of; those of ride do not name their kit and wheel.
 */
static void put_warnings(const gw_page *p, gw_slots *slots)
{
    const gw_report *r = p->r;
    int n = r->deflect.n_warnings + r->align.n_warnings + r->ride.n_warnings;
    warn(slots, r->deflect.warning, r->deflect.n_warnings);
    warn(slots, r->align.warning, r->align.n_warnings);
    warn(slots, r->ride.warning, r->ride.n_warnings);
    for (int i = 0; i < r->ride.n; i++) {
        const gw_ride_item *of = &r->ride.item[i];
        n += of->result.n_warnings;
        for (int w = 0; w < of->result.n_warnings; w++)
            gw_slots_signed_text(gw_slots_element(slots, "warnings"), "warning",
                                 gw_page_fmt(p, "%s, %s: %s", gw_kit_said(p->c, of->kit),
                                             gw_page_axle(of->axle), of->result.warnings[w]));
    }
    gw_slots_flag(slots, "warned", n > 0);
}

/* Pairs of kits whose order over all loads is open; "": none. */
static const char *close_pairs(const gw_page *p)
{
    const gw_bands_study *s = &p->r->bands;
    gw_buf text = { 0 };
    for (int i = 0; i < s->n_kits; i++)
        for (int j = i + 1; j < s->n_kits; j++) {
            const gw_half_band apart = gw_bands_between_kits(s, &s->kit[i], &s->kit[j]);
            if (!gw_is_close(&apart)) continue;
            if (text.n) gw_buf_add(&text, "; ");
            GW_SAY_PLAIN(&text, PAGE_TRUST_PAIR, { "kit", gw_kit_said(p->c, s->kit[i].kit) },
                         { "other", gw_kit_said(p->c, s->kit[j].kit) });
        }
    return gw_page_kept(p, &text);
}

void gw_page_trust(const gw_page *p, gw_slots *slots)
{
    const gw_bands_study *s = &p->r->bands;
    gw_slots_flag(slots, "rides", p->r->ride.n > 0);
    gw_slots_text(slots, "ranges", ranges(p));
    if (p->r->banded && s->n_figures)
        GW_SLOTS(gw_slots_element(slots, "unsure"), { "count", gw_fixed(s->n_figures, 0).s },
                 { "needed", gw_fixed(s->n_needed, 0).s }, { "pairs", close_pairs(p) });
    if (p->wish->workshop) put_warnings(p, slots);
}

static void put_wheel(const gw_page *p, gw_slots *slots, gw_axle axle)
{
    const gw_corner *corner = &p->c->corners[axle];
    GW_SLOTS(gw_slots_element(slots, "stood"), { "axle", gw_page_wheel_of(axle) },
             { "camber", gw_page_angle_said(p, corner->wheel.static_camber, true) },
             { "toe", gw_page_angle_said(p, corner->wheel.static_toe, true) },
             { "load", gw_fixed(corner->wheel.static_load, 0).s },
             { "joints", gw_fixed(corner->n_joints, 0).s });
}

static void put_road(const gw_ride *ride, gw_slots *slots)
{
    const char class[2] = { ride->road_class, '\0' };
    if (!ride->present) return;
    gw_slots *road = gw_slots_element(slots, "road");
    GW_SLOTS(road, { "class", class }, { "speed", gw_fixed(ride->speed / GW_KM_H, 0).s });
    if (ride->has_obstacle)
        GW_SLOTS(road, { "height", gw_fixed(ride->obstacle_height / GW_MM, 0).s },
                 { "length", gw_fixed(ride->obstacle_length / GW_MM, 0).s });
}

static void put_loads(const gw_page *p, gw_slots *slots)
{
    bool more = false;
    for (int l = 0; l < p->c->n_loads; l++) {
        if (!gw_page_find(p, p->r->baseline, GW_FRONT, l) && !gw_page_find(p, p->r->baseline, GW_REAR, l))
            continue;
        gw_slots *load = gw_slots_element(slots, "loads");
        gw_slots_flag(load, "more", more);
        gw_slots_text(load, "name", p->c->loads[l].name);
        if (p->c->loads[l].kind == GW_LOAD_MANOEUVRE) gw_slots_text(load, "said", gw_page_load_said(p, l));
        more = true;
    }
}

void gw_page_inputs(const gw_page *p, gw_slots *slots)
{
    const char *slash = strrchr(p->c->path, '/');
    const gw_vehicle *v = &p->c->vehicle;
    gw_slots_text(slots, "file", slash ? slash + 1 : p->c->path);
    if (p->c->has_vehicle)
        GW_SLOTS(gw_slots_element(slots, "car"), { "mass", gw_fixed(v->mass, 0).s },
                 { "front", gw_fixed(100.0 * v->front_mass_fraction, 0).s },
                 { "height", gw_fixed(v->cg_height / GW_MM, 0).s },
                 { "base", gw_fixed(v->wheelbase / GW_MM, 0).s });
    for (gw_axle a = GW_FRONT; a < GW_AXLES; a++)
        if (gw_page_has_axle(p, a)) put_wheel(p, slots, a);
    put_road(&p->c->ride, slots);
    put_loads(p, slots);
    GW_SLOTS(slots, { "safety", GW_TOLD(SAFETY) }, { "defer", GW_TOLD(DEFER) },
             { "check_alignment", GW_TOLD(CHECK_ALIGNMENT) });
}

/* SPDX-License-Identifier: MIT */
/* What is estimated, what went in, and what to mind before work begins. */
#include "page/page.h"

#include "giveway/units.h"

#include <math.h>
#include <string.h>

static void item(const gw_page *p, const char *text)
{
    gw_html_put(p->out, "<li>{}</li>\n", text);
}

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
        GW_SAY_PLAIN(&text, PAGE_TRUST_RANGE, { "kit", gw_page_kit(p, k) }, { "low", gw_page_kept(p, &l) },
                     { "high", gw_page_kept(p, &h) });
    }
    return gw_page_kept(p, &text);
}

/* These do not name their kit and wheel themselves. */
static void ride_warnings(const gw_page *p, const gw_ride_item *of)
{
    for (int i = 0; i < of->result.n_warnings; i++)
        item(p, gw_page_fmt(p, "%s, %s: %s", gw_page_kit(p, of->kit), gw_page_axle(of->axle),
                            of->result.warnings[i]));
}

/* For the workshop: what the studies themselves are unsure of. */
static void warnings(const gw_page *p)
{
    const gw_report *r = p->r;
    int n = r->deflect.n_warnings + r->align.n_warnings + r->ride.n_warnings;
    for (int i = 0; i < r->ride.n; i++) n += r->ride.item[i].result.n_warnings;
    if (!p->wish->workshop || !n) return;
    gw_html_put(p->out, "<h3>{}</h3>\n<ul>\n", GW_TOLD(PAGE_TRUST_WARNINGS));
    for (int i = 0; i < r->deflect.n_warnings; i++) item(p, r->deflect.warning[i]);
    for (int i = 0; i < r->align.n_warnings; i++) item(p, r->align.warning[i]);
    for (int i = 0; i < r->ride.n_warnings; i++) item(p, r->ride.warning[i]);
    for (int i = 0; i < r->ride.n; i++) ride_warnings(p, &r->ride.item[i]);
    gw_buf_add(p->out, "</ul>\n");
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
            GW_SAY_PLAIN(&text, PAGE_TRUST_PAIR, { "kit", gw_page_kit(p, s->kit[i].kit) },
                         { "other", gw_page_kit(p, s->kit[j].kit) });
        }
    return gw_page_kept(p, &text);
}

static void bands(const gw_page *p)
{
    const gw_bands_study *s = &p->r->bands;
    const char *pairs = close_pairs(p);
    gw_buf_add(p->out, "<li>");
    GW_SAY(p->out, PAGE_TRUST_BANDS, { "count", gw_fixed(s->n_figures, 0).s },
           { "needed", gw_fixed(s->n_needed, 0).s });
    gw_html_screen(p->out, true);
    if (*pairs) GW_SAY(p->out, PAGE_TRUST_CLOSE, { "pairs", pairs });
    gw_html_screen(p->out, false);
    gw_buf_add(p->out, "</li>\n");
}

void gw_page_trust(const gw_page *p)
{
    gw_page_section_begin(p, "trust", "trust", GW_WORDS_PAGE_TRUST);
    gw_buf_add(p->out, "<ul>\n");
    item(p, GW_TOLD(PAGE_TRUST_COMPARE));
    item(p, GW_TOLD(PAGE_TRUST_RATES));
    if (p->r->ride.n) {
        gw_html_put(p->out, "<li>{}", GW_TOLD(PAGE_TRUST_RIDE));
        gw_html_screen(p->out, true);
        GW_SAY(p->out, PAGE_TRUST_RANGES, { "ranges", ranges(p) });
        gw_html_screen(p->out, false);
        gw_buf_add(p->out, "</li>\n");
    }
    if (p->r->banded && p->r->bands.n_figures) bands(p);
    item(p, GW_TOLD(PAGE_TRUST_STATIC));
    gw_buf_add(p->out, "</ul>\n");
    warnings(p);
    gw_buf_add(p->out, "</section>\n");
}

static void row_begin(const gw_page *p, gw_words name)
{
    gw_html_put(p->out, "<div><dt>{}</dt><dd>", gw_words_text(name));
}

static void row_end(const gw_page *p)
{
    gw_buf_add(p->out, "</dd></div>\n");
}

static void car(const gw_page *p)
{
    const gw_vehicle *v = &p->c->vehicle;
    if (!p->c->has_vehicle) return;
    row_begin(p, GW_WORDS_PAGE_INPUT_CAR);
    GW_SAY(p->out, PAGE_INPUT_CAR_TEXT, { "mass", gw_fixed(v->mass, 0).s },
           { "front", gw_fixed(100.0 * v->front_mass_fraction, 0).s },
           { "height", gw_fixed(v->cg_height / GW_MM, 0).s },
           { "base", gw_fixed(v->wheelbase / GW_MM, 0).s });
    row_end(p);
}

static void wheel(const gw_page *p, gw_axle axle)
{
    const gw_corner *corner = &p->c->corners[axle];
    gw_buf_add(p->out, "<div><dt>");
    GW_SAY(p->out, PAGE_INPUT_WHEEL, { "axle", gw_page_wheel_of(axle) });
    gw_buf_add(p->out, "</dt><dd>");
    GW_SAY(
        p->out, PAGE_INPUT_WHEEL_TEXT, { "camber", gw_page_angle_said(p, corner->wheel.static_camber, true) },
        { "toe", gw_page_angle_said(p, corner->wheel.static_toe, true) },
        { "load", gw_fixed(corner->wheel.static_load, 0).s }, { "joints", gw_fixed(corner->n_joints, 0).s });
    row_end(p);
}

static void road(const gw_page *p)
{
    const gw_ride *ride = &p->c->ride;
    const char class[2] = { ride->road_class, '\0' };
    if (!ride->present) return;
    row_begin(p, GW_WORDS_PAGE_INPUT_ROAD);
    gw_number speed = gw_fixed(ride->speed / GW_KM_H, 0);
    if (ride->road_class)
        GW_SAY(p->out, PAGE_INPUT_ROAD_CLASS, { "class", class }, { "speed", speed.s });
    else
        GW_SAY(p->out, PAGE_INPUT_ROAD_ROUGH, { "speed", speed.s });
    if (ride->has_obstacle)
        GW_SAY(p->out, PAGE_INPUT_BUMP, { "height", gw_fixed(ride->obstacle_height / GW_MM, 0).s },
               { "length", gw_fixed(ride->obstacle_length / GW_MM, 0).s });
    row_end(p);
}

static void loads(const gw_page *p)
{
    bool first = true;
    row_begin(p, GW_WORDS_PAGE_INPUT_LOADS);
    for (int l = 0; l < p->c->n_loads; l++) {
        if (!gw_page_find(p, p->r->baseline, GW_FRONT, l) && !gw_page_find(p, p->r->baseline, GW_REAR, l))
            continue;
        gw_html_put(p->out, "{}<bdi>{}</bdi>", first ? "" : "; ", p->c->loads[l].name);
        first = false;
        if (p->c->loads[l].kind == GW_LOAD_MANOEUVRE) gw_html_put(p->out, " ({})", gw_page_load_said(p, l));
    }
    row_end(p);
}

void gw_page_inputs(const gw_page *p)
{
    const char *slash = strrchr(p->c->path, '/');
    gw_page_section_begin(p, "inputs", "inputs", GW_WORDS_PAGE_INPUTS);
    gw_buf_add(p->out, "<dl>\n");
    row_begin(p, GW_WORDS_PAGE_INPUT_CASE);
    gw_html_name(p->out, p->c->title);
    row_end(p);
    row_begin(p, GW_WORDS_PAGE_INPUT_FILE);
    gw_html_name(p->out, slash ? slash + 1 : p->c->path);
    row_end(p);
    car(p);
    for (gw_axle a = GW_FRONT; a < GW_AXLES; a++)
        if (gw_page_has_axle(p, a)) wheel(p, a);
    road(p);
    loads(p);
    gw_buf_add(p->out, "</dl>\n</section>\n");
}

void gw_page_cautions(const gw_page *p)
{
    gw_page_section_begin(p, "cautions", "cautions", GW_WORDS_PAGE_CAUTIONS);
    gw_buf_add(p->out, "<ul>\n");
    item(p, GW_TOLD(SAFETY));
    item(p, GW_TOLD(DEFER));
    item(p, GW_TOLD(CHECK_ALIGNMENT));
    gw_buf_add(p->out, "</ul>\n</section>\n");
}

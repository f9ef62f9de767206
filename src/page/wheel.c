/* SPDX-License-Identifier: MIT */
/* The wheel that moves: buttons, sliders, two drawings, and the figures of the state shown. */
#include "page/drawing.h"

#include "chart/style.h"
#include "giveway/units.h"
#include "show/contributors.h"

#include <math.h>

static void group_begin(const gw_page *p, gw_words name, const char *what)
{
    gw_buf_fmt(p->out, "<div class=\"group\" role=\"group\" aria-labelledby=\"choose-%s\" data-group=\"%s\">",
               what, what);
    gw_buf_fmt(p->out, "<span class=\"group-name\" id=\"choose-%s\">", what);
    gw_html_text(p->out, gw_words_text(name));
    gw_buf_add(p->out, "</span>");
}

static void button(const gw_page *p, const char *what, int index, bool pressed, const char *name, int style)
{
    gw_buf_fmt(p->out, "<button type=\"button\" data-%s=\"%d\" aria-pressed=\"%s\">", what, index,
               pressed ? "true" : "false");
    if (style >= 0) gw_page_swatch(p, style);
    gw_html_name(p->out, name);
    gw_buf_add(p->out, "</button>");
}

static bool load_shown(const gw_page *p, int load)
{
    for (gw_axle a = GW_FRONT; a < GW_AXLES; a++)
        if (gw_page_find(p, p->r->baseline, a, load)) return true;
    return false;
}

static void buttons(const gw_page *p)
{
    group_begin(p, GW_WORDS_PAGE_CHOOSE_KIT, "kit");
    for (int k = 0; k < p->c->n_kits; k++)
        if (gw_page_has_kit(p, k)) button(p, "kit", k, k == p->kit, gw_page_kit(p, k), k);
    gw_buf_add(p->out, "</div>\n");
    group_begin(p, GW_WORDS_PAGE_CHOOSE_LOAD, "load");
    for (int l = 0; l < p->c->n_loads; l++)
        if (load_shown(p, l)) button(p, "load", l, l == p->load, p->c->loads[l].name, -1);
    gw_buf_add(p->out, "</div>\n");
    group_begin(p, GW_WORDS_PAGE_CHOOSE_AXLE, "axle");
    for (gw_axle a = GW_FRONT; a < GW_AXLES; a++)
        if (gw_page_has_axle(p, a)) button(p, "axle", (int)a, a == p->axle, gw_page_wheel_of(a), -1);
    gw_buf_add(p->out, "</div>\n");
}

static void slider(const gw_page *p, gw_words name, const char *id, double to)
{
    gw_buf_fmt(p->out, "<label for=\"%s\"><span>", id);
    gw_html_text(p->out, gw_words_text(name));
    gw_buf_fmt(p->out, " <output for=\"%s\" id=\"%s-shown\">0.00 g</output></span>", id, id);
    gw_buf_fmt(p->out,
               "<input type=\"range\" id=\"%s\" min=\"0\" max=\"%.2f\" step=\"0.01\" value=\"0\"></label>\n",
               id, to);
}

static void sliders(const gw_page *p)
{
    const gw_grid_plan *plan = &p->r->grid.plan;
    if (!p->r->grid.n) return;
    gw_buf_add(p->out, "<fieldset class=\"sliders\"><legend>");
    GW_TELL(p->out, PAGE_SLIDE);
    gw_buf_add(p->out, "</legend>\n");
    slider(p, GW_WORDS_PAGE_SLIDE_BRAKE, "brake", plan->brake_to_g);
    slider(p, GW_WORDS_PAGE_SLIDE_LATERAL, "lateral", plan->lateral_to_g);
    gw_buf_add(p->out, "<p class=\"note\">");
    GW_SAY(p->out, PAGE_SLIDE_NOTE, { "brake", gw_fixed(gw_grid_brake(plan, 1), 1).s },
           { "lateral", gw_fixed(gw_grid_lateral(plan, 1), 1).s },
           { "drawn", gw_fixed(gw_grid_lateral(plan, GW_PICTURE_STEP), 1).s });
    gw_buf_add(p->out, "</p></fieldset>\n");
}

/* Figures of the state; the script fills them anew. `key` is the member of the results in the data. */
static const struct {
    const char *key, *unit;
    gw_words name;
    int decimals;
} FIGURES[] = {
    { "toe_change_deg", "\xC2\xB0", GW_WORDS_PAGE_FIG_TOE_CHANGE, 2 },
    { "rim_mm", "\xC2\xA0mm", GW_WORDS_PAGE_FIG_RIM, 1 },
    { "toe_deg", "\xC2\xB0", GW_WORDS_PAGE_FIG_TOE, 2 },
    { "camber_change_deg", "\xC2\xB0", GW_WORDS_PAGE_FIG_CAMBER_CHANGE, 2 },
    { "camber_deg", "\xC2\xB0", GW_WORDS_PAGE_FIG_CAMBER, 2 },
    { "camber_to_road_deg", "\xC2\xB0", GW_WORDS_PAGE_FIG_ROAD, 2 },
    { "x_mm", "\xC2\xA0mm", GW_WORDS_PAGE_FIG_X, 1 },
    { "y_mm", "\xC2\xA0mm", GW_WORDS_PAGE_FIG_Y, 1 },
};

static double toe_change_of(const gw_page *p, const gw_deflection *d)
{
    (void)p;
    return d->result.toe_change / GW_DEG;
}

static double rim_of(const gw_page *p, const gw_deflection *d)
{
    double rim = p->c->corners[d->axle].wheel.rim_diameter;
    return rim > 0.0 ? rim * sin(d->result.toe_change) / GW_MM : (double)NAN;
}

static double toe_of(const gw_page *p, const gw_deflection *d)
{
    (void)p;
    return d->result.toe / GW_DEG;
}

static double camber_change_of(const gw_page *p, const gw_deflection *d)
{
    (void)p;
    return d->result.camber_change / GW_DEG;
}

static double camber_of(const gw_page *p, const gw_deflection *d)
{
    (void)p;
    return d->result.camber / GW_DEG;
}

static double road_of(const gw_page *p, const gw_deflection *d)
{
    (void)p;
    return d->manoeuvre ? d->camber_to_road / GW_DEG : (double)NAN;
}

static double x_of(const gw_page *p, const gw_deflection *d)
{
    (void)p;
    return d->result.wheel_centre.x / GW_MM;
}

static double y_of(const gw_page *p, const gw_deflection *d)
{
    (void)p;
    return d->result.wheel_centre.y / GW_MM;
}

/* What the page shows before, or without, its script; in the order of FIGURES. */
static void figure_cell(const gw_page *p, size_t figure, const gw_deflection *d)
{
    static double (*const OF[])(const gw_page *,
                                const gw_deflection *) = { toe_change_of, rim_of,  toe_of, camber_change_of,
                                                           camber_of,     road_of, x_of,   y_of };
    double value = d ? OF[figure](p, d) : (double)NAN;
    gw_buf_add(p->out, "<td>");
    if (isfinite(value))
        gw_html_figure(p->out, gw_signed(value, FIGURES[figure].decimals), FIGURES[figure].unit);
    else
        gw_buf_add(p->out, "\xE2\x80\x93");
    gw_buf_add(p->out, "</td>");
}

static void first_state(const gw_page *p)
{
    gw_buf load = { 0 };
    gw_page_load(p, p->load, &load);
    GW_SAY(p->out, PAGE_STATE_LOAD, { "kit", gw_page_kit(p, p->kit) }, { "axle", gw_page_axle(p->axle) },
           { "load", gw_buf_str(&load) });
    gw_buf_drop(&load, p->out);
}

static void state_table(const gw_page *p)
{
    gw_buf_add(p->out, "<p id=\"state\" class=\"state\" role=\"status\">");
    first_state(p);
    gw_buf_add(p->out, "</p>\n<table class=\"state-table\"><thead><tr><th scope=\"col\">");
    GW_TELL(p->out, PAGE_FIGURE);
    gw_buf_add(p->out, "</th><th scope=\"col\" id=\"state-kit\">");
    gw_html_name(p->out, gw_page_kit(p, p->kit));
    gw_buf_add(p->out, "</th><th scope=\"col\" class=\"ghost-column\">");
    gw_html_name(p->out, gw_page_kit(p, p->r->baseline));
    gw_buf_add(p->out, "</th></tr></thead><tbody>\n");
    for (size_t i = 0; i < sizeof FIGURES / sizeof *FIGURES; i++) {
        gw_buf_fmt(p->out, "<tr data-figure=\"%s\" data-unit=\"%s\" data-decimals=\"%d\"><th scope=\"row\">",
                   FIGURES[i].key, FIGURES[i].unit, FIGURES[i].decimals);
        gw_html_text(p->out, gw_words_text(FIGURES[i].name));
        gw_buf_add(p->out, "</th>");
        figure_cell(p, i, gw_page_find(p, p->kit, p->axle, p->load));
        figure_cell(p, i, gw_page_find(p, p->r->baseline, p->axle, p->load));
        gw_buf_add(p->out, "</tr>\n");
    }
    gw_buf_add(p->out, "</tbody></table>\n");
}

void gw_page_wheel(const gw_page *p)
{
    gw_buf_add(p->out, "<div class=\"controls\" id=\"controls\">");
    buttons(p);
    gw_buf_add(p->out, "<noscript><p class=\"note\">");
    GW_TELL(p->out, PAGE_NOSCRIPT);
    gw_buf_fmt(
        p->out,
        "</p></noscript></div>\n<div class=\"stage k%d\" id=\"stage\">\n<div class=\"views\" id=\"views\">\n",
        p->kit % GW_STYLES);
    gw_page_first_pictures(p, p->out);
    gw_buf_add(p->out, "</div>\n<div class=\"readings\">");
    state_table(p);
    gw_buf_add(p->out, "<p class=\"note\">");
    GW_SAY(p->out, PAGE_GHOST, { "kit", gw_page_kit(p, p->r->baseline) });
    gw_buf_add(p->out, "</p></div></div>\n");
    sliders(p);
}

enum { SHARES = 5 }; /* bushes that are named; the rest is one bar */

static void put_share(const gw_page *p, const char *name, double angle, double widest)
{
    double half = 50.0 * fabs(angle) / widest, left = angle < 0.0 ? 50.0 - half : 50.0;
    gw_buf_add(p->out, "<li>");
    gw_html_name(p->out, name);
    gw_buf_fmt(
        p->out,
        "<svg class=\"bar\" viewBox=\"0 0 100 10\" preserveAspectRatio=\"none\" aria-hidden=\"true\">"
        "<path d=\"M50 0V10\"/><rect class=\"%s\" x=\"%.2f\" y=\"1\" width=\"%.2f\" height=\"8\"/></svg>",
        angle < 0.0 ? "out" : "in", left, half);
    gw_buf_add(p->out, "<span class=\"value\">");
    gw_page_angle(p->out, angle, true);
    gw_buf_add(p->out, "</span></li>\n");
}

/* The list as it is before, or without, the script. */
static void first_shares(const gw_page *p)
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
        put_share(p, gw_buf_str(&name), top[i].angle, widest);
        gw_buf_drop(&name, p->out);
    }
    put_share(p, gw_words_text(GW_WORDS_PAGE_SHARE_REST), rest, widest);
    put_share(p, gw_words_text(GW_WORDS_PAGE_SHARE_TRAVEL), d->result.travel_toe, widest);
}

void gw_page_shares(const gw_page *p)
{
    gw_buf_add(p->out, "<section aria-labelledby=\"shares-name\">\n<h3 id=\"shares-name\">");
    GW_TELL(p->out, PAGE_SHARES);
    gw_buf_add(p->out, "</h3>\n<p class=\"note shares-note\">");
    GW_TELL(p->out, PAGE_SHARES_NOTE);
    gw_buf_add(p->out, "</p>\n<ul class=\"shares\" id=\"shares\">\n");
    first_shares(p);
    gw_buf_add(p->out, "</ul>\n</section>\n");
}

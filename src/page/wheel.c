/* SPDX-License-Identifier: MIT */
/* The wheel that moves: buttons, sliders, two drawings, and the figures of the state shown. */
#include "page/drawing.h"

#include "record/unit.h"
#include "show/contributors.h"

#include <math.h>
#include <stddef.h>

static void group_begin(const gw_page *p, gw_words name, const char *what)
{
    gw_html_put(p->out,
                "<div class=\"group\" role=\"group\" aria-labelledby=\"choose-{}\" data-group=\"{}\">"
                "<span class=\"group-name\" id=\"choose-{}\">{}</span>",
                what, what, what, gw_words_text(name));
}

static void button(const gw_page *p, const char *what, int index, bool pressed, const char *name, int style)
{
    gw_buf_fmt(p->out, "<button type=\"button\" data-%s=\"%d\" aria-pressed=\"%s\">", what, index,
               pressed ? "true" : "false");
    if (style >= 0) gw_page_swatch(p, style);
    gw_html_put(p->out, "<bdi>{}</bdi></button>", name);
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
    gw_html_put(p->out,
                "<label for=\"{}\"><span>{} <output for=\"{}\" id=\"{}-shown\">0.00 g</output></span>"
                "<input type=\"range\" id=\"{}\" min=\"0\" max=\"{}\" step=\"0.01\" value=\"0\"></label>\n",
                id, gw_words_text(name), id, id, id, gw_fixed(to, 2).s);
}

static void sliders(const gw_page *p)
{
    const gw_grid_plan *plan = &p->r->grid.plan;
    if (!p->r->grid.n) return;
    gw_html_put(p->out, "<fieldset class=\"sliders\"><legend>{}</legend>\n", GW_TOLD(PAGE_SLIDE));
    slider(p, GW_WORDS_PAGE_SLIDE_BRAKE, "brake", plan->brake_to_g);
    slider(p, GW_WORDS_PAGE_SLIDE_LATERAL, "lateral", plan->lateral_to_g);
    gw_buf_add(p->out, "<p class=\"note\">");
    GW_SAY(p->out, PAGE_SLIDE_NOTE, { "brake", gw_fixed(gw_grid_brake(plan, 1), 1).s },
           { "lateral", gw_fixed(gw_grid_lateral(plan, 1), 1).s },
           { "drawn", gw_fixed(gw_grid_lateral(plan, GW_PICTURE_STEP), 1).s });
    gw_buf_add(p->out, "</p></fieldset>\n");
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
static void figure_cell(const gw_page *p, size_t figure, const gw_deflection *d)
{
    double value = d ? figure_of(p, figure, d) : (double)NAN;
    gw_buf_add(p->out, "<td>");
    if (isfinite(value))
        gw_html_figure(p->out, gw_signed(value, FIGURES[figure].decimals), FIGURES[figure].sign);
    else
        gw_buf_add(p->out, "\xE2\x80\x93");
    gw_buf_add(p->out, "</td>");
}

static void first_state(const gw_page *p)
{
    GW_SAY(p->out, PAGE_STATE_LOAD, { "kit", gw_page_kit(p, p->kit) }, { "axle", gw_page_axle(p->axle) },
           { "load", gw_page_load_said(p, p->load) });
}

static void state_table(const gw_page *p)
{
    gw_buf_add(p->out, "<p id=\"state\" class=\"state\" role=\"status\">");
    first_state(p);
    gw_html_put(p->out,
                "</p>\n<table class=\"state-table\"><thead><tr><th scope=\"col\">{}</th>"
                "<th scope=\"col\" id=\"state-kit\"><bdi>{}</bdi></th>",
                GW_TOLD(PAGE_FIGURE), gw_page_kit(p, p->kit));
    if (gw_page_compares(p))
        gw_html_put(p->out, "<th scope=\"col\" class=\"ghost-column\"><bdi>{}</bdi></th>",
                    gw_page_kit(p, p->r->baseline));
    gw_buf_add(p->out, "</tr></thead><tbody>\n");
    for (size_t i = 0; i < sizeof FIGURES / sizeof *FIGURES; i++) {
        gw_html_put(p->out,
                    "<tr data-figure=\"{}\" data-unit=\"{}\" data-decimals=\"{}\"><th scope=\"row\">{}</th>",
                    FIGURES[i].key, FIGURES[i].sign, gw_fixed(FIGURES[i].decimals, 0).s,
                    gw_words_text(FIGURES[i].name));
        figure_cell(p, i, gw_page_find(p, p->kit, p->axle, p->load));
        if (gw_page_compares(p)) figure_cell(p, i, gw_page_find(p, p->r->baseline, p->axle, p->load));
        gw_buf_add(p->out, "</tr>\n");
    }
    gw_buf_add(p->out, "</tbody></table>\n");
}

void gw_page_wheel(const gw_page *p)
{
    gw_buf_add(p->out, "<div class=\"controls\" id=\"controls\">");
    buttons(p);
    gw_html_put(
        p->out,
        "<noscript><p class=\"note\">{}</p></noscript></div>\n<div class=\"stage k{}\" id=\"stage\">\n"
        "<div class=\"views\" id=\"views\">\n",
        GW_TOLD(PAGE_NOSCRIPT), gw_fixed(p->kit % GW_STYLES, 0).s);
    gw_page_first_pictures(p, p->out);
    gw_buf_add(p->out, "</div>\n<div class=\"readings\">");
    state_table(p);
    gw_buf_add(p->out, "<p class=\"note\">");
    if (gw_page_compares(p)) GW_SAY(p->out, PAGE_GHOST, { "kit", gw_page_kit(p, p->r->baseline) });
    gw_html_text(p->out, gw_words_text(GW_WORDS_PAGE_GREY));
    gw_buf_add(p->out, "</p></div></div>\n");
    sliders(p);
}

enum { SHARES = 5 }; /* bushes that are named; the rest is one bar */

static void put_share(const gw_page *p, const char *name, double angle, double widest)
{
    double half = 50.0 * fabs(angle) / widest, left = angle < 0.0 ? 50.0 - half : 50.0;
    gw_html_put(p->out, "<li><bdi>{}</bdi>", name);
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
        put_share(p, gw_page_kept(p, &name), top[i].angle, widest);
    }
    put_share(p, gw_words_text(GW_WORDS_PAGE_SHARE_REST), rest, widest);
    put_share(p, gw_words_text(GW_WORDS_PAGE_SHARE_TRAVEL), d->result.travel_toe, widest);
}

void gw_page_shares(const gw_page *p)
{
    gw_html_put(p->out,
                "<section aria-labelledby=\"shares-name\">\n<h3 id=\"shares-name\">{}</h3>\n"
                "<p class=\"note shares-note\">{}</p>\n<ul class=\"shares\" id=\"shares\">\n",
                GW_TOLD(PAGE_SHARES), GW_TOLD(PAGE_SHARES_NOTE));
    first_shares(p);
    gw_buf_add(p->out, "</ul>\n</section>\n");
}

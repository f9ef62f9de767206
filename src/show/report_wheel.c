/* SPDX-License-Identifier: MIT */
/* The wheel that moves: buttons, sliders, two drawings, and the figures of the state shown. */
#include "show/report_page.h"

#include "chart/style.h"
#include "giveway/units.h"
#include "show/contributors.h"

#include <math.h>

/* The drawings, in their own pixels: a tyre 150 high, about a metre of car a metre of picture. */
enum { VIEW_W = 260, VIEW_H = 232, TYRE_W = 46, TYRE_H = 150, MID_X = 130, ROAD_Y = 196, MID_Y = 118 };

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
           { "lateral", gw_fixed(gw_grid_lateral(plan, 1), 1).s });
    gw_buf_add(p->out, "</p></fieldset>\n");
}

/* A tyre about its middle, with its centre line. */
static void tyre(gw_buf *out, const char *class, double turn, double about_x, double about_y, double dx,
                 double dy)
{
    gw_buf_fmt(out, "<g class=\"%s\" transform=\"translate(%.3f %.3f) rotate(%.3f %g %g)\">", class, dx, dy,
               turn, about_x, about_y);
    gw_buf_fmt(out, "<rect x=\"%d\" y=\"%g\" width=\"%d\" height=\"%d\" rx=\"13\"/>", MID_X - TYRE_W / 2,
               about_y - (about_y > MID_Y ? TYRE_H : TYRE_H / 2), TYRE_W, TYRE_H);
    double top = about_y > MID_Y ? ROAD_Y - TYRE_H : MID_Y - TYRE_H / 2.0;
    gw_buf_fmt(out, "<path d=\"M%d %g V%g\"/></g>\n", MID_X, top - 14, top + TYRE_H);
}

static void view_begin(const gw_page *p, const char *id, gw_words title)
{
    gw_buf_fmt(p->out,
               "<figure><svg viewBox=\"0 0 %d %d\" role=\"img\" aria-labelledby=\"%s-name\" id=\"%s\">",
               VIEW_W, VIEW_H, id, id);
    gw_buf_fmt(p->out, "<title id=\"%s-name\">", id);
    gw_html_text(p->out, gw_words_text(title));
    gw_buf_add(p->out, "</title>\n");
}

static void caption(const gw_page *p, gw_words name, gw_words text)
{
    gw_buf_add(p->out, "</svg><figcaption><b>");
    gw_html_text(p->out, gw_words_text(name));
    gw_buf_add(p->out, ".</b> ");
    gw_number scale = gw_fixed(name == GW_WORDS_PAGE_BEHIND ? p->camber_scale : p->toe_scale, 0);
    gw_number move = gw_fixed(p->move_scale, 0);
    const gw_html_part parts[] = { { "scale", scale.s }, { "move", move.s }, { NULL, NULL } };
    gw_html_say(p->out, gw_words_text(text), parts);
    gw_buf_add(p->out, ".</figcaption></figure>\n");
}

static void svg_text(const gw_page *p, int x, int y, const char *anchor, gw_words word)
{
    gw_buf_fmt(p->out, "<text x=\"%d\" y=\"%d\" text-anchor=\"%s\">", x, y, anchor);
    gw_html_text(p->out, gw_words_text(word));
    gw_buf_add(p->out, "</text>");
}

static double lean(const gw_deflection *item)
{
    return (item->manoeuvre ? item->camber_to_road : item->result.camber) / GW_DEG;
}

/* From behind, outside is left: camber, positive with the top outboard, turns the wheel against the clock. */
static void from_behind(const gw_page *p, const gw_deflection *item, const gw_deflection *ghost)
{
    view_begin(p, "behind", GW_WORDS_PAGE_BEHIND);
    gw_buf_fmt(p->out, "<path class=\"road\" d=\"M10 %d H%d\"/><path class=\"plumb\" d=\"M%d 20 V%d\"/>\n",
               ROAD_Y, VIEW_W - 10, MID_X, ROAD_Y);
    tyre(p->out, "wheel", -p->camber_scale * lean(item), MID_X, ROAD_Y, 0, 0);
    tyre(p->out, "ghost", -p->camber_scale * lean(ghost), MID_X, ROAD_Y, 0, 0);
    svg_text(p, 12, VIEW_H - 14, "start", GW_WORDS_PAGE_OUTSIDE);
    svg_text(p, VIEW_W - 12, VIEW_H - 14, "end", GW_WORDS_PAGE_CAR_SIDE);
    gw_buf_add(p->out, "<text class=\"stale\" x=\"130\" y=\"110\" text-anchor=\"middle\">");
    GW_TELL(p->out, PAGE_STALE);
    gw_buf_add(p->out, "</text>");
    caption(p, GW_WORDS_PAGE_BEHIND, GW_WORDS_PAGE_BEHIND_TEXT);
}

/* A wheel of about 640 mm is drawn TYRE_H pixels high. */
double gw_page_pixels_per_m(const gw_page *p)
{
    return p->move_scale * TYRE_H / 0.64;
}

/* From above, forward is up: toe-in turns the front of the left wheel to the right, with the clock. */
static void from_above(const gw_page *p, const gw_deflection *item, const gw_deflection *ghost)
{
    double scale = gw_page_pixels_per_m(p);
    const gw_deflection *both[] = { item, ghost };
    view_begin(p, "above", GW_WORDS_PAGE_ABOVE);
    gw_buf_fmt(
        p->out,
        "<path class=\"plumb\" d=\"M%d 20 V%d\"/><path class=\"arrow\" d=\"M28 70 V34 m-6 9 6-9 6 9\"/>\n",
        MID_X, VIEW_H - 22);
    for (int i = 0; i < 2; i++) {
        gw_vec3 m = both[i]->result.wheel_centre;
        tyre(p->out, i ? "ghost" : "wheel", p->toe_scale * both[i]->result.toe / GW_DEG, MID_X, MID_Y,
             -scale * m.y, -scale * m.x);
    }
    svg_text(p, 12, 26, "start", GW_WORDS_PAGE_FORWARD);
    svg_text(p, 12, VIEW_H - 14, "start", GW_WORDS_PAGE_OUTSIDE);
    svg_text(p, VIEW_W - 12, VIEW_H - 14, "end", GW_WORDS_PAGE_CAR_SIDE);
    gw_buf_add(p->out, "<text class=\"stale\" x=\"130\" y=\"110\" text-anchor=\"middle\">");
    GW_TELL(p->out, PAGE_STALE);
    gw_buf_add(p->out, "</text>");
    caption(p, GW_WORDS_PAGE_ABOVE, GW_WORDS_PAGE_ABOVE_TEXT);
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
    gw_html_drop(p->out, &load);
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
    const gw_deflection *item = gw_page_find(p, p->kit, p->axle, p->load);
    const gw_deflection *ghost = gw_page_find(p, p->r->baseline, p->axle, p->load);
    gw_buf_add(p->out, "<section aria-labelledby=\"see\">\n<h2 id=\"see\">");
    GW_TELL(p->out, PAGE_SEE);
    gw_buf_add(p->out, "</h2>\n<div class=\"controls\">");
    buttons(p);
    gw_buf_add(p->out, "<noscript><p class=\"note\">");
    GW_TELL(p->out, PAGE_NOSCRIPT);
    gw_buf_fmt(p->out, "</p></noscript></div>\n<div class=\"stage\" style=\"--kit:%s\" id=\"stage\">\n",
               gw_style_colour(p->kit));
    from_behind(p, item, ghost);
    from_above(p, item, ghost);
    gw_buf_add(p->out, "<div class=\"readings\">");
    state_table(p);
    gw_buf_add(p->out, "<p class=\"note\">");
    GW_SAY(p->out, PAGE_GHOST, { "kit", gw_page_kit(p, p->r->baseline) });
    gw_buf_add(p->out, "</p></div></div>\n");
    sliders(p);
    gw_buf_add(p->out, "</section>\n");
}

enum { SHARES = 5 }; /* bushes that are named; the rest is one bar */

static void share(const gw_page *p, const char *name, double angle, double widest)
{
    double half = 50.0 * fabs(angle) / widest;
    gw_buf_add(p->out, "<li>");
    gw_html_name(p->out, name);
    gw_buf_fmt(p->out,
               "<span class=\"bar\"><i style=\"width:%.2f%%;left:%.2f%%\"></i></span><span class=\"value\">",
               half, angle < 0.0 ? 50.0 - half : 50.0);
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
        const gw_joint *joint = &corner->joints[top[i].joint];
        share(p, joint->label ? joint->label : joint->name, top[i].angle, widest);
    }
    share(p, gw_words_text(GW_WORDS_PAGE_SHARE_REST), rest, widest);
    share(p, gw_words_text(GW_WORDS_PAGE_SHARE_TRAVEL), d->result.travel_toe, widest);
}

void gw_page_shares(const gw_page *p)
{
    gw_buf_add(p->out, "<section aria-labelledby=\"shares-name\">\n<h2 id=\"shares-name\">");
    GW_TELL(p->out, PAGE_SHARES);
    gw_buf_add(p->out, "</h2>\n<p class=\"note shares-note\">");
    GW_TELL(p->out, PAGE_SHARES_NOTE);
    gw_buf_fmt(p->out, "</p>\n<ul class=\"shares\" id=\"shares\" style=\"--kit:%s\">\n",
               gw_style_colour(p->kit));
    first_shares(p);
    gw_buf_add(p->out, "</ul>\n</section>\n");
}

/* SPDX-License-Identifier: MIT */
/* The page as a whole: what is shown first, the frame, the order of the sections. */
#include "show/report_page.h"

#include "chart/style.h"
#include "giveway/pick.h"
#include "giveway/units.h"
#include "giveway/version.h"

#include <math.h>

const char *gw_page_kit(const gw_page *p, int kit)
{
    return p->c->kits[kit].label ? p->c->kits[kit].label : p->c->kits[kit].name;
}

const char *gw_page_bush(const gw_bush *bush)
{
    return bush->label ? bush->label : bush->name;
}

const char *gw_page_wheel_of(gw_axle axle)
{
    return gw_words_text(axle == GW_FRONT ? GW_WORDS_PAGE_FRONT_WHEEL : GW_WORDS_PAGE_REAR_WHEEL);
}

const char *gw_page_axle(gw_axle axle)
{
    return gw_words_text(axle == GW_FRONT ? GW_WORDS_PAGE_FRONT : GW_WORDS_PAGE_REAR);
}

const gw_deflection *gw_page_find(const gw_page *p, int kit, gw_axle axle, int load)
{
    return gw_deflect_find(&p->r->deflect, kit, axle, load);
}

bool gw_page_has_kit(const gw_page *p, int kit)
{
    for (int i = 0; i < p->r->deflect.n; i++)
        if (p->r->deflect.item[i].kit == kit) return true;
    return false;
}

bool gw_page_has_axle(const gw_page *p, gw_axle axle)
{
    for (int i = 0; i < p->r->deflect.n; i++)
        if (p->r->deflect.item[i].axle == axle) return true;
    return false;
}

void gw_page_angle(gw_buf *out, double angle, bool sign)
{
    double degrees = angle / GW_DEG;
    gw_html_figure(out, sign ? gw_signed(degrees, 2) : gw_fixed(degrees, 2), "\xC2\xB0");
}

static void put_phrase(gw_buf *out, gw_words sentence, const gw_load *load)
{
    const gw_manoeuvre *m = &load->manoeuvre;
    gw_number brake = gw_fixed(m->brake_g, 2), lateral = gw_fixed(m->lateral_g, 2),
              drive = gw_fixed(m->drive_g, 2);
    const gw_html_part parts[] = { { "brake", brake.s },
                                   { "lateral", lateral.s },
                                   { "drive", drive.s },
                                   { "load", load->name },
                                   { NULL, NULL } };
    gw_plain_say(out, gw_words_text(sentence), parts);
}

void gw_page_load(const gw_page *p, int load, gw_buf *out)
{
    const gw_load *l = &p->c->loads[load];
    const gw_manoeuvre *m = &l->manoeuvre;
    bool whole = l->kind == GW_LOAD_MANOEUVRE, corner = m->lateral_g > 0.0;
    put_phrase(out,
               !whole             ? GW_WORDS_PAGE_LOAD_NAMED
               : m->brake_g > 0.0 ? (corner ? GW_WORDS_PAGE_LOAD_BOTH : GW_WORDS_PAGE_LOAD_BRAKE)
               : m->drive_g > 0.0 ? (corner ? GW_WORDS_PAGE_LOAD_EXIT : GW_WORDS_PAGE_LOAD_DRIVE)
               : corner           ? GW_WORDS_PAGE_LOAD_CORNER
                                  : GW_WORDS_PAGE_LOAD_NAMED,
               l);
}

void gw_page_money(const gw_page *p, double sum, bool more, gw_buf *out)
{
    gw_buf_fmt(out, "%s%s", gw_page_price(round(sum * 100.0) / 100.0).s, more ? "+" : "");
    if (!p->c->shop.currency) return;
    gw_buf_add(out, "\xC2\xA0");
    gw_buf_clean(out, p->c->shop.currency);
}

void gw_page_swatch(const gw_page *p, int kit)
{
    gw_buf_fmt(p->out, "<span class=\"swatch\" style=\"--kit:%s\"></span>", gw_style_colour(kit));
    if (p->c->n_kits > GW_STYLES) gw_buf_fmt(p->out, "<span class=\"number\">%d</span> ", kit + 1);
}

void gw_page_joint(const gw_page *p, gw_axle axle, int joint, gw_buf *out)
{
    const gw_joint *j = &p->c->corners[axle].joints[joint];
    if (!j->label) gw_buf_fmt(out, "%s ", gw_page_axle(axle));
    gw_buf_clean(out, j->label ? j->label : j->name);
}

/* ---- what is shown first ---- */

static void choose_first(gw_page *p)
{
    p->axle = gw_page_has_axle(p, GW_FRONT) ? GW_FRONT : GW_REAR;
    p->kit = p->r->baseline;
    for (int k = p->c->n_kits - 1; k > p->r->baseline; k--)
        if (gw_page_has_kit(p, k)) p->kit = k;
    p->brake_load = gw_pick_load(p->c, &p->r->deflect, GW_PICK_STOP);
    p->corner_load = gw_pick_load(p->c, &p->r->deflect, GW_PICK_CORNER);
    if (p->brake_load == p->corner_load) p->brake_load = -1; /* one load does both: it is told once */
    p->load = p->corner_load >= 0 ? p->corner_load : p->brake_load;
    for (int i = 0; i < p->r->deflect.n && p->load < 0; i++)
        if (p->r->deflect.item[i].axle == p->axle &&
            gw_page_find(p, p->r->baseline, p->axle, p->r->deflect.item[i].load))
            p->load = p->r->deflect.item[i].load;
    for (int i = 0; i < p->r->deflect.n && p->load < 0;
         i++) /* nothing on this axle: it is told of the other */
        if (p->r->deflect.item[i].kit == p->r->baseline && !p->r->deflect.item[i].failed) {
            p->axle = p->r->deflect.item[i].axle;
            p->load = p->r->deflect.item[i].load;
        }
    while (p->kit > p->r->baseline && !gw_page_find(p, p->kit, p->axle, p->load)) p->kit--;
}

/* ---- how much the drawing overdoes it ---- */

static double nice_scale(double largest, double room)
{
    static const double STEPS[] = { 50, 20, 10, 5, 2 };
    for (size_t i = 0; i < sizeof STEPS / sizeof *STEPS; i++)
        if (largest * STEPS[i] <= room) return STEPS[i];
    return 1;
}

static void choose_scales(gw_page *p)
{
    double toe = 1e-9, camber = 1e-9, move = 1e-9;
    for (int i = 0; i < p->r->deflect.n; i++) {
        const gw_deflection *item = &p->r->deflect.item[i];
        if (item->failed) continue;
        toe = fmax(toe, fabs(item->result.toe));
        camber = fmax(camber, fabs(item->manoeuvre ? item->camber_to_road : item->result.camber));
        move = fmax(move, gw_norm(item->result.wheel_centre));
    }
    for (int i = 0; i < p->r->grid.n; i++)
        for (int s = 0; s < p->r->grid.plan.n_brake * p->r->grid.plan.n_lateral; s++) {
            toe = fmax(toe, fabs(p->r->grid.item[i].state[s].toe));
            camber = fmax(camber, fabs(p->r->grid.item[i].state[s].camber_to_road));
        }
    p->toe_scale = nice_scale(toe, 26 * GW_DEG);
    p->camber_scale = nice_scale(camber, 26 * GW_DEG);
    p->move_scale = nice_scale(move, 0.15);
}

/* ---- the frame ---- */

static void head(const gw_page *p)
{
    gw_buf_add(p->out, "<!DOCTYPE html>\n<html lang=\"");
    GW_TELL(p->out, PAGE_LANGUAGE);
    gw_buf_add(p->out, "\">\n<head>\n<meta charset=\"utf-8\">\n"
                       "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n"
                       "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; "
                       "style-src 'unsafe-inline'; script-src 'unsafe-inline'; img-src data:\">\n"
                       "<link rel=\"icon\" href=\"data:,\">\n<title>");
    gw_html_text(p->out, p->c->title);
    gw_buf_add(p->out, "</title>\n<style>\n");
    gw_buf_add(p->out, gw_page_style);
    gw_buf_fmt(p->out, "</style>\n</head>\n<body%s>\n<header>\n<p class=\"kicker\">",
               p->wish->workshop ? " data-both" : "");
    GW_TELL(p->out, PAGE_KICKER);
    if (p->wish->workshop) {
        gw_buf_add(p->out, " \xC2\xB7 ");
        GW_TELL(p->out, PAGE_FOR_WORKSHOP);
    }
    gw_buf_add(p->out, "</p>\n<p class=\"car\">");
    gw_html_name(p->out, p->c->title);
    gw_buf_add(p->out, "</p>\n<p class=\"made\">");
    GW_SAY(p->out, PAGE_PREPARED, { "date", p->wish->date }, { "version", GW_VERSION });
    gw_buf_add(p->out, "</p>\n</header>\n<main>\n");
}

static void foot(const gw_page *p)
{
    gw_buf_add(p->out, "</main>\n");
    gw_page_data(p);
    gw_buf_add(p->out, "<script>\n");
    gw_buf_add(p->out, gw_page_script);
    gw_buf_add(p->out, "</script>\n</body>\n</html>\n");
}

gw_status gw_report_page(const gw_report *report, const gw_page_charts *charts, const gw_page_wish *wish,
                         gw_buf *out, gw_error *err)
{
    gw_page p = { .r = report, .c = report->c, .charts = charts, .wish = wish, .out = out };
    choose_first(&p);
    choose_scales(&p);
    head(&p);
    gw_page_answer(&p);
    gw_page_glance(&p);
    gw_page_choose(&p);
    gw_page_stand(&p);
    gw_page_wheel(&p);
    gw_page_shares(&p);
    gw_page_sheet(&p);
    gw_page_figures(&p);
    if (wish->workshop) {
        gw_page_settings(&p);
        gw_page_bushes(&p);
    }
    gw_page_trust(&p);
    gw_page_inputs(&p);
    gw_page_cautions(&p);
    foot(&p);
    return gw_buf_status(out, err);
}

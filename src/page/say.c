/* SPDX-License-Identifier: MIT */
/* What the sections of the page say alike: names, loads, angles, sums of money. */
#include "page/say.h"

#include "giveway/casefile.h"
#include "record/unit.h"
#include "show/joint.h"

#include <ctype.h>
#include <math.h>

enum { WHOLE_FROM = 100 }; /* in the shop's currency: from here on hundredths are noise */

const char *gw_page_kept(const gw_page *p, gw_buf *text)
{
    return gw_buf_kept(text, p->arena, &p->out->failed);
}

const char *gw_page_fmt(const gw_page *p, const char *fmt, ...)
{
    va_list args;
    va_start(args, fmt);
    const char *kept = gw_buf_vkept(p->arena, &p->out->failed, fmt, args);
    va_end(args);
    return kept;
}

const char *gw_page_bush(const gw_page *p, const gw_bush *bush)
{
    gw_buf name = { 0 };
    if (bush->label) return bush->label;
    gw_name_in_words(bush->name, &name);
    return gw_page_kept(p, &name);
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

bool gw_page_compares(const gw_page *p)
{
    return p->kit != p->r->baseline;
}

bool gw_page_has_axle(const gw_page *p, gw_axle axle)
{
    for (int i = 0; i < p->r->deflect.n; i++)
        if (p->r->deflect.item[i].axle == axle) return true;
    return false;
}

void gw_page_angle(gw_buf *out, double angle, bool sign)
{
    double degrees = gw_unit_out(GW_UNIT_DEG, angle);
    gw_html_figure(out, sign ? gw_signed(degrees, 2) : gw_fixed(degrees, 2), "\xC2\xB0");
}

const char *gw_page_angle_said(const gw_page *p, double angle, bool sign)
{
    gw_buf text = { 0 };
    gw_page_angle(&text, angle, sign);
    return gw_page_kept(p, &text);
}

static gw_words phrase_of(const gw_load *load)
{
    const gw_manoeuvre *m = &load->manoeuvre;
    bool corner = m->lateral_g > 0.0;
    if (load->kind != GW_LOAD_MANOEUVRE) return GW_WORDS_PAGE_LOAD_NAMED;
    if (m->brake_g > 0.0) return corner ? GW_WORDS_PAGE_LOAD_BOTH : GW_WORDS_PAGE_LOAD_BRAKE;
    if (m->drive_g > 0.0) return corner ? GW_WORDS_PAGE_LOAD_EXIT : GW_WORDS_PAGE_LOAD_DRIVE;
    return corner ? GW_WORDS_PAGE_LOAD_CORNER : GW_WORDS_PAGE_LOAD_NAMED;
}

const char *gw_page_load_said(const gw_page *p, int load)
{
    const gw_load *l = &p->c->loads[load];
    const gw_manoeuvre *m = &l->manoeuvre;
    gw_buf text = { 0 };
    gw_plain_say(&text, gw_words_text(phrase_of(l)),
                 (const gw_html_part[]){ { "brake", gw_fixed(m->brake_g, 2).s },
                                         { "lateral", gw_fixed(m->lateral_g, 2).s },
                                         { "drive", gw_fixed(m->drive_g, 2).s },
                                         { "load", l->name },
                                         { NULL, NULL } });
    return gw_page_kept(p, &text);
}

gw_number gw_page_price(double price)
{
    return gw_fixed(price, price == floor(price) ? 0 : 2);
}

static const char *sum_said(const gw_page *p, gw_number sum, bool more)
{
    gw_buf text = { 0 };
    gw_buf_fmt(&text, "%s%s", sum.s, more ? "+" : "");
    if (p->c->shop.currency) gw_buf_say(&text, "\xC2\xA0%s", p->c->shop.currency);
    return gw_page_kept(p, &text);
}

void gw_page_minutes(gw_buf *out, double minutes)
{
    long all = lround(minutes), hours = all / 60, rest = all % 60;
    if (hours) gw_buf_fmt(out, "%ld\xC2\xA0h", hours);
    if (hours && rest) gw_buf_add(out, " ");
    if (rest || !hours) gw_buf_fmt(out, "%ld\xC2\xA0min", rest);
}

const char *gw_page_money_said(const gw_page *p, double sum, bool more)
{
    double hundredths = round(sum * 100.0) / 100.0;
    return sum_said(p, fabs(sum) < WHOLE_FROM ? gw_page_price(hundredths) : gw_fixed(sum, 0), more);
}

const char *gw_page_sum(const gw_page *p, double sum)
{
    return sum_said(p, gw_fixed(sum, 2), false);
}

const char *gw_page_planned(const gw_page *p, double cost)
{
    return gw_page_money_said(p, p->c->shop.has_tax ? cost * (1.0 + p->c->shop.tax) : cost, false);
}

/* Behind a comma, so with a small letter. */
static void put_small(const char *word, gw_buf *out)
{
    gw_buf_fmt(out, ", %c%s", tolower((unsigned char)word[0]), word + 1);
}

const char *gw_page_pick(const gw_page *p, int which)
{
    static const gw_words WORDS[GW_RECOMMENDED] = { GW_WORDS_PAGE_CHOOSE_VALUE, GW_WORDS_PAGE_CHOOSE_QUIET,
                                                    GW_WORDS_PAGE_CHOOSE_STEADY };
    const gw_recommendation *r = p->wish->choose->recommended;
    gw_buf text = { 0 };
    for (int i = 0; i < which; i++)
        if (r[i].member == r[which].member) return NULL;
    gw_buf_add(&text, gw_words_text(WORDS[which]));
    for (int i = which + 1; i < GW_RECOMMENDED; i++)
        if (r[i].member == r[which].member) put_small(gw_words_text(WORDS[i]), &text);
    return gw_page_kept(p, &text);
}

void gw_page_put_kit(const gw_page *p, gw_slots *slots, int kit)
{
    gw_slots_fmt(slots, "kit", "%d", kit);
    gw_slots_fmt(slots, "style", "%d", kit % GW_STYLES);
    if (p->c->n_kits > GW_STYLES) gw_slots_fmt(slots, "number", "%d", kit + 1);
    gw_slots_text(slots, "label", gw_kit_said(p->c, kit));
}

const char *gw_page_joint(const gw_page *p, gw_axle axle, int joint)
{
    const gw_corner *corner = &p->c->corners[axle];
    gw_buf name = { 0 };
    if (corner->joints[joint].label) return corner->joints[joint].label;
    gw_buf_fmt(&name, "%s ", gw_page_axle(axle));
    gw_name_in_words(gw_joint_as_written(corner, joint), &name);
    return gw_page_kept(p, &name);
}

const char *gw_page_joint_of_table(const gw_page *p, gw_axle axle, int joint)
{
    gw_buf name = { 0 };
    gw_joint_said(&p->c->corners[axle], joint, &name);
    return gw_page_kept(p, &name);
}

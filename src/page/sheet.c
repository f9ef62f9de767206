/* SPDX-License-Identifier: MIT */
/* The alignment sheet: what each kit leaves, and what it can be set to. */
#include "page/page.h"

static bool can_set(const gw_page *p, gw_axle axle)
{
    for (int i = 0; i < p->r->align.n; i++)
        if (p->r->align.item[i].axle == axle) return true;
    return false;
}

/* "Front wheels: target toe +0.10°, camber -1.90°" */
static void say_target(const gw_page *p, gw_axle axle)
{
    static const gw_words WORDS[GW_TARGETS] = { [GW_TARGET_TOE] = GW_WORDS_PAGE_SHEET_TOE,
                                                [GW_TARGET_CAMBER] = GW_WORDS_PAGE_SHEET_CAMBER,
                                                [GW_TARGET_CASTER] = GW_WORDS_PAGE_SHEET_CASTER };
    const gw_align *align = &p->c->align[axle];
    gw_buf target = { 0 };
    for (gw_target t = GW_TARGET_TOE; t < GW_TARGETS; t++) {
        if (!gw_target_given(align, t)) continue;
        if (target.n) GW_TELL(&target, PAGE_ANSWER_COMMA);
        const char *angle = gw_page_angle_said(p, gw_target_of(align, t), true);
        gw_plain_say(&target, gw_words_text(WORDS[t]),
                     (const gw_html_part[]){ { "angle", angle }, { NULL, NULL } });
    }
    GW_SAY(p->out, PAGE_SHEET_AXLE, { "axle", gw_page_wheel_of(axle) },
           { "target", gw_page_kept(p, &target) });
}

static void head(const gw_page *p)
{
    static const gw_words HEADS[] = { GW_WORDS_PAGE_SHEET_CAMBER_SET, GW_WORDS_PAGE_SHEET_TOE_SET,
                                      GW_WORDS_PAGE_SHEET_MET };
    gw_html_put(p->out, "<thead><tr><th scope=\"col\">{}</th>", GW_TOLD(PAGE_GLANCE_KIT));
    for (gw_axle a = GW_FRONT; a < GW_AXLES; a++)
        for (size_t i = 0; i < sizeof HEADS / sizeof *HEADS && can_set(p, a); i++) {
            gw_buf_add(p->out, "<th scope=\"col\">");
            GW_SAY_ID(p->out, HEADS[i], { "axle", gw_page_wheel_of(a) });
            gw_buf_add(p->out, "</th>");
        }
    gw_buf_add(p->out, "</tr></thead>\n<tbody>\n");
}

static gw_words verdict_of(const gw_align_item *item)
{
    gw_words word = GW_WORDS_PAGE_SHEET_REACHED;
    for (gw_target t = GW_TARGET_TOE; t < GW_TARGETS; t++) {
        if (item->reached[t]) continue;
        if (!item->tolerated[t]) return GW_WORDS_PAGE_SHEET_MISSED;
        word = GW_WORDS_PAGE_SHEET_TOLERATED;
    }
    return word;
}

/* "-1.00° > -1.90°": as fitted, as set. */
static void change_cell(const gw_page *p, double before, double after)
{
    gw_html_put(p->out, "<td><span>{}</span> \xE2\x86\x92 <span>{}</span></td>", /* an arrow */
                gw_page_angle_said(p, before, true), gw_page_angle_said(p, after, true));
}

static void cells(const gw_page *p, const gw_align_item *item)
{
    const gw_corner_setting *before = &item->before.setting, *after = &item->after.setting;
    change_cell(p, before->camber, after->camber);
    change_cell(p, before->toe, after->toe);
    gw_html_put(p->out, "<td class=\"text\">{}</td>", gw_words_text(verdict_of(item)));
}

/* The side is named where the sides were measured; what was not stands in both rows. */
static void row(const gw_page *p, int kit, gw_ramp_side side)
{
    static const gw_words SIDES[] = {
        [GW_RAMP_LEFT] = GW_WORDS_PAGE_SHEET_LEFT, [GW_RAMP_RIGHT] = GW_WORDS_PAGE_SHEET_RIGHT
    };
    gw_buf_fmt(p->out, "<tr><th scope=\"row\"><span class=\"swatch k%d\"></span>", kit % GW_STYLES);
    gw_html_put(p->out, "<bdi>{}</bdi>{}</th>", gw_page_kit(p, kit),
                side == GW_RAMP_BOTH ? "" : gw_words_text(SIDES[side]));
    for (int i = 0; i < p->r->align.n; i++) {
        const gw_align_item *item = &p->r->align.item[i];
        if (item->kit == kit && (item->side == side || item->side == GW_RAMP_BOTH)) cells(p, item);
    }
    gw_buf_add(p->out, "</tr>\n");
}

void gw_page_sheet(const gw_page *p)
{
    if (!p->r->align.n) return;
    gw_page_section_begin(p, "sheet", NULL, GW_WORDS_PAGE_SHEET);
    gw_buf_add(p->out, "<table class=\"glance\">");
    head(p);
    for (int k = 0; k < p->c->n_kits; k++)
        for (int side = p->r->align.n_axles > 0;
             gw_page_has_kit(p, k) && side <= 2 * (p->r->align.n_axles > 0); side++)
            row(p, k, (gw_ramp_side)side);
    gw_buf_add(p->out, "</tbody></table>\n<p class=\"note\">");
    for (gw_axle a = GW_FRONT; a < GW_AXLES; a++) {
        if (!can_set(p, a)) continue;
        say_target(p, a);
        gw_buf_add(p->out, " ");
    }
    gw_html_put(p->out, "{}</p>\n</section>\n", GW_TOLD(PAGE_SHEET_NOTE));
}

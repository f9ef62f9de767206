/* SPDX-License-Identifier: MIT */
/* The page as a whole: what is shown first, the frame, the order of the sections. */
#include "page/page.h"
#include "page/embedded.h"
#include "page/sections.h"

#include "giveway/pick.h"
#include "giveway/version.h"

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

/* ---- the frame ---- */

typedef void section(const gw_page *p);

/* A section that still writes its own mark-up goes into its slot whole. */
static void put_section(gw_page *p, gw_slots *slots, const char *name, section *write)
{
    gw_buf text = { 0 }, *page = p->out;
    p->out = &text;
    write(p);
    p->out = page;
    gw_slots_take(slots, name, &text);
}

static void put_sections(gw_page *p, gw_slots *slots)
{
    put_section(p, slots, "answers", gw_page_answer);
    put_section(p, slots, "data", gw_page_data);
    gw_page_cards(p, slots);
    gw_page_wheel(p, slots);
    gw_page_glance(p, slots);
    gw_page_choose(p, slots);
    gw_page_stand(p, slots);
    gw_page_sheet(p, slots);
    gw_page_figures(p, slots);
    gw_page_quotes(p, slots);
    gw_page_trust(p, slots);
    gw_page_inputs(p, slots);
    if (!p->wish->workshop) return;
    gw_page_sides(p, slots);
    gw_page_settings(p, slots);
    gw_page_bushes(p, slots);
}

static void put_frame(const gw_page *p, gw_slots *slots)
{
    gw_slots_text(slots, "style", gw_page_style);
    gw_slots_text(slots, "script", gw_page_script);
    gw_slots_text(slots, "style_hash", gw_page_style_hash);
    gw_slots_text(slots, "script_hash", gw_page_script_hash);
    gw_slots_text(slots, "title", p->c->title);
    gw_slots_text(slots, "date", p->wish->date);
    gw_slots_text(slots, "version", GW_VERSION);
    gw_slots_text(slots, "question", gw_words_text(gw_page_question(p)));
    if (p->wish->workshop) gw_slots_text(slots, "workshop", "yes");
    if (p->r->ride.n && gw_page_compares(p)) gw_slots_text(slots, "sound", "yes");
}

gw_status gw_report_page(const gw_report *report, const gw_page_charts *charts, const gw_page_wish *wish,
                         gw_buf *out, gw_error *err)
{
    gw_page p = { .r = report, .c = report->c, .charts = charts, .wish = wish, .out = out };
    gw_card_study cards = { 0 };
    gw_arena arena = { 0 };
    p.arena = &arena;
    gw_status status = gw_study_cards(report, wish->choose, &cards, err);
    if (status != GW_OK) return status;
    p.cards = &cards;
    gw_slots *slots = gw_slots_make(&arena);
    choose_first(&p);
    put_frame(&p, slots);
    put_sections(&p, slots);
    gw_template_fill(gw_page_template, slots, out);
    gw_arena_free(&arena);
    gw_card_study_free(&cards);
    return gw_buf_status(out, err);
}

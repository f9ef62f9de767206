/* SPDX-License-Identifier: MIT */
#include "show/joint.h"
#include "show/deflect.h"
#include "show/words.h"

static void heading(gw_paper *paper, const gw_place *place)
{
    const gw_deflection *item = GW_IT(place, gw_deflection);
    const gw_kit *kit = &place->c->kits[item->kit];
    bool labelled = kit->label != kit->name;
    gw_paper_heading(paper, "%s corner, kit %s%s%s", gw_axle_name(item->axle), kit->name,
                     labelled ? ": " : "", labelled ? kit->label : "");
    if (item->off_centre)
        gw_paper_line(paper, "  its off-centre bushes give a static camber of %s deg, toe set again",
                      gw_signed(gw_unit_out(GW_UNIT_DEG, item->static_camber), 2).s);
}

/* The load, and which wheel where both are told of it. */
static void say_load(const gw_place *place, gw_buf *out)
{
    const gw_deflection *item = GW_IT(place, gw_deflection);
    gw_buf_say(out, "%s", place->c->loads[item->load].name);
    if (gw_wheels_told(place->c, item->kit, item->axle, item->load) > 1)
        gw_buf_fmt(out, ", %s", item->manoeuvre ? GW_SIDE_NAMES[item->side] : GW_WHEEL_NAMES[item->wheel]);
}

static const gw_column WHEEL[] = {
    GW_CELL_COLUMN("load", say_load),
    GW_FIGURE_COLUMN("travel", "travel", GW_SIGNED, 1),
    GW_FIGURE_COLUMN("toe_change", "toe\nchange", GW_SIGNED, 3),
    GW_FIGURE_COLUMN("toe", "toe", GW_SIGNED, 3),
    GW_FIGURE_COLUMN("camber_change", "camber\nchange", GW_SIGNED, 3),
    GW_FIGURE_COLUMN("camber", "camber", GW_SIGNED, 3),
    GW_FIGURE_COLUMN("caster_change", "caster\nchange", GW_SIGNED, 3),
    GW_FIGURE_COLUMN("wheel_centre.x", "wheel\nfore-aft", GW_SIGNED, 2),
    GW_FIGURE_COLUMN("contact_patch.y", "patch\nsideways", GW_SIGNED, 2),
    GW_FIGURE_COLUMN("spring_force", "spring\nforce", GW_FIXED, 0),
};

static void blame_line(gw_paper *paper, const gw_place *place, gw_angle which)
{
    const gw_deflection *item = GW_IT(place, gw_deflection);
    gw_contributor top[3];
    gw_buf said = { 0 };
    int n = gw_contributors(&place->c->corners[item->axle], &item->result, which, 3, top);
    say_load(place, &said);
    gw_buf_add(&said, which == GW_TOE ? ", toe: " : ", camber: ");
    gw_contributors_words(top, n, which, &said);
    if (!n) gw_buf_add(&said, "no bush moves it");
    gw_paper_say_of(paper, 4, &said);
}

/* -- joint by joint -- */

/* What each joint gives way by, the force it carries, and what of toe and camber that makes. */
static const gw_column PUSH[] = {
    GW_WORD_COLUMN("joint", "joint"),
    GW_FIGURE_COLUMN("deflection", "deflection\ne1, e2, e3", GW_SIGNED, 3),
    GW_FIGURE_COLUMN("force", "force\ne1, e2, e3", GW_SIGNED, 0),
    GW_FIGURE_COLUMN("toe_share", "toe\nshare", GW_SIGNED, 4),
    GW_FIGURE_COLUMN("camber_share", "camber\nshare", GW_SIGNED, 4),
};

/* How far each joint turns, and what it costs where the bush resists. */
static const gw_column TURN[] = {
    GW_WORD_COLUMN("joint", "joint"),
    GW_FIGURE_COLUMN("rotation", "rotation\nabout e1, e2, e3", GW_SIGNED, 2),
    GW_FIGURE_COLUMN("moment", "moment\nabout e1, e2, e3", GW_SIGNED, 1),
};

static void share_row(gw_paper *paper, const gw_place *place, const char *name, const char *toe,
                      const char *camber)
{
    gw_paper_cell(paper, name);
    gw_paper_cell(paper, NULL);
    gw_paper_cell(paper, NULL);
    gw_paper_cell(paper, gw_paper_figure(place, toe, GW_SIGNED, 4).s);
    gw_paper_cell(paper, gw_paper_figure(place, camber, GW_SIGNED, 4).s);
}

static void push_table(gw_paper *paper, const gw_place *place)
{
    gw_paper_begin(paper, gw_record_of(place, "bushes"), PUSH, GW_COLUMNS(PUSH));
    gw_paper_each(paper, place, "bushes", gw_paper_row);
    share_row(paper, place, "travel of the wheel", "shares.travel_toe", "shares.travel_camber");
    share_row(paper, place, "geometry (beyond linear)", "shares.geometry_toe", "shares.geometry_camber");
    share_row(paper, place, "together", "toe_change", "camber_change");
    gw_paper_end(paper);
}

static void joint_tables(gw_paper *paper, const gw_place *place)
{
    const gw_deflection *item = GW_IT(place, gw_deflection);
    gw_buf load = { 0 };
    say_load(place, &load);
    gw_paper_gap(paper);
    gw_paper_line(paper, "  %s, joint by joint, in the frame of each bush:", gw_buf_str(&load));
    gw_buf_drop(&load, paper->out);
    push_table(paper, place);
    gw_paper_gap(paper);
    gw_paper_list(paper, place, "bushes", TURN, GW_COLUMNS(TURN), NULL);
    gw_strength_text(place->c, item, paper);
}

/* -- a kit in a corner: every load -- */

static int end_of_group(const gw_deflect_study *study, int from)
{
    int to = from + 1;
    while (to < study->n && study->item[to].kit == study->item[from].kit &&
           study->item[to].axle == study->item[from].axle)
        to++;
    return to;
}

static gw_place item_at(const gw_place *top, int index)
{
    gw_place place;
    gw_place_element(gw_row_of(top, "results"), top, index, &place);
    return place;
}

void gw_failed_line(const gw_case *c, const gw_deflection *item, bool kit, gw_paper *paper)
{
    gw_paper_say(paper, 2, "%s: not carried: %s", kit ? c->kits[item->kit].name : c->loads[item->load].name,
                 item->failed);
}

static bool is_failed(const gw_place *place)
{
    return GW_IT(place, gw_deflection)->failed != NULL;
}

/* The loads of a kit in a corner that were carried; those that were not below them. */
static int wheel_table(gw_paper *paper, const gw_place *top, int from, int to)
{
    int carried = 0;
    for (int i = from; i < to; i++) {
        const gw_place place = item_at(top, i);
        if (is_failed(&place)) continue;
        if (!carried++) gw_paper_begin(paper, &GW_DEFLECTION_RECORD, WHEEL, GW_COLUMNS(WHEEL));
        gw_paper_row(paper, &place);
    }
    if (carried) gw_paper_end(paper);
    for (int i = from; i < to; i++) {
        const gw_place place = item_at(top, i);
        if (is_failed(&place)) gw_failed_line(place.c, GW_IT(&place, gw_deflection), false, paper);
    }
    return carried;
}

static void group(gw_paper *paper, const gw_place *top, int from, int to)
{
    const gw_place first = item_at(top, from);
    heading(paper, &first);
    int carried = wheel_table(paper, top, from, to);
    if (!paper->detail && carried)
        gw_paper_line(paper, "  joints that move most (share of all contributions by size):");
    for (int i = from; i < to; i++) {
        const gw_place place = item_at(top, i);
        if (is_failed(&place)) continue;
        if (paper->detail) {
            joint_tables(paper, &place);
        } else {
            blame_line(paper, &place, GW_TOE);
            blame_line(paper, &place, GW_CAMBER);
        }
    }
}

void gw_deflect_text(const gw_case *c, const void *made, gw_paper *paper)
{
    const gw_deflect_study *study = &((const gw_deflect_made *)made)->deflect;
    const gw_strength_study *strength = &((const gw_deflect_made *)made)->strength;
    const gw_place top = gw_place_top(&GW_DEFLECT_RESULT, c, made);
    gw_paper_line(paper, "%s", c->title);
    gw_paper_say(paper, 0,
                 "Changes are from the car standing still (static load, wheel set to its static camber and "
                 "toe). Positive are: bump, toe-in, camber with the top outboard, caster with the top "
                 "rearward, the wheel forward, the contact patch outward.");
    for (int i = 0, to; i < study->n; i = to) {
        to = end_of_group(study, i);
        group(paper, &top, i, to);
    }
    gw_overloads_text(c, strength, paper);
    gw_say_closing(paper, GW_WORDS_STATIC_ONLY);
}

/* SPDX-License-Identifier: MIT */
/* Camber and toe of both wheels in a corner: where they come from, kit by kit. */
#include "show/handling.h"

#include "format/number.h"
#include "record/unit.h"
#include "show/phrase.h"

#include <stddef.h>
#include <stdio.h>

enum { MOST_PARTS = 7 };

/* A part of an angle: where it stands, and in which tables. */
typedef struct gw_part_column {
    const char *head;
    size_t at;
    bool road, rule, toe; /* of a car solved whole; by the rules; toe has it too */
} gw_part_column;

static const gw_part_column PARTS[MOST_PARTS] = {
    { "static", offsetof(gw_angle_parts, setting), true, true, true },
    { "roll", offsetof(gw_angle_parts, roll), true, true, false },
    { "tyre", offsetof(gw_angle_parts, tyre), true, false, false },
    { "travel", offsetof(gw_angle_parts, travel), true, true, true },
    { "jacking", offsetof(gw_angle_parts, jacking), true, false, true },
    { "bushes", offsetof(gw_angle_parts, compliance), true, true, true },
    { "is", offsetof(gw_angle_parts, total), true, true, true },
};

static bool has_part(const gw_part_column *part, const gw_corner_budget *b, bool toe)
{
    return (b->on_road ? part->road : part->rule) && (part->toe || !toe);
}

static void columns(const gw_corner_budget *b, bool toe, gw_table *t)
{
    for (int i = 0; i < MOST_PARTS; i++)
        if (has_part(&PARTS[i], b, toe)) gw_table_column(t, GW_RIGHT, PARTS[i].head);
}

static void put_angles(const gw_corner_budget *b, bool toe, gw_table *t)
{
    const gw_angle_parts *from = toe ? &b->toe : &b->camber;
    for (int i = 0; i < MOST_PARTS; i++)
        if (has_part(&PARTS[i], b, toe))
            gw_table_cell(t, gw_signed(gw_unit_of_member(GW_UNIT_DEG, from, PARTS[i].at), 2).s);
}

bool gw_both_wheels_find(const gw_handling_study *h, int kit, gw_axle axle, int load, gw_both_wheels out)
{
    for (gw_side s = GW_OUTER; s <= GW_INNER; s++) out[s] = gw_corner_budget_find(h, kit, axle, load, s);
    return out[GW_OUTER] && out[GW_INNER];
}

static const gw_corner_budget *first_of(const gw_handling_page *p, gw_axle axle, int load)
{
    const gw_handling_study *h = p->cmp->handling;
    for (int i = 0; i < h->n_budgets; i++)
        if (h->budget[i].axle == axle && h->budget[i].load == load) return &h->budget[i];
    return NULL;
}

static void heading(const gw_handling_page *p, const char *what, const char *unit, gw_axle axle, int load)
{
    gw_buf head = { 0 };
    gw_buf_fmt(&head, "%s of the %s wheels, %s", what, gw_axle_name(axle), unit);
    gw_phrase_load(&p->cmp->c->loads[load], &head);
    gw_buf_say(&head, ": %s", p->cmp->c->loads[load].name);
    gw_paper_heading(p->paper, "%s", gw_buf_str(&head));
    gw_buf_drop(&head, p->paper->out);
}

/* Where the angle of both wheels comes from, a row each. */
static void parts_table(const gw_handling_page *p, gw_axle axle, int load, bool toe)
{
    gw_table t = { 0 };
    heading(p, toe ? "Toe" : "Camber to the road", "deg, ", axle, load);
    gw_table_heads(&t, "ll", "kit", "wheel");
    columns(first_of(p, axle, load), toe, &t);
    for (int k = 0; k < p->cmp->c->n_kits; k++) {
        gw_both_wheels both;
        if (!gw_both_wheels_find(p->cmp->handling, k, axle, load, both)) continue;
        for (gw_side s = GW_OUTER; s <= GW_INNER; s++) {
            gw_table_cell(&t, s == GW_OUTER ? p->cmp->c->kits[k].name : NULL);
            gw_table_cell(&t, gw_side_name(s));
            put_angles(both[s], toe, &t);
        }
    }
    gw_paper_table(p->paper, &t, 2);
}

/* In the order of gw_wheel_figure. */
static const struct {
    const char *head;
    size_t at; /* of a gw_corner_budget */
    gw_unit unit;
    int decimals;
    bool is_signed;
} WHEEL[GW_WHEEL_FIGURES] = {
    { "travel", offsetof(gw_corner_budget, travel), GW_UNIT_MM, 1, true },
    { "load", offsetof(gw_corner_budget, vertical), GW_UNIT_N, 0, false },
    { "side force", offsetof(gw_corner_budget, lateral), GW_UNIT_N, 0, false },
    { "toe", offsetof(gw_corner_budget, toe.total), GW_UNIT_DEG, 2, true },
    { "camber to road", offsetof(gw_corner_budget, camber.total), GW_UNIT_DEG, 2, true },
};

gw_number gw_wheel_figure(const gw_corner_budget *b, int i)
{
    double value = gw_unit_of_member(WHEEL[i].unit, b, WHEEL[i].at);
    return (WHEEL[i].is_signed ? gw_signed : gw_fixed)(value, WHEEL[i].decimals);
}

static void wheels_table(const gw_handling_page *p, gw_axle axle, int load)
{
    gw_table t = { 0 };
    heading(p, "Outer and inner", "", axle, load);
    gw_table_column(&t, GW_LEFT, "kit");
    for (int i = 0; i < GW_WHEEL_FIGURES; i++)
        for (gw_side s = GW_OUTER; s <= GW_INNER; s++) {
            char head[64];
            snprintf(head, sizeof head, "%s\n%s\n%s", s == GW_OUTER ? WHEEL[i].head : "", gw_side_name(s),
                     gw_unit_word(WHEEL[i].unit));
            gw_table_column(&t, GW_RIGHT, head);
        }
    for (int k = 0; k < p->cmp->c->n_kits; k++) {
        gw_both_wheels both;
        if (!gw_both_wheels_find(p->cmp->handling, k, axle, load, both)) continue;
        gw_table_cell(&t, p->cmp->c->kits[k].name);
        for (int i = 0; i < GW_WHEEL_FIGURES; i++)
            for (gw_side s = GW_OUTER; s <= GW_INNER; s++) gw_table_cell(&t, gw_wheel_figure(both[s], i).s);
    }
    gw_paper_table(p->paper, &t, 2);
}

static void tables(const gw_handling_page *p, gw_axle axle, int load)
{
    wheels_table(p, axle, load);
    parts_table(p, axle, load, false);
    parts_table(p, axle, load, true);
}

static const char *meaning(const gw_handling_page *p)
{
    return p->cmp->handling->budget[0].on_road
               ? "Roll: of the body over the line of its wheel centres, and with it the wheel. Tyre: what it "
                 "leans more because the outer tyre gives. Travel: what the paths of the wheels give as one "
                 "goes up and the other down, the springs on their law and no other load. Jacking: the same "
                 "of the mean of both travels, jacking, dive and squat together. Bushes: what the load adds. "
                 "Side force: towards the inside of the corner."
               : "Roll: of the body, and with it the wheel. Travel: what the path of the wheel gives, the "
                 "spring on its law and no other load. Bushes: what the load adds. Side force: towards the "
                 "inside of the corner.";
}

void gw_budget_text(const gw_handling_page *p)
{
    for (int l = 0; l < p->cmp->c->n_loads; l++)
        for (gw_axle a = GW_FRONT; a < GW_AXLES; a++) {
            if (!first_of(p, a, l)) continue;
            tables(p, a, l);
        }
    if (p->cmp->handling->n_budgets) gw_paper_say(p->paper, 2, "%s", meaning(p));
}

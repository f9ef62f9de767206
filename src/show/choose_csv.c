/* SPDX-License-Identifier: MIT */
/* A row a member of the front: what it costs and does, its bush in each joint on offer, its figures. */
#include "record/csv.h"
#include "show/choose.h"

#include <stdio.h>

static const char *const SUMS[] = {
    "unsteadiness", "harshness", "road_noise", "price", "fit_minutes", "cost"
};
enum { N_SUMS = sizeof SUMS / sizeof *SUMS };

static const char *const NAMES[] = { "value", "quiet", "steady" };

static void put_heads(const gw_case *c, const gw_choose_study *s, gw_csv *csv)
{
    gw_csv_string(csv, "step");
    for (int r = 0; r < GW_RECOMMENDED; r++) gw_csv_string(csv, NAMES[r]);
    for (int i = 0; i < N_SUMS; i++) {
        char head[GW_KEY_MAX];
        bool ride = i == 1 || i == 2;
        snprintf(head, sizeof head, "%s%s", SUMS[i], ride ? "_dB" : "");
        gw_csv_string(csv, head);
    }
    for (int j = 0; j < s->n_joints; j++) gw_csv_string(csv, s->joint[j].name);
    for (int f = 0; f < s->n_figures; f++) {
        const gw_chosen_figure *figure = &s->figure[f];
        gw_buf head = { 0 };
        gw_buf_fmt(&head, "%s, %s, %s: %s", c->loads[figure->load].name, gw_axle_name(figure->axle),
                   gw_choose_wheel(c, figure), GW_GOAL_FIGURES[figure->figure]);
        gw_csv_text(csv, &head);
    }
    gw_csv_end_row(csv);
}

static const char *truth(bool is)
{
    return is ? "true" : "false";
}

static double shown(const gw_place *place, const char *key)
{
    gw_unit unit;
    double x = gw_number_at(place, key, &unit);
    return gw_unit_out(unit, x);
}

static void put_figures(const gw_place *member, const gw_choose_study *s, gw_csv *csv)
{
    gw_found_row list;
    gw_find(member, "figures", &list);
    for (int f = 0; f < s->n_figures; f++) {
        gw_place figure;
        if (gw_place_element(list.field, &list.at[list.depth - 1], f, &figure))
            gw_csv_number(csv, shown(&figure, "value"));
    }
}

static void put_member(const gw_place *member, const gw_choose_study *s, gw_csv *csv)
{
    const gw_combination *of = GW_IT(member, gw_combination);
    gw_csv_string(csv, truth(of->step));
    for (int r = 0; r < GW_RECOMMENDED; r++)
        gw_csv_string(csv, truth(s->has_recommended && &s->front[s->recommended[r].member] == of));
    for (int i = 0; i < N_SUMS; i++) gw_csv_number(csv, shown(member, SUMS[i]));
    for (int j = 0; j < s->n_joints; j++) {
        int bush = gw_choose_bush(member->c, &s->offer, of->option, s->joint[j].choice, s->joint[j].joint);
        gw_csv_string(csv, member->c->bushes[bush].name);
    }
    put_figures(member, s, csv);
    gw_csv_end_row(csv);
}

static void put_csv(const gw_case *c, const void *study, gw_buf *out)
{
    const gw_choose_study *s = study;
    const gw_place top = gw_place_top(&GW_CHOOSE_RESULT, c, study);
    gw_csv csv = { .out = out };
    put_heads(c, s, &csv);
    for (int i = 0; i < s->n_front; i++) {
        gw_place member;
        if (gw_place_element(gw_row_of(&top, "front"), &top, i, &member)) put_member(&member, s, &csv);
    }
}

const gw_result GW_CHOOSE_RESULT = {
    .command = "choose", .record = &GW_CHOOSE_RECORD, .rows = "front", .csv = put_csv
};

/* SPDX-License-Identifier: MIT */
#include "show/align.h"

#include "format/csv.h"
#include "giveway/units.h"

static const char HEADS[] =
    "target_camber_deg,target_toe_deg,target_caster_change_deg,before_camber_deg,before_toe_deg,"
    "before_caster_change_deg,reached_camber_deg,reached_toe_deg,reached_caster_change_deg,track_change_mm,"
    "bump_steer_before_deg_per_m,bump_steer_after_deg_per_m";

static int most_adjusters(const gw_case *c, const gw_align_study *study)
{
    int most = 0;
    for (int i = 0; i < study->n; i++) {
        int n = c->align[study->item[i].axle].n_adjusters;
        if (n > most) most = n;
    }
    return most;
}

enum { PARTS = 6 }; /* columns of an adjuster */

/* The side has a column where sides were measured. */
static void put_heads(gw_csv *csv, int adjusters, bool sides)
{
    gw_buf_fmt(csv->out, "kit,corner,%s%s", sides ? "side," : "", HEADS);
    csv->started = true;
    for (int a = 1; a <= adjusters; a++) {
        static const char *const PART[PARTS] = { "",       "_mm",      "_clock_deg",
                                                 "_turns", "_bush_mm", "_bush_clock_deg" };
        for (int i = 0; i < PARTS; i++) {
            gw_buf head = { 0 };
            gw_buf_fmt(&head, "adjuster_%d%s", a, PART[i]);
            gw_csv_text(csv, &head);
        }
    }
    gw_csv_end_row(csv);
}

static void put_target(gw_csv *csv, const gw_align *align, gw_target which)
{
    if (gw_target_given(align, which))
        gw_csv_number(csv, gw_target_of(align, which) / GW_DEG);
    else
        gw_csv_string(csv, NULL);
}

static void put_setting(gw_csv *csv, const gw_corner_setting *s)
{
    const double angles[3] = { s->camber / GW_DEG, s->toe / GW_DEG, s->caster_change / GW_DEG };
    gw_csv_numbers(csv, angles, 3);
}

static void put_adjuster(gw_csv *csv, const gw_corner *corner, const gw_adjuster *a, const gw_adjustment *set)
{
    const gw_move *move = &set->move;
    bool offset = a->kind == GW_ADJUST_OFFSET;
    gw_buf name = { 0 };
    gw_adjuster_words(corner, a, &name);
    gw_csv_text(csv, &name);
    gw_csv_number(csv, (offset ? gw_offset_size(move) : move->along[0]) / GW_MM);
    if (offset)
        gw_csv_number(csv, gw_offset_clock(move) / GW_DEG);
    else
        gw_csv_string(csv, NULL);
    if (a->kind == GW_ADJUST_LENGTH)
        gw_csv_number(csv, gw_turns_of(a, move->along[0]));
    else
        gw_csv_string(csv, NULL);
    if (set->off_centre) {
        gw_csv_number(csv, gw_offset_size(&set->bush) / GW_MM);
        gw_csv_number(csv, gw_offset_clock(&set->bush) / GW_DEG);
    } else {
        for (int i = 0; i < 2; i++) gw_csv_string(csv, NULL);
    }
}

static void put_row(gw_csv *csv, const gw_case *c, const gw_align_item *item, int adjusters, bool sides)
{
    const gw_align *align = &c->align[item->axle];
    gw_csv_string(csv, c->kits[item->kit].name);
    gw_csv_string(csv, gw_axle_name(item->axle));
    if (sides)
        gw_csv_string(csv, item->side == GW_RAMP_LEFT    ? "left"
                           : item->side == GW_RAMP_RIGHT ? "right"
                                                         : NULL);
    put_target(csv, align, GW_TARGET_CAMBER);
    put_target(csv, align, GW_TARGET_TOE);
    put_target(csv, align, GW_TARGET_CASTER);
    put_setting(csv, &item->before.setting);
    put_setting(csv, &item->after.setting);
    gw_csv_number(csv, 2.0 * (item->after.patch.y - item->before.patch.y) / GW_MM);
    gw_csv_number(csv, item->before.bump_steer / GW_DEG);
    gw_csv_number(csv, item->after.bump_steer / GW_DEG);
    for (int a = 0; a < adjusters; a++) {
        if (a < align->n_adjusters)
            put_adjuster(csv, &c->corners[item->axle], &align->adjusters[a], &item->set[a]);
        else
            for (int i = 0; i < PARTS; i++) gw_csv_string(csv, NULL);
    }
    gw_csv_end_row(csv);
}

void gw_align_csv(const gw_case *c, const void *made, gw_buf *out)
{
    const gw_align_study *study = made;
    gw_csv csv = { .out = out };
    int adjusters = most_adjusters(c, study);
    put_heads(&csv, adjusters, study->n_axles > 0);
    for (int i = 0; i < study->n; i++) put_row(&csv, c, &study->item[i], adjusters, study->n_axles > 0);
}

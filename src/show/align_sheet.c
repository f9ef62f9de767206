/* SPDX-License-Identifier: MIT */
/* The alignment sheet: degrees and minutes, and millimetres at the rim. */
#include "show/align.h"

static void columns(gw_table *t)
{
    gw_table_heads(t, "lrrrrrr", "", "before\nleft", "\nright", "set to\nleft", "\nright", "target\n",
                   "tolerance\n");
}

static void angle_row(gw_table *t, const char *name, const double before[2], const double after[2],
                      const gw_align *align, gw_target which)
{
    gw_table_cell(t, name);
    for (int side = 0; side < 2; side++) gw_table_cell(t, gw_degrees_minutes(before[side], 0).s);
    for (int side = 0; side < 2; side++) gw_table_cell(t, gw_degrees_minutes(after[side], 0).s);
    gw_table_cell(t,
                  gw_target_given(align, which) ? gw_degrees_minutes(gw_target_of(align, which), 0).s : "");
    if (gw_target_tolerance(align, which) > 0.0)
        gw_table_cellf(t, "+-%s", gw_degrees_minutes(gw_target_tolerance(align, which), 0).s);
    gw_table_end_row(t);
}

static void degree_row(gw_table *t, const char *name, const double before[2], const double after[2])
{
    gw_table_cell(t, name);
    for (int side = 0; side < 2; side++) gw_table_cell(t, gw_signed(before[side] / GW_DEG, 2).s);
    for (int side = 0; side < 2; side++) gw_table_cell(t, gw_signed(after[side] / GW_DEG, 2).s);
    gw_table_end_row(t);
}

static void rim_row(gw_table *t, double rim, const double before[2], const double after[2],
                    const gw_align *align)
{
    double tolerance = gw_target_tolerance(align, GW_TARGET_TOE);
    gw_table_cell(t, "  mm at the rim");
    for (int side = 0; side < 2; side++)
        gw_table_cell(t, gw_signed(gw_toe_at_rim(before[side], rim) / GW_MM, 1).s);
    for (int side = 0; side < 2; side++)
        gw_table_cell(t, gw_signed(gw_toe_at_rim(after[side], rim) / GW_MM, 1).s);
    gw_table_cell(t, gw_target_given(align, GW_TARGET_TOE)
                         ? gw_signed(gw_toe_at_rim(align->toe, rim) / GW_MM, 1).s
                         : "");
    if (tolerance > 0.0) gw_table_cellf(t, "+-%s", gw_fixed(gw_toe_at_rim(tolerance, rim) / GW_MM, 1).s);
    gw_table_end_row(t);
}

/* One angle of both sides. */
#define BOTH(when, angle)                                                                                    \
    {                                                                                                        \
        left->when.setting.angle, right->when.setting.angle                                                  \
    }

void gw_align_sheet(const gw_align_page *p, const gw_align_item *item)
{
    const gw_align *align = &p->c->align[item->axle];
    const gw_align_item *left = gw_align_left(item), *right = gw_align_right(item);
    const double camber[2][2] = { BOTH(before, camber), BOTH(after, camber) };
    const double caster[2][2] = { BOTH(before, caster_change), BOTH(after, caster_change) };
    const double toe[2][2] = { BOTH(before, toe), BOTH(after, toe) };
    double rim = p->c->corners[item->axle].wheel.rim_diameter;
    gw_table t = { 0 };
    if (item->side == GW_RAMP_RIGHT) return; /* it stands with the left side's */
    columns(&t);
    angle_row(&t, "camber", camber[0], camber[1], align, GW_TARGET_CAMBER);
    degree_row(&t, "  degrees", camber[0], camber[1]);
    angle_row(&t, "caster change", caster[0], caster[1], align, GW_TARGET_CASTER);
    degree_row(&t, "  degrees", caster[0], caster[1]);
    angle_row(&t, "toe, each wheel", toe[0], toe[1], align, GW_TARGET_TOE);
    degree_row(&t, "  degrees", toe[0], toe[1]);
    if (rim > 0.0) rim_row(&t, rim, toe[0], toe[1], align);
    gw_say_table(p->paper, "Alignment sheet", &t);
    gw_buf text = { 0 };
    gw_buf_fmt(&text, "Total toe %s before, %s as set.", gw_degrees_minutes(toe[0][0] + toe[0][1], 0).s,
               gw_degrees_minutes(toe[1][0] + toe[1][1], 0).s);
    const gw_corner_setting *fitted = &item->fitted.setting;
    gw_buf_fmt(&text,
               " With the parts fitted and the arms not yet turned the ramp shows camber %s, toe %s each "
               "wheel, caster change %s.",
               gw_degrees_minutes(fitted->camber, 0).s, gw_degrees_minutes(fitted->toe, 0).s,
               gw_degrees_minutes(fitted->caster_change, 0).s);
    gw_paper_say_of(p->paper, 2, &text);
}

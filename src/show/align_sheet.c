/* SPDX-License-Identifier: MIT */
/* The alignment sheet: degrees and minutes, and millimetres at the rim. */
#include "show/align.h"

static void columns(gw_table *t)
{
    gw_table_heads(t, "lrrrrrr", "", "before\nleft", "\nright", "set to\nleft", "\nright", "target\n",
                   "tolerance\n");
}

static void angle_row(gw_table *t, const char *name, const double before[2], const double after[2],
                      const double *target, double tolerance)
{
    gw_table_cell(t, name);
    for (int side = 0; side < 2; side++) gw_table_cell(t, gw_degrees_minutes(before[side], 0).s);
    for (int side = 0; side < 2; side++) gw_table_cell(t, gw_degrees_minutes(after[side], 0).s);
    gw_table_cell(t, target ? gw_degrees_minutes(*target, 0).s : "");
    if (tolerance > 0.0) gw_table_cellf(t, "+-%s", gw_degrees_minutes(tolerance, 0).s);
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

/* One of the targets, with its degrees below. */
static void rows(gw_table *t, const char *name, const double angle[2][2], const gw_align *align,
                 gw_target which)
{
    const double target = gw_target_of(align, which);
    angle_row(t, name, angle[0], angle[1], gw_target_given(align, which) ? &target : NULL,
              gw_target_tolerance(align, which));
    degree_row(t, "  degrees", angle[0], angle[1]);
}

/* As the ramp reads it, where it was measured. */
static void caster_rows(gw_table *t, const gw_align_item *left, const gw_align_item *right,
                        const double change[2][2], const gw_align *align)
{
    double caster[2][2];
    if (!left->has_caster || !right->has_caster) return;
    for (int when = 0; when < 2; when++) {
        caster[when][0] = left->caster + change[when][0];
        caster[when][1] = right->caster + change[when][1];
    }
    angle_row(t, "caster", caster[0], caster[1], align->has_caster_angle ? &align->caster_angle : NULL,
              align->has_caster_angle ? gw_target_tolerance(align, GW_TARGET_CASTER) : 0.0);
    degree_row(t, "  degrees", caster[0], caster[1]);
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
    rows(&t, "camber", camber, align, GW_TARGET_CAMBER);
    caster_rows(&t, left, right, caster, align);
    rows(&t, "caster change", caster, align, GW_TARGET_CASTER);
    rows(&t, "toe, each wheel", toe, align, GW_TARGET_TOE);
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

/* SPDX-License-Identifier: MIT */
/* The alignment sheet: degrees and minutes, and millimetres at the rim. */
#include "show/align_page.h"

static void columns(gw_table *t)
{
    gw_table_column(t, GW_LEFT, "");
    gw_table_column(t, GW_RIGHT, "before\nleft");
    gw_table_column(t, GW_RIGHT, "\nright");
    gw_table_column(t, GW_RIGHT, "set to\nleft");
    gw_table_column(t, GW_RIGHT, "\nright");
    gw_table_column(t, GW_RIGHT, "target\n");
    gw_table_column(t, GW_RIGHT, "tolerance\n");
}

static void angle_row(gw_table *t, const char *name, double before, double after, const gw_align *align,
                      gw_target which)
{
    gw_table_cell(t, name);
    for (int side = 0; side < 2; side++) gw_table_cell(t, gw_degrees_minutes(before, 0).s);
    for (int side = 0; side < 2; side++) gw_table_cell(t, gw_degrees_minutes(after, 0).s);
    if (gw_target_given(align, which))
        gw_table_cell(t, gw_degrees_minutes(gw_target_of(align, which), 0).s);
    else
        gw_table_cell(t, "");
    if (gw_target_tolerance(align, which) > 0.0)
        gw_table_cellf(t, "+-%s", gw_degrees_minutes(gw_target_tolerance(align, which), 0).s);
    gw_table_end_row(t);
}

static void degree_row(gw_table *t, const char *name, double before, double after)
{
    gw_table_cell(t, name);
    for (int side = 0; side < 2; side++) gw_table_cell(t, gw_signed(before / GW_DEG, 2).s);
    for (int side = 0; side < 2; side++) gw_table_cell(t, gw_signed(after / GW_DEG, 2).s);
    gw_table_end_row(t);
}

static void rim_row(gw_table *t, double rim, double before, double after, const gw_align *align)
{
    double tolerance = gw_target_tolerance(align, GW_TARGET_TOE);
    gw_table_cell(t, "  mm at the rim");
    for (int side = 0; side < 2; side++) gw_table_cell(t, gw_signed(gw_toe_at_rim(before, rim) / GW_MM, 1).s);
    for (int side = 0; side < 2; side++) gw_table_cell(t, gw_signed(gw_toe_at_rim(after, rim) / GW_MM, 1).s);
    if (gw_target_given(align, GW_TARGET_TOE))
        gw_table_cell(t, gw_signed(gw_toe_at_rim(align->toe, rim) / GW_MM, 1).s);
    else
        gw_table_cell(t, "");
    if (tolerance > 0.0) gw_table_cellf(t, "+-%s", gw_fixed(gw_toe_at_rim(tolerance, rim) / GW_MM, 1).s);
    gw_table_end_row(t);
}

gw_status gw_align_sheet(const gw_align_page *p, const gw_align_item *item, gw_error *err)
{
    const gw_align *align = &p->c->align[item->axle];
    const gw_corner_setting *before = &item->before.setting, *after = &item->after.setting;
    double rim = p->c->corners[item->axle].wheel.rim_diameter;
    gw_table t = { 0 };
    columns(&t);
    angle_row(&t, "camber", before->camber, after->camber, align, GW_TARGET_CAMBER);
    degree_row(&t, "  degrees", before->camber, after->camber);
    angle_row(&t, "caster change", before->caster_change, after->caster_change, align, GW_TARGET_CASTER);
    degree_row(&t, "  degrees", before->caster_change, after->caster_change);
    angle_row(&t, "toe, each wheel", before->toe, after->toe, align, GW_TARGET_TOE);
    degree_row(&t, "  degrees", before->toe, after->toe);
    if (rim > 0.0) rim_row(&t, rim, before->toe, after->toe, align);
    gw_status status = gw_align_table(p, "Alignment sheet", &t, err);
    gw_buf text = { 0 };
    gw_buf_fmt(&text, "Total toe %s before, %s as set.", gw_degrees_minutes(2.0 * before->toe, 0).s,
               gw_degrees_minutes(2.0 * after->toe, 0).s);
    const gw_corner_setting *fitted = &item->fitted.setting;
    gw_buf_fmt(&text,
               " With the parts fitted and the arms not yet turned the ramp shows camber %s, toe %s each "
               "wheel, caster change %s.",
               gw_degrees_minutes(fitted->camber, 0).s, gw_degrees_minutes(fitted->toe, 0).s,
               gw_degrees_minutes(fitted->caster_change, 0).s);
    gw_align_paragraph(p, &text, 2);
    return status;
}

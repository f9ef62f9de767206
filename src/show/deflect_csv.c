/* SPDX-License-Identifier: MIT */
#include "show/deflect.h"

#include "format/csv.h"
#include "giveway/units.h"

static const char *const HEADS[] = { "kit",
                                     "corner",
                                     "load",
                                     "wheel",
                                     "camber_change_deg",
                                     "toe_change_deg",
                                     "caster_change_deg",
                                     "camber_deg",
                                     "toe_deg",
                                     "static_camber_deg",
                                     "camber_to_road_deg",
                                     "roll_deg",
                                     "travel_mm",
                                     "dive_mm",
                                     "wheel_centre_x_mm",
                                     "wheel_centre_y_mm",
                                     "wheel_centre_z_mm",
                                     "contact_patch_x_mm",
                                     "contact_patch_y_mm",
                                     "contact_patch_z_mm",
                                     "spring_force_N",
                                     "patch_force_x_N",
                                     "patch_force_y_N",
                                     "patch_force_z_N",
                                     "travel_toe_deg",
                                     "geometry_toe_deg",
                                     "travel_camber_deg",
                                     "geometry_camber_deg",
                                     "failed" };

static void put_vector(gw_csv *csv, gw_vec3 v, double unit)
{
    const double a[3] = { v.x / unit, v.y / unit, v.z / unit };
    gw_csv_numbers(csv, a, 3);
}

static void put_manoeuvre(gw_csv *csv, const gw_deflection *item)
{
    if (item->manoeuvre) {
        gw_csv_number(csv, item->camber_to_road / GW_DEG);
        gw_csv_number(csv, item->roll / GW_DEG);
    } else {
        gw_csv_string(csv, NULL);
        gw_csv_string(csv, NULL);
    }
    gw_csv_number(csv, item->applied.travel / GW_MM);
    if (item->manoeuvre)
        gw_csv_number(csv, item->dive / GW_MM);
    else
        gw_csv_string(csv, NULL);
}

/* Kit, corner, load, and the reason in the last field. */
static void put_failed(const gw_deflection *item, gw_csv *csv)
{
    for (size_t i = 3; i + 1 < sizeof HEADS / sizeof *HEADS; i++) gw_csv_string(csv, NULL);
    gw_csv_string(csv, item->failed);
}

void gw_deflect_csv_row(const gw_case *c, const gw_deflection *item, gw_csv *csv)
{
    const gw_corner_result *r = &item->result;
    const double angles[5] = { r->camber_change / GW_DEG, r->toe_change / GW_DEG, r->caster_change / GW_DEG,
                               r->camber / GW_DEG, r->toe / GW_DEG };
    const double shares[4] = { r->travel_toe / GW_DEG, r->geometry_toe / GW_DEG, r->travel_camber / GW_DEG,
                               r->geometry_camber / GW_DEG };
    gw_csv_string(csv, c->kits[item->kit].name);
    gw_csv_string(csv, gw_axle_name(item->axle));
    gw_csv_string(csv, c->loads[item->load].name);
    if (item->failed) {
        put_failed(item, csv);
        return;
    }
    gw_csv_string(csv, item->manoeuvre ? gw_side_name(item->side) : NULL);
    gw_csv_numbers(csv, angles, 5);
    gw_csv_number(csv, item->static_camber / GW_DEG);
    put_manoeuvre(csv, item);
    put_vector(csv, r->wheel_centre, GW_MM);
    put_vector(csv, r->contact_patch, GW_MM);
    gw_csv_number(csv, r->spring_force);
    put_vector(csv, item->applied.patch_force, 1.0);
    gw_csv_numbers(csv, shares, 4);
    gw_csv_string(csv, NULL);
}

void gw_deflect_csv_heads(gw_csv *csv)
{
    for (size_t i = 0; i < sizeof HEADS / sizeof *HEADS; i++) gw_csv_string(csv, HEADS[i]);
}

void gw_deflect_csv(const gw_case *c, const gw_deflect_study *study, gw_buf *out)
{
    gw_csv csv = { .out = out };
    gw_deflect_csv_heads(&csv);
    gw_csv_end_row(&csv);
    for (int i = 0; i < study->n; i++) {
        gw_deflect_csv_row(c, &study->item[i], &csv);
        gw_csv_end_row(&csv);
    }
}

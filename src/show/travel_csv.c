/* SPDX-License-Identifier: MIT */
#include "format/csv.h"
#include "giveway/units.h"
#include "show/deflect.h"
#include "show/travel.h"

#include <math.h>

static const char *const HEADS[] = { "kit",
                                     "corner",
                                     "load",
                                     "travel_mm",
                                     "camber_change_deg",
                                     "toe_change_deg",
                                     "caster_change_deg",
                                     "camber_deg",
                                     "toe_deg",
                                     "wheel_centre_x_mm",
                                     "wheel_centre_y_mm",
                                     "wheel_centre_z_mm",
                                     "contact_patch_x_mm",
                                     "contact_patch_y_mm",
                                     "contact_patch_z_mm",
                                     "track_change_mm",
                                     "wheelbase_change_mm",
                                     "vertical_load_N",
                                     "wheel_rate_N_per_mm",
                                     "parasitic_rate_N_per_mm",
                                     "toe_rate_deg_per_m",
                                     "camber_rate_deg_per_m",
                                     "roll_centre_mm",
                                     "side_view_swing_arm_mm",
                                     "brake_angle_deg",
                                     "drive_angle_deg",
                                     "clamped_vertical_load_N",
                                     "clamped_wheel_rate_N_per_mm",
                                     "largest_tilt_percent_of_limit" };

static void put_vector(gw_csv *csv, gw_vec3 v)
{
    const double a[3] = { v.x / GW_MM, v.y / GW_MM, v.z / GW_MM };
    gw_csv_numbers(csv, a, 3);
}

static void put_rates(gw_csv *csv, const gw_travel_point *p)
{
    const double values[] = { p->track_change / GW_MM,
                              p->wheelbase_change / GW_MM,
                              p->rates.vertical_load,
                              p->rates.wheel_rate / GW_N_PER_MM,
                              p->parasitic / GW_N_PER_MM,
                              p->rates.toe / GW_DEG,
                              p->rates.camber / GW_DEG,
                              p->roll_centre / GW_MM,
                              gw_side_view_centre(&p->rates).across / GW_MM,
                              atan(p->rates.patch_forward) / GW_DEG,
                              atan(p->rates.hub_forward) / GW_DEG };
    gw_csv_numbers(csv, values, (int)(sizeof values / sizeof *values));
}

static void put_row(gw_csv *csv, const gw_case *c, const gw_travel_item *item, int index)
{
    const gw_travel_point *p = &item->point[index];
    const gw_travel_clamp *clamp = &item->clamp;
    const double angles[] = { p->camber_change / GW_DEG, p->toe_change / GW_DEG, p->caster_change / GW_DEG,
                              p->camber / GW_DEG, p->toe / GW_DEG };
    gw_csv_string(csv, c->kits[item->kit].name);
    gw_csv_string(csv, gw_axle_name(item->axle));
    gw_csv_string(csv, item->load < 0 ? NULL : c->loads[item->load].name);
    gw_csv_number(csv, round(p->travel / GW_MM * 1e6) / 1e6);
    gw_csv_numbers(csv, angles, 5);
    put_vector(csv, p->wheel_centre);
    put_vector(csv, p->contact_patch);
    put_rates(csv, p);
    if (clamp->present) {
        gw_csv_number(csv, clamp->vertical_load[index]);
        gw_csv_number(csv, clamp->wheel_rate[index] / GW_N_PER_MM);
    } else {
        gw_csv_string(csv, NULL);
        gw_csv_string(csv, NULL);
    }
    gw_csv_number(csv, 100.0 * gw_travel_tilt_share(item, p));
    gw_csv_end_row(csv);
}

void gw_travel_csv(const gw_case *c, const gw_travel_study *study, gw_buf *out)
{
    gw_csv csv = { .out = out };
    for (size_t i = 0; i < sizeof HEADS / sizeof *HEADS; i++) gw_csv_string(&csv, HEADS[i]);
    gw_csv_end_row(&csv);
    for (int i = 0; i < study->n; i++)
        for (int p = 0; p < study->item[i].n; p++) put_row(&csv, c, &study->item[i], p);
}

/* SPDX-License-Identifier: MIT */
#include "format/json.h"
#include "giveway/units.h"
#include "show/deflect.h"
#include "show/travel.h"

#include <math.h>

static void put_vector(gw_json *json, const char *key, gw_vec3 v)
{
    const double a[3] = { v.x / GW_MM, v.y / GW_MM, v.z / GW_MM };
    gw_json_numbers(json, key, a, 3);
}

static void put_mm(gw_json *json, const char *key, double length)
{
    gw_json_number(json, key, length / GW_MM);
}

static void put_deg(gw_json *json, const char *key, double angle)
{
    gw_json_number(json, key, angle / GW_DEG);
}

static void put_rate(gw_json *json, const char *key, double rate)
{
    gw_json_number(json, key, rate / GW_N_PER_MM);
}

/* A travel as it was asked for: whole millimetres stay whole on their way through metres. */
static void put_travel(gw_json *json, const char *key, double travel)
{
    gw_json_number(json, key, round(travel / GW_MM * 1e6) / 1e6);
}

static void put_geometry(gw_json *json, const gw_travel_point *p)
{
    gw_instant_centre side = gw_side_view_centre(&p->rates), front = gw_front_view_centre(&p->rates);
    put_deg(json, "toe_rate_deg_per_m", p->rates.toe);
    put_deg(json, "camber_rate_deg_per_m", p->rates.camber);
    put_mm(json, "roll_centre_mm", p->roll_centre);
    put_mm(json, "front_view_swing_arm_mm", front.across);
    put_mm(json, "side_view_swing_arm_mm", side.across);
    put_mm(json, "side_view_centre_above_wheel_centre_mm", side.above);
    put_deg(json, "brake_angle_deg", atan(p->rates.patch_forward));
    put_deg(json, "drive_angle_deg", atan(p->rates.hub_forward));
}

static void put_wheel(gw_json *json, const gw_travel_point *p)
{
    put_deg(json, "camber_change_deg", p->camber_change);
    put_deg(json, "toe_change_deg", p->toe_change);
    put_deg(json, "caster_change_deg", p->caster_change);
    put_deg(json, "camber_deg", p->camber);
    put_deg(json, "toe_deg", p->toe);
    put_vector(json, "wheel_centre_mm", p->wheel_centre);
    put_vector(json, "contact_patch_mm", p->contact_patch);
    put_mm(json, "track_change_mm", p->track_change);
    put_mm(json, "wheelbase_change_mm", p->wheelbase_change);
    gw_json_number(json, "vertical_load_N", p->rates.vertical_load);
    put_rate(json, "wheel_rate_N_per_mm", p->rates.wheel_rate);
    put_rate(json, "parasitic_rate_N_per_mm", p->parasitic);
    put_geometry(json, p);
}

static const char *joint_name(const gw_case *c, const gw_travel_item *item, int joint)
{
    return c->corners[item->axle].joints[joint].name;
}

static void put_point(const gw_case *c, const gw_travel_item *item, int index, gw_json *json)
{
    const gw_travel_point *p = &item->point[index];
    gw_json_object(json, NULL);
    put_travel(json, "travel_mm", p->travel);
    put_wheel(json, p);
    if (item->clamp.present) {
        gw_json_object_on_line(json, "clamped");
        gw_json_number(json, "vertical_load_N", item->clamp.vertical_load[index]);
        put_rate(json, "wheel_rate_N_per_mm", item->clamp.wheel_rate[index]);
        put_rate(json, "parasitic_rate_N_per_mm", item->clamp.parasitic[index]);
        gw_json_close(json);
    }
    gw_json_array(json, "bearings");
    for (int b = 0; b < item->n_bearings; b++) {
        gw_json_object_on_line(json, NULL);
        gw_json_string(json, "joint", joint_name(c, item, item->bearing[b].joint));
        put_deg(json, "tilt_deg", p->tilt[b]);
        put_deg(json, "limit_deg", item->bearing[b].limit);
        gw_json_close(json);
    }
    gw_json_close(json);
    gw_json_close(json);
}

static void put_rest(const gw_travel_item *item, gw_json *json)
{
    gw_json_object(json, "ride_height");
    put_wheel(json, &item->rest);
    if (item->load < 0) put_mm(json, "roll_centre_load_held_mm", item->roll_centre_held);
    if (item->has_anti) {
        gw_json_number(json, item->axle == GW_FRONT ? "anti_dive_percent" : "anti_lift_braking_percent",
                       100.0 * item->anti_brake);
        if (!isnan(item->anti_drive))
            gw_json_number(json, item->axle == GW_FRONT ? "anti_lift_driving_percent" : "anti_squat_percent",
                           100.0 * item->anti_drive);
    }
    if (item->no_parasitic) gw_json_string(json, "no_parasitic_rate", item->no_parasitic);
    gw_json_close(json);
}

static void put_bearings(const gw_case *c, const gw_travel_item *item, gw_json *json)
{
    gw_json_array(json, "bearings");
    for (int b = 0; b < item->n_bearings; b++) {
        const gw_travel_bearing *bearing = &item->bearing[b];
        gw_json_object_on_line(json, NULL);
        gw_json_string(json, "joint", joint_name(c, item, bearing->joint));
        put_deg(json, "tilt_deg", bearing->tilt);
        put_deg(json, "limit_deg", bearing->limit);
        put_deg(json, "margin_deg", bearing->limit - bearing->tilt);
        put_travel(json, "at_travel_mm", bearing->at);
        gw_json_bool(json, "holds", bearing->holds);
        put_travel(json, "binds_in_bump_mm", bearing->binds_up);
        put_travel(json, "binds_in_rebound_mm", bearing->binds_dn);
        gw_json_close(json);
    }
    gw_json_close(json);
}

static void put_clamp(const gw_case *c, const gw_travel_item *item, gw_json *json)
{
    const gw_travel_clamp *clamp = &item->clamp;
    gw_json_object(json, "clamped");
    put_mm(json, "body_rises_mm", clamp->ride_height);
    gw_json_number(json, "carried_by_bushes_N", clamp->lift);
    put_rate(json, "wheel_rate_N_per_mm", clamp->rest_rate);
    put_rate(json, "parasitic_rate_N_per_mm", clamp->rest_parasitic);
    gw_json_array(json, "bushes");
    for (int i = 0; i < clamp->n; i++) {
        gw_json_object_on_line(json, NULL);
        gw_json_string(json, "joint", joint_name(c, item, clamp->joint[i]));
        put_travel(json, "clamp_travel_mm", clamp->clamped_at[i]);
        put_deg(json, "twist_deg", clamp->twist[i]);
        gw_json_number(json, "torque_Nm", clamp->torque[i]);
        gw_json_close(json);
    }
    gw_json_close(json);
    gw_json_close(json);
}

static void put_item(const gw_case *c, const gw_travel_item *item, gw_json *json)
{
    gw_json_object(json, NULL);
    gw_json_string(json, "kit", c->kits[item->kit].name);
    gw_json_string(json, "corner", gw_axle_name(item->axle));
    gw_json_string(json, "load", item->load < 0 ? NULL : c->loads[item->load].name);
    put_rest(item, json);
    gw_json_array(json, "points");
    for (int i = 0; i < item->n; i++) put_point(c, item, i, json);
    gw_json_close(json);
    put_bearings(c, item, json);
    if (item->clamp.present) put_clamp(c, item, json);
    gw_json_close(json);
}

void gw_travel_json(const gw_case *c, const gw_travel_study *study, gw_buf *out)
{
    gw_json json = { .out = out };
    gw_json_object(&json, NULL);
    gw_json_string(&json, "format", "giveway-result-1");
    gw_json_string(&json, "command", "travel");
    gw_json_string(&json, "case", c->title);
    gw_json_array(&json, "results");
    for (int i = 0; i < study->n; i++) put_item(c, &study->item[i], &json);
    gw_json_close(&json);
    gw_json_array(&json, "warnings");
    for (int i = 0; i < study->n_warnings; i++) gw_json_string(&json, NULL, study->warning[i]);
    gw_json_close(&json);
    gw_json_close(&json);
}

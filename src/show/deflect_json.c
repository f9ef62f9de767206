/* SPDX-License-Identifier: MIT */
#include "show/deflect.h"

#include "format/json.h"
#include "giveway/units.h"
#include "show/strength.h"

static void put_three(gw_json *json, const char *key, const double v[3], double unit)
{
    const double scaled[3] = { v[0] / unit, v[1] / unit, v[2] / unit };
    gw_json_numbers(json, key, scaled, 3);
}

static void put_vector(gw_json *json, const char *key, gw_vec3 v, double unit)
{
    const double a[3] = { v.x, v.y, v.z };
    put_three(json, key, a, unit);
}

static void put_deg(gw_json *json, const char *key, double angle)
{
    gw_json_number(json, key, angle / GW_DEG);
}

static void put_joint(gw_json *json, const gw_case *c, const gw_deflection *item, int j)
{
    const gw_joint_result *r = &item->result.joints[j];
    const gw_strength strength = gw_strength_of(c, item, j);
    gw_json_object_on_line(json, NULL);
    gw_json_string(json, "joint", c->corners[item->axle].joints[j].name);
    put_three(json, "deflection_mm", r->u, GW_MM);
    put_three(json, "rotation_deg", r->theta, GW_DEG);
    put_three(json, "force_N", r->f, 1.0);
    put_three(json, "moment_Nm", r->m, 1.0);
    put_deg(json, "toe_share_deg", r->toe_share);
    put_deg(json, "camber_share_deg", r->camber_share);
    gw_strength_json(&strength, json);
    gw_json_close(json);
}

static void put_manoeuvre(gw_json *json, const gw_deflection *item)
{
    gw_json_string(json, "wheel", gw_side_name(item->side));
    put_deg(json, "roll_deg", item->roll);
    gw_json_number(json, "travel_mm", item->applied.travel / GW_MM);
    gw_json_number(json, "dive_mm", item->dive / GW_MM);
    put_vector(json, "patch_force_N", item->applied.patch_force, 1.0);
    put_vector(json, "hub_force_N", item->applied.hub_force, 1.0);
    put_vector(json, "patch_moment_Nm", item->applied.patch_moment, 1.0);
    put_deg(json, "camber_to_road_deg", item->camber_to_road);
}

static void put_shares(gw_json *json, const gw_corner_result *r)
{
    gw_json_object_on_line(json, "shares");
    put_deg(json, "travel_toe_deg", r->travel_toe);
    put_deg(json, "geometry_toe_deg", r->geometry_toe);
    put_deg(json, "travel_camber_deg", r->travel_camber);
    put_deg(json, "geometry_camber_deg", r->geometry_camber);
    gw_json_close(json);
}

void gw_deflect_item_json(const gw_case *c, const gw_deflection *item, gw_json *json)
{
    const gw_corner *corner = &c->corners[item->axle];
    const gw_corner_result *r = &item->result;
    gw_json_string(json, "kit", c->kits[item->kit].name);
    gw_json_string(json, "corner", gw_axle_name(item->axle));
    gw_json_string(json, "load", c->loads[item->load].name);
    if (item->failed) {
        gw_json_string(json, "failed", item->failed);
        return;
    }
    if (item->manoeuvre) put_manoeuvre(json, item);
    put_deg(json, "camber_change_deg", r->camber_change);
    put_deg(json, "toe_change_deg", r->toe_change);
    put_deg(json, "caster_change_deg", r->caster_change);
    put_deg(json, "camber_deg", r->camber);
    put_deg(json, "toe_deg", r->toe);
    if (item->off_centre) put_deg(json, "static_camber_deg", item->static_camber);
    put_vector(json, "wheel_centre_mm", r->wheel_centre, GW_MM);
    put_vector(json, "contact_patch_mm", r->contact_patch, GW_MM);
    gw_json_number(json, "spring_force_N", r->spring_force);
    put_shares(json, r);
    gw_json_array(json, "bushes");
    for (int j = 0; j < corner->n_joints; j++) put_joint(json, c, item, j);
    gw_json_close(json);
}

void gw_deflect_json(const gw_case *c, const gw_deflect_study *study, const char *command, gw_buf *out)
{
    gw_json json = { .out = out };
    gw_json_object(&json, NULL);
    gw_json_string(&json, "format", "giveway-result-1");
    gw_json_string(&json, "command", command);
    gw_json_string(&json, "case", c->title);
    gw_json_array(&json, "results");
    for (int i = 0; i < study->n; i++) {
        gw_json_object(&json, NULL);
        gw_deflect_item_json(c, &study->item[i], &json);
        gw_json_close(&json);
    }
    gw_json_close(&json);
    gw_json_array(&json, "warnings");
    for (int i = 0; i < study->n_warnings; i++) gw_json_string(&json, NULL, study->warning[i]);
    gw_json_close(&json);
    gw_json_close(&json);
}

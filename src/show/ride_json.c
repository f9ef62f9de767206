/* SPDX-License-Identifier: MIT */
#include "format/json.h"
#include "giveway/units.h"
#include "show/deflect.h"
#include "show/ride.h"
#include "show/words.h"

#include <math.h>

static void put_rate(gw_json *json, const char *key, double rate)
{
    gw_json_number(json, key, rate / GW_N_PER_MM);
}

static void put_pair(gw_json *json, const char *key, double low, double high)
{
    const double pair[2] = { low, high };
    gw_json_numbers(json, key, pair, 2);
}

/* Keys as a case has them, so that settings can be copied back into one. */
static const char *const SETTING_KEYS[GW_RIDE_SETTINGS] = {
    "contact_length_mm", "default_bracket_N_per_mm", "bracket_loss_factor", "amplitude_mm",
    "temperature_C",     "damper_friction_Ns_per_mm"
};

static void put_settings(gw_json *json, const gw_ride *s)
{
    gw_json_object(json, "settings");
    if (s->road_class) {
        const char name[2] = { s->road_class, '\0' };
        gw_json_string(json, "road_class", name);
    }
    gw_json_number(json, "roughness_m3", s->roughness);
    gw_json_number(json, "speed_km_h", round(s->speed / GW_KM_H * 1e9) / 1e9);
    gw_json_number(json, "contact_length_mm", s->contact_length / GW_MM);
    put_rate(json, "default_bracket_N_per_mm", s->brackets_rigid ? (double)INFINITY : s->default_bracket);
    gw_json_number(json, "bracket_loss_factor", s->bracket_loss);
    gw_json_number(json, "amplitude_mm", s->amplitude / GW_MM);
    gw_json_number(json, "temperature_C", round((s->temperature - GW_ZERO_C) * 1e9) / 1e9);
    gw_json_number(json, "damper_friction_Ns_per_mm", s->damper_friction / GW_NS_PER_MM);
    if (s->has_obstacle) {
        gw_json_object_on_line(json, "obstacle");
        gw_json_number(json, "height_mm", s->obstacle_height / GW_MM);
        gw_json_number(json, "length_mm", s->obstacle_length / GW_MM);
        gw_json_close(json);
    }
    gw_json_array(json, "left_out_of_the_case");
    for (int i = 0; i < GW_RIDE_SETTINGS; i++)
        if (s->left_out[i]) gw_json_string(json, NULL, SETTING_KEYS[i]);
    gw_json_close(json);
    gw_json_close(json);
}

static void put_figures(gw_json *json, const gw_ride_item *item)
{
    const gw_ride_result *r = &item->result;
    const gw_ride_difference *d = &item->difference;
    int reactions[GW_REACTIONS], n = gw_reactions_at(r->comfort, reactions);
    gw_json_number(json, "comfort_ms2", r->comfort);
    gw_json_array(json, "comfort_reactions");
    for (int i = 0; i < n; i++) gw_json_string(json, NULL, gw_reaction_get(reactions[i])->text);
    gw_json_close(json);
    gw_json_number(json, "harshness_N", r->harshness[0]);
    gw_json_number(json, "harshness_dB", d->harshness);
    put_pair(json, "harshness_range_dB", d->harshness_low, d->harshness_high);
    put_pair(json, "harshness_brackets_half_and_twice_N", r->harshness[1], r->harshness[2]);
    gw_json_number(json, "road_noise_N", r->noise[0]);
    gw_json_number(json, "road_noise_dB", d->noise);
    put_pair(json, "road_noise_range_dB", d->noise_low, d->noise_high);
    put_pair(json, "road_noise_brackets_half_and_twice_N", r->noise[1], r->noise[2]);
}

static void put_natural(gw_json *json, const gw_ride_result *r)
{
    gw_json_object_on_line(json, "natural_Hz");
    gw_json_number(json, "body", r->modes[r->body].hz);
    gw_json_number(json, "wheel_vertical", r->modes[r->wheel_vertical].hz);
    gw_json_number(json, "wheel_fore_aft", r->modes[r->wheel_fore_aft].hz);
    gw_json_close(json);
}

static void put_bands(gw_json *json, const gw_ride_item *item)
{
    gw_json_array(json, "third_octave");
    for (int b = 0; b < GW_BANDS; b++) {
        gw_json_object_on_line(json, NULL);
        gw_json_number(json, "centre_Hz", gw_band_nominal(GW_BAND_FIRST + b));
        gw_json_number(json, "body_force_N", item->result.band[b]);
        gw_json_number(json, "dB_from_baseline", item->difference.band[b]);
        gw_json_close(json);
    }
    gw_json_close(json);
}

static void put_modes(gw_json *json, const gw_ride_result *r)
{
    gw_json_array(json, "modes");
    for (int i = 0; i < r->n_modes; i++) {
        const gw_ride_mode *m = &r->modes[i];
        if (m->hz > GW_NOISE_HIGH) break;
        gw_json_object_on_line(json, NULL);
        gw_json_number(json, "natural_Hz", m->hz);
        gw_json_number(json, "damped_Hz", m->tracked ? m->damped_hz : (double)NAN);
        gw_json_number(json, "damping_ratio", m->tracked ? m->zeta : (double)NAN);
        gw_json_number(json, "body_share", m->body);
        gw_json_number(json, "wheel_vertical_share", m->wheel_vertical);
        gw_json_number(json, "wheel_fore_aft_share", m->wheel_fore_aft);
        gw_json_string(json, "shape", m->words);
        gw_json_close(json);
    }
    gw_json_close(json);
}

static void put_paths(gw_json *json, const gw_ride_result *r)
{
    gw_json_array(json, "paths");
    for (int i = 0; i < r->n_paths; i++) {
        gw_json_object_on_line(json, NULL);
        gw_json_string(json, "attachment", r->paths[i].name);
        gw_json_number(json, "force_N", r->paths[i].force);
        gw_json_number(json, "share", r->paths[i].share);
        gw_json_close(json);
    }
    gw_json_close(json);
}

static void put_isolation(gw_json *json, const gw_corner *corner, const gw_ride_result *r)
{
    gw_json_array(json, "isolation");
    for (int i = 0; i < r->n_isolation; i++) {
        const gw_isolation *at = &r->isolation[i];
        gw_json_object_on_line(json, NULL);
        gw_json_string(json, "joint", corner->joints[at->joint].name);
        put_rate(json, "bush_dynamic_N_per_mm", at->bush);
        put_rate(json, "bracket_N_per_mm", at->bracket);
        gw_json_number(json, "bracket_over_bush", at->ratio);
        gw_json_number(json, "effective_over_bush", at->effective);
        gw_json_bool(json, "weak", at->weak);
        gw_json_close(json);
    }
    gw_json_close(json);
}

static void put_obstacle(gw_json *json, const gw_obstacle *o, bool all)
{
    gw_json_object(json, "obstacle");
    gw_json_number(json, "peak_fore_aft_N", o->peak_fore_aft);
    gw_json_number(json, "peak_vertical_N", o->peak_vertical);
    gw_json_number(json, "decay_fore_aft_s", o->decay_fore_aft);
    gw_json_number(json, "decay_vertical_s", o->decay_vertical);
    gw_json_bool(json, "settled", o->settled);
    if (all) {
        gw_json_number(json, "step_s", o->dt);
        gw_json_numbers(json, "fore_aft_N", o->fore_aft, o->n);
        gw_json_numbers(json, "vertical_N", o->vertical, o->n);
    }
    gw_json_close(json);
}

static void put_curve(gw_json *json, const gw_ride_result *r)
{
    const gw_ride_curve *curve = &r->curve;
    gw_json_object(json, "transmissibility");
    gw_json_numbers(json, "frequency_Hz", curve->hz, curve->n);
    gw_json_numbers(json, "body_force_N_per_m", curve->force, curve->n);
    gw_json_numbers(json, "body_vertical_m_per_m", curve->chassis_z, curve->n);
    gw_json_numbers(json, "body_fore_aft_m_per_m", curve->chassis_x, curve->n);
    gw_json_object(json, "paths_N_per_m");
    for (int p = 0; p < r->n_paths; p++)
        gw_json_numbers(json, r->paths[p].name, &curve->path[p * curve->n], curve->n);
    gw_json_close(json);
    gw_json_close(json);
}

static void put_strings(gw_json *json, const char *key, const char *const *texts, int n)
{
    gw_json_array(json, key);
    for (int i = 0; i < n; i++) gw_json_string(json, NULL, texts[i]);
    gw_json_close(json);
}

static void put_item(gw_json *json, const gw_case *c, const gw_ride_item *item, bool all)
{
    const gw_ride_result *r = &item->result;
    gw_json_object(json, NULL);
    gw_json_string(json, "kit", c->kits[item->kit].name);
    gw_json_string(json, "corner", gw_axle_name(item->axle));
    put_figures(json, item);
    put_natural(json, r);
    put_bands(json, item);
    put_modes(json, r);
    put_paths(json, r);
    put_isolation(json, &c->corners[item->axle], r);
    if (r->obstacle.n) put_obstacle(json, &r->obstacle, all);
    if (all && r->curve.n) put_curve(json, r);
    gw_json_number(json, "body_mass_kg", r->chassis_mass);
    put_strings(json, "warnings", (const char *const *)r->warnings, r->n_warnings);
    gw_json_string(json, "caution", gw_ride_caution());
    gw_json_close(json);
}

void gw_ride_json(const gw_case *c, const gw_ride_study *study, bool all, gw_buf *out)
{
    gw_json json = { .out = out };
    gw_json_object(&json, NULL);
    gw_json_string(&json, "format", "giveway-result-1");
    gw_json_string(&json, "command", "ride");
    gw_json_string(&json, "case", c->title);
    gw_json_string(&json, "baseline", c->kits[0].name);
    put_settings(&json, &c->ride);
    gw_json_array(&json, "results");
    for (int i = 0; i < study->n; i++) put_item(&json, c, &study->item[i], all);
    gw_json_close(&json);
    if (study->n) gw_json_string(&json, "road_note", study->item[0].result.road_note);
    put_strings(&json, "warnings", study->warning, study->n_warnings);
    gw_json_close(&json);
}

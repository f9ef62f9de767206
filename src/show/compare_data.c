/* SPDX-License-Identifier: MIT */
/* The comparison for programs: JSON with everything; CSV with a row a deflection and what its kit does. */
#include "show/compare.h"

#include "format/json.h"
#include "giveway/units.h"
#include "record/csv.h"
#include "record/json.h"
#include "show/bands.h"
#include "show/deflect.h"
#include "show/handling.h"

static void put_range(gw_json *json, const char *key, double low, double high)
{
    const double range[2] = { low, high };
    gw_json_numbers(json, key, range, 2);
}

static void put_ride(gw_json *json, const gw_case *c, const gw_ride_item *item)
{
    const gw_ride_result *r = &item->result;
    const gw_ride_difference *d = &item->difference;
    int reactions[GW_REACTIONS], n = gw_reactions_at(r->comfort, reactions);
    gw_json_object_on_line(json, NULL);
    gw_json_string(json, "kit", c->kits[item->kit].name);
    gw_json_string(json, "corner", gw_axle_name(item->axle));
    gw_json_number(json, "comfort_ms2", r->comfort);
    gw_json_array(json, "comfort_reactions");
    for (int i = 0; i < n; i++) gw_json_string(json, NULL, gw_reaction_get(reactions[i])->text);
    gw_json_close(json);
    gw_json_number(json, "harshness_N", r->harshness[0]);
    gw_json_number(json, "harshness_dB", d->harshness);
    put_range(json, "harshness_range_dB", d->harshness_low, d->harshness_high);
    gw_json_number(json, "road_noise_N", r->noise[0]);
    gw_json_number(json, "road_noise_dB", d->noise);
    put_range(json, "road_noise_range_dB", d->noise_low, d->noise_high);
    gw_json_number(json, "friction_N", r->friction);
    gw_json_number(json, "wheel_fore_aft_Hz", r->modes[r->wheel_fore_aft].hz);
    gw_json_close(json);
}

static gw_place deflection(const gw_comparison *cmp, int index)
{
    return (gw_place){ .c = cmp->c, .record = &GW_DEFLECTION_RECORD, .it = &cmp->deflect->item[index] };
}

static void put_results(gw_json *json, const gw_comparison *cmp)
{
    gw_json_array(json, "results");
    for (int i = 0; i < cmp->deflect->n; i++) {
        gw_json_object(json, NULL);
        const gw_place place = deflection(cmp, i);
        gw_place_json(&place, 0, json);
        gw_json_close(json);
    }
    gw_json_close(json);
}

static void put_kits(gw_json *json, const gw_comparison *cmp)
{
    gw_json_array(json, "kits");
    for (int k = 0; k < cmp->c->n_kits; k++) {
        gw_json_object_on_line(json, NULL);
        gw_json_string(json, "name", cmp->c->kits[k].name);
        gw_json_string(json, "label", cmp->c->kits[k].label);
        gw_json_bool(json, "baseline", k == cmp->baseline);
        gw_json_close(json);
    }
    gw_json_close(json);
}

static void put_tolerance(gw_json *json, const gw_comparison *cmp)
{
    gw_json_array(json, "hardness_tolerance");
    for (int i = 0; cmp->tolerance && i < cmp->tolerance->n; i++) {
        const gw_tolerance_item *item = &cmp->tolerance->item[i];
        if (item->failed) continue;
        gw_json_object_on_line(json, NULL);
        gw_json_string(json, "kit", cmp->c->kits[item->kit].name);
        gw_json_string(json, "corner", gw_axle_name(item->axle));
        gw_json_string(json, "load", cmp->c->loads[item->load].name);
        gw_json_number(json, "points", GW_HARDNESS_TOLERANCE);
        gw_json_int(json, "bushes", item->bushes);
        put_range(json, "toe_change_deg", item->toe[0] / GW_DEG, item->toe[1] / GW_DEG);
        put_range(json, "camber_change_deg", item->camber[0] / GW_DEG, item->camber[1] / GW_DEG);
        gw_json_close(json);
    }
    gw_json_close(json);
}

static void put_bands(gw_json *json, const gw_comparison *cmp)
{
    const gw_place place = { .c = cmp->c, .record = &GW_BANDS_RECORD, .it = cmp->bands };
    if (!cmp->bands) return;
    gw_json_object(json, "bands");
    gw_place_json(&place, 0, json);
    gw_json_close(json);
}

void gw_compare_json(const gw_comparison *cmp, gw_buf *out)
{
    gw_json json = { .out = out };
    gw_json_object(&json, NULL);
    gw_json_string(&json, "format", "giveway-result-1");
    gw_json_string(&json, "command", "compare");
    gw_json_string(&json, "case", cmp->c->title);
    put_kits(&json, cmp);
    put_results(&json, cmp);
    put_tolerance(&json, cmp);
    put_bands(&json, cmp);
    gw_handling_json(cmp, &json);
    gw_json_array(&json, "ride");
    for (int i = 0; i < cmp->ride->n; i++) put_ride(&json, cmp->c, &cmp->ride->item[i]);
    gw_json_close(&json);
    gw_json_string(&json, "ride_left_out", cmp->no_ride);
    if (!cmp->no_ride) gw_json_string(&json, "ride_caution", gw_ride_caution());
    gw_json_array(&json, "warnings");
    for (int i = 0; i < cmp->deflect->n_warnings; i++) gw_json_string(&json, NULL, cmp->deflect->warning[i]);
    for (int i = 0; i < cmp->ride->n_warnings; i++) gw_json_string(&json, NULL, cmp->ride->warning[i]);
    gw_json_close(&json);
    gw_json_close(&json);
}

void gw_compare_csv(const gw_comparison *cmp, gw_buf *out)
{
    gw_csv csv = { .out = out };
    gw_record_csv_heads(&GW_DEFLECTION_RECORD, &csv);
    gw_handling_csv(cmp, NULL, &csv);
    if (cmp->bands) gw_bands_csv(cmp->c, NULL, true, &csv);
    gw_csv_end_row(&csv);
    for (int i = 0; i < cmp->deflect->n; i++) {
        const gw_place place = deflection(cmp, i);
        gw_place_csv(&place, &csv);
        gw_handling_csv(cmp, &cmp->deflect->item[i], &csv);
        if (cmp->bands) gw_bands_csv(cmp->c, gw_band_of(cmp->bands, &cmp->deflect->item[i]), false, &csv);
        gw_csv_end_row(&csv);
    }
}

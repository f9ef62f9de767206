/* SPDX-License-Identifier: MIT */
#include "show/spread.h"

#include "format/json.h"
#include "giveway/units.h"
#include "show/deflect.h"

#include <math.h>
#include <stdlib.h>

static const char *const KEYS[] = { "toe_change_deg", "camber_change_deg", "wheel_fore_aft_mm" };
static const double UNITS[] = { GW_DEG, GW_DEG, GW_MM };
static const char *const RIDE_KEYS[] = { "harshness_dB", "road_noise_dB" };

double gw_spread_z_at(const gw_spread_study *study, int figure, int end)
{
    const gw_spread_options *o = &study->options;
    double centre = o->centre ? o->centre[figure] : 0.0;
    double sd = o->covariance ? sqrt(o->covariance[figure * study->n_figures + figure]) : 1.0;
    return centre + 2.0 * end * sd;
}

void gw_by_share(const double *share, int n, int *order)
{
    for (int i = 0; i < n; i++) {
        int at = i;
        for (; at > 0 && share[order[at - 1]] < share[i]; at--) order[at] = order[at - 1];
        order[at] = i;
    }
}

static void put_band(gw_json *json, const char *key, const gw_spread_band *b, double unit, bool had)
{
    const double none = had ? 1.0 : (double)NAN;
    gw_json_object_on_line(json, key);
    gw_json_number(json, "nominal", b->nominal / unit);
    gw_json_number(json, "mean", none * b->mean / unit);
    gw_json_number(json, "sd", none * b->sd / unit);
    gw_json_number(json, "low", none * b->low / unit);
    gw_json_number(json, "median", none * b->median / unit);
    gw_json_number(json, "high", none * b->high / unit);
    gw_json_close(json);
}

/* What does not move a result is left out of its list. */
static void put_shares(gw_json *json, const gw_spread_study *s, const char *key, const double *share,
                       int *order)
{
    gw_by_share(share, s->n_figures, order);
    gw_json_array(json, key);
    for (int i = 0; i < s->n_figures && share[order[i]] > 0.0; i++) {
        gw_json_object_on_line(json, NULL);
        gw_json_string(json, "of", s->figure[order[i]].of);
        gw_json_number(json, "share", share[order[i]]);
        gw_json_close(json);
    }
    gw_json_close(json);
}

static void put_part(gw_json *json, const gw_spread_study *s, const gw_spread_part *p, bool ride, int *order)
{
    const char *const *keys = ride ? RIDE_KEYS : KEYS;
    const int n = ride ? (int)GW_SPREAD_RIDE_QUANTITIES : (int)GW_SPREAD_QUANTITIES;
    for (int q = 0; q < n; q++) put_band(json, keys[q], &p->band[q], ride ? 1.0 : UNITS[q], p->draws > 0);
    gw_json_object(json, "measure_next");
    for (int q = 0; q < n; q++) {
        gw_json_object(json, keys[q]);
        gw_json_number(json, "linear_r2", p->slopes[q].linear_r2);
        put_shares(json, s, "shares", p->slopes[q].share, order);
        gw_json_close(json);
    }
    gw_json_close(json);
}

static void put_item(gw_json *json, const gw_case *c, const gw_spread_study *s, const gw_spread_item *item,
                     int *order)
{
    const bool ride = item->load < 0;
    gw_json_object(json, NULL);
    gw_json_string(json, "kit", c->kits[item->kit].name);
    gw_json_string(json, "corner", gw_axle_name(item->axle));
    if (!ride) gw_json_string(json, "load", c->loads[item->load].name);
    if (item->sided) gw_json_string(json, "side", GW_WHEEL_NAMES[item->wheel]);
    if (item->manoeuvre) gw_json_string(json, "wheel", gw_side_name(item->side));
    if (item->why) {
        gw_json_string(json, "failed", item->why);
        gw_json_close(json);
        return;
    }
    gw_json_int(json, "draws", item->own.draws);
    gw_json_int(json, "failed", item->failed);
    put_part(json, s, &item->own, ride, order);
    if (item->has_difference) {
        gw_json_object(json, "difference");
        gw_json_int(json, "draws", item->difference.draws);
        put_part(json, s, &item->difference, false, order);
        gw_json_number(json, "better", item->better);
        gw_json_close(json);
        gw_json_number(json, "better", item->better);
    }
    gw_json_close(json);
}

static void put_summary(gw_json *json, const gw_case *c, const gw_spread_summary *s)
{
    gw_json_object(json, NULL);
    gw_json_string(json, "kit", c->kits[s->kit].name);
    gw_json_int(json, "draws", s->draws);
    put_band(json, "unsteadiness_deg", &s->unsteadiness, GW_DEG, s->draws > 0);
    gw_json_number(json, "steadier", s->steadier);
    gw_json_number(json, "steadiest", s->steadiest);
    gw_json_close(json);
}

static void put_figures(gw_json *json, const gw_spread_study *s)
{
    gw_json_array(json, "uncertain");
    for (int i = 0; i < s->n_figures; i++) {
        gw_json_object_on_line(json, NULL);
        gw_json_string(json, "of", s->figure[i].of);
        gw_json_number(json, "value", gw_unsure_at(&s->figure[i], gw_spread_z_at(s, i, 0)));
        gw_json_number(json, "low", gw_unsure_at(&s->figure[i], gw_spread_z_at(s, i, -1)));
        gw_json_number(json, "high", gw_unsure_at(&s->figure[i], gw_spread_z_at(s, i, 1)));
        gw_json_close(json);
    }
    gw_json_close(json);
}

void gw_spread_json(const gw_case *c, const gw_spread_study *s, gw_buf *out)
{
    gw_json json = { .out = out };
    int *order = calloc((size_t)s->n_figures + 1, sizeof *order);
    if (!order) {
        out->failed = true;
        return;
    }
    gw_json_object(&json, NULL);
    gw_json_string(&json, "format", "giveway-result-1");
    gw_json_string(&json, "command", "spread");
    gw_json_string(&json, "case", c->title);
    gw_json_int(&json, "draws", s->options.draws);
    gw_json_int(&json, "seed", (long)s->options.seed);
    gw_json_array(&json, "results");
    for (int i = 0; i < s->n; i++) put_item(&json, c, s, &s->item[i], order);
    gw_json_close(&json);
    gw_json_array(&json, "summary");
    for (int k = 0; k < s->n_kits; k++) put_summary(&json, c, &s->summary[k]);
    gw_json_close(&json);
    put_shares(&json, s, "measure_next", s->share, order);
    put_figures(&json, s);
    gw_json_array(&json, "warnings");
    for (int i = 0; i < s->n_warnings; i++) gw_json_string(&json, NULL, s->warning[i]);
    gw_json_close(&json);
    gw_json_close(&json);
    free(order);
}

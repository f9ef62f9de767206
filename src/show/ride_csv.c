/* SPDX-License-Identifier: MIT */
#include "format/csv.h"
#include "format/number.h"
#include "show/deflect.h"
#include "show/ride.h"

#include <math.h>

static const char *const HEADS[] = { "kit",
                                     "corner",
                                     "comfort_ms2",
                                     "harshness_N",
                                     "harshness_dB",
                                     "harshness_low_dB",
                                     "harshness_high_dB",
                                     "road_noise_N",
                                     "road_noise_dB",
                                     "road_noise_low_dB",
                                     "road_noise_high_dB",
                                     "crackle_felt_N",
                                     "crackle_heard_N",
                                     "body_Hz",
                                     "body_damping_ratio",
                                     "wheel_vertical_Hz",
                                     "wheel_vertical_damping_ratio",
                                     "wheel_fore_aft_Hz",
                                     "wheel_fore_aft_damping_ratio",
                                     "obstacle_peak_fore_aft_N",
                                     "obstacle_peak_vertical_N",
                                     "obstacle_decay_fore_aft_s",
                                     "obstacle_decay_vertical_s",
                                     "largest_path",
                                     "largest_path_share" };

static void put_heads(gw_csv *csv)
{
    for (size_t i = 0; i < sizeof HEADS / sizeof *HEADS; i++) gw_csv_string(csv, HEADS[i]);
    for (int what = 0; what < 2; what++)
        for (int b = 0; b < GW_BANDS; b++) {
            gw_buf head = { 0 };
            gw_buf_fmt(&head, "band_%s_Hz_%s", gw_exact(gw_band_nominal(GW_BAND_FIRST + b)).s,
                       what ? "dB" : "N");
            gw_csv_string(csv, gw_buf_str(&head));
            if (head.failed) csv->out->failed = true;
            gw_buf_free(&head);
        }
    gw_csv_string(csv, "caution");
    gw_csv_end_row(csv);
}

static void put_figures(gw_csv *csv, const gw_ride_item *item)
{
    const gw_ride_result *r = &item->result;
    const gw_ride_difference *d = &item->difference;
    const double values[] = { r->comfort,        r->harshness[0], d->harshness, d->harshness_low,
                              d->harshness_high, r->noise[0],     d->noise,     d->noise_low,
                              d->noise_high,     r->crackle[0],   r->crackle[1] };
    gw_csv_numbers(csv, values, (int)(sizeof values / sizeof *values));
}

static void put_mode(gw_csv *csv, const gw_ride_mode *mode)
{
    gw_csv_number(csv, mode->hz);
    gw_csv_number(csv, mode->tracked ? mode->zeta : (double)NAN);
}

static void put_obstacle(gw_csv *csv, const gw_obstacle *o)
{
    const double values[] = { o->peak_fore_aft, o->peak_vertical, o->decay_fore_aft, o->decay_vertical };
    for (int i = 0; i < 4; i++) gw_csv_number(csv, o->n ? values[i] : (double)NAN);
}

static void put_largest_path(gw_csv *csv, const gw_ride_result *r)
{
    int most = 0;
    for (int i = 1; i < r->n_paths; i++)
        if (r->paths[i].share > r->paths[most].share) most = i;
    gw_csv_string(csv, r->n_paths ? r->paths[most].name : NULL);
    gw_csv_number(csv, r->n_paths ? r->paths[most].share : (double)NAN);
}

static void put_row(gw_csv *csv, const gw_case *c, const gw_ride_item *item)
{
    const gw_ride_result *r = &item->result;
    gw_csv_string(csv, c->kits[item->kit].name);
    gw_csv_string(csv, gw_axle_name(item->axle));
    put_figures(csv, item);
    put_mode(csv, &r->modes[r->body]);
    put_mode(csv, &r->modes[r->wheel_vertical]);
    put_mode(csv, &r->modes[r->wheel_fore_aft]);
    put_obstacle(csv, &r->obstacle);
    put_largest_path(csv, r);
    gw_csv_numbers(csv, r->band, GW_BANDS);
    gw_csv_numbers(csv, item->difference.band, GW_BANDS);
    gw_csv_string(csv, gw_ride_caution());
    gw_csv_end_row(csv);
}

void gw_ride_csv(const gw_case *c, const gw_ride_study *study, gw_buf *out)
{
    gw_csv csv = { .out = out };
    put_heads(&csv);
    for (int i = 0; i < study->n; i++) put_row(&csv, c, &study->item[i]);
}

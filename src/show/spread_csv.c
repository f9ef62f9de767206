/* SPDX-License-Identifier: MIT */
#include "show/spread.h"

#include "format/csv.h"
#include "giveway/units.h"
#include "show/deflect.h"

#include <math.h>
#include <stdio.h>

static const char *const NAMES[] = { "toe_change", "camber_change", "wheel_fore_aft", "harshness",
                                     "road_noise" };
static const char *const ENDS[] = { "deg", "deg", "mm", "dB", "dB" };
static const double UNITS[] = { GW_DEG, GW_DEG, GW_MM, 1.0, 1.0 };
static const char *const PARTS[] = { "nominal", "mean", "sd", "low", "median", "high" };
enum { QUANTITIES = 5, OWN = GW_SPREAD_QUANTITIES };

static void heads(gw_csv *csv, const char *before, int n)
{
    char head[100];
    for (int q = 0; q < n; q++)
        for (int p = 0; p < 6; p++) {
            snprintf(head, sizeof head, "%s%s_%s_%s", before, NAMES[q], PARTS[p], ENDS[q]);
            gw_csv_string(csv, head);
        }
}

static void put_bands(gw_csv *csv, const gw_spread_band *band, int first, int n, bool had)
{
    for (int q = 0; q < n; q++) {
        const gw_spread_band *b = band ? &band[q] : NULL;
        const double six[6] = { b ? b->nominal : 0, b ? b->mean : 0,   b ? b->sd : 0,
                                b ? b->low : 0,     b ? b->median : 0, b ? b->high : 0 };
        for (int p = 0; p < 6; p++)
            gw_csv_number(csv, b && (had || p == 0) ? six[p] / UNITS[first + q] : (double)NAN);
    }
}

static void put_item(gw_csv *csv, const gw_case *c, const gw_spread_item *item, bool ride)
{
    const bool is_ride = item->load < 0;
    gw_csv_string(csv, c->kits[item->kit].name);
    gw_csv_string(csv, gw_axle_name(item->axle));
    gw_csv_string(csv, is_ride ? NULL : c->loads[item->load].name);
    gw_csv_string(csv, item->sided ? GW_WHEEL_NAMES[item->wheel] : NULL);
    gw_csv_string(csv, item->manoeuvre ? gw_side_name(item->side) : NULL);
    gw_csv_number(csv, (double)item->own.draws);
    if (item->why)
        gw_csv_string(csv, item->why);
    else
        gw_csv_number(csv, (double)item->failed);
    put_bands(csv, is_ride ? NULL : item->own.band, 0, OWN, item->own.draws > 0);
    if (ride) put_bands(csv, is_ride ? item->own.band : NULL, OWN, 2, item->own.draws > 0);
    gw_csv_number(csv, item->has_difference ? (double)item->difference.draws : (double)NAN);
    put_bands(csv, item->has_difference ? item->difference.band : NULL, 0, OWN, item->difference.draws > 0);
    gw_csv_number(csv, item->has_difference ? item->better : (double)NAN);
    gw_csv_end_row(csv);
}

void gw_spread_csv(const gw_case *c, const gw_spread_study *s, gw_buf *out)
{
    static const char *const FIRST[] = { "kit", "corner", "load", "side", "wheel", "draws", "failed" };
    gw_csv csv = { .out = out };
    for (size_t i = 0; i < sizeof FIRST / sizeof *FIRST; i++) gw_csv_string(&csv, FIRST[i]);
    heads(&csv, "", s->options.ride ? QUANTITIES : OWN);
    gw_csv_string(&csv, "difference_draws");
    heads(&csv, "difference_", OWN);
    gw_csv_string(&csv, "better");
    gw_csv_end_row(&csv);
    for (int i = 0; i < s->n; i++) put_item(&csv, c, &s->item[i], s->options.ride);
}

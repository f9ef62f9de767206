/* SPDX-License-Identifier: MIT */
/*
 * A line a deflection, and further in it what its kit does to the car: under its load, to its corner, and to
 * all of it, which stands in every line of that kit.
 */
#include "show/compare.h"

#include "giveway/cost.h"
#include "record/csv.h"
#include "show/bands.h"
#include "show/handling.h"
#include "show/results.h"
#include "show/ride.h"

#include <math.h>
#include <stdlib.h>

/* What there is to tell beside a deflection; NULL: nothing. */
typedef struct gw_compare_row {
    const gw_deflection *item;
    const gw_corner_budget *outer, *inner;
    const gw_traction_item *driven_outer, *driven_inner, *driven_straight;
    const gw_band_item *band;
    const gw_braking_item *braking;
    const gw_braking_corner *brake;
    const gw_balance_item *balance;
    const gw_ride_item *ride;
    const gw_bands_item *sure;
    gw_car_cost cost;
    double saved; /* [min] */
} gw_compare_row;

static const gw_traction_item *driven(const gw_comparison *cmp, const gw_deflection *item, bool straight,
                                      gw_side side)
{
    for (int i = 0; i < cmp->handling->n_traction; i++) {
        const gw_traction_item *t = &cmp->handling->traction[i];
        if (t->kit == item->kit && t->axle == item->axle && t->load == item->load &&
            t->straight == straight && t->side == side)
            return t;
    }
    return NULL;
}

static const gw_band_item *band(const gw_comparison *cmp, const gw_deflection *item)
{
    for (int i = 0; i < cmp->handling->n_bands; i++) {
        const gw_band_item *b = &cmp->handling->band[i];
        if (b->kit == item->kit && b->axle == item->axle) return b;
    }
    return NULL;
}

static gw_compare_row row_of(const gw_comparison *cmp, const gw_deflection *item)
{
    const gw_handling_study *h = cmp->handling;
    const gw_braking_item *braking = gw_braking_find(h, item->kit);
    return (gw_compare_row){
        .item = item,
        .outer = gw_corner_budget_find(h, item->kit, item->axle, item->load, GW_OUTER),
        .inner = gw_corner_budget_find(h, item->kit, item->axle, item->load, GW_INNER),
        .driven_outer = driven(cmp, item, false, GW_OUTER),
        .driven_inner = driven(cmp, item, false, GW_INNER),
        .driven_straight = driven(cmp, item, true, GW_OUTER),
        .band = band(cmp, item),
        .braking = braking,
        .brake = braking && braking->corner[item->axle].there ? &braking->corner[item->axle] : NULL,
        .balance = gw_balance_find(h, item->kit),
        .ride = gw_ride_find(cmp->ride, item->kit, item->axle),
        .sure = gw_band_of(cmp->bands, item),
        .cost = gw_car_cost_of(cmp->c, item->kit),
        .saved = gw_shared_minutes_saved(cmp->c, item->kit),
    };
}

GW_READS(double, understeer_at, gw_balance_item,
         GW_WHICH(p) < it->n ? it->budget[GW_WHICH(p)].understeer : (double)NAN)

static GW_RECORD(BRAKE_RECORD, gw_braking_corner,
    GW_MEMBER("toe", DEG_PER_G, gw_braking_corner, toe_per_g, 0, "in a firm stop"),
    GW_PART_SAME(&GW_FORE_AFT_RECORD));

static GW_RECORD(BRAKING_RECORD, gw_braking_item,
    GW_WITHIN_IF("alike", gw_braking_item, has_drift, pull, &GW_PUSH_RECORD, 0, "with brakes alike, to the left"),
    GW_WITHIN_IF("stop", gw_braking_item, has_drift, imbalance, &GW_PUSH_RECORD, 0, "with one brake stronger"),
    GW_WITHIN_IF("bump", gw_braking_item, has_drift, bump, &GW_PUSH_RECORD, 0, "under one wheel"));

#define FRONT_ENTRY(id, words, key, what)                                                                    \
    GW_MEMBER("front_" key, DEG_PER_G, gw_balance_item, quoted.entry[GW_FRONT][GW_BUDGET_##id], 0, what),
#define REAR_ENTRY(id, words, key, what)                                                                     \
    GW_MEMBER("rear_" key, DEG_PER_G, gw_balance_item, quoted.entry[GW_REAR][GW_BUDGET_##id], 0, what),
#define POINT(g, at)                                                                                         \
    GW_WORKED_OUT_OF("understeer_deg_per_g_at_" g, DEG_PER_G, understeer_at, at, GW_NO_UNIT, "there")
static GW_RECORD(BALANCE_RECORD, gw_balance_item,
    GW_MEMBER("understeer", DEG_PER_G, gw_balance_item, quoted.understeer, 0, "front less rear"),
    GW_BUDGET_LIST(FRONT_ENTRY)
    GW_BUDGET_LIST(REAR_ENTRY)
    POINT("0.1", 0), POINT("0.2", 1), POINT("0.3", 2), POINT("0.4", 3), POINT("0.5", 4),
    POINT("0.6", 5), POINT("0.7", 6), POINT("0.8", 7), POINT("0.9", 8), POINT("1.0", 9),
    GW_MEMBER("linear_to", G, gw_balance_item, linear_to, 0, "how far the quoted budget stands for the car"),
    GW_WITHIN_IF("car", gw_balance_item, has_car, car, &GW_SINGLE_TRACK_RECORD, GW_NO_PREFIX, "with a single track"));

static GW_RECORD(RIDE_RECORD, gw_ride_item,
    GW_PART_SAME(&GW_RIDE_COLUMNS_RECORD),
    GW_PART_SAME(&GW_RIDE_COMPARED_RECORD));

static GW_RECORD(ROW_RECORD, gw_compare_row,
    GW_PART_BEHIND(gw_compare_row, item, &GW_DEFLECTION_RECORD, 0),
    GW_BEHIND("outer", gw_compare_row, outer, &GW_CORNER_BUDGET_RECORD, 0, "wheel in the corner"),
    GW_BEHIND("inner", gw_compare_row, inner, &GW_CORNER_BUDGET_RECORD, 0, "wheel in the corner"),
    GW_BEHIND("driven_outer", gw_compare_row, driven_outer, &GW_TRACTION_RECORD, 0, "wheel"),
    GW_BEHIND("driven_inner", gw_compare_row, driven_inner, &GW_TRACTION_RECORD, 0, "wheel"),
    GW_BEHIND("driven_straight", gw_compare_row, driven_straight, &GW_TRACTION_RECORD, 0, "without the load's cornering"),
    GW_BEHIND("band", gw_compare_row, band, &GW_BAND_RECORD, 0, "how far the outer wheel's setting moves"),
    GW_BEHIND("brake", gw_compare_row, brake, &BRAKE_RECORD, 0, "one wheel of the axle"),
    GW_PART_BEHIND(gw_compare_row, braking, &BRAKING_RECORD, 0),
    GW_PART_BEHIND(gw_compare_row, balance, &BALANCE_RECORD, 0),
    GW_PART_BEHIND(gw_compare_row, ride, &RIDE_RECORD, 0),
    GW_MEMBER("price", PLAIN, gw_compare_row, cost.price, 0, "of the parts"),
    GW_MEMBER("fit_minutes", PLAIN, gw_compare_row, cost.minutes, 0, "of those with a time"),
    GW_MEMBER("labour", PLAIN, gw_compare_row, cost.labour, 0, "for those minutes"),
    GW_MEMBER("total", PLAIN, gw_compare_row, cost.total, 0, "price, labour where known, tax"),
    GW_MEMBER("parts", PLAIN, gw_compare_row, cost.parts, 0, "that differ from the first kit"),
    GW_MEMBER("parts_without_price", PLAIN, gw_compare_row, cost.unpriced, 0, "not in the sum"),
    GW_MEMBER("parts_without_time", PLAIN, gw_compare_row, cost.untimed, 0, "not in the sum"),
    GW_MEMBER("shared_minutes_saved", PLAIN, gw_compare_row, saved, 0, "by work that is done once"));

static GW_RECORD(SURE_ROW_RECORD, gw_compare_row,
    GW_PART_SAME(&ROW_RECORD),
    GW_PART_BEHIND(gw_compare_row, sure, &GW_BAND_FIGURES_RECORD, 0));

void gw_compare_csv(const gw_case *c, const void *made, gw_buf *out)
{
    const gw_comparison *cmp = &((const gw_compare_made *)made)->cmp;
    int n = cmp->deflect->n;
    gw_compare_row *rows = calloc((size_t)n + 1, sizeof *rows);
    for (int i = 0; rows && i < n; i++) rows[i] = row_of(cmp, &cmp->deflect->item[i]);
    if (rows)
        gw_records_csv(cmp->bands ? &SURE_ROW_RECORD : &ROW_RECORD, c, rows, n, sizeof *rows, out);
    else
        out->failed = true;
    free(rows);
}

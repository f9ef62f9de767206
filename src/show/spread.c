/* SPDX-License-Identifier: MIT */
/* The rows of `spread`: how sure every answer is, and what to measure next. */
#include "show/spread.h"

#include "show/results.h"

/* -- what to measure next -- */

GW_READS(const char *, figure_of, gw_spread_share, GW_IT(p, gw_spread_study)->figure[it->figure].of)

static GW_RECORD(SHARE_RECORD, gw_spread_share,
    GW_SAID("of", figure_of, 0, "path of the uncertain figure"),
    GW_MEMBER("share", PLAIN, gw_spread_share, share, 0, "of the variance that is linear"));

static GW_RECORD(MOVES_RECORD, gw_slopes,
    GW_MEMBER("linear_r2", PLAIN, gw_slopes, linear_r2, GW_MAY_LACK, "how far slopes alone explain the draws; near 1: they do"),
    GW_ROWS("shares", gw_slopes, n_ranked, ranked, &SHARE_RECORD, GW_ON_LINE, "the greatest first; what does not move it is left out"));

/* Of a load its own three quantities, of ride its two. */
enum { RIDE = 8 };

static const void *slopes(const gw_place *p)
{
    bool ride = GW_WHICH(p) >= RIDE;
    return (GW_IT(p, gw_spread_item)->load < 0) == ride
               ? &GW_IT(p, gw_spread_part)->slopes[GW_WHICH(p) % RIDE]
               : NULL;
}

GW_READS(const void *, own_part, gw_spread_item, it->why ? NULL : &it->own)
GW_READS(const void *, apart, gw_spread_item, &it->difference)

/* clang-format off */
#define AS_MOVED(name, u, quantity) \
    { .key = name, .kind = GW_OBJECT, .unit = GW_UNIT_##u, .enter = slopes, .which = quantity, .record = &MOVES_RECORD, .doc = "what moves it" }
/* clang-format on */
static GW_RECORD(NEXT_RECORD, gw_spread_part,
    AS_MOVED("toe_change", DEG, GW_SPREAD_TOE),
    AS_MOVED("camber_change", DEG, GW_SPREAD_CAMBER),
    AS_MOVED("wheel_fore_aft", MM, GW_SPREAD_FORE_AFT),
    AS_MOVED("harshness", DB, RIDE + GW_SPREAD_HARSHNESS),
    AS_MOVED("road_noise", DB, RIDE + GW_SPREAD_NOISE));
#undef AS_MOVED

/* -- a result -- */

static GW_RECORD(OF_LOAD_RECORD, gw_spread_part,
    GW_BANDED("toe_change", DEG, gw_spread_part, band[GW_SPREAD_TOE], GW_MAY_LACK, "since standing still"),
    GW_BANDED("camber_change", DEG, gw_spread_part, band[GW_SPREAD_CAMBER], GW_MAY_LACK, "since standing still"),
    GW_BANDED("wheel_fore_aft", MM, gw_spread_part, band[GW_SPREAD_FORE_AFT], GW_MAY_LACK, "x of the wheel centre's movement"));

static GW_RECORD(OF_RIDE_RECORD, gw_spread_part,
    GW_BANDED("harshness", DB, gw_spread_part, band[GW_SPREAD_HARSHNESS], GW_MAY_LACK, "over the first kit"),
    GW_BANDED("road_noise", DB, gw_spread_part, band[GW_SPREAD_NOISE], GW_MAY_LACK, "over the first kit"));

GW_READS(const void *, of_load, gw_spread_item, it->load >= 0 && !it->why ? &it->own : NULL)
GW_READS(const void *, of_ride, gw_spread_item, it->load < 0 && !it->why ? &it->own : NULL)
GW_READS(const void *, difference, gw_spread_item, it->has_difference && !it->why ? it : NULL)
GW_READS(double, draws, gw_spread_item, (double)it->own.draws)
GW_READS(double, draws_apart, gw_spread_item, (double)it->difference.draws)
GW_READS(double, failed, gw_spread_item, (double)it->failed)
GW_READS(const void *, carried, gw_spread_item, it->why ? NULL : it)
GW_READS(const char *, side, gw_spread_item, it->sided ? GW_WHEEL_NAMES[it->wheel] : NULL)
GW_READS(const char *, wheel, gw_spread_item, it->manoeuvre ? gw_side_name(it->side) : NULL)

static GW_RECORD(DIFFERENCE_RECORD, gw_spread_item,
    GW_COUNTED("draws", draws_apart, 0, "in which both were had"),
    GW_PART_FOUND(apart, &OF_LOAD_RECORD, GW_ALWAYS),
    GW_PRESENT("measure_next", apart, &NEXT_RECORD, GW_NO_CSV, "shares of each band"),
    GW_MEMBER("better", PLAIN, gw_spread_item, better, GW_NO_CSV | GW_MAY_LACK, "as below"));

static GW_RECORD(BETTER_RECORD, gw_spread_item,
    GW_MEMBER("better", PLAIN, gw_spread_item, better, GW_MAY_LACK, "share of draws with the smaller toe change in size"));

static GW_RECORD(HAD_RECORD, gw_spread_item,
    GW_COUNTED("draws", draws, 0, "in which it was had"),
    GW_COUNTED("failed", failed, 0, "in which it could not be had"));

static GW_RECORD(ITEM_RECORD, gw_spread_item,
    GW_KIT("kit", gw_spread_item, kit, 0, "name of the kit"),
    GW_WORD("corner", gw_spread_item, axle, GW_AXLE_NAMES, 0, "the axle"),
    GW_LOADED("load", gw_spread_item, load, GW_SOMETIMES, "name of the load; left out: the ride of kit and corner"),
    GW_CHOSEN("side", side, GW_WHEEL_NAMES, GW_SOMETIMES, "which wheel of the axle, where both are told"),
    GW_CHOSEN("wheel", wheel, GW_SIDE_NAMES, GW_SOMETIMES, "of a manoeuvre"),
    GW_PART_FOUND(carried, &HAD_RECORD, 0),
    GW_MEMBER("why", PLAIN, gw_spread_item, why, GW_SOMETIMES, "the case as written does not carry it, and then nothing else is told"),
    GW_PART_FOUND(of_load, &OF_LOAD_RECORD, 0),
    GW_PART_FOUND(of_ride, &OF_RIDE_RECORD, 0),
    GW_INSIDE("measure_next", own_part, &NEXT_RECORD, GW_NO_CSV, "shares of each band"),
    GW_INSIDE("difference", difference, &DIFFERENCE_RECORD, 0, "from the first kit, in the same car"),
    GW_PART_FOUND(difference, &BETTER_RECORD, 0));

/* -- all of it -- */

GW_READS(double, summary_draws, gw_spread_summary, (double)it->draws)
GW_READS(double, all_draws, gw_spread_study, (double)it->options.draws)
GW_READS(double, seed, gw_spread_study, (double)it->options.seed)

static GW_RECORD(SUMMARY_RECORD, gw_spread_summary,
    GW_KIT("kit", gw_spread_summary, kit, 0, "name of the kit"),
    GW_COUNTED("draws", summary_draws, 0, "in which all was had that the case as written carries"),
    GW_BANDED("unsteadiness", DEG, gw_spread_summary, unsteadiness, GW_MAY_LACK, "root mean square of its toe changes"),
    GW_MEMBER("steadier", PLAIN, gw_spread_summary, steadier, GW_MAY_LACK, "share of draws in which it is below the first kit's"),
    GW_MEMBER("steadiest", PLAIN, gw_spread_summary, steadiest, GW_MAY_LACK, "share of draws in which no kit's is below it"));

static GW_RECORD(DRAWN_RECORD, gw_spread_figure,
    GW_MEMBER("of", PLAIN, gw_spread_figure, of, 0, "path of the figure"),
    GW_MEMBER("value", PLAIN, gw_spread_figure, value, 0, "in its own unit"),
    GW_MEMBER("low", PLAIN, gw_spread_figure, low, 0, "end of its band"),
    GW_MEMBER("high", PLAIN, gw_spread_figure, high, 0, "end of its band"));

static GW_RECORD(STUDY_RECORD, gw_spread_study,
    GW_COUNTED("draws", all_draws, GW_NO_CSV, "cars"),
    GW_COUNTED("seed", seed, GW_NO_CSV, "of the draws"),
    GW_ROWS("results", gw_spread_study, n, item, &ITEM_RECORD, 0, "by kit, corner and load"),
    GW_ROWS("summary", gw_spread_study, n_kits, summary, &SUMMARY_RECORD, 0, "a kit each, over all loads"),
    GW_ROWS("measure_next", gw_spread_study, n_ranked, ranked, &SHARE_RECORD, GW_ON_LINE, "shares of all toe changes together"),
    GW_ROWS("uncertain", gw_spread_study, n_figures, drawn, &DRAWN_RECORD, GW_ON_LINE, "what was drawn"),
    GW_TEXTS("warnings", gw_spread_study, n_warnings, warning, 0, "as on standard error"));

const gw_result GW_SPREAD_RESULT = { "spread", &STUDY_RECORD, .rows = "results" };

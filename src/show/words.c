/* SPDX-License-Identifier: MIT */
#include "show/words.h"

static const char *const WORDS[GW_WORDS_COUNT] = {
    /* Each entry is named: with a comma missing it would not compile. */
    /* NOLINTNEXTLINE(bugprone-suspicious-missing-comma) */
    [GW_WORDS_SAFETY] = "Faulty work on brakes, steering or suspension can injure or kill. These figures are "
                        "no approval of a part or a repair.",
    [GW_WORDS_DEFER] = "The vehicle maker's data, local law and the judgement of a qualified technician come "
                       "first wherever they differ from this.",
    [GW_WORDS_ESTIMATE] = "Estimates, made to compare kits with one another; they are as good as the "
                          "rates and points given.",
    [GW_WORDS_RIDE_RANGE] = "Range: about nine in ten of what brackets and their loss, stiffness and loss of "
                            "bushes, the give of links "
                            "and lugs and the tyre's belt may make of it, both kits alike; where that may "
                            "turn the order of two kits "
                            "round, they are too close to call. A-weighted: the force into the body as the "
                            "ear weighs it, 40 to 315 Hz; "
                            "what else is heard in the cabin is not in it.",
    [GW_WORDS_RIDE_ESTIMATE] =
        "An estimate to compare kits with, not a prediction of a noise level in the cabin.",
    [GW_WORDS_RATE_ESTIMATE] = "Rates from shape and hardness: a hardness tolerance of 5 points alone "
                               "(common practice) moves the modulus by up to a fifth.",
    [GW_WORDS_STATIC_ONLY] = "Steady loads on a rigid body and rigid arms; tyre, wheel, hub and bracket give "
                             "is left out unless it is stated.",
    [GW_WORDS_CHECK_ALIGNMENT] = "After fitting, tighten at ride height, then measure and set the alignment, "
                                 "and check the brakes and the steering before the road.",

    /* The page: frame and question */
    [GW_WORDS_PAGE_QUESTION_BRAKE_CORNER] =
        "What do I gain when I brake hard and corner fast, and what do I pay for it?",
    [GW_WORDS_PAGE_QUESTION_BRAKE] = "What do I gain when I brake hard, and what do I pay for it?",
    [GW_WORDS_PAGE_QUESTION_CORNER] = "What do I gain when I corner fast, and what do I pay for it?",
    [GW_WORDS_PAGE_QUESTION_OTHER] = "What do other bushes change on my car, and what do I pay for it?",

    /* One sentence a kit */
    [GW_WORDS_PAGE_ANSWER_BASE] = "{load}, the {axle} wheel turns {way} by {angle}",
    [GW_WORDS_PAGE_ANSWER_BASE_END] = "; the others are measured against this",
    [GW_WORDS_PAGE_ANSWER_LESS] =
        "the {axle} wheel turns {percent} less {load} ({way} by {angle} instead of {base})",
    [GW_WORDS_PAGE_ANSWER_MORE] =
        "the {axle} wheel turns {percent} more {load} ({way} by {angle} instead of {base})",
    [GW_WORDS_PAGE_ANSWER_OTHER_WAY] =
        "the {axle} wheel turns {way} by {angle} instead of {baseway} by {base} {load}",
    [GW_WORDS_PAGE_ANSWER_SAME] = "the {axle} wheel turns no differently {load} ({way} by {angle})",
    [GW_WORDS_PAGE_ANSWER_WARN] = "Toe-out gained at the rear:",
    [GW_WORDS_PAGE_ANSWER_AND] = " and ",
    [GW_WORDS_PAGE_ANSWER_COMMA] = ", ",
    [GW_WORDS_PAGE_ANSWER_BUT] = ", but ",
    [GW_WORDS_PAGE_ANSWER_WITH] = ", and ",
    [GW_WORDS_PAGE_ANSWER_FRICTION] = "; the wheel moves at {now} N, with {kit} at {then} N",
    [GW_WORDS_PAGE_ANSWER_ROAD] = "the road comes through {feel} ({dB}); of force into the body, A-weighted, "
                                  "{loud} ({noise})",
    [GW_WORDS_PAGE_ANSWER_PATHS] =
        "; where other paths carry a half, three quarters or nine tenths of what is heard, {beside}",
    [GW_WORDS_PAGE_ANSWER_COST] = "; parts {price}, fitting {time}",
    [GW_WORDS_PAGE_ANSWER_PRICE] = "; parts {price}",
    [GW_WORDS_PAGE_ANSWER_TIME] = "; fitting {time}",
    [GW_WORDS_PAGE_ANSWER_TOTAL] = "; {total} fitted",
    [GW_WORDS_PAGE_ANSWER_TOTAL_TAX] = "; {total} fitted, with tax",
    [GW_WORDS_PAGE_ANSWER_SAME_JOINTS] = " (the same joints in {kit}: {total})",
    [GW_WORDS_PAGE_ANSWER_RENEW] = "; all of it new: parts {price}, fitting {time}",
    [GW_WORDS_PAGE_ANSWER_STAND] = "; {count} of its joints will not stand the loads (see below)",
    [GW_WORDS_PAGE_ANSWER_CLOSE] = " (too close to call)",
    [GW_WORDS_PAGE_ANSWER_STAND_ONE] = "; one of its joints will not stand the loads (see below)",
    [GW_WORDS_PAGE_ANSWER_END] = ".",
    [GW_WORDS_PAGE_WAY_IN] = "in",
    [GW_WORDS_PAGE_WAY_OUT] = "out",
    [GW_WORDS_PAGE_LOAD_BRAKE] = "in a {brake} g stop",
    [GW_WORDS_PAGE_LOAD_CORNER] = "in a {lateral} g corner",
    [GW_WORDS_PAGE_LOAD_BOTH] = "braking at {brake} g in a {lateral} g corner",
    [GW_WORDS_PAGE_LOAD_EXIT] = "driving at {drive} g out of a {lateral} g corner",
    [GW_WORDS_PAGE_LOAD_DRIVE] = "accelerating at {drive} g",
    [GW_WORDS_PAGE_LOAD_NAMED] = "under the load “{load}”",
    [GW_WORDS_PAGE_FRONT] = "front",
    [GW_WORDS_PAGE_REAR] = "rear",
    [GW_WORDS_PAGE_OUTER_FRONT] = "outer front",
    [GW_WORDS_PAGE_OUTER_REAR] = "outer rear",

    /* At a glance */
    [GW_WORDS_PAGE_CHOOSE] = "What to fit for the money",
    [GW_WORDS_PAGE_CHOOSE_NOTE] =
        "Of everything that is on offer: the steadiest, the quietest and the best value, with the kits of "
        "this page "
        "among them. Unsteady: how far the wheels turn under the loads that matter, all together.",
    [GW_WORDS_PAGE_CHOOSE_WHAT] = "What is fitted",
    [GW_WORDS_PAGE_CHOOSE_NOW] = "As it is now",
    [GW_WORDS_PAGE_CHOOSE_VALUE] = "Best value",
    [GW_WORDS_PAGE_CHOOSE_QUIET] = "Quietest",
    [GW_WORDS_PAGE_CHOOSE_STEADY] = "Steadiest",
    [GW_WORDS_PAGE_CHOOSE_UNSTEADY] = "Unsteady",
    [GW_WORDS_PAGE_CHOOSE_HARSH] = "Harshness",
    [GW_WORDS_PAGE_CHOOSE_NOISE] = "Road noise",
    [GW_WORDS_PAGE_CHOOSE_COST] = "Parts and fitting",
    [GW_WORDS_PAGE_CHOOSE_COST_TAX] = "Parts, fitting, tax",
    [GW_WORDS_PAGE_CHOOSE_LADDER] = "What more money buys",
    [GW_WORDS_PAGE_CHOOSE_LADDER_NOTE] =
        "Each step is the least that makes the car steadier than the step before.",
    [GW_WORDS_PAGE_CHOOSE_STEP] = "Step",
    [GW_WORDS_PAGE_GLANCE] = "At a glance",
    [GW_WORDS_PAGE_GLANCE_KIT] = "Kit",
    [GW_WORDS_PAGE_GLANCE_TOE] = "Wheel turns, {load}",
    [GW_WORDS_PAGE_GLANCE_CAMBER] = "Wheel leans, {load}",
    [GW_WORDS_PAGE_GLANCE_HARSH] = "Harshness, felt",
    [GW_WORDS_PAGE_GLANCE_NOISE] = "Road noise, heard",
    [GW_WORDS_PAGE_GLANCE_PARTS] = "Parts",
    [GW_WORDS_PAGE_GLANCE_FIT] = "Fitting",
    [GW_WORDS_PAGE_GLANCE_TOTAL] = "In all",
    [GW_WORDS_PAGE_GLANCE_TAX] = "In all, with tax",
    [GW_WORDS_PAGE_GLANCE_NOTE] =
        "Front / rear. Turning: + in, − out. Leaning, to the road: − in at the top, + out. Harshness "
        "and noise: decibels over {kit}; 3 dB is plainly felt, 10 dB twice as loud (common practice).",
    [GW_WORDS_PAGE_COST_NOTE] =
        "Parts, fitting: what differs from {kit}, both sides; for {kit} itself, all new.",
    [GW_WORDS_PAGE_COST_PART] = "A plus sign behind a sum: some parts carry no figure.",
    [GW_WORDS_PAGE_NOTHING] = "none",

    /* What will stand it */
    [GW_WORDS_PAGE_STAND] = "What will stand it, and what will not",
    [GW_WORDS_PAGE_STAND_JUDGED] = "Joints judged",
    [GW_WORDS_PAGE_STAND_VERDICT] = "Under the loads of the case",
    [GW_WORDS_PAGE_STAND_NEAREST] = "Nearest to its limit",
    [GW_WORDS_PAGE_STAND_OF] = "{judged} of {all}",
    [GW_WORDS_PAGE_STAND_HOLDS] = "nothing judged is beyond its limit",
    [GW_WORDS_PAGE_STAND_CLOSE] = "nothing judged is beyond its limit, but close to it",
    [GW_WORDS_PAGE_STAND_UNKNOWN] = "not known",
    [GW_WORDS_PAGE_STAND_FAILS] = "will not stand it:",
    [GW_WORDS_PAGE_STAND_FAILURE] = "{joint}, {what} {value}, limit {limit}, {load}",
    [GW_WORDS_PAGE_STAND_AS_SET] = "as set",
    [GW_WORDS_PAGE_STAND_MORE] = "{count} more in the workshop’s copy",
    [GW_WORDS_PAGE_STAND_NEAR] = "{joint}, {percent} of it ({what})",
    [GW_WORDS_PAGE_STAND_NOTE] =
        "Judged, one wheel of each axle: bushes given by size and material (how far the wall"
        " is squeezed and sheared, in per cent of it) and spherical bearings (load, with a factor for"
        " shocks); as set, also tilt, press fits and thin walls. Not judged: joints given by their "
        "rates alone (to judge them: size and material), ball joints, arms, bolts, brackets. Materials "
        "scatter by a fifth, so above some 80 % of a "
        "limit nothing is sure. Most limits are common practice; keeping within them approves no "
        "part.",

    /* The wheel that moves */
    [GW_WORDS_PAGE_CHOOSE_KIT] = "Kit",
    [GW_WORDS_PAGE_CHOOSE_LOAD] = "Load",
    [GW_WORDS_PAGE_CHOOSE_AXLE] = "Wheel",
    [GW_WORDS_PAGE_FRONT_WHEEL] = "Front",
    [GW_WORDS_PAGE_REAR_WHEEL] = "Rear",
    [GW_WORDS_PAGE_SLIDE] = "Or set it yourself",
    [GW_WORDS_PAGE_SLIDE_BRAKE] = "Braking",
    [GW_WORDS_PAGE_SLIDE_LATERAL] = "Cornering",
    [GW_WORDS_PAGE_SLIDE_NOTE] = "Solved every {brake} g of braking and every {lateral} g of cornering, the "
                                 "drawing every {drawn} g; in between it moves on straight lines from one "
                                 "solved state to the next. Figures are the outer wheel's. Whether the tyres "
                                 "hold that much is not asked.",
    [GW_WORDS_PAGE_STATE_LOAD] = "{kit}, {axle} wheel, {load}",
    [GW_WORDS_PAGE_STATE_SLIDER] = "{kit}, outer {axle} wheel, braking {brake} g, cornering {lateral} g",
    [GW_WORDS_PAGE_STATE_SOLVED] = "solved state",
    [GW_WORDS_PAGE_STATE_BETWEEN] = "between solved states",
    [GW_WORDS_PAGE_STATE_LIFTS] = "not beyond {lateral} g of cornering here: a wheel lifts",
    [GW_WORDS_PAGE_STATE_NONE] = "this load does not act on this wheel",
    [GW_WORDS_PAGE_BEHIND] = "From behind",
    [GW_WORDS_PAGE_ABOVE] = "From above",
    [GW_WORDS_PAGE_GHOST] =
        "Right column and dashed needle: {kit} under the same load. In the drawing grey is at rest.",
    [GW_WORDS_PAGE_FIGURE] = "Figure",
    [GW_WORDS_PAGE_FIG_TOE_CHANGE] = "Toe change (+ in)",
    [GW_WORDS_PAGE_FIG_TOE] = "Toe",
    [GW_WORDS_PAGE_FIG_RIM] = "Toe change at the rim",
    [GW_WORDS_PAGE_FIG_CAMBER_CHANGE] = "Camber change (− in)",
    [GW_WORDS_PAGE_FIG_CAMBER] = "Camber to the body",
    [GW_WORDS_PAGE_FIG_ROAD] = "Camber to the road",
    [GW_WORDS_PAGE_FIG_X] = "Wheel moves forward",
    [GW_WORDS_PAGE_FIG_Y] = "Wheel moves outward",
    [GW_WORDS_PAGE_SHARES] = "Which bush moves the wheel most",
    [GW_WORDS_PAGE_SHARES_NOTE] = "Each bush’s part of the toe change of the kit and load chosen above.",
    [GW_WORDS_PAGE_SHARES_NONE] =
        "Choose a load above: parts by bush are calculated for the loads of the case.",
    [GW_WORDS_PAGE_SHARE_TRAVEL] = "wheel travel",
    [GW_WORDS_PAGE_SHARE_REST] = "all other bushes, large angles",
    [GW_WORDS_PAGE_NOSCRIPT] =
        "Buttons and sliders need scripts to be allowed; everything else on this page can be read without.",

    /* Charts */
    [GW_WORDS_PAGE_CHARTS_GRIP] = "What gives way",
    [GW_WORDS_PAGE_CHARTS_RIDE] = "What comes through from the road",
    [GW_WORDS_PAGE_CHARTS_SWEEP] = "From gentle to hard",
    [GW_WORDS_PAGE_BANDS_NOTE] = "Bounce is the body going up and down, shake is what you feel in seat and "
                                 "wheel, boom is what you hear.",
    [GW_WORDS_PAGE_GRIP_NOTE] = "Parts that pull opposite ways cancel; the sum is what the wheel does.",
    [GW_WORDS_PAGE_BUDGET_TITLE] = "Lean of the outer {axle} wheel to the road {load}",
    [GW_WORDS_PAGE_BUDGET_WHAT] = "Camber to the road by cause (deg)",
    [GW_WORDS_PAGE_BUDGET_X] = "camber to the road (deg, − is in at the top)",
    [GW_WORDS_PAGE_SIDES] = "Outer and inner wheel",
    [GW_WORDS_PAGE_SIDES_NOTE] = "{load}: outer / inner. Side force towards the inside of the corner; toe-in and "
                                 "the top outboard are plus, the camber is that to the road.",
    [GW_WORDS_PAGE_SIDES_KIT] = "Kit",
    [GW_WORDS_PAGE_SIDES_TRAVEL] = "Travel mm",
    [GW_WORDS_PAGE_SIDES_LOAD] = "Load N",
    [GW_WORDS_PAGE_SIDES_FORCE] = "Side force N",
    [GW_WORDS_PAGE_SIDES_TOE] = "Toe °",
    [GW_WORDS_PAGE_SIDES_CAMBER] = "Camber °",
    [GW_WORDS_PAGE_BUDGET_SETTING] = "setting",
    [GW_WORDS_PAGE_BUDGET_ROLL] = "body roll",
    [GW_WORDS_PAGE_BUDGET_TYRE] = "roll on tyres",
    [GW_WORDS_PAGE_BUDGET_TRAVEL] = "wheel travel",
    [GW_WORDS_PAGE_BUDGET_JACKING] = "jacking",
    [GW_WORDS_PAGE_BUDGET_BUSHES] = "bushes",
    [GW_WORDS_PAGE_NO_RIDE] = "Ride and noise are left out: the case does not give {what}.",
    [GW_WORDS_PAGE_NO_CHARTS] =
        "Charts are left out: gnuplot was not there when this page was made. The tables are complete.",

    /* How far to trust it */
    [GW_WORDS_PAGE_SHEET] = "Alignment sheet",
    [GW_WORDS_PAGE_SHEET_AXLE] = "{axle} wheels aim at {target}.",
    [GW_WORDS_PAGE_SHEET_CAMBER] = "camber {angle}",
    [GW_WORDS_PAGE_SHEET_TOE] = "toe {angle}",
    [GW_WORDS_PAGE_SHEET_CASTER] = "caster change {angle}",
    [GW_WORDS_PAGE_SHEET_CAMBER_SET] = "{axle} camber",
    [GW_WORDS_PAGE_SHEET_TOE_SET] = "{axle} toe",
    [GW_WORDS_PAGE_SHEET_LEFT] = ", left",
    [GW_WORDS_PAGE_SHEET_RIGHT] = ", right",
    [GW_WORDS_PAGE_SHEET_MET] = "Target",
    [GW_WORDS_PAGE_SHEET_REACHED] = "reached",
    [GW_WORDS_PAGE_SHEET_TOLERATED] = "within tolerance",
    [GW_WORDS_PAGE_SHEET_MISSED] = "missed",
    [GW_WORDS_PAGE_SHEET_NOTE] = "Each wheel, left and right alike: with the kit fitted and nothing adjusted "
                                 "→ with the adjusters of the case used as far as they go.",
    [GW_WORDS_PAGE_TRUST] = "What is estimated, and how far to trust it",
    [GW_WORDS_PAGE_TRUST_COMPARE] = "Differences between kits are surer than single figures: an error in a "
                                    "point, a mass or the body falls on all kits alike.",
    [GW_WORDS_PAGE_TRUST_RATES] = "Bush rates from size and hardness: 5 points of hardness (common practice) "
                                  "move the modulus by up to a fifth, and toe and camber changes with it.",
    [GW_WORDS_PAGE_TRUST_RIDE] = "Harshness and noise: one wheel, a rigid body on stiff brackets, up to 315 "
                                 "Hz; no prediction of a level in the cabin.",
    [GW_WORDS_PAGE_TRUST_RANGES] = " Harshness, about nine in ten of what brackets, bushes, links, lugs and "
                                   "the tyre's belt may make of it: {ranges}.",
    [GW_WORDS_PAGE_TRUST_RANGE] = "{kit} {low} to {high} dB",
    [GW_WORDS_PAGE_TRUST_BANDS] = "{count} figures of the car are not known exactly; {needed} of them make "
                                  "80 % of the band on toe. Too close "
                                  "to call means: within these bands either kit may turn the wheel less.",
    [GW_WORDS_PAGE_TRUST_CLOSE] = " Too close to call over all loads: {pairs}.",
    [GW_WORDS_PAGE_TRUST_PAIR] = "{kit} and {other}",
    [GW_WORDS_PAGE_TRUST_STATIC] = "Loads are steady, arms are rigid, and the give of tyre, wheel and hub is "
                                   "left out unless the case states it.",
    [GW_WORDS_PAGE_TRUST_WARNINGS] = "Warnings of the run",
    [GW_WORDS_PAGE_INPUTS] = "What went in",
    [GW_WORDS_PAGE_INPUT_CASE] = "Case",
    [GW_WORDS_PAGE_INPUT_FILE] = "File",
    [GW_WORDS_PAGE_INPUT_CAR] = "Car",
    [GW_WORDS_PAGE_INPUT_CAR_TEXT] =
        "{mass} kg, {front} % on the front wheels, centre of mass {height} mm up, wheelbase {base} mm",
    [GW_WORDS_PAGE_INPUT_WHEEL] = "{axle} wheel",
    [GW_WORDS_PAGE_INPUT_WHEEL_TEXT] = "static camber {camber}, toe {toe}, load {load} N, {joints} joints",
    [GW_WORDS_PAGE_INPUT_ROAD] = "Road",
    [GW_WORDS_PAGE_INPUT_ROAD_CLASS] = "class {class} (ISO 8608) at {speed} km/h",
    [GW_WORDS_PAGE_INPUT_ROAD_ROUGH] = "roughness as given at {speed} km/h",
    [GW_WORDS_PAGE_INPUT_BUMP] = ", bump {height} mm high and {length} mm long",
    [GW_WORDS_PAGE_INPUT_LOADS] = "Loads",
    [GW_WORDS_PAGE_CAUTIONS] = "Before anyone works on the car",

    /* For the workshop */
    [GW_WORDS_PAGE_SHOP_SETTINGS] = "Settings and order of work",
    [GW_WORDS_PAGE_SHOP_ORDER] = "Order of work (common practice)",
    [GW_WORDS_PAGE_SHOP_SET_TO] = "Adjusters, the same on both sides",
    [GW_WORDS_PAGE_SHOP_CENTRED] = "a bush with its bore in the middle",
    [GW_WORDS_PAGE_SHOP_MARK] =
        "{size} mm off centre, bolt at {left}° on the left and {right}° on the right, {view}",
    [GW_WORDS_PAGE_SHOP_AS_IT_IS] = "as it is",
    [GW_WORDS_PAGE_SHOP_LONGER] = "{turns} turns longer",
    [GW_WORDS_PAGE_SHOP_SHORTER] = "{turns} turns shorter",
    [GW_WORDS_PAGE_SHOP_SHIMS] = "{count} of {step} mm",
    [GW_WORDS_PAGE_SHOP_SHIMS_OUT] = "take out {count} of {step} mm",
    [GW_WORDS_PAGE_SHOP_NO_SHIMS] = "none",
    [GW_WORDS_PAGE_SHOP_LIMIT] = "(at its limit)",
    [GW_WORDS_PAGE_SHOP_VERDICTS] = "Will it move freely, fit and hold",
    [GW_WORDS_PAGE_SHOP_AT_MOST] = "{value} {unit}, at most {limit} {unit}",
    [GW_WORDS_PAGE_SHOP_AT_LEAST] = "{value} {unit}, at least {limit} {unit}",
    [GW_WORDS_PAGE_SHOP_HOLDS] = "holds",
    [GW_WORDS_PAGE_SHOP_FAILS] = "FAILS",
    [GW_WORDS_PAGE_SHOP_BUSHES] = "Bush tables",
    [GW_WORDS_PAGE_SHOP_FITTED] = "Which bush goes where",
    [GW_WORDS_PAGE_SHOP_FITTED_NOTE] = "How many of a joint there are on the car stands beside it.",
    [GW_WORDS_PAGE_SHOP_RATES] = "How stiff they are",
    [GW_WORDS_PAGE_SHOP_RATES_NOTE] = "Static rates at rest in the frame of the bush: e3 along its axis. "
                                      "Off-centre in mm, fitting in minutes.",
    [GW_WORDS_PAGE_SHOP_PEAKS] = "What they carry",
    [GW_WORDS_PAGE_SHOP_PEAKS_NOTE] = "The largest over the loads of the case, from the stress-free design "
                                      "position: force in kN · deflection in mm · rotation in degrees.",
    [GW_WORDS_PAGE_SHOP_JOINT] = "Joint",
    [GW_WORDS_PAGE_SHOP_COUNT] = "On the car",
    [GW_WORDS_PAGE_SHOP_BUSH] = "Bush",
    [GW_WORDS_PAGE_SHOP_E1] = "Radial e1 N/mm",
    [GW_WORDS_PAGE_SHOP_E2] = "Radial e2 N/mm",
    [GW_WORDS_PAGE_SHOP_AXIAL] = "Axial N/mm",
    [GW_WORDS_PAGE_SHOP_TILT1] = "Conical e1 N m/°",
    [GW_WORDS_PAGE_SHOP_TILT2] = "Conical e2 N m/°",
    [GW_WORDS_PAGE_SHOP_TWIST] = "Torsional N m/°",
    [GW_WORDS_PAGE_SHOP_OFFSET] = "Off-centre",
    [GW_WORDS_PAGE_SHOP_PRICE] = "Price",
    [GW_WORDS_PAGE_SHOP_MINUTES] = "Fitting",
    [GW_WORDS_PAGE_SHOP_NEAR] = "How near to its limit each works",
    [GW_WORDS_PAGE_SHOP_NEAR_NOTE] =
        "The figure nearest to its limit under any load of the case, in per cent of the limit: above "
        "100 % it does not hold. A dash: given by its rates, nothing is known of its inside. Bearings"
        " with the factor for shocks. Left out: peaks at bonded edges, voids, the uneven wall of an "
        "off-centre bush, the number of cycles.",
    [GW_WORDS_PAGE_SHOP_NEAR_SHEAR] = "shear",
    [GW_WORDS_PAGE_SHOP_NEAR_SQUEEZE] = "compression",
    [GW_WORDS_PAGE_SHOP_NEAR_TOTAL] = "total strain",
    [GW_WORDS_PAGE_SHOP_NEAR_PEAK] = "peak load",
    [GW_WORDS_PAGE_SHOP_NEAR_SPECIFIC] = "specific load",
    [GW_WORDS_PAGE_SHOP_BEYOND] =
        "{kit}, {axle} {joint} ({bush}) {load}: {what} {value}, limit {limit} ({source}).",
    [GW_WORDS_PAGE_SHOP_LIMIT_OF] = "Limit of {what}: {source}.",

    /* Charts that a customer sees */
    [GW_WORDS_CHART_CONTRIBUTIONS] = "Toe change by bush (deg, toe-in positive)",
    [GW_WORDS_CHART_CONTRIBUTIONS_BAND] =
        "Toe change by bush (deg, toe-in positive); the sum within \xC2\xB1 in 95 of 100 such cars",
    [GW_WORDS_CHART_SHARE] = "share of the toe change (deg, toe-in positive)",
    [GW_WORDS_CHART_TRAVEL] = "travel",
    [GW_WORDS_CHART_ALL_ELSE] = "all else",
    [GW_WORDS_CHART_TRADE] = "Toe movement (deg) against harshness over the first kit (dB)",
    [GW_WORDS_CHART_TRADE_X] = "harshness over the first kit (dB)",
    [GW_WORDS_CHART_TRADE_Y] = "toe movement, {load} (deg)",
    [GW_WORDS_CHART_TRADE_NOTE] = "down is steadier, right is harsher; an estimate to compare kits with",
    [GW_WORDS_CHART_TRADE_BAND] =
        "down is steadier, right is harsher; an estimate. Whiskers hold 95 of 100 such cars",
    [GW_WORDS_CHART_TRADE_CLOSE] = "down is steadier, right is harsher; an estimate. Whiskers hold 95 of 100 "
                                   "such cars; which is steadier is too close to call for some kits",
    [GW_WORDS_CHART_ROAD] = "Body force per road height (N/mm) over frequency",
    [GW_WORDS_CHART_FREQUENCY] = "frequency (Hz)",
    [GW_WORDS_CHART_ROAD_FORCE] = "body force per road height (N/mm)",
    [GW_WORDS_CHART_BOUNCE] = "bounce",
    [GW_WORDS_CHART_SHAKE] = "shake",
    [GW_WORDS_CHART_BOOM] = "boom",
    [GW_WORDS_CHART_BUMP] = "Largest net force on the body after a bump (N), and until a tenth of it is left (s): upper bar fore and aft, lower bar up and down",
    [GW_WORDS_CHART_BUMP_X] = "largest net force on the body (N)",
};

const char *gw_words_text(gw_words which)
{
    return (unsigned)which < GW_WORDS_COUNT ? WORDS[which] : "";
}

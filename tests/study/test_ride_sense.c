/* SPDX-License-Identifier: MIT */
/*
 * What an engineer expects of ride, as tests with their reasons, on every corner of the demonstration cars.
 * None of it is written into the model; where a kit surprises, one of these fails.
 */
#include "support/case_sample.h"
#include "support/check.h"

#include "giveway/casefile.h"
#include "giveway/compare.h"
#include "giveway/units.h"

#include <gsl/gsl_errno.h>
#include <math.h>
#include <string.h>

/* A corner of a demonstration car, and the bushes that hold its wheel along and across the car. */
typedef struct corner_words {
    const char *path;
    gw_axle axle;
    const char *soft;             /* the rubber bush that is soft fore and aft     */
    const char *along, *along_on; /* what makes it a bearing, and the joint        */
    const char *across, *across_on;
} corner_words;

static const corner_words CORNERS[] = {
    { "tests/cases/saloon-by-rule.json", GW_FRONT, "tension_rubber", "tension_bearing", "tension_inner",
      "link_bearing", "lateral_inner" },
    { "tests/cases/saloon-by-rule.json", GW_REAR, "trailing_rubber", "tension_bearing", "trailing_inner",
      "link_bearing", "lower_inner" },
    { "tests/cases/hatchback-by-rule.json", GW_FRONT, "arm_rear_rubber", "arm_bearing", "arm_rear", "arm_bearing",
      "arm_front" },
    { "tests/cases/hatchback-by-rule.json", GW_REAR, "trailing_rubber", "trailing_bearing", "trailing_front", "arm_bearing",
      "lower_inner" },
};
enum { N_CORNERS = sizeof CORNERS / sizeof *CORNERS, RUBBER = 0, POLY = 1, BEARING = 2 };

static void load_case(const char *path, gw_case *c)
{
    sample_load(path, c);
    assert_int_equal(gw_case_find_kit(c, "rubber"), RUBBER);
    assert_int_equal(gw_case_find_kit(c, "poly"), POLY);
    assert_int_equal(gw_case_find_kit(c, "bearing"), BEARING);
}

/* The first `n_kits` kits in one corner. */
static void ride(const gw_case *c, const corner_words *w, int n_kits, bool range, gw_ride_study *out)
{
    bool kits[GW_MAX_KITS] = { false };
    const gw_selection wanted = { .kits = kits, .only_axle = true, .axle = w->axle };
    const gw_ride_options options = { .no_curve = true, .no_obstacle = true, .no_range = !range };
    gw_error err = { 0 };
    for (int k = 0; k < n_kits; k++) kits[k] = true;
    if (gw_study_ride(c, &wanted, &options, out, &err) != GW_OK) fail_msg("%s", err.msg);
    assert_int_equal(out->n, n_kits);
}

static double fore_aft_hz(const gw_ride_result *r)
{
    return r->modes[r->wheel_fore_aft].hz;
}

/* A car whose wheel did not swing slowly fore and aft would be harsh over every joint of the road: 12 to 25
 * Hz in rubber is common practice. Vertical modes: body 1 to 2 Hz, wheel 10 to 15 Hz, common practice too. */
static void modes_lie_where_those_of_cars_lie(void **unused)
{
    (void)unused;
    for (int i = 0; i < N_CORNERS; i++) {
        gw_case c;
        gw_ride_study study;
        load_case(CORNERS[i].path, &c);
        ride(&c, &CORNERS[i], 1, false, &study);
        const gw_ride_result *r = &study.item[0].result;
        check_abs(fore_aft_hz(r), 18.5, 6.5, "fore-aft mode in rubber [Hz]");
        check_abs(r->modes[r->body].hz, 1.5, 0.5, "body [Hz]");
        check_abs(r->modes[r->wheel_vertical].hz, 12.5, 2.5, "wheel up and down [Hz]");
        gw_ride_study_free(&study);
        gw_case_free(&c);
    }
}

/* Less give and less loss on the way: more gets through. What nobody knows for sure moves all kits; of two
 * neighbours it may turn the order of what is heard round, so there only the nominal figures are asked. */
static void polyurethane_is_harsher_than_rubber_and_bearings_are_harsher_and_noisier_again(void **unused)
{
    (void)unused;
    for (int i = 0; i < N_CORNERS; i++) {
        gw_case c;
        gw_ride_study study;
        gw_ride_difference poly, bearing, over_rubber;
        load_case(CORNERS[i].path, &c);
        ride(&c, &CORNERS[i], 3, true, &study);
        gw_ride_compare(&study.item[POLY].result, &study.item[RUBBER].result, &poly);
        gw_ride_compare(&study.item[BEARING].result, &study.item[POLY].result, &bearing);
        gw_ride_compare(&study.item[BEARING].result, &study.item[RUBBER].result, &over_rubber);
        assert_true(poly.harshness > 1.0 && poly.harshness_low > 0.3);
        assert_true(poly.noise > 0.5);
        assert_true(bearing.harshness > 1.0);
        assert_true(bearing.noise > 3.0);
        assert_true(over_rubber.harshness_low > 2.0);
        assert_true(over_rubber.noise_low > 3.0);
        assert_true(fore_aft_hz(&study.item[POLY].result) > fore_aft_hz(&study.item[RUBBER].result));
        assert_true(fore_aft_hz(&study.item[BEARING].result) > fore_aft_hz(&study.item[POLY].result));
        gw_ride_study_free(&study);
        gw_case_free(&c);
    }
}

/* The wheel swings fore and aft on that bush: frequency rises with its rate, and above resonance the force
 * that gets through goes with the rate. Where the mode itself lies just inside the band (the rear of the
 * hatchback, 25 Hz), a little more rate moves it away from the strong end of the road and may take some
 * hundredths back. */
static void a_stiffer_fore_aft_bush_raises_the_fore_aft_mode_and_harshness(void **unused)
{
    (void)unused;
    for (int i = 0; i < N_CORNERS; i++) {
        gw_case c;
        double last_hz = 0.0, last_force = 0.0;
        load_case(CORNERS[i].path, &c);
        gw_given_rates *rates = &c.bushes[gw_case_find_bush(&c, CORNERS[i].soft)].rates;
        const gw_given_rates as_given = *rates;
        for (double times = 1.0; times < 4.5; times *= 1.25) {
            gw_ride_study study;
            for (int e = 0; e < 2; e++) rates->radial[e] = times * as_given.radial[e];
            ride(&c, &CORNERS[i], 1, false, &study);
            const gw_ride_result *r = &study.item[0].result;
            if (!(fore_aft_hz(r) > last_hz) ||
                !(r->harshness[0] > (fore_aft_hz(r) < 30.0 ? 0.97 : 1.0) * last_force))
                fail_msg("%s %s, %.3g times: %.4g Hz after %.4g, %.4g N after %.4g", CORNERS[i].path,
                         CORNERS[i].soft, times, fore_aft_hz(r), last_hz, r->harshness[0], last_force);
            last_hz = fore_aft_hz(r);
            last_force = r->harshness[0];
            gw_ride_study_free(&study);
        }
        gw_case_free(&c);
    }
}

static double harshness_with(gw_case *c, const corner_words *w, const char *joint, const char *bush)
{
    int *fits = &c->kits[RUBBER].fits[w->axle][gw_corner_find_joint(&c->corners[w->axle], joint)];
    int before = *fits;
    gw_ride_study study;
    *fits = gw_case_find_bush(c, bush);
    assert_true(*fits >= 0);
    ride(c, w, 1, false, &study);
    double force = study.item[0].result.harshness[0];
    gw_ride_study_free(&study);
    *fits = before;
    return force;
}

/* A bump pushes the wheel back and up and hardly sideways, so a bearing that holds it sideways is not in the
 * way. This is what makes a mixed kit worth having. */
static void a_stiff_lateral_link_changes_harshness_far_less_than_a_stiff_fore_aft_one(void **unused)
{
    (void)unused;
    for (int i = 0; i < N_CORNERS; i++) {
        const corner_words *w = &CORNERS[i];
        gw_case c;
        gw_ride_study study;
        load_case(w->path, &c);
        ride(&c, w, 1, false, &study);
        double base = study.item[0].result.harshness[0];
        double along = 20.0 * log10(harshness_with(&c, w, w->along_on, w->along) / base);
        double across = 20.0 * log10(harshness_with(&c, w, w->across_on, w->across) / base);
        if (!(along > 0.5 && fabs(across) < 0.5 * along))
            fail_msg("%s: %s %+.2f dB, %s %+.2f dB", w->path, w->along_on, along, w->across_on, across);
        gw_ride_study_free(&study);
        gw_case_free(&c);
    }
}

static double above_30_hz(const gw_ride_result *r)
{
    double square = 0.0;
    for (int n = 15; n <= GW_BAND_LAST; n++)
        square += r->band[n - GW_BAND_FIRST] * r->band[n - GW_BAND_FIRST];
    return sqrt(square);
}

/* A damper is a stiff rod to fast small movements; its mount decides what it passes. Comfort is decided
 * below. In a band that one lightly damped mode of the links fills (40 Hz in the saloon, 80 Hz in the
 * hatchback) the mount also takes away damping that the damper gave the mode: such a band may rise by less
 * than half a decibel. What the tyre's belt drives through the links at 50 to 100 Hz does not pass the
 * damper. */
static void a_soft_damper_mount_quietens_above_30_hz_and_hardly_moves_comfort(void **unused)
{
    (void)unused;
    for (int i = 0; i < N_CORNERS; i++) {
        gw_case c;
        gw_ride_study firm, soft;
        load_case(CORNERS[i].path, &c);
        ride(&c, &CORNERS[i], 1, false, &firm);
        c.corners[CORNERS[i].axle].damper.top_mount *= 0.5;
        ride(&c, &CORNERS[i], 1, false, &soft);
        const gw_ride_result *a = &firm.item[0].result, *b = &soft.item[0].result;
        for (int n = 15; n <= GW_BAND_LAST; n++) {
            double dB = 20.0 * log10(b->band[n - GW_BAND_FIRST] / a->band[n - GW_BAND_FIRST]);
            if (!(dB < 0.5)) fail_msg("%s: %g Hz rises by %.2f dB", CORNERS[i].path, gw_band_nominal(n), dB);
        }
        double fall = 20.0 * log10(above_30_hz(b) / above_30_hz(a));
        if (!(fall < -0.2)) fail_msg("%s: above 30 Hz %+.2f dB", CORNERS[i].path, fall);
        check_rel(b->comfort, a->comfort, 0.06, "comfort");
        gw_ride_study_free(&firm);
        gw_ride_study_free(&soft);
        gw_case_free(&c);
    }
}

/* No law follows the temperature: the figures must not move, and the user must be told. */
static void another_temperature_changes_no_figure_and_is_said(void **unused)
{
    (void)unused;
    gw_case c;
    gw_ride_study warm, cold;
    load_case(CORNERS[1].path, &c);
    ride(&c, &CORNERS[1], 1, false, &warm);
    assert_int_equal(warm.n_warnings, 0);
    c.ride.temperature = GW_ZERO_C - 55.0;
    ride(&c, &CORNERS[1], 1, false, &cold);
    check_abs(cold.item[0].result.harshness[0], warm.item[0].result.harshness[0], 0.0, "harshness");
    assert_true(cold.n_warnings >= 2);
    check_contains(cold.warning[0], "no law of a bush follows the temperature");
    check_contains(cold.warning[1], "-55 degrees C is below the -50");
    for (int i = 1; i < cold.n_warnings; i++) assert_null(strstr(cold.warning[i], "poly"));
    gw_ride_study_free(&warm);
    gw_ride_study_free(&cold);
    gw_case_free(&c);
}

int main(void)
{
    gsl_set_error_handler_off();
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(modes_lie_where_those_of_cars_lie),
        cmocka_unit_test(polyurethane_is_harsher_than_rubber_and_bearings_are_harsher_and_noisier_again),
        cmocka_unit_test(a_stiffer_fore_aft_bush_raises_the_fore_aft_mode_and_harshness),
        cmocka_unit_test(a_stiff_lateral_link_changes_harshness_far_less_than_a_stiff_fore_aft_one),
        cmocka_unit_test(a_soft_damper_mount_quietens_above_30_hz_and_hardly_moves_comfort),
        cmocka_unit_test(another_temperature_changes_no_figure_and_is_said),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}

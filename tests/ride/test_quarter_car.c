/* SPDX-License-Identifier: MIT */
/*
 * With links that do not give, the model is the two-mass quarter car of the textbooks. Closed forms:
 * A. G. Thompson; A. Hac (1985); Turkay & Akcay, J. Sound Vib. 282 (2005) (from memory). Other values
 * are those of the two-mass equations themselves, evaluated apart from this program.
 */
#include "ride/corners.h"
#include "ride/model.h"
#include "support/check.h"

#include <gsl/gsl_errno.h>
#include <math.h>

/* ms, mu, ks, c, kt and the closed-form rms values on class B at 20 m/s: body acceleration, travel, tyre
 * deflection. */
static const struct set {
    double ms, mu, ks, c, kt, acceleration, travel, tyre;
} SETS[] = {
    { 240, 36, 16000, 980, 160000, 0.708540, 0.00596481, 0.00225105 },
    { 400, 45, 25000, 1800, 220000, 0.659294, 0.00558854, 0.00203424 },
    { 300, 40, 20000, 1500, 200000, 0.740520, 0.00535117, 0.00204695 },
};

/*
 * The slope of the road pushes the wheel back and shakes the body fore and aft, which the textbook's car
 * does not have: at a great speed over a road that much smoother the bumps are the same and the slope is
 * nothing.
 */
static void without_slope(test_corner *t)
{
    t->ride.roughness *= t->ride.speed / 2e7;
    t->ride.speed = 2e7;
}

static void open_model(test_corner *t, gw_ride_model *model, gw_arena *arena)
{
    gw_error err = { 0 };
    if (gw_ride_model_open(model, &t->corner, t->fit, &t->ride, arena, &err) != GW_OK)
        fail_msg("%s", err.msg);
}

typedef struct answers {
    double acceleration, travel, tyre, force;
} answers;

/* Sums of squares over frequency by the trapezium rule in log f, dense and simple. */
static answers mean_squares(gw_ride_model *model, double low, double high)
{
    enum { BATCHES = 2000 };
    const double g = gw_road_spectrum(model->settings->roughness, model->settings->speed, 1.0);
    const int n = BATCHES * GW_LANES;
    gw_lanes x[64];
    answers sum = { 0 };
    for (int b = 0; b < BATCHES; b++) {
        double hz[GW_LANES];
        for (int l = 0; l < GW_LANES; l++) hz[l] = low * pow(high / low, (b * GW_LANES + l) / (n - 1.0));
        gw_ride_respond_hz(model, hz, x);
        for (int l = 0; l < GW_LANES; l++) {
            int i = b * GW_LANES + l;
            double w2 = pow(2 * GW_PI * hz[l], 2);
            double weight = log(high / low) / (n - 1.0) * hz[l] * g / (hz[l] * hz[l]);
            if (i == 0 || i == n - 1) weight *= 0.5;
            double complex body = gw_lanes_get(&x[model->chassis_z], l),
                           wheel = gw_lanes_get(&x[model->wheel + 2], l);
            sum.acceleration += weight * pow(w2 * cabs(body), 2);
            sum.travel += weight * pow(cabs(body - wheel), 2);
            sum.tyre += weight * pow(cabs(wheel - 1.0), 2);
            sum.force += weight * pow(model->chassis_mass * w2 * cabs(body), 2);
        }
    }
    return sum;
}

static void rms_values_match_the_closed_forms(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof SETS / sizeof *SETS; i++) {
        const struct set *s = &SETS[i];
        test_corner t;
        gw_arena arena = { 0 };
        gw_ride_model model;
        quarter_car(&t, s->ms, s->mu, s->ks, s->c, s->kt);
        open_model(&t, &model, &arena);
        check_rel(model.chassis_mass, s->ms, 1e-12, "sprung mass");
        check_from(
            "the two-mass quarter car in closed form: A. G. Thompson; A. Hac (1985); Turkay and Akcay, J. "
            "Sound Vib. 282 (2005) (from memory)");
        answers got = mean_squares(&model, 1e-4, 1e8);
        check_about("%g over %g kg, %g N/m", s->ms, s->mu, s->ks);
        check_abs(sqrt(got.acceleration), s->acceleration, 1e-6, "body acceleration [m/s2]");
        check_abs(sqrt(got.travel), s->travel, 1e-8, "suspension travel [m]");
        check_abs(sqrt(got.tyre), s->tyre, 1e-8, "tyre deflection [m]");
        gw_arena_free(&arena);
    }
}

static void band_limited_acceleration_matches(void **state)
{
    (void)state;
    check_from("the two-mass equations, evaluated apart from this program");
    test_corner t;
    gw_arena arena = { 0 };
    gw_ride_model model;
    quarter_car(&t, 300, 40, 20000, 1500, 200000);
    open_model(&t, &model, &arena);
    check_abs(sqrt(mean_squares(&model, 0.4, 100).acceleration), 0.74015, 5e-6,
              "acceleration, 0.4 to 100 Hz [m/s2]");
    check_abs(sqrt(mean_squares(&model, 0.5, 80).acceleration), 0.73974, 5e-6,
              "acceleration, 0.5 to 80 Hz [m/s2]");
    check_abs(sqrt(mean_squares(&model, 20, 80).acceleration), 0.11152, 5e-6,
              "acceleration, 20 to 80 Hz [m/s2]");
    check_abs(sqrt(mean_squares(&model, 20, 80).force), 33.457, 5e-4, "force, 20 to 80 Hz [N]");
    gw_arena_free(&arena);
}

/* Undamped frequencies and damping of the third set, from its 2 x 2 eigenproblem. */
static void modes_of_the_quarter_car(void **state)
{
    (void)state;
    check_from("the two-mass equations, evaluated apart from this program");
    test_corner t;
    gw_ride_result r = { 0 };
    gw_error err = { 0 };
    quarter_car(&t, 300, 40, 20000, 1500, 200000);
    if (gw_ride_solve(&t.corner, t.fit, &t.ride, NULL, &r, &err) != GW_OK) fail_msg("%s", err.msg);
    const gw_ride_mode *body = &r.modes[r.body], *wheel = &r.modes[r.wheel_vertical];
    check_abs(body->hz, 1.23833, 5e-6, "body [Hz]");
    check_abs(wheel->hz, 11.80982, 5e-6, "wheel [Hz]");
    check_abs(body->zeta, 0.26792, 5e-6, "body damping");
    check_abs(wheel->zeta, 0.26178, 5e-6, "wheel damping");
    /* The size of the pole is what tables print as the damped mode's frequency. */
    check_abs(body->damped_hz / sqrt(1 - body->zeta * body->zeta), 1.25717, 5e-6, "body, size of pole [Hz]");
    check_abs(wheel->damped_hz / sqrt(1 - wheel->zeta * wheel->zeta), 11.63280, 5e-6,
              "wheel, size of pole [Hz]");
    check_contains(body->words, "body vertical");
    check_contains(wheel->words, "wheel vertical");
    gw_ride_result_free(&r);
}

/* Sayers' reference quarter car (1995): ks/ms 63.3, kt/ms 653, c/ms 6.0, mu/ms 0.15 (from memory). */
static void reference_quarter_car_of_road_roughness(void **state)
{
    (void)state;
    check_from(
        "M. W. Sayers, TRR 1501 (1995), reference quarter car (from memory); its equations evaluated apart");
    test_corner t;
    gw_ride_result r = { 0 };
    gw_arena arena = { 0 };
    gw_ride_model model;
    quarter_car(&t, 100, 15, 6330, 600, 65300);
    t.ride.roughness = gw_road_class_roughness('A');
    t.ride.speed = 80.0 / 3.6;
    assert_int_equal(gw_ride_solve(&t.corner, t.fit, &t.ride, NULL, &r, NULL), GW_OK);
    check_abs(r.modes[r.body].hz, 1.20830, 5e-6, "body [Hz]");
    check_abs(r.modes[r.wheel_vertical].hz, 11.00473, 5e-6, "wheel [Hz]");
    open_model(&t, &model, &arena);
    check_abs(sqrt(mean_squares(&model, 1e-4, 2e5).acceleration), 0.405512, 1e-6, "acceleration [m/s2]");
    gw_arena_free(&arena);
    gw_ride_result_free(&r);
}

/* A seat with a bush of 300 N/mm, loss factor 0.15, between the upright and what stands on it. */
static void stand_on_bush(test_corner *t, bool spring_too)
{
    int seat = add_member(t, "seat", 0.0);
    gw_bush_law law = test_law(1e11, 1e11, 300e3, 1e11, 1e11, 0.15);
    add_test_joint(t, "seat", GW_UPRIGHT, seat, t->corner.damper.at, gw_v3(0, 0, 1), law);
    t->corner.damper.body = seat;
    if (spring_too) t->corner.spring.body = seat;
}

static const struct path_row {
    double hz, h[3], f[3]; /* rigid, damper on a bush, all on a bush */
} PATHS[] = {
    { 1, { 1.977366, 1.975730, 2.107150 }, { 23419.0, 23399.6, 24956.1 } },
    { 2, { 0.804666, 0.844947, 0.753087 }, { 38120.3, 40028.6, 35676.8 } },
    { 5, { 0.202164, 0.203407, 0.182773 }, { 59858.4, 60226.5, 54116.9 } },
    { 10, { 0.148341, 0.136191, 0.132582 }, { 175687.7, 161297.6, 157024.1 } },
    { 12, { 0.116985, 0.127431, 0.127554 }, { 199514.4, 217329.5, 217538.7 } },
    { 15, { 0.053329, 0.067889, 0.061506 }, { 142111.2, 180909.4, 163901.6 } },
    { 20, { 0.017452, 0.018949, 0.016638 }, { 82676.2, 89767.9, 78823.1 } },
    { 30, { 0.004290, 0.003594, 0.003217 }, { 45730.4, 38309.1, 34293.5 } },
    { 50, { 0.000847, 0.000490, 0.000449 }, { 25068.8, 14512.7, 13301.2 } },
    { 80, { 0.000201, 0.000078, 0.000073 }, { 15205.7, 5938.3, 5513.0 } },
};

static void bush_in_the_path_matches_the_two_mass_equations(void **state)
{
    (void)state;
    for (int which = 0; which < 3; which++) {
        test_corner t;
        gw_arena arena = { 0 };
        gw_ride_model model;
        gw_lanes x[64];
        quarter_car(&t, 300, 40, 20000, 1500, 200000);
        if (which > 0) stand_on_bush(&t, which == 2);
        open_model(&t, &model, &arena);
        for (size_t i = 0; i < sizeof PATHS / sizeof *PATHS; i++) {
            double hz[GW_LANES], w = 2 * GW_PI * PATHS[i].hz;
            for (int l = 0; l < GW_LANES; l++) hz[l] = PATHS[i].hz;
            gw_ride_respond_hz(&model, hz, x);
            double h = cabs(gw_lanes_get(&x[model.chassis_z], 0));
            check_abs(h, PATHS[i].h[which], 6e-7, "transmissibility");
            check_abs(300 * w * w * h, PATHS[i].f[which], 0.06, "force into the body");
        }
        gw_arena_free(&arena);
    }
}

static void weighted_comfort_matches_with_and_without_a_bush(void **state)
{
    (void)state;
    check_from("the two-mass equations, evaluated apart from this program, weighted as ISO 2631-1");
    const double weighted[3] = { 0.62679, 0.64037, 0.60545 };
    for (int which = 0; which < 3; which++) {
        test_corner t;
        gw_ride_result r = { 0 };
        quarter_car(&t, 300, 40, 20000, 1500, 200000);
        if (which > 0) stand_on_bush(&t, which == 2);
        without_slope(&t);
        assert_int_equal(gw_ride_solve(&t.corner, t.fit, &t.ride, NULL, &r, NULL), GW_OK);
        check_about("%s", which == 0   ? "no bush"
                          : which == 1 ? "damper on a bush"
                                       : "spring and damper on a bush");
        check_abs(r.comfort, weighted[which], 5.1e-6, "weighted acceleration [m/s2]");
        gw_ride_result_free(&r);
    }
}

/* rms goes with the square root of roughness x speed: A halves, C doubles, twice the speed is root two. */
static void comfort_scales_with_road_and_speed(void **state)
{
    (void)state;
    const double factor[3] = { 0.5, 2.0, sqrt(2.0) };
    for (int i = 0; i < 3; i++) {
        test_corner t;
        gw_ride_result r = { 0 };
        quarter_car(&t, 300, 40, 20000, 1500, 200000);
        without_slope(&t);
        t.ride.roughness *= i == 0 ? 0.25 : i == 1 ? 4.0 : 1.0;
        t.ride.speed *= i == 2 ? 2.0 : 1.0;
        assert_int_equal(gw_ride_solve(&t.corner, t.fit, &t.ride, NULL, &r, NULL), GW_OK);
        check_abs(r.comfort, 0.62679 * factor[i], 1.1e-5, "scaled");
        gw_ride_result_free(&r);
    }
}

/* A mass on spring and damper over a stiff, light wheel: S. S. Rao, Mechanical Vibrations, base excitation.
 */
static void single_degree_transmissibility(void **state)
{
    (void)state;
    check_from("S. S. Rao, Mechanical Vibrations, base excitation");
    const double r[] = { 0.5, 1, 2, 3, 5, 10 };
    const double zeta[] = { 0.05, 0.1, 0.2, 0.3 };
    const double table[6][4] = {
        { 1.33204, 1.32823, 1.31383, 1.29248 }, { 10.04988, 5.09902, 2.69258, 1.94365 },
        { 0.33918, 0.35586, 0.41246, 0.48344 }, { 0.13041, 0.14537, 0.19310, 0.25111 },
        { 0.04657, 0.05887, 0.09285, 0.13074 }, { 0.01428, 0.02258, 0.04161, 0.06133 }
    };
    const double m = 300, k = 20000, wn = sqrt(k / m);
    for (int z = 0; z < 4; z++) {
        test_corner t;
        gw_arena arena = { 0 };
        gw_ride_model model;
        gw_lanes x[64];
        quarter_car(&t, m, 1e-3, k, 2 * zeta[z] * sqrt(k * m), 1e11);
        open_model(&t, &model, &arena);
        double hz[GW_LANES];
        for (int l = 0; l < 6; l++) hz[l] = r[l] * wn / (2 * GW_PI);
        hz[6] = hz[7] = sqrt(2.0) * wn / (2 * GW_PI);
        gw_ride_respond_hz(&model, hz, x);
        for (int l = 0; l < 6; l++) {
            check_about("r %g, zeta %g", r[l], zeta[z]);
            check_abs(cabs(gw_lanes_get(&x[model.chassis_z], l)), table[l][z], 6e-6, "transmissibility");
        }
        check_about("zeta %g", zeta[z]);
        check_abs(cabs(gw_lanes_get(&x[model.chassis_z], 6)), 1.0, 1e-5, "one at root two");
        gw_arena_free(&arena);
    }
}

int main(void)
{
    gsl_set_error_handler_off();
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(rms_values_match_the_closed_forms),
        cmocka_unit_test(band_limited_acceleration_matches),
        cmocka_unit_test(modes_of_the_quarter_car),
        cmocka_unit_test(reference_quarter_car_of_road_roughness),
        cmocka_unit_test(bush_in_the_path_matches_the_two_mass_equations),
        cmocka_unit_test(weighted_comfort_matches_with_and_without_a_bush),
        cmocka_unit_test(comfort_scales_with_road_and_speed),
        cmocka_unit_test(single_degree_transmissibility),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}

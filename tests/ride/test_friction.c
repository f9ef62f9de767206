/* SPDX-License-Identifier: MIT */
/*
 * Friction, movement and draws on quarter cars, against the two-mass model written out here: dashpots by
 * statistical linearisation, what crackle adds, a bush at its own movement.
 */
#include "ride/corners.h"
#include "support/check.h"

#include "giveway/ride_unknowns.h"
#include "ride/crackle.h"

#include <gsl/gsl_errno.h>
#include <math.h>

enum { STEPS = 40000 };
static const double MS = 331.0, MU = 43.7, KS = 21.3e3, C = 1370.0, KT = 213e3, F = 57.0;

/* What the two masses do per metre of road, or under a force f on the damper's line. */
typedef struct two_mass {
    double complex body, wheel;
} two_mass;

/* `link`: complex stiffness between both masses; `road` and `inside`: what drives. */
static two_mass solve_two(double w, double complex link, double road, double complex inside)
{
    double complex a = link - MS * w * w, d = link + KT - MU * w * w, det = a * d - link * link;
    double complex on_body = inside, on_wheel = KT * road - inside;
    return (two_mass){ (on_body * d + on_wheel * link) / det, (on_wheel * a + on_body * link) / det };
}

static double step_of(double low, double high)
{
    return log(high / low) / STEPS;
}

static double road_at(const gw_ride *r, double f)
{
    return gw_road_spectrum(r->roughness, r->speed, f);
}

/* rms of speed and acceleration of wheel against body, 0.5 to 315 Hz, with a dashpot c. */
static void relative(const gw_ride *r, double c, double *speed, double *acceleration)
{
    double v = 0, a = 0, h = step_of(0.5, 315);
    for (int i = 0; i < STEPS; i++) {
        double f = 0.5 * exp(h * (i + 0.5)), w = 2 * GW_PI * f;
        two_mass m = solve_two(w, KS + w * c * (double complex)_Complex_I, 1.0, 0.0);
        double square = pow(cabs(m.wheel - m.body), 2) * road_at(r, f) * f * h;
        v += w * w * square;
        a += w * w * w * w * square;
    }
    *speed = sqrt(v);
    *acceleration = sqrt(a);
}

static gw_ride_result solve(test_corner *t, bool range)
{
    const gw_ride_options options = { .no_curve = true, .no_obstacle = true, .no_range = !range };
    gw_ride_result r = { 0 };
    gw_error err = { 0 };
    if (gw_ride_solve(&t->corner, t->fit, &t->ride, &options, &r, &err) != GW_OK) fail_msg("%s", err.msg);
    return r;
}

static void damper_friction_is_the_dashpot_of_statistical_linearisation(void **unused)
{
    (void)unused;
    test_corner t;
    double speed, acceleration, c = 100.0;
    quarter_car(&t, MS, MU, KS, C, KT);
    t.corner.damper.friction = F;
    gw_ride_result r = solve(&t, false);
    for (int i = 0; i < 60; i++) {
        relative(&t.ride, C + c, &speed, &acceleration);
        c = sqrt(2.0 / GW_PI) * F / speed;
    }
    check_from("J. B. Roberts, P. D. Spanos, Random Vibration and Statistical Linearization (1990): Coulomb "
               "friction");
    assert_true(r.settled && r.n_sliders == 1 && !r.sliders[0].sticks);
    check_rel(r.sliders[0].damping, c, 1e-5, "dashpot [N s/m]");
    check_rel(r.sliders[0].speed, speed, 1e-5, "slip speed [m/s]");
    check_rel(r.reversals, acceleration / (GW_PI * speed), 1e-5, "reversals a second");
    assert_string_equal(r.sliders[0].name, "damper");
    gw_ride_result_free(&r);
}

/* Body force 20 to 200 Hz, spring and damper apart, by the road and by the jumps of the damper's friction. */
static void crackle_drives_the_corner_besides_the_road(void **unused)
{
    (void)unused;
    test_corner t;
    double speed, acceleration, all = 0, alone = 0, comfort = 0, h = step_of(20, 200);
    quarter_car(&t, MS, MU, KS, C, KT);
    t.corner.damper.friction = F;
    gw_ride_result r = solve(&t, false);
    double c = C + r.sliders[0].damping;
    relative(&t.ride, c, &speed, &acceleration);
    for (int i = 0; i < STEPS; i++) {
        double f = 20.0 * exp(h * (i + 0.5)), w = 2 * GW_PI * f;
        double complex dash = w * c * (double complex)_Complex_I;
        two_mass by_road = solve_two(w, KS + dash, 1.0, 0.0), jump = solve_two(w, KS + dash, 0.0, F);
        double complex x = by_road.wheel - by_road.body, y = jump.wheel - jump.body;
        double squares = (KS * KS + pow(cabs(dash), 2)) * pow(cabs(x), 2) * road_at(&t.ride, f);
        double crackled = pow(cabs(KS * y), 2) + pow(cabs(dash * y + F), 2);
        double spectrum = gw_crackle_spectrum(acceleration / (GW_PI * speed), f);
        alone += crackled * spectrum * f * h;
        all += (squares + crackled * spectrum) * f * h;
    }
    h = step_of(0.5, 80);
    for (int i = 0; i < STEPS; i++) {
        double f = 0.5 * exp(h * (i + 0.5)), w = 2 * GW_PI * f;
        double complex dash = w * c * (double complex)_Complex_I;
        two_mass by_road = solve_two(w, KS + dash, 1.0, 0.0), jump = solve_two(w, KS + dash, 0.0, F);
        double squares = pow(cabs(by_road.body), 2) * road_at(&t.ride, f) +
                         pow(cabs(jump.body), 2) * gw_crackle_spectrum(acceleration / (GW_PI * speed), f);
        comfort += pow(w, 4) * pow(gw_weight_wk(f), 2) * squares * f * h;
    }
    check_rel(r.crackle[0], sqrt(alone), 2e-5, "crackle felt [N]");
    assert_string_equal(r.paths[1].name, "spring"); /* the guide carries what pushes the wheel back */
    check_rel(hypot(r.paths[1].force, r.paths[2].force), sqrt(all), 2e-5, "force of spring and damper [N]");
    check_rel(r.comfort, sqrt(comfort), 1e-3, "comfort, which has a little fore-aft in it besides [m/s2]");
    assert_true(alone > 0.001 * all);
    gw_ride_result_free(&r);
}

/* Half of it is lost where the damper's top mount winds up first; a slider that hardly slips does not jump.
 */
static void a_damper_that_sticks_does_not_crackle(void **unused)
{
    (void)unused;
    test_corner t;
    quarter_car(&t, MS, MU, KS, C, KT);
    t.corner.damper.friction = 30000.0;
    t.corner.damper.top_mount = 200e3;
    t.corner.wheel.tyre_damping = 3000.0; /* with a damper that does not move, nothing else takes power out */
    gw_ride_result r = solve(&t, false);
    assert_true(r.settled);
    assert_true(r.sliders[0].sticks);
    check_rel(r.sliders[0].damping, sqrt(2.0 / GW_PI) * 30000.0 / 5e-4, 1e-12, "dashpot at the slowest slip");
    check_abs(r.crackle[0], 0.0, 0.0, "crackle");
    gw_ride_result_free(&r);
}

/* Of a sign of a Gaussian speed linearisation leaves 1 - 2/pi (arcsine law); its tail is that of jumps of
 * two. */
static void crackle_has_the_power_and_the_tail_of_the_arcsine_law(void **unused)
{
    (void)unused;
    const double rate = 23.7;
    double sum = 0, h = step_of(1e-4, 1e6);
    check_from("J. H. Van Vleck, D. Middleton, Proc. IEEE 54 (1966): arcsine law of the clipped process");
    for (int i = 0; i < STEPS; i++) {
        double f = 1e-4 * exp(h * (i + 0.5));
        sum += gw_crackle_spectrum(rate, f) * f * h;
    }
    check_rel(sum, 1.0 - 2.0 / GW_PI, 1e-4, "power that linearisation leaves");
    check_rel(gw_crackle_spectrum(rate, 1e5) * 1e10, 2.0 * rate / (GW_PI * GW_PI), 1e-6, "tail");
}

/* The transform of a force that goes from -1 to 1 along a parabola in time, by its integral. */
static void a_wound_up_slider_jumps_by_its_ramp(void **unused)
{
    (void)unused;
    for (double x = 0.37; x < 30.0; x *= 2.3) {
        double complex sum = 0.0, ramp = gw_crackle_ramp(x);
        for (int i = 0; i < STEPS; i++) {
            double s = (i + 0.5) / STEPS; /* rate of the jump 2 s over its time: integral of 2 s e^(-ixs) */
            sum += 2.0 * s * cexp(-(double complex)_Complex_I * x * s) / STEPS;
        }
        check_abs(creal(ramp), creal(sum), 1e-7, "real part");
        check_abs(cimag(ramp), cimag(sum), 1e-7, "imaginary part");
    }
    check_abs(cabs(gw_crackle_ramp(1e-4) - 1.0), 0.0, 1e-4, "a slow one is a jump");
}

/* A rubber bush along the spring: x^2 = 2 var u, u its own deflection where a bracket gives, too. */
static void a_bush_is_taken_at_its_own_movement(void **unused)
{
    (void)unused;
    for (int with_bracket = 0; with_bracket < 2; with_bracket++) {
        test_corner t;
        double rate = 7.1e3, bracket = 11.3e3, sum = 0, h = step_of(0.5, 315);
        quarter_car(&t, MS, MU, KS, C, KT);
        gw_bush_law law = test_law(0, 0, rate, 0, 0, 0.0);
        law.rubber_length = 0.04;
        law.rubber_radius = 0.015;
        law.elastic = true;
        add_test_joint(&t, "rubber", GW_CHASSIS, GW_UPRIGHT, t.corner.wheel.centre, gw_v3(0, 0, 1), law);
        t.ride.left_out[GW_RIDE_AMPLITUDE] = true;
        if (with_bracket) t.joints[1].bracket = bracket;
        t.ride.bracket_loss = 0.0;
        double share = with_bracket ? bracket / (bracket + rate) : 1.0;
        gw_ride_result r = solve(&t, false);
        for (int i = 0; i < STEPS; i++) {
            double f = 0.5 * exp(h * (i + 0.5)), w = 2 * GW_PI * f;
            two_mass m = solve_two(w, KS + rate * share + w * C * (double complex)_Complex_I, 1.0, 0.0);
            sum += pow(cabs(m.wheel - m.body) * share, 2) * road_at(&t.ride, f) * f * h;
        }
        assert_int_equal(r.n_movements, 1);
        check_rel(r.movements[0].amplitude, sqrt(2.0 * sum), 2e-5, "amplitude [m]");
        t.ride.left_out[GW_RIDE_AMPLITUDE] = false;
        t.ride.amplitude = 0.3e-3;
        gw_ride_result_free(&r);
        r = solve(&t, false);
        check_rel(r.movements[0].amplitude, 0.3e-3, 0.0, "as the case gives it");
        gw_ride_result_free(&r);
    }
}

/* An arm's front bush, alike in all directions, so that its axis changes nothing but how turning counts. */
static double amplitude_of(gw_vec3 axis, double radius, double length)
{
    test_corner t;
    double_wishbone(&t, rubber_rates());
    t.fit[LOWER_FRONT].law = test_law(4e6, 4e6, 4e6, 50, 50, 0.1);
    t.fit[LOWER_FRONT].law.rubber_radius = radius;
    t.fit[LOWER_FRONT].law.rubber_length = length;
    t.joints[LOWER_FRONT].frame = test_frame(axis, fabs(axis.z) > 0.5 ? gw_v3(1, 0, 0) : gw_v3(0, 0, 1));
    t.ride.left_out[GW_RIDE_AMPLITUDE] = true;
    gw_ride_result r = solve(&t, false);
    double amplitude = r.movements[0].amplitude;
    gw_ride_result_free(&r);
    return amplitude;
}

/* Turning about e3 counts by the mean radius squared, tilting by a twelfth of the length squared. */
static void turning_counts_by_the_radius_and_tilting_by_the_length(void **unused)
{
    (void)unused;
    const gw_vec3 x = { 1, 0, 0 }, y = { 0, 1, 0 }, z = { 0, 0, 1 };
    const double large = 30.0, none = 1e-9; /* so large that nothing but turning counts */
    double about_x = amplitude_of(x, large, none), about_y = amplitude_of(y, large, none);
    double tilted = amplitude_of(z, none, large);
    check_rel(tilted * tilted * 12.0, about_x * about_x + about_y * about_y, 1e-5,
              "x and y of a bush along z");
    assert_true(about_x > 3.0 * about_y);
}

static void draws_are_an_orthogonal_design_of_two_levels(void **unused)
{
    (void)unused;
    double u[GW_RIDE_DRAWS][GW_UNKNOWNS];
    check_from(
        "R. L. Plackett, J. P. Burman, Biometrika 33 (1946) 305: columns of eight runs are orthogonal");
    for (int i = 0; i < GW_RIDE_DRAWS; i++) gw_draw_levels(i, u[i]);
    for (int j = 0; j < GW_UNKNOWNS; j++)
        for (int k = 0; k < GW_UNKNOWNS; k++) {
            double sum = 0, mean = 0;
            for (int i = 0; i < GW_RIDE_DRAWS; i++) {
                sum += u[i][j] * u[i][k];
                mean += u[i][j];
            }
            check_abs(sum, j == k ? 8.0 / 3.0 : 0.0, 1e-12, "variance of a uniform deviate, eightfold");
            check_abs(mean, 0.0, 1e-12, "mean");
        }
}

static void ends_of_the_draws_are_those_of_the_contract(void **unused)
{
    (void)unused;
    const double low[GW_UNKNOWNS] = { -1, -1, -1, -1, -1, -1, -1 },
                 high[GW_UNKNOWNS] = { 1, 1, 1, 1, 1, 1, 1 };
    gw_ride_draw a = gw_draw_at(low), b = gw_draw_at(high);
    check_abs(a.bracket, 0.5, 1e-12, "brackets at half");
    check_abs(b.bracket, 2.0, 1e-12, "brackets at twice");
    check_abs(a.bracket_loss, 0.02, 1e-12, "least loss");
    check_abs(b.bracket_loss, 0.3, 1e-12, "most loss");
    check_abs(a.kept * b.kept, 1.0, 1e-12, "bushes kept");
    check_abs(b.changed, 1.3, 1e-12, "bushes changed");
    check_abs(b.loss, 2.0, 1e-12, "their loss");
    check_abs(a.give, 0.0, 1e-18, "links and lugs rigid");
    check_abs(b.give, 0.04e-6, 1e-15, "0.04 mm/kN");
    check_abs(b.belt, 1.15, 1e-12, "belt");
}

/* One sweep is not enough for friction to settle: the figures are left out, and it is said what wavers. */
static void what_does_not_settle_is_said_and_left_out(void **unused)
{
    (void)unused;
    test_corner t;
    const gw_ride_options options = { .no_curve = true, .passes = 2 };
    gw_ride_result r = { 0 };
    double_wishbone(&t, rubber_rates());
    t.corner.damper.friction = F;
    assert_int_equal(gw_ride_solve(&t.corner, t.fit, &t.ride, &options, &r, NULL), GW_OK);
    assert_false(r.settled);
    assert_true(isnan(r.harshness[0]) && isnan(r.comfort) && isnan(r.noise[0]) && isnan(r.band[3]));
    check_contains(r.wavers, "the slip of damper wavers between");
    check_contains(r.warnings[0], "friction does not settle");
    gw_ride_result_free(&r);
}

int main(void)
{
    gsl_set_error_handler_off();
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(damper_friction_is_the_dashpot_of_statistical_linearisation),
        cmocka_unit_test(crackle_drives_the_corner_besides_the_road),
        cmocka_unit_test(a_damper_that_sticks_does_not_crackle),
        cmocka_unit_test(crackle_has_the_power_and_the_tail_of_the_arcsine_law),
        cmocka_unit_test(a_wound_up_slider_jumps_by_its_ramp),
        cmocka_unit_test(a_bush_is_taken_at_its_own_movement),
        cmocka_unit_test(turning_counts_by_the_radius_and_tilting_by_the_length),
        cmocka_unit_test(draws_are_an_orthogonal_design_of_two_levels),
        cmocka_unit_test(ends_of_the_draws_are_those_of_the_contract),
        cmocka_unit_test(what_does_not_settle_is_said_and_left_out),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}

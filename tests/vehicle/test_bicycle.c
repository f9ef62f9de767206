/* SPDX-License-Identifier: MIT */
/* The car on one track against textbooks' closed forms, and against its differential equation. */
#include "support/check.h"

#include "giveway/bicycle.h"
#include "giveway/units.h"

#include <math.h>

/* Invented; K = 0.9 deg/g of understeer or so. */
static const gw_bicycle UNDER = { 1513, 2287, { 1.217, 1.431 }, { 91300, 101700 } };
/* The same with the axles' stiffnesses the wrong way round. */
static const gw_bicycle OVER = { 1513, 2287, { 1.431, 1.217 }, { 101700, 91300 } };

/* Gillespie, Fundamentals of Vehicle Dynamics (SAE, 1992), ch. 6: K = W_f/C_f - W_r/C_r [deg/g];
 * characteristic speed sqrt(57.3 L g/K), critical speed sqrt(-57.3 L g/K). */
static double gillespie_gradient(const gw_bicycle *b)
{
    double length = b->arm[GW_FRONT] + b->arm[GW_REAR], weight = b->mass * GW_G0;
    double per_deg = GW_PI / 180.0;
    return weight * b->arm[GW_REAR] / length / (b->stiffness[GW_FRONT] * per_deg) -
           weight * b->arm[GW_FRONT] / length / (b->stiffness[GW_REAR] * per_deg);
}

static void characteristic_speed_is_that_of_gillespie(void **unused)
{
    (void)unused;
    check_from("T. D. Gillespie, Fundamentals of Vehicle Dynamics (SAE, 1992), ch. 6");
    gw_bicycle_figures f;
    gw_bicycle_solve(&UNDER, 31.7, &f);
    double k = gillespie_gradient(&UNDER);
    assert_true(k > 0.3);
    check_rel(f.gradient / GW_DEG, k, 1e-12, "understeer gradient [deg/g]");
    check_rel(f.characteristic_speed, sqrt(180.0 / GW_PI * 2.648 * GW_G0 / k), 1e-12,
              "characteristic speed [m/s]");
    assert_true(isinf(f.critical_speed) && f.stable);
}

static void critical_speed_is_that_of_gillespie(void **unused)
{
    (void)unused;
    check_from("T. D. Gillespie, Fundamentals of Vehicle Dynamics (SAE, 1992), ch. 6");
    gw_bicycle_figures f;
    gw_bicycle_solve(&OVER, 10.0, &f);
    double k = gillespie_gradient(&OVER);
    assert_true(k < -0.3);
    check_rel(f.critical_speed, sqrt(-180.0 / GW_PI * 2.648 * GW_G0 / k), 1e-12, "critical speed [m/s]");
    assert_true(isinf(f.characteristic_speed));
}

static void car_above_its_critical_speed_is_unstable_and_below_it_is_not(void **unused)
{
    (void)unused;
    gw_bicycle_figures f;
    gw_bicycle_solve(&OVER, 10.0, &f);
    double critical = f.critical_speed;
    assert_true(f.stable);
    gw_bicycle_solve(&OVER, 0.99 * critical, &f);
    assert_true(f.stable && isfinite(f.yaw_time));
    gw_bicycle_solve(&OVER, 1.01 * critical, &f);
    assert_false(f.stable);
    assert_true(isnan(f.natural) && isnan(f.yaw_time) && isnan(f.yaw_gain));
}

/*
 * Just below the critical speed the car answers slowly, but it answers. Two exponentials with the roots p and
 * q of the motion: r = r_end (1 - A e^(-pt) - B e^(-qt)) with A + B = 1 and r'(0) = a C_f / I, so that 90 %
 * is there after ln(10 A) / p. Steady gain V / (L + K V^2), Gillespie, ch. 6; p q and p + q from the
 * coefficients of the motion.
 */
static void car_just_below_its_critical_speed_still_has_a_yaw_response(void **unused)
{
    (void)unused;
    check_from("T. D. Gillespie, Fundamentals of Vehicle Dynamics (SAE, 1992), ch. 6");
    const gw_bicycle *b = &OVER;
    const double below[] = { 1e-2, 1e-4, 1e-6, 1e-8 };
    double l = 2.648, a = 1.431, c = 1.217, cf = 101700, cr = 91300;
    double k = b->mass / l * (c / cf - a / cr); /* [rad s^2/m], negative */
    for (size_t i = 0; i < sizeof below / sizeof *below; i++) {
        double v = sqrt(-l / k) * (1.0 - below[i]), gain = v / (l + k * v * v);
        double sum = (cf + cr) / (b->mass * v) + (a * a * cf + c * c * cr) / (b->yaw_inertia * v);
        double product = cf * cr * l * (l + k * v * v) / (b->mass * b->yaw_inertia * v * v);
        double fast = 0.5 * (sum + sqrt(sum * sum - 4 * product)), slow = product / fast;
        double part = (fast - a * cf / b->yaw_inertia / gain) / (fast - slow);
        gw_bicycle_figures f;
        gw_bicycle_solve(b, v, &f);
        assert_true(f.stable);
        check_rel(f.yaw_time, log(10.0 * part) / slow, 1e-6 + 1e-14 / below[i], "yaw response time [s]");
        check_abs(f.yaw_overshoot, 0.0, 1e-9, "no overshoot");
        assert_true(isfinite(f.slip_time));
    }
}

/* At the characteristic speed the yaw gain of an understeering car is greatest, and half of the neutral car's
 * (Gillespie, ch. 6; Milliken, ch. 5). */
static void yaw_gain_peaks_at_the_characteristic_speed_at_half_the_neutral_one(void **unused)
{
    (void)unused;
    check_from("T. D. Gillespie, Fundamentals of Vehicle Dynamics (SAE, 1992), ch. 6");
    gw_bicycle_figures f, below, above;
    gw_bicycle_solve(&UNDER, 20.0, &f);
    double v = f.characteristic_speed;
    gw_bicycle_solve(&UNDER, v, &f);
    gw_bicycle_solve(&UNDER, 0.97 * v, &below);
    gw_bicycle_solve(&UNDER, 1.03 * v, &above);
    check_rel(f.yaw_gain, 0.5 * v / 2.648, 1e-12, "yaw gain at the characteristic speed [1/s]");
    assert_true(f.yaw_gain > below.yaw_gain && f.yaw_gain > above.yaw_gain);
}

/* Milliken & Milliken, Race Car Vehicle Dynamics (SAE, 1995), ch. 5, by derivatives:
 * w^2 = (Y_b N_r - N_b Y_r + N_b m V)/(m I V), 2 z w = -(Y_b/(m V) + N_r/I). From memory. */
static void natural_frequency_and_damping_are_those_of_milliken(void **unused)
{
    (void)unused;
    check_from("W. F. and D. L. Milliken, Race Car Vehicle Dynamics (SAE, 1995), ch. 5 (from memory)");
    const gw_bicycle *b = &UNDER;
    double v = 33.1, a = 1.217, c = 1.431, yb = -(91300.0 + 101700.0), yr = (101700.0 * c - 91300.0 * a) / v;
    double nb = 101700.0 * c - 91300.0 * a, nr = -(91300.0 * a * a + 101700.0 * c * c) / v;
    double square = (yb * nr - nb * yr + nb * b->mass * v) / (b->mass * b->yaw_inertia * v);
    gw_bicycle_figures f;
    gw_bicycle_solve(b, v, &f);
    check_rel(f.natural, sqrt(square), 1e-12, "natural frequency [rad/s]");
    check_rel(2.0 * f.damping * f.natural, -(yb / (b->mass * v) + nr / b->yaw_inertia), 1e-12,
              "twice damping times frequency [rad/s]");
}

/* Neutral steer: C_f a = C_r b, so the yaw equation stands alone, r' = -D r + N: 90 % after ln(10)/D. */
static void neutral_car_answers_a_step_like_a_first_order_lag(void **unused)
{
    (void)unused;
    const gw_bicycle b = { 1513, 2287, { 1.3, 1.4 }, { 98000, 98000 * 1.3 / 1.4 } };
    double v = 27.3, rate = (98000 * 1.3 * 1.3 + b.stiffness[GW_REAR] * 1.4 * 1.4) / (2287 * v);
    gw_bicycle_figures f;
    gw_bicycle_solve(&b, v, &f);
    check_rel(f.yaw_time, log(10.0) / rate, 1e-6, "response time");
    check_abs(f.yaw_overshoot, 0.0, 1e-9, "no overshoot");
    check_rel(f.yaw_gain, v / 2.7, 1e-9, "yaw gain V/L");
}

/* The differential equation itself, by Runge-Kutta in steps of 0.1 ms. */
typedef struct slip_yaw {
    double slip, yaw;
} slip_yaw;

static slip_yaw rate_of(const gw_bicycle *b, double v, slip_yaw x, double steer)
{
    double front = b->stiffness[GW_FRONT] * (steer - x.slip - b->arm[GW_FRONT] * x.yaw / v);
    double rear = b->stiffness[GW_REAR] * (-x.slip + b->arm[GW_REAR] * x.yaw / v);
    return (slip_yaw){ (front + rear) / (b->mass * v) - x.yaw,
                       (b->arm[GW_FRONT] * front - b->arm[GW_REAR] * rear) / b->yaw_inertia };
}

static slip_yaw ahead(slip_yaw x, double h, slip_yaw d)
{
    return (slip_yaw){ x.slip + h * d.slip, x.yaw + h * d.yaw };
}

static slip_yaw rk4(const gw_bicycle *b, double v, slip_yaw x, double h)
{
    slip_yaw k1 = rate_of(b, v, x, 1), k2 = rate_of(b, v, ahead(x, h / 2, k1), 1);
    slip_yaw k3 = rate_of(b, v, ahead(x, h / 2, k2), 1), k4 = rate_of(b, v, ahead(x, h, k3), 1);
    return (slip_yaw){ x.slip + h / 6 * (k1.slip + 2 * k2.slip + 2 * k3.slip + k4.slip),
                       x.yaw + h / 6 * (k1.yaw + 2 * k2.yaw + 2 * k3.yaw + k4.yaw) };
}

static void step_response_is_that_of_the_differential_equation(void **unused)
{
    (void)unused;
    static const double SPEEDS[] = { 11.3, 29.7, 61.1 };
    const double h = 1e-4;
    for (size_t i = 0; i < 3; i++) {
        gw_bicycle_figures f;
        gw_bicycle_solve(&UNDER, SPEEDS[i], &f);
        slip_yaw x = { 0, 0 };
        double yaw_time = -1, slip_time = -1, peak = 0;
        for (int n = 1; n <= 120000; n++) {
            x = rk4(&UNDER, SPEEDS[i], x, h);
            if (yaw_time < 0 && x.yaw >= 0.9 * f.yaw_gain) yaw_time = n * h;
            if (slip_time < 0 && x.slip / f.slip_gain >= 0.9) slip_time = n * h;
            peak = fmax(peak, x.yaw);
        }
        check_rel(x.yaw, f.yaw_gain, 1e-6, "steady yaw rate");
        check_rel(x.slip, f.slip_gain, 1e-6, "steady side slip");
        check_abs(f.yaw_time, yaw_time, 1.01 * h, "yaw response time");
        check_abs(f.slip_time, slip_time, 1.01 * h, "side-slip response time");
        check_abs(f.yaw_overshoot, peak / f.yaw_gain - 1.0, 1e-4, "overshoot");
    }
}

/* Steer of both axles alike is a car that rolls on askew: no yaw, offset V t steer. */
static void equal_steer_of_both_axles_drifts_without_turning(void **unused)
{
    (void)unused;
    const gw_bicycle b = { 1513, 2287, { 1.3, 1.4 }, { 98000, 98000 * 1.3 / 1.4 } };
    const gw_disturbance d = { { 0.001, 0.001 }, 0.0 };
    gw_drift drift;
    gw_bicycle_drift(&b, &d, 30.0, 0.0, 8.0, &drift);
    check_abs(drift.yaw_rate, 0.0, 1e-12, "yaw rate");
    double lag =
        1513 * 30.0 / (98000 * (1.0 + 1.3 / 1.4)); /* the side speed settles with this time constant */
    check_rel(drift.offset, 0.001 * 30.0 * (8.0 - lag), 1e-5, "offset");
}

/* A yaw moment alone, in steady state: Gillespie's gain with N in place of a C_f steer; at constant speed the
 * yaw rate is N (C_f + C_r) / (det). Worked out from the two equations by Cramer's rule here. */
static void lasting_yaw_moment_ends_in_its_steady_yaw_rate(void **unused)
{
    (void)unused;
    const gw_bicycle *b = &UNDER;
    const gw_disturbance d = { { 0, 0 }, 311.0 };
    double v = 24.3, cf = 91300, cr = 101700, turn = 1.217 * cf - 1.431 * cr;
    double det = (cf + cr) * (1.217 * 1.217 * cf + 1.431 * 1.431 * cr) / v - turn * (turn / v + b->mass * v);
    gw_drift drift;
    gw_bicycle_drift(b, &d, v, 0.0, 12.0, &drift);
    double steady = 311.0 * (cf + cr) / det;
    assert_true(drift.offset > 0.0);
    assert_true(drift.yaw_rate >= steady); /* it overshoots */
    gw_drift later;
    gw_bicycle_drift(b, &d, v, 0.0, 13.0, &later);
    check_rel(later.heading - drift.heading, steady, 1e-6, "turned in a further second");
}

/* Side speed, yaw rate, heading, sideways and along, at a forward speed that falls. */
enum { PATH = 5 };

static void path_rate(double u, const double x[PATH], double push, double d[PATH])
{
    double front = UNDER.stiffness[GW_FRONT] * -(x[0] + UNDER.arm[GW_FRONT] * x[1]) / u;
    double rear = UNDER.stiffness[GW_REAR] * -(x[0] - UNDER.arm[GW_REAR] * x[1]) / u;
    d[0] = (front + rear) / UNDER.mass - u * x[1];
    d[1] = (UNDER.arm[GW_FRONT] * front - UNDER.arm[GW_REAR] * rear + push) / UNDER.yaw_inertia;
    d[2] = x[1];
    d[3] = u * sin(x[2]) + x[0] * cos(x[2]);
    d[4] = u * cos(x[2]) - x[0] * sin(x[2]);
}

/* Classical Runge-Kutta in steps of 0.2 ms. */
static void follow(double speed, double braking, double push, double seconds, double x[PATH])
{
    const double h = 2e-4, at[4] = { 0.0, 0.5, 0.5, 1.0 }, weight[4] = { 1, 2, 2, 1 };
    for (int n = 0; n < (int)lround(seconds / h); n++) {
        double k[PATH] = { 0 }, sum[PATH] = { 0 }, y[PATH];
        for (int s = 0; s < 4; s++) {
            for (int i = 0; i < PATH; i++) y[i] = x[i] + at[s] * h * k[i];
            path_rate(speed - braking * (n + at[s]) * h, y, push, k);
            for (int i = 0; i < PATH; i++) sum[i] += weight[s] * k[i];
        }
        for (int i = 0; i < PATH; i++) x[i] += h / 6.0 * sum[i];
    }
}

/* Heading, offset and distance of a car that turns a good deal: a heading taken at the wrong end of its step
 * is off by a thousandth. */
static void drift_is_that_of_the_differential_equation(void **unused)
{
    (void)unused;
    const gw_disturbance d = { { 0, 0 }, 2900.0 };
    static const double BRAKING[] = { 0.0, 4.9 };
    for (int i = 0; i < 2; i++) {
        double x[PATH] = { 0 };
        gw_drift drift;
        follow(27.3, BRAKING[i], d.yaw_moment, 3.0, x);
        gw_bicycle_drift(&UNDER, &d, 27.3, BRAKING[i], 3.0, &drift);
        assert_true(x[2] > 0.1);
        check_rel(drift.heading, x[2], 2e-5, "heading");
        check_rel(drift.offset, x[3], 2e-5, "offset");
        check_rel(drift.distance, x[4], 2e-5, "distance");
    }
}

static void stop_ends_where_its_deceleration_says(void **unused)
{
    (void)unused;
    const gw_disturbance none = { { 0, 0 }, 0.0 };
    gw_drift drift;
    gw_bicycle_drift(&UNDER, &none, 27.8, 4.9, 1e3, &drift);
    check_rel(drift.seconds, 26.8 / 4.9, 1e-12, "to 1 m/s");
    check_rel(drift.distance, (27.8 * 27.8 - 1.0) / (2.0 * 4.9), 1e-9, "distance");
    check_abs(drift.offset, 0.0, 0.0, "straight");
}

static void stiffness_is_weight_over_compliance_and_inertia_is_estimated(void **unused)
{
    (void)unused;
    gw_vehicle v = { .mass = 1513, .front_mass_fraction = 0.54, .wheelbase = 2.648 };
    const double compliance[GW_AXLES] = { 5.3 * GW_DEG, 4.4 * GW_DEG }, odd[GW_AXLES] = { 0.1, -0.01 };
    gw_bicycle b;
    gw_error err = { 0 };
    assert_int_equal(gw_bicycle_make(&v, compliance, &b, &err), GW_OK);
    check_rel(b.stiffness[GW_FRONT], 1513 * 0.54 * GW_G0 / (5.3 * GW_DEG), 1e-12, "front");
    check_rel(b.yaw_inertia, 1513 * (0.46 * 2.648) * (0.54 * 2.648), 1e-12, "m a b, common practice");
    v.yaw_inertia = 2199;
    check_abs(gw_vehicle_yaw_inertia(&v), 2199, 0.0, "given");
    assert_int_equal(gw_bicycle_make(&v, odd, &b, &err), GW_E_NUMERIC);
    check_contains(err.msg, "rear axle");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(characteristic_speed_is_that_of_gillespie),
        cmocka_unit_test(critical_speed_is_that_of_gillespie),
        cmocka_unit_test(car_above_its_critical_speed_is_unstable_and_below_it_is_not),
        cmocka_unit_test(car_just_below_its_critical_speed_still_has_a_yaw_response),
        cmocka_unit_test(yaw_gain_peaks_at_the_characteristic_speed_at_half_the_neutral_one),
        cmocka_unit_test(natural_frequency_and_damping_are_those_of_milliken),
        cmocka_unit_test(neutral_car_answers_a_step_like_a_first_order_lag),
        cmocka_unit_test(step_response_is_that_of_the_differential_equation),
        cmocka_unit_test(equal_steer_of_both_axles_drifts_without_turning),
        cmocka_unit_test(lasting_yaw_moment_ends_in_its_steady_yaw_rate),
        cmocka_unit_test(drift_is_that_of_the_differential_equation),
        cmocka_unit_test(stop_ends_where_its_deceleration_says),
        cmocka_unit_test(stiffness_is_weight_over_compliance_and_inertia_is_estimated),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}

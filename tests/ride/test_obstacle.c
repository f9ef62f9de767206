/* SPDX-License-Identifier: MIT */
/* The bump in time, against stepping the two-mass equations forward (Runge-Kutta of fourth order). */
#include "ride/corners.h"
#include "support/check.h"

#include <gsl/gsl_errno.h>
#include <math.h>
#include <stdlib.h>

static const double MS = 300, MU = 40, KS = 20000, C = 1500, KT = 200000;

typedef struct motion {
    double zs, vs, zu, vu;
} motion;

static double bump(const gw_ride *s, double time)
{
    double x = s->speed * time;
    return x > 0 && x < s->obstacle_length ? s->obstacle_height * sin(GW_PI * x / s->obstacle_length) : 0.0;
}

/* Mean of the bump over the contact that ends at the front of the tyre. */
static double averaged(const gw_ride *s, double time)
{
    const int n = 200;
    double sum = 0;
    if (!(s->contact_length > 0)) return bump(s, time);
    for (int i = 0; i < n; i++) sum += bump(s, time - (i + 0.5) / n * s->contact_length / s->speed);
    return sum / n;
}

static motion slope(motion m, double road)
{
    double suspension = KS * (m.zu - m.zs) + C * (m.vu - m.vs);
    return (motion){ m.vs, suspension / MS, m.vu, (KT * (road - m.zu) - suspension) / MU };
}

static motion ahead(motion m, double h, motion k)
{
    return (motion){ m.zs + h * k.zs, m.vs + h * k.vs, m.zu + h * k.zu, m.vu + h * k.vu };
}

static motion step(motion m, const gw_ride *s, double time, double h)
{
    double r0 = averaged(s, time), r1 = averaged(s, time + h / 2), r2 = averaged(s, time + h);
    motion a = slope(m, r0), b = slope(ahead(m, h / 2, a), r1), c = slope(ahead(m, h / 2, b), r1);
    motion d = slope(ahead(m, h, c), r2);
    motion sum = { a.zs + 2 * b.zs + 2 * c.zs + d.zs, a.vs + 2 * b.vs + 2 * c.vs + d.vs,
                   a.zu + 2 * b.zu + 2 * c.zu + d.zu, a.vu + 2 * b.vu + 2 * c.vu + d.vu };
    return ahead(m, h / 6, sum);
}

static void check_against_stepping(double contact)
{
    test_corner t;
    gw_ride_result r = { 0 };
    quarter_car(&t, MS, MU, KS, C, KT);
    t.ride.contact_length = contact;
    t.ride.has_obstacle = true;
    t.ride.obstacle_height = 0.02;
    t.ride.obstacle_length = 0.5;
    t.ride.speed = 10.0;
    assert_int_equal(gw_ride_solve(&t.corner, t.fit, &t.ride, NULL, &r, NULL), GW_OK);
    const int fine = 20;
    motion m = { 0 };
    double h = r.obstacle.dt / fine, peak = 0, worst = 0;
    for (int i = 0; i < r.obstacle.n; i++) {
        double force = KS * (m.zu - m.zs) + C * (m.vu - m.vs);
        peak = fmax(peak, fabs(force));
        worst = fmax(worst, fabs(force - r.obstacle.vertical[i]));
        for (int k = 0; k < fine; k++) m = step(m, &t.ride, (i * fine + k) * h, h);
    }
    check_rel(r.obstacle.peak_vertical, peak, 2e-3, "peak");
    check_abs(worst / peak, 0.0, 5e-3, "whole record");
    assert_true(r.obstacle.settled);
    gw_ride_result_free(&r);
}

static void bump_matches_stepping_forward_in_time(void **state)
{
    (void)state;
    check_against_stepping(0.0);
    check_against_stepping(0.12);
}

/* Fore and aft a rigid corner is a free mass: force on the body = share of -load x slope. */
static void fore_aft_force_of_a_stiff_corner_follows_the_slope(void **state)
{
    (void)state;
    test_corner t;
    gw_ride_result r = { 0 };
    quarter_car(&t, MS, MU, KS, C, KT);
    t.ride.contact_length = 0.12;
    t.ride.has_obstacle = true;
    t.ride.obstacle_height = 0.02;
    t.ride.obstacle_length = 0.5;
    t.ride.speed = 10.0;
    assert_int_equal(gw_ride_solve(&t.corner, t.fit, &t.ride, NULL, &r, NULL), GW_OK);
    double load = (MS + MU) * GW_G0, worst = 0, most = 0;
    for (int i = 1; i < r.obstacle.n; i++) {
        double time = i * r.obstacle.dt, h = 1e-5;
        double rise = (averaged(&t.ride, time + h) - averaged(&t.ride, time - h)) / (2 * h * t.ride.speed);
        double want = -load * rise * MS / (MS + MU);
        most = fmax(most, fabs(want));
        worst = fmax(worst, fabs(r.obstacle.fore_aft[i] - want));
    }
    check_abs(worst / most, 0.0, 0.03, "slope");
    gw_ride_result_free(&r);
}

/* The decay is from the peak until what is left stays below a tenth. */
static void decay_is_read_off_the_record(void **state)
{
    (void)state;
    test_corner t;
    gw_ride_result r = { 0 };
    double_wishbone(&t, rubber_rates());
    t.ride.has_obstacle = true;
    t.ride.obstacle_height = 0.02;
    t.ride.obstacle_length = 0.3;
    assert_int_equal(gw_ride_solve(&t.corner, t.fit, &t.ride, NULL, &r, NULL), GW_OK);
    const gw_obstacle *o = &r.obstacle;
    int at = 0;
    for (int i = 0; i < o->n; i++)
        if (fabs(o->fore_aft[i]) > fabs(o->fore_aft[at])) at = i;
    check_rel(o->peak_fore_aft, fabs(o->fore_aft[at]), 1e-15, "peak");
    for (int i = at + (int)lround(o->decay_fore_aft / o->dt); i < o->n; i++)
        assert_true(fabs(o->fore_aft[i]) <= 0.1 * o->peak_fore_aft);
    assert_true(o->decay_fore_aft > 0.02 && o->decay_vertical > 0.02);
    check_abs(o->vertical[0] / o->peak_vertical, 0.0, 5e-3, "quiet before the bump");
    gw_ride_result_free(&r);
}

static void a_bump_without_length_is_refused(void **state)
{
    (void)state;
    test_corner t;
    gw_ride_result r = { 0 };
    gw_error err = { 0 };
    double_wishbone(&t, rubber_rates());
    t.ride.has_obstacle = true;
    assert_int_equal(gw_ride_solve(&t.corner, t.fit, &t.ride, NULL, &r, &err), GW_E_RANGE);
    check_contains(err.msg, "obstacle");
    assert_int_equal(r.n_modes, 0);
}

int main(void)
{
    gsl_set_error_handler_off();
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(bump_matches_stepping_forward_in_time),
        cmocka_unit_test(fore_aft_force_of_a_stiff_corner_follows_the_slope),
        cmocka_unit_test(decay_is_read_off_the_record),
        cmocka_unit_test(a_bump_without_length_is_refused),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}

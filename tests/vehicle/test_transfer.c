/* SPDX-License-Identifier: MIT */
/* Load transfer: the published example, the balance of the whole car, signs, and wheels that lift. */
#include "support/check.h"

#include "giveway/units.h"
#include "giveway/vehicle.h"

#include <stdio.h>

/* "Automotive Chassis Engineering" (Springer, 2018), p. 174: 1280 kg sprung, 0.6 g, front share 0.54, track
 * 1.46 m, roll centres at 0.07 and 0.32 m, 28650 N m/rad, 0.365 m from the mass centre to the roll axis. */
static gw_vehicle textbook_car(void)
{
    gw_vehicle v = { .mass = 1280,
                     .front_mass_fraction = 0.54,
                     .wheelbase = 2.6,
                     .track = { 1.46, 1.46 },
                     .brake_front_fraction = 0.7,
                     .roll_stiffness = { 20000, 8650 },
                     .has_roll_centre = true,
                     .roll_centre = { 0.07, 0.32 },
                     .pneumatic_trail = 0.03 };
    v.cg_height = 0.07 + (0.32 - 0.07) * (1.0 - 0.54) + 0.365;
    return v;
}

static gw_wheel_load load_of(const gw_vehicle *v, gw_manoeuvre m, gw_axle axle)
{
    gw_wheel_load out;
    gw_error err = { 0 };
    if (gw_vehicle_wheel_load(v, &m, axle, &out, &err) != GW_OK) fail_msg("%s", err.msg);
    return out;
}

static double transfer(const gw_vehicle *v, gw_axle axle, double g)
{
    return load_of(v, (gw_manoeuvre){ .lateral_g = g }, axle).vertical - gw_vehicle_static_load(v, axle);
}

/* Printed: 195 and 760 N through the links; the book takes g as 9.81 m/s2. */
static void link_part_matches_the_textbook(void **unused)
{
    (void)unused;
    check_printed_in("Automotive Chassis Engineering (Springer, 2018), p. 174");
    gw_vehicle v = textbook_car();
    double g = 0.6 * 9.81 / GW_G0, roll = load_of(&v, (gw_manoeuvre){ .lateral_g = g }, GW_FRONT).roll;
    double front = transfer(&v, GW_FRONT, g) - v.roll_stiffness[GW_FRONT] * roll / v.track[GW_FRONT];
    double rear = transfer(&v, GW_REAR, g) - v.roll_stiffness[GW_REAR] * roll / v.track[GW_REAR];
    check_abs(front, 195, 0.5, "front, through the links [N]");
    check_abs(rear, 760, 0.5, "rear, through the links [N]");
}

/*
 * Printed: 1556 and 671 N through the roll stiffness; the total stiffness is printed, its split is not and is
 * taken from these two. The book's own inputs give 2242.2 N for both, 0.7 % over the printed sum of 2227 N,
 * so 0.7 % is what its rounding allows. Nor do its totals all add up: 195 + 158 (unsprung) + 1556 is 1909 N,
 * where it prints 1919 N in front; behind, 760 + 218 + 671 is the printed 1649 N.
 */
static void roll_stiffness_part_matches_the_textbook(void **unused)
{
    (void)unused;
    check_printed_in("Automotive Chassis Engineering (Springer, 2018), p. 174");
    gw_vehicle v = textbook_car();
    v.roll_stiffness[GW_FRONT] = 28650.0 * 1556 / (1556 + 671);
    v.roll_stiffness[GW_REAR] = 28650.0 - v.roll_stiffness[GW_FRONT];
    double g = 0.6 * 9.81 / GW_G0, front = transfer(&v, GW_FRONT, g), rear = transfer(&v, GW_REAR, g);
    check_rel(front - 195.06, 1556, 0.007, "front, through the roll stiffness [N]");
    check_rel(rear - 759.60, 671, 0.007, "rear, through the roll stiffness [N]");
    check_rel(front + 158, 1909, 0.007, "front with the printed unsprung part, as its parts add up");
    check_rel(rear + 218, 1649, 0.007, "rear with the printed unsprung part");
    {
        check_from("Automotive Chassis Engineering (Springer, 2018), p. 174");
        check_rel(front - 195.06 + rear - 759.60, 2242.2, 1e-4, "both, recomputed from the book's inputs");
    }
}

/* Printed: roll gradient 0.0194 rad/(m/s2), 10.9 deg/g. */
static void roll_gradient_matches_the_textbook(void **unused)
{
    (void)unused;
    check_printed_in("Automotive Chassis Engineering (Springer, 2018), p. 174");
    gw_vehicle v = textbook_car();
    double roll = load_of(&v, (gw_manoeuvre){ .lateral_g = 0.1 }, GW_FRONT).roll;
    check_abs(roll / (0.1 * GW_G0), 0.0194, 0.5e-4, "roll gradient [rad/(m/s2)]");
    check_abs(roll / 0.1 / GW_DEG, 10.9, 0.05, "roll gradient [deg/g]");
}

/* A body that rolls about its middle lowers a wheel half a track away by half the track times the angle. */
static void roll_moves_each_wheel_by_half_the_track(void **unused)
{
    (void)unused;
    gw_vehicle v = textbook_car();
    v.track[GW_REAR] = 1.38;
    for (gw_axle a = GW_FRONT; a < GW_AXLES; a++) {
        gw_wheel_load outer = load_of(&v, (gw_manoeuvre){ .lateral_g = 0.4, .side = GW_OUTER }, a);
        gw_wheel_load inner = load_of(&v, (gw_manoeuvre){ .lateral_g = 0.4, .side = GW_INNER }, a);
        assert_true(outer.roll > 0.01);
        check_rel(outer.roll_travel, 0.5 * v.track[a] * outer.roll, 1e-14, "outer wheel, into bump");
        check_rel(inner.roll_travel, -0.5 * v.track[a] * outer.roll, 1e-14, "inner wheel, into rebound");
    }
}

/* Moments about the ground: what the outer wheels gain times the track is m a h plus the shifted weight. */
static void lateral_transfer_balances_the_whole_car(void **unused)
{
    (void)unused;
    gw_vehicle v = textbook_car();
    v.track[GW_REAR] = 1.38;
    double g = 0.5, roll = load_of(&v, (gw_manoeuvre){ .lateral_g = g }, GW_FRONT).roll;
    double arm = v.cg_height - (0.07 + 0.25 * 0.46);
    double got = transfer(&v, GW_FRONT, g) * v.track[GW_FRONT] + transfer(&v, GW_REAR, g) * v.track[GW_REAR];
    double want = v.mass * g * GW_G0 * v.cg_height + v.mass * GW_G0 * arm * roll;
    check_rel(got, want, 1e-12, "moment about the ground");
}

static void braking_loads_the_front_and_sums_to_the_weight(void **unused)
{
    (void)unused;
    gw_vehicle v = textbook_car();
    gw_manoeuvre m = { .brake_g = 0.8 };
    gw_wheel_load front = load_of(&v, m, GW_FRONT), rear = load_of(&v, m, GW_REAR);
    check_rel(front.vertical - gw_vehicle_static_load(&v, GW_FRONT),
              0.5 * v.mass * 0.8 * GW_G0 * v.cg_height / v.wheelbase, 1e-12, "onto one front wheel");
    check_rel(2.0 * (front.vertical + rear.vertical), v.mass * GW_G0, 1e-12, "weight");
    check_rel(2.0 * (front.patch_force.x + rear.patch_force.x), -v.mass * 0.8 * GW_G0, 1e-12, "brake force");
    check_rel(front.patch_force.x / rear.patch_force.x, 0.7 / 0.3, 1e-12, "brake balance");
    check_abs(front.hub_force.x, 0.0, 0.0, "brakes react on the upright, at the patch");
    check_abs(front.roll_travel, 0.0, 0.0, "no roll");
}

static void cornering_pushes_the_outer_wheel_inboard_and_into_bump(void **unused)
{
    (void)unused;
    gw_vehicle v = textbook_car();
    gw_wheel_load outer = load_of(&v, (gw_manoeuvre){ .lateral_g = 0.4 }, GW_FRONT);
    gw_wheel_load inner = load_of(&v, (gw_manoeuvre){ .lateral_g = 0.4, .side = GW_INNER }, GW_FRONT);
    assert_true(outer.patch_force.y < 0.0 && inner.patch_force.y > 0.0);
    assert_true(outer.roll_travel > 0.0);
    check_abs(inner.roll_travel, -outer.roll_travel, 0.0, "the inner wheel droops as much");
    check_rel(inner.patch_force.y - outer.patch_force.y, v.mass * 0.54 * 0.4 * GW_G0, 1e-12, "axle force");
    check_rel(outer.patch_force.y / outer.vertical, -inner.patch_force.y / inner.vertical, 1e-12,
              "shared by load");
    check_rel(outer.patch_moment.z, -0.03 * outer.patch_force.y, 1e-12,
              "aligning moment: trail behind the patch");
}

static void drive_force_acts_at_the_driven_wheel_centres(void **unused)
{
    (void)unused;
    gw_vehicle v = textbook_car();
    double all = v.mass * 0.3 * GW_G0;
    gw_manoeuvre m = { .drive_g = 0.3 };
    check_rel(load_of(&v, m, GW_REAR).hub_force.x, 0.5 * all, 1e-12, "rear drive, one wheel");
    check_abs(load_of(&v, m, GW_FRONT).hub_force.x, 0.0, 0.0, "front wheel undriven");
    m.driven = GW_DRIVEN_ALL;
    check_rel(load_of(&v, m, GW_FRONT).hub_force.x, 0.25 * all, 1e-12, "all driven");
    m.driven = GW_DRIVEN_FRONT;
    check_rel(load_of(&v, m, GW_FRONT).hub_force.x, 0.5 * all, 1e-12, "front drive");
    check_abs(load_of(&v, m, GW_FRONT).patch_force.x, 0.0, 0.0, "nothing at the patch");
}

static void wheel_that_lifts_says_at_what_g(void **unused)
{
    (void)unused;
    gw_vehicle v = textbook_car();
    gw_wheel_load untouched = { .vertical = 17 };
    gw_error err = { 0 };
    gw_manoeuvre m = { .lateral_g = 1.5 };
    double lift = 0.0;
    assert_int_equal(gw_vehicle_wheel_load(&v, &m, GW_FRONT, &untouched, &err), GW_E_NUMERIC);
    check_contains(err.msg, "inner front wheel lifts");
    check_abs(untouched.vertical, 17, 0.0, "output untouched");
    /* The load falls in proportion to g: half of that from the static load to zero must be half the way. */
    double per_g = transfer(&v, GW_FRONT, 0.1) / 0.1;
    lift = gw_vehicle_static_load(&v, GW_FRONT) / per_g;
    char want[32];
    snprintf(want, sizeof want, "%.2f g lateral", lift);
    check_contains(err.msg, want);
}

static void any_wheel_that_lifts_is_told_and_the_first_of_them(void **unused)
{
    (void)unused;
    gw_vehicle v = textbook_car();
    gw_wheel_load out;
    gw_error err = { 0 };
    char want[64];
    /* Braking unloads the rear: with the front corner asked for, it is still the rear that lifts. */
    double g = (1.0 - v.front_mass_fraction) * v.wheelbase / v.cg_height;
    gw_manoeuvre stop = { .brake_g = 1.2 * g };
    assert_int_equal(gw_vehicle_wheel_load(&v, &stop, GW_FRONT, &out, &err), GW_E_NUMERIC);
    snprintf(want, sizeof want, "the rear wheels lift at 0.83 of this manoeuvre (%.2f g braking", g);
    check_contains(err.msg, want);
    /* A stiff front lifts its inner wheel first, whichever axle is asked for. */
    gw_manoeuvre turn = { .lateral_g = 2.5 };
    v.roll_stiffness[GW_FRONT] *= 3.0;
    for (gw_axle a = GW_FRONT; a < GW_AXLES; a++) {
        assert_int_equal(gw_vehicle_wheel_load(&v, &turn, a, &out, &err), GW_E_NUMERIC);
        check_contains(err.msg, "the inner front wheel lifts");
    }
}

static void springs_too_soft_to_hold_the_body_are_refused(void **unused)
{
    (void)unused;
    gw_vehicle v = textbook_car();
    gw_wheel_load out;
    gw_error err = { 0 };
    gw_manoeuvre m = { .lateral_g = 0.1 };
    v.roll_stiffness[GW_FRONT] = v.roll_stiffness[GW_REAR] = 2000;
    assert_int_equal(gw_vehicle_wheel_load(&v, &m, GW_FRONT, &out, &err), GW_E_NUMERIC);
    check_contains(err.msg, "roll_stiffness_Nm_per_deg");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(link_part_matches_the_textbook),
        cmocka_unit_test(roll_stiffness_part_matches_the_textbook),
        cmocka_unit_test(roll_gradient_matches_the_textbook),
        cmocka_unit_test(roll_moves_each_wheel_by_half_the_track),
        cmocka_unit_test(lateral_transfer_balances_the_whole_car),
        cmocka_unit_test(braking_loads_the_front_and_sums_to_the_weight),
        cmocka_unit_test(cornering_pushes_the_outer_wheel_inboard_and_into_bump),
        cmocka_unit_test(drive_force_acts_at_the_driven_wheel_centres),
        cmocka_unit_test(wheel_that_lifts_says_at_what_g),
        cmocka_unit_test(any_wheel_that_lifts_is_told_and_the_first_of_them),
        cmocka_unit_test(springs_too_soft_to_hold_the_body_are_refused),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}

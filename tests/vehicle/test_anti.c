/* SPDX-License-Identifier: MIT */
/* Anti-dive, anti-lift and anti-squat: by hand, and by what the corner really does. */
#include "support/check.h"
#include "support/corner_fixture.h"

#include "giveway/corner_travel.h"
#include "giveway/vehicle_anti.h"

#include <gsl/gsl_errno.h>

static const gw_vehicle CAR = {
    .mass = 1500, .cg_height = 0.55, .wheelbase = 2.75, .brake_front_fraction = 0.7
}; /* h/L = 0.2 */

static void shares_follow_the_slopes(void **unused)
{
    (void)unused;
    check_rel(gw_vehicle_anti_brake(&CAR, GW_FRONT, 0.08), 0.7 * 0.08 / 0.2, 1e-12, "anti-dive");
    check_rel(gw_vehicle_anti_brake(&CAR, GW_REAR, -0.25), 0.3 * 0.25 / 0.2, 1e-12, "anti-lift, braking");
    check_rel(gw_vehicle_anti_drive(&CAR, GW_REAR, -0.06, 1.0), 0.06 / 0.2, 1e-12, "anti-squat");
    check_rel(gw_vehicle_anti_drive(&CAR, GW_FRONT, 0.03, 1.0), 0.03 / 0.2, 1e-12, "anti-lift, driving");
    check_rel(gw_vehicle_anti_drive(&CAR, GW_FRONT, 0.03, 0.5), 0.015 / 0.2, 1e-12, "half of the drive");
}

/* A trailing arm with its pivot ahead of and above the wheel, nearly rigid. */
static gw_corner_ws *open_arm(fixture *f, gw_state *state)
{
    const gw_vec3 y = { 0, 1, 0 };
    gw_corner_ws *ws;
    gw_error err = { 0 };
    fixture_start(f);
    fixture_joint(f, "inner", GW_CHASSIS, GW_UPRIGHT, gw_v3(437, 420, 372), y, 1e6, 1e6, 0, 0);
    fixture_joint(f, "outer", GW_CHASSIS, GW_UPRIGHT, gw_v3(437, 690, 372), y, 1e6, 1e6, 0, 0);
    fixture_spring(f, GW_UPRIGHT, gw_v3(0, 555, 310), gw_v3(0, 555, 700), 35);
    if (gw_corner_open(&f->corner, f->fit, &ws, &err) != GW_OK) fail_msg("%s", err.msg);
    assert_int_equal(gw_state_alloc(&f->corner, state, &err), GW_OK);
    return ws;
}

static double travel_under(gw_corner_ws *ws, gw_vec3 patch, gw_vec3 hub, gw_state *state)
{
    gw_error err = { 0 };
    const gw_corner_load load = { .patch_force = patch, .hub_force = hub };
    if (gw_corner_solve(ws, &load, GW_ON_SPRING, state, &err) != GW_OK) fail_msg("%s", err.msg);
    return state->load.travel;
}

/*
 * Load transfer dF at a rear wheel under a force X of that wheel: the spring moves by (1 - anti) of what dF
 * alone would do. The vehicle is chosen so that anti is the wanted share.
 */
static void the_body_rises_by_what_the_links_do_not_carry(void **unused)
{
    (void)unused;
    static const double WANTED[] = { 0.4, 1.0, 1.3 };
    fixture f;
    gw_state state;
    gw_corner_ws *ws = open_arm(&f, &state);
    gw_corner_result result = { .joints = f.results };
    gw_travel_rates rates;
    gw_error err = { 0 };
    const gw_corner_load none = { 0 };
    assert_int_equal(gw_corner_travel_at(ws, &none, 0.0, &state, &result, &rates, &err), GW_OK);
    const double push = 1.0, weight = f.corner.wheel.static_load;
    double alone = travel_under(ws, gw_v3(0, 0, weight - push), gw_v3(0, 0, 0), &state);
    for (size_t i = 0; i < sizeof WANTED / sizeof *WANTED; i++) {
        /* Braking: anti = (1 - p) (-dx/dz) L/h = 0.3 (-dx/dz) 5, and dF/X = h/(L (1 - p)). */
        double brake = push * WANTED[i] / -rates.patch_forward;
        gw_vehicle car = CAR;
        car.cg_height = car.wheelbase * 0.3 * push / brake;
        check_abs(gw_vehicle_anti_brake(&car, GW_REAR, rates.patch_forward), WANTED[i], 1e-6, "anti-lift");
        double moved = travel_under(ws, gw_v3(-brake, 0, weight - push), gw_v3(0, 0, 0), &state);
        check_abs(moved / alone, 1.0 - WANTED[i], 2e-3, "rise under braking");
    }
    gw_state_free(&state);
    gw_corner_close(ws);
}

static void drive_at_the_wheel_centre_is_carried_likewise(void **unused)
{
    (void)unused;
    fixture f;
    gw_state state;
    gw_corner_ws *ws = open_arm(&f, &state);
    gw_corner_result result = { .joints = f.results };
    gw_travel_rates rates;
    gw_error err = { 0 };
    const gw_corner_load none = { 0 };
    assert_int_equal(gw_corner_travel_at(ws, &none, 0.0, &state, &result, &rates, &err), GW_OK);
    const double weight = f.corner.wheel.static_load, drive = 5.0, push = drive * 0.2;
    double anti = gw_vehicle_anti_drive(&CAR, GW_REAR, rates.hub_forward, 1.0);
    double alone = travel_under(ws, gw_v3(0, 0, weight + push), gw_v3(0, 0, 0), &state);
    double moved = travel_under(ws, gw_v3(0, 0, weight + push), gw_v3(drive, 0, 0), &state);
    check_abs(moved / alone, 1.0 - anti, 2e-3, "squat");
    assert_true(anti > 0.5);
    gw_state_free(&state);
    gw_corner_close(ws);
}

int main(void)
{
    gsl_set_error_handler_off();
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(shares_follow_the_slopes),
        cmocka_unit_test(the_body_rises_by_what_the_links_do_not_carry),
        cmocka_unit_test(drive_at_the_wheel_centre_is_carried_likewise),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}

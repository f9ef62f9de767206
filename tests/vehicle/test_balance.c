/* SPDX-License-Identifier: MIT */
/* The understeer budget: the published one adds up, every sign in words, limits in closed form. */
#include "support/check.h"

#include "giveway/balance.h"
#include "giveway/units.h"

#include <gsl/gsl_errno.h>
#include <math.h>

/* An invented car; per wheel 1487 N/deg and 71 N/deg of camber at 4216 N. */
static gw_tyre *linear_tyre(void)
{
    const gw_tyre_data data = { 1487 * GW_N_PER_DEG, 71 * GW_N_PER_DEG, 4216, NULL };
    gw_tyre *tyre = NULL;
    gw_error err = { 0 };
    if (gw_tyre_open(&data, &tyre, &err) != GW_OK) fail_msg("%s", err.msg);
    return tyre;
}

/* At 0.23 g, 500 N moved from the inner wheel to the outer one, both straight and upright. */
static gw_axle_state bare_axle(void)
{
    gw_axle_state s = { .g = 0.23, .force = 2 * 4216 * 0.23 };
    s.wheel[GW_OUTER].vertical = 4216 + 500;
    s.wheel[GW_INNER].vertical = 4216 - 500;
    return s;
}

static void entries_of(const gw_axle_state *s, double entry[GW_BUDGET_ENTRIES])
{
    gw_tyre *tyre = linear_tyre();
    gw_error err = { 0 };
    if (gw_budget_entries(tyre, s, entry, &err) != GW_OK) fail_msg("%s", err.msg);
    gw_tyre_close(tyre);
}

/* The understeer of a car whose other axle is bare [deg/g]. */
static double understeer_with(gw_axle axle, const gw_axle_state *s)
{
    gw_budget b = { 0 };
    gw_axle_state bare = bare_axle();
    entries_of(axle == GW_FRONT ? s : &bare, b.entry[GW_FRONT]);
    entries_of(axle == GW_REAR ? s : &bare, b.entry[GW_REAR]);
    gw_budget_sum(&b);
    return b.understeer / GW_DEG;
}

/*
 * Illustrative budget (imaginary car, says the source) in an encyclopedia article on understeer and
 * oversteer, after R. T. Bundorf and R. L. Leffert, SAE 760713 (1976): front 11.0, rear 6.9, understeer 4.1
 * deg/g. The printed signs are those of the axle's own slip, as here.
 */
static void published_illustrative_budget_adds_up(void **unused)
{
    (void)unused;
    check_printed_in("illustrative budget in an encyclopedia, after Bundorf and Leffert, SAE 760713 (1976)");
    static const struct {
        gw_budget_entry entry;
        double front, rear;
    } PRINTED[] = {
        { GW_BUDGET_TYRE, 8.0, 7.0 },           /* load transfer and cornering stiffness */
        { GW_BUDGET_ALIGNING, 0.2, -0.2 },      /* aligning torque                       */
        { GW_BUDGET_ROLL_CAMBER, 1.2, 0.0 },    /* roll camber                           */
        { GW_BUDGET_ROLL_STEER, 0.6, -0.4 },    /* roll steer                            */
        { GW_BUDGET_LATERAL_STEER, 0.3, -0.1 }, /* lateral-force compliance steer       */
        { GW_BUDGET_ALIGNING_STEER, 0.7, 0.6 }, /* aligning-torque compliance steer     */
    };
    gw_budget b = { 0 };
    for (size_t i = 0; i < sizeof PRINTED / sizeof *PRINTED; i++) {
        b.entry[GW_FRONT][PRINTED[i].entry] = PRINTED[i].front * GW_DEG;
        b.entry[GW_REAR][PRINTED[i].entry] = PRINTED[i].rear * GW_DEG;
    }
    gw_budget_sum(&b);
    check_abs(b.axle[GW_FRONT] / GW_DEG, 11.0, 0.05, "front [deg/g]");
    check_abs(b.axle[GW_REAR] / GW_DEG, 6.9, 0.05, "rear [deg/g]");
    check_abs(b.understeer / GW_DEG, 4.1, 0.05, "understeer [deg/g]");
}

/* One axle of the car below at 1 g, its coefficients times what acts, as the source multiplies them: toe-out
 * and outboard lean of the outer wheel, and the inner one the other way. */
typedef struct printed_axle {
    double lateral_steer, aligning_steer,
        roll_steer;                   /* toe of the outer wheel [deg] per kN, N m, deg of roll */
    double roll_camber, force_camber; /* its lean outwards [deg] per deg of roll, per kN        */
} printed_axle;

static void entries_printed(const printed_axle *of, double entry[GW_BUDGET_ENTRIES])
{
    const double kg = 1108.1, force = kg * 9.807, roll = 4.5, trail = 0.030;
    gw_axle_state s = { .g = 1.0, .force = force };
    const gw_tyre_data data = { 2000 * GW_N_PER_DEG, 134 * GW_N_PER_DEG, 0.5 * force, NULL };
    gw_tyre *tyre = NULL;
    gw_error err = { 0 };
    for (int w = 0; w < 2; w++) {
        gw_wheel_state *wheel = &s.wheel[w];
        const double sign = (w == GW_OUTER ? 1.0 : -1.0) * GW_DEG;
        wheel->vertical = 0.5 * force;
        wheel->toe[GW_TOE_LATERAL] = sign * of->lateral_steer * force / 1000.0;
        wheel->toe[GW_TOE_ALIGNING] = sign * of->aligning_steer * force * trail;
        wheel->toe[GW_TOE_TRAVEL] = sign * of->roll_steer * roll;
        wheel->camber[GW_CAMBER_ROLL] = sign * of->roll_camber * roll;
        wheel->camber[GW_CAMBER_COMPLIANCE] = sign * of->force_camber * 0.5 * kg * 9.8 / 1000.0;
    }
    if (gw_tyre_open(&data, &tyre, &err) != GW_OK || gw_budget_entries(tyre, &s, entry, &err) != GW_OK)
        fail_msg("%s", err.msg);
    gw_tyre_close(tyre);
}

/*
 * A large passenger car with every coefficient and every entry printed (public design script, author
 * unknown): 1108.1 kg in front, 4.5 deg of roll per g, trail 30 mm, 2000 N/deg and 134 N/deg a tyre. The
 * source has front and rear on the other sign, one load for both axles, and 9.807 beside 9.8 m/s2 for the
 * lean by force.
 */
static void a_published_budget_follows_from_its_coefficients(void **unused)
{
    (void)unused;
    check_printed_in("understeer budget of a public design script with all its inputs (author unknown)");
    static const printed_axle FRONT = { -0.030, -1.41e-3, -0.0699, 0.8922, 0.12 },
                              REAR = { 0.0305, -8.5765e-4, 0.0483, 0.6625, 0.18 };
    gw_budget b = { 0 };
    double *front = b.entry[GW_FRONT], *rear = b.entry[GW_REAR];
    entries_printed(&FRONT, front);
    entries_printed(&REAR, rear);
    gw_budget_sum(&b);
    const struct {
        const char *what;
        double got, printed;
    } ENTRIES[] = {
        { "tyre", front[GW_BUDGET_TYRE], 2.71678 },
        { "force and torque", front[GW_BUDGET_LATERAL_STEER] + front[GW_BUDGET_ALIGNING_STEER], 0.78569 },
        { "roll steer", front[GW_BUDGET_ROLL_STEER], 0.31455 },
        { "roll camber", front[GW_BUDGET_ROLL_CAMBER], 0.26900 },
        { "camber by force", front[GW_BUDGET_COMPLIANCE_CAMBER], 0.04365 },
        { "force and torque, rear", rear[GW_BUDGET_LATERAL_STEER] + rear[GW_BUDGET_ALIGNING_STEER],
          -0.05184 },
        { "roll steer, rear", rear[GW_BUDGET_ROLL_STEER], -0.21735 },
        { "roll camber, rear", rear[GW_BUDGET_ROLL_CAMBER], 0.19974 },
        { "camber by force, rear", rear[GW_BUDGET_COMPLIANCE_CAMBER], 0.06548 },
    };
    for (size_t i = 0; i < sizeof ENTRIES / sizeof *ENTRIES; i++)
        check_abs(ENTRIES[i].got / GW_DEG, ENTRIES[i].printed, 0.5e-5, ENTRIES[i].what);
    check_abs(b.understeer / GW_DEG, 1.417, 0.5e-3, "understeer [deg/g]");
}

/* Gillespie, Fundamentals of Vehicle Dynamics (SAE, 1992), ch. 6: K = W_f/C_f - W_r/C_r, C of the axle. */
static void bare_linear_tyres_need_weight_over_stiffness(void **unused)
{
    (void)unused;
    double e[GW_BUDGET_ENTRIES];
    gw_axle_state s = bare_axle();
    entries_of(&s, e);
    for (int i = 0; i < GW_BUDGET_ENTRIES; i++)
        if (i != GW_BUDGET_TYRE) check_abs(e[i], 0.0, 1e-15, "nothing else");
    check_from("T. D. Gillespie, Fundamentals of Vehicle Dynamics (SAE, 1992), ch. 6");
    check_rel(e[GW_BUDGET_TYRE] / GW_DEG, 2 * 4216 / (2 * 1487.0), 1e-12,
              "weight over cornering stiffness [deg/g]");
}

/* Gillespie's form of lateral-force steer: A_f W_f, A in angle per force on the axle. */
static void lateral_force_steer_is_its_coefficient_times_the_axle_load(void **unused)
{
    (void)unused;
    double e[GW_BUDGET_ENTRIES], a = 0.043 * GW_DEG / GW_KN; /* of both wheels, per axle force */
    gw_axle_state s = bare_axle();
    s.wheel[GW_OUTER].toe[GW_TOE_LATERAL] = -a * s.force;
    s.wheel[GW_INNER].toe[GW_TOE_LATERAL] = a * s.force;
    entries_of(&s, e);
    check_rel(e[GW_BUDGET_LATERAL_STEER], a * 2 * 4216, 1e-12, "rad/g");
}

static void toe_out_of_the_front_outer_wheel_under_lateral_force_is_understeer(void **unused)
{
    (void)unused;
    gw_axle_state s = bare_axle();
    s.wheel[GW_OUTER].toe[GW_TOE_LATERAL] = -0.1 * GW_DEG;
    assert_true(understeer_with(GW_FRONT, &s) > 0.01);
}

static void toe_in_of_the_rear_outer_wheel_is_understeer(void **unused)
{
    (void)unused;
    gw_axle_state s = bare_axle();
    s.wheel[GW_OUTER].toe[GW_TOE_LATERAL] = 0.1 * GW_DEG;
    assert_true(understeer_with(GW_REAR, &s) > 0.01);
}

/* The loaded wheel makes more of it than the other one, which leans the wrong way, takes back. */
static void more_static_negative_camber_in_front_is_less_understeer(void **unused)
{
    (void)unused;
    double e[GW_BUDGET_ENTRIES];
    gw_axle_state s = bare_axle();
    for (gw_side i = GW_OUTER; i <= GW_INNER; i++) s.wheel[i].camber[GW_CAMBER_SETTING] = -1.5 * GW_DEG;
    entries_of(&s, e);
    double gain = 71 * 1.5 * ((4216 + 500) - (4216 - 500)) / 4216.0; /* lateral force at the same slip [N] */
    check_rel(-e[GW_BUDGET_SETTING] * s.g / GW_DEG * 2 * 1487, gain, 1e-12, "force gained");
    assert_true(understeer_with(GW_FRONT, &s) < -0.01);
}

/* Both wheels lean with the body: Cg phi / C of each. */
static void roll_camber_is_roll_times_the_ratio_of_stiffnesses(void **unused)
{
    (void)unused;
    double e[GW_BUDGET_ENTRIES], roll = 1.31 * GW_DEG;
    gw_axle_state s = bare_axle();
    s.wheel[GW_OUTER].camber[GW_CAMBER_ROLL] = roll;
    s.wheel[GW_INNER].camber[GW_CAMBER_ROLL] = -roll;
    entries_of(&s, e);
    check_rel(e[GW_BUDGET_ROLL_CAMBER] * s.g, roll * 71 / 1487.0, 1e-12, "rad");
    assert_true(e[GW_BUDGET_ROLL_CAMBER] > 0.0);
}

/* Two axles share a moment as a pair of forces at the wheelbase. */
static void aligning_torque_pushes_the_nose_out(void **unused)
{
    (void)unused;
    const gw_vehicle v = { .mass = 1487, .wheelbase = 2.6, .pneumatic_trail = 0.027 };
    double front = gw_aligning_force(&v, GW_FRONT, 0.4);
    check_rel(front * 2.6, 1487 * 0.4 * GW_G0 * 0.027, 1e-12, "moment");
    check_abs(gw_aligning_force(&v, GW_REAR, 0.4), -front, 0.0, "rear");
}

static void tyres_without_stiffness_or_load_are_refused(void **unused)
{
    (void)unused;
    gw_tyre *tyre = NULL;
    gw_error err = { 0 };
    const gw_tyre_data soft = { 0, 71, 4216, NULL }, light = { 1487, 71, 0, NULL };
    assert_int_equal(gw_tyre_open(&soft, &tyre, &err), GW_E_RANGE);
    check_contains(err.msg, "cornering stiffness above 0");
    assert_int_equal(gw_tyre_open(&light, &tyre, &err), GW_E_RANGE);
    check_contains(err.msg, "the load they hold at");
    assert_null(tyre);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(published_illustrative_budget_adds_up),
        cmocka_unit_test(a_published_budget_follows_from_its_coefficients),
        cmocka_unit_test(bare_linear_tyres_need_weight_over_stiffness),
        cmocka_unit_test(lateral_force_steer_is_its_coefficient_times_the_axle_load),
        cmocka_unit_test(toe_out_of_the_front_outer_wheel_under_lateral_force_is_understeer),
        cmocka_unit_test(toe_in_of_the_rear_outer_wheel_is_understeer),
        cmocka_unit_test(more_static_negative_camber_in_front_is_less_understeer),
        cmocka_unit_test(roll_camber_is_roll_times_the_ratio_of_stiffnesses),
        cmocka_unit_test(aligning_torque_pushes_the_nose_out),
        cmocka_unit_test(tyres_without_stiffness_or_load_are_refused),
    };
    gsl_set_error_handler_off();
    return cmocka_run_group_tests(tests, NULL, NULL);
}

/* SPDX-License-Identifier: MIT */
/* What a kit does to the car, from solved corners: sums, limits, signs, and what is left out. */
#include "support/case_sample.h"
#include "support/check.h"

#include "giveway/casefile.h"
#include "giveway/handling.h"
#include "giveway/travel.h"
#include "giveway/units.h"

#include <gsl/gsl_errno.h>
#include <math.h>

static void load_case(gw_case *c)
{
    sample_load("tests/cases/saloon-by-rule.json", c);
    c->vehicle.by_rule = true; /* loads that can be had by hand */
}

static void run(const gw_case *c, gw_handling_study *out)
{
    const gw_selection all = { 0 };
    gw_error err = { 0 };
    if (gw_study_handling(c, &all, out, &err) != GW_OK) fail_msg("%s", err.msg);
}

/* Every bush a point: stiff in translation, free to turn; no brackets. */
static void make_rigid(gw_case *c)
{
    for (int i = 0; i < c->n_bushes; i++) {
        gw_bush *b = &c->bushes[i];
        b->type = GW_BUSH_RATES;
        b->rates = (gw_given_rates){ { 1e12, 1e12 }, 1e12, { 0, 0 }, 0 };
        b->stop = (gw_stop){ 0, 0 };
        b->offset = 0;
    }
    for (gw_axle a = GW_FRONT; a < GW_AXLES; a++)
        for (int j = 0; j < c->corners[a].n_joints; j++) c->corners[a].joints[j].bracket = 0;
    c->n_kits = 1;
}

static double sum_of(const gw_angle_parts *p)
{
    return p->setting + p->roll + p->tyre + p->travel + p->jacking + p->compliance;
}

static void parts_add_up_to_the_camber_and_toe_that_deflect_gives(void **unused)
{
    (void)unused;
    gw_case c;
    gw_handling_study h;
    gw_deflect_study d;
    const gw_selection all = { 0 };
    load_case(&c);
    c.vehicle.by_rule = false;
    run(&c, &h);
    assert_int_equal(gw_study_deflect(&c, &all, &d, NULL), GW_OK);
    assert_true(h.n_budgets >= 5 * 2 * 2 * 2);
    for (int i = 0; i < h.n_budgets; i++) {
        const gw_corner_budget *b = &h.budget[i];
        check_abs(sum_of(&b->camber), b->camber.total, 1e-13, "camber");
        check_abs(sum_of(&b->toe), b->toe.total, 1e-13, "toe");
        const gw_deflection *item = gw_deflect_find(&d, b->kit, b->axle, b->load);
        if (b->side != item->side) continue;
        check_abs(b->camber.total, item->camber_to_road, 1e-12, "camber to the road");
        check_abs(b->toe.total, item->result.toe, 1e-12, "toe");
        check_abs(b->camber.setting, item->static_camber, 1e-12, "setting of the kit");
    }
    gw_deflect_study_free(&d);
    gw_handling_study_free(&h);
    gw_case_free(&c);
}

/* Camber and toe at one travel, as `travel` gives them. */
static gw_travel_point at_travel(const gw_case *c, gw_axle axle, double travel)
{
    const gw_selection only = { .only_axle = true, .axle = axle };
    const gw_travel_plan plan = { .from = travel - 0.01, .to = travel, .step = 0.01 };
    gw_travel_study t;
    gw_error err = { 0 };
    if (gw_study_travel(c, &only, &plan, &t, &err) != GW_OK) fail_msg("%s", err.msg);
    const gw_travel_item *item = gw_travel_find(&t, 0, axle, -1);
    gw_travel_point p = item->point[item->n - 1];
    gw_travel_study_free(&t);
    check_abs(p.travel, travel, 1e-12, "travel");
    return p;
}

static void rigid_bushes_leave_only_what_travel_gives(void **unused)
{
    (void)unused;
    const double small = 2e-5 * GW_DEG; /* bushes of 1e9 N/mm under some kN */
    gw_case c;
    gw_handling_study h;
    load_case(&c);
    make_rigid(&c);
    run(&c, &h);
    for (int i = 0; i < h.n_budgets; i++) {
        const gw_corner_budget *b = &h.budget[i];
        gw_travel_point p = at_travel(&c, b->axle, b->travel);
        check_abs(b->camber.compliance, 0.0, small, "compliance camber");
        check_abs(b->toe.compliance, 0.0, small, "compliance toe");
        check_abs(b->camber.travel, p.camber_change, small, "camber with travel");
        check_abs(b->toe.travel, p.toe_change, small, "toe with travel");
        assert_true(fabs(b->camber.travel) > 100 * small);
    }
    gw_handling_study_free(&h);
    gw_case_free(&c);
}

static void rigid_bushes_leave_only_kinematic_entries_in_the_budget(void **unused)
{
    (void)unused;
    static const gw_budget_entry GIVE[] = { GW_BUDGET_LOAD_STEER, GW_BUDGET_LATERAL_STEER,
                                            GW_BUDGET_ALIGNING_STEER, GW_BUDGET_COMPLIANCE_CAMBER };
    gw_case c;
    gw_handling_study h;
    load_case(&c);
    make_rigid(&c);
    run(&c, &h);
    const gw_balance_item *b = gw_balance_find(&h, 0);
    for (gw_axle a = GW_FRONT; a < GW_AXLES; a++) {
        for (size_t i = 0; i < sizeof GIVE / sizeof *GIVE; i++)
            check_abs(b->quoted.entry[a][GIVE[i]] / GW_DEG, 0.0, 1e-4, "by the bushes");
        check_rel(b->quoted.entry[a][GW_BUDGET_TYRE],
                  gw_vehicle_static_load(&c.vehicle, a) / c.vehicle.cornering_stiffness[a], 1e-9, "tyre");
        assert_true(fabs(b->quoted.entry[a][GW_BUDGET_ROLL_STEER]) > 1e-3 * GW_DEG);
    }
    gw_handling_study_free(&h);
    gw_case_free(&c);
}

static void more_negative_static_camber_in_front_is_less_understeer(void **unused)
{
    (void)unused;
    gw_case c;
    gw_handling_study before, after;
    load_case(&c);
    run(&c, &before);
    c.corners[GW_FRONT].wheel.static_camber -= 1.0 * GW_DEG;
    run(&c, &after);
    for (int k = 0; k < c.n_kits; k++)
        assert_true(gw_balance_find(&after, k)->quoted.understeer <
                    gw_balance_find(&before, k)->quoted.understeer - 1e-3 * GW_DEG);
    gw_handling_study_free(&after);
    gw_handling_study_free(&before);
    gw_case_free(&c);
}

/* Toe-out of the outer wheel under lateral force and its entry go together, whatever the kit. */
static void sign_of_lateral_force_steer_is_that_of_the_toe_it_makes(void **unused)
{
    (void)unused;
    gw_case c;
    gw_handling_study h;
    load_case(&c);
    run(&c, &h);
    const gw_balance_item *b = gw_balance_find(&h, 0);
    const gw_corner_budget *f = NULL;
    for (int i = 0; i < h.n_budgets && !f; i++)
        if (h.budget[i].axle == GW_FRONT && h.budget[i].side == GW_OUTER) f = &h.budget[i];
    double given = b->quoted.entry[GW_FRONT][GW_BUDGET_LATERAL_STEER] +
                   b->quoted.entry[GW_FRONT][GW_BUDGET_ALIGNING_STEER] +
                   b->quoted.entry[GW_FRONT][GW_BUDGET_LOAD_STEER];
    if (!f) {
        fail_msg("no budget of the outer front wheel");
        return;
    }
    assert_true(fabs(given) > 1e-3 * GW_DEG);
    assert_true((f->toe.compliance < 0.0) == (given > 0.0));
    gw_handling_study_free(&h);
    gw_case_free(&c);
}

static void oversteering_car_is_unstable_above_its_critical_speed(void **unused)
{
    (void)unused;
    gw_case c;
    gw_handling_study h;
    load_case(&c);
    c.vehicle.cornering_stiffness[GW_FRONT] *= 4.0;
    c.vehicle.speed = 90.0;
    run(&c, &h);
    const gw_balance_item *b = gw_balance_find(&h, 0);
    double k = b->quoted.understeer;
    assert_true(b->has_car && k < 0.0);
    check_rel(b->car.critical_speed, sqrt(-c.vehicle.wheelbase * GW_G0 / k), 1e-9, "critical speed");
    assert_true(b->car.critical_speed < 90.0);
    assert_false(b->car.stable);
    gw_handling_study_free(&h);
    gw_case_free(&c);
}

enum { N_SLIP = 9, N_LOAD = 7, N_LEAN = 3 };

/* A table that says the same as the coefficients gives the same budget. */
static void table_of_a_linear_tyre_gives_the_budget_of_the_coefficients(void **unused)
{
    (void)unused;
    double slip[N_SLIP], load[N_LOAD], lean[N_LEAN], force[GW_AXLES][N_SLIP * N_LOAD * N_LEAN];
    gw_tyre_table table[GW_AXLES];
    gw_case c;
    gw_handling_study with, without;
    load_case(&c);
    run(&c, &without);
    for (int i = 0; i < N_SLIP; i++) slip[i] = 1.5 * i * GW_DEG;
    for (int j = 0; j < N_LOAD; j++) load[j] = 150.0 + 1400.0 * j;
    for (int k = 0; k < N_LEAN; k++) lean[k] = (7.0 * k - 7.0) * GW_DEG;
    for (int a = 0; a < GW_AXLES; a++) {
        double rated = gw_vehicle_static_load(&c.vehicle, (gw_axle)a);
        for (int i = 0; i < N_SLIP * N_LOAD * N_LEAN; i++)
            force[a][i] = load[i / N_SLIP % N_LOAD] / rated *
                          (c.vehicle.cornering_stiffness[a] * slip[i % N_SLIP] +
                           c.vehicle.camber_stiffness[a] * lean[i / N_SLIP / N_LOAD]);
        table[a] = (gw_tyre_table){ N_SLIP, N_LOAD, N_LEAN, slip, load, lean, force[a] };
        c.vehicle.tyre[a] = &table[a];
    }
    run(&c, &with);
    for (int k = 0; k < c.n_kits; k++)
        for (int a = 0; a < GW_AXLES; a++)
            for (int e = 0; e < GW_BUDGET_ENTRIES; e++)
                check_abs(gw_balance_find(&with, k)->quoted.entry[a][e],
                          gw_balance_find(&without, k)->quoted.entry[a][e], 1e-8, "entry");
    assert_true(gw_balance_find(&without, 0)->linear_to <= GW_LINEAR_TYRE + 1e-9);
    assert_true(gw_balance_find(&with, 0)->linear_to > GW_LINEAR_TYRE);
    gw_handling_study_free(&with);
    gw_handling_study_free(&without);
    gw_case_free(&c);
}

static void stronger_left_brake_pulls_to_the_left_and_in_proportion(void **unused)
{
    (void)unused;
    gw_case c;
    gw_handling_study h, twice;
    load_case(&c);
    make_rigid(&c);
    run(&c, &h);
    c.vehicle.brake_imbalance = 0.2;
    run(&c, &twice);
    const gw_braking_item *one = gw_braking_find(&h, 0), *two = gw_braking_find(&twice, 0);
    assert_true(one->has_drift && one->stop.offset > 0.0 && one->stop.yaw_rate > 0.0);
    double force = 0.5 * c.vehicle.mass * GW_FIRM_STOP * GW_G0, f = c.vehicle.brake_front_fraction;
    double arm = 0.5 * (f * c.vehicle.track[GW_FRONT] + (1 - f) * c.vehicle.track[GW_REAR]);
    check_rel(one->imbalance.yaw_moment, 0.1 * force * arm, 1e-12, "yaw moment");
    check_abs(one->imbalance.steer[GW_FRONT], 0.0, 1e-5 * GW_DEG, "rigid bushes do not steer");
    check_rel(two->stop.offset, 2.0 * one->stop.offset, 0.02, "twice the difference");
    gw_handling_study_free(&twice);
    gw_handling_study_free(&h);
    gw_case_free(&c);
}

static void traction_force_is_stiffness_times_angle(void **unused)
{
    (void)unused;
    gw_case c;
    gw_handling_study h;
    load_case(&c);
    run(&c, &h);
    assert_int_equal(h.n_traction, 5 * 3); /* corner exit, rear wheels: outer, inner, straight on */
    for (int i = 0; i < h.n_traction; i++) {
        const gw_traction_item *t = &h.traction[i];
        assert_true(t->axle == GW_REAR && t->has_force);
        double part = t->vertical / gw_vehicle_static_load(&c.vehicle, GW_REAR);
        check_rel(t->toe_force, part * c.vehicle.cornering_stiffness[GW_REAR] * t->toe_change, 1e-12, "toe");
        check_rel(t->camber_force, part * c.vehicle.camber_stiffness[GW_REAR] * t->camber_change, 1e-12,
                  "camber");
    }
    gw_handling_study_free(&h);
    gw_case_free(&c);
}

/* Straight on the driven wheel carries its share and half of what 0.4 g moves back: m g (1 - f) / 2 + m 0.4 g
 * h / (2 L) (Gillespie, ch. 1). Its camber has changed from what the wheel is set to, not from upright. */
static void driven_wheel_carries_what_drive_puts_on_it_and_counts_from_its_setting(void **unused)
{
    (void)unused;
    gw_case c;
    gw_handling_study h;
    gw_deflect_study d;
    const gw_selection all = { 0 };
    int seen = 0;
    load_case(&c);
    run(&c, &h);
    assert_int_equal(gw_study_deflect(&c, &all, &d, NULL), GW_OK);
    const gw_vehicle *v = &c.vehicle;
    double weight = v->mass * GW_G0, rear = 0.5 * weight * (1.0 - v->front_mass_fraction);
    for (int i = 0; i < h.n_traction; i++) {
        const gw_traction_item *t = &h.traction[i];
        const gw_deflection *item = gw_deflect_find(&d, t->kit, t->axle, t->load);
        if (t->straight)
            check_rel(t->vertical, rear + 0.5 * weight * 0.4 * v->cg_height / v->wheelbase, 1e-12,
                      "load [N]");
        if (t->straight || t->side != item->side) continue;
        check_abs(t->camber_change, item->result.camber - item->static_camber, 1e-12,
                  "camber from the setting");
        check_abs(t->camber_change, item->result.camber_change, 1e-12, "the same as deflect says");
        assert_true(fabs(item->static_camber) > 0.5 * GW_DEG); /* or it would prove nothing */
        seen++;
    }
    assert_int_equal(seen, c.n_kits);
    gw_deflect_study_free(&d);
    gw_handling_study_free(&h);
    gw_case_free(&c);
}

/* All four wheels drive: a quarter of m a at each hub, and traction is told of both axles. */
static void all_wheel_drive_drives_both_axles(void **unused)
{
    (void)unused;
    gw_case c;
    gw_handling_study h;
    gw_deflect_study d;
    const gw_selection all = { 0 };
    int n[GW_AXLES] = { 0, 0 }, load = -1;
    load_case(&c);
    for (int l = 0; l < c.n_loads; l++)
        if (c.loads[l].kind == GW_LOAD_MANOEUVRE && c.loads[l].manoeuvre.drive_g > 0.0) load = l;
    c.loads[load].manoeuvre.driven = GW_DRIVEN_ALL;
    run(&c, &h);
    for (int i = 0; i < h.n_traction; i++) n[h.traction[i].axle]++;
    assert_int_equal(n[GW_FRONT], 3 * c.n_kits);
    assert_int_equal(n[GW_REAR], 3 * c.n_kits);
    assert_int_equal(gw_study_deflect(&c, &all, &d, NULL), GW_OK);
    for (gw_axle a = GW_FRONT; a < GW_AXLES; a++)
        check_rel(gw_deflect_find(&d, 0, a, load)->applied.hub_force.x, 0.25 * c.vehicle.mass * 0.4 * GW_G0,
                  1e-12, "drive of one wheel [N]");
    gw_deflect_study_free(&d);
    gw_handling_study_free(&h);
    gw_case_free(&c);
}

/* Roll of the body, m a h' / (K_f + K_r - m g h') (Gillespie, ch. 6), leans the outer wheel's top out of the
 * turn and the inner wheel's, in the outward sign of its own side, the other way. */
static void roll_leans_the_outer_wheel_out_and_the_inner_one_in(void **unused)
{
    (void)unused;
    gw_case c;
    gw_handling_study h;
    gw_deflect_study d;
    const gw_selection all = { 0 };
    int seen[2] = { 0, 0 };
    load_case(&c);
    run(&c, &h);
    assert_int_equal(gw_study_deflect(&c, &all, &d, NULL), GW_OK);
    const gw_vehicle *v = &c.vehicle;
    double z = d.roll_centre[GW_FRONT] +
               (d.roll_centre[GW_REAR] - d.roll_centre[GW_FRONT]) * (1.0 - v->front_mass_fraction);
    double arm = v->cg_height - z, stiffness = v->roll_stiffness[GW_FRONT] + v->roll_stiffness[GW_REAR];
    for (int i = 0; i < h.n_budgets; i++) {
        const gw_corner_budget *b = &h.budget[i];
        double ay = c.loads[b->load].manoeuvre.lateral_g * GW_G0;
        double roll = v->mass * ay * arm / (stiffness - v->mass * GW_G0 * arm);
        check_rel(b->camber.roll, b->side == GW_OUTER ? roll : -roll, 1e-9, "roll's part of camber");
        check_abs(b->toe.roll, 0.0, 0.0, "none of toe");
        seen[b->side]++;
    }
    assert_true(seen[GW_OUTER] > 0 && seen[GW_INNER] == seen[GW_OUTER]);
    gw_deflect_study_free(&d);
    gw_handling_study_free(&h);
    gw_case_free(&c);
}

/* Steer of an axle to the left, from the lateral forces of its two tyres over both their cornering
 * stiffnesses. A left wheel's toe-in pushes it to the right; a top that leans left pulls it to the left
 * (camber thrust, ISO 8855). */
static double axle_steer(const gw_vehicle *v, gw_axle a, double toe_left, double camber_left,
                         double toe_right, double camber_right)
{
    double cornering = v->cornering_stiffness[a], camber = v->camber_stiffness[a];
    double left = -cornering * toe_left + camber * camber_left;
    double right = cornering * toe_right - camber * camber_right;
    return (left + right) / (2.0 * cornering);
}

static void uneven_brakes_and_a_bump_steer_the_axle_by_both_its_tyres(void **unused)
{
    (void)unused;
    gw_case c;
    gw_handling_study h;
    load_case(&c);
    run(&c, &h);
    for (int k = 0; k < c.n_kits; k++)
        for (gw_axle a = GW_FRONT; a < GW_AXLES; a++) {
            const gw_braking_item *b = gw_braking_find(&h, k);
            const gw_braking_corner *w = &b->corner[a];
            double want =
                axle_steer(&c.vehicle, a, w->strong_toe, w->strong_camber, w->weak_toe, w->weak_camber);
            double bump =
                axle_steer(&c.vehicle, a, w->bump_toe, w->bump_camber, w->beside_toe, w->beside_camber);
            check_abs(fabs(w->beside_toe) + fabs(w->beside_camber), 0.0, 0.0, "the other wheel, on its own");
            check_rel(b->imbalance.steer[a], want, 1e-12, "stronger left brake");
            check_rel(b->bump.steer[a], bump, 1e-12, "bump under the left wheel");
            assert_true(fabs(w->strong_camber - w->weak_camber) > 1e-4 * GW_DEG);
        }
    gw_handling_study_free(&h);
    gw_case_free(&c);
}

static void load_car(const char *path, gw_case *c, gw_handling_study *h)
{
    sample_load(path, c);
    run(c, h);
    assert_true(h->n_budgets > 0);
}

/* Both wheels of an axle in one load. */
static const gw_corner_budget *wheel_of(const gw_handling_study *h, const gw_corner_budget *b, gw_side side)
{
    const gw_corner_budget *found = gw_corner_budget_find(h, b->kit, b->axle, b->load, side);
    assert_non_null(found);
    return found;
}

/* How high a wheel centre stands over the road: its loaded radius less what the tyre gives, along its lean.
 */
static double height_of(const gw_wheel *wheel, double stands, const gw_corner_budget *b)
{
    return (wheel->loaded_radius + (stands - b->vertical) / wheel->tyre_vertical) * cos(b->camber.total);
}

/* By hand: the line of the wheel centres leans in the body by the travels over their distance, and on the
 * road by the difference of their heights over it; the wheels' own movement across, some mm, left out. */
static void lean_of_the_body_is_split_between_springs_and_tyres(void **unused)
{
    (void)unused;
    static const char *const CARS[] = { "cases/fast-saloon.json", "cases/hatchback.json",
                                        "cases/live-axle.json" };
    for (size_t i = 0; i < sizeof CARS / sizeof *CARS; i++) {
        gw_case c;
        gw_handling_study h;
        load_car(CARS[i], &c, &h);
        for (int n = 0; n < h.n_budgets; n++) {
            const gw_corner_budget *b = &h.budget[n], *out = wheel_of(&h, b, GW_OUTER),
                                   *in = wheel_of(&h, b, GW_INNER);
            const gw_wheel *wheel = &c.corners[b->axle].wheel;
            double distance = 2.0 * wheel->centre.y, to = b->side == GW_OUTER ? 1.0 : -1.0;
            double stands = gw_vehicle_static_load(&c.vehicle, b->axle);
            double give = height_of(wheel, stands, in) - height_of(wheel, stands, out);
            assert_true(b->on_road);
            check_abs(sum_of(&b->camber), b->camber.total, 1e-13, "camber");
            check_abs(sum_of(&b->toe), b->toe.total, 1e-13, "toe");
            check_rel(b->camber.roll, to * atan((out->travel - in->travel) / distance), 1e-12, "springs");
            check_abs(b->camber.tyre, to * asin(give / distance), 0.01 * fabs(b->camber.roll), "tyres");
            check_abs(b->toe.roll + b->toe.tyre, 0.0, 0.0, "none of toe");
            if (b->kit == 0 && b->side == GW_OUTER) { /* the left one, which travel tells */
                gw_travel_point mean = at_travel(&c, b->axle, 0.5 * (out->travel + in->travel));
                check_abs(b->camber.jacking, mean.camber_change, 1e-9, "as travel gives it");
                check_abs(b->toe.jacking, mean.toe_change, 1e-9, "toe as travel gives it");
            }
            check_rel(out->lateral / out->vertical, in->lateral / in->vertical, 1e-9, "forces go with loads");
        }
        gw_handling_study_free(&h);
        gw_case_free(&c);
    }
}

/* Both wheels of a live axle stand on one beam: in the body they lean as it leans, so that of all the roll
 * only what the tyres give is left to the road (textbook kinematics of a rigid axle). */
static void live_axle_keeps_its_wheels_upright_but_for_the_tyres(void **unused)
{
    (void)unused;
    const double small = 0.02 * GW_DEG;
    gw_case c;
    gw_handling_study h;
    int seen = 0;
    load_car("cases/live-axle.json", &c, &h);
    for (int n = 0; n < h.n_budgets; n++) {
        const gw_corner_budget *b = &h.budget[n];
        if (b->axle != GW_REAR) continue;
        check_abs(b->camber.travel, -b->camber.roll, small, "the beam's lean in the body");
        check_abs(b->camber.total - b->camber.setting, b->camber.tyre, small, "camber to the road");
        check_abs(b->camber.compliance, 0.0, small, "bushes");
        check_abs(b->camber.jacking, 0.0, small, "jacking");
        assert_true(fabs(b->camber.roll) > 20 * small);
        seen++;
    }
    assert_true(seen >= 4);
    gw_handling_study_free(&h);
    gw_case_free(&c);
}

/* One wheel up by h: the beam leans by h over the distance of its wheels, and both turn with it. */
static void bump_under_one_wheel_of_a_live_axle_turns_both(void **unused)
{
    (void)unused;
    gw_case c;
    gw_handling_study h;
    load_car("cases/live-axle.json", &c, &h);
    double lean = h.bump / (2.0 * c.corners[GW_REAR].wheel.centre.y);
    for (int k = 0; k < c.n_kits; k++) {
        const gw_braking_item *b = gw_braking_find(&h, k);
        const gw_braking_corner *w = &b->corner[GW_REAR];
        check_rel(w->bump_camber, -lean, 0.02, "the wheel on the bump");
        check_rel(w->beside_camber, lean, 0.02, "the other");
        check_abs(w->bump_toe, -w->beside_toe, 1e-3 * GW_DEG, "toe");
        check_rel(
            b->bump.steer[GW_REAR],
            axle_steer(&c.vehicle, GW_REAR, w->bump_toe, w->bump_camber, w->beside_toe, w->beside_camber),
            1e-12, "steer of the axle");
    }
    gw_handling_study_free(&h);
    gw_case_free(&c);
}

static void bands_hold_every_point_from_0_2_g_to_1_g(void **unused)
{
    (void)unused;
    gw_case c;
    gw_handling_study h;
    load_case(&c);
    run(&c, &h);
    assert_int_equal(h.n_bands, 10);
    for (int i = 0; i < h.n_bands; i++) {
        const gw_band_item *b = &h.band[i];
        const gw_sweep *s = gw_sweep_find(&h.sweep, b->kit, b->axle);
        int on_edge = 0;
        check_abs(b->to, 1.0, 1e-12, "to 1 g");
        for (int j = 0; j < s->n; j++) {
            if (s->point[j].g < 0.199) continue;
            assert_true(s->point[j].toe >= b->toe_low && s->point[j].toe <= b->toe_high);
            on_edge += s->point[j].toe == b->toe_low || s->point[j].toe == b->toe_high;
        }
        assert_true(on_edge >= 2);
    }
    gw_handling_study_free(&h);
    gw_case_free(&c);
}

static void what_is_missing_is_named_and_the_rest_is_worked_out(void **unused)
{
    (void)unused;
    gw_case c;
    gw_handling_study h;
    load_case(&c);
    c.vehicle.cornering_stiffness[GW_REAR] = 0.0;
    run(&c, &h);
    check_contains(h.no_balance, "cornering_stiffness");
    assert_true(h.n_balance == 0 && h.n_budgets > 0 && h.n_bands > 0 && h.n_braking == c.n_kits);
    assert_false(h.braking[0].has_drift);
    gw_handling_study_free(&h);
    c.has_vehicle = false;
    c.n_loads = 1; /* the only direct load */
    run(&c, &h);
    check_contains(h.no_budgets, "vehicle");
    assert_true(h.n_budgets + h.n_balance + h.n_braking + h.n_traction + h.n_bands == 0);
    gw_handling_study_free(&h);
    gw_case_free(&c);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(parts_add_up_to_the_camber_and_toe_that_deflect_gives),
        cmocka_unit_test(rigid_bushes_leave_only_what_travel_gives),
        cmocka_unit_test(rigid_bushes_leave_only_kinematic_entries_in_the_budget),
        cmocka_unit_test(more_negative_static_camber_in_front_is_less_understeer),
        cmocka_unit_test(sign_of_lateral_force_steer_is_that_of_the_toe_it_makes),
        cmocka_unit_test(oversteering_car_is_unstable_above_its_critical_speed),
        cmocka_unit_test(table_of_a_linear_tyre_gives_the_budget_of_the_coefficients),
        cmocka_unit_test(stronger_left_brake_pulls_to_the_left_and_in_proportion),
        cmocka_unit_test(traction_force_is_stiffness_times_angle),
        cmocka_unit_test(driven_wheel_carries_what_drive_puts_on_it_and_counts_from_its_setting),
        cmocka_unit_test(all_wheel_drive_drives_both_axles),
        cmocka_unit_test(roll_leans_the_outer_wheel_out_and_the_inner_one_in),
        cmocka_unit_test(uneven_brakes_and_a_bump_steer_the_axle_by_both_its_tyres),
        cmocka_unit_test(lean_of_the_body_is_split_between_springs_and_tyres),
        cmocka_unit_test(live_axle_keeps_its_wheels_upright_but_for_the_tyres),
        cmocka_unit_test(bump_under_one_wheel_of_a_live_axle_turns_both),
        cmocka_unit_test(bands_hold_every_point_from_0_2_g_to_1_g),
        cmocka_unit_test(what_is_missing_is_named_and_the_rest_is_worked_out),
    };
    gsl_set_error_handler_off();
    return cmocka_run_group_tests(tests, NULL, NULL);
}

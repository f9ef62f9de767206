/* SPDX-License-Identifier: MIT */
/* Braking and cornering together, and what kits cost. */
#include "support/case_sample.h"
#include "support/check.h"

#include "car/again.h"
#include "car/workspace.h"
#include "study/trail.h"

#include "giveway/cost.h"
#include "giveway/grid.h"
#include "giveway/sweep.h"
#include "giveway/units.h"

#include <gsl/gsl_errno.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

static gw_material_set materials;
static gw_case saloon, whole;

static bool load(const char *name, gw_case *out)
{
    const char *root = getenv("SOURCE");
    char path[512];
    gw_faults faults = { 0 };
    snprintf(path, sizeof path, "%s/%s", root ? root : ".", name);
    bool loaded = gw_case_load(path, &materials, out, &faults) == GW_OK;
    gw_faults_free(&faults);
    return loaded;
}

static int setup(void **state)
{
    (void)state;
    gw_faults faults = { 0 };
    gsl_set_error_handler_off();
    bool ready = gw_materials_builtin(&materials, &faults) == GW_OK &&
                 load("tests/cases/saloon-by-rule.json", &saloon) && load("cases/fast-saloon.json", &whole);
    gw_faults_free(&faults);
    return !ready;
}

static int teardown(void **state)
{
    (void)state;
    gw_case_free(&saloon);
    gw_case_free(&whole);
    gw_materials_free(&materials);
    return 0;
}

static gw_grid_study solve(double brake, double lateral, int n)
{
    gw_grid_study study = { 0 };
    gw_error err = { 0 };
    const gw_selection wanted = { .only_axle = true, .axle = GW_FRONT };
    const gw_grid_plan plan = { brake, lateral, n, n, GW_OUTER, false, 0 };
    if (gw_study_grid(&saloon, &wanted, &plan, &study, &err) != GW_OK) fail_msg("%s", err.msg);
    return study;
}

static void its_edges_are_the_sweeps_of_braking_and_of_cornering(void **state)
{
    (void)state;
    gw_grid_study grid = solve(0.9, 0.6, 4);
    const gw_selection wanted = { .only_axle = true, .axle = GW_FRONT };
    for (int side = 0; side < 2; side++) {
        gw_sweep_study sweep = { 0 };
        const gw_sweep_plan plan = { .axis = side ? GW_SWEEP_LATERAL : GW_SWEEP_BRAKE,
                                     .to_g = side ? 0.6 : 0.9,
                                     .n = 4,
                                     .along = { .side = GW_OUTER } };
        assert_int_equal(gw_study_sweep(&saloon, &wanted, &plan, &sweep, NULL), GW_OK);
        for (int k = 0; k < saloon.n_kits; k++)
            for (int i = 0; i < 4; i++) {
                const gw_grid_state *s = &gw_grid_find(&grid, k, GW_FRONT)->state[side ? i : 4 * i];
                const gw_sweep_point *want = &gw_sweep_find(&sweep, k, GW_FRONT)->point[i];
                assert_true(s->solved);
                check_abs(s->toe, want->toe, 1e-9 * GW_DEG, "toe");
                check_abs(s->camber_to_road, want->camber_to_road, 1e-9 * GW_DEG, "camber");
                check_abs(s->wheel_centre.x, want->wheel_centre.x, 1e-12, "wheel forward");
            }
        gw_sweep_study_free(&sweep);
    }
    gw_grid_study_free(&grid);
}

/* The second of two points of a sweep has nobody to lead it. */
static gw_sweep_point from_standing_still(int kit, gw_axle axle, double brake, double lateral, gw_side side)
{
    gw_sweep_study sweep = { 0 };
    gw_sweep_point out = { .g = -1.0 };
    const gw_selection wanted = { .only_axle = true, .axle = axle };
    const gw_sweep_plan plan = {
        .axis = GW_SWEEP_LATERAL, .to_g = lateral, .n = 2, .along = { .brake_g = brake, .side = side }
    };
    assert_int_equal(gw_study_sweep(&whole, &wanted, &plan, &sweep, NULL), GW_OK);
    const gw_sweep *of = gw_sweep_find(&sweep, kit, axle);
    if (of->n == 2) out = of->point[1];
    gw_sweep_study_free(&sweep);
    return out;
}

static void check_as_from_standing_still(const gw_grid_state *s, const gw_sweep_point *want)
{
    assert_true(s->solved);
    assert_true(want->g > 0.0);
    check_abs(s->toe, want->toe, 1e-7 * GW_DEG, "toe");
    check_abs(s->camber_to_road, want->camber_to_road, 1e-7 * GW_DEG, "camber to the road");
    check_abs(s->travel, want->travel, 1e-6 * GW_MM, "travel");
}

static void a_car_led_by_its_neighbours_stands_as_it_does_from_standing_still(void **state)
{
    (void)state;
    const int n = 4, kit = whole.n_kits - 1;
    const gw_selection wanted = { 0 };
    const gw_grid_plan plan = { 0.9, 0.6, n, n, GW_OUTER, true, 0 };
    gw_grid_study grid = { 0 };
    assert_int_equal(gw_study_grid(&whole, &wanted, &plan, &grid, NULL), GW_OK);
    for (gw_axle a = GW_FRONT; a < GW_AXLES; a++)
        for (int i = 1; i < n * n; i++) {
            const gw_grid *of = gw_grid_find(&grid, kit, a);
            double brake = gw_grid_brake(&plan, i / n), lateral = gw_grid_lateral(&plan, i % n);
            if (i % n == 0) continue;
            gw_sweep_point outer = from_standing_still(kit, a, brake, lateral, GW_OUTER);
            gw_sweep_point inner = from_standing_still(kit, a, brake, lateral, GW_INNER);
            check_as_from_standing_still(&of->state[i], &outer);
            check_as_from_standing_still(&of->other[i], &inner);
        }
    gw_grid_study_free(&grid);
}

/* It takes three with the forces that its stiff joints carry by the guess alone, and nobody carries in truth.
 */
static void a_car_that_its_neighbours_lead_stands_after_two_steps(void **state)
{
    (void)state;
    enum { PLACES = 8 };
    const gw_selection wanted = { 0 };
    gw_run run;
    gw_trail trail = { 0 };
    assert_int_equal(gw_run_open(&run, &whole, &wanted, NULL), GW_OK);
    assert_int_equal(gw_run_open_corner(&run, whole.n_kits - 1, GW_FRONT, NULL), GW_OK);
    for (int i = 0; i < PLACES; i++) {
        const gw_manoeuvre m = { .lateral_g = 0.08 * i, .side = GW_OUTER };
        gw_deflection item = { .load = -1 };
        run.axle = GW_FRONT;
        if (i > 1) assert_true(gw_trail_lead(&trail, &run, i - 1, i - 1, i - 2));
        assert_int_equal(gw_run_manoeuvre(&run, &m, &item, NULL), GW_OK);
        assert_int_equal(gw_trail_note(&trail, &run, PLACES, i, NULL), GW_OK);
        if (i > 1) assert_in_range(gw_road_steps(run.road), 1, 2);
    }
    /* where it stands already it takes none, and leaves nothing of the mark for another start */
    const gw_manoeuvre again = { .lateral_g = 0.08 * (PLACES - 1), .side = GW_OUTER };
    assert_int_equal(gw_road_solve_near(run.road, &again, &trail.at[PLACES - 1], NULL), GW_OK);
    assert_int_equal(gw_road_steps(run.road), 0);
    for (int a = 0; a < GW_AXLES; a++) assert_null(run.road->axle[a].felt);
    gw_trail_free(&trail);
    gw_run_close_corner(&run);
    gw_run_close(&run);
}

static void between_states_a_tenth_of_a_g_apart_straight_lines_stray_less_than_a_minute_of_arc(void **state)
{
    (void)state;
    const int fine = 21, step = 2;
    gw_grid_study grid = solve(1.0, 1.0, fine);
    for (int k = 0; k < saloon.n_kits; k++) {
        const gw_grid_state *s = gw_grid_find(&grid, k, GW_FRONT)->state;
        for (int b = 0; b + step < fine; b += step)
            for (int l = 0; l + step < fine; l += step) {
                const gw_grid_state *p = &s[b * fine + l], *q = &s[(b + step) * fine + l];
                const gw_grid_state *between = &s[(b + 1) * fine + l + 1];
                if (!q[step].solved || !p[step].solved || !q->solved || !between->solved) continue;
                double toe = 0.25 * (p->toe + p[step].toe + q->toe + q[step].toe);
                double camber = 0.25 * (p->camber + p[step].camber + q->camber + q[step].camber);
                check_abs(toe, between->toe, GW_ARCMIN, "toe");
                check_abs(camber, between->camber, GW_ARCMIN, "camber");
            }
    }
    gw_grid_study_free(&grid);
}

static void a_wheel_that_lifts_leaves_its_state_unsolved_and_the_rest_stands(void **state)
{
    (void)state;
    gw_grid_study grid = { 0 };
    const gw_selection wanted = { .only_axle = true, .axle = GW_REAR };
    const gw_grid_plan plan = {
        3.0, 0.2, 7, 2, GW_OUTER, false, 0
    }; /* more than any stop: the rear comes up */
    assert_int_equal(gw_study_grid(&saloon, &wanted, &plan, &grid, NULL), GW_OK);
    const gw_grid_state *s = gw_grid_find(&grid, 0, GW_REAR)->state;
    assert_true(s[0].solved && s[2].solved);
    assert_false(s[12].solved);
    assert_null(gw_grid_find(&grid, 0, GW_FRONT));
    gw_grid_study_free(&grid);
}

/* What lies beyond is not asked for; standing still, the car does not get there either. */
static void a_wheel_that_has_lifted_stays_up_in_a_tighter_bend(void **state)
{
    (void)state;
    const int n = 5, kit = whole.n_kits - 1;
    const gw_selection wanted = { 0 };
    const gw_grid_plan plan = { 0.8, 1.4, n, n, GW_OUTER, false, 0 };
    gw_grid_study grid = { 0 };
    int beyond = 0;
    assert_int_equal(gw_study_grid(&whole, &wanted, &plan, &grid, NULL), GW_OK);
    const gw_grid_state *s = gw_grid_find(&grid, kit, GW_FRONT)->state;
    for (int i = 0; i < n * n; i++) {
        if (i % n == 0 || s[i - 1].solved) continue;
        assert_false(s[i].solved);
        assert_true(from_standing_still(kit, GW_FRONT, gw_grid_brake(&plan, i / n),
                                        gw_grid_lateral(&plan, i % n), GW_OUTER)
                        .g < 0.0);
        beyond++;
    }
    assert_true(beyond > 0);
    gw_grid_study_free(&grid);
}

static void a_case_without_a_vehicle_has_no_grid(void **state)
{
    (void)state;
    gw_case c;
    gw_faults faults = { 0 };
    gw_grid_study grid = { 0 };
    gw_error err = { 0 };
    const gw_selection wanted = { 0 };
    const gw_grid_plan plan = { 1.0, 1.0, 2, 2, GW_OUTER, false, 0 };
    assert_int_equal(sample_read(SAMPLE_MINIMAL, &c, &faults), GW_OK);
    assert_int_equal(gw_study_grid(&c, &wanted, &plan, &grid, &err), GW_E_SCHEMA);
    check_contains(err.msg, "vehicle: missing");
    assert_int_equal(grid.n, 0);
    gw_case_free(&c);
    gw_faults_free(&faults);
}

/* Counted by hand from tests/cases/saloon-by-rule.json: the rack's two mountings once, all else left and
 * right. */
static void a_kit_costs_what_differs_from_the_first_on_both_sides_of_the_car(void **state)
{
    (void)state;
    int lateral = gw_corner_find_joint(&saloon.corners[GW_FRONT], "lateral_inner");
    int rack = gw_corner_find_joint(&saloon.corners[GW_FRONT], "rack_right");
    assert_int_equal(gw_joint_count_on_car(&saloon.corners[GW_FRONT], lateral), 2);
    assert_int_equal(gw_joint_count_on_car(&saloon.corners[GW_FRONT], rack), 1);
    gw_car_cost mixed = gw_car_cost_of(&saloon, gw_case_find_kit(&saloon, "mixed"));
    /* front: 71 + 2 x 24 a side, two mountings at 22; rear: 71 + 62 + 2 x 21 a side */
    assert_int_equal(mixed.parts, 2 * 3 + 2 + 2 * 4);
    check_abs(mixed.price, 2 * (71 + 2 * 24) + 2 * 22 + 2 * (71 + 62 + 2 * 21), 1e-9, "price of mixed");
    /* and two jobs, each once for the car */
    check_abs(mixed.minutes, 2 * (45 + 2 * 25) + 2 * 20 + 2 * (45 + 40 + 2 * 25) + 50 + 60, 1e-9,
              "minutes of mixed");
    assert_int_equal(mixed.unpriced + mixed.untimed, 0);
    /* the upper arm's two joints share 50 min, nine joints the 60 min in which the wheels are set */
    check_abs(gw_shared_minutes_saved(&saloon, gw_case_find_kit(&saloon, "mixed")), 50 + 8 * 60, 1e-9,
              "minutes that mixed shares");
    /* all of it new is work on the same joints: no job may be missing from it */
    check_abs(gw_shared_minutes_saved(&saloon, 0), 50 + 13 * 60, 1e-9, "minutes that the first kit shares");
    gw_car_cost rubber = gw_car_cost_of(&saloon, 0); /* all of it new; ball joints have no price */
    check_abs(rubber.price, 2 * (2 * 14 + 19 + 46) + 2 * 11 + 2 * (19 + 15 + 5 * 12 + 38), 1e-9, "price new");
    check_abs(rubber.minutes, 2 * (2 * 25 + 30 + 35) + 2 * 20 + 2 * (30 + 25 + 5 * 25 + 30) + 50 + 60, 1e-9,
              "minutes new");
}

/* A part of the joints in rubber again can cost no more than all of them. */
static void all_of_it_new_costs_no_less_than_a_part_of_it(void **state)
{
    (void)state;
    static const char *const CASES[] = { "cases/fast-saloon.json", "cases/hatchback.json",
                                         "cases/live-axle.json" };
    for (int i = 0; i < 3; i++) {
        gw_case c;
        sample_load(CASES[i], &c);
        gw_car_cost all = gw_car_cost_of(&c, 0);
        for (int k = 1; k < c.n_kits; k++) {
            gw_car_cost part = gw_car_cost_renewed(&c, k);
            assert_true(part.price <= all.price + 1e-9 && part.minutes <= all.minutes + 1e-9 &&
                        part.total <= all.total + 1e-9);
        }
        gw_case_free(&c);
    }
}

/* On the centre line a joint is one; elsewhere it is left and right. */
static void a_joint_on_the_centre_line_is_bought_once(void **state)
{
    (void)state;
    gw_corner *front = &saloon.corners[GW_FRONT];
    int j = gw_corner_find_joint(front, "lateral_inner"), mixed = gw_case_find_kit(&saloon, "mixed");
    gw_vec3 at = front->joints[j].at;
    gw_car_cost before = gw_car_cost_of(&saloon, mixed);
    front->joints[j].at.y = 0.0;
    gw_car_cost after = gw_car_cost_of(&saloon, mixed);
    assert_int_equal(gw_joint_count_on_car(front, j), 1);
    front->joints[j].at = at;
    assert_int_equal(after.parts, before.parts - 1);
    assert_true(after.price < before.price - 1.0);
}

/* by hand from tests/cases/saloon-by-rule.json: 84 an hour, a fifth of tax on parts and work; the joints that
 * "mixed" changes with rubber again: 19 + 2 x 14 a side and two mountings at 11, rear 19 + 15 + 2 x 12 a
 * side. */
static void parts_labour_and_tax_add_up_and_stand_beside_the_same_joints_in_rubber(void **state)
{
    (void)state;
    gw_car_cost mixed = gw_car_cost_of(&saloon, gw_case_find_kit(&saloon, "mixed"));
    check_abs(mixed.labour, 610.0 / 60.0 * 84.0, 1e-9, "labour of mixed");
    check_abs(mixed.tax, 0.2 * (632.0 + 854.0), 1e-9, "tax of mixed");
    check_abs(mixed.total, 1.2 * (632.0 + 854.0), 1e-9, "total of mixed");
    gw_car_cost same = gw_car_cost_renewed(&saloon, gw_case_find_kit(&saloon, "mixed"));
    check_abs(same.price, 2 * (19 + 2 * 14) + 2 * 11 + 2 * (19 + 15 + 2 * 12), 1e-9,
              "the same joints in rubber");
    assert_int_equal(same.parts, mixed.parts);
    gw_shop shop = saloon.shop;
    saloon.shop = (gw_shop){ .has_tax = true, .tax = 0.1 };
    gw_car_cost parts = gw_car_cost_of(&saloon, gw_case_find_kit(&saloon, "mixed"));
    assert_true(isnan(parts.labour));
    check_abs(parts.total, 1.1 * 632.0, 1e-9, "parts and tax alone");
    saloon.shop = shop;
}

/* Of the first kit every bush with a price or a time counts: one with a time alone is unpriced, not left out.
 */
static void a_bush_of_the_first_kit_with_a_time_and_no_price_counts(void **state)
{
    (void)state;
    int j = gw_corner_find_joint(&saloon.corners[GW_FRONT], "lateral_inner");
    gw_bush *bush = &saloon.bushes[saloon.kits[0].fits[GW_FRONT][j]];
    double price = bush->price, minutes = bush->fit_minutes;
    gw_car_cost with = gw_car_cost_of(&saloon, 0);
    assert_true(price > 0.0 && minutes > 0.0);
    bush->price = -1.0;
    gw_car_cost without = gw_car_cost_of(&saloon, 0);
    bush->fit_minutes = -1.0;
    gw_car_cost neither = gw_car_cost_of(&saloon, 0);
    bush->price = price;
    bush->fit_minutes = minutes;
    int n = without.unpriced - with.unpriced;
    assert_true(n >= 2);
    assert_int_equal(without.parts, with.parts);
    check_abs(without.price, with.price - n * price, 1e-9, "price");
    check_abs(without.minutes, with.minutes, 1e-9, "minutes");
    assert_int_equal(neither.parts, with.parts - n);
    check_abs(neither.minutes, with.minutes - n * minutes, 1e-9, "minutes without");
}

/* By hand from cases/fast-saloon.json: of "bearing" 7 places in front and 10 behind, two of each, and four
 * jobs; then one side of the rack's mountings is another part, and stands on a line of its own. */
static void what_left_and_right_get_alike_is_one_line_of_a_quotation(void **state)
{
    (void)state;
    enum { MOST = 64 };
    gw_case c;
    gw_quote_line line[MOST];
    sample_load("cases/fast-saloon.json", &c);
    int bearing = gw_case_find_kit(&c, "bearing"),
        mount = gw_corner_find_joint(&c.corners[GW_FRONT], "rack_mount");
    int n = gw_quote_lines(&c, bearing, line, MOST), image = gw_joint_image(&c, GW_FRONT, mount);
    double price = 0.0;
    assert_int_equal(n, 7 + 10 + 4);
    for (int i = 0; i < n; i++) {
        price += line[i].price;
        assert_int_equal(line[i].count, line[i].job ? 1 : 2);
    }
    /* a side: upper arm 2 x 62, lower 71, tension 96, rack 34, subframe 2 x 33; behind 71, 62 five times, 96,
     * 71, 2 x 33 */
    check_abs(price, 2 * (2 * 62 + 71 + 96 + 34 + 2 * 33) + 2 * (71 + 5 * 62 + 96 + 71 + 2 * 33), 1e-9,
              "price of bearing");
    assert_int_not_equal(image, mount);
    c.kits[bearing].fits[GW_FRONT][image] = c.kits[gw_case_find_kit(&c, "poly")].fits[GW_FRONT][image];
    assert_int_equal(gw_quote_lines(&c, bearing, line, MOST), n + 1);
    for (int i = 0; i <= n; i++)
        if (line[i].axle == GW_FRONT && !line[i].job && (line[i].joint == mount || line[i].joint == image))
            assert_int_equal(line[i].count, 1);
    gw_case_free(&c);
}

/* A line and what the kit costs in bushes, of one joint of a kit that changes no other. */
static void check_line(const gw_quote_line *line, int count, int of_pair, double price)
{
    assert_int_equal(line->count, count);
    assert_int_equal(line->of_pair, of_pair);
    check_abs(line->price, price, 1e-9, "price of a line");
}

/* Of a corner that shares nothing the left joints are listed: what a kit fits on the right alone cost
 * nothing, what it fits on the left alone both sides. By hand from the case: 19 or 11 for a bush, 25 min
 * each, jobs of 35 and 60 min. */
static void a_bush_on_one_side_is_bought_once(void **state)
{
    (void)state;
    gw_case c;
    gw_quote_line line[8];
    sample_load("tests/cases/hatchback-by-rule.json", &c);
    const int poly = gw_case_find_bush(&c, "arm_front_poly"), rear = gw_case_find_bush(&c, "arm_rear_poly");
    const int j = gw_corner_find_joint(&c.corners[GW_FRONT], "arm_front");
    const int twin = c.pairs[GW_FRONT].joints[j].twin;
    int *fits = c.kits[1].fits[GW_FRONT];
    for (int a = 0; a < GW_AXLES; a++)
        for (int i = 0; i < c.pairs[a].n_joints; i++) c.kits[1].fits[a][i] = c.kits[0].fits[a][i];
    const int rubber = fits[j];
    for (int right = 0; right < 2; right++) {
        fits[right ? j : twin] = rubber;
        fits[right ? twin : j] = poly;
        gw_car_cost cost = gw_car_cost_of(&c, 1);
        assert_int_equal(cost.parts, 1);
        check_abs(cost.price, 19, 1e-9, "one bush");
        check_abs(cost.minutes, 25 + 35 + 60, 1e-9, "and both jobs, once");
        check_abs(gw_car_cost_renewed(&c, 1).price, 11, 1e-9, "the same place in rubber");
        assert_int_equal(gw_quote_lines(&c, 1, line, 8), 1 + 2);
        check_line(&line[0], 1, right ? twin : j, 19);
    }
    fits[j] = fits[twin] = poly;
    assert_int_equal(gw_quote_lines(&c, 1, line, 8), 1 + 2);
    check_line(&line[0], 2, -1, 38);
    fits[twin] = rear;
    assert_int_equal(gw_quote_lines(&c, 1, line, 8), 2 + 2);
    check_line(&line[0], 1, j, 19);
    check_line(&line[1], 1, twin, c.bushes[rear].price);
    check_abs(gw_car_cost_of(&c, 1).price, 19 + c.bushes[rear].price, 1e-9, "two kinds");
    gw_case_free(&c);
}

/* The job was due for the left joint alone. */
static void a_job_is_due_for_either_side_of_an_axle_with_shared_parts(void **state)
{
    (void)state;
    gw_case c;
    sample_load("cases/fast-saloon.json", &c);
    const gw_shop_joint at = c.jobs[0].joints[0];
    const int twin = c.pairs[at.axle].joints[at.joint].twin;
    for (int a = 0; a < GW_AXLES; a++)
        for (int i = 0; i < c.pairs[a].n_joints; i++) c.kits[1].fits[a][i] = c.kits[0].fits[a][i];
    assert_int_equal(gw_shared_job_of(&c, &c.jobs[0], &c.kits[1]).joints, 0);
    assert_int_not_equal(twin, at.joint);
    c.kits[1].fits[at.axle][twin] = c.kits[2].fits[at.axle][twin];
    assert_int_not_equal(c.kits[1].fits[at.axle][twin], c.kits[0].fits[at.axle][twin]);
    assert_int_equal(gw_shared_job_of(&c, &c.jobs[0], &c.kits[1]).joints, 1);
    gw_case_free(&c);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(its_edges_are_the_sweeps_of_braking_and_of_cornering),
        cmocka_unit_test(a_car_led_by_its_neighbours_stands_as_it_does_from_standing_still),
        cmocka_unit_test(a_car_that_its_neighbours_lead_stands_after_two_steps),
        cmocka_unit_test(between_states_a_tenth_of_a_g_apart_straight_lines_stray_less_than_a_minute_of_arc),
        cmocka_unit_test(a_wheel_that_lifts_leaves_its_state_unsolved_and_the_rest_stands),
        cmocka_unit_test(a_wheel_that_has_lifted_stays_up_in_a_tighter_bend),
        cmocka_unit_test(a_case_without_a_vehicle_has_no_grid),
        cmocka_unit_test(a_kit_costs_what_differs_from_the_first_on_both_sides_of_the_car),
        cmocka_unit_test(parts_labour_and_tax_add_up_and_stand_beside_the_same_joints_in_rubber),
        cmocka_unit_test(all_of_it_new_costs_no_less_than_a_part_of_it),
        cmocka_unit_test(a_joint_on_the_centre_line_is_bought_once),
        cmocka_unit_test(what_left_and_right_get_alike_is_one_line_of_a_quotation),
        cmocka_unit_test(a_bush_on_one_side_is_bought_once),
        cmocka_unit_test(a_job_is_due_for_either_side_of_an_axle_with_shared_parts),
        cmocka_unit_test(a_bush_of_the_first_kit_with_a_time_and_no_price_counts),
    };
    return cmocka_run_group_tests(tests, setup, teardown);
}

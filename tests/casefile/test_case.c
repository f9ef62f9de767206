/* SPDX-License-Identifier: MIT */
/* Sound cases: what is read, in which units, and what a left-out key means. */
#include "giveway/units.h"
#include "support/case_sample.h"
#include "support/check.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

typedef struct loaded {
    gw_case c;
    gw_faults faults;
} loaded;

static void read_sound(const char *text, loaded *l)
{
    *l = (loaded){ 0 };
    gw_status st = sample_read(text, &l->c, &l->faults);
    if (gw_faults_count(&l->faults)) fail_msg("%s", gw_faults_text(&l->faults, 0));
    assert_int_equal(st, GW_OK);
    assert_int_equal(gw_faults_warnings(&l->faults), 0);
}

static void release(loaded *l)
{
    gw_case_free(&l->c);
    gw_faults_free(&l->faults);
}

static int setup_full(void **state)
{
    loaded *l = malloc(sizeof *l);
    if (!l) return -1;
    read_sound(SAMPLE_FULL, l);
    *state = l;
    return 0;
}

static int teardown_full(void **state)
{
    release(*state);
    free(*state);
    return 0;
}

static void a_trailing_arm_is_the_least_case(void **state)
{
    (void)state;
    loaded l;
    read_sound(SAMPLE_MINIMAL, &l);
    const gw_corner *corner = &l.c.corners[GW_REAR];
    assert_false(l.c.has_corner[GW_FRONT]);
    assert_true(l.c.has_corner[GW_REAR]);
    assert_int_equal(corner->n_bodies, 2);
    assert_string_equal(corner->bodies[GW_UPRIGHT].name, "upright");
    check_abs(corner->joints[0].at.x, 0.4, 1e-15, "joint x");
    check_abs(corner->wheel.static_toe, 0.1 * GW_DEG, 1e-15, "static toe");
    check_abs(corner->spring.rate, 40e3, 1e-9, "spring rate");
    assert_false(corner->damper.present);
    assert_false(l.c.has_vehicle || l.c.ride.present || l.c.align[GW_REAR].present);
    assert_int_equal(l.c.n_kits, 1);
    assert_string_equal(l.c.kits[0].name, "as written");
    assert_int_equal(l.c.kits[0].fits[GW_REAR][1], 0);
    assert_null(l.c.kits[0].fits[GW_FRONT]);
    release(&l);
}

static void bushes_alone_are_a_case(void **state)
{
    (void)state;
    loaded l;
    read_sound("{\"format\":\"giveway-case-1\",\"title\":\"t\",\"bushes\":{\"b\":{\"type\":\"ball_joint\"}}}",
               &l);
    assert_int_equal(l.c.n_bushes, 1);
    assert_int_equal(l.c.n_kits, 0);
    check_abs(l.c.bushes[0].rates.radial[1], 50e6, 1e-6, "usual radial rate of a ball joint");
    check_abs(l.c.bushes[0].rates.axial, 50e6, 1e-6, "usual axial rate of a ball joint");
    check_abs(l.c.bushes[0].price, -1, 0, "no price");
    release(&l);
}

static void vehicle_and_wheel_come_in_si(void **state)
{
    const gw_case *c = &((loaded *)*state)->c;
    const gw_wheel *w = &c->corners[GW_FRONT].wheel;
    check_abs(c->vehicle.track[GW_REAR], 1.53, 1e-15, "track");
    check_abs(c->vehicle.roll_stiffness[GW_FRONT], 1200 * 180 / GW_PI, 1e-9, "roll stiffness");
    check_abs(c->vehicle.cornering_stiffness[GW_FRONT], 1500 * 180 / GW_PI, 1e-9, "cornering stiffness");
    assert_true(c->vehicle.has_roll_centre);
    check_abs(c->vehicle.roll_centre[GW_REAR], 0.09, 1e-15, "roll centre");
    check_abs(w->tyre_vertical, 230e3, 1e-9, "tyre");
    check_abs(w->tyre_relaxation, 0.3, 1e-15, "relaxation");
    check_abs(w->static_load, 3820, 0, "given static load wins within 1 %");
    check_abs(w->static_camber, -GW_DEG, 1e-15, "camber");
}

static void a_static_load_left_out_follows_from_the_vehicle(void **state)
{
    (void)state;
    loaded l;
    char *text = sample_change(SAMPLE_FULL, "\"static_load_N\": 3820,", "");
    read_sound(text, &l);
    check_rel(l.c.corners[GW_FRONT].wheel.static_load, 1500 * 9.80665 * 0.52 / 2, 1e-14, "static load");
    check_rel(l.c.loads[0].direct.patch_force.z, 1500 * 9.80665 * 0.52 / 2, 1e-14, "null in a load");
    release(&l);
    free(text);
}

static void every_type_of_bush_is_read(void **state)
{
    const gw_case *c = &((loaded *)*state)->c;
    const gw_bush *rubber = &c->bushes[gw_case_find_bush(c, "rubber")];
    check_abs(rubber->rates.radial[0], 900e3, 1e-9, "radial e1");
    check_abs(rubber->rates.radial[1], 1800e3, 1e-9, "radial e2");
    check_rel(rubber->rates.conical[1], 6 * 180 / GW_PI, 1e-14, "conical about e2");
    check_abs(rubber->stop.gap, 2e-3, 1e-15, "stop gap");
    check_abs(rubber->tilt_limit, 15 * GW_DEG, 1e-15, "tilt limit");
    check_abs(rubber->stiffness_factor, 1.15, 1e-15, "stiffness factor");
    assert_string_equal(c->corners[GW_FRONT].joints[0].label, "front upper arm, front bush");
    assert_null(c->corners[GW_FRONT].joints[1].label);
    assert_string_equal(c->shop.currency, "EUR");
    check_abs(c->shop.labour, 84.5, 1e-12, "labour an hour");
    check_abs(c->shop.tax, 0.19, 1e-15, "tax");
    check_abs(c->bushes[gw_case_find_bush(c, "voided")].stiffness_factor, 1, 0, "left out: 1");
    const gw_annulus *a = &c->bushes[gw_case_find_bush(c, "voided")].annulus;
    check_abs(a->inner_radius, 0.010, 1e-15, "a");
    check_abs(a->outer_radius, 0.025, 1e-15, "b");
    check_abs(a->material.shear_modulus.v, 0.64e6, 1e-6, "G of 50 IRHD (P. B. Lindley, MRPRA, from memory)");
    check_abs(a->voids.half_angle, 40 * GW_DEG, 1e-15, "void");
    check_abs(a->interleaf_radius, 0.018, 1e-15, "interleaf");
    const gw_annulus *p = &c->bushes[gw_case_find_bush(c, "poly")].annulus;
    check_abs(p->material.bulk_modulus.v, 2e9, 1e-3, "K given in the case");
    check_abs(p->material.bulk_modulus.tolerance, 0.3, 0, "its band");
    assert_int_equal(p->material.shear_modulus.trust, GW_TRUST_GIVEN);
    const gw_bearing *b = &c->bushes[gw_case_find_bush(c, "bearing")].bearing;
    assert_int_equal(b->liner, GW_LINER_PTFE);
    check_abs(b->static_rating, 40e3, 1e-9, "rating");
    check_abs(b->radial, 0, 0, "radial left out: from the contact");
    check_abs(c->bushes[gw_case_find_bush(c, "offset")].offset_clock, GW_PI / 2, 1e-15, "clock");
}

static void bushes_in_place_follow_the_named_ones(void **state)
{
    const gw_case *c = &((loaded *)*state)->c;
    int in_joint = gw_case_find_bush(c, "front.upper_rear");
    int in_kit = gw_case_find_bush(c, "standard.front.tie_inner");
    assert_int_equal(c->n_bushes, 8);
    assert_int_equal(in_joint, 6);
    assert_int_equal(in_kit, 7);
    assert_int_equal(c->corners[GW_FRONT].joints[1].bush, in_joint);
    check_abs(c->bushes[in_joint].rates.radial[1], 30e6, 1e-6, "radial");
}

/* A kit stands on another that is listed after it, and on the joints where neither says anything. */
static void kits_stand_on_one_another(void **state)
{
    const gw_case *c = &((loaded *)*state)->c;
    const int *sport = c->kits[0].fits[GW_FRONT], *standard = c->kits[1].fits[GW_FRONT];
    assert_string_equal(c->kits[1].label, "standard");
    assert_int_equal(sport[0], gw_case_find_bush(c, "offset"));
    assert_int_equal(standard[0], gw_case_find_bush(c, "rubber"));
    assert_int_equal(sport[4], gw_case_find_bush(c, "rubber"));
    assert_int_equal(sport[6], gw_case_find_bush(c, "standard.front.tie_inner"));
    assert_int_equal(sport[3], gw_case_find_bush(c, "voided"));
}

static void check_vec(gw_vec3 got, double x, double y, double z, const char *what)
{
    check_abs(got.x, x, 1e-15, what);
    check_abs(got.y, y, 1e-15, what);
    check_abs(got.z, z, 1e-15, what);
}

static void frames_are_made_square(void **state)
{
    const gw_corner *corner = &((loaded *)*state)->c.corners[GW_FRONT];
    const gw_joint *j = corner->joints;
    check_vec(gw_col(&j[0].frame, 0), 0, 0, 1, "e1 from a radial axis that is not square");
    check_vec(gw_col(&j[0].frame, 1), 0, -1, 0, "e2 = e3 x e1");
    check_vec(gw_col(&j[0].frame, 2), 1, 0, 0, "e3");
    check_vec(gw_col(&j[2].frame, 0), 1, 0, 0, "axis along z: e1 is x");
    check_vec(gw_col(&j[4].frame, 0), 1, 0, 0, "axis within 20 degrees of z: e1 is x");
    check_vec(gw_col(&j[6].frame, 0), 0, 0, 1, "axis along y: e1 is z");
}

/* 20 degrees is the border: just inside it e1 comes from x, just outside from z. */
static void the_usual_radial_axis_changes_at_20_degrees(void **state)
{
    (void)state;
    for (int outside = 0; outside < 2; outside++) {
        char axis[80];
        double angle = (outside ? 20.01 : 19.99) * GW_DEG;
        loaded l;
        snprintf(axis, sizeof axis, "\"axis\": [0, %.17g, %.17g]", -sin(angle), -cos(angle));
        char *text = sample_change(SAMPLE_FULL, "\"axis\": [0, 0.1, 1]", axis);
        read_sound(text, &l);
        gw_vec3 e1 = gw_col(&l.c.corners[GW_FRONT].joints[4].frame, 0);
        check_abs(fabs(e1.x), outside ? 0 : 1, 1e-12, "e1 x");
        check_abs(e1.z, outside ? sin(angle) : 0, 1e-12, "e1 z");
        release(&l);
        free(text);
    }
}

static void loads_of_both_kinds_are_read(void **state)
{
    const gw_case *c = &((loaded *)*state)->c;
    assert_int_equal(c->n_loads, 4);
    assert_true(c->loads[0].static_vertical);
    check_vec(c->loads[0].direct.patch_force, -4000, 0, 3820, "patch force with the static load");
    check_abs(c->loads[0].direct.travel, 0.02, 1e-15, "travel");
    check_vec(c->loads[1].direct.patch_force, 0, 0, 0, "patch force left out");
    check_vec(c->loads[1].direct.patch_moment, 4, 5, 6, "moment");
    assert_int_equal(c->loads[2].kind, GW_LOAD_MANOEUVRE);
    assert_int_equal(c->loads[2].manoeuvre.side, GW_OUTER);
    assert_int_equal(c->loads[2].manoeuvre.driven, GW_DRIVEN_REAR);
    assert_int_equal(c->loads[3].manoeuvre.side, GW_INNER);
    assert_int_equal(c->loads[3].manoeuvre.driven, GW_DRIVEN_ALL);
}

static void ride_has_its_defaults(void **state)
{
    const gw_ride *r = &((loaded *)*state)->c.ride;
    assert_true(r->present && r->brackets_rigid && r->has_obstacle);
    check_rel(r->roughness, 256e-6, 1e-14, "class C, geometric mean (ISO 8608, from memory)");
    check_abs(r->speed, 20, 1e-12, "speed");
    check_abs(r->contact_length, 0.12, 1e-15, "contact length");
    check_abs(r->bracket_loss, 0.05, 0, "bracket loss");
    check_abs(r->amplitude, 1e-4, 1e-18, "amplitude");
    check_abs(r->temperature, 293.15, 1e-12, "temperature");
    check_abs(r->obstacle_length, 0.5, 1e-15, "obstacle");
}

static void adjusters_are_read(void **state)
{
    const gw_align *a = &((loaded *)*state)->c.align[GW_FRONT];
    assert_true(a->present && a->has_camber && a->has_toe && !a->has_caster);
    assert_int_equal(a->n_adjusters, 3);
    check_abs(a->camber, -1.9 * GW_DEG, 1e-15, "target");
    check_abs(a->camber_tolerance, 0.1 * GW_DEG, 1e-15, "tolerance");
    check_abs(a->adjusters[0].max, 5e-3, 1e-15, "offset");
    assert_int_equal(a->adjusters[1].body, 4);
    assert_int_equal(a->adjusters[1].threads, 2);
    check_abs(a->adjusters[1].min, -6e-3, 1e-15, "shortest");
    check_vec(a->adjusters[2].along, 0, 0.6, 0.8, "along is made a unit vector");
    check_abs(a->adjusters[2].step, 1e-3, 1e-15, "step");
}

static void a_file_with_a_byte_order_mark_is_read(void **state)
{
    (void)state;
    char path[] = "/tmp/giveway-case-XXXXXX";
    int fd = mkstemp(path);
    assert_true(fd >= 0);
    FILE *file = fdopen(fd, "w");
    assert_non_null(file);
    fprintf(file, "\xEF\xBB\xBF%s", SAMPLE_MINIMAL);
    assert_int_equal(fclose(file), 0);
    gw_material_set materials = { 0 };
    loaded l = { 0 };
    assert_int_equal(gw_case_load(path, &materials, &l.c, &l.faults), GW_OK);
    assert_string_equal(l.c.path, path);
    release(&l);
    remove(path);
}

static void an_unused_point_is_a_warning(void **state)
{
    (void)state;
    loaded l = { 0 };
    char *text = sample_change(SAMPLE_FULL, "\"points_mm\": {", "\"points_mm\": { \"spare\": [1, 2, 3],");
    assert_int_equal(sample_read(text, &l.c, &l.faults), GW_OK);
    assert_int_equal(gw_faults_warnings(&l.faults), 1);
    check_contains(gw_faults_warning(&l.faults, 0), "sample.json: corners.front.points_mm.spare: no joint");
    release(&l);
    free(text);
}

static void a_void_shallower_than_its_gap_is_a_warning(void **state)
{
    (void)state;
    loaded l = { 0 };
    char *text = sample_change(SAMPLE_FULL, "\"gap_mm\": 4", "\"gap_mm\": 11");
    assert_int_equal(sample_read(text, &l.c, &l.faults), GW_OK);
    assert_int_equal(gw_faults_warnings(&l.faults), 1);
    check_contains(gw_faults_warning(&l.faults, 0),
                   "bushes.voided.voids.gap_mm: the void is only 10 mm deep");
    release(&l);
    free(text);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_trailing_arm_is_the_least_case),
        cmocka_unit_test(bushes_alone_are_a_case),
        cmocka_unit_test_setup_teardown(vehicle_and_wheel_come_in_si, setup_full, teardown_full),
        cmocka_unit_test(a_static_load_left_out_follows_from_the_vehicle),
        cmocka_unit_test_setup_teardown(every_type_of_bush_is_read, setup_full, teardown_full),
        cmocka_unit_test_setup_teardown(bushes_in_place_follow_the_named_ones, setup_full, teardown_full),
        cmocka_unit_test_setup_teardown(kits_stand_on_one_another, setup_full, teardown_full),
        cmocka_unit_test_setup_teardown(frames_are_made_square, setup_full, teardown_full),
        cmocka_unit_test(the_usual_radial_axis_changes_at_20_degrees),
        cmocka_unit_test_setup_teardown(loads_of_both_kinds_are_read, setup_full, teardown_full),
        cmocka_unit_test_setup_teardown(ride_has_its_defaults, setup_full, teardown_full),
        cmocka_unit_test_setup_teardown(adjusters_are_read, setup_full, teardown_full),
        cmocka_unit_test(a_file_with_a_byte_order_mark_is_read),
        cmocka_unit_test(an_unused_point_is_a_warning),
        cmocka_unit_test(a_void_shallower_than_its_gap_is_a_warning),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}

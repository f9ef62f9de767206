/* SPDX-License-Identifier: MIT */
/* Strength of bushes and bearings under the loads of a case, held against the models below it. */
#include "support/case_sample.h"
#include "support/check.h"

#include "giveway/casefile.h"
#include "giveway/stand.h"
#include "giveway/strength.h"
#include "giveway/units.h"

#include <gsl/gsl_errno.h>
#include <math.h>
#include <string.h>

/* A demonstration case and its deflections; free both. */
static void deflect_case(const char *path, gw_case *c, gw_deflect_study *study)
{
    const gw_selection all = { 0 };
    gw_error err = { 0 };
    sample_load(path, c);
    assert_int_equal(gw_study_deflect(c, &all, study, &err), GW_OK);
}

/* The first solved joint whose bush is of a type; -1 where there is none. */
static int joint_of_type(const gw_case *c, const gw_deflection *item, gw_bush_type type)
{
    for (int j = 0; j < c->corners[item->axle].n_joints; j++)
        if (c->bushes[c->kits[item->kit].fits[item->axle][j]].type == type) return j;
    return -1;
}

static const gw_deflection *item_with(const gw_case *c, const gw_deflect_study *s, gw_bush_type type,
                                      int *joint)
{
    for (int i = 0; i < s->n; i++)
        if ((*joint = joint_of_type(c, &s->item[i], type)) >= 0) return &s->item[i];
    fail_msg("the case has no bush of that type");
    return NULL;
}

/* A bracket in series gives as well; the rubber's own part is the force over the rubber's own rate. */
static void the_rubber_is_strained_by_its_own_part_of_the_deflection(void **unused)
{
    (void)unused;
    gw_case c;
    gw_deflect_study study;
    gw_error err = { 0 };
    int j = 0;
    deflect_case("tests/cases/saloon-by-rule.json", &c, &study);
    const gw_deflection *item = item_with(&c, &study, GW_BUSH_BONDED, &j);
    const gw_joint *joint = &c.corners[item->axle].joints[j];
    const gw_joint_result *r = &item->result.joints[j];
    const gw_bush *bush = &c.bushes[c.kits[item->kit].fits[item->axle][j]];
    gw_bush_law law;
    gw_rubber_strain want;
    assert_true(joint->bracket > 0.0);
    assert_int_equal(gw_bush_law_make(bush, GW_METHOD_SOLVED, &law, &err), GW_OK);
    const double u[3] = { r->f[0] / law.k[0], r->f[1] / law.k[1], r->f[2] / law.k[2] };
    assert_int_equal(gw_rubber_strain_of(&bush->annulus, true, u, r->theta, &want, &err), GW_OK);
    gw_strength s = gw_strength_of(&c, item, j);
    assert_int_equal(s.kind, GW_STRENGTH_RUBBER);
    check_rel(s.strain.compression, want.compression, 1e-6, "compression of the wall");
    check_rel(s.strain.total, want.total, 1e-6, "total strain");
    gw_deflect_study_free(&study);
    gw_case_free(&c);
}

static void a_bearing_is_loaded_by_the_whole_force(void **unused)
{
    (void)unused;
    gw_case c;
    gw_deflect_study study;
    int j = 0;
    deflect_case("tests/cases/hatchback-by-rule.json", &c, &study);
    const gw_deflection *item = item_with(&c, &study, GW_BUSH_BEARING, &j);
    const double *f = item->result.joints[j].f;
    const gw_bearing *bearing = &c.bushes[c.kits[item->kit].fits[item->axle][j]].bearing;
    gw_strength s = gw_strength_of(&c, item, j);
    assert_int_equal(s.kind, GW_STRENGTH_BEARING);
    check_rel(s.load, sqrt(f[0] * f[0] + f[1] * f[1] + f[2] * f[2]), 1e-12, "load");
    check_rel(s.specific_load, s.load / (bearing->ball_diameter * bearing->width), 1e-12, "specific load");
    assert_true(s.n_checks > 0);
    gw_deflect_study_free(&study);
    gw_case_free(&c);
}

static double check_called(const gw_strength *s, const char *what)
{
    for (int i = 0; i < s->n_checks; i++)
        if (strcmp(GW_JUDGED_WORDS[s->check[i].what], what) == 0) return s->check[i].value;
    fail_msg("no check of %s", what);
    return 0.0;
}

static void the_shock_factor_of_the_case_multiplies_the_peak(void **unused)
{
    (void)unused;
    gw_case c;
    gw_deflect_study study;
    int j = 0;
    deflect_case("tests/cases/hatchback-by-rule.json", &c, &study);
    const gw_deflection *item = item_with(&c, &study, GW_BUSH_BEARING, &j);
    double *factor = &c.align[item->axle].shock_factor;
    *factor = 2.385;
    gw_strength s = gw_strength_of(&c, item, j);
    check_rel(check_called(&s, "peak load times shock factor"), 2.385 * s.load, 1e-12, "as the case says");
    *factor = 0.0;
    s = gw_strength_of(&c, item, j);
    check_rel(check_called(&s, "peak load times shock factor"), GW_SHOCK_FACTOR * s.load, 1e-12, "left out");
    gw_deflect_study_free(&study);
    gw_case_free(&c);
}

static void a_bush_given_by_rates_is_not_judged(void **unused)
{
    (void)unused;
    gw_case c;
    gw_deflect_study study;
    int j = 0;
    deflect_case("tests/cases/saloon-by-rule.json", &c, &study);
    const gw_deflection *item = item_with(&c, &study, GW_BUSH_RATES, &j);
    gw_strength s = gw_strength_of(&c, item, j);
    assert_int_equal(s.kind, GW_STRENGTH_NONE);
    assert_int_equal(s.n_checks, 0);
    assert_true(s.holds);
    gw_deflect_study_free(&study);
    gw_case_free(&c);
}

/* With a limit lowered to next to nothing every rubber bush is beyond it, once a kit, joint and check. */
static void what_is_beyond_a_limit_is_told_once_with_its_worst_load(void **unused)
{
    (void)unused;
    gw_case c;
    gw_deflect_study study;
    gw_strength_study strength;
    gw_error err = { 0 };
    const gw_selection all = { 0 };
    sample_load("tests/cases/saloon-by-rule.json", &c);
    for (int b = 0; b < c.n_bushes; b++) c.bushes[b].annulus.material.compressive_strain_limit.v = 1e-4;
    assert_int_equal(gw_study_deflect(&c, &all, &study, &err), GW_OK);
    assert_int_equal(gw_study_strength(&c, &study, &strength, &err), GW_OK);
    assert_true(strength.n > 0);
    for (int i = 0; i < strength.n; i++) {
        const gw_overload *o = &strength.item[i];
        assert_true(o->verdict.value > o->verdict.limit);
        for (int k = 0; k < i; k++) {
            const gw_overload *p = &strength.item[k];
            bool same = p->kit == o->kit && p->axle == o->axle && p->joint == o->joint;
            assert_false(same && p->verdict.what == o->verdict.what);
        }
        for (int l = 0; l < c.n_loads; l++) {
            const gw_deflection *item = gw_deflect_find(&study, o->kit, o->axle, l);
            if (!item) continue;
            gw_strength s = gw_strength_of(&c, item, o->joint);
            for (int v = 0; v < s.n_checks; v++)
                if (s.check[v].what == o->verdict.what) assert_true(s.check[v].value <= o->verdict.value);
        }
    }
    gw_strength_study_free(&strength);
    gw_deflect_study_free(&study);
    gw_case_free(&c);
}

/* Joints beyond a limit and sources of limits, counted the slow way. */
static void check_counts(const gw_case *c, const gw_strength_study *s)
{
    for (int k = 0; k < c->n_kits; k++) {
        bool beyond[GW_AXLES][GW_MAX_JOINTS] = { { false } };
        int joints = 0;
        for (int i = 0; i < s->n; i++)
            if (s->item[i].kit == k && !s->item[i].verdict.holds)
                beyond[s->item[i].axle][s->item[i].joint] = true;
        for (gw_axle a = GW_FRONT; a < GW_AXLES; a++)
            for (int j = 0; j < GW_MAX_JOINTS; j++) joints += beyond[a][j];
        assert_int_equal(gw_stand_joints_beyond(c, s, k), joints);
    }
    for (int i = 0; i < s->n; i++) {
        bool first = true;
        for (int k = 0; k < i; k++)
            first = first && strcmp(s->item[k].verdict.source, s->item[i].verdict.source) != 0;
        assert_int_equal(gw_strength_names_source(s, i), first);
    }
}

/* What is within its limit is told as well, and what is beyond is the same as without. */
static void every_figure_with_a_limit_has_its_worst_load(void **unused)
{
    (void)unused;
    gw_case c;
    gw_deflect_study study;
    gw_strength_study beyond, all_of_them;
    gw_error err = { 0 };
    int failing = 0, figures = 0;
    deflect_case("tests/cases/hatchback-by-rule.json", &c, &study);
    assert_int_equal(gw_study_strength(&c, &study, &beyond, &err), GW_OK);
    assert_int_equal(gw_study_strength_peaks(&c, &study, &all_of_them, &err), GW_OK);
    for (int i = 0; i < all_of_them.n; i++) {
        const gw_overload *o = &all_of_them.item[i];
        assert_true(o->verdict.holds == (gw_overload_ratio(o) <= 1.0));
        if (!o->verdict.holds) {
            assert_true(failing < beyond.n);
            assert_int_equal(beyond.item[failing].joint, o->joint);
            assert_int_equal(beyond.item[failing].load, o->load);
            failing++;
        }
    }
    assert_int_equal(failing, beyond.n);
    check_counts(&c, &beyond);
    check_counts(&c, &all_of_them);
    for (int k = 0; k < c.n_kits; k++)
        for (gw_axle a = GW_FRONT; a < GW_AXLES; a++)
            for (int j = 0; j < c.corners[a].n_joints; j++) {
                const gw_deflection *item = NULL;
                for (int l = 0; l < c.n_loads && !item; l++) item = gw_deflect_find(&study, k, a, l);
                if (item) figures += gw_strength_of(&c, item, j).n_checks;
            }
    assert_int_equal(all_of_them.n, figures);
    gw_strength_study_free(&beyond);
    gw_strength_study_free(&all_of_them);
    gw_deflect_study_free(&study);
    gw_case_free(&c);
}

/* The right wheel's rubber was judged where the kit has another bush there, as if it were the left one. */
static void each_wheel_is_judged_by_the_bush_on_its_own_side(void **unused)
{
    (void)unused;
    gw_case c;
    gw_deflect_study study;
    const gw_selection all = { 0 };
    gw_error err = { 0 };
    int sides = 0;
    sample_load("tests/cases/hatchback-by-rule.json", &c);
    const int j = gw_corner_find_joint(&c.corners[GW_FRONT], "arm_front");
    const int rubber = gw_case_find_bush(&c, "arm_front_rubber"),
              poly = gw_case_find_bush(&c, "arm_front_poly");
    c.kits[1].fits[GW_FRONT][j] = rubber;
    c.kits[1].fits[GW_FRONT][c.pairs[GW_FRONT].joints[j].twin] = poly;
    assert_int_equal(gw_study_deflect(&c, &all, &study, &err), GW_OK);
    for (int i = 0; i < study.n; i++) {
        const gw_deflection *item = &study.item[i];
        if (item->kit != 1 || item->axle != GW_FRONT || !item->sided) continue;
        bool left = item->wheel == GW_LEFT_WHEEL;
        assert_ptr_equal(item->strength[j].bush, &c.bushes[left ? rubber : poly]);
        assert_int_equal(item->strength[j].kind, left ? GW_STRENGTH_RUBBER : GW_STRENGTH_NONE);
        sides |= left ? 1 : 2;
    }
    assert_int_equal(sides, 3);
    gw_deflect_study_free(&study);
    gw_case_free(&c);
}

int main(void)
{
    gsl_set_error_handler_off();
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_rubber_is_strained_by_its_own_part_of_the_deflection),
        cmocka_unit_test(a_bearing_is_loaded_by_the_whole_force),
        cmocka_unit_test(the_shock_factor_of_the_case_multiplies_the_peak),
        cmocka_unit_test(a_bush_given_by_rates_is_not_judged),
        cmocka_unit_test(what_is_beyond_a_limit_is_told_once_with_its_worst_load),
        cmocka_unit_test(every_figure_with_a_limit_has_its_worst_load),
        cmocka_unit_test(each_wheel_is_judged_by_the_bush_on_its_own_side),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}

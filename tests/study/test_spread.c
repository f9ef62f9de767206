/* SPDX-License-Identifier: MIT */
/* Draws and what is made of them, against closed forms. The case is invented. */
#include "giveway/spread.h"
#include "giveway/units.h"
#include "support/case_sample.h"
#include "support/check.h"

#include <gsl/gsl_errno.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* One bush holds the wheel, as good as rigid in rotation: pulled back by F it goes by F / k. The second kit
 * has a bush of its own, the third the first kit's again. */
static const char ONE_BUSH[] =
    "{ \"format\": \"giveway-case-1\", \"title\": \"one bush (invented)\",\n"
    "  \"corners\": { \"front\": {\n"
    "    \"wheel\": { \"centre_mm\": [0, 700, 300], \"loaded_radius_mm\": 300, \"static_load_N\": 3000,\n"
    "               \"static_camber_deg\": 0, \"static_toe_deg\": 0 },\n"
    "    \"joints\": [ { \"name\": \"hub\", \"between\": [\"chassis\", \"upright\"], \"at\": [0, 700, 300],\n"
    "        \"axis\": [0, 1, 0], \"radial_axis\": [1, 0, 0], \"bush\": \"soft\" } ],\n"
    "    \"spring\": { \"on\": \"upright\", \"at\": [0, 700, 300], \"to\": [0, 700, 600], \"rate_N_per_mm\": "
    "40 } } },\n"
    "  \"bushes\": { \"soft\": { \"type\": \"rates\", \"radial_N_per_mm\": [500, 0], \"axial_N_per_mm\": "
    "5e3,\n"
    "              \"conical_Nm_per_deg\": 1e7, \"torsional_Nm_per_deg\": 1e7 },\n"
    "    \"hard\": { \"type\": \"rates\", \"radial_N_per_mm\": [520, 0], \"axial_N_per_mm\": 5e3,\n"
    "              \"conical_Nm_per_deg\": 1e7, \"torsional_Nm_per_deg\": 1e7 } },\n"
    "  \"uncertain\": [ { \"of\": \"bushes\", \"percent\": 60 } ],\n"
    "  \"kits\": [ { \"name\": \"a\", \"fits\": {} }, { \"name\": \"b\", \"fits\": { \"front.hub\": \"hard\" "
    "} },\n"
    "            { \"name\": \"c\", \"fits\": { \"front.hub\": \"soft\" } } ],\n"
    "  \"loads\": [ { \"name\": \"pull\", \"corner\": \"front\", \"hub_force_N\": [-1000, 0, 0] },\n"
    "             { \"name\": \"push\", \"corner\": \"front\", \"hub_force_N\": [700, 0, 0] } ]\n"
    "}\n";

typedef struct loaded {
    gw_material_set materials;
    gw_case c;
    gw_faults faults;
} loaded;

static void load(const char *text, loaded *l)
{
    *l = (loaded){ 0 };
    assert_int_equal(gw_materials_builtin(&l->materials, &l->faults), GW_OK);
    if (gw_case_read("sample.json", text, strlen(text), &l->materials, &l->c, &l->faults) != GW_OK)
        fail_msg("%s", gw_faults_text(&l->faults, 0));
}

static void release(loaded *l)
{
    gw_case_free(&l->c);
    gw_materials_free(&l->materials);
    gw_faults_free(&l->faults);
}

static void spread(const loaded *l, const gw_selection *wanted, const gw_spread_options *o,
                   gw_spread_study *out)
{
    gw_error err = { 0 };
    if (gw_study_spread(&l->c, wanted, o, out, &err) != GW_OK) fail_msg("%s", err.msg);
}

/* Percentiles of 1, 4, 9, ... 121 at (n - 1) p between neighbours: numpy.percentile's default, by hand. */
static void percentiles_lie_between_neighbours(void **state)
{
    (void)state;
    double v[11];
    gw_spread_band b = { .nominal = 7 };
    for (int i = 0; i < 11; i++) v[(7 * i) % 11] = (i + 1.0) * (i + 1.0);
    gw_spread_band_of(v, 11, &b);
    check_rel(b.low, 1 + 0.25 * 3, 1e-14, "0.25 of the way from 1 to 4");
    check_rel(b.median, 36, 1e-14, "median");
    check_rel(b.high, 100 + 0.75 * 21, 1e-14, "0.75 of the way from 100 to 121");
    check_rel(b.mean, 46, 1e-14, "mean of squares to 11: 506/11");
    check_rel(b.sd, sqrt((39974 - 11 * 46.0 * 46.0) / 10), 1e-13, "sum of fourth powers to 11 is 39974");
    check_abs(b.nominal, 7, 0, "nominal is left alone");
}

/* Mean, variance, skewness and kurtosis of n normal numbers have standard errors 1/sqrt(n), sqrt(2/n),
 * sqrt(6/n), sqrt(24/n); neighbours by draw and by figure are uncorrelated to 1/sqrt(n). */
static void draws_are_standard_normal_and_independent(void **state)
{
    (void)state;
    const long n = 200000;
    double m[5] = { 0 }, by_draw = 0, by_figure = 0, by_seed = 0;
    for (long i = 0; i < n; i++) {
        double z = gw_normal_draw(1, i, 3), p = 1;
        for (int k = 1; k < 5; k++) m[k] += (p *= z) / (double)n;
        by_draw += z * gw_normal_draw(1, i + 1, 3) / (double)n;
        by_figure += z * gw_normal_draw(1, i, 4) / (double)n;
        by_seed += z * gw_normal_draw(2, i, 3) / (double)n;
    }
    check_abs(m[1], 0, 4 / sqrt((double)n), "mean");
    check_abs(m[2], 1, 4 * sqrt(2.0 / (double)n), "variance");
    check_abs(m[3], 0, 4 * sqrt(15.0 / (double)n), "third moment");
    check_abs(m[4], 3, 4 * sqrt(96.0 / (double)n), "fourth moment");
    check_abs(by_draw, 0, 4 / sqrt((double)n), "neighbouring draws");
    check_abs(by_figure, 0, 4 / sqrt((double)n), "neighbouring figures");
    check_abs(by_seed, 0, 4 / sqrt((double)n), "other seeds");
}

/* x = F/k exp(-s z): log-normal. With s = ln(1.6)/2: mean exp(s^2/2), sd sqrt(exp(s^2) - 1) times that,
 * median 1; correlation with z: s^2 / (exp(s^2) - 1) squared. */
static void a_pull_on_one_bush_is_log_normal(void **state)
{
    (void)state;
    loaded l;
    gw_spread_study s;
    const gw_selection all = { 0 };
    const gw_spread_options o = { .draws = 20000, .seed = 5 };
    const double sd = 0.5 * log(1.6), x = -1000 / 500e3, root = sqrt(20000.0);
    load(ONE_BUSH, &l);
    spread(&l, &all, &o, &s);
    assert_int_equal(s.n, 6);
    assert_int_equal(s.n_figures, 2);
    const gw_spread_band *b = &s.item[0].own.band[GW_SPREAD_FORE_AFT];
    const double mean = x * exp(sd * sd / 2), dev = -mean * sqrt(exp(sd * sd) - 1);
    check_rel(b->nominal, x, 1e-6, "nominal");
    check_abs(b->mean, mean, 4 * dev / root, "mean");
    check_rel(b->sd, dev, 4 * 0.9 / root, "sd"); /* (kurtosis - 1)^0.5 / 2 is 0.9 here */
    check_rel(b->median, x, 4 * 1.2533 * sd / root, "median");
    check_rel(b->low, x * exp(1.95996 * sd), 4 * 2.67 * sd / root, "2.5th percentile");
    check_rel(b->high, x * exp(-1.95996 * sd), 4 * 2.67 * sd / root, "97.5th percentile");
    const gw_slopes *g = &s.item[0].own.slopes[GW_SPREAD_FORE_AFT];
    check_rel(g->g[0], -sd * x, 1e-4, "slope by z");
    check_abs(g->share[0], 1, 1e-9, "share of the one that moves it");
    check_abs(g->share[1], 0, 1e-9, "share of the other kit's");
    check_abs(g->linear_r2, sd * sd / expm1(sd * sd), 0.01, "correlation with z");
    assert_int_equal(s.item[0].failed, 0);
    gw_spread_study_free(&s);
    release(&l);
}

/* Two independent log-normal bushes; a kit that shares the first kit's bush differs from it in no draw. */
static void kits_differ_by_what_they_do_not_share(void **state)
{
    (void)state;
    loaded l;
    gw_spread_study s;
    const gw_selection all = { 0 };
    const gw_spread_options o = { .draws = 20000, .seed = 9 };
    const double sd = 0.5 * log(1.6), var = expm1(sd * sd) * exp(sd * sd);
    load(ONE_BUSH, &l);
    spread(&l, &all, &o, &s);
    const gw_spread_item *b = &s.item[2], *c = &s.item[4];
    assert_true(b->has_difference && c->has_difference && !s.item[0].has_difference);
    check_rel(b->difference.band[GW_SPREAD_FORE_AFT].nominal, -1000 / 520e3 + 1000 / 500e3, 1e-5, "nominal");
    check_rel(b->difference.band[GW_SPREAD_FORE_AFT].sd,
              1000 * sqrt(var * (1 / (520e3 * 520e3) + 1 / (500e3 * 500e3))), 0.03, "sd of the difference");
    check_abs(b->difference.slopes[GW_SPREAD_FORE_AFT].share[0], 0.5195, 1e-3, "1/500^2 of both");
    check_abs(c->difference.band[GW_SPREAD_FORE_AFT].sd, 0, 0, "the same bush");
    assert_false(c->difference.slopes[GW_SPREAD_FORE_AFT].moved);
    check_abs(c->better, 0.5, 0, "equal: half");
    gw_spread_study_free(&s);
    release(&l);
}

static void check_same(const gw_spread_item *a, const gw_spread_item *b)
{
    assert_int_equal(a->kit, b->kit);
    assert_int_equal(a->load, b->load);
    assert_memory_equal(a->own.band, b->own.band, sizeof a->own.band);
    assert_memory_equal(a->difference.band, b->difference.band, sizeof a->difference.band);
}

static void narrowing_changes_nothing_that_is_left(void **state)
{
    (void)state;
    loaded l;
    gw_spread_study all, some, other;
    const bool kits[] = { false, true, false }, loads[] = { false, true };
    const gw_selection every = { 0 }, wanted = { .kits = kits, .loads = loads };
    gw_spread_options o = { .draws = 150, .seed = 1 };
    load(ONE_BUSH, &l);
    spread(&l, &every, &o, &all);
    spread(&l, &wanted, &o, &some);
    assert_int_equal(some.n, 1);
    check_same(&some.item[0], &all.item[3]);
    assert_memory_equal(&some.summary[1].unsteadiness, &all.summary[1].unsteadiness, sizeof(gw_spread_band));
    o.seed = 2;
    spread(&l, &wanted, &o, &other);
    assert_true(other.item[0].own.band[2].mean != some.item[0].own.band[2].mean);
    gw_spread_study_free(&all);
    gw_spread_study_free(&some);
    gw_spread_study_free(&other);
    release(&l);
}

/* With z = L n about a centre, the share of a figure is (C g)_i^2 / (C_ii g C g) */
static void correlated_figures_share_what_they_explain(void **state)
{
    (void)state;
    loaded l;
    gw_spread_study s;
    const gw_selection all = { 0 };
    const double lower[] = { 0.6, 0, 0.4, 0.3 }, covariance[] = { 0.36, 0.24, 0.24, 0.25 },
                 centre[] = { 1, -0.5 };
    const gw_spread_options o = {
        .draws = 20000, .seed = 3, .centre = centre, .lower = lower, .covariance = covariance
    };
    const double step = 0.5 * log(1.6), x = -1000 / (500e3 * exp(step)),
                 y = -1000 / (520e3 * exp(-0.5 * step));
    load(ONE_BUSH, &l);
    spread(&l, &all, &o, &s);
    check_rel(s.item[0].own.band[GW_SPREAD_FORE_AFT].nominal, x, 1e-5, "about the centre");
    check_rel(s.item[0].own.band[GW_SPREAD_FORE_AFT].low, x * exp(1.95996 * 0.6 * step), 0.02, "narrower");
    double g[] = { step * x, -step * y }; /* of the difference, kit b less kit a */
    double cg[] = { 0.36 * g[0] + 0.24 * g[1], 0.24 * g[0] + 0.25 * g[1] },
           whole = g[0] * cg[0] + g[1] * cg[1];
    const gw_spread_part *d = &s.item[2].difference;
    check_rel(d->slopes[GW_SPREAD_FORE_AFT].share[0], cg[0] * cg[0] / (0.36 * whole), 1e-3, "first");
    check_rel(d->slopes[GW_SPREAD_FORE_AFT].share[1], cg[1] * cg[1] / (0.25 * whole), 1e-3, "second");
    check_rel(d->band[GW_SPREAD_FORE_AFT].sd, sqrt(whole), 0.05, "variance as the slopes have it");
    gw_spread_study_free(&s);
    release(&l);
}

/* Beyond its gap the stop carries; a load that the bush cannot carry is left out and counted. */
static void what_cannot_be_had_is_counted(void **state)
{
    (void)state;
    loaded l;
    gw_spread_study s;
    const gw_selection all = { 0 };
    const gw_spread_options o = { .draws = 400, .seed = 1 };
    char *text = sample_change(ONE_BUSH, "{ \"of\": \"bushes\", \"percent\": 60 }",
                               "{ \"of\": \"corners.front.wheel.loaded_radius_mm\", \"mm\": 600 }");
    load(text, &l); /* a radius below 0 in 16 % of the draws: no wheel at all */
    spread(&l, &all, &o, &s);
    const double failed = (double)s.item[0].failed / 400;
    check_abs(failed, 0.1587, 4 * sqrt(0.16 * 0.84 / 400), "normal below -1");
    assert_int_equal(s.item[0].own.draws + s.item[0].failed, 400);
    assert_int_equal(s.n_warnings, 6);
    check_contains(s.warning[0], "kit a, front corner, pull");
    gw_spread_study_free(&s);
    release(&l);
    free(text);
}

int main(void)
{
    gsl_set_error_handler_off();
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(percentiles_lie_between_neighbours),
        cmocka_unit_test(draws_are_standard_normal_and_independent),
        cmocka_unit_test(a_pull_on_one_bush_is_log_normal),
        cmocka_unit_test(kits_differ_by_what_they_do_not_share),
        cmocka_unit_test(narrowing_changes_nothing_that_is_left),
        cmocka_unit_test(correlated_figures_share_what_they_explain),
        cmocka_unit_test(what_cannot_be_had_is_counted),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}

/* SPDX-License-Identifier: MIT */
/* What a customer feels of each kit. */
#include "support/case_sample.h"
#include "support/check.h"

#include "giveway/card.h"
#include "giveway/units.h"

#include <gsl/gsl_errno.h>
#include <stdlib.h>
#include <string.h>

static gw_material_set materials;
static gw_case saloon;
static gw_report report;
static gw_card_study cards;

static int setup(void **state)
{
    (void)state;
    const char *root = getenv("SOURCE");
    char path[512];
    gw_faults faults = { 0 };
    const gw_selection wanted = { 0 };
    gsl_set_error_handler_off();
    snprintf(path, sizeof path, "%s/tests/cases/saloon-by-rule.json", root ? root : ".");
    int failed = gw_materials_builtin(&materials, &faults) != GW_OK ||
                 gw_case_load(path, &materials, &saloon, &faults) != GW_OK ||
                 gw_study_report(&saloon, &wanted, true, &report, NULL) != GW_OK ||
                 gw_study_cards(&report, NULL, &cards, NULL) != GW_OK;
    gw_faults_free(&faults);
    return failed;
}

static int teardown(void **state)
{
    (void)state;
    gw_card_study_free(&cards);
    gw_report_free(&report);
    gw_case_free(&saloon);
    gw_materials_free(&materials);
    return 0;
}

static void on_the_brakes_it_is_the_root_mean_square_of_both_axles_toe_changes(void **state)
{
    (void)state;
    for (int k = 0; k < cards.n; k++) {
        const gw_gauge *g = &cards.card[k].gauge[GW_FEEL_BRAKES];
        double front = gw_deflect_find(&report.deflect, k, GW_FRONT, cards.stop)->result.toe_change;
        double rear = gw_deflect_find(&report.deflect, k, GW_REAR, cards.stop)->result.toe_change;
        assert_true(g->known);
        check_abs(g->value, sqrt(0.5 * (front * front + rear * rear)), 1e-12, "of both axles");
        assert_true(g->low < g->value && g->value < g->high);
    }
}

/* Of one axle that turns, the slope of its size is that of its toe change, and so is the band. */
static void its_band_of_one_axle_is_the_band_of_that_axles_toe_change(void **state)
{
    (void)state;
    const gw_selection front = { .only_axle = true, .axle = GW_FRONT };
    gw_report one = { 0 };
    gw_card_study of = { 0 };
    assert_int_equal(gw_study_report(&saloon, &front, true, &one, NULL), GW_OK);
    assert_int_equal(gw_study_cards(&one, NULL, &of, NULL), GW_OK);
    for (int k = 0; k < of.n; k++) {
        const gw_gauge *g = &of.card[k].gauge[GW_FEEL_BRAKES];
        const gw_bands_item *band = gw_bands_find(&one.bands, k, GW_FRONT, of.stop, GW_LEFT_WHEEL);
        check_rel(g->high - g->value, band->own[GW_SPREAD_TOE].half, 1e-9, "half a band");
        if (k) assert_int_equal(g->close, band->close);
    }
    gw_card_study_free(&of);
    gw_report_free(&one);
}

static void words_go_by_direction_and_every_band_lies_on_the_scale(void **state)
{
    (void)state;
    for (int k = 0; k < cards.n; k++)
        for (int f = 0; f < GW_FEELS; f++) {
            const gw_gauge *g = &cards.card[k].gauge[f];
            assert_true(g->known);
            assert_true(g->low >= cards.from[f] && g->high <= cards.to[f]);
            if (f == GW_FEEL_BRAKES && g->step) assert_int_equal(g->step < 0, g->change < 0.0);
            if (k == 0) assert_int_equal(g->step, 0);
        }
    assert_true(cards.card[1].gauge[GW_FEEL_BRAKES].step < 0 && cards.card[2].gauge[GW_FEEL_HEARD].step == 3);
}

static void the_axle_where_most_comes_through_speaks_for_the_car(void **state)
{
    (void)state;
    for (int k = 0; k < cards.n; k++) {
        double front = gw_ride_find(&report.ride, k, GW_FRONT)->difference.harshness;
        double rear = gw_ride_find(&report.ride, k, GW_REAR)->difference.harshness;
        check_abs(cards.card[k].gauge[GW_FEEL_FELT].value, fmax(front, rear), 1e-12, "felt");
    }
}

static void a_kit_is_beaten_only_by_what_is_better_in_every_way(void **state)
{
    (void)state;
    gw_combination front[3] = { { .unsteadiness = 1, .harshness = 1, .noise = 1, .cost = 100 },
                                { .unsteadiness = 3, .harshness = 0, .noise = 0, .cost = 10 },
                                { .unsteadiness = 1, .harshness = 1, .noise = 1, .cost = 900 } };
    gw_own_kit_place own = { 1, { .unsteadiness = 2, .harshness = 1, .noise = 1, .cost = 100 } };
    gw_choose_study choose = {
        .front = front, .n_front = 3, .has_recommended = true, .n_own = 1, .own = &own
    };
    gw_card_study of = { 0 };
    for (int r = 0; r < GW_RECOMMENDED; r++) choose.recommended[r].member = 2 - r; /* dear, unsteady, good */
    assert_int_equal(gw_study_cards(&report, &choose, &of, NULL), GW_OK);
    assert_int_equal(of.card[1].beaten_by, 2);
    assert_int_equal(of.card[0].beaten_by, -1);
    gw_card_study_free(&of);
}

/* The lines are what is added up: their sums are the kit's. */
static void the_lines_of_a_quotation_add_up_to_what_the_kit_costs(void **state)
{
    (void)state;
    gw_quote_line line[64];
    for (int k = 0; k < saloon.n_kits; k++) {
        gw_car_cost cost = gw_car_cost_of(&saloon, k);
        double price = 0.0, minutes = 0.0;
        int n = gw_quote_lines(&saloon, k, line, 64), parts = 0;
        assert_true(n > 0 && n < 64);
        for (int i = 0; i < n; i++) {
            price += line[i].price;
            minutes += line[i].minutes;
            if (!line[i].job) parts += line[i].count;
        }
        check_abs(price, cost.price, 1e-9, "price");
        check_abs(minutes, cost.minutes, 1e-9, "minutes");
        assert_int_equal(parts, cost.parts);
        assert_int_equal(gw_quote_lines(&saloon, k, NULL, 0), n);
    }
}

/* Each end of a Panhard rod was charged twice, as if the car had one on either side. By hand from the prices
 * and minutes of the case: two wheels of 9 + 12 + 29 and four links' ends of 10, and two ends of 9; two ends
 * of 58. */
static void what_one_side_alone_has_is_counted_once(void **state)
{
    (void)state;
    gw_case c = { 0 };
    gw_faults faults = { 0 };
    const char *root = getenv("SOURCE");
    char path[512];
    snprintf(path, sizeof path, "%s/cases/live-axle.json", root ? root : ".");
    assert_int_equal(gw_case_load(path, &materials, &c, &faults), GW_OK);
    gw_car_cost all = gw_car_cost_of(&c, 0), rod = gw_car_cost_of(&c, 2);
    assert_int_equal(all.parts, 16);
    check_abs(all.price, 2 * (9 + 12 + 29) + 8 * 10 + 2 * 9, 1e-9, "all of it new");
    assert_int_equal(rod.parts, 2);
    check_abs(rod.price, 2 * 58, 1e-9, "the rod");
    check_abs(rod.minutes, 2 * 30, 1e-9, "its minutes");
    gw_case_free(&c);
    gw_faults_free(&faults);
}

/* The second kit is made the first, and of the third one joint of the left is kept. */
static void liken(gw_case *c)
{
    for (gw_axle a = GW_FRONT; a < GW_AXLES; a++)
        for (int j = 0; j < c->pairs[a].n_joints; j++) c->kits[1].fits[a][j] = c->kits[0].fits[a][j];
    const gw_corner *pair = &c->pairs[GW_FRONT];
    int *fits = c->kits[2].fits[GW_FRONT], *base = c->kits[0].fits[GW_FRONT], kept = -1;
    for (int j = 0; j < pair->n_joints; j++) {
        if (kept < 0 && fits[j] != base[j] && pair->joints[j].twin != j)
            kept = j;
        else
            fits[j] = base[j];
    }
    assert_true(kept >= 0);
}

/* "Too close to call" stood on the card of a kit that was the first one again; a kit of the left side alone
 * was "much steadier", by the wheels that it was fitted to. */
static void a_kit_that_changes_nothing_is_as_before_and_one_of_one_side_neither_better_nor_worse(void **state)
{
    (void)state;
    gw_case c = { 0 };
    gw_faults faults = { 0 };
    gw_report of = { 0 };
    gw_card_study drawn = { 0 };
    const gw_selection all = { 0 };
    const char *root = getenv("SOURCE");
    char path[512];
    snprintf(path, sizeof path, "%s/tests/cases/saloon-by-rule.json", root ? root : ".");
    assert_int_equal(gw_case_load(path, &materials, &c, &faults), GW_OK);
    liken(&c);
    assert_int_equal(gw_study_report(&c, &all, true, &of, NULL), GW_OK);
    assert_int_equal(gw_study_cards(&of, NULL, &drawn, NULL), GW_OK);
    for (int f = GW_FEEL_BRAKES; f <= GW_FEEL_HEARD; f++) {
        const gw_gauge *same = &drawn.card[1].gauge[f];
        assert_true(same->known && !same->close && !same->one_side);
        assert_int_equal(same->step, 0);
        assert_int_equal(drawn.card[2].gauge[f].one_side, f == GW_FEEL_BRAKES || f == GW_FEEL_CORNER);
    }
    /* Its card had no line on money where every other had one. */
    assert_true(drawn.card[1].gauge[GW_FEEL_MONEY].known && drawn.card[0].gauge[GW_FEEL_MONEY].known);
    assert_true(drawn.card[1].gauge[GW_FEEL_MONEY].value == 0.0);
    gw_card_study_free(&drawn);
    gw_report_free(&of);
    gw_case_free(&c);
    gw_faults_free(&faults);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(on_the_brakes_it_is_the_root_mean_square_of_both_axles_toe_changes),
        cmocka_unit_test(its_band_of_one_axle_is_the_band_of_that_axles_toe_change),
        cmocka_unit_test(words_go_by_direction_and_every_band_lies_on_the_scale),
        cmocka_unit_test(the_axle_where_most_comes_through_speaks_for_the_car),
        cmocka_unit_test(a_kit_is_beaten_only_by_what_is_better_in_every_way),
        cmocka_unit_test(
            a_kit_that_changes_nothing_is_as_before_and_one_of_one_side_neither_better_nor_worse),
        cmocka_unit_test(what_one_side_alone_has_is_counted_once),
        cmocka_unit_test(the_lines_of_a_quotation_add_up_to_what_the_kit_costs),
    };
    return cmocka_run_group_tests(tests, setup, teardown);
}

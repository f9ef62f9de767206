/* SPDX-License-Identifier: MIT */
/*
 * Every text of every chart of every command on the demonstration cases lies inside its page and over no
 * other text, by measured pixels, whatever the face: with letters 15 % wider than the widest of the usual
 * ones. And that stays so where kits are many, names long, figures large.
 */
#include "support/case_sample.h"
#include "support/check.h"

#include "chart/set.h"
#include "chart/style.h"
#include "chart/type.h"
#include "format/number.h"
#include "giveway/sweep.h"
#include "page/charts.h"
#include "show/align.h"
#include "show/compare_charts.h"
#include "show/deflect.h"
#include "show/rates.h"
#include "show/ride.h"
#include "show/spread.h"
#include "show/travel.h"

#include <gsl/gsl_errno.h>
#include <math.h>
#include <stdio.h>
#include <string.h>

/* What a text takes with letters 15 % wider, measured here and not taken from the layout. */
static gw_box measured(const gw_layout_text *t)
{
    double w = 1.15 * gw_text_pixels(t->s, t->size, t->bold);
    double left = t->side == GW_TEXT_LEFT ? t->x : t->side == GW_TEXT_RIGHT ? t->x - w : t->x - 0.5 * w;
    return (gw_box){ left, t->y - 0.5 * t->size, left + w, t->y + 0.5 * t->size };
}

static int check_page(const gw_chart_page *page)
{
    const gw_layout *l = &page->layout;
    for (int i = 0; i < l->n_texts; i++) {
        const gw_layout_text *t = &l->text[i];
        gw_box box = measured(t);
        if (box.x0 < 0 || box.y0 < 0 || box.x1 > l->width || box.y1 > l->height)
            fail_msg("%s: \"%s\" leaves the page: %.1f to %.1f, %.1f to %.1f of %d x %d", page->stem, t->s,
                     box.x0, box.x1, box.y0, box.y1, l->width, l->height);
        for (int k = 0; k < i; k++) {
            gw_box other = measured(&l->text[k]);
            if (gw_box_overlap(&box, &other) > 0.01)
                fail_msg("%s: \"%s\" at %.1f,%.1f lies over \"%s\" at %.1f,%.1f", page->stem, t->s, t->x,
                         t->y, l->text[k].s, l->text[k].x, l->text[k].y);
        }
    }
    assert_true(l->n_texts > 0);
    assert_true(*l->title && strlen(l->description) > 20);
    return l->n_texts;
}

static void check_all(const gw_charts *charts, int least)
{
    int texts = 0;
    assert_false(charts->failed);
    for (int i = 0; i < charts->n_pages; i++) texts += check_page(&charts->page[i]);
    if (charts->n_pages < least) fail_msg("%d charts, expected %d", charts->n_pages, least);
    assert_true(texts >= 8 * charts->n_pages);
}

static gw_charts begun(void)
{
    gw_charts charts;
    gw_charts_begin(&charts, "nowhere", GW_CHART_SVG);
    return charts;
}

static const gw_selection ALL = { 0 };

static void sweeps(const gw_comparison *cmp, gw_charts *charts)
{
    for (int axis = GW_SWEEP_BRAKE; axis <= GW_SWEEP_LATERAL; axis++) {
        const gw_sweep_plan plan = {
            .axis = (gw_sweep_axis)axis, .to_g = 1.0, .n = 21, .along = { .side = GW_OUTER }
        };
        gw_sweep_study study = { 0 };
        assert_int_equal(gw_study_sweep(cmp->c, &ALL, &plan, &study, NULL), GW_OK);
        gw_sweep_charts(cmp, &study, charts);
        gw_sweep_study_free(&study);
    }
}

static void axles(const gw_case *c, const gw_deflect_study *deflect, gw_charts *charts)
{
    gw_laws laws;
    gw_picture_study pictures;
    const gw_grid_study none = { 0 };
    assert_int_equal(gw_laws_make(c, GW_METHOD_SOLVED, &laws, NULL), GW_OK);
    assert_int_equal(gw_study_pictures(c, &laws, deflect, &none, &pictures, NULL), GW_OK);
    gw_behind_charts(c, deflect, &pictures, charts);
    gw_picture_study_free(&pictures);
    gw_laws_free(&laws);
}

static void compare(const gw_case *c, gw_charts *charts)
{
    gw_deflect_study deflect = { 0 };
    gw_ride_study ride = { 0 };
    gw_handling_study handling = { 0 };
    const gw_ride_options options = { .no_obstacle = true };
    const gw_comparison cmp = { .c = c, .deflect = &deflect, .ride = &ride, .handling = &handling };
    assert_int_equal(gw_study_deflect(c, &ALL, &deflect, NULL), GW_OK);
    assert_int_equal(gw_study_ride(c, &ALL, &options, &ride, NULL), GW_OK);
    assert_int_equal(gw_study_handling(c, &ALL, &handling, NULL), GW_OK);
    gw_deflect_charts(c, &deflect, charts);
    gw_compare_charts(&cmp, charts);
    gw_handling_charts(&cmp, charts);
    axles(c, &deflect, charts);
    sweeps(&cmp, charts);
    gw_deflect_study_free(&deflect);
    gw_ride_study_free(&ride);
    gw_handling_study_free(&handling);
}

static void travel(const gw_case *c, gw_charts *charts)
{
    const gw_travel_plan plan = { .from = -0.06, .to = 0.06, .step = 0.005 };
    gw_travel_study study = { 0 };
    assert_int_equal(gw_study_travel(c, &ALL, &plan, &study, NULL), GW_OK);
    gw_travel_charts(c, &study, charts);
    gw_travel_study_free(&study);
}

static void align(const gw_case *c, gw_charts *charts)
{
    gw_align_study study = { 0 };
    assert_int_equal(gw_study_align(c, &ALL, &study, NULL), GW_OK);
    gw_align_charts(c, &study, charts);
    gw_align_study_free(&study);
}

static void ride(const gw_case *c, gw_charts *charts)
{
    const gw_ride_options options = { 0 };
    gw_ride_study study = { 0 };
    assert_int_equal(gw_study_ride(c, &ALL, &options, &study, NULL), GW_OK);
    gw_ride_charts(c, &study, charts);
    gw_ride_study_free(&study);
}

static void rates(const gw_case *c, gw_charts *charts)
{
    const gw_rates_plan plan = { .method = GW_METHOD_SOLVED, .amplitude = 1e-4 };
    for (int i = 0; i < c->n_bushes; i++) {
        gw_rates_row row;
        const gw_rates_made made = { .plan = plan, .n = 1, .row = &row };
        assert_int_equal(gw_study_rates(&c->bushes[i], &plan, &row, NULL), GW_OK);
        gw_rates_charts(c, &made, charts);
    }
}

static void spread(const gw_case *c, gw_charts *charts)
{
    const gw_spread_options options = { .draws = 100, .seed = 1 };
    gw_spread_study study = { 0 };
    assert_int_equal(gw_study_spread(c, &ALL, &options, &study, NULL), GW_OK);
    gw_spread_charts(c, &study, charts);
    gw_spread_study_free(&study);
}

static void page(const gw_case *c, bool workshop, gw_charts *charts)
{
    gw_report report = { 0 };
    charts->inlined = true;
    assert_int_equal(gw_study_report(c, &ALL, true, &report, NULL), GW_OK);
    if (workshop) assert_int_equal(gw_study_report_sweeps(&ALL, &report, NULL), GW_OK);
    gw_page_charts_gather(&report, workshop, charts);
    gw_report_free(&report);
}

/* Each command's charts, and at least so many of them. */
static void on_case(const char *path)
{
    static const struct {
        void (*draw)(const gw_case *c, gw_charts *charts);
        int least;
    } COMMANDS[] = { { compare, 36 }, { travel, 10 }, { align, 12 },
                     { ride, 12 },    { rates, 4 },   { spread, 10 } };
    gw_case c;
    sample_load(path, &c);
    for (size_t i = 0; i < sizeof COMMANDS / sizeof *COMMANDS; i++) {
        gw_charts charts = begun();
        COMMANDS[i].draw(&c, &charts);
        check_all(&charts, COMMANDS[i].least);
        gw_charts_free(&charts);
    }
    for (int workshop = 0; workshop <= 1; workshop++) {
        gw_charts charts = begun();
        page(&c, workshop, &charts);
        check_all(&charts, workshop ? 18 : 12);
        gw_charts_free(&charts);
    }
    gw_case_free(&c);
}

static void no_text_of_the_saloon_leaves_its_page_or_lies_over_another(void **state)
{
    (void)state;
    on_case("cases/fast-saloon.json");
    on_case("tests/cases/saloon-by-rule.json");
}

static void no_text_of_the_hatchback_leaves_its_page_or_lies_over_another(void **state)
{
    (void)state;
    on_case("cases/hatchback.json");
    on_case("tests/cases/hatchback-by-rule.json");
}

/* ---- many, long and large ---- */

enum { MANY = 30, POINTS = 25, BANDS = 16 };

static const char LONG_NAME[] = "Spherical bearings at the front, polyurethane at the rear, off-centre upper "
                                "arm bushes and whatever else the workshop found in its drawers";

typedef struct crowd {
    char name[MANY][200];
    const char *names[MANY];
    double x[POINTS], y[MANY][POINTS], low[MANY], high[MANY], centre[BANDS];
    gw_chart_series series[MANY];
} crowd;

static void fill(crowd *k, bool long_names, double size)
{
    for (int i = 0; i < POINTS; i++) k->x[i] = 0.05 * i;
    for (int i = 0; i < BANDS; i++) k->centre[i] = 10.0 * pow(10.0, 0.1 * i);
    for (int i = 0; i < MANY; i++) {
        snprintf(k->name[i], sizeof k->name[i], "%s %d", long_names ? LONG_NAME : "kit", i + 1);
        k->names[i] = k->name[i];
        for (int j = 0; j < POINTS; j++) k->y[i][j] = size * (cos(1.3 * i + 0.2 * j) - 0.3);
        k->low[i] = -size * (0.1 + 0.01 * i);
        k->high[i] = size * 0.02 * (i - 12);
        k->series[i] = (gw_chart_series){ k->names[i], k->x, k->y[i], POINTS, i };
    }
}

static void every_kind(const crowd *k, int n, gw_charts *charts)
{
    const gw_chart_words words = { LONG_NAME, LONG_NAME, LONG_NAME, LONG_NAME, LONG_NAME, LONG_NAME };
    gw_charts_lines(
        charts, "lines",
        &(gw_line_chart){ .words = words, .series = k->series, .n_series = n, .with_zero = true });
    gw_bar_chart bars = { .words = words,
                          .groups = k->names,
                          .n_groups = n,
                          .parts = k->names,
                          .n_parts = n < 12 ? n : 12,
                          .values = &k->y[0][0],
                          .decimals = 3 };
    gw_charts_bars(charts, "bars", &bars);
    bars.stacked = true;
    gw_charts_bars(charts, "stack", &bars);
    gw_charts_spans(
        charts, "spans",
        &(gw_span_chart){
            .words = words, .names = k->names, .low = k->low, .high = k->high, .n = n, .decimals = 4 });
    gw_charts_waterfall(charts, "fall",
                        &(gw_waterfall_chart){ .words = words,
                                               .start_name = LONG_NAME,
                                               .end_name = "end",
                                               .start = k->low[0],
                                               .names = k->names,
                                               .values = k->high,
                                               .n = n,
                                               .decimals = 4 });
    gw_charts_bands(charts, "bands",
                    &(gw_band_chart){ .words = words,
                                      .centre_hz = k->centre,
                                      .n_bands = BANDS,
                                      .names = k->names,
                                      .n_names = n,
                                      .values = &k->y[0][0] });
    gw_charts_points(
        charts, "points",
        &(gw_point_chart){ .words = words, .names = k->names, .x = k->low, .y = k->high, .n = n });
}

static void many_long_names_and_large_figures_find_room(void **state)
{
    (void)state;
    static crowd k;
    for (int i = 0; i < 2 * 2 * 2 * 3; i++) {
        static const int N[] = { 1, 8, MANY };
        gw_charts charts = begun();
        fill(&k, i & 1, i & 2 ? 1.0 : 12345678.0);
        charts.inlined = i & 4;
        every_kind(&k, N[i / 8], &charts);
        check_all(&charts, 7);
        gw_charts_free(&charts);
    }
}

static bool holds(const gw_layout *l, const char *words)
{
    for (int i = 0; i < l->n_texts; i++)
        if (strcmp(l->text[i].s, words) == 0) return true;
    return false;
}

static void from_the_ninth_kit_on_all_are_numbered(void **state)
{
    (void)state;
    static crowd k;
    fill(&k, false, 1.0);
    for (int n = 8; n <= 9; n++) {
        gw_charts charts = begun();
        every_kind(&k, n, &charts);
        const gw_layout *lines = &charts.page[0].layout, *bands = &charts.page[5].layout;
        assert_int_equal(holds(lines, n == 9 ? "9  kit 9" : "kit 8"), true);
        assert_int_equal(holds(lines, "1  kit 1"), n == 9);
        assert_int_equal(holds(lines, "1"), n == 9); /* on the line, too */
        assert_int_equal(holds(bands, "9  kit 9"), n == 9);
        gw_charts_free(&charts);
    }
}

/* ---- marks that no command of today draws ---- */

static void a_loop_with_a_law_a_band_bubbles_and_whiskers_stay_apart(void **state)
{
    (void)state;
    static const double X[] = { 0, 1, 2, 1, 0, -1, 0 }, Y[] = { 0, 600, 1500, 900, 100, -700, -40 };
    static const double AT[] = { -1, 0, 1, 2 }, LAW[] = { -650, 0, 650, 1420 };
    static const double LOW[] = { -700, -40, 600, 1300 }, HIGH[] = { -600, 40, 700, 1550 };
    const gw_chart_mark marks[] = {
        { .kind = GW_MARK_AREA, .x = AT, .low = LOW, .high = HIGH, .n = 4, .style = 1 },
        { .kind = GW_MARK_LINE, .x = X, .y = Y, .n = 7, .bare = true, .style = 0 },
        { .kind = GW_MARK_LINE, .x = AT, .y = LAW, .n = 4, .style = 1, .stepped = true },
        { .kind = GW_MARK_POINT, .x = AT, .y = LAW, .low = LOW, .high = HIGH, .n = 4, .style = 2 },
        { .kind = GW_MARK_POINT,
          .x = &AT[1],
          .y = &LAW[2],
          .n = 1,
          .style = 3,
          .size = 40,
          .name = "upper rear" },
        { .kind = GW_MARK_LEVEL, .from = 1000, .name = "limit" },
    };
    static const char *const KEYS[] = { "measured", "law" };
    const gw_figure figure = { .words = { "A bush on the press", NULL, "deflection (mm)", "force (N)", NULL,
                                          NULL },
                               .mark = marks,
                               .n = 6,
                               .keys = KEYS,
                               .n_keys = 2,
                               .lines = true };
    gw_charts charts = begun();
    gw_charts_figure(&charts, "loop", &figure);
    assert_int_equal(charts.n_pages, 1);
    check_page(&charts.page[0]);
    const gw_layout *l = &charts.page[0].layout;
    int kinds[5] = { 0 };
    for (int i = 0; i < l->n_shapes; i++) kinds[l->shape[i].kind]++;
    assert_true(kinds[GW_SHAPE_AREA] == 1 && kinds[GW_SHAPE_DISC] == 1 && kinds[GW_SHAPE_MARKER] >= 8);
    assert_true(holds(l, "upper rear") && holds(l, "limit") && holds(l, "law"));
    gw_charts_free(&charts);
}

/* Whiskers are the upright lines that are 1.4 pixels wide. */
static int names_on_whiskers(const gw_layout *l)
{
    int whiskers = 0;
    for (int i = 0; i < l->n_shapes; i++) {
        const gw_shape *line = &l->shape[i];
        if (line->kind != GW_SHAPE_LINE || line->n != 2 || line->width != 1.4) continue;
        const gw_box whisker = { fmin(line->at[0].x, line->at[1].x) - 1, fmin(line->at[0].y, line->at[1].y),
                                 fmax(line->at[0].x, line->at[1].x) + 1, fmax(line->at[0].y, line->at[1].y) };
        whiskers += line->at[0].x == line->at[1].x;
        for (int t = 0; t < l->n_texts; t++) {
            gw_box box = measured(&l->text[t]);
            if (gw_box_overlap(&box, &whisker) > 0.01) fail_msg("\"%s\" lies on a whisker", l->text[t].s);
        }
    }
    return whiskers;
}

static void no_name_lies_on_a_whisker(void **state)
{
    (void)state;
    static const double X[] = { 0, 1.1, 1.12, 5 }, Y[] = { 0.63, 0.45, 0.43, 0.23 };
    static const double LOW[] = { 0.49, 0.32, 0.29, 0.11 }, HIGH[] = { 0.77, 0.58, 0.56, 0.36 };
    static const char *const NAMES[] = { "Standard rubber", "Bearings across the car, rubber along it",
                                         "Mixed, with off-centre upper arm bushes", "Spherical bearings" };
    gw_chart_mark marks[4];
    for (int i = 0; i < 4; i++)
        marks[i] = (gw_chart_mark){ .kind = GW_MARK_POINT,
                                    .x = &X[i],
                                    .y = &Y[i],
                                    .low = &LOW[i],
                                    .high = &HIGH[i],
                                    .n = 1,
                                    .style = i,
                                    .name = NAMES[i] };
    const gw_figure figure = { .words = { "Steadiness", NULL, "harshness (dB)", "toe (deg)", NULL, NULL },
                               .mark = marks,
                               .n = 4 };
    gw_charts charts = begun();
    gw_charts_figure(&charts, "whiskers", &figure);
    check_page(&charts.page[0]);
    assert_int_equal(names_on_whiskers(&charts.page[0].layout), 4);
    gw_charts_free(&charts);
}

int main(void)
{
    gsl_set_error_handler_off();
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(no_text_of_the_saloon_leaves_its_page_or_lies_over_another),
        cmocka_unit_test(no_text_of_the_hatchback_leaves_its_page_or_lies_over_another),
        cmocka_unit_test(many_long_names_and_large_figures_find_room),
        cmocka_unit_test(from_the_ninth_kit_on_all_are_numbered),
        cmocka_unit_test(a_loop_with_a_law_a_band_bubbles_and_whiskers_stay_apart),
        cmocka_unit_test(no_name_lies_on_a_whisker),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}

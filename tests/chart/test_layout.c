/* SPDX-License-Identifier: MIT */
/* Marks lie where the figures at the axes say, and what is read aloud is what is drawn. */
#include "support/check.h"

#include "chart/set.h"
#include "chart/style.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

#define MINUS "\xE2\x88\x92"

static const gw_chart_words WORDS = { "What is seen", "under it", "across (mm)", "up (N)", NULL, NULL };

static gw_charts begun(void)
{
    gw_charts charts;
    gw_charts_begin(&charts, "nowhere", GW_CHART_SVG);
    return charts;
}

static const gw_layout_text *text(const gw_layout *l, const char *s)
{
    for (int i = 0; i < l->n_texts; i++)
        if (strcmp(l->text[i].s, s) == 0) return &l->text[i];
    fail_msg("no text \"%s\"", s);
    return NULL;
}

/* The nth shape of a kind and colour. */
static const gw_shape *shape(const gw_layout *l, gw_shape_kind kind, const char *colour, int nth)
{
    for (int i = 0; i < l->n_shapes; i++)
        if (l->shape[i].kind == kind && strcmp(l->shape[i].colour, colour) == 0 && nth-- == 0)
            return &l->shape[i];
    fail_msg("no such shape");
    return NULL;
}

static void a_line_runs_through_the_figures_of_both_axes(void **state)
{
    (void)state;
    static const double X[] = { 0, 1, 2, 3 }, Y[] = { 0, 10, -20, 30 };
    const gw_chart_series series = { "line", X, Y, 4, 1 };
    gw_charts charts = begun();
    gw_charts_lines(&charts, "line", &(gw_line_chart){ .words = WORDS, .series = &series, .n_series = 1 });
    const gw_layout *l = &charts.page[0].layout;
    const gw_shape *line = shape(l, GW_SHAPE_LINE, gw_style_colour(1), 0);
    assert_int_equal(line->n, 4);
    check_abs(line->at[1].x, text(l, "1.0")->x, 0.01, "x of the second point");
    check_abs(line->at[1].y, text(l, "10")->y, 0.01, "y of the second point");
    check_abs(line->at[2].y, text(l, MINUS "20")->y, 0.01, "y of the third point");
    check_abs(line->at[3].x, text(l, "3.0")->x, 0.01, "x of the last point");
    check_contains(l->description,
                   "line: from 0 at 0 to 30.0 at 3.00; lowest " MINUS "20.0 at 2.00, highest 30.0 at 3.00.");
    gw_charts_free(&charts);
}

static void a_logarithmic_axis_and_one_cut_short_put_points_in_their_places(void **state)
{
    (void)state;
    static const double X[] = { 1, 10, 100, 1000 }, Y[] = { 1, 100, 10, 1000 };
    const gw_chart_series series = { "line", X, Y, 4, 2 };
    gw_charts charts = begun();
    gw_charts_lines(&charts, "log",
                    &(gw_line_chart){ .words = WORDS,
                                      .series = &series,
                                      .n_series = 1,
                                      .log_x = true,
                                      .log_y = true,
                                      .has_x_range = true,
                                      .x_from = 1,
                                      .x_to = 300 });
    const gw_layout *l = &charts.page[0].layout;
    const gw_shape *line = shape(l, GW_SHAPE_LINE, gw_style_colour(2), 0);
    assert_int_equal(line->n, 4); /* the last where it crosses the end of the axis */
    check_abs(line->at[1].x - line->at[0].x, line->at[2].x - line->at[1].x, 0.01, "a decade");
    check_abs(line->at[2].x - line->at[1].x, (line->at[3].x - line->at[2].x) / log10(3.0), 0.01, "to 300");
    gw_charts_free(&charts);
}

static void bars_are_as_long_as_their_values_and_figures_stand_beyond_their_ends(void **state)
{
    (void)state;
    static const char *const GROUPS[] = { "one", "two" }, *const PARTS[] = { "before", "after" };
    static const double VALUES[] = { -2.0, 1.0, 4.0, 3.0 };
    gw_bar_chart bars = { .words = WORDS,
                          .groups = GROUPS,
                          .n_groups = 2,
                          .parts = PARTS,
                          .n_parts = 2,
                          .values = VALUES,
                          .decimals = 2 };
    gw_charts charts = begun();
    gw_charts_bars(&charts, "bars", &bars);
    const gw_layout *l = &charts.page[0].layout;
    const gw_shape *first = shape(l, GW_SHAPE_BOX, gw_style_fill(0), 1),
                   *third = shape(l, GW_SHAPE_BOX, gw_style_fill(0), 2);
    double a = first->at[1].x - first->at[0].x, b = third->at[1].x - third->at[0].x;
    check_rel(b / a, 2.0, 1e-9, "4 to 2"); /* the box before them is the key */
    check_abs(first->at[1].x, third->at[0].x, 1e-6, "both begin at zero");
    check_abs(first->at[1].x, text(l, "0")->x, 0.01, "which is where the axis says");
    assert_true(text(l, MINUS "2.00")->box.x1 <= first->at[0].x && text(l, "4.00")->box.x0 >= third->at[1].x);
    assert_true(text(l, "one")->y < text(l, "two")->y);
    check_contains(l->description,
                   "one, before: " MINUS "2.00. one, after: 1.00. two, before: 4.00. two, after: 3.00.");
    bars.stacked = true;
    gw_charts_bars(&charts, "stack", &bars);
    l = &charts.page[1].layout;
    static const double NONE[] = { (double)NAN, (double)NAN, 4.0, 3.0 };
    bars.values = NONE;
    gw_charts_bars(&charts, "failed", &bars);
    assert_true(text(&charts.page[2].layout, "no result")->y < text(&charts.page[2].layout, "7.00")->y);
    l = &charts.page[1].layout;
    assert_true(text(l, "sum " MINUS "1.00")->y < text(l, "7.00")->y); /* the sums of both rows */
    check_contains(l->description, "one, after: 1.00. one, all: sum " MINUS "1.00.");
    gw_charts_free(&charts);
}

static bool is_tie(const gw_shape *s)
{
    return s->kind == GW_SHAPE_LINE && s->width == 0.9 && s->at[0].x == s->at[1].x;
}

static gw_point middle(const gw_shape *box)
{
    return (gw_point){ 0.5 * (box->at[0].x + box->at[1].x), 0.5 * (box->at[0].y + box->at[1].y) };
}

/* The colour of the part below the tie, and of the sample beside its upper end: one box each. */
static void check_tie(const gw_layout *l, const gw_shape *tie)
{
    const char *part = NULL, *sample = NULL;
    for (int i = 0; i < l->n_shapes; i++) {
        const gw_shape *s = &l->shape[i];
        if (s->kind != GW_SHAPE_BOX || strcmp(s->colour, GW_WHITE) == 0) continue;
        gw_point at = middle(s);
        if (fabs(at.x - tie->at[0].x) < 0.01 && fabs(s->at[0].y - tie->at[0].y) < 0.01) part = s->colour;
        if (fabs(at.y - tie->at[1].y) < 0.01 && fabs(at.x - tie->at[1].x) < 15) sample = s->colour;
    }
    assert_non_null(part);
    assert_non_null(sample);
    assert_string_equal(part, sample);
    for (int t = 0; t < l->n_texts; t++) {
        const gw_box *box = &l->text[t].box;
        assert_false(box->x0 < tie->at[0].x && box->x1 > tie->at[0].x && box->y1 < tie->at[0].y &&
                     box->y0 > tie->at[1].y);
    }
}

static void names_of_a_stack_stand_at_their_parts(void **state)
{
    (void)state;
    static const char *const GROUPS[] = { "one", "two" };
    static const char *const PARTS[] = { "front lower arm, inner bush, of rubber",
                                         "lower arm, outer bush", "rack in its housing", "hair" };
    static const double VALUES[] = { -5.0, -3.0, 1.0, -0.001, -2.0, 0.5, 1.0, -0.001 };
    gw_charts charts = begun();
    for (int inlined = 0; inlined <= 1; inlined++) {
        charts.inlined = inlined;
        gw_charts_bars(&charts, inlined ? "narrow" : "wide",
                       &(gw_bar_chart){ .words = WORDS,
                                        .groups = GROUPS,
                                        .n_groups = 2,
                                        .parts = PARTS,
                                        .n_parts = 4,
                                        .values = VALUES,
                                        .stacked = true,
                                        .decimals = 1 });
        const gw_layout *l = &charts.page[inlined].layout;
        int ties = 0;
        for (int i = 0; i < l->n_shapes; i++)
            if (is_tie(&l->shape[i])) check_tie(l, &l->shape[i]), ties++;
        assert_in_range(ties, inlined ? 2 : 1, 3);
        if (!inlined)
            text(l, "A  front lower arm, inner bush, of rubber"); /* there it has room inside */
        assert_true(text(l, "hair")->y < text(l, "one")->y);            /* no room for it: among the keys */
    }
    gw_charts_free(&charts);
}

static void a_waterfall_goes_from_step_to_step(void **state)
{
    (void)state;
    static const char *const NAMES[] = { "roll", "bushes" };
    static const double STEPS[] = { 3.0, -0.5 };
    gw_charts charts = begun();
    gw_charts_waterfall(&charts, "fall",
                        &(gw_waterfall_chart){ .words = WORDS,
                                               .start_name = "set",
                                               .end_name = "there",
                                               .start = -1.0,
                                               .names = NAMES,
                                               .values = STEPS,
                                               .n = 2,
                                               .decimals = 1 });
    const gw_layout *l = &charts.page[0].layout;
    const gw_shape *start = shape(l, GW_SHAPE_BOX, gw_style_fill(GW_PARTS), 0),
                   *roll = shape(l, GW_SHAPE_BOX, gw_style_fill(GW_PARTS + 3), 0);
    const gw_shape *bushes = shape(l, GW_SHAPE_BOX, gw_style_fill(GW_PARTS + 1), 0),
                   *end = shape(l, GW_SHAPE_BOX, gw_style_fill(GW_PARTS), 1);
    double unit = start->at[1].x - start->at[0].x, zero = start->at[1].x;
    check_abs(roll->at[0].x, zero - unit, 1e-6, "begins where the setting ends");
    check_abs(roll->at[1].x, zero + 2 * unit, 1e-6, "three further");
    check_abs(bushes->at[0].x, zero + 1.5 * unit, 1e-6, "half back");
    check_abs(end->at[1].x, zero + 1.5 * unit, 1e-6, "the sum");
    check_contains(l->description, "set: " MINUS "1.0. roll: +3.0. bushes: " MINUS "0.5. there: 1.5.");
    gw_charts_free(&charts);
}

static void spans_and_third_octaves_reach_from_value_to_value(void **state)
{
    (void)state;
    static const char *const KITS[] = { "a", "b" };
    static const double LOW[] = { 1, -3 }, HIGH[] = { 2, 1 }, HZ[] = { 10, 12.5 }, DB[] = { 6, -3, 3, 12 };
    gw_charts charts = begun();
    gw_charts_spans(
        &charts, "spans",
        &(gw_span_chart){ .words = WORDS, .names = KITS, .low = LOW, .high = HIGH, .n = 2, .decimals = 1 });
    const gw_layout *l = &charts.page[0].layout;
    const gw_shape *a = shape(l, GW_SHAPE_BOX, gw_style_fill(0), 0),
                   *b = shape(l, GW_SHAPE_BOX, gw_style_fill(1), 0);
    check_rel((b->at[1].x - b->at[0].x) / (a->at[1].x - a->at[0].x), 4.0, 1e-9, "four to one");
    check_abs(b->at[1].x, a->at[0].x, 1e-6, "one ends where the other begins");
    check_contains(l->description, "a: +1.0 to +2.0. b: " MINUS "3.0 to +1.0.");
    gw_charts_bands(
        &charts, "bands",
        &(gw_band_chart){
            .words = WORDS, .centre_hz = HZ, .n_bands = 2, .names = KITS, .n_names = 2, .values = DB });
    l = &charts.page[1].layout;
    a = shape(l, GW_SHAPE_BOX, gw_style_fill(0), 1); /* after the key */
    check_abs(a->at[1].y, text(l, "0")->y, 0.01, "stands on zero");
    check_rel((a->at[1].y - a->at[0].y) / (text(l, "0")->y - text(l, "5")->y), 6.0 / 5.0, 1e-6, "6 dB high");
    check_contains(l->description, "10, a: 6.00. 12.5, a: " MINUS "3.00. 10, b: 3.00. 12.5, b: 12.0.");
    gw_charts_free(&charts);
}

static void points_and_whiskers_lie_at_their_values(void **state)
{
    (void)state;
    static const double X[] = { 1, 3 }, Y[] = { 2, 4 }, LOW[] = { 1, 3 }, HIGH[] = { 3, 6 };
    const gw_chart_mark mark = {
        .kind = GW_MARK_POINT, .x = X, .y = Y, .low = LOW, .high = HIGH, .n = 2, .style = 3
    };
    gw_charts charts = begun();
    gw_charts_figure(&charts, "points",
                     &(gw_figure){ .words = WORDS, .y = { .with_zero = true }, .mark = &mark, .n = 1 });
    const gw_layout *l = &charts.page[0].layout;
    const gw_shape *point = shape(l, GW_SHAPE_MARKER, gw_style_colour(3), 1),
                   *whisker = shape(l, GW_SHAPE_LINE, gw_style_colour(3), 3);
    check_abs(point->at->y, text(l, "4")->y, 0.01, "the second point");
    check_abs(whisker->at[0].y, text(l, "3")->y, 0.01, "its whisker's lower end");
    check_abs(whisker->at[1].y, text(l, "6")->y, 0.01, "its whisker's upper end");
    gw_charts_free(&charts);
}

/* WCAG 2.2, "relative luminance" and "contrast ratio". */
static void channels(const char *colour, double c[3])
{
    unsigned r, g, b;
    assert_int_equal(sscanf(colour, "#%02x%02x%02x", &r, &g, &b), 3);
    c[0] = r, c[1] = g, c[2] = b;
}

static double luminance(const char *colour)
{
    double c[3];
    channels(colour, c);
    for (int i = 0; i < 3; i++)
        c[i] = c[i] <= 10.0 ? c[i] / 255 / 12.92 : pow((c[i] / 255 + 0.055) / 1.055, 2.4);
    return 0.2126 * c[0] + 0.7152 * c[1] + 0.0722 * c[2];
}

static double contrast(const char *a, const char *b)
{
    double x = luminance(a) + 0.05, y = luminance(b) + 0.05;
    return fmax(x, y) / fmin(x, y);
}

static double apart(const char *a, const char *b)
{
    double x[3], y[3];
    channels(a, x);
    channels(b, y);
    return sqrt(pow(x[0] - y[0], 2) + pow(x[1] - y[1], 2) + pow(x[2] - y[2], 2));
}

static void what_is_no_kit_has_no_colour_of_a_kit_and_its_letter_reads(void **state)
{
    (void)state;
    for (int p = 0; p < GW_STYLES; p++) {
        const char *fill = gw_style_fill(GW_PARTS + p), *line = gw_style_colour(GW_PARTS + p);
        for (int k = 0; k < GW_STYLES; k++)
            assert_true(apart(fill, gw_style_colour(k)) > 50.0 && apart(line, gw_style_colour(k)) > 50.0);
        for (int other = 0; other < p; other++)
            assert_true(apart(fill, gw_style_fill(GW_PARTS + other)) > 25.0);
        assert_true(contrast(fill, gw_style_text_on(GW_PARTS + p)) >= 4.5);
        assert_true(contrast(line, GW_WHITE) >= 3.0);
        if (p) assert_true(contrast(fill, gw_style_fill(GW_PARTS + p - 1)) >= 1.4); /* neighbours in grey */
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_line_runs_through_the_figures_of_both_axes),
        cmocka_unit_test(a_logarithmic_axis_and_one_cut_short_put_points_in_their_places),
        cmocka_unit_test(bars_are_as_long_as_their_values_and_figures_stand_beyond_their_ends),
        cmocka_unit_test(names_of_a_stack_stand_at_their_parts),
        cmocka_unit_test(a_waterfall_goes_from_step_to_step),
        cmocka_unit_test(spans_and_third_octaves_reach_from_value_to_value),
        cmocka_unit_test(points_and_whiskers_lie_at_their_values),
        cmocka_unit_test(what_is_no_kit_has_no_colour_of_a_kit_and_its_letter_reads),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}

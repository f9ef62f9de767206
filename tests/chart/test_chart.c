/* SPDX-License-Identifier: MIT */
/*
 * Charts from description to file. Whoever runs gnuplot here is this program alone; stand-ins that
 * fail, hang or die are small scripts in a directory of their own, put first on the PATH.
 */
#include "support/check.h"

#include "chart/axis.h"
#include "chart/set.h"
#include "chart/sheet.h"
#include "format/file.h"

#include <dirent.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <time.h>
#include <unistd.h>

static char dir[] = "/tmp/giveway-chart-XXXXXX";
static char *path_before;

static int setup(void **state)
{
    (void)state;
    const char *path = getenv("PATH");
    path_before = path ? strdup(path) : NULL;
    return path_before && mkdtemp(dir) && chdir(dir) == 0 ? 0 : -1;
}

static int teardown(void **state)
{
    (void)state;
    char command[64];
    setenv("PATH", path_before, 1);
    free(path_before);
    snprintf(command, sizeof command, "rm -rf %s", dir);
    return chdir("/") == 0 && system(command) == 0 ? 0 : -1;
}

static int restore_path(void **state)
{
    (void)state;
    return setenv("PATH", path_before, 1);
}

static bool has_gnuplot(void)
{
    return system("gnuplot --version >/dev/null 2>&1") == 0;
}

/* A stand-in for gnuplot that runs `body` in a shell. */
static void stand_in(const char *body)
{
    gw_buf script = { 0 }, path = { 0 };
    assert_int_equal(gw_dir_make("bin", NULL), GW_OK);
    gw_buf_fmt(&script, "#!/bin/sh\n%s\n", body);
    assert_int_equal(gw_file_write("bin/gnuplot", gw_buf_str(&script), script.n, NULL), GW_OK);
    assert_int_equal(chmod("bin/gnuplot", 0755), 0);
    gw_buf_fmt(&path, "%s/bin:%s", dir, path_before);
    setenv("PATH", gw_buf_str(&path), 1);
    gw_buf_free(&script);
    gw_buf_free(&path);
}

static int entries(const char *path)
{
    int n = 0;
    DIR *d = opendir(path);
    if (!d) return -1;
    while (readdir(d)) n++;
    closedir(d);
    return n - 2;
}

static const double X[] = { 0.0, 0.5, 1.0 };
static const double Y[] = { 0.0, -0.1, -0.3 };
static const double F[] = { 0.5, 5.0, 50.0 };
static const double T[] = { 1.0, 0.4, 0.01 };
static const char *const NAMES[] = { "rubber",
                                     "it's \"{x}^2_@\" \\ `id` <b>&amp; \xC3\xA9 \xD7\x90\xD7\x91 \n end\\",
                                     "three" };

static void add_one_of_each(gw_charts *charts, const char *title)
{
    const gw_chart_words words = { title, "under it", "g (-)", "toe (deg)", "small print", NULL };
    const gw_chart_series lines[] = { { NAMES[0], X, Y, 3, 0 }, { NAMES[1], X, Y, 3, 1 } };
    const gw_chart_series logs[] = { { NAMES[1], F, T, 3, 0 } };
    const gw_chart_band band = { 1, 10, NAMES[1] };
    gw_charts_lines(charts, "lines", &(gw_line_chart){ .words = words, .series = lines, .n_series = 2 });
    gw_charts_lines(charts, "logs",
                    &(gw_line_chart){ .words = words,
                                      .series = logs,
                                      .n_series = 1,
                                      .log_x = true,
                                      .log_y = true,
                                      .bands = &band,
                                      .n_bands = 1,
                                      .has_mark = true,
                                      .mark = 0.1,
                                      .mark_label = NAMES[1] });
    gw_bar_chart bars = {
        .words = words, .groups = NAMES, .n_groups = 3, .parts = NAMES, .n_parts = 1, .values = Y
    };
    gw_charts_bars(charts, "bars", &bars);
    bars.stacked = true;
    gw_charts_bars(charts, "stack", &bars);
    gw_charts_points(charts, "points",
                     &(gw_point_chart){ .words = words, .names = NAMES, .x = X, .y = Y, .n = 3 });
    gw_charts_waterfall(charts, "fall",
                        &(gw_waterfall_chart){ .words = words,
                                               .start_name = NAMES[1],
                                               .end_name = "end",
                                               .start = -1,
                                               .names = NAMES,
                                               .values = Y,
                                               .n = 3,
                                               .decimals = 2 });
    gw_charts_bands(
        charts, "octaves",
        &(gw_band_chart){
            .words = words, .centre_hz = F, .n_bands = 3, .names = NAMES, .n_names = 1, .values = T });
}

static void every_kind_is_drawn_in_both_formats_and_nothing_is_left_beside(void **state)
{
    (void)state;
    if (!has_gnuplot()) skip();
    gw_charts c;
    gw_error err = { 0 };
    gw_charts_begin(&c, "a/b", GW_CHART_SVG | GW_CHART_PNG);
    add_one_of_each(&c, "What is seen");
    if (gw_charts_draw(&c, &err) != GW_OK) fail_msg("%s", err.msg);
    assert_string_equal(gw_buf_str(&c.said), ""); /* not even a warning */
    assert_false(c.left_out);
    assert_int_equal(c.n_files, 14);
    assert_int_equal(entries("a/b"), 14);
    for (int i = 0; i < c.n_files; i++) {
        gw_buf file = { 0 };
        assert_int_equal(gw_file_read(c.file[i].path, &file, NULL), GW_OK);
        if (i % 2)
            assert_memory_equal(file.s, "\x89PNG\r\n\x1A\n", 8); /* signature: ISO/IEC 15948:2004, 5.2 */
        else
            check_contains(gw_buf_str(&file), "</svg>");
        gw_buf_free(&file);
    }
    gw_charts_free(&c);
}

static void text_from_outside_stands_in_the_chart_letter_by_letter(void **state)
{
    (void)state;
    if (!has_gnuplot()) skip();
    gw_charts c;
    gw_buf svg = { 0 };
    gw_charts_begin(&c, "text", GW_CHART_SVG);
    add_one_of_each(&c, "a '<script>' & \xFF \x1B[1m \"b\" id='x' {/:Bold c} `date` \\n");
    assert_int_equal(gw_charts_draw(&c, NULL), GW_OK);
    assert_string_equal(gw_buf_str(&c.said), "");
    assert_int_equal(gw_file_read("text/lines.svg", &svg, NULL), GW_OK);
    check_contains(svg.s,
                   "a '&lt;script>' &amp; \xEF\xBF\xBD  [1m \"b\" id='x' {/:Bold c} `date` \\n</text>");
    check_contains(svg.s, "<title id=\"lines-title\">a '&lt;script&gt;' &amp; \xEF\xBF\xBD");
    check_contains(svg.s, "it's \"{x}^2_@\" \\ `id`");
    check_contains(svg.s, "&lt;b>&amp;amp; \xC3\xA9");
    check_contains(svg.s, "end\\</text>");
    assert_null(strstr(svg.s, "<script"));
    assert_null(strstr(svg.s, "<b>"));
    gw_buf_free(&svg);
    gw_charts_free(&c);
}

static void a_picture_has_a_title_a_description_and_ids_of_its_own_and_nothing_of_the_plotting_program(
    void **state)
{
    (void)state;
    gw_buf out = { 0 };
    gw_svg_tidy("<svg \n viewBox=\"0 0 1 1\"\n>\n<title>x</title>\n<desc>made by</desc>\n\t<path id='gpPt0' "
                "d='M0'/>\n<g id=\"gnuplot_plot_1\" ><title>$d0 using 1:2</title>\n"
                "<g stroke-width=\"1\" stroke-linecap=\"butt\" stroke-linejoin=\"miter\">\n"
                "<path d='M1'/>\n</g>\n<g stroke-width=\"1.4\">\n<path d='M2'/>\n</g>\n"
                "<use xlink:href='#gpPt0' font-family=\"sans-serif:Bold\"/>\n\t\t<text> id='x' "
                "href='#y'</text>\n</g></svg>\n",
                "toe", "Toe < 1", "falls & rises", &out);
    check_contains(out.s, "id='toe-Pt0'");
    check_contains(out.s, "href='#toe-Pt0' font-family=\"sans-serif\" font-weight=\"bold\"");
    check_contains(out.s, "<text> id='x' href='#y'</text>");
    check_contains(out.s, "role=\"img\" aria-labelledby=\"toe-title\" aria-describedby=\"toe-description\"");
    check_contains(out.s, "<title id=\"toe-title\">Toe &lt; 1</title>");
    check_contains(out.s, "<desc id=\"toe-description\">falls &amp; rises</desc>");
    check_contains(out.s, "<g>\n<path d='M1'/>\n</g>\n<g stroke-width=\"1.4\">");
    const char *const gone[] = { "made by", "gnuplot", "gpPt", "using 1:2", "linejoin" };
    for (int i = 0; i < 5; i++) assert_null(strstr(out.s, gone[i]));
    gw_buf_free(&out);
}

static void the_same_data_give_the_same_bytes(void **state)
{
    (void)state;
    if (!has_gnuplot()) skip();
    gw_buf file[2] = { { 0 }, { 0 } };
    for (int run = 0; run < 2; run++) {
        gw_charts c;
        gw_charts_begin(&c, run ? "second" : "first", GW_CHART_SVG);
        add_one_of_each(&c, "Again");
        assert_int_equal(gw_charts_draw(&c, NULL), GW_OK);
        for (int i = 0; i < c.n_files; i++) gw_file_read(c.file[i].path, &file[run], NULL);
        gw_charts_free(&c);
    }
    assert_true(file[0].n > 10000);
    assert_string_equal(file[0].s, file[1].s);
    gw_buf_free(&file[0]);
    gw_buf_free(&file[1]);
}

static void a_chart_without_a_finite_value_says_so(void **state)
{
    (void)state;
    if (!has_gnuplot()) skip();
    const double bad[] = { (double)NAN, HUGE_VAL, (double)NAN };
    const gw_chart_series line = { "none", X, bad, 3, 0 };
    const gw_chart_words words = { "Nothing", NULL, NULL, NULL, NULL, NULL };
    gw_charts c;
    gw_buf svg = { 0 };
    gw_charts_begin(&c, "empty", GW_CHART_SVG);
    gw_charts_lines(&c, "empty", &(gw_line_chart){ .words = words, .series = &line, .n_series = 1 });
    gw_charts_bars(
        &c, "bars",
        &(gw_bar_chart){
            .words = words, .groups = NAMES, .n_groups = 3, .parts = NAMES, .n_parts = 1, .values = bad });
    gw_charts_points(&c, "points",
                     &(gw_point_chart){ .words = words, .names = NAMES, .x = bad, .y = Y, .n = 3 });
    gw_charts_bands(
        &c, "bands",
        &(gw_band_chart){
            .words = words, .centre_hz = F, .n_bands = 3, .names = NAMES, .n_names = 1, .values = bad });
    assert_int_equal(gw_charts_draw(&c, NULL), GW_OK);
    assert_string_equal(gw_buf_str(&c.said), "");
    assert_int_equal(gw_file_read("empty/empty.svg", &svg, NULL), GW_OK);
    check_contains(svg.s, "no finite values to show");
    gw_buf_free(&svg);
    gw_charts_free(&c);
}

static void a_file_name_takes_only_plain_letters(void **state)
{
    (void)state;
    gw_charts c;
    const gw_chart_words words = { "x", NULL, NULL, NULL, NULL, NULL };
    gw_charts_begin(&c, "d", GW_CHART_SVG);
    gw_charts_lines(&c, "../hard stop'", &(gw_line_chart){ .words = words });
    assert_string_equal(c.page[0].stem, "---hard-stop-");
    gw_charts_free(&c);
}

/* Draws into `name`, where a file of an earlier run lies; returns what went wrong. */
static gw_status draw_over(const char *name, int seconds, gw_charts *c, gw_error *err)
{
    gw_buf path = { 0 };
    assert_int_equal(gw_dir_make(name, NULL), GW_OK);
    gw_buf_fmt(&path, "%s/lines.svg", name);
    assert_int_equal(gw_file_write(path.s, "earlier", 7, NULL), GW_OK);
    gw_charts_begin(c, name, GW_CHART_SVG | GW_CHART_PNG);
    c->seconds = seconds;
    for (int i = 0; i < 40; i++) add_one_of_each(c, "more than a pipe holds");
    gw_status st = gw_charts_draw(c, err);
    gw_buf left = { 0 };
    gw_file_read(path.s, &left, NULL);
    assert_string_equal(gw_buf_str(&left), "earlier");
    assert_int_equal(entries(name), 1);
    gw_buf_free(&left);
    gw_buf_free(&path);
    return st;
}

static void a_missing_gnuplot_is_told_and_is_no_error(void **state)
{
    (void)state;
    gw_charts c;
    assert_int_equal(gw_dir_make("nothing", NULL), GW_OK);
    setenv("PATH", "nothing", 1);
    assert_int_equal(draw_over("missing", 5, &c, NULL), GW_OK);
    assert_true(c.left_out);
    check_contains(GW_CHARTS_LEFT_OUT, "charts left out: gnuplot is not installed");
    gw_charts_free(&c);
}

static void a_failing_gnuplot_is_reported_with_its_reason(void **state)
{
    (void)state;
    gw_charts c;
    gw_error err = { 0 };
    stand_in("echo 'line 3: no such terminal' >&2; exit 3");
    assert_int_equal(draw_over("failing", 5, &c, &err), GW_E_IO);
    check_contains(err.msg, "gnuplot failed with status 3; no charts: line 3: no such terminal");
    gw_charts_free(&c);
}

static void a_killed_gnuplot_is_reported_with_its_signal(void **state)
{
    (void)state;
    gw_charts c;
    gw_error err = { 0 };
    stand_in("kill -9 $$");
    assert_int_equal(draw_over("killed", 5, &c, &err), GW_E_IO);
    check_contains(err.msg, "gnuplot was ended by signal 9");
    gw_charts_free(&c);
}

static void a_gnuplot_that_draws_nothing_is_no_success(void **state)
{
    (void)state;
    gw_charts c;
    gw_error err = { 0 };
    stand_in("cat >/dev/null");
    assert_int_equal(draw_over("silent", 5, &c, &err), GW_E_IO);
    check_contains(err.msg, "gnuplot left no chart");
    gw_charts_free(&c);
}

static void a_hanging_gnuplot_is_ended_in_time(void **state)
{
    (void)state;
    gw_charts c;
    gw_error err = { 0 };
    stand_in("sleep 30");
    time_t before = time(NULL);
    assert_int_equal(draw_over("hanging", 1, &c, &err), GW_E_IO);
    check_contains(err.msg, "gnuplot did not finish within 1 s");
    assert_true(time(NULL) - before < 10);
    gw_charts_free(&c);
}

static void a_gnuplot_that_talks_without_end_cannot_block(void **state)
{
    (void)state;
    gw_charts c;
    gw_error err = { 0 };
    stand_in("while :; do echo complaint complaint complaint >&2; done");
    assert_int_equal(draw_over("talking", 1, &c, &err), GW_E_IO);
    check_contains(err.msg, "did not finish");
    assert_true(c.said.n < 1 << 18);
    gw_charts_free(&c);
}

static void an_output_directory_that_cannot_be_made_is_named(void **state)
{
    (void)state;
    gw_charts c;
    gw_error err = { 0 };
    assert_int_equal(gw_file_write("blocked", "x", 1, NULL), GW_OK);
    gw_charts_begin(&c, "blocked/charts", GW_CHART_SVG);
    add_one_of_each(&c, "x");
    assert_int_equal(gw_charts_draw(&c, &err), GW_E_IO);
    check_contains(err.msg, "blocked");
    gw_charts_free(&c);
}

static void ticks_are_round_and_cover_the_range(void **state)
{
    (void)state;
    gw_axis a = gw_axis_linear(-0.037, 0.42, 6, true);
    char figure[32];
    assert_true(a.from <= -0.037 && a.to >= 0.42 && a.n_ticks >= 4 && a.n_ticks <= 8);
    check_abs(a.from, -0.1, 1e-12, "from");
    check_abs(a.to, 0.5, 1e-12, "to");
    gw_axis_figure(&a, 0, figure);
    assert_string_equal(figure, "-0.1");
    a = gw_axis_linear(3, 3, 6, true); /* a single value still gets an axis */
    assert_true(a.to > a.from && a.n_ticks >= 2);
    a = gw_axis_log(0.5, 200, false);
    int figures = 0;
    for (int i = 0; i < a.n_ticks; i++) figures += !a.ticks[i].minor;
    assert_int_equal(figures, 9); /* 0.5 1 2 5 10 20 50 100 200 */
}

static void names_that_meet_are_moved_apart_in_order(void **state)
{
    (void)state;
    double centre[] = { 100, 100, 101, 102, 300 };
    const double height[] = { 20, 20, 40, 20, 20 };
    gw_spread(centre, height, 5, 50, 310);
    for (int i = 1; i < 5; i++)
        assert_true(centre[i] - centre[i - 1] >= 0.5 * (height[i] + height[i - 1]) - 0.02);
    assert_true(centre[0] >= 60 && centre[4] <= 300);
}

static void long_text_is_broken_and_only_then_cut(void **state)
{
    (void)state;
    gw_text_lines t = gw_text_break("a label of several words", 125, 3, GW_TYPE_TEXT, false);
    assert_int_equal(t.n, 2);
    assert_string_equal(t.line[0], "a label of");
    assert_string_equal(t.line[1], "several words");
    t = gw_text_break("Donaudampfschifffahrtsgesellschaftskapit\xC3\xA4n", 100, 2, GW_TYPE_TEXT, false);
    assert_int_equal(t.n, 2);
    check_contains(t.line[1], "\xE2\x80\xA6");
    for (int i = 0; i < t.n; i++) assert_true(gw_text_pixels(t.line[i], GW_TYPE_TEXT, false) <= 100);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_kind_is_drawn_in_both_formats_and_nothing_is_left_beside),
        cmocka_unit_test(text_from_outside_stands_in_the_chart_letter_by_letter),
        cmocka_unit_test(
            a_picture_has_a_title_a_description_and_ids_of_its_own_and_nothing_of_the_plotting_program),
        cmocka_unit_test(the_same_data_give_the_same_bytes),
        cmocka_unit_test(a_chart_without_a_finite_value_says_so),
        cmocka_unit_test(a_file_name_takes_only_plain_letters),
        cmocka_unit_test_teardown(a_missing_gnuplot_is_told_and_is_no_error, restore_path),
        cmocka_unit_test_teardown(a_failing_gnuplot_is_reported_with_its_reason, restore_path),
        cmocka_unit_test_teardown(a_killed_gnuplot_is_reported_with_its_signal, restore_path),
        cmocka_unit_test_teardown(a_gnuplot_that_draws_nothing_is_no_success, restore_path),
        cmocka_unit_test_teardown(a_hanging_gnuplot_is_ended_in_time, restore_path),
        cmocka_unit_test_teardown(a_gnuplot_that_talks_without_end_cannot_block, restore_path),
        cmocka_unit_test(an_output_directory_that_cannot_be_made_is_named),
        cmocka_unit_test(ticks_are_round_and_cover_the_range),
        cmocka_unit_test(names_that_meet_are_moved_apart_in_order),
        cmocka_unit_test(long_text_is_broken_and_only_then_cut),
    };
    return cmocka_run_group_tests(tests, setup, teardown);
}

/* SPDX-License-Identifier: MIT */
/* giveway report: one page that the customer understands and the workshop can check. */
#include "base/parallel.h"
#include "chart/chart.h"
#include "cli/command.h"
#include "cli/output.h"
#include "cli/session.h"
#include "format/file.h"
#include "giveway/choose.h"
#include "page/page.h"

#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <time.h>

enum { DATE_MAX = 16, PAGE_MAX = 1500000 }; /* bytes of a page that a telephone still opens at once */

/* "2026-02-29" is no date: what the calendar makes of it must read the same again. */
static bool is_date(const char *text)
{
    char *end = NULL, again[DATE_MAX];
    struct tm day = { .tm_isdst = -1, .tm_hour = 12 };
    if (strlen(text) != 10) return false;
    day.tm_year = (int)(strtol(text, &end, 10) % 10000) - 1900;
    day.tm_mon = *end == '-' ? (int)(strtol(end + 1, &end, 10) % 100) - 1 : 0;
    day.tm_mday = *end == '-' ? (int)(strtol(end + 1, &end, 10) % 100) : 0;
    return mktime(&day) != (time_t)-1 && strftime(again, sizeof again, "%Y-%m-%d", &day) == 10 &&
           strcmp(again, text) == 0;
}

static gw_status check_date(const char *text, gw_error *err)
{
    if (is_date(text)) return GW_OK;
    return gw_fail(err, GW_E_USAGE, "--date takes a day as YYYY-MM-DD, not \"%s\"", text);
}

/* Without --date the day on which the case was last changed: the same input gives the same page. */
static gw_status date_of(const gw_args *args, const char *path, char date[DATE_MAX], gw_error *err)
{
    const char *given = gw_args_text(args, GW_OPT_DATE, 0);
    struct stat file;
    struct tm day;
    if (given) {
        gw_status status = check_date(given, err);
        if (status == GW_OK) snprintf(date, DATE_MAX, "%s", given);
        return status;
    }
    if (stat(path, &file) != 0 || !gmtime_r(&file.st_mtime, &day))
        return gw_fail(err, GW_E_IO, "%s: cannot tell when it was changed: %s", path, strerror(errno));
    strftime(date, DATE_MAX, "%Y-%m-%d", &day);
    return GW_OK;
}

static void tell_size(const gw_buf *page)
{
    if (page->n > PAGE_MAX)
        fprintf(stderr,
                "warning: the page takes %.1f MB, more than the 1.5 MB that a telephone opens at once; "
                "--kit NAME, once for each kit that is to be on it, makes it smaller\n",
                (double)page->n / 1e6);
}

static gw_status write_page(const gw_args *args, const gw_buf *page, gw_error *err)
{
    const char *dir = gw_args_text(args, GW_OPT_OUT, 0);
    gw_buf path = { 0 };
    gw_buf_fmt(&path, "%s/report.html", dir);
    gw_status status = gw_buf_status(&path, err);
    if (status == GW_OK) status = gw_dir_make(dir, err);
    if (status == GW_OK) status = gw_file_write(path.s, page->s, page->n, err);
    if (status == GW_OK && !gw_args_has(args, GW_OPT_QUIET)) {
        fprintf(stderr, "page written to %s\n", path.s);
        tell_size(page);
    }
    gw_buf_free(&path);
    return status;
}

/* The planner and the charts ask nothing of each other: they are worked on side by side. */
typedef struct gw_page_work {
    const gw_report *report;
    const gw_selection *wanted;
    bool workshop;
    gw_page_charts charts;
    gw_choose_study chosen;
    gw_status drawn, planned;
    gw_error err, why;
} gw_page_work;

static gw_status choose(gw_page_work *w)
{
    const gw_report *r = w->report;
    const gw_choose_options options = { .draws = 0, .ride = r->no_ride ? NULL : &r->ride };
    gw_selection known = *w->wanted;
    known.laws = &r->laws;
    return r->c->choose.present ? gw_study_choose(r->c, &known, &options, &w->chosen, &w->why) : GW_OK;
}

static void work_on(void *context, int index)
{
    gw_page_work *w = context;
    if (index)
        w->planned = choose(w);
    else
        w->drawn = gw_page_charts_draw(w->report, w->workshop, &w->charts, &w->err);
}

/* Where the case asks for it; what choose would refuse is left out, and told. */
static const gw_choose_study *chosen_of(const gw_page_work *w, bool quiet)
{
    if (w->planned != GW_OK && !quiet) fprintf(stderr, "warning: what to fit is left out: %s\n", w->why.msg);
    return w->planned == GW_OK && w->report->c->choose.present ? &w->chosen : NULL;
}

static gw_status make_page(const gw_args *args, const gw_report *report, const gw_selection *wanted,
                           const char *date, gw_error *err)
{
    bool quiet = gw_args_has(args, GW_OPT_QUIET);
    gw_page_work w = { .report = report,
                       .wanted = wanted,
                       .workshop = gw_args_is(args, GW_OPT_FOR, "workshop") };
    gw_buf page = { 0 };
    gw_progress(quiet, "drawing charts");
    gw_parallel(2, work_on, &w);
    gw_progress(quiet, NULL);
    const gw_page_wish wish = { .workshop = w.workshop, .date = date, .choose = chosen_of(&w, quiet) };
    gw_status status = w.drawn == GW_OK ? GW_OK : gw_fail(err, w.drawn, "%s", w.err.msg);
    if (status == GW_OK) status = gw_report_page(report, &w.charts, &wish, &page, err);
    if (status == GW_OK) status = write_page(args, &page, err);
    if (status == GW_OK && w.charts.left_out) fprintf(stderr, "%s\n", GW_CHARTS_LEFT_OUT);
    gw_page_charts_free(&w.charts);
    gw_choose_study_free(&w.chosen);
    gw_buf_free(&page);
    return status;
}

static int report(const gw_args *args, const gw_case *c, const gw_selection *wanted)
{
    gw_error err = { 0 };
    gw_report made = { 0 };
    char date[DATE_MAX];
    gw_status status = date_of(args, args->words[0], date, &err);
    if (status == GW_OK)
        status = gw_study_report(c, wanted, !gw_args_has(args, GW_OPT_NO_BANDS), &made, &err);
    if (status == GW_OK && gw_args_is(args, GW_OPT_FOR, "workshop"))
        status = gw_study_report_sweeps(wanted, &made, &err);
    if (status == GW_OK) {
        gw_print_warnings(gw_args_has(args, GW_OPT_QUIET), made.deflect.warning, made.deflect.n_warnings);
        status = make_page(args, &made, wanted, date, &err);
    }
    int exit_status = status == GW_OK ? GW_EXIT_DONE : gw_complain("report", &err);
    exit_status = gw_tell_failed("report", c, &made.deflect, exit_status);
    gw_report_free(&made);
    return exit_status;
}

static int run(const gw_args *args)
{
    gw_session session = { 0 };
    gw_choice choice = { 0 };
    gw_error err = { 0 };
    if (!gw_args_has(args, GW_OPT_OUT)) {
        gw_fail(&err, GW_E_USAGE, "say where the page is to go: -o DIR");
        return gw_complain("report", &err);
    }
    if (gw_dir_may_be(gw_args_text(args, GW_OPT_OUT, 0), &err) != GW_OK) return gw_complain("report", &err);
    int status = gw_session_open(args, args->words[0], &session);
    if (status == GW_EXIT_DONE) status = gw_choice_make(args, &session.c, &choice);
    if (status == GW_EXIT_DONE) status = report(args, &session.c, &choice.wanted);
    gw_choice_free(&choice);
    gw_session_close(&session);
    return status;
}

const gw_command GW_COMMAND_REPORT = {
    .name = "report",
    .args = "CASE -o DIR",
    .summary = "one page for the customer: cards, the axle drawn and heard, charts, a quotation",
    .options = GW_TAKES_SELECTION | GW_TAKES(MATERIALS) | GW_TAKES(OUT) | GW_TAKES(FOR) | GW_TAKES(DATE) |
               GW_TAKES(NO_BANDS) | GW_TAKES(QUIET) | GW_TAKES_ALWAYS,
    .words = { 1, 1 },
    .run = run,
    .out = "where the page goes",
    .details =
        "Writes DIR/report.html, a single file that needs no network: a browser shows it from a memory "
        "stick, and printed it takes two sides of A4. It says what each kit does, costs and brings into the "
        "car, how sure that is, and what will not stand the loads of the case; it draws the axle and lets "
        "the "
        "difference be heard. --for workshop adds an alignment sheet to fill in, bush tables, settings and "
        "how near to its limit each joint works. The date on it is that of the case file unless --date is "
        "given.",
    .examples = { "giveway report cases/fast-saloon.json -o page",
                  "giveway report cases/fast-saloon.json -o page --for workshop --date 2026-03-01" },
};

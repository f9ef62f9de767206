/* SPDX-License-Identifier: MIT */
/* giveway bench: what the press and the test rig say of a bush. */
#include "cli/command.h"
#include "cli/output.h"
#include "cli/run.h"
#include "format/file.h"
#include "show/bench.h"
#include "show/results.h"

#include <string.h>

typedef struct bench {
    const gw_args *args;
    gw_faults faults;
    int n;
    gw_bench_result result[GW_BENCH_FILES];
} bench;

/* "radial=press.csv" taken apart: the curve, -1 where the word names none, and the file. */
static int curve_named(const char *word, const char **file)
{
    for (int i = 0; i < GW_BENCH_FILES; i++) {
        size_t n = strlen(GW_BENCH_AS[i]);
        if (strncmp(word, GW_BENCH_AS[i], n) == 0 && word[n] == '=') {
            *file = word + n + 1;
            return i;
        }
    }
    *file = word;
    return -1;
}

static int usual_curve(gw_bench_kind kind)
{
    return kind == GW_BENCH_FORCE    ? GW_CURVE_RADIAL
           : kind == GW_BENCH_MOMENT ? GW_CURVE_TORSIONAL
                                     : GW_CURVE_WAYS;
}

static bool fits(int as, gw_bench_kind kind)
{
    if (as == GW_CURVE_WAYS) return kind == GW_BENCH_DYNAMIC;
    return kind == (as >= GW_CURVE_CONICAL ? GW_BENCH_MOMENT : GW_BENCH_FORCE);
}

/* Round a bush, or along two axes: not both. */
static bool clash(int a, int b)
{
    if (a == b) return true;
    for (int round = GW_CURVE_RADIAL; round <= GW_CURVE_CONICAL; round += GW_CURVE_CONICAL)
        if ((a == round && (b == round + 1 || b == round + 2)) ||
            (b == round && (a == round + 1 || a == round + 2)))
            return true;
    return false;
}

static void check_place(bench *b, const gw_reader *rd, const gw_bench_result *r)
{
    static const char *const HOLDS[] = { "forces", "moments", "a dynamic test" };
    if (!fits(r->as, r->data.kind))
        gw_fault(rd, NULL, "it holds %s, which is no \"%s\"", HOLDS[r->data.kind], GW_BENCH_AS[r->as]);
    for (int i = 0; i < b->n; i++)
        if (clash(b->result[i].as, r->as))
            gw_fault(
                rd, NULL,
                "\"%s\" beside \"%s\" of %s: several files make one bush; name the curves (radial_e1=FILE)",
                GW_BENCH_AS[r->as], GW_BENCH_AS[b->result[i].as], b->result[i].file);
}

static gw_status read_word(bench *b, const char *word)
{
    gw_bench_result r = { 0 };
    int as = curve_named(word, &r.file);
    gw_reader rd = { r.file, &b->faults, NULL, false };
    const int before = gw_faults_count(&b->faults);
    gw_status st = gw_bench_file_read(&rd, r.file, &r.data);
    if (st != GW_OK) return st;
    r.as = as < 0 ? usual_curve(r.data.kind) : as;
    check_place(b, &rd, &r);
    gw_bench_file_doubts(&rd, &r.data);
    b->result[b->n++] = r;
    return gw_faults_count(&b->faults) == before ? GW_OK : GW_E_PARSE;
}

static int read_all(bench *b)
{
    int status = GW_EXIT_DONE;
    for (int i = 0; i < b->args->n_words; i++)
        if (read_word(b, b->args->words[i]) != GW_OK) status = GW_EXIT_INPUT;
    gw_print_faults(&b->faults, gw_args_has(b->args, GW_OPT_QUIET));
    return b->faults.out_of_memory ? GW_EXIT_OUTPUT : status;
}

static int write_bush(const bench *b)
{
    const char *path = gw_args_text(b->args, GW_OPT_BUSH, 0);
    gw_buf text = { 0 }, missing = { 0 };
    gw_error err = { 0 };
    if (!path) return GW_EXIT_DONE;
    gw_bench_bush(b->result, b->n, &text, &missing);
    gw_status st = gw_buf_status(&missing, &err);
    if (st == GW_OK) st = gw_file_write_text(path, &text, &err);
    if (st == GW_OK && missing.n && !gw_args_has(b->args, GW_OPT_QUIET))
        fprintf(stderr, "warning: %s: not measured, to be added before a case can hold it: %s\n", path,
                gw_buf_str(&missing));
    gw_buf_free(&text);
    gw_buf_free(&missing);
    return st == GW_OK ? GW_EXIT_DONE : gw_complain("bench", &err);
}

static int show(const bench *b)
{
    gw_buf out = { 0 };
    gw_error err = { 0 };
    const gw_bench_made made = { b->n, b->result };
    gw_run_format(b->args, NULL, &GW_BENCH_RESULT, &made, gw_bench_text, &out);
    gw_status st = gw_buf_status(&out, &err);
    int status = st == GW_OK ? write_bush(b) : gw_complain("bench", &err);
    if (status == GW_EXIT_DONE) status = gw_emit(&out);
    gw_buf_free(&out);
    return status == GW_EXIT_DONE ? gw_run_draw(b->args, NULL, &made, gw_bench_charts) : status;
}

static int run(const gw_args *args)
{
    bench b = { .args = args };
    int status = read_all(&b);
    if (status == GW_EXIT_DONE) status = show(&b);
    for (int i = 0; i < b.n; i++) gw_bench_file_free(&b.result[i].data);
    gw_faults_free(&b.faults);
    return status;
}

const gw_command GW_COMMAND_BENCH = {
    .name = "bench",
    .args = "[CURVE=]FILE...",
    .summary = "what the press and the test rig say: rates, loss, nonlinearity; a bush object from readings",
    .options = GW_TAKES(FORMAT) | GW_TAKES_CHARTS | GW_TAKES(BUSH) | GW_TAKES(DETAIL) | GW_TAKES(QUIET) |
               GW_TAKES_ALWAYS,
    .words = { 1, GW_BENCH_FILES },
    .run = run,
    .details =
        "Each file is a table: deflection_mm and force_N, or angle_deg and moment_Nm, in the order taken; or "
        "frequency_Hz, amplitude_mm, stiffness_N_per_mm and loss_angle_deg. Lines that begin with # are "
        "remarks. Several files make one bush; CURVE says which: radial, radial_e1, radial_e2, axial, "
        "torsional, conical, conical_e1, conical_e2 or dynamic (left out: radial for forces, torsional for "
        "moments). --bush writes the bush for a case, -o DIR the charts.",
    .examples = { "giveway bench cases/press.csv dynamic=cases/rig.csv --bush lower-rear.json",
                  "giveway bench axial=cases/press.csv --format json" },
};

/* SPDX-License-Identifier: MIT */
/* giveway bench: what the press and the test rig say of a bush. */
#include "casefile/nearest.h"
#include "cli/command.h"
#include "cli/output.h"
#include "cli/run.h"
#include "format/file.h"
#include "show/bench.h"
#include "show/results.h"

#include <stdio.h>
#include <string.h>

typedef struct bench {
    gw_bench_made made; /* first: the rows are over it */
    gw_faults faults;
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
    for (int i = 0; i < b->made.n; i++)
        if (clash(b->result[i].as, r->as))
            gw_fault(
                rd, NULL,
                "\"%s\" beside \"%s\" of %s: several files make one bush; name the curves (radial_e1=FILE)",
                GW_BENCH_AS[r->as], GW_BENCH_AS[b->result[i].as], b->result[i].file);
}

/* "radail=press.csv", where no file of that whole name is: the curve has a slip, not the file. */
static bool is_slip(bench *b, const char *word)
{
    char curve[32], hint[GW_HINT_MAX];
    const size_t n = strcspn(word, "=");
    if (!word[n] || n >= sizeof curve) return false;
    FILE *file = fopen(word, "rb");
    if (file) fclose(file);
    if (file || !(file = fopen(word + n + 1, "rb"))) return false;
    fclose(file);
    memcpy(curve, word, n);
    curve[n] = '\0';
    gw_nearest near = { .want = curve };
    for (int i = 0; i < GW_BENCH_FILES; i++) gw_nearest_offer(&near, GW_BENCH_AS[i]);
    gw_reader rd = { word + n + 1, &b->faults, NULL, false };
    gw_fault(&rd, NULL, "there is no curve \"%s\"%s (see giveway help bench)", curve,
             gw_nearest_hint(&near, hint));
    return true;
}

static gw_status read_word(bench *b, const char *word)
{
    gw_bench_result r = { 0 };
    int as = curve_named(word, &r.file);
    if (as < 0 && is_slip(b, word)) return GW_E_PARSE;
    gw_reader rd = { r.file, &b->faults, NULL, false };
    const int before = gw_faults_count(&b->faults);
    gw_status st = gw_bench_file_read(&rd, r.file, &r.data);
    if (st != GW_OK) return st;
    r.as = as < 0 ? usual_curve(r.data.kind) : as;
    check_place(b, &rd, &r);
    gw_bench_file_doubts(&rd, &r.data);
    b->result[b->made.n++] = r;
    return gw_faults_count(&b->faults) == before ? GW_OK : GW_E_PARSE;
}

/* Faults of all files are told together. */
static gw_status study(const gw_job *job, void *made, gw_error *err)
{
    bench *b = made;
    gw_status status = GW_OK;
    (void)err;
    b->made.result = b->result;
    for (int i = 0; i < job->args->n_words; i++)
        if (read_word(b, job->args->words[i]) != GW_OK) status = GW_E_PARSE;
    gw_print_faults(&b->faults, gw_args_has(job->args, GW_OPT_QUIET));
    return b->faults.out_of_memory ? GW_E_NOMEM : status;
}

static gw_status write_bush(const gw_job *job, const void *made, gw_error *err)
{
    const gw_bench_made *b = made;
    const char *path = gw_args_text(job->args, GW_OPT_BUSH, 0);
    gw_buf text = { 0 }, missing = { 0 };
    if (!path) return GW_OK;
    gw_bench_bush(b->result, b->n, &text, &missing);
    gw_status status = gw_buf_status(&missing, err);
    if (status == GW_OK) status = gw_file_write_text(path, &text, err);
    if (status == GW_OK && missing.n && !gw_args_has(job->args, GW_OPT_QUIET))
        fprintf(stderr, "warning: %s: not measured, to be added before a case can hold it: %s\n", path,
                gw_buf_str(&missing));
    gw_buf_free(&text);
    gw_buf_free(&missing);
    return status;
}

static void release(void *made)
{
    bench *b = made;
    for (int i = 0; i < b->made.n; i++) gw_bench_file_free(&b->result[i].data);
    gw_faults_free(&b->faults);
}

const gw_command GW_COMMAND_BENCH = {
    .name = "bench",
    .args = "[CURVE=]FILE...",
    .summary = "what the press and the test rig say: rates, loss, nonlinearity; a bush object from readings",
    .options = GW_TAKES(FORMAT) | GW_TAKES_CHARTS | GW_TAKES(BUSH) | GW_TAKES(DETAIL) | GW_TAKES(QUIET) |
               GW_TAKES_ALWAYS,
    .words = { 1, GW_BENCH_FILES },
    .run = gw_run_command,
    .details =
        "Each file is a table: deflection_mm and force_N, or angle_deg and moment_Nm, in the order taken; or "
        "frequency_Hz, amplitude_mm, stiffness_N_per_mm and loss_angle_deg. Lines that begin with # are "
        "remarks. Several files make one bush; CURVE says which: radial, radial_e1, radial_e2, axial, "
        "torsional, conical, conical_e1, conical_e2 or dynamic (left out: radial for forces, torsional for "
        "moments). --bush writes the bush for a case, -o DIR the charts.",
    .examples = { "giveway bench cases/press.csv dynamic=cases/rig.csv --bush lower-rear.json",
                  "giveway bench axial=cases/press.csv --format json" },
    .size = sizeof(bench),
    .result = &GW_BENCH_RESULT,
    .no_case = true,
    .study = study,
    .text = gw_bench_text,
    .charts = gw_bench_charts,
    .write = write_bush,
    .release = release,
};

/* SPDX-License-Identifier: MIT */
#include "casefile/bench_file.h"

#include "casefile/columns.h"
#include "giveway/units.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { MM, NEWTON, ANGLE, MOMENT, HERTZ, AMPLITUDE, STIFFNESS, LOSS, HEADS };
static const char *const HEAD[HEADS] = { "deflection_mm",      "force_N",       "angle_deg",
                                         "moment_Nm",          "frequency_Hz",  "amplitude_mm",
                                         "stiffness_N_per_mm", "loss_angle_deg" };

/* Columns of a kind, from the first; each with its range. */
static const struct kind {
    int first, n;
} KIND[] = { { MM, 2 }, { ANGLE, 2 }, { HERTZ, 4 } };
static const gw_range RANGE[HEADS] = { GW_FROM(-1e5, 1e5), GW_FROM(-1e9, 1e9), GW_FROM(-360, 360),
                                       GW_FROM(-1e9, 1e9), GW_ABOVE(0, 1e6),   GW_ABOVE(0, 1e4),
                                       GW_ABOVE(0, 1e12),  GW_BETWEEN(0, 90) };
static const double UNIT[HEADS] = { GW_MM, 1.0, GW_DEG, 1.0, 1.0, GW_MM, GW_N_PER_MM, GW_DEG };

/* After so many faults in the rows of one file the rest is not looked at: the first say what is wrong. */
enum { MOST_FAULTS = 5 };

static const double SOFTEST = 10 * GW_N_PER_MM, STIFFEST = 300000 * GW_N_PER_MM;
static const double SHORTEST = 0.02 * GW_MM, LONGEST = 50 * GW_MM;

static int count_of(const gw_columns *t, int kind)
{
    int n = 0;
    for (int i = 0; i < KIND[kind].n; i++) n += gw_columns_has(t, KIND[kind].first + i);
    return n;
}

static bool find_kind(const gw_reader *rd, const gw_columns *t, gw_bench_kind *out)
{
    int whole = -1, begun = -1;
    for (int k = 0; k <= GW_BENCH_DYNAMIC; k++) {
        if (count_of(t, k) == 0) continue;
        if (count_of(t, k) < KIND[k].n) {
            begun = k;
        } else if (whole >= 0) {
            gw_fault(rd, NULL, "line %d: heads of two tests at once: one file holds one test", t->heads_line);
            return false;
        } else {
            whole = k;
        }
    }
    if (whole < 0) {
        for (int i = 0; i < KIND[begun].n; i++)
            if (!gw_columns_has(t, KIND[begun].first + i))
                gw_fault(rd, NULL, "line %d: the head %s is missing beside those that are there",
                         t->heads_line, HEAD[KIND[begun].first + i]);
        return false;
    }
    *out = (gw_bench_kind)whole;
    return true;
}

static bool take_row(const gw_reader *rd, const gw_columns *t, int row, gw_bench_file *out)
{
    double v[4] = { 0 };
    bool ok = true;
    int first = KIND[out->kind].first;
    for (int i = 0; i < KIND[out->kind].n; i++) {
        ok = gw_columns_number(rd, t, row, first + i, RANGE[first + i], &v[i]) && ok;
        v[i] *= UNIT[first + i];
    }
    if (out->kind == GW_BENCH_DYNAMIC) {
        out->row[row] = (gw_rig_row){ v[0], v[1], v[2], v[3] };
    } else {
        out->x[row] = v[0];
        out->f[row] = v[1];
    }
    out->line[row] = t->line[row];
    return ok;
}

static bool take_rows(const gw_reader *rd, const gw_columns *t, gw_bench_file *out)
{
    const int before = gw_faults_count(rd->faults);
    size_t room = (size_t)t->n_rows + 1;
    bool dynamic = out->kind == GW_BENCH_DYNAMIC;
    out->n_rows = t->n_rows;
    out->line = malloc(room * sizeof *out->line);
    out->x = dynamic ? NULL : malloc(room * sizeof *out->x);
    out->f = dynamic ? NULL : malloc(room * sizeof *out->f);
    out->row = dynamic ? malloc(room * sizeof *out->row) : NULL;
    if (!out->line || (dynamic ? !out->row : !out->x || !out->f)) {
        rd->faults->out_of_memory = true;
        return false;
    }
    for (int r = 0; r < t->n_rows && gw_faults_count(rd->faults) < before + MOST_FAULTS; r++)
        take_row(rd, t, r, out);
    return gw_faults_count(rd->faults) == before;
}

static gw_status fit(gw_bench_file *file, gw_error *err)
{
    if (file->kind == GW_BENCH_DYNAMIC) return gw_rig_fit(file->row, file->n_rows, &file->rig, err);
    return gw_press_make(file->x, file->f, file->n_rows, file->kind == GW_BENCH_MOMENT, &file->press, err);
}

gw_status gw_bench_file_read(const gw_reader *rd, const char *path, gw_bench_file *out)
{
    gw_bench_file file = { 0 };
    gw_columns t = { 0 };
    gw_error err = { 0 };
    gw_status st = gw_columns_read(rd, path, HEAD, HEADS, &t);
    if (st != GW_OK) return st;
    if (!find_kind(rd, &t, &file.kind) || !take_rows(rd, &t, &file)) {
        st = rd->faults->out_of_memory ? GW_E_NOMEM : GW_E_PARSE;
    } else if ((st = fit(&file, &err)) == GW_E_NOMEM) {
        rd->faults->out_of_memory = true;
    } else if (st != GW_OK) {
        gw_fault(rd, NULL, "%s", err.msg);
        st = GW_E_PARSE;
    }
    gw_columns_free(&t);
    if (st == GW_OK)
        *out = file;
    else
        gw_bench_file_free(&file);
    return st;
}

/* A second way that was given up. */
static void doubt_loop(const gw_reader *rd, const gw_bench_file *file)
{
    const double *x = file->x, span = file->press.stroke[0] + file->press.stroke[1];
    const int n = file->n_rows, last = n - 1;
    double high = x[0], low = x[0];
    for (int i = 1; i < n; i++) high = fmax(high, x[i]), low = fmin(low, x[i]);
    double short_of_ends = fmin(high - x[last], x[last] - low);
    if (!file->press.one_way || short_of_ends < 0.02 * span) return;
    gw_warn(rd, NULL,
            "line %d: the loop never closes: it stops on the way back, so no loss can be told; read on to "
            "where it began",
            file->line[last]);
}

static void doubt_press(const gw_reader *rd, const gw_press *p)
{
    double longest = fmax(p->stroke[0], p->stroke[1]), shortest = fmin(p->stroke[0], p->stroke[1]);
    if (p->rate_zero < SOFTEST)
        gw_warn(rd, NULL, "only %.3g N/mm at zero: are the forces in kN? force_N wants newtons",
                p->rate_zero / GW_N_PER_MM);
    if (p->rate_zero > STIFFEST || shortest < SHORTEST)
        gw_warn(rd, NULL, "%.3g N/mm at zero over a stroke of %.3g mm: are the deflections in metres?",
                p->rate_zero / GW_N_PER_MM, shortest / GW_MM);
    if (longest > LONGEST)
        gw_warn(rd, NULL, "a stroke of %.4g mm: no bush has it; are the columns swapped?", longest / GW_MM);
}

/* A figure that is fitted and yet not fixed: its band is wider than itself, or cannot be told. */
static bool is_loose(const gw_rig *rig, gw_rig_figure f)
{
    const gw_rig_law *l = &rig->law;
    const double size[GW_RIG_FIGURES] = { l->rate,       l->zener_gain,      l->zener_alpha,
                                          l->payne_gain, l->payne_amplitude, l->payne_exponent };
    return rig->fitted[f] && !(rig->within[f] < size[f]);
}

/* One line: which figures, and what to read so that they are fixed. */
static void doubt_loose(const gw_reader *rd, const gw_rig *rig)
{
    static const char *const NAMES[GW_RIG_FIGURES] = { "rate",       "zener_gain",      "zener_alpha",
                                                       "payne_gain", "payne_amplitude", "payne_exponent" };
    char list[120] = "";
    int n = 0;
    bool payne = false;
    for (int f = 0; f < GW_RIG_FIGURES; f++) {
        if (!is_loose(rig, (gw_rig_figure)f)) continue;
        payne = payne || f >= GW_RIG_PAYNE_GAIN;
        size_t at = strlen(list);
        snprintf(list + at, sizeof list - at, "%s%s", n++ ? ", " : "", NAMES[f]);
    }
    if (n)
        gw_warn(
            rd, NULL,
            "these readings do not fix %s: of each the band is wider than the figure; read at frequencies%s "
            "further apart, or more of them",
            list, payne ? " and amplitudes" : "");
}

/* Of rubber the least is about a degree, and the most, 20, are 0.35 rad (common practice). */
static const double LEAST_ANGLE = 0.5 * GW_DEG;

static void doubt_angles(const gw_reader *rd, const gw_bench_file *file)
{
    double most = 0.0;
    for (int i = 0; i < file->n_rows; i++) most = fmax(most, file->row[i].loss);
    if (most < LEAST_ANGLE)
        gw_warn(rd, NULL,
                "loss angles of at most %.2g deg; rubber has 1 to 20 (common practice): are they in radians, "
                "or loss factors?",
                most / GW_DEG);
}

static void doubt_rig(const gw_reader *rd, const gw_rig *rig)
{
    doubt_loose(rd, rig);
    if (is_loose(rig, GW_RIG_RATE)) return; /* what it is tells nothing of units */
    if (rig->law.rate < SOFTEST)
        gw_warn(rd, NULL, "a rate of only %.3g N/mm: are the stiffnesses in kN/mm?",
                rig->law.rate / GW_N_PER_MM);
    if (rig->law.rate > STIFFEST)
        gw_warn(rd, NULL, "a rate of %.3g N/mm: are the stiffnesses in N/m?", rig->law.rate / GW_N_PER_MM);
}

void gw_bench_file_doubts(const gw_reader *rd, const gw_bench_file *file)
{
    if (file->kind != GW_BENCH_DYNAMIC) doubt_loop(rd, file);
    if (file->kind == GW_BENCH_FORCE) doubt_press(rd, &file->press);
    if (file->kind == GW_BENCH_DYNAMIC) {
        doubt_angles(rd, file);
        doubt_rig(rd, &file->rig);
    }
}

void gw_bench_file_free(gw_bench_file *file)
{
    free(file->x);
    free(file->f);
    free(file->row);
    free(file->line);
    gw_press_free(&file->press);
    *file = (gw_bench_file){ 0 };
}

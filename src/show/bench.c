/* SPDX-License-Identifier: MIT */
/* The rows of `bench`: what the press and the test rig say, a file an element. */
#include "show/bench.h"

#include "record/csv.h"
#include "show/results.h"

#include <math.h>

const char *const GW_BENCH_AS[GW_BENCH_FILES + 1] = { "radial",  "radial_e1",  "radial_e2",  "axial",
                                                      "conical", "conical_e1", "conical_e2", "torsional",
                                                      "dynamic", NULL };

static const char *const KINDS[] = { "static", "dynamic", NULL };

GW_READS(const gw_bench_file *, file, gw_bench_result, &it->data)
GW_READS(const char *, kind, gw_bench_result, KINDS[it->data.kind == GW_BENCH_DYNAMIC])

/* -- the press: forces and moments have keys of their own, since their units differ -- */

GW_READS(const void *, pressed, gw_bench_result, it->data.kind == GW_BENCH_DYNAMIC ? NULL : &it->data.press)
GW_READS(const void *, forces, gw_bench_result, it->data.kind == GW_BENCH_FORCE ? &it->data.press : NULL)
GW_READS(const void *, moments, gw_bench_result, it->data.kind == GW_BENCH_MOMENT ? &it->data.press : NULL)
GW_READS(gw_unit, unit, gw_bench_result, it->data.kind == GW_BENCH_MOMENT ? GW_UNIT_DEG : GW_UNIT_MM)
GW_READS(int, points, gw_press, it->n)

static void point(const gw_place *p, double *x)
{
    x[0] = GW_IT(p, gw_press)->x[p->index];
    x[1] = GW_IT(p, gw_press)->f[p->index];
}

static GW_RECORD(SIDES_RECORD, gw_press,
    GW_MEMBER("sides", PLAIN, gw_press, sides, 0, "that were tested; 1: the other is taken as odd"),
    GW_MEMBER("one_way", PLAIN, gw_press, one_way, 0, "no loop, so no loss"));
static GW_RECORD(LOSS_RECORD, gw_press,
    GW_MEMBER("loss_factor", PLAIN, gw_press, loss, GW_MAY_LACK, "from the area of the loop"));
static GW_RECORD(SHAPE_RECORD, gw_press,
    GW_MEMBER("nonlinearity", PLAIN, gw_press, nonlinearity, 0, "largest departure from a straight line over the largest force"),
    GW_MEMBER("asymmetry", PLAIN, gw_press, asymmetry, GW_MAY_LACK, "of both sides, where both were tested"));
static GW_RECORD(POINTS_RECORD, gw_press,
    GW_CURVE("points", unit, points, point, 0, "read off the mean curve: place in mm and force, or angle in degrees and moment"));
#define GW_STROKE(LENGTH) GW_MEMBER("stroke", LENGTH, gw_press, stroke, GW_MINUS_PLUS, "minus and plus side")
#define GW_ZERO(LENGTH, FORCE)                                                                               \
    GW_MEMBER("zero", LENGTH, gw_press, zero, 0, "reading without force"),                                   \
        GW_MEMBER("zero", FORCE, gw_press, zero_force, GW_MAY_LACK,                                          \
                  "mean at reading 0, where that was reached")
#define GW_SLOPES(RATE)                                                                                      \
    GW_MEMBER("rate_at_zero", RATE, gw_press, rate_zero, 0, "slope without force"),                          \
        GW_MEMBER("rate_at_tenth", RATE, gw_press, rate_tenth, GW_MINUS_PLUS,                                \
                  "slope at a tenth of the strokes"),                                                        \
        GW_MEMBER("rate_at_full", RATE, gw_press, rate_full, GW_MINUS_PLUS,                                  \
                  "slope at the ends of the strokes")
static GW_RECORD(STROKE_OF_FORCES_RECORD, gw_press, GW_STROKE(MM));
static GW_RECORD(STROKE_OF_MOMENTS_RECORD, gw_press, GW_STROKE(DEG));
static GW_RECORD(ZERO_OF_FORCES_RECORD, gw_press, GW_ZERO(MM, N));
static GW_RECORD(ZERO_OF_MOMENTS_RECORD, gw_press, GW_ZERO(DEG, NM));
static GW_RECORD(SLOPES_OF_FORCES_RECORD, gw_press, GW_SLOPES(N_PER_MM));
static GW_RECORD(SLOPES_OF_MOMENTS_RECORD, gw_press, GW_SLOPES(NM_PER_DEG));

/* -- the rig: a law, and within what each of its figures is known -- */

GW_READS(const void *, rig, gw_bench_result, file(p)->kind == GW_BENCH_DYNAMIC ? it : NULL)

static void fitted(const gw_place *p, double value, int figure, double *x)
{
    bool payne = figure < GW_RIG_PAYNE_AMPLITUDE || file(p)->rig.law.payne_gain > 0.0;
    x[0] = payne ? value : (double)NAN;
    x[1] = file(p)->rig.within[figure];
}

#define GW_FITS(member, figure)                                                                              \
    static void member(const gw_place *p, double *x)                                                         \
    {                                                                                                        \
        fitted(p, file(p)->rig.law.member, GW_RIG_##figure, x);                                              \
    }
GW_FITS(rate, RATE)
GW_FITS(zener_gain, ZENER_GAIN)
GW_FITS(zener_alpha, ZENER_ALPHA)
GW_FITS(payne_gain, PAYNE_GAIN)
GW_FITS(payne_amplitude, PAYNE_AMPLITUDE)
GW_FITS(payne_exponent, PAYNE_EXPONENT)

static void zener_tau(const gw_place *p, double *x)
{
    x[0] = file(p)->rig.law.zener_tau; /* set, not fitted */
    x[1] = (double)NAN;
}

GW_READS(double, worst_line, gw_bench_result, it->data.line[it->data.rig.worst])

static GW_RECORD(WORST_RECORD, gw_bench_result,
    GW_COUNTED("line", worst_line, 0, "of the file"),
    GW_MEMBER("stiffness", PERCENT, gw_bench_result, data.rig.worst_stiffness, 0, "read over fitted, less one"),
    GW_MEMBER("loss_angle", DEG, gw_bench_result, data.rig.worst_loss, 0, "read less fitted"));

static GW_RECORD(RIG_RECORD, gw_bench_result,
    GW_FILLED("rate", N_PER_MM, GW_FITTED, rate, GW_MAY_LACK, "static, at large amplitude"),
    GW_FILLED("zener_gain", PLAIN, GW_FITTED, zener_gain, GW_MAY_LACK, "rise of the stiffness from slow to fast"),
    GW_FILLED("zener_tau", S, GW_FITTED, zener_tau, GW_NO_CSV | GW_MAY_LACK, "time of the middle of the rise"),
    GW_MEMBER("zener_tau", S, gw_bench_result, data.rig.law.zener_tau, GW_NO_JSON, "time of the middle of the rise"),
    GW_FILLED("zener_alpha", PLAIN, GW_FITTED, zener_alpha, GW_MAY_LACK, "order of the derivative"),
    GW_FILLED("payne_gain", PLAIN, GW_FITTED, payne_gain, GW_MAY_LACK, "rise of the stiffness from large to small amplitude"),
    GW_FILLED("payne_amplitude", MM, GW_FITTED, payne_amplitude, GW_MAY_LACK, "of the middle of the fall"),
    GW_FILLED("payne_exponent", PLAIN, GW_FITTED, payne_exponent, GW_MAY_LACK, "how steep the fall is"),
    GW_MEMBER("scatter", PLAIN, gw_bench_result, data.rig.scatter, GW_MAY_LACK, "of one residual, where there are more readings than figures"),
    GW_PRESENT("worst", rig, &WORST_RECORD, GW_ON_LINE, "reading farthest from the law"));

/* -- all of it; in CSV forces, moments and the rig one after the other -- */

static GW_RECORD(NAMED_RECORD, gw_bench_result,
    GW_MEMBER("file", PLAIN, gw_bench_result, file, 0, "as it was given"),
    GW_WORD("as", gw_bench_result, as, GW_BENCH_AS, 0, "the curve it was taken as"),
    GW_CHOSEN("kind", kind, KINDS, 0, "of a press, or of a rig"));

static GW_RECORD(RESULT_RECORD, gw_bench_result,
    GW_PART_SAME(&NAMED_RECORD),
    GW_PART_FOUND(pressed, &SIDES_RECORD, 0),
    GW_PART_FOUND(forces, &STROKE_OF_FORCES_RECORD, 0),
    GW_PART_FOUND(moments, &STROKE_OF_MOMENTS_RECORD, 0),
    GW_PART_FOUND(pressed, &POINTS_RECORD, 0),
    GW_PART_FOUND(forces, &ZERO_OF_FORCES_RECORD, 0),
    GW_PART_FOUND(moments, &ZERO_OF_MOMENTS_RECORD, 0),
    GW_PART_FOUND(pressed, &LOSS_RECORD, 0),
    GW_PART_FOUND(forces, &SLOPES_OF_FORCES_RECORD, 0),
    GW_PART_FOUND(moments, &SLOPES_OF_MOMENTS_RECORD, 0),
    GW_PART_FOUND(pressed, &SHAPE_RECORD, 0),
    GW_PART_FOUND(rig, &RIG_RECORD, 0));

static GW_RECORD(COLUMNS_RECORD, gw_bench_result,
    GW_PART_SAME(&NAMED_RECORD),
    GW_PART_FOUND(pressed, &SIDES_RECORD, 0),
    GW_PART_FOUND(pressed, &LOSS_RECORD, 0),
    GW_PART_FOUND(pressed, &SHAPE_RECORD, 0),
    GW_PART_FOUND(forces, &STROKE_OF_FORCES_RECORD, 0),
    GW_PART_FOUND(forces, &ZERO_OF_FORCES_RECORD, 0),
    GW_PART_FOUND(forces, &SLOPES_OF_FORCES_RECORD, 0),
    GW_PART_FOUND(moments, &STROKE_OF_MOMENTS_RECORD, 0),
    GW_PART_FOUND(moments, &ZERO_OF_MOMENTS_RECORD, 0),
    GW_PART_FOUND(moments, &SLOPES_OF_MOMENTS_RECORD, 0),
    GW_PART_FOUND(rig, &RIG_RECORD, 0));

static GW_RECORD(MADE_RECORD, gw_bench_made,
    GW_ROWS("results", gw_bench_made, n, result, &RESULT_RECORD, 0, "a file each"));

static void put_csv(const gw_case *c, const void *made, gw_buf *out)
{
    const gw_bench_made *m = made;
    gw_records_csv(&COLUMNS_RECORD, c, m->result, m->n, sizeof *m->result, out);
}

const gw_result GW_BENCH_RESULT = {
    .command = "bench", .record = &MADE_RECORD, .rows = "results", .csv = put_csv, .caseless = true
};

/* SPDX-License-Identifier: MIT */
/* The bush of a case that readings make. */
#include "show/bench.h"

#include "format/json.h"
#include "format/number.h"
#include "giveway/units.h"

#include <math.h>
#include <stdlib.h>

/* Whoever reads the file, or puts it into a case by hand, has no use for the tails that sums of readings
 * leave: 0.30000000000000004. Twelve digits are far more than a dial gauge has. */
static double tidy(double value)
{
    return strtod(gw_significant(value, 12).s, NULL);
}

static void points(gw_json *json, const gw_press *p, double unit)
{
    gw_json_array(json, "points");
    for (int i = 0; i < p->n; i++) {
        const double point[2] = { tidy(p->x[i] / unit), tidy(p->f[i]) };
        gw_json_numbers(json, NULL, point, 2);
    }
    gw_json_close(json);
}

static void bush_dynamic(gw_json *json, const gw_rig_law *law)
{
    gw_json_object(json, "dynamic");
    gw_json_number(json, "rate_N_per_mm", tidy(law->rate / GW_N_PER_MM));
    gw_json_number(json, "zener_gain", tidy(law->zener_gain));
    gw_json_number(json, "zener_tau_s", tidy(law->zener_tau));
    gw_json_number(json, "zener_alpha", tidy(law->zener_alpha));
    gw_json_number(json, "payne_gain", tidy(law->payne_gain));
    if (law->payne_gain > 0.0) {
        gw_json_number(json, "payne_amplitude_mm", tidy(law->payne_amplitude / GW_MM));
        gw_json_number(json, "payne_exponent", tidy(law->payne_exponent));
    }
    gw_json_close(json);
}

/* Curves as bits. */
#define GW_BIT(way) (1U << GW_CURVE_##way)

static bool have(const gw_bench_result *results, int n, unsigned any)
{
    for (int i = 0; i < n; i++)
        if (any >> results[i].as & 1U) return true;
    return false;
}

/* What a bush needs besides: of the two ways across, and of those that nobody measured at all. */
static void tell_missing(const gw_bench_result *results, int n, gw_buf *missing)
{
    static const struct {
        unsigned any;
        const char *key;
    } NEEDED[] = { { GW_BIT(RADIAL) | GW_BIT(RADIAL_E1) | GW_BIT(RADIAL_E2), "radial_N_per_mm" },
                   { GW_BIT(AXIAL), "axial_N_per_mm" },
                   { GW_BIT(CONICAL) | GW_BIT(CONICAL_E1) | GW_BIT(CONICAL_E2), "conical_Nm_per_deg" },
                   { GW_BIT(TORSIONAL), "torsional_Nm_per_deg" } };
    static const int PAIRS[][2] = { { GW_CURVE_RADIAL_E1, GW_CURVE_RADIAL_E2 },
                                    { GW_CURVE_CONICAL_E1, GW_CURVE_CONICAL_E2 } };
    for (size_t i = 0; i < sizeof NEEDED / sizeof *NEEDED; i++)
        if (!have(results, n, NEEDED[i].any))
            gw_buf_fmt(missing, "%s%s", missing->n ? ", " : "", NEEDED[i].key);
    for (int i = 0; i < 4; i++) {
        int one = PAIRS[i / 2][i % 2], other = PAIRS[i / 2][1 - i % 2];
        if (have(results, n, 1U << one) && !have(results, n, 1U << other))
            gw_buf_fmt(missing, "%s%s", missing->n ? ", " : "", GW_BENCH_AS[other]);
    }
}

void gw_bench_bush(const gw_bench_result *results, int n, gw_buf *out, gw_buf *missing)
{
    gw_json json = { .out = out };
    const gw_press *first = NULL;
    const gw_rig_law *law = NULL;
    gw_json_object(&json, NULL);
    gw_json_string(&json, "type", "measured");
    for (int i = 0; i < n; i++) {
        const gw_bench_file *file = &results[i].data;
        if (file->kind == GW_BENCH_DYNAMIC) {
            law = &file->rig.law;
            continue;
        }
        if (!first) first = &file->press;
        gw_json_object(&json, GW_BENCH_AS[results[i].as]);
        points(&json, &file->press, file->kind == GW_BENCH_MOMENT ? GW_DEG : GW_MM);
        gw_json_close(&json);
    }
    if (law)
        bush_dynamic(&json, law);
    else if (first && isfinite(first->loss))
        gw_json_number(&json, "loss_factor", tidy(first->loss));
    gw_json_close(&json);
    tell_missing(results, n, missing);
}

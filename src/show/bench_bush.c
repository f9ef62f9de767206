/* SPDX-License-Identifier: MIT */
/* The bush of a case that readings make. */
#include "show/bench.h"

#include "format/json.h"
#include "giveway/units.h"

#include <math.h>
#include <string.h>

static void points(gw_json *json, const gw_press *p, double unit)
{
    gw_json_array(json, "points");
    for (int i = 0; i < p->n; i++) {
        const double point[2] = { p->x[i] / unit, p->f[i] };
        gw_json_numbers(json, NULL, point, 2);
    }
    gw_json_close(json);
}

static void bush_dynamic(gw_json *json, const gw_rig_law *law)
{
    gw_json_object(json, "dynamic");
    gw_json_number(json, "rate_N_per_mm", law->rate / GW_N_PER_MM);
    gw_json_number(json, "zener_gain", law->zener_gain);
    gw_json_number(json, "zener_tau_s", law->zener_tau);
    gw_json_number(json, "zener_alpha", law->zener_alpha);
    gw_json_number(json, "payne_gain", law->payne_gain);
    if (law->payne_gain > 0.0) {
        gw_json_number(json, "payne_amplitude_mm", law->payne_amplitude / GW_MM);
        gw_json_number(json, "payne_exponent", law->payne_exponent);
    }
    gw_json_close(json);
}

static bool have(const gw_bench_result *results, int n, const char *const *any)
{
    for (int i = 0; i < n; i++)
        for (const char *const *word = any; *word; word++)
            if (strcmp(GW_BENCH_AS[results[i].as], *word) == 0) return true;
    return false;
}

/* What a bush needs besides: of the two ways across, and of those that nobody measured at all. */
static void tell_missing(const gw_bench_result *results, int n, gw_buf *missing)
{
    static const struct {
        const char *any[4], *key;
    } NEEDED[] = { { { "radial", "radial_e1", "radial_e2" }, "radial_N_per_mm" },
                   { { "axial" }, "axial_N_per_mm" },
                   { { "conical", "conical_e1", "conical_e2" }, "conical_Nm_per_deg" },
                   { { "torsional" }, "torsional_Nm_per_deg" } };
    static const char *const PAIRS[][2] = { { "radial_e1", "radial_e2" }, { "conical_e1", "conical_e2" } };
    for (size_t i = 0; i < sizeof NEEDED / sizeof *NEEDED; i++)
        if (!have(results, n, NEEDED[i].any))
            gw_buf_fmt(missing, "%s%s", missing->n ? ", " : "", NEEDED[i].key);
    for (int i = 0; i < 4; i++) {
        const char *const one[] = { PAIRS[i / 2][i % 2], NULL }, *const other[] = { PAIRS[i / 2][1 - i % 2],
                                                                                    NULL };
        if (have(results, n, one) && !have(results, n, other))
            gw_buf_fmt(missing, "%s%s", missing->n ? ", " : "", other[0]);
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
        gw_json_number(&json, "loss_factor", first->loss);
    gw_json_close(&json);
    tell_missing(results, n, missing);
}

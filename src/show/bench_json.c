/* SPDX-License-Identifier: MIT */
#include "show/bench.h"

#include "giveway/units.h"
#include "format/json.h"

#include <math.h>
#include <string.h>

const char *const GW_BENCH_AS[GW_BENCH_FILES] = { "radial",     "radial_e1", "radial_e2",
                                                  "axial",      "conical",   "conical_e1",
                                                  "conical_e2", "torsional", "dynamic" };

static void pair(gw_json *json, const char *key, const double v[2], double unit)
{
    const double both[2] = { v[0] / unit, v[1] / unit };
    gw_json_numbers(json, key, both, 2);
}

static void points(gw_json *json, const gw_press *p, double unit)
{
    gw_json_array(json, "points");
    for (int i = 0; i < p->n; i++) {
        const double point[2] = { p->x[i] / unit, p->f[i] };
        gw_json_numbers(json, NULL, point, 2);
    }
    gw_json_close(json);
}

static void press(gw_json *json, const gw_press *p, bool turns)
{
    const double unit = turns ? GW_DEG : GW_MM, rate = turns ? GW_NM_PER_DEG : GW_N_PER_MM;
    gw_json_int(json, "sides", p->sides);
    gw_json_bool(json, "one_way", p->one_way);
    pair(json, turns ? "stroke_deg" : "stroke_mm", p->stroke, unit);
    points(json, p, unit);
    gw_json_number(json, turns ? "zero_deg" : "zero_mm", p->zero / unit);
    gw_json_number(json, turns ? "zero_Nm" : "zero_N", p->zero_force);
    gw_json_number(json, "loss_factor", p->loss);
    gw_json_number(json, turns ? "rate_at_zero_Nm_per_deg" : "rate_at_zero_N_per_mm", p->rate_zero / rate);
    pair(json, turns ? "rate_at_tenth_Nm_per_deg" : "rate_at_tenth_N_per_mm", p->rate_tenth, rate);
    pair(json, turns ? "rate_at_full_Nm_per_deg" : "rate_at_full_N_per_mm", p->rate_full, rate);
    gw_json_number(json, "nonlinearity", p->nonlinearity);
    gw_json_number(json, "asymmetry", p->asymmetry);
}

static void fitted(gw_json *json, const char *key, double value, double within)
{
    gw_json_object_on_line(json, key);
    gw_json_number(json, "value", value);
    gw_json_number(json, "within", within);
    gw_json_close(json);
}

static void rig(gw_json *json, const gw_bench_file *file)
{
    const gw_rig *r = &file->rig;
    bool payne = r->law.payne_gain > 0.0;
    fitted(json, "rate_N_per_mm", r->law.rate / GW_N_PER_MM, r->within[GW_RIG_RATE] / GW_N_PER_MM);
    fitted(json, "zener_gain", r->law.zener_gain, r->within[GW_RIG_ZENER_GAIN]);
    fitted(json, "zener_tau_s", r->law.zener_tau, (double)NAN);
    fitted(json, "zener_alpha", r->law.zener_alpha, r->within[GW_RIG_ZENER_ALPHA]);
    fitted(json, "payne_gain", r->law.payne_gain, r->within[GW_RIG_PAYNE_GAIN]);
    fitted(json, "payne_amplitude_mm", payne ? r->law.payne_amplitude / GW_MM : (double)NAN,
           r->within[GW_RIG_PAYNE_AMPLITUDE] / GW_MM);
    fitted(json, "payne_exponent", payne ? r->law.payne_exponent : (double)NAN,
           r->within[GW_RIG_PAYNE_EXPONENT]);
    gw_json_number(json, "scatter", r->scatter);
    gw_json_object_on_line(json, "worst");
    gw_json_int(json, "line", file->line[r->worst]);
    gw_json_number(json, "stiffness_percent", 100.0 * r->worst_stiffness);
    gw_json_number(json, "loss_angle_deg", r->worst_loss / GW_DEG);
    gw_json_close(json);
}

void gw_bench_json(const gw_bench_result *results, int n, gw_buf *out)
{
    gw_json json = { .out = out };
    gw_json_object(&json, NULL);
    gw_json_string(&json, "format", "giveway-result-1");
    gw_json_string(&json, "command", "bench");
    gw_json_array(&json, "results");
    for (int i = 0; i < n; i++) {
        bool dynamic = results[i].data.kind == GW_BENCH_DYNAMIC;
        gw_json_object(&json, NULL);
        gw_json_string(&json, "file", results[i].file);
        gw_json_string(&json, "as", GW_BENCH_AS[results[i].as]);
        gw_json_string(&json, "kind", dynamic ? "dynamic" : "static");
        if (dynamic)
            rig(&json, &results[i].data);
        else
            press(&json, &results[i].data.press, results[i].data.kind == GW_BENCH_MOMENT);
        gw_json_close(&json);
    }
    gw_json_close(&json);
    gw_json_close(&json);
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

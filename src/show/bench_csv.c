/* SPDX-License-Identifier: MIT */
/* One row a file; forces and moments have columns of their own, since their units differ. */
#include "giveway/units.h"
#include "show/bench.h"
#include "format/csv.h"

#include <math.h>
#include <stddef.h>

static const char *const HEADS[] = {
    "file",
    "as",
    "kind",
    "sides",
    "one_way",
    "loss_factor",
    "nonlinearity",
    "asymmetry",
    "stroke_minus_mm",
    "stroke_plus_mm",
    "zero_mm",
    "zero_N",
    "rate_at_zero_N_per_mm",
    "rate_at_tenth_minus_N_per_mm",
    "rate_at_tenth_plus_N_per_mm",
    "rate_at_full_minus_N_per_mm",
    "rate_at_full_plus_N_per_mm",
    "stroke_minus_deg",
    "stroke_plus_deg",
    "zero_deg",
    "zero_Nm",
    "rate_at_zero_Nm_per_deg",
    "rate_at_tenth_minus_Nm_per_deg",
    "rate_at_tenth_plus_Nm_per_deg",
    "rate_at_full_minus_Nm_per_deg",
    "rate_at_full_plus_Nm_per_deg",
    "rate_N_per_mm",
    "rate_within_N_per_mm",
    "zener_gain",
    "zener_gain_within",
    "zener_tau_s",
    "zener_alpha",
    "zener_alpha_within",
    "payne_gain",
    "payne_gain_within",
    "payne_amplitude_mm",
    "payne_amplitude_within_mm",
    "payne_exponent",
    "payne_exponent_within",
    "scatter",
    "worst_line",
    "worst_stiffness_percent",
    "worst_loss_angle_deg",
};

static void empty(gw_csv *csv, int n)
{
    for (int i = 0; i < n; i++) gw_csv_string(csv, NULL);
}

static void press(gw_csv *csv, const gw_press *p, bool turns)
{
    const double unit = turns ? GW_DEG : GW_MM, rate = turns ? GW_NM_PER_DEG : GW_N_PER_MM;
    gw_csv_number(csv, p->sides);
    gw_csv_string(csv, p->one_way ? "true" : "false");
    gw_csv_number(csv, p->loss);
    gw_csv_number(csv, p->nonlinearity);
    gw_csv_number(csv, p->asymmetry);
    if (turns) empty(csv, 9);
    gw_csv_number(csv, p->stroke[0] / unit);
    gw_csv_number(csv, p->stroke[1] / unit);
    gw_csv_number(csv, p->zero / unit);
    gw_csv_number(csv, p->zero_force);
    gw_csv_number(csv, p->rate_zero / rate);
    for (int i = 0; i < 2; i++) gw_csv_number(csv, p->rate_tenth[i] / rate);
    for (int i = 0; i < 2; i++) gw_csv_number(csv, p->rate_full[i] / rate);
    empty(csv, turns ? 17 : 26);
}

static void rig(gw_csv *csv, const gw_bench_file *file)
{
    const gw_rig *r = &file->rig;
    bool payne = r->law.payne_gain > 0.0;
    empty(csv, 23);
    gw_csv_number(csv, r->law.rate / GW_N_PER_MM);
    gw_csv_number(csv, r->within[GW_RIG_RATE] / GW_N_PER_MM);
    gw_csv_number(csv, r->law.zener_gain);
    gw_csv_number(csv, r->within[GW_RIG_ZENER_GAIN]);
    gw_csv_number(csv, r->law.zener_tau);
    gw_csv_number(csv, r->law.zener_alpha);
    gw_csv_number(csv, r->within[GW_RIG_ZENER_ALPHA]);
    gw_csv_number(csv, r->law.payne_gain);
    gw_csv_number(csv, r->within[GW_RIG_PAYNE_GAIN]);
    gw_csv_number(csv, payne ? r->law.payne_amplitude / GW_MM : (double)NAN);
    gw_csv_number(csv, r->within[GW_RIG_PAYNE_AMPLITUDE] / GW_MM);
    gw_csv_number(csv, payne ? r->law.payne_exponent : (double)NAN);
    gw_csv_number(csv, r->within[GW_RIG_PAYNE_EXPONENT]);
    gw_csv_number(csv, r->scatter);
    gw_csv_number(csv, file->line[r->worst]);
    gw_csv_number(csv, 100.0 * r->worst_stiffness);
    gw_csv_number(csv, r->worst_loss / GW_DEG);
}

void gw_bench_csv(const gw_bench_result *results, int n, gw_buf *out)
{
    gw_csv csv = { .out = out };
    for (size_t i = 0; i < sizeof HEADS / sizeof *HEADS; i++) gw_csv_string(&csv, HEADS[i]);
    gw_csv_end_row(&csv);
    for (int i = 0; i < n; i++) {
        bool dynamic = results[i].data.kind == GW_BENCH_DYNAMIC;
        gw_csv_string(&csv, results[i].file);
        gw_csv_string(&csv, GW_BENCH_AS[results[i].as]);
        gw_csv_string(&csv, dynamic ? "dynamic" : "static");
        if (dynamic)
            rig(&csv, &results[i].data);
        else
            press(&csv, &results[i].data.press, results[i].data.kind == GW_BENCH_MOMENT);
        gw_csv_end_row(&csv);
    }
}

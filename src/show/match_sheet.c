/* SPDX-License-Identifier: MIT */
/* A table of readings to fill in: what tells most first. */
#include "show/match.h"

#include "format/csv.h"
#include "format/number.h"
#include "record/unit.h"

#include <math.h>

static void put_head(const gw_case *c, gw_buf *out)
{
    gw_buf_add(out, "# Readings to take for ");
    gw_buf_clean(out, c->title);
    gw_buf_add(
        out, ", what tells most first.\n"
             "# Read changes from standing still in the same kit, the body tied down: toe-in, top outboard, "
             "forward and to the left positive.\n"
             "# fore_aft_N and lateral_N push at the contact patch (turn plates or a plate on rollers); "
             "travel_mm lifts or lowers the wheel, the spring in.\n"
             "# Write what was read under the heads that to_read names, and how sure it is, plus and minus; "
             "leave empty what was not read.\n"
             "# Jack, tie down and push by the maker's instructions; nobody under a car that is pushed.\n"
             "name,corner,kit,fore_aft_N,lateral_N,travel_mm,toe_change_deg,camber_change_deg,within_deg,"
             "wheel_fore_aft_mm,wheel_lateral_mm,within_mm,wheel_rate_N_per_mm,within_N_per_mm,to_read,"
             "tells_bits,narrows_most\n");
}

static void number_or_empty(gw_csv *csv, bool is, double v)
{
    if (is)
        gw_csv_number(csv, v);
    else
        gw_csv_string(csv, "");
}

static void put_to_read(const gw_reading *r, int state, gw_csv *csv)
{
    gw_buf text = { 0 };
    for (int v = 0; v < r->n_values; v++)
        if (r->value[v].state == state)
            gw_buf_fmt(&text, "%s%s", text.n ? " " : "", gw_read_key(r->value[v].figure));
    gw_csv_text(csv, &text);
}

static void put_narrows(const gw_case *c, const gw_next_reading *next, gw_csv *csv)
{
    gw_buf text = { 0 };
    for (int i = 0; i < next->n_narrows; i++) {
        gw_buf_say(&text, "%s%s", i ? " " : "", c->uncertain.figure[next->narrows[i].figure].of);
    }
    gw_csv_text(csv, &text);
}

/* Bands of a usual gauge stand there already. */
static double within(const gw_reading *r, int state, int unit)
{
    for (int v = 0; v < r->n_values; v++) {
        gw_read_figure f = r->value[v].figure;
        int of = f == GW_READ_WHEEL_RATE ? 2 : f == GW_READ_FORE_AFT || f == GW_READ_LATERAL ? 1 : 0;
        if (r->value[v].state == state && of == unit) return 2.0 * r->value[v].sigma / gw_read_unit(f);
    }
    return 0.0;
}

static void put_within(gw_csv *csv, const gw_reading *r, int state, int unit)
{
    double band = within(r, state, unit);
    if (band > 0.0)
        gw_csv_number(csv, round(1e6 * band) / 1e6);
    else
        gw_csv_string(csv, "");
}

static void put_row(const gw_case *c, const gw_next_reading *next, int state, gw_csv *csv)
{
    const gw_reading *r = next->reading;
    const gw_read_state *s = &r->state[state];
    const gw_vec3 f = s->load.patch_force;
    gw_csv_string(csv, r->name);
    gw_csv_string(csv, gw_axle_name(r->axle));
    gw_csv_string(csv, c->kits[r->kit].name);
    number_or_empty(csv, s->has_load && f.x != 0.0, f.x);
    number_or_empty(csv, s->has_load && f.y != 0.0, f.y);
    number_or_empty(csv, s->has_travel, gw_unit_out(GW_UNIT_MM, s->travel));
    gw_csv_string(csv, "");
    gw_csv_string(csv, "");
    put_within(csv, r, state, 0);
    gw_csv_string(csv, "");
    gw_csv_string(csv, "");
    put_within(csv, r, state, 1);
    gw_csv_string(csv, "");
    put_within(csv, r, state, 2);
    put_to_read(r, state, csv);
    gw_csv_string(csv, gw_fixed(next->bits, 2).s);
    put_narrows(c, next, csv);
    gw_csv_end_row(csv);
}

void gw_match_sheet(const gw_case *c, const gw_next_study *next, gw_buf *out)
{
    gw_csv csv = { .out = out };
    put_head(c, out);
    for (int i = 0; i < next->n; i++)
        for (int s = 0; s < next->next[i].reading->n_states; s++) put_row(c, &next->next[i], s, &csv);
}

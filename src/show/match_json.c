/* SPDX-License-Identifier: MIT */
#include "show/match.h"

#include "format/csv.h"
#include "format/json.h"
#include "record/unit.h"
#include "show/deflect.h"

#include <math.h>

static const gw_read_value *value_of(const gw_readings *readings, const gw_match_value *v)
{
    return &readings->reading[v->reading].value[v->value];
}

static double travel_of(const gw_readings *readings, const gw_match_value *v)
{
    const gw_read_state *s = &readings->reading[v->reading].state[value_of(readings, v)->state];
    return s->has_travel ? gw_unit_out(GW_UNIT_MM, s->travel) : (double)NAN;
}

static void put_ends(gw_json *json, const char *key, const gw_unsure *f, double z, double sd)
{
    gw_json_object_on_line(json, key);
    gw_json_number(json, "value", gw_unsure_at(f, z));
    gw_json_number(json, "low", gw_unsure_at(f, z - 2.0 * sd));
    gw_json_number(json, "high", gw_unsure_at(f, z + 2.0 * sd));
    gw_json_close(json);
}

static void put_figure(gw_json *json, const gw_matched *m)
{
    gw_json_object(json, NULL);
    gw_json_string(json, "of", m->figure->of);
    gw_json_number(json, "z", m->z);
    put_ends(json, "before", m->figure, 0.0, 1.0);
    put_ends(json, "after", m->figure, m->z, m->sd);
    gw_json_number(json, "narrowed", 1.0 - m->sd);
    gw_json_number(json, "drop", m->drop);
    gw_json_number(json, "probability", m->probability);
    gw_json_close(json);
}

static void put_reading(gw_json *json, const gw_case *c, const gw_readings *readings, const gw_match_study *s,
                        int i)
{
    const gw_reading *r = &readings->reading[i];
    gw_json_object(json, NULL);
    gw_json_string(json, "name", r->name);
    gw_json_string(json, "corner", gw_axle_name(r->axle));
    gw_json_string(json, "kit", c->kits[r->kit].name);
    gw_json_array(json, "values");
    for (int k = 0; k < r->n_values; k++) {
        const gw_match_value *v = &s->value[s->reading[i].first + k];
        const gw_read_value *read = &r->value[k];
        const double unit = gw_read_unit(read->figure);
        gw_json_object_on_line(json, NULL);
        gw_json_string(json, "figure", gw_read_key(read->figure));
        gw_json_number(json, "travel_mm", travel_of(readings, v));
        gw_json_number(json, "reading", read->reading / unit);
        gw_json_number(json, "before", v->before / unit);
        gw_json_number(json, "after", v->after / unit);
        gw_json_number(json, "residual", v->residual);
        gw_json_close(json);
    }
    gw_json_close(json);
    gw_json_number(json, "drop", s->reading[i].drop);
    gw_json_number(json, "probability", s->reading[i].probability);
    gw_json_close(json);
}

static void put_doubt(gw_json *json, const gw_case *c, const gw_readings *readings, const gw_match_study *s,
                      const gw_doubt *d)
{
    gw_json_object_on_line(json, NULL);
    if (d->is_reading) {
        const gw_reading *r = &readings->reading[d->index];
        gw_json_string(json, "reading", r->name);
        gw_json_string(json, "corner", gw_axle_name(r->axle));
        gw_json_string(json, "kit", c->kits[r->kit].name);
    } else
        gw_json_string(json, "figure", s->figure[d->index].figure->of);
    gw_json_number(json, "drop", d->is_reading ? s->reading[d->index].drop : s->figure[d->index].drop);
    gw_json_number(json, "probability", d->probability);
    gw_json_close(json);
}

static void put_next(gw_json *json, const gw_case *c, const gw_next_reading *next)
{
    gw_json_object_on_line(json, NULL);
    gw_json_string(json, "name", next->reading->name);
    gw_json_string(json, "corner", gw_axle_name(next->reading->axle));
    gw_json_string(json, "kit", c->kits[next->reading->kit].name);
    gw_json_number(json, "bits", next->bits);
    gw_json_array(json, "narrows");
    for (int i = 0; i < next->n_narrows; i++) {
        gw_json_object_on_line(json, NULL);
        gw_json_string(json, "of", c->uncertain.figure[next->narrows[i].figure].of);
        gw_json_number(json, "narrowed", next->narrows[i].narrowed);
        gw_json_close(json);
    }
    gw_json_close(json);
    gw_json_close(json);
}

void gw_match_json(const gw_case *c, const gw_readings *readings, const gw_match_study *s,
                   const gw_next_study *next, gw_buf *out)
{
    gw_json json = { .out = out };
    gw_json_object(&json, NULL);
    gw_json_string(&json, "format", "giveway-result-1");
    gw_json_string(&json, "command", "match");
    gw_json_string(&json, "case", c->title);
    gw_json_array(&json, "figures");
    for (int j = 0; j < s->n; j++) put_figure(&json, &s->figure[j]);
    gw_json_close(&json);
    gw_json_array(&json, "silent");
    for (int j = 0; j < s->n; j++)
        if (s->figure[j].silent) gw_json_string(&json, NULL, s->figure[j].figure->of);
    gw_json_close(&json);
    gw_json_array(&json, "readings");
    for (int i = 0; i < readings->n; i++) put_reading(&json, c, readings, s, i);
    gw_json_close(&json);
    gw_json_number(&json, "chi_square", s->chi_square);
    gw_json_int(&json, "degrees", s->n_values);
    gw_json_number(&json, "probability", s->probability);
    gw_json_array(&json, "doubt");
    for (int i = 0; i < s->n_doubts; i++) put_doubt(&json, c, readings, s, &s->doubt[i]);
    gw_json_close(&json);
    gw_json_array(&json, "read_next");
    for (int i = 0; i < next->n; i++) put_next(&json, c, &next->next[i]);
    gw_json_close(&json);
    gw_json_close(&json);
}

void gw_match_csv(const gw_case *c, const gw_readings *readings, const gw_match_study *s, gw_buf *out)
{
    static const char *const HEADS[] = { "name",    "corner", "kit",   "figure",  "travel_mm",
                                         "reading", "before", "after", "residual" };
    gw_csv csv = { .out = out };
    for (size_t i = 0; i < sizeof HEADS / sizeof *HEADS; i++) gw_csv_string(&csv, HEADS[i]);
    gw_csv_end_row(&csv);
    for (int i = 0; i < s->n_values; i++) {
        const gw_match_value *v = &s->value[i];
        const gw_reading *r = &readings->reading[v->reading];
        const gw_read_value *read = value_of(readings, v);
        const double unit = gw_read_unit(read->figure);
        const double numbers[5] = { travel_of(readings, v), read->reading / unit, v->before / unit,
                                    v->after / unit, v->residual };
        gw_csv_string(&csv, r->name);
        gw_csv_string(&csv, gw_axle_name(r->axle));
        gw_csv_string(&csv, c->kits[r->kit].name);
        gw_csv_string(&csv, gw_read_key(read->figure));
        gw_csv_numbers(&csv, numbers, 5);
        gw_csv_end_row(&csv);
    }
}

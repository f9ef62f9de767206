/* SPDX-License-Identifier: MIT */
#include "show/rates.h"

#include "format/number.h"
#include "format/table.h"
#include "giveway/units.h"

#include <string.h>

/* The unit of the trade that a quantity is shown in, and its SI value. */
typedef struct unit {
    const char *name;
    double si;
} unit;

static unit unit_of(gw_quantity quantity)
{
    switch (quantity) {
    case GW_QUANTITY_LENGTH:
        return (unit){ "mm", GW_MM };
    case GW_QUANTITY_MODULUS:
        return (unit){ "MPa", GW_MPA };
    case GW_QUANTITY_RATE:
        return (unit){ "N/mm", GW_N_PER_MM };
    case GW_QUANTITY_TURN_RATE:
        return (unit){ "N m/deg", GW_NM_PER_DEG };
    case GW_QUANTITY_ANGLE:
        return (unit){ "deg", GW_DEG };
    case GW_QUANTITY_RATIO:
        break;
    }
    return (unit){ "", 1.0 };
}

static void put_value(gw_buf *out, const char *symbol, gw_quantity quantity, double value)
{
    unit u = unit_of(quantity);
    gw_buf_fmt(out, "%s = %s%s%s", symbol, gw_significant(value / u.si, 4).s, *u.name ? " " : "", u.name);
}

/* Lines that differ in nothing but the figure share what follows them. */
static bool same_way(const gw_explain_line *a, const gw_explain_line *b)
{
    return strcmp(a->formula, b->formula) == 0 && strcmp(a->source, b->source) == 0 &&
           a->n_inputs == b->n_inputs;
}

static void put_way(const gw_explain_line *line, int width, gw_buf *out)
{
    gw_buf text = { 0 };
    gw_buf_paragraph(out, line->formula, width, 6);
    for (int i = 0; i < line->n_inputs; i++) {
        gw_buf_add(&text, i ? ", " : "with ");
        put_value(&text, line->inputs[i].symbol, line->inputs[i].quantity, line->inputs[i].value);
    }
    gw_buf_paragraph(out, gw_buf_str(&text), width, 6);
    if (text.failed) out->failed = true;
    gw_buf_free(&text);
    gw_buf_paragraph(out, line->source, width, 6);
}

static void put_line(const gw_explain_line *line, const gw_explain_line *next, int width, gw_buf *out)
{
    gw_buf text = { 0 };
    put_value(&text, line->figure, line->quantity, line->value);
    gw_buf_paragraph(out, gw_buf_str(&text), width, 2);
    if (text.failed) out->failed = true;
    gw_buf_free(&text);
    if (!next || !same_way(line, next)) put_way(line, width, out);
}

/* Where a key that is asked for counts, and where not. */
static const char BREAKAWAY[] =
    "breakaway_Nm: what the bearing turns against without load. It counts in the friction at the wheel that "
    "travel gives, "
    "with friction_coefficient times half the ball and the load on top. It counts in no angle or rate of "
    "deflect, compare, "
    "travel or align: there a bearing turns freely up to its tilt limit. Nor does ride know friction yet.";

void gw_explain_text(const gw_rates_row *row, int width, gw_buf *out)
{
    gw_buf_add(out, "\n");
    gw_buf_clean(out, row->bush->name);
    gw_buf_add(out, row->report.n_lines ? "\n" : ": rates as given, nothing calculated\n");
    int n = row->report.n_lines;
    for (int i = 0; i < n; i++)
        put_line(&row->report.lines[i], i + 1 < n ? &row->report.lines[i + 1] : NULL, width, out);
    if (row->bush->type == GW_BUSH_BEARING) gw_buf_paragraph(out, BREAKAWAY, width, 2);
}

static void json_value(gw_json *json, gw_quantity quantity, double value)
{
    unit u = unit_of(quantity);
    gw_json_number(json, "value", value / u.si);
    gw_json_string(json, "unit", u.name);
}

void gw_explain_json(const gw_rates_row *row, gw_json *json)
{
    gw_json_array(json, "explain");
    for (int i = 0; i < row->report.n_lines; i++) {
        const gw_explain_line *line = &row->report.lines[i];
        gw_json_object(json, NULL);
        gw_json_string(json, "figure", line->figure);
        json_value(json, line->quantity, line->value);
        gw_json_string(json, "formula", line->formula);
        gw_json_array(json, "inputs");
        for (int k = 0; k < line->n_inputs; k++) {
            gw_json_object_on_line(json, NULL);
            gw_json_string(json, "symbol", line->inputs[k].symbol);
            json_value(json, line->inputs[k].quantity, line->inputs[k].value);
            gw_json_close(json);
        }
        gw_json_close(json);
        gw_json_string(json, "source", line->source);
        gw_json_close(json);
    }
    gw_json_close(json);
}

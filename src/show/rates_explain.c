/* SPDX-License-Identifier: MIT */
#include "show/rates.h"

#include "format/number.h"

#include <string.h>

static void put_value(gw_buf *out, const char *symbol, gw_quantity quantity, double value)
{
    gw_unit unit = gw_rates_unit(quantity);
    const char *word = gw_unit_word(unit);
    gw_buf_fmt(out, "%s = %s%s%s", symbol, gw_significant(gw_unit_out(unit, value), 4).s, *word ? " " : "",
               word);
}

/* Lines that differ in nothing but the figure share what follows them. */
static bool same_way(const gw_explain_line *a, const gw_explain_line *b)
{
    return strcmp(a->formula, b->formula) == 0 && strcmp(a->source, b->source) == 0 &&
           a->n_inputs == b->n_inputs;
}

/* A paragraph of a text that is freed. */
static void put_way(const gw_explain_line *line, gw_paper *paper)
{
    gw_buf text = { 0 };
    gw_paper_say(paper, 6, "%s", line->formula);
    for (int i = 0; i < line->n_inputs; i++) {
        gw_buf_add(&text, i ? ", " : "with ");
        put_value(&text, line->inputs[i].symbol, line->inputs[i].quantity, line->inputs[i].value);
    }
    gw_paper_say_of(paper, 6, &text);
    gw_paper_say(paper, 6, "%s", line->source);
}

static void put_line(const gw_explain_line *line, const gw_explain_line *next, gw_paper *paper)
{
    gw_buf text = { 0 };
    put_value(&text, line->figure, line->quantity, line->value);
    gw_paper_say_of(paper, 2, &text);
    if (!next || !same_way(line, next)) put_way(line, paper);
}

/* Where a key that is asked for counts, and where not. */
static const char BREAKAWAY[] =
    "breakaway_Nm: what the bearing turns against without load. It counts in the friction at the wheel that "
    "travel gives, with friction_coefficient times half the ball and the load on top. It counts in no angle "
    "or rate of deflect, compare, travel or align: there a bearing turns freely up to its tilt limit. Nor "
    "does ride know friction yet.";

void gw_explain_text(const gw_rates_row *row, gw_paper *paper)
{
    const int n = row->report.n_lines;
    const gw_explain_line *line = row->report.lines;
    gw_paper_gap(paper);
    gw_paper_line(paper, "%s%s", row->bush->name, n ? "" : ": rates as given, nothing calculated");
    for (int i = 0; i < n; i++) put_line(&line[i], i + 1 < n ? &line[i + 1] : NULL, paper);
    if (row->bush->type == GW_BUSH_BEARING) gw_paper_say(paper, 2, "%s", BREAKAWAY);
}

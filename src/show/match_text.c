/* SPDX-License-Identifier: MIT */
/* In words: do the readings and the case go together? Then what moved, and reading by reading. */
#include "show/match.h"

#include "format/table.h"
#include "record/unit.h"

#include <math.h>

static void head_words(const gw_match_study *s, gw_paper *paper)
{
    gw_buf text = { 0 };
    int silent = 0;
    for (int j = 0; j < s->n; j++) silent += s->figure[j].silent;
    gw_buf_fmt(
        &text,
        "%d value%s in %d reading%s correct%s %d of %d uncertain figures; of the other %d %s not speak. "
        "Chi-square %.1f with %d degree%s: ",
        s->n_values, s->n_values == 1 ? "" : "s", s->n_readings, s->n_readings == 1 ? "" : "s",
        s->n_values == 1 ? "s" : "", s->n - silent, s->n, silent, s->n_values == 1 ? "it does" : "they do",
        s->chi_square, s->n_values, s->n_values == 1 ? "" : "s");
    if (s->probability < GW_MATCH_DOUBT)
        gw_buf_fmt(&text,
                   "so much has a probability of %.2g: readings and case do not go together within their "
                   "bands: was it this car that was read?",
                   s->probability);
    else
        gw_buf_fmt(&text, "as much or more is met with a probability of %.2g: readings and case go together.",
                   s->probability);
    gw_paper_say_of(paper, 0, &text);
}

static void doubt_words(const gw_case *c, const gw_readings *readings, const gw_match_study *s,
                        gw_paper *paper)
{
    for (int i = 0; i < s->n_doubts; i++) {
        const gw_doubt *d = &s->doubt[i];
        gw_buf text = { 0 };
        if (d->is_reading) {
            const gw_reading *r = &readings->reading[d->index];
            gw_buf_say(&text,
                       "In doubt: the reading \"%s\" (%s corner, kit %s). Against all the rest it is off by "
                       "more than its band explains: probability %.2g.",
                       r->name, gw_axle_name(r->axle), c->kits[r->kit].name, d->probability);
        } else {
            gw_buf_say(&text,
                       "In doubt: the figure %s. The readings put it further from the case than its band "
                       "allows: probability %.2g.",
                       s->figure[d->index].figure->of, d->probability);
        }
        gw_paper_say_of(paper, 0, &text);
    }
    if (s->n_doubts > 1)
        gw_paper_say(paper, 0, "One fault throws doubt on others: put the first right, then match again.");
}

static void ends_cell(gw_table *table, const gw_unsure *f, double z, double sd)
{
    const int decimals = f->unit == GW_UNSURE_MM ? 2 : 3;
    gw_table_cellf(table, "%.*f (%.*f to %.*f)", decimals, gw_unsure_at(f, z), decimals,
                   gw_unsure_at(f, z - 2 * sd), decimals, gw_unsure_at(f, z + 2 * sd));
}

static void figure_table(const gw_match_study *s, gw_paper *paper)
{
    gw_table table = { 0 };
    gw_table_heads(&table, "lrrr", "figure", "before", "after", "narrowed\nby");
    for (int j = 0; j < s->n; j++) {
        const gw_matched *m = &s->figure[j];
        if (m->silent) continue;
        gw_table_cell(&table, m->figure->of);
        ends_cell(&table, m->figure, 0.0, 1.0);
        ends_cell(&table, m->figure, m->z, m->sd);
        gw_table_cellf(&table, "%.0f %%", 100.0 * (1.0 - m->sd));
    }
    if (table.n_cells || table.failed) {
        gw_buf_add(paper->out, "\nWhat is now surer (95 of 100 in brackets)\n");
        gw_paper_table(paper, &table, 2);
    }
    gw_table_free(&table);
}

static void silent_words(const gw_match_study *s, gw_paper *paper)
{
    gw_buf text = { 0 };
    int n = 0;
    for (int j = 0; j < s->n; j++) {
        if (!s->figure[j].silent) continue;
        gw_buf_say(&text, "%s%s", n++ ? ", " : "", s->figure[j].figure->of);
    }
    if (n) {
        gw_buf_fmt(paper->out, "\nNo reading speaks of\n");
        gw_paper_say_of(paper, 2, &text);
    } else
        gw_buf_free(&text);
}

static const char *word_of(gw_read_figure f)
{
    static const char *const WORDS[] = { "toe, deg",     "camber, deg", "caster, deg",
                                         "fore-aft, mm", "lateral, mm", "wheel rate, N/mm" };
    return WORDS[f];
}

/* 12.5 mm is no 12 mm. */
static void travel_cell(gw_table *table, double mm)
{
    gw_table_cell(table, gw_signed(mm, fabs(mm - round(mm)) < 0.05 ? 0 : 1).s);
}

static void reading_table(const gw_case *c, const gw_readings *readings, const gw_match_study *s,
                          gw_paper *paper)
{
    gw_table table = { 0 };
    gw_table_heads(&table, "llllrrrrr", "reading", "corner", "kit", "figure", "travel\nmm", "read", "before",
                   "after", "off, in\nsigma");
    for (int i = 0; i < s->n_values; i++) {
        const gw_match_value *v = &s->value[i];
        const gw_reading *r = &readings->reading[v->reading];
        const gw_read_value *read = &r->value[v->value];
        const gw_read_state *state = &r->state[read->state];
        const double unit = gw_read_unit(read->figure);
        const int decimals = read->figure <= GW_READ_CASTER ? 3 : 2;
        gw_table_cells(&table, r->name, gw_axle_name(r->axle), c->kits[r->kit].name, word_of(read->figure));
        if (state->has_travel)
            travel_cell(&table, gw_unit_out(GW_UNIT_MM, state->travel));
        else
            gw_table_cell(&table, "");
        gw_table_cell(&table, gw_signed(read->reading / unit, decimals).s);
        gw_table_cell(&table, gw_signed(v->before / unit, decimals).s);
        gw_table_cell(&table, gw_signed(v->after / unit, decimals).s);
        gw_table_cell(&table, gw_signed(v->residual, 1).s);
    }
    gw_buf_add(paper->out, "\nReading by reading\n");
    gw_paper_table(paper, &table, 2);
}

/* "tie_inner[2] by 40 %, bushes.rack_rubber by 12 %" */
static void narrows_cell(const gw_case *c, const gw_next_reading *next, gw_table *table)
{
    gw_buf text = { 0 };
    for (int i = 0; i < next->n_narrows; i++) {
        gw_buf_say(&text, "%s%s by %.0f %%", i ? ", " : "", c->uncertain.figure[next->narrows[i].figure].of,
                   100.0 * next->narrows[i].narrowed);
    }
    if (!next->n_narrows) gw_buf_add(&text, "many, each a little");
    gw_table_cell_of(table, &text);
}

static void next_table(const gw_case *c, const gw_next_study *next, gw_paper *paper)
{
    enum { SHOWN = 5 };
    gw_table table = { 0 };
    gw_table_heads(&table, "lllrl", "read next", "corner", "kit", "bits", "narrows most");
    for (int i = 0; i < next->n && i < SHOWN; i++) {
        const gw_reading *r = next->next[i].reading;
        gw_table_cells(&table, r->name, gw_axle_name(r->axle), c->kits[r->kit].name);
        gw_table_cellf(&table, "%.1f", next->next[i].bits);
        narrows_cell(c, &next->next[i], &table);
    }
    gw_buf_add(paper->out,
               "\nWhat would tell most, each beside those above it (--sheet FILE.csv writes them all)\n");
    gw_paper_table(paper, &table, 2);
}

void gw_match_text(const gw_case *c, const void *it, gw_paper *paper)
{
    const gw_match_made *made = it;
    head_words(made->study, paper);
    doubt_words(c, made->readings, made->study, paper);
    figure_table(made->study, paper);
    reading_table(c, made->readings, made->study, paper);
    silent_words(made->study, paper);
    if (made->next->n) next_table(c, made->next, paper);
}

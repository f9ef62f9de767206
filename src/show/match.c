/* SPDX-License-Identifier: MIT */
/* The rows of `match`: a case corrected by readings. */
#include "show/match.h"

#include "casefile/readings.h"
#include "show/results.h"

#include <math.h>

/* -- an uncertain figure, in its own unit -- */

enum { VALUE_ITSELF, LOW_END, HIGH_END };

/* Before the readings: in half bands of the case. After them: about where it moved, as far as it still may.
 */
static double figure_at(const gw_matched *m, bool after, int which)
{
    double ends = which == LOW_END ? -2.0 : which == HIGH_END ? 2.0 : 0.0;
    return after ? gw_unsure_at(m->figure, m->z + ends * m->sd) : gw_unsure_at(m->figure, ends);
}

GW_READS(double, before, gw_matched, figure_at(it, false, GW_WHICH(p)))
GW_READS(double, after, gw_matched, figure_at(it, true, GW_WHICH(p)))
GW_READS(const char *, figure_path, gw_matched, it->figure->of)
GW_READS(double, narrowed, gw_matched, 1.0 - it->sd)

static GW_RECORD(BEFORE_RECORD, gw_matched,
    GW_WORKED_OUT_OF("value", PLAIN, before, VALUE_ITSELF, 0, "in the figure's own unit"),
    GW_WORKED_OUT_OF("low", PLAIN, before, LOW_END, 0, "end of its band"),
    GW_WORKED_OUT_OF("high", PLAIN, before, HIGH_END, 0, "end of its band"));
static GW_RECORD(AFTER_RECORD, gw_matched,
    GW_WORKED_OUT_OF("value", PLAIN, after, VALUE_ITSELF, 0, "in the figure's own unit"),
    GW_WORKED_OUT_OF("low", PLAIN, after, LOW_END, 0, "end of its band"),
    GW_WORKED_OUT_OF("high", PLAIN, after, HIGH_END, 0, "end of its band"));

static GW_RECORD(FIGURE_RECORD, gw_matched,
    GW_SAID("of", figure_path, 0, "path of the figure"),
    GW_MEMBER("z", PLAIN, gw_matched, z, 0, "how far it moved, in half bands"),
    GW_HERE("before", &BEFORE_RECORD, GW_ON_LINE, "as the case has it"),
    GW_HERE("after", &AFTER_RECORD, GW_ON_LINE, "as the readings leave it"),
    GW_WORKED_OUT("narrowed", PLAIN, narrowed, 0, "by how much its band shrank"),
    GW_MEMBER("drop", PLAIN, gw_matched, drop, GW_MAY_LACK, "by how much chi-square would fall without what the case says of it"),
    GW_MEMBER("probability", PLAIN, gw_matched, probability, GW_MAY_LACK, "of as much or more by chance"));

static const char *silent_at(const gw_place *p)
{
    const gw_match_study *s = GW_IT(p, gw_match_made)->study;
    int left = p->index;
    for (int j = 0; j < s->n; j++)
        if (s->figure[j].silent && left-- == 0) return s->figure[j].figure->of;
    return NULL;
}

static int silent(const gw_place *p)
{
    const gw_match_study *s = GW_IT(p, gw_match_made)->study;
    int n = 0;
    for (int j = 0; j < s->n; j++) n += s->figure[j].silent;
    return n;
}

/* -- a reading -- */

GW_READS(const void *, taken, gw_match_made, &it->readings->reading[GW_INDEX(p, gw_match_reading)])
GW_READS(const gw_read_value *, read_value, gw_match_value,
         &GW_IT(p, gw_match_made)->readings->reading[it->reading].value[it->value])
GW_READS(const char *, read_figure, gw_match_value, gw_read_key(read_value(p)->figure))

/* Figures that one band of a gauge holds for have one unit. */
static gw_unit read_unit(const gw_place *p)
{
    static const gw_unit OF_BAND[] = { GW_UNIT_DEG, GW_UNIT_MM, GW_UNIT_N_PER_MM };
    return OF_BAND[gw_read_within(read_value(p)->figure)];
}

static double travel(const gw_place *p)
{
    const gw_match_value *v = GW_IT(p, gw_match_value);
    const gw_read_state *s =
        &GW_IT(p, gw_match_made)->readings->reading[v->reading].state[read_value(p)->state];
    return s->has_travel ? s->travel : (double)NAN;
}

GW_READS(double, as_read, gw_match_value, read_value(p)->reading)
GW_READS(int, values, gw_match_reading, ((const gw_reading *)taken(p))->n_values)
GW_READS(const void *, value_at, gw_match_made,
         &it->study->value[GW_IT(p, gw_match_reading)->first + p->index])

static GW_RECORD(VALUE_RECORD, gw_match_value,
    GW_SAID("figure", read_figure, 0, "that was read; its unit is that of what follows"),
    GW_WORKED_OUT("travel", MM, travel, GW_MAY_LACK, "at which it was read"),
    GW_WORKED_OUT_IN("reading", read_unit, as_read, GW_NO_UNIT, "on the ramp"),
    GW_MEMBER_IN("before", read_unit, gw_match_value, before, GW_NO_UNIT, "of the case as written"),
    GW_MEMBER_IN("after", read_unit, gw_match_value, after, GW_NO_UNIT, "of the corrected case"),
    GW_MEMBER("residual", PLAIN, gw_match_value, residual, 0, "reading less corrected case, in standard deviations"));

static GW_RECORD(TAKEN_RECORD, gw_reading,
    GW_MEMBER("name", PLAIN, gw_reading, name, 0, "of the reading"),
    GW_WORD("corner", gw_reading, axle, GW_AXLE_NAMES, 0, "the axle"),
    GW_KIT("kit", gw_reading, kit, 0, "that is fitted"));

static GW_RECORD(READING_RECORD, gw_match_reading,
    GW_PART_FOUND(taken, &TAKEN_RECORD, GW_ALWAYS),
    GW_EACH("values", values, value_at, &VALUE_RECORD, GW_ON_LINE, "that were read"),
    GW_MEMBER("drop", PLAIN, gw_match_reading, drop, GW_NO_CSV | GW_MAY_LACK, "by how much chi-square would fall without it"),
    GW_MEMBER("probability", PLAIN, gw_match_reading, probability, GW_NO_CSV | GW_MAY_LACK, "of as much or more by chance"));

/* -- what does not go with the rest -- */

GW_READS(const void *, doubted_reading, gw_doubt,
         it->is_reading ? &GW_IT(p, gw_match_made)->readings->reading[it->index] : NULL)
GW_READS(const void *, doubted_figure, gw_doubt,
         it->is_reading ? NULL : &GW_IT(p, gw_match_made)->study->figure[it->index])
GW_READS(double, doubt_drop, gw_match_made,
         GW_IT(p, gw_doubt)->is_reading ? it->study->reading[GW_IT(p, gw_doubt)->index].drop
                                        : it->study->figure[GW_IT(p, gw_doubt)->index].drop)

static GW_RECORD(DOUBTED_READING_RECORD, gw_reading,
    GW_MEMBER("reading", PLAIN, gw_reading, name, 0, "its name"),
    GW_WORD("corner", gw_reading, axle, GW_AXLE_NAMES, 0, "the axle"),
    GW_KIT("kit", gw_reading, kit, 0, "that is fitted"));

static GW_RECORD(DOUBTED_FIGURE_RECORD, gw_matched, GW_SAID("figure", figure_path, 0, "path of the figure"));

static GW_RECORD(DOUBT_RECORD, gw_doubt,
    GW_PART_FOUND(doubted_reading, &DOUBTED_READING_RECORD, 0),
    GW_PART_FOUND(doubted_figure, &DOUBTED_FIGURE_RECORD, 0),
    GW_WORKED_OUT("drop", PLAIN, doubt_drop, GW_MAY_LACK, "by how much chi-square would fall without it"),
    GW_MEMBER("probability", PLAIN, gw_doubt, probability, GW_MAY_LACK, "of as much or more by chance"));

/* -- what to read next -- */

GW_READS(const char *, narrowed_path, struct gw_next_figure, p->c->uncertain.figure[it->figure].of)

static GW_RECORD(NARROWS_RECORD, struct gw_next_figure,
    GW_SAID("of", narrowed_path, 0, "path of the figure"),
    GW_MEMBER("narrowed", PLAIN, struct gw_next_figure, narrowed, 0, "by how much its band would shrink"));

static GW_RECORD(NEXT_RECORD, gw_next_reading,
    GW_PART_BEHIND(gw_next_reading, reading, &TAKEN_RECORD, GW_ALWAYS),
    GW_MEMBER("bits", PLAIN, gw_next_reading, bits, 0, "expected gain of information, beside those before it"),
    GW_ARRAY("narrows", gw_next_reading, n_narrows, narrows, &NARROWS_RECORD, GW_ON_LINE, "the most first"));

/* -- all of it -- */

GW_READS(int, readings, gw_match_made, it->readings->n)
GW_READS(const void *, reading_at, gw_match_made, &it->study->reading[p->index])
GW_READS(const void *, study, gw_match_made, it->study)

static GW_RECORD(CHI_RECORD, gw_match_study,
    GW_MEMBER("chi_square", PLAIN, gw_match_study, chi_square, GW_NO_CSV, "squares of residuals and of z together"),
    GW_MEMBER("degrees", PLAIN, gw_match_study, n_values, GW_NO_CSV, "of freedom: values that were read"),
    GW_MEMBER("probability", PLAIN, gw_match_study, probability, GW_NO_CSV | GW_MAY_LACK, "of as much or more by chance"));

static GW_RECORD(FIGURES_RECORD, gw_match_study,
    GW_ROWS("figures", gw_match_study, n, figure, &FIGURE_RECORD, 0, "that are uncertain"));
static GW_RECORD(DOUBTS_RECORD, gw_match_study,
    GW_ROWS("doubt", gw_match_study, n_doubts, doubt, &DOUBT_RECORD, GW_ON_LINE, "what does not go with the rest, the least probable first"));
static GW_RECORD(NEXTS_RECORD, gw_next_study,
    GW_ROWS("read_next", gw_next_study, n, next, &NEXT_RECORD, GW_ON_LINE, "what would tell most, the most first"));

static GW_RECORD(MADE_RECORD, gw_match_made,
    GW_PART_BEHIND(gw_match_made, study, &FIGURES_RECORD, GW_ALWAYS),
    GW_SAYINGS("silent", silent, silent_at, 0, "figures that no reading speaks of"),
    GW_EACH("readings", readings, reading_at, &READING_RECORD, 0, "against the case before and after"),
    GW_PART_FOUND(study, &CHI_RECORD, GW_ALWAYS),
    GW_PART_BEHIND(gw_match_made, study, &DOUBTS_RECORD, GW_ALWAYS),
    GW_PART_BEHIND(gw_match_made, next, &NEXTS_RECORD, GW_ALWAYS));

const gw_result GW_MATCH_RESULT = { "match", &MADE_RECORD, .rows = "readings.values" };

/* SPDX-License-Identifier: MIT */
/* Readings as a table: a row is what was done to a wheel and what was read; rows of one name, corner and kit
 * are one reading. */
#include "casefile/columns.h"
#include "casefile/readings.h"
#include "giveway/casefile.h"
#include "giveway/units.h"

#include <stdlib.h>
#include <string.h>

enum {
    NAME,
    CORNER,
    KIT,
    FORE_AFT,
    LATERAL,
    VERTICAL,
    TRAVEL,
    SPRING,
    OTHER,
    WHEELS,
    FIRST_FIGURE,
    FIRST_WITHIN = FIRST_FIGURE + GW_READ_FIGURES,
    HEADS = FIRST_WITHIN + 3
};
static const char *const HEAD[HEADS] = { "name",
                                         "corner",
                                         "kit",
                                         "fore_aft_N",
                                         "lateral_N",
                                         "vertical_N",
                                         "travel_mm",
                                         "spring",
                                         "other_wheel",
                                         "wheels",
                                         "toe_change_deg",
                                         "camber_change_deg",
                                         "caster_change_deg",
                                         "wheel_fore_aft_mm",
                                         "wheel_lateral_mm",
                                         "wheel_rate_N_per_mm",
                                         "within_deg",
                                         "within_mm",
                                         "within_N_per_mm" };
static const gw_range WITHIN = GW_ABOVE(0, 1e6);

/* What the functions here share: the table and the row that is read. */
typedef struct rows {
    const gw_reader *rd;
    const gw_columns *t;
    const gw_case *c;
    int row;
} rows;

static bool has(const rows *r, int head)
{
    return gw_columns_text(r->t, r->row, head)[0] != '\0';
}

static bool number(const rows *r, int head, gw_range range, double *out)
{
    return has(r, head) && gw_columns_number(r->rd, r->t, r->row, head, range, out);
}

static gw_axle corner_of(const rows *r)
{
    const char *word = gw_columns_text(r->t, r->row, CORNER);
    const gw_case *c = r->c;
    if (!*word) {
        if (c->has_corner[GW_FRONT] && c->has_corner[GW_REAR])
            gw_columns_fault(r->rd, r->t, r->row, CORNER,
                             "give \"front\" or \"rear\", since the case has both");
        return c->has_corner[GW_FRONT] ? GW_FRONT : GW_REAR;
    }
    gw_axle axle = strcmp(word, "rear") == 0 ? GW_REAR : GW_FRONT;
    if (axle == GW_FRONT && strcmp(word, "front") != 0)
        gw_columns_fault(r->rd, r->t, r->row, CORNER, "expected \"front\" or \"rear\"");
    else if (!c->has_corner[axle])
        gw_columns_fault(r->rd, r->t, r->row, CORNER, "the case has no %s corner", word);
    return axle;
}

static int kit_of(const rows *r)
{
    const char *word = gw_columns_text(r->t, r->row, KIT);
    int kit = *word ? gw_case_find_kit(r->c, word) : 0;
    if (kit < 0) gw_columns_fault(r->rd, r->t, r->row, KIT, "expected the name of a kit of the case");
    return kit < 0 ? 0 : kit;
}

static bool spring_out(const rows *r, const gw_read_state *s)
{
    const char *word = gw_columns_text(r->t, r->row, SPRING);
    if (!*word || strcmp(word, "in") == 0) return false;
    if (strcmp(word, "out") != 0)
        gw_columns_fault(r->rd, r->t, r->row, SPRING, "expected \"in\" or \"out\"");
    else if (s->has_load || !s->has_travel)
        gw_columns_fault(r->rd, r->t, r->row, SPRING,
                         "the spring is out with travel_mm alone: the vertical load holds the travel");
    return true;
}

/* One of three words; the first where the field is empty. */
static int word_of(const rows *r, int head, const char *const words[3])
{
    const char *word = gw_columns_text(r->t, r->row, head);
    for (int i = 0; i < 3 && *word; i++)
        if (strcmp(word, words[i]) == 0) return i;
    if (*word)
        gw_columns_fault(r->rd, r->t, r->row, head, "expected %s, %s or %s", words[0], words[1], words[2]);
    return 0;
}

/* What the right wheel of an axle does meanwhile. */
static gw_other_wheel other_of(const rows *r, const gw_read_state *s)
{
    int wheels = word_of(r, WHEELS, GW_WHEELS_WORDS), other = word_of(r, OTHER, GW_OTHER_WORDS);
    if (has(r, OTHER) && !s->has_load)
        gw_columns_fault(r->rd, r->t, r->row, OTHER,
                         "this goes with a force; along a travel it is \"wheels\"");
    if (has(r, WHEELS) && (s->has_load || !s->has_travel))
        gw_columns_fault(r->rd, r->t, r->row, WHEELS,
                         "this goes with travel_mm alone; beside a force it is \"other_wheel\"");
    else if (wheels && s->spring_out)
        gw_columns_fault(r->rd, r->t, r->row, WHEELS, "with the spring out both wheels travel together");
    return (gw_other_wheel)(s->has_load ? other : wheels);
}

static void state_of(const rows *r, gw_read_state *s)
{
    gw_vec3 *f = &s->load.patch_force;
    *s = (gw_read_state){ .has_load = has(r, FORE_AFT) || has(r, LATERAL) || has(r, VERTICAL),
                          .has_travel = has(r, TRAVEL),
                          .static_vertical = !has(r, VERTICAL) };
    number(r, FORE_AFT, GW_READ_FORCE, &f->x);
    number(r, LATERAL, GW_READ_FORCE, &f->y);
    number(r, VERTICAL, GW_READ_FORCE, &f->z);
    if (number(r, TRAVEL, GW_READ_TRAVEL, &s->travel)) s->travel *= GW_MM;
    s->spring_out = spring_out(r, s);
    s->other = other_of(r, s);
    bool rate = has(r, FIRST_FIGURE + GW_READ_WHEEL_RATE);
    if (!s->has_load && !s->has_travel && !rate)
        gw_columns_fault(
            r->rd, r->t, r->row, NAME,
            "expected a force, travel_mm or a wheel rate in this row: what was done to the wheel?");
    if (rate && (s->has_load || s->spring_out))
        gw_columns_fault(
            r->rd, r->t, r->row, FIRST_FIGURE + GW_READ_WHEEL_RATE,
            "a wheel rate is read without a load and with the spring in: give it a row of its own");
}

static void values_of(const rows *r, int state, gw_reading *out)
{
    for (int f = 0; f < GW_READ_FIGURES; f++) {
        double x, within;
        const int of = FIRST_WITHIN + gw_read_within((gw_read_figure)f);
        if (!has(r, FIRST_FIGURE + f)) continue;
        bool known = number(r, FIRST_FIGURE + f, gw_read_range((gw_read_figure)f), &x);
        if (!has(r, of))
            gw_columns_fault(r->rd, r->t, r->row, of, "this is missing: how sure is %s, plus and minus?",
                             HEAD[FIRST_FIGURE + f]);
        else if (number(r, of, WITHIN, &within) && known)
            out->value[out->n_values++] =
                (gw_read_value){ (gw_read_figure)f, state, x * gw_read_unit((gw_read_figure)f),
                                 0.5 * within * gw_read_unit((gw_read_figure)f) };
    }
}

/* A row of a sheet that waits to be filled in. */
static bool is_empty(const rows *r)
{
    for (int f = 0; f < GW_READ_FIGURES; f++)
        if (has(r, FIRST_FIGURE + f)) return false;
    return true;
}

/* The reading that a row belongs to; added where it is the first of its name. */
static gw_reading *reading_of(const rows *r, gw_readings *out)
{
    const char *name = gw_columns_text(r->t, r->row, NAME);
    gw_axle axle = corner_of(r);
    int kit = kit_of(r);
    for (int i = 0; i < out->n; i++) {
        gw_reading *known = &out->reading[i];
        if (known->axle == axle && known->kit == kit && strcmp(known->name, name) == 0) return known;
    }
    if (!*name) gw_columns_fault(r->rd, r->t, r->row, NAME, "expected a name for the reading");
    if (out->n >= GW_MAX_READINGS) {
        gw_columns_fault(r->rd, r->t, r->row, NAME, "more than %d readings", GW_MAX_READINGS);
        return NULL;
    }
    gw_reading *made = &out->reading[out->n++];
    *made = (gw_reading){ .name = gw_keep(r->rd, name), .axle = axle, .kit = kit };
    return made->name ? made : NULL;
}

/* Which reading each row belongs to, and room for all its rows. */
static bool sort_rows(const gw_reader *rd, const gw_columns *t, const gw_case *c, int *of, gw_readings *out)
{
    for (int row = 0; row < t->n_rows; row++) {
        const rows r = { rd, t, c, row };
        of[row] = -1;
        if (is_empty(&r)) continue;
        gw_reading *reading = reading_of(&r, out);
        if (!reading) return false;
        of[row] = (int)(reading - out->reading);
        reading->n_states++;
    }
    for (int i = 0; i < out->n; i++) {
        gw_reading *r = &out->reading[i];
        r->state = gw_reader_make(rd, r->n_states, sizeof *r->state);
        r->value = gw_reader_make(rd, r->n_states * GW_READ_FIGURES, sizeof *r->value);
        r->n_states = 0;
        if (!r->state || !r->value) return false;
    }
    return true;
}

static bool has_any(const gw_reader *rd, const gw_columns *t)
{
    for (int f = 0; f < GW_READ_FIGURES; f++)
        if (gw_columns_has(t, FIRST_FIGURE + f)) {
            if (!gw_columns_has(t, NAME))
                gw_fault(rd, NULL, "line %d: there is no head \"name\"", t->heads_line);
            return gw_columns_has(t, NAME);
        }
    gw_fault(rd, NULL,
             "line %d: expected the heads name and at least one of toe_change_deg, camber_change_deg, "
             "caster_change_deg, wheel_fore_aft_mm, wheel_lateral_mm and wheel_rate_N_per_mm",
             t->heads_line);
    return false;
}

static void read_rows(const gw_reader *rd, const gw_columns *t, const gw_case *c, gw_readings *out)
{
    if (!has_any(rd, t)) return;
    if (t->n_rows == 0) gw_fault(rd, NULL, "expected at least one row of readings");
    if (t->n_rows > GW_MAX_READ_VALUES) {
        gw_fault(rd, NULL, "%d rows are more than the %d that are allowed", t->n_rows, GW_MAX_READ_VALUES);
        return;
    }
    int *of = gw_reader_make(rd, t->n_rows + 1, sizeof *of);
    out->reading = gw_reader_make(rd, GW_MAX_READINGS, sizeof *out->reading);
    if (!of || !out->reading || !sort_rows(rd, t, c, of, out)) return;
    if (t->n_rows && !out->n) gw_fault(rd, NULL, "no row has a reading: write what was read into the sheet");
    for (int row = 0; row < t->n_rows; row++) {
        const rows r = { rd, t, c, row };
        if (of[row] < 0) continue;
        gw_reading *reading = &out->reading[of[row]];
        int before = reading->n_values;
        state_of(&r, &reading->state[reading->n_states]);
        values_of(&r, reading->n_states++, reading);
        out->n_values += reading->n_values - before;
        if (reading->state[0].spring_out != reading->state[reading->n_states - 1].spring_out)
            gw_columns_fault(rd, t, row, SPRING, "the rows of one reading have the spring in or out alike");
    }
}

gw_status gw_read_table(const gw_reader *rd, const char *text, size_t size, const gw_case *c,
                        gw_readings *out)
{
    gw_columns table = { 0 };
    char *copy = malloc(size + 1);
    if (!copy) {
        rd->faults->out_of_memory = true;
        return GW_E_NOMEM;
    }
    memcpy(copy, text, size);
    copy[size] = '\0';
    gw_status st = gw_columns_parse(rd, copy, size, HEAD, HEADS, &table);
    if (st == GW_OK) read_rows(rd, &table, c, out);
    gw_columns_free(&table);
    free(copy);
    return st;
}

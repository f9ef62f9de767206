/* SPDX-License-Identifier: MIT */
/* Walks the rows of every result. */
#include "show/results.h"
#include "support/check.h"

#include <string.h>

static const gw_result *const RESULTS[] = {
#define GW_AS_ENTRY(id) &GW_##id##_RESULT,
    GW_RESULT_LIST(GW_AS_ENTRY)
#undef GW_AS_ENTRY
};
enum { RESULTS_N = sizeof RESULTS / sizeof *RESULTS };

typedef void (*visit)(const gw_record *record, const gw_field *field);

enum { DEEPEST = 16 };

/* The record that is looked at and those around it. */
static const gw_record *around[DEEPEST + 1];
static int n_around;

/* The case is above all. */
static bool is_around(const char *type)
{
    if (strcmp(type, "gw_case") == 0) return true;
    for (int i = 0; i < n_around; i++)
        if (strcmp(around[i]->type, type) == 0) return true;
    return false;
}

static void walk(const gw_record *record, visit look, int depth)
{
    if (depth > DEEPEST) fail_msg("%s: records inside one another without end", record->type);
    around[depth] = record;
    for (int i = 0; i < record->n; i++) {
        n_around = depth + 1;
        look(record, &record->field[i]);
        if (record->field[i].record) walk(record->field[i].record, look, depth + 1);
    }
}

static void look_at_words(const gw_record *record, const gw_field *f)
{
    if (f->kind == GW_PART) return;
    if (!f->key || !*f->key) fail_msg("%s: a row without a key", record->type);
    if (!f->doc || !*f->doc) fail_msg("%s.%s: no words for the manual", record->type, f->key);
    if (f->kind == GW_ONE_OF && !f->words) fail_msg("%s.%s: no words to choose from", record->type, f->key);
}

static void look_at_source(const gw_record *record, const gw_field *f)
{
    const char *key = f->key ? f->key : "a part";
    bool inside = f->kind == GW_OBJECT || f->kind == GW_PART || f->kind == GW_LIST;
    if (f->type && !is_around(f->type))
        fail_msg("%s.%s: a member of %s, which is not around it", record->type, key, f->type);
    if (f->other && !is_around(f->other))
        fail_msg("%s.%s: told by %s, which is not around it", record->type, key, f->other);
    if (inside != (f->record != NULL))
        fail_msg("%s.%s: a record belongs in objects, parts, lists", record->type, key);
    if (!f->type && !f->number && !f->text && !f->fill && !f->enter && !f->record && f->constant == 0.0)
        fail_msg("%s.%s: from nowhere", record->type, key);
    bool many = f->kind == GW_LIST || f->kind == GW_LINES;
    if (many && !f->type && !f->count && !(f->constant >= 1.0))
        fail_msg("%s.%s: how many?", record->type, key);
}

/* Keys of a level, those of its parts among them, as JSON or CSV has them; `without`: what the other has
 * alone. */
static int gather(const gw_record *record, int without, char keys[][GW_KEY_MAX], int n)
{
    for (int i = 0; i < record->n; i++) {
        const gw_field *f = &record->field[i];
        if (f->kind == GW_PART) {
            n = gather(f->record, without, keys, n);
            continue;
        }
        if (f->flags & without) continue;
        gw_field_key(f, f->unit, keys[n]);
        for (int k = 0; k < n; k++)
            if (strcmp(keys[k], keys[n]) == 0) fail_msg("%s: the key %s stands twice", record->type, keys[n]);
        n++;
    }
    return n;
}

static void look_for_twins(const gw_record *record, const gw_field *f)
{
    static char keys[256][GW_KEY_MAX];
    if (f == record->field) gather(record, GW_NO_JSON, keys, 0);
    if (f == record->field) gather(record, GW_NO_CSV, keys, 0);
}

static void every_row_has_a_key_and_words_for_the_manual(void **state)
{
    (void)state;
    for (int r = 0; r < RESULTS_N; r++) walk(RESULTS[r]->record, look_at_words, 0);
}

static void every_row_reads_the_struct_that_its_record_describes(void **state)
{
    (void)state;
    for (int r = 0; r < RESULTS_N; r++) walk(RESULTS[r]->record, look_at_source, 0);
}

static void no_key_stands_twice(void **state)
{
    (void)state;
    for (int r = 0; r < RESULTS_N; r++) walk(RESULTS[r]->record, look_for_twins, 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_row_has_a_key_and_words_for_the_manual),
        cmocka_unit_test(every_row_reads_the_struct_that_its_record_describes),
        cmocka_unit_test(no_key_stands_twice),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}

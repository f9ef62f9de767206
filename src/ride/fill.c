/* SPDX-License-Identifier: MIT */
/*
 * What of the skyline is zero throughout. A member joins few others, so most of a long row stays empty even
 * as members before it are eliminated; those products are left out, which changes no bit of the rest.
 */
#include "ride/slider.h"

#include <stdlib.h>

static void mark(const gw_ride_model *model, bool *full, int r, int c)
{
    if (r >= c) full[model->base[r] + c] = true;
}

static void mark_element(const gw_ride_model *model, bool *full, const gw_ride_element *e)
{
    for (int i = 0; i < e->n; i++)
        for (int j = 0; j < e->n; j++) mark(model, full, e->dof[i], e->dof[j]);
}

static void mark_bodies(const gw_ride_model *model, bool *full)
{
    for (int b = 0; b < model->corner->n_bodies; b++)
        for (int i = 0; i < 6; i++)
            for (int j = 0; j < 6; j++) {
                int r = model->bodies[b].dof[i], c = model->bodies[b].dof[j];
                if (r >= 0 && c >= 0) mark(model, full, r, c);
            }
    for (int r = 0; r < model->n; r++) mark(model, full, r, r);
}

static bool is_full(const gw_ride_model *model, const bool *full, int r, int c)
{
    return c >= model->start[r] && full[model->base[r] + c];
}

/* Rows that a column joins are joined by its elimination. */
static void eliminate(const gw_ride_model *model, bool *full)
{
    for (int c = 0; c < model->n; c++)
        for (int r = c + 1; r < model->n; r++)
            for (int k = r; is_full(model, full, r, c) && k < model->n; k++)
                if (is_full(model, full, k, c)) mark(model, full, k, r);
}

/* Runs of columns before `end` that row r has, and row c too; written where there is room for them. */
static int find_runs(const gw_ride_model *model, const bool *full, int r, int c, int end,
                     gw_stretch_of_row *out)
{
    int n = 0, first = model->start[c] > model->start[r] ? model->start[c] : model->start[r];
    bool within = false;
    for (int k = first; k < end; k++) {
        bool both = is_full(model, full, r, k) && is_full(model, full, c, k);
        if (both && !within && out) out[n] = (gw_stretch_of_row){ k, 0 };
        if (both && out) out[n].n++;
        if (!both && within) n++;
        within = both;
    }
    return n + within;
}

static int list_products(gw_ride_model *model, const bool *full, gw_stretch_of_row *out)
{
    int n = 0;
    for (int r = 0; r < model->n; r++)
        for (int c = model->start[r]; c <= r; c++) {
            model->first_run[model->base[r] + c] = n;
            if (c < r && full[model->base[r] + c]) n += find_runs(model, full, r, c, c, out ? out + n : NULL);
        }
    model->first_run[model->n_entries] = n;
    return n;
}

static int list_rows(gw_ride_model *model, const bool *full, gw_stretch_of_row *out)
{
    int n = 0;
    for (int r = 0; r < model->n; r++) {
        model->first_row_run[r] = n;
        n += find_runs(model, full, r, r, r, out ? out + n : NULL);
    }
    model->first_row_run[model->n] = n;
    return n;
}

gw_status gw_ride_find_fill(gw_ride_model *model, gw_arena *arena, gw_error *err)
{
    bool *full = calloc((size_t)model->n_entries + 1, sizeof *full);
    model->first_run = gw_arena_alloc(arena, (size_t)model->n_entries + 1, sizeof *model->first_run);
    model->first_row_run = gw_arena_alloc(arena, (size_t)model->n + 1, sizeof *model->first_row_run);
    bool ok = full && model->first_run && model->first_row_run;
    if (ok) {
        mark_bodies(model, full);
        for (int k = 0; k < model->n_elements; k++) mark_element(model, full, &model->elements[k]);
        for (int s = 0; s < model->n_sliders; s++)
            for (int i = 0; i < model->sliders[s].n_rows; i++)
                mark_element(model, full, &model->sliders[s].row[i]);
        eliminate(model, full);
        size_t runs = (size_t)list_products(model, full, NULL), rows = (size_t)list_rows(model, full, NULL);
        model->run = gw_arena_alloc(arena, runs + 1, sizeof *model->run);
        model->row_run = gw_arena_alloc(arena, rows + 1, sizeof *model->row_run);
        ok = model->run && model->row_run;
    }
    if (ok) {
        list_products(model, full, model->run);
        list_rows(model, full, model->row_run);
    }
    free(full);
    return ok ? GW_OK : gw_fail(err, GW_E_NOMEM, "out of memory while building the ride model");
}

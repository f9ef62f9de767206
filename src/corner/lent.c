/* SPDX-License-Identifier: MIT */
/*
 * The matrix of a known balance, lent to corners that differ little: one step of Newton's iteration with it
 * is right to first order in what differs (the implicit function theorem asks for the derivative there and
 * no other). Solving for another imbalance only reads blocks and factors, so nothing of them is copied.
 */
#include "corner/workspace.h"

#include <string.h>

bool gw_system_keep(const gw_system *s, gw_arena *arena, gw_kept_system *out)
{
    const size_t blocks = (size_t)s->n_blocks, n = (size_t)s->n;
    *out = (gw_kept_system){ .n = s->n, .n_blocks = s->n_blocks };
    out->block = gw_arena_alloc(arena, blocks, sizeof *out->block);
    out->lu = gw_arena_alloc(arena, n, sizeof *out->lu);
    out->rhs = gw_arena_alloc(arena, n, sizeof *out->rhs);
    if (!out->block || !out->lu || !out->rhs) return false;
    memcpy(out->block, s->block, blocks * sizeof *s->block);
    memcpy(out->lu, s->lu, n * sizeof *s->lu);
    memcpy(out->rhs, s->rhs, n * sizeof *s->rhs);
    memcpy(out->border_row, s->border_row, sizeof out->border_row);
    memcpy(out->border_diag, s->border_diag, sizeof out->border_diag);
    return true;
}

bool gw_system_can_borrow(const gw_system *s, const gw_kept_system *kept)
{
    return kept && s->n == kept->n && s->n_blocks == kept->n_blocks;
}

void gw_system_borrow(gw_system *s, const gw_kept_system *kept, gw_kept_system *own)
{
    *own = (gw_kept_system){ .block = s->block, .lu = s->lu };
    s->block = kept->block;
    s->lu = kept->lu;
    memcpy(s->border_row, kept->border_row, sizeof s->border_row);
    memcpy(s->border_diag, kept->border_diag, sizeof s->border_diag);
    for (int b = 1; b < s->n; b++)
        for (int i = 0; i < 6; i++)
            for (int c = 1; c < s->n_columns; c++)
                s->rhs[b][s->n_columns * i + c] = kept->rhs[b][s->n_columns * i + c];
}

void gw_system_give_back(gw_system *s, const gw_kept_system *own)
{
    s->block = own->block;
    s->lu = own->lu;
}

gw_status gw_corner_learn(gw_corner_ws *ws, gw_error *err)
{
    gw_kept_system *kept = gw_arena_alloc(&ws->arena, 1, sizeof *kept);
    gw_state_copy(&ws->work, &ws->reference, ws->system.n);
    gw_assemble(ws, &ws->work, GW_AT_TRAVEL, false);
    bool solved = gw_system_solve(&ws->system);
    if (!kept || !gw_system_keep(&ws->system, &ws->arena, kept))
        return gw_fail(err, GW_E_NOMEM, "out of memory for the %s corner", ws->corner->name);
    ws->lent = solved ? kept : NULL;
    return GW_OK;
}

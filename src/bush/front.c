/* SPDX-License-Identifier: MIT */
#include "bush/front.h"

#include "bush/panels.h"

#include <stdbool.h>
#include <stdlib.h>
#include <string.h>

static gw_status no_memory(int n, gw_error *err)
{
    return gw_fail(err, GW_E_NOMEM, "no memory for the rubber's %d unknowns", n);
}

gw_status gw_front_alloc(gw_front *front, int n, gw_error *err)
{
    size_t size = n > 0 ? (size_t)n : 1;
    *front = (gw_front){ .n = n, .id = calloc(size, sizeof *front->id) };
    front->k = calloc(size * size, sizeof *front->k);
    if (front->id && front->k) return GW_OK;
    gw_front_free(front);
    return no_memory(n, err);
}

void gw_front_free(gw_front *front)
{
    free(front->id);
    free(front->k);
    *front = (gw_front){ 0 };
}

/* A union of unknowns while it is built: those to eliminate first, then those to keep, each ascending. */
typedef struct gw_union {
    int n, inner;  /* unknowns, and how many of them are eliminated      */
    int *id;       /* names                                              */
    int *place[2]; /* where each unknown of either front goes; -1: nowhere */
} gw_union;

static bool union_alloc(gw_union *u, int na, int nb)
{
    size_t n = 2 * ((size_t)na + (size_t)nb) + 1;
    *u = (gw_union){ .id = calloc(n, sizeof *u->id) };
    if (!u->id) return false;
    u->place[0] = u->id + na + nb;
    u->place[1] = u->place[0] + na;
    for (int i = 0; i < na + nb; i++) u->place[0][i] = -1;
    return true;
}

/* Appends the unknowns of one role, in the order of their names. */
static void append(gw_union *u, const gw_front *a, const gw_front *b,
                   gw_front_role (*role)(const void *, int), const void *context, gw_front_role wanted)
{
    for (int i = 0, j = 0; i < a->n || j < b->n;) {
        bool in_a = i < a->n && (j == b->n || a->id[i] <= b->id[j]);
        bool in_b = j < b->n && (i == a->n || b->id[j] <= a->id[i]);
        int id = in_a ? a->id[i] : b->id[j];
        if (role(context, id) == wanted) {
            if (in_a) u->place[0][i] = u->n;
            if (in_b) u->place[1][j] = u->n;
            u->id[u->n++] = id;
        }
        i += in_a;
        j += in_b;
    }
}

static void add(double *k, int n, const gw_front *part, const int *place)
{
    for (int c = 0; c < part->n; c++) {
        const double *from = part->k + (size_t)c * (size_t)part->n;
        if (place[c] < 0) continue;
        for (int r = c; r < part->n; r++) {
            int low = place[c] < place[r] ? place[c] : place[r];
            int high = place[c] < place[r] ? place[r] : place[c];
            if (place[r] >= 0) k[(size_t)low * (size_t)n + (size_t)high] += from[r];
        }
    }
}

static void take_rest(const gw_union *u, const double *k, gw_front *out)
{
    for (int c = 0; c < out->n; c++) {
        size_t from = (size_t)(u->inner + c) * (size_t)(u->n + 1), to = (size_t)c * (size_t)(out->n + 1);
        out->id[c] = u->id[u->inner + c];
        memcpy(out->k + to, k + from, (size_t)(out->n - c) * sizeof *k);
    }
}

gw_status gw_front_join(const gw_front *a, const gw_front *b,
                        gw_front_role (*role)(const void *context, int id), const void *context,
                        gw_front *out, gw_error *err)
{
    gw_union u;
    gw_front rest = { 0 };
    double *k = NULL;
    gw_status status = GW_OK;
    if (!union_alloc(&u, a->n, b->n)) return no_memory(a->n + b->n, err);
    append(&u, a, b, role, context, GW_FRONT_ELIMINATE);
    u.inner = u.n;
    append(&u, a, b, role, context, GW_FRONT_KEEP);
    k = calloc((size_t)u.n * (size_t)u.n + 1, sizeof *k);
    if (!k) {
        status = no_memory(u.n, err);
        goto done;
    }
    add(k, u.n, a, u.place[0]);
    add(k, u.n, b, u.place[1]);
    const gw_lower lower = { k, (size_t)u.n + 1, u.n, u.n - 1 };
    if ((status = gw_panels_factor(&lower, u.inner, err)) != GW_OK) goto done;
    if ((status = gw_front_alloc(&rest, u.n - u.inner, err)) != GW_OK) goto done;
    take_rest(&u, k, &rest);
    *out = rest;
done:
    free(k);
    free(u.id);
    return status;
}

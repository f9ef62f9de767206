/* SPDX-License-Identifier: MIT */
/* How sure it is: in how many drawn cars a recommendation is steadier than what it is compared with. */
#include "base/parallel.h"
#include "giveway/spread.h"
#include "study/choose_parts.h"
#include "study/drawn.h"

#include <math.h>
#include <stdatomic.h>
#include <stdlib.h>

enum { PIECE = 16, CARS = 1 + GW_RECOMMENDED };

typedef struct gw_sure_work {
    const gw_planner *p;
    const gw_draws *draws;
    int n_figures;        /* that are drawn */
    double *unsteadiness; /* [draw][car]: the first kit, then the recommendations; NAN: it cannot be had */
    atomic_bool out_of_memory;
} gw_sure_work;

/* -1: as in the first kit. */
static const int *options_of(const gw_planner *p, int car)
{
    return car == 0 ? p->out->now.option : p->out->front[p->out->recommended[car - 1].member].option;
}

static bool is_repeated(const gw_planner *p, int car, int *as)
{
    for (*as = 1; *as < car; ++*as)
        if (p->out->recommended[*as - 1].member == p->out->recommended[car - 1].member) return true;
    return false;
}

/* The same kits in a drawn car. */
static gw_status work_kits(const gw_planner *drawn, const gw_planner *p, double *row, gw_error *err)
{
    gw_bench_kit *kit = NULL;
    gw_road *road = NULL;
    double *value = calloc((size_t)p->out->n_figures, sizeof *value);
    gw_status status =
        value ? gw_bench_kit_open(drawn, &kit, err) : gw_fail(err, GW_E_NOMEM, "out of memory for figures");
    for (int car = 0; car < CARS && status == GW_OK; car++) {
        int as;
        if (is_repeated(p, car, &as)) {
            row[car] = row[as];
            continue;
        }
        for (int i = 0; i < gw_choices(p); i++) kit->option[i] = options_of(p, car)[i];
        gw_status carried = gw_kit_figures(drawn, kit, &road, value, &row[car], err);
        if (gw_is_serious(carried)) status = carried;
    }
    gw_road_close(road);
    gw_bench_kit_close(kit);
    free(value);
    return status;
}

static gw_status work_draw(gw_sure_work *w, gw_drawer *drawer, const double *z, double *row)
{
    gw_drawn drawn;
    for (int car = 0; car < CARS; car++) row[car] = (double)NAN;
    gw_status status = gw_drawn_make(w->draws, drawer, z, &drawn, NULL);
    if (status != GW_OK) return status == GW_E_NOMEM ? status : GW_OK; /* no such car can be made */
    gw_planner p = *w->p;
    p.c = &drawn.c;
    status = gw_run_open(&p.run, &drawn.c, &drawn.wanted, NULL);
    if (status == GW_OK) status = work_kits(&p, w->p, row, NULL);
    gw_run_close(&p.run);
    gw_drawn_free(&drawn);
    return status;
}

static void work_piece(void *context, int index)
{
    gw_sure_work *w = context;
    gw_drawer *drawer = NULL;
    long end = (long)(index + 1) * PIECE;
    double *z = calloc((size_t)w->p->c->uncertain.n + 1, sizeof *z);
    if (!z || gw_drawer_open(w->p->c, &drawer, NULL) != GW_OK) atomic_store(&w->out_of_memory, true);
    for (long i = (long)index * PIECE;
         i < end && i < w->p->out->draws && !atomic_load(&w->out_of_memory) && gw_plan_goes_on(w->p, 0);
         i++) {
        for (int j = 0; j < w->n_figures; j++) z[j] = gw_normal_draw(1, i, j);
        if (work_draw(w, drawer, z, w->unsteadiness + i * CARS) == GW_E_NOMEM)
            atomic_store(&w->out_of_memory, true);
    }
    gw_drawer_close(drawer);
    free(z);
}

/* Share of the draws in which both were had and `car` is the steadier. */
static double share(const gw_sure_work *w, int car, int than)
{
    long n = 0, steadier = 0;
    for (long i = 0; i < w->p->out->draws; i++) {
        const double *row = w->unsteadiness + i * CARS;
        if (isnan(row[car]) || isnan(row[than])) continue;
        n++;
        steadier += row[car] < row[than];
    }
    return n ? (double)steadier / (double)n : (double)NAN;
}

static bool is_cheaper(const gw_choose_study *s, int a, int b)
{
    return s->front[s->recommended[a].member].cost < s->front[s->recommended[b].member].cost - 0.005;
}

static void compare(gw_sure_work *w, gw_choose_study *out)
{
    for (int i = 0; i < GW_RECOMMENDED; i++) {
        gw_recommendation *r = &out->recommended[i];
        r->sure[r->n_sure++] = (gw_choose_sure){ "now", share(w, 1 + i, 0) };
        for (int j = 0; j < GW_RECOMMENDED; j++) {
            int as;
            if (j == i || is_repeated(w->p, 1 + j, &as) || !is_cheaper(out, j, i)) continue;
            r->sure[r->n_sure++] = (gw_choose_sure){ out->recommended[j].name, share(w, 1 + i, 1 + j) };
        }
    }
}

gw_status gw_choose_sureness(gw_planner *p, const gw_selection *wanted, gw_error *err)
{
    gw_choose_study *out = p->out;
    gw_draws draws = { 0 };
    gw_sure_work w = { .p = p, .draws = &draws, .n_figures = p->c->uncertain.n - p->c->uncertain.n_ride };
    if (!out->has_recommended || !p->options->draws || !p->c->uncertain.n) return GW_OK;
    out->draws = p->options->draws;
    w.unsteadiness = malloc((size_t)out->draws * CARS * sizeof *w.unsteadiness);
    gw_status status = w.unsteadiness ? gw_draws_open(p->c, wanted, &draws, err)
                                      : gw_fail(err, GW_E_NOMEM, "out of memory for drawing cars");
    if (status == GW_OK) {
        gw_parallel((int)((out->draws + PIECE - 1) / PIECE), work_piece, &w);
        if (atomic_load(&w.out_of_memory))
            status = gw_fail(err, GW_E_NOMEM, "out of memory for drawing cars");
        if (status == GW_OK) compare(&w, out);
    }
    gw_draws_close(&draws);
    free(w.unsteadiness);
    return status;
}

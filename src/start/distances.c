/* SPDX-License-Identifier: MIT */
#include "start/distances.h"

#include "fit/nonlinear.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>

static const double DOUBTED = 3; /* standard deviations       */
static const double HELD = 1e-4; /* of what may not move [mm] */

enum { PLACES = GW_AXLES * GW_START_POINTS, UNKNOWNS = 3 * PLACES };

typedef struct problem {
    const gw_start_distance *distance;
    int n_distances, left_out; /* index of the distance that is not asked; -1: all are */
    int of[PLACES];            /* first unknown of a point; -1: no distance speaks of it */
    int m;
    double prior[UNKNOWNS], sigma[UNKNOWNS];
} problem;

static int place_of(int axle, int point)
{
    return axle * GW_START_POINTS + point;
}

static double apart(const problem *q, const double *p, const gw_start_distance *d)
{
    const double *a = p + q->of[place_of(d->axle[0], d->point[0])],
                 *b = p + q->of[place_of(d->axle[1], d->point[1])];
    return sqrt(pow(a[0] - b[0], 2) + pow(a[1] - b[1], 2) + pow(a[2] - b[2], 2));
}

static void residuals(const double *p, double *r, void *context)
{
    const problem *q = context;
    for (int i = 0; i < q->m; i++) r[i] = (p[i] - q->prior[i]) / q->sigma[i];
    for (int i = 0; i < q->n_distances; i++) {
        const gw_start_distance *d = &q->distance[i];
        r[q->m + i] = i == q->left_out ? 0.0 : (apart(q, p, d) - d->v) / (d->within / 2);
    }
}

/* A point in the middle of the car stays there. */
static bool stays(const gw_start_car *car, int axle, int point, int k)
{
    return k == 1 && car->corner[axle].parts.point[point].side == GW_START_MIDDLE;
}

static void set_up(const gw_start_car *car, const gw_start_distance *distance, int n, problem *q)
{
    *q = (problem){ .distance = distance, .n_distances = n, .left_out = -1 };
    for (int i = 0; i < PLACES; i++) q->of[i] = -1;
    for (int i = 0; i < n; i++)
        for (int end = 0; end < 2; end++) {
            int axle = distance[i].axle[end], point = distance[i].point[end], place = place_of(axle, point);
            if (q->of[place] >= 0) continue;
            q->of[place] = q->m;
            for (int k = 0; k < 3; k++) {
                const gw_start_figure *f = &car->corner[axle].place[point][k];
                q->prior[q->m] = f->v;
                q->sigma[q->m++] =
                    stays(car, axle, point, k) ? HELD : (f->read ? f->within : GW_START_POINT_BAND) / 2;
            }
        }
}

static gw_status solve(problem *q, double *p, double *root, gw_error *err)
{
    const gw_nonlinear fit = { q->m + q->n_distances, q->m, residuals, q };
    double sum;
    for (int i = 0; i < q->m; i++) p[i] = q->prior[i];
    gw_status st = gw_nonlinear_fit(&fit, p, &sum, err);
    return st == GW_OK ? gw_nonlinear_root(&fit, p, root, err) : st;
}

static double variance(const problem *q, const double *root, const double *g)
{
    double sum = 0;
    for (int c = 0; c < q->m; c++) {
        double s = 0;
        for (int i = 0; i < q->m; i++) s += g[i] * root[i * q->m + c];
        sum += s * s;
    }
    return sum;
}

typedef struct doubt {
    int distance;
    double predicted, deviations;
} doubt;

/* How far a distance is from what all the others say, in standard deviations of both. */
static gw_status hold_against_rest(problem *q, int i, double *p, double *root, doubt *out, gw_error *err)
{
    const gw_start_distance *d = &q->distance[i];
    double g[UNKNOWNS] = { 0 };
    q->left_out = i;
    gw_status st = solve(q, p, root, err);
    q->left_out = -1;
    if (st != GW_OK) return st;
    int a = q->of[place_of(d->axle[0], d->point[0])], b = q->of[place_of(d->axle[1], d->point[1])];
    double predicted = apart(q, p, d);
    for (int k = 0; k < 3 && predicted > 0; k++) {
        g[a + k] = (p[a + k] - p[b + k]) / predicted;
        g[b + k] = -g[a + k];
    }
    *out = (doubt){ i, predicted,
                    fabs(predicted - d->v) / sqrt(variance(q, root, g) + d->within * d->within / 4) };
    return GW_OK;
}

static int worst_first(const void *a, const void *b)
{
    double p = ((const doubt *)a)->deviations, q = ((const doubt *)b)->deviations;
    return p < q ? 1 : p > q ? -1 : 0;
}

static void tell(const gw_start_car *car, const problem *q, const doubt *doubts, int n, const char *path,
                 gw_faults *faults)
{
    for (int i = 0; i < n && doubts[i].deviations > DOUBTED; i++) {
        const gw_start_distance *d = &q->distance[doubts[i].distance];
        char line[400];
        snprintf(line, sizeof line,
                 "%s: line %d, value: the distance from %s to %s was read as %.1f mm, by all else it is %.1f "
                 "mm: %.1f standard deviations apart; measure it again",
                 path, d->line, car->corner[d->axle[0]].parts.point[d->point[0]].name,
                 car->corner[d->axle[1]].parts.point[d->point[1]].name, d->v, doubts[i].predicted,
                 doubts[i].deviations);
        gw_faults_add(faults, true, line);
    }
}

static void take_places(gw_start_car *car, const problem *q, const double *p, const double *root)
{
    for (int a = 0; a < GW_AXLES; a++)
        for (int i = 0; i < GW_START_POINTS; i++)
            for (int k = 0, at = q->of[place_of(a, i)]; at >= 0 && k < 3; k++) {
                double g[UNKNOWNS] = { 0 };
                if (stays(car, a, i, k)) continue;
                g[at + k] = 1;
                car->corner[a].place[i][k] =
                    (gw_start_figure){ round(p[at + k] * 1e6) / 1e6, 2 * sqrt(variance(q, root, g)), true };
            }
}

gw_status gw_start_place_points(gw_start_car *car, const gw_start_distance *distance, int n, const char *path,
                                gw_faults *faults)
{
    problem q;
    gw_error err = { 0 };
    set_up(car, distance, n, &q);
    double *p = calloc((size_t)q.m + 1, sizeof *p),
           *root = calloc((size_t)q.m * (size_t)q.m + 1, sizeof *root);
    doubt *doubts = calloc((size_t)n + 1, sizeof *doubts);
    gw_status st = p && root && doubts ? GW_OK : GW_E_NOMEM;
    for (int i = 0; i < n && st == GW_OK; i++) st = hold_against_rest(&q, i, p, root, &doubts[i], &err);
    if (st == GW_OK) st = solve(&q, p, root, &err);
    if (st == GW_OK) {
        qsort(doubts, (size_t)n, sizeof *doubts, worst_first);
        tell(car, &q, doubts, n, path, faults);
        take_places(car, &q, p, root);
    } else if (st == GW_E_NOMEM) {
        faults->out_of_memory = true;
    } else {
        gw_faults_add(faults, false, err.msg);
    }
    free(p);
    free(root);
    free(doubts);
    return st;
}

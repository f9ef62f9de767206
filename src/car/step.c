/* SPDX-License-Identifier: MIT */
/*
 * One step of Newton's iteration for the whole car.
 *
 * Corners meet each other only through the chassis and what they share. So every member is eliminated in its
 * axle, then the two uprights of each axle, and what is left are the few unknowns of the whole car: height,
 * roll and pitch with the lateral forces of the axles, or with the four preloads while the car is set.
 */
#include "car/road.h"

#include <string.h>

enum { UPRIGHTS = 6 * GW_WHEELS, WIDTH = 1 + GW_MOST_UNKNOWNS };

/* Gaussian elimination with row pivoting, rows scaled; b has `m` columns and rows of WIDTH numbers. */
static bool solve_many(double *a, int n, double b[][WIDTH], int m)
{
    for (int i = 0; i < n; i++) {
        double big = 0.0;
        for (int j = 0; j < n; j++) big = fmax(big, fabs(a[n * i + j]));
        if (!(big > 0.0)) return false;
        for (int j = 0; j < n; j++) a[n * i + j] /= big;
        for (int j = 0; j < m; j++) b[i][j] /= big;
    }
    for (int k = 0; k < n; k++) {
        int p = k;
        for (int i = k + 1; i < n; i++)
            if (fabs(a[n * i + k]) > fabs(a[n * p + k])) p = i;
        if (!(fabs(a[n * p + k]) > 0.0)) return false;
        for (int j = k; p != k && j < n; j++) {
            double t = a[n * k + j];
            a[n * k + j] = a[n * p + j];
            a[n * p + j] = t;
        }
        for (int j = 0; p != k && j < m; j++) {
            double t = b[k][j];
            b[k][j] = b[p][j];
            b[p][j] = t;
        }
        for (int i = k + 1; i < n; i++) {
            double factor = a[n * i + k] / a[n * k + k];
            for (int j = k + 1; j < n; j++) a[n * i + j] -= factor * a[n * k + j];
            for (int j = 0; j < m; j++) b[i][j] -= factor * b[k][j];
        }
    }
    for (int i = n - 1; i >= 0; i--)
        for (int j = 0; j < m; j++) {
            double sum = b[i][j];
            for (int k = i + 1; k < n; k++) sum -= a[n * i + k] * b[k][j];
            b[i][j] = sum / a[n * i + i];
        }
    return true;
}

/* Which equations of the car are asked: up, roll and pitch always, sideways and yaw where lateral forces act.
 */
static int equations(const gw_road *road, int of[5])
{
    static const int SET[3] = { 2, 3, 4 }, DRIVEN[5] = { 1, 2, 3, 4, 5 };
    int n = road->setting ? 3 : 5;
    memcpy(of, road->setting ? SET : DRIVEN, (size_t)n * sizeof *of);
    return n;
}

static int unknowns(const gw_road *road)
{
    return road->setting ? GW_MOST_UNKNOWNS : 3 + GW_AXLES;
}

/* [rhs | columns of the car's unknowns] of the uprights, and their matrix. */
static void gather(const gw_road *road, gw_axle which, const gw_balance_of_car *b, double *a,
                   double r[UPRIGHTS][WIDTH])
{
    const gw_system *s = &road->axle[which].ws->system;
    memset(r, 0, UPRIGHTS * sizeof *r);
    for (int w = 0; w < GW_WHEELS; w++) {
        const double *rhs = s->rhs[s->upright[w]];
        for (int v = 0; v < GW_WHEELS; v++) {
            const double *k = s->block[s->slot[s->upright[w]][s->upright[v]]];
            for (int i = 0; i < 6; i++)
                for (int j = 0; j < 6; j++) a[UPRIGHTS * (6 * w + i) + 6 * v + j] = k[6 * i + j];
        }
        for (int i = 0; i < 6; i++) {
            double *row = r[6 * w + i];
            row[0] = rhs[s->n_columns * i];
            for (int k = 0; k < 3; k++) row[1 + k] = b->upright_by_stance[which][w][i][k];
            if (!road->setting) row[4 + which] = b->upright_by_lateral[which][w][i];
            for (int v = 0; road->setting && v < GW_WHEELS; v++)
                row[4 + GW_WHEELS * (int)which + v] = rhs[s->n_columns * i + 1 + v];
        }
    }
}

/* Row of the car's equation `e` (below n_car) or of a wheel's travel, in the twists of the axle's uprights.
 */
static double in_twists(const gw_road *road, gw_axle which, const gw_balance_of_car *b, int row, int n_car,
                        const int *of, int column)
{
    int w = column / 6, i = column % 6;
    if (row < n_car) return b->by_twist[which][w][of[row]][i];
    int wheel = row - n_car - GW_WHEELS * (int)which;
    return wheel == w ? road->axle[which].ws->system.border_row[w][i] : 0.0;
}

static void start_rows(const gw_road *road, const gw_balance_of_car *b, int n_car, const int *of, int n,
                       double *s, double r[][WIDTH])
{
    memset(s, 0, (size_t)(n * n) * sizeof *s);
    for (int e = 0; e < n; e++) r[e][0] = 0.0;
    for (int e = 0; e < n_car; e++) {
        r[e][0] = b->sum[of[e]];
        for (int k = 0; k < 3; k++) s[n * e + k] = b->by_stance[of[e]][k];
        for (int a = 0; a < GW_AXLES && !road->setting; a++) s[n * e + 3 + a] = b->by_lateral[a][of[e]];
    }
    for (int e = n_car; e < n; e++)
        r[e][0] = road->axle[(e - n_car) / GW_WHEELS].ws->system.border_rhs[(e - n_car) % GW_WHEELS];
}

static void take_back(gw_road *road, gw_axle which, double z[UPRIGHTS][WIDTH], double x[][WIDTH], int n)
{
    gw_system *s = &road->axle[which].ws->system;
    for (int w = 0; w < GW_WHEELS; w++) {
        for (int i = 0; i < 6; i++) {
            double sum = z[6 * w + i][0];
            for (int k = 0; k < n; k++) sum -= z[6 * w + i][1 + k] * x[k][0];
            s->step[s->upright[w]][i] = sum;
        }
        s->border_step[w] = road->setting ? x[3 + GW_WHEELS * (int)which + w][0] : 0.0;
    }
}

bool gw_road_step(gw_road *road, const gw_balance_of_car *b)
{
    double z[GW_AXLES][UPRIGHTS][WIDTH], s[GW_MOST_UNKNOWNS * GW_MOST_UNKNOWNS], r[GW_MOST_UNKNOWNS][WIDTH];
    int of[5], n_car = equations(road, of), n = unknowns(road);
    start_rows(road, b, n_car, of, n, s, r);
    for (int a = 0; a < GW_AXLES; a++) {
        double matrix[UPRIGHTS * UPRIGHTS];
        if (!gw_system_condense(&road->axle[a].ws->system)) return false;
        gather(road, (gw_axle)a, b, matrix, z[a]);
        if (!solve_many(matrix, UPRIGHTS, z[a], 1 + n)) return false;
        for (int e = 0; e < n; e++)
            for (int i = 0; i < UPRIGHTS; i++) {
                if (e >= n_car && (e - n_car) / GW_WHEELS != a) break;
                double c = in_twists(road, (gw_axle)a, b, e, n_car, of, i);
                r[e][0] -= c * z[a][i][0];
                for (int k = 0; k < n; k++) s[n * e + k] -= c * z[a][i][1 + k];
            }
    }
    if (!solve_many(s, n, r, 1)) return false;
    for (int k = 0; k < n; k++)
        if (!isfinite(r[k][0])) return false;
    for (int a = 0; a < GW_AXLES; a++) {
        take_back(road, (gw_axle)a, z[a], r, n);
        if (!gw_system_spread(&road->axle[a].ws->system)) return false;
    }
    road->stance.height += r[0][0];
    road->stance.roll += r[1][0];
    road->stance.pitch += r[2][0];
    gw_look_from(&road->stance);
    for (int a = 0; a < GW_AXLES && !road->setting; a++) road->axle[a].lateral += r[3 + a][0];
    return true;
}

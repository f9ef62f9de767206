/* SPDX-License-Identifier: MIT */
/*
 * One step of Newton's iteration for the whole car.
 *
 * Corners meet each other only through the chassis and what they share. So every member is eliminated in its
 * axle, then the two uprights of each axle, and what is left are the few unknowns of the whole car: height,
 * roll and pitch with the lateral forces of the axles, or with the four preloads while the car is set.
 */
#include "car/workspace.h"

#include <string.h>

enum { UPRIGHTS = 6 * GW_WHEELS, WIDTH = 1 + GW_MOST_UNKNOWNS };

static void swap_rows(double *a, int n, int i, int k)
{
    for (int j = 0; j < n; j++) {
        double t = a[n * i + j];
        a[n * i + j] = a[n * k + j];
        a[n * k + j] = t;
    }
}

static bool scale_rows(gw_factors *f, int n)
{
    for (int i = 0; i < n; i++) {
        double big = 0.0;
        for (int j = 0; j < n; j++) big = fmax(big, fabs(f->a[n * i + j]));
        if (!(big > 0.0)) return false;
        for (int j = 0; j < n; j++) f->a[n * i + j] /= big;
        f->scale[i] = big;
    }
    return true;
}

/* Gaussian elimination with row pivoting, rows scaled, in place. */
static bool factor(gw_factors *f, int n)
{
    double *a = f->a;
    if (!scale_rows(f, n)) return false;
    for (int k = 0; k < n; k++) {
        int p = k;
        for (int i = k + 1; i < n; i++)
            if (fabs(a[n * i + k]) > fabs(a[n * p + k])) p = i;
        if (!(fabs(a[n * p + k]) > 0.0)) return false;
        f->pivot[k] = p;
        if (p != k) swap_rows(a, n, p, k);
        for (int i = k + 1; i < n; i++) {
            double by = a[n * i + k] /= a[n * k + k];
            for (int j = k + 1; j < n; j++) a[n * i + j] -= by * a[n * k + j];
        }
    }
    return true;
}

/* The first m columns of b, rows of WIDTH numbers. */
static void substitute(const gw_factors *f, int n, double b[][WIDTH], int m)
{
    const double *a = f->a;
    for (int i = 0; i < n; i++)
        for (int j = 0; j < m; j++) b[i][j] /= f->scale[i];
    for (int k = 0; k < n; k++)
        for (int j = 0; f->pivot[k] != k && j < m; j++) {
            double t = b[k][j];
            b[k][j] = b[f->pivot[k]][j];
            b[f->pivot[k]][j] = t;
        }
    for (int i = 1; i < n; i++)
        for (int k = 0; k < i; k++)
            for (int j = 0; j < m; j++) b[i][j] -= a[n * i + k] * b[k][j];
    for (int i = n - 1; i >= 0; i--) {
        for (int k = i + 1; k < n; k++)
            for (int j = 0; j < m; j++) b[i][j] -= a[n * i + k] * b[k][j];
        for (int j = 0; j < m; j++) b[i][j] /= a[n * i + i];
    }
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

/* The matrix of the uprights, and the columns of the car's unknowns. */
static void gather(const gw_road *road, gw_axle which, const gw_balance_of_car *b, double *a,
                   double r[UPRIGHTS][WIDTH])
{
    const gw_system *s = &road->axle[which].ws->system;
    memset(r, 0, UPRIGHTS * sizeof *r);
    for (int w = 0; w < GW_WHEELS; w++) {
        const double *rhs = s->rhs[s->upright[w]];
        for (int v = 0; v < GW_WHEELS; v++) {
            const double *k = gw_block_at(s, s->upright[w], s->upright[v]);
            for (int i = 0; i < 6; i++)
                for (int j = 0; j < 6; j++) a[UPRIGHTS * (6 * w + i) + 6 * v + j] = k[6 * i + j];
        }
        for (int i = 0; i < 6; i++) {
            double *row = r[6 * w + i];
            for (int k = 0; k < 3; k++) row[1 + k] = b->upright_by_stance[which][w][i][k];
            if (!road->setting) row[4 + which] = b->upright_by_lateral[which][w][i];
            for (int v = 0; road->setting && v < GW_WHEELS; v++)
                row[4 + GW_WHEELS * (int)which + v] = rhs[s->n_columns * i + 1 + v];
        }
    }
}

/* What is left over on the uprights, the members eliminated: the first column. */
static void gather_left(const gw_system *s, double r[UPRIGHTS][WIDTH])
{
    for (int w = 0; w < GW_WHEELS; w++)
        for (int i = 0; i < 6; i++) r[6 * w + i][0] = s->rhs[s->upright[w]][s->n_columns * i];
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

/* Equation `row` concerns the axle: all of the car's do, a wheel's travel only its own. */
static bool concerns(gw_axle which, int row, int n_car)
{
    return row < n_car || (row - n_car) / GW_WHEELS == (int)which;
}

/* The matrix of the car's few unknowns, the uprights eliminated. */
static void make_car(gw_road *road, const gw_balance_of_car *b, const int *of, int n_car, int n)
{
    double *s = road->factors.car.a;
    memset(s, 0, (size_t)(n * n) * sizeof *s);
    for (int e = 0; e < n_car; e++) {
        for (int k = 0; k < 3; k++) s[n * e + k] = b->by_stance[of[e]][k];
        for (int a = 0; a < GW_AXLES && !road->setting; a++) s[n * e + 3 + a] = b->by_lateral[a][of[e]];
    }
    for (int a = 0; a < GW_AXLES; a++)
        for (int e = 0; e < n; e++)
            for (int i = 0; i < UPRIGHTS && concerns((gw_axle)a, e, n_car); i++) {
                double c = in_twists(road, (gw_axle)a, b, e, n_car, of, i);
                for (int k = 0; k < n; k++) s[n * e + k] -= c * road->factors.by_unknown[a][i][1 + k];
            }
}

/* What is left over in the car's equations, the uprights following. */
static void make_car_left(const gw_road *road, const gw_balance_of_car *b, const int *of, int n_car, int n,
                          double r[][WIDTH])
{
    for (int e = 0; e < n_car; e++) r[e][0] = b->sum[of[e]];
    for (int e = n_car; e < n; e++)
        r[e][0] = road->axle[(e - n_car) / GW_WHEELS].ws->system.border_rhs[(e - n_car) % GW_WHEELS];
    for (int a = 0; a < GW_AXLES; a++)
        for (int e = 0; e < n; e++)
            for (int i = 0; i < UPRIGHTS && concerns((gw_axle)a, e, n_car); i++)
                r[e][0] -=
                    in_twists(road, (gw_axle)a, b, e, n_car, of, i) * road->factors.by_unknown[a][i][0];
}

static void take_back(gw_road *road, gw_axle which, double x[][WIDTH], int n)
{
    gw_system *s = &road->axle[which].ws->system;
    double(*z)[WIDTH] = road->factors.by_unknown[which];
    for (int w = 0; w < GW_WHEELS; w++) {
        for (int i = 0; i < 6; i++) {
            double sum = z[6 * w + i][0];
            for (int k = 0; k < n; k++) sum -= z[6 * w + i][1 + k] * x[k][0];
            s->step[s->upright[w]][i] = sum;
        }
        s->border_step[w] = road->setting ? x[3 + GW_WHEELS * (int)which + w][0] : 0.0;
    }
}

/* The car's unknowns, then everything that follows them. */
static bool finish(gw_road *road, const gw_balance_of_car *b, const int *of, int n_car, int n)
{
    double r[GW_MOST_UNKNOWNS][WIDTH];
    make_car_left(road, b, of, n_car, n, r);
    substitute(&road->factors.car, n, r, 1);
    for (int k = 0; k < n; k++)
        if (!isfinite(r[k][0])) return false;
    for (int a = 0; a < GW_AXLES; a++) {
        take_back(road, (gw_axle)a, r, n);
        if (!gw_system_spread(&road->axle[a].ws->system)) return false;
    }
    road->stance.height += r[0][0];
    road->stance.roll += r[1][0];
    road->stance.pitch += r[2][0];
    gw_look_from(&road->stance);
    for (int a = 0; a < GW_AXLES && !road->setting; a++) road->axle[a].lateral += r[3 + a][0];
    return true;
}

bool gw_road_step(gw_road *road, const gw_balance_of_car *b)
{
    int of[5], n_car = equations(road, of), n = unknowns(road);
    for (int a = 0; a < GW_AXLES; a++) {
        gw_system *s = &road->axle[a].ws->system;
        gw_factors *f = &road->factors.upright[a];
        if (!gw_system_condense(s)) return false;
        gather(road, (gw_axle)a, b, f->a, road->factors.by_unknown[a]);
        gather_left(s, road->factors.by_unknown[a]);
        if (!factor(f, UPRIGHTS)) return false;
        substitute(f, UPRIGHTS, road->factors.by_unknown[a], 1 + n);
    }
    make_car(road, b, of, n_car, n);
    return factor(&road->factors.car, n) && finish(road, b, of, n_car, n);
}

bool gw_road_step_again(gw_road *road, const gw_balance_of_car *b)
{
    int of[5], n_car = equations(road, of), n = unknowns(road);
    for (int a = 0; a < GW_AXLES; a++) {
        gw_system *s = &road->axle[a].ws->system;
        gw_system_condense_again(s);
        gather_left(s, road->factors.by_unknown[a]);
        substitute(&road->factors.upright[a], UPRIGHTS, road->factors.by_unknown[a], 1);
    }
    return finish(road, b, of, n_car, n);
}

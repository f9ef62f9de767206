/* SPDX-License-Identifier: MIT */
#include "fit/press_loop.h"

#include "giveway/units.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

/* Deflection that goes back by more than this part of the file's span has turned; less is shaking. */
static const double BACK = 0.1;
/* Ways that share less of the longer one are no loop. */
static const double SHARED = 2.0 / 3.0;

/** Readings first to last, both counted; rising or falling. */
typedef struct way {
    int first, last;
    bool rises;
} way;

/** The last three ways: [0] the last, [1] the one before it, [2] the one before both. */
typedef struct ways {
    way of[3];
    int n;
} ways;

static void push(ways *w, int first, int last, const double *x)
{
    if (last <= first) return;
    w->of[2] = w->of[1];
    w->of[1] = w->of[0];
    w->of[0] = (way){ first, last, x[last] > x[first] };
    if (w->n < 3) w->n++;
}

static double span_of(const double *x, int n)
{
    double low = x[0], high = x[0];
    for (int i = 1; i < n; i++) {
        low = fmin(low, x[i]);
        high = fmax(high, x[i]);
    }
    return high - low;
}

/* Extremes in turn: the running one is final once deflection has gone back from it by more than `back`. */
static ways find_ways(const double *x, int n, double back)
{
    ways w = { .n = 0 };
    int low = 0, high = 0, start = 0, direction = 0;
    for (int i = 1; i < n; i++) {
        if (x[i] < x[low]) low = i;
        if (x[i] > x[high]) high = i;
        if (direction >= 0 && x[i] < x[high] - back) {
            push(&w, start, high, x);
            start = high;
            low = i;
            direction = -1;
        } else if (direction <= 0 && x[i] > x[low] + back) {
            push(&w, start, low, x);
            start = low;
            high = i;
            direction = 1;
        }
    }
    push(&w, start, direction > 0 ? high : low, x);
    return w;
}

typedef struct reading {
    double x, f;
} reading;

static int by_deflection(const void *a, const void *b)
{
    double p = ((const reading *)a)->x, q = ((const reading *)b)->x;
    return p < q ? -1 : p > q;
}

static bool line_alloc(gw_press_line *line, int room)
{
    *line = (gw_press_line){ 0, malloc(((size_t)room + 1) * sizeof(double)),
                             malloc(((size_t)room + 1) * sizeof(double)) };
    return line->x && line->f;
}

static void line_free(gw_press_line *line)
{
    free(line->x);
    free(line->f);
    *line = (gw_press_line){ 0 };
}

/* Sorted by deflection, those of equal deflection averaged. */
static void join(reading *r, int n, gw_press_line *line)
{
    qsort(r, (size_t)n, sizeof *r, by_deflection);
    line->n = 0;
    for (int i = 0, j; i < n; i = j) {
        double sum = 0.0;
        for (j = i; j < n && r[j].x == r[i].x; j++) sum += r[j].f;
        line->x[line->n] = r[i].x;
        line->f[line->n++] = sum / (j - i);
    }
}

static bool line_of_way(const double *x, const double *f, const way *w, gw_press_line *line)
{
    int n = w->last - w->first + 1;
    reading *r = malloc((size_t)n * sizeof *r);
    bool ok = r && line_alloc(line, n);
    for (int i = 0; ok && i < n; i++) r[i] = (reading){ x[w->first + i], f[w->first + i] };
    if (ok) join(r, n, line);
    free(r);
    return ok;
}

static double low_of(const gw_press_line *l)
{
    return l->x[0];
}

static double high_of(const gw_press_line *l)
{
    return l->x[l->n - 1];
}

static double range_of(const gw_press_line *l)
{
    return high_of(l) - low_of(l);
}

static void append(gw_press_line *to, double x, double f)
{
    to->x[to->n] = x;
    to->f[to->n++] = f;
}

/* Of `before` what lies between two deflections; at the outer of them, where it goes on, off its line. */
static void append_ends(gw_press_line *to, const gw_press_line *before, double low, double high,
                        bool low_is_outer)
{
    bool reaches = low_is_outer ? low_of(before) <= low && high_of(before) > low
                                : high_of(before) >= high && low_of(before) < high;
    if (reaches && low_is_outer) append(to, low, gw_press_line_at(before, low));
    for (int i = 0; i < before->n; i++)
        if (before->x[i] > low && before->x[i] < high) append(to, before->x[i], before->f[i]);
    if (reaches && !low_is_outer) append(to, high, gw_press_line_at(before, high));
}

/* What `last` does not reach of `second`, from the way that went there before. */
static bool lengthen(gw_press_line *last, const gw_press_line *second, const gw_press_line *before,
                     double apart)
{
    gw_press_line whole;
    double low = low_of(last), high = high_of(last);
    if (low_of(before) > high + apart || high_of(before) < low - apart) return true;
    if (!line_alloc(&whole, last->n + before->n + 4)) {
        line_free(&whole);
        return false;
    }
    if (low_of(second) < low) append_ends(&whole, before, low_of(second), low, true);
    for (int i = 0; i < last->n; i++) append(&whole, last->x[i], last->f[i]);
    if (high_of(second) > high) append_ends(&whole, before, high, high_of(second), false);
    line_free(last);
    *last = whole;
    return true;
}

double gw_press_line_at(const gw_press_line *line, double x)
{
    int low = 0, high = line->n - 1;
    if (x >= line->x[high]) return line->f[high];
    if (x <= line->x[0]) return line->f[0];
    while (high - low > 1) {
        int middle = low + (high - low) / 2;
        if (x < line->x[middle])
            high = middle;
        else
            low = middle;
    }
    double t = (x - line->x[low]) / (line->x[high] - line->x[low]);
    return line->f[low] + t * (line->f[high] - line->f[low]);
}

/* Places of both lines within [low, high], ends counted, each once. */
static void merge(const gw_press_line *a, const gw_press_line *b, double low, double high, gw_press_line *to)
{
    int i = 0, j = 0;
    to->n = 0;
    to->x[to->n++] = low;
    while (i < a->n || j < b->n) {
        bool first = j >= b->n || (i < a->n && a->x[i] <= b->x[j]);
        double x = first ? a->x[i++] : b->x[j++];
        if (x > to->x[to->n - 1] && x < high) to->x[to->n++] = x;
    }
    to->x[to->n++] = high;
}

/* The mean of both ways, and the area between them: up less down. */
static bool halve(const gw_press_line *up, const gw_press_line *down, gw_press_line *mean, double *area)
{
    double low = fmax(low_of(up), low_of(down)), high = fmin(high_of(up), high_of(down)), before = 0.0;
    if (!line_alloc(mean, up->n + down->n + 2)) return false;
    merge(up, down, low, high, mean);
    *area = 0.0;
    for (int i = 0; i < mean->n; i++) {
        double u = gw_press_line_at(up, mean->x[i]), d = gw_press_line_at(down, mean->x[i]);
        mean->f[i] = 0.5 * (u + d);
        if (i) *area += 0.5 * (u - d + before) * (mean->x[i] - mean->x[i - 1]);
        before = u - d;
    }
    return true;
}

static void take_loss(gw_press *p, double area)
{
    double half = 0.5 * range_of(&p->mean), force = 0.5 * (p->mean.f[p->mean.n - 1] - p->mean.f[0]);
    p->wrong_way = area < 0.0;
    p->loss = p->wrong_way || !(force > 0.0) ? (double)NAN : area / (GW_PI * half * force);
}

static bool is_loop(const gw_press_line *last, const gw_press_line *before)
{
    double shared = fmin(high_of(last), high_of(before)) - fmax(low_of(last), low_of(before));
    return last->n >= 3 && before->n >= 3 && shared >= SHARED * fmax(range_of(last), range_of(before));
}

/* The longer of those with three different deflections, of equal ones the last; NULL: there is none. */
static gw_press_line *alone(gw_press_line *last, gw_press_line *before)
{
    bool a = last->n >= 3, b = before->n >= 3;
    if (a && b) return range_of(before) > range_of(last) ? before : last;
    return a ? last : b ? before : NULL;
}

static gw_status too_few(bool turns, gw_error *err)
{
    return gw_fail(err, GW_E_RANGE,
                   "no way from one %s to the next has three different readings: read more points",
                   turns ? "end of rotation" : "end of deflection");
}

/* line[0]: the last way as read, [1] the one before it, [2] the last with what it lacks. */
static gw_status take_lines(gw_press_line line[3], bool rises, gw_press *out, bool turns, gw_error *err)
{
    if (line[1].n && is_loop(&line[2], &line[1])) {
        double area;
        out->up = rises ? line[2] : line[1];
        out->down = rises ? line[1] : line[2];
        line[1] = line[2] = (gw_press_line){ 0 };
        if (!halve(&out->up, &out->down, &out->mean, &area))
            return gw_fail(err, GW_E_NOMEM, "out of memory for readings");
        take_loss(out, area);
        return GW_OK;
    }
    gw_press_line *only = alone(&line[0], &line[1]);
    if (!only) return too_few(turns, err);
    out->one_way = true;
    out->loss = NAN;
    out->mean = *only;
    *only = (gw_press_line){ 0 };
    return GW_OK;
}

gw_status gw_press_loop(const double *x, const double *f, int n, bool turns, gw_press *out, gw_error *err)
{
    gw_press_line line[3] = { { 0 } }, third = { 0 };
    if (n < 3) return too_few(turns, err);
    double span = span_of(x, n);
    ways w = find_ways(x, n, BACK * span);
    gw_status st = GW_OK;
    if (w.n == 0) return too_few(turns, err);
    bool ok = line_of_way(x, f, &w.of[0], &line[0]) && line_of_way(x, f, &w.of[0], &line[2]);
    if (ok && w.n > 1) ok = line_of_way(x, f, &w.of[1], &line[1]);
    if (ok && w.n > 2)
        ok = line_of_way(x, f, &w.of[2], &third) && lengthen(&line[2], &line[1], &third, BACK * span);
    st = ok ? take_lines(line, w.of[0].rises, out, turns, err)
            : gw_fail(err, GW_E_NOMEM, "out of memory for readings");
    for (int i = 0; i < 3; i++) line_free(&line[i]);
    line_free(&third);
    return st;
}

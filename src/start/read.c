/* SPDX-License-Identifier: MIT */
/* A filled sheet back into the car. */
#include "casefile/columns.h"
#include "start/distances.h"
#include "start/sheet.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static const gw_range PLACE = GW_FROM(-1e4, 1e4), BAND = GW_ABOVE(0, 1e4), LENGTH = GW_ABOVE(0, 1e4),
                      POINTS = GW_FROM(20, 95);
enum { MOST_ROWS = 10000, MANY_STRANGE = 6 }; /* rows of another table that are told one by one are fewer */
static const char NEW_SHEET[] = "giveway start with --sheet FILE.csv writes a sheet to fill in";
static const double POINT_BAND = 2, HARDNESS_BAND = 5;
static const char NO_POINT[] =
    "no such point in this car: what the sheet was written for stands in its own remark "
    "\"Read back with\", else use the paths of its own sheet";
static const double FAR_POINT = 300, FAR_ANGLE = 5, FAR_FACTOR = 3;
static const double FAR_TOE =
    1; /* of one wheel [deg]: more is mostly mm at the rim, or both wheels' minutes */

typedef struct reader {
    gw_reader rd;
    gw_columns t;
    gw_start_car *car, assumed;
    bool as_read;
    bool figure[64], hardness[GW_START_RUBBERS], point[GW_AXLES][GW_START_POINTS]; /* rows that stood there */
    gw_start_distance distance[GW_START_DISTANCES];
    int n_distances;
} reader;

static bool empty(const reader *r, int row, int head)
{
    return *gw_columns_text(&r->t, row, head) == '\0';
}

static void fault(reader *r, int row, int head, const char *text)
{
    gw_columns_fault(&r->rd, &r->t, row, head, "%s", text);
}

static bool once(reader *r, int row, bool *seen)
{
    if (*seen) fault(r, row, GW_START_OF, "this stands in the sheet twice: keep one row");
    bool first = !*seen;
    *seen = true;
    return first;
}

/* A band beside nothing is a reading in the wrong column, or one that was forgotten. */
static void no_band(reader *r, int row)
{
    if (!empty(r, row, GW_START_WITHIN))
        fault(r, row, GW_START_WITHIN, "a band without its reading: write what was read, or take it out");
}

/* Fields that do not belong to this kind of row must be empty. */
static bool placed(reader *r, int row, unsigned allowed)
{
    bool ok = true;
    for (int h = GW_START_TO; h <= GW_START_VALUE; h++)
        if (!(allowed >> h & 1u) && !empty(r, row, h)) {
            fault(r, row, h, "nothing belongs here in a row of this kind: take it out or move it");
            ok = false;
        }
    return ok;
}

static bool unit_is(reader *r, int row, const char *unit)
{
    if (empty(r, row, GW_START_UNIT) || strcmp(gw_columns_text(&r->t, row, GW_START_UNIT), unit) == 0)
        return true;
    gw_columns_fault(&r->rd, &r->t, row, GW_START_UNIT,
                     "expected %s, found \"%.40s\": the reading must be in that unit",
                     *unit ? unit : "no unit", gw_columns_text(&r->t, row, GW_START_UNIT));
    return false;
}

static bool read_within(reader *r, int row, double left_out, double *within)
{
    *within = left_out;
    return empty(r, row, GW_START_WITHIN) ||
           gw_columns_number(&r->rd, &r->t, row, GW_START_WITHIN, BAND, within);
}

static void slip(reader *r, int row, int head, double read, double assumed)
{
    gw_columns_fault(&r->rd, &r->t, row, head,
                     "%.6g is far from the %.6g assumed: a slip of the pen? --as-read takes it as it is",
                     read, assumed);
}

static bool is_far(const gw_start_key *k, double v, double assumed)
{
    if (k->kind != 'a') return v > FAR_FACTOR * assumed || v < assumed / FAR_FACTOR;
    return fabs(v - assumed) > (strstr(k->of, "toe") ? FAR_TOE : FAR_ANGLE);
}

/* A share written as percent. */
static bool percent_is(reader *r, int row, const gw_start_key *k)
{
    const char *text = gw_columns_text(&r->t, row, GW_START_VALUE);
    char *end;
    const double v = strtod(text, &end);
    if (*k->unit || !(v > 1 && v < 100) || (*end && strcmp(end, "%") != 0)) return false;
    gw_columns_fault(&r->rd, &r->t, row, GW_START_VALUE, "expected a share of 1, found \"%.40s\": write %.6g",
                     text, v / 100);
    return true;
}

static void read_figure(reader *r, int row)
{
    const char *of = gw_columns_text(&r->t, row, GW_START_OF);
    int i = 0;
    double v, within;
    while (i < GW_START_N_KEYS && strcmp(GW_START_KEYS[i].of, of) != 0) i++;
    if (i == GW_START_N_KEYS) {
        fault(r, row, GW_START_OF, "no such figure in this car: use the paths of its own sheet");
        return;
    }
    const gw_start_key *k = &GW_START_KEYS[i];
    if (!once(r, row, &r->figure[i]) || !placed(r, row, 1u << GW_START_VALUE) || !unit_is(r, row, k->unit))
        return;
    if (empty(r, row, GW_START_VALUE)) {
        no_band(r, row);
        return;
    }
    const gw_range range = { k->low, k->high, true, true };
    if (percent_is(r, row, k) || !gw_columns_number(&r->rd, &r->t, row, GW_START_VALUE, range, &v)) return;
    double assumed = gw_start_figure_of(&r->assumed, k)->v;
    if (is_far(k, v, assumed) && !r->as_read) {
        slip(r, row, GW_START_VALUE, v, assumed);
        return;
    }
    if (!read_within(r, row, k->within, &within)) return;
    if (k->kind == 'r' && !empty(r, row, GW_START_WITHIN)) within *= 100 / v;
    gw_start_figure *f = (gw_start_figure *)(void *)((char *)r->car + k->offset);
    *f = (gw_start_figure){ v, within, true };
}

/* "corners.front.points_mm.NAME", "axles.rear.points_mm.NAME" */
static bool find_point(reader *r, int row, int head, int *axle, int *point)
{
    const char *of = gw_columns_text(&r->t, row, head);
    for (int a = 0; a < GW_AXLES; a++)
        for (int p = 0; p < r->car->corner[a].parts.n_points; p++) {
            char path[100];
            gw_start_point_path(&r->car->corner[a], a, p, path, sizeof path);
            if (strcmp(path, of) != 0) continue;
            *axle = a;
            *point = p;
            return true;
        }
    fault(r, row, head, NO_POINT);
    return false;
}

/* A tie rod at the other end of the wheel is no slip, the rack is there. */
static void far_point(reader *r, int row, int a, int p, int i, double v)
{
    const gw_start_corner *c = &r->assumed.corner[a];
    const double assumed = c->place[p][i].v;
    const bool rack = c->rack != GW_START_NONE && c->layout->n_behinds > 0;
    const bool tie =
        strncmp(c->parts.point[p].name, "tie_", 4) == 0 || strncmp(c->parts.point[p].name, "rack_", 5) == 0;
    if (i == 0 && rack && tie && v * assumed < 0)
        gw_columns_fault(&r->rd, &r->t, row, GW_START_X,
                         "%.6g is %s the wheel centre, where no rack was assumed: say --rack %s", v,
                         v < 0 ? "behind" : "ahead of", v < 0 ? "behind" : "ahead");
    else
        slip(r, row, GW_START_X + i, v, assumed);
}

static void read_point(reader *r, int row)
{
    int a, p;
    double v, within;
    if (!find_point(r, row, GW_START_OF, &a, &p) || !once(r, row, &r->point[a][p])) return;
    if (!placed(r, row, 1u << GW_START_X | 1u << GW_START_Y | 1u << GW_START_Z) || !unit_is(r, row, "mm"))
        return;
    if (empty(r, row, GW_START_X) && empty(r, row, GW_START_Y) && empty(r, row, GW_START_Z)) no_band(r, row);
    if (!read_within(r, row, POINT_BAND, &within)) return;
    for (int i = 0; i < 3; i++) {
        double assumed = r->assumed.corner[a].place[p][i].v;
        if (empty(r, row, GW_START_X + i) ||
            !gw_columns_number(&r->rd, &r->t, row, GW_START_X + i, PLACE, &v))
            continue;
        bool middle = i == 1 && r->car->corner[a].parts.point[p].side == GW_START_MIDDLE;
        if (middle && v != 0.0)
            fault(r, row, GW_START_Y, "this point lies in the middle of the car: leave y_mm empty, or 0");
        else if (fabs(v - assumed) > FAR_POINT && !r->as_read)
            far_point(r, row, a, p, i, v);
        else if (!middle)
            r->car->corner[a].place[p][i] = (gw_start_figure){ v, within, true };
    }
}

static void read_hardness(reader *r, int row)
{
    const char *of = gw_columns_text(&r->t, row, GW_START_OF);
    char path[80];
    double v, within;
    for (int b = 0; b < GW_START_RUBBERS; b++) {
        snprintf(path, sizeof path, "bushes.%s.material", GW_START_BUSH[b].name);
        if (!gw_start_uses(r->car, b) || strcmp(path, of) != 0) continue;
        if (!once(r, row, &r->hardness[b]) || !placed(r, row, 1u << GW_START_VALUE) ||
            !unit_is(r, row, "points"))
            return;
        if (empty(r, row, GW_START_VALUE)) {
            no_band(r, row);
            return;
        }
        if (!gw_columns_number(&r->rd, &r->t, row, GW_START_VALUE, POINTS, &v)) return;
        if (read_within(r, row, HARDNESS_BAND, &within))
            r->car->hardness[b] = (gw_start_figure){ v, within, true };
        return;
    }
    fault(r, row, GW_START_OF, "no rubber bush of this name in this car: use the paths of its own sheet");
}

static double assumed_length(const reader *r, const gw_start_distance *d)
{
    double sum = 0;
    for (int i = 0; i < 3; i++)
        sum += pow(r->assumed.corner[d->axle[0]].place[d->point[0]][i].v -
                       r->assumed.corner[d->axle[1]].place[d->point[1]][i].v,
                   2);
    return sqrt(sum);
}

static bool same_pair(const gw_start_distance *a, const gw_start_distance *b)
{
    for (int turn = 0; turn < 2; turn++)
        if (a->axle[0] == b->axle[turn] && a->point[0] == b->point[turn] && a->axle[1] == b->axle[1 - turn] &&
            a->point[1] == b->point[1 - turn])
            return true;
    return false;
}

static void read_distance(reader *r, int row)
{
    gw_start_distance d = { .line = r->t.line[row] };
    if (!find_point(r, row, GW_START_OF, &d.axle[0], &d.point[0]) ||
        !find_point(r, row, GW_START_TO, &d.axle[1], &d.point[1]))
        return;
    if (!placed(r, row, 1u << GW_START_TO | 1u << GW_START_VALUE) || !unit_is(r, row, "mm")) return;
    if (d.axle[0] != d.axle[1] || d.point[0] == d.point[1]) {
        fault(r, row, GW_START_TO, "expected another point of the same corner");
        return;
    }
    if (empty(r, row, GW_START_VALUE)) {
        no_band(r, row);
        return;
    }
    if (!gw_columns_number(&r->rd, &r->t, row, GW_START_VALUE, LENGTH, &d.v)) return;
    double assumed = assumed_length(r, &d);
    if ((d.v > FAR_FACTOR * assumed || d.v < assumed / FAR_FACTOR) && !r->as_read) {
        slip(r, row, GW_START_VALUE, d.v, assumed);
        return;
    }
    if (!read_within(r, row, POINT_BAND, &d.within)) return;
    for (int i = 0; i < r->n_distances; i++)
        if (same_pair(&r->distance[i], &d)) {
            fault(r, row, GW_START_OF, "this distance stands in the sheet twice: keep one row");
            return;
        }
    if (r->n_distances == GW_START_DISTANCES)
        fault(r, row, GW_START_WHAT, "more distances than 200: leave some out");
    else
        r->distance[r->n_distances++] = d;
}

/* What a row may be, and who reads it. */
static const struct {
    const char *what;
    void (*read)(reader *, int);
} KINDS[] = { { "figure", read_figure },
              { "point", read_point },
              { "hardness", read_hardness },
              { "distance", read_distance } };

/* -1: no row of a sheet. */
static int kind_of(const reader *r, int row)
{
    const char *what = gw_columns_text(&r->t, row, GW_START_WHAT);
    int kind = GW_START_COUNT(KINDS) - 1;
    while (kind >= 0 && strcmp(what, KINDS[kind].what) != 0) kind--;
    return kind;
}

static void read_row(reader *r, int row)
{
    const int kind = kind_of(r, row);
    if (kind >= 0)
        KINDS[kind].read(r, row);
    else
        fault(r, row, GW_START_WHAT, "expected figure, point, hardness or distance");
}

/* One line where it is plainly no sheet; false where it may be one. */
static bool is_no_sheet(const reader *r)
{
    int strange = 0, first = -1;
    for (int row = 0; row < r->t.n_rows; row++)
        if (kind_of(r, row) < 0 && strange++ == 0) first = row;
    if (r->t.n_rows > MOST_ROWS)
        gw_fault(&r->rd, NULL, "%d rows are more than the %d that a sheet may have: is it another table? %s",
                 r->t.n_rows, MOST_ROWS, NEW_SHEET);
    else if (strange >= MANY_STRANGE)
        gw_fault(
            &r->rd, NULL,
            "line %d, what: expected figure, point, hardness or distance, as in %d of %d rows: is it another "
            "table? %s",
            r->t.line[first], strange, r->t.n_rows, NEW_SHEET);
    return r->t.n_rows > MOST_ROWS || strange >= MANY_STRANGE;
}

/* A decimal comma becomes a point: what is written again has commas between its fields. */
static char *kept_text(const reader *r, int row, int head, gw_arena *arena)
{
    char *text = gw_arena_strdup(arena, gw_columns_text(&r->t, row, head));
    for (char *at = text; at && head >= GW_START_X && head != GW_START_UNIT && *at; at++)
        if (*at == ',') *at = '.';
    return text;
}

static bool keep_rows(const reader *r, gw_start_filled *out)
{
    out->cell = gw_arena_alloc(&out->arena, (size_t)r->t.n_rows + 1, sizeof *out->cell);
    out->written = gw_arena_alloc(&out->arena, (size_t)r->t.n_rows + 1, sizeof *out->written);
    if (!out->cell || !out->written) return false;
    for (int row = 0; row < r->t.n_rows; row++, out->n++)
        for (int h = 0; h < GW_START_HEADS; h++)
            if (!(out->cell[row][h] = kept_text(r, row, h, &out->arena))) return false;
    return true;
}

gw_status gw_start_read(const char *path, bool as_read, gw_start_car *car, gw_start_filled *rows,
                        gw_faults *faults)
{
    gw_start_car filled = *car;
    static reader zero;
    reader r = zero;
    const int before = gw_faults_count(faults);
    r.rd = (gw_reader){ path, faults, NULL, false };
    r.car = &filled;
    r.assumed = *car;
    r.as_read = as_read;
    gw_status st = gw_columns_read(&r.rd, path, GW_START_HEAD, GW_START_HEADS, &r.t);
    if (st != GW_OK) return st;
    if (!gw_columns_has(&r.t, GW_START_WHAT) || !gw_columns_has(&r.t, GW_START_OF))
        gw_fault(&r.rd, NULL, "line %d: the heads what and of are needed", r.t.heads_line);
    for (int row = is_no_sheet(&r) ? r.t.n_rows : 0;
         row < r.t.n_rows && gw_faults_count(faults) < before + 20; row++)
        read_row(&r, row);
    if (gw_faults_count(faults) == before && r.n_distances > 0)
        st = gw_start_place_points(&filled, r.distance, r.n_distances, path, faults);
    if (rows && gw_faults_count(faults) == before && !keep_rows(&r, rows)) faults->out_of_memory = true;
    gw_columns_free(&r.t);
    if (gw_faults_count(faults) != before) return faults->out_of_memory ? GW_E_NOMEM : GW_E_PARSE;
    if (st == GW_OK) *car = filled;
    return st;
}

/* SPDX-License-Identifier: MIT */
/* The sheet to take to the ramp: every figure, place, hardness and length of a first case. */
#include "start/sheet.h"
#include "format/csv.h"
#include "format/number.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

const char *const GW_START_HEAD[GW_START_HEADS] = { "what", "of",    "to",   "x_mm",  "y_mm",
                                                    "z_mm", "value", "unit", "within" };

enum { COLUMNS = GW_START_HEADS + 2 };

typedef struct sheet {
    gw_csv csv;
    gw_start_filled *filled;
} sheet;

static void put(gw_csv *csv, const char *const cell[COLUMNS])
{
    for (int i = 0; i < COLUMNS; i++) gw_csv_string(csv, cell[i]);
    gw_csv_end_row(csv);
}

static void put_heads(gw_csv *csv)
{
    const char *cell[COLUMNS] = { [GW_START_HEADS] = "assumed", "how" };
    for (int i = 0; i < GW_START_HEADS; i++) cell[i] = GW_START_HEAD[i];
    put(csv, cell);
}

static bool alike(const char *a, const char *b)
{
    return strcmp(a, b ? b : "") == 0;
}

/* A distance is the same from either end. */
static bool is_row(const char *const filled[GW_START_HEADS], const char *const cell[COLUMNS])
{
    const char *of = filled[GW_START_OF], *to = filled[GW_START_TO];
    return alike(filled[GW_START_WHAT], cell[GW_START_WHAT]) &&
           ((alike(of, cell[GW_START_OF]) && alike(to, cell[GW_START_TO])) ||
            (*to && alike(to, cell[GW_START_OF]) && alike(of, cell[GW_START_TO])));
}

static const char *unless_empty(const char *text)
{
    return *text ? text : NULL;
}

static bool is_reading(int column)
{
    return (column >= GW_START_X && column <= GW_START_VALUE) || column == GW_START_WITHIN;
}

/* With what was read for it already. */
static void row(sheet *s, const char *const cell[COLUMNS])
{
    const char *full[COLUMNS];
    for (int i = 0; i < COLUMNS; i++) full[i] = cell[i];
    for (int r = 0; r < s->filled->n; r++) {
        if (!is_row(s->filled->cell[r], cell)) continue;
        s->filled->written[r] = true;
        for (int i = 0; i < GW_START_HEADS; i++)
            if (is_reading(i) && *s->filled->cell[r][i]) full[i] = s->filled->cell[r][i];
    }
    put(&s->csv, full);
}

/* Distances that were added by hand. */
static void added(sheet *s)
{
    for (int r = 0; r < s->filled->n; r++) {
        const char *cell[COLUMNS] = { NULL };
        for (int i = 0; i < GW_START_HEADS; i++) cell[i] = unless_empty(s->filled->cell[r][i]);
        if (!s->filled->written[r]) put(&s->csv, cell);
    }
}

static void figure(sheet *s, const gw_start_car *car, const gw_start_key *k)
{
    gw_number assumed = gw_exact(gw_start_figure_of(car, k)->v);
    row(s, (const char *const[COLUMNS]){ "figure", k->of, NULL, NULL, NULL, NULL, NULL, k->unit, NULL,
                                         assumed.s, k->how });
}

static void point(sheet *s, const gw_start_corner *c, int a, int p)
{
    char of[100], assumed[160], how[200];
    gw_number x = gw_exact(c->place[p][0].v), y = gw_exact(c->place[p][1].v), z = gw_exact(c->place[p][2].v);
    gw_start_point_path(c, a, p, of, sizeof of);
    snprintf(assumed, sizeof assumed, "%s %s %s", x.s, y.s, z.s);
    snprintf(how, sizeof how,
             "%s: x forward of the wheel centre, y from the middle of the car, z above the floor",
             c->parts.point[p].how);
    row(s,
        (const char *const[COLUMNS]){ "point", of, NULL, NULL, NULL, NULL, NULL, "mm", NULL, assumed, how });
}

static void hardness(sheet *s, const gw_start_car *car, int b)
{
    char of[100];
    gw_number assumed = gw_exact(car->hardness[b].v);
    snprintf(of, sizeof of, "bushes.%s.material", GW_START_BUSH[b].name);
    row(s,
        (const char *const[COLUMNS]){ "hardness", of, NULL, NULL, NULL, NULL, NULL, "points", NULL, assumed.s,
                                      "gauge A on the rubber's end face, away from the sleeves" });
}

/* A member of two joints has a length. */
static void length(sheet *s, const gw_start_corner *c, int a, const char *member)
{
    int end[3], n = 0;
    char of[100], to[100];
    for (int j = 0; j < c->parts.n_joints && n < 3; j++)
        if (alike(c->parts.joint[j].body_a, member) || alike(c->parts.joint[j].body_b, member))
            end[n++] = gw_start_point_named(&c->parts, c->parts.joint[j].name);
    if (n != 2 || strncmp(member, "rack", 4) == 0) return; /* a rack slides */
    double d = 0;
    for (int i = 0; i < 3; i++) d += pow(c->place[end[1]][i].v - c->place[end[0]][i].v, 2);
    gw_number assumed = gw_fixed(sqrt(d), 1);
    gw_start_point_path(c, a, end[0], of, sizeof of);
    gw_start_point_path(c, a, end[1], to, sizeof to);
    row(s, (const char *const[COLUMNS]){ "distance", of, to, NULL, NULL, NULL, NULL, "mm", NULL, assumed.s,
                                         "from middle to middle of its two joints" });
}

static void axle(sheet *s, const gw_start_car *car, int a, bool told[GW_START_RUBBERS])
{
    const gw_start_corner *c = &car->corner[a];
    char stem[20];
    snprintf(stem, sizeof stem, "corners.%s.", GW_AXLE_NAMES[a]);
    for (int i = 0; i < GW_START_N_KEYS; i++)
        if (strncmp(GW_START_KEYS[i].of, stem, strlen(stem)) == 0) figure(s, car, &GW_START_KEYS[i]);
    for (int p = 0; p < c->parts.n_points; p++) point(s, c, a, p);
    for (int m = 0; m < c->parts.n_members; m++) length(s, c, a, c->parts.member[m].name);
    for (int j = 0; j < c->parts.n_joints; j++) {
        int b = (int)c->parts.joint[j].bush;
        if (b >= GW_START_RUBBERS || told[b]) continue;
        told[b] = true;
        hardness(s, car, b);
    }
}

/* Which points there are hangs on the options that are not as usual: without them the sheet is refused. */
static void read_back(const gw_start_car *car, gw_buf *out)
{
    const gw_start_corner *f = &car->corner[GW_FRONT], *r = &car->corner[GW_REAR];
    gw_buf_fmt(out, "# Read back with: giveway start --front %s --rear %s", f->layout->name, r->layout->name);
    if (f->rack != GW_START_AHEAD)
        gw_buf_fmt(out, " --rack %s", f->rack == GW_START_BEHIND ? "behind" : "none");
    if (f->subframe != f->layout->framed || r->subframe != r->layout->framed)
        gw_buf_fmt(out, " --subframe %s",
                   f->subframe   ? r->subframe ? "both" : "front"
                   : r->subframe ? "rear"
                                 : "none");
    for (int a = 0; a < GW_AXLES; a++) {
        const gw_start_corner *c = &car->corner[a];
        const bool usual = c->layout->bar && !c->layout->barless;
        if ((c->bar > 0) != usual)
            gw_buf_fmt(out, " --%s-bar-mm %s", gw_axle_name((gw_axle)a), gw_exact(c->bar).s);
    }
    gw_buf_add(out, " --from THIS-FILE, and what else was given.\n");
}

void gw_start_sheet(const gw_start_car *car, gw_start_filled *filled, gw_buf *out)
{
    sheet s = { { .out = out }, filled };
    bool told[GW_START_RUBBERS] = { false };
    gw_buf_add(
        out,
        "# What to measure. Fill in value, or x_mm, y_mm and z_mm, any of them; what stays empty stays as "
        "assumed.\n"
        "# within: plus or minus so much holds 95 of 100 readings. Left wheel; the car level, on its wheels, "
        "driver aboard.\n"
        "# Under a car on a lift: never without stands, never with the springs loaded and a joint open.\n");
    read_back(car, out);
    put_heads(&s.csv);
    gw_buf_add(out, "# car\n");
    for (int i = 0; i < GW_START_N_KEYS; i++)
        if (strncmp(GW_START_KEYS[i].of, "vehicle.", 8) == 0) figure(&s, car, &GW_START_KEYS[i]);
    for (int a = 0; a < GW_AXLES; a++) {
        gw_buf_fmt(out, "# %s\n", GW_AXLE_NAMES[a]);
        axle(&s, car, a, told);
    }
    added(&s);
}

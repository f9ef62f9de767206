/* SPDX-License-Identifier: MIT */
/* The sheet to take to the ramp: every figure, place, hardness and length of a first case. */
#include "format/csv.h"
#include "format/number.h"
#include "show/start.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

static const char *const AXLE[] = { "front", "rear" };

static void row(gw_csv *csv, const char *const cell[11])
{
    for (int i = 0; i < 11; i++) gw_csv_string(csv, cell[i]);
    gw_csv_end_row(csv);
}

static void figure(gw_csv *csv, const gw_start_car *car, const gw_start_key *k)
{
    gw_number assumed = gw_exact(gw_start_figure_of(car, k)->v);
    row(csv, (const char *const[11]){ "figure", k->of, NULL, NULL, NULL, NULL, NULL, k->unit, NULL, assumed.s,
                                      k->how });
}

static void point(gw_csv *csv, const gw_start_corner *c, int a, int p)
{
    char of[100], assumed[160], how[200];
    gw_number x = gw_exact(c->place[p][0].v), y = gw_exact(c->place[p][1].v), z = gw_exact(c->place[p][2].v);
    gw_start_point_path(c, a, p, of, sizeof of);
    snprintf(assumed, sizeof assumed, "%s %s %s", x.s, y.s, z.s);
    snprintf(how, sizeof how,
             "%s: x forward of the wheel centre, y from the middle of the car, z above the floor",
             c->parts.point[p].how);
    row(csv, (const char *const[11]){ "point", of, NULL, NULL, NULL, NULL, NULL, "mm", NULL, assumed, how });
}

static void hardness(gw_csv *csv, const gw_start_car *car, int b)
{
    char of[100];
    gw_number assumed = gw_exact(car->hardness[b].v);
    snprintf(of, sizeof of, "bushes.%s.material", gw_start_bush_name(b));
    row(csv, (const char *const[11]){ "hardness", of, NULL, NULL, NULL, NULL, NULL, "points", NULL, assumed.s,
                                      "gauge A on the rubber's end face, away from the sleeves" });
}

/* A member of two joints has a length. */
static void length(gw_csv *csv, const gw_start_corner *c, int a, const char *member)
{
    int end[3], n = 0;
    char of[100], to[100];
    for (int j = 0; j < c->parts.n_joints && n < 3; j++)
        if (strcmp(c->parts.joint[j].body_a, member) == 0 || strcmp(c->parts.joint[j].body_b, member) == 0)
            end[n++] = gw_start_point_named(&c->parts, c->parts.joint[j].name);
    if (n != 2 || strncmp(member, "rack", 4) == 0) return; /* a rack slides */
    double d = 0;
    for (int i = 0; i < 3; i++) d += pow(c->place[end[1]][i].v - c->place[end[0]][i].v, 2);
    gw_number assumed = gw_fixed(sqrt(d), 1);
    gw_start_point_path(c, a, end[0], of, sizeof of);
    gw_start_point_path(c, a, end[1], to, sizeof to);
    row(csv, (const char *const[11]){ "distance", of, to, NULL, NULL, NULL, NULL, "mm", NULL, assumed.s,
                                      "from middle to middle of its two joints" });
}

static void axle(gw_csv *csv, const gw_start_car *car, int a, bool told[GW_START_RUBBERS])
{
    const gw_start_corner *c = &car->corner[a];
    char stem[20];
    snprintf(stem, sizeof stem, "corners.%s.", AXLE[a]);
    for (int i = 0; i < GW_START_N_KEYS; i++)
        if (strncmp(GW_START_KEYS[i].of, stem, strlen(stem)) == 0) figure(csv, car, &GW_START_KEYS[i]);
    for (int p = 0; p < c->parts.n_points; p++) point(csv, c, a, p);
    for (int m = 0; m < c->parts.n_members; m++) length(csv, c, a, c->parts.member[m].name);
    for (int j = 0; j < c->parts.n_joints; j++) {
        int b = (int)c->parts.joint[j].bush;
        if (b >= GW_START_RUBBERS || told[b]) continue;
        told[b] = true;
        hardness(csv, car, b);
    }
}

static void read_back(const gw_start_car *car, gw_buf *out)
{
    gw_buf_fmt(
        out,
        "# Read back with: giveway start --front %s --rear %s --from THIS-FILE, and what else was given.\n",
        car->corner[GW_FRONT].layout->name, car->corner[GW_REAR].layout->name);
}

void gw_start_sheet(const gw_start_car *car, gw_buf *out)
{
    gw_csv csv = { .out = out };
    bool told[GW_START_RUBBERS] = { false };
    gw_buf_add(
        out,
        "# What to measure. Fill in value, or x_mm, y_mm and z_mm, any of them; what stays empty stays as "
        "assumed.\n"
        "# within: plus or minus so much holds 95 of 100 readings. Left wheel; the car level, on its wheels, "
        "driver aboard.\n"
        "# Under a car on a lift: never without stands, never with the springs loaded and a joint open.\n");
    read_back(car, out);
    row(&csv, (const char *const[11]){ "what", "of", "to", "x_mm", "y_mm", "z_mm", "value", "unit", "within",
                                       "assumed", "how" });
    gw_buf_add(out, "# car\n");
    for (int i = 0; i < GW_START_N_KEYS; i++)
        if (strncmp(GW_START_KEYS[i].of, "vehicle.", 8) == 0) figure(&csv, car, &GW_START_KEYS[i]);
    for (int a = 0; a < GW_AXLES; a++) {
        gw_buf_fmt(out, "# %s\n", AXLE[a]);
        axle(&csv, car, a, told);
    }
}

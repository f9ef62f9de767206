/* SPDX-License-Identifier: MIT */
/* Attachments, brackets and bands: a column a kit. */

#include "format/number.h"
#include "format/table.h"
#include "giveway/units.h"
#include "show/ride_parts.h"

#include <math.h>
#include <stdlib.h>

static void kit_heads(const gw_ride_page *p, gw_table *t, const gw_ride_item *const *items, int n,
                      const char *unit)
{
    for (int i = 0; i < n && t->columns < GW_TABLE_COLUMNS; i++) {
        gw_buf head = { 0 };
        gw_buf_clean(&head, p->c->kits[items[i]->kit].name);
        gw_buf_fmt(&head, "\n%s", unit);
        gw_table_column_of(t, GW_RIGHT, &head);
    }
}

static void finish(const gw_ride_page *p, gw_table *t)
{
    gw_paper_gap(p->paper);
    gw_paper_table(p->paper, t, 2);
}

/* Kits beyond the widest table there is are left to JSON and CSV. */
static int columns_for(int n, int others)
{
    return n + others > GW_TABLE_COLUMNS ? GW_TABLE_COLUMNS - others : n;
}

static void place_row(gw_table *t, const gw_corner *corner, gw_ride_place place,
                      const gw_ride_item *const *items, int n)
{
    gw_buf name = { 0 };
    gw_ride_place_name(corner, &items[0]->result, place, &name);
    gw_table_cell_of(t, &name);
    for (int i = 0; i < n; i++)
        gw_table_cell(t, gw_fixed(100.0 * gw_ride_place_share(&items[i]->result, place), 1).s);
}

void gw_ride_paths_table(const gw_ride_page *p, const gw_ride_item *const *items, int n)
{
    const gw_corner *corner = &p->c->corners[items[0]->axle];
    const gw_ride_result *r = &items[0]->result;
    gw_ride_place *place = calloc((size_t)r->n_paths + 1, sizeof *place);
    gw_table t = { .failed = !place };
    n = columns_for(n, 1);
    gw_table_column(&t, GW_LEFT,
                    gw_is_pair(corner) ? "share of harshness,\nboth sides together" : "share of harshness");
    kit_heads(p, &t, items, n, "%");
    int places = place ? gw_ride_places(corner, r, place) : 0;
    for (int i = 0; i < places; i++) place_row(&t, corner, place[i], items, n);
    free(place);
    finish(p, &t);
}

static const gw_isolation *isolation_of(const gw_ride_item *item, int joint)
{
    for (int i = 0; i < item->result.n_isolation; i++)
        if (item->result.isolation[i].joint == joint) return &item->result.isolation[i];
    return NULL;
}

/* But for rounding. */
static bool alike(double a, double b)
{
    return fabs(a - b) <= 1e-6 * fmax(fabs(a), fabs(b));
}

/* Its mirror image has the same bracket behind the same bush in every kit. */
static bool same_on_both(const gw_joint *joint, const gw_ride_item *const *items, int n, int at)
{
    for (int i = 0; i < n; i++) {
        const gw_isolation *one = isolation_of(items[i], at), *other = isolation_of(items[i], joint->twin);
        if (!one != !other ||
            (one && !(alike(one->ratio, other->ratio) && alike(one->bracket, other->bracket))))
            return false;
    }
    return joint->twin != at;
}

static void isolation_row(gw_table *t, const gw_joint *joint, const gw_ride_item *const *items, int n, int at)
{
    const gw_isolation *any = NULL;
    bool both = same_on_both(joint, items, n, at);
    for (int i = 0; i < n && !any; i++) any = isolation_of(items[i], at);
    if (!any || (both && joint->twin < at)) return;
    gw_table_cells(t, both ? joint->plain : joint->name, gw_significant(any->bracket / GW_N_PER_MM, 4).s);
    for (int i = 0; i < n; i++) {
        const gw_isolation *one = isolation_of(items[i], at);
        if (one)
            gw_table_cellf(t, "%s%s", gw_significant(one->ratio, 2).s, one->weak ? " weak" : "");
        else
            gw_table_cell(t, GW_NO_NUMBER);
    }
}

void gw_ride_isolation_table(const gw_ride_page *p, const gw_ride_item *const *items, int n)
{
    const gw_corner *corner = &p->c->corners[items[0]->axle];
    gw_table t = { 0 };
    n = columns_for(n, 2);
    gw_table_heads(&t, "lr", "bracket over bush in motion", "bracket\nN/mm");
    kit_heads(p, &t, items, n, "times");
    for (int j = 0; j < corner->n_joints; j++) isolation_row(&t, &corner->joints[j], items, n, j);
    if (!t.n_cells && !t.failed) {
        gw_table_free(&t);
        return;
    }
    finish(p, &t);
    gw_paper_say(
        p->paper, 2,
        "The bush in its stiffest direction at 63 Hz. Below five times (weak) the body counts as much as the "
        "bush there; five or more is common practice.");
}

void gw_ride_bands_table(const gw_ride_page *p, const gw_ride_item *const *items, int n)
{
    gw_table t = { 0 };
    n = columns_for(n, 2);
    gw_table_heads(&t, "lr", "third-octave band\nHz", "body force\nN");
    kit_heads(p, &t, items, n, "dB");
    for (int b = 0; b < GW_BANDS; b++) {
        gw_table_cells(&t, gw_exact(gw_band_nominal(GW_BAND_FIRST + b)).s,
                       gw_significant(items[0]->result.band[b], 3).s);
        for (int i = 0; i < n; i++) gw_table_cell(&t, gw_signed(items[i]->difference.band[b], 1).s);
    }
    finish(p, &t);
    gw_paper_say(p->paper, 2, "Body force: with kit %s; decibels are over the first kit.",
                 p->c->kits[items[0]->kit].name);
}

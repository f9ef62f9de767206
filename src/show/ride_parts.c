/* SPDX-License-Identifier: MIT */
#include "show/ride_parts.h"

#include "show/phrase.h"
#include "show/ride.h"

#include <math.h>
#include <string.h>

void gw_ride_place_name(const gw_corner *corner, const gw_ride_result *r, gw_ride_place place, gw_buf *out)
{
    const gw_ride_path *p = &r->paths[place.path];
    const char *alone = p->kind == GW_PATH_SPRING ? "spring" : "damper";
    if (place.image < 0)
        gw_buf_clean(out, p->name);
    else
        gw_buf_clean(out, p->joint < 0 ? alone : corner->joints[p->joint].plain);
}

void gw_ride_place_said(const gw_corner *corner, const gw_ride_result *r, gw_ride_place place, gw_buf *out)
{
    int joint = r->paths[place.path].joint;
    if (joint >= 0 && corner->joints[joint].label) {
        gw_buf_add(out, corner->joints[joint].label);
        return;
    }
    gw_ride_place_name(corner, r, place, out);
    if (joint < 0 && place.image >= 0) gw_buf_add(out, "s");
}

static void say_band(const gw_reaction *reaction, gw_buf *out)
{
    gw_buf_fmt(out, "%s (", reaction->text);
    if (reaction->high < 0.0)
        gw_buf_fmt(out, "above %s)", gw_exact(reaction->low).s);
    else if (reaction->low > 0.0)
        gw_buf_fmt(out, "%s to %s)", gw_exact(reaction->low).s, gw_exact(reaction->high).s);
    else
        gw_buf_fmt(out, "below %s)", gw_exact(reaction->high).s);
}

static void say_comfort(double low, double high, gw_buf *out)
{
    int first[GW_REACTIONS], last[GW_REACTIONS];
    int n_first = gw_reactions_at(low, first), n_last = gw_reactions_at(high, last);
    int from = n_first ? first[0] : 0, to = n_last ? last[n_last - 1] : from;
    gw_buf_fmt(
        out,
        "Comfort is the frequency-weighted acceleration of the body. ISO 2631-1:1997, Annex C, says of %s",
        gw_fixed(low, 2).s);
    if (high > low) gw_buf_fmt(out, " to %s", gw_fixed(high, 2).s);
    gw_buf_add(out, " m/s2: ");
    for (int i = from; i <= to; i++) {
        if (i > from) gw_buf_add(out, "; ");
        say_band(gw_reaction_get(i), out);
    }
    gw_buf_add(out, ". The bands are the standard's, and overlap.");
}

void gw_ride_say_comfort(const gw_ride_study *study, gw_axle axle, gw_paper *paper)
{
    double low = HUGE_VAL, high = 0.0;
    gw_buf text = { 0 };
    for (int i = 0; i < study->n; i++) {
        if (study->item[i].axle != axle) continue;
        low = fmin(low, study->item[i].result.comfort);
        high = fmax(high, study->item[i].result.comfort);
    }
    say_comfort(low, high, &text);
    gw_paper_say_of(paper, 2, &text);
}

void gw_ride_range_cell(gw_table *table, const gw_ride_item *item, double low, double high)
{
    if (item->kit == 0)
        gw_table_cell(table, "baseline");
    else
        gw_table_cellf(table, "%s to %s", gw_signed(low, 1).s, gw_signed(high, 1).s);
}

/* Warnings are alike where they say the same up to their details, figures apart: "8 of 8 brackets are less
 * ..." */
static bool says_alike(const char *a, const char *b)
{
    static const char FIGURES[] = "0123456789.", DETAILS[] = ",:(";
    for (;; a++, b++) {
        a += strspn(a, FIGURES);
        b += strspn(b, FIGURES);
        bool ends = !*a || strchr(DETAILS, *a);
        if (ends || *a != *b) return ends && (!*b || strchr(DETAILS, *b));
    }
}

static bool has_alike(const gw_ride_item *item, gw_axle axle, const char *text)
{
    for (int w = 0; item->axle == axle && w < item->result.n_warnings; w++)
        if (says_alike(item->result.warnings[w], text)) return true;
    return false;
}

/* "front corner, kit rubber: ... (likewise poly, bearing)" */
static const char *own_warning(const gw_case *c, const gw_ride_study *study, int at, const char *text,
                               gw_arena *arena, bool *failed)
{
    const gw_ride_item *item = &study->item[at];
    gw_buf line = { 0 };
    int more = 0;
    gw_buf_say(&line, "%s corner, kit %s: %s", gw_axle_name(item->axle), c->kits[item->kit].name, text);
    for (int i = at + 1; i < study->n; i++)
        if (has_alike(&study->item[i], item->axle, text))
            gw_buf_say(&line, "%s%s", more++ ? ", " : " (likewise ", c->kits[study->item[i].kit].name);
    if (more) gw_buf_add(&line, ")");
    return gw_buf_kept(&line, arena, failed);
}

static bool is_told(const gw_ride_study *study, int at, const char *text)
{
    for (int i = 0; i < at; i++)
        if (has_alike(&study->item[i], study->item[at].axle, text)) return true;
    return false;
}

gw_status gw_ride_gather_warnings(const gw_case *c, gw_ride_made *made, gw_error *err)
{
    const gw_ride_study *study = &made->study;
    size_t room = (size_t)study->n_warnings + 1;
    bool failed = false;
    for (int i = 0; i < study->n; i++) room += (size_t)study->item[i].result.n_warnings;
    made->warning = gw_arena_alloc(&made->arena, room, sizeof *made->warning);
    if (!made->warning) return gw_fail(err, GW_E_NOMEM, "out of memory for ride");
    for (int i = 0; i < study->n_warnings; i++) made->warning[made->n_warnings++] = study->warning[i];
    for (int i = 0; i < study->n; i++)
        for (int w = 0; !failed && w < study->item[i].result.n_warnings; w++) {
            const char *text = study->item[i].result.warnings[w];
            if (is_told(study, i, text)) continue;
            made->warning[made->n_warnings++] = own_warning(c, study, i, text, &made->arena, &failed);
        }
    return failed ? gw_fail(err, GW_E_NOMEM, "out of memory for ride") : GW_OK;
}

void gw_ride_heading(const gw_case *c, gw_axle axle, gw_paper *paper)
{
    gw_paper_heading(paper, "Ride and harshness, %s corner; dB over %s", gw_axle_name(axle),
                     gw_kit_said(c, 0));
}

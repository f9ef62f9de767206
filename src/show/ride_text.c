/* SPDX-License-Identifier: MIT */
/* Ride, to be read aloud: what was assumed, then corner by corner what each kit does. */
#include "show/ride.h"

#include "format/number.h"
#include "format/table.h"
#include "giveway/units.h"
#include "show/ride_parts.h"
#include "show/words.h"

#include <stdlib.h>
#include <string.h>

/* Those of one corner, in the order of the kits: `items` has room for every kit; returns how many. */
static int items_of(const gw_ride_page *p, gw_axle axle, const gw_ride_item **items)
{
    int n = 0;
    for (int i = 0; i < p->study->n; i++)
        if (p->study->item[i].axle == axle) items[n++] = &p->study->item[i];
    return n;
}

/* A number as it was typed: six digits, without the noughts at its end. */
static gw_number plain(double value)
{
    gw_number out = gw_significant(value, 6);
    size_t n = strlen(out.s);
    if (!strchr(out.s, '.')) return out;
    while (out.s[n - 1] == '0') n--;
    if (out.s[n - 1] == '.') n--;
    out.s[n] = '\0';
    return out;
}

/* ---- what was assumed ---- */

static void setting(gw_table *t, const char *name, const char *value, const char *unit, bool left_out)
{
    gw_table_cell(t, name);
    gw_table_cellf(t, "%s%s%s", value, *unit ? " " : "", unit);
    gw_table_cell(t, left_out ? "default" : "the case");
}

static void road_rows(gw_table *t, const gw_ride *s)
{
    gw_table_cell(t, "road");
    if (s->road_class)
        gw_table_cellf(t, "class %c of ISO 8608", s->road_class);
    else
        gw_table_cellf(t, "roughness %s m3 at 0.1 cycle/m", gw_exact(s->roughness).s);
    gw_table_cell(t, "the case");
    setting(t, "speed", plain(s->speed / GW_KM_H).s, "km/h", false);
}

static void setting_rows(gw_table *t, const gw_ride *s)
{
    const bool *left = s->left_out;
    road_rows(t, s);
    setting(t, "contact length of the tyre", plain(s->contact_length / GW_MM).s, "mm",
            left[GW_RIDE_CONTACT_LENGTH]);
    setting(t, "body behind a bush, where its joint names no bracket",
            s->brackets_rigid ? "rigid" : plain(s->default_bracket / GW_N_PER_MM).s,
            s->brackets_rigid ? "" : "N/mm", left[GW_RIDE_DEFAULT_BRACKET]);
    setting(t, "loss factor of brackets", plain(s->bracket_loss).s, "", left[GW_RIDE_BRACKET_LOSS]);
    if (left[GW_RIDE_AMPLITUDE])
        setting(t, "movement that bushes are taken at", "each its own", "", true);
    else
        setting(t, "movement that bushes are taken at", plain(s->amplitude / GW_MM).s, "mm", false);
    setting(t, "damper friction, as damping added", plain(s->damper_friction / GW_NS_PER_MM).s, "N s/mm",
            left[GW_RIDE_DAMPER_FRICTION]);
    setting(t, "temperature (bush laws are for room temperature)", plain(s->temperature - GW_ZERO_C).s,
            "degrees C", left[GW_RIDE_TEMPERATURE]);
    if (s->has_obstacle) {
        gw_table_cell(t, "bump");
        gw_table_cellf(t, "%s mm high, %s mm long", plain(s->obstacle_height / GW_MM).s,
                       plain(s->obstacle_length / GW_MM).s);
        gw_table_cell(t, "the case");
    }
}

static void settings(const gw_ride_page *p)
{
    gw_table table = { 0 };
    gw_table_heads(&table, "lrl", "setting", "value", "from");
    setting_rows(&table, &p->c->ride);
    gw_paper_gap(p->paper);
    gw_paper_table(p->paper, &table, 2);
    if (p->study->n) {
        gw_paper_say(p->paper, 2, "%s.", p->study->item[0].result.road_note);
    }
}

/* ---- a corner ---- */

typedef void (*gw_ride_part)(const gw_ride_page *, const gw_ride_item *const *, int);
static const gw_ride_part PARTS[] = { gw_ride_figures_table,   gw_ride_modes_table, gw_ride_paths_table,
                                      gw_ride_isolation_table, gw_ride_bands_table, gw_ride_obstacle_table };

static void corner(const gw_ride_page *p, gw_axle axle)
{
    const gw_ride_item **items = calloc((size_t)p->c->n_kits + 1, sizeof *items);
    if (!items) p->paper->out->failed = true;
    int n = items ? items_of(p, axle, items) : 0;
    if (n) gw_ride_heading(p->c, axle, p->paper);
    for (size_t i = 0; n && i < sizeof PARTS / sizeof *PARTS; i++) PARTS[i](p, items, n);
    free(items);
}

static void write(const gw_case *c, const gw_ride_study *study, gw_paper *paper)
{
    const gw_ride_page page = { c, study, paper };
    settings(&page);
    for (gw_axle a = GW_FRONT; a < GW_AXLES; a++) corner(&page, a);
}

void gw_ride_text(const gw_case *c, const void *made, gw_paper *paper)
{
    const gw_ride_study *study = &((const gw_ride_made *)made)->study;
    gw_paper_line(paper, "%s", c->title);
    gw_paper_say(
        paper, 0,
        "What one wheel on a random road sends into the body. Harshness is felt: force into the body, 20 to "
        "200 Hz. What is heard of it: force into the body, A-weighted, 40 to 315 Hz.");
    if (((const gw_ride_made *)made)->explain)
        gw_ride_explain(c, study, paper);
    else
        write(c, study, paper);
    gw_say_closing(paper, GW_WORDS_ESTIMATE);
}

/* SPDX-License-Identifier: MIT */
/* The numbers that the page's script moves between: the same as in the tables and in --format json. */
#include "page/drawing.h"
#include "page/sections.h"

#include "giveway/units.h"
#include "page/pack.h"
#include "record/unit.h"

#include <math.h>
#include <stddef.h>
#include <string.h>

/* To a millionth of a degree or a millimetre: what is rounded here is rounded as in the JSON. */
static void put_fine(gw_json *json, const char *key, double value)
{
    gw_json_number(json, key, round(value * 1e6) / 1e6);
}

static void put_kits(const gw_page *p, gw_json *json)
{
    gw_json_array(json, "kits");
    for (int k = 0; k < p->c->n_kits; k++) {
        if (!gw_page_has_kit(p, k)) continue;
        GW_JSON_LINE(json, NULL, { "index", NULL, k }, { "name", p->c->kits[k].name, 0 },
                     { "label", gw_kit_said(p->c, k), 0 }, { "colour", gw_style_colour(k), 0 });
    }
    gw_json_close(json);
}

static void put_loads(const gw_page *p, gw_json *json)
{
    gw_json_array(json, "loads");
    for (int l = 0; l < p->c->n_loads; l++) {
        const gw_load *load = &p->c->loads[l];
        bool whole = load->kind == GW_LOAD_MANOEUVRE;
        gw_json_object_on_line(json, NULL);
        gw_json_int(json, "index", l);
        gw_json_string(json, "name", load->name);
        gw_json_string(json, "phrase", gw_page_load_said(p, l));
        gw_json_bool(json, "slides",
                     whole && load->manoeuvre.side == GW_OUTER && load->manoeuvre.drive_g <= 0.0);
        gw_json_number(json, "brake_g", whole ? load->manoeuvre.brake_g : 0.0);
        gw_json_number(json, "lateral_g", whole ? load->manoeuvre.lateral_g : 0.0);
        gw_json_close(json);
    }
    gw_json_close(json);
}

/* A row a joint: its share of toe, how far it gives, what it carries, how near to its limit, of what. */
static void put_shares(const gw_corner *corner, const gw_deflection *item, gw_json *json)
{
    const gw_corner_result *r = &item->result;
    gw_json_array(json, "shares");
    for (int j = 0; j < corner->n_joints; j++) {
        gw_json_array_on_line(json, NULL);
        gw_json_number(json, NULL, round(r->joints[j].toe_share / GW_DEG * 1e5) / 1e5);
        gw_page_borne(item, j, json);
        gw_json_close(json);
    }
    gw_json_close(json);
    put_fine(json, "travel_toe_deg", r->travel_toe / GW_DEG);
    put_fine(json, "geometry_toe_deg", r->geometry_toe / GW_DEG);
}

static void put_result(const gw_page *p, const gw_deflection *item, gw_json *json)
{
    const gw_corner_result *r = &item->result;
    const gw_corner *corner = &p->c->corners[item->axle];
    gw_json_object(json, NULL);
    gw_json_int(json, "kit", item->kit);
    gw_json_int(json, "axle", (long)item->axle);
    gw_json_int(json, "load", item->load);
    put_fine(json, "toe_change_deg", r->toe_change / GW_DEG);
    put_fine(json, "camber_change_deg", r->camber_change / GW_DEG);
    put_fine(json, "toe_deg", r->toe / GW_DEG);
    put_fine(json, "camber_deg", r->camber / GW_DEG);
    if (item->manoeuvre) put_fine(json, "camber_to_road_deg", item->camber_to_road / GW_DEG);
    put_fine(json, "x_mm", r->wheel_centre.x / GW_MM);
    put_fine(json, "y_mm", r->wheel_centre.y / GW_MM);
    put_shares(corner, item, json);
    gw_json_close(json);
}

static void put_results(const gw_page *p, gw_json *json)
{
    gw_json_array(json, "results");
    for (int i = 0; i < p->r->deflect.n; i++)
        if (!p->r->deflect.item[i].failed) put_result(p, &p->r->deflect.item[i], json);
    gw_json_close(json);
}

/* One quantity of a state; what is drawn with straight lines between the states. */
typedef struct quantity {
    const char *key;
    size_t at; /* of a gw_grid_state */
    gw_unit unit;
    double fine; /* steps a unit: a hundred times finer than the page shows */
} quantity;

#define OF_STATE(member) offsetof(gw_grid_state, member)
static const quantity QUANTITIES[] = {
    { "toe_deg", OF_STATE(toe), GW_UNIT_DEG, 1e4 },
    { "camber_deg", OF_STATE(camber), GW_UNIT_DEG, 1e4 },
    { "camber_to_road_deg", OF_STATE(camber_to_road), GW_UNIT_DEG, 1e4 },
    { "x_mm", OF_STATE(wheel_centre.x), GW_UNIT_MM, 1e2 },
    { "y_mm", OF_STATE(wheel_centre.y), GW_UNIT_MM, 1e2 },
};

/* Of the inner wheel what the protractors show. */
static const quantity INNER[] = {
    { "inner_toe_deg", OF_STATE(toe), GW_UNIT_DEG, 1e4 },
    { "inner_camber_to_road_deg", OF_STATE(camber_to_road), GW_UNIT_DEG, 1e4 },
};
enum { N_QUANTITIES = sizeof QUANTITIES / sizeof *QUANTITIES, N_INNER = sizeof INNER / sizeof *INNER };

/* Braking by braking; nothing where nothing was solved. */
static void put_quantity(const gw_grid_state *state, int n, const char *key, const quantity *q, gw_json *json)
{
    gw_buf row = { 0 };
    for (int i = 0; i < n; i++) {
        if (state[i].solved)
            gw_pack(&row, gw_unit_of_member(q->unit, &state[i], q->at) * q->fine);
        else
            gw_pack_nothing(&row);
    }
    gw_json_string(json, key, gw_buf_str(&row));
    gw_buf_drop(&row, json->out);
}

/* Changes are since the setting, which is the same in every state. */
static void put_setting(const gw_grid *grid, int n, gw_json *json)
{
    for (int i = 0; i < n; i++) {
        const gw_grid_state *s = &grid->state[i];
        if (!s->solved) continue;
        put_fine(json, "toe_set_deg", (s->toe - s->toe_change) / GW_DEG);
        put_fine(json, "camber_set_deg", (s->camber - s->camber_change) / GW_DEG);
        return;
    }
}

static void put_states(const gw_grid *grid, int n, gw_json *json)
{
    gw_json_object_on_line(json, NULL);
    gw_json_int(json, "kit", grid->kit);
    gw_json_int(json, "axle", (long)grid->axle);
    put_setting(grid, n, json);
    for (int q = 0; q < N_QUANTITIES; q++)
        put_quantity(grid->state, n, QUANTITIES[q].key, &QUANTITIES[q], json);
    for (int q = 0; q < N_INNER; q++) put_quantity(grid->other, n, INNER[q].key, &INNER[q], json);
    gw_json_close(json);
}

/* Of each quantity how many of its whole numbers are a unit. */
static void put_steps(gw_json *json)
{
    gw_json_object_on_line(json, "steps");
    for (int q = 0; q < N_QUANTITIES; q++) gw_json_number(json, QUANTITIES[q].key, QUANTITIES[q].fine);
    for (int q = 0; q < N_INNER; q++) gw_json_number(json, INNER[q].key, INNER[q].fine);
    gw_json_close(json);
}

static void put_grid(const gw_page *p, gw_json *json)
{
    const gw_grid_study *study = &p->r->grid;
    gw_json_object(json, "grid");
    gw_json_int(json, "n_brake", study->n ? study->plan.n_brake : 0);
    gw_json_int(json, "n_lateral", study->n ? study->plan.n_lateral : 0);
    gw_json_number(json, "brake_to_g", study->plan.brake_to_g);
    gw_json_number(json, "lateral_to_g", study->plan.lateral_to_g);
    put_steps(json);
    gw_json_array(json, "states");
    for (int i = 0; i < study->n; i++)
        put_states(&study->item[i], study->plan.n_brake * study->plan.n_lateral, json);
    gw_json_close(json);
    gw_json_close(json);
}

static void put_axles(const gw_page *p, gw_json *json)
{
    gw_json_array(json, "axles");
    for (gw_axle a = GW_FRONT; a < GW_AXLES; a++) {
        if (!gw_page_has_axle(p, a)) continue;
        GW_JSON_LINE(json, NULL, { "index", NULL, (double)a }, { "name", gw_page_axle(a), 0 },
                     { "rim_mm", NULL, p->c->corners[a].wheel.rim_diameter / GW_MM });
    }
    gw_json_close(json);
}

/* Sentences that the script puts together; they stand in the file of words like all others. */
static void put_words(gw_json *json)
{
    static const struct {
        const char *key;
        gw_words word;
    } WORDS[] = {
        { "state_load", GW_WORDS_PAGE_STATE_LOAD },   { "state_slider", GW_WORDS_PAGE_STATE_SLIDER },
        { "solved", GW_WORDS_PAGE_STATE_SOLVED },     { "between", GW_WORDS_PAGE_STATE_BETWEEN },
        { "lifts", GW_WORDS_PAGE_STATE_LIFTS },       { "none", GW_WORDS_PAGE_STATE_NONE },
        { "shares_none", GW_WORDS_PAGE_SHARES_NONE }, { "travel", GW_WORDS_PAGE_SHARE_TRAVEL },
        { "rest", GW_WORDS_PAGE_SHARE_REST },
    };
    gw_json_object(json, "words");
    for (size_t i = 0; i < sizeof WORDS / sizeof *WORDS; i++)
        gw_json_string(json, WORDS[i].key, gw_words_text(WORDS[i].word));
    gw_json_close(json);
}

/* Nobody reads it: blanks between values go, those in texts stay. */
static void put_tight(const char *json, gw_buf *out)
{
    bool inside = false;
    for (const char *at = json; *at;) {
        size_t n = strcspn(at, inside ? "\"\\" : "\" \n");
        gw_buf_bytes(out, at, n);
        at += n;
        if (*at == '\\') {
            gw_buf_bytes(out, at, 2);
            at += 2;
        } else if (*at) {
            if (*at == '"') gw_buf_bytes(out, at, 1);
            if (*at++ == '"') inside = !inside;
        }
    }
}

void gw_page_data(const gw_page *p)
{
    gw_buf text = { 0 };
    gw_json json = { .out = &text };
    gw_json_object(&json, NULL);
    gw_json_string(&json, "digits", gw_pack_digits());
    put_kits(p, &json);
    put_loads(p, &json);
    put_axles(p, &json);
    GW_JSON_LINE(&json, "start", { "base", NULL, p->r->baseline }, { "kit", NULL, p->kit },
                 { "load", NULL, p->load }, { "axle", NULL, (double)p->axle });
    gw_json_int(&json, "factor", gw_page_first_factor(p));
    put_results(p, &json);
    put_grid(p, &json);
    gw_page_drawing(p, &json);
    if (gw_page_compares(p)) gw_page_spectra(p, &json);
    put_words(&json);
    gw_json_close(&json);
    gw_buf_add(p->out, "<script type=\"application/json\" id=\"data\">\n");
    gw_buf tight = { 0 };
    put_tight(gw_buf_str(&text), &tight);
    gw_html_json(p->out, gw_buf_str(&tight));
    gw_buf_add(p->out, "</script>\n");
    gw_buf_drop(&text, p->out);
    gw_buf_drop(&tight, p->out);
}

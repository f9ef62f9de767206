/* SPDX-License-Identifier: MIT */
/* Readings as JSON: each an object with what was done to the wheel and what was read. */
#include "casefile/readings.h"
#include "casefile/document.h"
#include "casefile/nearest.h"
#include "giveway/casefile.h"
#include "giveway/units.h"

#include <ctype.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

static const gw_range WITHIN = GW_ABOVE(0, 1e6);
enum { MAX_TRAVELS = 1000 };

static void read_corner_name(const gw_reader *rd, const gw_node *node, const gw_case *c, gw_reading *out)
{
    gw_node at = gw_node_key(node, "corner");
    int axle = c->has_corner[GW_FRONT] ? GW_FRONT : GW_REAR;
    if (!at.json && c->has_corner[GW_FRONT] && c->has_corner[GW_REAR])
        gw_fault(rd, &at, "this key is missing: give \"front\" or \"rear\", since the case has both");
    if (gw_get_choice(rd, node, "corner", GW_OPTIONAL, GW_AXLE_NAMES, 2, &axle) && !c->has_corner[axle])
        gw_fault(rd, &at, "the case has no %s corner", GW_AXLE_NAMES[axle]);
    out->axle = (gw_axle)axle;
}

static void read_kit(const gw_reader *rd, const gw_node *node, const gw_case *c, gw_reading *out)
{
    const char *word;
    char found[80], hint[GW_HINT_MAX];
    gw_node at = gw_node_key(node, "kit");
    if (!gw_get_word(rd, node, "kit", GW_OPTIONAL, &word)) return;
    out->kit = gw_case_find_kit(c, word);
    if (out->kit >= 0) return;
    gw_nearest near = { .want = word };
    for (int k = 0; k < c->n_kits; k++) gw_nearest_offer(&near, c->kits[k].name);
    gw_fault(rd, &at, "expected the name of a kit of the case, found %s%s", gw_found(&at, found),
             gw_nearest_hint(&near, hint));
    out->kit = 0;
}

/* [x, y, z], where z may be null for the static load. */
static void read_patch(const gw_reader *rd, const gw_node *load, gw_read_state *s)
{
    gw_node force = gw_node_key(load, "patch_force_N");
    double x[3] = { 0 };
    int i = 0;
    s->static_vertical = !force.json;
    if (!force.json) return;
    if (!cJSON_IsArray(force.json) || gw_node_count(&force) != 3) {
        gw_fault(rd, &force, "expected a list of three numbers [x, y, z], the last null for the static load");
        return;
    }
    for (const cJSON *e = gw_first(&force); e; e = gw_node_next(e), i++) {
        gw_node at = gw_node_entry(&force, e, i);
        if (i == 2 && cJSON_IsNull(e))
            s->static_vertical = true;
        else
            gw_take_number(rd, &at, GW_READ_FORCE, &x[i]);
    }
    s->load.patch_force = gw_v3(x[0], x[1], x[2]);
}

static void read_load(const gw_reader *rd, const gw_node *node, gw_read_state *s)
{
    static const char *const KEYS[] = { "patch_force_N", "patch_moment_Nm", "hub_force_N", "other_wheel",
                                        NULL };
    int other = 0;
    gw_node load;
    if (!gw_get_object(rd, node, "load", GW_OPTIONAL, &load)) return;
    gw_check_keys(rd, &load, NULL, 0, KEYS);
    s->has_load = true;
    read_patch(rd, &load, s);
    gw_get_vector(rd, &load, "patch_moment_Nm", GW_OPTIONAL, GW_READ_FORCE.hi, 1, &s->load.patch_moment);
    gw_get_vector(rd, &load, "hub_force_N", GW_OPTIONAL, GW_READ_FORCE.hi, 1, &s->load.hub_force);
    gw_get_choice(rd, &load, "other_wheel", GW_OPTIONAL, GW_OTHER_WORDS, 3, &other);
    s->other = (gw_other_wheel)other;
}

/* One number or a list of them; how many, 0 where there is none or a fault. `list`: a list was given. */
static int read_numbers(const gw_reader *rd, const gw_node *node, gw_range range, double *out, bool *list)
{
    int n = 0;
    *list = cJSON_IsArray(node->json);
    if (!node->json) return 0;
    if (!*list) return gw_take_number(rd, node, range, out) ? 1 : 0;
    if (!gw_is_within(rd, node, MAX_TRAVELS, "numbers")) return 0;
    if (gw_node_count(node) == 0) gw_fault(rd, node, "expected at least one number");
    for (const cJSON *e = gw_first(node); e; e = gw_node_next(e), n++) {
        gw_node at = gw_node_entry(node, e, n);
        if (!gw_take_number(rd, &at, range, &out[n])) return 0;
    }
    return n;
}

/* What the right wheel does while the left one travels. */
static void read_wheels(const gw_reader *rd, const gw_node *node, gw_read_state *s, bool has_travel)
{
    int wheels = 0;
    gw_node at = gw_node_key(node, "wheels");
    gw_get_choice(rd, node, "wheels", GW_OPTIONAL, GW_WHEELS_WORDS, 3, &wheels);
    if (!at.json) return;
    if (s->has_load || !has_travel)
        gw_fault(rd, &at,
                 "\"wheels\" goes with \"travel_mm\" alone; beside a load it is \"other_wheel\" in the load");
    else if (s->spring_out && wheels)
        gw_fault(rd, &at, "with the spring out both wheels travel \"together\"");
    else
        s->other = (gw_other_wheel)wheels;
}

static bool read_spring(const gw_reader *rd, const gw_node *node, const gw_read_state *s, bool has_travel)
{
    static const char *const WORDS[] = { "in", "out" };
    int word = 0;
    gw_node at = gw_node_key(node, "spring");
    gw_get_choice(rd, node, "spring", GW_OPTIONAL, WORDS, 2, &word);
    if (word == 1 && (s->has_load || !has_travel))
        gw_fault(rd, &at, "the spring is out with \"travel_mm\" alone: the vertical load holds the travel");
    return word == 1;
}

/* States of a reading, one a travel; the scratch holds the travels. */
static void read_states(const gw_reader *rd, const gw_node *node, gw_reading *out, bool *list,
                        double *scratch)
{
    gw_read_state s = { 0 };
    gw_node travel = gw_node_key(node, "travel_mm"), rate = gw_node_key(node, "wheel_rate_N_per_mm");
    read_load(rd, node, &s);
    int n = read_numbers(rd, &travel, GW_READ_TRAVEL, scratch, list);
    s.spring_out = read_spring(rd, node, &s, travel.json != NULL);
    read_wheels(rd, node, &s, travel.json != NULL);
    if (!s.has_load && !travel.json && !rate.json)
        gw_fault(rd, node, "expected \"load\", \"travel_mm\" or a wheel rate: what was done to the wheel?");
    if (rate.json && (s.has_load || s.spring_out))
        gw_fault(
            rd, &rate,
            "a wheel rate is read without a load and with the spring in: make a reading of its own of it");
    out->n_states = n > 0 ? n : 1;
    if (!(out->state = gw_reader_make(rd, out->n_states, sizeof *out->state))) return;
    for (int i = 0; i < out->n_states; i++) {
        out->state[i] = s;
        out->state[i].has_travel = n > 0;
        out->state[i].travel = n > 0 ? scratch[i] * GW_MM : 0.0;
    }
}

/* How sure the figures of a unit are; a fault where something is read and this is not told. */
static void read_within(const gw_reader *rd, const gw_node *node, double within[3])
{
    bool read[3] = { false };
    for (int f = 0; f < GW_READ_FIGURES; f++)
        if (gw_node_key(node, GW_READ_KEYS[f]).json) read[gw_read_within((gw_read_figure)f)] = true;
    for (int u = 0; u < 3; u++) {
        gw_node at = gw_node_key(node, GW_WITHIN_KEYS[u]);
        within[u] = 0.0;
        if (at.json && !read[u])
            gw_fault(rd, &at, "nothing is read in this unit: take it out");
        else
            gw_get_number(rd, node, GW_WITHIN_KEYS[u], read[u] ? GW_REQUIRED : GW_OPTIONAL, WITHIN,
                          &within[u]);
    }
}

static void add_values(const gw_reader *rd, const gw_node *node, gw_read_figure f, const double *x, int n,
                       bool list, double within, bool travels_list, gw_reading *out)
{
    gw_node at = gw_node_key(node, GW_READ_KEYS[f]);
    if (n == 0 || !(within > 0.0)) return;
    if (list != travels_list || n != out->n_states) {
        gw_fault(rd, &at, "expected as many numbers as \"travel_mm\" has: %s%d",
                 travels_list ? "a list of " : "", out->n_states);
        return;
    }
    for (int i = 0; i < n; i++)
        out->value[out->n_values++] =
            (gw_read_value){ f, i, x[i] * gw_read_unit(f), 0.5 * within * gw_read_unit(f) };
}

static void read_values(const gw_reader *rd, const gw_node *node, gw_reading *out, bool travels_list,
                        double *scratch)
{
    double within[3];
    bool any = false, list;
    out->value = gw_reader_make(rd, GW_READ_FIGURES * out->n_states, sizeof *out->value);
    read_within(rd, node, within);
    for (int f = 0; f < GW_READ_FIGURES && out->value; f++) {
        gw_node at = gw_node_key(node, GW_READ_KEYS[f]);
        any = any || at.json;
        int n = read_numbers(rd, &at, gw_read_range((gw_read_figure)f), scratch, &list);
        add_values(rd, node, (gw_read_figure)f, scratch, n, list, within[gw_read_within((gw_read_figure)f)],
                   travels_list, out);
    }
    if (!any)
        gw_fault(rd, node,
                 "nothing is read: give toe_change_deg, wheel_fore_aft_mm, wheel_rate_N_per_mm ...");
}

static void read_one(const gw_reader *rd, const gw_node *node, const gw_case *c, gw_reading *out)
{
    static const char *const KEYS[] = { "name",
                                        "corner",
                                        "kit",
                                        "load",
                                        "travel_mm",
                                        "spring",
                                        "wheels",
                                        "within_deg",
                                        "within_mm",
                                        "within_N_per_mm",
                                        "toe_change_deg",
                                        "camber_change_deg",
                                        "caster_change_deg",
                                        "wheel_fore_aft_mm",
                                        "wheel_lateral_mm",
                                        "wheel_rate_N_per_mm",
                                        NULL };
    double scratch[MAX_TRAVELS];
    bool list = false;
    if (!gw_is_object(rd, node, "an object { } that describes a reading")) return;
    gw_check_keys(rd, node, NULL, 0, KEYS);
    gw_get_text(rd, node, "name", GW_REQUIRED, GW_MAX_TEXT_BYTES, &out->name);
    read_corner_name(rd, node, c, out);
    read_kit(rd, node, c, out);
    read_states(rd, node, out, &list, scratch);
    if (out->state) read_values(rd, node, out, list, scratch);
}

static bool is_same(const gw_reading *a, const gw_reading *b)
{
    return a->name && b->name && strcmp(a->name, b->name) == 0 && a->axle == b->axle && a->kit == b->kit;
}

static void read_list(const gw_reader *rd, const gw_node *top, const gw_case *c, gw_readings *out)
{
    gw_node list;
    if (!gw_get_list(rd, top, "readings", GW_REQUIRED, &list)) return;
    if (!gw_is_within(rd, &list, GW_MAX_READINGS, "readings")) return;
    if (gw_node_count(&list) == 0) gw_fault(rd, &list, "expected at least one reading");
    if (!(out->reading = gw_reader_make(rd, gw_node_count(&list) + 1, sizeof *out->reading))) return;
    for (const cJSON *e = gw_first(&list); e; e = gw_node_next(e), out->n++) {
        gw_node node = gw_node_entry(&list, e, out->n);
        gw_reading *r = &out->reading[out->n];
        read_one(rd, &node, c, r);
        out->n_values += r->n_values;
        for (int i = 0; i < out->n; i++)
            if (is_same(&out->reading[i], r)) {
                gw_node at = gw_node_key(&node, "name");
                gw_fault(rd, &at, "readings[%d] has the same name, corner and kit: give it another name", i);
                break;
            }
    }
    if (out->n_values > GW_MAX_READ_VALUES)
        gw_fault(rd, &list, "%d values are more than the %d that are allowed", out->n_values,
                 GW_MAX_READ_VALUES);
}

static void read_tree(const gw_reader *rd, cJSON *root, const gw_case *c, gw_readings *out)
{
    static const char *const FORMATS[] = { "giveway-readings-1" };
    static const char *const KEYS[] = { "format", "load_percent", "readings", NULL };
    const gw_range percent = GW_FROM(0, 1000);
    gw_node top = { root, NULL, NULL, 0 };
    int format;
    if (!gw_is_object(rd, &top, "an object { } at the top of a file of readings")) return;
    gw_check_keys(rd, &top, NULL, 0, KEYS);
    gw_get_choice(rd, &top, "format", GW_REQUIRED, FORMATS, 1, &format);
    gw_get_number(rd, &top, "load_percent", GW_OPTIONAL, percent, &out->load_percent);
    read_list(rd, &top, c, out);
}

static bool looks_like_json(const char *text, size_t size)
{
    size_t i = size >= 3 && memcmp(text, "\xEF\xBB\xBF", 3) == 0 ? 3 : 0;
    while (i < size && isspace((unsigned char)text[i])) i++;
    return i < size && (text[i] == '{' || text[i] == '[');
}

/* Pushes of a few newtons move nothing that a gauge can read. */
static void doubt_forces(const gw_reader *rd, const gw_readings *readings)
{
    const double weakest = 20.0; /* [N] */
    for (int i = 0; i < readings->n; i++) {
        const gw_reading *r = &readings->reading[i];
        double most = 0.0;
        for (int s = 0; s < r->n_states; s++) {
            const gw_corner_load *l = &r->state[s].load;
            if (r->state[s].has_load) most = fmax(most, gw_norm(l->patch_force) + gw_norm(l->hub_force));
        }
        if (most > 0.0 && most < weakest)
            gw_warn(rd, NULL, "reading \"%s\": a push of %.3g N: are the forces in kN? newtons are wanted",
                    r->name ? r->name : "", most);
    }
}

gw_status gw_readings_read(const char *file, const char *text, size_t size, const gw_case *c,
                           gw_readings *out, gw_faults *faults)
{
    gw_readings made = { 0 };
    gw_reader rd = { file, faults, &made.arena, false };
    const int before = gw_faults_count(faults);
    cJSON *root = NULL;
    gw_status st = GW_OK;
    made.path = gw_keep(&rd, file);
    if (looks_like_json(text, size)) {
        st = gw_parse(&rd, text, size, &root);
        if (st == GW_OK) read_tree(&rd, root, c, &made);
    } else
        st = gw_read_table(&rd, text, size, c, &made);
    cJSON_Delete(root);
    if (st == GW_OK && gw_faults_count(faults) == before) doubt_forces(&rd, &made);
    if (st == GW_OK && gw_faults_count(faults) != before) st = GW_E_SCHEMA;
    if (faults->out_of_memory) st = GW_E_NOMEM;
    if (st == GW_OK)
        *out = made;
    else
        gw_arena_free(&made.arena);
    return st;
}

gw_status gw_readings_load(const char *path, const gw_case *c, gw_readings *out, gw_faults *faults)
{
    gw_reader rd = { path, faults, NULL, false };
    char *text = NULL;
    size_t size = 0;
    gw_status st = gw_read_file_of(&rd, path, GW_MAX_FILE_BYTES, "file of readings", &text, &size);
    if (st == GW_OK) st = gw_readings_read(path, text, size, c, out, faults);
    free(text);
    return st;
}

void gw_readings_free(gw_readings *readings)
{
    gw_arena_free(&readings->arena);
    *readings = (gw_readings){ 0 };
}

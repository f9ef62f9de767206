/* SPDX-License-Identifier: MIT */
/* A case file from its top: the sections in the order in which they need one another. */
#include "casefile/again.h"
#include "casefile/document.h"
#include "casefile/section.h"
#include "casefile/shelf.h"

#include <stdlib.h>
#include <string.h>

static const char *const TOP_KEYS[] = { "format", "title", "vehicle", "corners", "axles",     "bushes",
                                        "kits",   "loads", "ride",    "align",   "uncertain", "shop",
                                        "shelf",  "jobs",  "choose",  NULL };

/* An axle is what the wheels of a corner share. */
static void check_axles(gw_case_reader *cr, const gw_node *axles)
{
    gw_node corners = gw_node_key(&cr->top, "corners");
    gw_check_keys(&cr->rd, axles, NULL, 0, GW_AXLE_NAMES);
    for (int a = 0; a < GW_AXLES; a++) {
        gw_node axle = gw_node_key(axles, GW_AXLE_NAMES[a]);
        if (axle.json && !gw_node_key(&corners, GW_AXLE_NAMES[a]).json)
            gw_fault(&cr->rd, &axle, "there is no %s corner in \"corners\": an axle needs its corner",
                     GW_AXLE_NAMES[a]);
    }
}

/* True where a draw leaves a section as it is known. Bushes written in place are listed as they are met, so
 * with them bushes, corners and kits are read anew. */
static bool is_kept(const gw_case_reader *cr, int section)
{
    bool in_place =
        section != GW_SECTION_VEHICLE && section != GW_SECTION_RIDE && section != GW_SECTION_ALIGN;
    return cr->again && !cr->again->section[section] && !(in_place && cr->capacity > cr->n_named);
}

static void take_corner(gw_case *c, const gw_case *known, gw_axle axle)
{
    c->has_corner[axle] = known->has_corner[axle];
    c->corners[axle] = known->corners[axle];
    c->pairs[axle] = known->pairs[axle];
}

static void read_corners(gw_case_reader *cr)
{
    gw_node corners, axles = { 0 };
    if (gw_get_object(&cr->rd, &cr->top, "axles", GW_OPTIONAL, &axles)) check_axles(cr, &axles);
    if (!gw_get_object(&cr->rd, &cr->top, "corners", GW_OPTIONAL, &corners)) return;
    gw_check_keys(&cr->rd, &corners, NULL, 0, GW_AXLE_NAMES);
    if (gw_node_count(&corners) == 0) gw_fault(&cr->rd, &corners, "expected \"front\" or \"rear\" or both");
    for (int a = 0; a < GW_AXLES; a++) {
        gw_node node = gw_node_key(&corners, GW_AXLE_NAMES[a]);
        gw_node shared = { NULL, &axles, GW_AXLE_NAMES[a], 0 };
        if (axles.json) shared = gw_node_key(&axles, GW_AXLE_NAMES[a]);
        if (is_kept(cr, GW_SECTION_FRONT + a))
            take_corner(cr->c, cr->again->known, (gw_axle)a);
        else if (node.json)
            gw_read_corner(cr, &node, &shared, (gw_axle)a);
    }
}

/* The static load comes from the wheel or from the vehicle; from both it must be the same within 1 %. */
static void settle_static_load(gw_case_reader *cr, gw_axle axle, bool vehicle_known)
{
    gw_node corners = gw_node_key(&cr->top, "corners"), corner = gw_node_key(&corners, GW_AXLE_NAMES[axle]);
    gw_node wheel = gw_node_key(&corner, "wheel"), at = gw_node_key(&wheel, "static_load_N");
    double *load = &cr->c->corners[axle].wheel.static_load;
    if (!cr->c->has_corner[axle] || !cJSON_IsObject(wheel.json)) return;
    if (!gw_node_key(&cr->top, "vehicle").json && !at.json)
        gw_fault(&cr->rd, &at,
                 "this key is missing: give the load on the wheel, or \"vehicle\", from which it follows");
    if (!vehicle_known) return;
    double want = gw_vehicle_static_load(&cr->c->vehicle, axle);
    if (!at.json)
        *load = want;
    else if (!cr->again && *load > 0 && fabs(*load - want) > 0.01 * want)
        gw_fault(&cr->rd, &at,
                 "%.6g N differs by more than 1 %% from the %.6g N that \"vehicle\" puts on the wheel: "
                 "correct one, or leave this out",
                 *load, want);
}

static void read_vehicle(gw_case_reader *cr)
{
    gw_node vehicle = gw_node_key(&cr->top, "vehicle");
    gw_case *c = cr->c;
    if (is_kept(cr, GW_SECTION_VEHICLE)) {
        c->has_vehicle = cr->again->known->has_vehicle;
        c->vehicle = cr->again->known->vehicle;
    } else if (vehicle.json)
        c->has_vehicle = gw_read_vehicle(&cr->rd, &vehicle, &c->vehicle);
}

static void read_parts(gw_case_reader *cr)
{
    gw_case *c = cr->c;
    gw_read_bushes(cr);
    read_corners(cr);
    for (int a = 0; a < GW_AXLES; a++) {
        settle_static_load(cr, (gw_axle)a, c->has_vehicle);
        c->pairs[a].wheel = c->corners[a].wheel;
    }
    if (is_kept(cr, GW_SECTION_KITS)) {
        c->n_kits = cr->again->known->n_kits;
        c->kits = cr->again->known->kits;
    } else
        gw_read_kits(cr);
}

/* A bush of a shelf that a kit fits, or that is on offer, has to be worked out. */
static void wake_fitted(gw_case_reader *cr)
{
    gw_case *c = cr->c;
    if (!c->bushes || (cr->again && c->bushes == cr->again->known->bushes)) return; /* no memory; or awake */
    for (int i = 0; i < c->choose.n_among; i++)
        for (int b = 0; b < c->choose.among[i].n_bushes; b++)
            c->bushes[c->choose.among[i].bush[b]].idle = false;
    for (int k = 0; k < c->n_kits; k++)
        for (int a = 0; a < GW_AXLES; a++)
            for (int j = 0; c->kits[k].fits[a] && j < c->pairs[a].n_joints; j++)
                if (c->kits[k].fits[a][j] >= 0) c->bushes[c->kits[k].fits[a][j]].idle = false;
}

/* A shelf alone: its bushes can be looked at and checked. */
static void read_shelf_alone(gw_case_reader *cr)
{
    gw_node list;
    gw_check_keys(&cr->rd, &cr->top, NULL, 0, GW_SHELF_KEYS);
    cr->c->title = cr->c->path;
    gw_get_text(&cr->rd, &cr->top, "title", GW_OPTIONAL, GW_MAX_TEXT_BYTES, &cr->c->title);
    gw_read_bushes(cr);
    gw_read_shop(&cr->rd, &cr->top, &cr->c->shop);
    gw_get_list(&cr->rd, &cr->top, "jobs", GW_OPTIONAL, &list);
}

static void read_top(gw_case_reader *cr)
{
    static const char *const FORMATS[] = { "giveway-case-1" };
    gw_case *c = cr->c;
    gw_node ride = gw_node_key(&cr->top, "ride");
    int format;
    gw_check_keys(&cr->rd, &cr->top, NULL, 0, TOP_KEYS);
    gw_get_choice(&cr->rd, &cr->top, "format", GW_REQUIRED, FORMATS, 1, &format);
    gw_get_text(&cr->rd, &cr->top, "title", GW_REQUIRED, GW_MAX_TEXT_BYTES, &c->title);
    if (!gw_node_key(&cr->top, "corners").json && !gw_node_key(&cr->top, "bushes").json)
        gw_fault(&cr->rd, NULL, "expected \"corners\" or \"bushes\": there is nothing to work on");
    read_vehicle(cr);
    read_parts(cr);
    gw_read_loads(cr);
    if (is_kept(cr, GW_SECTION_RIDE))
        c->ride = cr->again->known->ride;
    else if (ride.json)
        gw_read_ride(&cr->rd, &ride, &c->ride);
    if (is_kept(cr, GW_SECTION_ALIGN))
        memcpy(c->align, cr->again->known->align, sizeof c->align);
    else
        gw_read_align(cr);
    gw_read_shop(&cr->rd, &cr->top, &c->shop);
    if (cr->again) { /* jobs of a shelf name joints that other cases have, and no draw changes work */
        c->n_jobs = cr->again->known->n_jobs;
        c->jobs = cr->again->known->jobs;
        c->choose = cr->again->known->choose;
    } else {
        gw_read_jobs(cr);
        gw_read_choose(cr);
    }
    wake_fitted(cr);
    if (!cr->again) gw_read_uncertain(cr);
}

static gw_status outcome(const gw_faults *faults, int before)
{
    if (faults->out_of_memory) return GW_E_NOMEM;
    return gw_faults_count(faults) != before ? GW_E_SCHEMA : GW_OK;
}

gw_status gw_case_read_again(const gw_again *again, cJSON *document, gw_case *out, gw_faults *faults)
{
    const gw_case *known = again->known;
    gw_case c = { .path = known->path, .materials = known->materials };
    gw_case_reader cr = { .rd = { known->path, faults, &c.arena, true },
                          .materials = known->materials,
                          .c = &c,
                          .again = again,
                          .top = { document, NULL, NULL, 0 } };
    read_top(&cr);
    gw_status st = outcome(faults, 0);
    if (st == GW_OK)
        *out = c;
    else
        gw_arena_free(&c.arena);
    return st;
}

gw_status gw_case_read(const char *file, const char *text, size_t size, const gw_material_set *materials,
                       gw_case *out, gw_faults *faults)
{
    gw_case c = { .materials = materials };
    gw_case_reader cr = { .rd = { file, faults, &c.arena, false }, .materials = materials, .c = &c };
    cJSON *root = NULL;
    const int before = gw_faults_count(faults);
    gw_status st = gw_parse(&cr.rd, text, size, &root);
    if (st != GW_OK) goto done;
    cr.top = (gw_node){ root, NULL, NULL, 0 };
    c.path = gw_keep(&cr.rd, file);
    if (gw_is_object(&cr.rd, &cr.top, "an object { } at the top of a case file")) {
        if (gw_is_shelf(&cr.top))
            read_shelf_alone(&cr);
        else {
            gw_take_shelves(&cr, root);
            if (gw_faults_count(faults) == before) read_top(&cr); /* else what is missing would be told too */
        }
    }
    st = outcome(faults, before);
done:
    if (st == GW_OK) {
        c.document = root;
        *out = c;
    } else {
        cJSON_Delete(root);
        gw_arena_free(&c.arena);
    }
    return st;
}

gw_status gw_case_load(const char *path, const gw_material_set *materials, gw_case *out, gw_faults *faults)
{
    gw_reader rd = { path, faults, NULL, false };
    char *text = NULL;
    size_t size = 0;
    gw_status st = gw_read_file(&rd, path, &text, &size);
    if (st == GW_OK) st = gw_case_read(path, text, size, materials, out, faults);
    free(text);
    return st != GW_OK && faults->out_of_memory ? GW_E_NOMEM : st;
}

void gw_case_free(gw_case *c)
{
    gw_arena_free(&c->arena);
    cJSON_Delete(c->document);
    *c = (gw_case){ 0 };
}

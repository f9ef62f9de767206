/* SPDX-License-Identifier: MIT */
/* A case file from its top: the sections in the order in which they need one another. */
#include "casefile/document.h"
#include "casefile/section.h"

#include <stdlib.h>
#include <string.h>

static const char *const TOP_KEYS[] = { "format", "title", "vehicle", "corners", "bushes",
                                        "kits",   "loads", "ride",    "align",   NULL };
static const char *const AXLES[] = { "front", "rear" };

static void read_corners(gw_case_reader *cr)
{
    static const char *const WORDS[] = { "front", "rear", NULL };
    gw_node corners;
    if (!gw_get_object(&cr->rd, &cr->top, "corners", GW_OPTIONAL, &corners)) return;
    gw_check_keys(&cr->rd, &corners, NULL, 0, WORDS);
    if (gw_count(&corners) == 0) gw_fault(&cr->rd, &corners, "expected \"front\" or \"rear\" or both");
    for (int a = 0; a < GW_AXLES; a++) {
        gw_node node = gw_node_key(&corners, AXLES[a]);
        if (node.json) gw_read_corner(cr, &node, (gw_axle)a);
    }
}

/* The static load comes from the wheel or from the vehicle; from both it must be the same within 1 %. */
static void settle_static_load(gw_case_reader *cr, gw_axle axle, bool vehicle_known)
{
    gw_node corners = gw_node_key(&cr->top, "corners"), corner = gw_node_key(&corners, AXLES[axle]);
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
    else if (*load > 0 && fabs(*load - want) > 0.01 * want)
        gw_fault(&cr->rd, &at,
                 "%.6g N differs by more than 1 %% from the %.6g N that \"vehicle\" puts on the wheel: "
                 "mend one, or leave this out",
                 *load, want);
}

static void read_top(gw_case_reader *cr)
{
    static const char *const FORMATS[] = { "giveway-case-1" };
    gw_case *c = cr->c;
    gw_node vehicle = gw_node_key(&cr->top, "vehicle"), ride = gw_node_key(&cr->top, "ride");
    int format;
    gw_check_keys(&cr->rd, &cr->top, NULL, 0, TOP_KEYS);
    gw_get_choice(&cr->rd, &cr->top, "format", GW_REQUIRED, FORMATS, 1, &format);
    gw_get_text(&cr->rd, &cr->top, "title", GW_REQUIRED, GW_MAX_TEXT_BYTES, &c->title);
    if (!gw_node_key(&cr->top, "corners").json && !gw_node_key(&cr->top, "bushes").json)
        gw_fault(&cr->rd, NULL, "expected \"corners\" or \"bushes\": there is nothing to work on");
    if (vehicle.json) c->has_vehicle = gw_read_vehicle(&cr->rd, &vehicle, &c->vehicle);
    gw_read_bushes(cr);
    read_corners(cr);
    for (int a = 0; a < GW_AXLES; a++) settle_static_load(cr, (gw_axle)a, c->has_vehicle);
    gw_read_kits(cr);
    gw_read_loads(cr);
    if (ride.json) gw_read_ride(&cr->rd, &ride, &c->ride);
    gw_read_align(cr);
}

gw_status gw_case_read(const char *file, const char *text, size_t size, const gw_material_set *materials,
                       gw_case *out, gw_faults *faults)
{
    gw_case c = { 0 };
    gw_case_reader cr = { .rd = { file, faults, &c.arena }, .materials = materials, .c = &c };
    cJSON *root = NULL;
    const int before = gw_faults_count(faults);
    gw_status st = gw_parse(&cr.rd, text, size, &root);
    if (st != GW_OK) goto done;
    cr.top = (gw_node){ root, NULL, NULL, 0 };
    c.path = gw_keep(&cr.rd, file);
    if (gw_is_object(&cr.rd, &cr.top, "an object { } at the top of a case file")) read_top(&cr);
    if (faults->out_of_memory)
        st = GW_E_NOMEM;
    else if (gw_faults_count(faults) != before)
        st = GW_E_SCHEMA;
done:
    cJSON_Delete(root);
    if (st == GW_OK)
        *out = c;
    else
        gw_arena_free(&c.arena);
    return st;
}

gw_status gw_case_load(const char *path, const gw_material_set *materials, gw_case *out, gw_faults *faults)
{
    gw_reader rd = { path, faults, NULL };
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
    *c = (gw_case){ 0 };
}

/* SPDX-License-Identifier: MIT */
/*
 * A draw is the file with other numbers, read anew. What no number of the draw stands in is taken over from
 * the case: bushes, and whole sections.
 */
#include "giveway/uncertain.h"
#include "casefile/again.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

struct gw_drawer {
    gw_again again;
    cJSON *document;
    cJSON **place;      /* of each target: the number that it sets        */
    int *section;       /* of each target; -1: none that is told apart    */
    gw_again of_figure; /* what a figure alone touches                    */
};

double gw_unsure_at(const gw_unsure *f, double z)
{
    return f->unit == GW_UNSURE_FACTOR ? f->value * exp(f->scale * z) : f->value + f->scale * z;
}

static int count_nodes(const cJSON *json)
{
    int n = 1;
    for (const cJSON *e = json->child; e; e = e->next) n += count_nodes(e);
    return n;
}

static void list_nodes(cJSON *json, cJSON **list, int *n)
{
    list[(*n)++] = json;
    for (cJSON *e = json->child; e; e = e->next) list_nodes(e, list, n);
}

/* The number of a target in a copy of the document; added where the file leaves it out. */
static cJSON *place_of(cJSON *node, const gw_drawn_number *t)
{
    if (!t->key) return node;
    cJSON *there = cJSON_GetObjectItemCaseSensitive(node, t->key);
    return there ? there : cJSON_AddNumberToObject(node, t->key, t->value);
}

/* The places of all targets in a copy of the document; owned by the caller. */
static cJSON **find_places(const gw_uncertain *u, cJSON *document)
{
    int n = 0;
    cJSON **list = calloc((size_t)count_nodes(document), sizeof *list);
    cJSON **place = calloc((size_t)u->n_targets + 1, sizeof *place);
    bool ok = list && place;
    if (ok) list_nodes(document, list, &n);
    for (int i = 0; ok && i < u->n_targets; i++)
        ok = (place[i] = place_of(list[u->target[i].node], &u->target[i]));
    free(list);
    if (ok) return place;
    free(place);
    return NULL;
}

static bool holds(const cJSON *json, const cJSON *want)
{
    if (json == want) return true;
    for (const cJSON *e = json->child; e; e = e->next)
        if (holds(e, want)) return true;
    return false;
}

/* In which section of the file a number stands; what an axle shares is read with its corner. */
static int section_of(const cJSON *document, const cJSON *number)
{
    static const char *const KEYS[GW_SECTIONS] = { [GW_SECTION_VEHICLE] = "vehicle",
                                                   [GW_SECTION_BUSHES] = "bushes",
                                                   [GW_SECTION_KITS] = "kits",
                                                   [GW_SECTION_RIDE] = "ride",
                                                   [GW_SECTION_ALIGN] = "align" };
    const cJSON *top = document->child, *axle;
    while (top && !holds(top, number)) top = top->next;
    if (!top) return -1;
    for (int s = 0; s < GW_SECTIONS; s++)
        if (KEYS[s] && strcmp(top->string, KEYS[s]) == 0) return s;
    if (strcmp(top->string, "corners") != 0 && strcmp(top->string, "axles") != 0) return -1;
    for (axle = top->child; axle && !holds(axle, number);) axle = axle->next;
    for (int a = 0; axle && a < GW_AXLES; a++)
        if (strcmp(axle->string, GW_AXLE_NAMES[a]) == 0) return GW_SECTION_FRONT + a;
    return -1;
}

/* What a target changes: a section of the file, and a bush, if it is more of it than its factor. */
static void touch(const gw_drawer *d, const gw_drawn_number *t, int at, gw_again *again)
{
    if (d->section[at] >= 0) again->section[d->section[at]] = true;
    if (!t->key || strcmp(t->key, "stiffness_factor") != 0) again->touched[again->n_touched++] = d->place[at];
}

static bool mark(gw_drawer *d, const gw_uncertain *u)
{
    gw_again *again = &d->again;
    again->touched = calloc((size_t)u->n_targets + 1, sizeof *again->touched);
    again->anew = calloc((size_t)again->known->n_bushes + 1, sizeof *again->anew);
    d->of_figure.touched = calloc((size_t)u->n_targets + 1, sizeof *again->touched);
    d->section = calloc((size_t)u->n_targets + 1, sizeof *d->section);
    if (!again->touched || !again->anew || !d->of_figure.touched || !d->section) return false;
    for (int i = 0; i < u->n_targets; i++) {
        d->section[i] = section_of(d->document, d->place[i]);
        touch(d, &u->target[i], i, again);
    }
    return true;
}

gw_status gw_drawer_open(const gw_case *c, gw_drawer **out, gw_error *err)
{
    gw_drawer *d = calloc(1, sizeof *d);
    if (d) d->again.known = c;
    if (d && c->document) d->document = cJSON_Duplicate(c->document, true);
    if (d && d->document) d->place = find_places(&c->uncertain, d->document);
    if (!d || !d->place || !mark(d, &c->uncertain)) {
        gw_drawer_close(d);
        return gw_fail(err, GW_E_NOMEM, "out of memory for drawing cars");
    }
    *out = d;
    return GW_OK;
}

void gw_drawer_close(gw_drawer *d)
{
    if (!d) return;
    cJSON_Delete(d->document);
    free(d->place);
    free(d->again.touched);
    free(d->again.anew);
    free(d->of_figure.touched);
    free(d->section);
    free(d);
}

const bool *gw_drawer_anew(const gw_drawer *d)
{
    return d->again.anew;
}

static double value_at(const gw_uncertain *u, const gw_drawn_number *t, const double *z)
{
    const gw_unsure *f = &u->figure[t->figure];
    double by = f->scale * t->relative * z[t->figure];
    return f->unit == GW_UNSURE_FACTOR ? t->value * exp(by) : t->value + by;
}

static gw_status make(gw_drawer *d, const gw_again *again, const double *z, gw_case *out, gw_error *err)
{
    const gw_uncertain *u = &d->again.known->uncertain;
    gw_faults faults = { 0 };
    for (int i = 0; i < u->n_targets; i++) d->place[i]->valuedouble = value_at(u, &u->target[i], z);
    gw_status status = gw_case_read_again(again, d->document, out, &faults);
    if (status != GW_OK)
        gw_fail(err, status == GW_E_NOMEM ? status : GW_E_RANGE, "%s",
                gw_faults_count(&faults) ? gw_faults_text(&faults, 0) : gw_status_text(status));
    gw_faults_free(&faults);
    return status == GW_OK || status == GW_E_NOMEM ? status : GW_E_RANGE;
}

gw_status gw_drawer_make(gw_drawer *d, const double *z, gw_case *out, gw_error *err)
{
    return make(d, &d->again, z, out, err);
}

gw_status gw_drawer_make_near(gw_drawer *d, const gw_case *near, const double *z, int figure, gw_case *out,
                              gw_error *err)
{
    const gw_uncertain *u = &d->again.known->uncertain;
    d->of_figure = (gw_again){ .known = near, .touched = d->of_figure.touched, .anew = d->again.anew };
    for (int i = 0; i < u->n_targets; i++)
        if (u->target[i].figure == figure) touch(d, &u->target[i], i, &d->of_figure);
    return make(d, &d->of_figure, z, out, err);
}

static bool add_band(cJSON *list, const gw_unsure *f, double sd)
{
    static const char *const UNITS[] = { "percent", "mm", "deg" };
    double two = 2.0 * f->scale * sd;
    double size = f->unit == GW_UNSURE_FACTOR ? 100.0 * expm1(two) : two;
    cJSON *entry = cJSON_CreateObject();
    if (!entry || !cJSON_AddItemToArray(list, entry)) {
        cJSON_Delete(entry);
        return false;
    }
    return cJSON_AddStringToObject(entry, "of", f->of) &&
           cJSON_AddNumberToObject(entry, UNITS[f->unit], size);
}

static bool replace_list(cJSON *document, const gw_uncertain *u, const double *sd)
{
    cJSON *list = cJSON_CreateArray();
    if (!list) return false;
    cJSON_DeleteItemFromObjectCaseSensitive(document, "shelf"); /* its parts are in the case by now */
    cJSON_DeleteItemFromObjectCaseSensitive(document, "uncertain");
    if (!cJSON_AddItemToObject(document, "uncertain", list)) {
        cJSON_Delete(list);
        return false;
    }
    for (int i = 0; i < u->n; i++)
        if (!add_band(list, &u->figure[i], sd[i])) return false;
    return true;
}

gw_status gw_case_rewritten(const gw_case *c, const double *z, const double *sd, char **out, gw_error *err)
{
    const gw_uncertain *u = &c->uncertain;
    cJSON *document = cJSON_Duplicate(c->document, true);
    cJSON **place = document ? find_places(u, document) : NULL;
    char *text = NULL;
    if (place) {
        for (int i = 0; i < u->n_targets; i++) cJSON_SetNumberValue(place[i], value_at(u, &u->target[i], z));
        if (replace_list(document, u, sd)) text = cJSON_Print(document);
    }
    free(place);
    cJSON_Delete(document);
    if (!text) return gw_fail(err, GW_E_NOMEM, "out of memory for the corrected case");
    *out = text;
    return GW_OK;
}

/* SPDX-License-Identifier: MIT */
/* Reading a row where it stands. */
#include "record/record.h"

#include <assert.h>
#include <math.h>
#include <stdio.h>
#include <string.h>

static const gw_place *nearest(const gw_place *place, const char *type)
{
    while (place && (!place->it || strcmp(place->record->type, type) != 0)) place = place->up;
    return place;
}

const gw_place *gw_place_find(const gw_place *place, const char *type)
{
    place = nearest(place, type);
    assert(place);
    return place;
}

const void *gw_place_struct(const gw_place *place, const char *type)
{
    const gw_place *at = nearest(place, type);
    assert(at || strcmp(type, "gw_case") == 0);
    return at ? at->it : (const void *)place->c;
}

/* The struct that a row reads. */
static const char *holder(const gw_field *field, const gw_place *place)
{
    return gw_place_struct(place, field->type);
}

static const void *member(const gw_field *field, const gw_place *place)
{
    return holder(field, place) + field->at;
}

/* The place as a function of a row gets it. */
static gw_place asked(const gw_field *field, const gw_place *place)
{
    gw_place at = *place;
    at.which = field->which;
    return at;
}

gw_place gw_place_top(const gw_result *result, const gw_case *c, const void *made)
{
    return (gw_place){ .c = c, .record = result->record, .it = made };
}

static gw_shown one(const gw_field *field, gw_unit unit, double x)
{
    return (gw_shown){ .kind = field->kind, .unit = unit, .n = 1, .x = { x } };
}

static gw_shown several(const gw_field *field, const double *x, int n)
{
    gw_shown value = { .kind = field->kind, .unit = field->unit, .n = n };
    memcpy(value.x, x, (size_t)n * sizeof *x);
    return value;
}

static gw_shown words(const gw_field *field, const char *text)
{
    return (gw_shown){ .kind = field->kind, .text = text };
}

static const char *name_of(const gw_field *field, const gw_place *place)
{
    int i = *(const int *)member(field, place);
    if (i < 0) return NULL;
    if (field->kind == GW_JOINT_NAME) {
        const char *of = gw_place_find(place, field->other)->it;
        return place->c->corners[*(const gw_axle *)(const void *)(of + field->list)].joints[i].name;
    }
    return field->kind == GW_KIT_NAME ? place->c->kits[i].name : place->c->loads[i].name;
}

static gw_shown filled(const gw_field *field, const gw_place *place)
{
    gw_shown value = { .kind = field->kind, .unit = field->unit };
    value.n = field->kind == GW_BAND ? 6 : field->kind == GW_THREE ? 3 : 2;
    field->fill(place, value.x);
    return value;
}

const char *gw_field_key(const gw_field *field, gw_unit unit, char key[GW_KEY_MAX])
{
    bool plain = field->flags & (GW_NO_UNIT | GW_AS_MINUTES) || field->unit_of;
    snprintf(key, GW_KEY_MAX, "%s%s", field->key, plain ? "" : gw_unit_key(unit));
    return key;
}

/* A number of an array of the struct, or behind its pointer. */
static double entry(const gw_field *field, const gw_place *place)
{
    const char *array = holder(field, place) + field->list;
    if (!(field->flags & GW_INLINE)) array = *(const char *const *)(const void *)array;
    return ((const double *)(const void *)array)[gw_place_find(place, field->other)->index];
}

/* A number where a bool of another struct, or the same, says that it is known. */
static double known(const gw_field *field, const gw_place *place)
{
    const char *set = (const char *)gw_place_struct(place, field->other) + field->list;
    return *(const bool *)set ? *(const double *)member(field, place) : (double)NAN;
}

static gw_shown read_member(const gw_field *field, gw_unit unit, const gw_place *place)
{
    const void *at = member(field, place);
    switch (field->kind) {
    case GW_NUMBER:
        return one(field, unit, *(const double *)at);
    case GW_WHOLE:
        return one(field, unit, *(const int *)at);
    case GW_FLAG:
        return one(field, unit, *(const bool *)at);
    case GW_PAIR:
        return several(field, at, 2);
    case GW_THREE: /* a gw_vec3 or three numbers: the same in memory */
        return several(field, at, 3);
    case GW_BAND:
        return several(field, at, 6);
    case GW_ONE_OF:
        return words(field, field->words[*(const int *)at]);
    case GW_KIT_NAME:
    case GW_LOAD_NAME:
    case GW_JOINT_NAME:
        return words(field, name_of(field, place));
    default:
        assert(field->kind == GW_TEXT);
        return words(field, field->flags & GW_INLINE ? at : *(const char *const *)at);
    }
}

gw_shown gw_field_read(const gw_field *field, const gw_place *place)
{
    const gw_place at = asked(field, place);
    gw_unit unit = field->unit_of ? field->unit_of(&at) : field->unit;
    if (field->number) return one(field, unit, field->number(&at));
    if (field->fill) return filled(field, &at);
    if (field->text) return words(field, field->text(&at));
    if (!field->type) return one(field, unit, field->constant);
    if (field->flags & GW_WHERE) return one(field, unit, known(field, place));
    if (field->kind == GW_NUMBER && field->other) return one(field, unit, entry(field, place));
    return read_member(field, unit, place);
}

bool gw_shown_lacks(const gw_shown *value)
{
    return value->n ? !isfinite(value->x[0]) : !value->text;
}

double gw_shown_out(const gw_field *field, const gw_shown *value, int component)
{
    double x = gw_unit_out(value->unit, value->x[component]);
    return field->flags & GW_AS_ASKED ? round(x * 1e6) / 1e6 : x;
}

const char *gw_component_name(const gw_field *field, int component)
{
    static const char *const ROAD[] = { "x", "y", "z" }, *const BUSH[] = { "e1", "e2", "e3" },
                             *const BAND[] = { "nominal", "mean", "sd", "low", "median", "high" },
                             *const FITTED[] = { "value", "within" }, *const SIDES[] = { "minus", "plus" },
                             *const ENDS[] = { "low", "high" };
    if (field->kind == GW_BAND) return BAND[component];
    if (field->kind == GW_FITTED) return FITTED[component];
    if (field->flags & GW_MINUS_PLUS) return SIDES[component];
    if (field->flags & GW_LOW_HIGH) return ENDS[component];
    if (field->kind == GW_PAIR || field->flags & GW_BUSH_AXES) return BUSH[component];
    return field->kind == GW_THREE ? ROAD[component] : "";
}

bool gw_field_may_be_absent(const gw_field *field)
{
    return (field->enter || field->flags & (GW_ONLY_IF | GW_BY_POINTER)) && !(field->flags & GW_ALWAYS);
}

/* What a bool tells to be there: the struct that the place is about, or a member beside the bool. */
static const void *if_set(const gw_field *field, const gw_place *up)
{
    if (!*(const bool *)member(field, up)) return NULL;
    return field->size ? holder(field, up) + field->list : up->it;
}

static const void *inside(const gw_field *field, const gw_place *up)
{
    const gw_place at = asked(field, up);
    if (field->enter) return field->enter(&at);
    if (!field->type) return up->it;
    if (field->flags & GW_ONLY_IF) return if_set(field, up);
    const void *inner = member(field, up);
    return field->flags & GW_BY_POINTER ? *(const void *const *)inner : inner;
}

bool gw_place_enter(const gw_field *field, const gw_place *up, gw_place *out)
{
    bool part = field->kind == GW_PART;
    *out = (gw_place){ up->c, up, field->record, up->it, part ? up->index : 0, 0 };
    if (!up->it) return false;
    out->it = inside(field, up);
    return out->it != NULL;
}

int gw_place_count(const gw_field *field, const gw_place *up)
{
    const gw_place at = asked(field, up);
    if (field->count) return field->count(&at);
    return field->type ? *(const int *)member(field, up) : (int)field->constant;
}

bool gw_place_element(const gw_field *field, const gw_place *up, int index, gw_place *out)
{
    *out = (gw_place){ up->c, up, field->record, NULL, index, field->which };
    if (field->enter) {
        out->it = field->enter(out);
        return out->it != NULL;
    }
    const char *list = holder(field, up) + field->list;
    if (!(field->flags & GW_INLINE)) list = *(const char *const *)list;
    out->it = list + (size_t)index * field->size;
    return true;
}

static const void *pointer_to(const gw_field *field, const gw_place *place)
{
    return *(const void *const *)(const void *)(holder(field, place) + field->list);
}

void gw_point_out(const gw_field *field, const gw_place *place, int index, double point[2])
{
    gw_place at = asked(field, place);
    at.index = index;
    field->fill(&at, point);
    point[0] = gw_unit_out(field->unit_of(place), point[0]);
}

double gw_series_at(const gw_field *field, const gw_place *place, int index)
{
    return ((const double *)pointer_to(field, place))[index];
}

const char *gw_line_at(const gw_field *field, const gw_place *place, int index)
{
    if (field->text) {
        gw_place at = asked(field, place);
        at.index = index;
        return field->text(&at);
    }
    return ((const char *const *)pointer_to(field, place))[index];
}

const char *gw_name_at(const gw_field *field, const gw_place *place, int index)
{
    gw_place at = asked(field, place);
    at.index = index;
    return field->name(&at);
}

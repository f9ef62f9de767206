/* SPDX-License-Identifier: MIT */
#include "casefile/shelf.h"

#include "base/buf.h"
#include "casefile/document.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static const char FORMAT[] = "giveway-shelf-1";
const char *const GW_SHELF_KEYS[] = { "format", "title", "bushes", "shop", "jobs", NULL };
enum { MOST = 16 };

bool gw_is_shelf(const gw_node *top)
{
    gw_node format = gw_node_key(top, "format");
    return cJSON_IsString(format.json) && strcmp(format.json->valuestring, FORMAT) == 0;
}

const char *gw_shelf_of(const gw_shelf *shelf, const cJSON *json)
{
    for (int i = 0; i < shelf->n; i++)
        if (shelf->part[i].json == json) return shelf->part[i].file;
    return NULL;
}

/* What the functions here share: the case, and the shelf that is being taken. */
typedef struct taking {
    gw_case_reader *cr;
    cJSON *root;  /* of the case */
    gw_reader rd; /* of the shelf */
    cJSON *shelf;
} taking;

static void note_overridden(taking *t, const char *what, const char *name, const char *by)
{
    gw_buf text = { 0 };
    gw_case *c = t->cr->c;
    gw_buf_fmt(&text, "%s.%s of %s: %s goes before it", what, name, t->rd.file, by);
    const char **more = gw_reader_make(&t->cr->rd, c->n_overridden + 1, sizeof *more);
    if (more) {
        if (c->n_overridden) memcpy(more, c->overridden, (size_t)c->n_overridden * sizeof *more);
        if (text.failed) t->cr->rd.faults->out_of_memory = true;
        more[c->n_overridden++] = gw_keep(&t->cr->rd, gw_buf_str(&text));
        c->overridden = more;
    }
    gw_buf_free(&text);
}

static void note_part(taking *t, const cJSON *json)
{
    gw_shelf *shelf = &t->cr->shelf;
    if (shelf->n >= shelf->capacity) {
        int capacity = 2 * shelf->capacity + 32;
        gw_shelf_part *part = gw_reader_make(&t->cr->rd, capacity, sizeof *part);
        if (!part) return; /* noted */
        if (shelf->n) memcpy(part, shelf->part, (size_t)shelf->n * sizeof *part);
        shelf->part = part;
        shelf->capacity = capacity;
    }
    shelf->part[shelf->n++] = (gw_shelf_part){ json, t->rd.file };
}

static cJSON *object_of(taking *t, const char *key)
{
    cJSON *there = cJSON_GetObjectItemCaseSensitive(t->root, key);
    if (!there && !(there = cJSON_AddObjectToObject(t->root, key))) t->cr->rd.faults->out_of_memory = true;
    return cJSON_IsObject(there) ? there : NULL;
}

/* One member of the shelf into the case, unless the case has its own; an earlier shelf's gives way. */
static void take_member(taking *t, const char *section, cJSON *into, cJSON *from, cJSON *member)
{
    cJSON *there = cJSON_GetObjectItemCaseSensitive(into, member->string);
    const char *of = there ? gw_shelf_of(&t->cr->shelf, there) : NULL;
    if (there && !of) {
        note_overridden(t, section, member->string, "the case's own");
        return;
    }
    if (there) {
        taking earlier = *t;
        earlier.rd.file = of;
        note_overridden(&earlier, section, member->string, t->rd.file);
        cJSON_Delete(cJSON_DetachItemViaPointer(into, there));
    }
    cJSON_DetachItemViaPointer(from, member);
    if (cJSON_AddItemToObject(into, member->string, member)) {
        note_part(t, member);
        return;
    }
    cJSON_Delete(member); /* it is nobody's else, and the case would lack a part without a word */
    t->cr->rd.faults->out_of_memory = true;
}

/* The key of a detached item is its own, so it may be handed on as the key of where it goes. */
static void take_section(taking *t, const char *section)
{
    cJSON *from = cJSON_GetObjectItemCaseSensitive(t->shelf, section), *into;
    if (!cJSON_IsObject(from) || !(into = object_of(t, section))) return;
    for (cJSON *e = from->child, *next; e; e = next) {
        next = e->next;
        if (!gw_is_comment(e->string)) take_member(t, section, into, from, e);
    }
}

static void take_jobs(taking *t)
{
    cJSON *from = cJSON_GetObjectItemCaseSensitive(t->shelf, "jobs");
    if (!cJSON_IsArray(from)) return;
    cJSON *into = cJSON_GetObjectItemCaseSensitive(t->root, "jobs");
    if (!into && !(into = cJSON_AddArrayToObject(t->root, "jobs"))) t->cr->rd.faults->out_of_memory = true;
    for (cJSON *e = from->child, *next; e && cJSON_IsArray(into); e = next) {
        next = e->next;
        cJSON_DetachItemViaPointer(from, e);
        cJSON_AddItemToArray(into, e);
        note_part(t, e);
    }
}

static void check_shelf(taking *t, const gw_node *top)
{
    static const char *const FORMATS[] = { FORMAT };
    int format;
    gw_node section;
    gw_shop shop = { 0 };
    gw_check_keys(&t->rd, top, NULL, 0, GW_SHELF_KEYS);
    gw_get_choice(&t->rd, top, "format", GW_REQUIRED, FORMATS, 1, &format);
    gw_get_object(&t->rd, top, "bushes", GW_OPTIONAL, &section);
    gw_get_list(&t->rd, top, "jobs", GW_OPTIONAL, &section);
    gw_read_shop(&t->rd, top, &shop);
}

static void take_one(gw_case_reader *cr, cJSON *root, const char *name)
{
    taking t = { .cr = cr,
                 .root = root,
                 .rd = { gw_beside(&cr->rd, name), cr->rd.faults, cr->rd.arena, false } };
    char *text = NULL;
    size_t size = 0;
    if (!t.rd.file || gw_read_file(&t.rd, t.rd.file, &text, &size) != GW_OK) return;
    if (gw_parse(&t.rd, text, size, &t.shelf) == GW_OK) {
        const gw_node top = { t.shelf, NULL, NULL, 0 };
        if (gw_is_object(&t.rd, &top, "an object { } at the top of a shelf")) {
            check_shelf(&t, &top);
            take_section(&t, "bushes");
            take_section(&t, "shop");
            take_jobs(&t);
        }
    }
    cJSON_Delete(t.shelf);
    free(text);
}

void gw_take_shelves(gw_case_reader *cr, cJSON *root)
{
    gw_node list;
    int index = 0;
    if (!gw_get_list(&cr->rd, &cr->top, "shelf", GW_OPTIONAL, &list) ||
        !gw_is_within(&cr->rd, &list, MOST, "shelves"))
        return;
    for (const cJSON *e = gw_first(&list); e; e = gw_node_next(e)) {
        gw_node at = gw_node_entry(&list, e, index++);
        if (cJSON_IsString(e) && e->valuestring[0])
            take_one(cr, root, e->valuestring);
        else
            gw_fault(&cr->rd, &at, "expected the name of a file beside the case");
    }
}

/* SPDX-License-Identifier: MIT */
#include "giveway/materials.h"

#include "base/buf.h"
#include "casefile/document.h"
#include "casefile/material_file.h"

#include <dirent.h>
#include <errno.h>
#include <stdlib.h>
#include <string.h>

static gw_status no_memory(gw_faults *faults)
{
    faults->out_of_memory = true;
    return GW_E_NOMEM;
}

static gw_status put(const gw_reader *rd, gw_material_set *set, const gw_material *m)
{
    for (int i = 0; i < set->n; i++)
        if (strcmp(set->items[i].name, m->name) == 0) {
            set->items[i] = *m;
            return GW_OK;
        }
    if (set->n >= GW_MAX_MATERIALS) {
        gw_fault(rd, NULL, "more than %d materials: take some away", GW_MAX_MATERIALS);
        return GW_E_SCHEMA;
    }
    if (set->n == set->capacity) {
        int capacity = set->capacity ? 2 * set->capacity : 32;
        gw_material *items = realloc(set->items, (size_t)capacity * sizeof *items);
        if (!items) return no_memory(rd->faults);
        set->items = items;
        set->capacity = capacity;
    }
    set->items[set->n++] = *m;
    return GW_OK;
}

gw_status gw_materials_add_text(gw_material_set *set, const char *file, const char *text, size_t size,
                                gw_faults *faults)
{
    gw_arena scratch = { 0 };
    gw_reader rd = { file, faults, &scratch, false };
    gw_material m;
    cJSON *root = NULL;
    const int before = gw_faults_count(faults);
    gw_status st = gw_parse(&rd, text, size, &root);
    if (st == GW_OK) {
        gw_node top = { root, NULL, NULL, 0 };
        bool ok = gw_read_material(&rd, &top, &m) && gw_faults_count(faults) == before;
        st = ok ? put(&rd, set, &m) : faults->out_of_memory ? GW_E_NOMEM : GW_E_SCHEMA;
    }
    cJSON_Delete(root);
    gw_arena_free(&scratch);
    return st;
}

gw_status gw_materials_add_file(gw_material_set *set, const char *path, gw_faults *faults)
{
    gw_reader rd = { path, faults, NULL, false };
    char *text = NULL;
    size_t size = 0;
    gw_status st = gw_read_file(&rd, path, &text, &size);
    if (st == GW_OK) st = gw_materials_add_text(set, path, text, size, faults);
    free(text);
    return st;
}

gw_status gw_materials_builtin(gw_material_set *set, gw_faults *faults)
{
    gw_status first = GW_OK;
    for (const gw_embedded_file *f = gw_embedded_materials; f->name; f++) {
        gw_status st = gw_materials_add_text(set, f->name, (const char *)f->bytes, f->size, faults);
        if (first == GW_OK) first = st;
    }
    return first;
}

/* Names of a directory that end in .json, sorted, so that the order never depends on the file system. */
typedef struct listing {
    char **names;
    size_t n, capacity;
} listing;

static bool is_json(const char *name)
{
    size_t n = strlen(name);
    return name[0] != '.' && n > 5 && strcmp(name + n - 5, ".json") == 0;
}

static bool add_name(listing *list, const char *name)
{
    if (list->n == list->capacity) {
        size_t capacity = list->capacity ? 2 * list->capacity : 32;
        char **names = realloc(list->names, capacity * sizeof *names);
        if (!names) return false;
        list->names = names;
        list->capacity = capacity;
    }
    return (list->names[list->n] = strdup(name)) != NULL && ++list->n;
}

static void free_listing(listing *list)
{
    for (size_t i = 0; i < list->n; i++) free(list->names[i]);
    free(list->names);
}

static int by_text(const void *a, const void *b)
{
    return strcmp(*(char *const *)a, *(char *const *)b);
}

static gw_status list_directory(const gw_reader *rd, const char *dir, listing *list)
{
    gw_status st = GW_OK;
    struct dirent *entry;
    DIR *d = opendir(dir);
    if (!d) {
        gw_fault(rd, NULL, "cannot be read: %s", strerror(errno));
        return GW_E_IO;
    }
    while (st == GW_OK && (entry = readdir(d)))
        if (is_json(entry->d_name) && !add_name(list, entry->d_name)) st = no_memory(rd->faults);
    closedir(d);
    if (list->n) qsort(list->names, list->n, sizeof *list->names, by_text);
    return st;
}

gw_status gw_materials_add_dir(gw_material_set *set, const char *dir, gw_faults *faults)
{
    gw_reader rd = { dir, faults, NULL, false };
    listing list = { 0 };
    gw_status first = list_directory(&rd, dir, &list);
    for (size_t i = 0; first != GW_E_IO && first != GW_E_NOMEM && i < list.n; i++) {
        gw_buf path = { 0 };
        gw_buf_fmt(&path, "%s/%s", dir, list.names[i]);
        gw_status st =
            path.failed ? no_memory(faults) : gw_materials_add_file(set, gw_buf_str(&path), faults);
        gw_buf_free(&path);
        if (first == GW_OK) first = st;
        if (st == GW_E_NOMEM) break;
    }
    free_listing(&list);
    return first;
}

void gw_materials_free(gw_material_set *set)
{
    free(set->items);
    *set = (gw_material_set){ 0 };
}

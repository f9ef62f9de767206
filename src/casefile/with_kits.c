/* SPDX-License-Identifier: MIT */
/* A case's file with other kits. */
#include "base/buf.h"
#include "giveway/casefile.h"

#include <cjson/cJSON.h>
#include <stdlib.h>
#include <string.h>

/* The name that a bush written in place in a kit goes by; see gw_read_bush_ref. */
static bool is_called(const char *kit, const char *joint, const char *name)
{
    size_t n = strlen(kit);
    return strncmp(name, kit, n) == 0 && name[n] == '.' && strcmp(name + n + 1, joint) == 0;
}

/* A bush that a kit of the file describes in place; NULL: it stands under "bushes", or in a joint. */
static const cJSON *in_place(const cJSON *document, const char *name)
{
    const cJSON *kit;
    cJSON_ArrayForEach(kit, cJSON_GetObjectItemCaseSensitive(document, "kits"))
    {
        const cJSON *word = cJSON_GetObjectItemCaseSensitive(kit, "name"), *fit;
        cJSON_ArrayForEach(fit,
                           cJSON_GetObjectItemCaseSensitive(
                               kit, "fits")) if (cJSON_IsObject(fit) && cJSON_IsString(word) &&
                                                 is_called(word->valuestring, fit->string, name)) return fit;
    }
    return NULL;
}

/* Kits to come may only name bushes, so one from a kit in place moves to the others. */
static bool settle_bush(cJSON *document, const cJSON *as_read, const char *name)
{
    cJSON *bushes = cJSON_GetObjectItemCaseSensitive(document, "bushes");
    const cJSON *there = in_place(as_read, name);
    if (!there || cJSON_GetObjectItemCaseSensitive(bushes, name)) return true;
    if (!bushes && !(bushes = cJSON_AddObjectToObject(document, "bushes"))) return false;
    cJSON *copy = cJSON_Duplicate(there, true);
    return copy && cJSON_AddItemToObject(bushes, name, copy);
}

/* Every joint whose bush is not the one that it is written with. */
static bool put_fits(cJSON *document, const gw_case *c, const gw_kit *kit, cJSON *fits)
{
    for (int a = 0; a < GW_AXLES; a++)
        for (int j = 0; c->has_corner[a] && j < c->corners[a].n_joints; j++) {
            const gw_joint *joint = &c->pairs[a].joints[j];
            gw_buf key = { 0 };
            if (kit->fits[a][j] == joint->bush || joint->twin < j) continue;
            const char *bush = c->bushes[kit->fits[a][j]].name;
            gw_buf_fmt(&key, "%s.%s", gw_axle_name((gw_axle)a), gw_joint_as_written(&c->corners[a], j));
            bool ok = !key.failed && settle_bush(document, c->document, bush) &&
                      cJSON_AddStringToObject(fits, gw_buf_str(&key), bush);
            gw_buf_free(&key);
            if (!ok) return false;
        }
    return true;
}

static bool put_kit(cJSON *document, const gw_case *c, const gw_kit *kit, cJSON *list)
{
    cJSON *entry = cJSON_CreateObject(), *fits;
    if (!entry || !cJSON_AddItemToArray(list, entry)) {
        cJSON_Delete(entry);
        return false;
    }
    return cJSON_AddStringToObject(entry, "name", kit->name) &&
           (kit->label == kit->name || cJSON_AddStringToObject(entry, "label", kit->label)) &&
           (fits = cJSON_AddObjectToObject(entry, "fits")) && put_fits(document, c, kit, fits);
}

/* A band on what another kit had has nothing to stand on. */
static void drop_bands(cJSON *document)
{
    cJSON *list = cJSON_GetObjectItemCaseSensitive(document, "uncertain");
    for (cJSON *e = list ? list->child : NULL, *next; e; e = next) {
        const cJSON *of = cJSON_GetObjectItemCaseSensitive(e, "of");
        next = e->next;
        if (cJSON_IsString(of) && strncmp(of->valuestring, "kits[", 5) == 0)
            cJSON_Delete(cJSON_DetachItemViaPointer(list, e));
    }
}

static bool rewrite(cJSON *document, const gw_case *c, const gw_kit *const *kits, int n)
{
    cJSON *list = cJSON_CreateArray();
    bool ok = list != NULL;
    for (int k = 0; k < n && ok; k++) ok = put_kit(document, c, kits[k], list);
    cJSON_DeleteItemFromObjectCaseSensitive(document, "shelf"); /* its parts are in the case by now */
    cJSON_DeleteItemFromObjectCaseSensitive(document, "choose");
    cJSON_DeleteItemFromObjectCaseSensitive(document, "kits");
    drop_bands(document);
    if (ok && cJSON_AddItemToObject(document, "kits", list)) return true;
    cJSON_Delete(list);
    return false;
}

gw_status gw_case_with_kits(const gw_case *c, const gw_kit *const *kits, int n, char **out, gw_error *err)
{
    cJSON *document = cJSON_Duplicate(c->document, true);
    char *text = document && rewrite(document, c, kits, n) ? cJSON_Print(document) : NULL;
    cJSON_Delete(document);
    if (!text) return gw_fail(err, GW_E_NOMEM, "out of memory for the case");
    *out = text;
    return GW_OK;
}

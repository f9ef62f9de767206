/* SPDX-License-Identifier: MIT */
#include "casefile/node.h"

#include "base/buf.h"
#include "casefile/path.h"

#include <string.h>

bool gw_is_comment(const char *key)
{
    return key && key[0] == '/' && key[1] == '/';
}

/* cJSON's own lookup takes "Name" for "name" unless told otherwise; ours also refuses what is no object. */
gw_node gw_node_key(const gw_node *up, const char *key)
{
    const cJSON *json = cJSON_IsObject(up->json) ? cJSON_GetObjectItemCaseSensitive(up->json, key) : NULL;
    return (gw_node){ json, up, key, 0 };
}

gw_node gw_node_entry(const gw_node *up, const cJSON *entry, int index)
{
    return (gw_node){ entry, up, cJSON_IsObject(up->json) ? entry->string : NULL, index };
}

static const cJSON *skip_comments(const cJSON *entry)
{
    while (entry && gw_is_comment(entry->string)) entry = entry->next;
    return entry;
}

const cJSON *gw_first(const gw_node *node)
{
    return node->json ? skip_comments(node->json->child) : NULL;
}

const cJSON *gw_node_next(const cJSON *entry)
{
    return skip_comments(entry->next);
}

int gw_node_count(const gw_node *node)
{
    int n = 0;
    for (const cJSON *e = gw_first(node); e; e = gw_node_next(e)) n++;
    return n;
}

static bool is_plain(const char *key)
{
    for (const char *c = key; *c; c++) {
        bool word = (*c >= 'a' && *c <= 'z') || (*c >= 'A' && *c <= 'Z') || (*c >= '0' && *c <= '9');
        if (!word && *c != '_' && *c != '-') return false;
    }
    return key[0] != '\0' && strlen(key) <= 60;
}

/* "corners.front.joints[3]"; a key with dots or spaces in it is written ["a.b"]. */
void gw_path_write(gw_buf *text, const gw_node *node)
{
    if (!node->up) return;
    gw_path_write(text, node->up);
    if (!node->key) {
        gw_buf_fmt(text, "[%d]", node->index);
    } else if (is_plain(node->key)) {
        if (node->up->up) gw_buf_add(text, ".");
        gw_buf_add(text, node->key);
    } else {
        gw_buf_add(text, "[");
        gw_buf_quote(text, node->key);
        gw_buf_add(text, "]");
    }
}

static void add_line(const gw_reader *rd, const gw_node *at, bool warning, const char *fmt, va_list args)
    __attribute__((format(printf, 4, 0)));

static void add_line(const gw_reader *rd, const gw_node *at, bool warning, const char *fmt, va_list args)
{
    gw_buf text = { 0 };
    gw_buf_fmt(&text, "%s: ", rd->file);
    if (at && at->up) {
        gw_path_write(&text, at);
        gw_buf_add(&text, ": ");
    }
    gw_buf_vfmt(&text, fmt, args);
    if (text.failed)
        rd->faults->out_of_memory = true;
    else
        gw_faults_add(rd->faults, warning, gw_buf_str(&text));
    gw_buf_free(&text);
}

void gw_fault(const gw_reader *rd, const gw_node *at, const char *fmt, ...)
{
    va_list args;
    va_start(args, fmt);
    add_line(rd, at, false, fmt, args);
    va_end(args);
}

void gw_warn(const gw_reader *rd, const gw_node *at, const char *fmt, ...)
{
    va_list args;
    va_start(args, fmt);
    add_line(rd, at, true, fmt, args);
    va_end(args);
}

const char *gw_keep(const gw_reader *rd, const char *text)
{
    const char *copy = gw_arena_strdup(rd->arena, text);
    if (!copy) rd->faults->out_of_memory = true;
    return copy;
}

void *gw_reader_make(const gw_reader *rd, int count, size_t size)
{
    void *p = gw_arena_alloc(rd->arena, (size_t)count, size);
    if (!p) rd->faults->out_of_memory = true;
    return p;
}

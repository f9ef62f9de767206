/* SPDX-License-Identifier: MIT */
#include "casefile/document.h"

#include "casefile/syntax.h"
#include "giveway/casefile.h"

#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static gw_status io_fault(const gw_reader *rd, const char *why)
{
    gw_fault(rd, NULL, "cannot be read: %s", why);
    return GW_E_IO;
}

/* errno says why; a lack of memory is no fault of the file. */
static gw_status read_fault(const gw_reader *rd)
{
    if (errno != ENOMEM) return io_fault(rd, strerror(errno));
    rd->faults->out_of_memory = true;
    return GW_E_NOMEM;
}

static gw_status too_large(const gw_reader *rd, size_t most, const char *what)
{
    gw_fault(rd, NULL, "cannot be read: it is larger than %zu MiB, which no %s needs", most >> 20, what);
    return GW_E_IO;
}

gw_status gw_read_file(const gw_reader *rd, const char *path, char **text, size_t *size)
{
    return gw_read_file_of(rd, path, GW_MAX_FILE_BYTES, "case or material", text, size);
}

gw_status gw_read_file_of(const gw_reader *rd, const char *path, size_t most, const char *what, char **text,
                          size_t *size)
{
    gw_status st = GW_OK;
    size_t n = 0, capacity = 1 << 14;
    char *buffer = NULL;
    FILE *file = fopen(path, "rb");
    if (!file) return read_fault(rd);
    for (;;) {
        char *larger = realloc(buffer, capacity + 1);
        if (!larger) {
            rd->faults->out_of_memory = true;
            st = GW_E_NOMEM;
            goto done;
        }
        buffer = larger;
        n += fread(buffer + n, 1, capacity - n, file);
        if (n < capacity || n > most) break;
        capacity *= 2;
    }
    if (ferror(file))
        st = read_fault(rd);
    else if (n > most)
        st = too_large(rd, most, what);
done:
    fclose(file);
    if (st != GW_OK) {
        free(buffer);
        return st;
    }
    buffer[n] = '\0';
    *text = buffer;
    *size = n;
    return GW_OK;
}

static int by_name(const void *a, const void *b)
{
    return strcmp(*(const char *const *)a, *(const char *const *)b);
}

/* The parser keeps a key that is given twice as two siblings and finds only the first. */
static void check_single(const gw_reader *rd, const gw_node *node)
{
    int n = gw_node_count(node), i = 0;
    if (n < 2) return;
    const char **keys = malloc((size_t)n * sizeof *keys);
    if (!keys) {
        rd->faults->out_of_memory = true;
        return;
    }
    for (const cJSON *e = gw_first(node); e; e = gw_node_next(e)) keys[i++] = e->string;
    qsort(keys, (size_t)n, sizeof *keys, by_name);
    for (i = 1; i < n; i++) {
        if (strcmp(keys[i - 1], keys[i]) != 0 || (i > 1 && strcmp(keys[i - 2], keys[i]) == 0)) continue;
        gw_node twice = { NULL, node, keys[i], 0 };
        gw_fault(rd, &twice, "this key is given more than once in the same object; keep one");
    }
    free(keys);
}

static void check_keys_single(const gw_reader *rd, const gw_node *node)
{
    if (cJSON_IsObject(node->json)) check_single(rd, node);
    int index = 0;
    for (const cJSON *e = gw_first(node); e; e = gw_node_next(e)) {
        gw_node entry = gw_node_entry(node, e, index++);
        if (e->child) check_keys_single(rd, &entry);
    }
}

/* Some editors put a byte order mark before UTF-8; RFC 8259 section 8.1 lets a reader ignore it. */
static void skip_mark(const char **text, size_t *size)
{
    if (*size < 3 || memcmp(*text, "\xEF\xBB\xBF", 3) != 0) return;
    *text += 3;
    *size -= 3;
}

gw_status gw_parse(const gw_reader *rd, const char *text, size_t size, cJSON **root)
{
    gw_syntax_error error;
    skip_mark(&text, &size);
    if (size > GW_MAX_FILE_BYTES) return too_large(rd, GW_MAX_FILE_BYTES, "case or material");
    if (!gw_json_syntax(text, size, GW_MAX_NESTING, &error)) {
        gw_fault(rd, NULL, "line %zu, column %zu: %s", error.line, error.column, error.expected);
        return GW_E_PARSE;
    }
    /* The grammar has been checked, so that the parser can only fail for want of memory. */
    cJSON *tree = cJSON_ParseWithLengthOpts(text, size, NULL, 0);
    if (!tree) {
        rd->faults->out_of_memory = true;
        return GW_E_NOMEM;
    }
    gw_node top = { tree, NULL, NULL, 0 };
    check_keys_single(rd, &top);
    *root = tree;
    return GW_OK;
}

char *gw_beside(const gw_reader *rd, const char *name)
{
    const char *slash = strrchr(rd->file, '/');
    size_t folder = slash && name[0] != '/' ? (size_t)(slash - rd->file) + 1 : 0;
    size_t size = folder + strlen(name) + 1;
    char *path = gw_reader_make(rd, 1, size);
    if (path) snprintf(path, size, "%.*s%s", (int)folder, rd->file, name);
    return path;
}

/* SPDX-License-Identifier: MIT */
/**
 * A place in a file. Nodes live on the stack of the functions that descend into the file, each with a
 * pointer to the one above, so that a path is only put together when there is a fault to report.
 */
#ifndef GW_CASEFILE_NODE_H
#define GW_CASEFILE_NODE_H

#include "giveway/faults.h"

#include <cjson/cJSON.h>

/** What every reading function is handed. */
typedef struct gw_reader {
    const char *file;  /**< as the user named it         */
    gw_faults *faults; /**< where faults go              */
    gw_arena *arena;   /**< what is read and kept        */
    bool again;        /**< keys and names were looked at when the file was read */
} gw_reader;

typedef struct gw_node {
    const cJSON *json;        /**< NULL: the key is missing     */
    const struct gw_node *up; /**< NULL: the top level          */
    const char *key;          /**< NULL: an entry of a list     */
    int index;                /**< of an entry                  */
} gw_node;

/** The value under `key` of an object; its json is NULL where there is none. */
gw_node gw_node_key(const gw_node *up, const char *key);

/** Entry `index` of a list, or (key set by its name) a member of an object. */
gw_node gw_node_entry(const gw_node *up, const cJSON *entry, int index);

/** First and following member or entry; comments are stepped over. NULL at the end, and for NULL. */
const cJSON *gw_first(const gw_node *node);
const cJSON *gw_node_next(const cJSON *entry);
int gw_node_count(const gw_node *node);

/** True where `key` marks a comment. NULL is allowed. */
bool gw_is_comment(const char *key);

/** Adds "FILE: PATH: text" to the faults (warnings). */
void gw_fault(const gw_reader *rd, const gw_node *at, const char *fmt, ...)
    __attribute__((format(printf, 3, 4)));
void gw_warn(const gw_reader *rd, const gw_node *at, const char *fmt, ...)
    __attribute__((format(printf, 3, 4)));

/** A copy of `text` in the reader's arena; on failure NULL, noted in the faults. */
const char *gw_keep(const gw_reader *rd, const char *text);

/** Zeroed memory in the reader's arena; on failure NULL, noted in the faults. */
void *gw_reader_make(const gw_reader *rd, int count, size_t size);

#endif

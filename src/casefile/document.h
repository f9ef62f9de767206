/* SPDX-License-Identifier: MIT */
/** From a file to a tree of JSON that is known to be sound in form: size, syntax, depth, single keys. */
#ifndef GW_CASEFILE_DOCUMENT_H
#define GW_CASEFILE_DOCUMENT_H

#include "casefile/node.h"
#include "giveway/status.h"

/**
 * Reads a whole file of at most GW_MAX_FILE_BYTES.
 * @param[out] text  on GW_OK owned by the caller (free); `size` bytes and a closing zero.
 */
gw_status gw_read_file(const gw_reader *rd, const char *path, char **text, size_t *size);
/** The same with a limit of its own; `what` no file of the kind needs: "case or material". */
gw_status gw_read_file_of(const gw_reader *rd, const char *path, size_t most, const char *what, char **text,
                          size_t *size);

/**
 * Parses text. Keys given twice are faults but not a failure, so that reading goes on.
 * @param[out] root  on GW_OK owned by the caller (cJSON_Delete).
 */
gw_status gw_parse(const gw_reader *rd, const char *text, size_t size, cJSON **root);

/** The path of a file that lies beside rd->file, unless `name` begins at the root; NULL: no memory, noted. */
char *gw_beside(const gw_reader *rd, const char *name);

#endif

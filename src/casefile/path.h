/* SPDX-License-Identifier: MIT */
/** A path as messages write it, followed into a file: `corners.front.joints[3].bush`, `bushes["a.b"]`. */
#ifndef GW_CASEFILE_PATH_H
#define GW_CASEFILE_PATH_H

#include "base/buf.h"
#include "casefile/node.h"

enum { GW_MAX_STEPS = 33 };

/** A place in the file and the places above it; node[0] is the top. */
typedef struct gw_place_path {
    int n;                       /**< steps below the top              */
    gw_node node[GW_MAX_STEPS];  /**< node[n] is the place             */
    char key[GW_MAX_STEPS][128]; /**< of each step that is a key       */
} gw_place_path;

/**
 * Follows `path` from the top. A fault at `at` says where it leads astray. The last key may be one of
 * `optional`, which may be missing in the file: its node then has no json.
 *
 * @param optional  true where a key that is missing in an object is allowed; may be NULL.
 */
bool gw_follow_path(const gw_reader *rd, const gw_node *at, const gw_node *top, const char *path,
                    bool (*optional)(const gw_node *holder, const char *key), gw_place_path *out);

/** The path of a node, as messages write it. */
void gw_path_write(gw_buf *text, const gw_node *node);

#endif

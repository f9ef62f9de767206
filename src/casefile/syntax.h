/* SPDX-License-Identifier: MIT */
/** Is a text JSON at all? By the grammar of RFC 8259, without exceptions. */
#ifndef GW_CASEFILE_SYNTAX_H
#define GW_CASEFILE_SYNTAX_H

#include <stdbool.h>
#include <stddef.h>

typedef struct gw_syntax_error {
    const char *expected; /**< what is wrong, constant text   */
    size_t at;            /**< offset in bytes                */
    size_t line, column;  /**< from 1; columns count characters */
} gw_syntax_error;

/**
 * Checks grammar, UTF-8 and depth before any tree is built, because the parser that builds it is more
 * lenient than the standard (01, line breaks in a text, trailing bytes) and recurses deeper.
 *
 * @param[out] error  written only when false is returned.
 * @return true where `text` is one JSON value nested at most `max_depth` deep.
 */
bool gw_json_syntax(const char *text, size_t size, int max_depth, gw_syntax_error *error);

#endif

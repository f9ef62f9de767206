/* SPDX-License-Identifier: MIT */
/** Status codes and one-line messages. Every fallible function returns a gw_status. */
#ifndef GIVEWAY_STATUS_H
#define GIVEWAY_STATUS_H

#include "giveway/api.h"

GW_API_BEGIN

/** One list, so that the enum, the texts and the documents cannot drift apart. */
#define GW_STATUS_LIST(X)                                                                                    \
    X(GW_OK, "no error")                                                                                     \
    X(GW_E_IO, "cannot read or write a file")                                                                \
    X(GW_E_PARSE, "not valid JSON")                                                                          \
    X(GW_E_SCHEMA, "a key is missing, unknown or of the wrong kind")                                         \
    X(GW_E_RANGE, "a value is not allowed")                                                                  \
    X(GW_E_MECHANISM, "the corner moves freely")                                                             \
    X(GW_E_NUMERIC, "no equilibrium was found")                                                              \
    X(GW_E_USAGE, "the command line is wrong")                                                               \
    X(GW_E_NOMEM, "out of memory")

#define GW_AS_ENUM(name, text) name,
typedef enum gw_status { GW_STATUS_LIST(GW_AS_ENUM) GW_STATUS_COUNT } gw_status;
#undef GW_AS_ENUM

enum { GW_MESSAGE_MAX = 512 };

/** A message owned by the caller; `{0}` is the empty one. Pass NULL where no text is wanted. */
typedef struct gw_error {
    gw_status code;
    char msg[GW_MESSAGE_MAX];
} gw_error;

/**
 * Store a one-line message in `err` (unless it is NULL) and return `code`.
 * Line breaks in the text become spaces; what is too long is cut and ends in "...".
 */
gw_status gw_fail(gw_error *err, gw_status code, const char *fmt, ...) __attribute__((format(printf, 3, 4)));

/** The general text of a code; never NULL. */
const char *gw_status_text(gw_status code);

GW_API_END

#endif

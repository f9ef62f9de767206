/* SPDX-License-Identifier: MIT */
#include "giveway/status.h"

#include <stdarg.h>
#include <stdio.h>
#include <string.h>

gw_status gw_fail(gw_error *err, gw_status code, const char *fmt, ...)
{
    if (!err) return code;
    err->code = code;
    va_list args;
    va_start(args, fmt);
    int n = vsnprintf(err->msg, sizeof err->msg, fmt, args);
    va_end(args);
    if (n >= (int)sizeof err->msg) memcpy(err->msg + sizeof err->msg - 4, "...", 4);
    for (char *c = err->msg; *c; c++)
        if (*c == '\n' || *c == '\r') *c = ' ';
    return code;
}

const char *gw_status_text(gw_status code)
{
#define GW_AS_TEXT(name, text) text,
    static const char *const TEXTS[] = { GW_STATUS_LIST(GW_AS_TEXT) };
#undef GW_AS_TEXT
    if ((unsigned)code >= GW_STATUS_COUNT) return "unknown status";
    return TEXTS[code];
}

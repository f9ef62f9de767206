/* SPDX-License-Identifier: MIT */
/* A warning: where, what it is, what is usual and who says so. */
#include "study/plausible_parts.h"

#include <math.h>
#include <stdarg.h>
#include <stdio.h>

enum { LINE = 1000, PATH = 400 };

void gw_doubt_say(const gw_plausible_look *d, const char *path, const char *fmt, ...)
{
    char text[LINE], line[LINE + PATH];
    va_list args;
    va_start(args, fmt);
    vsnprintf(text, sizeof text, fmt, args);
    va_end(args);
    snprintf(line, sizeof line, "%s: %s: %s", d->c->path, path, text);
    gw_faults_add(d->faults, true, line);
}

void gw_doubt_figure(const gw_plausible_look *d, const gw_usual *u)
{
    if (isnan(u->value) || (u->value >= u->low && u->value <= u->high)) return;
    gw_doubt_say(d, u->path, "%s of %.4g%s; usual is %g to %g%s (%s)", u->what,
                 u->value == 0.0 ? 0.0 : u->value, u->unit, u->low, u->high, u->unit, u->source);
}

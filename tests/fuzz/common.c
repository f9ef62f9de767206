/* SPDX-License-Identifier: MIT */
#include "fuzz/target.h"

#include <stdarg.h>
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <unistd.h>

_Noreturn void gw_fuzz_found(const char *fmt, ...)
{
    va_list args;
    va_start(args, fmt);
    fputs("FOUND: ", stderr);
    vfprintf(stderr, fmt, args);
    fputc('\n', stderr);
    va_end(args);
    abort();
}

static char path[256];

static void remove_file(void)
{
    unlink(path);
}

const char *gw_fuzz_write(const char *ending, const uint8_t *data, size_t size)
{
    const char *tmp = getenv("TMPDIR");
    if (!*path) atexit(remove_file);
    snprintf(path, sizeof path, "%s/fuzz-%ld.%s", tmp ? tmp : "/tmp", (long)getpid(), ending);
    FILE *f = fopen(path, "wb");
    bool ok = f && fwrite(data, 1, size, f) == size;
    if (!f || fclose(f) != 0 || !ok) gw_fuzz_found("cannot write %s", path);
    return path;
}

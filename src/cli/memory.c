/* SPDX-License-Identifier: MIT */
/*
 * A report touches some 30 MB, most of it for a moment. Page by page, and given back and taken anew, that was
 * a tenth of its time in the kernel. So the heap is one stretch of addresses, which is not given back before
 * the end, and Linux may put pages of 2 MB below it. Nothing depends on it: what is refused changes no
 * result.
 */
#define _DEFAULT_SOURCE
#include "cli/memory.h"

#include <stdlib.h>

#if defined(__linux__) && defined(__GLIBC__)
#include <malloc.h>
#include <stdint.h>
#include <sys/mman.h>
#include <unistd.h>

enum { STRETCH = 64 << 20, LARGE_PAGE = 2 << 20 }; /* [byte] */

void gw_memory_in_large_pages(void)
{
    mallopt(M_ARENA_MAX, 1);
    mallopt(M_TOP_PAD, STRETCH);
    mallopt(M_TRIM_THRESHOLD, 2 * STRETCH);
    mallopt(M_MMAP_THRESHOLD, STRETCH / 2); /* the most that is taken */
    char *first = malloc(1), *end = sbrk(0);
    const uintptr_t from = ((uintptr_t)first / LARGE_PAGE + 1) * LARGE_PAGE;
    if (first && (uintptr_t)end > from) madvise((void *)from, (uintptr_t)end - from, MADV_HUGEPAGE);
    free(first);
}
#else
void gw_memory_in_large_pages(void) {}
#endif

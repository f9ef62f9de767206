/* SPDX-License-Identifier: MIT */
/** An arena: many small allocations with one owner and one free. */
#ifndef GIVEWAY_ARENA_H
#define GIVEWAY_ARENA_H

#include "giveway/api.h"

#include <stddef.h>

GW_API_BEGIN

typedef struct gw_arena {
    struct gw_arena_block *head; /**< newest block; NULL when empty */
} gw_arena;

/** Zeroed memory for `count` objects of `size` bytes, aligned for any type; NULL when memory is out. */
void *gw_arena_alloc(gw_arena *arena, size_t count, size_t size);

/** A copy of `text`, which may be NULL (then NULL); NULL too when memory is out. */
char *gw_arena_strdup(gw_arena *arena, const char *text);

/** Moves all that `from` owns into `to`; `from` is then empty. What was allocated stays where it is. */
void gw_arena_absorb(gw_arena *to, gw_arena *from);

/** Frees everything and leaves the arena empty and usable. */
void gw_arena_free(gw_arena *arena);

GW_API_END

#endif

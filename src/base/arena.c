/* SPDX-License-Identifier: MIT */
#include "giveway/arena.h"

#include <stdint.h>
#include <stdlib.h>
#include <string.h>

typedef struct gw_arena_block {
    struct gw_arena_block *next;
    size_t used, size;
    max_align_t data[];
} gw_arena_block;

enum { BLOCK_BYTES = 16384 };

static gw_arena_block *new_block(size_t bytes)
{
    size_t size = bytes > BLOCK_BYTES ? bytes : BLOCK_BYTES;
    gw_arena_block *block = calloc(1, sizeof *block + size);
    if (block) block->size = size;
    return block;
}

void *gw_arena_alloc(gw_arena *arena, size_t count, size_t size)
{
    const size_t align = sizeof(max_align_t);
    if (size && count > (SIZE_MAX / 2) / size) return NULL;
    size_t bytes = (count * size + align - 1) / align * align;
    if (!bytes) bytes = align;
    if (!arena->head || arena->head->size - arena->head->used < bytes) {
        gw_arena_block *block = new_block(bytes);
        if (!block) return NULL;
        block->next = arena->head;
        arena->head = block;
    }
    void *p = (char *)arena->head->data + arena->head->used;
    arena->head->used += bytes;
    return p;
}

char *gw_arena_strdup(gw_arena *arena, const char *text)
{
    if (!text) return NULL;
    size_t n = strlen(text) + 1;
    char *copy = gw_arena_alloc(arena, n, 1);
    if (copy) memcpy(copy, text, n);
    return copy;
}

void gw_arena_absorb(gw_arena *to, gw_arena *from)
{
    gw_arena_block **end = &to->head;
    while (*end) end = &(*end)->next;
    *end = from->head;
    from->head = NULL;
}

void gw_arena_free(gw_arena *arena)
{
    while (arena->head) {
        gw_arena_block *next = arena->head->next;
        free(arena->head);
        arena->head = next;
    }
}

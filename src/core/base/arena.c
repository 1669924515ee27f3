/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  where does core's scratch memory come from?
 * Answer:    chunks from malloc, handed out in order, given back by mark and release; the only malloc of core.
 * Not here:  results that outlive the call (hs_results own their arena). */
#include "arena.h"

#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#define CHUNK_bytes ((size_t)65536)
#define ALIGN_bytes ((size_t)16)

typedef struct chunk chunk;
struct chunk {
    chunk *next;
    size_t size, used;
    /* the payload follows, aligned */
};

struct hs_arena {
    chunk *first, *current;
    size_t capacity;
};

#define HEAD_bytes ((sizeof(chunk) + ALIGN_bytes - 1) / ALIGN_bytes * ALIGN_bytes)

static chunk *
chunk_new(hs_arena *arena, size_t least)
{
    size_t size = least > CHUNK_bytes ? least : CHUNK_bytes;
    chunk *made = malloc(HEAD_bytes + size);

    if (made == NULL)
        abort();
    made->next = NULL;
    made->size = size;
    made->used = 0;
    arena->capacity += HEAD_bytes + size;
    return made;
}

hs_arena *
hs_arena_new(void)
{
    hs_arena *arena = malloc(sizeof *arena);

    if (arena == NULL)
        abort();
    arena->capacity = 0;
    arena->first = arena->current = chunk_new(arena, CHUNK_bytes);
    return arena;
}

void
hs_arena_free(hs_arena *arena)
{
    chunk *at = arena != NULL ? arena->first : NULL;

    while (at != NULL) {
        chunk *next = at->next;

        free(at);
        at = next;
    }
    free(arena);
}

void
hs_arena_reset(hs_arena *arena)
{
    arena->current = arena->first;
    arena->first->used = 0;
}

void *
hs_arena_alloc(hs_arena *arena, size_t n, size_t size)
{
    size_t bytes;
    unsigned char *at;

    if (size != 0 && n > (SIZE_MAX - HEAD_bytes - ALIGN_bytes) / size)
        abort();
    bytes = (n * size + ALIGN_bytes - 1) / ALIGN_bytes * ALIGN_bytes;
    /* Chunks behind the current one are free to use again. */
    while (arena->current->size - arena->current->used < bytes) {
        if (arena->current->next == NULL || arena->current->next->size < bytes) {
            chunk *made = chunk_new(arena, bytes);

            made->next = arena->current->next;
            arena->current->next = made;
        }
        arena->current = arena->current->next;
        arena->current->used = 0;
    }
    at = (unsigned char *)arena->current + HEAD_bytes + arena->current->used;
    arena->current->used += bytes;
    memset(at, 0, bytes);
    return at;
}

char *
hs_arena_strdup(hs_arena *arena, const char *text)
{
    size_t length;
    char *copy;

    if (text == NULL)
        return NULL;
    length = strlen(text) + 1;
    copy = hs_arena_alloc(arena, length, 1);
    memcpy(copy, text, length);
    return copy;
}

hs_mark
hs_arena_mark(hs_arena *arena)
{
    hs_mark mark = {arena->current, arena->current->used};

    return mark;
}

void
hs_arena_release(hs_arena *arena, hs_mark mark)
{
    arena->current = mark.chunk;
    arena->current->used = mark.used;
}

size_t
hs_arena_capacity(const hs_arena *arena)
{
    return arena->capacity;
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  where does core's scratch memory come from?
 * Answer:    an arena with mark and release; everything of one assessment lives and dies in it.
 * Not here:  results that outlive the call (hs_results own their arena). */
#ifndef HS_ARENA_H
#define HS_ARENA_H

#include <stddef.h>

typedef struct hs_arena hs_arena;

typedef struct {
    void *chunk;
    size_t used;
} hs_mark;

/**
 * hs_arena_new - a new empty arena; release it with hs_arena_free()
 *
 * What    memory in chunks that are kept and used again after hs_arena_reset()
 * In      none
 * Out     the arena, never NULL: like GLib the process ends when the system has no memory
 * Frame   none
 * Errors  none
 * Source  none
 */
hs_arena *hs_arena_new(void);
void hs_arena_free(hs_arena *arena);
void hs_arena_reset(hs_arena *arena);

/* n items of size bytes, zeroed, aligned for any type; n * size is checked for overflow. */
void *hs_arena_alloc(hs_arena *arena, size_t n, size_t size);
char *hs_arena_strdup(hs_arena *arena, const char *text);
hs_mark hs_arena_mark(hs_arena *arena);
void hs_arena_release(hs_arena *arena, hs_mark mark);
/* bytes ever taken from the system, for the benchmarks */
size_t hs_arena_capacity(const hs_arena *arena);

#define HS_NEW(arena, type, n) ((type *)hs_arena_alloc((arena), (size_t)(n), sizeof(type)))

#endif

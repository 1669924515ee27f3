/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  was the same asked before?
 * Answer:    two hash tables of chained entries in arenas of their own; the older one is thrown away as a whole.
 * Not here:  what is asked (body/posture_memo.c). */
#include "memo.h"

#include "arena.h"

#include <stdint.h>
#include <string.h>

#define N_CHAINS     2048 /* a power of two */
#define ENTRIES_MOST 4096 /* of one generation: about 2.5 MB */

typedef struct entry entry;
struct entry {
    entry *next;
    uint64_t hash;
    int n;
    size_t bytes;
    double *key;
    void *value;
};

typedef struct {
    hs_arena *arena;
    entry **chains;
    int n;
} generation;

struct hs_memo {
    hs_arena *own; /* this struct and the tables */
    generation now, before;
};

static generation
generation_new(hs_arena *own)
{
    return (generation){hs_arena_new(), HS_NEW(own, entry *, N_CHAINS), 0};
}

hs_memo *
hs_memo_new(void)
{
    hs_arena *own = hs_arena_new();
    hs_memo *memo = HS_NEW(own, hs_memo, 1);

    memo->own = own;
    memo->now = generation_new(own);
    memo->before = generation_new(own);
    return memo;
}

void
hs_memo_free(hs_memo *memo)
{
    if (memo == NULL)
        return;
    hs_arena_free(memo->now.arena);
    hs_arena_free(memo->before.arena);
    hs_arena_free(memo->own);
}

void
hs_memo_turn(hs_memo *memo)
{
    generation emptied;

    if (memo == NULL)
        return;
    emptied = memo->before;
    hs_arena_reset(emptied.arena);
    memset(emptied.chains, 0, N_CHAINS * sizeof(entry *));
    emptied.n = 0;
    memo->before = memo->now;
    memo->now = emptied;
}

/* Multiplication by an odd number near 2^64 / golden ratio spreads the bits (Fibonacci hashing). */
static uint64_t
hash_of(const double *number, int n)
{
    uint64_t hash = (uint64_t)n;

    for (int i = 0; i < n; i++) {
        uint64_t bits;

        memcpy(&bits, &number[i], sizeof bits);
        hash = (hash ^ bits) * UINT64_C(0x9E3779B97F4A7C15);
        hash ^= hash >> 29;
    }
    return hash;
}

static entry *
look_up(const generation *in, uint64_t hash, const double *number, int n)
{
    entry *at = in->chains[hash % N_CHAINS];

    while (at != NULL && (at->hash != hash || at->n != n ||
                          memcmp(at->key, number, (size_t)n * sizeof *number) != 0))
        at = at->next;
    return at;
}

static const entry *
put(generation *into,
    uint64_t hash,
    const double *number,
    int n,
    const void *value,
    size_t bytes)
{
    entry *made = HS_NEW(into->arena, entry, 1);
    entry **chain = &into->chains[hash % N_CHAINS];

    *made = (entry){*chain,
                    hash,
                    n,
                    bytes,
                    HS_NEW(into->arena, double, n),
                    hs_arena_alloc(into->arena, bytes, 1)};
    memcpy(made->key, number, (size_t)n * sizeof *number);
    memcpy(made->value, value, bytes);
    *chain = made;
    into->n++;
    return made;
}

const void *
hs_memo_find(hs_memo *memo, const double *number, int n)
{
    uint64_t hash;
    const entry *found;

    if (memo == NULL)
        return NULL;
    hash = hash_of(number, n);
    found = look_up(&memo->now, hash, number, n);
    if (found != NULL)
        return found->value;
    found = look_up(&memo->before, hash, number, n);
    if (found == NULL)
        return NULL;
    if (memo->now.n < ENTRIES_MOST)
        found = put(&memo->now, hash, number, n, found->value, found->bytes);
    return found->value;
}

void
hs_memo_keep(hs_memo *memo, const double *number, int n, const void *value, size_t bytes)
{
    if (memo == NULL)
        return;
    if (memo->now.n >= ENTRIES_MOST)
        hs_memo_turn(memo);
    put(&memo->now, hash_of(number, n), number, n, value, bytes);
}

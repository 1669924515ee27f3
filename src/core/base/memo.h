/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  was the same asked before?
 * Answer:    hs_memo: answers by the numbers they were worked out from, all of them compared bit by bit; what two
 *            generations did not ask for is forgotten.
 * Not here:  what is asked (body/posture_memo.c). */
#ifndef HS_MEMO_H
#define HS_MEMO_H

#include <stddef.h>

typedef struct hs_memo hs_memo;

/**
 * hs_memo_new - an empty memo; release it with hs_memo_free()
 *
 * What    two generations of entries, each of a bounded number: memory does not grow with use. One thread at a time
 * In      none
 * Out     the memo, never NULL
 * Frame   none
 * Errors  none
 * Source  none
 */
hs_memo *hs_memo_new(void);
void hs_memo_free(hs_memo *memo);

/* A new generation begins: what is not asked for until the next one is forgotten then. */
void hs_memo_turn(hs_memo *memo);

/* What was kept under these n numbers; NULL: nothing, or memo is NULL. Good until the next hs_memo_keep(). */
const void *hs_memo_find(hs_memo *memo, const double *number, int n);
/* Keeps a copy of both. memo NULL: nothing happens. */
void hs_memo_keep(hs_memo *memo, const double *number, int n, const void *value, size_t bytes);

#endif

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  who works out what is too slow for a drag?
 * Answer:    hs_desk: one thread, one question at a time, the newest wins; answers come in the main loop.
 * Not here:  what is asked and shown (session.c). */
#ifndef HS_DESK_H
#define HS_DESK_H

#include "assess.h"
#include "document.h"
#include "site_limits.h"

/* Results, the document they belong to and the memory they live in: one thing with one owner. */
typedef struct {
    hs_document *document;
    hs_arena *arena;
    hs_results results;
    hs_status status; /* not HS_OK: results are not there, error says why */
    hs_error error;
} hs_answer;

/* Assesses here and now. set: the site's limits (NULL: none). memo: of the answers before. arena: taken over (NULL: a new
 * one). */
hs_answer *hs_answer_new(hs_document *document,
                         const hs_site_set *set,
                         hs_assess_mode mode,
                         hs_memo *memo,
                         hs_arena *arena);
void hs_answer_free(hs_answer *answer);
/* Frees the answer but its arena, which is reset: for the next one. */
hs_arena *hs_answer_recycle(hs_answer *answer);

typedef struct hs_desk hs_desk;
/* answer: the receiver's. */
typedef void (*hs_desk_ready)(hs_answer *answer, gpointer data);

/* Answers come in the thread-default main context of the caller. */
hs_desk *hs_desk_new(hs_desk_ready ready, gpointer data);
/* Waits for the pass under way; nothing is delivered afterwards. */
void hs_desk_free(hs_desk *desk);
/* An older request that is not done is dropped. */
void
hs_desk_request(hs_desk *desk, hs_document *document, hs_site_set *set, hs_assess_mode mode);
void hs_desk_cancel(hs_desk *desk);

#endif

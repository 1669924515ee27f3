/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  which versions came before, and which were undone?
 * Answer:    hs_history: versions with labels, without end; a new one drops what was undone.
 * Not here:  making versions (edit.h), which one is shown (session.h). */
#ifndef HS_HISTORY_H
#define HS_HISTORY_H

#include "document.h"

typedef struct hs_history hs_history;

hs_history *hs_history_new(hs_document *first);
void hs_history_free(hs_history *history);

/* The version that holds; borrowed. */
hs_document *hs_history_current(const hs_history *history);
/* A version made by what label says ("Move point 3"). */
void hs_history_push(hs_history *history, hs_document *next, const char *label);

/* What the next undo or redo would take back or do again; NULL: nothing. */
const char *hs_history_undo_label(const hs_history *history);
const char *hs_history_redo_label(const hs_history *history);
gboolean hs_history_undo(hs_history *history);
gboolean hs_history_redo(hs_history *history);

#endif

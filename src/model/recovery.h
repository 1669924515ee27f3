/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what is left after a crash?
 * Answer:    the newest version, at most a second old, in the user's state folder; gone after a save or a clean end.
 * Not here:  the document's own file (document.h). */
#ifndef HS_RECOVERY_H
#define HS_RECOVERY_H

#include "document.h"

typedef struct hs_recovery hs_recovery;

hs_recovery *hs_recovery_new(void);
/* The clean end: what was kept is removed. */
void hs_recovery_free(hs_recovery *recovery);
/* There is a newer version: it is written within a second. path: the document's own file, may be NULL. */
void hs_recovery_touch(hs_recovery *recovery, hs_document *document, const char *path);
/* Writes what waits, now. FALSE when it could not be written (a full disk must not stop the work). */
gboolean hs_recovery_flush(hs_recovery *recovery);
/* Saved or taken back: nothing is to be kept. */
void hs_recovery_clear(hs_recovery *recovery);

typedef struct {
    char *file;            /* what was kept */
    char *path;            /* the document's own file, NULL: it had none */
    gint64 written_unix_s; /* when */
} hs_kept;

void hs_kept_free(hs_kept *kept);
/* What earlier runs left that did not end well; not what a running one keeps. GPtrArray of hs_kept *, newest first. */
GPtrArray *hs_recovery_find(void);
/* The person has decided about it. */
void hs_recovery_forget(const hs_kept *kept);

#endif

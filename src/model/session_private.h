/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what does a session consist of?
 * Answer:    the struct that session.c and session_look.c share; nobody else includes this.
 * Not here:  what it does (session.h). */
#ifndef HS_SESSION_PRIVATE_H
#define HS_SESSION_PRIVATE_H

#include "desk.h"
#include "history.h"
#include "recovery.h"
#include "session.h"

struct _HsSession {
    GObject parent;

    hs_history *history;
    hs_document
        *preview; /* shown instead of the newest committed version while a drag is under way */
    hs_document *saved; /* as the file has it */
    char *path;
    hs_site_set *limits; /* NULL: none */
    hs_recovery *recovery;

    hs_answer *answer; /* to the version shown, or to an older one while is_stale */
    hs_arena *
        spare; /* the other of two arenas: a live pass writes there while the shown results stay whole */
    hs_memo *memo; /* of the live passes: a drag changes little from step to step */
    hs_desk *desk;
    gboolean is_stale;
    gboolean is_pending;

    /* Options are remembered by id: an edit may move them. */
    char *left, *right, *edited;
    double moment_s, back_s;
    int point;
    char *finding_option;
    int finding_check;
    gboolean power_off;
    guint layers;

    hs_answer *ghost; /* NULL: none */
    hs_ghost_kind ghost_kind;
    GHashTable *memory; /* strings: of the open document only */
};

/* Without a word: what it was drawn over has changed. */
void hs_session_drop_ghost(struct _HsSession *session);

/* Emits "changed" unless the mask is empty. */
void hs_session_tell(struct _HsSession *session, guint mask);
/* Replaces a string; text may belong to what is replaced. */
void hs_session_set_text(char **member, const char *text);

#endif

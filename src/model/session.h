/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what is open, what are its results, where does the person look?
 * Answer:    HsSession: document version, results, history, chosen option, moment, finding; one signal, "changed".
 * Not here:  widgets; files other than the document's own (recovery.c). */
#ifndef HS_SESSION_H
#define HS_SESSION_H

#include "assess.h"
#include "edit.h"
#include "site_limits.h"

#include <glib-object.h>

#define HS_TYPE_SESSION (hs_session_get_type())
G_DECLARE_FINAL_TYPE(HsSession, hs_session, HS, SESSION, GObject)

/* What "changed" says (a GFlags-like mask as its one int argument). */
enum {
    HS_CHANGED_DOCUMENT = 1, /* a new version (preview, commit, undo, open) */
    HS_CHANGED_RESULTS = 2,
    HS_CHANGED_MOMENT = 4, /* time along the route */
    HS_CHANGED_CHOICE = 8, /* option edited, option compared, finding, point, layer switches */
    HS_CHANGED_FILE = 16,  /* path, unsaved mark */
    HS_CHANGED_GHOST = 32  /* what would be */
};

/* What is shown pale, of an edit that is not made: the last bearer of the edited option, who would join; or load and
 * bearers at the end of a route that is being drawn. */
typedef enum {
    HS_GHOST_NONE,
    HS_GHOST_BEARER,
    HS_GHOST_LOAD
} hs_ghost_kind;

HsSession *hs_session_new(void);

/* signals: "changed" (HsSession *, guint mask) */

hs_document *hs_session_document(HsSession *session); /* borrowed, never NULL */
const hs_results *
hs_session_results(HsSession *session); /* borrowed; NULL while the document has faults */
/* The document that the results belong to (the same unless a background pass is under way). */
hs_document *hs_session_results_document(HsSession *session);
gboolean hs_session_is_pending(
    HsSession *session); /* break-even and full search still being worked out */

/* Why there are no results, in a sentence; NULL when there are. */
char *hs_session_trouble(HsSession *session);

void hs_session_take(HsSession *session,
                     hs_document *document,
                     const char *path); /* open: history begins anew */
/* The same for what a crash left: unsaved from the start. path: its own file, or NULL. */
void hs_session_take_recovered(HsSession *session, hs_document *document, const char *path);
const char *hs_session_path(HsSession *session);
gboolean hs_session_is_unsaved(HsSession *session);
gboolean hs_session_save(HsSession *session, const char *path, GError **error);

/* The site's own limits, for every document of this session until others are chosen; NULL: the published ones alone. */
hs_site_set *hs_session_limits(HsSession *session);
void hs_session_set_limits(HsSession *session, hs_site_set *set);

/* Preview: the version on the stage while a drag is under way; the history is not touched. FALSE: refused, the sentence in
 * *ret_text. Commit: one step in the history. Cancel: back to the last committed version. */
gboolean hs_session_preview(HsSession *session, const hs_edit *edit, char **ret_text);
gboolean hs_session_commit(HsSession *session, const hs_edit *edit, char **ret_text);
void hs_session_commit_preview(HsSession *session, const char *label);
void hs_session_cancel(HsSession *session);

gboolean hs_session_can_undo(HsSession *session);
gboolean hs_session_can_redo(HsSession *session);
const char *hs_session_undo_label(HsSession *session);
const char *hs_session_redo_label(HsSession *session);
void hs_session_undo(HsSession *session);
void hs_session_redo(HsSession *session);

/* edit NULL, refused or without an answer: none. The next version of the document takes it away. */
void hs_session_set_ghost(HsSession *session, hs_ghost_kind kind, const hs_edit *edit);
hs_ghost_kind
hs_session_ghost(HsSession *session, const hs_task **ret_task, const hs_results **ret_results);
/* Strings by name that are remembered as long as this document is open; borrowed. */
GHashTable *hs_session_memory(HsSession *session);

/* Work that is due: assess the newest version once. Called from the frame clock; returns TRUE when something changed. */
gboolean hs_session_refresh(HsSession *session);

/* Where the person looks. Options are indices into results->options (the added `unaided` included). */
int hs_session_left(HsSession *session); /* option on the left stage: baseline at first */
int hs_session_right(
    HsSession *session); /* option on the right stage: the first other one; -1 none */
int hs_session_edited(HsSession *session); /* option that brief and stage edit */
void hs_session_show(HsSession *session, int left, int right);
void hs_session_edit_option(HsSession *session, int option);
double hs_session_moment_s(HsSession *session);
void hs_session_set_moment_s(HsSession *session, double t_s);
double hs_session_total_s(HsSession *session);
int hs_session_point(HsSession *session); /* chosen route point, -1 none */
void hs_session_choose_point(HsSession *session, int point);
/* chosen finding: option and check, -1 none; choosing moves the moment to its place and remembers where it was */
void hs_session_choose_finding(HsSession *session, int option, int check);
int hs_session_finding_option(HsSession *session);
int hs_session_finding_check(HsSession *session);
double hs_session_back_s(HsSession *session); /* HS_ABSENT: nothing to go back to */
void hs_session_go_back(HsSession *session);
gboolean hs_session_power_off(HsSession *session); /* "power off here" */
void hs_session_set_power_off(HsSession *session, gboolean off);
guint hs_session_layers(HsSession *session); /* bit i: layer i of draw's list is on */
void hs_session_set_layers(HsSession *session, guint layers);
/* Index of the sample of an option nearest to the moment. */
int hs_session_sample(HsSession *session, int option);

#endif

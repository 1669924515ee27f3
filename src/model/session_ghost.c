/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what would be, if?
 * Answer:    the answer to an edit that nobody has made yet, for the stage to show pale; and what is remembered of a document
 *            as long as it is open.
 * Not here:  the document and its own results (session.c). */
#include "session.h"

#include "session_private.h"

void
hs_session_drop_ghost(HsSession *session)
{
    g_clear_pointer(&session->ghost, hs_answer_free);
    session->ghost_kind = HS_GHOST_NONE;
}

void
hs_session_set_ghost(HsSession *session, hs_ghost_kind kind, const hs_edit *edit)
{
    gboolean was = session->ghost != NULL;

    hs_session_drop_ghost(session);
    g_autoptr(hs_document) next =
        edit != NULL ? hs_document_apply(hs_session_document(session), edit, FALSE, NULL)
                     : NULL;
    if (next != NULL && hs_document_task(next) != NULL) {
        hs_answer *answer = hs_answer_new(next, session->limits, HS_ASSESS_LIVE, NULL, NULL);
        if (answer->status == HS_OK) {
            session->ghost = answer;
            session->ghost_kind = kind;
        } else {
            hs_answer_free(answer);
        }
    }
    if (was || session->ghost != NULL)
        hs_session_tell(session, HS_CHANGED_GHOST);
}

hs_ghost_kind
hs_session_ghost(HsSession *session, const hs_task **ret_task, const hs_results **ret_results)
{
    *ret_task = session->ghost ? hs_document_task(session->ghost->document) : NULL;
    *ret_results = session->ghost ? &session->ghost->results : NULL;
    return session->ghost_kind;
}

GHashTable *
hs_session_memory(HsSession *session)
{
    return session->memory;
}

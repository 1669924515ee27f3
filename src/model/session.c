/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what is open, and what are its results?
 * Answer:    history, the version shown, the answer to it; every change is told by one signal.
 * Not here:  where the person looks (session_look.c), the background thread (desk.c), the autosave (recovery.c). */
#include "session.h"

#include "session_private.h"
#include "translate.h"

G_DEFINE_FINAL_TYPE(HsSession, hs_session, G_TYPE_OBJECT)

enum {
    SIGNAL_CHANGED,
    N_SIGNALS
};
static guint signals[N_SIGNALS];

void
hs_session_tell(HsSession *session, guint mask)
{
    if (mask != 0)
        g_signal_emit(session, signals[SIGNAL_CHANGED], 0, mask);
}

void
hs_session_set_text(char **member, const char *text)
{
    char *copy = g_strdup(text);

    g_free(*member);
    *member = copy;
}

static hs_document *
shown(const HsSession *session)
{
    return session->preview != NULL ? session->preview : hs_history_current(session->history);
}

static void
take_answer(HsSession *session, hs_answer *answer)
{
    hs_arena *old = hs_answer_recycle(session->answer);

    session->answer = answer;
    if (old == NULL)
        return;
    if (session->spare == NULL)
        session->spare = old;
    else
        hs_arena_free(old);
}

static void
on_desk_ready(hs_answer *answer, gpointer data)
{
    HsSession *session = data;

    /* A drag may have begun meanwhile: what belongs to another version is never shown. */
    if (answer->document != shown(session)) {
        hs_answer_free(answer);
        return;
    }
    take_answer(session, answer);
    session->is_pending = FALSE;
    hs_session_tell(session, HS_CHANGED_RESULTS);
}

/* Another version is shown: results are due. */
static void
version_changed(HsSession *session, guint also)
{
    session->is_stale = TRUE;
    session->is_pending = TRUE;
    hs_session_drop_ghost(session);
    hs_desk_cancel(session->desk);
    hs_session_tell(session, HS_CHANGED_DOCUMENT | also);
}

static void
keep(HsSession *session)
{
    if (hs_session_is_unsaved(session))
        hs_recovery_touch(session->recovery, hs_history_current(session->history),
                          session->path);
    else
        hs_recovery_clear(session->recovery);
}

static void
forget_choices(HsSession *session)
{
    g_clear_pointer(&session->left, g_free);
    g_clear_pointer(&session->right, g_free);
    g_clear_pointer(&session->edited, g_free);
    g_clear_pointer(&session->finding_option, g_free);
    session->finding_check = -1;
    session->point = -1;
    session->moment_s = 0.0;
    session->back_s = HS_ABSENT;
    session->power_off = FALSE;
    g_hash_table_remove_all(session->memory);
}

static void
hs_session_finalize(GObject *object)
{
    HsSession *session = HS_SESSION(object);

    hs_desk_free(session->desk);
    hs_answer_free(session->answer);
    hs_arena_free(session->spare);
    hs_memo_free(session->memo);
    hs_recovery_free(session->recovery);
    g_clear_pointer(&session->preview, hs_document_unref);
    g_clear_pointer(&session->saved, hs_document_unref);
    hs_history_free(session->history);
    hs_session_drop_ghost(session);
    forget_choices(session);
    g_hash_table_unref(session->memory);
    g_clear_pointer(&session->limits, hs_site_set_unref);
    g_free(session->path);
    G_OBJECT_CLASS(hs_session_parent_class)->finalize(object);
}

static void
hs_session_class_init(HsSessionClass *class)
{
    G_OBJECT_CLASS(class)->finalize = hs_session_finalize;
    signals[SIGNAL_CHANGED] =
        g_signal_new("changed", G_TYPE_FROM_CLASS(class), G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                     NULL, G_TYPE_NONE, 1, G_TYPE_UINT);
}

static void
hs_session_init(HsSession *session)
{
    g_autoptr(hs_document) blank = hs_document_new_blank();

    session->memory = g_hash_table_new_full(g_str_hash, g_str_equal, g_free, g_free);
    session->history = hs_history_new(blank);
    session->saved = hs_document_ref(blank);
    session->recovery = hs_recovery_new();
    session->desk = hs_desk_new(on_desk_ready, session);
    session->memo = hs_memo_new();
    session->layers = G_MAXUINT;
    session->is_stale = TRUE;
    session->is_pending = TRUE;
    forget_choices(session);
}

HsSession *
hs_session_new(void)
{
    return g_object_new(HS_TYPE_SESSION, NULL);
}

hs_document *
hs_session_document(HsSession *session)
{
    return shown(session);
}

const hs_results *
hs_session_results(HsSession *session)
{
    if (session->answer == NULL || session->answer->status != HS_OK ||
        hs_document_task(shown(session)) == NULL)
        return NULL;
    return &session->answer->results;
}

hs_document *
hs_session_results_document(HsSession *session)
{
    return hs_session_results(session) != NULL ? session->answer->document : NULL;
}

gboolean
hs_session_is_pending(HsSession *session)
{
    return session->is_pending;
}

char *
hs_session_trouble(HsSession *session)
{
    const GPtrArray *faults = hs_document_faults(shown(session));

    for (guint i = 0; faults != NULL && i < faults->len; i++) {
        const hs_fault *fault = g_ptr_array_index(faults, i);

        if (!fault->is_warning)
            return g_strdup_printf("%s: %s", fault->path, fault->text);
    }
    if (session->answer != NULL && session->answer->status != HS_OK)
        return g_strdup_printf(_("%s: the task cannot be worked out with this value"),
                               session->answer->error.where);
    return NULL;
}

void
hs_session_take(HsSession *session, hs_document *document, const char *path)
{
    hs_document_ref(document);
    g_clear_pointer(&session->preview, hs_document_unref);
    hs_history_free(session->history);
    session->history = hs_history_new(document);
    hs_document_unref(session->saved);
    session->saved = document;
    hs_session_set_text(&session->path, path);
    hs_recovery_clear(session->recovery);
    forget_choices(session);
    version_changed(session, HS_CHANGED_CHOICE | HS_CHANGED_MOMENT | HS_CHANGED_FILE);
}

void
hs_session_take_recovered(HsSession *session, hs_document *document, const char *path)
{
    g_autoptr(hs_document) blank = hs_document_new_blank();

    hs_session_take(session, document, path);
    /* The file has another version, or there is none: what was recovered is unsaved until it is saved. */
    hs_document_unref(session->saved);
    session->saved = g_steal_pointer(&blank);
    keep(session);
    hs_session_tell(session, HS_CHANGED_FILE);
}

const char *
hs_session_path(HsSession *session)
{
    return session->path;
}

gboolean
hs_session_is_unsaved(HsSession *session)
{
    return hs_history_current(session->history) != session->saved;
}

gboolean
hs_session_save(HsSession *session, const char *path, GError **error)
{
    hs_document *document = hs_history_current(session->history);

    if (!hs_document_save(document, path, error))
        return FALSE;
    hs_document_ref(document);
    hs_document_unref(session->saved);
    session->saved = document;
    hs_session_set_text(&session->path, path);
    hs_recovery_clear(session->recovery);
    hs_session_tell(session, HS_CHANGED_FILE);
    return TRUE;
}

hs_site_set *
hs_session_limits(HsSession *session)
{
    return session->limits;
}

void
hs_session_set_limits(HsSession *session, hs_site_set *set)
{
    if (set != NULL)
        hs_site_set_ref(set);
    g_clear_pointer(&session->limits, hs_site_set_unref);
    session->limits = set;
    version_changed(session, HS_CHANGED_CHOICE);
}

static gboolean
refuse(char **ret_text, const char *text)
{
    if (ret_text != NULL)
        *ret_text = g_strdup(text);
    return FALSE;
}

/* The next version after the newest committed one, or NULL and a sentence. A document that has faults already may be
 * corrected step by step, so it may keep others. */
static hs_document *
next_version(HsSession *session, const hs_edit *edit, char **ret_text)
{
    hs_document *base = hs_history_current(session->history);
    gboolean keep_faulty = hs_document_task(base) == NULL;
    hs_document *next;
    hs_fault *fault = NULL;

    if (hs_document_is_read_only(base)) {
        refuse(ret_text,
               _("This file is of a newer version: it can be looked at and not changed."));
        return NULL;
    }
    next = hs_document_apply(base, edit, keep_faulty, &fault);
    if (next == NULL)
        refuse(ret_text, fault != NULL ? fault->text : _("This change is not possible here."));
    g_clear_pointer(&fault, hs_fault_free);
    return next;
}

gboolean
hs_session_preview(HsSession *session, const hs_edit *edit, char **ret_text)
{
    hs_document *next = next_version(session, edit, ret_text);

    if (next == NULL)
        return FALSE;
    g_clear_pointer(&session->preview, hs_document_unref);
    session->preview = next;
    version_changed(session, 0);
    return TRUE;
}

static void
push(HsSession *session, hs_document *next, const char *label)
{
    gboolean was_unsaved = hs_session_is_unsaved(session);

    hs_history_push(session->history, next, label);
    g_clear_pointer(&session->preview, hs_document_unref);
    keep(session);
    version_changed(session, was_unsaved ? 0 : HS_CHANGED_FILE);
}

gboolean
hs_session_commit(HsSession *session, const hs_edit *edit, char **ret_text)
{
    g_autoptr(hs_document) next = next_version(session, edit, ret_text);

    if (next == NULL)
        return FALSE;
    push(session, next, hs_edit_label(edit));
    return TRUE;
}

void
hs_session_commit_preview(HsSession *session, const char *label)
{
    g_autoptr(hs_document) next = g_steal_pointer(&session->preview);

    if (next != NULL)
        push(session, next, label);
}

void
hs_session_cancel(HsSession *session)
{
    if (session->preview == NULL)
        return;
    g_clear_pointer(&session->preview, hs_document_unref);
    version_changed(session, 0);
}

gboolean
hs_session_can_undo(HsSession *session)
{
    return hs_history_undo_label(session->history) != NULL;
}

gboolean
hs_session_can_redo(HsSession *session)
{
    return hs_history_redo_label(session->history) != NULL;
}

const char *
hs_session_undo_label(HsSession *session)
{
    return hs_history_undo_label(session->history);
}

const char *
hs_session_redo_label(HsSession *session)
{
    return hs_history_redo_label(session->history);
}

static void
step(HsSession *session, gboolean (*move)(hs_history *))
{
    g_clear_pointer(&session->preview, hs_document_unref);
    if (!move(session->history))
        return;
    keep(session);
    version_changed(session, HS_CHANGED_FILE);
}

void
hs_session_undo(HsSession *session)
{
    step(session, hs_history_undo);
}

void
hs_session_redo(HsSession *session)
{
    step(session, hs_history_redo);
}

/* Where the person looks must still be there. */
static guint
fit_choices(HsSession *session)
{
    const hs_task *task = hs_document_task(shown(session));
    double total_s = hs_session_total_s(session);
    guint mask = 0;

    if (session->moment_s > total_s) {
        session->moment_s = total_s;
        mask |= HS_CHANGED_MOMENT;
    }
    if (task != NULL && session->point >= task->route.n_points) {
        session->point = -1;
        mask |= HS_CHANGED_CHOICE;
    }
    return mask;
}

gboolean
hs_session_refresh(HsSession *session)
{
    hs_document *document = shown(session);

    if (!session->is_stale)
        return FALSE;
    session->is_stale = FALSE;
    if (hs_document_task(document) == NULL) {
        session->is_pending = FALSE;
        hs_session_tell(session, HS_CHANGED_RESULTS);
        return TRUE;
    }
    take_answer(session, hs_answer_new(document, session->limits, HS_ASSESS_LIVE, session->memo,
                                       g_steal_pointer(&session->spare)));
    /* The whole search waits for the end of the gesture. */
    if (session->preview == NULL)
        hs_desk_request(session->desk, document, session->limits, HS_ASSESS_FULL);
    hs_session_tell(session, HS_CHANGED_RESULTS | fit_choices(session));
    return TRUE;
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  which versions came before, and which were undone?
 * Answer:    an array of versions and the index of the one that holds; versions share what did not change.
 * Not here:  making versions (edit.c). */
#include "history.h"

typedef struct {
    hs_document *document;
    char *label; /* of the step that made it; NULL for the first */
} step;

struct hs_history {
    GPtrArray *steps;
    guint at;
};

static void
step_free(gpointer data)
{
    step *one = data;

    hs_document_unref(one->document);
    g_free(one->label);
    g_free(one);
}

static void
append(hs_history *history, hs_document *document, const char *label)
{
    step *made = g_new0(step, 1);

    made->document = hs_document_ref(document);
    made->label = g_strdup(label);
    g_ptr_array_add(history->steps, made);
}

static const step *
step_at(const hs_history *history, guint i)
{
    return g_ptr_array_index(history->steps, i);
}

hs_history *
hs_history_new(hs_document *first)
{
    hs_history *history = g_new0(hs_history, 1);

    history->steps = g_ptr_array_new_with_free_func(step_free);
    append(history, first, NULL);
    return history;
}

void
hs_history_free(hs_history *history)
{
    if (history == NULL)
        return;
    g_ptr_array_unref(history->steps);
    g_free(history);
}

hs_document *
hs_history_current(const hs_history *history)
{
    return step_at(history, history->at)->document;
}

void
hs_history_push(hs_history *history, hs_document *next, const char *label)
{
    g_ptr_array_set_size(history->steps, (gint)history->at + 1);
    append(history, next, label);
    history->at++;
}

const char *
hs_history_undo_label(const hs_history *history)
{
    return history->at > 0 ? step_at(history, history->at)->label : NULL;
}

const char *
hs_history_redo_label(const hs_history *history)
{
    return history->at + 1 < history->steps->len ? step_at(history, history->at + 1)->label
                                                 : NULL;
}

gboolean
hs_history_undo(hs_history *history)
{
    if (history->at == 0)
        return FALSE;
    history->at--;
    return TRUE;
}

gboolean
hs_history_redo(hs_history *history)
{
    if (history->at + 1 >= history->steps->len)
        return FALSE;
    history->at++;
    return TRUE;
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how does a widget change the document?
 * Answer:    hs_change_*: hands an edit to the session and says the sentence when it is refused; asks once before
 *            today's way (the baseline) is changed.
 * Not here:  what an edit is (model/edit.c). */
#include "change.h"

#include "field.h"
#include "notice.h"

#include <glib/gi18n-lib.h>

typedef struct {
    HsSession *session;
    hs_edit *edit;
} held_change;

static void
held_free(gpointer data)
{
    held_change *held = data;

    g_clear_pointer(&held->edit, hs_edit_free);
    g_object_unref(held->session);
    g_free(held);
}

static void
mark_asked(HsSession *session)
{
    g_hash_table_replace(hs_session_memory(session), g_strdup("baseline asked"), NULL);
}

static void
on_go_ahead(GtkWidget *from, gpointer data)
{
    held_change *held = data;

    mark_asked(held->session);
    hs_change_commit(from, held->session, g_steal_pointer(&held->edit));
}

gboolean
hs_change_commit(GtkWidget *from, HsSession *session, hs_edit *edit)
{
    g_autofree char *text = NULL;
    gboolean done = hs_session_commit(session, edit, &text);

    if (!done && text != NULL)
        hs_notice_say(from, text);
    hs_edit_free(edit);
    return done;
}

static gboolean
is_baseline(HsSession *session, int option)
{
    const hs_results *results = hs_session_results(session);

    return results != NULL && option >= 0 && option == results->baseline;
}

gboolean
hs_change_option(GtkWidget *from, HsSession *session, int option, hs_edit *edit)
{
    if (!is_baseline(session, option) ||
        g_hash_table_contains(hs_session_memory(session), "baseline asked")) {
        return hs_change_commit(from, session, edit);
    }
    held_change *held = g_new(held_change, 1);
    held->session = g_object_ref(session);
    held->edit = edit;
    hs_notice_ask(from, _("This is today's way. Everything else is compared with it."),
                  _("Change today's way"), on_go_ahead, NULL, NULL, held, held_free);
    return FALSE;
}

void
hs_change_number(
    GtkWidget *from, HsSession *session, const char *label, const char *path, double value)
{
    hs_edit *edit = hs_edit_new(label);

    if (hs_has(value))
        hs_edit_set_number(edit, path, value);
    else
        hs_edit_unset(edit, path);
    hs_change_commit(from, session, edit);
}

void
hs_change_text(
    GtkWidget *from, HsSession *session, const char *label, const char *path, const char *value)
{
    hs_edit *edit = hs_edit_new(label);

    if (value != NULL)
        hs_edit_set_string(edit, path, value);
    else
        hs_edit_unset(edit, path);
    hs_change_commit(from, session, edit);
}

JsonNode *
hs_change_node(const char *json)
{
    g_autoptr(GError) error = NULL;
    JsonNode *node = json_from_string(json, &error);

    if (node == NULL)
        g_error("a value of the program's own is no JSON: %s", json);
    return node;
}

int
hs_change_edited(HsSession *session)
{
    int option = hs_session_edited(session);

    return option < hs_field_length(hs_session_document(session), "options") ? option : -1;
}

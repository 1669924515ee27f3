/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what does the window say about work that a crash left?
 * Answer:    hs_recover_ask(): a notice that offers to open it or to drop it.
 * Not here:  keeping it (model/recovery.c). */
#include "recover.h"

#include "notice.h"
#include "recovery.h"
#include "scene.h"
#include "window.h"

#include <glib/gi18n-lib.h>

static void
on_open(GtkWidget *from, gpointer data)
{
    GPtrArray *found = data;
    const hs_kept *kept = found->pdata[0];
    g_autoptr(GPtrArray) faults = g_ptr_array_new_with_free_func((GDestroyNotify)hs_fault_free);
    HsWindow *window = HS_WINDOW(gtk_widget_get_root(from));
    HsSession *session = hs_window_session(window);
    hs_document *document = hs_document_load(kept->file, faults, NULL);

    if (document == NULL) {
        hs_notice_say(from, _("What was kept cannot be read."));
        return;
    }
    hs_session_take_recovered(session, document, kept->path);
    hs_session_set_layers(session, hs_layers_default());
    hs_document_unref(document);
    hs_recovery_forget(kept);
    hs_session_refresh(session);
    hs_window_show_page(window, "work");
}

static void
on_drop(GtkWidget *from, gpointer data)
{
    GPtrArray *found = data;

    (void)from;
    hs_recovery_forget(found->pdata[0]);
}

void
hs_recover_ask(GtkWidget *from, HsSession *session)
{
    g_autoptr(GPtrArray) found = hs_recovery_find();

    (void)session;
    if (found == NULL || found->len == 0)
        return;
    const hs_kept *kept = found->pdata[0];
    g_autoptr(GDateTime) when = g_date_time_new_from_unix_local(kept->written_unix_s);
    g_autofree char *time = when ? g_date_time_format(when, "%x %H:%M") : g_strdup("");
    g_autofree char *name =
        kept->path ? g_path_get_basename(kept->path) : g_strdup(_("a document without a file"));
    g_autofree char *text = g_strdup_printf(
        _("The program did not end well. Unsaved work on %s was kept (%s)."), name, time);
    hs_notice_ask(from, text, _("Open it"), on_open, _("Drop it"), on_drop,
                  g_ptr_array_ref(found), (GDestroyNotify)g_ptr_array_unref);
}

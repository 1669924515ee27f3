/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  which set of the site's own limits counts?
 * Answer:    rows in the section Checks: the set by name, edition and wording, its figures, a button that chooses a file.
 * Not here:  reading it (model/site_limits.c), the section around it (brief_simple.c). */
#include "brief_limits.h"

#include "files.h"
#include "look.h"
#include "notice.h"
#include "rows.h"
#include "window.h"

#include "check.h"
#include "quantity.h"
#include "words.h"

#include <glib/gi18n-lib.h>

char *
hs_brief_limits_summary(HsSession *session, const char *published)
{
    const hs_site_set *set = hs_session_limits(session);

    return set != NULL ? g_strdup_printf("%s · %s", published, hs_site_set_name(set))
                       : g_strdup(published);
}

void
hs_brief_limits_shape(HsSession *session, GString *shape)
{
    const hs_site_set *set = hs_session_limits(session);
    const hs_task *task = hs_document_task(hs_session_document(session));

    if (set == NULL)
        return;
    g_string_append_printf(shape, "%s ", hs_site_set_digest(set));
    for (int i = 0; task != NULL && i < hs_site_set_count(set); i++)
        g_string_append_c(shape,
                          hs_site_figure_is_used(hs_site_set_figure(set, i), task) ? '1' : '0');
}

static void
chosen(GtkWidget *from, const char *path)
{
    g_autofree char *trouble = NULL;
    g_autoptr(hs_site_set) set = hs_site_set_load_or_say(path, &trouble);

    if (set != NULL)
        hs_session_set_limits(hs_window_session(HS_WINDOW(from)), set);
    else
        hs_notice_say(from, trouble);
}

static void
on_choose(GtkWidget *button, gpointer session)
{
    (void)session;
    /* The window outlives the rows, which are built anew meanwhile. */
    hs_files_choose_limits(GTK_WIDGET(gtk_widget_get_root(button)), chosen);
}

static void
on_without(GtkWidget *button, gpointer session)
{
    (void)button;
    hs_session_set_limits(session, NULL);
}

static void
add_figure(HsSession *session, GtkBox *content, const hs_site_figure *at)
{
    const hs_task *task = hs_document_task(hs_session_document(session));
    g_autofree char *figure =
        hs_quantity_text(at->figure, hs_check_get(at->check)->unit, hs_look_units());
    const char *known = task != NULL       ? hs_site_figure_known(at, task)
                        : at->is_confirmed ? _("confirmed by the site")
                                           : _("unconfirmed");
    g_autofree char *text = g_strdup_printf("%s: %s, %s (%s). %s", hs_words_check(at->check),
                                            figure, known, at->source, at->wording);

    gtk_box_append(content, hs_row_hint(text));
}

void
hs_brief_limits_build(HsSession *session, GtkBox *content)
{
    const hs_site_set *set = hs_session_limits(session);

    gtk_box_append(content, hs_row_heading(_("Limits of the site")));
    if (set == NULL) {
        gtk_box_append(content, hs_row_hint(_("No set is chosen: published figures count, and "
                                              "what this document has of its own.")));
    } else {
        g_autofree char *head = hs_site_set_headline(set);

        gtk_box_append(content, hs_row_hint(head));
        gtk_box_append(content, hs_row_hint(hs_site_set_wording(set)));
        for (int i = 0; i < hs_site_set_count(set); i++)
            add_figure(session, content, hs_site_set_figure(set, i));
    }
    gtk_box_append(content, hs_row_button(set == NULL ? _("Choose a set of limits…")
                                                      : _("Choose another set of limits…"),
                                          NULL, G_CALLBACK(on_choose), session, NULL));
    if (set != NULL)
        gtk_box_append(content, hs_row_button(_("Go without this set"), NULL,
                                              G_CALLBACK(on_without), session, NULL));
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  which set of the site's own limits counts?
 * Answer:    rows in the section Checks: the sets that ship by place, or a file; the chosen one by name, edition, wording, figures.
 * Not here:  reading it (model/site_limits.c), the section around it (brief_simple.c). */
#include "brief_limits.h"

#include "files.h"
#include "look.h"
#include "notice.h"
#include "preferences.h"
#include "rows.h"
#include "site_sets.h"
#include "window.h"

#include <glib/gi18n-lib.h>

#define FEW_FIGURES 4 /* are shown at once */

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

/* Takes the set and remembers it for the next start. */
static gboolean
take(GtkWidget *from, HsSession *session, const char *name)
{
    g_autofree char *trouble = NULL;
    g_autoptr(hs_site_set) set = hs_site_set_load_or_say(name, &trouble);

    if (set == NULL) {
        hs_notice_say(from, trouble);
        return FALSE;
    }
    hs_preferences_set_limits(name);
    hs_session_set_limits(session, set);
    return TRUE;
}

static void
chosen(GtkWidget *from, const char *path)
{
    take(from, hs_window_session(HS_WINDOW(from)), path);
}

static void
on_choose(GtkWidget *button, gpointer session)
{
    (void)session;
    /* The window outlives the rows, which are built anew meanwhile. */
    hs_files_choose_limits(GTK_WIDGET(gtk_widget_get_root(button)), chosen);
}

/* ---- the picker: none, the sets that ship, and a file's where one is chosen ----------------- */

static guint
position_of(HsSession *session, const GPtrArray *shipped)
{
    const hs_site_set *set = hs_session_limits(session);

    if (set == NULL)
        return 0;
    for (guint i = 0; i < shipped->len; i++) {
        const hs_site_shipped *at = shipped->pdata[i];

        if (hs_site_set_is_shipped(set) && g_str_equal(at->id, hs_site_set_id(set)))
            return i + 1;
    }
    return shipped->len + 1;
}

static void
on_picked(GtkDropDown *dropdown, GParamSpec *spec, HsSession *session)
{
    const GPtrArray *shipped = g_object_get_data(G_OBJECT(dropdown), "hs-shipped");
    guint at = gtk_drop_down_get_selected(dropdown);
    GtkWidget *window = GTK_WIDGET(gtk_widget_get_root(GTK_WIDGET(dropdown)));

    (void)spec;
    if (at == position_of(session, shipped))
        return;
    if (at == 0) {
        hs_preferences_set_limits(NULL);
        hs_session_set_limits(session, NULL);
    } else if (at <= shipped->len) {
        const hs_site_shipped *wanted = shipped->pdata[at - 1];

        if (!take(window, session, wanted->id))
            gtk_drop_down_set_selected(dropdown, position_of(session, shipped));
    }
}

static GtkWidget *
picker_new(HsSession *session)
{
    GPtrArray *shipped = hs_site_shipped_list();
    GtkStringList *words = gtk_string_list_new(NULL);
    guint at = position_of(session, shipped);
    GtkWidget *dropdown;

    gtk_string_list_append(words, _("Published figures alone"));
    for (guint i = 0; i < shipped->len; i++)
        gtk_string_list_append(words, ((const hs_site_shipped *)shipped->pdata[i])->title);
    if (at == shipped->len + 1)
        gtk_string_list_append(words, hs_site_set_name(hs_session_limits(session)));
    dropdown = gtk_drop_down_new(G_LIST_MODEL(words), NULL);
    gtk_drop_down_set_selected(GTK_DROP_DOWN(dropdown), at);
    hs_row_cut_long(dropdown);
    g_object_set_data_full(G_OBJECT(dropdown), "hs-shipped", shipped,
                           (GDestroyNotify)g_ptr_array_unref);
    hs_row_name_button(dropdown, _("Set of limits"));
    g_signal_connect(dropdown, "notify::selected", G_CALLBACK(on_picked), session);
    return dropdown;
}

/* A country's set may have a dozen: they unfold. */
static GtkWidget *
figures_new(HsSession *session, const hs_site_set *set)
{
    int n = hs_site_set_count(set);
    g_autofree char *label =
        g_strdup_printf(g_dngettext(GETTEXT_PACKAGE, "%d figure", "%d figures", (gulong)n), n);
    GtkWidget *expander = gtk_expander_new(label);
    GtkWidget *box = gtk_box_new(GTK_ORIENTATION_VERTICAL, 4);

    for (int i = 0; i < n; i++) {
        g_autofree char *line = hs_site_set_line(
            set, i, hs_document_task(hs_session_document(session)), hs_look_units());

        gtk_box_append(GTK_BOX(box), hs_row_hint(line));
    }
    hs_look_name(expander, label);
    gtk_expander_set_child(GTK_EXPANDER(expander), box);
    gtk_expander_set_expanded(GTK_EXPANDER(expander), n <= FEW_FIGURES);
    return expander;
}

void
hs_brief_limits_build(HsSession *session, GtkBox *content)
{
    const hs_site_set *set = hs_session_limits(session);

    gtk_box_append(content, hs_row_heading(_("Limits of the site")));
    gtk_box_append(content, picker_new(session));
    gtk_box_append(content, hs_row_button(_("Choose a file…"), NULL, G_CALLBACK(on_choose),
                                          session, NULL));
    if (set == NULL) {
        gtk_box_append(content, hs_row_hint(_("No set is chosen: published figures count, and "
                                              "what this document has of its own.")));
        return;
    }
    g_autofree char *head = hs_site_set_headline(set);
    gtk_box_append(content, hs_row_hint(head));
    gtk_box_append(content, hs_row_hint(hs_site_set_wording(set)));
    gtk_box_append(content, figures_new(session, set));
}

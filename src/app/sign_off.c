/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  is it ready to sign?
 * Answer:    the "Sheet" button: how many items are open, the list with a jump to each field, export and print.
 * Not here:  which items (draw/sheet.h). */
#include "sign_off.h"

#include "look.h"
#include "rows.h"
#include "sheet.h"

#include <glib/gi18n-lib.h>

typedef struct {
    GtkMenuButton *button;
    HsSession *session;
    HsBrief *brief;
    gulong watch;
    guint idle;
} sign_off;

static GPtrArray *
open_items(sign_off *self)
{
    if (hs_session_results(self->session) == NULL)
        return NULL;
    return hs_sheet_open_items(hs_session_results_document(self->session),
                               hs_session_results(self->session));
}

static gboolean
show(gpointer data)
{
    sign_off *self = data;
    GPtrArray *items = open_items(self);
    int n = 0;

    while (items != NULL && (guint)(2 * n + 1) < items->len && items->pdata[2 * n] != NULL)
        n++;
    /* Translators: on the button: the sheet, and how many items are still open before it can be signed */
    g_autofree char *label =
        n > 0 ? g_strdup_printf(_("Sheet · %d open"), n) : g_strdup(_("Sheet"));
    gtk_menu_button_set_label(self->button, label);
    hs_row_name_button(GTK_WIDGET(self->button), label);
    g_clear_pointer(&items, g_ptr_array_unref);
    self->idle = 0;
    return G_SOURCE_REMOVE;
}

static void
on_changed(sign_off *self, guint mask)
{
    if ((mask & HS_CHANGED_RESULTS) && self->idle == 0)
        self->idle = g_idle_add_full(G_PRIORITY_LOW, show, self, NULL);
}

static void
on_item(GtkButton *row, sign_off *self)
{
    gtk_menu_button_popdown(self->button);
    gtk_widget_activate_action(GTK_WIDGET(self->button), "win.show-brief", NULL);
    hs_brief_show_path(self->brief, g_object_get_data(G_OBJECT(row), "hs-path"));
}

static void
add_command(GtkBox *box, const char *label, const char *action)
{
    GtkWidget *row = gtk_button_new_with_label(label);

    gtk_actionable_set_action_name(GTK_ACTIONABLE(row), action);
    gtk_widget_add_css_class(row, "flat");
    gtk_widget_set_halign(gtk_button_get_child(GTK_BUTTON(row)), GTK_ALIGN_START);
    hs_look_name(row, label);
    gtk_box_append(box, row);
}

static void
add_items(sign_off *self, GtkBox *box)
{
    GPtrArray *items = open_items(self);

    gtk_box_append(box, hs_row_heading(items && items->len > 1 && items->pdata[0]
                                           ? _("Open before it can be signed")
                                           : _("Ready to sign")));
    for (guint i = 0; items != NULL && i + 1 < items->len && items->pdata[i] != NULL; i += 2) {
        GtkWidget *row = gtk_button_new(), *label = gtk_label_new(items->pdata[i]);
        gtk_label_set_wrap(GTK_LABEL(label), TRUE);
        gtk_label_set_xalign(GTK_LABEL(label), 0.0f);
        gtk_label_set_max_width_chars(GTK_LABEL(label), 46);
        gtk_button_set_child(GTK_BUTTON(row), label);
        gtk_widget_add_css_class(row, "flat");
        hs_look_name(row, items->pdata[i]);
        g_object_set_data_full(G_OBJECT(row), "hs-path",
                               g_strdup(items->pdata[i + 1] ? items->pdata[i + 1] : ""),
                               g_free);
        g_signal_connect(row, "clicked", G_CALLBACK(on_item), self);
        gtk_box_append(box, row);
    }
    g_clear_pointer(&items, g_ptr_array_unref);
}

static void
fill(GtkMenuButton *button, gpointer data)
{
    sign_off *self = data;
    GtkWidget *popover = gtk_popover_new(), *box = gtk_box_new(GTK_ORIENTATION_VERTICAL, 4);
    GtkWidget *scroller = gtk_scrolled_window_new();

    add_items(self, GTK_BOX(box));
    gtk_box_append(GTK_BOX(box), gtk_separator_new(GTK_ORIENTATION_HORIZONTAL));
    add_command(GTK_BOX(box), _("Print the sheet…"), "win.print");
    add_command(GTK_BOX(box), _("Export the sheet…"), "win.export-sheet");
    add_command(GTK_BOX(box), _("Export the handout…"), "win.export-handout");
    gtk_box_append(GTK_BOX(box),
                   hs_row_hint(_("While items are open the sheet prints as a draft, with the "
                                 "list and without signature boxes.")));
    gtk_widget_add_css_class(box, "popover-list");
    gtk_scrolled_window_set_child(GTK_SCROLLED_WINDOW(scroller), box);
    gtk_scrolled_window_set_policy(GTK_SCROLLED_WINDOW(scroller), GTK_POLICY_NEVER,
                                   GTK_POLICY_AUTOMATIC);
    gtk_scrolled_window_set_propagate_natural_height(GTK_SCROLLED_WINDOW(scroller), TRUE);
    gtk_scrolled_window_set_max_content_height(GTK_SCROLLED_WINDOW(scroller), 520);
    hs_look_name_scroller(scroller, _("Sheet"));
    gtk_popover_set_child(GTK_POPOVER(popover), scroller);
    hs_look_name(popover, _("Sheet"));
    gtk_menu_button_set_popover(button, popover);
}

static void
sign_off_free(gpointer data)
{
    sign_off *self = data;

    g_clear_handle_id(&self->idle, g_source_remove);
    g_clear_signal_handler(&self->watch, self->session);
    g_object_unref(self->session);
    g_free(self);
}

void
hs_sign_off_attach(GtkMenuButton *button, HsSession *session, HsBrief *brief)
{
    sign_off *self = g_new0(sign_off, 1);

    self->button = button;
    self->session = g_object_ref(session);
    self->brief = brief;
    g_object_set_data_full(G_OBJECT(button), "hs-sign-off", self, sign_off_free);
    gtk_menu_button_set_create_popup_func(button, fill, self, NULL);
    self->watch = g_signal_connect_swapped(session, "changed", G_CALLBACK(on_changed), self);
    hs_row_name_button(GTK_WIDGET(button), _("Sheet"));
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what do all widgets that show the session have in common?
 * Answer:    one child fills them; they listen to the session and stop when they go.
 * Not here:  what each of them shows. */
#include "shell.h"

void
hs_shell_class(GtkWidgetClass *widget_class,
               const char *ui,
               const char *css_name,
               GtkAccessibleRole role)
{
    if (ui != NULL) {
        g_autofree char *path = g_strdup_printf("/io/handspike/Handspike/%s", ui);
        gtk_widget_class_set_template_from_resource(widget_class, path);
    }
    gtk_widget_class_set_layout_manager_type(widget_class, GTK_TYPE_BIN_LAYOUT);
    gtk_widget_class_set_css_name(widget_class, css_name);
    gtk_widget_class_set_accessible_role(widget_class, role);
}

void
hs_shell_leave(GtkWidget *widget, HsSession **session, gulong *watch)
{
    GtkWidget *child;

    if (*session != NULL)
        g_clear_signal_handler(watch, *session);
    while ((child = gtk_widget_get_first_child(widget)) != NULL)
        gtk_widget_unparent(child);
    g_clear_object(session);
}

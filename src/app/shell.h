/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what do all widgets that show the session have in common?
 * Answer:    hs_shell_class(): template, layout, style name and role; hs_shell_leave(): letting go of session and children.
 * Not here:  what each of them shows. */
#ifndef HS_SHELL_H
#define HS_SHELL_H

#include "session.h"

#include <gtk/gtk.h>

/* ui: name of its template among the resources, NULL: built by hand. */
void hs_shell_class(GtkWidgetClass *widget_class,
                    const char *ui,
                    const char *css_name,
                    GtkAccessibleRole role);
/* For dispose, which may come twice. */
void hs_shell_leave(GtkWidget *widget, HsSession **session, gulong *watch);

#endif

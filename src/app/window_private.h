/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what do the window's two files share?
 * Answer:    its parts, and the function that installs its actions.
 * Not here:  anything for other widgets (window.h). */
#ifndef HS_WINDOW_PRIVATE_H
#define HS_WINDOW_PRIVATE_H

#include "brief.h"
#include "stage.h"
#include "strip.h"
#include "window.h"
#include "zones.h"

struct _HsWindow {
    GtkApplicationWindow parent;
    HsSession *session;
    gulong watch;
    guint refresh;
    GtkBox *content;
    GtkStack *pages;
    GtkLabel *title_label, *subtitle_label;
    GtkButton *undo_button, *redo_button, *save_button, *lesson_button;
    GtkMenuButton *sheet_button, *menu_button;
    HsStage *stage;
    HsStrip *strip;
    HsBrief *brief;
    HsZones *zones;
    GtkWidget *lesson, *gallery;
    gboolean may_close;
};

void hs_window_install_actions(GtkWidgetClass *widget_class);
/* Enabled or not, and the words of undo and redo. */
void hs_window_show_actions(HsWindow *window);
/* Asks when something is unsaved, then goes on. TRUE: it may go on at once. */
gboolean hs_window_may_leave(HsWindow *window, void (*then)(HsWindow *window));

#endif

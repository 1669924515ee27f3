/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what holds everything together on the screen?
 * Answer:    HsWindow: one document, header, start page, the three zones, the lesson.
 * Not here:  what the actions do (window_actions.c). */
#ifndef HS_WINDOW_H
#define HS_WINDOW_H

#include "session.h"

#include <gtk/gtk.h>

#define HS_TYPE_WINDOW (hs_window_get_type())
G_DECLARE_FINAL_TYPE(HsWindow, hs_window, HS, WINDOW, GtkApplicationWindow)

HsWindow *hs_window_new(GtkApplication *application);
HsSession *hs_window_session(HsWindow *window);
/* FALSE: the notice bar says why. */
gboolean hs_window_open(HsWindow *window, const char *path);
/* A document that has no file yet. */
void hs_window_open_document(HsWindow *window, hs_document *document);
/* "start", "work" or "lesson" */
void hs_window_show_page(HsWindow *window, const char *page);
const char *hs_window_page(HsWindow *window);
/* A section of the brief, by its id. */
void hs_window_open_section(HsWindow *window, const char *id);
/* The program draws its own window. */
gboolean hs_window_save_picture(HsWindow *window, const char *path, GError **error);

#endif

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how are files opened, saved, exported and printed from the window?
 * Answer:    hs_files_*: file dialogs (the only modal thing) and what follows them; a failure is said in the notice bar.
 * Not here:  reading and writing (model), the pages (draw/sheet.c). */
#ifndef HS_FILES_H
#define HS_FILES_H

#include "session.h"

#include <gtk/gtk.h>

void hs_files_choose_open(GtkWidget *from, void (*chosen)(GtkWidget *from, const char *path));
/* A site's set of limits. */
void hs_files_choose_limits(GtkWidget *from, void (*chosen)(GtkWidget *from, const char *path));
void hs_files_save(GtkWidget *from, HsSession *session);
void hs_files_save_as(GtkWidget *from, HsSession *session);
void hs_files_export_sheet(GtkWidget *from, HsSession *session);
void hs_files_export_handout(GtkWidget *from, HsSession *session);
void hs_files_export_view(GtkWidget *from, HsSession *session);
void hs_files_print(GtkWidget *from, HsSession *session);

#endif

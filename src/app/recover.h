/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what does the window say about work that a crash left?
 * Answer:    hs_recover_ask(): a notice that offers to open it or to drop it.
 * Not here:  keeping it (model/recovery.c). */
#ifndef HS_RECOVER_H
#define HS_RECOVER_H

#include "session.h"

#include <gtk/gtk.h>

void hs_recover_ask(GtkWidget *from, HsSession *session);

#endif

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how is a person's size picked from a survey?
 * Answer:    hs_size_row_new(): one drop-down that fills sex, stature and body mass at once.
 * Not here:  the sizes (core/body/sizes.h), the fields that are filled (brief_bearers.c). */
#ifndef HS_BRIEF_SIZES_H
#define HS_BRIEF_SIZES_H

#include "session.h"

#include <gtk/gtk.h>

/* worker: index in the document's list; name: what a screen reader says. */
GtkWidget *hs_size_row_new(HsSession *session, int worker, const char *name);

#endif

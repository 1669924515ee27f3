/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how does another option, another bearer or another suit come into the document?
 * Answer:    hs_options_*: copies and changes of what is there, each one undo.
 * Not here:  which grip a new bearer takes (crew.c). */
#ifndef HS_OPTIONS_H
#define HS_OPTIONS_H

#include "session.h"

#include <gtk/gtk.h>

typedef enum {
    HS_OPTION_COPY,   /* of the edited one */
    HS_OPTION_ALONE,  /* one person, no suit */
    HS_OPTION_SUITED, /* one person in the document's first suit, or in one of the examples */
    HS_OPTION_REMOVE  /* the edited one goes */
} hs_option_wish;

void hs_options_wish(GtkWidget *from, HsSession *session, hs_option_wish wish);
/* The menu of the + beside the stage's headings. */
void hs_options_fill_menu(GtkMenuButton *button, HsSession *session);

#endif

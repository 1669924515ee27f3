/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  which option does this side of the stage show, and is it the one that is edited?
 * Answer:    HsHeading: the option's name as a tab, its edit mark, a menu of options and of new ones.
 * Not here:  the picture (side_view.c), what a new option holds (options.c). */
#ifndef HS_HEADING_H
#define HS_HEADING_H

#include "session.h"

#include <gtk/gtk.h>

#define HS_TYPE_HEADING (hs_heading_get_type())
G_DECLARE_FINAL_TYPE(HsHeading, hs_heading, HS, HEADING, GtkWidget)
GtkWidget *hs_heading_new(HsSession *session, gboolean is_right);
/* The option's description in a few words, new: "two bearers, no suit". */
char *hs_heading_describe(HsSession *session, int option);

#endif

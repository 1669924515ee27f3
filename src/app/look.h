/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how should a drawn widget look here: light or dark, how large is type, which units?
 * Answer:    hs_look_*: asked of the widget itself, so that theme and text scale are followed.
 * Not here:  the colours (draw/theme.c). */
#ifndef HS_LOOK_H
#define HS_LOOK_H

#include "theme.h"
#include "words.h"

#include <gtk/gtk.h>

gboolean hs_look_is_dark(GtkWidget *widget);
const hs_theme *hs_look_theme(GtkWidget *widget);
/* Height of the widget's type in pixels: follows the text scale. */
double hs_look_font_px(GtkWidget *widget);
hs_units hs_look_units(void);
void hs_look_set_units(hs_units units);
/* Follow the desktop's wish for light or dark, now and when it changes. */
void hs_look_follow_desktop(void);
/* A screen reader's name for the widget. */
void hs_look_name(gpointer widget, const char *name);
/* The same for a scrolled window and its bars. */
void hs_look_name_scroller(GtkWidget *scroller, const char *name);
/* A tip, NULL for none; set only where it is another one: each setting asks the display where the pointer is. */
void hs_look_tip(GtkWidget *widget, const char *tip);

#endif

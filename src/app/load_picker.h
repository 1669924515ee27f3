/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  which load is it, roughly?
 * Answer:    the load's drawing as a button; it opens a catalogue of generic loads with a typed search.
 * Not here:  the loads (ui/loads.json), their drawing (draw). */
#ifndef HS_LOAD_PICKER_H
#define HS_LOAD_PICKER_H

#include "session.h"

#include <gtk/gtk.h>

GtkWidget *hs_load_picker_new(HsSession *session);
/* The drawing alone, from the side, as the document has it. */
GtkWidget *hs_load_picture_new(HsSession *session);
/* Where along the load a place on it is. */
double hs_load_picture_x_m(GtkWidget *picture, HsSession *session, double x_px);

#endif

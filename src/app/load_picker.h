/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  which load is it, roughly?
 * Answer:    the load's drawing as a button; it opens a catalogue of generic loads with a typed search.
 * Not here:  the loads (ui/loads.json), their drawing (draw). */
#ifndef HS_LOAD_PICKER_H
#define HS_LOAD_PICKER_H

#include "session.h"

#include <gtk/gtk.h>

GtkWidget *hs_load_picker_new(HsSession *session);

#endif

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  do the scale readings say what the hands know?
 * Answer:    "which side is heavy?": a click on the load's drawing or on a button, held against the weighed CG.
 * Not here:  the readings (brief_load.c), the CG (core/load/weigh.c). */
#ifndef HS_HEAVY_SIDE_H
#define HS_HEAVY_SIDE_H

#include "session.h"

#include <gtk/gtk.h>

/* For a load that has scale readings. */
GtkWidget *hs_heavy_side_new(HsSession *session);

#endif

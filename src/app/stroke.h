/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how does a freehand stroke become a route?
 * Answer:    at most six points, level parts levelled, rounded to 1 cm, each leg with a guessed word.
 * Not here:  the pointer (side_view.c), snapping (draw/hit.c). */
#ifndef HS_STROKE_H
#define HS_STROKE_H

#include "session.h"

#include <gtk/gtk.h>

#define HS_STROKE_MOST_POINTS 6

/* Simplify a stroke in world metres; at: GArray of hs_vec2; returns a new GArray of 2 to 6 places. */
GArray *hs_stroke_simplify(const GArray *at);
/* The edit that makes it the route. */
hs_edit *hs_stroke_whole(const GArray *places);
/* The same, or the edit that replaces the stretch between two places of the route that it starts and ends on. */
hs_edit *hs_stroke_edit(HsSession *session, const GArray *places);

#endif

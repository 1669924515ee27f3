/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what goes along with a stroke while it is drawn?
 * Answer:    hs_load_ghost: load and bearers, pale, where the pointer is.
 * Not here:  the line itself (ink.h), what becomes of it (stroke.h). */
#ifndef HS_LOAD_GHOST_H
#define HS_LOAD_GHOST_H

#include "session.h"
#include "view.h"

#include <gtk/gtk.h>

typedef struct {
    hs_scene *scene; /* NULL: none */
    hs_vec2 at_m;    /* the load, world */
} hs_load_ghost;

/* Asks how it would be there: straight from where the stroke began. */
void hs_load_ghost_move(
    hs_load_ghost *self, HsSession *session, int option, hs_vec2 from_m, hs_vec2 to_m);
void hs_load_ghost_clear(hs_load_ghost *self, HsSession *session);
/* Over a picture with its folds. */
void hs_load_ghost_paint(const hs_load_ghost *self,
                         GtkWidget *widget,
                         GtkSnapshot *snapshot,
                         const hs_scene *under,
                         const hs_view *view);

#endif

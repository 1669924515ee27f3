/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what does the hand see of its stroke?
 * Answer:    hs_ink: the line while it is drawn; afterwards it fades away.
 * Not here:  what becomes of it (stroke.h). */
#ifndef HS_INK_H
#define HS_INK_H

#include "view.h"

#include <gtk/gtk.h>

typedef struct {
    GArray *stroke; /* hs_vec2, world; NULL: none under way */
    GArray *faded;  /* the last one, while it fades */
    guint fade;
    gint64 faded_us;
} hs_ink;

void hs_ink_add(hs_ink *ink, hs_vec2 at_m);
/* The stroke goes away slowly, so that one sees what became of it. */
void hs_ink_fade(hs_ink *ink, GtkWidget *widget, GArray *stroke);
void hs_ink_clear(hs_ink *ink);
void hs_ink_paint(const hs_ink *ink,
                  GtkWidget *widget,
                  GtkSnapshot *snapshot,
                  const hs_scene *scene,
                  const hs_view *view);

#endif

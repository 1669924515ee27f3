/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how is a drawn height typed in its place?
 * Answer:    HsHeightFigure: a button over the figure; clicked, it is an entry; what is typed moves the point.
 * Not here:  where the figure stands (targets.c), its line and text (draw). */
#ifndef HS_HEIGHT_FIGURE_H
#define HS_HEIGHT_FIGURE_H

#include "scene.h"
#include "session.h"

#include <gtk/gtk.h>

#define HS_TYPE_HEIGHT_FIGURE (hs_height_figure_get_type())
G_DECLARE_FINAL_TYPE(HsHeightFigure, hs_height_figure, HS, HEIGHT_FIGURE, GtkWidget)

/* signal: "typing" (gboolean): an entry is open now, or no longer */
GtkWidget *hs_height_figure_new(HsSession *session);
/* The height of a route point over the floor under it: as drawn, and its name for speech. No tip: it would lie over the other
 * height. */
void hs_height_figure_set(
    HsHeightFigure *figure, int point, double height_m, const char *text, const char *name);
/* The figure becomes an entry that has the focus. */
void hs_height_figure_type(HsHeightFigure *figure);
/* Where the figure is drawn, on a view of a size; an entry that is open stays where it was opened. */
void hs_height_figure_place(HsHeightFigure *figure,
                            const graphene_rect_t *drawn,
                            int width,
                            int height);

#endif

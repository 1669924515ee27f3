/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what does one option look like from the side at this moment?
 * Answer:    HsSideView: the scene in kept layers, with a handle over everything that can be grabbed.
 * Not here:  the two views together (stage.c), what dragging means (grab.c). */
#ifndef HS_SIDE_VIEW_H
#define HS_SIDE_VIEW_H

#include "session.h"
#include "view.h"

#include <gtk/gtk.h>

#define HS_TYPE_SIDE_VIEW (hs_side_view_get_type())
G_DECLARE_FINAL_TYPE(HsSideView, hs_side_view, HS, SIDE_VIEW, GtkWidget)

/* signals: "resized", "panned" (double dx_px, double dy_px), "zoomed" (double factor, double x_px, double y_px) */
GtkWidget *hs_side_view_new(HsSession *session);
void hs_side_view_set_option(HsSideView *view, int option);
/* Build the scene of this moment; keep_still: what does not move stays as it is. */
void hs_side_view_rebuild(HsSideView *view, gboolean keep_still);
const hs_scene *hs_side_view_scene(HsSideView *view); /* NULL: nothing to show */
void hs_side_view_set_view(HsSideView *view, const hs_view *shared);
/* While held (a drag is under way) the stage does not fit the view anew. */
void hs_side_view_hold(HsSideView *view, gboolean held);
gboolean hs_side_view_is_held(HsSideView *view);
hs_vec2 hs_side_view_world(HsSideView *view, hs_vec2 at_px);
/* moved: the point that is dragged, -1 a new one; is_free (Alt): rounded only. */
hs_vec2 hs_side_view_snap(HsSideView *view, hs_vec2 at_m, int moved, gboolean is_free);
/* A dragged reach comes to rest at the points of the suit's rating, else at whole centimetres. */
double hs_side_view_snap_reach(HsSideView *view, int bearer, double reach_m, gboolean is_free);
/* The base's height of the chosen point is typed in its place on the picture. */
void hs_side_view_type_height(HsSideView *view);
/* "Draw route": the next stroke on the view becomes the route. */
void hs_side_view_set_drawing(HsSideView *view, gboolean drawing);
/* Folds of long ways on or off. */
void hs_side_view_set_folds(HsSideView *view, gboolean folds);

#endif

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what of a picture is painted again?
 * Answer:    hs_kept_picture: squares, things and what moves, each kept until it changes.
 * Not here:  what is in the picture (draw/scene.h), when it changes (side_view.c). */
#ifndef HS_KEPT_PICTURE_H
#define HS_KEPT_PICTURE_H

#include "paint.h"

#include <gtk/gtk.h>

/* All NULL: nothing painted yet. */
typedef struct {
    cairo_surface_t *squares; /* as the view wants them, whatever is drawn on them */
    hs_picture *picture;
    GskRenderNode *kept, *moving;
} hs_kept_picture;

/* What has to be painted anew; each includes those before it. */
typedef enum {
    HS_ANEW_MOVING,
    HS_ANEW_THINGS,
    HS_ANEW_ALL
} hs_anew;

/* Before the scene goes away, or the view changes. */
void hs_kept_picture_drop(hs_kept_picture *self, hs_anew what);
/* Where the figure of a height stands; FALSE: it is not drawn. */
gboolean hs_kept_picture_height_box(hs_kept_picture *self,
                                    GtkWidget *widget,
                                    const hs_scene *scene,
                                    const hs_view *view,
                                    hs_height height,
                                    graphene_rect_t *ret_box);
/* Paints what is missing and hands all of it to the snapshot, at the widget's size. */
void hs_kept_picture_snapshot(hs_kept_picture *self,
                              GtkWidget *widget,
                              const hs_scene *scene,
                              const hs_view *view,
                              GtkSnapshot *snapshot);

#endif

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what on a side view can be taken hold of, or typed at?
 * Answer:    hs_targets: a small widget over each point, grip and pair of feet, and over the two heights of a chosen point.
 * Not here:  what each of them does (handle.c, height_figure.c). */
#ifndef HS_TARGETS_H
#define HS_TARGETS_H

#include "handle.h"
#include "height_figure.h"
#include "kept_picture.h"

typedef struct {
    GtkWidget *view; /* the parent of all of them */
    HsSession *session;
    int option;
    GPtrArray *handles;
    HsHeightFigure *figures[HS_N_HEIGHTS];
    gboolean can_target;
} hs_targets;

void hs_targets_init(hs_targets *self, GtkWidget *view, HsSession *session);
void hs_targets_clear(hs_targets *self);
/* As many and with such names as this moment asks for; scene NULL: none. */
void hs_targets_sync(hs_targets *self, int option, const hs_scene *scene);
/* Each to its place in the picture; scene NULL: nothing is shown yet. */
void hs_targets_allocate(hs_targets *self,
                         const hs_scene *scene,
                         const hs_view *view,
                         hs_kept_picture *picture);
/* Whether the pointer reaches them. */
void hs_targets_let(hs_targets *self, gboolean can_target);

#endif

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what does it mean to move a point, a grip or a bearer's feet?
 * Answer:    hs_grab_*: the edit that a drag or a key stands for, previewed while it lasts, one undo at its end.
 * Not here:  pointers and keys (handle.c), snapping itself (draw/hit.c). */
#ifndef HS_GRAB_H
#define HS_GRAB_H

#include "handle.h"
#include "side_view.h"

typedef struct {
    hs_handle_kind kind;
    int option, index;
    hs_vec2 begin_m; /* pointer, world */
    hs_vec2 thing_m; /* the thing, world */
    double reach_m;  /* feet: at the beginning */
    double to_m;     /* feet: the reach that is shown now */
    double forward;  /* feet: +1 facing +x, -1 facing -x, 0: seen from the front */
    hs_vec3 grip_m;  /* grip: load frame */
    gboolean has_moved;
} hs_grab;

hs_grab hs_grab_begin(
    HsSession *session, hs_handle_kind kind, int option, int index, hs_vec2 pointer_m);
void hs_grab_move(hs_grab *grab,
                  GtkWidget *from,
                  HsSession *session,
                  HsSideView *view,
                  hs_vec2 pointer_m,
                  gboolean snap);
void hs_grab_end(hs_grab *grab, GtkWidget *from, HsSession *session);
void hs_grab_nudge(GtkWidget *from,
                   HsSession *session,
                   hs_handle_kind kind,
                   int option,
                   int index,
                   double dx_m,
                   double dz_m);
void hs_grab_delete_point(GtkWidget *from, HsSession *session, int point);
/* Choose a point and move the stage to the instant at which the load is there. */
void hs_grab_choose_point(HsSession *session, int point);
/* A new point where the way passes nearest to the place. */
void hs_grab_add_point(GtkWidget *from, HsSession *session, hs_vec2 at_m);

#endif

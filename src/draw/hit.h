/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what is under a point of the stage, and where does a dragged thing come to rest?
 * Answer:    the scene's spots (points, grips, bearers, feet), hs_hit_at(), hs_snap_point(), hs_snap_reach_m().
 * Not here:  gestures (app), edits (model/edit.c). */
#ifndef HS_HIT_H
#define HS_HIT_H

#include "view.h"

/* The first spot within `near_px` (half the hit area: 16) of a place; FALSE: none. */
gboolean hs_hit_at(const hs_scene *scene,
                   const hs_view *view,
                   hs_vec2 at_px,
                   double near_px,
                   hs_spot *ret_spot);

typedef enum {
    HS_SNAP_NONE,
    HS_SNAP_FLOOR,
    HS_SNAP_OBSTACLE,
    HS_SNAP_POINT_HEIGHT,
    HS_SNAP_POINT_X
} hs_snap_to;

typedef struct {
    hs_vec2 world_m; /* x, z of the load's base, rounded */
    hs_snap_to to_z, to_x;
    int index_z, index_x; /* obstacle or point */
} hs_snap;

/* Where a route point dragged to a drawing place comes to rest. moved: its index, not snapped to itself; -1 a new one.
 * step_m: 0.01 freehand, 0.001 dragged. is_free (Alt): rounded only. */
hs_snap hs_snap_point(const hs_task *task,
                      const hs_scene *scene,
                      const hs_view *view,
                      hs_vec2 drawing_m,
                      int moved,
                      double step_m,
                      gboolean is_free);
/* A dragged reach: to the rating's points of the suit within 8 px, else to 1 cm. */
double
hs_snap_reach_m(const hs_suit *suit, const hs_view *view, double reach_m, gboolean is_free);

#endif

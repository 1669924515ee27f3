/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what is under a point of the stage, and where does a dragged thing come to rest?
 * Answer:    the nearest spot within the hit area; floor, tops of obstacles and other points' heights pull within 8 px.
 * Not here:  gestures (app), edits (model/edit.c). */
#include "hit.h"

#include "floor.h"
#include "scene_internal.h"

#define PULL_px 8.0 /* chosen by hand: near enough to be meant */

static double
distance_px(const hs_view *view, const hs_spot *spot, hs_vec2 at_px)
{
    hs_vec2 a = hs_view_to_surface(view, (hs_vec2){spot->least_m.x, spot->most_m.y});
    hs_vec2 b = hs_view_to_surface(view, (hs_vec2){spot->most_m.x, spot->least_m.y});

    return hypot(at_px.x - CLAMP(at_px.x, a.x, b.x), at_px.y - CLAMP(at_px.y, a.y, b.y));
}

gboolean
hs_hit_at(const hs_scene *scene,
          const hs_view *view,
          hs_vec2 at_px,
          double near_px,
          hs_spot *ret_spot)
{
    const hs_spot *best = NULL;
    double least_px = near_px;

    for (guint i = 0; i < scene->spots->len; i++) {
        const hs_spot *spot = &g_array_index(scene->spots, hs_spot, i);
        double away_px = distance_px(view, spot, at_px);

        if (best && spot->kind != best->kind)
            break; /* spots are sorted by precedence */
        if (away_px <= least_px) {
            least_px = away_px;
            best = spot;
        }
    }
    if (best)
        *ret_spot = *best;
    return best != NULL;
}

static double
round_to(double value, double step)
{
    return step > 0 ? round(value / step) * step : value;
}

/* Takes the offer when it is nearer than what was taken so far. */
static gboolean
pulls(double offer_m, double at_m, double *nearest_m)
{
    double away_m = fabs(offer_m - at_m);

    if (!(away_m < *nearest_m))
        return FALSE;
    *nearest_m = away_m;
    return TRUE;
}

static void
snap_height(const hs_task *task, hs_vec2 at_m, int moved, double pull_m, hs_snap *snap)
{
    double nearest_m = pull_m, floor_m = hs_floor_height_m(&task->site, at_m.x);

    if (pulls(floor_m, at_m.y, &nearest_m)) {
        snap->world_m.y = floor_m;
        snap->to_z = HS_SNAP_FLOOR;
    }
    for (int i = 0; i < task->site.n_obstacles; i++) {
        const hs_obstacle *obstacle = &task->site.obstacles[i];

        if (at_m.x >= obstacle->x_m[0] - pull_m && at_m.x <= obstacle->x_m[1] + pull_m &&
            pulls(obstacle->z_m[1], at_m.y, &nearest_m)) {
            snap->world_m.y = obstacle->z_m[1];
            snap->to_z = HS_SNAP_OBSTACLE;
            snap->index_z = i;
        }
    }
    for (int i = 0; i < task->route.n_points; i++)
        if (i != moved && pulls(task->route.points[i].z_m, at_m.y, &nearest_m)) {
            snap->world_m.y = task->route.points[i].z_m;
            snap->to_z = HS_SNAP_POINT_HEIGHT;
            snap->index_z = i;
        }
}

hs_snap
hs_snap_point(const hs_task *task,
              const hs_scene *scene,
              const hs_view *view,
              hs_vec2 drawing_m,
              int moved,
              double step_m,
              gboolean is_free)
{
    hs_vec2 at_m = {hs_scene_world_of_x(scene, drawing_m.x), drawing_m.y};
    hs_snap snap = {.world_m = {round_to(at_m.x, step_m), round_to(at_m.y, step_m)},
                    .index_z = -1,
                    .index_x = -1};
    double pull_m = PULL_px / view->scale_px_per_m, nearest_m = pull_m;

    if (is_free)
        return snap;
    snap_height(task, at_m, moved, pull_m, &snap);
    for (int i = 0; i < task->route.n_points; i++)
        if (i != moved && pulls(task->route.points[i].x_m, at_m.x, &nearest_m)) {
            snap.world_m.x = task->route.points[i].x_m;
            snap.to_x = HS_SNAP_POINT_X;
            snap.index_x = i;
        }
    return snap;
}

double
hs_snap_reach_m(const hs_suit *suit, const hs_view *view, double reach_m, gboolean is_free)
{
    double nearest_m = PULL_px / view->scale_px_per_m,
           snapped_m = round_to(reach_m, is_free ? 0.001 : 0.01);

    for (int i = 0; !is_free && suit && i < suit->n_rating; i++)
        if (pulls(suit->rating[i].reach_m, reach_m, &nearest_m))
            snapped_m = suit->rating[i].reach_m;
    return fmax(snapped_m, 0);
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  which things of a scene can be grabbed, and where are they?
 * Answer:    hs_scene_find_spots(): points, grips, feet, bearers, in the order in which they lie over each other.
 * Not here:  what is under the pointer (hit.c). */
#include "figure.h"
#include "prims.h"

static void
put(hs_scene *scene, hs_spot_kind kind, int index, hs_vec2 at_m)
{
    hs_spot spot = {kind, index, at_m, at_m, at_m};

    g_array_append_val(scene->spots, spot);
}

static void
put_bearer(hs_scene *scene, int b)
{
    hs_figure figure;
    hs_spot spot = {.kind = HS_SPOT_BEARER, .index = b};

    hs_figure_make(scene, b, &figure);
    spot.at_m = hs_vec2_mix(figure.at[HS_POSE_HIP], figure.at[HS_POSE_SHOULDER], 0.5);
    spot.least_m = spot.most_m = figure.feet_m;
    for (int i = 0; i < HS_N_POSE; i++) {
        spot.least_m = (hs_vec2){fmin(spot.least_m.x, figure.at[i].x),
                                 fmin(spot.least_m.y, figure.at[i].y)};
        spot.most_m =
            (hs_vec2){fmax(spot.most_m.x, figure.at[i].x), fmax(spot.most_m.y, figure.at[i].y)};
    }
    g_array_append_val(scene->spots, spot);
}

void
hs_scene_find_spots(hs_scene *scene)
{
    const hs_task *task = scene->request->task;
    int n = scene->option->asked->n_bearers;

    for (int i = 0; i < task->route.n_points && !scene->is_plan; i++)
        put(scene, HS_SPOT_POINT, i,
            hs_scene_fixed(scene, task->route.points[i].x_m, task->route.points[i].z_m));
    if (!scene->sample)
        return;
    for (int i = 0; i < task->load.n_grips; i++) {
        hs_vec3 world_m = hs_scene_load_world(scene->sample, task->load.grips[i].at_m);

        put(scene, HS_SPOT_GRIP, i,
            hs_scene_moving(scene, world_m.x, scene->is_plan ? world_m.y : world_m.z));
    }
    for (int b = 0; b < n; b++) {
        const hs_bearer_sample *bearer = &scene->sample->bearers[b];
        double up_m = scene->is_plan ? bearer->feet_y_m : hs_or(bearer->floor_z_m, 0);

        put(scene, HS_SPOT_FEET, b, hs_scene_moving(scene, bearer->feet_x_m, up_m));
    }
    for (int b = 0; b < n && !scene->is_plan; b++)
        put_bearer(scene, b);
}

const hs_spot *
hs_scene_spots(const hs_scene *scene, int *ret_n)
{
    *ret_n = (int)scene->spots->len;
    return (const hs_spot *)(const void *)scene->spots->data;
}

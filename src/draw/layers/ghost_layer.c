/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  where will the load be at the points of its route?
 * Answer:    its outline in thin dashes at each point, at the pitch it has there.
 * Not here:  the route's line (route_layer.c). */
#include "solid.h"

/* The option's sample that arrives at a point: the last one of the leg that leads to it. */
static const hs_sample *
arrival(const hs_option_result *option, int point)
{
    const hs_sample *found = NULL;

    for (int i = 0; i < option->n_samples; i++) {
        if (option->samples[i].leg == point && !option->samples[i].in_hold)
            found = &option->samples[i];
        if (point == 0 && i == 0)
            return &option->samples[0];
    }
    return found;
}

void
hs_layer_ghost_draw(hs_scene *scene)
{
    const hs_task *task = scene->request->task;

    scene->depth = HS_DEPTH_GHOST;
    for (int p = 0; p < task->route.n_points; p++) {
        const hs_sample *sample = arrival(scene->option, p);

        if (!sample)
            continue;
        hs_projection projection = {HS_LOOK_ALONG_Y, sample,
                                    hs_scene_x_of_world(scene, sample->x_m) - sample->x_m};

        for (int i = 0; i < task->load.n_parts; i++) {
            hs_outline outline;

            if (task->load.parts[i].is_void ||
                !hs_solid_outline(&projection, &task->load.parts[i], 0, &outline))
                continue;
            hs_prim *prim =
                hs_scene_add_shape(scene, outline.at, outline.n, HS_INK_SOFT, HS_INK_NONE);

            prim->weight = p == scene->request->chosen_point ? 1.2 : 0.7;
            prim->dash = HS_DASH_DOT;
        }
    }
}

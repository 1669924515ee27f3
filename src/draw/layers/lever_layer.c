/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  at which lever do the forces act?
 * Answer:    reach from the ankles to the hands, lever of the hands about the low back, levers of two bearers about the CG; each
 *            drawn as long as its figure says.
 * Not here:  moments (core/body). */
#include "figure.h"
#include "translate.h"

static void
draw_reach(hs_scene *scene, int b)
{
    const hs_bearer_sample *bearer = &scene->sample->bearers[b];
    hs_vec2 hands_m = hs_scene_hands(scene, b),
            feet_m = hs_scene_moving(scene, bearer->feet_x_m, hs_or(bearer->floor_z_m, 0));

    if (fabs(hands_m.x - feet_m.x) < 0.02)
        return;
    scene->depth = HS_DEPTH_MARK;
    hs_prim *drop = hs_scene_add_segment(scene, hands_m, (hs_vec2){hands_m.x, feet_m.y},
                                         HS_INK_SOFT, 0.9, HS_DASH_DOT);

    drop->depth = HS_DEPTH_FORCE - 1;
    hs_prim *reach = hs_scene_add_dimension(scene, feet_m, (hs_vec2){hands_m.x, feet_m.y},
                                            FALSE, _("reach %s"));

    reach->offset = (hs_vec2){0, 4.9};
}

static void
draw_low_back(hs_scene *scene, int b)
{
    hs_figure figure;

    hs_figure_make(scene, b, &figure);
    if (!figure.is_found || figure.seen != HS_SEEN_FROM_SIDE)
        return;
    hs_vec2 disc_m = figure.at[HS_POSE_L5S1], hand_m = {figure.at[HS_POSE_HAND].x, disc_m.y};

    scene->depth = HS_DEPTH_MARK;
    hs_scene_add_segment(scene, figure.at[HS_POSE_HAND], hand_m, HS_INK_SOFT, 0.9, HS_DASH_DOT);
    hs_scene_add_disc(scene, disc_m, 0.3, HS_INK_INK, HS_INK_PAPER)->weight = 1.6;
    hs_scene_add_dimension(scene, disc_m, hand_m, FALSE, _("lever %s"));
}

static void
draw_crew(hs_scene *scene)
{
    hs_vec2 cg_m = hs_scene_moving(scene, scene->sample->cg_m.x, scene->sample->cg_m.z);
    hs_vec3 least_m, most_m;

    if (!hs_has(cg_m.x) || !hs_scene_load_box(scene->request->task, &least_m, &most_m))
        return;
    double under_m = fmin(scene->sample->z_m, hs_scene_load_world(scene->sample, least_m).z);

    for (int b = 0; b < 2; b++) {
        hs_vec2 hands_m = hs_scene_hands(scene, b);

        if (fabs(hands_m.x - cg_m.x) < 0.02)
            continue;
        hs_prim *lever = hs_scene_add_dimension(scene, (hs_vec2){hands_m.x, under_m},
                                                (hs_vec2){cg_m.x, under_m}, FALSE, NULL);

        lever->offset = (hs_vec2){0, 1.3};
    }
}

void
hs_layer_lever_draw(hs_scene *scene)
{
    int n = scene->option->asked->n_bearers;

    for (int b = 0; b < n; b++) {
        draw_reach(scene, b);
        draw_low_back(scene, b);
    }
    scene->depth = HS_DEPTH_MARK;
    if (n == 2)
        draw_crew(scene);
}

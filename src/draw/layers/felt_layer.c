/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what do the hands of a suited bearer feel?
 * Answer:    a filled arrow of the felt force beside the suit's.
 * Not here:  the suit's own part and bearers without a suit (force_layer.c). */
#include "scene_internal.h"
#include "translate.h"

void
hs_layer_felt_draw(hs_scene *scene)
{
    for (int b = 0; b < scene->option->asked->n_bearers; b++) {
        const hs_bearer_sample *bearer = &scene->sample->bearers[b];
        hs_vec2 at_m = hs_scene_hands(scene, b);
        double felt_N = bearer->felt_force_N;
        double away = at_m.x >= hs_scene_moving(scene, bearer->feet_x_m, 0).x ? 1 : -1;

        if (!hs_scene_suit(scene, b))
            continue;
        if (scene->request->power_off && bearer->power_lost.is_known)
            felt_N = bearer->power_lost.felt_force_N;
        if (!hs_has(felt_N))
            continue;
        scene->depth = HS_DEPTH_FORCE;
        hs_scene_add_arrow(scene, at_m, (hs_vec2){0, felt_N}, HS_ARROW_PERSON);
        g_autofree char *force = hs_scene_text(scene, felt_N, "N");
        hs_prim *label =
            hs_scene_add_label(scene, at_m, away > 0 ? HS_SIDE_LEFT : HS_SIDE_RIGHT,
                               HS_INK_PERSON, g_strdup_printf(_("%s felt"), force));

        label->force_N = (hs_vec2){0, felt_N};
        label->offset = (hs_vec2){-0.2 * away, 0.3};
        label->is_bold = TRUE;
        label->priority = 10;
    }
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  where does the load's weight act, and how much is it?
 * Answer:    a hatched arrow from the load's CG down, and the quartered mark.
 * Not here:  the CG of load, people and suits together (combined_layer.c). */
#include "scene_internal.h"
#include "units.h"

void
hs_layer_weight_draw(hs_scene *scene)
{
    const hs_sample *sample = scene->sample;
    double weight_N = scene->request->results->load.mass_kg * HS_GRAVITY_m_s2;
    hs_vec2 at_m = hs_scene_moving(scene, sample->cg_m.x, sample->cg_m.z);

    if (!hs_has(sample->cg_m.x) || !hs_has(sample->cg_m.z))
        return;
    scene->depth = HS_DEPTH_FORCE;
    hs_scene_add_arrow(scene, at_m, (hs_vec2){0, -weight_N}, HS_ARROW_WEIGHT);
    scene->depth = HS_DEPTH_MARK;
    hs_scene_add(scene, HS_PRIM_CG)->at = at_m;
    hs_prim *label = hs_scene_add_label(scene, at_m, HS_SIDE_RIGHT, HS_INK_WEIGHT,
                                        hs_scene_text(scene, weight_N, "N"));

    label->force_N = (hs_vec2){0, -weight_N};
    label->offset = (hs_vec2){0.2, -0.5};
    label->is_bold = TRUE;
    label->priority = 6;
}

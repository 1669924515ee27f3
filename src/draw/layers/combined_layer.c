/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  where is the CG of load, people and suits together?
 * Answer:    the quartered mark with a plumb line to the floor.
 * Not here:  the load's own CG (weight_layer.c), who stands how firmly (base_layer.c). */
#include "floor.h"
#include "scene_internal.h"
#include "translate.h"

static const char *
words(const hs_scene *scene)
{
    gboolean has_suit = FALSE;
    int n = scene->option->asked->n_bearers;

    for (int b = 0; b < n; b++)
        has_suit |= hs_scene_suit(scene, b) != NULL;
    if (has_suit)
        return n > 1 ? _("CG of load + bearers + suits") : _("CG of load + bearer + suit");
    return n > 1 ? _("CG of load + bearers") : _("CG of load + bearer");
}

void
hs_layer_combined_draw(hs_scene *scene)
{
    hs_vec3 world_m = scene->sample->combined_m;

    if (!hs_has(world_m.x) || !hs_has(world_m.z))
        return;
    hs_vec2 at_m = hs_scene_moving(scene, world_m.x, world_m.z);
    hs_vec2 foot_m = {at_m.x, hs_floor_height_m(&scene->request->task->site, world_m.x)};

    scene->depth = HS_DEPTH_MARK - 1;
    hs_scene_add_segment(scene, at_m, foot_m, HS_INK_MARK, 1.2, HS_DASH_SHORT);
    scene->depth = HS_DEPTH_MARK;
    hs_scene_add(scene, HS_PRIM_CG)->at = at_m;
    hs_prim *label =
        hs_scene_add_label(scene, at_m, HS_SIDE_RIGHT, HS_INK_SOFT, g_strdup(words(scene)));

    label->is_small = TRUE;
    label->priority = 2;
    label->size = 1; /* always with a leader: it may stand far off */
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what is the picture drawn on?
 * Answer:    metric squared paper, and the bars of length and force.
 * Not here:  how fine the squares are at a zoom (paint.c). */
#include "scene_internal.h"

void
hs_layer_paper_draw(hs_scene *scene)
{
    scene->depth = HS_DEPTH_PAPER;
    hs_scene_add(scene, HS_PRIM_GRID)->stroke = HS_INK_GRID;
    scene->depth = HS_DEPTH_MARK;
    hs_prim *scales = hs_scene_add(scene, HS_PRIM_SCALES);

    scales->stroke = HS_INK_INK;
    scales->size = scene->request->us_units ? 1 : 0;
}

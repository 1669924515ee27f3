/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  who begins and ends a scene?
 * Answer:    scene.c and plan.c, with these.
 * Not here:  adding to it (scene_internal.h). */
#ifndef HS_PRIMS_H
#define HS_PRIMS_H

#include "scene_internal.h"

hs_scene *hs_scene_new(const hs_scene_request *request);
/* What can be grabbed, in order of precedence (hit.h). */
void hs_scene_find_spots(hs_scene *scene);
/* Sorts from back to front and forgets what was only lent. */
void hs_scene_finish(hs_scene *scene);

#endif

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what does a grip look like?
 * Answer:    hs_grip_mark_draw(): one small sign for each kind, to scale, on the side of the load where it is.
 * Not here:  who holds it (figure_layer.c). */
#ifndef HS_GRIP_MARK_H
#define HS_GRIP_MARK_H

#include "solid.h"

void hs_grip_mark_draw(hs_scene *scene, const hs_projection *projection, const hs_grip *grip);

#endif

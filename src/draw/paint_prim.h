/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how is one thing of a scene stroked and filled?
 * Answer:    hs_paint_prim(), and hs_paint_group() for shapes that share one outline.
 * Not here:  the order (paint.c), texts (paint_label.c). */
#ifndef HS_PAINT_PRIM_H
#define HS_PAINT_PRIM_H

#include "paint_internal.h"

#define HS_CG_em 0.56 /* radius of the quartered mark in heights of the type */

void hs_paint_prim(const hs_painter *painter, const hs_prim *prim);
void hs_paint_group(const hs_painter *painter, const hs_prim *prims, int n);
double hs_paint_band_px(const hs_painter *painter, const hs_prim *prim);
hs_box hs_box_union(hs_box a, hs_box b);

#endif

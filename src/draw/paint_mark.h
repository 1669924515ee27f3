/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how are arrows, dimensions and marks painted?
 * Answer:    one function each; what a colour says, the line's style says again.
 * Not here:  shapes and lines (paint_prim.c). */
#ifndef HS_PAINT_MARK_H
#define HS_PAINT_MARK_H

#include "paint_internal.h"

void hs_paint_arrow(const hs_painter *painter, const hs_prim *prim);
/* The quartered disc alone; line_px: thickness of a line of weight 1. */
void hs_paint_cg_disc(cairo_t *cr, hs_vec2 at, double r, double line_px);
void hs_paint_cg(const hs_painter *painter, const hs_prim *prim);
void hs_paint_dimension(const hs_painter *painter, const hs_prim *prim);
void hs_paint_peak(const hs_painter *painter, const hs_prim *prim);
void hs_paint_break(const hs_painter *painter, const hs_prim *prim);
void hs_paint_ruler(const hs_painter *painter, const hs_prim *prim);

#endif

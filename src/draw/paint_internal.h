/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what do the painting files share?
 * Answer:    hs_painter: context, scene, view and theme of one call, and how thick a line is there.
 * Not here:  what others may call (paint.h). */
#ifndef HS_PAINT_INTERNAL_H
#define HS_PAINT_INTERNAL_H

#include "label.h"
#include "paint.h"

#include <pango/pangocairo.h>

typedef struct {
    cairo_t *cr; /* NULL: only measured */
    const hs_scene *scene;
    const hs_view *view;
    const hs_theme *theme;
    PangoContext *pango;
} hs_painter;

hs_colour hs_theme_colour(const hs_theme *theme, hs_ink ink);
void hs_paint_colour(cairo_t *cr, hs_colour colour, double alpha);
double hs_painter_unit_px(const hs_painter *painter); /* thickness of weight 1 */
hs_vec2 hs_painter_place(const hs_painter *painter, const hs_prim *prim, hs_vec2 at_m);
/* Tail and tip of an arrow on the surface. */
void hs_painter_arrow(const hs_painter *painter,
                      const hs_prim *prim,
                      hs_vec2 *ret_tail_px,
                      hs_vec2 *ret_tip_px);
const hs_vec2 *hs_painter_points(const hs_painter *painter, const hs_prim *prim);
/* Ends of a dimension's line on the surface. */
void hs_painter_dimension(const hs_painter *painter,
                          const hs_prim *prim,
                          hs_vec2 *ret_from_px,
                          hs_vec2 *ret_to_px);

PangoLayout *hs_painter_layout(const hs_painter *painter,
                               const char *text,
                               gboolean is_small,
                               gboolean is_bold);
PangoContext *hs_paint_pango_new(void);
/* A thin rim of paper round a text that stands on lines. */
void hs_paint_halo(cairo_t *cr,
                   PangoLayout *layout,
                   double x_px,
                   double y_px,
                   double wide_px,
                   const hs_theme *theme);

/* Bars of length and force of round values that suit the view. */
typedef struct {
    double length_m, force_N;
    hs_vec2 at_px; /* left end of the first */
    char *length_text, *force_text;
    double length_text_px, force_text_px;
    hs_box box;
} hs_scale_bars;
void hs_scale_bars_find(const hs_painter *painter, gboolean us_units, hs_scale_bars *ret_bars);
void hs_scale_bars_clear(hs_scale_bars *bars);
void hs_paint_scales(const hs_painter *painter, const hs_prim *prim);

/* One label as it will stand. */
typedef struct {
    const hs_prim *prim;
    PangoLayout *layout;
    hs_label_wish wish;
    gboolean moves;
} hs_placed;
/* Every label of the scene in its place; those of the kept part do not depend on the moving part. */
gboolean hs_placed_is_above(const hs_placed *label); /* painted with what moves */
GArray *hs_paint_place_labels(const hs_painter *painter);
void hs_paint_labels(const hs_painter *painter, const GArray *placed, hs_paint_part part);
/* Surface box of one thing without its label; width < 0: none. */
hs_box hs_paint_prim_box(const hs_painter *painter, const hs_prim *prim);

#endif

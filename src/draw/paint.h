/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how does a scene get onto a surface?
 * Answer:    hs_paint_scene() for any cairo context: stage, sheet, SVG, PNG.
 * Not here:  what the picture consists of (scene.h). */
#ifndef HS_PAINT_H
#define HS_PAINT_H

#include "scene.h"
#include "theme.h"
#include "view.h"

#include <cairo.h>

void
hs_paint_scene(cairo_t *cr, const hs_scene *scene, const hs_view *view, const hs_theme *theme);
/* Only the squares, which change with the view alone; only the rest of what does not move while playing (site, route, ghosts);
 * or only what moves. The three over each other are the whole. */
typedef enum {
    HS_PAINT_ALL,
    HS_PAINT_SQUARES,
    HS_PAINT_KEPT,
    HS_PAINT_MOVING
} hs_paint_part;
void hs_paint_part_of(cairo_t *cr,
                      const hs_scene *scene,
                      const hs_view *view,
                      const hs_theme *theme,
                      hs_paint_part part);

/* A picture that is painted part by part: its labels find their places once. Scene and theme have to outlive it. */
typedef struct hs_picture hs_picture;
hs_picture *hs_picture_new(const hs_scene *scene, const hs_view *view, const hs_theme *theme);
void hs_picture_free(hs_picture *picture);
void hs_picture_paint(hs_picture *picture, cairo_t *cr, hs_paint_part part);
/* Surface rectangle that the moving part covers, labels included. */
void hs_picture_moving_bounds(
    hs_picture *picture, double *ret_x, double *ret_y, double *ret_width, double *ret_height);

/* Surface rectangle of a height's figure; FALSE: it is not there. */
gboolean hs_picture_height_box(hs_picture *picture,
                               hs_height height,
                               double *ret_x,
                               double *ret_y,
                               double *ret_width,
                               double *ret_height);

/* The glyph of a status: a stroke that ends before, touches or passes a wall; an empty frame for not judged. */
void hs_paint_status_glyph(cairo_t *cr,
                           hs_finding_status status,
                           double x,
                           double y,
                           double size,
                           const hs_theme *theme);
/* The bar: from 0 to beyond the wall at the limit; ratio HS_ABSENT draws nothing but the frame. */
void hs_paint_ratio_bar(cairo_t *cr,
                        hs_finding_status status,
                        double ratio,
                        double x,
                        double y,
                        double width,
                        double height,
                        const hs_theme *theme);

#endif

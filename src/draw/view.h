/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  where on the surface is a place, and back?
 * Answer:    hs_view: metres to pixels, z up; fit, zoom, pan.
 * Not here:  what is there (scene.h, hit.h). */
#ifndef HS_VIEW_H
#define HS_VIEW_H

#include "scene.h"

typedef struct {
    double x0_px, y0_px; /* where drawing coordinate (0, 0) is */
    double scale_px_per_m;
    double width_px, height_px;
    double font_px;        /* height of the label type */
    double force_px_per_N; /* one scale for every arrow on the stage */
} hs_view;

/* As much of the way as leaves people legible, with load and people of this moment whole in it; the picture travels along
 * with the load where that is not the whole way. A margin for labels; width and height of the surface. */
hs_view hs_view_fit(const hs_scene *scene, double width_px, double height_px, double font_px);
/* The same for two scenes side by side: same scale, floor line and force scale, each at its own place of the way. */
void hs_view_fit_pair(const hs_scene *a,
                      const hs_scene *b,
                      double width_px,
                      double height_px,
                      double font_px,
                      hs_view ret_views[2]);
/* The whole way, however small. */
hs_view
hs_view_fit_whole(const hs_scene *scene, double width_px, double height_px, double font_px);
/* One view of the whole way for two scenes drawn side by side at the same size. */
hs_view hs_view_fit_two(
    const hs_scene *a, const hs_scene *b, double width_px, double height_px, double font_px);
/* A small picture: load and people of this moment fill it, whatever else there is. */
hs_view
hs_view_fit_people(const hs_scene *scene, double width_px, double height_px, double font_px);
hs_vec2 hs_view_to_surface(const hs_view *view, hs_vec2 at_m);
hs_vec2 hs_view_to_world(const hs_view *view, hs_vec2 at_px);
void hs_view_zoom(hs_view *view, double factor, hs_vec2 about_px);
void hs_view_pan(hs_view *view, double dx_px, double dy_px);

#endif

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how is one thing of a scene stroked and filled?
 * Answer:    one function for each kind.
 * Not here:  the order (paint.c), arrows and marks (paint_mark.c), texts (paint_label.c). */
#include "paint_prim.h"

#include "paint_mark.h"

/* Thickness of the path to the floor: this part of an arrow's length for the same force. */
#define BAND_PART 0.065

static void
trace(const hs_painter *painter, const hs_prim *prim)
{
    const hs_vec2 *points_m = hs_painter_points(painter, prim);

    cairo_new_path(painter->cr);
    for (int i = 0; i < prim->n; i++) {
        hs_vec2 at_px = hs_view_to_surface(painter->view, points_m[i]);

        cairo_line_to(painter->cr, at_px.x, at_px.y);
    }
}

static void
set_stroke(const hs_painter *painter, const hs_prim *prim, double factor)
{
    double unit_px = hs_painter_unit_px(painter), weight = prim->weight;
    double dash[4] = {0};
    int n = 0;

    if (painter->theme->kind == HS_THEME_PAPER)
        weight = fmax(weight * 0.8, 1.0);
    if (prim->dash == HS_DASH_LONG)
        dash[0] = 9 * unit_px, dash[1] = 4.5 * unit_px, n = 2;
    else if (prim->dash == HS_DASH_SHORT)
        dash[0] = 4.5 * unit_px, dash[1] = 3 * unit_px, n = 2;
    else if (prim->dash == HS_DASH_DOT)
        dash[0] = 0.01, dash[1] = fmax(3.6, 2.6 * weight) * unit_px, n = 2;
    cairo_set_line_cap(painter->cr,
                       prim->dash == HS_DASH_DOT ? CAIRO_LINE_CAP_ROUND : CAIRO_LINE_CAP_BUTT);
    cairo_set_dash(painter->cr, dash, n, 0);
    cairo_set_line_width(painter->cr, weight * unit_px * factor);
    hs_paint_colour(painter->cr, hs_theme_colour(painter->theme, prim->stroke), 1);
}

static void
paint_shape(const hs_painter *painter, const hs_prim *prim)
{
    trace(painter, prim);
    cairo_close_path(painter->cr);
    if (prim->fill != HS_INK_NONE) {
        hs_paint_colour(painter->cr, hs_theme_colour(painter->theme, prim->fill), prim->alpha);
        cairo_fill_preserve(painter->cr);
    }
    if (prim->stroke != HS_INK_NONE) {
        set_stroke(painter, prim, 1);
        cairo_stroke(painter->cr);
    }
}

double
hs_paint_band_px(const hs_painter *painter, const hs_prim *prim)
{
    return fmax(prim->size * painter->view->force_px_per_N * BAND_PART, 0.8);
}

static void
paint_band(const hs_painter *painter, const hs_prim *prim)
{
    trace(painter, prim);
    cairo_set_dash(painter->cr, NULL, 0, 0);
    cairo_set_line_width(painter->cr, hs_paint_band_px(painter, prim));
    cairo_set_line_cap(painter->cr, CAIRO_LINE_CAP_ROUND);
    hs_paint_colour(painter->cr, hs_theme_colour(painter->theme, prim->stroke),
                    prim->group ? 1 : prim->alpha);
    cairo_stroke(painter->cr);
}

/* All outlines first, twice as thick, then all fills over them: what is left is the outline of the whole. */
void
hs_paint_group(const hs_painter *painter, const hs_prim *prims, int n)
{
    gboolean is_whole = prims->alpha >= 1;

    if (!is_whole)
        cairo_push_group(painter->cr);
    if (prims->kind == HS_PRIM_BAND) {
        for (int i = 0; i < n; i++)
            paint_band(painter, &prims[i]);
        n = 0;
    }
    for (int i = 0; i < n; i++) {
        trace(painter, &prims[i]);
        cairo_close_path(painter->cr);
        set_stroke(painter, &prims[i], 2);
        cairo_stroke(painter->cr);
    }
    for (int i = 0; i < n; i++) {
        if (prims[i].fill == HS_INK_NONE)
            continue;
        trace(painter, &prims[i]);
        cairo_close_path(painter->cr);
        hs_paint_colour(painter->cr, hs_theme_colour(painter->theme, prims[i].fill), 1);
        cairo_fill(painter->cr);
    }
    if (!is_whole) {
        cairo_pop_group_to_source(painter->cr);
        cairo_paint_with_alpha(painter->cr, prims->alpha);
    }
}

static void
paint_ground(const hs_painter *painter, const hs_prim *prim)
{
    const hs_view *view = painter->view;
    const hs_vec2 *points_m = hs_painter_points(painter, prim);
    hs_vec2 first = hs_view_to_surface(view, points_m[0]),
            last = hs_view_to_surface(view, points_m[prim->n - 1]);
    cairo_t *cr = painter->cr;
    double left = fmin(first.x, 0) - 10, right = fmax(last.x, view->width_px) + 10;

    for (int pass = 0; pass < 2; pass++) {
        cairo_new_path(cr);
        cairo_move_to(cr, left, first.y);
        for (int i = 0; i < prim->n; i++) {
            hs_vec2 at = hs_view_to_surface(view, points_m[i]);

            cairo_line_to(cr, at.x, at.y);
        }
        cairo_line_to(cr, right, last.y);
        if (pass == 0) {
            cairo_line_to(cr, right, fmax(view->height_px, last.y) + 10);
            cairo_line_to(cr, left, fmax(view->height_px, first.y) + 10);
            cairo_close_path(cr);
            hs_paint_colour(cr, hs_theme_colour(painter->theme, prim->fill), 1);
            cairo_fill(cr);
        }
    }
    set_stroke(painter, prim, 1);
    cairo_stroke(cr);
}

static void
rule(const hs_painter *painter, double step_m, double weight, double alpha)
{
    const hs_view *view = painter->view;
    hs_vec2 least = hs_view_to_world(view, (hs_vec2){0, view->height_px}),
            most = hs_view_to_world(view, (hs_vec2){view->width_px, 0});

    for (double x = ceil(least.x / step_m); x <= most.x / step_m; x++) {
        double x_px = hs_view_to_surface(view, (hs_vec2){x * step_m, 0}).x;

        cairo_move_to(painter->cr, x_px, 0);
        cairo_line_to(painter->cr, x_px, view->height_px);
    }
    for (double y = ceil(least.y / step_m); y <= most.y / step_m; y++) {
        double y_px = hs_view_to_surface(view, (hs_vec2){0, y * step_m}).y;

        cairo_move_to(painter->cr, 0, y_px);
        cairo_line_to(painter->cr, view->width_px, y_px);
    }
    hs_paint_colour(painter->cr, painter->theme->grid, alpha);
    cairo_set_dash(painter->cr, NULL, 0, 0);
    cairo_set_line_width(painter->cr, weight * hs_painter_unit_px(painter));
    cairo_stroke(painter->cr);
}

/* Squares of 0.1 m while they are wide enough to be seen as such, heavier lines at 0.5 m and 1 m. */
static void
paint_grid(const hs_painter *painter)
{
    double scale = painter->view->scale_px_per_m, em = painter->view->font_px;

    if (painter->theme->grid.a <= 0)
        return;
    if (scale * 0.1 > 0.55 * em)
        rule(painter, 0.1, 0.7, 0.55);
    if (scale * 0.5 > 0.55 * em)
        rule(painter, 0.5, 0.9, 0.9);
    rule(painter, 1.0, 1.5, 1.0);
}

static void
paint_disc(const hs_painter *painter, const hs_prim *prim)
{
    hs_vec2 at_px = hs_painter_place(painter, prim, prim->at);

    cairo_new_path(painter->cr);
    cairo_arc(painter->cr, at_px.x, at_px.y, prim->size * painter->view->font_px, 0, 2 * G_PI);
    if (prim->fill != HS_INK_NONE) {
        hs_paint_colour(painter->cr, hs_theme_colour(painter->theme, prim->fill), 1);
        cairo_fill_preserve(painter->cr);
    }
    set_stroke(painter, prim, 1);
    cairo_stroke(painter->cr);
}

static void
paint_bar(const hs_painter *painter, const hs_prim *prim)
{
    hs_vec2 a = hs_painter_place(painter, prim, prim->at),
            b = hs_painter_place(painter, prim, prim->to);

    cairo_new_path(painter->cr);
    cairo_move_to(painter->cr, a.x, a.y);
    cairo_line_to(painter->cr, b.x, b.y);
    set_stroke(painter, prim, 1);
    cairo_stroke(painter->cr);
}

void
hs_paint_prim(const hs_painter *painter, const hs_prim *prim)
{
    switch (prim->kind) {
    case HS_PRIM_LINE:
        trace(painter, prim);
        set_stroke(painter, prim, 1);
        cairo_stroke(painter->cr);
        break;
    case HS_PRIM_SHAPE:
        paint_shape(painter, prim);
        break;
    case HS_PRIM_DISC:
        paint_disc(painter, prim);
        break;
    case HS_PRIM_CG:
        hs_paint_cg(painter, prim);
        break;
    case HS_PRIM_ARROW:
        hs_paint_arrow(painter, prim);
        break;
    case HS_PRIM_DIMENSION:
        hs_paint_dimension(painter, prim);
        break;
    case HS_PRIM_GRID:
        paint_grid(painter);
        break;
    case HS_PRIM_GROUND:
        paint_ground(painter, prim);
        break;
    case HS_PRIM_BAND:
        paint_band(painter, prim);
        break;
    case HS_PRIM_PEAK:
        hs_paint_peak(painter, prim);
        break;
    case HS_PRIM_BAR:
        paint_bar(painter, prim);
        break;
    case HS_PRIM_BREAK:
        hs_paint_break(painter, prim);
        break;
    case HS_PRIM_SCALES:
        hs_paint_scales(painter, prim);
        break;
    case HS_PRIM_RULER:
        hs_paint_ruler(painter, prim);
        break;
    case HS_PRIM_LABEL:
    case HS_N_PRIMS:
        break;
    }
}

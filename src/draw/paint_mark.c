/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how are arrows, dimensions and marks painted?
 * Answer:    one function each; what a colour says, the line's style says again.
 * Not here:  shapes and lines (paint_prim.c). */
#include "paint_mark.h"

#include "paint_prim.h"

/* An arrow in its own frame: from (0, 0) along +x to (length, 0). */
static void
trace_head(cairo_t *cr, double length, double head, double half)
{
    cairo_new_path(cr);
    cairo_move_to(cr, length, 0);
    cairo_line_to(cr, length - head, half);
    cairo_line_to(cr, length - head, -half);
    cairo_close_path(cr);
}

static void
paint_person(cairo_t *cr, double length, double unit)
{
    double head = fmin(9.5 * unit, length * 0.6);

    cairo_move_to(cr, 0, 0);
    cairo_line_to(cr, length - head * 0.9, 0);
    cairo_set_line_width(cr, 3.4 * unit);
    cairo_stroke(cr);
    trace_head(cr, length, head, head * 0.48);
    cairo_fill(cr);
}

static void
paint_suit(cairo_t *cr, double length, double unit, hs_colour paper, hs_colour ink)
{
    double head = fmin(9.5 * unit, length * 0.6), apart = 2.1 * unit;

    cairo_rectangle(cr, 0, -apart, length - head, 2 * apart);
    hs_paint_colour(cr, paper, 1);
    cairo_fill(cr);
    hs_paint_colour(cr, ink, 1);
    cairo_set_line_width(cr, 1.5 * unit);
    for (int k = -1; k <= 1; k += 2) {
        cairo_move_to(cr, 0, k * apart);
        cairo_line_to(cr, length - head, k * apart);
    }
    cairo_stroke(cr);
    trace_head(cr, length, head, head * 0.52);
    hs_paint_colour(cr, paper, 1);
    cairo_fill_preserve(cr);
    hs_paint_colour(cr, ink, 1);
    cairo_stroke(cr);
}

static void
paint_weight(cairo_t *cr, double length, double unit, hs_colour paper, hs_colour ink)
{
    double head = fmin(10 * unit, length * 0.6), half = 3.0 * unit, shaft = length - head;

    cairo_save(cr);
    cairo_rectangle(cr, 0, -half, shaft, 2 * half);
    hs_paint_colour(cr, paper, 1);
    cairo_fill_preserve(cr);
    cairo_clip(cr);
    hs_paint_colour(cr, ink, 1);
    cairo_set_line_width(cr, 1.2 * unit);
    for (double x = -2 * half; x < shaft; x += 3.6 * unit) {
        cairo_move_to(cr, x, half);
        cairo_line_to(cr, x + 2 * half, -half);
    }
    cairo_stroke(cr);
    cairo_restore(cr);
    hs_paint_colour(cr, ink, 1);
    cairo_set_line_width(cr, 1.1 * unit);
    cairo_rectangle(cr, 0, -half, shaft, 2 * half);
    cairo_stroke(cr);
    trace_head(cr, length, head, head * 0.52);
    cairo_fill(cr);
}

void
hs_paint_arrow(const hs_painter *painter, const hs_prim *prim)
{
    hs_colour ink = hs_theme_colour(painter->theme, prim->stroke);
    double unit = hs_painter_unit_px(painter);
    hs_vec2 tail, tip;
    cairo_t *cr = painter->cr;

    hs_painter_arrow(painter, prim, &tail, &tip);
    double length = hypot(tip.x - tail.x, tip.y - tail.y);

    if (length < 1)
        return;
    cairo_save(cr);
    cairo_translate(cr, tail.x, tail.y);
    cairo_rotate(cr, atan2(tip.y - tail.y, tip.x - tail.x));
    cairo_set_dash(cr, NULL, 0, 0);
    cairo_set_line_cap(cr, CAIRO_LINE_CAP_BUTT);
    cairo_set_line_join(cr, CAIRO_LINE_JOIN_MITER);
    hs_paint_colour(cr, ink, 1);
    if (prim->style == HS_ARROW_PERSON)
        paint_person(cr, length, unit);
    else if (prim->style == HS_ARROW_SUIT)
        paint_suit(cr, length, unit, painter->theme->paper, ink);
    else
        paint_weight(cr, length, unit, painter->theme->paper, ink);
    cairo_restore(cr);
}

/* Black and white in every theme: it is a mark, not a colour. */
void
hs_paint_cg_disc(cairo_t *cr, hs_vec2 at, double r, double line_px)
{
    static const hs_colour white = {1, 1, 1, 1}, black = {0.07, 0.08, 0.09, 1};

    cairo_new_path(cr);
    cairo_set_dash(cr, NULL, 0, 0);
    cairo_arc(cr, at.x, at.y, r + line_px * 1.2, 0, 2 * G_PI);
    hs_paint_colour(cr, white, 1);
    cairo_fill(cr);
    for (int quarter = 0; quarter < 2; quarter++) {
        double from = quarter ? G_PI / 2 : -G_PI / 2;

        cairo_move_to(cr, at.x, at.y);
        cairo_arc(cr, at.x, at.y, r, from, from + G_PI / 2);
        cairo_close_path(cr);
    }
    hs_paint_colour(cr, black, 1);
    cairo_fill(cr);
    cairo_arc(cr, at.x, at.y, r, 0, 2 * G_PI);
    cairo_set_line_width(cr, 1.5 * line_px);
    cairo_stroke(cr);
}

void
hs_paint_cg(const hs_painter *painter, const hs_prim *prim)
{
    hs_paint_cg_disc(painter->cr, hs_painter_place(painter, prim, prim->at),
                     HS_CG_em * painter->view->font_px, hs_painter_unit_px(painter));
}

static void
tick(cairo_t *cr, hs_vec2 at, double half, gboolean is_upright)
{
    cairo_move_to(cr, at.x - (is_upright ? half : 0), at.y - (is_upright ? 0 : half));
    cairo_line_to(cr, at.x + (is_upright ? half : 0), at.y + (is_upright ? 0 : half));
}

static void
extend(cairo_t *cr, hs_vec2 from, hs_vec2 to)
{
    if (hypot(to.x - from.x, to.y - from.y) < 3)
        return;
    cairo_move_to(cr, from.x, from.y);
    cairo_line_to(cr, to.x, to.y);
}

/* Room for the figure in the middle of the line; 0 where it stands beside it. */
static double
gap_px(const hs_painter *painter, const hs_prim *prim, hs_vec2 from, hs_vec2 to)
{
    g_autoptr(PangoLayout) layout = hs_painter_layout(painter, prim->text, TRUE, FALSE);
    double em = painter->view->font_px, length = hypot(to.x - from.x, to.y - from.y);
    PangoRectangle logical;

    pango_layout_get_extents(layout, NULL, &logical);
    double text_px = (double)(prim->is_upright ? logical.height : logical.width) / PANGO_SCALE;

    return length > text_px + 1.2 * em ? text_px + 0.5 * em : 0;
}

static void
trace_with_gap(cairo_t *cr, hs_vec2 from, hs_vec2 to, double gap)
{
    double length = hypot(to.x - from.x, to.y - from.y),
           part = length > 0 ? (1 - gap / length) / 2 : 0;

    cairo_move_to(cr, from.x, from.y);
    cairo_line_to(cr, from.x + (to.x - from.x) * part, from.y + (to.y - from.y) * part);
    cairo_move_to(cr, to.x + (from.x - to.x) * part, to.y + (from.y - to.y) * part);
    cairo_line_to(cr, to.x, to.y);
}

void
hs_paint_dimension(const hs_painter *painter, const hs_prim *prim)
{
    double em = painter->view->font_px, unit = hs_painter_unit_px(painter);
    double dash[2] = {1.5 * unit, 2.5 * unit};
    hs_vec2 from, to;
    cairo_t *cr = painter->cr;

    hs_painter_dimension(painter, prim, &from, &to);
    hs_paint_colour(cr, hs_theme_colour(painter->theme, prim->stroke), 1);
    cairo_new_path(cr);
    cairo_set_line_cap(cr, CAIRO_LINE_CAP_BUTT);
    cairo_set_line_width(cr, 0.9 * unit);
    cairo_set_dash(cr, dash, 2, 0);
    extend(cr, hs_view_to_surface(painter->view, prim->at), from);
    extend(cr, hs_view_to_surface(painter->view, prim->to), to);
    cairo_stroke(cr);
    cairo_set_dash(cr, NULL, 0, 0);
    cairo_set_line_width(cr, 1.1 * unit);
    trace_with_gap(cr, from, to, gap_px(painter, prim, from, to));
    tick(cr, from, 0.32 * em, prim->is_upright);
    tick(cr, to, 0.32 * em, prim->is_upright);
    cairo_stroke(cr);
}

void
hs_paint_peak(const hs_painter *painter, const hs_prim *prim)
{
    hs_vec2 at = hs_painter_place(painter, prim, prim->at);
    double em = painter->view->font_px;

    cairo_new_path(painter->cr);
    cairo_move_to(painter->cr, at.x, at.y);
    cairo_line_to(painter->cr, at.x - 0.42 * em, at.y + 0.72 * em);
    cairo_line_to(painter->cr, at.x + 0.42 * em, at.y + 0.72 * em);
    cairo_close_path(painter->cr);
    hs_paint_colour(painter->cr, hs_theme_colour(painter->theme, prim->fill), 1);
    cairo_fill(painter->cr);
}

static void
trace_break(cairo_t *cr, double x, double y, double em, gboolean is_back)
{
    double top = y - 1.1 * em, bottom = y + 2.2 * em;
    double a = is_back ? bottom : top, b = is_back ? top : bottom;
    double k = is_back ? -1 : 1;

    cairo_line_to(cr, x, a);
    cairo_curve_to(cr, x + 0.9 * em, a + k * 1.1 * em, x - 0.9 * em, b - k * 1.1 * em, x, b);
}

/* Two wavy lines across the ground, paper between them. */
void
hs_paint_break(const hs_painter *painter, const hs_prim *prim)
{
    hs_vec2 at = hs_painter_place(painter, prim, prim->at);
    double em = painter->view->font_px;
    cairo_t *cr = painter->cr;

    cairo_new_path(cr);
    trace_break(cr, at.x - 0.35 * em, at.y, em, FALSE);
    trace_break(cr, at.x + 0.35 * em, at.y, em, TRUE);
    cairo_close_path(cr);
    hs_paint_colour(cr, hs_theme_colour(painter->theme, prim->fill), 1);
    cairo_fill(cr);
    for (int k = -1; k <= 1; k += 2) {
        cairo_new_path(cr);
        trace_break(cr, at.x + k * 0.35 * em, at.y, em, FALSE);
        hs_paint_colour(cr, hs_theme_colour(painter->theme, prim->stroke), 1);
        cairo_set_dash(cr, NULL, 0, 0);
        cairo_set_line_width(cr, 1.2 * hs_painter_unit_px(painter));
        cairo_stroke(cr);
    }
}

void
hs_paint_ruler(const hs_painter *painter, const hs_prim *prim)
{
    hs_vec2 at = hs_view_to_surface(painter->view, prim->at),
            foot = hs_view_to_surface(painter->view, (hs_vec2){0, 0});
    double em = painter->view->font_px;
    cairo_t *cr = painter->cr;

    cairo_new_path(cr);
    cairo_move_to(cr, 0.4 * em, foot.y);
    cairo_line_to(cr, 0.4 * em, at.y);
    cairo_line_to(cr, 0.95 * em, at.y);
    hs_paint_colour(cr, hs_theme_colour(painter->theme, prim->stroke), 1);
    cairo_set_dash(cr, NULL, 0, 0);
    cairo_set_line_width(cr, 1.1 * hs_painter_unit_px(painter));
    cairo_stroke(cr);
}

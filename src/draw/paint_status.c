/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how is a finding's status drawn?
 * Answer:    a bar from 0 towards a wall at the limit, and the same in small as a glyph: the stroke ends before, touches or
 *            passes the wall; not judged is an empty frame.
 * Not here:  the word beside it (model/words.c). */
#include "paint_internal.h"

#define WALL_PART  0.76 /* where the limit stands along the bar */
#define MOST_RATIO (1.0 / WALL_PART)

static void
line(cairo_t *cr, double x1, double y1, double x2, double y2, double width)
{
    cairo_move_to(cr, x1, y1);
    cairo_line_to(cr, x2, y2);
    cairo_set_line_width(cr, width);
    cairo_stroke(cr);
}

static void
frame(cairo_t *cr, double x, double y, double width, double height, double line_px)
{
    double dash[2] = {line_px * 1.8, line_px * 1.6};

    cairo_save(cr);
    cairo_set_dash(cr, dash, 2, 0);
    cairo_rectangle(cr, x + line_px / 2, y + line_px / 2, width - line_px, height - line_px);
    cairo_set_line_width(cr, line_px);
    cairo_stroke(cr);
    cairo_restore(cr);
}

void
hs_paint_status_glyph(cairo_t *cr,
                      hs_finding_status status,
                      double x,
                      double y,
                      double size,
                      const hs_theme *theme)
{
    double wall = x + size * 0.66, middle = y + size / 2, thick = size * 0.24, end;

    if (status == HS_STATUS_NONE)
        return;
    cairo_save(cr);
    cairo_new_path(cr);
    cairo_set_line_cap(cr, CAIRO_LINE_CAP_BUTT);
    hs_paint_colour(cr, theme->ink, 1);
    if (status == HS_STATUS_NOT_JUDGED) {
        frame(cr, x + size * 0.12, y + size * 0.18, size * 0.7, size * 0.64,
              fmax(size * 0.09, 1));
        cairo_restore(cr);
        return;
    }
    if (status == HS_STATUS_WITHIN)
        end = x + size * 0.40;
    else if (status == HS_STATUS_NEAR)
        end = wall;
    else
        end = x + size;
    line(cr, x, middle, end, middle, thick);
    line(cr, wall, y + size * 0.08, wall, y + size * 0.92, fmax(size * 0.13, 1.2));
    cairo_restore(cr);
}

/* Beyond the wall a long bar is cut: a gap near its end says that it goes on. */
static void
cut(cairo_t *cr, double x, double y, double height, const hs_theme *theme)
{
    hs_paint_colour(cr, theme->paper, 1);
    cairo_move_to(cr, x - height * 0.7, y + height);
    cairo_line_to(cr, x - height * 0.2, y);
    cairo_line_to(cr, x + height * 0.2, y);
    cairo_line_to(cr, x - height * 0.3, y + height);
    cairo_close_path(cr);
    cairo_fill(cr);
}

void
hs_paint_ratio_bar(cairo_t *cr,
                   hs_finding_status status,
                   double ratio,
                   double x,
                   double y,
                   double width,
                   double height,
                   const hs_theme *theme)
{
    double wall = x + width * WALL_PART, bar = height * 0.44, top = y + (height - bar) / 2;
    gboolean is_paper = theme->kind == HS_THEME_PAPER;

    cairo_save(cr);
    cairo_new_path(cr);
    cairo_set_line_cap(cr, CAIRO_LINE_CAP_BUTT);
    hs_paint_colour(cr, theme->ink, 1);
    if (!hs_has(ratio) || status == HS_STATUS_NOT_JUDGED || status == HS_STATUS_NONE) {
        frame(cr, x, top, width, bar, fmax(height * 0.08, 0.8));
        cairo_restore(cr);
        return;
    }
    double end = x + width * WALL_PART * CLAMP(ratio, 0, MOST_RATIO);

    hs_paint_colour(cr, theme->soft_ink, is_paper ? 1 : 0.28);
    if (is_paper) { /* grey does not live through a copier: a frame instead */
        cairo_rectangle(cr, x + 0.35, top + 0.35, width - 0.7, bar - 0.7);
        cairo_set_line_width(cr, 0.7);
        cairo_stroke(cr);
    } else {
        cairo_rectangle(cr, x, top, width, bar);
        cairo_fill(cr);
    }
    hs_paint_colour(cr, status == HS_STATUS_WITHIN && !is_paper ? theme->soft_ink : theme->ink,
                    1);
    cairo_rectangle(cr, x, top, end - x, bar);
    cairo_fill(cr);
    if (ratio > MOST_RATIO)
        cut(cr, x + width - bar * 0.8, top, bar, theme);
    if (end > wall) { /* the wall stands out where the bar runs through it */
        hs_paint_colour(cr, theme->paper, 1);
        line(cr, wall, y, wall, y + height, fmax(height * 0.40, 3.6));
    }
    hs_paint_colour(cr, theme->ink, 1);
    line(cr, wall, y, wall, y + height, fmax(height * 0.14, 1.6));
    cairo_restore(cr);
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how long are the bars of length and force?
 * Answer:    round values that come out between four and nine heights of the type.
 * Not here:  the scale itself (view.c). */
#include "paint_internal.h"
#include "quantity.h"
#include "units.h"

#define LEAST_em       3.6
#define METRE_PER_INCH 0.0254          /* exact: NIST SP 811 (2008), B.8 */
#define NEWTON_PER_LBF 4.4482216152605 /* exact: NIST SP 811 (2008), B.8 */

/* "0.50 m" is "0.5 m" on a bar: nothing was measured here. */
static char *
round_text(double value, const char *unit, gboolean us_units)
{
    g_autofree char *text = hs_quantity_text(value, unit, us_units ? HS_UNITS_US : HS_UNITS_SI);
    const char *end = text;
    gboolean has_point = FALSE;

    while (*end && !g_ascii_isspace(*end) && (guchar)*end < 0x80) {
        has_point |= *end == '.' || *end == ',';
        end++;
    }
    const char *keep = end;

    while (has_point && keep > text && keep[-1] == '0')
        keep--;
    if (has_point && keep > text && (keep[-1] == '.' || keep[-1] == ','))
        keep--;
    return g_strdup_printf("%.*s%s", (int)(keep - text), text, end);
}

static double
pick(const double *values, int n, double per_value_px, double least_px)
{
    for (int i = 0; i < n; i++)
        if (values[i] * per_value_px >= least_px)
            return values[i];
    return values[n - 1];
}

void
hs_scale_bars_find(const hs_painter *painter, gboolean us_units, hs_scale_bars *ret_bars)
{
    static const double lengths_m[] = {0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10},
                        forces_N[] = {10, 20, 50, 100, 200, 500, 1000, 2000, 5000};
    static const double lengths_in[] = {2, 5, 10, 20, 50, 100, 200},
                        forces_lbf[] = {2, 5, 10, 20, 50, 100, 200, 500, 1000};
    const hs_view *view = painter->view;
    double em = view->font_px, least_px = LEAST_em * em;

    if (us_units) {
        ret_bars->length_m =
            METRE_PER_INCH * pick(lengths_in, (int)G_N_ELEMENTS(lengths_in),
                                  view->scale_px_per_m * METRE_PER_INCH, least_px);
        ret_bars->force_N =
            NEWTON_PER_LBF * pick(forces_lbf, (int)G_N_ELEMENTS(forces_lbf),
                                  view->force_px_per_N * NEWTON_PER_LBF, least_px);
    } else {
        ret_bars->length_m =
            pick(lengths_m, (int)G_N_ELEMENTS(lengths_m), view->scale_px_per_m, least_px);
        ret_bars->force_N =
            pick(forces_N, (int)G_N_ELEMENTS(forces_N), view->force_px_per_N, least_px);
    }
    ret_bars->length_text = round_text(ret_bars->length_m, "m", us_units);
    ret_bars->force_text = round_text(ret_bars->force_N, "N", us_units);
    ret_bars->at_px = (hs_vec2){1.2 * em, view->height_px - 1.1 * em};
    ret_bars->length_text_px = 3.4 * em;
    ret_bars->force_text_px = 3.4 * em;
    double wide_px = ret_bars->length_m * view->scale_px_per_m +
                     ret_bars->force_N * view->force_px_per_N + 8.4 * em;

    ret_bars->box = (hs_box){0.6 * em, view->height_px - 1.9 * em, wide_px, 1.7 * em};
}

void
hs_scale_bars_clear(hs_scale_bars *bars)
{
    g_free(bars->length_text);
    g_free(bars->force_text);
}

static double
paint_bar(
    const hs_painter *painter, double x_px, double y_px, double length_px, const char *text)
{
    double em = painter->view->font_px, unit_px = hs_painter_unit_px(painter);
    g_autoptr(PangoLayout) layout = hs_painter_layout(painter, text, TRUE, FALSE);
    PangoRectangle logical;
    cairo_t *cr = painter->cr;

    pango_layout_get_extents(layout, NULL, &logical);
    cairo_set_dash(cr, NULL, 0, 0);
    cairo_set_line_width(cr, 1.6 * unit_px);
    cairo_move_to(cr, x_px, y_px - 0.28 * em);
    cairo_line_to(cr, x_px, y_px + 0.28 * em);
    cairo_move_to(cr, x_px, y_px);
    cairo_line_to(cr, x_px + length_px, y_px);
    cairo_move_to(cr, x_px + length_px, y_px - 0.28 * em);
    cairo_line_to(cr, x_px + length_px, y_px + 0.28 * em);
    cairo_stroke(cr);
    cairo_move_to(cr, x_px + length_px + 0.5 * em,
                  y_px - (double)logical.height / PANGO_SCALE / 2);
    pango_cairo_show_layout(cr, layout);
    return x_px + length_px + 0.5 * em + (double)logical.width / PANGO_SCALE;
}

void
hs_paint_scales(const hs_painter *painter, const hs_prim *prim)
{
    hs_scale_bars bars = {0};

    hs_scale_bars_find(painter, prim->size > 0, &bars);
    hs_paint_colour(painter->cr, hs_theme_colour(painter->theme, prim->stroke), 1);
    double next_px = paint_bar(painter, bars.at_px.x, bars.at_px.y,
                               bars.length_m * painter->view->scale_px_per_m, bars.length_text);

    paint_bar(painter, next_px + 1.4 * painter->view->font_px, bars.at_px.y,
              bars.force_N * painter->view->force_px_per_N, bars.force_text);
    hs_scale_bars_clear(&bars);
}

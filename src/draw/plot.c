/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what does the strip show?
 * Answer:    hs_plot_paint(): one quantity of two options along the route's time, limit as a hatched wall, worst place marked.
 * Not here:  the values (plot_data.c), the time axis' controls (app/strip.c). */
#include "paint_internal.h"
#include "plot_internal.h"
#include "plot_name.h"
#include "quantity.h"
#include "translate.h"
#include "words.h"

typedef struct {
    cairo_t *cr;
    const hs_plot_request *request;
    const hs_theme *theme;
    hs_painter painter;
    hs_view view;
    double least, most, limit; /* of the axis, in the plot's unit */
    double unit_px;
    GArray *lines;     /* hs_box: what the labels should not cover */
    GArray *walls;     /* hs_box: of the limit */
    GArray *traces[2]; /* hs_vec2, px: of the first and of the second option */
    GArray *wishes;    /* hs_label_wish, with layouts beside */
    GPtrArray *layouts;
    GArray *inks;
} hs_plot;

static double
y_of(const hs_plot *plot, double value)
{
    double em = plot->request->font_px, high = plot->request->height_px - 1.6 * em;

    return plot->request->height_px - 0.6 * em -
           (value - plot->least) / (plot->most - plot->least) * high;
}

static void
find_range(hs_plot *plot)
{
    const hs_plot_request *request = plot->request;
    int options[2] = {request->left, request->right};

    plot->least = 0;
    plot->most = hs_or(plot->limit, 0) * 1.12;
    for (int k = 0; k < 2; k++)
        for (int i = 0; options[k] >= 0 && i < request->results->options[options[k]].n_samples;
             i++) {
            double value = hs_plot_value(request->results, options[k], i, request->kind);

            if (hs_has(value)) {
                plot->least = fmin(plot->least, value);
                plot->most = fmax(plot->most, value * 1.12);
            }
        }
    double needed = plot->most;

    if (request->kind == HS_PLOT_POWER_OFF)
        for (int k = 0; k < 2; k++)
            for (int i = 0;
                 options[k] >= 0 && i < request->results->options[options[k]].n_samples; i++) {
                double held = hs_plot_held_s(&request->results->options[options[k]], i);

                if (hs_has(held) && held * 1.12 < 2 * needed)
                    plot->most = fmax(plot->most, held * 1.12);
            }
    if (!(plot->most > plot->least))
        plot->most = plot->least + 1;
}

/* Labels stand off a line by a little, and a steep piece is not one big box. */
static void
avoid(const hs_plot *plot, hs_vec2 a, hs_vec2 b)
{
    for (int i = 0; i < 4; i++) {
        hs_vec2 p = {a.x + (b.x - a.x) * i / 4, a.y + (b.y - a.y) * i / 4};
        hs_vec2 q = {a.x + (b.x - a.x) * (i + 1) / 4, a.y + (b.y - a.y) * (i + 1) / 4};
        hs_box box = {fmin(p.x, q.x), fmin(p.y, q.y) - 2, fabs(p.x - q.x), fabs(p.y - q.y) + 4};

        g_array_append_val(plot->lines, box);
    }
}

/* The forbidden side of the limit, as a wall is drawn in section. */
static void
paint_wall(const hs_plot *plot)
{
    double em = plot->request->font_px, y = y_of(plot, plot->limit), deep = 0.42 * em;
    double side = hs_plot_is_floor(plot->request->kind) ? 1 : -1, left = plot->request->axis_px,
           right = hs_plot_right_px(plot->request);
    cairo_t *cr = plot->cr;

    hs_paint_colour(cr, plot->theme->limit, 1);
    cairo_set_dash(cr, NULL, 0, 0);
    cairo_set_line_width(cr, 0.8 * plot->unit_px);
    for (double x = left + deep; x <= right; x += 0.55 * em) {
        cairo_move_to(cr, x - deep * 0.8, y);
        cairo_line_to(cr, x, y + side * deep);
    }
    cairo_stroke(cr);
    cairo_set_line_width(cr, 1.3 * plot->unit_px);
    cairo_move_to(cr, left, y);
    cairo_line_to(cr, right, y);
    cairo_stroke(cr);
    avoid(plot, (hs_vec2){left, y}, (hs_vec2){right, y});
    avoid(plot, (hs_vec2){left, y + side * deep}, (hs_vec2){right, y + side * deep});
    hs_box wall = {left, fmin(y, y + side * deep), right - left, deep};

    g_array_append_val(plot->walls, wall);
}

static void
add_label(hs_plot *plot,
          const char *text,
          double x,
          double y,
          hs_side side,
          hs_ink ink,
          int priority,
          gboolean is_bold)
{
    PangoLayout *layout = hs_painter_layout(&plot->painter, text, TRUE, is_bold);
    PangoRectangle logical;

    pango_layout_get_extents(layout, NULL, &logical);
    hs_label_wish wish = {.anchor_px = {x, y},
                          .side = side,
                          .width_px = (double)logical.width / PANGO_SCALE +
                                      0.2 * plot->request->font_px,
                          .height_px = (double)logical.height / PANGO_SCALE * 0.9,
                          .gap_px = 0.35 * plot->request->font_px,
                          .priority = priority};

    g_array_append_val(plot->wishes, wish);
    g_array_append_val(plot->inks, ink);
    g_ptr_array_add(plot->layouts, layout);
}

/* TRUE when the line is known over this sample; then *ret is its value. */
static gboolean
series(const hs_plot *plot, int option, int sample, gboolean is_held, double *ret)
{
    const hs_option_result *result = &plot->request->results->options[option];

    *ret = is_held ? fmin(hs_plot_held_s(result, sample), plot->most * 2)
                   : hs_plot_value(plot->request->results, option, sample, plot->request->kind);
    return hs_has(*ret);
}

static void
trace_option(const hs_plot *plot, int option, gboolean is_held, GArray *trace)
{
    const hs_option_result *result = &plot->request->results->options[option];
    gboolean is_on = FALSE;
    hs_vec2 before = {0, 0};

    cairo_new_path(plot->cr);
    for (int i = 0; i < result->n_samples; i++) {
        double value, x = hs_plot_x_of_time(plot->request, result->samples[i].t_s);

        if (!series(plot, option, i, is_held, &value)) {
            is_on = FALSE;
            continue;
        }
        if (is_on)
            avoid(plot, before, (hs_vec2){x, y_of(plot, value)});
        before = (hs_vec2){x, y_of(plot, value)};
        if (trace)
            g_array_append_val(trace, before);
        if (is_on)
            cairo_line_to(plot->cr, x, y_of(plot, value));
        else
            cairo_move_to(plot->cr, x, y_of(plot, value));
        is_on = TRUE;
    }
}

static int
worst_sample(const hs_plot *plot, int option)
{
    const hs_option_result *result = &plot->request->results->options[option];
    int worst = -1;
    double most = 0;

    for (int i = 0; i < result->n_samples; i++) {
        double value = hs_plot_value(plot->request->results, option, i, plot->request->kind);

        if (hs_plot_is_floor(plot->request->kind))
            value = -value;
        if (hs_has(value) && (worst < 0 || value > most + 1e-9)) {
            most = value;
            worst = i;
        }
    }
    return worst;
}

static void
mark_worst(hs_plot *plot, int option)
{
    int worst = worst_sample(plot, option);
    const hs_plot_request *request = plot->request;

    if (worst < 0)
        return;
    double value = hs_plot_value(request->results, option, worst, request->kind);
    double x = hs_plot_x_of_time(request, request->results->options[option].samples[worst].t_s),
           y = y_of(plot, value);
    g_autofree char *text = hs_quantity_text(value, hs_plot_unit(request->kind),
                                             request->us_units ? HS_UNITS_US : HS_UNITS_SI);

    cairo_new_path(plot->cr);
    cairo_arc(plot->cr, x, y, 0.3 * request->font_px, 0, 2 * G_PI);
    hs_paint_colour(plot->cr, plot->theme->paper, 1);
    cairo_fill_preserve(plot->cr);
    hs_paint_colour(plot->cr, plot->theme->ink, 1);
    cairo_set_line_width(plot->cr, 1.6 * plot->unit_px);
    cairo_stroke(plot->cr);
    add_label(plot, text, x, y, HS_SIDE_ABOVE, HS_INK_INK, 5, TRUE);
}

/* Options are told apart by dash and thickness: the first of two is thin and dashed. */
static void
set_stroke(const hs_plot *plot, gboolean is_thin)
{
    double dash[2] = {5 * plot->unit_px, 3.2 * plot->unit_px};

    cairo_set_dash(plot->cr, dash, is_thin ? 2 : 0, 0);
    cairo_set_line_width(plot->cr, (is_thin ? 1.4 : 2.2) * plot->unit_px);
    hs_paint_colour(plot->cr, is_thin ? plot->theme->soft_ink : plot->theme->ink, 1);
}

static gboolean
is_shown(const hs_plot *plot, int option)
{
    return option >= 0 && option < plot->request->results->n_options;
}

static void
paint_option(hs_plot *plot, int option, gboolean is_first)
{
    if (!is_shown(plot, option))
        return;
    trace_option(plot, option, FALSE, plot->traces[is_first ? 0 : 1]);
    set_stroke(plot, is_first && plot->request->right >= 0);
    cairo_stroke(plot->cr);
    cairo_set_dash(plot->cr, NULL, 0, 0);
    mark_worst(plot, option);
}

/* Seconds that can be held: the wall of the power-off plot moves with the place. */
static void
paint_held(hs_plot *plot, int option)
{
    double dash[2] = {8 * plot->unit_px, 4 * plot->unit_px};

    if (option < 0 || option >= plot->request->results->n_options)
        return;
    cairo_save(plot->cr);
    cairo_rectangle(plot->cr, plot->request->axis_px, 0,
                    hs_plot_right_px(plot->request) - plot->request->axis_px,
                    plot->request->height_px);
    cairo_clip(plot->cr);
    trace_option(plot, option, TRUE, NULL);
    cairo_set_dash(plot->cr, dash, 2, 0);
    cairo_set_line_width(plot->cr, 1.3 * plot->unit_px);
    hs_paint_colour(plot->cr, plot->theme->limit, 1);
    cairo_stroke(plot->cr);
    cairo_restore(plot->cr);
    for (int i = plot->request->results->options[option].n_samples / 2; i >= 0; i--) {
        const hs_option_result *result = &plot->request->results->options[option];
        double held = hs_plot_held_s(result, i);

        if (hs_has(held) && held <= plot->most) {
            add_label(plot, _("held"), hs_plot_x_of_time(plot->request, result->samples[i].t_s),
                      y_of(plot, held), HS_SIDE_ABOVE, HS_INK_SOFT, 1, FALSE);
            return;
        }
    }
}

static void
paint_axis_figure(hs_plot *plot, double value, gboolean is_soft)
{
    g_autofree char *text =
        hs_quantity_number(value, hs_plot_unit(plot->request->kind),
                           plot->request->us_units ? HS_UNITS_US : HS_UNITS_SI);
    g_autoptr(PangoLayout) layout = hs_painter_layout(&plot->painter, text, TRUE, FALSE);
    PangoRectangle logical;

    pango_layout_get_extents(layout, NULL, &logical);
    hs_paint_colour(plot->cr, is_soft ? plot->theme->soft_ink : plot->theme->ink, 1);
    cairo_move_to(plot->cr,
                  plot->request->axis_px - 0.6 * plot->request->font_px -
                      (double)logical.width / PANGO_SCALE,
                  y_of(plot, value) - (double)logical.height / PANGO_SCALE / 2);
    pango_cairo_show_layout(plot->cr, layout);
}

static void
paint_axis(hs_plot *plot)
{
    double base = y_of(plot, fmax(plot->least, 0)), value, em = plot->request->font_px;
    int option = plot->request->right >= 0 ? plot->request->right : plot->request->left;

    hs_paint_colour(plot->cr, plot->theme->soft_ink, 0.45);
    cairo_set_line_width(plot->cr, 0.9 * plot->unit_px);
    cairo_move_to(plot->cr, plot->request->axis_px, base);
    cairo_line_to(plot->cr, hs_plot_right_px(plot->request), base);
    cairo_stroke(plot->cr);
    if (hs_has(plot->limit))
        paint_axis_figure(plot, plot->limit, FALSE);
    value = hs_plot_value(plot->request->results, option, 0, plot->request->kind);
    if (hs_has(value) &&
        !(hs_has(plot->limit) && fabs(y_of(plot, value) - y_of(plot, plot->limit)) < em))
        paint_axis_figure(plot, value, TRUE);
}

static hs_box
surface_of(const hs_plot *plot)
{
    return (hs_box){plot->request->axis_px, 0, plot->request->width_px - plot->request->axis_px,
                    plot->request->height_px};
}

static void
paint_text(const hs_plot *plot, PangoLayout *layout, double x, double y, hs_ink ink)
{
    hs_paint_halo(plot->cr, layout, x, y, 0.11 * plot->request->font_px, plot->theme);
    hs_paint_colour(plot->cr, hs_theme_colour(plot->theme, ink), 1);
    cairo_move_to(plot->cr, x, y);
    pango_cairo_show_layout(plot->cr, layout);
}

static void
paint_labels(hs_plot *plot)
{
    hs_label_wish *wishes = (hs_label_wish *)(void *)plot->wishes->data;
    hs_box surface = surface_of(plot);

    hs_labels_place(wishes, (int)plot->wishes->len, NULL, 0,
                    (const hs_box *)(void *)plot->lines->data, (int)plot->lines->len, &surface);
    for (guint i = 0; i < plot->wishes->len; i++) {
        if (!wishes[i].is_placed)
            continue;
        paint_text(plot, g_ptr_array_index(plot->layouts, i), wishes[i].box.x, wishes[i].box.y,
                   g_array_index(plot->inks, hs_ink, i));
        g_array_append_val(plot->walls, wishes[i].box);
    }
}

static const char *
name_of(const hs_plot *plot, int option)
{
    const hs_option_result *result = &plot->request->results->options[option];

    if (plot->request->kind == HS_PLOT_POWER_OFF && plot->request->right < 0)
        return _("needed"); /* one option alone: what the line is says more */
    return result->name ? result->name : result->id;
}

/* A name stands beside its line, after a piece of the same stroke: it cannot be taken for the other line's. */
static void
paint_name(hs_plot *plot, int option, int which)
{
    double em = plot->request->font_px, key_px = 1.7 * em;
    const GArray *own = plot->traces[which], *other = plot->traces[1 - which];
    hs_box box;

    if (!is_shown(plot, option))
        return;
    g_autoptr(PangoLayout) layout =
        hs_painter_layout(&plot->painter, name_of(plot, option), TRUE, FALSE);
    PangoRectangle logical;

    pango_layout_get_extents(layout, NULL, &logical);
    hs_name_room room = {(const hs_vec2 *)(void *)own->data,
                         (const hs_vec2 *)(void *)other->data,
                         (int)own->len,
                         (int)other->len,
                         (const hs_box *)(void *)plot->walls->data,
                         (int)plot->walls->len,
                         surface_of(plot),
                         0.15 * em};

    if (!hs_plot_name_place(&room, (double)logical.width / PANGO_SCALE + key_px + 0.4 * em,
                            (double)logical.height / PANGO_SCALE * 0.9, &box))
        return;
    set_stroke(plot, which == 0 && plot->request->right >= 0);
    cairo_move_to(plot->cr, box.x, box.y + box.height * 0.55);
    cairo_rel_line_to(plot->cr, key_px, 0);
    cairo_stroke(plot->cr);
    cairo_set_dash(plot->cr, NULL, 0, 0);
    paint_text(plot, layout, box.x + key_px + 0.4 * em, box.y, HS_INK_SOFT);
    g_array_append_val(plot->walls, box);
}

static void
begin(hs_plot *plot, cairo_t *cr, const hs_plot_request *request, const hs_theme *theme)
{
    *plot = (hs_plot){.cr = cr, .request = request, .theme = theme, .limit = HS_ABSENT};
    plot->view = (hs_view){.font_px = request->font_px,
                           .width_px = request->width_px,
                           .height_px = request->height_px};
    plot->painter = (hs_painter){
        .cr = cr, .view = &plot->view, .theme = theme, .pango = hs_paint_pango_new()};
    plot->unit_px = hs_painter_unit_px(&plot->painter);
    plot->wishes = g_array_new(FALSE, TRUE, sizeof(hs_label_wish));
    plot->lines = g_array_new(FALSE, FALSE, sizeof(hs_box));
    plot->walls = g_array_new(FALSE, FALSE, sizeof(hs_box));
    for (int k = 0; k < 2; k++)
        plot->traces[k] = g_array_new(FALSE, FALSE, sizeof(hs_vec2));
    plot->layouts = g_ptr_array_new_with_free_func(g_object_unref);
    plot->inks = g_array_new(FALSE, FALSE, sizeof(hs_ink));
    cairo_save(cr);
    cairo_set_line_join(cr, CAIRO_LINE_JOIN_ROUND);
}

static void
end(hs_plot *plot)
{
    cairo_restore(plot->cr);
    g_array_unref(plot->lines);
    g_array_unref(plot->walls);
    for (int k = 0; k < 2; k++)
        g_array_unref(plot->traces[k]);
    g_array_unref(plot->wishes);
    g_array_unref(plot->inks);
    g_ptr_array_unref(plot->layouts);
    g_object_unref(plot->painter.pango);
}

void
hs_plot_paint(cairo_t *cr, const hs_plot_request *request, const hs_theme *theme)
{
    hs_plot plot;

    if (!request->results || request->results->n_options == 0)
        return;
    begin(&plot, cr, request, theme);
    plot.limit = request->kind == HS_PLOT_POWER_OFF ? HS_ABSENT : hs_plot_limit(request);
    find_range(&plot);
    paint_axis(&plot);
    if (hs_has(plot.limit))
        paint_wall(&plot);
    if (request->kind == HS_PLOT_POWER_OFF) {
        paint_held(&plot, request->left);
        paint_held(&plot, request->right);
    }
    paint_option(&plot, request->left, TRUE);
    paint_option(&plot, request->right, FALSE);
    paint_labels(&plot);
    paint_name(&plot, request->left, 0);
    paint_name(&plot, request->right, 1);
    end(&plot);
}

/* Time of arrival at a point: the end of the leg that leads to it. */
static double
arrival_s(const hs_option_result *result, int point)
{
    double t_s = point == 0 && result->n_samples > 0 ? result->samples[0].t_s : HS_ABSENT;

    for (int i = 0; i < result->n_samples; i++)
        if (point > 0 && result->samples[i].leg == point && !result->samples[i].in_hold)
            t_s = result->samples[i].t_s;
    return t_s;
}

void
hs_plot_axis_paint(cairo_t *cr, const hs_plot_request *request, const hs_theme *theme)
{
    hs_plot plot;
    int n = 0, option = request->left >= 0 ? request->left : request->right;

    if (!request->results || request->results->n_options == 0 || option < 0)
        return;
    const hs_option_result *result = &request->results->options[option];

    begin(&plot, cr, request, theme);
    for (int i = 0; i < result->n_samples; i++)
        n = MAX(n, result->samples[i].leg + 1);
    hs_paint_colour(cr, theme->soft_ink, 1);
    cairo_set_line_width(cr, plot.unit_px);
    for (int p = 0; p < n; p++) {
        g_autofree char *number = g_strdup_printf("%d", p + 1);
        double x = hs_plot_x_of_time(request, arrival_s(result, p)),
               middle = request->height_px * 0.6;

        if (!isfinite(x))
            continue;
        cairo_move_to(cr, x, 0);
        cairo_line_to(cr, x, 0.35 * request->font_px);
        cairo_stroke(cr);
        add_label(&plot, number, x, middle, HS_SIDE_OVER, HS_INK_INK, 9, FALSE);
        if (p == 0 || !request->task || p >= request->task->route.n_points)
            continue;
        double before = hs_plot_x_of_time(request, arrival_s(result, p - 1));
        const char *word = hs_words_move(request->task->route.points[p].move);

        add_label(&plot, word, (x + before) / 2, middle, HS_SIDE_OVER, HS_INK_SOFT, 3, FALSE);
        /* a word that does not fit between its points is left out: the leg is in the table */
        const hs_label_wish *wish =
            &g_array_index(plot.wishes, hs_label_wish, plot.wishes->len - 1);

        if (wish->width_px > x - before - 1.6 * request->font_px) {
            g_array_set_size(plot.wishes, plot.wishes->len - 1);
            g_array_set_size(plot.inks, plot.inks->len - 1);
            g_ptr_array_set_size(plot.layouts, (gint)plot.layouts->len - 1);
        }
    }
    paint_labels(&plot);
    end(&plot);
}

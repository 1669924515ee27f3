/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how do the texts of a scene get onto a surface?
 * Answer:    measured, placed by label.c round what is drawn, painted on a thin halo with their leaders.
 * Not here:  where they may go (label.c). */
#include "paint_internal.h"
#include "shape.h"

#define SMALL_PART 0.88 /* of the label type */
#define HALO_em    0.10

PangoContext *
hs_paint_pango_new(void)
{
    PangoContext *context = pango_font_map_create_context(pango_cairo_font_map_get_default());
    cairo_font_options_t *options = cairo_font_options_create();

    /* The same widths on the screen, in a picture and on paper. */
    cairo_font_options_set_hint_metrics(options, CAIRO_HINT_METRICS_OFF);
    cairo_font_options_set_hint_style(options, CAIRO_HINT_STYLE_SLIGHT);
    cairo_font_options_set_antialias(options, CAIRO_ANTIALIAS_GRAY);
    pango_cairo_context_set_font_options(context, options);
    pango_context_set_round_glyph_positions(context, FALSE);
    cairo_font_options_destroy(options);
    return context;
}

PangoLayout *
hs_painter_layout(const hs_painter *painter,
                  const char *text,
                  gboolean is_small,
                  gboolean is_bold)
{
    PangoLayout *layout = pango_layout_new(painter->pango);
    PangoFontDescription *font = pango_font_description_new();

    pango_font_description_set_family_static(font, painter->theme->font_family);
    pango_font_description_set_absolute_size(
        font, painter->view->font_px * (is_small ? SMALL_PART : 1.0) * PANGO_SCALE);
    pango_font_description_set_weight(font,
                                      is_bold ? PANGO_WEIGHT_SEMIBOLD : PANGO_WEIGHT_NORMAL);
    pango_layout_set_font_description(layout, font);
    pango_layout_set_text(layout, text, -1);
    pango_font_description_free(font);
    return layout;
}

static void
dimension_wish(const hs_painter *painter, const hs_prim *prim, hs_label_wish *wish)
{
    hs_vec2 from_px, to_px;
    double em = painter->view->font_px;

    hs_painter_dimension(painter, prim, &from_px, &to_px);
    double length_px = hypot(to_px.x - from_px.x, to_px.y - from_px.y);
    double text_px = prim->is_upright ? wish->height_px : wish->width_px;

    wish->priority = 12;
    wish->gap_px = 0.3 * em;
    wish->anchor_px = (hs_vec2){(from_px.x + to_px.x) / 2, (from_px.y + to_px.y) / 2};
    if (length_px > text_px + 1.2 * em) {
        wish->side = HS_SIDE_OVER;
    } else if (prim->is_upright) {
        wish->side = prim->offset.x < 0 ? HS_SIDE_LEFT : HS_SIDE_RIGHT;
    } else {
        wish->side = HS_SIDE_RIGHT;
        wish->anchor_px.x = fmax(from_px.x, to_px.x);
    }
}

static void
make_wish(const hs_painter *painter,
          const hs_prim *prim,
          PangoLayout *layout,
          hs_label_wish *wish)
{
    double em = painter->view->font_px;
    PangoRectangle ink, logical;

    pango_layout_get_extents(layout, &ink, &logical);
    *wish = (hs_label_wish){.side = prim->side,
                            .width_px = (double)logical.width / PANGO_SCALE + 0.3 * em,
                            .height_px = (double)logical.height / PANGO_SCALE * 0.92,
                            .gap_px = 0.15 * em,
                            .priority = prim->priority,
                            .has_far_leader = prim->size > 0};
    if (prim->kind == HS_PRIM_DIMENSION) {
        dimension_wish(painter, prim, wish);
        return;
    }
    if (prim->kind == HS_PRIM_RULER) {
        hs_vec2 at_px = hs_view_to_surface(painter->view, prim->at);

        /* right at its mark, over whoever stands there: aside it would name another height */
        wish->side = HS_SIDE_OVER;
        wish->priority = 11;
        wish->anchor_px = (hs_vec2){1.1 * em + wish->width_px / 2, at_px.y};
        return;
    }
    hs_vec2 at_px = hs_painter_place(painter, prim, prim->at);

    wish->anchor_px = at_px;
    if (prim->size > 0) /* keeps clear of the mark that it names */
        wish->gap_px = 1.0 * em;
}

static gboolean
has_text(const hs_prim *prim)
{
    return prim->text && (prim->kind == HS_PRIM_LABEL || prim->kind == HS_PRIM_DIMENSION ||
                          prim->kind == HS_PRIM_RULER);
}

/* The line of the ground, piece by piece; it goes on to both edges of the surface. */
static void
avoid_ground(const hs_painter *painter, const hs_prim *prim, GArray *avoided)
{
    double thick_px = 0.4 * painter->view->font_px;

    for (int k = 0; k + 1 < prim->n; k++) {
        guint at = (guint)(prim->first + k);
        hs_vec2 a = hs_view_to_surface(painter->view,
                                       g_array_index(painter->scene->points, hs_vec2, at));
        hs_vec2 b = hs_view_to_surface(painter->view,
                                       g_array_index(painter->scene->points, hs_vec2, at + 1));
        double from_px = k == 0 ? fmin(a.x, 0) : a.x;
        double to_px = k + 2 == prim->n ? fmax(b.x, painter->view->width_px) : b.x;
        hs_box box = {from_px, fmin(a.y, b.y) - thick_px / 2, to_px - from_px,
                      fabs(a.y - b.y) + thick_px};

        g_array_append_val(avoided, box);
    }
}

#define STRIP_em                                                                               \
    0.45 /* shapes are avoided in strips, so that beside a slanted limb there is room */
#define LINE_em 0.35 /* a line is as thick as this to a label */

/* Where a horizontal line meets the outline: from the first to the last place. */
static gboolean
meet(const hs_painter *painter, const hs_prim *prim, double y_px, double *from, double *to)
{
    const hs_vec2 *points = hs_painter_points(painter, prim);

    *from = HUGE_VAL;
    *to = -HUGE_VAL;
    for (int k = 0; k < prim->n; k++) {
        hs_vec2 a = hs_view_to_surface(painter->view, points[k]),
                b = hs_view_to_surface(painter->view, points[(k + 1) % prim->n]);

        if ((a.y <= y_px) == (b.y <= y_px))
            continue;
        double x_px = a.x + (b.x - a.x) * (y_px - a.y) / (b.y - a.y);

        *from = fmin(*from, x_px);
        *to = fmax(*to, x_px);
    }
    return *from < *to;
}

static void
avoid_shape(const hs_painter *painter, const hs_prim *prim, GArray *avoided)
{
    double high_px = STRIP_em * painter->view->font_px, from_px, to_px;
    hs_box whole = hs_paint_prim_box(painter, prim);
    double end_px = fmin(whole.y + whole.height, painter->view->height_px);

    for (double y_px = fmax(whole.y, 0); y_px < end_px; y_px += high_px) {
        double below_px = fmin(y_px + high_px, end_px);

        if (meet(painter, prim, (y_px + below_px) / 2, &from_px, &to_px)) {
            hs_box strip = {from_px, y_px, to_px - from_px, below_px - y_px};

            g_array_append_val(avoided, strip);
        }
    }
}

/* In pieces: a slanted line is not its box. */
static void
avoid_segment(hs_vec2 a, hs_vec2 b, double em, GArray *avoided)
{
    double run_px = fmin(fabs(b.x - a.x), fabs(b.y - a.y)), thick_px = LINE_em * em;
    int n = CLAMP((int)(run_px / em) + 1, 1, 40);

    for (int i = 0; i < n; i++) {
        hs_vec2 c = hs_vec2_mix(a, b, (double)i / n), d = hs_vec2_mix(a, b, (i + 1.0) / n);
        hs_box piece = {fmin(c.x, d.x) - thick_px / 2, fmin(c.y, d.y) - thick_px / 2,
                        fabs(c.x - d.x) + thick_px, fabs(c.y - d.y) + thick_px};

        g_array_append_val(avoided, piece);
    }
}

static void
avoid_line(const hs_painter *painter, const hs_prim *prim, GArray *avoided)
{
    const hs_vec2 *points = hs_painter_points(painter, prim);

    for (int k = 0; k + 1 < prim->n; k++)
        avoid_segment(hs_view_to_surface(painter->view, points[k]),
                      hs_view_to_surface(painter->view, points[k + 1]), painter->view->font_px,
                      avoided);
}

/* Both lines that lead to what is measured, and the measure itself. */
static void
avoid_dimension(const hs_painter *painter, const hs_prim *prim, GArray *avoided)
{
    double em = painter->view->font_px;
    hs_vec2 from, to;

    hs_painter_dimension(painter, prim, &from, &to);
    avoid_segment(hs_view_to_surface(painter->view, prim->at), from, em, avoided);
    avoid_segment(hs_view_to_surface(painter->view, prim->to), to, em, avoided);
    avoid_segment(from, to, em, avoided);
}

/* What labels should not cover: marks and arrows always, limbs and load where there is another place. */
static void
collect_boxes(const hs_painter *painter, gboolean moves, GArray *taken, GArray *avoided)
{
    for (guint i = 0; i < painter->scene->prims->len; i++) {
        const hs_prim *prim = &g_array_index(painter->scene->prims, hs_prim, i);

        if (!moves && hs_scene_layer_moves(prim->layer))
            continue;
        switch (prim->kind) {
        case HS_PRIM_CG:
        case HS_PRIM_SCALES:
        case HS_PRIM_PEAK:
        case HS_PRIM_BAR:
        case HS_PRIM_BREAK:
        case HS_PRIM_ARROW: {
            hs_box box = hs_paint_prim_box(painter, prim);

            if (box.width >= 0)
                g_array_append_val(taken, box);
            break;
        }
        case HS_PRIM_GROUND:
            avoid_ground(painter, prim, avoided);
            break;
        case HS_PRIM_DISC: {
            hs_box box = hs_paint_prim_box(painter, prim);

            if (box.width >= 0)
                g_array_append_val(avoided, box);
            break;
        }
        case HS_PRIM_SHAPE:
            if (prim->layer != HS_LAYER_ghost && prim->layer != HS_LAYER_site)
                avoid_shape(painter, prim, avoided);
            break;
        case HS_PRIM_LINE:
            if (prim->layer != HS_LAYER_paper)
                avoid_line(painter, prim, avoided);
            break;
        case HS_PRIM_DIMENSION:
            avoid_dimension(painter, prim, avoided);
            break;
        default:
            break;
        }
    }
}

static void
clear_placed(gpointer data)
{
    g_object_unref(((hs_placed *)data)->layout);
}

static void
place_part(const hs_painter *painter, GArray *placed, gboolean moves)
{
    double pad_px = 0.25 * painter->view->font_px;
    hs_box surface = {pad_px, pad_px, painter->view->width_px - 2 * pad_px,
                      painter->view->height_px - 2 * pad_px};
    g_autoptr(GArray) taken = g_array_new(FALSE, FALSE, sizeof(hs_box));
    g_autoptr(GArray) avoided = g_array_new(FALSE, FALSE, sizeof(hs_box));
    g_autoptr(GArray) wishes = g_array_new(FALSE, TRUE, sizeof(hs_label_wish));

    collect_boxes(painter, moves, taken, avoided);
    for (guint i = 0; i < placed->len; i++) {
        const hs_placed *label = &g_array_index(placed, hs_placed, i);

        if (label->moves == moves)
            g_array_append_val(wishes, label->wish);
        else if (moves && label->wish.is_placed)
            g_array_append_val(taken, label->wish.box);
    }
    hs_labels_place((hs_label_wish *)(void *)wishes->data, (int)wishes->len,
                    (const hs_box *)(void *)taken->data, (int)taken->len,
                    (const hs_box *)(void *)avoided->data, (int)avoided->len, &surface);
    for (guint i = 0, k = 0; i < placed->len; i++) {
        hs_placed *label = &g_array_index(placed, hs_placed, i);

        if (label->moves == moves)
            label->wish = g_array_index(wishes, hs_label_wish, k++);
    }
}

GArray *
hs_paint_place_labels(const hs_painter *painter)
{
    GArray *placed = g_array_new(FALSE, TRUE, sizeof(hs_placed));

    g_array_set_clear_func(placed, clear_placed);
    for (guint i = 0; i < painter->scene->prims->len; i++) {
        const hs_prim *prim = &g_array_index(painter->scene->prims, hs_prim, i);

        if (!has_text(prim))
            continue;
        hs_placed label = {.prim = prim, .moves = hs_scene_layer_moves(prim->layer)};

        label.layout = hs_painter_layout(
            painter, prim->text, prim->is_small || prim->kind != HS_PRIM_LABEL, prim->is_bold);
        make_wish(painter, prim, label.layout, &label.wish);
        g_array_append_val(placed, label);
    }
    place_part(painter, placed, FALSE);
    place_part(painter, placed, TRUE);
    return placed;
}

/* On paper and in SVG the outline, so that the text stands there once; on the screen the glyphs themselves shifted round,
 * which costs a fifth (measured). */
void
hs_paint_halo(cairo_t *cr,
              PangoLayout *layout,
              double x_px,
              double y_px,
              double wide_px,
              const hs_theme *theme)
{
    cairo_surface_type_t type = cairo_surface_get_type(cairo_get_target(cr));

    if (type == CAIRO_SURFACE_TYPE_PDF || type == CAIRO_SURFACE_TYPE_SVG) {
        cairo_new_path(cr);
        cairo_move_to(cr, x_px, y_px);
        pango_cairo_layout_path(cr, layout);
        hs_paint_colour(cr, theme->paper, 0.9);
        cairo_set_line_width(cr, 2 * wide_px);
        cairo_set_line_join(cr, CAIRO_LINE_JOIN_ROUND);
        cairo_stroke(cr);
        return;
    }
    hs_paint_colour(cr, theme->paper, 0.55);
    for (int k = 0; k < 8; k++) {
        cairo_move_to(cr, x_px + wide_px * cos(k * G_PI / 4),
                      y_px + wide_px * sin(k * G_PI / 4));
        pango_cairo_show_layout(cr, layout);
    }
}

static void
paint_label(const hs_painter *painter, const hs_placed *label)
{
    double em = painter->view->font_px;
    const hs_label_wish *wish = &label->wish;
    PangoRectangle ink, logical;

    if (wish->has_leader && label->prim->kind != HS_PRIM_DIMENSION) {
        hs_paint_colour(painter->cr, hs_theme_colour(painter->theme, HS_INK_SOFT), 1);
        cairo_set_line_width(painter->cr, 0.9 * hs_painter_unit_px(painter));
        double away_px =
            hypot(wish->leader_px.x - wish->anchor_px.x, wish->leader_px.y - wish->anchor_px.y);
        double clear = wish->has_far_leader ? 0.75 * em / away_px : 0;

        cairo_move_to(painter->cr,
                      wish->anchor_px.x + (wish->leader_px.x - wish->anchor_px.x) * clear,
                      wish->anchor_px.y + (wish->leader_px.y - wish->anchor_px.y) * clear);
        cairo_line_to(painter->cr, wish->leader_px.x, wish->leader_px.y);
        cairo_stroke(painter->cr);
    }
    pango_layout_get_extents(label->layout, &ink, &logical);
    double x_px = wish->box.x + 0.15 * em,
           y_px = wish->box.y + (wish->height_px - (double)logical.height / PANGO_SCALE) / 2;

    hs_paint_halo(painter->cr, label->layout, x_px, y_px, HALO_em * em, painter->theme);
    hs_paint_colour(painter->cr, hs_theme_colour(painter->theme, label->prim->stroke), 1);
    cairo_move_to(painter->cr, x_px, y_px);
    pango_cairo_show_layout(painter->cr, label->layout);
}

/* The words of the ruler have their place among what stands still, but are painted over the bodies that come by. */
gboolean
hs_placed_is_above(const hs_placed *label)
{
    return label->moves || label->prim->kind == HS_PRIM_RULER;
}

void
hs_paint_labels(const hs_painter *painter, const GArray *placed, hs_paint_part part)
{
    cairo_set_dash(painter->cr, NULL, 0, 0);
    for (guint i = 0; i < placed->len; i++) {
        const hs_placed *label = &g_array_index(placed, hs_placed, i);

        if (label->wish.is_placed &&
            (part == HS_PAINT_ALL || hs_placed_is_above(label) == (part == HS_PAINT_MOVING)))
            paint_label(painter, label);
    }
}

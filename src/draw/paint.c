/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how does a scene get onto a surface?
 * Answer:    hs_paint_scene(): things from back to front, then the labels; each kind of thing has one function.
 * Not here:  what the picture consists of (scene.h), where labels go (label.c). */
#include "paint.h"

#include "paint_internal.h"
#include "paint_prim.h"

hs_colour
hs_theme_colour(const hs_theme *theme, hs_ink ink)
{
    switch (ink) {
    case HS_INK_PAPER:
        return theme->paper;
    case HS_INK_GRID:
        return theme->grid;
    case HS_INK_INK:
        return theme->ink;
    case HS_INK_SOFT:
        return theme->soft_ink;
    case HS_INK_FLOOR:
        return theme->floor;
    case HS_INK_LOAD:
        return theme->load;
    case HS_INK_LOAD_LINE:
        return theme->load_line;
    case HS_INK_BODY:
        return theme->body;
    case HS_INK_BODY_FAR: { /* a little nearer to its outline */
        hs_colour a = theme->body, b = theme->body_line;
        double t = theme->kind == HS_THEME_PAPER ? 0 : 0.22;

        return (hs_colour){a.r + (b.r - a.r) * t, a.g + (b.g - a.g) * t, a.b + (b.b - a.b) * t,
                           1};
    }
    case HS_INK_BODY_LINE:
        return theme->body_line;
    case HS_INK_PERSON:
        return theme->person;
    case HS_INK_SUIT:
        return theme->suit;
    case HS_INK_SUIT_FILL:
        return theme->suit_fill;
    case HS_INK_WEIGHT:
        return theme->weight;
    case HS_INK_LIMIT:
        return theme->limit;
    case HS_INK_MARK:
    case HS_INK_NONE:
    case HS_N_INKS:
        break;
    }
    return theme->mark;
}

void
hs_paint_colour(cairo_t *cr, hs_colour colour, double alpha)
{
    cairo_set_source_rgba(cr, colour.r, colour.g, colour.b, colour.a * alpha);
}

/* One line at 13 px type on the screen; on paper 0.35 mm at 9 pt, the least that a copier keeps. */
double
hs_painter_unit_px(const hs_painter *painter)
{
    double em = painter->view->font_px;

    if (painter->theme->kind == HS_THEME_PAPER)
        return fmax(painter->theme->line_px * em / 9.0, 0.75);
    return fmax(painter->theme->line_px * em / 13.0, 0.6);
}

const hs_vec2 *
hs_painter_points(const hs_painter *painter, const hs_prim *prim)
{
    return &g_array_index(painter->scene->points, hs_vec2, prim->first);
}

hs_vec2
hs_painter_place(const hs_painter *painter, const hs_prim *prim, hs_vec2 at_m)
{
    hs_vec2 at_px = hs_view_to_surface(painter->view, at_m);
    double em = painter->view->font_px, k = painter->view->force_px_per_N;

    at_px.x += prim->offset.x * em + prim->force_N.x * k;
    at_px.y += prim->offset.y * em - prim->force_N.y * k;
    return at_px;
}

void
hs_painter_arrow(const hs_painter *painter,
                 const hs_prim *prim,
                 hs_vec2 *ret_tail_px,
                 hs_vec2 *ret_tip_px)
{
    hs_vec2 at_px = hs_view_to_surface(painter->view, prim->at);
    double em = painter->view->font_px, k = painter->view->force_px_per_N;

    *ret_tail_px = (hs_vec2){at_px.x + prim->offset.x * em, at_px.y + prim->offset.y * em};
    *ret_tip_px =
        (hs_vec2){ret_tail_px->x + prim->force_N.x * k, ret_tail_px->y - prim->force_N.y * k};
}

void
hs_painter_dimension(const hs_painter *painter,
                     const hs_prim *prim,
                     hs_vec2 *ret_from_px,
                     hs_vec2 *ret_to_px)
{
    double em = painter->view->font_px;
    hs_vec2 from_px = hs_view_to_surface(painter->view, prim->at),
            to_px = hs_view_to_surface(painter->view, prim->to);

    if (prim->is_upright) {
        from_px.x += prim->offset.x * em;
        to_px.x = from_px.x;
    } else {
        from_px.y += prim->offset.y * em;
        to_px.y = from_px.y;
    }
    *ret_from_px = from_px;
    *ret_to_px = to_px;
}

static hs_box
box_of(hs_vec2 a, hs_vec2 b, double pad)
{
    return (hs_box){fmin(a.x, b.x) - pad, fmin(a.y, b.y) - pad, fabs(a.x - b.x) + 2 * pad,
                    fabs(a.y - b.y) + 2 * pad};
}

static hs_box
points_box(const hs_painter *painter, const hs_prim *prim, double pad)
{
    const hs_vec2 *points_m = hs_painter_points(painter, prim);
    hs_vec2 least = {INFINITY, INFINITY}, most = {-INFINITY, -INFINITY};

    for (int i = 0; i < prim->n; i++) {
        hs_vec2 at = hs_view_to_surface(painter->view, points_m[i]);

        least = (hs_vec2){fmin(least.x, at.x), fmin(least.y, at.y)};
        most = (hs_vec2){fmax(most.x, at.x), fmax(most.y, at.y)};
    }
    return prim->n > 0 ? box_of(least, most, pad) : (hs_box){0, 0, -1, -1};
}

hs_box
hs_paint_prim_box(const hs_painter *painter, const hs_prim *prim)
{
    double em = painter->view->font_px, unit_px = hs_painter_unit_px(painter);
    hs_vec2 a, b;

    switch (prim->kind) {
    case HS_PRIM_LINE:
    case HS_PRIM_SHAPE:
        return points_box(painter, prim, prim->weight * unit_px);
    case HS_PRIM_BAND:
        return points_box(painter, prim, hs_paint_band_px(painter, prim));
    case HS_PRIM_DISC:
    case HS_PRIM_CG:
        a = hs_painter_place(painter, prim, prim->at);
        return box_of(a, a, (prim->kind == HS_PRIM_CG ? HS_CG_em : prim->size) * em + unit_px);
    case HS_PRIM_PEAK:
        a = hs_painter_place(painter, prim, prim->at);
        return (hs_box){a.x - 0.5 * em, a.y, em, 0.8 * em};
    case HS_PRIM_BREAK:
        a = hs_painter_place(painter, prim, prim->at);
        return box_of(a, a, 1.2 * em);
    case HS_PRIM_ARROW:
        hs_painter_arrow(painter, prim, &a, &b);
        return box_of(a, b, 5 * unit_px);
    case HS_PRIM_DIMENSION:
        hs_painter_dimension(painter, prim, &a, &b);
        hs_box line = box_of(a, b, 0.4 * em);
        hs_box whole = box_of(hs_view_to_surface(painter->view, prim->at), b, 0.4 * em);

        return hs_box_union(line, whole);
    case HS_PRIM_BAR:
        a = hs_painter_place(painter, prim, prim->at);
        b = hs_painter_place(painter, prim, prim->to);
        return box_of(a, b, prim->weight * unit_px / 2);
    case HS_PRIM_SCALES: {
        hs_scale_bars bars = {0};

        hs_scale_bars_find(painter, prim->size > 0, &bars);
        hs_scale_bars_clear(&bars);
        return bars.box;
    }
    default:
        return (hs_box){0, 0, -1, -1};
    }
}

hs_box
hs_box_union(hs_box a, hs_box b)
{
    if (a.width < 0)
        return b;
    if (b.width < 0)
        return a;
    double x = fmin(a.x, b.x), y = fmin(a.y, b.y);

    return (hs_box){x, y, fmax(a.x + a.width, b.x + b.width) - x,
                    fmax(a.y + a.height, b.y + b.height) - y};
}

static gboolean
is_in(const hs_prim *prim, hs_paint_part part)
{
    gboolean moves = hs_scene_layer_moves(prim->layer), is_paper = prim->kind == HS_PRIM_GRID;

    switch (part) {
    case HS_PAINT_SQUARES:
        return is_paper;
    case HS_PAINT_KEPT:
        return !moves && !is_paper;
    case HS_PAINT_MOVING:
        return moves;
    case HS_PAINT_ALL:
    default:
        return TRUE;
    }
}

static void
paint_things(const hs_painter *painter, hs_paint_part part)
{
    const GArray *prims = painter->scene->prims;

    for (guint i = 0; i < prims->len; i++) {
        const hs_prim *prim = &g_array_index(prims, hs_prim, i);
        guint n = 1;

        if (!is_in(prim, part))
            continue;
        if (prim->group == 0) {
            hs_paint_prim(painter, prim);
            continue;
        }
        while (i + n < prims->len && g_array_index(prims, hs_prim, i + n).group == prim->group)
            n++;
        hs_paint_group(painter, prim, (int)n);
        i += n - 1;
    }
}

struct hs_picture {
    hs_painter painter;
    hs_view view;
    GArray *placed; /* labels; NULL: not asked for yet */
};

static void
picture_init(hs_picture *picture,
             const hs_scene *scene,
             const hs_view *view,
             const hs_theme *theme)
{
    picture->view = *view;
    picture->painter = (hs_painter){NULL, scene, &picture->view, theme, hs_paint_pango_new()};
    picture->placed = NULL;
}

static void
picture_clear(hs_picture *picture)
{
    g_clear_pointer(&picture->placed, g_array_unref);
    g_clear_object(&picture->painter.pango);
}

hs_picture *
hs_picture_new(const hs_scene *scene, const hs_view *view, const hs_theme *theme)
{
    hs_picture *picture = g_new0(hs_picture, 1);

    picture_init(picture, scene, view, theme);
    return picture;
}

void
hs_picture_free(hs_picture *picture)
{
    if (picture == NULL)
        return;
    picture_clear(picture);
    g_free(picture);
}

static const GArray *
labels_of(hs_picture *picture)
{
    if (picture->placed == NULL)
        picture->placed = hs_paint_place_labels(&picture->painter);
    return picture->placed;
}

gboolean
hs_picture_height_box(hs_picture *picture,
                      hs_height height,
                      double *ret_x,
                      double *ret_y,
                      double *ret_width,
                      double *ret_height)
{
    const GArray *placed = labels_of(picture);

    for (guint i = 0; i < placed->len; i++) {
        const hs_placed *label = &g_array_index(placed, hs_placed, i);

        if (label->prim->height != height || !label->wish.is_placed)
            continue;
        *ret_x = label->wish.box.x;
        *ret_y = label->wish.box.y;
        *ret_width = label->wish.box.width;
        *ret_height = label->wish.box.height;
        return TRUE;
    }
    return FALSE;
}

void
hs_picture_paint(hs_picture *picture, cairo_t *cr, hs_paint_part part)
{
    picture->painter.cr = cr;
    cairo_save(cr);
    cairo_set_line_join(cr, CAIRO_LINE_JOIN_ROUND);
    cairo_set_line_cap(cr, CAIRO_LINE_CAP_BUTT);
    paint_things(&picture->painter, part);
    if (part != HS_PAINT_SQUARES)
        hs_paint_labels(&picture->painter, labels_of(picture), part);
    cairo_restore(cr);
    picture->painter.cr = NULL;
}

void
hs_paint_part_of(cairo_t *cr,
                 const hs_scene *scene,
                 const hs_view *view,
                 const hs_theme *theme,
                 hs_paint_part part)
{
    hs_picture picture;

    picture_init(&picture, scene, view, theme);
    hs_picture_paint(&picture, cr, part);
    picture_clear(&picture);
}

void
hs_paint_scene(cairo_t *cr, const hs_scene *scene, const hs_view *view, const hs_theme *theme)
{
    hs_paint_part_of(cr, scene, view, theme, HS_PAINT_ALL);
}

void
hs_picture_moving_bounds(
    hs_picture *picture, double *ret_x, double *ret_y, double *ret_width, double *ret_height)
{
    const hs_scene *scene = picture->painter.scene;
    const hs_view *view = &picture->view;
    const GArray *placed = labels_of(picture);
    hs_box bounds = {0, 0, -1, -1};

    for (guint i = 0; i < scene->prims->len; i++) {
        const hs_prim *prim = &g_array_index(scene->prims, hs_prim, i);

        if (is_in(prim, HS_PAINT_MOVING))
            bounds = hs_box_union(bounds, hs_paint_prim_box(&picture->painter, prim));
    }
    for (guint i = 0; i < placed->len; i++) {
        const hs_placed *label = &g_array_index(placed, hs_placed, i);

        if (hs_placed_is_above(label) && label->wish.is_placed) {
            bounds = hs_box_union(bounds, label->wish.box);
            bounds = hs_box_union(
                bounds, (hs_box){label->wish.anchor_px.x, label->wish.anchor_px.y, 0, 0});
        }
    }
    double pad_px = 4;
    double left = fmax(bounds.x - pad_px, 0), top = fmax(bounds.y - pad_px, 0);

    *ret_x = left;
    *ret_y = top;
    *ret_width = bounds.width < 0
                     ? 0
                     : fmax(fmin(bounds.x + bounds.width + pad_px, view->width_px) - left, 0);
    *ret_height = bounds.width < 0
                      ? 0
                      : fmax(fmin(bounds.y + bounds.height + pad_px, view->height_px) - top, 0);
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what of a picture is painted again?
 * Answer:    the squares with the view, the things with the results, what moves with the moment.
 * Not here:  what is in the picture (draw/scene.h), when it changes (side_view.c). */
#include "kept_picture.h"

#include "look.h"

void
hs_kept_picture_drop(hs_kept_picture *self, hs_anew what)
{
    if (what >= HS_ANEW_ALL)
        g_clear_pointer(&self->squares, cairo_surface_destroy);
    if (what >= HS_ANEW_THINGS)
        g_clear_pointer(&self->kept, gsk_render_node_unref);
    g_clear_pointer(&self->moving, gsk_render_node_unref);
    g_clear_pointer(&self->picture, hs_picture_free);
}

/* A third of a picture's strokes are squares: painted once for a view, then copied. */
static void
paint_squares(hs_kept_picture *self, GtkWidget *widget, cairo_t *cr)
{
    int scale = gtk_widget_get_scale_factor(widget);
    int width = gtk_widget_get_width(widget), height = gtk_widget_get_height(widget);

    if (self->squares != NULL &&
        (cairo_image_surface_get_width(self->squares) != width * scale ||
         cairo_image_surface_get_height(self->squares) != height * scale))
        g_clear_pointer(&self->squares, cairo_surface_destroy);
    if (self->squares == NULL) {
        self->squares =
            cairo_image_surface_create(CAIRO_FORMAT_ARGB32, width * scale, height * scale);
        cairo_surface_set_device_scale(self->squares, scale, scale);
        cairo_t *once = cairo_create(self->squares);
        hs_picture_paint(self->picture, once, HS_PAINT_SQUARES);
        cairo_destroy(once);
    }
    cairo_set_source_surface(cr, self->squares, 0, 0);
    cairo_paint(cr);
}

static hs_picture *
picture_of(hs_kept_picture *self, GtkWidget *widget, const hs_scene *scene, const hs_view *view)
{
    if (self->picture == NULL)
        self->picture = hs_picture_new(scene, view, hs_look_theme(widget));
    return self->picture;
}

gboolean
hs_kept_picture_height_box(hs_kept_picture *self,
                           GtkWidget *widget,
                           const hs_scene *scene,
                           const hs_view *view,
                           hs_height height,
                           graphene_rect_t *ret_box)
{
    double x, y, width, high;

    if (!hs_picture_height_box(picture_of(self, widget, scene, view), height, &x, &y, &width,
                               &high))
        return FALSE;
    *ret_box = GRAPHENE_RECT_INIT((float)x, (float)y, (float)width, (float)high);
    return TRUE;
}

static GskRenderNode *
paint_node(hs_kept_picture *self,
           GtkWidget *widget,
           const hs_scene *scene,
           const hs_view *view,
           hs_paint_part part)
{
    double x = 0.0, y = 0.0, width = gtk_widget_get_width(widget),
           height = gtk_widget_get_height(widget);

    hs_picture *picture = picture_of(self, widget, scene, view);
    if (part == HS_PAINT_MOVING)
        hs_picture_moving_bounds(picture, &x, &y, &width, &height);
    if (!(width > 0.0) || !(height > 0.0))
        return NULL;
    GskRenderNode *node = gsk_cairo_node_new(
        &GRAPHENE_RECT_INIT((float)x, (float)y, (float)width, (float)height));
    cairo_t *cr = gsk_cairo_node_get_draw_context(node);
    if (part == HS_PAINT_KEPT)
        paint_squares(self, widget, cr);
    hs_picture_paint(picture, cr, part);
    cairo_destroy(cr);
    return node;
}

void
hs_kept_picture_snapshot(hs_kept_picture *self,
                         GtkWidget *widget,
                         const hs_scene *scene,
                         const hs_view *view,
                         GtkSnapshot *snapshot)
{
    if (self->kept == NULL)
        self->kept = paint_node(self, widget, scene, view, HS_PAINT_KEPT);
    if (self->moving == NULL)
        self->moving = paint_node(self, widget, scene, view, HS_PAINT_MOVING);
    if (self->kept != NULL)
        gtk_snapshot_append_node(snapshot, self->kept);
    if (self->moving != NULL)
        gtk_snapshot_append_node(snapshot, self->moving);
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what does the hand see of its stroke?
 * Answer:    a line of ink; once it is let go it fades, while the route that was made of it stays.
 * Not here:  the pointer (side_view.c), the route (stroke.c). */
#include "ink.h"

#include "look.h"

#define FADE_us 900000 /* our choice */
#define INK     0.7

void
hs_ink_add(hs_ink *ink, hs_vec2 at_m)
{
    if (ink->stroke == NULL)
        ink->stroke = g_array_new(FALSE, FALSE, sizeof(hs_vec2));
    g_array_append_val(ink->stroke, at_m);
}

static gboolean
on_fade(GtkWidget *widget, GdkFrameClock *clock, gpointer data)
{
    hs_ink *ink = data;

    (void)clock;
    gtk_widget_queue_draw(widget);
    if (g_get_monotonic_time() - ink->faded_us < FADE_us)
        return G_SOURCE_CONTINUE;
    ink->fade = 0;
    g_clear_pointer(&ink->faded, g_array_unref);
    return G_SOURCE_REMOVE;
}

void
hs_ink_fade(hs_ink *ink, GtkWidget *widget, GArray *stroke)
{
    g_clear_pointer(&ink->faded, g_array_unref);
    ink->faded = g_array_ref(stroke);
    ink->faded_us = g_get_monotonic_time();
    if (ink->fade == 0)
        ink->fade = gtk_widget_add_tick_callback(widget, on_fade, ink, NULL);
}

void
hs_ink_clear(hs_ink *ink)
{
    g_clear_pointer(&ink->stroke, g_array_unref);
    g_clear_pointer(&ink->faded, g_array_unref);
}

void
hs_ink_paint(const hs_ink *ink,
             GtkWidget *widget,
             GtkSnapshot *snapshot,
             const hs_scene *scene,
             const hs_view *view)
{
    const hs_theme *theme = hs_look_theme(widget);
    const GArray *stroke = ink->stroke != NULL ? ink->stroke : ink->faded;
    double alpha =
        ink->stroke != NULL
            ? INK
            : INK * (1.0 - (double)(g_get_monotonic_time() - ink->faded_us) / FADE_us);

    if (stroke == NULL || stroke->len < 2 || !(alpha > 0.0))
        return;
    cairo_t *cr = gtk_snapshot_append_cairo(
        snapshot, &GRAPHENE_RECT_INIT(0, 0, (float)view->width_px, (float)view->height_px));
    cairo_set_source_rgba(cr, theme->ink.r, theme->ink.g, theme->ink.b, alpha);
    cairo_set_line_width(cr, 2.5);
    cairo_set_line_cap(cr, CAIRO_LINE_CAP_ROUND);
    cairo_set_line_join(cr, CAIRO_LINE_JOIN_ROUND);
    for (guint i = 0; i < stroke->len; i++) {
        hs_vec2 at_m = g_array_index(stroke, hs_vec2, i);
        at_m.x = hs_scene_x_of_world(scene, at_m.x);
        hs_vec2 px = hs_view_to_surface(view, at_m);
        cairo_line_to(cr, px.x, px.y);
    }
    cairo_stroke(cr);
    cairo_destroy(cr);
}

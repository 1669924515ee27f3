/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  when does what happen, as curves?
 * Answer:    HsPlots: the plots under one another, kept while only the moment moves, and the cursor.
 * Not here:  the curves (draw/plot.c), the buttons (strip.c). */
#include "strip.h"

#include "look.h"
#include "plot.h"
#include "quantity.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define KNOB 16 /* px: width of the scale's knob, as in style.css */

struct _HsPlots {
    GtkWidget parent;
    HsSession *session;
    gulong watch, scale_watch;
    GtkWidget *scale;
    GskRenderNode *kept;
    gboolean is_small;
};
G_DEFINE_FINAL_TYPE(HsPlots, hs_plots, GTK_TYPE_WIDGET)

static double
title_px(HsPlots *self)
{
    return hs_look_font_px(GTK_WIDGET(self)) * 8.2;
}

static double
axis_px(HsPlots *self)
{
    return hs_look_font_px(GTK_WIDGET(self)) * 1.9;
}

static double
head_px(void)
{
    return 20.0;
}

static hs_plot_request
request_for(HsPlots *self, hs_plot_kind kind)
{
    double width = gtk_widget_get_width(GTK_WIDGET(self)) - title_px(self) - 14.0;

    return (hs_plot_request){.results = hs_session_results(self->session),
                             .left = hs_session_left(self->session),
                             .right = hs_session_right(self->session),
                             .kind = kind,
                             .width_px = MAX(width, 40.0),
                             .axis_px = hs_look_font_px(GTK_WIDGET(self)) * 3.4,
                             .font_px = hs_look_font_px(GTK_WIDGET(self)) * 0.88,
                             .us_units = hs_look_units() == HS_UNITS_US};
}

static hs_plot_kind
kind_of_finding(HsPlots *self)
{
    switch (hs_session_finding_check(self->session)) {
    case HS_CHECK_spine_compression:
    case HS_CHECK_spine_shear:
    case HS_CHECK_strength:
    case HS_CHECK_day_spine:
        return HS_PLOT_COMPRESSION;
    case HS_CHECK_balance:
    case HS_CHECK_floor_friction:
        return HS_PLOT_BALANCE;
    case HS_CHECK_suit_power_loss:
    case HS_CHECK_rescue:
    case HS_CHECK_hold_endurance:
        return HS_PLOT_POWER_OFF;
    default:
        return HS_PLOT_HANDS;
    }
}

static int
shown_kinds(HsPlots *self, hs_plot_kind ret_kinds[HS_N_PLOTS])
{
    if (self->is_small) {
        ret_kinds[0] =
            hs_session_power_off(self->session) ? HS_PLOT_POWER_OFF : kind_of_finding(self);
        return 1;
    }
    ret_kinds[0] = HS_PLOT_HANDS;
    ret_kinds[1] = HS_PLOT_COMPRESSION;
    ret_kinds[2] = hs_session_power_off(self->session) ? HS_PLOT_POWER_OFF : HS_PLOT_BALANCE;
    return 3;
}

static void
write_text(cairo_t *cr,
           HsPlots *self,
           const char *text,
           double x,
           double y,
           double width,
           gboolean is_soft)
{
    const hs_theme *theme = hs_look_theme(GTK_WIDGET(self));
    g_autoptr(PangoLayout) layout = gtk_widget_create_pango_layout(GTK_WIDGET(self), text);
    PangoAttrList *attributes = pango_attr_list_new();
    const hs_colour *ink = is_soft ? &theme->soft_ink : &theme->ink;

    if (is_soft)
        pango_attr_list_insert(attributes, pango_attr_scale_new(0.9));
    else
        pango_attr_list_insert(attributes, pango_attr_weight_new(PANGO_WEIGHT_SEMIBOLD));
    pango_layout_set_attributes(layout, attributes);
    pango_attr_list_unref(attributes);
    pango_layout_set_width(layout, (int)(width * PANGO_SCALE));
    pango_layout_set_ellipsize(layout, PANGO_ELLIPSIZE_END);
    cairo_set_source_rgba(cr, ink->r, ink->g, ink->b, ink->a);
    cairo_move_to(cr, x, y);
    pango_cairo_show_layout(cr, layout);
}

static void
paint_plots(HsPlots *self, cairo_t *cr, double height)
{
    const hs_theme *theme = hs_look_theme(GTK_WIDGET(self));
    hs_plot_kind kinds[HS_N_PLOTS];
    int n = shown_kinds(self, kinds);
    double each = (height - head_px() - axis_px(self)) / n,
           font = hs_look_font_px(GTK_WIDGET(self));
    hs_plot_request request = {0};

    for (int i = 0; i < n; i++) {
        double top = head_px() + each * i;
        request = request_for(self, kinds[i]);
        request.height_px = each - 4.0;
        write_text(cr, self, hs_plot_title(kinds[i]), 14.0, top + 2.0, title_px(self) - 14.0,
                   FALSE);
        write_text(cr, self, hs_plot_unit(kinds[i]), 14.0, top + 2.0 + font * 1.35,
                   title_px(self) - 14.0, TRUE);
        cairo_save(cr);
        cairo_translate(cr, title_px(self), top);
        cairo_rectangle(cr, 0.0, -2.0, request.width_px + 12.0, request.height_px + 4.0);
        cairo_clip(cr);
        hs_plot_paint(cr, &request, theme);
        cairo_restore(cr);
    }
    request.height_px = axis_px(self);
    cairo_save(cr);
    cairo_translate(cr, title_px(self), height - axis_px(self));
    hs_plot_axis_paint(cr, &request, theme);
    cairo_restore(cr);
}

static void
snapshot_cursor(HsPlots *self, GtkSnapshot *snapshot, double height)
{
    hs_plot_request request = request_for(self, HS_PLOT_HANDS);
    const hs_theme *theme = hs_look_theme(GTK_WIDGET(self));
    double x = title_px(self) + hs_plot_x_of_time(&request, hs_session_moment_s(self->session));
    GdkRGBA ink = {(float)theme->ink.r, (float)theme->ink.g, (float)theme->ink.b, 1.0f};

    gtk_snapshot_append_color(
        snapshot, &ink,
        &GRAPHENE_RECT_INIT((float)x - 0.75f, (float)head_px() - 4.0f, 1.5f,
                            (float)(height - axis_px(self) - head_px() + 4.0)));
}

static void
snapshot(GtkWidget *widget, GtkSnapshot *snapshot)
{
    HsPlots *self = HS_PLOTS(widget);
    int width = gtk_widget_get_width(widget), height = gtk_widget_get_height(widget);

    if (hs_session_results(self->session) != NULL && width > 20 && height > 40) {
        if (self->kept == NULL) {
            self->kept =
                gsk_cairo_node_new(&GRAPHENE_RECT_INIT(0, 0, (float)width, (float)height));
            cairo_t *cr = gsk_cairo_node_get_draw_context(self->kept);
            paint_plots(self, cr, height);
            cairo_destroy(cr);
        }
        gtk_snapshot_append_node(snapshot, self->kept);
        snapshot_cursor(self, snapshot, height);
    }
    gtk_widget_snapshot_child(widget, self->scale, snapshot);
}

static void
size_allocate(GtkWidget *widget, int width, int height, int baseline)
{
    HsPlots *self = HS_PLOTS(widget);
    hs_plot_request request = request_for(self, HS_PLOT_HANDS);
    double from = hs_session_results(self->session) ? hs_plot_x_of_time(&request, 0.0) : 0.0;
    double to = hs_session_results(self->session)
                    ? hs_plot_x_of_time(&request, hs_session_total_s(self->session))
                    : width;
    int least = 0, natural = 0;

    (void)baseline, (void)height;
    g_clear_pointer(&self->kept, gsk_render_node_unref);
    gtk_widget_measure(self->scale, GTK_ORIENTATION_HORIZONTAL, -1, &least, &natural, NULL,
                       NULL);
    GtkAllocation place = {(int)(title_px(self) + from) - KNOB / 2, 0,
                           MAX((int)(to - from) + KNOB, least), (int)head_px()};
    gtk_widget_measure(self->scale, GTK_ORIENTATION_VERTICAL, place.width, &least, &natural,
                       NULL, NULL);
    place.height = MAX(place.height, least);
    gtk_widget_size_allocate(self->scale, &place, -1);
}

static void
measure(GtkWidget *widget,
        GtkOrientation orientation,
        int for_size,
        int *least,
        int *natural,
        int *least_base,
        int *natural_base)
{
    HsPlots *self = HS_PLOTS(widget);
    int a, b;

    (void)for_size;
    gtk_widget_measure(self->scale, orientation, -1, &a, &b, NULL, NULL);
    *least = orientation == GTK_ORIENTATION_HORIZONTAL ? 320 : self->is_small ? 120 : 230;
    *natural = orientation == GTK_ORIENTATION_HORIZONTAL ? 640 : self->is_small ? 130 : 300;
    *least_base = *natural_base = -1;
}

static void
on_scale(HsPlots *self)
{
    hs_session_set_moment_s(self->session, gtk_range_get_value(GTK_RANGE(self->scale)));
}

static void
show_moment(HsPlots *self)
{
    g_signal_handler_block(self->scale, self->scale_watch);
    gtk_range_set_range(GTK_RANGE(self->scale), 0.0,
                        MAX(hs_session_total_s(self->session), 0.1));
    gtk_range_set_value(GTK_RANGE(self->scale), hs_session_moment_s(self->session));
    g_signal_handler_unblock(self->scale, self->scale_watch);
}

static void
on_changed(HsPlots *self, guint mask)
{
    if (mask & (HS_CHANGED_RESULTS | HS_CHANGED_CHOICE)) {
        g_clear_pointer(&self->kept, gsk_render_node_unref);
        gtk_widget_queue_allocate(GTK_WIDGET(self));
    }
    if (mask & (HS_CHANGED_RESULTS | HS_CHANGED_CHOICE | HS_CHANGED_MOMENT)) {
        show_moment(self);
        gtk_widget_queue_draw(GTK_WIDGET(self));
    }
}

static void
scrub(HsPlots *self, double x_px)
{
    hs_plot_request request = request_for(self, HS_PLOT_HANDS);

    if (hs_session_results(self->session) != NULL)
        hs_session_set_moment_s(self->session,
                                CLAMP(hs_plot_time_of_x(&request, x_px - title_px(self)), 0.0,
                                      hs_session_total_s(self->session)));
}

static void
on_drag_begin(GtkGestureDrag *drag, double x_px, double y_px, HsPlots *self)
{
    (void)y_px;
    gtk_gesture_set_state(GTK_GESTURE(drag), GTK_EVENT_SEQUENCE_CLAIMED);
    scrub(self, x_px);
}

static void
on_drag_update(GtkGestureDrag *drag, double dx_px, double dy_px, HsPlots *self)
{
    double x_px, y_px;

    (void)dy_px;
    if (gtk_gesture_drag_get_start_point(drag, &x_px, &y_px))
        scrub(self, x_px + dx_px);
}

static void
css_changed(GtkWidget *widget, GtkCssStyleChange *change)
{
    GTK_WIDGET_CLASS(hs_plots_parent_class)->css_changed(widget, change);
    g_clear_pointer(&HS_PLOTS(widget)->kept, gsk_render_node_unref);
}

static void
dispose(GObject *object)
{
    HsPlots *self = HS_PLOTS(object);

    if (self->session != NULL)
        g_clear_signal_handler(&self->watch, self->session);
    g_clear_pointer(&self->scale, gtk_widget_unparent);
    g_clear_pointer(&self->kept, gsk_render_node_unref);
    g_clear_object(&self->session);
    G_OBJECT_CLASS(hs_plots_parent_class)->dispose(object);
}

static void
hs_plots_class_init(HsPlotsClass *class)
{
    GtkWidgetClass *widget_class = GTK_WIDGET_CLASS(class);

    G_OBJECT_CLASS(class)->dispose = dispose;
    widget_class->snapshot = snapshot;
    widget_class->measure = measure;
    widget_class->size_allocate = size_allocate;
    widget_class->css_changed = css_changed;
    gtk_widget_class_set_css_name(widget_class, "plots");
    gtk_widget_class_set_accessible_role(widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
hs_plots_init(HsPlots *self)
{
    GtkGesture *drag = gtk_gesture_drag_new();

    self->scale = gtk_scale_new_with_range(GTK_ORIENTATION_HORIZONTAL, 0.0, 1.0, 0.1);
    gtk_scale_set_draw_value(GTK_SCALE(self->scale), FALSE);
    gtk_widget_add_css_class(self->scale, "cursor-scale");
    hs_look_name(self->scale, _("Moment of the route, seconds"));
    gtk_widget_set_parent(self->scale, GTK_WIDGET(self));
    g_signal_connect(drag, "drag-begin", G_CALLBACK(on_drag_begin), self);
    g_signal_connect(drag, "drag-update", G_CALLBACK(on_drag_update), self);
    gtk_widget_add_controller(GTK_WIDGET(self), GTK_EVENT_CONTROLLER(drag));
    gtk_widget_set_vexpand(GTK_WIDGET(self), TRUE);
    hs_look_name(self, _("Plots along the route"));
}

GtkWidget *
hs_plots_new(HsSession *session)
{
    HsPlots *self = g_object_new(HS_TYPE_PLOTS, NULL);

    self->session = g_object_ref(session);
    self->scale_watch =
        g_signal_connect_swapped(self->scale, "value-changed", G_CALLBACK(on_scale), self);
    self->watch = g_signal_connect_swapped(session, "changed", G_CALLBACK(on_changed), self);
    show_moment(self);
    return GTK_WIDGET(self);
}

void
hs_plots_set_small(HsPlots *self, gboolean small)
{
    if (self->is_small == small)
        return;
    self->is_small = small;
    g_clear_pointer(&self->kept, gsk_render_node_unref);
    gtk_widget_queue_resize(GTK_WIDGET(self));
}

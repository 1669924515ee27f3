/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  who stands where, seen from above?
 * Answer:    HsPlanView: the plan of one option at this moment.
 * Not here:  what the plan consists of (draw/plan.c). */
#include "plan_view.h"

#include "field.h"
#include "look.h"
#include "paint.h"

#include <glib/gi18n-lib.h>

struct _HsPlanView {
    GtkWidget parent;
    HsSession *session;
    gulong watch;
    int option;
    hs_scene *scene;
};
G_DEFINE_FINAL_TYPE(HsPlanView, hs_plan_view, GTK_TYPE_WIDGET)

static void
rebuild(HsPlanView *self)
{
    const hs_results *results = hs_session_results(self->session);
    const hs_task *task = hs_field_task(self->session);

    g_clear_pointer(&self->scene, hs_scene_free);
    if (gtk_widget_get_mapped(GTK_WIDGET(self)) && results != NULL && task != NULL &&
        self->option >= 0 && self->option < results->n_options &&
        results->options[self->option].n_samples > 0) {
        hs_scene_request request = {.task = task,
                                    .results = results,
                                    .option = self->option,
                                    .sample = hs_session_sample(self->session, self->option),
                                    .layers = hs_session_layers(self->session),
                                    .chosen_point = hs_session_point(self->session),
                                    .us_units = hs_look_units() == HS_UNITS_US};
        self->scene = hs_plan_build(&request);
    }
    gtk_widget_queue_draw(GTK_WIDGET(self));
}

static void
on_changed(HsPlanView *self, guint mask)
{
    if (mask & (HS_CHANGED_RESULTS | HS_CHANGED_MOMENT | HS_CHANGED_CHOICE))
        rebuild(self);
}

static void
snapshot(GtkWidget *widget, GtkSnapshot *snapshot)
{
    HsPlanView *self = HS_PLAN_VIEW(widget);
    int width = gtk_widget_get_width(widget), height = gtk_widget_get_height(widget);

    if (self->scene == NULL || width <= 0 || height <= 0)
        return;
    hs_view view = hs_view_fit(self->scene, width, height, hs_look_font_px(widget) * 0.9);
    cairo_t *cr = gtk_snapshot_append_cairo(
        snapshot, &GRAPHENE_RECT_INIT(0, 0, (float)width, (float)height));
    hs_paint_scene(cr, self->scene, &view, hs_look_theme(widget));
    cairo_destroy(cr);
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
    (void)widget, (void)for_size;
    *least = orientation == GTK_ORIENTATION_HORIZONTAL ? 120 : 130;
    *natural = orientation == GTK_ORIENTATION_HORIZONTAL ? 400 : 150;
    *least_base = *natural_base = -1;
}

static void
map(GtkWidget *widget)
{
    GTK_WIDGET_CLASS(hs_plan_view_parent_class)->map(widget);
    rebuild(HS_PLAN_VIEW(widget));
}

static void
dispose(GObject *object)
{
    HsPlanView *self = HS_PLAN_VIEW(object);

    if (self->session != NULL)
        g_clear_signal_handler(&self->watch, self->session);
    g_clear_object(&self->session);
    g_clear_pointer(&self->scene, hs_scene_free);
    G_OBJECT_CLASS(hs_plan_view_parent_class)->dispose(object);
}

static void
hs_plan_view_class_init(HsPlanViewClass *class)
{
    GtkWidgetClass *widget_class = GTK_WIDGET_CLASS(class);

    G_OBJECT_CLASS(class)->dispose = dispose;
    widget_class->snapshot = snapshot;
    widget_class->measure = measure;
    widget_class->map = map;
    gtk_widget_class_set_css_name(widget_class, "planview");
    gtk_widget_class_set_accessible_role(widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
hs_plan_view_init(HsPlanView *self)
{
    self->option = -1;
    gtk_widget_set_overflow(GTK_WIDGET(self), GTK_OVERFLOW_HIDDEN);
    gtk_widget_set_hexpand(GTK_WIDGET(self), TRUE);
    hs_look_name(self, _("Plan view"));
}

GtkWidget *
hs_plan_view_new(HsSession *session)
{
    HsPlanView *self = g_object_new(HS_TYPE_PLAN_VIEW, NULL);

    self->session = g_object_ref(session);
    self->watch = g_signal_connect_swapped(session, "changed", G_CALLBACK(on_changed), self);
    return GTK_WIDGET(self);
}

void
hs_plan_view_set_option(HsPlanView *self, int option)
{
    const hs_results *results = hs_session_results(self->session);

    self->option = option;
    if (results != NULL && option >= 0 && option < results->n_options) {
        g_autofree char *name =
            g_strdup_printf(_("Plan view: %s"), results->options[option].name);
        hs_look_name(self, name);
    }
    rebuild(self);
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what does one option look like from the side at this moment?
 * Answer:    HsSideView: the scene in kept layers, with a handle over everything that can be grabbed.
 * Not here:  the two views together (stage.c), what dragging means (grab.c). */
#include "side_view.h"

#include "change.h"
#include "field.h"
#include "grab.h"
#include "hit.h"
#include "ink.h"
#include "kept_picture.h"
#include "load_ghost.h"
#include "look.h"
#include "stroke.h"
#include "targets.h"

#include <glib/gi18n-lib.h>
#include <math.h>

struct _HsSideView {
    GtkWidget parent;
    HsSession *session;
    int option;
    hs_scene *scene;
    hs_view view;
    gboolean has_view, is_held, is_drawing, is_panning, folds;
    hs_kept_picture painted;
    hs_targets targets;
    hs_ink ink;
    hs_load_ghost load_ghost; /* along with a stroke */
    double pan_x_px, pan_y_px;
};
G_DEFINE_FINAL_TYPE(HsSideView, hs_side_view, GTK_TYPE_WIDGET)

enum {
    RESIZED,
    PANNED,
    ZOOMED,
    N_SIGNALS
};
static guint signals[N_SIGNALS];

static void
drop_nodes(HsSideView *self, hs_anew what)
{
    hs_kept_picture_drop(&self->painted, what);
    gtk_widget_queue_draw(GTK_WIDGET(self));
}

/* ---- painting ------------------------------------------------------------------------------ */

static void
snapshot(GtkWidget *widget, GtkSnapshot *snapshot)
{
    HsSideView *self = HS_SIDE_VIEW(widget);

    if (self->scene != NULL && self->has_view) {
        hs_kept_picture_snapshot(&self->painted, widget, self->scene, &self->view, snapshot);
        hs_load_ghost_paint(&self->load_ghost, widget, snapshot, self->scene, &self->view);
        hs_ink_paint(&self->ink, widget, snapshot, self->scene, &self->view);
    }
    for (GtkWidget *child = gtk_widget_get_first_child(widget); child != NULL;
         child = gtk_widget_get_next_sibling(child))
        gtk_widget_snapshot_child(widget, child, snapshot);
}

/* ---- what can be taken hold of -------------------------------------------------------------- */

static const hs_option_result *
option_of(HsSideView *self)
{
    const hs_results *results = hs_session_results(self->session);

    if (results == NULL || self->option < 0 || self->option >= results->n_options)
        return NULL;
    return &results->options[self->option];
}

static const hs_sample *
sample_of(HsSideView *self)
{
    const hs_option_result *option = option_of(self);

    return option != NULL && option->n_samples > 0
               ? &option->samples[hs_session_sample(self->session, self->option)]
               : NULL;
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
    int a, b;

    (void)for_size;
    for (GtkWidget *child = gtk_widget_get_first_child(widget); child != NULL;
         child = gtk_widget_get_next_sibling(child))
        gtk_widget_measure(child, orientation, -1, &a, &b, NULL, NULL);
    *least = orientation == GTK_ORIENTATION_HORIZONTAL ? 220 : 200;
    *natural = 480;
    *least_base = *natural_base = -1;
}

static void
size_allocate(GtkWidget *widget, int width, int height, int baseline)
{
    HsSideView *self = HS_SIDE_VIEW(widget);

    (void)baseline;
    if (!self->has_view || (int)self->view.width_px != width ||
        (int)self->view.height_px != height)
        g_signal_emit(self, signals[RESIZED], 0);
    hs_targets_allocate(&self->targets, self->has_view ? self->scene : NULL, &self->view,
                        &self->painted);
}

/* ---- pointer ------------------------------------------------------------------------------- */

hs_vec2
hs_side_view_world(HsSideView *self, hs_vec2 at_px)
{
    hs_vec2 at_m = hs_view_to_world(&self->view, at_px);

    if (self->scene != NULL)
        at_m.x = hs_scene_world_of_x(self->scene, at_m.x);
    return at_m;
}

double
hs_side_view_snap_reach(HsSideView *self, int bearer, double reach_m, gboolean is_free)
{
    const hs_task *task = hs_field_task(self->session);
    const hs_option_result *option = option_of(self);

    if (task == NULL || option == NULL || bearer >= option->asked->n_bearers)
        return reach_m;
    int suit = option->asked->bearers[bearer].suit;
    return hs_snap_reach_m(suit >= 0 ? &task->suits[suit] : NULL, &self->view, reach_m,
                           is_free);
}

hs_vec2
hs_side_view_snap(HsSideView *self, hs_vec2 at_m, int moved, gboolean is_free)
{
    const hs_task *task = hs_field_task(self->session);

    if (task == NULL || self->scene == NULL)
        return at_m;
    at_m.x = hs_scene_x_of_world(self->scene, at_m.x);
    hs_snap snap = hs_snap_point(task, self->scene, &self->view, at_m, moved,
                                 moved >= 0 ? 0.001 : 0.01, is_free);
    return snap.world_m;
}

static void
drop_stroke(HsSideView *self)
{
    if (self->ink.stroke == NULL)
        return;
    g_clear_pointer(&self->ink.stroke, g_array_unref);
    hs_load_ghost_clear(&self->load_ghost, self->session);
    gtk_widget_queue_draw(GTK_WIDGET(self));
}

static void
on_drag_begin(GtkGestureDrag *drag, double x_px, double y_px, HsSideView *self)
{
    gtk_widget_grab_focus(GTK_WIDGET(self));
    self->pan_x_px = self->pan_y_px = 0.0;
    self->is_panning = !self->is_drawing;
    if (!self->is_drawing)
        return;
    gtk_gesture_set_state(GTK_GESTURE(drag), GTK_EVENT_SEQUENCE_CLAIMED);
    hs_vec2 at_m = hs_side_view_world(self, (hs_vec2){x_px, y_px});
    hs_ink_add(&self->ink, at_m);
}

static void
on_drag_update(GtkGestureDrag *drag, double dx_px, double dy_px, HsSideView *self)
{
    double x_px, y_px;

    if (self->ink.stroke == NULL && !self->is_panning)
        return; /* Escape has ended it */
    if (self->ink.stroke == NULL) {
        g_signal_emit(self, signals[PANNED], 0, dx_px - self->pan_x_px, dy_px - self->pan_y_px);
        self->pan_x_px = dx_px;
        self->pan_y_px = dy_px;
        return;
    }
    gtk_gesture_drag_get_start_point(drag, &x_px, &y_px);
    hs_vec2 at_m = hs_side_view_world(self, (hs_vec2){x_px + dx_px, y_px + dy_px});
    hs_ink_add(&self->ink, at_m);
    hs_load_ghost_move(&self->load_ghost, self->session, self->option,
                       g_array_index(self->ink.stroke, hs_vec2, 0),
                       hs_side_view_snap(self, at_m, -1, FALSE));
    gtk_widget_queue_draw(GTK_WIDGET(self));
}

static void
on_drag_end(GtkGestureDrag *drag, double dx_px, double dy_px, HsSideView *self)
{
    g_autoptr(GArray) stroke = g_steal_pointer(&self->ink.stroke);

    (void)drag;
    if (stroke == NULL)
        return;
    hs_load_ghost_clear(&self->load_ghost, self->session);
    gtk_widget_queue_draw(GTK_WIDGET(self));
    if (hypot(dx_px, dy_px) < 4.0 && stroke->len < 4) {
        hs_vec2 at_m = g_array_index(stroke, hs_vec2, 0);
        hs_grab_add_point(GTK_WIDGET(self), self->session,
                          hs_side_view_snap(self, at_m, -1, FALSE));
        return;
    }
    hs_vec2 *first = &g_array_index(stroke, hs_vec2, 0),
            *last = &g_array_index(stroke, hs_vec2, stroke->len - 1);
    *first = hs_side_view_snap(self, *first, -1, FALSE);
    *last = hs_side_view_snap(self, *last, -1, FALSE);
    g_autoptr(GArray) places = hs_stroke_simplify(stroke);
    if (hs_change_commit(GTK_WIDGET(self), self->session,
                         hs_stroke_edit(self->session, places))) {
        hs_ink_fade(&self->ink, GTK_WIDGET(self), stroke);
        gtk_widget_activate_action(GTK_WIDGET(self), "win.draw-route", NULL);
    }
}

static void
on_drag_cancel(GtkGesture *drag, GdkEventSequence *sequence, HsSideView *self)
{
    (void)drag, (void)sequence;
    drop_stroke(self);
}

static void
on_double_click(GtkGestureClick *click, int n_press, double x_px, double y_px, HsSideView *self)
{
    (void)click;
    if (n_press == 2 && !self->is_drawing && self->scene != NULL)
        hs_grab_add_point(GTK_WIDGET(self), self->session,
                          hs_side_view_snap(self,
                                            hs_side_view_world(self, (hs_vec2){x_px, y_px}), -1,
                                            FALSE));
}

static gboolean
on_scroll(GtkEventControllerScroll *scroll, double dx, double dy, HsSideView *self)
{
    double x_px = self->view.width_px / 2.0, y_px = self->view.height_px / 2.0;
    GdkEvent *event = gtk_event_controller_get_current_event(GTK_EVENT_CONTROLLER(scroll));
    GtkNative *native = gtk_widget_get_native(GTK_WIDGET(self));
    double shift_x, shift_y;

    (void)dx;
    if (event != NULL && gdk_event_get_position(event, &x_px, &y_px)) {
        gtk_native_get_surface_transform(native, &shift_x, &shift_y);
        gtk_widget_translate_coordinates(GTK_WIDGET(native), GTK_WIDGET(self), x_px - shift_x,
                                         y_px - shift_y, &x_px, &y_px);
    }
    g_signal_emit(self, signals[ZOOMED], 0, pow(1.15, -dy), x_px, y_px);
    return GDK_EVENT_STOP;
}

static void
add_pointer(HsSideView *self)
{
    GtkGesture *drag = gtk_gesture_drag_new();
    GtkGesture *click = gtk_gesture_click_new();
    GtkEventController *scroll =
        gtk_event_controller_scroll_new(GTK_EVENT_CONTROLLER_SCROLL_VERTICAL);

    g_signal_connect(drag, "drag-begin", G_CALLBACK(on_drag_begin), self);
    g_signal_connect(drag, "drag-update", G_CALLBACK(on_drag_update), self);
    g_signal_connect(drag, "drag-end", G_CALLBACK(on_drag_end), self);
    g_signal_connect(drag, "cancel", G_CALLBACK(on_drag_cancel), self);
    g_signal_connect(click, "pressed", G_CALLBACK(on_double_click), self);
    g_signal_connect(scroll, "scroll", G_CALLBACK(on_scroll), self);
    gtk_widget_add_controller(GTK_WIDGET(self), GTK_EVENT_CONTROLLER(drag));
    gtk_widget_add_controller(GTK_WIDGET(self), GTK_EVENT_CONTROLLER(click));
    gtk_widget_add_controller(GTK_WIDGET(self), scroll);
}

/* ---- class --------------------------------------------------------------------------------- */

static void
css_changed(GtkWidget *widget, GtkCssStyleChange *change)
{
    GTK_WIDGET_CLASS(hs_side_view_parent_class)->css_changed(widget, change);
    drop_nodes(HS_SIDE_VIEW(widget), HS_ANEW_ALL);
}

static void
dispose(GObject *object)
{
    HsSideView *self = HS_SIDE_VIEW(object);
    GtkWidget *child;

    while ((child = gtk_widget_get_first_child(GTK_WIDGET(self))) != NULL)
        gtk_widget_unparent(child);
    hs_targets_clear(&self->targets);
    hs_kept_picture_drop(&self->painted, HS_ANEW_ALL);
    g_clear_pointer(&self->scene, hs_scene_free);
    hs_ink_clear(&self->ink);
    hs_load_ghost_clear(&self->load_ghost, NULL);
    g_clear_object(&self->session);
    G_OBJECT_CLASS(hs_side_view_parent_class)->dispose(object);
}

static void
hs_side_view_class_init(HsSideViewClass *class)
{
    GtkWidgetClass *widget_class = GTK_WIDGET_CLASS(class);
    GType type = G_TYPE_FROM_CLASS(class);

    G_OBJECT_CLASS(class)->dispose = dispose;
    widget_class->snapshot = snapshot;
    widget_class->measure = measure;
    widget_class->size_allocate = size_allocate;
    widget_class->css_changed = css_changed;
    signals[RESIZED] =
        g_signal_new("resized", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
    signals[PANNED] = g_signal_new("panned", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                   G_TYPE_NONE, 2, G_TYPE_DOUBLE, G_TYPE_DOUBLE);
    signals[ZOOMED] = g_signal_new("zoomed", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                   G_TYPE_NONE, 3, G_TYPE_DOUBLE, G_TYPE_DOUBLE, G_TYPE_DOUBLE);
    gtk_widget_class_set_css_name(widget_class, "sideview");
    gtk_widget_class_set_accessible_role(widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
hs_side_view_init(HsSideView *self)
{
    self->option = -1;
    self->folds = TRUE;
    gtk_widget_set_overflow(GTK_WIDGET(self), GTK_OVERFLOW_HIDDEN);
    gtk_widget_set_hexpand(GTK_WIDGET(self), TRUE);
    gtk_widget_set_vexpand(GTK_WIDGET(self), TRUE);
    gtk_widget_set_focusable(GTK_WIDGET(self), FALSE);
    add_pointer(self);
}

GtkWidget *
hs_side_view_new(HsSession *session)
{
    HsSideView *self = g_object_new(HS_TYPE_SIDE_VIEW, NULL);

    self->session = g_object_ref(session);
    hs_targets_init(&self->targets, GTK_WIDGET(self), session);
    for (int i = HS_HEIGHT_BASE; i < HS_N_HEIGHTS; i++)
        g_signal_connect_swapped(self->targets.figures[i], "typing",
                                 G_CALLBACK(hs_side_view_hold), self);
    return GTK_WIDGET(self);
}

void
hs_side_view_set_option(HsSideView *self, int option)
{
    const hs_option_result *asked;

    self->option = option;
    asked = option_of(self);
    g_autofree char *name = asked != NULL ? g_strdup_printf(_("Side view: %s"), asked->name)
                                          : g_strdup(_("Side view"));
    hs_look_name(self, name);
}

/* While the next bearer is meant, the edited option is shown with him. */
static void
show_next_bearer(HsSideView *self, hs_scene_request *request)
{
    const hs_task *task;
    const hs_results *results;
    double t_s = hs_session_moment_s(self->session);

    if (self->option != hs_session_edited(self->session) ||
        hs_session_ghost(self->session, &task, &results) != HS_GHOST_BEARER)
        return;
    request->task = task;
    request->results = results;
    request->n_pale = 1;
    request->sample = 0;
    const hs_option_result *option = &results->options[self->option];
    for (int i = 1; i < option->n_samples; i++) {
        if (fabs(option->samples[i].t_s - t_s) <
            fabs(option->samples[request->sample].t_s - t_s))
            request->sample = i;
    }
}

void
hs_side_view_rebuild(HsSideView *self, gboolean keep_still)
{
    drop_nodes(self, keep_still ? HS_ANEW_MOVING : HS_ANEW_THINGS);
    g_clear_pointer(&self->scene, hs_scene_free);
    if (sample_of(self) != NULL && hs_field_task(self->session) != NULL) {
        hs_scene_request request = {.task = hs_field_task(self->session),
                                    .results = hs_session_results(self->session),
                                    .option = self->option,
                                    .sample = hs_session_sample(self->session, self->option),
                                    .layers = hs_session_layers(self->session),
                                    .chosen_point = hs_session_point(self->session),
                                    .power_off = hs_session_power_off(self->session),
                                    .folds = self->folds,
                                    .us_units = hs_look_units() == HS_UNITS_US};
        show_next_bearer(self, &request);
        self->scene = hs_scene_build(&request);
    }
    hs_targets_sync(&self->targets, self->option, self->scene);
}

const hs_scene *
hs_side_view_scene(HsSideView *self)
{
    return self->scene;
}

void
hs_side_view_set_view(HsSideView *self, const hs_view *shared)
{
    if (self->has_view && memcmp(&self->view, shared, sizeof *shared) == 0)
        return;
    self->view = *shared;
    self->has_view = TRUE;
    drop_nodes(self, HS_ANEW_ALL);
    gtk_widget_queue_allocate(GTK_WIDGET(self));
}

void
hs_side_view_hold(HsSideView *self, gboolean held)
{
    self->is_held = held;
    if (!held)
        g_signal_emit(self, signals[RESIZED], 0);
}

gboolean
hs_side_view_is_held(HsSideView *self)
{
    return self->is_held;
}

void
hs_side_view_type_height(HsSideView *self)
{
    hs_height_figure_type(self->targets.figures[HS_HEIGHT_BASE]);
}

void
hs_side_view_set_drawing(HsSideView *self, gboolean drawing)
{
    self->is_drawing = drawing;
    if (!drawing)
        drop_stroke(self);
    hs_targets_let(&self->targets, !drawing); /* a stroke may begin on a point */
    gtk_widget_set_cursor_from_name(GTK_WIDGET(self), drawing ? "crosshair" : NULL);
}

void
hs_side_view_set_folds(HsSideView *self, gboolean folds)
{
    self->folds = folds;
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how is a thing on the stage grabbed, by pointer, keyboard or screen reader?
 * Answer:    a small widget over each route point, grip and pair of feet, with a name, keys and actions.
 * Not here:  what moving it means (grab.c), where it is (side_view.c). */
#include "handle.h"

#include "grab.h"
#include "look.h"
#include "side_view.h"

#include <glib/gi18n-lib.h>

struct _HsHandle {
    GtkWidget parent;
    HsSession *session;
    hs_handle_kind kind;
    int option, index;
    char *name;
    GtkGesture *drag;
    hs_grab grab;
    gboolean is_dragging;
};
G_DEFINE_FINAL_TYPE(HsHandle, hs_handle, GTK_TYPE_WIDGET)

static double
mark_radius(HsHandle *self)
{
    if (self->kind == HS_HANDLE_POINT)
        return hs_session_point(self->session) == self->index ? 7.0 : 5.0;
    return 4.0;
}

/* Points are drawn by the scene; the handle adds the ring of hover, focus and choice. */
static void
snapshot(GtkWidget *widget, GtkSnapshot *snapshot)
{
    HsHandle *self = HS_HANDLE(widget);
    GtkStateFlags state = gtk_widget_get_state_flags(widget);
    gboolean is_chosen =
        self->kind == HS_HANDLE_POINT && hs_session_point(self->session) == self->index;
    gboolean is_hot = (state & (GTK_STATE_FLAG_PRELIGHT | GTK_STATE_FLAG_FOCUS_VISIBLE)) != 0;
    const hs_theme *theme = hs_look_theme(widget);
    double middle = HS_HANDLE_SIZE / 2.0;

    if (!is_hot && !is_chosen && !self->is_dragging && self->kind == HS_HANDLE_POINT)
        return;
    cairo_t *cr = gtk_snapshot_append_cairo(
        snapshot, &GRAPHENE_RECT_INIT(0, 0, HS_HANDLE_SIZE, HS_HANDLE_SIZE));
    cairo_set_source_rgba(cr, theme->ink.r, theme->ink.g, theme->ink.b, 1.0);
    if (self->kind == HS_HANDLE_FEET && !is_hot && !self->is_dragging)
        cairo_set_source_rgba(cr, theme->ink.r, theme->ink.g, theme->ink.b, 0.55);
    cairo_set_line_width(cr, is_hot || self->is_dragging ? 2.0 : 1.5);
    if (self->kind == HS_HANDLE_FEET) {
        cairo_move_to(cr, middle - 6.0, middle + 6.0);
        cairo_line_to(cr, middle - 10.0, middle + 9.0);
        cairo_line_to(cr, middle - 6.0, middle + 12.0);
        cairo_move_to(cr, middle + 6.0, middle + 6.0);
        cairo_line_to(cr, middle + 10.0, middle + 9.0);
        cairo_line_to(cr, middle + 6.0, middle + 12.0);
    } else if (self->kind == HS_HANDLE_POINT || is_hot || self->is_dragging) {
        cairo_arc(cr, middle, middle, mark_radius(self) + (is_hot ? 4.0 : 2.0), 0.0,
                  2.0 * G_PI);
    }
    cairo_stroke(cr);
    if (gtk_widget_has_visible_focus(widget)) {
        cairo_rectangle(cr, 2.5, 2.5, HS_HANDLE_SIZE - 5.0, HS_HANDLE_SIZE - 5.0);
        cairo_stroke(cr);
    }
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
    (void)widget, (void)orientation, (void)for_size;
    *least = *natural = HS_HANDLE_SIZE;
    *least_base = *natural_base = -1;
}

static void
nudge(GtkWidget *widget, const char *name, GVariant *argument)
{
    HsHandle *self = HS_HANDLE(widget);
    double step_m = strstr(name, "fine") ? 0.001 : 0.01;
    double dx_m = 0.0, dz_m = 0.0;

    (void)argument;
    if (g_str_has_suffix(name, "left"))
        dx_m = -step_m;
    else if (g_str_has_suffix(name, "right"))
        dx_m = step_m;
    else if (g_str_has_suffix(name, "up"))
        dz_m = step_m;
    else
        dz_m = -step_m;
    hs_grab_nudge(widget, self->session, self->kind, self->option, self->index, dx_m, dz_m);
}

static void
choose(HsHandle *self)
{
    if (self->kind == HS_HANDLE_POINT)
        hs_grab_choose_point(self->session, self->index);
}

/* Return on a point that is chosen already types its height. */
static void
on_choose(GtkWidget *widget, const char *name, GVariant *argument)
{
    HsHandle *self = HS_HANDLE(widget);

    (void)name, (void)argument;
    if (self->kind == HS_HANDLE_POINT && hs_session_point(self->session) == self->index)
        hs_side_view_type_height(HS_SIDE_VIEW(gtk_widget_get_parent(widget)));
    else
        choose(self);
}

static void
on_delete(GtkWidget *widget, const char *name, GVariant *argument)
{
    HsHandle *self = HS_HANDLE(widget);

    (void)name, (void)argument;
    if (self->kind == HS_HANDLE_POINT)
        hs_grab_delete_point(widget, self->session, self->index);
}

static void
on_escape(GtkWidget *widget, const char *name, GVariant *argument)
{
    HsHandle *self = HS_HANDLE(widget);

    (void)name, (void)argument;
    if (self->is_dragging) {
        self->is_dragging = FALSE;
        hs_session_cancel(self->session);
        gtk_gesture_set_state(self->drag, GTK_EVENT_SEQUENCE_DENIED);
    } else {
        hs_session_choose_point(self->session, -1);
    }
}

static HsSideView *
view_of(HsHandle *self)
{
    return HS_SIDE_VIEW(gtk_widget_get_parent(GTK_WIDGET(self)));
}

/* The gesture's offsets are relative to the handle, and the handle moves under the pointer: ask for the view's frame. */
static gboolean
pointer_in_view(HsHandle *self, hs_vec2 *ret_px)
{
    graphene_rect_t bounds;
    double x_px, y_px;

    if (!gtk_gesture_get_point(self->drag, NULL, &x_px, &y_px) ||
        !gtk_widget_compute_bounds(GTK_WIDGET(self), GTK_WIDGET(view_of(self)), &bounds))
        return FALSE;
    *ret_px = (hs_vec2){(double)bounds.origin.x + x_px, (double)bounds.origin.y + y_px};
    return TRUE;
}

static void
on_drag_begin(GtkGestureDrag *drag, double x_px, double y_px, HsHandle *self)
{
    hs_vec2 at_px;

    (void)x_px, (void)y_px;
    gtk_gesture_set_state(GTK_GESTURE(drag), GTK_EVENT_SEQUENCE_CLAIMED);
    gtk_widget_grab_focus(GTK_WIDGET(self));
    choose(self);
    if (!pointer_in_view(self, &at_px))
        return;
    hs_side_view_hold(view_of(self), TRUE);
    self->grab = hs_grab_begin(self->session, self->kind, self->option, self->index,
                               hs_side_view_world(view_of(self), at_px));
    self->is_dragging = TRUE;
}

static void
on_drag_update(GtkGestureDrag *drag, double dx_px, double dy_px, HsHandle *self)
{
    hs_vec2 at_px;
    GdkModifierType keys =
        gtk_event_controller_get_current_event_state(GTK_EVENT_CONTROLLER(drag));

    if (!self->is_dragging || dx_px * dx_px + dy_px * dy_px < 4.0 ||
        !pointer_in_view(self, &at_px))
        return;
    hs_grab_move(&self->grab, GTK_WIDGET(self), self->session, view_of(self),
                 hs_side_view_world(view_of(self), at_px), !(keys & GDK_ALT_MASK));
}

static void
on_drag_end(GtkGestureDrag *drag, double dx_px, double dy_px, HsHandle *self)
{
    (void)drag, (void)dx_px, (void)dy_px;
    if (self->is_dragging)
        hs_grab_end(&self->grab, GTK_WIDGET(self), self->session);
    self->is_dragging = FALSE;
    hs_side_view_hold(view_of(self), FALSE);
}

static void
on_drag_cancel(GtkGesture *drag, GdkEventSequence *sequence, HsHandle *self)
{
    (void)drag, (void)sequence;
    if (self->is_dragging)
        hs_session_cancel(self->session);
    self->is_dragging = FALSE;
    if (gtk_widget_get_parent(GTK_WIDGET(self)) != NULL)
        hs_side_view_hold(view_of(self), FALSE);
}

static void
dispose(GObject *object)
{
    HsHandle *self = HS_HANDLE(object);

    g_clear_object(&self->session);
    g_clear_pointer(&self->name, g_free);
    G_OBJECT_CLASS(hs_handle_parent_class)->dispose(object);
}

static void
bind_keys(GtkWidgetClass *widget_class)
{
    static const struct {
        const char *coarse, *fine;
        guint key;
    } arrows[] = {
        {"handle.left", "handle.fine-left", GDK_KEY_Left},
        {"handle.right", "handle.fine-right", GDK_KEY_Right},
        {"handle.up", "handle.fine-up", GDK_KEY_Up},
        {"handle.down", "handle.fine-down", GDK_KEY_Down},
    };

    for (guint i = 0; i < G_N_ELEMENTS(arrows); i++) {
        gtk_widget_class_install_action(widget_class, arrows[i].coarse, NULL, nudge);
        gtk_widget_class_install_action(widget_class, arrows[i].fine, NULL, nudge);
        gtk_widget_class_add_binding_action(widget_class, arrows[i].key, 0, arrows[i].coarse,
                                            NULL);
        gtk_widget_class_add_binding_action(widget_class, arrows[i].key, GDK_SHIFT_MASK,
                                            arrows[i].fine, NULL);
    }
    gtk_widget_class_install_action(widget_class, "handle.choose", NULL, on_choose);
    gtk_widget_class_add_binding_action(widget_class, GDK_KEY_Return, 0, "handle.choose", NULL);
    gtk_widget_class_install_action(widget_class, "handle.delete", NULL, on_delete);
    gtk_widget_class_add_binding_action(widget_class, GDK_KEY_Delete, 0, "handle.delete", NULL);
    gtk_widget_class_install_action(widget_class, "handle.let-go", NULL, on_escape);
    gtk_widget_class_add_binding_action(widget_class, GDK_KEY_Escape, 0, "handle.let-go", NULL);
}

static void
hs_handle_class_init(HsHandleClass *class)
{
    GtkWidgetClass *widget_class = GTK_WIDGET_CLASS(class);

    G_OBJECT_CLASS(class)->dispose = dispose;
    widget_class->snapshot = snapshot;
    widget_class->measure = measure;
    gtk_widget_class_set_css_name(widget_class, "handle");
    gtk_widget_class_set_accessible_role(widget_class, GTK_ACCESSIBLE_ROLE_BUTTON);
    bind_keys(widget_class);
}

static void
hs_handle_init(HsHandle *self)
{
    GtkGesture *drag = gtk_gesture_drag_new();

    self->drag = drag;
    self->option = self->index = -1;
    g_signal_connect(drag, "drag-begin", G_CALLBACK(on_drag_begin), self);
    g_signal_connect(drag, "drag-update", G_CALLBACK(on_drag_update), self);
    g_signal_connect(drag, "drag-end", G_CALLBACK(on_drag_end), self);
    g_signal_connect(drag, "cancel", G_CALLBACK(on_drag_cancel), self);
    gtk_widget_add_controller(GTK_WIDGET(self), GTK_EVENT_CONTROLLER(drag));
    gtk_widget_set_focusable(GTK_WIDGET(self), TRUE);
    gtk_widget_set_cursor_from_name(GTK_WIDGET(self), "move");
}

GtkWidget *
hs_handle_new(HsSession *session)
{
    HsHandle *self = g_object_new(HS_TYPE_HANDLE, NULL);

    self->session = g_object_ref(session);
    return GTK_WIDGET(self);
}

void
hs_handle_set(HsHandle *self, hs_handle_kind kind, int option, int index, const char *name)
{
    if (self->kind != kind)
        gtk_widget_set_cursor_from_name(GTK_WIDGET(self),
                                        kind == HS_HANDLE_FEET ? "ew-resize" : "move");
    self->kind = kind;
    self->option = option;
    self->index = index;
    gtk_widget_queue_draw(GTK_WIDGET(self));
    if (g_strcmp0(self->name, name) == 0)
        return;
    g_free(self->name);
    self->name = g_strdup(name);
    hs_look_name(self, name);
    gtk_widget_set_tooltip_text(GTK_WIDGET(self), name);
}

hs_handle_kind
hs_handle_get_kind(HsHandle *self)
{
    return self->kind;
}

int
hs_handle_get_index(HsHandle *self)
{
    return self->index;
}

int
hs_handle_get_option(HsHandle *self)
{
    return self->option;
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how is a drawn height typed in its place?
 * Answer:    a click or Return opens an entry over the figure; what is typed is previewed, Return keeps it, Escape takes it
 *            back; what was sketched counts as measured once it is typed.
 * Not here:  where the figure stands (targets.c), its line and text (draw). */
#include "height_figure.h"

#include "change.h"
#include "field.h"
#include "look.h"
#include "notice.h"
#include "quantity.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define LEAST_px   24   /* high: the place that takes the pointer */
#define SMALL_PART 0.88 /* of the label type, as dimensions are painted */

struct _HsHeightFigure {
    GtkWidget parent;
    HsSession *session;
    int point;
    double shown_m;            /* as drawn now */
    double begun_m, begun_z_m; /* the height and the base's own one when typing began */
    char *name, *text, *begun_text;
    GtkWidget *entry;
    GtkAllocation place; /* of the entry, while it is open */
    gboolean is_typing, is_previewing;
};
G_DEFINE_FINAL_TYPE(HsHeightFigure, hs_height_figure, GTK_TYPE_WIDGET)

static guint typing_signal;

static void
set_typing(HsHeightFigure *self, gboolean typing)
{
    self->is_typing = typing;
    gtk_widget_set_visible(self->entry, typing);
    g_signal_emit(self, typing_signal, 0, typing);
    gtk_widget_queue_resize(GTK_WIDGET(self));
}

/* ---- what is typed ------------------------------------------------------------------------- */

static void
mark_refused(HsHeightFigure *self, gboolean is_refused)
{
    if (is_refused)
        gtk_widget_add_css_class(self->entry, "refused");
    else
        gtk_widget_remove_css_class(self->entry, "refused");
}

/* NULL with a sentence when it is no height. The point moves by as much as the figure changes, whichever of the two it is. */
static hs_edit *
edit_typed(HsHeightFigure *self, char **ret_fault)
{
    const char *text = gtk_editable_get_text(GTK_EDITABLE(self->entry));
    g_autofree char *label = g_strdup_printf(_("Type the height of point %d"), self->point + 1);
    g_autofree char *path = g_strdup_printf("route.points[%d].z_m", self->point);
    g_autofree char *sketched = g_strdup_printf("route.points[%d].sketched", self->point);
    double typed_m;

    if (!hs_quantity_parse(text, "m", hs_look_units(), &typed_m, ret_fault))
        return NULL;
    hs_edit *edit = hs_edit_new(label);
    hs_edit_set_number(edit, path,
                       round((self->begun_z_m + typed_m - self->begun_m) * 1000.0) / 1000.0);
    hs_edit_unset(edit, sketched);
    return edit;
}

static gboolean
is_changed(HsHeightFigure *self)
{
    return g_strcmp0(gtk_editable_get_text(GTK_EDITABLE(self->entry)), self->begun_text) != 0;
}

static void
on_typed(HsHeightFigure *self)
{
    g_autofree char *fault = NULL;

    if (!self->is_typing || !is_changed(self))
        return;
    g_autoptr(hs_edit) edit = edit_typed(self, &fault);
    if (edit != NULL)
        self->is_previewing = TRUE;
    mark_refused(self, edit == NULL || !hs_session_preview(self->session, edit, &fault));
}

static void
stop(HsHeightFigure *self)
{
    mark_refused(self, FALSE);
    set_typing(self, FALSE);
}

static void
take_back(HsHeightFigure *self)
{
    if (self->is_previewing)
        hs_session_cancel(self->session);
    self->is_previewing = FALSE;
    stop(self);
}

/* FALSE: it cannot be taken, *ret_fault says why. */
static gboolean
keep(HsHeightFigure *self, char **ret_fault)
{
    if (!is_changed(self)) {
        take_back(self);
        return TRUE;
    }
    g_autoptr(hs_edit) edit = edit_typed(self, ret_fault);
    if (edit == NULL || !hs_session_commit(self->session, edit, ret_fault))
        return FALSE;
    self->is_previewing = FALSE;
    stop(self);
    return TRUE;
}

static void
on_return(HsHeightFigure *self)
{
    g_autofree char *fault = NULL;

    if (keep(self, &fault))
        gtk_widget_grab_focus(GTK_WIDGET(self));
    else
        hs_notice_say(GTK_WIDGET(self), fault ? fault : _("This is not a number."));
}

static void
on_leave(HsHeightFigure *self)
{
    g_autofree char *fault = NULL;

    if (self->is_typing && !keep(self, &fault))
        take_back(self);
}

static gboolean
on_key(GtkEventControllerKey *keys,
       guint key,
       guint code,
       GdkModifierType state,
       HsHeightFigure *self)
{
    (void)keys, (void)code, (void)state;
    if (key != GDK_KEY_Escape)
        return GDK_EVENT_PROPAGATE;
    take_back(self);
    gtk_widget_grab_focus(GTK_WIDGET(self));
    return GDK_EVENT_STOP;
}

void
hs_height_figure_type(HsHeightFigure *self)
{
    const hs_task *task = hs_field_task(self->session);

    if (self->is_typing || task == NULL || self->point < 0 ||
        self->point >= task->route.n_points)
        return;
    self->begun_m = self->shown_m;
    self->begun_z_m = task->route.points[self->point].z_m;
    g_free(self->begun_text);
    self->begun_text = hs_quantity_text(self->shown_m, "m", hs_look_units());
    gtk_editable_set_text(GTK_EDITABLE(self->entry), self->begun_text);
    hs_look_name(self->entry, self->name);
    self->place = (GtkAllocation){0, 0, 0, 0};
    set_typing(self, TRUE);
    gtk_widget_grab_focus(self->entry);
    gtk_editable_select_region(GTK_EDITABLE(self->entry), 0, -1);
}

/* ---- pointer and keys ---------------------------------------------------------------------- */

static void
on_pressed(GtkGestureClick *click, int n_press, double x_px, double y_px, HsHeightFigure *self)
{
    (void)n_press, (void)x_px, (void)y_px;
    if (!self->is_typing)
        gtk_gesture_set_state(GTK_GESTURE(click), GTK_EVENT_SEQUENCE_CLAIMED);
}

static void
on_released(GtkGestureClick *click, int n_press, double x_px, double y_px, HsHeightFigure *self)
{
    (void)click, (void)n_press, (void)x_px, (void)y_px;
    hs_height_figure_type(self);
}

static void
on_type(GtkWidget *widget, const char *name, GVariant *argument)
{
    (void)name, (void)argument;
    hs_height_figure_type(HS_HEIGHT_FIGURE(widget));
}

/* ---- class --------------------------------------------------------------------------------- */

/* Painted once more, over what stands before the picture's own figure. A dotted line under it says that it can be typed; a
 * frame says that it is meant now. */
static void
paint(HsHeightFigure *self, cairo_t *cr, double width, double height)
{
    const hs_theme *theme = hs_look_theme(GTK_WIDGET(self));
    const double dots[2] = {1.0, 2.0};
    gboolean is_hot = (gtk_widget_get_state_flags(GTK_WIDGET(self)) &
                       (GTK_STATE_FLAG_PRELIGHT | GTK_STATE_FLAG_FOCUS_VISIBLE)) != 0;
    PangoLayout *layout = gtk_widget_create_pango_layout(GTK_WIDGET(self), self->text);
    PangoFontDescription *font = pango_font_description_from_string(theme->font_family);
    int wide, high;

    pango_font_description_set_absolute_size(font, hs_look_font_px(GTK_WIDGET(self)) *
                                                       SMALL_PART * PANGO_SCALE);
    pango_layout_set_font_description(layout, font);
    pango_font_description_free(font);
    pango_layout_get_pixel_size(layout, &wide, &high);
    cairo_set_source_rgba(cr, theme->paper.r, theme->paper.g, theme->paper.b, 0.88);
    cairo_paint(cr);
    cairo_set_source_rgba(cr, theme->ink.r, theme->ink.g, theme->ink.b, 1.0);
    cairo_move_to(cr, (width - wide) / 2.0, (height - high) / 2.0);
    pango_cairo_show_layout(cr, layout);
    g_object_unref(layout);
    cairo_set_line_width(cr, 1.0);
    if (is_hot) {
        cairo_rectangle(cr, 0.5, 0.5, width - 1.0, height - 1.0);
    } else {
        cairo_set_dash(cr, dots, 2, 0.0);
        cairo_move_to(cr, 3.0, height - 1.5);
        cairo_line_to(cr, width - 3.0, height - 1.5);
    }
    cairo_stroke(cr);
}

static void
snapshot(GtkWidget *widget, GtkSnapshot *snapshot)
{
    HsHeightFigure *self = HS_HEIGHT_FIGURE(widget);
    double width = gtk_widget_get_width(widget), height = gtk_widget_get_height(widget);

    if (self->is_typing) {
        gtk_widget_snapshot_child(widget, self->entry, snapshot);
        return;
    }
    cairo_t *cr = gtk_snapshot_append_cairo(
        snapshot, &GRAPHENE_RECT_INIT(0, 0, (float)width, (float)height));
    paint(self, cr, width, height);
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
    (void)for_size;
    *least = *natural = 1;
    if (HS_HEIGHT_FIGURE(widget)->is_typing)
        gtk_widget_measure(HS_HEIGHT_FIGURE(widget)->entry, orientation, -1, least, natural,
                           NULL, NULL);
    *least_base = *natural_base = -1;
}

static void
size_allocate(GtkWidget *widget, int width, int height, int baseline)
{
    HsHeightFigure *self = HS_HEIGHT_FIGURE(widget);
    int least, natural;

    if (!self->is_typing)
        return;
    gtk_widget_measure(self->entry, GTK_ORIENTATION_HORIZONTAL, -1, &least, &natural, NULL,
                       NULL);
    gtk_widget_size_allocate(self->entry, &(GtkAllocation){0, 0, width, height}, baseline);
}

void
hs_height_figure_place(HsHeightFigure *self,
                       const graphene_rect_t *drawn,
                       int width,
                       int height)
{
    GtkWidget *widget = GTK_WIDGET(self);
    int wide, high, least;
    GtkAllocation at = {(int)drawn->origin.x, (int)drawn->origin.y,
                        (int)ceilf(drawn->size.width), (int)ceilf(drawn->size.height)};

    gtk_widget_measure(widget, GTK_ORIENTATION_HORIZONTAL, -1, &least, &wide, NULL, NULL);
    gtk_widget_measure(widget, GTK_ORIENTATION_VERTICAL, -1, &least, &high, NULL, NULL);
    if (!self->is_typing) {
        wide = at.width;
        high = MAX(at.height, LEAST_px);
    }
    at = (GtkAllocation){at.x, at.y + (at.height - high) / 2, wide, high};
    if (self->is_typing) {
        at.x = CLAMP(at.x, 0, MAX(0, width - wide));
        at.y = CLAMP(at.y, 0, MAX(0, height - high));
        if (self->place.width == 0)
            self->place = at;
        at = self->place;
    }
    gtk_widget_size_allocate(widget, &at, -1);
}

static void
dispose(GObject *object)
{
    HsHeightFigure *self = HS_HEIGHT_FIGURE(object);

    if (self->is_previewing)
        hs_session_cancel(self->session);
    self->is_previewing = self->is_typing = FALSE;
    g_clear_pointer(&self->entry, gtk_widget_unparent);
    g_clear_object(&self->session);
    g_clear_pointer(&self->name, g_free);
    g_clear_pointer(&self->text, g_free);
    g_clear_pointer(&self->begun_text, g_free);
    G_OBJECT_CLASS(hs_height_figure_parent_class)->dispose(object);
}

static void
hs_height_figure_class_init(HsHeightFigureClass *class)
{
    GtkWidgetClass *widget_class = GTK_WIDGET_CLASS(class);

    G_OBJECT_CLASS(class)->dispose = dispose;
    widget_class->snapshot = snapshot;
    widget_class->measure = measure;
    widget_class->size_allocate = size_allocate;
    typing_signal = g_signal_new("typing", G_TYPE_FROM_CLASS(class), G_SIGNAL_RUN_LAST, 0, NULL,
                                 NULL, NULL, G_TYPE_NONE, 1, G_TYPE_BOOLEAN);
    gtk_widget_class_set_css_name(widget_class, "heightfigure");
    gtk_widget_class_set_accessible_role(widget_class, GTK_ACCESSIBLE_ROLE_BUTTON);
    gtk_widget_class_install_action(widget_class, "height.type", NULL, on_type);
    gtk_widget_class_add_binding_action(widget_class, GDK_KEY_Return, 0, "height.type", NULL);
    gtk_widget_class_add_binding_action(widget_class, GDK_KEY_KP_Enter, 0, "height.type", NULL);
}

static void
hs_height_figure_init(HsHeightFigure *self)
{
    GtkGesture *click = gtk_gesture_click_new();
    GtkEventController *keys = gtk_event_controller_key_new(),
                       *focus = gtk_event_controller_focus_new();

    self->point = -1;
    self->entry = gtk_entry_new();
    gtk_editable_set_width_chars(GTK_EDITABLE(self->entry), 8);
    gtk_editable_set_max_width_chars(GTK_EDITABLE(self->entry), 8);
    gtk_editable_set_enable_undo(GTK_EDITABLE(self->entry), FALSE);
    gtk_widget_set_visible(self->entry, FALSE);
    gtk_widget_set_parent(self->entry, GTK_WIDGET(self));
    g_signal_connect_swapped(self->entry, "changed", G_CALLBACK(on_typed), self);
    g_signal_connect_swapped(self->entry, "activate", G_CALLBACK(on_return), self);
    gtk_event_controller_set_propagation_phase(keys, GTK_PHASE_CAPTURE);
    g_signal_connect(keys, "key-pressed", G_CALLBACK(on_key), self);
    gtk_widget_add_controller(self->entry, keys);
    g_signal_connect_swapped(focus, "leave", G_CALLBACK(on_leave), self);
    gtk_widget_add_controller(self->entry, focus);
    g_signal_connect(click, "pressed", G_CALLBACK(on_pressed), self);
    g_signal_connect(click, "released", G_CALLBACK(on_released), self);
    gtk_widget_add_controller(GTK_WIDGET(self), GTK_EVENT_CONTROLLER(click));
    gtk_widget_set_focusable(GTK_WIDGET(self), TRUE);
    gtk_widget_set_cursor_from_name(GTK_WIDGET(self), "text");
}

GtkWidget *
hs_height_figure_new(HsSession *session)
{
    HsHeightFigure *self = g_object_new(HS_TYPE_HEIGHT_FIGURE, NULL);

    self->session = g_object_ref(session);
    return GTK_WIDGET(self);
}

void
hs_height_figure_set(
    HsHeightFigure *self, int point, double height_m, const char *text, const char *name)
{
    if (!self->is_typing)
        self->point = point;
    self->shown_m = height_m;
    if (g_strcmp0(self->name, name) == 0)
        return;
    g_free(self->name);
    g_free(self->text);
    self->name = g_strdup(name);
    self->text = g_strdup(text);
    hs_look_name(self, name);
    gtk_widget_queue_draw(GTK_WIDGET(self));
}

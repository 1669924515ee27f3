/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what happens, seen?
 * Answer:    HsStage: two options side by side at one moment, to one scale; tools, layers, plan.
 * Not here:  one side view (side_view.c), the headings (heading.c). */
#include "stage.h"

#include "field.h"
#include "heading.h"
#include "look.h"
#include "plan_view.h"
#include "quantity.h"
#include "rows.h"
#include "shell.h"
#include "side_view.h"

#include <glib/gi18n-lib.h>

struct _HsStage {
    GtkWidget parent;
    HsSession *session;
    gulong watch;
    GtkBox *heads, *panes, *layers;
    GtkWidget *layers_label, *layers_menu, *layers_popover, *layers_bar;
    GtkToggleButton *draw, *plan;
    GtkLabel *hint;
    GtkRevealer *plans;
    GtkBox *plan_box;
    GtkWidget *head[2], *pane[2];
    HsSideView *view[2];
    HsPlanView *plan_view[2];
    GtkWidget *switches[HS_N_LAYERS];
    gboolean is_single, is_fitted_by_hand, is_whole, folds, is_showing, has_ghost;
    hs_view shared[2]; /* one scale and floor line, each at its own place of the way */
};
G_DEFINE_FINAL_TYPE(HsStage, hs_stage, GTK_TYPE_WIDGET)

/* ---- one scale for both -------------------------------------------------------------------- */

static void
share_view(HsStage *self)
{
    for (int i = 0; i < 2; i++)
        hs_side_view_set_view(self->view[i], &self->shared[i]);
}

/* b: NULL where one is shown. The whole way while the route is drawn or when asked for; else as near as is legible. */
static void
fit_scenes(HsStage *self, const hs_scene *a, const hs_scene *b, int width, int height)
{
    double font_px = hs_look_font_px(GTK_WIDGET(self));
    gboolean whole = self->is_whole || !self->folds || gtk_toggle_button_get_active(self->draw);

    if (self->is_fitted_by_hand) {
        for (int i = 0; i < 2; i++) {
            self->shared[i].width_px = width;
            self->shared[i].height_px = height;
        }
        return;
    }
    if (b != NULL && !whole) {
        hs_view_fit_pair(a, b, width, height, font_px, self->shared);
        return;
    }
    if (b != NULL)
        self->shared[0] = hs_view_fit_two(a, b, width, height, font_px);
    else
        self->shared[0] = whole ? hs_view_fit_whole(a, width, height, font_px)
                                : hs_view_fit(a, width, height, font_px);
    self->shared[1] = self->shared[0];
}

static void
fit(HsStage *self)
{
    const hs_scene *a = hs_side_view_scene(self->view[0]),
                   *b = hs_side_view_scene(self->view[1]);
    int width = gtk_widget_get_width(GTK_WIDGET(self->view[0])),
        height = gtk_widget_get_height(GTK_WIDGET(self->view[0]));
    gboolean two = gtk_widget_get_visible(self->pane[1]);

    if (!gtk_widget_get_visible(self->pane[0])) {
        width = gtk_widget_get_width(GTK_WIDGET(self->view[1]));
        height = gtk_widget_get_height(GTK_WIDGET(self->view[1]));
        a = b;
        b = NULL;
    }
    if (a == NULL || width < 20 || height < 20 || hs_side_view_is_held(self->view[0]) ||
        hs_side_view_is_held(self->view[1]))
        return;
    fit_scenes(self, a, two ? b : NULL, width, height);
    share_view(self);
}

static void
on_resized(HsStage *self)
{
    fit(self);
}

static void
on_panned(HsStage *self, double dx_px, double dy_px)
{
    self->is_fitted_by_hand = TRUE;
    for (int i = 0; i < 2; i++)
        hs_view_pan(&self->shared[i], dx_px, dy_px);
    share_view(self);
}

static void
on_zoomed(HsStage *self, double factor, double x_px, double y_px)
{
    self->is_fitted_by_hand = TRUE;
    for (int i = 0; i < 2; i++)
        hs_view_zoom(&self->shared[i], factor, (hs_vec2){x_px, y_px});
    share_view(self);
}

/* The whole way; once more: near again. */
void
hs_stage_fit(HsStage *self)
{
    self->is_whole = self->is_fitted_by_hand || !self->is_whole;
    self->is_fitted_by_hand = FALSE;
    fit(self);
}

/* ---- what is shown ------------------------------------------------------------------------- */

static void
show_options(HsStage *self)
{
    int left = hs_session_left(self->session), right = hs_session_right(self->session);
    gboolean edits_right = right >= 0 && hs_session_edited(self->session) == right;

    hs_side_view_set_option(self->view[0], left);
    hs_side_view_set_option(self->view[1], right);
    hs_plan_view_set_option(self->plan_view[0], left);
    hs_plan_view_set_option(self->plan_view[1], right);
    gtk_widget_set_visible(self->pane[0], !self->is_single || !edits_right);
    gtk_widget_set_visible(self->pane[1], right >= 0 && (!self->is_single || edits_right));
    gtk_widget_set_visible(self->head[1], right >= 0);
    for (int i = 0; i < 2; i++)
        gtk_widget_set_visible(GTK_WIDGET(self->plan_view[i]),
                               gtk_widget_get_visible(self->pane[i]));
}

static void
show_layers(HsStage *self)
{
    guint layers = hs_session_layers(self->session);

    self->is_showing = TRUE;
    for (int i = 0; i < HS_N_LAYERS; i++) {
        if (self->switches[i] != NULL)
            gtk_toggle_button_set_active(GTK_TOGGLE_BUTTON(self->switches[i]),
                                         (layers & (1u << i)) != 0);
    }
    self->is_showing = FALSE;
}

static void
show_hint(HsStage *self)
{
    const hs_task *task = hs_field_task(self->session);
    gboolean is_drawing = gtk_toggle_button_get_active(self->draw);
    gboolean is_empty =
        task != NULL && task->route.n_points >= 2 &&
        task->route.points[0].x_m == task->route.points[task->route.n_points - 1].x_m &&
        task->route.points[0].z_m == task->route.points[task->route.n_points - 1].z_m;

    if (hs_session_results(self->session) == NULL)
        gtk_label_set_text(
            self->hint,
            _("Something is still missing in the brief: nothing can be worked out yet."));
    else if (is_drawing)
        gtk_label_set_text(
            self->hint,
            _("Drag the load to where it goes; a click adds a point; Escape ends."));
    else
        gtk_label_set_text(
            self->hint, is_empty ? _("Draw route (R): drag the load to where it goes.") : "");
    gtk_widget_set_visible(GTK_WIDGET(self->hint), *gtk_label_get_text(self->hint) != '\0');
}

/* While the route is drawn: what its end would mean for the hands. */
static void
show_load_ghost(HsStage *self, const hs_task *task, const hs_results *results)
{
    const hs_option_result *option = &results->options[0];
    const hs_point *end = &task->route.points[task->route.n_points - 1];
    double share_N = 0.0;

    if (option->n_samples == 0)
        return;
    for (int b = 0; b < option->asked->n_bearers; b++)
        share_N =
            MAX(share_N, hs_or(option->samples[option->n_samples - 1].bearers[b].share_N, 0.0));
    g_autofree char *share = hs_quantity_text(share_N, "N", hs_look_units());
    g_autofree char *up = hs_quantity_text(end->z_m, "m", hs_look_units());
    g_autofree char *text =
        g_strdup_printf(_("Here: base of the load %s up, greatest share %s."), up, share);
    gtk_label_set_text(self->hint, text);
}

/* Somebody who would join comes or goes; the picture stays where it is. */
static void
show_ghost(HsStage *self)
{
    const hs_task *task;
    const hs_results *results;
    hs_ghost_kind kind = hs_session_ghost(self->session, &task, &results);

    if (kind == HS_GHOST_LOAD)
        show_load_ghost(self, task, results);
    if (kind == HS_GHOST_LOAD || (kind == HS_GHOST_NONE && !self->has_ghost))
        return;
    self->has_ghost = kind != HS_GHOST_NONE;
    for (int i = 0; i < 2; i++)
        hs_side_view_rebuild(self->view[i], TRUE);
}

static void
on_changed(HsStage *self, guint mask)
{
    guint still = HS_CHANGED_RESULTS | HS_CHANGED_CHOICE;

    if (mask == HS_CHANGED_GHOST)
        show_ghost(self);
    if (!(mask & (still | HS_CHANGED_MOMENT)))
        return;
    if (mask & still) {
        show_options(self);
        show_layers(self);
        show_hint(self);
    }
    for (int i = 0; i < 2; i++)
        hs_side_view_rebuild(self->view[i], !(mask & still));
    fit(self); /* what stands still is drawn anew only where the picture has travelled */
}

static void
on_layer(GtkToggleButton *button, HsStage *self)
{
    guint bit = 1u << GPOINTER_TO_INT(g_object_get_data(G_OBJECT(button), "hs-layer"));
    guint layers = hs_session_layers(self->session);

    if (!self->is_showing)
        hs_session_set_layers(
            self->session, gtk_toggle_button_get_active(button) ? layers | bit : layers & ~bit);
}

static void
on_draw_toggled(HsStage *self)
{
    gboolean is_drawing = gtk_toggle_button_get_active(self->draw);

    for (int i = 0; i < 2; i++) {
        hs_side_view_set_drawing(self->view[i], is_drawing);
        hs_side_view_set_folds(self->view[i], self->folds && !is_drawing);
        hs_side_view_rebuild(self->view[i], FALSE);
    }
    fit(self);
    show_hint(self);
}

static void
on_plan_toggled(HsStage *self)
{
    gtk_revealer_set_reveal_child(self->plans, gtk_toggle_button_get_active(self->plan));
}

void
hs_stage_set_drawing(HsStage *self, gboolean drawing)
{
    gtk_toggle_button_set_active(self->draw, drawing);
}

gboolean
hs_stage_is_drawing(HsStage *self)
{
    return gtk_toggle_button_get_active(self->draw);
}

void
hs_stage_toggle_plan(HsStage *self)
{
    gtk_toggle_button_set_active(self->plan, !gtk_toggle_button_get_active(self->plan));
}

void
hs_stage_toggle_folds(HsStage *self)
{
    self->folds = !self->folds;
    for (int i = 0; i < 2; i++) {
        hs_side_view_set_folds(self->view[i], self->folds);
        hs_side_view_rebuild(self->view[i], FALSE);
    }
    self->is_fitted_by_hand = FALSE;
    fit(self);
}

/* Where there is room for one view only, the switches of the layers are in a menu. */
static void
place_layers(HsStage *self)
{
    GtkWidget *layers = GTK_WIDGET(self->layers);

    g_object_ref(layers);
    if (self->is_single)
        gtk_scrolled_window_set_child(GTK_SCROLLED_WINDOW(self->layers_bar), NULL);
    else
        gtk_popover_set_child(GTK_POPOVER(self->layers_popover), NULL);
    gtk_orientable_set_orientation(GTK_ORIENTABLE(layers), self->is_single
                                                               ? GTK_ORIENTATION_VERTICAL
                                                               : GTK_ORIENTATION_HORIZONTAL);
    if (self->is_single)
        gtk_popover_set_child(GTK_POPOVER(self->layers_popover), layers);
    else
        gtk_scrolled_window_set_child(GTK_SCROLLED_WINDOW(self->layers_bar), layers);
    g_object_unref(layers);
    gtk_widget_set_visible(self->layers_menu, self->is_single);
    gtk_widget_set_visible(self->layers_bar, !self->is_single);
    gtk_label_set_text(GTK_LABEL(self->layers_label), self->is_single ? "" : _("show"));
}

void
hs_stage_set_single(HsStage *self, gboolean single)
{
    if (self->is_single == single)
        return;
    self->is_single = single;
    place_layers(self);
    show_options(self);
}

/* ---- construction -------------------------------------------------------------------------- */

static void
add_pane(HsStage *self, int i)
{
    GtkWidget *view = hs_side_view_new(self->session);

    self->pane[i] = gtk_box_new(GTK_ORIENTATION_VERTICAL, 0);
    self->view[i] = HS_SIDE_VIEW(view);
    gtk_widget_add_css_class(self->pane[i], "pane");
    self->head[i] = hs_heading_new(self->session, i == 1);
    gtk_box_append(self->heads, self->head[i]);
    gtk_box_append(GTK_BOX(self->pane[i]), view);
    gtk_box_append(self->panes, self->pane[i]);
    g_signal_connect_swapped(view, "resized", G_CALLBACK(on_resized), self);
    g_signal_connect_swapped(view, "panned", G_CALLBACK(on_panned), self);
    g_signal_connect_swapped(view, "zoomed", G_CALLBACK(on_zoomed), self);
    self->plan_view[i] = HS_PLAN_VIEW(hs_plan_view_new(self->session));
    gtk_box_append(self->plan_box, GTK_WIDGET(self->plan_view[i]));
}

static void
add_layers(HsStage *self)
{
    for (int i = 0; i < HS_N_LAYERS; i++) {
        if (!hs_layer_has_switch((hs_layer)i))
            continue;
        GtkWidget *button = gtk_toggle_button_new_with_label(hs_layer_name((hs_layer)i));
        g_autofree char *name = g_strdup_printf(_("Show %s"), hs_layer_name((hs_layer)i));
        gtk_widget_add_css_class(button, "chip");
        g_object_set_data(G_OBJECT(button), "hs-layer", GINT_TO_POINTER(i));
        hs_look_name(button, name);
        g_signal_connect(button, "toggled", G_CALLBACK(on_layer), self);
        gtk_box_append(self->layers, button);
        self->switches[i] = button;
    }
}

static void
dispose(GObject *object)
{
    HsStage *self = HS_STAGE(object);

    hs_shell_leave(GTK_WIDGET(self), &self->session, &self->watch);
    G_OBJECT_CLASS(hs_stage_parent_class)->dispose(object);
}

static void
hs_stage_class_init(HsStageClass *class)
{
    GtkWidgetClass *widget_class = GTK_WIDGET_CLASS(class);

    G_OBJECT_CLASS(class)->dispose = dispose;
    hs_shell_class(widget_class, "stage.ui", "stage", GTK_ACCESSIBLE_ROLE_GROUP);
    gtk_widget_class_bind_template_child(widget_class, HsStage, heads);
    gtk_widget_class_bind_template_child(widget_class, HsStage, layers_label);
    gtk_widget_class_bind_template_child(widget_class, HsStage, layers_menu);
    gtk_widget_class_bind_template_child(widget_class, HsStage, layers_popover);
    gtk_widget_class_bind_template_child(widget_class, HsStage, layers_bar);
    gtk_widget_class_bind_template_child(widget_class, HsStage, panes);
    gtk_widget_class_bind_template_child(widget_class, HsStage, layers);
    gtk_widget_class_bind_template_child(widget_class, HsStage, draw);
    gtk_widget_class_bind_template_child(widget_class, HsStage, plan);
    gtk_widget_class_bind_template_child(widget_class, HsStage, hint);
    gtk_widget_class_bind_template_child(widget_class, HsStage, plans);
    gtk_widget_class_bind_template_child(widget_class, HsStage, plan_box);
    gtk_widget_class_bind_template_callback(widget_class, on_draw_toggled);
    gtk_widget_class_bind_template_callback(widget_class, on_plan_toggled);
}

static void
hs_stage_init(HsStage *self)
{
    self->folds = TRUE;
    gtk_widget_init_template(GTK_WIDGET(self));
    hs_look_name(self, _("Stage"));
    hs_row_name_button(self->layers_menu, _("What the picture shows"));
}

GtkWidget *
hs_stage_new(HsSession *session)
{
    HsStage *self = g_object_new(HS_TYPE_STAGE, NULL);

    self->session = g_object_ref(session);
    add_pane(self, 0);
    add_pane(self, 1);
    add_layers(self);
    self->watch = g_signal_connect_swapped(session, "changed", G_CALLBACK(on_changed), self);
    on_changed(self, HS_CHANGED_RESULTS);
    return GTK_WIDGET(self);
}

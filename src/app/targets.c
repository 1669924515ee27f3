/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what on a side view can be taken hold of, or typed at?
 * Answer:    points, grips, feet and the heights of the chosen point: their names, and where their widgets are put.
 * Not here:  what each of them does (handle.c, height_figure.c), the picture (side_view.c). */
#include "targets.h"

#include "field.h"
#include "look.h"
#include "quantity.h"

#include <glib/gi18n-lib.h>

static const hs_option_result *
option_of(const hs_targets *self)
{
    const hs_results *results = hs_session_results(self->session);

    if (results == NULL || self->option < 0 || self->option >= results->n_options)
        return NULL;
    return &results->options[self->option];
}

static const hs_sample *
sample_of(const hs_targets *self)
{
    const hs_option_result *option = option_of(self);

    return option != NULL && option->n_samples > 0
               ? &option->samples[hs_session_sample(self->session, self->option)]
               : NULL;
}

/* ---- names --------------------------------------------------------------------------------- */

static char *
name_point(const hs_targets *self, int index)
{
    const hs_task *task = hs_field_task(self->session);
    const hs_option_result *option = option_of(self);
    g_autofree char *x = hs_quantity_text(task->route.points[index].x_m, "m", hs_look_units());
    g_autofree char *z = hs_quantity_text(task->route.points[index].z_m, "m", hs_look_units());

    if (self->option == hs_session_edited(self->session))
        return task->route.points[index].sketched == HS_YES
                   ? g_strdup_printf(_("Point %d: %s along, %s up, sketched, ± 5 cm"),
                                     index + 1, x, z)
                   : g_strdup_printf(_("Point %d: %s along, %s up"), index + 1, x, z);
    return g_strdup_printf(_("In %s, point %d: %s along, %s up"), option->name, index + 1, x,
                           z);
}

static char *
name_feet(const hs_targets *self, const hs_sample *sample, int index)
{
    const hs_option_result *option = option_of(self);
    const hs_task *task = hs_field_task(self->session);
    const hs_bearer_sample *bearer = &sample->bearers[index];
    const char *who = task->workers[option->asked->bearers[index].worker].name;

    if (who == NULL || *who == '\0')
        who = option->asked->bearers[index].id;
    if (!bearer->has_pose)
        return g_strdup_printf(_("Feet of %s (%s)"), who, option->name);
    g_autofree char *reach =
        hs_quantity_text(bearer->pose[HS_POSE_HAND].x, "m", hs_look_units());
    return g_strdup_printf(_("Feet of %s (%s): %s behind the hands"), who, option->name, reach);
}

static char *
name_height(const hs_targets *self, hs_height height, int point, double height_m)
{
    const hs_option_result *option = option_of(self);
    g_autofree char *up = hs_quantity_text(height_m, "m", hs_look_units());

    if (height == HS_HEIGHT_BASE)
        return self->option == hs_session_edited(self->session)
                   ? g_strdup_printf(_("Height of the base at point %d: %s"), point + 1, up)
                   : g_strdup_printf(_("In %s, height of the base at point %d: %s"),
                                     option->name, point + 1, up);
    return self->option == hs_session_edited(self->session)
               ? g_strdup_printf(_("Height of the hands at point %d: %s"), point + 1, up)
               : g_strdup_printf(_("In %s, height of the hands at point %d: %s"), option->name,
                                 point + 1, up);
}

/* ---- as many as there are things ----------------------------------------------------------- */

static HsHandle *
nth_handle(hs_targets *self, guint n)
{
    if (n < self->handles->len)
        return self->handles->pdata[n];
    GtkWidget *handle = hs_handle_new(self->session);
    gtk_widget_set_parent(handle, self->view);
    gtk_widget_set_can_target(handle, self->can_target);
    g_ptr_array_add(self->handles, handle);
    return HS_HANDLE(handle);
}

/* Order of the children is order of painting: feet and grips first, points above them. */
static guint
sync_handles(hs_targets *self)
{
    const hs_task *task = hs_field_task(self->session);
    const hs_sample *sample = sample_of(self);
    const hs_option_result *option = option_of(self);
    guint n = 0;

    for (int i = 0; i < option->asked->n_bearers; i++) {
        g_autofree char *name = name_feet(self, sample, i);
        hs_handle_set(nth_handle(self, n++), HS_HANDLE_FEET, self->option, i, name);
    }
    for (int i = 0; i < sample->n_grips; i++) {
        int grip = sample->grips[i].grip;
        g_autofree char *up = hs_quantity_text(sample->grips[i].up_N, "N", hs_look_units());
        g_autofree char *name =
            g_strdup_printf(_("Grip %s (%s): %s"), task->load.grips[grip].id, option->name, up);
        hs_handle_set(nth_handle(self, n++), HS_HANDLE_GRIP, self->option, grip, name);
    }
    for (int i = 0; i < task->route.n_points; i++) {
        g_autofree char *name = name_point(self, i);
        hs_handle_set(nth_handle(self, n++), HS_HANDLE_POINT, self->option, i, name);
    }
    return n;
}

static void
sync_figures(hs_targets *self, const hs_scene *scene)
{
    int point = hs_session_point(self->session);

    for (int i = HS_HEIGHT_BASE; i < HS_N_HEIGHTS; i++) {
        double height_m = scene != NULL ? hs_scene_height_m(scene, (hs_height)i) : HS_ABSENT;
        gtk_widget_set_visible(GTK_WIDGET(self->figures[i]), hs_has(height_m));
        if (!hs_has(height_m))
            continue;
        g_autofree char *name = name_height(self, (hs_height)i, point, height_m);
        g_autofree char *text = hs_scene_height_text(scene, (hs_height)i);
        hs_height_figure_set(self->figures[i], point, height_m, text, name);
    }
}

void
hs_targets_sync(hs_targets *self, int option, const hs_scene *scene)
{
    guint n = 0;

    self->option = option;
    if (hs_field_task(self->session) == NULL || sample_of(self) == NULL)
        scene = NULL;
    if (scene != NULL)
        n = sync_handles(self);
    while (self->handles->len > n) {
        gtk_widget_unparent(self->handles->pdata[self->handles->len - 1]);
        g_ptr_array_set_size(self->handles, (int)self->handles->len - 1);
    }
    sync_figures(self, scene);
    gtk_widget_queue_allocate(self->view);
}

/* ---- where they are ------------------------------------------------------------------------ */

static hs_vec2
grip_place(const hs_task *task, const hs_sample *sample, int grip)
{
    hs_mat3 turn = hs_mat3_load_to_world(sample->pitch_deg * G_PI / 180.0,
                                         sample->heading_deg * G_PI / 180.0);
    hs_vec3 at = hs_mat3_apply(&turn, task->load.grips[grip].at_m);

    return (hs_vec2){sample->x_m + at.x, sample->z_m + at.z};
}

/* Where the handle's thing is, in the world. */
static hs_vec2
thing_place(const hs_targets *self, HsHandle *handle)
{
    const hs_task *task = hs_field_task(self->session);
    const hs_sample *sample = sample_of(self);
    int index = hs_handle_get_index(handle);

    if (hs_handle_get_kind(handle) == HS_HANDLE_POINT)
        return (hs_vec2){task->route.points[index].x_m, task->route.points[index].z_m};
    if (hs_handle_get_kind(handle) == HS_HANDLE_GRIP)
        return grip_place(task, sample, index);
    return (hs_vec2){sample->bearers[index].feet_x_m, sample->bearers[index].floor_z_m};
}

static void
allocate_handle(hs_targets *self, HsHandle *handle, const hs_scene *scene, const hs_view *view)
{
    hs_vec2 at = {0.0, 0.0};

    if (scene != NULL && sample_of(self) != NULL) {
        at = thing_place(self, handle);
        at.x = hs_scene_x_of_world(scene, at.x);
        at = hs_view_to_surface(view, at);
    }
    GtkAllocation place = {(int)at.x - HS_HANDLE_SIZE / 2, (int)at.y - HS_HANDLE_SIZE / 2,
                           HS_HANDLE_SIZE, HS_HANDLE_SIZE};
    gtk_widget_size_allocate(GTK_WIDGET(handle), &place, -1);
}

void
hs_targets_allocate(hs_targets *self,
                    const hs_scene *scene,
                    const hs_view *view,
                    hs_kept_picture *picture)
{
    for (guint i = 0; i < self->handles->len; i++)
        allocate_handle(self, self->handles->pdata[i], scene, view);
    for (int i = HS_HEIGHT_BASE; i < HS_N_HEIGHTS; i++) {
        graphene_rect_t box = GRAPHENE_RECT_INIT(-100, -100, 1, 1);
        if (!gtk_widget_get_visible(GTK_WIDGET(self->figures[i])))
            continue;
        if (scene != NULL)
            hs_kept_picture_height_box(picture, self->view, scene, view, (hs_height)i, &box);
        hs_height_figure_place(self->figures[i], &box, (int)view->width_px,
                               (int)view->height_px);
    }
}

void
hs_targets_let(hs_targets *self, gboolean can_target)
{
    self->can_target = can_target;
    for (guint i = 0; i < self->handles->len; i++)
        gtk_widget_set_can_target(self->handles->pdata[i], can_target);
    for (int i = HS_HEIGHT_BASE; i < HS_N_HEIGHTS; i++)
        gtk_widget_set_can_target(GTK_WIDGET(self->figures[i]), can_target);
}

void
hs_targets_init(hs_targets *self, GtkWidget *view, HsSession *session)
{
    self->view = view;
    self->session = session;
    self->option = -1;
    self->handles = g_ptr_array_new();
    self->can_target = TRUE;
    for (int i = HS_HEIGHT_BASE; i < HS_N_HEIGHTS; i++) {
        self->figures[i] = HS_HEIGHT_FIGURE(hs_height_figure_new(session));
        gtk_widget_set_visible(GTK_WIDGET(self->figures[i]), FALSE);
        gtk_widget_set_parent(GTK_WIDGET(self->figures[i]), view);
    }
}

void
hs_targets_clear(hs_targets *self)
{
    g_clear_pointer(&self->handles, g_ptr_array_unref);
}

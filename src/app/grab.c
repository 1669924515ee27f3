/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what does it mean to move a point, a grip or a bearer's feet?
 * Answer:    hs_grab_*: the edit that a drag or a key stands for, previewed while it lasts, one undo at its end.
 * Not here:  pointers and keys (handle.c), snapping itself (draw/hit.c). */
#include "grab.h"

#include "change.h"
#include "field.h"
#include "notice.h"
#include "quantity.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static double
to_mm(double value_m)
{
    return round(value_m * 1000.0) / 1000.0;
}

static const hs_sample *
sample_of(HsSession *session, int option)
{
    const hs_results *results = hs_session_results(session);

    if (results == NULL || option < 0 || option >= results->n_options ||
        results->options[option].n_samples == 0)
        return NULL;
    return &results->options[option].samples[hs_session_sample(session, option)];
}

static void
begin_feet(hs_grab *grab, HsSession *session)
{
    const hs_sample *sample = sample_of(session, grab->option);

    if (sample == NULL)
        return;
    const hs_bearer_sample *bearer = &sample->bearers[grab->index];
    double ahead = cos(bearer->facing_rad);
    grab->forward = fabs(ahead) < 0.2 ? 0.0 : ahead > 0.0 ? 1.0 : -1.0;
    grab->thing_m = (hs_vec2){bearer->feet_x_m, bearer->floor_z_m};
    grab->reach_m = bearer->has_pose ? bearer->pose[HS_POSE_HAND].x : HS_ABSENT;
}

hs_grab
hs_grab_begin(HsSession *session, hs_handle_kind kind, int option, int index, hs_vec2 pointer_m)
{
    hs_grab grab = {.kind = kind, .option = option, .index = index, .begin_m = pointer_m};
    const hs_task *task = hs_field_task(session);

    if (task == NULL)
        return grab;
    if (kind == HS_HANDLE_POINT)
        grab.thing_m = (hs_vec2){task->route.points[index].x_m, task->route.points[index].z_m};
    else if (kind == HS_HANDLE_GRIP)
        grab.grip_m = task->load.grips[index].at_m;
    else
        begin_feet(&grab, session);
    return grab;
}

/* A move seen from the side, in the load's own axes. */
static hs_vec3
in_load_axes(HsSession *session, int option, double dx_m, double dz_m)
{
    const hs_sample *sample = sample_of(session, option);

    if (sample == NULL)
        return (hs_vec3){dx_m, 0.0, dz_m};
    hs_mat3 turn = hs_mat3_load_to_world(sample->pitch_deg * G_PI / 180.0,
                                         sample->heading_deg * G_PI / 180.0);
    hs_mat3 back = hs_mat3_transpose(&turn);
    return hs_mat3_apply(&back, (hs_vec3){dx_m, 0.0, dz_m});
}

static hs_edit *
edit_point(int point, hs_vec2 to_m)
{
    g_autofree char *label = g_strdup_printf(_("Move point %d"), point + 1);
    hs_edit *edit = hs_edit_new(label);

    hs_edit_move_point(edit, point, to_m.x, to_m.y);
    return edit;
}

static hs_edit *
edit_grip(int grip, hs_vec3 to_m)
{
    hs_edit *edit = hs_edit_new(_("Move a grip"));
    const double at_m[3] = {to_m.x, to_m.y, to_m.z};

    for (int i = 0; i < 3; i++) {
        g_autofree char *path = g_strdup_printf("load.grips[%d].at_m[%d]", grip, i);
        hs_edit_set_number(edit, path, to_mm(at_m[i]));
    }
    return edit;
}

static hs_edit *
edit_reach(int option, double reach_m)
{
    g_autofree char *path = g_strdup_printf("options[%d].reach_m", option);
    hs_edit *edit = hs_edit_new(_("Change the reach"));

    hs_edit_set_number(edit, path, MAX(0.0, to_mm(reach_m)));
    return edit;
}

static hs_edit *
edit_for_move(const hs_grab *grab, HsSession *session, hs_vec2 by_m)
{
    if (grab->kind == HS_HANDLE_POINT)
        return edit_point(grab->index, (hs_vec2){to_mm(grab->thing_m.x + by_m.x),
                                                 to_mm(grab->thing_m.y + by_m.y)});
    if (grab->kind == HS_HANDLE_GRIP)
        return edit_grip(
            grab->index,
            hs_vec3_add(grab->grip_m, in_load_axes(session, grab->option, by_m.x, by_m.y)));
    if (grab->forward == 0.0 || !hs_has(grab->reach_m))
        return NULL;
    return edit_reach(grab->option, grab->reach_m - grab->forward * by_m.x);
}

void
hs_grab_move(hs_grab *grab,
             GtkWidget *from,
             HsSession *session,
             HsSideView *view,
             hs_vec2 pointer_m,
             gboolean snap)
{
    hs_vec2 by_m = {pointer_m.x - grab->begin_m.x, pointer_m.y - grab->begin_m.y};
    g_autofree char *fault = NULL;

    if (grab->kind == HS_HANDLE_FEET && grab->forward != 0.0 && hs_has(grab->reach_m)) {
        double to_m = hs_side_view_snap_reach(view, grab->index,
                                              grab->reach_m - grab->forward * by_m.x, !snap);
        by_m.x = grab->forward * (grab->reach_m - to_m);
        grab->to_m = to_m;
    }
    if (grab->kind == HS_HANDLE_POINT) {
        hs_vec2 to_m = {grab->thing_m.x + by_m.x, grab->thing_m.y + by_m.y};
        to_m = hs_side_view_snap(view, to_m, grab->index, !snap);
        by_m = (hs_vec2){to_m.x - grab->thing_m.x, to_m.y - grab->thing_m.y};
    }
    g_autoptr(hs_edit) edit = edit_for_move(grab, session, by_m);
    if (edit == NULL)
        return;
    grab->has_moved = TRUE;
    if (!hs_session_preview(session, edit, &fault) && fault != NULL)
        hs_notice_say(from, fault);
}

typedef struct {
    HsSession *session;
    double reach_m;
} held_reach;

static void
held_reach_free(gpointer data)
{
    held_reach *held = data;

    g_object_unref(held->session);
    g_free(held);
}

static void
on_reach_for_all(GtkWidget *from, gpointer data)
{
    held_reach *held = data;
    int n = hs_field_length(hs_session_document(held->session), "options");
    hs_edit *edit = hs_edit_new(_("Same reach in every option"));

    for (int i = 0; i < n; i++) {
        g_autofree char *each = g_strdup_printf("options[%d].reach_m", i);
        hs_edit_set_number(edit, each, held->reach_m);
    }
    hs_change_commit(from, held->session, edit);
}

/* Asked once, in a bar. Today's way has its own question first. */
static void
end_feet(const hs_grab *grab, GtkWidget *from, HsSession *session)
{
    double reach_m = MAX(0.0, to_mm(grab->to_m));

    hs_session_cancel(session);
    if (!hs_change_option(from, session, grab->option, edit_reach(grab->option, reach_m)))
        return;
    if (hs_field_length(hs_session_document(session), "options") < 2 ||
        g_hash_table_contains(hs_session_memory(session), "reach asked"))
        return;
    held_reach *held = g_new(held_reach, 1);
    held->session = g_object_ref(session);
    held->reach_m = reach_m;
    g_hash_table_replace(hs_session_memory(session), g_strdup("reach asked"), NULL);
    hs_notice_ask(from, _("The reach was changed for this option only."),
                  _("Use it for all options"), on_reach_for_all, _("This option only"), NULL,
                  held, held_reach_free);
}

void
hs_grab_end(hs_grab *grab, GtkWidget *from, HsSession *session)
{
    if (!grab->has_moved)
        return;
    if (grab->kind == HS_HANDLE_FEET)
        end_feet(grab, from, session);
    else
        hs_session_commit_preview(session, grab->kind == HS_HANDLE_POINT ? _("Move a point")
                                                                         : _("Move a grip"));
}

void
hs_grab_nudge(GtkWidget *from,
              HsSession *session,
              hs_handle_kind kind,
              int option,
              int index,
              double dx_m,
              double dz_m)
{
    hs_grab grab = hs_grab_begin(session, kind, option, index, (hs_vec2){0.0, 0.0});
    hs_edit *edit = edit_for_move(&grab, session, (hs_vec2){dx_m, dz_m});

    if (edit == NULL)
        return;
    if (kind == HS_HANDLE_FEET)
        hs_change_option(from, session, option, edit);
    else
        hs_change_commit(from, session, edit);
}

void
hs_grab_delete_point(GtkWidget *from, HsSession *session, int point)
{
    int n = hs_field_length(hs_session_document(session), "route.points");

    if (n <= 2) {
        hs_notice_say(from, _("A route has at least two points."));
        return;
    }
    g_autofree char *label = g_strdup_printf(_("Delete point %d"), point + 1);
    g_autofree char *path = g_strdup_printf("route.points[%d]", point);
    hs_edit *edit = hs_edit_new(label);
    if (point == 0) {
        hs_edit_set_string(edit, "route.points[1].move", "start");
        hs_edit_unset(edit, "route.points[1].time_s");
    }
    hs_edit_remove(edit, path);
    hs_session_choose_point(session, -1);
    hs_change_commit(from, session, edit);
}

void
hs_grab_choose_point(HsSession *session, int point)
{
    const hs_results *results = hs_session_results(session);
    int left = hs_session_left(session);

    hs_session_choose_point(session, point);
    if (results == NULL || left < 0 || left >= results->n_options)
        return;
    const hs_option_result *option = &results->options[left];
    for (int i = 0; i < option->n_samples; i++) {
        if (fabs(option->samples[i].route - (point + 1)) < 1e-6) {
            hs_session_set_moment_s(session, option->samples[i].t_s);
            return;
        }
    }
}

static double
distance_to_leg(hs_vec2 a, hs_vec2 b, hs_vec2 p)
{
    double dx = b.x - a.x, dy = b.y - a.y;
    double length_2 = dx * dx + dy * dy;
    double along = length_2 > 0.0 ? ((p.x - a.x) * dx + (p.y - a.y) * dy) / length_2 : 0.0;

    along = CLAMP(along, 0.0, 1.0);
    return hypot(p.x - a.x - along * dx, p.y - a.y - along * dy);
}

void
hs_grab_add_point(GtkWidget *from, HsSession *session, hs_vec2 at_m)
{
    const hs_task *task = hs_field_task(session);
    int best = 1;
    double least_m = INFINITY;

    if (task == NULL)
        return;
    for (int i = 1; i < task->route.n_points; i++) {
        const hs_point *a = &task->route.points[i - 1], *b = &task->route.points[i];
        double away_m =
            distance_to_leg((hs_vec2){a->x_m, a->z_m}, (hs_vec2){b->x_m, b->z_m}, at_m);
        if (away_m < least_m) {
            least_m = away_m;
            best = i;
        }
    }
    static const char *const moves[] = {"carry", "start", "lift", "carry",
                                        "lower", "slide", "hold"};
    hs_move move = task->route.points[best].move;
    g_autofree char *x = hs_number_text(to_mm(at_m.x));
    g_autofree char *z = hs_number_text(to_mm(at_m.y));
    g_autofree char *json =
        g_strdup_printf("{\"x_m\": %s, \"z_m\": %s, \"move\": \"%s\"}", x, z,
                        moves[move == HS_MOVE_START ? HS_MOVE_CARRY : move]);
    g_autofree char *path = g_strdup_printf("route.points[%d]", best);
    g_autofree char *time = g_strdup_printf("route.points[%d].time_s", best);
    hs_edit *edit = hs_edit_new(_("Add a point"));
    hs_edit_unset(edit, time);
    hs_edit_insert(edit, path, hs_change_node(json));
    if (hs_change_commit(from, session, edit))
        hs_session_choose_point(session, best);
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what goes along with a stroke while it is drawn?
 * Answer:    the task with a way straight from where the stroke began to the pointer, assessed for this option alone; its
 *            end is painted pale.
 * Not here:  the line itself (ink.c), what becomes of it (stroke.c). */
#include "load_ghost.h"

#include "change.h"
#include "field.h"
#include "look.h"
#include "paint.h"
#include "quantity.h"
#include "stroke.h"

#include <math.h>

#define PALE 0.5

/* NULL for an option that is not the document's. */
static hs_edit *
edit_straight(HsSession *session, int option, hs_vec2 from_m, hs_vec2 to_m)
{
    g_autoptr(GArray) places = g_array_new(FALSE, FALSE, sizeof(hs_vec2));
    g_autofree char *path = g_strdup_printf("options[%d]", option);
    JsonNode *asked = hs_field_node(hs_session_document(session), path);

    if (asked == NULL || hypot(to_m.x - from_m.x, to_m.y - from_m.y) < 0.02)
        return NULL;
    g_array_append_val(places, from_m);
    g_array_append_val(places, to_m);
    hs_edit *edit = hs_stroke_whole(places);
    g_autofree char *one = json_to_string(asked, FALSE);
    g_autofree char *list = g_strdup_printf("[%s]", one);
    hs_edit_set(edit, "options", hs_change_node(list));
    return edit;
}

void
hs_load_ghost_move(
    hs_load_ghost *self, HsSession *session, int option, hs_vec2 from_m, hs_vec2 to_m)
{
    g_autoptr(hs_edit) edit = edit_straight(session, option, from_m, to_m);
    const hs_task *task;
    const hs_results *results;

    g_clear_pointer(&self->scene, hs_scene_free);
    hs_session_set_ghost(session, HS_GHOST_LOAD, edit);
    if (hs_session_ghost(session, &task, &results) != HS_GHOST_LOAD ||
        results->options[0].n_samples == 0)
        return;
    hs_scene_request request = {.task = task,
                                .results = results,
                                .sample = results->options[0].n_samples - 1,
                                .layers = (1u << HS_LAYER_suit) | (1u << HS_LAYER_figure) |
                                          (1u << HS_LAYER_load),
                                .chosen_point = -1,
                                .few_labels = TRUE};
    self->scene = hs_scene_build(&request);
    self->at_m = to_m;
}

void
hs_load_ghost_clear(hs_load_ghost *self, HsSession *session)
{
    g_clear_pointer(&self->scene, hs_scene_free);
    if (session != NULL)
        hs_session_set_ghost(session, HS_GHOST_NONE, NULL);
}

void
hs_load_ghost_paint(const hs_load_ghost *self,
                    GtkWidget *widget,
                    GtkSnapshot *snapshot,
                    const hs_scene *under,
                    const hs_view *view)
{
    hs_view own = *view;
    double x, y, width, height;

    if (self->scene == NULL)
        return;
    own.x0_px +=
        (hs_scene_x_of_world(under, self->at_m.x) - self->at_m.x) * view->scale_px_per_m;
    hs_picture *picture = hs_picture_new(self->scene, &own, hs_look_theme(widget));
    hs_picture_moving_bounds(picture, &x, &y, &width, &height);
    if (width > 0.0 && height > 0.0) {
        gtk_snapshot_push_opacity(snapshot, PALE);
        cairo_t *cr = gtk_snapshot_append_cairo(
            snapshot, &GRAPHENE_RECT_INIT((float)x, (float)y, (float)width, (float)height));
        hs_picture_paint(picture, cr, HS_PAINT_MOVING);
        cairo_destroy(cr);
        gtk_snapshot_pop(snapshot);
    }
    hs_picture_free(picture);
}

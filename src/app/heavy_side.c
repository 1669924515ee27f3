/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  do the scale readings say what the hands know?
 * Answer:    the weighed CG in words, and a question whose answer it must agree with: swapped readings are found so.
 * Not here:  the readings (brief_load.c), the CG (core/load/weigh.c). */
#include "heavy_side.h"

#include "change.h"
#include "field.h"
#include "load_picker.h"
#include "look.h"
#include "quantity.h"
#include "rows.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define MIDDLE_PART                                                                            \
    0.04 /* of the supports' distance: nearer to the middle neither side is heavy; our choice */

typedef struct {
    HsSession *session;
    GtkWidget *picture, *swap;
    GtkWidget *side[2]; /* the lower end of the axis, the upper */
    GtkLabel *weighed, *verdict;
    gboolean is_showing;
} heavy_side;

/* Where the supports of the first weighing stand along the axis that they are farther apart on. */
typedef struct {
    int axis; /* 0 ahead, 1 left */
    double middle_m, span_m;
} supports;

static supports
supports_of(const hs_load *load)
{
    const hs_weighing *first = &load->weighings[0];
    double least[2] = {INFINITY, INFINITY}, most[2] = {-INFINITY, -INFINITY};

    for (int i = 0; i < first->n_readings; i++) {
        const double at_m[2] = {first->readings[i].at_x_m, first->readings[i].at_y_m};
        for (int k = 0; k < 2; k++) {
            least[k] = MIN(least[k], at_m[k]);
            most[k] = MAX(most[k], at_m[k]);
        }
    }
    int axis = most[1] - least[1] > most[0] - least[0];
    return (supports){axis, (least[axis] + most[axis]) / 2.0, most[axis] - least[axis]};
}

/* -1 the lower side, 1 the upper, 0 neither. */
static int
computed_side(const supports *at, hs_vec3 centre_m, double *ret_off_m)
{
    *ret_off_m = (at->axis == 0 ? centre_m.x : centre_m.y) - at->middle_m;
    return fabs(*ret_off_m) <= MIDDLE_PART * at->span_m ? 0 : *ret_off_m > 0.0 ? 1 : -1;
}

static const char *
side_name(int axis, int side)
{
    if (axis == 0)
        return side > 0 ? _("front") : _("rear");
    return side > 0 ? _("left") : _("right");
}

static int
answered(heavy_side *self)
{
    const char *said = g_hash_table_lookup(hs_session_memory(self->session), "heavy side");

    return said == NULL ? 0 : *said == '+' ? 1 : -1;
}

static char *
verdict_text(const supports *at, int said, int computed, double off_m)
{
    g_autofree char *off = hs_quantity_text(fabs(off_m), "m", hs_look_units());

    if (said == 0)
        return g_strdup(
            _("Lift one end after the other, or ask who carries it: then say here."));
    if (computed == 0)
        return g_strdup_printf(_("By the readings neither side is heavy: the centre of gravity "
                                 "lies %s from the middle of the supports. Is every reading "
                                 "written at its own support?"),
                               off);
    if (said == computed)
        return g_strdup_printf(_("The readings agree: the centre of gravity lies %s from the "
                                 "middle of the supports, on the side %s."),
                               off, side_name(at->axis, computed));
    return g_strdup_printf(_("The readings disagree: by them the heavy side is %s, %s from the "
                             "middle of the supports. Were two readings swapped?"),
                           side_name(at->axis, computed), off);
}

static void
show_weighed(heavy_side *self, const hs_results *results)
{
    hs_units units = hs_look_units();
    g_autofree char *mass = hs_quantity_text(results->load.mass_kg, "kg", units);
    g_autofree char *x = hs_quantity_text(results->load.centre_m.x, "m", units);
    g_autofree char *y = hs_quantity_text(results->load.centre_m.y, "m", units);
    g_autofree char *z = hs_has(results->load.centre_m.z)
                             ? hs_quantity_text(results->load.centre_m.z, "m", units)
                             : NULL;
    g_autofree char *text =
        z != NULL
            ? g_strdup_printf(_("Weighed: %s; centre of gravity %s ahead, %s left, %s up."),
                              mass, x, y, z)
            : g_strdup_printf(_("Weighed: %s; centre of gravity %s ahead, %s left; its height "
                                "needs one end raised."),
                              mass, x, y);

    gtk_label_set_text(self->weighed, text);
}

static void
show(heavy_side *self)
{
    const hs_task *task = hs_field_task(self->session);
    const hs_results *results = hs_session_results(self->session);
    int said = answered(self);
    double off_m;

    if (task == NULL || results == NULL || task->load.n_weighings == 0)
        return;
    supports at = supports_of(&task->load);
    int computed = computed_side(&at, results->load.centre_m, &off_m);
    g_autofree char *text = verdict_text(&at, said, computed, off_m);
    show_weighed(self, results);
    gtk_label_set_text(self->verdict, text);
    gtk_widget_set_visible(self->swap, said != 0 && computed == -said &&
                                           task->load.weighings[0].n_readings == 2);
    self->is_showing = TRUE;
    for (int i = 0; i < 2; i++) {
        gtk_button_set_label(GTK_BUTTON(self->side[i]), side_name(at.axis, i ? 1 : -1));
        gtk_toggle_button_set_active(GTK_TOGGLE_BUTTON(self->side[i]), said == (i ? 1 : -1));
        g_autofree char *name =
            g_strdup_printf(_("The heavy side is: %s"), side_name(at.axis, i ? 1 : -1));
        hs_look_name(self->side[i], name);
    }
    self->is_showing = FALSE;
}

static void
answer(heavy_side *self, int side)
{
    g_hash_table_replace(hs_session_memory(self->session), g_strdup("heavy side"),
                         g_strdup(side > 0 ? "+" : "-"));
    show(self);
}

static void
on_side(GtkToggleButton *button, heavy_side *self)
{
    if (!self->is_showing)
        answer(self, GTK_WIDGET(button) == self->side[1] ? 1 : -1);
}

static void
on_picture(GtkGestureClick *click, int n_press, double x_px, double y_px, heavy_side *self)
{
    const hs_task *task = hs_field_task(self->session);

    (void)click, (void)n_press, (void)y_px;
    if (task == NULL || task->load.n_weighings == 0)
        return;
    supports at = supports_of(&task->load);
    if (at.axis == 0) /* the drawing is seen from the side: it does not show left and right */
        answer(self,
               hs_load_picture_x_m(self->picture, self->session, x_px) > at.middle_m ? 1 : -1);
}

static void
on_swap(GtkWidget *button, gpointer session)
{
    const hs_document *document = hs_session_document(session);
    hs_edit *edit = hs_edit_new(_("Swap the two readings"));
    const char *const a = "load.weighings[0].readings[0].reading_kg",
                      *const b = "load.weighings[0].readings[1].reading_kg";
    double a_kg = hs_field_number(document, a);

    hs_edit_set_number(edit, a, hs_field_number(document, b));
    hs_edit_set_number(edit, b, a_kg);
    hs_change_commit(button, session, edit);
}

static void
on_changed(GtkWidget *widget, guint mask)
{
    if (mask & HS_CHANGED_RESULTS)
        show(g_object_get_data(G_OBJECT(widget), "hs-heavy"));
}

static GtkLabel *
add_words(GtkWidget *box)
{
    GtkWidget *label = hs_row_hint("");

    gtk_widget_remove_css_class(label, "soft");
    gtk_box_append(GTK_BOX(box), label);
    return GTK_LABEL(label);
}

GtkWidget *
hs_heavy_side_new(HsSession *session)
{
    heavy_side *self = g_new0(heavy_side, 1);
    GtkWidget *box = gtk_box_new(GTK_ORIENTATION_VERTICAL, 4),
              *sides = gtk_box_new(GTK_ORIENTATION_HORIZONTAL, 6);
    GtkGesture *click = gtk_gesture_click_new();

    self->session = session;
    self->weighed = add_words(box);
    gtk_box_append(GTK_BOX(box), hs_row_heading(_("Which side is heavy?")));
    self->picture = hs_load_picture_new(session);
    hs_look_name(self->picture, _("The load from the side: click on its heavy side"));
    gtk_widget_set_cursor_from_name(self->picture, "pointer");
    g_signal_connect(click, "released", G_CALLBACK(on_picture), self);
    gtk_widget_add_controller(self->picture, GTK_EVENT_CONTROLLER(click));
    gtk_box_append(GTK_BOX(box), self->picture);
    for (int i = 0; i < 2; i++) {
        self->side[i] = gtk_toggle_button_new_with_label("");
        g_signal_connect(self->side[i], "toggled", G_CALLBACK(on_side), self);
        gtk_widget_set_hexpand(self->side[i], TRUE);
        gtk_box_append(GTK_BOX(sides), self->side[i]);
    }
    gtk_box_append(GTK_BOX(box), sides);
    self->verdict = add_words(box);
    self->swap =
        hs_row_button(_("Swap the two readings"), NULL, G_CALLBACK(on_swap), session, NULL);
    gtk_box_append(GTK_BOX(box), self->swap);
    g_object_set_data_full(G_OBJECT(box), "hs-heavy", self, g_free);
    g_signal_connect_object(session, "changed", G_CALLBACK(on_changed), box, G_CONNECT_SWAPPED);
    show(self);
    return box;
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  which fields stand under Route?
 * Answer:    the points, each with its place, its word, its time and what is special there; the chosen one in full.
 * Not here:  the stroke on the stage (stroke.c). */
#include "brief.h"

#include "change.h"
#include "field.h"
#include "grab.h"
#include "look.h"
#include "quantity.h"
#include "rows.h"

#include <glib/gi18n-lib.h>

static char *
route_summary(HsSession *session)
{
    int n = hs_field_length(hs_session_document(session), "route.points");
    g_autofree char *time = hs_quantity_text(hs_session_total_s(session), "s", hs_look_units());

    return g_strdup_printf(_("%d points, %s"), n, time);
}

static gboolean
is_sketched(HsSession *session, int i)
{
    g_autofree char *path = g_strdup_printf("route.points[%d].sketched", i);

    return hs_field_flag(hs_session_document(session), path) == 1;
}

static char *
route_shape(HsSession *session)
{
    return g_strdup_printf("%d %d",
                           hs_field_length(hs_session_document(session), "route.points"),
                           hs_session_point(session));
}

static void
point_number(HsSession *session,
             GtkBox *content,
             int i,
             const char *label,
             const char *key,
             const char *unit,
             double step)
{
    g_autofree char *path = g_strdup_printf("route.points[%d].%s", i, key);
    g_autofree char *name = g_strdup_printf(_("Point %d, %s"), i + 1, label);

    gtk_box_append(content, hs_quantity_row_new(session, label, name, path, unit, step));
}

static void
move_row(HsSession *session, GtkBox *content, int i)
{
    const char *const moves[] = {"lift", "carry", "lower", "slide", "hold", NULL};
    const char *const words[] = {hs_words_move(HS_MOVE_LIFT),  hs_words_move(HS_MOVE_CARRY),
                                 hs_words_move(HS_MOVE_LOWER), hs_words_move(HS_MOVE_SLIDE),
                                 hs_words_move(HS_MOVE_HOLD),  NULL};
    g_autofree char *path = g_strdup_printf("route.points[%d].move", i);
    g_autofree char *name = g_strdup_printf(_("Point %d, reached by"), i + 1);

    gtk_box_append(content, hs_choice_row_new(session, _("reached by"), name, path,
                                              HS_CHOICE_WORD, moves, words));
}

static void
chosen_rows(HsSession *session, GtkBox *content, int i)
{
    g_autofree char *set_down = g_strdup_printf("route.points[%d].set_down", i);
    g_autofree char *precise = g_strdup_printf("route.points[%d].precise", i);

    point_number(session, content, i, _("reach there"), "reach_m", "m", 0.01);
    point_number(session, content, i, _("trunk turned by"), "turn_deg", "deg", 5.0);
    point_number(session, content, i, _("front end up by"), "pitch_deg", "deg", 1.0);
    point_number(session, content, i, _("left of the line by"), "y_m", "m", 0.05);
    point_number(session, content, i, _("time of the leg"), "time_s", "s", 0.1);
    point_number(session, content, i, _("held there for"), "hold_s", "s", 0.5);
    gtk_box_append(content, hs_tri_row_new(session, _("can be set down there"), set_down));
    gtk_box_append(content, hs_tri_row_new(session, _("placed exactly"), precise));
    point_number(session, content, i, _("play when placed"), "tolerance_m", "m", 0.001);
    point_number(session, content, i, _("pins or studs at once"), "meet", "", 1.0);
    point_number(session, content, i, _("part held up by a support"), "held_up", "", 0.1);
    point_number(session, content, i, _("friction of the slide"), "slide_friction", "", 0.05);
}

static void
on_choose(GtkWidget *button, gpointer session)
{
    int i = GPOINTER_TO_INT(g_object_get_data(G_OBJECT(button), "hs-point"));

    hs_grab_choose_point(session, hs_session_point(session) == i ? -1 : i);
}

static void
on_delete(GtkWidget *button, gpointer session)
{
    hs_grab_delete_point(button, session,
                         GPOINTER_TO_INT(g_object_get_data(G_OBJECT(button), "hs-point")));
}

static void
on_add(GtkWidget *button, gpointer data)
{
    HsSession *session = data;
    const hs_document *document = hs_session_document(session);
    int n = hs_field_length(document, "route.points");
    g_autofree char *x_path = g_strdup_printf("route.points[%d].x_m", n - 1);
    g_autofree char *z_path = g_strdup_printf("route.points[%d].z_m", n - 1);
    g_autofree char *x = hs_number_text(hs_or(hs_field_number(document, x_path), 0.0) + 0.5);
    g_autofree char *z = hs_number_text(hs_or(hs_field_number(document, z_path), 0.0));
    g_autofree char *json =
        g_strdup_printf("{\"x_m\": %s, \"z_m\": %s, \"move\": \"carry\"}", x, z);
    g_autofree char *path = g_strdup_printf("route.points[%d]", n);
    hs_edit *edit = hs_edit_new(_("Add a point"));

    hs_edit_insert(edit, path, hs_change_node(json));
    if (hs_change_commit(button, session, edit))
        hs_session_choose_point(session, n);
}

static void
point_head(HsSession *session, GtkBox *content, int i, gboolean is_chosen)
{
    GtkWidget *line = gtk_box_new(GTK_ORIENTATION_HORIZONTAL, 4);
    g_autofree char *label = g_strdup_printf(_("Point %d"), i + 1);
    g_autofree char *name =
        g_strdup_printf(is_chosen ? _("Less about point %d") : _("More about point %d"), i + 1);
    g_autofree char *delete_name = g_strdup_printf(_("Delete point %d"), i + 1);
    GtkWidget *heading = hs_row_heading(label);
    GtkWidget *choose = hs_row_button(is_chosen ? _("less") : _("more"), name,
                                      G_CALLBACK(on_choose), session, NULL);
    GtkWidget *delete =
        hs_row_button(_("delete"), delete_name, G_CALLBACK(on_delete), session, NULL);

    gtk_widget_set_hexpand(heading, TRUE);
    gtk_widget_set_valign(choose, GTK_ALIGN_END);
    gtk_widget_set_valign(delete, GTK_ALIGN_END);
    gtk_widget_set_valign(heading, GTK_ALIGN_BASELINE);
    gtk_widget_add_css_class(choose, "flat");
    gtk_widget_add_css_class(delete, "flat");
    g_object_set_data(G_OBJECT(choose), "hs-point", GINT_TO_POINTER(i));
    g_object_set_data(G_OBJECT(delete), "hs-point", GINT_TO_POINTER(i));
    gtk_box_append(GTK_BOX(line), heading);
    gtk_box_append(GTK_BOX(line), choose);
    gtk_box_append(GTK_BOX(line), delete);
    gtk_box_append(content, line);
}

/* A height that nobody typed says so, and can be called measured as it stands. */
static void
on_measured(GtkWidget *button, gpointer session)
{
    g_autofree char *path =
        g_strdup_printf("route.points[%d].sketched",
                        GPOINTER_TO_INT(g_object_get_data(G_OBJECT(button), "hs-point")));
    hs_edit *edit = hs_edit_new(_("Take the height as measured"));

    hs_edit_unset(edit, path);
    hs_change_commit(button, session, edit);
}

/* Comes and goes without new rows: the field above may be the one that is typed in. */
static void
show_sketched(HsSession *session, guint mask, GtkWidget *line)
{
    int i = GPOINTER_TO_INT(g_object_get_data(G_OBJECT(line), "hs-point"));

    if (mask & HS_CHANGED_DOCUMENT)
        gtk_widget_set_visible(line, is_sketched(session, i));
}

static void
sketched_row(HsSession *session, GtkBox *content, int i)
{
    GtkWidget *line = gtk_box_new(GTK_ORIENTATION_HORIZONTAL, 4),
              *hint = hs_row_hint(_("sketched, ± 5 cm, until typed"));
    g_autofree char *name = g_strdup_printf(_("Point %d: its height was measured"), i + 1);

    GtkWidget *button =
        hs_row_button(_("measured"), name, G_CALLBACK(on_measured), session, NULL);
    gtk_widget_set_hexpand(hint, TRUE);
    gtk_widget_add_css_class(button, "flat");
    g_object_set_data(G_OBJECT(button), "hs-point", GINT_TO_POINTER(i));
    gtk_box_append(GTK_BOX(line), hint);
    gtk_box_append(GTK_BOX(line), button);
    gtk_box_append(content, line);
    g_object_set_data(G_OBJECT(line), "hs-point", GINT_TO_POINTER(i));
    g_signal_connect_object(session, "changed", G_CALLBACK(show_sketched), line, 0);
    show_sketched(session, HS_CHANGED_DOCUMENT, line);
}

static void
route_build(HsSession *session, GtkBox *content)
{
    int n = hs_field_length(hs_session_document(session), "route.points");

    for (int i = 0; i < n; i++) {
        gboolean is_chosen = hs_session_point(session) == i;
        point_head(session, content, i, is_chosen);
        point_number(session, content, i, _("along"), "x_m", "m", 0.01);
        point_number(session, content, i, _("base of the load, up"), "z_m", "m", 0.01);
        sketched_row(session, content, i);
        if (i > 0)
            move_row(session, content, i);
        if (is_chosen)
            chosen_rows(session, content, i);
    }
    gtk_box_append(content, hs_row_button(_("Add a point at the end"), NULL, G_CALLBACK(on_add),
                                          session, NULL));
}

const hs_brief_part hs_brief_route = {"route", N_("Route"), route_summary, route_shape,
                                      route_build};

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  which fields stand under Site and under Better ways?
 * Answer:    floor and its risers, friction, room, surroundings; the four ways to avoid the lift, the gates, who was asked.
 * Not here:  the rows themselves (rows.h). */
#include "brief.h"

#include "change.h"
#include "field.h"
#include "look.h"
#include "quantity.h"
#include "rows.h"

#include <glib/gi18n-lib.h>

static char *
site_summary(HsSession *session)
{
    const hs_document *document = hs_session_document(session);
    int n = hs_field_length(document, "site.floor");
    double least = INFINITY, most = -INFINITY;
    double friction = hs_field_number(document, "site.friction");

    for (int i = 0; i < n; i++) {
        g_autofree char *path = g_strdup_printf("site.floor[%d][1]", i);
        double z_m = hs_field_number(document, path);
        least = MIN(least, z_m);
        most = MAX(most, z_m);
    }
    g_autofree char *mu =
        hs_has(friction) ? hs_quantity_number(friction, "", hs_look_units()) : NULL;
    const char *ground = n == 0 || most - least < 1e-6 ? _("level") : _("slope or steps");
    /* Translators: "level, friction 0.5" */
    return mu ? g_strdup_printf(_("%s, friction %s"), ground, mu)
              : g_strdup_printf(_("%s, friction not measured"), ground);
}

static char *
site_shape(HsSession *session)
{
    const hs_document *document = hs_session_document(session);

    return g_strdup_printf("%d %d %d", hs_field_length(document, "site.floor"),
                           hs_field_length(document, "site.openings"),
                           hs_field_length(document, "site.obstacles"));
}

static void
insert_last(GtkWidget *button,
            HsSession *session,
            const char *label,
            const char *list,
            const char *json)
{
    hs_edit *edit = hs_edit_new(label);
    const hs_document *document = hs_session_document(session);
    g_autofree char *path = g_strdup_printf("%s[%d]", list, hs_field_length(document, list));

    if (hs_field_node(document, list) == NULL)
        hs_edit_set(edit, list, hs_change_node("[]"));
    hs_edit_insert(edit, path, hs_change_node(json));
    hs_change_commit(button, session, edit);
}

static void
on_add_floor(GtkWidget *button, gpointer data)
{
    HsSession *session = data;
    const hs_document *document = hs_session_document(session);
    int n = hs_field_length(document, "site.floor");
    g_autofree char *json = NULL;

    if (n == 0) {
        hs_edit *edit = hs_edit_new(_("Add a floor point"));
        hs_edit_set(edit, "site.floor", hs_change_node("[[0, 0], [1, 0]]"));
        hs_change_commit(button, session, edit);
        return;
    }
    g_autofree char *x = g_strdup_printf("site.floor[%d][0]", n - 1);
    g_autofree char *z = g_strdup_printf("site.floor[%d][1]", n - 1);
    g_autofree char *at_x = hs_number_text(hs_or(hs_field_number(document, x), 0.0) + 1.0);
    g_autofree char *at_z = hs_number_text(hs_or(hs_field_number(document, z), 0.0));
    json = g_strdup_printf("[%s, %s]", at_x, at_z);
    insert_last(button, session, _("Add a floor point"), "site.floor", json);
}

static void
on_add_opening(GtkWidget *button, gpointer session)
{
    insert_last(button, session, _("Add a door"), "site.openings",
                "{\"name\": \"door\", \"x_m\": 2, \"width_m\": 0.9, \"height_m\": 2}");
}

static void
on_add_obstacle(GtkWidget *button, gpointer session)
{
    insert_last(button, session, _("Add an obstacle"), "site.obstacles",
                "{\"name\": \"bench\", \"x_m\": [2, 3], \"z_m\": [0, 0.8]}");
}

static void
number_row(HsSession *session,
           GtkBox *content,
           const char *label,
           const char *name,
           const char *unit,
           double step,
           const char *format,
           int i)
{
    g_autofree char *index = g_strdup_printf("[%d]", i);
    g_autofree char *head = g_strndup(format, (gsize)(strchr(format, '#') - format));
    g_autofree char *path = g_strconcat(head, index, strchr(format, '#') + 1, NULL);

    gtk_box_append(content, hs_quantity_row_new(session, label, name, path, unit, step));
}

static void
floor_rows(HsSession *session, GtkBox *content)
{
    int n = hs_field_length(hs_session_document(session), "site.floor");

    gtk_box_append(content,
                   hs_row_heading(_("Floor line: a riser is two points at one place")));
    if (n == 0)
        gtk_box_append(content, hs_row_hint(_("Level where nothing is entered.")));
    for (int i = 0; i < n; i++) {
        g_autofree char *along = g_strdup_printf(_("Floor point %d, along"), i + 1);
        g_autofree char *up = g_strdup_printf(_("Floor point %d, height"), i + 1);
        g_autofree char *label = g_strdup_printf(_("Remove floor point %d"), i + 1);
        g_autofree char *path = g_strdup_printf("site.floor[%d]", i);
        number_row(session, content, along, along, "m", 0.05, "site.floor#[0]", i);
        number_row(session, content, up, up, "m", 0.01, "site.floor#[1]", i);
        if (n > 2)
            gtk_box_append(content, hs_row_remove(session, label, path));
    }
    gtk_box_append(content, hs_row_button(_("Add a floor point"), NULL,
                                          G_CALLBACK(on_add_floor), session, NULL));
}

static void
opening_rows(HsSession *session, GtkBox *content)
{
    int n = hs_field_length(hs_session_document(session), "site.openings");

    gtk_box_append(content, hs_row_heading(_("Doors and gates")));
    for (int i = 0; i < n; i++) {
        g_autofree char *name = g_strdup_printf("site.openings[%d].name", i);
        g_autofree char *path = g_strdup_printf("site.openings[%d]", i);
        g_autofree char *label = g_strdup_printf(_("Remove door %d"), i + 1);
        gtk_box_append(content, hs_text_row_new(session, _("Name"), name, 1));
        number_row(session, content, _("Where, along"), NULL, "m", 0.1, "site.openings#.x_m",
                   i);
        number_row(session, content, _("Clear width"), NULL, "m", 0.05,
                   "site.openings#.width_m", i);
        number_row(session, content, _("Clear height"), NULL, "m", 0.05,
                   "site.openings#.height_m", i);
        gtk_box_append(content, hs_row_remove(session, label, path));
    }
    gtk_box_append(content, hs_row_button(_("Add a door"), NULL, G_CALLBACK(on_add_opening),
                                          session, NULL));
}

static void
obstacle_rows(HsSession *session, GtkBox *content)
{
    int n = hs_field_length(hs_session_document(session), "site.obstacles");

    gtk_box_append(content, hs_row_heading(_("Benches, racks, obstacles")));
    for (int i = 0; i < n; i++) {
        g_autofree char *name = g_strdup_printf("site.obstacles[%d].name", i);
        g_autofree char *path = g_strdup_printf("site.obstacles[%d]", i);
        g_autofree char *label = g_strdup_printf(_("Remove obstacle %d"), i + 1);
        gtk_box_append(content, hs_text_row_new(session, _("Name"), name, 1));
        number_row(session, content, _("From, along"), NULL, "m", 0.05,
                   "site.obstacles#.x_m[0]", i);
        number_row(session, content, _("To, along"), NULL, "m", 0.05, "site.obstacles#.x_m[1]",
                   i);
        number_row(session, content, _("Underside"), NULL, "m", 0.05, "site.obstacles#.z_m[0]",
                   i);
        number_row(session, content, _("Top"), NULL, "m", 0.05, "site.obstacles#.z_m[1]", i);
        gtk_box_append(content, hs_row_remove(session, label, path));
    }
    gtk_box_append(content, hs_row_button(_("Add an obstacle"), NULL,
                                          G_CALLBACK(on_add_obstacle), session, NULL));
}

static void
site_build(HsSession *session, GtkBox *content)
{
    gtk_box_append(content, hs_quantity_row_new(session, _("Friction, shoe on floor"), NULL,
                                                "site.friction", "", 0.05));
    gtk_box_append(content, hs_tri_row_new(session, _("Wet"), "site.wet"));
    gtk_box_append(content, hs_quantity_row_new(session, _("Temperature"), NULL,
                                                "site.temperature_C", "C", 1.0));
    gtk_box_append(content, hs_quantity_row_new(session, _("Highest gust worked in"), NULL,
                                                "site.wind_m_s", "m_s", 1.0));
    gtk_box_append(content, hs_quantity_row_new(session, _("Headroom"), NULL, "site.headroom_m",
                                                "m", 0.05));
    gtk_box_append(content, hs_quantity_row_new(session, _("Clear width of the way"), NULL,
                                                "site.width_m", "m", 0.05));
    gtk_box_append(content, hs_quantity_row_new(session, _("Corner, width before"), NULL,
                                                "site.corner_m[0]", "m", 0.05));
    gtk_box_append(content, hs_quantity_row_new(session, _("Corner, width after"), NULL,
                                                "site.corner_m[1]", "m", 0.05));
    gtk_box_append(content, hs_quantity_row_new(session, _("Floor bears, under one sole"), NULL,
                                                "site.rating_kPa", "kPa", 10.0));
    gtk_box_append(content, hs_quantity_row_new(session, _("Floor bears, one person's all"),
                                                NULL, "site.rating_kg", "kg", 10.0));
    gtk_box_append(content, hs_quantity_row_new(session, _("Floor bears, spread"), NULL,
                                                "site.rating_spread_kPa", "kPa", 0.5));
    gtk_box_append(content, hs_quantity_row_new(session, _("Part of a sole that bears"), NULL,
                                                "site.bearing_fraction", "", 0.05));
    gtk_box_append(content,
                   hs_quantity_row_new(session, _("Way out"), NULL, "site.exit_m", "m", 5.0));
    floor_rows(session, content);
    opening_rows(session, content);
    obstacle_rows(session, content);
}

const hs_brief_part hs_brief_site = {"site", N_("Site"), site_summary, site_shape, site_build};

/* ---- Better ways --------------------------------------------------------------------------- */

static const char *const ways[] = {"remove", "split", "reheight", "mechanise"};

static int
find_way(const hs_document *document, const char *way)
{
    int n = hs_field_length(document, "better_ways");

    for (int i = 0; i < n; i++) {
        g_autofree char *path = g_strdup_printf("better_ways[%d].way", i);
        if (g_strcmp0(hs_field_text(document, path), way) == 0)
            return i;
    }
    return -1;
}

static char *
ways_summary(HsSession *session)
{
    int answered = 0;

    for (guint i = 0; i < G_N_ELEMENTS(ways); i++)
        answered += find_way(hs_session_document(session), ways[i]) >= 0;
    return g_strdup_printf(_("%d of %d answered"), answered, (int)G_N_ELEMENTS(ways));
}

static char *
ways_shape(HsSession *session)
{
    const hs_document *document = hs_session_document(session);
    GString *shape = g_string_new("");

    for (guint i = 0; i < G_N_ELEMENTS(ways); i++)
        g_string_append_printf(shape, "%d ", find_way(document, ways[i]));
    g_string_append_printf(shape, "%d %d", hs_field_length(document, "gates"),
                           hs_field_length(document, "consulted"));
    return g_string_free(shape, FALSE);
}

static void
on_answer_way(GtkWidget *button, gpointer data)
{
    HsSession *session = data;
    const char *way = g_object_get_data(G_OBJECT(button), "hs-way");
    g_autofree char *json =
        g_strdup_printf("{\"way\": \"%s\", \"answer\": \"planned\", \"reason\": \"\"}", way);

    insert_last(button, session, _("Answer a better way"), "better_ways", json);
}

static void
on_add_gate(GtkWidget *button, gpointer session)
{
    insert_last(button, session, _("Add a gate"), "gates",
                "{\"gate\": \"\", \"answer\": \"open\", \"note\": \"\"}");
}

static void
on_add_consulted(GtkWidget *button, gpointer session)
{
    insert_last(button, session, _("Add who was asked"), "consulted",
                "{\"role\": \"\", \"said\": \"\"}");
}

static void
way_rows(HsSession *session, GtkBox *content, const char *way, const char *question)
{
    const char *const answers[] = {"done", "not_possible", "planned", NULL};
    const char *const words[] = {_("done"), _("not possible"), _("planned"), NULL};
    int at = find_way(hs_session_document(session), way);

    gtk_box_append(content, hs_row_heading(question));
    if (at < 0) {
        GtkWidget *button =
            hs_row_button(_("Answer"), question, G_CALLBACK(on_answer_way), session, NULL);
        g_object_set_data_full(G_OBJECT(button), "hs-way", g_strdup(way), g_free);
        gtk_box_append(content, button);
        return;
    }
    g_autofree char *answer = g_strdup_printf("better_ways[%d].answer", at);
    g_autofree char *reason = g_strdup_printf("better_ways[%d].reason", at);
    gtk_box_append(content, hs_choice_row_new(session, _("Answer"), question, answer,
                                              HS_CHOICE_WORD, answers, words));
    gtk_box_append(content, hs_text_row_new(session, _("Because"), reason, 1));
}

static void
gate_rows(HsSession *session, GtkBox *content)
{
    const char *const answers[] = {"yes", "no", "open", NULL};
    const char *const words[] = {_("yes"), _("no"), _("open"), NULL};
    int n = hs_field_length(hs_session_document(session), "gates");

    gtk_box_append(content, hs_row_heading(_("Gates: health advice, drill, briefing")));
    for (int i = 0; i < n; i++) {
        g_autofree char *gate = g_strdup_printf("gates[%d].gate", i);
        g_autofree char *answer = g_strdup_printf("gates[%d].answer", i);
        g_autofree char *path = g_strdup_printf("gates[%d]", i);
        g_autofree char *name = g_strdup_printf(_("Gate %d"), i + 1);
        g_autofree char *label = g_strdup_printf(_("Remove gate %d"), i + 1);
        gtk_box_append(content, hs_text_row_new(session, name, gate, 1));
        gtk_box_append(content, hs_choice_row_new(session, _("Answer"), name, answer,
                                                  HS_CHOICE_WORD, answers, words));
        gtk_box_append(content, hs_row_remove(session, label, path));
    }
    gtk_box_append(
        content, hs_row_button(_("Add a gate"), NULL, G_CALLBACK(on_add_gate), session, NULL));
}

static void
consulted_rows(HsSession *session, GtkBox *content)
{
    int n = hs_field_length(hs_session_document(session), "consulted");

    gtk_box_append(content, hs_row_heading(_("Who was asked, and what they said")));
    for (int i = 0; i < n; i++) {
        g_autofree char *role = g_strdup_printf("consulted[%d].role", i);
        g_autofree char *said = g_strdup_printf("consulted[%d].said", i);
        gtk_box_append(content, hs_text_row_new(session, _("Who"), role, 1));
        gtk_box_append(content, hs_text_row_new(session, _("Said"), said, 2));
    }
    gtk_box_append(content, hs_row_button(_("Add who was asked"), NULL,
                                          G_CALLBACK(on_add_consulted), session, NULL));
}

static void
ways_build(HsSession *session, GtkBox *content)
{
    way_rows(session, content, ways[0], _("Can the lift be removed?"));
    way_rows(session, content, ways[1], _("Can the load be split?"));
    way_rows(session, content, ways[2], _("Can the heights be changed?"));
    way_rows(session, content, ways[3], _("Can a hoist, truck or conveyor do it?"));
    gate_rows(session, content);
    consulted_rows(session, content);
}

const hs_brief_part hs_brief_ways = {"ways", N_("Better ways first"), ways_summary, ways_shape,
                                     ways_build};

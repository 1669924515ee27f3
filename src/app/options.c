/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how does another option, another bearer or another suit come into the document?
 * Answer:    hs_options_*: copies and changes of what is there, each one undo.
 * Not here:  which grip a new bearer takes (crew.c). */
#include "options.h"

#include "change.h"
#include "field.h"
#include "look.h"
#include "notice.h"
#include "suits.h"

#include <glib/gi18n-lib.h>

static JsonObject *
copy_of(HsSession *session, int option, const char *stem, const char *name)
{
    const hs_document *document = hs_session_document(session);
    g_autofree char *path = g_strdup_printf("options[%d]", option);
    g_autofree char *id = hs_free_id(document, "options", stem);
    /* json-glib copies an object node by reference: write it out and read it back for a copy of its own. */
    g_autofree char *text = json_to_string(hs_field_node(document, path), FALSE);
    JsonNode *own = json_from_string(text, NULL);
    JsonObject *object = json_node_dup_object(own);

    json_node_unref(own);
    json_object_set_string_member(object, "id", id);
    json_object_set_string_member(object, "name", name);
    json_object_set_boolean_member(object, "baseline", FALSE);
    return object;
}

static void
insert_option(GtkWidget *from, HsSession *session, hs_edit *edit, JsonObject *object)
{
    int n = hs_field_length(hs_session_document(session), "options");
    g_autofree char *path = g_strdup_printf("options[%d]", n);
    JsonNode *node = json_node_new(JSON_NODE_OBJECT);

    json_node_take_object(node, object);
    hs_edit_insert(edit, path, node);
    if (hs_change_commit(from, session, edit)) {
        hs_session_refresh(session);
        hs_session_show(session, hs_session_left(session), n);
        hs_session_edit_option(session, n);
    }
}

static void
keep_first_bearer(JsonObject *option)
{
    JsonArray *bearers = json_object_get_array_member(option, "bearers");

    while (json_array_get_length(bearers) > 1)
        json_array_remove_element(bearers, json_array_get_length(bearers) - 1);
}

/* Alone, a bearer takes the load's first grips, as many as two hands hold. */
static void
take_two_grips(JsonObject *option, HsSession *session)
{
    JsonObject *bearer =
        json_array_get_object_element(json_object_get_array_member(option, "bearers"), 0);
    JsonArray *grips = json_array_new();
    int n = hs_field_length(hs_session_document(session), "load.grips");
    double free_hands = 2.0;

    for (int i = 0; i < n && free_hands > 0.0; i++) {
        g_autofree char *path = g_strdup_printf("load.grips[%d].id", i);
        g_autofree char *hands_path = g_strdup_printf("load.grips[%d].hands", i);
        double hands = hs_or(hs_field_number(hs_session_document(session), hands_path), 1.0);
        if (hands > free_hands)
            continue;
        free_hands -= hands;
        json_array_add_string_element(grips, hs_field_text(hs_session_document(session), path));
    }
    json_object_set_array_member(bearer, "grips", grips);
}

static void
undress(JsonObject *option)
{
    JsonObject *bearer =
        json_array_get_object_element(json_object_get_array_member(option, "bearers"), 0);

    json_object_remove_member(bearer, "suit");
    json_object_remove_member(bearer, "effector");
}

static int
baseline_of(HsSession *session)
{
    const hs_results *results = hs_session_results(session);

    return results != NULL && results->baseline >= 0 ? results->baseline : 0;
}

static void
add_alone(GtkWidget *from, HsSession *session)
{
    JsonObject *object =
        copy_of(session, baseline_of(session), "alone", _("One person, no suit"));

    keep_first_bearer(object);
    take_two_grips(object, session);
    undress(object);
    insert_option(from, session, hs_edit_new(_("Add an option: one person")), object);
}

static void
add_suited(GtkWidget *from, HsSession *session)
{
    JsonObject *object =
        copy_of(session, baseline_of(session), "suited", _("One person in a suit"));
    hs_edit *edit = hs_edit_new(_("Add an option: one person in a suit"));

    keep_first_bearer(object);
    take_two_grips(object, session);
    undress(object);
    g_autofree char *suit = hs_suits_first_or_new(session, edit);
    json_object_set_string_member(
        json_array_get_object_element(json_object_get_array_member(object, "bearers"), 0),
        "suit", suit);
    insert_option(from, session, edit, object);
}

static void
add_copy(GtkWidget *from, HsSession *session)
{
    int option = hs_change_edited(session);
    const hs_results *results = hs_session_results(session);

    if (option < 0 || results == NULL)
        return;
    g_autofree char *name = g_strdup_printf(_("%s, copy"), results->options[option].name);
    insert_option(from, session, hs_edit_new(_("Copy the option")),
                  copy_of(session, option, "option", name));
}

static void
remove_option(GtkWidget *from, HsSession *session)
{
    int option = hs_change_edited(session);

    if (option < 0)
        return;
    if (hs_field_length(hs_session_document(session), "options") < 2) {
        hs_notice_say(from, _("One option has to stay."));
        return;
    }
    g_autofree char *path = g_strdup_printf("options[%d]", option);
    hs_edit *edit = hs_edit_new(_("Remove the option"));
    hs_edit_remove(edit, path);
    hs_change_commit(from, session, edit);
}

void
hs_options_wish(GtkWidget *from, HsSession *session, hs_option_wish wish)
{
    if (hs_document_task(hs_session_document(session)) == NULL) {
        hs_notice_say(from,
                      _("The document has to be complete before an option can be copied."));
        return;
    }
    if (wish == HS_OPTION_COPY)
        add_copy(from, session);
    else if (wish == HS_OPTION_ALONE)
        add_alone(from, session);
    else if (wish == HS_OPTION_SUITED)
        add_suited(from, session);
    else
        remove_option(from, session);
}

static void
on_row(GtkButton *row, HsSession *session)
{
    int wish = GPOINTER_TO_INT(g_object_get_data(G_OBJECT(row), "hs-wish"));
    GtkWidget *popover = gtk_widget_get_ancestor(GTK_WIDGET(row), GTK_TYPE_POPOVER);

    gtk_popover_popdown(GTK_POPOVER(popover));
    hs_options_wish(GTK_WIDGET(row), session, (hs_option_wish)wish);
}

static void
on_power_off(GtkButton *row, HsSession *session)
{
    gtk_popover_popdown(
        GTK_POPOVER(gtk_widget_get_ancestor(GTK_WIDGET(row), GTK_TYPE_POPOVER)));
    hs_session_set_power_off(session, TRUE);
}

static GtkWidget *
menu_row(GtkBox *box, const char *text)
{
    GtkWidget *row = gtk_button_new_with_label(text);

    gtk_widget_add_css_class(row, "flat");
    gtk_widget_set_halign(gtk_button_get_child(GTK_BUTTON(row)), GTK_ALIGN_START);
    hs_look_name(row, text);
    gtk_box_append(box, row);
    return row;
}

void
hs_options_fill_menu(GtkMenuButton *button, HsSession *session)
{
    static const struct {
        const char *text;
        hs_option_wish wish;
    } rows[] = {
        {N_("Copy the option that is edited"), HS_OPTION_COPY},
        {N_("One person, no suit"), HS_OPTION_ALONE},
        {N_("One person in a suit"), HS_OPTION_SUITED},
        {N_("Remove the option that is edited"), HS_OPTION_REMOVE},
    };
    GtkWidget *popover = gtk_popover_new(), *box = gtk_box_new(GTK_ORIENTATION_VERTICAL, 2);

    for (guint i = 0; i < G_N_ELEMENTS(rows); i++) {
        GtkWidget *row = menu_row(GTK_BOX(box), _(rows[i].text));
        g_object_set_data(G_OBJECT(row), "hs-wish", GINT_TO_POINTER((int)rows[i].wish));
        g_signal_connect(row, "clicked", G_CALLBACK(on_row), session);
    }
    g_signal_connect(menu_row(GTK_BOX(box), _("Show the suited with the power off")), "clicked",
                     G_CALLBACK(on_power_off), session);
    gtk_popover_set_child(GTK_POPOVER(popover), box);
    hs_look_name(popover, _("Add an option"));
    gtk_menu_button_set_popover(button, popover);
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  which fields stand under Bearers?
 * Answer:    the option's name, its crew by count, reach, heading and stance, each bearer with person, suit and grips; the
 *            people themselves.
 * Not here:  where a new bearer takes hold (crew.c), the suits' data (brief_suit.c). */
#include "brief.h"

#include "brief_sizes.h"
#include "change.h"
#include "crew.h"
#include "field.h"
#include "look.h"
#include "rows.h"
#include "suits.h"

#include <glib/gi18n-lib.h>

static const char *
option_name(HsSession *session)
{
    const hs_results *results = hs_session_results(session);
    int option = hs_session_edited(session);

    return results != NULL && option >= 0 && option < results->n_options
               ? results->options[option].name
               : "";
}

static char *
bearers_summary(HsSession *session)
{
    /* Translators: name of the option that is edited, then how many bearers it has: "Today, 2" */
    return g_strdup_printf(_("%s, %d"), option_name(session), hs_crew_count(session));
}

static char *
bearers_shape(HsSession *session)
{
    const hs_document *document = hs_session_document(session);
    int option = hs_change_edited(session), n = hs_crew_count(session);
    GString *shape = g_string_new(NULL);

    g_string_append_printf(
        shape, "%d %d %d %d %d", option, n, hs_field_length(document, "workers"),
        hs_field_length(document, "suits"), hs_field_length(document, "load.grips"));
    for (int i = 0; i < n; i++) {
        g_autofree char *grips = g_strdup_printf("options[%d].bearers[%d].grips", option, i);
        g_autofree char *suit = g_strdup_printf("options[%d].bearers[%d].suit", option, i);
        const char *id = hs_field_text(document, suit);
        g_string_append_printf(shape, " %s", id ? id : "-");
        for (int k = 0; k < hs_field_length(document, grips); k++) {
            g_autofree char *grip = g_strdup_printf("%s[%d]", grips, k);
            const char *name = hs_field_text(document, grip);
            g_string_append_printf(shape, ",%s", name ? name : "?");
        }
    }
    return g_string_free(shape, FALSE);
}

/* ---- crew ---------------------------------------------------------------------------------- */

#define CREW_HINT _("+ shows who would join, and where, before it is pressed.")

static void
on_count(GtkWidget *button, gpointer session)
{
    hs_crew_set_count(button, session,
                      GPOINTER_TO_INT(g_object_get_data(G_OBJECT(button), "hs-count")));
}

/* Who would come is seen while + is under the pointer or has the focus: pale on the stage, and in words here. */
static void
on_next_meant(GtkEventController *controller, HsSession *session)
{
    GtkWidget *more = gtk_event_controller_get_widget(controller);
    g_autofree char *text = hs_crew_next(session);

    hs_crew_show_next(session, TRUE);
    gtk_label_set_text(g_object_get_data(G_OBJECT(more), "hs-words"),
                       text ? text : _("There is no free grip: + offers a new one."));
}

static void
on_enter(GtkEventController *controller, double x, double y, HsSession *session)
{
    (void)x, (void)y;
    on_next_meant(controller, session);
}

static void
on_leave(GtkEventController *controller, HsSession *session)
{
    GtkWidget *more = gtk_event_controller_get_widget(controller);

    hs_crew_show_next(session, FALSE);
    gtk_label_set_text(g_object_get_data(G_OBJECT(more), "hs-words"), CREW_HINT);
}

static GtkWidget *
watch_next(GtkWidget *more, HsSession *session)
{
    GtkEventController *pointer = gtk_event_controller_motion_new(),
                       *focus = gtk_event_controller_focus_new();
    GtkWidget *words = hs_row_hint(CREW_HINT);

    g_object_set_data_full(G_OBJECT(more), "hs-words", g_object_ref(words), g_object_unref);
    g_signal_connect(pointer, "enter", G_CALLBACK(on_enter), session);
    g_signal_connect(pointer, "leave", G_CALLBACK(on_leave), session);
    g_signal_connect(focus, "enter", G_CALLBACK(on_next_meant), session);
    g_signal_connect(focus, "leave", G_CALLBACK(on_leave), session);
    gtk_widget_add_controller(more, pointer);
    gtk_widget_add_controller(more, focus);
    return words;
}

static GtkWidget *
count_button(HsSession *session, const char *label, const char *name, int count)
{
    GtkWidget *button = hs_row_button(label, name, G_CALLBACK(on_count), session, NULL);

    g_object_set_data(G_OBJECT(button), "hs-count", GINT_TO_POINTER(count));
    gtk_widget_set_sensitive(button, count >= 1 && count <= HS_CREW_MOST);
    gtk_widget_add_css_class(button, "count");
    return button;
}

static void
crew_rows(HsSession *session, GtkBox *content)
{
    int now = hs_crew_count(session);
    GtkWidget *line = gtk_box_new(GTK_ORIENTATION_HORIZONTAL, 0),
              *label = gtk_label_new(_("Crew"));
    GtkWidget *more = count_button(session, "+", _("One bearer more"), now + 1);

    gtk_label_set_xalign(GTK_LABEL(label), 0.0f);
    gtk_widget_set_hexpand(label, TRUE);
    gtk_widget_set_margin_end(label, 12);
    gtk_box_append(GTK_BOX(line), label);
    gtk_box_append(GTK_BOX(line), count_button(session, "−", _("One bearer fewer"), now - 1));
    for (int i = 1; i <= HS_CREW_MOST; i++) {
        g_autofree char *digit = g_strdup_printf("%d", i);
        g_autofree char *name = g_strdup_printf(
            g_dngettext(GETTEXT_PACKAGE, "Crew of %d", "Crew of %d", (gulong)i), i);
        GtkWidget *button = count_button(session, digit, name, i);
        if (i == now)
            gtk_widget_add_css_class(button, "on");
        gtk_box_append(GTK_BOX(line), button);
    }
    gtk_box_append(GTK_BOX(line), more);
    gtk_widget_add_css_class(line, "crew");
    gtk_box_append(content, line);
    gtk_box_append(content, watch_next(more, session));
}

/* ---- one bearer ---------------------------------------------------------------------------- */

typedef struct {
    char **ids, **words;
} id_list;

static void
id_list_clear(id_list *list)
{
    g_strfreev(list->ids);
    g_strfreev(list->words);
}

static id_list
ids_of(const hs_document *document, const char *list, const char *none)
{
    g_autoptr(GStrvBuilder) ids = g_strv_builder_new(), words = g_strv_builder_new();

    if (none != NULL) {
        g_strv_builder_add(ids, "");
        g_strv_builder_add(words, none);
    }
    for (int i = 0; i < hs_field_length(document, list); i++) {
        g_autofree char *id_path = g_strdup_printf("%s[%d].id", list, i);
        g_autofree char *name_path = g_strdup_printf("%s[%d].name", list, i);
        const char *id = hs_field_text(document, id_path),
                   *name = hs_field_text(document, name_path);
        if (id == NULL)
            continue;
        g_strv_builder_add(ids, id);
        g_strv_builder_add(words, name && *name ? name : id);
    }
    return (id_list){g_strv_builder_end(ids), g_strv_builder_end(words)};
}

static void
choice_of(HsSession *session,
          GtkBox *content,
          const char *label,
          const char *name,
          const char *path,
          id_list list)
{
    gtk_box_append(content, hs_choice_row_new(session, label, name, path, HS_CHOICE_WORD,
                                              (const char *const *)list.ids,
                                              (const char *const *)list.words));
    id_list_clear(&list);
}

/* ---- suit picker --------------------------------------------------------------------------- */

static void
on_suit(GtkDropDown *dropdown, GParamSpec *property, HsSession *session)
{
    const char *path = g_object_get_data(G_OBJECT(dropdown), "hs-path");
    guint at = gtk_drop_down_get_selected(dropdown);
    const hs_document *document = hs_session_document(session);
    guint own = (guint)hs_field_length(document, "suits");
    g_autofree char *effector = g_strdup(path);
    int option = hs_change_edited(session);

    (void)property;
    if (at == GTK_INVALID_LIST_POSITION)
        return;
    hs_edit *edit = hs_edit_new(_("Choose a suit"));
    *strrchr(effector, '.') = '\0';
    g_autofree char *effector_path = g_strdup_printf("%s.effector", effector);
    hs_edit_unset(edit, effector_path);
    if (at == 0) {
        hs_edit_unset(edit, path);
    } else if (at <= own) {
        g_autofree char *id = g_strdup_printf("suits[%u].id", at - 1);
        hs_edit_set_string(edit, path, hs_field_text(document, id));
    } else {
        g_autofree char *id = hs_suits_add(session, edit, (int)(at - own - 1));
        hs_edit_set_string(edit, path, id);
    }
    hs_change_option(GTK_WIDGET(dropdown), session, option, edit);
}

static guint
suit_position(const hs_document *document, const char *path)
{
    const char *id = hs_field_text(document, path);

    for (int i = 0; id != NULL && i < hs_field_length(document, "suits"); i++) {
        g_autofree char *each = g_strdup_printf("suits[%d].id", i);
        if (g_strcmp0(hs_field_text(document, each), id) == 0)
            return (guint)i + 1;
    }
    return 0;
}

static void
suit_row(HsSession *session, GtkBox *content, const char *path, const char *name)
{
    const hs_document *document = hs_session_document(session);
    id_list list = ids_of(document, "suits", _("no suit"));
    GtkStringList *words = gtk_string_list_new((const char *const *)list.words);
    GtkWidget *row = gtk_box_new(GTK_ORIENTATION_HORIZONTAL, 6),
              *label = gtk_label_new(_("Suit"));

    id_list_clear(&list);
    for (int i = 0; hs_suits_example_name(i) != NULL; i++) {
        g_autofree char *text = g_strdup_printf(_("add: %s"), hs_suits_example_name(i));
        gtk_string_list_append(words, text);
    }
    GtkWidget *dropdown = gtk_drop_down_new(G_LIST_MODEL(words), NULL);
    gtk_drop_down_set_selected(GTK_DROP_DOWN(dropdown), suit_position(document, path));
    g_object_set_data_full(G_OBJECT(dropdown), "hs-path", g_strdup(path), g_free);
    g_autofree char *spoken = g_strdup_printf(_("Suit of %s"), name);
    hs_row_cut_long(dropdown);
    hs_row_name_button(dropdown, spoken);
    g_signal_connect(dropdown, "notify::selected", G_CALLBACK(on_suit), session);
    gtk_label_set_xalign(GTK_LABEL(label), 0.0f);
    gtk_widget_set_hexpand(label, TRUE);
    gtk_box_append(GTK_BOX(row), label);
    gtk_box_append(GTK_BOX(row), dropdown);
    gtk_widget_add_css_class(row, "row");
    gtk_box_append(content, row);
}

static void
effector_row(HsSession *session, GtkBox *content, const char *bearer, const char *who)
{
    const hs_document *document = hs_session_document(session);
    g_autofree char *suit = g_strdup_printf("%s.suit", bearer);
    g_autofree char *effector = g_strdup_printf("%s.effector", bearer);
    guint at = suit_position(document, suit);
    g_autofree char *name = g_strdup_printf(_("Effector of %s"), who);

    if (at == 0)
        return;
    g_autofree char *list = g_strdup_printf("suits[%u].effectors", at - 1);
    if (hs_field_length(document, list) > 0)
        choice_of(session, content, _("Effector"), name, effector,
                  ids_of(document, list, _("none")));
}

/* ---- grips --------------------------------------------------------------------------------- */

typedef struct {
    HsSession *session;
    char *bearer, *grip;
} grip_switch;

static void
grip_switch_free(gpointer data)
{
    grip_switch *one = data;

    g_free(one->bearer);
    g_free(one->grip);
    g_free(one);
}

static gboolean
holds(const hs_document *document, const char *bearer, const char *grip)
{
    g_autofree char *list = g_strdup_printf("%s.grips", bearer);

    for (int i = 0; i < hs_field_length(document, list); i++) {
        g_autofree char *path = g_strdup_printf("%s[%d]", list, i);
        if (g_strcmp0(hs_field_text(document, path), grip) == 0)
            return TRUE;
    }
    return FALSE;
}

static void
on_grip(GtkToggleButton *button, gpointer data)
{
    grip_switch *one = data;
    const hs_document *document = hs_session_document(one->session);
    JsonArray *grips = json_array_new();
    JsonNode *node = json_node_new(JSON_NODE_ARRAY);
    hs_edit *edit = hs_edit_new(_("Change who holds which grip"));
    g_autofree char *path = g_strdup_printf("%s.grips", one->bearer);
    gboolean on = gtk_toggle_button_get_active(button);

    for (int i = 0; i < hs_field_length(document, "load.grips"); i++) {
        g_autofree char *id_path = g_strdup_printf("load.grips[%d].id", i);
        const char *id = hs_field_text(document, id_path);
        if (g_str_equal(id, one->grip) ? on : holds(document, one->bearer, id))
            json_array_add_string_element(grips, id);
    }
    json_node_take_array(node, grips);
    hs_edit_set(edit, path, node);
    hs_change_option(GTK_WIDGET(button), one->session, hs_change_edited(one->session), edit);
}

static void
grip_rows(HsSession *session, GtkBox *content, const char *bearer, const char *who)
{
    const hs_document *document = hs_session_document(session);
    GtkWidget *flow = gtk_flow_box_new();

    gtk_flow_box_set_selection_mode(GTK_FLOW_BOX(flow), GTK_SELECTION_NONE);
    gtk_flow_box_set_max_children_per_line(GTK_FLOW_BOX(flow), 6);
    for (int i = 0; i < hs_field_length(document, "load.grips"); i++) {
        g_autofree char *path = g_strdup_printf("load.grips[%d].id", i);
        const char *id = hs_field_text(document, path);
        GtkWidget *button = gtk_toggle_button_new_with_label(id ? id : "?");
        grip_switch *one = g_new(grip_switch, 1);
        g_autofree char *name = g_strdup_printf(_("%s holds grip %s"), who, id ? id : "?");
        *one = (grip_switch){session, g_strdup(bearer), g_strdup(id)};
        gtk_toggle_button_set_active(GTK_TOGGLE_BUTTON(button), holds(document, bearer, id));
        gtk_widget_add_css_class(button, "chip");
        hs_look_name(button, name);
        g_object_set_data_full(G_OBJECT(button), "hs-switch", one, grip_switch_free);
        g_signal_connect(button, "toggled", G_CALLBACK(on_grip), one);
        gtk_flow_box_append(GTK_FLOW_BOX(flow), button);
        gtk_widget_set_focusable(gtk_widget_get_parent(button), FALSE);
        hs_look_name(gtk_widget_get_parent(button), name);
    }
    g_autofree char *all = g_strdup_printf(_("Grips of %s"), who);
    hs_look_name(flow, all);
    gtk_box_append(content, flow);
}

static void
bearer_rows(HsSession *session, GtkBox *content, int option, int index)
{
    const hs_document *document = hs_session_document(session);
    g_autofree char *bearer = g_strdup_printf("options[%d].bearers[%d]", option, index);
    g_autofree char *id_path = g_strdup_printf("%s.id", bearer);
    g_autofree char *worker = g_strdup_printf("%s.worker", bearer);
    g_autofree char *suit = g_strdup_printf("%s.suit", bearer);
    g_autofree char *style = g_strdup_printf("%s.style", bearer);
    g_autofree char *stands = g_strdup_printf("%s.stands", bearer);
    const char *who = hs_field_text(document, id_path);
    const char *const styles[] = {"", "free", "legs", "back", NULL};
    const char *const style_words[] = {_("free (assumed)"), _("free"), _("from the legs"),
                                       _("from the back"), NULL};
    const char *const places[] = {"", "behind", "ahead", "left", "right", NULL};
    const char *const place_words[] = {_("by the grips"), _("behind"), _("ahead"),
                                       _("left"),         _("right"),  NULL};
    g_autofree char *heading = g_strdup_printf(_("Bearer %s"), who ? who : "?");
    g_autofree char *person = g_strdup_printf(_("Person of bearer %s"), who ? who : "?");
    g_autofree char *lifts = g_strdup_printf(_("Way of lifting of bearer %s"), who ? who : "?");
    g_autofree char *where = g_strdup_printf(_("Place of bearer %s"), who ? who : "?");

    gtk_box_append(content, hs_row_heading(heading));
    choice_of(session, content, _("Person"), person, worker, ids_of(document, "workers", NULL));
    suit_row(session, content, suit, heading);
    effector_row(session, content, bearer, heading);
    grip_rows(session, content, bearer, heading);
    gtk_box_append(content, hs_choice_row_new(session, _("Lifts"), lifts, style, HS_CHOICE_WORD,
                                              styles, style_words));
    gtk_box_append(content, hs_choice_row_new(session, _("Stands"), where, stands,
                                              HS_CHOICE_WORD, places, place_words));
}

/* ---- people -------------------------------------------------------------------------------- */

static void
worker_rows(HsSession *session, GtkBox *content, int i)
{
    const char *const sexes[] = {"", "female", "male", NULL};
    const char *const words[] = {_("not said"), _("woman"), _("man"), NULL};
    g_autofree char *name = g_strdup_printf("workers[%d].name", i);
    g_autofree char *sex = g_strdup_printf("workers[%d].sex", i);
    g_autofree char *stature = g_strdup_printf("workers[%d].stature_m", i);
    g_autofree char *mass = g_strdup_printf("workers[%d].mass_kg", i);
    g_autofree char *age = g_strdup_printf("workers[%d].age_years", i);
    g_autofree char *person = g_strdup_printf(_("Person %d"), i + 1);
    g_autofree char *person_size = g_strdup_printf(_("Person %d, size of the survey"), i + 1);
    g_autofree char *person_sex = g_strdup_printf(_("Person %d, woman or man"), i + 1);
    g_autofree char *person_stature = g_strdup_printf(_("Person %d, stature"), i + 1);
    g_autofree char *person_mass = g_strdup_printf(_("Person %d, body mass"), i + 1);
    g_autofree char *person_age = g_strdup_printf(_("Person %d, age in years"), i + 1);

    gtk_box_append(content, hs_text_row_new(session, person, name, 1));
    gtk_box_append(content, hs_size_row_new(session, i, person_size));
    gtk_box_append(content, hs_choice_row_new(session, _("Woman or man"), person_sex, sex,
                                              HS_CHOICE_WORD, sexes, words));
    gtk_box_append(content, hs_quantity_row_new(session, _("Stature"), person_stature, stature,
                                                "m", 0.01));
    gtk_box_append(content,
                   hs_quantity_row_new(session, _("Body mass"), person_mass, mass, "kg", 1.0));
    gtk_box_append(content,
                   hs_quantity_row_new(session, _("Age, years"), person_age, age, "", 1.0));
}

static void
option_rows(HsSession *session, GtkBox *content, int option)
{
    const char *const stances[] = {"", "standing", "kneeling", NULL};
    const char *const words[] = {_("standing (assumed)"), _("standing"), _("kneeling"), NULL};
    g_autofree char *name = g_strdup_printf("options[%d].name", option);
    g_autofree char *reach = g_strdup_printf("options[%d].reach_m", option);
    g_autofree char *heading = g_strdup_printf("options[%d].heading_deg", option);
    g_autofree char *stance = g_strdup_printf("options[%d].stance", option);
    g_autofree char *title = g_strdup_printf(_("Option: %s"), option_name(session));
    g_autofree char *reach_name = g_strdup_printf(_("Reach in %s"), option_name(session));

    gtk_box_append(content, hs_row_heading(title));
    gtk_box_append(content, hs_text_row_new(session, _("Option's name"), name, 1));
    crew_rows(session, content);
    gtk_box_append(content, hs_quantity_row_new(session, _("Reach, ankles to hands"),
                                                reach_name, reach, "m", 0.01));
    gtk_box_append(content, hs_quantity_row_new(session, _("Load turned left by"), NULL,
                                                heading, "deg", 5.0));
    gtk_box_append(content, hs_choice_row_new(session, _("Stance"), NULL, stance,
                                              HS_CHOICE_WORD, stances, words));
}

static void
bearers_build(HsSession *session, GtkBox *content)
{
    int option = hs_change_edited(session), n = hs_crew_count(session);

    if (option < 0) {
        gtk_box_append(
            content,
            hs_row_hint(
                _("This way was added by the program for comparison and cannot be edited.")));
        return;
    }
    option_rows(session, content, option);
    for (int i = 0; i < n; i++)
        bearer_rows(session, content, option, i);
    gtk_box_append(content, hs_row_heading(_("People")));
    for (int i = 0; i < hs_field_length(hs_session_document(session), "workers"); i++)
        worker_rows(session, content, i);
}

const hs_brief_part hs_brief_bearers = {"bearers", N_("Bearers"), bearers_summary,
                                        bearers_shape, bearers_build};

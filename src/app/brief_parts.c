/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  which fields make up a load, part by part and grip by grip?
 * Answer:    shape, mass, sizes and centre of each part; kind, hold and place of each grip; one more, one fewer.
 * Not here:  the section that they stand in, the scale readings (brief_load.c). */
#include "brief_parts.h"

#include "change.h"
#include "field.h"
#include "notice.h"
#include "quantity.h"
#include "rows.h"
#include "words.h"

#include <glib/gi18n-lib.h>
#include <math.h>

void
hs_brief_number(HsSession *session,
                GtkBox *content,
                const char *stem,
                const char *key,
                const char *label,
                const char *who,
                const char *unit,
                double step)
{
    g_autofree char *path = g_strdup_printf("%s.%s", stem, key);
    g_autofree char *name = g_strdup_printf("%s, %s", who, label);

    gtk_box_append(content, hs_quantity_row_new(session, label, name, path, unit, step));
}

/* ---- parts --------------------------------------------------------------------------------- */

static const char *const shapes[] = {"box",        "cylinder", "tube",  "sphere",
                                     "hemisphere", "cone",     "wedge", "point"};

static gboolean
has_size(const char *shape)
{
    return g_str_equal(shape, "box") || g_str_equal(shape, "wedge");
}

static gboolean
has_length(const char *shape)
{
    return g_str_equal(shape, "cylinder") || g_str_equal(shape, "tube") ||
           g_str_equal(shape, "cone");
}

static gboolean
has_axis(const char *shape)
{
    return has_length(shape) || g_str_equal(shape, "hemisphere");
}

static void
set_part(hs_edit *edit, const char *stem, const char *key, const char *json)
{
    g_autofree char *path = g_strdup_printf("%s.%s", stem, key);

    if (json != NULL)
        hs_edit_set(edit, path, hs_change_node(json));
    else
        hs_edit_unset(edit, path);
}

/* Sizes of the old shape as far as the new one has them, else about as large. */
static hs_edit *
edit_shape(const hs_document *document, const char *stem, const char *shape)
{
    g_autofree char *radius_path = g_strdup_printf("%s.radius_m", stem);
    g_autofree char *length_path = g_strdup_printf("%s.length_m", stem);
    g_autofree char *long_path = g_strdup_printf("%s.size_m[0]", stem);
    g_autofree char *high_path = g_strdup_printf("%s.size_m[2]", stem);
    g_autofree char *shape_path = g_strdup_printf("%s.shape", stem);
    g_autofree char *axis_path = g_strdup_printf("%s.axis", stem);
    double long_m = hs_or(hs_field_number(document, long_path),
                          hs_or(hs_field_number(document, length_path), 0.3));
    double radius_m = hs_or(hs_field_number(document, radius_path),
                            hs_or(hs_field_number(document, high_path), 0.2) / 2.0);
    g_autofree char *along = hs_number_text(long_m);
    g_autofree char *radius = hs_number_text(radius_m);
    g_autofree char *inner = hs_number_text(radius_m / 2.0);
    g_autofree char *across = hs_number_text(2.0 * radius_m);
    g_autofree char *size = g_strdup_printf("[%s, %s, %s]", along, across, across);
    gboolean is_point = g_str_equal(shape, "point");
    hs_edit *edit = hs_edit_new(_("Change a part's shape"));

    hs_edit_set_string(edit, shape_path, shape);
    set_part(edit, stem, "size_m", has_size(shape) ? size : NULL);
    set_part(edit, stem, "radius_m", has_size(shape) || is_point ? NULL : radius);
    set_part(edit, stem, "length_m", has_length(shape) ? along : NULL);
    set_part(edit, stem, "inner_radius_m", g_str_equal(shape, "tube") ? inner : NULL);
    if (!has_axis(shape))
        set_part(edit, stem, "axis", NULL);
    else if (hs_field_text(document, axis_path) == NULL)
        set_part(edit, stem, "axis", "\"z\"");
    return edit;
}

static void
on_shape(GtkDropDown *dropdown, GParamSpec *property, HsSession *session)
{
    const char *stem = g_object_get_data(G_OBJECT(dropdown), "hs-stem");
    guint at = gtk_drop_down_get_selected(dropdown);

    (void)property;
    g_autofree char *path = g_strdup_printf("%s.shape", stem);
    const char *now = hs_field_text(hs_session_document(session), path);
    if (at >= G_N_ELEMENTS(shapes) || g_strcmp0(shapes[at], now) == 0)
        return;
    if (hs_change_commit(GTK_WIDGET(dropdown), session,
                         edit_shape(hs_session_document(session), stem, shapes[at])))
        return;
    for (guint i = 0; i < G_N_ELEMENTS(shapes); i++) {
        if (g_strcmp0(shapes[i], now) == 0)
            gtk_drop_down_set_selected(dropdown, i);
    }
}

static GtkWidget *
shape_row(HsSession *session, const char *stem, const char *shape, const char *who)
{
    GtkWidget *row = gtk_box_new(GTK_ORIENTATION_HORIZONTAL, 6),
              *label = gtk_label_new(_("shape"));
    GtkStringList *words = gtk_string_list_new(NULL);
    guint selected = 0;

    for (guint i = 0; i < G_N_ELEMENTS(shapes); i++) {
        gtk_string_list_append(words, hs_words_shape((hs_shape)(HS_SHAPE_BOX + i)));
        if (g_str_equal(shapes[i], shape))
            selected = i;
    }
    GtkWidget *dropdown = gtk_drop_down_new(G_LIST_MODEL(words), NULL);
    gtk_drop_down_set_selected(GTK_DROP_DOWN(dropdown), selected);
    g_object_set_data_full(G_OBJECT(dropdown), "hs-stem", g_strdup(stem), g_free);
    g_autofree char *name = g_strdup_printf(_("%s, shape"), who);
    hs_row_name_button(dropdown, name);
    g_signal_connect(dropdown, "notify::selected", G_CALLBACK(on_shape), session);
    gtk_label_set_xalign(GTK_LABEL(label), 0.0f);
    gtk_widget_set_hexpand(label, TRUE);
    gtk_box_append(GTK_BOX(row), label);
    gtk_box_append(GTK_BOX(row), dropdown);
    gtk_widget_add_css_class(row, "row");
    return row;
}

static void
axis_row(HsSession *session, GtkBox *content, const char *stem, const char *who)
{
    const char *const axes[] = {"x", "y", "z", NULL};
    const char *const words[] = {_("along the way"), _("across"), _("upright"), NULL};
    g_autofree char *path = g_strdup_printf("%s.axis", stem);
    g_autofree char *name = g_strdup_printf(_("%s, axis"), who);

    gtk_box_append(content, hs_choice_row_new(session, _("axis"), name, path, HS_CHOICE_WORD,
                                              axes, words));
}

static void
size_rows(
    HsSession *session, GtkBox *content, const char *stem, const char *shape, const char *who)
{
    if (g_str_equal(shape, "box") || g_str_equal(shape, "wedge")) {
        hs_brief_number(session, content, stem, "size_m[0]", _("long"), who, "m", 0.01);
        hs_brief_number(session, content, stem, "size_m[1]", _("wide"), who, "m", 0.01);
        hs_brief_number(session, content, stem, "size_m[2]", _("high"), who, "m", 0.01);
    } else if (!g_str_equal(shape, "point")) {
        hs_brief_number(session, content, stem, "radius_m", _("radius"), who, "m", 0.01);
        if (g_str_equal(shape, "tube"))
            hs_brief_number(session, content, stem, "inner_radius_m", _("inner radius"), who,
                            "m", 0.01);
        if (has_axis(shape))
            axis_row(session, content, stem, who);
        if (has_length(shape))
            hs_brief_number(session, content, stem, "length_m", _("long"), who, "m", 0.01);
    }
}

/* ---- liquid -------------------------------------------------------------------------------- */

/* Height of what a part can hold, as the rules of the document see it; NaN: a part of this kind holds no liquid. */
static double
holds_m(const hs_document *document, const char *stem, const char *shape)
{
    g_autofree char *high = g_strdup_printf("%s.size_m[2]", stem);
    g_autofree char *radius = g_strdup_printf("%s.radius_m", stem);
    g_autofree char *along = g_strdup_printf("%s.length_m", stem);
    g_autofree char *axis = g_strdup_printf("%s.axis", stem);
    g_autofree char *is_void = g_strdup_printf("%s.void", stem);

    for (int k = 0; k < 3; k++) {
        g_autofree char *turn = g_strdup_printf("%s.turn_deg[%d]", stem, k);
        if (hs_or(hs_field_number(document, turn), 0) != 0)
            return HS_ABSENT;
    }
    if (hs_field_flag(document, is_void) > 0)
        return HS_ABSENT;
    if (g_strcmp0(shape, "box") == 0)
        return hs_field_number(document, high);
    if (g_strcmp0(shape, "cylinder") != 0)
        return HS_ABSENT;
    return g_strcmp0(hs_field_text(document, axis), "z") == 0
               ? hs_field_number(document, along)
               : 2.0 * hs_field_number(document, radius);
}

/* Water to half the height, to the centimetre: about what is asked, its figures stand in the fields then. */
static void
on_liquid(GtkWidget *button, HsSession *session)
{
    const hs_document *document = hs_session_document(session);
    const char *stem = g_object_get_data(G_OBJECT(button), "hs-stem");
    g_autofree char *path = g_strdup_printf("%s.liquid", stem);
    g_autofree char *shape = g_strdup_printf("%s.shape", stem);
    gboolean has_liquid = hs_field_node(document, path) != NULL;
    hs_edit *edit = hs_edit_new(has_liquid ? _("Pour the liquid away") : _("Add a liquid"));

    if (has_liquid) {
        hs_edit_unset(edit, path);
    } else {
        double high_m = holds_m(document, stem, hs_field_text(document, shape));
        double depth_m = fmin(fmax(round(50.0 * high_m) / 100.0, 0.01), high_m);
        g_autofree char *depth = hs_number_text(depth_m);
        g_autofree char *json =
            g_strdup_printf("{\"density_kg_m3\": 1000, \"depth_m\": %s}", depth);
        hs_edit_set(edit, path, hs_change_node(json));
    }
    hs_change_commit(button, session, edit);
}

static void
liquid_rows(
    HsSession *session, GtkBox *content, const char *stem, const char *shape, const char *who)
{
    const hs_document *document = hs_session_document(session);
    g_autofree char *path = g_strdup_printf("%s.liquid", stem);
    gboolean has_liquid = hs_field_node(document, path) != NULL;
    g_autofree char *name = g_strdup_printf(
        has_liquid ? _("%s, pour the liquid away") : _("%s, add a liquid"), who);

    if (!has_liquid && !(holds_m(document, stem, shape) > 0))
        return;
    if (has_liquid) {
        hs_brief_number(session, content, stem, "liquid.depth_m", _("liquid, depth"), who, "m",
                        0.01);
        hs_brief_number(session, content, stem, "liquid.density_kg_m3", _("liquid, kg per m3"),
                        who, "", 10.0);
    }
    GtkWidget *button =
        hs_row_button(has_liquid ? _("Pour the liquid away") : _("Add a liquid"), name,
                      G_CALLBACK(on_liquid), session, NULL);
    g_object_set_data_full(G_OBJECT(button), "hs-stem", g_strdup(stem), g_free);
    gtk_widget_add_css_class(button, "flat");
    gtk_widget_set_halign(button, GTK_ALIGN_END);
    gtk_box_append(content, button);
}

/* ---- one part ------------------------------------------------------------------------------ */

static void
part_rows(HsSession *session, GtkBox *content, int i)
{
    const char *const known[] = {"", "weighed", "label", "estimated", NULL};
    const char *const words[] = {_("not said"), _("weighed"), _("from a label"), _("estimated"),
                                 NULL};
    const hs_document *document = hs_session_document(session);
    g_autofree char *stem = g_strdup_printf("load.parts[%d]", i);
    g_autofree char *shape_path = g_strdup_printf("%s.shape", stem);
    g_autofree char *id_path = g_strdup_printf("%s.id", stem);
    g_autofree char *known_path = g_strdup_printf("%s.known", stem);
    const char *shape = hs_field_text(document, shape_path),
               *id = hs_field_text(document, id_path);
    g_autofree char *who = g_strdup_printf(_("Part %s"), id ? id : "?");
    g_autofree char *known_name = g_strdup_printf(_("%s, how known"), who);

    gtk_box_append(content, hs_row_heading(who));
    gtk_box_append(content, shape_row(session, stem, shape ? shape : "point", who));
    hs_brief_number(session, content, stem, "mass_kg", _("mass"), who, "kg", 0.5);
    gtk_box_append(content, hs_choice_row_new(session, _("known from"), known_name, known_path,
                                              HS_CHOICE_WORD, known, words));
    hs_brief_number(session, content, stem, "mass_tol_kg", _("plus or minus"), who, "kg", 0.1);
    size_rows(session, content, stem, shape ? shape : "point", who);
    hs_brief_number(session, content, stem, "centre_m[0]", _("centre, ahead"), who, "m", 0.01);
    hs_brief_number(session, content, stem, "centre_m[1]", _("centre, left"), who, "m", 0.01);
    hs_brief_number(session, content, stem, "centre_m[2]", _("centre, up"), who, "m", 0.01);
    liquid_rows(session, content, stem, shape ? shape : "point", who);
    if (hs_field_length(document, "load.parts") > 1) {
        g_autofree char *remove = g_strdup_printf(_("Take part %s away"), id ? id : "?");
        gtk_box_append(content, hs_row_remove(session, remove, stem));
    }
}

static void
on_add_part(GtkWidget *button, gpointer session)
{
    const hs_document *document = hs_session_document(session);
    g_autofree char *id = hs_free_id(document, "load.parts", "part");
    g_autofree char *path =
        g_strdup_printf("load.parts[%d]", hs_field_length(document, "load.parts"));
    g_autofree char *json =
        g_strdup_printf("{\"id\": \"%s\", \"shape\": \"box\", \"size_m\": [0.2, 0.2, 0.2], "
                        "\"centre_m\": [0, 0, 0.1], \"mass_kg\": 1, \"known\": \"estimated\"}",
                        id);
    hs_edit *edit = hs_edit_new(_("Add a part"));

    if (hs_field_node(document, "load.parts") == NULL)
        hs_edit_set(edit, "load.parts", hs_change_node("[]"));
    hs_edit_insert(edit, path, hs_change_node(json));
    hs_change_commit(button, session, edit);
}

void
hs_brief_parts(HsSession *session, GtkBox *content)
{
    int n = hs_field_length(hs_session_document(session), "load.parts");

    for (int i = 0; i < n; i++)
        part_rows(session, content, i);
    gtk_box_append(
        content, hs_row_button(_("Add a part"), NULL, G_CALLBACK(on_add_part), session, NULL));
}

/* ---- grips --------------------------------------------------------------------------------- */

/* The list of a bearer without a grip; NULL when nothing is left. */
static JsonNode *
grips_without(const hs_document *document, const char *list, const char *grip)
{
    JsonArray *left = json_array_new();

    for (int i = 0; i < hs_field_length(document, list); i++) {
        g_autofree char *path = g_strdup_printf("%s[%d]", list, i);
        const char *held = hs_field_text(document, path);
        if (g_strcmp0(held, grip) != 0)
            json_array_add_string_element(left, held);
    }
    if (json_array_get_length(left) == 0) {
        json_array_unref(left);
        return NULL;
    }
    JsonNode *node = json_node_new(JSON_NODE_ARRAY);
    json_node_take_array(node, left);
    return node;
}

/* Whoever holds it lets go; the only grip of somebody stays. */
static void
on_remove_grip(GtkWidget *button, HsSession *session)
{
    const hs_document *document = hs_session_document(session);
    const char *grip = g_object_get_data(G_OBJECT(button), "hs-grip");
    hs_edit *edit = hs_edit_new(_("Take a grip away"));

    for (int o = 0; o < hs_field_length(document, "options"); o++) {
        g_autofree char *bearers = g_strdup_printf("options[%d].bearers", o);
        for (int b = 0; b < hs_field_length(document, bearers); b++) {
            g_autofree char *list = g_strdup_printf("%s[%d].grips", bearers, b);
            JsonNode *left = grips_without(document, list, grip);
            if (left == NULL) {
                g_autofree char *text =
                    g_strdup_printf(_("Grip %s is the only one that a bearer holds: give the "
                                      "bearer another one first."),
                                    grip);
                hs_notice_say(button, text);
                hs_edit_free(edit);
                return;
            }
            hs_edit_set(edit, list, left);
        }
    }
    for (int i = 0; i < hs_field_length(document, "load.grips"); i++) {
        g_autofree char *id = g_strdup_printf("load.grips[%d].id", i);
        g_autofree char *path = g_strdup_printf("load.grips[%d]", i);
        if (g_strcmp0(hs_field_text(document, id), grip) == 0) {
            hs_edit_remove(edit, path);
            break;
        }
    }
    hs_change_commit(button, session, edit);
}

static GtkWidget *
remove_grip(HsSession *session, const char *id)
{
    g_autofree char *name = g_strdup_printf(_("Take grip %s away"), id);
    GtkWidget *button =
        hs_row_button(_("Remove"), name, G_CALLBACK(on_remove_grip), session, NULL);

    g_object_set_data_full(G_OBJECT(button), "hs-grip", g_strdup(id), g_free);
    gtk_widget_add_css_class(button, "flat");
    gtk_widget_set_halign(button, GTK_ALIGN_END);
    return button;
}

/* Above the others' mean height, in front: moved by its numbers or on the picture. */
static void
on_add_grip(GtkWidget *button, gpointer session)
{
    const hs_document *document = hs_session_document(session);
    int n = hs_field_length(document, "load.grips");
    g_autofree char *id = hs_free_id(document, "load.grips", "grip");
    g_autofree char *path = g_strdup_printf("load.grips[%d]", n);
    g_autofree char *height = g_strdup_printf("load.grips[%d].at_m[2]", n - 1);
    g_autofree char *up = hs_number_text(hs_or(hs_field_number(document, height), 0.2));
    g_autofree char *json =
        g_strdup_printf("{\"id\": \"%s\", \"at_m\": [0.2, 0, %s], \"kind\": \"handle\", "
                        "\"hands\": 2}",
                        id, up);
    hs_edit *edit = hs_edit_new(_("Add a grip"));

    hs_edit_insert(edit, path, hs_change_node(json));
    hs_change_commit(button, session, edit);
}

static void
grip_rows(HsSession *session, GtkBox *content, int i)
{
    const char *const kinds[] = {"handle", "edge", "hook", "strap", "pad", "cradle", NULL};
    const char *const kind_words[] = {hs_words_grip(HS_GRIP_HANDLE),
                                      hs_words_grip(HS_GRIP_EDGE),
                                      hs_words_grip(HS_GRIP_HOOK),
                                      hs_words_grip(HS_GRIP_STRAP),
                                      hs_words_grip(HS_GRIP_PAD),
                                      hs_words_grip(HS_GRIP_CRADLE),
                                      NULL};
    const char *const couplings[] = {"", "good", "fair", "poor", NULL};
    const char *const coupling_words[] = {_("not said"), _("good"), _("fair"), _("poor"), NULL};
    g_autofree char *stem = g_strdup_printf("load.grips[%d]", i);
    g_autofree char *id_path = g_strdup_printf("%s.id", stem);
    g_autofree char *kind = g_strdup_printf("%s.kind", stem);
    g_autofree char *coupling = g_strdup_printf("%s.coupling", stem);
    const char *id = hs_field_text(hs_session_document(session), id_path);
    g_autofree char *who = g_strdup_printf(_("Grip %s"), id ? id : "?");
    g_autofree char *kind_name = g_strdup_printf(_("%s, kind"), who);
    g_autofree char *coupling_name = g_strdup_printf(_("%s, hold"), who);

    g_autofree char *hands = g_strdup_printf("%s.hands", stem);
    g_autofree char *hands_name = g_strdup_printf(_("%s, hands"), who);
    const char *const hand_ids[] = {"1", "2", NULL};
    const char *const hand_words[] = {_("one hand"), _("both hands"), NULL};

    gtk_box_append(content, hs_row_heading(who));
    gtk_box_append(content, hs_choice_row_new(session, _("room for"), hands_name, hands,
                                              HS_CHOICE_NUMBER, hand_ids, hand_words));
    gtk_box_append(content, hs_choice_row_new(session, _("kind"), kind_name, kind,
                                              HS_CHOICE_WORD, kinds, kind_words));
    gtk_box_append(content,
                   hs_choice_row_new(session, _("hold of the hand"), coupling_name, coupling,
                                     HS_CHOICE_WORD, couplings, coupling_words));
    hs_brief_number(session, content, stem, "at_m[0]", _("ahead"), who, "m", 0.01);
    hs_brief_number(session, content, stem, "at_m[1]", _("left"), who, "m", 0.01);
    hs_brief_number(session, content, stem, "at_m[2]", _("up"), who, "m", 0.01);
    hs_brief_number(session, content, stem, "friction", _("friction"), who, "", 0.05);
    hs_brief_number(session, content, stem, "rating_N", _("it bears"), who, "N", 10.0);
    hs_brief_number(session, content, stem, "squeeze_limit_N", _("squeeze it may take"), who,
                    "N", 10.0);
    if (hs_field_length(hs_session_document(session), "load.grips") > 1)
        gtk_box_append(content, remove_grip(session, id ? id : "?"));
}

void
hs_brief_grips(HsSession *session, GtkBox *content)
{
    int n = hs_field_length(hs_session_document(session), "load.grips");

    for (int i = 0; i < n; i++)
        grip_rows(session, content, i);
    gtk_box_append(
        content, hs_row_button(_("Add a grip"), NULL, G_CALLBACK(on_add_grip), session, NULL));
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  which fields stand under Load?
 * Answer:    its drawing, what it weighs, its parts, the scale readings, the grips.
 * Not here:  the catalogue (load_picker.c), mass and CG themselves (core/load/). */
#include "brief.h"

#include "change.h"
#include "field.h"
#include "heavy_side.h"
#include "load_picker.h"
#include "look.h"
#include "quantity.h"
#include "rows.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static char *
load_summary(HsSession *session)
{
    const hs_results *results = hs_session_results(session);

    return results != NULL ? hs_quantity_text(results->load.mass_kg, "kg", hs_look_units())
                           : g_strdup(_("not known"));
}

static char *
load_shape(HsSession *session)
{
    const hs_document *document = hs_session_document(session);
    GString *shape = g_string_new(NULL);

    for (int i = 0; i < hs_field_length(document, "load.parts"); i++) {
        g_autofree char *path = g_strdup_printf("load.parts[%d].shape", i);
        g_autofree char *liquid = g_strdup_printf("load.parts[%d].liquid", i);
        const char *word = hs_field_text(document, path);
        g_string_append_printf(shape, "%s%d ", word ? word : "",
                               hs_field_node(document, liquid) != NULL);
    }
    for (int i = 0; i < hs_field_length(document, "load.weighings"); i++) {
        g_autofree char *path = g_strdup_printf("load.weighings[%d].readings", i);
        g_string_append_printf(shape, "w%d ", hs_field_length(document, path));
    }
    g_string_append_printf(shape, "g%d", hs_field_length(document, "load.grips"));
    return g_string_free(shape, FALSE);
}

static void
number(HsSession *session,
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

static void
size_rows(
    HsSession *session, GtkBox *content, const char *stem, const char *shape, const char *who)
{
    if (g_str_equal(shape, "box") || g_str_equal(shape, "wedge")) {
        number(session, content, stem, "size_m[0]", _("long"), who, "m", 0.01);
        number(session, content, stem, "size_m[1]", _("wide"), who, "m", 0.01);
        number(session, content, stem, "size_m[2]", _("high"), who, "m", 0.01);
    } else if (!g_str_equal(shape, "point")) {
        number(session, content, stem, "radius_m", _("radius"), who, "m", 0.01);
        if (g_str_equal(shape, "tube"))
            number(session, content, stem, "inner_radius_m", _("inner radius"), who, "m", 0.01);
        if (!g_str_equal(shape, "sphere") && !g_str_equal(shape, "hemisphere"))
            number(session, content, stem, "length_m", _("long"), who, "m", 0.01);
    }
}

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
    g_autofree char *liquid = g_strdup_printf("%s.liquid", stem);
    const char *shape = hs_field_text(document, shape_path),
               *id = hs_field_text(document, id_path);
    g_autofree char *who = g_strdup_printf(_("Part %s"), id ? id : "?");
    g_autofree char *known_name = g_strdup_printf(_("%s, how known"), who);

    gtk_box_append(content, hs_row_heading(who));
    number(session, content, stem, "mass_kg", _("mass"), who, "kg", 0.5);
    gtk_box_append(content, hs_choice_row_new(session, _("known from"), known_name, known_path,
                                              HS_CHOICE_WORD, known, words));
    number(session, content, stem, "mass_tol_kg", _("plus or minus"), who, "kg", 0.1);
    size_rows(session, content, stem, shape ? shape : "point", who);
    number(session, content, stem, "centre_m[0]", _("centre, ahead"), who, "m", 0.01);
    number(session, content, stem, "centre_m[1]", _("centre, left"), who, "m", 0.01);
    number(session, content, stem, "centre_m[2]", _("centre, up"), who, "m", 0.01);
    if (hs_field_node(document, liquid) != NULL) {
        number(session, content, stem, "liquid.depth_m", _("liquid, depth"), who, "m", 0.01);
        number(session, content, stem, "liquid.density_kg_m3", _("liquid, kg per m3"), who, "",
               10.0);
    }
}

/* ---- weighing ------------------------------------------------------------------------------ */

static void
on_weigh(GtkWidget *button, gpointer data)
{
    HsSession *session = data;
    const hs_document *document = hs_session_document(session);
    hs_edit *edit = hs_edit_new(_("Weigh the load"));
    int n = hs_field_length(document, "load.weighings");
    g_autofree char *path = g_strdup_printf("load.weighings[%d]", n);
    const hs_results *results = hs_session_results(session);
    double half_kg = results != NULL ? round(results->load.mass_kg * 5.0) / 10.0 : 10.0;
    g_autofree char *kg = hs_number_text(half_kg);
    g_autofree char *json =
        g_strdup_printf("{\"tilt_deg\": %s, \"about\": \"y\", \"readings\": [{\"at_m\": [-0.2, "
                        "0], \"reading_kg\": %s},"
                        " {\"at_m\": [0.2, 0], \"reading_kg\": %s}]}",
                        n == 0 ? "0" : "10", kg, kg);

    if (hs_field_node(document, "load.weighings") == NULL)
        hs_edit_set(edit, "load.weighings", hs_change_node("[]"));
    hs_edit_insert(edit, path, hs_change_node(json));
    hs_change_commit(button, session, edit);
}

static void
on_no_weighing(GtkWidget *button, gpointer session)
{
    hs_edit *edit = hs_edit_new(_("Take the scale readings away"));

    hs_edit_unset(edit, "load.weighings");
    hs_change_commit(button, session, edit);
}

static void
weighing_rows(HsSession *session, GtkBox *content)
{
    const hs_document *document = hs_session_document(session);
    int n = hs_field_length(document, "load.weighings");

    gtk_box_append(content, hs_row_heading(_("Scale readings")));
    if (n == 0)
        gtk_box_append(content, hs_row_hint(_("Two scales under the ends give mass and CG; one "
                                              "end raised gives its height.")));
    for (int i = 0; i < n; i++) {
        g_autofree char *stem = g_strdup_printf("load.weighings[%d]", i);
        g_autofree char *readings = g_strdup_printf("%s.readings", stem);
        g_autofree char *who = g_strdup_printf(_("Weighing %d"), i + 1);
        number(session, content, stem, "tilt_deg", _("front raised by"), who, "deg", 1.0);
        for (int k = 0; k < hs_field_length(document, readings); k++) {
            g_autofree char *each = g_strdup_printf("%s[%d]", readings, k);
            g_autofree char *scale = g_strdup_printf(_("Weighing %d, scale %d"), i + 1, k + 1);
            number(session, content, each, "at_m[0]", _("scale, ahead"), scale, "m", 0.01);
            number(session, content, each, "at_m[1]", _("scale, left"), scale, "m", 0.01);
            number(session, content, each, "reading_kg", _("reading"), scale, "kg", 0.1);
        }
    }
    if (n > 0)
        gtk_box_append(content, hs_heavy_side_new(session));
    gtk_box_append(content, hs_row_button(n == 0 ? _("Weigh") : _("Weigh with one end raised"),
                                          NULL, G_CALLBACK(on_weigh), session, NULL));
    if (n > 0)
        gtk_box_append(content, hs_row_button(_("Take the readings away"), NULL,
                                              G_CALLBACK(on_no_weighing), session, NULL));
}

/* ---- grips --------------------------------------------------------------------------------- */

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

    gtk_box_append(content, hs_row_heading(who));
    gtk_box_append(content, hs_choice_row_new(session, _("kind"), kind_name, kind,
                                              HS_CHOICE_WORD, kinds, kind_words));
    gtk_box_append(content,
                   hs_choice_row_new(session, _("hold of the hand"), coupling_name, coupling,
                                     HS_CHOICE_WORD, couplings, coupling_words));
    number(session, content, stem, "at_m[0]", _("ahead"), who, "m", 0.01);
    number(session, content, stem, "at_m[1]", _("left"), who, "m", 0.01);
    number(session, content, stem, "at_m[2]", _("up"), who, "m", 0.01);
    number(session, content, stem, "friction", _("friction"), who, "", 0.05);
    number(session, content, stem, "rating_N", _("it bears"), who, "N", 10.0);
    number(session, content, stem, "squeeze_limit_N", _("squeeze it may take"), who, "N", 10.0);
}

static void
load_build(HsSession *session, GtkBox *content)
{
    const hs_document *document = hs_session_document(session);

    gtk_box_append(content, hs_load_picker_new(session));
    gtk_box_append(content, hs_text_row_new(session, _("Load"), "load.name", 1));
    for (int i = 0; i < hs_field_length(document, "load.parts"); i++)
        part_rows(session, content, i);
    weighing_rows(session, content);
    for (int i = 0; i < hs_field_length(document, "load.grips"); i++)
        grip_rows(session, content, i);
}

const hs_brief_part hs_brief_load = {"load", N_("Load"), load_summary, load_shape, load_build};

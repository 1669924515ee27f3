/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  which fields stand under Load?
 * Answer:    its drawing, what it weighs, its parts, the scale readings, the grips.
 * Not here:  the catalogue (load_picker.c), mass and CG themselves (core/load/). */
#include "brief.h"

#include "brief_parts.h"
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
        hs_brief_number(session, content, stem, "tilt_deg", _("front raised by"), who, "deg",
                        1.0);
        for (int k = 0; k < hs_field_length(document, readings); k++) {
            g_autofree char *each = g_strdup_printf("%s[%d]", readings, k);
            g_autofree char *scale = g_strdup_printf(_("Weighing %d, scale %d"), i + 1, k + 1);
            hs_brief_number(session, content, each, "at_m[0]", _("scale, ahead"), scale, "m",
                            0.01);
            hs_brief_number(session, content, each, "at_m[1]", _("scale, left"), scale, "m",
                            0.01);
            hs_brief_number(session, content, each, "reading_kg", _("reading"), scale, "kg",
                            0.1);
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

static void
load_build(HsSession *session, GtkBox *content)
{
    gtk_box_append(content, hs_load_picker_new(session));
    gtk_box_append(content, hs_text_row_new(session, _("Load"), "load.name", 1));
    hs_brief_parts(session, content);
    weighing_rows(session, content);
    hs_brief_grips(session, content);
}

const hs_brief_part hs_brief_load = {"load", N_("Load"), load_summary, load_shape, load_build};

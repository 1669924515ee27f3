/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  which fields stand under Suit?
 * Answer:    the data sheet of each suit of the document; what it does not say stays empty and is never taken as kind.
 * Not here:  who wears it (brief_bearers.c). */
#include "brief.h"

#include "change.h"
#include "field.h"
#include "look.h"
#include "quantity.h"
#include "rows.h"

#include <glib/gi18n-lib.h>

typedef struct {
    const char *label, *key, *unit;
    double step;
} suit_field;

static char *
suit_summary(HsSession *session)
{
    const hs_document *document = hs_session_document(session);
    int n = hs_field_length(document, "suits");
    const char *kind = hs_field_text(document, "suits[0].kind");
    double gain = hs_field_number(document, "suits[0].gain.hands");

    if (n == 0)
        return g_strdup(_("none"));
    if (n > 1)
        return g_strdup_printf(_("%d suits"), n);
    if (g_strcmp0(kind, "powered") == 0 && hs_has(gain)) {
        g_autofree char *figure = hs_quantity_number(gain, "", hs_look_units());
        return g_strdup_printf(_("powered, gain %s"), figure);
    }
    return g_strdup(g_strcmp0(kind, "powered") == 0 ? _("powered") : _("springs"));
}

static char *
suit_shape(HsSession *session)
{
    const hs_document *document = hs_session_document(session);
    int n = hs_field_length(document, "suits");
    GString *shape = g_string_new(NULL);

    for (int i = 0; i < n; i++) {
        g_autofree char *kind = g_strdup_printf("suits[%d].kind", i);
        g_autofree char *rating = g_strdup_printf("suits[%d].rating", i);
        g_autofree char *torque = g_strdup_printf("suits[%d].torque", i);
        g_autofree char *effectors = g_strdup_printf("suits[%d].effectors", i);
        const char *word = hs_field_text(document, kind);
        g_string_append_printf(
            shape, "%s %d %d %d;", word ? word : "", hs_field_length(document, rating),
            hs_field_length(document, torque), hs_field_length(document, effectors));
    }
    return g_string_free(shape, FALSE);
}

static void
field_rows(HsSession *session, GtkBox *content, int i, const suit_field *fields, guint n)
{
    for (guint k = 0; k < n; k++) {
        g_autofree char *path = g_strdup_printf("suits[%d].%s", i, fields[k].key);
        gtk_box_append(content, hs_quantity_row_new(session, _(fields[k].label), NULL, path,
                                                    fields[k].unit, fields[k].step));
    }
}

static const suit_field every_suit[] = {
    {N_("Mass of the suit"), "mass_kg", "kg", 0.5},
    {N_("Getting out alone"), "release_self_s", "s", 1.0},
    {N_("Getting out with a helper"), "release_helper_s", "s", 1.0},
    {N_("Donning"), "donning_min", "min", 1.0},
    {N_("Least stature of a wearer"), "wearer_stature_m[0]", "m", 0.01},
    {N_("Greatest stature of a wearer"), "wearer_stature_m[1]", "m", 0.01},
    {N_("Least mass of a wearer"), "wearer_mass_kg[0]", "kg", 1.0},
    {N_("Greatest mass of a wearer"), "wearer_mass_kg[1]", "kg", 1.0},
    {N_("Steepest slope allowed"), "slope_deg", "deg", 1.0},
};

static const suit_field powered_suit[] = {
    {N_("Gain, hands"), "gain.hands", "", 0.5},
    {N_("Gain, trunk"), "gain.trunk", "", 0.5},
    {N_("Residual, hands"), "residual_N.hands", "N", 1.0},
    {N_("Residual, trunk"), "residual_N.trunk", "N", 1.0},
    {N_("Part of its weight it carries"), "self_carried", "", 0.05},
    {N_("Centre, behind the ankles"), "centre_m[0]", "m", 0.01},
    {N_("Centre, up"), "centre_m[1]", "m", 0.01},
    {N_("Lowest hands"), "hand_height_m[0]", "m", 0.01},
    {N_("Highest hands"), "hand_height_m[1]", "m", 0.01},
    {N_("Width"), "width_m", "m", 0.01},
    {N_("Height"), "height_m", "m", 0.01},
    {N_("Sinks at"), "sink_m_s", "m_s", 0.01},
    {N_("Arms stay locked for"), "lock_s", "s", 10.0},
    {N_("Brakes close after"), "brake_s", "s", 0.01},
    {N_("Power, idle"), "power.idle_W", "W", 5.0},
    {N_("Power to hold, W per Nm"), "power.hold_W_per_Nm", "", 0.1},
    {N_("Measured at a torque of"), "power.hold_at_Nm", "Nm", 10.0},
    {N_("Efficiency of lifting"), "power.lift_efficiency", "", 0.05},
    {N_("Battery"), "power.battery_Wh", "Wh", 50.0},
    {N_("Reserve, part of it"), "power.reserve", "", 0.05},
    {N_("Battery change"), "power.swap_min", "min", 1.0},
};

static void
rating_rows(HsSession *session, GtkBox *content, int i)
{
    g_autofree char *list = g_strdup_printf("suits[%d].rating", i);
    int n = hs_field_length(hs_session_document(session), list);

    gtk_box_append(content, hs_row_heading(_("Rating: payload by reach")));
    for (int k = 0; k < n; k++) {
        g_autofree char *reach = g_strdup_printf("%s[%d].reach_m", list, k);
        g_autofree char *payload = g_strdup_printf("%s[%d].payload_kg", list, k);
        g_autofree char *reach_name = g_strdup_printf(_("Rating %d, reach"), k + 1);
        g_autofree char *payload_name = g_strdup_printf(_("Rating %d, payload"), k + 1);
        gtk_box_append(
            content, hs_quantity_row_new(session, _("at reach"), reach_name, reach, "m", 0.05));
        gtk_box_append(content, hs_quantity_row_new(session, _("payload"), payload_name,
                                                    payload, "kg", 1.0));
    }
    if (n == 1)
        gtk_box_append(
            content,
            hs_row_hint(_(
                "One point is good for that reach and nearer, and says nothing farther out.")));
}

static void
torque_rows(HsSession *session, GtkBox *content, int i)
{
    g_autofree char *list = g_strdup_printf("suits[%d].torque", i);

    gtk_box_append(content, hs_row_heading(_("Support by angle, both sides together")));
    for (int k = 0; k < hs_field_length(hs_session_document(session), list); k++) {
        g_autofree char *angle = g_strdup_printf("%s[%d].angle_deg", list, k);
        g_autofree char *moment = g_strdup_printf("%s[%d].moment_Nm", list, k);
        g_autofree char *angle_name = g_strdup_printf(_("Support %d, angle"), k + 1);
        g_autofree char *moment_name = g_strdup_printf(_("Support %d, moment"), k + 1);
        gtk_box_append(content,
                       hs_quantity_row_new(session, _("at"), angle_name, angle, "deg", 5.0));
        gtk_box_append(
            content, hs_quantity_row_new(session, _("gives"), moment_name, moment, "Nm", 1.0));
    }
}

static void
effector_rows(HsSession *session, GtkBox *content, int i)
{
    g_autofree char *list = g_strdup_printf("suits[%d].effectors", i);

    for (int k = 0; k < hs_field_length(hs_session_document(session), list); k++) {
        g_autofree char *id = g_strdup_printf("%s[%d].id", list, k);
        g_autofree char *friction = g_strdup_printf("%s[%d].friction", list, k);
        g_autofree char *force = g_strdup_printf("%s[%d].max_force_N", list, k);
        g_autofree char *holds = g_strdup_printf("%s[%d].holds_without_power", list, k);
        const char *name = hs_field_text(hs_session_document(session), id);
        g_autofree char *heading = g_strdup_printf(_("Effector: %s"), name ? name : "?");
        g_autofree char *friction_name = g_strdup_printf(_("%s, friction"), heading);
        g_autofree char *force_name = g_strdup_printf(_("%s, greatest force"), heading);
        gtk_box_append(content, hs_row_heading(heading));
        gtk_box_append(content, hs_quantity_row_new(session, _("Friction"), friction_name,
                                                    friction, "", 0.05));
        gtk_box_append(content, hs_quantity_row_new(session, _("Greatest force"), force_name,
                                                    force, "N", 10.0));
        gtk_box_append(content, hs_tri_row_new(session, _("Holds without power"), holds));
    }
}

static void
powered_rows(HsSession *session, GtkBox *content, int i)
{
    const char *const losses[] = {"", "lock", "descend", "limp", NULL};
    const char *const words[] = {_("not known"), _("arms lock"), _("arms sink"),
                                 _("everything goes limp"), NULL};
    g_autofree char *loss = g_strdup_printf("suits[%d].on_power_loss", i);
    g_autofree char *walks = g_strdup_printf("suits[%d].walks_without_power", i);
    g_autofree char *measured = g_strdup_printf("suits[%d].gain_measured", i);

    gtk_box_append(content, hs_tri_row_new(session, _("Gain was measured"), measured));
    gtk_box_append(content, hs_choice_row_new(session, _("Without power"), NULL, loss,
                                              HS_CHOICE_WORD, losses, words));
    gtk_box_append(content, hs_tri_row_new(session, _("Can be walked without power"), walks));
    field_rows(session, content, i, powered_suit, G_N_ELEMENTS(powered_suit));
    rating_rows(session, content, i);
    effector_rows(session, content, i);
}

static void
suit_rows(HsSession *session, GtkBox *content, int i)
{
    g_autofree char *kind = g_strdup_printf("suits[%d].kind", i);
    g_autofree char *name = g_strdup_printf("suits[%d].name", i);
    g_autofree char *source = g_strdup_printf("suits[%d].source", i);
    g_autofree char *stairs = g_strdup_printf("suits[%d].stairs", i);
    g_autofree char *wet = g_strdup_printf("suits[%d].wet", i);
    g_autofree char *heading = g_strdup_printf(_("Suit %d"), i + 1);
    const char *word = hs_field_text(hs_session_document(session), kind);

    gtk_box_append(content, hs_row_heading(heading));
    gtk_box_append(content, hs_text_row_new(session, _("Name"), name, 1));
    gtk_box_append(content, hs_text_row_new(session, _("Data from"), source, 1));
    gtk_box_append(content, hs_tri_row_new(session, _("Stairs allowed"), stairs));
    gtk_box_append(content, hs_tri_row_new(session, _("May be used wet"), wet));
    field_rows(session, content, i, every_suit, G_N_ELEMENTS(every_suit));
    if (g_strcmp0(word, "powered") == 0)
        powered_rows(session, content, i);
    else
        torque_rows(session, content, i);
}

static void
suit_build(HsSession *session, GtkBox *content)
{
    int n = hs_field_length(hs_session_document(session), "suits");

    gtk_box_append(
        content,
        hs_row_hint(
            n == 0
                ? _("No suit yet: choose one for a bearer under Bearers.")
                : _("What the data sheet does not say stays empty: it is then not judged.")));
    for (int i = 0; i < n; i++)
        suit_rows(session, content, i);
}

const hs_brief_part hs_brief_suit = {"suit", N_("Suit"), suit_summary, suit_shape, suit_build};

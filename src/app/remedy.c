/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  can a finding's remedy be tried by one button?
 * Answer:    hs_remedy_edit(): the edit, where the remedy is a number of the document.
 * Not here:  the remedies themselves (core), their sentences (model/words.c). */
#include "remedy.h"

#include "field.h"
#include "look.h"
#include "quantity.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static hs_edit *
try_reach(int option, double reach_m, char **ret_label)
{
    double to_m = floor(reach_m * 1000.0 + 1e-6) / 1000.0;
    g_autofree char *figure = hs_quantity_text(to_m, "m", hs_look_units());
    g_autofree char *path = g_strdup_printf("options[%d].reach_m", option);
    hs_edit *edit;

    *ret_label = g_strdup_printf(_("Try reach %s"), figure);
    edit = hs_edit_new(*ret_label);
    hs_edit_set_number(edit, path, to_m);
    return edit;
}

static hs_edit *
try_number(
    const char *format, const char *path, double value, const char *unit, char **ret_label)
{
    g_autofree char *figure = hs_quantity_text(value, unit, hs_look_units());
    g_auto(GStrv) around = g_strsplit(format, "%s", 2);
    hs_edit *edit;

    *ret_label = g_strconcat(around[0], figure, around[1], NULL);
    edit = hs_edit_new(*ret_label);
    hs_edit_set_number(edit, path, value);
    return edit;
}

/* A number of the document times k, rounded down to whole steps; FALSE where nothing stands there. */
static gboolean
scale_number(const hs_document *document, hs_edit *edit, const char *path, double k)
{
    double value = hs_field_number(document, path);

    if (!hs_has(value))
        return FALSE;
    hs_edit_set_number(edit, path, floor(value * k * 1000.0 + 1e-6) / 1000.0);
    return TRUE;
}

/* A lighter load: every part, and every reading of a scale, by the same factor. Not where a liquid has its own mass. */
static hs_edit *
try_mass(HsSession *session, double most_kg, double now_kg, char **ret_label)
{
    const hs_document *document = hs_session_document(session);
    double k = most_kg / now_kg;
    g_autofree char *figure = hs_quantity_text(most_kg, "kg", hs_look_units());

    if (!(k > 0.0) || !(k < 1.0))
        return NULL;
    *ret_label = g_strdup_printf(_("Try a load of %s"), figure);
    hs_edit *edit = hs_edit_new(*ret_label);
    gboolean done = TRUE;
    for (int i = 0; done && i < hs_field_length(document, "load.parts"); i++) {
        g_autofree char *mass = g_strdup_printf("load.parts[%d].mass_kg", i);
        g_autofree char *liquid = g_strdup_printf("load.parts[%d].liquid", i);
        done = hs_field_node(document, liquid) == NULL && scale_number(document, edit, mass, k);
    }
    for (int i = 0; done && i < hs_field_length(document, "load.weighings"); i++) {
        g_autofree char *readings = g_strdup_printf("load.weighings[%d].readings", i);
        for (int r = 0; done && r < hs_field_length(document, readings); r++) {
            g_autofree char *reading = g_strdup_printf("%s[%d].reading_kg", readings, r);
            done = scale_number(document, edit, reading, k);
        }
    }
    if (done)
        return edit;
    hs_edit_free(edit);
    g_clear_pointer(ret_label, g_free);
    return NULL;
}

/* Another height at the finding's point, by so much. */
static hs_edit *
try_height(HsSession *session, const hs_finding *finding, double by_m, char **ret_label)
{
    int point = hs_has(finding->route) ? (int)round(finding->route) - 1 : -1;
    g_autofree char *path = g_strdup_printf("route.points[%d].z_m", point);
    double now_m = point >= 0 ? hs_field_number(hs_session_document(session), path) : HS_ABSENT;
    double to_m = by_m > 0.0 ? ceil((now_m + by_m) * 1000.0 - 1e-6) / 1000.0
                             : floor((now_m + by_m) * 1000.0 + 1e-6) / 1000.0;

    if (!hs_has(now_m) || fabs(finding->route - round(finding->route)) > 1e-6)
        return NULL;
    return try_number(_("Try the load's base at %s there"), path, to_m, "m", ret_label);
}

static hs_edit *
try_suit(HsSession *session,
         int option,
         const hs_finding *finding,
         const char *key,
         double value,
         const char *unit,
         char **ret_label)
{
    const hs_results *results = hs_session_results(session);
    int suit = finding->bearer >= 0
                   ? results->options[option].asked->bearers[finding->bearer].suit
                   : -1;
    g_autofree char *path = g_strdup_printf("suits[%d].%s", suit, key);

    if (suit < 0)
        return NULL;
    if (!g_str_equal(key, "reserve"))
        return try_number(_("Try a battery of %s"), path, value, unit, ret_label);
    g_autofree char *share = hs_quantity_text(100.0 * value, unit, hs_look_units());
    *ret_label = g_strdup_printf(_("Try a reserve of %s"), share);
    hs_edit *edit = hs_edit_new(*ret_label);
    hs_edit_set_number(edit, path, value);
    return edit;
}

/* Remedies of the task, one number each. */
static hs_edit *
try_task(HsSession *session, const hs_finding *finding, const char *name, char **ret_label)
{
    const double *number = finding->remedy.number;

    if (g_str_has_prefix(name, "limits_remedy_mass") || g_str_equal(name, "body_remedy_mass"))
        return try_mass(session, number[0], number[1], ret_label);
    if (g_str_equal(name, "body_remedy_height"))
        return try_height(session, finding, number[0] - number[1], ret_label);
    if (g_str_equal(name, "rating_remedy_raise"))
        return try_height(session, finding, number[0], ret_label);
    if (g_str_equal(name, "rating_remedy_lower"))
        return try_height(session, finding, -number[0], ret_label);
    if (g_str_equal(name, "day_mass_remedy") || g_str_equal(name, "day_energy_remedy") ||
        g_str_equal(name, "day_energy_remedy_rest"))
        return try_number(_("Try %s cycles an hour"), "work.cycles_per_hour", number[0], "",
                          ret_label);
    if (g_str_equal(name, "floor_remedy"))
        return try_number(_("Try a floor with a friction of %s"), "site.friction", number[0],
                          "", ret_label);
    return NULL;
}

hs_edit *
hs_remedy_edit(HsSession *session, int option, const hs_finding *finding, char **ret_label)
{
    const char *name = finding != NULL ? hs_reason_name(finding->remedy.reason) : "";
    double figure = finding != NULL ? finding->remedy.number[0] : HS_ABSENT;

    if (finding == NULL || finding->remedy.reason == HS_REASON_none || !hs_has(figure) ||
        option >= hs_field_length(hs_session_document(session), "options"))
        return NULL;
    if (g_str_has_suffix(name, "remedy_reach") || g_str_has_suffix(name, "fix_reach"))
        return try_reach(option, figure, ret_label);
    if (g_str_equal(name, "placing_remedy") && hs_has(finding->route)) {
        g_autofree char *path =
            g_strdup_printf("route.points[%d].time_s", (int)round(finding->route) - 1);
        return try_number(_("Try %s for this leg"), path, figure, "s", ret_label);
    }
    if (g_str_equal(name, "wind_remedy"))
        return try_number(_("Try a gust of at most %s"), "site.wind_m_s", figure, "m_s",
                          ret_label);
    if (g_str_equal(name, "energy_remedy_battery"))
        return try_suit(session, option, finding, "battery_Wh", figure, "Wh", ret_label);
    if (g_str_equal(name, "energy_remedy_reserve"))
        return try_suit(session, option, finding, "reserve", ceil(figure * 1000.0) / 1000.0,
                        "pct", ret_label);
    return try_task(session, finding, name, ret_label);
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  can a finding's remedy be tried by one button?
 * Answer:    hs_remedy_edit(): the edit, where the remedy is a single number of the document.
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
    return NULL;
}

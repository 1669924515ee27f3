/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how does a finding fit into a cell?
 * Answer:    its figure, in brackets where the limit does not apply, and a few words why; keys of inputs by name.
 * Not here:  the whole sentence (words.h), which stands in the annex. */
#include "short.h"
#include "sheet_parts.h"
#include "translate.h"
#include "words.h"

#include <string.h>

#define MOST_LETTERS 44 /* of a clause that stands for a sentence */

/* A few words for a sentence that is often met; NULL for others. */
static const char *
known_reason(hs_reason reason)
{
    switch (reason) {
    case HS_REASON_limits_suit:
    case HS_REASON_niosh_suit:
    case HS_REASON_day_mass_suit:
        return _("suit");
    case HS_REASON_limits_unknown_felt:
        return _("felt force not known");
    case HS_REASON_limits_set_silent:
        return _("the set is silent");
    case HS_REASON_limits_team:
        return _("team");
    case HS_REASON_limits_team_size:
        return _("size of the team");
    case HS_REASON_limits_one_hand:
        return _("one hand");
    case HS_REASON_limits_kneeling:
        return _("kneeling");
    case HS_REASON_limits_hours:
    case HS_REASON_day_energy_hours:
        return _("hours a day");
    case HS_REASON_limits_light:
        return _("below 3 kg");
    case HS_REASON_iso_speed:
        return _("pace");
    case HS_REASON_iso_slope:
    case HS_REASON_limits_slope:
        return _("slope or steps");
    case HS_REASON_en_carry:
    case HS_REASON_mil_far:
    case HS_REASON_gb_far:
    case HS_REASON_day_mass_far:
        return _("length of the way");
    case HS_REASON_mil_high:
    case HS_REASON_gb_low:
        return _("height of the hands");
    case HS_REASON_gb_outside:
        return _("reach");
    case HS_REASON_dose_is:
    case HS_REASON_dose_more:
    case HS_REASON_dose_less:
        return _("no limit published");
    case HS_REASON_share_single:
    case HS_REASON_loss_single:
        return _("one bearer alone");
    case HS_REASON_share_no_rule:
        return _("no team rule chosen");
    case HS_REASON_loss_tips:
        return _("the load tips");
    case HS_REASON_hold_not_at_all:
        return _("cannot be held at all");
    case HS_REASON_roles_filled:
        return _("every job is filled");
    case HS_REASON_gates_yes:
        return _("all answered yes");
    case HS_REASON_scope_suit_within:
        return _("allowed by the suit's data");
    default:
        return NULL;
    }
}

/* Up to the first stop; cut between words where even that is long. */
static char *
first_clause(const char *text)
{
    const char *end = text;

    while (*end && !(strchr(".,;:", *end) && (end[1] == ' ' || end[1] == '\0')))
        end++;
    g_autofree char *clause = g_strndup(text, (gsize)(end - text));

    if (g_utf8_strlen(clause, -1) <= MOST_LETTERS)
        return g_steal_pointer(&clause);
    char *cut = g_utf8_offset_to_pointer(clause, MOST_LETTERS);

    while (cut > clause && *cut != ' ')
        cut--;
    *cut = '\0';
    return g_strdup_printf("%s …", clause);
}

char *
hs_sheet_short(const hs_finding *finding, hs_units units)
{
    gboolean is_scope = finding->status == HS_STATUS_NOT_JUDGED && finding->why == HS_WHY_SCOPE;
    const char *known = known_reason(finding->text.reason);

    if (finding->status == HS_STATUS_NONE || (hs_has(finding->value) && !known && !is_scope &&
                                              finding->status != HS_STATUS_NOT_JUDGED))
        return hs_words_figure(finding, units);
    g_autofree char *whole = hs_words_message(&finding->text, units);
    g_autofree char *why = known ? g_strdup(known) : first_clause(whole);
    hs_finding judged = *finding;

    judged.status = HS_STATUS_WITHIN; /* its figure without the sentence */
    g_autofree char *figure = hs_has(finding->value) ? hs_words_figure(&judged, units) : NULL;

    if (is_scope)
        return figure ? g_strdup_printf(_("(%s) does not apply: %s"), figure, why)
                      : g_strdup_printf(_("does not apply: %s"), why);
    if (finding->status == HS_STATUS_NOT_JUDGED)
        return g_strdup_printf(_("not judged: %s"), why);
    return figure ? g_steal_pointer(&figure) : g_steal_pointer(&why);
}

char *
hs_short_cell(const hs_finding *finding, hs_units units)
{
    g_autofree char *figure = hs_sheet_short(finding, units);
    const char *mark = hs_words_unconfirmed(finding);

    return mark != NULL ? g_strdup_printf("%s · %s", figure, mark) : g_steal_pointer(&figure);
}

gboolean
hs_sheet_is_shortened(const hs_finding *finding)
{
    return finding->status == HS_STATUS_NOT_JUDGED ||
           (finding->status != HS_STATUS_NONE && !hs_has(finding->value));
}

const char *
hs_sheet_input_name(const char *key)
{
    static const struct {
        const char *key, *name;
    } names[] = {{"mass_kg", N_("mass of the load")},
                 {"reach_m", N_("reach")},
                 {"gain", N_("gain of the suit")},
                 {"friction", N_("friction underfoot")},
                 {"sketched", N_("sketched heights")}};

    for (size_t i = 0; i < G_N_ELEMENTS(names); i++)
        if (g_strcmp0(key, names[i].key) == 0)
            return _(names[i].name);
    return key;
}

const char *
hs_sheet_name_of(const hs_results *results, const char *id)
{
    for (int i = 0; i < results->n_options; i++)
        if (g_strcmp0(results->options[i].id, id) == 0)
            return hs_sheet_name(&results->options[i]);
    return id;
}

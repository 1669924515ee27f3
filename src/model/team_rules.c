/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how far are the team rules apart for a crew?
 * Answer:    a row for each rule: what it allows, as a share of the own figure, what is carried, the status or why it is silent.
 * Not here:  the rules (core, checks/team.c), the table on the screen (app) and in the report (cli). */
#include "team_rules.h"

#include "quantity.h"
#include "translate.h"
#include "words.h"

static void
row_free(gpointer data)
{
    hs_team_row *row = data;

    g_free(row->allowed);
    g_free(row->part);
    g_free(row->carried);
    g_free(row->said);
    g_free(row);
}

static char *
said_of(const hs_finding *finding)
{
    const char *mark = hs_words_unconfirmed(finding);

    switch (finding->text.reason) {
    case HS_REASON_team_silent_number:
        return g_strdup(_("silent on a team of this size"));
    case HS_REASON_team_silent_here:
        return g_strdup(_("silent at this height or on this leg"));
    case HS_REASON_team_no_factor:
        return g_strdup(_("no factor is entered"));
    case HS_REASON_share_suited:
        return g_strdup(_("silent on bearers in suits"));
    default:
        return g_strconcat(hs_words_status(finding->status), mark != NULL ? ", " : NULL, mark,
                           NULL);
    }
}

static char *
newtons(double force_N, hs_units units)
{
    return hs_has(force_N) ? hs_quantity_text(force_N, "N", units) : g_strdup("");
}

static hs_team_row *
row_of(const hs_option_result *option, hs_team_rule rule, hs_units units)
{
    const hs_finding *finding = &option->team_rules[rule - HS_TEAM_GB];
    hs_team_row *row = g_new0(hs_team_row, 1);
    g_autofree char *share = newtons(finding->value, units);

    row->rule = hs_words_team_rule(rule);
    row->allowed = newtons(finding->limit, units);
    row->carried =
        finding->bearer >= 0 && *share != '\0'
            ? g_strdup_printf("%s %s", option->asked->bearers[finding->bearer].id, share)
            : g_strdup(share);
    row->said = said_of(finding);
    if (finding->text.reason == HS_REASON_share_judged) {
        g_autofree char *own = newtons(finding->text.number[3], units);
        g_autofree char *part = hs_quantity_text(finding->text.number[2], "", units);

        row->part = g_strdup_printf(_("%s of %s"), part, own);
    } else {
        row->part = g_strdup("");
    }
    return row;
}

GPtrArray *
hs_team_rules_rows(const hs_option_result *option, hs_units units)
{
    GPtrArray *rows = g_ptr_array_new_with_free_func(row_free);

    for (int i = 0; i < option->n_team_rules; i++)
        g_ptr_array_add(rows, row_of(option, (hs_team_rule)(HS_TEAM_GB + i), units));
    return rows;
}

char *
hs_team_rules_spread(const hs_option_result *option, hs_units units)
{
    double least_N = HS_ABSENT, most_N = HS_ABSENT;
    int n = 0;

    for (int i = 0; i < option->n_team_rules; i++)
        if (option->team_rules[i].text.reason == HS_REASON_share_judged &&
            option->team_rules[i].limit > 0.0) {
            least_N = fmin(least_N, option->team_rules[i].limit);
            most_N = fmax(most_N, option->team_rules[i].limit);
            n++;
        }
    if (n < 2)
        return NULL;
    g_autofree char *least = newtons(least_N, units), *most = newtons(most_N, units);
    g_autofree char *times = hs_quantity_text(most_N / least_N, "", units);

    return g_strdup_printf(
        _("Each at the place that is worst by it, the rules allow %s to %s: %s times apart."),
        least, most, times);
}

char *
hs_team_rules_to_text(const hs_results *results, hs_units units)
{
    GString *out = g_string_new(NULL);

    for (int o = 0; o < results->n_options; o++) {
        const hs_option_result *option = &results->options[o];
        g_autoptr(GPtrArray) rows = hs_team_rules_rows(option, units);
        g_autofree char *spread = hs_team_rules_spread(option, units);

        if (rows->len > 0)
            g_string_append_printf(out, "%s\n",
                                   option->name != NULL ? option->name : option->id);
        for (guint i = 0; i < rows->len; i++) {
            const hs_team_row *row = rows->pdata[i];

            if (*row->allowed != '\0')
                g_string_append_printf(out, _("%s: allowed %s (%s), carried %s: %s\n"),
                                       row->rule, row->allowed, row->part, row->carried,
                                       row->said);
            else
                g_string_append_printf(out, "%s: %s\n", row->rule, row->said);
        }
        if (spread != NULL)
            g_string_append_printf(out, "%s\n", spread);
    }
    return g_string_free(out, FALSE);
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  can this lift be done, as text or JSON?
 * Answer:    handspike assess FILE [--json] [--doubt] [--team-rules] [--limits SET].
 * Not here:  the assessment (core), its words (model). */
#include "cmd.h"
#include "results_json.h"
#include "team_rules.h"
#include "translate.h"

#include <string.h>

/* The report, and which set of limits the site brought. */
static char *
report_text(const hs_assessed *assessed, gboolean with_team_rules)
{
    const hs_site_set *set = assessed->set;
    g_autofree char *report =
        hs_results_to_text(assessed->document, &assessed->results, HS_UNITS_SI);
    g_autofree char *limits =
        set != NULL
            ? hs_site_set_to_text(set, hs_document_task(assessed->document), HS_UNITS_SI)
            : NULL;

    if (with_team_rules) {
        g_autofree char *rules = hs_team_rules_to_text(&assessed->results, HS_UNITS_SI);
        char *longer =
            hs_results_text_section(report, _("All team rules"),
                                    *rules != '\0' ? rules : _("No option has two bearers."));

        g_free(report);
        report = longer;
    }
    if (limits == NULL)
        return g_steal_pointer(&report);
    return hs_results_text_section(report, _("Limits of the site"), limits);
}

hs_exit
hs_cmd_assess_run(int argc, char **argv)
{
    gboolean json = FALSE, doubt = FALSE, team_rules = FALSE;
    g_autofree char *limits = NULL;
    const GOptionEntry entries[] = {
        {"json", 0, 0, G_OPTION_ARG_NONE, &json, N_("results as JSON"), NULL},
        {"doubt", 0, 0, G_OPTION_ARG_NONE, &doubt,
         N_("with the chance of staying within each limit"), NULL},
        {"team-rules", 0, 0, G_OPTION_ARG_NONE, &team_rules,
         N_("with what every team rule allows, beside the chosen one (text report)"), NULL},
        HS_CMD_LIMITS(&limits),
        G_OPTION_ENTRY_NULL};
    g_auto(GStrv) files = NULL;
    g_autofree char *text = NULL;
    hs_assessed assessed;
    hs_exit status = hs_cmd_options(argc, argv, entries, 1, &files);
    gsize length;

    if (status == HS_EXIT_DONE)
        status = hs_cmd_assess(files[0], limits, doubt ? HS_ASSESS_DOUBT : HS_ASSESS_FULL,
                               &assessed);
    if (status != HS_EXIT_DONE)
        return status;
    if (json) {
        text = hs_results_to_json_with(assessed.document, assessed.set, &assessed.results,
                                       &length);
    } else {
        text = report_text(&assessed, team_rules);
        length = strlen(text);
    }
    hs_assessed_clear(&assessed);
    return hs_cmd_print(text, length);
}

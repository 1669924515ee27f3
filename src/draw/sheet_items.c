/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what stops a signature?
 * Answer:    unanswered better ways, roles without anybody, missing facts, open gates, no assessor, no date.
 * Not here:  how it is printed (sheet_decided.c) or shown (app/sign_off.c). */
#include "sheet_parts.h"
#include "translate.h"
#include "words.h"

#include <string.h>

static void G_GNUC_PRINTF(3, 4) add(GPtrArray *items, char *path, const char *format, ...)
{
    va_list arguments;

    va_start(arguments, format);
    g_ptr_array_add(items, g_strdup_vprintf(format, arguments));
    va_end(arguments);
    g_ptr_array_add(items, path);
}

static void
add_ways(GPtrArray *items, const hs_task *task)
{
    static const char *const open[] = {
        NULL, N_("Can the lift be removed? Not answered."),
        N_("Can the load be split? Not answered."),
        N_("Can start or end be brought to another height? Not answered."),
        N_("Can a hoist, truck or conveyor do it? Not answered.")};

    for (int way = HS_WAY_REMOVE; way <= HS_WAY_MECHANISE; way++) {
        int at = -1;
        for (int i = 0; i < task->n_better_ways; i++)
            if ((int)task->better_ways[i].way == way)
                at = i;
        if (at < 0)
            add(items, g_strdup("better_ways"), "%s", _(open[way]));
        else if (task->better_ways[at].answer == 0)
            add(items, g_strdup_printf("better_ways[%d].answer", at), "%s", _(open[way]));
        else if (!task->better_ways[at].reason || !*task->better_ways[at].reason)
            add(items, g_strdup_printf("better_ways[%d].reason", at),
                _("A better way is answered without a reason (no. %d)."), at + 1);
    }
}

static void
add_roles(GPtrArray *items, const hs_task *task, const hs_results *results)
{
    gboolean goes_down = hs_sheet_goes_down(results);

    if (goes_down && task->n_roles == 0)
        add(items, g_strdup("roles"),
            _("Fewer people than today, and the second person's jobs are not listed."));
    for (int i = 0; i < task->n_roles; i++) {
        const hs_role *role = &task->roles[i];
        if (!role->before || !*role->before)
            add(items, g_strdup_printf("roles[%d].before", i), _("Today nobody does this: %s."),
                role->role);
        if (goes_down && (!role->after || !*role->after))
            add(items, g_strdup_printf("roles[%d].after", i),
                _("Afterwards nobody does this: %s."), role->role);
    }
}

/* The check's own words, with the path of the fact where the check on facts names one. */
static void
add_missing(GPtrArray *items, const hs_results *results, hs_units units)
{
    for (int i = 0; i < results->n_options; i++) {
        const hs_option_result *option = &results->options[i];
        if (option->is_added)
            continue;
        for (int k = 0; k < option->n_findings; k++) {
            const hs_finding *finding = &option->findings[k];
            if (finding->status != HS_STATUS_NOT_JUDGED || finding->why != HS_WHY_MISSING)
                continue;
            g_autofree char *why = hs_words_message(&finding->text, units);
            const char *names = finding->check == HS_CHECK_data && finding->text.name[0]
                                    ? finding->text.name[0]
                                    : "";
            add(items, g_strndup(names, strcspn(names, ", ")),
                /* Translators: an option, a check, why it is not judged */
                _("%s, %s: %s"), hs_sheet_name(option), hs_words_check(finding->check), why);
        }
    }
}

GPtrArray *
hs_sheet_items(const hs_document *document, const hs_results *results)
{
    GPtrArray *items = g_ptr_array_new_with_free_func(g_free);
    const hs_task *task = hs_document_task(document);

    if (!task->about.assessor || !*task->about.assessor)
        add(items, g_strdup("about.assessor"), _("Who assesses is not given."));
    if (!task->about.date || !*task->about.date)
        add(items, g_strdup("about.date"), _("The date of the assessment is not given."));
    add_ways(items, task);
    add_roles(items, task, results);
    add_missing(items, results, HS_UNITS_SI);
    for (int i = 0; i < task->n_gates; i++)
        if (task->gates[i].answer == HS_GATE_OPEN || task->gates[i].answer == 0)
            add(items, g_strdup_printf("gates[%d].answer", i), _("Still open: %s."),
                task->gates[i].gate);
    return items;
}

GPtrArray *
hs_sheet_open_items(const hs_document *document, const hs_results *results)
{
    GPtrArray *items = hs_sheet_items(document, results);

    g_ptr_array_add(items, NULL);
    return items;
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what does side 2 only sum up?
 * Answer:    the same in full, for the annex: all findings of all options with their places, what the load's mass rests on,
 *            power lost leg by leg, every assumption, every chance.
 * Not here:  inputs and workings (sheet_annex.c). */
#include "quantity.h"
#include "sheet_parts.h"
#include "translate.h"
#include "words.h"

#include <string.h>

#define MOST_COLUMNS 4 /* options side by side; more go into a second table */

static void
paint_findings_of(hs_page *page, int first, int n)
{
    const hs_results *results = page->request->results;
    hs_check_id checks[HS_N_CHECKS];
    int n_checks = hs_sheet_order(results, checks);
    double parts[MOST_COLUMNS + 1] = {20};

    for (int i = 1; i <= n; i++)
        parts[i] = 80.0 / n;
    g_autoptr(hs_table) table = hs_table_new(n + 1, parts);

    hs_table_head(table, 0, _("Finding"));
    for (int i = 0; i < n; i++) {
        const hs_option_result *option = &results->options[first + i];
        hs_table_head(table, i + 1, hs_sheet_name(option));
    }
    for (int k = 0; k < n_checks; k++) {
        hs_table_row(table);
        hs_table_cell(table, 0, HS_TYPE_BOLD, hs_words_check_in(results, checks[k]));
        for (int i = 0; i < n; i++)
            hs_sheet_add_finding(page, table, i + 1, first + i, checks[k], FALSE);
    }
    hs_table_paint(page, table);
}

static void
paint_findings(hs_page *page)
{
    int n = page->request->results->n_options;

    hs_page_heading(page, _("All findings, nearest their limit first"));
    for (int first = 0; first < n; first += MOST_COLUMNS)
        paint_findings_of(page, first, MIN(MOST_COLUMNS, n - first));
    hs_page_text(
        page, HS_TYPE_TEXT,
        _("Figures in brackets lie outside what the limit was made for: they are shown "
          "for orientation and decide nothing. What is said in a few words here stands in "
          "whole sentences below."));
}

static const char *
known_text(hs_known known)
{
    switch (known) {
    case HS_KNOWN_WEIGHED:
        return _("weighed");
    case HS_KNOWN_LABEL:
        return _("from its label");
    default:
        return _("estimated");
    }
}

static void
add_pair(hs_table *table, const char *head, const char *text)
{
    hs_table_row(table);
    hs_table_cell(table, 0, HS_TYPE_BOLD, head);
    hs_table_cell(table, 1, HS_TYPE_TEXT, text);
}

static void
paint_parts_known(hs_page *page)
{
    const hs_load *load = &hs_page_task(page)->load;
    g_autoptr(hs_table) table = hs_table_new(2, (const double[]){24, 76});

    hs_page_heading(page, _("How the mass of each part is known"));
    for (int i = 0; i < load->n_parts; i++) {
        const hs_part *part = &load->parts[i];
        g_autofree char *part_mass = hs_has(part->mass_kg)
                                         ? hs_quantity_text(part->mass_kg, "kg", page->units)
                                         : g_strdup(_("mass from its density"));
        g_autofree char *said = g_strdup_printf("%s, %s", part_mass, known_text(part->known));
        add_pair(table, part->name ? part->name : part->id ? part->id : _("part"), said);
    }
    hs_table_paint(page, table);
}

/* The moments that matter: the worst of each leg. */
static void
add_power_lost(hs_page *page, hs_table *table, const hs_option_result *option)
{
    int n_points = hs_page_task(page)->route.n_points;

    for (int leg = 0; leg < n_points; leg++) {
        int at = 0;
        const hs_power_lost *worst = hs_sheet_worst_loss(option, leg, &at);

        if (!worst)
            continue;
        g_autofree char *place = g_strdup_printf(_("to point %d"), leg + 1);
        g_autofree char *time = hs_quantity_text(option->samples[at].t_s, "s", page->units);
        g_autofree char *needed = hs_quantity_text(worst->needed_s, "s", page->units);
        g_autofree char *held = hs_has(worst->hold_s)
                                    ? hs_quantity_text(worst->hold_s, "s", page->units)
                                    : g_strdup(_("not known"));
        const char *const cells[] = {hs_sheet_name(option), place, time, needed, held};
        hs_table_row(table);
        for (int i = 0; i < 5; i++)
            hs_table_cell(table, i, HS_TYPE_TEXT, cells[i]);
    }
}

static void
paint_power_lost(hs_page *page)
{
    const hs_results *results = page->request->results;
    g_autoptr(hs_table) table = hs_table_new(5, (const double[]){36, 16, 16, 16, 16});
    const char *const heads[] = {_("Suited option"), _("on the way"), _("worst moment"),
                                 _("needed to set down"), _("held")};
    gboolean is_any = FALSE;

    for (int i = 0; i < 5; i++)
        hs_table_head(table, i, heads[i]);
    for (int i = 0; i < results->n_options; i++) {
        if (!hs_sheet_finding(&results->options[i], HS_CHECK_suit_power_loss) ||
            !results->options[i].asked)
            continue;
        is_any = TRUE;
        add_power_lost(page, table, &results->options[i]);
    }
    if (!is_any)
        return;
    hs_page_heading(page, _("If the suit's power is lost"));
    hs_table_paint(page, table);
}

/* Where one sentence is assumed, in all places; empty when an earlier one has said it. */
static char *
paths_of(hs_page *page, const hs_assumption *of, const char *said)
{
    GString *paths = g_string_new(NULL);

    for (const hs_assumption *at = page->request->results->assumptions.first; at;
         at = at->next) {
        g_autofree char *other = hs_words_message(&at->text, page->units);
        if (strcmp(other, said) != 0)
            continue;
        if (paths->len == 0 && at != of)
            return g_string_free(paths, FALSE);
        g_string_append_printf(paths, "%s%s", paths->len ? ", " : "", at->path);
    }
    return g_string_free(paths, FALSE);
}

static void
paint_assumptions(hs_page *page)
{
    const hs_assumptions *list = &page->request->results->assumptions;
    g_autoptr(hs_table) table = hs_table_new(2, (const double[]){64, 36});

    if (list->n == 0)
        return;
    hs_page_heading(page, _("Assumed, because it was not given"));
    for (const hs_assumption *at = list->first; at; at = at->next) {
        g_autofree char *said = hs_words_message(&at->text, page->units);
        g_autofree char *paths = paths_of(page, at, said);
        if (!*paths)
            continue;
        hs_table_row(table);
        hs_table_cell(table, 0, HS_TYPE_TEXT, said);
        hs_table_cell(table, 1, HS_TYPE_TEXT, paths);
    }
    hs_table_paint(page, table);
}

static const hs_doubt_check *
doubt_of(const hs_doubt_option *option, hs_check_id check)
{
    for (int i = 0; i < option->n_checks; i++)
        if (option->checks[i].check == check)
            return &option->checks[i];
    return NULL;
}

static char *
chance_text(hs_page *page, const hs_doubt_option *option, hs_check_id check)
{
    const hs_results *results = page->request->results;
    const hs_doubt_check *found = doubt_of(option, check);

    if (found && hs_has(found->p_within))
        return hs_quantity_text(100.0 * found->p_within, "pct", page->units);
    for (int i = 0; i < results->n_options; i++)
        if (g_strcmp0(results->options[i].id, option->option) == 0 &&
            hs_sheet_finding(&results->options[i], check))
            return g_strdup(hs_words_status(HS_STATUS_NOT_JUDGED));
    return g_strdup(_("not asked"));
}

/* Options side by side; checks that all of them keep within almost surely are left out. */
static void
paint_chances(hs_page *page, const hs_doubt_option *options, int n)
{
    double parts[MOST_COLUMNS + 1] = {28};

    for (int i = 1; i <= n; i++)
        parts[i] = 72.0 / n;
    g_autoptr(hs_table) table = hs_table_new(n + 1, parts);

    hs_table_head(table, 0, _("chance of staying within"));
    for (int i = 0; i < n; i++)
        hs_table_head(table, i + 1,
                      hs_sheet_name_of(page->request->results, options[i].option));
    for (int check = 0; check < HS_N_CHECKS; check++) {
        gboolean is_any = FALSE;
        for (int i = 0; i < n; i++) {
            const hs_doubt_check *found = doubt_of(&options[i], (hs_check_id)check);
            is_any = is_any || (found && found->p_within < 0.995);
        }
        if (!is_any)
            continue;
        hs_table_row(table);
        hs_table_cell(table, 0, HS_TYPE_TEXT, hs_words_check((hs_check_id)check));
        for (int i = 0; i < n; i++) {
            g_autofree char *chance = chance_text(page, &options[i], (hs_check_id)check);
            hs_table_cell(table, i + 1, HS_TYPE_TEXT, chance);
        }
    }
    hs_table_paint(page, table);
}

static void
paint_doubt(hs_page *page)
{
    const hs_results *results = page->request->results;

    if (results->n_doubt == 0)
        return;
    hs_page_need(page, 90);
    hs_page_heading(page, _("Doubt"));
    for (int first = 0; first < results->n_doubt; first += MOST_COLUMNS)
        paint_chances(page, &results->doubt[first],
                      MIN(MOST_COLUMNS, results->n_doubt - first));
    for (int i = 0; i < results->n_doubt; i++)
        hs_sheet_drivers(page, &results->doubt[i]);
}

void
hs_sheet_full(hs_page *page)
{
    paint_findings(page);
    paint_parts_known(page);
    paint_power_lost(page);
    paint_assumptions(page);
    paint_doubt(page);
}

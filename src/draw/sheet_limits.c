/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  which limits of the site stand in place of published ones?
 * Answer:    a line on side 1 that names the set, and in the annex its wording and every figure with its source and how it is
 *            known; figures of the document itself too.
 * Not here:  reading a set (model/site_limits.c). */
#include "check.h"
#include "quantity.h"
#include "sheet_parts.h"
#include "translate.h"
#include "words.h"

static const hs_policy *
policy_of(const hs_page *page)
{
    return &hs_page_task(page)->policy;
}

void
hs_sheet_limits_line(hs_page *page)
{
    g_autofree char *head = NULL, *said = NULL;

    if (page->request->limits == NULL)
        return;
    head = hs_site_set_headline(page->request->limits);
    said = g_strdup_printf(_("Limits of the site in place of published ones: %s."), head);
    hs_page_text(page, HS_TYPE_TEXT, said);
}

static void
row(hs_table *table,
    hs_check_id check,
    const char *figure,
    const char *known,
    const char *source,
    const char *wording)
{
    hs_table_row(table);
    hs_table_cell(table, 0, HS_TYPE_BOLD, hs_words_check(check));
    hs_table_cell(table, 1, HS_TYPE_TEXT, figure);
    hs_table_cell(table, 2, HS_TYPE_TEXT, known);
    hs_table_cell(table, 3, HS_TYPE_TEXT, source);
    hs_table_cell(table, 4, HS_TYPE_TEXT, wording);
}

static void
rows_of_set(hs_page *page, hs_table *table)
{
    const hs_site_set *set = page->request->limits;
    const hs_task *task = hs_page_task(page);

    for (int i = 0; set != NULL && i < hs_site_set_count(set); i++) {
        const hs_site_figure *at = hs_site_set_figure(set, i);

        g_autofree char *figure = hs_site_figure_text(at, page->units);

        row(table, at->check, figure, hs_site_figure_known(at, task), at->source, at->wording);
    }
}

static void
rows_of_document(hs_page *page, hs_table *table)
{
    const hs_policy *policy = policy_of(page);

    for (int i = 0; i < policy->n_site_limits; i++) {
        const hs_site_limit *own = &policy->site_limits[i];
        int check = hs_check_find(own->id);

        g_autofree char *figure =
            check >= 0 ? hs_quantity_text(own->figure, hs_check_get((hs_check_id)check)->unit,
                                          page->units)
                       : NULL;

        if (check >= 0)
            row(table, (hs_check_id)check, figure, _("counts as confirmed"),
                _("entered in this assessment"), "");
    }
}

void
hs_sheet_limits(hs_page *page)
{
    const hs_site_set *set = page->request->limits;
    g_autoptr(hs_table) table = hs_table_new(5, (const double[]){24, 12, 18, 20, 26});
    const char *const names[] = {_("Check"), _("the site's figure"), _("how known"),
                                 _("Source"), _("in the site's words")};

    if (set == NULL && policy_of(page)->n_site_limits == 0)
        return;
    hs_page_heading(page, _("Limits of the site"));
    if (set != NULL) {
        g_autofree char *head = hs_site_set_headline(set);

        hs_page_text(page, HS_TYPE_BOLD, head);
        hs_page_text(page, HS_TYPE_TEXT, hs_site_set_wording(set));
    }
    for (int i = 0; i < 5; i++)
        hs_table_head(table, i, names[i]);
    rows_of_document(page, table);
    rows_of_set(page, table);
    hs_table_paint(page, table);
    hs_page_text(page, HS_TYPE_TEXT,
                 _("The figures above stand in place of the published ones. An unconfirmed "
                   "figure counts as near at most."));
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  who signs?
 * Answer:    boxes of at least 60 x 22 mm; a signature given for another file code says so.
 * Not here:  what stops a signature (sheet_items.c). */
#include "sheet_sign.h"

#include "page_internal.h"
#include "sheet_parts.h"
#include "translate.h"

#define MM      (72.0 / 25.4)
#define HIGH_PT (22.3 * MM)
#define GAP     4.0 /* three boxes of 60 mm stand side by side on either paper */

int
hs_sheet_n_open(const hs_page *page)
{
    g_autoptr(GPtrArray) items =
        hs_sheet_items(page->request->document, page->request->results);

    return (int)items->len / 2;
}

static void
paint_items(hs_page *page, int from, int to)
{
    g_autoptr(GPtrArray) items =
        hs_sheet_items(page->request->document, page->request->results);
    g_autoptr(hs_table) table = hs_table_new(1, (const double[]){1});

    for (int i = from; i < to && 2 * i < (int)items->len; i++) {
        hs_table_row(table);
        hs_table_tick(table, 0, items->pdata[2 * i]);
    }
    hs_table_paint(page, table);
}

static void
paint_open_items(hs_page *page)
{
    int more = hs_sheet_n_open(page) - page->n_open;

    hs_page_subhead(page, _("Open before it can be signed"));
    paint_items(page, 0, page->n_open);
    if (more <= 0)
        return;
    g_autofree char *rest = g_strdup_printf(_("and %d more at the end of the annex"), more);
    hs_page_text(page, HS_TYPE_BOLD, rest);
}

void
hs_sheet_open_all(hs_page *page)
{
    int n = hs_sheet_n_open(page);

    if (!page->is_draft || page->n_open >= n)
        return;
    hs_page_subhead(page, _("Also open before it can be signed"));
    paint_items(page, page->n_open, n);
}

/* Signatures in the file: for this very version, or for another. */
static void
paint_given(hs_page *page)
{
    const hs_task *task = hs_document_task(page->request->document);
    const char *digest = hs_document_digest(page->request->document);

    for (int i = 0; i < task->n_signatures; i++) {
        const hs_signature *given = &task->signatures[i];
        g_autofree char *code = hs_page_code(given->digest);
        g_autofree char *line =
            g_strcmp0(given->digest, digest) == 0
                ? g_strdup_printf(_("Signed for this version: %s, %s, %s."),
                                  hs_sheet_or_dash(given->role), hs_sheet_or_dash(given->name),
                                  hs_sheet_or_dash(given->date))
                : g_strdup_printf(
                      _("Signed for another version (%s), not for this one: %s, %s, %s."), code,
                      hs_sheet_or_dash(given->role), hs_sheet_or_dash(given->name),
                      hs_sheet_or_dash(given->date));
        hs_page_text(page, HS_TYPE_BOLD, line);
    }
}

static void
paint_box(hs_page *page, const char *role, double x, double y, double wide, double high)
{
    double foot = y + high - 13;

    hs_page_box(page, x, y, wide, high, 1);
    hs_page_text_at(page, HS_TYPE_BOLD, role, x + 5, y + 3, wide - 10);
    hs_page_text_at(page, HS_TYPE_TEXT, _("name, date"), x + 5, foot, wide - 10);
}

/* A box to sign of the least size on the left; three boxes to tick and three lines to write on beside it. */
static void
paint_representative(hs_page *page, double least)
{
    const char *const answers[] = {_("agrees"), _("agrees with remarks"),
                                   _("does not agree, because")};
    double y = page->y_pt, x = page->left_pt + least + 6, most = 0;

    for (int i = 0; i < 3; i++)
        most = fmax(most, hs_page_text_width(page, HS_TYPE_TEXT, answers[i]));
    paint_box(page, _("Labour representative"), page->left_pt, y, least, HIGH_PT);
    hs_page_box(page, page->left_pt + least, y, hs_page_width_pt(page) - least, HIGH_PT, 1);
    for (int i = 0; i < 3; i++) {
        double line = y + 18 + i * 19;
        hs_page_box(page, x, line - 9, 8, 8, 1);
        hs_page_text_at(page, HS_TYPE_TEXT, answers[i], x + 13, line - 11, -1);
        hs_page_line(page, x + 13 + most + 8, line, page->right_pt - 6, line);
    }
    page->y_pt += HIGH_PT + GAP;
}

static void
paint_review(hs_page *page)
{
    const hs_task *task = hs_document_task(page->request->document);
    g_autofree char *review = g_strdup_printf(
        _("Review due %s, and at once when load, glove, floor, suit, software, people or place "
          "change, after a fall, a near miss or a loss of power, or when anybody asks for it."),
        task->about.review_due ? task->about.review_due : "____________");

    hs_page_text(page, HS_TYPE_TEXT, review);
}

static void
paint_boxes(hs_page *page)
{
    const hs_verdict *verdict =
        &page->request->results->options[hs_sheet_proposed(page->request->results)].verdict;
    double wide = (hs_page_width_pt(page) - 2 * GAP) / 3;
    g_autofree char *manager =
        verdict->n_conditions > 0
            ? g_strdup_printf(_("Manager, accepts conditions 1 to %d"), verdict->n_conditions)
        : verdict->status == HS_VERDICT_NOT_SUPPORTED
            ? g_strdup(_("Manager, has read that it is not supported"))
            : g_strdup(_("Manager"));
    const char *const roles[] = {_("Assessor"),
                                 _("Worker who made the trial (suit fitted, date)"), manager};

    hs_page_subhead(page, _("Signatures for this file code"));
    paint_given(page);
    for (int i = 0; i < 3; i++)
        paint_box(page, roles[i], page->left_pt + i * (wide + GAP), page->y_pt, wide, HIGH_PT);
    page->y_pt += HIGH_PT + GAP;
    paint_representative(page, wide);
    paint_review(page);
}

void
hs_sheet_sign(hs_page *page)
{
    if (page->is_draft) {
        paint_open_items(page);
        paint_given(page);
        return;
    }
    hs_page_need(page, hs_page_measure(page, paint_boxes));
    paint_boxes(page);
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  who signs?
 * Answer:    boxes of at least 60 x 22 mm; a signature given for another file code says so.
 * Not here:  what stops a signature (sheet_items.c). */
#include "sheet_sign.h"

#include "page_internal.h"
#include "sheet_parts.h"
#include "translate.h"

#define MM      (72.0 / 25.4)
#define HIGH_PT (25 * MM)
#define GAP     12.0

static void
paint_open_items(hs_page *page)
{
    g_autoptr(GPtrArray) items =
        hs_sheet_items(page->request->document, page->request->results);
    g_autoptr(hs_table) table = hs_table_new(1, (const double[]){1});

    if (items->len == 0)
        return;
    hs_page_heading(page, _("Open before it can be signed"));
    for (guint i = 0; i < items->len; i += 2) {
        hs_table_row(table);
        hs_table_tick(table, 0, items->pdata[i]);
    }
    hs_table_paint(page, table);
    hs_page_rule(page, 1);
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

/* Three boxes to tick and three lines to write on. */
static void
paint_representative(hs_page *page)
{
    const char *const answers[] = {_("agrees"), _("agrees with remarks"),
                                   _("does not agree, because")};
    double wide = hs_page_width_pt(page), y = page->y_pt, x = page->left_pt + 5;
    double half = (wide - GAP) / 2, right = page->left_pt + half + GAP;

    hs_page_box(page, page->left_pt, y, wide, 30 * MM, 1);
    hs_page_text_at(page, HS_TYPE_BOLD, _("Labour representative"), x, y + 3, half);
    hs_page_text_at(page, HS_TYPE_TEXT, _("name, date"), x, y + 30 * MM - 13, half);
    for (int i = 0; i < 3; i++) {
        double tick_y = y + 17 + i * 14;
        hs_page_box(page, x, tick_y + 2, 8, 8, 1);
        hs_page_text_at(page, HS_TYPE_TEXT, answers[i], x + 14, tick_y, half - 20);
        hs_page_line(page, right, y + 26 + i * 22, page->right_pt - 6, y + 26 + i * 22);
    }
    page->y_pt += 30 * MM + GAP;
}

static void
paint_boxes(hs_page *page)
{
    const hs_task *task = hs_document_task(page->request->document);
    const hs_verdict *verdict =
        &page->request->results->options[hs_sheet_proposed(page->request->results)].verdict;
    double half = (hs_page_width_pt(page) - GAP) / 2, right = page->left_pt + half + GAP;
    g_autofree char *manager =
        verdict->n_conditions > 0
            ? g_strdup_printf(_("Manager, accepts conditions 1 to %d"), verdict->n_conditions)
            : g_strdup(_("Manager"));
    g_autofree char *review = g_strdup_printf(
        _("Review due %s, and at once when load, glove, floor, suit, software, people or place "
          "change, after a fall, a near miss or a loss of power, or when anybody asks for it."),
        task->about.review_due ? task->about.review_due : "____________");

    hs_page_heading(page, _("Signatures for this file code"));
    paint_given(page);
    paint_box(page, _("Assessor"), page->left_pt, page->y_pt, half, HIGH_PT);
    paint_box(page, _("Worker who made the trial (suit fitted, date)"), right, page->y_pt, half,
              HIGH_PT);
    page->y_pt += HIGH_PT + GAP;
    paint_representative(page);
    paint_box(page, manager, page->left_pt, page->y_pt, half, HIGH_PT);
    hs_page_text_at(page, HS_TYPE_TEXT, review, right, page->y_pt, half);
    page->y_pt += HIGH_PT + 4;
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

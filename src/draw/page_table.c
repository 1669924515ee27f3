/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how does a table break over pages?
 * Answer:    row by row, the head repeated; a row taller than what is left of a page is cut between lines.
 * Not here:  pages (page.c). */
#include "page_internal.h"
#include "paint_internal.h"

#define GAP     6.0 /* pt between columns */
#define GLYPH   11.0
#define ROW_GAP 2.0 /* pt between rows */

typedef struct {
    char *text;
    hs_type type;
    hs_finding_status status;
    gboolean is_tick;
} hs_cell;

struct hs_table {
    int n_columns, most_lines; /* 0: any */
    double *parts;
    gboolean has_head;
    hs_cell *head;
    GPtrArray *rows; /* hs_cell[n_columns] */
};

hs_table *
hs_table_new(int n_columns, const double *parts)
{
    hs_table *table = g_new0(hs_table, 1);
    double sum = 0;

    table->n_columns = n_columns;
    table->parts = g_new(double, (gsize)n_columns);
    for (int i = 0; i < n_columns; i++)
        sum += parts[i];
    for (int i = 0; i < n_columns; i++)
        table->parts[i] = parts[i] / sum;
    table->head = g_new0(hs_cell, (gsize)n_columns);
    table->rows = g_ptr_array_new();
    return table;
}

static void
cells_free(hs_cell *cells, int n)
{
    for (int i = 0; i < n; i++)
        g_free(cells[i].text);
    g_free(cells);
}

void
hs_table_free(hs_table *table)
{
    for (guint i = 0; i < table->rows->len; i++)
        cells_free(table->rows->pdata[i], table->n_columns);
    g_ptr_array_unref(table->rows);
    cells_free(table->head, table->n_columns);
    g_free(table->parts);
    g_free(table);
}

void
hs_table_limit_lines(hs_table *table, int most)
{
    table->most_lines = most;
}

static void
set_cell(hs_cell *cell, const char *text, hs_type type)
{
    g_free(cell->text);
    *cell = (hs_cell){.text = g_strdup(text ? text : ""), .type = type};
}

void
hs_table_head(hs_table *table, int column, const char *text)
{
    table->has_head = TRUE;
    set_cell(&table->head[column], text, HS_TYPE_BOLD);
}

void
hs_table_row(hs_table *table)
{
    g_ptr_array_add(table->rows, g_new0(hs_cell, (gsize)table->n_columns));
}

static hs_cell *
last_cell(hs_table *table, int column)
{
    return (hs_cell *)table->rows->pdata[table->rows->len - 1] + column;
}

void
hs_table_cell(hs_table *table, int column, hs_type type, const char *text)
{
    set_cell(last_cell(table, column), text, type);
}

void
hs_table_status(hs_table *table, int column, hs_finding_status status, const char *text)
{
    set_cell(last_cell(table, column), text, HS_TYPE_TEXT);
    last_cell(table, column)->status = status;
}

void
hs_table_tick(hs_table *table, int column, const char *text)
{
    set_cell(last_cell(table, column), text, HS_TYPE_TEXT);
    last_cell(table, column)->is_tick = TRUE;
}

/* Lines from `from` on that fit into the height; at least one when must_move. */
static int
lines_in(
    PangoLayout *layout, int from, double height_pt, gboolean must_move, double *ret_used_pt)
{
    int n = pango_layout_get_line_count(layout), at = from;

    *ret_used_pt = 0;
    for (; at < n; at++) {
        PangoRectangle logical;
        pango_layout_line_get_extents(pango_layout_get_line_readonly(layout, at), NULL,
                                      &logical);
        double high = HS_PAGE_LEADING * (double)logical.height / PANGO_SCALE;
        if (*ret_used_pt + high > height_pt && !(must_move && at == from))
            break;
        *ret_used_pt += high;
    }
    return at;
}

static void
show_lines(hs_page *page, PangoLayout *layout, int from, int to, double x_pt, double y_pt)
{
    PangoLayoutIter *iter = pango_layout_get_iter(layout);
    double top = 0;
    int at = 0;

    hs_paint_colour(page->cr, page->theme->ink, 1);
    do {
        PangoRectangle logical;
        pango_layout_iter_get_line_extents(iter, NULL, &logical);
        if (at == from)
            top = (double)logical.y / PANGO_SCALE;
        if (at >= from && at < to) {
            cairo_move_to(page->cr, x_pt + (double)logical.x / PANGO_SCALE,
                          y_pt + (double)pango_layout_iter_get_baseline(iter) / PANGO_SCALE -
                              top);
            pango_cairo_show_layout_line(page->cr, pango_layout_iter_get_line_readonly(iter));
        }
        at++;
    } while (pango_layout_iter_next_line(iter));
    pango_layout_iter_free(iter);
}

typedef struct {
    PangoLayout *layout;
    double x_pt;
    int from, to;
} hs_laid;

static hs_laid *
lay_out(hs_page *page, const hs_table *table, const hs_cell *cells, double *ret_height_pt)
{
    hs_laid *laid = g_new0(hs_laid, (gsize)table->n_columns);
    double x = page->left_pt;

    *ret_height_pt = 0;
    for (int i = 0; i < table->n_columns; i++) {
        double wide = table->parts[i] * hs_page_width_pt(page), used;
        gboolean has_mark = cells[i].status != HS_STATUS_NONE || cells[i].is_tick;
        double mark = has_mark ? GLYPH + 3 : 0;
        laid[i].x_pt = x + mark;
        laid[i].layout = hs_page_layout(page, cells[i].type, cells[i].text,
                                        wide - mark - (i + 1 < table->n_columns ? GAP : 0));
        if (table->most_lines > 0) {
            pango_layout_set_height(laid[i].layout, -table->most_lines);
            pango_layout_set_ellipsize(laid[i].layout, PANGO_ELLIPSIZE_END);
        }
        lines_in(laid[i].layout, 0, 1e9, FALSE, &used);
        *ret_height_pt = fmax(*ret_height_pt, used);
        x += wide;
    }
    return laid;
}

static void
paint_marks(hs_page *page, const hs_table *table, const hs_cell *cells, const hs_laid *laid)
{
    for (int i = 0; i < table->n_columns; i++) {
        double x = laid[i].x_pt - GLYPH - 3;
        if (cells[i].status != HS_STATUS_NONE)
            hs_paint_status_glyph(page->cr, cells[i].status, x, page->y_pt + 0.5, GLYPH,
                                  page->theme);
        if (cells[i].is_tick)
            hs_page_box(page, x + 0.5, page->y_pt + 2, 8, 8, 1);
    }
}

static void
paint_cells(hs_page *page, const hs_table *table, const hs_cell *cells, const hs_cell *head);

static gboolean
paint_some(hs_page *page, const hs_table *table, hs_laid *laid)
{
    double most = 0, used;
    gboolean is_done = TRUE;

    for (int i = 0; i < table->n_columns; i++) {
        laid[i].to = lines_in(laid[i].layout, laid[i].from, hs_page_left_pt(page), TRUE, &used);
        show_lines(page, laid[i].layout, laid[i].from, laid[i].to, laid[i].x_pt, page->y_pt);
        laid[i].from = laid[i].to;
        is_done = is_done && laid[i].to >= pango_layout_get_line_count(laid[i].layout);
        most = fmax(most, used);
    }
    page->y_pt += most;
    return is_done;
}

static void
paint_cells(hs_page *page, const hs_table *table, const hs_cell *cells, const hs_cell *head)
{
    double high, whole = page->bottom_pt - page->top_pt;
    g_autofree hs_laid *laid = lay_out(page, table, cells, &high);
    int before = page->number;

    hs_page_need(page, high < whole * 0.4 ? high + 3 : 24);
    if (page->number != before && head)
        paint_cells(page, table, head, NULL);
    paint_marks(page, table, cells, laid);
    while (!paint_some(page, table, laid)) {
        hs_page_break(page);
        if (head)
            paint_cells(page, table, head, NULL);
    }
    page->y_pt += ROW_GAP;
    for (int i = 0; i < table->n_columns; i++)
        g_object_unref(laid[i].layout);
    if (cells == table->head)
        hs_page_rule(page, 1);
}

void
hs_table_paint(hs_page *page, hs_table *table)
{
    const hs_cell *head = table->has_head ? table->head : NULL;

    if (table->rows->len == 0)
        return;
    if (head) {
        hs_page_need(page, 56);
        paint_cells(page, table, head, NULL);
    }
    for (guint i = 0; i < table->rows->len; i++)
        paint_cells(page, table, table->rows->pdata[i], head);
}

void
hs_page_text(hs_page *page, hs_type type, const char *text)
{
    g_autoptr(hs_table) table = hs_table_new(1, (const double[]){1});

    hs_table_row(table);
    hs_table_cell(table, 0, type, text);
    hs_table_paint(page, table);
}

void
hs_page_heading(hs_page *page, const char *text)
{
    hs_page_need(page, 48);
    page->y_pt += 6;
    page->y_pt += hs_page_text_at(page, HS_TYPE_HEAD, text, page->left_pt, page->y_pt, -1) + 3;
}

void
hs_page_subhead(hs_page *page, const char *text)
{
    hs_page_need(page, 26);
    page->y_pt += 4;
    page->y_pt += hs_page_text_at(page, HS_TYPE_BOLD, text, page->left_pt, page->y_pt,
                                  hs_page_width_pt(page));
    hs_page_line(page, page->left_pt, page->y_pt + 0.5, page->right_pt, page->y_pt + 0.5);
    page->y_pt += 2;
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how do text, tables and boxes get onto pages?
 * Answer:    hs_page: paper, margins, a flow from top to bottom that breaks by itself, foot with page n of m.
 * Not here:  what is printed (sheet.c, sheet_why.c, sheet_annex.c, handout.c). */
#ifndef HS_PAGE_H
#define HS_PAGE_H

#include "paint.h"
#include "sheet.h"
#include "unit_system.h"

#include <pango/pangocairo.h>

/* The smallest type is 8.5 pt and the thinnest line 1 pt (0.35 mm). */
typedef enum {
    HS_TYPE_TEXT,
    HS_TYPE_LARGE, /* a handout lies on a desk and is written on */
    HS_TYPE_BOLD,
    HS_TYPE_HEAD,
    HS_TYPE_TITLE
} hs_type;

typedef struct hs_page hs_page;
typedef void (*hs_page_body)(hs_page *page);

struct hs_page {
    cairo_t
        *cr; /* what is drawn on now: the real one, or a sink while this page is not wanted */
    const hs_sheet_request *request;
    const hs_theme *theme;
    hs_units units;
    const void *data; /* the body's own */
    gboolean is_draft;
    double width_pt, height_pt, left_pt, right_pt, top_pt, bottom_pt;
    double y_pt;       /* where the next thing goes */
    int number;        /* from 0 */
    int n_shown;       /* conditions that side 1 has room for */
    int n_rows;        /* findings that side 2 has room for */
    int n_open;        /* open items that side 2 has room for */
    gboolean is_tight; /* side 2 is full: what was assumed is only counted there */
    /* the engine's own */
    cairo_t *real, *sink;
    PangoContext *pango;
    int wanted, n_pages;
};

/* Pages that a body fills. */
int hs_page_count(const hs_page *start, hs_page_body body);
/* One page (from 0) onto any context whose unit is the point; -1: all, each ended with cairo_show_page. */
void hs_page_paint(const hs_page *start, hs_page_body body, cairo_t *cr, int wanted);
/* All pages as a PDF, in memory first, then in one piece to the file; bytes repeat. */
gboolean
hs_page_write_pdf(const hs_page *start, hs_page_body body, const char *path, GError **error);
/* What every body starts from. */
hs_page hs_page_start(const hs_sheet_request *request, gboolean is_draft, const void *data);

void hs_page_break(hs_page *page);
/* A new page when less than this is left. */
void hs_page_need(hs_page *page, double height_pt);
void hs_page_space(hs_page *page, double height_pt);
void hs_page_rule(hs_page *page, double thick_pt);
double hs_page_left_pt(const hs_page *page);  /* room below */
double hs_page_width_pt(const hs_page *page); /* between the margins */
/* Height a part would take, without drawing it. */
double hs_page_measure(hs_page *page, hs_page_body part);

/* The task of the document that is printed. */
const hs_task *hs_page_task(const hs_page *page);
/* A paragraph across the page; it moves on, over as many pages as it takes. */
void hs_page_text(hs_page *page, hs_type type, const char *text);
void hs_page_heading(hs_page *page, const char *text);
void hs_page_subhead(hs_page *page,
                     const char *text); /* where a page is full: bold, on a line */
/* A text at a place, wrapped to width (<= 0: one line); its height. */
double hs_page_text_at(
    hs_page *page, hs_type type, const char *text, double x_pt, double y_pt, double width_pt);
/* One line, cut with an ellipsis where it is too long; its height. */
double hs_page_line_at(
    hs_page *page, hs_type type, const char *text, double x_pt, double y_pt, double width_pt);
double hs_page_text_height(hs_page *page, hs_type type, const char *text, double width_pt);
double hs_page_text_width(hs_page *page, hs_type type, const char *text);
void hs_page_box(
    hs_page *page, double x_pt, double y_pt, double width_pt, double height_pt, double line_pt);
void hs_page_line(hs_page *page, double x0_pt, double y0_pt, double x1_pt, double y1_pt);

/* A table: columns by parts of the width; the head is repeated after a break. */
typedef struct hs_table hs_table;
hs_table *hs_table_new(int n_columns, const double *parts);
void hs_table_free(hs_table *table);
G_DEFINE_AUTOPTR_CLEANUP_FUNC(hs_table, hs_table_free)
/* No cell is higher than this: a longer text is cut with an ellipsis (and stands whole elsewhere). */
void hs_table_limit_lines(hs_table *table, int most);
void hs_table_head(hs_table *table, int column, const char *text);
void hs_table_row(hs_table *table);
void hs_table_cell(hs_table *table, int column, hs_type type, const char *text);
/* With the status glyph before the text. */
void hs_table_status(hs_table *table, int column, hs_finding_status status, const char *text);
/* With an empty square to tick before the text. */
void hs_table_tick(hs_table *table, int column, const char *text);
void hs_table_paint(hs_page *page, hs_table *table);

#endif

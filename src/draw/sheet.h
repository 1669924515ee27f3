/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what is printed and signed?
 * Answer:    hs_sheet_write_pdf(): side 1 what was decided, side 2 why it may be believed, the annex; hs_handout_write_pdf().
 * Not here:  the picture itself (scene.h). */
#ifndef HS_SHEET_H
#define HS_SHEET_H

#include "document.h"
#include "result.h"
#include "site_limits.h"

#include <cairo.h>

typedef enum {
    HS_PAPER_A4,
    HS_PAPER_LETTER
} hs_paper;

typedef struct {
    const hs_document *document;
    const hs_results *results;
    hs_paper paper;
    gboolean us_units;
    const hs_site_set
        *limits; /* the site's, that the results were worked out with; NULL: none */
} hs_sheet_request;

/* To memory, then in one piece to the file. */
gboolean hs_sheet_write_pdf(const hs_sheet_request *request, const char *path, GError **error);
/* Number of pages, and one page onto any context (the print dialog). */
int hs_sheet_n_pages(const hs_sheet_request *request);
void hs_sheet_paint_page(cairo_t *cr, const hs_sheet_request *request, int page);
/* What stops a signature: translated lines with the JSON path of the field, NULL-terminated pairs (text, path). */
GPtrArray *hs_sheet_open_items(const hs_document *document, const hs_results *results);

/* The side view at one place of the route; format by the file's ending (.svg .png .pdf). */
gboolean hs_export_view(const hs_document *document,
                        const hs_results *results,
                        const char *option_id,
                        double route,
                        const char *path,
                        GError **error);
/* The training handout: one figure a page, with or without the answers. */
gboolean hs_handout_write_pdf(const hs_sheet_request *request,
                              gboolean answers,
                              const char *path,
                              GError **error);

#endif

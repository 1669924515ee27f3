/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how do text and boxes get onto pages?
 * Answer:    a run of the body for each use: counting and unwanted pages go to a sink of one pixel.
 * Not here:  tables (page_table.c), what is printed (sheet.c). */
#include "page_internal.h"
#include "paint_internal.h"
#include "quantity.h"
#include "translate.h"

#include <cairo-pdf.h>
#include <string.h>

#define A4_WIDTH      595.276
#define A4_HEIGHT     841.890
#define LETTER_WIDTH  612.0
#define LETTER_HEIGHT 792.0
#define SIDE                                                                                   \
    38.0 /* pt: three boxes of 60 mm go between, and holes can be punched on either side */
#define TOP         34.0
#define FOOT        46.0
#define CODE_LENGTH 12 /* characters of the digest that people read out */

static const double size_pt[] = {[HS_TYPE_TEXT] = 8.5,
                                 [HS_TYPE_LARGE] = 11.5,
                                 [HS_TYPE_BOLD] = 8.5,
                                 [HS_TYPE_HEAD] = 11,
                                 [HS_TYPE_TITLE] = 15};

const hs_task *
hs_page_task(const hs_page *page)
{
    return hs_document_task(page->request->document);
}

hs_page
hs_page_start(const hs_sheet_request *request, gboolean is_draft, const void *data)
{
    gboolean is_letter = request->paper == HS_PAPER_LETTER;
    hs_page page = {.request = request,
                    .theme = hs_theme_get(HS_THEME_PAPER),
                    .units = request->us_units ? HS_UNITS_US : HS_UNITS_SI,
                    .data = data,
                    .is_draft = is_draft,
                    .width_pt = is_letter ? LETTER_WIDTH : A4_WIDTH,
                    .height_pt = is_letter ? LETTER_HEIGHT : A4_HEIGHT};

    page.left_pt = SIDE;
    page.right_pt = page.width_pt - SIDE;
    page.top_pt = TOP;
    page.bottom_pt = page.height_pt - FOOT;
    return page;
}

PangoLayout *
hs_page_layout(const hs_page *page, hs_type type, const char *text, double width_pt)
{
    PangoLayout *layout = pango_layout_new(page->pango);
    PangoFontDescription *font = pango_font_description_new();

    pango_font_description_set_family(font, page->theme->font_family);
    pango_font_description_set_absolute_size(font, size_pt[type] * PANGO_SCALE);
    if (type != HS_TYPE_TEXT && type != HS_TYPE_LARGE)
        pango_font_description_set_weight(font, PANGO_WEIGHT_BOLD);
    pango_layout_set_font_description(layout, font);
    pango_font_description_free(font);
    pango_layout_set_text(layout, text ? text : "", -1);
    pango_layout_set_line_spacing(layout, (float)HS_PAGE_LEADING);
    if (width_pt > 0) {
        pango_layout_set_width(layout, (int)(width_pt * PANGO_SCALE));
        pango_layout_set_wrap(layout, PANGO_WRAP_WORD_CHAR);
    }
    return layout;
}

static void
layout_size(PangoLayout *layout, double *ret_width_pt, double *ret_height_pt)
{
    PangoRectangle logical;

    pango_layout_get_extents(layout, NULL, &logical);
    *ret_width_pt = (double)logical.width / PANGO_SCALE;
    *ret_height_pt = (double)logical.height / PANGO_SCALE;
}

double
hs_page_text_height(hs_page *page, hs_type type, const char *text, double width_pt)
{
    g_autoptr(PangoLayout) layout = hs_page_layout(page, type, text, width_pt);
    double wide, high;

    layout_size(layout, &wide, &high);
    return high;
}

double
hs_page_text_width(hs_page *page, hs_type type, const char *text)
{
    g_autoptr(PangoLayout) layout = hs_page_layout(page, type, text, -1);
    double wide, high;

    layout_size(layout, &wide, &high);
    return wide;
}

double
hs_page_text_at(
    hs_page *page, hs_type type, const char *text, double x_pt, double y_pt, double width_pt)
{
    g_autoptr(PangoLayout) layout = hs_page_layout(page, type, text, width_pt);
    double wide, high;

    layout_size(layout, &wide, &high);
    hs_paint_colour(page->cr, page->theme->ink, 1);
    cairo_move_to(page->cr, x_pt, y_pt);
    pango_cairo_show_layout(page->cr, layout);
    return high;
}

double
hs_page_line_at(
    hs_page *page, hs_type type, const char *text, double x_pt, double y_pt, double width_pt)
{
    g_autoptr(PangoLayout) layout = hs_page_layout(page, type, text, width_pt);
    double wide, high;

    pango_layout_set_ellipsize(layout, PANGO_ELLIPSIZE_END);
    pango_layout_set_single_paragraph_mode(layout, TRUE);
    layout_size(layout, &wide, &high);
    hs_paint_colour(page->cr, page->theme->ink, 1);
    cairo_move_to(page->cr, x_pt, y_pt);
    pango_cairo_show_layout(page->cr, layout);
    return high;
}

double
hs_page_width_pt(const hs_page *page)
{
    return page->right_pt - page->left_pt;
}

double
hs_page_left_pt(const hs_page *page)
{
    return page->bottom_pt - page->y_pt;
}

void
hs_page_line(hs_page *page, double x0_pt, double y0_pt, double x1_pt, double y1_pt)
{
    hs_paint_colour(page->cr, page->theme->ink, 1);
    cairo_set_line_width(page->cr, 1);
    cairo_move_to(page->cr, x0_pt, y0_pt);
    cairo_line_to(page->cr, x1_pt, y1_pt);
    cairo_stroke(page->cr);
}

void
hs_page_box(
    hs_page *page, double x_pt, double y_pt, double width_pt, double height_pt, double line_pt)
{
    hs_paint_colour(page->cr, page->theme->ink, 1);
    cairo_set_line_width(page->cr, line_pt);
    cairo_rectangle(page->cr, x_pt, y_pt, width_pt, height_pt);
    cairo_stroke(page->cr);
}

void
hs_page_rule(hs_page *page, double thick_pt)
{
    hs_paint_colour(page->cr, page->theme->ink, 1);
    cairo_rectangle(page->cr, page->left_pt, page->y_pt, hs_page_width_pt(page), thick_pt);
    cairo_fill(page->cr);
    page->y_pt += thick_pt + 3;
}

/* Title, revision, file code and date stand on every page, so that loose sheets find each other. */
static void
paint_foot(hs_page *page)
{
    const hs_task *task = hs_document_task(page->request->document);
    const char *title = task->about.title ? task->about.title : _("untitled");
    const char *date = task->about.date ? task->about.date : _("no date");
    int revision =
        task->n_revisions > 0 && hs_has(task->revisions[task->n_revisions - 1].number)
            ? (int)task->revisions[task->n_revisions - 1].number
            : 1;
    g_autofree char *code = hs_page_code(hs_document_digest(page->request->document));
    g_autofree char *facts =
        g_strdup_printf(_("revision %d · file code %s · %s"), revision, code, date);
    g_autofree char *number =
        g_strdup_printf(_("page %d of %d"), page->number + 1, page->n_pages);
    double y = page->bottom_pt + 10, wide = hs_page_text_width(page, HS_TYPE_TEXT, number);
    double facts_wide = hs_page_text_width(page, HS_TYPE_TEXT, facts);
    double facts_x = page->right_pt - wide - 14 - facts_wide;
    g_autoptr(PangoLayout) head =
        hs_page_layout(page, HS_TYPE_TEXT, title, facts_x - 10 - page->left_pt);

    pango_layout_set_ellipsize(head, PANGO_ELLIPSIZE_END);
    pango_layout_set_single_paragraph_mode(head, TRUE);
    hs_page_line(page, page->left_pt, y - 4, page->right_pt, y - 4);
    cairo_move_to(page->cr, page->left_pt, y);
    pango_cairo_show_layout(page->cr, head);
    hs_page_text_at(page, HS_TYPE_TEXT, facts, facts_x, y, -1);
    hs_page_text_at(page, HS_TYPE_TEXT, number, page->right_pt - wide, y, -1);
}

static void
begin(hs_page *page)
{
    page->cr = page->wanted < 0 || page->wanted == page->number ? page->real : page->sink;
    page->y_pt = page->top_pt;
    if (!page->is_draft)
        return;
    /* Translators: across the top of each page of a sheet that is not ready to be signed */
    hs_page_text_at(page, HS_TYPE_HEAD,
                    _("DRAFT: not for signature; what is open is listed at the end of side 2"),
                    page->left_pt, page->y_pt, -1);
    page->y_pt += 18;
}

static void
finish(hs_page *page)
{
    paint_foot(page);
    if (page->wanted < 0 && page->real != page->sink)
        cairo_show_page(page->cr);
}

void
hs_page_break(hs_page *page)
{
    finish(page);
    page->number++;
    begin(page);
}

void
hs_page_need(hs_page *page, double height_pt)
{
    double fresh = page->top_pt + (page->is_draft ? 18 : 0);

    if (page->y_pt > fresh + 0.5 && page->y_pt + height_pt > page->bottom_pt)
        hs_page_break(page);
}

void
hs_page_space(hs_page *page, double height_pt)
{
    page->y_pt += height_pt;
}

static int
run(hs_page *page, hs_page_body body, cairo_t *real, int wanted)
{
    cairo_surface_t *dot = cairo_image_surface_create(CAIRO_FORMAT_A8, 1, 1);

    page->sink = cairo_create(dot);
    page->real = real ? real : page->sink;
    page->wanted = wanted;
    page->number = 0;
    page->pango = hs_paint_pango_new();
    begin(page);
    body(page);
    finish(page);
    g_object_unref(page->pango);
    cairo_destroy(page->sink);
    cairo_surface_destroy(dot);
    return page->number + 1;
}

int
hs_page_count(const hs_page *start, hs_page_body body)
{
    hs_page page = *start;

    return run(&page, body, NULL, -1);
}

void
hs_page_paint(const hs_page *start, hs_page_body body, cairo_t *cr, int wanted)
{
    hs_page page = *start;

    page.n_pages = hs_page_count(start, body);
    run(&page, body, cr, wanted);
}

double
hs_page_measure(hs_page *page, hs_page_body part)
{
    hs_page trial = *page;

    trial.cr = trial.real = trial.sink;
    trial.bottom_pt = 1e6;
    part(&trial);
    return trial.y_pt - page->y_pt;
}

char *
hs_page_code(const char *digest)
{
    return g_strndup(digest ? digest : "", CODE_LENGTH);
}

static cairo_status_t
append(void *data, const unsigned char *bytes, unsigned int length)
{
    g_byte_array_append(data, bytes, length);
    return CAIRO_STATUS_SUCCESS;
}

/* cairo would write the wall clock; the document's own date makes the bytes repeat. */
static void
set_facts(cairo_surface_t *surface, const hs_task *task)
{
    const char *date = task->about.date;
    g_autofree char *stamp =
        g_strdup_printf("%sT00:00:00Z", date && strlen(date) == 10 ? date : "2000-01-01");

    cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_CREATE_DATE, stamp);
    cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_CREATOR, "Handspike");
    if (task->about.title)
        cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_TITLE, task->about.title);
}

gboolean
hs_page_write_pdf(const hs_page *start, hs_page_body body, const char *path, GError **error)
{
    g_autoptr(GByteArray) bytes = g_byte_array_new();
    cairo_surface_t *surface =
        cairo_pdf_surface_create_for_stream(append, bytes, start->width_pt, start->height_pt);
    cairo_t *cr = cairo_create(surface);

    set_facts(surface, hs_document_task(start->request->document));
    hs_page_paint(start, body, cr, -1);
    cairo_status_t status = cairo_status(cr);

    cairo_surface_finish(surface);
    if (status == CAIRO_STATUS_SUCCESS)
        status = cairo_surface_status(surface);
    cairo_destroy(cr);
    cairo_surface_destroy(surface);
    if (status != CAIRO_STATUS_SUCCESS) {
        g_set_error(error, G_IO_ERROR, G_IO_ERROR_FAILED, _("the pages could not be made: %s"),
                    cairo_status_to_string(status));
        return FALSE;
    }
    return g_file_set_contents_full(path, (const char *)bytes->data, (gssize)bytes->len,
                                    G_FILE_SET_CONTENTS_CONSISTENT, 0666, error);
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how does a picture become a file?
 * Answer:    hs_export_view(): SVG, PNG or PDF by the file's ending; made in memory, then written in one piece.
 * Not here:  the picture (scene.c, paint.c), the sheet (sheet.c). */
#include "paint_internal.h"
#include "quantity.h"
#include "sheet.h"
#include "translate.h"

#include <cairo-pdf.h>
#include <cairo-svg.h>
#include <string.h>

/* Size of the picture: points on paper, pixels in a PNG at twice the size. */
#define WIDTH     640.0
#define HEIGHT    480.0
#define FONT      10.0
#define PNG_SCALE 2.0

typedef enum {
    FORMAT_NONE,
    FORMAT_SVG,
    FORMAT_PNG,
    FORMAT_PDF
} hs_format;

static hs_format
format_of(const char *path)
{
    const char *ending = strrchr(path, '.');

    if (!ending)
        return FORMAT_NONE;
    if (g_ascii_strcasecmp(ending, ".svg") == 0)
        return FORMAT_SVG;
    if (g_ascii_strcasecmp(ending, ".png") == 0)
        return FORMAT_PNG;
    return g_ascii_strcasecmp(ending, ".pdf") == 0 ? FORMAT_PDF : FORMAT_NONE;
}

static cairo_status_t
append(void *data, const unsigned char *bytes, unsigned int length)
{
    g_byte_array_append(data, bytes, length);
    return CAIRO_STATUS_SUCCESS;
}

/* Of two samples at the same place the later one counts. */
static int
sample_at(const hs_option_result *option, double route)
{
    int best = 0;

    for (int i = 1; i < option->n_samples; i++)
        if (fabs(option->samples[i].route - route) <= fabs(option->samples[best].route - route))
            best = i;
    return best;
}

static void
paint_heading(const hs_painter *painter,
              const hs_option_result *option,
              const hs_sample *sample)
{
    g_autofree char *time = hs_quantity_text(sample->t_s, "s", HS_UNITS_SI);
    g_autofree char *place =
        fabs(sample->route - round(sample->route)) < 0.005
            ? g_strdup_printf(_("point %d"), (int)lround(sample->route))
            : g_strdup_printf(_("between points %d and %d"), (int)floor(sample->route),
                              (int)floor(sample->route) + 1);
    g_autofree char *line = g_strdup_printf("%s · %s", place, time);
    g_autoptr(PangoLayout) name =
        hs_painter_layout(painter, option->name ? option->name : option->id, FALSE, TRUE);
    g_autoptr(PangoLayout) where = hs_painter_layout(painter, line, TRUE, FALSE);
    double em = painter->view->font_px;

    hs_paint_colour(painter->cr, painter->theme->ink, 1);
    cairo_move_to(painter->cr, 1.2 * em, 0.8 * em);
    pango_cairo_show_layout(painter->cr, name);
    hs_paint_colour(painter->cr, painter->theme->soft_ink, 1);
    cairo_move_to(painter->cr, 1.2 * em, 2.3 * em);
    pango_cairo_show_layout(painter->cr, where);
}

static void
paint_picture(cairo_t *cr,
              const hs_document *document,
              const hs_results *results,
              int option,
              double route,
              const hs_theme *theme)
{
    const hs_option_result *result = &results->options[option];
    hs_scene_request request = {.task = hs_document_task(document),
                                .results = results,
                                .option = option,
                                .sample = sample_at(result, route),
                                .layers = hs_layers_default(),
                                .chosen_point = -1,
                                .folds = TRUE,
                                .for_print = TRUE};
    g_autoptr(hs_scene) scene = hs_scene_build(&request);
    hs_view view = hs_view_fit(scene, WIDTH, HEIGHT, FONT);
    hs_painter painter = {cr, scene, &view, theme, hs_paint_pango_new()};

    cairo_rectangle(cr, 0, 0, WIDTH, HEIGHT);
    cairo_clip(cr);
    hs_paint_colour(cr, theme->paper, 1);
    cairo_paint(cr);
    hs_paint_scene(cr, scene, &view, theme);
    if (result->n_samples > 0)
        paint_heading(&painter, result, &result->samples[request.sample]);
    g_object_unref(painter.pango);
}

/* cairo would write the wall clock; the document's own date makes the bytes repeat. */
static void
set_pdf_facts(cairo_surface_t *surface, const hs_task *task)
{
    const char *date = task->about.date;
    g_autofree char *stamp =
        g_strdup_printf("%sT00:00:00Z", date && strlen(date) == 10 ? date : "2000-01-01");

    cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_CREATE_DATE, stamp);
    cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_CREATOR, "Handspike");
    if (task->about.title)
        cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_TITLE, task->about.title);
}

static cairo_surface_t *
make_surface(hs_format format, GByteArray *bytes, const hs_task *task)
{
    cairo_surface_t *surface;

    if (format == FORMAT_PNG)
        return cairo_image_surface_create(CAIRO_FORMAT_RGB24, (int)(WIDTH * PNG_SCALE),
                                          (int)(HEIGHT * PNG_SCALE));
    if (format == FORMAT_SVG) {
        surface = cairo_svg_surface_create_for_stream(append, bytes, WIDTH, HEIGHT);
        cairo_svg_surface_restrict_to_version(surface, CAIRO_SVG_VERSION_1_2);
        return surface;
    }
    surface = cairo_pdf_surface_create_for_stream(append, bytes, WIDTH, HEIGHT);
    set_pdf_facts(surface, task);
    return surface;
}

static int
find_option(const hs_results *results, const char *id)
{
    for (int i = 0; i < results->n_options; i++)
        if (g_strcmp0(results->options[i].id, id) == 0)
            return i;
    return -1;
}

gboolean
hs_export_view(const hs_document *document,
               const hs_results *results,
               const char *option_id,
               double route,
               const char *path,
               GError **error)
{
    hs_format format = format_of(path);
    int option = find_option(results, option_id);
    g_autoptr(GByteArray) bytes = g_byte_array_new();

    if (format == FORMAT_NONE) {
        g_set_error(error, G_IO_ERROR, G_IO_ERROR_INVALID_FILENAME,
                    _("“%s” must end in .svg, .png or .pdf"), path);
        return FALSE;
    }
    if (option < 0) {
        g_set_error(error, G_IO_ERROR, G_IO_ERROR_INVALID_ARGUMENT,
                    _("there is no option “%s”"), option_id);
        return FALSE;
    }
    cairo_surface_t *surface = make_surface(format, bytes, hs_document_task(document));
    cairo_t *cr = cairo_create(surface);

    if (format == FORMAT_PNG)
        cairo_scale(cr, PNG_SCALE, PNG_SCALE);
    paint_picture(cr, document, results, option, route,
                  hs_theme_get(format == FORMAT_PDF ? HS_THEME_PAPER : HS_THEME_LIGHT));
    if (format == FORMAT_PDF)
        cairo_show_page(cr);
    cairo_status_t status = cairo_status(cr);

    if (status == CAIRO_STATUS_SUCCESS && format == FORMAT_PNG)
        status = cairo_surface_write_to_png_stream(surface, append, bytes);
    cairo_surface_finish(surface);
    if (status == CAIRO_STATUS_SUCCESS)
        status = cairo_surface_status(surface);
    cairo_destroy(cr);
    cairo_surface_destroy(surface);
    if (status != CAIRO_STATUS_SUCCESS) {
        g_set_error(error, G_IO_ERROR, G_IO_ERROR_FAILED,
                    _("the picture could not be made: %s"), cairo_status_to_string(status));
        return FALSE;
    }
    return g_file_set_contents(path, (const char *)bytes->data, (gssize)bytes->len, error);
}

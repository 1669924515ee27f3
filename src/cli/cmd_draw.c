/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how does the side view get into a file?
 * Answer:    handspike draw FILE -o OUT.svg|.png|.pdf --option ID --at ROUTE [--limits SET].
 * Not here:  the picture (draw/). */
#include "cmd.h"
#include "sheet.h"
#include "translate.h"

#include <math.h>
#include <string.h>

static gboolean
has_option(const hs_results *results, const char *id)
{
    for (int i = 0; i < results->n_options; i++)
        if (strcmp(results->options[i].id, id) == 0)
            return TRUE;
    return FALSE;
}

static gboolean
is_picture(const char *path)
{
    g_autofree char *lower = g_ascii_strdown(path, -1);

    return g_str_has_suffix(lower, ".svg") || g_str_has_suffix(lower, ".png") ||
           g_str_has_suffix(lower, ".pdf");
}

/* The place: 1 is the first point, 1.25 a quarter of the way from the first to the second. */
static gboolean
read_route(const char *text, double *ret_route)
{
    char *end = NULL;

    if (text == NULL || *text == '\0')
        return FALSE;
    *ret_route = g_ascii_strtod(text, &end);
    return *end == '\0' && isfinite(*ret_route) && *ret_route >= 1.0;
}

static hs_exit
draw(const char *file, const char *limits, const char *out, const char *option, double route)
{
    g_autoptr(GError) error = NULL;
    hs_assessed assessed;
    hs_exit status = hs_cmd_assess(file, limits, HS_ASSESS_PLAIN, &assessed);
    int n_points;

    if (status != HS_EXIT_DONE)
        return status;
    n_points = hs_document_task(assessed.document)->route.n_points;
    if (!has_option(&assessed.results, option))
        status =
            hs_cmd_wrong_use("draw", _("--option %s: the document has no such option"), option);
    else if (route > n_points)
        status = hs_cmd_wrong_use("draw", _("--at: 1 to %d is allowed"), n_points);
    else if (!hs_export_view(assessed.document, &assessed.results, option, route, out, &error))
        status = hs_cmd_file_error(error);
    hs_assessed_clear(&assessed);
    return status;
}

hs_exit
hs_cmd_draw_run(int argc, char **argv)
{
    g_autofree char *out = NULL, *option = NULL, *at = NULL, *limits = NULL;
    const GOptionEntry entries[] = {
        {"output", 'o', 0, G_OPTION_ARG_FILENAME, &out, N_("file to write: .svg, .png or .pdf"),
         "OUT"},
        {"option", 0, 0, G_OPTION_ARG_STRING, &option, N_("id of the option"), "ID"},
        {"at", 0, 0, G_OPTION_ARG_STRING, &at, N_("place of the route: 1 is the first point"),
         "ROUTE"},
        HS_CMD_LIMITS(&limits),
        G_OPTION_ENTRY_NULL};
    g_auto(GStrv) files = NULL;
    double route = 0.0;
    hs_exit status = hs_cmd_options(argc, argv, entries, 1, &files);

    if (status != HS_EXIT_DONE)
        return status;
    if (out == NULL || option == NULL || at == NULL)
        return hs_cmd_wrong_use(argv[0], _("-o, --option and --at are wanted"));
    if (!is_picture(out))
        return hs_cmd_wrong_use(
            argv[0], _("-o %s: a name that ends in .svg, .png or .pdf is wanted"), out);
    if (!read_route(at, &route))
        return hs_cmd_wrong_use(argv[0], _("--at %s: a number from 1 on is wanted"), at);
    return draw(files[0], limits, out, option, route);
}

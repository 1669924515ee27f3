/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how does the sheet get onto paper without a window?
 * Answer:    handspike sheet FILE -o OUT.pdf [--paper a4|letter] [--lang CODE] [--limits SET].
 * Not here:  the pages (draw/sheet.c). */
#include "cmd.h"
#include "sheet.h"
#include "translate.h"

#include <string.h>

static gboolean
read_paper(const char *text, hs_paper *ret_paper)
{
    gboolean is_letter = g_strcmp0(text, "letter") == 0;

    *ret_paper = is_letter ? HS_PAPER_LETTER : HS_PAPER_A4;
    return text == NULL || is_letter || strcmp(text, "a4") == 0;
}

hs_exit
hs_cmd_sheet_run(int argc, char **argv)
{
    g_autofree char *out = NULL, *paper = NULL, *language = NULL, *limits = NULL;
    const GOptionEntry entries[] = {
        {"output", 'o', 0, G_OPTION_ARG_FILENAME, &out, N_("file to write"), "OUT.pdf"},
        {"paper", 0, 0, G_OPTION_ARG_STRING, &paper, N_("a4 (usual) or letter"), "a4|letter"},
        {"lang", 0, 0, G_OPTION_ARG_STRING, &language,
         N_("language of the sheet, for example de"), "CODE"},
        HS_CMD_LIMITS(&limits),
        G_OPTION_ENTRY_NULL};
    g_auto(GStrv) files = NULL;
    g_autoptr(GError) error = NULL;
    hs_assessed assessed;
    hs_sheet_request request = {0};
    hs_exit status = hs_cmd_options(argc, argv, entries, 1, &files);

    if (status != HS_EXIT_DONE)
        return status;
    if (out == NULL)
        return hs_cmd_wrong_use(argv[0], _("-o is wanted"));
    if (!read_paper(paper, &request.paper))
        return hs_cmd_wrong_use(argv[0], _("--paper %s: a4 or letter is allowed"), paper);
    if (language != NULL)
        hs_cmd_set_language(language);
    status = hs_cmd_assess(files[0], limits, HS_ASSESS_DOUBT, &assessed);
    if (status != HS_EXIT_DONE)
        return status;
    request.document = assessed.document;
    request.results = &assessed.results;
    request.limits = assessed.set;
    if (!hs_sheet_write_pdf(&request, out, &error))
        status = hs_cmd_file_error(error);
    hs_assessed_clear(&assessed);
    return status;
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how does the training handout get onto paper?
 * Answer:    handspike handout FILE -o OUT.pdf [--answers] [--limits SET].
 * Not here:  the pages (draw/handout.c). */
#include "cmd.h"
#include "sheet.h"
#include "translate.h"

hs_exit
hs_cmd_handout_run(int argc, char **argv)
{
    g_autofree char *out = NULL, *limits = NULL;
    gboolean answers = FALSE;
    const GOptionEntry entries[] = {
        {"output", 'o', 0, G_OPTION_ARG_FILENAME, &out, N_("file to write"), "OUT.pdf"},
        {"answers", 0, 0, G_OPTION_ARG_NONE, &answers, N_("with the answers"), NULL},
        HS_CMD_LIMITS(&limits),
        G_OPTION_ENTRY_NULL};
    g_auto(GStrv) files = NULL;
    g_autoptr(GError) error = NULL;
    hs_assessed assessed;
    hs_exit status = hs_cmd_options(argc, argv, entries, 1, &files);

    if (status == HS_EXIT_DONE && out == NULL)
        status = hs_cmd_wrong_use(argv[0], _("-o is wanted"));
    if (status == HS_EXIT_DONE)
        status = hs_cmd_assess(files[0], limits, HS_ASSESS_FULL, &assessed);
    if (status != HS_EXIT_DONE)
        return status;
    if (!hs_handout_write_pdf(&(hs_sheet_request){.document = assessed.document,
                                                  .results = &assessed.results,
                                                  .limits = assessed.set},
                              answers, out, &error))
        status = hs_cmd_file_error(error);
    hs_assessed_clear(&assessed);
    return status;
}

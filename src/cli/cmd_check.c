/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  is this document valid?
 * Answer:    handspike check FILE: one line an error on standard error, or one line with the file code.
 * Not here:  the rules (model/fields.def). */
#include "cmd.h"
#include "translate.h"

#include <string.h>

hs_exit
hs_cmd_check_run(int argc, char **argv)
{
    g_auto(GStrv) files = NULL;
    g_autoptr(hs_document) document = NULL;
    g_autofree char *text = NULL;
    hs_exit status = hs_cmd_options(argc, argv, NULL, 1, &files);

    if (status == HS_EXIT_DONE)
        status = hs_cmd_read(files[0], &document);
    if (status != HS_EXIT_DONE)
        return status;
    text =
        g_strdup_printf(_("%s: valid, file code %s\n"), files[0], hs_document_digest(document));
    return hs_cmd_print(text, strlen(text));
}

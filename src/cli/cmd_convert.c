/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how does a spreadsheet become documents?
 * Answer:    handspike convert TASKS.csv: one document a line for `survey`.
 * Not here:  the columns (model/csv.c). */
#include "cmd.h"
#include "csv.h"
#include "translate.h"

#include <stdio.h>

hs_exit
hs_cmd_convert_run(int argc, char **argv)
{
    g_auto(GStrv) files = NULL;
    g_autoptr(GPtrArray) faults = g_ptr_array_new_with_free_func((GDestroyNotify)hs_fault_free);
    g_autoptr(GError) error = NULL;
    g_autofree char *text = NULL;
    gsize length = 0;
    hs_exit status = hs_cmd_options(argc, argv, NULL, 1, &files);

    if (status != HS_EXIT_DONE)
        return status;
    text = hs_csv_convert_file(files[0], faults, &length, &error);
    if (error != NULL)
        return hs_cmd_file_error(error);
    for (guint i = 0; i < faults->len; i++) {
        const hs_fault *fault = g_ptr_array_index(faults, i);

        fprintf(stderr, "%s: %s: %s\n", files[0], fault->path, fault->text);
    }
    return text != NULL ? hs_cmd_print(text, length) : HS_EXIT_INVALID;
}

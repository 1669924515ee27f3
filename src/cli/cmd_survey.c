/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how do thousands of tasks go through?
 * Answer:    handspike survey [--jobs N] [--limits SET]: lines from standard input, lines to standard output.
 * Not here:  the ring of threads (model/survey.c). */
#include "cmd.h"
#include "survey.h"
#include "translate.h"

#define MOST_JOBS 256

hs_exit
hs_cmd_survey_run(int argc, char **argv)
{
    int jobs = (int)g_get_num_processors();
    g_autofree char *limits = NULL;
    const GOptionEntry entries[] = {{"jobs", 'j', 0, G_OPTION_ARG_INT, &jobs,
                                     N_("threads; the results do not depend on it"), "N"},
                                    HS_CMD_LIMITS(&limits),
                                    G_OPTION_ENTRY_NULL};
    g_autoptr(GError) error = NULL;
    g_autoptr(hs_site_set) set = NULL;
    hs_exit status = hs_cmd_options(argc, argv, entries, 0, NULL);

    if (status != HS_EXIT_DONE)
        return status;
    if (jobs < 1 || jobs > MOST_JOBS)
        return hs_cmd_wrong_use(argv[0], _("--jobs %d: 1 to %d is allowed"), jobs, MOST_JOBS);
    if (limits != NULL)
        status = hs_cmd_read_limits(limits, &set);
    if (status != HS_EXIT_DONE)
        return status;
    return hs_survey_run(stdin, stdout, jobs, set, &error) ? HS_EXIT_DONE
                                                           : hs_cmd_file_error(error);
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  is this call for the command line?
 * Answer:    hs_cli_run() does it and says so, or says that a window is wanted.
 * Not here:  the window (app/). */
#ifndef HS_CLI_H
#define HS_CLI_H

#include <glib.h>

/* TRUE: done, with the exit status. FALSE: a window is wanted for argv. */
gboolean hs_cli_run(int argc, char **argv, int *ret_exit);

#endif

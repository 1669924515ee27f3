/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  window or command line?
 * Answer:    the command line first, which needs no display; GTK is started only when a window is wanted.
 * Not here:  everything else. */
#include "cli.h"

#ifdef HS_WITH_WINDOW
#include "application.h"
#endif

#include <glib/gi18n.h>
#include <locale.h>
#include <stdio.h>

int
main(int argc, char **argv)
{
    int status = 0;

    setlocale(LC_ALL, "");
    bindtextdomain(GETTEXT_PACKAGE, HS_LOCALEDIR);
    bind_textdomain_codeset(GETTEXT_PACKAGE, "UTF-8");
    textdomain(GETTEXT_PACKAGE);
    if (hs_cli_run(argc, argv, &status))
        return status;
#ifdef HS_WITH_WINDOW
    return hs_app_run(argc, argv);
#else
    fputs("handspike: this build has no window\n", stderr);
    return 2;
#endif
}

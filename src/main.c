/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  window or command line?
 * Answer:    the command line first, which needs no display; GTK is started only when a window is wanted.
 * Not here:  everything else. */
#include "cli.h"

#ifdef HS_WITH_WINDOW
#include "application.h"
#endif

#include <gio/gio.h>
#include <libintl.h>
#include <locale.h>
#include <stdio.h>

/* Where the translations are: the variable HS_LOCALEDIR decides; a program that still stands in its build tree finds them there,
 * every other one where they were installed. New, in the encoding of file names. */
static char *
locale_dir(void)
{
    g_autofree char *self = g_file_read_link("/proc/self/exe", NULL);
    g_autofree char *folder = self != NULL ? g_path_get_dirname(self) : NULL;
    g_autofree char *mark = folder != NULL ? g_build_filename(folder, "..", "build.ninja", NULL) : NULL;

    if (g_getenv("HS_LOCALEDIR") != NULL)
        return g_strdup(g_getenv("HS_LOCALEDIR"));
    if (mark != NULL && g_file_test(mark, G_FILE_TEST_EXISTS))
        return g_build_filename(folder, "..", "po", NULL);
    return g_strdup(HS_LOCALEDIR);
}

int
main(int argc, char **argv)
{
    g_autofree char *translations = locale_dir();
    int status = 0;

    setlocale(LC_ALL, "");
    bindtextdomain(GETTEXT_PACKAGE, translations);
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

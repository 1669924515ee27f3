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

/* The folder of the catalogues in the build tree that this program still stands in, at most three folders up; NULL when it
 * stands elsewhere. */
static char *
build_locale_dir(void)
{
    g_autofree char *at = g_file_read_link("/proc/self/exe", NULL);

    for (int up = 0; at != NULL && up < 4; up++) {
        char *folder = g_path_get_dirname(at);
        g_autofree char *mark = g_build_filename(folder, "build.ninja", NULL);

        g_free(at);
        at = folder;
        if (g_file_test(mark, G_FILE_TEST_EXISTS))
            return g_build_filename(folder, "po", NULL);
    }
    return NULL;
}

/* Where the translations are: the variable HS_LOCALEDIR decides, then the build tree, then where they were installed. New, in
 * the encoding of file names. */
static char *
locale_dir(void)
{
    g_autofree char *built = build_locale_dir();

    if (g_getenv("HS_LOCALEDIR") != NULL)
        return g_strdup(g_getenv("HS_LOCALEDIR"));
    return built != NULL ? g_steal_pointer(&built) : g_strdup(HS_LOCALEDIR);
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

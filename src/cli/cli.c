/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  is this call for the command line?
 * Answer:    when its first word is a command, --help or --version.
 * Not here:  what the commands do (cmd_*.c). */
#include "cli.h"

#include "cmd.h"
#include "translate.h"

#include <gio/gio.h>
#include <string.h>

static hs_exit
print_help(void)
{
    g_autoptr(GString) text = g_string_new(NULL);
    int n = 0;
    const hs_command *commands = hs_cmd_table(&n);

    g_string_append(text, _("Handspike: can this lift, that a crew does today, be done by one "
                            "worker in an assist suit?\n\n"));
    g_string_append(text, _("Usage:\n  handspike [FILE...]\n      open the window\n"));
    for (int i = 0; i < n; i++)
        g_string_append_printf(text, "  handspike %s %s\n      %s\n", commands[i].name,
                               _(commands[i].arguments), _(commands[i].help));
    g_string_append(text, "  handspike --version\n  handspike --help\n\n");
    g_string_append(
        text,
        _("FILE may be - for standard input. Exit status: 0 done (whatever the verdict),\n"
          "2 wrong use, 3 the document is invalid, 4 a file could not be read or written.\n"));
    return hs_cmd_print(text->str, text->len);
}

static hs_exit
print_version(void)
{
    static const char version[] = "handspike " HS_VERSION "\n";

    return hs_cmd_print(version, strlen(version));
}

/* A first word that is neither command nor file: most likely a command mistyped. */
static hs_exit
refuse(const char *word)
{
    if (word[0] != '-' && strpbrk(word, "./") != NULL) {
        g_printerr(_("handspike: %s: there is no such file\n"), word);
        return HS_EXIT_FILE;
    }
    return hs_cmd_wrong_use(NULL, _("“%s” is neither a command nor a file"), word);
}

gboolean
hs_cli_run(int argc, char **argv, int *ret_exit)
{
    const hs_command *command = argc > 1 ? hs_cmd_find(argv[1]) : NULL;

    /* The desktop starts the window with an option of its own, and so does whoever wants its picture. */
    if (argc < 2 || g_str_has_prefix(argv[1], "--gapplication-") ||
        g_str_has_prefix(argv[1], "--window-picture"))
        return FALSE;
    if (command != NULL) {
        *ret_exit = (int)command->run(argc - 1, argv + 1);
        return TRUE;
    }
    if (strcmp(argv[1], "--help") == 0 || strcmp(argv[1], "-h") == 0) {
        *ret_exit = (int)print_help();
        return TRUE;
    }
    if (strcmp(argv[1], "--version") == 0) {
        *ret_exit = (int)print_version();
        return TRUE;
    }
    if (strstr(argv[1], "://") != NULL || g_file_test(argv[1], G_FILE_TEST_EXISTS))
        return FALSE;
    *ret_exit = (int)refuse(argv[1]);
    return TRUE;
}

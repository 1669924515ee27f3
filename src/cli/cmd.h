/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what have all commands in common?
 * Answer:    their table, exit statuses, reading and assessing a document, writing without a half-written answer.
 * Not here:  what each command does (cmd_*.c), the table's lines (commands.def). */
#ifndef HS_CMD_H
#define HS_CMD_H

#include "assess.h"
#include "document.h"
#include "site_limits.h"

typedef enum {
    HS_EXIT_DONE = 0,      /* whatever the verdict */
    HS_EXIT_WRONG_USE = 2, /* arguments */
    HS_EXIT_INVALID = 3,   /* the document is invalid or newer */
    HS_EXIT_FILE = 4       /* a file could not be read or written */
} hs_exit;

typedef struct {
    const char *name;
    hs_exit (*run)(int argc, char **argv); /* argv[0] is the command's name */
    const char *arguments, *help;
} hs_command;

const hs_command *hs_cmd_find(const char *name);
const hs_command *hs_cmd_table(int *ret_n);

/* What stands on a command line after its name, read by GLib's option parser. n_files: how many files are allowed and wanted. */
hs_exit hs_cmd_options(
    int argc, char **argv, const GOptionEntry *entries, int n_files, char ***ret_files);

/* Messages on standard error. */
hs_exit hs_cmd_wrong_use(const char *command, const char *format, ...) G_GNUC_PRINTF(2, 3);
hs_exit hs_cmd_file_error(const GError *error);

/* Reads and validates; one line an error on standard error. *ret_document only on HS_EXIT_DONE. */
hs_exit hs_cmd_read(const char *file, hs_document **ret_document);

typedef struct {
    hs_document *document;
    hs_site_set *set; /* NULL: none */
    hs_arena *arena;
    hs_results results;
} hs_assessed;

/* limits: file with a site's set, laid under the document's own figures; NULL: without. */
hs_exit hs_cmd_assess(const char *file,
                      const char *limits,
                      hs_assess_mode mode,
                      hs_assessed *ret_assessed);
/* The option --limits, the same for every command that assesses. */
#define HS_CMD_LIMITS(variable)                                                                \
    {                                                                                          \
        "limits", 0, 0, G_OPTION_ARG_FILENAME, variable,                                       \
            N_("a set of limits: a file or the name of one that ships; the document's own "    \
               "figures win"),                                                                 \
            N_("SET")                                                                          \
    }
/* A set of limits; faults as those of a document. *ret_set only on HS_EXIT_DONE. */
hs_exit hs_cmd_read_limits(const char *file, hs_site_set **ret_set);
void hs_assessed_clear(hs_assessed *assessed);

/* All of a text on standard output, or exit status 4 with a message. */
hs_exit hs_cmd_print(const char *text, gsize length);

/* Says the rest of the program in another language: figures and sentences. */
void hs_cmd_set_language(const char *code);

#define COMMAND(name, function, arguments, help) hs_exit function(int argc, char **argv);
#include "commands.def"
#undef COMMAND

#endif

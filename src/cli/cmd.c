/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what have all commands in common?
 * Answer:    reading with messages in one form, and output that is whole or absent.
 * Not here:  which command is meant (cli.c). */
#include "cmd.h"

#include "quantity.h"
#include "site_sets.h"
#include "translate.h"

#include <errno.h>
#include <locale.h>
#include <math.h>
#include <stdio.h>
#include <string.h>

static const hs_command table[] = {
#define COMMAND(name, function, arguments, help) {name, function, arguments, help},
#include "commands.def"
#undef COMMAND
};

const hs_command *
hs_cmd_table(int *ret_n)
{
    *ret_n = (int)G_N_ELEMENTS(table);
    return table;
}

const hs_command *
hs_cmd_find(const char *name)
{
    for (gsize i = 0; i < G_N_ELEMENTS(table); i++)
        if (strcmp(table[i].name, name) == 0)
            return &table[i];
    return NULL;
}

hs_exit
hs_cmd_wrong_use(const char *command, const char *format, ...)
{
    va_list args;
    g_autofree char *text = NULL;

    va_start(args, format);
    text = g_strdup_vprintf(format, args);
    va_end(args);
    if (command != NULL) {
        fprintf(stderr, "handspike %s: %s\n", command, text);
        fprintf(stderr, _("Try “handspike %s --help”.\n"), command);
    } else {
        fprintf(stderr, "handspike: %s\n", text);
        fputs(_("Try “handspike --help”.\n"), stderr);
    }
    return HS_EXIT_WRONG_USE;
}

hs_exit
hs_cmd_file_error(const GError *error)
{
    fprintf(stderr, "handspike: %s\n", error->message);
    return HS_EXIT_FILE;
}

hs_exit
hs_cmd_options(
    int argc, char **argv, const GOptionEntry *entries, int n_files, char ***ret_files)
{
    const hs_command *command = hs_cmd_find(argv[0]);
    g_autoptr(GOptionContext) context = g_option_context_new(NULL);
    g_autoptr(GError) error = NULL;
    g_auto(GStrv) files = NULL;
    g_auto(GStrv) rest = NULL;
    const GOptionEntry remaining[] = {
        {G_OPTION_REMAINING, 0, 0, G_OPTION_ARG_FILENAME_ARRAY, &files, NULL, NULL},
        G_OPTION_ENTRY_NULL};
    g_autofree char *usage =
        g_strdup_printf(_("Usage: handspike %s %s"), command->name, _(command->arguments));
    g_autofree char *summary = g_strdup_printf("%s\n%s", usage, _(command->help));

    rest = g_new0(char *, argc + 1);
    for (int i = 0; i < argc; i++)
        rest[i] = g_strdup(argv[i]);
    g_option_context_set_summary(context, summary);
    if (entries != NULL)
        g_option_context_add_main_entries(context, entries, GETTEXT_PACKAGE);
    g_option_context_add_main_entries(context, remaining, GETTEXT_PACKAGE);
    if (!g_option_context_parse_strv(context, &rest, &error))
        return hs_cmd_wrong_use(argv[0], "%s", error->message);
    if ((files != NULL ? (int)g_strv_length(files) : 0) != n_files)
        return hs_cmd_wrong_use(argv[0], n_files == 0 ? _("no file is wanted here")
                                                      : _("exactly one FILE is wanted"));
    if (ret_files != NULL)
        *ret_files = g_steal_pointer(&files);
    return HS_EXIT_DONE;
}

static gboolean
print_faults(const char *file, const GPtrArray *faults)
{
    gboolean any = FALSE;

    for (guint i = 0; i < faults->len; i++) {
        const hs_fault *fault = g_ptr_array_index(faults, i);

        if (fault->is_warning) {
            fprintf(stderr, _("%s: %s: warning: %s\n"), file, fault->path, fault->text);
        } else {
            fprintf(stderr, "%s: %s: %s\n", file, fault->path, fault->text);
            any = TRUE;
        }
    }
    return any;
}

hs_exit
hs_cmd_read(const char *file, hs_document **ret_document)
{
    g_autoptr(GPtrArray) faults = g_ptr_array_new_with_free_func((GDestroyNotify)hs_fault_free);
    g_autoptr(GError) error = NULL;
    g_autoptr(hs_document) document = hs_document_load(file, faults, &error);
    gboolean any;

    if (error != NULL)
        return hs_cmd_file_error(error);
    any = print_faults(file, faults);
    if (document != NULL && hs_document_is_read_only(document)) {
        if (!any)
            fprintf(stderr,
                    _("%s: version: the file is of a newer version than this program reads, 1 "
                      "is allowed\n"),
                    file);
        return HS_EXIT_INVALID;
    }
    if (document == NULL || any || hs_document_task(document) == NULL)
        return HS_EXIT_INVALID;
    *ret_document = g_steal_pointer(&document);
    return HS_EXIT_DONE;
}

hs_exit
hs_cmd_read_limits(const char *file, hs_site_set **ret_set)
{
    g_autoptr(GPtrArray) faults = g_ptr_array_new_with_free_func((GDestroyNotify)hs_fault_free);
    g_autoptr(GError) error = NULL;
    g_autoptr(hs_site_set) set = hs_site_set_load(file, faults, &error);

    if (error != NULL)
        return hs_cmd_file_error(error);
    print_faults(file, faults);
    if (set == NULL)
        return HS_EXIT_INVALID;
    *ret_set = g_steal_pointer(&set);
    return HS_EXIT_DONE;
}

void
hs_assessed_clear(hs_assessed *assessed)
{
    g_clear_pointer(&assessed->document, hs_document_unref);
    g_clear_pointer(&assessed->set, hs_site_set_unref);
    g_clear_pointer(&assessed->arena, hs_arena_free);
}

static void
print_refusal(const char *file, const hs_error *error)
{
    g_autofree char *value = isfinite(error->value) ? hs_number_text(error->value) : NULL;
    g_autofree char *least = isfinite(error->least) ? hs_number_text(error->least) : NULL;
    g_autofree char *most = isfinite(error->most) ? hs_number_text(error->most) : NULL;

    fprintf(stderr, "%s: %s: ", file, error->where);
    if (error->status == HS_E_INTERNAL || value == NULL)
        fputs(_("the task cannot be worked out with this value"), stderr);
    else
        fprintf(stderr, _("%s is out of range"), value);
    if (least != NULL && most != NULL)
        fprintf(stderr, _(", %s to %s is allowed"), least, most);
    else if (least != NULL)
        fprintf(stderr, _(", %s or more is allowed"), least);
    else if (most != NULL)
        fprintf(stderr, _(", up to %s is allowed"), most);
    fputc('\n', stderr);
}

hs_exit
hs_cmd_assess(const char *file,
              const char *limits,
              hs_assess_mode mode,
              hs_assessed *ret_assessed)
{
    hs_assessed made = {0};
    hs_error error = {0};
    const hs_task *task;
    hs_exit status = limits != NULL ? hs_cmd_read_limits(limits, &made.set) : HS_EXIT_DONE;

    if (status == HS_EXIT_DONE)
        status = hs_cmd_read(file, &made.document);
    if (status != HS_EXIT_DONE) {
        hs_assessed_clear(&made);
        return status;
    }
    made.arena = hs_arena_new();
    task = hs_site_set_apply(made.set, hs_document_task(made.document), made.arena);
    if (hs_assess(task, mode, made.arena, &made.results, &error) != HS_OK) {
        print_refusal(file, &error);
        hs_assessed_clear(&made);
        return HS_EXIT_INVALID;
    }
    *ret_assessed = made;
    return HS_EXIT_DONE;
}

hs_exit
hs_cmd_print(const char *text, gsize length)
{
    if (fwrite(text, 1, length, stdout) == length && fflush(stdout) == 0)
        return HS_EXIT_DONE;
    fprintf(stderr, _("handspike: standard output cannot be written: %s\n"), g_strerror(errno));
    return HS_EXIT_FILE;
}

/* Figures follow the language where the system has the locale ("de_CH", or "de_DE" for "de"), and
 * else are written plainly; sentences need any locale that is not "C". */
void
hs_cmd_set_language(const char *code)
{
    g_autofree char *upper = g_ascii_strup(code, -1);
    g_autofree char *named = g_strdup_printf("%s.UTF-8", code);
    g_autofree char *doubled = g_strdup_printf("%s_%s.UTF-8", code, upper);

    g_setenv("LANGUAGE", code, TRUE);
    if (setlocale(LC_ALL, named) == NULL && setlocale(LC_ALL, doubled) == NULL)
        setlocale(LC_ALL, "C.UTF-8");
}

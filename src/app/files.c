/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how are files opened, saved, exported and printed from the window?
 * Answer:    hs_files_*: file dialogs (the only modal thing) and what follows them; a failure is said in the notice bar.
 * Not here:  reading and writing (model), the pages (draw/sheet.c). */
#include "files.h"

#include "field.h"
#include "look.h"
#include "notice.h"
#include "sheet.h"

#include <glib/gi18n-lib.h>

typedef struct {
    GtkWidget *from;
    HsSession *session;
    void (*chosen)(GtkWidget *from, const char *path);                       /* open */
    gboolean (*write)(HsSession *session, const char *path, GError **error); /* save, export */
} dialog_wish;

static void
on_response(GtkNativeDialog *dialog, int response, gpointer data)
{
    dialog_wish *asked = data;
    g_autoptr(GFile) file = response == GTK_RESPONSE_ACCEPT
                                ? gtk_file_chooser_get_file(GTK_FILE_CHOOSER(dialog))
                                : NULL;
    g_autofree char *path = file ? g_file_get_path(file) : NULL;
    g_autoptr(GError) error = NULL;

    if (path != NULL && asked->chosen != NULL)
        asked->chosen(asked->from, path);
    else if (path != NULL && !asked->write(asked->session, path, &error))
        hs_notice_say(asked->from, error->message);
    g_clear_object(&asked->session);
    g_free(asked);
    g_object_unref(dialog);
}

static void
add_filter(GtkFileChooserNative *dialog, const char *name, const char *pattern)
{
    g_autoptr(GtkFileFilter) filter = gtk_file_filter_new();

    gtk_file_filter_set_name(filter, name);
    gtk_file_filter_add_pattern(filter, pattern);
    gtk_file_chooser_add_filter(GTK_FILE_CHOOSER(dialog), filter);
}

/* The file's own name without folder and ending, for a proposal. */
static char *
stem_of(HsSession *session)
{
    const char *path = hs_session_path(session);
    g_autofree char *base = path ? g_path_get_basename(path) : g_strdup(_("assessment"));
    char *end = strstr(base, ".handspike.json");

    if (end == NULL)
        end = strstr(base, ".json");
    return end != NULL ? g_strndup(base, (gsize)(end - base)) : g_strdup(base);
}

static void
ask_name(GtkWidget *from,
         HsSession *session,
         const char *title,
         const char *ending,
         gboolean (*write)(HsSession *, const char *, GError **))
{
    GtkWindow *parent = GTK_WINDOW(gtk_widget_get_root(from));
    GtkFileChooserNative *dialog = gtk_file_chooser_native_new(
        title, parent, GTK_FILE_CHOOSER_ACTION_SAVE, _("_Save"), _("_Cancel"));
    dialog_wish *asked = g_new0(dialog_wish, 1);
    g_autofree char *stem = stem_of(session);
    g_autofree char *name = g_strconcat(stem, ending, NULL);

    asked->from = from;
    asked->session = g_object_ref(session);
    asked->write = write;
    gtk_file_chooser_set_current_name(GTK_FILE_CHOOSER(dialog), name);
    if (hs_session_path(session) != NULL) {
        g_autoptr(GFile) file = g_file_new_for_path(hs_session_path(session));
        g_autoptr(GFile) folder = g_file_get_parent(file);
        gtk_file_chooser_set_current_folder(GTK_FILE_CHOOSER(dialog), folder, NULL);
    }
    gtk_native_dialog_set_modal(GTK_NATIVE_DIALOG(dialog), TRUE);
    g_signal_connect(dialog, "response", G_CALLBACK(on_response), asked);
    gtk_native_dialog_show(GTK_NATIVE_DIALOG(dialog));
}

static void
choose(GtkWidget *from,
       const char *title,
       const char *kind,
       void (*chosen)(GtkWidget *from, const char *path))
{
    GtkFileChooserNative *dialog =
        gtk_file_chooser_native_new(title, GTK_WINDOW(gtk_widget_get_root(from)),
                                    GTK_FILE_CHOOSER_ACTION_OPEN, _("_Open"), _("_Cancel"));
    dialog_wish *asked = g_new0(dialog_wish, 1);

    asked->from = from;
    asked->chosen = chosen;
    add_filter(dialog, kind, "*.json");
    add_filter(dialog, _("All files"), "*");
    gtk_native_dialog_set_modal(GTK_NATIVE_DIALOG(dialog), TRUE);
    g_signal_connect(dialog, "response", G_CALLBACK(on_response), asked);
    gtk_native_dialog_show(GTK_NATIVE_DIALOG(dialog));
}

void
hs_files_choose_open(GtkWidget *from, void (*chosen)(GtkWidget *from, const char *path))
{
    choose(from, _("Open an assessment"), _("Assessments"), chosen);
}

void
hs_files_choose_limits(GtkWidget *from, void (*chosen)(GtkWidget *from, const char *path))
{
    choose(from, _("Choose the site's set of limits"), _("Sets of limits"), chosen);
}

void
hs_files_save_as(GtkWidget *from, HsSession *session)
{
    ask_name(from, session, _("Save as"), ".handspike.json", hs_session_save);
}

void
hs_files_save(GtkWidget *from, HsSession *session)
{
    g_autoptr(GError) error = NULL;

    if (hs_document_is_read_only(hs_session_document(session)))
        hs_notice_say(
            from, _("This file is of a newer version: it can be looked at and not changed."));
    else if (hs_session_path(session) == NULL)
        hs_files_save_as(from, session);
    else if (!hs_session_save(session, hs_session_path(session), &error))
        hs_notice_say(from, error->message);
}

/* ---- paper --------------------------------------------------------------------------------- */

static gboolean
is_ready(GtkWidget *from, HsSession *session)
{
    if (hs_session_results(session) != NULL)
        return TRUE;
    hs_notice_say(from,
                  _("There is nothing to print yet: something is still missing in the brief."));
    return FALSE;
}

static gboolean
write_view(HsSession *session, const char *path, GError **error)
{
    const hs_results *results = hs_session_results(session);
    int option = hs_session_edited(session);
    int sample = hs_session_sample(session, option);

    return hs_export_view(hs_session_results_document(session), results,
                          results->options[option].id,
                          results->options[option].samples[sample].route, path, error);
}

void
hs_files_export_view(GtkWidget *from, HsSession *session)
{
    if (is_ready(from, session))
        ask_name(from, session, _("Export this view"), ".svg", write_view);
}

static hs_sheet_request
sheet_of(HsSession *session)
{
    return (hs_sheet_request){.document = hs_session_results_document(session),
                              .results = hs_session_results(session),
                              .paper = hs_look_units() == HS_UNITS_US ? HS_PAPER_LETTER
                                                                      : HS_PAPER_A4,
                              .us_units = hs_look_units() == HS_UNITS_US,
                              .limits = hs_session_limits(session)};
}

static gboolean
write_sheet(HsSession *session, const char *path, GError **error)
{
    hs_sheet_request request = sheet_of(session);

    return hs_sheet_write_pdf(&request, path, error);
}

static gboolean
write_handout(HsSession *session, const char *path, GError **error)
{
    hs_sheet_request request = sheet_of(session);

    return hs_handout_write_pdf(&request, TRUE, path, error);
}

void
hs_files_export_sheet(GtkWidget *from, HsSession *session)
{
    if (is_ready(from, session))
        ask_name(from, session, _("Export the sheet"), ".pdf", write_sheet);
}

void
hs_files_export_handout(GtkWidget *from, HsSession *session)
{
    if (is_ready(from, session))
        ask_name(from, session, _("Export the handout"), "-handout.pdf", write_handout);
}

static void
on_draw_page(GtkPrintOperation *operation,
             GtkPrintContext *context,
             int page,
             HsSession *session)
{
    hs_sheet_request request = sheet_of(session);

    (void)operation;
    if (request.results != NULL)
        hs_sheet_paint_page(gtk_print_context_get_cairo_context(context), &request, page);
}

/* Printed into a file, it is called like the document and lies beside it. */
static GtkPrintSettings *
print_settings(HsSession *session)
{
    GtkPrintSettings *settings = gtk_print_settings_new();
    const char *path = hs_session_path(session);

    if (path != NULL) {
        g_autofree char *name = g_path_get_basename(path);
        g_autofree char *folder = g_path_get_dirname(path);
        char *end = strstr(name, ".handspike.json");
        if (end != NULL)
            *end = '\0';
        gtk_print_settings_set(settings, GTK_PRINT_SETTINGS_OUTPUT_BASENAME, name);
        gtk_print_settings_set(settings, GTK_PRINT_SETTINGS_OUTPUT_DIR, folder);
    }
    return settings;
}

void
hs_files_print(GtkWidget *from, HsSession *session)
{
    g_autoptr(GError) error = NULL;

    if (!is_ready(from, session))
        return;
    hs_sheet_request request = sheet_of(session);
    g_autoptr(GtkPrintOperation) operation = gtk_print_operation_new();
    g_autoptr(GtkPageSetup) setup = gtk_page_setup_new();
    g_autoptr(GtkPaperSize) paper = gtk_paper_size_new(
        request.paper == HS_PAPER_LETTER ? GTK_PAPER_NAME_LETTER : GTK_PAPER_NAME_A4);
    g_autoptr(GtkPrintSettings) settings = print_settings(session);
    gtk_page_setup_set_paper_size_and_default_margins(setup, paper);
    gtk_print_operation_set_default_page_setup(operation, setup);
    gtk_print_operation_set_use_full_page(operation, TRUE);
    gtk_print_operation_set_unit(operation, GTK_UNIT_POINTS);
    gtk_print_operation_set_n_pages(operation, hs_sheet_n_pages(&request));
    gtk_print_operation_set_print_settings(operation, settings);
    g_signal_connect(operation, "draw-page", G_CALLBACK(on_draw_page), session);
    if (gtk_print_operation_run(operation, GTK_PRINT_OPERATION_ACTION_PRINT_DIALOG,
                                GTK_WINDOW(gtk_widget_get_root(from)),
                                &error) == GTK_PRINT_OPERATION_RESULT_ERROR)
        hs_notice_say(from, error->message);
}

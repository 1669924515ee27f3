/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how was a finding worked out, and what would make it pass?
 * Answer:    the sentence why, the remedy with its "Try", the working line by line, the source and how it is known.
 * Not here:  what the sentences say (model/words.c). */
#include "findings.h"

#include "change.h"
#include "look.h"
#include "remedy.h"
#include "rows.h"

#include <glib/gi18n-lib.h>

static GtkWidget *
line(GtkWidget *box, const char *text, const char *css)
{
    GtkWidget *label = gtk_label_new(text);

    gtk_label_set_wrap(GTK_LABEL(label), TRUE);
    gtk_label_set_wrap_mode(GTK_LABEL(label), PANGO_WRAP_WORD_CHAR);
    gtk_label_set_xalign(GTK_LABEL(label), 0.0f);
    if (css != NULL)
        gtk_widget_add_css_class(label, css);
    gtk_box_append(GTK_BOX(box), label);
    return label;
}

static void
on_try(GtkButton *button, gpointer data)
{
    HsSession *session = data;
    const hs_results *results = hs_session_results(session);
    int option = hs_session_finding_option(session), check = hs_session_finding_check(session);
    g_autofree char *label = NULL;

    if (results == NULL || option < 0)
        return;
    hs_edit *edit = hs_remedy_edit(session, option,
                                   hs_finding_of(results, option, (hs_check_id)check), &label);
    if (edit != NULL)
        hs_change_option(GTK_WIDGET(button), session, option, edit);
}

static void
add_try(GtkWidget *box, HsSession *session, int option, const hs_finding *finding)
{
    g_autofree char *label = NULL;
    hs_edit *edit = hs_remedy_edit(session, option, finding, &label);

    if (edit == NULL)
        return;
    hs_edit_free(edit);
    gtk_box_append(GTK_BOX(box),
                   hs_row_button(label, label, G_CALLBACK(on_try), session, NULL));
}

static void
add_steps(GtkWidget *box, const hs_finding *finding)
{
    g_autoptr(GPtrArray) steps = hs_words_worked(finding);

    for (guint i = 0; i < steps->len; i++) {
        const hs_worked *step = g_ptr_array_index(steps, i);

        if (step->title != NULL)
            line(box, step->title, "formula-title");
        line(box, step->symbols, "formula");
        line(box, step->numbers, "formula");
        if (step->source != NULL)
            line(box, step->source, "soft");
    }
}

GtkWidget *
hs_working_view_new(HsSession *session, int option, const hs_finding *finding)
{
    GtkWidget *box = gtk_box_new(GTK_ORIENTATION_VERTICAL, 4);
    const hs_results *results = hs_session_results(session);
    g_autofree char *heading = NULL;

    gtk_widget_add_css_class(box, "working");
    g_autofree char *place = hs_words_place(&results->options[option], finding);
    heading = g_strdup_printf(_("Working · %s%s%s"), results->options[option].name,
                              *place ? " · " : "", place);
    line(box, heading, "working-title");
    if (finding->text.reason != HS_REASON_none) {
        g_autofree char *text = hs_words_message(&finding->text, hs_look_units());
        line(box, text, NULL);
    }
    if (finding->remedy.reason != HS_REASON_none) {
        g_autofree char *text = hs_words_message(&finding->remedy, hs_look_units());
        line(box, text, "remedy");
        add_try(box, session, option, finding);
    }
    add_steps(box, finding);
    if (finding->source != HS_SRC_none) {
        g_autofree char *source = hs_words_source(finding->source);
        g_autofree char *text =
            g_strdup_printf("%s · %s", source, hs_words_confidence(finding->confidence));
        line(box, text, "soft");
    }
    return box;
}

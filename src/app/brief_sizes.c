/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how is a person's size picked from a survey?
 * Answer:    hs_size_row_new(): one drop-down that fills sex, stature and body mass at once, as one step to undo.
 * Not here:  the sizes (core/body/sizes.h), the fields that are filled (brief_bearers.c). */
#include "brief_sizes.h"

#include "change.h"
#include "field.h"
#include "rows.h"
#include "sizes.h"

#include <glib/gi18n-lib.h>

typedef struct {
    HsSession *session;
    GtkWidget *dropdown;
    int worker;
    gulong watch;
    gboolean is_showing;
} size_row;

static void
size_row_free(gpointer data)
{
    size_row *row = data;

    g_clear_signal_handler(&row->watch, row->session);
    g_free(row);
}

/* Position 0 is "as entered": the size is nobody's of the list. */
static guint
position_of(const size_row *row)
{
    const hs_document *document = hs_session_document(row->session);
    g_autofree char *sex = g_strdup_printf("workers[%d].sex", row->worker);
    g_autofree char *stature = g_strdup_printf("workers[%d].stature_m", row->worker);
    g_autofree char *mass = g_strdup_printf("workers[%d].mass_kg", row->worker);
    const char *word = hs_field_text(document, sex);

    return (guint)(hs_body_size_find(g_strcmp0(word, "female") == 0 ? HS_SEX_FEMALE
                                     : g_strcmp0(word, "male") == 0 ? HS_SEX_MALE
                                                                    : 0,
                                     hs_field_number(document, stature),
                                     hs_field_number(document, mass)) +
                   1);
}

static void
show_size(size_row *row)
{
    row->is_showing = TRUE;
    gtk_drop_down_set_selected(GTK_DROP_DOWN(row->dropdown), position_of(row));
    row->is_showing = FALSE;
}

static void
on_document(size_row *row, guint mask)
{
    if (mask & HS_CHANGED_DOCUMENT)
        show_size(row);
}

static void
on_size(size_row *row)
{
    guint at = gtk_drop_down_get_selected(GTK_DROP_DOWN(row->dropdown));
    const hs_body_size *size =
        at == GTK_INVALID_LIST_POSITION ? NULL : hs_body_size_get((int)at - 1);
    g_autofree char *sex = g_strdup_printf("workers[%d].sex", row->worker);
    g_autofree char *stature = g_strdup_printf("workers[%d].stature_m", row->worker);
    g_autofree char *mass = g_strdup_printf("workers[%d].mass_kg", row->worker);
    hs_edit *edit;

    if (row->is_showing)
        return;
    if (size == NULL) { /* "as entered" is no size to go to */
        show_size(row);
        return;
    }
    edit = hs_edit_new(_("Choose a body size"));
    hs_edit_set_string(edit, sex, size->sex == HS_SEX_FEMALE ? "female" : "male");
    hs_edit_set_number(edit, stature, size->stature_m);
    hs_edit_set_number(edit, mass, size->mass_kg);
    if (!hs_change_commit(row->dropdown, row->session, edit))
        show_size(row);
}

static GtkStringList *
words_of_sizes(void)
{
    GtkStringList *words = gtk_string_list_new(NULL);
    const hs_body_size *size;

    gtk_string_list_append(words, _("as entered"));
    for (int i = 0; (size = hs_body_size_get(i)) != NULL; i++) {
        /* Translators: a percentile of body size: "woman, 5th percentile" */
        g_autofree char *word =
            g_strdup_printf(size->sex == HS_SEX_FEMALE ? _("woman, %.0fth percentile")
                                                       : _("man, %.0fth percentile"),
                            size->percentile);
        gtk_string_list_append(words, word);
    }
    return words;
}

GtkWidget *
hs_size_row_new(HsSession *session, int worker, const char *name)
{
    GtkWidget *line = gtk_box_new(GTK_ORIENTATION_HORIZONTAL, 6),
              *label = gtk_label_new(_("Size of the survey"));
    size_row *row = g_new0(size_row, 1);

    *row = (size_row){
        .session = session,
        .dropdown = gtk_drop_down_new(G_LIST_MODEL(words_of_sizes()), NULL),
        .worker = worker,
    };
    gtk_label_set_xalign(GTK_LABEL(label), 0.0f);
    gtk_label_set_wrap(GTK_LABEL(label), TRUE);
    gtk_label_set_max_width_chars(GTK_LABEL(label), 8);
    gtk_widget_set_hexpand(label, TRUE);
    hs_row_name_button(row->dropdown, name);
    show_size(row);
    g_signal_connect_swapped(row->dropdown, "notify::selected", G_CALLBACK(on_size), row);
    row->watch = g_signal_connect_swapped(session, "changed", G_CALLBACK(on_document), row);
    gtk_widget_set_tooltip_text(
        line,
        _("Fills woman or man, stature and body mass from the 2012 survey of the US Army: 4082 "
          "men and "
          "1986 women, soldiers of 17 to 58 years, not the general public. A person who has "
          "both figures of one percentile is rarer than the percentile says."));
    gtk_box_append(GTK_BOX(line), label);
    gtk_box_append(GTK_BOX(line), row->dropdown);
    gtk_widget_add_css_class(line, "row");
    g_object_set_data_full(G_OBJECT(line), "hs-size", row, size_row_free);
    return line;
}

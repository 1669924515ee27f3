/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how is one field of the document shown and entered?
 * Answer:    a row: label, control, unit; bound to a path; numbers preview while they are typed and say why when refused.
 * Not here:  which fields there are (brief_*.c), ranges (the document's own rules, through the session). */
#ifndef HS_ROWS_H
#define HS_ROWS_H

#include "session.h"

#include <gtk/gtk.h>

#define HS_TYPE_QUANTITY_ROW (hs_quantity_row_get_type())
G_DECLARE_FINAL_TYPE(HsQuantityRow, hs_quantity_row, HS, QUANTITY_ROW, GtkWidget)

/* label: what is shown; name: what a screen reader says (NULL: the label); unit: the suffix of the key ("kg", "m", "pct" for
 * a fraction shown as per cent is not used: fields keep their unit); step: of the arrow keys, in that unit. */
GtkWidget *hs_quantity_row_new(HsSession *session,
                               const char *label,
                               const char *name,
                               const char *path,
                               const char *unit,
                               double step);

/* A line of text; several lines when `lines` is above 1. */
GtkWidget *hs_text_row_new(HsSession *session, const char *label, const char *path, int lines);

/* One sentence, shown on two lines or more: Return keeps it and goes to the next field, a pasted line break becomes a space. */
GtkWidget *hs_sentence_row_new(HsSession *session, const char *label, const char *path);

/* One of several words. ids: as in the file, "" stands for "not said" and takes the key away; "true"/"false" with
 * is_flag set a truth value, is_number a number. Both lists end with NULL and have the same length. */
typedef enum {
    HS_CHOICE_WORD,
    HS_CHOICE_FLAG,
    HS_CHOICE_NUMBER
} hs_choice_kind;
GtkWidget *hs_choice_row_new(HsSession *session,
                             const char *label,
                             const char *name,
                             const char *path,
                             hs_choice_kind kind,
                             const char *const *ids,
                             const char *const *words);
/* yes / no / not known */
GtkWidget *hs_tri_row_new(HsSession *session, const char *label, const char *path);

/* Things that only stand there. */
GtkWidget *hs_row_heading(const char *text);
GtkWidget *hs_row_hint(const char *text);
GtkWidget *hs_row_button(const char *label,
                         const char *name,
                         GCallback on_click,
                         gpointer data,
                         GDestroyNotify release);
/* Takes an item of a list away; label: what the undo and a screen reader say. */
GtkWidget *hs_row_remove(HsSession *session, const char *label, const char *path);
/* A chosen word that is too long for the brief ends in dots (whole in the list and as a tooltip) and widens nothing. */
void hs_row_cut_long(GtkWidget *dropdown);
/* Give the inner button of a drop-down or menu button the name too: GTK leaves it without one. */
void hs_row_name_button(GtkWidget *outer, const char *name);

#endif

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how does a widget change the document?
 * Answer:    hs_change_*: hands an edit to the session and says the sentence when it is refused; asks once before
 *            today's way (the baseline) is changed.
 * Not here:  what an edit is (model/edit.c). */
#ifndef HS_CHANGE_H
#define HS_CHANGE_H

#include "session.h"

#include <gtk/gtk.h>

/* The edit is taken over. FALSE: refused, the notice bar says why. */
gboolean hs_change_commit(GtkWidget *from, HsSession *session, hs_edit *edit);
/* The same for a change of one option: the baseline asks before its first change. TRUE: done; FALSE: refused or asked. */
gboolean hs_change_option(GtkWidget *from, HsSession *session, int option, hs_edit *edit);

void hs_change_number(
    GtkWidget *from, HsSession *session, const char *label, const char *path, double value);
void hs_change_text(GtkWidget *from,
                    HsSession *session,
                    const char *label,
                    const char *path,
                    const char *value);
/* A JSON value from a literal: "{\"hands\": 2}"; never NULL. */
JsonNode *hs_change_node(const char *json);
/* Index of the option that is edited, or -1 while it is the program's own added one. */
int hs_change_edited(HsSession *session);

#endif

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what was found, and what decides?
 * Answer:    HsFindings: the verdict on top, options as columns, checks as rows sorted by closeness, the working of the
 *            chosen one inside its row.
 * Not here:  sentences (model/words.c), the verdict's card (verdict_card.c), the working (working_view.c). */
#ifndef HS_FINDINGS_H
#define HS_FINDINGS_H

#include "session.h"

#include <gtk/gtk.h>

#define HS_TYPE_FINDINGS (hs_findings_get_type())
G_DECLARE_FINAL_TYPE(HsFindings, hs_findings, HS, FINDINGS, GtkWidget)
GtkWidget *hs_findings_new(HsSession *session);

/* The verdict of the option on the right (or of the only one) with its conditions. */
GtkWidget *hs_verdict_card_new(HsSession *session);
/* The working of a finding: text, remedy, lines with symbols and numbers, source, "Try". */
GtkWidget *hs_working_view_new(HsSession *session, int option, const hs_finding *finding);
/* NULL when the option has no finding of the check. */
const hs_finding *hs_finding_of(const hs_results *results, int option, hs_check_id check);
/* Glyph and bar of a status, drawn. ratio HS_ABSENT: the frame only. */
GtkWidget *hs_status_mark_new(void);
void hs_status_mark_set(GtkWidget *mark, hs_finding_status status, double ratio);

#endif

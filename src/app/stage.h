/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what happens, seen?
 * Answer:    HsStage: two options side by side at one moment, to one scale; tools, layers, plan.
 * Not here:  one side view (side_view.c), the headings (heading.c). */
#ifndef HS_STAGE_H
#define HS_STAGE_H

#include "session.h"

#include <gtk/gtk.h>

#define HS_TYPE_STAGE (hs_stage_get_type())
G_DECLARE_FINAL_TYPE(HsStage, hs_stage, HS, STAGE, GtkWidget)
GtkWidget *hs_stage_new(HsSession *session);
/* One view only, of the option that is edited (narrow windows). */
void hs_stage_set_single(HsStage *stage, gboolean single);
void hs_stage_set_drawing(HsStage *stage, gboolean drawing);
gboolean hs_stage_is_drawing(HsStage *stage);
void hs_stage_fit(HsStage *stage);
void hs_stage_toggle_plan(HsStage *stage);
void hs_stage_toggle_folds(HsStage *stage);

#endif

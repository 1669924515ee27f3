/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  who stands where, seen from above?
 * Answer:    HsPlanView: the plan of one option at this moment.
 * Not here:  what the plan consists of (draw/plan.c). */
#ifndef HS_PLAN_VIEW_H
#define HS_PLAN_VIEW_H

#include "session.h"

#include <gtk/gtk.h>

#define HS_TYPE_PLAN_VIEW (hs_plan_view_get_type())
G_DECLARE_FINAL_TYPE(HsPlanView, hs_plan_view, HS, PLAN_VIEW, GtkWidget)
GtkWidget *hs_plan_view_new(HsSession *session);
void hs_plan_view_set_option(HsPlanView *view, int option);

#endif

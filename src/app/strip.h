/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  when does what happen?
 * Answer:    HsStrip: the route unrolled along time, one plot a quantity; scrub, play, slow, power off here.
 * Not here:  the plots' drawing (draw/plot.c). */
#ifndef HS_STRIP_H
#define HS_STRIP_H

#include "session.h"

#include <gtk/gtk.h>

#define HS_TYPE_STRIP (hs_strip_get_type())
G_DECLARE_FINAL_TYPE(HsStrip, hs_strip, HS, STRIP, GtkWidget)
GtkWidget *hs_strip_new(HsSession *session);
void hs_strip_toggle_play(HsStrip *strip);
void hs_strip_toggle_slow(HsStrip *strip);
/* One plot only: the chosen finding's (small windows). */
void hs_strip_set_small(HsStrip *strip, gboolean small);

/* The plots with their cursor; a GtkScale over them is the cursor's handle. */
#define HS_TYPE_PLOTS (hs_plots_get_type())
G_DECLARE_FINAL_TYPE(HsPlots, hs_plots, HS, PLOTS, GtkWidget)
GtkWidget *hs_plots_new(HsSession *session);
void hs_plots_set_small(HsPlots *plots, gboolean small);

#endif

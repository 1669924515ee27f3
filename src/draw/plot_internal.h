/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what do the plot's files share?
 * Answer:    limits, held seconds and the right end of the axis.
 * Not here:  what others may call (plot.h). */
#ifndef HS_PLOT_INTERNAL_H
#define HS_PLOT_INTERNAL_H

#include "plot.h"

/* Seconds that can be held without power, of the wearer who can hold the shortest. */
double hs_plot_held_s(const hs_option_result *result, int sample);
/* In the plot's unit; of the option on the right where it has one, else of the left. */
double hs_plot_limit(const hs_plot_request *request);
double hs_plot_right_px(const hs_plot_request *request);
/* The limit is the least that is wanted. */
gboolean hs_plot_is_floor(hs_plot_kind kind);

#endif

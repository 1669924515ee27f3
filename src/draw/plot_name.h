/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  where beside its line does a name stand so that nobody takes it for the other line's?
 * Answer:    hs_plot_name_place(): above or below its own line, clear of the other, late rather than early.
 * Not here:  text and painting (plot.c). */
#ifndef HS_PLOT_NAME_H
#define HS_PLOT_NAME_H

#include "label.h"

typedef struct {
    const hs_vec2 *own, *other; /* px, y down, x rising; other may have no places */
    int n_own, n_other;
    const hs_box *kept; /* what no name should cover */
    int n_kept;
    hs_box surface;
    double gap_px; /* between line and name */
} hs_name_room;

/* What:      the best box of a width and height for a line's name.
 * In:        room: both lines and what is in the way; width_px, height_px > 0.
 * Out:       *ret_box inside the surface.
 * Frame:     px, y down.
 * Errors:    FALSE where the line has no place or the surface is too small; *ret_box then is not set.
 * Source:    common practice, no source. */
gboolean hs_plot_name_place(const hs_name_room *room,
                            double width_px,
                            double height_px,
                            hs_box *ret_box);
/* Least and most y of a line between two x; FALSE where it has no piece there. */
gboolean hs_line_range(const hs_vec2 *line,
                       int n,
                       double from_px,
                       double to_px,
                       double *ret_least_px,
                       double *ret_most_px);

#endif

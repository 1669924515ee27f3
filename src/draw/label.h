/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  where do the labels go so that none covers another?
 * Answer:    hs_labels_place(): the important ones first, each to the nearest free place; a leader line where it had to move.
 * Not here:  their text and type (paint_label.c). */
#ifndef HS_LABEL_H
#define HS_LABEL_H

#include "scene_internal.h"

typedef struct {
    double x, y, width, height; /* px, y down */
} hs_box;

typedef struct {
    hs_vec2 anchor_px;
    hs_side side;
    double width_px, height_px;
    double gap_px;           /* from the anchor where it is free */
    int priority;            /* the greater first */
    gboolean has_far_leader; /* its leader always shows */
    /* answer */
    gboolean
        is_placed; /* no room on the whole surface: it is left out, never laid over another */
    gboolean has_leader;
    hs_box box;
    hs_vec2 leader_px; /* where the leader meets the box */
} hs_label_wish;

/* taken: boxes that no label may cover; avoided: boxes that they should rather not. */
void hs_labels_place(hs_label_wish *wishes,
                     int n,
                     const hs_box *taken,
                     int n_taken,
                     const hs_box *avoided,
                     int n_avoided,
                     const hs_box *surface);
gboolean hs_boxes_overlap(const hs_box *a, const hs_box *b);

#endif

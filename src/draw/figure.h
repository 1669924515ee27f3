/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  where are a bearer's joints in the picture, and which outline has the body round them?
 * Answer:    hs_figure_make() from the computed posture, or of a person standing where none was found.
 * Not here:  the suit over it (layers/suit_layer.c). */
#ifndef HS_FIGURE_H
#define HS_FIGURE_H

#include "scene_internal.h"
#include "shape.h"

typedef enum {
    HS_SEEN_FROM_SIDE,
    HS_SEEN_FROM_FRONT,
    HS_SEEN_FROM_BEHIND
} hs_seen;

typedef struct {
    gboolean is_found; /* a posture was found */
    gboolean kneels;
    hs_seen seen;
    double side; /* +1 faces along the way, -1 against it */
    double stature_m;
    double foot_m;  /* length of the foot */
    hs_vec2 feet_m; /* ankles' midpoint on the floor */
    hs_vec2 at[HS_N_POSE];
} hs_figure;

/* In drawing coordinates. */
void hs_figure_make(const hs_scene *scene, int bearer, hs_figure *ret_figure);

typedef struct {
    double along;       /* 0 at the limb's first end, 1 at its second */
    double back, front; /* half widths, parts of stature */
} hs_girth;

/* A limb from a to b; front is the side the figure faces when the limb hangs down (is_up: when it stands up). */
void hs_figure_limb(const hs_figure *figure,
                    hs_outline *ret,
                    hs_vec2 a_m,
                    hs_vec2 b_m,
                    const hs_girth *girths,
                    int n,
                    gboolean is_up);
void hs_figure_foot(const hs_figure *figure, hs_outline *ret);
void hs_figure_head(const hs_figure *figure, hs_outline *ret, hs_vec2 *ret_centre_m);

#endif

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how much room do load and bearers take at one instant?
 * Answer:    hs_outline_load(), hs_outline_bearer(): a box in world axes.
 * Not here:  whether it is there (surroundings.c, power_loss.c). */
#ifndef HS_OUTLINE_H
#define HS_OUTLINE_H

#include "run.h"

typedef struct {
    hs_vec3 least_m, most_m;
} hs_outline;

/* Box round the load's solids as carried at this place; the load's origin alone where the document gives no parts. */
hs_outline hs_outline_load(const hs_setup *setup, const hs_place *place);
/* Box round one bearer and its suit, standing at its feet. */
hs_outline hs_outline_bearer(const hs_setup *setup, const hs_place *place, int bearer);
/* The load's length along its own x, width along its own y and height, level. */
hs_vec3 hs_outline_size_m(const hs_load_state *load);

#endif

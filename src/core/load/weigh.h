/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what do readings of scales under the load say about its mass and CG?
 * Answer:    hs_weigh_solve(): level sets for the plan, sets with one end raised for the height.
 * Not here:  the parts, and which of the two wins (load.c). */
#ifndef HS_WEIGH_H
#define HS_WEIGH_H

#include "task.h"
#include "working.h"

typedef struct {
    double mass_kg;
    hs_vec3 cg_m;    /* load frame; z HS_ABSENT without a tilted set */
    bool is_on_line; /* the supports stood on one line: the CG is assumed to lie on it */
    double
        height_per_kg_m; /* change of z for one kilogram of error of a reading; HS_ABSENT without a tilted set */
    double disagreement_kg; /* largest difference of a set's sum from the mean */
} hs_weighed;

/**
 * hs_weigh_solve - mass and CG from one or more sets of readings
 *
 * What    every set gives sum R x = W (x - z tan t) along each direction in which its supports are spread; least squares over
 *         all sets; where nothing fixes the place across a line of supports: otherwise_m, or the line itself
 * In      sets with one or more readings each, readings >= 0, |tilt| < 90 deg; otherwise_m: the CG of the parts, or NULL
 * Out     *ret_weighed; working (may be NULL) gets sums, moments, height
 * Frame   load frame, contacts on the base
 * Errors  HS_E_RANGE naming load.weighings: sum not above 0, or the CG is not determined
 * Source  moments about a support; HS_SRC_vehicle_weighing eq. 2.27 to 2.32 for the raised end
 */
hs_status hs_weigh_solve(const hs_weighing *weighings,
                         int n,
                         const hs_vec3 *otherwise_m,
                         hs_working *working,
                         hs_weighed *ret_weighed,
                         hs_error *error);

#endif

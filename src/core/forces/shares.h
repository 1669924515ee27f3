/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  who carries how much of the load?
 * Answer:    hs_shares() for any grips; hs_shares_range() for what could also be true.
 * Not here:  what hands or suit make of it (load_path.c); one bearer letting go (letgo.c). */
#ifndef HS_SHARES_H
#define HS_SHARES_H

#include "arena.h"
#include "task.h"

#define HS_MAX_USED_GRIPS 16

/* Vertical equilibrium of a rigid load: sum f = total_N, sum f x = moment_x_Nm, sum f y = moment_y_Nm, f >= 0, with x, y the
 * grips' plan places from the CG (world axes). moment_x = total * (x of the resultant), so a load at rest has both 0. */
typedef struct {
    int n; /* 1 .. HS_MAX_USED_GRIPS */
    double x_m[HS_MAX_USED_GRIPS], y_m[HS_MAX_USED_GRIPS];
    double total_N; /* >= 0 */
    double moment_x_Nm, moment_y_Nm;
} hs_shares_problem;

typedef struct {
    double up_N[HS_MAX_USED_GRIPS];
    bool is_outside;  /* the resultant passes outside the grips' hull */
    double couple_Nm; /* force x distance to the hull; 0 inside */
    hs_vec2 resultant_m,
        nearest_m;       /* from the CG: where the resultant passes, the hull's nearest point */
    bool is_determinate; /* one admissible set only */
} hs_shares_answer;

/**
 * hs_shares - vertical grip forces
 *
 * What    least-norm set (equal stiffness of all grips) with f >= 0; outside the hull the set of the hull's nearest point
 * In      problem as above, all finite
 * Out     *ret_answer
 * Frame   world plan, from the CG
 * Errors  HS_E_RANGE for n outside 1..16 or a non-finite figure; HS_E_INTERNAL if equilibrium does not close to 1e-9
 * Source  statics of a rigid body on equal one-sided springs (see lists/sources_forces.def)
 */
hs_status
hs_shares(const hs_shares_problem *problem, hs_shares_answer *ret_answer, hs_error *error);

/* Least and most of the sum over the grips with member[i] true, over all admissible sets (linear programme, exact). When the
 * resultant is outside the hull: for the hull's nearest point. */
hs_status hs_shares_range(const hs_shares_problem *problem,
                          const bool *member,
                          double *ret_least_N,
                          double *ret_most_N,
                          hs_error *error);

#endif

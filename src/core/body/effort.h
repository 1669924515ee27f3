/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what is one evaluation of the posture search?
 * Answer:    hs_effort_ask(): cost and constraints at three angles, for one of three aims.
 * Not here:  where to start and what to keep (posture.c). */
#ifndef HS_EFFORT_H
#define HS_EFFORT_H

#include "chain.h"
#include "descent.h"

#define HS_EFFORT_EXACT_m 1e-9 /* not to divide by nothing (numerics) */
#define HS_EFFORT_INSIDE_m                                                                     \
    2e-6 /* the way in aims a little inside, so that the search starts inside */

typedef enum {
    HS_EFFORT_LEAST,
    HS_EFFORT_REACH,
    HS_EFFORT_BALANCE
} hs_effort_aim;

/* A posture that this one is tied to: cost + pull |a - toward|^2, and no joint of the legs and trunk further than most_rad from
 * near_rad (INFINITY: free). */
typedef struct {
    double near_rad[3], most_rad;
    double toward_rad[3], pull;
} hs_posture_tie;

typedef struct {
    const hs_chain *chain;
    const hs_posture_tie *tie;
    hs_effort_aim aim;
    double rear_m, front_m; /* the point under the resultant stays between */
    hs_balance_ease ease;   /* and is drawn towards where people stand */
} hs_effort;

/* As hs_descent_ask; data is a hs_effort. */
void hs_effort_ask(void *data, const double x[3], hs_descent_point *point);

/* The cost with `penalty` times the square of every broken constraint added; no slopes. */
double hs_effort_rough(const hs_effort *s,
                       const double x[3],
                       const hs_chain_turn turn[3],
                       double penalty);

#endif

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  which postures are candidates at one place?
 * Answer:    hs_posture_candidates(): the local minima of effort that reach and balance.
 * Not here:  the choice along a leg (families.c). */
#ifndef HS_POSTURE_H
#define HS_POSTURE_H

#include "chain.h"
#include "descent.h"

#define HS_POSTURE_MAX 6 /* candidates kept at one place */

typedef struct {
    double angle_rad[3];
    double cost;
    int family; /* 0 bent legs, 1 bent back */
} hs_posture;

/* A posture that this one is tied to: cost + pull |a - toward|^2, and no joint of the legs and trunk further than most_rad from
 * near_rad (INFINITY: free). */
typedef struct {
    double near_rad[3], most_rad;
    double toward_rad[3], pull;
} hs_posture_tie;

/* Local minima from a fresh search, cheapest first; their number, 0 when nothing reaches and balances. */
int hs_posture_candidates(const hs_chain *chain, hs_posture ret[HS_POSTURE_MAX]);
/* The local minimum reached from a start; false when it breaks a constraint. */
bool hs_posture_polish(const hs_chain *chain,
                       const hs_posture_tie *tie,
                       double angle_rad[3],
                       double *ret_cost);
/* Adds the local minima reached from the starts of another place; the new number. */
int hs_posture_follow(
    const hs_chain *chain, const hs_posture *from, int n_from, hs_posture *list, int n);
int hs_posture_family(const double angle_rad[3]);
/* Nothing reaches and balances: the best there is, and what is missing. */
void hs_posture_missing(const hs_chain *chain, hs_body_state *state);
bool hs_posture_is_askable(const hs_chain *chain);

#endif

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  which postures are candidates at one place?
 * Answer:    hs_posture_candidates(): the local minima of effort that reach and balance.
 * Not here:  the choice along a leg (families.c). */
#ifndef HS_POSTURE_H
#define HS_POSTURE_H

#include "effort.h"

#define HS_POSTURE_MAX 6 /* candidates kept at one place */

typedef struct {
    double angle_rad[3];
    double cost;
    int family; /* 0 bent legs, 1 bent back */
} hs_posture;

/* What is missing where nothing reaches and balances: the posture nearest to it, and by how much. */
typedef struct {
    double angle_rad[3];
    double short_m;
    bool reaches;
} hs_posture_lack;

/* Local minima from a fresh search, cheapest first; their number, 0 when nothing reaches and balances: then *ret_lack. */
int hs_posture_candidates(const hs_chain *chain,
                          hs_posture ret[HS_POSTURE_MAX],
                          hs_posture_lack *ret_lack);
/* The lack near a neighbour's: from its posture alone. A posture found on the way is put into the list. */
int hs_posture_lack_near(const hs_chain *chain,
                         const hs_posture_lack *from,
                         hs_posture ret[HS_POSTURE_MAX],
                         hs_posture_lack *ret_lack);
/* The local minimum reached from a start; false when it breaks a constraint. */
bool hs_posture_polish(const hs_chain *chain,
                       const hs_posture_tie *tie,
                       double angle_rad[3],
                       double *ret_cost);
/* Adds the local minima reached from the starts of another place; the new number. */
int hs_posture_follow(
    const hs_chain *chain, const hs_posture *from, int n_from, hs_posture *list, int n);
int hs_posture_family(const double angle_rad[3]);
/* The most that ankle, knee, hip or trunk turn from a to b. */
double hs_posture_leg_turn_rad(const double a[3], const double b[3]);
/* The state where nothing reaches and balances; lack NULL: the body cannot be asked. */
void
hs_posture_fill_lack(const hs_chain *chain, const hs_posture_lack *lack, hs_body_state *state);
bool hs_posture_is_askable(const hs_chain *chain);

#endif

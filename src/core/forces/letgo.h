/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what do the others get when one bearer lets go?
 * Answer:    hs_letgo(): does the load tip, else the new shares and their sudden peak.
 * Not here:  against which figure the peak is held (checks/share_checks.c). */
#ifndef HS_LETGO_H
#define HS_LETGO_H

#include "shares.h"

#define HS_LETGO_MAX_BEARERS 8

typedef struct {
    bool tips;        /* the resultant is outside what is left, or nobody is left */
    double couple_Nm; /* that would have to be held then */
    double old_N[HS_LETGO_MAX_BEARERS], new_N[HS_LETGO_MAX_BEARERS];
    double
        peak_N[HS_LETGO_MAX_BEARERS]; /* old + 2 (new - old), never below 0; 0 for who let go */
} hs_letgo_answer;

/**
 * hs_letgo - shares after one bearer lets go
 *
 * What    hull of the others' grips first; then their least-norm shares; a step of load on an elastic holder overshoots to
 *         old + 2 (new - old)
 * In      problem as for hs_shares(); bearer_of: for each grip; n_bearers 1..8; who lets go
 * Out     *ret_answer
 * Frame   as the problem
 * Errors  as hs_shares()
 * Source  HS_SRC_sudden_load
 */
hs_status hs_letgo(const hs_shares_problem *problem,
                   const int *bearer_of,
                   int n_bearers,
                   int who,
                   hs_letgo_answer *ret_answer,
                   hs_error *error);

#endif

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what do the others get when one bearer lets go?
 * Answer:    the problem without that bearer's grips.
 * Not here:  against which figure the peak is held (checks/share_checks.c). */
#include "letgo.h"

hs_status
hs_letgo(const hs_shares_problem *problem,
         const int *bearer_of,
         int n_bearers,
         int who,
         hs_letgo_answer *ret_answer,
         hs_error *error)
{
    hs_shares_problem rest = {.total_N = problem->total_N,
                              .moment_x_Nm = problem->moment_x_Nm,
                              .moment_y_Nm = problem->moment_y_Nm};
    hs_shares_answer before, after;
    hs_letgo_answer answer = {0};
    int bearer[HS_MAX_USED_GRIPS];

    if (n_bearers < 1 || n_bearers > HS_LETGO_MAX_BEARERS)
        return hs_refuse(error, "bearers", n_bearers, 1, HS_LETGO_MAX_BEARERS);
    HS_TRY(hs_shares(problem, &before, error));
    for (int i = 0; i < problem->n; i++) {
        answer.old_N[bearer_of[i]] += before.up_N[i];
        if (bearer_of[i] == who)
            continue;
        rest.x_m[rest.n] = problem->x_m[i];
        rest.y_m[rest.n] = problem->y_m[i];
        bearer[rest.n++] = bearer_of[i];
    }
    if (rest.n == 0) {
        answer.tips = true;
        *ret_answer = answer;
        return HS_OK;
    }
    HS_TRY(hs_shares(&rest, &after, error));
    answer.tips = after.is_outside;
    answer.couple_Nm = after.couple_Nm;
    for (int i = 0; i < rest.n; i++)
        answer.new_N[bearer[i]] += after.up_N[i];
    for (int b = 0; b < n_bearers; b++)
        if (b != who)
            answer.peak_N[b] =
                fmax(0.0, answer.old_N[b] + 2.0 * (answer.new_N[b] - answer.old_N[b]));
    *ret_answer = answer;
    return HS_OK;
}

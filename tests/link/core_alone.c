/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  does all of core link with GSL, GLPK and libm alone?
 * Answer:    this program has every object of core in it; that it links is the test, that it answers is a sign of life.
 * Not here:  includes (tests/lint/layers.py). */
#include "assess.h"
#include "check.h"

#include <stdio.h>

int
main(void)
{
    hs_arena *arena = hs_arena_new();
    hs_task nothing = {.load = {.n_parts = 0}};
    hs_results results;
    hs_error error = {HS_OK};
    int found = hs_check_find("balance");
    hs_status status = hs_assess(&nothing, HS_ASSESS_LIVE, arena, &results, &error);

    hs_arena_free(arena);
    printf("balance is check %d; a task with nothing in it gives status %d\n", found,
           (int)status);
    return found == HS_CHECK_balance && status == HS_E_RANGE ? 0 : 1;
}

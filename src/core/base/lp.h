/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  which x makes a linear cost least under linear conditions?
 * Answer:    hs_lp_solve(), any small linear programme; the only door to GLPK.
 * Not here:  what the numbers mean (forces/). */
#ifndef HS_LP_H
#define HS_LP_H

#include "status.h"

#define HS_LP_MAX_ROWS    256
#define HS_LP_MAX_COLUMNS 2048

/* minimise cost . x   with   row_least <= matrix x <= row_most   and   column_least <= x <=
 * column_most. Bounds may be -INFINITY or INFINITY; an equation has both bounds the same. */
typedef struct {
    int n_rows, n_columns;
    const double *cost;                       /* n_columns */
    const double *matrix;                     /* n_rows x n_columns, row after row */
    const double *row_least, *row_most;       /* n_rows */
    const double *column_least, *column_most; /* n_columns; NULL: 0 and INFINITY */
    bool is_exact; /* finish in rational arithmetic: slower, for degenerate questions that turn
                      on a sign */
} hs_lp_problem;

typedef enum {
    HS_LP_FOUND = 0,
    HS_LP_INFEASIBLE,
    HS_LP_UNBOUNDED
} hs_lp_outcome;

/**
 * hs_lp_solve - solve a linear programme
 *
 * What    simplex method, both phases; with is_exact the basis found is finished in fractions
 * In      problem: 1..256 rows, 1..2048 columns, finite figures, least <= most in every bound
 * Out     *ret_outcome; when found also ret_x (n_columns) and *ret_value, either may be NULL
 * Frame   none
 * Errors  HS_E_RANGE for sizes or figures; HS_E_NO_SOLUTION with the outcome; HS_E_INTERNAL
 * Source  none
 */
hs_status hs_lp_solve(const hs_lp_problem *problem,
                      hs_lp_outcome *ret_outcome,
                      double *ret_x,
                      double *ret_value,
                      hs_error *error);

#endif

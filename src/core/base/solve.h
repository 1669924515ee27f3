/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  where does a function cross zero, what solves a small linear system, which points
 * fill a cube evenly? Answer:    hs_root_find(), hs_linear_solve(), hs_linear_least(),
 * hs_sobol_fill(); the only door to GSL. Not here:  linear programmes (lp.c). */
#ifndef HS_SOLVE_H
#define HS_SOLVE_H

#include "status.h"

#include <stdint.h>

#define HS_LINEAR_MAX 32 /* rows and columns of a small system */
#define HS_SOBOL_MAX  40 /* dimensions of the sequence */

typedef double (*hs_function)(double x, void *data);

/**
 * hs_root_find - the place where a function crosses zero inside a bracket
 *
 * What    Brent's method; an end that is exactly zero is the answer
 * In      low < high, finite, values of different sign there; tolerance > 0 on x, absolute
 * Out     *ret_root
 * Frame   none
 * Errors  HS_E_RANGE for bracket or tolerance; HS_E_NO_SOLUTION: no change of sign, not finite
 * Source  none
 */
hs_status hs_root_find(hs_function function,
                       void *data,
                       double low,
                       double high,
                       double tolerance,
                       double *ret_root,
                       hs_error *error);

/**
 * hs_linear_solve - a square system that has one answer
 *
 * What    LU decomposition with rows exchanged, one step of refinement
 * In      matrix n x n row after row, right n; n 1..32, finite
 * Out     ret_x (n)
 * Frame   none
 * Errors  HS_E_RANGE; HS_E_NO_SOLUTION when it is singular to rounding
 * Source  none
 */
hs_status hs_linear_solve(
    int n, const double *matrix, const double *right, double *ret_x, hs_error *error);

/**
 * hs_linear_least - least squares; of several such answers the shortest
 *
 * What    singular value decomposition; values below 1e-12 of the largest count as zero
 * In      matrix m x n row after row, right m; both 1..32, finite
 * Out     ret_x (n); *ret_rank (may be NULL)
 * Frame   none
 * Errors  HS_E_RANGE; HS_E_INTERNAL when the decomposition gave up
 * Source  none
 */
hs_status hs_linear_least(int m,
                          int n,
                          const double *matrix,
                          const double *right,
                          double *ret_x,
                          int *ret_rank,
                          hs_error *error);

/**
 * hs_sobol_fill - points of a Sobol sequence in the unit cube
 *
 * What    points first .. first + n - 1 (0 is the first), turned round the cube by a shift that
 *         the seed alone decides (0: none); any cut into pieces gives the same points
 * In      dimensions 1..40; first, n >= 0
 * Out     ret_points: n x dimensions, each in [0, 1)
 * Frame   none
 * Errors  HS_E_RANGE
 * Source  none
 */
hs_status hs_sobol_fill(
    int dimensions, int first, int n, uint64_t seed, double *ret_points, hs_error *error);

#endif

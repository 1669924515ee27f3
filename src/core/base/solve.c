/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  where does a function cross zero, what solves a small linear system, which points
 * fill a cube evenly? Answer:    GSL's methods with its error handler off and every size
 * checked. Not here:  linear programmes (lp.c). */
#include "solve.h"

#include <gsl/gsl_errno.h>
#include <gsl/gsl_linalg.h>
#include <gsl/gsl_qrng.h>
#include <gsl/gsl_roots.h>
#include <pthread.h>
#include <string.h>

#define MAX_STEPS 200

static pthread_once_t handler_once = PTHREAD_ONCE_INIT;

static void
handler_off(void)
{
    gsl_set_error_handler_off();
}

static void
quiet(void)
{
    pthread_once(&handler_once, handler_off);
}

static hs_status
no_solution(const char *where, hs_error *error)
{
    (void)hs_refuse(error, where, HS_ABSENT, -HUGE_VAL, HUGE_VAL);
    if (error != NULL)
        error->status = HS_E_NO_SOLUTION;
    return HS_E_NO_SOLUTION;
}

static hs_status
check_finite(const char *where, const double *figures, int n, hs_error *error)
{
    for (int i = 0; i < n; i++)
        if (!isfinite(figures[i]))
            return hs_refuse(error, where, figures[i], -HUGE_VAL, HUGE_VAL);
    return HS_OK;
}

/* Brent's steps from a bracket that is known to hold a change of sign. */
static hs_status
brent(gsl_root_fsolver *solver,
      gsl_function *f,
      double low,
      double high,
      double tolerance,
      double *ret_root)
{
    if (gsl_root_fsolver_set(solver, f, low, high) != GSL_SUCCESS)
        return HS_E_NO_SOLUTION;
    for (int i = 0; i < MAX_STEPS; i++) {
        if (gsl_root_fsolver_iterate(solver) != GSL_SUCCESS)
            return HS_E_NO_SOLUTION;
        *ret_root = gsl_root_fsolver_root(solver);
        if (gsl_root_test_interval(gsl_root_fsolver_x_lower(solver),
                                   gsl_root_fsolver_x_upper(solver), tolerance,
                                   0.0) == GSL_SUCCESS)
            return HS_OK;
    }
    return HS_E_NO_SOLUTION;
}

hs_status
hs_root_find(hs_function function,
             void *data,
             double low,
             double high,
             double tolerance,
             double *ret_root,
             hs_error *error)
{
    gsl_function f = {.function = function, .params = data};
    gsl_root_fsolver *solver;
    double at_low, at_high, root = low;
    hs_status status;

    if (!isfinite(low) || !(high > low) || !isfinite(high))
        return hs_refuse(error, "high", high, low, HUGE_VAL);
    if (!(tolerance > 0.0))
        return hs_refuse(error, "tolerance", tolerance, 0.0, HUGE_VAL);
    quiet();
    at_low = function(low, data);
    at_high = function(high, data);
    if (at_low == 0.0 || at_high == 0.0) {
        *ret_root = at_low == 0.0 ? low : high;
        return HS_OK;
    }
    if (!(at_low * at_high < 0.0))
        return no_solution("bracket", error);
    solver = gsl_root_fsolver_alloc(gsl_root_fsolver_brent);
    if (solver == NULL)
        return HS_E_INTERNAL;
    status = brent(solver, &f, low, high, tolerance, &root);
    gsl_root_fsolver_free(solver);
    if (status != HS_OK)
        return no_solution("function", error);
    *ret_root = root;
    return HS_OK;
}

hs_status
hs_linear_solve(
    int n, const double *matrix, const double *right, double *ret_x, hs_error *error)
{
    double lu[HS_LINEAR_MAX * HS_LINEAR_MAX], kept[HS_LINEAR_MAX * HS_LINEAR_MAX];
    double b[HS_LINEAR_MAX], x[HS_LINEAR_MAX], work[HS_LINEAR_MAX];
    size_t order[HS_LINEAR_MAX], size = (size_t)n;
    gsl_permutation permutation = {size, order};
    double least = HUGE_VAL, most = 0.0;
    int sign;

    if (n < 1 || n > HS_LINEAR_MAX)
        return hs_refuse(error, "n", n, 1, HS_LINEAR_MAX);
    HS_TRY(check_finite("matrix", matrix, n * n, error));
    HS_TRY(check_finite("right", right, n, error));
    quiet();
    memcpy(lu, matrix, size * size * sizeof *lu);
    memcpy(kept, matrix, size * size * sizeof *kept);
    memcpy(b, right, size * sizeof *b);
    gsl_matrix_view lu_view = gsl_matrix_view_array(lu, size, size);
    gsl_matrix_view kept_view = gsl_matrix_view_array(kept, size, size);
    gsl_vector_view b_view = gsl_vector_view_array(b, size);
    gsl_vector_view x_view = gsl_vector_view_array(x, size);
    gsl_vector_view work_view = gsl_vector_view_array(work, size);
    if (gsl_linalg_LU_decomp(&lu_view.matrix, &permutation, &sign) != GSL_SUCCESS)
        return no_solution("matrix", error);
    for (int i = 0; i < n; i++) {
        least = fmin(least, fabs(lu[i * n + i]));
        most = fmax(most, fabs(lu[i * n + i]));
    }
    if (!(least > 1e-13 * most))
        return no_solution("matrix", error);
    if (gsl_linalg_LU_solve(&lu_view.matrix, &permutation, &b_view.vector, &x_view.vector) !=
            GSL_SUCCESS ||
        gsl_linalg_LU_refine(&kept_view.matrix, &lu_view.matrix, &permutation, &b_view.vector,
                             &x_view.vector, &work_view.vector) != GSL_SUCCESS)
        return no_solution("matrix", error);
    memcpy(ret_x, x, size * sizeof *ret_x);
    return HS_OK;
}

/* Decomposes the tall form of the matrix (turned over when it is wide): tall = U S Vt, U left
 * in tall. */
static bool
decompose(int tall, int thin, double *u, double *v, double *s)
{
    gsl_matrix_view u_view = gsl_matrix_view_array(u, (size_t)tall, (size_t)thin);
    gsl_matrix_view v_view = gsl_matrix_view_array(v, (size_t)thin, (size_t)thin);
    gsl_vector_view s_view = gsl_vector_view_array(s, (size_t)thin);

    return gsl_linalg_SV_decomp_jacobi(&u_view.matrix, &v_view.matrix, &s_view.vector) ==
           GSL_SUCCESS;
}

hs_status
hs_linear_least(int m,
                int n,
                const double *matrix,
                const double *right,
                double *ret_x,
                int *ret_rank,
                hs_error *error)
{
    double u[HS_LINEAR_MAX * HS_LINEAR_MAX], v[HS_LINEAR_MAX * HS_LINEAR_MAX], s[HS_LINEAR_MAX];
    double x[HS_LINEAR_MAX] = {0};
    bool is_wide = m < n;
    int tall = is_wide ? n : m, thin = is_wide ? m : n, rank = 0;

    if (m < 1 || m > HS_LINEAR_MAX)
        return hs_refuse(error, "m", m, 1, HS_LINEAR_MAX);
    if (n < 1 || n > HS_LINEAR_MAX)
        return hs_refuse(error, "n", n, 1, HS_LINEAR_MAX);
    HS_TRY(check_finite("matrix", matrix, m * n, error));
    HS_TRY(check_finite("right", right, m, error));
    quiet();
    for (int i = 0; i < tall; i++)
        for (int j = 0; j < thin; j++)
            u[i * thin + j] = is_wide ? matrix[j * n + i] : matrix[i * n + j];
    if (!decompose(tall, thin, u, v, s))
        return HS_E_INTERNAL;
    /* matrix = left S rightt; of a wide one U is the right side and V the left */
    const double *left = is_wide ? v : u, *other = is_wide ? u : v;

    for (int k = 0; k < thin; k++) {
        double along = 0.0;

        if (!(s[k] > 1e-12 * s[0]))
            continue;
        rank++;
        for (int i = 0; i < m; i++)
            along += left[i * thin + k] * right[i];
        for (int j = 0; j < n; j++)
            x[j] += other[j * thin + k] * along / s[k];
    }
    memcpy(ret_x, x, (size_t)n * sizeof *ret_x);
    if (ret_rank != NULL)
        *ret_rank = rank;
    return HS_OK;
}

/* A well mixed number in [0, 1) from seed and dimension: splitmix64's finisher (public domain
 * constants, S. Vigna 2015). */
static double
shift_of(uint64_t seed, int dimension)
{
    uint64_t z = seed + 0x9e3779b97f4a7c15u * (uint64_t)(dimension + 1);

    z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9u;
    z = (z ^ (z >> 27)) * 0x94d049bb133111ebu;
    z ^= z >> 31;
    return (double)(z >> 11) / 9007199254740992.0; /* 2^53 */
}

hs_status
hs_sobol_fill(
    int dimensions, int first, int n, uint64_t seed, double *ret_points, hs_error *error)
{
    double skipped[HS_SOBOL_MAX];
    gsl_qrng *sequence;

    if (dimensions < 1 || dimensions > HS_SOBOL_MAX)
        return hs_refuse(error, "dimensions", dimensions, 1, HS_SOBOL_MAX);
    if (first < 0)
        return hs_refuse(error, "first", first, 0, HUGE_VAL);
    quiet();
    sequence = gsl_qrng_alloc(gsl_qrng_sobol, (unsigned)dimensions);
    if (sequence == NULL)
        return HS_E_INTERNAL;
    for (int i = 0; i < first; i++)
        gsl_qrng_get(sequence, skipped);
    for (int i = 0; i < n; i++)
        gsl_qrng_get(sequence, &ret_points[i * dimensions]);
    gsl_qrng_free(sequence);
    for (int i = 0; seed != 0 && i < n * dimensions; i++) {
        double at = ret_points[i] + shift_of(seed, i % dimensions);

        ret_points[i] = at < 1.0 ? at : at - 1.0;
    }
    return HS_OK;
}

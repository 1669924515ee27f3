/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  which x makes a linear cost least under linear conditions?
 * Answer:    GLPK's simplex methods, silenced, checked, and freed for the calling thread.
 * Not here:  what the numbers mean (forces/). */
#include "lp.h"

#include <glpk.h>
#include <setjmp.h>

static hs_status
check_bounds(const char *where, const double *least, const double *most, int n, hs_error *error)
{
    for (int i = 0; i < n; i++) {
        if (!(least[i] < HUGE_VAL))
            return hs_refuse(error, where, least[i], -HUGE_VAL, most[i]);
        if (!(most[i] >= least[i]) || !(most[i] > -HUGE_VAL))
            return hs_refuse(error, where, most[i], least[i], HUGE_VAL);
    }
    return HS_OK;
}

static hs_status
check_finite(const char *where, const double *figures, int n, hs_error *error)
{
    for (int i = 0; i < n; i++)
        if (!isfinite(figures[i]))
            return hs_refuse(error, where, figures[i], -HUGE_VAL, HUGE_VAL);
    return HS_OK;
}

static hs_status
check(const hs_lp_problem *problem, hs_error *error)
{
    int n_rows = problem->n_rows, n_columns = problem->n_columns;

    if (n_rows < 1 || n_rows > HS_LP_MAX_ROWS)
        return hs_refuse(error, "n_rows", n_rows, 1, HS_LP_MAX_ROWS);
    if (n_columns < 1 || n_columns > HS_LP_MAX_COLUMNS)
        return hs_refuse(error, "n_columns", n_columns, 1, HS_LP_MAX_COLUMNS);
    HS_TRY(check_finite("cost", problem->cost, n_columns, error));
    HS_TRY(check_finite("matrix", problem->matrix, n_rows * n_columns, error));
    HS_TRY(check_bounds("row", problem->row_least, problem->row_most, n_rows, error));
    if (problem->column_least != NULL && problem->column_most != NULL)
        HS_TRY(check_bounds("column", problem->column_least, problem->column_most, n_columns,
                            error));
    return HS_OK;
}

static int
bound_kind(double least, double most)
{
    if (isinf(least))
        return isinf(most) ? GLP_FR : GLP_UP;
    if (isinf(most))
        return GLP_LO;
    return most > least ? GLP_DB : GLP_FX;
}

static void
load_rows(glp_prob *lp, const hs_lp_problem *problem)
{
    int index[HS_LP_MAX_COLUMNS + 1];
    double value[HS_LP_MAX_COLUMNS + 1];

    glp_add_rows(lp, problem->n_rows);
    for (int i = 0; i < problem->n_rows; i++) {
        double least = problem->row_least[i], most = problem->row_most[i];
        int n = 0;

        glp_set_row_bnds(lp, i + 1, bound_kind(least, most), least, most);
        for (int j = 0; j < problem->n_columns; j++) {
            double a = problem->matrix[i * problem->n_columns + j];

            if (a < 0.0 || a > 0.0) {
                index[++n] = j + 1;
                value[n] = a;
            }
        }
        glp_set_mat_row(lp, i + 1, n, index, value);
    }
}

static void
load_columns(glp_prob *lp, const hs_lp_problem *problem)
{
    glp_add_cols(lp, problem->n_columns);
    for (int j = 0; j < problem->n_columns; j++) {
        double least = problem->column_least != NULL ? problem->column_least[j] : 0.0;
        double most = problem->column_most != NULL ? problem->column_most[j] : HUGE_VAL;

        glp_set_col_bnds(lp, j + 1, bound_kind(least, most), least, most);
        glp_set_obj_coef(lp, j + 1, problem->cost[j]);
    }
}

static hs_status
run(glp_prob *lp, bool is_exact, hs_lp_outcome *ret_outcome)
{
    glp_smcp settings;

    glp_init_smcp(&settings);
    settings.msg_lev = GLP_MSG_OFF;
    settings.tol_bnd = 1e-9;
    settings.tol_dj = 1e-9;
    settings.meth = GLP_PRIMAL;
    if (glp_simplex(lp, &settings) != 0) {
        glp_std_basis(lp);
        is_exact =
            true; /* a basis that is nearly singular in doubles is no trouble in fractions */
    }
    if (is_exact && glp_exact(lp, &settings) != 0)
        return HS_E_INTERNAL;

    switch (glp_get_status(lp)) {
    case GLP_OPT:
        *ret_outcome = HS_LP_FOUND;
        return HS_OK;
    case GLP_NOFEAS:
    case GLP_INFEAS:
        *ret_outcome = HS_LP_INFEASIBLE;
        return HS_E_NO_SOLUTION;
    case GLP_UNBND:
        *ret_outcome = HS_LP_UNBOUNDED;
        return HS_E_NO_SOLUTION;
    default:
        return HS_E_INTERNAL;
    }
}

static void
jump_out(void *info)
{
    longjmp(*(jmp_buf *)info, 1);
}

static hs_status
solve(const hs_lp_problem *problem,
      hs_lp_outcome *ret_outcome,
      double *ret_x,
      double *ret_value)
{
    glp_prob *lp = glp_create_prob();
    hs_status status;

    glp_set_obj_dir(lp, GLP_MIN);
    load_columns(lp, problem);
    load_rows(lp, problem);
    status = run(lp, problem->is_exact, ret_outcome);
    if (status == HS_OK) {
        for (int j = 0; ret_x != NULL && j < problem->n_columns; j++)
            ret_x[j] = glp_get_col_prim(lp, j + 1);
        if (ret_value != NULL)
            *ret_value = glp_get_obj_val(lp);
    }
    glp_delete_prob(lp);
    return status;
}

hs_status
hs_lp_solve(const hs_lp_problem *problem,
            hs_lp_outcome *ret_outcome,
            double *ret_x,
            double *ret_value,
            hs_error *error)
{
    jmp_buf way_out;
    hs_status status;

    HS_TRY(check(problem, error));
    /* GLPK ends the process on an error of its own: the hook leads back here instead. Its
     * environment belongs to the thread and is given back after every call, so that no thread
     * can leave one behind. */
    if (setjmp(way_out) != 0) {
        glp_free_env();
        return HS_E_INTERNAL;
    }
    glp_error_hook(jump_out, &way_out);
    glp_term_out(GLP_OFF);
    status = solve(problem, ret_outcome, ret_x, ret_value);
    glp_free_env();
    if (status == HS_E_NO_SOLUTION && error != NULL)
        error->status = HS_E_NO_SOLUTION;
    return status;
}

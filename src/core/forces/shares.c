/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  who carries how much of the load?
 * Answer:    least-norm grip forces that only push up, by an active set; their range from the basic solutions.
 * Not here:  what hands or suit make of it (load_path.c); one bearer letting go (letgo.c). */
#include "shares.h"

#include "hull.h"
#include "units.h"

#define MAX_N       HS_MAX_USED_GRIPS
#define TINY        1e-12 /* relative to the grips' spread: numerics */
#define CLOSED      1e-9  /* relative closure that is asked for */
#define MAX_CHANGES 200

/* The problem seen from the middle of the grips that can carry at all, each direction divided by its spread: rows 1, u, v
 * (as many as the grips span), so that grips in a line or in one place are as well conditioned as any others. */
typedef struct {
    int n, n_rows;
    int grip[MAX_N]; /* index in the problem */
    double row[3][MAX_N];
    double right[3]; /* for a total of 1 */
} reduced;

static hs_status
check(const hs_shares_problem *problem, hs_error *error)
{
    if (problem->n < 1 || problem->n > MAX_N)
        return hs_refuse(error, "grips", problem->n, 1, MAX_N);
    if (!(problem->total_N >= 0.0) || !isfinite(problem->total_N))
        return hs_refuse(error, "total_N", problem->total_N, 0.0, (double)INFINITY);
    if (!isfinite(problem->moment_x_Nm))
        return hs_refuse(error, "moment_x_Nm", problem->moment_x_Nm, (double)-INFINITY,
                         (double)INFINITY);
    if (!isfinite(problem->moment_y_Nm))
        return hs_refuse(error, "moment_y_Nm", problem->moment_y_Nm, (double)-INFINITY,
                         (double)INFINITY);
    for (int i = 0; i < problem->n; i++)
        if (!isfinite(problem->x_m[i]) || !isfinite(problem->y_m[i]))
            return hs_refuse(error, "at_m", problem->x_m[i], (double)-INFINITY,
                             (double)INFINITY);
    return HS_OK;
}

static void
project(const hs_shares_problem *problem, hs_hull_place *ret_place, hs_shares_answer *answer)
{
    hs_vec2 at_m[MAX_N], point_m = {0, 0};

    for (int i = 0; i < problem->n; i++)
        at_m[i] = (hs_vec2){problem->x_m[i], problem->y_m[i]};
    if (problem->total_N > 0.0)
        point_m = (hs_vec2){problem->moment_x_Nm / problem->total_N,
                            problem->moment_y_Nm / problem->total_N};
    hs_hull_locate(at_m, problem->n, point_m, ret_place);
    answer->resultant_m = point_m;
    answer->nearest_m = ret_place->nearest_m;
    answer->is_outside = problem->total_N > 0.0 && ret_place->outside_m > HS_SAME_PLACE_m;
    answer->couple_Nm = answer->is_outside ? problem->total_N * ret_place->outside_m : 0.0;
}

/* One direction as a row: its middle moved to 0 and its spread to 1. */
static void
write_row(reduced *r, const hs_hull_place *place, const hs_vec2 *at_m, hs_vec2 e)
{
    double least = (double)INFINITY, most = -(double)INFINITY, half, middle;
    int row = r->n_rows++;

    for (int i = 0; i < r->n; i++) {
        double along = e.x * at_m[i].x + e.y * at_m[i].y;

        r->row[row][i] = along;
        least = fmin(least, along);
        most = fmax(most, along);
    }
    middle = (least + most) / 2.0;
    half = (most - least) / 2.0;
    for (int i = 0; i < r->n; i++)
        r->row[row][i] = (r->row[row][i] - middle) / half;
    r->right[row] = (e.x * place->nearest_m.x + e.y * place->nearest_m.y - middle) / half;
}

static void
reduce(const hs_shares_problem *problem, const hs_hull_place *place, reduced *r)
{
    hs_vec2 at_m[MAX_N], across = {-place->along.y, place->along.x};

    *r = (reduced){.n_rows = 1, .right = {1.0}};
    for (int i = 0; i < problem->n; i++)
        if (place->carries[i]) {
            at_m[r->n] = (hs_vec2){problem->x_m[i], problem->y_m[i]};
            r->grip[r->n] = i;
            r->row[0][r->n++] = 1.0;
        }
    if (place->dimension >= 1)
        write_row(r, place, at_m, place->along);
    if (place->dimension >= 2)
        write_row(r, place, at_m, across);
}

/* Multipliers of the least-norm set on the free grips: f_i = rows_i . multiplier. The normal equations are symmetric; a pivot
 * that vanishes belongs to grips that span less, and its multiplier is 0. */
static void
solve_free(const reduced *r, const bool *is_free, const double right[3], double multiplier[3])
{
    double a[3][4] = {{0}};
    bool done[3] = {false, false, false};
    int pivot_of[3] = {-1, -1, -1};
    double scale = 0.0;

    for (int i = 0; i < r->n_rows; i++) {
        for (int j = 0; j < r->n_rows; j++)
            for (int k = 0; k < r->n; k++)
                a[i][j] += is_free[k] ? r->row[i][k] * r->row[j][k] : 0.0;
        a[i][3] = right[i];
        scale = fmax(scale, a[i][i]);
    }
    for (int step = 0; step < r->n_rows; step++) {
        int p = -1;

        for (int i = 0; i < r->n_rows; i++)
            if (!done[i] && (p < 0 || a[i][i] > a[p][p]))
                p = i;
        if (p < 0 || !(a[p][p] > TINY * scale))
            break;
        done[p] = true;
        pivot_of[step] = p;
        for (int i = 0; i < r->n_rows; i++) {
            double factor = i == p ? 0.0 : a[i][p] / a[p][p];

            for (int j = 0; j < 4; j++)
                a[i][j] -= factor * a[p][j];
        }
    }
    for (int i = 0; i < 3; i++)
        multiplier[i] = 0.0;
    for (int step = 0; step < r->n_rows && pivot_of[step] >= 0; step++)
        multiplier[pivot_of[step]] = a[pivot_of[step]][3] / a[pivot_of[step]][pivot_of[step]];
}

static double
reaction(const reduced *r, const double multiplier[3], int i)
{
    double f = 0.0;

    for (int k = 0; k < r->n_rows; k++)
        f += multiplier[k] * r->row[k][i];
    return f;
}

/* Least-norm set on the free grips, once refined. */
static void
least_norm(const reduced *r, const bool *is_free, double multiplier[3], double *f)
{
    double left[3], more[3];

    solve_free(r, is_free, r->right, multiplier);
    for (int k = 0; k < r->n_rows; k++) {
        left[k] = r->right[k];
        for (int i = 0; i < r->n; i++)
            left[k] -= is_free[i] ? r->row[k][i] * reaction(r, multiplier, i) : 0.0;
    }
    solve_free(r, is_free, left, more);
    for (int k = 0; k < 3; k++)
        multiplier[k] += more[k];
    for (int i = 0; i < r->n; i++)
        f[i] = is_free[i] ? reaction(r, multiplier, i) : 0.0;
}

/* Weights of the corners (one, two or three grips) that balance the resultant; false when they do not span, or one would
 * have to pull. */
static bool
basic_solution(const reduced *r, const int *corner, double *weight)
{
    const double(*row)[MAX_N] = r->row;
    double sum = 0.0;

    if (r->n_rows == 1) {
        weight[0] = 1.0;
        return true;
    }
    if (r->n_rows == 2) {
        double span = row[1][corner[1]] - row[1][corner[0]];

        if (!(fabs(span) > TINY))
            return false;
        weight[1] = (r->right[1] - row[1][corner[0]]) / span;
        weight[0] = 1.0 - weight[1];
    } else {
        double ax = row[1][corner[1]] - row[1][corner[0]],
               ay = row[2][corner[1]] - row[2][corner[0]];
        double bx = row[1][corner[2]] - row[1][corner[0]],
               by = row[2][corner[2]] - row[2][corner[0]];
        double px = r->right[1] - row[1][corner[0]], py = r->right[2] - row[2][corner[0]];
        double area = ax * by - ay * bx;

        if (!(fabs(area) > TINY))
            return false;
        weight[1] = (px * by - py * bx) / area;
        weight[2] = (ax * py - ay * px) / area;
        weight[0] = 1.0 - weight[1] - weight[2];
    }
    for (int i = 0; i < r->n_rows; i++) {
        if (!(weight[i] >= -1e-11))
            return false;
        weight[i] = fmax(weight[i], 0.0);
        sum += weight[i];
    }
    for (int i = 0; i < r->n_rows; i++)
        weight[i] /= sum;
    return true;
}

/* The next set of corners in order; false after the last. */
static bool
next_corners(int *corner, int n_corners, int n)
{
    for (int i = n_corners - 1; i >= 0; i--) {
        if (corner[i] >= n - n_corners + i)
            continue;
        corner[i]++;
        for (int j = i + 1; j < n_corners; j++)
            corner[j] = corner[j - 1] + 1;
        return true;
    }
    return false;
}

static bool
first_set(const reduced *r, double *f)
{
    int corner[3] = {0, 1, 2};
    double weight[3];

    do {
        if (!basic_solution(r, corner, weight))
            continue;
        for (int i = 0; i < r->n; i++)
            f[i] = 0.0;
        for (int i = 0; i < r->n_rows; i++)
            f[corner[i]] = weight[i];
        return true;
    } while (next_corners(corner, r->n_rows, r->n));
    return false;
}

/* Step from f towards the least-norm set of the free grips; a grip that would pull stops the step and leaves the set. */
static bool
step_to(const reduced *r, const double *aim, bool *is_free, double *f)
{
    double step = 1.0;
    int blocks = -1;

    for (int i = 0; i < r->n; i++)
        if (is_free[i] && aim[i] < -TINY && f[i] / (f[i] - aim[i]) < step) {
            step = f[i] / (f[i] - aim[i]);
            blocks = i;
        }
    for (int i = 0; i < r->n; i++)
        if (is_free[i])
            f[i] = fmax(0.0, f[i] + step * (aim[i] - f[i]));
    if (blocks < 0)
        return true;
    is_free[blocks] = false;
    f[blocks] = 0.0;
    return false;
}

/* Least norm under f >= 0: the multiplier of every grip at rest must not ask it to push. */
static bool
one_sided(const reduced *r, double *f)
{
    double aim[MAX_N], multiplier[3];
    bool is_free[MAX_N] = {false};
    bool pulls = false;

    for (int i = 0; i < r->n; i++)
        is_free[i] = true;
    least_norm(r, is_free, multiplier, f);
    for (int i = 0; i < r->n; i++)
        pulls = pulls || f[i] < -TINY;
    if (!pulls) {
        for (int i = 0; i < r->n; i++)
            f[i] = fmax(0.0, f[i]);
        return true;
    }
    if (!first_set(r, f))
        return false;
    for (int i = 0; i < r->n; i++)
        is_free[i] = f[i] > 0.0;
    for (int change = 0; change < MAX_CHANGES; change++) {
        int asks = -1;
        double most = TINY;

        least_norm(r, is_free, multiplier, aim);
        if (!step_to(r, aim, is_free, f))
            continue;
        for (int i = 0; i < r->n; i++)
            if (!is_free[i] && reaction(r, multiplier, i) > most) {
                most = reaction(r, multiplier, i);
                asks = i;
            }
        if (asks < 0)
            return true;
        is_free[asks] = true;
    }
    return false;
}

static bool
closes(const hs_shares_problem *problem, const hs_shares_answer *answer)
{
    double total = 0.0, x = 0.0, y = 0.0, span_m = 1.0;

    for (int i = 0; i < problem->n; i++) {
        total += answer->up_N[i];
        x += answer->up_N[i] * problem->x_m[i];
        y += answer->up_N[i] * problem->y_m[i];
        span_m = fmax(span_m, fmax(fabs(problem->x_m[i]), fabs(problem->y_m[i])));
    }
    return fabs(total - problem->total_N) <= CLOSED * problem->total_N &&
           fabs(x - problem->total_N * answer->nearest_m.x) <=
               CLOSED * problem->total_N * span_m &&
           fabs(y - problem->total_N * answer->nearest_m.y) <=
               CLOSED * problem->total_N * span_m;
}

hs_status
hs_shares(const hs_shares_problem *problem, hs_shares_answer *ret_answer, hs_error *error)
{
    hs_shares_answer answer = {0};
    hs_hull_place place;
    reduced r;
    double f[MAX_N] = {0};

    HS_TRY(check(problem, error));
    project(problem, &place, &answer);
    reduce(problem, &place, &r);
    if (!one_sided(&r, f))
        return HS_E_INTERNAL;
    for (int i = 0; i < r.n; i++)
        answer.up_N[r.grip[i]] = problem->total_N * f[i];
    answer.is_determinate = r.n == r.n_rows;
    if (!closes(problem, &answer))
        return HS_E_INTERNAL;
    *ret_answer = answer;
    return HS_OK;
}

hs_status
hs_shares_range(const hs_shares_problem *problem,
                const bool *member,
                double *ret_least_N,
                double *ret_most_N,
                hs_error *error)
{
    hs_shares_answer answer = {0};
    hs_hull_place place;
    reduced r;
    int corner[3] = {0, 1, 2};
    double weight[3], least = (double)INFINITY, most = -(double)INFINITY;

    HS_TRY(check(problem, error));
    project(problem, &place, &answer);
    reduce(problem, &place, &r);
    do {
        double sum = 0.0;

        if (!basic_solution(&r, corner, weight))
            continue;
        for (int i = 0; i < r.n_rows; i++)
            sum += member[r.grip[corner[i]]] ? weight[i] : 0.0;
        least = fmin(least, sum);
        most = fmax(most, sum);
    } while (next_corners(corner, r.n_rows, r.n));
    if (!(least <= most))
        return HS_E_INTERNAL;
    *ret_least_N = problem->total_N * least;
    *ret_most_N = problem->total_N * most;
    return HS_OK;
}

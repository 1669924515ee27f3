/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  where is a smooth figure of three angles least, under true constraints?
 * Answer:    hs_descent().
 * Not here:  what is minimised (posture.c). */
#include "descent.h"

#include "dual.h"

#include <math.h>
#include <string.h>

#define MOST_STUCK                                                                             \
    4 /* steps in a row that no shortening makes better: it will not settle (numerics) */

typedef struct {
    double inverse[3][3];
    const double *room;
    const double (*normal)[3];
    int n_active, active[3];
    double weight[3]; /* multipliers of the active ones */
} quadratic;

static double
dot(const double a[3], const double b[3])
{
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

static void
apply(const double m[3][3], const double v[3], double ret[3])
{
    for (int i = 0; i < 3; i++)
        ret[i] = dot(m[i], v);
}

static bool
invert(const double m[3][3], double ret[3][3])
{
    double c00 = m[1][1] * m[2][2] - m[1][2] * m[2][1],
           c01 = m[1][2] * m[2][0] - m[1][0] * m[2][2];
    double c02 = m[1][0] * m[2][1] - m[1][1] * m[2][0];
    double det = m[0][0] * c00 + m[0][1] * c01 + m[0][2] * c02;

    if (!(det > 0.0))
        return false;
    ret[0][0] = c00 / det;
    ret[1][0] = c01 / det;
    ret[2][0] = c02 / det;
    ret[0][1] = (m[0][2] * m[2][1] - m[0][1] * m[2][2]) / det;
    ret[1][1] = (m[0][0] * m[2][2] - m[0][2] * m[2][0]) / det;
    ret[2][1] = (m[0][1] * m[2][0] - m[0][0] * m[2][1]) / det;
    ret[0][2] = (m[0][1] * m[1][2] - m[0][2] * m[1][1]) / det;
    ret[1][2] = (m[0][2] * m[1][0] - m[0][0] * m[1][2]) / det;
    ret[2][2] = (m[0][0] * m[1][1] - m[0][1] * m[1][0]) / det;
    return true;
}

/* Solves the k x k system s r = right (k <= 3) by elimination with exchange of rows. */
static bool
solve_small(int k, double s[3][3], double right[3], double r[3])
{
    for (int c = 0; c < k; c++) {
        int best = c;

        for (int i = c + 1; i < k; i++)
            if (fabs(s[i][c]) > fabs(s[best][c]))
                best = i;
        if (!(fabs(s[best][c]) > 1e-14))
            return false;
        for (int j = 0; j < k && best != c; j++) {
            double t = s[c][j];

            s[c][j] = s[best][j];
            s[best][j] = t;
        }
        if (best != c) {
            double t = right[c];

            right[c] = right[best];
            right[best] = t;
        }
        for (int i = c + 1; i < k; i++) {
            double f = s[i][c] / s[c][c];

            for (int j = c; j < k; j++)
                s[i][j] -= f * s[c][j];
            right[i] -= f * right[c];
        }
    }
    for (int i = k - 1; i >= 0; i--) {
        r[i] = right[i];
        for (int j = i + 1; j < k; j++)
            r[i] -= s[i][j] * r[j];
        r[i] /= s[i][i];
    }
    return true;
}

/* Direction z in which constraint p gains room while the active ones keep theirs, and what that does to their multipliers. */
static bool
direction(const quadratic *q, int p, double z[3], double r[3])
{
    double hp[3], s[3][3], right[3];

    apply(q->inverse, q->normal[p], hp);
    for (int i = 0; i < q->n_active; i++) {
        double hi[3];

        apply(q->inverse, q->normal[q->active[i]], hi);
        for (int j = 0; j < q->n_active; j++)
            s[i][j] = dot(hi, q->normal[q->active[j]]);
        right[i] = dot(hp, q->normal[q->active[i]]);
    }
    if (q->n_active > 0 && !solve_small(q->n_active, s, right, r))
        return false;
    memcpy(z, hp, sizeof hp);
    for (int i = 0; i < q->n_active; i++) {
        double hi[3];

        apply(q->inverse, q->normal[q->active[i]], hi);
        for (int k = 0; k < 3; k++)
            z[k] -= r[i] * hi[k];
    }
    return true;
}

static void
drop(quadratic *q, int i)
{
    for (; i + 1 < q->n_active; i++) {
        q->active[i] = q->active[i + 1];
        q->weight[i] = q->weight[i + 1];
    }
    q->n_active--;
}

/* Takes constraint p into the active set; false: it cannot be satisfied together with the others. */
static bool
take_in(quadratic *q, int p, double d[3])
{
    double weight = 0.0;

    for (int guard = 0; guard < 40; guard++) {
        double z[3], r[3] = {0.0, 0.0, 0.0}, gain, miss, most = INFINITY, full, t;
        int leaving = -1;

        if (!direction(q, p, z, r))
            return false;
        for (int i = 0; i < q->n_active; i++)
            if (r[i] > 1e-12 && q->weight[i] / r[i] < most) {
                most = q->weight[i] / r[i];
                leaving = i;
            }
        gain = dot(z, q->normal[p]);
        miss = -(q->room[p] + dot(q->normal[p], d));
        full =
            q->n_active < 3 && gain > 1e-13 * dot(q->normal[p], q->normal[p]) * q->inverse[0][0]
                ? miss / gain
                : (double)INFINITY;
        t = hs_less_of(most, full);
        if (!isfinite(t))
            return false;
        if (isfinite(full))
            for (int k = 0; k < 3; k++)
                d[k] += t * z[k];
        for (int i = 0; i < q->n_active; i++)
            q->weight[i] -= t * r[i];
        weight += t;
        if (t == full) {
            q->active[q->n_active] = p;
            q->weight[q->n_active++] = weight;
            return true;
        }
        drop(q, leaving);
    }
    return false;
}

bool
hs_descent_step(const double curve[3][3],
                const double slope[3],
                int n,
                const double *room,
                const double (*room_slope)[3],
                double ret_step[3],
                double *ret_weight)
{
    quadratic q = {.room = room, .normal = room_slope};
    double d[3];

    if (!invert(curve, q.inverse))
        return false;
    apply(q.inverse, slope, d);
    for (int k = 0; k < 3; k++)
        d[k] = -d[k];
    for (int guard = 0; guard < 60; guard++) {
        int p = -1;
        double worst = -1e-11;

        for (int i = 0; i < n; i++) {
            double left = room[i] + dot(room_slope[i], d);

            if (left < worst) {
                worst = left;
                p = i;
            }
        }
        if (p < 0) {
            memcpy(ret_step, d, sizeof d);
            for (int i = 0; i < n; i++)
                ret_weight[i] = 0.0;
            for (int i = 0; i < q.n_active; i++)
                ret_weight[q.active[i]] = q.weight[i];
            return true;
        }
        if (!take_in(&q, p, d))
            return false;
    }
    return false;
}

static double
broken(const hs_descent_point *at)
{
    double sum = 0.0;

    for (int i = 0; i < at->n; i++)
        sum += hs_more_of(-at->room[i], 0.0);
    return sum;
}

static double
worst_room(const hs_descent_point *at)
{
    double worst = INFINITY;

    for (int i = 0; i < at->n; i++)
        worst = hs_less_of(at->room[i], worst);
    return worst;
}

/* The quadratic step inside a box; where the linear constraints contradict each other, the broken ones are asked for less. */
static void
find_step(const hs_descent_point *at,
          const double curve[3][3],
          double box_rad,
          double step[3],
          double *weight)
{
    double room[HS_DESCENT_MAX + 6], slope[HS_DESCENT_MAX + 6][3];
    double ask = 1.0;

    memcpy(slope, at->room_slope, sizeof(double[3]) * (size_t)at->n);
    for (int k = 0; k < 6; k++) {
        for (int j = 0; j < 3; j++)
            slope[at->n + k][j] = j != k / 2 ? 0.0 : (k % 2 == 0 ? 1.0 : -1.0);
        room[at->n + k] = box_rad;
    }
    for (int tries = 0; tries < 6; tries++) {
        for (int i = 0; i < at->n; i++)
            room[i] = at->room[i] < 0.0 ? ask * at->room[i] : at->room[i];
        if (hs_descent_step(curve, at->slope, at->n + 6, room, (const double(*)[3])slope, step,
                            weight))
            return;
        ask = tries == 4 ? 0.0 : 0.4 * ask;
    }
    step[0] = step[1] = step[2] = 0.0;
}

/* BFGS with Powell's damping on the Lagrangian, so that the curvature stays positive definite. */
static void
update_curve(double curve[3][3], const double step[3], const double change[3])
{
    double bs[3], y[3], sbs, sy, t = 1.0;

    apply((const double(*)[3])curve, step, bs);
    sbs = dot(step, bs);
    sy = dot(step, change);
    if (!(sbs > 1e-24))
        return;
    if (sy < 0.2 * sbs)
        t = 0.8 * sbs / (sbs - sy);
    for (int i = 0; i < 3; i++)
        y[i] = t * change[i] + (1.0 - t) * bs[i];
    sy = dot(step, y);
    for (int i = 0; i < 3; i++)
        for (int j = 0; j < 3; j++)
            curve[i][j] += y[i] * y[j] / sy - bs[i] * bs[j] / sbs;
}

static void
keep_best(const hs_descent_point *at,
          const double x[3],
          double kept[3],
          double *kept_cost,
          double *kept_room)
{
    double room = worst_room(at);

    if (room >= -HS_DESCENT_EXACT && at->cost < *kept_cost) {
        memcpy(kept, x, sizeof(double[3]));
        *kept_cost = at->cost;
        *kept_room = room;
    }
}

bool
hs_descent(const hs_descent_problem *problem,
           double x[3],
           double *ret_cost,
           double *ret_worst_room)
{
    hs_descent_point points[2];
    double curve[3][3], weight[HS_DESCENT_MAX + 6], price = 0.0;
    double kept[3] = {x[0], x[1], x[2]}, kept_cost = INFINITY, kept_room = -INFINITY;
    bool settled = false;
    int now = 0, stuck = 0;

    problem->ask(problem->data, x, &points[now]);
    keep_best(&points[now], x, kept, &kept_cost, &kept_room);
    memcpy(curve, points[now].curve, sizeof curve);
    for (int i = 0; i < problem->most_steps && !settled && stuck < MOST_STUCK; i++) {
        const hs_descent_point *at = &points[now];
        hs_descent_point *next = &points[1 - now];
        double step[3], change[3], trial[3], size, merit, along, t = 1.0;

        find_step(at, (const double(*)[3])curve, problem->step_rad, step, weight);
        size = hs_more_of(fabs(step[0]), hs_more_of(fabs(step[1]), fabs(step[2])));
        for (int k = 0; k < at->n; k++)
            price = hs_more_of(1.5 * weight[k], price);
        merit = at->cost + price * broken(at);
        along = dot(at->slope, step) - price * broken(at);
        stuck++;
        for (int tries = 0; tries < 12; tries++) {
            for (int k = 0; k < 3; k++)
                trial[k] = x[k] + t * step[k];
            problem->ask(problem->data, trial, next);
            if (next->cost + price * broken(next) <=
                    merit + 1e-4 * t * fmin(along, 0.0) + 1e-14 * fabs(merit) ||
                size < 1e-7) {
                stuck = 0;
                break;
            }
            t *= 0.5;
        }
        for (int k = 0; k < 3; k++) {
            change[k] = next->slope[k] - at->slope[k];
            for (int c = 0; c < at->n; c++)
                change[k] -= weight[c] * (next->room_slope[c][k] - at->room_slope[c][k]);
            step[k] *= t;
        }
        update_curve(curve, step, change);
        memcpy(x, trial, sizeof trial);
        now = 1 - now;
        keep_best(&points[now], x, kept, &kept_cost, &kept_room);
        settled = size < problem->until_rad;
    }
    *ret_cost = points[now].cost;
    *ret_worst_room = worst_room(&points[now]);
    /* Where it did not settle inside, the best place inside that it came by. */
    if (*ret_worst_room < -HS_DESCENT_EXACT && isfinite(kept_cost)) {
        memcpy(x, kept, sizeof kept);
        *ret_cost = kept_cost;
        *ret_worst_room = kept_room;
    }
    return settled;
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  where is a smooth figure of three angles least, under true constraints?
 * Answer:    hs_descent(): sequential quadratic steps; each step's quadratic programme is solved by the dual active-set method
 *            (Goldfarb & Idnani 1983), so that active constraints end up exactly on their edge.
 * Not here:  what is minimised (posture.c). */
#ifndef HS_DESCENT_H
#define HS_DESCENT_H

#include <stdbool.h>

#define HS_DESCENT_MAX   32   /* constraints */
#define HS_DESCENT_EXACT 1e-9 /* constraints hold to this */

/* One evaluation. Constraint i holds when room[i] >= 0. */
typedef struct {
    double cost, slope[3],
        curve[3][3]; /* curve: a positive definite estimate of the second derivative */
    int n;
    double room[HS_DESCENT_MAX], room_slope[HS_DESCENT_MAX][3];
} hs_descent_point;

typedef void (*hs_descent_ask)(void *data, const double x[3], hs_descent_point *ret);

typedef struct {
    hs_descent_ask ask;
    void *data;
    int most_steps;
    double step_rad;  /* largest change of one angle in one step */
    double until_rad; /* ends when a step is smaller */
} hs_descent_problem;

/**
 * hs_descent - local minimum under constraints
 *
 * What    from x, which need not satisfy the constraints; BFGS curvature after the first estimate
 * In      problem; x the start
 * Out     x, *ret_cost, *ret_worst_room: the least room, negative when a constraint is broken
 * Frame   none
 * Errors  none; false when it did not settle (x is then the best found)
 * Source  Goldfarb & Idnani, Mathematical Programming 27 (1983) 1-33 for the quadratic programme
 */
bool hs_descent(const hs_descent_problem *problem,
                double x[3],
                double *ret_cost,
                double *ret_worst_room);

/* Quadratic programme min 1/2 d'Bd + slope'd with room + room_slope d >= 0; false: nothing satisfies all. */
bool hs_descent_step(const double curve[3][3],
                     const double slope[3],
                     int n,
                     const double *room,
                     const double (*room_slope)[3],
                     double ret_step[3],
                     double *ret_weight);

#endif

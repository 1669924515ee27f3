/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  where is the load at each instant, how fast, how accelerated?
 * Answer:    hs_route_solve() gives times to the points, hs_route_at() the state at a time.
 * Not here:  grips and feet (place.c). */
#ifndef HS_ROUTE_H
#define HS_ROUTE_H

#include "arena.h"
#include "assume.h"
#include "task.h"

/* A height that a hand drew and nobody typed is uncertain by this much either way: our choice, no source. */
#define HS_SKETCHED_m 0.05

typedef struct {
    int point; /* the leg leads to this point, from point - 1 */
    hs_move move;
    double start_s, end_s;
    bool is_hold; /* a dwell at `point` instead of a way to it */
} hs_leg;

enum {
    HS_COORD_X,
    HS_COORD_Z,
    HS_COORD_Y,
    HS_COORD_PITCH,
    HS_COORD_REACH,
    HS_N_COORDINATES
};

typedef struct {
    int n_points;
    const hs_point *points;
    const double *reach_m;            /* per point */
    const double *pitch_rad;          /* per point */
    const double *arrive_s, *leave_s; /* per point: cumulative times without and with hold */
    const double
        *velocity; /* n_points x HS_N_COORDINATES, m/s and rad/s; 0 where the motion rests */
    int n_legs;
    const hs_leg *legs;
    const bool *
        follows; /* per point: on the carry leg to it the pitch is set from the floor (place.c) */
    double total_s;
} hs_motion;

typedef struct {
    double x_m, z_m, y_m, pitch_rad, reach_m;
    double vx_m_s, vz_m_s, pitch_rate_rad_s, reach_rate_m_s;
    double ax_m_s2, az_m_s2, pitch_acc_rad_s2, reach_acc_m_s2; /* of the load's origin */
} hs_motion_state;

/**
 * hs_route_solve - times, rests and point velocities of a route
 *
 * What    default times are length / 0.8 m/s for carry and / 0.35 m/s otherwise, at least 1 s; minimum jerk between rests,
 *         quintics through the inner points of a carry run with harmonic-mean velocities
 * In      reach_m, one per point, resolved by the caller; may_follow: two or more bearers, pitch not given
 * Out     *ret_motion in the arena
 * Frame   world
 * Errors  HS_E_RANGE
 * Source  Flash & Hogan 1985, J. Neurosci. 5(7) 1688-1703 (minimum jerk)
 */
hs_status hs_route_solve(const hs_route *route,
                         const double *reach_m,
                         bool may_follow,
                         hs_arena *arena,
                         hs_assumptions *assumptions,
                         hs_motion *ret_motion,
                         hs_error *error);

/* State at time t on a leg (index into legs); t is clamped to the leg. */
void hs_route_at(const hs_motion *motion, int leg, double t_s, hs_motion_state *ret_state);

#endif

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  where is the load at each instant, how fast, how accelerated?
 * Answer:    hs_route_solve() gives times to the points, hs_route_at() the state at a time.
 * Not here:  grips and feet (place.c). */
#include "route.h"

#include "units.h"

#define CARRY_SPEED_m_s                                                                        \
    0.8 /* default pace of a carry leg: file format, section Defaults (common practice, no source) */
#define OTHER_SPEED_m_s 0.35 /* the same for every other leg (common practice, no source) */
#define LEAST_TIME_s    1.0  /* file format, section Defaults */

/* x is the distance along the way; y serves the plan only. */
static double
default_time_s(const hs_point *from, const hs_point *to)
{
    double length_m = hypot(to->x_m - from->x_m, to->z_m - from->z_m);

    return fmax(LEAST_TIME_s,
                length_m / (to->move == HS_MOVE_CARRY ? CARRY_SPEED_m_s : OTHER_SPEED_m_s));
}

static double
hold_s(const hs_point *point)
{
    return hs_has(point->hold_s) ? point->hold_s : 0.0;
}

/* The motion passes this point without stopping: carry before and after, no dwell. */
static bool
is_inner(const hs_route *route, int i)
{
    return i > 0 && i + 1 < route->n_points && route->points[i].move == HS_MOVE_CARRY &&
           route->points[i + 1].move == HS_MOVE_CARRY && !(hold_s(&route->points[i]) > 0.0);
}

static void
coordinates_of(const hs_motion *motion, int i, double *ret_q)
{
    ret_q[HS_COORD_X] = motion->points[i].x_m;
    ret_q[HS_COORD_Z] = motion->points[i].z_m;
    ret_q[HS_COORD_Y] = hs_or(motion->points[i].y_m, 0.0);
    ret_q[HS_COORD_PITCH] = motion->pitch_rad[i];
    ret_q[HS_COORD_REACH] = motion->reach_m[i];
}

static void
set_velocities(const hs_route *route, hs_motion *motion, double *velocity)
{
    for (int i = 0; i < route->n_points; i++) {
        double before[HS_N_COORDINATES], here[HS_N_COORDINATES], after[HS_N_COORDINATES];

        if (!is_inner(route, i))
            continue;
        coordinates_of(motion, i - 1, before);
        coordinates_of(motion, i, here);
        coordinates_of(motion, i + 1, after);
        for (int k = 0; k < HS_N_COORDINATES; k++) {
            double v1 = (here[k] - before[k]) / (motion->arrive_s[i] - motion->leave_s[i - 1]);
            double v2 = (after[k] - here[k]) / (motion->arrive_s[i + 1] - motion->leave_s[i]);

            /* Harmonic mean: no overshoot, and a stop where the direction turns. */
            velocity[i * HS_N_COORDINATES + k] =
                v1 * v2 > 0.0 ? 2.0 * v1 * v2 / (v1 + v2) : 0.0;
        }
    }
}

/* A run of carry legs follows the floor when none of its points has a pitch. */
static void
set_follows(const hs_route *route, bool *follows)
{
    for (int i = 1; i < route->n_points;) {
        int last = i;
        bool given;

        if (route->points[i].move != HS_MOVE_CARRY) {
            i++;
            continue;
        }
        while (is_inner(route, last))
            last++;
        given = false;
        for (int j = i - 1; j <= last; j++)
            given = given || hs_has(route->points[j].pitch_deg);
        for (int j = i; j <= last; j++)
            follows[j] = !given;
        i = last + 1;
    }
}

hs_status
hs_route_solve(const hs_route *route,
               const double *reach_m,
               bool may_follow,
               hs_arena *arena,
               hs_assumptions *assumptions,
               hs_motion *ret_motion,
               hs_error *error)
{
    int n = route->n_points;
    double *pitch_rad = HS_NEW(arena, double, n), *arrive_s = HS_NEW(arena, double, n);
    double *leave_s = HS_NEW(arena, double, n);
    double *velocity = HS_NEW(arena, double, n *HS_N_COORDINATES);
    bool *follows = HS_NEW(arena, bool, n);
    hs_leg *legs = HS_NEW(arena, hs_leg, 2 * n);
    double t_s = 0.0;
    int n_legs = 0;

    if (n < 2)
        return hs_refuse(error, "route.points", n, 2, INFINITY);
    for (int i = 0; i < n; i++) {
        const hs_point *point = &route->points[i];

        pitch_rad[i] = hs_or(point->pitch_deg, 0.0) * HS_RAD_PER_DEG;
        if (point->sketched == HS_YES)
            hs_assume(assumptions, HS_SKETCHED_m, NULL, HS_SAY(assume_sketched, HS_SKETCHED_m),
                      "route.points[%d].sketched", i);
        if (i > 0) {
            double time_s = point->time_s;

            if (!hs_has(time_s)) {
                time_s = default_time_s(&route->points[i - 1], point);
                hs_assume(assumptions, time_s, NULL, HS_SAY(assume_time, time_s),
                          "route.points[%d].time_s", i);
            }
            if (!(time_s > 0.0))
                return hs_refuse(error, "route.points[].time_s", time_s, 0, INFINITY);
            legs[n_legs++] = (hs_leg){i, point->move, t_s, t_s + time_s, false};
            t_s += time_s;
        }
        arrive_s[i] = t_s;
        if (hold_s(point) > 0.0) {
            legs[n_legs++] = (hs_leg){i, point->move, t_s, t_s + hold_s(point), true};
            t_s += hold_s(point);
        }
        leave_s[i] = t_s;
    }
    if (may_follow)
        set_follows(route, follows);
    *ret_motion = (hs_motion){n,        route->points, reach_m, pitch_rad, arrive_s, leave_s,
                              velocity, n_legs,        legs,    follows,   t_s};
    set_velocities(route, ret_motion, velocity);
    return HS_OK;
}

/* The quintic with given ends, velocities and no acceleration at either end; T the leg's time, u in 0..1. With both
 * velocities 0 it is the minimum-jerk law 10 u^3 - 15 u^4 + 6 u^5. */
static void
quintic(double from,
        double to,
        double v0,
        double v1,
        double T,
        double u,
        double *q,
        double *v,
        double *a)
{
    double d = to - from;
    double c3 = 10.0 * d - (6.0 * v0 + 4.0 * v1) * T;
    double c4 = -15.0 * d + (8.0 * v0 + 7.0 * v1) * T;
    double c5 = 6.0 * d - 3.0 * (v0 + v1) * T;

    *q = from + u * (v0 * T + u * u * (c3 + u * (c4 + u * c5)));
    *v = v0 + u * u * (3.0 * c3 + u * (4.0 * c4 + u * 5.0 * c5)) / T;
    *a = u * (6.0 * c3 + u * (12.0 * c4 + u * 20.0 * c5)) / (T * T);
}

void
hs_route_at(const hs_motion *motion, int leg_index, double t_s, hs_motion_state *ret_state)
{
    const hs_leg *leg = &motion->legs[leg_index];
    double q[HS_N_COORDINATES], v[HS_N_COORDINATES] = {0}, a[HS_N_COORDINATES] = {0};

    coordinates_of(motion, leg->point, q);
    if (!leg->is_hold) {
        double from[HS_N_COORDINATES], to[HS_N_COORDINATES];
        double T = leg->end_s - leg->start_s,
               u = fmin(fmax((t_s - leg->start_s) / T, 0.0), 1.0);
        const double *v0 = &motion->velocity[(leg->point - 1) * HS_N_COORDINATES];
        const double *v1 = &motion->velocity[leg->point * HS_N_COORDINATES];

        coordinates_of(motion, leg->point - 1, from);
        coordinates_of(motion, leg->point, to);
        for (int k = 0; k < HS_N_COORDINATES; k++)
            quintic(from[k], to[k], v0[k], v1[k], T, u, &q[k], &v[k], &a[k]);
        if (u >= 1.0) /* the end itself, not its rounding */
            for (int k = 0; k < HS_N_COORDINATES; k++)
                q[k] = to[k], a[k] = 0.0, v[k] = v1[k];
    }
    *ret_state = (hs_motion_state){
        .x_m = q[HS_COORD_X],
        .z_m = q[HS_COORD_Z],
        .y_m = q[HS_COORD_Y],
        .pitch_rad = q[HS_COORD_PITCH],
        .reach_m = q[HS_COORD_REACH],
        .vx_m_s = v[HS_COORD_X],
        .vz_m_s = v[HS_COORD_Z],
        .pitch_rate_rad_s = v[HS_COORD_PITCH],
        .reach_rate_m_s = v[HS_COORD_REACH],
        .ax_m_s2 = a[HS_COORD_X],
        .az_m_s2 = a[HS_COORD_Z],
        .pitch_acc_rad_s2 = a[HS_COORD_PITCH],
        .reach_acc_m_s2 = a[HS_COORD_REACH],
    };
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  is the load where the route says, as fast and as accelerated?
 * Answer:    minimum jerk between rests, quintics through carry runs, dwells, default times.
 * Not here:  floor and feet (test_floor.c, test_place.c). */
#include "near.h"
#include "route.h"

#include <math.h>

static hs_point
point(double x_m, double z_m, hs_move move, double time_s)
{
    hs_point made = {.x_m = x_m,
                     .z_m = z_m,
                     .y_m = HS_ABSENT,
                     .reach_m = 0.4,
                     .turn_deg = HS_ABSENT,
                     .pitch_deg = HS_ABSENT,
                     .move = move,
                     .time_s = time_s,
                     .hold_s = HS_ABSENT,
                     .tolerance_m = HS_ABSENT,
                     .meet = HS_ABSENT,
                     .held_up = HS_ABSENT,
                     .slide_friction = HS_ABSENT};

    return made;
}

static const double reaches[8] = {0.4, 0.4, 0.4, 0.4, 0.4, 0.4, 0.4, 0.4};

static hs_motion
solve(hs_arena *arena, const hs_point *points, int n, bool may_follow)
{
    hs_route route = {n, points};
    hs_motion motion;
    hs_error error;

    g_assert_cmpint(hs_route_solve(&route, reaches, may_follow, arena, NULL, &motion, &error),
                    ==, HS_OK);
    return motion;
}

/* Flash & Hogan 1985, J. Neurosci. 5(7) 1688-1703: s = 10 u^3 - 15 u^4 + 6 u^5; peak speed 1.875 d/T, peak acceleration
 * 10/sqrt 3 d/T^2 at u = (3 - sqrt 3)/6. */
static void
one_lift_is_minimum_jerk(void)
{
    hs_arena *arena = hs_arena_new();
    hs_point points[] = {point(0, 0.1, HS_MOVE_START, HS_ABSENT),
                         point(0, 0.8, HS_MOVE_LIFT, 1.5)};
    hs_motion motion = solve(arena, points, 2, false);
    hs_motion_state state;

    hs_route_at(&motion, 0, 0.75, &state);
    hs_near("half way", state.z_m, 0.45, 1e-12);
    hs_near("peak speed", state.vz_m_s, 1.875 * 0.7 / 1.5, 1e-12);
    hs_near("no acceleration half way", state.az_m_s2, 0.0, 1e-12);
    hs_route_at(&motion, 0, 1.5 * (3.0 - sqrt(3.0)) / 6.0, &state);
    hs_near("peak acceleration", state.az_m_s2, 10.0 / sqrt(3.0) * 0.7 / (1.5 * 1.5), 1e-12);
    hs_route_at(&motion, 0, 0.375, &state);
    hs_near("a quarter of the time", state.z_m, 0.1 + 0.7 * 0.103515625, 1e-12);
    hs_arena_free(arena);
}

static void
carry_run_is_smooth_and_rests_at_its_ends(void)
{
    hs_arena *arena = hs_arena_new();
    hs_point points[] = {point(0, 1, HS_MOVE_START, HS_ABSENT), point(2, 1, HS_MOVE_CARRY, 2),
                         point(5, 1.2, HS_MOVE_CARRY, 4), point(6, 1.0, HS_MOVE_CARRY, 1.5)};
    hs_motion motion = solve(arena, points, 4, false);
    hs_motion_state before, after;
    double harmonic = 2.0 * 1.0 * 0.75 / 1.75;

    hs_route_at(&motion, 0, 0.0, &before);
    hs_near("starts at rest", before.vx_m_s, 0.0, 1e-15);
    hs_route_at(&motion, 0, 2.0, &before);
    hs_route_at(&motion, 1, 2.0, &after);
    hs_near("harmonic mean of 1 and 0.75 m/s", before.vx_m_s, harmonic, 1e-12);
    hs_near("same speed on both sides", after.vx_m_s, harmonic, 1e-12);
    hs_near("no acceleration at the point", after.ax_m_s2, 0.0, 1e-9);
    hs_route_at(&motion, 1, 6.0, &before);
    hs_near("height turns round: no vertical speed", before.vz_m_s, 0.0, 1e-12);
    hs_route_at(&motion, 2, 7.5, &after);
    hs_near("ends at rest", after.vx_m_s, 0.0, 1e-12);
    hs_arena_free(arena);
}

static void
hold_ends_a_run(void)
{
    hs_arena *arena = hs_arena_new();
    hs_point points[] = {point(0, 1, HS_MOVE_START, HS_ABSENT), point(2, 1, HS_MOVE_CARRY, 2),
                         point(4, 1, HS_MOVE_CARRY, 2)};
    hs_motion motion;
    hs_motion_state state;

    points[1].hold_s = 3;
    motion = solve(arena, points, 3, false);
    g_assert_cmpint(motion.n_legs, ==, 3);
    g_assert_true(motion.legs[1].is_hold);
    hs_near("total time", motion.total_s, 7.0, 1e-12);
    hs_route_at(&motion, 0, 2.0, &state);
    hs_near("stops before the dwell", state.vx_m_s, 0.0, 1e-12);
    hs_route_at(&motion, 1, 3.3, &state);
    hs_near("stands still", state.x_m, 2.0, 1e-12);
    hs_arena_free(arena);
}

static void
default_times_follow_length(void)
{
    hs_arena *arena = hs_arena_new();
    hs_point points[] = {
        point(0, 0, HS_MOVE_START, HS_ABSENT), point(0, 0.7, HS_MOVE_LIFT, HS_ABSENT),
        point(8, 0.7, HS_MOVE_CARRY, HS_ABSENT), point(8, 0.6, HS_MOVE_LOWER, HS_ABSENT)};
    hs_motion motion = solve(arena, points, 4, false);

    hs_near("lift 0.7 m at 0.35 m/s", motion.arrive_s[1], 2.0, 1e-12);
    hs_near("carry 8 m at 0.8 m/s", motion.arrive_s[2] - motion.leave_s[1], 10.0, 1e-12);
    hs_near("at least one second", motion.arrive_s[3] - motion.leave_s[2], 1.0, 1e-12);
    hs_arena_free(arena);
}

static void
pitch_follows_only_where_no_point_of_the_run_gives_one(void)
{
    hs_arena *arena = hs_arena_new();
    hs_point points[] = {point(0, 1, HS_MOVE_START, HS_ABSENT), point(2, 1, HS_MOVE_CARRY, 2),
                         point(4, 1, HS_MOVE_CARRY, 2)};
    hs_motion motion = solve(arena, points, 3, true);

    g_assert_true(motion.follows[1] && motion.follows[2]);
    points[2].pitch_deg = 3;
    motion = solve(arena, points, 3, true);
    g_assert_false(motion.follows[1] || motion.follows[2]);
    points[2].pitch_deg = HS_ABSENT;
    motion = solve(arena, points, 3, false);
    g_assert_false(motion.follows[1]);
    hs_arena_free(arena);
}

int
main(int argc, char **argv)
{
    g_test_init(&argc, &argv, NULL);
    g_test_add_func("/route/one_lift_is_minimum_jerk", one_lift_is_minimum_jerk);
    g_test_add_func("/route/carry_run_is_smooth_and_rests_at_its_ends",
                    carry_run_is_smooth_and_rests_at_its_ends);
    g_test_add_func("/route/hold_ends_a_run", hold_ends_a_run);
    g_test_add_func("/route/default_times_follow_length", default_times_follow_length);
    g_test_add_func("/route/pitch_follows_only_where_no_point_of_the_run_gives_one",
                    pitch_follows_only_where_no_point_of_the_run_gives_one);
    return g_test_run();
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  are load, grips and feet where they should be at an instant?
 * Answer:    pitch on a stair, feet behind the hands, walking factor, set-down times, accelerations of the CG.
 * Not here:  times and speeds of the route (test_route.c), the floor (test_floor.c). */
#include "near.h"
#include "place.h"

#include <string.h>

#define NONE HS_ABSENT

/* A plank of 2 m with a grip at each end, carried by two. */
static const hs_grip grips[] = {
    {.id = "rear",
     .at_m = {-1, 0, 0.1},
     .kind = HS_GRIP_EDGE,
     .coupling = HS_COUPLING_FAIR,
     .hands = 2},
    {.id = "front",
     .at_m = {1, 0, 0.1},
     .kind = HS_GRIP_EDGE,
     .coupling = HS_COUPLING_FAIR,
     .hands = 2},
};
static const int rear_grip[] = {0}, front_grip[] = {1};
static const hs_bearer pair[] = {
    {.id = "a", .worker = 0, .suit = -1, .effector = -1, .n_grips = 1, .grips = rear_grip},
    {.id = "b", .worker = 1, .suit = -1, .effector = -1, .n_grips = 1, .grips = front_grip},
};
static const hs_worker workers[] = {{.id = "w1"}, {.id = "w2"}};
static const hs_load_state load = {.mass_kg = 30,
                                   .cg_m = {0, 0, 0.2},
                                   .has_box = true,
                                   .least_m = {-1, -0.2, 0},
                                   .most_m = {1, 0.2, 0.3}};

typedef struct {
    hs_point points[4];
    hs_option option;
    hs_task task;
    hs_setup setup;
    hs_arena *arena;
} bench;

static void
bench_make(bench *b, int n_points)
{
    memset(b, 0, sizeof *b);
    b->arena = hs_arena_new();
    for (int i = 0; i < 4; i++)
        b->points[i] = (hs_point){.z_m = 0.7,
                                  .y_m = NONE,
                                  .reach_m = 0.35,
                                  .turn_deg = NONE,
                                  .pitch_deg = NONE,
                                  .move = i == 0 ? HS_MOVE_START : HS_MOVE_CARRY,
                                  .time_s = 4,
                                  .hold_s = NONE,
                                  .held_up = NONE,
                                  .slide_friction = NONE,
                                  .x_m = 2.0 * i};
    b->points[0].time_s = NONE;
    b->option = (hs_option){
        .id = "o", .n_bearers = 2, .bearers = pair, .reach_m = NONE, .heading_deg = NONE};
    b->task.load = (hs_load){.n_grips = 2, .grips = grips};
    b->task.route = (hs_route){n_points, b->points};
    b->task.workers = workers;
    b->task.n_workers = 2;
    b->task.options = &b->option;
    b->task.n_options = 1;
    b->task.policy.walking_factor = NONE;
}

static void
bench_solve(bench *b)
{
    g_assert_cmpint(
        hs_setup_make(&b->task, &load, &b->option, 0, b->arena, NULL, &b->setup, NULL), ==,
        HS_OK);
}

static void
bearers_face_the_load_and_stand_at_their_reach(void)
{
    bench b;
    hs_place place;

    bench_make(&b, 2);
    bench_solve(&b);
    hs_place_at(&b.setup, 0, 2.0, &place);
    hs_near("half way", place.origin_m.x, 1.0, 1e-12);
    hs_near("rear hands", place.bearers[0].hands_m.x, 0.0, 1e-12);
    hs_near("rear feet stand behind", place.bearers[0].feet_m.x, -0.35, 1e-12);
    hs_near("front feet stand ahead", place.bearers[1].feet_m.x, 2.35, 1e-12);
    hs_near("front faces back", cos(b.setup.bearers[1].facing_rad), -1.0, 1e-15);
    hs_near("route", place.route, 1.5, 1e-12);
    /* 1 + 0.2 (v / 1.5)^2 with v = 1.875 * 2 m / 4 s half way: Keller et al. 1996 (peak 1.2 at 1.5 m/s) */
    hs_near("walking factor", place.bearers[0].walking_factor, 1.0 + 0.2 * 0.625 * 0.625,
            1e-12);
    hs_place_at(&b.setup, 0, 0.0, &place);
    hs_near("none at rest", place.bearers[0].walking_factor, 1.0, 0.0);
    hs_arena_free(b.arena);
}

/* 32 degrees as in the program's own stair case: riser 0.175 m, going 0.28 m. */
static void
pitch_follows_a_stair_at_its_angle(void)
{
    hs_vec2 floor[2 + 2 * 24];
    bench b;
    hs_place place;
    double angle = atan2(0.175, 0.28);
    int n = 0;

    floor[n++] = (hs_vec2){-5, 0};
    for (int i = 0; i < 24; i++) {
        floor[n++] = (hs_vec2){i * 0.28, i * 0.175};
        floor[n++] = (hs_vec2){i * 0.28, (i + 1) * 0.175};
    }
    floor[n++] = (hs_vec2){20, 24 * 0.175};
    bench_make(&b, 2);
    b.points[0].x_m = 2;
    b.points[1].x_m = 4;
    b.task.site.floor = floor;
    b.task.site.n_floor = n;
    bench_solve(&b);
    hs_place_at(&b.setup, 0, 1.7, &place);
    hs_near("pitch", place.motion.pitch_rad, angle, 1e-9);
    hs_near("grips are placed at the pitch", place.grip_m[1].x - place.grip_m[0].x,
            2 * cos(angle), 1e-9);
    g_assert_true(place.bearers[0].stairs);
    hs_near("1.6 over risers (Gait & Posture 21 (2005) 24-38)", place.bearers[0].walking_factor,
            1.6, 0.0);
    b.option.heading_deg =
        180; /* front end is now behind: the same slope is a negative pitch */
    bench_solve(&b);
    hs_place_at(&b.setup, 0, 1.7, &place);
    hs_near("sign reversed", place.motion.pitch_rad, -angle, 1e-9);
    b.option.heading_deg = 90;
    bench_solve(&b);
    hs_place_at(&b.setup, 0, 1.7, &place);
    hs_near("crosswise stays level", place.motion.pitch_rad, 0.0, 0.0);
    hs_arena_free(b.arena);
}

static void
time_to_set_down_counts_holds_and_is_zero_there(void)
{
    bench b;
    hs_place place;

    bench_make(&b, 4);
    b.points[1].hold_s = 3;
    b.points[2].set_down = HS_YES;
    b.points[2].hold_s = 5;
    bench_solve(&b);
    hs_place_at(&b.setup, 0, 0.0, &place);
    hs_near("4 + 3 + 4", hs_place_to_set_down_s(&b.setup, &place), 11.0, 1e-12);
    hs_place_at(&b.setup, 1, 5.0, &place); /* in the hold at point 2 */
    hs_near("2 of the hold left, 4 of the leg", hs_place_to_set_down_s(&b.setup, &place), 6.0,
            1e-12);
    hs_place_at(&b.setup, 3, 13.0, &place); /* holding at the set-down */
    hs_near("there", hs_place_to_set_down_s(&b.setup, &place), 0.0, 0.0);
    hs_place_at(&b.setup, 4, 16.0, &place); /* leaving it */
    hs_near("still there", hs_place_to_set_down_s(&b.setup, &place), 0.0, 0.0);
    hs_place_at(&b.setup, 4, 17.0, &place);
    g_assert_false(hs_has(hs_place_to_set_down_s(&b.setup, &place)));
    hs_arena_free(b.arena);
}

/* The CG's acceleration against finite differences of its place, in a leg that lifts and pitches. */
static void
acceleration_is_the_second_derivative_of_the_place(void)
{
    bench b;
    hs_place before, at, after;
    double dt = 1e-4, t = 1.3;

    bench_make(&b, 2);
    b.points[0].pitch_deg = 0;
    b.points[1].pitch_deg = 25;
    b.points[1].z_m = 1.2;
    bench_solve(&b);
    hs_place_at(&b.setup, 0, t - dt, &before);
    hs_place_at(&b.setup, 0, t, &at);
    hs_place_at(&b.setup, 0, t + dt, &after);
    hs_near("x", at.cg_acc_m_s2.x, (before.cg_m.x - 2 * at.cg_m.x + after.cg_m.x) / (dt * dt),
            1e-6);
    hs_near("z", at.cg_acc_m_s2.z, (before.cg_m.z - 2 * at.cg_m.z + after.cg_m.z) / (dt * dt),
            1e-6);
    hs_near(
        "feet", at.bearers[0].foot_a_m_s2,
        (before.bearers[0].feet_m.x - 2 * at.bearers[0].feet_m.x + after.bearers[0].feet_m.x) /
            (dt * dt),
        1e-6);
    hs_arena_free(b.arena);
}

/* NIOSH 94-110: 20 cm + half the depth of a box held in front (MEMORY, used as the stated default only). */
static void
default_reach_is_measured_to_the_near_face(void)
{
    static const hs_grip middle[] = {{.id = "l",
                                      .at_m = {0, 0.2, 0.1},
                                      .kind = HS_GRIP_HANDLE,
                                      .coupling = HS_COUPLING_GOOD},
                                     {.id = "r",
                                      .at_m = {0, -0.2, 0.1},
                                      .kind = HS_GRIP_HANDLE,
                                      .coupling = HS_COUPLING_GOOD}};
    static const int both[] = {0, 1};
    static const hs_bearer one[] = {
        {.id = "a", .suit = -1, .effector = -1, .n_grips = 2, .grips = both}};
    bench b;

    bench_make(&b, 2);
    b.points[0].reach_m = b.points[1].reach_m = NONE;
    b.points[0].z_m = 0.1; /* hands at 0.2 m: low */
    b.task.load.grips = middle;
    b.option.bearers = one;
    b.option.n_bearers = 1;
    bench_solve(&b);
    hs_near("low hands", b.setup.motions[0].reach_m[0], 1.25, 1e-12);
    hs_near("high hands", b.setup.motions[0].reach_m[1], 1.2, 1e-12);
    b.option.heading_deg = 90; /* crosswise: the near face is the long side */
    bench_solve(&b);
    hs_near("crosswise", b.setup.motions[0].reach_m[1], 0.4, 1e-12);
    hs_arena_free(b.arena);
}

int
main(int argc, char **argv)
{
    g_test_init(&argc, &argv, NULL);
    g_test_add_func("/place/bearers_face_the_load_and_stand_at_their_reach",
                    bearers_face_the_load_and_stand_at_their_reach);
    g_test_add_func("/place/pitch_follows_a_stair_at_its_angle",
                    pitch_follows_a_stair_at_its_angle);
    g_test_add_func("/place/time_to_set_down_counts_holds_and_is_zero_there",
                    time_to_set_down_counts_holds_and_is_zero_there);
    g_test_add_func("/place/acceleration_is_the_second_derivative_of_the_place",
                    acceleration_is_the_second_derivative_of_the_place);
    g_test_add_func("/place/default_reach_is_measured_to_the_near_face",
                    default_reach_is_measured_to_the_near_face);
    return g_test_run();
}

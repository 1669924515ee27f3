/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  is the walking surface read as it was drawn?
 * Answer:    heights at and beside risers, slopes, flights up and down.
 * Not here:  the pitch that follows it (test_place.c). */
#include "floor.h"
#include "near.h"

/* Four risers of 0.175 m, going 0.26 m, from x = 1: stair geometry as in 29 CFR 1910.25 ranges; invented. */
static const hs_vec2 up[] = {{0, 0},       {1, 0},       {1, 0.175},    {1.26, 0.175},
                             {1.26, 0.35}, {1.52, 0.35}, {1.52, 0.525}, {1.78, 0.525},
                             {1.78, 0.7},  {4, 0.7}};
static const hs_site stairs = {.floor = up, .n_floor = 10};

static void
height_at_a_riser_is_the_later_point(void)
{
    hs_near("before", hs_floor_height_m(&stairs, 0.999), 0.0, 1e-12);
    hs_near("at", hs_floor_height_m(&stairs, 1.0), 0.175, 1e-12);
    hs_near("tread", hs_floor_height_m(&stairs, 1.1), 0.175, 1e-12);
    hs_near("beyond the end", hs_floor_height_m(&stairs, 9.0), 0.7, 1e-12);
    hs_near("before the start", hs_floor_height_m(&stairs, -9.0), 0.0, 1e-12);
    g_assert_cmpint(hs_floor_n_risers(&stairs, 0, 4, 0.05), ==, 4);
    g_assert_cmpint(hs_floor_n_risers(&stairs, 1.1, 1.3, 0.05), ==, 1);
    hs_near("riser", hs_floor_riser_m(&stairs, 3, 0), 0.175, 1e-12);
}

static void
line_of_a_flight_runs_from_one_going_before_to_the_last_nosing(void)
{
    double slope = 0.175 / 0.26;

    hs_near("foot of the line", hs_floor_line_m(&stairs, 0.74), 0.0, 1e-12);
    hs_near("first nosing", hs_floor_line_m(&stairs, 1.0), 0.175, 1e-12);
    hs_near("between nosings", hs_floor_line_m(&stairs, 1.4), 0.175 + 0.4 * slope, 1e-12);
    hs_near("last nosing", hs_floor_line_m(&stairs, 1.78), 0.7, 1e-12);
    hs_near("after it", hs_floor_line_m(&stairs, 2.0), 0.7, 1e-12);
    hs_near("before it", hs_floor_line_m(&stairs, 0.5), 0.0, 1e-12);
}

static void
flight_down_is_the_mirror_of_the_flight_up(void)
{
    hs_vec2 down[10];
    hs_site site = {.floor = down, .n_floor = 10};

    for (int i = 0; i < 10; i++)
        down[i] = (hs_vec2){4 - up[9 - i].x, up[9 - i].y};
    for (double x = -0.45; x < 4.5; x += 0.0937)
        hs_near("mirror", hs_floor_line_m(&site, 4 - x), hs_floor_line_m(&stairs, x), 1e-9);
}

static void
slope_and_no_floor(void)
{
    static const hs_vec2 ramp[] = {{0, 0}, {12, 1}};
    hs_site site = {.floor = ramp, .n_floor = 2}, none = {.n_floor = 0};

    hs_near("1 in 12", hs_floor_slope_rad(&site, 6), 0.08314123188844122,
            1e-12); /* atan(1/12) = 4.76 deg */
    hs_near("half way", hs_floor_height_m(&site, 6), 0.5, 1e-12);
    hs_near("steepest", hs_floor_steepest_rad(&site, 0, 1), 0.08314123188844122, 1e-12);
    hs_near("no floor is level at zero", hs_floor_height_m(&none, 3), 0.0, 0.0);
}

int
main(int argc, char **argv)
{
    g_test_init(&argc, &argv, NULL);
    g_test_add_func("/floor/height_at_a_riser_is_the_later_point",
                    height_at_a_riser_is_the_later_point);
    g_test_add_func("/floor/line_of_a_flight_runs_from_one_going_before_to_the_last_nosing",
                    line_of_a_flight_runs_from_one_going_before_to_the_last_nosing);
    g_test_add_func("/floor/flight_down_is_the_mirror_of_the_flight_up",
                    flight_down_is_the_mirror_of_the_flight_up);
    g_test_add_func("/floor/slope_and_no_floor", slope_and_no_floor);
    return g_test_run();
}

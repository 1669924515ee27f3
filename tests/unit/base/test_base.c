/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  do arena, assumptions, workings and rotations do what they say?
 * Answer:    yes, or one of these fails.
 * Not here:  solvers (test_solve.c). */
#include "assume.h"
#include "near.h"
#include "vec.h"
#include "working.h"

static void
arena_gives_back_what_was_marked(void)
{
    hs_arena *arena = hs_arena_new();
    hs_mark mark = hs_arena_mark(arena);
    double *first = HS_NEW(arena, double, 1000);
    size_t after_one;

    first[999] = 7;
    for (int i = 0; i < 2000; i++)
        HS_NEW(arena, double, 1000);
    after_one = hs_arena_capacity(arena);
    hs_arena_release(arena, mark);
    for (int i = 0; i < 2000; i++)
        g_assert_cmpfloat(HS_NEW(arena, double, 1000)[999], ==, 0.0); /* zeroed again */
    g_assert_cmpuint(hs_arena_capacity(arena), ==, after_one); /* and no new memory taken */
    hs_arena_free(arena);
}

static void
assumption_is_told_once(void)
{
    hs_assumptions list = {.arena = hs_arena_new()};

    hs_assume(&list, 2.0, NULL, HS_SAY(assume_hours, 2.0), "work.hours");
    hs_assume(&list, 3.0, NULL, HS_SAY(assume_hours, 3.0), "work.%s", "hours");
    g_assert_cmpint(list.n, ==, 1);
    g_assert_cmpstr(list.first->path, ==, "work.hours");
    hs_near("the first one stays", list.first->value, 2.0, 0.0);
    hs_arena_free(list.arena);
}

/* Front end up is positive: the load's +x goes to +z. */
static void
pitch_raises_the_front(void)
{
    hs_mat3 turn = hs_mat3_load_to_world(0.3, 0.0);
    hs_vec3 front = hs_mat3_apply(&turn, (hs_vec3){1, 0, 0});

    hs_near("x", front.x, cos(0.3), 1e-15);
    hs_near("z", front.z, sin(0.3), 1e-15);
    turn = hs_mat3_load_to_world(0.0, 1.5707963267948966);
    front = hs_mat3_apply(&turn, (hs_vec3){1, 0, 0});
    hs_near("heading 90 turns the load's x to the left", front.y, 1.0, 1e-15);
}

int
main(int argc, char **argv)
{
    g_test_init(&argc, &argv, NULL);
    g_test_add_func("/base/arena_gives_back_what_was_marked", arena_gives_back_what_was_marked);
    g_test_add_func("/base/assumption_is_told_once", assumption_is_told_once);
    g_test_add_func("/base/pitch_raises_the_front", pitch_raises_the_front);
    return g_test_run();
}

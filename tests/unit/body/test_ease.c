/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  does the model stand as people do, and what does its balance still take?
 * Answer:    free standing beside Woodhull et al. 1985; the base's edge only where a joint needs it; laws of slowing, push and
 *            the moving centre.
 * Not here:  published figures of a given pose (test_body.c), the finding (tests/unit/checks). */
#include "hold.h"
#include "near.h"

#include "balance_left.h"
#include "body.h"
#include "chain.h"
#include "units.h"

#include <glib.h>

#define NEAR_RATIO 0.75

static hs_person
person_of(hs_sex sex, double stature_m, double mass_kg, double age_years)
{
    hs_worker worker = {
        .sex = sex, .stature_m = stature_m, .mass_kg = mass_kg, .age_years = age_years};
    hs_person person;
    hs_error error;

    g_assert_cmpint(hs_person_make(&worker, 25.0, HS_SEGMENTS_DE_LEVA, &person, &error), ==,
                    HS_OK);
    return person;
}

static double
effort_of(const hs_body_state *state)
{
    double sum = 0.0;

    for (int j = 0; j < HS_N_JOINTS; j++)
        sum += state->utilisation[j] * state->utilisation[j];
    return sum;
}

/* The hands hang where they ask least. */
static hs_body_state
stand(const hs_person *person)
{
    hs_body_state best = {0}, state;

    for (int i = 0; i < 10; i++)
        for (int j = 0; j < 10; j++) {
            hs_body_input in =
                hold(0.02 + 0.02 * i, (0.42 + 0.01 * j) * person->stature_m, 0.0);

            in.belly_free = true;
            g_assert_cmpint(hs_posture_find(person, &in, NULL, &state), ==, HS_OK);
            if (state.is_found && (!best.is_found || effort_of(&state) < effort_of(&best)))
                best = state;
        }
    g_assert_true(best.is_found);
    return best;
}

/* Woodhull et al. 1985: hip 6.2 cm ahead of the ankle, SD 1.3; two of them each side. */
static void
free_standing_has_the_hip_ahead_of_the_ankle(void)
{
    for (int i = 0; i < 4; i++) {
        hs_person person = i < 2 ? person_of(HS_SEX_MALE, 1.756, 85.5, 30.0 + 40.0 * i)
                                 : person_of(HS_SEX_FEMALE, 1.628, 67.8, 30.0 + 40.0 * (i - 2));
        hs_body_state state = stand(&person);

        g_test_message("hip %.1f cm, knee %.1f cm", 100.0 * state.at[HS_POSE_HIP].x,
                       100.0 * state.at[HS_POSE_KNEE].x);
        g_assert_cmpfloat(state.at[HS_POSE_HIP].x, >=, 0.062 - 0.026);
        g_assert_cmpfloat(state.at[HS_POSE_HIP].x, <=, 0.062 + 0.026);
    }
}

/* A lift that no joint finds hard is not stood on the edge; one that overloads a joint uses the edge. */
static void
the_edge_is_used_only_where_a_joint_needs_it(void)
{
    hs_person person = person_of(HS_SEX_MALE, 1.756, 85.5, 40.0);
    int easy = 0, hard = 0;

    for (int i = 0; i < 6; i++)
        for (int j = 0; j < 6; j++)
            for (int k = 0; k < 5; k++) {
                hs_body_input in = hold(0.30 + 0.05 * i, 0.40 + 0.15 * j, 5.0 + 10.0 * k);
                hs_body_state state;

                g_assert_cmpint(hs_posture_find(&person, &in, NULL, &state), ==, HS_OK);
                if (!state.is_found)
                    continue;
                g_assert_cmpfloat(state.balance_ratio, <=, 1.0 + 1e-9);
                if (state.greatest < 0.9) {
                    if (state.balance_ratio >= NEAR_RATIO)
                        g_error("hands %g %g, %g N: ratio %g at %g of the strength",
                                in.hand_x_m, in.hand_z_m, in.felt_N, state.balance_ratio,
                                state.greatest);
                    easy++;
                } else if (state.balance_ratio >= NEAR_RATIO)
                    hard++;
            }
    g_test_message("%d easy, %d on the edge", easy, hard);
    g_assert_cmpint(easy, >, 30);
    g_assert_cmpint(hard, >, 5);
}

/* The figure is exact: slowed by it, the point under the weight is at the front edge. */
static void
slowed_by_the_hardest_the_point_is_at_the_edge(void)
{
    hs_person person = person_of(HS_SEX_FEMALE, 1.66, 70.0, 40.0);
    hs_body_input in = hold(0.35, 1.0, 12.0);
    hs_body_state state, slowed;
    hs_balance_left left;

    g_assert_cmpint(hs_posture_find(&person, &in, NULL, &state), ==, HS_OK);
    g_assert_true(state.is_found);
    hs_balance_left_find(&person, &in, &state, HS_ABSENT, &left);
    g_assert_cmpfloat(left.slow_m_s2, >, 0.0);
    g_assert_false(hs_has(left.slip_N));
    slowed = state;
    in.foot_acc_m_s2 = -left.slow_m_s2;
    in.push_N = left.load_kg * left.slow_m_s2;
    g_assert_cmpint(hs_body_at(&person, &in, &slowed), ==, HS_OK);
    hs_near("at the edge", slowed.zmp_m, left.front_m, 1e-9);
    in = hold(0.35, 1.0, 12.0);
    in.push_N = left.push_ahead_N;
    slowed = state;
    g_assert_cmpint(hs_body_at(&person, &in, &slowed), ==, HS_OK);
    hs_near("pushed ahead", slowed.zmp_m, left.front_m, 1e-9);
    in.push_N = -left.push_back_N;
    slowed = state;
    g_assert_cmpint(hs_body_at(&person, &in, &slowed), ==, HS_OK);
    hs_near("pushed back", slowed.zmp_m, left.rear_m, 1e-9);
}

/* With the mass: the same pose, all masses doubled, takes the same slowing and twice the push. Friction: in proportion. */
static void
slowing_does_not_change_with_the_mass_and_push_does(void)
{
    hs_person light = person_of(HS_SEX_MALE, 1.756, 60.0, 40.0),
              heavy = person_of(HS_SEX_MALE, 1.756, 120.0, 40.0);
    hs_body_input in = hold(0.35, 1.0, 8.0), twice = hold(0.35, 1.0, 16.0);
    hs_body_state state, same;
    hs_balance_left a, b;

    g_assert_cmpint(hs_posture_find(&light, &in, NULL, &state), ==, HS_OK);
    same = state;
    g_assert_cmpint(hs_body_at(&heavy, &twice, &same), ==, HS_OK);
    hs_balance_left_find(&light, &in, &state, 0.4, &a);
    hs_balance_left_find(&heavy, &twice, &same, 0.4, &b);
    hs_near("slowing", b.slow_m_s2, a.slow_m_s2, 1e-9);
    hs_near("push", b.push_ahead_N, 2.0 * a.push_ahead_N, 1e-9);
    hs_near("slip", b.slip_N, 2.0 * a.slip_N, 1e-9);
    hs_near("slip slowing", a.slip_m_s2, 0.4 * HS_GRAVITY_m_s2, 1e-9);
    hs_balance_left_find(&light, &in, &state, 0.2, &b);
    hs_near("half the friction", b.slip_N, 0.5 * a.slip_N, 1e-9);
}

/* Mirror: what is left ahead and behind changes places when the point is mirrored in the middle of the usable base. */
static void
ahead_and_behind_change_places(void)
{
    hs_person person = person_of(HS_SEX_MALE, 1.756, 85.5, 40.0);
    hs_body_input in = hold(0.35, 1.0, 10.0);
    hs_body_state state;
    hs_balance_left left, mirrored;

    g_assert_cmpint(hs_posture_find(&person, &in, NULL, &state), ==, HS_OK);
    hs_balance_left_find(&person, &in, &state, HS_ABSENT, &left);
    state.zmp_m = left.front_m + left.rear_m - state.zmp_m;
    hs_balance_left_find(&person, &in, &state, HS_ABSENT, &mirrored);
    hs_near("ahead", mirrored.push_ahead_N, left.push_back_N, 1e-9);
    hs_near("behind", mirrored.push_back_N, left.push_ahead_N, 1e-9);
}

/* X = x + v sqrt(z / g): at rest it is the centre itself, a pendulum's time is checked by hand: z = g gives one second. */
static void
the_moving_centre_follows_hof(void)
{
    hs_near("rest", hs_balance_extrapolated_m(0.05, 1.0, 0.0), 0.05, 0.0);
    hs_near("one second", hs_balance_extrapolated_m(0.05, HS_GRAVITY_m_s2, 0.8), 0.85, 1e-12);
    hs_near("mirror", hs_balance_extrapolated_m(-0.05, 0.9, -0.8),
            -hs_balance_extrapolated_m(0.05, 0.9, 0.8), 1e-12);
    g_assert_cmpfloat(hs_balance_extrapolated_m(0.05, 1.0, 1.2), >,
                      hs_balance_extrapolated_m(0.05, 1.0, 0.8));
}

/* Hands on the floor: a push there tips nobody, and no figure is without end. */
static void
hands_on_the_floor_leave_finite_figures(void)
{
    hs_person person = person_of(HS_SEX_MALE, 1.756, 85.5, 40.0);
    hs_body_input in = hold(0.4, 0.4, 5.0), low;
    hs_body_state state;
    hs_balance_left left;

    g_assert_cmpint(hs_posture_find(&person, &in, NULL, &state), ==, HS_OK);
    g_assert_true(state.is_found);
    in.hand_z_m = 0.0;
    low = in;
    low.hand_z_m = -0.1;
    hs_balance_left_find(&person, &in, &state, 0.4, &left);
    g_assert_true(isfinite(left.push_ahead_N) && isfinite(left.push_back_N));
    g_assert_true(isfinite(left.slow_m_s2) && left.lever_m > 0.0);
    hs_balance_left_find(&person, &low, &state, 0.4, &left);
    g_assert_true(left.push_ahead_N >= 0.0 && isfinite(left.push_back_N));
}

int
main(int argc, char **argv)
{
    g_test_init(&argc, &argv, NULL);
    g_test_add_func("/ease/standing", free_standing_has_the_hip_ahead_of_the_ankle);
    g_test_add_func("/ease/edge", the_edge_is_used_only_where_a_joint_needs_it);
    g_test_add_func("/ease/slowing", slowed_by_the_hardest_the_point_is_at_the_edge);
    g_test_add_func("/ease/mass", slowing_does_not_change_with_the_mass_and_push_does);
    g_test_add_func("/ease/mirror", ahead_and_behind_change_places);
    g_test_add_func("/ease/moving_centre", the_moving_centre_follows_hof);
    g_test_add_func("/ease/hands_on_the_floor_leave_finite_figures",
                    hands_on_the_floor_leave_finite_figures);
    return g_test_run();
}

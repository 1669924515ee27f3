/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  does the body obey laws that must hold?
 * Answer:    one law a test, on chosen people and places.
 * Not here:  published figures (test_worked.c), laws on random people (test_laws.c), findings (tests/unit/checks). */
#include "hold.h"
#include "near.h"

#include "body.h"
#include "units.h"

#include <glib.h>

static hs_person
someone(hs_sex sex, double stature_m, double mass_kg)
{
    hs_worker worker = {
        .sex = sex, .stature_m = stature_m, .mass_kg = mass_kg, .age_years = 35.0};
    hs_person person;

    g_assert_cmpint(hs_person_make(&worker, 25.0, HS_SEGMENTS_DE_LEVA, &person, NULL), ==,
                    HS_OK);
    return person;
}

static void
body__heavier_load_never_lowers_compression(void)
{
    hs_person person = someone(HS_SEX_MALE, 1.756, 85.5);

    for (int x = 0; x < 5; x++) {
        double before_N = 0.0;

        for (int kg = 0; kg <= 40; kg += 4) {
            hs_body_input input = hold(0.3 + 0.05 * x, 0.7, kg);
            hs_body_state state = {.shank_rad = 0.3, .thigh_rad = 0.6, .trunk_rad = 0.5};

            hs_body_at(&person, &input, &state);
            g_assert_cmpfloat(state.compression_N, >=, before_N);
            before_N = state.compression_N;
        }
    }
}

static void
body__hands_further_out_never_lower_the_back_moment(void)
{
    hs_person person = someone(HS_SEX_FEMALE, 1.65, 66.0);
    double before_Nm = -INFINITY;

    for (int i = 0; i < 30; i++) {
        hs_body_input input = hold(0.2 + 0.01 * i, 0.75, 12.0);
        hs_body_state state = {.shank_rad = 0.3, .thigh_rad = 0.6, .trunk_rad = 0.5};

        hs_body_at(&person, &input, &state);
        g_assert_cmpfloat(state.l5s1_moment_Nm, >, before_Nm);
        before_Nm = state.l5s1_moment_Nm;
    }
}

/* The point under the resultant at rest is the common CG: it lies between body's and load's. */
static void
body__common_centre_lies_between_its_parts(void)
{
    hs_person person = someone(HS_SEX_MALE, 1.80, 90.0);

    for (int i = 0; i < 20; i++) {
        hs_body_input input = hold(0.25 + 0.02 * i, 0.9, 2.0 * i + 1.0);
        hs_body_state state = {.shank_rad = 0.2, .thigh_rad = 0.3, .trunk_rad = 0.2};
        double mass_kg;

        hs_body_at(&person, &input, &state);
        mass_kg = 2.0 * i + 1.0;
        hs_near("common CG", state.zmp_m,
                (state.cm_kg * state.cm_x_m + mass_kg * input.hand_x_m) /
                    (state.cm_kg + mass_kg),
                1e-12);
        g_assert_cmpfloat(state.zmp_m, >=, fmin(state.cm_x_m, input.hand_x_m));
        g_assert_cmpfloat(state.zmp_m, <=, fmax(state.cm_x_m, input.hand_x_m));
    }
}

static void
assert_limits(const hs_body_state *s)
{
    const double e = 1e-9, d = HS_RAD_PER_DEG;
    double knee = s->shank_rad + s->thigh_rad, hip = s->thigh_rad + s->trunk_rad;

    g_assert_cmpfloat(s->shank_rad, >=, -10.0 * d - e);
    g_assert_cmpfloat(s->shank_rad, <=, (knee < 20.0 * d ? 25.0 : 30.0) * d + e);
    g_assert_cmpfloat(knee, >=, -e);
    g_assert_cmpfloat(knee, <=, 135.0 * d + e);
    g_assert_cmpfloat(hip, >=, -15.0 * d - e);
    g_assert_cmpfloat(hip, <=, 125.0 * d + e);
    g_assert_cmpfloat(s->trunk_rad, >=, -10.0 * d - e);
    g_assert_cmpfloat(s->trunk_rad, <=, 110.0 * d + e);
    g_assert_cmpfloat(s->residual, <, 1e-9);
    g_assert_cmpfloat(s->balance_ratio, <=, 1.0);
    g_assert_false(s->behind_cut);
    g_assert_cmpfloat(s->at[HS_POSE_KNEE].x, >, s->at[HS_POSE_HIP].x - 0.35);
}

static double
largest_turn_rad(const hs_body_state *a, const hs_body_state *b)
{
    double d0 = a->shank_rad - b->shank_rad, d1 = a->thigh_rad - b->thigh_rad,
           d2 = a->trunk_rad - b->trunk_rad;

    return fmax(fmax(fabs(d0), fabs(d1 + d0)), fmax(fabs(d2), fabs(d1 + d2)));
}

/* Up and down in steps of the hands below 0.05 m: limits hold, forces close, no joint jumps more than 10 degrees. */
static void
sweep(const hs_person *person,
      hs_arena *arena,
      double reach_m,
      double load_kg,
      hs_style style,
      bool upwards)
{
    enum {
        N = 41
    };
    hs_body_input inputs[N];
    hs_body_state states[N];

    for (int i = 0; i < N; i++) {
        inputs[i] = hold(reach_m, 0.12 + 0.042 * (upwards ? i : N - 1 - i), load_kg);
        inputs[i].style = style;
    }
    g_assert_cmpint(hs_posture_leg(person, inputs, N, arena, states), ==, HS_OK);
    for (int i = 0; i < N; i++) {
        if (!states[i].is_found) {
            g_assert_true(!states[i].reaches || states[i].shortfall_m > 0.0);
            continue;
        }
        assert_limits(&states[i]);
        if (i > 0 && states[i - 1].is_found)
            g_assert_cmpfloat(largest_turn_rad(&states[i], &states[i - 1]), <=,
                              10.0 * HS_RAD_PER_DEG + 1e-6);
    }
}

static void
posture__legs_are_smooth_and_within_limits(void)
{
    hs_arena *arena = hs_arena_new();

    for (int who = 0; who < 4; who++) {
        hs_person person = someone(who % 2 ? HS_SEX_MALE : HS_SEX_FEMALE, 1.52 + 0.12 * who,
                                   52.0 + 15.0 * who);

        for (int r = 0; r < 4; r++)
            for (int kg = 0; kg < 3; kg++)
                for (int style = HS_STYLE_FREE; style <= HS_STYLE_BACK; style++)
                    for (int up = 0; up < 2; up++)
                        sweep(&person, arena, 0.25 + 0.1 * r, 2.0 + 9.0 * kg, (hs_style)style,
                              up == 1);
    }
    hs_arena_free(arena);
}

static void
posture__style_is_a_preference(void)
{
    hs_person person = someone(HS_SEX_MALE, 1.756, 85.5);
    hs_body_input legs = hold(0.35, 0.45, 10.0), back = legs;
    hs_body_state by_legs, by_back;

    legs.style = HS_STYLE_LEGS;
    back.style = HS_STYLE_BACK;
    hs_posture_find(&person, &legs, NULL, &by_legs);
    hs_posture_find(&person, &back, NULL, &by_back);
    g_assert_true(by_legs.is_found && by_back.is_found);
    g_assert_cmpfloat(by_legs.trunk_rad, <, by_back.trunk_rad);
    g_assert_cmpfloat(by_legs.shank_rad + by_legs.thigh_rad, >,
                      by_back.shank_rad + by_back.thigh_rad);
}

static void
posture__out_of_reach_says_by_how_much(void)
{
    hs_person person = someone(HS_SEX_MALE, 1.756, 85.5);
    hs_body_input near = hold(0.4, 2.25, 1.0), far = hold(0.4, 2.35, 1.0);
    hs_body_state a, b;

    hs_posture_find(&person, &near, NULL, &a);
    hs_posture_find(&person, &far, NULL, &b);
    g_assert_false(a.is_found || a.reaches || b.is_found || b.reaches);
    g_assert_cmpfloat(a.shortfall_m, >, 0.0);
    hs_near("0.10 m higher, nearly 0.10 m more missing", b.shortfall_m - a.shortfall_m, 0.1,
            0.01);
    g_assert_true(isnan(a.compression_N));
}

static void
posture__too_heavy_ahead_does_not_balance(void)
{
    hs_person person = someone(HS_SEX_FEMALE, 1.60, 55.0);
    hs_body_input input = hold(0.6, 1.1, 40.0);
    hs_body_state state;

    hs_posture_find(&person, &input, NULL, &state);
    g_assert_false(state.is_found);
    g_assert_true(state.reaches);
    g_assert_cmpfloat(state.shortfall_m, >, 0.0);
    g_assert_true(isfinite(state.compression_N));
}

static void
posture__warm_start_finds_the_same(void)
{
    hs_person person = someone(HS_SEX_MALE, 1.756, 85.5);

    for (int i = 0; i < 20; i++) {
        hs_body_input input = hold(0.35, 0.5 + 0.04 * i, 12.0);
        hs_body_state cold, warm;

        hs_posture_find(&person, &input, NULL, &cold);
        hs_posture_find(&person, &input, &cold, &warm);
        hs_near("trunk", warm.trunk_rad, cold.trunk_rad, 1e-4);
        hs_near("shank", warm.shank_rad, cold.shank_rad, 1e-4);
    }
}

static void
balance__mirrors_left_and_right(void)
{
    hs_person person = someone(HS_SEX_MALE, 1.756, 85.5);
    hs_vec2 hull[HS_MAX_BASE];
    int n = hs_base_hull(&person, NULL, HS_STANCE_STANDING, 0.0, 0.0, hull);

    for (int i = 0; i < 40; i++) {
        double left_m, right_m, left, right;
        bool a, b;
        hs_vec2 point = {-0.06 + 0.006 * i, 0.01 * (i % 17)};

        hs_balance_judge(&person, hull, n, point, &left_m, &left, &a);
        point.y = -point.y;
        hs_balance_judge(&person, hull, n, point, &right_m, &right, &b);
        hs_near("margin", left_m, right_m, 1e-12);
        hs_near("ratio", left, right, 1e-12);
        g_assert_true(a == b);
        g_assert_true(a == (point.x < -person.rear_cut_m));
    }
}

static void
suit__powered_terms_follow_the_file_format(void)
{
    hs_person person = someone(HS_SEX_MALE, 1.756, 85.5);
    hs_body_input input = hold(0.4, 0.8, 0.0);
    hs_body_state bare = {.shank_rad = 0.2, .thigh_rad = 0.4, .trunk_rad = 0.4}, suited = bare;
    double lever_m, suit_Nm;

    hs_body_at(&person, &input, &bare);
    input.felt_N = 100.0;
    input.rest_N = 250.0;
    input.suit = (hs_body_suit){.kind = HS_SUIT_POWERED,
                                .weight_N = 120.0,
                                .centre_x_m = 0.05,
                                .centre_z_m = 0.9,
                                .gain_trunk = 4.0,
                                .residual_trunk_N = 30.0,
                                .harness_m = 0.2,
                                .mass_kg = 60.0};
    hs_body_at(&person, &input, &suited);
    lever_m = input.hand_x_m - bare.at[HS_POSE_L5S1].x;
    suit_Nm = fmax(120.0 * (0.05 - bare.at[HS_POSE_L5S1].x), 0.0);
    hs_near("L5/S1", suited.moment_Nm[HS_JOINT_L5S1],
            bare.moment_Nm[HS_JOINT_L5S1] + 100.0 * lever_m +
                (250.0 * lever_m + suit_Nm) / 4.0 + 30.0 * 0.2,
            1e-9);
    hs_near("elbow", suited.moment_Nm[HS_JOINT_ELBOW],
            bare.moment_Nm[HS_JOINT_ELBOW] +
                100.0 * (input.hand_x_m - bare.at[HS_POSE_ELBOW].x),
            1e-9);
    hs_near("knee", suited.moment_Nm[HS_JOINT_KNEE],
            bare.moment_Nm[HS_JOINT_KNEE] + 100.0 * (input.hand_x_m - bare.at[HS_POSE_KNEE].x) +
                120.0 * (0.05 - bare.at[HS_POSE_KNEE].x),
            1e-9);
    hs_near("ground", suited.ground_N, (85.5 * (1.0 - 0.0) + 60.0) * HS_GRAVITY_m_s2 + 350.0,
            0.1);
    g_assert_cmpfloat(suited.residual, <, 1e-9);
}

static void
suit__spring_is_taken_off_but_not_past_nothing(void)
{
    static const hs_torque_point weak[] = {{10.0, 5.0}, {90.0, 30.0}},
                                 strong[] = {{10.0, 4000.0}, {90.0, 4000.0}};
    hs_suit suit = {.kind = HS_SUIT_BACK_SPRING, .n_torque = 2, .torque = weak};
    hs_person person = someone(HS_SEX_MALE, 1.756, 85.5);
    hs_body_input input = hold(0.4, 0.6, 10.0);
    hs_body_state bare = {.shank_rad = 0.2, .thigh_rad = 0.4, .trunk_rad = 0.6}, sprung = bare,
                  over = bare;

    hs_body_at(&person, &input, &bare);
    input.suit =
        (hs_body_suit){.kind = HS_SUIT_BACK_SPRING, .gain_trunk = 1.0, .torque = &suit};
    hs_body_at(&person, &input, &sprung);
    hs_near("spring at hip flexion",
            bare.moment_Nm[HS_JOINT_L5S1] - sprung.moment_Nm[HS_JOINT_L5S1],
            5.0 + 25.0 * (1.0 * HS_DEG_PER_RAD - 10.0) / 80.0, 1e-9);
    hs_near("shoulder untouched", sprung.moment_Nm[HS_JOINT_SHOULDER],
            bare.moment_Nm[HS_JOINT_SHOULDER], 1e-12);
    suit.torque = strong;
    hs_body_at(&person, &input, &over);
    hs_near("not past nothing", over.moment_Nm[HS_JOINT_L5S1], 0.0, 0.0);
    g_assert_cmpfloat(over.residual, <, 1e-9);
}

int
main(int argc, char **argv)
{
    g_test_init(&argc, &argv, NULL);
    g_test_add_func("/body/heavier_load_never_lowers_compression",
                    body__heavier_load_never_lowers_compression);
    g_test_add_func("/body/hands_further_out_never_lower_the_back_moment",
                    body__hands_further_out_never_lower_the_back_moment);
    g_test_add_func("/body/common_centre_lies_between_its_parts",
                    body__common_centre_lies_between_its_parts);
    g_test_add_func("/posture/legs_are_smooth_and_within_limits",
                    posture__legs_are_smooth_and_within_limits);
    g_test_add_func("/posture/style_is_a_preference", posture__style_is_a_preference);
    g_test_add_func("/posture/out_of_reach_says_by_how_much",
                    posture__out_of_reach_says_by_how_much);
    g_test_add_func("/posture/too_heavy_ahead_does_not_balance",
                    posture__too_heavy_ahead_does_not_balance);
    g_test_add_func("/posture/warm_start_finds_the_same", posture__warm_start_finds_the_same);
    g_test_add_func("/balance/mirrors_left_and_right", balance__mirrors_left_and_right);
    g_test_add_func("/suit/powered_terms_follow_the_file_format",
                    suit__powered_terms_follow_the_file_format);
    g_test_add_func("/suit/spring_is_taken_off_but_not_past_nothing",
                    suit__spring_is_taken_off_but_not_past_nothing);
    return g_test_run();
}

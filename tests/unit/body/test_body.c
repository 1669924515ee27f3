/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  does the body agree with published worked figures and with laws that must hold?
 * Answer:    tests/cases/body.json case by case, then the laws.
 * Not here:  the findings (tests/unit/checks). */
#include "near.h"

#include "body.h"
#include "lowback.h"
#include "person.h"
#include "units.h"

#include <glib.h>

static double
figure(JsonObject *given, const char *name, double otherwise)
{
    return json_object_has_member(given, name) ? json_object_get_double_member(given, name)
                                               : otherwise;
}

static hs_person
person_of(JsonObject *given)
{
    const char *sex = json_object_get_string_member_with_default(given, "sex", "male");
    const char *table = json_object_get_string_member_with_default(given, "table", "de leva");
    hs_worker worker = {.sex = g_str_equal(sex, "female") ? HS_SEX_FEMALE : HS_SEX_MALE,
                        .stature_m = figure(given, "stature_m", 1.756),
                        .mass_kg = figure(given, "mass_kg", 85.5),
                        .age_years = figure(given, "age_years", 40.0)};
    hs_person person;
    hs_error error;

    g_assert_cmpint(
        hs_person_make(&worker, figure(given, "percentile", 50.0),
                       g_str_equal(table, "winter") ? HS_SEGMENTS_WINTER : HS_SEGMENTS_DE_LEVA,
                       &person, &error),
        ==, HS_OK);
    return person;
}

static hs_body_input
hold(double x_m, double z_m, double load_kg)
{
    return (hs_body_input){.hand_x_m = x_m,
                           .hand_z_m = z_m,
                           .felt_N = load_kg * HS_GRAVITY_m_s2,
                           .weight_factor = 1.0,
                           .suit.gain_trunk = 1.0,
                           .stance = HS_STANCE_STANDING,
                           .style = HS_STYLE_FREE};
}

static double
ask_pose(const hs_person *person, JsonObject *given, const char *ask)
{
    static const char *const joints[HS_N_JOINTS] = {"ankle", "knee",     "hip",
                                                    "l5s1",  "shoulder", "elbow"};
    hs_body_input input = hold(figure(given, "hand_x_m", NAN), figure(given, "hand_z_m", NAN),
                               figure(given, "load_kg", NAN));
    hs_body_state state = {.shank_rad = figure(given, "shank_deg", NAN) * HS_RAD_PER_DEG,
                           .thigh_rad = figure(given, "thigh_deg", NAN) * HS_RAD_PER_DEG,
                           .trunk_rad = figure(given, "trunk_deg", NAN) * HS_RAD_PER_DEG};

    g_assert_cmpint(hs_body_at(person, &input, &state), ==, HS_OK);
    if (g_str_equal(ask, "zmp"))
        return state.zmp_m;
    if (g_str_equal(ask, "residual"))
        return state.residual;
    if (g_str_has_prefix(ask, "place_hip"))
        return g_str_has_suffix(ask, "_x") ? state.at[HS_POSE_HIP].x : state.at[HS_POSE_HIP].y;
    if (g_str_has_prefix(ask, "place_shoulder"))
        return g_str_has_suffix(ask, "_x") ? state.at[HS_POSE_SHOULDER].x
                                           : state.at[HS_POSE_SHOULDER].y;
    for (int j = 0; j < HS_N_JOINTS; j++)
        if (g_str_has_suffix(ask, joints[j]))
            return state.moment_Nm[j];
    return NAN;
}

static double
ask_strength(const hs_person *person, JsonObject *given, const char *ask)
{
    double angle_rad = figure(given, "angle_deg", 90.0) * HS_RAD_PER_DEG;

    if (g_str_equal(ask, "one_leg_hip"))
        return 0.5 * hs_strength_Nm(person, HS_JOINT_HIP, angle_rad, 0.0, 1.0);
    if (g_str_equal(ask, "one_leg_knee"))
        return 0.5 * hs_strength_Nm(person, HS_JOINT_KNEE, angle_rad, 0.0, -1.0);
    if (g_str_equal(ask, "one_leg_ankle"))
        return 0.5 * hs_strength_Nm(person, HS_JOINT_ANKLE, angle_rad, 0.0, 1.0);
    if (g_str_equal(ask, "trunk"))
        return hs_strength_Nm(person, HS_JOINT_L5S1, angle_rad, 0.0, 1.0);
    if (g_str_equal(ask, "one_shoulder"))
        return 0.5 * hs_strength_Nm(person, HS_JOINT_SHOULDER, angle_rad, 0.0, 1.0);
    if (g_str_equal(ask, "one_elbow"))
        return 0.5 * hs_strength_Nm(person, HS_JOINT_ELBOW, angle_rad, 0.0, 1.0);
    return g_str_equal(ask, "grip") ? person->grip_N : HS_ABSENT;
}

static double
ask_size(const hs_person *p, const char *ask)
{
    const double *kg = p->segment_kg;
    double trunk_kg = kg[HS_SEGMENT_LOWER_TRUNK] + kg[HS_SEGMENT_UPPER_TRUNK], sum = 0.0;
    double arms_kg = kg[HS_SEGMENT_UPPER_ARMS] + kg[HS_SEGMENT_FOREARMS] + kg[HS_SEGMENT_HANDS];
    hs_vec2 hull[HS_MAX_BASE];

    for (int i = 0; i < HS_N_SEGMENTS; i++)
        sum += kg[i];
    hs_base_hull(p, NULL, HS_STANCE_STANDING, 0.0, 0.0, hull);
    if (g_str_equal(ask, "standing_shoulder"))
        return p->ankle_height_m + p->shank_m + p->thigh_m + p->trunk_m;
    if (g_str_equal(ask, "arm_length"))
        return p->upper_arm_m + p->forearm_m;
    if (g_str_equal(ask, "standing_cm"))
        return p->standing_cm_m / p->stature_m;
    if (g_str_equal(ask, "mass_sum"))
        return sum / p->mass_kg;
    if (g_str_equal(ask, "trunk_mass"))
        return trunk_kg / p->mass_kg;
    if (g_str_equal(ask, "trunk_centre"))
        return (kg[HS_SEGMENT_LOWER_TRUNK] * p->segment_at[HS_SEGMENT_LOWER_TRUNK] +
                kg[HS_SEGMENT_UPPER_TRUNK] * p->segment_at[HS_SEGMENT_UPPER_TRUNK]) /
               trunk_kg;
    if (g_str_equal(ask, "head_arms_trunk"))
        return (trunk_kg + kg[HS_SEGMENT_HEAD] + arms_kg) / p->mass_kg;
    if (g_str_equal(ask, "mass_above"))
        return (kg[HS_SEGMENT_UPPER_TRUNK] + kg[HS_SEGMENT_HEAD] + arms_kg) / p->mass_kg;
    if (g_str_equal(ask, "usable_length"))
        return 0.8 * (hull[1].x - hull[0].x) / p->foot_m;
    if (g_str_equal(ask, "hull_rear_from_heel"))
        return (0.5 * (1.0 - 0.8) * (hull[1].x - hull[0].x)) / p->foot_m;
    return g_str_equal(ask, "toe_joint") ? (p->heel_m + p->toe_joint_m) / p->foot_m : HS_ABSENT;
}

static double
ask_endurance(JsonObject *given, const char *joint)
{
    static const struct {
        const char *name;
        int joint;
    } joints[] = {{"ankle", HS_JOINT_ANKLE},
                  {"knee", HS_JOINT_KNEE},
                  {"trunk", HS_JOINT_L5S1},
                  {"shoulder", HS_JOINT_SHOULDER},
                  {"elbow", HS_JOINT_ELBOW}};

    for (gsize i = 0; i < G_N_ELEMENTS(joints); i++)
        if (g_str_equal(joint, joints[i].name))
            return hs_endurance_s(joints[i].joint, figure(given, "fraction", NAN), NULL);
    return NAN;
}

static double
ask_disc(JsonObject *given, const char *ask)
{
    double muscle_N = figure(given, "moment_Nm", NAN) / figure(given, "arm_m", NAN),
           compression_N, shear_N;

    hs_lowback_press(muscle_N, figure(given, "above_N", NAN), 0.0,
                     figure(given, "slope_deg", NAN) * HS_RAD_PER_DEG, &compression_N,
                     &shear_N);
    return g_str_equal(ask, "shear") ? shear_N : compression_N;
}

static double
ask(JsonObject *given, const char *what)
{
    hs_person person = person_of(given);

    if (json_object_has_member(given, "shank_deg"))
        return ask_pose(&person, given, what);
    if (json_object_has_member(given, "slope_deg"))
        return ask_disc(given, what);
    if (g_str_has_prefix(what, "endurance_"))
        return ask_endurance(given, what + strlen("endurance_"));
    if (g_str_has_prefix(what, "one_") || g_str_equal(what, "trunk") ||
        g_str_equal(what, "grip"))
        return ask_strength(&person, given, what);
    return ask_size(&person, what);
}

static void
body__agrees_with_published_cases(void)
{
    g_autoptr(JsonNode) root = hs_cases_load("body");
    JsonArray *cases = json_object_get_array_member(json_node_get_object(root), "cases");

    g_assert_cmpuint(json_array_get_length(cases), >, 60);
    for (guint i = 0; i < json_array_get_length(cases); i++) {
        JsonObject *one = json_array_get_object_element(cases, i);

        hs_near(json_object_get_string_member(one, "name"),
                ask(json_object_get_object_member(one, "given"),
                    json_object_get_string_member(one, "ask")),
                json_object_get_double_member(one, "expect"),
                json_object_get_double_member(one, "tolerance"));
    }
}

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
    g_test_add_func("/body/agrees_with_published_cases", body__agrees_with_published_cases);
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

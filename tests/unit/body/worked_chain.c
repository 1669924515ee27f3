/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what do known forces do to the joints of a known posture?
 * Answer:    worked_ask_chain(): hs_body_at() asked for a person, or for a body with the masses and lengths of a printed
 *            example, so that the program's own statics are held against the example's answer.
 * Not here:  postures that the program finds for itself (test_body.c), but for the two styles compared. */
#include "chain.h"
#include "lowback.h"
#include "person.h"
#include "units.h"
#include "worked.h"

static const char *const joint_names[HS_N_JOINTS] = {"ankle", "knee",     "hip",
                                                     "l5s1",  "shoulder", "elbow"};

typedef struct {
    hs_person person;
    hs_body_input input;
    hs_body_state state;
} posed;

static double
rad_of(JsonObject *given, const char *name)
{
    return worked_figure(given, name, 0.0) * HS_RAD_PER_DEG;
}

static void
solve(posed *p)
{
    g_assert_cmpint(hs_body_at(&p->person, &p->input, &p->state), ==, HS_OK);
    g_assert_cmpfloat(p->state.residual, <, 1e-9);
}

static posed
given_posture(JsonObject *given)
{
    posed p = {.person = worked_person(given),
               .input = worked_hold(worked_figure(given, "hand_x_m", NAN),
                                    worked_figure(given, "hand_z_m", NAN),
                                    worked_figure(given, "load_kg", NAN)),
               .state = {.shank_rad = rad_of(given, "shank_deg"),
                         .thigh_rad = rad_of(given, "thigh_deg"),
                         .trunk_rad = rad_of(given, "trunk_deg")}};

    solve(&p);
    return p;
}

/* ---- bodies with the figures of a case ---- */

/* Weights in N and places on their links, all others without mass. */
static void
set_segments(JsonObject *given, hs_person *person)
{
    static const char *const names[HS_N_SEGMENTS] = {"feet",        "shanks",      "thighs",
                                                     "lower_trunk", "upper_trunk", "head",
                                                     "upper_arms",  "forearms",    "hands"};

    for (int i = 0; i < HS_N_SEGMENTS; i++) {
        g_autofree char *weight = g_strconcat("N_", names[i], NULL);
        g_autofree char *at = g_strconcat("at_", names[i], NULL);

        person->segment_kg[i] = worked_figure(given, weight, 0.0) / HS_GRAVITY_m_s2;
        person->segment_at[i] = worked_figure(given, at, 0.0);
    }
}

/* The shank stands straight up to half the hip's height, the thigh from there to the hip. */
static void
set_links(JsonObject *given, posed *p)
{
    double hip_x_m = worked_figure(given, "hip_x_m", 0.0),
           half_m = 0.5 * worked_figure(given, "hip_z_m", 1.0);

    p->person.ankle_height_m = 0.0;
    p->person.shank_m = half_m;
    p->person.thigh_m = hypot(hip_x_m, half_m);
    p->state.thigh_rad = atan2(-hip_x_m, half_m);
    p->state.trunk_rad = rad_of(given, "trunk_deg");
    p->person.trunk_m = worked_figure(given, "trunk_m", 0.5);
    p->person.upper_arm_m = worked_figure(given, "upper_arm_m", 0.5);
    p->person.forearm_m = worked_figure(given, "forearm_m", 0.5);
    p->person.l5s1_fraction = 0.0; /* the trunk turns at its lower end */
}

static void
set_hand(JsonObject *given, const char *name, double from_x_m, double from_z_m, posed *p)
{
    JsonArray *by;

    if (!json_object_has_member(given, name))
        return;
    by = json_object_get_array_member(given, name);
    p->input.hand_x_m = from_x_m + json_array_get_double_element(by, 0);
    p->input.hand_z_m = from_z_m + json_array_get_double_element(by, 1);
}

static posed
own_body(JsonObject *given)
{
    posed p = {.person = worked_person(given)};
    double hip_x_m = worked_figure(given, "hip_x_m", 0.0),
           hip_z_m = worked_figure(given, "hip_z_m", 1.0);

    set_segments(given, &p.person);
    set_links(given, &p);
    p.input = worked_hold(worked_figure(given, "hand_x_m", 0.3),
                          worked_figure(given, "hand_z_m", 1.0), 0.0);
    set_hand(given, "hand_from_hip_m", hip_x_m, hip_z_m, &p);
    set_hand(given, "hand_from_shoulder_m", hip_x_m + p.person.trunk_m * sin(p.state.trunk_rad),
             hip_z_m + p.person.trunk_m * cos(p.state.trunk_rad), &p);
    p.input.felt_N = worked_figure(given, "felt_N", 0.0);
    p.input.push_N = worked_figure(given, "push_N", 0.0);
    p.input.foot_acc_m_s2 = worked_figure(given, "foot_acc_m_s2", 0.0);
    if (json_object_has_member(given, "suit_kg")) {
        p.input.suit.kind = HS_SUIT_POWERED;
        p.input.suit.mass_kg = worked_figure(given, "suit_kg", NAN);
        p.input.suit.centre_x_m = worked_figure(given, "suit_x_m", 0.0);
        p.input.suit.centre_z_m = worked_figure(given, "suit_z_m", 1.0);
    }
    solve(&p);
    return p;
}

/* The value of one figure of the input at which the point under the resultant comes to a place. */
static double
value_at_point(posed *p, double *figure, double from, double to, double target_m)
{
    double at_from_m;

    *figure = from;
    solve(p);
    at_from_m = p->state.zmp_m;
    for (int i = 0; i < 100; i++) {
        *figure = 0.5 * (from + to);
        solve(p);
        if ((p->state.zmp_m < target_m) == (at_from_m < target_m))
            from = *figure;
        else
            to = *figure;
    }
    return *figure;
}

/* How far ahead the body's own mass must lie. */
static double
body_at_point(JsonObject *given, posed *p, double target_m)
{
    double low_m = -0.3, high_m = 0.3;

    for (int i = 0; i < 100; i++) {
        double middle_m = 0.5 * (low_m + high_m);

        json_object_set_double_member(given, "hip_x_m", middle_m);
        *p = own_body(given);
        *(p->state.zmp_m < target_m ? &low_m : &high_m) = middle_m;
    }
    json_object_remove_member(given, "hip_x_m");
    return 0.5 * (low_m + high_m);
}

static double
bend_deg(const hs_body_state *state)
{
    const hs_vec2 *at = state->at;
    hs_vec2 upper = {at[HS_POSE_ELBOW].x - at[HS_POSE_SHOULDER].x,
                     at[HS_POSE_ELBOW].y - at[HS_POSE_SHOULDER].y};
    hs_vec2 fore = {at[HS_POSE_HAND].x - at[HS_POSE_ELBOW].x,
                    at[HS_POSE_HAND].y - at[HS_POSE_ELBOW].y};

    return HS_DEG_PER_RAD * acos((upper.x * fore.x + upper.y * fore.y) /
                                 (hypot(upper.x, upper.y) * hypot(fore.x, fore.y)));
}

static double
ask_own_disc(const posed *p, const char *ask)
{
    double c_N, s_N;

    hs_lowback_press(p->state.muscle_N, p->state.weight_above_N, 0.0, p->state.trunk_rad, &c_N,
                     &s_N);
    if (g_str_equal(ask, "own_muscle"))
        return p->state.muscle_N;
    if (g_str_equal(ask, "own_shear_trunk"))
        return p->state.shear_other_N;
    return g_str_equal(ask, "own_resultant") ? hypot(c_N, s_N) : HS_ABSENT;
}

/* Margin to the base of a case: the judged base is 0.8 of the given one, which is therefore made so much larger. */
static double
ask_margin(JsonObject *given, double x_m)
{
    hs_body_suit soles = {.has_foot = true,
                          .foot_heel_m = worked_figure(given, "heel_m", 0.5),
                          .foot_toe_m = worked_figure(given, "toe_m", NAN),
                          .foot_width_m = worked_figure(given, "foot_width_m", 1.0)};
    double scale = worked_figure(given, "usable", 1.0) / 0.8, margin_m, ratio;
    hs_person person = worked_person(given);
    hs_vec2 hull[HS_MAX_BASE], middle;
    bool behind;
    int n;

    person.stance_width_m = worked_figure(given, "stance_m", person.stance_width_m);
    n = hs_base_hull(&person, &soles, HS_STANCE_STANDING, 0.0, 0.0, hull);
    middle = (hs_vec2){0.5 * (hull[0].x + hull[1].x), 0.5 * (hull[1].y + hull[2].y)};
    for (int i = 0; i < n; i++)
        hull[i] = (hs_vec2){middle.x + scale * (hull[i].x - middle.x),
                            middle.y + scale * (hull[i].y - middle.y)};
    hs_balance_judge_step(&person, hull, n, -1.0,
                          (hs_vec2){x_m, worked_figure(given, "y_m", 0.0)}, &margin_m, &ratio,
                          &behind);
    return margin_m;
}

static double
ask_own_point(JsonObject *given, posed *p, const char *ask)
{
    double target_m = worked_figure(given, "target_m", NAN), before_m = p->state.zmp_m;

    if (g_str_equal(ask, "own_zmp"))
        return before_m;
    if (g_str_equal(ask, "own_margin"))
        return ask_margin(given, before_m);
    if (g_str_equal(ask, "own_push_to"))
        return value_at_point(p, &p->input.push_N, -2000.0, 2000.0, target_m);
    if (g_str_equal(ask, "own_body_to"))
        return body_at_point(given, p, target_m);
    if (g_str_equal(ask, "own_let_go")) {
        p->input.felt_N = 0.0;
        solve(p);
        return p->state.zmp_m - before_m;
    }
    return HS_ABSENT;
}

/* The hardest slowing of body, suit and load together that keeps the point behind a line: the load pushes the hands. */
static double
ask_slowing(JsonObject *given)
{
    double low = 0.0, high = 9.0;

    for (int i = 0; i < 100; i++) {
        double slowing = 0.5 * (low + high);
        posed p;

        json_object_set_double_member(given, "foot_acc_m_s2", -slowing);
        json_object_set_double_member(
            given, "push_N", worked_figure(given, "felt_N", NAN) / HS_GRAVITY_m_s2 * slowing);
        p = own_body(given);
        *(p.state.zmp_m < worked_figure(given, "target_m", NAN) ? &low : &high) = slowing;
    }
    return 0.5 * (low + high);
}

static double
ask_own(JsonObject *given, const char *ask)
{
    posed p = own_body(given);
    double got = ask_own_disc(&p, ask);

    if (hs_has(got))
        return got;
    if (g_str_equal(ask, "arm_bend_deg"))
        return bend_deg(&p.state);
    if (g_str_equal(ask, "own_share_l5s1"))
        return 100.0 * p.state.utilisation[HS_JOINT_L5S1];
    if (g_str_equal(ask, "own_slowing"))
        return ask_slowing(given);
    for (int j = 0; j < HS_N_JOINTS; j++)
        if (g_str_has_prefix(ask, "own_moment_") && g_str_has_suffix(ask, joint_names[j]))
            return p.state.moment_Nm[j] / worked_figure(given, "over_m", 1.0);
    return ask_own_point(given, &p, ask);
}

/* ---- persons ---- */

static double
ask_pose(JsonObject *given, const char *ask)
{
    posed p = given_posture(given);

    if (g_str_equal(ask, "zmp"))
        return p.state.zmp_m;
    if (g_str_equal(ask, "residual"))
        return p.state.residual;
    if (g_str_has_prefix(ask, "place_")) {
        hs_vec2 at = p.state.at[strstr(ask, "hip") ? HS_POSE_HIP : HS_POSE_SHOULDER];

        return g_str_has_suffix(ask, "_x") ? at.x : at.y;
    }
    for (int j = 0; j < HS_N_JOINTS; j++)
        if (g_str_has_suffix(ask, joint_names[j]))
            return p.state.moment_Nm[j];
    return HS_ABSENT;
}

/* Standing straight, both arms level ahead: the moment of one shoulder. */
static double
ask_straight_arm(JsonObject *given)
{
    posed p = {.person = worked_person(given)};

    p.input = worked_hold(p.person.upper_arm_m + p.person.forearm_m,
                          p.person.ankle_height_m + p.person.shank_m + p.person.thigh_m +
                              p.person.trunk_m,
                          2.0 * worked_figure(given, "load_kg", NAN));
    solve(&p);
    return 0.5 * p.state.moment_Nm[HS_JOINT_SHOULDER];
}

static double
ask_styles(JsonObject *given)
{
    hs_person person = worked_person(given);
    hs_body_input input =
        worked_hold(worked_figure(given, "reach_m", NAN), worked_figure(given, "height_m", NAN),
                    worked_figure(given, "load_kg", NAN));
    hs_body_state legs, back;

    input.style = HS_STYLE_LEGS;
    hs_posture_find(&person, &input, NULL, &legs);
    input.style = HS_STYLE_BACK;
    hs_posture_find(&person, &input, NULL, &back);
    g_assert_true(legs.is_found && back.is_found);
    return back.compression_N / legs.compression_N;
}

static double
ask_kneeling(JsonObject *given)
{
    posed stands = {.person = worked_person(given),
                    .input = worked_hold(0.4, 0.7, 5.0),
                    .state = {.thigh_rad = 0.1, .trunk_rad = 0.4}};
    posed kneels = stands;

    kneels.input.stance = HS_STANCE_KNEELING;
    solve(&stands);
    solve(&kneels);
    return kneels.state.strength_Nm[HS_JOINT_L5S1] / stands.state.strength_Nm[HS_JOINT_L5S1];
}

double
worked_ask_chain(const char *ask, JsonObject *given)
{
    if (json_object_has_member(given, "own"))
        return ask_own(given, ask);
    if (json_object_has_member(given, "shank_deg"))
        return ask_pose(given, ask);
    if (g_str_equal(ask, "straight_arm"))
        return ask_straight_arm(given);
    if (g_str_equal(ask, "margin"))
        return ask_margin(given, worked_figure(given, "x_m", NAN));
    if (g_str_equal(ask, "styles_ratio"))
        return ask_styles(given);
    return g_str_equal(ask, "kneeling_share") ? ask_kneeling(given) : HS_ABSENT;
}

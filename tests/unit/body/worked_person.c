/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what does the program hold about one person: sizes, masses, strengths, base of support?
 * Answer:    worked_ask_person(), a table of questions.
 * Not here:  forces on a posture (worked_chain.c). */
#include "hold.h"

#include "chain.h"
#include "lowback.h"
#include "person.h"
#include "units.h"
#include "worked.h"

double
worked_figure(JsonObject *given, const char *name, double otherwise)
{
    return json_object_has_member(given, name) ? json_object_get_double_member(given, name)
                                               : otherwise;
}

static const char *
word(JsonObject *given, const char *name, const char *otherwise)
{
    return json_object_get_string_member_with_default(given, name, otherwise);
}

hs_person
worked_person(JsonObject *given)
{
    hs_worker worker = {.sex = g_str_equal(word(given, "sex", "male"), "female") ? HS_SEX_FEMALE
                                                                                 : HS_SEX_MALE,
                        .stature_m = worked_figure(given, "stature_m", 1.756),
                        .mass_kg = worked_figure(given, "mass_kg", 85.5),
                        .age_years = worked_figure(given, "age_years", 40.0)};
    hs_segment_table table = g_str_equal(word(given, "table", "de leva"), "winter")
                                 ? HS_SEGMENTS_WINTER
                                 : HS_SEGMENTS_DE_LEVA;
    hs_person person;
    hs_error error;

    g_assert_cmpint(hs_person_make(&worker, worked_figure(given, "percentile", 50.0), table,
                                   &person, &error),
                    ==, HS_OK);
    return person;
}

hs_body_input
worked_hold(double x_m, double z_m, double load_kg)
{
    return hold(x_m, z_m, load_kg);
}

/* ---- masses and lengths ---- */

static double
mass_of(const hs_person *p, int first, int last)
{
    double kg = 0.0;

    for (int i = first; i <= last; i++)
        kg += p->segment_kg[i];
    return kg;
}

static double
ask_mass(const hs_person *p, const char *ask)
{
    const double *kg = p->segment_kg, *at = p->segment_at;
    double trunk_kg = mass_of(p, HS_SEGMENT_LOWER_TRUNK, HS_SEGMENT_UPPER_TRUNK);

    if (g_str_equal(ask, "mass_sum"))
        return mass_of(p, 0, HS_N_SEGMENTS - 1) / p->mass_kg;
    if (g_str_equal(ask, "trunk_mass"))
        return trunk_kg / p->mass_kg;
    if (g_str_equal(ask, "trunk_centre"))
        return (kg[HS_SEGMENT_LOWER_TRUNK] * at[HS_SEGMENT_LOWER_TRUNK] +
                kg[HS_SEGMENT_UPPER_TRUNK] * at[HS_SEGMENT_UPPER_TRUNK]) /
               trunk_kg;
    if (g_str_equal(ask, "head_arms_trunk"))
        return mass_of(p, HS_SEGMENT_LOWER_TRUNK, HS_SEGMENT_HANDS) / p->mass_kg;
    if (g_str_equal(ask, "mass_above"))
        return mass_of(p, HS_SEGMENT_UPPER_TRUNK, HS_SEGMENT_HANDS) / p->mass_kg;
    if (g_str_equal(ask, "thigh_kg"))
        return 0.5 * kg[HS_SEGMENT_THIGHS];
    return g_str_equal(ask, "standing_cm") ? p->standing_cm_m / p->stature_m : HS_ABSENT;
}

/* One line of the table of segments as core reads it. */
static double
ask_row(JsonObject *given, gboolean wants_length)
{
    static const struct {
        const char *sex, *segment;
        double centre, length_m;
    } rows[] = {
#define SEGMENT(sex, segment, mass, centre, length_m) {#sex, #segment, centre, length_m},
#define TRUNK_LINE(sex, shoulder_m, top_m, neck_m)
#define WINTER(segment, mass, centre)
#define LINK(link, share)
#include "lists/segments.def"
#undef SEGMENT
#undef TRUNK_LINE
#undef WINTER
#undef LINK
    };

    for (gsize i = 0; i < G_N_ELEMENTS(rows); i++)
        if (g_ascii_strcasecmp(rows[i].sex, word(given, "sex", "")) == 0 &&
            g_str_equal(rows[i].segment, word(given, "row", "")))
            return rows[i].length_m * (wants_length ? 1.0 : rows[i].centre);
    return HS_ABSENT;
}

static double
ask_length(const hs_person *p, const char *ask)
{
    double knee_m = p->ankle_height_m + p->shank_m, hip_m = knee_m + p->thigh_m;

    if (g_str_equal(ask, "standing_shoulder"))
        return hip_m + p->trunk_m;
    if (g_str_equal(ask, "arm_length"))
        return p->upper_arm_m + p->forearm_m;
    if (g_str_equal(ask, "share_shoulder"))
        return (hip_m + p->trunk_m) / p->stature_m;
    if (g_str_equal(ask, "share_hip"))
        return hip_m / p->stature_m;
    if (g_str_equal(ask, "share_knee"))
        return knee_m / p->stature_m;
    if (g_str_equal(ask, "share_ankle"))
        return p->ankle_height_m / p->stature_m;
    return g_str_equal(ask, "share_foot") ? p->foot_m / p->stature_m : HS_ABSENT;
}

/* ---- strength ---- */

static double
one_side_Nm(const hs_person *person, int joint, JsonObject *given, double sign)
{
    double angle_rad = worked_figure(given, "angle_deg", 90.0) * HS_RAD_PER_DEG;

    return 0.5 * hs_strength_Nm(person, joint, angle_rad, 0.0, sign);
}

static double
women_over_men(JsonObject *given, int joint)
{
    hs_person man = worked_person(given), woman;
    hs_worker worker = {.sex = HS_SEX_FEMALE,
                        .stature_m = man.stature_m,
                        .mass_kg = man.mass_kg,
                        .age_years = man.age_years};

    hs_person_make(&worker, man.percentile, HS_SEGMENTS_DE_LEVA, &woman, NULL);
    if (joint < 0)
        return woman.grip_N / man.grip_N;
    return one_side_Nm(&woman, joint, given, 1.0) / one_side_Nm(&man, joint, given, 1.0);
}

static double
ask_strength(const hs_person *person, JsonObject *given, const char *ask)
{
    if (g_str_equal(ask, "one_leg_hip"))
        return one_side_Nm(person, HS_JOINT_HIP, given, 1.0);
    if (g_str_equal(ask, "one_leg_knee"))
        return one_side_Nm(person, HS_JOINT_KNEE, given, -1.0);
    if (g_str_equal(ask, "one_leg_ankle"))
        return one_side_Nm(person, HS_JOINT_ANKLE, given, 1.0);
    if (g_str_equal(ask, "trunk"))
        return 2.0 * one_side_Nm(person, HS_JOINT_L5S1, given, 1.0);
    if (g_str_equal(ask, "one_shoulder"))
        return one_side_Nm(person, HS_JOINT_SHOULDER, given, 1.0);
    if (g_str_equal(ask, "one_elbow"))
        return one_side_Nm(person, HS_JOINT_ELBOW, given, 1.0);
    if (g_str_equal(ask, "elbow_women_over_men"))
        return women_over_men(given, HS_JOINT_ELBOW);
    if (g_str_equal(ask, "shoulder_women_over_men"))
        return women_over_men(given, HS_JOINT_SHOULDER);
    if (g_str_equal(ask, "grip_women_over_men"))
        return women_over_men(given, -1);
    if (g_str_equal(ask, "grip_over_kg"))
        return person->grip_N / HS_GRAVITY_m_s2 - worked_figure(given, "over_kg", NAN);
    return g_str_equal(ask, "grip") ? person->grip_N : HS_ABSENT;
}

static double
ask_endurance(const char *ask, JsonObject *given)
{
    static const char *const joints[HS_N_JOINTS] = {"ankle", "knee",     "hip",
                                                    "trunk", "shoulder", "elbow"};

    for (int j = 0; j < HS_N_JOINTS; j++)
        if (g_str_has_prefix(ask, "endurance_") &&
            g_str_equal(ask + strlen("endurance_"), joints[j]))
            return hs_endurance_s(j, worked_figure(given, "fraction", NAN), NULL);
    return HS_ABSENT;
}

/* ---- base of support, in lengths of the foot, from the heel unless said otherwise ---- */

static double
ask_base(const hs_person *p, JsonObject *given, const char *ask)
{
    hs_body_input input = worked_hold(0.0, 0.0, 0.0);
    double rear_m, front_m, whole_m, heel = p->heel_m / p->foot_m;
    hs_vec2 hull[HS_MAX_BASE];

    hs_base_hull(p, NULL, HS_STANCE_STANDING, 0.0, 0.0, hull);
    whole_m = hull[1].x - hull[0].x;
    hs_balance_line(p, &input, &rear_m, &front_m);
    if (g_str_equal(ask, "toe_joint"))
        return (p->heel_m + p->toe_joint_m) / p->foot_m;
    if (g_str_equal(ask, "usable_length"))
        return 0.8 * whole_m / p->foot_m;
    if (g_str_equal(ask, "usable_half_m"))
        return 0.5 * 0.8 * whole_m / p->foot_m * worked_figure(given, "foot_m", NAN);
    if (g_str_equal(ask, "hull_rear_from_heel"))
        return 0.1 * whole_m / p->foot_m;
    if (g_str_equal(ask, "hull_rear_behind"))
        return worked_figure(given, "ankle", NAN) - 0.1 * whole_m / p->foot_m;
    if (g_str_equal(ask, "hull_front_ahead"))
        return front_m / p->foot_m + heel - worked_figure(given, "ankle", NAN);
    if (g_str_equal(ask, "base_length"))
        return (front_m - rear_m) / p->foot_m;
    if (g_str_equal(ask, "base_rear"))
        return rear_m / p->foot_m + heel;
    return g_str_equal(ask, "base_front") ? front_m / p->foot_m + heel : HS_ABSENT;
}

/* ---- the disc, from a moment and a weight ---- */

static double
ask_disc(JsonObject *given, const char *ask)
{
    double slope_deg = worked_figure(given, "slope_deg", 90.0), c_N, s_N;
    double muscle_N = worked_figure(given, "moment_Nm", NAN) /
                      worked_figure(given, "arm_m", HS_BACK_MUSCLE_ARM_m);
    hs_body_state state;

    if (g_str_equal(ask, "muscle")) {
        hs_lowback_judge(worked_figure(given, "moment_Nm", NAN), 0.0, 0.0, 0.0, 0.0, &state);
        return state.muscle_N;
    }
    hs_lowback_press(muscle_N, worked_figure(given, "above_N", NAN), 0.0,
                     slope_deg * HS_RAD_PER_DEG, &c_N, &s_N);
    if (g_str_equal(ask, "compression"))
        return c_N;
    if (g_str_equal(ask, "shear"))
        return s_N;
    if (g_str_equal(ask, "resultant"))
        return hypot(c_N, s_N);
    return 90.0 - slope_deg + atan2(s_N, c_N) * HS_DEG_PER_RAD; /* above the horizontal */
}

static double
ask_pelvis(JsonObject *given, const char *ask)
{
    double slope_deg =
        HS_DEG_PER_RAD *
        hs_lowback_disc_rad(worked_figure(given, "trunk_deg", 0.0) * HS_RAD_PER_DEG,
                            worked_figure(given, "knee_deg", 0.0) * HS_RAD_PER_DEG);
    double c_N, low_N, high_N;

    if (g_str_equal(ask, "pelvis_slope"))
        return slope_deg;
    if (g_str_equal(ask, "pelvis_turn"))
        return slope_deg - HS_SACRUM_STANDING_deg;
    if (g_str_equal(ask, "arm_ratio"))
        return HS_BACK_MUSCLE_ARM_m / HS_BACK_MUSCLE_ARM_FAR_m;
    if (!g_str_equal(ask, "shear_ratio"))
        return HS_ABSENT;
    hs_lowback_press(0.0, 1.0, 0.0, worked_figure(given, "low_deg", NAN) * HS_RAD_PER_DEG, &c_N,
                     &low_N);
    hs_lowback_press(0.0, 1.0, 0.0, worked_figure(given, "high_deg", NAN) * HS_RAD_PER_DEG,
                     &c_N, &high_N);
    return high_N / low_N;
}

static double
ask_default(JsonObject *given)
{
    hs_worker nobody = {.stature_m = HS_ABSENT, .mass_kg = HS_ABSENT, .age_years = HS_ABSENT};
    hs_person person;

    hs_person_make(&nobody, HS_ABSENT, HS_SEGMENTS_DE_LEVA, &person, NULL);
    return worked_figure(given, "mean_kg", NAN) - person.mass_kg;
}

double
worked_ask_person(const char *ask, JsonObject *given)
{
    hs_person person = worked_person(given);
    double got;

    if (json_object_has_member(given, "moment_Nm"))
        return ask_disc(given, ask);
    if (g_str_has_prefix(ask, "row_"))
        return ask_row(given, g_str_equal(ask, "row_length"));
    if (g_str_equal(ask, "percentile_of"))
        return worked_figure(given, "mean", NAN) +
               hs_percentile_z(worked_figure(given, "at", NAN)) *
                   worked_figure(given, "sd", NAN);
    if (g_str_equal(ask, "over_default_kg"))
        return ask_default(given);
    got = ask_mass(&person, ask);
    if (!hs_has(got))
        got = ask_length(&person, ask);
    if (!hs_has(got))
        got = ask_strength(&person, given, ask);
    if (!hs_has(got))
        got = ask_endurance(ask, given);
    if (!hs_has(got))
        got = ask_base(&person, given, ask);
    return hs_has(got) ? got : ask_pelvis(given, ask);
}

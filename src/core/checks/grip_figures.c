/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what can a palm press with, when does a load slide off what it rests on, and what presses on the skin?
 * Answer:    the figures that the check grip.hold is held against or prints.
 * Not here:  squeeze and closure (forces/grip.c), which grip decides (grip_checks.c). */
#include "grip_figures.h"

#include "legs.h"
#include "person.h"
#include "units.h"

#define PALM_MEAN_N     72.3 /* one palm inward, women, least mean: HS_SRC_palm_squeeze */
#define PALM_CV         0.277 /* the same; taken for the shoulder too, whose source gives no spread */
#define MEN_SHARE       0.558 /* women over men: HS_SRC_laubach_1976_derived */
#define ADDUCT_WOMEN_Nm 28.8  /* one shoulder, mean: HS_SRC_shoulder_adduction */
#define ADDUCT_MEN_Nm   48.0  /* the same */
#define HANDLE_DEEP_m   0.025 /* a common handle's thickness: common practice, no source */
#define HANDLE_WIDE_m   0.09  /* breadth of the hand on it: common practice, no source */
#define BLOOD_STOPS_kPa 50.0  /* HS_SRC_skin_flow */

hs_palm
hs_palm_press(const hs_person *person, double reach_m, hs_working *working)
{
    bool is_female = person->sex == HS_SEX_FEMALE;
    double z = hs_percentile_z(person->percentile), adduct_Nm, joint_N;
    double mean_N = is_female ? PALM_MEAN_N : PALM_MEAN_N / MEN_SHARE;
    double palm_N = mean_N * (1.0 + z * PALM_CV);

    HS_WORK(working, grip_palms, palm_N, "N", {"mean", mean_N, "N"}, {"z", z, ""},
            {"cv", PALM_CV, ""});
    if (!(reach_m > 0.0))
        return (hs_palm){palm_N, false};
    adduct_Nm = is_female ? ADDUCT_WOMEN_Nm : ADDUCT_MEN_Nm;
    joint_N = adduct_Nm * (1.0 + z * PALM_CV) / reach_m;
    HS_WORK(working, grip_palm_joint, joint_N, "N", {"M", adduct_Nm, "Nm"}, {"z", z, ""},
            {"cv", PALM_CV, ""}, {"d", reach_m, "m"});
    return (hs_palm){fmin(palm_N, joint_N), joint_N < palm_N};
}

double
hs_palm_reach_m(const hs_body_state *body)
{
    hs_vec2 hand_m = body->at[HS_POSE_HAND], shoulder_m = body->at[HS_POSE_SHOULDER];

    if (!body->is_found)
        return HS_ABSENT;
    return hypot(hand_m.x - shoulder_m.x, hand_m.y - shoulder_m.y);
}

double
hs_rest_friction(const hs_mat3 *load_to_world, double along_m_s2, double up_m_s2)
{
    hs_mat3 back = hs_mat3_transpose(load_to_world);
    hs_vec3 need = hs_mat3_apply(&back, (hs_vec3){along_m_s2, 0.0, up_m_s2});

    return need.z > 0.0 ? hypot(need.x, need.y) / need.z : HS_ABSENT;
}

void
hs_skin_write(double felt_N, int n_hands, hs_working *working)
{
    double area_m2 = n_hands * HANDLE_DEEP_m * HANDLE_WIDE_m;

    HS_WORK(working, grip_skin, felt_N / area_m2 / HS_PA_PER_kPa, "kPa", {"felt", felt_N, "N"},
            {"n", n_hands, ""}, {"d", HANDLE_DEEP_m, "m"}, {"w", HANDLE_WIDE_m, "m"});
    HS_WORK(working, grip_skin_most, BLOOD_STOPS_kPa * HS_PA_PER_kPa * area_m2, "N",
            {"p", BLOOD_STOPS_kPa, "kPa"}, {"n", n_hands, ""}, {"d", HANDLE_DEEP_m, "m"},
            {"w", HANDLE_WIDE_m, "m"});
}

double
hs_palm_times(const hs_run *run, int station, int bearer, bool *ret_missing)
{
    const hs_bearer_sample *sample = &run->samples[station].bearers[bearer];
    const hs_felt *felt = &run->stations[station].bearers[bearer].felt;

    *ret_missing = run->setup->bearers[bearer].suit != NULL && felt->is_missing;
    if (run->setup->bearers[bearer].suit == NULL || *ret_missing ||
        !(sample->felt_force_N > 0.0) || !(sample->hand_force_N > 0.0))
        return 1.0;
    return sample->hand_force_N / sample->felt_force_N;
}

void
hs_grip_write_change(const hs_asking *asking, hs_working *working)
{
    for (int b = 0; b < asking->run->setup->n_bearers; b++) {
        const hs_effector *effector = asking->run->setup->bearers[b].effector;
        double per_h = hs_limit_cycles_per_h(asking);

        if (effector != NULL && hs_has(effector->change_s))
            HS_WORK(working, grip_change, per_h * effector->change_s / 60.0, "min/h",
                    {"n", per_h, "1/h"}, {"c", effector->change_s, "s"});
    }
}

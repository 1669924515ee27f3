/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how is one figure of the low back, of energy, rest, surroundings or a single country asked?
 * Answer:    more_figure() by limit and quantity, called by check_limits().
 * Not here:  lifting limits (limit_cases.h), what needs a whole route (test_limit_checks.c). */
#ifndef HS_LIMIT_CASES_MORE_H
#define HS_LIMIT_CASES_MORE_H

#include "dose.h"
#include "floor.h"
#include "geometry.h"
#include "iso11228.h"
#include "lowback.h"
#include "metabolic.h"
#include "national.h"
#include "near.h"
#include "rest.h"
#include "spine_sets.h"
#include "units.h"

#include <string.h>

#define HAS(in, key)   json_object_has_member(in, key)
#define NUM(in, key)   json_object_get_double_member(in, key)
#define TEXT(in, key)  json_object_get_string_member(in, key)
#define IS(text, word) (strcmp(text, word) == 0)

static inline hs_sex
sex_of(JsonObject *in)
{
    return IS(TEXT(in, "sex"), "female") ? HS_SEX_FEMALE : HS_SEX_MALE;
}

static inline const char *
who_of(JsonObject *in)
{
    return sex_of(in) == HS_SEX_FEMALE ? "women" : "men";
}

static inline double
dose_figure(const char *quantity, JsonObject *in)
{
    static const char *const tasks[] = {"lift2",  "lift1",       "shift2",
                                        "shift1", "carry_front", "carry_shoulder"};

    if (HAS(in, "edition")) {
        hs_dose_edition edition = NUM(in, "edition") > 2000 ? HS_DOSE_COURT_2007 : HS_DOSE_1999;

        return IS(quantity, "life_limit_MNh") ? hs_dose_life_Nh(sex_of(in), edition) / 1e6
                                              : hs_dose_shift_Nh(sex_of(in), edition) / 1e3;
    }
    if (HAS(in, "lifts"))
        return hs_dose_of_Nh(NUM(in, "lifts") *
                             pow(hs_dose_force_N(HS_DOSE_LIFT, NUM(in, "load_kg")), 2) *
                             NUM(in, "seconds_each") / 3600) /
               1e3;
    if (HAS(in, "carries"))
        return hs_dose_of_Nh(NUM(in, "carries") *
                             pow(hs_dose_force_N(HS_DOSE_CARRY, NUM(in, "load_kg")), 2) *
                             NUM(in, "metres_each") * HS_DOSE_CARRY_s_m / 3600) /
               1e3;
    if (HAS(in, "hours"))
        return hs_dose_of_Nh(pow(NUM(in, "compression_N"), 2) * NUM(in, "hours")) / 1e3;
    for (int i = 0; i < HS_DOSE_N_ACTIONS; i++)
        if (IS(tasks[i], TEXT(in, "task")))
            return hs_dose_force_N((hs_dose_action)i, NUM(in, "load_kg"));
    return HS_ABSENT;
}

/* The worked example's own gravity and moments; the disc's share of the weights is the program's. */
static inline double
spine_model_figure(JsonObject *in)
{
    double g = NUM(in, "g"), load_N = g * NUM(in, "load_kg"),
           body_N = g * NUM(in, "upper_body_kg");
    double muscle_N = (load_N * NUM(in, "load_arm_m") + body_N * NUM(in, "upper_body_arm_m")) /
                      HS_BACK_MUSCLE_ARM_m;
    double compression_N, shear_N;

    g_assert_cmpfloat(NUM(in, "muscle_arm_m"), ==, HS_BACK_MUSCLE_ARM_m);
    hs_lowback_press(muscle_N, load_N + body_N, 0, NUM(in, "trunk_deg") * HS_RAD_PER_DEG,
                     &compression_N, &shear_N);
    return compression_N;
}

static inline double
garg_figure(JsonObject *in)
{
    double speed_m_s = HAS(in, "speed_m_s") ? NUM(in, "speed_m_s") : 0;
    hs_metabolic_input at = {.body_kg = NUM(in, "body_kg"),
                             .load_kg = HAS(in, "load_kg") ? NUM(in, "load_kg") : 0,
                             .from_m = HAS(in, "from_m") ? NUM(in, "from_m") : 0,
                             .to_m = HAS(in, "to_m") ? NUM(in, "to_m") : 0,
                             .speed_m_s = speed_m_s,
                             .grade = 0,
                             .time_s = HAS(in, "minutes") ? 60 * NUM(in, "minutes") : 0,
                             .is_male = true};
    g_autofree char *row = g_strdup_printf("garg_%s", TEXT(in, "task"));

    for (int i = 0; i < HS_N_METABOLIC_ROWS; i++)
        if (IS(hs_metabolic_get((hs_metabolic_row)i)->id, row))
            return hs_metabolic_J((hs_metabolic_row)i, &at);
    return HS_ABSENT;
}

static inline double
rate_figure(hs_metabolic_row row, JsonObject *in, double load_kg)
{
    double grade = HAS(in, "grade_pct") ? NUM(in, "grade_pct") / 100
                   : HAS(in, "grade")   ? NUM(in, "grade")
                                        : 0;
    double speed_m_s = HAS(in, "speed_km_h")  ? NUM(in, "speed_km_h") / 3.6
                       : HAS(in, "speed_m_s") ? NUM(in, "speed_m_s")
                                              : 0;
    hs_metabolic_input at = {.body_kg = HAS(in, "body_kg") ? NUM(in, "body_kg") : 80,
                             .load_kg = load_kg,
                             .speed_m_s = speed_m_s,
                             .grade = grade,
                             .time_s = 1,
                             .terrain = HAS(in, "terrain") ? NUM(in, "terrain") : 1};

    if (HAS(in, "steps_per_min")) {
        at.steps_per_min = NUM(in, "steps_per_min");
        at.step_m = NUM(in, "step_m");
    }
    return hs_metabolic_J(row, &at);
}

static inline double
acsm_figure(const char *quantity, JsonObject *in)
{
    double rate_W;

    if (IS(quantity, "metabolic_W")) /* level at 60 m a minute: the uptake of the case */
        return hs_metabolic_J(
            HS_METABOLIC_ROW_acsm_walk,
            &(hs_metabolic_input){.body_kg = NUM(in, "body_kg"), .speed_m_s = 1, .time_s = 1});
    rate_W = rate_figure(HAS(in, "steps_per_min") ? HS_METABOLIC_ROW_acsm_step
                                                  : HS_METABOLIC_ROW_acsm_walk,
                         in, 0);
    return rate_W * 60 / HS_J_PER_ML_OXYGEN / 80; /* mL/kg/min of 80 kg */
}

static inline double
givoni_figure(const char *quantity, JsonObject *in)
{
    double load_kg = NUM(in, "load_kg"), empty_W;
    hs_metabolic_row row = IS(TEXT(in, "load_at"), "hands") ? HS_METABOLIC_ROW_givoni_hands
                                                            : HS_METABOLIC_ROW_givoni_trunk;

    if (!IS(quantity, "cost_ratio_load_to_body"))
        return rate_figure(row, in, load_kg);
    empty_W = rate_figure(row, in, 0);
    return (rate_figure(row, in, load_kg) - empty_W) / load_kg / (empty_W / NUM(in, "body_kg"));
}

static inline double
rest_figure(const char *limit, const char *quantity, JsonObject *in)
{
    double f;

    if (HAS(in, "fraction_of_max_oxygen")) {
        f = NUM(in, "fraction_of_max_oxygen");
        return IS(quantity, "rest_s") ? hs_rest_kamon_dynamic_rest_s(f)
                                      : hs_rest_kamon_dynamic_s(f);
    }
    f = NUM(in, "fraction_of_max");
    if (IS(quantity, "rest_s"))
        return hs_rest_kamon_s(f, NUM(in, "hold_s"));
    if (IS(quantity, "rest_percent_of_hold"))
        return 100 * hs_rest_remembered_s(f, NUM(in, "hold_s")) / NUM(in, "hold_s");
    return IS(limit, "rest-kamon") ? hs_rest_kamon_endurance_s(f)
                                   : hs_rest_rohmert_endurance_s(f);
}

static inline double
swiss_figure(JsonObject *in)
{
    static const struct {
        double to_years;
        const char *band;
    } bands[] = {{16, "14-16"}, {18, "16-18"}, {20, "18-20"},
                 {35, "20-35"}, {50, "35-50"}, {99, "over 50"}};
    g_autofree char *who = NULL;
    int i = 0;

    while (NUM(in, "age_years") >= bands[i].to_years)
        i++;
    who = g_strdup_printf("%s %s", who_of(in), bands[i].band);
    return hs_national_figure("switzerland", "lift", who, "occasional, close");
}

static inline double
polish_figure(const char *quantity, JsonObject *in)
{
    const char *work = HAS(in, "work") ? TEXT(in, "work") : "";
    const char *who = who_of(in);
    g_autofree char *condition = NULL;

    if (HAS(in, "team") || IS(quantity, "ratio")) {
        double each_kg;

        condition = g_strdup_printf("each, %s", work);
        each_kg = hs_national_figure("poland", "team", who, condition);
        return IS(quantity, "ratio") ? each_kg / hs_national_figure("poland", "lift", who, work)
                                     : each_kg;
    }
    if (HAS(in, "above_shoulder")) {
        condition = g_strdup_printf("%s, above the shoulder", work);
        return hs_national_figure("poland", "lift", who, condition);
    }
    if (HAS(in, "slope_deg") && NUM(in, "slope_deg") > 30) {
        condition = g_strdup_printf("rise over 4 m, above 30 deg, %s", work);
        return hs_national_figure("poland", "carry", who, condition);
    }
    if (HAS(in, "slope_deg"))
        return hs_national_figure("poland", "carry", who, "rise over 4 m, to 30 deg");
    return NUM(in, "carry_m") > 25 ? hs_national_figure("poland", "carry", who, "beyond 25 m")
                                   : hs_national_figure("poland", "lift", who, work);
}

static inline double
czech_figure(JsonObject *in)
{
    const char *place = "czech republic", *who = who_of(in);

    if (HAS(in, "action"))
        return hs_national_figure(place, TEXT(in, "action"), who, "two hands");
    if (HAS(in, "posture"))
        return hs_national_figure(place, "lift", who, TEXT(in, "posture"));
    if (HAS(in, "hours"))
        return hs_national_figure(place, "day", who, "8 h");
    return hs_national_figure(
        place, "lift", who,
        IS(TEXT(in, "work"), "frequent") ? "frequent" : "occasional, to 30 min a shift");
}

static inline double
chinese_figure(const char *quantity, JsonObject *in)
{
    const char *way = TEXT(in, "way"), *who = who_of(in);
    const char *words = IS(way, "hands")      ? "in the hands"
                        : IS(way, "shoulder") ? "on the shoulder"
                                              : "pushed or pulled";

    if (IS(quantity, "carries_per_day"))
        return hs_national_figure("china", "day distance", who, words) /
               (NUM(in, "mass_kg") * NUM(in, "carry_m"));
    if (IS(quantity, "day_mass_t"))
        return hs_national_figure("china", "day", who, words) / 1e3;
    if (IS(quantity, "day_mass_distance_t_m"))
        return hs_national_figure("china", "day distance", who, words) / 1e3;
    return hs_national_figure("china", "carry", who, words);
}

static inline double
american_figure(JsonObject *in)
{
    const char *zone = TEXT(in, "zone");
    double reach_m = NUM(in, "reach_m");
    const char *who = IS(zone, "shoulder")              ? "shoulder zone"
                      : IS(zone, "knuckle_to_shoulder") ? "knuckle to below shoulder"
                      : IS(zone, "shin_to_knuckle")     ? "mid shin to knuckle"
                                                        : "floor to mid shin";

    return hs_national_figure("usa table 1", "lift", who,
                              reach_m < 0.30    ? "reach under 0.30 m"
                              : reach_m <= 0.60 ? "reach 0.30 to 0.60 m"
                                                : "reach 0.60 to 0.80 m");
}

static inline double
national_figure(const char *limit, const char *quantity, JsonObject *in)
{
    if (IS(limit, "national-ch"))
        return swiss_figure(in);
    if (IS(limit, "national-pl"))
        return polish_figure(quantity, in);
    if (IS(limit, "national-cz"))
        return czech_figure(in);
    if (IS(limit, "national-cn"))
        return chinese_figure(quantity, in);
    if (IS(limit, "national-us-acgih"))
        return american_figure(in);
    if (IS(limit, "national-jp"))
        return NUM(in, "body_kg") *
               hs_national_figure("japan", "lift", who_of(in), "share of body mass");
    if (IS(limit, "national-fr"))
        return hs_national_figure(
            "france", "lift", "all",
            IS(TEXT(in, "rule"), "acceptable") ? "acceptable" : "at most, under conditions");
    return hs_national_figure("ussr", "carry", "men", "on the back, loaded by others");
}

static inline double
ramp_deg(double rise_over_run)
{
    hs_vec2 floor[] = {{0, 0}, {10, 10 * rise_over_run}};
    hs_site site = {.n_floor = 2, .floor = floor};

    return hs_floor_slope_rad(&site, 5) * HS_DEG_PER_RAD;
}

/* The line that a followed pitch uses on a flight of four risers. */
static inline double
flight_deg(JsonObject *in)
{
    double riser_m = NUM(in, "riser_m"), tread_m = NUM(in, "tread_m");
    hs_vec2 floor[10] = {{0, 0}};
    hs_site site = {.n_floor = 10, .floor = floor};

    for (int i = 0; i < 4; i++) {
        floor[1 + 2 * i] = (hs_vec2){2 + i * tread_m, i * riser_m};
        floor[2 + 2 * i] = (hs_vec2){2 + i * tread_m, (i + 1) * riser_m};
    }
    floor[9] = (hs_vec2){10, 4 * riser_m};
    return atan2(hs_floor_line_m(&site, 2 + 2.5 * tread_m) -
                     hs_floor_line_m(&site, 2 + 0.5 * tread_m),
                 2 * tread_m) *
           HS_DEG_PER_RAD;
}

/* HS_ABSENT too where the case belongs to no limit of this file. */
static inline double
more_figure(const char *limit, const char *quantity, JsonObject *in)
{
    if (IS(limit, "spine-dose-mdd"))
        return dose_figure(quantity, in);
    if (IS(limit, "stairs"))
        return flight_deg(in);
    if (IS(limit, "spine-model"))
        return spine_model_figure(in);
    if (IS(limit, "spine-shear"))
        return hs_spine_shear_limit_N(NUM(in, "loadings_per_day"));
    if (IS(limit, "spine-compression-dortmund"))
        return hs_spine_by_age_N(sex_of(in), NUM(in, "age_years"));
    if (IS(limit, "energy-garg"))
        return garg_figure(in);
    if (IS(limit, "energy-pandolf"))
        return rate_figure(HS_METABOLIC_ROW_pandolf, in, NUM(in, "load_kg"));
    if (IS(limit, "energy-acsm"))
        return acsm_figure(quantity, in);
    if (IS(limit, "energy-givoni"))
        return givoni_figure(quantity, in);
    if (IS(limit, "energy-8h-other")) /* kJ in 8 h as watts; the country has both */
        return hs_national_figure("poland", "energy",
                                  NUM(in, "kJ_per_8h") > 8000 ? "men" : "women", "8 h") *
               1e3 / (8 * 3600);
    if (IS(limit, "rest-kamon") || IS(limit, "rest-rohmert"))
        return rest_figure(limit, quantity, in);
    if (IS(limit, "corner"))
        return hs_corner_longest_m(NUM(in, "corridor_a_m"), NUM(in, "corridor_b_m"),
                                   NUM(in, "load_width_m"));
    if (IS(limit, "ramp"))
        return ramp_deg(NUM(in, "rise_over_run"));
    if (IS(limit, "heat-niosh")) /* acclimatised: hour's mean by the exposure limit */
        return 1 - hs_metabolic_rest_share(NUM(in, "metabolic_W"), NUM(in, "rest_W"),
                                           pow(10, (56.7 - NUM(in, "wbgt_C")) / 11.5));
    return national_figure(limit, quantity, in);
}

#endif

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how is one figure of a published limit asked?
 * Answer:    check_limits(): by limit and quantity, for the tests of read and of remembered figures alike.
 * Not here:  which file is which (test_limits.c, test_limits_memory.c). */
#ifndef HS_LIMIT_CASES_H
#define HS_LIMIT_CASES_H

#include "energy_limits.h"
#include "gb.h"
#include "iso11228.h"
#include "limit_cases_more.h"
#include "mil1472.h"
#include "near.h"
#include "rest.h"

#include <string.h>

static inline double
iso_figure(const char *quantity, JsonObject *in)
{
    if (strcmp(quantity, "reference_mass_kg") == 0)
        return hs_iso11228_reference_kg(sex_of(in), NUM(in, "age_years"));
    if (strcmp(quantity, "mass_limit_kg") == 0)
        return NUM(in, "base_limit_kg") * HS_ISO_ONE_HAND;
    if (strcmp(quantity, "vertical_multiplier") == 0) {
        hs_niosh_input at = {.hand_height_m = NUM(in, "height_m"), .lifts_per_min = 0.2};
        hs_niosh_answer answer;

        hs_niosh_rwl(&at, &answer);
        return answer.vm_factor;
    }
    const hs_iso11228_day *row = hs_iso11228_day_of(NUM(in, "carry_m"));

    return strcmp(TEXT(in, "per"), "day") == 0 ? row->per_8h_kg : row->per_h_kg;
}

static inline double
en_figure(JsonObject *in)
{
    hs_niosh_input at = {.reach_m = NUM(in, "reach_m"),
                         .hand_height_m = NUM(in, "hand_height_m"),
                         .distance_m = NUM(in, "travel_m"),
                         .turn_deg = NUM(in, "turn_deg"),
                         .lifts_per_min = 1.0,
                         .duration = HS_NIOSH_SHORT, /* FM 0.94 */
                         .coupling = HS_COUPLING_GOOD};
    double factor = json_object_get_boolean_member(in, "one_hand") ? HS_ISO_ONE_HAND : 1.0;
    hs_niosh_answer answer;

    if (json_object_get_boolean_member(in, "two_persons"))
        factor *= HS_ISO_TWO_PERSONS;
    if (json_object_get_boolean_member(in, "additional_task"))
        factor *= HS_EN_OTHER_TASK;
    hs_niosh_rwl(&at, &answer);
    g_assert_cmpfloat(answer.fm_factor, ==, NUM(in, "fm"));
    return hs_iso11228_limit_kg(NUM(in, "mref_kg"), &answer, factor);
}

static inline double
mil_figure_of(const char *quantity, JsonObject *in)
{
    hs_confidence confidence;
    bool men;
    int n;

    if (strcmp(quantity, "factor") == 0)
        return HAS(in, "lifts_per_min")
                   ? hs_mil1472_lift_rate_factor(NUM(in, "lifts_per_min"), 8.0)
                   : hs_mil1472_depth_factor(NUM(in, "object_depth_m"));
    men = strcmp(TEXT(in, "population"), "male") == 0;
    n = (int)NUM(in, "lifters");
    if (HAS(in, "carry_m"))
        return n * hs_mil1472_team_share(n) *
               hs_mil1472_carry_kg(men, NUM(in, "carry_m"), &confidence);
    return n * hs_mil1472_team_share(n) *
           hs_mil1472_lift_kg(men, NUM(in, "lift_to_m"), &confidence);
}

static inline hs_gb_zone
zone_of(const char *word)
{
    const char *words[] = {"above_shoulder", "shoulder_elbow", "elbow_knuckle", "knuckle_shin",
                           "below_shin"};

    for (int i = 0; i < HS_GB_N_ZONES; i++)
        if (strcmp(words[i], word) == 0)
            return (hs_gb_zone)i;
    g_assert_not_reached();
}

static inline double
gb_figure(const char *quantity, JsonObject *in)
{
    double per_min = HAS(in, "ops_per_min")    ? NUM(in, "ops_per_min")
                     : HAS(in, "ops_per_hour") ? NUM(in, "ops_per_hour") / 60.0
                                               : 0.0;
    double factor = hs_gb_rate_factor(per_min) *
                    (HAS(in, "turn_deg") ? hs_gb_twist_factor(NUM(in, "turn_deg")) : 1.0);

    if (strcmp(quantity, "factor") == 0)
        return factor;
    if (strcmp(quantity, "force_limit_N") == 0)
        return hs_gb_push_N(sex_of(in), strcmp(TEXT(in, "action"), "keep") == 0);
    return factor *
           hs_gb_box_kg(sex_of(in), zone_of(TEXT(in, "zone")),
                        strcmp(TEXT(in, "reach"), "close") == 0 ? HS_GB_CLOSE : HS_GB_EXTENDED);
}

static inline double
energy_figure(const char *quantity, JsonObject *in)
{
    if (strcmp(quantity, "rest_min") == 0)
        return hs_rest_murrell_min(NUM(in, "work_W"), NUM(in, "standard_W"), NUM(in, "rest_W"),
                                   NUM(in, "total_min"));
    double part = NUM(in, "duration_fraction");

    return hs_energy_limit_1991_W(part > 0.45   ? 1
                                  : part > 0.35 ? 2
                                                : 8,
                                  NUM(in, "height_factor") < 1.0);
}

/* Share of one, or what the rule gives for the sum of the members. */
static inline double
british_team_figure(const char *quantity, JsonObject *in, int n)
{
    double sum_kg = 0;

    if (strcmp(quantity, "team_limit_kg") != 0)
        return hs_gb_team_share(n);
    if (HAS(in, "each_kg"))
        return hs_gb_team_share(n) * n * NUM(in, "each_kg");
    for (int i = 0; i < n; i++)
        sum_kg += json_array_get_double_element(
            json_object_get_array_member(in, "capacities_kg"), (guint)i);
    return hs_gb_team_share(n) * sum_kg;
}

static inline double
limit_figure(const char *limit, const char *quantity, JsonObject *in)
{
    int n = HAS(in, "members") ? (int)NUM(in, "members") : 0;

    if (strcmp(limit, "iso-11228-1") == 0)
        return iso_figure(quantity, in);
    if (strcmp(limit, "en-1005-2") == 0)
        return en_figure(in);
    if (strcmp(limit, "mil-std-1472") == 0)
        return mil_figure_of(quantity, in);
    if (strcmp(limit, "gb-guideline") == 0)
        return gb_figure(quantity, in);
    if (strcmp(limit, "team-british") == 0)
        return british_team_figure(quantity, in, n);
    if (strcmp(limit, "team-mil-std-1472") == 0)
        return hs_mil1472_team_share(n);
    if (strcmp(limit, "team-en-1005-2") == 0)
        return n == 2 ? HS_ISO_TWO_PERSONS : HS_ABSENT;
    if (strcmp(limit, "rest-murrell") == 0 || strcmp(limit, "energy-niosh-1991") == 0)
        return energy_figure(quantity, in);
    return more_figure(limit, quantity, in);
}

static inline void
check_limit_word(JsonObject *o, JsonObject *in)
{
    const char *id = TEXT(o, "id"), *limit = TEXT(o, "limit"), *quantity = TEXT(o, "quantity"),
               *wanted = TEXT(o, "expected");

    g_test_message("%s", id);
    if (strcmp(limit, "spine-compression-niosh") == 0) {
        const char *bands[] = {"", "within", "between", "above_mpl"};

        g_assert_cmpstr(bands[hs_spine_band_of(NUM(in, "compression_N"))], ==, wanted);
    } else if (strcmp(quantity, "band") == 0) {
        const char *bands[] = {"", "tolerable", "significant", "redesign"};

        g_assert_cmpstr(bands[hs_en1005_band_of(NUM(in, "risk_index"))], ==, wanted);
    } else if (strcmp(quantity, "mass_limit_kg") == 0 ||
               strcmp(quantity, "applicability") == 0) {
        /* a table's empty place, a team that the rule does not speak of */
        g_assert_true(strcmp(wanted, "none") == 0 || strcmp(wanted, "not_judged") == 0);
        g_assert_false(hs_has(limit_figure(limit, "", in)));
    } else {
        const char *reaches[] = {"close", "arms_length", "outside"};
        hs_gb_landmarks body = {.arm_m = 0.7};

        g_assert_cmpstr(reaches[hs_gb_reach_of(&body, 0.7 * NUM(in, "reach_over_arm_length"))],
                        ==, wanted);
    }
}

/* Asked with a whole route by test_limit_checks.c. */
static inline bool
needs_a_route(JsonObject *o)
{
    const char *quantity = TEXT(o, "quantity"), *limit = TEXT(o, "limit");

    return (strcmp(quantity, "applicability") == 0 && strcmp(limit, "team-british") != 0) ||
           strcmp(quantity, "mass_moved_kg") == 0 || strcmp(quantity, "wbgt_C") == 0;
}

static inline void
check_limits(JsonArray *list)
{
    for (guint i = 0; i < json_array_get_length(list); i++) {
        JsonObject *o = json_array_get_object_element(list, i);
        JsonObject *in = json_object_get_object_member(o, "inputs");
        JsonNode *expected = json_object_get_member(o, "expected");

        if (needs_a_route(o))
            continue;
        if (json_node_get_value_type(expected) == G_TYPE_STRING)
            check_limit_word(o, in);
        else
            hs_near(TEXT(o, "id"), limit_figure(TEXT(o, "limit"), TEXT(o, "quantity"), in),
                    json_node_get_double(expected), NUM(o, "tolerance") + 1e-9);
    }
}

#endif

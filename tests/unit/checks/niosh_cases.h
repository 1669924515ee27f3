/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how is a case of the lifting equation asked?
 * Answer:    multiplier, example and composite cases, for the tests of read and of remembered figures alike.
 * Not here:  which file is which (test_niosh.c, test_limits_memory.c). */
#ifndef HS_NIOSH_CASES_H
#define HS_NIOSH_CASES_H

#include "near.h"
#include "niosh.h"

#include <string.h>

static inline double
number_of(JsonObject *o, const char *key)
{
    return json_object_get_double_member(o, key);
}

static inline hs_niosh_duration
duration_of(const char *word)
{
    if (strcmp(word, "short") == 0)
        return HS_NIOSH_SHORT;
    if (strcmp(word, "moderate") == 0)
        return HS_NIOSH_MODERATE;
    return strcmp(word, "long") == 0 ? HS_NIOSH_LONG : HS_NIOSH_NONE;
}

static inline hs_coupling
coupling_of(const char *word)
{
    if (strcmp(word, "good") == 0)
        return HS_COUPLING_GOOD;
    return strcmp(word, "poor") == 0 ? HS_COUPLING_POOR : HS_COUPLING_FAIR;
}

static inline double
pick(const hs_niosh_answer *answer, const char *multiplier)
{
    const char *names[] = {"HM", "VM", "DM", "AM", "FM", "CM"};
    double values[] = {answer->hm_factor, answer->vm_factor, answer->dm_factor,
                       answer->am_factor, answer->fm_factor, answer->cm_factor};

    for (int i = 0; i < 6; i++)
        if (strcmp(names[i], multiplier) == 0)
            return values[i];
    g_assert_not_reached();
}

/* A lift at which every multiplier is 1, changed in the one thing that the case is about. */
static inline void
check_multiplier(JsonObject *o)
{
    JsonObject *in = json_object_get_object_member(o, "input");
    const char *id = json_object_get_string_member(o, "id");
    hs_niosh_input si = {0.25, 0.75, 0.25, 0.0, 0.2, HS_NIOSH_SHORT, HS_COUPLING_GOOD};
    double h_in = 10, v_in = 30, d_in = 10;
    bool is_us = false;
    hs_niosh_answer answer;

#define GIVEN(key) json_object_has_member(in, key)
    if (GIVEN("H_in"))
        h_in = number_of(in, "H_in"), is_us = true;
    if (GIVEN("V_in"))
        v_in = number_of(in, "V_in"), is_us = true;
    if (GIVEN("D_in"))
        d_in = number_of(in, "D_in"), is_us = true;
    if (GIVEN("H_cm"))
        si.reach_m = number_of(in, "H_cm") / 100.0;
    if (GIVEN("V_cm"))
        si.hand_height_m = number_of(in, "V_cm") / 100.0;
    if (GIVEN("D_cm"))
        si.distance_m = number_of(in, "D_cm") / 100.0;
    if (GIVEN("A_deg"))
        si.turn_deg = number_of(in, "A_deg");
    if (GIVEN("cycles_per_hour"))
        si.lifts_per_min = number_of(in, "cycles_per_hour") / 60.0;
    if (GIVEN("duration"))
        si.duration = duration_of(json_object_get_string_member(in, "duration"));
    if (GIVEN("coupling"))
        si.coupling = coupling_of(json_object_get_string_member(in, "coupling"));
    if (GIVEN("V") && json_object_get_string_member(in, "V")[0] == '<')
        si.hand_height_m = 0.74;
#undef GIVEN
    if (is_us)
        hs_niosh_rwl_us(h_in, v_in, d_in, 0.0, 0.2, HS_NIOSH_SHORT, HS_COUPLING_GOOD, &answer);
    else
        hs_niosh_rwl(&si, &answer);

    double got = pick(&answer, json_object_get_string_member(o, "multiplier"));

    hs_near(id, got, number_of(o, "exact"), 1e-6);
    hs_near(id, got, number_of(o, "printed"), number_of(o, "tolerance"));
}

static inline void
check_multipliers(JsonObject *root)
{
    JsonArray *list = json_object_get_array_member(root, "multipliers");

    g_assert_cmpuint(json_array_get_length(list), >, 30);
    for (guint i = 0; i < json_array_get_length(list); i++)
        check_multiplier(json_array_get_object_element(list, i));
}

static inline void
check_exact(const char *id,
            JsonObject *exact,
            const hs_niosh_answer *answer,
            bool without_frequency)
{
    const char *names[] = {"HM", "VM", "DM", "AM", "FM", "CM"};

    for (int i = 0; i < 6; i++)
        if (!(without_frequency && strcmp(names[i], "FM") == 0))
            hs_near(id, pick(answer, names[i]), number_of(exact, names[i]), 1e-6);
}

static inline void
check_place(JsonObject *o, const char *end)
{
    JsonObject *p = json_object_get_object_member(o, end);
    const char *id = json_object_get_string_member(o, "id");
    bool free_of_rate = json_object_get_boolean_member(o, "frequency_independent");
    hs_niosh_duration duration = duration_of(json_object_get_string_member(o, "duration"));
    hs_coupling coupling = coupling_of(json_object_get_string_member(o, "coupling"));
    hs_niosh_input in = {.reach_m = number_of(p, "reach_m"),
                         .hand_height_m = number_of(p, "hand_height_m"),
                         .distance_m = number_of(o, "distance_m"),
                         .turn_deg = number_of(p, "turn_deg"),
                         .lifts_per_min = number_of(o, "cycles_per_hour") / 60.0,
                         .duration = duration,
                         .coupling = coupling};
    hs_niosh_answer si, us;
    double rwl_kg, rwl_lb = HS_ABSENT;

    hs_niosh_rwl(&in, &si);
    check_exact(id, json_object_get_object_member(p, "exact"), &si, free_of_rate);
    rwl_kg = free_of_rate ? si.firwl_kg : si.rwl_kg;
    hs_near(id, rwl_kg, number_of(p, "rwl_kg"), 2e-6 * rwl_kg);
    hs_near(id, number_of(o, "mass_kg") / rwl_kg, number_of(p, "index"), 1e-5);
    if (json_object_has_member(p, "inch")) {
        JsonObject *inch = json_object_get_object_member(p, "inch");

        hs_niosh_rwl_us(number_of(inch, "H"), number_of(inch, "V"), number_of(o, "D_in"),
                        number_of(inch, "A"), number_of(o, "lifts_per_min"), duration, coupling,
                        &us);
        check_exact(id, json_object_get_object_member(inch, "exact"), &us, free_of_rate);
        rwl_lb = free_of_rate ? us.firwl_kg : us.rwl_kg;
        hs_near(id, rwl_lb, number_of(inch, "rwl_lb"), 2e-6 * rwl_lb);
        /* the metric form lies on the safe side of the inch form, by at most 5 per cent */
        g_assert_cmpfloat(rwl_kg, <, rwl_lb * 0.45359237);
        hs_near_rel(id, rwl_kg, rwl_lb * 0.45359237, 0.05);
    }
    if (json_object_has_member(p, "printed")) {
        JsonObject *printed = json_object_get_object_member(p, "printed");
        double relative = number_of(printed, "relative");

        if (json_object_has_member(printed, "rwl_kg"))
            hs_near_rel(id, rwl_kg, number_of(printed, "rwl_kg"), relative);
        if (json_object_has_member(printed, "rwl_lb"))
            hs_near_rel(id, rwl_lb, number_of(printed, "rwl_lb"), relative);
    }
}

static inline void
check_examples(JsonObject *root)
{
    JsonArray *list = json_object_get_array_member(root, "examples");

    g_assert_cmpuint(json_array_get_length(list), >, 3);
    for (guint i = 0; i < json_array_get_length(list); i++) {
        JsonObject *o = json_array_get_object_element(list, i);

        check_place(o, "origin");
        if (json_object_has_member(o, "destination"))
            check_place(o, "destination");
    }
}

static inline void
check_composites(JsonObject *root)
{
    JsonArray *list = json_object_get_array_member(root, "composite");

    g_assert_cmpuint(json_array_get_length(list), >, 0);
    for (guint i = 0; i < json_array_get_length(list); i++) {
        JsonObject *o = json_array_get_object_element(list, i);
        JsonArray *given = json_object_get_array_member(o, "tasks");
        const char *id = json_object_get_string_member(o, "id");
        int n = (int)json_array_get_length(given);
        hs_niosh_task tasks[8];
        hs_niosh_sum sum, turned;

        for (int k = 0; k < n; k++) {
            JsonObject *t = json_array_get_object_element(given, (guint)k);

            tasks[k] = (hs_niosh_task){number_of(t, "mean"), number_of(t, "most"),
                                       number_of(t, "firwl"), number_of(t, "lifts_per_min"),
                                       json_object_get_boolean_member(t, "low")};
            if (json_object_has_member(t, "H")) {
                hs_niosh_input in = {number_of(t, "H") / 100.0,
                                     number_of(t, "V") / 100.0,
                                     number_of(t, "D") / 100.0,
                                     number_of(t, "A"),
                                     number_of(t, "lifts_per_min"),
                                     HS_NIOSH_SHORT,
                                     coupling_of(json_object_get_string_member(t, "coupling"))};
                hs_niosh_answer answer;

                hs_niosh_rwl(&in, &answer);
                hs_near(id, answer.firwl_kg, tasks[k].firwl_kg, 1e-5);
            }
        }
        hs_niosh_composite(tasks, n, duration_of(json_object_get_string_member(o, "duration")),
                           &sum);
        hs_near(id, sum.index, number_of(o, "cli"), 2e-5);
        g_assert_cmpfloat(sum.index, >=, sum.first_index);
        /* the order of entry is irrelevant */
        for (int k = 0; k < n / 2; k++) {
            hs_niosh_task keep = tasks[k];

            tasks[k] = tasks[n - 1 - k];
            tasks[n - 1 - k] = keep;
        }
        hs_niosh_composite(tasks, n, duration_of(json_object_get_string_member(o, "duration")),
                           &turned);
        hs_near(id, turned.index, sum.index, 1e-12);
    }
}

#endif

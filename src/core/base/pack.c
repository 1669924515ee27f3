/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  may these figures leave core?
 * Answer:    lists of each struct's numbers, looked over for the infinite.
 * Not here:  where a figure came from: the path in the error says where to look. */
#include "pack.h"

#include <stdarg.h>
#include <stdio.h>

typedef struct {
    const char *name;
    size_t offset;
} number;

#define N_OF(list) (sizeof(list) / sizeof *(list))
#define NUMBER(type, member)                                                                   \
    {                                                                                          \
#member, offsetof(type, member)                                                        \
    }

static const number finding_numbers[] = {
    NUMBER(hs_finding, route), NUMBER(hs_finding, t_s),   NUMBER(hs_finding, value),
    NUMBER(hs_finding, limit), NUMBER(hs_finding, ratio),
};
static const number sample_numbers[] = {
    NUMBER(hs_sample, t_s),          NUMBER(hs_sample, route),
    NUMBER(hs_sample, x_m),          NUMBER(hs_sample, z_m),
    NUMBER(hs_sample, y_m),          NUMBER(hs_sample, pitch_deg),
    NUMBER(hs_sample, heading_deg),  NUMBER(hs_sample, a_x_m_s2),
    NUMBER(hs_sample, a_z_m_s2),     NUMBER(hs_sample, v_x_m_s),
    NUMBER(hs_sample, v_z_m_s),      NUMBER(hs_sample, cg_m.x),
    NUMBER(hs_sample, cg_m.y),       NUMBER(hs_sample, cg_m.z),
    NUMBER(hs_sample, combined_kg),  NUMBER(hs_sample, combined_m.x),
    NUMBER(hs_sample, combined_m.y), NUMBER(hs_sample, combined_m.z),
};
static const number bearer_numbers[] = {
    NUMBER(hs_bearer_sample, share_N),
    NUMBER(hs_bearer_sample, share_least_N),
    NUMBER(hs_bearer_sample, share_most_N),
    NUMBER(hs_bearer_sample, hand_force_N),
    NUMBER(hs_bearer_sample, hand_push_N),
    NUMBER(hs_bearer_sample, felt_force_N),
    NUMBER(hs_bearer_sample, suit_force_N),
    NUMBER(hs_bearer_sample, ground_force_N),
    NUMBER(hs_bearer_sample, balance_margin_m),
    NUMBER(hs_bearer_sample, resultant_m.x),
    NUMBER(hs_bearer_sample, resultant_m.y),
    NUMBER(hs_bearer_sample, l5s1_moment_Nm),
    NUMBER(hs_bearer_sample, compression_N),
    NUMBER(hs_bearer_sample, shear_N),
    NUMBER(hs_bearer_sample, power_lost.felt_force_N),
    NUMBER(hs_bearer_sample, power_lost.hold_s),
    NUMBER(hs_bearer_sample, power_lost.needed_s),
    NUMBER(hs_bearer_sample, feet_x_m),
    NUMBER(hs_bearer_sample, feet_y_m),
    NUMBER(hs_bearer_sample, floor_z_m),
    NUMBER(hs_bearer_sample, facing_rad),
    NUMBER(hs_bearer_sample, shortfall_m),
};
static const number joint_numbers[] = {
    NUMBER(hs_joint_result, moment_Nm),
    NUMBER(hs_joint_result, strength_Nm),
    NUMBER(hs_joint_result, utilisation),
};
static const number total_numbers[] = {
    NUMBER(hs_totals, energy_Wh_per_h),
    NUMBER(hs_totals, metabolic_W),
    NUMBER(hs_totals, mass_moved_kg_per_h),
    NUMBER(hs_totals, worker_minutes_per_h),
};
static const number load_numbers[] = {
    NUMBER(hs_load_result, mass_kg),    NUMBER(hs_load_result, mass_tol_kg),
    NUMBER(hs_load_result, centre_m.x), NUMBER(hs_load_result, centre_m.y),
    NUMBER(hs_load_result, centre_m.z),
};
static const number doubt_numbers[] = {
    NUMBER(hs_doubt_check, p_within),
    NUMBER(hs_doubt_check, value_p05),
    NUMBER(hs_doubt_check, value_p50),
    NUMBER(hs_doubt_check, value_p95),
};

static double
number_at(const void *thing, size_t offset)
{
    return *(const double *)(const void *)((const char *)thing + offset);
}

/* Name of the first infinite number of a struct, or NULL. */
static const char *
infinite_of(const void *thing, const number *numbers, size_t n)
{
    for (size_t i = 0; i < n; i++)
        if (isinf(number_at(thing, numbers[i].offset)))
            return numbers[i].name;
    return NULL;
}

static bool
is_message_finite(const hs_message *message)
{
    for (int i = 0; i < HS_MESSAGE_NUMBERS; i++)
        if (isinf(message->number[i]))
            return false;
    return true;
}

static bool
is_working_finite(const hs_working *working)
{
    for (const hs_working_line *line = working->first; line != NULL; line = line->next) {
        if (isinf(line->result))
            return false;
        for (int i = 0; i < line->n_terms; i++)
            if (isinf(line->terms[i].value))
                return false;
    }
    return true;
}

void
hs_pack_finding(hs_finding *finding)
{
    bool is_whole = finding->status != HS_STATUS_NOT_JUDGED || finding->why == HS_WHY_SCOPE ||
                    finding->why == HS_WHY_MISSING;

    if (finding->status == HS_STATUS_NONE ||
        (is_whole && infinite_of(finding, finding_numbers, N_OF(finding_numbers)) == NULL &&
         is_message_finite(&finding->text) && is_message_finite(&finding->remedy) &&
         is_working_finite(&finding->working)))
        return;
    finding->status = HS_STATUS_NOT_JUDGED;
    finding->why = HS_WHY_MISSING;
    finding->value = finding->limit = finding->ratio = HS_ABSENT;
    if (isinf(finding->route) || isinf(finding->t_s))
        finding->route = finding->t_s = HS_ABSENT;
    finding->text = HS_SAY(internal);
    finding->remedy = (hs_message){.reason = HS_REASON_none};
    finding->working = (hs_working){.arena = finding->working.arena};
}

static hs_status __attribute__((format(printf, 2, 3)))
internal(hs_error *error, const char *format, ...)
{
    va_list arguments;

    if (error != NULL) {
        *error = (hs_error){
            .status = HS_E_INTERNAL, .value = HS_ABSENT, .least = HS_ABSENT, .most = HS_ABSENT};
        va_start(arguments, format);
        vsnprintf(error->where, sizeof error->where, format, arguments);
        va_end(arguments);
    }
    return HS_E_INTERNAL;
}

static hs_status
look_at_bearer(const hs_bearer_sample *bearer, int o, int s, int b, hs_error *error)
{
    const char *bad = infinite_of(bearer, bearer_numbers, N_OF(bearer_numbers));

    for (int j = 0; j < HS_N_JOINTS && bad == NULL; j++)
        bad = infinite_of(&bearer->joints[j], joint_numbers, N_OF(joint_numbers));
    for (int i = 0; i < HS_N_POSE && bearer->has_pose && bad == NULL; i++)
        if (isinf(bearer->pose[i].x) || isinf(bearer->pose[i].y))
            bad = "pose";
    for (int i = 0; i < bearer->n_base && bad == NULL; i++)
        if (isinf(bearer->base_m[i].x) || isinf(bearer->base_m[i].y))
            bad = "base_m";
    return bad == NULL
               ? HS_OK
               : internal(error, "options[%d].samples[%d].bearers[%d].%s", o, s, b, bad);
}

static hs_status
look_at_option(const hs_option_result *option, int o, hs_error *error)
{
    const char *bad = infinite_of(&option->totals, total_numbers, N_OF(total_numbers));

    if (bad != NULL)
        return internal(error, "options[%d].totals.%s", o, bad);
    for (int i = 0; i < option->n_findings; i++) {
        bad = infinite_of(&option->findings[i], finding_numbers, N_OF(finding_numbers));
        if (bad != NULL)
            return internal(error, "options[%d].findings[%d].%s", o, i, bad);
    }
    for (int s = 0; s < option->n_samples; s++) {
        const hs_sample *sample = &option->samples[s];

        bad = infinite_of(sample, sample_numbers, N_OF(sample_numbers));
        for (int g = 0; g < sample->n_grips && bad == NULL; g++)
            bad = isinf(sample->grips[g].up_N) ? "grips" : NULL;
        if (bad != NULL)
            return internal(error, "options[%d].samples[%d].%s", o, s, bad);
        for (int b = 0; b < option->asked->n_bearers; b++)
            HS_TRY(look_at_bearer(&sample->bearers[b], o, s, b, error));
    }
    return HS_OK;
}

hs_status
hs_pack_results(const hs_results *results, hs_error *error)
{
    const char *bad = infinite_of(&results->load, load_numbers, N_OF(load_numbers));

    if (bad != NULL)
        return internal(error, "load.%s", bad);
    for (int o = 0; o < results->n_options; o++)
        HS_TRY(look_at_option(&results->options[o], o, error));
    for (int i = 0; i < results->n_break_even; i++)
        if (isinf(results->break_even[i].value))
            return internal(error, "break_even[%d].value", i);
    for (int d = 0; d < results->n_doubt; d++)
        for (int i = 0; i < results->doubt[d].n_checks; i++) {
            bad = infinite_of(&results->doubt[d].checks[i], doubt_numbers, N_OF(doubt_numbers));
            if (bad != NULL)
                return internal(error, "doubt[%d].checks[%d].%s", d, i, bad);
        }
    return HS_OK;
}

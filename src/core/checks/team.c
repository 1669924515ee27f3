/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how much may one member of a team carry by the team rule that was chosen?
 * Answer:    the published boxes and rows, each with its source.
 * Not here:  the limits as checks of their own (limits/), the shares (share_checks.c). */
#include "team.h"

#include "gb.h"
#include "iso11228.h"
#include "legs.h"
#include "mil1472.h"
#include "niosh.h"
#include "solve.h"
#include "units.h"

const char *
hs_team_rule_id(hs_team_rule rule)
{
    static const char *const ids[] = {[HS_TEAM_NONE] = "none",
                                      [HS_TEAM_GB] = "gb",
                                      [HS_TEAM_MIL_STD_1472] = "mil-std-1472",
                                      [HS_TEAM_EN_1005_2] = "en-1005-2",
                                      [HS_TEAM_MEASURED] = "measured"};

    return ids[rule > HS_TEAM_NONE ? rule : HS_TEAM_NONE];
}

static double
fraction_by(hs_team_rule rule, double measured, int n)
{
    if (n <= 1)
        return 1.0;
    switch (rule) {
    case HS_TEAM_GB:
        return hs_gb_team_share(n);
    case HS_TEAM_MIL_STD_1472:
        return hs_mil1472_team_share(n);
    case HS_TEAM_EN_1005_2:
        return n == 2 ? HS_ISO_TWO_PERSONS : HS_ABSENT;
    case HS_TEAM_MEASURED:
        return measured > 0.0 ? measured : HS_ABSENT;
    case HS_TEAM_NONE:
    default:
        return HS_ABSENT;
    }
}

double
hs_team_fraction(const hs_policy *policy, int n)
{
    return fraction_by(policy->team_rule, policy->team_factor, n);
}

/* The leg (not a hold) that a station belongs to; NULL for a hold. */
static const hs_limit_leg *
leg_of(const hs_asking *asking, int station, int bearer)
{
    const hs_limit_leg *legs;
    int n = hs_limit_legs(asking, bearer, &legs);

    for (int i = 0; i < n; i++)
        if (station >= legs[i].from && station <= legs[i].to)
            return &legs[i];
    return NULL;
}

static void
one_gb(const hs_asking *asking, int station, int bearer, hs_team_limit *limit)
{
    const hs_person *person = &asking->run->persons[bearer];
    const hs_place *place = &asking->run->stations[station].place;
    const hs_bearer_place *at = &place->bearers[bearer];
    hs_gb_landmarks body = hs_gb_landmarks_of(person->stature_m);
    hs_gb_reach reach = hs_gb_reach_of(&body, at->reach_m);
    double turn_deg = hs_or(asking->task->route.points[place->point].turn_deg, 0.0);

    limit->source = HS_SRC_gb_guideline;
    limit->confidence = HS_CONF_SEEN;
    if (reach == HS_GB_OUTSIDE) {
        limit->silent = HS_REASON_team_silent_here;
        return;
    }
    limit->one_person_N =
        HS_GRAVITY_m_s2 *
        hs_gb_box_kg(person->sex, hs_gb_zone_of(&body, at->hands_m.z - at->floor_z_m), reach) *
        hs_gb_twist_factor(fabs(turn_deg)) *
        hs_gb_rate_factor(hs_limit_cycles_per_h(asking) / 60.0);
}

static void
one_mil(const hs_asking *asking, int station, int bearer, hs_team_limit *limit)
{
    const hs_limit_leg *leg = leg_of(asking, station, bearer);
    double per_min = hs_limit_cycles_per_h(asking) / 60.0, hours = hs_limit_hours(asking),
           row_kg = HS_ABSENT, rate = 1.0;

    if (leg != NULL && leg->move == HS_MOVE_CARRY) {
        row_kg = hs_mil1472_carry_kg(hs_limit_men_only(asking), hs_limit_carry_m(asking),
                                     &limit->confidence);
        rate = hs_mil1472_carry_rate_factor(per_min, hours);
    } else if (leg != NULL && hs_limit_leg_lifts(leg)) {
        row_kg =
            hs_mil1472_lift_kg(hs_limit_men_only(asking),
                               fmax(leg->height_m[0], leg->height_m[1]), &limit->confidence);
        rate = hs_mil1472_lift_rate_factor(per_min, hours);
    }
    if (rate < 1.0)
        limit->confidence = HS_CONF_MEMORY;
    limit->source =
        limit->confidence == HS_CONF_SEEN ? HS_SRC_mil_std_1472 : HS_SRC_mil_std_1472_memory;
    limit->one_person_N = HS_GRAVITY_m_s2 * row_kg * rate;
    if (!hs_has(row_kg))
        limit->silent = HS_REASON_team_silent_here;
}

/* Recommended mass of the leg for one person: the reference mass of adults at work times the multipliers at its start. */
static void
one_en(const hs_asking *asking, int station, int bearer, hs_team_limit *limit)
{
    const hs_limit_leg *leg = leg_of(asking, station, bearer);
    hs_niosh_input input;
    hs_niosh_answer answer;

    limit->source = HS_SRC_en_1005_2;
    limit->confidence = HS_CONF_MEMORY; /* the reference mass */
    if (leg == NULL || !hs_limit_leg_lifts(leg)) {
        limit->silent = HS_REASON_team_silent_here;
        return;
    }
    input = (hs_niosh_input){
        .reach_m = leg->reach_m[0],
        .hand_height_m = leg->height_m[0],
        .distance_m = fabs(leg->height_m[1] - leg->height_m[0]),
        .turn_deg = leg->turn_deg[0],
        .lifts_per_min = hs_limit_cycles_per_h(asking) / 60.0,
        .duration = hs_niosh_duration_of(hs_limit_hours(asking), hs_limit_recovery_h(asking)),
        .coupling = leg->coupling};
    hs_niosh_rwl(&input, &answer);
    limit->one_person_N =
        HS_GRAVITY_m_s2 * hs_iso11228_limit_kg(HS_EN_ADULTS_kg, &answer,
                                               leg->is_one_handed ? HS_ISO_ONE_HAND : 1.0);
}

typedef struct {
    const hs_person *person;
    hs_body_input input;
    hs_body_state posture;
} press;

static double
beyond_strength(double force_N, void *data)
{
    press *p = data;
    hs_body_state state = p->posture;

    p->input.felt_N = force_N;
    if (hs_body_at(p->person, &p->input, &state) != HS_OK)
        return HS_ABSENT;
    return state.greatest - 1.0;
}

/* The member's own strength: the load on the hands at which the first joint reaches its strength in the posture found. */
static void
one_measured(const hs_asking *asking, int station, int bearer, hs_team_limit *limit)
{
    const hs_bearer_state *state = &asking->run->stations[station].bearers[bearer];
    press p = {
        .person = &asking->run->persons[bearer], .input = state->input, .posture = state->body};
    double force_N;

    limit->source = HS_SRC_team_measured;
    limit->confidence = HS_CONF_DERIVED;
    if (!state->has_body || !state->body.is_found ||
        hs_root_find(beyond_strength, &p, 0.0, 20.0 * HS_GRAVITY_m_s2 * 10.0, 1e-3, &force_N,
                     NULL) != HS_OK) {
        limit->silent = HS_REASON_team_silent_here;
        return;
    }
    limit->one_person_N =
        force_N / asking->run->stations[station].place.bearers[bearer].walking_factor;
}

void
hs_team_by_rule(const hs_asking *asking,
                hs_team_rule rule,
                int station,
                int bearer,
                hs_team_limit *ret_limit)
{
    int n = asking->run->setup->n_bearers;

    *ret_limit =
        (hs_team_limit){.one_person_N = HS_ABSENT,
                        .fraction = fraction_by(rule, asking->task->policy.team_factor, n),
                        .confidence = HS_CONF_SEEN};
    if (!hs_has(ret_limit->fraction)) {
        ret_limit->silent =
            rule == HS_TEAM_MEASURED ? HS_REASON_team_no_factor : HS_REASON_team_silent_number;
        return;
    }
    switch (rule) {
    case HS_TEAM_GB:
        one_gb(asking, station, bearer, ret_limit);
        break;
    case HS_TEAM_MIL_STD_1472:
        one_mil(asking, station, bearer, ret_limit);
        break;
    case HS_TEAM_EN_1005_2:
        one_en(asking, station, bearer, ret_limit);
        break;
    case HS_TEAM_MEASURED:
        one_measured(asking, station, bearer, ret_limit);
        break;
    case HS_TEAM_NONE:
    default:
        ret_limit->silent = HS_REASON_share_no_rule;
        break;
    }
}

void
hs_team_one_person(const hs_asking *asking, int station, int bearer, hs_team_limit *ret_limit)
{
    hs_team_by_rule(asking, asking->task->policy.team_rule, station, bearer, ret_limit);
}

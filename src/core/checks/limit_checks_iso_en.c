/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how do the legs of the way stand against ISO 11228-1 and EN 1005-2?
 * Answer:    hs_check_lift_iso_11228_1() on lift, lower and carry legs, hs_check_lift_en_1005_2() on lift and lower legs.
 * Not here:  their figures (limits/iso11228.c), the mass of a day (limit_checks_day.c). */
#include "iso11228.h"
#include "legs.h"

typedef struct {
    const hs_asking *asking;
    const hs_limit_leg *leg;
    int end;
    hs_niosh_answer multipliers; /* 1 each for a carry */
    double reference_kg, team, hand, limit_kg;
    bool is_memory; /* a factor or band that was not read decides */
} place_limit;

static void
multiply(place_limit *at)
{
    const hs_limit_leg *leg = at->leg;
    hs_niosh_input input = {.reach_m = leg->reach_m[at->end],
                            .hand_height_m = leg->height_m[at->end],
                            .distance_m = leg->height_m[1] - leg->height_m[0],
                            .turn_deg = leg->turn_deg[at->end],
                            .lifts_per_min = hs_limit_cycles_per_h(at->asking) / 60.0,
                            .duration = hs_niosh_duration_of(hs_limit_hours(at->asking),
                                                             hs_limit_recovery_h(at->asking)),
                            .coupling = leg->coupling};
    int n = at->asking->run->setup->n_bearers;

    if (hs_limit_leg_lifts(leg))
        hs_niosh_rwl(&input, &at->multipliers);
    else
        at->multipliers = (hs_niosh_answer){1, 1, 1, 1, 1, 1, HS_NIOSH_LC_kg, HS_NIOSH_LC_kg};
    at->hand = leg->is_one_handed ? HS_ISO_ONE_HAND : 1.0;
    at->team = n == 2 ? HS_ISO_TWO_PERSONS : 1.0;
    at->limit_kg =
        hs_iso11228_limit_kg(at->reference_kg, &at->multipliers, at->hand * at->team);
    at->is_memory = input.lifts_per_min > HS_NIOSH_SEEN_TO_per_min && hs_limit_leg_lifts(leg);
}

/* What neither standard covers; team of two and one hand have their factors. */
static hs_message
scope_of(const place_limit *at)
{
    hs_message scope = hs_limit_scope_words(at->asking, at->leg, false);
    int n = at->asking->run->setup->n_bearers;

    if (scope.reason == HS_REASON_none && n > 2)
        scope = HS_SAY(limits_team_size, n);
    if (scope.reason == HS_REASON_none && at->leg->held_kg < HS_ISO_LIGHTEST_kg)
        scope = HS_SAY(limits_light, at->leg->held_kg);
    return scope;
}

static void
record(const place_limit *at, hs_working *working, bool is_en)
{
    const hs_niosh_answer *m = &at->multipliers;

    if (is_en)
        HS_WORK(working, en_limit, at->limit_kg, "kg", {"M", at->reference_kg, "kg"},
                {"HM", m->hm_factor, ""}, {"VM", m->vm_factor, ""}, {"DM", m->dm_factor, ""},
                {"AM", m->am_factor, ""}, {"FM", m->fm_factor, ""}, {"CM", m->cm_factor, ""},
                {"PM", at->team, ""}, {"OM", at->hand, ""});
    else if (hs_limit_leg_lifts(at->leg))
        HS_WORK(working, iso_limit, at->limit_kg, "kg", {"M", at->reference_kg, "kg"},
                {"HM", m->hm_factor, ""}, {"VM", m->vm_factor, ""}, {"DM", m->dm_factor, ""},
                {"AM", m->am_factor, ""}, {"FM", m->fm_factor, ""}, {"CM", m->cm_factor, ""},
                {"p", at->team, ""}, {"h", at->hand, ""});
    else
        HS_WORK(working, iso_carry, at->limit_kg, "kg", {"M", at->reference_kg, "kg"},
                {"p", at->team, ""}, {"h", at->hand, ""});
}

/* Beyond even without what is only remembered needs no memory. */
static void
tell_iso_confidence(place_limit *at, hs_finding *candidate)
{
    const hs_person *person = &at->asking->run->persons[at->leg->bearer];
    double kindest_kg = hs_iso11228_reference_kg(person->sex, 30.0);
    bool uses_memory =
        at->is_memory || at->hand < 1.0 || at->team < 1.0 || at->reference_kg < kindest_kg;
    double seen_kg = hs_iso11228_limit_kg(kindest_kg, &at->multipliers, 1.0);

    at->is_memory = uses_memory && !(at->leg->held_kg > seen_kg && !at->is_memory);
    candidate->confidence = at->is_memory ? HS_CONF_MEMORY : HS_CONF_SEEN;
    candidate->source = at->is_memory ? HS_SRC_iso_11228_1_memory : HS_SRC_iso_11228_1;
}

static hs_message
iso_text(const place_limit *at)
{
    const hs_limit_leg *leg = at->leg;

    if (hs_limit_leg_lifts(leg)) {
        hs_message text = HS_SAY(iso_is, leg->held_kg, at->limit_kg, at->reference_kg,
                                 leg->reach_m[at->end], leg->height_m[at->end]);

        text.reason = at->is_memory ? HS_REASON_iso_is_memory : HS_REASON_iso_is;
        return text;
    }
    hs_message text = HS_SAY(iso_carry, leg->held_kg, at->limit_kg, leg->speed_m_s);

    text.reason = at->is_memory ? HS_REASON_iso_carry_memory : HS_REASON_iso_carry;
    return text;
}

/* True when nothing more is to be judged: out of scope, unknown, or no mass allowed at all. */
static bool
settle(const place_limit *at, hs_message scope, double shown, hs_finding *candidate)
{
    const hs_limit_leg *leg = at->leg;

    if (!hs_has(leg->held_kg) && !leg->has_suit) {
        hs_finding_missing(candidate, HS_SAY(limits_unknown_mass));
        return true;
    }
    if (scope.reason != HS_REASON_none) {
        hs_finding_scope(candidate, shown,
                         hs_has(leg->held_kg) ? scope : HS_SAY(limits_unknown_felt));
        return true;
    }
    if (!(at->limit_kg > 0.0)) {
        hs_finding_beyond(candidate, HS_SAY(limits_zero));
        candidate->remedy = HS_SAY(limits_remedy_place);
        return true;
    }
    return false;
}

static void
judge_iso(place_limit *at, hs_finding *candidate)
{
    const hs_limit_leg *leg = at->leg;
    hs_message scope = scope_of(at);
    bool carries = !hs_limit_leg_lifts(leg);

    candidate->source = HS_SRC_iso_11228_1;
    candidate->confidence = HS_CONF_SEEN;
    if (hs_limit_judge_site(at->asking, candidate, leg))
        return;
    if (scope.reason == HS_REASON_none && carries &&
        !(leg->speed_m_s >= HS_ISO_SLOWEST_m_s - 1e-9 &&
          leg->speed_m_s <= HS_ISO_FASTEST_m_s + 1e-9))
        scope = HS_SAY(iso_speed, leg->speed_m_s);
    if (scope.reason == HS_REASON_none && carries && (leg->steps || leg->steepest_rad > 1e-9))
        scope = HS_SAY(iso_slope);
    candidate->limit = at->limit_kg > 0.0 ? at->limit_kg : HS_ABSENT;
    if (hs_has(leg->held_kg))
        record(at, &candidate->working, false);
    if (settle(at, scope, leg->held_kg, candidate))
        return;
    tell_iso_confidence(at, candidate);
    candidate->text = iso_text(at);
    hs_finding_judge(candidate, leg->held_kg, at->limit_kg, at->asking->near_ratio);
    hs_limit_remedy_mass(at->asking, candidate);
}

void
hs_check_lift_iso_11228_1(const hs_asking *asking, hs_finding *finding)
{
    if (!hs_criterion_on(asking->task, "iso-11228-1"))
        return;
    for (int b = 0; b < asking->run->setup->n_bearers; b++) {
        const hs_person *person = &asking->run->persons[b];
        const hs_limit_leg *legs;
        int n = hs_limit_legs(asking, b, &legs);

        for (int i = 0; i < n; i++)
            for (int end = 0; end < (legs[i].is_precise ? 2 : 1); end++) {
                hs_finding candidate = hs_finding_start(asking, HS_CHECK_lift_iso_11228_1);
                place_limit at = {.asking = asking,
                                  .leg = &legs[i],
                                  .end = end,
                                  .reference_kg =
                                      hs_iso11228_reference_kg(person->sex, person->age_years)};

                if (!hs_limit_leg_lifts(&legs[i]) && legs[i].move != HS_MOVE_CARRY)
                    continue;
                multiply(&at);
                judge_iso(&at, &candidate);
                hs_limit_keep(asking, finding, &candidate, &legs[i], end);
            }
    }
}

static hs_message
en_text(double index, const place_limit *at)
{
    hs_message text = HS_SAY(en_low, index, at->leg->held_kg, at->limit_kg);
    hs_en1005_band band = hs_en1005_band_of(index);

    if (band == HS_EN_BAND_SIGNIFICANT)
        text.reason = HS_REASON_en_raised;
    if (band == HS_EN_BAND_REDESIGN)
        text.reason = HS_REASON_en_redesign;
    return text;
}

static void
judge_en(place_limit *at, hs_finding *candidate)
{
    const hs_limit_leg *leg = at->leg;
    double index = at->limit_kg > 0.0 ? leg->held_kg / at->limit_kg : HS_ABSENT, limit = 1.0;

    candidate->source = HS_SRC_en_1005_2;
    candidate->confidence = HS_CONF_MEMORY;
    hs_limit_site(at->asking, leg->bearer, leg, candidate, &limit, NULL);
    candidate->limit = limit;
    if (hs_has(leg->held_kg)) {
        record(at, &candidate->working, true);
        if (hs_has(index))
            HS_WORK(&candidate->working, en_index, index, "", {"L", leg->held_kg, "kg"},
                    {"RML", at->limit_kg, "kg"});
    }
    if (settle(at, scope_of(at), index, candidate))
        return;
    candidate->text = en_text(index, at);
    hs_finding_judge(candidate, index, limit, at->asking->near_ratio);
    hs_limit_remedy_mass(at->asking, candidate);
}

void
hs_check_lift_en_1005_2(const hs_asking *asking, hs_finding *finding)
{
    double carry_m = hs_limit_carry_m(asking);

    if (!hs_criterion_on(asking->task, "en-1005-2"))
        return;
    for (int b = 0; b < asking->run->setup->n_bearers; b++) {
        const hs_limit_leg *legs;
        int n = hs_limit_legs(asking, b, &legs);

        for (int i = 0; i < n; i++)
            for (int end = 0; end < (legs[i].is_precise ? 2 : 1); end++) {
                hs_finding candidate = hs_finding_start(asking, HS_CHECK_lift_en_1005_2);
                place_limit at = {.asking = asking,
                                  .leg = &legs[i],
                                  .end = end,
                                  .reference_kg = HS_EN_ADULTS_kg};

                if (hs_limit_leg_lifts(&legs[i])) {
                    multiply(&at);
                    judge_en(&at, &candidate);
                } else if (legs[i].move == HS_MOVE_CARRY && carry_m >= HS_EN_CARRY_UNDER_m) {
                    candidate.source = HS_SRC_en_1005_2;
                    candidate.confidence = HS_CONF_SEEN;
                    hs_finding_scope(&candidate, HS_ABSENT, HS_SAY(en_carry, carry_m));
                } else {
                    continue;
                }
                hs_limit_keep(asking, finding, &candidate, &legs[i], end);
            }
    }
}

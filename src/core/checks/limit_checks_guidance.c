/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how do the legs of the way stand against MIL-STD-1472's design weights and the British guidance figures?
 * Answer:    hs_check_lift_mil_std_1472(), hs_check_lift_gb_guideline(), on lift, lower and carry legs.
 * Not here:  their figures (limits/mil1472.c, limits/gb.c). */
#include "gb.h"
#include "legs.h"
#include "mil1472.h"

/* Both publications say nothing about these. */
static hs_message
silent_about(const hs_asking *asking, const hs_limit_leg *leg)
{
    hs_message scope = hs_limit_scope_words(asking, leg, false);

    if (scope.reason == HS_REASON_none && leg->is_one_handed)
        scope = HS_SAY(limits_one_hand);
    if (scope.reason == HS_REASON_none && leg->move == HS_MOVE_CARRY &&
        (leg->steps || leg->steepest_rad > 1e-9))
        scope = HS_SAY(limits_slope);
    return scope;
}

/* Of the load, in the direction that the bearer faces. */
static double
depth_m(const hs_asking *asking, int bearer)
{
    const hs_load_state *load = asking->load;
    double turn_rad =
        asking->run->setup->bearers[bearer].facing_rad - asking->run->setup->heading_rad;

    if (!load->has_box)
        return 0.0;
    return fabs(cos(turn_rad)) * (load->most_m.x - load->least_m.x) +
           fabs(sin(turn_rad)) * (load->most_m.y - load->least_m.y);
}

typedef struct {
    double row_kg, depth, rate, team, limit_kg;
    hs_confidence confidence;
} mil_figure;

static void
figure_mil(const hs_asking *asking, const hs_limit_leg *leg, mil_figure *figure)
{
    int n = asking->run->setup->n_bearers;
    double per_min = hs_limit_cycles_per_h(asking) / 60.0, hours = hs_limit_hours(asking);
    bool men_only = hs_limit_men_only(asking), lifts = hs_limit_leg_lifts(leg);
    double seen_kg = men_only ? 39.5 : 20.0;

    figure->row_kg =
        lifts ? hs_mil1472_lift_kg(men_only, fmax(leg->height_m[0], leg->height_m[1]),
                                   &figure->confidence)
              : hs_mil1472_carry_kg(men_only, hs_limit_carry_m(asking), &figure->confidence);
    /* Hands at half the depth is what the size rule is about; a crew stands at the load's ends. */
    figure->depth = n == 1 ? hs_mil1472_depth_factor(depth_m(asking, leg->bearer)) : 1.0;
    figure->rate = lifts ? hs_mil1472_lift_rate_factor(per_min, hours)
                         : hs_mil1472_carry_rate_factor(per_min, hours);
    figure->team = hs_mil1472_team_share(n);
    figure->limit_kg = figure->row_kg * figure->depth * figure->rate * figure->team;
    if (figure->depth < 1.0 || figure->rate < 1.0)
        figure->confidence = HS_CONF_MEMORY;
    /* Beyond the row that was read, the largest of them, needs no memory. */
    if (lifts && leg->held_kg > seen_kg * figure->team)
        figure->confidence = HS_CONF_SEEN;
}

static hs_message
mil_text(const hs_asking *asking, const hs_limit_leg *leg, const mil_figure *figure)
{
    hs_message text;

    if (!hs_limit_leg_lifts(leg))
        return HS_SAY(mil_carry, leg->held_kg, figure->limit_kg, hs_limit_carry_m(asking));
    text = HS_SAY(mil_is, leg->held_kg, figure->limit_kg,
                  fmax(leg->height_m[0], leg->height_m[1]));
    if (figure->confidence == HS_CONF_MEMORY)
        text.reason = HS_REASON_mil_is_memory;
    return text;
}

static void
judge(const hs_asking *asking,
      hs_finding *candidate,
      const hs_limit_leg *leg,
      hs_message scope,
      double limit_kg,
      hs_message text)
{
    candidate->limit = limit_kg > 0.0 ? limit_kg : HS_ABSENT;
    if (!hs_has(leg->held_kg) && !leg->has_suit) {
        hs_finding_missing(candidate, HS_SAY(limits_unknown_mass));
    } else if (scope.reason != HS_REASON_none) {
        hs_finding_scope(candidate, leg->held_kg,
                         hs_has(leg->held_kg) ? scope : HS_SAY(limits_unknown_felt));
    } else if (!(limit_kg > 0.0)) {
        hs_finding_beyond(candidate, HS_SAY(limits_zero));
        candidate->remedy = HS_SAY(limits_remedy_place);
        if (candidate->confidence == HS_CONF_MEMORY)
            candidate->status = HS_STATUS_NEAR;
    } else {
        candidate->text = text;
        hs_finding_judge(candidate, leg->held_kg, limit_kg, asking->near_ratio);
        hs_limit_remedy_mass(asking, candidate);
    }
}

static void
judge_mil(const hs_asking *asking, const hs_limit_leg *leg, hs_finding *candidate)
{
    hs_message scope = silent_about(asking, leg);
    mil_figure figure;

    figure_mil(asking, leg, &figure);
    candidate->confidence = figure.confidence;
    candidate->source =
        figure.confidence == HS_CONF_SEEN ? HS_SRC_mil_std_1472 : HS_SRC_mil_std_1472_memory;
    if (hs_limit_judge_site(asking, candidate, leg))
        return;
    if (scope.reason == HS_REASON_none && !hs_has(figure.row_kg))
        scope = hs_limit_leg_lifts(leg)
                    ? HS_SAY(mil_high, fmax(leg->height_m[0], leg->height_m[1]))
                    : HS_SAY(mil_far, hs_limit_carry_m(asking));
    if (hs_has(figure.limit_kg))
        HS_WORK(&candidate->working, mil_limit, figure.limit_kg, "kg",
                {"row", figure.row_kg, "kg"}, {"d", figure.depth, ""}, {"f", figure.rate, ""},
                {"n", figure.team, ""});
    judge(asking, candidate, leg, scope, figure.limit_kg, mil_text(asking, leg, &figure));
}

/* Smallest box that the hands pass on this leg, from station to station. */
static double
least_box_kg(const hs_asking *asking,
             const hs_limit_leg *leg,
             const hs_gb_landmarks *body,
             double *ret_reach_m)
{
    const hs_run *run = asking->run;
    hs_sex sex = run->persons[leg->bearer].sex;
    double least_kg = INFINITY;

    *ret_reach_m = 0.0;
    for (int s = leg->from; s < leg->to; s++) {
        const hs_bearer_place *a = &run->stations[s].place.bearers[leg->bearer];
        const hs_bearer_place *b = &run->stations[s + 1].place.bearers[leg->bearer];
        double reach_m = fmax(a->reach_m, b->reach_m);
        double here_kg = hs_gb_least_kg(sex, body, a->hands_m.z - a->floor_z_m,
                                        b->hands_m.z - b->floor_z_m, reach_m);

        *ret_reach_m = fmax(*ret_reach_m, reach_m);
        if (!hs_has(here_kg))
            return HS_ABSENT;
        least_kg = fmin(least_kg, here_kg);
    }
    return isfinite(least_kg) ? least_kg : HS_ABSENT;
}

static hs_message
gb_scope(const hs_asking *asking,
         const hs_limit_leg *leg,
         const hs_gb_landmarks *body,
         double box_kg,
         double reach_m)
{
    hs_message scope = silent_about(asking, leg);
    int n = asking->run->setup->n_bearers;
    double low_m = fmin(leg->height_m[0], leg->height_m[1]), way_m = hs_limit_carry_m(asking);

    if (scope.reason != HS_REASON_none)
        return scope;
    if (!hs_has(hs_gb_team_share(n)))
        return HS_SAY(limits_team_size, n);
    if (leg->move == HS_MOVE_CARRY && way_m > HS_GB_CARRY_m + 1e-9)
        return HS_SAY(gb_far, way_m);
    if (leg->move == HS_MOVE_CARRY && low_m < body->knuckle_m)
        return HS_SAY(gb_low, low_m);
    if (!hs_has(box_kg))
        return HS_SAY(gb_outside, reach_m);
    return scope;
}

/* The end of the leg with the smaller box. */
static int
worse_end(const hs_asking *asking, const hs_limit_leg *leg)
{
    const hs_person *person = &asking->run->persons[leg->bearer];
    hs_gb_landmarks body = hs_gb_landmarks_of(person->stature_m);
    double box_kg[2];

    for (int end = 0; end < 2; end++)
        box_kg[end] = hs_gb_box_kg(person->sex, hs_gb_zone_of(&body, leg->height_m[end]),
                                   hs_gb_reach_of(&body, leg->reach_m[end]));
    return box_kg[1] < box_kg[0] || !hs_has(box_kg[1]) ? 1 : 0;
}

static void
judge_gb(const hs_asking *asking, const hs_limit_leg *leg, hs_finding *candidate)
{
    hs_gb_landmarks body = hs_gb_landmarks_of(asking->run->persons[leg->bearer].stature_m);
    double reach_m, box_kg = least_box_kg(asking, leg, &body, &reach_m);
    double twist = hs_gb_twist_factor(fmax(fabs(leg->turn_deg[0]), fabs(leg->turn_deg[1])));
    double rate = hs_gb_rate_factor(hs_limit_cycles_per_h(asking) / 60.0);
    double team = hs_gb_team_share(asking->run->setup->n_bearers);
    double limit_kg = box_kg * twist * rate * team;
    hs_message text = HS_SAY(gb_is, leg->held_kg, limit_kg, box_kg,
                             leg->height_m[worse_end(asking, leg)], reach_m);

    candidate->source = HS_SRC_gb_guideline;
    candidate->confidence = HS_CONF_SEEN;
    if (hs_limit_judge_site(asking, candidate, leg))
        return;
    if (leg->move == HS_MOVE_CARRY)
        text.reason = HS_REASON_gb_carry;
    if (hs_has(limit_kg))
        HS_WORK(&candidate->working, gb_limit, limit_kg, "kg", {"box", box_kg, "kg"},
                {"t", twist, ""}, {"f", rate, ""}, {"n", team, ""});
    judge(asking, candidate, leg, gb_scope(asking, leg, &body, box_kg, reach_m), limit_kg,
          text);
}

static void
ask_all(const hs_asking *asking,
        hs_finding *finding,
        hs_check_id check,
        void (*judge_one)(const hs_asking *, const hs_limit_leg *, hs_finding *))
{
    for (int b = 0; b < asking->run->setup->n_bearers; b++) {
        const hs_limit_leg *legs;
        int n = hs_limit_legs(asking, b, &legs);

        for (int i = 0; i < n; i++) {
            hs_finding candidate = hs_finding_start(asking, check);
            int end = check == HS_CHECK_lift_gb_guideline
                          ? worse_end(asking, &legs[i])
                          : legs[i].height_m[1] > legs[i].height_m[0];

            if (!hs_limit_leg_lifts(&legs[i]) && legs[i].move != HS_MOVE_CARRY)
                continue;
            judge_one(asking, &legs[i], &candidate);
            hs_limit_keep(asking, finding, &candidate, &legs[i], end);
        }
    }
}

void
hs_check_lift_mil_std_1472(const hs_asking *asking, hs_finding *finding)
{
    if (hs_criterion_on(asking->task, "mil-std-1472"))
        ask_all(asking, finding, HS_CHECK_lift_mil_std_1472, judge_mil);
}

void
hs_check_lift_gb_guideline(const hs_asking *asking, hs_finding *finding)
{
    if (hs_criterion_on(asking->task, "gb-guideline"))
        ask_all(asking, finding, HS_CHECK_lift_gb_guideline, judge_gb);
}

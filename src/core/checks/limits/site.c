/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  which figure of the site stands in place of a published one, for this worker and this handling?
 * Answer:    hs_limit_site(), and a mass on a leg judged by it.
 * Not here:  what a set of limits is (model/site_limits.c), figures of single countries (national.c). */
#include "gb.h"
#include "legs.h"
#include "units.h"

#include <string.h>

static bool
fits_person(const hs_asking *asking, int bearer, const hs_site_when *when)
{
    const hs_person *person = &asking->run->persons[bearer];
    double age_years = person->age_years;

    if (when->sex != 0 && when->sex != person->sex)
        return false;
    return age_years >= when->age_from_years &&
           !(when->age_below_years > 0.0 && age_years >= when->age_below_years);
}

static bool
fits_day(const hs_asking *asking, const hs_site_when *when)
{
    double per_h = hs_limit_cycles_per_h(asking), hours = hs_limit_hours(asking);

    if (when->to_per_h > 0.0 && !(per_h <= when->to_per_h))
        return false;
    if (when->above_per_h > 0.0 && !(per_h > when->above_per_h))
        return false;
    if (when->to_h > 0.0 && !(hours <= when->to_h))
        return false;
    return !(when->above_h > 0.0 && !(hours > when->above_h));
}

static bool
fits_height(const hs_asking *asking, const hs_limit_leg *leg, hs_site_height height)
{
    hs_gb_landmarks body = hs_gb_landmarks_of(asking->run->persons[leg->bearer].stature_m);
    double high_m = fmax(leg->height_m[0], leg->height_m[1]);

    switch (height) {
    case HS_SITE_TO_KNUCKLE:
        return high_m <= body.knuckle_m;
    case HS_SITE_TO_SHOULDER:
        return high_m <= body.shoulder_m;
    case HS_SITE_ABOVE_SHOULDER:
        return high_m > body.shoulder_m;
    case HS_SITE_ANY_HEIGHT:
    default:
        return true;
    }
}

static bool
fits_leg(const hs_asking *asking, const hs_limit_leg *leg, const hs_site_when *when)
{
    bool asks_leg = when->lifts_only || when->carries_only || when->hands > 0 ||
                    when->height != HS_SITE_ANY_HEIGHT || when->carry_above_m > 0.0 ||
                    when->slope_to_deg > 0.0;

    if (leg == NULL || !asks_leg)
        return !asks_leg;
    if (when->lifts_only && !hs_limit_leg_lifts(leg))
        return false;
    if (when->carries_only && leg->move != HS_MOVE_CARRY)
        return false;
    if (when->hands > 0 && when->hands != (leg->is_one_handed ? 1 : 2))
        return false;
    if (when->carry_above_m > 0.0 && !(hs_limit_carry_m(asking) > when->carry_above_m))
        return false;
    if (when->slope_to_deg > 0.0 &&
        !(fabs(leg->steepest_rad) * HS_DEG_PER_RAD <= when->slope_to_deg + 1e-9))
        return false;
    return fits_height(asking, leg, when->height);
}

static void
say_known(const hs_site_limit *own, hs_finding *candidate)
{
    if (own->is_published) {
        candidate->source =
            own->is_unconfirmed ? HS_SRC_limits_set_memory : HS_SRC_limits_set_seen;
        candidate->confidence = own->is_unconfirmed ? HS_CONF_MEMORY : HS_CONF_SEEN;
    } else {
        candidate->source =
            own->is_unconfirmed ? HS_SRC_limits_site_unconfirmed : HS_SRC_limits_site_own;
        candidate->confidence = own->is_unconfirmed ? HS_CONF_MEMORY : HS_CONF_COMMON_PRACTICE;
    }
}

hs_site_answer
hs_limit_site(const hs_asking *asking,
              int bearer,
              const hs_limit_leg *leg,
              hs_finding *candidate,
              double *limit,
              const hs_site_limit **ret_from)
{
    const hs_policy *policy = &asking->task->policy;
    const char *id = hs_check_get(candidate->check)->id;
    hs_site_answer answer = HS_SITE_NONE;
    double least = HS_ABSENT;

    for (int i = 0; i < policy->n_site_limits; i++) {
        const hs_site_limit *own = &policy->site_limits[i];
        double figure = own->figure;

        if (strcmp(own->id, id) != 0 || !(figure > 0.0))
            continue;
        if (own->by_body_mass)
            figure *= asking->run->persons[bearer].mass_kg;
        if (answer == HS_SITE_NONE)
            answer = HS_SITE_SILENT;
        if (ret_from != NULL && answer == HS_SITE_SILENT)
            *ret_from = own; /* the set that is silent */
        if (own->when != NULL &&
            !(fits_person(asking, bearer, own->when) && fits_day(asking, own->when) &&
              fits_leg(asking, leg, own->when)))
            continue;
        if (answer == HS_SITE_FIGURE && !(figure < least))
            continue;
        answer = HS_SITE_FIGURE;
        least = figure;
        say_known(own, candidate);
        if (ret_from != NULL)
            *ret_from = own;
        if (own->when == NULL)
            break;
    }
    if (answer == HS_SITE_FIGURE)
        *limit = least;
    if (answer == HS_SITE_SILENT && ret_from != NULL)
        say_known(*ret_from, candidate);
    return answer;
}

/* A publication speaks of people without suits, alone, standing, up to eight hours; beyond that its figure is shown only. */
static bool
is_beyond_publication(const hs_asking *asking,
                      hs_finding *candidate,
                      const hs_limit_leg *leg,
                      double limit_kg)
{
    hs_message scope = hs_limit_scope_words(asking, leg, true);

    if (scope.reason == HS_REASON_none)
        return false;
    candidate->limit = limit_kg;
    hs_finding_scope(candidate, leg->held_kg, scope);
    return true;
}

static hs_message
mass_text(const hs_limit_leg *leg, const hs_site_limit *own, double limit_kg)
{
    hs_message text = {.number = {leg->held_kg, limit_kg}, .name = {own->set, own->wording}};

    if (own->is_published)
        text.reason =
            own->is_unconfirmed ? HS_REASON_limits_set_unsure : HS_REASON_limits_set_mass;
    else if (own->is_unconfirmed)
        text.reason = HS_REASON_limits_site_unsure;
    else
        text.reason = leg->has_suit ? HS_REASON_limits_site_suit : HS_REASON_limits_site_mass;
    return text;
}

bool
hs_limit_judge_site(const hs_asking *asking, hs_finding *candidate, const hs_limit_leg *leg)
{
    double limit_kg = HS_ABSENT;
    const hs_site_limit *own = NULL;
    hs_site_answer answer;

    if (!hs_has(leg->held_kg))
        return false;
    answer = hs_limit_site(asking, leg->bearer, leg, candidate, &limit_kg, &own);
    if (answer == HS_SITE_NONE)
        return false;
    if (answer == HS_SITE_SILENT) {
        hs_finding_scope(candidate, leg->held_kg, hs_limit_set_silent(own));
        return true;
    }
    if (own->is_published && is_beyond_publication(asking, candidate, leg, limit_kg))
        return true;
    candidate->text = mass_text(leg, own, limit_kg);
    hs_finding_judge(candidate, leg->held_kg, limit_kg, asking->near_ratio);
    if (!leg->has_suit)
        hs_limit_remedy_mass(asking, candidate);
    return true;
}

hs_message
hs_limit_set_silent(const hs_site_limit *own)
{
    return (hs_message){.reason = HS_REASON_limits_set_silent,
                        .name = {own->set != NULL ? own->set : own->id}};
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what do the published limits need to know of each leg and bearer?
 * Answer:    the two end stations of every leg, read off the run.
 * Not here:  the limits themselves. */
#include "legs.h"

#include "floor.h"
#include "units.h"

double
hs_limit_cycles_per_h(const hs_asking *asking)
{
    return hs_or(asking->task->work.cycles_per_hour, 1.0);
}

double
hs_limit_hours(const hs_asking *asking)
{
    return hs_or(asking->task->work.hours, 1.0);
}

double
hs_limit_recovery_h(const hs_asking *asking)
{
    return hs_or(asking->task->work.recovery_h, 0.0);
}

bool
hs_limit_leg_lifts(const hs_limit_leg *leg)
{
    return leg->move == HS_MOVE_LIFT || leg->move == HS_MOVE_LOWER;
}

double
hs_limit_carry_m(const hs_asking *asking)
{
    const hs_route *route = &asking->task->route;
    double way_m = 0.0;

    for (int i = 1; i < route->n_points; i++)
        if (route->points[i].move == HS_MOVE_CARRY)
            way_m +=
                hypot(route->points[i].x_m - route->points[i - 1].x_m,
                      hs_or(route->points[i].y_m, 0.0) - hs_or(route->points[i - 1].y_m, 0.0));
    return way_m;
}

bool
hs_limit_men_only(const hs_asking *asking)
{
    for (int b = 0; b < asking->run->setup->n_bearers; b++)
        if (asking->run->persons[b].sex == HS_SEX_FEMALE)
            return false;
    return true;
}

static hs_coupling
worst_coupling(const hs_asking *asking, int bearer)
{
    const hs_bearer *asked = asking->run->setup->bearers[bearer].asked;
    hs_coupling worst = HS_COUPLING_GOOD;

    for (int i = 0; i < asked->n_grips; i++) {
        hs_coupling here = asking->task->load.grips[asked->grips[i]].coupling;

        if (here == 0)
            here = HS_COUPLING_FAIR; /* said by setup.c */
        if (here > worst)
            worst = here;
    }
    return worst;
}

static void
fill_end(const hs_asking *asking, hs_limit_leg *leg, int end, int station, int point)
{
    const hs_station *at = &asking->run->stations[station];
    const hs_bearer_place *place = &at->place.bearers[leg->bearer];
    const hs_bearer_state *state = &at->bearers[leg->bearer];
    double share_kg = state->static_share_N / HS_GRAVITY_m_s2;
    double held_kg = leg->has_suit ? state->felt.felt_N / HS_GRAVITY_m_s2 : share_kg;

    leg->height_m[end] = place->hands_m.z - place->floor_z_m;
    leg->reach_m[end] = place->reach_m;
    leg->turn_deg[end] = hs_or(asking->task->route.points[point].turn_deg, 0.0);
    leg->kneels = leg->kneels || state->input.stance == HS_STANCE_KNEELING;
    leg->steps = leg->steps || place->stairs;
    /* NaN stays NaN: a share that is not known is not made up from the other end. */
    leg->share_kg =
        end == 0 || share_kg > leg->share_kg || !hs_has(share_kg) ? share_kg : leg->share_kg;
    leg->held_kg =
        end == 0 || held_kg > leg->held_kg || !hs_has(held_kg) ? held_kg : leg->held_kg;
}

static hs_limit_leg
make_leg(const hs_asking *asking, int bearer, int from, int to)
{
    const hs_run *run = asking->run;
    const hs_place *a = &run->stations[from].place, *b = &run->stations[to].place;
    const hs_bearer_setup *setup = &run->setup->bearers[bearer];
    double ax_m = a->bearers[bearer].feet_m.x, bx_m = b->bearers[bearer].feet_m.x;
    hs_limit_leg leg = {.bearer = bearer,
                        .from = from,
                        .to = to,
                        .point = b->point,
                        .move = b->move,
                        .is_precise = asking->task->route.points[b->point].precise == HS_YES,
                        .is_one_handed = setup->is_one_handed,
                        .has_suit = setup->suit != NULL,
                        .is_team = run->setup->n_bearers > 1,
                        .coupling = worst_coupling(asking, bearer)};

    fill_end(asking, &leg, 0, from, b->point > 0 ? b->point - 1 : 0);
    fill_end(asking, &leg, 1, to, b->point);
    leg.way_m = hypot(b->origin_m.x - a->origin_m.x, b->origin_m.y - a->origin_m.y);
    leg.speed_m_s = leg.way_m / (b->t_s - a->t_s);
    leg.steepest_rad =
        hs_floor_steepest_rad(&asking->task->site, fmin(ax_m, bx_m), fmax(ax_m, bx_m));
    return leg;
}

int
hs_limit_legs(const hs_asking *asking, int bearer, const hs_limit_leg **ret_legs)
{
    const hs_run *run = asking->run;
    hs_limit_leg *legs = HS_NEW(asking->arena, hs_limit_leg, asking->task->route.n_points);
    int n = 0, from = -1;

    for (int s = 0; s < run->n_stations; s++) {
        const hs_place *place = &run->stations[s].place;

        if (place->in_hold)
            continue;
        if (place->is_leg_start)
            from = s;
        if (place->is_leg_end && from >= 0 && run->stations[from].place.leg == place->leg &&
            n < asking->task->route.n_points) {
            legs[n++] = make_leg(asking, bearer, from, s);
            from = -1;
        }
    }
    *ret_legs = legs;
    return n;
}

static bool
is_mass_remedy(const hs_finding *finding)
{
    return finding->remedy.reason == HS_REASON_limits_remedy_mass ||
           finding->remedy.reason == HS_REASON_limits_remedy_mass_reach;
}

void
hs_limit_keep(const hs_asking *asking,
              hs_finding *finding,
              hs_finding *candidate,
              const hs_limit_leg *leg,
              int end)
{
    double other_kg = HS_ABSENT;

    hs_finding_at(candidate, asking->run, end == 0 ? leg->from : leg->to, leg->bearer);
    if (finding->status == HS_STATUS_NONE || hs_finding_worse(candidate, finding)) {
        if (is_mass_remedy(finding))
            other_kg = finding->remedy.number[0];
        *finding = *candidate;
    } else if (is_mass_remedy(candidate)) {
        other_kg = candidate->remedy.number[0];
    }
    /* A leg with a remembered limit may be near at most and yet ask for the lighter load: the remedy serves all legs. */
    if (is_mass_remedy(finding))
        finding->remedy.number[0] = fmin(finding->remedy.number[0], other_kg);
}

hs_message
hs_limit_scope_words(const hs_asking *asking, const hs_limit_leg *leg, bool team_too)
{
    if (leg->has_suit)
        return HS_SAY(limits_suit);
    if (team_too && leg->is_team)
        return HS_SAY(limits_team);
    if (leg->kneels)
        return HS_SAY(limits_kneeling);
    if (hs_limit_hours(asking) > 8.0)
        return HS_SAY(limits_hours, hs_limit_hours(asking));
    return (hs_message){.reason = HS_REASON_none};
}

double
hs_limit_round_down(double mass_kg)
{
    return floor(mass_kg * 10.0) / 10.0;
}

void
hs_limit_remedy_mass(const hs_asking *asking, hs_finding *candidate)
{
    double load_kg = asking->load->mass_kg;

    if (candidate->status != HS_STATUS_NEAR && candidate->status != HS_STATUS_BEYOND)
        return;
    candidate->remedy = HS_SAY(
        limits_remedy_mass,
        hs_limit_round_down(load_kg * asking->near_ratio / candidate->ratio * (1.0 - 1e-9)),
        load_kg);
}

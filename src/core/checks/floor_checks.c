/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  is the floor rough enough for the feet?
 * Answer:    hs_check_floor_friction(): need against what the site states.
 * Not here:  pressure on the floor (surroundings.c). */
#include "check.h"
#include "units.h"

/* Straight: range .17-.22 in level walking, no seen source for its end; turn: Fino & Lockhart 2014, normal speed. */
#define STRAIGHT_NEED 0.22
#define STEEPEST      1e-3 /* keeps the need finite on a wall (numerics) */
#define TURN_NEED     0.45
#define ROOM          0.999 /* a remedy lands this side of its threshold (numerics) */
#define TURN_deg                                                                               \
    10.0 /* a change of the way's direction by more is a turn: common practice, no source */

static double
direction_rad(const hs_point *from, const hs_point *to)
{
    return atan2(hs_or(to->y_m, 0.0) - hs_or(from->y_m, 0.0),
                 hs_or(to->x_m, 0.0) - hs_or(from->x_m, 0.0));
}

static bool
is_walked(const hs_route *route, int point)
{
    return point > 0 && point < route->n_points && route->points[point].move == HS_MOVE_CARRY;
}

static bool
turns_between(const hs_route *route, int a, int b)
{
    double turn_rad;

    if (!is_walked(route, a) || !is_walked(route, b))
        return false;
    turn_rad = remainder(direction_rad(&route->points[b - 1], &route->points[b]) -
                             direction_rad(&route->points[a - 1], &route->points[a]),
                         2.0 * HS_PI);
    return fabs(turn_rad) > TURN_deg * HS_RAD_PER_DEG;
}

/* A carry leg with a corner at one of its ends, or on a way whose corner is stated without a place. */
static bool
has_turn(const hs_task *task, int point)
{
    return turns_between(&task->route, point - 1, point) ||
           turns_between(&task->route, point, point + 1) ||
           (hs_has(task->site.corner_in_m) && hs_has(task->site.corner_out_m));
}

static double
horizontal_N(const hs_asking *asking, int s, int b)
{
    const hs_bearer_state *state = &asking->run->stations[s].bearers[b];
    double mass_kg = asking->run->persons[b].mass_kg + state->input.suit.mass_kg;

    /* The load pushes the hands, the floor pushes back and speeds body and suit up. */
    return mass_kg * state->input.foot_acc_m_s2 - state->input.push_N;
}

/* A force level over a force upright, on a floor that rises: along it over square to it, the worse way round. */
static double
on_slope(double level, double slope_rad)
{
    return (level + tan(slope_rad)) / fmax(1.0 - level * tan(slope_rad), STEEPEST);
}

static void
judge_place(const hs_asking *asking, int s, int b, hs_finding *finding)
{
    const hs_station *at = &asking->run->stations[s];
    const hs_bearer_place *feet = &at->place.bearers[b];
    const hs_body_state *body = &at->bearers[b].body;
    double limit = asking->task->site.friction, slope_rad = fabs(feet->slope_rad), gait = 0.0,
           still = 0.0;
    double flat_N = horizontal_N(asking, s, b), need;
    bool walks =
        at->place.move == HS_MOVE_CARRY && !at->place.in_hold && fabs(feet->v_m_s) > 0.0;
    bool turns = walks && has_turn(asking->task, at->place.point);

    finding->source = turns ? HS_SRC_fino_lockhart_2014 : HS_SRC_friction_straight;
    finding->confidence = turns ? HS_CONF_SEEN : HS_CONF_COMMON_PRACTICE;
    if (walks)
        gait = turns ? TURN_NEED : STRAIGHT_NEED;
    if (hs_has(body->ground_N) && body->ground_N > 0.0 && hs_has(flat_N))
        still = fabs(flat_N) / body->ground_N;
    need = on_slope(fmax(gait, still), slope_rad);
    if (gait >= still && walks) {
        HS_WORK(&finding->working, floor_need_gait, need, "", {"gait", gait, ""},
                {"s", slope_rad, "rad"});
        finding->text = HS_SAY(none, need, limit, slope_rad * HS_DEG_PER_RAD);
        finding->text.reason = turns ? HS_REASON_floor_turn : HS_REASON_floor_straight;
    } else {
        finding->source = HS_SRC_friction_statics;
        finding->confidence = HS_CONF_DERIVED;
        if (hs_has(flat_N) && still > 0.0)
            HS_WORK(&finding->working, floor_need_still, need, "", {"H", flat_N, "N"},
                    {"N", body->ground_N, "N"}, {"s", slope_rad, "rad"});
        finding->text = HS_SAY(floor_still, need, limit, hs_or(fabs(flat_N), 0.0),
                               slope_rad * HS_DEG_PER_RAD);
    }
    if (slope_rad > 0.0 && hs_has(body->ground_N))
        HS_WORK(&finding->working, floor_along, body->ground_N * sin(slope_rad), "N",
                {"m", body->ground_N / HS_GRAVITY_m_s2, "kg"}, {"g", HS_GRAVITY_m_s2, "m/s2"},
                {"s", slope_rad, "rad"});
    if (limit > 0.0)
        hs_finding_judge(finding, need, limit, asking->near_ratio);
    else
        hs_finding_beyond(finding, finding->text);
    if (finding->status != HS_STATUS_WITHIN)
        finding->remedy =
            HS_SAY(floor_remedy, hs_friction_up(need / (ROOM * asking->near_ratio)));
}

/* On a floor without friction no ratio is left to compare: there the need is. */
static bool
is_worse(const hs_finding *a, const hs_finding *b)
{
    if (!hs_has(a->ratio) && !hs_has(b->ratio))
        return a->text.number[0] > b->text.number[0];
    return hs_finding_worse(a, b);
}

void
hs_check_floor_friction(const hs_asking *asking, hs_finding *finding)
{
    const hs_run *run = asking->run;

    finding->source = HS_SRC_friction_straight;
    if (!hs_has(asking->task->site.friction)) {
        hs_finding_missing(finding, HS_SAY(floor_missing));
        return;
    }
    for (int s = 0; s < run->n_stations; s++)
        for (int b = 0; b < run->setup->n_bearers; b++) {
            hs_finding candidate = hs_finding_start(asking, HS_CHECK_floor_friction);

            judge_place(asking, s, b, &candidate);
            hs_finding_at(&candidate, run, s, b);
            if (finding->status == HS_STATUS_NONE || is_worse(&candidate, finding))
                *finding = candidate;
        }
}

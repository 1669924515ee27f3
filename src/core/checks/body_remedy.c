/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what change of reach, height or mass would bring a figure of the body to its limit?
 * Answer:    hs_body_remedy_solve().
 * Not here:  the checks (body_checks.c, standing_checks.c). */
#include "body_remedy.h"

#include "solve.h"
#include "units.h"

#define HARDLY_ANY 1e3   /* ratio where no posture is found (numerics) */
#define ROOM       0.999 /* a remedy lands this side of its threshold (numerics) */
#define LEAST_REACH_m                                                                          \
    0.20 /* nearer than this is no place to stand: common practice, no source */
#define BEST_HEIGHT_m                                                                          \
    0.75 /* knuckle height: Waters et al. 1993, vertical multiplier 1 at 0.75 m */
#define LEAST_PART 0.02 /* of the load: less is no remedy */
#define TOLERANCE  1e-3

/* What is changed: hands at most so far, at least so high, so much of the load. */
typedef struct {
    double reach_most_m, height_least_m, part;
} change;

typedef struct {
    const hs_asking *asking;
    int bearer;
    hs_body_ratio ratio;
    double target;
    change base;
    enum {
        BY_REACH,
        BY_HEIGHT,
        BY_MASS
    } by;
} question;

bool
hs_body_is_missing(const hs_bearer_state *state)
{
    return !state->has_body || (!state->body.is_found && !hs_has(state->body.shortfall_m));
}

double
hs_body_turn_deg(const hs_asking *asking, const hs_place *place)
{
    const hs_route *route = &asking->task->route;
    int from = (int)floor(place->route) - 1;
    double part = place->route - floor(place->route), first, second;

    if (from < 0 || from >= route->n_points)
        return 0.0;
    first = hs_or(route->points[from].turn_deg, 0.0);
    second = from + 1 < route->n_points ? hs_or(route->points[from + 1].turn_deg, 0.0) : first;
    return fabs(first + part * (second - first));
}

static double
ratio_after(const question *q, int station, const change *c)
{
    const hs_run *run = q->asking->run;
    const hs_bearer_state *now = &run->stations[station].bearers[q->bearer];
    const hs_suit *suit = run->setup->bearers[q->bearer].suit;
    const hs_body_state *hint = now->body.is_found ? &now->body : NULL;
    hs_body_input in = now->input;
    double hand_N = (in.felt_N + in.rest_N) * c->part;
    hs_body_state body;
    hs_felt felt;

    in.hand_x_m = fmin(in.hand_x_m, c->reach_most_m);
    in.hand_z_m = fmax(in.hand_z_m, c->height_least_m);
    felt = hs_suit_model_of(suit)->felt(suit, hand_N, in.hand_x_m, in.hand_z_m, NULL);
    if (!hs_has(felt.felt_N))
        return HARDLY_ANY;
    in.felt_N = felt.felt_N;
    in.rest_N = hand_N - felt.felt_N;
    in.push_N *= c->part;
    in.couple_Nm *= c->part;
    if (hs_posture_find(&run->persons[q->bearer], &in, hint, &body) != HS_OK || !body.is_found)
        return HARDLY_ANY;
    return q->ratio(q->asking, &body);
}

static change
change_of(const question *q, double x)
{
    change c = q->base;

    if (q->by == BY_REACH)
        c.reach_most_m = x;
    else if (q->by == BY_HEIGHT)
        c.height_least_m = x;
    else
        c.part = x;
    return c;
}

static double
ratio_now(const question *q, int station)
{
    const hs_bearer_state *state = &q->asking->run->stations[station].bearers[q->bearer];

    return state->body.is_found ? q->ratio(q->asking, &state->body) : HARDLY_ANY;
}

/* Worst ratio over the places that are above the target now, less the target. */
static double
over_target(double x, void *data)
{
    const question *q = data;
    change c = change_of(q, x);
    double worst = 0.0;

    for (int s = 0; s < q->asking->run->n_stations; s++)
        if (ratio_now(q, s) > q->target &&
            !hs_body_is_missing(&q->asking->run->stations[s].bearers[q->bearer]))
            worst = fmax(worst, ratio_after(q, s, &c));
    return worst - q->target;
}

static void
find_extent(const question *q, double *ret_reach_m, double *ret_height_m, double *ret_share_N)
{
    const hs_run *run = q->asking->run;

    *ret_reach_m = 0.0;
    *ret_height_m = INFINITY;
    *ret_share_N = 0.0;
    for (int s = 0; s < run->n_stations; s++) {
        const hs_bearer_state *state = &run->stations[s].bearers[q->bearer];

        if (!(ratio_now(q, s) > q->target) || hs_body_is_missing(state))
            continue;
        *ret_reach_m = fmax(*ret_reach_m, state->input.hand_x_m);
        *ret_height_m = fmin(*ret_height_m, state->input.hand_z_m);
        *ret_share_N = fmax(*ret_share_N, hs_or(state->static_share_N, 0.0));
    }
}

void
hs_body_remedy_solve(const hs_asking *asking,
                     int bearer,
                     hs_body_ratio ratio,
                     double target,
                     hs_finding *finding)
{
    question q = {asking, bearer, ratio, target * ROOM, {INFINITY, 0.0, 1.0}, BY_REACH};
    double reach_m, height_m, share_N, at;

    if (asking->is_live)
        return;
    find_extent(&q, &reach_m, &height_m, &share_N);
    if (reach_m > LEAST_REACH_m && over_target(LEAST_REACH_m, &q) <= 0.0 &&
        hs_root_find(over_target, &q, LEAST_REACH_m, reach_m, TOLERANCE, &at, NULL) == HS_OK) {
        at = fmax(floor((at - TOLERANCE) * 100.0) / 100.0, LEAST_REACH_m);
        finding->remedy = HS_SAY(body_remedy_reach, at, reach_m);
        return;
    }
    q.by = BY_HEIGHT;
    if (height_m < BEST_HEIGHT_m && over_target(BEST_HEIGHT_m, &q) <= 0.0 &&
        hs_root_find(over_target, &q, height_m, BEST_HEIGHT_m, TOLERANCE, &at, NULL) == HS_OK) {
        finding->remedy =
            HS_SAY(body_remedy_height, ceil((at + TOLERANCE) * 100.0) / 100.0, height_m);
        return;
    }
    q.by = BY_MASS;
    if (over_target(LEAST_PART, &q) <= 0.0 &&
        hs_root_find(over_target, &q, LEAST_PART, 1.0, TOLERANCE, &at, NULL) == HS_OK) {
        double load_kg = asking->load->mass_kg;

        at = floor((at - TOLERANCE) * load_kg * 10.0) / 10.0;
        finding->remedy = HS_SAY(body_remedy_mass, at, load_kg);
        return;
    }
    finding->remedy = HS_SAY(body_remedy_none);
}

void
hs_body_worst(const hs_asking *asking, hs_body_judge judge, hs_finding *finding)
{
    const hs_run *run = asking->run;
    int station = -1, bearer = -1;
    hs_finding worst = *finding;

    for (int s = 0; s < run->n_stations; s++)
        for (int b = 0; b < run->setup->n_bearers; b++) {
            hs_finding candidate = hs_finding_start(asking, finding->check);

            candidate.working.arena = NULL;
            judge(asking, s, b, false, &candidate);
            if (candidate.status != HS_STATUS_NONE &&
                (station < 0 || hs_finding_worse(&candidate, &worst))) {
                worst = candidate;
                station = s;
                bearer = b;
            }
        }
    if (station < 0)
        return;
    *finding = hs_finding_start(asking, finding->check);
    judge(asking, station, bearer, true, finding);
    hs_finding_at(finding, run, station, bearer);
}

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
#define TRIES                                                                                  \
    5 /* the path along the way may cost more than place by place: then a tighter aim (numerics) */
#define TIGHTER  0.97
#define GRAIN_m  0.01
#define GRAIN_kg 0.1

/* What is changed: hands at most so far, at least so high, so much of the load. */
typedef struct {
    double reach_most_m, height_least_m, part;
} change;

enum {
    BY_REACH,
    BY_HEIGHT,
    BY_MASS
};

typedef struct {
    const hs_asking *asking;
    int bearer;
    hs_body_ratio ratio;
    double target;
    change base;
    int by, station;
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

/* The input of a place after a change; false: what the suit makes of it cannot be told. */
static bool
input_after(const question *q, int station, const change *c, hs_body_input *ret_input)
{
    const hs_run *run = q->asking->run;
    const hs_suit *suit = run->setup->bearers[q->bearer].suit;
    hs_body_input in = run->stations[station].bearers[q->bearer].input;
    double hand_N = (in.felt_N + in.rest_N) * c->part;
    hs_felt felt;

    in.hand_x_m = fmin(in.hand_x_m, c->reach_most_m);
    in.hand_z_m = fmax(in.hand_z_m, c->height_least_m);
    felt = hs_suit_model_of(suit)->felt(suit, hand_N, in.hand_x_m, in.hand_z_m, NULL);
    if (!hs_has(felt.felt_N))
        return false;
    in.felt_N = felt.felt_N;
    in.rest_N = hand_N - felt.felt_N;
    in.push_N *= c->part;
    in.couple_Nm *= c->part;
    *ret_input = in;
    return true;
}

static double
ratio_after(const question *q, int station, const change *c)
{
    const hs_run *run = q->asking->run;
    const hs_bearer_state *now = &run->stations[station].bearers[q->bearer];
    hs_body_input in;
    hs_body_state body;

    if (!input_after(q, station, c, &in) ||
        hs_posture_find(&run->persons[q->bearer], &in, now->body.is_found ? &now->body : NULL,
                        &body) != HS_OK ||
        !body.is_found)
        return HARDLY_ANY;
    return q->ratio(q->asking, &body);
}

/* Along the whole way, as it would be assessed: true when no place is above the ratio asked for. */
static bool
holds_all_the_way(const question *q, const change *c, double most)
{
    const hs_run *run = q->asking->run;
    hs_mark mark = hs_arena_mark(q->asking->arena);
    hs_body_input *inputs = HS_NEW(q->asking->arena, hs_body_input, run->n_stations);
    hs_body_state *states = HS_NEW(q->asking->arena, hs_body_state, run->n_stations);
    bool holds = true;

    for (int s = 0; s < run->n_stations && holds;) {
        int first = s, n = 0;

        while (s < run->n_stations && run->stations[s].bearers[q->bearer].has_body &&
               run->stations[s].bearers[q->bearer].input.stance ==
                   run->stations[first].bearers[q->bearer].input.stance)
            holds = input_after(q, s++, c, &inputs[n++]) && holds;
        if (n == 0)
            s++;
        holds = holds && hs_posture_leg(&run->persons[q->bearer], inputs, n, q->asking->arena,
                                        states) == HS_OK;
        for (int i = 0; i < n && holds; i++)
            holds = states[i].is_found && q->ratio(q->asking, &states[i]) < most;
    }
    hs_arena_release(q->asking->arena, mark);
    return holds;
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

/* Is the place above the target now, so that a change has to mend it? */
static bool
needs_mending(const question *q, int station)
{
    return ratio_now(q, station) > q->target &&
           !hs_body_is_missing(&q->asking->run->stations[station].bearers[q->bearer]);
}

/* Ratio of one place after the change, less the target. */
static double
over_target(double x, void *data)
{
    const question *q = data;
    change c = change_of(q, x);

    return ratio_after(q, q->station, &c) - q->target;
}

static int
worst_station(const question *q)
{
    int worst = 0;

    for (int s = 1; s < q->asking->run->n_stations; s++)
        if (!needs_mending(q, worst) ||
            (needs_mending(q, s) && ratio_now(q, s) > ratio_now(q, worst)))
            worst = s;
    return worst;
}

/* Where every place that needs it is mended: the worst place first, then a step towards `best` for each that is not yet. Most are
 * mended with the worst, so that one look at them is enough. */
static bool
mend_all(question *q, double best, double now, double *ret_at)
{
    int n = q->asking->run->n_stations, first = worst_station(q);
    double at = now;

    for (int k = 0; k < n; k++) {
        double low, high;

        q->station = (first + k) % n;
        if (!needs_mending(q, q->station) || !(over_target(at, q) > 0.0))
            continue;
        low = fmin(best, at);
        high = fmax(best, at);
        if (!(low < high) || over_target(best, q) > 0.0 ||
            hs_root_find(over_target, q, low, high, TOLERANCE, &at, NULL) != HS_OK)
            return false;
    }
    *ret_at = at;
    return true;
}

static void
find_extent(const question *q, double *ret_reach_m, double *ret_height_m)
{
    const hs_run *run = q->asking->run;

    *ret_reach_m = 0.0;
    *ret_height_m = (double)INFINITY;
    for (int s = 0; s < run->n_stations; s++) {
        const hs_bearer_state *state = &run->stations[s].bearers[q->bearer];

        if (!needs_mending(q, s))
            continue;
        *ret_reach_m = fmax(*ret_reach_m, state->input.hand_x_m);
        *ret_height_m = fmin(*ret_height_m, state->input.hand_z_m);
    }
}

/* One way of changing, from the best to the present; rounded towards the best and then checked along the whole way. */
static bool
solve_by(
    question *q, int by, double best, double now, double grain, double most, double *ret_at)
{
    q->by = by;
    q->target = most * ROOM;
    for (int tries = 0; tries < TRIES; tries++) {
        double at;
        change c;

        if (!mend_all(q, best, now, &at))
            return false;
        at = best < now ? fmax(floor((at - TOLERANCE) / grain) * grain, best)
                        : fmin(ceil((at + TOLERANCE) / grain) * grain, best);
        c = change_of(q, at);
        if (holds_all_the_way(q, &c, most)) {
            *ret_at = at;
            return true;
        }
        q->target *= TIGHTER;
    }
    return false;
}

void
hs_body_remedy_solve(const hs_asking *asking,
                     int bearer,
                     hs_body_ratio ratio,
                     double target,
                     hs_finding *finding)
{
    question q = {asking, bearer, ratio, target * ROOM, {INFINITY, 0.0, 1.0}, BY_REACH, 0};
    double reach_m, height_m, load_kg = asking->load->mass_kg, at;

    if (asking->is_live || asking->is_what_if)
        return;
    find_extent(&q, &reach_m, &height_m);
    if (reach_m > LEAST_REACH_m &&
        solve_by(&q, BY_REACH, LEAST_REACH_m, reach_m, GRAIN_m, target, &at))
        finding->remedy = HS_SAY(body_remedy_reach, at, reach_m);
    else if (height_m < BEST_HEIGHT_m &&
             solve_by(&q, BY_HEIGHT, BEST_HEIGHT_m, height_m, GRAIN_m, target, &at))
        finding->remedy = HS_SAY(body_remedy_height, at, height_m);
    else if (solve_by(&q, BY_MASS, LEAST_PART, 1.0, GRAIN_kg / load_kg, target, &at))
        finding->remedy = HS_SAY(body_remedy_mass, at * load_kg, load_kg);
    else
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

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what change of turn, reach, height, mass or stance would bring a figure of the body to its limit?
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
    bool stands; /* who knelt stands up */
} change;

enum {
    BY_REACH,
    BY_HEIGHT,
    BY_MASS
};

typedef struct {
    const hs_asking *asking;
    const hs_body_asked *asked;
    double target;
    change base;
    int by, station, bearer;
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

/* Does the check judge this place at all, so that it can be near or beyond there? */
static bool
is_judged(const question *q, int s, int b)
{
    const hs_station *station = &q->asking->run->stations[s];

    return !q->asked->is_spine ||
           (!station->bearers[b].input.is_one_handed &&
            hs_body_turn_deg(q->asking, &station->place) <= HS_TURN_SCOPE_deg);
}

/* The input of a place after a change; false: what the suit makes of it cannot be told. */
static bool
input_after(const question *q, int s, int b, const change *c, hs_body_input *ret_input)
{
    const hs_run *run = q->asking->run;
    const hs_suit *suit = run->setup->bearers[b].suit;
    hs_body_input in = run->stations[s].bearers[b].input;
    double hand_N = (in.felt_N + in.rest_N) * c->part;
    hs_felt felt;

    in.hand_x_m = fmin(in.hand_x_m, c->reach_most_m);
    in.hand_z_m = fmax(in.hand_z_m, c->height_least_m);
    if (c->stands)
        in.stance = HS_STANCE_STANDING;
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
ratio_after(const question *q, const change *c)
{
    const hs_run *run = q->asking->run;
    const hs_bearer_state *now = &run->stations[q->station].bearers[q->bearer];
    hs_body_input in;
    hs_body_state body;

    if (!input_after(q, q->station, q->bearer, c, &in) ||
        hs_posture_find(&run->persons[q->bearer], &in, now->body.is_found ? &now->body : NULL,
                        &body) != HS_OK ||
        !body.is_found)
        return HARDLY_ANY;
    return q->asked->ratio(q->asking, q->bearer, &body);
}

/* Postures at the even places of one stance from s on, then at those that were put between; the next place to start from, -1 on an
 * error. */
static int
find_stance(const question *q, int b, int s, const hs_body_input *inputs, hs_body_state *states)
{
    const hs_run *run = q->asking->run;
    hs_body_input *even = HS_NEW(q->asking->arena, hs_body_input, run->n_stations);
    hs_body_state *at = HS_NEW(q->asking->arena, hs_body_state, run->n_stations);
    int n = 0, end = s;

    for (; end < run->n_stations && inputs[end].stance == inputs[s].stance; end++)
        if (!run->stations[end].is_between)
            even[n++] = inputs[end];
    if (hs_posture_leg(&run->persons[b], even, n, q->asking->arena, at) != HS_OK)
        return -1;
    for (n = 0; s < end; s++) {
        if (!run->stations[s].is_between)
            states[s] = at[n++];
        else
            hs_posture_between(&run->persons[b], &inputs[s], &states[s - 1], &at[n],
                               &states[s]);
    }
    return end;
}

static bool
find_bodies(const question *q, int b, const hs_body_input *inputs, hs_body_state *states)
{
    int s = 0;

    while (s >= 0 && s < q->asking->run->n_stations)
        s = find_stance(q, b, s, inputs, states);
    return s >= 0;
}

/* One bearer along the whole way, as it would be assessed; a bearer whose body cannot be asked is never within. */
static bool
holds_for(const question *q, int b, const change *c, double most)
{
    const hs_run *run = q->asking->run;
    hs_mark mark = hs_arena_mark(q->asking->arena);
    hs_body_input *inputs = HS_NEW(q->asking->arena, hs_body_input, run->n_stations);
    hs_body_state *states = HS_NEW(q->asking->arena, hs_body_state, run->n_stations);
    bool holds = true;

    for (int s = 0; s < run->n_stations && holds; s++)
        holds = run->stations[s].bearers[b].has_body && input_after(q, s, b, c, &inputs[s]);
    holds = holds && find_bodies(q, b, inputs, states);
    for (int s = 0; s < run->n_stations && holds; s++)
        holds = !is_judged(q, s, b) ||
                (states[s].is_found && q->asked->ratio(q->asking, b, &states[s]) < most);
    hs_arena_release(q->asking->arena, mark);
    return holds;
}

static bool
holds_for_all(const question *q, const change *c, double most)
{
    bool holds = true;

    for (int b = 0; b < q->asking->run->setup->n_bearers && holds; b++)
        holds = holds_for(q, b, c, most);
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

static int
n_places(const question *q)
{
    return q->asking->run->n_stations * q->asking->run->setup->n_bearers;
}

/* Place k: every bearer at every station. */
static const hs_bearer_state *
look_at(question *q, int k)
{
    q->station = k / q->asking->run->setup->n_bearers;
    q->bearer = k % q->asking->run->setup->n_bearers;
    return &q->asking->run->stations[q->station].bearers[q->bearer];
}

/* The ratio now of a place above the target, so that a change has to mend it; else 0. */
static double
to_mend(question *q, int k)
{
    const hs_bearer_state *state = look_at(q, k);
    double ratio =
        state->body.is_found ? q->asked->ratio(q->asking, q->bearer, &state->body) : HARDLY_ANY;

    return ratio > q->target && !hs_body_is_missing(state) &&
                   is_judged(q, q->station, q->bearer)
               ? ratio
               : 0.0;
}

/* Ratio of one place after the change, less the target. */
static double
over_target(double x, void *data)
{
    const question *q = data;
    change c = change_of(q, x);

    return ratio_after(q, &c) - q->target;
}

static int
worst_place(question *q)
{
    double most = 0.0;
    int worst = 0;

    for (int k = 0; k < n_places(q); k++) {
        double ratio = to_mend(q, k);

        if (ratio > most) {
            most = ratio;
            worst = k;
        }
    }
    return worst;
}

/* Where every place that needs it is mended: the worst place first, then a step towards `best` for each that is not yet. Most are
 * mended with the worst, so that one look at them is enough. */
static bool
mend_all(question *q, double best, double now, double *ret_at)
{
    int n = n_places(q), first = worst_place(q);
    double at = now;

    for (int k = 0; k < n; k++) {
        double low, high;

        if (!(to_mend(q, (first + k) % n) > 0.0) || !(over_target(at, q) > 0.0))
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
find_extent(question *q, double *ret_reach_m, double *ret_height_m)
{
    *ret_reach_m = 0.0;
    *ret_height_m = (double)INFINITY;
    for (int k = 0; k < n_places(q); k++) {
        const hs_bearer_state *state = look_at(q, k);

        if (!(to_mend(q, k) > 0.0))
            continue;
        *ret_reach_m = fmax(*ret_reach_m, state->input.hand_x_m);
        *ret_height_m = fmin(*ret_height_m, state->input.hand_z_m);
    }
}

/* One way of changing, from the best to the present; rounded towards the best and then checked along the whole way. */
static bool
solve_by(question *q, int by, double best, double now, double grain, double *ret_at)
{
    double most = q->asked->target * ROOM;

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
        if (holds_for_all(q, &c, most)) {
            *ret_at = at;
            return true;
        }
        q->target *= TIGHTER;
    }
    return false;
}

/* turned_deg: the greatest turn, where less of it is part of the remedy; 0 where not. */
static hs_message
say(hs_reason plain, hs_reason with_turn, double at, double now, double turned_deg)
{
    hs_message ret = HS_SAY(none, at, now, HS_TURN_FREE_deg, turned_deg);

    ret.reason = turned_deg > 0.0 ? with_turn : plain;
    return ret;
}

static hs_message
say_change(question *q, double turned_deg)
{
    double reach_m, height_m, load_kg = q->asking->load->mass_kg, at;

    find_extent(q, &reach_m, &height_m);
    if (reach_m > LEAST_REACH_m && solve_by(q, BY_REACH, LEAST_REACH_m, reach_m, GRAIN_m, &at))
        return say(HS_REASON_body_remedy_reach, HS_REASON_body_remedy_turn_reach, at, reach_m,
                   turned_deg);
    if (height_m < BEST_HEIGHT_m &&
        solve_by(q, BY_HEIGHT, BEST_HEIGHT_m, height_m, GRAIN_m, &at))
        return say(HS_REASON_body_remedy_height, HS_REASON_body_remedy_turn_height, at,
                   height_m, turned_deg);
    if (solve_by(q, BY_MASS, LEAST_PART, 1.0, GRAIN_kg / load_kg, &at))
        return say(HS_REASON_body_remedy_mass, HS_REASON_body_remedy_turn_mass, at * load_kg,
                   load_kg, turned_deg);
    return HS_SAY(body_remedy_none);
}

/* The greatest turn of a place that caps a finding at near; 0: none. */
static double
capping_turn_deg(const hs_asking *asking, const hs_body_asked *asked)
{
    double most_deg = 0.0;

    for (int s = 0; s < asking->run->n_stations && asked->is_spine; s++)
        most_deg = fmax(most_deg, hs_body_turn_deg(asking, &asking->run->stations[s].place));
    return most_deg > HS_TURN_FREE_deg ? most_deg : 0.0;
}

static bool
someone_kneels(const hs_run *run)
{
    for (int s = 0; s < run->n_stations; s++)
        for (int b = 0; b < run->setup->n_bearers; b++)
            if (run->stations[s].bearers[b].input.stance == HS_STANCE_KNEELING)
                return true;
    return false;
}

/* The same with no turn over what counts as none. A turn changes no posture and no force, only what is judged. */
static hs_asking
straight(const hs_asking *asking)
{
    hs_asking ret = *asking;
    const hs_route *route = &asking->task->route;
    hs_task *task = HS_NEW(asking->arena, hs_task, 1);
    hs_point *points = HS_NEW(asking->arena, hs_point, route->n_points);

    *task = *asking->task;
    for (int i = 0; i < route->n_points; i++) {
        points[i] = route->points[i];
        points[i].turn_deg =
            fmax(fmin(hs_or(points[i].turn_deg, 0.0), HS_TURN_FREE_deg), -HS_TURN_FREE_deg);
    }
    task->route.points = points;
    ret.task = task;
    ret.is_what_if = true;
    return ret;
}

/* Standing in place of kneeling, all else as it is. */
static hs_message
say_standing(question *q, double turned_deg)
{
    change c = q->base;

    c.stands = true;
    if (turned_deg > 0.0 || !holds_for_all(q, &c, q->asked->target * ROOM))
        return HS_SAY(body_remedy_kneeling);
    return HS_SAY(body_remedy_stand);
}

void
hs_body_remedy_solve(const hs_asking *asking, const hs_body_asked *asked, hs_finding *finding)
{
    double target = asked->target * ROOM * ROOM, turned_deg = capping_turn_deg(asking, asked);
    question q = {asking, asked, target, {INFINITY, 0.0, 1.0, false}, BY_REACH, 0, 0};
    hs_finding turned_less = hs_finding_start(asking, finding->check);
    hs_asking less;

    if (asking->is_live || asking->is_what_if)
        return;
    if (asked->is_capped_kneeling && someone_kneels(asking->run)) {
        finding->remedy = say_standing(&q, turned_deg);
        return;
    }
    if (turned_deg > 0.0) {
        less = straight(asking);
        hs_body_worst(&less, asked->judge, &turned_less);
        q.asking = &less;
    }
    if (turned_less.status == HS_STATUS_WITHIN)
        finding->remedy = HS_SAY(body_remedy_turn, HS_TURN_FREE_deg, turned_deg);
    else
        finding->remedy = say_change(&q, turned_deg);
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

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  where does a run need more places than its even ones?
 * Answer:    hs_run_put_between(): where a joint turns by more than 10 degrees from one place to the next.
 * Not here:  the even places (runner.c), the posture at a place between two (body/between.c). */
#include "run_between.h"

#include "units.h"

#include <string.h>

#define MOST_TURN_deg 10.0 /* docs/body.md */
#define TURN_EDGE_deg                                                                          \
    1e-6 /* a change that was spread ends exactly at the most: rounding is no jump (numerics) */
#define MOST_HALVINGS 10 /* of the time between two even places: chosen */
#define BEARERS_MOST  8
/* Feet that stand higher or lower by more have stepped over a riser: the hands jump too (file format, section Hands). */
#define RISER_m       0.05

/* Who is where at one place: bodies, and the floor under their feet. */
typedef struct {
    double t_s;
    const hs_body_state *bodies[BEARERS_MOST];
    double floor_m[BEARERS_MOST];
} instant;

/* A place that was put between. */
typedef struct put put;
struct put {
    put *next;
    int after; /* index of the even place before it */
    instant at;
};

typedef struct {
    const hs_run *run;
    hs_run scratch; /* one station */
    hs_arena *arena;
    hs_error *error;
    put *first, *last;
    int n;
} splitting;

static bool
is_jump(const instant *a, const instant *b, int bearer)
{
    const hs_body_state *from = a->bodies[bearer], *to = b->bodies[bearer];

    return from->is_found && to->is_found &&
           !(fabs(a->floor_m[bearer] - b->floor_m[bearer]) > RISER_m) &&
           hs_posture_turn_rad(from, to) > (MOST_TURN_deg + TURN_EDGE_deg) * HS_RAD_PER_DEG;
}

static instant
instant_of(const hs_run *run, int s)
{
    const hs_station *station = &run->stations[s];
    instant ret = {.t_s = station->place.t_s};

    for (int b = 0; b < run->setup->n_bearers; b++) {
        ret.bodies[b] = &station->bearers[b].body;
        ret.floor_m[b] = station->place.bearers[b].floor_z_m;
    }
    return ret;
}

/* What the scratch station has, kept. */
static put *
keep_put(const splitting *it, int after)
{
    int n = it->run->setup->n_bearers;
    hs_body_state *bodies = HS_NEW(it->arena, hs_body_state, n);
    put *made = HS_NEW(it->arena, put, 1);

    made->after = after;
    made->at = instant_of(&it->scratch, 0);
    for (int b = 0; b < n; b++) {
        bodies[b] = *made->at.bodies[b];
        made->at.bodies[b] = &bodies[b];
    }
    return made;
}

/* The place in the middle of two, on the scratch station; *ret_joins: it lies between the postures of somebody who jumps. */
static hs_status
look_between(splitting *it, int after, const instant *from, const instant *to, bool *ret_joins)
{
    const hs_run *run = it->run;
    hs_station *station = &it->scratch.stations[0];

    hs_place_at(run->setup, run->stations[after].place.leg, 0.5 * (from->t_s + to->t_s),
                &station->place);
    for (int b = 0; b < run->setup->n_bearers; b++)
        station->bearers[b].has_body = false;
    HS_TRY(hs_run_forces_at(&it->scratch, 0, false, it->arena, it->error));
    *ret_joins = false;
    for (int b = 0; b < run->setup->n_bearers; b++) {
        hs_bearer_state *state = &station->bearers[b];

        state->body = (hs_body_state){0};
        if (state->has_body && hs_posture_between(&run->persons[b], &state->input,
                                                  from->bodies[b], to->bodies[b], &state->body))
            *ret_joins = *ret_joins || is_jump(from, to, b);
    }
    return HS_OK;
}

static hs_status
split(splitting *it, int after, const instant *from, const instant *to, int halvings)
{
    bool jumps = false, joins;
    put *made;

    for (int b = 0; b < it->run->setup->n_bearers; b++)
        jumps = jumps || is_jump(from, to, b);
    if (!jumps || halvings == 0)
        return HS_OK;
    HS_TRY(look_between(it, after, from, to, &joins));
    if (!joins)
        return HS_OK;
    made = keep_put(it, after);
    HS_TRY(split(it, after, from, &made->at, halvings - 1));
    if (it->last == NULL)
        it->first = made;
    else
        it->last->next = made;
    it->last = made;
    it->n++;
    return split(it, after, &made->at, to, halvings - 1);
}

/* Both are places of one leg, and the load moves. */
static bool
is_one_leg(const hs_station *a, const hs_station *b)
{
    return a->place.leg == b->place.leg && !a->place.in_hold;
}

static bool
walks(const hs_station *station)
{
    return station->place.move == HS_MOVE_CARRY;
}

static hs_status
split_all(splitting *it)
{
    for (int s = 0; s + 1 < it->run->n_stations; s++) {
        instant from = instant_of(it->run, s), to = instant_of(it->run, s + 1);

        if (is_one_leg(&it->run->stations[s], &it->run->stations[s + 1]))
            HS_TRY(split(it, s, &from, &to, MOST_HALVINGS));
    }
    return HS_OK;
}

static hs_run
room_for(const hs_run *run, int n, hs_arena *arena)
{
    hs_run ret = *run;

    ret.n_stations = n;
    ret.stations = HS_NEW(arena, hs_station, n);
    ret.samples = HS_NEW(arena, hs_sample, n);
    ret.bearers = HS_NEW(arena, hs_bearer_sample, (size_t)n * (size_t)run->setup->n_bearers);
    return ret;
}

static void
copy_station(const hs_run *from, int s, hs_run *to, int at)
{
    size_t each = (size_t)from->setup->n_bearers;

    to->stations[at] = from->stations[s];
    to->samples[at] = from->samples[s];
    to->samples[at].bearers = &to->bearers[(size_t)at * each];
    memcpy(&to->bearers[(size_t)at * each], &from->bearers[(size_t)s * each],
           each * sizeof(hs_bearer_sample));
}

static hs_status
gather(const splitting *it, hs_run *run)
{
    hs_run all = room_for(run, run->n_stations + it->n, it->arena);
    const put *next = it->first;
    int at = 0;

    for (int s = 0; s < run->n_stations; s++) {
        copy_station(run, s, &all, at++);
        for (; next != NULL && next->after == s; next = next->next, at++) {
            hs_place_at(run->setup, run->stations[s].place.leg, next->at.t_s,
                        &all.stations[at].place);
            HS_TRY(hs_run_forces_at(&all, at, true, it->arena, it->error));
            all.stations[at].is_between = true;
            for (int b = 0; b < run->setup->n_bearers; b++)
                all.stations[at].bearers[b].body = *next->at.bodies[b];
        }
    }
    *run = all;
    return HS_OK;
}

static void
count_jumps(hs_run *run)
{
    for (int s = 0; s + 1 < run->n_stations; s++) {
        instant from = instant_of(run, s), to = instant_of(run, s + 1);

        if (walks(&run->stations[s]) || !is_one_leg(&run->stations[s], &run->stations[s + 1]))
            continue;
        for (int b = 0; b < run->setup->n_bearers; b++) {
            double turn_rad = hs_posture_turn_rad(from.bodies[b], to.bodies[b]);

            if (!is_jump(&from, &to, b))
                continue;
            run->jumps.n++;
            if (turn_rad > run->jumps.turn_rad)
                run->jumps = (hs_jumps){run->jumps.n, turn_rad, run->stations[s].place.route};
        }
    }
}

hs_status
hs_run_put_between(hs_run *run, hs_arena *arena, hs_error *error)
{
    splitting it = {
        .run = run, .scratch = room_for(run, 1, arena), .arena = arena, .error = error};

    HS_TRY(split_all(&it));
    if (it.n > 0)
        HS_TRY(gather(&it, run));
    count_jumps(run);
    return HS_OK;
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  which way through bent-leg and bent-back postures does a person take along a leg?
 * Answer:    hs_posture_leg(): the cheapest path through the candidates of all places.
 * Not here:  the candidates of one place (posture.c). */
#include "posture.h"

#include "units.h"

#include <string.h>

/* Cost of turning by one radian over a hand's way of 0.05 m: chosen, docs/body.md. */
#define TURN_WEIGHT   0.05
#define TURN_WAY_m    0.05
#define TIE_TOLERANCE 1e-9
/* Joints between neighbouring places; how strongly a change of family is drawn to its end, per rad^2: chosen. */
#define MOST_TURN_deg 10.0
#define TOWARD_WEIGHT 20.0
/* A change that was spread ends exactly at the most that is allowed: rounding must not take it for another jump (numerics). */
#define TURN_EDGE_rad 1e-9

typedef struct {
    hs_posture list[HS_POSTURE_MAX];
    double path[HS_POSTURE_MAX];
    int from[HS_POSTURE_MAX];
    int n;
    hs_posture_lack lack; /* where n is 0 */
    bool is_askable;
} leg_place;

static double
turn_cost(const double a[3], const double b[3], double way_m)
{
    double way = fmax(way_m, TURN_WAY_m) / TURN_WAY_m, sum = 0.0;

    for (int k = 0; k < 3; k++)
        sum += (a[k] - b[k]) * (a[k] - b[k]);
    return TURN_WEIGHT * sum / (way * way);
}

static double
hand_way_m(const hs_body_input *a, const hs_body_input *b)
{
    return hypot(a->hand_x_m - b->hand_x_m, a->hand_z_m - b->hand_z_m);
}

/* Dynamic programme over the candidates; a place without any begins anew. */
static void
find_path(const hs_body_input *inputs, int n, leg_place *places)
{
    for (int i = 0; i < n; i++)
        for (int c = 0; c < places[i].n; c++) {
            bool linked = i > 0 && places[i - 1].n > 0;

            places[i].from[c] = -1;
            places[i].path[c] = linked ? (double)INFINITY : 0.0;
            for (int b = 0; linked && b < places[i - 1].n; b++) {
                double cost =
                    places[i - 1].path[b] + turn_cost(places[i - 1].list[b].angle_rad,
                                                      places[i].list[c].angle_rad,
                                                      hand_way_m(&inputs[i - 1], &inputs[i]));

                if (cost < places[i].path[c] - TIE_TOLERANCE) {
                    places[i].path[c] = cost;
                    places[i].from[c] = b;
                }
            }
            places[i].path[c] += places[i].list[c].cost;
        }
}

/* Places that are searched afresh; between them the postures of both neighbours are followed. */
#define FRESH_EVERY 8

/* A place between two that have nothing: most likely nothing either, and what is missing changes little. */
static void
find_between(const hs_chain *chain,
             const leg_place *before,
             const leg_place *after,
             leg_place *place)
{
    if (before->n == 0 && before->is_askable && after->n == 0)
        place->n = hs_posture_lack_near(chain, &before->lack, place->list, &place->lack);
    else
        place->n = hs_posture_candidates(chain, place->list, &place->lack);
}

static void
find_candidates(const hs_chain *chains, int n, leg_place *places)
{
    for (int i = 0; i < n; i++) {
        places[i].n = 0;
        places[i].is_askable = hs_posture_is_askable(&chains[i]);
        if (!places[i].is_askable)
            continue;
        if (i % FRESH_EVERY == 0 || i == n - 1)
            places[i].n = hs_posture_candidates(&chains[i], places[i].list, &places[i].lack);
        else
            places[i].n = hs_posture_follow(&chains[i], places[i - 1].list, places[i - 1].n,
                                            places[i].list, 0);
    }
    for (int i = n - 2; i > 0; i--)
        if (i % FRESH_EVERY != 0 && places[i].is_askable)
            places[i].n = hs_posture_follow(&chains[i], places[i + 1].list, places[i + 1].n,
                                            places[i].list, places[i].n);
    for (int i = 1; i + 1 < n; i++)
        if (places[i].n == 0 && i % FRESH_EVERY != 0 && places[i].is_askable)
            find_between(&chains[i], &places[i - 1], &places[i + 1], &places[i]);
}

/* The postures in use, one for each place; found false: none reaches and balances. */
typedef struct {
    double angle_rad[3];
    double cost;
    bool is_found;
} leg_choice;

double
hs_posture_leg_turn_rad(const double a[3], const double b[3])
{
    double d0 = a[0] - b[0], d1 = a[1] - b[1], d2 = a[2] - b[2];

    return fmax(fmax(fabs(d0), fabs(d1)), fmax(fabs(d2), fmax(fabs(d0 + d1), fabs(d1 + d2))));
}

/* 10 degrees between neighbours, more where the hands move more than 0.05 m between them. */
static double
allowed_turn_rad(const hs_body_input *a, const hs_body_input *b)
{
    return MOST_TURN_deg * HS_RAD_PER_DEG * fmax(hand_way_m(a, b) / TURN_WAY_m, 1.0);
}

static bool
is_jump(const double a[3], const double b[3], double most_rad)
{
    return hs_posture_leg_turn_rad(a, b) > most_rad + TURN_EDGE_rad;
}

/* Leaves the chosen path at a jump and comes back to it place by place: `step` 1 after the jump, -1 before it. Costs are added
 * up; false where the way is closed. */
static bool
walk_over(const hs_chain *chains,
          const hs_body_input *inputs,
          int n,
          int start,
          int step,
          const leg_choice *from,
          leg_choice *to,
          double *ret_cost)
{
    *ret_cost = 0.0;
    for (int i = start + step; i >= 0 && i < n && from[i].is_found; i += step) {
        const leg_choice *last = i == start + step ? &from[start] : &to[i - step];
        double most_rad = allowed_turn_rad(&inputs[i - step], &inputs[i]);
        hs_posture_tie tie = {.most_rad = most_rad, .pull = TOWARD_WEIGHT};

        if (!is_jump(from[i].angle_rad, last->angle_rad, most_rad))
            return true;
        memcpy(tie.near_rad, last->angle_rad, sizeof tie.near_rad);
        memcpy(tie.toward_rad, from[i].angle_rad, sizeof tie.toward_rad);
        memcpy(to[i].angle_rad, last->angle_rad, sizeof to[i].angle_rad);
        to[i].is_found = hs_posture_polish(&chains[i], &tie, to[i].angle_rad, &to[i].cost);
        if (!to[i].is_found)
            return false;
        *ret_cost += to[i].cost - from[i].cost;
    }
    return true;
}

/* Where two neighbours differ too much, the change is spread over the places after or before it, whichever costs less. */
static void
smooth_path(const hs_chain *chains,
            const hs_body_input *inputs,
            int n,
            leg_choice *chosen,
            leg_choice *after,
            leg_choice *before)
{
    for (int i = 0; i + 1 < n; i++) {
        double later, sooner;
        bool goes_later, goes_sooner;

        if (!chosen[i].is_found || !chosen[i + 1].is_found ||
            !is_jump(chosen[i].angle_rad, chosen[i + 1].angle_rad,
                     allowed_turn_rad(&inputs[i], &inputs[i + 1])))
            continue;
        memcpy(after, chosen, sizeof(leg_choice) * (size_t)n);
        memcpy(before, chosen, sizeof(leg_choice) * (size_t)n);
        goes_later = walk_over(chains, inputs, n, i, 1, chosen, after, &later);
        goes_sooner = walk_over(chains, inputs, n, i + 1, -1, chosen, before, &sooner);
        if (goes_sooner && (!goes_later || sooner < later))
            memcpy(chosen, before, sizeof(leg_choice) * (size_t)n);
        else if (goes_later)
            memcpy(chosen, after, sizeof(leg_choice) * (size_t)n);
    }
}

/* Of equal ends the one with bent legs. */
static int
best_end(const leg_place *place)
{
    int best = 0;

    for (int c = 1; c < place->n; c++)
        if (place->path[c] < place->path[best] - TIE_TOLERANCE ||
            (place->path[c] < place->path[best] + TIE_TOLERANCE &&
             place->list[c].family < place->list[best].family))
            best = c;
    return best;
}

static void
fill_other(const hs_chain *chain, const leg_place *place, hs_body_state *state)
{
    for (int c = 0; c < place->n; c++)
        if (place->list[c].family != state->family) {
            hs_body_state other = {0};

            hs_chain_fill(chain, place->list[c].angle_rad, &other);
            state->other_compression_N = other.compression_N;
            return;
        }
}

static void
choose_path(const leg_place *places, int n, leg_choice *chosen)
{
    int at = -1;

    for (int i = n - 1; i >= 0; i--) {
        chosen[i].is_found = places[i].n > 0;
        if (!chosen[i].is_found) {
            at = -1;
            continue;
        }
        if (at < 0)
            at = best_end(&places[i]);
        memcpy(chosen[i].angle_rad, places[i].list[at].angle_rad, sizeof chosen[i].angle_rad);
        chosen[i].cost = places[i].list[at].cost;
        at = places[i].from[at];
    }
}

hs_status
hs_posture_leg(const hs_person *person,
               const hs_body_input *inputs,
               int n,
               hs_arena *arena,
               hs_body_state *states)
{
    hs_mark mark = hs_arena_mark(arena);
    leg_place *places = HS_NEW(arena, leg_place, n > 0 ? n : 1);
    hs_chain *chains = HS_NEW(arena, hs_chain, n > 0 ? n : 1);
    leg_choice *chosen = HS_NEW(arena, leg_choice, 3 * (n > 0 ? n : 1));

    for (int i = 0; i < n; i++)
        hs_chain_set(person, &inputs[i], &chains[i]);
    find_candidates(chains, n, places);
    find_path(inputs, n, places);
    choose_path(places, n, chosen);
    smooth_path(chains, inputs, n, chosen, chosen + n, chosen + 2 * n);
    for (int i = 0; i < n; i++) {
        states[i] = (hs_body_state){.other_compression_N = HS_ABSENT};
        if (!chosen[i].is_found) {
            hs_posture_fill_lack(&chains[i], places[i].is_askable ? &places[i].lack : NULL,
                                 &states[i]);
            continue;
        }
        states[i].is_found = states[i].reaches = true;
        hs_chain_fill(&chains[i], chosen[i].angle_rad, &states[i]);
        states[i].family = hs_posture_family(chosen[i].angle_rad);
        fill_other(&chains[i], &places[i], &states[i]);
    }
    hs_arena_release(arena, mark);
    return HS_OK;
}

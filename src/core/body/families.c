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

typedef struct {
    hs_posture list[HS_POSTURE_MAX];
    double path[HS_POSTURE_MAX];
    int from[HS_POSTURE_MAX];
    int n;
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
    int chosen = -1;

    for (int i = 0; i < n; i++) {
        hs_chain_set(person, &inputs[i], &chains[i]);
        places[i].n = hs_posture_is_askable(&chains[i])
                          ? hs_posture_candidates(&chains[i], places[i].list)
                          : 0;
    }
    find_path(inputs, n, places);
    for (int i = n - 1; i >= 0; i--) {
        states[i] = (hs_body_state){.other_compression_N = HS_ABSENT};
        if (places[i].n == 0) {
            hs_posture_missing(&chains[i], &states[i]);
            chosen = -1;
            continue;
        }
        if (chosen < 0)
            chosen = best_end(&places[i]);
        states[i].is_found = states[i].reaches = true;
        hs_chain_fill(&chains[i], places[i].list[chosen].angle_rad, &states[i]);
        states[i].family = places[i].list[chosen].family;
        fill_other(&chains[i], &places[i], &states[i]);
        chosen = places[i].from[chosen];
    }
    hs_arena_release(arena, mark);
    return HS_OK;
}

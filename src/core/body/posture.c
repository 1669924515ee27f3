/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  in which posture does a person hold a load at a place?
 * Answer:    hs_posture_find(): the least sum of squared efforts over six joints, with joint limits, reach, belly and balance
 *            as true constraints.
 * Not here:  the path along a leg (families.c), the moments (chain.c). */
#include "posture.h"

#include "posture_memo.h"
#include "units.h"

#include <string.h>

#define ROOM_EXACT_m 1e-9 /* constraints hold to this */
#define EDGE_m                                                                                 \
    1e-7 /* kept off the edge of balance, so that rounding never puts a posture outside */
#define ROUGH_ROOM_m     1e-6 /* and this much is nothing where only feasibility is sought */
#define NEAR_rad         0.25
#define N_STARTS         4
#define SETTLED_rad      1e-7
/* Grid points whose grip is further out of reach are no start; the penalty of the others: numerics. */
#define FAR_OUT_m        0.12
#define FAR_OUT_COST     1000.0
#define PENALTY          400.0
#define LARGEST_STEP_rad 0.35

int
hs_posture_family(const double angle_rad[3])
{
    double knee_rad = angle_rad[0] + angle_rad[1];

    return angle_rad[2] > fmax(knee_rad, 30.0 * HS_RAD_PER_DEG) ? 1 : 0;
}

static bool
descend(hs_effort *s, double x[3], double *ret_cost, double *ret_room)
{
    hs_descent_problem problem = {.ask = hs_effort_ask,
                                  .data = s,
                                  .most_steps = 50,
                                  .step_rad = LARGEST_STEP_rad,
                                  .until_rad = SETTLED_rad};
    double start = x[0];
    bool settled = hs_descent(&problem, x, ret_cost, ret_room);

    if (s->chain->kneels)
        x[0] = start;
    return settled;
}

static hs_effort
search_for(const hs_chain *chain, const hs_posture_tie *tie, hs_effort_aim aim)
{
    hs_effort ret = {.chain = chain, .tie = tie, .aim = aim};

    hs_balance_line(chain->person, chain->input, &ret.rear_m, &ret.front_m);
    hs_balance_ease_set(chain->person, chain->input, &ret.ease);
    ret.rear_m += aim == HS_EFFORT_BALANCE ? HS_EFFORT_INSIDE_m : EDGE_m;
    ret.front_m -= aim == HS_EFFORT_BALANCE ? HS_EFFORT_INSIDE_m : EDGE_m;
    return ret;
}

/* Down to the least effort from a start; what was gone down once is remembered. */
static void
descend_known(const hs_chain *chain,
              const hs_posture_tie *tie,
              double x[3],
              double *ret_cost,
              double *ret_room)
{
    struct {
        double x[3], cost, room;
    } end;
    hs_posture_key key;

    hs_posture_key_set(&key, HS_POSTURE_ASKED_DOWN, chain, tie, x);
    if (!hs_posture_key_find(&key, &end, sizeof end)) {
        hs_effort s = search_for(chain, tie, HS_EFFORT_LEAST);

        memcpy(end.x, x, sizeof end.x);
        descend(&s, end.x, &end.cost, &end.room);
        hs_posture_key_keep(&key, &end, sizeof end);
    }
    memcpy(x, end.x, sizeof end.x);
    *ret_cost = end.cost;
    *ret_room = end.room;
}

bool
hs_posture_polish(const hs_chain *chain,
                  const hs_posture_tie *tie,
                  double angle_rad[3],
                  double *ret_cost)
{
    double room;

    descend_known(chain, tie, angle_rad, ret_cost, &room);
    return room >= -ROOM_EXACT_m && isfinite(*ret_cost);
}

enum {
    N_SHANK = 4,
    N_KNEE = 6,
    N_TRUNK = 8
};
static const double shank_grid_deg[N_SHANK] = {-5.0, 5.0, 15.0, 27.0};
static const double knee_grid_deg[N_KNEE] = {3.0, 22.0, 45.0, 70.0, 95.0, 125.0};
static const double trunk_grid_deg[N_TRUNK] = {-5.0, 10.0, 25.0, 40.0, 55.0, 70.0, 85.0, 100.0};

static void
grid_angles(const hs_chain *chain, int i, int j, int k, double x[3])
{
    x[0] = chain->kneels ? HS_PI / 2.0 : shank_grid_deg[i] * HS_RAD_PER_DEG;
    x[1] = knee_grid_deg[j] * HS_RAD_PER_DEG - x[0];
    x[2] = trunk_grid_deg[k] * HS_RAD_PER_DEG;
}

/* How much too far or too near the grip is for the arm, without the rest of the chain. */
static double
arm_miss_m(const hs_chain *chain, const hs_chain_turn turn[3])
{
    const hs_person *p = chain->person;
    double sx = p->shank_m * turn[0].y - p->thigh_m * turn[1].y + p->trunk_m * turn[2].y;
    double sz = p->ankle_height_m + p->shank_m * turn[0].x + p->thigh_m * turn[1].x +
                p->trunk_m * turn[2].x;
    double distance_m = hypot(chain->input->hand_x_m - sx, chain->input->hand_z_m - sz);

    return fmax(distance_m - p->upper_arm_m - p->forearm_m, 0.0);
}

/* Effort with broken constraints added: only to choose starts, never to end on. */
static double
rough_cost(const hs_effort *s, const double x[3], const hs_chain_turn turn[3])
{
    double miss_m = arm_miss_m(s->chain, turn);

    if (s->aim == HS_EFFORT_LEAST && miss_m > FAR_OUT_m)
        return FAR_OUT_COST + miss_m;
    return hs_effort_rough(s, x, turn, PENALTY);
}

static bool
is_least_around(const double grid[N_SHANK][N_KNEE][N_TRUNK], int n_shank, int i, int j, int k)
{
    for (int a = -1; a <= 1; a++)
        for (int b = -1; b <= 1; b++)
            for (int c = -1; c <= 1; c++) {
                int ii = i + a, jj = j + b, kk = k + c;

                if (ii >= 0 && ii < n_shank && jj >= 0 && jj < N_KNEE && kk >= 0 &&
                    kk < N_TRUNK && grid[ii][jj][kk] < grid[i][j][k])
                    return false;
            }
    return true;
}

static void
fill_grid(const hs_effort *s, int n_shank, double grid[N_SHANK][N_KNEE][N_TRUNK])
{
    hs_chain_turn trunk[N_TRUNK];

    for (int k = 0; k < N_TRUNK; k++)
        trunk[k] = hs_chain_turn_of(trunk_grid_deg[k] * HS_RAD_PER_DEG);
    for (int i = 0; i < n_shank; i++)
        for (int j = 0; j < N_KNEE; j++) {
            hs_chain_turn turn[3];
            double x[3];

            grid_angles(s->chain, i, j, 0, x);
            turn[0] = hs_chain_turn_of(x[0]);
            turn[1] = hs_chain_turn_of(x[1]);
            for (int k = 0; k < N_TRUNK; k++) {
                x[2] = trunk_grid_deg[k] * HS_RAD_PER_DEG;
                turn[2] = trunk[k];
                grid[i][j][k] = rough_cost(s, x, turn);
            }
        }
}

/* Starts: the least points of a coarse grid, cheapest first. */
static int
find_starts(hs_effort *s, double starts[HS_POSTURE_MAX][3])
{
    double grid[N_SHANK][N_KNEE][N_TRUNK], costs[HS_POSTURE_MAX];
    int n_shank = s->chain->kneels ? 1 : N_SHANK, n = 0;

    fill_grid(s, n_shank, grid);
    for (int i = 0; i < n_shank; i++)
        for (int j = 0; j < N_KNEE; j++)
            for (int k = 0; k < N_TRUNK; k++) {
                int at;

                if (!is_least_around((const double(*)[N_KNEE][N_TRUNK])grid, n_shank, i, j, k))
                    continue;
                for (at = n < HS_POSTURE_MAX ? n++ : HS_POSTURE_MAX;
                     at > 0 && costs[at - 1] > grid[i][j][k]; at--)
                    if (at < HS_POSTURE_MAX) {
                        costs[at] = costs[at - 1];
                        memcpy(starts[at], starts[at - 1], sizeof starts[at]);
                    }
                if (at < HS_POSTURE_MAX) {
                    costs[at] = grid[i][j][k];
                    grid_angles(s->chain, i, j, k, starts[at]);
                }
            }
    return n;
}

static bool
is_known(const hs_posture *list, int n, const double x[3])
{
    for (int i = 0; i < n; i++)
        if (fabs(list[i].angle_rad[0] - x[0]) + fabs(list[i].angle_rad[1] - x[1]) +
                fabs(list[i].angle_rad[2] - x[2]) <
            0.02)
            return true;
    return false;
}

/* The least of an aim's shortfall: from the starts of a grid, or from one place. */
static double
best_of(hs_effort *s, const double *from, double best[3])
{
    double starts[HS_POSTURE_MAX][3], least = INFINITY;
    int n = 1;

    if (from != NULL)
        memcpy(starts[0], from, sizeof starts[0]);
    else
        n = find_starts(s, starts);
    for (int i = 0; i < n && i < N_STARTS && !(least < ROUGH_ROOM_m * ROUGH_ROOM_m); i++) {
        double cost, room;

        descend(s, starts[i], &cost, &room);
        if (room >= -ROUGH_ROOM_m && cost < least) {
            least = cost;
            memcpy(best, starts[i], sizeof starts[i]);
        }
    }
    return sqrt(least);
}

/* Adds a settled posture to the list, cheapest first, unless it is there already. */
static int
keep(hs_posture *list, int n, const double x[3], double cost, double room)
{
    int at;

    if (!(room >= -ROOM_EXACT_m) || !isfinite(cost) || n == HS_POSTURE_MAX ||
        is_known(list, n, x))
        return n;
    for (at = n; at > 0 && list[at - 1].cost > cost; at--)
        list[at] = list[at - 1];
    memcpy(list[at].angle_rad, x, sizeof list[at].angle_rad);
    list[at].cost = cost;
    list[at].family = hs_posture_family(x);
    return n + 1;
}

/* The way in through feasibility alone: into reach, then into balance, then to the least effort. */
static int
enter(const hs_chain *chain, const double *from, hs_posture *list, hs_posture_lack *lack)
{
    hs_effort reach = search_for(chain, NULL, HS_EFFORT_REACH),
              balance = search_for(chain, NULL, HS_EFFORT_BALANCE);
    hs_effort effort = search_for(chain, NULL, HS_EFFORT_LEAST);
    double x[3], stood_m, cost, room;

    *lack = (hs_posture_lack){.angle_rad = {chain->kneels ? HS_PI / 2.0 : 0.0, 0.0, 0.0}};
    lack->short_m = best_of(&reach, from, lack->angle_rad);
    if (!(lack->short_m < ROUGH_ROOM_m))
        return 0;
    memcpy(x, lack->angle_rad, sizeof x);
    stood_m = best_of(&balance, x, x);
    if (!(stood_m < ROUGH_ROOM_m)) {
        double other[3], other_m = best_of(&balance, NULL, other);

        if (other_m < stood_m || !isfinite(stood_m)) {
            stood_m = other_m;
            memcpy(x, other, sizeof x);
        }
    }
    /* Joint limits may forbid what the arm's length allows: then no pose reaches after all. */
    lack->reaches = isfinite(stood_m);
    lack->short_m = lack->reaches ? stood_m : 0.0;
    if (!lack->reaches)
        return 0;
    memcpy(lack->angle_rad, x, sizeof x);
    if (!(stood_m < ROUGH_ROOM_m))
        return 0;
    descend(&effort, x, &cost, &room);
    return keep(list, 0, x, cost, room);
}

/* What a search found, as it is remembered. */
typedef struct {
    hs_posture list[HS_POSTURE_MAX];
    hs_posture_lack lack;
    int n;
} found;

static int
search_fresh(const hs_chain *chain, hs_posture ret[HS_POSTURE_MAX], hs_posture_lack *ret_lack)
{
    hs_effort s = search_for(chain, NULL, HS_EFFORT_LEAST);
    double starts[HS_POSTURE_MAX][3];
    int n = 0, n_starts = find_starts(&s, starts);

    for (int i = 0; i < n_starts && i < N_STARTS; i++) {
        double cost, room;

        descend(&s, starts[i], &cost, &room);
        n = keep(ret, n, starts[i], cost, room);
    }
    return n > 0 ? n : enter(chain, NULL, ret, ret_lack);
}

/* Afresh, or near a neighbour's lack. */
static int
search_known(const hs_chain *chain,
             const hs_posture_lack *from,
             hs_posture ret[HS_POSTURE_MAX],
             hs_posture_lack *ret_lack)
{
    hs_posture_key key;
    found now = {0};

    hs_posture_key_set(&key, from == NULL ? HS_POSTURE_ASKED_FRESH : HS_POSTURE_ASKED_NEAR,
                       chain, NULL, from != NULL ? from->angle_rad : NULL);
    if (!hs_posture_key_find(&key, &now, sizeof now)) {
        now.n = from == NULL ? search_fresh(chain, now.list, &now.lack)
                             : enter(chain, from->angle_rad, now.list, &now.lack);
        hs_posture_key_keep(&key, &now, sizeof now);
    }
    memcpy(ret, now.list, sizeof(hs_posture) * (size_t)now.n);
    *ret_lack = now.lack;
    return now.n;
}

int
hs_posture_candidates(const hs_chain *chain,
                      hs_posture ret[HS_POSTURE_MAX],
                      hs_posture_lack *ret_lack)
{
    return search_known(chain, NULL, ret, ret_lack);
}

int
hs_posture_lack_near(const hs_chain *chain,
                     const hs_posture_lack *from,
                     hs_posture ret[HS_POSTURE_MAX],
                     hs_posture_lack *ret_lack)
{
    return search_known(chain, from, ret, ret_lack);
}

/* A posture of the same family close to it is known already: following it would end there. */
static bool
is_near(const hs_posture *list, int n, const hs_posture *it)
{
    for (int i = 0; i < n; i++)
        if (list[i].family == it->family &&
            fabs(list[i].angle_rad[0] - it->angle_rad[0]) < NEAR_rad &&
            fabs(list[i].angle_rad[1] - it->angle_rad[1]) < NEAR_rad &&
            fabs(list[i].angle_rad[2] - it->angle_rad[2]) < NEAR_rad)
            return true;
    return false;
}

int
hs_posture_follow(
    const hs_chain *chain, const hs_posture *from, int n_from, hs_posture *list, int n)
{
    for (int i = 0; i < n_from; i++) {
        double x[3], cost, room;

        if (is_near(list, n, &from[i]))
            continue;
        memcpy(x, from[i].angle_rad, sizeof x);
        if (chain->kneels)
            x[0] = HS_PI / 2.0;
        descend_known(chain, NULL, x, &cost, &room);
        n = keep(list, n, x, cost, room);
    }
    return n;
}

static void
forget_figures(hs_body_state *state)
{
    for (int j = 0; j < HS_N_JOINTS; j++)
        state->moment_Nm[j] = state->strength_Nm[j] = state->utilisation[j] = HS_ABSENT;
    state->greatest = state->l5s1_moment_Nm = state->compression_N = state->shear_N =
        state->shear_other_N = HS_ABSENT;
    state->muscle_N = state->weight_above_N = state->disc_rad = state->arm_m = HS_ABSENT;
}

void
hs_posture_fill_lack(const hs_chain *chain, const hs_posture_lack *lack, hs_body_state *state)
{
    *state = (hs_body_state){.other_compression_N = HS_ABSENT};
    if (lack == NULL) {
        forget_figures(state);
        state->shortfall_m = state->zmp_m = state->margin_m = state->balance_ratio =
            state->ground_N = HS_ABSENT;
        return;
    }
    hs_chain_fill(chain, lack->angle_rad, state);
    state->is_found = false;
    state->reaches = lack->reaches;
    state->shortfall_m = lack->short_m;
    state->family = hs_posture_family(lack->angle_rad);
    if (!state->reaches)
        forget_figures(state);
}

bool
hs_posture_is_askable(const hs_chain *chain)
{
    return isfinite(chain->ground_N) && isfinite(chain->hands_floor_Nm) &&
           isfinite(chain->suit_floor_Nm) && isfinite(chain->frame_N) &&
           isfinite(chain->tilt) &&
           (chain->input->suit.kind != HS_SUIT_POWERED ||
            isfinite(chain->input->suit.gain_trunk + chain->input->suit.residual_trunk_N));
}

static double
compression_of(const hs_chain *chain, const double angle_rad[3])
{
    hs_body_state state = {0};

    hs_chain_fill(chain, angle_rad, &state);
    return state.compression_N;
}

hs_status
hs_posture_find(const hs_person *person,
                const hs_body_input *input,
                const hs_body_state *hint,
                hs_body_state *ret_state)
{
    hs_chain chain;
    hs_posture list[HS_POSTURE_MAX];
    hs_body_state state = {.other_compression_N = HS_ABSENT};
    hs_posture_lack lack;
    int n = 0;

    hs_chain_set(person, input, &chain);
    if (!hs_posture_is_askable(&chain)) {
        hs_posture_fill_lack(&chain, NULL, ret_state);
        return HS_OK;
    }
    if (hint != NULL && hint->is_found) {
        double x[3] = {hint->shank_rad, hint->thigh_rad, hint->trunk_rad};

        if (chain.kneels)
            x[0] = HS_PI / 2.0;
        if (hs_posture_polish(&chain, NULL, x, &list[0].cost)) {
            memcpy(list[0].angle_rad, x, sizeof x);
            n = 1;
        }
    }
    if (n == 0)
        n = hs_posture_candidates(&chain, list, &lack);
    if (n == 0) {
        hs_posture_fill_lack(&chain, &lack, ret_state);
        return HS_OK;
    }
    state.is_found = state.reaches = true;
    hs_chain_fill(&chain, list[0].angle_rad, &state);
    state.family = hs_posture_family(list[0].angle_rad);
    for (int i = 1; i < n; i++)
        if (hs_posture_family(list[i].angle_rad) != state.family &&
            !hs_has(state.other_compression_N))
            state.other_compression_N = compression_of(&chain, list[i].angle_rad);
    *ret_state = state;
    return HS_OK;
}

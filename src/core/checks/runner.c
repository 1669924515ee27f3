/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how is one option worked through, place by place?
 * Answer:    hs_run_make(): setup, stations, shares, hands, felt load, bodies, power lost, samples.
 * Not here:  judging (the checks), the order of everything (assess.c). */
#include "runner.h"

#include "floor.h"
#include "power_loss.h"
#include "run_between.h"
#include "units.h"

#include <string.h>

#define LEG_PARTS        16 /* intervals of a leg; the law's extremes lie at two of its inner places */
#define LIVE_PARTS       8  /* while something is dragged; the extremes are still hit */
#define LIVE_RANGE_GRIPS 4  /* least and most shares are cheap up to here */
#define CARRY_PARTS_MOST 48 /* a long carry gets more, so that stairs and folds are smooth */
#define CARRY_PART_s     0.4
#define PEAK_EARLY                                                                             \
    0.21132486540518713 /* (3 - sqrt 3) / 6: greatest acceleration of the minimum-jerk law */
#define BELLY_FREE_REACH_m 0.15 /* file format, section pose */

static int
parts_of(const hs_leg *leg, bool is_live)
{
    if (leg->is_hold)
        return 1;
    if (is_live)
        return LIVE_PARTS;
    if (leg->move != HS_MOVE_CARRY)
        return LEG_PARTS;
    return (int)fmin(fmax(round((leg->end_s - leg->start_s) / CARRY_PART_s), LEG_PARTS),
                     CARRY_PARTS_MOST);
}

/* Place k of n along a leg: even, but the two places nearest the extremes of acceleration are moved onto them. */
static double
part_time_s(const hs_leg *leg, int k, int n)
{
    double u = (double)k / n;

    if (n >= LIVE_PARTS && k == (int)round(PEAK_EARLY * n))
        u = PEAK_EARLY;
    if (n >= LIVE_PARTS && n - k == (int)round(PEAK_EARLY * n))
        u = 1.0 - PEAK_EARLY;
    return k == n ? leg->end_s : leg->start_s + u * (leg->end_s - leg->start_s);
}

static void
make_stations(const hs_setup *setup, bool is_live, hs_arena *arena, hs_run *run)
{
    const hs_motion *motion = &setup->motions[0];
    int n = 0;

    for (int leg = 0; leg < motion->n_legs; leg++)
        n += parts_of(&motion->legs[leg], is_live) + 1;
    run->n_stations = n;
    run->stations = HS_NEW(arena, hs_station, n);
    run->samples = HS_NEW(arena, hs_sample, n);
    run->bearers = HS_NEW(arena, hs_bearer_sample, (size_t)n * (size_t)setup->n_bearers);
    n = 0;
    for (int leg = 0; leg < motion->n_legs; leg++) {
        int parts = parts_of(&motion->legs[leg], is_live);

        for (int k = 0; k <= parts; k++)
            hs_place_at(setup, leg, part_time_s(&motion->legs[leg], k, parts),
                        &run->stations[n++].place);
    }
}

/* Horizontal force of all bearers on the load along the way: inertia, and what sliding takes. */
static double
push_N(const hs_setup *setup, const hs_place *place)
{
    double m_kg = setup->load->mass_kg, push = m_kg * place->cg_acc_m_s2.x;

    if (place->slide_sign != 0.0 && hs_has(place->slide_friction))
        push += place->slide_sign * place->slide_friction * place->held_up * m_kg *
                (HS_GRAVITY_m_s2 + place->cg_acc_m_s2.z);
    return push;
}

/* Moment balance about the CG: grips push with the inertia's share at their height, the load turns with alpha. */
static void
state_problem(const hs_setup *setup,
              const hs_place *place,
              bool moving,
              hs_shares_problem *problem)
{
    const hs_load_state *load = setup->load;
    double a_x = moving ? place->cg_acc_m_s2.x : 0.0, a_z = moving ? place->cg_acc_m_s2.z : 0.0;
    double h_N = load->mass_kg * a_x / setup->n_used, tilt_Nm = 0.0;

    problem->n = setup->n_used;
    problem->total_N = (1.0 - place->held_up) * load->mass_kg * (HS_GRAVITY_m_s2 + a_z);
    problem->total_N = fmax(problem->total_N, 0.0);
    problem->moment_x_Nm = problem->moment_y_Nm = 0.0;
    for (int i = 0; i < setup->n_used; i++) {
        problem->x_m[i] = place->grip_m[i].x - place->cg_m.x;
        problem->y_m[i] = place->grip_m[i].y - place->cg_m.y;
        if (a_x != 0.0)
            tilt_Nm += h_N * (place->grip_m[i].z - place->cg_m.z);
    }
    problem->moment_x_Nm = tilt_Nm;
    if (moving && load->has_inertia && place->pitch_acc_rad_s2 != 0.0) {
        hs_mat3 back = hs_mat3_transpose(&place->load_to_world);
        hs_mat3 turned = hs_mat3_mul(&load->inertia_kg_m2, &back);
        hs_mat3 world = hs_mat3_mul(&place->load_to_world, &turned);
        hs_vec3 axis = {-sin(setup->heading_rad), cos(setup->heading_rad), 0.0};
        hs_vec3 inertia = hs_mat3_apply(&world, axis);

        problem->moment_x_Nm += place->pitch_acc_rad_s2 * inertia.y;
        problem->moment_y_Nm -= place->pitch_acc_rad_s2 * inertia.x;
    }
}

/* Where the CG's height is unknown, shares hold on the level and without acceleration only. */
static bool
can_share(const hs_setup *setup, const hs_place *place)
{
    if (hs_has(setup->load->cg_m.z))
        return true;
    return fabs(place->motion.pitch_rad) < 1e-12 && fabs(place->cg_acc_m_s2.x) < 1e-9 &&
           fabs(place->pitch_acc_rad_s2) < 1e-12;
}

static hs_status
station_shares(const hs_run *run, hs_station *station, double *ret_static_N, hs_error *error)
{
    const hs_place *place = &station->place;
    hs_shares_problem at_rest;
    hs_shares_answer answer;

    station->has_shares = can_share(run->setup, place);
    if (!station->has_shares)
        return HS_OK;
    state_problem(run->setup, place, true, &station->problem);
    HS_TRY(hs_shares(&station->problem, &station->shares, error));
    state_problem(run->setup, place, false, &at_rest);
    HS_TRY(hs_shares(&at_rest, &answer, error));
    for (int i = 0; i < run->setup->n_used; i++)
        ret_static_N[run->setup->used_by[i]] += answer.up_N[i];
    return HS_OK;
}

/* All grips in use hook or strap, and the CG below every one of them: the load hangs and turns by itself. */
static bool
hangs(const hs_setup *setup, const hs_place *place)
{
    for (int i = 0; i < setup->n_used; i++) {
        hs_grip_kind kind = setup->task->load.grips[setup->used[i]].kind;

        if ((kind != HS_GRIP_HOOK && kind != HS_GRIP_STRAP) ||
            !(place->cg_m.z < place->grip_m[i].z))
            return false;
    }
    return true;
}

static bool
at_run_end(const hs_run *run, const hs_place *place)
{
    const hs_motion *motion = &run->setup->motions[0];
    const hs_leg *leg = &motion->legs[place->leg];

    if (place->is_leg_start)
        return motion->velocity[(leg->point - 1) * HS_N_COORDINATES + HS_COORD_X] == 0.0;
    if (place->is_leg_end)
        return motion->velocity[leg->point * HS_N_COORDINATES + HS_COORD_X] == 0.0;
    return false;
}

static hs_stance_kind
stance_at(const hs_option *option, int point)
{
    if (point < option->n_stance && option->stance_each[point] != 0)
        return option->stance_each[point];
    return option->stance != 0 ? option->stance : HS_STANCE_STANDING;
}

/* Sideways place of the force in the hands, from the ankles' midpoint, left of the way the bearer faces. */
static double
side_of_force_m(const hs_run *run, const hs_station *station, int b)
{
    const hs_setup *setup = run->setup;
    double facing = setup->bearers[b].facing_rad, sum_N = 0.0, moment_Nm = 0.0;

    for (int i = 0; i < setup->n_used; i++) {
        double dx, dy;

        if (setup->used_by[i] != b)
            continue;
        dx = station->place.grip_m[i].x - station->place.bearers[b].feet_m.x;
        dy = station->place.grip_m[i].y - station->place.bearers[b].feet_m.y;
        sum_N += station->shares.up_N[i];
        moment_Nm += station->shares.up_N[i] * (-sin(facing) * dx + cos(facing) * dy);
    }
    return sum_N > 0.0 ? moment_Nm / sum_N : 0.0;
}

/* The search for a posture may pass a fork at a change of the last bit, which the order of a sum decides: what it reads is
 * rounded to a billionth, so that a mirrored scene, or the same one told in another order, has the same postures. */
static double
rounded(double value)
{
    return nearbyint(value * 1e9) / 1e9;
}

static void
round_input(hs_body_input *input)
{
    double *const figures[] = {&input->hand_x_m,      &input->hand_z_m, &input->felt_N,
                               &input->push_N,        &input->rest_N,   &input->weight_factor,
                               &input->foot_acc_m_s2, &input->couple_Nm};

    for (size_t i = 0; i < sizeof figures / sizeof figures[0]; i++)
        *figures[i] = rounded(*figures[i]);
}

static void
body_input(const hs_run *run,
           const hs_station *station,
           int b,
           double hand_N,
           double push,
           hs_body_input *input)
{
    const hs_setup *setup = run->setup;
    const hs_bearer_setup *bearer = &setup->bearers[b];
    const hs_bearer_place *at = &station->place.bearers[b];
    const hs_shares_answer *shares = &station->shares;
    double facing_x = cos(bearer->facing_rad), facing_y = sin(bearer->facing_rad);
    double felt_N = station->bearers[b].felt.felt_N;

    *input = (hs_body_input){
        .hand_x_m = at->reach_m,
        .hand_z_m = at->hands_m.z - at->floor_z_m,
        .felt_N = felt_N,
        .push_N = -push * facing_x,
        .rest_N = hand_N - felt_N,
        .weight_factor = at->walking_factor,
        .foot_acc_m_s2 = at->foot_a_m_s2 * facing_x,
        .slope_rad = at->slope_rad,
        .stance = stance_at(setup->option, station->place.point),
        .style = bearer->style,
        .is_one_handed = bearer->is_one_handed,
        .belly_free = bearer->belly_free && at->reach_m < BELLY_FREE_REACH_m,
        .side_m = side_of_force_m(run, station, b),
    };
    hs_suit_model_of(bearer->suit)->in_body(bearer->suit, at->walking_factor, &input->suit);
    if (setup->n_bearers == 1 && shares->is_outside && !hangs(setup, &station->place))
        input->couple_Nm = station->problem.total_N *
                           ((shares->resultant_m.x - shares->nearest_m.x) * facing_x +
                            (shares->resultant_m.y - shares->nearest_m.y) * facing_y);
    if (station->place.move == HS_MOVE_CARRY && !station->place.in_hold &&
        !at_run_end(run, &station->place))
        input->base_ahead_m = input->base_behind_m = setup->task->policy.step_m;
    round_input(input);
}

static void
hands_of(hs_run *run, int s, int b, hs_bearer_sample *sample)
{
    const hs_setup *setup = run->setup;
    hs_station *station = &run->stations[s];
    hs_bearer_state *state = &station->bearers[b];
    const hs_bearer_place *at = &station->place.bearers[b];
    const hs_suit *suit = setup->bearers[b].suit;
    double share_N = 0.0;
    int n_own = 0;

    for (int i = 0; i < setup->n_used; i++)
        if (setup->used_by[i] == b) {
            share_N += station->shares.up_N[i];
            n_own++;
        }
    sample->share_N = share_N;
    sample->hand_force_N = share_N * at->walking_factor;
    sample->hand_push_N = push_N(setup, &station->place) * n_own / setup->n_used;
    sample->ground_force_N =
        at->walking_factor *
            (run->persons[b].mass_kg + (suit != NULL ? hs_or(suit->mass_kg, 0.0) : 0.0)) *
            HS_GRAVITY_m_s2 +
        sample->hand_force_N;
    state->felt = hs_suit_model_of(suit)->felt(suit, sample->hand_force_N, at->reach_m,
                                               at->hands_m.z - at->floor_z_m, NULL);
    if (state->felt.is_missing)
        return;
    sample->felt_force_N = state->felt.felt_N;
    sample->suit_force_N = sample->hand_force_N - state->felt.felt_N;
    if (hs_suit_body_is_missing(suit))
        return;
    body_input(run, station, b, sample->hand_force_N, sample->hand_push_N, &state->input);
    state->has_body = true;
}

static hs_bearer_sample *
sample_of(const hs_run *run, int s, int b)
{
    return &run->bearers[(size_t)s * (size_t)run->setup->n_bearers + (size_t)b];
}

static void
clear_sample(hs_bearer_sample *sample)
{
    double none = HS_ABSENT;

    *sample = (hs_bearer_sample){.share_N = none,
                                 .share_least_N = none,
                                 .share_most_N = none,
                                 .hand_force_N = none,
                                 .hand_push_N = none,
                                 .felt_force_N = none,
                                 .suit_force_N = none,
                                 .ground_force_N = none,
                                 .balance_margin_m = none,
                                 .resultant_m = {none, none},
                                 .l5s1_moment_Nm = none,
                                 .compression_N = none,
                                 .shear_N = none};
    for (int j = 0; j < HS_N_JOINTS; j++)
        sample->joints[j] = (hs_joint_result){none, none, none};
    sample->power_lost.felt_force_N = sample->power_lost.hold_s = sample->power_lost.needed_s =
        none;
}

static hs_status
ranges_of(const hs_run *run,
          const hs_station *station,
          hs_bearer_sample *samples,
          hs_error *error)
{
    const hs_setup *setup = run->setup;

    for (int b = 0; b < setup->n_bearers; b++) {
        bool member[HS_MAX_USED_GRIPS];

        for (int i = 0; i < setup->n_used; i++)
            member[i] = setup->used_by[i] == b;
        HS_TRY(hs_shares_range(&station->problem, member, &samples[b].share_least_N,
                               &samples[b].share_most_N, error));
    }
    return HS_OK;
}

hs_status
hs_run_forces_at(hs_run *run, int s, bool with_ranges, hs_arena *arena, hs_error *error)
{
    const hs_setup *setup = run->setup;
    hs_station *station = &run->stations[s];
    hs_bearer_sample *bearers = sample_of(run, s, 0);
    hs_grip_sample *grips = HS_NEW(arena, hs_grip_sample, setup->n_used);
    double static_N[8] = {0};

    run->samples[s].bearers = bearers;
    for (int b = 0; b < setup->n_bearers; b++) {
        const hs_bearer_place *at = &station->place.bearers[b];

        clear_sample(&bearers[b]);
        bearers[b].feet_x_m = at->feet_m.x;
        bearers[b].feet_y_m = at->feet_m.y;
        bearers[b].floor_z_m = at->floor_z_m;
        bearers[b].facing_rad = setup->bearers[b].facing_rad;
        bearers[b].kneels =
            stance_at(setup->option, station->place.point) == HS_STANCE_KNEELING;
        station->bearers[b].static_share_N = HS_ABSENT;
        station->bearers[b].lost_peak_utilisation = HS_ABSENT;
    }
    HS_TRY(station_shares(run, station, static_N, error));
    if (!station->has_shares)
        return HS_OK;
    for (int i = 0; i < setup->n_used; i++)
        grips[i] = (hs_grip_sample){setup->used[i], station->shares.up_N[i]};
    run->samples[s].grips = grips;
    run->samples[s].n_grips = setup->n_used;
    if (with_ranges)
        HS_TRY(ranges_of(run, station, bearers, error));
    for (int b = 0; b < setup->n_bearers; b++) {
        station->bearers[b].static_share_N = static_N[b];
        hands_of(run, s, b, &bearers[b]);
    }
    return HS_OK;
}

/* Postures of one bearer along the whole route: runs of neighbouring stations with one stance are found together. */
static hs_status
bodies_of(hs_run *run, int b, hs_arena *arena)
{
    hs_mark mark = hs_arena_mark(arena);
    hs_body_input *inputs = HS_NEW(arena, hs_body_input, run->n_stations);
    hs_body_state *states = HS_NEW(arena, hs_body_state, run->n_stations);

    for (int s = 0; s < run->n_stations;) {
        int first = s, n = 0;

        if (!run->stations[s].bearers[b].has_body) {
            s++;
            continue;
        }
        while (s < run->n_stations && run->stations[s].bearers[b].has_body &&
               run->stations[s].bearers[b].input.stance ==
                   run->stations[first].bearers[b].input.stance)
            inputs[n++] = run->stations[s++].bearers[b].input;
        HS_TRY(hs_posture_leg(&run->persons[b], inputs, n, arena, states));
        for (int i = 0; i < n; i++)
            run->stations[first + i].bearers[b].body = states[i];
    }
    hs_arena_release(arena, mark);
    return HS_OK;
}

static void
show_base(const hs_run *run, const hs_bearer_state *state, int b, hs_bearer_sample *sample)
{
    hs_vec2 corners[HS_MAX_BASE];
    double c = cos(sample->facing_rad), s = sin(sample->facing_rad);

    sample->n_base =
        hs_base_hull(&run->persons[b], &state->input.suit, state->input.stance,
                     state->input.base_ahead_m, state->input.base_behind_m, corners);
    for (int i = 0; i < sample->n_base; i++)
        sample->base_m[i] = (hs_vec2){sample->feet_x_m + c * corners[i].x - s * corners[i].y,
                                      sample->feet_y_m + s * corners[i].x + c * corners[i].y};
}

static void
show_body(const hs_run *run, int s, int b)
{
    const hs_station *station = &run->stations[s];
    const hs_bearer_state *state = &station->bearers[b];
    const hs_body_state *body = &state->body;
    hs_bearer_sample *sample = sample_of(run, s, b);
    double c = cos(sample->facing_rad), sn = sin(sample->facing_rad), side_m;

    if (!state->has_body)
        return;
    show_base(run, state, b, sample);
    sample->shortfall_m = body->is_found ? 0.0 : body->shortfall_m;
    if (!body->is_found)
        return;
    sample->has_pose = true;
    memcpy(sample->pose, body->at, sizeof sample->pose);
    for (int j = 0; j < HS_N_JOINTS; j++) {
        sample->joints[j] =
            (hs_joint_result){body->moment_Nm[j], body->strength_Nm[j], body->utilisation[j]};
    }
    sample->l5s1_moment_Nm = body->l5s1_moment_Nm;
    sample->compression_N = body->compression_N;
    sample->shear_N = body->shear_N;
    sample->balance_margin_m = body->margin_m;
    side_m = sample->hand_force_N * state->input.side_m / sample->ground_force_N;
    sample->resultant_m = (hs_vec2){sample->feet_x_m + c * body->zmp_m - sn * side_m,
                                    sample->feet_y_m + sn * body->zmp_m + c * side_m};
}

static void
show_load(const hs_run *run, int s)
{
    const hs_place *place = &run->stations[s].place;
    hs_sample *sample = &run->samples[s];

    sample->t_s = place->t_s;
    sample->route = place->route;
    sample->leg = place->point;
    sample->in_hold = place->in_hold;
    sample->x_m = place->origin_m.x;
    sample->y_m = place->origin_m.y;
    sample->z_m = place->origin_m.z;
    sample->pitch_deg = place->motion.pitch_rad * HS_DEG_PER_RAD;
    sample->heading_deg = place->heading_rad * HS_DEG_PER_RAD;
    sample->a_x_m_s2 = place->cg_acc_m_s2.x;
    sample->a_z_m_s2 = place->cg_acc_m_s2.z;
    sample->v_x_m_s = place->motion.vx_m_s;
    sample->v_z_m_s = place->motion.vz_m_s;
    sample->cg_m = place->cg_m;
}

/* Load, people and suits together; the centre is absent where a body or the CG's height is not known. */
static void
combine(const hs_run *run, int s)
{
    const hs_station *station = &run->stations[s];
    hs_sample *sample = &run->samples[s];
    double mass_kg = run->setup->load->mass_kg;
    hs_vec3 sum = hs_vec3_scale(sample->cg_m, mass_kg);

    bool knows_centre = hs_has(sample->cg_m.z);
    sample->combined_m = (hs_vec3){HS_ABSENT, HS_ABSENT, HS_ABSENT};
    for (int b = 0; b < run->setup->n_bearers; b++) {
        const hs_bearer_state *state = &station->bearers[b];
        const hs_bearer_sample *at = &sample->bearers[b];
        const hs_suit *suit = run->setup->bearers[b].suit;
        double own_kg =
            run->persons[b].mass_kg + (suit != NULL ? hs_or(suit->mass_kg, 0.0) : 0.0);

        mass_kg += own_kg;
        if (!state->has_body || !state->body.is_found) {
            knows_centre = false;
            continue;
        }
        sum.x += own_kg * (at->feet_x_m + cos(at->facing_rad) * state->body.cm_x_m);
        sum.y += own_kg * (at->feet_y_m + sin(at->facing_rad) * state->body.cm_x_m);
        sum.z += own_kg * (at->floor_z_m + state->body.cm_z_m);
    }
    sample->combined_kg = mass_kg;
    if (knows_centre)
        sample->combined_m = hs_vec3_scale(sum, 1.0 / mass_kg);
}

/* What happens where the power fails: the body is found again with what the wearer then has to take. */
static hs_status
power_lost_at(hs_run *run, int s, int b)
{
    const hs_suit *suit = run->setup->bearers[b].suit;
    hs_station *station = &run->stations[s];
    hs_bearer_state *state = &station->bearers[b];
    hs_bearer_sample *sample = sample_of(run, s, b);

    if (suit == NULL || !hs_suit_model_of(suit)->has_power || !station->has_shares)
        return HS_OK;
    if (state->has_body && hs_power_loss_input(run->setup, &station->place, b, &state->input,
                                               sample->hand_force_N, &state->lost_input)) {
        const hs_body_state *hint = state->body.is_found ? &state->body : NULL;

        HS_TRY(hs_posture_find(&run->persons[b], &state->lost_input, hint, &state->lost));
        state->has_lost = true;
    }
    hs_power_loss_at(run, s, b, &sample->power_lost);
    return HS_OK;
}

hs_status
hs_run_make(const hs_task *task,
            const hs_load_state *load,
            const hs_option *option,
            int option_index,
            bool is_live,
            hs_arena *arena,
            hs_assumptions *assumptions,
            hs_run *ret_run,
            hs_error *error)
{
    hs_setup *setup = HS_NEW(arena, hs_setup, 1);
    hs_run run = {.setup = setup, .option = option_index};

    HS_TRY(hs_setup_make(task, load, option, option_index, arena, assumptions, setup, error));
    for (int b = 0; b < setup->n_bearers; b++) {
        HS_TRY(hs_person_make(setup->bearers[b].worker, task->policy.strength_percentile,
                              task->policy.segments, &run.persons[b], error));
        run.persons[b].memo = task->memo;
    }
    make_stations(setup, is_live, arena, &run);
    for (int s = 0; s < run.n_stations; s++) {
        HS_TRY(hs_run_forces_at(&run, s, !is_live || setup->n_used <= LIVE_RANGE_GRIPS, arena,
                                error));
    }
    for (int b = 0; b < setup->n_bearers; b++)
        HS_TRY(bodies_of(&run, b, arena));
    if (!is_live)
        HS_TRY(hs_run_put_between(&run, arena, error));
    for (int s = 0; s < run.n_stations; s++) {
        show_load(&run, s);
        for (int b = 0; b < setup->n_bearers; b++) {
            show_body(&run, s, b);
            HS_TRY(power_lost_at(&run, s, b));
        }
        combine(&run, s);
    }
    *ret_run = run;
    return HS_OK;
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  on what do the checks of suit and site work in their tests?
 * Answer:    an invented box, lifted, carried and set down by one suited bearer, run through the whole core.
 * Not here:  what the checks should find. */
#ifndef HS_ONE_BEARER_H
#define HS_ONE_BEARER_H

#include "check.h"
#include "defaults.h"
#include "near.h"
#include "runner.h"
#include "units.h"

#include <string.h>

#define NONE HS_ABSENT

static const hs_rating_point one_rating[] = {{0.25, 60}, {0.40, 50}, {0.60, 32}, {0.75, 20}};
static const int one_grips[] = {0, 1};

typedef struct {
    hs_part part;
    hs_grip grips[2];
    hs_point points[4];
    hs_worker worker;
    hs_suit suit;
    hs_effector effector;
    hs_bearer bearer;
    hs_option option;
    hs_role roles[3];
    hs_gate gates[2];
    hs_vec2 floor[4];
    hs_opening opening;
    hs_obstacle obstacle;
    hs_task task;
    hs_load_state load;
    hs_run run;
    hs_arena *arena;
} one;

static hs_point
one_point(double x_m, double z_m, hs_move move, double time_s)
{
    return (hs_point){.x_m = x_m,
                      .z_m = z_m,
                      .y_m = NONE,
                      .reach_m = 0.40,
                      .turn_deg = NONE,
                      .pitch_deg = NONE,
                      .move = move,
                      .time_s = time_s,
                      .hold_s = NONE,
                      .tolerance_m = NONE,
                      .meet = NONE,
                      .held_up = NONE,
                      .slide_friction = NONE};
}

static void
one_suit(one *o)
{
    o->suit = (hs_suit){.id = "s",
                        .kind = HS_SUIT_POWERED,
                        .mass_kg = 38,
                        .release_self_s = 8,
                        .release_helper_s = 15,
                        .donning_min = 4,
                        .depth_m = 0.2,
                        .wearer_stature_m = {1.6, 1.95},
                        .wearer_mass_kg = {50, 110},
                        .stairs = HS_NO,
                        .slope_deg = 5,
                        .temperature_C = {-5, 40},
                        .wet = HS_NO,
                        .centre_x_m = -0.12,
                        .centre_z_m = 1.05,
                        .self_carried = 0.9,
                        .self_carried_unpowered = NONE,
                        .gain_hands = 8,
                        .gain_trunk = 5,
                        .residual_hands_N = 15,
                        .residual_trunk_N = 30,
                        .harness_m = NONE,
                        .n_rating = 4,
                        .rating = one_rating,
                        .hand_height_m = {0.35, 1.6},
                        .foot_heel_m = 0.08,
                        .foot_toe_m = 0.24,
                        .foot_width_m = 0.14,
                        .width_m = 0.75,
                        .height_m = 1.80,
                        .on_power_loss = HS_LOSS_LOCK,
                        .sink_m_s = 0.1,
                        .lock_s = 900,
                        .walks_without_power = HS_YES,
                        .has_power = true,
                        .idle_W = 90,
                        .hold_W_per_Nm = 0.6,
                        .lift_efficiency = 0.35,
                        .battery_Wh = 900,
                        .reserve = 0.15,
                        .swap_min = 4};
    o->effector = (hs_effector){.id = "e",
                                .kind = HS_EFFECTOR_CRADLE,
                                .friction = NONE,
                                .max_force_N = NONE,
                                .change_s = NONE,
                                .holds_without_power = HS_YES};
    o->suit.n_effectors = 1;
    o->suit.effectors = &o->effector;
}

/* A box of 0.40 x 0.40 x 0.30 m; from z 0.50 up to 0.70, 4 m along, set down at 0.50. */
static void
one_make(one *o, double mass_kg)
{
    memset(o, 0, sizeof *o);
    o->arena = hs_arena_new();
    one_suit(o);
    o->part = (hs_part){.id = "box",
                        .shape = HS_SHAPE_BOX,
                        .size_m = {0.4, 0.4, 0.3},
                        .centre_m = {0, 0, 0.15},
                        .mass_kg = mass_kg,
                        .density_kg_m3 = NONE,
                        .known = HS_KNOWN_WEIGHED,
                        .mass_tol_kg = NONE,
                        .radius_m = NONE,
                        .inner_radius_m = NONE,
                        .length_m = NONE};
    for (int i = 0; i < 2; i++)
        o->grips[i] = (hs_grip){.id = i == 0 ? "l" : "r",
                                .at_m = {0, i == 0 ? 0.2 : -0.2, 0.2},
                                .hands = 1,
                                .kind = HS_GRIP_HANDLE,
                                .coupling = HS_COUPLING_GOOD,
                                .friction = NONE,
                                .squeeze_limit_N = NONE,
                                .rating_N = NONE,
                                .pad_along_m = NONE,
                                .pad_up_m = NONE};
    o->points[0] = one_point(0, 0.5, HS_MOVE_START, NONE);
    o->points[1] = one_point(0, 0.7, HS_MOVE_LIFT, 2);
    o->points[2] = one_point(4, 0.7, HS_MOVE_CARRY, 6);
    o->points[3] = one_point(4, 0.5, HS_MOVE_LOWER, 2);
    o->points[3].set_down = HS_YES;
    o->worker = (hs_worker){"w", "w", HS_SEX_MALE, 1.76, 79, 38};
    o->bearer = (hs_bearer){
        .id = "A", .worker = 0, .suit = 0, .effector = -1, .n_grips = 2, .grips = one_grips};
    o->option = (hs_option){
        .id = "o", .reach_m = NONE, .heading_deg = NONE, .n_bearers = 1, .bearers = &o->bearer};
    o->task =
        (hs_task){.load = {.n_parts = 1, .parts = &o->part, .n_grips = 2, .grips = o->grips},
                  .site = {.friction = 0.6,
                           .rating_kPa = NONE,
                           .rating_kg = NONE,
                           .headroom_m = NONE,
                           .width_m = NONE,
                           .corner_in_m = NONE,
                           .corner_out_m = NONE,
                           .temperature_C = NONE,
                           .wind_m_s = NONE,
                           .floor = o->floor,
                           .openings = &o->opening,
                           .obstacles = &o->obstacle},
                  .route = {4, o->points},
                  .work = {6, 8, NONE, NONE},
                  .n_workers = 1,
                  .n_suits = 1,
                  .n_options = 1,
                  .roles = o->roles,
                  .gates = o->gates,
                  .workers = &o->worker,
                  .suits = &o->suit,
                  .options = &o->option,
                  .policy = {.team_factor = NONE,
                             .strength_percentile = 25,
                             .slip_factor = 1.5,
                             .near_ratio = 0.9,
                             .couple_Nm = 10,
                             .walking_factor = NONE,
                             .step_Hz = 1.9,
                             .step_m = 0.65}};
}

static void
one_run(one *o)
{
    hs_error error = {0};

    if (hs_load_solve(&o->task.load, o->arena, NULL, NULL, &o->load, &error) != HS_OK ||
        hs_run_make(&o->task, &o->load, &o->option, 0, false, o->arena, NULL, &o->run,
                    &error) != HS_OK)
        g_error("run: %s", error.where);
}

/* Runs anew and asks one check. */
static hs_finding
one_ask(one *o, hs_check_id check)
{
    one_run(o);
    hs_asking asking = {.task = &o->task,
                        .load = &o->load,
                        .run = &o->run,
                        .baseline = &o->run,
                        .arena = o->arena,
                        .near_ratio = o->task.policy.near_ratio};
    hs_finding finding = hs_finding_start(&asking, check);

    hs_check_get(check)->ask(&asking, &finding);
    return finding;
}

static void
one_free(one *o)
{
    hs_arena_free(o->arena);
}

static inline void
expect(const hs_finding *finding, hs_finding_status status, hs_reason reason)
{
    if (finding->status != status || finding->text.reason != reason)
        g_error("status %d wanted %d, reason %s wanted %s", finding->status, status,
                hs_reason_name(finding->text.reason), hs_reason_name(reason));
}

#define EXPECT(finding, status, id) expect(&(finding), HS_STATUS_##status, HS_REASON_##id)

#endif

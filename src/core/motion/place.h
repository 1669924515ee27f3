/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what is where at one instant of one option?
 * Answer:    hs_place_at(): load, accelerations, grips and feet in the world.
 * Not here:  forces (forces/), postures (body/). */
#ifndef HS_PLACE_H
#define HS_PLACE_H

#include "load.h"
#include "route.h"

/* One bearer of an option with its references resolved; made once per option. */
typedef struct {
    const hs_bearer *asked;
    const hs_worker *worker;
    const hs_suit *suit;         /* NULL: none */
    const hs_effector *effector; /* NULL: none */
    hs_stands stands;            /* never 0 */
    hs_style style;
    int hands[16];      /* per grip of the bearer: 1 or 2 */
    double facing_rad;  /* 0 behind, pi ahead, -pi/2 left (faces -y), pi/2 right (faces +y) */
    bool is_one_handed; /* a single grip with one hand */
    bool belly_free;    /* two grips 0.3 m or more apart across */
} hs_bearer_setup;

typedef struct {
    const hs_task *task;
    const hs_load_state *load;
    const hs_option *option;
    double heading_rad;
    int n_bearers;
    const hs_bearer_setup *bearers;
    int n_used;            /* grips in use by anyone */
    const int *used;       /* indices into load.grips, in the order bearer, grip */
    const int *used_by;    /* bearer of each */
    const int *used_hands; /* hands on each */
    const hs_motion *
        motions; /* one per bearer: reach differs where defaults are used; all else is the same */
    /* per leg and bearer (leg * n_bearers + bearer): the feet pass a riser; where they begin and end along the way */
    const bool *stairs;
    const double *feet_from_m, *feet_to_m;
    bool is_baseline;
} hs_setup;

typedef struct {
    hs_vec3 hands_m; /* middle of the bearer's grips, world */
    double reach_m;
    hs_vec2 feet_m;            /* ankles' midpoint in plan */
    double floor_z_m;          /* under the feet */
    double slope_rad;          /* of the floor there, rising the way the bearer faces */
    double v_m_s, foot_a_m_s2; /* of the ankles along the way */
    double walking_factor;     /* 1 outside carry legs and at rest */
    bool stairs;               /* the feet pass a riser over 0.05 m in this leg */
    bool step_needed;          /* not a carry leg, and the feet would have to move */
} hs_bearer_place;

typedef struct {
    double t_s, route;
    int leg;   /* index into motion.legs */
    int point; /* the leg's point (1-based leg number: the leg leads to it) */
    hs_move move;
    bool in_hold, is_leg_start, is_leg_end;
    hs_motion_state motion; /* pitch as used, follow applied */
    double heading_rad;
    hs_mat3 load_to_world;
    hs_vec3 origin_m, cg_m; /* world; cg.z HS_ABSENT when unknown */
    hs_vec3 cg_acc_m_s2;    /* x, z (y 0) */
    double pitch_acc_rad_s2;
    double lowest_m, highest_m; /* of the load's outline, world z; HS_ABSENT without outline */
    double held_up, slide_friction;
    double slide_sign;  /* direction of a slide leg, +1 / -1, 0 else */
    hs_vec3 grip_m[16]; /* world place of each used grip */
    hs_bearer_place bearers[8];
} hs_place;

/**
 * hs_setup_make - resolve an option: bearers, grips, hands, facing, reach, motion
 *
 * What    applies the defaults of the file format and reports them
 * In      task validated by the reader
 * Out     *ret_setup in the arena
 * Frame   world
 * Errors  HS_E_RANGE
 * Source  file format, section options
 */
hs_status hs_setup_make(
    const hs_task *task,
    const hs_load_state *load,
    const hs_option *option,
    int option_index, /* for the paths of assumptions; -1: an option that the program adds */
    hs_arena *arena,
    hs_assumptions *assumptions,
    hs_setup *ret_setup,
    hs_error *error);

/* Reach at each point of an option's first bearer, defaults resolved: what a change of reach starts from. */
hs_status hs_setup_reach(const hs_task *task,
                         int option,
                         hs_arena *arena,
                         const double **ret_reach_m,
                         hs_error *error);

/* Fills the per-leg tables of a setup whose other members are set (setup.c's own step). */
void
hs_place_prepare(const hs_setup *setup, bool *stairs, double *feet_from_m, double *feet_to_m);

/* One instant: t on leg `leg` (of motions[0]); everything of *ret_place is set. */
void hs_place_at(const hs_setup *setup, int leg, double t_s, hs_place *ret_place);

/* Time to the arrival at the next set-down point from a place (holds on the way counted); 0 at a set-down point and
 * during its hold; HS_ABSENT when none follows. */
double hs_place_to_set_down_s(const hs_setup *setup, const hs_place *place);

#endif

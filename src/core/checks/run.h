/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what does a check get to look at?
 * Answer:    hs_run: one option worked through, place by place; hs_asking: the run beside the task and the baseline's run.
 * Not here:  how it is made (assess.c). */
#ifndef HS_RUN_H
#define HS_RUN_H

#include "body.h"
#include "place.h"
#include "result.h"
#include "shares.h"
#include "suit.h"

/* What assess.c keeps beside each sample and each bearer for the checks. */
typedef struct {
    hs_felt felt;
    hs_body_input input; /* as given to the body */
    hs_body_state body;  /* is_found false: no pose */
    bool has_body;       /* the body was asked (false when felt is missing) */
    hs_body_input lost_input;
    hs_body_state
        lost; /* power lost, suddenly: is_found false when no pose, or no powered suit */
    bool has_lost;
    double lost_peak_utilisation; /* on old + 2 (new - old); HS_ABSENT when not asked */
    double static_share_N;        /* at rest (no acceleration) at this place */
} hs_bearer_state;

typedef struct {
    hs_place place;
    hs_shares_problem problem;
    hs_shares_answer shares;
    bool has_shares; /* false where the CG's height is unknown and needed */
    bool is_between; /* put between two even places (run_between.c) */
    hs_bearer_state bearers[8];
} hs_station;

typedef struct {
    const hs_setup *setup;
    hs_person persons[8];
    int n_stations;
    hs_station *stations; /* one for each sample, same order */
    hs_sample *samples;
    hs_bearer_sample *bearers; /* n_stations x n_bearers: what the samples point into */
    int option;                /* index in the task; -1 added by the program */
    hs_jumps jumps;            /* not looked for in a live pass */
} hs_run;

typedef struct {
    const hs_task *task;
    const hs_load_state *load;
    const hs_run *run;
    const hs_run *baseline; /* may be the same as run; NULL while the baseline itself is made */
    const hs_finding *
        baseline_findings; /* indexed by check id, HS_N_CHECKS of them; NULL for the baseline */
    const hs_finding *
        findings; /* of this option so far, indexed by check id (roles, gates, data come last) */
    hs_arena *arena;
    hs_assumptions *assumptions;
    double near_ratio;
    bool is_live;    /* leave out what is too slow for a drag */
    bool is_what_if; /* only the status is asked: no remedies are sought */
} hs_asking;

#endif

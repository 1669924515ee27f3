/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what can a palm press with, when does a load slide off what it rests on, and what presses on the skin?
 * Answer:    the figures that the check grip.hold is held against or prints.
 * Not here:  squeeze and closure (forces/grip.c), which grip decides (grip_checks.c). */
#ifndef HS_GRIP_FIGURES_H
#define HS_GRIP_FIGURES_H

#include "body.h"
#include "check.h"

typedef struct {
    double press_N; /* force of one palm, inward */
    bool by_joint;  /* the shoulder decides, else the published press of a palm */
} hs_palm;

/**
 * hs_palm_press - the force that one palm gives inward, without a suit
 *
 * What    the smaller of a published press of one palm and of what the shoulder that presses can turn: adduction moment over the
 *         distance from shoulder to hand in the side view, which is square to a force inward; both at the worker's percentile
 * In      person; reach_m: shoulder to hand, HS_ABSENT where no posture is known
 * Out     press_N and which of the two it is; two lines of working
 * Frame   none
 * Errors  none
 * Source  HS_SRC_palm_squeeze, HS_SRC_laubach_1976_derived, HS_SRC_shoulder_adduction
 */
hs_palm hs_palm_press(const hs_person *person, double reach_m, hs_working *working);

/* Distance from shoulder to hand of a posture that was found; HS_ABSENT otherwise. */
double hs_palm_reach_m(const hs_body_state *body);

/* Friction that keeps a load on something it only rests on: force along its base over force into it; HS_ABSENT when it is not pressed
 * on. up_m_s2 includes gravity. */
double hs_rest_friction(const hs_mat3 *load_to_world, double along_m_s2, double up_m_s2);

/* Pressure (kPa) of a felt force on n hands round a handle, and the felt force at which the palm's blood stops. */
void hs_skin_write(double felt_N, int n_hands, hs_working *working);

/* How many times its own force a suited hand gives to the load: hand force over felt force. */
double hs_palm_times(const hs_run *run, int station, int bearer, bool *ret_missing);

/* Minutes an hour if an end piece is changed once in each cycle. */
void hs_grip_write_change(const hs_asking *asking, hs_working *working);

/* A load that rests in cradles alone slides once force along its base over force into it passes the friction: near, because a strap
 * or a chock mends it. Left alone where no friction is stated. */
void hs_grip_judge_slide(const hs_asking *asking,
                         int station,
                         double slip_factor,
                         hs_finding *finding);

#endif

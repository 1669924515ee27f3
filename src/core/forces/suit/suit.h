/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what does a suit make of a hand force, and what does it put into the body?
 * Answer:    one interface for all kinds of suit: hs_suit_model, one line each in lists/suit_kinds.def.
 * Not here:  the body (body/), energy over a shift (energy.c), what happens without power (checks/power_loss.c). */
#ifndef HS_SUIT_H
#define HS_SUIT_H

#include "suit_terms.h"
#include "task.h"
#include "working.h"

typedef struct {
    double felt_N; /* both hands together */
    double suit_N; /* hand force - felt, may be negative */
    double
        payload_kg; /* at this reach; HS_ABSENT for kinds without a rating or when it is missing */
    double excess_N; /* part beyond the payload that falls on the wearer */
    bool is_outside_height;
    bool is_missing; /* a figure that has no default is absent: felt cannot be told */
} hs_felt;

typedef struct {
    hs_suit_kind kind;
    const char *id; /* as in files */
    /* hand_N the force of the load on the hands; hand_height above the floor under the feet */
    hs_felt (*felt)(const hs_suit *suit,
                    double hand_N,
                    double reach_m,
                    double hand_height_m,
                    hs_working *working);
    /* fills the body's suit terms; weight_factor as for the body */
    void (*in_body)(const hs_suit *suit, double weight_factor, hs_body_suit *ret_terms);
    bool has_power;
} hs_suit_model;

/* The model of a suit; for NULL (no suit) a model whose felt is the hand force and whose in_body is empty. */
const hs_suit_model *hs_suit_model_of(const hs_suit *suit);

/* Payload at a reach: straight lines, first payload nearer than the first point, zero beyond the last (1e-9 m inclusive).
 * HS_ABSENT without a rating. */
double hs_suit_payload_kg(const hs_suit *suit, double reach_m);

/* Spring moment at an angle: straight lines, ends held, 0 below the first angle. Both sides together. */
double hs_suit_torque_Nm(const hs_suit *suit, double angle_deg);

/* Number of rating points nearer than a reach: the payload lies on the line from point n - 1 to point n. */
int hs_suit_rating_segment(const hs_suit *suit, double reach_m);

/* A figure that the body needs of a powered suit, and that has no default, is absent (self_carried, gain.trunk,
 * residual_N.trunk): in_body then leaves it absent, and nothing of the body may be judged. */
bool hs_suit_body_is_missing(const hs_suit *suit);

/* Lever of the trunk's residual about L5/S1 where the suit's data do not give it: an assumption, common practice, no source
 * (file format, section Felt). */
#define HS_SUIT_HARNESS_m 0.20

/* Gain that a suit without hand sensors really has when its model of itself is wrong by a share (positive: its gain taken too
 * small); unstable from 1/(gain - 1) on: HS_SRC_suit_sensitivity. */
double hs_suit_gain_off(double gain, double error_fraction);
/* Force of a harness on the trunk: moment that the suit takes about the low back, over its lever, and the residual. */
double
hs_suit_harness_N(double moment_Nm, double gain_trunk, double lever_m, double residual_N);
double hs_suit_belt_kPa(double force_N, double area_m2);

#endif

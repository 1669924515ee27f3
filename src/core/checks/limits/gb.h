/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what are the British guidance figures at a place of the hands?
 * Answer:    the box by zone and reach, factors of twist, rate, team, figures for pushing.
 * Not here:  legs of a route and what is out of scope (limit_checks_guidance.c). */
#ifndef HS_GB_H
#define HS_GB_H

#include "task.h"

typedef enum {
    HS_GB_ABOVE_SHOULDER = 0,
    HS_GB_ELBOW_SHOULDER,
    HS_GB_KNUCKLE_ELBOW,
    HS_GB_SHIN_KNUCKLE,
    HS_GB_BELOW_SHIN,
    HS_GB_N_ZONES
} hs_gb_zone;

typedef enum {
    HS_GB_CLOSE = 0,
    HS_GB_EXTENDED,
    HS_GB_OUTSIDE
} hs_gb_reach;

/* A worker's landmarks over the floor, standing, and the length of an arm to the grip. */
typedef struct {
    double shoulder_m, elbow_m, knuckle_m, shin_m, arm_m;
} hs_gb_landmarks;

#define HS_GB_CARRY_m 10.0 /* without a rest, HS_SRC_gb_guideline */

/* Landmarks by stature: shares of Drillis & Contini 1966 (knuckle: wrist less half of the hand). */
hs_gb_landmarks hs_gb_landmarks_of(double stature_m);
hs_gb_zone hs_gb_zone_of(const hs_gb_landmarks *body, double hand_height_m);
/* close: nearer than half an arm's length; extended: to an arm's length (1991 form) */
hs_gb_reach hs_gb_reach_of(const hs_gb_landmarks *body, double reach_m);
double hs_gb_box_kg(hs_sex sex, hs_gb_zone zone, hs_gb_reach reach);

/* Smallest of the boxes that hands pass between two heights; HS_ABSENT outside the boxes. */
double hs_gb_least_kg(hs_sex sex,
                      const hs_gb_landmarks *body,
                      double from_m,
                      double to_m,
                      double greatest_reach_m);

/* 1 to 45 degrees, 0.9 beyond, 0.8 from 90. */
double hs_gb_twist_factor(double turn_deg);
/* 1 up to 30 an hour, then 0.7 to 2 a minute, 0.5 to 8, 0.2: where the text is silent the next stated smaller factor. */
double hs_gb_rate_factor(double per_min);
/* Greatest share of one of n over the own figure: 2/3, 1/2; HS_ABSENT for four and more. */
double hs_gb_team_share(int n);
/* Horizontal force to start or stop, or to keep moving, N. */
double hs_gb_push_N(hs_sex sex, bool keeps_moving);

#endif

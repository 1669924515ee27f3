/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how much energy does the body spend on a piece of work?
 * Answer:    hs_metabolic_J() for one row of lists/metabolic.def; hs_metabolic_get() says where the row is from.
 * Not here:  what is too much (checks), which row a leg of the route asks for (the day's check). */
#ifndef HS_METABOLIC_H
#define HS_METABOLIC_H

#include "sources.h"
#include "status.h"

#define HS_J_PER_KCAL                                                                          \
    4184.0 /* thermochemical kilocalorie: SI Brochure 8th ed. (2006), BIPM, table 8 note */
#define HS_J_PER_ML_OXYGEN                                                                     \
    20.1 /* ACSM's Health & Fitness J. 2020: 5 kcal a litre, rounded to 20.1 J a millilitre */

typedef enum {
    HS_METABOLIC_POSTURE = 1, /* kept up for time_s */
    HS_METABOLIC_TASK,        /* on top of the posture's row over the same time */
    HS_METABOLIC_WHOLE        /* all that the body spends in time_s */
} hs_metabolic_kind;

typedef enum {
#define METABOLIC(id, kind, source, confidence) HS_METABOLIC_ROW_##id,
#include "lists/metabolic.def"
#undef METABOLIC
    HS_N_METABOLIC_ROWS
} hs_metabolic_row;

typedef struct {
    const char *id; /* as in the list */
    hs_metabolic_kind kind;
    hs_source_id source;
    hs_confidence confidence;
} hs_metabolic_about;

/* Members that a row does not use are ignored. One lift or lower per call; its time_s plays no part. */
typedef struct {
    double body_kg; /* with clothing and, where worn, the suit's part on the body */
    double load_kg; /* in the hands, or on the trunk (pandolf, givoni_trunk) */
    double from_m,
        to_m; /* hands at the two ends of a lift or lower, over the floor, in any order */
    double speed_m_s;
    double grade;                 /* rise per run, up positive; downhill counts as level */
    double time_s;                /* length of posture, walk, carry, hold */
    double terrain;               /* factor of the ground, 1 paved: pandolf and givoni */
    double steps_per_min, step_m; /* acsm_step */
    bool is_male;
} hs_metabolic_input;

const hs_metabolic_about *hs_metabolic_get(hs_metabolic_row row);

/**
 * hs_metabolic_J - energy of one row
 *
 * What    evaluates the published equation; a lift below and above 0.81 m is for the caller to cut in two (the arms take over
 *         there): each row counts only its own side of that height
 * In      the members that the row needs, finite
 * Out     joules, never below 0; HS_ABSENT when a figure that the row needs is absent
 * Frame   heights over the floor under the feet
 * Errors  none
 * Source  lists/metabolic.def and docs/body.md
 */
double hs_metabolic_J(hs_metabolic_row row, const hs_metabolic_input *input);

/* The height where the arms take over from the legs and back in the lifting rows: Garg, Chaffin & Herrin 1978. */
#define HS_METABOLIC_ARMS_m 0.81

/* Watts that one kilogram carried costs against one of the body, least and most: Kamon & Belding 1971, cartons in front. */
#define HS_METABOLIC_CARRIED_LEAST 1.3
#define HS_METABOLIC_CARRIED_MOST  2.3

/* Hours of work and rest: share of the time at rest so that the mean over the cycle is at most limit_W; 0 when already so,
 * HS_ABSENT when rest itself is above the limit. rest_W: rate while resting. */
double hs_metabolic_rest_share(double work_W, double rest_W, double limit_W);

#endif

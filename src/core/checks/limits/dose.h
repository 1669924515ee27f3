/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what does a shift do to the low back by the dose model of Mainz and Dortmund?
 * Answer:    compression by kind of handling, what counts, the daily dose, its guide values.
 * Not here:  legs of a route and the comparison of options (day_checks.c). The model judges past exposure; here it only
 *            compares ways of doing the same work. */
#ifndef HS_DOSE_H
#define HS_DOSE_H

#include "task.h"

typedef enum {
    HS_DOSE_LIFT = 0,   /* two hands */
    HS_DOSE_LIFT_ONE,   /* one hand */
    HS_DOSE_SHIFT,      /* at work height, two hands */
    HS_DOSE_SHIFT_ONE,  /* one hand */
    HS_DOSE_CARRY,      /* in front or beside the body */
    HS_DOSE_CARRY_BACK, /* on shoulder or back */
    HS_DOSE_N_ACTIONS
} hs_dose_action;

typedef enum {
    HS_DOSE_1999 = 0,
    HS_DOSE_COURT_2007 /* a federal court: men's threshold and the life values lowered, no value for a shift */
} hs_dose_edition;

#define HS_DOSE_BEND_N     1700.0 /* deep bending, 90 degrees, without a load: read */
#define HS_DOSE_LIFT_s     2.5    /* time counted for a lift under 2 m of way */
#define HS_DOSE_LIFT_FAR_s 5.0    /* with 2 to 5 m of way, or holding */
#define HS_DOSE_CAREFUL_s  7.5    /* placed with care */
#define HS_DOSE_CARRY_s_m  1.0    /* carrying: a second for each metre */
#define HS_DOSE_SHIFT_h    8.0

/* Newtons in the formula's two figures of an action: F = base + each * kg. Read. */
void hs_dose_terms(hs_dose_action action, double *ret_base_N, double *ret_each_N_kg);
double hs_dose_force_N(hs_dose_action action, double load_kg);

/* A force counts above this. Read. */
double hs_dose_threshold_N(hs_sex sex, hs_dose_edition edition);

/* Force squared, time linearly: 8 h * sqrt(sum of F^2 t over 8 h). sum_N2h in N2 h, answer in N h. The squares are read, the
 * root is remembered. */
double hs_dose_of_Nh(double sum_N2h);

/* Guide values of 1999: for a shift in N h (HS_ABSENT in 2007: dropped), for a working life in N h. Read. */
double hs_dose_shift_Nh(hs_sex sex, hs_dose_edition edition);
double hs_dose_life_Nh(hs_sex sex, hs_dose_edition edition);

#endif

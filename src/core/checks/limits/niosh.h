/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what does the revised NIOSH lifting equation recommend for one lift, and for several together?
 * Answer:    hs_niosh_rwl() in the metric form, hs_niosh_rwl_us() in the inch-pound form as published, hs_niosh_composite().
 * Not here:  legs of a route, teams, suits (niosh_checks.c). */
#ifndef HS_NIOSH_H
#define HS_NIOSH_H

#include "task.h"

typedef enum {
    HS_NIOSH_SHORT = 0,
    HS_NIOSH_MODERATE,
    HS_NIOSH_LONG,
    HS_NIOSH_NONE /* over 8 h: no limit is given */
} hs_niosh_duration;

#define HS_NIOSH_TASKS               64 /* of a composite, at most */
/* Recovery over work that the short class asks for: 1.0 in the 2021 revision (read second-hand), 1.2 remembered of 1994. */
#define HS_NIOSH_RECOVERY_SHORT      1.0
#define HS_NIOSH_RECOVERY_SHORT_1994 1.2
#define HS_NIOSH_RECOVERY_MODERATE   0.3
/* The last lifts/min whose row was read in a source. */
#define HS_NIOSH_SEEN_TO_per_min     10.0

#define HS_NIOSH_LC_kg 23.0 /* load constant, HS_SRC_niosh_1994 */
#define HS_NIOSH_LC_lb 51.0

typedef struct {
    double reach_m;       /* H: ankles' midpoint to hands' midpoint, horizontal */
    double hand_height_m; /* V: hands over the floor under the feet */
    double distance_m;    /* D: change of V over the lift, sign ignored */
    double turn_deg;      /* A: asymmetry, side ignored */
    double lifts_per_min;
    hs_niosh_duration duration;
    hs_coupling coupling;
} hs_niosh_input;

typedef struct {
    double hm_factor, vm_factor, dm_factor, am_factor, fm_factor, cm_factor;
    double firwl_kg; /* with FM = 1 */
    double rwl_kg;   /* 0: beyond the equation's cut-offs */
} hs_niosh_answer;

typedef struct {
    double mass_mean_kg, mass_most_kg, firwl_kg, lifts_per_min;
    bool is_low;                 /* hands below 0.75 m: column of the frequency table */
    hs_niosh_answer multipliers; /* of firwl_kg, for the working; may be left out */
} hs_niosh_task;

typedef struct {
    double index;       /* HS_ABSENT: the summed frequency leaves the table, or a limit is 0 */
    double first_index; /* greatest single-task index */
    double sum_per_min;
    /* step by step: the task, the frequency multiplier of the sum so far, the index so far */
    int order[HS_NIOSH_TASKS];
    double fm_factor[HS_NIOSH_TASKS], after_index[HS_NIOSH_TASKS];
} hs_niosh_sum;

hs_niosh_duration hs_niosh_duration_of(double hours, double recovery_h);

/* FM: straight lines between the table's rows, below 0.2/min the row 0.2, never a line towards a zero. */
double hs_niosh_fm_factor(double lifts_per_min, hs_niosh_duration duration, bool is_low);
double hs_niosh_cm_factor(hs_coupling coupling, bool is_low);

/**
 * hs_niosh_rwl - recommended weight limit of one lift
 *
 * What    RWL = 23 kg HM VM DM AM FM CM, multipliers not rounded; 0 beyond any cut-off
 * In      all members finite; coupling 0 counts as fair
 * Out     *ret_answer
 * Frame   heights over the floor under the feet
 * Errors  none: over 8 h FM and RWL are 0 and FIRWL stands
 * Source  HS_SRC_niosh_1994
 */
void hs_niosh_rwl(const hs_niosh_input *input, hs_niosh_answer *ret_answer);

/* The same in the inch-pound form as published; answers in lb. It gives 1.8 to 3.5 per cent more than the metric form. */
void hs_niosh_rwl_us(double h_in,
                     double v_in,
                     double d_in,
                     double turn_deg,
                     double lifts_per_min,
                     hs_niosh_duration duration,
                     hs_coupling coupling,
                     hs_niosh_answer *ret_answer_lb);

/**
 * hs_niosh_composite - composite index of several tasks of one job
 *
 * What    greatest single-task index, then each further task by falling index at the rise of 1/FM over the summed frequency
 * In      1..n tasks, n at most HS_NIOSH_TASKS; one duration class for all
 * Out     *ret_sum
 * Frame   none
 * Errors  index HS_ABSENT where a FIRWL or FM is 0
 * Source  HS_SRC_niosh_composite (steps seen in the manual's contents, formula remembered)
 */
void hs_niosh_composite(const hs_niosh_task *tasks,
                        int n,
                        hs_niosh_duration duration,
                        hs_niosh_sum *ret_sum);

#endif

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what are MIL-STD-1472's design weights for lifting and carrying?
 * Answer:    rows by height or way and by sex, factors of size, rate and team.
 * Not here:  legs of a route and what is out of scope (limit_checks_guidance.c). */
#ifndef HS_MIL1472_H
#define HS_MIL1472_H

#include "sources.h"
#include "status.h"

#define HS_MIL_LOW_m   0.91 /* lift to, HS_SRC_mil_std_1472 */
#define HS_MIL_HIGH_m  1.52 /* lift to, HS_SRC_mil_std_1472_memory */
#define HS_MIL_CARRY_m 10.0 /* the way is read, its masses are remembered */

/* HS_ABSENT above 1.52 m. confidence: how the row is known */
double hs_mil1472_lift_kg(bool men_only, double to_m, hs_confidence *ret_confidence);
/* HS_ABSENT beyond 10 m. */
double hs_mil1472_carry_kg(bool men_only, double way_m, hs_confidence *ret_confidence);
/* Load deeper than 0.61, 0.91, 1.22 m away from the lifter: 0.67, 0.5, 0.34. Remembered. */
double hs_mil1472_depth_factor(double depth_m);
/* More than one lift in 5 min or 20 in 8 h: 1 - 0.0833 a lift a minute. Remembered. 0 where nothing is left. */
double hs_mil1472_lift_rate_factor(double lifts_per_min, double hours);
/* Carries: 1 - 0.10 a carry a minute. Remembered. */
double hs_mil1472_carry_rate_factor(double carries_per_min, double hours);
/* Greatest share of one of n over the one-person figure: 2, then 0.75 each. Read. */
double hs_mil1472_team_share(int n);

#endif

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how much energy may work take on average?
 * Answer:    published limits by length of work and sex.
 * Not here:  what the work takes (body/metabolic.c), rest (rest.c), the day's check (limit_checks_day.c). */
#ifndef HS_ENERGY_LIMITS_H
#define HS_ENERGY_LIMITS_H

#include "task.h"

/* Work Practices Guide 1981: 9 and 6.5 kcal/min up to an hour, 5 and 3 for 8 h (read; a memory has 3.5 for women). kcal/min;
 * HS_ABSENT over 8 h. */
double hs_energy_limit_kcal_min(hs_sex sex, double hours);

/* NIOSH 1991: 9.5 kcal/min by 0.50, 0.40, 0.33 for up to 1, 2, 8 h, and 0.7 with hands above 0.75 m. W. */
double hs_energy_limit_1991_W(double hours, bool is_high);

#endif

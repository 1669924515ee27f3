/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how much energy may work take on average?
 * Answer:    published limits by length of work and sex.
 * Not here:  what the work takes (body/metabolic.c), rest (rest.c). */
#include "energy_limits.h"

#include "metabolic.h"

double
hs_energy_limit_kcal_min(hs_sex sex, double hours)
{
    if (!(hours <= 8.0))
        return HS_ABSENT;
    if (hours <= 1.0)
        return sex == HS_SEX_FEMALE ? 6.5 : 9.0;
    /* Nothing was read between an hour and a shift: the shift's figure from there. */
    return sex == HS_SEX_FEMALE ? 3.0 : 5.0;
}

double
hs_energy_limit_1991_W(double hours, bool is_high)
{
    double part = hours <= 1.0 ? 0.50 : hours <= 2.0 ? 0.40 : 0.33;

    if (!(hours <= 8.0))
        return HS_ABSENT;
    return 9.5 * part * (is_high ? 0.7 : 1.0) * HS_J_PER_KCAL / 60.0;
}

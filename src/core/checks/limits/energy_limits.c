/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how much energy may work take on average, and how much rest does it need?
 * Answer:    published limits by length of work and sex, Murrell's rest.
 * Not here:  what the work takes (body/metabolic.c). */
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

double
hs_energy_rest_min(double work_W, double standard_W, double rest_W, double total_min)
{
    if (work_W <= standard_W)
        return 0.0;
    return rest_W < standard_W ? total_min * (work_W - standard_W) / (work_W - rest_W)
                               : HS_ABSENT;
}

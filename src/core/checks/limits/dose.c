/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what does a shift do to the low back by the dose model of Mainz and Dortmund?
 * Answer:    its formulas and guide values, HS_SRC_dose_1999, HS_SRC_dose_root, HS_SRC_dose_2007.
 * Not here:  legs of a route (day_checks.c). */
#include "dose.h"

static const struct {
    double base_N, each_N_kg;
} actions[HS_DOSE_N_ACTIONS] = {
    [HS_DOSE_LIFT] = {1800.0, 75.0},  [HS_DOSE_LIFT_ONE] = {1800.0, 130.0},
    [HS_DOSE_SHIFT] = {800.0, 75.0},  [HS_DOSE_SHIFT_ONE] = {800.0, 130.0},
    [HS_DOSE_CARRY] = {1000.0, 85.0}, [HS_DOSE_CARRY_BACK] = {1000.0, 60.0},
};

void
hs_dose_terms(hs_dose_action action, double *ret_base_N, double *ret_each_N_kg)
{
    *ret_base_N = actions[action].base_N;
    *ret_each_N_kg = actions[action].each_N_kg;
}

double
hs_dose_force_N(hs_dose_action action, double load_kg)
{
    return actions[action].base_N + actions[action].each_N_kg * load_kg;
}

double
hs_dose_threshold_N(hs_sex sex, hs_dose_edition edition)
{
    if (sex == HS_SEX_FEMALE)
        return 2500.0;
    return edition == HS_DOSE_1999 ? 3200.0 : 2700.0;
}

double
hs_dose_of_Nh(double sum_N2h)
{
    return HS_DOSE_SHIFT_h * sqrt(sum_N2h / HS_DOSE_SHIFT_h);
}

double
hs_dose_shift_Nh(hs_sex sex, hs_dose_edition edition)
{
    if (edition == HS_DOSE_COURT_2007)
        return HS_ABSENT;
    return sex == HS_SEX_FEMALE ? 3500.0 : 5500.0;
}

double
hs_dose_life_Nh(hs_sex sex, hs_dose_edition edition)
{
    double life_Nh = sex == HS_SEX_FEMALE ? 17e6 : 25e6;

    return edition == HS_DOSE_COURT_2007 ? 0.5 * life_Nh : life_Nh;
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what do ISO 11228-1 and EN 1005-2 allow one person to lift, and how much in a day?
 * Answer:    their figures, on the equation of niosh.c.
 * Not here:  legs of a route (limit_checks_iso_en.c). */
#include "iso11228.h"

#include <stddef.h>

static const hs_iso11228_day days[] = {
#define ISO_DAY(way, minute, hour, day) {way, minute, hour, day},
#include "lists/limits_iso_day.def"
#undef ISO_DAY
};

double
hs_iso11228_reference_kg(hs_sex sex, double age_years)
{
    bool is_middle = age_years >= 20.0 && age_years <= 45.0;

    if (sex == HS_SEX_FEMALE)
        return is_middle ? 20.0 : 15.0;
    return is_middle ? 25.0 : 20.0;
}

double
hs_iso11228_limit_kg(double reference_kg, const hs_niosh_answer *multipliers, double factor)
{
    return reference_kg * multipliers->rwl_kg / HS_NIOSH_LC_kg * factor;
}

const hs_iso11228_day *
hs_iso11228_day_of(double carry_m)
{
    for (int i = 0; i < (int)(sizeof days / sizeof *days); i++)
        if (carry_m <= days[i].carry_m + 1e-9)
            return &days[i];
    return NULL;
}

hs_en1005_band
hs_en1005_band_of(double risk_index)
{
    if (risk_index <= HS_EN_TOLERABLE)
        return HS_EN_BAND_TOLERABLE;
    return risk_index < HS_EN_REDESIGN ? HS_EN_BAND_SIGNIFICANT : HS_EN_BAND_REDESIGN;
}

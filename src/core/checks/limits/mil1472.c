/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what are MIL-STD-1472's design weights for lifting and carrying?
 * Answer:    its rows and factors, each with how it is known.
 * Not here:  legs of a route (limit_checks_guidance.c). */
#include "mil1472.h"

#define EDGE 1e-9

double
hs_mil1472_lift_kg(bool men_only, double to_m, hs_confidence *ret_confidence)
{
    *ret_confidence = HS_CONF_SEEN;
    if (to_m <= HS_MIL_LOW_m + EDGE)
        return men_only ? 39.5 : 20.0;
    *ret_confidence = HS_CONF_MEMORY;
    if (to_m <= HS_MIL_HIGH_m + EDGE)
        return men_only ? 25.4 : 16.8;
    return HS_ABSENT;
}

double
hs_mil1472_carry_kg(bool men_only, double way_m, hs_confidence *ret_confidence)
{
    *ret_confidence = HS_CONF_MEMORY;
    if (!(way_m <= HS_MIL_CARRY_m + EDGE))
        return HS_ABSENT;
    return men_only ? 37.2 : 19.0;
}

double
hs_mil1472_depth_factor(double depth_m)
{
    if (depth_m > 1.22 + EDGE)
        return 0.34;
    if (depth_m > 0.91 + EDGE)
        return 0.5;
    return depth_m > 0.61 + EDGE ? 0.67 : 1.0;
}

static bool
is_now_and_then(double per_min, double hours)
{
    return per_min <= 1.0 / 5.0 + EDGE && per_min * 60.0 * fmin(hours, 8.0) <= 20.0 + EDGE;
}

double
hs_mil1472_lift_rate_factor(double lifts_per_min, double hours)
{
    return is_now_and_then(lifts_per_min, hours) ? 1.0
                                                 : fmax(0.0, 1.0 - 0.0833 * lifts_per_min);
}

double
hs_mil1472_carry_rate_factor(double carries_per_min, double hours)
{
    return is_now_and_then(carries_per_min, hours) ? 1.0
                                                   : fmax(0.0, 1.0 - 0.10 * carries_per_min);
}

double
hs_mil1472_team_share(int n)
{
    return n <= 1 ? 1.0 : (2.0 + 0.75 * (n - 2)) / n;
}

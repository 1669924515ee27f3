/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how much rest do heavy work and long holds ask for?
 * Answer:    the published formulas as they are printed.
 * Not here:  what the work takes (body/metabolic.c). */
#include "rest.h"

#include "status.h"

/* About this share can be held without end: attributed to Rohmert 1960, read. */
#define WITHOUT_END 0.15

double
hs_rest_murrell_min(double work_W, double standard_W, double rest_W, double total_min)
{
    if (work_W <= standard_W)
        return 0.0;
    return rest_W < standard_W ? total_min * (work_W - standard_W) / (work_W - rest_W)
                               : HS_ABSENT;
}

double
hs_rest_rohmert_endurance_s(double share_of_most)
{
    double f = share_of_most;

    return f > 0.0 ? 60.0 * (-1.5 + 2.1 / f - 0.6 / (f * f) + 0.1 / (f * f * f)) : HS_ABSENT;
}

double
hs_rest_kamon_endurance_s(double share_of_most)
{
    return share_of_most > 0.0 ? 11.40 * pow(share_of_most, -2.42) : HS_ABSENT;
}

double
hs_rest_kamon_s(double share_of_most, double hold_s)
{
    if (share_of_most <= WITHOUT_END)
        return 0.0;
    return 1080.0 * pow(hold_s / hs_rest_kamon_endurance_s(share_of_most), 1.4) *
           sqrt(share_of_most - WITHOUT_END);
}

double
hs_rest_remembered_s(double share_of_most, double hold_s)
{
    if (share_of_most <= WITHOUT_END)
        return 0.0;
    return 18.0 * hold_s * pow(hold_s / hs_rest_rohmert_endurance_s(share_of_most), 1.4) *
           sqrt(share_of_most - WITHOUT_END);
}

double
hs_rest_kamon_dynamic_s(double share_of_uptake)
{
    return share_of_uptake > 0.0 ? fmax(0.0, 7200.0 / share_of_uptake - 7020.0) : HS_ABSENT;
}

double
hs_rest_kamon_dynamic_rest_s(double share_of_uptake)
{
    return share_of_uptake > 0.5 ? fmax(0.0, 528.0 * log(share_of_uptake - 0.5) + 1476.0) : 0.0;
}

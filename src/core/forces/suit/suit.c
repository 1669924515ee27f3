/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what do the two curves of a suit say, and what do its data lack?
 * Answer:    payload over reach and spring moment over angle as straight lines; hs_suit_body_is_missing().
 * Not here:  the models (kinds.c and one file for each kind). */
#include "suit.h"

#include "units.h"

static double
on_line(double x, double x1, double y1, double x2, double y2)
{
    /* Two points at one place: the later one counts, as on the floor. */
    if (!(x2 > x1))
        return y2;
    return y1 + (y2 - y1) * (x - x1) / (x2 - x1);
}

int
hs_suit_rating_segment(const hs_suit *suit, double reach_m)
{
    int i = 0;

    while (i < suit->n_rating && suit->rating[i].reach_m < reach_m - HS_SAME_PLACE_m)
        i++;
    return i;
}

double
hs_suit_payload_kg(const hs_suit *suit, double reach_m)
{
    const hs_rating_point *points;
    int i;

    if (suit == NULL || suit->n_rating < 1 || !hs_has(reach_m))
        return HS_ABSENT;
    points = suit->rating;
    i = hs_suit_rating_segment(suit, reach_m);
    if (i == 0)
        return points[0].payload_kg;
    if (i == suit->n_rating)
        return 0.0;
    /* The limit is inclusive: a hair beyond the last point is that point. */
    return on_line(fmin(reach_m, points[i].reach_m), points[i - 1].reach_m,
                   points[i - 1].payload_kg, points[i].reach_m, points[i].payload_kg);
}

double
hs_suit_torque_Nm(const hs_suit *suit, double angle_deg)
{
    const hs_torque_point *points;
    int n;

    if (suit == NULL || suit->n_torque < 1 || !hs_has(angle_deg))
        return 0.0;
    points = suit->torque;
    n = suit->n_torque;
    if (angle_deg < points[0].angle_deg)
        return 0.0;
    for (int i = 1; i < n; i++)
        if (angle_deg <= points[i].angle_deg)
            return on_line(angle_deg, points[i - 1].angle_deg, points[i - 1].moment_Nm,
                           points[i].angle_deg, points[i].moment_Nm);
    return points[n - 1].moment_Nm;
}

bool
hs_suit_body_is_missing(const hs_suit *suit)
{
    if (suit == NULL || suit->kind != HS_SUIT_POWERED)
        return false;
    return !hs_has(suit->self_carried) || !hs_has(suit->gain_trunk) ||
           !hs_has(suit->residual_trunk_N);
}

double
hs_suit_gain_off(double gain, double error_fraction)
{
    return 1.0 / (1.0 - (1.0 - 1.0 / gain) * (1.0 + error_fraction));
}

double
hs_suit_harness_N(double moment_Nm, double gain_trunk, double lever_m, double residual_N)
{
    return moment_Nm / gain_trunk / lever_m + residual_N;
}

double
hs_suit_belt_kPa(double force_N, double area_m2)
{
    return force_N / area_m2 / HS_PA_PER_kPa;
}

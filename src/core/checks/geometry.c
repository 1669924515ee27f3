/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what do plan geometry, sight lines and wind come to, taken alone?
 * Answer:    closed forms, and one search over the angle of a load in a corner.
 * Not here:  where they are asked (clearance_check.c, sight_check.c, wind_check.c, placing_check.c). */
#include "geometry.h"

#include "units.h"

#include <math.h>

#define GOLDEN 0.6180339887498949 /* (sqrt 5 - 1) / 2, golden section search */

static double
room_at(double t_rad, double a_m, double b_m, double width_m)
{
    double s = sin(t_rad), c = cos(t_rad);

    return a_m / s + b_m / c - width_m / (s * c);
}

double
hs_corner_longest_m(double a_m, double b_m, double width_m)
{
    double low = 0.001, high = HS_PI / 2.0 - 0.001;

    if (!(width_m < fmin(a_m, b_m)))
        return 0.0;
    /* One minimum inside: golden section to rounding. */
    while (high - low > 1e-10) {
        double p = high - GOLDEN * (high - low), q = low + GOLDEN * (high - low);

        if (room_at(p, a_m, b_m, width_m) < room_at(q, a_m, b_m, width_m))
            high = q;
        else
            low = p;
    }
    return fmax(room_at((low + high) / 2.0, a_m, b_m, width_m), 0.0);
}

double
hs_sight_blind_m(double eye_m, double edge_m, double top_m)
{
    if (!(top_m < eye_m))
        return INFINITY;
    return edge_m * eye_m / (eye_m - top_m);
}

double
hs_sight_object_m(double eye_m, double edge_m, double top_m, double object_m)
{
    if (!(top_m < eye_m))
        return INFINITY;
    return edge_m * (eye_m - object_m) / (eye_m - top_m);
}

double
hs_sight_top_m(double eye_m, double edge_m, double blind_m)
{
    return eye_m * (1.0 - edge_m / blind_m);
}

double
hs_sight_stop_m(double speed_m_s, double reaction_s, double slowing_m_s2)
{
    return speed_m_s * reaction_s + speed_m_s * speed_m_s / (2.0 * slowing_m_s2);
}

double
hs_wind_N(double speed_m_s, double area_m2)
{
    return 0.5 * HS_AIR_kg_m3 * speed_m_s * speed_m_s * HS_WIND_DRAG * area_m2;
}

double
hs_wind_speed_m_s(double force_N, double area_m2)
{
    return sqrt(2.0 * force_N / (HS_AIR_kg_m3 * HS_WIND_DRAG * area_m2));
}

double
hs_placing_index_bit(double distance_m, double window_m)
{
    return log2(distance_m / window_m + 1.0);
}

double
hs_placing_first_index_bit(double distance_m, double window_m)
{
    return log2(2.0 * distance_m / window_m);
}

double
hs_turn_reach_m(double front_m, double width_m)
{
    return hypot(front_m, width_m / 2.0);
}

double
hs_lean_rad(double moment_Nm, double weight_N, double height_m)
{
    double part = moment_Nm / (weight_N * height_m);

    return fabs(part) <= 1.0 ? asin(part) : (double)NAN;
}

double
hs_placing_turn_rad(double play_m, double radius_m)
{
    return asin(fmin(play_m / radius_m, 1.0));
}

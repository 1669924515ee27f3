/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what are the British guidance figures at a place of the hands?
 * Answer:    the rows of lists/limits_gb.def and the stated factors.
 * Not here:  legs of a route (limit_checks_guidance.c). */
#include "gb.h"

#include "units.h"

/* Shares of stature, Drillis & Contini 1966: shoulder .818, elbow .630, wrist .485, hand .108, knee .285, arm .186 + .146. */
#define SHOULDER 0.818
#define ELBOW    0.630
#define WRIST    0.485
#define HAND     0.108
#define KNEE     0.285
#define ARM      (0.186 + 0.146 + HAND)

typedef struct {
    double close_kg[2], extended_kg[2]; /* men, women */
} gb_row;

static const gb_row rows[HS_GB_N_ZONES] = {
#define GB_BOX(zone, men_close, men_extended, women_close, women_extended)                     \
    [HS_GB_##zone] = {{men_close, women_close}, {men_extended, women_extended}},
#include "lists/limits_gb.def"
#undef GB_BOX
};

hs_gb_landmarks
hs_gb_landmarks_of(double stature_m)
{
    return (hs_gb_landmarks){.shoulder_m = SHOULDER * stature_m,
                             .elbow_m = ELBOW * stature_m,
                             .knuckle_m = (WRIST - HAND / 2.0) * stature_m,
                             .shin_m = KNEE / 2.0 * stature_m,
                             .arm_m = ARM * stature_m};
}

hs_gb_zone
hs_gb_zone_of(const hs_gb_landmarks *body, double hand_height_m)
{
    if (hand_height_m > body->shoulder_m)
        return HS_GB_ABOVE_SHOULDER;
    if (hand_height_m > body->elbow_m)
        return HS_GB_ELBOW_SHOULDER;
    if (hand_height_m >= body->knuckle_m)
        return HS_GB_KNUCKLE_ELBOW;
    return hand_height_m >= body->shin_m ? HS_GB_SHIN_KNUCKLE : HS_GB_BELOW_SHIN;
}

hs_gb_reach
hs_gb_reach_of(const hs_gb_landmarks *body, double reach_m)
{
    if (reach_m < 0.5 * body->arm_m)
        return HS_GB_CLOSE;
    return reach_m <= body->arm_m ? HS_GB_EXTENDED : HS_GB_OUTSIDE;
}

double
hs_gb_box_kg(hs_sex sex, hs_gb_zone zone, hs_gb_reach reach)
{
    int who = sex == HS_SEX_FEMALE ? 1 : 0;

    if (reach == HS_GB_OUTSIDE)
        return HS_ABSENT;
    return reach == HS_GB_CLOSE ? rows[zone].close_kg[who] : rows[zone].extended_kg[who];
}

double
hs_gb_least_kg(hs_sex sex,
               const hs_gb_landmarks *body,
               double from_m,
               double to_m,
               double greatest_reach_m)
{
    hs_gb_zone top = hs_gb_zone_of(body, fmax(from_m, to_m));
    hs_gb_zone bottom = hs_gb_zone_of(body, fmin(from_m, to_m));
    hs_gb_reach reach = hs_gb_reach_of(body, greatest_reach_m);
    double least_kg = HS_ABSENT;

    for (int zone = (int)top; zone <= (int)bottom; zone++)
        least_kg = fmin(least_kg, hs_gb_box_kg(sex, (hs_gb_zone)zone, reach));
    return least_kg;
}

double
hs_gb_twist_factor(double turn_deg)
{
    double a_deg = fabs(turn_deg);

    if (a_deg >= 90.0)
        return 0.8;
    return a_deg > 45.0 ? 0.9 : 1.0;
}

double
hs_gb_rate_factor(double per_min)
{
    if (per_min <= 0.5)
        return 1.0;
    if (per_min <= 2.0)
        return 0.7;
    return per_min <= 8.0 ? 0.5 : 0.2;
}

double
hs_gb_team_share(int n)
{
    if (n <= 1)
        return 1.0;
    if (n == 2)
        return 2.0 / 3.0;
    return n == 3 ? 0.5 : HS_ABSENT;
}

double
hs_gb_push_N(hs_sex sex, bool keeps_moving)
{
    double kg =
        sex == HS_SEX_FEMALE ? (keeps_moving ? 7.0 : 15.0) : (keeps_moving ? 10.0 : 20.0);

    return kg * HS_GRAVITY_m_s2;
}

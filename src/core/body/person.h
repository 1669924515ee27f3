/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  which constants do the files of this folder share about a person?
 * Answer:    order of segments, survey median, grip point, percentiles.
 * Not here:  what others may use (body.h). */
#ifndef HS_PERSON_H
#define HS_PERSON_H

#include "body.h"

enum {
    HS_SEGMENT_FEET,
    HS_SEGMENT_SHANKS,
    HS_SEGMENT_THIGHS,
    HS_SEGMENT_LOWER_TRUNK, /* below L5/S1 */
    HS_SEGMENT_UPPER_TRUNK, /* above it */
    HS_SEGMENT_HEAD,
    HS_SEGMENT_UPPER_ARMS,
    HS_SEGMENT_FOREARMS,
    HS_SEGMENT_HANDS
};

/* Mean stature and mass of the men of the 2012 US Army survey; 40 years, percentile 25: defaults of the file format. */
#define HS_SURVEY_STATURE_m   1.756
#define HS_SURVEY_MASS_kg     85.5
#define HS_SURVEY_AGE_years   40.0
#define HS_DEFAULT_PERCENTILE 25.0

/* Grip beyond the wrist, share of stature: .79 (.747) of wrist to knuckle after de Leva 1996. */
#define HS_GRIP_MALE   0.039
#define HS_GRIP_FEMALE 0.034

/* Foot: its centre of mass lies this share of stature up (chosen); its ankle a quarter of its length ahead of the heel
 * where the foot's mass is placed (.20 for the base of support). */
#define HS_FOOT_CENTRE_HEIGHT 0.02
#define HS_FOOT_MASS_ANKLE    0.25

#define HS_KNEELING_BACK 0.85 /* HS_SRC_kneeling_strength, chosen on the cautious side */

/* Fills the strength members of a person whose sex, size, age and percentile are set (strength.c). */
void hs_person_set_strength(hs_person *person);

/* Strength with its slopes by the joint's own angle and by the knee's, corners rounded over 2 x round_deg (0: the table). */
typedef struct {
    double value_Nm, by_angle, by_knee;
} hs_strength;

hs_strength hs_strength_at(const hs_person *person,
                           int joint,
                           double angle_rad,
                           double knee_rad,
                           bool tips_forward,
                           double round_deg);

/* Standard normal variate of a percentile in 0..100. */
double hs_percentile_z(double percentile);

#endif

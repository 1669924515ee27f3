/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what moment can a joint bear at an angle?
 * Answer:    hs_strength_Nm(): both sides together, at the percentile of the person's own sex.
 * Not here:  how long (endurance.c), what is asked of it (chain.c).
 *
 * No age term is known for trunk and arms: their figures are those of young adults. */
#include "person.h"
#include "units.h"

enum {
    YOUNG,
    OLDER,
    OLD,
    N_AGES
};

typedef struct {
    double c1, c2, c3_rad, c1_sd;
} leg_row;

static const leg_row legs[HS_N_LEG_STRENGTHS][3][N_AGES] = {
#define LEG(joint, sex, age, c1, c2, c3_rad, c1_sd)                                            \
    [HS_LEG_##joint][HS_SEX_##sex][age] = {c1, c2, c3_rad, c1_sd},
#define GRIP(sex, from_years, mean_kg, sd_kg)
#include "lists/strength.def"
#undef LEG
#undef GRIP
};

static const struct {
    hs_sex sex;
    double from_years, mean_kg, sd_kg;
} grips[] = {
#define LEG(joint, sex, age, c1, c2, c3_rad, c1_sd)
#define GRIP(sex, from_years, mean_kg, sd_kg) {HS_SEX_##sex, from_years, mean_kg, sd_kg},
#include "lists/strength.def"
#undef LEG
#undef GRIP
};

#define YOUNG_years                                                                            \
    22.0 /* middle of the groups 18-25 and 55-65; older than 65: the third group */
#define OLDER_years 60.0
#define OLD_years   65.0
#define LEAST_SHARE                                                                            \
    0.2 /* a percentile is never below this share of the mean, nor the cosine below it: chosen */

/* Trunk extension of men, both sides: 288, 232, 171 N m at 20, 40, 60 degrees of flexion (Chaffin, Andersson & Martin 1999,
 * table 4.5). Their line, held beyond its ends. Two other sources rise with flexion: the falling one is the cautious one. */
#define TRUNK_LEVEL_Nm 347.3
#define TRUNK_SLOPE_Nm 2.925
#define TRUNK_LAST_deg 60.0
#define TRUNK_LAST_Nm  171.0
#define TRUNK_WOMEN    0.638 /* HS_SRC_laubach_1976 */
#define SD_OVER_MEAN   0.3   /* trunk and shoulder: as remembered, about 0.3 */
#define TRUNK_FORWARD                                                                          \
    0.4 /* flexion against extension, the lesser of two remembered ratios (Stobbe 1982): .41, .61 */
/* Shoulder flexion of men, one arm: 89.9 N m hanging, 68.6 at 45 degrees, women half (seen in an abstract); then a gentler
 * slope to 90 degrees and level (chosen). Extension: half of it, common practice, no source. */
#define SHOULDER_0_Nm     89.9
#define SHOULDER_45_Nm    68.6
#define SHOULDER_SLOPE_Nm 0.24
#define SHOULDER_WOMEN    0.5
#define SHOULDER_BACK     0.5
/* Elbow flexion, women 40.5 N m, SD 8.3 (Pediatr. Exerc. Sci. 2009); men by Laubach's .558. Extension: .6 as remembered. */
#define ELBOW_WOMEN_Nm    40.5
#define ELBOW_SD_Nm       8.3
#define UPPER_LIMB_WOMEN  0.558
#define ELBOW_BACK        0.6
/* Plantar flexion with a bent knee: about 15 % lower (Fugl-Meyer, 135 adults); reached at 20 degrees of knee flexion. */
#define CALF_BENT         0.85
#define CALF_FROM_deg     10.0
#define CALF_TO_deg       20.0

double
hs_percentile_z(double percentile)
{
    double target = percentile / 100.0, z = 0.0;

    /* Newton on the distribution function; the derivative is the density. */
    for (int i = 0; i < 60; i++) {
        double miss = 0.5 * erfc(-z / sqrt(2.0)) - target;
        double step = miss / (exp(-0.5 * z * z) / sqrt(2.0 * HS_PI));

        z -= fmax(fmin(step, 1.0), -1.0);
        if (fabs(step) < 1e-14)
            break;
    }
    return z;
}

static double
at_percentile(double mean, double sd, double z)
{
    return fmax(mean + z * sd, LEAST_SHARE * mean);
}

static leg_row
leg_at_age(const leg_row *groups, double age_years)
{
    double t = (fmin(fmax(age_years, YOUNG_years), OLDER_years) - YOUNG_years) /
               (OLDER_years - YOUNG_years);

    if (age_years > OLD_years)
        return groups[OLD];
    return (leg_row){groups[YOUNG].c1 + t * (groups[OLDER].c1 - groups[YOUNG].c1),
                     groups[YOUNG].c2 + t * (groups[OLDER].c2 - groups[YOUNG].c2),
                     groups[YOUNG].c3_rad + t * (groups[OLDER].c3_rad - groups[YOUNG].c3_rad),
                     groups[YOUNG].c1_sd + t * (groups[OLDER].c1_sd - groups[YOUNG].c1_sd)};
}

static double
grip_N(const hs_person *person, double z)
{
    double mean_kg = 0.0, sd_kg = 0.0;

    for (size_t i = 0; i < sizeof grips / sizeof grips[0]; i++)
        if (grips[i].sex == person->sex &&
            (mean_kg == 0.0 || person->age_years >= grips[i].from_years)) {
            mean_kg = grips[i].mean_kg;
            sd_kg = grips[i].sd_kg;
        }
    return at_percentile(mean_kg, sd_kg, z) * HS_GRAVITY_m_s2;
}

void
hs_person_set_strength(hs_person *person)
{
    double z = hs_percentile_z(person->percentile);
    double size_Nm = person->mass_kg * HS_GRAVITY_m_s2 * person->stature_m;
    bool is_woman = person->sex == HS_SEX_FEMALE;
    double spread = at_percentile(1.0, SD_OVER_MEAN, z);

    for (int i = 0; i < HS_N_LEG_STRENGTHS; i++) {
        leg_row row = leg_at_age(legs[i][person->sex], person->age_years);

        person->leg[i] = (hs_leg_strength){2.0 * size_Nm * at_percentile(row.c1, row.c1_sd, z),
                                           row.c2, row.c3_rad};
    }
    person->trunk_share = spread * (is_woman ? TRUNK_WOMEN : 1.0);
    person->shoulder_share = 2.0 * spread * (is_woman ? SHOULDER_WOMEN : 1.0);
    person->elbow_Nm = 2.0 * at_percentile(ELBOW_WOMEN_Nm, ELBOW_SD_Nm, z) /
                       (is_woman ? 1.0 : UPPER_LIMB_WOMEN);
    person->grip_N = grip_N(person, z);
}

/* 0 below 0, x above; rounded over 2 h. */
static double
ramp(double x, double h, double *ret_slope)
{
    if (x <= -h || x >= h) {
        *ret_slope = x > 0.0 ? 1.0 : 0.0;
        return x > 0.0 ? x : 0.0;
    }
    *ret_slope = (x + h) / (2.0 * h);
    return (x + h) * (x + h) / (4.0 * h);
}

/* level + slope x + sum of changes of slope, each at its own place: a broken line with rounded corners. */
static double
broken_line(double level,
            int n,
            const double *at,
            const double *change,
            double x,
            double h,
            double *ret_slope)
{
    double value = level, slope = 0.0;

    for (int i = 0; i < n; i++) {
        double s, r = ramp(x - at[i], h, &s);

        value += change[i] * r;
        slope += change[i] * s;
    }
    *ret_slope = slope;
    return value;
}

static double
trunk_men_Nm(double flexion_deg, double h, double *ret_slope)
{
    static const double at[2] = {0.0, (TRUNK_LEVEL_Nm - TRUNK_LAST_Nm) / TRUNK_SLOPE_Nm};
    static const double change[2] = {-TRUNK_SLOPE_Nm, TRUNK_SLOPE_Nm};

    return broken_line(TRUNK_LEVEL_Nm, 2, at, change, flexion_deg, h, ret_slope);
}

static double
shoulder_men_Nm(double flexion_deg, double h, double *ret_slope)
{
    static const double at[3] = {0.0, 45.0, 90.0};
    static const double first = (SHOULDER_45_Nm - SHOULDER_0_Nm) / 45.0;
    const double change[3] = {first, -SHOULDER_SLOPE_Nm - first, SHOULDER_SLOPE_Nm};

    return broken_line(SHOULDER_0_Nm, 3, at, change, flexion_deg, h, ret_slope);
}

double
hs_strength_trunk_men_Nm(double flexion_deg)
{
    double slope;

    return trunk_men_Nm(flexion_deg, 0.0, &slope);
}

double
hs_strength_shoulder_men_Nm(double flexion_deg)
{
    double slope;

    return shoulder_men_Nm(flexion_deg, 0.0, &slope);
}

static hs_strength
leg_at(const hs_leg_strength *leg, double angle_rad, double h)
{
    double phase = leg->c2 * (angle_rad - leg->c3_rad), slope;
    double share = LEAST_SHARE + ramp(cos(phase) - LEAST_SHARE, h, &slope);

    return (hs_strength){leg->peak_Nm * share, -leg->peak_Nm * slope * leg->c2 * sin(phase),
                         0.0};
}

static hs_strength
ankle_at(const hs_person *person,
         double angle_rad,
         double knee_rad,
         bool tips_forward,
         double round_deg)
{
    static const double at[2] = {CALF_FROM_deg, CALF_TO_deg};
    static const double change[2] = {-(1.0 - CALF_BENT) / (CALF_TO_deg - CALF_FROM_deg),
                                     (1.0 - CALF_BENT) / (CALF_TO_deg - CALF_FROM_deg)};
    hs_strength ret =
        leg_at(&person->leg[tips_forward ? HS_LEG_ANKLE_EXTENSION : HS_LEG_ANKLE_FLEXION],
               angle_rad, round_deg * HS_RAD_PER_DEG);
    double share, slope;

    if (!tips_forward)
        return ret;
    share = broken_line(1.0, 2, at, change, knee_rad * HS_DEG_PER_RAD, round_deg, &slope);
    return (hs_strength){ret.value_Nm * share, ret.by_angle * share,
                         ret.value_Nm * slope * HS_DEG_PER_RAD};
}

hs_strength
hs_strength_at(const hs_person *person,
               int joint,
               double angle_rad,
               double knee_rad,
               bool tips_forward,
               double round_deg)
{
    double h_rad = round_deg * HS_RAD_PER_DEG, value, slope, share;

    switch (joint) {
    case HS_JOINT_ANKLE:
        return ankle_at(person, angle_rad, knee_rad, tips_forward, round_deg);
    case HS_JOINT_KNEE:
        return leg_at(&person->leg[tips_forward ? HS_LEG_KNEE_FLEXION : HS_LEG_KNEE_EXTENSION],
                      angle_rad, h_rad);
    case HS_JOINT_HIP:
        return leg_at(&person->leg[tips_forward ? HS_LEG_HIP_EXTENSION : HS_LEG_HIP_FLEXION],
                      angle_rad, h_rad);
    case HS_JOINT_L5S1:
        value = trunk_men_Nm(angle_rad * HS_DEG_PER_RAD, round_deg, &slope);
        share = person->trunk_share * (tips_forward ? 1.0 : TRUNK_FORWARD);
        break;
    case HS_JOINT_SHOULDER:
        value = shoulder_men_Nm(angle_rad * HS_DEG_PER_RAD, round_deg, &slope);
        share = person->shoulder_share * (tips_forward ? 1.0 : SHOULDER_BACK);
        break;
    default:
        return (hs_strength){person->elbow_Nm * (tips_forward ? 1.0 : ELBOW_BACK), 0.0, 0.0};
    }
    return (hs_strength){share * value, share * slope * HS_DEG_PER_RAD, 0.0};
}

double
hs_strength_Nm(const hs_person *person,
               int joint,
               double angle_rad,
               double other_angle_rad,
               double moment_Nm)
{
    return hs_strength_at(person, joint, angle_rad, other_angle_rad, moment_Nm >= 0.0, 0.0)
        .value_Nm;
}

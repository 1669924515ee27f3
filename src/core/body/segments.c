/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how long and how heavy are this person's segments?
 * Answer:    hs_person_make(): masses after de Leva (or Winter), lengths after Drillis & Contini, the sole for balance.
 * Not here:  what the joints can bear (strength.c), postures (posture.c).
 *
 * segment_at: feet, of the foot from the heel; shanks and thighs, of the link from its upper end; lower trunk, upper trunk and
 * head, of hip to shoulder from the hip; upper arms, of the link from the shoulder; forearms, of the link elbow to grip from
 * the elbow; hands, 1 (their mass acts at the grip). A mass is never taken from one table and its place from another. */
#include "body.h"
#include "person.h"
#include "units.h"

enum {
    HEAD,
    UPPER_TRUNK,
    MIDDLE_TRUNK,
    LOWER_TRUNK,
    UPPER_ARM,
    FOREARM,
    HAND,
    THIGH,
    SHANK,
    FOOT,
    TRUNK,
    PELVIS,
    N_ROWS
};
enum {
    ANKLE_HEIGHT = N_ROWS,
    EYE_HEIGHT,
    FOOT_WIDTH,
    N_LINKS
};

typedef struct {
    double mass, centre, length_m;
} segment_row;

static const segment_row de_leva[3][N_ROWS] = {
#define SEGMENT(sex, segment, mass, centre, length_m)                                          \
    [HS_SEX_##sex][segment] = {mass, centre, length_m},
#define TRUNK_LINE(sex, shoulder_m, top_m, neck_m)
#define WINTER(segment, mass, centre)
#define LINK(link, share)
#include "lists/segments.def"
#undef SEGMENT
#undef TRUNK_LINE
};

static const double trunk_line_m[3][3] = {
#define SEGMENT(sex, segment, mass, centre, length_m)
#define TRUNK_LINE(sex, shoulder_m, top_m, neck_m) [HS_SEX_##sex] = {shoulder_m, top_m, neck_m},
#include "lists/segments.def"
#undef TRUNK_LINE
#undef WINTER
};

static const segment_row winter[N_ROWS] = {
#define TRUNK_LINE(sex, shoulder_m, top_m, neck_m)
#define WINTER(segment, mass, centre) [segment] = {mass, centre, 0.0},
#include "lists/segments.def"
#undef WINTER
#undef LINK
};

static const double link_share[N_LINKS] = {
#define WINTER(segment, mass, centre)
#define LINK(link, share) [link] = share,
#include "lists/segments.def"
#undef SEGMENT
#undef TRUNK_LINE
#undef WINTER
#undef LINK
};

/* HS_SRC_l5s1_place. L5/S1 between hip and shoulder: iliac crest of the 2012 US Army survey less about 4 cm. */
#define L5S1_FRACTION  0.20
/* Base of support, shares of the foot's length (HS_SRC_king_1994, HS_SRC_sloot_2025, first toe joint from HS_SRC_us_army_2012): ankle .20 ahead of
 * the heel for this purpose, first toe joint .74, cut .09 behind the ankle up to 60 years. */
#define BASE_ANKLE     0.20
#define BASE_TOE_JOINT 0.74
#define BASE_REAR_CUT  0.09
#define OLD_years      60.0
#define STANCE_m                                                                               \
    0.165 /* HS_SRC_stance_width: feet apart in natural stance, seen in an abstract */
/* HS_SRC_belly_depth. Half the 95th percentile of abdomen depth and clothing, 2012 US Army survey. */
#define BELLY_MALE_m   0.16
#define BELLY_FEMALE_m 0.14

static void
set_lengths(hs_person *person)
{
    double h = person->stature_m;

    person->ankle_height_m = link_share[ANKLE_HEIGHT] * h;
    person->shank_m = link_share[SHANK] * h;
    person->thigh_m = link_share[THIGH] * h;
    person->trunk_m = link_share[TRUNK] * h;
    person->upper_arm_m = link_share[UPPER_ARM] * h;
    person->foot_m = link_share[FOOT] * h;
    person->eye_height_m = link_share[EYE_HEIGHT] * h;
    person->sole_width_m = link_share[FOOT_WIDTH] * h;
    person->heel_m = BASE_ANKLE * person->foot_m;
    person->toe_joint_m = (BASE_TOE_JOINT - BASE_ANKLE) * person->foot_m;
    person->toe_m = (1.0 - BASE_ANKLE) * person->foot_m;
    person->stance_width_m = STANCE_m;
    person->rear_cut_m = person->age_years < OLD_years ? BASE_REAR_CUT * person->foot_m : 0.0;
    person->belly_m = person->sex == HS_SEX_FEMALE ? BELLY_FEMALE_m : BELLY_MALE_m;
}

static void
set_segment(hs_person *person, int segment, double share, double at)
{
    person->segment_kg[segment] = share * person->mass_kg;
    person->segment_at[segment] = at;
}

/* Places on the line from mid-hip to mid-shoulder, from the lengths of the same table. */
static void
set_trunk_de_leva(hs_person *person)
{
    const segment_row *row = de_leva[person->sex];
    const double *line = trunk_line_m[person->sex];
    double lower_top = row[LOWER_TRUNK].length_m / line[0];
    double lower_at = (1.0 - row[LOWER_TRUNK].centre) * lower_top;
    double middle_at = (row[LOWER_TRUNK].length_m +
                        (1.0 - row[MIDDLE_TRUNK].centre) * row[MIDDLE_TRUNK].length_m) /
                       line[0];
    double upper_at = (line[1] - row[UPPER_TRUNK].centre * row[UPPER_TRUNK].length_m) / line[0];
    /* The lower trunk is cut at L5/S1 by length; the part below keeps the whole's centre of mass. */
    double cut_part = (lower_top - L5S1_FRACTION) / lower_top;
    double cut_at = 0.5 * (lower_top + L5S1_FRACTION);
    double above =
        row[UPPER_TRUNK].mass + row[MIDDLE_TRUNK].mass + cut_part * row[LOWER_TRUNK].mass;

    person->neck_fraction = line[2] / line[0];
    person->head_fraction = (line[2] + (1.0 - row[HEAD].centre) * row[HEAD].length_m) / line[0];
    person->top_fraction = (line[2] + row[HEAD].length_m) / line[0];
    set_segment(person, HS_SEGMENT_LOWER_TRUNK, (1.0 - cut_part) * row[LOWER_TRUNK].mass,
                (lower_at - cut_part * cut_at) / (1.0 - cut_part));
    set_segment(person, HS_SEGMENT_UPPER_TRUNK, above,
                (row[UPPER_TRUNK].mass * upper_at + row[MIDDLE_TRUNK].mass * middle_at +
                 cut_part * row[LOWER_TRUNK].mass * cut_at) /
                    above);
}

/* Winter's pelvis ends at L4/L5, taken as the cut; thorax and abdomen lie where the whole trunk's centre asks. The head's
 * centre is the ear canal, at eye height. */
static void
set_trunk_winter(hs_person *person)
{
    double pelvis_at = L5S1_FRACTION * (1.0 - winter[PELVIS].centre);
    double above = winter[TRUNK].mass - winter[PELVIS].mass;
    double hip = link_share[ANKLE_HEIGHT] + link_share[SHANK] + link_share[THIGH];

    person->neck_fraction = trunk_line_m[person->sex][2] / trunk_line_m[person->sex][0];
    person->head_fraction = (link_share[EYE_HEIGHT] - hip) / link_share[TRUNK];
    person->top_fraction = (1.0 - hip) / link_share[TRUNK];
    set_segment(person, HS_SEGMENT_LOWER_TRUNK, winter[PELVIS].mass, pelvis_at);
    set_segment(person, HS_SEGMENT_UPPER_TRUNK, above,
                (winter[TRUNK].mass * winter[TRUNK].centre - winter[PELVIS].mass * pelvis_at) /
                    above);
}

static void
set_segments(hs_person *person)
{
    const segment_row *row =
        person->table == HS_SEGMENTS_WINTER ? winter : de_leva[person->sex];
    double wrist_m = link_share[FOREARM] * person->stature_m;

    /* The grip lies as far beyond the wrist as the hand's centre of mass: .79 (.747) of wrist to knuckle, .039 (.034) of the
     * stature (body sizes of the survey; the knuckle at half of the hand's .108). */
    person->forearm_m =
        wrist_m +
        (person->sex == HS_SEX_FEMALE ? HS_GRIP_FEMALE : HS_GRIP_MALE) * person->stature_m;
    person->l5s1_fraction = L5S1_FRACTION;
    if (person->table == HS_SEGMENTS_WINTER)
        set_trunk_winter(person);
    else
        set_trunk_de_leva(person);
    set_segment(person, HS_SEGMENT_FEET, 2.0 * row[FOOT].mass, row[FOOT].centre);
    set_segment(person, HS_SEGMENT_SHANKS, 2.0 * row[SHANK].mass, row[SHANK].centre);
    set_segment(person, HS_SEGMENT_THIGHS, 2.0 * row[THIGH].mass, row[THIGH].centre);
    set_segment(person, HS_SEGMENT_HEAD, row[HEAD].mass, person->head_fraction);
    set_segment(person, HS_SEGMENT_UPPER_ARMS, 2.0 * row[UPPER_ARM].mass,
                row[UPPER_ARM].centre);
    set_segment(person, HS_SEGMENT_FOREARMS, 2.0 * row[FOREARM].mass,
                row[FOREARM].centre * wrist_m / person->forearm_m);
    set_segment(person, HS_SEGMENT_HANDS, 2.0 * row[HAND].mass, 1.0);
}

/* Centre of mass standing straight, arms hanging. */
static double
standing_cm_m(const hs_person *person)
{
    const double *m = person->segment_kg, *at = person->segment_at;
    double knee_m = person->ankle_height_m + person->shank_m, hip_m = knee_m + person->thigh_m;
    double shoulder_m = hip_m + person->trunk_m, elbow_m = shoulder_m - person->upper_arm_m;
    double sum = m[HS_SEGMENT_FEET] * HS_FOOT_CENTRE_HEIGHT * person->stature_m;

    sum += m[HS_SEGMENT_SHANKS] * (knee_m - at[HS_SEGMENT_SHANKS] * person->shank_m);
    sum += m[HS_SEGMENT_THIGHS] * (hip_m - at[HS_SEGMENT_THIGHS] * person->thigh_m);
    for (int i = HS_SEGMENT_LOWER_TRUNK; i <= HS_SEGMENT_HEAD; i++)
        sum += m[i] * (hip_m + at[i] * person->trunk_m);
    sum += m[HS_SEGMENT_UPPER_ARMS] *
           (shoulder_m - at[HS_SEGMENT_UPPER_ARMS] * person->upper_arm_m);
    sum += m[HS_SEGMENT_FOREARMS] * (elbow_m - at[HS_SEGMENT_FOREARMS] * person->forearm_m);
    sum += m[HS_SEGMENT_HANDS] * (elbow_m - person->forearm_m);
    return sum / person->mass_kg;
}

hs_status
hs_person_make(const hs_worker *worker,
               double percentile,
               hs_segment_table table,
               hs_person *ret_person,
               hs_error *error)
{
    hs_person person = {.table = table == HS_SEGMENTS_WINTER ? table : HS_SEGMENTS_DE_LEVA};

    person.sex = worker->sex == HS_SEX_FEMALE ? HS_SEX_FEMALE : HS_SEX_MALE;
    person.stature_m = hs_or(worker->stature_m, HS_SURVEY_STATURE_m);
    person.mass_kg = hs_or(worker->mass_kg, HS_SURVEY_MASS_kg);
    person.age_years = hs_or(worker->age_years, HS_SURVEY_AGE_years);
    person.percentile = hs_or(percentile, HS_DEFAULT_PERCENTILE);
    if (!(person.stature_m > 0.0 && person.stature_m < 3.0))
        return hs_refuse(error, "stature_m", person.stature_m, 0.0, 3.0);
    if (!(person.mass_kg > 0.0 && person.mass_kg < 500.0))
        return hs_refuse(error, "mass_kg", person.mass_kg, 0.0, 500.0);
    if (!(person.age_years >= 0.0))
        return hs_refuse(error, "age_years", person.age_years, 0.0, 120.0);
    if (!(person.percentile > 0.0 && person.percentile < 100.0))
        return hs_refuse(error, "strength_percentile", person.percentile, 0.0, 100.0);
    set_lengths(&person);
    set_segments(&person);
    person.standing_cm_m = standing_cm_m(&person);
    hs_person_set_strength(&person);
    *ret_person = person;
    return HS_OK;
}

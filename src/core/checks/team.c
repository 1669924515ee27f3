/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how much may one member of a team carry by the team rule that was chosen?
 * Answer:    the published boxes and rows, each with its source.
 * Not here:  the limits as checks of their own (limits/), the shares (share_checks.c). */
#include "team.h"

#include "floor.h"
#include "solve.h"
#include "units.h"

/* Heights over the floor as shares of stature, Drillis & Contini 1966: shoulder .818, elbow .630; knuckle = wrist .485 less half
 * of the hand's .108; half of the knee's .285 for the middle of the lower leg; arm .186 + .146 + .108. */
#define SHOULDER  0.818
#define ELBOW     0.630
#define KNUCKLE   (0.485 - 0.108 / 2.0)
#define LOWER_LEG (0.285 / 2.0)
#define ARM       (0.186 + 0.146 + 0.108)

typedef struct {
    double above_share;            /* the box reaches down to this share of stature */
    double close_kg[2], far_kg[2]; /* female, male */
} gb_box;

/* Guidance figures by zone of the hands (INDG143, L23), HS_SRC_team_gb. */
static const gb_box boxes[] = {
    {SHOULDER, {7, 10}, {3, 5}},    {ELBOW, {13, 20}, {7, 10}}, {KNUCKLE, {16, 25}, {10, 15}},
    {LOWER_LEG, {13, 20}, {7, 10}}, {-1.0, {7, 10}, {3, 5}},
};

double
hs_team_fraction(const hs_policy *policy, int n)
{
    if (n <= 1)
        return 1.0;
    switch (policy->team_rule) {
    case HS_TEAM_GB:
        return n == 2 ? 2.0 / 3.0 : n == 3 ? 0.5 : HS_ABSENT;
    case HS_TEAM_MIL_STD_1472:
        return (2.0 + 0.75 * (n - 2)) / n;
    case HS_TEAM_EN_1005_2:
        return n == 2 ? 0.85 : HS_ABSENT;
    case HS_TEAM_MEASURED:
        return policy->team_factor > 0.0 ? policy->team_factor : HS_ABSENT;
    case HS_TEAM_NONE:
    default:
        return HS_ABSENT;
    }
}

double
hs_team_gb_box_kg(hs_sex sex, double stature_m, double hand_height_m, double reach_m)
{
    int who = sex == HS_SEX_FEMALE ? 0 : 1, n = (int)(sizeof boxes / sizeof *boxes), zone = 0;
    /* nearer than half an arm's length (the table's 1991 form) */
    bool is_close = reach_m < ARM * stature_m / 2.0;

    while (zone < n - 1 && !(hand_height_m > boxes[zone].above_share * stature_m))
        zone++;
    return is_close ? boxes[zone].close_kg[who] : boxes[zone].far_kg[who];
}

double
hs_team_gb_factor(double turn_deg, double cycles_per_hour)
{
    double twist = fabs(turn_deg) >= 90.0 ? 0.8 : fabs(turn_deg) > 45.0 ? 0.9 : 1.0;
    double per_min = cycles_per_hour / 60.0;

    /* Between the rates that are stated the next smaller factor is taken. */
    if (cycles_per_hour <= 30.0)
        return twist;
    return twist * (per_min <= 2.0 ? 0.7 : per_min <= 8.0 ? 0.5 : 0.2);
}

double
hs_team_mil_kg(bool men_only,
               bool carries,
               double way_m,
               double hand_height_m,
               hs_confidence *ret_confidence)
{
    *ret_confidence = HS_CONF_MEMORY;
    if (carries)
        return way_m > 10.0 ? HS_ABSENT : men_only ? 37.2 : 19.0;
    if (hand_height_m <= 0.91) {
        *ret_confidence = HS_CONF_SEEN;
        return men_only ? 39.5 : 20.0;
    }
    if (hand_height_m <= 1.52)
        return men_only ? 25.4 : 16.8;
    return HS_ABSENT;
}

static double
hand_height_m(const hs_run *run, int station, int bearer)
{
    const hs_bearer_place *at = &run->stations[station].place.bearers[bearer];

    return at->hands_m.z - at->floor_z_m;
}

static void
one_gb(const hs_asking *asking, int station, int bearer, hs_team_limit *limit)
{
    const hs_person *person = &asking->run->persons[bearer];
    const hs_place *place = &asking->run->stations[station].place;
    double turn_deg = hs_or(asking->task->route.points[place->point].turn_deg, 0.0);
    double box_kg = hs_team_gb_box_kg(person->sex, person->stature_m,
                                      hand_height_m(asking->run, station, bearer),
                                      place->bearers[bearer].reach_m);

    limit->source = HS_SRC_team_gb;
    limit->confidence = HS_CONF_SEEN;
    limit->one_person_N =
        HS_GRAVITY_m_s2 * box_kg *
        hs_team_gb_factor(turn_deg, hs_or(asking->task->work.cycles_per_hour, 1.0));
}

static void
one_mil(const hs_asking *asking, int station, int bearer, hs_team_limit *limit)
{
    const hs_run *run = asking->run;
    const hs_place *place = &run->stations[station].place;
    const hs_motion *motion = &run->setup->motions[0];
    bool men_only = true;
    double way_m = 0.0, mass_kg;

    for (int b = 0; b < run->setup->n_bearers; b++)
        men_only = men_only && run->persons[b].sex != HS_SEX_FEMALE;
    for (int i = 1; i < motion->n_points; i++)
        if (motion->points[i].move == HS_MOVE_CARRY)
            way_m += fabs(motion->points[i].x_m - motion->points[i - 1].x_m);
    mass_kg = hs_team_mil_kg(men_only, place->move == HS_MOVE_CARRY, way_m,
                             hand_height_m(run, station, bearer), &limit->confidence);
    limit->source = HS_SRC_team_mil;
    limit->one_person_N = HS_GRAVITY_m_s2 * mass_kg;
    if (!hs_has(mass_kg))
        limit->silent = HS_REASON_team_silent_here;
}

/* Recommended mass without frequency: what the reference mass of 25 kg for adults at work becomes by the place's multipliers. */
static void
one_en(const hs_asking *asking, int station, int bearer, hs_team_limit *limit)
{
    const hs_run *run = asking->run;
    const hs_place *place = &run->stations[station].place;
    double h_m = fmax(place->bearers[bearer].reach_m, 0.25),
           v_m = hand_height_m(run, station, bearer);
    double turn_deg = hs_or(asking->task->route.points[place->point].turn_deg, 0.0), d_m;
    const hs_motion *motion = &run->setup->motions[0];

    limit->source = HS_SRC_team_en;
    limit->confidence = HS_CONF_MEMORY; /* the reference mass */
    if (place->move != HS_MOVE_LIFT && place->move != HS_MOVE_LOWER) {
        limit->silent = HS_REASON_team_silent_here;
        return;
    }
    if (hs_or(asking->task->work.cycles_per_hour, 1.0) > 12.0 ||
        hs_or(asking->task->work.hours, 1.0) > 1.0) {
        limit->silent = HS_REASON_team_silent_rate;
        return;
    }
    d_m = fmax(fabs(motion->points[place->point].z_m - motion->points[place->point - 1].z_m),
               0.25);
    if (h_m > 0.63 || !(v_m >= 0.0) || v_m > 1.75 || d_m > 1.75 || fabs(turn_deg) > 135.0) {
        limit->one_person_N = 0.0;
        return;
    }
    limit->one_person_N = HS_GRAVITY_m_s2 * 25.0 * (0.25 / h_m) *
                          (1.0 - 0.3 * fabs(v_m - 0.75)) * (0.82 + 0.045 / d_m) *
                          (1.0 - 0.0032 * fabs(turn_deg));
}

typedef struct {
    const hs_person *person;
    hs_body_input input;
    hs_body_state posture;
} press;

static double
beyond_strength(double force_N, void *data)
{
    press *p = data;
    hs_body_state state = p->posture;

    p->input.felt_N = force_N;
    if (hs_body_at(p->person, &p->input, &state) != HS_OK)
        return HS_ABSENT;
    return state.greatest - 1.0;
}

/* The member's own strength: the load on the hands at which the first joint reaches its strength in the posture found. */
static void
one_measured(const hs_asking *asking, int station, int bearer, hs_team_limit *limit)
{
    const hs_bearer_state *state = &asking->run->stations[station].bearers[bearer];
    press p = {
        .person = &asking->run->persons[bearer], .input = state->input, .posture = state->body};
    double force_N;

    limit->source = HS_SRC_team_measured;
    limit->confidence = HS_CONF_DERIVED;
    if (!state->has_body || !state->body.is_found ||
        hs_root_find(beyond_strength, &p, 0.0, 20.0 * HS_GRAVITY_m_s2 * 10.0, 1e-3, &force_N,
                     NULL) != HS_OK) {
        limit->silent = HS_REASON_team_silent_here;
        return;
    }
    limit->one_person_N =
        force_N / asking->run->stations[station].place.bearers[bearer].walking_factor;
}

void
hs_team_one_person(const hs_asking *asking, int station, int bearer, hs_team_limit *ret_limit)
{
    int n = asking->run->setup->n_bearers;

    *ret_limit = (hs_team_limit){.one_person_N = HS_ABSENT,
                                 .fraction = hs_team_fraction(&asking->task->policy, n),
                                 .confidence = HS_CONF_SEEN};
    if (!hs_has(ret_limit->fraction)) {
        ret_limit->silent = asking->task->policy.team_rule == HS_TEAM_MEASURED
                                ? HS_REASON_team_no_factor
                                : HS_REASON_team_silent_number;
        return;
    }
    switch (asking->task->policy.team_rule) {
    case HS_TEAM_GB:
        one_gb(asking, station, bearer, ret_limit);
        break;
    case HS_TEAM_MIL_STD_1472:
        one_mil(asking, station, bearer, ret_limit);
        break;
    case HS_TEAM_EN_1005_2:
        one_en(asking, station, bearer, ret_limit);
        break;
    case HS_TEAM_MEASURED:
        one_measured(asking, station, bearer, ret_limit);
        break;
    case HS_TEAM_NONE:
    default:
        ret_limit->silent = HS_REASON_share_no_rule;
        break;
    }
}

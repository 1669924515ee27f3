/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what do the drawing's tests draw?
 * Answer:    a gear motor carried 6 m from a pallet onto a base frame: by two, by one in a powered suit, by one for whom no
 *            posture was found, by two at its sides. Invented; postures by plain geometry.
 * Not here:  real results (core/assess.c). */
#include "scene_fixture.h"

#include "quantity.h"

#include <string.h>

#define G_m_s2 9.80665 /* standard gravity, exact */

enum {
    N_POINTS = 5,
    PER_LEG = 9,
    N_SAMPLES = (N_POINTS - 1) * PER_LEG,
    MOST_BEARERS = 2
};

static const hs_part parts[] = {
    {.id = "housing",
     .shape = HS_SHAPE_BOX,
     .size_m = {0.44, 0.30, 0.26},
     .centre_m = {0, 0, 0.17},
     .mass_kg = 29},
    {.id = "feet",
     .shape = HS_SHAPE_BOX,
     .size_m = {0.34, 0.30, 0.04},
     .centre_m = {0, 0, 0.02},
     .mass_kg = 3},
    {.id = "motor",
     .shape = HS_SHAPE_CYLINDER,
     .axis = HS_AXIS_X,
     .radius_m = 0.085,
     .length_m = 0.20,
     .centre_m = {0.32, 0, 0.18},
     .mass_kg = 10},
    {.id = "shaft",
     .shape = HS_SHAPE_CYLINDER,
     .axis = HS_AXIS_Y,
     .radius_m = 0.035,
     .length_m = 0.36,
     .centre_m = {-0.10, 0, 0.18},
     .mass_kg = 0.6},
    {.id = "oil space",
     .shape = HS_SHAPE_BOX,
     .size_m = {0.16, 0.2, 0.1},
     .centre_m = {0.08, 0, 0.12},
     .is_void = true,
     .density_kg_m3 = 7000},
};
static const hs_grip grips[] = {
    {.id = "rear", .at_m = {-0.22, 0, 0.20}, .kind = HS_GRIP_HANDLE, .hands = 2},
    {.id = "front", .at_m = {0.42, 0, 0.20}, .kind = HS_GRIP_HANDLE, .hands = 2},
    {.id = "left", .at_m = {0, 0.15, 0.30}, .kind = HS_GRIP_STRAP, .hands = 2},
    {.id = "right", .at_m = {0, -0.15, 0.30}, .kind = HS_GRIP_STRAP, .hands = 2},
};
static const hs_vec2 no_floor[] = {{0, 0}};
static const hs_obstacle obstacles[] = {{"base frame", {6.25, 6.95}, {0, 0.55}}};
static const hs_opening openings[] = {{"gate", 7.6, 1.2, 2.1}};
#define POINT(x, z, how, reach)                                                                \
    {                                                                                          \
        .x_m = x, .z_m = z, .y_m = 0, .reach_m = reach, .pitch_deg = HS_ABSENT, .move = how    \
    }
static const hs_point points[N_POINTS] = {
    POINT(0, 0.15, HS_MOVE_START, 0.38), POINT(0, 0.62, HS_MOVE_LIFT, 0.38),
    POINT(6, 0.62, HS_MOVE_CARRY, 0.34), POINT(6.6, 0.70, HS_MOVE_CARRY, 0.45),
    POINT(6.6, 0.55, HS_MOVE_LOWER, 0.45)};
static const hs_worker workers[] = {{"W1", "", HS_SEX_FEMALE, 1.63, 66, 44},
                                    {"W2", "", HS_SEX_MALE, 1.76, 79, 38}};
static const hs_effector effectors[] = {{.id = "hooks", .kind = HS_EFFECTOR_HOOK}};
static const hs_suit suits[] = {{.id = "S",
                                 .kind = HS_SUIT_POWERED,
                                 .mass_kg = 38,
                                 .self_carried = 0.9,
                                 .foot_heel_m = 0.08,
                                 .foot_toe_m = 0.24,
                                 .foot_width_m = 0.14,
                                 .n_effectors = 1,
                                 .effectors = effectors}};
static const int rear[] = {0}, front[] = {1}, left[] = {2}, right[] = {3}, both[] = {2, 3};
static const hs_bearer crew[] = {{.id = "A",
                                  .worker = 0,
                                  .suit = -1,
                                  .effector = -1,
                                  .n_grips = 1,
                                  .grips = rear,
                                  .stands = HS_STANDS_BEHIND},
                                 {.id = "B",
                                  .worker = 1,
                                  .suit = -1,
                                  .effector = -1,
                                  .n_grips = 1,
                                  .grips = front,
                                  .stands = HS_STANDS_AHEAD}};
static const hs_bearer suited[] = {{.id = "A",
                                    .worker = 1,
                                    .suit = 0,
                                    .effector = 0,
                                    .n_grips = 1,
                                    .grips = rear,
                                    .stands = HS_STANDS_BEHIND}};
static const hs_bearer lost[] = {{.id = "A",
                                  .worker = 0,
                                  .suit = -1,
                                  .effector = -1,
                                  .n_grips = 2,
                                  .grips = both,
                                  .stands = HS_STANDS_BEHIND}};
static const hs_bearer aside[] = {{.id = "A",
                                   .worker = 0,
                                   .suit = -1,
                                   .effector = -1,
                                   .n_grips = 1,
                                   .grips = left,
                                   .stands = HS_STANDS_LEFT},
                                  {.id = "B",
                                   .worker = 1,
                                   .suit = -1,
                                   .effector = -1,
                                   .n_grips = 1,
                                   .grips = right,
                                   .stands = HS_STANDS_RIGHT}};
static const hs_option options[HS_FIXTURE_N_OPTIONS] = {
    {.id = "today", .name = "Today", .n_bearers = 2, .bearers = crew},
    {.id = "suited", .name = "Proposed", .n_bearers = 1, .bearers = suited},
    {.id = "alone", .name = "Alone", .n_bearers = 1, .bearers = lost},
    {.id = "aside", .name = "At the sides", .n_bearers = 2, .bearers = aside}};

static hs_task task;
static hs_results results;
static hs_option_result option_results[HS_FIXTURE_N_OPTIONS];
static hs_sample samples[HS_FIXTURE_N_OPTIONS][N_SAMPLES];
static hs_grip_sample held[HS_FIXTURE_N_OPTIONS][N_SAMPLES][4];
static hs_finding findings[HS_FIXTURE_N_OPTIONS][2];
static hs_bearer_sample bearers[HS_FIXTURE_N_OPTIONS][N_SAMPLES][MOST_BEARERS];

static hs_vec2
elbow_of(hs_vec2 shoulder, hs_vec2 hand, double upper, double lower)
{
    double dx = hand.x - shoulder.x, dz = hand.y - shoulder.y, d = hypot(dx, dz);
    double a = (upper * upper - lower * lower + d * d) / (2 * d),
           h = sqrt(fmax(upper * upper - a * a, 0));

    /* the elbow lies behind and below the line from shoulder to hand */
    return (hs_vec2){shoulder.x + dx * a / d + dz * h / d,
                     shoulder.y + dz * a / d - dx * h / d};
}

/* The least bend of knees and trunk with which the hands reach. */
static void
pose(hs_bearer_sample *bearer, double h, double reach_m, double up_m)
{
    double upper = 0.186 * h, lower = 0.20 * h;

    for (double s = 0; s <= 1.0; s += 0.01) {
        double a1 = 0.62 * s, a2 = 1.15 * s, lean = 0.06 + 0.85 * s;
        hs_vec2 ankle = {0, 0.039 * h},
                knee = {ankle.x + 0.246 * h * sin(a1), ankle.y + 0.246 * h * cos(a1)};
        hs_vec2 hip = {knee.x - 0.245 * h * sin(a2), knee.y + 0.245 * h * cos(a2)};
        hs_vec2 shoulder = {hip.x + 0.288 * h * sin(lean), hip.y + 0.288 * h * cos(lean)};

        if (hypot(reach_m - shoulder.x, up_m - shoulder.y) > 0.985 * (upper + lower))
            continue;
        bearer->has_pose = true;
        bearer->pose[HS_POSE_ANKLE] = ankle;
        bearer->pose[HS_POSE_KNEE] = knee;
        bearer->pose[HS_POSE_HIP] = hip;
        bearer->pose[HS_POSE_L5S1] =
            (hs_vec2){hip.x + 0.055 * h * sin(lean), hip.y + 0.055 * h * cos(lean)};
        bearer->pose[HS_POSE_SHOULDER] = shoulder;
        bearer->pose[HS_POSE_NECK] =
            (hs_vec2){hip.x + 0.33 * h * sin(lean), hip.y + 0.33 * h * cos(lean)};
        bearer->pose[HS_POSE_HAND] = (hs_vec2){reach_m, up_m};
        bearer->pose[HS_POSE_ELBOW] =
            elbow_of(shoulder, bearer->pose[HS_POSE_HAND], upper, lower);
        return;
    }
    bearer->shortfall_m = 0.12;
}

static void
stand(hs_bearer_sample *bearer, const hs_bearer *asked, const hs_sample *sample, double reach_m)
{
    double facing[] = {0, 0, G_PI, -G_PI / 2, G_PI / 2};
    hs_vec2 at = {0, 0};
    double up_m = 0;

    for (int i = 0; i < asked->n_grips; i++) {
        at.x += (sample->x_m + grips[asked->grips[i]].at_m.x) / asked->n_grips;
        at.y += grips[asked->grips[i]].at_m.y / asked->n_grips;
        up_m += (sample->z_m + grips[asked->grips[i]].at_m.z) / asked->n_grips;
    }
    bearer->facing_rad = facing[asked->stands];
    bearer->feet_x_m = at.x - reach_m * cos(bearer->facing_rad);
    bearer->feet_y_m = at.y - reach_m * sin(bearer->facing_rad);
    bearer->floor_z_m = 0;
    pose(bearer, workers[asked->worker].stature_m, reach_m, up_m);
}

static void
balance(hs_bearer_sample *bearer, gboolean is_suited)
{
    double heel = is_suited ? -0.08 : -0.05, toe = is_suited ? 0.24 : 0.17, half = 0.15;
    double c = cos(bearer->facing_rad), s = sin(bearer->facing_rad);
    hs_vec2 corners[4] = {{heel, -half}, {toe, -half}, {toe, half}, {heel, half}};

    bearer->n_base = 4;
    for (int i = 0; i < 4; i++)
        bearer->base_m[i] = (hs_vec2){bearer->feet_x_m + c * corners[i].x - s * corners[i].y,
                                      bearer->feet_y_m + s * corners[i].x + c * corners[i].y};
    bearer->resultant_m = (hs_vec2){bearer->feet_x_m + c * 0.07, bearer->feet_y_m + s * 0.07};
    bearer->balance_margin_m =
        (is_suited ? 0.090 : 0.110) - 0.08 * bearer->pose[HS_POSE_SHOULDER].x;
}

static void
load_forces(hs_bearer_sample *bearer, const hs_bearer *asked, double share_N)
{
    const hs_worker *worker = &workers[asked->worker];
    double suit_kg = asked->suit >= 0 ? suits[asked->suit].mass_kg : 0;

    bearer->share_N = bearer->hand_force_N = share_N;
    bearer->share_least_N = bearer->share_most_N = HS_ABSENT;
    bearer->felt_force_N = asked->suit >= 0 ? share_N / 8 + 15 : share_N;
    bearer->suit_force_N = share_N - bearer->felt_force_N;
    bearer->ground_force_N = share_N + (worker->mass_kg + suit_kg) * G_m_s2;
    bearer->compression_N =
        1200 + 6 * bearer->felt_force_N + 900 * bearer->pose[HS_POSE_SHOULDER].x;
    if (asked->suit >= 0)
        bearer->power_lost = (hs_power_lost){true, HS_LOST_LOCKED, 0, 12, 9};
    balance(bearer, asked->suit >= 0);
}

static void
fill(int o, int i)
{
    hs_sample *sample = &samples[o][i];
    int leg = i / PER_LEG + 1;
    double u = (double)(i % PER_LEG) / (PER_LEG - 1), t = u * u * u * (10 - 15 * u + 6 * u * u);
    const hs_point *a = &points[leg - 1], *b = &points[leg];
    const hs_option *option = &options[o];
    double weight_N = 42.6 * G_m_s2, all_kg = 42.6,
           x_kg = 42.6 * (a->x_m + (b->x_m - a->x_m) * t + 0.05), z_kg;

    *sample = (hs_sample){.t_s = (leg - 1) * 2.0 + u * 2,
                          .route = leg + u,
                          .leg = leg,
                          .x_m = a->x_m + (b->x_m - a->x_m) * t,
                          .z_m = a->z_m + (b->z_m - a->z_m) * t,
                          .bearers = bearers[o][i]};
    sample->cg_m = (hs_vec3){sample->x_m + 0.05, 0, sample->z_m + 0.165};
    z_kg = 42.6 * sample->cg_m.z;
    for (int k = 0; k < option->n_bearers; k++) {
        hs_bearer_sample *bearer = &bearers[o][i][k];
        double share = option->n_bearers == 1  ? 1
                       : o == HS_FIXTURE_ASIDE ? 0.5
                       : k == 0                ? 0.578125
                                               : 0.421875;
        double kg = workers[option->bearers[k].worker].mass_kg +
                    (option->bearers[k].suit >= 0 ? 38 : 0);

        stand(bearer, &option->bearers[k], sample,
              a->reach_m + (b->reach_m - a->reach_m) * t + (o == HS_FIXTURE_LOST ? 0.5 : 0));
        load_forces(bearer, &option->bearers[k],
                    weight_N * share * (1 + 0.1 * sin(2 * G_PI * u)));
        all_kg += kg;
        x_kg += kg * (bearer->feet_x_m - 0.02 * cos(bearer->facing_rad));
        z_kg += kg * 0.56 * workers[option->bearers[k].worker].stature_m;
    }
    for (int k = 0; k < option->n_bearers; k++)
        for (int g = 0; g < option->bearers[k].n_grips; g++)
            held[o][i][sample->n_grips++] =
                (hs_grip_sample){option->bearers[k].grips[g],
                                 bearers[o][i][k].share_N / option->bearers[k].n_grips};
    sample->grips = held[o][i];
    sample->combined_kg = all_kg;
    sample->combined_m = (hs_vec3){x_kg / all_kg, 0, z_kg / all_kg};
}

static void
make(void)
{
    task.load = (hs_load){.name = "gear motor",
                          .n_parts = (int)G_N_ELEMENTS(parts),
                          .parts = parts,
                          .n_grips = (int)G_N_ELEMENTS(grips),
                          .grips = grips};
    task.site = (hs_site){.n_floor = 0,
                          .floor = no_floor,
                          .headroom_m = HS_ABSENT,
                          .width_m = HS_ABSENT,
                          .n_obstacles = 1,
                          .obstacles = obstacles,
                          .n_openings = 1,
                          .openings = openings};
    task.route = (hs_route){N_POINTS, points};
    task.n_workers = 2;
    task.workers = workers;
    task.n_suits = 1;
    task.suits = suits;
    task.n_options = HS_FIXTURE_N_OPTIONS;
    task.options = options;
    for (int o = 0; o < HS_FIXTURE_N_OPTIONS; o++) {
        for (int i = 0; i < N_SAMPLES; i++)
            fill(o, i);
        findings[o][0] = (hs_finding){
            .check = HS_CHECK_spine_compression, .limit = 3400, .status = HS_STATUS_WITHIN};
        findings[o][1] =
            (hs_finding){.check = HS_CHECK_balance, .limit = 0.06, .status = HS_STATUS_NEAR};
        option_results[o] = (hs_option_result){.id = options[o].id,
                                               .name = options[o].name,
                                               .is_baseline = o == 0,
                                               .asked = &options[o],
                                               .n_samples = N_SAMPLES,
                                               .n_findings = 2,
                                               .findings = findings[o],
                                               .samples = samples[o]};
    }
    results = (hs_results){.load = {.mass_kg = 42.6, .centre_m = {0.05, 0, 0.165}},
                           .n_options = HS_FIXTURE_N_OPTIONS,
                           .options = option_results};
}

const hs_task *
hs_fixture_task(void)
{
    if (task.n_options == 0)
        make();
    return &task;
}

const hs_results *
hs_fixture_results(void)
{
    hs_fixture_task();
    return &results;
}

hs_scene_request
hs_fixture_request(int option, double route)
{
    hs_scene_request request = {.task = hs_fixture_task(),
                                .results = hs_fixture_results(),
                                .option = option,
                                .layers = hs_layers_default(),
                                .chosen_point = -1,
                                .folds = TRUE};

    for (int i = 0; i < N_SAMPLES; i++)
        if (fabs(samples[option][i].route - route) <
            fabs(samples[option][request.sample].route - route))
            request.sample = i;
    return request;
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  who does what in an option, with every reference and default resolved?
 * Answer:    hs_setup_make(): bearers, grips in use, hands, facing, reach at each point, motion.
 * Not here:  one instant (place.c). */
#include "floor.h"
#include "place.h"
#include "units.h"

#define BELLY_FREE_APART_m 0.3 /* file format: a container each side */
#define REACH_BASE_m                                                                           \
    0.20 /* NIOSH 94-110 (1994, rev. 2021): H = 20 + W/2 cm, MEMORY; file format, Defaults */
#define REACH_LOW_m 0.25 /* the same for hands lower than 0.25 m */
#define LOW_HANDS_m 0.25

static hs_vec2
turned(const hs_setup *setup, hs_vec3 at_m)
{
    double c = cos(setup->heading_rad), s = sin(setup->heading_rad);

    return (hs_vec2){c * at_m.x - s * at_m.y, s * at_m.x + c * at_m.y};
}

static hs_stands
stands_of(const hs_setup *setup, const hs_bearer *asked)
{
    double mean_m = 0.0;

    if (asked->stands != 0)
        return asked->stands;
    if (setup->option->n_bearers == 1)
        return HS_STANDS_BEHIND;
    for (int i = 0; i < asked->n_grips; i++)
        mean_m +=
            turned(setup, setup->task->load.grips[asked->grips[i]].at_m).x / asked->n_grips;
    return mean_m <= turned(setup, setup->load->cg_m).x + HS_SAME_PLACE_m ? HS_STANDS_BEHIND
                                                                          : HS_STANDS_AHEAD;
}

static double
facing_of(hs_stands stands)
{
    switch (stands) {
    case HS_STANDS_AHEAD:
        return HS_PI;
    case HS_STANDS_LEFT:
        return -HS_PI / 2.0;
    case HS_STANDS_RIGHT:
        return HS_PI / 2.0;
    case HS_STANDS_BEHIND:
    default:
        return 0.0;
    }
}

static void
resolve_hands(const hs_setup *setup, hs_bearer_setup *bearer, hs_assumptions *assumptions)
{
    const hs_load *load = &setup->task->load;
    int total = 0;
    double left_m = -INFINITY, right_m = INFINITY;

    for (int i = 0; i < bearer->asked->n_grips; i++) {
        int g = bearer->asked->grips[i], hands = load->grips[g].hands;
        hs_vec2 at_m = turned(setup, load->grips[g].at_m);
        double across_m = -sin(bearer->facing_rad) * at_m.x + cos(bearer->facing_rad) * at_m.y;

        if (hands == 0) {
            hands = bearer->asked->n_grips == 1 ? 2 : 1;
            hs_assume(assumptions, hands, NULL, HS_SAY(assume_hands, hands),
                      "load.grips[%d].hands", g);
        }
        if (load->grips[g].coupling == 0)
            hs_assume(assumptions, HS_ABSENT, "fair", HS_SAY(assume_coupling),
                      "load.grips[%d].coupling", g);
        bearer->hands[i] = hands;
        total += hands;
        left_m = fmax(left_m, across_m);
        right_m = fmin(right_m, across_m);
    }
    bearer->is_one_handed = total == 1;
    bearer->belly_free = bearer->asked->n_grips == 2 && left_m - right_m >= BELLY_FREE_APART_m;
}

/* Distance from the hands' middle to the load's face on the bearer's side, level, in plan. */
static double
to_face_m(const hs_setup *setup, const hs_bearer_setup *bearer)
{
    double c = cos(bearer->facing_rad), s = sin(bearer->facing_rad), face_m = INFINITY,
           hands_m = 0.0;

    if (!setup->load->has_box)
        return 0.0;
    for (int corner = 0; corner < 4; corner++) {
        hs_vec3 at = {corner & 1 ? setup->load->most_m.x : setup->load->least_m.x,
                      corner & 2 ? setup->load->most_m.y : setup->load->least_m.y, 0.0};
        hs_vec2 t = turned(setup, at);

        face_m = fmin(face_m, c * t.x + s * t.y);
    }
    for (int i = 0; i < bearer->asked->n_grips; i++) {
        hs_vec2 t = turned(setup, setup->task->load.grips[bearer->asked->grips[i]].at_m);

        hands_m += (c * t.x + s * t.y) / bearer->asked->n_grips;
    }
    return fmax(0.0, hands_m - face_m);
}

/* Height of the hands at a point, level or at the point's pitch, over the floor under them. */
static double
hands_height_m(const hs_setup *setup, const hs_bearer_setup *bearer, const hs_point *point)
{
    hs_mat3 turn = hs_mat3_load_to_world(hs_or(point->pitch_deg, 0.0) * HS_RAD_PER_DEG,
                                         setup->heading_rad);
    hs_vec3 mean = {0, 0, 0};

    for (int i = 0; i < bearer->asked->n_grips; i++)
        mean = hs_vec3_add(mean,
                           hs_vec3_scale(setup->task->load.grips[bearer->asked->grips[i]].at_m,
                                         1.0 / bearer->asked->n_grips));
    mean = hs_mat3_apply(&turn, mean);
    return point->z_m + mean.z - hs_floor_height_m(&setup->task->site, point->x_m + mean.x);
}

static double *
resolve_reach(const hs_setup *setup,
              const hs_bearer_setup *bearer,
              int option_index,
              int bearer_index,
              hs_arena *arena,
              hs_assumptions *assumptions)
{
    const hs_route *route = &setup->task->route;
    const hs_option *option = setup->option;
    double *reach_m = HS_NEW(arena, double, route->n_points);

    for (int i = 0; i < route->n_points; i++) {
        const hs_point *point = &route->points[i];

        reach_m[i] = option->reach_m;
        if (!hs_has(reach_m[i]) && i < option->n_reach)
            reach_m[i] = option->reach_each_m[i];
        if (!hs_has(reach_m[i]))
            reach_m[i] = point->reach_m;
        if (hs_has(reach_m[i]))
            continue;
        double base_m =
            hands_height_m(setup, bearer, point) < LOW_HANDS_m ? REACH_LOW_m : REACH_BASE_m;

        reach_m[i] = base_m + to_face_m(setup, bearer);
        if (option_index >= 0)
            hs_assume(assumptions, reach_m[i], NULL,
                      HS_SAY(assume_reach, reach_m[i], option_index + 1, bearer_index + 1),
                      "route.points[%d].reach_m", i);
    }
    return reach_m;
}

static void
resolve_bearer(const hs_setup *setup,
               int index,
               hs_bearer_setup *bearer,
               hs_assumptions *assumptions)
{
    const hs_bearer *asked = &setup->option->bearers[index];

    bearer->asked = asked;
    bearer->worker = &setup->task->workers[asked->worker];
    bearer->suit = asked->suit >= 0 ? &setup->task->suits[asked->suit] : NULL;
    bearer->effector = bearer->suit != NULL && asked->effector >= 0
                           ? &bearer->suit->effectors[asked->effector]
                           : NULL;
    bearer->style = asked->style != 0 ? asked->style : HS_STYLE_FREE;
    bearer->stands = stands_of(setup, asked);
    bearer->facing_rad = facing_of(bearer->stands);
    resolve_hands(setup, bearer, assumptions);
}

static void
list_used(hs_setup *setup, hs_arena *arena)
{
    int n = 0, *used, *used_by, *used_hands;

    for (int b = 0; b < setup->n_bearers; b++)
        n += setup->option->bearers[b].n_grips;
    used = HS_NEW(arena, int, n);
    used_by = HS_NEW(arena, int, n);
    used_hands = HS_NEW(arena, int, n);
    n = 0;
    for (int b = 0; b < setup->n_bearers; b++)
        for (int i = 0; i < setup->option->bearers[b].n_grips; i++, n++) {
            used[n] = setup->option->bearers[b].grips[i];
            used_by[n] = b;
            used_hands[n] = setup->bearers[b].hands[i];
        }
    setup->n_used = n;
    setup->used = used;
    setup->used_by = used_by;
    setup->used_hands = used_hands;
}

static bool
is_baseline(const hs_task *task, const hs_option *option)
{
    for (int i = 0; i < task->n_options; i++)
        if (task->options[i].baseline == HS_YES)
            return &task->options[i] == option;
    return option == &task->options[0];
}

hs_status
hs_setup_make(const hs_task *task,
              const hs_load_state *load,
              const hs_option *option,
              int option_index,
              hs_arena *arena,
              hs_assumptions *assumptions,
              hs_setup *ret_setup,
              hs_error *error)
{
    hs_bearer_setup *bearers = HS_NEW(arena, hs_bearer_setup, option->n_bearers);
    hs_motion *motions = HS_NEW(arena, hs_motion, option->n_bearers);
    hs_setup setup = {.task = task,
                      .load = load,
                      .option = option,
                      .heading_rad = hs_or(option->heading_deg, 0.0) * HS_RAD_PER_DEG,
                      .n_bearers = option->n_bearers,
                      .bearers = bearers,
                      .motions = motions,
                      .is_baseline = is_baseline(task, option)};

    if (!(option->n_bearers >= 1 && option->n_bearers <= 8))
        return hs_refuse(error, "options[].bearers", option->n_bearers, 1, 8);
    for (int b = 0; b < option->n_bearers; b++)
        resolve_bearer(&setup, b, &bearers[b], assumptions);
    list_used(&setup, arena);
    if (setup.n_used < 1 || setup.n_used > 16)
        return hs_refuse(error, "options[].bearers[].grips", setup.n_used, 1, 16);
    for (int b = 0; b < option->n_bearers; b++) {
        const double *reach_m =
            resolve_reach(&setup, &bearers[b], option_index, b, arena, assumptions);

        HS_TRY(hs_route_solve(&task->route, reach_m, option->n_bearers >= 2, arena, assumptions,
                              &motions[b], error));
    }
    int n = motions[0].n_legs * option->n_bearers;
    bool *stairs = HS_NEW(arena, bool, n);
    double *feet_from_m = HS_NEW(arena, double, n), *feet_to_m = HS_NEW(arena, double, n);

    hs_place_prepare(&setup, stairs, feet_from_m, feet_to_m);
    setup.stairs = stairs;
    setup.feet_from_m = feet_from_m;
    setup.feet_to_m = feet_to_m;
    *ret_setup = setup;
    return HS_OK;
}

hs_status
hs_setup_reach(const hs_task *task,
               int option,
               hs_arena *arena,
               const double **ret_reach_m,
               hs_error *error)
{
    hs_load_state load;
    hs_setup setup;

    HS_TRY(hs_load_solve(&task->load, arena, NULL, NULL, &load, error));
    HS_TRY(
        hs_setup_make(task, &load, &task->options[option], option, arena, NULL, &setup, error));
    *ret_reach_m = setup.motions[0].reach_m;
    return HS_OK;
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what would the task be with one input changed?
 * Answer:    a copy of the task in the arena, all else shared.
 * Not here:  which change to try (breakeven.c, doubt.c). */
#include "changed_task.h"

#include <string.h>

#define REACH_LEAST_m 0.05 /* the file format's least reach; nothing nearer is tried */

static hs_task *
copy_of(const hs_task *task, hs_arena *arena)
{
    hs_task *made = HS_NEW(arena, hs_task, 1);

    *made = *task;
    return made;
}

static const hs_weighing *
scale_weighings(const hs_load *load, double k, hs_arena *arena)
{
    hs_weighing *made = HS_NEW(arena, hs_weighing, load->n_weighings);

    for (int i = 0; i < load->n_weighings; i++) {
        hs_reading *readings = HS_NEW(arena, hs_reading, load->weighings[i].n_readings);

        made[i] = load->weighings[i];
        for (int j = 0; j < made[i].n_readings; j++) {
            readings[j] = load->weighings[i].readings[j];
            readings[j].reading_kg *= k;
        }
        made[i].readings = readings;
    }
    return made;
}

hs_task *
hs_change_mass(const hs_task *task, double k, hs_arena *arena)
{
    hs_task *made = copy_of(task, arena);
    hs_part *parts = HS_NEW(arena, hs_part, task->load.n_parts);

    for (int i = 0; i < task->load.n_parts; i++) {
        parts[i] = task->load.parts[i];
        parts[i].mass_kg *= k;
        parts[i].density_kg_m3 *= k;
        parts[i].liquid_density_kg_m3 *= k;
    }
    made->load.parts = parts;
    made->load.weighings = scale_weighings(&task->load, k, arena);
    return made;
}

static const hs_suit *
scale_suits(const hs_task *task, double gain, double friction, hs_arena *arena)
{
    hs_suit *suits = HS_NEW(arena, hs_suit, task->n_suits);

    for (int i = 0; i < task->n_suits; i++) {
        hs_effector *effectors = HS_NEW(arena, hs_effector, task->suits[i].n_effectors);

        suits[i] = task->suits[i];
        if (hs_has(suits[i].gain_hands))
            suits[i].gain_hands = fmax(1.0, suits[i].gain_hands * gain);
        if (hs_has(suits[i].gain_trunk))
            suits[i].gain_trunk = fmax(1.0, suits[i].gain_trunk * gain);
        for (int j = 0; j < suits[i].n_effectors; j++) {
            effectors[j] = suits[i].effectors[j];
            effectors[j].friction *= friction;
        }
        suits[i].effectors = effectors;
    }
    return suits;
}

hs_task *
hs_change_friction(const hs_task *task, double k, double otherwise, hs_arena *arena)
{
    hs_task *made = copy_of(task, arena);
    hs_grip *grips = HS_NEW(arena, hs_grip, task->load.n_grips);

    for (int i = 0; i < task->load.n_grips; i++) {
        grips[i] = task->load.grips[i];
        if (hs_has(grips[i].friction))
            grips[i].friction *= k;
        else if (grips[i].kind == HS_GRIP_PAD)
            grips[i].friction = otherwise * k;
    }
    made->load.grips = grips;
    made->suits = scale_suits(task, 1.0, k, arena);
    return made;
}

hs_task *
hs_change_gain(const hs_task *task, double k, hs_arena *arena)
{
    hs_task *made = copy_of(task, arena);

    made->suits = scale_suits(task, k, 1.0, arena);
    return made;
}

hs_task *
hs_change_reach(
    const hs_task *task, int option, const double *reach_m, double d_m, hs_arena *arena)
{
    hs_task *made = copy_of(task, arena);
    hs_option *options = HS_NEW(arena, hs_option, task->n_options);
    double *each_m = HS_NEW(arena, double, task->route.n_points);

    memcpy(options, task->options, (size_t)task->n_options * sizeof *options);
    for (int i = 0; i < task->route.n_points; i++)
        each_m[i] = fmax(REACH_LEAST_m, reach_m[i] + d_m);
    options[option].reach_m = HS_ABSENT;
    options[option].n_reach = task->route.n_points;
    options[option].reach_each_m = each_m;
    made->options = options;
    return made;
}

hs_task *
hs_change_sketched(const hs_task *task, double d_m, hs_arena *arena)
{
    hs_task *made = copy_of(task, arena);
    hs_point *points = HS_NEW(arena, hs_point, task->route.n_points);

    memcpy(points, task->route.points, (size_t)task->route.n_points * sizeof *points);
    for (int i = 0; i < task->route.n_points; i++)
        if (points[i].sketched == HS_YES)
            points[i].z_m += d_m;
    made->route.points = points;
    return made;
}

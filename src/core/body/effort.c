/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what is one evaluation of the posture search?
 * Answer:    hs_effort_ask(): squared efforts, and the constraints of joints, reach, belly and balance, with slopes.
 * Not here:  where to start and what to keep (posture.c). */
#include "effort.h"

#include "units.h"

#include <string.h>

/* HS_SRC_joint_limits. Ranges in degrees (docs/body.md): loaded ankle 25 straight and 31-39 bent (Baumbach 2014), others Soucie 2011 and Boone &
 * Azen 1979; the lesser of women's and men's. */
#define ANKLE_LEAST_deg    (-10.0)
#define ANKLE_MOST_deg     30.0
#define ANKLE_STRAIGHT_deg 25.0
#define KNEE_MOST_deg      135.0
#define HIP_LEAST_deg      (-15.0)
#define HIP_MOST_deg       125.0
#define TRUNK_LEAST_deg    (-10.0)
#define TRUNK_MOST_deg     110.0
#define SHOULDER_LEAST_deg (-40.0)
#define SHOULDER_MOST_deg  170.0
#define ELBOW_MOST_deg     145.0
/* The arm is never quite straight: two degrees, 0.05 mm of reach, keep the elbow's place smooth (numerics). */
#define ELBOW_LEAST_deg    2.0
/* The small term that makes the unloaded posture one, and how strongly a wished style counts, per rad^2: chosen. */
#define REST_WEIGHT        0.002
#define STYLE_WEIGHT       1.0
/* Past the easy part of the base each further (usable half)^2 costs so much: chosen, docs/body.md. */
#define EDGE_WEIGHT        20.0
/* Standing, people keep their weight off the heels: behind the middle of the soles each (usable half)^2 costs so much: chosen, so
 * that free standing comes within two standard deviations of Woodhull et al. 1985 (docs/body.md). */
#define HEEL_WEIGHT        0.6
/* A joint over its strength is what the edge of the base is used for: chosen, docs/body.md. */
#define OVER_WEIGHT        100.0
#define OVER_FROM          0.97
#define ROUND_deg          2.0 /* corners of the strength tables, in the search alone: numerics */
/* The belly counts for hands from this far below the hip up to the chest (share of hip to shoulder): chosen. */
#define BELLY_FADE_m       0.10
#define BELLY_CHEST        0.70
#define BELLY_OFF_m        0.60

/* What one evaluation is written to. Without slopes: the cost with the broken constraints added, nothing else. */
typedef struct {
    hs_descent_point *point;
    double cost, broken_m2;
    int n;
    bool has_slopes; /* known where it is compiled, so that the other half is left out */
} answer;

HS_INLINE void
must(answer *to, hs_dual room)
{
    if (!to->has_slopes) {
        to->broken_m2 += room.v[0] < 0.0 ? room.v[0] * room.v[0] : 0.0;
        return;
    }
    to->point->room[to->n] = room.v[0];
    for (int k = 0; k < 3; k++)
        to->point->room_slope[to->n][k] = room.v[k + 1];
    to->n++;
}

HS_INLINE void
must_lie(answer *to, hs_dual angle, double least_deg, double most_deg)
{
    must(to, dual_shift(angle, -least_deg * HS_RAD_PER_DEG));
    must(to, dual_shift(dual_scale(angle, -1.0), most_deg * HS_RAD_PER_DEG));
}

/* cost += (k r)^2 with its slope and the Gauss-Newton part of its curvature */
HS_INLINE void
add_square(answer *to, hs_dual r, double weight)
{
    to->cost += weight * r.v[0] * r.v[0];
    for (int i = 0; i < 3 && to->has_slopes; i++) {
        to->point->slope[i] += 2.0 * weight * r.v[0] * r.v[i + 1];
        for (int j = 0; j <= i; j++)
            to->point->curve[i][j] += 2.0 * weight * r.v[i + 1] * r.v[j + 1];
    }
}

/* Shoulder to grip between the most and least that the elbow allows, in metres of distance. */
HS_INLINE void
reach_rooms(const hs_chain *chain, const hs_chain_state *at, hs_dual ret[2])
{
    double upper = chain->person->upper_arm_m, fore = chain->person->forearm_m;
    double most2 = upper * upper + fore * fore +
                   2.0 * upper * fore * cos(ELBOW_LEAST_deg * HS_RAD_PER_DEG);
    double least2 =
        upper * upper + fore * fore + 2.0 * upper * fore * cos(ELBOW_MOST_deg * HS_RAD_PER_DEG);
    double distance = sqrt(at->reach2_m2.v[0]);
    hs_dual d =
        dual_chain(at->reach2_m2, distance, 0.5 / hs_more_of(distance, HS_EFFORT_EXACT_m));

    ret[0] = dual_shift(dual_scale(d, -1.0), sqrt(most2));
    ret[1] = dual_shift(d, -sqrt(least2));
}

/* 0 below 0, 1 above 1, smooth between */
HS_INLINE hs_dual
fade(hs_dual t)
{
    double s = hs_less_of(hs_more_of(t.v[0], 0.0), 1.0);

    return dual_chain(t, s * s * (3.0 - 2.0 * s),
                      s > 0.0 && s < 1.0 ? 6.0 * s * (1.0 - s) : 0.0);
}

/* Hands between hip and chest stay ahead of the line of the trunk by the belly. */
HS_INLINE hs_dual
belly_room(const hs_chain *chain, const hs_chain_state *at)
{
    hs_dual up = dual_scale(
        dual_shift(dual_scale(at->z[HS_CHAIN_HIP], -1.0), chain->input->hand_z_m), 1.0);
    hs_dual height = dual_sub(at->z[HS_CHAIN_SHOULDER], at->z[HS_CHAIN_HIP]);
    hs_dual share, line, from_hip, to_chest, on;

    if (height.v[0] < 0.1)
        height = dual_of(0.1);
    share = dual_div(up, height);
    from_hip = fade(dual_shift(dual_scale(up, 1.0 / BELLY_FADE_m), 1.0));
    to_chest = fade(
        dual_shift(dual_scale(share, -1.0 / (1.0 - BELLY_CHEST)), 1.0 / (1.0 - BELLY_CHEST)));
    on = dual_mul(from_hip, to_chest);
    if (share.v[0] < 0.0)
        share = dual_of(0.0);
    if (share.v[0] > 1.0)
        share = dual_of(1.0);
    line = dual_add(at->x[HS_CHAIN_HIP],
                    dual_mul(share, dual_sub(at->x[HS_CHAIN_SHOULDER], at->x[HS_CHAIN_HIP])));
    line = dual_shift(dual_scale(line, -1.0),
                      chain->input->hand_x_m - chain->person->belly_m + BELLY_OFF_m);
    return dual_axpy(line, -BELLY_OFF_m, on);
}

/* Strength as the search sees it: the table's corners rounded, so that the least effort is a smooth place. */
HS_INLINE hs_dual
strength_of(const hs_chain *chain, int joint, hs_dual angle, hs_dual knee, double moment_Nm)
{
    hs_strength s = hs_strength_at(chain->person, joint, angle.v[0], knee.v[0],
                                   moment_Nm >= 0.0, ROUND_deg);
    hs_dual ret = dual_axpy(dual_chain(angle, s.value_Nm, s.by_angle), s.by_knee, knee);

    ret.v[0] = s.value_Nm;
    return dual_scale(ret, hs_chain_share(chain, joint));
}

HS_INLINE void
add_effort(const hs_effort *s, const hs_chain_state *at, const double x[3], answer *to)
{
    hs_dual shank = {{x[0], 1.0, 0.0, 0.0}}, trunk = {{x[2], 0.0, 0.0, 1.0}};
    hs_dual angle[HS_N_JOINTS] = {shank, at->knee_rad,     at->hip_rad,
                                  trunk, at->shoulder_rad, {{0.0, 0.0, 0.0, 0.0}}};

    for (int j = s->chain->kneels ? HS_JOINT_KNEE : HS_JOINT_ANKLE; j < HS_N_JOINTS; j++) {
        hs_dual strength =
            strength_of(s->chain, j, angle[j], at->knee_rad, at->moment_Nm[j].v[0]);

        hs_dual used = dual_div(at->moment_Nm[j], strength);

        add_square(to, used, 1.0);
        if (used.v[0] > OVER_FROM)
            add_square(to, dual_shift(used, -OVER_FROM), OVER_WEIGHT);
        else if (used.v[0] < -OVER_FROM)
            add_square(to, dual_shift(used, OVER_FROM), OVER_WEIGHT);
    }
    if (!s->chain->kneels)
        add_square(to, dual_scale(shank, 1.0 / (ANKLE_MOST_deg * HS_RAD_PER_DEG)), REST_WEIGHT);
    add_square(to, dual_scale(at->knee_rad, 1.0 / (KNEE_MOST_deg * HS_RAD_PER_DEG)),
               REST_WEIGHT);
    add_square(to, dual_scale(at->hip_rad, 1.0 / (HIP_MOST_deg * HS_RAD_PER_DEG)), REST_WEIGHT);
    if (s->chain->input->style == HS_STYLE_LEGS)
        add_square(to, trunk, STYLE_WEIGHT);
    if (s->chain->input->style == HS_STYLE_BACK)
        add_square(to, at->knee_rad, STYLE_WEIGHT);
}

/* Both ways: no further than the tie allows. */
HS_INLINE void
must_stay(answer *to, hs_dual off, double most_rad)
{
    must(to, dual_shift(off, most_rad));
    must(to, dual_shift(dual_scale(off, -1.0), most_rad));
}

/* The easy part of the base first, the rest of the usable part only where the effort asks for it. */
HS_INLINE void
add_ease(const hs_effort *s, const hs_chain_state *at, answer *to)
{
    const hs_balance_ease *ease = &s->ease;
    hs_dual zmp = at->zmp_m;

    if (!s->chain->kneels && zmp.v[0] < ease->middle_m)
        add_square(to, dual_scale(dual_shift(zmp, -ease->middle_m), 1.0 / ease->feet_half_m),
                   HEEL_WEIGHT);
    if (zmp.v[0] > ease->front_m)
        add_square(to, dual_scale(dual_shift(zmp, -ease->front_m), 1.0 / ease->half_m),
                   EDGE_WEIGHT);
    else if (zmp.v[0] < ease->rear_m)
        add_square(to, dual_scale(dual_shift(zmp, -ease->rear_m), 1.0 / ease->half_m),
                   EDGE_WEIGHT);
}

HS_INLINE void
add_tie(const hs_posture_tie *tie, const double x[3], answer *to)
{
    hs_dual off[3];

    for (int k = 0; k < 3; k++) {
        hs_dual aside = dual_of(x[k] - tie->toward_rad[k]);

        aside.v[k + 1] = 1.0;
        add_square(to, aside, tie->pull);
        off[k] = dual_of(x[k] - tie->near_rad[k]);
        off[k].v[k + 1] = 1.0;
        must_stay(to, off[k], tie->most_rad);
    }
    must_stay(to, dual_add(off[0], off[1]), tie->most_rad);
    must_stay(to, dual_add(off[1], off[2]), tie->most_rad);
}

/* All of one evaluation; compiled once with slopes and once without. */
HS_INLINE void
evaluate(const hs_effort *s, const double x[3], const hs_chain_state *at, answer *to)
{
    hs_dual reach[2], belly, ahead, behind;
    hs_dual shank = {{x[0], 1.0, 0.0, 0.0}}, trunk = {{x[2], 0.0, 0.0, 1.0}};

    if (!s->chain->kneels) {
        must_lie(to, shank, ANKLE_LEAST_deg, ANKLE_MOST_deg);
        /* With a nearly straight knee the calf allows less: a straight cut that keeps 25 degrees below 20 of the knee. */
        must(to, dual_axpy(dual_shift(dual_scale(shank, -1.0),
                                      (ANKLE_STRAIGHT_deg - 10.0) * HS_RAD_PER_DEG),
                           0.5, at->knee_rad));
    }
    must_lie(to, at->knee_rad, 0.0, KNEE_MOST_deg);
    must_lie(to, at->hip_rad, HIP_LEAST_deg, HIP_MOST_deg);
    must_lie(to, trunk, TRUNK_LEAST_deg, TRUNK_MOST_deg);
    reach_rooms(s->chain, at, reach);
    belly = s->chain->input->belly_free ? dual_of(1.0) : belly_room(s->chain, at);
    if (s->aim == HS_EFFORT_REACH) {
        for (int i = 0; i < 2; i++)
            if (reach[i].v[0] < HS_EFFORT_INSIDE_m)
                add_square(to, dual_shift(reach[i], -HS_EFFORT_INSIDE_m), 1.0);
        if (belly.v[0] < 0.0)
            add_square(to, belly, 1.0);
        return;
    }
    must_lie(to, at->shoulder_rad, SHOULDER_LEAST_deg, SHOULDER_MOST_deg);
    must(to,
         s->aim == HS_EFFORT_BALANCE ? dual_shift(reach[0], -HS_EFFORT_INSIDE_m) : reach[0]);
    must(to, reach[1]);
    if (!s->chain->input->belly_free)
        must(to, belly);
    ahead = dual_shift(dual_scale(at->zmp_m, -1.0), s->front_m);
    behind = dual_shift(at->zmp_m, -s->rear_m);
    if (s->aim == HS_EFFORT_BALANCE) {
        add_square(to, ahead.v[0] < behind.v[0] ? ahead : behind,
                   hs_less_of(ahead.v[0], behind.v[0]) < 0.0 ? 1.0 : 0.0);
        return;
    }
    must(to, ahead);
    must(to, behind);
    add_effort(s, at, x, to);
    add_ease(s, at, to);
    if (s->tie != NULL)
        add_tie(s->tie, x, to);
}

void
hs_effort_ask(void *data, const double x[3], hs_descent_point *point)
{
    const hs_effort *s = data;
    answer to = {.point = point, .has_slopes = true};
    hs_chain_state at;

    hs_chain_solve(s->chain, x, &at);
    memset(point->slope, 0, sizeof point->slope);
    memset(point->curve, 0, sizeof point->curve);
    evaluate(s, x, &at, &to);
    point->cost = to.cost;
    point->n = to.n;
    for (int k = 0; k < 3; k++) {
        point->curve[k][k] += s->aim == HS_EFFORT_LEAST ? 1e-6 : 1e-3;
        for (int j = 0; j < k; j++)
            point->curve[j][k] = point->curve[k][j];
    }
}

double
hs_effort_rough(const hs_effort *s,
                const double x[3],
                const hs_chain_turn turn[3],
                double penalty)
{
    answer to = {.has_slopes = false};
    hs_chain_state at;

    hs_chain_values(s->chain, x, turn, &at);
    evaluate(s, x, &at, &to);
    return to.cost + penalty * to.broken_m2;
}

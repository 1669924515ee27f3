/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what is what at one instant of one option?
 * Answer:    hs_place_at(): load, accelerations, grips and feet in the world.
 * Not here:  resolving an option (setup.c), forces (forces/), postures (body/). */
#include "place.h"

#include "floor.h"
#include "units.h"

#include <string.h>

#define WALK_SPEED_CAP_m_s 2.0 /* file format, section Hands */
#define WALK_FACTOR_GAIN                                                                       \
    0.2 /* Keller et al. 1996, Clin. Biomech. 11(5) 253-259: peak 1.2 body weights at 1.5 m/s */
#define WALK_FACTOR_AT_m_s 1.5
#define STAIR_FACTOR       1.6  /* Gait & Posture 21 (2005) 24-38: steep stairs down */
#define STAIR_RISER_m      0.05 /* file format, section Hands */
#define STEP_NEEDED_m      0.02 /* feet that move less stay (common practice, no source) */
#define FOLLOW_ROUNDS      60
#define FOLLOW_CLOSE_rad   1e-13

static hs_vec3
to_world(const hs_place *place, hs_vec3 load_m)
{
    return hs_vec3_add(place->origin_m, hs_mat3_apply(&place->load_to_world, load_m));
}

/* Rearmost and foremost grip in use along the way, at a pitch; false when both are at one place. */
static bool
grip_ends_x(const hs_setup *setup,
            double x_m,
            double pitch_rad,
            double *ret_rear_m,
            double *ret_front_m)
{
    hs_mat3 turn = hs_mat3_load_to_world(pitch_rad, setup->heading_rad);
    double rear_m = INFINITY, front_m = -INFINITY;

    for (int i = 0; i < setup->n_used; i++) {
        double at_m =
            x_m + hs_mat3_apply(&turn, setup->task->load.grips[setup->used[i]].at_m).x;

        rear_m = fmin(rear_m, at_m);
        front_m = fmax(front_m, at_m);
    }
    *ret_rear_m = rear_m;
    *ret_front_m = front_m;
    return front_m - rear_m > 1e-6;
}

/* The pitch that follows the floor: grips move with the pitch, so the line and the pitch are found together. */
static double
followed_pitch_rad(const hs_setup *setup, double x_m)
{
    double along = cos(setup->heading_rad), pitch_rad = 0.0;

    if (fabs(fabs(along) - 1.0) > 1e-9)
        return 0.0;
    for (int round = 0; round < FOLLOW_ROUNDS; round++) {
        double rear_m, front_m, next_rad;

        if (!grip_ends_x(setup, x_m, pitch_rad, &rear_m, &front_m))
            return 0.0;
        next_rad = atan2(hs_floor_line_m(&setup->task->site, front_m) -
                             hs_floor_line_m(&setup->task->site, rear_m),
                         front_m - rear_m);
        if (along < 0.0)
            next_rad = -next_rad;
        if (fabs(next_rad - pitch_rad) < FOLLOW_CLOSE_rad)
            return next_rad;
        /* Full steps first; half steps where a riser's edge makes it swing. */
        pitch_rad = round < 20 ? next_rad : 0.5 * (pitch_rad + next_rad);
    }
    return pitch_rad;
}

static void
place_load(const hs_setup *setup, const hs_motion *motion, hs_place *place)
{
    const hs_leg *leg = &motion->legs[place->leg];
    const hs_load_state *load = setup->load;
    hs_motion_state *state = &place->motion;

    if (motion->follows[leg->point])
        state->pitch_rad = followed_pitch_rad(setup, state->x_m);
    place->heading_rad = setup->heading_rad;
    place->load_to_world = hs_mat3_load_to_world(state->pitch_rad, setup->heading_rad);
    place->origin_m = (hs_vec3){state->x_m, state->y_m, state->z_m};
    place->pitch_acc_rad_s2 = state->pitch_acc_rad_s2;
    /* The CG's height is unknown after level weighings: its plan place holds at pitch 0 only. */
    hs_vec3 cg = load->cg_m;
    bool knows_height = hs_has(cg.z);

    cg.z = hs_or(cg.z, 0.0);
    place->cg_m = to_world(place, cg);
    double s = sin(state->pitch_rad), c = cos(state->pitch_rad);
    double rate2 = state->pitch_rate_rad_s * state->pitch_rate_rad_s,
           acc = state->pitch_acc_rad_s2;
    double along = -acc * (s * cg.x + c * cg.z) - rate2 * (c * cg.x - s * cg.z);
    double up = acc * (c * cg.x - s * cg.z) - rate2 * (s * cg.x + c * cg.z);

    place->cg_acc_m_s2 =
        (hs_vec3){state->ax_m_s2 + cos(setup->heading_rad) * along, 0.0, state->az_m_s2 + up};
    if (!knows_height)
        place->cg_m.z = HS_ABSENT;
    place->lowest_m = place->highest_m = HS_ABSENT;
    if (load->has_box) {
        for (int corner = 0; corner < 8; corner++) {
            hs_vec3 at = {corner & 1 ? load->most_m.x : load->least_m.x,
                          corner & 2 ? load->most_m.y : load->least_m.y,
                          corner & 4 ? load->most_m.z : load->least_m.z};
            double z_m = to_world(place, at).z;

            place->lowest_m = hs_has(place->lowest_m) ? fmin(place->lowest_m, z_m) : z_m;
            place->highest_m = hs_has(place->highest_m) ? fmax(place->highest_m, z_m) : z_m;
        }
    }
}

static hs_vec3
hands_middle(const hs_setup *setup, const hs_place *place, int bearer)
{
    hs_vec3 sum = {0, 0, 0};
    int n = 0;

    for (int i = 0; i < setup->n_used; i++)
        if (setup->used_by[i] == bearer) {
            sum = hs_vec3_add(sum, place->grip_m[i]);
            n++;
        }
    return hs_vec3_scale(sum, 1.0 / n);
}

/* Along the way: acceleration of a point of the load at `arm` (world) from the origin by the pitch's rotation. */
static double
turned_acc_x(const hs_setup *setup, const hs_place *place, hs_vec3 arm_m)
{
    const hs_motion_state *state = &place->motion;
    double along = cos(setup->heading_rad),
           rate2 = state->pitch_rate_rad_s * state->pitch_rate_rad_s;
    double forward = along * arm_m.x + sin(setup->heading_rad) * arm_m.y;

    return along * (-state->pitch_acc_rad_s2 * arm_m.z - rate2 * forward);
}

static double
walking_factor(const hs_setup *setup, const hs_place *place, bool stairs)
{
    double v_m_s = fmin(hypot(place->motion.vx_m_s, 0.0), WALK_SPEED_CAP_m_s), ratio;

    if (place->move != HS_MOVE_CARRY || place->in_hold || !(v_m_s > 0.0))
        return 1.0;
    if (stairs)
        return STAIR_FACTOR;
    if (hs_has(setup->task->policy.walking_factor))
        return setup->task->policy.walking_factor;
    ratio = v_m_s / WALK_FACTOR_AT_m_s;
    return 1.0 + WALK_FACTOR_GAIN * ratio * ratio;
}

static hs_vec2
feet_at(const hs_bearer_setup *bearer, hs_vec3 hands_m, double reach_m)
{
    return (hs_vec2){hands_m.x - cos(bearer->facing_rad) * reach_m,
                     hands_m.y - sin(bearer->facing_rad) * reach_m};
}

/* Where the feet of a bearer are at the start and the end of a leg: cheap, no forces. */
static void
leg_feet_x(const hs_setup *setup, int bearer, int leg, double *ret_from_m, double *ret_to_m)
{
    const hs_motion *motion = &setup->motions[bearer];
    double at[2];

    for (int end = 0; end < 2; end++) {
        hs_place place = {.leg = leg};

        hs_route_at(motion, leg, end ? motion->legs[leg].end_s : motion->legs[leg].start_s,
                    &place.motion);
        place_load(setup, motion, &place);
        for (int i = 0; i < setup->n_used; i++)
            place.grip_m[i] = to_world(&place, setup->task->load.grips[setup->used[i]].at_m);
        at[end] = feet_at(&setup->bearers[bearer], hands_middle(setup, &place, bearer),
                          place.motion.reach_m)
                      .x;
    }
    *ret_from_m = at[0];
    *ret_to_m = at[1];
}

static void
place_bearer(const hs_setup *setup, hs_place *place, int index)
{
    const hs_bearer_setup *bearer = &setup->bearers[index];
    const hs_site *site = &setup->task->site;
    hs_bearer_place *out = &place->bearers[index];
    hs_motion_state own;
    double facing_x = cos(bearer->facing_rad), from_m, to_m;

    hs_route_at(&setup->motions[index], place->leg, place->t_s, &own);
    out->hands_m = hands_middle(setup, place, index);
    out->reach_m = own.reach_m;
    out->feet_m = feet_at(bearer, out->hands_m, own.reach_m);
    out->floor_z_m = hs_floor_height_m(site, out->feet_m.x);
    out->slope_rad = facing_x * hs_floor_slope_rad(site, out->feet_m.x);
    out->stairs = setup->stairs[place->leg * setup->n_bearers + index];
    out->walking_factor = walking_factor(setup, place, out->stairs);
    if (place->move == HS_MOVE_CARRY && !place->in_hold) {
        hs_vec3 arm_m = hs_vec3_sub(out->hands_m, place->origin_m);

        out->v_m_s = own.vx_m_s - facing_x * own.reach_rate_m_s;
        out->foot_a_m_s2 =
            own.ax_m_s2 + turned_acc_x(setup, place, arm_m) - facing_x * own.reach_acc_m_s2;
        return;
    }
    from_m = setup->feet_from_m[place->leg * setup->n_bearers + index];
    to_m = setup->feet_to_m[place->leg * setup->n_bearers + index];
    out->step_needed = !place->in_hold && fabs(to_m - from_m) > STEP_NEEDED_m;
}

void
hs_place_at(const hs_setup *setup, int leg_index, double t_s, hs_place *ret_place)
{
    const hs_motion *motion = &setup->motions[0];
    const hs_leg *leg = &motion->legs[leg_index];
    const hs_point *point = &motion->points[leg->point];
    hs_place *place = ret_place;

    memset(place, 0, sizeof *place);
    place->t_s = fmin(fmax(t_s, leg->start_s), leg->end_s);
    place->leg = leg_index;
    place->point = leg->point;
    place->move = leg->move;
    place->in_hold = leg->is_hold;
    place->is_leg_start = place->t_s <= leg->start_s;
    place->is_leg_end = place->t_s >= leg->end_s;
    place->route = leg->is_hold
                       ? leg->point + 1.0
                       : leg->point + (place->t_s - leg->start_s) / (leg->end_s - leg->start_s);
    hs_route_at(motion, leg_index, place->t_s, &place->motion);
    place_load(setup, motion, place);
    place->held_up = hs_or(point->held_up, 0.0);
    if (leg->move == HS_MOVE_SLIDE && !leg->is_hold) {
        double dx_m = point->x_m - motion->points[leg->point - 1].x_m;

        place->slide_friction = point->slide_friction;
        place->slide_sign = dx_m > 0.0 ? 1.0 : dx_m < 0.0 ? -1.0 : 0.0;
    }
    for (int i = 0; i < setup->n_used; i++)
        place->grip_m[i] = to_world(place, setup->task->load.grips[setup->used[i]].at_m);
    for (int b = 0; b < setup->n_bearers; b++)
        place_bearer(setup, place, b);
}

void
hs_place_prepare(const hs_setup *setup, bool *stairs, double *feet_from_m, double *feet_to_m)
{
    for (int leg = 0; leg < setup->motions[0].n_legs; leg++)
        for (int b = 0; b < setup->n_bearers; b++) {
            int at = leg * setup->n_bearers + b;

            leg_feet_x(setup, b, leg, &feet_from_m[at], &feet_to_m[at]);
            stairs[at] = !setup->motions[0].legs[leg].is_hold &&
                         hs_floor_riser_m(&setup->task->site, feet_from_m[at], feet_to_m[at]) >
                             STAIR_RISER_m;
        }
}

double
hs_place_to_set_down_s(const hs_setup *setup, const hs_place *place)
{
    const hs_motion *motion = &setup->motions[0];
    int i = place->point;

    if (!place->in_hold && place->is_leg_start && i > 0 &&
        motion->points[i - 1].set_down == HS_YES)
        return 0.0;
    if (place->in_hold && motion->points[i].set_down != HS_YES)
        i++;
    for (; i < motion->n_points; i++)
        if (motion->points[i].set_down == HS_YES)
            return fmax(0.0, motion->arrive_s[i] - place->t_s);
    return HS_ABSENT;
}

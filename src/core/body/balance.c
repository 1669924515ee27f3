/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  does the person stand?
 * Answer:    the point under the resultant against the base of support: scale 0.8 about its centroid and the rear cut.
 * Not here:  where the point is (chain.c), the finding (checks/body_checks.c). */
#include "chain.h"
#include "units.h"

/* The point is HS_SRC_zero_moment_point's. Usable part of heel to first toe joint: .59 and .44 of the foot's length are King's means under and from 60 years. */
#define USABLE_SCALE 0.8
/* Nobody stands on the edge by choice: of the usable half, so much is used gladly. The finding is near from .75. Chosen, docs/body.md. */
#define EASY_SHARE   0.70

typedef struct {
    double rear_m, front_m, half_m;
} base_box;

static base_box
box_of(const hs_person *person,
       const hs_body_suit *suit,
       hs_stance_kind stance,
       double ahead_m,
       double behind_m)
{
    base_box ret = {-person->heel_m, person->toe_joint_m,
                    0.5 * (person->stance_width_m + person->sole_width_m)};

    if (stance == HS_STANCE_KNEELING) {
        /* Toes under the ankles, knees ahead of them. */
        ret.rear_m = 0.0;
        ret.front_m = person->shank_m;
    } else if (suit != NULL && suit->has_foot) {
        ret.rear_m = -suit->foot_heel_m;
        ret.front_m = suit->foot_toe_m;
        ret.half_m = 0.5 * (person->stance_width_m + suit->foot_width_m);
    }
    ret.front_m += ahead_m;
    ret.rear_m -= behind_m;
    return ret;
}

int
hs_base_hull(const hs_person *person,
             const hs_body_suit *suit,
             hs_stance_kind stance,
             double ahead_m,
             double behind_m,
             hs_vec2 *ret_corners)
{
    base_box box = box_of(person, suit, stance, ahead_m, behind_m);

    ret_corners[0] = (hs_vec2){box.rear_m, -box.half_m};
    ret_corners[1] = (hs_vec2){box.front_m, -box.half_m};
    ret_corners[2] = (hs_vec2){box.front_m, box.half_m};
    ret_corners[3] = (hs_vec2){box.rear_m, box.half_m};
    return 4;
}

static hs_vec2
centroid_of(const hs_vec2 *hull, int n)
{
    double area = 0.0, x = 0.0, y = 0.0;

    for (int i = 0; i < n; i++) {
        hs_vec2 a = hull[i], b = hull[(i + 1) % n];
        double cross = a.x * b.y - b.x * a.y;

        area += cross;
        x += (a.x + b.x) * cross;
        y += (a.y + b.y) * cross;
    }
    return (hs_vec2){x / (3.0 * area), y / (3.0 * area)};
}

static double
distance_to_edge_m(hs_vec2 a, hs_vec2 b, hs_vec2 p)
{
    double ex = b.x - a.x, ey = b.y - a.y, length2 = ex * ex + ey * ey;
    double t = length2 > 0.0 ? ((p.x - a.x) * ex + (p.y - a.y) * ey) / length2 : 0.0;

    t = fmin(fmax(t, 0.0), 1.0);
    return hypot(p.x - a.x - t * ex, p.y - a.y - t * ey);
}

void
hs_balance_judge_step(const hs_person *person,
                      const hs_vec2 *hull,
                      int n,
                      double cut_m,
                      hs_vec2 point_m,
                      double *ret_margin_m,
                      double *ret_ratio,
                      bool *ret_behind_cut)
{
    hs_vec2 centre = centroid_of(hull, n);
    double scale = 0.0, nearest_m = INFINITY, to_cut_m = point_m.x - cut_m;
    bool is_outside = false;

    (void)person;
    for (int i = 0; i < n; i++) {
        hs_vec2 a = hull[i], b = hull[(i + 1) % n];
        double nx = b.y - a.y, ny = a.x - b.x;
        double reach = nx * (a.x - centre.x) + ny * (a.y - centre.y);
        hs_vec2 small_a = {centre.x + USABLE_SCALE * (a.x - centre.x),
                           centre.y + USABLE_SCALE * (a.y - centre.y)};
        hs_vec2 small_b = {centre.x + USABLE_SCALE * (b.x - centre.x),
                           centre.y + USABLE_SCALE * (b.y - centre.y)};
        double here = (nx * (point_m.x - centre.x) + ny * (point_m.y - centre.y)) / reach;

        scale = fmax(scale, here);
        is_outside = is_outside || here > USABLE_SCALE;
        nearest_m = fmin(nearest_m, distance_to_edge_m(small_a, small_b, point_m));
    }
    *ret_ratio = scale / USABLE_SCALE;
    *ret_margin_m = fmin(is_outside ? -nearest_m : nearest_m, to_cut_m);
    *ret_behind_cut = to_cut_m < 0.0;
}

void
hs_balance_judge(const hs_person *person,
                 const hs_vec2 *hull,
                 int n,
                 hs_vec2 point_m,
                 double *ret_margin_m,
                 double *ret_ratio,
                 bool *ret_behind_cut)
{
    hs_balance_judge_step(person, hull, n, -person->rear_cut_m, point_m, ret_margin_m,
                          ret_ratio, ret_behind_cut);
}

double
hs_balance_cut_m(const hs_person *person, hs_stance_kind stance, double behind_m)
{
    return stance == HS_STANCE_KNEELING ? -behind_m : -person->rear_cut_m - behind_m;
}

void
hs_balance_line(const hs_person *person,
                const hs_body_input *input,
                double *ret_rear_m,
                double *ret_front_m)
{
    base_box box =
        box_of(person, &input->suit, input->stance, input->base_ahead_m, input->base_behind_m);
    double middle_m = 0.5 * (box.rear_m + box.front_m),
           half_m = 0.5 * USABLE_SCALE * (box.front_m - box.rear_m);

    *ret_front_m = middle_m + half_m;
    *ret_rear_m =
        fmax(middle_m - half_m, hs_balance_cut_m(person, input->stance, input->base_behind_m));
}

void
hs_balance_ease_set(const hs_person *person,
                    const hs_body_input *input,
                    hs_balance_ease *ret_ease)
{
    base_box feet = box_of(person, &input->suit, input->stance, 0.0, 0.0);
    double kept_m;

    ret_ease->middle_m = 0.5 * (feet.rear_m + feet.front_m);
    ret_ease->feet_half_m = 0.5 * USABLE_SCALE * (feet.front_m - feet.rear_m);
    /* A walking base is longer by the step ahead and behind. */
    ret_ease->half_m = ret_ease->feet_half_m +
                       0.5 * USABLE_SCALE * (input->base_ahead_m + input->base_behind_m);
    kept_m = (1.0 - EASY_SHARE) * ret_ease->half_m;
    hs_balance_line(person, input, &ret_ease->rear_m, &ret_ease->front_m);
    ret_ease->front_m -= kept_m;
    ret_ease->rear_m += kept_m;
}

void
hs_balance_fill(const hs_person *person, const hs_body_input *input, hs_body_state *state)
{
    hs_vec2 hull[HS_MAX_BASE];
    int n = hs_base_hull(person, &input->suit, input->stance, input->base_ahead_m,
                         input->base_behind_m, hull);
    double side_m =
        (input->felt_N + input->rest_N) * hs_or(input->side_m, 0.0) / state->ground_N;

    hs_balance_judge_step(person, hull, n,
                          hs_balance_cut_m(person, input->stance, input->base_behind_m),
                          (hs_vec2){state->zmp_m, side_m}, &state->margin_m,
                          &state->balance_ratio, &state->behind_cut);
}

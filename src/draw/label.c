/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  where do the labels go so that none covers another?
 * Answer:    candidates in rings round the anchor are weighed by distance, direction and what they would cover; the first
 *            choice of the important labels is kept, later ones give way.
 * Not here:  their text and type (paint_label.c). */
#include "label.h"

#include <string.h>

enum {
    RINGS = 9,
    DIRECTIONS = 16
};

/* Weights of the choice, in heights of the type: by eye. */
#define TURN_COST  0.28 /* a sixteenth of a turn away from the wished side */
#define COVER_COST 5.0  /* covering as much as its own height squared */
#define CROSS_COST 6.0  /* its leader would run through another label */
#define LEADER_em  0.9  /* farther than this from its anchor it gets a leader */

gboolean
hs_boxes_overlap(const hs_box *a, const hs_box *b)
{
    return a->x < b->x + b->width && b->x < a->x + a->width && a->y < b->y + b->height &&
           b->y < a->y + a->height;
}

static double
common_px2(const hs_box *a, const hs_box *b)
{
    double w = fmin(a->x + a->width, b->x + b->width) - fmax(a->x, b->x);
    double h = fmin(a->y + a->height, b->y + b->height) - fmax(a->y, b->y);

    return w > 0 && h > 0 ? w * h : 0;
}

/* Does the segment cut the box? Clipped on both axes in turn. */
static gboolean
cuts(hs_vec2 a, hs_vec2 b, const hs_box *box)
{
    double from = 0, to = 1;
    double start[2] = {a.x, a.y}, run[2] = {b.x - a.x, b.y - a.y};
    double least[2] = {box->x, box->y}, most[2] = {box->x + box->width, box->y + box->height};

    for (int i = 0; i < 2; i++) {
        if (fabs(run[i]) < 1e-9) {
            if (start[i] < least[i] || start[i] > most[i])
                return FALSE;
            continue;
        }
        double u = (least[i] - start[i]) / run[i], v = (most[i] - start[i]) / run[i];

        from = fmax(from, fmin(u, v));
        to = fmin(to, fmax(u, v));
    }
    return from < to;
}

static hs_vec2
nearest_in(const hs_box *box, hs_vec2 at)
{
    return (hs_vec2){CLAMP(at.x, box->x, box->x + box->width),
                     CLAMP(at.y, box->y, box->y + box->height)};
}

typedef struct {
    const hs_box *taken, *avoided, *surface;
    int n_taken, n_avoided;
    const hs_label_wish *wishes;
    int n;
} hs_room;

static gboolean
is_inside(const hs_box *box, const hs_box *s)
{
    return box->x >= s->x && box->y >= s->y && box->x + box->width <= s->x + s->width &&
           box->y + box->height <= s->y + s->height;
}

static gboolean
is_free(const hs_room *room, const hs_box *box)
{
    if (!is_inside(box, room->surface))
        return FALSE;
    for (int i = 0; i < room->n_taken; i++)
        if (hs_boxes_overlap(box, &room->taken[i]))
            return FALSE;
    for (int i = 0; i < room->n; i++)
        if (room->wishes[i].is_placed && hs_boxes_overlap(box, &room->wishes[i].box))
            return FALSE;
    return TRUE;
}

static double
cost_of(const hs_room *room, const hs_label_wish *wish, const hs_box *box)
{
    double em = wish->height_px, cost = 0;
    hs_vec2 near = nearest_in(box, wish->anchor_px);

    for (int i = 0; i < room->n_avoided; i++)
        cost += COVER_COST * common_px2(box, &room->avoided[i]) / (em * em);
    for (int i = 0; i < room->n; i++)
        if (room->wishes[i].is_placed && cuts(wish->anchor_px, near, &room->wishes[i].box))
            cost += CROSS_COST;
    return cost;
}

static hs_box
box_at(const hs_label_wish *wish, double turn_rad, double away_px)
{
    double w = wish->width_px, h = wish->height_px;
    double x = wish->anchor_px.x + cos(turn_rad) * (away_px + w / 2),
           y = wish->anchor_px.y - sin(turn_rad) * (away_px + h / 2);

    return (hs_box){x - w / 2, y - h / 2, w, h};
}

static double
side_rad(hs_side side)
{
    static const double turns[] = {0, 0.5, 1, 1.5, 0.5};

    return turns[side] * G_PI;
}

static void
settle(hs_label_wish *wish, const hs_box *box)
{
    wish->box = *box;
    wish->is_placed = TRUE;
    wish->leader_px = nearest_in(box, wish->anchor_px);
    double away_px =
        hypot(wish->leader_px.x - wish->anchor_px.x, wish->leader_px.y - wish->anchor_px.y);

    wish->has_leader =
        away_px > (wish->has_far_leader ? 0.3 : LEADER_em) * wish->height_px + wish->gap_px;
}

/* Nothing near is free: the free place nearest to the anchor, over the whole surface. */
static void
place_anywhere(const hs_room *room, hs_label_wish *wish)
{
    double step = wish->height_px * 0.5, least = HUGE_VAL;
    hs_box best = {0};

    for (double y = room->surface->y;
         y + wish->height_px <= room->surface->y + room->surface->height; y += step)
        for (double x = room->surface->x;
             x + wish->width_px <= room->surface->x + room->surface->width; x += step * 2) {
            hs_box box = {x, y, wish->width_px, wish->height_px};
            hs_vec2 near = nearest_in(&box, wish->anchor_px);
            double away = hypot(near.x - wish->anchor_px.x, near.y - wish->anchor_px.y);

            if (away < least && is_free(room, &box)) {
                least = away;
                best = box;
            }
        }
    if (isfinite(least))
        settle(wish, &best);
}

static void
place(const hs_room *room, hs_label_wish *wish)
{
    double least = HUGE_VAL;
    hs_box best = {0};
    hs_box anchor = {wish->anchor_px.x, wish->anchor_px.y, 0, 0};

    if (!is_inside(&anchor, room->surface)) /* what it names is not to be seen */
        return;
    if (wish->side == HS_SIDE_OVER) {
        hs_box box = {wish->anchor_px.x - wish->width_px / 2,
                      wish->anchor_px.y - wish->height_px / 2, wish->width_px, wish->height_px};

        if (is_free(room, &box)) {
            settle(wish, &box);
            wish->has_leader = FALSE;
            return;
        }
    }
    for (int ring = 0; ring < RINGS; ring++)
        for (int k = 0; k < DIRECTIONS; k++) {
            int turns = (k + 1) / 2 * (k % 2 ? 1 : -1);
            double away_px = wish->gap_px + ring * 0.75 * wish->height_px;
            hs_box box =
                box_at(wish, side_rad(wish->side) + turns * 2 * G_PI / DIRECTIONS, away_px);
            double cost = ring * 0.75 + TURN_COST * ((k + 1) / 2);

            if (cost >= least || !is_free(room, &box))
                continue;
            cost += cost_of(room, wish, &box);
            if (cost < least) {
                least = cost;
                best = box;
            }
        }
    if (isfinite(least))
        settle(wish, &best);
    else
        place_anywhere(room, wish);
}

void
hs_labels_place(hs_label_wish *wishes,
                int n,
                const hs_box *taken,
                int n_taken,
                const hs_box *avoided,
                int n_avoided,
                const hs_box *surface)
{
    hs_room room = {taken, avoided, surface, n_taken, n_avoided, wishes, n};
    int most = G_MININT;

    for (int i = 0; i < n; i++)
        wishes[i].is_placed = FALSE;
    for (int i = 0; i < n; i++)
        most = MAX(most, wishes[i].priority);
    while (most != G_MININT) {
        int next = G_MININT;

        for (int i = 0; i < n; i++) {
            if (wishes[i].priority == most)
                place(&room, &wishes[i]);
            else if (wishes[i].priority < most)
                next = MAX(next, wishes[i].priority);
        }
        most = next;
    }
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  where beside its line does a name stand so that nobody takes it for the other line's?
 * Answer:    places along the line, above and below it, are weighed: what the name would cover, whether the other line is
 *            nearer than its own, and how far from the line's end it stands.
 * Not here:  text and painting (plot.c). */
#include "plot_name.h"

enum {
    PLACES = 25 /* from the line's end to its start */
};

/* Weights of the choice: by eye. A name that lies on a line or a figure is worse than any other place. */
#define COVER_COST  40.0
#define NEARER_COST 12.0
#define EARLY_COST  4.0 /* at the line's very start */
#define BELOW_COST  0.5

gboolean
hs_line_range(const hs_vec2 *line,
              int n,
              double from_px,
              double to_px,
              double *ret_least_px,
              double *ret_most_px)
{
    double least = HUGE_VAL, most = -HUGE_VAL;

    for (int i = 1; i < n; i++) {
        hs_vec2 a = line[i - 1], b = line[i];
        double from = fmax(a.x, from_px), to = fmin(b.x, to_px), run = b.x - a.x;

        if (from > to)
            continue;
        double u = run > 0 ? (from - a.x) / run : 0, v = run > 0 ? (to - a.x) / run : 1;
        double p = a.y + u * (b.y - a.y), q = a.y + v * (b.y - a.y);

        least = fmin(least, fmin(p, q));
        most = fmax(most, fmax(p, q));
    }
    *ret_least_px = least;
    *ret_most_px = most;
    return least <= most;
}

static double
cost_of(const hs_name_room *room, const hs_box *box)
{
    double least, most, cost = 0, away_own = 0, away_other = HUGE_VAL;
    double bottom = box->y + box->height, right = box->x + box->width;

    for (int i = 0; i < room->n_kept; i++)
        if (hs_boxes_overlap(box, &room->kept[i]))
            cost += COVER_COST;
    if (hs_line_range(room->own, room->n_own, box->x, right, &least, &most)) {
        away_own = fmax(fmax(least - bottom, box->y - most), 0);
        if (least < bottom && most > box->y)
            cost += COVER_COST;
    }
    if (hs_line_range(room->other, room->n_other, box->x, right, &least, &most)) {
        away_other = fmax(fmax(least - bottom, box->y - most), 0);
        if (least < bottom && most > box->y)
            cost += COVER_COST;
    }
    return away_other < away_own + room->gap_px ? cost + NEARER_COST : cost;
}

/* Close to its own line over the whole length of the name. */
static gboolean
box_beside(const hs_name_room *room, double middle_px, gboolean is_above, hs_box *box)
{
    const hs_box *s = &room->surface;
    double least, most;

    box->x = CLAMP(middle_px - box->width / 2, s->x, s->x + s->width - box->width);
    if (!hs_line_range(room->own, room->n_own, box->x, box->x + box->width, &least, &most))
        return FALSE;
    box->y = is_above ? least - room->gap_px - box->height : most + room->gap_px;
    box->y = CLAMP(box->y, s->y, s->y + s->height - box->height);
    return TRUE;
}

gboolean
hs_plot_name_place(const hs_name_room *room, double width_px, double height_px, hs_box *ret_box)
{
    double least = HUGE_VAL;

    if (room->n_own < 2 || width_px > room->surface.width || height_px > room->surface.height)
        return FALSE;
    double start_px = room->own[0].x, end_px = room->own[room->n_own - 1].x;

    for (int i = 0; i < PLACES; i++)
        for (int is_below = 0; is_below < 2; is_below++) {
            double part = (double)i / (PLACES - 1);
            hs_box box = {0, 0, width_px, height_px};

            if (!box_beside(room, end_px + part * (start_px - end_px), !is_below, &box))
                continue;
            double cost =
                cost_of(room, &box) + EARLY_COST * part + (is_below ? BELOW_COST : 0.0);

            if (cost < least) {
                least = cost;
                *ret_box = box;
            }
        }
    return isfinite(least);
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how does a freehand stroke become a route?
 * Answer:    at most six points, level parts levelled, rounded to 1 cm, each leg with a guessed word.
 * Not here:  the pointer (side_view.c), snapping (draw/hit.c). */
#include "stroke.h"

#include "change.h"
#include "field.h"
#include "quantity.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define NEAR_ROUTE_m                                                                           \
    0.12 /* a stroke that begins and ends this near to the route replaces that stretch; our choice */

static double
away_from_line(hs_vec2 a, hs_vec2 b, hs_vec2 p)
{
    double length = hypot(b.x - a.x, b.y - a.y);

    if (!(length > 1e-9))
        return hypot(p.x - a.x, p.y - a.y);
    return fabs((b.x - a.x) * (a.y - p.y) - (a.x - p.x) * (b.y - a.y)) / length;
}

/* The place of the stroke that lies farthest from the polyline through the kept ones. */
static guint
farthest(const GArray *at, const GArray *kept, double *ret_away_m)
{
    guint best = 0;

    *ret_away_m = 0.0;
    for (guint k = 1; k < kept->len; k++) {
        guint from = g_array_index(kept, guint, k - 1), to = g_array_index(kept, guint, k);
        for (guint i = from + 1; i < to; i++) {
            double away_m =
                away_from_line(g_array_index(at, hs_vec2, from), g_array_index(at, hs_vec2, to),
                               g_array_index(at, hs_vec2, i));
            if (away_m > *ret_away_m) {
                *ret_away_m = away_m;
                best = i;
            }
        }
    }
    return best;
}

static int
by_value(gconstpointer a, gconstpointer b)
{
    guint x = *(const guint *)a, y = *(const guint *)b;

    return x < y ? -1 : x > y;
}

static double
to_cm(double value_m)
{
    return round(value_m * 100.0) / 100.0;
}

/* A leg that is nearly level is meant level, one that is nearly upright upright. */
static void
straighten(GArray *places)
{
    for (guint i = 1; i < places->len; i++) {
        hs_vec2 *a = &g_array_index(places, hs_vec2, i - 1),
                *b = &g_array_index(places, hs_vec2, i);
        double along = fabs(b->x - a->x), up = fabs(b->y - a->y);
        if (up < 0.05 || up < 0.12 * along)
            b->y = a->y;
        else if (along < 0.05 || along < 0.12 * up)
            b->x = a->x;
    }
}

GArray *
hs_stroke_simplify(const GArray *at)
{
    g_autoptr(GArray) kept = g_array_new(FALSE, FALSE, sizeof(guint));
    GArray *places = g_array_new(FALSE, FALSE, sizeof(hs_vec2));
    guint first = 0, last = at->len - 1;
    double away_m;

    g_array_append_val(kept, first);
    g_array_append_val(kept, last);
    while (kept->len < HS_STROKE_MOST_POINTS) {
        guint next = farthest(at, kept, &away_m);
        if (away_m < 0.04)
            break;
        g_array_append_val(kept, next);
        g_array_sort(kept, by_value);
    }
    for (guint k = 0; k < kept->len; k++)
        g_array_append_val(places, g_array_index(at, hs_vec2, g_array_index(kept, guint, k)));
    straighten(places);
    for (guint i = 0; i < places->len; i++) {
        hs_vec2 *p = &g_array_index(places, hs_vec2, i);
        *p = (hs_vec2){to_cm(p->x), to_cm(p->y)};
    }
    return places;
}

/* Up is a lift, down is a lower, along is a carry: guessed, a click in the route's table changes it. */
static const char *
guess_move(hs_vec2 from, hs_vec2 to)
{
    double along = fabs(to.x - from.x), up = to.y - from.y;

    if (up > 0.05 && up > 0.5 * along)
        return "lift";
    if (up < -0.05 && -up > 0.5 * along)
        return "lower";
    return "carry";
}

static char *
point_json(hs_vec2 at, const char *move, gboolean set_down)
{
    g_autofree char *x = hs_number_text(at.x);
    g_autofree char *z = hs_number_text(at.y);

    return g_strdup_printf("{\"x_m\": %s, \"z_m\": %s, \"move\": \"%s\", \"sketched\": true%s}",
                           x, z, move, set_down ? ", \"set_down\": true" : "");
}

/* Nearest point of the route to a place, -1 when none is near. */
static int
near_point(const hs_task *task, hs_vec2 at)
{
    int best = -1;
    double least_m = NEAR_ROUTE_m;

    for (int i = 0; task != NULL && i < task->route.n_points; i++) {
        double away_m =
            hypot(task->route.points[i].x_m - at.x, task->route.points[i].z_m - at.y);
        if (away_m < least_m) {
            least_m = away_m;
            best = i;
        }
    }
    return best;
}

static hs_edit *
replace_stretch(const GArray *places, int from, int to)
{
    hs_edit *edit = hs_edit_new(_("Draw a stretch of the route"));

    for (int i = to - 1; i > from; i--) {
        g_autofree char *path = g_strdup_printf("route.points[%d]", i);
        hs_edit_remove(edit, path);
    }
    for (guint i = 1; i + 1 < places->len; i++) {
        hs_vec2 a = g_array_index(places, hs_vec2, i - 1),
                b = g_array_index(places, hs_vec2, i);
        g_autofree char *json = point_json(b, guess_move(a, b), FALSE);
        g_autofree char *path = g_strdup_printf("route.points[%d]", from + (int)i);
        hs_edit_insert(edit, path, hs_change_node(json));
    }
    return edit;
}

hs_edit *
hs_stroke_whole(const GArray *places)
{
    GString *json = g_string_new("[");
    for (guint i = 0; i < places->len; i++) {
        hs_vec2 at = g_array_index(places, hs_vec2, i);
        g_autofree char *point =
            i == 0 ? point_json(at, "start", FALSE)
                   : point_json(at, guess_move(g_array_index(places, hs_vec2, i - 1), at),
                                i + 1 == places->len);
        g_string_append_printf(json, "%s%s", i ? ", " : "", point);
    }
    g_string_append(json, "]");
    hs_edit *edit = hs_edit_new(_("Draw the route"));
    hs_edit_set(edit, "route.points", hs_change_node(json->str));
    g_string_free(json, TRUE);
    return edit;
}

hs_edit *
hs_stroke_edit(HsSession *session, const GArray *places)
{
    const hs_task *task = hs_field_task(session);
    int from = near_point(task, g_array_index(places, hs_vec2, 0));
    int to = near_point(task, g_array_index(places, hs_vec2, places->len - 1));

    if (from >= 0 && to > from && (from > 0 || to + 1 < task->route.n_points))
        return replace_stretch(places, from, to);
    return hs_stroke_whole(places);
}

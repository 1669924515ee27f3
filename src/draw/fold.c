/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  which parts of a long way are left out of the picture?
 * Answer:    hs_folds_find(): every stretch of level carry legs over 2 m where neither load nor figures overhang anything.
 * Not here:  the break mark (site_layer.c). */
#include "fold.h"

#include "floor.h"

/* Product rule: level carry legs over 2 m are folded. What is drawn of the part left out, and how long it must be to be
 * worth a break mark: chosen by eye, common practice, no source. */
#define LONG_LEG_m  2.0
#define DRAWN_m     0.3
#define WORTH_m     0.6
#define CLEARANCE_m 0.15
#define LEVEL_m     0.005
/* From the ankle to the toes, rounded up. */
#define FOOT_m      0.22

/* How far figures and load reach behind and ahead of the load's origin, over all options. */
static void
find_overhang(const hs_scene_request *request, double *ret_behind_m, double *ret_ahead_m)
{
    hs_vec3 least_m = {0, 0, 0}, most_m = {0, 0, 0};

    hs_scene_load_box(request->task, &least_m, &most_m);
    *ret_behind_m = fmax(-least_m.x, 0.3);
    *ret_ahead_m = fmax(most_m.x, 0.3);
    for (int o = 0; o < request->results->n_options; o++) {
        const hs_option_result *option = &request->results->options[o];

        for (int i = 0; i < option->n_samples; i++)
            for (int b = 0; b < option->asked->n_bearers; b++) {
                double x_m = option->samples[i].bearers[b].feet_x_m - option->samples[i].x_m;

                if (hs_has(x_m)) {
                    *ret_behind_m = fmax(*ret_behind_m, FOOT_m - x_m);
                    *ret_ahead_m = fmax(*ret_ahead_m, FOOT_m + x_m);
                }
            }
    }
}

static gboolean
is_level(const hs_site *site, double from_m, double to_m)
{
    double z_m = hs_floor_height_m(site, from_m);

    for (int i = 0; i < site->n_floor; i++)
        if (site->floor[i].x > from_m && site->floor[i].x < to_m &&
            fabs(site->floor[i].y - z_m) > LEVEL_m)
            return FALSE;
    return fabs(hs_floor_height_m(site, to_m) - z_m) <= LEVEL_m;
}

/* Stretches of the way where nothing stands: what is kept is cut out of them. */
static void
keep(GArray *stretches, double a_m, double b_m)
{
    for (guint i = stretches->len; i-- > 0;) {
        hs_fold *stretch = &g_array_index(stretches, hs_fold, i);
        hs_fold after = {fmax(stretch->from_m, b_m), stretch->to_m, 0};

        if (b_m <= stretch->from_m || a_m >= stretch->to_m)
            continue;
        stretch->to_m = a_m;
        if (after.from_m < after.to_m)
            g_array_append_val(stretches, after);
    }
}

/* Where the surface rises or falls a figure must not stand while the load is inside the fold. */
static void
keep_floor(GArray *stretches, const hs_site *site, double behind_m, double ahead_m)
{
    for (int i = 1; i < site->n_floor; i++)
        if (fabs(site->floor[i].y - site->floor[i - 1].y) > LEVEL_m)
            keep(stretches, site->floor[i - 1].x - ahead_m - CLEARANCE_m,
                 site->floor[i].x + behind_m + CLEARANCE_m);
}

/* Obstacles and openings: none is ever drawn nearer to a figure than it is. */
static void
keep_things(GArray *stretches, const hs_task *task, double behind_m, double ahead_m)
{
    const hs_site *site = &task->site;

    for (int i = 0; i < site->n_obstacles; i++)
        keep(stretches, site->obstacles[i].x_m[0] - ahead_m - CLEARANCE_m,
             site->obstacles[i].x_m[1] + behind_m + CLEARANCE_m);
    for (int i = 0; i < site->n_openings; i++)
        keep(stretches, site->openings[i].x_m - ahead_m - CLEARANCE_m,
             site->openings[i].x_m + behind_m + CLEARANCE_m);
}

static int
by_place(const void *a, const void *b)
{
    const hs_fold *p = a, *q = b;

    return p->from_m < q->from_m ? -1 : p->from_m > q->from_m;
}

static gboolean
is_taken(const GArray *folds, double from_m, double to_m)
{
    for (guint i = 0; i < folds->len; i++) {
        const hs_fold *fold = &g_array_index(folds, hs_fold, i);

        if (from_m < fold->to_m && to_m > fold->from_m)
            return TRUE;
    }
    return FALSE;
}

static void
add_folds(hs_scene *scene, const GArray *stretches)
{
    for (guint i = 0; i < stretches->len; i++) {
        hs_fold fold = g_array_index(stretches, hs_fold, i);

        fold.removed_m = fold.to_m - fold.from_m - DRAWN_m;
        if (fold.removed_m >= WORTH_m && !is_taken(scene->folds, fold.from_m, fold.to_m))
            g_array_append_val(scene->folds, fold);
    }
}

void
hs_folds_find(hs_scene *scene)
{
    const hs_task *task = scene->request->task;
    const hs_route *route = &task->route;
    double behind_m, ahead_m;

    find_overhang(scene->request, &behind_m, &ahead_m);
    for (int i = 1; i < route->n_points; i++) {
        const hs_point *from = &route->points[i - 1], *to = &route->points[i];
        double a_m = fmin(from->x_m, to->x_m), b_m = fmax(from->x_m, to->x_m);

        if (to->move != HS_MOVE_CARRY || b_m - a_m <= LONG_LEG_m ||
            fabs(to->z_m - from->z_m) > LEVEL_m || !is_level(&task->site, a_m, b_m))
            continue;
        g_autoptr(GArray) stretches = g_array_new(FALSE, FALSE, sizeof(hs_fold));
        /* Where the load rests at an end of the leg, the break mark lies clear of it and of all feet. */
        hs_fold leg = {a_m + ahead_m + CLEARANCE_m, b_m - behind_m - CLEARANCE_m, 0};

        if (leg.from_m >= leg.to_m)
            continue;
        g_array_append_val(stretches, leg);
        keep_floor(stretches, &task->site, behind_m, ahead_m);
        keep_things(stretches, task, behind_m, ahead_m);
        add_folds(scene, stretches);
    }
    g_array_sort(scene->folds, by_place);
}

double
hs_fold_x_of_world(const GArray *folds, double x_m)
{
    double removed_m = 0;

    for (guint i = 0; i < folds->len; i++) {
        const hs_fold *fold = &g_array_index(folds, hs_fold, i);
        double t = (x_m - fold->from_m) / (fold->to_m - fold->from_m);

        removed_m += fold->removed_m * CLAMP(t, 0.0, 1.0);
    }
    return x_m - removed_m;
}

double
hs_fold_world_of_x(const GArray *folds, double x_m)
{
    double removed_m = 0;

    for (guint i = 0; i < folds->len; i++) {
        const hs_fold *fold = &g_array_index(folds, hs_fold, i);
        double from_m = fold->from_m - removed_m,
               drawn_m = fold->to_m - fold->from_m - fold->removed_m;

        if (x_m <= from_m)
            break;
        if (x_m < from_m + drawn_m)
            return fold->from_m + (x_m - from_m) / drawn_m * (fold->to_m - fold->from_m);
        removed_m += fold->removed_m;
    }
    return x_m + removed_m;
}

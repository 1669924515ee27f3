/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what do readings of scales under the load say about its mass and CG?
 * Answer:    linear equations in x, y and z, one or two for each set of readings, by least squares.
 * Not here:  the parts, and which of the two wins (load.c). */
#include "weigh.h"

#include "solve.h"
#include "units.h"

#define MAX_ROWS HS_LINEAR_MAX

typedef struct {
    int n_rows;
    double matrix[MAX_ROWS * 3], right[MAX_ROWS];
    double fallback[2][3],
        fallback_right
            [2]; /* the supports' own line, where nothing else fixes the place across */
    int n_fallback;
    bool is_tilted;
} equations;

typedef struct {
    double sum_kg;
    hs_vec2 mean_m; /* of the contacts in plan, weighted by the readings, as tilted */
    hs_vec2 along;  /* unit: direction of greatest spread */
    int rank;       /* 0 one place, 1 on a line, 2 spread both ways */
    double span_m;
} set_state;

/* Contacts in plan as the load stands: a raised end draws its contacts nearer. */
static hs_vec2
contact_of(const hs_weighing *set, int i)
{
    double shorter = cos(set->tilt_deg * HS_RAD_PER_DEG);
    hs_vec2 at_m = {set->readings[i].at_x_m, set->readings[i].at_y_m};

    if (set->about == HS_AXIS_X)
        at_m.y *= shorter;
    else
        at_m.x *= shorter;
    return at_m;
}

static hs_status
look_at(const hs_weighing *set, set_state *state, hs_error *error)
{
    hs_vec2 first = {0}, far = {0};
    double across_m = 0.0;

    *state = (set_state){0};
    if (set->n_readings < 1 || !(fabs(set->tilt_deg) < 90.0))
        return hs_refuse(error, "load.weighings", set->tilt_deg, -90.0, 90.0);
    for (int i = 0; i < set->n_readings; i++) {
        hs_vec2 at_m = contact_of(set, i);
        double reading_kg = set->readings[i].reading_kg;

        if (!(reading_kg >= 0.0) || !isfinite(at_m.x) || !isfinite(at_m.y))
            return hs_refuse(error, "load.weighings", reading_kg, 0.0, (double)INFINITY);
        state->sum_kg += reading_kg;
        state->mean_m.x += reading_kg * at_m.x;
        state->mean_m.y += reading_kg * at_m.y;
        if (i == 0)
            first = at_m;
        if (hypot(at_m.x - first.x, at_m.y - first.y) > state->span_m) {
            far = at_m;
            state->span_m = hypot(at_m.x - first.x, at_m.y - first.y);
        }
    }
    if (!(state->sum_kg > 0.0))
        return hs_refuse(error, "load.weighings", state->sum_kg, 0.0, (double)INFINITY);
    state->mean_m.x /= state->sum_kg;
    state->mean_m.y /= state->sum_kg;
    if (!(state->span_m > HS_SAME_PLACE_m))
        return HS_OK;
    state->along =
        (hs_vec2){(far.x - first.x) / state->span_m, (far.y - first.y) / state->span_m};
    for (int i = 0; i < set->n_readings; i++) {
        hs_vec2 at_m = contact_of(set, i);

        across_m = fmax(across_m, fabs((at_m.y - first.y) * state->along.x -
                                       (at_m.x - first.x) * state->along.y));
    }
    state->rank = across_m > HS_SAME_PLACE_m ? 2 : 1;
    return HS_OK;
}

/* e . (plan place of the CG as tilted) = e . mean */
static void
write_row(
    const hs_weighing *set, const set_state *state, hs_vec2 e, double row[3], double *ret_right)
{
    double t = set->tilt_deg * HS_RAD_PER_DEG;
    bool about_x = set->about == HS_AXIS_X;

    row[0] = about_x ? e.x : e.x * cos(t);
    row[1] = about_x ? e.y * cos(t) : e.y;
    row[2] = about_x ? -e.y * sin(t) : -e.x * sin(t);
    *ret_right = e.x * state->mean_m.x + e.y * state->mean_m.y;
}

static void
add_set(equations *all, const hs_weighing *set, const set_state *state)
{
    hs_vec2 across = {-state->along.y, state->along.x};
    bool has_both = state->rank == 2 || state->rank == 0;
    hs_vec2 first = state->rank == 0 ? (hs_vec2){1, 0} : state->along;
    hs_vec2 second = state->rank == 0 ? (hs_vec2){0, 1} : across;

    if (all->n_rows + 2 > MAX_ROWS)
        return;
    if (set->tilt_deg != 0.0)
        all->is_tilted = true;
    write_row(set, state, first, &all->matrix[3 * all->n_rows], &all->right[all->n_rows]);
    all->n_rows++;
    if (has_both) {
        write_row(set, state, second, &all->matrix[3 * all->n_rows], &all->right[all->n_rows]);
        all->n_rows++;
    } else if (all->n_fallback < 2) {
        write_row(set, state, second, all->fallback[all->n_fallback],
                  &all->fallback_right[all->n_fallback]);
        all->n_fallback++;
    }
}

static int
columns_of(const equations *all, int n_columns, double *matrix)
{
    for (int i = 0; i < all->n_rows; i++)
        for (int j = 0; j < n_columns; j++)
            matrix[i * n_columns + j] = all->matrix[3 * i + j];
    return all->n_rows;
}

static hs_status
solve_rows(equations *all, const hs_vec3 *otherwise_m, hs_weighed *weighed, hs_error *error)
{
    double matrix[MAX_ROWS * 3], x[3] = {0};
    int n_columns = all->is_tilted ? 3 : 2, rank = 0;

    HS_TRY(hs_linear_least(columns_of(all, n_columns, matrix), n_columns, matrix, all->right, x,
                           &rank, error));
    for (int k = 0; rank < n_columns && k < all->n_fallback; k++) {
        if (all->n_rows >= MAX_ROWS)
            break;
        for (int j = 0; j < 3; j++)
            all->matrix[3 * all->n_rows + j] = all->fallback[k][j];
        all->right[all->n_rows++] = otherwise_m != NULL
                                        ? all->fallback[k][0] * otherwise_m->x +
                                              all->fallback[k][1] * otherwise_m->y +
                                              all->fallback[k][2] * otherwise_m->z
                                        : all->fallback_right[k];
        HS_TRY(hs_linear_least(columns_of(all, n_columns, matrix), n_columns, matrix,
                               all->right, x, &rank, error));
        weighed->is_on_line = otherwise_m == NULL;
    }
    if (rank < n_columns)
        return hs_refuse(error, "load.weighings", rank, n_columns, n_columns);
    weighed->cg_m = (hs_vec3){x[0], x[1], all->is_tilted ? x[2] : HS_ABSENT};
    return HS_OK;
}

static void
record(const hs_weighing *set,
       const set_state *state,
       const hs_weighed *weighed,
       hs_working *working)
{
    double t_rad = set->tilt_deg * HS_RAD_PER_DEG;
    bool about_x = set->about == HS_AXIS_X;

    if (set->n_readings == 2 && set->tilt_deg == 0.0)
        HS_WORK(working, weigh_two_supports,
                (set->readings[0].reading_kg * set->readings[0].at_x_m +
                 set->readings[1].reading_kg * set->readings[1].at_x_m) /
                    state->sum_kg,
                "m", {"R1", set->readings[0].reading_kg, "kg"},
                {"x1", set->readings[0].at_x_m, "m"}, {"R2", set->readings[1].reading_kg, "kg"},
                {"x2", set->readings[1].at_x_m, "m"});
    if (set->tilt_deg != 0.0 && hs_has(weighed->cg_m.z)) {
        double level_m = about_x ? weighed->cg_m.y : weighed->cg_m.x;
        double tilted_m = (about_x ? state->mean_m.y : state->mean_m.x) / cos(t_rad);

        HS_WORK(working, weigh_height, (level_m - tilted_m) / tan(t_rad), "m",
                {"x", level_m, "m"}, {"x_t", tilted_m, "m"}, {"t", t_rad, "rad"});
    }
}

hs_status
hs_weigh_solve(const hs_weighing *weighings,
               int n,
               const hs_vec3 *otherwise_m,
               hs_working *working,
               hs_weighed *ret_weighed,
               hs_error *error)
{
    equations all = {0};
    hs_weighed weighed = {.cg_m = {0, 0, HS_ABSENT}, .height_per_kg_m = HS_ABSENT};
    set_state state;

    if (n < 1)
        return hs_refuse(error, "load.weighings", n, 1, (double)INFINITY);
    for (int i = 0; i < n; i++) {
        HS_TRY(look_at(&weighings[i], &state, error));
        weighed.mass_kg += state.sum_kg / n;
        add_set(&all, &weighings[i], &state);
    }
    HS_TRY(solve_rows(&all, otherwise_m, &weighed, error));
    for (int i = 0; i < n; i++) {
        HS_TRY(look_at(&weighings[i], &state, error));
        weighed.disagreement_kg =
            fmax(weighed.disagreement_kg, fabs(state.sum_kg - weighed.mass_kg));
        record(&weighings[i], &state, &weighed, working);
        if (weighings[i].tilt_deg != 0.0 && state.span_m > 0.0) {
            double t_rad = weighings[i].tilt_deg * HS_RAD_PER_DEG;

            weighed.height_per_kg_m =
                state.span_m / cos(t_rad) / (weighed.mass_kg * fabs(tan(t_rad)));
        }
    }
    *ret_weighed = weighed;
    return HS_OK;
}

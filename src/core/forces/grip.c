/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  do the grips hold the load, and how hard must pads be pressed?
 * Answer:    wrenches of the cones' edges in a linear programme; the closed form for two facing pads.
 * Not here:  what hands, effector or load can take (checks/grip_checks.c). */
#include "grip.h"

#include "lp.h"
#include "solve.h"
#include "units.h"

#include <string.h>

#define MAX_COLUMNS HS_LP_MAX_COLUMNS
#define MAX_ROWS    (6 + HS_GRIP_MAX_PADS)
#define CLOSED      1e-9 /* least weight of an edge in a closed set of wrenches (numerics) */

/* Wrenches of unit normal force, column by column: force, then moment over the length scale. */
typedef struct {
    int n;
    double wrench[6][MAX_COLUMNS];
    int contact[MAX_COLUMNS];
    double normal[MAX_COLUMNS]; /* 1, or 0 for a pure moment */
    double length_m;
} edge_set;

static hs_vec3
unit(hs_vec3 v)
{
    double length = hs_vec3_length(v);

    return length > 0.0 ? hs_vec3_scale(v, 1.0 / length) : v;
}

/* A direction across the normal, in line with the tangential part of `along`; any other where there is none. */
static hs_vec3
across_of(hs_vec3 normal, hs_vec3 along)
{
    hs_vec3 tangent = hs_vec3_sub(along, hs_vec3_scale(normal, hs_vec3_dot(along, normal)));

    if (hs_vec3_length(tangent) > CLOSED * hs_vec3_length(along))
        return unit(tangent);
    along = fabs(normal.z) < fabs(normal.x) ? (hs_vec3){0, 0, 1} : (hs_vec3){1, 0, 0};
    return unit(hs_vec3_sub(along, hs_vec3_scale(normal, hs_vec3_dot(along, normal))));
}

static void
add_edge(edge_set *set,
         const hs_contact *contact,
         int index,
         hs_vec3 force,
         hs_vec3 moment,
         double normal)
{
    hs_vec3 turning = hs_vec3_add(hs_vec3_cross(contact->at_m, force), moment);

    if (set->n >= MAX_COLUMNS - 1)
        return;
    set->wrench[0][set->n] = force.x;
    set->wrench[1][set->n] = force.y;
    set->wrench[2][set->n] = force.z;
    set->wrench[3][set->n] = turning.x / set->length_m;
    set->wrench[4][set->n] = turning.y / set->length_m;
    set->wrench[5][set->n] = turning.z / set->length_m;
    set->normal[set->n] = normal;
    set->contact[set->n++] = index;
}

static void
add_cone(edge_set *set,
         const hs_contact *contact,
         int index,
         hs_vec3 along,
         int n_edges,
         bool is_plane)
{
    hs_vec3 nowhere = {0, 0, 0};
    hs_vec3 t1 = is_plane ? (hs_vec3){contact->inward.z, 0, -contact->inward.x}
                          : across_of(contact->inward, along);
    hs_vec3 t2 = hs_vec3_cross(contact->inward, t1);
    int count = contact->friction > 0.0 ? (is_plane ? 2 : n_edges) : 1;

    for (int k = 0; k < count; k++) {
        double angle = 2.0 * HS_PI * k / count;
        hs_vec3 rub = is_plane ? hs_vec3_scale(t1, k == 0 ? 1.0 : -1.0)
                               : hs_vec3_add(hs_vec3_scale(t1, cos(angle)),
                                             hs_vec3_scale(t2, sin(angle)));
        hs_vec3 force = hs_vec3_add(contact->inward, hs_vec3_scale(rub, contact->friction));

        add_edge(set, contact, index, force, nowhere, 1.0);
    }
    for (int sign = -1; contact->turning_m > 0.0 && sign <= 1; sign += 2)
        add_edge(set, contact, index, contact->inward,
                 hs_vec3_scale(contact->inward, sign * contact->turning_m), 1.0);
}

static hs_status
check(const hs_contact *contacts, int n, hs_error *error)
{
    if (n < 1 || n > HS_GRIP_MAX_CONTACTS)
        return hs_refuse(error, "contacts", n, 1, HS_GRIP_MAX_CONTACTS);
    for (int i = 0; i < n; i++) {
        if (!(contacts[i].friction >= 0.0) || !isfinite(contacts[i].friction))
            return hs_refuse(error, "friction", contacts[i].friction, 0.0, (double)INFINITY);
        if (!(fabs(hs_vec3_length(contacts[i].inward) - 1.0) < 1e-6))
            return hs_refuse(error, "inward", hs_vec3_length(contacts[i].inward), 1.0, 1.0);
        if (contacts[i].pad < HS_GRIP_NOT_A_PAD || contacts[i].pad >= HS_GRIP_MAX_PADS)
            return hs_refuse(error, "pad", contacts[i].pad, 0, HS_GRIP_MAX_PADS - 1);
    }
    return HS_OK;
}

static void
build(
    edge_set *set, const hs_contact *contacts, int n, hs_vec3 along, int n_edges, bool is_plane)
{
    set->n = 0;
    set->length_m = 0.0;
    for (int i = 0; i < n; i++)
        set->length_m = fmax(set->length_m, hs_vec3_length(contacts[i].at_m));
    if (!(set->length_m > 0.0))
        set->length_m = 1.0;
    for (int i = 0; i < n; i++)
        add_cone(set, &contacts[i], i, along, n_edges, is_plane);
}

int
hs_grip_pad_contacts(hs_vec3 at_m,
                     hs_vec3 inward,
                     double along_m,
                     double up_m,
                     double friction,
                     int pad,
                     hs_contact *ret_contacts)
{
    hs_vec3 normal = unit(inward), level = hs_vec3_cross((hs_vec3){0, 0, 1}, normal), rise;
    int n = 0;

    if (!(along_m > 0.0) && !(up_m > 0.0)) {
        ret_contacts[0] =
            (hs_contact){.at_m = at_m, .inward = normal, .friction = friction, .pad = pad};
        return 1;
    }
    level = hs_vec3_length(level) > 1e-6 ? unit(level) : (hs_vec3){1, 0, 0};
    rise = hs_vec3_cross(normal, level);
    for (int i = -1; i <= 1; i += 2)
        for (int j = -1; j <= 1; j += 2)
            ret_contacts[n++] = (hs_contact){
                .at_m = hs_vec3_add(at_m, hs_vec3_add(hs_vec3_scale(level, i * along_m / 2.0),
                                                      hs_vec3_scale(rise, j * up_m / 2.0))),
                .inward = normal,
                .friction = friction,
                .pad = pad};
    return n;
}

static int
count_pads(const hs_contact *contacts, int n)
{
    int most = 0;

    for (int i = 0; i < n; i++)
        most = contacts[i].pad > most ? contacts[i].pad : most;
    return most + 1;
}

/* Two pads that face each other with the CG's vertical between them and nothing to push along the line: both rub alike. */
static bool
facing_pads(const hs_contact *contacts, int n, const hs_wrench *need, hs_squeeze *squeeze)
{
    hs_vec3 middle[2] = {{0, 0, 0}, {0, 0, 0}};
    int count[2] = {0, 0};
    double force_N = hs_vec3_length(need->force_N), friction = contacts[0].friction, apart_m;
    hs_vec3 inward = contacts[0].inward, line;

    if (count_pads(contacts, n) != 2 || !(friction > 0.0))
        return false;
    for (int i = 0; i < n; i++)
        if (contacts[i].pad == HS_GRIP_NOT_A_PAD)
            return false;
    for (int i = 0; i < n; i++) {
        int pad = contacts[i].pad;
        double facing =
            hs_vec3_dot(contacts[i].inward, inward) * (pad == contacts[0].pad ? 1.0 : -1.0);

        if (!(facing > 1.0 - 1e-12) || fabs(contacts[i].friction - friction) > 1e-12 * friction)
            return false;
        middle[pad] = hs_vec3_add(middle[pad], contacts[i].at_m);
        count[pad]++;
    }
    if (count[0] == 0 || count[1] == 0)
        return false;
    middle[0] = hs_vec3_scale(middle[0], 1.0 / count[0]);
    middle[1] = hs_vec3_scale(middle[1], 1.0 / count[1]);
    line = hs_vec3_sub(middle[1], middle[0]);
    apart_m = hs_vec3_length(line);
    /* the line through the pads is square to their faces, the CG is half way along it, no moment, no force along it */
    if (!(apart_m > HS_SAME_PLACE_m) ||
        hs_vec3_length(hs_vec3_cross(line, inward)) > HS_SAME_PLACE_m ||
        hs_vec3_length(hs_vec3_add(middle[0], middle[1])) > HS_SAME_PLACE_m ||
        hs_vec3_length(need->moment_Nm) > 1e-9 * force_N ||
        fabs(hs_vec3_dot(need->force_N, inward)) > 1e-9 * force_N)
        return false;
    squeeze->squeeze_N = squeeze->pad_N[0] = squeeze->pad_N[1] = force_N / (2.0 * friction);
    squeeze->is_closed_form = true;
    return true;
}

static hs_status
solve_squeeze(const edge_set *set,
              const hs_contact *contacts,
              const hs_wrench *need,
              int n_pads,
              hs_squeeze *squeeze,
              hs_error *error)
{
    double matrix[MAX_ROWS * MAX_COLUMNS], cost[MAX_COLUMNS] = {0}, x[MAX_COLUMNS];
    double least[MAX_ROWS], most[MAX_ROWS];
    double scale_N =
        fmax(hs_vec3_length(need->force_N), hs_vec3_length(need->moment_Nm) / set->length_m);
    double right[6] = {need->force_N.x,
                       need->force_N.y,
                       need->force_N.z,
                       need->moment_Nm.x / set->length_m,
                       need->moment_Nm.y / set->length_m,
                       need->moment_Nm.z / set->length_m};
    int n_columns = set->n + 1, n_rows = 6 + n_pads;
    hs_lp_outcome outcome;

    if (!(scale_N > 0.0))
        return HS_OK;
    memset(matrix, 0, sizeof(double) * (size_t)(n_rows * n_columns));
    for (int i = 0; i < 6; i++) {
        memcpy(&matrix[i * n_columns], set->wrench[i], sizeof(double) * (size_t)set->n);
        least[i] = most[i] = right[i] / scale_N;
    }
    for (int p = 0; p < n_pads;
         p++) { /* normal forces of a pad <= the largest, the last column */
        for (int j = 0; j < set->n; j++)
            if (contacts[set->contact[j]].pad == p)
                matrix[(6 + p) * n_columns + j] = set->normal[j];
        matrix[(6 + p) * n_columns + set->n] = -1.0;
        least[6 + p] = -(double)INFINITY;
        most[6 + p] = 0.0;
    }
    cost[set->n] = 1.0;

    hs_lp_problem problem = {.n_rows = n_rows,
                             .n_columns = n_columns,
                             .cost = cost,
                             .matrix = matrix,
                             .row_least = least,
                             .row_most = most};

    HS_TRY(hs_lp_solve(&problem, &outcome, x, NULL, error));
    squeeze->squeeze_N = scale_N * x[set->n];
    for (int j = 0; j < set->n; j++)
        if (contacts[set->contact[j]].pad != HS_GRIP_NOT_A_PAD)
            squeeze->pad_N[contacts[set->contact[j]].pad] += scale_N * x[j] * set->normal[j];
    return HS_OK;
}

hs_status
hs_grip_squeeze(const hs_contact *contacts,
                int n,
                const hs_wrench *need,
                int n_edges,
                hs_squeeze *ret_squeeze,
                hs_error *error)
{
    hs_squeeze squeeze = {0};
    edge_set set;

    HS_TRY(check(contacts, n, error));
    if (n_edges < 4 || n * (n_edges + 2) >= MAX_COLUMNS)
        return hs_refuse(error, "n_edges", n_edges, 4, MAX_COLUMNS / n - 2);
    if (!facing_pads(contacts, n, need, &squeeze)) {
        build(&set, contacts, n, need->force_N, n_edges, false);
        HS_TRY(solve_squeeze(&set, contacts, need, count_pads(contacts, n), &squeeze, error));
    }
    *ret_squeeze = squeeze;
    return HS_OK;
}

/* The rows that matter: all six, or x, z and the moment about y. */
static int
rows_of(bool is_plane, int *row)
{
    static const int plane[3] = {0, 2, 4};

    for (int i = 0; i < 6; i++)
        row[i] = is_plane && i < 3 ? plane[i] : i;
    return is_plane ? 3 : 6;
}

static bool
spans(const edge_set *set, bool is_plane)
{
    double square[36] = {0}, right[6] = {0}, x[6];
    int row[6], n_rows = rows_of(is_plane, row), rank = 0;

    for (int i = 0; i < n_rows; i++)
        for (int j = 0; j < n_rows; j++)
            for (int k = 0; k < set->n; k++)
                square[i * n_rows + j] += set->wrench[row[i]][k] * set->wrench[row[j]][k];
    return hs_linear_least(n_rows, n_rows, square, right, x, &rank, NULL) == HS_OK &&
           rank == n_rows;
}

/* Largest least weight t of a set of weights >= t, sum 1, that gives no wrench: above 0 the wrenches surround the origin. */
static bool
surrounds(const edge_set *set, bool is_plane)
{
    double matrix[7 * MAX_COLUMNS], cost[MAX_COLUMNS] = {0}, sides[7] = {0}, value;
    int row[6], n_rows = rows_of(is_plane, row), n_columns = set->n + 1;
    hs_lp_outcome outcome;

    for (int i = 0; i <= n_rows; i++) {
        double sum = 0.0;

        for (int j = 0; j < set->n; j++) {
            matrix[i * n_columns + j] = i < n_rows ? set->wrench[row[i]][j] : 1.0;
            sum += matrix[i * n_columns + j];
        }
        matrix[i * n_columns + set->n] = sum;
    }
    sides[n_rows] = 1.0;
    cost[set->n] = -1.0;

    hs_lp_problem problem = {.n_rows = n_rows + 1,
                             .n_columns = n_columns,
                             .cost = cost,
                             .matrix = matrix,
                             .row_least = sides,
                             .row_most = sides};

    return hs_lp_solve(&problem, &outcome, NULL, &value, NULL) == HS_OK && -value > CLOSED;
}

static bool
is_closed(const hs_contact *contacts, int n, bool with_friction, bool is_plane, int n_edges)
{
    hs_contact smooth[HS_GRIP_MAX_CONTACTS];
    edge_set set;

    memcpy(smooth, contacts, sizeof *smooth * (size_t)n);
    for (int i = 0; i < n && !with_friction; i++)
        smooth[i].friction = smooth[i].turning_m = 0.0;
    build(&set, smooth, n, (hs_vec3){0, 0, 1}, n_edges, is_plane);
    return spans(&set, is_plane) && surrounds(&set, is_plane);
}

hs_hold
hs_grip_closure(
    const hs_contact *contacts, int n, const hs_wrench *need, bool is_plane, int n_edges)
{
    hs_squeeze squeeze;

    if (check(contacts, n, NULL) != HS_OK || n_edges < 4 || n * (n_edges + 2) >= MAX_COLUMNS)
        return HS_HOLD_NONE;
    if (is_closed(contacts, n, false, is_plane, n_edges))
        return HS_HOLD_FORM;
    if (is_closed(contacts, n, true, is_plane, n_edges))
        return HS_HOLD_FORCE;
    if (!is_plane && need != NULL &&
        hs_grip_squeeze(contacts, n, need, n_edges, &squeeze, NULL) == HS_OK)
        return HS_HOLD_RESTS;
    return HS_HOLD_NONE;
}

hs_status
hs_grip_worst_direction(const hs_contact *contacts,
                        int n,
                        const hs_wrench *need,
                        double push_N,
                        int n_round,
                        hs_vec3 *ret_direction,
                        double *ret_squeeze_N,
                        hs_error *error)
{
    hs_vec3 worst = {0, 0, 0};
    double most_N = -1.0;

    if (!(push_N >= 0.0) || n_round < 4)
        return hs_refuse(error, "push_N", push_N, 0.0, (double)INFINITY);
    for (int level = -2; level <= 2; level++)
        for (int k = 0; k < (level == 2 || level == -2 ? 1 : n_round); k++) {
            double up = level * HS_PI / 4.0, round = 2.0 * HS_PI * k / n_round;
            hs_vec3 direction = {cos(up) * cos(round), cos(up) * sin(round), sin(up)};
            hs_wrench pushed = *need;
            hs_squeeze squeeze;
            hs_status status;

            pushed.force_N = hs_vec3_add(pushed.force_N, hs_vec3_scale(direction, push_N));
            status = hs_grip_squeeze(contacts, n, &pushed, HS_GRIP_EDGES, &squeeze, error);
            if (status == HS_E_NO_SOLUTION) {
                *ret_direction = direction;
                *ret_squeeze_N = HS_ABSENT;
                return HS_OK;
            }
            HS_TRY(status);
            if (squeeze.squeeze_N > most_N) {
                most_N = squeeze.squeeze_N;
                worst = direction;
            }
        }
    *ret_direction = worst;
    *ret_squeeze_N = most_N;
    return HS_OK;
}

double
hs_grip_tip_rad(double inside_m, double height_m)
{
    return height_m > 0.0 ? atan2(inside_m, height_m) : HS_ABSENT;
}

double
hs_grip_hang_rad(double outside_m, double depth_m)
{
    return atan2(outside_m, depth_m);
}

enum {
    CONTACTS_KNOWN = 16, /* with more the question is not remembered */
    NUMBERS = 9          /* of a contact, in the key */
};

static void
put_vec3(double *numbers, int *n, hs_vec3 v)
{
    numbers[(*n)++] = v.x;
    numbers[(*n)++] = v.y;
    numbers[(*n)++] = v.z;
}

hs_status
hs_grip_squeeze_known(hs_memo *memo,
                      const hs_contact *contacts,
                      int n,
                      const hs_wrench *need,
                      int n_edges,
                      hs_squeeze *ret_squeeze,
                      hs_error *error)
{
    double key[8 + NUMBERS * CONTACTS_KNOWN];
    const hs_squeeze *known;
    int n_key = 0;

    if (memo == NULL || n > CONTACTS_KNOWN)
        return hs_grip_squeeze(contacts, n, need, n_edges, ret_squeeze, error);
    key[n_key++] = -1.0; /* no posture's key begins so */
    key[n_key++] = n_edges;
    put_vec3(key, &n_key, need->force_N);
    put_vec3(key, &n_key, need->moment_Nm);
    for (int i = 0; i < n; i++) {
        put_vec3(key, &n_key, contacts[i].at_m);
        put_vec3(key, &n_key, contacts[i].inward);
        key[n_key++] = contacts[i].friction;
        key[n_key++] = contacts[i].turning_m;
        key[n_key++] = contacts[i].pad;
    }
    known = hs_memo_find(memo, key, n_key);
    if (known == NULL) {
        HS_TRY(hs_grip_squeeze(contacts, n, need, n_edges, ret_squeeze, error));
        hs_memo_keep(memo, key, n_key, ret_squeeze, sizeof *ret_squeeze);
        return HS_OK;
    }
    *ret_squeeze = *known;
    return HS_OK;
}

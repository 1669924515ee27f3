/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  are shares, their range and what is left when one lets go what statics gives?
 * Answer:    the cases of tests/cases/statics.json, and laws on random grips.
 * Not here:  comparison with another solver (compare_scipy.py), squeeze and closure (test_grip.c). */
#include "case_load.h"
#include "grip.h"
#include "hull.h"
#include "letgo.h"
#include "near.h"
#include "solve.h"
#include "units.h"

#include <string.h>

static hs_shares_problem
problem_of(JsonObject *of)
{
    JsonArray *x = json_object_get_array_member(of, "x_m"),
              *y = json_object_get_array_member(of, "y_m");
    JsonArray *resultant = json_object_get_array_member(of, "resultant_m");
    hs_shares_problem problem = {.n = (int)json_array_get_length(x),
                                 .total_N = hs_case_number(of, "total_N", 1.0)};

    for (int i = 0; i < problem.n; i++) {
        problem.x_m[i] = hs_case_at(x, (guint)i);
        problem.y_m[i] = hs_case_at(y, (guint)i);
    }
    problem.moment_x_Nm = problem.total_N * hs_case_at(resultant, 0);
    problem.moment_y_Nm = problem.total_N * hs_case_at(resultant, 1);
    return problem;
}

static void
compare(JsonObject *of, const char *key, const double *got, double scale)
{
    JsonObject *expect = json_object_get_object_member(of, "expect");
    JsonArray *list;

    if (!json_object_has_member(expect, key))
        return;
    list = json_object_get_array_member(expect, key);
    for (guint i = 0; i < json_array_get_length(list); i++)
        hs_near(json_object_get_string_member(of, "name"), got[i], hs_case_at(list, i),
                1e-9 * scale);
}

static void
ask_shares(JsonObject *of)
{
    hs_shares_problem problem = problem_of(of);
    JsonObject *expect = json_object_get_object_member(of, "expect");
    hs_shares_answer answer;

    g_assert_cmpint(hs_shares(&problem, &answer, NULL), ==, HS_OK);
    compare(of, "up_N", answer.up_N, problem.total_N);
    if (json_object_has_member(expect, "couple_Nm"))
        hs_near_rel(json_object_get_string_member(of, "name"), answer.couple_Nm,
                    hs_case_number(expect, "couple_Nm", 0.0), 1e-9);
}

static void
shares__cases(void)
{
    hs_case_each("statics", "ask", "shares", ask_shares);
}

/* Springs that also pull: the least-norm solution alone. */
static void
ask_two_sided(JsonObject *of)
{
    hs_shares_problem problem = problem_of(of);
    double matrix[3 * HS_MAX_USED_GRIPS], f[HS_MAX_USED_GRIPS];
    double right[3] = {problem.total_N, problem.moment_x_Nm, problem.moment_y_Nm};

    for (int i = 0; i < problem.n; i++) {
        matrix[i] = 1.0;
        matrix[problem.n + i] = problem.x_m[i];
        matrix[2 * problem.n + i] = problem.y_m[i];
    }
    g_assert_cmpint(hs_linear_least(3, problem.n, matrix, right, f, NULL, NULL), ==, HS_OK);
    compare(of, "up_N", f, problem.total_N);
}

static void
shares__springs_that_also_pull(void)
{
    hs_case_each("statics", "ask", "two_sided", ask_two_sided);
}

static void
ask_letgo(JsonObject *of)
{
    hs_shares_problem problem = problem_of(of);
    JsonObject *expect = json_object_get_object_member(of, "expect");
    int bearer[HS_MAX_USED_GRIPS];
    hs_letgo_answer answer;

    for (int i = 0; i < problem.n; i++)
        bearer[i] = i;
    g_assert_cmpint(hs_letgo(&problem, bearer, problem.n,
                             (int)hs_case_number(of, "lets_go", 0.0), &answer, NULL),
                    ==, HS_OK);
    g_assert_true(answer.tips == json_object_get_boolean_member(expect, "tips"));
    compare(of, "old_N", answer.old_N, problem.total_N);
    compare(of, "new_N", answer.new_N, problem.total_N);
    compare(of, "peak_N", answer.peak_N, problem.total_N);
}

static void
shares__when_one_lets_go(void)
{
    hs_case_each("statics", "ask", "letgo", ask_letgo);
}

static void
ask_margin(JsonObject *of)
{
    hs_shares_problem problem = problem_of(of);
    hs_vec2 at_m[HS_MAX_USED_GRIPS];
    hs_hull_place place;

    for (int i = 0; i < problem.n; i++)
        at_m[i] = (hs_vec2){problem.x_m[i], problem.y_m[i]};
    hs_hull_locate(at_m, problem.n, (hs_vec2){problem.moment_x_Nm, problem.moment_y_Nm},
                   &place);
    hs_near(json_object_get_string_member(of, "name"), place.inside_m - place.outside_m,
            hs_case_number(json_object_get_object_member(of, "expect"), "margin_m", HS_ABSENT),
            1e-12);
}

static void
shares__margin_to_the_hull(void)
{
    hs_case_each("statics", "ask", "margin", ask_margin);
}

static void
ask_tip(JsonObject *of)
{
    hs_near_rel(
        json_object_get_string_member(of, "name"),
        hs_grip_tip_rad(hs_case_number(of, "inside_m", 0.0),
                        hs_case_number(of, "height_m", 0.0)) *
            HS_DEG_PER_RAD,
        hs_case_number(json_object_get_object_member(of, "expect"), "turn_deg", HS_ABSENT),
        1e-9);
}

static void
shares__tipping_angle(void)
{
    hs_case_each("statics", "ask", "tip", ask_tip);
}

/* ---- the worked documents, at their first place ---- */

typedef struct {
    hs_shares_problem problem;
    int n_bearers;
    const char *bearer[8];
    int used_by[HS_MAX_USED_GRIPS];
} posed;

static JsonObject *
grip_named(JsonArray *grips, const char *id)
{
    for (guint i = 0; i < json_array_get_length(grips); i++)
        if (g_strcmp0(
                json_object_get_string_member(json_array_get_object_element(grips, i), "id"),
                id) == 0)
            return json_array_get_object_element(grips, i);
    g_error("no grip %s", id);
}

static void
pose(JsonObject *document, const hs_load_state *state, posed *p)
{
    JsonArray *grips =
        json_object_get_array_member(json_object_get_object_member(document, "load"), "grips");
    JsonArray *points = json_object_get_array_member(
        json_object_get_object_member(document, "route"), "points");
    JsonObject *option =
        json_array_get_object_element(json_object_get_array_member(document, "options"), 0);
    JsonArray *bearers = json_object_get_array_member(option, "bearers");
    double pitch_rad =
        hs_case_number(json_array_get_object_element(points, 0), "pitch_deg", 0.0) *
        HS_RAD_PER_DEG;
    hs_mat3 q = hs_mat3_load_to_world(pitch_rad, 0.0);
    hs_vec3 cg_m = state->cg_m;

    if (!hs_has(cg_m.z))
        cg_m.z = 0.0;
    *p = (posed){.problem = {.total_N = state->mass_kg * HS_GRAVITY_m_s2}};
    p->n_bearers = (int)json_array_get_length(bearers);
    for (int b = 0; b < p->n_bearers; b++) {
        JsonObject *bearer = json_array_get_object_element(bearers, (guint)b);
        JsonArray *held = json_object_get_array_member(bearer, "grips");

        p->bearer[b] = json_object_get_string_member(bearer, "id");
        for (guint k = 0; k < json_array_get_length(held); k++) {
            JsonArray *at = json_object_get_array_member(
                grip_named(grips, json_array_get_string_element(held, k)), "at_m");
            hs_vec3 from_cg = hs_mat3_apply(
                &q,
                hs_vec3_sub((hs_vec3){hs_case_at(at, 0), hs_case_at(at, 1), hs_case_at(at, 2)},
                            cg_m));

            p->problem.x_m[p->problem.n] = from_cg.x;
            p->problem.y_m[p->problem.n] = from_cg.y;
            p->used_by[p->problem.n++] = b;
        }
    }
}

static double
answer_of(const posed *p, const char *path, bool *ret_is_asked)
{
    double least, most, sum = 0.0;
    bool member[HS_MAX_USED_GRIPS] = {false};
    hs_shares_answer answer;
    const char *at = strstr(path, "samples[first].bearers[");
    int who = -1;

    *ret_is_asked = at != NULL && strncmp(path, "max", 3) != 0;
    if (!*ret_is_asked)
        return 0.0;
    at += strlen("samples[first].bearers[");
    for (int b = 0; b < p->n_bearers; b++)
        if (strncmp(at, p->bearer[b], strlen(p->bearer[b])) == 0 &&
            at[strlen(p->bearer[b])] == ']')
            who = b;
    g_assert_cmpint(who, >=, 0);
    g_assert_cmpint(hs_shares(&p->problem, &answer, NULL), ==, HS_OK);
    for (int i = 0; i < p->problem.n; i++) {
        member[i] = p->used_by[i] == who;
        sum += member[i] ? answer.up_N[i] : 0.0;
    }
    if (strstr(path, "share_range_N") == NULL)
        return sum;
    g_assert_cmpint(hs_shares_range(&p->problem, member, &least, &most, NULL), ==, HS_OK);
    return g_str_has_suffix(path, "[0]") ? least : most;
}

static int n_asked;

static void
ask_document(JsonObject *of)
{
    hs_arena *arena = hs_arena_new();
    JsonObject *document = json_object_get_object_member(of, "document");
    JsonArray *results = json_object_get_array_member(of, "results");
    hs_load load;
    hs_load_state state;
    posed p;

    hs_case_document_load(document, arena, &load);
    g_assert_cmpint(hs_load_solve(&load, arena, NULL, NULL, &state, NULL), ==, HS_OK);
    pose(document, &state, &p);
    for (guint i = 0; i < json_array_get_length(results); i++) {
        JsonObject *one = json_array_get_object_element(results, i);
        bool is_asked;
        double got = answer_of(&p, json_object_get_string_member(one, "path"), &is_asked);
        double value = json_object_get_double_member(one, "value");

        if (!is_asked)
            continue;
        n_asked++;
        hs_near(json_object_get_string_member(of, "name"), got, value,
                fmax(fmax(hs_case_number(one, "abs_tol", 0.0),
                          hs_case_number(one, "rel_tol", 0.0) * fabs(value)),
                     1e-9));
    }
    hs_arena_free(arena);
}

static void
shares__documents_with_known_answers(void)
{
    hs_case_each("statics", "document", NULL, ask_document);
    g_assert_cmpint(n_asked, >, 200);
}

/* ---- laws ---- */

/* Random grips, half of the time on a coarse grid so that lines and coincident places come up. */
static hs_shares_problem
random_problem(void)
{
    hs_shares_problem problem = {.n = g_test_rand_int_range(1, 10),
                                 .total_N = g_test_rand_double_range(50, 900)};
    bool is_coarse = g_test_rand_bit();
    double x_m = g_test_rand_double_range(-0.5, 0.5), y_m = g_test_rand_double_range(-0.4, 0.4);

    for (int i = 0; i < problem.n; i++) {
        problem.x_m[i] =
            is_coarse ? g_test_rand_int_range(-2, 3) * 0.25 : g_test_rand_double_range(-1, 1);
        problem.y_m[i] =
            is_coarse ? g_test_rand_int_range(-1, 2) * 0.25 : g_test_rand_double_range(-1, 1);
    }
    if (is_coarse) {
        x_m = g_test_rand_int_range(-3, 4) * 0.125;
        y_m = g_test_rand_int_range(-2, 3) * 0.125;
    }
    problem.moment_x_Nm = problem.total_N * x_m;
    problem.moment_y_Nm = problem.total_N * y_m;
    return problem;
}

static void
shares__equilibrium_closes_and_nobody_pulls(void)
{
    for (int trial = 0; trial < 20000; trial++) {
        hs_shares_problem problem = random_problem();
        hs_shares_answer answer;
        double total = 0.0, x = 0.0, y = 0.0;

        g_assert_cmpint(hs_shares(&problem, &answer, NULL), ==, HS_OK);
        for (int i = 0; i < problem.n; i++) {
            g_assert_true(answer.up_N[i] >= 0.0);
            total += answer.up_N[i];
            x += answer.up_N[i] * problem.x_m[i];
            y += answer.up_N[i] * problem.y_m[i];
        }
        hs_near_rel("sum", total, problem.total_N, 1e-9);
        hs_near("x", x, problem.total_N * answer.nearest_m.x, 1e-9 * problem.total_N);
        hs_near("y", y, problem.total_N * answer.nearest_m.y, 1e-9 * problem.total_N);
        if (!answer.is_outside) {
            hs_near("resultant", answer.nearest_m.x, answer.resultant_m.x, 1e-9);
            hs_near("resultant", answer.nearest_m.y, answer.resultant_m.y, 1e-9);
        }
    }
}

static void
shares__mirror_and_shift_change_nothing(void)
{
    for (int trial = 0; trial < 5000; trial++) {
        hs_shares_problem problem = random_problem(), mirrored = problem, moved = problem;
        hs_shares_answer answer, other, again;

        for (int i = 0; i < problem.n; i++) {
            mirrored.y_m[i] = -problem.y_m[i];
            moved.x_m[i] += 3.0;
        }
        mirrored.moment_y_Nm = -problem.moment_y_Nm;
        moved.moment_x_Nm += 3.0 * problem.total_N;
        g_assert_cmpint(hs_shares(&problem, &answer, NULL), ==, HS_OK);
        g_assert_cmpint(hs_shares(&mirrored, &other, NULL), ==, HS_OK);
        g_assert_cmpint(hs_shares(&moved, &again, NULL), ==, HS_OK);
        for (int i = 0; i < problem.n; i++) {
            hs_near("mirror", other.up_N[i], answer.up_N[i], 1e-8 * problem.total_N);
            hs_near("shift", again.up_N[i], answer.up_N[i], 1e-8 * problem.total_N);
        }
    }
}

static void
shares__given_lies_between_least_and_most(void)
{
    for (int trial = 0; trial < 5000; trial++) {
        hs_shares_problem problem = random_problem();
        bool member[HS_MAX_USED_GRIPS] = {false};
        hs_shares_answer answer;
        double sum = 0.0, least, most;

        g_assert_cmpint(hs_shares(&problem, &answer, NULL), ==, HS_OK);
        for (int i = 0; i < problem.n; i++) {
            member[i] = g_test_rand_bit();
            sum += member[i] ? answer.up_N[i] : 0.0;
        }
        g_assert_cmpint(hs_shares_range(&problem, member, &least, &most, NULL), ==, HS_OK);
        g_assert_cmpfloat(least, <=, sum + 1e-8 * problem.total_N);
        g_assert_cmpfloat(sum, <=, most + 1e-8 * problem.total_N);
        if (answer.is_determinate)
            hs_near("determinate", most - least, 0.0, 1e-8 * problem.total_N);
    }
}

static void
shares__too_many_grips_are_refused(void)
{
    hs_shares_problem problem = {.n = HS_MAX_USED_GRIPS + 1, .total_N = 1.0};
    hs_shares_answer answer;
    hs_error error = {0};

    g_assert_cmpint(hs_shares(&problem, &answer, &error), ==, HS_E_RANGE);
    g_assert_cmpstr(error.where, ==, "grips");
    problem.n = 2;
    problem.total_N = HS_ABSENT;
    g_assert_cmpint(hs_shares(&problem, &answer, &error), ==, HS_E_RANGE);
    g_assert_cmpstr(error.where, ==, "total_N");
}

int
main(int argc, char **argv)
{
    g_test_init(&argc, &argv, NULL);
    g_test_add_func("/shares/cases", shares__cases);
    g_test_add_func("/shares/springs_that_also_pull", shares__springs_that_also_pull);
    g_test_add_func("/shares/when_one_lets_go", shares__when_one_lets_go);
    g_test_add_func("/shares/margin_to_the_hull", shares__margin_to_the_hull);
    g_test_add_func("/shares/tipping_angle", shares__tipping_angle);
    g_test_add_func("/shares/documents_with_known_answers",
                    shares__documents_with_known_answers);
    g_test_add_func("/shares/equilibrium_closes_and_nobody_pulls",
                    shares__equilibrium_closes_and_nobody_pulls);
    g_test_add_func("/shares/mirror_and_shift_change_nothing",
                    shares__mirror_and_shift_change_nothing);
    g_test_add_func("/shares/given_lies_between_least_and_most",
                    shares__given_lies_between_least_and_most);
    g_test_add_func("/shares/too_many_grips_are_refused", shares__too_many_grips_are_refused);
    return g_test_run();
}

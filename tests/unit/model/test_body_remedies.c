/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  does every remedy of the body's checks do what it says, in every example?
 * Answer:    each near or beyond finding names a remedy; applied to a copy of the task, the same check ends within.
 * Not here:  made-up loads and the figures of the checks (checks/test_body_checks.c). */
#include "changed_task.h"
#include "check.h"
#include "defaults.h"
#include "document.h"
#include "examples.h"
#include "near.h"
#include "runner.h"
#include "site_limits.h"
#include "units.h"

#include <string.h>

static const hs_check_id checks[] = {HS_CHECK_spine_compression, HS_CHECK_spine_shear,
                                     HS_CHECK_strength, HS_CHECK_balance,
                                     HS_CHECK_floor_friction};

static int n_applied, n_without, n_wrong, n_by[HS_N_REASONS];

typedef struct {
    const hs_task *task;
    hs_option option;
    hs_load_state load;
    hs_run run;
} scene;

static void
run_it(scene *s, hs_arena *arena)
{
    hs_error error = {0};

    if (hs_load_solve(&s->task->load, arena, NULL, NULL, &s->load, &error) != HS_OK ||
        hs_run_make(s->task, &s->load, &s->option, 0, false, arena, NULL, &s->run, &error) !=
            HS_OK)
        g_error("run: %s", error.where);
}

static hs_finding
ask(const scene *s, hs_check_id check, hs_arena *arena)
{
    hs_asking asking = {.task = s->task,
                        .load = &s->load,
                        .run = &s->run,
                        .baseline = &s->run,
                        .arena = arena,
                        .near_ratio = s->task->policy.near_ratio};
    hs_finding finding = hs_finding_start(&asking, check);

    hs_check_get(check)->ask(&asking, &finding);
    return finding;
}

/* Points and options of its own, so that they can be changed. */
static hs_point *
own_points(scene *s, hs_arena *arena)
{
    hs_task *task = HS_NEW(arena, hs_task, 1);
    hs_point *points = HS_NEW(arena, hs_point, s->task->route.n_points);

    *task = *s->task;
    memcpy(points, task->route.points, (gsize)task->route.n_points * sizeof *points);
    task->route.points = points;
    s->task = task;
    return points;
}

static void
apply_reach(scene *s, double most_m, hs_arena *arena)
{
    int n = s->task->route.n_points;
    double *each_m = HS_NEW(arena, double, n);

    for (int i = 0; i < n; i++) {
        each_m[i] = most_m;
        for (int b = 0; b < s->option.n_bearers; b++)
            each_m[i] = fmin(each_m[i], s->run.setup->motions[b].reach_m[i]);
    }
    s->option.reach_m = HS_ABSENT;
    s->option.n_reach = n;
    s->option.reach_each_m = each_m;
}

static void
apply_height(scene *s, double least_m, hs_arena *arena)
{
    hs_point *points = own_points(s, arena);

    for (int i = 0; i < s->task->route.n_points; i++) {
        double missing_m = 0.0;

        for (int k = 0; k < s->run.n_stations; k++)
            for (int b = 0; b < s->option.n_bearers; b++)
                if (fabs(s->run.stations[k].place.route - (i + 1)) < 1e-9)
                    missing_m =
                        fmax(missing_m, least_m - s->run.stations[k].bearers[b].input.hand_z_m);
        points[i].z_m += missing_m;
    }
}

static void
apply_turn(scene *s, double most_deg, hs_arena *arena)
{
    hs_point *points = own_points(s, arena);

    for (int i = 0; i < s->task->route.n_points; i++)
        if (fabs(points[i].turn_deg) > most_deg)
            points[i].turn_deg = copysign(most_deg, points[i].turn_deg);
}

static void
apply_friction(scene *s, double least, hs_arena *arena)
{
    hs_task *task = HS_NEW(arena, hs_task, 1);

    *task = *s->task;
    task->site.friction = least;
    s->task = task;
}

/* False: the sentence names nothing that can be set. */
static gboolean
apply(scene *s, const hs_message *remedy, hs_arena *arena)
{
    const double *number = remedy->number;

    switch (remedy->reason) {
    case HS_REASON_body_remedy_turn:
        apply_turn(s, number[0], arena);
        break;
    case HS_REASON_body_remedy_turn_reach:
    case HS_REASON_body_remedy_reach:
        apply_reach(s, number[0], arena);
        break;
    case HS_REASON_body_remedy_turn_height:
    case HS_REASON_body_remedy_height:
        apply_height(s, number[0], arena);
        break;
    case HS_REASON_body_remedy_turn_mass:
    case HS_REASON_body_remedy_mass:
        s->task = hs_change_mass(s->task, number[0] / number[1], arena);
        break;
    case HS_REASON_body_remedy_stand:
        s->option.stance = HS_STANCE_STANDING;
        s->option.n_stance = 0;
        break;
    case HS_REASON_floor_remedy:
        apply_friction(s, number[0], arena);
        break;
    default:
        return FALSE;
    }
    if (remedy->reason == HS_REASON_body_remedy_turn_reach ||
        remedy->reason == HS_REASON_body_remedy_turn_height ||
        remedy->reason == HS_REASON_body_remedy_turn_mass)
        apply_turn(s, number[2], arena);
    return TRUE;
}

static void
check_remedy(const scene *before, hs_check_id check, const char *where, hs_arena *arena)
{
    hs_finding finding = ask(before, check, arena), after;
    scene changed = *before;

    if (finding.status != HS_STATUS_NEAR && finding.status != HS_STATUS_BEYOND)
        return;
    n_by[finding.remedy.reason]++;
    if (finding.remedy.reason == HS_REASON_none) {
        n_without++;
        g_test_message("%s %s: no remedy at ratio %g", where, hs_check_get(check)->id,
                       finding.ratio);
    }
    if (!apply(&changed, &finding.remedy, arena))
        return;
    n_applied++;
    run_it(&changed, arena);
    after = ask(&changed, check, arena);
    if (after.status == HS_STATUS_WITHIN)
        return;
    n_wrong++;
    g_test_message("%s %s: after %s %g (%g) status %d, ratio %g, at %g", where,
                   hs_check_get(check)->id, hs_reason_name(finding.remedy.reason),
                   finding.remedy.number[0], finding.remedy.number[1], (int)after.status,
                   after.ratio, after.route);
}

/* As given; and the first bearer alone without a suit, as the program adds it where nobody is so. */
static void
check_option(const hs_task *task, const hs_option *option, bool is_bare, const char *name)
{
    hs_arena *arena = hs_arena_new();
    scene s = {.task = task, .option = *option};
    hs_bearer bare = option->bearers[0];
    g_autofree char *where =
        g_strdup_printf("%.3s %s%s", name, option->id, is_bare ? " bare" : "");

    if (is_bare) {
        bare.suit = bare.effector = -1;
        s.option.n_bearers = 1;
        s.option.bearers = &bare;
    }
    run_it(&s, arena);
    for (gsize i = 0; i < G_N_ELEMENTS(checks); i++)
        check_remedy(&s, checks[i], where, arena);
    hs_arena_free(arena);
}

/* Every option of the document, with a site's set of limits or without one. */
static void
check_document(const char *path, const char *name, const hs_site_set *set)
{
    g_autoptr(GPtrArray) faults = g_ptr_array_new_with_free_func((GDestroyNotify)hs_fault_free);
    g_autoptr(hs_document) document = hs_document_load(path, faults, NULL);
    hs_arena *arena = hs_arena_new();
    const hs_task *task;

    g_assert_nonnull(document);
    task = hs_defaults_apply(hs_site_set_apply(set, hs_document_task(document), arena), arena,
                             NULL);
    for (int o = 0; o < task->n_options; o++) {
        check_option(task, &task->options[o], false, name);
        if (task->options[o].bearers[0].suit >= 0)
            check_option(task, &task->options[o], true, name);
    }
    hs_arena_free(arena);
}

static void
check_example(const char *path, const char *name)
{
    check_document(path, name, NULL);
}

static hs_site_set *age_and_sex;

static void
check_example_by_age(const char *path, const char *name)
{
    check_document(path, name, age_and_sex);
}

/* The low back by age and sex in place of 3.4 kN: as it ships, remembered, and as a site that has confirmed every row. */
static void
remedies_of_the_set_end_within(void)
{
    const char *path = HS_SOURCE_ROOT "/data/limits/spine/spine-age-sex.json";
    g_autofree char *text = NULL;

    g_assert_true(g_file_get_contents(path, &text, NULL, NULL));
    for (int is_confirmed = 0; is_confirmed < 2; is_confirmed++) {
        g_autoptr(GPtrArray) faults =
            g_ptr_array_new_with_free_func((GDestroyNotify)hs_fault_free);
        g_auto(GStrv) pieces = g_strsplit(text, "\"known\":\"memory\"", -1);
        g_autofree char *taken =
            g_strjoinv(is_confirmed ? "\"confirmed\":true" : "\"known\":\"memory\"", pieces);

        g_assert_cmpuint(g_strv_length(pieces), ==, 11);
        age_and_sex = hs_site_set_from_bytes(taken, strlen(taken), faults);
        g_assert_nonnull(age_and_sex);
        n_applied = 0;
        hs_each_example(check_example_by_age);
        g_assert_cmpint(n_applied, >, 20);
        g_clear_pointer(&age_and_sex, hs_site_set_unref);
    }
    g_assert_cmpint(n_without, ==, 0);
    g_assert_cmpint(n_wrong, ==, 0);
}

static void
every_remedy_ends_within(void)
{
    hs_each_example(check_example);
    for (int i = 0; i < HS_N_REASONS; i++)
        if (n_by[i] > 0)
            g_test_message("%3d %s", n_by[i], hs_reason_name((hs_reason)i));
    g_test_message("%d applied", n_applied);
    g_assert_cmpint(n_applied, >, 20);
    g_assert_cmpint(n_without, ==, 0);
    g_assert_cmpint(n_wrong, ==, 0);
}

int
main(int argc, char **argv)
{
    g_test_init(&argc, &argv, NULL);
    g_test_add_func("/body_remedies/every_remedy_ends_within", every_remedy_ends_within);
    g_test_add_func("/body_remedies/remedies_of_the_set_end_within",
                    remedies_of_the_set_end_within);
    return g_test_run();
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  does an infinite figure stay inside core?
 * Answer:    each place of the results is made infinite in turn; the door must name it.
 * Not here:  whether real assessments are finite (tests/fuzz). */
#include "near.h"
#include "pack.h"

#include <string.h>

static hs_finding
judged(void)
{
    return (hs_finding){.check = HS_CHECK_balance,
                        .bearer = 0,
                        .route = 0.5,
                        .t_s = 2.0,
                        .value = 1.5,
                        .limit = 2.0,
                        .ratio = 0.75,
                        .status = HS_STATUS_WITHIN,
                        .why = HS_WHY_COMPUTED,
                        .text = HS_SAY(data_missing, 1.0)};
}

static void
check_became_internal(hs_finding finding)
{
    hs_pack_finding(&finding);
    g_assert_cmpint(finding.status, ==, HS_STATUS_NOT_JUDGED);
    g_assert_cmpint(finding.why, ==, HS_WHY_MISSING);
    g_assert_cmpint(finding.text.reason, ==, HS_REASON_internal);
    g_assert_true(isnan(finding.value) && isnan(finding.limit) && isnan(finding.ratio));
    g_assert_false(isinf(finding.route));
    g_assert_null(finding.working.first);
    for (int i = 0; i < HS_MESSAGE_NUMBERS; i++)
        g_assert_true(isfinite(finding.text.number[i]) && isfinite(finding.remedy.number[i]));
}

static void
a_finite_finding_is_left_alone(void)
{
    hs_finding finding = judged(), none = {.status = HS_STATUS_NONE, .value = INFINITY};
    hs_finding scope = {
        .status = HS_STATUS_NOT_JUDGED, .why = HS_WHY_SCOPE, .value = HS_ABSENT};

    hs_pack_finding(&finding);
    g_assert_cmpint(finding.status, ==, HS_STATUS_WITHIN);
    hs_near("value", finding.value, 1.5, 0.0);
    finding.value = HS_ABSENT; /* an absent figure is no fault */
    hs_pack_finding(&finding);
    g_assert_cmpint(finding.status, ==, HS_STATUS_WITHIN);
    hs_pack_finding(&none);
    g_assert_cmpint(none.status, ==, HS_STATUS_NONE);
    hs_pack_finding(&scope);
    g_assert_cmpint(scope.why, ==, HS_WHY_SCOPE);
}

static void
an_infinite_finding_is_not_judged(void)
{
    hs_finding f;
    hs_arena *arena = hs_arena_new();

    (f = judged(), f.value = INFINITY, check_became_internal(f));
    (f = judged(), f.limit = -INFINITY, check_became_internal(f));
    (f = judged(), f.ratio = INFINITY, check_became_internal(f));
    (f = judged(), f.route = INFINITY, check_became_internal(f));
    (f = judged(), f.t_s = INFINITY, check_became_internal(f));
    (f = judged(), f.text.number[5] = INFINITY, check_became_internal(f));
    (f = judged(), f.remedy.number[0] = -INFINITY, check_became_internal(f));
    f = judged();
    f.working.arena = arena;
    HS_WORK(&f.working, loss_energy, 1.0, "J", {"m", INFINITY, "kg"}, {"g", 9.8, "m/s2"},
            {"h", 1.0, "m"});
    check_became_internal(f);
    f = judged();
    f.working.arena = arena;
    HS_WORK(&f.working, loss_energy, INFINITY, "J", {"m", 1.0, "kg"}, {"g", 9.8, "m/s2"},
            {"h", 1.0, "m"});
    check_became_internal(f);
    (f = judged(), f.status = HS_STATUS_NOT_JUDGED,
     check_became_internal(f)); /* does not say why */
    hs_arena_free(arena);
}

typedef struct {
    hs_results results;
    hs_option asked;
    hs_option_result option;
    hs_sample sample;
    hs_grip_sample grip;
    hs_bearer_sample bearer;
    hs_finding finding;
    hs_break_even turn;
    hs_doubt_option doubt;
    hs_doubt_check doubted;
} whole;

static whole *
whole_new(void)
{
    whole *w = g_new0(whole, 1);

    w->asked.n_bearers = 1;
    w->finding = judged();
    w->bearer.has_pose = true;
    w->bearer.n_base = 3;
    w->sample.n_grips = 1;
    w->sample.grips = &w->grip;
    w->sample.bearers = &w->bearer;
    w->option = (hs_option_result){.asked = &w->asked,
                                   .n_samples = 1,
                                   .samples = &w->sample,
                                   .n_findings = 1,
                                   .findings = &w->finding};
    w->doubt = (hs_doubt_option){.n_checks = 1, .checks = &w->doubted};
    w->results = (hs_results){.n_options = 1,
                              .options = &w->option,
                              .n_break_even = 1,
                              .break_even = &w->turn,
                              .n_doubt = 1,
                              .doubt = &w->doubt};
    return w;
}

/* Sets one number to infinity, expects the path, sets it back. */
static void
check_names(whole *w, double *number, const char *path)
{
    hs_error error = {HS_OK};
    double before = *number;

    g_assert_cmpint(hs_pack_results(&w->results, &error), ==, HS_OK);
    *number = HS_ABSENT;
    g_assert_cmpint(hs_pack_results(&w->results, &error), ==, HS_OK);
    *number = -INFINITY;
    g_assert_cmpint(hs_pack_results(&w->results, &error), ==, HS_E_INTERNAL);
    g_assert_cmpint(error.status, ==, HS_E_INTERNAL);
    g_assert_cmpstr(error.where, ==, path);
    g_assert_cmpint(hs_pack_results(&w->results, NULL), ==, HS_E_INTERNAL);
    *number = before;
}

static void
the_door_names_what_is_infinite(void)
{
    whole *w = whole_new();

    check_names(w, &w->results.load.mass_kg, "load.mass_kg");
    check_names(w, &w->results.load.centre_m.z, "load.centre_m.z");
    check_names(w, &w->option.totals.metabolic_W, "options[0].totals.metabolic_W");
    check_names(w, &w->finding.ratio, "options[0].findings[0].ratio");
    check_names(w, &w->sample.combined_m.y, "options[0].samples[0].combined_m.y");
    check_names(w, &w->grip.up_N, "options[0].samples[0].grips");
    check_names(w, &w->bearer.share_most_N, "options[0].samples[0].bearers[0].share_most_N");
    check_names(w, &w->bearer.power_lost.hold_s,
                "options[0].samples[0].bearers[0].power_lost.hold_s");
    check_names(w, &w->bearer.joints[HS_JOINT_HIP].utilisation,
                "options[0].samples[0].bearers[0].utilisation");
    check_names(w, &w->bearer.pose[HS_POSE_HAND].y, "options[0].samples[0].bearers[0].pose");
    check_names(w, &w->bearer.base_m[2].x, "options[0].samples[0].bearers[0].base_m");
    check_names(w, &w->turn.value, "break_even[0].value");
    check_names(w, &w->doubted.value_p95, "doubt[0].checks[0].value_p95");
    g_free(w);
}

int
main(int argc, char **argv)
{
    g_test_init(&argc, &argv, NULL);
    g_test_add_func("/pack/a_finite_finding_is_left_alone", a_finite_finding_is_left_alone);
    g_test_add_func("/pack/an_infinite_finding_is_not_judged",
                    an_infinite_finding_is_not_judged);
    g_test_add_func("/pack/the_door_names_what_is_infinite", the_door_names_what_is_infinite);
    return g_test_run();
}

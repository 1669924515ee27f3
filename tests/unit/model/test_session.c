/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  does the session keep what a person did, and show what belongs to it?
 * Answer:    scripts of preview, commit, undo and redo; results that follow; recovery that outlives a crash.
 * Not here:  widgets (tests/gui), what the figures are (core's tests). */
#include "near.h"
#include "recovery.h"
#include "session.h"
#include "site_sets.h"
#include "small_document.h"

#include <glib/gstdio.h>
#include <locale.h>
#include <math.h>
#include <string.h>

static HsSession *
open_small(void)
{
    HsSession *session = hs_session_new();
    g_autoptr(GPtrArray) faults = g_ptr_array_new_with_free_func((GDestroyNotify)hs_fault_free);
    g_autoptr(hs_document) document =
        hs_document_from_bytes(HS_SMALL_DOCUMENT, strlen(HS_SMALL_DOCUMENT), faults);

    g_assert_nonnull(document);
    hs_session_take(session, document, NULL);
    return session;
}

static double
mass_kg(HsSession *session)
{
    return hs_document_task(hs_session_document(session))->load.parts[0].mass_kg;
}

static gboolean
commit_mass(HsSession *session, double mass)
{
    g_autofree char *label = g_strdup_printf("Mass %g", mass);
    g_autoptr(hs_edit) edit = hs_edit_new(label);

    hs_edit_set_number(edit, "load.parts[0].mass_kg", mass);
    return hs_session_commit(session, edit, NULL);
}

static gboolean
preview_mass(HsSession *session, double mass, char **ret_text)
{
    g_autoptr(hs_edit) edit = hs_edit_new("Mass");

    hs_edit_set_number(edit, "load.parts[0].mass_kg", mass);
    return hs_session_preview(session, edit, ret_text);
}

/* A script: numbers commit a mass, u undoes, r redoes; after each step the mass is compared. */
static void
session__undo_and_redo_follow_a_script(void)
{
    static const struct {
        const char *does;
        double gives;
        const char *undo, *redo;
    } script[] = {
        {"30", 30, "Mass 30", NULL},     {"31", 31, "Mass 31", NULL},
        {"32", 32, "Mass 32", NULL},     {"u", 31, "Mass 31", "Mass 32"},
        {"u", 30, "Mass 30", "Mass 31"}, {"r", 31, "Mass 31", "Mass 32"},
        {"40", 40, "Mass 40", NULL},     {"r", 40, "Mass 40", NULL},
        {"u", 31, "Mass 31", "Mass 40"}, {"u", 30, "Mass 30", "Mass 31"},
        {"u", 24, NULL, "Mass 30"},      {"u", 24, NULL, "Mass 30"},
        {"r", 30, "Mass 30", "Mass 31"},
    };
    g_autoptr(HsSession) session = open_small();

    for (gsize i = 0; i < G_N_ELEMENTS(script); i++) {
        if (script[i].does[0] == 'u')
            hs_session_undo(session);
        else if (script[i].does[0] == 'r')
            hs_session_redo(session);
        else
            g_assert_true(commit_mass(session, g_ascii_strtod(script[i].does, NULL)));
        g_assert_cmpfloat(mass_kg(session), ==, script[i].gives);
        g_assert_cmpstr(hs_session_undo_label(session), ==, script[i].undo);
        g_assert_cmpstr(hs_session_redo_label(session), ==, script[i].redo);
        g_assert_cmpint(hs_session_can_undo(session), ==, script[i].undo != NULL);
    }
}

static void
session__undo_has_no_end(void)
{
    g_autoptr(HsSession) session = open_small();

    for (int i = 0; i < 500; i++)
        g_assert_true(commit_mass(session, 10.0 + 0.01 * i));
    for (int i = 0; i < 500; i++)
        hs_session_undo(session);
    g_assert_false(hs_session_can_undo(session));
    g_assert_cmpfloat(mass_kg(session), ==, 24.0);
    g_assert_false(hs_session_is_unsaved(session));
}

static void
session__a_preview_leaves_no_trace(void)
{
    g_autoptr(HsSession) session = open_small();

    for (int i = 0; i < 20; i++)
        g_assert_true(preview_mass(session, 25.0 + i, NULL));
    g_assert_cmpfloat(mass_kg(session), ==, 44.0);
    g_assert_false(hs_session_can_undo(session));
    g_assert_false(hs_session_is_unsaved(session));
    hs_session_cancel(session);
    g_assert_cmpfloat(mass_kg(session), ==, 24.0);

    g_assert_true(preview_mass(session, 26.0, NULL));
    g_assert_true(preview_mass(session, 27.0, NULL));
    hs_session_commit_preview(session, "Drag");
    g_assert_cmpfloat(mass_kg(session), ==, 27.0);
    g_assert_cmpstr(hs_session_undo_label(session), ==, "Drag");
    hs_session_undo(session);
    g_assert_cmpfloat(mass_kg(session), ==, 24.0);
}

static void
session__a_refused_change_says_why_and_changes_nothing(void)
{
    g_autoptr(HsSession) session = open_small();
    hs_document *before = hs_session_document(session);
    g_autofree char *text = NULL;

    g_assert_false(preview_mass(session, -3.0, &text));
    g_assert_nonnull(text);
    g_assert_cmpuint(strlen(text), >, 5);
    g_assert_true(hs_session_document(session) == before);
    g_assert_false(commit_mass(session, -3.0));
    g_assert_true(hs_session_document(session) == before);
    g_assert_false(hs_session_can_undo(session));
}

static void
count(HsSession *session, guint mask, gpointer data)
{
    guint *n = data;

    (void)session;
    for (int bit = 0; bit < 5; bit++)
        n[bit] += mask >> bit & 1;
}

static void
session__many_previews_are_one_assessment(void)
{
    g_autoptr(HsSession) session = open_small();
    guint n[5] = {0};

    hs_session_refresh(session);
    g_signal_connect(session, "changed", G_CALLBACK(count), n);
    for (int i = 0; i < 50; i++)
        g_assert_true(preview_mass(session, 25.0 + i, NULL));
    g_assert_cmpuint(n[0], ==, 50);
    g_assert_cmpuint(n[1], ==, 0);
    g_assert_true(hs_session_refresh(session));
    g_assert_false(hs_session_refresh(session));
    g_assert_cmpuint(n[1], ==, 1);
    hs_near("mass", hs_session_results(session)->load.mass_kg, 74.0, 1e-9);
}

static void
wait_for_background(HsSession *session)
{
    gint64 end_us = g_get_monotonic_time() + 60 * G_USEC_PER_SEC;

    while (hs_session_is_pending(session) && g_get_monotonic_time() < end_us)
        g_main_context_iteration(NULL, TRUE);
    g_assert_false(hs_session_is_pending(session));
}

static void
session__the_background_answers_for_the_newest_version(void)
{
    g_autoptr(HsSession) session = open_small();

    for (int i = 0; i < 5; i++) {
        g_assert_true(commit_mass(session, 12.0 + i));
        hs_session_refresh(session);
    }
    wait_for_background(session);
    g_assert_true(hs_session_results_document(session) == hs_session_document(session));
    hs_near("mass", hs_session_results(session)->load.mass_kg, 16.0, 1e-9);
    g_assert_true(hs_session_results(session)->is_complete);
    /* A drag that begins makes the whole answer one to an older version: pending until the drag ends. */
    g_assert_true(preview_mass(session, 20.0, NULL));
    hs_session_refresh(session);
    g_assert_true(hs_session_is_pending(session));
    hs_session_cancel(session);
    hs_session_refresh(session);
    wait_for_background(session);
    hs_near("mass", hs_session_results(session)->load.mass_kg, 16.0, 1e-9);
}

static void
session__choices_follow_the_options(void)
{
    g_autoptr(HsSession) session = open_small();
    g_autoptr(hs_edit) edit = hs_edit_new("Add option");

    hs_session_refresh(session);
    /* one way only: nothing stands beside it */
    g_assert_cmpint(hs_session_results(session)->n_options, ==, 1);
    g_assert_cmpint(hs_session_left(session), ==, 0);
    g_assert_cmpint(hs_session_right(session), ==, -1);
    g_assert_cmpint(hs_session_edited(session), ==, 0);

    hs_edit_insert(edit, "options[0]",
                   json_from_string("{\"id\":\"alone\",\"bearers\":[{\"id\":\"C\",\"worker\":"
                                    "\"w1\",\"grips\":[\"rear\"]}]}",
                                    NULL));
    g_assert_true(hs_session_commit(session, edit, NULL));
    hs_session_refresh(session);
    /* the crew is the baseline and has moved to the second place: the left stage follows it */
    g_assert_cmpint(hs_session_left(session), ==, 1);
    g_assert_cmpint(hs_session_right(session), ==, 0);
    g_assert_cmpint(hs_session_edited(session), ==, 0);
    hs_session_show(session, 0, 1);
    hs_session_edit_option(session, 0);
    g_assert_cmpint(hs_session_left(session), ==, 0);
    g_assert_cmpint(hs_session_right(session), ==, 1);

    /* what is no longer there falls back */
    hs_session_undo(session);
    hs_session_refresh(session);
    g_assert_cmpint(hs_session_left(session), ==, 0);
    g_assert_cmpint(hs_session_edited(session), ==, 0);
}

static double
compression_limit(HsSession *session)
{
    const hs_option_result *option;

    hs_session_refresh(session);
    option = &hs_session_results(session)->options[0];
    for (int i = 0; i < option->n_findings; i++)
        if (option->findings[i].check == HS_CHECK_spine_compression)
            return option->findings[i].limit;
    return NAN;
}

/* The site's set counts live, in the background, for the next document too, and until it is taken away. */
static void
session__the_sites_limits_are_followed_live(void)
{
    g_autoptr(HsSession) session = open_small();
    g_autoptr(hs_edit) edit = hs_edit_new("Heavier");
    g_autofree char *trouble = NULL;
    g_autoptr(hs_site_set) set =
        hs_site_set_load_or_say(HS_SOURCE_ROOT "/data/limits/site-example.json", &trouble);
    g_autoptr(hs_document) other = hs_document_ref(hs_session_document(session));

    g_assert_nonnull(set);
    hs_near("published", compression_limit(session), 3400, 0);
    hs_session_set_limits(session, set);
    hs_near("the site's", compression_limit(session), 3000, 0);
    while (hs_session_is_pending(session))
        g_main_context_iteration(NULL, TRUE);
    hs_near("in the background", compression_limit(session), 3000, 0);
    hs_edit_set_number(edit, "work.hours", 2);
    g_assert_true(hs_session_commit(session, edit, NULL));
    hs_near("after a change", compression_limit(session), 3000, 0);
    hs_session_take(session, other, NULL);
    hs_near("another document", compression_limit(session), 3000, 0);
    g_assert_true(hs_session_limits(session) == set);
    hs_session_set_limits(session, NULL);
    hs_near("without", compression_limit(session), 3400, 0);

    g_assert_null(
        hs_site_set_load_or_say(HS_SOURCE_ROOT "/data/limits/default.json", &trouble));
    g_assert_nonnull(strstr(trouble, "default.json: format: is \"handspike-limit-figures\""));
    g_assert_nonnull(strstr(trouble, "first of"));
    g_clear_pointer(&trouble, g_free);
    g_assert_null(hs_site_set_load_or_say("/nowhere/none.json", &trouble));
    g_assert_nonnull(strstr(trouble, "none.json"));
}

static void
session__a_finding_leads_to_its_place_and_back(void)
{
    g_autoptr(HsSession) session = open_small();
    const hs_option_result *option;
    double total_s;
    int n = 0;

    hs_session_refresh(session);
    total_s = hs_session_total_s(session);
    g_assert_cmpfloat(total_s, >, 1.0);
    hs_session_set_moment_s(session, total_s * 0.37);
    option = &hs_session_results(session)->options[0];
    for (int i = 0; i < option->n_findings; i++) {
        const hs_finding *at = &option->findings[i];

        if (at->status == HS_STATUS_NONE || !hs_has(at->t_s))
            continue;
        n++;
        hs_session_choose_finding(session, 0, (int)at->check);
        hs_near("moment", hs_session_moment_s(session), at->t_s, 1e-12);
        g_assert_cmpint(hs_session_finding_check(session), ==, (int)at->check);
        g_assert_cmpfloat(fabs(option->samples[hs_session_sample(session, 0)].t_s - at->t_s), <,
                          1e-9);
    }
    g_assert_cmpint(n, >, 0);
    hs_near("back", hs_session_back_s(session), total_s * 0.37, 1e-12);
    hs_session_go_back(session);
    hs_near("moment", hs_session_moment_s(session), total_s * 0.37, 1e-12);
    g_assert_false(hs_has(hs_session_back_s(session)));
    hs_session_set_moment_s(session, 1e9);
    g_assert_cmpfloat(hs_session_moment_s(session), ==, total_s);
    hs_session_set_moment_s(session, NAN);
    g_assert_cmpfloat(hs_session_moment_s(session), ==, 0.0);
}

static void
session__saving_takes_the_unsaved_mark_away(void)
{
    g_autoptr(HsSession) session = open_small();
    g_autofree char *path =
        g_build_filename(g_get_user_state_dir(), "saved.handspike.json", NULL);
    g_autoptr(GError) error = NULL;

    g_assert_true(commit_mass(session, 33.0));
    g_assert_true(hs_session_is_unsaved(session));
    g_mkdir_with_parents(g_get_user_state_dir(), 0700);
    g_assert_true(hs_session_save(session, path, &error));
    g_assert_no_error(error);
    g_assert_false(hs_session_is_unsaved(session));
    hs_session_undo(session);
    g_assert_true(hs_session_is_unsaved(session));
    hs_session_redo(session);
    g_assert_false(hs_session_is_unsaved(session));
    g_assert_false(hs_session_save(session, "/proc/no/such/place.json", &error));
    g_assert_nonnull(error);
    g_assert_cmpstr(hs_session_path(session), ==, path);
    g_unlink(path);
}

static void
turn_for_ms(int ms)
{
    gint64 end_us = g_get_monotonic_time() + ms * 1000;

    while (g_get_monotonic_time() < end_us) {
        while (g_main_context_iteration(NULL, FALSE))
            ;
        g_usleep(10000);
    }
}

/* The session of a process that was killed: forked, given a second, and ended without any clean-up. */
static void
session__a_crash_loses_at_most_a_second(void)
{
    g_autoptr(GPtrArray) found = NULL;

    if (g_test_subprocess()) {
        HsSession *session = open_small();

        g_assert_true(commit_mass(session, 77.0));
        turn_for_ms(1000);
        _exit(9);
    }
    g_test_trap_subprocess(NULL, 0, G_TEST_SUBPROCESS_DEFAULT);
    g_test_trap_assert_failed();
    found = hs_recovery_find();
    g_assert_cmpuint(found->len, ==, 1);
    {
        const hs_kept *kept = g_ptr_array_index(found, 0);
        g_autoptr(GPtrArray) faults =
            g_ptr_array_new_with_free_func((GDestroyNotify)hs_fault_free);
        g_autoptr(GError) error = NULL;
        g_autoptr(hs_document) document = hs_document_load(kept->file, faults, &error);
        g_autoptr(HsSession) session = hs_session_new();

        g_assert_no_error(error);
        hs_session_take_recovered(session, document, kept->path);
        g_assert_cmpfloat(mass_kg(session), ==, 77.0);
        g_assert_true(hs_session_is_unsaved(session));
        hs_recovery_forget(kept);
    }
    g_clear_pointer(&found, g_ptr_array_unref);
    found = hs_recovery_find();
    g_assert_cmpuint(found->len, ==, 0);
}

static void
session__a_clean_end_leaves_nothing(void)
{
    HsSession *session = open_small();
    g_autoptr(GPtrArray) while_open = NULL;
    g_autoptr(GPtrArray) afterwards = NULL;

    g_assert_true(commit_mass(session, 55.0));
    turn_for_ms(1000);
    /* what a running session keeps is nobody else's to recover */
    while_open = hs_recovery_find();
    g_assert_cmpuint(while_open->len, ==, 0);
    g_object_unref(session);
    afterwards = hs_recovery_find();
    g_assert_cmpuint(afterwards->len, ==, 0);
}

int
main(int argc, char **argv)
{
    g_autofree char *home = NULL;

    setlocale(LC_ALL, "C.UTF-8");
    g_test_init(&argc, &argv, NULL);
    /* the subprocess of the crash test shares its folder with its parent */
    if (g_getenv("HS_TEST_STATE") == NULL) {
        home = g_dir_make_tmp("handspike-session-XXXXXX", NULL);
        g_setenv("HS_TEST_STATE", home, TRUE);
    }
    g_setenv("XDG_STATE_HOME", g_getenv("HS_TEST_STATE"), TRUE);
    g_test_add_func("/session/undo_and_redo_follow_a_script",
                    session__undo_and_redo_follow_a_script);
    g_test_add_func("/session/undo_has_no_end", session__undo_has_no_end);
    g_test_add_func("/session/a_preview_leaves_no_trace", session__a_preview_leaves_no_trace);
    g_test_add_func("/session/a_refused_change_says_why_and_changes_nothing",
                    session__a_refused_change_says_why_and_changes_nothing);
    g_test_add_func("/session/many_previews_are_one_assessment",
                    session__many_previews_are_one_assessment);
    g_test_add_func("/session/the_background_answers_for_the_newest_version",
                    session__the_background_answers_for_the_newest_version);
    g_test_add_func("/session/choices_follow_the_options", session__choices_follow_the_options);
    g_test_add_func("/session/the_sites_limits_are_followed_live",
                    session__the_sites_limits_are_followed_live);
    g_test_add_func("/session/a_finding_leads_to_its_place_and_back",
                    session__a_finding_leads_to_its_place_and_back);
    g_test_add_func("/session/saving_takes_the_unsaved_mark_away",
                    session__saving_takes_the_unsaved_mark_away);
    g_test_add_func("/session/a_crash_loses_at_most_a_second",
                    session__a_crash_loses_at_most_a_second);
    g_test_add_func("/session/a_clean_end_leaves_nothing", session__a_clean_end_leaves_nothing);
    return g_test_run();
}

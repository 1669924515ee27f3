/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  does a document say what its file says, and does every wrong file say what is wrong?
 * Answer:    a file for each fault with the line it must give; good files round trip; random damage; saving that fails.
 * Not here:  JSON to the letter (test_strict.c), changing (test_edit.c). */
#include "document.h"

#include "near.h"

#include <errno.h>
#include <glib/gstdio.h>
#include <math.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#define DOCUMENTS HS_SOURCE_ROOT "/tests/documents"

static GPtrArray *
new_faults(void)
{
    return g_ptr_array_new_with_free_func((GDestroyNotify)hs_fault_free);
}

static guint
count_errors(const GPtrArray *faults)
{
    guint n = 0;

    for (guint i = 0; i < faults->len; i++)
        n += !((const hs_fault *)faults->pdata[i])->is_warning;
    return n;
}

static hs_document *
read_text(const char *text, GPtrArray *faults)
{
    return hs_document_from_bytes(text, strlen(text), faults);
}

static hs_document *
read_good(const char *name)
{
    g_autofree char *path = g_strdup_printf(DOCUMENTS "/good/%s.json", name);
    g_autoptr(GPtrArray) faults = new_faults();
    g_autoptr(GError) error = NULL;
    hs_document *document = hs_document_load(path, faults, &error);

    g_assert_no_error(error);
    for (guint i = 0; document == NULL && i < faults->len; i++)
        g_test_message("%s: %s", ((hs_fault *)faults->pdata[i])->path,
                       ((hs_fault *)faults->pdata[i])->text);
    g_assert_nonnull(document);
    g_assert_nonnull(hs_document_task(document));
    g_assert_cmpuint(count_errors(faults), ==, 0);
    return document;
}

static int
by_name(gconstpointer a, gconstpointer b)
{
    return strcmp(*(const char *const *)a, *(const char *const *)b);
}

static GPtrArray *
files_of(const char *folder, const char *end)
{
    g_autoptr(GDir) dir = g_dir_open(folder, 0, NULL);
    GPtrArray *files = g_ptr_array_new_with_free_func(g_free);
    const char *name;

    g_assert_nonnull(dir);
    while ((name = g_dir_read_name(dir)) != NULL)
        if (g_str_has_suffix(name, end))
            g_ptr_array_add(files, g_build_filename(folder, name, NULL));
    g_ptr_array_sort(files, by_name);
    return files;
}

static void
show(const char *file, const GPtrArray *faults)
{
    for (guint i = 0; i < faults->len; i++)
        g_printerr("# %s: %s: %s\n", file, ((hs_fault *)faults->pdata[i])->path,
                   ((hs_fault *)faults->pdata[i])->text);
}

/* Every line of NAME.expected begins one fault, and there is no fault without a line. */
static void
check_bad(const char *file)
{
    g_autofree char *name = g_strndup(file, strlen(file) - strlen(".json"));
    g_autofree char *expected_file = g_strconcat(name, ".expected", NULL);
    g_autofree char *expected = NULL;
    g_autoptr(GPtrArray) faults = new_faults();
    g_autoptr(GError) error = NULL;
    g_autoptr(hs_document) document = hs_document_load(file, faults, &error);
    g_auto(GStrv) lines = NULL;
    guint n_lines;

    g_assert_no_error(error);
    g_assert_null(document);
    g_assert_true(g_file_get_contents(expected_file, &expected, NULL, NULL));
    lines = g_strsplit(g_strchomp(expected), "\n", -1);
    n_lines = g_strv_length(lines);
    for (guint l = 0; l < n_lines; l++) {
        gboolean found = FALSE;

        for (guint i = 0; i < faults->len && !found; i++) {
            const hs_fault *fault = faults->pdata[i];
            g_autofree char *said = g_strdup_printf("%s: %s", fault->path, fault->text);

            found = !fault->is_warning && g_str_has_prefix(said, lines[l]) &&
                    strchr(said, '\n') == NULL;
        }
        if (!found) {
            show(file, faults);
            g_error("%s: nobody says \"%s\"", file, lines[l]);
        }
    }
    if (n_lines != count_errors(faults)) {
        show(file, faults);
        g_error("%s: %u faults, %u lines", file, count_errors(faults), n_lines);
    }
}

static void
reader__says_what_is_wrong_in_every_bad_file(void)
{
    g_autoptr(GPtrArray) files = files_of(DOCUMENTS "/bad", ".json");

    g_assert_cmpuint(files->len, >, 100);
    for (guint i = 0; i < files->len; i++)
        check_bad(files->pdata[i]);
}

static void
reader__keeps_everything_of_a_good_file(void)
{
    g_autoptr(GPtrArray) files = files_of(DOCUMENTS "/good", ".json");

    g_assert_cmpuint(files->len, >=, 4);
    for (guint i = 0; i < files->len; i++) {
        g_autoptr(GPtrArray) faults = new_faults();
        g_autoptr(hs_document) first = hs_document_load(files->pdata[i], faults, NULL);
        g_autofree char *saved = NULL, *again = NULL;
        g_autoptr(hs_document) second = NULL;
        gsize length;

        g_assert_nonnull(first);
        saved = hs_document_to_text(first, &length);
        g_assert_cmpuint(length, ==, strlen(saved));
        second = hs_document_from_bytes(saved, length, faults);
        g_assert_nonnull(second);
        again = hs_document_to_text(second, NULL);
        g_assert_cmpstr(saved, ==, again);
        g_assert_cmpstr(hs_document_digest(first), ==, hs_document_digest(second));
    }
}

static void
reader__warns_of_unknown_keys_and_keeps_them(void)
{
    g_autoptr(GPtrArray) faults = new_faults();
    g_autoptr(hs_document) document =
        hs_document_load(DOCUMENTS "/good/unknown_keys.json", faults, NULL);
    g_autofree char *text = hs_document_to_text(document, NULL);
    const char *zeta = strstr(text, "x-own-zeta"), *alpha = strstr(text, "x-own-alpha"),
               *title = strstr(text, "title");
    guint n = 0;

    for (guint i = 0; i < faults->len; i++)
        n += ((hs_fault *)faults->pdata[i])->is_warning &&
             strstr(((hs_fault *)faults->pdata[i])->path, "x-own") != NULL;
    g_assert_cmpuint(n, ==, 12);
    /* known first, then unknown in the order of the file */
    g_assert_true(title != NULL && title < zeta && zeta < alpha);
    g_assert_nonnull(strstr(text, "123456789012345680000"));
    g_assert_nonnull(strstr(text, "1e-7"));
}

/* A few members of every kind of field, against tests/documents/good/every_key.json. */
static void
reader__puts_every_kind_of_field_in_its_place(void)
{
    g_autoptr(hs_document) document = read_good("every_key");
    const hs_task *task = hs_document_task(document);
    const hs_part *parts = task->load.parts;
    const hs_suit *suit = &task->suits[0];
    const hs_option *one = &task->options[1];

    g_assert_cmpstr(task->about.review_due, ==, "2027-03-02");
    g_assert_cmpint(task->load.n_parts, ==, 9);
    g_assert_cmpint(parts[0].shape, ==, HS_SHAPE_BOX);
    g_assert_cmpint(parts[8].shape, ==, HS_SHAPE_POINT);
    g_assert_cmpfloat(parts[0].size_m.y, ==, 0.4);
    g_assert_true(parts[0].has_liquid && !parts[1].has_liquid && parts[2].is_void &&
                  !parts[1].is_void);
    g_assert_cmpfloat(parts[0].liquid_depth_m, ==, 0.1);
    g_assert_cmpfloat(parts[3].turn_deg.y, ==, 10.0);
    g_assert_false(hs_has(parts[1].mass_kg));
    g_assert_cmpint(parts[3].known, ==, HS_KNOWN_LABEL);
    g_assert_cmpint(parts[3].axis, ==, HS_AXIS_Y);
    g_assert_cmpint(task->load.weighings[0].about, ==, HS_AXIS_Y);
    g_assert_cmpfloat(task->load.weighings[0].readings[1].at_x_m, ==, -0.25);
    g_assert_true(task->load.grips[2].has_inward && !task->load.grips[0].has_inward);
    g_assert_cmpfloat(task->load.grips[2].inward.y, ==, -1.0);
    g_assert_cmpint(task->load.grips[0].hands, ==, 2);
    g_assert_cmpfloat(task->load.grips[3].pad_up_m, ==, 0.09);
    g_assert_cmpint(task->site.n_floor, ==, 4);
    g_assert_cmpfloat(task->site.floor[2].y, ==, 0.17);
    g_assert_cmpint(task->site.wet, ==, HS_NO);
    g_assert_cmpfloat(task->site.corner_out_m, ==, 1.1);
    g_assert_cmpfloat(task->site.obstacles[0].z_m[1], ==, 0.8);
    g_assert_cmpint(task->route.points[3].move, ==, HS_MOVE_SLIDE);
    g_assert_cmpint(task->route.points[5].precise, ==, HS_YES);
    g_assert_cmpint(task->route.points[1].precise, ==, HS_UNKNOWN);
    g_assert_cmpfloat(task->route.points[1].held_up, ==, 0.0);
    g_assert_false(hs_has(task->route.points[1].pitch_deg));
    g_assert_false(hs_has(task->route.points[1].slide_friction));
    g_assert_cmpint(task->workers[1].sex, ==, HS_SEX_FEMALE);
    g_assert_cmpint(suit->kind, ==, HS_SUIT_POWERED);
    g_assert_cmpfloat(suit->gain_trunk, ==, 6.0);
    g_assert_cmpfloat(suit->residual_hands_N, ==, 20.0);
    g_assert_cmpfloat(suit->centre_z_m, ==, 0.9);
    g_assert_cmpfloat(suit->rating[1].payload_kg, ==, 60.0);
    g_assert_cmpfloat(suit->foot_toe_m, ==, 0.22);
    g_assert_true(suit->has_power && !task->suits[1].has_power);
    g_assert_cmpfloat(suit->hold_W_per_Nm, ==, 0.4);
    g_assert_false(hs_has(task->suits[1].gain_hands));
    g_assert_cmpint(suit->effectors[0].holds_without_power, ==, HS_YES);
    g_assert_cmpfloat(task->suits[1].torque[1].moment_Nm, ==, 40.0);
    g_assert_cmpfloat(task->options[0].reach_m, ==, 0.4);
    g_assert_cmpint(task->options[0].baseline, ==, HS_YES);
    g_assert_cmpint(task->options[0].bearers[1].stands, ==, HS_STANDS_BEHIND);
    g_assert_cmpint(task->options[0].bearers[0].suit, ==, -1);
    g_assert_cmpint(one->n_reach, ==, 6);
    g_assert_false(hs_has(one->reach_each_m[1]));
    g_assert_cmpfloat(one->reach_each_m[3], ==, 0.5);
    g_assert_cmpint(one->stance_each[5], ==, HS_STANCE_KNEELING);
    g_assert_cmpint(one->bearers[0].suit, ==, 0);
    g_assert_cmpint(one->bearers[0].effector, ==, 0);
    g_assert_cmpint(one->bearers[0].grips[1], ==, 3);
    g_assert_true(task->has_roles && task->has_criteria);
    g_assert_cmpstr(task->criteria[5], ==, "spine-compression");
    g_assert_cmpint(task->gates[1].answer, ==, HS_GATE_OPEN);
    g_assert_cmpint(task->policy.team_rule, ==, HS_TEAM_GB);
    g_assert_cmpint(task->policy.n_site_limits, ==, 2);
    g_assert_cmpstr(task->policy.site_limits[1].id, ==, "lift.iso-11228-1");
    g_assert_cmpfloat(task->doubt.draws, ==, 500.0);
}

static void
reader__leaves_absent_figures_absent(void)
{
    g_autoptr(hs_document) document = read_good("small");
    const hs_task *task = hs_document_task(document);

    g_assert_false(hs_has(task->route.points[0].reach_m));
    g_assert_false(hs_has(task->site.friction));
    g_assert_false(hs_has(task->policy.slip_factor));
    g_assert_false(hs_has(task->workers[0].stature_m));
    g_assert_false(hs_has(task->work.hours));
    g_assert_cmpfloat(task->options[0].heading_deg, ==, 0.0);
    g_assert_cmpfloat(task->route.points[0].y_m, ==, 0.0);
    g_assert_false(task->has_roles || task->has_criteria);
    g_assert_cmpint(task->site.wet, ==, HS_UNKNOWN);
    g_assert_cmpint(task->load.grips[0].coupling, ==, 0);
}

/* A gate that nobody answered is open: the gap must not look like a yes. */
static void
reader__takes_an_unanswered_gate_as_open(void)
{
    g_autoptr(hs_document) small = read_good("small");
    g_autofree char *text = hs_document_to_text(small, NULL);
    g_autoptr(GPtrArray) faults = new_faults();
    g_autoptr(hs_document) document = NULL;
    GString *with = g_string_new(text);

    g_string_insert(with, (gssize)(strrchr(with->str, '}') - with->str),
                    ", \"gates\": [ { \"gate\": \"drill done\" } ]");
    document = read_text(with->str, faults);
    g_assert_nonnull(document);
    g_assert_cmpint(hs_document_task(document)->gates[0].answer, ==, HS_GATE_OPEN);
    g_string_free(with, TRUE);
}

static char *
newer_text(void)
{
    g_autofree char *text = NULL;
    char *at;

    g_assert_true(g_file_get_contents(DOCUMENTS "/good/small.json", &text, NULL, NULL));
    at = strstr(text, "\"version\": 1");
    g_assert_nonnull(at);
    at[strlen("\"version\": ")] = '2';
    return g_steal_pointer(&text);
}

static void
reader__shows_a_newer_version_and_does_not_touch_it(void)
{
    g_autofree char *text = newer_text(),
                    *path = g_build_filename(g_get_tmp_dir(), "hs-newer.json", NULL);
    g_autoptr(GPtrArray) faults = new_faults();
    g_autoptr(hs_document) document = read_text(text, faults);
    g_autoptr(GError) error = NULL;

    g_assert_nonnull(document);
    g_assert_true(hs_document_is_read_only(document));
    g_assert_nonnull(hs_document_task(document));
    g_assert_cmpuint(count_errors(faults), ==, 1); /* so a command refuses it */
    g_assert_cmpstr(((hs_fault *)faults->pdata[0])->path, ==, "version");
    g_assert_false(hs_document_save(document, path, &error));
    g_assert_error(error, G_IO_ERROR, G_IO_ERROR_READ_ONLY);
    g_assert_false(g_file_test(path, G_FILE_TEST_EXISTS));
}

static void
reader__makes_a_blank_document_that_assesses(void)
{
    g_autoptr(hs_document) document = hs_document_new_blank();
    const hs_task *task;

    g_assert_nonnull(document);
    g_assert_cmpuint(hs_document_faults(document)->len, ==, 0);
    task = hs_document_task(document);
    g_assert_cmpfloat(task->load.parts[0].mass_kg, ==, 10.0);
    g_assert_cmpint(task->load.n_grips, ==, 2);
    g_assert_cmpint(task->route.n_points, ==, 4);
    g_assert_cmpint(task->n_workers, ==, 1);
    g_assert_cmpstr(task->options[0].name, ==, "Today");
}

static void
reader__stops_listing_after_a_thousand(void)
{
    GString *text = g_string_new("{");
    g_autoptr(GPtrArray) faults = new_faults();

    for (int i = 0; i < 5000; i++)
        g_string_append_printf(text, "\"k%d\":0,", i);
    g_string_append(text, "\"format\":1}");
    g_assert_null(read_text(text->str, faults));
    g_assert_cmpuint(faults->len, <=, 1001);
    g_assert_cmpuint(count_errors(faults), >, 0);
    g_string_free(text, TRUE);
}

/* ---- damage: seeded, so that a failure repeats */

static char *
damaged(const char *text, gsize length, GRand *random, gsize *ret_length)
{
    static const char *const pieces[] = {
        "null", "-1",   "1e308", "\"\"",   "[]",
        "{}",   "true", "0",     "\"w1\"", "[[",
        "}",    ",",    "\xff",  "1e-320", "99999999999999999999"};
    GString *out = g_string_new_len(text, (gssize)length);
    int n = g_rand_int_range(random, 1, 5);

    for (int i = 0; i < n; i++) {
        gsize at = (gsize)g_rand_int_range(random, 0, (int)out->len);
        gsize much = (gsize)g_rand_int_range(random, 1, 24);

        much = MIN(much, out->len - at);
        switch (g_rand_int_range(random, 0, 4)) {
        case 0:
            out->str[at] = (char)g_rand_int_range(random, 0, 256);
            break;
        case 1:
            g_string_erase(out, (gssize)at, (gssize)much);
            break;
        case 2: {
            g_autofree char *copy = g_strndup(out->str + at, much);

            g_string_insert(out, g_rand_int_range(random, 0, (int)out->len), copy);
            break;
        }
        default: {
            /* A whole value for another: this is what gets past the strict pass. */
            const char *colon = memchr(out->str + at, ':', out->len - at);
            gsize from = colon != NULL ? (gsize)(colon - out->str) + 1 : at;
            gsize to = from + strcspn(out->str + from, ",}]\n");

            g_string_erase(out, (gssize)from, (gssize)(to - from));
            g_string_insert(out, (gssize)from,
                            pieces[g_rand_int_range(random, 0, (int)G_N_ELEMENTS(pieces))]);
            break;
        }
        }
        if (out->len == 0)
            g_string_append_c(out, ' ');
    }
    *ret_length = out->len;
    return g_string_free(out, FALSE);
}

static void
check_damaged(const char *text, gsize length, guint *ret_good, guint *ret_read)
{
    g_autoptr(GPtrArray) faults = new_faults();
    g_autoptr(hs_document) document = hs_document_from_bytes(text, length, faults);

    if (document == NULL) {
        g_assert_cmpuint(count_errors(faults), >, 0);
        *ret_read += !g_str_has_prefix(((hs_fault *)faults->pdata[0])->text, "line ");
        return;
    }
    g_assert_cmpuint(count_errors(faults), ==, hs_document_is_read_only(document) ? 1 : 0);
    g_assert_nonnull(hs_document_task(document));
    ++*ret_good;
}

static void
reader__survives_random_damage(void)
{
    g_autofree char *text = NULL;
    gsize length;
    GRand *random = g_rand_new_with_seed(20260302);
    guint n_good = 0, n_read = 0, rounds = g_test_slow() ? 50000 : 4000;

    g_assert_true(g_file_get_contents(DOCUMENTS "/good/every_key.json", &text, &length, NULL));
    for (guint i = 0; i < rounds; i++) {
        gsize n;
        g_autofree char *bad = damaged(text, length, random, &n);

        check_damaged(bad, n, &n_good, &n_read);
    }
    /* The damage must reach the reader often enough, or this proves nothing. */
    g_assert_cmpuint(n_good, >, rounds / 50);
    g_assert_cmpuint(n_read, >, rounds / 50);
    g_rand_free(random);
}

/* ---- files */

static char *
new_folder(void)
{
    char *folder = g_dir_make_tmp("hs-reader-XXXXXX", NULL);

    g_assert_nonnull(folder);
    return folder;
}

static void
reader__replaces_a_file_whole(void)
{
    g_autofree char *folder = new_folder(), *path = g_build_filename(folder, "a.json", NULL),
                    *text = NULL;
    g_autofree char *link = g_build_filename(folder, "link.json", NULL);
    g_autoptr(hs_document) small = read_good("small");
    g_autoptr(GPtrArray) faults = new_faults();
    g_autoptr(hs_document) again = NULL;
    struct stat state;

    g_assert_true(g_file_set_contents(path, "old", -1, NULL));
    g_assert_cmpint(g_chmod(path, 0640), ==, 0);
    g_assert_cmpint(symlink(path, link), ==, 0);
    g_assert_true(hs_document_save(small, link, NULL));
    g_assert_true(g_file_test(link, G_FILE_TEST_IS_SYMLINK));
    g_assert_cmpint(stat(path, &state), ==, 0);
    g_assert_cmpint((int)(state.st_mode & 0777), ==, 0640);
    again = hs_document_load(path, faults, NULL);
    g_assert_nonnull(again);
    g_assert_cmpstr(hs_document_digest(again), ==, hs_document_digest(small));
    g_assert_true(g_file_get_contents(path, &text, NULL, NULL));
    g_assert_true(g_str_has_suffix(text, "}\n"));
    g_unlink(link);
    g_unlink(path);
    g_assert_cmpint(g_rmdir(folder), ==, 0); /* no temporary file is left */
}

/* The target is a folder: the new file is written beside it and the renaming fails. */
static void
reader__leaves_the_old_thing_when_renaming_fails(void)
{
    g_autofree char *folder = new_folder(), *path = g_build_filename(folder, "a.json", NULL);
    g_autofree char *kept = g_build_filename(path, "kept", NULL);
    g_autoptr(hs_document) small = read_good("small");
    g_autoptr(GError) error = NULL;
    g_autoptr(GDir) dir = NULL;
    guint n = 0;

    g_assert_cmpint(g_mkdir(path, 0700), ==, 0);
    g_assert_true(g_file_set_contents(kept, "old", -1, NULL));
    g_assert_false(hs_document_save(small, path, &error));
    g_assert_nonnull(error);
    g_assert_true(g_file_test(kept, G_FILE_TEST_EXISTS));
    dir = g_dir_open(folder, 0, NULL);
    while (g_dir_read_name(dir) != NULL)
        n++;
    g_assert_cmpuint(n, ==, 1);
    g_unlink(kept);
    g_rmdir(path);
    g_rmdir(folder);
}

static void
reader__leaves_the_old_file_in_a_folder_that_cannot_be_written(void)
{
    g_autofree char *folder = new_folder(), *path = g_build_filename(folder, "a.json", NULL),
                    *text = NULL;
    g_autoptr(hs_document) small = read_good("small");
    g_autoptr(GError) error = NULL;

    g_assert_true(g_file_set_contents(path, "old", -1, NULL));
    g_assert_cmpint(g_chmod(folder, 0500), ==, 0);
    if (geteuid() == 0) {
        /* For root no folder is closed; a folder that is not there stands in for it. */
        g_autofree char *nowhere = g_build_filename(folder, "none", "a.json", NULL);

        g_assert_false(hs_document_save(small, nowhere, &error));
    } else {
        g_assert_false(hs_document_save(small, path, &error));
    }
    g_assert_nonnull(error);
    g_assert_cmpint(g_chmod(folder, 0700), ==, 0);
    g_assert_true(g_file_get_contents(path, &text, NULL, NULL));
    g_assert_cmpstr(text, ==, "old");
    g_unlink(path);
    g_rmdir(folder);
}

static void
reader__tells_a_file_that_cannot_be_read(void)
{
    g_autoptr(GPtrArray) faults = new_faults();
    g_autoptr(GError) none = NULL, folder = NULL;

    g_assert_null(hs_document_load(DOCUMENTS "/good/no_such_file.json", faults, &none));
    g_assert_error(none, G_IO_ERROR, G_IO_ERROR_NOT_FOUND);
    g_assert_null(hs_document_load(DOCUMENTS, faults, &folder));
    g_assert_nonnull(folder);
    g_assert_cmpuint(faults->len, ==, 0);
}

/* ---- threads */

static gpointer
ask(gpointer data)
{
    hs_document *document = data;

    for (int i = 0; i < 200; i++) {
        hs_document_unref(hs_document_ref(document));
        g_assert_cmpint(hs_document_task(document)->load.n_parts, ==, 9);
    }
    return g_strdup(hs_document_digest(document));
}

static void
reader__may_be_read_by_several_threads(void)
{
    g_autoptr(hs_document) document = read_good("every_key"), other = read_good("every_key");
    GThread *threads[8];

    for (int i = 0; i < 8; i++)
        threads[i] = g_thread_new("reader", ask, document);
    for (int i = 0; i < 8; i++) {
        g_autofree char *digest = g_thread_join(threads[i]);

        g_assert_cmpstr(digest, ==, hs_document_digest(other));
    }
}

static void
reader__keeps_a_faulty_document_for_the_window(void)
{
    g_autoptr(hs_document) small = read_good("small");
    g_autoptr(GPtrArray) faults = new_faults(), more = new_faults();
    g_autoptr(JsonNode) root =
        json_from_string("{\"format\":\"handspike-assessment\",\"version\":1}", NULL);
    g_autoptr(JsonNode) no_figure = json_node_init_double(json_node_alloc(), (double)NAN);
    g_autoptr(hs_document) kept = hs_document_from_node(root, TRUE, faults);

    g_assert_nonnull(kept);
    g_assert_null(hs_document_task(kept));
    g_assert_cmpuint(hs_document_faults(kept)->len, ==, faults->len);
    g_assert_cmpuint(count_errors(faults), ==, 4);
    g_assert_null(hs_document_from_node(no_figure, TRUE, more));
    g_assert_cmpuint(more->len, ==, 1);
}

int
main(int argc, char **argv)
{
    g_test_init(&argc, &argv, NULL);
#define ADD(name) g_test_add_func("/reader/" #name, reader__##name)
    ADD(says_what_is_wrong_in_every_bad_file);
    ADD(keeps_everything_of_a_good_file);
    ADD(warns_of_unknown_keys_and_keeps_them);
    ADD(puts_every_kind_of_field_in_its_place);
    ADD(leaves_absent_figures_absent);
    ADD(takes_an_unanswered_gate_as_open);
    ADD(shows_a_newer_version_and_does_not_touch_it);
    ADD(makes_a_blank_document_that_assesses);
    ADD(stops_listing_after_a_thousand);
    ADD(survives_random_damage);
    ADD(replaces_a_file_whole);
    ADD(leaves_the_old_thing_when_renaming_fails);
    ADD(leaves_the_old_file_in_a_folder_that_cannot_be_written);
    ADD(tells_a_file_that_cannot_be_read);
    ADD(may_be_read_by_several_threads);
    ADD(keeps_a_faulty_document_for_the_window);
    return g_test_run();
}

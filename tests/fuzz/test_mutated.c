/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  can a damaged or senseless file do harm?
 * Answer:    3,000 changed documents (or 60 s) through reading and assessment: no crash, no figure that is none, every finding judged or
 *            saying why not; a refused one says where.
 * Not here:  valid random ones (test_random.c); searching without end (fuzz_load.c).
 *
 * test-mutated [--only NUMBER]   one document again, and its text on standard error. */
#include "assess.h"
#include "mutate.h"
#include "walk.h"

#include <stdlib.h>
#include <string.h>

#define N_DOCUMENTS 3000
#define SEED        20260301u
#define MOST_s                                                                                 \
    60.0 /* sanitizers read every string to its end, so there it takes minutes: then fewer, and it says so */

static int only = -1;

typedef struct {
    GPtrArray *texts; /* char * */
    GPtrArray *trees; /* those that json-glib reads: borrowed */
    hs_arena *arena;
    guint n_assessed, n_refused;
} seeds;

static void
add_folder(seeds *s, const char *folder)
{
    g_autofree char *path = g_strdup_printf("%s/%s", HS_SOURCE_ROOT, folder);
    g_autoptr(GDir) dir = g_dir_open(path, 0, NULL);
    g_autoptr(GPtrArray) names = g_ptr_array_new_with_free_func(g_free);
    const char *name;

    g_assert_nonnull(dir);
    while ((name = g_dir_read_name(dir)) != NULL)
        if (g_str_has_suffix(name, ".json"))
            g_ptr_array_add(names, g_build_filename(path, name, NULL));
    g_ptr_array_sort(names, (GCompareFunc)(void (*)(void))g_strcmp0);
    for (guint i = 0; i < names->len; i++) {
        char *text = NULL;
        g_autoptr(JsonNode) tree = NULL;

        g_assert_true(g_file_get_contents(names->pdata[i], &text, NULL, NULL));
        tree = json_from_string(text, NULL);
        g_ptr_array_add(s->texts, text);
        if (tree != NULL)
            g_ptr_array_add(s->trees, text);
    }
}

static char *
try_one(seeds *s, const char *text, gsize length)
{
    g_autoptr(GPtrArray) faults = g_ptr_array_new_with_free_func((GDestroyNotify)hs_fault_free);
    g_autoptr(hs_document) document = hs_document_from_bytes(text, length, faults);
    hs_results results;
    hs_error error;
    char *fault;

    for (guint i = 0; i < faults->len; i++) {
        const hs_fault *f = faults->pdata[i];

        if (f->path == NULL || f->text == NULL || *f->text == '\0' ||
            !g_utf8_validate(f->text, -1, NULL))
            return g_strdup("a fault without path or text");
    }
    if (document == NULL || hs_document_task(document) == NULL) {
        s->n_refused++;
        return faults->len > 0 ? NULL : g_strdup("refused without a fault");
    }
    hs_arena_reset(s->arena);
    if (hs_assess(hs_document_task(document), HS_ASSESS_LIVE, s->arena, &results, &error) !=
        HS_OK)
        return error.status == HS_E_RANGE && *error.where != '\0'
                   ? NULL
                   : g_strdup_printf("not assessed: %d %s", (int)error.status, error.where);
    s->n_assessed++;
    fault = hs_walk_results(&results);
    if (fault == NULL && s->n_assessed % 8 == 0)
        fault = hs_walk_json(document, &results);
    return fault;
}

static void
try_number(seeds *s, guint number)
{
    GRand *rand = g_rand_new_with_seed(SEED + number);
    GString *text;
    g_autofree char *fault = NULL;

    if (number % 2 == 0) {
        const char *from = s->texts->pdata[g_rand_int_range(rand, 0, (gint32)s->texts->len)];

        text = hs_mutate_bytes(rand, from, strlen(from));
    } else {
        text = hs_mutate_tree(
            rand, s->trees->pdata[g_rand_int_range(rand, 0, (gint32)s->trees->len)]);
    }
    if (only >= 0)
        g_printerr("%s\n", text->str);
    fault = try_one(s, text->str, text->len);
    if (fault != NULL) {
        g_test_message("document %u: %s", number, fault);
        g_test_fail();
    }
    g_string_free(text, TRUE);
    g_rand_free(rand);
}

static void
changed_documents_do_no_harm(void)
{
    seeds s = {.texts = g_ptr_array_new_with_free_func(g_free),
               .trees = g_ptr_array_new(),
               .arena = hs_arena_new()};
    gint64 start = g_get_monotonic_time();
    guint n = 0;

    add_folder(&s, "tests/documents/good");
    add_folder(&s, "data/examples");
    for (; n < N_DOCUMENTS && (double)(g_get_monotonic_time() - start) < MOST_s * 1e6; n++) {
        if (n % 100 == 0)
            g_test_message("from document %u", n);
        if (only < 0 || (guint)only == n)
            try_number(&s, n);
    }
    g_test_message("%u documents: %u assessed, %u refused", n, s.n_assessed, s.n_refused);
    if (only < 0) { /* both ways are really gone */
        g_assert_cmpuint(s.n_assessed, >, n / 20);
        g_assert_cmpuint(s.n_refused, >, n / 4);
    }
    hs_arena_free(s.arena);
    g_ptr_array_unref(s.texts);
    g_ptr_array_unref(s.trees);
}

int
main(int argc, char **argv)
{
    g_test_init(&argc, &argv, NULL);
    if (argc == 3 && strcmp(argv[1], "--only") == 0)
        only = atoi(argv[2]);
    g_test_add_func("/mutated/changed_documents_do_no_harm", changed_documents_do_no_harm);
    return g_test_run();
}

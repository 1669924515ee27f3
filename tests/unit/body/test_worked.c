/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  does the body agree with published worked figures, and is none of them forgotten?
 * Answer:    each case of tests/cases/body.json and body_balance.json; every number stands there or, with its reason, in
 *            the tables of docs/testing-body.md.
 * Not here:  laws (test_body.c, test_laws.c), findings (tests/unit/checks). */
#include "worked.h"

#include <glib.h>

static double
answer(const char *ask, JsonObject *given)
{
    double got = worked_ask_run(ask, given);

    if (isnan(got))
        got = worked_ask_chain(ask, given);
    return isnan(got) ? worked_ask_person(ask, given) : got;
}

/* A figure without kind agrees; "beside" is another publication's, as near as the case says; "at most" is not passed. */
static void
compare(JsonObject *one)
{
    const char *name = json_object_get_string_member(one, "name");
    const char *kind = json_object_get_string_member_with_default(one, "kind", "agrees");
    double expect = json_object_get_double_member(one, "expect"),
           tolerance = json_object_get_double_member(one, "tolerance");
    double got = answer(json_object_get_string_member(one, "ask"),
                        json_object_get_object_member(one, "given"));

    g_test_message("%s %s: %.9g, published %.9g", name, kind, got, expect);
    if (!g_str_equal(kind, "agrees"))
        g_assert_true(json_object_has_member(one, "why"));
    if (g_str_equal(kind, "at most") && got > 0.0 && got < expect)
        return;
    if (!(fabs(got - expect) <= tolerance))
        g_test_fail_printf("%s: got %.12g, wanted %.12g +- %.3g", name, got, expect, tolerance);
}

static void
assert_source(JsonObject *one)
{
    JsonObject *source = json_object_get_object_member(one, "source");
    const char *known = json_object_get_string_member(one, "known");

    g_assert_cmpint(strlen(json_object_get_string_member(source, "title")), >, 3);
    g_assert_cmpint(strlen(json_object_get_string_member(source, "place")), >, 3);
    g_assert_true(json_object_has_member(source, "year"));
    g_assert_true(g_str_equal(known, "SEEN") || g_str_equal(known, "DERIVED"));
}

static void
run_cases(const char *file, int *seen, int n)
{
    g_autoptr(JsonNode) root = hs_cases_load(file);
    JsonArray *cases = json_object_get_array_member(json_node_get_object(root), "cases");

    for (guint i = 0; i < json_array_get_length(cases); i++) {
        JsonObject *one = json_array_get_object_element(cases, i);
        int number = (int)json_object_get_int_member(one, "number");

        g_assert_true(number >= 1 && number <= n);
        seen[number] |= 1;
        assert_source(one);
        compare(one);
    }
}

/* Marks the numbers that begin a table's row in a page of docs: "| 17 | ...". */
static void
mark_left_out(const char *page, int *seen, int n)
{
    g_autofree char *path = g_build_filename(HS_SOURCE_ROOT, "docs", page, NULL);
    g_autofree char *text = NULL;
    g_auto(GStrv) lines = NULL;

    g_assert_true(g_file_get_contents(path, &text, NULL, NULL));
    lines = g_strsplit(text, "\n", -1);
    for (char **line = lines; *line != NULL; line++) {
        int number =
            g_str_has_prefix(*line, "| ") ? (int)g_ascii_strtoll(*line + 2, NULL, 10) : 0;
        g_auto(GStrv) cells = NULL;

        if (number < 1 || number > n)
            continue;
        cells = g_strsplit(*line, "|", -1);
        if (g_strv_length(cells) < 5 ||
            strlen(g_strstrip(cells[g_strv_length(cells) - 2])) < 10)
            g_error("%s: %s: no reason", page, *line);
        if (seen[number] & 2)
            g_error("%s: %d stands there twice", page, number);
        seen[number] |= 2;
    }
}

static int
count(const int *seen, int n, int what)
{
    int ret = 0;

    for (int i = 1; i <= n; i++)
        ret += seen[i] == what;
    return ret;
}

static void
none_is_forgotten(const int *seen, int n)
{
    for (int i = 1; i <= n; i++)
        if (seen[i] == 0 || seen[i] == 3)
            g_error("worked figure %d: %s", i,
                    seen[i] ? "asked for, and left out in docs"
                            : "neither asked for nor left out in docs");
}

static void
worked__body(void)
{
    enum {
        N = 203
    };
    int seen[N + 1] = {0};

    run_cases("body", seen, N);
    mark_left_out("testing-body.md", seen, N);
    none_is_forgotten(seen, N);
    g_test_message("%d asked for, %d left out", count(seen, N, 1), count(seen, N, 2));
    g_assert_cmpint(count(seen, N, 1), >=, 150);
}

static void
worked__balance_with_a_suit(void)
{
    enum {
        N = 15
    };
    int seen[N + 1] = {0};

    run_cases("body_balance", seen, N);
    none_is_forgotten(seen, N);
}

int
main(int argc, char **argv)
{
    g_test_init(&argc, &argv, NULL);
    g_test_add_func("/worked/body", worked__body);
    g_test_add_func("/worked/balance_with_a_suit", worked__balance_with_a_suit);
    return g_test_run();
}

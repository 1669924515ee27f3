/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  does strict.c take what RFC 8259 takes and nothing else, whatever the text?
 * Answer:    texts by hand, every cut of a good document, ten megabytes of nesting.
 * Not here:  one file for each fault with its line (tests/documents, test_reader.c). */
#include "strict.h"

#include <string.h>

static GPtrArray *
new_faults(void)
{
    return g_ptr_array_new_with_free_func((GDestroyNotify)hs_fault_free);
}

static JsonNode *
parse(const char *text)
{
    g_autoptr(GPtrArray) faults = new_faults();
    JsonNode *root = hs_strict_parse(text, strlen(text), faults);

    g_assert_true((root != NULL) == (faults->len == 0));
    return root;
}

static void
strict__takes_every_kind_of_value(void)
{
    static const char *const good[] = {"0",
                                       "-0",
                                       "1.5e-3",
                                       "2E+5",
                                       "\"\"",
                                       "true",
                                       "null",
                                       "[]",
                                       "{}",
                                       " [ 1 , [ ] , { } ] ",
                                       "{\"\":1}",
                                       "\xEF\xBB\xBF{}",
                                       "\"\\u00e9\\ud83d\\ude00\\/\"",
                                       "[1e-400]",
                                       "123456789012345678901234567890"};

    for (guint i = 0; i < G_N_ELEMENTS(good); i++) {
        g_autoptr(JsonNode) root = parse(good[i]);

        if (root == NULL)
            g_error("refused: %s", good[i]);
    }
}

static void
strict__refuses_what_the_standard_refuses(void)
{
    static const char *const bad[] = {"",
                                      " ",
                                      "[",
                                      "{",
                                      "[1",
                                      "{\"a\"",
                                      "{\"a\":",
                                      "[1,",
                                      "[,1]",
                                      "[1 2]",
                                      "{,}",
                                      "nul",
                                      "tru",
                                      "+1",
                                      ".5",
                                      "1.",
                                      "1e",
                                      "1e+",
                                      "00",
                                      "-",
                                      "--1",
                                      "0x10",
                                      "1_000",
                                      "Infinity",
                                      "NaN",
                                      "'a'",
                                      "\"\t\"",
                                      "\"\\q\"",
                                      "\"\\u12g4\"",
                                      "\"\\udc00\"",
                                      "\"\\ud800x\"",
                                      "[1]]",
                                      "{} {}",
                                      "// a",
                                      "[1e400]",
                                      "{\"a\":1,\"a\":1}",
                                      "{a:1}",
                                      "undefined",
                                      "\"\\u0000\"",
                                      "[true false]",
                                      "]",
                                      "\"abc"};

    for (guint i = 0; i < G_N_ELEMENTS(bad); i++) {
        g_autoptr(JsonNode) root = parse(bad[i]);

        if (root != NULL)
            g_error("taken: %s", bad[i]);
    }
}

static void
strict__makes_the_tree_that_the_text_says(void)
{
    g_autoptr(JsonNode) root =
        parse("{\"a\":[1,2.5,\"x\\n\\u20ac\\ud83d\\ude00\",null,true],\"b\":{\"c\":-0.0}}");
    JsonArray *a = json_object_get_array_member(json_node_get_object(root), "a");
    JsonObject *b = json_object_get_object_member(json_node_get_object(root), "b");

    g_assert_cmpuint(json_array_get_length(a), ==, 5);
    g_assert_true(json_node_get_value_type(json_array_get_element(a, 0)) == G_TYPE_INT64);
    g_assert_cmpint(json_array_get_int_element(a, 0), ==, 1);
    g_assert_cmpfloat(json_array_get_double_element(a, 1), ==, 2.5);
    g_assert_cmpstr(json_array_get_string_element(a, 2), ==, "x\n\xE2\x82\xAC\xF0\x9F\x98\x80");
    g_assert_true(json_array_get_null_element(a, 3));
    g_assert_true(json_array_get_boolean_element(a, 4));
    g_assert_cmpfloat(json_object_get_double_member(b, "c"), ==, 0.0);
}

static void
strict__takes_depth_64_and_not_65(void)
{
    for (int depth = 63; depth <= 66; depth++) {
        GString *text = g_string_new(NULL);
        g_autofree char *whole = NULL;
        g_autoptr(JsonNode) root = NULL;

        for (int i = 0; i < depth; i++)
            g_string_append_c(text, '[');
        for (int i = 0; i < depth; i++)
            g_string_append_c(text, ']');
        whole = g_string_free(text, FALSE);
        root = parse(whole);
        g_assert_true((root != NULL) == (depth <= 64));
    }
}

static void
one_fault_in_time(const char *piece, const char *wanted)
{
    GString *text = g_string_new(NULL);
    g_autoptr(GPtrArray) faults = new_faults();
    gint64 begin_us;
    double took_s;

    while (text->len < 10u * 1000u * 1000u)
        g_string_append(text, piece);
    begin_us = g_get_monotonic_time();
    g_assert_null(hs_strict_parse(text->str, text->len, faults));
    took_s = (double)(g_get_monotonic_time() - begin_us) * 1e-6;
    g_assert_cmpuint(faults->len, ==, 1);
    g_assert_nonnull(strstr(((hs_fault *)faults->pdata[0])->text, wanted));
    if (took_s > 2.0)
        g_error("%.1f s for ten megabytes of %s", took_s, piece);
    g_string_free(text, TRUE);
}

static void
strict__answers_ten_megabytes_of_nesting_at_once(void)
{
    one_fault_in_time("[", "nested deeper than 64");
    one_fault_in_time("{\"a\":", "nested deeper than 64");
    one_fault_in_time("[{\"x\":[", "nested deeper than 64");
    one_fault_in_time(" ", "the text ends");
    one_fault_in_time("9", "too large");
}

static void
strict__stops_before_values_fill_the_memory(void)
{
    GString *text = g_string_new("[0");
    g_autoptr(GPtrArray) faults = new_faults();

    for (int i = 0; i < 1000001; i++)
        g_string_append(text, ",0");
    g_string_append_c(text, ']');
    g_assert_null(hs_strict_parse(text->str, text->len, faults));
    g_assert_cmpuint(faults->len, ==, 1);
    g_assert_nonnull(strstr(((hs_fault *)faults->pdata[0])->text, "more than 1000000 values"));
    g_string_free(text, TRUE);
}

static void
strict__has_a_fault_for_every_cut(void)
{
    g_autofree char *text = NULL;
    gsize length;

    g_assert_true(g_file_get_contents(HS_SOURCE_ROOT "/tests/documents/good/unknown_keys.json",
                                      &text, &length, NULL));
    g_strchomp(text);
    length = strlen(text);
    for (gsize n = 0; n < length; n++) {
        g_autoptr(GPtrArray) faults = new_faults();
        g_autofree char *cut =
            g_memdup2(text, n); /* exact size: a read beyond it is seen by the sanitizer */

        g_assert_null(hs_strict_parse(cut != NULL ? cut : "", n, faults));
        g_assert_cmpuint(faults->len, ==, 1);
    }
}

static void
strict__tells_line_and_column_in_characters(void)
{
    g_autoptr(GPtrArray) faults = new_faults();
    const char *text = "{\n \"\xC3\xA9\xC3\xA9\": x }";

    g_assert_null(hs_strict_parse(text, strlen(text), faults));
    g_assert_true(g_str_has_prefix(((hs_fault *)faults->pdata[0])->text, "line 2, column 8: "));
    g_assert_cmpstr(((hs_fault *)faults->pdata[0])->path, ==, "[\"\xC3\xA9\xC3\xA9\"]");
}

int
main(int argc, char **argv)
{
    g_test_init(&argc, &argv, NULL);
    g_test_add_func("/strict/takes_every_kind_of_value", strict__takes_every_kind_of_value);
    g_test_add_func("/strict/refuses_what_the_standard_refuses",
                    strict__refuses_what_the_standard_refuses);
    g_test_add_func("/strict/makes_the_tree_that_the_text_says",
                    strict__makes_the_tree_that_the_text_says);
    g_test_add_func("/strict/takes_depth_64_and_not_65", strict__takes_depth_64_and_not_65);
    g_test_add_func("/strict/answers_ten_megabytes_of_nesting_at_once",
                    strict__answers_ten_megabytes_of_nesting_at_once);
    g_test_add_func("/strict/stops_before_values_fill_the_memory",
                    strict__stops_before_values_fill_the_memory);
    g_test_add_func("/strict/has_a_fault_for_every_cut", strict__has_a_fault_for_every_cut);
    g_test_add_func("/strict/tells_line_and_column_in_characters",
                    strict__tells_line_and_column_in_characters);
    return g_test_run();
}

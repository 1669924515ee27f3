/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  does a survey give one line for each line, in order, the same for any number of threads?
 * Answer:    good and bad lines through hs_survey_run(); tables through hs_csv_convert().
 * Not here:  memory and speed of thousands of lines (tests/cli). */
#include "csv.h"
#include "small_document.h"
#include "survey.h"

#include <locale.h>
#include <stdlib.h>
#include <string.h>

static const char *const lines[] = {HS_SMALL_DOCUMENT, "{\"format\":", "",
                                    HS_SMALL_DOCUMENT, "[]",           "\xff\xfe",
                                    HS_SMALL_DOCUMENT};

static char *
survey(int jobs, int repeat, gboolean ends_with_newline)
{
    g_autoptr(GString) text = g_string_new(NULL);
    char *out_text = NULL;
    size_t out_length = 0;
    FILE *in, *out = open_memstream(&out_text, &out_length);

    for (int r = 0; r < repeat; r++)
        for (gsize i = 0; i < G_N_ELEMENTS(lines); i++)
            g_string_append_printf(text, "%s\n", lines[i]);
    if (!ends_with_newline)
        g_string_truncate(text, text->len - 1);
    in = fmemopen(text->str, text->len, "r");
    g_assert_true(hs_survey_run(in, out, jobs, NULL, NULL));
    fclose(in);
    fclose(out);
    return out_text;
}

static void
survey__one_line_out_for_each_line_in(void)
{
    char *text = survey(2, 1, TRUE);
    g_auto(GStrv) out = g_strsplit(text, "\n", -1);

    g_assert_cmpuint(g_strv_length(out), ==, G_N_ELEMENTS(lines) + 1);
    for (gsize i = 0; i < G_N_ELEMENTS(lines); i++) {
        g_autofree char *start = g_strdup_printf("{\"line\":%d,", (int)i + 1);

        g_assert_true(g_str_has_prefix(out[i], start));
        g_assert_nonnull(strstr(out[i], strcmp(lines[i], HS_SMALL_DOCUMENT) == 0
                                            ? "\"options\":["
                                            : "\"errors\":[{"));
    }
    g_assert_nonnull(strstr(out[0], "\"title\":\"Box to the bench\",\"digest\":\""));
    g_assert_nonnull(strstr(out[0], "\"share_max_N\":"));
    g_assert_nonnull(strstr(out[0], "\"worst\":{\"check\":\""));
    free(text);
}

static void
survey__any_number_of_threads_gives_the_same_bytes(void)
{
    char *one = survey(1, 5, TRUE), *two = survey(2, 5, TRUE), *seven = survey(7, 5, TRUE),
         *cut = survey(7, 5, FALSE);

    g_assert_cmpstr(one, ==, two);
    g_assert_cmpstr(one, ==, seven);
    g_assert_cmpstr(one, ==, cut);
    free(one);
    free(two);
    free(seven);
    free(cut);
}

static void
survey__nothing_in_is_nothing_out(void)
{
    char *text = NULL;
    size_t length = 0;
    FILE *in = fopen("/dev/null", "r"), *out = open_memstream(&text, &length);

    g_assert_true(hs_survey_run(in, out, 3, NULL, NULL));
    fclose(in);
    fclose(out);
    g_assert_cmpuint(length, ==, 0);
    free(text);
}

static void
survey__a_full_disk_is_said(void)
{
    FILE *in = fmemopen((void *)(gsize)HS_SMALL_DOCUMENT, strlen(HS_SMALL_DOCUMENT), "r"),
         *out = fopen("/dev/full", "w");
    g_autoptr(GError) error = NULL;

    g_assert_false(hs_survey_run(in, out, 2, NULL, &error));
    g_assert_nonnull(error);
    fclose(in);
    fclose(out);
}

static char *
convert(const char *text, GPtrArray *faults)
{
    gsize length = 0;

    return hs_csv_convert(text, strlen(text), faults, &length);
}

#define HEADER                                                                                 \
    "title,mass_kg,length_m,width_m,height_m,hand_height_start_m,hand_height_end_m,distance_"  \
    "m,crew,site.friction\n"

static void
csv__a_row_is_a_document_that_assesses(void)
{
    g_autoptr(GPtrArray) faults = g_ptr_array_new_with_free_func((GDestroyNotify)hs_fault_free);
    g_autofree char *text = convert(
        HEADER
        "\"Crate, "
        "\"\"old\"\"\",24,0.6,0.4,0.3,0.5,0.9,4,2,0.55\nBag,12,0.5,0.3,0.3,0.3,1.1,,1,\n",
        faults);
    g_auto(GStrv) rows = g_strsplit(text != NULL ? text : "", "\n", -1);

    g_assert_cmpuint(faults->len, ==, 0);
    g_assert_cmpuint(g_strv_length(rows), ==, 3);
    g_assert_nonnull(strstr(rows[0], "\"title\":\"Crate, \\\"old\\\"\""));
    g_assert_nonnull(strstr(rows[0], "\"friction\":0.55"));
    g_assert_nonnull(strstr(rows[0], "\"move\":\"carry\""));
    g_assert_null(strstr(rows[1], "\"move\":\"carry\""));
    for (int i = 0; i < 2; i++) {
        g_autofree char *result = hs_survey_line(rows[i], strlen(rows[i]), 1, NULL);

        g_assert_null(strstr(result, "errors"));
        g_assert_nonnull(strstr(result, "\"id\":\"today\",\"status\":\""));
    }
}

static void
csv__other_spreadsheets_part_with_semicolons(void)
{
    g_autoptr(GPtrArray) faults = g_ptr_array_new_with_free_func((GDestroyNotify)hs_fault_free);
    g_autofree char *text = convert("\xef\xbb\xbfmass_kg;length_m;width_m;height_m;hand_height_"
                                    "start_m;hand_height_end_m;crew\r\n"
                                    "24,5;0,6;0,4;0,3;0,5;0,9;1\r\n",
                                    faults);

    g_assert_cmpuint(faults->len, ==, 0);
    g_assert_nonnull(strstr(text, "\"mass_kg\":24.5"));
}

static void
fault_is(const char *table, const char *path)
{
    g_autoptr(GPtrArray) faults = g_ptr_array_new_with_free_func((GDestroyNotify)hs_fault_free);
    g_autofree char *text = convert(table, faults);

    g_assert_null(text);
    g_assert_cmpuint(faults->len, >, 0);
    g_assert_cmpstr(((const hs_fault *)g_ptr_array_index(faults, 0))->path, ==, path);
}

static void
csv__bad_cells_are_named(void)
{
    fault_is(HEADER "a,heavy,0.6,0.4,0.3,0.5,0.9,4,2,\n", "row 2, mass_kg");
    fault_is(HEADER "a,24,0.6,0.4,0.3,0.5,0.9,4,2,\nb,24,0.6,0.4,0.3,0.5,0.9,4,9,\n",
             "row 3, crew");
    fault_is(HEADER "a,24,0.6,0.4,0.3,,0.9,4,2,\n", "row 2, hand_height_start_m");
    fault_is(HEADER "a,24,0.6,0.4,0.3,0.5,0.5,,2,\n", "row 2, distance_m");
    fault_is(HEADER "a,24,0.6,0.4,0.3,0.5,0.9,4,2,slippery\n", "row 2, site.friction");
    fault_is("mass_kg,weight\n24,3\n", "row 1, weight");
    fault_is("", "row 1");
}

int
main(int argc, char **argv)
{
    setlocale(LC_ALL, "C.UTF-8");
    g_test_init(&argc, &argv, NULL);
    g_test_add_func("/survey/one_line_out_for_each_line_in",
                    survey__one_line_out_for_each_line_in);
    g_test_add_func("/survey/any_number_of_threads_gives_the_same_bytes",
                    survey__any_number_of_threads_gives_the_same_bytes);
    g_test_add_func("/survey/nothing_in_is_nothing_out", survey__nothing_in_is_nothing_out);
    g_test_add_func("/survey/a_full_disk_is_said", survey__a_full_disk_is_said);
    g_test_add_func("/csv/a_row_is_a_document_that_assesses",
                    csv__a_row_is_a_document_that_assesses);
    g_test_add_func("/csv/other_spreadsheets_part_with_semicolons",
                    csv__other_spreadsheets_part_with_semicolons);
    g_test_add_func("/csv/bad_cells_are_named", csv__bad_cells_are_named);
    return g_test_run();
}

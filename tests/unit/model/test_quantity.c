/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  are figures read and written as people do?
 * Answer:    units both ways, either decimal sign, and no guess where a sign can be read in two ways.
 * Not here:  sentences (test_words.c). */
#include "near.h"
#include "quantity.h"

#include <locale.h>
#include <math.h>
#include <string.h>

/* The factors are exact by definition: NIST Special Publication 811 (2008), appendix B.8. */
static void
parses(const char *text, const char *unit, hs_units units, double wanted)
{
    double value = NAN;
    g_autofree char *fault = NULL;

    if (!hs_quantity_parse(text, unit, units, &value, &fault))
        g_error("%s as %s: %s", text, unit, fault);
    hs_near(text, value, wanted, 1e-9 * fmax(1.0, fabs(wanted)));
}

static void
refuses(const char *text, const char *unit)
{
    double value = 7.0;
    g_autofree char *fault = NULL;

    g_assert_false(hs_quantity_parse(text, unit, HS_UNITS_SI, &value, &fault));
    g_assert_nonnull(fault);
    g_assert_cmpuint(strlen(fault), >, 10);
    g_assert_cmpfloat(value, ==, 7.0);
}

static void
quantity__takes_the_unit_that_is_typed(void)
{
    parses("46 lb", "kg", HS_UNITS_SI, 46 * 0.45359237);
    parses("46lb", "kg", HS_UNITS_SI, 46 * 0.45359237);
    parses("35 cm", "m", HS_UNITS_SI, 0.35);
    parses("1,5 m", "m", HS_UNITS_SI, 1.5);
    parses("1.5", "m", HS_UNITS_SI, 1.5);
    parses("20 cm", "cm", HS_UNITS_SI, 20.0);
    parses("0.2 m", "cm", HS_UNITS_SI, 20.0);
    parses("5 ft 3 in", "m", HS_UNITS_SI, 63 * 0.0254);
    parses("5' 3\"", "m", HS_UNITS_SI, 63 * 0.0254);
    parses("2 min", "s", HS_UNITS_SI, 120.0);
    parses("77 °F", "C", HS_UNITS_SI, 25.0);
    parses("1.2 kN", "N", HS_UNITS_SI, 1200.0);
    parses("-12°", "deg", HS_UNITS_SI, -12.0);
    parses("\xe2\x88\x92"
           "12",
           "deg", HS_UNITS_SI, -12.0);
    parses("50 %", "", HS_UNITS_SI, 0.5);
    parses("10 ft-lb", "Nm", HS_UNITS_SI, 10 * 0.45359237 * 9.80665 * 0.3048);
}

static void
quantity__without_a_unit_means_the_unit_shown(void)
{
    parses("10", "kg", HS_UNITS_SI, 10.0);
    parses("10", "kg", HS_UNITS_US, 4.5359237);
    parses("10", "m", HS_UNITS_US, 0.254);
    parses("32", "C", HS_UNITS_US, 0.0);
    parses("10 kg", "kg", HS_UNITS_US, 10.0);
}

static void
quantity__refuses_what_it_would_have_to_guess(void)
{
    refuses("1,500", "m");
    refuses("1,2,3", "m");
    refuses("", "m");
    refuses("heavy", "kg");
    refuses("3 kg", "m");
    refuses("3 kg 4", "kg");
    refuses("1e999", "m");
    parses("0,125", "m", HS_UNITS_SI, 0.125);
    parses("1500", "m", HS_UNITS_SI, 1500.0);
}

static void
shows(double value, const char *unit, hs_units units, const char *wanted)
{
    g_autofree char *text = hs_quantity_text(value, unit, units);

    g_assert_cmpstr(text, ==, wanted);
}

static void
quantity__rounds_to_what_a_scale_or_tape_gives(void)
{
    shows(45.139, "kg", HS_UNITS_SI, "45.1\u00a0kg");
    shows(377.26, "N", HS_UNITS_SI, "377\u00a0N");
    shows(0.2034, "m", HS_UNITS_SI, "0.20\u00a0m");
    shows(-0.00001, "m", HS_UNITS_SI, "0.00\u00a0m");
    shows(20.0, "kg", HS_UNITS_US, "44.1\u00a0lb");
    shows(0.508, "m", HS_UNITS_US, "20.0\u00a0in");
    shows(30.0, "deg", HS_UNITS_SI, "30°");
    shows(2.0, "", HS_UNITS_SI, "2");
    shows(0.83, "", HS_UNITS_SI, "0.83");
}

static void
quantity__what_is_shown_reads_back(void)
{
    static const char *const units[] = {"kg", "N",   "kN",  "m",     "cm",  "mm",
                                        "s",  "min", "deg", "Nm",    "kPa", "Hz",
                                        "Wh", "W",   "m_s", "kg_m3", "C",   "pct"};

    for (gsize i = 0; i < G_N_ELEMENTS(units); i++)
        for (int system = HS_UNITS_SI; system <= HS_UNITS_US; system++) {
            g_autofree char *text = hs_quantity_text(37.0, units[i], (hs_units)system);
            g_autofree char *fault = NULL;
            double value = NAN;

            if (!hs_quantity_parse(text, units[i], (hs_units)system, &value, &fault))
                g_error("%s (%s): %s", text, units[i], fault);
            /* the shown digits are few: half of the last one */
            hs_near(units[i], value, 37.0, 4.0);
        }
}

static void
quantity__files_have_the_shortest_number_that_reads_back(void)
{
    const double values[] = {0.1,           1.0 / 3.0, 9.80665, 1e-9,
                             123456789.125, -0.0,      5e-324,  1.7976931348623157e308};
    g_autofree char *tenth = hs_number_text(0.1);

    g_assert_cmpstr(tenth, ==, "0.1");
    for (gsize i = 0; i < G_N_ELEMENTS(values); i++) {
        g_autofree char *text = hs_number_text(values[i]);

        g_assert_cmpfloat(g_ascii_strtod(text, NULL), ==, values[i]);
        g_assert_null(strchr(text, ','));
    }
}

/* Figures that publications print in pounds, typed as they are printed. */
static void
quantity__published_pounds_are_read(void)
{
    JsonNode *node = hs_cases_load("limits");
    JsonArray *list = json_object_get_array_member(json_node_get_object(node), "converted");

    for (guint i = 0; i < json_array_get_length(list); i++) {
        JsonObject *o = json_array_get_object_element(list, i);
        double value = NAN;
        g_autofree char *fault = NULL;

        g_assert_true(hs_quantity_parse(json_object_get_string_member(o, "text"),
                                        json_object_get_string_member(o, "unit"), HS_UNITS_SI,
                                        &value, &fault));
        hs_near(json_object_get_string_member(o, "id"), value,
                json_object_get_double_member(o, "expected"),
                json_object_get_double_member(o, "tolerance"));
    }
    g_assert_cmpuint(json_array_get_length(list), ==, 5);
    json_node_unref(node);
}

int
main(int argc, char **argv)
{
    setlocale(LC_ALL, "C.UTF-8");
    g_test_init(&argc, &argv, NULL);
    g_test_add_func("/quantity/takes_the_unit_that_is_typed",
                    quantity__takes_the_unit_that_is_typed);
    g_test_add_func("/quantity/without_a_unit_means_the_unit_shown",
                    quantity__without_a_unit_means_the_unit_shown);
    g_test_add_func("/quantity/refuses_what_it_would_have_to_guess",
                    quantity__refuses_what_it_would_have_to_guess);
    g_test_add_func("/quantity/rounds_to_what_a_scale_or_tape_gives",
                    quantity__rounds_to_what_a_scale_or_tape_gives);
    g_test_add_func("/quantity/published_pounds_are_read", quantity__published_pounds_are_read);
    g_test_add_func("/quantity/what_is_shown_reads_back", quantity__what_is_shown_reads_back);
    g_test_add_func("/quantity/files_have_the_shortest_number_that_reads_back",
                    quantity__files_have_the_shortest_number_that_reads_back);
    return g_test_run();
}

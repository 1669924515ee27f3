/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  are the sizes that can be picked those of the survey, and do they make people?
 * Answer:    six rows held against the published percentiles, in order, around the published means; each makes a person.
 * Not here:  what follows from a size (test_worked.c). */
#include "sizes.h"

#include "body.h"
#include "near.h"

#include <glib.h>

/* 2012 Anthropometric Survey of U.S. Army Personnel (Gordon et al. 2014), its public records: 4082 men, 1986 women. Stature in mm and
 * mass in kg, 5th, 50th and 95th percentile; mean and standard deviation. */
static const struct {
    hs_sex sex;
    double stature_mm[3], mass_kg[3], mean_mm, sd_mm, mean_kg, sd_kg;
} published[2] = {
    {HS_SEX_FEMALE, {1525, 1626, 1740}, {51.3, 66.8, 87.1}, 1628.47, 64.20, 67.76, 10.98},
    {HS_SEX_MALE, {1648, 1755, 1870}, {64.4, 84.6, 110.7}, 1756.21, 68.55, 85.52, 14.22},
};
static const double percentiles[3] = {5, 50, 95};

static void
test_published(void)
{
    int index = 0;

    for (int g = 0; g < 2; g++)
        for (int k = 0; k < 3; k++) {
            const hs_body_size *size = hs_body_size_get(index++);

            g_assert_nonnull(size);
            g_assert_cmpint(size->sex, ==, published[g].sex);
            hs_near("percentile", size->percentile, percentiles[k], 0.0);
            hs_near("stature, mm", size->stature_m * 1000.0, published[g].stature_mm[k], 0.5);
            hs_near("mass, kg", size->mass_kg, published[g].mass_kg[k], 0.05);
            g_assert_cmpint(size->source, ==, HS_SRC_us_army_2012);
            g_assert_cmpint(hs_body_size_find(size->sex, size->stature_m, size->mass_kg), ==,
                            index - 1);
        }
    g_assert_null(hs_body_size_get(index));
    g_assert_null(hs_body_size_get(-1));
    g_assert_cmpint(hs_body_size_find(HS_SEX_MALE, 1.756, 85.5), ==, -1);
    g_assert_cmpint(hs_body_size_find(HS_SEX_MALE, HS_ABSENT, 85.5), ==, -1);
}

/* A percentile that was typed wrong would not lie where a normal spread of the published mean has it: stature is nearly normal, mass
 * leans to the heavy side. */
static void
test_spread(void)
{
    const double z[3] = {-1.645, 0.0, 1.645};

    for (int g = 0; g < 2; g++)
        for (int k = 0; k < 3; k++) {
            const hs_body_size *size = hs_body_size_get(3 * g + k);

            hs_near("stature, mm", size->stature_m * 1000.0,
                    published[g].mean_mm + z[k] * published[g].sd_mm, 8.0);
            hs_near("mass, kg", size->mass_kg, published[g].mean_kg + z[k] * published[g].sd_kg,
                    2.5);
        }
}

static void
test_people(void)
{
    const hs_body_size *size;

    for (int i = 0; (size = hs_body_size_get(i)) != NULL; i++) {
        hs_worker worker = {.sex = size->sex,
                            .stature_m = size->stature_m,
                            .mass_kg = size->mass_kg,
                            .age_years = 40.0};
        hs_person person;
        double sum_kg = 0.0;

        g_assert_cmpint(hs_person_make(&worker, 25.0, HS_SEGMENTS_DE_LEVA, &person, NULL), ==,
                        HS_OK);
        for (int k = 0; k < HS_N_SEGMENTS; k++)
            sum_kg += person.segment_kg[k];
        hs_near("sum of segments, kg", sum_kg, size->mass_kg, 0.002 * size->mass_kg);
    }
}

int
main(int argc, char **argv)
{
    g_test_init(&argc, &argv, NULL);
    g_test_add_func("/sizes/published", test_published);
    g_test_add_func("/sizes/spread", test_spread);
    g_test_add_func("/sizes/people", test_people);
    return g_test_run();
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how much compression and shear of the low back is published as allowed?
 * Answer:    the figures of spine_sets.h and the rows of lists/limits_spine.def.
 * Not here:  the findings (body_checks.c). */
#include "spine_sets.h"

#include <math.h>

static const struct {
    double age_years, female_N, male_N;
} ages[] = {
#define SPINE_AGE(age, female, male) {age, female, male},
#include "lists/limits_spine.def"
#undef SPINE_AGE
};

hs_spine_band
hs_spine_band_of(double compression_N)
{
    if (compression_N <= HS_SPINE_COMPRESSION_N)
        return HS_SPINE_WITHIN;
    return compression_N <= HS_SPINE_COMPRESSION_MOST_N ? HS_SPINE_BETWEEN
                                                        : HS_SPINE_ABOVE_MOST;
}

double
hs_spine_shear_limit_N(double loadings_per_day)
{
    return loadings_per_day > HS_SPINE_FREQUENT_per_day ? HS_SPINE_SHEAR_FREQUENT_N
                                                        : HS_SPINE_SHEAR_N;
}

double
hs_spine_by_age_N(hs_sex sex, double age_years)
{
    int row = 0;

    if (!(age_years >= ages[0].age_years))
        return HS_ABSENT;
    while (row < hs_spine_row_count() - 1 && floor(age_years) > ages[row].age_years)
        row++;
    return hs_spine_row_N(row, sex);
}

int
hs_spine_row_count(void)
{
    return (int)(sizeof ages / sizeof *ages);
}

double
hs_spine_row_years(int row)
{
    return ages[row].age_years;
}

double
hs_spine_row_N(int row, hs_sex sex)
{
    return sex == HS_SEX_FEMALE ? ages[row].female_N : ages[row].male_N;
}

hs_site_when
hs_spine_row_when(int row, hs_sex sex)
{
    bool is_last = row == hs_spine_row_count() - 1;

    return (hs_site_when){.sex = sex,
                          .age_from_years =
                              row == 0 ? ages[0].age_years : ages[row - 1].age_years + 1.0,
                          .age_below_years = is_last ? 0.0 : ages[row].age_years + 1.0};
}

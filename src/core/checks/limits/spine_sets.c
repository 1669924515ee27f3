/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how much compression and shear of the low back is published as allowed?
 * Answer:    the figures of spine_sets.h and the rows of lists/limits_spine.def.
 * Not here:  the findings (body_checks.c). */
#include "spine_sets.h"

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
    int n = (int)(sizeof ages / sizeof *ages), i = 0;

    if (!hs_has(age_years))
        return HS_ABSENT;
    while (i < n - 1 && age_years > ages[i].age_years)
        i++;
    return sex == HS_SEX_FEMALE ? ages[i].female_N : ages[i].male_N;
}

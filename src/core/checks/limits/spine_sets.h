/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how much compression and shear of the low back is published as allowed?
 * Answer:    one figure for all, the mark that most do not tolerate, shear by loadings a day, a set by age and sex.
 * Not here:  the model that gives the figure to compare (body/), the findings (body_checks.c). */
#ifndef HS_SPINE_SETS_H
#define HS_SPINE_SETS_H

#include "task.h"

/* NIOSH 1981: 3.4 kN, kept in the equation of 1991; 6.4 kN not tolerated by most. */
#define HS_SPINE_COMPRESSION_N      3400.0
#define HS_SPINE_COMPRESSION_MOST_N 6400.0
/* Gallagher & Marras 2012: 1000 N occasional, 700 N frequent (read). That occasional is up to 100 a day: remembered. */
#define HS_SPINE_SHEAR_N            1000.0
#define HS_SPINE_SHEAR_FREQUENT_N   700.0
#define HS_SPINE_FREQUENT_per_day   100.0

typedef enum {
    HS_SPINE_WITHIN = 1,
    HS_SPINE_BETWEEN,
    HS_SPINE_ABOVE_MOST
} hs_spine_band;

hs_spine_band hs_spine_band_of(double compression_N);
double hs_spine_shear_limit_N(double loadings_per_day);

/* Recommendation by age and sex (Dortmund), lists/limits_spine.def: the row of this age in completed years, between rows that of
 * the next older one. Remembered: shown beside, never deciding alone. HS_ABSENT without an age and below the first row. */
double hs_spine_by_age_N(hs_sex sex, double age_years);

/* The rows as entries of a set that can be chosen (data/limits/spine): figure, and for whom. */
int hs_spine_row_count(void);
double hs_spine_row_years(int row);
double hs_spine_row_N(int row, hs_sex sex);
hs_site_when hs_spine_row_when(int row, hs_sex sex);

#endif

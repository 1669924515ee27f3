/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how tall and how heavy are small, middle and large people?
 * Answer:    the rows of lists/body_sizes.def.
 * Not here:  what follows from them (segments.c). */
#include "sizes.h"

static const hs_body_size sizes[] = {
#define SIZE(sex, percentile, stature_m, mass_kg)                                              \
    {HS_SEX_##sex, percentile, stature_m, mass_kg, HS_SRC_us_army_2012},
#include "lists/body_sizes.def"
#undef SIZE
};

enum {
    N_SIZES = sizeof sizes / sizeof sizes[0]
};

const hs_body_size *
hs_body_size_get(int index)
{
    return index >= 0 && index < N_SIZES ? &sizes[index] : NULL;
}

int
hs_body_size_find(hs_sex sex, double stature_m, double mass_kg)
{
    for (int i = 0; i < N_SIZES; i++)
        if (sizes[i].sex == sex && sizes[i].stature_m == stature_m &&
            sizes[i].mass_kg == mass_kg)
            return i;
    return -1;
}

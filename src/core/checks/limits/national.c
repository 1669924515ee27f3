/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  which guide values and laws of single countries are known?
 * Answer:    the rows of lists/limits_national.def.
 * Not here:  any check. */
#include "national.h"

#include <string.h>

static const hs_national rows[] = {
#define NATIONAL(place, what, who, condition, figure, unit, source)                            \
    {place, what, who, condition, figure, unit, HS_SRC_##source},
#include "lists/limits_national.def"
#undef NATIONAL
};

int
hs_national_count(void)
{
    return (int)(sizeof rows / sizeof *rows);
}

const hs_national *
hs_national_row(int i)
{
    return i >= 0 && i < hs_national_count() ? &rows[i] : NULL;
}

const hs_national *
hs_national_find(const char *place, const char *what, const char *who, const char *condition)
{
    for (int i = 0; i < hs_national_count(); i++)
        if (strcmp(rows[i].place, place) == 0 && strcmp(rows[i].what, what) == 0 &&
            strcmp(rows[i].who, who) == 0 && strcmp(rows[i].condition, condition) == 0)
            return &rows[i];
    return NULL;
}

double
hs_national_figure(const char *place, const char *what, const char *who, const char *condition)
{
    const hs_national *row = hs_national_find(place, what, who, condition);

    return row != NULL ? row->figure : HS_ABSENT;
}

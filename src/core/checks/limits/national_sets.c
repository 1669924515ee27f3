/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  which sets of single countries' figures can be chosen, and for whom and what is each figure?
 * Answer:    the sets and entries of lists/national_sets.def, with the figures of limits_national.def.
 * Not here:  writing them down (model/limits_json.c), how an entry is found for a worker (site.c). */
#include "national_sets.h"

#include "national.h"

enum {
#define NATIONAL_SET(set, id, edition, place) SET_##set,
#define IN_SET(...)
#include "lists/national_sets.def"
#undef NATIONAL_SET
#undef IN_SET
    N_SETS
};

static const hs_national_set sets[] = {
#define NATIONAL_SET(set, id, edition, place) {id, edition, place},
#define IN_SET(...)
#include "lists/national_sets.def"
#undef NATIONAL_SET
#undef IN_SET
};

static const hs_national_entry entries[] = {
#define NATIONAL_SET(...)
#define IN_SET(set, check, what, who, condition, factor, ...)                                  \
    {SET_##set, HS_CHECK_##check, what, who, condition, factor, {__VA_ARGS__}},
#include "lists/national_sets.def"
#undef NATIONAL_SET
#undef IN_SET
};

int
hs_national_set_count(void)
{
    return N_SETS;
}

const hs_national_set *
hs_national_set_get(int i)
{
    return i >= 0 && i < N_SETS ? &sets[i] : NULL;
}

int
hs_national_entry_count(void)
{
    return (int)(sizeof entries / sizeof *entries);
}

const hs_national_entry *
hs_national_entry_get(int i)
{
    return i >= 0 && i < hs_national_entry_count() ? &entries[i] : NULL;
}

const hs_national *
hs_national_entry_row(const hs_national_entry *entry)
{
    return hs_national_find(sets[entry->set].place, entry->what, entry->who, entry->condition);
}

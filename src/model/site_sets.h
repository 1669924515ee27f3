/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  where do sets of limits come from?
 * Answer:    hs_site_set_load() from a file or, by id, from the sets that ship; hs_site_shipped_list() names these.
 * Not here:  what stands in a set (site_limits.h). */
#ifndef HS_SITE_SETS_H
#define HS_SITE_SETS_H

#include "site_limits.h"

/* From a file, or one of the sets that ship by its id ("switzerland") where no file has this name; error is set when it cannot
 * be read. */
hs_site_set *hs_site_set_load(const char *path, GPtrArray *faults, GError **error);

/* The same for people: NULL and one sentence with the first fault, its path, and how many there are. */
hs_site_set *hs_site_set_load_or_say(const char *path, char **ret_trouble);

/* A set that ships (data/limits/national, data/limits/spine): its id, which --limits takes, and its title in the reader's language. */
typedef struct {
    char *id, *title;
} hs_site_shipped;

/* A reference, in the order of the titles; of hs_site_shipped, not to be changed. Empty where the data are not found. */
GPtrArray *hs_site_shipped_list(void);
/* Is this the id of a set that ships? */
gboolean hs_site_is_shipped(const char *id);

#endif

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how are the limits' figures written down for others to read?
 * Answer:    two lists as JSON, made from core's: every figure that decides or is shown, and the figures of single countries; and sets
 *            that can be chosen.
 * Not here:  the figures (core), a site's own set (site_limits.c). */
#ifndef HS_LIMITS_JSON_H
#define HS_LIMITS_JSON_H

/* data/limits/default.json and data/limits/national.json; new texts. */
char *hs_limits_default_json(void);
char *hs_limits_national_json(void);
/* data/limits/national/ID.json, the set of that index in core's list (national_sets.h); new text. */
char *hs_limits_national_set_json(int set);
/* data/limits/spine/spine-age-sex.json, the low back by age and sex (spine_sets.h); new text. */
char *hs_limits_spine_set_json(void);

#endif

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what does the program remember from one day to the next?
 * Answer:    units and the chosen set of limits, in a key file of the user's configuration folder.
 * Not here:  documents and their recovery (model/). */
#ifndef HS_PREFERENCES_H
#define HS_PREFERENCES_H

void hs_preferences_load(void);
void hs_preferences_save(void);

/* The set of limits that was chosen last: the id of one that ships or the path of a file; NULL: none. */
const char *hs_preferences_limits(void);
void hs_preferences_set_limits(const char *name);

#endif

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what does the program remember from one day to the next?
 * Answer:    units, in a key file of the user's configuration folder.
 * Not here:  documents and their recovery (model/). */
#ifndef HS_PREFERENCES_H
#define HS_PREFERENCES_H

void hs_preferences_load(void);
void hs_preferences_save(void);

#endif

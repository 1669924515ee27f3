/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  does it hold for every worked scenario?
 * Answer:    hs_each_example(): one call for each file of data/examples.
 * Not here:  what has to hold. */
#ifndef HS_EXAMPLES_H
#define HS_EXAMPLES_H

/* Fails where one is missing: there are fourteen at least. */
void hs_each_example(void (*visit)(const char *path, const char *name));

#endif

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what must hold of every result, whatever was asked?
 * Answer:    hs_walk_results(): no infinite figure, every finding judged or saying why not, shares and times that add up.
 * Not here:  whether the figures are right (tests/unit). */
#ifndef HS_WALK_H
#define HS_WALK_H

#include "document.h"
#include "result.h"

/* NULL when all holds; else one line about the first thing that does not (new). */
char *hs_walk_results(const hs_results *results);
/* The results as JSON: strict, no word of a figure that is none, no placeholder left. NULL or one line. */
char *hs_walk_json(const hs_document *document, const hs_results *results);

#endif

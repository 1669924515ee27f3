/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how does a finding fit into a cell, on paper and on the screen?
 * Answer:    hs_sheet_short(): its figure, in brackets where the limit does not apply, or a few words why.
 * Not here:  the whole sentence (words.h). */
#ifndef HS_SHORT_H
#define HS_SHORT_H

#include "result.h"
#include "words.h"

#include <glib.h>

/* What:   figure and a few words of a finding, for a cell of a table.
 * In:     units: those shown.
 * Out:    new text, one line; "" is never returned for a finding that has a status.
 * Frame:  none.
 * Errors: none: a finding without status gives the text that words.h has for it.
 * Source: none. */
char *hs_sheet_short(const hs_finding *finding, hs_units units);
/* The same for a row of the window: with "limit unconfirmed" behind it where that is so. */
char *hs_short_cell(const hs_finding *finding, hs_units units);
/* The cell does not say all: the whole sentence belongs elsewhere (the annex, the opened row). */
gboolean hs_sheet_is_shortened(const hs_finding *finding);
/* "mass_kg": mass of the load; a key that has no name comes back. */
const char *hs_sheet_input_name(const char *key);
/* The option's name; the id when no option has it. */
const char *hs_sheet_name_of(const hs_results *results, const char *id);

#endif

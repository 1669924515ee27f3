/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  which suits can be picked, and how do they come into the document?
 * Answer:    the document's own, and three invented ones to practise with, read from data/suits.json.
 * Not here:  their figures' meaning (core/forces/suit/). */
#ifndef HS_SUITS_H
#define HS_SUITS_H

#include "session.h"

/* Invented suits: name and JSON object, borrowed; NULL past the last. */
const char *hs_suits_example_name(int n);
JsonNode *hs_suits_example(int n);
/* Append an example to the document's suits within an edit; returns its id, new. */
char *hs_suits_add(HsSession *session, hs_edit *edit, int example);
/* The id of the document's first suit, or of an example that is added by the edit; new. */
char *hs_suits_first_or_new(HsSession *session, hs_edit *edit);

#endif

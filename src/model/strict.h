/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  is this text JSON to the letter, small enough in depth, without double keys?
 * Answer:    hs_strict_parse(): RFC 8259, UTF-8, depth at most 64, finite numbers; the tree, or the place of the first fault.
 * Not here:  what the document says (reader.c). */
#ifndef HS_STRICT_H
#define HS_STRICT_H

#include "faults.h"

#define HS_STRICT_DEPTH 64

/**
 * hs_strict_parse - a tree from a text, to the letter of the standard
 *
 * What    one pass without recursion; double keys are all told, any other fault ends it; a byte order mark before the
 *         text is passed over; a whole number of up to 15 digits becomes an integer, every other number a double
 * In      text of any content and length
 * Out     a new tree, or NULL when faults grew
 * Frame   none
 * Errors  faults, with line and column; also more than a million values, U+0000, half a surrogate pair
 * Source  RFC 8259 (2017); RFC 3629 (2003), UTF-8; RFC 7493 (2015), section 2: surrogates, double keys
 */
JsonNode *hs_strict_parse(const char *text, gsize length, GPtrArray *faults);

#endif

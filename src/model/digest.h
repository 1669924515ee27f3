/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  which code tells one document from another?
 * Answer:    hs_digest_of(): SHA-256 of the canonical form without signatures.
 * Not here:  the pretty form of a file (writer.c). */
#ifndef HS_DIGEST_H
#define HS_DIGEST_H

#include <json-glib/json-glib.h>

/**
 * hs_canonical_text - a tree in the JSON Canonicalization Scheme
 *
 * What    no spaces, keys sorted by UTF-16 code units, numbers as ECMAScript writes them, least escapes
 * In      a tree; skip: a top-level key that is left out, or NULL
 * Out     new text, UTF-8
 * Frame   none
 * Errors  none
 * Source  RFC 8785 (2020), sections 3.2.2 and 3.2.3
 */
char *hs_canonical_text(JsonNode *root, const char *skip);

/* SHA-256 (hex) of the canonical text without `signatures`. */
char *hs_digest_of(JsonNode *root);

/* A number as ECMAScript's Number.prototype.toString() writes it. */
char *hs_canonical_number(double value);

#endif

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what may stand in a field, said to a person?
 * Answer:    hs_allowed_text(): "a number above 0, at most 2000 (kg)", "one of box, cylinder, ...".
 * Not here:  the same for other programs (schema.c). */
#ifndef HS_ALLOWED_H
#define HS_ALLOWED_H

#include "fields.h"

/* New text, translated. */
char *hs_allowed_text(const hs_field *field);
/* The unit that a key ends with: "kg", "m", "deg"; "" when it has none. */
const char *hs_allowed_unit(const char *key);

#endif

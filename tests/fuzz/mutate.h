/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what could happen to a file?
 * Answer:    hs_mutate_bytes(), hs_mutate_tree(): one to four changes of bytes, or of JSON values.
 * Not here:  what must be answered (test_mutated.c). */
#ifndef HS_MUTATE_H
#define HS_MUTATE_H

#include <json-glib/json-glib.h>

/* Bytes changed, put in, left out, doubled, cut off. */
GString *hs_mutate_bytes(GRand *rand, const char *text, gsize length);
/* A tree (json can be read) with values of another type, huge, tiny and negative numbers, members and items left out, doubled or exchanged. The text
 * may have a key twice, which no tree has. */
GString *hs_mutate_tree(GRand *rand, const char *json);

#endif

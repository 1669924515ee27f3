/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  which default was used in place of a figure that the document does not give?
 * Answer:    a list of JSON path, value and message; each path once.
 * Not here:  the sentence (model/words.c). */
#ifndef HS_ASSUME_H
#define HS_ASSUME_H

#include "arena.h"
#include "message.h"

typedef struct hs_assumption hs_assumption;
struct hs_assumption {
    const char *path;
    double value;     /* HS_ABSENT when the value is a word */
    const char *word; /* "fair", "estimated", ... or NULL */
    hs_message text;
    hs_assumption *next;
};

typedef struct {
    hs_arena *arena; /* NULL: recording is off */
    hs_assumption *first, *last;
    int n;
} hs_assumptions;

/**
 * hs_assume - record a default that was used
 *
 * What    appends unless the same path is there already; path_format as printf, with the index of a list in it
 * In      value in the unit of the path's last key, or HS_ABSENT with word
 * Out     the list grows; does nothing when list or its arena is NULL
 * Frame   none
 * Errors  none
 * Source  none
 */
void hs_assume(hs_assumptions *list,
               double value,
               const char *word,
               hs_message text,
               const char *path_format,
               ...) __attribute__((format(printf, 5, 6)));

#endif

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  which default was used in place of a figure that the document does not give?
 * Answer:    a list without doubles.
 * Not here:  the sentence (model/words.c). */
#include "assume.h"

#include <stdarg.h>
#include <stdio.h>
#include <string.h>

void
hs_assume(hs_assumptions *list,
          double value,
          const char *word,
          hs_message text,
          const char *path_format,
          ...)
{
    char path[128];
    va_list args;
    hs_assumption *made;

    if (list == NULL || list->arena == NULL)
        return;
    va_start(args, path_format);
    vsnprintf(path, sizeof path, path_format, args);
    va_end(args);
    for (const hs_assumption *at = list->first; at != NULL; at = at->next)
        if (strcmp(at->path, path) == 0)
            return;
    made = HS_NEW(list->arena, hs_assumption, 1);
    made->path = hs_arena_strdup(list->arena, path);
    made->value = value;
    made->word = word;
    made->text = text;
    if (list->last != NULL)
        list->last->next = made;
    else
        list->first = made;
    list->last = made;
    list->n++;
}

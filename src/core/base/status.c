/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how does core say that something went wrong?
 * Answer:    hs_refuse() fills the caller's error.
 * Not here:  the sentence for people (model/words.c). */
#include "status.h"

#include <string.h>

hs_status
hs_refuse(hs_error *error, const char *where, double value, double least, double most)
{
    if (error != NULL) {
        size_t length = strlen(where);

        if (length >= sizeof error->where)
            length = sizeof error->where - 1;
        memcpy(error->where, where, length);
        error->where[length] = '\0';
        error->status = HS_E_RANGE;
        error->value = value;
        error->least = least;
        error->most = most;
    }
    return HS_E_RANGE;
}

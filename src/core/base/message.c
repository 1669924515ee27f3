/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what is a reason called?
 * Answer:    as it is written in the list.
 * Not here:  the sentences (model/words.c). */
#include "message.h"

static const char *const names[HS_N_REASONS] = {
    "none",
#define REASON(id) #id,
#include "lists/reasons.def"
#undef REASON
};

const char *
hs_reason_name(hs_reason reason)
{
    return reason < HS_N_REASONS ? names[reason] : "none";
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how does core say why, without words of a natural language?
 * Answer:    a reason (one line of lists/reasons*.def) with numbers and names; model/words.c has its sentence.
 * Not here:  the sentences. */
#ifndef HS_MESSAGE_H
#define HS_MESSAGE_H

#include "status.h"

typedef enum {
    HS_REASON_none = 0,
#define REASON(id) HS_REASON_##id,
#include "lists/reasons.def"
#undef REASON
    HS_N_REASONS
} hs_reason;

#define HS_MESSAGE_NUMBERS 6
#define HS_MESSAGE_NAMES   2

typedef struct {
    hs_reason reason;
    double number[HS_MESSAGE_NUMBERS];  /* {0} .. {5} of the sentence, SI */
    const char *name[HS_MESSAGE_NAMES]; /* {a}, {b}: names from the document, ids */
} hs_message;

/* The name of the reason as written in the list, for tests and dumps. */
const char *hs_reason_name(hs_reason reason);

#define HS_SAY(reason_id, ...)                                                                 \
    ((hs_message){.reason = HS_REASON_##reason_id, .number = {__VA_ARGS__}})

#endif

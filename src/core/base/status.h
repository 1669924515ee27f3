/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how does core say that something went wrong?
 * Answer:    hs_status as the return value, hs_error filled by the caller's pointer, HS_TRY passes it up.
 * Not here:  the sentence for people (model/words.c). */
#ifndef HS_STATUS_H
#define HS_STATUS_H

#include <math.h>
#include <stdbool.h>
#include <stddef.h>

typedef enum {
    HS_OK = 0,
    HS_E_RANGE,       /* an argument or input is outside what is allowed */
    HS_E_NO_SOLUTION, /* the question has no answer (no pose reaches, no squeeze holds) */
    HS_E_INTERNAL     /* our own mistake: never shown as a figure */
} hs_status;

typedef struct {
    hs_status status;
    char where[96]; /* JSON path or argument name */
    double value, least, most;
} hs_error;

#define HS_TRY(call)                                                                           \
    do {                                                                                       \
        hs_status hs_try_status_ = (call);                                                     \
        if (hs_try_status_ != HS_OK)                                                           \
            return hs_try_status_;                                                             \
    } while (0)

/**
 * hs_refuse - fill an error for a value out of range
 *
 * What    writes where, value and the allowed interval; error may be NULL
 * In      where: argument or JSON path; least..most: allowed, may be infinite
 * Out     *error
 * Frame   none
 * Errors  returns HS_E_RANGE always
 * Source  none
 */
hs_status
hs_refuse(hs_error *error, const char *where, double value, double least, double most);

/* A number that the document does not give, or that could not be computed, is NaN inside the program and absent in
 * every file. Comparisons are written so that NaN fails. */
#define HS_ABSENT ((double)NAN)

static inline bool
hs_has(double value)
{
    return !isnan(value);
}

static inline double
hs_or(double value, double otherwise)
{
    return isnan(value) ? otherwise : value;
}

#endif

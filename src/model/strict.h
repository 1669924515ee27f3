/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  is this text JSON to the letter, small enough in depth, without double keys?
 * Answer:    hs_strict_scan(): RFC 8259, UTF-8, depth at most 64, finite numbers; the place of the first fault.
 * Not here:  what the document says (reader.c). */
#ifndef HS_STRICT_H
#define HS_STRICT_H

#include "document.h"

#define HS_STRICT_DEPTH 64

/**
 * hs_strict_scan - strict check before a lenient parser
 *
 * What    one pass without recursion; double keys are all told, any other fault ends the scan
 * In      text of any content and length
 * Out     faults grows; TRUE when there is none
 * Frame   none
 * Errors  faults
 * Source  RFC 8259 (2017), RFC 3629 (UTF-8)
 */
gboolean hs_strict_scan(const char *text, gsize length, GPtrArray *faults);

/* A new fault; text is taken over. */
hs_fault *hs_fault_new(const char *path, char *text, gboolean is_warning);

#endif

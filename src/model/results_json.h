/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how do results leave the program?
 * Answer:    as JSON to the letter of the file format, or as a text that can be pasted into a mail.
 * Not here:  the sheet (draw/sheet.c). */
#ifndef HS_RESULTS_JSON_H
#define HS_RESULTS_JSON_H

#include "document.h"
#include "result.h"
#include "site_limits.h"
#include "words.h"

/* The unit at the end of a key, "" when it has none. */
const char *hs_results_unit_of_key(const char *key);
char *
hs_results_to_json(const hs_document *document, const hs_results *results, gsize *ret_length);
/* The same, with the site's set of limits that the results were worked out with named in it; set NULL: none. */
char *hs_results_to_json_with(const hs_document *document,
                              const hs_site_set *set,
                              const hs_results *results,
                              gsize *ret_length);
char *
hs_results_to_text(const hs_document *document, const hs_results *results, hs_units units);
/* The report with one more section at its end: a title and a list, one entry a line. */
char *hs_results_text_section(const char *text, const char *title, const char *lines);

#endif

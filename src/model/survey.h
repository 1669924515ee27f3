/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how are thousands of tasks assessed in one go?
 * Answer:    hs_survey_run(): one document a line in, one short result a line out, in order, in the memory of a few documents.
 * Not here:  making documents from a table (csv.c). */
#ifndef HS_SURVEY_H
#define HS_SURVEY_H

#include "site_limits.h"

#include <gio/gio.h>
#include <stdio.h>

/* A line longer than this is refused as a line; the rest go on. */
#define HS_SURVEY_MOST_bytes (16 * 1024 * 1024)

/**
 * hs_survey_run - assess documents line by line
 *
 * What    threads assess, this thread reads and writes; a line that is no good gives an object with errors
 * In      in: one JSON document a line; jobs at least 1; set: the site's limits, named in every result, NULL: none
 * Out     out: one line for each line, in order, the same bytes for any number of threads; FALSE with error set
 * Frame   none
 * Errors  G_IO_ERROR when in cannot be read or out cannot be written
 * Source  file format, survey result
 */
gboolean hs_survey_run(FILE *in, FILE *out, int jobs, const hs_site_set *set, GError **error);

/* The result of one line (without a newline), as a thread of the survey makes it; for tests and single use. */
char *hs_survey_line(const char *text, gsize length, guint64 line, const hs_site_set *set);

#endif

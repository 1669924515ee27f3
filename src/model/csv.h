/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how does a survey table become documents?
 * Answer:    hs_csv_convert(): a row is a task; columns are named in docs/survey-table.md or are JSON paths of the file format.
 * Not here:  assessing them (survey.c). */
#ifndef HS_CSV_H
#define HS_CSV_H

#include "document.h"

/**
 * hs_csv_convert - documents from a table, one a line
 *
 * What    header row, then a task a row; comma, semicolon or tab (whichever the header has); quotes as usual
 * In      text of any content
 * Out     the lines, or NULL when a row is no good: faults say which ("row 3, mass_kg") and what is allowed
 * Frame   none
 * Errors  faults, one for each bad cell or row
 * Source  none
 */
char *hs_csv_convert(const char *text, gsize length, GPtrArray *faults, gsize *ret_length);
/* The same from a file or standard input ("-"). */
char *
hs_csv_convert_file(const char *path, GPtrArray *faults, gsize *ret_length, GError **error);

#endif

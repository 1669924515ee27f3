/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how do people write a figure?
 * Answer:    hs_quantity_text() with unit, sensible rounding, the locale's comma; hs_quantity_parse() takes either sign, either
 *            unit ("46 lb", "35 cm").
 * Not here:  figures in files (locale-free, writer.c). */
#ifndef HS_QUANTITY_H
#define HS_QUANTITY_H

#include "unit_system.h"

#include <glib.h>

/* unit: the suffix of the key: "kg", "N", "m", "deg", "s", "Nm", "kPa", "Wh", "W", "m_s2", "" ... */
char *hs_quantity_text(double value, const char *unit, hs_units units);   /* "45.1 kg" */
char *hs_quantity_number(double value, const char *unit, hs_units units); /* "45.1" */
const char *hs_quantity_unit(const char *unit, hs_units units); /* "kg", "lb", "N·m" as shown */
/* Digits after the point that the shown figure gets, and the figure with another number of them. */
int hs_quantity_digits(double value, const char *unit, hs_units units);
char *hs_quantity_number_digits(double value, const char *unit, hs_units units, int digits);
/* FALSE with a sentence when it is no number or no unit of that kind. */
gboolean hs_quantity_parse(
    const char *text, const char *unit, hs_units units, double *ret_value, char **ret_fault);
/* locale-free, shortest that reads back the same */
char *hs_number_text(double value);

#endif

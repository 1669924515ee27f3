/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  in which units does a person read and type?
 * Answer:    SI, or US customary; files and core have SI only.
 * Not here:  the units (quantity.c). */
#ifndef HS_UNIT_SYSTEM_H
#define HS_UNIT_SYSTEM_H

typedef enum {
    HS_UNITS_SI = 0,
    HS_UNITS_US
} hs_units;

#endif

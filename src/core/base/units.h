/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  which constants of nature and conversions does core use?
 * Answer:    these, each with its unit in the name and its source beside it.
 * Not here:  figures of a published limit or table (lists/ *.def). */
#ifndef HS_UNITS_H
#define HS_UNITS_H

#define HS_GRAVITY_m_s2 9.80665 /* standard gravity, exact: SI Brochure 9th ed. (2019), BIPM */
#define HS_PI           3.141592653589793 /* mathematical constant */
#define HS_RAD_PER_DEG                                                                         \
    (HS_PI / 180.0) /* definition of the degree: SI Brochure 9th ed., table 8 */
#define HS_DEG_PER_RAD (180.0 / HS_PI)
#define HS_AIR_kg_m3   1.225  /* ISO 2533:1975, standard atmosphere at sea level */
#define HS_J_PER_Wh    3600.0 /* definition of the hour */
#define HS_PA_PER_kPa  1000.0 /* prefix kilo: SI Brochure 9th ed., table 7 */
#define HS_SAME_PLACE_m                                                                        \
    1e-9 /* places nearer than this are one place (numerics, contract of the file) */

#endif

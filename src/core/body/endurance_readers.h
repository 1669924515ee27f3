/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how long would other published curves let a share of strength be held, and how long do hands hold?
 * Answer:    the grip's own power law, one law and one curve for no joint in particular, one curve for the shoulder.
 * Not here:  the laws by joint that a check is judged by (endurance.c). */
#ifndef HS_ENDURANCE_READERS_H
#define HS_ENDURANCE_READERS_H

/* Every function takes a share of the greatest strength and gives seconds; HS_ABSENT where the share is absent or outside what the
 * curve was drawn for, 0 above 1. */

/* Hands that grip: HS_SRC_frey_law_grip. */
double hs_endurance_hands_s(double f);
/* Share that hands hold for so many seconds; never above 1. */
double hs_endurance_hands_share(double seconds);
/* No joint in particular: HS_SRC_frey_law_grip, and the older curve HS_SRC_rohmert_1960 from 0.20 on. */
double hs_endurance_any_s(double f);
double hs_endurance_rohmert_s(double f);
/* The shoulder by a curve of its own, above 0.15: HS_SRC_shoulder_curve_2017. */
double hs_endurance_shoulder_s(double f);

#define HS_ENDURANCE_HANDS_b0_s 33.55 /* HS_SRC_frey_law_grip */
#define HS_ENDURANCE_HANDS_b1   (-1.61)
#define HS_ENDURANCE_ANY_b0_s   21.92
#define HS_ENDURANCE_ANY_b1     (-1.98)
#define HS_ENDURANCE_HOUR_SHARE                                                                \
    0.079 /* held for an hour without a pause: HS_SRC_bjorksten_1977 */

#endif

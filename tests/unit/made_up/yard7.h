/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what does the invented Yard rule 7 allow one standing person to lift?
 * Answer:    a mass by the height of the hands.
 * Not here:  legs of a route. */
#ifndef HS_YARD7_H
#define HS_YARD7_H

/* kg; HS_ABSENT above 1.50 m: the rule is silent. */
double hs_yard7_kg(double hand_height_m);

#endif

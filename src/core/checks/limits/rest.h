/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how much rest do heavy work and long holds ask for?
 * Answer:    Murrell's rest by energy; endurance and rest of a hold by Rohmert and by Kamon; work spells by oxygen uptake.
 * Not here:  what the work takes (body/metabolic.c), endurance of single joints (body/endurance.c). */
#ifndef HS_REST_H
#define HS_REST_H

/* Energy rate at rest in Murrell's formula: 1.5 kcal/min. Read. */
#define HS_REST_MURRELL_W 104.6

/* Murrell 1965: rest within total_min (work and rest together) so that the mean of both is the standard; 0 where the work is
 * below it, HS_ABSENT where rest alone is above it. HS_SRC_murrell. */
double hs_rest_murrell_min(double work_W, double standard_W, double rest_W, double total_min);

/* How long a share of the greatest force can be held, s. Rohmert: remembered; Kamon 1981: read. HS_ABSENT unless the share
 * is above 0. HS_SRC_rohmert, HS_SRC_kamon_1981. */
double hs_rest_rohmert_endurance_s(double share_of_most);
double hs_rest_kamon_endurance_s(double share_of_most);

/* Rest after a hold, s. Kamon's form as read: 18 min (t/T)^1.4 (f - 0.15)^0.5; 0 up to a share of 0.15. The form that is
 * remembered takes the same figures as a multiple of the hold; both agree for a hold of a minute. */
double hs_rest_kamon_s(double share_of_most, double hold_s);
double hs_rest_remembered_s(double share_of_most, double hold_s);

/* Moving work at a share of the greatest oxygen uptake, Kamon 1981, read: how long it can go on, and the rest after it (0 up
 * to where the formula passes 0, at a share of 0.561), s. A work spell is a third of the first. */
double hs_rest_kamon_dynamic_s(double share_of_uptake);
double hs_rest_kamon_dynamic_rest_s(double share_of_uptake);

#endif

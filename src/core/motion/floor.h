/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how high is the walking surface, where are risers, how steep is it?
 * Answer:    hs_floor_* on the site's list of points; level at its ends beyond them; level at 0 without points.
 * Not here:  what stands on it (obstacles), where the feet are (stance.c). */
#ifndef HS_FLOOR_H
#define HS_FLOOR_H

#include "task.h"

/* Height at x; at a riser's x the later point counts. */
double hs_floor_height_m(const hs_site *site, double x_m);
/* Slope angle (rad, rising along the way positive) of the walking surface at x, 0 on treads' risers. */
double hs_floor_slope_rad(const hs_site *site, double x_m);
/* Largest riser (absolute height) strictly between or at the ends of two places that feet pass; 0 when none. */
double hs_floor_riser_m(const hs_site *site, double from_x_m, double to_x_m);
/* Number of risers over `least_m` between two places. */
int hs_floor_n_risers(const hs_site *site, double from_x_m, double to_x_m, double least_m);
/* Height of the line that a followed pitch uses: on a flight (two or more risers, each within 0.6 m of the next) the
 * straight line from the floor one going before the first nosing to the last nosing; elsewhere the floor. */
double hs_floor_line_m(const hs_site *site, double x_m);
/* Steepest absolute slope (rad) of the surface between two places, risers left out. */
double hs_floor_steepest_rad(const hs_site *site, double from_x_m, double to_x_m);

#endif

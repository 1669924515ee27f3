/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what do plan geometry, sight lines and wind come to, taken alone?
 * Answer:    small functions of lengths; each is a case in tests/cases/suit.json.
 * Not here:  where they are asked (clearance_check.c, sight_check.c, wind_check.c, placing_check.c). */
#ifndef HS_GEOMETRY_H
#define HS_GEOMETRY_H

/* Longest rectangle of a width that goes round a square corner between ways of width a and b: the least over the angle t of
 * a/sin t + b/cos t - w/(sin t cos t); 0 where the width itself does not pass. Metres. */
double hs_corner_longest_m(double a_m, double b_m, double width_m);
/* Nearest floor that an eye sees over an edge at a height and a distance ahead; infinite when the edge is not below the eye. */
double hs_sight_blind_m(double eye_m, double edge_m, double top_m);
/* The same for something that stands this high on the floor (or lies this high, negative: below the feet). */
double hs_sight_object_m(double eye_m, double edge_m, double top_m, double object_m);
/* Highest edge that leaves the floor from a distance on in sight. */
double hs_sight_top_m(double eye_m, double edge_m, double blind_m);
/* Way to a stop from a speed, after a reaction time, at an even slowing. */
double hs_sight_stop_m(double speed_m_s, double reaction_s, double slowing_m_s2);
/* Force of the wind on a flat face square to it, and the wind for a force. */
double hs_wind_N(double speed_m_s, double area_m2);
double hs_wind_speed_m_s(double force_N, double area_m2);
/* Index of difficulty (bit) of a placing: distance to a window, Shannon form; and of n at once. */
double hs_placing_index_bit(double distance_m, double window_m);
double hs_placing_first_index_bit(double distance_m, double window_m); /* as first published */
/* Radius of what a load sweeps whose front is so far ahead of the one who turns on the spot with it. */
double hs_turn_reach_m(double front_m, double width_m);
/* Lean of a weight at a height that meets a moment; HS_ABSENT where no lean does. */
double hs_lean_rad(double moment_Nm, double weight_N, double height_m);
/* Turn that a play leaves free at a radius. */
double hs_placing_turn_rad(double play_m, double radius_m);

#define HS_WIND_DRAG          1.28 /* flat plate square to the wind: HS_SRC_site_wind_drag */
#define HS_SIGHT_REACTION_s   0.8  /* HS_SRC_site_stop: common practice, no source */
#define HS_SIGHT_SLOWING_m_s2 1.0  /* HS_SRC_site_stop: common practice, no source */
#define HS_PLACING_bit_s      5.0  /* HS_SRC_site_placing_rate: an assumption */
#define HS_PLACING_PEAK                                                                        \
    5.7735026918962576 /* 10/sqrt(3): greatest acceleration of the minimum-jerk law, times D/T2 */

#endif

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what do a fall, a late brake, a drag and a way out come to?
 * Answer:    kinematics of the first moments without power, measured paces of rescuers, seconds until somebody is out.
 * Not here:  what is judged (power_loss_check.c, rescue_check.c). */
#ifndef HS_LOSS_BESIDE_H
#define HS_LOSS_BESIDE_H

#include "check.h"

/* From rest: metres and speed after some seconds of free fall. */
double hs_fall_m(double seconds);
double hs_fall_m_s(double seconds);
/* Peak over the weight at rest, of a load that falls a height onto something that sinks by `sinks_m` under that weight. */
double hs_fall_times(double height_m, double sinks_m);
/* Pace of a drag over 20 m; HS_ABSENT above what was tried. One or two rescuers. */
double hs_drag_pace_m_s(double mass_kg, int n_rescuers);
/* Seconds until the wearer, freed by the helper, has been dragged to a place; HS_ABSENT above what was tried. */
double hs_rescue_out_s(double release_helper_s, double wearer_kg, double exit_m);

/* A limp or locking suit: what falls before a hand or a brake answers. */
void hs_loss_write_fall(const hs_suit *suit, hs_working *working);
/* Hands that hold all of it: their seconds (halved as every hold that nobody chose) against those needed. */
void hs_loss_write_hands(
    double hand_N, int n_hands, double strength_N, double needed_s, hs_working *working);
/* Steps of a published release time, pace and seconds of a way out. */
void hs_rescue_write_way_out(const hs_suit *suit,
                             double wearer_kg,
                             double exit_m,
                             hs_working *working);

#endif

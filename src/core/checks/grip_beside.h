/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what else can be said about a grip, beside what it is judged by?
 * Answer:    a second norm of hands, the glove, how long hands hold, thin bails and straps; how a pad turns, an uneven press, and what a
 *            cone of flat sides loses.
 * Not here:  limits (grip_checks.c, grip_figures.c), the squeeze itself (forces/grip.c). */
#ifndef HS_GRIP_BESIDE_H
#define HS_GRIP_BESIDE_H

#include "check.h"
#include "grip.h"

/* Median grip strength of one hand at the best age: HS_SRC_hand_grip. */
double hs_grip_median_N(hs_sex sex);
/* What a glove leaves of a strength: loss 0..0.9, absent or 0: all of it. */
double hs_grip_gloved_N(double strength_N, double loss_fraction);
/* Pressure of a strap of tension T that lies round a radius with a width; of a force on a round bar. */
double hs_grip_strap_kPa(double tension_N, double radius_m, double width_m);
double hs_grip_bail_kPa(double force_N, double diameter_m, double width_m);
/* Greatest friction moment of an evenly pressed pad about its normal: a round one of radius R, a narrow one of length l. */
double hs_pad_turn_round_Nm(double friction, double normal_N, double radius_m);
double hs_pad_turn_narrow_Nm(double friction, double normal_N, double length_m);
/* Squeeze over the free one where a pad's two ends are pressed alike though the weight hangs off its middle. */
double hs_pad_uneven_factor(double off_m, double half_m);
/* Friction that a cone of n flat sides loses at worst. */
double hs_cone_lost_share(int n_edges);

/* One bearer's hands on one grip. */
typedef struct {
    double felt_N;
    int n_hands;
    double bare_N; /* strength of one hand without a glove */
    hs_sex sex;
    double to_set_down_s; /* HS_ABSENT: none follows */
} hs_grip_hands;

void hs_grip_write_hands(const hs_grip_hands *hands,
                         double glove_loss_fraction,
                         hs_working *working);
/* All of it for the hands that feel a force on the deciding grip; in a drag only the common handle. */
void hs_grip_write_beside_hands(
    const hs_asking *asking, int station, int used, double felt_N, hs_working *working);
/* Bars and straps that are not a common handle. */
void
hs_grip_write_other_skin(const hs_grip *grip, double felt_N, int n_hands, hs_working *working);
/* A pad pressed with normal_N; friction as stated, not divided. */
void hs_grip_write_turning(
    double friction, double normal_N, double along_m, double up_m, hs_working *working);
/* Two facing pads whose middle lies off the CG along them. */
void hs_grip_write_uneven(const hs_contact *contacts,
                          int n,
                          const hs_squeeze *squeeze,
                          double along_m,
                          hs_working *working);
/* The pads that were judged; friction as stated, not divided. */
typedef struct {
    const hs_contact *contacts;
    int n, n_pads;
    double along_m, up_m, friction;
} hs_grip_pads;

/* Mean pressure under the hardest pressed pad: the load's own limit is a force, and no general limit of a surface is honest. In full
 * also how the pads turn, what an even press would ask for, and how exact the squeeze is. */
void hs_grip_write_pads(const hs_grip_pads *pads,
                        const hs_squeeze *squeeze,
                        bool in_full,
                        hs_working *working);
void hs_grip_write_cone(int n_edges, hs_working *working);

#endif

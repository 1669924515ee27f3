/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  which figures make compression and shear at L5/S1?
 * Answer:    muscle arms, slope of the disc, the published hand estimate.
 * Not here:  the moment (chain.h). */
#ifndef HS_LOWBACK_H
#define HS_LOWBACK_H

/* Extensors: the classic 5 cm of hand calculation, beside which the 3.4 kN limit grew up; 7.1 cm by tomography (Nemeth &
 * Ohlsen 1986) is its doubt. Abdominal muscle: rectus abdominis 10.9 cm (the same), 0.10 taken. */
#define HS_BACK_MUSCLE_ARM_m     0.05
#define HS_BACK_MUSCLE_ARM_FAR_m 0.071
#define HS_ABDOMINAL_ARM_m       0.10
/* Slope of the disc standing: 709 adults, 24-55 degrees (Eur. Spine J. 2011). Rotation of the pelvis with trunk flexion T and
 * included knee angle K, degrees: HS_SRC_sacral_rotation, as remembered. */
#define HS_SACRUM_STANDING_deg   40.0
#define HS_SACRUM_0_deg          (-17.5)
#define HS_SACRUM_T              (-0.12)
#define HS_SACRUM_K              0.227
#define HS_SACRUM_TK             0.0012
#define HS_SACRUM_T2             0.005
#define HS_SACRUM_K2             (-0.00075)
/* The published hand estimate is a single muscle at two inches. */
#define HS_HAND_ESTIMATE_ARM_m   0.0508

/* What presses and shears a disc whose normal stands slope_rad off the vertical. */
void hs_lowback_press(double muscle_N,
                      double above_N,
                      double forward_N,
                      double slope_rad,
                      double *ret_compression_N,
                      double *ret_shear_N);

double hs_lowback_disc_rad(double trunk_rad, double knee_flexion_rad);

/* Hand estimate of compression: 3 W cos q + L HB / 0.0508 + 0.8 (W / 2 + L), q the trunk above the horizontal, HB from L5/S1
 * to the hands (Merryweather, Loertscher & Bloswick 2009; the form as remembered, for a second opinion only). */
double hs_lowback_hand_estimate_N(double body_N,
                                  double load_N,
                                  double trunk_rad,
                                  double hands_ahead_m);

#endif

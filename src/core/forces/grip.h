/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  do the grips hold the load, and how hard must pads be pressed?
 * Answer:    contacts as friction cones in space: least squeeze, closure, worst disturbance, tipping and hanging.
 * Not here:  what hands, effector or load can take (checks/grip_checks.c). */
#ifndef HS_GRIP_H
#define HS_GRIP_H

#include "memo.h"
#include "task.h"
#include "vec.h"

#define HS_GRIP_MAX_CONTACTS 64
#define HS_GRIP_MAX_PADS     16
#define HS_GRIP_NOT_A_PAD    (-1)
#define HS_GRIP_EDGES        32 /* of a friction cone: 0.5 per cent of friction lost at worst */

/* A point that pushes along `inward` (unit, into the load) and rubs within friction. */
typedef struct {
    hs_vec3 at_m; /* from the CG */
    hs_vec3 inward;
    double friction; /* already divided by slip_factor */
    double
        turning_m; /* a soft point also resists turning: moment up to this times the normal force; 0: none */
    int pad; /* 0 .. n_pads - 1: contacts of one pad share its squeeze; HS_GRIP_NOT_A_PAD: pushes back, squeezes nothing */
} hs_contact;

/* What the contacts together have to put into the load: force, and moment about the CG. */
typedef struct {
    hs_vec3 force_N, moment_Nm;
} hs_wrench;

typedef struct {
    double squeeze_N;               /* of the hardest pressed pad */
    double pad_N[HS_GRIP_MAX_PADS]; /* normal force of each */
    bool is_closed_form;
} hs_squeeze;

/* The four corners of a pad as contacts; along and up are its sizes, along lies level. Returns 4, or 1 for a point. */
int hs_grip_pad_contacts(hs_vec3 at_m,
                         hs_vec3 inward,
                         double along_m,
                         double up_m,
                         double friction,
                         int pad,
                         hs_contact *ret_contacts);

/**
 * hs_grip_squeeze - the least squeeze that holds
 *
 * What    least largest pad force under equilibrium of forces and moments, every contact in its friction cone; cones are
 *         polygons with one edge turned into line with the load's tangential force, so that two facing pads give the closed form
 *         N = W / (2 mu), which is used directly where it holds
 * In      contacts 1..64 of 1..16 pads, friction >= 0; need: from the load; n_edges >= 4
 * Out     *ret_squeeze
 * Frame   any one frame, places from the CG
 * Errors  HS_E_RANGE; HS_E_NO_SOLUTION: no squeeze holds
 * Source  HS_SRC_coulomb_pads, HS_SRC_friction_cones
 */
hs_status hs_grip_squeeze(const hs_contact *contacts,
                          int n,
                          const hs_wrench *need,
                          int n_edges,
                          hs_squeeze *ret_squeeze,
                          hs_error *error);

typedef enum {
    HS_HOLD_NONE = 0, /* falls */
    HS_HOLD_RESTS,    /* gravity holds it there, a push the other way does not */
    HS_HOLD_FORCE,    /* force closure: friction is needed */
    HS_HOLD_FORM      /* form closure: shape alone */
} hs_hold;

/* Do the contacts hold the load against anything? is_plane: x and z only (moment about y). */
hs_hold hs_grip_closure(
    const hs_contact *contacts, int n, const hs_wrench *need, bool is_plane, int n_edges);

/**
 * hs_grip_worst_direction - the disturbance that asks for most squeeze
 *
 * What    tries level directions all round, up and down, and those between, with one force added at the CG
 * In      as hs_grip_squeeze(); push_N >= 0; n_round >= 4 directions to the turn
 * Out     *ret_direction (unit), *ret_squeeze_N (HS_ABSENT where nothing holds)
 * Frame   as the contacts
 * Errors  HS_E_RANGE
 * Source  HS_SRC_friction_cones
 */
hs_status hs_grip_worst_direction(const hs_contact *contacts,
                                  int n,
                                  const hs_wrench *need,
                                  double push_N,
                                  int n_round,
                                  hs_vec3 *ret_direction,
                                  double *ret_squeeze_N,
                                  hs_error *error);

/* Least turn (rad) of a load about its grips until the CG passes outside their hull; height_m: CG above the grips. HS_ABSENT when it
 * hangs (height not above 0). */
double hs_grip_tip_rad(double inside_m, double height_m);
/* Turn (rad) of a load that hangs by its grips until it balances: CG beside the grips' nearest place by outside_m, depth_m below. */
double hs_grip_hang_rad(double outside_m, double depth_m);

/* The same, remembered: memo NULL asks anew. */
hs_status hs_grip_squeeze_known(hs_memo *memo,
                                const hs_contact *contacts,
                                int n,
                                const hs_wrench *need,
                                int n_edges,
                                hs_squeeze *ret_squeeze,
                                hs_error *error);

#endif

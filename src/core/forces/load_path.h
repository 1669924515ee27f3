/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  by which way does every newton reach the floor?
 * Answer:    hs_load_path_of(): an account for one bearer at one instant, whose sum is zero.
 * Not here:  what is felt (suit/), what the floor bears (checks/surroundings.c). */
#ifndef HS_LOAD_PATH_H
#define HS_LOAD_PATH_H

#include "task.h"
#include "working.h"

/* Who gives a force and who takes it; all vertical, down positive. */
typedef enum {
    HS_PATH_HANDS_TO_WEARER = 0, /* what is felt */
    HS_PATH_HANDS_TO_SUIT, /* the rest of the load, may be negative: then the wearer pushes the suit */
    HS_PATH_SUIT_TO_WEARER, /* the part of its own weight that the suit does not carry itself */
    HS_PATH_WEARER_TO_FLOOR, /* under the wearer's soles */
    HS_PATH_SUIT_TO_FLOOR,   /* under the suit's soles */
    HS_N_PATHS
} hs_path;

typedef struct {
    double hand_N, suit_N,
        body_N; /* what goes in: load on the hands, weights of suit and wearer */
    double along_N[HS_N_PATHS];
    double sum_N; /* all that goes in less all that arrives at the floor: zero to rounding */
} hs_load_path;

/**
 * hs_load_path_of - the account of one bearer
 *
 * What    balances load, suit and wearer one after the other and sums what is left
 * In      suit NULL: none; body_kg; hand_N on the hands, felt_N of it felt; weight_factor of walking on the weights
 * Out     *ret_path; absent where self_carried of a powered suit is absent
 * Frame   vertical
 * Errors  none
 * Source  HS_SRC_suit_load_path
 */
void hs_load_path_of(const hs_suit *suit,
                     double body_kg,
                     double hand_N,
                     double felt_N,
                     double weight_factor,
                     hs_load_path *ret_path);

/* Three lines of working: wearer's soles, suit's soles, and the sum that is zero. */
void hs_load_path_write(const hs_load_path *path, double self_carried, hs_working *working);

#endif

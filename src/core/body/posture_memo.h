/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  was this posture searched before?
 * Answer:    the numbers that a search of one place starts from: person, place, forces, suit, tie, start.
 * Not here:  how it is kept (base/memo.c), the search (posture.c). */
#ifndef HS_POSTURE_MEMO_H
#define HS_POSTURE_MEMO_H

#include "effort.h"
#include "memo.h"

#define HS_POSTURE_KEY_MOST 88

/* What a question is about, so that two kinds never share an answer. */
typedef enum {
    HS_POSTURE_ASKED_FRESH = 1,
    HS_POSTURE_ASKED_NEAR,
    HS_POSTURE_ASKED_DOWN
} hs_posture_asked;

typedef struct {
    hs_memo *memo; /* NULL: nothing is kept */
    double number[HS_POSTURE_KEY_MOST];
    int n;
} hs_posture_key;

/* tie and start may be NULL. Its memo is NULL where the person has none, or where there is too much to compare. */
void hs_posture_key_set(hs_posture_key *key,
                        hs_posture_asked asked,
                        const hs_chain *chain,
                        const hs_posture_tie *tie,
                        const double start_rad[3]);
bool hs_posture_key_find(const hs_posture_key *key, void *ret_value, size_t bytes);
void hs_posture_key_keep(const hs_posture_key *key, const void *value, size_t bytes);

#endif

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  was this posture searched before?
 * Answer:    a key of everything that the search reads; equal keys, equal postures to the last bit.
 * Not here:  how it is kept (base/memo.c), the search (posture.c). */
#include "posture_memo.h"

#include <string.h>

/* A new field of the input belongs into the key. */
_Static_assert(sizeof(void *) != 8 || sizeof(hs_body_input) == 216, "add_input");

#define TORQUE_MOST 16 /* points of a spring's curve; a longer one is searched every time */

/* A person is made from these alone (hs_person_make). */
static void
add_person(hs_posture_key *key, const hs_person *person)
{
    const double numbers[] = {person->sex,       person->stature_m,  person->mass_kg,
                              person->age_years, person->percentile, person->table};

    memcpy(key->number + key->n, numbers, sizeof numbers);
    key->n += (int)(sizeof numbers / sizeof *numbers);
}

static void
add_input(hs_posture_key *key, const hs_body_input *in)
{
    const hs_body_suit *suit = &in->suit;
    const double numbers[] = {in->hand_x_m,
                              in->hand_z_m,
                              in->felt_N,
                              in->push_N,
                              in->rest_N,
                              in->couple_Nm,
                              in->weight_factor,
                              in->foot_acc_m_s2,
                              in->slope_rad,
                              in->stance,
                              in->style,
                              in->is_one_handed,
                              in->belly_free,
                              in->base_ahead_m,
                              in->base_behind_m,
                              in->side_m,
                              suit->kind,
                              suit->weight_N,
                              suit->centre_x_m,
                              suit->centre_z_m,
                              suit->gain_trunk,
                              suit->harness_m,
                              suit->mass_kg,
                              suit->has_foot,
                              suit->foot_heel_m,
                              suit->foot_toe_m,
                              suit->foot_width_m,
                              suit->torque != NULL,
                              suit->residual_trunk_N};

    memcpy(key->number + key->n, numbers, sizeof numbers);
    key->n += (int)(sizeof numbers / sizeof *numbers);
    for (int i = 0; suit->torque != NULL && i < suit->torque->n_torque; i++) {
        key->number[key->n++] = suit->torque->torque[i].angle_deg;
        key->number[key->n++] = suit->torque->torque[i].moment_Nm;
    }
}

static void
add_tie(hs_posture_key *key, const hs_posture_tie *tie)
{
    memcpy(key->number + key->n, tie->near_rad, sizeof tie->near_rad);
    memcpy(key->number + key->n + 3, tie->toward_rad, sizeof tie->toward_rad);
    key->number[key->n + 6] = tie->most_rad;
    key->number[key->n + 7] = tie->pull;
    key->n += 8;
}

void
hs_posture_key_set(hs_posture_key *key,
                   hs_posture_asked asked,
                   const hs_chain *chain,
                   const hs_posture_tie *tie,
                   const double start_rad[3])
{
    const hs_suit *torque = chain->input->suit.torque;

    key->memo = torque == NULL || torque->n_torque <= TORQUE_MOST ? chain->person->memo : NULL;
    key->n = 0;
    if (key->memo == NULL)
        return;
    key->number[key->n++] = asked + (tie != NULL ? 0.5 : 0.0);
    add_person(key, chain->person);
    add_input(key, chain->input);
    if (tie != NULL)
        add_tie(key, tie);
    if (start_rad != NULL) {
        memcpy(key->number + key->n, start_rad, sizeof(double[3]));
        key->n += 3;
    }
}

bool
hs_posture_key_find(const hs_posture_key *key, void *ret_value, size_t bytes)
{
    const void *found = hs_memo_find(key->memo, key->number, key->n);

    if (found != NULL)
        memcpy(ret_value, found, bytes);
    return found != NULL;
}

void
hs_posture_key_keep(const hs_posture_key *key, const void *value, size_t bytes)
{
    hs_memo_keep(key->memo, key->number, key->n, value, bytes);
}

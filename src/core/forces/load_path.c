/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  by which way does every newton reach the floor?
 * Answer:    load, suit and wearer are balanced one after the other; nothing vanishes.
 * Not here:  what is felt (suit/), what the floor bears (checks/surroundings.c). */
#include "load_path.h"

#include "units.h"

/* A suit without soles of its own hands its whole weight to the wearer. */
static double
self_carried_of(const hs_suit *suit)
{
    if (suit == NULL || suit->kind != HS_SUIT_POWERED)
        return 0.0;
    return suit->self_carried;
}

void
hs_load_path_of(const hs_suit *suit,
                double body_kg,
                double hand_N,
                double felt_N,
                double weight_factor,
                hs_load_path *ret_path)
{
    double suit_kg = suit != NULL ? hs_or(suit->mass_kg, 0.0) : 0.0;
    double *along_N = ret_path->along_N;

    ret_path->hand_N = hand_N;
    ret_path->suit_N = suit_kg * HS_GRAVITY_m_s2 * weight_factor;
    ret_path->body_N = body_kg * HS_GRAVITY_m_s2 * weight_factor;

    along_N[HS_PATH_HANDS_TO_WEARER] = felt_N;
    along_N[HS_PATH_HANDS_TO_SUIT] = hand_N - felt_N;
    along_N[HS_PATH_SUIT_TO_WEARER] = (1.0 - self_carried_of(suit)) * ret_path->suit_N;
    along_N[HS_PATH_WEARER_TO_FLOOR] =
        ret_path->body_N + along_N[HS_PATH_HANDS_TO_WEARER] + along_N[HS_PATH_SUIT_TO_WEARER];
    along_N[HS_PATH_SUIT_TO_FLOOR] =
        self_carried_of(suit) * ret_path->suit_N + along_N[HS_PATH_HANDS_TO_SUIT];

    ret_path->sum_N = ret_path->hand_N + ret_path->suit_N + ret_path->body_N -
                      along_N[HS_PATH_WEARER_TO_FLOOR] - along_N[HS_PATH_SUIT_TO_FLOOR];
}

void
hs_load_path_write(const hs_load_path *path, double self_carried, hs_working *working)
{
    double wearer_N = path->along_N[HS_PATH_WEARER_TO_FLOOR];
    double suit_N = path->along_N[HS_PATH_SUIT_TO_FLOOR];
    double felt_N = path->along_N[HS_PATH_HANDS_TO_WEARER];

    if (!hs_has(path->sum_N))
        return;
    HS_WORK(working, path_wearer_soles, wearer_N, "N", {"body", path->body_N, "N"},
            {"felt", felt_N, "N"}, {"c", self_carried, ""}, {"suit", path->suit_N, "N"});
    HS_WORK(working, path_suit_soles, suit_N, "N", {"c", self_carried, ""},
            {"suit", path->suit_N, "N"}, {"hand", path->hand_N, "N"}, {"felt", felt_N, "N"});
    HS_WORK(working, path_sum, path->sum_N, "N", {"hand", path->hand_N, "N"},
            {"suit", path->suit_N, "N"}, {"body", path->body_N, "N"},
            {"wearer_soles", wearer_N, "N"}, {"suit_soles", suit_N, "N"});
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what do hands and trunk feel in a powered suit that multiplies force?
 * Answer:    felt = min(F, p g)/G + r + max(F - p g, 0) inside the hands' height range and up to its payload; F outside.
 * Not here:  the suit without power (checks/power_loss.c), energy (forces/energy.c).
 *
 * The payload is a weight: p g, without the load's acceleration, so a brisk lift exceeds it earlier. Whatever is outside
 * the range or beyond the last reach falls on the wearer in full, and then the residual is not felt as well. */
#include "kinds.h"

#include "units.h"

static bool
is_inside(const double range_m[2], double height_m)
{
    return height_m >= range_m[0] - HS_SAME_PLACE_m && height_m <= range_m[1] + HS_SAME_PLACE_m;
}

static hs_felt
in_full(hs_felt felt, double hand_N)
{
    felt.felt_N = hand_N;
    felt.suit_N = 0.0;
    felt.excess_N = hand_N;
    return felt;
}

static hs_felt
cannot_tell(hs_felt felt)
{
    felt.felt_N = HS_ABSENT;
    felt.suit_N = HS_ABSENT;
    felt.excess_N = HS_ABSENT;
    felt.is_missing = true;
    return felt;
}

static void
write_payload(const hs_suit *suit, double reach_m, double payload_kg, hs_working *working)
{
    int i = hs_suit_rating_segment(suit, reach_m);

    if (i == 0 || i == suit->n_rating)
        return;
    HS_WORK(working, suit_payload, payload_kg, "kg",
            {"p1", suit->rating[i - 1].payload_kg, "kg"},
            {"p2", suit->rating[i].payload_kg, "kg"},
            {"R", fmin(reach_m, suit->rating[i].reach_m), "m"},
            {"R1", suit->rating[i - 1].reach_m, "m"}, {"R2", suit->rating[i].reach_m, "m"});
}

static hs_felt
felt(const hs_suit *suit,
     double hand_N,
     double reach_m,
     double hand_height_m,
     hs_working *working)
{
    hs_felt ret = {.payload_kg = hs_suit_payload_kg(suit, reach_m)};
    double carried_N;
    bool knows_range = hs_has(suit->hand_height_m[0]) && hs_has(suit->hand_height_m[1]);

    /* Either of range and rating alone can settle that all of it falls on the wearer. */
    if (!hs_has(hand_N))
        return cannot_tell(ret);
    if (knows_range && !is_inside(suit->hand_height_m, hand_height_m)) {
        ret.is_outside_height = true;
        return in_full(ret, hand_N);
    }
    if (hs_has(ret.payload_kg) && !(ret.payload_kg > 0.0))
        return in_full(ret, hand_N);
    if (!knows_range || !hs_has(ret.payload_kg))
        return cannot_tell(ret);
    if (!(suit->gain_hands > 0.0) || !hs_has(suit->residual_hands_N))
        return cannot_tell(ret);

    carried_N = ret.payload_kg * HS_GRAVITY_m_s2;
    ret.excess_N = fmax(hand_N - carried_N, 0.0);
    ret.felt_N =
        fmin(hand_N, carried_N) / suit->gain_hands + suit->residual_hands_N + ret.excess_N;
    ret.suit_N = hand_N - ret.felt_N;
    write_payload(suit, reach_m, ret.payload_kg, working);
    HS_WORK(working, suit_felt, ret.felt_N, "N", {"F", hand_N, "N"},
            {"p", ret.payload_kg, "kg"}, {"g", HS_GRAVITY_m_s2, "m/s2"},
            {"G", suit->gain_hands, ""}, {"r", suit->residual_hands_N, "N"});
    return ret;
}

static void
in_body(const hs_suit *suit, double weight_factor, hs_body_suit *ret_terms)
{
    double mass_kg = hs_or(suit->mass_kg, 0.0);
    bool has_foot =
        hs_has(suit->foot_heel_m) || hs_has(suit->foot_toe_m) || hs_has(suit->foot_width_m);

    *ret_terms = (hs_body_suit){
        .kind = HS_SUIT_POWERED,
        /* absent self_carried stays absent here: no kind figure may come out of a gap */
        .weight_N = (1.0 - suit->self_carried) * mass_kg * HS_GRAVITY_m_s2 * weight_factor,
        .centre_x_m = hs_or(suit->centre_x_m, 0.0),
        .centre_z_m = hs_or(suit->centre_z_m, 0.0),
        .gain_trunk = suit->gain_trunk,
        .residual_trunk_N = suit->residual_trunk_N,
        .harness_m = hs_or(suit->harness_m, HS_SUIT_HARNESS_m),
        .mass_kg = mass_kg,
        .has_foot = has_foot,
        .foot_heel_m = hs_or(suit->foot_heel_m, 0.0),
        .foot_toe_m = hs_or(suit->foot_toe_m, 0.0),
        .foot_width_m = hs_or(suit->foot_width_m, 0.0),
    };
}

const hs_suit_model hs_suit_powered = {
    .kind = HS_SUIT_POWERED,
    .id = "powered",
    .felt = felt,
    .in_body = in_body,
    .has_power = true,
};

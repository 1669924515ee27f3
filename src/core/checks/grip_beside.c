/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what else can be said about a grip, beside what it is judged by?
 * Answer:    a second norm of hands, the glove, how long hands hold, thin bails and straps; how a pad turns, an uneven press, and what a
 *            cone of flat sides loses.
 * Not here:  limits (grip_checks.c, grip_figures.c), the squeeze itself (forces/grip.c). */
#include "grip_beside.h"

#include "endurance_readers.h"
#include "grip_figures.h"
#include "units.h"

#define MEDIAN_MEN_kg   51.0  /* HS_SRC_hand_grip, age 29 to 39 */
#define MEDIAN_WOMEN_kg 31.0  /* the same, age 26 to 42 */
#define BAIL_THICK_m    0.006 /* a wire bail: common practice, no source */
#define BAIL_WIDE_m     0.085 /* breadth of the hand on it: common practice, no source */
#define STRAP_ROUND_m   0.08  /* radius of a shoulder: common practice, no source */
#define STRAP_WIDE_m    0.05  /* a carrying strap: common practice, no source */
#define ENDS_OF_A_STRAP 2     /* a strap over a shoulder goes down in front and behind */
#define LEAST_OFF_m     1e-6  /* CG off the pads' middle by less is not off (numerics) */

double
hs_grip_median_N(hs_sex sex)
{
    return (sex == HS_SEX_FEMALE ? MEDIAN_WOMEN_kg : MEDIAN_MEN_kg) * HS_GRAVITY_m_s2;
}

double
hs_grip_gloved_N(double strength_N, double loss_fraction)
{
    return loss_fraction > 0.0 ? strength_N * (1.0 - loss_fraction) : strength_N;
}

double
hs_grip_strap_kPa(double tension_N, double radius_m, double width_m)
{
    return tension_N / (radius_m * width_m) / HS_PA_PER_kPa;
}

double
hs_grip_bail_kPa(double force_N, double diameter_m, double width_m)
{
    return force_N / (diameter_m * width_m) / HS_PA_PER_kPa;
}

double
hs_pad_turn_round_Nm(double friction, double normal_N, double radius_m)
{
    return 2.0 / 3.0 * friction * normal_N * radius_m;
}

double
hs_pad_turn_narrow_Nm(double friction, double normal_N, double length_m)
{
    return friction * normal_N * length_m / 4.0;
}

double
hs_pad_uneven_factor(double off_m, double half_m)
{
    return 1.0 + off_m / half_m;
}

double
hs_cone_lost_share(int n_edges)
{
    return 1.0 - cos(HS_PI / n_edges);
}

/* The published median beside the strength in use, and how long hands hold their share of the latter. */
void
hs_grip_write_hands(const hs_grip_hands *hands, double glove_loss_fraction, hs_working *working)
{
    double strength_N = hs_grip_gloved_N(hands->bare_N, glove_loss_fraction),
           median_N = hs_grip_gloved_N(hs_grip_median_N(hands->sex), glove_loss_fraction);
    double share = hands->felt_N / hands->n_hands / strength_N,
           hold_s = hs_endurance_hands_s(share);

    if (glove_loss_fraction > 0.0)
        HS_WORK(working, grip_glove, strength_N, "N", {"S", hands->bare_N, "N"},
                {"glove", glove_loss_fraction, ""});
    HS_WORK(working, grip_median, hands->felt_N / hands->n_hands / median_N, "",
            {"felt", hands->felt_N, "N"}, {"n", hands->n_hands, ""}, {"median", median_N, "N"});
    if (!(hold_s > 0.0))
        return;
    HS_WORK(working, grip_hands_hold, hold_s, "s", {"b0", HS_ENDURANCE_HANDS_b0_s, "s"},
            {"f", share, ""}, {"b1", HS_ENDURANCE_HANDS_b1, ""});
    HS_WORK(working, grip_hands_left, hold_s - hands->to_set_down_s, "s", {"t", hold_s, "s"},
            {"T", hands->to_set_down_s, "s"});
}

void
hs_grip_write_other_skin(const hs_grip *grip, double felt_N, int n_hands, hs_working *working)
{
    double each_N = felt_N / n_hands, tension_N = felt_N / ENDS_OF_A_STRAP;

    if (grip->kind == HS_GRIP_HANDLE)
        HS_WORK(working, grip_bail, hs_grip_bail_kPa(each_N, BAIL_THICK_m, BAIL_WIDE_m), "kPa",
                {"F", each_N, "N"}, {"d", BAIL_THICK_m, "m"}, {"w", BAIL_WIDE_m, "m"});
    else if (grip->kind == HS_GRIP_STRAP)
        HS_WORK(working, grip_strap, hs_grip_strap_kPa(tension_N, STRAP_ROUND_m, STRAP_WIDE_m),
                "kPa", {"T", tension_N, "N"}, {"r", STRAP_ROUND_m, "m"},
                {"w", STRAP_WIDE_m, "m"});
}

void
hs_grip_write_turning(
    double friction, double normal_N, double along_m, double up_m, hs_working *working)
{
    double radius_m = sqrt(along_m * up_m / HS_PI), length_m = fmax(along_m, up_m);

    if (!(radius_m > 0.0))
        return;
    HS_WORK(working, grip_turn_round, hs_pad_turn_round_Nm(friction, normal_N, radius_m), "Nm",
            {"mu", friction, ""}, {"N", normal_N, "N"}, {"R", radius_m, "m"});
    HS_WORK(working, grip_turn_narrow, hs_pad_turn_narrow_Nm(friction, normal_N, length_m),
            "Nm", {"mu", friction, ""}, {"N", normal_N, "N"}, {"l", length_m, "m"});
}

void
hs_grip_write_uneven(const hs_contact *contacts,
                     int n,
                     const hs_squeeze *squeeze,
                     double along_m,
                     hs_working *working)
{
    hs_vec3 middle = {0, 0, 0}, level = hs_vec3_cross((hs_vec3){0, 0, 1}, contacts[0].inward);
    double half_m = along_m / 2.0, off_m;

    for (int i = 0; i < n; i++)
        middle = hs_vec3_add(middle, hs_vec3_scale(contacts[i].at_m, 1.0 / n));
    if (!(half_m > 0.0) || !(hs_vec3_length(level) > 0.0))
        return;
    off_m = fabs(hs_vec3_dot(middle, level)) / hs_vec3_length(level);
    if (off_m > LEAST_OFF_m && off_m <= half_m)
        HS_WORK(working, grip_uneven, squeeze->squeeze_N * hs_pad_uneven_factor(off_m, half_m),
                "N", {"N", squeeze->squeeze_N, "N"}, {"e", off_m, "m"}, {"a", half_m, "m"});
}

void
hs_grip_write_cone(int n_edges, hs_working *working)
{
    HS_WORK(working, grip_cone, hs_cone_lost_share(n_edges), "", {"n", n_edges, ""});
}

void
hs_grip_write_beside_hands(
    const hs_asking *asking, int station, int used, double felt_N, hs_working *working)
{
    const hs_run *run = asking->run;
    int bearer = run->setup->used_by[used], n_hands = run->setup->used_hands[used];
    hs_grip_hands hands = {felt_N, n_hands, run->persons[bearer].grip_N,
                           run->persons[bearer].sex,
                           hs_place_to_set_down_s(run->setup, &run->stations[station].place)};

    hs_skin_write(felt_N, n_hands, working);
    if (asking->is_live)
        return;
    hs_grip_write_other_skin(&asking->task->load.grips[run->setup->used[used]], felt_N, n_hands,
                             working);
    hs_grip_write_hands(&hands, asking->task->policy.glove_loss_fraction, working);
}

void
hs_grip_write_pads(const hs_grip_pads *pads,
                   const hs_squeeze *squeeze,
                   bool in_full,
                   hs_working *working)
{
    double normal_N = squeeze->squeeze_N;

    if (pads->along_m > 0.0 && pads->up_m > 0.0)
        HS_WORK(working, grip_pad_pressure,
                normal_N / (pads->along_m * pads->up_m) / HS_PA_PER_kPa, "kPa",
                {"N", normal_N, "N"}, {"a", pads->along_m, "m"}, {"b", pads->up_m, "m"});
    if (!in_full)
        return;
    hs_grip_write_turning(pads->friction, normal_N, pads->along_m, pads->up_m, working);
    if (pads->n_pads == 2)
        hs_grip_write_uneven(pads->contacts, pads->n, squeeze, pads->along_m, working);
    if (!squeeze->is_closed_form)
        hs_grip_write_cone(HS_GRIP_EDGES, working);
}

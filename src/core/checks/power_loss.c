/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what does the wearer hold when the power fails, and for long enough?
 * Answer:    limp, locked or descending at every place; seconds held against seconds to the next place to set down.
 * Not here:  getting the wearer out (rescue_check.c), the battery (forces/energy.c). */
#include "power_loss.h"

#include "floor.h"
#include "outline.h"
#include "units.h"

#define PUT_DOWN_m_s     0.35 /* HS_SRC_suit_lower_speed */
#define PUT_DOWN_LEAST_s 1.0  /* file format, section Power lost */
#define ENDURANCE_PART   0.5  /* published endurance halved: file format, section Power lost */

static const hs_suit *
powered_suit(const hs_setup *setup, int bearer)
{
    const hs_suit *suit = setup->bearers[bearer].suit;

    return suit != NULL && hs_suit_model_of(suit)->has_power ? suit : NULL;
}

bool
hs_power_loss_input(const hs_setup *setup,
                    const hs_place *place,
                    int bearer,
                    const hs_body_input *on_power,
                    double hand_N,
                    hs_body_input *ret_input)
{
    const hs_suit *suit = powered_suit(setup, bearer);
    double factor = place->bearers[bearer].walking_factor;

    if (suit == NULL || suit->on_power_loss == 0 || !hs_has(hand_N))
        return false;
    *ret_input = *on_power;
    if (suit->on_power_loss != HS_LOSS_LIMP) {
        ret_input->felt_N = 0.0;
        ret_input->rest_N = hand_N;
        return true;
    }
    ret_input->felt_N = hand_N;
    ret_input->rest_N = 0.0;
    ret_input->suit.weight_N = (1.0 - hs_or(suit->self_carried_unpowered, 0.0)) *
                               hs_or(suit->mass_kg, 0.0) * HS_GRAVITY_m_s2 * factor;
    ret_input->suit.gain_trunk = 1.0;
    ret_input->suit.residual_trunk_N = 0.0;
    return true;
}

static double
peak_of(const hs_body_state *old, const hs_body_state *sudden, int joint)
{
    double peak_Nm =
        old->moment_Nm[joint] + 2.0 * (sudden->moment_Nm[joint] - old->moment_Nm[joint]);
    double strength_Nm = sudden->strength_Nm[joint];

    /* The side that the sign asks for: with power it may have been the other one. */
    if (peak_Nm * sudden->moment_Nm[joint] < 0.0 && peak_Nm * old->moment_Nm[joint] > 0.0)
        strength_Nm = old->strength_Nm[joint];
    return fabs(peak_Nm) / strength_Nm;
}

double
hs_power_loss_peak_utilisation(const hs_person *person,
                               const hs_body_state *body,
                               const hs_body_input *lost)
{
    hs_body_state sudden = *body;
    double greatest = HS_ABSENT;

    /* The jolt comes before anyone can change posture. */
    if (!body->is_found || hs_body_at(person, lost, &sudden) != HS_OK)
        return HS_ABSENT;
    for (int j = 0; j < HS_N_JOINTS; j++) {
        double peak = peak_of(body, &sudden, j);

        if (hs_has(peak) && !(greatest >= peak))
            greatest = peak;
    }
    return greatest;
}

static bool
has_riser_under(const hs_site *site, const hs_outline *load)
{
    return hs_floor_n_risers(site, load->least_m.x, load->most_m.x, 0.0) > 0;
}

static double
surface_under_m(const hs_site *site, const hs_outline *load, bool *ret_is_level)
{
    double middle_m = (load->least_m.x + load->most_m.x) / 2.0;
    double top_m = hs_floor_height_m(site, middle_m);

    *ret_is_level = !has_riser_under(site, load);
    if (!*ret_is_level)
        for (int i = 0; i < site->n_floor; i++)
            if (site->floor[i].x >= load->least_m.x && site->floor[i].x <= load->most_m.x)
                top_m = fmax(top_m, site->floor[i].y);
    for (int i = 0; i < site->n_obstacles; i++) {
        const hs_obstacle *thing = &site->obstacles[i];

        if (thing->x_m[1] < load->least_m.x || thing->x_m[0] > load->most_m.x ||
            thing->z_m[0] >= load->least_m.z)
            continue;
        *ret_is_level = false;
        top_m = fmax(top_m, thing->z_m[1]);
    }
    return top_m;
}

double
hs_power_loss_drop_m(const hs_setup *setup, const hs_place *place, bool *ret_is_level)
{
    hs_outline load = hs_outline_load(setup, place);
    double surface_m = surface_under_m(&setup->task->site, &load, ret_is_level);

    return fmax(load.least_m.z - surface_m, 0.0);
}

static double
above_floor_m(const hs_setup *setup, const hs_place *place)
{
    hs_outline load = hs_outline_load(setup, place);
    double floor_m =
        hs_floor_height_m(&setup->task->site, (load.least_m.x + load.most_m.x) / 2.0);

    return fmax(load.least_m.z - floor_m, 0.0);
}

/* Least over the joints of the published time, halved; 0 where no posture holds it. */
static double
held_s(const hs_bearer_state *state)
{
    double least_s = HS_ABSENT;

    if (!state->has_lost)
        return HS_ABSENT;
    if (!state->lost.is_found)
        return 0.0;
    for (int j = 0; j < HS_N_JOINTS; j++) {
        bool outside;
        double seconds;

        if (!hs_has(state->lost.utilisation[j]))
            continue;
        seconds = ENDURANCE_PART * hs_endurance_s(j, state->lost.utilisation[j], &outside);
        if (!(least_s <= seconds))
            least_s = seconds;
    }
    return least_s;
}

static void
lose_limp(const hs_run *run, int s, int b, hs_power_lost *lost)
{
    const hs_suit *suit = run->setup->bearers[b].suit;
    const hs_place *place = &run->stations[s].place;
    hs_bearer_state *state = &run->stations[s].bearers[b];

    lost->state = HS_LOST_LIMP;
    lost->felt_force_N = run->samples[s].bearers[b].hand_force_N;
    lost->hold_s = held_s(state);
    if (suit->walks_without_power == HS_YES)
        lost->needed_s = hs_place_to_set_down_s(run->setup, place);
    else if (suit->walks_without_power == HS_NO)
        lost->needed_s =
            fmax(above_floor_m(run->setup, place) / PUT_DOWN_m_s, PUT_DOWN_LEAST_s);
    if (state->has_lost && state->has_body)
        state->lost_peak_utilisation =
            hs_power_loss_peak_utilisation(&run->persons[b], &state->body, &state->lost_input);
}

static void
lose_locked(const hs_run *run, int s, int b, hs_power_lost *lost)
{
    const hs_suit *suit = run->setup->bearers[b].suit;

    lost->state = HS_LOST_LOCKED;
    lost->felt_force_N = 0.0;
    lost->hold_s = suit->lock_s;
    if (suit->walks_without_power == HS_YES)
        lost->needed_s = hs_place_to_set_down_s(run->setup, &run->stations[s].place);
    else if (suit->walks_without_power == HS_NO)
        lost->needed_s = suit->release_helper_s;
}

static void
lose_descending(const hs_run *run, int s, int b, hs_power_lost *lost)
{
    const hs_suit *suit = run->setup->bearers[b].suit;
    bool is_level;
    double drop_m = hs_power_loss_drop_m(run->setup, &run->stations[s].place, &is_level);

    lost->state = HS_LOST_DESCENDING;
    lost->felt_force_N = 0.0;
    if (suit->sink_m_s > 0.0)
        lost->hold_s = lost->needed_s = drop_m / suit->sink_m_s;
}

void
hs_power_loss_at(const hs_run *run, int station, int bearer, hs_power_lost *ret_lost)
{
    const hs_suit *suit = powered_suit(run->setup, bearer);

    *ret_lost =
        (hs_power_lost){.felt_force_N = HS_ABSENT, .hold_s = HS_ABSENT, .needed_s = HS_ABSENT};
    if (suit == NULL || suit->on_power_loss == 0)
        return;
    ret_lost->is_known = true;
    if (suit->on_power_loss == HS_LOSS_LIMP)
        lose_limp(run, station, bearer, ret_lost);
    else if (suit->on_power_loss == HS_LOSS_LOCK)
        lose_locked(run, station, bearer, ret_lost);
    else
        lose_descending(run, station, bearer, ret_lost);
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  which facts are missing, so that something could not be judged?
 * Answer:    the `data` check: the list of what has no default on purpose, for what this option uses.
 * Not here:  what each gap means (the check that needs it says so). */
#include "check.h"
#include "floor.h"

#include <stdio.h>
#include <string.h>

typedef struct {
    char text[1200];
    int n;
} missing_list;

/* list[i].key, or key alone for i < 0 */
static void
miss(missing_list *list, const char *of, int i, const char *key)
{
    size_t at = strlen(list->text);

    list->n++;
    if (at + 80 > sizeof list->text)
        return;
    if (at > 0)
        at += (size_t)snprintf(list->text + at, sizeof list->text - at, ", ");
    if (i < 0)
        snprintf(list->text + at, sizeof list->text - at, "%s.%s", of, key);
    else
        snprintf(list->text + at, sizeof list->text - at, "%s[%d].%s", of, i, key);
}

static void
miss_effector(missing_list *list, const hs_bearer *asked)
{
    char of[32];

    snprintf(of, sizeof of, "suits[%d].effectors", asked->suit);
    miss(list, of, asked->effector, "holds_without_power");
}

static void
miss_powered(const hs_suit *suit, int i, missing_list *list)
{
    if (!hs_has(suit->gain_hands))
        miss(list, "suits", i, "gain.hands");
    if (!hs_has(suit->gain_trunk))
        miss(list, "suits", i, "gain.trunk");
    if (suit->n_rating == 0)
        miss(list, "suits", i, "rating");
    if (!hs_has(suit->hand_height_m[0]))
        miss(list, "suits", i, "hand_height_m");
    if (!hs_has(suit->self_carried))
        miss(list, "suits", i, "self_carried");
    if (!hs_has(suit->residual_hands_N))
        miss(list, "suits", i, "residual_N.hands");
    if (!hs_has(suit->residual_trunk_N))
        miss(list, "suits", i, "residual_N.trunk");
    if (suit->on_power_loss == 0)
        miss(list, "suits", i, "on_power_loss");
    if (suit->walks_without_power == HS_UNKNOWN)
        miss(list, "suits", i, "walks_without_power");
    if (!hs_has(suit->release_self_s))
        miss(list, "suits", i, "release_self_s");
    if (!hs_has(suit->release_helper_s))
        miss(list, "suits", i, "release_helper_s");
    if (!hs_has(suit->wearer_stature_m[0]))
        miss(list, "suits", i, "wearer_stature_m");
    if (!hs_has(suit->wearer_mass_kg[0]))
        miss(list, "suits", i, "wearer_mass_kg");
    if (!suit->has_power)
        miss(list, "suits", i, "power");
    if (suit->on_power_loss == HS_LOSS_LOCK && !hs_has(suit->lock_s))
        miss(list, "suits", i, "lock_s");
    if (suit->on_power_loss == HS_LOSS_DESCEND && !hs_has(suit->sink_m_s))
        miss(list, "suits", i, "sink_m_s");
}

/* What the way and the site ask of the suit's data. */
static void
miss_scope(const hs_asking *asking, const hs_suit *suit, int b, int i, missing_list *list)
{
    const hs_setup *setup = asking->run->setup;
    const hs_site *site = &asking->task->site;
    bool risers = false;
    double slope_rad = 0.0;

    for (int leg = 0; leg < setup->motions[0].n_legs; leg++) {
        int at = leg * setup->n_bearers + b;

        risers = risers || setup->stairs[at];
        slope_rad = fmax(slope_rad, hs_floor_steepest_rad(site, setup->feet_from_m[at],
                                                          setup->feet_to_m[at]));
    }
    if (risers && suit->stairs == HS_UNKNOWN)
        miss(list, "suits", i, "stairs");
    if (slope_rad > 0.0 && !hs_has(suit->slope_deg))
        miss(list, "suits", i, "slope_deg");
    if (hs_has(site->temperature_C) && !hs_has(suit->temperature_C[0]))
        miss(list, "suits", i, "temperature_C");
    if (site->wet != HS_UNKNOWN && suit->wet == HS_UNKNOWN)
        miss(list, "suits", i, "wet");
}

static void
miss_suits(const hs_asking *asking, missing_list *list)
{
    const hs_setup *setup = asking->run->setup;

    for (int b = 0; b < setup->n_bearers; b++) {
        const hs_bearer *asked = setup->bearers[b].asked;
        const hs_suit *suit = setup->bearers[b].suit;
        bool seen = false;

        for (int other = 0; other < b; other++)
            seen = seen || setup->bearers[other].suit == suit;
        if (suit == NULL)
            continue;
        if (!seen && suit->kind == HS_SUIT_POWERED)
            miss_powered(suit, asked->suit, list);
        if (!seen)
            miss_scope(asking, suit, b, asked->suit, list);
        if (suit->kind == HS_SUIT_POWERED && setup->bearers[b].effector != NULL &&
            setup->bearers[b].effector->holds_without_power == HS_UNKNOWN)
            miss_effector(list, asked);
    }
}

static void
miss_way(const hs_asking *asking, missing_list *list)
{
    const hs_task *task = asking->task;

    for (int i = 1; i < task->route.n_points; i++)
        if (task->route.points[i].move == HS_MOVE_SLIDE &&
            !hs_has(task->route.points[i].slide_friction))
            miss(list, "route.points", i, "slide_friction");
    if (!hs_has(task->site.friction))
        miss(list, "site", -1, "friction");
}

static bool
needs_cg_height(const hs_asking *asking)
{
    for (int s = 0; s < asking->run->n_stations; s++)
        if (!asking->run->stations[s].has_shares)
            return true;
    return false;
}

void
hs_check_data(const hs_asking *asking, hs_finding *finding)
{
    missing_list list = {.n = 0};
    hs_message text = {.reason = HS_REASON_data_missing};

    miss_suits(asking, &list);
    miss_way(asking, &list);
    if (needs_cg_height(asking)) {
        miss(&list, "load", -1, "weighings");
        text.reason = HS_REASON_data_cg_height;
    }
    if (list.n == 0)
        return;
    text.number[0] = list.n;
    text.name[0] = hs_arena_strdup(asking->arena, list.text);
    hs_finding_missing(finding, text);
}

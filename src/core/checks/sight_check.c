/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  does a bearer see the floor that the load is carried over?
 * Answer:    hs_check_route_sight(): nearest floor seen over the load, against the way to a stop; near at most.
 * Not here:  room for the load (clearance_check.c).
 *
 * No published limit exists: a load that hides the floor asks for somebody who watches, so the check is near at most, and
 * within where a role names that person. */
#include "check.h"
#include "decide_roles.h"
#include "floor.h"
#include "geometry.h"
#include "outline.h"

#define OBJECT_m                                                                               \
    0.20 /* something to stumble over: an example figure, common practice, no source */
#define STANDS_m 0.01 /* m/s below which nobody walks (numerics) */

typedef struct {
    double blind_m, edge_m, top_m, eye_m;
} view;

/* +1 or -1: the way the load goes at a place of a carry leg; 0 at rest. */
static double
way_of(const hs_place *place)
{
    if (place->move != HS_MOVE_CARRY || fabs(place->motion.vx_m_s) < STANDS_m)
        return 0.0;
    return place->motion.vx_m_s > 0.0 ? 1.0 : -1.0;
}

/* What one bearer sees: the farther top edge of the load that is ahead of its eyes decides. */
static bool
look(const hs_run *run, int s, int b, view *ret_view)
{
    const hs_place *place = &run->stations[s].place;
    const hs_bearer_place *at = &place->bearers[b];
    double way = way_of(place);
    hs_outline load = hs_outline_load(run->setup, place);
    double far_x_m = way > 0.0 ? load.most_m.x : load.least_m.x;

    if (way == 0.0 || way * cos(run->setup->bearers[b].facing_rad) < 0.5)
        return false;
    ret_view->edge_m = fmax(way * (far_x_m - at->feet_m.x), 0.0);
    ret_view->top_m = load.most_m.z - at->floor_z_m;
    ret_view->eye_m = run->persons[b].eye_height_m;
    ret_view->blind_m = hs_sight_blind_m(ret_view->eye_m, ret_view->edge_m, ret_view->top_m);
    return true;
}

/* The bearer who sees best at a station; -1: nobody faces the way. */
static int
best_view(const hs_run *run, int s, view *ret_view)
{
    int best = -1;

    for (int b = 0; b < run->setup->n_bearers; b++) {
        view one;

        if (look(run, s, b, &one) && (best < 0 || one.blind_m < ret_view->blind_m)) {
            *ret_view = one;
            best = b;
        }
    }
    return best;
}

/* The pace of a leg: what is hidden matters at the speed at which the leg is walked, not while it starts and ends. */
static double
pace_m_s(const hs_run *run, int s)
{
    double fastest_m_s = 0.0;

    for (int i = 0; i < run->n_stations; i++)
        if (run->stations[i].place.leg == run->stations[s].place.leg)
            fastest_m_s = fmax(fastest_m_s, fabs(run->stations[i].place.motion.vx_m_s));
    return fastest_m_s;
}

static void
judge(const hs_asking *asking, int s, hs_finding *finding)
{
    const hs_run *run = asking->run;
    double speed_m_s = pace_m_s(run, s);
    double stop_m = hs_sight_stop_m(speed_m_s, HS_SIGHT_REACTION_s, HS_SIGHT_SLOWING_m_s2),
           limit_m;
    view seen = {0};
    int b = best_view(run, s, &seen);

    if (b < 0) {
        finding->status = HS_STATUS_NEAR;
        finding->why = HS_WHY_COMPUTED;
        finding->text = HS_SAY(sight_nobody);
        finding->remedy = HS_SAY(sight_remedy_watch);
    } else if (!isfinite(seen.blind_m)) {
        finding->status = HS_STATUS_NEAR;
        finding->why = HS_WHY_COMPUTED;
        finding->text = HS_SAY(sight_none, seen.top_m, seen.eye_m);
        finding->remedy = HS_SAY(sight_remedy_watch);
    } else {
        /* What is nearer than the load's front and the way to a stop cannot be avoided by seeing it. */
        limit_m = seen.edge_m + stop_m;
        hs_finding_judge(finding, seen.blind_m, limit_m, asking->near_ratio);
        if (finding->status == HS_STATUS_BEYOND)
            finding->status = HS_STATUS_NEAR;
        finding->text = HS_SAY(sight_blind, seen.blind_m, seen.edge_m, stop_m);
        if (finding->status != HS_STATUS_WITHIN)
            finding->remedy =
                HS_SAY(sight_remedy_top, hs_sight_top_m(seen.eye_m, seen.edge_m,
                                                        0.999 * asking->near_ratio * limit_m));
        HS_WORK(&finding->working, sight_blind, seen.blind_m, "m", {"d", seen.edge_m, "m"},
                {"E", seen.eye_m, "m"}, {"t", seen.top_m, "m"});
        HS_WORK(&finding->working, sight_object,
                hs_sight_object_m(seen.eye_m, seen.edge_m, seen.top_m, OBJECT_m), "m",
                {"d", seen.edge_m, "m"}, {"E", seen.eye_m, "m"}, {"s", OBJECT_m, "m"},
                {"t", seen.top_m, "m"});
        HS_WORK(&finding->working, sight_stop, stop_m, "m", {"v", speed_m_s, "m/s"},
                {"tr", HS_SIGHT_REACTION_s, "s"}, {"a", HS_SIGHT_SLOWING_m_s2, "m/s2"});
    }
    hs_finding_at(finding, run, s, b);
}

void
hs_check_route_sight(const hs_asking *asking, hs_finding *finding)
{
    const hs_run *run = asking->run;
    hs_finding start = *finding;
    const char *watcher = hs_roles_person_for(asking, HS_ROLE_WATCHES);
    int worst = -1;

    start.source = HS_SRC_site_stop;
    start.confidence = HS_CONF_COMMON_PRACTICE;
    for (int s = 0; s < run->n_stations; s++) {
        hs_finding candidate = start;

        if (way_of(&run->stations[s].place) == 0.0)
            continue;
        candidate.working.arena = NULL;
        judge(asking, s, &candidate);
        if (worst >= 0 && !hs_finding_worse(&candidate, finding))
            continue;
        *finding = candidate;
        worst = s;
    }
    if (worst < 0)
        return;
    *finding = start;
    judge(asking, worst, finding);
    if (finding->status == HS_STATUS_NEAR && watcher != NULL) {
        finding->status = HS_STATUS_WITHIN;
        finding->ratio = HS_ABSENT;
        finding->text = HS_SAY(sight_watched, finding->value);
        finding->text.name[0] = watcher;
        finding->remedy = HS_SAY(none);
    }
}

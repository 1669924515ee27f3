/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  is there room for load, bearers and suits all the way?
 * Answer:    hs_check_route_clearance(): width of the way, openings, headroom, corner, obstacles; the worst decides.
 * Not here:  what the floor bears (surroundings.c). */
#include "check.h"
#include "floor.h"
#include "geometry.h"
#include "outline.h"
#include "units.h"

#include <string.h>

#define TOUCH_m                                                                                \
    1e-3 /* less than this is a touch, as of a load on the bench it stands on (numerics) */

typedef struct {
    const hs_asking *asking;
    hs_finding *worst;
    const hs_finding *start;
} search;

static void
offer(const search *at,
      int s,
      int b,
      double needed_m,
      double room_m,
      hs_message text,
      hs_message remedy)
{
    hs_finding candidate = *at->start;

    if (room_m > 0.0)
        hs_finding_judge(&candidate, needed_m, room_m, at->asking->near_ratio);
    else {
        hs_finding_beyond(&candidate, text);
        candidate.limit = HS_ABSENT;
    }
    candidate.text = text;
    if (candidate.status != HS_STATUS_WITHIN)
        candidate.remedy = remedy;
    if (at->worst->status != HS_STATUS_NONE && !hs_finding_worse(&candidate, at->worst))
        return;
    hs_finding_at(&candidate, at->asking->run, s, b);
    *at->worst = candidate;
}

/* Load alone at index 0, then each bearer. */
static hs_outline
outline_of(const hs_run *run, int s, int who)
{
    const hs_place *place = &run->stations[s].place;

    return who == 0 ? hs_outline_load(run->setup, place)
                    : hs_outline_bearer(run->setup, place, who - 1);
}

static hs_outline
everything(const hs_run *run, int s)
{
    hs_outline all = outline_of(run, s, 0);

    for (int who = 1; who <= run->setup->n_bearers; who++) {
        hs_outline one = outline_of(run, s, who);

        all.least_m.y = fmin(all.least_m.y, one.least_m.y);
        all.most_m.y = fmax(all.most_m.y, one.most_m.y);
    }
    return all;
}

static void
ask_width(const search *at, int s)
{
    double room_m = at->asking->task->site.width_m;
    hs_outline all = everything(at->asking->run, s);
    double needed_m = all.most_m.y - all.least_m.y;

    if (!hs_has(room_m) || at->asking->run->stations[s].place.move != HS_MOVE_CARRY)
        return;
    offer(at, s, -1, needed_m, room_m, HS_SAY(room_width, needed_m, room_m),
          HS_SAY(room_remedy_width, at->asking->near_ratio * room_m));
}

static void
ask_headroom(const search *at, int s)
{
    const hs_run *run = at->asking->run;
    double room_m = at->asking->task->site.headroom_m;

    if (!hs_has(room_m))
        return;
    for (int who = 0; who <= run->setup->n_bearers; who++) {
        hs_outline one = outline_of(run, s, who);
        double x_m = (one.least_m.x + one.most_m.x) / 2.0;
        double needed_m = one.most_m.z - hs_floor_height_m(&at->asking->task->site, x_m);

        offer(at, s, who - 1, needed_m, room_m,
              who == 0 ? HS_SAY(room_head_load, needed_m, room_m)
                       : HS_SAY(room_head_bearer, needed_m, room_m),
              HS_SAY(room_remedy_head, at->asking->near_ratio * room_m));
    }
}

/* Something passes an opening between two neighbouring stations of a leg when the two boxes together reach over it. */
static void
ask_opening(const search *at, int s, const hs_opening *opening)
{
    const hs_run *run = at->asking->run;
    int next =
        s + 1 < run->n_stations && run->stations[s + 1].place.leg == run->stations[s].place.leg
            ? s + 1
            : s;

    for (int who = 0; who <= run->setup->n_bearers; who++) {
        hs_outline one = outline_of(run, s, who), then = outline_of(run, next, who);
        double width_m = one.most_m.y - one.least_m.y;
        double height_m =
            one.most_m.z - hs_floor_height_m(&at->asking->task->site, opening->x_m);
        hs_message text, remedy;

        if (fmin(one.least_m.x, then.least_m.x) > opening->x_m ||
            fmax(one.most_m.x, then.most_m.x) < opening->x_m)
            continue;
        if (hs_has(opening->width_m)) {
            text = HS_SAY(room_opening_width, width_m, opening->width_m);
            remedy =
                HS_SAY(room_remedy_opening_width, at->asking->near_ratio * opening->width_m);
            text.name[0] = remedy.name[0] = opening->name;
            offer(at, s, who - 1, width_m, opening->width_m, text, remedy);
        }
        if (hs_has(opening->height_m)) {
            text = HS_SAY(room_opening_height, height_m, opening->height_m);
            remedy =
                HS_SAY(room_remedy_opening_height, at->asking->near_ratio * opening->height_m);
            text.name[0] = remedy.name[0] = opening->name;
            offer(at, s, who - 1, height_m, opening->height_m, text, remedy);
        }
    }
}

/* An obstacle and a box that share a piece of the way must not share a height. A load may touch what it stands on. */
static void
ask_obstacle(const search *at, int s, const hs_obstacle *thing)
{
    const hs_run *run = at->asking->run;
    hs_outline load = outline_of(run, s, 0);
    double inside_m = fmin(load.most_m.z - thing->z_m[0], thing->z_m[1] - load.least_m.z);
    bool is_overhead = thing->z_m[0] + thing->z_m[1] > load.least_m.z + load.most_m.z;
    hs_message text, remedy;

    if (load.most_m.x <= thing->x_m[0] || load.least_m.x >= thing->x_m[1])
        return;
    if (inside_m > TOUCH_m) {
        hs_finding candidate = *at->start;

        text = HS_SAY(room_obstacle, inside_m);
        remedy = is_overhead ? HS_SAY(room_remedy_below, inside_m)
                             : HS_SAY(room_remedy_above, inside_m);
        text.name[0] = remedy.name[0] = thing->name;
        hs_finding_beyond(&candidate, text);
        candidate.remedy = remedy;
        hs_finding_at(&candidate, run, s, -1);
        if (at->worst->status == HS_STATUS_NONE || hs_finding_worse(&candidate, at->worst))
            *at->worst = candidate;
        return;
    }
    /* Free of it: said once, so that the check has been asked. */
    if (at->worst->status == HS_STATUS_NONE) {
        at->worst->status = HS_STATUS_WITHIN;
        at->worst->why = HS_WHY_COMPUTED;
        at->worst->text = HS_SAY(room_obstacle_free, -inside_m);
        at->worst->text.name[0] = thing->name;
        hs_finding_at(at->worst, run, s, -1);
    }
}

/* Bearers walk into what stands higher than a foot is lifted. */
static void
ask_bearer_obstacle(const search *at, int s, const hs_obstacle *thing)
{
    const hs_run *run = at->asking->run;

    if (run->stations[s].place.move != HS_MOVE_CARRY)
        return;
    for (int b = 0; b < run->setup->n_bearers; b++) {
        const hs_bearer_place *place = &run->stations[s].place.bearers[b];
        hs_outline one = hs_outline_bearer(run->setup, &run->stations[s].place, b);
        hs_finding candidate = *at->start;

        if (place->feet_m.x <= thing->x_m[0] || place->feet_m.x >= thing->x_m[1] ||
            thing->z_m[1] <= place->floor_z_m + TOUCH_m || thing->z_m[0] >= one.most_m.z)
            continue;
        hs_finding_beyond(&candidate, HS_SAY(room_obstacle_bearer));
        candidate.text.name[0] = thing->name;
        candidate.remedy = HS_SAY(room_remedy_clear);
        candidate.remedy.name[0] = thing->name;
        hs_finding_at(&candidate, run, s, b);
        if (at->worst->status == HS_STATUS_NONE || hs_finding_worse(&candidate, at->worst))
            *at->worst = candidate;
    }
}

/* The load as carried, at the option's heading, round the corner. */
static void
ask_corner(const search *at, int s)
{
    const hs_site *site = &at->asking->task->site;
    hs_outline load = outline_of(at->asking->run, s, 0);
    double long_m = load.most_m.x - load.least_m.x, wide_m = load.most_m.y - load.least_m.y;
    double room_m = hs_corner_longest_m(site->corner_in_m, site->corner_out_m, wide_m);
    double least_m = fmin(site->corner_in_m, site->corner_out_m);

    if (at->asking->run->stations[s].place.move != HS_MOVE_CARRY)
        return;
    if (!(room_m > 0.0)) {
        offer(at, s, -1, wide_m, least_m, HS_SAY(room_corner_wide, wide_m, least_m),
              HS_SAY(room_remedy_corner_wide, at->asking->near_ratio * least_m));
        return;
    }
    offer(at, s, -1, long_m, room_m, HS_SAY(room_corner, long_m, wide_m, room_m),
          HS_SAY(room_remedy_corner, at->asking->near_ratio * room_m));
}

/* What a single bearer sweeps who turns on the spot with the load, where the way has a width or a corner; it decides nothing, because
 * the file names no place where somebody turns. */
static void
write_turning(const hs_asking *asking, hs_finding *finding)
{
    const hs_run *run = asking->run;
    double front_m = 0.0, wide_m = 0.0, back_m = 0.0;

    if (run->setup->n_bearers != 1 ||
        !(asking->task->site.width_m > 0.0 || asking->task->site.corner_in_m > 0.0))
        return;
    for (int s = 0; s < run->n_stations; s++) {
        hs_outline load = outline_of(run, s, 0), body = outline_of(run, s, 1);
        double ahead = cos(run->setup->bearers[0].facing_rad) > 0.0 ? 1.0 : -1.0;
        double feet_m = run->stations[s].place.bearers[0].feet_m.x;
        double here_m = ahead * ((ahead > 0.0 ? load.most_m.x : load.least_m.x) - feet_m);

        if (run->stations[s].place.move != HS_MOVE_CARRY ||
            !(hs_turn_reach_m(here_m, load.most_m.y - load.least_m.y) >
              hs_turn_reach_m(front_m, wide_m)))
            continue;
        front_m = here_m;
        wide_m = load.most_m.y - load.least_m.y;
        back_m = ahead * (feet_m - (ahead > 0.0 ? body.least_m.x : body.most_m.x));
    }
    if (!(front_m > 0.0))
        return;
    HS_WORK(&finding->working, room_turn, hs_turn_reach_m(front_m, wide_m), "m",
            {"front", front_m, "m"}, {"w", wide_m, "m"});
    HS_WORK(&finding->working, room_circle,
            2.0 * fmax(hs_turn_reach_m(front_m, wide_m), back_m), "m",
            {"R", hs_turn_reach_m(front_m, wide_m), "m"}, {"back", back_m, "m"});
}

void
hs_check_route_clearance(const hs_asking *asking, hs_finding *finding)
{
    const hs_site *site = &asking->task->site;
    hs_finding start = *finding;
    search at = {asking, finding, &start};

    start.source = finding->source = HS_SRC_site_geometry;
    for (int s = 0; s < asking->run->n_stations; s++) {
        ask_width(&at, s);
        ask_headroom(&at, s);
        for (int i = 0; i < site->n_openings; i++)
            ask_opening(&at, s, &site->openings[i]);
        if (hs_has(site->corner_in_m) && hs_has(site->corner_out_m))
            ask_corner(&at, s);
        for (int i = 0; i < site->n_obstacles; i++) {
            ask_obstacle(&at, s, &site->obstacles[i]);
            ask_bearer_obstacle(&at, s, &site->obstacles[i]);
        }
    }
    if (hs_has(finding->ratio))
        HS_WORK(&finding->working, room_ratio, finding->ratio, "",
                {"needed", finding->value, "m"}, {"room", finding->limit, "m"});
    if (finding->status != HS_STATUS_NONE && !asking->is_live)
        write_turning(asking, finding);
}

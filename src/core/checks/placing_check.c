/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  is there time to bring the load onto its pins, studs or rails?
 * Answer:    hs_check_placing(): window, free turn and seconds for each `precise` point, against the leg's own time.
 * Not here:  whether hands and joints can hold it there (body).
 *
 * Nobody has published a rate for placing heavy loads in suits. The rate here is an assumption, so the check is near at most. */
#include "check.h"
#include "geometry.h"
#include "outline.h"
#include "units.h"

static double
way_m(const hs_run *run, int point)
{
    const hs_point *points = run->setup->task->route.points;

    return hypot(points[point].x_m - points[point - 1].x_m,
                 points[point].z_m - points[point - 1].z_m);
}

static int
arrival(const hs_run *run, int point)
{
    for (int s = run->n_stations - 1; s >= 0; s--)
        if (run->stations[s].place.point == point && !run->stations[s].place.in_hold)
            return s;
    return 0;
}

static void
judge(const hs_asking *asking, int point, hs_finding *finding)
{
    const hs_run *run = asking->run;
    const hs_point *at = &asking->task->route.points[point];
    const hs_motion *motion = &run->setup->motions[0];
    hs_vec3 size_m = hs_outline_size_m(run->setup->load);
    double radius_m = fmax(hypot(size_m.x, size_m.y) / 2.0, at->tolerance_m);
    double window_m = 2.0 * at->tolerance_m, bits, needed_s, given_s;
    double n = fmax(hs_or(at->meet, 1.0), 1.0);

    finding->source = HS_SRC_site_placing_rate;
    finding->confidence = HS_CONF_COMMON_PRACTICE;
    hs_finding_at(finding, run, arrival(run, point), -1);
    if (!(at->tolerance_m > 0.0)) {
        hs_finding_scope(finding, HS_ABSENT, HS_SAY(placing_no_tolerance));
        return;
    }
    bits = hs_placing_index_bit(way_m(run, point), window_m);
    needed_s = n * bits / HS_PLACING_bit_s;
    given_s = motion->leave_s[point] - motion->leave_s[point - 1];
    hs_finding_judge(finding, needed_s, given_s, asking->near_ratio);
    if (finding->status == HS_STATUS_BEYOND)
        finding->status = HS_STATUS_NEAR;
    finding->text = HS_SAY(placing_time, at->tolerance_m,
                           hs_placing_turn_rad(at->tolerance_m, radius_m) * HS_DEG_PER_RAD,
                           needed_s, given_s);
    if (finding->status != HS_STATUS_WITHIN)
        finding->remedy = HS_SAY(placing_remedy, needed_s / (0.999 * asking->near_ratio));
    HS_WORK(&finding->working, placing_index, bits, "bit", {"D", way_m(run, point), "m"},
            {"W", window_m, "m"});
    HS_WORK(&finding->working, placing_time, needed_s, "s", {"n", n, ""}, {"ID", bits, "bit"},
            {"rate", HS_PLACING_bit_s, "bit/s"});
}

void
hs_check_placing(const hs_asking *asking, hs_finding *finding)
{
    const hs_route *route = &asking->task->route;
    hs_finding worst = *finding;

    for (int i = 1; i < route->n_points; i++) {
        hs_finding candidate = *finding;

        if (route->points[i].precise != HS_YES)
            continue;
        judge(asking, i, &candidate);
        if (worst.status == HS_STATUS_NONE || hs_finding_worse(&candidate, &worst))
            worst = candidate;
    }
    *finding = worst;
}

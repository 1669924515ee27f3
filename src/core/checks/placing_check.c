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

/* Farthest corner of the load from the middle of the hands, in the side view: there a tilt shows most. */
static double
tilt_arm_m(const hs_run *run, int s)
{
    const hs_setup *setup = run->setup;
    hs_outline load = hs_outline_load(setup, &run->stations[s].place);
    hs_vec3 hands_m = {0, 0, 0};
    double x_m, z_m;

    for (int i = 0; i < setup->n_used; i++)
        hands_m = hs_vec3_add(
            hands_m, hs_vec3_scale(run->stations[s].place.grip_m[i], 1.0 / setup->n_used));
    x_m = fmax(load.most_m.x - hands_m.x, hands_m.x - load.least_m.x);
    z_m = fmax(load.most_m.z - hands_m.z, hands_m.z - load.least_m.z);
    return hypot(x_m, z_m);
}

/* The nearest spot at the height of the load's underside that the best placed eye sees over the load. */
static void
write_view(const hs_run *run, int s, hs_working *working)
{
    const hs_place *place = &run->stations[s].place;
    hs_outline load = hs_outline_load(run->setup, place);
    double best_m = INFINITY, d_m = 0.0, eye_m = 0.0, under_m = 0.0, top_m = 0.0;

    for (int b = 0; b < run->setup->n_bearers; b++) {
        const hs_bearer_place *at = &place->bearers[b];
        double ahead = cos(run->setup->bearers[b].facing_rad);
        double edge_m = fmax(ahead * (load.most_m.x - at->feet_m.x),
                             ahead * (load.least_m.x - at->feet_m.x));
        double seen_m =
            hs_sight_object_m(run->persons[b].eye_height_m, edge_m,
                              load.most_m.z - at->floor_z_m, load.least_m.z - at->floor_z_m);

        if (fabs(ahead) < 0.5 || !(edge_m > 0.0) || !(seen_m < best_m))
            continue;
        best_m = seen_m;
        d_m = edge_m;
        eye_m = run->persons[b].eye_height_m;
        under_m = load.least_m.z - at->floor_z_m;
        top_m = load.most_m.z - at->floor_z_m;
    }
    if (isfinite(best_m))
        HS_WORK(working, placing_view, best_m, "m", {"d", d_m, "m"}, {"E", eye_m, "m"},
                {"s", under_m, "m"}, {"t", top_m, "m"});
}

/* Force level and across that shifts the load by its play in the time of one try, hanging; and where it rests already. */
static void
write_side(const hs_asking *asking, const hs_point *at, double try_s, hs_working *working)
{
    double mass_kg = asking->load->mass_kg;

    HS_WORK(working, placing_nudge,
            mass_kg * HS_PLACING_PEAK * at->tolerance_m / (try_s * try_s), "N",
            {"m", mass_kg, "kg"}, {"k", HS_PLACING_PEAK, ""}, {"c", at->tolerance_m, "m"},
            {"t", try_s, "s"});
    if (at->slide_friction > 0.0)
        HS_WORK(working, placing_side, at->slide_friction * mass_kg * HS_GRAVITY_m_s2, "N",
                {"mu", at->slide_friction, ""}, {"m", mass_kg, "kg"},
                {"g", HS_GRAVITY_m_s2, "m/s2"});
}

/* What else the hands and eyes meet at this place; it decides nothing. */
static void
write_beside(const hs_asking *asking, int point, int s, double arm_m, hs_working *working)
{
    const hs_point *at = &asking->task->route.points[point];
    double window_m = 2.0 * at->tolerance_m, d_m = way_m(asking->run, point);

    HS_WORK(working, placing_pitch,
            hs_placing_turn_rad(at->tolerance_m, arm_m) * HS_DEG_PER_RAD, "deg",
            {"c", at->tolerance_m, "m"}, {"r", arm_m, "m"});
    if (d_m > window_m)
        HS_WORK(working, placing_first, hs_placing_first_index_bit(d_m, window_m), "bit",
                {"D", d_m, "m"}, {"W", window_m, "m"});
    if (d_m > 0.0)
        write_side(asking, at, hs_placing_index_bit(d_m, window_m) / HS_PLACING_bit_s, working);
    write_view(asking->run, s, working);
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
    double n = fmax(hs_or(at->meet, 1.0), 1.0), arm_m;
    int s = arrival(run, point);

    finding->source = HS_SRC_site_placing_rate;
    finding->confidence = HS_CONF_COMMON_PRACTICE;
    hs_finding_at(finding, run, s, -1);
    if (!(at->tolerance_m > 0.0)) {
        hs_finding_scope(finding, HS_ABSENT, HS_SAY(placing_no_tolerance));
        return;
    }
    arm_m = fmax(tilt_arm_m(run, s), at->tolerance_m);
    bits = hs_placing_index_bit(way_m(run, point), window_m);
    needed_s = n * bits / HS_PLACING_bit_s;
    given_s = motion->leave_s[point] - motion->leave_s[point - 1];
    hs_finding_judge(finding, needed_s, given_s, asking->near_ratio);
    if (finding->status == HS_STATUS_BEYOND)
        finding->status = HS_STATUS_NEAR;
    finding->text =
        HS_SAY(placing_time, at->tolerance_m,
               hs_placing_turn_rad(at->tolerance_m, radius_m) * HS_DEG_PER_RAD, needed_s,
               given_s, hs_placing_turn_rad(at->tolerance_m, arm_m) * HS_DEG_PER_RAD);
    if (finding->status != HS_STATUS_WITHIN)
        finding->remedy = HS_SAY(placing_remedy, needed_s / (0.999 * asking->near_ratio));
    HS_WORK(&finding->working, placing_index, bits, "bit", {"D", way_m(run, point), "m"},
            {"W", window_m, "m"});
    HS_WORK(&finding->working, placing_time, needed_s, "s", {"n", n, ""}, {"ID", bits, "bit"},
            {"rate", HS_PLACING_bit_s, "bit/s"});
    if (!asking->is_live)
        write_beside(asking, point, s, arm_m, &finding->working);
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

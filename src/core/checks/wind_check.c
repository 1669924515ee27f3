/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  which wind turns the balance of whoever holds this load?
 * Answer:    hs_check_site_wind(): force on the largest upright face, moved ground point against the base of support, and the
 *            wind at which that point leaves it.
 * Not here:  balance without wind (balance_checks.c).
 *
 * The wind may blow from either side, square to the face. Each bearer takes an equal part of its force and moment; nobody
 * leans against it, because the next gust may come from the other side. */
#include "check.h"
#include "geometry.h"
#include "outline.h"
#include "units.h"

#define STEPS  60  /* halvings of the force that is looked for (numerics) */
#define MOST_N 1e5 /* more than any wind puts on a load that is carried (numerics) */
#define LEAST_N                                                                                \
    1.0           /* a balance that less than this turns has nothing left for wind (numerics) */
#define JUST 1e-6 /* a place this close to the worst so far is looked at in full (numerics) */
#define ROOM 0.999 /* a remedy lands this side of its threshold (numerics) */

typedef struct {
    double area_m2;
    hs_vec2 normal; /* world plan */
} face;

/* The larger of the two upright faces of the load's outline, turned by the heading. */
static face
largest_face(const hs_setup *setup)
{
    hs_vec3 size_m = hs_outline_size_m(setup->load);
    double side_m2 = size_m.x * size_m.z, front_m2 = size_m.y * size_m.z,
           h = setup->heading_rad;

    if (front_m2 > side_m2)
        return (face){front_m2, {cos(h), sin(h)}};
    return (face){side_m2, {-sin(h), cos(h)}};
}

typedef struct {
    const hs_run *run;
    int s, b;
    face face;
    double lever_m; /* middle of the face above the floor under the feet */
    hs_vec2 hull[HS_MAX_BASE];
    int n_hull;
} wind_scene;

/* Scale of the base at which the ground point leaves it, with a wind force on the face, signed along its normal. */
static double
ratio_at(const wind_scene *at, double force_N)
{
    const hs_bearer_sample *sample = &at->run->samples[at->s].bearers[at->b];
    const hs_bearer_state *state = &at->run->stations[at->s].bearers[at->b];
    double part_Nm = force_N * at->lever_m / at->run->setup->n_bearers;
    double shift_m = part_Nm / sample->ground_force_N;
    double facing = at->run->setup->bearers[at->b].facing_rad, margin_m, ratio;
    double ahead = cos(facing) * at->face.normal.x + sin(facing) * at->face.normal.y;
    double left = -sin(facing) * at->face.normal.x + cos(facing) * at->face.normal.y;
    bool behind;
    hs_vec2 point = {state->body.zmp_m + shift_m * ahead,
                     state->input.side_m * sample->hand_force_N / sample->ground_force_N +
                         shift_m * left};

    hs_balance_judge(&at->run->persons[at->b], at->hull, at->n_hull, point, &margin_m, &ratio,
                     &behind);
    return behind ? fmax(ratio, 1.0 + HS_SAME_PLACE_m) : ratio;
}

/* Least force, either way, at which the point is out; 0 when it is out already. */
static double
turning_N(const wind_scene *at)
{
    double least_N = INFINITY;

    for (int sign = -1; sign <= 1; sign += 2) {
        double low_N = 0.0, high_N = 1.0;

        while (high_N < MOST_N && !(ratio_at(at, sign * high_N) > 1.0))
            high_N *= 2.0;
        for (int i = 0; i < STEPS && high_N - low_N > 1e-9 * high_N; i++) {
            double middle_N = (low_N + high_N) / 2.0;

            if (ratio_at(at, sign * middle_N) > 1.0)
                high_N = middle_N;
            else
                low_N = middle_N;
        }
        least_N = fmin(least_N, (low_N + high_N) / 2.0);
    }
    return ratio_at(at, 0.0) > 1.0 ? 0.0 : least_N;
}

/* Whether the wind's part of the base could be larger than `ratio` here: the point is out in still air, or at the force that
 * would make it so. Two figures instead of a search. */
static bool
may_be_worse(const wind_scene *at, double force_N, double ratio)
{
    return !(ratio > 0.0) || ratio_at(at, 0.0) > 1.0 || ratio_at(at, force_N / ratio) > 1.0 ||
           ratio_at(at, -force_N / ratio) > 1.0;
}

static bool
make_scene(const hs_asking *asking, int s, int b, wind_scene *ret_scene)
{
    const hs_run *run = asking->run;
    const hs_bearer_state *state = &run->stations[s].bearers[b];
    const hs_place *place = &run->stations[s].place;
    hs_outline load = hs_outline_load(run->setup, place);

    if (!state->has_body || !state->body.is_found)
        return false;
    *ret_scene = (wind_scene){.run = run, .s = s, .b = b, .face = largest_face(run->setup)};
    ret_scene->lever_m = (load.least_m.z + load.most_m.z) / 2.0 - place->bearers[b].floor_z_m;
    ret_scene->n_hull =
        hs_base_hull(&run->persons[b], &state->input.suit, state->input.stance,
                     state->input.base_ahead_m, state->input.base_behind_m, ret_scene->hull);
    return true;
}

static void
judge(const hs_asking *asking, const wind_scene *at, hs_finding *finding)
{
    double wind_m_s = asking->task->site.wind_m_s, area_m2 = at->face.area_m2;
    double force_N = hs_wind_N(wind_m_s, area_m2), turning = turning_N(at);
    double least_m_s = hs_wind_speed_m_s(turning, area_m2);

    finding->source = HS_SRC_site_wind_drag;
    finding->confidence = HS_CONF_SEEN;
    if (!(turning > LEAST_N)) {
        hs_finding_beyond(finding, HS_SAY(wind_out_already, force_N));
        finding->limit = HS_ABSENT;
    } else {
        hs_finding_judge(finding, force_N, turning, asking->near_ratio);
        finding->text = HS_SAY(wind_force, force_N, force_N * at->lever_m, wind_m_s, least_m_s);
        if (finding->status != HS_STATUS_WITHIN)
            finding->remedy = HS_SAY(wind_remedy, least_m_s * sqrt(ROOM * asking->near_ratio));
    }
    HS_WORK(&finding->working, wind_force, force_N, "N", {"rho", HS_AIR_kg_m3, "kg/m3"},
            {"v", wind_m_s, "m/s"}, {"Cd", HS_WIND_DRAG, ""}, {"A", area_m2, "m2"});
    HS_WORK(&finding->working, wind_moment, force_N * at->lever_m, "Nm", {"F", force_N, "N"},
            {"h", at->lever_m, "m"});
    HS_WORK(&finding->working, wind_shift,
            force_N * at->lever_m / at->run->setup->n_bearers /
                at->run->samples[at->s].bearers[at->b].ground_force_N,
            "m", {"M", force_N * at->lever_m, "Nm"}, {"n", at->run->setup->n_bearers, ""},
            {"G", at->run->samples[at->s].bearers[at->b].ground_force_N, "N"});
}

void
hs_check_site_wind(const hs_asking *asking, hs_finding *finding)
{
    const hs_run *run = asking->run;
    hs_finding start = *finding;
    wind_scene worst_scene;
    bool is_any = false;

    if (!hs_has(asking->task->site.wind_m_s) || !(largest_face(run->setup).area_m2 > 0.0))
        return;
    for (int s = 0; s < run->n_stations; s++)
        for (int b = 0; b < run->setup->n_bearers; b++) {
            hs_finding candidate = start;
            wind_scene at;

            if (!make_scene(asking, s, b, &at) ||
                (is_any && hs_has(finding->ratio) &&
                 !may_be_worse(&at, hs_wind_N(asking->task->site.wind_m_s, at.face.area_m2),
                               finding->ratio * (1.0 - JUST))))
                continue;
            candidate.working.arena = NULL;
            judge(asking, &at, &candidate);
            if (is_any && !hs_finding_worse(&candidate, finding))
                continue;
            *finding = candidate;
            worst_scene = at;
            is_any = true;
        }
    if (!is_any)
        return;
    *finding = start;
    judge(asking, &worst_scene, finding);
    hs_finding_at(finding, run, worst_scene.s, worst_scene.b);
}

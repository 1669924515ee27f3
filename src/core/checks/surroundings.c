/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  does the floor bear it, and what does the air's temperature ask?
 * Answer:    hs_check_floor_load() by sole pressure and by kilograms; hs_check_site_heat() as a note.
 * Not here:  friction (balance_checks.c), room (clearance_check.c), sight, wind. */
#include "check.h"
#include "units.h"

#define ROOM 0.999 /* a remedy lands this side of its threshold (numerics) */
#define SPREAD_m2                                                                              \
    1.0 /* a spread rating is force over area: the square metre that one person takes up; common practice, no source */

/* floor.load */

/* One sole: of the suit where it has its own, else the wearer's shoe from heel to toe. */
static double
sole_m2(const hs_run *run, int b)
{
    const hs_suit *suit = run->setup->bearers[b].suit;
    const hs_person *person = &run->persons[b];

    if (suit != NULL && suit->kind == HS_SUIT_POWERED && suit->foot_width_m > 0.0 &&
        hs_or(suit->foot_heel_m, 0.0) + hs_or(suit->foot_toe_m, 0.0) > 0.0)
        return (hs_or(suit->foot_heel_m, 0.0) + hs_or(suit->foot_toe_m, 0.0)) *
               suit->foot_width_m;
    return (person->heel_m + person->toe_m) * person->sole_width_m;
}

static void
judge_pressure(const hs_asking *asking, int s, int b, hs_finding *finding)
{
    double force_N = asking->run->samples[s].bearers[b].ground_force_N;
    double sole = sole_m2(asking->run, b), limit_kPa = asking->task->site.rating_kPa;
    double part =
        asking->task->site.bearing_fraction > 0.0 ? asking->task->site.bearing_fraction : 1.0;
    double pressure_kPa = force_N / (sole * part) / HS_PA_PER_kPa;

    hs_finding_judge(finding, pressure_kPa, limit_kPa, asking->near_ratio);
    finding->text = HS_SAY(floor_pressure, pressure_kPa, limit_kPa, force_N);
    if (finding->status != HS_STATUS_WITHIN)
        finding->remedy = HS_SAY(
            floor_remedy_board,
            sqrt(force_N / (ROOM * asking->near_ratio * limit_kPa * HS_PA_PER_kPa * part)));
    if (part < 1.0)
        HS_WORK(&finding->working, floor_grating, pressure_kPa, "kPa", {"F", force_N, "N"},
                {"A", sole, "m2"}, {"b", part, ""});
    else
        HS_WORK(&finding->working, floor_pressure, pressure_kPa, "kPa", {"F", force_N, "N"},
                {"A", sole, "m2"});
}

static void
judge_mass(const hs_asking *asking, int s, int b, hs_finding *finding)
{
    const hs_bearer_sample *sample = &asking->run->samples[s].bearers[b];
    double limit_kg = asking->task->site.rating_kg,
           mass_kg = sample->ground_force_N / HS_GRAVITY_m_s2;
    double own_kg = (sample->ground_force_N - sample->hand_force_N) / HS_GRAVITY_m_s2;
    double factor = asking->run->stations[s].place.bearers[b].walking_factor;
    double left_kg = (ROOM * asking->near_ratio * limit_kg - own_kg) / factor;

    finding->unit = "kg";
    hs_finding_judge(finding, mass_kg, limit_kg, asking->near_ratio);
    finding->text = HS_SAY(floor_mass, mass_kg, limit_kg, own_kg);
    if (finding->status != HS_STATUS_WITHIN)
        finding->remedy = left_kg > 0.0 ? HS_SAY(floor_remedy_mass, left_kg)
                                        : HS_SAY(floor_remedy_way, own_kg);
    HS_WORK(&finding->working, floor_mass, mass_kg, "kg", {"F", sample->ground_force_N, "N"},
            {"g", HS_GRAVITY_m_s2, "m/s2"});
}

/* One bearer with all that is carried, spread over the square metre under it. */
static void
judge_spread(const hs_asking *asking, int s, int b, hs_finding *finding)
{
    double force_N = asking->run->samples[s].bearers[b].ground_force_N;
    double limit_kPa = asking->task->site.rating_spread_kPa;
    double pressure_kPa = force_N / SPREAD_m2 / HS_PA_PER_kPa;

    hs_finding_judge(finding, pressure_kPa, limit_kPa, asking->near_ratio);
    finding->text = HS_SAY(floor_spread, pressure_kPa, limit_kPa, force_N);
    if (finding->status != HS_STATUS_WITHIN)
        finding->remedy = HS_SAY(floor_remedy_spread, force_N / (ROOM * asking->near_ratio *
                                                                 limit_kPa * HS_PA_PER_kPa));
    HS_WORK(&finding->working, floor_spread, pressure_kPa, "kPa", {"F", force_N, "N"},
            {"A", SPREAD_m2, "m2"});
}

static void
keep_worse(const hs_asking *asking, int s, int b, hs_finding *candidate, hs_finding *worst)
{
    hs_finding_at(candidate, asking->run, s, b);
    if (worst->status == HS_STATUS_NONE || hs_finding_worse(candidate, worst))
        *worst = *candidate;
}

void
hs_check_floor_load(const hs_asking *asking, hs_finding *finding)
{
    const hs_site *site = &asking->task->site;
    const hs_run *run = asking->run;
    hs_finding start = *finding;

    if (!hs_has(site->rating_kPa) && !hs_has(site->rating_kg) &&
        !(site->rating_spread_kPa > 0.0))
        return;
    start.source = HS_SRC_site_floor_rating;
    for (int s = 0; s < run->n_stations; s++)
        for (int b = 0; b < run->setup->n_bearers; b++) {
            hs_finding pressure = start, mass = start, spread = start;

            if (!hs_has(run->samples[s].bearers[b].ground_force_N))
                continue;
            if (hs_has(site->rating_kPa)) {
                judge_pressure(asking, s, b, &pressure);
                keep_worse(asking, s, b, &pressure, finding);
            }
            if (hs_has(site->rating_kg)) {
                judge_mass(asking, s, b, &mass);
                keep_worse(asking, s, b, &mass, finding);
            }
            if (site->rating_spread_kPa > 0.0) {
                judge_spread(asking, s, b, &spread);
                keep_worse(asking, s, b, &spread, finding);
            }
        }
}

/* site.heat */

#define METABOLIC_W                                                                            \
    300.0 /* moderate work, the example figure of HS_SRC_site_heat; day.energy has this task's own */
#define COLD_C 10.0 /* below it hands and grip are asked about: common practice, no source */

void
hs_check_site_heat(const hs_asking *asking, hs_finding *finding)
{
    double temperature_C = asking->task->site.temperature_C;
    double rel_C = 56.7 - 11.5 * log10(METABOLIC_W), ral_C = 59.9 - 14.1 * log10(METABOLIC_W);

    if (!hs_has(temperature_C))
        return;
    finding->source = HS_SRC_site_heat;
    finding->confidence = HS_CONF_SEEN;
    if (temperature_C < COLD_C) {
        hs_finding_scope(finding, temperature_C, HS_SAY(heat_cold, temperature_C));
        return;
    }
    hs_finding_scope(finding, temperature_C,
                     HS_SAY(heat_note, temperature_C, rel_C, ral_C, METABOLIC_W));
    HS_WORK(&finding->working, heat_rel, rel_C, "C", {"M", METABOLIC_W, "W"});
    HS_WORK(&finding->working, heat_ral, ral_C, "C", {"M", METABOLIC_W, "W"});
}

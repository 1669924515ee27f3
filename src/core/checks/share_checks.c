/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  is anyone's share too large, does the load tip, what if one lets go, do scales and parts agree?
 * Answer:    the checks share, load.polygon, loss.bearer, load.weighing.
 * Not here:  the shares themselves (forces/), the team rules' figures (team.c). */
#include "check.h"
#include "grip.h"
#include "legs.h"
#include "letgo.h"
#include "team.h"
#include "units.h"

#define SAME_PERSON_m                                                                          \
    0.05 /* hands nearer to each other along the way stand side by side (numerics) */
#define COUPLE_Nm 10.0 /* default of policy.couple_Nm: common practice, no source */
#define MARGIN                                                                                 \
    0.999 /* a remedy's figure is taken this much inside, so that applied it is within */

static const char *
bearer_name(const hs_asking *asking, int b)
{
    const char *name = asking->run->setup->bearers[b].worker->name;

    return name != NULL ? name : asking->run->setup->option->bearers[b].id;
}

static bool
has_rule(const hs_asking *asking)
{
    return asking->task->policy.team_rule > HS_TEAM_NONE;
}

static const char *
rule_of(const hs_asking *asking)
{
    return hs_team_rule_id(asking->task->policy.team_rule);
}

static bool
any_shares(const hs_run *run)
{
    for (int s = 0; s < run->n_stations; s++)
        if (run->stations[s].has_shares)
            return true;
    return false;
}

/* The greatest share and where: what is shown when no rule judges it. */
static void
greatest_share(const hs_run *run, int *ret_station, int *ret_bearer)
{
    double most_N = -1.0;

    for (int s = 0; s < run->n_stations; s++)
        for (int b = 0; run->stations[s].has_shares && b < run->setup->n_bearers; b++)
            if (run->samples[s].bearers[b].share_N > most_N) {
                most_N = run->samples[s].bearers[b].share_N;
                *ret_station = s;
                *ret_bearer = b;
            }
}

/* Hands of arms that hang, over the floor. */
static double
hanging_m(const hs_person *person)
{
    return person->ankle_height_m + person->shank_m + person->thigh_m + person->trunk_m -
           person->upper_arm_m - person->forearm_m;
}

/* Two bearers with hanging arms: how far their statures alone tilt the load, and what goes to the lower one by it (negative where
 * the load hangs below the hands). The file's own pitch is what is judged. */
static void
record_statures(const hs_asking *asking, int s, hs_finding *finding)
{
    const hs_run *run = asking->run;
    const hs_station *at = &run->stations[s];
    double middle_m[2][2] = {{0.0}}, apart_m, over_m, differ_m, weight_N;
    int count[2] = {0, 0};

    if (run->setup->n_bearers != 2 || asking->is_live || !hs_has(asking->load->cg_m.z))
        return;
    for (int i = 0; i < run->setup->n_used; i++) {
        const hs_grip *grip = &asking->task->load.grips[run->setup->used[i]];
        int b = run->setup->used_by[i];

        middle_m[b][0] += at->place.grip_m[i].x;
        middle_m[b][1] += grip->at_m.z;
        count[b]++;
    }
    apart_m = fabs(middle_m[0][0] / count[0] - middle_m[1][0] / count[1]);
    over_m =
        asking->load->cg_m.z - (middle_m[0][1] / count[0] + middle_m[1][1] / count[1]) / 2.0;
    differ_m = fabs(hanging_m(&run->persons[0]) - hanging_m(&run->persons[1]));
    weight_N = asking->load->mass_kg * HS_GRAVITY_m_s2;
    if (!(apart_m > SAME_PERSON_m) || !(differ_m > HS_SAME_PLACE_m))
        return;
    HS_WORK(&finding->working, share_statures, atan(differ_m / apart_m) * HS_DEG_PER_RAD, "deg",
            {"dh", differ_m, "m"}, {"L", apart_m, "m"});
    HS_WORK(&finding->working, share_to_lower,
            weight_N * over_m * differ_m / (apart_m * apart_m), "N", {"W", weight_N, "N"},
            {"c", over_m, "m"}, {"dh", differ_m, "m"}, {"L", apart_m, "m"});
}

static void
record_share(const hs_asking *asking, int s, hs_finding *finding)
{
    const hs_place *place = &asking->run->stations[s].place;

    HS_WORK(&finding->working, shares_total, asking->run->stations[s].problem.total_N, "N",
            {"h", place->held_up, ""}, {"m", asking->load->mass_kg, "kg"},
            {"a_z", place->cg_acc_m_s2.z, "m/s2"});
    record_statures(asking, s, finding);
}

static void
say_scope(const hs_asking *asking, hs_reason reason, hs_finding *finding)
{
    int s = 0, b = 0;
    double share_N;

    greatest_share(asking->run, &s, &b);
    share_N = asking->run->samples[s].bearers[b].share_N;
    hs_finding_at(finding, asking->run, s, b);
    record_share(asking, s, finding);
    if (reason == HS_REASON_share_no_rule)
        hs_team_work(asking, s, b, &finding->working);
    hs_finding_scope(
        finding, share_N,
        (hs_message){.reason = reason, .number = {share_N}, .name = {bearer_name(asking, b)}});
}

static void
judge_share(const hs_asking *asking, int s, int b, hs_finding *candidate)
{
    double share_N = asking->run->samples[s].bearers[b].share_N, limit_N;
    hs_team_limit limit;

    hs_team_one_person(asking, s, b, &limit);
    candidate->source = limit.source;
    candidate->confidence = limit.confidence;
    hs_finding_at(candidate, asking->run, s, b);
    if (limit.silent != HS_REASON_none) {
        hs_finding_scope(candidate, share_N,
                         (hs_message){.reason = limit.silent,
                                      .number = {share_N},
                                      .name = {bearer_name(asking, b), rule_of(asking)}});
        return;
    }
    limit_N = limit.fraction * limit.one_person_N;
    candidate->text =
        (hs_message){.reason = HS_REASON_share_judged,
                     .number = {share_N, limit_N, limit.fraction, limit.one_person_N},
                     .name = {bearer_name(asking, b), rule_of(asking)}};
    if (!(limit_N > 0.0)) {
        hs_finding_beyond(candidate, candidate->text);
        return;
    }
    hs_finding_judge(candidate, share_N, limit_N, asking->near_ratio);
    if (candidate->status == HS_STATUS_BEYOND || candidate->status == HS_STATUS_NEAR)
        candidate->remedy =
            HS_SAY(share_fix,
                   hs_limit_round_down(asking->load->mass_kg * asking->near_ratio * MARGIN /
                                       candidate->ratio),
                   limit_N);
}

/* The worst unsuited bearer at the worst place by the chosen rule, with its working. */
static void
worst_share(const hs_asking *asking, hs_finding *ret_worst)
{
    const hs_run *run = asking->run;
    int at = 0;

    *ret_worst = (hs_finding){0};
    for (int s = 0; s < run->n_stations; s++)
        for (int b = 0; run->stations[s].has_shares && b < run->setup->n_bearers; b++) {
            hs_finding candidate = hs_finding_start(asking, HS_CHECK_share);

            if (run->setup->bearers[b].suit != NULL)
                continue;
            judge_share(asking, s, b, &candidate);
            if (!hs_finding_worse(&candidate, ret_worst))
                continue;
            *ret_worst = candidate;
            ret_worst->bearer = b;
            at = s;
        }
    record_share(asking, at, ret_worst);
    if (hs_has(ret_worst->limit))
        HS_WORK(&ret_worst->working, share_limit, ret_worst->limit, "N",
                {"f", ret_worst->text.number[2], ""}, {"L1", ret_worst->text.number[3], "N"});
    if (ret_worst->bearer >= 0)
        hs_team_work(asking, at, ret_worst->bearer, &ret_worst->working);
}

void
hs_check_share(const hs_asking *asking, hs_finding *finding)
{
    const hs_run *run = asking->run;
    int n_unsuited = 0;

    if (!any_shares(run)) {
        hs_finding_missing(finding, HS_SAY(share_no_height));
        return;
    }
    for (int b = 0; b < run->setup->n_bearers; b++)
        n_unsuited += run->setup->bearers[b].suit == NULL ? 1 : 0;
    if (run->setup->n_bearers < 2 || n_unsuited == 0)
        say_scope(asking,
                  run->setup->n_bearers < 2 ? HS_REASON_share_single : HS_REASON_share_suited,
                  finding);
    else if (!has_rule(asking))
        say_scope(asking, HS_REASON_share_no_rule, finding);
    else
        worst_share(asking, finding);
}

/* All grips are hooks or straps above the CG: the load hangs and turns until it balances. */
static bool
hangs(const hs_run *run, int s, double *ret_depth_m)
{
    const hs_setup *setup = run->setup;
    const hs_place *place = &run->stations[s].place;
    double total_N = run->stations[s].problem.total_N, height_m = 0.0;

    if (!hs_has(place->cg_m.z) || !(total_N > 0.0))
        return false;
    for (int i = 0; i < setup->n_used; i++) {
        hs_grip_kind kind = setup->task->load.grips[setup->used[i]].kind;

        if ((kind != HS_GRIP_HOOK && kind != HS_GRIP_STRAP) ||
            !(place->grip_m[i].z > place->cg_m.z))
            return false;
        height_m += run->stations[s].shares.up_N[i] / total_N * place->grip_m[i].z;
    }
    *ret_depth_m = height_m - place->cg_m.z;
    return true;
}

static void
say_polygon(const hs_asking *asking, int s, double limit_Nm, hs_finding *finding)
{
    const hs_shares_answer *shares = &asking->run->stations[s].shares;
    double total_N = asking->run->stations[s].problem.total_N, depth_m = 0.0;
    double outside_m = total_N > 0.0 ? shares->couple_Nm / total_N : 0.0;

    hs_finding_at(finding, asking->run, s, -1);
    if (!shares->is_outside) {
        finding->text = HS_SAY(polygon_inside);
    } else if (hangs(asking->run, s, &depth_m)) {
        finding->text =
            HS_SAY(polygon_hangs, hs_grip_hang_rad(outside_m, depth_m) * HS_DEG_PER_RAD,
                   outside_m, depth_m, shares->couple_Nm);
    } else {
        finding->text = HS_SAY(polygon_outside, outside_m, shares->couple_Nm, limit_Nm);
    }
    HS_WORK(&finding->working, polygon_couple, shares->couple_Nm, "Nm", {"F", total_N, "N"},
            {"d", outside_m, "m"});
    hs_finding_judge(finding, shares->couple_Nm, limit_Nm, asking->near_ratio);
    if (finding->text.reason == HS_REASON_polygon_hangs && finding->status == HS_STATUS_BEYOND)
        finding->status = HS_STATUS_NEAR;
    if (finding->status == HS_STATUS_BEYOND || finding->status == HS_STATUS_NEAR)
        finding->remedy =
            HS_SAY(polygon_fix, outside_m - limit_Nm * asking->near_ratio * MARGIN / total_N,
                   shares->couple_Nm);
}

void
hs_check_load_polygon(const hs_asking *asking, hs_finding *finding)
{
    const hs_run *run = asking->run;
    double limit_Nm = hs_or(asking->task->policy.couple_Nm, COUPLE_Nm), most_Nm = -1.0;
    int worst = -1;

    if (!hs_has(asking->task->policy.couple_Nm))
        hs_assume(asking->assumptions, COUPLE_Nm, NULL, HS_SAY(assumed_couple, COUPLE_Nm),
                  "policy.couple_Nm");
    finding->source = HS_SRC_couple_practice;
    finding->confidence = HS_CONF_COMMON_PRACTICE;
    for (int s = 0; s < run->n_stations; s++)
        if (run->stations[s].has_shares && run->stations[s].shares.couple_Nm > most_Nm) {
            most_Nm = run->stations[s].shares.couple_Nm;
            worst = s;
        }
    if (worst < 0) {
        hs_finding_missing(finding, HS_SAY(share_no_height));
        return;
    }
    say_polygon(asking, worst, limit_Nm, finding);
}

/* The sentence names the rule that was chosen. */
static hs_reason
peak_reason(const hs_asking *asking)
{
    switch (asking->task->policy.team_rule) {
    case HS_TEAM_GB:
        return HS_REASON_loss_peak_gb;
    case HS_TEAM_MIL_STD_1472:
        return HS_REASON_loss_peak_mil;
    case HS_TEAM_EN_1005_2:
        return HS_REASON_loss_peak_en;
    case HS_TEAM_MEASURED:
        return HS_REASON_loss_peak_measured;
    case HS_TEAM_NONE:
    default:
        return HS_REASON_loss_peak;
    }
}

static void
judge_peak(const hs_asking *asking,
           int s,
           int gone,
           int b,
           const hs_letgo_answer *answer,
           hs_finding *candidate)
{
    hs_team_limit limit = {.silent = HS_REASON_loss_no_rule};
    double peak_N = answer->peak_N[b];

    if (has_rule(asking) && asking->run->setup->bearers[b].suit == NULL)
        hs_team_one_person(asking, s, b, &limit);
    candidate->source = HS_SRC_sudden_load;
    hs_finding_at(candidate, asking->run, s, b);
    candidate->text =
        (hs_message){.reason = peak_reason(asking),
                     .number = {peak_N, answer->old_N[b], answer->new_N[b], limit.one_person_N},
                     .name = {bearer_name(asking, b), bearer_name(asking, gone)}};
    if (limit.silent != HS_REASON_none || !hs_has(limit.one_person_N)) {
        candidate->text.reason = HS_REASON_loss_no_rule;
        hs_finding_scope(candidate, peak_N, candidate->text);
        return;
    }
    candidate->source = limit.source;
    candidate->confidence = limit.confidence;
    if (!(limit.one_person_N > 0.0)) {
        hs_finding_beyond(candidate, candidate->text);
        return;
    }
    hs_finding_judge(candidate, peak_N, limit.one_person_N, asking->near_ratio);
    if (candidate->status == HS_STATUS_BEYOND || candidate->status == HS_STATUS_NEAR)
        candidate->remedy =
            HS_SAY(share_fix,
                   hs_limit_round_down(asking->load->mass_kg * asking->near_ratio * MARGIN /
                                       candidate->ratio),
                   limit.one_person_N);
}

static void
record_peak(const hs_finding *candidate, hs_finding *worst)
{
    *worst = *candidate;
    if (worst->text.reason != HS_REASON_loss_tips)
        HS_WORK(&worst->working, loss_peak,
                fmax(0.0, worst->text.number[1] +
                              2.0 * (worst->text.number[2] - worst->text.number[1])),
                "N", {"old", worst->text.number[1], "N"}, {"new", worst->text.number[2], "N"});
}

/* One bearer lets go at one place: the worst candidate is kept. */
static void
let_go(const hs_asking *asking, int s, int gone, hs_finding *worst)
{
    const hs_run *run = asking->run;
    hs_letgo_answer answer;
    hs_finding candidate = hs_finding_start(asking, HS_CHECK_loss_bearer);

    if (hs_letgo(&run->stations[s].problem, run->setup->used_by, run->setup->n_bearers, gone,
                 &answer, NULL) != HS_OK)
        return;
    if (answer.tips) {
        hs_finding_at(&candidate, run, s, gone);
        candidate.source = HS_SRC_sudden_load;
        candidate.remedy = HS_SAY(loss_fix);
        hs_finding_beyond(&candidate, (hs_message){.reason = HS_REASON_loss_tips,
                                                   .number = {answer.couple_Nm},
                                                   .name = {bearer_name(asking, gone)}});
        if (hs_finding_worse(&candidate, worst))
            *worst = candidate;
        return;
    }
    for (int b = 0; b < run->setup->n_bearers; b++) {
        if (b == gone)
            continue;
        candidate = hs_finding_start(asking, HS_CHECK_loss_bearer);
        judge_peak(asking, s, gone, b, &answer, &candidate);
        if (hs_finding_worse(&candidate, worst))
            record_peak(&candidate, worst);
    }
}

void
hs_check_loss_bearer(const hs_asking *asking, hs_finding *finding)
{
    const hs_run *run = asking->run;
    hs_finding worst = {0};

    if (run->setup->n_bearers < 2) {
        hs_finding_scope(finding, HS_ABSENT, HS_SAY(loss_single));
        return;
    }
    if (!any_shares(run)) {
        hs_finding_missing(finding, HS_SAY(share_no_height));
        return;
    }
    for (int s = 0; s < run->n_stations; s++)
        for (int gone = 0; run->stations[s].has_shares && gone < run->setup->n_bearers; gone++)
            let_go(asking, s, gone, &worst);
    if (worst.status != HS_STATUS_NONE)
        *finding = worst;
}

void
hs_check_load_weighing(const hs_asking *asking, hs_finding *finding)
{
    const hs_load_state *load = asking->load;
    double off_kg, off_m;

    if (!hs_has(load->parts_mass_kg) || !hs_has(load->weighed_mass_kg))
        return;
    off_kg = fabs(load->weighed_mass_kg - load->parts_mass_kg);
    off_m = hypot(load->weighed_cg_m.x - load->parts_cg_m.x,
                  load->weighed_cg_m.y - load->parts_cg_m.y);
    if (hs_has(load->weighed_cg_m.z))
        off_m = hypot(off_m, load->weighed_cg_m.z - load->parts_cg_m.z);
    finding->source = HS_SRC_two_scales;
    finding->confidence = HS_CONF_COMMON_PRACTICE;
    finding->text = HS_SAY(weighing_agrees, load->weighed_mass_kg, load->parts_mass_kg, off_kg,
                           load->parts_tol_kg, off_m);
    HS_WORK(&finding->working, load_weighing_difference, off_kg, "kg",
            {"m_w", load->weighed_mass_kg, "kg"}, {"m_p", load->parts_mass_kg, "kg"});
    if (!(load->parts_tol_kg > 0.0)) {
        if (off_kg > 0.0)
            hs_finding_beyond(finding, finding->text);
        else
            hs_finding_judge_ratio(finding, 0.0, 0.0, 0.0, asking->near_ratio);
    } else {
        hs_finding_judge(finding, off_kg, load->parts_tol_kg, asking->near_ratio);
    }
    if (finding->status == HS_STATUS_BEYOND)
        finding->text.reason = HS_REASON_weighing_differs;
    if (finding->status != HS_STATUS_WITHIN)
        finding->remedy =
            HS_SAY(weighing_fix,
                   load->weighed_mass_kg - load->parts_tol_kg * asking->near_ratio * MARGIN,
                   load->weighed_mass_kg + load->parts_tol_kg * asking->near_ratio * MARGIN);
}

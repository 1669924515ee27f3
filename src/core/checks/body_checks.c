/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  is the low back pressed or sheared more than published figures allow?
 * Answer:    hs_check_spine_compression(), hs_check_spine_shear().
 * Not here:  strength and balance (standing_checks.c), the dose of a shift (day_checks.c). */
#include "body_remedy.h"
#include "legs.h"
#include "lowback.h"
#include "spine_sets.h"
#include "units.h"

static double
shear_limit_N(const hs_asking *asking)
{
    const hs_work *work = &asking->task->work;
    double a_day = hs_or(work->cycles_per_hour, 1.0) * hs_or(work->hours, 1.0);

    return hs_or(hs_site_limit_of(asking->task, "spine.shear"), hs_spine_shear_limit_N(a_day));
}

/* What the figure must stay below for this bearer: an unconfirmed figure decides nothing alone, so the published one is asked
 * beside it. HS_ABSENT: the set that is chosen has none for this bearer. */
static double
compression_asked_N(const hs_asking *asking, int b)
{
    hs_finding sink = {.check = HS_CHECK_spine_compression};
    const hs_site_limit *own = NULL;
    double limit_N = HS_SPINE_COMPRESSION_N;

    switch (hs_limit_site(asking, b, NULL, &sink, &limit_N, &own)) {
    case HS_SITE_SILENT:
        return HS_ABSENT;
    case HS_SITE_FIGURE:
        return own->is_unconfirmed ? fmin(limit_N, HS_SPINE_COMPRESSION_N) : limit_N;
    case HS_SITE_NONE:
    default:
        return HS_SPINE_COMPRESSION_N;
    }
}

static double
compression_ratio(const hs_asking *asking, int b, const hs_body_state *body)
{
    double asked_N = compression_asked_N(asking, b);

    return hs_has(asked_N) ? body->compression_N / asked_N : 0.0;
}

/* The larger of the two slope rules, so that a remedy ends the doubt between them too. */
static double
shear_ratio(const hs_asking *asking, int b, const hs_body_state *body)
{
    (void)b;
    return fmax(fabs(body->shear_N), fabs(body->shear_other_N)) / shear_limit_N(asking);
}

/* One-handed and turned work is outside the model; its sagittal figure is given. True: done. */
static bool
is_out_of_scope(const hs_asking *asking, int s, int b, double value_N, hs_finding *finding)
{
    double turn_deg = hs_body_turn_deg(asking, &asking->run->stations[s].place);

    if (asking->run->stations[s].bearers[b].input.is_one_handed)
        hs_finding_scope(finding, value_N, HS_SAY(spine_one_handed, value_N));
    else if (turn_deg > HS_TURN_SCOPE_deg)
        hs_finding_scope(finding, value_N, HS_SAY(spine_turned, value_N, turn_deg));
    else
        return false;
    return true;
}

/* The chosen set has no figure for this bearer; true: done. */
static bool
is_silent(hs_site_answer answer, const hs_site_limit *own, double value_N, hs_finding *finding)
{
    if (answer != HS_SITE_SILENT)
        return false;
    hs_finding_scope(finding, value_N, hs_limit_set_silent(own));
    return true;
}

/* Missing data or no posture; true: done. */
static bool
is_without_figure(const hs_bearer_state *state, hs_finding *finding)
{
    if (hs_body_is_missing(state))
        hs_finding_missing(finding, HS_SAY(body_missing));
    else if (!state->body.is_found)
        hs_finding_scope(finding, HS_ABSENT, HS_SAY(spine_no_posture));
    else
        return false;
    return true;
}

static void
cap_at_near(const hs_asking *asking, int s, const hs_body_input *in, hs_finding *finding)
{
    if (in->stance == HS_STANCE_KNEELING ||
        hs_body_turn_deg(asking, &asking->run->stations[s].place) > HS_TURN_FREE_deg)
        hs_finding_at_best_near(finding);
}

/* The set by age and sex beside the one figure: remembered, so it is shown and never decides. */
static void
work_by_age(const hs_asking *asking, int b, double compression_N, hs_finding *finding)
{
    const hs_worker *worker = asking->run->setup->bearers[b].worker;
    double limit_N;

    if (worker == NULL || worker->sex == 0)
        return;
    limit_N = hs_spine_by_age_N(worker->sex, worker->age_years);
    if (hs_has(limit_N))
        HS_WORK(&finding->working, spine_by_age, compression_N / limit_N, "",
                {"C", compression_N, "N"}, {"limit", limit_N, "N"});
}

static void
work_compression(const hs_asking *asking,
                 int b,
                 const hs_bearer_state *state,
                 hs_finding *finding)
{
    const hs_body_state *body = &state->body;
    const hs_person *person = &asking->run->persons[b];
    double forward_N =
        body->muscle_N + body->weight_above_N * cos(body->disc_rad) - body->compression_N;
    double load_N = state->input.felt_N + state->input.rest_N,
           body_N = person->mass_kg * HS_GRAVITY_m_s2;
    double ahead_m = state->input.hand_x_m - body->at[HS_POSE_L5S1].x;
    double lean_rad = fmax(body->trunk_rad, 0.0);

    forward_N /= sin(body->disc_rad);
    HS_WORK(&finding->working, body_compression, body->compression_N, "N",
            {"M", body->l5s1_moment_Nm, "Nm"}, {"d", body->arm_m, "m"},
            {"G", body->weight_above_N, "N"}, {"s", body->disc_rad, "rad"},
            {"P", forward_N, "N"});
    if (body->l5s1_moment_Nm > 0.0) {
        double far_N = body->compression_N - body->muscle_N +
                       body->l5s1_moment_Nm / HS_BACK_MUSCLE_ARM_FAR_m;

        HS_WORK(&finding->working, body_compression_far, far_N, "N",
                {"M", body->l5s1_moment_Nm, "Nm"}, {"d_far", HS_BACK_MUSCLE_ARM_FAR_m, "m"},
                {"G", body->weight_above_N, "N"}, {"s", body->disc_rad, "rad"},
                {"P", forward_N, "N"});
    }
    HS_WORK(&finding->working, body_hand_estimate,
            hs_lowback_hand_estimate_N(body_N, load_N, lean_rad, ahead_m), "N",
            {"W", body_N, "N"}, {"t", lean_rad, "rad"}, {"F", load_N, "N"}, {"h", ahead_m, "m"},
            {"a", HS_HAND_ESTIMATE_ARM_m, "m"});
    work_by_age(asking, b, body->compression_N, finding);
}

static hs_message
compression_text(double value_N, double limit_N, const hs_body_state *body)
{
    double trunk_deg = body->trunk_rad * HS_DEG_PER_RAD;
    double knee_deg = (body->shank_rad + body->thigh_rad) * HS_DEG_PER_RAD;

    if (hs_has(body->other_compression_N))
        return HS_SAY(spine_compression_two, value_N, limit_N, HS_SPINE_COMPRESSION_MOST_N,
                      body->l5s1_moment_Nm, body->other_compression_N, body->arm_m);
    return HS_SAY(spine_compression_is, value_N, limit_N, HS_SPINE_COMPRESSION_MOST_N,
                  body->l5s1_moment_Nm, trunk_deg, knee_deg);
}

/* The same against a figure of the site or of a set. */
static hs_message
own_text(double value_N,
         double limit_N,
         const hs_site_limit *own,
         const hs_body_input *in,
         const hs_body_state *body)
{
    bool is_kneeling = in->stance == HS_STANCE_KNEELING;
    hs_message text = {.number = {value_N, limit_N, HS_SPINE_COMPRESSION_N,
                                  body->l5s1_moment_Nm, body->trunk_rad * HS_DEG_PER_RAD,
                                  (body->shank_rad + body->thigh_rad) * HS_DEG_PER_RAD},
                       .name = {own->set, own->wording}};

    if (own->is_published && is_kneeling)
        text.reason = HS_REASON_spine_set_kneeling;
    else if (own->is_published)
        text.reason = own->is_unconfirmed ? HS_REASON_spine_set_unsure : HS_REASON_spine_set_is;
    else if (is_kneeling)
        text.reason = HS_REASON_spine_site_kneeling;
    else
        text.reason =
            own->is_unconfirmed ? HS_REASON_spine_site_unsure : HS_REASON_spine_site_is;
    return text;
}

static hs_message
text_of(double value_N, double limit_N, const hs_site_limit *own, const hs_bearer_state *state)
{
    if (own != NULL)
        return own_text(value_N, limit_N, own, &state->input, &state->body);
    if (state->input.stance == HS_STANCE_KNEELING)
        return HS_SAY(spine_compression_kneeling, value_N, limit_N,
                      HS_SPINE_COMPRESSION_MOST_N);
    return compression_text(value_N, limit_N, &state->body);
}

static void
judge_compression(const hs_asking *asking, int s, int b, bool in_full, hs_finding *finding)
{
    const hs_bearer_state *state = &asking->run->stations[s].bearers[b];
    const hs_site_limit *own = NULL;
    double value_N = state->body.compression_N, limit_N = HS_SPINE_COMPRESSION_N;
    hs_site_answer answer;

    finding->source = HS_SRC_niosh_compression_1981;
    finding->confidence = HS_CONF_SEEN;
    answer = hs_limit_site(asking, b, NULL, finding, &limit_N, &own);
    if (is_without_figure(state, finding) || is_out_of_scope(asking, s, b, value_N, finding) ||
        is_silent(answer, own, value_N, finding)) {
        if (in_full && state->body.is_found)
            work_compression(asking, b, state, finding);
        return;
    }
    hs_finding_judge(finding, value_N, limit_N, asking->near_ratio);
    cap_at_near(asking, s, &state->input, finding);
    if (compression_ratio(asking, b, &state->body) >= asking->near_ratio)
        hs_finding_at_best_near(finding);
    if (!in_full)
        return;
    finding->text = text_of(value_N, limit_N, own, state);
    work_compression(asking, b, state, finding);
    if (finding->status != HS_STATUS_WITHIN)
        hs_body_remedy_solve(asking,
                             &(hs_body_asked){compression_ratio, asking->near_ratio,
                                              judge_compression, true, true},
                             finding);
}

void
hs_check_spine_compression(const hs_asking *asking, hs_finding *finding)
{
    if (hs_criterion_on(asking->task, "spine-compression"))
        hs_body_worst(asking, judge_compression, finding);
}

static void
work_shear(const hs_body_state *body, hs_finding *finding)
{
    double forward_N =
        (body->shear_N - body->weight_above_N * sin(body->disc_rad)) / cos(body->disc_rad);

    HS_WORK(&finding->working, body_shear, body->shear_N, "N", {"G", body->weight_above_N, "N"},
            {"s", body->disc_rad, "rad"}, {"P", forward_N, "N"});
    HS_WORK(&finding->working, body_shear_other, body->shear_other_N, "N",
            {"G", body->weight_above_N, "N"}, {"t", body->trunk_rad, "rad"},
            {"P", forward_N, "N"});
}

static void
judge_shear(const hs_asking *asking, int s, int b, bool in_full, hs_finding *finding)
{
    const hs_bearer_state *state = &asking->run->stations[s].bearers[b];
    double value_N = fabs(state->body.shear_N), other_N = fabs(state->body.shear_other_N);
    double limit_N = shear_limit_N(asking);

    finding->source = HS_SRC_shear_gallagher_2012;
    finding->confidence = HS_CONF_SEEN;
    hs_limit_site(asking, b, NULL, finding, &limit_N, NULL);
    if (is_without_figure(state, finding) || is_out_of_scope(asking, s, b, value_N, finding))
        return;
    hs_finding_judge(finding, value_N, limit_N, asking->near_ratio);
    cap_at_near(asking, s, &state->input, finding);
    /* From which rate the lower figure holds is remembered only: alone it does not decide. */
    if (finding->source == HS_SRC_shear_gallagher_2012 && finding->status == HS_STATUS_BEYOND &&
        value_N <= HS_SPINE_SHEAR_N) {
        finding->source = HS_SRC_shear_rate_remembered;
        finding->confidence = HS_CONF_MEMORY;
        finding->status = HS_STATUS_NEAR;
    }
    finding->text = HS_SAY(spine_shear_is, value_N, limit_N, other_N);
    /* The two rules for the slope of the disc disagree about the limit: neither decides. */
    if (fmin(value_N, other_N) <= limit_N && fmax(value_N, other_N) > limit_N) {
        finding->status = HS_STATUS_NEAR;
        finding->text.reason = HS_REASON_spine_shear_straddles;
    }
    if (!in_full)
        return;
    work_shear(&state->body, finding);
    if (finding->status != HS_STATUS_WITHIN)
        hs_body_remedy_solve(
            asking, &(hs_body_asked){shear_ratio, asking->near_ratio, judge_shear, true, true},
            finding);
}

void
hs_check_spine_shear(const hs_asking *asking, hs_finding *finding)
{
    hs_body_worst(asking, judge_shear, finding);
}

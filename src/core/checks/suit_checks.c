/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  is the suit's rating kept, and does its data allow this wearer, this way and this weather?
 * Answer:    hs_check_suit_rating(), hs_check_suit_scope().
 * Not here:  battery (suit_energy.c), power loss (power_loss_check.c), getting out (rescue_check.c). */
#include "check.h"
#include "floor.h"
#include "load_path.h"
#include "solve.h"
#include "units.h"

#define ROOM 0.999 /* a remedy lands this side of its threshold (numerics) */
#define MODEL_OFF                                                                              \
    0.05 /* of a suit's model of itself, for the working only: an example, no source */
#define FLIGHT_m  0.6   /* risers farther apart are no flight: file format, section Motion */
#define BELT_m2   0.012 /* face of a harness: HS_SRC_harness_practice */
#define GAIN_KEPT 0.9 /* a gain 10 per cent low, for the working only: chosen here, no source */

static const hs_suit *
powered_suit(const hs_run *run, int b)
{
    const hs_suit *suit = run->setup->bearers[b].suit;

    return suit != NULL && hs_suit_model_of(suit)->has_power ? suit : NULL;
}

/* suit.rating */

typedef struct {
    const hs_suit *suit;
    double wanted_kg;
} reach_question;

static double
payload_over_wanted(double reach_m, void *data)
{
    const reach_question *question = data;

    return hs_suit_payload_kg(question->suit, reach_m) - question->wanted_kg;
}

static void
advise_rating(const hs_asking *asking,
              const hs_suit *suit,
              double held_kg,
              double reach_m,
              hs_finding *finding)
{
    reach_question question = {suit, held_kg / (ROOM * asking->near_ratio)};
    double last_m = suit->rating[suit->n_rating - 1].reach_m, at_m;

    /* Only a nearer place is a remedy; a curve that rises with reach is left to the mass. */
    if (payload_over_wanted(0.0, &question) >= 0.0 &&
        payload_over_wanted(fmin(reach_m, last_m), &question) < 0.0 &&
        hs_root_find(payload_over_wanted, &question, 0.0, fmin(reach_m, last_m), 1e-7, &at_m,
                     NULL) == HS_OK)
        finding->remedy = HS_SAY(rating_remedy_reach, floor(at_m * 1000.0) / 1000.0);
    else if (payload_over_wanted(0.0, &question) >= 0.0)
        finding->remedy = HS_SAY(rating_remedy_reach, last_m);
    else
        finding->remedy =
            HS_SAY(rating_remedy_mass,
                   ROOM * asking->near_ratio * hs_suit_payload_kg(suit, fmin(reach_m, last_m)));
}

static void
judge_height(const hs_suit *suit, double height_m, double hand_N, hs_finding *finding)
{
    const double *range_m = suit->hand_height_m;

    hs_finding_beyond(finding,
                      HS_SAY(rating_outside_height, height_m, range_m[0], range_m[1], hand_N));
    if (height_m < range_m[0])
        finding->remedy = HS_SAY(rating_remedy_raise, range_m[0] - height_m, range_m[0]);
    else
        finding->remedy = HS_SAY(rating_remedy_lower, height_m - range_m[1], range_m[1]);
}

static void
judge_rating(const hs_asking *asking, int s, int b, hs_finding *finding)
{
    const hs_run *run = asking->run;
    const hs_suit *suit = powered_suit(run, b);
    const hs_bearer_place *at = &run->stations[s].place.bearers[b];
    double hand_N = run->samples[s].bearers[b].hand_force_N, held_kg = hand_N / HS_GRAVITY_m_s2;
    double height_m = at->hands_m.z - at->floor_z_m;
    double payload_kg = hs_suit_payload_kg(suit, at->reach_m);

    finding->source = HS_SRC_suit_rating_curve;
    if (!hs_has(suit->hand_height_m[0]) || !hs_has(suit->hand_height_m[1]) ||
        !hs_has(payload_kg)) {
        hs_finding_missing(finding, HS_SAY(rating_missing));
        finding->text.name[0] = hs_has(payload_kg) ? "hand_height_m" : "rating";
        return;
    }
    if (height_m < suit->hand_height_m[0] - HS_SAME_PLACE_m ||
        height_m > suit->hand_height_m[1] + HS_SAME_PLACE_m) {
        judge_height(suit, height_m, hand_N, finding);
        return;
    }
    if (!(payload_kg > 0.0)) {
        hs_finding_beyond(finding, HS_SAY(rating_no_payload, at->reach_m,
                                          suit->rating[suit->n_rating - 1].reach_m, hand_N));
        advise_rating(asking, suit, held_kg, at->reach_m, finding);
        return;
    }
    hs_finding_judge(finding, held_kg, payload_kg, asking->near_ratio);
    if (finding->status == HS_STATUS_BEYOND)
        finding->text =
            HS_SAY(rating_beyond, payload_kg, held_kg, hand_N - payload_kg * HS_GRAVITY_m_s2);
    else if (suit->n_rating == 1)
        finding->text =
            HS_SAY(rating_single_point, payload_kg, held_kg, suit->rating[0].reach_m);
    else
        finding->text = HS_SAY(rating_within, payload_kg, held_kg);
    if (finding->status != HS_STATUS_WITHIN)
        advise_rating(asking, suit, held_kg, at->reach_m, finding);
}

/* What hangs on the gain: the felt force if it is a tenth low, and by how much a suit that feels no force at the hands may be wrong
 * about itself at this gain before it runs away. */
static void
write_gain(const hs_suit *suit, double hand_N, const hs_bearer_place *at, hs_working *working)
{
    hs_suit low = *suit;
    hs_felt felt;

    low.gain_hands *= GAIN_KEPT;
    felt = hs_suit_model_of(&low)->felt(&low, hand_N, at->reach_m,
                                        at->hands_m.z - at->floor_z_m, NULL);
    if (felt.is_outside_height || !(felt.payload_kg > 0.0))
        return;
    HS_WORK(working, gain_low, felt.felt_N, "N", {"F", hand_N, "N"},
            {"p", felt.payload_kg, "kg"}, {"g", HS_GRAVITY_m_s2, "m/s2"},
            {"G", suit->gain_hands, ""}, {"r", suit->residual_hands_N, "N"});
    if (!(suit->gain_hands > 1.0))
        return;
    HS_WORK(working, gain_model, 1.0 / (suit->gain_hands - 1.0), "",
            {"G", suit->gain_hands, ""});
    if (MODEL_OFF < 1.0 / (suit->gain_hands - 1.0))
        HS_WORK(working, gain_off, hs_suit_gain_off(suit->gain_hands, MODEL_OFF), "",
                {"G", suit->gain_hands, ""}, {"e", MODEL_OFF, ""});
}

/* How hard the harness presses on the trunk: what the suit takes of the moment about the low back over its lever. */
static void
write_harness(const hs_body_state *body, const hs_body_input *in, hs_working *working)
{
    double arm_m, moment_Nm, harness_N;

    if (!body->is_found || !(in->suit.harness_m > 0.0) || !hs_has(in->suit.weight_N))
        return;
    arm_m = in->hand_x_m - body->at[HS_POSE_L5S1].x;
    moment_Nm = in->rest_N * arm_m +
                fmax(in->suit.weight_N * (in->suit.centre_x_m - body->at[HS_POSE_L5S1].x), 0.0);
    harness_N = hs_suit_harness_N(moment_Nm, in->suit.gain_trunk, in->suit.harness_m,
                                  in->suit.residual_trunk_N);
    if (!(harness_N > 0.0))
        return;
    HS_WORK(working, suit_harness, harness_N, "N", {"M", moment_Nm, "Nm"},
            {"Gt", in->suit.gain_trunk, ""}, {"l", in->suit.harness_m, "m"},
            {"r", in->suit.residual_trunk_N, "N"});
    HS_WORK(working, suit_harness_kPa, hs_suit_belt_kPa(harness_N, BELT_m2), "kPa",
            {"H", harness_N, "N"}, {"A", BELT_m2, "m2"});
}

/* The felt law, the ratio and the account from the load to the floor at the deciding place. */
static void
write_rating(const hs_asking *asking, int s, int b, hs_finding *finding)
{
    const hs_run *run = asking->run;
    const hs_suit *suit = powered_suit(run, b);
    const hs_bearer_place *at = &run->stations[s].place.bearers[b];
    const hs_bearer_sample *sample = &run->samples[s].bearers[b];
    hs_load_path path;
    hs_felt felt =
        hs_suit_model_of(suit)->felt(suit, sample->hand_force_N, at->reach_m,
                                     at->hands_m.z - at->floor_z_m, &finding->working);

    if (hs_has(finding->ratio))
        HS_WORK(&finding->working, rating_ratio, finding->ratio, "",
                {"F", sample->hand_force_N, "N"}, {"g", HS_GRAVITY_m_s2, "m/s2"},
                {"p", finding->limit, "kg"});
    if (felt.is_missing)
        return;
    write_gain(suit, sample->hand_force_N, at, &finding->working);
    hs_load_path_of(suit, run->persons[b].mass_kg, sample->hand_force_N, felt.felt_N,
                    at->walking_factor, &path);
    hs_load_path_write(&path, suit->self_carried, &finding->working);
    if (!asking->is_live && run->stations[s].bearers[b].has_body)
        write_harness(&run->stations[s].bearers[b].body, &run->stations[s].bearers[b].input,
                      &finding->working);
}

static void
assume_harness(const hs_asking *asking, int b)
{
    const hs_suit *suit = powered_suit(asking->run, b);

    if (suit != NULL && !hs_has(suit->harness_m))
        hs_assume(asking->assumptions, HS_SUIT_HARNESS_m, NULL,
                  HS_SAY(assume_harness, HS_SUIT_HARNESS_m), "suits[%d].harness_m",
                  asking->run->setup->bearers[b].asked->suit);
}

/* Of two places outside the range the one farther out decides, so that its remedy is enough for both. */
static bool
is_worse_rating(const hs_finding *a, const hs_finding *b)
{
    if (a->text.reason == HS_REASON_rating_outside_height && b->text.reason == a->text.reason &&
        a->remedy.reason == b->remedy.reason)
        return a->remedy.number[0] > b->remedy.number[0];
    return hs_finding_worse(a, b);
}

void
hs_check_suit_rating(const hs_asking *asking, hs_finding *finding)
{
    const hs_run *run = asking->run;
    hs_finding worst = *finding;
    int worst_s = 0, worst_b = -1;

    for (int b = 0; b < run->setup->n_bearers; b++) {
        assume_harness(asking, b);
        for (int s = 0; s < run->n_stations; s++) {
            hs_finding candidate = *finding;

            /* A load that something else holds up altogether asks nothing of the suit. */
            if (powered_suit(run, b) == NULL ||
                !(run->samples[s].bearers[b].hand_force_N > 0.0))
                continue;
            judge_rating(asking, s, b, &candidate);
            if (worst_b >= 0 && !is_worse_rating(&candidate, &worst))
                continue;
            worst = candidate;
            worst_s = s;
            worst_b = b;
        }
    }
    if (worst_b < 0)
        return;
    *finding = worst;
    write_rating(asking, worst_s, worst_b, finding);
    hs_finding_at(finding, run, worst_s, worst_b);
}

/* suit.scope */

typedef struct {
    hs_message beyond, remedy; /* the first that is beyond */
    const char *missing;       /* the first that is not given */
} scope_answer;

static void
say_beyond(scope_answer *answer, hs_message text, hs_message remedy)
{
    if (answer->beyond.reason != HS_REASON_none)
        return;
    answer->beyond = text;
    answer->remedy = remedy;
}

static void
say_missing(scope_answer *answer, const char *key)
{
    if (answer->missing == NULL)
        answer->missing = key;
}

static bool
is_inside(const double range[2], double value)
{
    return value >= range[0] && value <= range[1];
}

static void
ask_wearer(const hs_suit *suit, const hs_worker *worker, scope_answer *answer)
{
    const double *stature_m = suit->wearer_stature_m, *mass_kg = suit->wearer_mass_kg;

    if (!hs_has(stature_m[0]) || !hs_has(stature_m[1])) {
        if (suit->kind == HS_SUIT_POWERED)
            say_missing(answer, "wearer_stature_m");
    } else if (!is_inside(stature_m, worker->stature_m))
        say_beyond(answer,
                   HS_SAY(scope_suit_stature, worker->stature_m, stature_m[0], stature_m[1]),
                   HS_SAY(scope_remedy_wearer));
    if (!hs_has(mass_kg[0]) || !hs_has(mass_kg[1])) {
        if (suit->kind == HS_SUIT_POWERED)
            say_missing(answer, "wearer_mass_kg");
    } else if (!is_inside(mass_kg, worker->mass_kg))
        say_beyond(answer, HS_SAY(scope_suit_mass, worker->mass_kg, mass_kg[0], mass_kg[1]),
                   HS_SAY(scope_remedy_wearer));
}

static void
ask_way(const hs_setup *setup, int b, scope_answer *answer)
{
    const hs_site *site = &setup->task->site;
    const hs_suit *suit = setup->bearers[b].suit;
    int n_risers = 0;
    double slope_deg = 0.0;

    for (int leg = 0; leg < setup->motions[0].n_legs; leg++) {
        int i = leg * setup->n_bearers + b;
        double from_m = setup->feet_from_m[i], to_m = setup->feet_to_m[i];

        if (fabs(to_m - from_m) > HS_SAME_PLACE_m)
            n_risers += hs_floor_n_risers(site, from_m, to_m, 0.0);
        slope_deg = fmax(slope_deg, hs_floor_steepest_rad(site, from_m, to_m) * HS_DEG_PER_RAD);
        slope_deg = fmax(slope_deg, fabs(hs_floor_slope_rad(site, to_m)) * HS_DEG_PER_RAD);
    }
    if (n_risers > 0 && suit->stairs == HS_UNKNOWN)
        say_missing(answer, "stairs");
    else if (n_risers > 0 && suit->stairs == HS_NO)
        say_beyond(answer, HS_SAY(scope_suit_stairs, n_risers), HS_SAY(scope_remedy_way));
    if (slope_deg > 0.0 && !hs_has(suit->slope_deg))
        say_missing(answer, "slope_deg");
    else if (slope_deg > 0.0 && !(slope_deg <= suit->slope_deg + HS_SAME_PLACE_m))
        say_beyond(answer, HS_SAY(scope_suit_slope, slope_deg, suit->slope_deg),
                   HS_SAY(scope_remedy_slope, suit->slope_deg));
}

static void
ask_weather(const hs_site *site, const hs_suit *suit, scope_answer *answer)
{
    const double *range_C = suit->temperature_C;

    if (hs_has(site->temperature_C)) {
        if (!hs_has(range_C[0]) || !hs_has(range_C[1]))
            say_missing(answer, "temperature_C");
        else if (!is_inside(range_C, site->temperature_C))
            say_beyond(
                answer,
                HS_SAY(scope_suit_temperature, site->temperature_C, range_C[0], range_C[1]),
                HS_SAY(scope_remedy_weather));
    }
    if (site->wet != HS_UNKNOWN && suit->wet == HS_UNKNOWN)
        say_missing(answer, "wet");
    else if (site->wet == HS_YES && suit->wet == HS_NO)
        say_beyond(answer, HS_SAY(scope_suit_wet), HS_SAY(scope_remedy_weather));
}

/* The steepest stair of the way: riser over the going to the next riser. */
static void
write_stair(const hs_site *site, hs_working *working)
{
    double steepest = 0.0, rise_m = 0.0, going_m = 0.0;

    for (int i = 0, last = -1; i + 1 < site->n_floor; i++) {
        const hs_vec2 *at = &site->floor[i];

        if (at[1].x > at->x || at[1].y == at->y)
            continue;
        if (last >= 0 && fabs(at[1].y - at->y) > steepest * (at->x - site->floor[last].x)) {
            rise_m = fabs(at[1].y - at->y);
            going_m = at->x - site->floor[last].x;
            steepest = rise_m / going_m;
        }
        last = i;
    }
    if (going_m > 0.0 && going_m <= FLIGHT_m)
        HS_WORK(working, scope_stair, atan(steepest) * HS_DEG_PER_RAD, "deg",
                {"rise", rise_m, "m"}, {"going", going_m, "m"});
}

static void
judge_scope(const hs_asking *asking, int b, hs_finding *finding)
{
    const hs_bearer_setup *bearer = &asking->run->setup->bearers[b];
    scope_answer answer = {.missing = NULL};

    ask_wearer(bearer->suit, bearer->worker, &answer);
    ask_way(asking->run->setup, b, &answer);
    ask_weather(&asking->task->site, bearer->suit, &answer);
    finding->source = HS_SRC_suit_data;
    finding->bearer = b;
    if (!asking->is_live)
        write_stair(&asking->task->site, &finding->working);
    if (answer.beyond.reason != HS_REASON_none) {
        hs_finding_beyond(finding, answer.beyond);
        finding->remedy = answer.remedy;
    } else if (answer.missing != NULL) {
        hs_finding_missing(finding, HS_SAY(scope_suit_missing));
        finding->text.name[0] = answer.missing;
    } else {
        finding->status = HS_STATUS_WITHIN;
        finding->why = HS_WHY_COMPUTED;
        finding->text = HS_SAY(scope_suit_within);
    }
}

void
hs_check_suit_scope(const hs_asking *asking, hs_finding *finding)
{
    hs_finding worst = *finding;

    for (int b = 0; b < asking->run->setup->n_bearers; b++) {
        hs_finding candidate = *finding;

        if (asking->run->setup->bearers[b].suit == NULL)
            continue;
        judge_scope(asking, b, &candidate);
        if (worst.status == HS_STATUS_NONE || hs_finding_worse(&candidate, &worst))
            worst = candidate;
    }
    *finding = worst;
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what does a worker move in a shift, and what does it cost in energy and minutes?
 * Answer:    hs_check_day_mass(), hs_check_day_energy(), and the totals of an option.
 * Not here:  the low back's day (day_checks.c), the suit's battery (suit_energy.c). */
#include "energy_beside.h"
#include "energy_limits.h"
#include "iso11228.h"
#include "legs.h"
#include "metabolic.h"
#include "rest.h"
#include "suit_energy.h"
#include "totals.h"
#include "units.h"

/* Pace of the way back with empty hands: common practice, no source. */
#define EMPTY_WALK_m_s 1.2
#define MINUTES_per_h  60.0

static double
share_most_kg(const hs_asking *asking, int bearer)
{
    double most_N = 0.0;

    for (int s = 0; s < asking->run->n_stations; s++) {
        double share_N = asking->run->stations[s].bearers[bearer].static_share_N;

        if (!hs_has(share_N))
            return HS_ABSENT;
        most_N = fmax(most_N, share_N);
    }
    return most_N / HS_GRAVITY_m_s2;
}

/* The bearer with the largest share; HS_ABSENT where one is not known. */
static double
worst_share_kg(const hs_asking *asking, int *ret_bearer)
{
    double worst_kg = -1.0;

    *ret_bearer = 0;
    for (int b = 0; b < asking->run->setup->n_bearers; b++) {
        double share_kg = share_most_kg(asking, b);

        if (!hs_has(share_kg))
            return HS_ABSENT;
        if (share_kg > worst_kg) {
            worst_kg = share_kg;
            *ret_bearer = b;
        }
    }
    return worst_kg;
}

static void
say_day_mass_remedy(const hs_asking *asking, hs_finding *finding)
{
    double per_h = hs_limit_cycles_per_h(asking);

    if (finding->status == HS_STATUS_NEAR || finding->status == HS_STATUS_BEYOND)
        finding->remedy = HS_SAY(
            day_mass_remedy,
            hs_limit_round_down(per_h * asking->near_ratio / finding->ratio * (1.0 - 1e-9)),
            per_h);
}

static void
judge_day_mass(const hs_asking *asking,
               hs_finding *finding,
               double value_kg,
               const hs_iso11228_day *row)
{
    double hours = hs_limit_hours(asking);
    double hourly_kg = fmin(row->per_h_kg, 60.0 * row->per_min_kg);
    double limit_kg = fmin(row->per_8h_kg, hourly_kg * hours);

    HS_WORK(&finding->working, day_mass_limit, limit_kg, "kg", {"shift", row->per_8h_kg, "kg"},
            {"hour", row->per_h_kg, "kg/h"}, {"minute", row->per_min_kg, "kg/min"},
            {"T", hours, "h"});
    finding->text = HS_SAY(day_mass_is, value_kg, limit_kg, row->carry_m, hourly_kg);
    hs_finding_judge(finding, value_kg, limit_kg, asking->near_ratio);
    say_day_mass_remedy(asking, finding);
}

/* By the site's own figure: each worker, for the set may have one for women and one for men. */
static bool
judge_day_mass_site(const hs_asking *asking, int bearer, hs_finding *candidate)
{
    double per_h = hs_limit_cycles_per_h(asking), hours = hs_limit_hours(asking), own_kg;
    double share_kg = share_most_kg(asking, bearer), value_kg = share_kg * per_h * hours;
    const hs_site_limit *own = NULL;
    hs_site_answer answer = hs_limit_site(asking, bearer, NULL, candidate, &own_kg, &own);

    if (answer == HS_SITE_NONE)
        return false;
    candidate->bearer = bearer;
    HS_WORK(&candidate->working, day_mass, value_kg, "kg", {"m", share_kg, "kg"},
            {"n", per_h, "/h"}, {"T", hours, "h"});
    if (answer == HS_SITE_SILENT) {
        hs_finding_scope(candidate, value_kg, hs_limit_set_silent(own));
    } else if (own->is_published && asking->run->setup->bearers[bearer].suit != NULL) {
        candidate->limit = own_kg;
        hs_finding_scope(candidate, value_kg, HS_SAY(day_mass_suit, value_kg));
    } else {
        candidate->text = (hs_message){.reason = HS_REASON_day_mass_site,
                                       .number = {value_kg, own_kg},
                                       .name = {own->set, own->wording}};
        if (own->is_published)
            candidate->text.reason =
                own->is_unconfirmed ? HS_REASON_limits_set_unsure : HS_REASON_day_mass_set;
        else if (own->is_unconfirmed)
            candidate->text.reason = HS_REASON_day_mass_site_unsure;
        hs_finding_judge(candidate, value_kg, own_kg, asking->near_ratio);
        say_day_mass_remedy(asking, candidate);
    }
    return true;
}

static bool
ask_day_mass_site(const hs_asking *asking, hs_finding *finding)
{
    bool any = false;

    for (int b = 0; b < asking->run->setup->n_bearers; b++) {
        hs_finding candidate = hs_finding_start(asking, HS_CHECK_day_mass);

        if (!judge_day_mass_site(asking, b, &candidate))
            continue;
        if (!any || hs_finding_worse(&candidate, finding))
            *finding = candidate;
        any = true;
    }
    return any;
}

void
hs_check_day_mass(const hs_asking *asking, hs_finding *finding)
{
    int bearer;
    double share_kg = worst_share_kg(asking, &bearer), way_m = hs_limit_carry_m(asking);
    double per_h = hs_limit_cycles_per_h(asking), hours = hs_limit_hours(asking);
    double value_kg = share_kg * per_h * hours;
    const hs_iso11228_day *row = hs_iso11228_day_of(way_m);

    finding->source = HS_SRC_iso_11228_1_day;
    finding->confidence = HS_CONF_MEMORY;
    finding->bearer = bearer;
    if (!hs_has(value_kg)) {
        hs_finding_missing(finding, HS_SAY(limits_unknown_mass));
        return;
    }
    if (ask_day_mass_site(asking, finding))
        return;
    HS_WORK(&finding->working, day_mass, value_kg, "kg", {"m", share_kg, "kg"},
            {"n", per_h, "/h"}, {"T", hours, "h"});
    if (asking->run->setup->bearers[bearer].suit != NULL)
        hs_finding_scope(finding, value_kg, HS_SAY(day_mass_suit, value_kg));
    else if (row == NULL)
        hs_finding_scope(finding, value_kg, HS_SAY(day_mass_far, value_kg, way_m));
    else if (hours > 8.0)
        hs_finding_scope(finding, value_kg, HS_SAY(limits_hours, hours));
    else
        judge_day_mass(asking, finding, value_kg, row);
}

typedef struct {
    double worn_kg;               /* the suit's mass that the wearer carries */
    double cycle_s;               /* way and way back */
    double cycle_J, cycle_seen_J; /* seen: walking and standing alone, by Pandolf */
    double standing_W;
    hs_working *working; /* a line a leg; NULL: not wanted */
} effort;

static double
worn_kg_of(const hs_suit *suit)
{
    if (suit == NULL)
        return 0.0;
    if (suit->kind != HS_SUIT_POWERED)
        return hs_or(suit->mass_kg, 0.0);
    return (1.0 - suit->self_carried) * suit->mass_kg;
}

static double
pandolf_J(
    const hs_person *person, double worn_kg, double speed_m_s, double grade, double time_s)
{
    hs_metabolic_input in = {.body_kg = person->mass_kg,
                             .load_kg = worn_kg,
                             .speed_m_s = speed_m_s,
                             .grade = grade,
                             .time_s = time_s,
                             .terrain = 1.0};

    return hs_metabolic_J(HS_METABOLIC_ROW_pandolf, &in);
}

static double
handling_J(const hs_limit_leg *leg, const hs_metabolic_input *in, bool with_legs)
{
    bool lifts = leg->height_m[1] > leg->height_m[0];
    hs_metabolic_row low =
        lifts ? HS_METABOLIC_ROW_garg_stoop_lift : HS_METABOLIC_ROW_garg_stoop_lower;
    hs_metabolic_row high =
        lifts ? HS_METABOLIC_ROW_garg_arm_lift : HS_METABOLIC_ROW_garg_arm_lower;

    if (with_legs)
        low = lifts ? HS_METABOLIC_ROW_garg_squat_lift : HS_METABOLIC_ROW_garg_squat_lower;
    return hs_metabolic_J(HS_METABOLIC_ROW_garg_stand, in) + hs_metabolic_J(low, in) +
           hs_metabolic_J(high, in);
}

/* The same with its printed formula: metres below (u) and above (o) the height where the arms take over, the load's way on
 * either side of it (y, z). */
static void
record_handling(const hs_limit_leg *leg,
                const hs_metabolic_input *in,
                bool with_legs,
                double before_J,
                effort *sum)
{
    bool lifts = leg->height_m[1] > leg->height_m[0];
    double low_m = fmin(in->from_m, in->to_m), high_m = fmax(in->from_m, in->to_m);
    hs_equation_id equation = lifts ? HS_EQ_day_stoop_lift : HS_EQ_day_stoop_lower;
    hs_term terms[] = {{"before", before_J, "J"},
                       {"B", in->body_kg, "kg"},
                       {"t", in->time_s, "s"},
                       {"u", fmax(HS_METABOLIC_ARMS_m - low_m, 0.0), "m"},
                       {"s", in->is_male ? 1.0 : 0.0, ""},
                       {"L", in->load_kg, "kg"},
                       {"y", fmax(fmin(high_m, HS_METABOLIC_ARMS_m) - low_m, 0.0), "m"},
                       {"o", fmax(high_m - HS_METABOLIC_ARMS_m, 0.0), "m"},
                       {"z", fmax(high_m - fmax(low_m, HS_METABOLIC_ARMS_m), 0.0), "m"}};

    if (with_legs)
        equation = lifts ? HS_EQ_day_squat_lift : HS_EQ_day_squat_lower;
    hs_working_add(sum->working, equation, terms, (int)(sizeof terms / sizeof *terms),
                   sum->cycle_J, "J");
}

/* One leg with the load in the hands. */
static void
add_leg(const hs_asking *asking, const hs_limit_leg *leg, effort *sum)
{
    const hs_person *person = &asking->run->persons[leg->bearer];
    const hs_place *a = &asking->run->stations[leg->from].place,
                   *b = &asking->run->stations[leg->to].place;
    double time_s = b->t_s - a->t_s;
    double rise_m = b->bearers[leg->bearer].floor_z_m - a->bearers[leg->bearer].floor_z_m;
    bool carries = leg->move == HS_MOVE_CARRY && leg->way_m > 0.0;
    bool with_legs = asking->run->setup->bearers[leg->bearer].style == HS_STYLE_LEGS;
    double before_J = sum->cycle_J;
    hs_metabolic_input in = {.body_kg = person->mass_kg + sum->worn_kg,
                             .load_kg = leg->held_kg,
                             .from_m = leg->height_m[0],
                             .to_m = leg->height_m[1],
                             .speed_m_s = carries ? leg->speed_m_s : 0.0,
                             .grade = carries ? fmax(0.0, rise_m / leg->way_m) : 0.0,
                             .time_s = time_s,
                             .terrain = 1.0,
                             .is_male = person->sex != HS_SEX_FEMALE};

    sum->cycle_seen_J += pandolf_J(person, sum->worn_kg, in.speed_m_s, in.grade, time_s);
    if (carries) {
        sum->cycle_J += hs_metabolic_J(HS_METABOLIC_ROW_garg_stand, &in) +
                        hs_metabolic_J(HS_METABOLIC_ROW_garg_carry_sides, &in);
        HS_WORK(sum->working, day_carry, sum->cycle_J, "J", {"before", before_J, "J"},
                {"t", time_s, "s"}, {"B", in.body_kg, "kg"}, {"V", in.speed_m_s, "m/s"},
                {"L", in.load_kg, "kg"}, {"G", 100.0 * in.grade, "%"});
    } else {
        sum->cycle_J += handling_J(leg, &in, with_legs);
        record_handling(leg, &in, with_legs, before_J, sum);
    }
}

/* Dwells with the load in the hands; where it is set down nothing is held. */
static void
add_holds(const hs_asking *asking, int bearer, effort *sum)
{
    const hs_run *run = asking->run;
    const hs_person *person = &run->persons[bearer];

    for (int s = 1; s < run->n_stations; s++) {
        const hs_place *place = &run->stations[s].place;
        const hs_bearer_state *state = &run->stations[s].bearers[bearer];
        bool is_down = asking->task->route.points[place->point].set_down == HS_YES;
        hs_metabolic_input in = {.body_kg = person->mass_kg + sum->worn_kg,
                                 .load_kg = run->setup->bearers[bearer].suit != NULL
                                                ? state->felt.felt_N / HS_GRAVITY_m_s2
                                                : state->static_share_N / HS_GRAVITY_m_s2,
                                 .time_s = place->t_s - run->stations[s - 1].place.t_s};

        double before_J = sum->cycle_J;

        if (!place->in_hold || !(in.time_s > 0.0))
            continue;
        sum->cycle_seen_J += sum->standing_W * in.time_s;
        sum->cycle_J += hs_metabolic_J(HS_METABOLIC_ROW_garg_stand, &in);
        if (!is_down)
            sum->cycle_J += hs_metabolic_J(HS_METABOLIC_ROW_garg_hold_sides, &in);
        HS_WORK(sum->working, day_hold, sum->cycle_J, "J", {"before", before_J, "J"},
                {"t", in.time_s, "s"}, {"B", in.body_kg, "kg"},
                {"L", is_down ? 0.0 : in.load_kg, "kg"});
    }
}

static effort
effort_of(const hs_asking *asking, int bearer, hs_working *working)
{
    const hs_run *run = asking->run;
    const hs_person *person = &run->persons[bearer];
    double back_s = hs_or(asking->task->work.one_way_empty_walk_m, 0.0) / EMPTY_WALK_m_s;
    double back_J;
    const hs_limit_leg *legs;
    int n = hs_limit_legs(asking, bearer, &legs);
    effort sum = {.worn_kg = worn_kg_of(run->setup->bearers[bearer].suit), .working = working};

    sum.standing_W = pandolf_J(person, sum.worn_kg, 0.0, 0.0, 1.0);
    for (int i = 0; i < n; i++)
        add_leg(asking, &legs[i], &sum);
    add_holds(asking, bearer, &sum);
    back_J = pandolf_J(person, sum.worn_kg, EMPTY_WALK_m_s, 0.0, back_s);
    if (back_s > 0.0)
        HS_WORK(working, day_back, sum.cycle_J + back_J, "J", {"before", sum.cycle_J, "J"},
                {"t", back_s, "s"}, {"W", person->mass_kg, "kg"}, {"w", sum.worn_kg, "kg"},
                {"V", EMPTY_WALK_m_s, "m/s"});
    sum.cycle_J += back_J;
    sum.cycle_seen_J += back_J;
    sum.cycle_s = back_s + (run->n_stations > 0 ? run->stations[run->n_stations - 1].place.t_s -
                                                      run->stations[0].place.t_s
                                                : 0.0);
    return sum;
}

/* Cycles that fit into an hour: more than that cannot be worked. */
static double
fitting_per_h(const hs_asking *asking, const effort *work)
{
    double per_h = hs_limit_cycles_per_h(asking);

    return work->cycle_s > 0.0 ? fmin(per_h, HS_J_PER_Wh / work->cycle_s) : per_h;
}

static double
rate_W(const effort *work, double cycle_J, double per_h)
{
    return cycle_J * per_h / HS_J_PER_Wh +
           work->standing_W * (1.0 - per_h * work->cycle_s / HS_J_PER_Wh);
}

/* Murrell's rest, seated, in each hour at today's pace, so that the hour's mean comes to near_ratio of the limit. */
static void
say_rest(const hs_asking *asking, hs_finding *finding)
{
    double standard_W = asking->near_ratio * finding->limit;
    double rest_min =
        hs_rest_murrell_min(finding->value, standard_W, HS_REST_MURRELL_W, MINUTES_per_h);

    if (!hs_has(rest_min))
        return;
    HS_WORK(&finding->working, rest_murrell, rest_min, "min", {"T", MINUTES_per_h, "min"},
            {"K", finding->value, "W"}, {"S", standard_W, "W"}, {"r", HS_REST_MURRELL_W, "W"});
    finding->remedy.reason = HS_REASON_day_energy_remedy_rest;
    finding->remedy.number[2] = 60.0 * ceil(rest_min + 1e-9);
}

static void
say_energy_remedy(const hs_asking *asking, hs_finding *finding, const effort *work)
{
    double per_h = hs_limit_cycles_per_h(asking), most_per_h;
    double over_standing_J = work->cycle_J - work->standing_W * work->cycle_s;

    if (finding->status != HS_STATUS_NEAR && finding->status != HS_STATUS_BEYOND)
        return;
    most_per_h = (asking->near_ratio * finding->limit - work->standing_W) * HS_J_PER_Wh /
                 over_standing_J * (1.0 - 1e-9);
    most_per_h = hs_limit_round_down(most_per_h);
    if (!(most_per_h > 0.0)) {
        finding->remedy = HS_SAY(day_energy_remedy_none);
        return;
    }
    finding->remedy = HS_SAY(day_energy_remedy, most_per_h, per_h);
    say_rest(asking, finding);
}

/* A published limit, of the program's own or of a chosen set (from): may it decide? */
static void
say_energy_known(hs_finding *candidate, const hs_site_limit *from, bool by_walking_alone)
{
    bool decides = by_walking_alone && (from == NULL || !from->is_unconfirmed);

    candidate->confidence = decides ? HS_CONF_SEEN : HS_CONF_MEMORY;
    if (from == NULL)
        candidate->source = decides ? HS_SRC_niosh_energy_1981 : HS_SRC_garg_1978;
    if (from != NULL) {
        candidate->text.name[0] = from->set;
        candidate->text.name[1] = from->wording;
        candidate->text.reason =
            decides ? HS_REASON_day_energy_set : HS_REASON_day_energy_set_memory;
    } else if (!decides) {
        candidate->text.reason = HS_REASON_day_energy_memory;
    }
}

static void
judge_energy(const hs_asking *asking, int bearer, hs_finding *candidate)
{
    effort work = effort_of(asking, bearer, &candidate->working);
    hs_sex sex = asking->run->persons[bearer].sex;
    double hours = hs_limit_hours(asking), per_h = fitting_per_h(asking, &work);
    double value_W = rate_W(&work, work.cycle_J, per_h),
           seen_W = rate_W(&work, work.cycle_seen_J, per_h), rest_W;
    double kcal_min = hs_energy_limit_kcal_min(sex, hours),
           limit_W = kcal_min * HS_J_PER_KCAL / 60.0;
    const hs_site_limit *own = NULL;
    hs_site_answer site = hs_limit_site(asking, bearer, NULL, candidate, &limit_W, &own);
    bool is_own = site == HS_SITE_FIGURE && !own->is_published;

    candidate->bearer = bearer;
    if (!hs_has(value_W)) {
        candidate->working = (hs_working){.arena = candidate->working.arena};
        hs_finding_missing(candidate, HS_SAY(day_energy_unknown));
        return;
    }
    rest_W = work.standing_W * (1.0 - per_h * work.cycle_s / HS_J_PER_Wh);
    HS_WORK(&candidate->working, day_standing, rest_W, "W",
            {"W", asking->run->persons[bearer].mass_kg, "kg"}, {"w", work.worn_kg, "kg"},
            {"n", per_h, "/h"}, {"c", work.cycle_s, "s"});
    HS_WORK(&candidate->working, day_rate, value_W, "W", {"E", work.cycle_J, "J"},
            {"n", per_h, "/h"}, {"S", rest_W, "W"});
    hs_energy_beside(asking, bearer, work.worn_kg, &candidate->working);
    if (site == HS_SITE_SILENT) {
        hs_finding_scope(candidate, value_W, hs_limit_set_silent(own));
        return;
    }
    if (!hs_has(limit_W)) {
        candidate->source = HS_SRC_niosh_energy_1981;
        hs_finding_scope(candidate, value_W, HS_SAY(day_energy_hours, hours));
        return;
    }
    /* Garg's coefficients are remembered: only the part by Pandolf may decide alone. */
    candidate->text = HS_SAY(day_energy_is, value_W, limit_W, seen_W);
    if (!is_own)
        say_energy_known(candidate, site == HS_SITE_FIGURE ? own : NULL, seen_W > limit_W);
    else if (candidate->confidence == HS_CONF_MEMORY)
        candidate->text.reason = HS_REASON_day_energy_memory;
    if (site == HS_SITE_NONE)
        HS_WORK(&candidate->working, day_energy_limit, limit_W, "W",
                {"k", kcal_min, "kcal/min"});
    hs_finding_judge(candidate, value_W, limit_W, asking->near_ratio);
    say_energy_remedy(asking, candidate, &work);
}

void
hs_check_day_energy(const hs_asking *asking, hs_finding *finding)
{
    for (int b = 0; b < asking->run->setup->n_bearers; b++) {
        hs_finding candidate = hs_finding_start(asking, HS_CHECK_day_energy);

        judge_energy(asking, b, &candidate);
        if (finding->status == HS_STATUS_NONE || hs_finding_worse(&candidate, finding))
            *finding = candidate;
    }
}

double
hs_day_metabolic_W(const hs_asking *asking)
{
    double most_W = 0.0;

    for (int b = 0; b < asking->run->setup->n_bearers; b++) {
        effort work = effort_of(asking, b, NULL);
        double here_W = rate_W(&work, work.cycle_J, fitting_per_h(asking, &work));

        if (!hs_has(here_W))
            return HS_ABSENT;
        most_W = fmax(most_W, here_W);
    }
    return most_W;
}

double
hs_day_mass_kg_per_h(const hs_asking *asking)
{
    int bearer;

    return worst_share_kg(asking, &bearer) * hs_limit_cycles_per_h(asking);
}

/* Donning and battery changes of one bearer in the shift, min. */
static double
suit_minutes(const hs_asking *asking, int bearer)
{
    const hs_suit *suit = asking->run->setup->bearers[bearer].suit;
    hs_energy_cycle cycle;
    hs_energy energy;
    double minutes;

    if (suit == NULL)
        return 0.0;
    minutes = hs_or(suit->donning_min, 0.0);
    if (suit->kind == HS_SUIT_POWERED && suit->has_power && suit->swap_min > 0.0) {
        hs_energy_cycle_of(asking->run, bearer, &cycle);
        if (hs_energy_sum(suit, &cycle, NULL, &energy, NULL) == HS_OK && energy.n_swaps > 0.0)
            minutes += energy.n_swaps * suit->swap_min;
    }
    return minutes;
}

double
hs_day_worker_minutes_per_h(const hs_asking *asking)
{
    double minutes = 0.0, hours = hs_limit_hours(asking), per_h = hs_limit_cycles_per_h(asking);

    for (int b = 0; b < asking->run->setup->n_bearers; b++) {
        effort work = effort_of(asking, b, NULL);

        minutes += per_h * work.cycle_s / 60.0;
        if (hours > 0.0)
            minutes += suit_minutes(asking, b) / hours;
    }
    return minutes;
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  do the grips hold, against rating, end piece, hands, palms and the load's own surface?
 * Answer:    the check grip.hold: the worst grip at the worst place.
 * Not here:  squeeze and closure (forces/grip.c), strength of the joints that press (body/). */
#include "check.h"
#include "grip.h"
#include "grip_beside.h"
#include "grip_figures.h"
#include "legs.h"
#include "units.h"

#define SLIP_FACTOR  1.5  /* default of policy.slip_factor: common practice, no source */
#define PAD_FRICTION 0.35 /* default friction of a pad: cautious, common practice, no source */
#define PAD_ALONG_m  0.08 /* default size of a palm: common practice, no source */
#define PAD_UP_m     0.09
#define DISTURBANCE                                                                            \
    0.15 /* of the weight, for the working only: 1.5 m/s2, common practice, no source */
#define MARGIN                                                                                 \
    0.999 /* a remedy's figure is taken this much inside, so that applied it is within */
#define MOST_FRICTION                                                                          \
    1.7 /* dry palm on smooth grab rails, 1.72: Ergonomics 45(10):717-731 (2002) */
#define EDGES_LIVE 12
#define KNOWN      12    /* answers kept while one option is judged (numerics) */
#define SAME       1e-13 /* relative: two needs, two places are one (numerics) */

typedef struct {
    int n, n_pads;
    hs_contact contacts[HS_GRIP_MAX_CONTACTS];
    int grip[HS_GRIP_MAX_PADS]; /* index of the used grip of each pad */
} pad_set;

/* A question about pads and its answer. */
typedef struct {
    pad_set pads;
    hs_wrench need;
    hs_squeeze squeeze;
    bool holds;
} pad_answer;

typedef struct {
    const hs_asking *asking;
    int station;
    double slip_factor;
    pad_answer *known; /* KNOWN of them, the last answers in turn */
    int n_known;
    pad_answer worst; /* what the finding kept so far was judged by; no pads: not by pads */
} hold;

static const hs_grip *
grip_of(const hold *h, int used)
{
    return &h->asking->task->load.grips[h->asking->run->setup->used[used]];
}

static const hs_bearer_setup *
bearer_of(const hold *h, int used)
{
    return &h->asking->run->setup->bearers[h->asking->run->setup->used_by[used]];
}

/* The grip's own, else its effector's, else the default. */
static double
friction_of(const hold *h, int used)
{
    const hs_grip *grip = grip_of(h, used);
    const hs_effector *effector = bearer_of(h, used)->effector;

    if (hs_has(grip->friction))
        return grip->friction;
    if (effector != NULL && hs_has(effector->friction))
        return effector->friction;
    hs_assume(h->asking->assumptions, PAD_FRICTION, NULL,
              HS_SAY(assumed_pad_friction, PAD_FRICTION), "load.grips[%d].friction",
              h->asking->run->setup->used[used]);
    return PAD_FRICTION;
}

/* Unit, load frame; level and towards the CG along the nearer axis where it is not given. */
static hs_vec3
inward_of(const hold *h, int used)
{
    const hs_grip *grip = grip_of(h, used);
    const hs_load_state *load = h->asking->load;
    double dx = load->cg_m.x - grip->at_m.x, dy = load->cg_m.y - grip->at_m.y;

    if (grip->has_inward && hs_vec3_length(grip->inward) > 0.0)
        return hs_vec3_scale(grip->inward, 1.0 / hs_vec3_length(grip->inward));
    hs_assume(h->asking->assumptions, HS_ABSENT, "towards the CG", HS_SAY(assumed_inward),
              "load.grips[%d].inward", h->asking->run->setup->used[used]);
    if (fabs(dx) < HS_SAME_PLACE_m && fabs(dy) < HS_SAME_PLACE_m)
        return (hs_vec3){0, 0, 1};
    return fabs(dx) >= fabs(dy) ? (hs_vec3){dx > 0.0 ? 1.0 : -1.0, 0, 0}
                                : (hs_vec3){0, dy > 0.0 ? 1.0 : -1.0, 0};
}

static void
add_pad(const hold *h, int used, hs_vec3 origin_m, pad_set *pads)
{
    const hs_grip *grip = grip_of(h, used);
    const hs_place *place = &h->asking->run->stations[h->station].place;
    hs_vec3 inward = hs_mat3_apply(&place->load_to_world, inward_of(h, used));
    bool has_size = hs_has(grip->pad_along_m) && hs_has(grip->pad_up_m);

    if (pads->n + 4 > HS_GRIP_MAX_CONTACTS || pads->n_pads >= HS_GRIP_MAX_PADS)
        return;
    if (!has_size)
        hs_assume(h->asking->assumptions, HS_ABSENT, "0.08 x 0.09",
                  HS_SAY(assumed_pad_size, PAD_ALONG_m, PAD_UP_m), "load.grips[%d].pad_m",
                  h->asking->run->setup->used[used]);
    pads->n += hs_grip_pad_contacts(
        hs_vec3_sub(place->grip_m[used], origin_m), inward,
        has_size ? grip->pad_along_m : PAD_ALONG_m, has_size ? grip->pad_up_m : PAD_UP_m,
        friction_of(h, used) / h->slip_factor, pads->n_pads, &pads->contacts[pads->n]);
    pads->grip[pads->n_pads++] = used;
}

static double
push_per_grip_N(const hold *h)
{
    const hs_place *place = &h->asking->run->stations[h->station].place;
    double m_kg = h->asking->load->mass_kg, push_N = m_kg * place->cg_acc_m_s2.x;

    if (place->slide_sign != 0.0 && hs_has(place->slide_friction))
        push_N += place->slide_sign * place->slide_friction * place->held_up * m_kg *
                  (HS_GRAVITY_m_s2 + place->cg_acc_m_s2.z);
    return push_N / h->asking->run->setup->n_used;
}

/* The whole load's force and moment about its CG. */
static hs_wrench
whole_need(const hold *h)
{
    const hs_setup *setup = h->asking->run->setup;
    const hs_place *place = &h->asking->run->stations[h->station].place;
    const hs_load_state *load = h->asking->load;
    hs_wrench need = {.force_N = {push_per_grip_N(h) * setup->n_used, 0,
                                  h->asking->run->stations[h->station].problem.total_N}};

    if (load->has_inertia && place->pitch_acc_rad_s2 != 0.0) {
        hs_mat3 back = hs_mat3_transpose(&place->load_to_world);
        hs_mat3 half = hs_mat3_mul(&place->load_to_world, &load->inertia_kg_m2);
        hs_mat3 world = hs_mat3_mul(&half, &back);
        /* front end up is a turn about -y of the load */
        hs_vec3 turn = {sin(setup->heading_rad), -cos(setup->heading_rad), 0};

        need.moment_Nm = hs_vec3_scale(hs_mat3_apply(&world, turn), place->pitch_acc_rad_s2);
    }
    return need;
}

/* What one bearer's pads have to give by the shares: forces at the pads' own places, about their middle. */
static hs_wrench
share_need(const hold *h, const pad_set *pads, hs_vec3 origin_m)
{
    const hs_station *station = &h->asking->run->stations[h->station];
    hs_wrench need = {{0, 0, 0}, {0, 0, 0}};

    for (int p = 0; p < pads->n_pads; p++) {
        int used = pads->grip[p];
        hs_vec3 force_N = {push_per_grip_N(h), 0, station->shares.up_N[used]};
        hs_vec3 at_m = hs_vec3_sub(station->place.grip_m[used], origin_m);

        need.force_N = hs_vec3_add(need.force_N, force_N);
        need.moment_Nm = hs_vec3_add(need.moment_Nm, hs_vec3_cross(at_m, force_N));
    }
    return need;
}

static void
place_finding(const hold *h, int used, hs_finding *finding)
{
    hs_finding_at(finding, h->asking->run, h->station, h->asking->run->setup->used_by[used]);
    finding->confidence = HS_CONF_SEEN;
    finding->source = HS_SRC_entered_limit;
}

/* The lower of two limits, with its reason and source. */
static void
take_least(hs_finding *finding,
           double *least,
           double limit,
           hs_reason reason,
           hs_source_id source,
           hs_confidence confidence)
{
    if (!hs_has(limit) || limit >= *least)
        return;
    *least = limit;
    finding->text.reason = reason;
    finding->source = source;
    finding->confidence = confidence;
}

/* The friction or the mass that passes; no friction is named that no surface has. */
static void
advise_squeeze(const hold *h, int used, hs_finding *finding)
{
    double more = finding->ratio / (h->asking->near_ratio * MARGIN);
    double friction = hs_friction_up(friction_of(h, used) * more);
    double mass_kg = hs_limit_round_down(h->asking->load->mass_kg / more);

    finding->remedy = friction <= MOST_FRICTION ? HS_SAY(grip_fix_squeeze, friction, mass_kg)
                                                : HS_SAY(grip_fix_squeeze_mass, mass_kg);
}

static void
judge_pad(const hold *h, const pad_set *pads, int pad, double squeeze_N, hs_finding *finding)
{
    int used = pads->grip[pad], bearer = h->asking->run->setup->used_by[used];
    const hs_grip *grip = grip_of(h, used);
    const hs_effector *effector = bearer_of(h, used)->effector;
    double least_N = (double)INFINITY;
    bool is_missing = false;

    place_finding(h, used, finding);
    finding->text = (hs_message){.number = {squeeze_N}, .name = {grip->id}};
    take_least(finding, &least_N, grip->squeeze_limit_N, HS_REASON_grip_pads_load,
               HS_SRC_entered_limit, HS_CONF_SEEN);
    if (effector != NULL) {
        take_least(finding, &least_N, effector->max_force_N, HS_REASON_grip_pads_effector,
                   HS_SRC_entered_limit, HS_CONF_SEEN);
    } else {
        const hs_person *person = &h->asking->run->persons[bearer];
        const hs_body_state *body = &h->asking->run->stations[h->station].bearers[bearer].body;
        bool is_female = person->sex == HS_SEX_FEMALE;
        hs_palm palm = hs_palm_press(person, hs_palm_reach_m(body), &finding->working);
        double press_N =
            palm.press_N * hs_palm_times(h->asking->run, h->station, bearer, &is_missing);

        if (!is_missing && palm.by_joint)
            take_least(finding, &least_N, press_N, HS_REASON_grip_pads_joint,
                       HS_SRC_shoulder_adduction, HS_CONF_DERIVED);
        else if (!is_missing)
            take_least(finding, &least_N, press_N, HS_REASON_grip_pads_palms,
                       is_female ? HS_SRC_palm_squeeze : HS_SRC_laubach_1976_derived,
                       is_female ? HS_CONF_SEEN : HS_CONF_DERIVED);
    }
    if (isinf(least_N)) {
        if (is_missing)
            hs_finding_missing(finding, HS_SAY(grip_felt_missing));
        return;
    }
    finding->text.number[1] = least_N;
    hs_finding_judge(finding, squeeze_N, least_N, h->asking->near_ratio);
    if (is_missing && finding->status != HS_STATUS_BEYOND)
        hs_finding_missing(finding, HS_SAY(grip_felt_missing));
    else if (finding->status != HS_STATUS_WITHIN)
        advise_squeeze(h, used, finding);
}

static void
record_squeeze(const hold *h, hs_finding *finding)
{
    const pad_set *pads = &h->worst.pads;
    const hs_wrench *need = &h->worst.need;
    const hs_squeeze *squeeze = &h->worst.squeeze;
    const hs_grip *grip = grip_of(h, pads->grip[0]);
    hs_vec3 direction;
    double pushed_N, friction = pads->contacts[0].friction * h->slip_factor;

    if (squeeze->is_closed_form)
        HS_WORK(&finding->working, grip_pads, squeeze->squeeze_N, "N",
                {"W", hs_vec3_length(need->force_N), "N"}, {"s", h->slip_factor, ""},
                {"mu", friction, ""});
    hs_grip_write_pads(&(hs_grip_pads){pads->contacts, pads->n, pads->n_pads,
                                       hs_or(grip->pad_along_m, PAD_ALONG_m),
                                       hs_or(grip->pad_up_m, PAD_UP_m), friction},
                       squeeze, !h->asking->is_live, &finding->working);
    if (h->asking->is_live || h->asking->is_what_if ||
        hs_grip_worst_direction(pads->contacts, pads->n, need,
                                DISTURBANCE * hs_vec3_length(need->force_N), 8, &direction,
                                &pushed_N, NULL) != HS_OK ||
        !hs_has(pushed_N))
        return;
    HS_WORK(&finding->working, grip_disturbed, pushed_N, "N", {"N", squeeze->squeeze_N, "N"},
            {"more", pushed_N - squeeze->squeeze_N, "N"});
}

/* Same contacts, and a need that differs by a factor alone: the squeeze differs by that factor. */
static bool
is_scaled(const pad_answer *known,
          const pad_set *pads,
          const hs_wrench *need,
          double *ret_factor)
{
    double length_N = hs_vec3_length(known->need.force_N),
           factor = hs_vec3_length(need->force_N) / length_N;

    if (!(length_N > 0.0) || !(factor > 0.0) || known->pads.n != pads->n)
        return false;
    if (!(hs_vec3_length(hs_vec3_sub(
              need->force_N, hs_vec3_scale(known->need.force_N, factor))) <= SAME * length_N) ||
        !(hs_vec3_length(
              hs_vec3_sub(need->moment_Nm, hs_vec3_scale(known->need.moment_Nm, factor))) <=
          SAME * length_N))
        return false;
    for (int i = 0; i < pads->n; i++) {
        const hs_contact *a = &known->pads.contacts[i], *b = &pads->contacts[i];

        if (!(hs_vec3_length(hs_vec3_sub(a->at_m, b->at_m)) <= SAME) ||
            !(hs_vec3_length(hs_vec3_sub(a->inward, b->inward)) <= SAME) ||
            a->friction != b->friction || a->turning_m != b->turning_m || a->pad != b->pad)
            return false;
    }
    *ret_factor = factor;
    return true;
}

/* The squeeze; a question that was answered at an earlier place is not solved again. */
static bool
squeeze_of(hold *h, const pad_set *pads, const hs_wrench *need, hs_squeeze *ret_squeeze)
{
    int n_edges = h->asking->is_live ? EDGES_LIVE : HS_GRIP_EDGES;
    pad_answer *slot;
    double factor;

    for (int i = 0; i < h->n_known && i < KNOWN; i++)
        if (is_scaled(&h->known[i], pads, need, &factor)) {
            *ret_squeeze = h->known[i].squeeze;
            ret_squeeze->squeeze_N *= factor;
            for (int p = 0; p < pads->n_pads; p++)
                ret_squeeze->pad_N[p] *= factor;
            return h->known[i].holds;
        }
    slot = &h->known[h->n_known++ % KNOWN];
    slot->pads = *pads;
    slot->need = *need;
    slot->squeeze = (hs_squeeze){0};
    slot->holds = hs_grip_squeeze_known(h->asking->task->memo, pads->contacts, pads->n, need,
                                        n_edges, &slot->squeeze, NULL) == HS_OK;
    *ret_squeeze = slot->squeeze;
    return slot->holds;
}

/* Squeeze of a set of pads; judged pad by pad, the worst kept. False when nothing holds. */
static bool
ask_pads(hold *h, const pad_set *pads, const hs_wrench *need, hs_finding *worst)
{
    hs_squeeze squeeze;

    if (!squeeze_of(h, pads, need, &squeeze))
        return false;
    for (int p = 0; p < pads->n_pads; p++) {
        hs_finding candidate = hs_finding_start(h->asking, HS_CHECK_grip_hold);

        /* Pads are pressed alike where nothing asks for more on one side: the hardest pressed one counts. */
        judge_pad(h, pads, p, squeeze.squeeze_N, &candidate);
        if (hs_finding_worse(&candidate, worst)) {
            *worst = candidate;
            h->worst = (pad_answer){*pads, *need, squeeze, true};
        }
    }
    return true;
}

static void
say_slips(hold *h, const pad_set *pads, hs_finding *worst)
{
    hs_finding candidate = hs_finding_start(h->asking, HS_CHECK_grip_hold);

    place_finding(h, pads->grip[0], &candidate);
    candidate.source = HS_SRC_friction_cones;
    candidate.confidence = HS_CONF_DERIVED;
    candidate.remedy = HS_SAY(grip_pads_fix);
    hs_finding_beyond(&candidate, (hs_message){.reason = HS_REASON_grip_pads_slip,
                                               .name = {grip_of(h, pads->grip[0])->id}});
    if (hs_finding_worse(&candidate, worst)) {
        *worst = candidate;
        h->worst.pads.n = 0;
    }
}

static void
collect_pads(const hold *h, int bearer /* -1: all */, hs_vec3 origin_m, pad_set *pads)
{
    const hs_setup *setup = h->asking->run->setup;

    pads->n = pads->n_pads = 0;
    for (int i = 0; i < setup->n_used; i++)
        if (grip_of(h, i)->kind == HS_GRIP_PAD && (bearer < 0 || setup->used_by[i] == bearer))
            add_pad(h, i, origin_m, pads);
}

static hs_vec3
middle_of(const hold *h, int bearer)
{
    const hs_setup *setup = h->asking->run->setup;
    const hs_place *place = &h->asking->run->stations[h->station].place;
    hs_vec3 sum = {0, 0, 0};
    int n = 0;

    for (int i = 0; i < setup->n_used; i++)
        if (grip_of(h, i)->kind == HS_GRIP_PAD && setup->used_by[i] == bearer) {
            sum = hs_vec3_add(sum, place->grip_m[i]);
            n++;
        }
    return n > 0 ? hs_vec3_scale(sum, 1.0 / n) : sum;
}

/* What pads are pressed against besides pads: a handle or a hook of the same load gives way to no push along the level. */
static void
add_counters(const hold *h, hs_vec3 origin_m, pad_set *pads)
{
    const hs_setup *setup = h->asking->run->setup;
    const hs_place *place = &h->asking->run->stations[h->station].place;
    static const hs_vec3 level[4] = {{1, 0, 0}, {-1, 0, 0}, {0, 1, 0}, {0, -1, 0}};

    for (int i = 0; i < setup->n_used; i++) {
        hs_grip_kind kind = grip_of(h, i)->kind;

        if ((kind != HS_GRIP_HANDLE && kind != HS_GRIP_HOOK) ||
            pads->n + 4 > HS_GRIP_MAX_CONTACTS / 2)
            continue;
        for (int k = 0; k < 4; k++)
            pads->contacts[pads->n++] =
                (hs_contact){.at_m = hs_vec3_sub(place->grip_m[i], origin_m),
                             .inward = level[k],
                             .pad = HS_GRIP_NOT_A_PAD};
    }
}

/* One bearer holds all of it by pads: whole load. Several: each by its share; where one side alone cannot press, together. */
static void
ask_all_pads(hold *h, hs_finding *worst)
{
    const hs_setup *setup = h->asking->run->setup;
    const hs_place *place = &h->asking->run->stations[h->station].place;
    hs_vec3 cg_m = place->cg_m;
    bool only_pads = true, is_held = true;
    hs_finding each = *worst;
    pad_answer before = h->worst;
    pad_set pads;

    for (int i = 0; i < setup->n_used; i++)
        only_pads = only_pads && grip_of(h, i)->kind == HS_GRIP_PAD;
    if (!hs_has(cg_m.z))
        cg_m.z = place->grip_m[0].z;
    if (only_pads && setup->n_bearers == 1) {
        hs_wrench need = whole_need(h);

        collect_pads(h, -1, cg_m, &pads);
        if (!ask_pads(h, &pads, &need, worst))
            say_slips(h, &pads, worst);
        return;
    }
    for (int b = 0; b < setup->n_bearers && is_held; b++) {
        hs_vec3 middle_m = middle_of(h, b);
        hs_wrench need;

        collect_pads(h, b, middle_m, &pads);
        need = share_need(h, &pads, middle_m);
        is_held = pads.n_pads == 0 || ask_pads(h, &pads, &need, &each);
    }
    if (is_held) {
        *worst = each;
        return;
    }
    h->worst = before;
    collect_pads(h, -1, cg_m, &pads);
    hs_wrench all = only_pads ? whole_need(h) : share_need(h, &pads, cg_m);
    if (!only_pads)
        add_counters(h, cg_m, &pads);
    if (!ask_pads(h, &pads, &all, worst))
        say_slips(h, &pads, worst);
}

/* Handle, hook, edge, strap, cradle: what it carries against rating, end piece, hands. */
static void
judge_up(const hold *h, int used, hs_finding *finding)
{
    const hs_run *run = h->asking->run;
    int bearer = run->setup->used_by[used];
    const hs_grip *grip = grip_of(h, used);
    const hs_effector *effector = bearer_of(h, used)->effector;
    const hs_bearer_sample *sample = &run->samples[h->station].bearers[bearer];
    double up_N = run->stations[h->station].shares.up_N[used], least_N = (double)INFINITY,
           felt_N = HS_ABSENT;
    bool is_missing = effector == NULL && !hs_has(sample->felt_force_N);

    place_finding(h, used, finding);
    finding->text = (hs_message){.number = {up_N}, .name = {grip->id}};
    take_least(finding, &least_N, grip->rating_N, HS_REASON_grip_up_rating,
               HS_SRC_entered_limit, HS_CONF_SEEN);
    if (effector != NULL) {
        take_least(finding, &least_N, effector->max_force_N, HS_REASON_grip_up_effector,
                   HS_SRC_entered_limit, HS_CONF_SEEN);
    } else if (!is_missing && up_N > 0.0 && sample->share_N > 0.0) {
        double strength_N = run->setup->used_hands[used] *
                            hs_grip_gloved_N(run->persons[bearer].grip_N,
                                             h->asking->task->policy.glove_loss_fraction);

        felt_N = sample->felt_force_N * up_N / sample->share_N;
        finding->text.number[2] = felt_N;
        finding->text.number[3] = strength_N;
        /* said in the grip's own force: what it may carry until the hands on it feel their strength */
        if (felt_N > 0.0)
            take_least(finding, &least_N, strength_N * up_N / felt_N, HS_REASON_grip_up_hands,
                       HS_SRC_hand_grip, HS_CONF_SEEN);
    }
    if (isinf(least_N)) {
        if (is_missing)
            hs_finding_missing(finding, HS_SAY(grip_felt_missing));
        return;
    }
    finding->text.number[1] = least_N;
    hs_finding_judge(finding, up_N, least_N, h->asking->near_ratio);
    if (is_missing && finding->status != HS_STATUS_BEYOND)
        hs_finding_missing(finding, HS_SAY(grip_felt_missing));
    else if (finding->status == HS_STATUS_BEYOND || finding->status == HS_STATUS_NEAR)
        finding->remedy = HS_SAY(grip_fix_mass, hs_limit_round_down(h->asking->load->mass_kg *
                                                                    h->asking->near_ratio *
                                                                    MARGIN / finding->ratio));
}

static void
record_up(const hold *h, int used, const hs_finding *candidate, hs_finding *worst)
{
    *worst = *candidate;
    if (!hs_has(worst->ratio))
        return;
    HS_WORK(&worst->working, grip_up, worst->ratio, "", {"up", worst->value, "N"},
            {"L", worst->limit, "N"});
    if (worst->text.number[2] > 0.0)
        hs_grip_write_beside_hands(h->asking, h->station, used, worst->text.number[2],
                                   &worst->working);
    if (worst->text.reason == HS_REASON_grip_up_hands)
        HS_WORK(&worst->working, grip_felt, worst->text.number[2] / worst->text.number[3], "",
                {"felt", worst->text.number[2], "N"}, {"G", worst->text.number[3], "N"});
}

static void
ask_slide(hold *h, hs_finding *worst)
{
    hs_finding candidate = hs_finding_start(h->asking, HS_CHECK_grip_hold);

    hs_grip_judge_slide(h->asking, h->station, h->slip_factor, &candidate);
    /* Near without a figure: what stands nearer to its limit by a figure stays. */
    if (!hs_finding_worse(&candidate, worst) || candidate.status == HS_STATUS_NONE)
        return;
    *worst = candidate;
    h->worst.pads.n = 0;
}

void
hs_check_grip_hold(const hs_asking *asking, hs_finding *finding)
{
    const hs_run *run = asking->run;
    hs_finding worst = {0};
    bool has_pads = false;
    hold h = {.asking = asking,
              .known = HS_NEW(asking->arena, pad_answer, KNOWN),
              .slip_factor = hs_or(asking->task->policy.slip_factor, SLIP_FACTOR)};

    for (int i = 0; i < run->setup->n_used; i++)
        has_pads =
            has_pads || asking->task->load.grips[run->setup->used[i]].kind == HS_GRIP_PAD;
    if (has_pads && !hs_has(asking->task->policy.slip_factor))
        hs_assume(asking->assumptions, SLIP_FACTOR, NULL,
                  HS_SAY(assumed_slip_factor, SLIP_FACTOR), "policy.slip_factor");
    for (int s = 0; s < run->n_stations; s++) {
        h.station = s;
        if (!run->stations[s].has_shares)
            continue;
        if (has_pads)
            ask_all_pads(&h, &worst);
        for (int i = 0; i < run->setup->n_used; i++) {
            hs_finding candidate = hs_finding_start(asking, HS_CHECK_grip_hold);

            if (grip_of(&h, i)->kind == HS_GRIP_PAD)
                continue;
            judge_up(&h, i, &candidate);
            if (hs_finding_worse(&candidate, &worst)) {
                record_up(&h, i, &candidate, &worst);
                h.worst.pads.n = 0;
            }
        }
        ask_slide(&h, &worst);
    }
    if (h.worst.pads.n > 0)
        record_squeeze(&h, &worst);
    if (worst.status != HS_STATUS_NONE) {
        hs_grip_write_change(asking, &worst.working);
        *finding = worst;
    }
}

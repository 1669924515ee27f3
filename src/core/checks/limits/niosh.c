/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what does the revised NIOSH lifting equation recommend?
 * Answer:    multipliers, their product, the composite index.
 * Not here:  legs of a route, teams, suits (niosh_checks.c). */
#include "niosh.h"

/* Places and angles are compared a little beyond rounding, so that 0.63 m typed is 63 cm. */
#define EDGE 1e-9

typedef struct {
    double per_min, fm[3][2];
} fm_row;

static const fm_row fm_rows[] = {
#define NIOSH_FM(f, s0, s1, m0, m1, l0, l1, conf) {f, {{s0, s1}, {m0, m1}, {l0, l1}}},
#include "lists/limits_niosh.def"
#undef NIOSH_FM
};

#define N_FM ((int)(sizeof fm_rows / sizeof *fm_rows))

hs_niosh_duration
hs_niosh_duration_of(double hours, double recovery_h)
{
    if (!(hours <= 8.0))
        return HS_NIOSH_NONE;
    if (hours <= 1.0 && recovery_h >= HS_NIOSH_RECOVERY_SHORT * hours)
        return HS_NIOSH_SHORT;
    /* 0.6 h after 2 h counts, whatever 0.3 x 2 rounds to */
    if (hours <= 2.0 && recovery_h >= HS_NIOSH_RECOVERY_MODERATE * hours - EDGE)
        return HS_NIOSH_MODERATE;
    return HS_NIOSH_LONG;
}

double
hs_niosh_fm_factor(double lifts_per_min, hs_niosh_duration duration, bool is_low)
{
    int column = is_low ? 0 : 1, i = 0;

    if (duration >= HS_NIOSH_NONE || !(lifts_per_min <= fm_rows[N_FM - 1].per_min + EDGE))
        return 0.0;
    if (lifts_per_min <= fm_rows[0].per_min + EDGE)
        return fm_rows[0].fm[duration][column];
    while (i < N_FM - 1 && fm_rows[i + 1].per_min < lifts_per_min - EDGE)
        i++;

    const fm_row *low = &fm_rows[i], *high = &fm_rows[i + 1];
    double from = low->fm[duration][column], to = high->fm[duration][column];
    double t = fmin(1.0, (lifts_per_min - low->per_min) / (high->per_min - low->per_min));

    if (!(to > 0.0))
        return 0.0;
    return from + (to - from) * t;
}

double
hs_niosh_cm_factor(hs_coupling coupling, bool is_low)
{
    switch (coupling) {
    case HS_COUPLING_GOOD:
        return 1.0;
    case HS_COUPLING_POOR:
        return 0.9;
    case HS_COUPLING_FAIR:
    default:
        return is_low ? 0.95 : 1.0;
    }
}

static double
am_of(double turn_deg)
{
    double a_deg = fabs(turn_deg);

    return a_deg <= 135.0 + EDGE ? 1.0 - 0.0032 * a_deg : 0.0;
}

static void
multiply(double constant, hs_niosh_answer *answer)
{
    answer->firwl_kg = constant * answer->hm_factor * answer->vm_factor * answer->dm_factor *
                       answer->am_factor * answer->cm_factor;
    answer->rwl_kg = answer->firwl_kg * answer->fm_factor;
}

void
hs_niosh_rwl(const hs_niosh_input *input, hs_niosh_answer *ret_answer)
{
    double h_cm = 100.0 * input->reach_m, v_cm = 100.0 * input->hand_height_m,
           d_cm = fabs(100.0 * input->distance_m);
    bool is_low = v_cm < 75.0 - EDGE;

    *ret_answer = (hs_niosh_answer){
        .hm_factor = h_cm <= 63.0 + EDGE ? fmin(1.0, 25.0 / h_cm) : 0.0,
        .vm_factor = v_cm <= 175.0 + EDGE ? fmax(0.0, 1.0 - 0.003 * fabs(v_cm - 75.0)) : 0.0,
        .dm_factor = d_cm <= 175.0 + EDGE ? fmin(1.0, 0.82 + 4.5 / d_cm) : 0.0,
        .am_factor = am_of(input->turn_deg),
        .fm_factor = hs_niosh_fm_factor(input->lifts_per_min, input->duration, is_low),
        .cm_factor = hs_niosh_cm_factor(input->coupling, is_low)};
    /* A reach or a travel of nothing counts as 25 cm, a reach behind the ankles too. */
    if (h_cm <= 25.0)
        ret_answer->hm_factor = 1.0;
    if (d_cm <= 25.0)
        ret_answer->dm_factor = 1.0;
    multiply(HS_NIOSH_LC_kg, ret_answer);
}

void
hs_niosh_rwl_us(double h_in,
                double v_in,
                double d_in,
                double turn_deg,
                double lifts_per_min,
                hs_niosh_duration duration,
                hs_coupling coupling,
                hs_niosh_answer *ret_answer_lb)
{
    bool is_low = v_in < 30.0 - EDGE;
    double way_in = fabs(d_in);

    *ret_answer_lb = (hs_niosh_answer){
        .hm_factor = h_in <= 25.0 + EDGE ? 10.0 / fmax(h_in, 10.0) : 0.0,
        .vm_factor = v_in <= 70.0 + EDGE ? fmax(0.0, 1.0 - 0.0075 * fabs(v_in - 30.0)) : 0.0,
        .dm_factor = way_in <= 70.0 + EDGE ? 0.82 + 1.8 / fmax(way_in, 10.0) : 0.0,
        .am_factor = am_of(turn_deg),
        .fm_factor = hs_niosh_fm_factor(lifts_per_min, duration, is_low),
        .cm_factor = hs_niosh_cm_factor(coupling, is_low)};
    multiply(HS_NIOSH_LC_lb, ret_answer_lb);
}

static double
single_index(const hs_niosh_task *task, hs_niosh_duration duration)
{
    double strwl_kg =
        task->firwl_kg * hs_niosh_fm_factor(task->lifts_per_min, duration, task->is_low);

    return strwl_kg > 0.0 ? task->mass_mean_kg / strwl_kg : (double)INFINITY;
}

/* Indices by falling single-task index; ties keep the order of entry. */
static void
order_tasks(const hs_niosh_task *tasks, int n, hs_niosh_duration duration, int *order)
{
    for (int i = 0; i < n; i++) {
        int at = i;

        while (at > 0 && single_index(&tasks[order[at - 1]], duration) <
                             single_index(&tasks[i], duration)) {
            order[at] = order[at - 1];
            at--;
        }
        order[at] = i;
    }
}

void
hs_niosh_composite(const hs_niosh_task *tasks,
                   int n,
                   hs_niosh_duration duration,
                   hs_niosh_sum *ret_sum)
{
    int *order = ret_sum->order;
    double index, sum_per_min, before;
    bool is_low;

    *ret_sum = (hs_niosh_sum){.index = HS_ABSENT, .first_index = HS_ABSENT};
    if (n < 1 || n > HS_NIOSH_TASKS)
        return;
    order_tasks(tasks, n, duration, order);
    index = ret_sum->first_index = single_index(&tasks[order[0]], duration);
    sum_per_min = tasks[order[0]].lifts_per_min;
    is_low = tasks[order[0]].is_low;
    before = hs_niosh_fm_factor(sum_per_min, duration, is_low);
    ret_sum->fm_factor[0] = before;
    ret_sum->after_index[0] = index;

    for (int i = 1; i < n; i++) {
        const hs_niosh_task *task = &tasks[order[i]];
        double after;

        /* The low column serves the sum as soon as one of its tasks is low: nothing seen says which, this is the lower limit. */
        is_low = is_low || task->is_low;
        sum_per_min += task->lifts_per_min;
        after = hs_niosh_fm_factor(sum_per_min, duration, is_low);
        index += task->mass_most_kg / task->firwl_kg * (1.0 / after - 1.0 / before);
        before = after;
        ret_sum->fm_factor[i] = after;
        ret_sum->after_index[i] = index;
    }
    ret_sum->sum_per_min = sum_per_min;
    if (isfinite(index) && before > 0.0)
        ret_sum->index = index;
    if (!isfinite(ret_sum->first_index))
        ret_sum->first_index = HS_ABSENT;
}

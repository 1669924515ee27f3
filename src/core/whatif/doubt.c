/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how sure is each finding, given the tolerances entered?
 * Answer:    quasi-random draws of the inputs, a whole assessment each; chances, spread, drivers.
 * Not here:  one change at a time (breakeven.c). */
#include "doubt.h"

#include "changed_task.h"
#include "check.h"
#include "option_runs.h"
#include "place.h"
#include "solve.h"

#include <stdlib.h>
#include <string.h>

#define DRAWS_DEFAULT 128
#define DRAWS_MOST    4096
#define FRICTION_pct                                                                           \
    10.0 /* tolerances where the document gives none: common practice, no source */
#define GAIN_pct          10.0
#define GAIN_MEASURED_pct 5.0
#define REACH_cm          2.0
#define SIGMAS            3.0 /* draws are cut there */

enum {
    IN_MASS,
    IN_FRICTION,
    IN_GAIN,
    IN_REACH,
    IN_SKETCHED, /* last: drawn only where something was sketched, so that all other draws stay the same */
    N_INPUTS
};
static const char *const input_names[N_INPUTS] = {"mass_kg", "friction", "gain", "reach_m",
                                                  "sketched"};

typedef struct {
    const hs_task *task;
    hs_arena *arena;
    hs_today today;
    double tolerance
        [N_INPUTS]; /* two standard deviations, relative; reach and sketched heights in m */
    int n_draws, n_inputs;
    double *normal; /* n_draws x n_inputs, standard normal */
} plan;

/* Normal quantile from a uniform number by bisection of erfc: 60 halvings are exact to rounding, no tables. */
static double
normal_of(double u)
{
    double low = -SIGMAS, high = SIGMAS;

    for (int i = 0; i < 60; i++) {
        double middle = 0.5 * (low + high);

        if (0.5 * erfc(-middle / sqrt(2.0)) < u)
            low = middle;
        else
            high = middle;
    }
    return 0.5 * (low + high);
}

static double
or_tolerance(
    hs_results *results, double value, double otherwise, hs_reason reason, const char *path)
{
    hs_message text = {.reason = reason, .number = {otherwise}};

    if (hs_has(value))
        return value;
    hs_assume(&results->assumptions, otherwise, NULL, text, "%s", path);
    return otherwise;
}

static bool
all_measured(const hs_task *task)
{
    for (int i = 0; i < task->n_suits; i++)
        if (task->suits[i].gain_measured != HS_YES)
            return false;
    return true;
}

static bool
any_sketched(const hs_task *task)
{
    for (int i = 0; i < task->route.n_points; i++)
        if (task->route.points[i].sketched == HS_YES)
            return true;
    return false;
}

static hs_status
make_plan(
    const hs_task *task, hs_results *results, hs_arena *arena, plan *made, hs_error *error)
{
    const hs_doubt_input *doubt = &task->doubt;
    double draws = hs_or(doubt->draws, DRAWS_DEFAULT);
    double gain_pct = all_measured(task) ? GAIN_MEASURED_pct : GAIN_pct;
    double mass = hs_has(doubt->mass_pct) ? doubt->mass_pct / 100.0
                                          : results->load.mass_tol_kg / results->load.mass_kg;

    made->task = task;
    made->arena = arena;
    made->n_draws = (int)fmin(fmax(draws, 16.0), DRAWS_MOST);
    made->tolerance[IN_MASS] = hs_or(mass, 0.0);
    made->tolerance[IN_FRICTION] =
        or_tolerance(results, doubt->friction_pct, FRICTION_pct,
                     HS_REASON_assume_friction_doubt, "doubt.friction_pct") /
        100.0;
    made->tolerance[IN_GAIN] = or_tolerance(results, doubt->gain_pct, gain_pct,
                                            HS_REASON_assume_gain_doubt, "doubt.gain_pct") /
                               100.0;
    made->tolerance[IN_REACH] = or_tolerance(results, doubt->reach_cm, REACH_cm,
                                             HS_REASON_assume_reach_doubt, "doubt.reach_cm") /
                                100.0;
    made->tolerance[IN_SKETCHED] = HS_SKETCHED_m;
    made->n_inputs = any_sketched(task) ? N_INPUTS : IN_SKETCHED;
    made->normal = HS_NEW(arena, double, made->n_draws *N_INPUTS);
    HS_TRY(hs_sobol_fill(made->n_inputs, 1, made->n_draws,
                         (uint64_t)fmax(hs_or(doubt->seed, 1.0), 0.0), made->normal, error));
    for (int i = 0; i < made->n_draws * made->n_inputs; i++)
        made->normal[i] = normal_of(made->normal[i]);
    return HS_OK;
}

/* The task of one draw; two standard deviations are the tolerance. */
static hs_status
drawn_task(
    const plan *made, int option, const double *z, const hs_task **ret_task, hs_error *error)
{
    double k_mass = fmax(0.05, 1.0 + 0.5 * made->tolerance[IN_MASS] * z[IN_MASS]);
    double k_friction = fmax(0.05, 1.0 + 0.5 * made->tolerance[IN_FRICTION] * z[IN_FRICTION]);
    double k_gain = fmax(0.05, 1.0 + 0.5 * made->tolerance[IN_GAIN] * z[IN_GAIN]);
    const hs_task *at = hs_change_mass(made->task, k_mass, made->arena);
    const double *reach_m;

    at = hs_change_friction(at, k_friction, 0.35, made->arena);
    at = hs_change_gain(at, k_gain, made->arena);
    if (hs_has(at->site.friction)) {
        hs_task *floor = HS_NEW(made->arena, hs_task, 1);

        *floor = *at;
        floor->site.friction *= k_friction;
        at = floor;
    }
    HS_TRY(hs_setup_reach(at, option, made->arena, &reach_m, error));
    if (made->n_inputs > IN_SKETCHED)
        at = hs_change_sketched(at, 0.5 * made->tolerance[IN_SKETCHED] * z[IN_SKETCHED],
                                made->arena);
    *ret_task = hs_change_reach(at, option, reach_m,
                                0.5 * made->tolerance[IN_REACH] * z[IN_REACH], made->arena);
    return HS_OK;
}

typedef struct {
    double *value, *ratio; /* n_draws each, NaN where the draw gave none */
    int n_within, n_judged;
} record;

static hs_status
run_draws(const plan *made, int option, record *records, double *worst, hs_error *error)
{
    for (int d = 0; d < made->n_draws; d++) {
        hs_mark mark = hs_arena_mark(made->arena);
        const hs_task *task;
        hs_option_result result;

        HS_TRY(drawn_task(made, option, &made->normal[d * made->n_inputs], &task, error));
        HS_TRY(hs_option_runs_one(task, option, &made->today, HS_ASSESS_LIVE, made->arena,
                                  &result, error));
        worst[d] = HS_ABSENT;
        for (int k = 0; k < HS_N_CHECKS; k++)
            records[k].value[d] = records[k].ratio[d] = HS_ABSENT;
        for (int f = 0; f < result.n_findings; f++) {
            const hs_finding *finding = &result.findings[f];
            record *at = &records[finding->check];

            if (finding->status == HS_STATUS_NOT_JUDGED)
                continue;
            at->n_judged++;
            at->n_within += finding->status != HS_STATUS_BEYOND;
            at->value[d] = finding->value;
            at->ratio[d] = finding->ratio;
            if (hs_has(finding->ratio) && finding->check != HS_CHECK_loss_bearer)
                worst[d] = hs_has(worst[d]) ? fmax(worst[d], finding->ratio) : finding->ratio;
        }
        hs_arena_release(made->arena, mark);
    }
    return HS_OK;
}

static int
by_size(const void *a, const void *b)
{
    double x = *(const double *)a, y = *(const double *)b;

    return (x > y) - (x < y);
}

/* The p-quantile of the figures that are there, straight lines between the ordered ones. */
static double
quantile(const double *values, int n, double p, double *scratch)
{
    int kept = 0;
    double at, u;

    for (int i = 0; i < n; i++)
        if (hs_has(values[i]))
            scratch[kept++] = values[i];
    if (kept == 0)
        return HS_ABSENT;
    qsort(scratch, (size_t)kept, sizeof *scratch, by_size);
    at = p * (kept - 1);
    u = at - floor(at);
    return kept == 1 ? scratch[0]
                     : scratch[(int)at] * (1.0 - u) +
                           scratch[(int)fmin(floor(at) + 1.0, kept - 1.0)] * u;
}

/* Squared correlation of an input with the figure that decides. */
static double
explained(const plan *made, const double *worst, int input)
{
    double n = 0, sx = 0, sy = 0, sxx = 0, syy = 0, sxy = 0, vx, vy, cxy;

    if (!(made->tolerance[input] > 0.0))
        return 0.0;
    for (int d = 0; d < made->n_draws; d++) {
        double x = made->normal[d * made->n_inputs + input], y = worst[d];

        if (!hs_has(y))
            continue;
        n += 1, sx += x, sy += y, sxx += x * x, syy += y * y, sxy += x * y;
    }
    vx = n * sxx - sx * sx;
    vy = n * syy - sy * sy;
    cxy = n * sxy - sx * sy;
    return vx > 0.0 && vy > 1e-18 * syy ? cxy * cxy / (vx * vy) : 0.0;
}

static void
summarise(const plan *made, const record *records, const double *worst, hs_doubt_option *ret)
{
    hs_doubt_check *checks = HS_NEW(made->arena, hs_doubt_check, HS_N_CHECKS);
    hs_driver *drivers = HS_NEW(made->arena, hs_driver, N_INPUTS);
    double *scratch = HS_NEW(made->arena, double, made->n_draws), sum = 0.0;

    for (int k = 0; k < HS_N_CHECKS; k++) {
        if (records[k].n_judged == 0)
            continue;
        checks[ret->n_checks++] =
            (hs_doubt_check){(hs_check_id)k, (double)records[k].n_within / records[k].n_judged,
                             quantile(records[k].value, made->n_draws, 0.05, scratch),
                             quantile(records[k].value, made->n_draws, 0.50, scratch),
                             quantile(records[k].value, made->n_draws, 0.95, scratch)};
    }
    for (int i = 0; i < made->n_inputs; i++) {
        drivers[i] = (hs_driver){input_names[i], explained(made, worst, i)};
        sum += drivers[i].share;
    }
    for (int i = 0; i < made->n_inputs && sum > 0.0; i++)
        drivers[i].share /= sum;
    for (int i = 1; i < made->n_inputs; i++)
        for (int j = i; j > 0 && drivers[j].share > drivers[j - 1].share; j--) {
            hs_driver swap = drivers[j];

            drivers[j] = drivers[j - 1];
            drivers[j - 1] = swap;
        }
    ret->checks = checks;
    ret->drivers = drivers;
    ret->n_drivers = sum > 0.0 ? made->n_inputs : 0;
}

hs_status
hs_doubt_run(const hs_task *task, hs_results *results, hs_arena *arena, hs_error *error)
{
    hs_doubt_option *list = HS_NEW(arena, hs_doubt_option, task->n_options);
    plan made;

    HS_TRY(make_plan(task, results, arena, &made, error));
    HS_TRY(hs_option_runs_today(task, arena, &made.today, error));
    for (int i = 0; i < task->n_options; i++) {
        record *records = HS_NEW(arena, record, HS_N_CHECKS);
        double *worst = HS_NEW(arena, double, made.n_draws);

        for (int k = 0; k < HS_N_CHECKS; k++) {
            records[k].value = HS_NEW(arena, double, made.n_draws);
            records[k].ratio = HS_NEW(arena, double, made.n_draws);
        }
        HS_TRY(run_draws(&made, i, records, worst, error));
        list[i].option = task->options[i].id;
        summarise(&made, records, worst, &list[i]);
    }
    results->doubt = list;
    results->n_doubt = task->n_options;
    return HS_OK;
}

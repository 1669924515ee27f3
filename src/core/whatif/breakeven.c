/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  where does the verdict turn?
 * Answer:    one input at a time, outwards from the entered value until the verdict turns, then between the two by the worst
 *            ratio, then the figure is proved at every place.
 * Not here:  chances (doubt.c). */
#include "breakeven.h"

#include "changed_task.h"
#include "check.h"
#include "option_runs.h"
#include "place.h"

#define N_STEPS 6
#define FINE                                                                                   \
    (1.0 / 512.0) /* part of a step that the last bracket is wide: 0.2 % of a factor of two */
#define N_LOOKS     16 /* at most; halving alone needs 9 */
#define HALVE_EVERY 3  /* where the ratios mislead, the bracket still shrinks */
#define N_PROOFS    6
#define AIM         0.999999 /* a figure exactly at its limit would fail by rounding (numerics) */

typedef enum {
    Q_MASS,
    Q_REACH,
    Q_GAIN,
    Q_FRICTION,
    N_QUANTITIES
} quantity;

typedef struct {
    const hs_task *task;
    const hs_today *today;
    hs_arena *arena;
    int option;
    quantity what;
    const double *reach_m; /* per point, as resolved */
    double friction;       /* of the first pad in use */
} question;

static const char *const keys[N_QUANTITIES] = {"mass_kg", "reach_m", "gain", "friction"};

/* Steps outwards: factors of mass, gain, friction; metres of reach. The first list makes the work harder. */
static const double harder[N_QUANTITIES][N_STEPS] = {
    [Q_MASS] = {1.05, 1.15, 1.3, 1.6, 2.2, 4.0},
    [Q_REACH] = {0.03, 0.07, 0.12, 0.2, 0.3, 0.45},
    [Q_GAIN] = {0.9, 0.75, 0.6, 0.4, 0.25, 0.1},
    [Q_FRICTION] = {0.92, 0.8, 0.65, 0.5, 0.3, 0.15},
};
static const double easier[N_QUANTITIES][N_STEPS] = {
    [Q_MASS] = {0.95, 0.85, 0.7, 0.5, 0.3, 0.1},
    [Q_REACH] = {-0.03, -0.07, -0.12, -0.18, -0.25, -0.35},
    [Q_GAIN] = {1.1, 1.3, 1.7, 2.5, 5.0, 10.0},
    [Q_FRICTION] = {1.1, 1.3, 1.6, 2.0, 2.6, 3.4},
};

static bool
stands(hs_verdict_status status)
{
    return status == HS_VERDICT_SUPPORTED || status == HS_VERDICT_WITH_CONDITIONS;
}

static const hs_task *
changed(const question *asked, double step)
{
    switch (asked->what) {
    case Q_MASS:
        return hs_change_mass(asked->task, step, asked->arena);
    case Q_REACH:
        return hs_change_reach(asked->task, asked->option, asked->reach_m, step, asked->arena);
    case Q_GAIN:
        return hs_change_gain(asked->task, step, asked->arena);
    case Q_FRICTION:
    case N_QUANTITIES:
    default:
        return hs_change_friction(asked->task, step, asked->friction, asked->arena);
    }
}

typedef struct {
    double step;
    bool stands, is_proved;    /* at every place, not only at those of the live pass */
    double ratio[HS_N_CHECKS]; /* HS_ABSENT where there is none */
    bool stops[HS_N_CHECKS];
} look;

static look
look_of(const hs_option_result *result, double step, hs_assess_mode mode)
{
    look ret = {.step = step,
                .stands = stands(result->verdict.status),
                .is_proved = mode != HS_ASSESS_LIVE};

    for (int i = 0; i < HS_N_CHECKS; i++)
        ret.ratio[i] = HS_ABSENT;
    for (int i = 0; i < result->n_findings; i++) {
        const hs_finding *finding = &result->findings[i];

        ret.ratio[finding->check] = finding->ratio;
        ret.stops[finding->check] =
            finding->status == HS_STATUS_BEYOND && finding->check != HS_CHECK_loss_bearer;
    }
    return ret;
}

/* Does the option stand with this step? The check that stops it is told when it does not. */
static hs_status
ask(const question *asked,
    double step,
    hs_assess_mode mode,
    look *ret_look,
    hs_check_id *ret_check,
    hs_error *error)
{
    hs_mark mark = hs_arena_mark(asked->arena);
    hs_option_result result;
    hs_status status = hs_option_runs_one(changed(asked, step), asked->option, asked->today,
                                          mode, asked->arena, &result, error);

    if (status == HS_OK) {
        *ret_look = look_of(&result, step, mode);
        if (!ret_look->stands && result.verdict.n_reasons > 0)
            *ret_check = result.verdict.reasons[0];
    }
    hs_arena_release(asked->arena, mark);
    return status;
}

static double
value_of(const question *asked, double step, const hs_results *results)
{
    double most_m = 0.0;

    switch (asked->what) {
    case Q_MASS:
        return results->load.mass_kg * step;
    case Q_REACH:
        for (int i = 0; i < asked->task->route.n_points; i++)
            most_m = fmax(most_m, asked->reach_m[i] + step);
        return most_m;
    case Q_GAIN:
        for (int b = 0; b < asked->task->options[asked->option].n_bearers; b++) {
            int suit = asked->task->options[asked->option].bearers[b].suit;

            if (suit >= 0 && hs_has(asked->task->suits[suit].gain_hands))
                return fmax(1.0, asked->task->suits[suit].gain_hands * step);
        }
        return HS_ABSENT;
    case Q_FRICTION:
    case N_QUANTITIES:
    default:
        return asked->friction * step;
    }
}

/* Between the two: where every check that stops the one would pass, by the straight line of its ratio, not nearer to an end than
 * the bracket has to become; halfway where the ratios do not say, or mislead. */
static double
next_step(const look *standing, const look *stopped, double fine, int n)
{
    double width = stopped->step - standing->step, least = INFINITY;
    double edge = fmin(0.9 * fine / fabs(width), 0.5);

    for (int k = 0; k < HS_N_CHECKS; k++) {
        double low = standing->ratio[k] - AIM, high = stopped->ratio[k] - AIM;

        if (stopped->stops[k] && low <= 0.0 && high > 0.0)
            least = fmin(least, low / (low - high));
    }
    if (n % HALVE_EVERY == HALVE_EVERY - 1 || !(least <= 1.0))
        return standing->step + 0.5 * width;
    return standing->step + fmin(fmax(least, edge), 1.0 - edge) * width;
}

/* Where the live pass alone said that it stands, it may not at every place: further to where it does. */
static hs_status
prove(
    const question *asked, look *standing, double away, hs_check_id *ret_check, hs_error *error)
{
    for (int i = 0; i < N_PROOFS && !standing->is_proved; i++) {
        look at;

        HS_TRY(ask(asked, standing->step, HS_ASSESS_PLAIN, &at, ret_check, error));
        if (at.stands) {
            *standing = at;
            return HS_OK;
        }
        standing->step += away;
        away *= 2.0;
    }
    return HS_OK;
}

/* Step outwards until the verdict turns, then between; false when it does not turn within the steps. */
static hs_status
turn(const question *asked,
     bool stood,
     bool *ret_turns,
     double *ret_step,
     hs_check_id *ret_check,
     hs_error *error)
{
    const double *steps = stood ? harder[asked->what] : easier[asked->what];
    double from = asked->what == Q_REACH ? 0.0 : 1.0, fine;
    look now = {.step = from, .stands = stood, .is_proved = true}, last = now;
    look *standing = stood ? &last : &now, *stopped = stood ? &now : &last;

    for (int k = 0; k < HS_N_CHECKS; k++)
        now.ratio[k] = HS_ABSENT;
    for (int i = 0; i < N_STEPS && now.stands == stood; i++) {
        last = now;
        HS_TRY(ask(asked, steps[i], HS_ASSESS_LIVE, &now, ret_check, error));
    }
    *ret_turns = now.stands != stood;
    if (!*ret_turns)
        return HS_OK;
    fine = fabs(now.step - last.step) * FINE;
    for (int i = 0; i < N_LOOKS && fabs(now.step - last.step) > fine; i++) {
        look at;

        HS_TRY(ask(asked, next_step(standing, stopped, fine, i), HS_ASSESS_PLAIN, &at,
                   ret_check, error));
        *(at.stands ? standing : stopped) = at;
    }
    /* The last place on the side where the option stands, so that the figure printed still holds. */
    HS_TRY(prove(asked, standing, standing->step - stopped->step, ret_check, error));
    *ret_turns = standing->is_proved;
    *ret_step = standing->step;
    return HS_OK;
}

static bool
applies(const question *asked)
{
    const hs_option *option = &asked->task->options[asked->option];
    bool suited = false;

    for (int b = 0; b < option->n_bearers; b++) {
        int suit = option->bearers[b].suit;

        suited = suited || (suit >= 0 && asked->task->suits[suit].kind == HS_SUIT_POWERED &&
                            hs_has(asked->task->suits[suit].gain_hands));
    }
    if (asked->what == Q_GAIN)
        return suited;
    return asked->what != Q_FRICTION || hs_has(asked->friction);
}

/* Friction of the first pad that the option uses: the grip's own, else its effector's, else 0.35 (the format's default). */
static double
friction_of(const hs_task *task, const hs_option *option)
{
    for (int b = 0; b < option->n_bearers; b++) {
        const hs_bearer *bearer = &option->bearers[b];

        for (int i = 0; i < bearer->n_grips; i++) {
            const hs_grip *grip = &task->load.grips[bearer->grips[i]];

            if (grip->kind != HS_GRIP_PAD)
                continue;
            if (hs_has(grip->friction))
                return grip->friction;
            if (bearer->suit >= 0 && bearer->effector >= 0)
                return hs_or(task->suits[bearer->suit].effectors[bearer->effector].friction,
                             0.35);
            return 0.35;
        }
    }
    return HS_ABSENT;
}

hs_status
hs_breakeven_find(const hs_task *task, hs_results *results, hs_arena *arena, hs_error *error)
{
    hs_break_even *list = HS_NEW(arena, hs_break_even, task->n_options * N_QUANTITIES);
    hs_today today;
    int n = 0;

    HS_TRY(hs_option_runs_today(task, arena, &today, error));
    for (int i = 0; i < task->n_options; i++) {
        hs_verdict_status status = results->options[i].verdict.status;
        question asked = {
            task, &today, arena, i, Q_MASS, NULL, friction_of(task, &task->options[i])};

        if (status == HS_VERDICT_UNDECIDED)
            continue;
        HS_TRY(hs_setup_reach(task, i, arena, &asked.reach_m, error));
        for (int q = 0; q < N_QUANTITIES; q++) {
            bool turns;
            double step;
            hs_check_id check = results->options[i].verdict.n_reasons > 0
                                    ? results->options[i].verdict.reasons[0]
                                    : HS_CHECK_share;

            asked.what = (quantity)q;
            if (!applies(&asked))
                continue;
            HS_TRY(turn(&asked, stands(status), &turns, &step, &check, error));
            if (turns)
                list[n++] = (hs_break_even){task->options[i].id, keys[q],
                                            value_of(&asked, step, results), check, false};
        }
    }
    results->break_even = list;
    results->n_break_even = n;
    return HS_OK;
}

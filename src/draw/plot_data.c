/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what does the strip show?
 * Answer:    hs_plot_value(): the worst bearer of an option at a sample; its limit; times and their places along the axis.
 * Not here:  the lines (plot.c). */
#include "plot.h"

#include "plot_internal.h"
#include "translate.h"

static const struct {
    const char *title, *unit;
    hs_check_id check;
    double per_si;     /* shown = result * per_si */
    gboolean is_floor; /* the limit is the least that is wanted */
} kinds[HS_N_PLOTS] = {
    [HS_PLOT_HANDS] = {N_("In the hands"), "N", HS_CHECK_share, 1, FALSE},
    [HS_PLOT_COMPRESSION] = {N_("Low back"), "kN", HS_CHECK_spine_compression, 1e-3, FALSE},
    [HS_PLOT_BALANCE] = {N_("Balance"), "mm", HS_CHECK_balance, 1e3, TRUE},
    [HS_PLOT_POWER_OFF] = {N_("Power off"), "s", HS_N_CHECKS, 1, FALSE},
};

const char *
hs_plot_title(hs_plot_kind kind)
{
    return _(kinds[kind].title);
}

const char *
hs_plot_unit(hs_plot_kind kind)
{
    return kinds[kind].unit;
}

static double
value_of(const hs_bearer_sample *bearer, hs_plot_kind kind)
{
    switch (kind) {
    case HS_PLOT_HANDS:
        return hs_has(bearer->felt_force_N) ? bearer->felt_force_N : bearer->hand_force_N;
    case HS_PLOT_COMPRESSION:
        return bearer->compression_N;
    case HS_PLOT_BALANCE:
        return bearer->balance_margin_m;
    case HS_PLOT_POWER_OFF:
        return bearer->power_lost.is_known ? bearer->power_lost.needed_s : HS_ABSENT;
    default:
        return HS_ABSENT;
    }
}

double
hs_plot_value(const hs_results *results, int option, int sample, hs_plot_kind kind)
{
    const hs_option_result *result;
    double worst = HS_ABSENT;

    if (option < 0 || option >= results->n_options)
        return HS_ABSENT;
    result = &results->options[option];
    if (sample < 0 || sample >= result->n_samples)
        return HS_ABSENT;
    for (int b = 0; b < result->asked->n_bearers; b++) {
        double value = value_of(&result->samples[sample].bearers[b], kind) * kinds[kind].per_si;

        if (hs_has(value) &&
            (!hs_has(worst) || (kinds[kind].is_floor ? value < worst : value > worst)))
            worst = value;
    }
    return worst;
}

/* Seconds that can be held, of the wearer who can hold the shortest. */
double
hs_plot_held_s(const hs_option_result *result, int sample)
{
    double least = HS_ABSENT;

    for (int b = 0; b < result->asked->n_bearers; b++) {
        const hs_power_lost *lost = &result->samples[sample].bearers[b].power_lost;

        if (lost->is_known && hs_has(lost->hold_s) && !(lost->hold_s > least))
            least = lost->hold_s;
    }
    return least;
}

/* One limit for the plot: of the option on the right where it has one, else of the left. */
double
hs_plot_limit(const hs_plot_request *request)
{
    int options[2] = {request->right, request->left};

    for (int k = 0; k < 2; k++) {
        if (options[k] < 0)
            continue;
        const hs_option_result *result = &request->results->options[options[k]];

        for (int i = 0; i < result->n_findings; i++)
            if (result->findings[i].check == kinds[request->kind].check &&
                hs_has(result->findings[i].limit) &&
                result->findings[i].status != HS_STATUS_NOT_JUDGED)
                return result->findings[i].limit * kinds[request->kind].per_si;
    }
    return HS_ABSENT;
}

static double
end_s(const hs_results *results, int option)
{
    const hs_option_result *result;

    if (option < 0 || option >= results->n_options)
        return 0;
    result = &results->options[option];
    return result->n_samples > 0 ? result->samples[result->n_samples - 1].t_s : 0;
}

static double
total_s(const hs_plot_request *request)
{
    return fmax(
        fmax(end_s(request->results, request->left), end_s(request->results, request->right)),
        1e-3);
}

double
hs_plot_right_px(const hs_plot_request *request)
{
    return request->width_px - request->font_px;
}

double
hs_plot_x_of_time(const hs_plot_request *request, double t_s)
{
    return request->axis_px +
           t_s / total_s(request) * (hs_plot_right_px(request) - request->axis_px);
}

double
hs_plot_time_of_x(const hs_plot_request *request, double x_px)
{
    double t_s = (x_px - request->axis_px) /
                 fmax(hs_plot_right_px(request) - request->axis_px, 1) * total_s(request);

    return CLAMP(t_s, 0, total_s(request));
}

gboolean
hs_plot_is_floor(hs_plot_kind kind)
{
    return kinds[kind].is_floor;
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what must hold of every result, whatever was asked?
 * Answer:    one function for each thing that results are made of.
 * Not here:  whether the figures are right (tests/unit). */
#include "walk.h"

#include "check.h"
#include "pack.h"
#include "results_json.h"
#include "strict.h"

#include <string.h>

static char *
walk_finding(const hs_finding *f)
{
    const char *id = hs_check_get(f->check)->id;
    gboolean is_judged = f->status == HS_STATUS_WITHIN || f->status == HS_STATUS_NEAR ||
                         f->status == HS_STATUS_BEYOND;

    if (f->text.reason == HS_REASON_internal)
        return g_strdup_printf("%s: internal", id);
    if (f->text.reason <= HS_REASON_none || f->text.reason >= HS_N_REASONS)
        return g_strdup_printf("%s: no text", id);
    if (!is_judged && f->status != HS_STATUS_NOT_JUDGED)
        return g_strdup_printf("%s: status %d", id, (int)f->status);
    if (is_judged ? f->why != HS_WHY_COMPUTED
                  : f->why != HS_WHY_SCOPE && f->why != HS_WHY_MISSING)
        return g_strdup_printf("%s: status %d, why %d", id, (int)f->status, (int)f->why);
    if (f->status == HS_STATUS_WITHIN && hs_has(f->ratio) && f->ratio > 1.0)
        return g_strdup_printf("%s: within at ratio %g", id, f->ratio);
    if (f->status == HS_STATUS_BEYOND && hs_has(f->ratio) && f->ratio < 0.0)
        return g_strdup_printf("%s: beyond at ratio %g", id, f->ratio);
    if (f->why == HS_WHY_MISSING && (hs_has(f->value) || hs_has(f->ratio)))
        return g_strdup_printf("%s: missing, but has a figure", id);
    return NULL;
}

/* The bearers' shares and the grips' forces are the same sum; both may be absent. */
static char *
walk_sample(const hs_option_result *option, int s)
{
    const hs_sample *sample = &option->samples[s];
    double up_N = 0.0, share_N = 0.0;

    if (!isfinite(sample->t_s) || !isfinite(sample->route) || !isfinite(sample->x_m) ||
        !isfinite(sample->z_m))
        return g_strdup_printf("%s, sample %d: no time or place", option->id, s);
    if (s > 0 && (sample->t_s < sample[-1].t_s || sample->route < sample[-1].route))
        return g_strdup_printf("%s, sample %d: goes back in time", option->id, s);
    for (int g = 0; g < sample->n_grips; g++)
        up_N += sample->grips[g].up_N;
    for (int b = 0; b < option->asked->n_bearers; b++) {
        const hs_bearer_sample *bearer = &sample->bearers[b];

        share_N += bearer->share_N;
        if (bearer->share_N < 0.0 || bearer->ground_force_N < 0.0)
            return g_strdup_printf("%s, sample %d: a negative share or ground force",
                                   option->id, s);
        if (hs_has(bearer->share_least_N) &&
            !(bearer->share_least_N <= bearer->share_most_N + 1e-6))
            return g_strdup_printf("%s, sample %d: least share above the most", option->id, s);
    }
    if (hs_has(up_N) && hs_has(share_N) && fabs(up_N - share_N) > 1e-6 * fmax(1.0, up_N))
        return g_strdup_printf("%s, sample %d: grips bear %g N, bearers %g N", option->id, s,
                               up_N, share_N);
    return NULL;
}

static char *
walk_option(const hs_option_result *option)
{
    char *fault = NULL;
    gboolean is_beyond = FALSE;

    if (option->n_samples < 2)
        return g_strdup_printf("%s: %d samples", option->id, option->n_samples);
    for (int i = 0; i < option->n_findings && fault == NULL; i++) {
        const hs_finding *finding = &option->findings[i];

        fault = walk_finding(finding);
        if (i > 0 && finding->check <= finding[-1].check && fault == NULL)
            fault = g_strdup_printf("%s: findings out of order", option->id);
        is_beyond = is_beyond || (finding->status == HS_STATUS_BEYOND &&
                                  finding->check != HS_CHECK_loss_bearer);
    }
    for (int s = 0; s < option->n_samples && fault == NULL; s++)
        fault = walk_sample(option, s);
    if (fault == NULL && is_beyond && option->verdict.status != HS_VERDICT_NOT_SUPPORTED)
        fault = g_strdup_printf("%s: a finding is beyond, verdict %d", option->id,
                                (int)option->verdict.status);
    if (fault == NULL && option->verdict.status == HS_VERDICT_NONE)
        fault = g_strdup_printf("%s: no verdict", option->id);
    return fault;
}

char *
hs_walk_results(const hs_results *results)
{
    char *fault = NULL;
    hs_error error;

    if (hs_pack_results(results, &error) != HS_OK)
        return g_strdup_printf("infinite: %s", error.where);
    if (!(results->load.mass_kg > 0.0))
        return g_strdup_printf("load of %g kg", results->load.mass_kg);
    for (int i = 0; i < results->n_options && fault == NULL; i++)
        fault = walk_option(&results->options[i]);
    return fault;
}

char *
hs_walk_json(const hs_document *document, const hs_results *results)
{
    static const char *const never[] = {":nan",  ":-nan", ":inf", ":-inf", ": nan", ": inf",
                                        " nan ", " inf ", "{0",   "{1",    "{a",    "null"};
    g_autoptr(GPtrArray) faults = g_ptr_array_new_with_free_func((GDestroyNotify)hs_fault_free);
    gsize length = 0;
    g_autofree char *text = hs_results_to_json(document, results, &length);
    g_autoptr(JsonNode) root = hs_strict_parse(text, length, faults);

    if (root == NULL)
        return g_strdup_printf("JSON: %s", faults->len > 0
                                               ? ((const hs_fault *)faults->pdata[0])->text
                                               : "not read");
    for (guint i = 0; i < G_N_ELEMENTS(never); i++) {
        const char *at = strstr(text, never[i]);

        if (at != NULL)
            return g_strdup_printf("JSON says: %.80s", MAX(at - 30, (const char *)text));
    }
    return NULL;
}

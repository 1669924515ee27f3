/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how do results leave the program as JSON?
 * Answer:    key by key in the order of the file format; what is absent is left out.
 * Not here:  the text for people (results_text.c), the short line of a survey (survey.c). */
#include "results_json.h"

#include "check.h"
#include "json_text.h"
#include "site_when.h"

#include <math.h>
#include <string.h>

static void
put_load(hs_json_text *json, const hs_load_result *load)
{
    hs_json_text_open(json, "load", '{');
    hs_json_text_number(json, "mass_kg", load->mass_kg);
    hs_json_text_vec3(json, "centre_m", load->centre_m);
    if (load->has_inertia) {
        hs_json_text_open(json, "inertia_kg_m2", '[');
        for (int row = 0; row < 3; row++) {
            hs_json_text_open(json, NULL, '[');
            for (int column = 0; column < 3; column++)
                hs_json_text_number(json, NULL, load->inertia_kg_m2.m[row][column]);
            hs_json_text_close(json, ']');
        }
        hs_json_text_close(json, ']');
    }
    hs_json_text_close(json, '}');
}

static void
put_l5s1(hs_json_text *json, const hs_bearer_sample *at)
{
    if (!isfinite(at->l5s1_moment_Nm) && !isfinite(at->compression_N) && !isfinite(at->shear_N))
        return;
    hs_json_text_open(json, "l5s1", '{');
    hs_json_text_number(json, "moment_Nm", at->l5s1_moment_Nm);
    hs_json_text_number(json, "compression_N", at->compression_N);
    hs_json_text_number(json, "shear_N", at->shear_N);
    hs_json_text_close(json, '}');
}

static void
put_pose(hs_json_text *json, const hs_bearer_sample *at)
{
    static const char *const names[HS_N_POSE] = {"ankle",    "knee",  "hip",  "l5s1",
                                                 "shoulder", "elbow", "hand", "neck"};

    if (!at->has_pose)
        return;
    hs_json_text_open(json, "pose", '{');
    for (int i = 0; i < HS_N_POSE; i++)
        hs_json_text_vec2(json, names[i], at->pose[i]);
    hs_json_text_close(json, '}');
}

static void
put_joints(hs_json_text *json, const hs_bearer_sample *at)
{
    static const char *const names[HS_N_JOINTS] = {"ankle", "knee",     "hip",
                                                   "l5s1",  "shoulder", "elbow"};

    if (!at->has_pose)
        return;
    hs_json_text_open(json, "joints", '{');
    for (int i = 0; i < HS_N_JOINTS; i++) {
        const hs_joint_result *joint = &at->joints[i];

        if (!isfinite(joint->moment_Nm) && !isfinite(joint->utilisation))
            continue;
        hs_json_text_open(json, names[i], '{');
        hs_json_text_number(json, "moment_Nm", joint->moment_Nm);
        hs_json_text_number(json, "strength_Nm", joint->strength_Nm);
        hs_json_text_number(json, "utilisation", joint->utilisation);
        hs_json_text_close(json, '}');
    }
    hs_json_text_close(json, '}');
}

static void
put_power_lost(hs_json_text *json, const hs_power_lost *lost)
{
    static const char *const states[] = {"none", "locked", "descending", "limp"};

    if (!lost->is_known)
        return;
    hs_json_text_open(json, "power_lost", '{');
    hs_json_text_string(json, "state", states[lost->state]);
    hs_json_text_number(json, "felt_force_N", lost->felt_force_N);
    hs_json_text_number(json, "hold_s", lost->hold_s);
    hs_json_text_number(json, "needed_s", lost->needed_s);
    hs_json_text_close(json, '}');
}

static void
put_bearer(hs_json_text *json, const char *id, const hs_bearer_sample *at)
{
    hs_json_text_open(json, NULL, '{');
    hs_json_text_string(json, "id", id);
    hs_json_text_number(json, "share_N", at->share_N);
    hs_json_text_vec2(json, "share_range_N", (hs_vec2){at->share_least_N, at->share_most_N});
    hs_json_text_number(json, "hand_force_N", at->hand_force_N);
    hs_json_text_number(json, "hand_push_N", at->hand_push_N);
    hs_json_text_number(json, "felt_force_N", at->felt_force_N);
    hs_json_text_number(json, "suit_force_N", at->suit_force_N);
    hs_json_text_number(json, "ground_force_N", at->ground_force_N);
    hs_json_text_number(json, "balance_margin_m", at->balance_margin_m);
    hs_json_text_vec2(json, "resultant_m", at->resultant_m);
    if (at->n_base > 0) {
        hs_json_text_open(json, "base_m", '[');
        for (int i = 0; i < at->n_base; i++)
            hs_json_text_vec2(json, NULL, at->base_m[i]);
        hs_json_text_close(json, ']');
    }
    put_l5s1(json, at);
    put_pose(json, at);
    put_joints(json, at);
    put_power_lost(json, &at->power_lost);
    hs_json_text_close(json, '}');
}

static void
put_sample(hs_json_text *json,
           const hs_task *task,
           const hs_option *option,
           const hs_sample *at)
{
    hs_json_text_open(json, NULL, '{');
    hs_json_text_number(json, "t_s", at->t_s);
    hs_json_text_number(json, "route", at->route);
    hs_json_text_open(json, "load", '{');
    hs_json_text_number(json, "x_m", at->x_m);
    hs_json_text_number(json, "z_m", at->z_m);
    hs_json_text_number(json, "pitch_deg", at->pitch_deg);
    hs_json_text_vec2(json, "acceleration_m_s2", (hs_vec2){at->a_x_m_s2, at->a_z_m_s2});
    hs_json_text_close(json, '}');
    hs_json_text_open(json, "combined", '{');
    hs_json_text_number(json, "mass_kg", at->combined_kg);
    hs_json_text_vec3(json, "centre_m", at->combined_m);
    hs_json_text_close(json, '}');
    hs_json_text_open(json, "grips", '[');
    for (int i = 0; i < at->n_grips; i++) {
        hs_json_text_open(json, NULL, '{');
        hs_json_text_string(json, "id", task->load.grips[at->grips[i].grip].id);
        hs_json_text_number(json, "up_N", at->grips[i].up_N);
        hs_json_text_close(json, '}');
    }
    hs_json_text_close(json, ']');
    hs_json_text_open(json, "bearers", '[');
    for (int i = 0; i < option->n_bearers; i++)
        put_bearer(json, option->bearers[i].id, &at->bearers[i]);
    hs_json_text_close(json, ']');
    hs_json_text_close(json, '}');
}

static void
put_finding(hs_json_text *json, const hs_option *option, const hs_finding *at)
{
    static const char *const whys[] = {NULL, "computed", "scope", "missing"};
    static const char *const known[] = {NULL, "seen", "derived", "memory", "common_practice"};
    g_autofree char *text = hs_words_message(&at->text, HS_UNITS_SI);
    g_autofree char *remedy = hs_words_message(&at->remedy, HS_UNITS_SI);
    g_autofree char *source = at->source != HS_SRC_none ? hs_words_source(at->source) : NULL;
    g_auto(GStrv) working = hs_words_working(at);

    hs_json_text_open(json, NULL, '{');
    hs_json_text_string(json, "check", hs_words_check_id(at->check));
    if (at->bearer >= 0 && at->bearer < option->n_bearers)
        hs_json_text_string(json, "bearer", option->bearers[at->bearer].id);
    hs_json_text_number(json, "route", at->route);
    hs_json_text_number(json, "t_s", at->t_s);
    hs_json_text_number(json, "value", at->value);
    hs_json_text_number(json, "limit", at->limit);
    hs_json_text_string(json, "unit", at->unit);
    hs_json_text_number(json, "ratio", at->ratio);
    hs_json_text_string(json, "status", hs_words_status_id(at->status));
    hs_json_text_string(json, "why", whys[at->why]);
    hs_json_text_string(json, "confidence", known[at->confidence]);
    hs_json_text_string(json, "source", source);
    hs_json_text_string(json, "text", text);
    hs_json_text_string(json, "remedy", *remedy != '\0' ? remedy : NULL);
    hs_json_text_open(json, "working", '[');
    for (int i = 0; working[i] != NULL; i++)
        hs_json_text_string(json, NULL, working[i]);
    hs_json_text_close(json, ']');
    hs_json_text_close(json, '}');
}

static void
put_totals(hs_json_text *json, const hs_totals *totals)
{
    hs_json_text_open(json, "totals", '{');
    hs_json_text_number(json, "energy_Wh_per_h", totals->energy_Wh_per_h);
    hs_json_text_number(json, "metabolic_W", totals->metabolic_W);
    hs_json_text_number(json, "mass_moved_kg_per_h", totals->mass_moved_kg_per_h);
    hs_json_text_number(json, "worker_minutes_per_h", totals->worker_minutes_per_h);
    hs_json_text_close(json, '}');
}

static void
put_messages(hs_json_text *json, const char *key, const hs_message *messages, int n)
{
    hs_json_text_open(json, key, '[');
    for (int i = 0; i < n; i++) {
        g_autofree char *text = hs_words_message(&messages[i], HS_UNITS_SI);

        hs_json_text_string(json, NULL, text);
    }
    hs_json_text_close(json, ']');
}

static void
put_verdict(hs_json_text *json, const hs_verdict *verdict)
{
    hs_json_text_open(json, "verdict", '{');
    hs_json_text_string(json, "status", hs_words_verdict_id(verdict->status));
    hs_json_text_bool(json, "suit_only", verdict->suit_only);
    hs_json_text_open(json, "reasons", '[');
    for (int i = 0; i < verdict->n_reasons; i++)
        hs_json_text_string(json, NULL, hs_words_check_id(verdict->reasons[i]));
    hs_json_text_close(json, ']');
    put_messages(json, "conditions", verdict->conditions, verdict->n_conditions);
    hs_json_text_close(json, '}');
}

static void
put_option(hs_json_text *json, const hs_task *task, const hs_option_result *option)
{
    hs_json_text_open(json, NULL, '{');
    hs_json_text_string(json, "id", option->id);
    hs_json_text_string(json, "name", option->name);
    hs_json_text_bool(json, "baseline", option->is_baseline);
    hs_json_text_open(json, "samples", '[');
    for (int i = 0; i < option->n_samples; i++)
        put_sample(json, task, option->asked, &option->samples[i]);
    hs_json_text_close(json, ']');
    hs_json_text_open(json, "findings", '[');
    for (int i = 0; i < option->n_findings; i++)
        if (option->findings[i].status != HS_STATUS_NONE)
            put_finding(json, option->asked, &option->findings[i]);
    hs_json_text_close(json, ']');
    put_totals(json, &option->totals);
    put_verdict(json, &option->verdict);
    hs_json_text_close(json, '}');
}

const char *
hs_results_unit_of_key(const char *key)
{
    static const char *const units[] = {"kg", "N", "m",   "s",     "deg", "Nm", "kPa",
                                        "Wh", "W", "m_s", "kg_m3", "C",   "h"};

    for (gsize i = 0; i < G_N_ELEMENTS(units); i++) {
        gsize n = strlen(units[i]), length = strlen(key);

        if (length > n && key[length - n - 1] == '_' && strcmp(key + length - n, units[i]) == 0)
            return units[i];
    }
    return "";
}

static void
put_comparison(hs_json_text *json, const hs_results *results)
{
    hs_json_text_open(json, "comparison", '{');
    if (results->baseline >= 0 && results->baseline < results->n_options)
        hs_json_text_string(json, "baseline", results->options[results->baseline].id);
    hs_json_text_open(json, "break_even", '[');
    for (int i = 0; i < results->n_break_even; i++) {
        const hs_break_even *at = &results->break_even[i];

        /* Where nothing turns there is no figure to give. */
        if (at->is_unlimited || !isfinite(at->value))
            continue;
        hs_json_text_open(json, NULL, '{');
        hs_json_text_string(json, "option", at->option);
        hs_json_text_string(json, "quantity", at->quantity);
        hs_json_text_number(json, "value", at->value);
        hs_json_text_string(json, "unit", hs_results_unit_of_key(at->quantity));
        hs_json_text_string(json, "check", hs_words_check_id(at->check));
        hs_json_text_close(json, '}');
    }
    hs_json_text_close(json, ']');
    hs_json_text_close(json, '}');
}

static void
put_doubt_option(hs_json_text *json, const hs_doubt_option *at)
{
    hs_json_text_open(json, NULL, '{');
    hs_json_text_string(json, "id", at->option);
    hs_json_text_open(json, "checks", '[');
    for (int i = 0; i < at->n_checks; i++) {
        hs_json_text_open(json, NULL, '{');
        hs_json_text_string(json, "check", hs_words_check_id(at->checks[i].check));
        hs_json_text_number(json, "p_within", at->checks[i].p_within);
        hs_json_text_number(json, "value_p05", at->checks[i].value_p05);
        hs_json_text_number(json, "value_p50", at->checks[i].value_p50);
        hs_json_text_number(json, "value_p95", at->checks[i].value_p95);
        hs_json_text_close(json, '}');
    }
    hs_json_text_close(json, ']');
    hs_json_text_open(json, "drivers", '[');
    for (int i = 0; i < at->n_drivers; i++) {
        hs_json_text_open(json, NULL, '{');
        hs_json_text_string(json, "input", at->drivers[i].input);
        hs_json_text_number(json, "share", at->drivers[i].share);
        hs_json_text_close(json, '}');
    }
    hs_json_text_close(json, ']');
    hs_json_text_close(json, '}');
}

static void
put_doubt(hs_json_text *json, const hs_results *results)
{
    if (results->n_doubt == 0)
        return;
    hs_json_text_open(json, "doubt", '{');
    hs_json_text_open(json, "options", '[');
    for (int i = 0; i < results->n_doubt; i++)
        put_doubt_option(json, &results->doubt[i]);
    hs_json_text_close(json, ']');
    hs_json_text_close(json, '}');
}

static void
put_assumptions(hs_json_text *json, const hs_assumptions *list)
{
    hs_json_text_open(json, "assumptions", '[');
    for (const hs_assumption *at = list->first; at != NULL; at = at->next) {
        g_autofree char *text = hs_words_message(&at->text, HS_UNITS_SI);

        hs_json_text_open(json, NULL, '{');
        hs_json_text_string(json, "path", at->path);
        if (at->word != NULL)
            hs_json_text_string(json, "value", at->word);
        else
            hs_json_text_number(json, "value", at->value);
        hs_json_text_string(json, "text", text);
        hs_json_text_close(json, '}');
    }
    hs_json_text_close(json, ']');
}

static void
put_site_limits(hs_json_text *json, const hs_site_set *set, const hs_task *task)
{
    if (set == NULL)
        return;
    hs_json_text_open(json, "site_limits", '{');
    hs_json_text_string(json, "id", hs_site_set_id(set));
    hs_json_text_string(json, "name", hs_site_set_name(set));
    hs_json_text_string(json, "edition", hs_site_set_edition(set));
    hs_json_text_string(json, "wording", hs_site_set_wording(set));
    hs_json_text_string(json, "digest", hs_site_set_digest(set));
    hs_json_text_open(json, "limits", '[');
    for (int i = 0; i < hs_site_set_count(set); i++) {
        const hs_site_figure *at = hs_site_set_figure(set, i);

        hs_json_text_open(json, NULL, '{');
        hs_json_text_string(json, "check", hs_words_check_id(at->check));
        hs_json_text_number(json, "figure", at->figure);
        hs_json_text_string(json, "unit",
                            at->by_body_mass ? "kg/kg" : hs_check_get(at->check)->unit);
        hs_json_text_string(json, "wording", at->wording);
        hs_json_text_string(json, "source", at->source);
        if (at->known >= HS_SITE_READ)
            hs_json_text_string(json, "known", at->known == HS_SITE_READ ? "seen" : "memory");
        else
            hs_json_text_bool(json, "confirmed", at->known == HS_SITE_CONFIRMED);
        hs_site_when_write(&at->when, json);
        hs_json_text_bool(json, "used", hs_site_figure_is_used(at, task));
        hs_json_text_close(json, '}');
    }
    hs_json_text_close(json, ']');
    hs_json_text_close(json, '}');
}

char *
hs_results_to_json(const hs_document *document, const hs_results *results, gsize *ret_length)
{
    return hs_results_to_json_with(document, NULL, results, ret_length);
}

char *
hs_results_to_json_with(const hs_document *document,
                        const hs_site_set *set,
                        const hs_results *results,
                        gsize *ret_length)
{
    const hs_task *task = hs_document_task(document);
    hs_json_text json = {.out = g_string_new(NULL)};

    hs_json_text_open(&json, NULL, '{');
    hs_json_text_string(&json, "format", "handspike-results");
    hs_json_text_number(&json, "version", 1.0);
    hs_json_text_open(&json, "document", '{');
    hs_json_text_string(&json, "title", task->about.title);
    hs_json_text_string(&json, "digest", hs_document_digest(document));
    hs_json_text_close(&json, '}');
    put_site_limits(&json, set, task);
    put_load(&json, &results->load);
    hs_json_text_open(&json, "options", '[');
    for (int i = 0; i < results->n_options; i++)
        put_option(&json, task, &results->options[i]);
    hs_json_text_close(&json, ']');
    put_comparison(&json, results);
    put_doubt(&json, results);
    put_assumptions(&json, &results->assumptions);
    put_messages(&json, "cautions", results->cautions, results->n_cautions);
    hs_json_text_close(&json, '}');
    g_string_append_c(json.out, '\n');
    if (ret_length != NULL)
        *ret_length = json.out->len;
    return g_string_free(json.out, FALSE);
}

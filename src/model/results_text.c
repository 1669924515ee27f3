/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how do results leave the program as a text that can be pasted into a mail?
 * Answer:    plain text in 78 columns: what was decided and why for each option, then what it rests on.
 * Not here:  JSON (results_json.c), the sheet (draw/sheet.c), sentences (words.c). */
#include "quantity.h"
#include "results_json.h"
#include "translate.h"
#include "words.h"

#include <math.h>
#include <string.h>

#define COLUMNS       78
#define HANGING       4 /* later lines of an entry, however long its first word */
/* What stands under a verdict at most; the list of all findings follows. */
#define MOST_DECIDING 5

typedef struct {
    GString *out;
    const hs_task *task;
    const hs_results *results;
    hs_units units;
} report;

/* One paragraph: `lead` before its first line, a hanging indent before the others. A no-break space does not break. */
static void
paragraph(GString *out, const char *lead, const char *text)
{
    g_auto(GStrv) words = g_strsplit_set(text, " \n", -1);
    glong column = g_utf8_strlen(lead, -1), indent = MIN(column, HANGING);
    gboolean at_start = TRUE;

    g_string_append(out, lead);
    for (int i = 0; words[i] != NULL; i++) {
        glong width = g_utf8_strlen(words[i], -1);

        if (width == 0)
            continue;
        if (!at_start && column + 1 + width > COLUMNS) {
            g_string_append_printf(out, "\n%*s", (int)indent, "");
            column = indent;
            at_start = TRUE;
        }
        g_string_append_printf(out, "%s%s", at_start ? "" : " ", words[i]);
        column += width + (at_start ? 0 : 1);
        at_start = FALSE;
    }
    g_string_append_c(out, '\n');
}

static void
heading(GString *out, const char *text, char underline)
{
    paragraph(out, "", text);
    for (glong i = MIN(g_utf8_strlen(text, -1), COLUMNS); i > 0; i--)
        g_string_append_c(out, underline);
    g_string_append_c(out, '\n');
}

static void
labelled(GString *out, const char *label, const char *text)
{
    g_autofree char *lead = g_strdup_printf("%s: ", label);

    if (text != NULL && *text != '\0')
        paragraph(out, lead, text);
}

static const hs_finding *
finding_of(const hs_option_result *option, hs_check_id check)
{
    for (int i = 0; i < option->n_findings; i++)
        if (option->findings[i].check == check && option->findings[i].status != HS_STATUS_NONE)
            return &option->findings[i];
    return NULL;
}

/* "beyond, 3.9 of 3.4 kN, A · point 1, 0.0 s" */
static char *
finding_line(const report *in, const hs_option_result *option, const hs_finding *finding)
{
    g_autofree char *figure = hs_words_figure(finding, in->units);
    g_autofree char *place = hs_words_place(option, finding);
    g_autofree char *time =
        hs_has(finding->t_s) ? hs_quantity_text(finding->t_s, "s", in->units) : NULL;
    GString *out = g_string_new(NULL);

    /* "not judged" stands in the figure already. */
    if (finding->status != HS_STATUS_NOT_JUDGED)
        g_string_append_printf(out, "%s, ", hs_words_status(finding->status));
    g_string_append(out, figure);
    if (*place != '\0' && finding->status != HS_STATUS_NOT_JUDGED)
        g_string_append_printf(out, ", %s", place);
    if (time != NULL && finding->status != HS_STATUS_NOT_JUDGED)
        g_string_append_printf(out, ", %s", time);
    if (hs_words_unconfirmed(finding) != NULL)
        g_string_append_printf(out, ", %s", hs_words_unconfirmed(finding));
    return g_string_free(out, FALSE);
}

static void
put_deciding(const report *in, const hs_option_result *option)
{
    for (int i = 0; i < option->verdict.n_reasons && i < MOST_DECIDING; i++) {
        const hs_finding *finding = finding_of(option, option->verdict.reasons[i]);
        g_autofree char *line = finding != NULL ? finding_line(in, option, finding) : NULL;
        g_autofree char *lead = g_strdup_printf(
            "  - %s: ", hs_words_check_in(in->results, option->verdict.reasons[i]));
        g_autofree char *why =
            finding != NULL ? hs_words_message(&finding->text, in->units) : NULL;
        g_autofree char *remedy =
            finding != NULL ? hs_words_message(&finding->remedy, in->units) : NULL;

        if (finding == NULL)
            continue;
        paragraph(in->out, lead, line);
        if (*why != '\0' && finding->status != HS_STATUS_NOT_JUDGED)
            paragraph(in->out, "    ", why);
        if (*remedy != '\0')
            paragraph(in->out, "    > ", remedy);
    }
}

static void
put_conditions(const report *in, const hs_verdict *verdict)
{
    if (verdict->n_conditions == 0)
        return;
    paragraph(in->out, "", _("Conditions:"));
    for (int i = 0; i < verdict->n_conditions; i++) {
        g_autofree char *text = hs_words_message(&verdict->conditions[i], in->units);
        g_autofree char *lead = g_strdup_printf("  %d. ", i + 1);

        paragraph(in->out, lead, text);
    }
}

static double
greatest_share_N(const hs_option_result *option, const hs_sample *at)
{
    double most = 0.0;

    for (int i = 0; i < option->asked->n_bearers; i++)
        if (at->bearers[i].share_N > most)
            most = at->bearers[i].share_N;
    return most;
}

/* The sample at the deciding finding; without one, where one bearer has the greatest share. */
static const hs_sample *
worst_sample(const hs_option_result *option)
{
    const hs_sample *worst = &option->samples[0];
    const hs_finding *finding = NULL;

    for (int i = 0; i < option->verdict.n_reasons && finding == NULL; i++) {
        finding = finding_of(option, option->verdict.reasons[i]);
        if (finding != NULL && !hs_has(finding->t_s))
            finding = NULL;
    }
    for (int i = 1; i < option->n_samples; i++) {
        const hs_sample *at = &option->samples[i];

        if (finding != NULL ? fabs(at->t_s - finding->t_s) <= fabs(worst->t_s - finding->t_s)
                            : greatest_share_N(option, at) > greatest_share_N(option, worst))
            worst = at;
    }
    return worst;
}

/* "377 N (weight of 38.4 kg)" */
static char *
force_text(double force_N, hs_units units)
{
    g_autofree char *force = NULL, *mass = NULL;

    if (!hs_has(force_N))
        return g_strdup(_("not known"));
    force = hs_quantity_text(force_N, "N", units);
    mass = hs_quantity_text(force_N / 9.80665, "kg", units); /* standard gravity */
    return g_strdup_printf(_("%s (weight of %s)"), force, mass);
}

static void
put_shares(const report *in, const hs_option_result *option)
{
    const hs_sample *at;
    g_autofree char *place = NULL, *time = NULL, *title = NULL;

    if (option->n_samples == 0)
        return;
    at = worst_sample(option);
    place = hs_words_route(at->route);
    time = hs_quantity_text(at->t_s, "s", in->units);
    title = g_strdup_printf(_("In the hands at the worst place (%s, %s):"), place, time);
    paragraph(in->out, "", title);
    for (int i = 0; i < option->asked->n_bearers; i++) {
        g_autofree char *share = force_text(at->bearers[i].share_N, in->units);
        g_autofree char *felt = force_text(at->bearers[i].felt_force_N, in->units);
        g_autofree char *text = g_strdup_printf(_("share %s, felt %s"), share, felt);
        g_autofree char *lead = g_strdup_printf("  %s: ", option->asked->bearers[i].id);

        paragraph(in->out, lead, text);
    }
}

static void
put_findings(const report *in, const hs_option_result *option)
{
    paragraph(in->out, "", _("All findings:"));
    for (int i = 0; i < option->n_findings; i++) {
        const hs_finding *finding = &option->findings[i];
        g_autofree char *line = NULL, *lead = NULL;

        if (finding->status == HS_STATUS_NONE)
            continue;
        line = finding_line(in, option, finding);
        lead = g_strdup_printf("  - %s: ", hs_words_check_in(in->results, finding->check));
        paragraph(in->out, lead, line);
    }
}

static void
put_option(const report *in, const hs_option_result *option)
{
    const char *name =
        option->name != NULL && *option->name != '\0' ? option->name : option->id;
    g_autofree char *title = NULL;

    if (option->is_baseline)
        title = g_strdup_printf(_("%s (today's way)"), name);
    else if (option->is_added)
        title = g_strdup_printf(_("%s (added for comparison, decides nothing)"), name);
    g_string_append_c(in->out, '\n');
    heading(in->out, title != NULL ? title : name, '-');
    labelled(in->out, _("Verdict"), hs_words_verdict(option->verdict.status));
    if (option->verdict.suit_only)
        paragraph(
            in->out, "",
            _("Supported only because of the suit: the same way without it is not supported."));
    put_deciding(in, option);
    put_conditions(in, &option->verdict);
    put_shares(in, option);
    put_findings(in, option);
}

static void
put_break_even(const report *in)
{
    const hs_results *results = in->results;

    if (results->n_break_even == 0)
        return;
    g_string_append_c(in->out, '\n');
    heading(in->out, _("Where the verdict turns"), '-');
    for (int i = 0; i < results->n_break_even; i++) {
        const hs_break_even *at = &results->break_even[i];
        g_autofree char *lead = g_strdup_printf("  - %s, %s: ", at->option, at->quantity);
        g_autofree char *figure = NULL, *text = NULL;

        if (at->is_unlimited || !hs_has(at->value)) {
            paragraph(in->out, lead, _("nothing turns within the range searched"));
            continue;
        }
        figure = hs_quantity_text(at->value, hs_results_unit_of_key(at->quantity), in->units);
        text = g_strdup_printf("%s (%s)", figure, hs_words_check_in(in->results, at->check));
        paragraph(in->out, lead, text);
    }
}

static void
put_doubt_option(const report *in, const hs_doubt_option *option)
{
    g_autoptr(GString) drivers = g_string_new(NULL);
    g_autofree char *title = g_strdup_printf("%s:", option->option);

    paragraph(in->out, "", title);
    for (int i = 0; i < option->n_checks; i++) {
        g_autofree char *chance =
            hs_quantity_text(100.0 * option->checks[i].p_within, "pct", in->units);
        g_autofree char *lead = g_strdup_printf(
            "  - %s: ", hs_words_check_in(in->results, option->checks[i].check));

        paragraph(in->out, lead, chance);
    }
    for (int i = 0; i < option->n_drivers && i < 3; i++) {
        g_autofree char *share =
            hs_quantity_text(100.0 * option->drivers[i].share, "pct", in->units);

        g_string_append_printf(drivers, "%s%s (%s)", i > 0 ? ", " : "",
                               option->drivers[i].input, share);
    }
    if (drivers->len > 0)
        labelled(in->out, _("What makes the most of the doubt"), drivers->str);
}

static void
put_doubt(const report *in)
{
    if (in->results->n_doubt == 0)
        return;
    g_string_append_c(in->out, '\n');
    heading(in->out, _("Chance of staying within each limit, given the tolerances entered"),
            '-');
    for (int i = 0; i < in->results->n_doubt; i++)
        put_doubt_option(in, &in->results->doubt[i]);
}

static void
put_assumptions(const report *in)
{
    g_string_append_c(in->out, '\n');
    heading(in->out, _("Assumptions (what was not entered)"), '-');
    if (in->results->assumptions.n == 0)
        paragraph(in->out, "  ", _("None: everything was entered."));
    for (const hs_assumption *at = in->results->assumptions.first; at != NULL; at = at->next) {
        g_autofree char *text = hs_words_message(&at->text, in->units);
        g_autofree char *whole = g_strdup_printf("%s: %s", at->path, text);

        paragraph(in->out, "  - ", whole);
    }
}

static void
put_cautions(const report *in)
{
    g_string_append_c(in->out, '\n');
    heading(in->out, _("Cautions"), '-');
    for (int i = 0; i < in->results->n_cautions; i++) {
        g_autofree char *text = hs_words_message(&in->results->cautions[i], in->units);

        paragraph(in->out, "  - ", text);
    }
}

static void
put_head(const report *in, const hs_document *document)
{
    const hs_about *about = &in->task->about;
    const hs_load_result *load = &in->results->load;
    g_autofree char *mass = hs_quantity_text(load->mass_kg, "kg", in->units);
    g_autofree char *tolerance = hs_has(load->mass_tol_kg)
                                     ? hs_quantity_number(load->mass_tol_kg, "kg", in->units)
                                     : NULL;
    g_autofree char *whole =
        tolerance != NULL ? g_strdup_printf("%s ± %s", mass, tolerance) : g_strdup(mass);
    g_autofree char *code = g_strndup(hs_document_digest(document), 12);

    heading(in->out,
            about->title != NULL && *about->title != '\0' ? about->title : _("Assessment"),
            '=');
    labelled(in->out, _("Place"), about->place);
    labelled(in->out, _("Task"), about->task);
    labelled(in->out, _("Assessor"), about->assessor);
    labelled(in->out, _("Date"), about->date);
    labelled(in->out, _("Review due"), about->review_due);
    labelled(in->out, _("Load"), whole);
    labelled(in->out, _("File code"), code);
}

char *
hs_results_to_text(const hs_document *document, const hs_results *results, hs_units units)
{
    report in = {.out = g_string_new(NULL),
                 .task = hs_document_task(document),
                 .results = results,
                 .units = units};

    put_head(&in, document);
    for (int i = 0; i < results->n_options; i++)
        put_option(&in, &results->options[i]);
    put_break_even(&in);
    put_doubt(&in);
    put_assumptions(&in);
    put_cautions(&in);
    return g_string_free(in.out, FALSE);
}

char *
hs_results_text_section(const char *text, const char *title, const char *lines)
{
    GString *out = g_string_new(text);
    g_auto(GStrv) each = g_strsplit(lines, "\n", -1);

    g_string_append_c(out, '\n');
    heading(out, title, '-');
    for (int i = 0; each[i] != NULL; i++)
        if (*each[i] != '\0')
            paragraph(out, "  - ", each[i]);
    return g_string_free(out, FALSE);
}

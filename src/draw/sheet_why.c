/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  why may it be believed?
 * Answer:    side 2, one page: conditions that side 1 has no room for, the findings nearest their limit, load, power lost,
 *            roles, doubt, assumptions, cautions, signatures. As many findings as there is room for; the annex has them all.
 * Not here:  the load's sketch (sheet_load.c), signatures (sheet_sign.c), the same in full (sheet_full.c). */
#include "plot.h"
#include "quantity.h"
#include "sheet_parts.h"
#include "sheet_sign.h"
#include "translate.h"
#include "words.h"

#include <string.h>

#define MOST_OPTIONS 4
#define LEAST_ROWS   3     /* findings that side 2 always has */
#define MOST_CHANCES 3     /* rows of the doubt */
#define SURE         0.995 /* chances above are as good as certain */
#define ROUNDING_PT  4.0
#define STUCK_DOT    " ·\u00a0" /* what follows stays on its line */
#define GAP_PT       16.0       /* between the two columns */
#define STRIP_PT     54.0
#define AXIS_PT      13.0
#define STRIP_TYPE   9.7 /* its labels are the small ones: 8.5 pt */

/* ---- findings ------------------------------------------------------------------------------ */

/* "A · 2-3": the place in short; a lone bearer is not named. */
static char *
short_place(const hs_option_result *option, const hs_finding *finding)
{
    GString *place = g_string_new(NULL);
    int from = hs_has(finding->route) ? (int)floor(finding->route + 1e-6) : 0;

    if (option->asked && option->asked->n_bearers > 1 && finding->bearer >= 0 &&
        finding->bearer < option->asked->n_bearers)
        g_string_append(place, option->asked->bearers[finding->bearer].id);
    if (from > 0 && place->len > 0)
        g_string_append(place, STUCK_DOT);
    if (from > 0 && fabs(finding->route - from) < 1e-6)
        g_string_append_printf(place, "%d", from);
    else if (from > 0)
        g_string_append_printf(place, "%d\u2060–\u2060%d", from, from + 1); /* on one line */
    return g_string_free(place, FALSE);
}

void
hs_sheet_add_finding(hs_page *page,
                     hs_table *table,
                     int column,
                     int option_at,
                     hs_check_id check,
                     gboolean is_short)
{
    const hs_option_result *option = &page->request->results->options[option_at];
    const hs_finding *finding = hs_sheet_finding(option, check);

    if (!finding) {
        hs_table_cell(table, column, HS_TYPE_TEXT, _("not asked"));
        return;
    }
    g_autofree char *figure = hs_sheet_short(finding, page->units);

    if (finding->status == HS_STATUS_NOT_JUDGED) {
        hs_table_status(table, column, finding->status, figure);
        return;
    }
    g_autofree char *place =
        is_short ? short_place(option, finding) : hs_words_place(option, finding);
    const char *mark = hs_words_unconfirmed(finding);
    g_autofree char *said = g_strdup_printf(
        "%s · %s%s%s%s%s", hs_words_status(finding->status), figure, *place ? " · " : "", place,
        mark != NULL ? " · " : "", mark != NULL ? mark : "");

    hs_table_status(table, column, finding->status, said);
}

/* Options that side 2 has columns for: all, or where there are too many those of side 1. */
static int
columns_of(const hs_results *results, int *ret_options)
{
    int n = 0;

    for (int i = 0; i < results->n_options; i++)
        if (results->n_options <= MOST_OPTIONS || hs_sheet_is_on_side_1(results, i))
            ret_options[n++] = i;
    return n;
}

static void
paint_rest(hs_page *page, int n_left)
{
    g_autofree char *more =
        n_left > 0 ? g_strdup_printf(_("%d more findings, none nearer its limit, stand in the "
                                       "annex, all with their places in words."),
                                     n_left)
                   : g_strdup("");
    g_autofree char *line = g_strdup_printf(
        "%s %s", more,
        page->is_tight ? ""
                       : _("After the figure stand the bearer and the points of the route. "
                           "Figures in brackets lie outside what the limit was made for and "
                           "decide nothing."));

    hs_page_text(page, HS_TYPE_TEXT, g_strstrip(line));
}

static void
paint_findings(hs_page *page)
{
    const hs_results *results = page->request->results;
    hs_check_id checks[HS_N_CHECKS];
    int options[MOST_OPTIONS], n = columns_of(results, options);
    int n_checks = hs_sheet_order(results, checks), n_rows = MIN(n_checks, page->n_rows);
    double parts[MOST_OPTIONS + 1] = {19};

    for (int i = 1; i <= n; i++)
        parts[i] = 81.0 / n;
    g_autoptr(hs_table) table = hs_table_new(n + 1, parts);

    hs_page_subhead(page, n_rows < n_checks ? _("Findings, nearest their limit first")
                                            : _("All findings, nearest their limit first"));
    hs_table_limit_lines(table, 2);
    hs_table_head(table, 0, _("Finding"));
    for (int i = 0; i < n; i++)
        hs_table_head(table, i + 1, hs_sheet_name(&results->options[options[i]]));
    for (int k = 0; k < n_rows; k++) {
        hs_table_row(table);
        hs_table_cell(table, 0, HS_TYPE_BOLD, hs_words_check_in(results, checks[k]));
        for (int i = 0; i < n; i++)
            hs_sheet_add_finding(page, table, i + 1, options[i], checks[k], TRUE);
    }
    hs_table_paint(page, table);
    paint_rest(page, n_checks - n_rows);
}

/* ---- power lost ---------------------------------------------------------------------------- */

const hs_power_lost *
hs_sheet_worst_loss(const hs_option_result *option, int leg, int *ret_sample)
{
    const hs_power_lost *worst = NULL;
    double most = -INFINITY;

    for (int i = 0; i < option->n_samples; i++)
        for (int k = 0;
             (leg < 0 || option->samples[i].leg == leg) && k < option->asked->n_bearers; k++) {
            const hs_power_lost *lost = &option->samples[i].bearers[k].power_lost;
            double missing = hs_or(lost->needed_s, NAN) - hs_or(lost->hold_s, 0);

            if (!lost->is_known || !(missing >= most))
                continue;
            /* Arms that sink hold for as long as they need: then the longest counts. */
            if (missing > most || lost->needed_s > worst->needed_s) {
                most = missing;
                worst = lost;
                *ret_sample = i;
            }
        }
    return worst;
}

static char *
loss_text(hs_page *page, const hs_power_lost *lost, int leg)
{
    g_autofree char *needed = hs_quantity_text(lost->needed_s, "s", page->units);
    g_autofree char *held = hs_has(lost->hold_s)
                                ? hs_quantity_text(lost->hold_s, "s", page->units)
                                : g_strdup(_("not known"));

    /* Translators: a point's number, two times */
    return g_strdup_printf(_("Worst on the way to point %d: %s needed to set down, %s held."),
                           leg + 1, needed, held);
}

static void
paint_power_lost(hs_page *page)
{
    const hs_results *results = page->request->results;
    int proposed = hs_sheet_proposed(results), at = 0;
    const hs_option_result *option = &results->options[proposed];
    const hs_power_lost *worst = option->asked ? hs_sheet_worst_loss(option, -1, &at) : NULL;
    hs_plot_request request = {.results = results,
                               .task = hs_page_task(page),
                               .left = proposed,
                               .right = -1,
                               .kind = HS_PLOT_POWER_OFF,
                               .width_px = hs_page_width_pt(page),
                               .height_px = STRIP_PT,
                               .axis_px = 30,
                               .font_px = STRIP_TYPE,
                               .us_units = page->request->us_units};

    hs_page_subhead(page, _("If the suit's power is lost"));
    if (!worst) {
        hs_page_text(page, HS_TYPE_TEXT, _("Does not apply: no powered suit is proposed."));
        return;
    }
    cairo_save(page->cr);
    cairo_translate(page->cr, page->left_pt, page->y_pt);
    hs_plot_paint(page->cr, &request, page->theme);
    cairo_translate(page->cr, 0, STRIP_PT);
    request.height_px = AXIS_PT;
    hs_plot_axis_paint(page->cr, &request, page->theme);
    cairo_restore(page->cr);
    page->y_pt += STRIP_PT + AXIS_PT + 2;
    g_autofree char *said = loss_text(page, worst, option->samples[at].leg);
    hs_page_text(page, HS_TYPE_TEXT, said);
}

/* ---- roles, doubt, assumptions, cautions ---------------------------------------------------- */

static void
paint_roles(hs_page *page)
{
    const hs_task *task = hs_page_task(page);
    g_autoptr(hs_table) table = hs_table_new(3, (const double[]){44, 24, 32});

    hs_page_subhead(page, _("Roles, today and afterwards"));
    if (task->n_roles == 0)
        hs_page_text(page, HS_TYPE_TEXT, _("The jobs beside the lift itself are not listed."));
    hs_table_head(table, 0, _("Job"));
    hs_table_head(table, 1, _("today"));
    hs_table_head(table, 2, _("afterwards"));
    for (int i = 0; i < task->n_roles; i++) {
        const char *const who[] = {task->roles[i].before, task->roles[i].after};
        hs_table_row(table);
        hs_table_cell(table, 0, HS_TYPE_TEXT, task->roles[i].role);
        for (int k = 0; k < 2; k++)
            hs_table_cell(table, k + 1, who[k] && *who[k] ? HS_TYPE_TEXT : HS_TYPE_BOLD,
                          /* Translators: nobody does this job */
                          who[k] && *who[k] ? who[k] : _("EMPTY"));
    }
    hs_table_paint(page, table);
}

/* The share of each figure in the doubt of an option. */
static char *
drivers_text(hs_page *page, const hs_doubt_option *option)
{
    GString *list = g_string_new(NULL);

    for (int i = 0; i < option->n_drivers && i < 3; i++) {
        g_autofree char *share =
            hs_quantity_text(100.0 * option->drivers[i].share, "pct", page->units);
        g_string_append_printf(list, "%s%s (%s)", i ? "; " : "",
                               hs_sheet_input_name(option->drivers[i].input), share);
    }
    return g_string_free(list, FALSE);
}

void
hs_sheet_drivers(hs_page *page, const hs_doubt_option *option)
{
    g_autofree char *drivers = drivers_text(page, option);

    if (!*drivers)
        return;
    g_autofree char *line =
        /* Translators: an option, then figures with their part of the doubt */
        g_strdup_printf(_("%s: measure next, as it drives the doubt most: %s."),
                        hs_sheet_name_of(page->request->results, option->option), drivers);
    hs_page_text(page, HS_TYPE_TEXT, line);
}

static const hs_doubt_option *
doubt_of(const hs_results *results, int option)
{
    for (int i = 0; i < results->n_doubt; i++)
        if (g_strcmp0(results->doubt[i].option, results->options[option].id) == 0)
            return &results->doubt[i];
    return NULL;
}

/* The checks of the proposal whose chance of staying within is least. */
static void
paint_chances(hs_page *page, const hs_doubt_option *option)
{
    g_autoptr(hs_table) table = hs_table_new(2, (const double[]){70, 30});
    gboolean is_shown[HS_N_CHECKS] = {FALSE}, is_any = FALSE;

    hs_table_head(table, 0, _("chance of staying within, least first"));
    hs_table_head(table, 1, _("proposed"));
    for (int n = 0; n < MOST_CHANCES; n++) {
        const hs_doubt_check *least = NULL;

        for (int i = 0; i < option->n_checks; i++)
            if (option->checks[i].p_within < SURE && !is_shown[option->checks[i].check] &&
                (!least || option->checks[i].p_within < least->p_within))
                least = &option->checks[i];
        if (!least)
            break;
        is_shown[least->check] = is_any = TRUE;
        g_autofree char *chance = hs_quantity_text(100.0 * least->p_within, "pct", page->units);
        hs_table_row(table);
        hs_table_cell(table, 0, HS_TYPE_TEXT, hs_words_check(least->check));
        hs_table_cell(table, 1, HS_TYPE_TEXT, chance);
    }
    if (is_any)
        hs_table_paint(page, table);
    else
        hs_page_text(
            page, HS_TYPE_TEXT,
            _("Every figure that was varied keeps the proposal within its limits in at "
              "least 99.5 of 100 draws."));
}

static void
paint_doubt(hs_page *page)
{
    const hs_results *results = page->request->results;
    const hs_doubt_option *option = doubt_of(results, hs_sheet_proposed(results));

    if (!option)
        return;
    hs_page_subhead(page, _("Doubt"));
    paint_chances(page, option);
    hs_sheet_drivers(page, option);
}

/* Facts of this case that were assumed, in one line each after the other; figures of the method are counted. */
static void
paint_assumptions(hs_page *page)
{
    const hs_assumptions *list = &page->request->results->assumptions;
    GString *said = g_string_new(NULL);
    int n_method = 0;

    if (list->n == 0) {
        g_string_free(said, TRUE);
        return;
    }
    for (const hs_assumption *at = list->first; at; at = at->next) {
        g_autofree char *line = hs_words_message(&at->text, page->units);
        gboolean is_method = g_str_has_prefix(at->path, "policy") ||
                             g_str_has_prefix(at->path, "doubt") ||
                             g_str_has_prefix(at->path, "criteria");

        n_method += is_method || page->is_tight;
        if (!is_method && !page->is_tight && !strstr(said->str, line))
            g_string_append_printf(said, "%s ", line);
    }
    g_string_append_printf(
        said,
        page->is_tight
            ? _("%d figures were taken because none was given; each stands in the annex.")
            : _("%d usual figures of the method were taken; each stands in the annex."),
        n_method);
    if (!page->is_tight)
        hs_page_subhead(page, _("Assumed, because it was not given"));
    hs_page_text(page, HS_TYPE_TEXT, said->str);
    g_string_free(said, TRUE);
}

static void
paint_cautions(hs_page *page)
{
    const hs_results *results = page->request->results;
    GString *all = g_string_new(NULL);

    for (int i = 0; i < results->n_cautions; i++) {
        g_autofree char *said = hs_words_message(&results->cautions[i], page->units);
        g_string_append_printf(all, "%s%s", i ? " " : "", said);
    }
    hs_page_subhead(page, _("Cautions"));
    hs_page_text(page, HS_TYPE_TEXT, all->str);
    g_string_free(all, TRUE);
}

static void
paint_more_conditions(hs_page *page)
{
    const hs_results *results = page->request->results;
    int n = results->options[hs_sheet_proposed(results)].verdict.n_conditions;

    if (page->n_shown >= n)
        return;
    hs_page_subhead(page, _("More conditions"));
    hs_sheet_conditions(page, page->n_shown, n);
}

/* ---- the page ------------------------------------------------------------------------------ */

static void
paint_left(hs_page *page)
{
    hs_sheet_load(page);
    paint_roles(page);
}

static void
paint_right(hs_page *page)
{
    paint_power_lost(page);
    paint_doubt(page);
}

static void
paint_columns(hs_page *page)
{
    double left = page->left_pt, right = page->right_pt, y = page->y_pt,
           half = (right - left - GAP_PT) / 2, end;

    page->right_pt = left + half;
    paint_left(page);
    end = page->y_pt;
    page->right_pt = right;
    page->left_pt = right - half;
    page->y_pt = y;
    paint_right(page);
    page->left_pt = left;
    page->y_pt = fmax(page->y_pt, end);
}

static void
paint_side(hs_page *page)
{
    paint_more_conditions(page);
    paint_findings(page);
    hs_page_need(page, hs_page_measure(page, paint_columns));
    paint_columns(page);
    paint_assumptions(page);
    paint_cautions(page);
    hs_sheet_sign(page);
}

/* The greatest number from least to most with which the side is one page; least where none is. */
static void
take_most(hs_page *page, int *number, int least, int most)
{
    double room = hs_page_left_pt(page) - ROUNDING_PT;

    while (least < most) {
        *number = (least + most + 1) / 2;
        if (hs_page_measure(page, paint_side) <= room)
            least = *number;
        else
            most = *number - 1;
    }
    *number = least;
}

/* First findings give way, from the far end on, then assumptions, then open items. */
void
hs_sheet_side_why(hs_page *page)
{
    hs_check_id checks[HS_N_CHECKS];
    double room = hs_page_left_pt(page) - ROUNDING_PT;

    page->n_open = hs_sheet_n_open(page);
    page->is_tight = FALSE;
    take_most(page, &page->n_rows, LEAST_ROWS, hs_sheet_order(page->request->results, checks));
    if (hs_page_measure(page, paint_side) > room) {
        page->is_tight = TRUE;
        take_most(page, &page->n_rows, 1, LEAST_ROWS);
        take_most(page, &page->n_open, 0, page->n_open);
    }
    paint_side(page);
}

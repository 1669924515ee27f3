/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  from what was it worked out?
 * Answer:    the annex: readings, route, people, suits, working of each deciding finding, sources, break-even, trial card,
 *            revisions.
 * Not here:  the two sides (sheet_decided.c, sheet_why.c). */
#include "quantity.h"
#include "sheet_parts.h"
#include "translate.h"
#include "words.h"

#include <string.h>

/* A figure, or an empty cell for one that is not given. */
static void
figure_cell(hs_page *page, hs_table *table, int column, double value, const char *unit)
{
    g_autofree char *text =
        hs_has(value) ? hs_quantity_text(value, unit, page->units) : g_strdup("");

    hs_table_cell(table, column, HS_TYPE_TEXT, text);
}

static void
heads(hs_table *table, const char *const *names, int n)
{
    for (int i = 0; i < n; i++)
        hs_table_head(table, i, names[i]);
}

static void
paint_parts(hs_page *page)
{
    const hs_load *load = &hs_page_task(page)->load;
    g_autoptr(hs_table) table = hs_table_new(5, (const double[]){36, 16, 16, 16, 16});
    const char *const names[] = {_("Part of the load"), _("mass"), _("along"), _("to the left"),
                                 _("up")};

    heads(table, names, 5);
    for (int i = 0; i < load->n_parts; i++) {
        const hs_part *part = &load->parts[i];
        hs_table_row(table);
        hs_table_cell(table, 0, HS_TYPE_TEXT,
                      part->name ? part->name
                      : part->id ? part->id
                                 : "");
        figure_cell(page, table, 1, part->mass_kg, "kg");
        figure_cell(page, table, 2, part->centre_m.x, "m");
        figure_cell(page, table, 3, part->centre_m.y, "m");
        figure_cell(page, table, 4, part->centre_m.z, "m");
    }
    hs_table_paint(page, table);
}

static void
paint_readings(hs_page *page)
{
    const hs_load *load = &hs_page_task(page)->load;
    g_autoptr(hs_table) table = hs_table_new(5, (const double[]){20, 20, 20, 20, 20});
    const char *const names[] = {_("Weighing"), _("tilt"), _("support along"),
                                 _("support to the left"), _("reading")};

    heads(table, names, 5);
    for (int i = 0; i < load->n_weighings; i++)
        for (int k = 0; k < load->weighings[i].n_readings; k++) {
            const hs_reading *reading = &load->weighings[i].readings[k];
            g_autofree char *number = g_strdup_printf("%d", i + 1);
            hs_table_row(table);
            hs_table_cell(table, 0, HS_TYPE_TEXT, number);
            figure_cell(page, table, 1, load->weighings[i].tilt_deg, "deg");
            figure_cell(page, table, 2, reading->at_x_m, "m");
            figure_cell(page, table, 3, reading->at_y_m, "m");
            figure_cell(page, table, 4, reading->reading_kg, "kg");
        }
    hs_table_paint(page, table);
}

static void
paint_grips(hs_page *page)
{
    const hs_load *load = &hs_page_task(page)->load;
    g_autoptr(hs_table) table = hs_table_new(5, (const double[]){20, 20, 20, 20, 20});
    const char *const names[] = {_("Grip"), _("kind"), _("along"), _("to the left"), _("up")};

    heads(table, names, 5);
    for (int i = 0; i < load->n_grips; i++) {
        const hs_grip *grip = &load->grips[i];
        hs_table_row(table);
        hs_table_cell(table, 0, HS_TYPE_TEXT, grip->id);
        hs_table_cell(table, 1, HS_TYPE_TEXT, hs_words_grip(grip->kind));
        figure_cell(page, table, 2, grip->at_m.x, "m");
        figure_cell(page, table, 3, grip->at_m.y, "m");
        figure_cell(page, table, 4, grip->at_m.z, "m");
    }
    hs_table_paint(page, table);
}

static void
paint_route(hs_page *page)
{
    const hs_route *route = &hs_page_task(page)->route;
    g_autoptr(hs_table) table =
        hs_table_new(8, (const double[]){8, 16, 12, 12, 12, 12, 12, 16});
    const char *const names[] = {_("Point"), _("move"), _("along"), _("height"),
                                 _("reach"), _("time"), _("hold"),  _("set-down")};

    hs_page_heading(page, _("The route"));
    heads(table, names, 8);
    for (int i = 0; i < route->n_points; i++) {
        const hs_point *point = &route->points[i];
        g_autofree char *number = g_strdup_printf("%d", i + 1);
        hs_table_row(table);
        hs_table_cell(table, 0, HS_TYPE_TEXT, number);
        hs_table_cell(table, 1, HS_TYPE_TEXT, hs_words_move(point->move));
        figure_cell(page, table, 2, point->x_m, "m");
        figure_cell(page, table, 3, point->z_m, "m");
        figure_cell(page, table, 4, point->reach_m, "m");
        figure_cell(page, table, 5, point->time_s, "s");
        figure_cell(page, table, 6, point->hold_s, "s");
        hs_table_cell(table, 7, HS_TYPE_TEXT,
                      point->set_down == HS_YES ? _("set down here") : "");
    }
    hs_table_paint(page, table);
}

static void
paint_workers(hs_page *page)
{
    const hs_task *task = hs_page_task(page);
    g_autoptr(hs_table) table = hs_table_new(5, (const double[]){36, 16, 16, 16, 16});
    const char *const names[] = {_("Worker"), _("sex"), _("stature"), _("body mass"), _("age")};

    heads(table, names, 5);
    for (int i = 0; i < task->n_workers; i++) {
        const hs_worker *worker = &task->workers[i];
        hs_table_row(table);
        hs_table_cell(table, 0, HS_TYPE_TEXT, worker->name ? worker->name : worker->id);
        hs_table_cell(table, 1, HS_TYPE_TEXT,
                      worker->sex == HS_SEX_FEMALE ? _("woman")
                      : worker->sex == HS_SEX_MALE ? _("man")
                                                   : "");
        figure_cell(page, table, 2, worker->stature_m, "m");
        figure_cell(page, table, 3, worker->mass_kg, "kg");
        figure_cell(page, table, 4, worker->age_years, "");
    }
    hs_table_paint(page, table);
}

static void
paint_suit(hs_page *page, const hs_suit *suit)
{
    g_autofree char *head =
        g_strdup_printf("%s (%s): %s", suit->name ? suit->name : suit->id,
                        hs_words_suit_kind(suit->kind), hs_sheet_or_dash(suit->source));
    g_autoptr(hs_table) table = hs_table_new(4, (const double[]){30, 20, 30, 20});
    const struct {
        const char *name, *unit;
        double value;
    } facts[] = {{_("mass"), "kg", suit->mass_kg},
                 {_("gain at the hands"), "", suit->gain_hands},
                 {_("gain at the trunk"), "", suit->gain_trunk},
                 {_("residual at the hands"), "N", suit->residual_hands_N},
                 {_("part of its mass it carries itself"), "pct", 100.0 * suit->self_carried},
                 {_("release by a helper"), "s", suit->release_helper_s},
                 {_("release by the wearer"), "s", suit->release_self_s},
                 {_("battery"), "Wh", suit->battery_Wh}};
    int n = 0;

    hs_page_text(page, HS_TYPE_BOLD, head);
    for (size_t i = 0; i < G_N_ELEMENTS(facts); i++) {
        if (!hs_has(facts[i].value))
            continue;
        if (n % 2 == 0)
            hs_table_row(table);
        hs_table_cell(table, n % 2 * 2, HS_TYPE_TEXT, facts[i].name);
        figure_cell(page, table, n % 2 * 2 + 1, facts[i].value, facts[i].unit);
        n++;
    }
    for (int i = 0; i < suit->n_rating; i++) {
        hs_table_row(table);
        hs_table_cell(table, 0, HS_TYPE_TEXT, _("rated payload at reach"));
        figure_cell(page, table, 1, suit->rating[i].reach_m, "m");
        figure_cell(page, table, 2, suit->rating[i].payload_kg, "kg");
    }
    hs_table_paint(page, table);
}

static void
paint_inputs(hs_page *page)
{
    const hs_task *task = hs_page_task(page);

    hs_page_text(page, HS_TYPE_TITLE, _("Annex"));
    hs_page_heading(page, _("What was entered and read"));
    paint_parts(page);
    paint_readings(page);
    paint_grips(page);
    paint_workers(page);
    for (int i = 0; i < task->n_suits; i++)
        paint_suit(page, &task->suits[i]);
}

static void
paint_working(hs_page *page, const hs_option_result *option, const hs_finding *finding)
{
    g_autoptr(GPtrArray) steps = hs_words_worked(finding);
    g_autofree char *why = hs_words_message(&finding->text, page->units);
    g_autofree char *place = hs_words_place(option, finding);
    g_autofree char *source = hs_words_source(finding->source);
    g_autofree char *head =
        g_strdup_printf("%s: %s, %s%s%s", hs_sheet_name(option), hs_words_check(finding->check),
                        hs_words_status(finding->status), *place ? " · " : "", place);

    hs_page_need(page, 48);
    hs_page_text(page, HS_TYPE_BOLD, head);
    hs_page_text(page, HS_TYPE_TEXT, why);
    for (guint i = 0; i < steps->len; i++) {
        const hs_worked *step = g_ptr_array_index(steps, i);

        if (step->title)
            hs_page_text(page, HS_TYPE_BOLD, step->title);
        hs_page_text(page, HS_TYPE_TEXT, step->symbols);
        hs_page_text(page, HS_TYPE_TEXT, step->numbers);
        if (step->source)
            hs_page_text(page, HS_TYPE_TEXT, step->source);
    }
    if (source && *source)
        hs_page_text(page, HS_TYPE_TEXT, source);
    hs_page_space(page, 4);
}

static void
paint_workings(hs_page *page)
{
    const hs_results *results = page->request->results;

    hs_page_heading(page, _("Working of what decides"));
    for (int i = 0; i < results->n_options; i++) {
        const hs_option_result *option = &results->options[i];
        if (option->is_added)
            continue;
        for (int k = 0; k < option->n_findings; k++)
            if (option->findings[k].status == HS_STATUS_BEYOND ||
                option->findings[k].status == HS_STATUS_NEAR)
                paint_working(page, option, &option->findings[k]);
    }
}

/* Checks of an option that one sentence is true of; empty when an earlier finding has said it. */
static char *
said_of(hs_page *page, int option_at, int finding_at, const char *said)
{
    const hs_results *results = page->request->results;
    GString *list = g_string_new(NULL);

    for (int i = 0; i < results->n_options; i++)
        for (int k = 0; k < results->options[i].n_findings; k++) {
            const hs_finding *finding = &results->options[i].findings[k];
            if (!hs_sheet_is_shortened(finding))
                continue;
            g_autofree char *other = hs_words_message(&finding->text, page->units);
            if (strcmp(other, said) != 0)
                continue;
            gboolean is_earlier = i < option_at || (i == option_at && k < finding_at);
            if (is_earlier) {
                g_string_truncate(list, 0);
                return g_string_free(list, FALSE);
            }
            const char *name = hs_words_check(finding->check);
            if (!strstr(list->str, name))
                g_string_append_printf(list, "%s%s", list->len ? "; " : "", name);
        }
    return g_string_free(list, FALSE);
}

/* What the cells of the findings say in a few words, each sentence once. */
static void
paint_sentences(hs_page *page)
{
    const hs_results *results = page->request->results;
    g_autoptr(hs_table) table = hs_table_new(2, (const double[]){30, 70});

    hs_table_head(table, 0, _("Finding"));
    hs_table_head(table, 1, _("in a whole sentence"));
    for (int i = 0; i < results->n_options; i++)
        for (int k = 0; k < results->options[i].n_findings; k++) {
            const hs_finding *finding = &results->options[i].findings[k];
            if (!hs_sheet_is_shortened(finding))
                continue;
            g_autofree char *said = hs_words_message(&finding->text, page->units);
            g_autofree char *of = said_of(page, i, k, said);
            if (!*of)
                continue;
            hs_table_row(table);
            hs_table_cell(table, 0, HS_TYPE_TEXT, of);
            hs_table_cell(table, 1, HS_TYPE_TEXT, said);
        }
    hs_page_heading(page, _("Findings in whole sentences"));
    hs_table_paint(page, table);
}

static void
paint_sources(hs_page *page)
{
    const hs_results *results = page->request->results;
    gboolean is_used[HS_N_SOURCES] = {FALSE};
    g_autoptr(hs_table) table = hs_table_new(2, (const double[]){74, 26});

    for (int i = 0; i < results->n_options; i++)
        for (int k = 0; k < results->options[i].n_findings; k++)
            is_used[results->options[i].findings[k].source] = TRUE;
    hs_table_head(table, 0, _("Source"));
    hs_table_head(table, 1, _("how known"));
    for (int i = 1; i < HS_N_SOURCES; i++) {
        if (!is_used[i])
            continue;
        g_autofree char *said = hs_words_source((hs_source_id)i);
        hs_table_row(table);
        hs_table_cell(table, 0, HS_TYPE_TEXT, said);
        hs_table_cell(table, 1, HS_TYPE_TEXT,
                      hs_words_confidence(hs_source_get((hs_source_id)i)->confidence));
    }
    hs_page_heading(page, _("Sources of the limits"));
    hs_table_paint(page, table);
}

static void
paint_break_even(hs_page *page)
{
    const hs_results *results = page->request->results;
    g_autoptr(hs_table) table = hs_table_new(4, (const double[]){24, 24, 22, 30});
    const char *const names[] = {_("Option"), _("figure changed"), _("turns at"),
                                 _("finding that turns")};

    if (results->n_break_even == 0)
        return;
    hs_page_heading(page, _("Break-even: where the verdict would turn"));
    heads(table, names, 4);
    for (int i = 0; i < results->n_break_even; i++) {
        const hs_break_even *at = &results->break_even[i];
        const char *unit = strrchr(at->quantity, '_');
        hs_table_row(table);
        hs_table_cell(table, 0, HS_TYPE_TEXT, hs_sheet_name_of(results, at->option));
        hs_table_cell(table, 1, HS_TYPE_TEXT, hs_sheet_input_name(at->quantity));
        if (at->is_unlimited || !hs_has(at->value)) {
            hs_table_cell(table, 2, HS_TYPE_TEXT, _("not within what was searched"));
            continue;
        }
        figure_cell(page, table, 2, at->value, unit ? unit + 1 : "");
        hs_table_cell(table, 3, HS_TYPE_TEXT, hs_words_check(at->check));
    }
    hs_table_paint(page, table);
}

/* Predictions to be measured: what the file has, then the deciding figures with a blank. */
static void
paint_trial_card(hs_page *page)
{
    const hs_task *task = hs_page_task(page);
    const hs_results *results = page->request->results;
    const hs_option_result *option = &results->options[hs_sheet_proposed(results)];
    g_autoptr(hs_table) table = hs_table_new(4, (const double[]){34, 28, 20, 18});
    const char *const names[] = {_("Figure"), _("predicted"), _("measured"), _("date")};

    hs_page_heading(page, _("Trial card"));
    heads(table, names, 4);
    for (int i = 0; i < task->n_trials; i++) {
        const hs_trial *trial = &task->trials[i];
        const char *unit = trial->unit ? trial->unit : "";
        hs_table_row(table);
        hs_table_cell(table, 0, HS_TYPE_TEXT, trial->quantity);
        figure_cell(page, table, 1, trial->predicted, unit);
        figure_cell(page, table, 2, trial->measured, unit);
        hs_table_cell(table, 3, HS_TYPE_TEXT, trial->date ? trial->date : "");
    }
    for (int i = 0; i < option->n_findings; i++) {
        const hs_finding *finding = &option->findings[i];
        if (!hs_has(finding->value) || hs_sheet_closeness(finding) < 0.5)
            continue;
        g_autofree char *figure = hs_words_figure(finding, page->units);
        hs_table_row(table);
        hs_table_cell(table, 0, HS_TYPE_TEXT, hs_words_check(finding->check));
        hs_table_cell(table, 1, HS_TYPE_TEXT, figure);
        hs_table_cell(table, 2, HS_TYPE_BOLD, "______________");
        hs_table_cell(table, 3, HS_TYPE_BOLD, "___________");
    }
    hs_table_paint(page, table);
}

static void
paint_revisions(hs_page *page)
{
    const hs_task *task = hs_page_task(page);
    g_autoptr(hs_table) table = hs_table_new(4, (const double[]){10, 16, 24, 50});
    const char *const names[] = {_("Revision"), _("date"), _("by"), _("what changed")};

    if (task->n_revisions == 0)
        return;
    hs_page_heading(page, _("Revisions"));
    heads(table, names, 4);
    for (int i = 0; i < task->n_revisions; i++) {
        const hs_revision *revision = &task->revisions[i];
        hs_table_row(table);
        figure_cell(page, table, 0, revision->number, "");
        hs_table_cell(table, 1, HS_TYPE_TEXT, revision->date);
        hs_table_cell(table, 2, HS_TYPE_TEXT, revision->author);
        hs_table_cell(table, 3, HS_TYPE_TEXT, revision->summary);
    }
    hs_table_paint(page, table);
}

void
hs_sheet_annex(hs_page *page)
{
    paint_inputs(page);
    paint_route(page);
    hs_sheet_full(page);
    paint_sentences(page);
    paint_workings(page);
    paint_break_even(page);
    paint_trial_card(page);
    hs_sheet_limits(page);
    paint_sources(page);
    paint_revisions(page);
    hs_sheet_open_all(page);
}

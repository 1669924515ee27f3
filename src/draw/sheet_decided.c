/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what was decided?
 * Answer:    side 1: band, verdict with conditions, pictures, what decides, better ways, people.
 * Not here:  why it may be believed (sheet_why.c), the pictures (sheet_pictures.c). */
#include "page_internal.h"
#include "quantity.h"
#include "sheet_parts.h"
#include "translate.h"
#include "words.h"

#define N_DECIDING        3
#define MOST_NAMES        4
#define LEAST_PICTURE_PT  130.0
#define ENOUGH_PICTURE_PT 150.0
#define ROUNDING_PT       3.0
#define MOST_PICTURE_PT   235.0

static const hs_option_result *
proposed_of(const hs_page *page)
{
    const hs_results *results = page->request->results;

    return &results->options[hs_sheet_proposed(results)];
}

static void
paint_band(hs_page *page)
{
    const hs_task *task = hs_page_task(page);
    const hs_about *about = &task->about;
    g_autoptr(hs_table) table = hs_table_new(4, (const double[]){26, 28, 22, 24});
    const hs_revision *last =
        task->n_revisions > 0 ? &task->revisions[task->n_revisions - 1] : NULL;
    g_autofree char *code = hs_page_code(hs_document_digest(page->request->document));
    g_autofree char *dates = g_strdup_printf("%s\n%s", hs_sheet_or_dash(about->date),
                                             hs_sheet_or_dash(about->review_due));
    g_autofree char *before = hs_page_code(last ? last->previous_digest : NULL);
    g_autofree char *revision =
        g_strdup_printf("%d · %s", last && hs_has(last->number) ? (int)last->number : 1, code);
    g_autofree char *replaces =
        *before ? g_strdup_printf(_("replaces %s"), before) : g_strdup(_("replaces nothing"));
    g_autofree char *mark = g_strdup_printf("%s\n%s", revision, replaces);
    g_autofree char *who =
        about->reference ? g_strdup_printf(_("%s\nreference %s"),
                                           hs_sheet_or_dash(about->assessor), about->reference)
                         : g_strdup(hs_sheet_or_dash(about->assessor));

    hs_page_text(page, HS_TYPE_TITLE, about->title ? about->title : _("untitled"));
    hs_page_text(page, HS_TYPE_TEXT, hs_sheet_or_dash(about->task));
    hs_page_rule(page, 1.5);
    hs_table_row(table);
    hs_table_cell(table, 0, HS_TYPE_TEXT, _("Place"));
    hs_table_cell(table, 1, HS_TYPE_TEXT, _("Assessor"));
    hs_table_cell(table, 2, HS_TYPE_TEXT, _("Date · review due"));
    hs_table_cell(table, 3, HS_TYPE_TEXT, _("Revision · file code"));
    hs_table_row(table);
    hs_table_cell(table, 0, HS_TYPE_BOLD, hs_sheet_or_dash(about->place));
    hs_table_cell(table, 1, HS_TYPE_BOLD, who);
    hs_table_cell(table, 2, HS_TYPE_BOLD, dates);
    hs_table_cell(table, 3, HS_TYPE_BOLD, mark);
    hs_table_paint(page, table);
    hs_sheet_limits_line(page);
    hs_page_rule(page, 1);
}

/* Whoever would lift alone without the suit: the program's own option, or an unsuited single bearer of the document. */
static const hs_option_result *
unsuited_one(const hs_results *results)
{
    for (int i = 0; i < results->n_options; i++) {
        const hs_option *asked = results->options[i].asked;
        if (results->options[i].is_added ||
            (asked && asked->n_bearers == 1 && asked->bearers[0].suit < 0))
            return &results->options[i];
    }
    return NULL;
}

static void
paint_suit_only(hs_page *page)
{
    const hs_option_result *bare = unsuited_one(page->request->results);
    g_autofree char *line = NULL;

    if (!proposed_of(page)->verdict.suit_only)
        return;
    if (bare && bare->verdict.n_reasons > 0) {
        const hs_finding *finding = hs_sheet_finding(bare, bare->verdict.reasons[0]);
        g_autofree char *figure = finding ? hs_sheet_short(finding, page->units) : g_strdup("");
        line = g_strdup_printf(_("Supported only because of the suit: one person without it is "
                                 "beyond a limit (%s: %s)."),
                               hs_words_check(bare->verdict.reasons[0]), figure);
    }
    hs_page_text(
        page, HS_TYPE_BOLD,
        line ? line
             : _("Supported only because of the suit: the same person without it is not."));
}

/* What a condition rests on: the finding of the check it names. */
static char *
figure_behind(hs_page *page, const hs_message *condition)
{
    const hs_option_result *option = proposed_of(page);

    for (int i = 0; i < option->n_findings; i++) {
        const hs_finding *finding = &option->findings[i];
        gboolean is_it =
            condition->reason == HS_REASON_condition_device ? finding->check == HS_CHECK_roles
            : condition->reason == HS_REASON_condition_helper
                ? finding->check == HS_CHECK_rescue
            : condition->reason == HS_REASON_condition_near ||
                    condition->reason == HS_REASON_condition_worse
                ? g_strcmp0(condition->name[0], hs_words_check_id(finding->check)) == 0
                : finding->remedy.reason == condition->reason;
        if (is_it && finding->status != HS_STATUS_NONE) {
            g_autofree char *figure = hs_sheet_short(finding, page->units);
            g_autofree char *place = hs_words_place(option, finding);
            return *place ? g_strdup_printf("%s · %s", figure, place)
                          : g_steal_pointer(&figure);
        }
    }
    return g_strdup("");
}

void
hs_sheet_conditions(hs_page *page, int from, int to)
{
    const hs_verdict *verdict = &proposed_of(page)->verdict;
    g_autoptr(hs_table) table = hs_table_new(4, (const double[]){56, 22, 12, 10});

    hs_table_head(table, 0, _("Conditions, ticked when met"));
    hs_table_head(table, 1, _("figure behind it"));
    hs_table_head(table, 2, _("owner"));
    hs_table_head(table, 3, _("due"));
    for (int i = from; i < to && i < verdict->n_conditions; i++) {
        g_autofree char *said = hs_words_message(&verdict->conditions[i], page->units);
        g_autofree char *numbered = g_strdup_printf("%d  %s", i + 1, said);
        g_autofree char *figure = figure_behind(page, &verdict->conditions[i]);
        hs_table_row(table);
        hs_table_tick(table, 0, numbered);
        hs_table_cell(table, 1, HS_TYPE_TEXT, figure);
        hs_table_cell(table, 2, HS_TYPE_BOLD, "___________");
        hs_table_cell(table, 3, HS_TYPE_BOLD, "_________");
    }
    hs_table_paint(page, table);
}

static void
paint_conditions(hs_page *page)
{
    int more = proposed_of(page)->verdict.n_conditions - page->n_shown;

    hs_sheet_conditions(page, 0, page->n_shown);
    if (more <= 0)
        return;
    g_autofree char *rest = g_strdup_printf(_("and %d more on side 2"), more);
    hs_page_text(page, HS_TYPE_BOLD, rest);
}

static void
paint_reasons(hs_page *page)
{
    const hs_option_result *option = proposed_of(page);
    GString *line = g_string_new(NULL);

    for (int i = 0; i < option->verdict.n_reasons && i < 4; i++)
        g_string_append_printf(
            line, "%s%s", i ? "; " : "",
            hs_words_check_in(page->request->results, option->verdict.reasons[i]));
    if (option->verdict.n_reasons > 4)
        g_string_append_printf(line, _("; and %d more"), option->verdict.n_reasons - 4);
    if (line->len > 0) {
        g_autofree char *said = g_strdup_printf(_("Decided by: %s."), line->str);
        hs_page_text(page, HS_TYPE_TEXT, said);
    }
    g_string_free(line, TRUE);
}

static void
paint_verdict(hs_page *page)
{
    const hs_option_result *option = proposed_of(page);
    const char *name = hs_sheet_name(option);
    g_autofree char *line =
        /* Translators: the verdict, then the option it is about */
        g_strdup_printf(_("%s: %s"), hs_words_verdict(option->verdict.status), name);

    hs_page_space(page, 2);
    hs_page_text(page, HS_TYPE_TITLE, line);
    paint_suit_only(page);
    paint_reasons(page);
    paint_conditions(page);
}

/* One line for one option: name, bar, status and figure. */
static void
paint_bar(hs_page *page, const hs_option_result *option, const hs_finding *finding, double x)
{
    double name = 164, bar = 56, y = page->y_pt, rest = page->right_pt - x - name - bar - 8;
    g_autofree char *figure = hs_sheet_short(finding, page->units);
    g_autofree char *said = NULL;

    if (finding->status != HS_STATUS_NOT_JUDGED) {
        g_autofree char *place = hs_words_route(finding->route);
        g_autofree char *both =
            g_strdup_printf("%s · %s", hs_words_status(finding->status), figure);
        said = g_strdup_printf("%s · %s", both, place);
        if (!*place || hs_page_text_width(page, HS_TYPE_TEXT, said) > rest) {
            g_free(said); /* the place stands on side 2 */
            said = g_steal_pointer(&both);
        }
    }
    double high = hs_page_line_at(page, HS_TYPE_TEXT, hs_sheet_name(option), x, y, name - 6);

    if (finding->status != HS_STATUS_NOT_JUDGED && hs_has(finding->ratio))
        hs_paint_ratio_bar(page->cr, finding->status, finding->ratio, x + name, y + 1, bar, 9,
                           page->theme);
    hs_page_line_at(page, HS_TYPE_TEXT, said ? said : figure, x + name + bar + 8, y, rest);
    page->y_pt += high + 1;
}

gboolean
hs_sheet_is_on_side_1(const hs_results *results, int option)
{
    return option == results->baseline || option == hs_sheet_proposed(results) ||
           &results->options[option] == unsuited_one(results);
}

static const hs_option_result *
closest_option(const hs_results *results, hs_check_id check)
{
    const hs_option_result *best = &results->options[hs_sheet_proposed(results)];

    for (int i = 0; i < results->n_options; i++)
        if (hs_sheet_closeness(hs_sheet_finding(best, check)) < 0 &&
            !results->options[i].is_added)
            best = &results->options[i];
    return best;
}

static void
paint_decider(hs_page *page)
{
    hs_check_id check = *(const hs_check_id *)page->data;
    const hs_results *results = page->request->results;
    const hs_option_result *closest = closest_option(results, check);
    const hs_finding *finding = hs_sheet_finding(closest, check);
    double x = page->left_pt + 84, y0 = page->y_pt;
    double high = hs_page_text_at(page, HS_TYPE_BOLD, hs_words_check_in(results, check),
                                  page->left_pt, y0, 80);

    for (int i = 0; i < results->n_options; i++) {
        const hs_finding *shown = hs_sheet_finding(&results->options[i], check);
        if (shown && hs_sheet_is_on_side_1(results, i))
            paint_bar(page, &results->options[i], shown, x);
    }
    if (finding && finding->remedy.reason != HS_REASON_none) {
        g_autofree char *remedy = hs_words_message(&finding->remedy, page->units);
        page->y_pt +=
            hs_page_text_at(page, HS_TYPE_TEXT, remedy, x, page->y_pt, page->right_pt - x);
    }
    page->y_pt = fmax(page->y_pt, y0 + high) + 3;
}

static void
paint_what_decides(hs_page *page)
{
    hs_check_id checks[HS_N_CHECKS];
    int n = hs_sheet_order(page->request->results, checks);

    hs_page_heading(page, _("What decides: the three findings nearest their limit"));
    for (int i = 0; i < n && i < N_DECIDING; i++) {
        page->data = &checks[i];
        hs_page_need(page, hs_page_measure(page, paint_decider));
        paint_decider(page);
    }
    page->data = NULL;
}

static const char *
way_text(hs_way way)
{
    static const char *const names[] = {NULL, N_("Remove the lift"), N_("Split the load"),
                                        N_("Another height at start or end"),
                                        N_("Hoist, truck or conveyor")};

    return _(names[way]);
}

static const char *
answer_text(hs_way_answer answer)
{
    switch (answer) {
    case HS_ANSWER_DONE:
        return _("done");
    case HS_ANSWER_NOT_POSSIBLE:
        return _("not possible");
    case HS_ANSWER_PLANNED:
        return _("planned");
    default:
        return _("not answered");
    }
}

static void
paint_better_ways(hs_page *page)
{
    const hs_task *task = hs_page_task(page);
    g_autoptr(hs_table) table = hs_table_new(3, (const double[]){30, 16, 54});

    hs_page_heading(page, _("Better ways first"));
    for (int way = HS_WAY_REMOVE; way <= HS_WAY_MECHANISE; way++) {
        const hs_better_way *found = NULL;
        for (int i = 0; i < task->n_better_ways; i++)
            if ((int)task->better_ways[i].way == way)
                found = &task->better_ways[i];
        hs_table_row(table);
        hs_table_cell(table, 0, HS_TYPE_BOLD, way_text((hs_way)way));
        hs_table_cell(table, 1, HS_TYPE_TEXT, answer_text(found ? found->answer : 0));
        hs_table_cell(table, 2, HS_TYPE_TEXT, found && found->reason ? found->reason : "");
    }
    hs_table_paint(page, table);
}

/* Checks that get better, get worse or cannot be told between today and the proposal. */
static char *
compare(hs_page *page, int sign, int most)
{
    const hs_results *results = page->request->results;
    const hs_option_result *today = &results->options[results->baseline],
                           *then = proposed_of(page);
    GString *list = g_string_new(NULL);
    int n = 0;

    for (int check = 0; check < HS_N_CHECKS; check++) {
        const hs_finding *a = hs_sheet_finding(today, (hs_check_id)check);
        const hs_finding *b = hs_sheet_finding(then, (hs_check_id)check);
        gboolean are_judged = hs_sheet_closeness(a) >= 0 && hs_sheet_closeness(b) >= 0;
        double change = are_judged ? hs_sheet_closeness(b) - hs_sheet_closeness(a) : 0;
        gboolean is_it = sign == 0
                             ? b && hs_sheet_closeness(b) < 0 && a && hs_sheet_closeness(a) >= 0
                             : change * sign > 0.05;
        if (!is_it || check == HS_CHECK_loss_bearer)
            continue;
        if (n++ < most)
            g_string_append_printf(list, "%s%s", n > 1 ? "; " : "",
                                   hs_words_check((hs_check_id)check));
    }
    if (n > most)
        g_string_append_printf(list, _("; and %d more"), n - most);
    if (n == 0)
        g_string_append(list, _("nothing shown"));
    return g_string_free(list, FALSE);
}

/* As many names as go on one line. */
static char *
compare_line(hs_page *page, int sign, double width_pt)
{
    for (int most = MOST_NAMES;; most--) {
        g_autofree char *line = compare(page, sign, most);

        if (most == 1 || hs_page_text_width(page, HS_TYPE_TEXT, line) <= width_pt)
            return g_steal_pointer(&line);
    }
}

static char *
people_text(const hs_option_result *option)
{
    int n = option->asked ? option->asked->n_bearers : 0;

    for (int i = 0; i < option->verdict.n_conditions; i++)
        if (option->verdict.conditions[i].reason == HS_REASON_condition_helper)
            return g_strdup_printf(_("%d + 1 within call"), n);
    return g_strdup_printf("%d", n);
}

/* Each job beside the lift and who does it afterwards. */
static char *
jobs_text(const hs_task *task)
{
    GString *list = g_string_new(NULL);

    for (int i = 0; i < task->n_roles; i++) {
        const hs_role *role = &task->roles[i];
        gboolean is_empty = !role->after || !*role->after;

        g_string_append_printf(list, "%s%s: %s", list->len ? "; " : "", role->role,
                               /* Translators: nobody does this job */
                               is_empty ? _("EMPTY") : role->after);
    }
    if (list->len == 0)
        g_string_append(list, _("not listed"));
    return g_string_free(list, FALSE);
}

static void
paint_people(hs_page *page)
{
    const hs_results *results = page->request->results;
    g_autofree char *today = people_text(&results->options[results->baseline]);
    g_autofree char *then = people_text(proposed_of(page));
    /* Translators: how many people lift, today and as proposed */
    g_autofree char *need =
        g_strdup_printf(_("People needed: today %s; proposed %s"), today, then);
    const char *const names[] = {_("Better for the one who stays"),
                                 _("Worse for the one who stays"), _("Nobody knows yet")};
    const int signs[] = {-1, 1, 0};
    g_autoptr(hs_table) table = hs_table_new(2, (const double[]){28, 72});

    hs_page_heading(page, need);
    for (int i = 0; i < 3; i++) {
        g_autofree char *line = compare_line(page, signs[i], hs_page_width_pt(page) * 0.72 - 1);
        hs_table_row(table);
        hs_table_cell(table, 0, HS_TYPE_BOLD, names[i]);
        hs_table_cell(table, 1, HS_TYPE_TEXT, line);
    }
    if (hs_sheet_goes_down(results)) {
        g_autofree char *jobs = jobs_text(hs_page_task(page));
        hs_table_row(table);
        hs_table_cell(table, 0, HS_TYPE_BOLD, _("Work of the second person now done by"));
        hs_table_cell(table, 1, HS_TYPE_TEXT, jobs);
    }
    hs_table_paint(page, table);
}

static void
paint_lower(hs_page *page)
{
    paint_what_decides(page);
    paint_better_ways(page);
    paint_people(page);
}

static void
paint_upper(hs_page *page)
{
    paint_band(page);
    paint_verdict(page);
}

/* Conditions go to side 2, from the last on, until the pictures have room; two stay. */
void
hs_sheet_side_decided(hs_page *page)
{
    double all = hs_page_left_pt(page), room;
    int n = proposed_of(page)->verdict.n_conditions;

    for (page->n_shown = MIN(n, HS_SHEET_CONDITIONS);; page->n_shown--) {
        room = all - hs_page_measure(page, paint_upper) - hs_page_measure(page, paint_lower) -
               ROUNDING_PT;
        if (room >= ENOUGH_PICTURE_PT || page->n_shown <= 2)
            break;
    }
    paint_upper(page);
    hs_sheet_pictures(page, CLAMP(room, LEAST_PICTURE_PT, MOST_PICTURE_PT));
    paint_lower(page);
}

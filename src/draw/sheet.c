/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what is printed and signed?
 * Answer:    the order of the parts, and what they share: which option is proposed, which finding is nearest its limit.
 * Not here:  the parts (sheet_decided.c, sheet_why.c, sheet_annex.c), what stops a signature (sheet_items.c). */
#include "sheet_parts.h"
#include "translate.h"

int
hs_sheet_proposed(const hs_results *results)
{
    for (int i = 0; i < results->n_options; i++)
        if (i != results->baseline && !results->options[i].is_added)
            return i;
    return results->baseline;
}

const hs_finding *
hs_sheet_finding(const hs_option_result *option, hs_check_id check)
{
    for (int i = 0; i < option->n_findings; i++)
        if (option->findings[i].check == check && option->findings[i].status != HS_STATUS_NONE)
            return &option->findings[i];
    return NULL;
}

double
hs_sheet_closeness(const hs_finding *finding)
{
    if (!finding)
        return -3;
    switch (finding->status) {
    case HS_STATUS_BEYOND: /* without a figure: nothing can be nearer */
        return 100 + (hs_has(finding->ratio) ? fmin(finding->ratio, 99) : 100);
    case HS_STATUS_NEAR:
    case HS_STATUS_WITHIN:
        return hs_has(finding->ratio) ? fmin(finding->ratio, 99) : 0;
    case HS_STATUS_NOT_JUDGED:
        return finding->why == HS_WHY_SCOPE ? -2 : -1;
    default:
        return -3;
    }
}

static double
closeness_over_options(const hs_results *results, hs_check_id check)
{
    int proposed = hs_sheet_proposed(results);
    double most = -3;

    for (int i = 0; i < results->n_options; i++) {
        double at = hs_sheet_closeness(hs_sheet_finding(&results->options[i], check));
        /* the proposal comes first, the program's own option last among equals */
        most = fmax(most, i == proposed && at >= 0 ? at + 200 : at);
    }
    return check == HS_CHECK_loss_bearer ? fmin(most, -0.5) : most;
}

int
hs_sheet_order(const hs_results *results, hs_check_id *ret_checks)
{
    double close[HS_N_CHECKS];
    int n = 0;

    for (int check = 0; check < HS_N_CHECKS; check++) {
        double at = closeness_over_options(results, (hs_check_id)check);
        int place = n;
        if (at <= -3)
            continue;
        for (; place > 0 && close[place - 1] < at; place--) {
            close[place] = close[place - 1];
            ret_checks[place] = ret_checks[place - 1];
        }
        close[place] = at;
        ret_checks[place] = (hs_check_id)check;
        n++;
    }
    return n;
}

gboolean
hs_sheet_goes_down(const hs_results *results)
{
    const hs_option *today = results->options[results->baseline].asked;
    const hs_option *then = results->options[hs_sheet_proposed(results)].asked;

    return today && then && then->n_bearers < today->n_bearers;
}

const char *
hs_sheet_name(const hs_option_result *option)
{
    if (option->is_added)
        return _("One person, no suit (for comparison)");
    return option->name ? option->name : option->id;
}

const char *
hs_sheet_or_dash(const char *text)
{
    return text && *text ? text : _("not given");
}

static void
body(hs_page *page)
{
    hs_sheet_side_decided(page);
    hs_page_break(page);
    hs_sheet_side_why(page);
    hs_page_break(page);
    hs_sheet_annex(page);
}

static hs_page
start(const hs_sheet_request *request)
{
    g_autoptr(GPtrArray) items = hs_sheet_items(request->document, request->results);

    return hs_page_start(request, items->len > 0, NULL);
}

int
hs_sheet_n_pages(const hs_sheet_request *request)
{
    hs_page page = start(request);

    return hs_page_count(&page, body);
}

void
hs_sheet_paint_page(cairo_t *cr, const hs_sheet_request *request, int page)
{
    hs_page at = start(request);

    hs_page_paint(&at, body, cr, page);
}

gboolean
hs_sheet_write_pdf(const hs_sheet_request *request, const char *path, GError **error)
{
    hs_page page = start(request);

    return hs_page_write_pdf(&page, body, path, error);
}

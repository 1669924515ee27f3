/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  where does the person look?
 * Answer:    options by id, moment, point, finding and switches; what is no longer there falls back to the usual.
 * Not here:  documents and results (session.c). */
#include "session.h"
#include "session_private.h"

#include <math.h>
#include <string.h>

static int
option_by_id(HsSession *session, const char *id)
{
    const hs_results *results = hs_session_results(session);

    for (int i = 0; results != NULL && id != NULL && i < results->n_options; i++)
        if (strcmp(results->options[i].id, id) == 0)
            return i;
    return -1;
}

static const char *
id_of_option(HsSession *session, int option)
{
    const hs_results *results = hs_session_results(session);

    return results != NULL && option >= 0 && option < results->n_options
               ? results->options[option].id
               : NULL;
}

int
hs_session_left(HsSession *session)
{
    const hs_results *results = hs_session_results(session);
    int found = option_by_id(session, session->left);

    return found >= 0 || results == NULL ? found : results->baseline;
}

/* The first way that is not the left one, the document's own before the one added. */
int
hs_session_right(HsSession *session)
{
    const hs_results *results = hs_session_results(session);
    int found = option_by_id(session, session->right), left = hs_session_left(session);

    for (int i = 0; found < 0 && results != NULL && i < results->n_options; i++)
        if (i != left)
            found = i;
    return found;
}

int
hs_session_edited(HsSession *session)
{
    const hs_results *results = hs_session_results(session);
    int found = option_by_id(session, session->edited);

    /* What the program adds cannot be edited. */
    if (found >= 0 && !results->options[found].is_added)
        return found;
    found = hs_session_right(session);
    if (found >= 0 && !results->options[found].is_added)
        return found;
    return results != NULL ? results->baseline : -1;
}

void
hs_session_show(HsSession *session, int left, int right)
{
    hs_session_set_text(&session->left, id_of_option(session, left));
    hs_session_set_text(&session->right, id_of_option(session, right));
    hs_session_tell(session, HS_CHANGED_CHOICE);
}

void
hs_session_edit_option(HsSession *session, int option)
{
    hs_session_set_text(&session->edited, id_of_option(session, option));
    hs_session_tell(session, HS_CHANGED_CHOICE);
}

double
hs_session_moment_s(HsSession *session)
{
    return session->moment_s;
}

double
hs_session_total_s(HsSession *session)
{
    const hs_results *results = hs_session_results(session);
    double total_s = 0.0;

    for (int i = 0; results != NULL && i < results->n_options; i++)
        if (results->options[i].n_samples > 0)
            total_s = fmax(total_s,
                           results->options[i].samples[results->options[i].n_samples - 1].t_s);
    return total_s;
}

/* NaN and what lies before or behind the route is brought to it. */
static double
in_route_s(HsSession *session, double t_s)
{
    return t_s > 0.0 ? fmin(t_s, hs_session_total_s(session)) : 0.0;
}

void
hs_session_set_moment_s(HsSession *session, double t_s)
{
    double to_s = in_route_s(session, t_s);

    if (to_s == session->moment_s)
        return;
    session->moment_s = to_s;
    hs_session_tell(session, HS_CHANGED_MOMENT);
}

int
hs_session_point(HsSession *session)
{
    return session->point;
}

void
hs_session_choose_point(HsSession *session, int point)
{
    const hs_task *task = hs_document_task(hs_session_document(session));
    int chosen = task != NULL && point >= 0 && point < task->route.n_points ? point : -1;

    if (chosen == session->point)
        return;
    session->point = chosen;
    hs_session_tell(session, HS_CHANGED_CHOICE);
}

static const hs_finding *
finding_of(HsSession *session, int option, int check)
{
    const hs_results *results = hs_session_results(session);
    const hs_option_result *at;

    if (results == NULL || option < 0 || option >= results->n_options)
        return NULL;
    at = &results->options[option];
    for (int i = 0; i < at->n_findings; i++)
        if ((int)at->findings[i].check == check && at->findings[i].status != HS_STATUS_NONE)
            return &at->findings[i];
    return NULL;
}

void
hs_session_choose_finding(HsSession *session, int option, int check)
{
    const hs_finding *finding = finding_of(session, option, check);
    guint mask = HS_CHANGED_CHOICE;

    hs_session_set_text(&session->finding_option,
                        finding != NULL ? id_of_option(session, option) : NULL);
    session->finding_check = finding != NULL ? check : -1;
    if (finding != NULL && hs_has(finding->t_s) && finding->t_s != session->moment_s) {
        /* From finding to finding, "back" leads to where the person was before the first. */
        if (!hs_has(session->back_s))
            session->back_s = session->moment_s;
        session->moment_s = in_route_s(session, finding->t_s);
        mask |= HS_CHANGED_MOMENT;
    }
    hs_session_tell(session, mask);
}

int
hs_session_finding_option(HsSession *session)
{
    int option = option_by_id(session, session->finding_option);

    return finding_of(session, option, session->finding_check) != NULL ? option : -1;
}

int
hs_session_finding_check(HsSession *session)
{
    return hs_session_finding_option(session) >= 0 ? session->finding_check : -1;
}

double
hs_session_back_s(HsSession *session)
{
    return session->back_s;
}

void
hs_session_go_back(HsSession *session)
{
    if (!hs_has(session->back_s))
        return;
    session->moment_s = in_route_s(session, session->back_s);
    session->back_s = HS_ABSENT;
    hs_session_tell(session, HS_CHANGED_MOMENT);
}

gboolean
hs_session_power_off(HsSession *session)
{
    return session->power_off;
}

void
hs_session_set_power_off(HsSession *session, gboolean off)
{
    if (session->power_off == !!off)
        return;
    session->power_off = !!off;
    hs_session_tell(session, HS_CHANGED_CHOICE);
}

guint
hs_session_layers(HsSession *session)
{
    return session->layers;
}

void
hs_session_set_layers(HsSession *session, guint layers)
{
    if (session->layers == layers)
        return;
    session->layers = layers;
    hs_session_tell(session, HS_CHANGED_CHOICE);
}

int
hs_session_sample(HsSession *session, int option)
{
    const hs_results *results = hs_session_results(session);
    const hs_option_result *at;
    int best = 0;

    if (results == NULL || option < 0 || option >= results->n_options ||
        results->options[option].n_samples == 0)
        return -1;
    at = &results->options[option];
    /* Where two legs meet there are two samples at one time: the later one shows what comes. */
    for (int i = 1; i < at->n_samples; i++)
        if (fabs(at->samples[i].t_s - session->moment_s) <=
            fabs(at->samples[best].t_s - session->moment_s))
            best = i;
    return best;
}

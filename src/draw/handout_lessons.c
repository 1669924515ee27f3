/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  which lessons does this document give?
 * Answer:    one function a lesson; each looks for an option and a moment where its question has an answer.
 * Not here:  the page (handout.c). */
#include "handout.h"
#include "quantity.h"
#include "sheet_parts.h"
#include "translate.h"
#include "units.h"
#include "words.h"

#define BLANK "________"

typedef struct {
    const hs_task *task;
    const hs_results *results;
    hs_units units;
    GPtrArray *lessons;
} hs_class;

static void
lesson_free(gpointer data)
{
    hs_lesson *lesson = data;

    for (int i = 0; i < 3; i++)
        g_free(lesson->work[i]);
    g_free(lesson->answer);
    g_free(lesson);
}

static hs_lesson *
add(hs_class *class, int option, int sample, const char *title, const char *question)
{
    hs_lesson *lesson = g_new0(hs_lesson, 1);

    lesson->option = option;
    lesson->sample = sample;
    lesson->layers = hs_layers_default() & ~(1u << HS_LAYER_ghost);
    lesson->title = title;
    lesson->question = question;
    g_ptr_array_add(class->lessons, lesson);
    return lesson;
}

static char *
say(const hs_class *class, double value, const char *unit)
{
    return hs_quantity_text(value, unit, class->units);
}

/* Weights in people's words beside the newton. */
static char *
force(const hs_class *class, double force_N)
{
    g_autofree char *newton = say(class, force_N, "N");
    g_autofree char *kilogram = say(class, force_N / HS_GRAVITY_m_s2, "kg");

    return g_strdup_printf(_("%s (weight of %s)"), newton, kilogram);
}

static int
find_crew(const hs_results *results)
{
    const hs_option *today = results->options[results->baseline].asked;

    if (today && today->n_bearers > 1)
        return results->baseline;
    for (int i = 0; i < results->n_options; i++)
        if (results->options[i].asked && results->options[i].asked->n_bearers > 1)
            return i;
    return -1;
}

static int
find_powered(const hs_class *class)
{
    for (int i = 0; i < class->results->n_options; i++) {
        const hs_option *asked = class->results->options[i].asked;
        if (asked && asked->bearers[0].suit >= 0 &&
            class->task->suits[asked->bearers[0].suit].kind == HS_SUIT_POWERED)
            return i;
    }
    return -1;
}

/* "near", or "near, limit unconfirmed" */
static char *
say_status(const hs_finding *finding)
{
    const char *mark = hs_words_unconfirmed(finding);

    return g_strconcat(hs_words_status(finding->status), mark != NULL ? ", " : NULL, mark,
                       NULL);
}

/* The sample at which a finding was made. */
static int
sample_of(const hs_option_result *option, const hs_finding *finding)
{
    int best = 0;

    for (int i = 1; finding && hs_has(finding->t_s) && i < option->n_samples; i++)
        if (fabs(option->samples[i].t_s - finding->t_s) <
            fabs(option->samples[best].t_s - finding->t_s))
            best = i;
    return best;
}

static char *
shares_text(const hs_class *class, int option_at, int sample)
{
    const hs_option_result *option = &class->results->options[option_at];
    GString *list = g_string_new(NULL);

    for (int k = 0; k < option->asked->n_bearers; k++) {
        g_autofree char *share = force(class, option->samples[sample].bearers[k].share_N);
        g_string_append_printf(list, "%s%s: %s", k ? "; " : "", option->asked->bearers[k].id,
                               share);
    }
    return g_string_free(list, FALSE);
}

static gboolean
has_shares(const hs_option_result *option, int sample)
{
    for (int k = 0; k < option->asked->n_bearers; k++)
        if (!hs_has(option->samples[sample].bearers[k].share_N))
            return FALSE;
    return option->asked->n_bearers > 0;
}

static void
add_shares(hs_class *class)
{
    int at = find_crew(class->results);

    if (at < 0 || class->results->options[at].n_samples == 0 ||
        !has_shares(&class->results->options[at], 0))
        return;
    hs_lesson *lesson = add(class, at, 0, _("Who has more?"),
                            _("They lift together. Who carries more, and how much?"));
    g_autofree char *mass = say(class, class->results->load.mass_kg, "kg");
    g_autofree char *shares = shares_text(class, at, 0);

    lesson->work[0] =
        g_strdup_printf(_("Weight of the load: %s × 9.80665 m/s² = %s N"), mass, BLANK);
    lesson->work[1] = g_strdup_printf(
        _("Distance from the CG to each grip, along: %s m and %s m"), BLANK, BLANK);
    lesson->work[2] = g_strdup_printf(
        _("Share of the one = weight × distance of the other / sum = %s N"), BLANK);
    lesson->answer =
        g_strdup_printf(_("%s. The nearer a grip is to the CG, the more it carries."), shares);
}

static void
add_slope(hs_class *class)
{
    int at = find_crew(class->results), steepest = 0;

    if (at < 0)
        return;
    const hs_option_result *option = &class->results->options[at];

    for (int i = 1; i < option->n_samples; i++)
        if (fabs(option->samples[i].pitch_deg) >
            fabs(option->samples[steepest].pitch_deg) + 1e-9)
            steepest = i;
    if (option->n_samples == 0 || !(fabs(option->samples[steepest].pitch_deg) >= 3) ||
        !has_shares(option, 0) || !has_shares(option, steepest))
        return;
    hs_lesson *lesson = add(class, at, steepest, _("The same load, tilted"),
                            _("The load is tilted on the way. Whose share grows, and why?"));
    g_autofree char *pitch = say(class, option->samples[steepest].pitch_deg, "deg");
    g_autofree char *level = shares_text(class, at, 0);
    g_autofree char *tilted = shares_text(class, at, steepest);

    lesson->work[0] = g_strdup_printf(_("Level, the shares are %s and %s N"), BLANK, BLANK);
    lesson->work[1] =
        g_strdup_printf(_("Tilted by %s the CG moves towards %s, because it lies %s the hands"),
                        pitch, BLANK, BLANK);
    lesson->work[2] = g_strdup_printf(_("Tilted, the shares are %s and %s N"), BLANK, BLANK);
    lesson->answer = g_strdup_printf(_("Level: %s.\nTilted: %s.\nWhat counts is whether the CG "
                                       "lies above or below the hands."),
                                     level, tilted);
}

static void
add_squeeze(hs_class *class)
{
    for (int i = 0; i < class->results->n_options; i++) {
        const hs_option_result *option = &class->results->options[i];
        const hs_finding *finding = hs_sheet_finding(option, HS_CHECK_grip_hold);
        gboolean is_pad = FALSE;
        for (int k = 0; option->asked && k < option->asked->n_bearers; k++)
            for (int g = 0; g < option->asked->bearers[k].n_grips; g++)
                is_pad = is_pad ||
                         class->task->load.grips[option->asked->bearers[k].grips[g]].kind ==
                             HS_GRIP_PAD;
        if (!is_pad || !finding || !hs_has(finding->value) || !hs_has(finding->limit))
            continue;
        hs_lesson *lesson =
            add(class, i, sample_of(option, finding), _("Held by squeezing"),
                _("Nothing but friction holds the load. How hard must each side press?"));
        g_autofree char *need = say(class, finding->value, "N");
        g_autofree char *limit = say(class, finding->limit, "N");
        lesson->work[0] = g_strdup_printf(_("Weight to be held: %s N"), BLANK);
        lesson->work[1] =
            g_strdup_printf(_("Two sides, friction µ: press = weight / (2 µ) = %s N"), BLANK);
        lesson->work[2] = g_strdup_printf(_("With the allowance for slipping: %s N; the load, "
                                            "the pads or the hands allow %s N"),
                                          BLANK, BLANK);
        g_autofree char *status = say_status(finding);
        lesson->answer =
            g_strdup_printf(_("%s on each side, allowed are %s: %s."), need, limit, status);
        return;
    }
}

static int
most_felt(const hs_option_result *option)
{
    int best = -1;

    for (int i = 0; i < option->n_samples; i++)
        if (hs_has(option->samples[i].bearers[0].felt_force_N) &&
            (best < 0 || option->samples[i].bearers[0].felt_force_N >
                             option->samples[best].bearers[0].felt_force_N))
            best = i;
    return best;
}

static void
add_felt(hs_class *class)
{
    int at = find_powered(class);
    int sample = at < 0 ? -1 : most_felt(&class->results->options[at]);

    if (sample < 0)
        return;
    const hs_option_result *option = &class->results->options[at];
    const hs_bearer_sample *bearer = &option->samples[sample].bearers[0];
    const hs_suit *suit = &class->task->suits[option->asked->bearers[0].suit];
    g_autofree char *hand = force(class, bearer->hand_force_N);
    g_autofree char *felt = force(class, bearer->felt_force_N);
    g_autofree char *residual = hs_has(suit->residual_hands_N)
                                    ? say(class, suit->residual_hands_N, "N")
                                    : g_strdup(BLANK);
    g_autofree char *gain =
        hs_has(suit->gain_hands) ? say(class, suit->gain_hands, "") : g_strdup(BLANK);
    hs_lesson *lesson =
        add(class, at, sample, _("What the hands feel"),
            _("The suit takes most of the load. What do the hands still feel?"));

    lesson->work[0] = g_strdup_printf(_("On the arms: %s; rated here: %s N"), hand, BLANK);
    lesson->work[1] =
        g_strdup_printf(_("Up to the rating: part / %s + %s = %s N"), gain, residual, BLANK);
    lesson->work[2] =
        g_strdup_printf(_("Past the rating every newton comes back whole: + %s N"), BLANK);
    lesson->answer = g_strdup_printf(_("The hands feel %s."), felt);
}

static void
add_rating(hs_class *class)
{
    int at = find_powered(class);

    if (at < 0)
        return;
    const hs_option_result *option = &class->results->options[at];
    const hs_finding *finding = hs_sheet_finding(option, HS_CHECK_suit_rating);
    if (!finding || !hs_has(finding->value) || !hs_has(finding->limit))
        return;
    hs_lesson *lesson =
        add(class, at, sample_of(option, finding), _("Reach and rating"),
            _("What may the suit lift at this reach, and is the load within it?"));
    g_autofree char *value = say(class, finding->value, "kg");
    g_autofree char *limit = say(class, finding->limit, "kg");
    g_autofree char *why = hs_words_message(&finding->text, class->units);

    lesson->layers |= 1u << HS_LAYER_lever;
    lesson->work[0] = g_strdup_printf(_("Reach in the picture: %s m"), BLANK);
    lesson->work[1] = g_strdup_printf(
        _("Payload at this reach, by a straight line between the data sheet's points: %s kg"),
        BLANK);
    lesson->work[2] =
        g_strdup_printf(_("Payload less the load on the arms (%s) = %s kg"), value, BLANK);
    g_autofree char *status = say_status(finding);
    lesson->answer = g_strdup_printf(_("Rated: %s; the finding: %s. %s"), limit, status, why);
}

static void
add_path(hs_class *class)
{
    int at = find_powered(class);
    int sample = at < 0 ? -1 : most_felt(&class->results->options[at]);

    if (sample < 0)
        return;
    const hs_bearer *bearer = &class->results->options[at].asked->bearers[0];
    const hs_bearer_sample *found = &class->results->options[at].samples[sample].bearers[0];
    double body_kg = class->task->workers[bearer->worker].mass_kg;
    double suit_kg = class->task->suits[bearer->suit].mass_kg;

    if (!hs_has(body_kg) || !hs_has(suit_kg) || !hs_has(found->ground_force_N))
        return;
    hs_lesson *lesson = add(class, at, sample, _("Nothing vanishes"),
                            _("The suit carries. Where does the weight go?"));
    g_autofree char *ground = force(class, found->ground_force_N);
    g_autofree char *body = force(class, body_kg * HS_GRAVITY_m_s2);
    g_autofree char *suit = force(class, suit_kg * HS_GRAVITY_m_s2);
    g_autofree char *share = force(class, found->share_N);

    lesson->layers |= 1u << HS_LAYER_path;
    lesson->work[0] = g_strdup_printf(_("Wearer %s, suit %s, load %s"), BLANK, BLANK, BLANK);
    lesson->work[1] = g_strdup_printf(_("Sum of the three: %s N"), BLANK);
    lesson->work[2] = g_strdup_printf(
        _("On the floor: %s N. The difference is what speeding up or walking adds: %s N"),
        BLANK, BLANK);
    lesson->answer = g_strdup_printf(_("Wearer %s, suit %s, load %s. On the floor: %s. The "
                                       "suit only sends it by another way."),
                                     body, suit, share, ground);
}

static void
add_power_lost(hs_class *class)
{
    int at = find_powered(class);

    if (at < 0)
        return;
    const hs_option_result *option = &class->results->options[at];
    const hs_finding *finding = hs_sheet_finding(option, HS_CHECK_suit_power_loss);
    if (!finding || option->n_samples == 0)
        return;
    hs_lesson *lesson = add(class, at, sample_of(option, finding), _("Power gone"),
                            _("Here the power goes. Can the load be brought down in time?"));
    g_autofree char *why = hs_words_message(&finding->text, class->units);

    lesson->power_off = TRUE;
    lesson->work[0] = g_strdup_printf(_("Until the load is set down: %s s"), BLANK);
    lesson->work[1] = g_strdup_printf(_("Held for: %s s"), BLANK);
    lesson->work[2] = g_strdup_printf(_("The hands then have: %s N"), BLANK);
    g_autofree char *status = say_status(finding);
    lesson->answer = g_strdup_printf("%s: %s", status, why);
}

static void
add_balance(hs_class *class)
{
    int at = hs_sheet_proposed(class->results);
    const hs_option_result *option = &class->results->options[at];
    const hs_finding *finding = hs_sheet_finding(option, HS_CHECK_balance);

    if (!finding || !hs_has(finding->value))
        return;
    hs_lesson *lesson =
        add(class, at, sample_of(option, finding), _("Over the feet"),
            _("Where does the sum of all weights meet the floor, and how far is the edge?"));
    g_autofree char *figure = hs_words_figure(finding, class->units);

    lesson->work[0] = g_strdup_printf(_("Wearer, suit and load together: %s kg"), BLANK);
    lesson->work[1] = g_strdup_printf(_("Their common CG lies %s mm before the ankles"), BLANK);
    lesson->work[2] = g_strdup_printf(_("From there to the edge: %s mm"), BLANK);
    g_autofree char *status = say_status(finding);
    lesson->answer = g_strdup_printf("%s: %s", status, figure);
}

static void
add_suit_only(hs_class *class)
{
    for (int i = 0; i < class->results->n_options; i++) {
        const hs_option_result *option = &class->results->options[i];
        if (!option->verdict.suit_only)
            continue;
        hs_lesson *lesson = add(class, i, 0, _("Only because of the suit"),
                                _("The same person without the suit: is the lift supported?"));
        lesson->work[0] = g_strdup_printf(_("With the suit the verdict is: %s"), BLANK);
        lesson->work[1] = g_strdup_printf(_("Without it the worst finding is: %s"), BLANK);
        lesson->work[2] =
            g_strdup_printf(_("So on a day without the suit this lift is: %s"), BLANK);
        lesson->answer = g_strdup_printf(_("With the suit: %s. Without it: not supported. A "
                                           "day without the suit is a day without this lift."),
                                         hs_words_verdict(option->verdict.status));
        return;
    }
}

static void
add_roles(hs_class *class)
{
    GString *empty = g_string_new(NULL);

    for (int i = 0; i < class->task->n_roles; i++) {
        const hs_role *role = &class->task->roles[i];
        if (!role->after || !*role->after)
            g_string_append_printf(empty, "%s%s", empty->len ? "; " : "", role->role);
    }
    if (hs_sheet_goes_down(class->results) && empty->len > 0) {
        hs_lesson *lesson =
            add(class, hs_sheet_proposed(class->results), 0, _("The empty role"),
                _("Two do more than lift. Who does it when one is gone?"));
        lesson->work[0] = g_strdup_printf(_("The second person also does: %s"), BLANK);
        lesson->work[1] = g_strdup_printf(_("Of that, nobody does: %s"), BLANK);
        lesson->work[2] = g_strdup_printf(_("It could be done by: %s"), BLANK);
        lesson->answer = g_strdup_printf(
            _("EMPTY: %s. A light load does not fill an empty role."), empty->str);
    }
    g_string_free(empty, TRUE);
}

GPtrArray *
hs_handout_lessons(const hs_sheet_request *request)
{
    hs_class class = {hs_document_task(request->document), request->results,
                      request->us_units ? HS_UNITS_US : HS_UNITS_SI,
                      g_ptr_array_new_with_free_func(lesson_free)};

    add_shares(&class);
    add_slope(&class);
    add_squeeze(&class);
    add_felt(&class);
    add_rating(&class);
    add_path(&class);
    add_power_lost(&class);
    add_balance(&class);
    add_suit_only(&class);
    add_roles(&class);
    return class.lessons;
}

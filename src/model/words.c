/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how are reasons, statuses, checks and cautions said in a sentence?
 * Answer:    the tables words_*.h by area, and one filler for their figures and names.
 * Not here:  workings (words_working.c), rounding (quantity.c). */
#include "words.h"

#include "quantity.h"
#include "translate.h"

#include <math.h>
#include <string.h>

static const char *const sentences[HS_N_REASONS] = {
#define WORD(id, text) [HS_REASON_##id] = text,
#include "words_body.h"
#include "words_decide.h"
#include "words_forces.h"
#include "words_limits.h"
#include "words_load.h"
#include "words_motion.h"
#include "words_site.h"
#include "words_suit.h"
#undef WORD
};

static const struct {
    const char *name, *hint;
} check_words[HS_N_CHECKS] = {
#define CHECK_WORDS(id, name, hint) [HS_CHECK_##id] = {name, hint},
#include "words_checks.h"
#undef CHECK_WORDS
};

static const char *const check_ids[HS_N_CHECKS] = {
#define CHECK(id, name, unit, function) [HS_CHECK_##id] = name,
#include "lists/checks.def"
#undef CHECK
};

/* A figure of a message is in SI; the sentence says in which unit it is read. */
static char *
figure_text(double value, const char *unit, hs_units units)
{
    static const struct {
        const char *unit;
        double factor;
    } scaled[] = {
        {"kN", 0.001}, {"cm", 100.0}, {"mm", 1000.0}, {"min", 1.0 / 60.0}, {"pct", 100.0}};

    if (!isfinite(value))
        return g_strdup(_("(not known)"));
    for (gsize i = 0; i < G_N_ELEMENTS(scaled); i++)
        if (strcmp(scaled[i].unit, unit) == 0)
            return hs_quantity_text(value * scaled[i].factor, unit, units);
    return hs_quantity_text(value, unit, units);
}

/* What a message calls a: a name from the document, or a check by its id in files. */
static const char *
name_text(const char *name, const char *kind)
{
    for (int i = 0; i < HS_N_CHECKS && strcmp(kind, "check") == 0; i++)
        if (g_strcmp0(check_ids[i], name) == 0)
            return hs_words_check((hs_check_id)i);
    return name != NULL ? name : "";
}

/* One placeholder, "0:kg" or "a", without its braces. */
static void
append_placeholder(GString *out, const hs_message *message, const char *inside, hs_units units)
{
    const char *colon = strchr(inside, ':');
    const char *unit = colon != NULL ? colon + 1 : "";
    g_autofree char *figure = NULL;

    if (inside[0] >= '0' && inside[0] < '0' + HS_MESSAGE_NUMBERS) {
        figure = figure_text(message->number[inside[0] - '0'], unit, units);
        g_string_append(out, figure);
    } else if (inside[0] >= 'a' && inside[0] < 'a' + HS_MESSAGE_NAMES) {
        g_string_append(out, name_text(message->name[inside[0] - 'a'], unit));
    }
}

char *
hs_words_message(const hs_message *message, hs_units units)
{
    GString *out = g_string_new(NULL);
    const char *text;

    if (message->reason == HS_REASON_none || message->reason >= HS_N_REASONS ||
        sentences[message->reason] == NULL)
        return g_string_free(out, FALSE);
    text = _(sentences[message->reason]);
    while (*text != '\0') {
        const char *close = *text == '{' ? strchr(text, '}') : NULL;

        if (close != NULL) {
            g_autofree char *inside = g_strndup(text + 1, (gsize)(close - text - 1));

            append_placeholder(out, message, inside, units);
            text = close + 1;
        } else {
            g_string_append_c(out, *text++);
        }
    }
    return g_string_free(out, FALSE);
}

const char *
hs_words_sentence(hs_reason reason)
{
    return reason < HS_N_REASONS ? sentences[reason] : NULL;
}

const char *
hs_words_check(hs_check_id check)
{
    return _(check_words[check].name);
}

static gboolean
is_of_set(const hs_finding *finding)
{
    return finding->source == HS_SRC_limits_set_seen ||
           finding->source == HS_SRC_limits_set_memory;
}

const char *
hs_words_check_in(const hs_results *results, hs_check_id check)
{
    for (int o = 0;
         results != NULL && check == HS_CHECK_lift_gb_guideline && o < results->n_options; o++)
        for (int i = 0; i < results->options[o].n_findings; i++)
            if (results->options[o].findings[i].check == check &&
                is_of_set(&results->options[o].findings[i]))
                return _("Guide values, chosen set");
    return hs_words_check(check);
}

const char *
hs_words_unconfirmed(const hs_finding *finding)
{
    gboolean is_judged =
        finding->status != HS_STATUS_NONE && finding->status != HS_STATUS_NOT_JUDGED;

    return is_judged && finding->confidence == HS_CONF_MEMORY ? _("limit unconfirmed") : NULL;
}

const char *
hs_words_check_hint(hs_check_id check)
{
    return _(check_words[check].hint);
}

const char *
hs_words_status(hs_finding_status status)
{
    switch (status) {
    case HS_STATUS_WITHIN:
        return C_("status of a finding", "within");
    case HS_STATUS_NEAR:
        return C_("status of a finding", "near");
    case HS_STATUS_BEYOND:
        return C_("status of a finding", "beyond");
    case HS_STATUS_NOT_JUDGED:
        return C_("status of a finding", "not judged");
    case HS_STATUS_NONE:
    default:
        return C_("status of a finding", "not asked");
    }
}

const char *
hs_words_verdict(hs_verdict_status status)
{
    switch (status) {
    case HS_VERDICT_SUPPORTED:
        return C_("verdict", "Supported");
    case HS_VERDICT_WITH_CONDITIONS:
        return C_("verdict", "Supported with conditions");
    case HS_VERDICT_NOT_SUPPORTED:
        return C_("verdict", "Not supported");
    case HS_VERDICT_UNDECIDED:
        return C_("verdict", "Undecided");
    case HS_VERDICT_NONE:
    default:
        return C_("verdict", "No verdict");
    }
}

const char *
hs_words_confidence(hs_confidence confidence)
{
    switch (confidence) {
    case HS_CONF_SEEN:
        return _("read in the source");
    case HS_CONF_DERIVED:
        return _("derived");
    case HS_CONF_MEMORY:
        return _("unconfirmed, from memory");
    case HS_CONF_COMMON_PRACTICE:
    default:
        return _("common practice, no source");
    }
}

char *
hs_words_source(hs_source_id source)
{
    const hs_source *at = hs_source_get(source);

    if (source == HS_SRC_none)
        return g_strdup(_("common practice, no source"));
    if (at->year > 0 && *at->place != '\0')
        return g_strdup_printf("%s (%d), %s", at->title, at->year, at->place);
    if (at->year > 0)
        return g_strdup_printf("%s (%d)", at->title, at->year);
    return *at->place != '\0' ? g_strdup_printf("%s, %s", at->title, at->place)
                              : g_strdup(at->title);
}

/* The message as the end of a cell: no full stop. */
static char *
clause_of(const hs_message *message, hs_units units)
{
    char *text = hs_words_message(message, units);
    gsize length = strlen(text);

    if (length > 0 && text[length - 1] == '.')
        text[length - 1] = '\0';
    return text;
}

/* The unit a committee reads: kN for the spine, % for strength, mm for margins. */
static void
readable(const hs_finding *finding, double *value, double *limit, const char **unit)
{
    double factor = 1.0;

    if (finding->check == HS_CHECK_spine_compression ||
        finding->check == HS_CHECK_spine_shear) {
        *unit = "kN";
        factor = 0.001;
    } else if (finding->check == HS_CHECK_strength) {
        *unit = "pct";
        factor = 100.0;
    } else if (finding->check == HS_CHECK_day_spine && strcmp(*unit, "Nh") == 0 &&
               fabs(*value) >= 1000.0) {
        *unit = "kNh";
        factor = 0.001;
    } else if (strcmp(*unit, "m") == 0 && finding->check == HS_CHECK_balance) {
        *unit = "mm";
        factor = 1000.0;
    }
    *value *= factor;
    *limit *= factor;
}

/* "3.9 of 3.4 kN". Where value and limit would read alike and are not, more digits show the
 * difference. */
static char *
value_of_limit(double value, double limit, const char *unit, hs_units units)
{
    const char *name = hs_quantity_unit(unit, units);
    const char *space = *name == '\0' ? "" : strcmp(name, "°") == 0 ? "" : "\u00a0";
    int digits =
        MAX(hs_quantity_digits(value, unit, units), hs_quantity_digits(limit, unit, units));

    for (int extra = 0;; extra++) {
        g_autofree char *a = hs_quantity_number_digits(value, unit, units, digits + extra);
        g_autofree char *b = hs_quantity_number_digits(limit, unit, units, digits + extra);

        if (strcmp(a, b) != 0 || value == limit || extra == 3)
            /* Translators: value of limit, then the unit: "3.9 of 3.4 kN" */
            return g_strdup_printf(_("%s of %s%s%s"), a, b, space, name);
    }
}

/* A margin: what is left of what is wanted. */
static char *
margin_text(double value, double limit, const char *unit, hs_units units)
{
    g_autofree char *size = hs_quantity_text(fabs(value), unit, units);
    g_autofree char *wanted = hs_has(limit) ? hs_quantity_number(limit, unit, units) : NULL;

    if (value < 0.0)
        return g_strdup_printf(_("%s too little"), size);
    if (!hs_has(limit) || limit <= 0.0)
        return g_strdup_printf(_("%s left"), size);
    return g_strdup_printf(_("%s left, %s wanted"), size, wanted);
}

/* True where the ratio is not value over limit: then the value is what is left. */
static gboolean
is_margin(const hs_finding *finding)
{
    if (finding->check == HS_CHECK_balance)
        return TRUE;
    if (strcmp(finding->unit, "m") != 0 || !hs_has(finding->ratio) || !hs_has(finding->limit))
        return FALSE;
    return !(fabs(finding->value / finding->limit - finding->ratio) < 1e-6);
}

static char *
known_figure(const hs_finding *finding, hs_units units)
{
    double value = finding->value, limit = finding->limit;
    const char *unit = finding->unit != NULL ? finding->unit : "";
    g_autofree char *held = NULL, *needed = NULL;

    readable(finding, &value, &limit, &unit);
    if (is_margin(finding))
        return margin_text(value, limit, unit, units);
    if (!hs_has(limit))
        return hs_quantity_text(value, unit, units);
    if (finding->check == HS_CHECK_route_sight) {
        held = hs_quantity_text(value, unit, units);
        needed = hs_quantity_text(limit, unit, units);
        /* Translators: the nearest floor seen over the load, and from where it has to be seen */
        return g_strdup_printf(_("floor seen from %s ahead, from %s wanted"), held, needed);
    }
    if (finding->check == HS_CHECK_suit_power_loss) {
        needed = hs_quantity_text(value, unit, units);
        held = hs_quantity_text(limit, unit, units);
        /* Translators: after the suit's power is lost, how long until the load is down, and how
         * long it is held */
        return g_strdup_printf(_("%s needed, %s held"), needed, held);
    }
    return value_of_limit(value, limit, unit, units);
}

char *
hs_words_figure(const hs_finding *finding, hs_units units)
{
    g_autofree char *figure = hs_has(finding->value) ? known_figure(finding, units) : NULL;
    g_autofree char *why = clause_of(&finding->text, units);

    if (finding->status == HS_STATUS_NONE)
        return g_strdup(_("not asked"));
    if (finding->status == HS_STATUS_NOT_JUDGED && finding->why == HS_WHY_SCOPE)
        return figure != NULL ? g_strdup_printf("(%s) %s", figure, why)
                              : g_strdup_printf(_("does not apply: %s"), why);
    if (finding->status == HS_STATUS_NOT_JUDGED)
        return g_strdup_printf(_("not judged: %s"), why);
    /* Somebody watches the way: that is why it is within, not the two lengths. */
    if (finding->check == HS_CHECK_route_sight && !hs_has(finding->ratio))
        return g_steal_pointer(&why);
    return figure != NULL ? g_steal_pointer(&figure) : g_steal_pointer(&why);
}

char *
hs_words_route(double route)
{
    int point = (int)floor(route);

    if (!hs_has(route))
        return g_strdup("");
    if (fabs(route - rint(route)) < 1e-6)
        return g_strdup_printf(_("point %d"), (int)rint(route));
    return g_strdup_printf(_("between points %d and %d"), point, point + 1);
}

char *
hs_words_place(const hs_option_result *option, const hs_finding *finding)
{
    g_autofree char *route = hs_words_route(finding->route);
    const char *bearer = "";

    if (finding->bearer >= 0 && option->asked != NULL &&
        finding->bearer < option->asked->n_bearers)
        bearer = option->asked->bearers[finding->bearer].id;
    if (*bearer == '\0' || *route == '\0')
        return g_strdup(*bearer == '\0' ? route : bearer);
    return g_strdup_printf("%s · %s", bearer, route);
}

/* The choices of the file format, in the order of their enums (0: not given). */
static const char *
pick(const char *const *words, int n, int at)
{
    return at > 0 && at < n ? _(words[at]) : _("not given");
}
#define PICK(words, at) pick((words), (int)G_N_ELEMENTS(words), (int)(at))

const char *
hs_words_move(hs_move move)
{
    static const char *const words[] = {"",          N_("start"), N_("lift"), N_("carry"),
                                        N_("lower"), N_("slide"), N_("hold")};

    return PICK(words, move);
}

const char *
hs_words_shape(hs_shape shape)
{
    static const char *const words[] = {"",         N_("box"),    N_("cylinder"),
                                        N_("tube"), N_("sphere"), N_("hemisphere"),
                                        N_("cone"), N_("wedge"),  N_("point")};

    return PICK(words, shape);
}

const char *
hs_words_grip(hs_grip_kind kind)
{
    static const char *const words[] = {"",          N_("handle"), N_("edge"),  N_("hook"),
                                        N_("strap"), N_("pad"),    N_("cradle")};

    return PICK(words, kind);
}

const char *
hs_words_suit_kind(hs_suit_kind kind)
{
    static const char *const words[] = {"", N_("powered"), N_("back spring"), N_("arm spring")};

    return PICK(words, kind);
}

const char *
hs_words_status_id(hs_finding_status status)
{
    static const char *const ids[] = {"", "within", "near", "beyond", "not_judged"};

    return (gsize)status < G_N_ELEMENTS(ids) ? ids[status] : "";
}

const char *
hs_words_check_id(hs_check_id check)
{
    return check_ids[check];
}

const char *
hs_words_verdict_id(hs_verdict_status status)
{
    static const char *const ids[] = {"", "supported", "with_conditions", "not_supported",
                                      "undecided"};

    return (gsize)status < G_N_ELEMENTS(ids) ? ids[status] : "";
}

const char *
hs_words_team_rule(hs_team_rule rule)
{
    switch (rule) {
    case HS_TEAM_GB:
        return _("British guidance");
    case HS_TEAM_MIL_STD_1472:
        return _("MIL-STD-1472");
    case HS_TEAM_EN_1005_2:
        return _("EN 1005-2");
    case HS_TEAM_MEASURED:
        return _("measured factor");
    case HS_TEAM_NONE:
    default:
        return _("none");
    }
}

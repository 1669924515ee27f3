/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how are the limits' figures written down for others to read?
 * Answer:    core's lists in order, one figure a line, with title, edition and how it is known.
 * Not here:  the figures (core). */
#include "limits_json.h"

#include "check.h"
#include "figures.h"
#include "json_text.h"
#include "national_sets.h"
#include "site_when.h"
#include "spine_sets.h"
#include "translate.h"

#include <math.h>
#include <string.h>

typedef struct {
    GString *out;
    gboolean follows; /* a figure stands before */
} listing;

/* Words of the file format, the same in every language. */
static const char *
known_word(hs_confidence known)
{
    switch (known) {
    case HS_CONF_SEEN:
        return "seen";
    case HS_CONF_DERIVED:
        return "derived";
    case HS_CONF_MEMORY:
        return "memory";
    case HS_CONF_COMMON_PRACTICE:
    default:
        return "common_practice";
    }
}

static void
put_source(hs_json_text *json, hs_source_id id)
{
    const hs_source *source = hs_source_get(id);

    hs_json_text_string(json, "source", source->title);
    if (source->year > 0)
        hs_json_text_number(json, "year", source->year);
    hs_json_text_string(json, "place", source->place);
}

static void
put_figure(const hs_limit_figure *figure, void *data)
{
    listing *list = data;
    g_autoptr(GString) line = g_string_new(NULL);
    hs_json_text json = {.out = line};

    hs_json_text_open(&json, NULL, '{');
    hs_json_text_string(&json, "check", hs_check_get(figure->check)->id);
    hs_json_text_string(&json, "figure", figure->name);
    hs_json_text_number(&json, "value", figure->value);
    if (*figure->unit != '\0')
        hs_json_text_string(&json, "unit", figure->unit);
    hs_json_text_string(&json, "known", known_word(figure->known));
    put_source(&json, figure->source);
    hs_json_text_close(&json, '}');
    g_string_append_printf(list->out, "%s    %s", list->follows ? ",\n" : "", line->str);
    list->follows = TRUE;
}

char *
hs_limits_default_json(void)
{
    listing list = {.out = g_string_new("{\n  \"format\": \"handspike-limit-figures\",\n"
                                        "  \"version\": 1,\n  \"figures\": [\n")};

    hs_limit_figures_each(put_figure, &list);
    g_string_append(list.out, "\n  ]\n}\n");
    return g_string_free(list.out, FALSE);
}

char *
hs_limits_national_json(void)
{
    GString *out = g_string_new("{\n  \"format\": \"handspike-national-figures\",\n"
                                "  \"version\": 1,\n  \"figures\": [\n");

    for (int i = 0; i < hs_national_count(); i++) {
        const hs_national *row = hs_national_row(i);
        g_autoptr(GString) line = g_string_new(NULL);
        hs_json_text json = {.out = line};

        hs_json_text_open(&json, NULL, '{');
        hs_json_text_string(&json, "country", row->place);
        hs_json_text_string(&json, "what", row->what);
        hs_json_text_string(&json, "who", row->who);
        hs_json_text_string(&json, "condition", row->condition);
        hs_json_text_number(&json, "value", row->figure);
        if (*row->unit != '\0')
            hs_json_text_string(&json, "unit", row->unit);
        hs_json_text_string(&json, "known", known_word(hs_source_get(row->source)->confidence));
        put_source(&json, row->source);
        hs_json_text_close(&json, '}');
        g_string_append_printf(out, "%s    %s", i > 0 ? ",\n" : "", line->str);
    }
    g_string_append(out, "\n  ]\n}\n");
    return g_string_free(out, FALSE);
}

/* Written into the file as they are, in English; said in the reader's language by hs_site_set_name(). */
static const struct {
    const char *id, *title, *wording;
} words[] = {
#define NATIONAL_WORDS(id, title, wording) {id, title, wording},
#include "words_national.h"
#undef NATIONAL_WORDS
};

/* "men 19-45, repeated" */
static char *
wording_of(const hs_national_entry *entry)
{
    return strcmp(entry->who, "all") == 0
               ? g_strdup(entry->condition)
               : g_strdup_printf("%s, %s", entry->who, entry->condition);
}

static char *
source_of(const hs_source *source)
{
    g_autofree char *year =
        source->year > 0 ? g_strdup_printf(" (%d)", source->year) : g_strdup("");

    return g_strdup_printf("%s%s, %s", source->title, year, source->place);
}

static void
put_entry(hs_json_text *json, const hs_national_entry *entry)
{
    const hs_national *row = hs_national_entry_row(entry);
    const hs_source *publication = hs_source_get(row->source);
    g_autofree char *wording = wording_of(entry), *source = source_of(publication);
    gboolean is_share = *row->unit == '\0';

    /* Shares as they are; joules of a shift become watts to a tenth. */
    hs_json_text_number(json, "figure",
                        is_share ? row->figure
                                 : round(row->figure * entry->factor * 10.0) / 10.0);
    hs_json_text_string(json, "unit", is_share ? "kg/kg" : hs_check_get(entry->check)->unit);
    hs_json_text_string(json, "wording", wording);
    hs_json_text_string(json, "source", source);
    hs_json_text_string(json, "known", known_word(publication->confidence));
    hs_site_when_write(&entry->when, json);
}

/* The entries of one check, a line each. */
static void
put_check(GString *out, int set, hs_check_id check, gboolean *follows)
{
    gboolean any = FALSE;

    for (int i = 0; i < hs_national_entry_count(); i++) {
        const hs_national_entry *entry = hs_national_entry_get(i);
        g_autoptr(GString) line = g_string_new(NULL);
        hs_json_text json = {.out = line};

        if (entry->set != set || entry->check != check)
            continue;
        if (!any)
            g_string_append_printf(out, "%s    \"%s\": [\n", *follows ? ",\n" : "",
                                   hs_check_get(check)->id);
        hs_json_text_open(&json, NULL, '{');
        put_entry(&json, entry);
        hs_json_text_close(&json, '}');
        g_string_append_printf(out, "%s      %s", any ? ",\n" : "", line->str);
        any = TRUE;
    }
    if (any)
        g_string_append(out, "\n    ]");
    *follows |= any;
}

static GString *
set_begin(const char *id, const char *edition)
{
    GString *out = g_string_new("{\n  \"format\": \"handspike-limits\",\n  \"version\": 1,\n");

    for (gsize i = 0; i < G_N_ELEMENTS(words); i++)
        if (strcmp(words[i].id, id) == 0)
            g_string_append_printf(
                out,
                "  \"id\": \"%s\",\n  \"title\": \"%s\",\n  \"edition\": \"%s\",\n"
                "  \"wording\": \"%s\",\n  \"limits\": {\n",
                id, words[i].title, edition, words[i].wording);
    return out;
}

char *
hs_limits_national_set_json(int set)
{
    const hs_national_set *at = hs_national_set_get(set);
    GString *out = set_begin(at->id, at->edition);
    gboolean follows = FALSE;

    for (int c = 0; c < HS_N_CHECKS; c++)
        put_check(out, set, (hs_check_id)c, &follows);
    g_string_append(out, "\n  }\n}\n");
    return g_string_free(out, FALSE);
}

/* "women 21-30, row of 30 years" */
static char *
spine_who(int row, hs_sex sex)
{
    const char *who = sex == HS_SEX_FEMALE ? "women" : "men";
    hs_site_when when = hs_spine_row_when(row, sex);
    double years = hs_spine_row_years(row);

    if (when.age_below_years == 0.0)
        return g_strdup_printf("%s from %g, row of %g years", who, when.age_from_years, years);
    if (row == 0)
        return g_strdup_printf("%s of %g", who, years);
    return g_strdup_printf("%s %g-%g, row of %g years", who, when.age_from_years, years, years);
}

static void
put_spine_row(GString *out, int row, hs_sex sex)
{
    const hs_source *publication = hs_source_get(HS_SRC_spine_dortmund);
    g_autofree char *who = spine_who(row, sex), *source = source_of(publication);
    g_autoptr(GString) line = g_string_new(NULL);
    hs_json_text json = {.out = line};
    hs_site_when when = hs_spine_row_when(row, sex);

    hs_json_text_open(&json, NULL, '{');
    hs_json_text_number(&json, "figure", hs_spine_row_N(row, sex));
    hs_json_text_string(&json, "unit", hs_check_get(HS_CHECK_spine_compression)->unit);
    hs_json_text_string(&json, "wording", who);
    hs_json_text_string(&json, "source", source);
    hs_json_text_string(&json, "known", known_word(publication->confidence));
    hs_site_when_write(&when, &json);
    hs_json_text_close(&json, '}');
    g_string_append_printf(out, "%s\n      %s", row + (sex != HS_SEX_FEMALE) > 0 ? "," : "",
                           line->str);
}

char *
hs_limits_spine_set_json(void)
{
    GString *out = set_begin("spine-age-sex", "undated, remembered");

    g_string_append_printf(out, "    \"%s\": [", hs_check_get(HS_CHECK_spine_compression)->id);
    for (int row = 0; row < hs_spine_row_count(); row++) {
        put_spine_row(out, row, HS_SEX_FEMALE);
        put_spine_row(out, row, HS_SEX_MALE);
    }
    g_string_append(out, "\n    ]\n  }\n}\n");
    return g_string_free(out, FALSE);
}

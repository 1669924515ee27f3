/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how are the limits' figures written down for others to read?
 * Answer:    core's lists in order, one figure a line, with title, edition and how it is known.
 * Not here:  the figures (core). */
#include "limits_json.h"

#include "check.h"
#include "figures.h"
#include "json_text.h"
#include "national.h"

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

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  for whom and what is a figure of a set said?
 * Answer:    the object "when" of a figure, read and written by one table of its keys.
 * Not here:  the rest of the set (site_limits.c), whether it fits a worker (core, checks/limits/site.c). */
#include "site_when.h"

#include "faults.h"
#include "translate.h"

#include <string.h>

typedef enum {
    WORD,
    NUMBER
} kind;

typedef struct {
    const char *key;
    kind kind;
    hs_own_by by; /* the least that a check must take */
    size_t at;    /* of a number */
    const char *const *words;
} field;

#define AT(member) offsetof(hs_site_when, member)

static const char *const sexes[] = {"female", "male", NULL};
static const char *const moves[] = {"lift", "carry", NULL};
static const char *const hands[] = {"one", "two", NULL};
static const char *const heights[] = {"to_knuckle", "to_shoulder", "above_shoulder", NULL};

static const field fields[] = {
    {"sex", WORD, HS_OWN_BY_PERSON, 0, sexes},
    {"age_from_years", NUMBER, HS_OWN_BY_PERSON, AT(age_from_years), NULL},
    {"age_below_years", NUMBER, HS_OWN_BY_PERSON, AT(age_below_years), NULL},
    {"cycles_per_hour_above", NUMBER, HS_OWN_BY_PERSON, AT(above_per_h), NULL},
    {"cycles_per_hour_to", NUMBER, HS_OWN_BY_PERSON, AT(to_per_h), NULL},
    {"hours_above", NUMBER, HS_OWN_BY_PERSON, AT(above_h), NULL},
    {"hours_to", NUMBER, HS_OWN_BY_PERSON, AT(to_h), NULL},
    {"move", WORD, HS_OWN_BY_LEG, 0, moves},
    {"hands", WORD, HS_OWN_BY_LEG, 0, hands},
    {"hand_height", WORD, HS_OWN_BY_LEG, 0, heights},
    {"carry_above_m", NUMBER, HS_OWN_BY_LEG, AT(carry_above_m), NULL},
    {"slope_to_deg", NUMBER, HS_OWN_BY_LEG, AT(slope_to_deg), NULL},
};

static double *
number_of(hs_site_when *when, const field *at)
{
    return (double *)(void *)((char *)when + at->at);
}

/* Which word of the field's list; -1 where it asks nothing. */
static int
word_of(const hs_site_when *when, const field *at)
{
    if (at->words == sexes)
        return when->sex == 0 ? -1 : when->sex == HS_SEX_MALE;
    if (at->words == moves)
        return when->lifts_only ? 0 : when->carries_only ? 1 : -1;
    if (at->words == hands)
        return when->hands - 1;
    return (int)when->height - 1;
}

static void
set_word(hs_site_when *when, const field *at, int word)
{
    if (at->words == sexes)
        when->sex = word == 1 ? HS_SEX_MALE : HS_SEX_FEMALE;
    else if (at->words == moves && word == 0)
        when->lifts_only = true;
    else if (at->words == moves)
        when->carries_only = true;
    else if (at->words == hands)
        when->hands = word + 1;
    else
        when->height = (hs_site_height)(word + 1);
}

static char *
list_of(const char *const *words)
{
    GString *text = g_string_new(words[0]);

    for (int w = 1; words[w] != NULL; w++)
        g_string_append_printf(text, ", %s", words[w]);
    return g_string_free(text, FALSE);
}

/* NULL: read; else what is allowed, new. */
static char *
read_field(JsonNode *node, const field *at, hs_site_when *when)
{
    GType type = JSON_NODE_HOLDS_VALUE(node) ? json_node_get_value_type(node) : G_TYPE_INVALID;

    if (at->kind == NUMBER) {
        if ((type != G_TYPE_INT64 && type != G_TYPE_DOUBLE) ||
            !(json_node_get_double(node) > 0.0))
            return g_strdup(_("a number above 0"));
        *number_of(when, at) = json_node_get_double(node);
        return NULL;
    }
    for (int w = 0; type == G_TYPE_STRING && at->words[w] != NULL; w++)
        if (strcmp(json_node_get_string(node), at->words[w]) == 0) {
            set_word(when, at, w);
            return NULL;
        }
    return list_of(at->words);
}

static const field *
find(const char *key)
{
    for (gsize i = 0; i < G_N_ELEMENTS(fields); i++)
        if (strcmp(fields[i].key, key) == 0)
            return &fields[i];
    return NULL;
}

void
hs_site_when_read(JsonObject *object,
                  hs_own_by by,
                  hs_site_when *ret_when,
                  hs_site_when_fault say,
                  gpointer data)
{
    JsonObjectIter iter;
    const char *key;
    JsonNode *node;

    *ret_when = (hs_site_when){0};
    json_object_iter_init_ordered(&iter, object);
    while (json_object_iter_next_ordered(&iter, &key, &node)) {
        const field *at = find(key);
        g_autofree char *allowed = NULL, *is = hs_fault_value(node);

        /* A condition that is not understood would let a figure count where it must not: no warning, a fault. */
        if (at == NULL) {
            say(key, g_strdup(_("is no condition that is known")), FALSE, data);
        } else if (by < at->by) {
            say(key, g_strdup(_("is no condition that this check takes")), FALSE, data);
        } else {
            allowed = read_field(node, at, ret_when);
            if (allowed != NULL)
                say(key, g_strdup_printf(_("is %s; allowed: %s"), is, allowed), FALSE, data);
        }
    }
}

gboolean
hs_site_when_asks(const hs_site_when *when)
{
    hs_site_when copy = *when;

    for (gsize i = 0; i < G_N_ELEMENTS(fields); i++)
        if (fields[i].kind == NUMBER ? *number_of(&copy, &fields[i]) > 0.0
                                     : word_of(when, &fields[i]) >= 0)
            return TRUE;
    return FALSE;
}

void
hs_site_when_write(const hs_site_when *when, hs_json_text *json)
{
    hs_site_when copy = *when;

    if (!hs_site_when_asks(when))
        return;
    hs_json_text_open(json, "when", '{');
    for (gsize i = 0; i < G_N_ELEMENTS(fields); i++) {
        int word = fields[i].kind == WORD ? word_of(when, &fields[i]) : -1;
        double number = fields[i].kind == NUMBER ? *number_of(&copy, &fields[i]) : 0.0;

        if (word >= 0)
            hs_json_text_string(json, fields[i].key, fields[i].words[word]);
        else if (number > 0.0)
            hs_json_text_number(json, fields[i].key, number);
    }
    hs_json_text_close(json, '}');
}

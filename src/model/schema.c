/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how does another program check a document?
 * Answer:    the same tables that the reader uses, written as a JSON Schema.
 * Not here:  rules across fields (rules.c). */
#include "schema.h"

#include "allowed.h"
#include "digest.h"
#include "fields.h"

#include <float.h>
#include <json-glib/json-glib.h>
#include <string.h>

static void write_object(GString *out, const hs_object *type, int level);

static void
newline(GString *out, int level)
{
    g_string_append_printf(out, "\n%*s", 2 * level, "");
}

static void
write_range(GString *out, const hs_field *field)
{
    g_autofree char *least = hs_canonical_number(field->least),
                    *most = hs_canonical_number(field->most);

    g_string_append_printf(out, "\"type\": \"%s\"", field->is_whole ? "integer" : "number");
    if (field->least > -DBL_MAX)
        g_string_append_printf(out, ", \"%s\": %s",
                               field->above ? "exclusiveMinimum" : "minimum", least);
    if (field->most < DBL_MAX)
        g_string_append_printf(out, ", \"maximum\": %s", most);
}

static void
write_words(GString *out, const char *const *words)
{
    g_string_append(out, "\"enum\": [");
    for (int i = 0; words[i] != NULL; i++)
        g_string_append_printf(out, "%s\"%s\"", i > 0 ? ", " : "", words[i]);
    g_string_append_c(out, ']');
}

/* The unit, and what an absent number stands for. */
static void
write_note(GString *out, const hs_field *field)
{
    const char *unit = hs_allowed_unit(field->key);

    if (*unit != '\0')
        g_string_append_printf(out, ", \"description\": \"in %s\"", unit);
    if (field->is_zero)
        g_string_append(out, ", \"default\": 0");
    if (field->otherwise != 0)
        g_string_append_printf(out, ", \"default\": \"%s\"",
                               field->words[field->otherwise - 1]);
}

static void
write_numbers(GString *out, const hs_field *field, int n)
{
    g_string_append_printf(
        out, "\"type\": \"array\", \"minItems\": %d, \"maxItems\": %d, \"items\": { ", n, n);
    write_range(out, field);
    g_string_append(out, " }");
}

static void
write_list(GString *out, const hs_field *field, int level)
{
    g_string_append_printf(
        out, "\"type\": \"array\", \"minItems\": %.0f, \"maxItems\": %.0f, \"items\": ",
        field->least, field->most);
    write_object(out, field->object, level);
}

static void
write_field(GString *out, const hs_field *field, int level)
{
    if (field->kind == HS_KIND_OBJECT || field->kind == HS_KIND_INLINE) {
        write_object(out, field->object, level);
        return;
    }
    g_string_append(out, "{ ");
    switch (field->kind) {
    case HS_KIND_NUMBER:
        write_range(out, field);
        break;
    case HS_KIND_INT:
        g_string_append_printf(out,
                               "\"type\": \"integer\", \"minimum\": %.0f, \"maximum\": %.0f",
                               field->least, field->most);
        break;
    case HS_KIND_PAIR:
        write_numbers(out, field, 2);
        break;
    case HS_KIND_VECTOR:
        write_numbers(out, field, 3);
        break;
    case HS_KIND_BOOL:
    case HS_KIND_FLAG:
        g_string_append(out, "\"type\": \"boolean\"");
        break;
    case HS_KIND_WORD:
        write_words(out, field->words);
        break;
    case HS_KIND_LIST:
        write_list(out, field, level);
        break;
    case HS_KIND_STRINGS:
        g_string_append(out, "\"type\": \"array\", \"items\": { ");
        write_words(out, field->words);
        g_string_append(out, " }");
        break;
    case HS_KIND_PLACES:
        g_string_append_printf(out, "\"type\": \"array\", \"maxItems\": %d, \"items\": { ",
                               HS_PLACES_MOST);
        write_numbers(out, field, 2);
        g_string_append(out, " }");
        break;
    case HS_KIND_REFS:
        g_string_append_printf(out,
                               "\"type\": \"array\", \"minItems\": %.0f, \"maxItems\": %.0f, "
                               "\"items\": { \"type\": \"string\" }",
                               field->least, field->most);
        break;
    case HS_KIND_EACH:
        g_string_append(out, "\"oneOf\": [{ ");
        write_range(out, field);
        g_string_append(out, " }, { \"type\": \"array\", \"items\": { \"oneOf\": [{ ");
        write_range(out, field);
        g_string_append(out, " }, { \"type\": \"null\" }] } }]");
        break;
    case HS_KIND_STANCES:
        g_string_append(out, "\"oneOf\": [{ ");
        write_words(out, field->words);
        g_string_append(out, " }, { \"type\": \"array\", \"items\": { ");
        write_words(out, field->words);
        g_string_append(out, " } }]");
        break;
    case HS_KIND_MAP:
        g_string_append(out, "\"type\": \"object\", \"additionalProperties\": { ");
        write_range(out, field);
        g_string_append(out, " }");
        break;
    case HS_KIND_STRING:
    case HS_KIND_REF:
    default:
        g_string_append(out, "\"type\": \"string\"");
        if (strcmp(field->key, "id") == 0)
            g_string_append(out, ", \"minLength\": 1");
        break;
    }
    write_note(out, field);
    g_string_append(out, " }");
}

static void
write_object(GString *out, const hs_object *type, int level)
{
    gboolean is_document = type == &hs_object_document, follows = FALSE;

    g_string_append(out, "{");
    newline(out, level + 1);
    g_string_append(out, "\"type\": \"object\",");
    newline(out, level + 1);
    g_string_append(out, "\"required\": [");
    if (is_document) {
        g_string_append(out, "\"format\", \"version\"");
        follows = TRUE;
    }
    for (const hs_field *field = type->fields; field->key != NULL; field++)
        if (field->required) {
            g_string_append_printf(out, "%s\"%s\"", follows ? ", " : "", field->key);
            follows = TRUE;
        }
    g_string_append(out, "],");
    newline(out, level + 1);
    g_string_append(out, "\"properties\": {");
    if (is_document) {
        newline(out, level + 2);
        g_string_append(out, "\"format\": { \"const\": \"handspike-assessment\" },");
        newline(out, level + 2);
        g_string_append(out, "\"version\": { \"const\": 1 },");
    }
    for (const hs_field *field = type->fields; field->key != NULL; field++) {
        newline(out, level + 2);
        g_string_append_printf(out, "\"%s\": ", field->key);
        write_field(out, field, level + 2);
        if (field[1].key != NULL)
            g_string_append_c(out, ',');
    }
    newline(out, level + 1);
    g_string_append_c(out, '}');
    newline(out, level);
    g_string_append_c(out, '}');
}

char *
hs_schema_text(void)
{
    GString *out = g_string_new(NULL);
    g_autofree char *head =
        g_strdup("{\n  \"$schema\": \"https://json-schema.org/draft/2020-12/schema\",\n"
                 "  \"title\": \"Handspike assessment document, version 1\",");

    write_object(out, &hs_object_document, 0);
    g_string_erase(out, 0, 1);
    g_string_prepend(out, head);
    g_string_append_c(out, '\n');
    return g_string_free(out, FALSE);
}

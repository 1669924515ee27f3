/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  do the published schemas say what the program reads and writes?
 * Answer:    the committed file against the one made from the tables; our documents and results against both schemas, by a
 *            small validator of our own for the words of JSON Schema that they use.
 * Not here:  rules across fields, which a schema cannot say (test_reader.c). */
#include "schema.h"

#include "assess.h"
#include "fields.h"
#include "near.h"
#include "results_json.h"

#include <math.h>
#include <string.h>

typedef struct {
    JsonObject *root; /* of the schema, for $ref */
    GString *path;
    GString *fault; /* the first one */
} validation;

static void check(validation *v, JsonObject *schema, JsonNode *node);

static void
fault(validation *v, const char *word)
{
    if (v->fault->len == 0)
        g_string_printf(v->fault, "%s: %s", v->path->str, word);
}

static gboolean
is_number(JsonNode *node)
{
    return JSON_NODE_HOLDS_VALUE(node) && (json_node_get_value_type(node) == G_TYPE_INT64 ||
                                           json_node_get_value_type(node) == G_TYPE_DOUBLE);
}

static gboolean
is_string(JsonNode *node)
{
    return JSON_NODE_HOLDS_VALUE(node) && json_node_get_value_type(node) == G_TYPE_STRING;
}

static gboolean
has_type(const char *type, JsonNode *node)
{
    if (strcmp(type, "object") == 0)
        return JSON_NODE_HOLDS_OBJECT(node);
    if (strcmp(type, "array") == 0)
        return JSON_NODE_HOLDS_ARRAY(node);
    if (strcmp(type, "null") == 0)
        return JSON_NODE_HOLDS_NULL(node);
    if (strcmp(type, "string") == 0)
        return is_string(node);
    if (strcmp(type, "boolean") == 0)
        return JSON_NODE_HOLDS_VALUE(node) && json_node_get_value_type(node) == G_TYPE_BOOLEAN;
    if (strcmp(type, "integer") == 0)
        return is_number(node) &&
               json_node_get_double(node) == floor(json_node_get_double(node));
    if (strcmp(type, "number") == 0)
        return is_number(node);
    g_error("type %s is not known to this validator", type);
}

static gboolean
is_same(JsonNode *a, JsonNode *b)
{
    if (is_number(a) && is_number(b))
        return json_node_get_double(a) == json_node_get_double(b);
    return is_string(a) && is_string(b) &&
           strcmp(json_node_get_string(a), json_node_get_string(b)) == 0;
}

static void
check_number(validation *v, JsonObject *schema, double value)
{
    if (json_object_has_member(schema, "minimum") &&
        !(value >= json_object_get_double_member(schema, "minimum")))
        fault(v, "minimum");
    if (json_object_has_member(schema, "exclusiveMinimum") &&
        !(value > json_object_get_double_member(schema, "exclusiveMinimum")))
        fault(v, "exclusiveMinimum");
    if (json_object_has_member(schema, "maximum") &&
        !(value <= json_object_get_double_member(schema, "maximum")))
        fault(v, "maximum");
}

static void
check_members(validation *v, JsonObject *schema, JsonObject *object)
{
    g_autoptr(GList) keys = json_object_get_members(object);
    JsonObject *properties = json_object_has_member(schema, "properties")
                                 ? json_object_get_object_member(schema, "properties")
                                 : NULL;
    JsonArray *required = json_object_has_member(schema, "required")
                              ? json_object_get_array_member(schema, "required")
                              : NULL;

    for (guint i = 0; required != NULL && i < json_array_get_length(required); i++)
        if (!json_object_has_member(object, json_array_get_string_element(required, i)))
            fault(v, json_array_get_string_element(required, i));
    for (GList *at = keys; at != NULL; at = at->next) {
        gsize before = v->path->len;
        JsonObject *own = NULL;

        g_string_append_printf(v->path, ".%s", (char *)at->data);
        if (properties != NULL && json_object_has_member(properties, at->data))
            own = json_object_get_object_member(properties, at->data);
        else if (json_object_has_member(schema, "additionalProperties"))
            own = json_object_get_object_member(schema, "additionalProperties");
        if (own != NULL)
            check(v, own, json_object_get_member(object, at->data));
        g_string_truncate(v->path, before);
    }
}

static void
check_items(validation *v, JsonObject *schema, JsonArray *array)
{
    guint n = json_array_get_length(array);

    if (json_object_has_member(schema, "minItems") &&
        n < json_object_get_int_member(schema, "minItems"))
        fault(v, "minItems");
    if (json_object_has_member(schema, "maxItems") &&
        n > json_object_get_int_member(schema, "maxItems"))
        fault(v, "maxItems");
    for (guint i = 0; i < n && json_object_has_member(schema, "items"); i++) {
        gsize before = v->path->len;

        g_string_append_printf(v->path, "[%u]", i);
        check(v, json_object_get_object_member(schema, "items"),
              json_array_get_element(array, i));
        g_string_truncate(v->path, before);
    }
}

static gboolean
fits(validation *v, JsonObject *schema, JsonNode *node)
{
    validation inner = {v->root, v->path, g_string_new(NULL)};
    gboolean good;

    check(&inner, schema, node);
    good = inner.fault->len == 0;
    g_string_free(inner.fault, TRUE);
    return good;
}

static void
check_choice(validation *v, JsonObject *schema, JsonNode *node)
{
    JsonArray *list;
    guint n = 0;

    if (json_object_has_member(schema, "const") &&
        !is_same(json_object_get_member(schema, "const"), node))
        fault(v, "const");
    if (json_object_has_member(schema, "enum")) {
        list = json_object_get_array_member(schema, "enum");
        for (guint i = 0; i < json_array_get_length(list); i++)
            n += is_same(json_array_get_element(list, i), node);
        if (n != 1)
            fault(v, "enum");
    }
    if (json_object_has_member(schema, "oneOf")) {
        list = json_object_get_array_member(schema, "oneOf");
        n = 0;
        for (guint i = 0; i < json_array_get_length(list); i++)
            n += fits(v, json_array_get_object_element(list, i), node);
        if (n != 1)
            fault(v, "oneOf");
    }
}

/* A word that this validator does not know would make it agree too easily. */
static void
check_words(JsonObject *schema)
{
    static const char *const known[] = {"$schema",
                                        "$ref",
                                        "$defs",
                                        "title",
                                        "description",
                                        "default",
                                        "type",
                                        "const",
                                        "enum",
                                        "oneOf",
                                        "required",
                                        "properties",
                                        "additionalProperties",
                                        "items",
                                        "minItems",
                                        "maxItems",
                                        "minLength",
                                        "maxLength",
                                        "minimum",
                                        "maximum",
                                        "exclusiveMinimum"};
    g_autoptr(GList) keys = json_object_get_members(schema);

    for (GList *at = keys; at != NULL; at = at->next) {
        gboolean found = FALSE;

        for (guint i = 0; i < G_N_ELEMENTS(known); i++)
            found = found || strcmp(known[i], at->data) == 0;
        if (!found)
            g_error("the word %s is not known to this validator", (char *)at->data);
    }
}

static void
check(validation *v, JsonObject *schema, JsonNode *node)
{
    check_words(schema);
    if (json_object_has_member(schema, "$ref")) {
        const char *name = json_object_get_string_member(schema, "$ref") + strlen("#/$defs/");

        check(v,
              json_object_get_object_member(json_object_get_object_member(v->root, "$defs"),
                                            name),
              node);
    }
    if (json_object_has_member(schema, "type") &&
        !has_type(json_object_get_string_member(schema, "type"), node)) {
        fault(v, "type");
        return;
    }
    check_choice(v, schema, node);
    if (is_number(node))
        check_number(v, schema, json_node_get_double(node));
    if (is_string(node) && json_object_has_member(schema, "minLength") &&
        g_utf8_strlen(json_node_get_string(node), -1) <
            json_object_get_int_member(schema, "minLength"))
        fault(v, "minLength");
    if (is_string(node) && json_object_has_member(schema, "maxLength") &&
        g_utf8_strlen(json_node_get_string(node), -1) >
            json_object_get_int_member(schema, "maxLength"))
        fault(v, "maxLength");
    if (JSON_NODE_HOLDS_OBJECT(node))
        check_members(v, schema, json_node_get_object(node));
    if (JSON_NODE_HOLDS_ARRAY(node))
        check_items(v, schema, json_node_get_array(node));
}

/* NULL, or the first fault. */
static char *
validate(JsonNode *schema, JsonNode *node)
{
    validation v = {json_node_get_object(schema), g_string_new("$"), g_string_new(NULL)};

    check(&v, v.root, node);
    g_string_free(v.path, TRUE);
    return g_string_free(v.fault, v.fault->len == 0);
}

static JsonNode *
load(const char *path)
{
    g_autofree char *text = NULL;
    g_autoptr(GError) error = NULL;
    JsonNode *node;

    if (!g_file_get_contents(path, &text, NULL, &error))
        g_error("%s: %s", path, error->message);
    node = json_from_string(text, &error);
    if (node == NULL)
        g_error("%s: %s", path, error != NULL ? error->message : "empty");
    return node;
}

static void
schema__is_the_one_that_is_committed(void)
{
    const char *path = HS_SOURCE_ROOT "/data/schema/assessment.schema.json";
    g_autofree char *made = hs_schema_text(), *kept = NULL;

    /* When the tables of fields.c change: HS_WRITE_SCHEMA=1 writes the file anew; look at the difference. */
    if (g_getenv("HS_WRITE_SCHEMA") != NULL)
        g_assert_true(g_file_set_contents(path, made, -1, NULL));
    g_assert_true(g_file_get_contents(path, &kept, NULL, NULL));
    g_assert_cmpstr(made, ==, kept);
}

static void
every_file(const char *folder, const char *end, JsonNode *schema)
{
    g_autoptr(GDir) dir = g_dir_open(folder, 0, NULL);
    const char *name;

    g_assert_nonnull(dir);
    while ((name = g_dir_read_name(dir)) != NULL) {
        g_autofree char *path = g_build_filename(folder, name, NULL), *wrong = NULL;
        g_autoptr(JsonNode) node = NULL;

        if (!g_str_has_suffix(name, end))
            continue;
        node = load(path);
        wrong = validate(schema, node);
        if (wrong != NULL)
            g_error("%s: %s", path, wrong);
    }
}

static void
schema__takes_every_good_document(void)
{
    g_autoptr(JsonNode) schema = load(HS_SOURCE_ROOT "/data/schema/assessment.schema.json");

    every_file(HS_SOURCE_ROOT "/tests/documents/good", ".json", schema);
    every_file(HS_SOURCE_ROOT "/data/examples", ".handspike.json", schema);
}

/* Faults of a single field: the schema must see what the reader sees. */
static void
schema__refuses_what_the_reader_refuses_in_one_field(void)
{
    static const char *const names[] = {"nothing_in_it",     "other_format",
                                        "version_as_text",   "load_is_a_text",
                                        "one_point",         "no_points",
                                        "no_workers",        "no_options",
                                        "no_bearers",        "no_grips",
                                        "mass_as_text",      "mass_negative",
                                        "mass_null",         "size_with_two_numbers",
                                        "size_with_a_zero",  "size_with_a_text",
                                        "shape_unknown",     "hands_three",
                                        "hands_half",        "void_as_text",
                                        "reach_too_far",     "way_too_long",
                                        "worker_too_tall",   "part_is_a_number",
                                        "id_empty",          "id_missing",
                                        "criterion_unknown", "site_limit_negative",
                                        "move_missing",      "stance_unknown",
                                        "tilt_about_z",      "readings_flat",
                                        "floor_point_short", "grips_empty"};
    g_autoptr(JsonNode) schema = load(HS_SOURCE_ROOT "/data/schema/assessment.schema.json");

    for (guint i = 0; i < G_N_ELEMENTS(names); i++) {
        g_autofree char *path =
            g_strdup_printf("%s/tests/documents/bad/%s.json", HS_SOURCE_ROOT, names[i]);
        g_autoptr(JsonNode) node = load(path);
        g_autofree char *wrong = validate(schema, node);

        if (wrong == NULL)
            g_error("the schema takes %s", path);
    }
}

static char *
results_of(const char *path)
{
    g_autoptr(GPtrArray) faults = g_ptr_array_new_with_free_func((GDestroyNotify)hs_fault_free);
    g_autoptr(hs_document) document = hs_document_load(path, faults, NULL);
    hs_arena *arena = hs_arena_new();
    hs_results results = {0};
    hs_error error = {0};
    char *text;

    g_assert_nonnull(document);
    if (hs_assess(hs_document_task(document), HS_ASSESS_LIVE, arena, &results, &error) != HS_OK)
        g_error("%s: %s", path, error.where);
    text = hs_results_to_json(document, &results, NULL);
    hs_arena_free(arena);
    return text;
}

static void
schema__takes_the_results_of_good_documents(void)
{
    static const char *const names[] = {"small", "weighed", "every_key"};
    g_autoptr(JsonNode) schema = load(HS_SOURCE_ROOT "/data/schema/results.schema.json");

    for (guint i = 0; i < G_N_ELEMENTS(names); i++) {
        g_autofree char *path =
            g_strdup_printf("%s/tests/documents/good/%s.json", HS_SOURCE_ROOT, names[i]);
        g_autofree char *text = results_of(path), *wrong = NULL;
        g_autoptr(JsonNode) node = json_from_string(text, NULL);

        g_assert_nonnull(node);
        wrong = validate(schema, node);
        if (wrong != NULL)
            g_error("%s: %s", path, wrong);
        json_object_set_string_member(json_node_get_object(node), "version", "1");
        g_free(wrong);
        wrong = validate(schema, node);
        g_assert_cmpstr(wrong, ==, "$.version: const");
    }
}

static void
every_key(const hs_object *object, const char *text)
{
    for (const hs_field *field = object->fields; field->key != NULL; field++) {
        g_autofree char *key = g_strdup_printf("`%s`", field->key),
                        *list = g_strdup_printf("`%s[]`", field->key);

        if (strstr(text, key) == NULL && strstr(text, list) == NULL)
            g_error("docs/file-format.md does not say %s of %s", field->key, object->name);
        for (int i = 0; field->words != NULL && field->kind != HS_KIND_REF &&
                        field->kind != HS_KIND_REFS && field->words[i] != NULL;
             i++) {
            g_autofree char *word = g_strdup_printf("`%s`", field->words[i]);

            if (strstr(text, word) == NULL)
                g_error("docs/file-format.md does not say %s of %s", field->words[i],
                        field->key);
        }
        if (field->object != NULL)
            every_key(field->object, text);
    }
}

static void
schema__has_every_key_and_word_in_the_document_for_people(void)
{
    g_autofree char *text = NULL;

    g_assert_true(
        g_file_get_contents(HS_SOURCE_ROOT "/docs/file-format.md", &text, NULL, NULL));
    every_key(&hs_object_document, text);
}

int
main(int argc, char **argv)
{
    g_test_init(&argc, &argv, NULL);
    g_test_add_func("/schema/is_the_one_that_is_committed",
                    schema__is_the_one_that_is_committed);
    g_test_add_func("/schema/takes_every_good_document", schema__takes_every_good_document);
    g_test_add_func("/schema/refuses_what_the_reader_refuses_in_one_field",
                    schema__refuses_what_the_reader_refuses_in_one_field);
    g_test_add_func("/schema/takes_the_results_of_good_documents",
                    schema__takes_the_results_of_good_documents);
    g_test_add_func("/schema/has_every_key_and_word_in_the_document_for_people",
                    schema__has_every_key_and_word_in_the_document_for_people);
    return g_test_run();
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  is a figure what it should be?
 * Answer:    comparisons that print both figures and the check's name when they fail.
 * Not here:  the cases (tests/cases). */
#include "near.h"

#include <math.h>

void
hs_near(const char *what, double got, double wanted, double tolerance)
{
    if (!(fabs(got - wanted) <= tolerance))
        g_error("%s: got %.12g, wanted %.12g +- %.3g", what, got, wanted, tolerance);
}

void
hs_near_rel(const char *what, double got, double wanted, double relative)
{
    hs_near(what, got, wanted, relative * fmax(fabs(wanted), 1e-12));
}

JsonNode *
hs_cases_load(const char *name)
{
    g_autofree char *path = g_strdup_printf("%s/tests/cases/%s.json", HS_SOURCE_ROOT, name);
    g_autoptr(JsonParser) parser = json_parser_new();
    g_autoptr(GError) error = NULL;

    if (!json_parser_load_from_file(parser, path, &error))
        g_error("%s: %s", path, error->message);
    return json_parser_steal_root(parser);
}

int
hs_cases_ask(const char *name,
             const char *layer,
             double (*answer)(const char *ask, JsonObject *given))
{
    g_autoptr(JsonNode) root = hs_cases_load(name);
    JsonArray *cases = json_object_get_array_member(json_node_get_object(root), "cases");
    int n = 0;

    for (guint i = 0; i < json_array_get_length(cases); i++) {
        JsonObject *one = json_array_get_object_element(cases, i);

        if (!g_str_equal(json_object_get_string_member(one, "layer"), layer))
            continue;
        n++;
        hs_near_rel(json_object_get_string_member(one, "name"),
                    answer(json_object_get_string_member(one, "ask"),
                           json_object_get_object_member(one, "given")),
                    json_object_get_double_member(one, "expect"),
                    json_object_get_double_member(one, "relative"));
    }
    return n;
}

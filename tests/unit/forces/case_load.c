/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how does a worked example in JSON become a question to core?
 * Answer:    the keys that the examples use, one by one.
 * Not here:  the whole reader with its errors (model/reader.c). */
#include "case_load.h"

#include "near.h"

#include <string.h>

double
hs_case_number(JsonObject *of, const char *key, double otherwise)
{
    return json_object_has_member(of, key) ? json_object_get_double_member(of, key) : otherwise;
}

double
hs_case_at(JsonArray *list, guint i)
{
    return json_array_get_double_element(list, i);
}

hs_vec3
hs_case_vec3(JsonObject *of, const char *key)
{
    JsonArray *list;

    if (!json_object_has_member(of, key))
        return (hs_vec3){0, 0, 0};
    list = json_object_get_array_member(of, key);
    return (hs_vec3){hs_case_at(list, 0), hs_case_at(list, 1), hs_case_at(list, 2)};
}

static int
word_of(JsonObject *of, const char *key, const char *const *words, int otherwise)
{
    if (!json_object_has_member(of, key))
        return otherwise;
    for (int i = 0; words[i] != NULL; i++)
        if (strcmp(words[i], json_object_get_string_member(of, key)) == 0)
            return i + 1;
    g_error("%s: %s", key, json_object_get_string_member(of, key));
}

void
hs_case_parts(JsonArray *parts, hs_arena *arena, hs_load *load)
{
    static const char *const shapes[] = {"box",  "cylinder", "tube",  "sphere", "hemisphere",
                                         "cone", "wedge",    "point", NULL};
    static const char *const axes[] = {"x", "y", "z", NULL};
    hs_part *made = HS_NEW(arena, hs_part, json_array_get_length(parts));

    load->n_parts = (int)json_array_get_length(parts);
    load->parts = made;
    for (int i = 0; i < load->n_parts; i++) {
        JsonObject *of = json_array_get_object_element(parts, (guint)i);

        made[i] = (hs_part){.id = "p",
                            .shape = (hs_shape)word_of(of, "shape", shapes, 0),
                            .size_m = hs_case_vec3(of, "size_m"),
                            .radius_m = hs_case_number(of, "radius_m", 0.0),
                            .inner_radius_m = hs_case_number(of, "inner_radius_m", 0.0),
                            .length_m = hs_case_number(of, "length_m", 0.0),
                            .axis = (hs_axis)word_of(of, "axis", axes, HS_AXIS_Z),
                            .centre_m = hs_case_vec3(of, "centre_m"),
                            .turn_deg = hs_case_vec3(of, "turn_deg"),
                            .mass_kg = hs_case_number(of, "mass_kg", HS_ABSENT),
                            .density_kg_m3 = hs_case_number(of, "density_kg_m3", HS_ABSENT),
                            .is_void = json_object_has_member(of, "void") &&
                                       json_object_get_boolean_member(of, "void"),
                            .mass_tol_kg = HS_ABSENT};
        if (json_object_has_member(of, "liquid")) {
            JsonObject *liquid = json_object_get_object_member(of, "liquid");

            made[i].has_liquid = true;
            made[i].liquid_density_kg_m3 = hs_case_number(liquid, "density_kg_m3", HS_ABSENT);
            made[i].liquid_depth_m = hs_case_number(liquid, "depth_m", HS_ABSENT);
        }
    }
}

void
hs_case_weighings(JsonArray *sets, hs_arena *arena, hs_load *load)
{
    static const char *const axes[] = {"x", "y", "z", NULL};
    hs_weighing *made = HS_NEW(arena, hs_weighing, json_array_get_length(sets));

    load->n_weighings = (int)json_array_get_length(sets);
    load->weighings = made;
    for (int i = 0; i < load->n_weighings; i++) {
        JsonObject *of = json_array_get_object_element(sets, (guint)i);
        JsonArray *readings = json_object_get_array_member(of, "readings");
        guint n = json_array_get_length(readings);
        hs_reading *reading = HS_NEW(arena, hs_reading, n);

        for (guint k = 0; k < n; k++) {
            JsonObject *one = json_array_get_object_element(readings, k);
            JsonArray *at = json_object_get_array_member(one, "at_m");

            reading[k] = (hs_reading){hs_case_at(at, 0), hs_case_at(at, 1),
                                      hs_case_number(one, "reading_kg", HS_ABSENT)};
        }
        made[i] = (hs_weighing){.tilt_deg = hs_case_number(of, "tilt_deg", 0.0),
                                .about = (hs_axis)word_of(of, "about", axes, HS_AXIS_Y),
                                .n_readings = (int)n,
                                .readings = reading};
    }
}

void
hs_case_document_load(JsonObject *document, hs_arena *arena, hs_load *load)
{
    JsonObject *of = json_object_get_object_member(document, "load");

    *load = (hs_load){0};
    if (json_object_has_member(of, "parts"))
        hs_case_parts(json_object_get_array_member(of, "parts"), arena, load);
    if (json_object_has_member(of, "weighings"))
        hs_case_weighings(json_object_get_array_member(of, "weighings"), arena, load);
}

int
hs_case_each(const char *file, const char *member, const char *ask, hs_case_function function)
{
    g_autoptr(JsonNode) root = hs_cases_load(file);
    JsonArray *cases = json_object_get_array_member(json_node_get_object(root), "cases");
    int n = 0;

    for (guint i = 0; i < json_array_get_length(cases); i++) {
        JsonObject *of = json_array_get_object_element(cases, i);

        if (!json_object_has_member(of, member))
            continue;
        if (ask != NULL && strcmp(json_object_get_string_member(of, "ask"), ask) != 0)
            continue;
        function(of);
        n++;
    }
    g_assert_cmpint(n, >, 0);
    return n;
}

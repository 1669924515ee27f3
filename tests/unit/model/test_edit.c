/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  does an edit change what it names, share the rest, and leave the version before as it was?
 * Answer:    every kind of step on a small document, by its text and by the nodes that both versions share.
 * Not here:  undo (test_session.c). */
#include "edit.h"

#include <math.h>
#include <string.h>

static hs_document *
small(void)
{
    g_autoptr(GPtrArray) faults = g_ptr_array_new_with_free_func((GDestroyNotify)hs_fault_free);
    hs_document *document =
        hs_document_load(HS_SOURCE_ROOT "/tests/documents/good/small.json", faults, NULL);

    g_assert_nonnull(document);
    return document;
}

static JsonNode *
member(JsonNode *node, const char *key)
{
    return json_object_get_member(json_node_get_object(node), key);
}

static JsonNode *
item(JsonNode *node, guint index)
{
    return json_array_get_element(json_node_get_array(node), index);
}

static hs_document *
apply(hs_document *document, hs_edit *edit)
{
    hs_fault *fault = NULL;
    hs_document *made = hs_document_apply(document, edit, FALSE, &fault);

    if (made == NULL)
        g_error("%s: %s", fault->path, fault->text);
    g_assert_null(fault);
    return made;
}

/* The edit is refused, at this path, and the document stays what it was. */
static void
refused(hs_document *document, hs_edit *edit, const char *path)
{
    g_autofree char *before = hs_document_to_text(document, NULL), *after = NULL;
    hs_fault *fault = NULL;

    g_assert_null(hs_document_apply(document, edit, FALSE, &fault));
    g_assert_nonnull(fault);
    g_assert_cmpstr(fault->path, ==, path);
    hs_fault_free(fault);
    after = hs_document_to_text(document, NULL);
    g_assert_cmpstr(before, ==, after);
}

static void
edit__sets_a_figure_and_shares_the_rest(void)
{
    g_autoptr(hs_document) before = small(), after = NULL;
    g_autoptr(hs_edit) edit = hs_edit_new("Set mass");
    JsonNode *old = hs_document_root(before), *new;

    hs_edit_set_number(edit, "load.parts[0].mass_kg", 41.5);
    after = apply(before, edit);
    new = hs_document_root(after);
    g_assert_cmpfloat(hs_document_task(after)->load.parts[0].mass_kg, ==, 41.5);
    g_assert_cmpfloat(hs_document_task(before)->load.parts[0].mass_kg, ==, 32.0);
    g_assert_true(member(old, "route") == member(new, "route"));
    g_assert_true(member(old, "options") == member(new, "options"));
    g_assert_true(member(member(old, "load"), "grips") == member(member(new, "load"), "grips"));
    g_assert_true(member(item(member(member(old, "load"), "parts"), 0), "size_m") ==
                  member(item(member(member(new, "load"), "parts"), 0), "size_m"));
    g_assert_true(member(old, "load") != member(new, "load"));
    g_assert_cmpstr(hs_document_digest(before), !=, hs_document_digest(after));
    g_assert_cmpstr(hs_edit_label(edit), ==, "Set mass");
}

static void
edit__makes_objects_and_lists_on_the_way(void)
{
    g_autoptr(hs_document) before = small(), after = NULL;
    g_autoptr(hs_edit) edit = hs_edit_new("Site");

    hs_edit_set_number(edit, "site.friction", 0.5);
    hs_edit_set_bool(edit, "site.wet", TRUE);
    hs_edit_set_string(edit, "about.place", "Hall");
    hs_edit_insert(
        edit, "roles[0]",
        json_from_string("{\"role\":\"steers\",\"before\":\"a\",\"after\":\"\"}", NULL));
    hs_edit_set_number(edit, "policy.site_limits[\"day.mass\"]", 4000);
    hs_edit_set_number(edit, "policy.site_limits[\"lift.iso-11228-1\"]", 20);
    after = apply(before, edit);
    g_assert_cmpfloat(hs_document_task(after)->site.friction, ==, 0.5);
    g_assert_cmpint(hs_document_task(after)->site.wet, ==, HS_YES);
    g_assert_cmpint(hs_document_task(after)->n_roles, ==, 1);
    g_assert_cmpint(hs_document_task(after)->policy.n_site_limits, ==, 2);
    g_assert_cmpstr(hs_document_task(after)->policy.site_limits[0].id, ==, "day.mass");
    g_assert_false(
        json_object_has_member(json_node_get_object(hs_document_root(before)), "site"));
}

static void
edit__inserts_before_at_and_behind(void)
{
    g_autoptr(hs_document) before = small(), after = NULL;
    g_autoptr(hs_edit) edit = hs_edit_new("Points");
    const hs_route *route;

    hs_edit_insert(edit, "route.points[1]",
                   json_from_string("{\"x_m\":0,\"z_m\":0.3,\"move\":\"lift\"}", NULL));
    hs_edit_insert(edit, "route.points[4]",
                   json_from_string("{\"x_m\":4,\"z_m\":0.2,\"move\":\"lower\"}", NULL));
    after = apply(before, edit);
    route = &hs_document_task(after)->route;
    g_assert_cmpint(route->n_points, ==, 5);
    g_assert_cmpfloat(route->points[1].z_m, ==, 0.3);
    g_assert_cmpfloat(route->points[2].z_m, ==, 0.7);
    g_assert_cmpint(route->points[4].move, ==, HS_MOVE_LOWER);
}

/* Every move within a list of four, against taking out and putting in. */
static void
edit__moves_items(void)
{
    g_autoptr(hs_document) base = small(), four = NULL;
    g_autoptr(hs_edit) more = hs_edit_new("Workers");

    hs_edit_insert(more, "workers[2]", json_from_string("{\"id\":\"w3\"}", NULL));
    hs_edit_insert(more, "workers[3]", json_from_string("{\"id\":\"w4\"}", NULL));
    four = apply(base, more);
    for (int from = 0; from < 4; from++)
        for (int to = 0; to < 4; to++) {
            g_autofree char *path = g_strdup_printf("workers[%d]", from);
            g_autoptr(hs_edit) edit = hs_edit_new("Move");
            g_autoptr(hs_document) moved = NULL;
            g_autoptr(GPtrArray) wanted = g_ptr_array_new();
            void *taken;

            hs_edit_move(edit, path, to);
            moved = apply(four, edit);
            for (int i = 0; i < 4; i++)
                g_ptr_array_add(wanted,
                                (void *)(guintptr)hs_document_task(four)->workers[i].id);
            taken = g_ptr_array_remove_index(wanted, (guint)from);
            g_ptr_array_insert(wanted, to, taken);
            for (guint i = 0; i < 4; i++)
                g_assert_cmpstr(hs_document_task(moved)->workers[i].id, ==, wanted->pdata[i]);
        }
}

static void
edit__removes_items_and_unsets_members(void)
{
    g_autoptr(hs_document) before = small(), after = NULL;
    g_autoptr(hs_edit) edit = hs_edit_new("Away");

    hs_edit_remove(edit, "options[0].bearers[1]");
    hs_edit_unset(edit, "about.title");
    hs_edit_unset(edit, "about.title");        /* gone already: no fault */
    hs_edit_unset(edit, "policy.slip_factor"); /* never there */
    after = apply(before, edit);
    g_assert_cmpint(hs_document_task(after)->options[0].n_bearers, ==, 1);
    g_assert_null(hs_document_task(after)->about.title);
}

static void
edit__leaves_everything_when_an_unset_does_not_fit(void)
{
    static const char *const paths[] = {"load.parts[7].name", "load.parts.name",
                                        "about.title.deeper"};
    g_autoptr(hs_document) before = small();

    for (guint i = 0; i < G_N_ELEMENTS(paths); i++) {
        g_autoptr(hs_edit) edit = hs_edit_new("Unset");

        hs_edit_unset(edit, paths[i]);
        refused(before, edit, paths[i]);
    }
}

static void
edit__refuses_places_that_are_not_there(void)
{
    static const char *const paths[] = {"",
                                        "load..name",
                                        "load.",
                                        "load.parts[1].mass_kg",
                                        "load.parts[x]",
                                        "load.parts[",
                                        "[0]",
                                        ".load",
                                        "load.parts[-1]",
                                        "format.x",
                                        "load.parts[0]x",
                                        "policy.site_limits[\"a]",
                                        "workers[99999999999999999999]"};
    g_autoptr(hs_document) before = small();

    for (guint i = 0; i < G_N_ELEMENTS(paths); i++) {
        g_autoptr(hs_edit) edit = hs_edit_new("Set");

        hs_edit_set_number(edit, paths[i], 1);
        refused(before, edit, paths[i]);
    }
}

static void
edit__refuses_figures_out_of_range(void)
{
    g_autoptr(hs_document) before = small(), kept = NULL;
    g_autoptr(hs_edit) edit = hs_edit_new("Mass"), none = hs_edit_new("None"),
                       deep = hs_edit_new("Deep");
    GString *nest = g_string_new(NULL);

    hs_edit_set_number(edit, "load.parts[0].mass_kg", -1);
    refused(before, edit, "load.parts[0].mass_kg");
    kept = hs_document_apply(before, edit, TRUE, NULL);
    g_assert_nonnull(kept);
    g_assert_null(hs_document_task(kept));
    g_assert_cmpuint(hs_document_faults(kept)->len, ==, 1);
    /* no file could hold these, so not even a faulty version does */
    hs_edit_set_number(none, "x-own", (double)NAN);
    refused(before, none, "$");
    for (int i = 0; i < 63; i++)
        g_string_append_c(nest, '[');
    for (int i = 0; i < 63; i++)
        g_string_append_c(nest, ']');
    hs_edit_set(deep, "x.y.z", json_from_string(nest->str, NULL));
    refused(before, deep, "$");
    g_string_free(nest, TRUE);
}

static void
edit__is_all_or_nothing(void)
{
    g_autoptr(hs_document) before = small();
    g_autoptr(hs_edit) edit = hs_edit_new("Two");

    hs_edit_set_number(edit, "load.parts[0].mass_kg", 50);
    hs_edit_remove(edit, "workers[5]");
    refused(before, edit, "workers[5]");
    g_assert_cmpfloat(hs_document_task(before)->load.parts[0].mass_kg, ==, 32.0);
}

static void
edit__moves_a_point_to_the_millimetre(void)
{
    g_autoptr(hs_document) before = small(), after = NULL;
    g_autoptr(hs_edit) edit = hs_edit_new("Point");
    g_autofree char *text = NULL;

    hs_edit_move_point(edit, 2, 3.14159, 0.70049);
    after = apply(before, edit);
    text = hs_document_to_text(after, NULL);
    g_assert_nonnull(strstr(text, "\"x_m\": 3.142, \"z_m\": 0.7,"));
}

static void
edit__can_be_used_again_on_another_version(void)
{
    g_autoptr(hs_document) before = small(), once = NULL, twice = NULL;
    g_autoptr(hs_edit) edit = hs_edit_new("Worker");

    hs_edit_insert(edit, "workers[0]", json_from_string("{\"id\":\"w0\"}", NULL));
    once = apply(before, edit);
    hs_document_unref(g_steal_pointer(&before));
    before = small();
    twice = apply(before, edit);
    g_assert_cmpstr(hs_document_digest(once), ==, hs_document_digest(twice));
    refused(once, edit, "workers[1].id"); /* the id would stand twice */
}

static void
edit__finds_a_free_id(void)
{
    g_autoptr(hs_document) document = small();
    g_autofree char *w = hs_free_id(document, "workers", "w1"),
                    *new = hs_free_id(document, "workers", "worker");
    g_autofree char *none = hs_free_id(document, "site.openings", "door");

    g_assert_cmpstr(w, ==, "w1-2");
    g_assert_cmpstr(new, ==, "worker");
    g_assert_cmpstr(none, ==, "door");
}

static void
edit__keeps_versions_apart_in_long_work(void)
{
    g_autoptr(hs_document) first = small();
    g_autoptr(GPtrArray) versions =
        g_ptr_array_new_with_free_func((GDestroyNotify)hs_document_unref);

    g_ptr_array_add(versions, hs_document_ref(first));
    for (int i = 1; i <= 500; i++) {
        g_autoptr(hs_edit) edit = hs_edit_new("Mass");

        hs_edit_set_number(edit, "load.parts[0].mass_kg", 10.0 + i * 0.1);
        g_ptr_array_add(versions, apply(versions->pdata[i - 1], edit));
    }
    for (int i = 1; i <= 500; i++)
        g_assert_cmpfloat(hs_document_task(versions->pdata[i])->load.parts[0].mass_kg, ==,
                          10.0 + i * 0.1);
}

int
main(int argc, char **argv)
{
    g_test_init(&argc, &argv, NULL);
#define ADD(name) g_test_add_func("/edit/" #name, edit__##name)
    ADD(sets_a_figure_and_shares_the_rest);
    ADD(makes_objects_and_lists_on_the_way);
    ADD(inserts_before_at_and_behind);
    ADD(moves_items);
    ADD(removes_items_and_unsets_members);
    ADD(leaves_everything_when_an_unset_does_not_fit);
    ADD(refuses_places_that_are_not_there);
    ADD(refuses_figures_out_of_range);
    ADD(is_all_or_nothing);
    ADD(moves_a_point_to_the_millimetre);
    ADD(can_be_used_again_on_another_version);
    ADD(finds_a_free_id);
    ADD(keeps_versions_apart_in_long_work);
    return g_test_run();
}

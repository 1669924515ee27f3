/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  are sets of limits read, refused, laid under a document and written as committed?
 * Answer:    the shipped files against the lists, every kind of fault with its path, each check that takes a site's figure.
 * Not here:  the command (tests/cli), the published figures (tests/unit/checks). */
#include "site_sets.h"

#include "assess.h"
#include "check.h"
#include "document.h"
#include "figures.h"
#include "limits_json.h"
#include "national_sets.h"
#include "near.h"
#include "small_document.h"
#include "spine_sets.h"

#include <string.h>

#define GOOD_LIMIT                                                                             \
    "{\"figure\":3000,\"unit\":\"N\",\"wording\":\"w\",\"source\":\"s\",\"confirmed\":true}"
#define DAY_WITH(more)                                                                         \
    "{\"day.mass\":{\"figure\":3000,\"unit\":\"kg\",\"wording\":\"w\",\"source\":\"s\"," more  \
    "}}"
#define SET_OF(limits)                                                                         \
    "{\"format\":\"handspike-limits\",\"version\":1,\"id\":\"i\",\"edition\":\"e\","           \
    "\"wording\":\"w\",\"limits\":" limits "}"

/* HS_WRITE_LIMITS=1 writes the file anew when core's lists have changed; look at the difference. */
static void
is_committed(const char *name, char *made)
{
    g_autofree char *path = g_build_filename(HS_SOURCE_ROOT, "data", "limits", name, NULL);
    g_autofree char *text = made, *committed = NULL;

    if (g_getenv("HS_WRITE_LIMITS") != NULL)
        g_assert_true(g_file_set_contents(path, text, -1, NULL));
    g_assert_true(g_file_get_contents(path, &committed, NULL, NULL));
    g_assert_true(g_str_equal(committed, text)); /* both are long: say only that they differ */
}

static void
shipped_lists_are_those_of_core(void)
{
    is_committed("default.json", hs_limits_default_json());
    is_committed("national.json", hs_limits_national_json());
    for (int i = 0; i < hs_national_set_count(); i++) {
        g_autofree char *name = g_strdup_printf("national/%s.json", hs_national_set_get(i)->id);

        is_committed(name, hs_limits_national_set_json(i));
    }
    is_committed("spine/spine-age-sex.json", hs_limits_spine_set_json());
}

static JsonArray *
figures_of(const char *name, JsonParser *parser)
{
    g_autofree char *path = g_build_filename(HS_SOURCE_ROOT, "data", "limits", name, NULL);

    g_assert_true(json_parser_load_from_file(parser, path, NULL));
    return json_object_get_array_member(json_node_get_object(json_parser_get_root(parser)),
                                        "figures");
}

static void
every_shipped_figure_says_how_it_is_known(void)
{
    const char *const names[] = {"default.json", "national.json"};
    int n_memory = 0;

    for (int f = 0; f < 2; f++) {
        g_autoptr(JsonParser) parser = json_parser_new();
        JsonArray *list = figures_of(names[f], parser);

        g_assert_cmpuint(json_array_get_length(list), >, 150);
        for (guint i = 0; i < json_array_get_length(list); i++) {
            JsonObject *o = json_array_get_object_element(list, i);
            const char *known = json_object_get_string_member(o, "known");
            const char *place = json_object_get_string_member(o, "place");

            g_assert_true(json_object_has_member(o, "value"));
            g_assert_true(json_object_has_member(o, f == 0 ? "check" : "country"));
            g_assert_cmpstr(json_object_get_string_member(o, "source"), !=, "");
            g_assert_true(strcmp(known, "seen") == 0 || strcmp(known, "memory") == 0);
            n_memory += strcmp(known, "memory") == 0;
            /* a source that was not read never carries a figure that was, but in a standard read in part */
            if (strcmp(known, "memory") == 0 && strstr(place, "unconfirmed") == NULL)
                g_assert_cmpstr(json_object_get_string_member(o, "figure"), ==,
                                "loadings a day up to which it is occasional");
        }
    }
    g_assert_cmpint(n_memory, >, 40);
}

static hs_site_set *
read_text(const char *text, GPtrArray *faults)
{
    return hs_site_set_from_bytes(text, strlen(text), faults);
}

static hs_site_set *
example(void)
{
    g_autoptr(GPtrArray) faults = g_ptr_array_new_with_free_func((GDestroyNotify)hs_fault_free);
    g_autofree char *path =
        g_build_filename(HS_SOURCE_ROOT, "data", "limits", "site-example.json", NULL);
    hs_site_set *set = hs_site_set_load(path, faults, NULL);

    g_assert_cmpuint(faults->len, ==, 0);
    g_assert_nonnull(set);
    return set;
}

static void
each_fault_is_told_with_its_path(void)
{
    static const struct {
        const char *text, *path, *word;
    } cases[] = {
        {"{", "$", ""},
        {"[]", "$", "is no object"},
        {"{}", "format", "is missing"},
        {SET_OF("{}"), "limits", "one entry or more"},
        {SET_OF("[]"), "limits", "one entry or more"},
        {SET_OF("{\"balance\":" GOOD_LIMIT "}"), "limits.balance",
         "takes no figure of the site"},
        {SET_OF("{\"none.such\":" GOOD_LIMIT "}"), "limits[\"none.such\"]",
         "takes no figure of the site"},
        {SET_OF("{\"spine.compression\":3000}"), "limits[\"spine.compression\"]", "an object"},
        {SET_OF("{\"spine.compression\":{\"figure\":0,\"unit\":\"N\",\"wording\":\"w\","
                "\"source\":\"s\",\"confirmed\":true}}"),
         "limits[\"spine.compression\"].figure", "a number above 0"},
        {SET_OF("{\"spine.compression\":{\"figure\":3,\"unit\":\"kN\",\"wording\":\"w\","
                "\"source\":\"s\",\"confirmed\":true}}"),
         "limits[\"spine.compression\"].unit", "\"N\""},
        {SET_OF("{\"spine.compression\":{\"figure\":3000,\"unit\":\"N\",\"wording\":\"\","
                "\"source\":\"s\",\"confirmed\":true}}"),
         "limits[\"spine.compression\"].wording", "a text that is not empty"},
        {SET_OF("{\"spine.compression\":{\"figure\":3000,\"unit\":\"N\",\"wording\":\"w\","
                "\"confirmed\":true}}"),
         "limits[\"spine.compression\"].source", "is missing"},
        {SET_OF("{\"spine.compression\":{\"figure\":3000,\"unit\":\"N\",\"wording\":\"w\","
                "\"source\":\"s\"}}"),
         "limits[\"spine.compression\"].confirmed", "true or false"},
        {SET_OF("{\"day.mass\":[]}"), "limits[\"day.mass\"]", "an object"},
        {SET_OF("{\"day.mass\":[3]}"), "limits[\"day.mass\"][0]", "is no object"},
        /* shear has one figure for all */
        {SET_OF("{\"spine.shear\":[" GOOD_LIMIT "]}"), "limits[\"spine.shear\"]", "an object"},
        {SET_OF("{\"spine.shear\":{\"figure\":3000,\"unit\":\"N\",\"wording\":\"w\","
                "\"source\":\"s\",\"confirmed\":true,\"when\":{\"sex\":\"male\"}}}"),
         "limits[\"spine.shear\"].when.sex", "no condition that this check takes"},
        {SET_OF(DAY_WITH("\"confirmed\":true,\"when\":{\"move\":\"lift\"}")),
         "limits[\"day.mass\"].when.move", "no condition that this check takes"},
        {SET_OF(DAY_WITH("\"confirmed\":true,\"when\":{\"sex\":\"men\"}")),
         "limits[\"day.mass\"].when.sex", "female, male"},
        {SET_OF(DAY_WITH("\"confirmed\":true,\"when\":{\"age_from_years\":-1}")),
         "limits[\"day.mass\"].when.age_from_years", "above 0"},
        {SET_OF(DAY_WITH("\"confirmed\":true,\"when\":{\"colour\":1}")),
         "limits[\"day.mass\"].when.colour", "no condition that is known"},
        {SET_OF(DAY_WITH("\"confirmed\":true,\"when\":3")), "limits[\"day.mass\"].when",
         "an object"},
        {SET_OF(DAY_WITH("\"confirmed\":true,\"known\":\"seen\"")),
         "limits[\"day.mass\"].known", "beside"},
        {SET_OF(DAY_WITH("\"known\":\"heard\"")), "limits[\"day.mass\"].known", "seen, memory"},
        {"{\"format\":\"handspike-limits\",\"version\":2,\"id\":\"i\",\"edition\":\"e\","
         "\"wording\":\"w\",\"limits\":{\"spine.compression\":" GOOD_LIMIT "}}",
         "version", "is 2; allowed: 1"},
    };

    for (gsize i = 0; i < G_N_ELEMENTS(cases); i++) {
        g_autoptr(GPtrArray) faults =
            g_ptr_array_new_with_free_func((GDestroyNotify)hs_fault_free);
        gboolean found = FALSE;

        g_assert_null(read_text(cases[i].text, faults));
        for (guint f = 0; f < faults->len; f++) {
            const hs_fault *fault = faults->pdata[f];

            g_test_message("%s: %s", fault->path, fault->text);
            found |= strcmp(fault->path, cases[i].path) == 0 &&
                     strstr(fault->text, cases[i].word) != NULL;
        }
        g_assert_true(found);
    }
}

static void
all_faults_come_at_once_and_unknown_keys_only_warn(void)
{
    g_autoptr(GPtrArray) faults = g_ptr_array_new_with_free_func((GDestroyNotify)hs_fault_free);
    g_autoptr(GPtrArray) warnings =
        g_ptr_array_new_with_free_func((GDestroyNotify)hs_fault_free);
    g_autoptr(hs_site_set) set = NULL;

    g_assert_null(read_text("{\"limits\":{\"balance\":{}}}", faults));
    /* format, version, id, edition, wording, limits.balance */
    g_assert_cmpuint(faults->len, ==, 6);
    set = read_text("{\"format\":\"handspike-limits\",\"version\":1,\"id\":\"i\","
                    "\"edition\":\"e\",\"wording\":\"w\",\"colour\":1,\"limits\":"
                    "{\"spine.compression\":" GOOD_LIMIT "}}",
                    warnings);
    g_assert_nonnull(set);
    g_assert_cmpuint(warnings->len, ==, 1);
    g_assert_true(((const hs_fault *)warnings->pdata[0])->is_warning);
}

/* Each set that ships reads without a fault, by its name alone, and holds what core's list has. */
static void
every_shipped_set_is_read_by_its_name(void)
{
    g_autoptr(GPtrArray) shipped = hs_site_shipped_list();
    int n = 0;

    g_assert_cmpuint(shipped->len, ==, (guint)hs_national_set_count() + 1);
    for (int i = 0; i < hs_national_set_count(); i++) {
        g_autoptr(GPtrArray) faults =
            g_ptr_array_new_with_free_func((GDestroyNotify)hs_fault_free);
        const char *id = hs_national_set_get(i)->id;
        g_autoptr(hs_site_set) set = hs_site_set_load(id, faults, NULL);
        int at = 0;

        g_assert_cmpuint(faults->len, ==, 0);
        g_assert_nonnull(set);
        g_assert_true(hs_site_set_is_shipped(set));
        g_assert_cmpstr(hs_site_set_id(set), ==, id);
        for (int c = 0; c < HS_N_CHECKS; c++)
            for (int e = 0; e < hs_national_entry_count(); e++) {
                const hs_national_entry *entry = hs_national_entry_get(e);
                const hs_site_figure *figure = hs_site_set_figure(set, at);
                const hs_national *row = hs_national_entry_row(entry);

                if (entry->set != i || (int)entry->check != c)
                    continue;
                g_assert_cmpint(figure->check, ==, entry->check);
                hs_near(id, figure->figure, row->figure * entry->factor, 0.05);
                g_assert_cmpint(memcmp(&figure->when, &entry->when, sizeof entry->when), ==, 0);
                g_assert_cmpint(figure->by_body_mass, ==, *row->unit == '\0');
                g_assert_cmpint(figure->known, ==,
                                hs_source_get(row->source)->confidence == HS_CONF_MEMORY
                                    ? HS_SITE_REMEMBERED
                                    : HS_SITE_READ);
                g_assert_nonnull(strstr(figure->source, hs_source_get(row->source)->title));
                at++;
                n++;
            }
        g_assert_cmpint(at, ==, hs_site_set_count(set));
    }
    g_assert_cmpint(n, ==, hs_national_entry_count());
    g_assert_false(hs_site_is_shipped("no-such-place"));
    g_assert_false(hs_site_is_shipped("../national/japan"));
    g_assert_false(hs_site_is_shipped(""));
}

/* The low back by age and sex: every figure of core's rows, for whom, and remembered. */
static void
the_set_by_age_and_sex_is_read_by_its_name(void)
{
    static const hs_sex sexes[] = {HS_SEX_FEMALE, HS_SEX_MALE};
    g_autoptr(GPtrArray) faults = g_ptr_array_new_with_free_func((GDestroyNotify)hs_fault_free);
    g_autoptr(hs_site_set) set = hs_site_set_load("spine-age-sex", faults, NULL);

    g_assert_cmpuint(faults->len, ==, 0);
    g_assert_nonnull(set);
    g_assert_true(hs_site_set_is_shipped(set));
    g_assert_cmpint(hs_site_set_count(set), ==, 2 * hs_spine_row_count());
    for (int i = 0; i < hs_site_set_count(set); i++) {
        const hs_site_figure *figure = hs_site_set_figure(set, i);
        hs_site_when when = hs_spine_row_when(i / 2, sexes[i % 2]);

        g_assert_cmpint(figure->check, ==, HS_CHECK_spine_compression);
        hs_near("figure", figure->figure, hs_spine_row_N(i / 2, sexes[i % 2]), 0);
        g_assert_cmpint(figure->known, ==, HS_SITE_REMEMBERED);
        g_assert_true(hs_site_figure_is_unconfirmed(figure));
        g_assert_cmpint(figure->when.sex, ==, when.sex);
        hs_near("from", figure->when.age_from_years, when.age_from_years, 0);
        hs_near("below", figure->when.age_below_years, when.age_below_years, 0);
        g_assert_nonnull(strstr(figure->source, hs_source_get(HS_SRC_spine_dortmund)->title));
    }
}

static double
figure_of(const hs_task *task, const char *id, gboolean *ret_is_unconfirmed)
{
    for (int i = 0; i < task->policy.n_site_limits; i++)
        if (strcmp(task->policy.site_limits[i].id, id) == 0) {
            *ret_is_unconfirmed = task->policy.site_limits[i].is_unconfirmed;
            return task->policy.site_limits[i].figure;
        }
    return HS_ABSENT;
}

/* policy.site_limits as the document's own. */
static hs_document *
small_with(const char *site_limits)
{
    g_autoptr(GPtrArray) faults = g_ptr_array_new_with_free_func((GDestroyNotify)hs_fault_free);
    g_autofree char *head = g_strndup(HS_SMALL_DOCUMENT, strlen(HS_SMALL_DOCUMENT) - 1);
    g_autofree char *text = g_strdup_printf(
        "%s,\"policy\":{\"team_rule\":\"gb\",\"site_limits\":{%s}}}", head, site_limits);
    hs_document *document = hs_document_from_bytes(text, strlen(text), faults);

    g_assert_nonnull(document);
    return document;
}

static void
the_documents_own_figures_win(void)
{
    g_autoptr(hs_site_set) set = example();
    g_autoptr(hs_document) document = small_with("\"lift.gb-guideline\":12");
    const hs_task *task = hs_document_task(document);
    hs_arena *arena = hs_arena_new();
    const hs_task *with = hs_site_set_apply(set, task, arena);
    gboolean is_unconfirmed = FALSE;
    g_autofree char *text = hs_site_set_to_text(set, task, HS_UNITS_SI);

    g_assert_cmpint(with->policy.n_site_limits, ==, 4);
    g_assert_cmpint(task->policy.n_site_limits, ==, 1);
    g_assert_cmpfloat(figure_of(with, "lift.gb-guideline", &is_unconfirmed), ==, 12);
    g_assert_false(is_unconfirmed);
    g_assert_cmpfloat(figure_of(with, "spine.compression", &is_unconfirmed), ==, 3000);
    g_assert_false(is_unconfirmed);
    g_assert_cmpfloat(figure_of(with, "lift.mil-std-1472", &is_unconfirmed), ==, 19);
    g_assert_true(is_unconfirmed);
    g_assert_nonnull(strstr(text, "edition 2026-1"));
    g_assert_nonnull(strstr(text, "not used: the document has its own figure"));
    g_assert_nonnull(strstr(text, "unconfirmed"));
    hs_arena_free(arena);
}

static hs_finding
finding_of(const hs_task *task, hs_arena *arena, hs_check_id check)
{
    hs_results results;
    hs_error error = {0};

    g_assert_cmpint(hs_assess(task, HS_ASSESS_PLAIN, arena, &results, &error), ==, HS_OK);
    for (int i = 0; i < results.options[0].n_findings; i++)
        if (results.options[0].findings[i].check == check)
            return results.options[0].findings[i];
    return (hs_finding){0};
}

/* Both ways: every check of the list uses the figure, and no other one does. */
static void
every_check_that_takes_a_figure_uses_it(void)
{
    g_autoptr(hs_document) document = small_with("");
    hs_task task = *hs_document_task(document);

    for (int c = 0; c < HS_N_CHECKS; c++) {
        hs_check_id check = (hs_check_id)c;
        hs_site_limit own = {.id = hs_check_get(check)->id, .figure = 1e-3};
        hs_arena *arena = hs_arena_new();
        hs_finding without, with;

        task.policy.n_site_limits = 0;
        without = finding_of(&task, arena, check);
        task.policy.n_site_limits = 1;
        task.policy.site_limits = &own;
        with = finding_of(&task, arena, check);
        g_test_message("%s: %g, %g", own.id, without.limit, with.limit);
        if (hs_limit_takes_own(check) && with.why == HS_WHY_COMPUTED) {
            g_assert_cmpfloat(with.limit, ==, 1e-3);
            g_assert_cmpint(with.source, ==, HS_SRC_limits_site_own);
            g_assert_cmpint(with.status, ==, HS_STATUS_BEYOND);
            own.is_unconfirmed = true;
            with = finding_of(&task, arena, check);
            g_assert_cmpint(with.confidence, ==, HS_CONF_MEMORY);
            g_assert_cmpint(with.source, ==, HS_SRC_limits_site_unconfirmed);
            g_assert_cmpint(with.status, ==, HS_STATUS_NEAR);
        } else if (!hs_limit_takes_own(check)) {
            g_assert_true(with.limit == without.limit ||
                          (!hs_has(with.limit) && !hs_has(without.limit)));
        } else { /* the equation is out of its scope for a team, whatever the figure */
            g_assert_true(check == HS_CHECK_lift_niosh_1994 ||
                          check == HS_CHECK_lift_niosh_composite);
        }
        hs_arena_free(arena);
    }
}

int
main(int argc, char **argv)
{
    g_test_init(&argc, &argv, NULL);
#define TEST(name) g_test_add_func("/site_limits/" #name, name)
    TEST(shipped_lists_are_those_of_core);
    TEST(every_shipped_figure_says_how_it_is_known);
    TEST(each_fault_is_told_with_its_path);
    TEST(all_faults_come_at_once_and_unknown_keys_only_warn);
    TEST(every_shipped_set_is_read_by_its_name);
    TEST(the_set_by_age_and_sex_is_read_by_its_name);
    TEST(the_documents_own_figures_win);
    TEST(every_check_that_takes_a_figure_uses_it);
#undef TEST
    return g_test_run();
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  do results leave the program to the letter of the file format?
 * Answer:    results made by hand are written and read back: keys, absent figures, words, numbers in every locale.
 * Not here:  whether the figures are right (core's tests). */
#include "near.h"
#include "results_json.h"
#include "small_document.h"

#include <locale.h>
#include <math.h>
#include <string.h>

/* Results with one option, two samples, and gaps on purpose. */
typedef struct {
    hs_document *document;
    hs_arena *arena;
    hs_grip_sample grips[2];
    hs_bearer_sample bearers[2];
    hs_sample samples[2];
    hs_finding findings[3];
    hs_option_result option;
    hs_break_even break_even[2];
    hs_message cautions[1];
    hs_results results;
} made;

static void
fill_bearers(made *at)
{
    for (int i = 0; i < 2; i++) {
        hs_bearer_sample *bearer = &at->bearers[i];

        *bearer = (hs_bearer_sample){.share_N = 117.5,
                                     .share_least_N = 100.0,
                                     .share_most_N = 130.0,
                                     .hand_force_N = 117.5,
                                     .hand_push_N = 0.0,
                                     .felt_force_N = i == 0 ? 29.7 : HS_ABSENT,
                                     .suit_force_N = HS_ABSENT,
                                     .ground_force_N = 960.25,
                                     .balance_margin_m = HS_ABSENT,
                                     .resultant_m = {0.1, -0.2},
                                     .l5s1_moment_Nm = HS_ABSENT,
                                     .compression_N = HS_ABSENT,
                                     .shear_N = HS_ABSENT};
    }
    at->bearers[0].n_base = 3;
    at->bearers[0].base_m[1] = (hs_vec2){0.25, 0.0};
    at->bearers[0].has_pose = true;
    for (int i = 0; i < HS_N_JOINTS; i++)
        at->bearers[0].joints[i] = (hs_joint_result){50.0 + i, 100.0, 0.5};
    at->bearers[0].joints[HS_JOINT_KNEE] = (hs_joint_result){HS_ABSENT, HS_ABSENT, HS_ABSENT};
    at->bearers[0].compression_N = 2345.6789012345;
    at->bearers[0].power_lost = (hs_power_lost){.is_known = true,
                                                .state = HS_LOST_LIMP,
                                                .felt_force_N = 377.0,
                                                .hold_s = INFINITY,
                                                .needed_s = 13.0};
}

static void
fill_findings(made *at)
{
    at->findings[0] = (hs_finding){.check = HS_CHECK_share, .status = HS_STATUS_NONE};
    at->findings[1] = (hs_finding){
        .check = HS_CHECK_spine_compression,
        .bearer = 0,
        .route = 1.25,
        .t_s = 0.5,
        .value = 3912.0,
        .limit = 3400.0,
        .ratio = 3912.0 / 3400.0,
        .unit = "N",
        .status = HS_STATUS_BEYOND,
        .why = HS_WHY_COMPUTED,
        .confidence = HS_CONF_SEEN,
        .source = HS_SRC_frey_law_2010,
        .text = {.reason = HS_REASON_felt_missing, .name = {"suits[0].gain.hands \"x\"\n"}}};
    at->findings[2] = (hs_finding){.check = HS_CHECK_lift_niosh_1994,
                                   .bearer = -1,
                                   .route = HS_ABSENT,
                                   .t_s = HS_ABSENT,
                                   .value = 3.4,
                                   .limit = HS_ABSENT,
                                   .ratio = HS_ABSENT,
                                   .unit = "",
                                   .status = HS_STATUS_NOT_JUDGED,
                                   .why = HS_WHY_SCOPE,
                                   .confidence = HS_CONF_COMMON_PRACTICE};
}

static made *
make(void)
{
    made *at = g_new0(made, 1);
    g_autoptr(GPtrArray) faults = g_ptr_array_new_with_free_func((GDestroyNotify)hs_fault_free);

    at->document = hs_document_from_bytes(HS_SMALL_DOCUMENT, strlen(HS_SMALL_DOCUMENT), faults);
    g_assert_nonnull(at->document);
    at->arena = hs_arena_new();
    at->grips[0] = (hs_grip_sample){0, 117.5};
    at->grips[1] = (hs_grip_sample){1, 118.5};
    fill_bearers(at);
    fill_findings(at);
    for (int i = 0; i < 2; i++)
        at->samples[i] = (hs_sample){.t_s = i,
                                     .route = 1.0 + i,
                                     .x_m = 0.1,
                                     .z_m = 0.5,
                                     .pitch_deg = 0.0,
                                     .a_x_m_s2 = 0.25,
                                     .a_z_m_s2 = -0.5,
                                     .combined_kg = 195.0,
                                     .combined_m = {0.1, 0.0, i == 0 ? 0.9 : HS_ABSENT},
                                     .n_grips = 2,
                                     .grips = at->grips,
                                     .bearers = at->bearers};
    at->option = (hs_option_result){.id = "crew",
                                    .is_baseline = true,
                                    .asked = &hs_document_task(at->document)->options[0],
                                    .n_samples = 2,
                                    .samples = at->samples,
                                    .n_findings = 3,
                                    .findings = at->findings,
                                    .totals = {HS_ABSENT, 300.5, 24.0, HS_ABSENT},
                                    .verdict = {.status = HS_VERDICT_NOT_SUPPORTED,
                                                .n_reasons = 1,
                                                .reasons = {HS_CHECK_spine_compression}}};
    at->break_even[0] =
        (hs_break_even){"crew", "mass_kg", 19.5, HS_CHECK_spine_compression, false};
    at->break_even[1] = (hs_break_even){"crew", "reach_m", HS_ABSENT, HS_CHECK_share, true};
    at->cautions[0] = (hs_message){.reason = HS_REASON_caution_law};
    at->results = (hs_results){.load = {.mass_kg = 24.0, .centre_m = {0.0, 0.0, HS_ABSENT}},
                               .n_options = 1,
                               .options = &at->option,
                               .n_break_even = 2,
                               .break_even = at->break_even,
                               .assumptions = {.arena = at->arena},
                               .n_cautions = 1,
                               .cautions = at->cautions};
    hs_assume(&at->results.assumptions, 2.0, NULL,
              (hs_message){.reason = HS_REASON_assume_hands}, "load.grips[%d].hands", 0);
    hs_assume(&at->results.assumptions, HS_ABSENT, "fair",
              (hs_message){.reason = HS_REASON_assume_coupling}, "load.grips[0].coupling");
    return at;
}

static void
made_free(made *at)
{
    hs_document_unref(at->document);
    hs_arena_free(at->arena);
    g_free(at);
}

static JsonNode *
written(const made *at)
{
    gsize length = 0;
    g_autofree char *text = hs_results_to_json(at->document, &at->results, &length);
    g_autoptr(GError) error = NULL;
    JsonNode *root;

    g_assert_cmpuint(strlen(text), ==, length);
    g_assert_null(strstr(text, "nan"));
    g_assert_null(strstr(text, "inf,"));
    g_assert_null(strstr(text, "null"));
    root = json_from_string(text, &error);
    g_assert_no_error(error);
    return root;
}

static JsonObject *
object_at(JsonNode *root, const char *path)
{
    g_autoptr(JsonNode) found = json_path_query(path, root, NULL);
    JsonArray *all = json_node_get_array(found);

    g_assert_cmpuint(json_array_get_length(all), ==, 1);
    return json_array_get_object_element(all, 0);
}

static void
has_keys(JsonObject *object, const char *keys)
{
    g_autoptr(GList) members = json_object_get_members(object);
    GString *text = g_string_new(NULL);

    for (GList *at = members; at != NULL; at = at->next)
        g_string_append_printf(text, "%s%s", text->len > 0 ? " " : "", (const char *)at->data);
    g_assert_cmpstr(text->str, ==, keys);
    g_string_free(text, TRUE);
}

static void
results_json__has_the_keys_of_the_file_format(void)
{
    made *at = make();
    g_autoptr(JsonNode) root = written(at);

    has_keys(json_node_get_object(root),
             "format version document load options comparison assumptions cautions");
    has_keys(object_at(root, "$.document"), "title digest");
    has_keys(object_at(root, "$.options[0]"), "id baseline samples findings totals verdict");
    has_keys(object_at(root, "$.options[0].samples[0]"),
             "t_s route load combined grips bearers");
    has_keys(object_at(root, "$.options[0].samples[0].load"),
             "x_m z_m pitch_deg acceleration_m_s2");
    has_keys(object_at(root, "$.options[0].samples[0].bearers[0]"),
             "id share_N share_range_N hand_force_N hand_push_N felt_force_N ground_force_N "
             "resultant_m base_m l5s1 pose "
             "joints power_lost");
    has_keys(object_at(root, "$.options[0].samples[0].bearers[0].pose"),
             "ankle knee hip l5s1 shoulder elbow hand neck");
    has_keys(object_at(root, "$.options[0].samples[0].bearers[0].power_lost"),
             "state felt_force_N needed_s");
    has_keys(object_at(root, "$.options[0].verdict"), "status suit_only reasons conditions");
    has_keys(object_at(root, "$.assumptions[0]"), "path value text");
    made_free(at);
}

static void
results_json__what_is_not_known_is_absent(void)
{
    made *at = make();
    g_autoptr(JsonNode) root = written(at);
    JsonObject *other = object_at(root, "$.options[0].samples[0].bearers[1]");

    has_keys(other,
             "id share_N share_range_N hand_force_N hand_push_N ground_force_N resultant_m");
    has_keys(object_at(root, "$.options[0].samples[0].bearers[0].l5s1"), "compression_N");
    has_keys(object_at(root, "$.options[0].samples[0].bearers[0].joints"),
             "ankle hip l5s1 shoulder elbow");
    has_keys(object_at(root, "$.load"), "mass_kg centre_m");
    g_assert_cmpuint(json_array_get_length(
                         json_object_get_array_member(object_at(root, "$.load"), "centre_m")),
                     ==, 2);
    has_keys(object_at(root, "$.options[0].totals"), "metabolic_W mass_moved_kg_per_h");
    /* what never turns has no figure */
    g_assert_cmpuint(json_array_get_length(json_object_get_array_member(
                         object_at(root, "$.comparison"), "break_even")),
                     ==, 1);
    made_free(at);
}

static void
results_json__a_finding_is_whole(void)
{
    made *at = make();
    g_autoptr(JsonNode) root = written(at);
    JsonArray *findings =
        json_object_get_array_member(object_at(root, "$.options[0]"), "findings");
    JsonObject *spine = json_array_get_object_element(findings, 0),
               *lift = json_array_get_object_element(findings, 1);

    /* what was not asked is no finding */
    g_assert_cmpuint(json_array_get_length(findings), ==, 2);
    has_keys(spine, "check bearer route t_s value limit unit ratio status why confidence "
                    "source text working");
    g_assert_cmpstr(json_object_get_string_member(spine, "check"), ==, "spine.compression");
    g_assert_cmpstr(json_object_get_string_member(spine, "bearer"), ==, "A");
    g_assert_cmpstr(json_object_get_string_member(spine, "status"), ==, "beyond");
    g_assert_cmpstr(json_object_get_string_member(spine, "confidence"), ==, "seen");
    g_assert_nonnull(
        strstr(json_object_get_string_member(spine, "text"), "suits[0].gain.hands \"x\"\n"));
    has_keys(lift, "check value unit status why confidence text working");
    g_assert_cmpstr(json_object_get_string_member(lift, "status"), ==, "not_judged");
    g_assert_cmpstr(json_object_get_string_member(lift, "why"), ==, "scope");
    g_assert_cmpstr(json_object_get_string_member(lift, "confidence"), ==, "common_practice");
    made_free(at);
}

static void
results_json__doubt_stands_only_when_asked(void)
{
    made *at = make();
    const hs_doubt_check check = {HS_CHECK_balance, 0.94, 0.01, 0.05, 0.09};
    const hs_driver driver = {"mass_kg", 0.7};
    const hs_doubt_option doubt = {"crew", 1, 1, &check, &driver};
    g_autoptr(JsonNode) without = written(at);
    g_autoptr(JsonNode) with = NULL;

    g_assert_false(json_object_has_member(json_node_get_object(without), "doubt"));
    at->results.n_doubt = 1;
    at->results.doubt = &doubt;
    with = written(at);
    has_keys(object_at(with, "$.doubt.options[0]"), "id checks drivers");
    has_keys(object_at(with, "$.doubt.options[0].checks[0]"),
             "check p_within value_p05 value_p50 value_p95");
    has_keys(object_at(with, "$.doubt.options[0].drivers[0]"), "input share");
    made_free(at);
}

static void
results_json__numbers_are_the_same_in_every_locale(void)
{
    made *at = make();
    g_autofree char *plain = hs_results_to_json(at->document, &at->results, NULL);
    g_autofree char *other = NULL;

    g_assert_nonnull(strstr(plain, "\"compression_N\":2345.6789012345"));
    g_assert_nonnull(strstr(plain, "\"acceleration_m_s2\":[0.25,-0.5]"));
    if (setlocale(LC_NUMERIC, "de_DE.UTF-8") == NULL)
        g_test_message("no locale with a comma here");
    other = hs_results_to_json(at->document, &at->results, NULL);
    setlocale(LC_NUMERIC, "C");
    g_assert_nonnull(strstr(other, "\"compression_N\":2345.6789012345"));
    made_free(at);
}

static void
results_json__the_text_fits_a_mail(void)
{
    made *at = make();
    g_autofree char *text = hs_results_to_text(at->document, &at->results, HS_UNITS_SI);
    g_auto(GStrv) lines = g_strsplit(text, "\n", -1);

    g_assert_true(g_str_has_prefix(text, "Box to the bench\n================\n"));
    g_assert_nonnull(strstr(text, "Verdict: Not supported"));
    g_assert_nonnull(strstr(text, "Low back, compression: beyond, 3.9 of 3.4"));
    g_assert_nonnull(strstr(text, "felt 30"));
    g_assert_nonnull(strstr(text, "load.grips[0].coupling"));
    for (int i = 0; lines[i] != NULL; i++)
        g_assert_cmpint(g_utf8_strlen(lines[i], -1), <=, 78);
    made_free(at);
}

int
main(int argc, char **argv)
{
    setlocale(LC_ALL, "C.UTF-8");
    g_test_init(&argc, &argv, NULL);
    g_test_add_func("/results_json/has_the_keys_of_the_file_format",
                    results_json__has_the_keys_of_the_file_format);
    g_test_add_func("/results_json/what_is_not_known_is_absent",
                    results_json__what_is_not_known_is_absent);
    g_test_add_func("/results_json/a_finding_is_whole", results_json__a_finding_is_whole);
    g_test_add_func("/results_json/doubt_stands_only_when_asked",
                    results_json__doubt_stands_only_when_asked);
    g_test_add_func("/results_json/numbers_are_the_same_in_every_locale",
                    results_json__numbers_are_the_same_in_every_locale);
    g_test_add_func("/results_json/the_text_fits_a_mail", results_json__the_text_fits_a_mail);
    return g_test_run();
}

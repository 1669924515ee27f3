/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  does a scene say what it should?
 * Answer:    dumps against tests/scenes (HS_UPDATE_GOLDENS=1 writes them: look before you commit), and what must hold of all.
 * Not here:  pixels (test_paint.c), labels (test_label.c). */
#include "scene_fixture.h"
#include "scene_internal.h"

#include <string.h>

static void
compare_with_golden(const char *name, hs_scene *scene_taken)
{
    g_autoptr(hs_scene) scene = scene_taken;
    g_autofree char *dump = hs_scene_dump(scene), *golden = NULL;
    g_autofree char *path = g_strdup_printf("%s/tests/scenes/%s.txt", HS_SOURCE_ROOT, name);

    if (g_getenv("HS_UPDATE_GOLDENS"))
        g_assert_true(g_file_set_contents(path, dump, -1, NULL));
    g_assert_true(g_file_get_contents(path, &golden, NULL, NULL));
    if (strcmp(dump, golden) != 0) {
        g_auto(GStrv) a = g_strsplit(golden, "\n", -1), b = g_strsplit(dump, "\n", -1);

        for (int i = 0; a[i] && b[i]; i++)
            if (strcmp(a[i], b[i]) != 0) {
                g_test_message("%s, line %d\n  was %s\n  is  %s", name, i + 1, a[i], b[i]);
                break;
            }
        g_test_fail();
    }
}

static void
scene__says_what_its_golden_says(void)
{
    static const struct {
        const char *name;
        int option;
        double route;
        guint more;
    } cases[] = {{"crew-carrying", HS_FIXTURE_CREW, 2.5, 1u << HS_LAYER_lever},
                 {"suited-lifting", HS_FIXTURE_SUITED, 1.0, 1u << HS_LAYER_path},
                 {"no-posture", HS_FIXTURE_LOST, 4.0, 0},
                 {"at-the-sides", HS_FIXTURE_ASIDE, 2.0, 0}};

    for (guint i = 0; i < G_N_ELEMENTS(cases); i++) {
        hs_scene_request request = hs_fixture_request(cases[i].option, cases[i].route);

        request.layers |= cases[i].more;
        compare_with_golden(cases[i].name, hs_scene_build(&request));
    }
}

static void
scene__plan_says_what_its_golden_says(void)
{
    hs_scene_request request = hs_fixture_request(HS_FIXTURE_CREW, 2.5);

    compare_with_golden("plan-crew", hs_plan_build(&request));
}

/* Read back from the text that people see; two digits after the point are shown. */
static void
scene__dimension_is_as_long_as_its_number(void)
{
    int n = 0;

    for (int o = 0; o < HS_FIXTURE_N_OPTIONS; o++) {
        hs_scene_request request = hs_fixture_request(o, 3.4);

        request.layers |= 1u << HS_LAYER_lever;
        request.chosen_point = 2;
        g_autoptr(hs_scene) scene = hs_scene_build(&request);

        for (guint i = 0; i < scene->prims->len; i++) {
            const hs_prim *prim = &g_array_index(scene->prims, hs_prim, i);

            if (prim->kind != HS_PRIM_DIMENSION)
                continue;
            const char *digits = strpbrk(prim->text, "0123456789");
            double length_m = prim->is_upright ? fabs(prim->to.y - prim->at.y)
                                               : fabs(prim->to.x - prim->at.x);

            g_assert_nonnull(digits);
            g_assert_cmpfloat_with_epsilon(g_ascii_strtod(digits, NULL), length_m,
                                           0.005 + 1e-9);
            n++;
        }
    }
    g_assert_cmpint(n, >=, 8);
}

static void
scene__reach_is_the_reach_of_the_results(void)
{
    hs_scene_request request = hs_fixture_request(HS_FIXTURE_SUITED, 2.0);
    int n = 0;

    request.layers |= 1u << HS_LAYER_lever;
    g_autoptr(hs_scene) scene = hs_scene_build(&request);

    for (guint i = 0; i < scene->prims->len; i++) {
        const hs_prim *prim = &g_array_index(scene->prims, hs_prim, i);

        if (prim->kind == HS_PRIM_DIMENSION && g_str_has_prefix(prim->text, "reach")) {
            g_assert_cmpfloat_with_epsilon(fabs(prim->to.x - prim->at.x), 0.38, 1e-9);
            n++;
        }
    }
    g_assert_cmpint(n, ==, 1);
}

static double
sum_of_arrows_N(const hs_scene *scene)
{
    double sum_N = 0;

    for (guint i = 0; i < scene->prims->len; i++) {
        const hs_prim *prim = &g_array_index(scene->prims, hs_prim, i);

        if (prim->kind == HS_PRIM_ARROW)
            sum_N += prim->force_N.y;
    }
    return sum_N;
}

/* At rest what is drawn upwards is what is drawn downwards: crew, suit and felt together carry the weight. */
static void
scene__arrows_are_in_balance(void)
{
    for (int o = 0; o < HS_FIXTURE_N_OPTIONS; o++) {
        hs_scene_request request = hs_fixture_request(o, 2.0);
        g_autoptr(hs_scene) scene = hs_scene_build(&request);

        g_assert_cmpfloat_with_epsilon(sum_of_arrows_N(scene), 0, 1e-6);
    }
}

/* Both lines of the path end in the soles: their sum is the force on the floor. */
static void
scene__path_ends_in_the_soles(void)
{
    hs_scene_request request = hs_fixture_request(HS_FIXTURE_SUITED, 2.0);
    double person_N = 0, suit_N = 0;

    request.layers |= 1u << HS_LAYER_path;
    g_autoptr(hs_scene) scene = hs_scene_build(&request);

    for (guint i = 0; i < scene->prims->len; i++) {
        const hs_prim *prim = &g_array_index(scene->prims, hs_prim, i);

        if (prim->kind == HS_PRIM_BAND && prim->stroke == HS_INK_PERSON)
            person_N = prim->size; /* the last one is the leg's */
        else if (prim->kind == HS_PRIM_BAND)
            suit_N = prim->size;
    }
    g_assert_cmpfloat_with_epsilon(person_N + suit_N,
                                   request.results->options[HS_FIXTURE_SUITED]
                                       .samples[request.sample]
                                       .bearers[0]
                                       .ground_force_N,
                                   1e-6);
    g_assert_cmpfloat(suit_N, >, 300);
}

static void
scene__switched_off_layer_adds_nothing(void)
{
    for (int l = 0; l < HS_N_LAYERS; l++) {
        hs_scene_request request = hs_fixture_request(HS_FIXTURE_SUITED, 2.0);

        request.layers = (1u << HS_N_LAYERS) - 1u - (1u << l);
        g_autoptr(hs_scene) without = hs_scene_build(&request);

        request.layers = (1u << HS_N_LAYERS) - 1u;
        g_autoptr(hs_scene) with = hs_scene_build(&request);

        for (guint i = 0; i < without->prims->len; i++)
            g_assert_cmpint((int)g_array_index(without->prims, hs_prim, i).layer, !=, l);
        g_assert_cmpuint(with->prims->len, >, without->prims->len);
    }
}

static void
scene__power_off_shows_what_the_hands_then_hold(void)
{
    hs_scene_request request = hs_fixture_request(HS_FIXTURE_SUITED, 2.0);

    request.power_off = TRUE;
    g_autoptr(hs_scene) scene = hs_scene_build(&request);
    g_autofree char *dump = hs_scene_dump(scene);

    g_assert_nonnull(strstr(dump, "\"0\302\240N felt\""));
    g_assert_nonnull(strstr(dump, "by the locked suit"));
}

int
main(int argc, char **argv)
{
    g_test_init(&argc, &argv, NULL);
    g_test_add_func("/scene/says_what_its_golden_says", scene__says_what_its_golden_says);
    g_test_add_func("/scene/plan_says_what_its_golden_says",
                    scene__plan_says_what_its_golden_says);
    g_test_add_func("/scene/dimension_is_as_long_as_its_number",
                    scene__dimension_is_as_long_as_its_number);
    g_test_add_func("/scene/reach_is_the_reach_of_the_results",
                    scene__reach_is_the_reach_of_the_results);
    g_test_add_func("/scene/arrows_are_in_balance", scene__arrows_are_in_balance);
    g_test_add_func("/scene/path_ends_in_the_soles", scene__path_ends_in_the_soles);
    g_test_add_func("/scene/switched_off_layer_adds_nothing",
                    scene__switched_off_layer_adds_nothing);
    g_test_add_func("/scene/power_off_shows_what_the_hands_then_hold",
                    scene__power_off_shows_what_the_hands_then_hold);
    return g_test_run();
}

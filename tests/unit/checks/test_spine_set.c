/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  does the set by age and sex stand in place of the one figure for the low back, for this worker and for nobody else?
 * Answer:    every row for its sex and ages: inside, near, beyond; each condition broken; a figure that is not confirmed decides nothing.
 * Not here:  the file of the set (tests/unit/model/test_site_limits.c), the compression itself (tests/unit/body). */
#include "one_bearer.h"
#include "spine_sets.h"

#define N_ROWS 10 /* five ages, two sexes */

typedef struct {
    one o;
    hs_site_limit limits[N_ROWS];
    hs_site_when whens[N_ROWS];
} scene;

/* The set as the file has it; scale: of all figures; is_confirmed: a site that took it over as its own. */
static void
make(scene *s, double mass_kg, double scale, bool is_confirmed)
{
    one_make(&s->o, mass_kg);
    s->o.bearer.suit = -1;
    for (int i = 0; i < N_ROWS; i++) {
        hs_sex sex = i % 2 == 0 ? HS_SEX_FEMALE : HS_SEX_MALE;

        s->whens[i] = hs_spine_row_when(i / 2, sex);
        s->limits[i] = (hs_site_limit){.id = "spine.compression",
                                       .figure = scale * hs_spine_row_N(i / 2, sex),
                                       .is_published = !is_confirmed,
                                       .is_unconfirmed = !is_confirmed,
                                       .set = "the set",
                                       .wording = "the row",
                                       .when = &s->whens[i]};
    }
    s->o.task.policy.site_limits = s->limits;
    s->o.task.policy.n_site_limits = N_ROWS;
}

static hs_finding
ask(scene *s, hs_sex sex, double age_years)
{
    s->o.worker.sex = sex;
    s->o.worker.age_years = age_years;
    return one_ask(&s->o, HS_CHECK_spine_compression);
}

static void
each_sex_and_age_has_its_row(void)
{
    /* age, women, men: figures as the source is remembered (lists/limits_spine.def), between the rows the next older one */
    static const double rows[][3] = {
        {20, 4400, 6000}, {20.9, 4400, 6000}, {21, 3800, 5000}, {30.5, 3800, 5000},
        {31, 3200, 4100}, {40, 3200, 4100},   {41, 2500, 3200}, {50.9, 2500, 3200},
        {51, 1800, 2300}, {60, 1800, 2300},   {75, 1800, 2300},
    };
    scene s;

    g_assert_cmpint(2 * hs_spine_row_count(), ==, N_ROWS);
    make(&s, 10, 1.0, false);
    for (gsize i = 0; i < G_N_ELEMENTS(rows); i++)
        for (int m = 0; m < 2; m++) {
            hs_sex sex = m == 0 ? HS_SEX_FEMALE : HS_SEX_MALE;
            hs_finding f = ask(&s, sex, rows[i][0]);

            hs_near("limit", f.limit, rows[i][1 + m], 0);
            hs_near("the working's row", hs_spine_by_age_N(sex, rows[i][0]), rows[i][1 + m], 0);
            hs_near("ratio", f.ratio, f.value / rows[i][1 + m], 1e-12);
            g_assert_cmpint(f.confidence, ==, HS_CONF_MEMORY);
            g_assert_cmpint(f.source, ==, HS_SRC_limits_set_memory);
            g_assert_cmpint(f.text.reason, ==, HS_REASON_spine_set_unsure);
            g_assert_cmpstr(f.text.name[0], ==, "the set");
            g_assert_cmpstr(f.text.name[1], ==, "the row");
        }
    one_free(&s.o);
}

/* Below 20 the table has no row; with women's rows alone it says nothing of men. */
static void
the_set_is_silent_for_others(void)
{
    scene s;
    hs_finding f;

    make(&s, 10, 1.0, false);
    f = ask(&s, HS_SEX_MALE, 19.9);
    EXPECT(f, NOT_JUDGED, limits_set_silent);
    g_assert_cmpint(f.why, ==, HS_WHY_SCOPE);
    g_assert_cmpstr(f.text.name[0], ==, "the set");
    g_assert_true(hs_has(f.value));
    g_assert_false(hs_has(hs_spine_by_age_N(HS_SEX_MALE, 19.9)));
    for (int i = 1; i < N_ROWS; i += 2)
        s.whens[i].sex = HS_SEX_FEMALE;
    f = ask(&s, HS_SEX_MALE, 45);
    EXPECT(f, NOT_JUDGED, limits_set_silent);
    g_assert_cmpint(ask(&s, HS_SEX_FEMALE, 45).why, ==, HS_WHY_COMPUTED);
    one_free(&s.o);
}

/* Taken over by the site: every row judges like a figure of its own and has a remedy (model/test_body_remedies.c applies them). */
static void
a_confirmed_row_decides(void)
{
    static const double times[] = {0.8, 0.95, 1.2};
    static const hs_finding_status wanted[] = {HS_STATUS_WITHIN, HS_STATUS_NEAR,
                                               HS_STATUS_BEYOND};
    scene s;

    for (int i = 0; i < N_ROWS; i++)
        for (int t = 0; t < 3; t++) {
            double age_years = hs_spine_row_years(i / 2);
            hs_sex sex = i % 2 == 0 ? HS_SEX_FEMALE : HS_SEX_MALE;
            hs_finding f;

            make(&s, 12, 1.0, true);
            f = ask(&s, sex, age_years);
            s.limits[i].figure = f.value / times[t];
            f = ask(&s, sex, age_years);
            hs_near("ratio", f.ratio, times[t], 1e-9);
            g_assert_cmpint(f.status, ==, wanted[t]);
            g_assert_cmpint(f.text.reason, ==, HS_REASON_spine_site_is);
            if (f.status != HS_STATUS_WITHIN)
                g_assert_cmpint(f.remedy.reason, !=, HS_REASON_none);
            one_free(&s.o);
        }
}

/* Remembered: beyond it near at most; below it, but near or beyond the published 3.4 kN, near as well. */
static void
a_remembered_row_decides_nothing_alone(void)
{
    scene s;
    hs_finding f;

    make(&s, 10, 0.5, false);
    f = ask(&s, HS_SEX_FEMALE, 60);
    g_assert_cmpfloat(f.ratio, >, 1.0);
    g_assert_cmpfloat(f.value, <, 0.9 * HS_SPINE_COMPRESSION_N);
    g_assert_cmpint(f.status, ==, HS_STATUS_NEAR);
    g_assert_cmpint(f.remedy.reason, !=, HS_REASON_none);
    one_free(&s.o);
    make(&s, 28, 1.0, false);
    f = ask(&s, HS_SEX_MALE, 20);
    g_test_message("28 kg: %.0f N of %.0f N", f.value, f.limit);
    g_assert_cmpfloat(f.ratio, <, 0.9);
    g_assert_cmpfloat(f.value, >, HS_SPINE_COMPRESSION_N);
    g_assert_cmpint(f.status, ==, HS_STATUS_NEAR);
    g_assert_cmpint(f.remedy.reason, !=, HS_REASON_none);
    s.o.task.policy.n_site_limits = 0;
    g_assert_cmpint(ask(&s, HS_SEX_MALE, 20).status, ==, HS_STATUS_BEYOND);
    one_free(&s.o);
    make(&s, 5, 1.0, false);
    g_assert_cmpint(ask(&s, HS_SEX_MALE, 20).status, ==, HS_STATUS_WITHIN);
    one_free(&s.o);
}

/* The force is one in the body: in a suit and on the knees it is asked too; a document's own figure is no set's. */
static void
words_for_knees_suits_and_documents(void)
{
    scene s;
    hs_finding f;

    make(&s, 10, 1.0, false);
    s.o.bearer.suit = 0;
    g_assert_cmpint(ask(&s, HS_SEX_MALE, 45).text.reason, ==, HS_REASON_spine_set_unsure);
    s.o.bearer.suit = -1;
    s.o.option.stance = HS_STANCE_KNEELING;
    f = ask(&s, HS_SEX_MALE, 45);
    if (f.why == HS_WHY_COMPUTED)
        g_assert_cmpint(f.text.reason, ==, HS_REASON_spine_set_kneeling);
    g_assert_cmpint(f.status, !=, HS_STATUS_WITHIN);
    one_free(&s.o);
    make(&s, 10, 1.0, true);
    s.limits[0] = (hs_site_limit){.id = "spine.compression", .figure = 3000};
    s.o.task.policy.n_site_limits = 1;
    f = ask(&s, HS_SEX_MALE, 45);
    g_assert_cmpint(f.text.reason, ==, HS_REASON_spine_site_is);
    hs_near("own", f.limit, 3000, 0);
    s.limits[0].is_unconfirmed = true;
    g_assert_cmpint(ask(&s, HS_SEX_MALE, 45).text.reason, ==, HS_REASON_spine_site_unsure);
    one_free(&s.o);
}

int
main(int argc, char **argv)
{
    g_test_init(&argc, &argv, NULL);
#define TEST(name) g_test_add_func("/spine_set/" #name, name)
    TEST(each_sex_and_age_has_its_row);
    TEST(the_set_is_silent_for_others);
    TEST(a_confirmed_row_decides);
    TEST(a_remembered_row_decides_nothing_alone);
    TEST(words_for_knees_suits_and_documents);
#undef TEST
    return g_test_run();
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  does each figure of a country's set decide for whom and what it is said, and for nobody else?
 * Answer:    for every entry a worker, a day and a way that fit it: a load below, near and beyond; then one condition after the other broken.
 * Not here:  the files of the sets (tests/unit/model/test_site_limits.c). */
#include "gb.h"
#include "national_sets.h"
#include "one_bearer.h"

static const int one_grip[] = {0};

typedef struct {
    one o;
    hs_site_limit limit;
    hs_site_when when;
} scene;

static double
figure_of(const hs_national_entry *entry)
{
    return hs_national_entry_row(entry)->figure * entry->factor;
}

static gboolean
is_share(const hs_national_entry *entry)
{
    return *hs_national_entry_row(entry)->unit == '\0';
}

/* Hands over the floor: the grips are 0.2 m above the load's base. */
static void
put_hands(scene *s, double low_m, double high_m)
{
    s->o.points[0].z_m = s->o.points[3].z_m = low_m - 0.2;
    s->o.points[1].z_m = s->o.points[2].z_m = high_m - 0.2;
}

/* A worker, a day and a way that the entry is said for; the entry alone in the policy. */
static void
make(scene *s, const hs_national_entry *entry, double mass_kg)
{
    const hs_site_when *when = &entry->when;
    double shoulder_m = hs_gb_landmarks_of(1.76).shoulder_m,
           knuckle_m = hs_gb_landmarks_of(1.76).knuckle_m;

    one_make(&s->o, mass_kg);
    s->o.bearer.suit = -1;
    s->when = *when;
    s->limit = (hs_site_limit){
        .id = hs_check_get(entry->check)->id,
        .figure = figure_of(entry),
        .is_published = true,
        .by_body_mass = is_share(entry),
        .is_unconfirmed =
            hs_source_get(hs_national_entry_row(entry)->source)->confidence == HS_CONF_MEMORY,
        .set = "the set",
        .wording = "the words",
        .when = &s->when};
    s->o.task.policy.site_limits = &s->limit;
    s->o.task.policy.n_site_limits = 1;
    s->o.worker.sex = when->sex != 0 ? when->sex : HS_SEX_MALE;
    s->o.worker.age_years = fmax(
        when->age_from_years, when->age_below_years > 0.0 ? when->age_below_years - 1.0 : 40.0);
    s->o.task.work = (hs_work){when->above_per_h > 0.0 ? when->above_per_h + 2.0 : 2.0,
                               when->above_h > 0.0 ? when->above_h + 1.0 : 3.0, NONE, NONE};
    if (when->carry_above_m > 0.0)
        s->o.points[2].x_m = s->o.points[3].x_m = when->carry_above_m + 1.0;
    if (when->hands == 1) {
        s->o.bearer.n_grips = 1;
        s->o.bearer.grips = one_grip;
    }
    if (when->height == HS_SITE_ABOVE_SHOULDER)
        put_hands(s, shoulder_m + 0.05, shoulder_m + 0.10);
    else if (when->height == HS_SITE_TO_KNUCKLE)
        put_hands(s, knuckle_m - 0.20, knuckle_m - 0.05);
}

static double
limit_of(const scene *s, const hs_national_entry *entry)
{
    return figure_of(entry) * (is_share(entry) ? s->o.worker.mass_kg : 1.0);
}

static gboolean
is_by_mass(const hs_national_entry *entry)
{
    return entry->check == HS_CHECK_lift_gb_guideline;
}

static void
every_entry_has_its_row(void)
{
    g_assert_cmpint(hs_national_entry_count(), >, 100);
    for (int i = 0; i < hs_national_entry_count(); i++) {
        const hs_national_entry *entry = hs_national_entry_get(i);

        if (hs_national_entry_row(entry) == NULL)
            g_error("%s: no row %s, %s, %s", hs_national_set_get(entry->set)->id, entry->what,
                    entry->who, entry->condition);
        g_assert_cmpfloat(figure_of(entry), >, 0.0);
    }
}

/* A mass of 0.8, 0.95 and 1.2 times the figure; a remembered figure is near at most. */
static void
each_mass_decides_as_its_figure_says(void)
{
    static const double times[] = {0.8, 0.95, 1.2};
    static const hs_finding_status wanted[] = {HS_STATUS_WITHIN, HS_STATUS_NEAR,
                                               HS_STATUS_BEYOND};
    int n_memory = 0;

    for (int i = 0; i < hs_national_entry_count(); i++) {
        const hs_national_entry *entry = hs_national_entry_get(i);

        for (int t = 0; is_by_mass(entry) && t < 3; t++) {
            scene s;
            hs_finding f;

            make(&s, entry, 10.0);
            s.o.part.mass_kg = times[t] * limit_of(&s, entry);
            /* one hand holds half of a load whose other grip is not used */
            f = one_ask(&s.o, entry->check);
            g_test_message("%s, %s, %s: %.2f of %.2f, %d", hs_national_set_get(entry->set)->id,
                           entry->who, entry->condition, f.value, f.limit, (int)f.status);
            hs_near("limit", f.limit, limit_of(&s, entry), 1e-9);
            hs_near("value", f.value, s.o.part.mass_kg, 1e-6);
            if (s.limit.is_unconfirmed && t == 2) {
                g_assert_cmpint(f.status, ==, HS_STATUS_NEAR);
                g_assert_cmpint(f.confidence, ==, HS_CONF_MEMORY);
                g_assert_cmpint(f.text.reason, ==, HS_REASON_limits_set_unsure);
                n_memory++;
            } else {
                g_assert_cmpint(f.status, ==, wanted[t]);
            }
            g_assert_cmpstr(f.text.name[0], ==, "the set");
            if (f.status != HS_STATUS_WITHIN && !s.limit.is_unconfirmed) {
                s.o.part.mass_kg = f.remedy.number[0];
                g_assert_cmpint(one_ask(&s.o, entry->check).ratio <= 0.9, ==, TRUE);
            }
            one_free(&s.o);
        }
    }
    g_assert_cmpint(n_memory, ==, 2);
}

static void
each_day_is_judged_by_its_figure(void)
{
    int n = 0;

    for (int i = 0; i < hs_national_entry_count(); i++) {
        const hs_national_entry *entry = hs_national_entry_get(i);
        scene s;
        hs_finding f;

        if (is_by_mass(entry))
            continue;
        n++;
        make(&s, entry, 20.0);
        f = one_ask(&s.o, entry->check);
        hs_near("limit", f.limit, figure_of(entry), 1e-9);
        hs_near("ratio", f.ratio, f.value / figure_of(entry), 1e-9);
        if (entry->check == HS_CHECK_day_mass) {
            g_assert_cmpint(f.text.reason, ==, HS_REASON_day_mass_set);
            hs_near("mass a day", f.value, 20.0 * 2.0 * 3.0, 1e-6);
            s.o.task.work.cycles_per_hour = 1.2 * figure_of(entry) / 20.0 / 3.0;
            f = one_ask(&s.o, entry->check);
            g_assert_cmpint(f.status, ==, HS_STATUS_BEYOND);
            s.o.task.work.cycles_per_hour = f.remedy.number[0];
            g_assert_true(one_ask(&s.o, entry->check).ratio <= 0.9);
        } else {
            g_assert_true(f.text.reason == HS_REASON_day_energy_set ||
                          f.text.reason == HS_REASON_day_energy_set_memory);
        }
        one_free(&s.o);
    }
    g_assert_cmpint(n, >=, 8);
}

static void
is_silent(scene *s, const hs_national_entry *entry, const char *what)
{
    hs_finding f = one_ask(&s->o, entry->check);

    g_test_message("%s, %s: %s", hs_national_set_get(entry->set)->id, entry->who, what);
    g_assert_cmpint(f.status, ==, HS_STATUS_NOT_JUDGED);
    g_assert_cmpint(f.why, ==, HS_WHY_SCOPE);
    g_assert_cmpint(f.text.reason, ==, HS_REASON_limits_set_silent);
    g_assert_cmpstr(f.text.name[0], ==, "the set");
}

/* Other people, another rate, other handling: nothing is judged, least of all by the figure of another publication. */
static void
an_entry_is_silent_where_it_is_not_said(void)
{
    int n_broken = 0;

    for (int i = 0; i < hs_national_entry_count(); i++) {
        const hs_national_entry *entry = hs_national_entry_get(i);
        const hs_site_when *when = &entry->when;

#define BROKEN(condition, change, word)                                                        \
    if (condition) {                                                                           \
        scene s;                                                                               \
                                                                                               \
        make(&s, entry, 10.0);                                                                 \
        change;                                                                                \
        is_silent(&s, entry, word);                                                            \
        one_free(&s.o);                                                                        \
        n_broken++;                                                                            \
    }
        BROKEN(when->sex != 0,
               s.o.worker.sex = when->sex == HS_SEX_MALE ? HS_SEX_FEMALE : HS_SEX_MALE, "sex")
        BROKEN(when->age_from_years > 0.0, s.o.worker.age_years = when->age_from_years - 0.5,
               "younger")
        BROKEN(when->age_below_years > 0.0, s.o.worker.age_years = when->age_below_years,
               "older")
        BROKEN(when->to_per_h > 0.0, s.o.task.work.cycles_per_hour = when->to_per_h + 0.1,
               "oftener")
        BROKEN(when->above_per_h > 0.0, s.o.task.work.cycles_per_hour = when->above_per_h,
               "seldom")
        BROKEN(when->to_h > 0.0, s.o.task.work.hours = when->to_h + 0.1, "longer")
        BROKEN(when->above_h > 0.0, s.o.task.work.hours = when->above_h, "shorter")
        BROKEN(when->height == HS_SITE_ABOVE_SHOULDER, put_hands(&s, 0.7, 0.9), "low")
        BROKEN(when->height == HS_SITE_TO_KNUCKLE, put_hands(&s, 0.7, 1.1), "high")
        BROKEN(when->hands == 2 || when->hands == 1,
               s.o.bearer.n_grips = 3 - s.o.bearer.n_grips;
               s.o.bearer.grips = s.o.bearer.n_grips == 1 ? one_grip : one_grips, "hands")
        BROKEN(when->carry_above_m > 0.0,
               s.o.points[2].x_m = s.o.points[3].x_m = when->carry_above_m, "near")
        BROKEN(when->carries_only, s.o.task.route.n_points = 2, "lift")
#undef BROKEN
    }
    g_assert_cmpint(n_broken, >, 150);
}

/* On 1 in 5 the Chinese figure, which ends at 10 degrees, says nothing of the carry. */
static void
a_slope_that_is_too_steep_is_not_judged(void)
{
    for (int i = 0; i < hs_national_entry_count(); i++) {
        const hs_national_entry *entry = hs_national_entry_get(i);
        scene s;

        if (!(entry->when.slope_to_deg > 0.0))
            continue;
        make(&s, entry, 30.0);
        s.o.floor[0] = (hs_vec2){-1, 0};
        s.o.floor[1] = (hs_vec2){0, 0};
        s.o.floor[2] = (hs_vec2){6, 1.2};
        s.o.task.site.n_floor = 3;
        is_silent(&s, entry, "slope");
        one_free(&s.o);
    }
}

/* Of several that fit the least; where no age is entered the assumed one, 40, counts. */
static void
the_least_that_fits_counts(void)
{
    hs_site_when whens[3] = {{.age_from_years = 14, .age_below_years = 16},
                             {.age_from_years = 20, .age_below_years = 45},
                             {.sex = HS_SEX_MALE, .age_from_years = 30}};
    hs_site_limit limits[3];
    scene s;

    make(&s, hs_national_entry_get(0), 12.0);
    for (int i = 0; i < 3; i++)
        limits[i] = (hs_site_limit){.id = "lift.gb-guideline",
                                    .figure = (const double[]){10, 25, 16}[i],
                                    .is_published = true,
                                    .set = "the set",
                                    .when = &whens[i]};
    s.o.task.policy.site_limits = limits;
    s.o.task.policy.n_site_limits = 3;
    s.o.worker.age_years = NONE;
    hs_near("assumed", one_ask(&s.o, HS_CHECK_lift_gb_guideline).limit, 16.0, 1e-12);
    s.o.worker.age_years = 25;
    hs_near("25 years", one_ask(&s.o, HS_CHECK_lift_gb_guideline).limit, 25.0, 1e-12);
    s.o.worker.age_years = 15;
    hs_near("15 years", one_ask(&s.o, HS_CHECK_lift_gb_guideline).limit, 10.0, 1e-12);
    one_free(&s.o);
}

/* No publication speaks of a suit, of a team, of kneeling or of more than eight hours: shown, not judged. A site's own figure does. */
static void
a_publication_keeps_out_where_it_is_silent(void)
{
    const hs_national_entry *entry = hs_national_entry_get(0);
    scene s;
    hs_finding f;

    make(&s, entry, 70.0);
    s.o.bearer.suit = 0;
    f = one_ask(&s.o, entry->check);
    EXPECT(f, NOT_JUDGED, limits_suit);
    hs_near("shown", f.limit, 55.0, 1e-12);
    s.limit.is_published = false;
    g_assert_cmpint(one_ask(&s.o, entry->check).why, ==, HS_WHY_COMPUTED);
    one_free(&s.o);
    make(&s, entry, 70.0);
    s.o.option.stance = HS_STANCE_KNEELING;
    f = one_ask(&s.o, entry->check);
    EXPECT(f, NOT_JUDGED, limits_kneeling);
    one_free(&s.o);
    make(&s, entry, 70.0);
    s.o.task.work.hours = 9;
    f = one_ask(&s.o, entry->check);
    EXPECT(f, NOT_JUDGED, limits_hours);
    one_free(&s.o);
}

int
main(int argc, char **argv)
{
    g_test_init(&argc, &argv, NULL);
#define TEST(name) g_test_add_func("/national_sets/" #name, name)
    TEST(every_entry_has_its_row);
    TEST(each_mass_decides_as_its_figure_says);
    TEST(each_day_is_judged_by_its_figure);
    TEST(an_entry_is_silent_where_it_is_not_said);
    TEST(a_slope_that_is_too_steep_is_not_judged);
    TEST(the_least_that_fits_counts);
    TEST(a_publication_keeps_out_where_it_is_silent);
#undef TEST
    return g_test_run();
}

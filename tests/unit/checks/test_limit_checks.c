/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  do the checks of the published limits ask the right place, and keep silent where the publication does?
 * Answer:    an invented box on a way, one change at a time: one case inside, one for each exclusion outside.
 * Not here:  the figures (test_niosh.c, test_limits.c). */
#include "one_bearer.h"

#include "evaluate.h"
#include "gb.h"
#include "mil1472.h"
#include "niosh.h"
#include "totals.h"

#define EXPECT_ASK(o, check, status, reason)                                                   \
    do {                                                                                       \
        hs_finding found_ = one_ask(o, check);                                                 \
        EXPECT(found_, status, reason);                                                        \
    } while (0)

static const int left_grip[] = {0}, right_grip[] = {1};

typedef struct {
    one o;
    hs_bearer crew[4];
    hs_worker workers[4];
} scene;

/* 20 cycles an hour, 8 h; grips 0.2 m above the base: hands go from 0.70 to 0.90 m and back, reach 0.40 m. */
static void
scene_make(scene *s, double mass_kg)
{
    one_make(&s->o, mass_kg);
    s->o.bearer.suit = -1;
    s->o.bearer.effector = -1;
    s->o.task.work = (hs_work){20, 8, NONE, NONE};
    s->o.points[1].time_s = 1;
}

static void
scene_crew(scene *s, int n)
{
    for (int b = 0; b < n; b++) {
        s->workers[b] = s->o.worker;
        s->crew[b] = s->o.bearer;
        s->crew[b].worker = b;
        s->crew[b].n_grips = 1;
        s->crew[b].grips = b == 0 ? left_grip : right_grip;
    }
    for (int g = 0; g < 2; g++)
        s->o.grips[g].hands = 2;
    s->o.task.n_workers = n;
    s->o.task.workers = s->workers;
    s->o.option.n_bearers = n;
    s->o.option.bearers = s->crew;
}

static double
rwl_of(double height_m, hs_niosh_duration duration, double per_min)
{
    hs_niosh_input in = {0.40, height_m, 0.20, 0, per_min, duration, HS_COUPLING_GOOD};
    hs_niosh_answer answer;

    hs_niosh_rwl(&in, &answer);
    return answer.rwl_kg;
}

static void
niosh_asks_the_origin_always_and_the_destination_when_precise(void)
{
    scene s;
    hs_finding f;
    double origin_kg, top_kg;

    scene_make(&s, 8);
    origin_kg = rwl_of(0.70, HS_NIOSH_LONG, 20.0 / 60.0);
    top_kg = rwl_of(0.90, HS_NIOSH_LONG, 20.0 / 60.0);
    f = one_ask(&s.o, HS_CHECK_lift_niosh_1994);
    EXPECT(f, WITHIN, niosh_is);
    /* the lowering starts at 0.90 m, where less is recommended than at 0.70 m */
    hs_near("index", f.value, 8.0 / fmin(origin_kg, top_kg), 1e-9);
    hs_near("ratio", f.ratio, f.value, 1e-12);
    g_assert_cmpint(f.why, ==, HS_WHY_COMPUTED);
    g_assert_cmpint(f.confidence, ==, HS_CONF_SEEN);
    g_assert_cmpfloat(top_kg, <, origin_kg);
    hs_near("place", f.route, 3.0, 1e-9);
    one_free(&s.o);

    /* one lift to 0.90 m alone: its end counts only when the load is placed with care */
    scene_make(&s, 8);
    s.o.task.route.n_points = 2;
    f = one_ask(&s.o, HS_CHECK_lift_niosh_1994);
    hs_near("origin", f.value, 8.0 / origin_kg, 1e-9);
    s.o.points[1].precise = HS_YES;
    f = one_ask(&s.o, HS_CHECK_lift_niosh_1994);
    hs_near("destination", f.value, 8.0 / top_kg, 1e-9);
    hs_near("destination's place", f.route, 2.0, 1e-9);
    one_free(&s.o);
}

static void
niosh_takes_work_grip_and_turn_into_account(void)
{
    scene s;
    double plain;

    scene_make(&s, 8);
    plain = one_ask(&s.o, HS_CHECK_lift_niosh_1994).value;
    s.o.task.work = (hs_work){20, 1, 1, NONE};
    hs_near("short", one_ask(&s.o, HS_CHECK_lift_niosh_1994).value,
            plain * rwl_of(0.9, HS_NIOSH_LONG, 1 / 3.0) / rwl_of(0.9, HS_NIOSH_SHORT, 1 / 3.0),
            1e-9);
    s.o.task.work = (hs_work){20, 8, NONE, NONE};
    s.o.grips[1].coupling = HS_COUPLING_POOR;
    hs_near("worst grip", one_ask(&s.o, HS_CHECK_lift_niosh_1994).value, plain / 0.9, 1e-9);
    s.o.grips[1].coupling = HS_COUPLING_GOOD;
    s.o.points[2].turn_deg = 30;
    hs_near("turned at the lowering's origin", one_ask(&s.o, HS_CHECK_lift_niosh_1994).value,
            plain / 0.904, 1e-9);
    one_free(&s.o);
}

static void
a_remedy_applied_makes_it_within(void)
{
    const hs_check_id checks[] = {HS_CHECK_lift_niosh_1994,   HS_CHECK_lift_niosh_composite,
                                  HS_CHECK_lift_iso_11228_1,  HS_CHECK_lift_en_1005_2,
                                  HS_CHECK_lift_mil_std_1472, HS_CHECK_lift_gb_guideline};

    for (int i = 0; i < (int)G_N_ELEMENTS(checks); i++) {
        scene s;
        hs_finding f;

        scene_make(&s, 60);
        f = one_ask(&s.o, checks[i]);
        g_assert_true(f.status == HS_STATUS_BEYOND || f.status == HS_STATUS_NEAR);
        g_assert_true(f.remedy.reason == HS_REASON_limits_remedy_mass ||
                      f.remedy.reason == HS_REASON_limits_remedy_mass_reach);
        hs_near("load now", f.remedy.number[1], 60, 1e-9);
        s.o.part.mass_kg = f.remedy.number[0];
        f = one_ask(&s.o, checks[i]);
        g_assert_cmpint(f.status, ==, HS_STATUS_WITHIN);
        one_free(&s.o);
    }
}

static void
a_smaller_reach_is_offered_only_where_it_is_enough(void)
{
    scene s;
    hs_finding f;

    scene_make(&s, 11);
    s.o.task.route.n_points = 2;
    s.o.points[0].reach_m = 0.60;
    f = one_ask(&s.o, HS_CHECK_lift_niosh_1994);
    EXPECT(f, BEYOND, niosh_is);
    g_assert_cmpint(f.remedy.reason, ==, HS_REASON_limits_remedy_mass_reach);
    s.o.points[0].reach_m = f.remedy.number[2];
    g_assert_cmpint(one_ask(&s.o, HS_CHECK_lift_niosh_1994).status, ==, HS_STATUS_WITHIN);
    one_free(&s.o);
}

static void
beyond_the_ends_there_is_no_index(void)
{
    scene s;
    hs_finding f;

    scene_make(&s, 8);
    s.o.points[0].reach_m = 0.70;
    f = one_ask(&s.o, HS_CHECK_lift_niosh_1994);
    EXPECT(f, BEYOND, niosh_zero_reach);
    g_assert_false(hs_has(f.value));
    s.o.points[0].reach_m = 0.40;
    s.o.points[0].turn_deg = 140;
    EXPECT_ASK(&s.o, HS_CHECK_lift_niosh_1994, BEYOND, niosh_zero_turn);
    s.o.points[0].turn_deg = NONE;
    s.o.task.work.cycles_per_hour = 960;
    EXPECT_ASK(&s.o, HS_CHECK_lift_niosh_1994, BEYOND, niosh_zero_rate);
    f = one_ask(&s.o, HS_CHECK_lift_niosh_composite); /* its formula is remembered */
    EXPECT(f, NEAR, composite_zero);
    g_assert_false(hs_has(f.value));
    one_free(&s.o);
}

static void
a_remembered_row_decides_nothing_alone(void)
{
    scene s;
    hs_finding f;

    scene_make(&s, 8);
    s.o.task.work = (hs_work){12 * 60, 1, 1, NONE}; /* 12 a minute: remembered row .37 */
    s.o.task.route.n_points = 2;
    s.o.part.mass_kg = 1.05 * rwl_of(0.70, HS_NIOSH_SHORT, 12);
    f = one_ask(&s.o, HS_CHECK_lift_niosh_1994);
    EXPECT(f, NEAR, niosh_is_memory);
    g_assert_cmpfloat(f.ratio, >, 1.0);
    /* more than even the read row of ten a minute recommends: no memory needed */
    s.o.part.mass_kg = 1.05 * rwl_of(0.70, HS_NIOSH_SHORT, 10);
    f = one_ask(&s.o, HS_CHECK_lift_niosh_1994);
    g_assert_cmpint(f.status, ==, HS_STATUS_BEYOND);
    g_assert_cmpint(f.confidence, ==, HS_CONF_SEEN);
    one_free(&s.o);
}

typedef struct {
    const char *what;
    void (*change)(scene *);
    hs_check_id check;
    hs_reason reason; /* none: judged */
    bool has_value;
} scope_case;

static void
unchanged(scene *s)
{
    (void)s;
}
static void
with_suit(scene *s)
{
    s->o.bearer.suit = 0;
}
static void
with_two(scene *s)
{
    scene_crew(s, 2);
}
static void
one_handed(scene *s)
{
    s->o.bearer.n_grips = 1;
    s->o.grips[0].at_m = (hs_vec3){0, 0, 0.2};
    s->o.grips[0].hands = 1;
}
static void
kneeling(scene *s)
{
    s->o.option.stance = HS_STANCE_KNEELING;
}
static void
nine_hours(scene *s)
{
    s->o.task.work.hours = 9;
}
static void
light(scene *s)
{
    s->o.part.mass_kg = 2.5;
}
/* the carry alone, so that the legs it is beside do not speak for it */
static void
carry_alone(scene *s)
{
    s->o.points[1] = s->o.points[2];
    s->o.points[0].z_m = 0.7;
    s->o.task.route.n_points = 2;
}
static void
carry_fast(scene *s)
{
    carry_alone(s), s->o.points[1].time_s = 3;
}
static void
carry_slow(scene *s)
{
    carry_alone(s), s->o.points[1].time_s = 9;
}
static void
carry_up(scene *s)
{
    carry_alone(s);
    s->o.floor[0] = (hs_vec2){-2, 0};
    s->o.floor[1] = (hs_vec2){5, 0.5};
    s->o.task.site.n_floor = 2;
    s->o.points[1].z_m = 1.0;
}
static void
carry_far(scene *s)
{
    carry_alone(s), s->o.points[1].x_m = 12, s->o.points[1].time_s = 15;
}
static void
carry_low(scene *s)
{
    carry_alone(s), s->o.points[0].z_m = s->o.points[1].z_m = 0.3;
}
static void
very_high(scene *s)
{
    s->o.points[1].z_m = s->o.points[2].z_m = 1.5;
}
static void
very_far_reach(scene *s)
{
    s->o.points[0].reach_m = 0.85;
}
static void
with_three(scene *s)
{
    scene_crew(s, 3);
}
static void
with_four(scene *s)
{
    scene_crew(s, 4);
}
static void
lift_alone(scene *s)
{
    s->o.task.route.n_points = 2;
}
static void
lift_high(scene *s)
{
    lift_alone(s), very_high(s);
}
static void
lift_far_out(scene *s)
{
    lift_alone(s), very_far_reach(s);
}
static void
carry_very_far(scene *s)
{
    carry_alone(s), s->o.points[1].x_m = 21, s->o.points[1].time_s = 26;
}
static void
suit_without_gain(scene *s)
{
    with_suit(s), s->o.suit.gain_hands = NONE;
}
static void
turned(scene *s)
{
    for (int i = 0; i < 4; i++)
        s->o.points[i].turn_deg = 40;
}
static void
no_pose(scene *s)
{
    s->o.points[0].z_m = s->o.points[1].z_m = s->o.points[2].z_m = s->o.points[3].z_m = 2.6;
}

#define CASE(change, check, reason, has_value)                                                 \
    {                                                                                          \
#change " " #check, change, HS_CHECK_##check, HS_REASON_##reason, has_value            \
    }

static const scope_case scopes[] = {
    CASE(unchanged, lift_niosh_1994, none, true),
    CASE(with_suit, lift_niosh_1994, niosh_suit, true),
    CASE(with_two, lift_niosh_1994, limits_team, true),
    CASE(one_handed, lift_niosh_1994, limits_one_hand, true),
    CASE(kneeling, lift_niosh_1994, limits_kneeling, true),
    CASE(nine_hours, lift_niosh_1994, limits_hours, false),
    CASE(unchanged, lift_niosh_composite, none, true),
    CASE(with_suit, lift_niosh_composite, niosh_suit, true),
    CASE(with_two, lift_niosh_composite, limits_team, true),
    CASE(one_handed, lift_niosh_composite, limits_one_hand, true),
    CASE(kneeling, lift_niosh_composite, limits_kneeling, true),
    CASE(nine_hours, lift_niosh_composite, limits_hours, false),
    CASE(unchanged, lift_iso_11228_1, none, true),
    CASE(with_two, lift_iso_11228_1, none, true),
    CASE(one_handed, lift_iso_11228_1, none, true),
    CASE(with_suit, lift_iso_11228_1, limits_suit, true),
    CASE(kneeling, lift_iso_11228_1, limits_kneeling, true),
    CASE(nine_hours, lift_iso_11228_1, limits_hours, true),
    CASE(light, lift_iso_11228_1, limits_light, true),
    CASE(carry_alone, lift_iso_11228_1, none, true),
    CASE(carry_fast, lift_iso_11228_1, iso_speed, true),
    CASE(carry_slow, lift_iso_11228_1, iso_speed, true),
    CASE(carry_up, lift_iso_11228_1, iso_slope, true),
    CASE(unchanged, lift_en_1005_2, none, true),
    CASE(with_two, lift_en_1005_2, none, true),
    CASE(one_handed, lift_en_1005_2, none, true),
    CASE(with_suit, lift_en_1005_2, limits_suit, true),
    CASE(kneeling, lift_en_1005_2, limits_kneeling, true),
    CASE(nine_hours, lift_en_1005_2, limits_hours, false),
    CASE(light, lift_en_1005_2, limits_light, true),
    CASE(carry_alone, lift_en_1005_2, en_carry, false),
    CASE(unchanged, lift_mil_std_1472, none, true),
    CASE(with_two, lift_mil_std_1472, none, true),
    CASE(with_suit, lift_mil_std_1472, limits_suit, true),
    CASE(one_handed, lift_mil_std_1472, limits_one_hand, true),
    CASE(kneeling, lift_mil_std_1472, limits_kneeling, true),
    CASE(nine_hours, lift_mil_std_1472, limits_hours, true),
    CASE(carry_alone, lift_mil_std_1472, none, true),
    CASE(carry_up, lift_mil_std_1472, limits_slope, true),
    CASE(carry_far, lift_mil_std_1472, mil_far, true),
    CASE(unchanged, lift_gb_guideline, none, true),
    CASE(with_two, lift_gb_guideline, none, true),
    CASE(with_suit, lift_gb_guideline, limits_suit, true),
    CASE(one_handed, lift_gb_guideline, limits_one_hand, true),
    CASE(kneeling, lift_gb_guideline, limits_kneeling, true),
    CASE(nine_hours, lift_gb_guideline, limits_hours, true),
    CASE(carry_alone, lift_gb_guideline, none, true),
    CASE(carry_up, lift_gb_guideline, limits_slope, true),
    CASE(carry_far, lift_gb_guideline, gb_far, true),
    CASE(carry_low, lift_gb_guideline, gb_low, true),
    CASE(with_three, lift_iso_11228_1, limits_team_size, true),
    CASE(suit_without_gain, lift_iso_11228_1, limits_unknown_felt, false),
    CASE(with_three, lift_en_1005_2, limits_team_size, true),
    CASE(suit_without_gain, lift_en_1005_2, limits_unknown_felt, false),
    CASE(with_three, lift_mil_std_1472, none, true),
    CASE(suit_without_gain, lift_mil_std_1472, limits_unknown_felt, false),
    CASE(lift_high, lift_mil_std_1472, mil_high, true),
    CASE(with_three, lift_gb_guideline, none, true),
    CASE(with_four, lift_gb_guideline, limits_team_size, true),
    CASE(suit_without_gain, lift_gb_guideline, limits_unknown_felt, false),
    CASE(lift_far_out, lift_gb_guideline, gb_outside, true),
    CASE(unchanged, spine_compression, none, true),
    CASE(kneeling, spine_compression, none, true),
    CASE(one_handed, spine_compression, spine_one_handed, true),
    CASE(turned, spine_compression, spine_turned, true),
    CASE(no_pose, spine_compression, spine_no_posture, false),
    CASE(unchanged, spine_shear, none, true),
    CASE(one_handed, spine_shear, spine_one_handed, true),
    CASE(turned, spine_shear, spine_turned, true),
    CASE(no_pose, spine_shear, spine_no_posture, false),
    CASE(carry_very_far, day_mass, day_mass_far, true),
    CASE(unchanged, day_mass, none, true),
    CASE(with_two, day_mass, none, true),
    CASE(with_suit, day_mass, day_mass_suit, true),
    CASE(nine_hours, day_mass, limits_hours, true),
    CASE(unchanged, day_energy, none, true),
    CASE(nine_hours, day_energy, day_energy_hours, true),
};

static void
each_limit_keeps_to_its_scope(void)
{
    for (int i = 0; i < (int)G_N_ELEMENTS(scopes); i++) {
        const scope_case *c = &scopes[i];
        scene s;
        hs_finding f;

        scene_make(&s, 8);
        c->change(&s);
        f = one_ask(&s.o, c->check);
        g_test_message("%s: status %d, %s, value %g", c->what, f.status,
                       hs_reason_name(f.text.reason), f.value);
        if (c->reason == HS_REASON_none) {
            g_assert_cmpint(f.why, ==, HS_WHY_COMPUTED);
            g_assert_cmpint(f.status, !=, HS_STATUS_NOT_JUDGED);
        } else {
            expect(&f, HS_STATUS_NOT_JUDGED, c->reason);
            g_assert_cmpint(f.why, ==, HS_WHY_SCOPE);
        }
        g_assert_cmpint(hs_has(f.value), ==, c->has_value);
        one_free(&s.o);
    }
}

static bool
has_case(hs_check_id check, hs_reason reason)
{
    for (int i = 0; i < (int)G_N_ELEMENTS(scopes); i++)
        if (scopes[i].check == check && scopes[i].reason == reason)
            return true;
    return false;
}

static const hs_check_id all_limits[] = {
    HS_CHECK_lift_niosh_1994,   HS_CHECK_lift_niosh_composite, HS_CHECK_lift_iso_11228_1,
    HS_CHECK_lift_en_1005_2,    HS_CHECK_lift_mil_std_1472,    HS_CHECK_lift_gb_guideline,
    HS_CHECK_spine_compression, HS_CHECK_spine_shear,          HS_CHECK_day_mass,
    HS_CHECK_day_energy};

/* Every change alone and every pair of them, of every limit: no way out of a scope is without its case, and every limit has
 * one inside. A way out that a new line of code opens fails here until the table has it. */
static void
every_way_out_of_a_scope_has_its_case(void)
{
    void (*changes[])(scene *) = {
        unchanged,         with_suit,  with_two,  with_three,     with_four,  one_handed,
        kneeling,          nine_hours, light,     carry_alone,    carry_fast, carry_slow,
        carry_up,          carry_far,  carry_low, carry_very_far, lift_high,  lift_far_out,
        suit_without_gain, turned,     no_pose};
    const int n = (int)G_N_ELEMENTS(changes);

    for (int l = 0; l < (int)G_N_ELEMENTS(all_limits); l++)
        g_assert_true(has_case(all_limits[l], HS_REASON_none));
    for (int i = 0; i < n; i++)
        for (int k = 0; k < n; k++)
            for (int l = 0; l < (int)G_N_ELEMENTS(all_limits); l++) {
                scene s;
                hs_finding f;

                scene_make(&s, 8);
                changes[i](&s);
                changes[k](&s);
                f = one_ask(&s.o, all_limits[l]);
                if (f.status == HS_STATUS_NOT_JUDGED && f.why == HS_WHY_SCOPE &&
                    !has_case(all_limits[l], f.text.reason))
                    g_error("%s leaves its scope by %s (changes %d, %d): no case in the table",
                            hs_check_get(all_limits[l])->id, hs_reason_name(f.text.reason), i,
                            k);
                one_free(&s.o);
            }
}

/* What the words say of scope is asked somewhere: each sentence that begins with "Does not apply". */
static void
every_sentence_of_scope_is_asked(void)
{
    g_autofree char *words = NULL;
    int n = 0;

    g_assert_true(
        g_file_get_contents(HS_SOURCE_ROOT "/src/model/words_limits.h", &words, NULL, NULL));
    for (const char *at = words; (at = strstr(at, "WORD(")) != NULL; at++) {
        g_autofree char *name = g_strndup(at + 5, strcspn(at + 5, ","));
        bool is_asked = false;

        if (strncmp(at + 5 + strlen(name), ", N_(\"Does not apply", 20) != 0)
            continue;
        for (int i = 0; i < (int)G_N_ELEMENTS(scopes); i++)
            is_asked |= strcmp(hs_reason_name(scopes[i].reason), name) == 0;
        if (!is_asked)
            g_error("%s says that a limit does not apply, and no case asks for it", name);
        n++;
    }
    g_assert_cmpint(n, >=, 18);
}

/* The formula's right-hand side with the recorded numbers in place of the symbols. */
static char *
filled_in(const hs_working_line *line)
{
    const char *c = strchr(hs_equation_get(line->equation)->formula, '=') + 1;
    GString *text = g_string_new(NULL);

    while (*c != '\0') {
        size_t n = 0;

        while (g_ascii_isalnum(c[n]) || c[n] == '_')
            n++;
        for (int i = 0; n > 0 && i < line->n_terms; i++)
            if (strlen(line->terms[i].symbol) == n &&
                strncmp(line->terms[i].symbol, c, n) == 0) {
                g_string_append_printf(text, "(%.17g)", line->terms[i].value);
                c += n;
                n = 0;
                goto next;
            }
        n = n > 0 ? n : 1;
        g_string_append_len(text, c, (gssize)n);
        c += n;
    next:;
    }
    return g_string_free(text, FALSE);
}

/* One case of tests/cases/limits.json as a route; the check that it is about. */
static hs_check_id
scene_of_case(scene *s, const char *limit, JsonObject *in)
{
    double carry_m = json_object_get_double_member_with_default(in, "carry_m", 4);

    scene_make(s, json_object_get_double_member_with_default(in, "mass_kg", 10));
    if (strcmp(limit, "en-1005-2") == 0) {
        /* a short way belongs to the lift: asked with it; a long one alone, so that the lift does not speak for it */
        if (carry_m >= 2)
            carry_alone(s);
        for (int i = 1; i < s->o.task.route.n_points; i++)
            if (s->o.points[i].x_m > 0)
                s->o.points[i].x_m = carry_m;
        return HS_CHECK_lift_en_1005_2;
    }
    carry_alone(s);
    s->o.points[1].x_m = carry_m;
    s->o.points[1].time_s =
        carry_m / json_object_get_double_member_with_default(in, "walking_speed_m_s", 0.8);
    if (json_object_has_member(in, "suit"))
        s->o.bearer.suit = json_object_get_boolean_member(in, "suit") ? 0 : -1;
    if (json_object_get_double_member_with_default(in, "slope_deg", 0) > 0) {
        double rise = tan(json_object_get_double_member(in, "slope_deg") * HS_RAD_PER_DEG);

        s->o.floor[0] = (hs_vec2){-2, -2 * rise};
        s->o.floor[1] = (hs_vec2){10, 10 * rise};
        s->o.task.site.n_floor = 2;
        s->o.points[1].z_m += carry_m * rise;
    }
    if (strcmp(limit, "gb-guideline") == 0)
        return HS_CHECK_lift_gb_guideline;
    return strcmp(limit, "mil-std-1472") == 0 ? HS_CHECK_lift_mil_std_1472
                                              : HS_CHECK_lift_iso_11228_1;
}

static void
ask_case(JsonObject *o, JsonObject *in)
{
    const char *id = json_object_get_string_member(o, "id"),
               *quantity = json_object_get_string_member(o, "quantity");
    scene s;
    hs_finding f;

    if (strcmp(quantity, "mass_moved_kg") == 0) {
        scene_make(&s, json_object_get_double_member(in, "mass_kg"));
        s.o.task.work = (hs_work){json_object_get_double_member(in, "cycles_per_hour"),
                                  json_object_get_double_member(in, "hours"), NONE, NONE};
        f = one_ask(&s.o, HS_CHECK_day_mass);
        hs_near(id, f.value, json_object_get_double_member(o, "expected"), 1e-9);
    } else if (strcmp(quantity, "wbgt_C") == 0) {
        bool is_used = json_object_get_boolean_member(in, "acclimatised");
        double metabolic_W = json_object_get_double_member(in, "metabolic_W");
        hs_term term = {"M", metabolic_W, "W"};
        hs_working_line line = {.equation = is_used ? HS_EQ_heat_rel : HS_EQ_heat_ral,
                                .n_terms = 1,
                                .terms = &term};
        g_autofree char *text = filled_in(&line);

        scene_make(&s, 10);
        s.o.task.site.temperature_C = 25;
        f = one_ask(&s.o, HS_CHECK_site_heat);
        /* the printed formula at this rate, and the note's own figures at its own */
        hs_near(id, hs_evaluate(text), json_object_get_double_member(o, "expected"), 1e-6);
        if (metabolic_W == f.text.number[3])
            hs_near(id, f.text.number[is_used ? 1 : 2],
                    json_object_get_double_member(o, "expected"), 1e-6);
    } else {
        hs_check_id check = scene_of_case(&s, json_object_get_string_member(o, "limit"), in);

        f = one_ask(&s.o, check);
        g_test_message("%s: %s", id, hs_reason_name(f.text.reason));
        g_assert_cmpstr(f.status == HS_STATUS_NOT_JUDGED ? "not_judged" : "judged", ==,
                        json_object_get_string_member(o, "expected"));
    }
    one_free(&s.o);
}

static void
published_scope_and_days_are_as_read(void)
{
    JsonNode *node = hs_cases_load("limits");
    JsonArray *list = json_object_get_array_member(json_node_get_object(node), "checks");
    int n = 0;

    for (guint i = 0; i < json_array_get_length(list); i++) {
        JsonObject *o = json_array_get_object_element(list, i);
        const char *quantity = json_object_get_string_member(o, "quantity");
        bool is_team = strcmp(json_object_get_string_member(o, "limit"), "team-british") == 0;

        if ((strcmp(quantity, "applicability") != 0 || is_team) &&
            strcmp(quantity, "mass_moved_kg") != 0 && strcmp(quantity, "wbgt_C") != 0)
            continue;
        ask_case(o, json_object_get_object_member(o, "inputs"));
        n++;
    }
    g_assert_cmpint(n, ==, 23);
    json_node_unref(node);
}

static void
a_suit_is_asked_about_what_is_felt(void)
{
    scene s;
    double bare, felt, share;

    scene_make(&s, 24);
    bare = one_ask(&s.o, HS_CHECK_lift_iso_11228_1).value;
    share = one_ask(&s.o, HS_CHECK_lift_niosh_1994).value;
    s.o.bearer.suit = 0;
    felt = one_ask(&s.o, HS_CHECK_lift_iso_11228_1).value;
    /* gain 8 and 15 N residual */
    hs_near("felt", felt / bare, (24 * HS_GRAVITY_m_s2 / 8 + 15) / (24 * HS_GRAVITY_m_s2),
            1e-9);
    /* the equation's index stays that of the whole share: the file format says so */
    hs_near("index", one_ask(&s.o, HS_CHECK_lift_niosh_1994).value, share, 1e-12);
    one_free(&s.o);
}

static void
a_team_has_the_publications_own_factor(void)
{
    scene s;
    double one_kg;

    scene_make(&s, 16);
    one_kg = one_ask(&s.o, HS_CHECK_lift_gb_guideline).limit;
    scene_crew(&s, 2);
    hs_finding f = one_ask(&s.o, HS_CHECK_lift_gb_guideline);

    hs_near("half the mass", f.value, 8, 1e-9);
    hs_near("two thirds", f.limit, one_kg * 2 / 3, 1e-9);
    s.o.task.route.n_points = 2; /* the lift alone */
    f = one_ask(&s.o, HS_CHECK_lift_mil_std_1472);
    hs_near("twice for two", f.limit, 39.5 * hs_mil1472_lift_rate_factor(1 / 3.0, 8), 1e-9);
    s.workers[1].sex = HS_SEX_FEMALE;
    f = one_ask(&s.o, HS_CHECK_lift_mil_std_1472);
    hs_near("mixed crew", f.limit, 20.0 * hs_mil1472_lift_rate_factor(1 / 3.0, 8), 1e-9);
    one_free(&s.o);
}

static void
the_sites_own_figure_replaces_the_published_one(void)
{
    hs_site_limit own[] = {
        {"lift.iso-11228-1", 12}, {"lift.niosh-1994", 0.5}, {"day.mass", 500}};
    scene s;
    hs_finding f;

    scene_make(&s, 13);
    s.o.task.policy.n_site_limits = 3;
    s.o.task.policy.site_limits = own;
    f = one_ask(&s.o, HS_CHECK_lift_iso_11228_1);
    EXPECT(f, BEYOND, limits_site_mass);
    hs_near("limit", f.limit, 12, 0);
    g_assert_cmpint(f.source, ==, HS_SRC_limits_site_own);
    s.o.bearer.suit = 0;
    EXPECT_ASK(&s.o, HS_CHECK_lift_iso_11228_1, WITHIN, limits_site_suit);
    s.o.bearer.suit = -1;
    s.o.part.mass_kg = 8;
    f = one_ask(&s.o, HS_CHECK_lift_niosh_1994);
    g_assert_cmpint(f.status, ==, HS_STATUS_BEYOND);
    hs_near("ratio", f.ratio, f.value / 0.5, 1e-12);
    EXPECT_ASK(&s.o, HS_CHECK_day_mass, BEYOND, day_mass_site);
    one_free(&s.o);
}

static void
criteria_that_are_not_asked_give_no_finding(void)
{
    const char *const only[] = {"spine-compression"};
    scene s;

    scene_make(&s, 8);
    s.o.task.has_criteria = true;
    s.o.task.n_criteria = 1;
    s.o.task.criteria = only;
    for (int c = HS_CHECK_lift_niosh_1994; c <= HS_CHECK_lift_gb_guideline; c++)
        g_assert_cmpint(one_ask(&s.o, (hs_check_id)c).status, ==, HS_STATUS_NONE);
    one_free(&s.o);
    /* one lift alone is no job of several tasks */
    scene_make(&s, 8);
    s.o.task.route.n_points = 2;
    g_assert_cmpint(one_ask(&s.o, HS_CHECK_lift_niosh_composite).status, ==, HS_STATUS_NONE);
    one_free(&s.o);
}

static hs_asking
asking_of(one *o)
{
    one_run(o);
    return (hs_asking){.task = &o->task,
                       .load = &o->load,
                       .run = &o->run,
                       .baseline = &o->run,
                       .arena = o->arena,
                       .near_ratio = 0.9};
}

static void
the_day_adds_up(void)
{
    scene s;
    hs_asking asking;
    hs_finding f;
    double still_W;

    scene_make(&s, 20);
    s.o.task.work = (hs_work){30, 8, NONE, NONE};
    asking = asking_of(&s.o);
    hs_near("kg an hour", hs_day_mass_kg_per_h(&asking), 600, 1e-9);
    f = one_ask(&s.o, HS_CHECK_day_mass);
    hs_near("kg a shift", f.value, 4800, 1e-6);
    /* 4 m: 3000 kg an hour, 10 000 in 8 hours */
    hs_near("row", f.limit, 10000, 1e-9);
    /* lift 1 s, carry 6 s, lower 2 s */
    hs_near("minutes", hs_day_worker_minutes_per_h(&asking), 30 * 9 / 60.0, 1e-9);
    s.o.task.work.one_way_empty_walk_m = 12;
    asking = asking_of(&s.o);
    hs_near("minutes with the way back", hs_day_worker_minutes_per_h(&asking), 30 * 19 / 60.0,
            1e-9);
    s.o.task.work.cycles_per_hour = 1e-9;
    asking = asking_of(&s.o);
    still_W = hs_day_metabolic_W(&asking);
    hs_near("standing, Pandolf", still_W, 1.5 * 79, 1e-6);
    s.o.task.work.cycles_per_hour = 30;
    asking = asking_of(&s.o);
    g_assert_cmpfloat(hs_day_metabolic_W(&asking), >, still_W);
    s.o.bearer.suit = 0;
    asking = asking_of(&s.o);
    hs_near("minutes with donning", hs_day_worker_minutes_per_h(&asking),
            30 * 19 / 60.0 + 4 / 8.0, 1e-9);
    one_free(&s.o);
}

static void
fewer_cycles_bring_the_day_within(void)
{
    const hs_check_id checks[] = {HS_CHECK_day_mass, HS_CHECK_day_energy};

    for (int i = 0; i < 2; i++) {
        scene s;
        hs_finding f;

        scene_make(&s, 45);
        s.o.task.work = (hs_work){300, 8, NONE, 20};
        f = one_ask(&s.o, checks[i]);
        g_assert_cmpfloat(f.ratio, >, 1.0);
        s.o.task.work.cycles_per_hour = f.remedy.number[0];
        g_assert_cmpfloat(f.remedy.number[1], ==, 300);
        g_assert_cmpint(one_ask(&s.o, checks[i]).status, ==, HS_STATUS_WITHIN);
        one_free(&s.o);
    }
}

/* The composite's steps lead from the greatest single index to the finding's value. */
static void
composite_and_day_show_their_steps(void)
{
    scene s;
    hs_finding f;
    int n_steps = 0, n_legs = 0;

    scene_make(&s, 12);
    f = one_ask(&s.o, HS_CHECK_lift_niosh_composite);
    for (const hs_working_line *line = f.working.first; line != NULL; line = line->next)
        n_steps += line->equation == HS_EQ_niosh_stli || line->equation == HS_EQ_niosh_cli;
    g_assert_cmpint(n_steps, ==, 2);
    hs_near("last step", f.working.last->result, f.value, 1e-12);
    s.o.task.work.one_way_empty_walk_m = 5;
    s.o.points[2].hold_s = 3;
    f = one_ask(&s.o, HS_CHECK_day_energy);
    for (const hs_working_line *line = f.working.first; line != NULL; line = line->next)
        n_legs += line->equation == HS_EQ_day_stoop_lift ||
                  line->equation == HS_EQ_day_stoop_lower ||
                  line->equation == HS_EQ_day_carry || line->equation == HS_EQ_day_hold ||
                  line->equation == HS_EQ_day_back;
    g_assert_cmpint(n_legs, >=, 5);
    one_free(&s.o);
}

static void
workings_give_their_results_again(void)
{
    void (*changes[])(scene *) = {unchanged,  with_suit,   with_two,
                                  one_handed, carry_alone, very_far_reach};
    int n_lines = 0;

    for (int i = 0; i < (int)G_N_ELEMENTS(changes); i++)
        for (int c = HS_CHECK_lift_niosh_1994; c <= HS_CHECK_day_energy; c++) {
            scene s;
            hs_finding f;

            if (c > HS_CHECK_lift_gb_guideline && c < HS_CHECK_day_mass)
                continue;
            scene_make(&s, 14);
            changes[i](&s);
            f = one_ask(&s.o, (hs_check_id)c);
            for (const hs_working_line *line = f.working.first; line != NULL;
                 line = line->next) {
                g_autofree char *text = filled_in(line);

                hs_near_rel(text, hs_evaluate(text), line->result, 1e-9);
                n_lines++;
            }
            one_free(&s.o);
        }
    g_assert_cmpint(n_lines, >, 60);
}

int
main(int argc, char **argv)
{
    g_test_init(&argc, &argv, NULL);
#define TEST(name) g_test_add_func("/limit_checks/" #name, name)
    TEST(niosh_asks_the_origin_always_and_the_destination_when_precise);
    TEST(niosh_takes_work_grip_and_turn_into_account);
    TEST(a_remedy_applied_makes_it_within);
    TEST(a_smaller_reach_is_offered_only_where_it_is_enough);
    TEST(beyond_the_ends_there_is_no_index);
    TEST(a_remembered_row_decides_nothing_alone);
    TEST(each_limit_keeps_to_its_scope);
    TEST(every_way_out_of_a_scope_has_its_case);
    TEST(every_sentence_of_scope_is_asked);
    TEST(published_scope_and_days_are_as_read);
    TEST(a_suit_is_asked_about_what_is_felt);
    TEST(a_team_has_the_publications_own_factor);
    TEST(the_sites_own_figure_replaces_the_published_one);
    TEST(criteria_that_are_not_asked_give_no_finding);
    TEST(the_day_adds_up);
    TEST(fewer_cycles_bring_the_day_within);
    TEST(composite_and_day_show_their_steps);
    TEST(workings_give_their_results_again);
#undef TEST
    return g_test_run();
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  do the contacts of a grip answer textbook problems of friction, tipping, ladders, wedges and levers?
 * Answer:    each problem as contacts in one upright plane, put to hs_grip_squeeze(): forces where they are determined, limits as the
 *            place where nothing holds any more.
 * Not here:  grips of a load (test_grip.c), shares of bearers (test_shares.c). */
#include "case_load.h"
#include "grip.h"
#include "loss_beside.h"
#include "near.h"
#include "units.h"

#include <string.h>

#define ROUGH  100.0 /* a floor on which nothing slips (numerics) */
#define G_MOST 8

/* What pushes up into a body, and what the contacts have to put into it: force, and moment about the origin. */
typedef struct {
    int n;
    hs_contact contacts[G_MOST];
    hs_wrench need;
} plane;

typedef struct {
    JsonObject *given;
    double value; /* the figure that is looked for */
} problem;

static double
of(const problem *p, const char *key)
{
    return hs_case_number(p->given, key, HS_ABSENT);
}

static void
touch(plane *at, double x_m, double z_m, double inward_deg, double friction)
{
    double a = inward_deg * HS_RAD_PER_DEG;

    g_assert_cmpint(at->n, <, G_MOST);
    at->contacts[at->n] = (hs_contact){.at_m = {x_m, 0, z_m},
                                       .inward = {cos(a), 0, sin(a)},
                                       .friction = friction,
                                       .pad = at->n};
    at->n++;
}

/* A force from outside at a place; the contacts meet it. */
static void
load(plane *at, double x_m, double z_m, double fx_N, double fz_N)
{
    hs_vec3 force_N = {-fx_N, 0, -fz_N};

    at->need.force_N = hs_vec3_add(at->need.force_N, force_N);
    at->need.moment_Nm =
        hs_vec3_add(at->need.moment_Nm, hs_vec3_cross((hs_vec3){x_m, 0, z_m}, force_N));
}

static bool
solve(const plane *at, hs_squeeze *ret)
{
    return hs_grip_squeeze(at->contacts, at->n, &at->need, 4, ret, NULL) == HS_OK;
}

static double
normal_N(const plane *at, int contact)
{
    hs_squeeze squeeze;

    g_assert_true(solve(at, &squeeze));
    return squeeze.pad_N[contact];
}

/* The edge of what holds: `holds` is true at one end and false at the other. */
static double
edge(problem *p, bool (*holds)(problem *p), double good, double bad)
{
    p->value = good;
    g_assert_true(holds(p));
    p->value = bad;
    g_assert_false(holds(p));
    for (int i = 0; i < 50; i++) {
        p->value = (good + bad) / 2.0;
        if (holds(p))
            good = p->value;
        else
            bad = p->value;
    }
    return good;
}

static bool
can(const plane *at)
{
    hs_squeeze squeeze;

    return solve(at, &squeeze);
}

/* ---- ladders: foot at the origin, wall to the right ---- */

static plane
ladder(double angle_deg, double length_m, double friction, double wall_friction)
{
    plane at = {0};
    double a = angle_deg * HS_RAD_PER_DEG;

    touch(&at, 0, 0, 90, friction);
    touch(&at, length_m * cos(a), length_m * sin(a), 180, wall_friction);
    return at;
}

static void
on_ladder(plane *at, double angle_deg, double along_m, double weight_N)
{
    double a = angle_deg * HS_RAD_PER_DEG;

    load(at, along_m * cos(a), along_m * sin(a), 0, -weight_N);
}

static bool
ladder_53_holds(problem *p)
{
    plane at = ladder(of(p, "angle_deg"), 5, p->value, 0);

    on_ladder(&at, of(p, "angle_deg"), 2.5, of(p, "weight_N"));
    return can(&at);
}

static double
ladder_53(problem *p, const char *key)
{
    plane at = ladder(of(p, "angle_deg"), 5, ROUGH, 0);
    double floor_N, wall_N;

    if (g_str_equal(key, "friction"))
        return edge(p, ladder_53_holds, 1.0, 0.0);
    on_ladder(&at, of(p, "angle_deg"), 2.5, of(p, "weight_N"));
    floor_N = normal_N(&at, 0);
    wall_N = normal_N(&at, 1);
    if (g_str_equal(key, "wall_N"))
        return wall_N;
    if (g_str_equal(key, "floor_normal_N"))
        return floor_N;
    return g_str_equal(key, "floor_N") ? hypot(floor_N, wall_N)
                                       : atan2(floor_N, wall_N) * HS_DEG_PER_RAD;
}

static double
ladder_gutter(problem *p, const char *key)
{
    double g = of(p, "g_m_s2"), length_m = of(p, "length_m"),
           angle_deg = acos(of(p, "base_m") / length_m) * HS_DEG_PER_RAD;
    plane at = ladder(angle_deg, length_m, ROUGH, 0);

    on_ladder(&at, angle_deg, of(p, "ladder_cm_m"), of(p, "ladder_mass_kg") * g);
    on_ladder(&at, angle_deg, of(p, "person_m"), of(p, "person_mass_kg") * g);
    /* the wall is smooth: what rubs at the foot is what presses at the top */
    return normal_N(&at, g_str_equal(key, "normal_N") ? 0 : 1);
}

static plane
climbed(problem *p, double along_m)
{
    double length_m = of(p, "length_m"),
           angle_deg = acos(of(p, "base_m") / length_m) * HS_DEG_PER_RAD;
    plane at = ladder(angle_deg, length_m, of(p, "friction"), 0);

    on_ladder(&at, angle_deg, length_m / 2.0, of(p, "ladder_N"));
    on_ladder(&at, angle_deg, along_m, of(p, "man_N"));
    return at;
}

static bool
climber_holds(problem *p)
{
    plane at = climbed(p, p->value);

    return can(&at);
}

static double
ladder_climber(problem *p, const char *key)
{
    plane at = climbed(p, of(p, "climb_m"));

    if (g_str_equal(key, "friction_max_N"))
        return of(p, "friction") * normal_N(&at, 0);
    return g_str_equal(key, "friction_N") ? normal_N(&at, 1) : edge(p, climber_holds, 0.0, 5.0);
}

static bool
leans(problem *p)
{
    plane at =
        ladder(p->value, 1, hs_case_number(p->given, "friction_floor", of(p, "friction")),
               hs_case_number(p->given, "friction_wall", 0.0));

    on_ladder(&at, p->value, 0.5, 100);
    return can(&at);
}

static double
ladder_angle(problem *p, const char *key)
{
    g_assert_cmpstr(key, ==, "angle_deg");
    return edge(p, leans, 89.0, 1.0);
}

/* ---- boxes that are pushed ---- */

static plane
pushed(double half_m, double friction, double weight_N, double push_N, double height_m)
{
    plane at = {0};

    touch(&at, -half_m, 0, 90, friction);
    touch(&at, half_m, 0, 90, friction);
    load(&at, 0, 0, 0, -weight_N);
    load(&at, 0, height_m, push_N, 0);
    return at;
}

static bool
fridge_slips_not(problem *p)
{
    plane at = pushed(of(p, "half_base_m"), of(p, "friction"), of(p, "weight_N"), p->value, 0);

    return can(&at);
}

static bool
fridge_tips_not(problem *p)
{
    plane at = pushed(of(p, "half_base_m"), ROUGH, of(p, "weight_N"), p->value,
                      of(p, "push_height_m"));

    return can(&at);
}

static bool
base_is_wide_enough(problem *p)
{
    plane at = pushed(p->value, ROUGH, of(p, "weight_N"), of(p, "friction") * of(p, "weight_N"),
                      of(p, "push_height_m"));

    return can(&at);
}

static double
fridge_push(problem *p, const char *key)
{
    double slip_N = edge(p, fridge_slips_not, 0.0, 1e4),
           tip_N = edge(p, fridge_tips_not, 0.0, 1e4);

    if (g_str_equal(key, "slip_N"))
        return slip_N;
    if (g_str_equal(key, "tip_N"))
        return tip_N;
    return g_str_equal(key, "tips_first") ? tip_N < slip_N
                                          : edge(p, base_is_wide_enough, 2.0, 0.01);
}

/* As hard as the floor lets it be pushed, at a height. */
static bool
slides_first(problem *p)
{
    plane at = pushed(of(p, "half_base_m"), of(p, "friction"), 100,
                      (1.0 - 1e-9) * 100 * of(p, "friction"), p->value);

    return can(&at);
}

static double
push_height(problem *p, const char *key)
{
    g_assert_cmpstr(key, ==, "height_m");
    return edge(p, slides_first, 0.01, 5.0);
}

/* ---- one contact ---- */

/* A body on a slope, or speeded up: what the face has to give, and whether it does. */
static bool
face_gives(double slope_deg, double friction, double along_N, double weight_N)
{
    plane at = {0};

    touch(&at, 0, 0, 90 + slope_deg, friction);
    load(&at, 0, 0, 0, -weight_N);
    load(&at, 0, 0, along_N * cos(slope_deg * HS_RAD_PER_DEG),
         along_N * sin(slope_deg * HS_RAD_PER_DEG));
    return can(&at);
}

static bool
stays_on_floor(problem *p)
{
    return face_gives(0, of(p, "friction"), p->value, of(p, "mass_kg") * of(p, "g_m_s2"));
}

/* The face rises to the right: a force m a up along it stands for a slide down at a. */
static bool
slides_at(problem *p)
{
    return face_gives(of(p, "slope_deg"), of(p, "friction"), p->value, of(p, "g_m_s2"));
}

static bool
stays_on_slope(problem *p)
{
    return face_gives(p->value, of(p, "friction"), 0, 100);
}

static double
parcel_slope(problem *p, const char *key)
{
    if (g_str_equal(key, "constant_speed_deg"))
        return edge(p, stays_on_slope, 0.0, 80.0);
    return edge(p, slides_at, of(p, "g_m_s2") * sin(of(p, "slope_deg") * HS_RAD_PER_DEG), 0.0);
}

static double
crate(problem *p, const char *key)
{
    double most_N = edge(p, stays_on_floor, 0.0, 1e4);

    if (g_str_equal(key, "slips2")) {
        p->value = of(p, "mass_kg") * of(p, "acceleration2_m_s2");
        return !stays_on_floor(p);
    }
    if (g_str_equal(key, "needed_N"))
        return of(p, "mass_kg") * of(p, "acceleration_m_s2");
    return g_str_equal(key, "needed2_N") ? of(p, "mass_kg") * of(p, "acceleration2_m_s2")
                                         : most_N;
}

/* ---- a wedge: what the guide has to press with, and what the floor rubs ---- */

static bool
wedge_raises_not(problem *p)
{
    plane at = {0};

    touch(&at, 0, 0, 90 + of(p, "angle_deg"), of(p, "friction"));
    load(&at, 0, 0, p->value, -of(p, "weight_N"));
    return can(&at);
}

static bool
floor_rubs(problem *p)
{
    return face_gives(0, of(p, "friction"), p->value, of(p, "weight_N"));
}

static double
wedge_raise(problem *p, const char *key)
{
    double level_N = of(p, "weight_N") * tan(of(p, "angle_deg") * HS_RAD_PER_DEG);
    double guide_N = edge(p, wedge_raises_not, level_N, 1e3);

    g_assert_cmpstr(key, ==, "force_N");
    return guide_N + edge(p, floor_rubs, 0.0, 1e3);
}

static double
wedge_hold(problem *p, const char *key)
{
    double level_N = of(p, "weight_N") * tan(of(p, "angle_deg") * HS_RAD_PER_DEG);
    double guide_N = edge(p, wedge_raises_not, level_N, 0.0);

    g_assert_cmpstr(key, ==, "force_N");
    return guide_N - edge(p, floor_rubs, 0.0, 1e3);
}

/* ---- two contacts that share ---- */

static double
lean_on_wall(problem *p, const char *key)
{
    plane at = {0};

    g_assert_cmpstr(key, ==, "wall_N");
    touch(&at, 0, 0, 90, ROUGH);
    touch(&at, of(p, "offset_m"), of(p, "height_m"), 180, 0);
    load(&at, of(p, "offset_m"), 0, 0, -of(p, "mass_kg") * of(p, "g_m_s2"));
    return normal_N(&at, 1);
}

static plane
beam(problem *p, double support_m, double boy_m)
{
    plane at = {0};

    touch(&at, -of(p, "support_distance_m") / 2.0, 0, 90, 0);
    touch(&at, support_m, 0, 90, 0);
    load(&at, 0, 0, 0, -of(p, "beam_N"));
    load(&at, boy_m, 0, 0, -of(p, "boy_N"));
    return at;
}

static bool
boy_stays_up(problem *p)
{
    double support_m = of(p, "support_distance_m") / 2.0;
    plane at = beam(p, support_m, support_m + p->value);

    return can(&at);
}

static bool
boy_reaches_the_end(problem *p)
{
    double end_m = of(p, "length_m") / 2.0;
    plane at = beam(p, end_m - p->value, end_m);

    return can(&at);
}

static double
beam_walker(problem *p, const char *key)
{
    return g_str_equal(key, "beyond_m") ? edge(p, boy_stays_up, 0.0, 2.0)
                                        : edge(p, boy_reaches_the_end, 0.1, 4.0);
}

static bool
plank_lies(problem *p)
{
    plane at = {0};
    double over_m = of(p, "overhang_m");

    touch(&at, 0, 0, 90, 0);
    touch(&at, over_m - of(p, "length_m"), 0, 90, 0);
    load(&at, over_m - of(p, "length_m") / 2.0, 0, 0, -of(p, "mass_kg") * HS_GRAVITY_m_s2);
    load(&at, over_m, 0, 0, -p->value * HS_GRAVITY_m_s2);
    return can(&at);
}

static double
plank_overhang(problem *p, const char *key)
{
    g_assert_cmpstr(key, ==, "tip_mass_kg");
    return edge(p, plank_lies, 0.0, 1000.0);
}

/* A pull is a contact without friction along its line. */
static double
on_incline(problem *p, const char *key)
{
    bool is_roller = json_object_has_member(p->given, "pull_deg");
    plane at = {0};

    touch(&at, 0, 0, 90 + of(p, "slope_deg"), 0);
    touch(&at, 0, 0, is_roller ? of(p, "pull_deg") : of(p, "push_deg"), 0);
    load(&at, 0, 0, 0, -of(p, "weight_N"));
    return normal_N(&at, g_str_equal(key, "normal_N") ? 0 : 1);
}

/* ---- levers ---- */

static double
wheelbarrow(problem *p, const char *key)
{
    double weight_N = of(p, "mass_kg") * of(p, "g_m_s2");
    plane at = {0};

    touch(&at, 0, 0, 90, 0);
    touch(&at, of(p, "hand_arm_m"), 0, 90, 0);
    load(&at, of(p, "load_arm_m"), 0, 0, -weight_N);
    if (g_str_equal(key, "ratio"))
        return weight_N / normal_N(&at, 1);
    return normal_N(&at, g_str_equal(key, "lift_N") ? 1 : 0);
}

static double
nail_puller(problem *p, const char *key)
{
    plane at = {0};

    touch(&at, 0, 0, 90, 0);
    touch(&at, of(p, "long_arm_m"), 0, 270, 0); /* the hand presses down */
    load(&at, -of(p, "short_arm_m"), 0, 0, -of(p, "nail_N"));
    load(&at, 0, 0, 0, -of(p, "mass_kg") * of(p, "g_m_s2"));
    if (g_str_equal(key, "ratio"))
        return of(p, "nail_N") / normal_N(&at, 1);
    return normal_N(&at, g_str_equal(key, "force_N") ? 1 : 0);
}

/* On a pivot, with a stop to the left: it stays as long as the left side is the heavier. */
static plane
balanced(void)
{
    plane at = {0};

    touch(&at, 0, 0, 90, 0);
    touch(&at, -1, 0, 90, 0);
    return at;
}

static plane
seesaw_at(problem *p, double arm2_m, double board_kg)
{
    double g = of(p, "g_m_s2");
    plane at = balanced();

    load(&at, -of(p, "arm1_m"), 0, 0, -of(p, "mass1_kg") * g);
    load(&at, -of(p, "board_arm_m"), 0, 0, -board_kg * g);
    load(&at, arm2_m, 0, 0, -of(p, "mass2_kg") * g);
    return at;
}

static bool
seesaw_bare(problem *p)
{
    plane at = seesaw_at(p, p->value, 0);

    return can(&at);
}

static bool
seesaw_board(problem *p)
{
    plane at = seesaw_at(p, p->value, of(p, "board_kg"));

    return can(&at);
}

static double
seesaw(problem *p, const char *key)
{
    bool has_board = g_str_has_suffix(key, "_board_m") || g_str_has_suffix(key, "_board_N");
    double arm_m = edge(p, has_board ? seesaw_board : seesaw_bare, 0.1, 5.0);
    plane at = seesaw_at(p, arm_m, has_board ? of(p, "board_kg") : 0.0);

    return g_str_has_prefix(key, "arm") ? arm_m : normal_N(&at, 0);
}

static plane
stick(problem *p, double mass3_kg)
{
    double g = of(p, "g_m_s2");
    plane at = balanced();

    load(&at, -of(p, "arm1_m"), 0, 0, -of(p, "mass1_kg") * g);
    load(&at, -of(p, "arm2_m"), 0, 0, -of(p, "mass2_kg") * g);
    load(&at, -of(p, "stick_arm_m"), 0, 0, -of(p, "stick_kg") * g);
    load(&at, of(p, "arm3_m"), 0, 0, -mass3_kg * g);
    return at;
}

static bool
stick_stays(problem *p)
{
    plane at = stick(p, p->value);

    return can(&at);
}

static double
torque_balance(problem *p, const char *key)
{
    double mass_kg = edge(p, stick_stays, 0.0, 5.0);
    plane at = stick(p, mass_kg);

    return g_str_equal(key, "mass3_kg") ? mass_kg : normal_N(&at, 0);
}

static double
sudden_load(problem *p, const char *key)
{
    bool drops = g_str_equal(key, "factor_drop");

    return hs_fall_times(of(p, drops ? "height_m" : "height0_m"), of(p, "static_deflection_m"));
}

static void
ask_plane(JsonObject *of_case)
{
    static const struct {
        const char *name;
        double (*answer)(problem *p, const char *key);
    } table[] = {
        {"ladder 53", ladder_53},
        {"ladder gutter", ladder_gutter},
        {"ladder climber", ladder_climber},
        {"ladder min angle", ladder_angle},
        {"ladder rough both", ladder_angle},
        {"fridge push", fridge_push},
        {"push height limit", push_height},
        {"wedge raise", wedge_raise},
        {"wedge hold", wedge_hold},
        {"parcel slope", parcel_slope},
        {"crate static friction", crate},
        {"crate on truck", crate},
        {"lean on wall", lean_on_wall},
        {"beam walker", beam_walker},
        {"plank overhang", plank_overhang},
        {"roller slope", on_incline},
        {"frictionless incline", on_incline},
        {"wheelbarrow 45", wheelbarrow},
        {"wheelbarrow 55", wheelbarrow},
        {"nail puller", nail_puller},
        {"seesaw", seesaw},
        {"torque balance", torque_balance},
        {"sudden load", sudden_load},
    };
    const char *name = json_object_get_string_member(of_case, "name");
    JsonObject *expect = json_object_get_object_member(of_case, "expect");
    g_autoptr(GList) keys = json_object_get_members(expect);

    for (gsize i = 0; i < G_N_ELEMENTS(table); i++) {
        if (!g_str_equal(table[i].name, name))
            continue;
        for (GList *key = keys; key != NULL; key = key->next) {
            problem p = {json_object_get_object_member(of_case, "given"), HS_ABSENT};
            g_autofree char *what = g_strdup_printf("%s: %s", name, (const char *)key->data);

            /* the programme of a limit is exact to about 1e-7, its tolerance */
            hs_near_rel(what, table[i].answer(&p, key->data),
                        hs_case_number(expect, key->data, HS_ABSENT), 1e-6);
        }
        return;
    }
    g_error("nobody answers %s", name);
}

static void
textbook_problems_of_one_plane(void)
{
    g_assert_cmpint(hs_case_each("statics", "ask", "plane", ask_plane), ==, 23);
}

int
main(int argc, char **argv)
{
    g_test_init(&argc, &argv, NULL);
    g_test_add_func("/plane/textbook_problems_of_one_plane", textbook_problems_of_one_plane);
    return g_test_run();
}

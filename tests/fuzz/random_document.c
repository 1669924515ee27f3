/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what could anybody enter?
 * Answer:    every section of the file format, each optional member there or not, figures over the whole of what is sensible.
 * Not here:  invalid ones (mutate.c). */
#include "random_document.h"

typedef struct {
    GString *out;
    GRand *rand;
    int n_grips, n_workers, n_suits, n_points;
    gboolean has_effectors[3], is_powered[3];
} maker;

static gboolean
chance(maker *m, double p)
{
    return g_rand_double(m->rand) < p;
}

static int
pick(maker *m, int n)
{
    return g_rand_int_range(m->rand, 0, n);
}

static double
between(maker *m, double least, double most)
{
    return g_rand_double_range(m->rand, least, most);
}

static void G_GNUC_PRINTF(2, 3) put(maker *m, const char *format, ...)
{
    va_list arguments;

    va_start(arguments, format);
    g_string_append_vprintf(m->out, format, arguments);
    va_end(arguments);
}

/* ,"key":number with probability p */
static void
maybe(maker *m, double p, const char *key, double least, double most)
{
    if (chance(m, p))
        put(m, ",\"%s\":%.4g", key, between(m, least, most));
}

static void
maybe_word(maker *m, double p, const char *key, const char *const *words, int n)
{
    if (chance(m, p))
        put(m, ",\"%s\":\"%s\"", key, words[pick(m, n)]);
}

static void
maybe_bool(maker *m, double p, const char *key)
{
    if (chance(m, p))
        put(m, ",\"%s\":%s", key, chance(m, 0.5) ? "true" : "false");
}

#define WORDS(m, p, key, ...)                                                                  \
    maybe_word((m), (p), (key), (const char *const[]){__VA_ARGS__},                            \
               (int)G_N_ELEMENTS(((const char *const[]){__VA_ARGS__})))

static void
put_part(maker *m, int i)
{
    int shape = pick(m, 8);
    double radius_m = between(m, 0.02, 0.6), high_m = between(m, 0.02, 1.2);
    gboolean has_liquid = FALSE;

    put(m, "%s{\"id\":\"p%d\"", i > 0 ? "," : "", i);
    if (shape == 0 || shape == 1) {
        has_liquid = shape == 0 && chance(m, 0.2);
        put(m, ",\"shape\":\"%s\",\"size_m\":[%.4g,%.4g,%.4g]", shape == 0 ? "box" : "wedge",
            between(m, 0.05, 2.5), between(m, 0.05, 1.5), high_m);
    } else if (shape == 2) {
        put(m, ",\"shape\":\"point\"");
    } else if (shape == 3 || shape == 4) {
        put(m, ",\"shape\":\"%s\",\"radius_m\":%.4g", shape == 3 ? "sphere" : "hemisphere",
            radius_m);
    } else {
        put(m, ",\"shape\":\"%s\",\"radius_m\":%.4g,\"length_m\":%.4g",
            shape == 5   ? "tube"
            : shape == 6 ? "cone"
                         : "cylinder",
            radius_m, high_m);
        if (shape == 5)
            put(m, ",\"inner_radius_m\":%.4g", radius_m * between(m, 0.1, 0.9));
    }
    if (shape >= 4)
        put(m, ",\"axis\":\"%c\"", 'x' + pick(m, 3));
    put(m, ",\"centre_m\":[%.4g,%.4g,%.4g]", between(m, -0.8, 0.8), between(m, -0.4, 0.4),
        between(m, 0.0, 1.0));
    if (!has_liquid && chance(m, 0.2))
        put(m, ",\"turn_deg\":[%.4g,%.4g,%.4g]", between(m, -90, 90), between(m, -90, 90),
            between(m, -90, 90));
    if (shape == 2 || has_liquid || chance(m, 0.8))
        put(m, ",\"mass_kg\":%.4g",
            chance(m, 0.1) ? between(m, 0.01, 0.2) : between(m, 0.5, 90.0));
    else
        put(m, ",\"density_kg_m3\":%.4g", between(m, 10, 900));
    WORDS(m, 0.6, "known", "weighed", "label", "estimated");
    maybe(m, 0.2, "mass_tol_kg", 0.0, 5.0);
    if (has_liquid)
        put(m, ",\"liquid\":{\"density_kg_m3\":%.4g,\"depth_m\":%.4g}", between(m, 600, 1500),
            high_m * between(m, 0.05, 0.95));
    put(m, "}");
}

static void
put_grip(maker *m, int i)
{
    static const char *const kinds[] = {"handle", "edge", "hook", "strap", "pad", "cradle"};
    int kind = pick(m, 6);

    put(m, "%s{\"id\":\"g%d\",\"at_m\":[%.4g,%.4g,%.4g],\"kind\":\"%s\"", i > 0 ? "," : "", i,
        between(m, -1.0, 1.0), between(m, -0.5, 0.5), between(m, 0.0, 1.2), kinds[kind]);
    WORDS(m, 0.5, "coupling", "good", "fair", "poor");
    if (kind == 4 || chance(m, 0.2))
        put(m, ",\"inward\":[0,%d,0]", chance(m, 0.5) ? 1 : -1);
    maybe(m, 0.5, "friction", 0.1, 1.2);
    maybe(m, 0.2, "squeeze_limit_N", 20, 900);
    maybe(m, 0.2, "rating_N", 50, 3000);
    put(m, "}");
}

static void
put_load(maker *m)
{
    int n_parts = 1 + pick(m, 3);

    m->n_grips = 2 + pick(m, 5);
    put(m, "\"load\":{\"parts\":[");
    for (int i = 0; i < n_parts; i++)
        put_part(m, i);
    put(m, "],\"grips\":[");
    for (int i = 0; i < m->n_grips; i++)
        put_grip(m, i);
    put(m, "]}");
}

static void
put_site(maker *m)
{
    put(m, ",\"site\":{\"openings\":[");
    if (chance(m, 0.2))
        put(m, "{\"name\":\"door\",\"x_m\":%.4g,\"width_m\":%.4g,\"height_m\":%.4g}",
            between(m, 0, 5), between(m, 0.6, 1.4), between(m, 1.7, 2.4));
    put(m, "]");
    maybe(m, 0.8, "friction", 0.05, 1.0);
    if (chance(m, 0.4)) {
        double x_m = 0.5, z_m = 0.0;
        int n_risers = pick(m, 5);

        put(m, ",\"floor\":[[0,0]");
        for (int i = 0; i < n_risers; i++) {
            put(m, ",[%.4g,%.4g]", x_m, z_m);
            z_m += between(m, -0.18, 0.2);
            put(m, ",[%.4g,%.4g]", x_m, z_m);
            x_m += between(m, 0.2, 1.2);
        }
        put(m, ",[%.4g,%.4g]]", x_m + 1.0, z_m + between(m, -0.2, 0.2));
    }
    maybe(m, 0.3, "rating_kPa", 5, 500);
    maybe(m, 0.3, "rating_kg", 80, 900);
    maybe(m, 0.1, "rating_spread_kPa", 1, 10);
    maybe(m, 0.2, "bearing_fraction", 0.1, 1);
    maybe(m, 0.2, "exit_m", 0, 100);
    maybe(m, 0.3, "headroom_m", 1.6, 4.0);
    maybe(m, 0.3, "width_m", 0.5, 3.0);
    if (chance(m, 0.2))
        put(m, ",\"corner_m\":[%.4g,%.4g]", between(m, 0.6, 3.0), between(m, 0.6, 3.0));
    maybe(m, 0.3, "temperature_C", -20, 45);
    maybe_bool(m, 0.3, "wet");
    maybe(m, 0.2, "wind_m_s", 0, 25);
    if (chance(m, 0.2)) {
        double x_m = between(m, 0, 5);

        put(m, ",\"obstacles\":[{\"name\":\"sill\",\"x_m\":[%.4g,%.4g],\"z_m\":[0,%.4g]}]", x_m,
            x_m + 0.3, between(m, 0.02, 0.6));
    }
    put(m, "}");
}

static void
put_point(maker *m, int i, double *x_m)
{
    static const char *const moves[] = {"lift", "carry", "lower", "slide", "hold"};
    int move = pick(m, 5);

    if (i > 0 && (move == 1 || move == 3))
        *x_m += between(m, 0.2, 4.0);
    put(m, "%s{\"x_m\":%.4g,\"z_m\":%.4g,\"move\":\"%s\"", i > 0 ? "," : "", *x_m,
        between(m, 0.0, 1.6), i == 0 ? "start" : moves[move]);
    if (chance(m, 0.1))
        maybe(m, 1.0, "y_m", -1, 1);
    maybe(m, 0.4, "reach_m", 0.1, 0.9);
    maybe(m, 0.2, "turn_deg", -60, 60);
    maybe(m, 0.2, "pitch_deg", -30, 30);
    if (i > 0)
        maybe(m, 0.5, "time_s", 0.5, 10);
    if (i > 0 && move == 4)
        put(m, ",\"hold_s\":%.4g", between(m, 0.5, 40));
    else
        maybe(m, 0.1, "hold_s", 0.5, 20);
    if (chance(m, 0.2)) {
        put(m, ",\"precise\":true");
        maybe(m, 0.7, "tolerance_m", 0.001, 0.05);
    }
    maybe_bool(m, 0.4, "set_down");
    maybe(m, 0.1, "held_up", 0, 1);
    if (i > 0 && move == 3)
        maybe(m, 0.8, "slide_friction", 0.05, 0.6);
    put(m, "}");
}

static void
put_route_and_work(maker *m)
{
    double x_m = 0.0;

    m->n_points = 2 + pick(m, 4);
    put(m, ",\"route\":{\"points\":[");
    for (int i = 0; i < m->n_points; i++)
        put_point(m, i, &x_m);
    put(m, "]}");
    if (chance(m, 0.7)) {
        put(m, ",\"work\":{\"cycles_per_hour\":%.4g", between(m, 0.5, 300));
        maybe(m, 0.7, "hours", 0.2, 10);
        maybe(m, 0.3, "recovery_h", 0, 4);
        maybe(m, 0.3, "one_way_empty_walk_m", 0, 50);
        put(m, "}");
    }
}

static void
put_workers(maker *m)
{
    m->n_workers = 1 + pick(m, 3);
    put(m, ",\"workers\":[");
    for (int i = 0; i < m->n_workers; i++) {
        put(m, "%s{\"id\":\"w%d\"", i > 0 ? "," : "", i);
        WORDS(m, 0.7, "sex", "female", "male");
        maybe(m, 0.6, "stature_m", 1.45, 2.05);
        maybe(m, 0.6, "mass_kg", 45, 130);
        maybe(m, 0.6, "age_years", 18, 70);
        put(m, "}");
    }
    put(m, "]");
}

static void
put_powered(maker *m, int i)
{
    double reach_m = 0.2, payload_kg = between(m, 20, 80);

    if (chance(m, 0.9))
        put(m, ",\"gain\":{\"hands\":%.4g,\"trunk\":%.4g}", between(m, 1, 30),
            between(m, 1, 10));
    if (chance(m, 0.9))
        put(m, ",\"residual_N\":{\"hands\":%.4g,\"trunk\":%.4g}", between(m, 0, 40),
            between(m, 0, 80));
    maybe(m, 0.9, "self_carried", 0, 1);
    maybe(m, 0.3, "self_carried_unpowered", 0, 1);
    if (chance(m, 0.9)) {
        put(m, ",\"rating\":[");
        for (int k = 0, n = 1 + pick(m, 4); k < n; k++) {
            put(m, "%s{\"reach_m\":%.4g,\"payload_kg\":%.4g}", k > 0 ? "," : "", reach_m,
                payload_kg);
            reach_m += between(m, 0.05, 0.3);
            payload_kg *= between(m, 0.2, 1.0);
        }
        put(m, "]");
    }
    if (chance(m, 0.9))
        put(m, ",\"hand_height_m\":[%.4g,%.4g]", between(m, 0.0, 0.6), between(m, 1.0, 2.0));
    if (chance(m, 0.4))
        put(m, ",\"foot\":{\"heel_m\":%.4g,\"toe_m\":%.4g,\"width_m\":%.4g}",
            between(m, 0.04, 0.1), between(m, 0.15, 0.3), between(m, 0.1, 0.2));
    if (chance(m, 0.5))
        put(m, ",\"centre_m\":[%.4g,%.4g]", between(m, -0.2, 0.1), between(m, 0.7, 1.2));
    maybe_bool(m, 0.5, "lockable");
    WORDS(m, 0.9, "on_power_loss", "lock", "descend", "limp");
    maybe(m, 0.8, "sink_m_s", 0.02, 0.4);
    maybe(m, 0.8, "lock_s", 1, 600);
    maybe(m, 0.3, "brake_s", 0, 0.3);
    maybe_bool(m, 0.9, "walks_without_power");
    if (chance(m, 0.8))
        put(m,
            ",\"power\":{\"idle_W\":%.4g,\"hold_W_per_Nm\":%.4g,\"lift_efficiency\":%.4g,"
            "\"battery_Wh\":%.4g,\"reserve\":%.4g,"
            "\"swap_min\":%.4g}",
            between(m, 10, 300), between(m, 0.1, 3), between(m, 0.1, 0.9),
            between(m, 100, 2000), between(m, 0, 0.5), between(m, 0.5, 20));
    m->has_effectors[i] = chance(m, 0.5);
    if (m->has_effectors[i])
        put(m,
            ",\"effectors\":[{\"id\":\"e%d\",\"kind\":\"pad\",\"friction\":%.4g,\"max_force_"
            "N\":%.4g,\"holds_without_power\":%s}]",
            i, between(m, 0.2, 1.0), between(m, 100, 900), chance(m, 0.5) ? "true" : "false");
}

static void
put_suits(maker *m)
{
    m->n_suits = pick(m, 3);
    put(m, ",\"suits\":[");
    for (int i = 0; i < m->n_suits; i++) {
        m->is_powered[i] = chance(m, 0.6);
        put(m, "%s{\"id\":\"s%d\",\"kind\":\"%s\",\"mass_kg\":%.4g", i > 0 ? "," : "", i,
            m->is_powered[i] ? "powered"
            : chance(m, 0.5) ? "back_spring"
                             : "arm_spring",
            between(m, 2, 90));
        maybe(m, 0.8, "release_self_s", 2, 90);
        maybe(m, 0.8, "release_helper_s", 2, 60);
        maybe_bool(m, 0.8, "stairs");
        maybe(m, 0.6, "slope_deg", 0, 20);
        if (chance(m, 0.8))
            put(m, ",\"wearer_stature_m\":[1.55,1.95],\"wearer_mass_kg\":[50,110]");
        if (chance(m, 0.5))
            put(m, ",\"temperature_C\":[-5,40]");
        maybe_bool(m, 0.5, "wet");
        if (m->is_powered[i])
            put_powered(m, i);
        else
            put(m,
                ",\"torque\":[{\"angle_deg\":0,\"moment_Nm\":0},{\"angle_deg\":%.4g,\"moment_"
                "Nm\":%.4g}]",
                between(m, 20, 110), between(m, 5, 60));
        put(m, "}");
    }
    put(m, "]");
}

static void
put_option(maker *m, int o)
{
    int n_bearers = 1 + pick(m, MIN(m->n_workers, m->n_grips)), next = 0;

    put(m, "%s{\"id\":\"o%d\"", o > 0 ? "," : "", o);
    maybe(m, 0.2, "reach_m", 0.15, 0.8);
    if (chance(m, 0.1))
        put(m, ",\"heading_deg\":%d", 90 * pick(m, 4));
    if (chance(m, 0.1))
        put(m, ",\"stance\":\"kneeling\"");
    put(m, ",\"bearers\":[");
    for (int b = 0; b < n_bearers; b++) {
        int left = m->n_grips - next - (n_bearers - b - 1), wished = 1 + pick(m, 2),
            mine = MIN(wished, left);
        int suit = m->n_suits > 0 && chance(m, 0.5) ? pick(m, m->n_suits) : -1;

        put(m, "%s{\"id\":\"b%d\",\"worker\":\"w%d\",\"grips\":[", b > 0 ? "," : "", b, b);
        for (int g = 0; g < mine; g++)
            put(m, "%s\"g%d\"", g > 0 ? "," : "", next++);
        put(m, "]");
        if (suit >= 0) {
            put(m, ",\"suit\":\"s%d\"", suit);
            if (m->is_powered[suit] && m->has_effectors[suit] && chance(m, 0.5))
                put(m, ",\"effector\":\"e%d\"", suit);
        }
        WORDS(m, 0.3, "style", "free", "legs", "back");
        WORDS(m, 0.3, "stands", "behind", "ahead", "left", "right");
        put(m, "}");
    }
    put(m, "]}");
}

static void
put_rest(maker *m)
{
    if (chance(m, 0.6)) {
        put(m, ",\"policy\":{\"near_ratio\":%.4g", between(m, 0.5, 0.99));
        WORDS(m, 0.8, "team_rule", "none", "gb", "mil-std-1472", "en-1005-2");
        WORDS(m, 0.2, "segments", "de_leva", "winter");
        maybe(m, 0.3, "strength_percentile", 1, 99);
        maybe(m, 0.3, "slip_factor", 1, 3);
        maybe(m, 0.3, "couple_Nm", 1, 60);
        maybe(m, 0.2, "walking_factor", 1, 2);
        maybe(m, 0.2, "step_Hz", 1, 3);
        maybe(m, 0.2, "glove_loss_fraction", 0, 0.5);
        put(m, "}");
    }
    if (chance(m, 0.3))
        put(m, ",\"criteria\":[\"niosh-1994\",\"gb-guideline\"]");
    if (chance(m, 0.4))
        put(m,
            ",\"roles\":[{\"role\":\"rescuer\",\"before\":\"b0\",\"after\":\"%s\"},{\"role\":"
            "\"opens the door\",\"before\":\"b0\",\"after\":\"%s\"}]",
            chance(m, 0.5) ? "" : "the foreman", chance(m, 0.5) ? "" : "device: wedge");
    if (chance(m, 0.3))
        put(m, ",\"gates\":[{\"gate\":\"drill done\",\"answer\":\"%s\"}]",
            chance(m, 0.5)   ? "yes"
            : chance(m, 0.5) ? "no"
                             : "open");
}

char *
hs_random_document(guint32 number)
{
    maker m = {.out = g_string_new(NULL), .rand = g_rand_new_with_seed(number)};
    int n_options;

    put(&m,
        "{\"format\":\"handspike-assessment\",\"version\":1,\"about\":{\"title\":\"Document "
        "%u\"},",
        number);
    put_load(&m);
    put_site(&m);
    put_route_and_work(&m);
    put_workers(&m);
    put_suits(&m);
    n_options = 1 + pick(&m, 3);
    put(&m, ",\"options\":[");
    for (int o = 0; o < n_options; o++)
        put_option(&m, o);
    put(&m, "]");
    put_rest(&m);
    put(&m, "}");
    g_rand_free(m.rand);
    return g_string_free(m.out, FALSE);
}

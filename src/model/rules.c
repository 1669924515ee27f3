/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  do the fields of a document fit together?
 * Answer:    hs_rules_check(): ids, sizes of shapes, liquids, hands, moves, curves; every fault with its path.
 * Not here:  one field's type and range (reader.c). */
#include "faults.h"
#include "load.h"
#include "reader.h"
#include "translate.h"
#include "units.h"

#include <math.h>
#include <string.h>

static void say(GPtrArray *faults, const char *text, const char *format, ...)
    G_GNUC_PRINTF(3, 4);

static void
say(GPtrArray *faults, const char *text, const char *format, ...)
{
    va_list args;
    char *path;

    va_start(args, format);
    path = g_strdup_vprintf(format, args);
    va_end(args);
    /* A value that was refused already needs no second sentence. */
    if (!hs_faults_has(faults, path))
        hs_faults_add(faults, path, g_strdup(text), FALSE);
    g_free(path);
}

/* Item i of a list has the id of an earlier one. */
static gboolean
is_repeated(const char *const *ids, int i)
{
    for (int j = 0; j < i && ids[i] != NULL; j++)
        if (g_strcmp0(ids[i], ids[j]) == 0)
            return TRUE;
    return FALSE;
}

static void say_id(GPtrArray *faults, const char *id, const char *format, ...)
    G_GNUC_PRINTF(3, 4);

static void
say_id(GPtrArray *faults, const char *id, const char *format, ...)
{
    va_list args;
    g_autofree char *path = NULL, *is = NULL;
    g_autoptr(JsonNode) node = json_node_init_string(json_node_alloc(), id);

    va_start(args, format);
    path = g_strdup_vprintf(format, args);
    va_end(args);
    is = hs_fault_value(node);
    hs_faults_add(
        faults, path,
        g_strdup_printf(_("is %s, which stands twice; allowed: each id once in its list"), is),
        FALSE);
}

#define CHECK_IDS(faults, list, n, format, ...)                                                \
    do {                                                                                       \
        g_autofree const char **ids_ = g_new0(const char *, (gsize)(n) + 1);                   \
        for (int i_ = 0; i_ < (n); i_++) {                                                     \
            ids_[i_] = (list)[i_].id;                                                          \
            if (is_repeated(ids_, i_))                                                         \
                say_id(faults, ids_[i_], format "[%d].id", ##__VA_ARGS__, i_);                 \
        }                                                                                      \
    } while (0)

static void
check_ids(const hs_task *task, GPtrArray *faults)
{
    CHECK_IDS(faults, task->load.parts, task->load.n_parts, "load.parts");
    CHECK_IDS(faults, task->load.grips, task->load.n_grips, "load.grips");
    CHECK_IDS(faults, task->workers, task->n_workers, "workers");
    CHECK_IDS(faults, task->suits, task->n_suits, "suits");
    for (int i = 0; i < task->n_suits; i++)
        CHECK_IDS(faults, task->suits[i].effectors, task->suits[i].n_effectors,
                  "suits[%d].effectors", i);
    CHECK_IDS(faults, task->options, task->n_options, "options");
    for (int i = 0; i < task->n_options; i++)
        CHECK_IDS(faults, task->options[i].bearers, task->options[i].n_bearers,
                  "options[%d].bearers", i);
}

static gboolean
has_sizes(const hs_part *part)
{
    return part->size_m.x > 0 && part->size_m.y > 0 && part->size_m.z > 0;
}

static void
check_mass_of(const hs_part *part, int i, GPtrArray *faults)
{
    g_autofree char *mass = g_strdup_printf("load.parts[%d].mass_kg", i);
    g_autofree char *density = g_strdup_printf("load.parts[%d].density_kg_m3", i);

    if (hs_faults_has(faults, mass) || hs_faults_has(faults, density))
        return;
    if (hs_has(part->mass_kg) && hs_has(part->density_kg_m3))
        say(faults, _("stands beside mass_kg; allowed: one of the two"), "%s", density);
    else if (!hs_has(part->mass_kg) && !hs_has(part->density_kg_m3))
        say(faults, _("is missing; needed: mass_kg or density_kg_m3"), "%s", mass);
    else if (part->shape == HS_SHAPE_POINT && !hs_has(part->mass_kg))
        say(faults, _("is missing; needed: a point has no volume, so its mass"), "%s", mass);
}

static void
check_shape(const hs_part *part, int i, GPtrArray *faults)
{
    gboolean edges = part->shape == HS_SHAPE_BOX || part->shape == HS_SHAPE_WEDGE;
    gboolean along = part->shape == HS_SHAPE_CYLINDER || part->shape == HS_SHAPE_TUBE ||
                     part->shape == HS_SHAPE_CONE;
    gboolean round =
        along || part->shape == HS_SHAPE_SPHERE || part->shape == HS_SHAPE_HEMISPHERE;

    if (edges && !has_sizes(part))
        say(faults, _("is missing; needed for this shape: [x, y, z]"), "load.parts[%d].size_m",
            i);
    if (round && !hs_has(part->radius_m))
        say(faults, _("is missing; needed for this shape: a number above 0"),
            "load.parts[%d].radius_m", i);
    if (along && !hs_has(part->length_m))
        say(faults, _("is missing; needed for this shape: a number above 0"),
            "load.parts[%d].length_m", i);
    if (part->shape == HS_SHAPE_TUBE && !hs_has(part->inner_radius_m))
        say(faults, _("is missing; needed for this shape: a number above 0"),
            "load.parts[%d].inner_radius_m", i);
    if (part->shape == HS_SHAPE_TUBE && part->inner_radius_m >= part->radius_m)
        say(faults, _("is not less than the radius; allowed: above 0, below radius_m"),
            "load.parts[%d].inner_radius_m", i);
    if ((along || part->shape == HS_SHAPE_HEMISPHERE) && part->axis == 0)
        say(faults, _("is missing; needed for this shape: one of x, y, z"),
            "load.parts[%d].axis", i);
    check_mass_of(part, i, faults);
}

static double
depth_of(const hs_part *part)
{
    if (part->shape == HS_SHAPE_BOX)
        return part->size_m.z;
    return part->axis == HS_AXIS_X || part->axis == HS_AXIS_Y ? 2.0 * part->radius_m
                                                              : part->length_m;
}

static void
check_liquid(const hs_part *part, int i, GPtrArray *faults)
{
    if (!part->has_liquid)
        return;
    if (part->is_void)
        say(faults, _("a void holds no liquid; allowed: in a part that is no void"),
            "load.parts[%d].liquid", i);
    if (part->turn_deg.x != 0 || part->turn_deg.y != 0 || part->turn_deg.z != 0)
        say(faults,
            _("liquid in a turned part; allowed: with turn_deg absent or 0, a lying cylinder "
              "by its axis"),
            "load.parts[%d].liquid", i);
    if (!hs_has(part->mass_kg))
        say(faults, _("is missing; needed: the mass of the empty container"),
            "load.parts[%d].mass_kg", i);
    if (part->shape != 0 && part->shape != HS_SHAPE_BOX && part->shape != HS_SHAPE_CYLINDER) {
        say(faults, _("liquid in this shape; allowed: in a box or a cylinder"),
            "load.parts[%d].liquid", i);
        return;
    }
    if (part->liquid_depth_m > depth_of(part) * (1.0 + 1e-12))
        say(faults, _("is deeper than the container; allowed: at most its height"),
            "load.parts[%d].liquid.depth_m", i);
}

static void
check_grip(const hs_grip *grip, int i, GPtrArray *faults)
{
    if (grip->has_inward && !(fabs(hs_vec3_length(grip->inward) - 1.0) <= 1e-3))
        say(faults, _("is no unit vector; allowed: a length of 1"), "load.grips[%d].inward", i);
}

static void
check_weighing(const hs_weighing *weighing, int i, GPtrArray *faults)
{
    if (hs_has(weighing->tilt_deg) && weighing->tilt_deg != 0.0 &&
        weighing->about != HS_AXIS_X && weighing->about != HS_AXIS_Y)
        say(faults, _("is missing; needed with a tilt: one of x, y"),
            "load.weighings[%d].about", i);
}

static void
check_load(const hs_task *task, GPtrArray *faults)
{
    const hs_load *load = &task->load;

    if (load->n_parts == 0 && load->n_weighings == 0 &&
        !hs_faults_has(faults, "load.weighings") && !hs_faults_stands(faults, "load"))
        say(faults, _("neither parts nor weighings; needed: one of them"), "load.parts");
    for (int i = 0; i < load->n_parts; i++) {
        g_autofree char *path = g_strdup_printf("load.parts[%d]", i);

        if (hs_faults_stands(faults, path))
            continue;
        check_shape(&load->parts[i], i, faults);
        check_liquid(&load->parts[i], i, faults);
    }
    for (int i = 0; i < load->n_weighings; i++)
        check_weighing(&load->weighings[i], i, faults);
    for (int i = 0; i < load->n_grips; i++)
        check_grip(&load->grips[i], i, faults);
}

#define LEG_LEAST_s                                                                            \
    0.01 /* common practice, no source: nobody moves a load faster, and no division by 0 */

static void
check_route(const hs_task *task, GPtrArray *faults)
{
    const hs_route *route = &task->route;

    for (int i = 0; i < route->n_points; i++) {
        if (i == 0 && route->points[i].move != 0 && route->points[i].move != HS_MOVE_START)
            say(faults, _("is not start; allowed for the first point: start"),
                "route.points[0].move");
        if (i > 0 && route->points[i].move == HS_MOVE_START)
            say(faults,
                _("is start; allowed after the first point: one of lift, carry, lower, slide, "
                  "hold"),
                "route.points[%d].move", i);
        /* The start is not a leg: a 0 there does no harm. */
        if (i > 0 && route->points[i].time_s < LEG_LEAST_s)
            say(faults, _("is too short; allowed: 0.01 to 36000 s"), "route.points[%d].time_s",
                i);
    }
}

static gboolean
gives_reach(const hs_option *option, const hs_point *point, int i)
{
    return hs_has(option->reach_m) ||
           (i < option->n_reach && hs_has(option->reach_each_m[i])) || hs_has(point->reach_m);
}

/* After weighings alone there is no outline to measure a default reach from. */
static void
check_reach(const hs_task *task, GPtrArray *faults)
{
    if (task->load.n_parts > 0 || task->load.n_weighings == 0)
        return;
    for (int i = 0; i < task->route.n_points; i++)
        for (int k = 0; k < task->n_options; k++)
            if (!gives_reach(&task->options[k], &task->route.points[i], i)) {
                say(faults,
                    _("is missing; needed: a weighed load has no outline to take a default "
                      "from"),
                    "route.points[%d].reach_m", i);
                break;
            }
}

static void
check_order(
    double least, double most, GPtrArray *faults, const char *list, int i, const char *key)
{
    if (hs_has(least) && hs_has(most) && !(least <= most))
        say(faults, _("the first figure is above the second; allowed: [least, most]"),
            "%s[%d].%s", list, i, key);
}

static void
check_site(const hs_task *task, GPtrArray *faults)
{
    const hs_site *site = &task->site;

    for (int i = 1; i < site->n_floor; i++)
        if (site->floor[i].x < site->floor[i - 1].x)
            say(faults,
                _("x falls from the floor point before; allowed: x increasing, two points at "
                  "one x for a riser"),
                "site.floor[%d]", i);
    for (int i = 2; i < site->n_floor; i++)
        if (site->floor[i].x == site->floor[i - 2].x)
            say(faults, _("is a third floor point at one x; allowed: two, for a riser"),
                "site.floor[%d]", i);
    for (int i = 0; i < site->n_obstacles; i++) {
        check_order(site->obstacles[i].x_m[0], site->obstacles[i].x_m[1], faults,
                    "site.obstacles", i, "x_m");
        check_order(site->obstacles[i].z_m[0], site->obstacles[i].z_m[1], faults,
                    "site.obstacles", i, "z_m");
    }
}

static void
check_suit(const hs_suit *suit, int i, GPtrArray *faults)
{
    for (int k = 1; k < suit->n_rating; k++)
        if (!(suit->rating[k].reach_m > suit->rating[k - 1].reach_m))
            say(faults, _("does not rise; allowed: above the reach of the entry before"),
                "suits[%d].rating[%d].reach_m", i, k);
    for (int k = 1; k < suit->n_torque; k++)
        if (!(suit->torque[k].angle_deg > suit->torque[k - 1].angle_deg))
            say(faults, _("does not rise; allowed: above the angle of the entry before"),
                "suits[%d].torque[%d].angle_deg", i, k);
    check_order(suit->hand_height_m[0], suit->hand_height_m[1], faults, "suits", i,
                "hand_height_m");
    check_order(suit->wearer_stature_m[0], suit->wearer_stature_m[1], faults, "suits", i,
                "wearer_stature_m");
    check_order(suit->wearer_mass_kg[0], suit->wearer_mass_kg[1], faults, "suits", i,
                "wearer_mass_kg");
    check_order(suit->temperature_C[0], suit->temperature_C[1], faults, "suits", i,
                "temperature_C");
}

static int
hands_of(const hs_task *task, const hs_bearer *bearer)
{
    int sum = 0;

    for (int i = 0; i < bearer->n_grips; i++) {
        int hands = task->load.grips[bearer->grips[i]].hands;

        sum += hands != 0 ? hands : bearer->n_grips == 1 ? 2 : 1;
    }
    return sum;
}

static void
check_bearer(const hs_task *task, int o, int b, gboolean *used, GPtrArray *faults)
{
    const hs_option *option = &task->options[o];
    const hs_bearer *bearer = &option->bearers[b];

    for (int i = 0; i < bearer->n_grips; i++) {
        if (used[bearer->grips[i]])
            say(faults, _("this grip is used twice in the option; allowed: once"),
                "options[%d].bearers[%d].grips[%d]", o, b, i);
        used[bearer->grips[i]] = TRUE;
    }
    for (int other = 0; other < b; other++)
        if (bearer->worker >= 0 && option->bearers[other].worker == bearer->worker)
            say(faults, _("this worker is in the option twice; allowed: once"),
                "options[%d].bearers[%d].worker", o, b);
    if (hands_of(task, bearer) > 2)
        say(faults, _("more than two hands for one bearer; allowed: two, by the grips' hands"),
            "options[%d].bearers[%d].grips", o, b);
}

static void
check_options(const hs_task *task, GPtrArray *faults)
{
    int n_baselines = 0;

    for (int o = 0; o < task->n_options; o++) {
        g_autofree gboolean *used = g_new0(gboolean, (gsize)task->load.n_grips + 1);

        if (task->options[o].baseline == HS_YES && ++n_baselines > 1)
            say(faults, _("is a second baseline; allowed: one"), "options[%d].baseline", o);
        for (int b = 0; b < task->options[o].n_bearers; b++)
            check_bearer(task, o, b, used, faults);
    }
}

/* The same sum as in an assessment, so that the two never disagree. */
static void
check_mass(const hs_task *task, GPtrArray *faults)
{
    hs_arena *arena = hs_arena_new();
    hs_load_state state;
    hs_error error = {HS_OK, "load", 0, 0, 0};

    if (hs_load_solve(&task->load, arena, NULL, NULL, &state, &error) != HS_OK) {
        if (!(error.value > 0.0) && error.least >= 0.0 &&
            strstr(error.where, "weighings") == NULL)
            say(faults, _("the total mass is not above 0; allowed: above 0 kg"), "%s",
                error.where);
        else
            say(faults,
                _("these readings do not determine a centre of gravity; needed: a total above "
                  "0 and supports apart from each other"),
                "%s", error.where);
    }
    hs_arena_free(arena);
}

void
hs_rules_check(const hs_task *task, GPtrArray *faults)
{
    if (hs_faults_stands(faults, "$"))
        return;
    check_ids(task, faults);
    check_load(task, faults);
    check_site(task, faults);
    check_route(task, faults);
    for (int i = 0; i < task->n_suits; i++)
        check_suit(&task->suits[i], i, faults);
    check_options(task, faults);
    check_reach(task, faults);
    if (task->policy.team_rule == HS_TEAM_MEASURED && !hs_has(task->policy.team_factor))
        say(faults,
            _("is missing; needed with the team rule measured: a number above 0, at most 1"),
            "policy.team_factor");
    if (!hs_faults_has(faults, "load"))
        check_mass(task, faults);
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  do the fields of a document fit together?
 * Answer:    hs_rules_check(): ids, sizes of shapes, liquids, hands, moves, curves; every fault with its path.
 * Not here:  one field's type and range (reader.c). */
#include "load.h"
#include "reader.h"
#include "strict.h"
#include "translate.h"
#include "units.h"

#include <math.h>
#include <string.h>

static void
say(GPtrArray *faults, const char *text, const char *format, ...) G_GNUC_PRINTF(3, 4);

static void
say(GPtrArray *faults, const char *text, const char *format, ...)
{
    va_list args;
    char *path;

    va_start(args, format);
    path = g_strdup_vprintf(format, args);
    va_end(args);
    g_ptr_array_add(faults, hs_fault_new(path, g_strdup(text), FALSE));
    g_free(path);
}

/* Item i of a list has the id of an earlier one. */
static gboolean
is_repeated(const char *const *ids, int i)
{
    for (int j = 0; j < i; j++)
        if (g_strcmp0(ids[i], ids[j]) == 0)
            return TRUE;
    return FALSE;
}

#define CHECK_IDS(faults, list, n, format, ...)                                                \
    do {                                                                                       \
        g_autofree const char **ids_ = g_new0(const char *, (gsize)(n) + 1);                   \
        for (int i_ = 0; i_ < (n); i_++) {                                                     \
            ids_[i_] = (list)[i_].id;                                                          \
            if (ids_[i_] != NULL && ids_[i_][0] == '\0')                                       \
                say(faults, _("is empty; an id has at least one character"), format "[%d].id", ##__VA_ARGS__, i_); \
            else if (is_repeated(ids_, i_))                                                    \
                say(faults, _("stands twice; each id once in its list"), format "[%d].id", ##__VA_ARGS__, i_); \
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
        CHECK_IDS(faults, task->suits[i].effectors, task->suits[i].n_effectors, "suits[%d].effectors", i);
    CHECK_IDS(faults, task->options, task->n_options, "options");
    for (int i = 0; i < task->n_options; i++)
        CHECK_IDS(faults, task->options[i].bearers, task->options[i].n_bearers, "options[%d].bearers", i);
}

static gboolean
has_sizes(const hs_part *part)
{
    return part->size_m.x > 0 && part->size_m.y > 0 && part->size_m.z > 0;
}

static void
check_shape(const hs_part *part, int i, GPtrArray *faults)
{
    gboolean edges = part->shape == HS_SHAPE_BOX || part->shape == HS_SHAPE_WEDGE;
    gboolean round = !edges && part->shape != HS_SHAPE_POINT;
    gboolean along = part->shape == HS_SHAPE_CYLINDER || part->shape == HS_SHAPE_TUBE || part->shape == HS_SHAPE_CONE;

    if (edges && !has_sizes(part))
        say(faults, _("is missing and is needed for this shape"), "load.parts[%d].size_m", i);
    if (round && !hs_has(part->radius_m))
        say(faults, _("is missing and is needed for this shape"), "load.parts[%d].radius_m", i);
    if (along && !hs_has(part->length_m))
        say(faults, _("is missing and is needed for this shape"), "load.parts[%d].length_m", i);
    if (part->shape == HS_SHAPE_TUBE && !hs_has(part->inner_radius_m))
        say(faults, _("is missing and is needed for this shape"), "load.parts[%d].inner_radius_m", i);
    if (part->shape == HS_SHAPE_TUBE && hs_has(part->radius_m) && part->inner_radius_m >= part->radius_m)
        say(faults, _("must be less than radius_m"), "load.parts[%d].inner_radius_m", i);
    if (hs_has(part->mass_kg) == hs_has(part->density_kg_m3))
        say(faults, _("one of mass_kg and density_kg_m3 is wanted, not both and not neither"), "load.parts[%d].mass_kg", i);
    else if (part->shape == HS_SHAPE_POINT && !hs_has(part->mass_kg))
        say(faults, _("is missing and is needed for this shape"), "load.parts[%d].mass_kg", i);
}

static double
depth_of(const hs_part *part)
{
    if (part->shape == HS_SHAPE_BOX)
        return part->size_m.z;
    return part->axis == HS_AXIS_X || part->axis == HS_AXIS_Y ? 2.0 * part->radius_m : part->length_m;
}

static void
check_liquid(const hs_part *part, int i, GPtrArray *faults)
{
    if (!part->has_liquid)
        return;
    if (part->is_void)
        say(faults, _("a void holds no liquid"), "load.parts[%d].liquid", i);
    if (part->turn_deg.x != 0 || part->turn_deg.y != 0 || part->turn_deg.z != 0)
        say(faults, _("a turned part holds no liquid here; use axis or an upright part"), "load.parts[%d].liquid", i);
    if (!hs_has(part->mass_kg))
        say(faults, _("a container with liquid needs mass_kg, its mass when empty"), "load.parts[%d].mass_kg", i);
    if (part->shape != HS_SHAPE_BOX && part->shape != HS_SHAPE_CYLINDER) {
        say(faults, _("allowed for a box or a cylinder only"), "load.parts[%d].liquid", i);
        return;
    }
    if (part->liquid_depth_m > depth_of(part) * (1.0 + 1e-12))
        say(faults, _("is deeper than the container"), "load.parts[%d].liquid.depth_m", i);
}

static void
check_grip(const hs_grip *grip, int i, GPtrArray *faults)
{
    if (grip->has_inward && !(fabs(hs_vec3_length(grip->inward) - 1.0) <= 1e-3))
        say(faults, _("is no unit vector; its length must be 1"), "load.grips[%d].inward", i);
}

static void
check_weighing(const hs_weighing *weighing, int i, GPtrArray *faults)
{
    if (hs_has(weighing->tilt_deg) && weighing->tilt_deg != 0.0 && weighing->about != HS_AXIS_X && weighing->about != HS_AXIS_Y)
        say(faults, _("is needed with a tilt; allowed is one of x, y"), "load.weighings[%d].about", i);
    if (weighing->about == HS_AXIS_Z)
        say(faults, _("allowed is one of x, y"), "load.weighings[%d].about", i);
}

static void
check_load(const hs_task *task, GPtrArray *faults)
{
    const hs_load *load = &task->load;

    if (load->n_parts == 0 && load->n_weighings == 0)
        say(faults, _("neither parts nor weighings; one of them is needed"), "load.parts");
    for (int i = 0; i < load->n_parts; i++) {
        check_shape(&load->parts[i], i, faults);
        check_liquid(&load->parts[i], i, faults);
    }
    for (int i = 0; i < load->n_weighings; i++)
        check_weighing(&load->weighings[i], i, faults);
    for (int i = 0; i < load->n_grips; i++)
        check_grip(&load->grips[i], i, faults);
}

static void
check_route(const hs_task *task, GPtrArray *faults)
{
    const hs_route *route = &task->route;

    for (int i = 0; i < route->n_points; i++) {
        if (i == 0 && route->points[i].move != 0 && route->points[i].move != HS_MOVE_START)
            say(faults, _("the first point's move must be start"), "route.points[0].move");
        if (i > 0 && route->points[i].move == HS_MOVE_START)
            say(faults, _("start is for the first point only; allowed is one of lift, carry, lower, slide, hold"),
                "route.points[%d].move", i);
    }
}

static gboolean
gives_reach(const hs_option *option, const hs_point *point, int i)
{
    return hs_has(option->reach_m) || (i < option->n_reach && hs_has(option->reach_each_m[i])) || hs_has(point->reach_m);
}

/* After weighings alone there is no outline to measure a default reach from. */
static void
check_reach(const hs_task *task, GPtrArray *faults)
{
    if (task->load.n_parts > 0)
        return;
    for (int i = 0; i < task->route.n_points; i++)
        for (int k = 0; k < task->n_options; k++)
            if (!gives_reach(&task->options[k], &task->route.points[i], i)) {
                say(faults, _("is needed: a weighed load has no outline to take a default from"), "route.points[%d].reach_m", i);
                break;
            }
}

static void
check_order(double least, double most, GPtrArray *faults, const char *list, int i, const char *key)
{
    if (hs_has(least) && hs_has(most) && !(least <= most))
        say(faults, _("the first figure must not be above the second"), "%s[%d].%s", list, i, key);
}

static void
check_site(const hs_task *task, GPtrArray *faults)
{
    const hs_site *site = &task->site;

    for (int i = 1; i < site->n_floor; i++)
        if (site->floor[i].x < site->floor[i - 1].x)
            say(faults, _("x must not fall from one floor point to the next"), "site.floor[%d]", i);
    for (int i = 0; i < site->n_obstacles; i++) {
        check_order(site->obstacles[i].x_m[0], site->obstacles[i].x_m[1], faults, "site.obstacles", i, "x_m");
        check_order(site->obstacles[i].z_m[0], site->obstacles[i].z_m[1], faults, "site.obstacles", i, "z_m");
    }
}

static void
check_suit(const hs_suit *suit, int i, GPtrArray *faults)
{
    for (int k = 1; k < suit->n_rating; k++)
        if (!(suit->rating[k].reach_m > suit->rating[k - 1].reach_m))
            say(faults, _("reach must rise from one point of the curve to the next"), "suits[%d].rating[%d].reach_m", i, k);
    for (int k = 1; k < suit->n_torque; k++)
        if (!(suit->torque[k].angle_deg > suit->torque[k - 1].angle_deg))
            say(faults, _("the angle must rise from one point of the curve to the next"), "suits[%d].torque[%d].angle_deg", i, k);
    check_order(suit->hand_height_m[0], suit->hand_height_m[1], faults, "suits", i, "hand_height_m");
    check_order(suit->wearer_stature_m[0], suit->wearer_stature_m[1], faults, "suits", i, "wearer_stature_m");
    check_order(suit->wearer_mass_kg[0], suit->wearer_mass_kg[1], faults, "suits", i, "wearer_mass_kg");
    check_order(suit->temperature_C[0], suit->temperature_C[1], faults, "suits", i, "temperature_C");
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
            say(faults, _("this grip is held already in this option; each grip once"), "options[%d].bearers[%d].grips[%d]", o, b, i);
        used[bearer->grips[i]] = TRUE;
    }
    for (int other = 0; other < b; other++)
        if (bearer->worker >= 0 && option->bearers[other].worker == bearer->worker)
            say(faults, _("this worker is already in this option; each worker once"), "options[%d].bearers[%d].worker", o, b);
    if (hands_of(task, bearer) > 2)
        say(faults, _("more than two hands for one bearer"), "options[%d].bearers[%d].grips", o, b);
}

static void
check_options(const hs_task *task, GPtrArray *faults)
{
    int n_baselines = 0;

    for (int o = 0; o < task->n_options; o++) {
        g_autofree gboolean *used = g_new0(gboolean, (gsize)task->load.n_grips + 1);

        if (task->options[o].baseline == HS_YES && ++n_baselines > 1)
            say(faults, _("a second baseline; allowed is one"), "options[%d].baseline", o);
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
        if (!(error.value > 0.0) && error.least >= 0.0 && strstr(error.where, "weighings") == NULL)
            say(faults, _("the total mass must be above 0"), "%s", error.where);
        else
            say(faults, _("these readings do not determine a centre of gravity"), "%s", error.where);
    }
    hs_arena_free(arena);
}

void
hs_rules_check(const hs_task *task, GPtrArray *faults)
{
    guint before = faults->len;

    check_ids(task, faults);
    check_load(task, faults);
    check_site(task, faults);
    check_route(task, faults);
    for (int i = 0; i < task->n_suits; i++)
        check_suit(&task->suits[i], i, faults);
    check_options(task, faults);
    check_reach(task, faults);
    if (task->policy.team_rule == HS_TEAM_MEASURED && !hs_has(task->policy.team_factor))
        say(faults, _("is needed with the team rule measured"), "policy.team_factor");
    if (faults->len == before)
        check_mass(task, faults);
}

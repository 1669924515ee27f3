/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  does a box on a tilting plane slip and tip where a general-purpose rigid-body engine says so?
 * Answer:    random boxes, centres of mass, frictions and ways of tilting; the engine moves the box, the core only asks for
 *            equilibrium of its corners. Both turning points lie within one step of the tilt.
 * Not here:  printed problems of crates and ramps (test_shares.c).
 * Source:    Open Dynamics Engine of Debian 12 (package libode-dev), dWorldStep: the whole set of contacts in one
 *            complementarity problem; friction boxes turned into the line of the fall, so that they are exact there. */
#include "grip.h"
#include "units.h"

#include <glib.h>
#include <math.h>
#include <ode/ode.h>

enum {
    BOXES = 40,
    CONTACTS = 8,
    STEPS = 1500
};
static const double TILT_STEP_RAD = 0.25 * HS_PI / 180.0;
static const double TIME_STEP_S = 0.001;
/* The box sinks in by this, so that every corner stays in contact. */
static const double LAYER_m = 1e-5;

typedef struct {
    double length_m, width_m, height_m; /* x, y, z */
    hs_vec3 cg_m;                       /* from the middle of the box */
    double friction, heading_rad;       /* way of the fall in plan */
} box;

typedef enum {
    STAYS,
    SLIPS,
    TIPS
} fate;

static box
any_box(GRand *rand)
{
    box of = {.length_m = g_rand_double_range(rand, 0.2, 1.2),
              .width_m = g_rand_double_range(rand, 0.2, 1.2),
              .height_m = g_rand_double_range(rand, 0.2, 1.6),
              .friction = g_rand_double_range(rand, 0.15, 0.9),
              .heading_rad = g_rand_double_range(rand, 0.0, 2.0 * HS_PI)};

    of.cg_m = (hs_vec3){of.length_m * g_rand_double_range(rand, -0.3, 0.3),
                        of.width_m * g_rand_double_range(rand, -0.3, 0.3),
                        of.height_m * g_rand_double_range(rand, -0.4, 0.4)};
    return of;
}

static hs_vec3
gravity(const box *of, double tilt_rad)
{
    const double level_m_s2 = HS_GRAVITY_m_s2 * sin(tilt_rad);

    return (hs_vec3){level_m_s2 * cos(of->heading_rad), level_m_s2 * sin(of->heading_rad),
                     -HS_GRAVITY_m_s2 * cos(tilt_rad)};
}

/* --- the core ------------------------------------------------------------------------------------------------------- */

static bool
core_holds(const box *of, double tilt_rad, double friction)
{
    const double x_m = of->length_m / 2.0, y_m = of->width_m / 2.0;
    /* One edge of the cone's polygon along the fall: exact there, as in the engine. */
    hs_contact corners[4];
    hs_vec3 g = gravity(of, tilt_rad);
    hs_wrench need = {.force_N = {-g.x, -g.y, -g.z}}; /* of 1 kg */

    for (int i = 0; i < 4; i++)
        corners[i] = (hs_contact){
            .at_m = {(i & 1 ? x_m : -x_m) - of->cg_m.x, (i & 2 ? y_m : -y_m) - of->cg_m.y,
                     -of->height_m / 2.0 - of->cg_m.z},
            .inward = {0.0, 0.0, 1.0},
            .friction = friction,
        };
    return hs_grip_closure(corners, 4, &need, false, HS_GRIP_EDGES) != HS_HOLD_NONE;
}

/* The least tilt at which the core finds no equilibrium. */
static double
core_turns_at(const box *of, double friction)
{
    double low = 0.0, high = 89.0 * HS_PI / 180.0;

    while (high - low > 1e-7)
        *(core_holds(of, (low + high) / 2.0, friction) ? &low : &high) = (low + high) / 2.0;
    return low;
}

/* From the CG along the fall to the edge of the base, turned: hs_grip_tip_rad(). */
static double
core_tips_at(const box *of)
{
    double x = cos(of->heading_rad), y = sin(of->heading_rad);
    double ahead_m = (of->length_m / 2.0 - copysign(1.0, x) * of->cg_m.x) / fabs(x);
    double aside_m = (of->width_m / 2.0 - copysign(1.0, y) * of->cg_m.y) / fabs(y);

    return hs_grip_tip_rad(fmin(ahead_m, aside_m), of->height_m / 2.0 + of->cg_m.z);
}

/* A plate lying flat turns over beyond 60 degrees only, where nothing is carried: not asked. */
static box
random_box(GRand *rand)
{
    box of = any_box(rand);

    while (core_tips_at(&of) > HS_PI / 3.0)
        of = any_box(rand);
    return of;
}

/* --- the engine ----------------------------------------------------------------------------------------------------- */

typedef struct {
    dWorldID world;
    dJointGroupID joints;
    double friction;
    dVector3 fall; /* way of the fall, level */
} scene;

static void
touch(void *data, dGeomID a, dGeomID b)
{
    scene *on = data;
    dContactGeom places[CONTACTS];
    int n = dCollide(a, b, CONTACTS, places, sizeof places[0]);

    for (int i = 0; i < n; i++) {
        dContact contact = {.geom = places[i]};

        contact.surface.mode =
            dContactApprox1 | dContactFDir1 | dContactSoftCFM | dContactSoftERP;
        contact.surface.mu = on->friction;
        contact.surface.soft_cfm = 1e-9;
        contact.surface.soft_erp = 0.2;
        for (int k = 0; k < 3; k++)
            contact.fdir1[k] = on->fall[k];
        dJointAttach(dJointCreateContact(on->world, on->joints, &contact), dGeomGetBody(a),
                     dGeomGetBody(b));
    }
}

/* Gone: moved by a centimetre or turned by a degree. A turn tells the two apart. */
static fate
watch(scene *on, dSpaceID space, dBodyID body)
{
    const dReal *at = dBodyGetPosition(body), *turned = dBodyGetRotation(body);
    const dReal start[2] = {at[0], at[1]};
    double turned_rad;

    for (int step = 0; step < STEPS; step++) {
        dSpaceCollide(space, on, touch);
        dWorldStep(on->world, TIME_STEP_S);
        dJointGroupEmpty(on->joints);
        turned_rad = acos(fmin(turned[10], 1.0));
        if (hypot(at[0] - start[0], at[1] - start[1]) > 0.01 || turned_rad > 0.02)
            return turned_rad > 0.004 ? TIPS : SLIPS;
    }
    return STAYS;
}

static fate
engine_fate(const box *of, double tilt_rad, double friction)
{
    hs_vec3 g = gravity(of, tilt_rad);
    scene on = {dWorldCreate(), dJointGroupCreate(0), friction, {0}};
    dSpaceID space = dSimpleSpaceCreate(NULL);
    dBodyID body = dBodyCreate(on.world);
    dGeomID shape = dCreateBox(space, of->length_m, of->width_m, of->height_m);
    dMass mass;
    fate end;

    on.fall[0] = cos(of->heading_rad);
    on.fall[1] = sin(of->heading_rad);
    dCreatePlane(space, 0, 0, 1, 0);
    dWorldSetGravity(on.world, g.x, g.y, g.z);
    dWorldSetContactSurfaceLayer(on.world, LAYER_m);
    dMassSetBoxTotal(&mass, 1.0, of->length_m, of->width_m, of->height_m);
    dBodySetMass(body, &mass);
    dGeomSetBody(shape, body);
    dGeomSetOffsetPosition(shape, -of->cg_m.x, -of->cg_m.y, -of->cg_m.z);
    dBodySetPosition(body, 0, 0, of->height_m / 2.0 + of->cg_m.z - LAYER_m);
    end = watch(&on, space, body);
    dSpaceDestroy(space);
    dJointGroupDestroy(on.joints);
    dWorldDestroy(on.world);
    return end;
}

/* --- comparison ----------------------------------------------------------------------------------------------------- */

/* Tilted a step at a time from well below `near_rad`; returns the middle of the step in which the box went. */
static double
engine_turns_at(const box *of, double friction, double near_rad, fate *ret_end)
{
    double tilt_rad = fmax(0.0, floor(near_rad / TILT_STEP_RAD) - 8.0) * TILT_STEP_RAD;

    for (;;) {
        *ret_end = engine_fate(of, tilt_rad, friction);
        if (*ret_end != STAYS)
            return tilt_rad - TILT_STEP_RAD / 2.0;
        g_assert_cmpfloat(tilt_rad, <, near_rad + 8.0 * TILT_STEP_RAD);
        tilt_rad += TILT_STEP_RAD;
    }
}

/* Friction without end: the box can only turn over. */
static void
box_tips_where_the_engine_tips_it(void)
{
    GRand *rand = g_rand_new_with_seed(21);

    for (int i = 0; i < BOXES; i++) {
        box of = random_box(rand);
        double core_rad = core_tips_at(&of), engine_rad;
        fate end;

        engine_rad = engine_turns_at(&of, dInfinity, core_rad, &end);
        g_test_message("box %d: core tips at %.3f, engine at %.3f deg", i,
                       core_rad * HS_DEG_PER_RAD, engine_rad * HS_DEG_PER_RAD);
        g_assert_cmpint(end, ==, TIPS);
        g_assert_cmpfloat(fabs(core_rad - core_turns_at(&of, 1e3)), <, 1e-6);
        g_assert_cmpfloat(fabs(core_rad - engine_rad), <=, TILT_STEP_RAD);
    }
    g_rand_free(rand);
}

/* Friction of at most 0.9 of what would be needed to turn the box over. Nearer than that only the core is asked for what comes first:
 * the engine limits friction by the normal forces of a box without friction, so that a box about to turn may slide too early. */
static void
box_slips_where_the_engine_lets_it_slip(void)
{
    GRand *rand = g_rand_new_with_seed(20);

    for (int i = 0; i < BOXES;) {
        box of = random_box(rand);
        double slip_rad = atan(of.friction), tip_rad = core_tips_at(&of);
        double core_rad = core_turns_at(&of, of.friction), engine_rad;
        fate end;

        /* The cone as a polygon loses up to half a per cent of the friction. */
        g_assert_cmpfloat(core_rad, <=, fmin(slip_rad, tip_rad) + 1e-6);
        g_assert_cmpfloat(core_rad, >=, atan(0.995 * tan(fmin(slip_rad, tip_rad))) - 1e-6);
        if (of.friction > 0.9 * tan(tip_rad))
            continue;
        engine_rad = engine_turns_at(&of, of.friction, slip_rad, &end);
        g_test_message("box %d: core slips at %.3f, engine at %.3f deg", i,
                       core_rad * HS_DEG_PER_RAD, engine_rad * HS_DEG_PER_RAD);
        g_assert_cmpint(end, ==, SLIPS);
        g_assert_cmpfloat(fabs(slip_rad - engine_rad), <=, TILT_STEP_RAD);
        g_assert_cmpfloat(fabs(core_rad - engine_rad), <=, TILT_STEP_RAD);
        i++;
    }
    g_rand_free(rand);
}

int
main(int argc, char **argv)
{
    int failed;

    g_test_init(&argc, &argv, NULL);
    g_test_add_func("/engine/box_tips_where_the_engine_tips_it",
                    box_tips_where_the_engine_tips_it);
    g_test_add_func("/engine/box_slips_where_the_engine_lets_it_slip",
                    box_slips_where_the_engine_lets_it_slip);
    dInitODE();
    failed = g_test_run();
    dCloseODE();
    return failed;
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what is asked?
 * Answer:    the assessment document as plain structs, read-only for core: keys of the file are the members' names.
 * Not here:  defaults (each module applies its own and reports it through assume.h), JSON (model/reader.c).
 *
 * A number that the file does not give is HS_ABSENT (NaN). An enum or tri-state that it does not give is 0. A string or
 * list that it does not give is NULL / n = 0. References are indices into the task's lists; -1 is none. */
#ifndef HS_TASK_H
#define HS_TASK_H

#include "status.h"
#include "vec.h"

typedef enum {
    HS_UNKNOWN = 0,
    HS_NO,
    HS_YES
} hs_tri;

typedef enum {
    HS_SHAPE_BOX = 1,
    HS_SHAPE_CYLINDER,
    HS_SHAPE_TUBE,
    HS_SHAPE_SPHERE,
    HS_SHAPE_HEMISPHERE,
    HS_SHAPE_CONE,
    HS_SHAPE_WEDGE,
    HS_SHAPE_POINT
} hs_shape;

typedef enum {
    HS_AXIS_X = 1,
    HS_AXIS_Y,
    HS_AXIS_Z
} hs_axis;
typedef enum {
    HS_KNOWN_WEIGHED = 1,
    HS_KNOWN_LABEL,
    HS_KNOWN_ESTIMATED
} hs_known;
typedef enum {
    HS_GRIP_HANDLE = 1,
    HS_GRIP_EDGE,
    HS_GRIP_HOOK,
    HS_GRIP_STRAP,
    HS_GRIP_PAD,
    HS_GRIP_CRADLE
} hs_grip_kind;
typedef enum {
    HS_COUPLING_GOOD = 1,
    HS_COUPLING_FAIR,
    HS_COUPLING_POOR
} hs_coupling;
typedef enum {
    HS_MOVE_START = 1,
    HS_MOVE_LIFT,
    HS_MOVE_CARRY,
    HS_MOVE_LOWER,
    HS_MOVE_SLIDE,
    HS_MOVE_HOLD
} hs_move;
typedef enum {
    HS_SEX_FEMALE = 1,
    HS_SEX_MALE
} hs_sex;
typedef enum {
    HS_SUIT_POWERED = 1,
    HS_SUIT_BACK_SPRING,
    HS_SUIT_ARM_SPRING
} hs_suit_kind;
typedef enum {
    HS_LOSS_LOCK = 1,
    HS_LOSS_DESCEND,
    HS_LOSS_LIMP
} hs_loss;
typedef enum {
    HS_EFFECTOR_HOOK = 1,
    HS_EFFECTOR_PAD,
    HS_EFFECTOR_CRADLE
} hs_effector_kind;
typedef enum {
    HS_STANCE_STANDING = 1,
    HS_STANCE_KNEELING
} hs_stance_kind;
typedef enum {
    HS_STYLE_FREE = 1,
    HS_STYLE_LEGS,
    HS_STYLE_BACK
} hs_style;
typedef enum {
    HS_STANDS_BEHIND = 1,
    HS_STANDS_AHEAD,
    HS_STANDS_LEFT,
    HS_STANDS_RIGHT
} hs_stands;
typedef enum {
    HS_WAY_REMOVE = 1,
    HS_WAY_SPLIT,
    HS_WAY_REHEIGHT,
    HS_WAY_MECHANISE
} hs_way;
typedef enum {
    HS_ANSWER_DONE = 1,
    HS_ANSWER_NOT_POSSIBLE,
    HS_ANSWER_PLANNED
} hs_way_answer;
typedef enum {
    HS_GATE_YES = 1,
    HS_GATE_NO,
    HS_GATE_OPEN
} hs_gate_answer;
typedef enum {
    HS_TEAM_NONE = 1,
    HS_TEAM_GB,
    HS_TEAM_MIL_STD_1472,
    HS_TEAM_EN_1005_2,
    HS_TEAM_MEASURED
} hs_team_rule;

/* Which published table the masses of the body's segments and their places are from; 0: the default, de Leva's. */
typedef enum {
    HS_SEGMENTS_DE_LEVA = 1,
    HS_SEGMENTS_WINTER
} hs_segment_table;

typedef struct {
    const char *title, *place, *task, *assessor, *date, *reference, *review_due, *notes;
} hs_about;

typedef struct {
    const char *id, *name;
    hs_shape shape;
    hs_vec3 size_m; /* box, wedge: edges in the part's own axes */
    double radius_m, inner_radius_m, length_m;
    hs_axis axis;
    hs_vec3 centre_m; /* the part's own centroid, load frame */
    hs_vec3
        turn_deg; /* about the fixed axes x, then y, then z of the load frame; zero when absent */
    double mass_kg, density_kg_m3;
    bool is_void;
    hs_known known;
    double mass_tol_kg;
    bool has_liquid;
    double liquid_density_kg_m3, liquid_depth_m;
} hs_part;

typedef struct {
    double at_x_m, at_y_m, reading_kg;
} hs_reading;

typedef struct {
    double tilt_deg; /* 0 when absent: level */
    hs_axis about;   /* x or y: the axis it was tilted about */
    int n_readings;
    const hs_reading *readings;
} hs_weighing;

typedef struct {
    const char *id;
    hs_vec3 at_m; /* load frame */
    hs_grip_kind kind;
    int hands; /* 1 or 2; 0: not given */
    hs_coupling coupling;
    bool has_inward;
    hs_vec3 inward; /* unit normal into the load */
    double friction, squeeze_limit_N, rating_N;
    double pad_along_m, pad_up_m;
} hs_grip;

typedef struct {
    const char *name;
    int n_parts, n_weighings, n_grips;
    const hs_part *parts;
    const hs_weighing *weighings;
    const hs_grip *grips;
} hs_load;

typedef struct {
    const char *name;
    double x_m, width_m, height_m;
} hs_opening;

typedef struct {
    const char *name;
    double x_m[2], z_m[2];
} hs_obstacle;

typedef struct {
    int n_floor;
    const hs_vec2 *
        floor; /* x = along the way, y = height z; x not decreasing; two points at one x are a riser */
    double friction, rating_kPa, rating_kg, headroom_m, width_m;
    double bearing_fraction;  /* of a sole that meets the floor (grating); absent: all of it */
    double rating_spread_kPa; /* load spread over the floor */
    double exit_m;            /* way to a place where nobody has to be carried further */
    double corner_in_m, corner_out_m;
    double temperature_C;
    hs_tri wet;
    double wind_m_s;
    int n_openings, n_obstacles;
    const hs_opening *openings;
    const hs_obstacle *obstacles;
} hs_site;

typedef struct {
    double x_m, z_m, y_m; /* load origin; z above the world's zero */
    double reach_m, turn_deg, pitch_deg;
    hs_move move;
    double time_s, hold_s;
    hs_tri precise, set_down, sketched;
    double tolerance_m;
    double meet;    /* count of studs, pins or rails to meet at once */
    double held_up; /* 0..1 */
    double slide_friction;
} hs_point;

typedef struct {
    int n_points;
    const hs_point *points;
} hs_route;

typedef struct {
    double cycles_per_hour, hours, recovery_h, one_way_empty_walk_m;
} hs_work;

typedef struct {
    const char *id, *name;
    hs_sex sex;
    double stature_m, mass_kg, age_years;
} hs_worker;

typedef struct {
    double reach_m, payload_kg;
} hs_rating_point;

typedef struct {
    double angle_deg, moment_Nm;
} hs_torque_point;

typedef struct {
    const char *id;
    hs_effector_kind kind;
    double friction, max_force_N, change_s;
    hs_tri holds_without_power;
} hs_effector;

typedef struct {
    const char *id, *name;
    hs_suit_kind kind;
    /* all kinds */
    double mass_kg, release_self_s, release_helper_s, donning_min, depth_m;
    const char *source;
    hs_tri gain_measured;
    double wearer_stature_m[2], wearer_mass_kg[2];
    hs_tri stairs;
    double slope_deg;
    double temperature_C[2];
    hs_tri wet;
    /* powered */
    double centre_x_m, centre_z_m; /* from the ankles' midpoint, wearer's sagittal plane */
    double self_carried, self_carried_unpowered;
    double gain_hands, gain_trunk;
    double residual_hands_N, residual_trunk_N;
    double harness_m;
    int n_rating;
    const hs_rating_point *rating; /* reach rising */
    double hand_height_m[2];
    double foot_heel_m, foot_toe_m, foot_width_m;
    double width_m, height_m;
    hs_tri lockable;
    hs_loss on_power_loss;
    double sink_m_s, lock_s, brake_s;
    hs_tri walks_without_power;
    bool has_power;
    double idle_W, hold_W_per_Nm, hold_at_Nm, lift_efficiency, battery_Wh, reserve, swap_min;
    int n_effectors;
    const hs_effector *effectors;
    /* springs */
    int n_torque;
    const hs_torque_point *torque; /* angle rising */
} hs_suit;

typedef struct {
    const char *id;
    int worker;   /* index, never -1 */
    int suit;     /* index or -1 */
    int effector; /* index in that suit or -1 */
    int n_grips;
    const int *grips; /* indices into load.grips */
    hs_style style;   /* 0 when absent: free */
    hs_stands stands; /* 0 when absent: by the rule of the file format */
} hs_bearer;

typedef struct {
    const char *id, *name;
    hs_tri baseline;
    double reach_m; /* one number for all points, or HS_ABSENT */
    int n_reach;    /* or one per point (NaN: the route's) */
    const double *reach_each_m;
    double heading_deg;    /* 0 when absent */
    hs_stance_kind stance; /* one for all, or 0 */
    int n_stance;          /* or one per point */
    const hs_stance_kind *stance_each;
    int n_bearers;
    const hs_bearer *bearers;
} hs_option;

typedef struct {
    const char *role, *before, *after; /* "" = empty */
} hs_role;

typedef struct {
    hs_way way;
    hs_way_answer answer;
    const char *reason;
} hs_better_way;

typedef struct {
    const char *role, *said;
} hs_consulted;

typedef struct {
    const char *gate;
    hs_gate_answer answer;
    const char *note;
} hs_gate;

typedef struct {
    const char *quantity;
    double predicted, measured;
    const char *unit, *date;
} hs_trial;

typedef enum {
    HS_SITE_ANY_HEIGHT = 0,
    HS_SITE_TO_KNUCKLE, /* the hands' highest place on the leg, by the worker's landmarks */
    HS_SITE_TO_SHOULDER,
    HS_SITE_ABOVE_SHOULDER
} hs_site_height;

/* For whom and what a figure of a set is said. Zero: not asked. */
typedef struct {
    hs_sex sex;
    double age_from_years, age_below_years;
    double above_per_h, to_per_h;       /* cycles */
    double above_h, to_h;               /* of the shift */
    double carry_above_m, slope_to_deg; /* of the way */
    bool lifts_only, carries_only;      /* lift and lower legs; carry legs */
    int hands;                          /* 1 or 2 */
    hs_site_height height;
} hs_site_when;

typedef struct {
    const char *id;
    double figure;
    bool is_unconfirmed; /* from a set of limits that says so; never from a document */
    bool
        is_published; /* a publication's figure and not the site's: it keeps out where that is silent */
    bool by_body_mass;         /* figure times the worker's own mass */
    const char *set, *wording; /* of the set that it comes from; NULL: the document's own */
    const hs_site_when *when;  /* NULL: always */
} hs_site_limit;

typedef struct {
    hs_team_rule team_rule;
    hs_segment_table segments;
    double team_factor, strength_percentile, slip_factor, near_ratio, couple_Nm, walking_factor,
        step_Hz, step_m;
    double glove_loss_fraction; /* part of the grip strength that a glove takes */
    int n_site_limits;
    const hs_site_limit *site_limits;
} hs_policy;

typedef struct {
    double draws, seed, friction_pct, gain_pct, reach_cm, mass_pct;
} hs_doubt_input;

typedef struct {
    double number;
    const char *date, *author, *summary, *previous_digest;
} hs_revision;

typedef struct {
    const char *role, *name, *date, *digest;
} hs_signature;

typedef struct {
    hs_about about;
    hs_load load;
    hs_site site;
    hs_route route;
    hs_work work;
    int n_workers, n_suits, n_options, n_roles, n_better_ways, n_criteria, n_consulted, n_gates,
        n_trials, n_revisions, n_signatures;
    bool has_roles;    /* the list is there, even if empty */
    bool has_criteria; /* the list is there */
    const hs_worker *workers;
    const hs_suit *suits;
    const hs_option *options;
    const hs_role *roles;
    const hs_better_way *better_ways;
    const char *const *criteria;
    const hs_consulted *consulted;
    const hs_gate *gates;
    const hs_trial *trials;
    hs_policy policy;
    hs_doubt_input doubt;
    const hs_revision *revisions;
    const hs_signature *signatures;
    struct hs_memo *memo; /* no part of the document: what earlier assessments found, or NULL */
} hs_task;

#endif

/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what is answered?
 * Answer:    samples along the route, findings, totals, verdict for each option; nothing of it points into the document
 *            but names and ids.
 * Not here:  JSON (model/results_json.c), sentences (model/words.c).
 *
 * A figure that could not be computed is HS_ABSENT here and absent in every file. */
#ifndef HS_RESULT_H
#define HS_RESULT_H

#include "assume.h"
#include "message.h"
#include "task.h"
#include "working.h"

typedef enum {
#define CHECK(id, name, unit, function) HS_CHECK_##id,
#include "lists/checks.def"
#undef CHECK
    HS_N_CHECKS
} hs_check_id;

typedef enum {
    HS_STATUS_NONE = 0, /* no finding: the check was not asked */
    HS_STATUS_WITHIN,
    HS_STATUS_NEAR,
    HS_STATUS_BEYOND,
    HS_STATUS_NOT_JUDGED
} hs_finding_status;

typedef enum {
    HS_WHY_COMPUTED = 1,
    HS_WHY_SCOPE,
    HS_WHY_MISSING
} hs_why;

typedef struct {
    hs_check_id check;
    int bearer; /* index in the option, -1: none */
    double route, t_s;
    double value, limit, ratio;
    const char *unit;
    hs_finding_status status;
    hs_why why;
    hs_confidence confidence;
    hs_source_id source;
    hs_message text, remedy;
    hs_working working;
} hs_finding;

enum {
    HS_JOINT_ANKLE,
    HS_JOINT_KNEE,
    HS_JOINT_HIP,
    HS_JOINT_L5S1,
    HS_JOINT_SHOULDER,
    HS_JOINT_ELBOW,
    HS_N_JOINTS
};

typedef struct {
    double moment_Nm, strength_Nm, utilisation;
} hs_joint_result;

enum {
    HS_POSE_ANKLE,
    HS_POSE_KNEE,
    HS_POSE_HIP,
    HS_POSE_L5S1,
    HS_POSE_SHOULDER,
    HS_POSE_ELBOW,
    HS_POSE_HAND,
    HS_POSE_NECK,
    HS_N_POSE
};

typedef enum {
    HS_LOST_NONE = 0,
    HS_LOST_LOCKED,
    HS_LOST_DESCENDING,
    HS_LOST_LIMP
} hs_lost_state;

typedef struct {
    bool is_known; /* the block is given at all */
    hs_lost_state state;
    double felt_force_N, hold_s, needed_s;
} hs_power_lost;

#define HS_MAX_BASE 12 /* corners of a base of support */

typedef struct {
    double share_N, share_least_N, share_most_N;
    double hand_force_N, hand_push_N, felt_force_N, suit_force_N, ground_force_N;
    double balance_margin_m;
    hs_vec2 resultant_m; /* world plan; NaN when absent */
    int n_base;
    hs_vec2 base_m[HS_MAX_BASE]; /* world plan, counter-clockwise */
    double l5s1_moment_Nm, compression_N, shear_N;
    bool has_pose;
    bool kneels;
    hs_vec2 pose
        [HS_N_POSE]; /* own sagittal plane: x forward from the ankles' midpoint, y = height over the floor */
    hs_joint_result joints[HS_N_JOINTS]; /* NaN members: joint not in this stance */
    hs_power_lost power_lost;
    /* for drawing, not in the file */
    double feet_x_m, feet_y_m, floor_z_m; /* world: ankles' midpoint in plan, floor under it */
    double facing_rad;  /* direction the bearer faces, from +x, left positive */
    double shortfall_m; /* centimetres missing where no pose was found, else 0 */
} hs_bearer_sample;

typedef struct {
    int grip; /* index into load.grips */
    double up_N;
} hs_grip_sample;

typedef struct {
    double t_s, route;
    int leg;      /* index of the point this leg leads to */
    bool in_hold; /* dwelling at that point */
    double x_m, z_m, y_m, pitch_deg, heading_deg;
    double a_x_m_s2, a_z_m_s2; /* of the CG */
    double v_x_m_s, v_z_m_s;
    hs_vec3 cg_m; /* load's CG, world; z NaN when unknown */
    double combined_kg;
    hs_vec3 combined_m;
    int n_grips;
    const hs_grip_sample *grips;
    const hs_bearer_sample *bearers; /* one for each bearer of the option */
} hs_sample;

typedef struct {
    double energy_Wh_per_h, metabolic_W, mass_moved_kg_per_h, worker_minutes_per_h;
} hs_totals;

typedef enum {
    HS_VERDICT_NONE = 0,
    HS_VERDICT_SUPPORTED,
    HS_VERDICT_WITH_CONDITIONS,
    HS_VERDICT_NOT_SUPPORTED,
    HS_VERDICT_UNDECIDED
} hs_verdict_status;

typedef struct {
    hs_verdict_status status;
    bool suit_only;
    int n_reasons;
    hs_check_id reasons[HS_N_CHECKS]; /* the checks that decide, worst first */
    int n_conditions;
    const hs_message *conditions;
} hs_verdict;

/* Neighbouring samples of a leg, feet at rest, between which a joint turns by more than 10 degrees: no posture lies between. */
typedef struct {
    int n;
    double turn_rad, route; /* the largest, and where it begins */
} hs_jumps;

typedef struct {
    const char *id, *name;
    bool is_baseline;
    bool is_added;          /* the program's own `unaided`: decides nothing */
    const hs_option *asked; /* what was assessed */
    int n_samples;
    const hs_sample *samples;
    hs_jumps jumps;
    int n_findings;
    const hs_finding *
        findings; /* at most one for each check, worst place of the worst bearer; sorted by check id */
    hs_totals totals;
    hs_verdict verdict;
    int n_team_rules; /* 0 for one bearer, and while something is dragged */
    const hs_finding *
        team_rules; /* the check `share` as each rule would have it, from HS_TEAM_GB on: shown, decides nothing */
} hs_option_result;

typedef struct {
    const char *option;
    const char *quantity; /* key with unit: "mass_kg", "reach_m", ... */
    double value;
    hs_check_id check;
    bool is_unlimited; /* nothing turns within the range searched */
} hs_break_even;

typedef struct {
    hs_check_id check;
    double p_within, value_p05, value_p50, value_p95;
} hs_doubt_check;

typedef struct {
    const char *input;
    double share;
} hs_driver;

typedef struct {
    const char *option;
    int n_checks, n_drivers;
    const hs_doubt_check *checks;
    const hs_driver *drivers;
} hs_doubt_option;

typedef struct {
    double mass_kg, mass_tol_kg;
    hs_vec3 centre_m; /* load frame; z NaN when unknown */
    bool has_inertia;
    hs_mat3 inertia_kg_m2; /* about the CG, load axes, off-diagonals minus the integral */
} hs_load_result;

typedef struct {
    hs_load_result load;
    int n_options; /* the document's options, then `unaided` where it was added */
    const hs_option_result *options;
    int baseline; /* index */
    int n_break_even;
    const hs_break_even *break_even;
    int n_doubt; /* 0: not asked */
    const hs_doubt_option *doubt;
    hs_assumptions assumptions;
    int n_cautions;
    const hs_message *cautions;
    /* share_range_N is filled, the search was full (false in a live pass where it waits for the background) */
    bool is_complete;
} hs_results;

typedef enum {
    HS_ASSESS_FULL = 0, /* everything but doubt; break-even included */
    HS_ASSESS_LIVE, /* while dragging: no break-even, ranges and the full grip search only where cheap */
    HS_ASSESS_DOUBT, /* full and doubt */
    HS_ASSESS_PLAIN  /* every check in full, no break-even: surveys */
} hs_assess_mode;

#endif

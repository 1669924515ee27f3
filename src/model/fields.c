/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  which fields has the document, of which kind, in which range?
 * Answer:    these tables.
 * Not here:  rules across fields (rules.c), reading (reader.c). */
#include "fields.h"

#include <float.h>
#include <stddef.h>
#include <string.h>

/* clang-format off */
#define NUM(T, key, member, lo, hi)      {key, HS_KIND_NUMBER, offsetof(T, member), 0, lo, hi, FALSE, FALSE, NULL, NULL}
#define ABOVE(T, key, member, lo, hi)    {key, HS_KIND_NUMBER, offsetof(T, member), 0, lo, hi, TRUE, FALSE, NULL, NULL}
#define NEED(T, key, member, lo, hi)     {key, HS_KIND_NUMBER, offsetof(T, member), 0, lo, hi, FALSE, TRUE, NULL, NULL}
#define PAIR(T, key, member, lo, hi)     {key, HS_KIND_PAIR, offsetof(T, member), 0, lo, hi, FALSE, FALSE, NULL, NULL}
#define VEC(T, key, member, lo, hi, req) {key, HS_KIND_VECTOR, offsetof(T, member), 0, lo, hi, FALSE, req, NULL, NULL}
#define STR(T, key, member)              {key, HS_KIND_STRING, offsetof(T, member), 0, 0, 0, FALSE, FALSE, NULL, NULL}
#define ID(T)                            {"id", HS_KIND_STRING, offsetof(T, id), 0, 0, 0, FALSE, TRUE, NULL, NULL}
#define BOOL(T, key, member)             {key, HS_KIND_BOOL, offsetof(T, member), 0, 0, 0, FALSE, FALSE, NULL, NULL}
#define WORDS(T, key, member, list, req) {key, HS_KIND_WORD, offsetof(T, member), 0, 0, 0, FALSE, req, list, NULL}
#define OBJ(T, key, member, type)        {key, HS_KIND_OBJECT, offsetof(T, member), 0, 0, 0, FALSE, FALSE, NULL, &type}
#define INLINE(key, type)                {key, HS_KIND_INLINE, 0, 0, 0, 0, FALSE, FALSE, NULL, &type}
#define LIST(T, key, member, count, type, most) {key, HS_KIND_LIST, offsetof(T, member), offsetof(T, count), 0, most, FALSE, FALSE, NULL, &type}
#define ZERO(T, key, member, lo, hi)     {key, HS_KIND_NUMBER, offsetof(T, member), 0, lo, hi, .is_zero = TRUE}
#define ZERO_TOLD(T, key, member, lo, hi) {key, HS_KIND_NUMBER, offsetof(T, member), 0, lo, hi, .is_zero = TRUE, .is_told = TRUE}
#define WHOLE(T, key, member, lo, hi)    {key, HS_KIND_NUMBER, offsetof(T, member), 0, lo, hi, .is_whole = TRUE}
#define END                              {NULL, HS_KIND_NUMBER, 0, 0, 0, 0, FALSE, FALSE, NULL, NULL}
#define BIG 1e6

static const char *const shapes[] = {"box", "cylinder", "tube", "sphere", "hemisphere", "cone", "wedge", "point", NULL};
static const char *const axes[] = {"x", "y", "z", NULL};
static const char *const tilt_axes[] = {"x", "y", NULL};
static const char *const knowns[] = {"weighed", "label", "estimated", NULL};
static const char *const grip_kinds[] = {"handle", "edge", "hook", "strap", "pad", "cradle", NULL};
static const char *const couplings[] = {"good", "fair", "poor", NULL};
static const char *const moves[] = {"start", "lift", "carry", "lower", "slide", "hold", NULL};
static const char *const sexes[] = {"female", "male", NULL};
static const char *const suit_kinds[] = {"powered", "back_spring", "arm_spring", NULL};
static const char *const losses[] = {"lock", "descend", "limp", NULL};
static const char *const effector_kinds[] = {"hook", "pad", "cradle", NULL};
static const char *const stances[] = {"standing", "kneeling", NULL};
static const char *const styles[] = {"free", "legs", "back", NULL};
static const char *const stands[] = {"behind", "ahead", "left", "right", NULL};
static const char *const ways[] = {"remove", "split", "reheight", "mechanise", NULL};
static const char *const way_answers[] = {"done", "not_possible", "planned", NULL};
static const char *const gate_answers[] = {"yes", "no", "open", NULL};
static const char *const team_rules[] = {"none", "gb", "mil-std-1472", "en-1005-2", "measured", NULL};
static const char *const segment_tables[] = {"de_leva", "winter", NULL};
static const char *const criteria[] = {"niosh-1994", "iso-11228-1", "en-1005-2", "mil-std-1472", "gb-guideline",
                                       "spine-compression", NULL};
static const char *const of_workers[] = {"workers", NULL};
static const char *const of_suits[] = {"suits", NULL};
static const char *const of_effectors[] = {"effectors", NULL};
static const char *const of_grips[] = {"grips", NULL};

static const hs_field about_fields[] = {
    STR(hs_about, "title", title), STR(hs_about, "place", place), STR(hs_about, "task", task),
    STR(hs_about, "assessor", assessor), STR(hs_about, "date", date), STR(hs_about, "reference", reference),
    STR(hs_about, "review_due", review_due), STR(hs_about, "notes", notes), END};
static const hs_object about = {"about", sizeof(hs_about), about_fields};

static const hs_field liquid_fields[] = {
    {"density_kg_m3", HS_KIND_NUMBER, offsetof(hs_part, liquid_density_kg_m3), 0, 0, 20000, TRUE, TRUE, NULL, NULL},
    NEED(hs_part, "depth_m", liquid_depth_m, 0, 20), END};
static const hs_object liquid = {"liquid", sizeof(hs_part), liquid_fields};

static const hs_field part_fields[] = {
    ID(hs_part), STR(hs_part, "name", name), WORDS(hs_part, "shape", shape, shapes, TRUE),
    {"size_m", HS_KIND_VECTOR, offsetof(hs_part, size_m), 0, 0, 50, TRUE, FALSE, NULL, NULL},
    ABOVE(hs_part, "radius_m", radius_m, 0, 20), ABOVE(hs_part, "inner_radius_m", inner_radius_m, 0, 20),
    ABOVE(hs_part, "length_m", length_m, 0, 50), WORDS(hs_part, "axis", axis, axes, FALSE),
    VEC(hs_part, "centre_m", centre_m, -50, 50, TRUE), VEC(hs_part, "turn_deg", turn_deg, -360, 360, FALSE),
    NUM(hs_part, "mass_kg", mass_kg, 0, BIG), ABOVE(hs_part, "density_kg_m3", density_kg_m3, 0, 25000),
    {"void", HS_KIND_FLAG, offsetof(hs_part, is_void), 0, 0, 0, FALSE, FALSE, NULL, NULL},
    WORDS(hs_part, "known", known, knowns, FALSE), NUM(hs_part, "mass_tol_kg", mass_tol_kg, 0, BIG),
    {"liquid", HS_KIND_INLINE, 0, offsetof(hs_part, has_liquid), 0, 0, FALSE, FALSE, NULL, &liquid}, END};
static const hs_object part = {"part", sizeof(hs_part), part_fields};

static const hs_field reading_fields[] = {
    {"at_m", HS_KIND_PAIR, offsetof(hs_reading, at_x_m), 0, -50, 50, FALSE, TRUE, NULL, NULL},
    NEED(hs_reading, "reading_kg", reading_kg, 0, BIG), END};
static const hs_object reading = {"reading", sizeof(hs_reading), reading_fields};

static const hs_field weighing_fields[] = {
    ZERO(hs_weighing, "tilt_deg", tilt_deg, -60, 60), WORDS(hs_weighing, "about", about, tilt_axes, FALSE),
    {"readings", HS_KIND_LIST, offsetof(hs_weighing, readings), offsetof(hs_weighing, n_readings), 1, 16, FALSE, TRUE, NULL, &reading}, END};
static const hs_object weighing = {"weighing", sizeof(hs_weighing), weighing_fields};

static const hs_field grip_fields[] = {
    ID(hs_grip), VEC(hs_grip, "at_m", at_m, -50, 50, TRUE), WORDS(hs_grip, "kind", kind, grip_kinds, TRUE),
    {"hands", HS_KIND_INT, offsetof(hs_grip, hands), 0, 1, 2, FALSE, FALSE, NULL, NULL},
    WORDS(hs_grip, "coupling", coupling, couplings, FALSE),
    {"inward", HS_KIND_VECTOR, offsetof(hs_grip, inward), offsetof(hs_grip, has_inward), -1.001, 1.001, FALSE, FALSE, NULL, NULL},
    NUM(hs_grip, "friction", friction, 0, 5), ABOVE(hs_grip, "squeeze_limit_N", squeeze_limit_N, 0, BIG),
    ABOVE(hs_grip, "rating_N", rating_N, 0, BIG),
    {"pad_m", HS_KIND_PAIR, offsetof(hs_grip, pad_along_m), 0, 0, 2, TRUE, FALSE, NULL, NULL}, END};
static const hs_object grip = {"grip", sizeof(hs_grip), grip_fields};

static const hs_field load_fields[] = {
    STR(hs_load, "name", name), LIST(hs_load, "parts", parts, n_parts, part, 200),
    LIST(hs_load, "weighings", weighings, n_weighings, weighing, 20),
    {"grips", HS_KIND_LIST, offsetof(hs_load, grips), offsetof(hs_load, n_grips), 1, 64, FALSE, TRUE, NULL, &grip}, END};
static const hs_object load = {"load", sizeof(hs_load), load_fields};

static const hs_field opening_fields[] = {
    STR(hs_opening, "name", name), NEED(hs_opening, "x_m", x_m, -10000, 10000),
    ABOVE(hs_opening, "width_m", width_m, 0, 100), ABOVE(hs_opening, "height_m", height_m, 0, 100), END};
static const hs_object opening = {"opening", sizeof(hs_opening), opening_fields};

static const hs_field obstacle_fields[] = {
    STR(hs_obstacle, "name", name),
    {"x_m", HS_KIND_PAIR, offsetof(hs_obstacle, x_m), 0, -10000, 10000, FALSE, TRUE, NULL, NULL},
    {"z_m", HS_KIND_PAIR, offsetof(hs_obstacle, z_m), 0, -1000, 1000, FALSE, TRUE, NULL, NULL}, END};
static const hs_object obstacle = {"obstacle", sizeof(hs_obstacle), obstacle_fields};

static const hs_field site_fields[] = {
    {"floor", HS_KIND_PLACES, offsetof(hs_site, floor), offsetof(hs_site, n_floor), -10000, 10000, FALSE, FALSE, NULL, NULL},
    NUM(hs_site, "friction", friction, 0, 3), ABOVE(hs_site, "rating_kPa", rating_kPa, 0, BIG),
    ABOVE(hs_site, "rating_kg", rating_kg, 0, BIG), ABOVE(hs_site, "rating_spread_kPa", rating_spread_kPa, 0, BIG),
    ABOVE(hs_site, "bearing_fraction", bearing_fraction, 0, 1), NUM(hs_site, "exit_m", exit_m, 0, 10000), ABOVE(hs_site, "headroom_m", headroom_m, 0, 100),
    ABOVE(hs_site, "width_m", width_m, 0, 100),
    {"corner_m", HS_KIND_PAIR, offsetof(hs_site, corner_in_m), 0, 0, 100, TRUE, FALSE, NULL, NULL},
    NUM(hs_site, "temperature_C", temperature_C, -60, 80), BOOL(hs_site, "wet", wet),
    NUM(hs_site, "wind_m_s", wind_m_s, 0, 60), LIST(hs_site, "openings", openings, n_openings, opening, 100),
    LIST(hs_site, "obstacles", obstacles, n_obstacles, obstacle, 200), END};
static const hs_object site = {"site", sizeof(hs_site), site_fields};

static const hs_field point_fields[] = {
    ZERO_TOLD(hs_point, "x_m", x_m, -10000, 10000), ZERO_TOLD(hs_point, "z_m", z_m, -1000, 1000), ZERO(hs_point, "y_m", y_m, -10000, 10000),
    NUM(hs_point, "reach_m", reach_m, 0, 3), ZERO(hs_point, "turn_deg", turn_deg, -180, 180),
    NUM(hs_point, "pitch_deg", pitch_deg, -89, 89), WORDS(hs_point, "move", move, moves, TRUE),
    NUM(hs_point, "time_s", time_s, 0, 36000), ZERO(hs_point, "hold_s", hold_s, 0, 36000),
    BOOL(hs_point, "precise", precise), BOOL(hs_point, "set_down", set_down), BOOL(hs_point, "sketched", sketched),
    ABOVE(hs_point, "tolerance_m", tolerance_m, 0, 1), WHOLE(hs_point, "meet", meet, 0, 100),
    ZERO(hs_point, "held_up", held_up, 0, 1), NUM(hs_point, "slide_friction", slide_friction, 0, 3), END};
static const hs_object point = {"point", sizeof(hs_point), point_fields};

static const hs_field route_fields[] = {
    {"points", HS_KIND_LIST, offsetof(hs_route, points), offsetof(hs_route, n_points), 2, 200, FALSE, TRUE, NULL, &point}, END};
static const hs_object route = {"route", sizeof(hs_route), route_fields};

static const hs_field work_fields[] = {
    NUM(hs_work, "cycles_per_hour", cycles_per_hour, 0, 3600), NUM(hs_work, "hours", hours, 0, 24),
    NUM(hs_work, "recovery_h", recovery_h, 0, 24), NUM(hs_work, "one_way_empty_walk_m", one_way_empty_walk_m, 0, 10000), END};
static const hs_object work = {"work", sizeof(hs_work), work_fields};

static const hs_field worker_fields[] = {
    ID(hs_worker), STR(hs_worker, "name", name), WORDS(hs_worker, "sex", sex, sexes, FALSE),
    NUM(hs_worker, "stature_m", stature_m, 1.2, 2.3), NUM(hs_worker, "mass_kg", mass_kg, 30, 250),
    NUM(hs_worker, "age_years", age_years, 14, 90), END};
static const hs_object worker = {"worker", sizeof(hs_worker), worker_fields};

static const hs_field gain_fields[] = {
    NUM(hs_suit, "hands", gain_hands, 1, 1000), NUM(hs_suit, "trunk", gain_trunk, 1, 1000), END};
static const hs_object gain = {"gain", sizeof(hs_suit), gain_fields};
static const hs_field residual_fields[] = {
    NUM(hs_suit, "hands", residual_hands_N, 0, 2000), NUM(hs_suit, "trunk", residual_trunk_N, 0, 2000), END};
static const hs_object residual = {"residual_N", sizeof(hs_suit), residual_fields};
static const hs_field rating_fields[] = {
    NEED(hs_rating_point, "reach_m", reach_m, 0, 5), NEED(hs_rating_point, "payload_kg", payload_kg, 0, 2000), END};
static const hs_object rating = {"rating", sizeof(hs_rating_point), rating_fields};
static const hs_field foot_fields[] = {
    NUM(hs_suit, "heel_m", foot_heel_m, 0, 1), NUM(hs_suit, "toe_m", foot_toe_m, 0, 1),
    NUM(hs_suit, "width_m", foot_width_m, 0, 1), END};
static const hs_object foot = {"foot", sizeof(hs_suit), foot_fields};
static const hs_field power_fields[] = {
    NUM(hs_suit, "idle_W", idle_W, 0, 20000), NUM(hs_suit, "hold_W_per_Nm", hold_W_per_Nm, 0, 1000),
    ABOVE(hs_suit, "hold_at_Nm", hold_at_Nm, 0, BIG),
    ABOVE(hs_suit, "lift_efficiency", lift_efficiency, 0, 1), NUM(hs_suit, "battery_Wh", battery_Wh, 0, BIG),
    NUM(hs_suit, "reserve", reserve, 0, 1), NUM(hs_suit, "swap_min", swap_min, 0, 600), END};
static const hs_object power = {"power", sizeof(hs_suit), power_fields};
static const hs_field effector_fields[] = {
    ID(hs_effector), WORDS(hs_effector, "kind", kind, effector_kinds, TRUE), NUM(hs_effector, "friction", friction, 0, 5),
    ABOVE(hs_effector, "max_force_N", max_force_N, 0, BIG), NUM(hs_effector, "change_s", change_s, 0, 36000),
    BOOL(hs_effector, "holds_without_power", holds_without_power), END};
static const hs_object effector = {"effector", sizeof(hs_effector), effector_fields};
static const hs_field torque_fields[] = {
    NEED(hs_torque_point, "angle_deg", angle_deg, -180, 180), NEED(hs_torque_point, "moment_Nm", moment_Nm, 0, 2000), END};
static const hs_object torque = {"torque", sizeof(hs_torque_point), torque_fields};

static const hs_field suit_fields[] = {
    ID(hs_suit), STR(hs_suit, "name", name), WORDS(hs_suit, "kind", kind, suit_kinds, TRUE),
    NUM(hs_suit, "mass_kg", mass_kg, 0, 500), NUM(hs_suit, "release_self_s", release_self_s, 0, 36000),
    NUM(hs_suit, "release_helper_s", release_helper_s, 0, 36000), NUM(hs_suit, "donning_min", donning_min, 0, 600),
    NUM(hs_suit, "depth_m", depth_m, 0, 3), STR(hs_suit, "source", source), BOOL(hs_suit, "gain_measured", gain_measured),
    PAIR(hs_suit, "wearer_stature_m", wearer_stature_m, 0, 3), PAIR(hs_suit, "wearer_mass_kg", wearer_mass_kg, 0, 300),
    BOOL(hs_suit, "stairs", stairs), NUM(hs_suit, "slope_deg", slope_deg, 0, 60),
    PAIR(hs_suit, "temperature_C", temperature_C, -100, 100), BOOL(hs_suit, "wet", wet),
    PAIR(hs_suit, "centre_m", centre_x_m, -3, 3), NUM(hs_suit, "self_carried", self_carried, 0, 1),
    NUM(hs_suit, "self_carried_unpowered", self_carried_unpowered, 0, 1), INLINE("gain", gain), INLINE("residual_N", residual),
    NUM(hs_suit, "harness_m", harness_m, 0, 1), LIST(hs_suit, "rating", rating, n_rating, rating, 100),
    PAIR(hs_suit, "hand_height_m", hand_height_m, -1, 4), INLINE("foot", foot), ABOVE(hs_suit, "width_m", width_m, 0, 5),
    ABOVE(hs_suit, "height_m", height_m, 0, 5), BOOL(hs_suit, "lockable", lockable),
    WORDS(hs_suit, "on_power_loss", on_power_loss, losses, FALSE), ABOVE(hs_suit, "sink_m_s", sink_m_s, 0, 10),
    NUM(hs_suit, "lock_s", lock_s, 0, BIG), NUM(hs_suit, "brake_s", brake_s, 0, 10),
    BOOL(hs_suit, "walks_without_power", walks_without_power),
    {"power", HS_KIND_INLINE, 0, offsetof(hs_suit, has_power), 0, 0, FALSE, FALSE, NULL, &power},
    LIST(hs_suit, "effectors", effectors, n_effectors, effector, 50), LIST(hs_suit, "torque", torque, n_torque, torque, 100), END};
static const hs_object suit = {"suit", sizeof(hs_suit), suit_fields};

static const hs_field bearer_fields[] = {
    ID(hs_bearer), {"worker", HS_KIND_REF, offsetof(hs_bearer, worker), 0, 0, 0, FALSE, TRUE, of_workers, NULL},
    {"suit", HS_KIND_REF, offsetof(hs_bearer, suit), 0, 0, 0, FALSE, FALSE, of_suits, NULL},
    {"effector", HS_KIND_REF, offsetof(hs_bearer, effector), 0, 0, 0, FALSE, FALSE, of_effectors, NULL},
    {"grips", HS_KIND_REFS, offsetof(hs_bearer, grips), offsetof(hs_bearer, n_grips), 1, 64, FALSE, TRUE, of_grips, NULL},
    WORDS(hs_bearer, "style", style, styles, FALSE), WORDS(hs_bearer, "stands", stands, stands, FALSE), END};
static const hs_object bearer = {"bearer", sizeof(hs_bearer), bearer_fields};

static const hs_field option_fields[] = {
    ID(hs_option), STR(hs_option, "name", name), BOOL(hs_option, "baseline", baseline),
    {"reach_m", HS_KIND_EACH, offsetof(hs_option, reach_m), offsetof(hs_option, n_reach), 0, 3, FALSE, FALSE, NULL, NULL},
    ZERO(hs_option, "heading_deg", heading_deg, -360, 360),
    {"stance", HS_KIND_STANCES, offsetof(hs_option, stance), offsetof(hs_option, n_stance), 0, 0, FALSE, FALSE, stances, NULL},
    {"bearers", HS_KIND_LIST, offsetof(hs_option, bearers), offsetof(hs_option, n_bearers), 1, 8, FALSE, TRUE, NULL, &bearer}, END};
static const hs_object option = {"option", sizeof(hs_option), option_fields};

static const hs_field role_fields[] = {
    {"role", HS_KIND_STRING, offsetof(hs_role, role), 0, 0, 0, FALSE, TRUE, NULL, NULL},
    STR(hs_role, "before", before), STR(hs_role, "after", after), END};
static const hs_object role = {"role", sizeof(hs_role), role_fields};
static const hs_field better_fields[] = {
    WORDS(hs_better_way, "way", way, ways, TRUE), WORDS(hs_better_way, "answer", answer, way_answers, FALSE),
    STR(hs_better_way, "reason", reason), END};
static const hs_object better = {"better_way", sizeof(hs_better_way), better_fields};
static const hs_field consulted_fields[] = {STR(hs_consulted, "role", role), STR(hs_consulted, "said", said), END};
static const hs_object consulted = {"consulted", sizeof(hs_consulted), consulted_fields};
static const hs_field gate_fields[] = {
    {"gate", HS_KIND_STRING, offsetof(hs_gate, gate), 0, 0, 0, FALSE, TRUE, NULL, NULL},
    {"answer", HS_KIND_WORD, offsetof(hs_gate, answer), 0, .words = gate_answers, .otherwise = HS_GATE_OPEN}, STR(hs_gate, "note", note), END};
static const hs_object gate = {"gate", sizeof(hs_gate), gate_fields};
static const hs_field trial_fields[] = {
    STR(hs_trial, "quantity", quantity), NUM(hs_trial, "predicted", predicted, -DBL_MAX, DBL_MAX),
    NUM(hs_trial, "measured", measured, -DBL_MAX, DBL_MAX), STR(hs_trial, "unit", unit), STR(hs_trial, "date", date), END};
static const hs_object trial = {"trial", sizeof(hs_trial), trial_fields};

static const hs_field policy_fields[] = {
    WORDS(hs_policy, "team_rule", team_rule, team_rules, FALSE), WORDS(hs_policy, "segments", segments, segment_tables, FALSE),
    ABOVE(hs_policy, "team_factor", team_factor, 0, 1),
    NUM(hs_policy, "strength_percentile", strength_percentile, 1, 99), NUM(hs_policy, "slip_factor", slip_factor, 1, 10),
    ABOVE(hs_policy, "near_ratio", near_ratio, 0, 1), NUM(hs_policy, "couple_Nm", couple_Nm, 0, 1000),
    NUM(hs_policy, "walking_factor", walking_factor, 1, 5), ABOVE(hs_policy, "step_Hz", step_Hz, 0, 5),
    NUM(hs_policy, "step_m", step_m, 0, 2), NUM(hs_policy, "glove_loss_fraction", glove_loss_fraction, 0, 0.9),
    {"site_limits", HS_KIND_MAP, offsetof(hs_policy, site_limits), offsetof(hs_policy, n_site_limits), 0, 1e9, TRUE, FALSE, NULL, NULL}, END};
static const hs_object policy = {"policy", sizeof(hs_policy), policy_fields};

static const hs_field doubt_fields[] = {
    WHOLE(hs_doubt_input, "draws", draws, 1, 100000), WHOLE(hs_doubt_input, "seed", seed, 0, 9007199254740991.0),
    NUM(hs_doubt_input, "friction_pct", friction_pct, 0, 90), NUM(hs_doubt_input, "gain_pct", gain_pct, 0, 90),
    NUM(hs_doubt_input, "reach_cm", reach_cm, 0, 50), NUM(hs_doubt_input, "mass_pct", mass_pct, 0, 90), END};
static const hs_object doubt = {"doubt", sizeof(hs_doubt_input), doubt_fields};

static const hs_field revision_fields[] = {
    WHOLE(hs_revision, "number", number, 0, BIG), STR(hs_revision, "date", date), STR(hs_revision, "author", author),
    STR(hs_revision, "summary", summary), STR(hs_revision, "previous_digest", previous_digest), END};
static const hs_object revision = {"revision", sizeof(hs_revision), revision_fields};
static const hs_field signature_fields[] = {
    STR(hs_signature, "role", role), STR(hs_signature, "name", name), STR(hs_signature, "date", date),
    STR(hs_signature, "digest", digest), END};
static const hs_object signature = {"signature", sizeof(hs_signature), signature_fields};

static const hs_field document_fields[] = {
    OBJ(hs_task, "about", about, about),
    {"load", HS_KIND_OBJECT, offsetof(hs_task, load), 0, 0, 0, FALSE, TRUE, NULL, &load},
    OBJ(hs_task, "site", site, site),
    {"route", HS_KIND_OBJECT, offsetof(hs_task, route), 0, 0, 0, FALSE, TRUE, NULL, &route},
    OBJ(hs_task, "work", work, work),
    {"workers", HS_KIND_LIST, offsetof(hs_task, workers), offsetof(hs_task, n_workers), 1, 100, FALSE, TRUE, NULL, &worker},
    LIST(hs_task, "suits", suits, n_suits, suit, 100),
    {"options", HS_KIND_LIST, offsetof(hs_task, options), offsetof(hs_task, n_options), 1, 20, FALSE, TRUE, NULL, &option},
    LIST(hs_task, "roles", roles, n_roles, role, 100), LIST(hs_task, "better_ways", better_ways, n_better_ways, better, 20),
    {"criteria", HS_KIND_STRINGS, offsetof(hs_task, criteria), offsetof(hs_task, n_criteria), 0, 50, FALSE, FALSE, criteria, NULL},
    LIST(hs_task, "consulted", consulted, n_consulted, consulted, 100), LIST(hs_task, "gates", gates, n_gates, gate, 50),
    LIST(hs_task, "trial", trials, n_trials, trial, 500), OBJ(hs_task, "policy", policy, policy), OBJ(hs_task, "doubt", doubt, doubt),
    LIST(hs_task, "revisions", revisions, n_revisions, revision, 1000),
    LIST(hs_task, "signatures", signatures, n_signatures, signature, 50), END};
const hs_object hs_object_document = {"document", sizeof(hs_task), document_fields};
/* clang-format on */

gboolean
hs_object_knows(const hs_object *type, const char *key)
{
    for (const hs_field *field = type != NULL ? type->fields : NULL;
         field != NULL && field->key != NULL; field++)
        if (strcmp(field->key, key) == 0)
            return TRUE;
    return type == &hs_object_document &&
           (strcmp(key, "format") == 0 || strcmp(key, "version") == 0);
}

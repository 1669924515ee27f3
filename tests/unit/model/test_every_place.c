/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  does every newton reach the floor, and is loss of power worked out, at every place of every example and of 400 random
 *            documents?
 * Answer:    every bearer of every option at every sample: account of the load path, ground force, power lost.
 * Not here:  single figures of the account (forces/test_suit.c, checks/test_power_loss.c). */
#include "../../fuzz/random_document.h"
#include "defaults.h"
#include "document.h"
#include "examples.h"
#include "load_path.h"
#include "near.h"
#include "power_loss.h"
#include "runner.h"
#include "units.h"

#include <string.h>

#define RANDOM_DOCUMENTS 400

static int n_accounts, n_lost, n_places, n_state[HS_LOST_LIMP + 4];

static void
check_account(const hs_run *run, int s, int b, const char *where)
{
    const hs_bearer_sample *sample = &run->samples[s].bearers[b];
    const hs_bearer_place *place = &run->stations[s].place.bearers[b];
    hs_load_path path;
    double own_N;

    if (!hs_has(sample->felt_force_N))
        return;
    hs_load_path_of(run->setup->bearers[b].suit, run->persons[b].mass_kg, sample->hand_force_N,
                    sample->felt_force_N, place->walking_factor, &path);
    if (!hs_has(path.sum_N))
        return;
    n_accounts++;
    /* 1e-9 N, and of forces beyond a ton what a double can tell */
    hs_near(where, path.sum_N, 0.0, fmax(1e-9, 1e-13 * sample->ground_force_N));
    hs_near(where, sample->felt_force_N + sample->suit_force_N, sample->hand_force_N,
            fmax(1e-9, 1e-13 * sample->hand_force_N));
    /* what the results call ground force is both lots of soles together, when nothing speeds the body up */
    own_N = path.along_N[HS_PATH_WEARER_TO_FLOOR] + path.along_N[HS_PATH_SUIT_TO_FLOOR];
    hs_near_rel(where, sample->ground_force_N, own_N, 1e-9);
}

/* Seconds without power: what the file gives, or nothing where it does not give it. */
static void
same_or_absent(const char *where, double got, double wanted)
{
    if (hs_has(got) != hs_has(wanted))
        g_error("%s: got %g, wanted %g", where, got, wanted);
    if (hs_has(wanted))
        hs_near_rel(where, got, wanted, 1e-12);
}

static void
check_needed(
    const hs_run *run, int s, const hs_suit *suit, const hs_power_lost *lost, const char *where)
{
    const hs_place *place = &run->stations[s].place;
    double to_s = hs_place_to_set_down_s(run->setup, place);
    bool is_level;

    if (lost->state == HS_LOST_DESCENDING) {
        same_or_absent(where, lost->hold_s,
                       suit->sink_m_s > 0.0
                           ? hs_power_loss_drop_m(run->setup, place, &is_level) / suit->sink_m_s
                           : HS_ABSENT);
        same_or_absent(where, lost->needed_s, lost->hold_s);
    } else if (suit->walks_without_power == HS_YES)
        same_or_absent(where, lost->needed_s, to_s);
    else if (suit->walks_without_power == HS_UNKNOWN)
        same_or_absent(where, lost->needed_s, HS_ABSENT);
    else if (lost->state == HS_LOST_LOCKED)
        same_or_absent(where, lost->needed_s, suit->release_helper_s);
    else
        g_assert_cmpfloat(lost->needed_s, >=, 1.0);
}

static void
check_lost(const hs_run *run, int s, int b, const char *where)
{
    const hs_suit *suit = run->setup->bearers[b].suit;
    const hs_power_lost *lost = &run->samples[s].bearers[b].power_lost;
    const hs_bearer_state *state = &run->stations[s].bearers[b];

    if (suit == NULL || suit->kind != HS_SUIT_POWERED || suit->on_power_loss == 0)
        return;
    n_lost++;
    n_state[lost->state]++;
    if (!lost->is_known)
        g_error("%s: power lost is not worked out at sample %d", where, s);
    if (lost->state == HS_LOST_LOCKED)
        same_or_absent(where, lost->hold_s, suit->lock_s);
    if (lost->state != HS_LOST_LIMP)
        hs_near(where, lost->felt_force_N, 0.0, 0.0);
    else {
        same_or_absent(where, lost->felt_force_N, run->samples[s].bearers[b].hand_force_N);
        g_assert_cmpint(hs_has(lost->hold_s), ==, state->has_lost);
    }
    check_needed(run, s, suit, lost, where);
}

static void
check_document(const hs_document *document, const char *path)
{
    hs_arena *arena = hs_arena_new();
    const hs_task *task;
    hs_load_state load;
    hs_error error;

    task = hs_defaults_apply(hs_document_task(document), arena, NULL);
    g_assert_cmpint(hs_load_solve(&task->load, arena, NULL, NULL, &load, &error), ==, HS_OK);
    for (int o = 0; o < task->n_options; o++) {
        hs_run run;

        g_assert_cmpint(
            hs_run_make(task, &load, &task->options[o], o, false, arena, NULL, &run, &error),
            ==, HS_OK);
        for (int s = 0; s < run.n_stations; s++)
            for (int b = 0; b < run.setup->n_bearers; b++) {
                n_places++;
                check_account(&run, s, b, path);
                check_lost(&run, s, b, path);
            }
    }
    hs_arena_free(arena);
}

static void
check_example(const char *path, const char *name)
{
    g_autoptr(GPtrArray) faults = g_ptr_array_new_with_free_func((GDestroyNotify)hs_fault_free);
    g_autoptr(hs_document) document = hs_document_load(path, faults, NULL);

    (void)name;
    g_assert_nonnull(document);
    check_document(document, path);
}

static void
all_examples(void)
{
    hs_each_example(check_example);
    g_assert_cmpint(n_accounts, ==, n_places);
    g_assert_cmpint(n_lost, >, 100);
    g_test_message("%d accounts, %d places without power", n_accounts, n_lost);
}

/* Anything that may be entered, gaps too. Numbers beyond those of the fuzz runs. */
static void
random_documents(void)
{
    n_accounts = n_lost = n_places = 0;
    memset(n_state, 0, sizeof n_state);
    for (guint32 number = 20001; number <= 20000 + RANDOM_DOCUMENTS; number++) {
        g_autofree char *text = hs_random_document(number);
        g_autofree char *where = g_strdup_printf("random document %u", number);
        g_autoptr(GPtrArray) faults =
            g_ptr_array_new_with_free_func((GDestroyNotify)hs_fault_free);
        g_autoptr(hs_document) document = hs_document_from_bytes(text, strlen(text), faults);

        g_assert_nonnull(document);
        check_document(document, where);
    }
    g_test_message("%d places, %d accounts, %d without power: %d locked, %d sinking, %d limp",
                   n_places, n_accounts, n_lost, n_state[HS_LOST_LOCKED],
                   n_state[HS_LOST_DESCENDING], n_state[HS_LOST_LIMP]);
    g_assert_cmpint(n_accounts, >, 2000);
    g_assert_cmpint(n_state[HS_LOST_LOCKED], >, 100);
    g_assert_cmpint(n_state[HS_LOST_DESCENDING], >, 100);
    g_assert_cmpint(n_state[HS_LOST_LIMP], >, 100);
}

int
main(int argc, char **argv)
{
    g_test_init(&argc, &argv, NULL);
    g_test_add_func("/every_place/all_examples", all_examples);
    g_test_add_func("/every_place/random_documents", random_documents);
    return g_test_run();
}
